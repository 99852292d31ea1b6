"""What is selected: a wall band, a lamp, an obstacle, the canopy, or nothing (the space)."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from PySide6.QtCore import QObject, Signal

from planner.plan.plan import Plan


class Kind(StrEnum):
    """Kinds of thing that can be selected."""

    SPACE = "space"
    WALL = "wall"
    LAMP = "lamp"
    OBSTACLE = "obstacle"
    CANOPY = "canopy"
    CEILING = "ceiling"
    FLOOR = "floor"


@dataclass(frozen=True)
class Selection:
    """A kind, which one of its kind, and for a wall the band from the floor up."""

    kind: Kind = Kind.SPACE
    index: int = 0
    band: int = 0

    def fits(self, plan: Plan) -> bool:
        """Whether the plan still holds the selected thing."""
        if self.kind is Kind.WALL:
            return self.index < len(plan.walls) and self.band < len(plan.walls[self.index].bands)
        if self.kind is Kind.LAMP:
            return self.index < len(plan.lamps)
        if self.kind is Kind.OBSTACLE:
            return self.index < len(plan.obstacles)
        return True


class SelectionModel(QObject):
    """Holds the selection shared by drawing, elevation and fields."""

    changed = Signal(object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._current = Selection()

    @property
    def current(self) -> Selection:
        """The present selection."""
        return self._current

    def select(self, selection: Selection) -> None:
        """Select something; emits ``changed`` when it is something else."""
        if selection != self._current:
            self._current = selection
            self.changed.emit(selection)

    def follow(self, plan: Plan) -> None:
        """Fall back to the whole space when the selected thing is gone."""
        if not self._current.fits(plan):
            whole_wall = Selection(self._current.kind, self._current.index)
            self.select(whole_wall if whole_wall.fits(plan) else Selection())
