"""Choosing a kind of lamp from the catalogue."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from planner.app.fields.shelf import Shelf
from planner.app.fields.still_combo import StillCombo
from planner.app.plain import tooltip
from planner.plan.lamp import LampModel
from planner.units import format_number


class LampChooser(StillCombo):
    """A list of lamps; ``chosen`` carries the kind asked for."""

    chosen = Signal(object)

    def __init__(self, shelf: Shelf, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._shelf = shelf
        self._offered: tuple[LampModel, ...] = ()
        self.setAccessibleName("Kind of lamp")
        self.activated.connect(lambda line: self.chosen.emit(self._offered[line]))

    def show_model(self, model: LampModel) -> None:
        """Offer the catalogue's lamps, with this one chosen; a changed one stands on top."""
        offered = self._shelf.lamps
        if model not in offered:
            offered = (model, *offered)
        if offered != self._offered:
            self._offered = offered
            self.clear()
            listed = set(self._shelf.lamps)
            for lamp in offered:
                name = lamp.name if lamp in listed else f"{lamp.name} (changed)"
                self.addItem(name)
            self.widen_list()
        self.setCurrentIndex(offered.index(model))
        self.setToolTip(tooltip(f"{model.name}: {lamp_facts(model)}"))


def lamp_facts(model: LampModel) -> str:
    """Photon flux, watts and efficacy in one line."""
    return (
        f"{format_number(model.ppf, 1)} µmol/s from {format_number(model.watts, 1)} W, "
        f"{model.ppf / model.watts:.2f} µmol/J"
    )
