"""Shapes by the signs of width, length and height, in each revision."""

from __future__ import annotations

import pytest

from planner.catalogue.lamp_files.lm63_write import opening_of, signed_size
from planner.catalogue.lamp_files.photometry import Opening

# (width, length, height), revision, shape, (length, width, height). LM-63-02 table 1 as told
# by several readers of it; 1986 and 1995 after the account in the source of ies2rad (Ward,
# Fritz), a public converter of the Radiance system.
CASES = [
    ((0, 0, 0), 1986, "point", (0, 0, 0)),
    ((0, 0, 0), 2019, "point", (0, 0, 0)),
    ((0.3, 0.6, 0), 1991, "rectangle", (0.6, 0.3, 0)),
    ((0.3, 0.6, 0.1), 2002, "box", (0.6, 0.3, 0.1)),
    ((-0.2, 0, 0), 1986, "circle", (0.2, 0.2, 0)),
    ((-0.2, 0, 0), 1995, "circle", (0.2, 0.2, 0)),
    ((-0.2, -0.2, 0), 2002, "circle", (0.2, 0.2, 0)),
    ((-0.2, -0.4, 0), 2019, "ellipse", (0.4, 0.2, 0)),
    ((-0.2, 0.4, 0), 1986, "ellipse", (0.4, 0.2, 0)),
    ((-0.2, 0, 0.1), 1995, "vertical cylinder", (0.2, 0.2, 0.1)),
    ((-0.2, -0.2, 0.1), 2002, "vertical cylinder", (0.2, 0.2, 0.1)),
    ((-0.2, -0.4, 0.1), 2002, "vertical elliptical cylinder", (0.4, 0.2, 0.1)),
    ((-0.2, 0, -0.2), 1995, "sphere", (0.2, 0.2, 0.2)),
    ((-0.2, -0.2, -0.2), 2019, "sphere", (0.2, 0.2, 0.2)),
    ((-0.2, -0.3, -0.2), 2019, "ellipsoid", (0.3, 0.2, 0.2)),
    ((0, 0.6, -0.1), 1995, "horizontal cylinder along the 0° plane", (0.6, 0.1, 0.1)),
    ((0.6, 0, -0.1), 1995, "horizontal cylinder across the 0° plane", (0.1, 0.6, 0.1)),
    ((-0.1, 0.6, -0.1), 2002, "horizontal cylinder along the 0° plane", (0.6, 0.1, 0.1)),
    ((0.6, -0.1, -0.1), 2002, "horizontal cylinder across the 0° plane", (0.1, 0.6, 0.1)),
    ((-0.1, 0, -0.1), 2002, "vertical circle", (0, 0.1, 0.1)),
    ((-0.1, 0, -0.2), 2002, "vertical ellipse", (0, 0.1, 0.2)),
]


@pytest.mark.parametrize(("size", "revision", "shape", "wanted"), CASES)
def test_signs_tell_the_shape(
    size: tuple[float, float, float], revision: int, shape: str, wanted: tuple[float, ...]
) -> None:
    opening, _told = opening_of(*size, revision)
    assert opening.shape == shape
    assert (opening.length, opening.width, opening.height) == wanted


@pytest.mark.parametrize("shape", sorted({case[2] for case in CASES}))
def test_every_shape_written_is_read_back(shape: str) -> None:
    size, revision = next((c[0], c[1]) for c in CASES if c[2] == shape)
    opening, _told = opening_of(*size, revision)
    again, told = opening_of(*signed_size(opening), 2019)
    assert again == opening
    assert told == ()


def test_a_form_of_another_revision_is_taken_and_told() -> None:
    opening, told = opening_of(-0.2, 0, 0, 2002)
    assert opening == Opening("circle", 0.2, 0.2, 0)
    assert "follows another revision of LM-63" in told[0]
    assert opening_of(-0.2, -0.2, 0, 1995)[0].shape == "circle"


def test_the_same_signs_mean_another_shape_in_another_revision() -> None:
    assert opening_of(-0.1, 0.6, -0.1, 1995)[0].shape == "ellipsoid"
    assert "horizontal cylinder" in opening_of(-0.1, 0.6, -0.1, 2002)[0].shape


def test_signs_that_mean_nothing_are_taken_as_a_size_and_told() -> None:
    opening, told = opening_of(0.3, 0.6, -0.1, 2019)
    assert opening == Opening("box", 0.6, 0.3, 0.1)
    assert "stand for no shape of LM-63" in told[0]
