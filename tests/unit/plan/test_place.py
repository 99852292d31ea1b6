"""Places point at things of a plan; words are for people only."""

from __future__ import annotations

import pytest

from planner.plan import edits
from planner.plan.lining import Band, Lining, WallCover
from planner.plan.place import Place, PlaceKind, carries, lining_at, opens, surfaces
from planner.plan.plan import Plan
from planner.plan.space import Obstacle
from tests.unit.reports.sample_estimate import sample_plan

FOIL = Lining(key="foil", name="Invented foil", reflectance=0.86, low=0.8, high=0.9)
CLAY = Lining(key="clay", name="Invented clay", reflectance=0.2, low=0.1, high=0.4)


def furnished() -> Plan:
    """Wall 2 in two bands, wall 3 an open door, two pots of one name and two materials."""
    plan = edits.line_wall(sample_plan(), 1, 0, FOIL)
    bands = (Band(lining="white-board", top=0.5), Band(lining="foil"))
    plan = edits.set_wall_cover(plan, 1, WallCover(bands=bands))
    plan = edits.with_space(plan, door=2, door_open=True)
    for x, lining in ((0.2, FOIL), (0.4, CLAY)):
        pot = Obstacle(
            name="Pot", x=x, y=0.2, underside=0.3, length=0.1, width=0.1, thickness=0.1,
            lining=lining.key,
        )  # fmt: skip
        plan = edits.add_obstacle(plan, pot, lining)
    return plan


@pytest.mark.parametrize(
    ("place", "fits", "title"),
    [
        (Place(), True, "Space"),
        (Place(PlaceKind.WALL, 0), True, "Wall 1: White board"),
        (Place(PlaceKind.WALL, 0, 0), True, "Wall 1: White board"),
        (Place(PlaceKind.WALL, 1), True, "Wall 2"),
        (Place(PlaceKind.WALL, 1, 1), True, "Wall 2, band 2: Invented foil"),
        (Place(PlaceKind.WALL, 1, 2), False, ""),
        (Place(PlaceKind.WALL, 2, 0), True, "Wall 3 (open door)"),
        (Place(PlaceKind.WALL, 4), False, ""),
        (Place(PlaceKind.CORNER, 3), True, "Corner 4"),
        (Place(PlaceKind.CORNER, 4), False, ""),
        (Place(PlaceKind.CEILING), True, "Ceiling: Open (no surface)"),
        (Place(PlaceKind.CEILING, 1), False, ""),
        (Place(PlaceKind.CEILING, 0, 0), False, ""),
        (Place(PlaceKind.CANOPY), True, "Canopy"),
        (Place(PlaceKind.OBSTACLE, 1), True, "Obstacle 2: Pot"),
        (Place(PlaceKind.OBSTACLE, 2), False, ""),
        (Place(PlaceKind.LAMP, 0), True, "Lamp 1: Invented panel"),
        (Place(PlaceKind.HOUSING, 0), True, "Housing of lamp 1"),
        (Place(PlaceKind.LAMP, 1), False, ""),
        (Place(PlaceKind.LAMP, -1), False, ""),
    ],
)
def test_a_place_fits_and_has_words(place: Place, fits: bool, title: str) -> None:
    plan = furnished()
    assert place.fits(plan) is fits
    if fits:
        assert place.title(plan) == title
        assert title.startswith(place.words(plan))


def test_words_tell_all_places_of_a_plan_apart() -> None:
    plan = furnished()
    words = [place.words(plan) for place in surfaces(plan)]
    assert len(set(words)) == len(words) == 5 + 2 + 2


def test_two_obstacles_of_one_name_keep_their_own_material() -> None:
    plan = furnished()
    first, second = Place(PlaceKind.OBSTACLE, 0), Place(PlaceKind.OBSTACLE, 1)
    assert (lining_at(plan, first), lining_at(plan, second)) == (FOIL, CLAY)
    assert carries(plan, first, "foil")
    assert not carries(plan, second, "foil")


def test_what_opens() -> None:
    plan = furnished()
    assert opens(plan, Place(PlaceKind.WALL, 2, 0))
    assert not opens(plan, Place(PlaceKind.WALL, 0, 0))
    assert opens(plan, Place(PlaceKind.CEILING))
    assert not opens(edits.line_ceiling(plan, FOIL), Place(PlaceKind.CEILING))
    black = edits.change_obstacle(plan, 0, lining="open")
    assert not opens(black, Place(PlaceKind.OBSTACLE, 0)), "an obstacle without lining is black"


def test_places_have_an_order() -> None:
    mixed = [
        Place(PlaceKind.LAMP, 0), Place(PlaceKind.WALL, 1, 0), Place(PlaceKind.WALL, 0, 1),
        Place(PlaceKind.WALL, 1), Place(PlaceKind.SPACE), Place(PlaceKind.CEILING),
    ]  # fmt: skip
    assert sorted(mixed) == [
        Place(PlaceKind.SPACE), Place(PlaceKind.WALL, 0, 1), Place(PlaceKind.WALL, 1),
        Place(PlaceKind.WALL, 1, 0), Place(PlaceKind.CEILING), Place(PlaceKind.LAMP, 0),
    ]  # fmt: skip
