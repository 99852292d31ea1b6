"""The built-in linings against published measurements and optics."""

from __future__ import annotations

from pathlib import Path

import pytest

from planner.catalogue.library import Catalogue, load_catalogue
from planner.plan.lining import Caution, Lining

METALS = (
    "foil-shiny",
    "foil-matt",
    "foil-creased",
    "aluminised-film",
    "rescue-blanket",
    "metallised-film-worn",
    "aluminium-sheet",
)


@pytest.fixture(scope="module")
def catalogue(tmp_path_factory: pytest.TempPathFactory) -> Catalogue:
    return load_catalogue(tmp_path_factory.mktemp("own"))


def test_there_are_enough_of_them_with_a_source_each(catalogue: Catalogue) -> None:
    assert len(catalogue.linings) >= 18
    assert len({lining.key for lining in catalogue.linings}) == len(catalogue.linings)
    for lining in catalogue.linings:
        assert 0 <= lining.low <= lining.reflectance <= lining.high <= 1
        assert lining.diffuse + lining.specular == pytest.approx(lining.reflectance)
        assert lining.source.startswith(("Published", "Calculated", "Typical, from memory")), (
            lining.key
        )


def test_both_sides_of_foil_return_the_same_total(catalogue: Catalogue) -> None:
    # Pozzobon et al. (2020), Biotechnology Reports 25, e00399: about 0.86 in the visible,
    # total equal on both sides, the bright side the more specular one.
    shiny, matt = catalogue.lining("foil-shiny"), catalogue.lining("foil-matt")
    assert shiny.reflectance == matt.reflectance == pytest.approx(0.86, abs=0.005)
    assert shiny.specular_share > matt.specular_share


def test_foil_is_not_the_folklore_value(catalogue: Catalogue) -> None:
    # Unsourced tables give 0.55-0.65; bulk aluminium is measured at 0.85-0.88 over 430-701 nm
    # (NASA TN D-5353, 1969).
    for key in ("foil-shiny", "foil-matt"):
        assert catalogue.lining(key).low > 0.65
        assert "contradicted" in catalogue.lining(key).note


@pytest.mark.parametrize("key", METALS)
def test_no_aluminium_beats_the_pure_metal(catalogue: Catalogue, key: str) -> None:
    # Evaporated aluminium at best, 400-700 nm: 0.924 (McPeak et al. 2015, ACS Photonics 2, 326).
    assert catalogue.lining(key).high <= 0.924


@pytest.mark.parametrize("key", METALS)
def test_metal_linings_warn_of_electricity(catalogue: Catalogue, key: str) -> None:
    assert Caution.CONDUCTS in catalogue.lining(key).cautions


@pytest.mark.parametrize("key", ["aluminised-film", "rescue-blanket", "white-film", "cardboard"])
def test_plastic_film_and_card_warn_of_fire(catalogue: Catalogue, key: str) -> None:
    assert Caution.BURNS in catalogue.lining(key).cautions


@pytest.mark.parametrize(
    ("key", "measured"),
    [
        ("concrete", 0.318),  # ECOSTRESS/ASTER library, construction concrete, photon mean PAR
        ("peat-wet", 0.051),  # the same, black loam
        ("barium-sulphate", 0.949),  # Noble et al. (2008), mean 400-1600 nm
        ("ptfe-sheet", 0.935),  # NEXT collaboration (2020), middle of 0.925-0.945 at 450 nm
        ("white-tile", 0.7),  # photometric table of a lamp maker
        ("red-brick", 0.2),
        ("plaster", 0.8),
    ],
)
def test_the_range_holds_the_published_value(
    catalogue: Catalogue, key: str, measured: float
) -> None:
    lining = catalogue.lining(key)
    assert lining.low <= measured <= lining.high


def test_a_window_pane_returns_what_fresnel_says(catalogue: Catalogue) -> None:
    one_face = ((1.52 - 1) / (1.52 + 1)) ** 2
    pane = 2 * one_face / (1 + one_face)  # both faces, incoherent, lossless
    double = 2 * pane / (1 + pane)
    glass = catalogue.lining("glass-pane")
    assert glass.reflectance == pytest.approx(pane, abs=0.005)
    assert glass.high == pytest.approx(double, abs=0.01)
    assert glass.specular_share == 1


def test_white_board_has_the_gloss_of_a_plastic_surface(catalogue: Catalogue) -> None:
    # A smooth surface of index 1.5 returns 4 % at normal incidence, 4-6 % is usual for melamine.
    assert 0.03 <= catalogue.lining("white-board").specular <= 0.07


def test_the_order_of_brightness_is_the_one_people_know(catalogue: Catalogue) -> None:
    order = ["expanded-ptfe", "white-board", "light-grey-paint", "red-brick", "black-paint"]
    values = [catalogue.lining(key).reflectance for key in order]
    assert values == sorted(values, reverse=True)


def test_open_is_looked_up_but_not_listed(catalogue: Catalogue) -> None:
    assert catalogue.lining("open").is_opening
    assert all(not lining.is_opening for lining in catalogue.linings)


def test_an_unknown_key_is_named(catalogue: Catalogue) -> None:
    with pytest.raises(KeyError, match="no lining 'gold'"):
        catalogue.lining("gold")


def test_entries_fit_into_a_plan_file(catalogue: Catalogue, tmp_path: Path) -> None:
    for lining in catalogue.linings:
        assert Lining.model_validate_json(lining.model_dump_json()) == lining
