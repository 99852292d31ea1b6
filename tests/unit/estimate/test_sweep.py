"""Sweeps: axes, grids, going on after an interruption, one process or two."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
import time
import types
from dataclasses import replace
from pathlib import Path
from typing import ClassVar

import pytest

from planner.estimate.evaluate import evaluate
from planner.estimate.result import EstimateOptions, Quality
from planner.estimate.sweep import (
    Over,
    Sweep,
    SweepError,
    _chunks,
    _in_working_order,
    sweep,
)
from planner.estimate.sweep_points import over_range, parse_over
from planner.plan import edits
from planner.plan.lamp import CosineProfile, LampModel, PointBody
from planner.plan.lining import Lining
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.reports.exports import sweep_to_csv
from planner.units import LengthUnit, in_unit
from tests.unit.reports.sample_estimate import sample_plan

OPTIONS = EstimateOptions(cells=(6, 6), quality=Quality.PREVIEW)
FINE = EstimateOptions(quality=Quality.FINE)
HEIGHTS = Over("height", (0.2, 0.4, 0.6))
OUTPUTS = Over("output", (50.0, 100.0))


def means(found: Sweep) -> list[float | None]:
    return [None if p.figures is None else p.figures.mean for p in found.in_order()]


def test_ranges_as_they_are_written() -> None:
    assert parse_over("height=0.2:0.6:5") == Over("height", (0.2, 0.3, 0.4, 0.5, 0.6))
    assert parse_over("height=20cm:60cm:3") == Over("height", (0.2, 0.4, 0.6))
    assert parse_over(" output = 50, 75,100") == Over("output", (50.0, 75.0, 100.0))
    assert over_range("output", 5, 5, 1).values == (5.0,)
    # Whatever is read in per cent is typed in per cent, held as it is.
    assert parse_over("dust=0:20:3") == Over("dust", (0.0, 0.1, 0.2))
    assert parse_over("dirt@wall-1-band-1=5%,30 %").values == (0.05, 0.3)
    assert parse_over("output=50%").values == (50.0,)
    # Nobody buys half a bar: steps of 6 / 4 = 1.5 are steps of 2.
    assert over_range("bars", 2, 8, 5).values == (2.0, 4.0, 6.0, 8.0)
    assert parse_over("bars=2:4:13").values == (2.0, 3.0, 4.0)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("heigth=1:2:3", "no number called 'heigth'"),
        ("height", "names no values"),
        ("height=1:2", "is no range"),
        ("height=a:2:3", "'a' in"),
        ("height=nan", "not a finite number"),
        ("height=1:2:1", "at least two"),
        ("changed=1", "no number called 'changed'"),
        ("set_height=1", "no number called 'set_height'"),
        ("output@table-2=50", "'table-2' is no place"),
        ("output@wall=50", "'wall' is no place"),
        ("lining=chalk", "no lining 'chalk'; there is all"),
        ("lamp=", "names no values"),
    ],
)
def test_what_cannot_be_read_says_what_would(text: str, said: str) -> None:
    with pytest.raises(SweepError, match=said) as caught:
        parse_over(text)
    assert str(caught.value).endswith(".")


def test_points_are_what_evaluate_says() -> None:
    plan = sample_plan()
    found = sweep(plan, [HEIGHTS, OUTPUTS], OPTIONS, workers=0)
    assert found.complete
    assert [point.values for point in found.in_order()] == [
        (h, o) for h in HEIGHTS.values for o in OUTPUTS.values
    ]
    there = edits.change_lamp(plan, 0, hanging_height=0.4, output_percent=50.0)
    expected = evaluate(there, OPTIONS).figures
    assert found.points[2].figures == expected
    assert found.plan_at(2).setup == there.setup
    full = [mean for mean, point in zip(means(found), found.in_order(), strict=True)
            if point.values[1] == 100.0]  # fmt: skip
    assert full == sorted(full, reverse=True)  # type: ignore[type-var]
    assert [one.now(plan) for one in found.over] == [0.4, 100.0]


WHITE = Lining(key="white", name="White", reflectance=0.9, low=0.88, high=0.92)
GREY = Lining(key="grey", name="Grey", reflectance=0.3, low=0.25, high=0.35)
SPOT = LampModel(
    key="spot", name="Spot", body=PointBody(), ppf=40.0, watts=20.0,
    profile=CosineProfile.from_beam_angle(40.0),
)  # fmt: skip
BY_KEY = {one.key: one for one in (WHITE, GREY)}


def test_linings_are_gone_over_on_all_walls_and_at_one_place() -> None:
    """A lighter wall sends back more (energy): the order of the means is that of reflectances."""
    plan = sample_plan()
    walls = parse_over("lining=all", BY_KEY)
    assert walls == Over("lining", (WHITE, GREY))
    found = sweep(plan, [walls, OUTPUTS], OPTIONS, workers=0)
    assert [point.values for point in found.in_order()] == [
        (lining, output) for lining in (WHITE, GREY) for output in OUTPUTS.values
    ]
    expected = evaluate(edits.line_all_walls(plan, GREY), OPTIONS).figures
    assert found.points[3].figures == expected
    white, grey = means(found)[1], means(found)[3]
    assert white is not None
    assert grey is not None
    assert white > grey
    assert found.plan_at(3).lining("grey") == GREY
    one = sweep(plan, [parse_over("lining@wall-2=grey,white", BY_KEY)], OPTIONS, workers=0)
    apart = edits.line_wall(plan, 1, 0, WHITE)
    assert one.points[1].figures == evaluate(apart, OPTIONS).figures
    assert one.over[0].words(plan) == "lining, wall 2"
    ceiling = sweep(plan, [parse_over("lining@ceiling=grey,white", BY_KEY)], OPTIONS, workers=0)
    bright = evaluate(edits.line_ceiling(plan, WHITE), OPTIONS).figures
    assert ceiling.points[1].figures == bright


def test_kinds_of_lamp_are_gone_over_and_one_of_two_lamps_is_dimmed() -> None:
    plan = sample_plan()
    lamp = plan.lamps[0]
    two = edits.add_lamp(plan, lamp.model_copy(update={"x": 0.2}))
    kinds = parse_over("lamp=spot,panel", None, {"spot": SPOT, "panel": lamp.model})
    found = sweep(two, [kinds], OPTIONS, workers=0)
    expected = edits.each_lamp(two, lambda one: one.model_copy(update={"model": SPOT}))
    assert found.points[0].figures == evaluate(expected, OPTIONS).figures
    figures = found.points[0].figures
    assert figures is not None
    assert figures.watts == pytest.approx(2 * 20.0 * lamp.output_percent / 100)
    second = parse_over("output@lamp-2=50,100")
    assert second == Over("output", (50.0, 100.0), Place(PlaceKind.LAMP, 1))
    dimmed = sweep(two, [second], OPTIONS, workers=0).points[0].figures
    assert dimmed == evaluate(edits.change_lamp(two, 1, output_percent=50.0), OPTIONS).figures
    assert Over("lamp", (SPOT,)).now(two) == lamp.model
    assert second.words(two) == "output, lamp 2"


@pytest.mark.parametrize(
    ("over", "said"),
    [
        (Over("output", (50.0,), Place(PlaceKind.LAMP, 4)), "no lamp 5 in"),
        (Over("output", (50.0,), Place(PlaceKind.WALL, 1)), "Wall 2 has no output"),
        (Over("lining", (WHITE,), Place(PlaceKind.LAMP, 0)), "Lamp 1 has no lining"),
        (Over("lamp", (SPOT,), Place(PlaceKind.CEILING)), "Ceiling has no lamp"),
    ],
)
def test_a_place_that_has_nothing_to_go_over_is_said(over: Over, said: str) -> None:
    with pytest.raises(SweepError, match=said):
        sweep(sample_plan(), [over], OPTIONS, workers=0)


def test_a_kind_of_lamp_without_a_lamp_is_an_impossible_point() -> None:
    dark = edits.remove_lamp(sample_plan(), 0)
    found = sweep(dark, [Over("lamp", (SPOT,))], OPTIONS, workers=0)
    assert found.points[0].problem == "No lamp hangs in the space; hang one first."


def test_a_point_that_cannot_be_built_says_why_and_the_rest_goes_on() -> None:
    found = sweep(sample_plan(), [Over("height", (0.4, 2.0))], OPTIONS, workers=0)
    bad = found.points[1]
    assert bad.figures is None
    assert "at most 100 cm, not 200 cm" in in_unit(bad.problem, LengthUnit.CM)
    assert means(found)[1] is None
    assert sweep_to_csv(found).splitlines()[2].startswith("2,,")


@pytest.mark.parametrize("over", [[], [Over("height", ())], [HEIGHTS, HEIGHTS]])
def test_what_cannot_be_swept(over: list[Over]) -> None:
    with pytest.raises(SweepError):
        sweep(sample_plan(), over, OPTIONS)
    many = Over("output", tuple(float(k) for k in range(200)))
    with pytest.raises(SweepError, match="at most"):
        sweep(sample_plan(), [many, over_range("height", 0.1, 0.9, 200)], OPTIONS)


def test_cancelled_it_keeps_what_is_done_and_goes_on_from_there() -> None:
    plan = sample_plan()
    whole = sweep(plan, [HEIGHTS, OUTPUTS], OPTIONS, workers=0)
    seen: list[float] = []
    part = sweep(
        plan, [HEIGHTS, OUTPUTS], OPTIONS, workers=0,
        progress=seen.append, cancelled=lambda: len(seen) >= 3,
    )  # fmt: skip
    assert len(part.points) == 3
    assert not part.complete
    seen.clear()
    rest = sweep(plan, [HEIGHTS, OUTPUTS], OPTIONS, workers=0, known=part, progress=seen.append)
    assert rest.points == whole.points
    assert len(seen) == whole.size - len(part.points)
    assert seen[-1] == 1.0
    # A sweep of something else is no beginning of this one.
    other = edits.change_lamp(plan, 0, x=0.2)
    fresh = sweep(other, [HEIGHTS, OUTPUTS], OPTIONS, workers=0, known=part)
    assert fresh.points != whole.points


def test_the_journal_survives_a_line_cut_off(tmp_path: Path) -> None:
    plan, book = sample_plan(), tmp_path / "out.points"
    whole = sweep(plan, [HEIGHTS, OUTPUTS], OPTIONS, workers=0, journal=book)
    lines = book.read_text("utf-8").splitlines(keepends=True)
    assert len(lines) == 1 + whole.size
    book.write_text("".join(lines[:4]) + lines[4][:20], "utf-8")
    computed: list[int] = []
    again = sweep(
        plan, [HEIGHTS, OUTPUTS], OPTIONS, workers=0, journal=book,
        progress=lambda fraction: computed.append(1),
    )  # fmt: skip
    assert again.points == whole.points
    assert len(computed) == whole.size - 3
    # And once more: everything is there now, also behind the broken line.
    computed.clear()
    sweep(
        plan, [HEIGHTS, OUTPUTS], OPTIONS, workers=0, journal=book,
        progress=lambda fraction: computed.append(1),
    )  # fmt: skip
    assert computed == []
    with pytest.raises(SweepError, match="another sweep"):
        sweep(plan, [HEIGHTS], OPTIONS, workers=0, journal=book)


@pytest.mark.parametrize(
    "spoilt",
    [
        b'{"figures": null, "problem": ""}',
        b'{"number": 999, "figures": null, "problem": ""}',
        b'{"number": [1], "figures": null, "problem": ""}',
        b'{"number": 1, "figures": {"mean": 1}, "problem": ""}',
        b'{"number": 1, "figures": {"mean": "dark"}, "problem": ""}',
        b"[" * 100_000,
        b"\xff\xfe\x00",
    ],
    ids=lambda line: line[:30].decode("latin-1"),
)
def test_a_spoilt_line_of_the_journal_is_as_good_as_none(tmp_path: Path, spoilt: bytes) -> None:
    plan, book = sample_plan(), tmp_path / "out.points"
    whole = sweep(plan, [HEIGHTS], OPTIONS, workers=0, journal=book)
    lines = book.read_bytes().splitlines(keepends=True)
    lines[2] = spoilt + b"\n"
    book.write_bytes(b"".join(lines))
    computed: list[float] = []
    again = sweep(
        plan, [HEIGHTS], OPTIONS, workers=0, journal=book, progress=computed.append
    )  # fmt: skip
    assert again.points == whole.points
    assert len(computed) == 1


def test_a_file_that_is_no_journal_is_not_written_over(tmp_path: Path) -> None:
    book = tmp_path / "out.points"
    book.write_text("notes of my own\n", "utf-8")
    with pytest.raises(SweepError, match="or something else"):
        sweep(sample_plan(), [HEIGHTS], OPTIONS, workers=0, journal=book)
    assert book.read_text("utf-8") == "notes of my own\n"
    # Killed while it began the journal: that is no file of anybody's.
    book.write_text('{"sweep": "', "utf-8")
    assert sweep(sample_plan(), [HEIGHTS], OPTIONS, workers=0, journal=book).size


def test_one_process_two_processes_and_none_agree() -> None:
    plan = sample_plan()
    here = sweep(plan, [HEIGHTS, OUTPUTS], OPTIONS, workers=0)
    seen: list[float] = []
    two = sweep(plan, [HEIGHTS, OUTPUTS], OPTIONS, workers=2, progress=seen.append)
    assert sweep_to_csv(two) == sweep_to_csv(here)
    assert seen == sorted(seen)
    assert seen[-1] == 1.0
    one = sweep(plan, [HEIGHTS, OUTPUTS], OPTIONS, workers=1)
    assert one.points == two.points


def test_processes_stop_when_cancelled() -> None:
    found = sweep(
        sample_plan(),
        [over_range("height", 0.1, 0.9, 40)],
        EstimateOptions(quality=Quality.DEFAULT),
        workers=1,
        cancelled=lambda: True,
    )
    assert len(found.points) < 40


def test_a_scheduler_without_the_extra_is_refused_in_a_sentence(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setitem(sys.modules, "distributed", None)
    with pytest.raises(SweepError, match="optional extra 'cluster'"):
        sweep(sample_plan(), [HEIGHTS], OPTIONS, scheduler="tcp://192.0.2.7:8786")


class FarFuture:
    """A stand-in with the few calls of the real one that are used; done at the second look."""

    def __init__(self, key: str, value: object, state: str = "") -> None:
        self.key, self.value, self.state, self.looks = key, value, state, 0

    def done(self) -> bool:
        self.looks += 1
        return self.looks > 1 and self.state != "running"

    def cancelled(self) -> bool:
        return False

    def result(self, timeout: float) -> object:
        if self.state:
            raise TimeoutError
        return self.value


class FarClient:
    """Two workers, 'cold' and 'warm'; ``states`` are those of the first futures."""

    threads: ClassVar[dict[str, int]] = {"cold": 3, "warm": 3}
    states: ClassVar[tuple[str, ...]] = ()

    def __init__(self, address: str, **_: object) -> None:
        if address != "tcp://here:1":
            raise OSError("nobody there")
        self.asked.clear()

    asked: ClassVar[list[tuple[int, object]]] = []

    def submit(
        self, work: object, *arguments: object, pure: bool, workers: object = None
    ) -> FarFuture:
        assert not pure
        number = len(self.asked)
        self.asked.append((len(arguments[1]), workers))  # type: ignore[arg-type]
        state = self.states[number] if number < len(self.states) else ""
        return FarFuture(f"f{number}", work(*arguments), state)  # type: ignore[operator]

    def nthreads(self) -> dict[str, int]:
        return self.threads

    def processing(self) -> dict[str, tuple[str, ...]]:
        return {"cold": ("f0",), "warm": ()}

    def scheduler_info(self) -> dict[str, object]:
        seen = {"cold": 100.0, "warm": 130.0}
        return {"workers": {k: {"status": "running", "last_seen": v} for k, v in seen.items()}}

    def cancel(self, futures: list[FarFuture]) -> None:
        pass

    def close(self) -> None:
        pass


def as_distributed(monkeypatch: pytest.MonkeyPatch, client: type[FarClient]) -> None:
    module = types.ModuleType("distributed")
    module.Client = client  # type: ignore[attr-defined]
    monkeypatch.setitem(sys.modules, "distributed", module)


def test_on_a_scheduler_as_here(monkeypatch: pytest.MonkeyPatch) -> None:
    as_distributed(monkeypatch, FarClient)
    plan = sample_plan()
    far = sweep(plan, [HEIGHTS, OUTPUTS], OPTIONS, scheduler="tcp://here:1")
    assert far.points == sweep(plan, [HEIGHTS, OUTPUTS], OPTIONS, workers=0).points
    # Six threads for six points: one each, not cut for two workers.
    assert FarClient.asked == [(1, None)] * 6
    with pytest.raises(SweepError, match="No Dask scheduler answers"):
        sweep(plan, [HEIGHTS], OPTIONS, scheduler="tcp://nowhere:1")


def test_a_scheduler_without_workers_says_so(monkeypatch: pytest.MonkeyPatch) -> None:
    """All workers go after the first look: the sweep ends with a sentence instead of waiting."""

    class Left(FarClient):
        states = ("running",) * 3

        def nthreads(self) -> dict[str, int]:
            return {} if self.asked else {"one": 1}

    as_distributed(monkeypatch, Left)
    monkeypatch.setattr("planner.estimate.cluster._NO_WORKER_S", 0.2)
    with pytest.raises(SweepError, match="No worker is at the scheduler 'tcp://here:1'"):
        sweep(sample_plan(), [HEIGHTS], OPTIONS, scheduler="tcp://here:1")


def test_results_that_are_not_to_be_had_are_computed_by_an_idle_worker(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """One of two workers is frozen: what it computed stays with it, and what it was given too."""

    class Frozen(FarClient):
        threads: ClassVar[dict[str, int]] = {"cold": 1, "warm": 1}
        states = ("running", "not to be fetched")

    as_distributed(monkeypatch, Frozen)
    monkeypatch.setattr("planner.estimate.cluster._LATE_S", 0.0)
    plan = sample_plan()
    found = sweep(plan, [HEIGHTS], OPTIONS, scheduler="tcp://here:1")
    assert found.points == sweep(plan, [HEIGHTS], OPTIONS, workers=0).points
    # The frozen two were asked once more, of the one that is awake.
    assert [workers for _, workers in Frozen.asked] == [None] * 3 + [["warm"]] * 2


def test_workers_that_are_all_paused_are_said(monkeypatch: pytest.MonkeyPatch) -> None:
    class Paused(FarClient):
        states = ("running",) * 3

        def scheduler_info(self) -> dict[str, object]:
            states = {"status": "paused", "last_seen": 100.0}
            return {"workers": dict.fromkeys(self.threads, states)}

    as_distributed(monkeypatch, Paused)
    monkeypatch.setattr("planner.estimate.cluster._LATE_S", 0.0)
    monkeypatch.setattr("planner.estimate.cluster._NO_WORKER_S", 0.2)
    with pytest.raises(SweepError, match="All workers are paused, short of memory"):
        sweep(sample_plan(), [HEIGHTS], OPTIONS, scheduler="tcp://here:1")


def test_at_fine_quality_no_point_waits_for_another(monkeypatch: pytest.MonkeyPatch) -> None:
    """One fine point takes seconds: a lost worker costs one of them, a stop waits for none."""
    asked = Sweep(sample_plan(), (over_range("height", 0.1, 0.9, 60),), FINE)
    assert {len(chunk) for chunk in _chunks(asked, _in_working_order(asked), 2)} == {1}
    default = replace(asked, options=EstimateOptions())
    assert {len(chunk) for chunk in _chunks(default, _in_working_order(default), 2)} == {4}


def test_points_are_told_as_they_come() -> None:
    seen: list[int] = []
    found = sweep(
        sample_plan(),
        [HEIGHTS],
        OPTIONS,
        workers=0,
        so_far=lambda part: seen.append(len(part.points)),
    )
    assert seen == [1, 2, 3]
    assert found.complete


def test_the_csv_names_units() -> None:
    found = sweep(sample_plan(), [HEIGHTS], OPTIONS, workers=0)
    head = sweep_to_csv(found).splitlines()[0].split(",")
    assert head[:2] == ["height_m", "mean_umol_m2_s"]
    assert {"minimum_umol_m2_s", "dli_mol_m2_d", "watts"} <= set(head)
    assert head[-1] == "problem"
    assert json.dumps(head).count("share_inside") == 1
    second = Over("output", (50.0,), Place(PlaceKind.LAMP, 0))
    linings = sweep(sample_plan(), [Over("lining", (GREY,)), second], OPTIONS, workers=0)
    lines = sweep_to_csv(linings).splitlines()
    assert lines[0].startswith("lining,output_lamp_1_percent,mean_umol_m2_s")
    assert lines[1].startswith("Grey,50,")


def test_a_dark_plan_sweeps_to_zeros() -> None:
    dark: Plan = edits.change_lamp(sample_plan(), 0, output_percent=0)
    found = sweep(dark, [HEIGHTS], OPTIONS, workers=0)
    assert means(found) == [0.0, 0.0, 0.0]


PARENT = """
import multiprocessing, os, sys, time
from concurrent.futures import ProcessPoolExecutor
from planner.estimate.sweep_points import set_up
if __name__ == "__main__":
    context = multiprocessing.get_context("spawn")
    pool = ProcessPoolExecutor(2, context, initializer=set_up, initargs=(context.Event(),))
    sleeping = [pool.submit(time.sleep, 600) for _ in range(2)]
    while not all(one.running() for one in sleeping):
        time.sleep(0.05)
    print(*pool._processes, flush=True)
    time.sleep(600)
"""


def _runs(process: int) -> bool:
    try:
        status = Path(f"/proc/{process}/stat").read_text()
    except OSError:
        return False
    return status.rpartition(")")[2].split()[0] != "Z"


@pytest.mark.skipif(not Path("/proc").exists(), reason="looks into /proc")
def test_workers_end_with_a_parent_that_is_killed(tmp_path: Path) -> None:
    script = tmp_path / "parent.py"
    script.write_text(PARENT)
    root = Path(__file__).parents[3]
    parent = subprocess.Popen(
        [sys.executable, str(script)], stdout=subprocess.PIPE, text=True,
        env={**os.environ, "PYTHONPATH": str(root)},
    )  # fmt: skip
    assert parent.stdout is not None
    workers = [int(word) for word in parent.stdout.readline().split()]
    assert len(workers) == 2
    assert all(map(_runs, workers))
    parent.terminate()
    parent.wait()
    for _ in range(200):
        if not any(map(_runs, workers)):
            break
        time.sleep(0.05)
    still = [worker for worker in workers if _runs(worker)]
    for worker in still:
        os.kill(worker, signal.SIGKILL)
    parent.stdout.close()
    assert still == []
