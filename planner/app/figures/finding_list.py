"""What deserves a second thought in the plan: headlines that unfold, with the way to each place."""

from __future__ import annotations

import re
from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QMouseEvent, QPalette
from PySide6.QtWidgets import QHBoxLayout, QToolButton, QVBoxLayout, QWidget

from planner.app import theme
from planner.app.fields.controls import QuietButton
from planner.app.plain import PlainLabel
from planner.plan.checks import Finding, Severity, findings
from planner.plan.plan import Plan
from planner.units import LengthUnit

MARKS: Final = {Severity.WARNING: "▲", Severity.CAUTION: "△", Severity.NOTE: "○"}
NAMES: Final = {
    Severity.WARNING: "Warning",
    Severity.CAUTION: "Caution",
    Severity.NOTE: "Hint",
}
_HEADLINE_ENDS: Final = re.compile(r"[:;.] ")


def headline(finding: Finding) -> str:
    """What a finding is about: its sentence up to the remedy."""
    return _HEADLINE_ENDS.split(finding.sentence, maxsplit=1)[0].rstrip(".")


def counted(found: tuple[Finding, ...]) -> str:
    """How many there are of each kind: '1 caution, 2 hints'."""
    counts = [
        (sum(finding.severity is kind for finding in found), NAMES[kind].lower())
        for kind in (Severity.WARNING, Severity.CAUTION, Severity.NOTE)
    ]
    words = [f"{count} {name}{'' if count == 1 else 's'}" for count, name in counts if count]
    return ", ".join(words).capitalize()


class FindingLine(QWidget):
    """One finding: its headline, and the whole sentence once it is unfolded.

    Signals: ``asked_for`` when it is pressed, ``unfolded(bool)``.
    """

    asked_for = Signal()
    unfolded = Signal(bool)

    def __init__(self, finding: Finding, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._finding = finding
        calm = finding.severity is Severity.NOTE
        role = QPalette.ColorRole.WindowText if calm else QPalette.ColorRole.BrightText
        self.mark = QuietButton(MARKS[finding.severity], role)
        self.mark.setCheckable(True)
        self.mark.setToolTip("Show the place this is about, and what to do")
        self.mark.setAccessibleName(f"{NAMES[finding.severity]}: {finding.sentence}")
        self.text = PlainLabel()
        self.text.setWordWrap(True)
        self.text.setContentsMargins(0, 2, 0, 0)
        self.text.setCursor(Qt.CursorShape.PointingHandCursor)
        layout = QHBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(theme.HALF)
        layout.addWidget(self.mark, 0, Qt.AlignmentFlag.AlignTop)
        layout.addWidget(self.text, 1)
        self.mark.clicked.connect(self.asked_for)
        self.mark.toggled.connect(self._on_toggled)
        self._show(whole=False)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        if self.text.geometry().contains(event.position().toPoint()):
            self.mark.click()

    def _on_toggled(self, whole: bool) -> None:
        self._show(whole=whole)
        self.unfolded.emit(whole)

    def _show(self, *, whole: bool) -> None:
        title = headline(self._finding)
        more = "" if title == self._finding.sentence.rstrip(".") else "\u00a0…"
        self.text.setText(self._finding.sentence if whole else title + more)


class FindingList(QWidget):
    """The findings, gravest first; ``asked_for`` carries the place of one.

    ``resized`` says that a finding was unfolded or folded, so that more or less room is
    needed.
    """

    asked_for = Signal(object)
    resized = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.shown: tuple[Finding, ...] = ()
        self.lines: list[FindingLine] = []
        self._layout = QVBoxLayout(self)
        self._layout.setContentsMargins(theme.HALF, 0, theme.RHYTHM, theme.HALF)
        self._layout.setSpacing(theme.HALF)

    @property
    def marks(self) -> list[QToolButton]:
        """The buttons of all findings, in order."""
        return [line.mark for line in self.lines]

    def show_plan(self, plan: Plan, unit: LengthUnit = LengthUnit.CM) -> tuple[Finding, ...]:
        """Show what there is to say about a plan, and return it."""
        found = findings(plan, unit)
        if found != self.shown:
            self.shown = found
            self.lines.clear()
            while (item := self._layout.takeAt(0)) is not None:
                widget = item.widget()
                if widget is not None:
                    widget.hide()
                    widget.deleteLater()
            for finding in found:
                self._layout.addWidget(self._line(finding))
        return found

    def _line(self, finding: Finding) -> FindingLine:
        line = FindingLine(finding)
        line.asked_for.connect(lambda: self.asked_for.emit(finding.where))
        line.unfolded.connect(lambda _on: self.resized.emit())
        self.lines.append(line)
        return line
