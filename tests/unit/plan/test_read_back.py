"""What a field shows can be read back by it, in every language, and no comma is guessed at."""

from __future__ import annotations

import math

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from planner import language
from planner.plan import quantity as kinds
from planner.plan.dials import DIALS
from planner.plan.quantity import Quantity
from planner.units import AmbiguousNumberError, LengthUnit

QUANTITIES = tuple(
    {dial.quantity for dial in DIALS.values()}
    | {one for one in vars(kinds).values() if isinstance(one, Quantity)}
)


@pytest.fixture(params=["en", "de"])
def spoken(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> str:
    monkeypatch.setattr(language, "_spoken", request.param)
    return str(request.param)


@pytest.mark.usefixtures("spoken")
@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None)
@given(
    one=st.sampled_from(QUANTITIES),
    share=st.floats(0, 1),
    unit=st.sampled_from(LengthUnit),
    fractions=st.booleans(),
)
def test_what_a_field_shows_it_can_read_back(
    one: Quantity, share: float, unit: LengthUnit, fractions: bool
) -> None:
    low = one.minimum if math.isfinite(one.minimum) else -1e4
    high = one.maximum if math.isfinite(one.maximum) else 1e4
    value = low + share * (high - low)
    shown = one.text(value, unit, fractions=fractions)
    again = one.read(shown, unit)
    assert one.text(again, unit, fractions=fractions) == shown
    last = unit.metres * 10.0**-unit.decimals if one.is_length else one.factor / 10**one.decimals
    assert abs(again - value) <= 0.5001 * last


@pytest.mark.usefixtures("spoken")
@pytest.mark.parametrize("one", [kinds.HEIGHT, kinds.PHOTON_FLUX, kinds.PPFD, kinds.HOURS])
def test_a_thousand_is_not_guessed_at_in_any_language(one: Quantity) -> None:
    # '1.250' is 1250 to many who write a decimal comma, and 1.25 to those who write a point
    # (ISO 80000-1:2009, 7.3.1 and 7.3.2: sign of decimals, and no sign between thousands).
    for text in ("1.250", "1,250"):
        with pytest.raises(AmbiguousNumberError):
            one.read(text, LengthUnit.CM)
    of_one = 0.01 if one.is_length else 1.0
    for text in ("1,25", "1.25"):
        assert one.read(text, LengthUnit.CM) == pytest.approx(1.25 * of_one)


def test_the_comma_is_the_languages_own(spoken: str) -> None:
    assert kinds.HEIGHT.text(0.595, LengthUnit.CM) == ("59,5 cm" if spoken == "de" else "59.5 cm")


def test_marks_of_direction_around_a_number_are_passed_by() -> None:
    # Unicode Standard Annex 9: U+2066 and U+2069 isolate a part of a line.
    assert kinds.PERCENT.read("\u206685.5 %\u2069", LengthUnit.CM) == 85.5


@pytest.mark.usefixtures("spoken")
@pytest.mark.parametrize("value", [6.932, 912.317, 0.932, 1.25])
def test_a_third_decimal_shown_is_not_taken_for_thousands(value: float) -> None:
    fine = Quantity("", decimals=3, step=0.001).within(0.0, 1e6)
    assert fine.read(fine.text(value, LengthUnit.CM), LengthUnit.CM) == value


@pytest.mark.usefixtures("spoken")
def test_near_a_line_of_the_tape_the_field_shows_the_line_it_reads() -> None:
    # 0.2531 in is no sixty-fourth, and to two decimals it is 0.25.
    shown = kinds.HEIGHT.text(0.2531 * 0.0254, LengthUnit.INCH, fractions=True)
    assert shown == "1/4 in"
