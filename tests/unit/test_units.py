"""Lengths as people type and read them, against the definition of the inch."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.units import (
    METRES_PER_FOOT,
    METRES_PER_INCH,
    LengthSyntaxError,
    LengthUnit,
    format_length,
    format_number,
    listed,
    parse_length,
    same_unit,
)

CM, INCH = LengthUnit.CM, LengthUnit.INCH


def test_the_inch_is_what_was_agreed() -> None:
    assert METRES_PER_INCH == 0.0254
    assert pytest.approx(0.3048) == METRES_PER_FOOT


@pytest.mark.parametrize(
    ("text", "unit", "metres"),
    [
        ("60", CM, 0.6),
        ("59,5", CM, 0.595),
        ("59.5 cm", INCH, 0.595),
        (".5", CM, 0.005),
        ("0.6 m", CM, 0.6),
        ("0,6m", INCH, 0.6),
        ("600mm", CM, 0.6),
        ("24", INCH, 0.6096),
        ("23 5/8", INCH, 0.600075),
        ("23 5/8 in", CM, 0.600075),
        ("5/8 in", CM, 0.015875),
        ('18"', CM, 0.4572),
        ("18″", CM, 0.4572),
        ("4' 2\"", CM, 1.27),
        ("4′2″", CM, 1.27),
        ("4 ft 2 in", CM, 1.27),
        ("2 FT", CM, 0.6096),
        ("-5", CM, -0.05),
        ("−5 cm", CM, -0.05),
        ("+5", CM, 0.05),
        ("  7  ", CM, 0.07),
        ("0", CM, 0.0),
    ],
)
def test_lengths_are_read(text: str, unit: LengthUnit, metres: float) -> None:
    assert parse_length(text, unit) == pytest.approx(metres, abs=1e-12)


@pytest.mark.parametrize(
    "text",
    [
        "",
        "  ",
        "abc",
        "5 parsecs",
        "5 5",
        "4' 2",
        "1/0",
        "1.5/2",
        "1e3",
        "5 cm x",
        "nan",
        "inf",
        "-",
        "cm",
    ],
)
def test_what_is_no_length_is_refused(text: str) -> None:
    with pytest.raises(LengthSyntaxError) as caught:
        parse_length(text, CM)
    assert str(caught.value).endswith(".")


def test_the_refusal_says_what_would_be_right() -> None:
    with pytest.raises(LengthSyntaxError, match=r"'wide' is not a length; write for example 59,5"):
        parse_length("wide", CM)


def test_a_meter_45_cm_below_the_lamp_is_18_inches_below() -> None:
    # common practice, no source
    assert round(parse_length("45 cm", CM) / METRES_PER_INCH) == 18


@pytest.mark.parametrize(
    ("metres", "unit", "text"),
    [
        (0.6, CM, "60 cm"),
        (0.595, CM, "59.5 cm"),
        (0.6, INCH, "23.62 in"),
        (0.6096, INCH, "24 in"),
        (0.0, CM, "0 cm"),
        (-0.0, CM, "0 cm"),
        (-0.00001, CM, "0 cm"),
        (10.0, CM, "1000 cm"),
    ],
)
def test_lengths_are_written(metres: float, unit: LengthUnit, text: str) -> None:
    assert format_length(metres, unit) == text


def test_the_unit_can_be_left_off() -> None:
    assert format_length(0.6, CM, with_unit=False) == "60"


@pytest.mark.parametrize(
    ("value", "decimals", "text"),
    [(100, 0, "100"), (1.50, 2, "1.5"), (-0.04, 1, "0"), (20, 1, "20")],
)
def test_numbers_lose_zeros_behind_the_point_only(value: float, decimals: int, text: str) -> None:
    assert format_number(value, decimals) == text


@given(metres=st.floats(-10, 10), unit=st.sampled_from(LengthUnit))
def test_what_is_written_reads_back_within_what_a_tape_resolves(
    metres: float, unit: LengthUnit
) -> None:
    half_a_digit = 0.5 * 10.0**-unit.decimals * unit.metres
    for text in (format_length(metres, unit), format_length(metres, unit, with_unit=False)):
        assert abs(parse_length(text, unit) - metres) <= half_a_digit + 1e-12


@pytest.mark.parametrize(("unit", "step"), [(CM, 0.01), (INCH, 0.0127)])
def test_dragging_snaps_to_a_centimetre_or_half_an_inch(unit: LengthUnit, step: float) -> None:
    assert unit.snap == pytest.approx(step)


@pytest.mark.parametrize("gap", [" ", "  ", "\t", "\N{NO-BREAK SPACE}"])
def test_any_kind_of_space_parts_whole_and_fraction(gap: str) -> None:
    assert parse_length(f"23{gap}5/8", INCH) == pytest.approx(23.625 * 0.0254)


@pytest.mark.parametrize("text", ["1/0", "0/0", "5 1/0", f"{'9' * 400}/1", f"1 {'9' * 5000}/3"])
def test_fractions_that_are_no_number_are_refused_in_words(text: str) -> None:
    with pytest.raises(LengthSyntaxError, match=r"divides by zero|no length anybody can measure"):
        parse_length(text, CM)


def test_names_stand_in_a_sentence_as_one_would_say_them() -> None:
    assert [listed("abcd"[:count]) for count in (1, 2, 3)] == ["a", "a and b", "a, b and c"]


@pytest.mark.parametrize(
    "typed",
    ["µmol m⁻² s⁻¹", "umol/m2/s", "μmol/m²/s", " umol m-2 s-1", "umol/m^2/s", "UMOL·m-2·s-1", ""],
)
def test_a_unit_is_known_in_whatever_letters_it_is_typed(typed: str) -> None:
    assert same_unit(typed, "µmol m⁻² s⁻¹")


@pytest.mark.parametrize("typed", ["umol/s", "mol/m2/s", "lx", "m2"])
def test_another_unit_is_not_taken_for_it(typed: str) -> None:
    assert not same_unit(typed, "µmol m⁻² s⁻¹")
