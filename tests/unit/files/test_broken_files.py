"""Every kind of broken plan file is refused in one clear sentence that says where."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from planner.files.disk import PlanFileError
from planner.files.store import load_plan
from tests.unit.files.valid_text import GONE, VALID, replaced, spoilt, text

SQUARE_TWICE = [[0, 0], [1.0, 0.6], [1.0, 0], [0, 0.6]]

BROKEN: dict[str, tuple[bytes, str]] = {
    # -- not JSON
    "empty": (b"", "the file is empty"),
    "only blanks": (b" \n\t\n", "the file is empty"),
    "only a byte order mark": (b"\xef\xbb\xbf", "the file is empty"),
    "picture": (b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR", "binary file"),
    "zeros": (b"\x00" * 64, "binary file"),
    "latin letters": ('{"format": 4,\n"name": "Küche"}'.encode("latin-1"), "UTF-8 (line 2)"),
    "utf-16": (json.dumps(VALID).encode("utf-16"), "UTF-16; store it as UTF-8"),
    "prose": (b"Dear garden diary", "not valid JSON at line 1, column 1: a value is expected"),
    "cut off": (text()[:200], "not valid JSON at line 1"),
    "cut off in a text": (b'{"format": 4, "name": "Cab', "column 23: the text that starts there"),
    "comma missing": (replaced('"format": 4,', '"format": 2'), "line 3, column 2: a comma"),
    "colon missing": (b'{"format" 1}', "a colon is missing there"),
    "name without quotes": (b"{format: 1}", "a name in double quotes is expected"),
    "single quotes": (b"{'format': 1}", "a name in double quotes is expected"),
    "decimal comma": (replaced('"height": 1.4', '"height": 1,4'), "a name in double quotes"),
    "comment": (b"// a plan\n{}", "not valid JSON at line 1"),
    "two plans": (text() + text(), "more text after the end of the plan"),
    "line break in text": (b'{"format": 4, "name": "a\nb"}', "a line break or control character"),
    "bad escape": (b'{"format": 4, "name": "C:\\plans"}', "an unknown backslash sequence"),
    "too deep": (b'{"format":1,"name":' + b"[" * 90 + b"]" * 90 + b"}", "nested far too deep"),
    "absurdly deep": (b"[" * 200_000, "nested far too deep"),
    "NaN": (replaced('"height": 1.4', '"height": NaN'), "line 23: NaN is not a number"),
    "Infinity": (replaced('"ppf": 60', '"ppf": Infinity'), "Infinity is not a number"),
    "minus Infinity": (replaced('"x": 0.5', '"x": -Infinity'), "-Infinity is not a number"),
    "beyond all bounds": (replaced('"ppf": 60', '"ppf": 1e999'), "1e999 is beyond all bounds"),
    "endless number": (b'{"format": ' + b"7" * 5000 + b"}", "is beyond all bounds"),
    "name given twice": (
        b'{"format": 4,\n"name": "a",\n"name": "b"}',
        "the name 'name' is given twice in one object (line 3)",
    ),
    "inner name twice": (
        replaced('"height": 1.4,', '"height": 1.4,\n"height": 2.4,'),
        "the name 'height' is given twice",
    ),
    # -- not a plan
    "list": (b"[1, 2]", "this file holds a list"),
    "number": (b"42", "this file holds a single value"),
    "text": (b'"plan"', "this file holds a text"),
    "null": (b"null", "this file holds nothing (null)"),
    "other program's": (b'{"version": "2.1", "layers": []}', "not a plan of this program"),
    "format missing": (spoilt(("format", GONE)), 'a plan starts with its format number ("format"'),
    "format as text": (spoilt(("format", "1")), "not a plan of this program"),
    "format true": (spoilt(("format", True)), "not a plan of this program"),
    "format zero": (spoilt(("format", 0)), "not a plan of this program"),
    "newer format": (
        spoilt(("format", 5)),
        "written by a newer version of this program (format 5; this version reads up to format 4)",
    ),
    "far newer format": (spoilt(("format", 10**12)), "newer version of this program"),
    # -- fields
    "no space": (spoilt(("space", GONE)), "space: is missing"),
    "no walls": (spoilt(("walls", GONE)), "walls: is missing"),
    "no height": (spoilt(("space.height", GONE)), "height: is missing"),
    "unknown field": (spoilt(("colour", "red")), "unknown field 'colour'"),
    "unknown lamp field": (spoilt(("lamps.1.wats", 3)), "lamp 2: unknown field 'wats'"),
    "height as text": (
        spoilt(("space.height", "1.4 m")),
        "height: must be a number, not the text '1.4 m'",
    ),
    "height null": (spoilt(("space.height", None)), "must be a number, not empty (null)"),
    "height true": (spoilt(("space.height", True)), "must be a number, not true"),
    "height in cm": (spoilt(("space.height", 140)), "height: must be at most 500 cm, not 14000 cm"),
    "height too small": (spoilt(("space.height", 0.05)), "must be at least 10 cm, not 5 cm"),
    "name number": (spoilt(("name", 7)), "name: must be a text in double quotes, not 7"),
    "name empty": (spoilt(("name", "")), "name: must not be empty"),
    "name long": (spoilt(("name", "x" * 121)), "name: may be at most 120 characters long, not 121"),
    "space a list": (spoilt(("space", [1])), "space: must be an object with named fields"),
    "lamps an object": (spoilt(("lamps", {})), "lamps: must be a list"),
    "too many lamps": (
        spoilt(("lamps", [VALID["lamps"][0]] * 25)),
        "lamps: there may be at most 24",
    ),
    "photoperiod": (
        spoilt(("photoperiod_hours", 25)),
        "photoperiod: must be at most 24 h, not 25 h",
    ),
    "closed as text": (spoilt(("canopy.closed", "yes")), "canopy, closed: must be true or false"),
    "reflectance": (spoilt(("canopy.reflectance", 1.2)), "must be at most 100 %, not 120 %"),
    # -- footprint
    "two corners": (
        spoilt(("space.footprint", [[0, 0], [1, 0]])),
        "footprint: needs at least 3 entries, not 2",
    ),
    "corner without y": (spoilt(("space.footprint.2", [1.0])), "corner 3, y: is missing"),
    "corner with z": (
        spoilt(("space.footprint.2", [1.0, 0.6, 0])),
        "corner 3: there may be at most 2",
    ),
    "corner far off": (
        spoilt(("space.footprint.1", [100, 0])),
        "corner 2, x: must be at most 1000 cm, not 10000 cm",
    ),
    "corner text": (spoilt(("space.footprint.1.0", "a")), "corner 2, x: must be a number"),
    "self-crossing": (
        spoilt(("space.footprint", SQUARE_TWICE)),
        "walls 1 and 3 of the footprint cross or touch",
    ),
    "clockwise": (
        spoilt(("space.footprint", [[0, 0], [0, 0.6], [1, 0.6], [1, 0]])),
        "run clockwise",
    ),
    "tiny wall": (
        spoilt(("space.footprint.1", [0.005, 0]), ("space.footprint.2", [1, 0.6])),
        "wall 1 of the footprint is shorter than 1 cm",
    ),
    "tiny space": (
        spoilt(("space.footprint", [[0, 0], [0.05, 0], [0.05, 0.05], [0, 0.05]])),
        "encloses less than 50 cm²",
    ),
    "door nowhere": (spoilt(("space.door", 4)), "the door is on wall 5"),
    "door negative": (spoilt(("space.door", -1)), "door: must be at least 0, not -1"),
    "door half": (spoilt(("space.door", 0.5)), "door: must be a whole number, not 0.5"),
    "no door open": (
        spoilt(("space.door", None), ("space.door_open", True)),
        "no wall is named as the door",
    ),
    # -- lamps
    "lamp outside": (spoilt(("lamps.1.x", 3)), "lamp 2 ('Invented spot') hangs outside the space"),
    "canopy above lamp": (
        spoilt(("lamps.1.hanging_height", -0.1)),
        "lamp 2, hanging height: must be at least 1 cm, not -10 cm",
    ),
    "lamp in ceiling": (
        spoilt(("lamps.0.hanging_height", 1.3)),
        "lamp 1, hanging height: must be at most 120 cm, not 130 cm",
    ),
    "canopy in ceiling": (spoilt(("canopy.height", 1.4)), "does not fit under the ceiling"),
    "lamp without model": (spoilt(("lamps.0.model", GONE)), "lamp 1, model: is missing"),
    "lamp without watts": (spoilt(("lamps.0.model.watts", GONE)), "lamp 1, watts: is missing"),
    "no light": (
        spoilt(("lamps.0.model.ppf", 0)),
        "lamp 1, photon flux: must be above 0 µmol s⁻¹",
    ),
    "perpetual": (spoilt(("lamps.0.model.ppf", 600)), "even a perfect lamp cannot exceed 5.8"),
    "output": (spoilt(("lamps.1.output_percent", 120)), "output: must be at most 100 %, not 120 %"),
    "body kind": (
        spoilt(("lamps.0.model.body.kind", "disc")),
        "lamp 1, body: unknown kind 'disc'; known kinds are 'point', 'panel', 'bars'",
    ),
    "body without kind": (spoilt(("lamps.0.model.body.kind", GONE)), "does not say its kind"),
    "body length": (
        spoilt(("lamps.0.model.body.length", 50)),
        "lamp 1, body length: must be at most 300 cm, not 5000 cm",
    ),
    "bars too wide": (
        spoilt(
            (
                "lamps.0.model.body",
                {"kind": "bars", "count": 4, "length": 0.5, "bar_width": 0.1, "width": 0.3},
            )
        ),
        "4 bars of 10 cm do not fit into a width of 30 cm",
    ),
    "profile ragged": (
        spoilt(("lamps.1.model.profile.relative", [1, 0.5])),
        "lamp 2, profile: the profile has 3 angles but 2 intensities",
    ),
    "profile falls": (
        spoilt(("lamps.1.model.profile.angles_deg", [0, 90, 45])),
        "the angles of the profile must rise",
    ),
    "profile angle": (
        spoilt(("lamps.1.model.profile.angles_deg.2", 200)),
        "lamp 2, profile, angle 3: must be at most 180°, not 200°",
    ),
    "profile dark": (
        spoilt(("lamps.1.model.profile.relative", [0, 0, 0])),
        "the profile emits nothing",
    ),
    # -- linings and walls
    "walls too few": (
        spoilt(("walls", VALID["walls"][:3])),
        "the footprint has 4 walls, but 3 wall covers are given",
    ),
    "unknown lining": (
        spoilt(("walls.2.bands.0.lining", "gold")),
        "wall 3 is lined with 'gold', but the plan holds no lining of that key",
    ),
    "unknown ceiling": (spoilt(("ceiling", "gold")), "the ceiling is lined with 'gold'"),
    "key with spaces": (
        spoilt(("floor", "White Board")),
        "floor: must be made of small letters, digits, '-' and '_'",
    ),
    "bands fall": (
        spoilt(
            (
                "walls.1.bands",
                [
                    {"lining": "board", "top": 0.5},
                    {"lining": "open", "top": 0.2},
                    {"lining": "board"},
                ],
            )
        ),
        "wall 2: the bands of a wall must be listed from the floor up",
    ),
    "top band ends": (
        spoilt(("walls.0.bands.0.top", 1)),
        "wall 1: the uppermost band of a wall must end at the ceiling",
    ),
    "no bands": (spoilt(("walls.0.bands", [])), "wall 1, bands: needs at least 1 entry, not 0"),
    "band height": (
        spoilt(("walls.1.bands.0.top", 50)),
        "wall 2, band 1, upper edge: must be at most 500 cm, not 5000 cm",
    ),
    "lining out of range": (
        spoilt(("linings.0.reflectance", 0.95)),
        "lining 1: the reflectance of 'White board' (0.95) must lie between",
    ),
    "lining twice": (
        spoilt(("linings", VALID["linings"] * 2)),
        "two linings carry the key 'board'",
    ),
    "lining named open": (spoilt(("linings.0.key", "open")), "the key 'open' stands for"),
    "caution": (
        spoilt(("linings.0.cautions", ["smells"])),
        "lining 1, caution 1: must be 'conducts'",
    ),
    # -- target
    "target kind": (spoilt(("target.kind", "lux")), "target: unknown kind 'lux'"),
    "target falls": (spoilt(("target.high", 100)), "target: the target band must rise"),
    "target too high": (
        spoilt(("target.high", 9000)),
        "target, upper end: must be at most 5000 µmol m⁻² s⁻¹, not 9000 µmol m⁻² s⁻¹",
    ),
    "dli too high": (
        spoilt(("target", {"kind": "dli", "low": 1, "high": 900})),
        "target, upper end: must be at most 100 mol m⁻² d⁻¹",
    ),
    "target a number": (spoilt(("target", 200)), "target: must be an object with named fields"),
    "lone half of a letter": (
        replaced('"Invented cabinet"', '"\\ud800"'),
        "one of its texts holds half a letter",
    ),
}


@pytest.mark.parametrize("name", BROKEN)
def test_each_broken_file_is_refused_in_one_sentence(tmp_path: Path, name: str) -> None:
    data, expected = BROKEN[name]
    path = tmp_path / "cabinet.plan.json"
    path.write_bytes(data)
    with pytest.raises(PlanFileError) as caught:
        load_plan(path)
    sentence = str(caught.value)
    assert expected in sentence
    assert sentence.startswith("'cabinet.plan.json' cannot be opened: ")
    assert sentence.endswith(".")
    assert "\n" not in sentence
    assert len(sentence) < 400
    for jargon in (
        "pydantic",
        "Input should",
        "Value error",
        "Traceback",
        "ValidationError",
        "dict",
    ):
        assert jargon not in sentence
    assert path.read_bytes() == data


def test_there_are_more_than_sixty_kinds() -> None:
    assert len(BROKEN) > 60
    assert len({data for data, _ in BROKEN.values()}) == len(BROKEN)


def test_the_valid_file_they_are_made_from_is_valid(tmp_path: Path) -> None:
    path = tmp_path / "cabinet.plan.json"
    path.write_bytes(text())
    plan = load_plan(path)
    assert (plan.lamps[1].rotation_deg, plan.walls[1].bands[0].top) == (30, 0.5)


def test_three_problems_are_told_and_the_rest_counted(tmp_path: Path) -> None:
    path = tmp_path / "cabinet.plan.json"
    path.write_bytes(
        spoilt(
            ("space.height", "high"), ("lamps.0.hanging_height", 0), ("lamps.1.x", "a"),
            ("canopy.reflectance", 2), ("photoperiod_hours", -1),
        )
    )  # fmt: skip
    with pytest.raises(PlanFileError) as caught:
        load_plan(path)
    sentence = str(caught.value)
    assert "(1) space, height: must be a number" in sentence
    assert "(2) lamp 1, hanging height: must be at least 1 cm, not 0 cm" in sentence
    assert "(3) lamp 2, x: must be a number, not the text 'a'" in sentence
    assert sentence.endswith("; and 2 more problems.")
    assert len(caught.value.problems) == 5
