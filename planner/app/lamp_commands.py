"""The Edit menu's steps about lamps."""

from __future__ import annotations

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QMenu

from planner.app.fields import lamp_steps
from planner.app.fields.panel import Workplace
from planner.app.fields.wording import explain
from planner.plan import edits
from planner.plan.lamp import LampModel
from planner.plan.place import Place, PlaceKind


class LampCommands(QObject):
    """Hang, duplicate and remove lamps.

    Signal: ``refused(str)`` with the sentence why a step was not possible.
    """

    refused = Signal(str)

    def __init__(self, workplace: Workplace, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._workplace = workplace

    @property
    def selected(self) -> int | None:
        """Index of the selected lamp, if one is."""
        current = self._workplace.selection.current
        plan = self._workplace.document.plan
        return current.index if current.kind is PlaceKind.LAMP and current.fits(plan) else None

    def add(self) -> None:
        """Hang a lamp: of the kind selected, or else of the kind hung last."""
        index = self.selected
        if index is not None:
            self.add_model(self._workplace.document.plan.lamps[index].model)
        else:
            self._tell(lamp_steps.hang_lamp(self._workplace))

    def add_model(self, model: LampModel) -> None:
        """Hang a lamp of the catalogue."""
        document = self._workplace.document
        try:
            after = edits.add_lamp(document.plan, lamp_steps.new_lamp(document.plan, model))
        except ValueError as error:
            self._tell(explain(error))
            return
        document.apply(after, "Add lamp")
        self._workplace.selection.select(Place(PlaceKind.LAMP, len(after.lamps) - 1))

    def duplicate(self) -> None:
        """Hang a copy beside the selected lamp."""
        index = self.selected
        if index is not None:
            self._tell(lamp_steps.duplicate_lamp(self._workplace, index))

    def remove(self) -> None:
        """Take the selected lamp down."""
        index = self.selected
        if index is not None:
            lamp_steps.remove_lamp(self._workplace, index)

    def attach(self, menu: QMenu) -> None:
        """Offer the lamps of the catalogue in a menu, filled whenever it opens."""
        menu.aboutToShow.connect(lambda: self._fill(menu))
        self._fill(menu)

    def _fill(self, menu: QMenu) -> None:
        menu.clear()
        for model in self._workplace.shelf.lamps:
            action = menu.addAction(model.name.replace("&", "&&"))
            action.setStatusTip(f"{model.ppf:g} µmol/s, {model.watts:g} W")
            action.triggered.connect(lambda _=False, model=model: self.add_model(model))

    def _tell(self, problem: str) -> None:
        if problem:
            self.refused.emit(problem)
