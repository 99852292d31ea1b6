"""What is selected: a place of the plan; the whole space where nothing else is."""

from __future__ import annotations

from PySide6.QtCore import QObject, Signal

from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan


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
