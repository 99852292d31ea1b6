"""How things are shown: unit of length, colour map, overlays. Never part of a plan."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

from PySide6.QtCore import QObject, Signal

from planner.units import LengthUnit

COLOUR_MAPS = ("cividis", "viridis", "inferno")
"""Perceptually uniform maps; the first is the default and safe for colour-blind eyes."""

MAP_CELLS = (12, 24, 48)
"""Cells of the map along each side of the space that are offered."""


@dataclass(frozen=True)
class DisplayState:
    """The choices in force."""

    unit: LengthUnit = LengthUnit.CM
    colour_map: str = COLOUR_MAPS[0]
    contours: bool = True
    band_wash: bool = False
    gains: bool = False
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
