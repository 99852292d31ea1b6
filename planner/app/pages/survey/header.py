"""The top of the page: which survey, which task, and what is offered while there is none."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QTabBar, QVBoxLayout, QWidget

from planner.app import theme
from planner.app.fields.form import AlertLabel, NoteLabel, StillCombo, button, link_button
from planner.app.pages.survey.desk import SurveyDesk
from planner.app.plain import PlainLabel

TASKS = ("&Board", "&Record", "Readin&gs", "&Overlay", "&Compare", "C&alibrate")
BOARD, RECORD, READINGS, OVERLAY, COMPARE, CALIBRATE = range(6)


class Header(QWidget):
    """Signals ``paste_wanted``, ``file_wanted``, ``task_changed(int)``."""

    paste_wanted = Signal()
    file_wanted = Signal()
    task_changed = Signal(int)

    def __init__(self, desk: SurveyDesk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk = desk
        self.surveys = StillCombo()
        self.surveys.setAccessibleName("Survey")
        self.surveys.setMinimumContentsLength(20)
        self.new_button = button("New grid", "Lay out the board of another survey.")
        self.copy_button = button(
            "Copy", "Another survey on the same board and under the same conditions, to be read."
        )
        self.remove_button = button(
            "Remove", "Take this survey out of the plan (undo brings it back)."
        )
        self.paste_button = button("Paste", "Readings copied from a spreadsheet (Ctrl+V).")
        self.file_button = button("Import…", "Readings from a CSV, TSV or XLSX file.")
        self.tasks = QTabBar()
        self.tasks.setAccessibleName("Steps of a survey")
        self.tasks.setDrawBase(False)
        self.tasks.setExpanding(False)
        for text in TASKS:
            self.tasks.addTab(text)
        self.sentence = PlainLabel()
        self.sentence.setWordWrap(True)
        self.sentence.setAccessibleName("What the survey says")
        self.sentence.setAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
        self.sentence.setFont(theme.sized(self.sentence.font(), 1.15))
        self.alert = AlertLabel()
        self._arrange()
        self.surveys.activated.connect(lambda _k: desk.choose(self.surveys.currentData()))
        self.new_button.clicked.connect(desk.lay_out)
        self.copy_button.clicked.connect(desk.copy)
        self.remove_button.clicked.connect(desk.remove)
        self.paste_button.clicked.connect(self.paste_wanted)
        self.file_button.clicked.connect(self.file_wanted)
        self.tasks.currentChanged.connect(self.task_changed)
        desk.refused.connect(self.alert.say)

    def _arrange(self) -> None:
        self._left = QWidget()
        left = QHBoxLayout(self._left)
        left.setContentsMargins(0, 0, 0, 0)
        left.setSpacing(theme.RHYTHM)
        left.addWidget(self.surveys)
        for one in (self.new_button, self.copy_button, self.remove_button):
            left.addWidget(one)
        left.addSpacing(theme.WIDE)
        left.addWidget(self.paste_button)
        left.addWidget(self.file_button)
        left.addStretch(1)
        self._line = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self._line.setContentsMargins(0, 0, 0, 0)
        self._line.setSpacing(theme.RHYTHM)
        self._line.addWidget(self._left, 1)
        self._line.addWidget(self.tasks, 0, Qt.AlignmentFlag.AlignBottom)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(theme.HALF)
        layout.addLayout(self._line)
        layout.addWidget(self.sentence)
        layout.addWidget(self.alert)

    def resizeEvent(self, event: QResizeEvent) -> None:
        # Room for two lines from the start: the drawing must not jump when the words change.
        lines = 2 if self.width() < 1500 else 1
        self.sentence.setMinimumHeight(lines * self.sentence.fontMetrics().lineSpacing() + 2)
        # Where the font is large the steps get a line of their own.
        wanted = self._left.sizeHint().width() + self.tasks.sizeHint().width() + theme.RHYTHM
        fits = wanted <= self.width()
        straight, turned = QBoxLayout.Direction.LeftToRight, QBoxLayout.Direction.TopToBottom
        self._line.setDirection(straight if fits else turned)
        super().resizeEvent(event)

    def refresh(self) -> None:
        """Follow the surveys of the plan."""
        self.surveys.clear()
        for survey in self.desk.surveys:
            self.surveys.addItem(survey.name, survey.key)
        self.surveys.setCurrentIndex(self.desk.index)
        self.surveys.widen_list()


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
        title = PlainLabel(TITLE)
        title.setFont(theme.sized(title.font(), 1.5, bold=True))
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
