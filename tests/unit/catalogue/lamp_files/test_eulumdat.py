"""EULUMDAT with every symmetry; C 0 lies across the lamp, so azimuth 0 here is C 90."""

from __future__ import annotations

import math
from pathlib import Path

import numpy as np
import pytest

from planner.catalogue.lamp_files.photometry import LampFileError, Opening, Photometry, total_lumens
from planner.catalogue.lamp_files.reading import parse_lamp_file, read_lamp_file

SAMPLES = Path(__file__).parents[3] / "data" / "lamp_files"


def sample(name: str) -> Photometry:
    return read_lamp_file(SAMPLES / name)


def text_of(name: str) -> str:
    return (SAMPLES / name).read_text("ascii")


def formula(gamma: float, c: float, a: float, b: float, q: float) -> float:
    """What the samples hold at an angle C; see the README beside them."""
    t, phi = math.radians(gamma), math.radians(c)
    bend = a * math.sin(t) * math.cos(phi) + b * math.sin(t) * math.sin(phi)
    return 1000 * math.cos(t) * (1 + bend + q * math.sin(t) ** 2 * math.cos(2 * phi))


@pytest.mark.parametrize(
    ("name", "planes", "a", "b", "q"),
    [
        ("eulumdat-isym0.ldt", 12, 0.3, 0.2, 0),
        ("eulumdat-isym1.ldt", 1, 0, 0, 0),
        ("eulumdat-isym2.ldt", 12, 0.3, 0, 0),
        ("eulumdat-isym3.ldt", 12, 0, 0.2, 0),
        ("eulumdat-isym4.ldt", 12, 0, 0, 0.3),
    ],
)
def test_each_symmetry_gives_the_formula_all_around(
    name: str, planes: int, a: float, b: float, q: float
) -> None:
    photometry = sample(name)
    assert len(photometry.azimuths_deg) == planes
    for azimuth, row in zip(photometry.azimuths_deg, photometry.candela, strict=True):
        wanted = [formula(t, azimuth + 90, a, b, q) for t in photometry.polar_deg]
        np.testing.assert_allclose(row, wanted, atol=0.005)
    assert photometry.warnings == ()


def test_the_length_of_the_luminous_area_lies_along_azimuth_0() -> None:
    # Lines 16 and 17: length 600 mm, width 300 mm.
    assert sample("eulumdat-isym0.ldt").opening == Opening("rectangle", 0.6, 0.3, 0)
    assert sample("eulumdat-isym1.ldt").opening == Opening("circle", 0.25, 0.25, 0)


def test_intensities_are_per_1000_lm_of_the_lamp_and_times_the_conversion_factor() -> None:
    photometry = sample("eulumdat-two-sets-comma.ldt")
    assert photometry.candela[0, 0] == pytest.approx(1000)
    second = read_lamp_file(SAMPLES / "eulumdat-two-sets-comma.ldt", lamp_set=1)
    assert second.candela[0, 0] == pytest.approx(2000)
    assert (second.lumens_stated, second.lamp_count, second.watts) == (8000, 2, 76.5)
    assert "2 lamp sets" in photometry.warnings[0]
    with pytest.raises(LampFileError, match="line 26: there is no lamp set 3; the file holds 2"):
        read_lamp_file(SAMPLES / "eulumdat-two-sets-comma.ldt", lamp_set=2)


def test_a_negative_number_of_lamps_is_absolute_photometry() -> None:
    photometry = sample("eulumdat-absolute.ldt")
    assert photometry.absolute
    assert photometry.lumens_stated is None
    # π × 1000 lm, less what chords of 10° cut off a cosine.
    assert total_lumens(photometry) == pytest.approx(1000 * math.pi, rel=0.003)


def test_texts_become_keywords() -> None:
    photometry = sample("eulumdat-isym0.ldt")
    assert photometry.name == "Invented panel"
    assert photometry.keyword("TEST") == "INV-LDT"
    assert photometry.keyword("LAMP") == "Invented LED"
    assert photometry.output_ratio == pytest.approx(0.785)


def test_doubtful_totals_are_told() -> None:
    lines = text_of("eulumdat-isym1.ldt").splitlines()
    lines[21], lines[22], lines[24] = "60", "40", "15"
    told = " ".join(parse_lamp_file("\n".join(lines).encode()).warnings)
    assert "line 23 states a light output ratio of 40.0 %" in told
    assert "line 22 states 60.0 %" in told
    assert "measured with a tilt of 15°" in told


def test_the_whole_luminaire_stands_in_for_a_luminous_area_of_0() -> None:
    lines = text_of("eulumdat-isym0.ldt").splitlines()
    lines[15] = lines[16] = "0"
    photometry = parse_lamp_file("\n".join(lines).encode())
    assert photometry.opening == Opening("rectangle", 0.62, 0.32, 0)
    assert "no luminous area" in photometry.warnings[0]


@pytest.mark.parametrize(
    ("line", "text", "told"),
    [
        (3, "5", r"line 3: found 5 for the symmetry \(0 to 4\); a whole number from 0 to 4"),
        (4, "0", "line 4: found 0 for the number of C planes; a whole number from 1 to 361"),
        (4, "1000000", "line 4: found 1e.06 for the number of C planes"),
        (6, "2.5", "line 6: found 2.5 for the number of angles"),
        (16, "-3", "line 16: found -3 for a size of the luminous area; 0 or more is expected"),
        (24, "one", "line 24: found 'one' where the conversion factor is expected, a number"),
        (26, "", "line 26: found nothing where the number of lamp sets is expected"),
        (26, "21", "line 26: found 21 for the number of lamp sets; a whole number from 1 to 20"),
        (29, "nan", "line 29: found 'nan' where the total flux"),
        (43, "400", "line 43: found 400 for a C angle; a value from 0° to 360° is expected"),
        (45, "20", "line 45: found 20 for a C angle after 30; each angle must be greater"),
        (66, "1e999", "line 66: found '1e999' for an intensity in cd per 1000 lm, far beyond"),
        (66, "-200", r"line 184: a candela value is far below 0 \(the least is -800\)"),
    ],
)
def test_malformed_lines_are_named(line: int, text: str, told: str) -> None:
    lines = text_of("eulumdat-isym0.ldt").splitlines()
    lines[line - 1] = text
    with pytest.raises(LampFileError, match=told):
        parse_lamp_file("\n".join(lines).encode(), suffix=".ldt")


def test_a_cut_file_says_where_it_ends() -> None:
    lines = text_of("eulumdat-isym0.ldt").splitlines()
    with pytest.raises(LampFileError, match="line 12: the file ends before line 16"):
        parse_lamp_file("\n".join(lines[:12]).encode())
    with pytest.raises(
        LampFileError, match="line 100: the file ends after 36 of 120 numbers where an intensity"
    ):
        parse_lamp_file("\n".join(lines[:100]).encode())


def test_planes_that_do_not_fit_the_symmetry_are_told() -> None:
    lines = text_of("eulumdat-isym0.ldt").splitlines()
    lines[2], lines[42] = "2", "5"
    with pytest.raises(LampFileError, match=r"line 54: .* from C 0 to C 180, .* from 5 to 180"):
        parse_lamp_file("\n".join(lines).encode())
    lines = text_of("eulumdat-isym0.ldt").splitlines()
    lines[2], lines[3] = "4", "11"
    with pytest.raises(LampFileError, match=r"line 4: there are 11 C planes, .* multiple of 4"):
        parse_lamp_file("\n".join(lines).encode())
