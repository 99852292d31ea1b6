"""The one table of figures: complete, named alike everywhere, rounded by one rule."""

from __future__ import annotations

import dataclasses
import string
from pathlib import Path

import pytest

from planner.estimate.result import Figures
from planner.metrics.figures import FIGURE, FIGURES, NO_VALUE
from planner.units import COVERAGE

ROOT = Path(__file__).parents[3]


def test_every_figure_of_an_estimate_has_its_row() -> None:
    assert sorted(FIGURE) == sorted(field.name for field in dataclasses.fields(Figures))
    assert len({figure.name for figure in FIGURES}) == len(FIGURES)


@pytest.mark.parametrize("page", ["README.md", "resources/help/glossary.md"])
def test_the_pages_for_people_use_the_names_of_the_table(page: str) -> None:
    text = (ROOT / page).read_text("utf-8").casefold()
    missing = [figure.name for figure in FIGURES if figure.name.casefold() not in text]
    assert missing == []


def test_words_are_sentences_and_ask_for_nothing_else() -> None:
    for figure in FIGURES:
        asked = {name for _, name, _, _ in string.Formatter().parse(figure.words) if name}
        assert asked <= {"hours", "band"}
        assert figure.sentence(14.0, "150 to 250").endswith(".")


@pytest.mark.parametrize(
    ("key", "value", "text"),
    [
        # Three significant digits, by hand.
        ("mean", 1416.2, "1420 µmol m⁻² s⁻¹"),
        ("mean", 999.6, "1000 µmol m⁻² s⁻¹"),
        ("minimum", 86.4, "86 µmol m⁻² s⁻¹"),
        ("maximum", 3.14, "3.1 µmol m⁻² s⁻¹"),
        ("dli", 10.704, "10.7 mol m⁻² d⁻¹"),
        ("dli", 9.874, "9.87 mol m⁻² d⁻¹"),
        ("cv", 0.0996, "10 %"),
        ("cv", 0.00004, "under 0.1 %"),
        ("photon_flux", 1416.0, "1416 µmol s⁻¹"),
        ("efficacy", None, NO_VALUE),
    ],
)
def test_digits_without_an_uncertainty(key: str, value: float | None, text: str) -> None:
    assert FIGURE[key].text(value) == text


@pytest.mark.parametrize(
    ("key", "value", "standard", "texts"),
    [
        # JCGM 100:2008, 7.2.6: two digits of the half-width, the value to the same place.
        ("mean", 1416.2, 137.0, ("1420", "270")),
        ("mean", 173.4, 15.3, ("173", "30")),
        ("mean", 9.34, 0.9, ("9.3", "1.8")),
        ("dli", 9.97, 0.883, ("10.0", "1.7")),
        ("min_over_mean", 0.612, 0.011, ("61", "2")),
    ],
)
def test_digits_by_the_uncertainty(
    key: str, value: float, standard: float, texts: tuple[str, str]
) -> None:
    assert FIGURE[key].banded(value, standard, COVERAGE) == texts


def test_the_coverage_factor_is_that_of_a_normal_quantity() -> None:
    from scipy.stats import norm

    assert norm.cdf(COVERAGE) - norm.cdf(-COVERAGE) == pytest.approx(0.95, abs=1e-4)


def test_light_in_a_column_has_as_many_decimals_as_the_value_with_the_fewest() -> None:
    dli, mean = FIGURE["dli"], FIGURE["mean"]
    assert dli.aligned((9.29, 9.4, 10.1, None, 9.52)) == ("9.3", "9.4", "10.1", NO_VALUE, "9.5")
    assert dli.aligned((9.29, 9.4)) == ("9.29", "9.40")
    assert mean.aligned((8.44, 173.2)) == ("8", "173")
    # Shares keep what tells them from nothing and from all.
    assert FIGURE["share_inside"].aligned((0.004, 0.5)) == ("0.4", "50")
