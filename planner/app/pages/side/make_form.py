"""Making variants: the sketch as it is, linings on all walls, a range of heights."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtWidgets import QAbstractItemView, QListWidget, QListWidgetItem, QWidget

from planner.app.display import Display
from planner.app.document import Document
from planner.app.fields.form import button
from planner.app.fields.lining_chooser import lining_title, offered_linings
from planner.app.fields.shelf import Shelf
from planner.app.pages.side.question_form import QuestionForm
from planner.app.pages.side.variant_steps import VariantSteps
from planner.plan.lining import Lining
from planner.plan.quantity import COUNT, HANGING_HEIGHT
from planner.units import in_unit

_CHECKED = Qt.CheckState.Checked


class MakeForm(QuestionForm):
    """``made`` when variants were added."""

    made = Signal()

    def __init__(
        self,
        document: Document,
        display: Display,
        shelf: Shelf,
        steps: VariantSteps,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(display, parent)
        self._document, self._shelf, self._steps = document, shelf, steps
        self._offered: tuple[Lining, ...] = ()
        self.add_heading("Try these on all walls")
        self.linings = QListWidget()
        self.linings.setAccessibleName("Linings to try on all walls")
        self.linings.setSelectionMode(QAbstractItemView.SelectionMode.NoSelection)
        self.linings.setFrameShape(QListWidget.Shape.NoFrame)
        self.linings.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.linings.setTextElideMode(Qt.TextElideMode.ElideRight)
        self.linings.setMinimumHeight(120)
        self.linings.setFixedHeight(152)
        self.linings.itemChanged.connect(lambda _item: self._count())
        self.add_wide(self.linings)
        self.try_button = button("Try them", "One variant for each lining that is ticked")
        self.try_button.clicked.connect(self.try_ticked)
        self.add_buttons(self.try_button)
        self.add_heading("Try hanging heights")
        _, self.low = self.add_number("From", HANGING_HEIGHT, 0.2)
        _, self.high = self.add_number("To", HANGING_HEIGHT, 0.5)
        _, self.count = self.add_number("How many", COUNT.within(2.0, 20.0), 4)
        self.heights_button = button("Try these heights", "One variant for each height")
        self.heights_button.clicked.connect(self.try_heights)
        self.add_buttons(self.heights_button)
        self.alert = self.add_alert()
        steps.refused.connect(self._refuse)
        document.changed.connect(lambda _old, _new: self._fill())
        shelf.changed.connect(self._fill)
        self.end()
        self._fill()

    def sizeHint(self) -> QSize:
        return QSize(280, super().sizeHint().height())

    def _fill(self) -> None:
        plan = self._document.plan
        offered = tuple(one for one in offered_linings(plan, self._shelf) if not one.is_opening)
        if offered == self._offered:
            return
        ticked = {lining.key for lining in self.ticked()}
        self._offered = offered
        self.linings.blockSignals(True)
        self.linings.clear()
        for lining in offered:
            item = QListWidgetItem(lining_title(lining))
            item.setFlags(Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsUserCheckable)
            on = lining.key in ticked
            item.setCheckState(_CHECKED if on else Qt.CheckState.Unchecked)
            item.setToolTip(f"<p>{lining.name}</p>")
            self.linings.addItem(item)
        self.linings.blockSignals(False)
        self._count()

    def ticked(self) -> list[Lining]:
        """The linings that are ticked."""
        return [
            lining
            for row, lining in enumerate(self._offered)
            if self.linings.item(row).checkState() is _CHECKED
        ]

    def tick(self, *keys: str) -> None:
        """Tick linings by key."""
        for row, lining in enumerate(self._offered):
            if lining.key in keys:
                self.linings.item(row).setCheckState(_CHECKED)

    def _count(self) -> None:
        count = len(self.ticked())
        self.try_button.setEnabled(count > 0)
        text = "Try it" if count == 1 else f"Try these {count}" if count else "Tick linings to try"
        self.try_button.setText(text)
        self.try_button.setAccessibleName(text)

    def try_ticked(self) -> None:
        """Make a variant of each lining that is ticked."""
        self.alert.say("")
        if self._steps.try_linings(self.ticked()):
            for row in range(self.linings.count()):
                self.linings.item(row).setCheckState(Qt.CheckState.Unchecked)
            self.made.emit()

    def try_heights(self) -> None:
        """Make a variant of each height of the range."""
        self.take_typed()
        self.alert.say("")
        unit = self._display.unit
        count = round(self.count.value)
        if self._steps.try_heights(self.low.value, self.high.value, count, unit):
            self.made.emit()

    def _refuse(self, sentence: str) -> None:
        if self.isVisible():
            self.alert.say(in_unit(sentence, self._display.unit))
