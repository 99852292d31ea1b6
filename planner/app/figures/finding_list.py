"""What deserves a second thought in the plan, as a short list with the way to each place."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QPalette
from PySide6.QtWidgets import QHBoxLayout, QLabel, QToolButton, QVBoxLayout, QWidget

from planner.app import theme
from planner.app.selection import Kind, Selection
from planner.plan.checks import Finding, Severity, findings
from planner.plan.plan import Plan

MARKS: Final = {Severity.WARNING: "▲", Severity.CAUTION: "△", Severity.NOTE: "○"}
NAMES: Final = {
    Severity.WARNING: "Warning",
    Severity.CAUTION: "Caution",
    Severity.NOTE: "Hint",
}


class FindingList(QWidget):
    """The findings, gravest first; ``asked_for`` carries the place of one."""

    asked_for = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.shown: tuple[Finding, ...] = ()
        self.marks: list[QToolButton] = []
        self._layout = QVBoxLayout(self)
        self._layout.setContentsMargins(theme.HALF, 0, theme.RHYTHM, theme.HALF)
        self._layout.setSpacing(theme.HALF)

    def show_plan(self, plan: Plan) -> tuple[Finding, ...]:
        """Show what there is to say about a plan, and return it."""
        found = findings(plan)
        if found != self.shown:
            self.shown = found
            self.marks.clear()
            while (item := self._layout.takeAt(0)) is not None:
                widget = item.widget()
                if widget is not None:
                    widget.hide()
                    widget.deleteLater()
            for finding in found:
                self._layout.addWidget(self._line(finding))
        return found

    def _line(self, finding: Finding) -> QWidget:
        holder = QWidget()
        layout = QHBoxLayout(holder)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(theme.HALF)
        mark = QToolButton()
        mark.setText(MARKS[finding.severity])
        mark.setAutoRaise(True)
        mark.setFixedWidth(20)
        mark.setToolTip("Show the place this is about")
        mark.setAccessibleName(f"{NAMES[finding.severity]}: {finding.sentence}")
        if finding.severity is not Severity.NOTE:
            palette = mark.palette()
            palette.setColor(
                QPalette.ColorRole.ButtonText, palette.color(QPalette.ColorRole.BrightText)
            )
            mark.setPalette(palette)
        where = Selection(Kind(finding.where.kind), finding.where.index, finding.where.band)
        mark.clicked.connect(lambda: self.asked_for.emit(where))
        text = QLabel(finding.sentence)
        text.setWordWrap(True)
        text.setContentsMargins(0, 2, 0, 0)
        text.setAccessibleName(finding.sentence)
        self.marks.append(mark)
        layout.addWidget(mark, 0, Qt.AlignmentFlag.AlignTop)
        layout.addWidget(text, 1)
        return holder
