"""The report in the window: sections to choose, the leaves as they will be printed, and ways out.

What takes time is reckoned on a lane; until it is there the report of the light at hand is
shown, and nothing is printed or saved: paper would say for good that this was not reckoned.
Preview, printer and PDF are the same leaves.
"""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Final

from PySide6.QtCore import QPointF, QRectF, QSize, QSizeF, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QContextMenuEvent,
    QImage,
    QKeyEvent,
    QPainter,
    QPaintEvent,
    QPalette,
    QPixmap,
    QResizeEvent,
)
from PySide6.QtWidgets import (
    QAbstractScrollArea,
    QCheckBox,
    QDialog,
    QMenu,
    QWidget,
)

from planner.app import theme
from planner.app.fields.form import (
    AlertLabel,
    NoteLabel,
    ProgressLine,
    StillCombo,
    button,
    in_tab_order,
    link_button,
)
from planner.app.jobs import Cancelled, Job, Lane, Progress
from planner.app.plain import PlainLabel
from planner.app.plots.exported import DrawingOut
from planner.app.questions import Questions, write_bytes
from planner.app.settings import Settings
from planner.app.theme import paint_focus
from planner.estimate.calibrate_result import Calibration
from planner.estimate.result import Estimate, EstimateOptions, Quality
from planner.plan.plan import Plan
from planner.reports.chapters import report
from planner.reports.drawings import Picture, shortened
from planner.reports.leaves import MM, Leaves, paint_leaves, report_pdf
from planner.reports.page import report_html
from planner.reports.report import SECTIONS, Known, Pictures, Report, Words, gather
from planner.reports.sheet import Paper
from planner.units import LengthUnit

COLUMN_PX: Final = 28 * theme.RHYTHM
_PAPERS: Final = (("A4", Paper.A4), ("Letter", Paper.LETTER))
_FORMS: Final = {".pdf": "PDF (*.pdf)", ".html": "Web page (*.html)"}
_PENDING: Final = {
    "options": "Comparing the options, and how sure each difference is…",
    "schedule": "Finding height and output for each stage…",
    "": "Reckoning how sure the figures are…",
}
_WAITS: Final = "Printing and saving wait until it is done or stopped."


@dataclass(frozen=True)
class Asked:
    """What a report is made of: the plan, the light at hand, the unit, a calibration."""

    plan: Plan
    estimate: Estimate | None
    options: EstimateOptions
    unit: LengthUnit
    calibration: Calibration | None = None

    @property
    def at_hand(self) -> Estimate | None:
        """The estimate where it is the light of this plan and no preview."""
        found = self.estimate
        fits = found is not None and found.plan == self.plan
        return found if fits and found.options.quality is not Quality.PREVIEW else None  # type: ignore[union-attr]


class LeafView(QAbstractScrollArea):
    """The leaves one below the other, as wide as there is room; keys and wheel scroll.

    ``drawing_asked(Picture, QPoint)`` when a menu is asked for over a drawing.
    """

    drawing_asked = Signal(object, object)

    def __init__(self) -> None:
        super().__init__()
        self._leaves: Leaves | None = None
        self._kept: dict[int, QPixmap] = {}
        self.setAccessibleName("The report as it will be printed")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFrameShape(QAbstractScrollArea.Shape.NoFrame)
        self.setBackgroundRole(QPalette.ColorRole.Midlight)
        self.viewport().setBackgroundRole(QPalette.ColorRole.Midlight)

    @property
    def count(self) -> int:
        """How many leaves there are."""
        return 0 if self._leaves is None else len(self._leaves)

    def show_leaves(self, leaves: Leaves) -> None:
        """Show other leaves; where one has scrolled to stays as far as it can."""
        self._leaves = leaves
        self._kept.clear()
        sections = leaves.report.sections
        titles = ", ".join(section.title for section in sections)
        words = [b.text for one in sections for b in one.blocks if isinstance(b, Words) and b.large]
        self.setAccessibleDescription(" ".join((f"{len(leaves)} pages: {titles}.", *words)))
        self._measure()
        self.viewport().update()

    def sizeHint(self) -> QSize:
        return QSize(560, 640)

    def leaf_size(self) -> QSizeF:
        """Width and height of a leaf on the screen."""
        wide, tall = (Paper.A4 if self._leaves is None else self._leaves.paper).size_mm
        across = float(max(self.viewport().width() - 2 * theme.WIDE, 120))
        return QSizeF(across, across * tall / wide)

    def _step(self) -> float:
        return self.leaf_size().height() + theme.WIDE

    def _measure(self) -> None:
        bar = self.verticalScrollBar()
        whole = round(self.count * self._step() + theme.WIDE)
        bar.setRange(0, max(whole - self.viewport().height(), 0))
        bar.setPageStep(self.viewport().height())
        bar.setSingleStep(5 * theme.RHYTHM)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self._kept.clear()
        self._measure()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        bar = self.verticalScrollBar()
        steps = {
            Qt.Key.Key_PageDown: bar.value() + round(self._step()),
            Qt.Key.Key_PageUp: bar.value() - round(self._step()),
            Qt.Key.Key_Home: bar.minimum(),
            Qt.Key.Key_End: bar.maximum(),
            Qt.Key.Key_Down: bar.value() + bar.singleStep(),
            Qt.Key.Key_Up: bar.value() - bar.singleStep(),
        }
        to = steps.get(Qt.Key(event.key()))
        if to is None:
            super().keyPressEvent(event)
        else:
            bar.setValue(to)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self.viewport())
        size, top = self.leaf_size(), float(theme.WIDE - self.verticalScrollBar().value())
        for number in range(self.count):
            place = QRectF(QPointF(theme.WIDE, top), size)
            if place.bottom() > 0 and place.top() < self.viewport().height():
                painter.drawPixmap(place.topLeft(), self._leaf(number, size))
            top += self._step()
        if self.hasFocus():
            paint_focus(self, painter)
        painter.end()

    def drawing_at(self, x: float, y: float) -> Picture | None:
        """The drawing at a place of the view."""
        size, step = self.leaf_size(), self._step()
        down = y + self.verticalScrollBar().value() - theme.WIDE
        number = int(down // step)
        if self._leaves is None or not 0 <= number < self.count:
            return None
        scale = self._leaves.paper.size_mm[0] * MM / size.width()
        place = QPointF((x - theme.WIDE) * scale, (down - number * step) * scale)
        return self._leaves.picture_at(number, place)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        drawing = self.drawing_at(event.pos().x(), event.pos().y())
        if drawing is not None:
            self.drawing_asked.emit(drawing, event.globalPos())
            event.accept()

    def _leaf(self, number: int, size: QSizeF) -> QPixmap:
        """A leaf as a picture, kept until it is shown larger or smaller."""
        if number not in self._kept and self._leaves is not None:
            ratio = self.devicePixelRatioF()
            image = QImage((size * ratio).toSize(), QImage.Format.Format_RGB32)
            image.fill(QColor("white"))  # paper, on whatever ground the window has
            painter = QPainter(image)
            painter.setRenderHints(
                QPainter.RenderHint.Antialiasing | QPainter.RenderHint.SmoothPixmapTransform
            )
            scale = size.width() * ratio / (self._leaves.paper.size_mm[0] * MM)
            painter.scale(scale, scale)
            self._leaves.paint(painter, number)
            painter.end()
            made = QPixmap.fromImage(image)
            made.setDevicePixelRatio(ratio)
            self._kept[number] = made
        return self._kept[number]


class ReportWindow(QDialog):
    """Choose sections, look at the leaves, print or save them.

    ``told(str)`` holds a line for the status bar. ``made`` is the whole report so far.
    """

    told = Signal(str)

    def __init__(
        self,
        asked: Asked,
        name: str,
        settings: Settings,
        questions: Questions,
        parent: QWidget | None = None,
        *,
        synchronous: bool | None = None,
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(f"Report: {name}")
        self._asked, self._name = asked, name
        self._settings, self._questions = settings, questions
        self.made: Report | None = None
        self.view = LeafView()
        self.boxes = {key: QCheckBox(title) for key, title in SECTIONS.items()}
        self.paper = StillCombo(name="Paper", entries=_PAPERS)
        inches = asked.unit is LengthUnit.INCH
        self.paper.setCurrentIndex([p for _, p in _PAPERS].index(
            Paper.LETTER if inches else Paper.A4
        ))  # fmt: skip
        self.state = NoteLabel()
        self.state.setAccessibleName("What is still being reckoned")
        self.bar = ProgressLine("Progress of the report")
        self.stop_button = link_button("Stop")
        self.alert = AlertLabel()
        self.print_button = button("Print…", "On a printer of this system", act=self.print_)
        self.pdf_button = button("Save as PDF…", "Text that can be selected, drawings as lines")
        self.html_button = button("Save as HTML…", "One page that needs no other file")
        self.sheet_button = button("Only the build sheet", "One page to take to the cabinet")
        self.drawings_button = button("Drawings", "Each plan, map and chart by itself")
        self.close_button = button("Close", act=self.accept)
        self._arrange()
        self._connect()
        self.lane = Lane("report", synchronous=synchronous, parent=self)
        self.lane.done.connect(self._on_done)
        self.lane.failed.connect(self._on_failed)
        self.lane.progressed.connect(lambda _about, fraction: self.bar.reach(fraction))
        self.lane.busy_changed.connect(self._on_busy)
        self.stop_button.clicked.connect(self.lane.stop)
        at_hand = asked.at_hand
        if at_hand is not None:
            known = Known(at_hand, calibration=asked.calibration)
            first: Job = lambda _progress, _cancelled: _report(known, asked.unit)  # noqa: E731
            self.lane.ask(asked, first, topic="at hand", what="The report")
        self.lane.ask(asked, _job(asked), topic="whole", what="The report")

    # -- building -------------------------------------------------------------------------

    def _arrange(self) -> None:
        for box in self.boxes.values():
            box.setChecked(True)
        words = PlainLabel("Paper")
        words.setBuddy(self.paper)
        left = Qt.AlignmentFlag.AlignLeft
        side = QWidget()
        side.setFixedWidth(COLUMN_PX)
        theme.column(
            *self.boxes.values(), (self.sheet_button, 0, left), theme.WIDE,
            theme.row(words, (self.paper, 1)), theme.REST, self.alert, self.state, self.bar,
            (self.stop_button, 0, left), theme.RHYTHM, self.pdf_button, self.html_button,
            self.drawings_button, self.print_button, self.close_button, on=side, gap=theme.HALF,
        )  # fmt: skip
        theme.row((self.view, 1), side, on=self, gap=theme.WIDE, edges=theme.WIDE)
        self.resize(980, 720)
        self.pdf_button.setDefault(True)
        stops = (*self.boxes.values(), self.sheet_button, self.paper, self.stop_button,
                 self.pdf_button, self.html_button, self.drawings_button, self.print_button,
                 self.close_button, self.view)  # fmt: skip
        in_tab_order(stops)

    def _connect(self) -> None:
        for box in self.boxes.values():
            box.toggled.connect(lambda _on: self._show())
        self.sheet_button.clicked.connect(self.only_build_sheet)
        self.paper.activated.connect(lambda _row: self._show())
        self.pdf_button.clicked.connect(lambda: self.save(".pdf"))
        self.html_button.clicked.connect(lambda: self.save(".html"))
        self.drawings_button.clicked.connect(
            lambda: self.drawings_menu().popup(
                self.drawings_button.mapToGlobal(self.drawings_button.rect().topLeft())
            )
        )
        self.view.drawing_asked.connect(lambda drawing, at: self._out(drawing).menu().popup(at))

    # -- showing --------------------------------------------------------------------------

    def _on_busy(self, busy: bool) -> None:
        pending = [key for key in ("options", "schedule") if self._needs(key)]
        self.state.setText(f"{_PENDING[pending[0] if pending else '']} {_WAITS}" if busy else "")
        self.state.setVisible(busy)
        self.bar.setVisible(busy)
        self.stop_button.setVisible(busy)
        self._offer()

    def _needs(self, key: str) -> bool:
        plan = self._asked.plan
        return bool(plan.variants if key == "options" else plan.schedule)

    def _on_done(self, _about: object, result: object) -> None:
        if isinstance(result, Report):
            self._take(result)

    def _on_failed(self, _about: object, sentence: str) -> None:
        self.alert.setText(sentence)

    def _take(self, made: Report) -> None:
        self.made = made
        there = {section.key for section in made.sections}
        for key, box in self.boxes.items():
            box.setVisible(key in there)
        self._show()

    def chosen(self) -> Report | None:
        """The report with the sections that are ticked; None without any."""
        if self.made is None:
            return None
        kept = tuple(one for one in self.made.sections if self.boxes[one.key].isChecked())
        return replace(self.made, sections=kept) if kept else None

    def paper_chosen(self) -> Paper:
        """The paper that is chosen."""
        return Paper(self.paper.currentData())

    def only_build_sheet(self) -> None:
        """Tick the build sheet and nothing else; ticked so already, tick everything again."""
        alone = self._sheet_alone()
        for key, box in self.boxes.items():
            box.blockSignals(True)
            box.setChecked(alone or key == "build")
            box.blockSignals(False)
        self._show()

    def _sheet_alone(self) -> bool:
        return [key for key, box in self.boxes.items() if box.isChecked()] == ["build"]

    def _show(self) -> None:
        chosen = self.chosen()
        self._offer()
        words = "All sections" if self._sheet_alone() else "Only the build sheet"
        self.sheet_button.setText(words)
        self.sheet_button.setAccessibleName(words)
        if chosen is not None:
            self.view.show_leaves(Leaves(chosen, self.paper_chosen()))

    def _offer(self) -> None:
        """Let out what is chosen; the report itself only when nothing of it is awaited."""
        there = self.chosen() is not None
        self.drawings_button.setEnabled(there)
        for made in (self.pdf_button, self.html_button, self.print_button):
            made.setEnabled(there and not self.lane.busy)

    # -- ways out -------------------------------------------------------------------------

    def save(self, ending: str) -> bool:
        """Ask where to, and write the chosen sections as PDF or HTML."""
        chosen = self.chosen()
        if chosen is None:
            return False
        proposal = self._settings.folder / f"{self._name}{ending}"

        def write(path: Path) -> None:
            pdf = ending == ".pdf"
            paper = self.paper_chosen()
            write_bytes(path, report_pdf(chosen, paper) if pdf else report_html(chosen).encode())

        out = "Save the report", proposal, _FORMS[ending], "report", write
        return self._questions.save_into(*out, self.told.emit) is not None

    def drawings(self) -> tuple[DrawingOut, ...]:
        """The drawings of the chosen sections, each with its ways out."""
        chosen = self.chosen()
        found = () if chosen is None else chosen.sections
        blocks = [block for section in found for block in section.blocks]
        every = [one for b in blocks if isinstance(b, Pictures) for one in b.every]
        return tuple(self._out(drawing) for drawing in every)

    def drawings_menu(self) -> QMenu:
        """A menu of the drawings, each with its ways out; it deletes itself when closed."""
        menu = QMenu(self)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        for drawing in self.drawings():
            drawing.fill(menu.addMenu(shortened(drawing.called(), 60).replace("&", "&&")))
        return menu

    def _out(self, drawing: Picture) -> DrawingOut:
        return DrawingOut(drawing, drawing.words, self._questions)

    def print_(self) -> bool:
        """Ask for a printer and print the chosen sections on it."""
        chosen = self.chosen()
        if chosen is None:
            return False
        printer = self._questions.printer(self.paper_chosen(), self._name)
        if printer is None:
            return False
        painter = QPainter(printer)
        paint_leaves(Leaves(chosen, self.paper_chosen()), painter, printer)
        painter.end()
        self.told.emit("Sent the report to the printer")
        return True

    def done(self, result: int) -> None:
        self.lane.close()
        super().done(result)


def _report(known: Known, unit: LengthUnit) -> Report:
    return report(known, unit, date=dt.datetime.now().astimezone().date())


def _job(asked: Asked) -> Job:
    def work(progress: Progress, cancelled: Cancelled) -> Report:
        known = gather(
            asked.plan, asked.options, unit=asked.unit, calibration=asked.calibration,
            estimate=asked.at_hand, progress=progress, cancelled=cancelled,
        )  # fmt: skip
        return _report(known, asked.unit)

    return work
