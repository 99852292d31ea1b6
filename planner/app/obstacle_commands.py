"""The Edit menu's steps about obstacles."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QObject, Signal

from planner.app.fields.obstacle_steps import SHAPES, Shape, place_obstacle, remove_obstacle
from planner.app.fields.panel import Workplace
from planner.plan.place import PlaceKind


class ObstacleCommands(QObject):
    """Add and remove obstacles; ``refused(str)`` says why a step was not possible."""

    refused = Signal(str)

    def __init__(self, workplace: Workplace, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._workplace = workplace

    @property
    def selected(self) -> int | None:
        """Index of the selected obstacle, if one is."""
        current = self._workplace.selection.current
        fits = current.fits(self._workplace.document.plan)
        return current.index if current.kind is PlaceKind.OBSTACLE and fits else None

    def handlers(self) -> dict[str, Callable[[], None]]:
        """Handlers of the actions of the menu."""
        adding = {f"add_{shape.key}": lambda shape=shape: self.add(shape) for shape in SHAPES}
        return {**adding, "remove_obstacle": self.remove}

    def add(self, shape: Shape) -> None:
        """Put an obstacle into the middle of the space."""
        problem = place_obstacle(self._workplace, shape)
        if problem:
            self.refused.emit(problem)

    def remove(self) -> None:
        """Take the selected obstacle away."""
        index = self.selected
        if index is not None:
            remove_obstacle(self._workplace, index)
