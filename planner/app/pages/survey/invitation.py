"""The page before there is a survey: how to measure, and the two ways to begin."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QFont
from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from planner.app import theme
from planner.app.fields.form import NoteLabel, button, link_button

TITLE = "Measure the light, and lay it over the estimate"
HOW = (
    "Put the sensor into every hole of the board, level and at the same height each time. Let the "
    "lamp warm up for 20 minutes first, and stand where you throw no shadow. Averages over many "
    "holes tell linings apart far better than a single spot."
)


class Invitation(QWidget):
    """Buttons ``lay_out``, ``paste`` and ``open_file``."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.lay_out = button("Lay out a grid", "A board of holes for this space, to be printed.")
        self.paste = button("Paste readings", "A table copied from a spreadsheet (Ctrl+V).")
        self.open_file = link_button("or import a CSV, TSV or XLSX file…")
        title = QLabel(TITLE)
        font = title.font()
        font.setPointSizeF(font.pointSizeF() * 1.5)
        font.setWeight(QFont.Weight.DemiBold)
        title.setFont(font)
        title.setWordWrap(True)
        how = NoteLabel(HOW)
        buttons = QHBoxLayout()
        buttons.setSpacing(theme.RHYTHM)
        for one in (self.lay_out, self.paste):
            one.setMinimumHeight(36)
            buttons.addWidget(one)
        inside = QWidget()
        inside.setMaximumWidth(560)
        column = QVBoxLayout(inside)
        column.setSpacing(theme.WIDE)
        column.addWidget(title)
        column.addWidget(how)
        column.addLayout(buttons)
        column.addWidget(self.open_file, 0, Qt.AlignmentFlag.AlignHCenter)
        layout = QHBoxLayout(self)
        layout.addStretch(1)
        layout.addWidget(inside, 4, Qt.AlignmentFlag.AlignVCenter)
        layout.addStretch(1)
