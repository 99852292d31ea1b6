"""The side by side page: the plan and its variants, and the questions asked of them."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final, Generic, TypeVar

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QHideEvent, QKeyEvent, QResizeEvent, QShowEvent
from PySide6.QtWidgets import (
    QScrollArea,
    QWidget,
)

from planner.app import theme
from planner.app.canvas.items import Section
from planner.app.display import Display
from planner.app.document import Document
from planner.app.fields.choosers import Shelf
from planner.app.fields.form import AlertLabel, button, link_button
from planner.app.frame import PageBar, Pages
from planner.app.jobs import Lane
from planner.app.pages.side.comparer import Comparer
from planner.app.pages.side.linked import Linked
from planner.app.pages.side.map_sheet import CardBar, MapSheet
from planner.app.pages.side.options_table import OptionsTable
from planner.app.pages.side.variants import TryForm, VariantSteps
from planner.app.pages.side.weighing import CompareForm, OddsBoard, OddsForm, TradeOffForm
from planner.app.plain import PlainLabel
from planner.app.plots.option_charts import TradeOffPlot
from planner.app.questions import FILTERS, Questions, in_file_name, write_text
from planner.plan.place import judged
from planner.reports.content import DIFFERENTLY, judged_sentence

if TYPE_CHECKING:
    # Imported with the question they belong to.
    from planner.app.pages.side.find_form import FindBoard, FindForm
    from planner.app.pages.side.schedule_board import ScheduleBoard
    from planner.app.pages.side.sweep_board import SweepBoard
    from planner.app.pages.side.sweep_form import SweepForm
    from planner.app.pages.side.worth_form import WorthBoard, WorthForm

COLUMN_WIDTH: Final = 300
COLUMN_CHARACTERS: Final = 44
ASKED: Final = {
    "options": "Options",
    "odds": "Odds",
    "cost": "Light and cost",
    "try": "Try",
    "sweep": "Sweep",
    "find": "Find",
    "schedule": "Schedule",
    "worth": "Worth it",
}
"""The questions of the page, one at a time in sight."""
_RANKING: Final = ("options", "odds", "cost")
"""Where options are ranked by figures or by odds."""
_DARK: Final = "No lamp hangs in this space yet, so it is dark. Hang one on the sketch first."
_HOW_SURE: Final = "finding how sure it is…"
_EMPTY: Final = (
    "Nothing stands beside the plan yet. Keep the plan as an option and go on sketching, or try "
    "other linings, lamps or heights."
)


Made = TypeVar("Made", bound=QWidget)


class _Part(Generic[Made]):
    """The answer or the choices of a question; made, with their screen, when first used."""

    def __init__(self, key: str, *, choices: bool = False) -> None:
        self._key, self._choices = key, choices

    def __get__(self, page: SideBySidePage, _owner: type) -> Made:
        page.asked.page(self._key)
        made: Any = page.screens[self._key][self._choices]
        return made  # type: ignore[no-any-return]


class SideBySidePage(QWidget):
    """One question at a time, its answer large at the left and its choices at the right.

    A question is made when it is first asked; from then on it follows the plan, in sight or not.

    ``told`` carries a sentence for the status bar, ``sketch_asked`` and ``survey_asked`` lead to
    the other pages. The page computes only while it is in sight. ``shutdown`` must be called
    before it goes.
    """

    told = Signal(str)
    sketch_asked = Signal()
    survey_asked = Signal()
    scheduled = Signal(object, object)
    """A schedule that was found, as ``ScheduleBoard.answered`` tells it."""

    odds: _Part[OddsBoard] = _Part("odds")
    margin: _Part[OddsForm] = _Part("odds", choices=True)
    trade_off: _Part[TradeOffPlot] = _Part("cost")
    axes: _Part[TradeOffForm] = _Part("cost", choices=True)
    make: _Part[TryForm] = _Part("try")
    sweep_board: _Part[SweepBoard] = _Part("sweep")
    sweep: _Part[SweepForm] = _Part("sweep", choices=True)
    find_board: _Part[FindBoard] = _Part("find")
    finding: _Part[FindForm] = _Part("find", choices=True)
    schedule: _Part[ScheduleBoard] = _Part("schedule")
    worth_board: _Part[WorthBoard] = _Part("worth")
    worth: _Part[WorthForm] = _Part("worth", choices=True)

    def __init__(
        self,
        document: Document,
        display: Display,
        shelf: Shelf,
        steps: VariantSteps,
        questions: Questions,
    ) -> None:
        super().__init__()
        self.document, self.display, self.steps = document, display, steps
        self._shelf, self._questions = shelf, questions
        self.screens: dict[str, tuple[QWidget, QWidget]] = {}
        """Answer and choices of the questions that were asked so far."""
        self._columns: list[QScrollArea] = []
        self.linked = Linked(self)
        self.comparer = Comparer(document, display, self.linked, parent=self)
        self.lane = Lane("questions", parent=self)
        self.sheet = MapSheet(self.comparer, self.linked, display)
        self.bar = CardBar(document, self.comparer, self.linked, steps)
        self.state = PlainLabel(name="State of the comparison", quiet=True)
        self.judged = PlainLabel(name="What figures are of", wrap=True, quiet=True)
        self.judged.hide()
        self.alert = AlertLabel()
        self.empty = self._empty_line()
        self.compare = CompareForm(document, display, self.comparer, self.linked)
        self.table = OptionsTable()
        self._arrange()
        self._connect()
        self._on_plan()

    # -- building -----------------------------------------------------------------------

    def _empty_line(self) -> QWidget:
        holder = QWidget()
        self.empty_words = PlainLabel(_EMPTY, wrap=True)
        self.sketch_button = button("To the sketch", act=self.sketch_asked)
        self.keep_button = button("Keep the plan as an option")
        self.keep_button.clicked.connect(lambda: self.steps.keep(self.display.unit))
        self.try_button = button("Try others", act=self._go_to_linings)
        buttons = (self.sketch_button, self.keep_button, self.try_button)
        theme.row((self.empty_words, 1), *buttons, on=holder)
        return holder

    def _options(self) -> QWidget:
        """Maps and choices over the table, which is as wide as the page and as tall as its rows."""
        holder = QWidget()
        self.copy_button = link_button(
            "Copy the table",
            "Tab-separated, for a spreadsheet (Ctrl+C in the table)",
            act=self.copy_table,
        )
        self.export_button = link_button("Export as CSV…", act=self.export_table)
        self.left_out = PlainLabel(quiet=True)
        line = theme.row((self.bar, 1), self.left_out, self.copy_button, self.export_button)
        theme.column(
            self.empty, (self._screen(self.sheet, self.compare), 1), line, self.table, on=holder,
            gap=theme.HALF,
        )  # fmt: skip
        return holder

    def _arrange(self) -> None:
        makers: dict[str, Callable[[], tuple[QWidget, QWidget]]] = {
            "odds": self._make_odds,
            "cost": self._make_cost,
            "try": self._make_try,
            "sweep": self._make_sweep,
            "find": self._make_find,
            "schedule": self._make_schedule,
            "worth": self._make_worth,
        }
        asked = {key: partial(self._make_screen, key, make) for key, make in makers.items()}
        self.asked = Pages("options", self._options(), asked)
        self.question_bar = PageBar(self.asked, ASKED)
        self.question_bar.setAccessibleName("Questions")
        self._top = theme.row(self.question_bar, theme.REST, self.state)
        theme.column(
            self._top, self.judged, self.alert, (self.asked, 1), on=self, gap=theme.HALF,
            edges=(theme.RHYTHM, theme.HALF, theme.RHYTHM, theme.RHYTHM),
        )  # fmt: skip

    def _screen(self, main: QWidget, form: QWidget) -> QWidget:
        screen = QWidget()
        area = _scrolled(form)
        self._columns.append(area)
        theme.row((main, 1), area, on=screen, gap=theme.WIDE)
        self._fit_columns()
        return screen

    # -- questions, each made when it is first asked --------------------------------------

    def _make_screen(self, key: str, make: Callable[[], tuple[QWidget, QWidget]]) -> QWidget:
        self.screens[key] = make()
        return self._screen(*self.screens[key])

    def _make_odds(self) -> tuple[QWidget, QWidget]:
        margin = OddsForm(self.document, self.display, self.linked)
        margin.survey_asked.connect(self.survey_asked)
        return OddsBoard(self.document, self.comparer, self.linked), margin

    def _make_cost(self) -> tuple[QWidget, QWidget]:
        plot, axes = TradeOffPlot(), TradeOffForm(self.document, self.display)
        plot.picked.connect(lambda who: self.linked.update(chosen=who))
        axes.changed.connect(self._show_table)
        self._show_cost(plot, axes)
        return plot, axes

    def _make_try(self) -> tuple[QWidget, QWidget]:
        board = TryForm(self.document, self.display, self._shelf, self.steps)
        board.made.connect(lambda: self.open_question("options"))
        return board, board.form

    def _make_sweep(self) -> tuple[QWidget, QWidget]:
        from planner.app.pages.side.sweep_board import SweepBoard  # noqa: PLC0415 - when asked
        from planner.app.pages.side.sweep_form import SweepForm  # noqa: PLC0415 - when asked

        board = SweepBoard(self.document, self.display, self.linked, self.steps)
        return board, SweepForm(self.document, self.display, self._shelf, self.lane, board)

    def _make_find(self) -> tuple[QWidget, QWidget]:
        from planner.app.pages.side.find_form import FindBoard, FindForm  # noqa: PLC0415 - when asked

        board = FindBoard(self.document, self.display, self.steps)
        asked = self.lane, self._shelf, board, self.comparer
        return board, FindForm(self.document, self.display, *asked)

    def _make_schedule(self) -> tuple[QWidget, QWidget]:
        from planner.app.pages.side.schedule_board import ScheduleBoard  # noqa: PLC0415 - when asked

        document, display = self.document, self.display
        board = ScheduleBoard(document, display, self._shelf, self.lane, self._questions)
        board.told.connect(self.told)
        board.answered.connect(self.scheduled)
        return board, board.form

    def _make_worth(self) -> tuple[QWidget, QWidget]:
        from planner.app.pages.side.worth_form import WorthBoard, WorthForm  # noqa: PLC0415 - when asked

        board = WorthBoard(self.document, self.display)
        return board, WorthForm(self.document, self.display, self.comparer, self.linked, board)

    def _connect(self) -> None:
        self.document.changed.connect(lambda _old, _new: self._on_plan())
        self.comparer.compared.connect(self._on_compared)
        self.comparer.told.connect(self._show_state)
        self.comparer.priced.connect(self._show_table)
        self.comparer.said.connect(self.told)
        self.comparer.failed.connect(self.alert.say)
        self.asked.switched.connect(lambda _key: self._show_judged())
        self.comparer.busy_changed.connect(lambda _on: self._show_state())
        self.linked.changed.connect(lambda _new, _old: self._show_table())
        self.table.picked.connect(lambda who: self.linked.update(chosen=who))
        self.bar.sketch_asked.connect(self.sketch_asked)
        self.bar.rename_asked.connect(self._edit_name)
        self.sheet.renamed.connect(self.bar.rename)
        for part in (self.sheet, self.table):
            part.opened.connect(self.bar.do_open)
            part.key_pressed.connect(self._on_card_key)
            part.menu_asked.connect(lambda at: self.bar.menu().popup(at))
        self.sheet.dropped.connect(self.bar.put_before)
        self.table.moved.connect(self.bar.put_before)

    # -- showing ------------------------------------------------------------------------

    def open_question(self, key: str) -> None:
        """Show one of the questions."""
        self.asked.go(key)

    def show_section(self, section: Section) -> None:
        """Take over the section line of the sketch."""
        self.linked.cut_along(section)

    def _go_to_linings(self) -> None:
        self.open_question("try")
        self.make.linings.setFocus()

    def _on_plan(self) -> None:
        plan = self.document.plan
        self.empty.setVisible(not plan.variants)
        self.empty_words.setText(_EMPTY if plan.lamps else _DARK)
        self.sketch_button.setVisible(not plan.lamps)
        for one in (self.keep_button, self.try_button):
            one.setVisible(bool(plan.lamps))
        self._show_table()
        self._show_state()

    def _on_compared(self) -> None:
        self.alert.say("")
        self._show_state()
        self._show_table()

    def _show_table(self) -> None:
        if not self.isVisible():
            return  # a hand on the sketch does not wait for a table nobody sees
        sides, state, costs = self.comparer.sides, self.linked.state, self.document.plan.costs
        # One line is no table: as long as nothing is compared the map has the whole page.
        self.table.setVisible(len(sides) > 1)
        for shown in (self.copy_button, self.export_button):
            shown.setVisible(len(sides) > 1)
        if not sides:
            return
        options = [self.comparer.option(side) for side in sides]
        self.table.show_options(options, costs, state.wishes, state.chosen)
        hidden = self.table.options.hidden
        self.left_out.setText(f"{hidden} of {len(sides)} miss a wish" if hidden else "")
        self.left_out.setVisible(hidden > 0)
        if "cost" in self.screens:
            self._show_cost(self.trade_off, self.axes)

    def _show_cost(self, plot: TradeOffPlot, axes: TradeOffForm) -> None:
        sides, costs = self.comparer.sides, self.document.plan.costs
        if sides:
            options = [self.comparer.option(side) for side in sides]
            axes.fill(plot, options, costs, self.linked.state.chosen)

    def _show_state(self) -> None:
        text = ""
        if self.comparer.computing:
            text = "refining…" if self.comparer.comparison is not None else "computing…"
        elif self.comparer.lane.busy:
            text = _HOW_SURE
        self.state.setText(text)
        self._show_judged()

    def _show_judged(self) -> None:
        """Say whose figures all questions tell of, where it is not the plan's own canopy."""
        plan = self.document.plan
        whom = {
            judged(side.plan) if side.estimate is None else side.estimate.place
            for side in self.comparer.sides
        } or {judged(plan)}
        text = DIFFERENTLY if len(whom) > 1 else judged_sentence(plan, whom.pop())
        if self.asked.current in _RANKING:
            text = f"{text} {self.comparer.contrary()}".strip()
        self.judged.setText(text)
        self.judged.setVisible(bool(text))

    # -- choosing -----------------------------------------------------------------------

    def _edit_name(self) -> None:
        card = self.sheet.card(self.bar.key)
        if card is not None:
            card.edit_name()

    def _on_card_key(self, event: QKeyEvent) -> None:
        key = Qt.Key(event.key())
        control = bool(event.modifiers() & Qt.KeyboardModifier.ControlModifier)
        with_control = {
            Qt.Key.Key_Left: self.bar.do_earlier,
            Qt.Key.Key_Up: self.bar.do_earlier,
            Qt.Key.Key_Right: self.bar.do_later,
            Qt.Key.Key_Down: self.bar.do_later,
            Qt.Key.Key_D: self.bar.do_duplicate,
        }
        plain = {
            Qt.Key.Key_Delete: self.bar.do_remove,
            Qt.Key.Key_F2: self.bar.edit_name,
            Qt.Key.Key_B: self.bar.do_baseline,
            Qt.Key.Key_Return: self.bar.do_adopt,
            Qt.Key.Key_Enter: self.bar.do_adopt,
        }
        act = (with_control if control else plain).get(key)
        if act is None:
            event.ignore()
            return
        act()
        event.accept()

    # -- the table elsewhere ------------------------------------------------------------

    def copy_table(self) -> None:
        """Put the table on the clipboard, tab-separated."""
        self.table.copy()
        self.told.emit("Copied the table; paste it into a spreadsheet.")

    def export_table(self) -> bool:
        """Ask where to, and write the table as CSV."""
        proposal = Path.home() / f"{in_file_name(self.document.plan.name)} side by side.csv"
        path = self._questions.save_into(
            "Export",
            proposal,
            FILTERS[".csv"],
            "table",
            lambda path: write_text(path, self.table.text(",")),
            self.told.emit,
        )
        return path is not None

    # -- Qt -----------------------------------------------------------------------------

    def shutdown(self) -> None:
        """Stop all work and join the threads."""
        self.comparer.shutdown()
        self.lane.shutdown()

    def sizeHint(self) -> QSize:
        return QSize(1280, 740)

    def minimumSizeHint(self) -> QSize:
        return QSize(640, 320)

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self._show_table()
        self.comparer.follow(True)

    def hideEvent(self, event: QHideEvent) -> None:
        super().hideEvent(event)
        self.comparer.follow(False)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        # The table is as tall as its rows, and never more than the maps above it.
        self.table.setMaximumHeight(round(0.4 * self.height()))
        self._fit_columns()
        self._fit_top()

    def _fit_top(self) -> None:
        """Where the font is large the state gets a line of its own, whatever it says just now."""
        longest = self.fontMetrics().horizontalAdvance(_HOW_SURE) + 4 * theme.RHYTHM
        fits = self.question_bar.minimumSizeHint().width() + longest <= self.width()
        theme.lay_beside(self._top, fits)
        self.state.setMinimumHeight(self.fontMetrics().lineSpacing())

    def _fit_columns(self) -> None:
        width = max(COLUMN_WIDTH, round(COLUMN_CHARACTERS * self.fontMetrics().averageCharWidth()))
        if self.width() >= theme.WIDE_PAGE:
            width = max(width, 400)
        for column in self._columns:
            column.setFixedWidth(min(width, max(round(0.36 * self.width()), 240)))


def _scrolled(form: QWidget) -> QScrollArea:
    """A column that scrolls where the window is low."""
    holder = QWidget()
    theme.column(
        form, theme.REST, on=holder, edges=(theme.HALF, theme.HALF, theme.RHYTHM, theme.RHYTHM)
    )
    return theme.scrolled(holder)
