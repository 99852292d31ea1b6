"""The footprint in numbers: a list twin of its corners and walls, for exact entry and keys."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QPalette
from PySide6.QtWidgets import QApplication, QGridLayout, QLabel, QToolButton, QWidget

from planner.app.fields.form import AlertLabel, Row, in_tab_order
from planner.app.fields.panel import FieldPanel, QuantityField
from planner.app.plain import PlainLabel
from planner.app.quantity_box import QuantityBox
from planner.plan import edits
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.quantity import EXTENT, POSITION
from planner.plan.space import Point


def _caption(text: str) -> QLabel:
    label = PlainLabel(text)
    label.setForegroundRole(QPalette.ColorRole.PlaceholderText)
    return label


def _small_button(text: str, name: str) -> QToolButton:
    button = QToolButton()
    button.setText(text)
    button.setAutoRaise(True)
    button.setToolTip(name)
    button.setAccessibleName(name)
    button.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
    return button


class OutlineList(QWidget):
    """Corners (x, y, with add and remove) and wall lengths; rebuilt when their number changes."""

    def __init__(self, panel: FieldPanel, after: QWidget) -> None:
        """``after`` is what the Tab key reaches before the list."""
        super().__init__(panel)
        self._after = after
        self._stops: list[QWidget] = []
        self._panel = panel
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(4)
        self._grid.setVerticalSpacing(4)
        self._grid.setColumnStretch(1, 1)
        self._grid.setColumnStretch(2, 1)
        self._fields: list[QuantityField] = []
        self._count = 0

    def show_plan(self, plan: Plan) -> None:
        """Make as many rows as the footprint has corners; the numbers come by refresh."""
        if plan.space.wall_count == self._count:
            return
        focused = QApplication.focusWidget()
        held = focused.accessibleName() if focused and self.isAncestorOf(focused) else ""
        for field in self._fields:
            self._panel.unbind(field)
        self._fields.clear()
        self._stops = [self._after]
        while (item := self._grid.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.setParent(None)
                widget.deleteLater()
        self._count = plan.space.wall_count
        for column, text in enumerate(("Corner", "x", "y"), start=0):
            self._grid.addWidget(_caption(text), 0, column)
        for index in range(self._count):
            self._add_corner(index, 2 * index + 1)
        start = 2 * self._count + 1
        self._grid.addWidget(_caption("Wall"), start, 0)
        self._grid.addWidget(_caption("length"), start, 1)
        for index in range(self._count):
            self._add_wall(index, start + 1 + 2 * index)
        in_tab_order(self._stops)
        self._give_focus_back(held)

    def _give_focus_back(self, name: str) -> None:
        """Keep the keyboard where it was: on the button that was pressed."""
        for widget in self.findChildren(QWidget):
            if name and widget.accessibleName() == name:
                widget.setFocus()

    def _add_corner(self, index: int, line: int) -> None:
        label = PlainLabel(str(index + 1))
        alert = AlertLabel()
        self._grid.addWidget(label, line, 0)
        self._grid.addWidget(alert, line + 1, 0, 1, 5)
        self._add_coordinate(index, 0, Row(label, label, label, alert, None, None), line)
        self._add_coordinate(index, 1, Row(label, label, label, alert, None, None), line)
        add = _small_button("+", f"Add a corner on the wall after corner {index + 1}")
        remove = _small_button("−", f"Remove corner {index + 1}")
        row = Row(label, add, add, alert, None, None)
        add.clicked.connect(
            lambda: self._panel.edit(
                row, lambda: _split_wall(self._panel.plan, index), "Add corner"
            )
        )
        remove.clicked.connect(
            lambda: self._panel.edit(
                row, lambda: edits.remove_corner(self._panel.plan, index), "Remove corner"
            )
        )
        self._grid.addWidget(add, line, 3)
        self._grid.addWidget(remove, line, 4)
        self._stops += [add, remove]

    def _add_coordinate(self, index: int, axis: int, row: Row, line: int) -> None:
        box = QuantityBox(POSITION, f"Corner {index + 1}, {'xy'[axis]}")
        place, name = Place(PlaceKind.CORNER, index), f"Move corner {index + 1}"
        self._bind(self._panel.dial_field(f"corner-{'xy'[axis]}", row, box, place, name))
        self._grid.addWidget(box, line, 1 + axis)

    def _add_wall(self, index: int, line: int) -> None:
        label = PlainLabel(str(index + 1))
        alert = AlertLabel()
        box = QuantityBox(EXTENT, f"Length of wall {index + 1}")
        row = Row(label, box, box, alert, None, None)
        place, name = Place(PlaceKind.WALL, index), f"Set length of wall {index + 1}"
        self._bind(self._panel.dial_field("wall-length", row, box, place, name))
        lining = _small_button("Lining …", f"Show the lining of wall {index + 1}")
        lining.clicked.connect(
            lambda: self._panel.workplace.selection.select(Place(PlaceKind.WALL, index))
        )
        self._grid.addWidget(label, line, 0)
        self._grid.addWidget(box, line, 1)
        self._grid.addWidget(lining, line, 2, 1, 3)
        self._stops.append(lining)
        self._grid.addWidget(alert, line + 1, 0, 1, 5)

    def _bind(self, field: QuantityField) -> None:
        field.box.set_unit(self._panel.workplace.display.unit)
        field.box.setButtonSymbols(QuantityBox.ButtonSymbols.NoButtons)
        self._fields.append(self._panel.bind(field))
        self._stops.append(field.box)


def _split_wall(plan: Plan, index: int) -> Plan:
    (ax, ay), (bx, by) = plan.space.wall(index)
    middle: Point = ((ax + bx) / 2, (ay + by) / 2)
    return edits.add_corner(plan, index, middle)
