"""The column of the board: the grid of holes, and its way onto paper."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QPushButton, QWidget

from planner.app.fields.form import NoteLabel, button
from planner.app.fields.panel import FieldPanel, QuantityField
from planner.app.fields.still_combo import StillCombo
from planner.app.pages.survey.desk import SurveyDesk
from planner.app.quantity_box import Quantity
from planner.plan.plan import Plan
from planner.plan.survey import MAX_GRID, Spacing, Survey, SurveyGrid
from planner.survey.layout import closest_pair, standard_grid
from planner.units import format_length

ROWS = Quantity("", decimals=0, step=1.0).within(1.0, float(MAX_GRID))
MARGIN = Quantity(is_length=True).within(0.0, 2.0)
DIAMETER = Quantity(is_length=True).within(0.001, 0.2)
SPACINGS = (
    (Spacing.CELLS, "Centres of equal cells"),
    (Spacing.EDGES, "From edge to edge"),
)
PAPERS = (("a4", "A4"), ("letter", "Letter"))
RULE = (
    "The lighting standard EN 12464-1 asks for a spacing of at most 0.2 · 5^log d metres, d the "
    "longer side of the area in metres (the shorter where it is less than half of it)."
)


class BoardPanel(FieldPanel):
    """Fields of the grid; ``print_wanted(str)`` with the paper's key."""

    print_wanted = Signal(str)

    def __init__(self, desk: SurveyDesk, parent: QWidget | None = None) -> None:
        super().__init__(desk.workplace, parent)
        self.desk = desk
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
        self.spacing = StillCombo()
        for value, text in SPACINGS:
            self.spacing.addItem(text, value)
        self.spacing_row = self.add_row(
            "Holes lie",
            self.spacing,
            "Centres of equal cells: the mean over the holes is the mean over the space. From "
            "edge to edge: the outer holes lie on the margin, where the light is weakest.",
        )
        self.standard = button("By EN 12464-1", RULE)
        self.all_places = button("Take all places in", "Undo every place that was left out.")
        self.add_buttons(self.standard, self.all_places)
        self.note = NoteLabel()
        self.add_wide(self.note)
        self.add_wide(NoteLabel(
            "Click a hole to leave it out, a cross to take it in again; or step to it with the "
            "arrow keys and press Space."
        ))  # fmt: skip
        self.add_heading("On paper")
        self.paper = StillCombo()
        for value_, text in PAPERS:
            self.paper.addItem(text, value_)
        self.add_row("Paper", self.paper)
        self.print_button: QPushButton = button(
            "Board and recording sheet…",
            "A PDF at true size: sheets to be joined at their marks, a bar that shows whether the "
            "printer kept the size, and a sheet to write the readings on.",
        )
        self.add_buttons(self.print_button)
        self.end()
        self._connect()

    def _connect(self) -> None:
        self.spacing.activated.connect(self._take_spacing)
        self.standard.clicked.connect(self._take_standard)
        self.all_places.clicked.connect(
            lambda: self.desk.change_grid("Take all places in", excluded=())
        )
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
            label, quantity, read, build, f"Survey grid: {label.lower()}", explanation
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
        grid = self._laid_out()
        index = next(k for k, (value, _) in enumerate(SPACINGS) if value is grid.spacing)
        self.spacing.setCurrentIndex(index)
        self.all_places.setEnabled(bool(grid.excluded))
        self.note.setText(self._in_words(survey))

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

    def _take_spacing(self) -> None:
        spacing = self.spacing.currentData()
        self.edit(
            self.spacing_row,
            lambda: self.desk.with_grid(spacing=spacing),
            "Survey grid: spacing",
        )

    def _take_standard(self) -> None:
        def build() -> Plan:
            grid = standard_grid(
                self.plan.space.footprint,
                margin=self._laid_out().margin,
                hole_diameter=self._laid_out().hole_diameter,
            )
            return self.desk.with_grid(**dict(grid))

        self.edit(self.spacing_row, build, "Survey grid by EN 12464-1")
