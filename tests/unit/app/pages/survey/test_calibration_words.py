"""What a calibration found is said in the units its dials have."""

from __future__ import annotations

import pytest

from planner.app.pages.survey.calibration import value_text
from planner.estimate.calibrate_model import Quantity
from planner.estimate.calibrate_result import Fitted, beam_deg, said
from planner.plan.lamp import CosineProfile
from planner.units import LengthUnit, in_unit

CM, INCH = LengthUnit.CM, LengthUnit.INCH


def fitted(quantity: Quantity, value: float, error: float, unit: str = "") -> Fitted:
    return Fitted("It", quantity, "it", value, error, value, unit, False, True, "It is so.")


def test_a_shift_of_the_lamps_is_a_length_in_the_unit_shown() -> None:
    """-4 mm with a standard error of 10: 1.96 of them either side."""
    found = fitted(Quantity.SHIFT_X, -0.004, 0.010, "m")
    assert value_text(found, CM) == "-0.4 cm, -2.4 to 1.6"
    # 25.4 mm are an inch.
    inch = fitted(Quantity.SHIFT_Y, 0.0254, 0.0127 / 1.96, "m")
    assert value_text(inch, INCH) == "1.00 in, 0.50 to 1.50"


def test_a_share_is_said_in_per_cent() -> None:
    found = fitted(Quantity.REFLECTANCE, 0.70, 0.01)
    assert value_text(found) == "70.0 %, 68.0 to 72.0"
    assert value_text(fitted(Quantity.SPECULAR, 0.2, 0.05)) == "20.0 %, 10.2 to 29.8"


@pytest.mark.parametrize(
    ("quantity", "value", "error", "told", "doubt"),
    [
        (Quantity.SHIFT_X, -0.0042, 0.012, "-0.4 cm", "1.2 cm"),
        (Quantity.REFLECTANCE, 0.7034, 0.012, "70.3 %", "1.2 %"),
        (Quantity.SPECULAR, 0.05, 0.02, "5.0 %", "2.0 %"),
        (Quantity.FLUX, 210.0, 6.0, "210.0 µmol s⁻¹", "6.0 µmol s⁻¹"),
    ],
)
def test_the_sentence_speaks_as_the_dial_does(
    quantity: Quantity, value: float, error: float, told: str, doubt: str
) -> None:
    assert in_unit(said(quantity, value), CM) == told
    assert in_unit(said(quantity, error, at=value), CM) == doubt


def test_a_beam_is_said_by_its_angle() -> None:
    """cos θ = ½ at 60°: half the peak of a Lambert lamp lies 120° apart."""
    assert said(Quantity.EXPONENT, 1.0) == "120.0°"
    wide, narrow = (CosineProfile(exponent=m).beam_angle_deg for m in (0.9, 1.1))
    assert said(Quantity.EXPONENT, 0.1, at=1.0) == f"{(wide - narrow) / 2:.1f}°"
    assert beam_deg(1.0) == pytest.approx(120.0)
