"""What all maps and boards share: the choices in force, and the places pointed at."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from enum import StrEnum
from typing import Any

from PySide6.QtCore import QObject, Signal

from planner.app.canvas.items import Section
from planner.estimate.compare import PLAN_SIDE, Identity
from planner.estimate.options import Wishes
from planner.plan.space import Point


class Shows(StrEnum):
    """What the maps show."""

    LIGHT = "light"
    DIFFERENCE = "difference"
    RATIO = "ratio"


@dataclass(frozen=True)
class LinkedState:
    """``chosen`` and ``baseline`` are sides by identity.

    Inside ``margin`` (a fraction) two options are equal for the grower's purpose.
    """

    shows: Shows = Shows.LIGHT
    own_scale: bool = False
    open_air: bool = False
    baseline: Identity = PLAN_SIDE
    chosen: Identity = PLAN_SIDE
    margin: float = 0.05
    wishes: Wishes = field(default_factory=Wishes)


class Linked(QObject):
    """Emits ``changed(new, old)`` for the choices; pointer and section have their own."""

    changed = Signal(object, object)
    pointer_moved = Signal(object)
    section_moved = Signal(object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._state = LinkedState()
        self._pointer: Point | None = None
        self._section: Section | None = None

    @property
    def state(self) -> LinkedState:
        """The choices in force."""
        return self._state

    @property
    def pointer(self) -> Point | None:
        """Where the pointer is in the space, in metres; None where it is not."""
        return self._pointer

    @property
    def section(self) -> Section | None:
        """The two ends of the section line in metres."""
        return self._section

    def update(self, **choices: Any) -> None:
        """Change some choices."""
        old, self._state = self._state, replace(self._state, **choices)
        if old != self._state:
            self.changed.emit(self._state, old)

    def point_at(self, place: Point | None) -> None:
        """Show a place in all maps."""
        if place != self._pointer:
            self._pointer = place
            self.pointer_moved.emit(place)

    def cut_along(self, section: Section) -> None:
        """Move the section line in all maps."""
        if section != self._section:
            self._section = section
            self.section_moved.emit(section)
