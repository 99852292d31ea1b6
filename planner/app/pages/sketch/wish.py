"""Asking for a wish: a level of light wanted on the canopy, and three honest ways to it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QPalette
from PySide6.QtWidgets import QGridLayout, QWidget

from planner.app import theme
from planner.app.fields.form import AlertLabel, NoteLabel, in_tab_order, link_button
from planner.app.pages.sketch.asked import Asked
from planner.app.plain import PlainLabel, explain
from planner.app.quantity_box import QuantityBox
from planner.plan.lit import Depends, depends
from planner.plan.plan import Plan
from planner.plan.quantity import PPFD
from planner.units import in_unit

if TYPE_CHECKING:
    from planner.app.fields.panel import Workplace
    from planner.estimate.result import Estimate
    from planner.estimate.ways import Way


class WishLine(QWidget):
    """One level asked for, and below it the ways: each in a sentence with a button that does it.

    The ways tell of the plan they were asked about: any edit that changes figures takes them
    away, ``taken(plan, name)`` carries the plan of one that is to be done. ``looking`` tells that
    ways are being looked for.
    """

    taken = Signal(object, str)
    looking = Signal()

    def __init__(self, asked: Asked, work: Workplace, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._asked, self._work = asked, work
        self._of: Depends | None = None
        self.box = QuantityBox(PPFD.within(1.0, PPFD.maximum), "Mean wanted")
        label = PlainLabel("Mean wanted")
        label.setBuddy(self.box)
        self.ask_button = link_button("Find three ways", act=lambda: self.ask(self.box.value))
        explain(
            self.ask_button,
            "Looks for this mean by dimming, by the hanging height and by the lining of the walls. "
            "A press on the colour bar asks for the level pressed on.",
        )
        self.note = NoteLabel()
        self.alert = AlertLabel()
        self.ways: tuple[Way, ...] = ()
        self.words: list[PlainLabel] = []
        self.buttons: list[QWidget] = []
        row = theme.row(label, self.box, self.ask_button, (self.note, 1), gap=theme.RHYTHM)
        self._lines = QGridLayout(self)
        self._lines.setContentsMargins(theme.RHYTHM, 0, theme.RHYTHM, 0)
        self._lines.setVerticalSpacing(2)
        self._lines.setHorizontalSpacing(theme.RHYTHM)
        self._lines.setColumnStretch(0, 1)
        self._lines.addLayout(row, 0, 0, 1, 2)
        self._lines.addWidget(self.alert, 1, 0, 1, 2)
        for line in range(3):
            self._add_line(2 + line)
        in_tab_order([self.box, self.ask_button, *self.buttons])
        self.box.committed.connect(self._take)
        self.box.stepped.connect(self.box.reset)
        self.box.refused.connect(self.alert.say)
        self.box.reverted.connect(lambda: self.alert.say(""))
        asked.wished.connect(self._on_answer)
        asked.refused.connect(self._on_refused)
        work.document.changed.connect(self._on_plan)
        work.display.changed.connect(lambda _state: self.show_ways(self.ways))
        self.show_ways(())

    def _add_line(self, line: int) -> None:
        words = PlainLabel(wrap=True)
        button = link_button("Do it")
        button.clicked.connect(lambda _on=False, k=line - 2: self._do(k))
        self.words.append(words)
        self.buttons.append(button)
        self._lines.addWidget(words, line, 0)
        self._lines.addWidget(button, line, 1, Qt.AlignmentFlag.AlignTop)

    def propose(self, known: Estimate) -> None:
        """Begin at a level: the middle of the band, else the light there is."""
        band = known.band or (known.figures.mean, known.figures.mean)
        self.box.reset(float(round((band[0] + band[1]) / 2)))

    def ask(self, wanted: float) -> None:
        """Look for the ways to a mean PPFD."""
        self.alert.say("")
        self.box.reset(float(round(wanted)))
        self.show_ways(())
        plan = self._work.document.plan
        self._of = depends(plan)
        self.note.setText("Looking for it …")
        self.looking.emit()
        from planner.estimate.ways import offered  # noqa: PLC0415 - heavy

        linings = offered(plan, self._work.shelf.catalogue)
        self._asked.wish(plan, self.box.value, linings, self._work.display.state)

    def show_ways(self, ways: tuple[Way, ...]) -> None:
        """Show what was found, nothing while there is nothing."""
        self.ways = ways
        for k, (words, button) in enumerate(zip(self.words, self.buttons, strict=True)):
            way = ways[k] if k < len(ways) else None
            words.setVisible(way is not None)
            made = None if way is None else self._made(way)
            button.setVisible(made is not None and made != self._work.document.plan)
            if way is None:
                continue
            unit = self._work.display.unit
            words.setText(in_unit(way.words, unit))
            role = QPalette.ColorRole
            words.setForegroundRole(role.WindowText if way.reached else role.PlaceholderText)
            button.setAccessibleName(f"Do it: {in_unit(way.name, unit)}")

    def _take(self, value: float) -> None:
        self.alert.say("")
        self.ask(value)

    def _on_answer(self, found: Any) -> None:
        self.note.setText("")
        if self._of == depends(self._work.document.plan):
            self.show_ways(tuple(found))

    def _on_refused(self, sentence: str) -> None:
        self.note.setText("")
        self.alert.say(in_unit(sentence, self._work.display.unit))

    def _on_plan(self, _old: Plan, new: Plan) -> None:
        if self._of is not None and self._of != depends(new):
            self._of = None
            self._asked.lane.drop("wish")
            self.note.setText("")
            self.show_ways(())

    def _made(self, way: Way) -> Plan | None:
        """The plan as it would be with a way done, None where that cannot be done at all."""
        return None if way.plan is None else self._work.document.plan.with_setup(way.plan)

    def _do(self, k: int) -> None:
        made = self._made(self.ways[k])
        if made is not None:
            self.taken.emit(made, in_unit(self.ways[k].name, self._work.display.unit))
