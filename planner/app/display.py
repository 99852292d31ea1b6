"""What all views share: how things are shown, and what is selected. Never part of a plan."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

from PySide6.QtCore import QObject, Signal

from planner.estimate.result import Estimate
from planner.metrics.figures import FIGURE, Figure
from planner.plan.groups import Chosen, can_be_chosen
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.units import LengthUnit

COLOUR_MAPS = ("cividis", "viridis", "inferno")
"""Perceptually uniform maps; the first is the default and safe for colour-blind eyes."""

MAP_CELLS = (12, 24, 48)
"""Cells of the map along each side of the space that are offered."""


SWITCHES = ("contours", "band_wash", "gains", "ladder", "stretched")
"""Choices that are on or off; each is an action of the View menu by the same key."""


@dataclass(frozen=True)
class DisplayState:
    """The choices in force.

    ``ladder`` keeps the scale of heights beside the selected lamp; ``stretched`` spreads the
    colours over the light present rather than from dark. ``shows`` is what the map of the sketch
    shows, one of ``MAPPED``.
    """

    unit: LengthUnit = LengthUnit.CM
    colour_map: str = COLOUR_MAPS[0]
    contours: bool = True
    band_wash: bool = False
    gains: bool = False
    ladder: bool = False
    stretched: bool = False
    cells: int = 24
    shows: str = "mean"


class Display(QObject):
    """Shared by all views; emits ``changed`` with the new state."""

    changed = Signal(object)

    def __init__(self, state: DisplayState | None = None, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._state = state or DisplayState()

    @property
    def state(self) -> DisplayState:
        """The present choices."""
        return self._state

    @property
    def unit(self) -> LengthUnit:
        """Unit lengths are shown in."""
        return self._state.unit

    def update(self, **choices: Any) -> None:
        """Change some choices."""
        state = replace(self._state, **choices)
        if state != self._state:
            self._state = state
            self.changed.emit(state)


def shown_figure(estimate: Estimate | None, state: DisplayState) -> Figure:
    """What the map shows: what was chosen, where that is known of the light, or else PPFD."""
    known = estimate is not None and state.shows in estimate.maps
    return FIGURE[state.shows if known else "mean"]


# -- what is selected ------------------------------------------------------------------


class SelectionModel(QObject):
    """Holds the selection shared by drawing, elevation and fields.

    Several lamps and obstacles can be selected together: a tuple of places, of which the
    first leads. Its fields are shown, and whoever asks for one thing is told it. Signal:
    ``changed(Place)`` with the one that leads, whenever any of them changes.
    """

    changed = Signal(object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._chosen: Chosen = (Place(),)

    @property
    def current(self) -> Place:
        """The present selection; of several the one that leads."""
        return self._chosen[0]

    @property
    def chosen(self) -> Chosen:
        """The lamps and obstacles selected, the one that leads first; none for other places."""
        return self._chosen if can_be_chosen(self._chosen[0]) else ()

    def with_others(self, place: Place) -> Chosen:
        """A place with what is selected together with it, itself first."""
        return (place, *(one for one in self.chosen if one != place and place in self.chosen))

    def select(self, selection: Place) -> None:
        """Select one thing; emits ``changed`` when it is something else.

        What has no fields of its own stands for what has them: a housing for its lamp, a corner
        for the space.
        """
        if selection.kind is PlaceKind.HOUSING:
            selection = Place(PlaceKind.LAMP, selection.index)
        elif selection.kind is PlaceKind.CORNER:
            selection = Place()
        self._choose((selection,))

    def lead_with(self, place: Place) -> None:
        """Make one of several the one that leads; select it alone where it is not among them."""
        if place in self.chosen:
            self._choose(self.with_others(place))
        else:
            self.select(place)

    def select_all(self, places: Chosen) -> None:
        """Select several lamps and obstacles; the whole space where there are none."""
        self._choose(tuple(dict.fromkeys(places)) or (Place(),))

    def toggle(self, place: Place) -> None:
        """Take one more thing into the selection, to lead it, or out of it again."""
        if not can_be_chosen(place):
            return
        rest = tuple(one for one in self.chosen if one != place)
        self.select_all(rest if place in self.chosen else (place, *rest))

    def follow(self, plan: Plan) -> None:
        """Let go of what is gone; fall back to the whole space when nothing is left."""
        if self.chosen:
            self.select_all(tuple(place for place in self.chosen if place.fits(plan)))
        elif not self.current.fits(plan):
            whole = self.current.whole
            self.select(whole if whole.fits(plan) else Place())

    def _choose(self, places: Chosen) -> None:
        if places != self._chosen:
            self._chosen = places
            self.changed.emit(places[0])
