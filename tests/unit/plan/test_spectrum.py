"""The value that holds a spectrum, and what it refuses."""

from __future__ import annotations

from typing import Any

import pytest
from pydantic import ValidationError

from planner.plan.spectrum import Spectrum, doubts


def made(**changes: Any) -> Spectrum:
    fields: dict[str, Any] = {
        "key": "white",
        "name": "White",
        "wavelengths_nm": (380.0, 450.0, 780.0),
        "values": (0.0, 2.0, 0.0),
    }
    return Spectrum(**(fields | changes))


def test_it_comes_back_from_json_unchanged() -> None:
    white = made(source="Invented.", is_model=True)
    assert Spectrum.model_validate_json(white.model_dump_json()) == white


@pytest.mark.parametrize(
    ("changes", "sentence"),
    [
        ({"values": (1.0, 2.0, 3.0, 4.0)}, "3 wavelengths but 4 values"),
        ({"wavelengths_nm": (400.0, 400.0, 500.0)}, "must rise"),
        ({"values": (0.0, 0.0, 0.0)}, "empty"),
        ({"wavelengths_nm": (720.0, 730.0, 740.0)}, "no light between 400 and 700 nm"),
        ({"wavelengths_nm": (300.0, 350.0, 400.0)}, "no light between 400 and 700 nm"),
        ({"values": (0.0, -1.0, 0.0)}, "greater than or equal to 0"),
        ({"values": (0.0, float("nan"), 0.0)}, "finite"),
        ({"wavelengths_nm": (0.38, 0.45, 0.78)}, "greater than or equal to 100"),
    ],
)
def test_what_is_no_spectrum_is_refused(changes: dict[str, Any], sentence: str) -> None:
    with pytest.raises(ValidationError, match=sentence):
        made(**changes)


def test_light_that_only_crosses_par_counts() -> None:
    # no sample inside 400-700 nm, but the line between the two outer ones runs through it
    made(wavelengths_nm=(300.0, 390.0, 710.0), values=(0.0, 1.0, 1.0))


def test_cut_ends_and_wide_steps_are_said() -> None:
    cut = made(wavelengths_nm=(450.0, 455.0, 600.0), values=(1.0, 1.0, 0.5))
    assert [text.split(":")[0] for text in doubts(cut)] == [
        "The spectrum begins at 450 nm, still at 100% of its peak",
        "The spectrum ends at 600 nm, still at 50% of its peak",
        "Between 455 and 600 nm there is no sample",
    ]
    steps = tuple(float(nm) for nm in range(380, 785, 5))
    whole = made(wavelengths_nm=steps, values=tuple(1.0 for _ in steps))
    assert doubts(whole) == (
        "The spectrum ends at 780 nm: far-red photons between there and 800 nm are not counted.",
    )
    red = made(wavelengths_nm=(650.0, 660.0, 670.0), values=(0.0, 1.0, 0.0))
    assert doubts(red) == ()
