"""The foot of the column: cautions, all figures, what to line first, where the photons went."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QEvent, QObject, QRectF, QSize, Qt, QTimer, Signal
from PySide6.QtGui import QMouseEvent, QPainter, QPaintEvent, QPalette, QResizeEvent
from PySide6.QtWidgets import (
    QScrollArea,
    QSizePolicy,
    QToolButton,
    QWidget,
)

from planner.app import theme
from planner.app.fields.form import NoteLabel, QuietButton, fold_button, in_tab_order, link_button
from planner.app.pages.sketch.strip import FigureLine, GainList, uncertainty_of
from planner.app.plain import PlainLabel
from planner.estimate.result import Estimate, Share
from planner.language import inside
from planner.metrics.figures import LEADING, percent
from planner.plan.checks import Finding, Severity, findings
from planner.plan.place import PlaceKind
from planner.plan.plan import Plan
from planner.reports import content
from planner.reports.advice import LiningGain
from planner.units import LengthUnit

if TYPE_CHECKING:
    from planner.estimate.outlook import Outlook


MARKS: Final = {Severity.WARNING: "▲", Severity.CAUTION: "△", Severity.NOTE: "○"}
NAMES: Final = {
    Severity.WARNING: "Warning",
    Severity.CAUTION: "Caution",
    Severity.NOTE: "Hint",
}
ALL_CAUTIONS: Final = "All cautions for this plan"
SAID_ABOVE: Final = {"no-lamp", "no-target"}
"""What the line under the sentence says, with the button that does it."""
_HEADLINE_ENDS: Final = re.compile(r"[:;.] ")


def headline(finding: Finding) -> str:
    """What a finding is about: its sentence up to the remedy."""
    return _HEADLINE_ENDS.split(finding.sentence, maxsplit=1)[0].rstrip(".")


def counted(found: tuple[Finding, ...]) -> str:
    """How many there are of each kind: '1 caution, 2 hints'."""
    counts = [
        (sum(finding.severity is kind for finding in found), inside(NAMES[kind]))
        for kind in (Severity.WARNING, Severity.CAUTION, Severity.NOTE)
    ]
    words = [f"{count} {name}{'' if count == 1 else 's'}" for count, name in counts if count]
    return ", ".join(words)


class FindingLine(QWidget):
    """One finding: its headline, and the whole sentence once it is unfolded.

    Signals: ``asked_for`` when it is pressed, ``unfolded(bool)``.
    """

    asked_for = Signal()
    unfolded = Signal(bool)

    def __init__(self, finding: Finding) -> None:
        super().__init__()
        self._finding = finding
        calm = finding.severity is Severity.NOTE
        role = QPalette.ColorRole.WindowText if calm else QPalette.ColorRole.BrightText
        self.mark = QuietButton(MARKS[finding.severity], role)
        self.mark.setCheckable(True)
        self.mark.setToolTip("Show the place this is about, and what to do")
        self.mark.setAccessibleName(f"{NAMES[finding.severity]}: {finding.sentence}")
        self.text = PlainLabel(wrap=True)
        self.text.setContentsMargins(0, 2, 0, 0)
        self.text.setCursor(Qt.CursorShape.PointingHandCursor)
        theme.row(
            (self.mark, 0, Qt.AlignmentFlag.AlignTop), (self.text, 1), on=self, gap=theme.HALF
        )
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
    needed; ``cautions_asked`` that the rest is asked for, which stands in the help.
    """

    asked_for = Signal(object)
    cautions_asked = Signal()
    resized = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.shown: tuple[Finding, ...] = ()
        self.lines: list[FindingLine] = []
        self.more = link_button(ALL_CAUTIONS, act=self.cautions_asked)
        edges = (theme.HALF, 0, theme.RHYTHM, theme.HALF)
        self._layout = theme.column(self.more, on=self, gap=theme.HALF, edges=edges)

    @property
    def marks(self) -> list[QToolButton]:
        """The buttons of all findings, in order."""
        return [line.mark for line in self.lines]

    def show_plan(self, plan: Plan, unit: LengthUnit = LengthUnit.CM) -> tuple[Finding, ...]:
        """Show what there is to say about a plan, and return it."""
        found = tuple(one for one in findings(plan, unit) if one.key not in SAID_ABOVE)
        if found != self.shown:
            self.shown = found
            self.lines.clear()
            theme.emptied(self._layout, but=self.more)
            for finding in found:
                self._layout.addWidget(self._line(finding))
            self._layout.addWidget(self.more)
        return found

    def _line(self, finding: Finding) -> FindingLine:
        line = FindingLine(finding)
        line.asked_for.connect(lambda: self.asked_for.emit(finding.where))
        line.unfolded.connect(lambda _on: self.resized.emit())
        self.lines.append(line)
        return line


# -- where the photons went ------------------------------------------------------------

LINE = 36
_Flag = Qt.AlignmentFlag


class PhotonBars(QWidget):
    """Label and per cent over a thin bar, in the order of the estimate."""

    def __init__(self) -> None:
        super().__init__()
        self.shares: tuple[Share, ...] = ()
        self._titles: tuple[str, ...] = ()
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName("Where the photons went")

    def show_shares(self, estimate: Estimate) -> None:
        """Show the shares of an estimate."""
        count = len(self.shares)
        self.shares = estimate.shares
        self._titles = tuple(share.place.title(estimate.plan) for share in self.shares)
        lines = [
            f"{title}: {percent(share.share)}"
            for title, share in zip(self._titles, self.shares, strict=True)
        ]
        self.setAccessibleDescription("; ".join(lines))
        if len(self.shares) != count:
            self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(200, LINE * max(len(self.shares), 1))

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        palette = self.palette()
        left, width = float(theme.HALF), self.width() - 2.0 * theme.HALF
        number_font = theme.tabular(self.font())
        metrics = self.fontMetrics()
        for line, share in enumerate(self.shares):
            top = line * LINE
            number = percent(share.share)
            number_width = metrics.horizontalAdvance(number) + theme.RHYTHM
            text = QRectF(left, top, width, LINE - 14)
            label = metrics.elidedText(
                self._titles[line], Qt.TextElideMode.ElideRight, int(width - number_width)
            )
            painter.setPen(palette.color(QPalette.ColorRole.WindowText))
            painter.setFont(self.font())
            painter.drawText(text, _Flag.AlignLeft | _Flag.AlignBottom, label)
            painter.setFont(number_font)
            painter.drawText(text, _Flag.AlignRight | _Flag.AlignBottom, number)
            self._bar(painter, QRectF(left, top + LINE - 12, width, 6), share)

    def _bar(self, painter: QPainter, track: QRectF, share: Share) -> None:
        palette = self.palette()
        painter.fillRect(track, palette.color(QPalette.ColorRole.Midlight))
        filled = QRectF(track)
        filled.setWidth(track.width() * min(max(share.share, 0.0), 1.0))
        wanted = share.place.kind is PlaceKind.CANOPY
        role = QPalette.ColorRole.Accent if wanted else QPalette.ColorRole.Dark
        painter.fillRect(filled, palette.color(role))


# -- the foot of the column ------------------------------------------------------------

TALL_PX = 860
"""From this height of the column on, figures and balance stand open by themselves."""


class FigureDetails(QWidget):
    """Four folds; in a low column one at a time. ``asked_for`` carries a place to select.

    ``cautions_asked`` when all cautions of the plan are.
    """

    asked_for = Signal(object)
    cautions_asked = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.findings = FindingList()
        self.findings.asked_for.connect(self.asked_for)
        self.findings.cautions_asked.connect(self.cautions_asked)
        self.findings.resized.connect(self._size_areas)
        self.lines: list[FigureLine] = []
        self._figures_box = QWidget()
        self._notes: list[NoteLabel] = []
        self.canopies = NoteLabel()
        self.canopies.setContentsMargins(theme.HALF, 0, 0, theme.HALF)
        self._figures_layout = theme.column(
            self.canopies, on=self._figures_box, gap=0, edges=(0, 0, theme.RHYTHM, 0)
        )
        self.closure = NoteLabel()
        self.closure.setContentsMargins(theme.HALF, theme.HALF, 0, 0)
        self._estimate: Estimate | None = None
        self._outlook: Outlook | None = None
        self.gains = GainList()
        self.gains.asked_for.connect(self.asked_for)
        self.bars = PhotonBars()
        bars_box = QWidget()
        theme.column(
            self.bars, self.closure, theme.REST, on=bars_box, edges=(0, 0, theme.RHYTHM, 0)
        )
        self._layout = theme.column(on=self, gap=0)
        self.folds: list[tuple[QToolButton, QScrollArea]] = []
        self._told = 0
        self._tall = self._alone = False
        self._column = 600
        self._sizing = QTimer(self)
        self._sizing.setSingleShot(True)
        self._sizing.timeout.connect(self._size_areas)
        self.findings_fold = self._add_fold("Cautions", self.findings)
        self.figures_fold = self._add_fold("All figures", self._figures_box)
        self.gains_fold = self._add_fold("Which surface to line first", self.gains)
        self.photons_fold = self._add_fold("Where the photons went", bars_box)
        self._layout.addStretch(1)

    def _add_fold(self, title: str, widget: QWidget) -> QToolButton:
        fold = fold_button(title)
        area = theme.scrolled(widget)
        widget.installEventFilter(self)
        area.hide()
        fold.toggled.connect(lambda on: self._on_folded(fold, on=on))
        self._layout.addWidget(fold)
        self._layout.addWidget(area)
        self.folds.append((fold, area))
        return fold

    def _on_folded(self, fold: QToolButton, *, on: bool) -> None:
        for other, area in self.folds:
            if other is fold:
                area.setVisible(on)
            elif on and not self._tall:
                other.setChecked(False)
        self._size_areas()

    def fit_column(self, height: int, *, alone: bool = False) -> None:
        """Use the room of a tall column: open what else would be folded away.

        ``alone`` says that no fields stand in the column.
        """
        self._column = height
        # With a large font less fits into the same height.
        lines = self.fontMetrics().height() / theme.USUAL_LINE_PX
        tall = height >= TALL_PX * max(lines, 1.0)
        if alone != self._alone:
            self._alone = alone
            self.gains_fold.setChecked(alone and tall)
        if tall != self._tall:
            self._tall = tall
            self.figures_fold.setChecked(tall)
            self.photons_fold.setChecked(tall)
            if not tall and self._told:
                self.findings_fold.setChecked(True)
        self._size_areas()

    def _size_areas(self) -> None:
        """The open fold gets what it needs, but the fields keep most of the column."""
        needs = [self._needed(area) for _, area in self.folds]
        if self._alone:
            opened = [fold.isChecked() for fold, _ in self.folds]
            heads = sum(fold.sizeHint().height() for fold, _ in self.folds)
            room = self._column - heads - theme.RHYTHM
            given = shared_out([n if on else 0 for n, on in zip(needs, opened, strict=True)], room)
        else:
            given = [
                min(need, int(self._most(area.widget()) * self._column))
                for need, (_, area) in zip(needs, self.folds, strict=True)
            ]
        for (_, area), height in zip(self.folds, given, strict=True):
            area.setFixedHeight(max(height, 48))

    def _needed(self, area: QScrollArea) -> int:
        widget = area.widget()
        if widget is None:
            return 0
        if widget.hasHeightForWidth():
            return widget.heightForWidth(max(area.viewport().width(), 260)) + theme.HALF
        return widget.sizeHint().height() + theme.HALF

    def _most(self, widget: QWidget | None) -> float:
        """The largest part of the column one open fold may take."""
        if not self._tall:
            return 0.3 if widget is self.findings else 0.38
        return 0.15 if widget is self.findings else 0.28 if widget is self._figures_box else 0.2

    def show_plan(self, plan: Plan, unit: LengthUnit = LengthUnit.CM) -> None:
        """Show the findings about a plan, their lengths in a unit."""
        found = self.findings.show_plan(plan, unit)
        grave = sum(finding.severity is not Severity.NOTE for finding in found)
        title = counted(found)
        self.findings_fold.setText(title)
        self.findings_fold.setAccessibleName(title)
        self.findings_fold.setVisible(bool(found))
        if not found:
            self.findings_fold.setChecked(False)
        # What is grave is not left folded away: it opens by itself whenever there is more of it.
        elif grave > self._told:
            self.findings_fold.setChecked(True)
        self._told = grave
        in_tab_order(
            [self.findings_fold, *self.findings.marks, self.findings.more, self.figures_fold]
        )
        self._size_areas()

    def show_estimate(self, estimate: Estimate) -> None:
        """Show the figures of an estimate."""
        self._estimate = estimate
        self._show_figures(estimate)
        self._say_how_sure(estimate)
        count = len(self.bars.shares)
        self.bars.show_shares(estimate)
        if len(estimate.shares) != count:
            self._size_areas()

    def show_outlook(self, outlook: Outlook, gains: tuple[LiningGain, ...]) -> None:
        """Give the figures their bands, and tell which surface to line first."""
        self._outlook = outlook
        if self._estimate is not None:
            self._show_figures(self._estimate)
            if outlook.plan == self._estimate.plan:
                self._say_how_sure(self._estimate.with_recount(outlook.recount))
        self.gains.show_gains(gains)
        self._size_areas()

    def _say_how_sure(self, estimate: Estimate) -> None:
        sentences = (
            content.closure_sentence(estimate),
            content.numeric_sentence(estimate),
            content.recount_sentence(estimate),
        )
        self.closure.setText(" ".join(filter(None, sentences)))

    def _show_figures(self, estimate: Estimate) -> None:
        known = uncertainty_of(self._outlook, estimate)
        canopies = content.canopy_sentences(estimate)
        self.canopies.setText("\n\n".join(canopies))
        self.canopies.setVisible(bool(canopies))
        figures = content.headline_figures(estimate, known, slice(LEADING, None))
        if len(self.lines) < len(figures):
            while len(self.lines) < len(figures):
                self._add_line()
            in_tab_order([self.figures_fold, *self.lines, self.gains_fold])
        for line, note, figure in zip(self.lines, self._notes, figures, strict=False):
            line.show_figure(figure)
            note.setText(figure.meaning)
        for k, (line, note) in enumerate(zip(self.lines, self._notes, strict=True)):
            line.setVisible(k < len(figures))
            note.setVisible(k < len(figures) and line.isChecked())

    def _add_line(self) -> None:
        line, note = FigureLine(), NoteLabel()
        note.setContentsMargins(theme.HALF, 0, 0, theme.HALF)
        note.hide()
        line.toggled.connect(note.setVisible)
        self.lines.append(line)
        self._notes.append(note)
        # What is said of each canopy stands last.
        self._figures_layout.insertWidget(self._figures_layout.count() - 1, line)
        self._figures_layout.insertWidget(self._figures_layout.count() - 1, note)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        # What a fold holds wraps anew with its width; only then is its height known. Not within
        # the event: an area that grows meanwhile leaves its contents laid out for another width.
        if event.type() in {QEvent.Type.Resize, QEvent.Type.LayoutRequest}:
            self._sizing.start(0)
        return super().eventFilter(watched, event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._size_areas()


def shared_out(needs: list[int], room: int) -> list[int]:
    """Room for each need: all of it where it goes round, else the large ones give way."""
    given = [0] * len(needs)
    left, waiting = room, [k for k, need in enumerate(needs) if need > 0]
    while waiting:
        share = left // len(waiting)
        small = [k for k in waiting if needs[k] <= share]
        for k in small or waiting:
            given[k] = min(needs[k], share)
            left -= given[k]
        waiting = [k for k in waiting if small and k not in small]
    return given
