"""What may be saved may be opened, at every maximum; what may not is refused cheaply."""

from __future__ import annotations

import json
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from planner.files.disk import PlanFileError
from planner.files.json_text import MAX_CONTAINERS, MAX_VALUES, JsonTextError, parse_json
from planner.files.lock import lock_file_of, lock_plan
from planner.files.recovery import RecoverySlot, leftovers
from planner.files.store import MAX_BYTES, most_entries, open_plan, plan_from_bytes, save_plan
from planner.plan.lining import Caution
from planner.plan.plan import Plan
from planner.plan.quantity import MAX_BANDS, MAX_CORNERS, MAX_LAMPS, MAX_LININGS, MAX_OBSTACLES
from planner.plan.survey import MAX_POINTS, MAX_READINGS, MAX_SURVEYS
from planner.plan.target import MAX_STAGES
from tests.unit.files.valid_text import VALID

LONG = "Ж" * 120


def polygon(corners: int) -> list[list[float]]:
    """A comb of that many corners, counter-clockwise."""
    upper = [[1.0 - 0.02 * k, 0.8 if k % 2 else 0.9] for k in range(corners - 2)]
    return [[0.0, 0.0], [1.0, 0.0], *upper]


def survey(key: str, points: int, readings: int) -> dict[str, Any]:
    return {
        "key": key,
        "points": [[0.1 + 0.0001 * k, 0.2] for k in range(points)],
        "readings": [{"hole": 1 + k % points, "value": 210.5} for k in range(readings)],
    }


def table(angles: int, azimuths: int) -> dict[str, Any]:
    return {
        "kind": "planes",
        "angles_deg": [180.0 * k / (angles - 1) for k in range(angles)],
        "azimuths_deg": [360.0 * k / azimuths for k in range(azimuths)],
        "relative": [[1.0] * angles] * azimuths,
    }


LINING = VALID["linings"][0]
LAMP = VALID["lamps"][0]
WALL = VALID["walls"][0]
BANDS = [{"lining": LINING["key"], "top": 0.1 + 0.1 * k} for k in range(MAX_BANDS - 1)]

MAXIMA: dict[str, dict[str, Any]] = {
    "10,001 readings": {"surveys": [survey("s", 10, 10_001)]},
    "readings and holes": {"surveys": [survey("s", MAX_POINTS, MAX_READINGS)]},
    "surveys": {"surveys": [survey(f"s{k}", 5, 25) for k in range(MAX_SURVEYS)]},
    "long names": {"name": LONG, "note": "ü" * 4000},
    "linings": {
        "linings": [
            LINING | {"key": f"l{k}"} if k else LINING | {"cautions": list(Caution)}
            for k in range(MAX_LININGS)
        ],
        "walls": [{"bands": [{"lining": LINING["key"]}]}] * 4,
        "ceiling": "open",
        "floor": "open",
        "obstacles": [],
    },
    "corners, with bands": {
        "space": VALID["space"] | {"footprint": polygon(MAX_CORNERS), "door": None},
        "walls": [{"bands": [*BANDS, {"lining": LINING["key"]}]}] * MAX_CORNERS,
        "lamps": [LAMP | {"x": 0.5, "y": 0.4}],
        "obstacles": [],
    },
    "lamps": {"lamps": [LAMP] * MAX_LAMPS},
    "obstacles": {
        "obstacles": [
            {"name": f"Pot {k}", "x": 0.5, "y": 0.3, "length": 0.1, "width": 0.1,
             "underside": 0.0, "thickness": 0.1, "lining": "open"}
            for k in range(MAX_OBSTACLES)
        ]
    },
    "light distribution": {
        "lamps": [LAMP | {"model": LAMP["model"] | {"profile": table(721, 361)}}]
    },
    "stages": {
        "schedule": [
            {"name": f"Stage {k}", "weeks": 2.0, "canopy_height": 0.2,
             "photoperiod_hours": 16.0, "target": VALID["target"]}
            for k in range(MAX_STAGES)
        ]
    },
}  # fmt: skip


@pytest.mark.parametrize("which", MAXIMA)
def test_what_is_saved_at_a_maximum_is_opened_and_recovered(which: str, tmp_path: Path) -> None:
    plan = Plan.model_validate(VALID | MAXIMA[which])
    path = tmp_path / "full.plan.json"
    save_plan(plan, path)
    assert open_plan(path).plan == plan
    slot = RecoverySlot()
    slot.write(plan, path)
    assert (
        plan_from_bytes(json.dumps(json.loads(slot.file.read_text())["plan"]).encode(), path)
        == plan
    )
    slot.close()
    assert leftovers()[0] == []


def test_the_limit_of_the_reader_is_the_longest_list_of_the_model() -> None:
    assert most_entries() == MAX_READINGS
    unbounded: list[str] = []

    def walk(value: Any, place: str) -> None:
        if isinstance(value, dict):
            if value.get("type") == "array" and "maxItems" not in value:
                unbounded.append(place)
            for name, inner in value.items():
                walk(inner, f"{place}/{name}")
        elif isinstance(value, list):
            for inner in value:
                walk(inner, place)

    walk(Plan.model_json_schema(), "")
    assert unbounded == []


def test_a_plan_of_the_largest_file_has_fewer_brackets_than_are_refused(tmp_path: Path) -> None:
    # Holes are the shortest entries: as many as a plan may have, the rest readings.
    count = 780
    full = VALID | {"surveys": [survey(f"s{k}", MAX_POINTS, count) for k in range(MAX_SURVEYS)]}
    path = tmp_path / "largest.plan.json"
    save_plan(Plan.model_validate(full), path)
    # The shortest number this program writes is '0.0, ' in a list.
    assert MAX_BYTES / len("0.0, ") <= 2_000_000 < MAX_VALUES
    assert 0.9 * MAX_BYTES < path.stat().st_size <= MAX_BYTES
    assert open_plan(path).plan.surveys[-1].key == f"s{MAX_SURVEYS - 1}"


@pytest.mark.parametrize("name", [LONG, "x" * 240, "木" * 80])
def test_a_long_name_is_saved_again_and_again(name: str, tmp_path: Path) -> None:
    path = tmp_path / f"{name}.plan.json"
    plan = Plan.model_validate(VALID)
    with lock_plan(path) as lock:
        assert lock.held
        stamp = save_plan(plan, path)
        save_plan(plan, path, expected=stamp)
    assert len(lock_file_of(path).name.encode()) <= 255
    other = path.with_name(f"{name[:-1]}.plan.json")
    assert lock_file_of(other) != lock_file_of(path)


# -- refusals are cheap: measured by steps, never by the clock of a busy machine ------------

NUMBERS = b"[" + b",".join([b"0.5"] * 2_100_000) + b"]"
AWKWARD: dict[str, tuple[Callable[[], bytes], str]] = {
    "NaN at the end": (lambda: b'{"format":1,\n"x":' + NUMBERS + b',\n"y":NaN}', "line 3: NaN"),
    "NaN in texts before": (
        lambda: b'{"a":"NaN",\n"b":[' + b'"NaN\\"",' * 900_000 + b"-Infinity]}",
        "line 2: -Infinity",
    ),
    "1e999 at the end": (lambda: b'{"x":' + NUMBERS + b',\n"y":-1e999}', "line 2: -1e999"),
    "digits": (lambda: b'{"x":"7",\n"format":' + b"7" * 9_000_000 + b"}", "line 2: 7777"),
    "name twice at the end": (
        lambda: b'{"x":' + NUMBERS + b',"y":{"y":{}},\n"y":1}',
        "'y' is given twice in one object (line 2)",
    ),
    "name twice after many objects": (
        lambda: (
            b'{"x":[' + b'{"a":1,"b":2},' * 250_000 + b'\n{"a":{"b":2},"c":"a",\n"\\u0061":2}]}'
        ),
        "'a' is given twice in one object (line 3)",
    ),
    "empty lists": (lambda: b"[" + b"[]," * 3_000_000 + b"[]]", "3000002 lists and objects"),
    "names": (
        lambda: b"{" + b",".join(b'"%x":1' % k for k in range(900_000)) + b"}",
        "900000 fields",
    ),
    "short numbers": (lambda: b"[" + b"1," * 4_900_000 + b"NaN]", "4900000 values"),
    "comma at the end": (lambda: b'{"x":' + NUMBERS + b",\n}", "line 2"),
}  # fmt: skip


@pytest.mark.parametrize("which", AWKWARD)
def test_a_refusal_names_the_place(which: str) -> None:
    make, words = AWKWARD[which]
    with pytest.raises(JsonTextError) as refusal:
        parse_json(make())
    assert words in str(refusal.value)


def test_a_plan_full_of_errors_is_refused_in_one_sentence() -> None:
    bad = survey("s", 10, 4500)
    for reading in bad["readings"]:
        reading["value"] = "x"
    full = VALID | {"surveys": [bad | {"key": f"s{k}"} for k in range(MAX_SURVEYS)]}
    with pytest.raises(PlanFileError, match="survey 1, reading 1, value: must be a number"):
        plan_from_bytes(json.dumps(full).encode(), Path("bad.json"))
    odd = VALID | {"surveys": [{f"f{k}": 1 for k in range(10_000)}]}
    with pytest.raises(PlanFileError, match="fit no plan"):
        plan_from_bytes(json.dumps(odd).encode(), Path("bad.json"))


MEASURE = """
import sys, time
from pathlib import Path
from planner.files.disk import PlanFileError
from planner.files.store import load_plan
start = time.process_time()
try:
    load_plan(Path(sys.argv[1]))
except PlanFileError as error:
    print(error, file=sys.stderr)
seconds = time.process_time() - start
# not the resource module, whose peak a process inherits from its parent
(peak,) = (line for line in open("/proc/self/status") if line.startswith("VmHWM"))
print(seconds, int(peak.split()[1]) / 1000)
"""


@pytest.mark.bench
@pytest.mark.parametrize("which", AWKWARD)
def test_no_refusal_takes_a_second_or_300_mb(which: str, tmp_path: Path) -> None:
    path = tmp_path / "bad.json"
    path.write_bytes(AWKWARD[which][0]())
    assert path.stat().st_size <= MAX_BYTES
    told = subprocess.run(
        [sys.executable, "-c", MEASURE, str(path)],
        capture_output=True, text=True, check=True, cwd=Path(__file__).parents[3],
    )  # fmt: skip
    seconds, megabytes = map(float, told.stdout.split())
    print(f"{which}: {seconds:.2f} s, {megabytes:.0f} MB, {told.stderr.strip()[:100]}")
    assert seconds < 1.0
    assert megabytes < 300


def test_the_count_of_brackets_is_looked_at_before_anything_is_read() -> None:
    with pytest.raises(JsonTextError, match=f"{MAX_CONTAINERS + 1} lists"):
        parse_json(b"[" * (MAX_CONTAINERS + 1))
