"""Before the readings: the board and its way to paper, and what else is asked one by one."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Final

from PySide6.QtCore import QTimer, Signal
from PySide6.QtWidgets import QCheckBox, QPushButton, QWidget

from planner.app import theme
from planner.app.fields.form import AlertLabel, NoteLabel, StillCombo, TextLine, button
from planner.app.fields.panel import FieldPanel, QuantityField
from planner.app.pages.survey.desk import SurveyDesk
from planner.app.plain import PlainLabel, explain
from planner.app.questions import FILTERS, Questions, in_file_name, write_bytes
from planner.language import inside
from planner.plan.plan import Plan
from planner.plan.quantity import HANGING_HEIGHT, Quantity, quantity_of
from planner.plan.survey import BOARD_REFLECTANCE, SHUT_DOOR, Board, Spacing, Survey, SurveyGrid
from planner.plan.survey_edits import lay_board, outline_read
from planner.survey.layout import closest_pair, standard_grid
from planner.units import LengthUnit, capital, format_length, in_unit

_BOARDS: Final = {
    Board.PAPER: "Printed paper",
    Board.WHITE_CARD: "White card",
    Board.GREY_CARD: "Grey card",
    Board.BLACK: "Black card or cloth",
    Board.OWN: "Own number",
    Board.NONE: "No board: on the canopy itself",
}
ASK_BOARD: Final = (
    "Say what the board is made of: white paper throws so much light back that a small bright "
    "space reads a third higher than over leaves. Until then the canopy it lies on is taken for it."
)
ABOUT_BOARD: Final = (
    "Typical reflectances, from memory: paper 80 %, white card 85 %, grey card 18 %, black 5 %. "
    "How sure each is stands in the record, and counts in every calibration."
)


class BoardChoice(StillCombo):
    """What a survey's board is made of; ``chosen(Board)`` when the user picks one."""

    chosen = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.addItem("Choose…", None)
        for board, words in _BOARDS.items():
            known = BOARD_REFLECTANCE.get(board)
            self.addItem(words if known is None else f"{words}, {100 * known[0]:.0f} %", board)
        self.widen_list()
        self.activated.connect(self._on_activated)

    def show_survey(self, survey: Survey) -> None:
        """Show the board of a survey; a bare reflectance is one's own number."""
        board = survey.board
        if board is None and survey.board_reflectance is not None:
            board = Board.OWN
        index = 0 if board is None else 1 + list(_BOARDS).index(board)
        self.setCurrentIndex(index)

    def _on_activated(self, index: int) -> None:
        if index > 0:
            self.chosen.emit(list(_BOARDS)[index - 1])


ROWS: Final = quantity_of(SurveyGrid, "rows")
MARGIN: Final = quantity_of(SurveyGrid, "margin")
DIAMETER: Final = quantity_of(SurveyGrid, "hole_diameter")
SPACINGS = (
    ("Centres of equal cells", Spacing.CELLS),
    ("From edge to edge", Spacing.EDGES),
)
PAPERS = (("A4", "a4"), ("Letter", "letter"))
RULE = (
    "The lighting standard EN 12464-1 asks for a spacing of at most 0.2 · 5^log d metres, d the "
    "longer side of the area in metres (the shorter where it is less than half of it)."
)


_STEPS: Final = {
    "board": "What is the board made of?",
    "door": "Is the door shut as tightly as it will be?",
    "height": "How high do the lamps hang, measured now from their face to the canopy?",
    "warm-up": "Let the lamps warm up for 20 minutes: they fade by some per cent meanwhile.",
}
SKIPPED: Final[dict[str, tuple[str, float]]] = {
    "board": ("board_reflectance", 0.4),
    "door": ("door", 0.1),
    "height": ("hanging_height", 0.03),
    "warm-up": ("drift", 0.05),
}
"""What a step that is skipped leaves in doubt, and its half-width (rules of this program)."""


class ProtocolPanel(QWidget):
    """One question at a time before the readings; hidden once all are answered or skipped.

    What was answered stands in the survey, what was skipped as a doubt of it as wide as
    ``SKIPPED`` says: nothing is asked again when the plan is opened anew.
    """

    def __init__(self, desk: SurveyDesk) -> None:
        super().__init__()
        self.desk = desk
        self._on_since: float | None = None
        self.question = PlainLabel(name="Before the readings", wrap=True)
        self.made_of = BoardChoice()
        self.made_of.setAccessibleName("Board")
        self.height_line = TextLine("Lamp height as measured")
        self.yes_button = button("Shut", "Nothing leaks out at the door.", act=self._take)
        self.clock_button = button("Lamps on: start the clock", act=self._take_clock)
        self.skip_button = button("Skip", "What is not known becomes a doubt of the survey.")
        self.alert = AlertLabel()
        asked = (self.made_of, self.height_line, self.yes_button, self.clock_button)
        line = theme.row(*((part, 1) for part in asked), self.skip_button, gap=theme.RHYTHM)
        theme.column(
            self.question, line, self.alert, on=self, gap=theme.HALF, edges=(0, 0, 0, theme.RHYTHM)
        )
        self._tick = QTimer(self, interval=1000)
        self._tick.timeout.connect(self._show_clock)
        self.height_line.committed.connect(self._take_height)
        self.skip_button.clicked.connect(self._skip)
        desk.changed.connect(self.refresh)
        self.refresh()

    @property
    def _no_door(self) -> bool:
        survey = self.desk.survey
        return self.desk.plan.space.door is None or (survey is not None and survey.open_air)

    @property
    def step(self) -> str:
        """The step that is asked, '' once there is none."""
        survey = self.desk.survey
        if survey is None or survey.next_hole() is None:
            return ""
        doubts = survey.doubts
        answered = {
            "board": not survey.board_unsaid,
            "door": self._no_door or doubts.door > 0,
            "height": survey.hanging_height is not None,
            "warm-up": survey.warm_up_minutes is not None,
        }
        skipped = {s for s, (field, half) in SKIPPED.items() if getattr(doubts, field) >= half}
        return next((s for s in _STEPS if not answered[s] and s not in skipped), "")

    def refresh(self) -> None:
        """Ask what comes next."""
        step = self.step
        self.setVisible(bool(step))
        if not step:
            self._tick.stop()
            return
        asked = [s for s in _STEPS if s != "door" or not self._no_door]
        self.question.setText(f"{asked.index(step) + 1} of {len(asked)}: {_STEPS[step]}")
        for part, its in (
            (self.made_of, "board"),
            (self.height_line, "height"),
            (self.clock_button, "warm-up"),
        ):
            part.setVisible(step == its)
        self.yes_button.setVisible(step in {"board", "door"})
        self.yes_button.setText("Shut" if step == "door" else "Take it")
        heights = {lamp.hanging_height for lamp in self.desk.plan.lamps}
        unit = self.desk.workplace.display.unit
        if len(heights) == 1:
            self.height_line.setPlaceholderText(f"plan: {HANGING_HEIGHT.text(heights.pop(), unit)}")
        self._show_clock()

    def _take(self) -> None:
        if self.step == "door":
            self._doubt("Survey: door shut", "door", SHUT_DOOR)
        elif self.made_of.currentIndex() > 0:
            board, plan = Board(self.made_of.currentData()), self.desk.plan
            self.desk.edit("Survey: board", lambda: lay_board(plan, self.desk.index, board))

    def _skip(self) -> None:
        if self.step:
            self._doubt(f"Skipped: {self.step}", *SKIPPED[self.step])

    def _doubt(self, label: str, field: str, half: float) -> None:
        survey = self.desk.survey
        if survey is not None:
            self.desk.change(label, doubts=survey.doubts.model_copy(update={field: half}))

    def _take_height(self, text: str) -> None:
        self.alert.say("")
        if not text:
            return
        unit = self.desk.workplace.display.unit
        try:
            height = HANGING_HEIGHT.parse(text, unit)
        except ValueError as error:
            self.alert.say(in_unit(str(error), unit))
            return
        self.desk.change("Survey: hanging height", hanging_height=height)

    def _take_clock(self) -> None:
        if self._on_since is None:
            self._on_since = self.desk.clock()
            self._tick.start()
            self._show_clock()
            return
        minutes = (self.desk.clock() - self._on_since) / 60
        self._on_since = None
        self.desk.change("Survey: warm-up", warm_up_minutes=round(minutes, 1))

    def _show_clock(self) -> None:
        if self._on_since is None:
            self.clock_button.setText("Lamps on: start the clock")
            return
        minutes, seconds = divmod(int(self.desk.clock() - self._on_since), 60)
        self.clock_button.setText(f"{minutes}:{seconds:02d} min, begin")


class BoardPanel(FieldPanel):
    """Fields of the grid; ``print_wanted(str)`` with the paper's key."""

    print_wanted = Signal(str)

    def __init__(self, desk: SurveyDesk) -> None:
        super().__init__(desk.workplace)
        self.desk = desk
        self.made_of = BoardChoice()
        self.made_row = self.add_row("Made of", self.made_of, ABOUT_BOARD)
        self.add_heading("Grid of holes")
        self.rows = self._grid_number("Rows", ROWS, "rows", whole=True)
        self.columns = self._grid_number("Columns", ROWS, "columns", whole=True)
        self.margin = self._grid_number(
            "Margin", MARGIN, "margin", "Strip along the walls that stays without holes."
        )
        self.diameter = self._grid_number(
            "Hole diameter",
            DIAMETER,
            "hole_diameter",
            "So wide that the sensor just fits: it then stands at the same place each time.",
        )
        self.spacing_row, self.spacing = self.add_choice(
            "Holes lie",
            SPACINGS,
            "Centres of equal cells: the mean over the holes is the mean over the space. From "
            "edge to edge: the outer holes lie on the margin, where the light is weakest.",
        )
        self.standard = button("By EN 12464-1", RULE, act=self._take_standard)
        self.all_places = button("Take all places in", "Undo every place that was left out.")
        self.add_buttons(self.standard, self.all_places)
        self.note = self.add_wide(NoteLabel())
        self.add_wide(NoteLabel(
            "Click a hole to leave it out, a cross to take it in again; or step to it with the "
            "arrow keys and press Space."
        ))  # fmt: skip
        self.add_heading("On paper")
        _, self.paper = self.add_choice("Paper", PAPERS)
        self.black = QCheckBox("Black but for the holes")
        self.black.setAccessibleName(self.black.text())
        explain(self.black, "Much ink, but it throws back little light.")
        self.add_wide(self.black)
        self.count_note = self.add_wide(NoteLabel())
        self.print_button: QPushButton = button(
            "Board and recording sheet…",
            "A PDF at true size: sheets to be joined at their marks, a bar that shows whether the "
            "printer kept the size, and a sheet to write the readings on.",
        )
        self.add_buttons(self.print_button)
        self.end()
        self._connect()

    def _connect(self) -> None:
        self.made_of.chosen.connect(self._take_board)
        self.spacing.activated.connect(self._take_spacing)
        self.all_places.clicked.connect(
            lambda: self.desk.change_grid("Take all places in", excluded=())
        )
        self.paper.activated.connect(lambda _k: self.refresh(self.plan))
        self.print_button.clicked.connect(
            lambda: self.print_wanted.emit(str(self.paper.currentData()))
        )

    def _grid_number(
        self,
        label: str,
        quantity: Quantity,
        field: str,
        explanation: str = "",
        *,
        whole: bool = False,
    ) -> QuantityField:
        def read(_plan: Plan) -> float:
            return float(getattr(self._laid_out(), field))

        def build(_plan: Plan, value: float) -> Plan:
            return self.desk.with_grid(**{field: round(value) if whole else value})

        return self.add_quantity(
            label, quantity, read, build, f"Survey grid: {inside(label)}", explanation
        )

    def _laid_out(self) -> SurveyGrid:
        survey = self.desk.survey
        return (survey.grid if survey is not None else None) or SurveyGrid()

    # -- showing ------------------------------------------------------------------------

    def refresh(self, plan: Plan) -> None:
        super().refresh(plan)
        survey = self.desk.survey
        if survey is None:
            return
        self.made_of.show_survey(survey)
        self.made_row.show_error(ASK_BOARD if survey.board_unsaid else "")
        grid = self._laid_out()
        index = next(k for k, (_, value) in enumerate(SPACINGS) if value is grid.spacing)
        self.spacing.setCurrentIndex(index)
        self.all_places.setEnabled(bool(grid.excluded))
        self.note.setText(self._in_words(survey))
        self.count_note.setText(self._sheets())

    def _sheets(self) -> str:
        from planner.reports.board import BoardError, sheets  # noqa: PLC0415 - seldom
        from planner.reports.sheet import Paper  # noqa: PLC0415

        survey = self.desk.survey
        corners = self.plan.space.footprint
        xs, ys = zip(*(corners if survey is None else outline_read(self.plan, survey)), strict=True)
        try:
            size = ((max(xs) - min(xs)) * 1000, (max(ys) - min(ys)) * 1000)
            count = len(sheets(size, Paper(self.paper.currentData())))
        except BoardError as error:
            text = str(error)
            return capital(text)
        few = "sheet" if count == 1 else "sheets"
        more = "the recording sheet comes" if count == 1 else "overview and recording sheet come"
        return f"The board takes {count} {few} of paper; {more} on top."

    def _in_words(self, survey: Survey) -> str:
        count = len(survey.points)
        said = f"{count} hole{'' if count == 1 else 's'}"
        if count > 1:
            nearest = format_length(closest_pair(survey.points), self.workplace.display.unit)
            said += f", the closest {nearest} apart"
        if survey.grid is None:
            return f"{said}. They came with a table; a change of the grid lays them out anew."
        left_out = len(survey.grid.excluded)
        return f"{said}, {left_out} left out." if left_out else f"{said}."

    # -- editing ------------------------------------------------------------------------

    def _take_board(self, board: Board) -> None:
        index = self.desk.index
        self.edit(self.made_row, lambda: lay_board(self.plan, index, board), "Survey: board")

    def _take_spacing(self) -> None:
        spacing = self.spacing.currentData()
        self.edit(
            self.spacing_row,
            lambda: self.desk.with_grid(spacing=spacing),
            "Survey grid: spacing",
        )

    def _take_standard(self) -> None:
        def build() -> Plan:
            survey = self.desk.survey
            corners = self.plan.space.footprint
            grid = standard_grid(
                corners if survey is None else outline_read(self.plan, survey),
                margin=self._laid_out().margin,
                hole_diameter=self._laid_out().hole_diameter,
            )
            laid = {name: value for name, value in dict(grid).items() if name != "excluded"}
            return self.desk.with_grid(**laid)

        self.edit(self.spacing_row, build, "Survey grid by EN 12464-1")


def print_board(
    plan: Plan,
    survey: Survey,
    paper: str,
    unit: LengthUnit,
    questions: Questions,
    folder: Path,
    *,
    black: bool = False,
    expected: Sequence[float] = (),
) -> Path | None:
    """Write board and recording sheet where the user wants; None where nothing was written."""
    from planner.reports.board import board_of_survey  # noqa: PLC0415
    from planner.reports.sheet import Paper  # noqa: PLC0415

    proposal = folder / f"{in_file_name(survey.name) or 'survey'} board.pdf"

    def write(path: Path) -> None:
        sheet = Paper(paper)
        write_bytes(
            path, board_of_survey(plan, survey, sheet, unit, black=black, expected=expected)
        )

    return questions.save_into(
        "Board and recording sheet", proposal, FILTERS[".pdf"], "board", write
    )
