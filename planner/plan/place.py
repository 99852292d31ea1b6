"""Places: which thing of a plan is meant.

Everything that points at a part of a plan (a finding, a selection, a facet of the scene, a
share of the photons, a gain) points with a ``Place``. Two places are the same when kind,
number and band are; words are made of a place for people to read and never compared.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from functools import total_ordering
from typing import Final

from planner import language
from planner.plan.lining import Lining
from planner.plan.plan import Plan, Setup
from planner.plan.target import Target


class PlaceKind(StrEnum):
    """Kinds of place, in the order in which places are listed."""

    SPACE = "space"
    CORNER = "corner"
    WALL = "wall"
    CEILING = "ceiling"
    CANOPY = "canopy"
    FLOOR = "floor"
    OBSTACLE = "obstacle"
    TOP = "top"
    LAMP = "lamp"
    HOUSING = "housing"


_ORDER = {kind: number for number, kind in enumerate(PlaceKind)}
_COUNTED = {
    PlaceKind.CORNER,
    PlaceKind.WALL,
    PlaceKind.OBSTACLE,
    PlaceKind.TOP,
    PlaceKind.LAMP,
    PlaceKind.HOUSING,
}
_OF = {PlaceKind.TOP: PlaceKind.OBSTACLE, PlaceKind.HOUSING: PlaceKind.LAMP}
"""What is part of another thing, and has its number."""


@total_ordering
@dataclass(frozen=True)
class Place:
    """A kind, which one of its kind (from 0), and for a wall the band from the floor up.

    A wall with ``band`` None is the whole wall. ``HOUSING`` is the housing of the lamp of
    that index, ``TOP`` the canopy on the top of the obstacle of that index.
    """

    kind: PlaceKind = PlaceKind.SPACE
    index: int = 0
    band: int | None = None

    def __lt__(self, other: Place) -> bool:
        return self._rank < other._rank

    @property
    def _rank(self) -> tuple[int, int, int]:
        return _ORDER[self.kind], self.index, -1 if self.band is None else self.band

    @property
    def whole(self) -> Place:
        """The place without its band."""
        return Place(self.kind, self.index)

    def fits(self, plan: Setup) -> bool:
        """Whether the plan has such a thing."""
        if self.band is not None and self.kind is not PlaceKind.WALL:
            return False
        if self.kind is PlaceKind.WALL and self.band is not None:
            walls = plan.walls
            return 0 <= self.index < len(walls) and 0 <= self.band < len(walls[self.index].bands)
        return 0 <= self.index < self.count(plan)

    def count(self, plan: Setup) -> int:
        """How many of its kind there are."""
        match self.kind:
            case PlaceKind.CORNER | PlaceKind.WALL:
                return len(plan.walls)
            case PlaceKind.OBSTACLE | PlaceKind.TOP:
                return len(plan.obstacles)
            case PlaceKind.LAMP | PlaceKind.HOUSING:
                return len(plan.lamps)
        return 1

    def words(self, plan: Setup) -> str:
        """The place for people: 'Wall 2, band 1', 'Obstacle 3', 'Ceiling'.

        The band is left out where the wall has only one.
        """
        if self.kind is PlaceKind.HOUSING:
            return f"Housing of lamp {self.index + 1}"
        if self.kind is PlaceKind.TOP:
            return f"Canopy on obstacle {self.index + 1}"
        words = language.word(self.kind)
        words = words[:1].upper() + words[1:]
        if self.kind in _COUNTED:
            words += f" {self.index + 1}"
        if self.band is not None and len(plan.walls[self.index].bands) > 1:
            words += f", band {self.band + 1}"
        return words

    def tag(self, plan: Setup) -> str:
        """The place for machines, one in all languages: 'wall_2_band_1', 'lamp_1', 'ceiling'."""
        if self.kind in _OF:
            return f"{self.kind}_of_{_OF[self.kind]}_{self.index + 1}"
        tag = f"{self.kind}_{self.index + 1}" if self.kind in _COUNTED else str(self.kind)
        several = self.band is not None and len(plan.walls[self.index].bands) > 1
        return f"{tag}_band_{(self.band or 0) + 1}" if several else tag

    def inside(self, plan: Setup) -> str:
        """The words in the middle of a sentence: 'wall 2', 'the ceiling', "obstacle 3 ('Pot')"."""
        words = language.inside(self.words(plan))
        if self.kind in {PlaceKind.OBSTACLE, PlaceKind.TOP}:
            words += f" ('{plan.obstacles[self.index].name}')"
        if self.kind in _COUNTED and self.kind is not PlaceKind.TOP:
            return words
        return f"the {words}"

    def title(self, plan: Setup) -> str:
        """The place and what is there: 'Wall 2: Foil', 'Lamp 1: Bar', 'Obstacle 3: Pot'."""
        words, there = self.words(plan), None
        if self.kind is PlaceKind.WALL and plan.wall_opens(self.index):
            return f"{words} (open door)"
        if self.kind is PlaceKind.LAMP:
            lamp = plan.lamps[self.index]
            there = lamp.label or lamp.model.name
        elif self.kind in {PlaceKind.OBSTACLE, PlaceKind.TOP}:
            there = plan.obstacles[self.index].name
        elif (lining := lining_at(plan, self)) is not None:
            there = lining.name
        return words if there is None else f"{words}: {there}"


OWN: Final = Place(PlaceKind.CANOPY)
"""The plan's own canopy, over the whole footprint."""


def judged(setup: Setup) -> Place:
    """The canopy by which a setup or plan is judged."""
    top = setup.judged_top
    return OWN if top is None else Place(PlaceKind.TOP, top)


def above_own(setup: Setup) -> str:
    """Above the plan's own canopy in words; said plainly where obstacles carry others."""
    alone = all(one.canopy is None for one in setup.obstacles)
    return "above the canopy" if alone else "above the plan's own canopy"


def target_at(plan: Plan, place: Place) -> Target | None:
    """What is wanted on a canopy."""
    return plan.target_on(place.index if place.kind is PlaceKind.TOP else None)


def band_at(plan: Plan, place: Place, entered: float = 0.0) -> tuple[float, float] | None:
    """The band wanted on a canopy in µmol m⁻² s⁻¹; None where none can be told.

    ``entered`` of the light comes from the room and lasts other hours than the lamps: for the same
    DLI so much more is wanted while both shine, or less.
    """
    target, hours = target_at(plan, place), plan.photoperiod_hours
    band = None if target is None else target.ppfd_band(hours)
    if target is None or band is None or target.kind != "dli":
        return band
    more = entered * (1.0 - plan.space.room_hours / hours)
    return max(band[0] + more, 0.0), max(band[1] + more, 0.0)


def place_named(text: str) -> Place:
    """The place of a name as it is written: 'wall-2', 'wall 2, band 1', 'ceiling', 'lamp-1'.

    Raises
    ------
    ValueError
        If it names none; the message says how one is written.
    """
    kind, *numbers = re.split(r"[\s,-]+", text.strip().lower())
    word = "band" if kind == PlaceKind.WALL else ""
    named = [number for number in numbers if number != word]
    counted = kind in _COUNTED
    wanted = {1, 2} if word else {int(counted)}
    if kind not in _ORDER or len(named) not in wanted or not all(map(_counts, named)):
        raise ValueError(
            f"'{text}' is no place; write for example wall-2, wall-2-band-1, ceiling, floor, "
            "lamp-1 or obstacle-1."
        )
    at = [int(number) - 1 for number in named]
    return Place(PlaceKind(kind), *at)


def _counts(word: str) -> bool:
    return word.isdecimal() and 0 < int(word) < 1000


def every(plan: Setup, kind: PlaceKind) -> tuple[Place, ...]:
    """All places of one kind in a plan, in order."""
    return tuple(Place(kind, index) for index in range(Place(kind).count(plan)))


def surfaces(plan: Setup) -> Iterator[Place]:
    """Every place that carries a lining: bands of walls, ceiling, floor, obstacles."""
    for wall, cover in enumerate(plan.walls):
        for band in range(len(cover.bands)):
            yield Place(PlaceKind.WALL, wall, band)
    yield Place(PlaceKind.CEILING)
    yield Place(PlaceKind.FLOOR)
    for index in range(len(plan.obstacles)):
        yield Place(PlaceKind.OBSTACLE, index)


def reach(plan: Setup, place: Place) -> tuple[float, float]:
    """Lower and upper edge of a lined place above the floor, in metres."""
    height = plan.space.height
    match place.kind:
        case PlaceKind.WALL if place.band is not None:
            bands, band = plan.walls[place.index].bands, place.band
            edges = [0.0, *(height if b.top is None else min(b.top, height) for b in bands)]
            return max(edges[: band + 1]), max(edges[: band + 2])
        case PlaceKind.CEILING:
            return height, height
        case PlaceKind.FLOOR:
            return 0.0, 0.0
        case PlaceKind.OBSTACLE:
            obstacle = plan.obstacles[place.index]
            return obstacle.underside, obstacle.top
    return 0.0, height


def lining_at(plan: Setup, place: Place) -> Lining | None:
    """What a place is lined with; None where nothing is or a whole wall has several."""
    match place.kind:
        case PlaceKind.WALL:
            bands = plan.walls[place.index].bands
            keys = {band.lining for band in bands} if place.band is None else set()
            if place.band is not None:
                keys = {bands[place.band].lining}
            return plan.lining(keys.pop()) if len(keys) == 1 else None
        case PlaceKind.CEILING:
            return plan.lining(plan.ceiling)
        case PlaceKind.FLOOR:
            return plan.lining(plan.floor)
        case PlaceKind.OBSTACLE:
            return plan.lining(plan.obstacles[place.index].lining)
    return None


def cleanness(plan: Setup, place: Place) -> float:
    """What dirt leaves of the light a lined place returns when clean, as a share."""
    if place.kind is not PlaceKind.WALL or place.band is None:
        return 1.0
    return 1.0 - plan.walls[place.index].bands[place.band].dirt


def carries(plan: Setup, place: Place, key: str) -> bool:
    """Whether a lining of this key is what light meets at a place."""
    lining = lining_at(plan, place)
    return lining is not None and lining.key == key and not opens(plan, place)


def opens(plan: Setup, place: Place) -> bool:
    """Whether light leaves the space there: an open door, or no surface at all.

    An obstacle without a lining is black, not open.
    """
    if place.kind is PlaceKind.WALL and plan.wall_opens(place.index):
        return True
    lining = lining_at(plan, place)
    return place.kind is not PlaceKind.OBSTACLE and lining is not None and lining.is_opening
