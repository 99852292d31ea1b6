"""What all field panels share: fields bound to a reading and an edit of the plan."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QTimer, Signal
from PySide6.QtWidgets import QCheckBox, QWidget

from planner.app.fields.form import Form, Row
from planner.app.fields.text_line import TextLine
from planner.app.quantity_box import QuantityBox
from planner.app.spectrum_choice import SpectrumChoice
from planner.plan import edits
from planner.plan.lining import Lining
from planner.plan.place import Place
from planner.plan.plan import Plan
from planner.plan.quantity import Quantity
from planner.plan.refusal import refusal

if TYPE_CHECKING:
    from planner.app.display import Display
    from planner.app.document import Document
    from planner.app.fields.shelf import Shelf
    from planner.app.selection import SelectionModel
    from planner.app.worth import Worth

BURST_MS = 700
"""Steps of the arrow keys closer together than this are one undo step."""


@dataclass(frozen=True)
class Workplace:
    """What every panel works on."""

    document: Document
    selection: SelectionModel
    display: Display
    shelf: Shelf
    worth: Worth | None = None
    spectra: SpectrumChoice = dataclasses.field(default_factory=SpectrumChoice)


@dataclass
class QuantityField:
    """A numeric field with the way from the plan into it and back."""

    row: Row
    box: QuantityBox
    read: Callable[[Plan], float]
    build: Callable[[Plan, float], Plan]
    step_name: str


class FieldPanel(Form):
    """A column of fields for one kind of selected thing.

    A subclass adds its fields once, and shows a plan in ``refresh``. ``dragging_changed``
    is true during a burst of steps, so that a quick preview will do.
    """

    dragging_changed = Signal(bool)

    def __init__(self, workplace: Workplace, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.workplace = workplace
        self.selection = Place()
        self.quantities: list[QuantityField] = []
        self.texts: list[tuple[Row, TextLine, Callable[[Plan], str]]] = []
        self._burst = QTimer(self)
        self._burst.setSingleShot(True)
        self._burst.setInterval(BURST_MS)
        self._burst.timeout.connect(self.end_burst)
        workplace.display.changed.connect(self._on_display_changed)

    @property
    def plan(self) -> Plan:
        """The plan as it stands."""
        return self.workplace.document.plan

    # -- showing ------------------------------------------------------------------------

    def show_selection(self, selection: Place) -> None:
        """Show another thing; whatever was half typed is dropped."""
        self.end_burst()
        self.selection = selection
        for field in self.quantities:
            field.row.clear_error()
            field.box.reset(field.read(self.plan))
        for row, line, show in self.texts:
            row.clear_error()
            line.reset(show(self.plan))
        self.refresh(self.plan)

    def refresh(self, plan: Plan) -> None:
        """Show the plan; text that is being typed stays while its value is the same."""
        for field in self.quantities:
            value = field.read(plan)
            if value != field.box.value:
                field.row.clear_error()
            field.box.set_value(value)
        for _row, line, show in self.texts:
            line.set_value(show(plan))

    def _on_display_changed(self, _state: object) -> None:
        for field in self.quantities:
            field.box.set_unit(self.workplace.display.unit)

    # -- making fields ------------------------------------------------------------------

    def add_quantity(
        self,
        label: str,
        quantity: Quantity,
        read: Callable[[Plan], float],
        build: Callable[[Plan, float], Plan],
        step_name: str,
        explanation: str = "",
    ) -> QuantityField:
        """A number of the plan: ``read`` shows it, ``build`` makes the plan with another."""
        box = QuantityBox(quantity, label)
        box.set_unit(self.workplace.display.unit)
        row = self.add_row(label, box, explanation)
        return self.bind(QuantityField(row, box, read, build, step_name))

    def bind(self, field: QuantityField) -> QuantityField:
        """Wire a numeric field to the document."""
        field.box.committed.connect(lambda value: self._on_committed(field, value))
        field.box.stepped.connect(lambda value: self._on_stepped(field, value))
        field.box.refused.connect(field.row.show_error)
        field.box.reverted.connect(field.row.clear_error)
        self.quantities.append(field)
        return field

    def unbind(self, field: QuantityField) -> None:
        """Forget a numeric field whose row is going away."""
        self.quantities.remove(field)

    def add_text(
        self,
        label: str,
        read: Callable[[Plan], str],
        build: Callable[[Plan, str], Plan],
        step_name: str,
    ) -> tuple[Row, TextLine]:
        """A line of text of the plan."""
        line = TextLine(label)
        row = self.add_row(label, line, wide=True)

        def take(text: str) -> None:
            if self.edit(row, lambda: build(self.plan, text), step_name):
                line.reset(read(self.plan))

        line.committed.connect(take)
        line.reverted.connect(row.clear_error)
        self.texts.append((row, line, read))
        return row, line

    def add_switch(
        self,
        text: str,
        build: Callable[[Plan, bool], Plan],
        names: tuple[str, str],
        explanation: str = "",
    ) -> tuple[Row, QCheckBox]:
        """A switch; ``names`` are the undo steps of switching on and off."""
        box = QCheckBox(text)
        box.setAccessibleName(text)
        row = self.add_row("", box, explanation)
        box.clicked.connect(
            lambda on: self.edit(row, lambda: build(self.plan, on), names[0] if on else names[1])
        )
        return row, box

    # -- editing ------------------------------------------------------------------------

    def edit(
        self,
        row: Row | None,
        build: Callable[[], Plan],
        step_name: str,
        merge_key: str | None = None,
    ) -> bool:
        """Ask the document for another plan; an error stands beside the row instead."""
        try:
            plan = build()
        except ValueError as error:
            if row is not None:
                row.show_error(refusal(error, self.workplace.display.unit))
            self.refresh(self.plan)
            return False
        if row is not None:
            row.clear_error()
        self.workplace.document.apply(plan, step_name, merge_key)
        return True

    def change_lining(self, lining: Lining) -> None:
        """Give the plan's own copy of a lining other numbers."""
        name = f"Change lining {lining.name}"
        self.edit(None, lambda: edits.change_lining(self.plan, lining), name)

    def end_burst(self) -> None:
        """Close a burst of steps: the next one is an undo step of its own."""
        if self._burst.isActive():
            self._burst.stop()
            self.workplace.document.end_gesture()
            self.dragging_changed.emit(False)

    def _on_committed(self, field: QuantityField, value: float) -> None:
        self.end_burst()
        if self.edit(field.row, lambda: field.build(self.plan, value), field.step_name):
            field.box.reset(field.read(self.plan))

    def _on_stepped(self, field: QuantityField, value: float) -> None:
        key = f"{field.step_name}/{self.selection}"
        if not self._burst.isActive():
            self.dragging_changed.emit(True)
        self._burst.start()
        if self.edit(field.row, lambda: field.build(self.plan, value), field.step_name, key):
            field.box.reset(field.read(self.plan))
