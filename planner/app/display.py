"""What all views share: how things are shown, and what is selected. Never part of a plan."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

from PySide6.QtCore import QObject, Signal

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
    colours over the light present rather than from dark.
    """

    unit: LengthUnit = LengthUnit.CM
    colour_map: str = COLOUR_MAPS[0]
    contours: bool = True
    band_wash: bool = False
    gains: bool = False
    ladder: bool = False
    stretched: bool = False
    cells: int = 24


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


# -- what is selected ------------------------------------------------------------------


class SelectionModel(QObject):
    """Holds the selection shared by drawing, elevation and fields."""

    changed = Signal(object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._current = Place()

    @property
    def current(self) -> Place:
        """The present selection."""
        return self._current

    def select(self, selection: Place) -> None:
        """Select something; emits ``changed`` when it is something else.

        What has no fields of its own stands for what has them: a housing for its lamp, a corner
        for the space.
        """
        if selection.kind is PlaceKind.HOUSING:
            selection = Place(PlaceKind.LAMP, selection.index)
        elif selection.kind is PlaceKind.CORNER:
            selection = Place()
        if selection != self._current:
            self._current = selection
            self.changed.emit(selection)

    def follow(self, plan: Plan) -> None:
        """Fall back to the whole space when the selected thing is gone."""
        if not self._current.fits(plan):
            whole = self._current.whole
            self.select(whole if whole.fits(plan) else Place())
