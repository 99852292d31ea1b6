"""What a first start says over the drawing: it is a demo, and how to begin one's own space."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QWidget

from planner.app import theme
from planner.app.display import Display
from planner.app.fields.form import AlertLabel, StillCombo, button
from planner.app.fields.space_fields import SHAPES
from planner.app.plain import PlainLabel
from planner.app.quantity_box import QuantityBox
from planner.catalogue.library import Catalogue, new_plan
from planner.plan import edits
from planner.plan.plan import Plan
from planner.plan.quantity import EXTENT, SPACE_HEIGHT
from planner.plan.refusal import refusal

ABOUT = (
    "This is an invented demo: drag its lamps and walls and watch the light. "
    "Or begin with your own space, inside measures:"
)


class Welcome(QWidget):
    """A sentence, three numbers, a shape and four ways on.

    Signals: ``begun(Plan)`` with an empty space of the size and shape given, ``open_wanted`` when a
    plan's file is to be opened, ``tour_wanted`` to be shown round. It hides itself when the demo
    is to stay.
    """

    begun = Signal(object)
    open_wanted = Signal()
    tour_wanted = Signal()

    def __init__(self, catalogue: Catalogue, display: Display) -> None:
        super().__init__()
        self._catalogue, self._display = catalogue, display
        about = PlainLabel(ABOUT, wrap=True)
        self.boxes = {}
        self._numbers, self._rest = QWidget(), QWidget()
        row = theme.row(on=self._numbers, gap=theme.RHYTHM)
        empty = new_plan(catalogue).space
        x0, y0, x1, y1 = empty.bounds
        for name, quantity, usual in (
            ("Width", EXTENT, x1 - x0),
            ("Depth", EXTENT, y1 - y0),
            ("Height", SPACE_HEIGHT, empty.height),
        ):
            box = QuantityBox(quantity, name)
            box.set_unit(display.unit)
            box.reset(usual)
            label = PlainLabel(name)
            label.setBuddy(box)
            box.committed.connect(box.reset)
            box.stepped.connect(box.reset)
            self.boxes[name] = box
            row.addWidget(label)
            row.addWidget(box)
        self.shape = StillCombo()
        self.shape.setAccessibleName("Shape")
        for name, make, tip in SHAPES:
            self.shape.addItem(name, make)
            self.shape.setItemData(self.shape.count() - 1, tip, Qt.ItemDataRole.ToolTipRole)
        self.alert = AlertLabel()
        for box in self.boxes.values():
            box.refused.connect(self.alert.say)
            box.reverted.connect(lambda: self.alert.say(""))
        self.own_button = button("Begin", "An empty space of this size and shape, lined white.")
        self.own_button.setAccessibleName("Begin my own space")
        self.open_button = button("Open a plan …", "Opens a plan's file.", act=self.open_wanted)
        self.tour_button = button("Show me round", "Six steps in place; Esc leaves at any time.")
        self.stay_button = button("Stay here", "Stays with the demo and puts this line away.")
        theme.row(self.shape, self.own_button, on=self._rest, gap=theme.RHYTHM)
        self._own = theme.row(self._numbers, self._rest, gap=theme.RHYTHM)
        self._own.addStretch(1)
        self._words = theme.row(
            (about, 1), self.tour_button, self.open_button, self.stay_button, gap=theme.RHYTHM
        )
        theme.column(
            self._words, self._own, self.alert, on=self, gap=theme.HALF,
            edges=(theme.RHYTHM, 0, theme.RHYTHM, 0),
        )  # fmt: skip
        self.own_button.clicked.connect(self._begin)
        self.tour_button.clicked.connect(self.tour_wanted)
        self.stay_button.clicked.connect(self.hide)
        display.changed.connect(self._on_unit)

    def minimumSizeHint(self) -> QSize:
        across = max(self._numbers.minimumSizeHint().width(), self._words.minimumSize().width())
        return QSize(across + 2 * theme.RHYTHM, super().minimumSizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """In a narrow window shape and button stand below the numbers."""
        whole = self._numbers.sizeHint().width() + self._rest.sizeHint().width()
        fits = whole + 3 * theme.RHYTHM <= event.size().width()
        theme.lay_beside(self._own, fits)
        super().resizeEvent(event)

    def _on_unit(self) -> None:
        for box in self.boxes.values():
            box.set_unit(self._display.unit)

    def _begin(self) -> None:
        for box in self.boxes.values():
            box.commit()
        if any(box.is_refused for box in self.boxes.values()):
            return
        width, depth, height = (box.value for box in self.boxes.values())
        try:
            self.begun.emit(self._made(width, depth, height))
        except ValueError as error:
            self.alert.say(refusal(error, self._display.unit))

    def _made(self, width: float, depth: float, height: float) -> Plan:
        sized = edits.set_height(edits.set_size(new_plan(self._catalogue), width, depth), height)
        shaped: Plan = self.shape.currentData()(sized)
        return shaped
