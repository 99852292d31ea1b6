"""What is written as LM-63-2019 is read back the same."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planner.catalogue.lamp_files.lm63_write import lm63_text, write_lm63
from planner.catalogue.lamp_files.photometry import (
    LampFileError,
    Opening,
    Photometry,
    Symmetry,
    at_azimuths,
    found_symmetry,
    full_circle,
    total_lumens,
)
from planner.catalogue.lamp_files.reading import parse_lamp_file, read_lamp_file

SAMPLES = Path(__file__).parents[3] / "data" / "lamp_files"
FILES = sorted([*SAMPLES.glob("*.ies"), *SAMPLES.glob("*.ldt")])
RANGES: dict[Symmetry, tuple[int, int]] = {
    "quadrant": (0, 90),
    "about 0-180": (0, 180),
    "about 90-270": (90, 270),
    "none": (0, 359),
}


def reread(photometry: Photometry) -> Photometry:
    return parse_lamp_file(lm63_text(photometry).encode())


def assert_same_light(a: Photometry, b: Photometry) -> None:
    np.testing.assert_allclose(a.polar_deg, b.polar_deg, rtol=1e-11)
    around = np.linspace(0, 360, 97)
    np.testing.assert_allclose(
        at_azimuths(a.azimuths_deg, a.candela, around),
        at_azimuths(b.azimuths_deg, b.candela, around),
        rtol=1e-9,
        atol=1e-9 * a.candela.max(),
    )


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.name)
def test_samples_survive(path: Path) -> None:
    before = read_lamp_file(path)
    after = reread(before)
    assert_same_light(before, after)
    for field in ("opening", "watts", "lamp_count", "lumens_stated", "tilt", "generation"):
        assert getattr(after, field) == pytest.approx(getattr(before, field)), field
    kept = {("_LABEL" if key == "LABEL" else key, text) for key, text in before.keywords}
    assert kept <= set(after.keywords)
    assert total_lumens(after) == pytest.approx(total_lumens(before), rel=1e-9)


@st.composite
def lamps(draw: st.DrawFn) -> Photometry:
    symmetry = draw(st.sampled_from(sorted(RANGES)))
    low, high = RANGES[symmetry]
    inside = draw(st.lists(st.integers(low + 1, high - 1), max_size=5, unique=True))
    ends = [low] if symmetry == "none" else [low, high]
    stored = np.array(sorted({*ends, *inside}), dtype=np.float64)
    polar = sorted(draw(st.sets(st.integers(1, 179), max_size=5)) | {0, 180})
    seed = draw(st.integers(0, 2**32 - 1))
    table = np.random.default_rng(seed).uniform(
        0, draw(st.floats(0.1, 1e6)), (len(stored), len(polar))
    )
    azimuths, rows = full_circle(stored, table, symmetry)
    return Photometry(
        np.array(polar, dtype=np.float64),
        azimuths,
        rows,
        "made for a test",
        lumens_per_lamp=draw(st.none() | st.floats(1, 1e6)),
        lamp_count=draw(st.integers(1, 20)),
        watts=draw(st.none() | st.floats(0.1, 5000)),
        opening=Opening("rectangle", draw(st.floats(0.01, 3)), draw(st.floats(0.01, 3))),
        keywords=(("TEST", draw(st.text("abc DEF[]=é", min_size=1, max_size=600))),),
    )


@settings(max_examples=150, deadline=None)
@given(lamps())
def test_any_lamp_survives(lamp: Photometry) -> None:
    after = reread(lamp)
    assert_same_light(lamp, after)
    assert after.watts == pytest.approx(lamp.watts)
    assert after.lumens_stated == pytest.approx(lamp.lumens_stated)
    assert after.opening.length == pytest.approx(lamp.opening.length)
    words = lamp.keyword("TEST").split()
    found = after.keyword("TEST").split()
    assert "".join(found) == ("".join(words) or "notstated")


def test_only_the_smallest_part_of_the_circle_is_written() -> None:
    text = lm63_text(read_lamp_file(SAMPLES / "eulumdat-isym4.ldt")).splitlines()
    lamp = text[text.index("TILT=NONE") + 1].split()
    assert lamp[:7] == ["1", "4000", "1", "10", "4", "1", "2"]
    assert text[0] == "IES:LM-63-2019"


def test_symmetry_is_found_where_it_is_and_only_there() -> None:
    for name, wanted in (
        ("lm63-1991.ies", "quadrant"),
        ("lm63-1995-half.ies", "about 0-180"),
        ("lm63-2002-90-270.ies", "about 90-270"),
        ("lm63-2002-absolute.ies", "none"),
        ("lm63-2019.ies", "quadrant"),
        ("lm63-1986.ies", "axial"),
    ):
        lamp = read_lamp_file(SAMPLES / name)
        assert found_symmetry(lamp.azimuths_deg, lamp.candela) == wanted, name


def test_lines_are_short_and_required_keywords_are_there() -> None:
    lamp = read_lamp_file(SAMPLES / "lm63-1986.ies")
    text = lm63_text(lamp)
    for key in ("[TEST]", "[TESTLAB]", "[ISSUEDATE]", "[MANUFAC]"):
        assert f"{key} not stated" in text
    assert max(map(len, text.split("\r\n"))) <= 256


def test_a_file_is_written_whole(tmp_path: Path) -> None:
    lamp = read_lamp_file(SAMPLES / "lm63-2019.ies")
    folder = tmp_path / "lamps"
    folder.mkdir()
    write_lm63(lamp, folder / "out.ies")
    assert_same_light(lamp, read_lamp_file(folder / "out.ies"))
    assert [path.name for path in folder.iterdir()] == ["out.ies"]
    with pytest.raises(LampFileError, match=r"'out.ies' cannot be written: No such file"):
        write_lm63(lamp, tmp_path / "nowhere" / "out.ies")
