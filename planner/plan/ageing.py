"""A setup as it was when new, and as it will be after some time of use."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final, TypeVar

from planner.language import inside
from planner.plan import edits
from planner.plan.lamp import Lamp
from planner.plan.lining import WallCover
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Setup
from planner.plan.quantity import MOST_LAMP_HOURS
from planner.units import listed

_Setup = TypeVar("_Setup", bound=Setup)

DAYS_A_YEAR: Final = 365.0


FADING_UNKNOWN: Final = (
    "How far it has faded is not known, and none is counted: type the hours to 90 % from its data "
    "sheet (L90)."
)


def fades_unknown(lamps: Sequence[Lamp]) -> bool:
    """Whether one of some lamps has run for hours of which nobody can tell what they took."""
    return any(lamp.hours_run > 0 and lamp.model.hours_to_90 <= 0 for lamp in lamps)


def fading_words(setup: Setup) -> str:
    """Of which lamps that have run it is not known how far they faded; '' where of none."""
    named = [
        inside(Place(PlaceKind.LAMP, k).words(setup))
        for k, lamp in enumerate(setup.lamps)
        if fades_unknown((lamp,))
    ]
    if not named:
        return ""
    of = "all its lamps" if len(named) == len(setup.lamps) > 1 else listed(named)
    return (
        f"How far {of} faded is not known, and none is counted: type the hours to 90 % from the "
        "data sheet (L90)."
    )


def as_new(setup: _Setup) -> _Setup:
    """The setup with new, dustless lamps and clean walls."""
    lamps = edits.each_lamp(setup, lambda lamp: edits.changed(lamp, hours_run=0.0, dust=0.0))
    walls = tuple(
        WallCover(bands=tuple(edits.changed(band, dirt=0.0) for band in cover.bands))
        for cover in setup.walls
    )
    return edits.changed(lamps, walls=walls)


def later(setup: _Setup, years: float = 1.0) -> _Setup:
    """The setup after so many years: its lamps have run on for the hours of its days.

    Dust and dirt stay as they are entered: how fast they come depends on the room and on how
    often it is wiped, and nobody can know that beforehand.
    """
    hours = years * DAYS_A_YEAR * setup.photoperiod_hours
    return edits.each_lamp(
        setup,
        lambda lamp: edits.changed(
            lamp, hours_run=min(round(lamp.hours_run + hours, 1), MOST_LAMP_HOURS)
        ),
    )
