"""What all forms share: fields of the plan or of a question, and how they are edited.

A number of the plan is a dial: its row knows its words, unit, bounds in the plan as it is,
explanation and undo step. Arrow keys pressed one after the other are one undo step in every
form; a text that was refused stays and is tried again after every edit, so that numbers that
belong together may be typed in any order.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtWidgets import QCheckBox

from planner.app.fields.choosers import Shelf, SpectrumChoice
from planner.app.fields.form import Form, NoteLabel, Row, TextLine
from planner.app.quantity_box import QuantityBox
from planner.plan import edits
from planner.plan.changes import moved_besides
from planner.plan.dials import Dial, dial
from planner.plan.groups import Chosen, counted
from planner.plan.lining import Lining
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.quantity import Quantity
from planner.plan.refusal import refusal
from planner.units import LengthUnit, in_unit

if TYPE_CHECKING:
    from planner.app.display import Display, SelectionModel
    from planner.app.document import Document
    from planner.app.estimator import Worth
    from planner.estimate.outlook import Uncertainty

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
    doubt: Callable[[], Uncertainty | None] = lambda: None
    """How sure the figures of the plan as it stands are, where that is known by now."""


@dataclass
class QuantityField:
    """A numeric field with the way from the plan into it and back.

    ``read`` gives None where the plan has no such number now; its row is hidden then.
    ``bounded`` gives the quantity with the bounds of the plan as it is. ``others`` gives the
    numbers of what is set with it, ``several`` the name of the step then, or an empty text.
    """

    row: Row
    box: QuantityBox
    read: Callable[[Plan], float | None]
    build: Callable[[Plan, float], Plan]
    step_name: str
    bounded: Callable[[Plan], Quantity] | None = None
    others: Callable[[Plan], Sequence[float]] = lambda _plan: ()
    several: Callable[[], str] = str

    @property
    def step(self) -> str:
        """The name of the undo step."""
        return self.several() or self.step_name

    def show(self, plan: Plan, *, anew: bool) -> None:
        """Show the plan; ``anew`` drops what was typed."""
        value = self.read(plan)
        if self.bounded is not None:
            self.row.set_visible(value is not None)
            if value is not None:
                self.box.set_quantity(self.bounded(plan))
        if value is None:
            return
        if anew or value != self.box.value:
            self.row.clear_error()
        (self.box.reset if anew else self.box.set_value)(value, self.others(plan))


class OptionalLine(TextLine):
    """A number that may be left out. Signals: ``entered(float or None)``, ``refused(sentence)``."""

    entered = Signal(object)
    refused = Signal(str)

    def __init__(self, quantity: Quantity, name: str) -> None:
        super().__init__(name)
        self._quantity, self._unit = quantity, LengthUnit.CM
        self.setAlignment(Qt.AlignmentFlag.AlignRight)
        self._number: float | None = None
        self.committed.connect(self._take)

    def show_number(self, number: float | None, without: str) -> None:
        """Show a value; ``without`` stands in the empty line."""
        self._number = number
        self.setPlaceholderText(without)
        self.set_value("" if number is None else self._quantity.text(number, self._unit))

    @property
    def number(self) -> float | None:
        """The value shown, None where it is left out."""
        return self._number

    def set_unit(self, unit: LengthUnit) -> None:
        """Show lengths in another unit; the value stays as it is."""
        if unit is not self._unit:
            self._unit = unit
            self.reset("" if self._number is None else self._quantity.text(self._number, unit))

    def _take(self, text: str) -> None:
        if not text:
            self.entered.emit(None)
            return
        try:
            number = self._quantity.parse(text, self._unit)
        except ValueError as error:
            self.refused.emit(in_unit(str(error), self._unit))
        else:
            self.entered.emit(number)


class FieldForm(Form):
    """Rows with numbers, texts, switches and choices, of the plan or held by the form itself.

    ``dragging_changed`` is true during a burst of steps, so that a quick preview will do.
    """

    dragging_changed = Signal(bool)

    def __init__(self, document: Document, display: Display) -> None:
        super().__init__()
        self._document, self._display = document, display
        self.quantities: list[QuantityField] = []
        self.texts: list[tuple[Row, TextLine, Callable[[Plan], str]]] = []
        self.boxes: list[QuantityBox] = []
        self._optional: list[OptionalLine] = []
        self._trying = False
        self._joined: str | None = None
        self._burst = QTimer(self, singleShot=True, interval=BURST_MS)
        self._burst.timeout.connect(self.end_burst)
        display.changed.connect(lambda _state: self._on_unit())
        document.settled.connect(self.try_refused)

    @property
    def unit(self) -> LengthUnit:
        """The unit lengths are shown in."""
        return self._display.unit

    @property
    def plan(self) -> Plan:
        """The plan as it stands."""
        return self._document.plan

    # -- showing ------------------------------------------------------------------------

    def show_anew(self) -> None:
        """Show the plan; whatever was half typed is dropped."""
        self.end_burst()
        self.clear_errors()
        for field in self.quantities:
            field.show(self.plan, anew=True)
        for _row, line, show in self.texts:
            line.reset(show(self.plan))

    def refresh(self, plan: Plan) -> None:
        """Show the plan; text that is being typed stays while its value is the same."""
        for field in self.quantities:
            field.show(plan, anew=False)
        for _row, line, show in self.texts:
            line.set_value(show(plan))

    def try_refused(self) -> None:
        """Ask once more for what was refused: another edit may have made it possible."""
        if self._trying:
            return
        self._trying = True
        try:
            # One that is taken may make room for the next; each is taken at most once.
            for _ in self.quantities:
                waiting = [field.box for field in self.quantities if field.box.is_refused]
                for box in waiting:
                    box.commit(again=True)
                if all(box.is_refused for box in waiting):
                    break
        finally:
            self._trying = False

    def _on_unit(self) -> None:
        for box in (*self.boxes, *(field.box for field in self.quantities)):
            box.set_unit(self.unit)
        for line in self._optional:
            line.set_unit(self.unit)

    # -- making fields ------------------------------------------------------------------

    def add_quantity(
        self,
        label: str,
        quantity: Quantity,
        read: Callable[[Plan], float | None],
        build: Callable[[Plan, float], Plan],
        step_name: str,
        explanation: str = "",
    ) -> QuantityField:
        """A number of the plan: ``read`` shows it, ``build`` makes the plan with another."""
        box = QuantityBox(quantity, label)
        box.set_unit(self.unit)
        row = self.add_row(label, box, explanation)
        return self.bind(QuantityField(row, box, read, build, step_name))

    def add_dial(self, key: str, label: str = "") -> QuantityField:
        """A number of the plan by its dial, at the place the form shows."""
        turned = dial(key)
        box = QuantityBox(turned.quantity, label or turned.label)
        box.set_unit(self.unit)
        row = self.add_row(label or turned.label, box, turned.about)
        return self.bind(self.dial_field(key, row, box))

    def dial_field(
        self, key: str, row: Row, box: QuantityBox, place: Place | None = None, name: str = ""
    ) -> QuantityField:
        """The field of a dial in a row that is made already."""
        turned = dial(key)

        def where(plan: Plan) -> tuple[Place, ...]:
            return (place,) if place else self.places_of(turned, plan)

        def at(plan: Plan) -> Place | tuple[Place, ...]:
            places = where(plan)
            return places[0] if len(places) == 1 else places

        def values(plan: Plan) -> list[float]:
            found = (turned.get(plan, one) for one in where(plan))
            return [value for value in found if value is not None]

        def several() -> str:
            places = where(self.plan)
            return counted(places, turned.short) if len(places) > 1 else ""

        return QuantityField(
            row,
            box,
            lambda plan: next(iter(values(plan)), None),
            lambda plan, value: turned.put(plan, at(plan), value),
            name or turned.step_name,
            lambda plan: turned.bounded(plan, at(plan)),
            values,
            several,
        )

    def places_of(self, _dial: Dial, _plan: Plan) -> tuple[Place, ...]:
        """Where a dial is turned that the form shows; nowhere if it is not offered."""
        return (Place(),)

    @property
    def meant(self) -> tuple[Place, ...]:
        """What an edit is about: of whatever else it moves a sentence tells."""
        return ()

    def add_number(
        self, label: str, quantity: Quantity, value: float, explanation: str = ""
    ) -> tuple[Row, QuantityBox]:
        """A number of a question, kept here and in no plan."""
        box = QuantityBox(quantity, label)
        box.set_unit(self.unit)
        box.reset(value)
        row = self.add_row(label, box, explanation)

        def take(new: float) -> None:
            row.clear_error()
            box.reset(new)

        box.committed.connect(take)
        box.stepped.connect(take)
        box.refused.connect(row.show_error)
        box.reverted.connect(row.clear_error)
        self.boxes.append(box)
        return row, box

    def add_optional(
        self, label: str, quantity: Quantity, explanation: str = ""
    ) -> tuple[Row, OptionalLine]:
        """A number that may be left out, shown by ``show_number``."""
        line = OptionalLine(quantity, label)
        line.set_unit(self.unit)
        row = self.add_row(label, line, explanation)
        line.refused.connect(row.show_error)
        line.reverted.connect(row.clear_error)
        self._optional.append(line)
        return row, line

    def take_typed(self) -> None:
        """Take over what is still being typed, before a question is asked."""
        for box in (*self.boxes, *self._optional):
            box.commit()

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
        lead: str = "",
    ) -> tuple[Row, QCheckBox]:
        """A switch; ``names`` are the undo steps of switching on and off.

        With a ``lead`` its words begin where fields have their labels.
        """
        box = QCheckBox(text)
        box.setAccessibleName(f"{lead} {text}".strip())
        row = self.add_row(lead, box, explanation)
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
        said: str = "",
    ) -> bool:
        """Ask the document for another plan; an error stands beside the row instead."""
        try:
            plan = build()
        except ValueError as error:
            if row is not None:
                row.show_error(refusal(error, self.unit))
            self.refresh(self.plan)
            return False
        if row is not None:
            row.clear_error()
        told = f"{said} {moved_besides(self.plan, plan, self.meant)[1]}".strip()
        self._document.apply(plan, step_name, merge_key, took=told)
        return True

    def change_lining(self, lining: Lining) -> None:
        """Give the plan's own copy of a lining other numbers."""
        name = f"Change lining {lining.name}"
        self.edit(None, lambda: edits.change_lining(self.plan, lining), name)

    def end_burst(self) -> None:
        """Close a burst of steps: the next one is an undo step of its own."""
        if self._burst.isActive():
            self._burst.stop()
            self._document.end_gesture()
            self.dragging_changed.emit(False)

    def _on_committed(self, field: QuantityField, value: float) -> None:
        self.end_burst()
        waits = any(one.box.is_refused for one in self.quantities if one is not field)
        key = self._joined if self._trying else f"joined/{id(self)}" if waits else None
        put, read_as = (lambda: field.build(self.plan, value)), field.box.read_as
        if not self.edit(field.row, put, field.step, key, read_as):
            return
        field.show(self.plan, anew=True)
        if key is not None and not self._trying:
            # What waited for this number is one step with it.
            self._joined = key
            self.try_refused()
            self._joined = None
            self._document.end_gesture()

    def _on_stepped(self, field: QuantityField, value: float) -> None:
        key = f"{field.step_name}/{id(field)}"
        if not self._burst.isActive():
            self.dragging_changed.emit(True)
        self._burst.start()
        if self.edit(field.row, lambda: field.build(self.plan, value), field.step, key):
            field.show(self.plan, anew=True)


class FieldPanel(FieldForm):
    """A column of fields for one kind of selected thing.

    A subclass adds its fields once, and shows a plan in ``refresh``. Panels inside it are
    shown, refreshed and left with it.
    """

    def __init__(self, workplace: Workplace) -> None:
        super().__init__(workplace.document, workplace.display)
        self.workplace = workplace
        self.selection = Place()
        self._inner: list[FieldPanel] = []

    def add_panel(self, panel: FieldPanel) -> None:
        """A panel as part of this one."""
        self._inner.append(panel)
        panel.dragging_changed.connect(self.dragging_changed)
        self.add_wide(panel)

    @property
    def chosen(self) -> Chosen:
        """The selected thing with those of its kind that are selected with it, itself first."""
        together = self.workplace.selection.chosen
        if self.selection not in together:
            return (self.selection,)
        return tuple(place for place in together if place.kind is self.selection.kind)

    @property
    def meant(self) -> Chosen:
        return self.chosen

    def show_several(self, note: NoteLabel, *alone: Row) -> None:
        """Say what is set for how many; rows of one ``alone`` are hidden then."""
        count = len(self.chosen)
        for row in alone:
            row.set_visible(count == 1)
        note.setVisible(count > 1)
        lamps = self.selection.kind is PlaceKind.LAMP
        what = f"{count} lamps" if lamps else f"{count} obstacles"
        note.setText(f"{what} are selected. What is set here is set for all of them.")

    def on_each(self, plan: Plan, change: Callable[[Plan, int], Plan]) -> Plan:
        """The plan with a change at each of the things chosen, by its number."""
        for place in self.chosen:
            plan = change(plan, place.index)
        return plan

    def places_of(self, dial: Dial, plan: Plan) -> tuple[Place, ...]:
        """The space, or all chosen that have such a number; x and y are of one alone."""
        if dial.at is PlaceKind.SPACE:
            return (Place(),)
        if len(self.chosen) > 1 and dial.key.endswith(("-x", "-y")):
            return ()
        return tuple(place for place in self.chosen if dial.get(plan, place) is not None)

    def show_selection(self, selection: Place) -> None:
        """Show another thing; whatever was half typed is dropped."""
        self.selection = selection
        self.show_anew()
        for panel in self._inner:
            panel.show_selection(selection)
        self.refresh(self.plan)

    def refresh(self, plan: Plan) -> None:
        """Show the plan; text that is being typed stays while its value is the same."""
        super().refresh(plan)
        for panel in self._inner:
            panel.refresh(plan)

    def leave(self) -> None:
        """Drop what is half typed: something else is shown now."""
        for field in self.quantities:
            field.row.clear_error()
            field.box.reset(field.box.value)
        for panel in self._inner:
            panel.leave()
