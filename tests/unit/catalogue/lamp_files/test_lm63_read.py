"""LM-63 in all its forms, against the formula the invented samples were made from."""

from __future__ import annotations

import math
import shutil
from pathlib import Path

import numpy as np
import pytest

from planner.catalogue.lamp_files.photometry import LampFileError, Opening, Photometry, at_azimuths
from planner.catalogue.lamp_files.reading import parse_lamp_file, read_lamp_file

SAMPLES = Path(__file__).parents[3] / "data" / "lamp_files"


def formula(polar: float, azimuth: float, a: float, b: float, q: float) -> float:
    """What the samples hold; see the README beside them."""
    if polar > 90:
        return 0.0
    t, c = math.radians(polar), math.radians(azimuth)
    bend = a * math.sin(t) * math.cos(c) + b * math.sin(t) * math.sin(c)
    bend += q * math.sin(t) ** 2 * math.cos(2 * c)
    return 1000 * math.cos(t) * (1 + bend)


def assert_holds(photometry: Photometry, a: float = 0, b: float = 0, q: float = 0) -> None:
    """Every plane of the expanded table is the formula at its own azimuth."""
    for azimuth, row in zip(photometry.azimuths_deg, photometry.candela, strict=True):
        wanted = [formula(t, azimuth, a, b, q) for t in photometry.polar_deg]
        # Stored to 0.001 and multiplied by up to 2.
        np.testing.assert_allclose(row, wanted, atol=0.004)


def sample(name: str) -> Photometry:
    return read_lamp_file(SAMPLES / name)


@pytest.mark.parametrize(
    ("name", "azimuths", "bend"),
    [
        ("lm63-1986.ies", 1, {}),
        ("lm63-1991.ies", 12, {"q": 0.3}),
        ("lm63-1995-half.ies", 8, {"a": 0.3}),
        ("lm63-2002-absolute.ies", 12, {"a": 0.3, "b": 0.2}),
        ("lm63-2002-90-270.ies", 12, {"b": 0.2}),
        ("lm63-2019.ies", 16, {"q": 0.3}),
    ],
)
def test_each_form_gives_the_formula_all_around(
    name: str, azimuths: int, bend: dict[str, float]
) -> None:
    photometry = sample(name)
    assert len(photometry.azimuths_deg) == azimuths
    assert photometry.azimuths_deg[0] == 0
    assert photometry.azimuths_deg[-1] < 360
    assert_holds(photometry, **bend)


def test_factors_before_1995_include_the_ballast_lamp_factor_and_later_ones_do_not() -> None:
    text = (SAMPLES / "lm63-1991.ies").read_text("ascii")
    assert sample("lm63-1991.ies").candela.max() == pytest.approx(1000, abs=0.01)
    # As a file of 1995 the 0.95 in the second place means nothing.
    later = parse_lamp_file(text.replace("IESNA91", "IESNA:LM-63-1995").encode())
    assert later.candela.max() == pytest.approx(1052.63, abs=0.01)


def test_multiplier_and_ballast_factor_multiply() -> None:
    text = (SAMPLES / "lm63-2019.ies").read_text("ascii")
    text = text.replace("1 -1 1 10 5 1 2", "1 -1 2.5 10 5 1 2").replace(
        "1 1.10000 40", "0.5 1.10000 40"
    )
    assert parse_lamp_file(text.encode()).candela[0, 0] == pytest.approx(1250)


def test_feet_become_metres_and_the_length_lies_along_azimuth_0() -> None:
    # 1 ft wide, 2 ft long; width is the first number in LM-63.
    feet = sample("lm63-1991.ies").opening
    assert (feet.length, feet.width) == pytest.approx((0.6096, 0.3048))
    assert sample("lm63-2019.ies").opening == Opening("rectangle", 0.6, 0.3, 0)


def test_lumens_watts_and_generation() -> None:
    old, new = sample("lm63-1991.ies"), sample("lm63-2019.ies")
    assert (old.lumens_stated, old.lamp_count, old.watts) == (4000, 2, 60)
    assert not old.absolute
    assert new.absolute
    assert new.lumens_stated is None
    assert new.generation == 1.1


def test_keywords_keep_their_order_and_more_continues_the_one_before() -> None:
    photometry = sample("lm63-1991.ies")
    assert [key for key, _text in photometry.keywords] == ["TEST", "MANUFAC", "OTHER"]
    assert photometry.keyword("OTHER") == "First line\nsecond line"
    assert sample("lm63-1986.ies").keywords[1] == ("LABEL", "REPORT 86-1")
    assert sample("lm63-2019.ies").name == "Invented panel 60 x 30 cm"


def test_tilt_is_read_from_the_file_or_from_a_file_beside_it(tmp_path: Path) -> None:
    inside = sample("lm63-1991.ies").tilt
    assert inside is not None
    assert (inside.geometry, inside.angles_deg, inside.factors) == (
        1,
        (0, 45, 90),
        (1.0, 0.95, 0.9),
    )
    beside = sample("lm63-tilt-file.ies").tilt
    assert beside is not None
    assert beside.factors == (1.0, 0.8)
    alone = tmp_path / "alone.ies"
    shutil.copy(SAMPLES / "lm63-tilt-file.ies", alone)
    without = read_lamp_file(alone)
    assert without.tilt is None
    assert "'invented.tlt' is not beside the lamp file" in " ".join(without.warnings)


def test_a_tilt_file_is_never_looked_for_elsewhere(tmp_path: Path) -> None:
    (tmp_path / "secret.tlt").write_text("1\n1\n0\n1\n")
    inner = tmp_path / "inner"
    inner.mkdir()
    text = (SAMPLES / "lm63-tilt-file.ies").read_text("ascii")
    (inner / "lamp.ies").write_text(text.replace("invented.tlt", "../secret.tlt"))
    assert read_lamp_file(inner / "lamp.ies").tilt is None


def test_a_broken_tilt_file_is_named() -> None:
    text = (SAMPLES / "lm63-1991.ies").read_text("ascii").replace("0 45 90", "0 45 30")
    with pytest.raises(LampFileError, match=r"line 9: found 30 for a tilt angle after 45"):
        parse_lamp_file(text.encode())


def test_up_and_down() -> None:
    photometry = sample("lm63-up-and-down.ies")
    assert photometry.candela[0, 0] == 600
    assert photometry.candela[0, -1] == 400
    assert photometry.opening.shape == "sphere"
    assert photometry.warnings == ()


@pytest.mark.parametrize(
    ("header", "revision"),
    [
        ("IESNA86", "IESNA86"),
        ("iesna:lm-63-2002", "iesna:lm-63-2002"),
        ("\ufeffIES:LM-63-2019", "IES:LM-63-2019"),
    ],
)
def test_headers_are_known_in_any_dress(header: str, revision: str) -> None:
    text = (SAMPLES / "lm63-1995-half.ies").read_text("ascii")
    photometry = parse_lamp_file(text.replace("IESNA:LM-63-1995", header).encode())
    assert photometry.source_format == revision
    assert not any("revision of LM-63 that is not known" in w for w in photometry.warnings)


def test_an_unknown_revision_is_read_with_a_warning() -> None:
    text = (SAMPLES / "lm63-1995-half.ies").read_text("ascii")
    photometry = parse_lamp_file(text.replace("63-1995", "63-2042").encode())
    assert "is read as the 2002 form" in photometry.warnings[0]


def test_latin_1_text_is_read_and_line_ends_do_not_matter() -> None:
    data = (SAMPLES / "lm63-2019.ies").read_bytes().replace(b"panel", b"Leuchte \xfcber 20\xb0")
    for end in (b"\r\n", b"\n", b"\r"):
        photometry = parse_lamp_file(data.replace(b"\r\n", end))
        assert photometry.name == "Invented Leuchte über 20° 60 x 30 cm"
        assert_holds(photometry, q=0.3)


def test_all_numbers_may_stand_on_one_line() -> None:
    text = (SAMPLES / "lm63-2019.ies").read_text("ascii")
    head, tail = text.split("TILT=NONE")
    photometry = parse_lamp_file(f"{head}TILT=NONE\n{', '.join(tail.split())}".encode())
    assert_holds(photometry, q=0.3)


def test_a_file_may_stop_short_of_360_degrees() -> None:
    text = (SAMPLES / "lm63-2002-absolute.ies").read_text("ascii")
    lines = text.replace("10 13 1 2", "10 12 1 2").replace(" 360\n", "\n").splitlines()
    # The repeated plane at 360° goes with its angle: its two lines are the last.
    lines = lines[:-2]
    photometry = parse_lamp_file("\n".join(lines).encode())
    assert len(photometry.azimuths_deg) == 12
    assert_holds(photometry, a=0.3, b=0.2)


def test_planes_at_0_and_360_that_differ_are_told() -> None:
    lines = (SAMPLES / "lm63-2002-absolute.ies").read_text("ascii").splitlines()
    lines[-2] = lines[-2].replace("1000", "500", 1)
    assert "same direction but differ" in " ".join(
        parse_lamp_file("\n".join(lines).encode()).warnings
    )


def test_what_follows_the_last_value_is_told() -> None:
    data = (SAMPLES / "lm63-2019.ies").read_bytes()
    photometry = parse_lamp_file(data + b"IES:LM-63-2019\r\n")
    assert "goes on after the last candela value" in " ".join(photometry.warnings)


def test_more_light_than_the_lamps_have_is_told() -> None:
    text = (SAMPLES / "lm63-1995-half.ies").read_text("ascii").replace("1,4000,", "1,1000,")
    warnings = " ".join(parse_lamp_file(text.encode()).warnings)
    assert "add up to 3134 lm, more than the 1000 lm" in warnings


def test_a_plane_in_between_is_on_the_line_between_its_neighbours() -> None:
    photometry = sample("lm63-2002-absolute.ies")
    between = at_azimuths(photometry.azimuths_deg, photometry.candela, np.array([345.0]))[0]
    np.testing.assert_allclose(between, (photometry.candela[11] + photometry.candela[0]) / 2)


def test_arrays_cannot_be_written_to() -> None:
    with pytest.raises(ValueError, match="read-only"):
        sample("lm63-2019.ies").candela[0, 0] = 1
