"""Dirt, dust and hours of use: factors by hand, and what they do to the light."""

from __future__ import annotations

import math

import numpy as np
import pytest

from planner.catalogue.library import load_catalogue
from planner.estimate.result import EstimateOptions, Quality
from planner.estimate.sensitivity import Reckoner
from planner.plan import edits, variant_edits
from planner.plan.ageing import as_new, fading_words, later
from planner.plan.changes import refit
from planner.plan.dials import dial
from planner.plan.lit import same_light
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from tests.physics.random_walk import Room, cosine_panel, walk
from tests.physics.rooms import BLACK, Rho, box, lamp, light, panel, plan

WHITE: Rho = (0.7, 0.1)


def cabinet(dirt: float = 0.0) -> Plan:
    """0.6 m wide and white, the lowest 20 cm above the canopy a band of their own."""
    made = plan(
        box(0.6, 0.6), 1.2, [lamp((0.3, 0.3), 0.5, body=panel(0.3, 0.2))],
        walls=[((0.4, WHITE), (None, WHITE))] * 4, ceiling=WHITE, canopy=0.06, canopy_height=0.2,
    )  # fmt: skip
    for wall in range(4):
        made = edits.change_band(made, wall, 0, dirt=dirt)
    return made


def used(hours: float, life: float, dust: float = 0.0) -> Plan:
    made = cabinet()
    model = edits.changed(made.lamps[0].model, hours_to_90=life)
    return edits.change_lamp(made, 0, model=model, hours_run=hours, dust=dust)


@pytest.mark.parametrize(
    ("hours", "life", "dust", "left"),
    [
        # An exponential through 90 % at L90 (ANSI/IES TM-21, from memory), by hand.
        (0.0, 30_000.0, 0.0, 1.0),
        (30_000.0, 30_000.0, 0.0, 0.9),
        (60_000.0, 30_000.0, 0.0, 0.81),
        (15_000.0, 30_000.0, 0.05, math.sqrt(0.9) * 0.95),
        (60_000.0, 0.0, 0.1, 0.9),
    ],
)
def test_a_lamp_gives_what_age_and_dust_leave(
    hours: float, life: float, dust: float, left: float
) -> None:
    new, old = light(cabinet(), (6, 6)), light(used(hours, life, dust), (6, 6))
    np.testing.assert_allclose(old.ppfd, left * new.ppfd, rtol=1e-12)
    assert old.figures.photon_flux == pytest.approx(left * new.figures.photon_flux)
    assert old.figures.watts == new.figures.watts


def test_l70_stands_beside_l90_as_the_help_says() -> None:
    """From L90 to L70 by the same law: ln 0.9 / ln 0.7."""
    assert math.log(0.9) / math.log(0.7) == pytest.approx(0.3, abs=0.01)


@pytest.mark.slow
def test_dirty_bands_by_photons_walked_one_by_one() -> None:
    """``random_walk`` shares no code with the program; a fifth is taken off by hand."""

    def rho(_wall: int, z: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        clean = np.where(z <= 0.4, 0.8, 1.0)
        return WHITE[0] * clean, WHITE[1] * clean

    what = cabinet(0.2)
    room = Room(np.array(what.space.footprint), 0.2, 1.2, rho, WHITE, (0.06, 0.0), 0.2)
    start, direction = cosine_panel((0.3, 0.3, 0.7), (0.3, 0.2), 1.0, 300_000, 5)
    counted = float(walk(room, start, direction, (4, 4), 5).sum())
    expected, chance = counted / 300_000 * 100 / 0.36, 1 / math.sqrt(counted)
    found = light(what, (8, 8))
    assert found.figures.mean == pytest.approx(expected, rel=3e-3 + 5 * chance)
    clean = light(cabinet(), (8, 8))
    assert found.figures.mean < clean.figures.mean
    assert found.figures.minimum / clean.figures.minimum < found.figures.mean / clean.figures.mean


def test_what_a_cleaner_lining_would_bring_knows_the_dirt() -> None:
    """The slope by reflectance of the lining, dirt and all, is that of two plans."""
    what = cabinet(0.3)
    reckoner = Reckoner(what, EstimateOptions((6, 6), Quality.PREVIEW))
    bands = tuple(Place(PlaceKind.WALL, wall, band) for wall in range(4) for band in range(2))
    darker = reckoner.lined_at((*bands, Place(PlaceKind.CEILING)), 0.6)
    other = what.model_copy(
        update={
            "linings": tuple(
                one.model_copy(update={"reflectance": 0.6}) if one.reflectance > 0.5 else one
                for one in what.linings
            )
        }
    )
    assert darker.mean() == pytest.approx(light(other, (6, 6)).ppfd.mean(), rel=0.02)


def test_a_year_on_and_as_new() -> None:
    now = used(1000.0, 30_000.0, 0.05)
    now = edits.change_band(now, 0, 0, dirt=0.2)
    year = later(now)
    # 365 days of 16 h.
    assert year.lamps[0].hours_run == 1000 + 5840
    assert year.lamps[0].dust == 0.05
    assert same_light(as_new(now), used(0.0, 30_000.0))
    assert variant_edits.name_of(now, year) == "Lamp 1: hours run 6840 h"
    assert later(now, 1000.0).lamps[0].hours_run == 500_000


def test_another_kind_of_lamp_is_new() -> None:
    old = used(1000.0, 30_000.0, 0.05)
    corrected = edits.changed(old.lamps[0].model, ppf=90.0)
    assert refit(old, None, corrected).lamps[0].hours_run == 1000
    other = edits.changed(corrected, key="other")
    assert refit(old, None, other).lamps[0].kept == 1.0


def test_dirt_stays_with_its_band() -> None:
    what = cabinet(0.2)
    split = edits.split_band(what, 0, 0, 0.3)
    assert [band.dirt for band in split.walls[0].bands] == [0.2, 0.2, 0.0]
    assert edits.change_band(what, 0, 0, top=0.5).walls[0].bands[0].dirt == 0.2
    assert edits.merge_band(what, 0, 0).walls[0].bands[0].dirt == 0.2
    relined = edits.line_wall(what, 0, 0, what.linings[0])
    assert relined.walls[0].bands[0].dirt == 0.0
    place = Place(PlaceKind.WALL, 1, 0)
    assert dial("dirt").get(dial("dirt").put(what, place, 0.4), place) == 0.4
    with pytest.raises(ValueError, match="dirt: must be at most 100"):
        dial("dirt").put(what, place, 1.2)


def test_dirt_on_black_changes_nothing() -> None:
    black = plan(box(0.6, 0.6), 1.2, [lamp((0.3, 0.3), 0.5)], walls=BLACK)
    dirty = edits.change_band(black, 0, 0, dirt=0.5)
    assert np.array_equal(light(dirty, (6, 6)).ppfd, light(black, (6, 6)).ppfd)


def test_what_is_not_known_of_age_is_said() -> None:
    """A lamp that has run and states no L90 counts as new, and that is told; one of 0 h is new."""
    known, unknown, new = used(1000.0, 30_000.0), used(1000.0, 0.0), used(0.0, 0.0)
    assert (fading_words(known), fading_words(new)) == ("", "")
    assert unknown.lamps[0].kept == 1.0
    assert fading_words(unknown).startswith(
        "How far lamp 1 faded is not known, and none is counted"
    )
    assert "(L90)" in fading_words(later(new))


def test_lamps_of_the_catalogue_with_hours_have_their_source_beside() -> None:
    told = [one for one in load_catalogue().lamps if one.hours_to_90 > 0]
    assert len(told) == 7
    for one in told:
        assert one.hours_to_90 == 36_000
        assert "Hours to 90 %: 36,000" in one.source
