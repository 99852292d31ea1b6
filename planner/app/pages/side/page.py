"""The side by side page: the plan and its variants, and the questions asked of them."""

from __future__ import annotations

from pathlib import Path
from typing import Final

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QHideEvent, QKeyEvent, QResizeEvent, QShowEvent
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QScrollArea,
    QSplitter,
    QStackedWidget,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from planner.app import theme
from planner.app.canvas.sampling import Section
from planner.app.display import Display
from planner.app.document import Document
from planner.app.exports import FILTERS, write_text
from planner.app.fields.choosers import Shelf
from planner.app.fields.form import AlertLabel, button, fold_button, in_tab_order, link_button
from planner.app.jobs import Lane
from planner.app.pages.side.compare_form import CompareForm, MakeForm
from planner.app.pages.side.comparer import Comparer, Linked
from planner.app.pages.side.figure_table import FigureTable
from planner.app.pages.side.find_form import FindForm
from planner.app.pages.side.map_sheet import CardBar, MapSheet
from planner.app.pages.side.schedule_board import ScheduleBoard
from planner.app.pages.side.sweep_form import SweepBoard, SweepForm
from planner.app.pages.side.variant_steps import VariantSteps
from planner.app.pages.side.worth_board import WorthBoard
from planner.app.pages.side.worth_form import WorthForm
from planner.app.plain import PlainLabel
from planner.app.questions import Questions
from planner.estimate.compare import rows
from planner.files.disk import PlanFileError

COLUMN_WIDTH: Final = 320
COLUMN_CHARACTERS: Final = 46
WIDE_PAGE: Final = 1600
VERBS: Final = ("Compare", "Sweep", "Find", "Worth it")
_EMPTY: Final = (
    "Nothing stands beside the plan yet. Keep the plan as a variant and go on sketching, or try "
    "other linings or heights."
)


class SideBySidePage(QWidget):
    """Maps on the left with what belongs to the open verb under them; the verbs on the right.

    ``told`` carries a sentence for the status bar. The page computes only while it is in
    sight. ``shutdown`` must be called before it goes.
    """

    told = Signal(str)

    def __init__(
        self,
        document: Document,
        display: Display,
        shelf: Shelf,
        steps: VariantSteps,
        questions: Questions,
        parent: QWidget | None = None,
        *,
        comparer: Comparer | None = None,
        linked: Linked | None = None,
        synchronous: bool | None = None,
    ) -> None:
        super().__init__(parent)
        self.document, self.display, self.steps = document, display, steps
        self._questions = questions
        self._shown_before = False
        self.linked = linked or Linked(self)
        self.comparer = comparer or Comparer(
            document, display, self.linked, synchronous=synchronous, parent=self
        )
        self.lane = Lane("questions", synchronous=synchronous, parent=self)
        self.sheet = MapSheet(self.comparer, self.linked, display)
        self.bar = CardBar(document, self.comparer, self.linked, steps)
        self.state = PlainLabel()
        self.state.setForegroundRole(self.palette().ColorRole.PlaceholderText)
        self.state.setAccessibleName("State of the comparison")
        self.alert = AlertLabel()
        self.empty = self._empty_line()
        self.compare = CompareForm(document, display, self.comparer, self.linked)
        self.make = MakeForm(document, display, shelf, steps)
        self.table = FigureTable()
        self.sweep_board = SweepBoard(document, display, steps)
        self.sweep = SweepForm(document, display, self.lane, self.sweep_board)
        self.schedule = ScheduleBoard(document, display, shelf, self.lane)
        self.finding = FindForm(document, display, self.lane, steps)
        self.worth_board = WorthBoard(document, display)
        self.worth = WorthForm(document, display, self.comparer, self.linked, self.worth_board)
        self._arrange()
        self._connect()
        self._on_plan()
        self.open_verb(0)

    # -- building -----------------------------------------------------------------------

    def _empty_line(self) -> QWidget:
        holder = QWidget()
        words = PlainLabel(_EMPTY)
        words.setWordWrap(True)
        self.keep_button = button("Keep the plan as a variant")
        self.keep_button.clicked.connect(lambda: self.steps.keep(self.display.unit))
        self.try_button = button("Try linings")
        self.try_button.clicked.connect(self._go_to_linings)
        layout = QHBoxLayout(holder)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(words, 1)
        layout.addWidget(self.keep_button)
        layout.addWidget(self.try_button)
        return holder

    def _table_holder(self) -> QWidget:
        holder = QWidget()
        self.copy_button = link_button("Copy the table")
        self.copy_button.setToolTip("<p>Tab-separated, for a spreadsheet (Ctrl+C in the table)</p>")
        self.copy_button.clicked.connect(self.copy_table)
        self.export_button = link_button("Export as CSV…")
        self.export_button.clicked.connect(self.export_table)
        line = QHBoxLayout()
        line.setContentsMargins(0, 0, 0, 0)
        heading = PlainLabel("Every figure")
        font = heading.font()
        font.setBold(True)
        heading.setFont(font)
        line.addWidget(heading)
        line.addStretch(1)
        line.addWidget(self.copy_button)
        line.addWidget(self.export_button)
        layout = QVBoxLayout(holder)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(theme.HALF)
        layout.addLayout(line)
        layout.addWidget(self.table, 1)
        return holder

    def _arrange(self) -> None:
        upper = QWidget()
        above = QVBoxLayout(upper)
        above.setContentsMargins(0, 0, 0, 0)
        above.setSpacing(theme.HALF)
        above.addWidget(self.empty)
        above.addWidget(self.alert)
        above.addWidget(self.sheet, 1)
        line = QHBoxLayout()
        line.setContentsMargins(0, 0, 0, 0)
        line.addWidget(self.bar, 1)
        line.addWidget(self.state)
        above.addLayout(line)
        self.boards = QStackedWidget()
        for board in (self._table_holder(), self.sweep_board, self.schedule, self.worth_board):
            self.boards.addWidget(board)
        self.splitter = QSplitter(Qt.Orientation.Vertical)
        self.splitter.setChildrenCollapsible(False)
        self.splitter.addWidget(upper)
        self.splitter.addWidget(self.boards)
        self.splitter.setStretchFactor(0, 3)
        self.splitter.setStretchFactor(1, 2)
        self.splitter.setHandleWidth(theme.RHYTHM)
        self._column = self._verbs()
        layout = QHBoxLayout(self)
        layout.setContentsMargins(theme.RHYTHM, theme.RHYTHM, theme.RHYTHM, theme.RHYTHM)
        layout.setSpacing(theme.WIDE)
        layout.addWidget(self.splitter, 1)
        layout.addWidget(self._column)

    def _verbs(self) -> QWidget:
        column = QWidget()
        layout = QVBoxLayout(column)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        comparing = QWidget()
        both = QVBoxLayout(comparing)
        both.setContentsMargins(0, 0, 0, 0)
        both.addWidget(self.compare)
        both.addWidget(self.make)
        self.folds: list[QToolButton] = []
        self.areas: list[QScrollArea] = []
        forms: tuple[QWidget, ...] = (comparing, self.sweep, self.finding, self.worth)
        for index, (verb, form) in enumerate(zip(VERBS, forms, strict=True)):
            fold = fold_button(verb)
            font = fold.font()
            font.setPointSizeF(font.pointSizeF() * 1.12)
            fold.setFont(font)
            fold.setAccessibleDescription(f"Opens '{verb}'")
            fold.clicked.connect(lambda _on, index=index: self.open_verb(index))
            holder = QWidget()
            inside = QVBoxLayout(holder)
            inside.setContentsMargins(theme.HALF, theme.HALF, theme.RHYTHM, theme.RHYTHM)
            inside.addWidget(form)
            inside.addStretch(1)
            area = QScrollArea()
            area.setFrameShape(QFrame.Shape.NoFrame)
            area.setWidgetResizable(True)
            area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
            area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
            area.setWidget(holder)
            area.hide()
            self.folds.append(fold)
            self.areas.append(area)
        # The list of verbs keeps its place, whichever is open.
        for fold in self.folds:
            layout.addWidget(fold)
        for area in self.areas:
            layout.addWidget(area, 1)
        in_tab_order(self.folds)
        return column

    def _connect(self) -> None:
        self.document.changed.connect(lambda _old, _new: self._on_plan())
        self.comparer.compared.connect(self._on_compared)
        self.comparer.told.connect(self._show_state)
        self.comparer.failed.connect(self.alert.say)
        self.comparer.busy_changed.connect(lambda _on: self._show_state())
        self.linked.changed.connect(lambda _new, _old: self._show_table())
        self.table.picked.connect(self._pick_by_name)
        self.sheet.opened.connect(self._open_side)
        self.sheet.key_pressed.connect(self._on_card_key)

    # -- showing ------------------------------------------------------------------------

    def open_verb(self, index: int) -> None:
        """Open one of the verbs; the part under the maps follows it."""
        for k, (fold, area) in enumerate(zip(self.folds, self.areas, strict=True)):
            fold.setChecked(k == index)
            area.setVisible(k == index)
        self.boards.setCurrentIndex(index)
        self._show_boards()

    def show_section(self, section: Section) -> None:
        """Take over the section line of the sketch."""
        self.linked.cut_along(section)

    def _go_to_linings(self) -> None:
        self.open_verb(0)
        self.areas[0].ensureWidgetVisible(self.make.try_button)
        self.make.linings.setFocus()

    def _on_plan(self) -> None:
        self.empty.setVisible(not self.document.plan.variants)
        self._show_boards()
        self._show_state()

    def _show_boards(self) -> None:
        # One line is no table: as long as nothing is compared the map has the whole page.
        alone = not self.document.plan.variants and not self.linked.state.open_air
        self.boards.setVisible(self.boards.currentIndex() != 0 or not alone)

    def _on_compared(self) -> None:
        self.alert.say("")
        self._show_state()
        self._show_boards()
        self._show_table()

    def _show_table(self) -> None:
        comparison, base = self.comparer.comparison, self.comparer.baseline
        if comparison is not None and base is not None:
            chosen = comparison.sides[min(self.linked.state.chosen, len(comparison.sides) - 1)]
            self.table.show_rows(rows(comparison, base.name), chosen.name)

    def _show_state(self) -> None:
        text = ""
        if self.comparer.computing:
            text = "refining…" if self.comparer.comparison is not None else "computing…"
        elif self.comparer.lane.busy:
            text = "finding what can be told apart…"
        self.state.setText(text)

    # -- choosing -----------------------------------------------------------------------

    def _pick_by_name(self, name: str) -> None:
        names = [side.name for side in self.comparer.sides]
        if name in names:
            self.linked.update(chosen=names.index(name))

    def _open_side(self, index: int) -> None:
        self.linked.update(chosen=index)
        self.bar.do_adopt()

    def _on_card_key(self, event: QKeyEvent) -> None:
        key = Qt.Key(event.key())
        control = bool(event.modifiers() & Qt.KeyboardModifier.ControlModifier)
        steps = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}
        if control and key in steps:
            self.bar.do_move(steps[key])
        elif key is Qt.Key.Key_Delete:
            self.bar.do_remove()
        elif key is Qt.Key.Key_F2:
            self.bar.edit_name()
        elif key is Qt.Key.Key_B and not event.modifiers():
            self.bar.do_baseline()
        else:
            return
        event.accept()

    # -- the table elsewhere ------------------------------------------------------------

    def copy_table(self) -> None:
        """Put the table on the clipboard, tab-separated."""
        self.table.copy()
        self.told.emit("Copied the table; paste it into a spreadsheet.")

    def export_table(self) -> bool:
        """Ask where to, and write the table as CSV."""
        proposal = Path.home() / f"{self.document.plan.name} side by side.csv"
        path = self._questions.save_path("Export", proposal, FILTERS[".csv"])
        if path is None:
            return False
        path = path if path.suffix else path.with_name(path.name + ".csv")
        try:
            write_text(path, self.table.text(","))
        except PlanFileError as error:
            self._questions.tell_failure("The table was not written", str(error))
            return False
        self.told.emit(f"Wrote {path.name}")
        return True

    # -- Qt -----------------------------------------------------------------------------

    def shutdown(self) -> None:
        """Stop all work and join the threads."""
        self.comparer.shutdown()
        self.lane.shutdown()

    def sizeHint(self) -> QSize:
        return QSize(1280, 740)

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.comparer.follow(True)
        if not self._shown_before:
            self._shown_before = True
            tall = max(self.height(), 400)
            self.splitter.setSizes([round(0.61 * tall), round(0.39 * tall)])

    def hideEvent(self, event: QHideEvent) -> None:
        super().hideEvent(event)
        self.comparer.follow(False)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        width = max(COLUMN_WIDTH, round(COLUMN_CHARACTERS * self.fontMetrics().averageCharWidth()))
        if self.width() >= WIDE_PAGE:
            width = max(width, 400)
        self._column.setFixedWidth(width)
