"""A survey itself: under what conditions it was read, and the board its holes are in."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable
from typing import Final

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QPushButton, QWidget

from planner.app.fields.controls import StillCombo, TextLine
from planner.app.fields.form import NoteLabel, Row, button
from planner.app.fields.panel import FieldPanel, QuantityField
from planner.app.pages.survey.desk import SurveyDesk
from planner.metrics.spectra import lux_per_umol
from planner.plan.lining import OPENING, Lining
from planner.plan.plan import Plan
from planner.plan.quantity import HANGING_HEIGHT, PERCENT, SHARE, Quantity, quantity_of
from planner.plan.survey import Meter, Spacing, Survey, SurveyGrid
from planner.plan.survey_edits import change_survey
from planner.survey.layout import closest_pair, standard_grid
from planner.units import LengthUnit, format_length, format_number, in_unit


class OptionalLine(TextLine):
    """Signals: ``entered(float or None)`` for a new value, ``refused(sentence)``."""

    entered = Signal(object)
    refused = Signal(str)

    def __init__(self, quantity: Quantity, name: str, parent: QWidget | None = None) -> None:
        super().__init__(name, parent)
        self._quantity, self._unit = quantity, LengthUnit.CM
        self._number: float | None = None
        self.committed.connect(self._take)

    def show_number(self, number: float | None, without: str) -> None:
        """Show a value; ``without`` stands in the empty line."""
        self._number = number
        self.setPlaceholderText(without)
        self.set_value("" if number is None else self._quantity.text(number, self._unit))

    def set_unit(self, unit: LengthUnit) -> None:
        """Show lengths in another unit; the value stays as it is."""
        if unit is not self._unit:
            self._unit = unit
            self.reset("" if self._number is None else self._quantity.text(self._number, unit))

    def _take(self, text: str) -> None:
        if not text:
            self.entered.emit(None)
            return
        try:
            number = self._quantity.parse(text, self._unit)
        except ValueError as error:
            self.refused.emit(in_unit(str(error), self._unit))
        else:
            self.entered.emit(number)


MINUTES: Final = quantity_of(Survey, "warm_up_minutes", suffix="min", step=5.0)
NOISE: Final = quantity_of(Meter, "noise", step=0.005)
SENSOR: Final = quantity_of(Meter, "sensor_height")
AS_PLAN: Final = "as in the plan"


class RecordPanel(FieldPanel):
    """Fields of a survey's record; an empty line means as in the plan, or not noted."""

    def __init__(self, desk: SurveyDesk, parent: QWidget | None = None) -> None:
        super().__init__(desk.workplace, parent)
        self.desk = desk
        self.optional: list[tuple[Row, OptionalLine, str, Callable[[Plan], str]]] = []
        self.name_row, self.name_line = self._text("Name", "name", "Name survey")
        self.date_line = TextLine("Date")
        self.date_line.setPlaceholderText("2026-03-21")
        self.date_row = self.add_row("Date", self.date_line, "Year, month, day: 2026-03-21.")
        self.add_heading("Conditions")
        self._add_conditions()
        self.add_heading("Meter")
        self._add_meter()
        self.add_heading("Note")
        self.note_row, self.note_line = self._text("What was special", "note", "Survey note")
        self.end()
        self.date_line.committed.connect(self._take_date)
        self.date_line.reverted.connect(self.date_row.clear_error)
        self.lining.activated.connect(self._take_lining)
        self.shows.activated.connect(self._take_shows)
        self.response_line.committed.connect(self._take_response)
        self.workplace.shelf.changed.connect(lambda: self.refresh(self.plan))

    # -- making -------------------------------------------------------------------------

    def _survey(self) -> Survey | None:
        return self.desk.survey

    def _text(self, label: str, field: str, step: str) -> tuple[Row, TextLine]:
        def read(_plan: Plan) -> str:
            survey = self._survey()
            return "" if survey is None else str(getattr(survey, field))

        def build(plan: Plan, text: str) -> Plan:
            return change_survey(plan, self.desk.index, **{field: text})

        return self.add_text(label, read, build, step)

    def _add_conditions(self) -> None:
        self.lining = StillCombo()
        self.lining_row = self.add_row(
            "Walls",
            self.lining,
            "What was on the walls during this survey. In open air: no walls and no ceiling.",
        )
        self.output = self._optional("Lamp output", PERCENT, "output_percent", self._plan_output)
        self.hanging = self._optional(
            "Hanging height", HANGING_HEIGHT, "hanging_height", self._plan_height
        )
        self.board = self._optional(
            "Board reflectance",
            SHARE,
            "board_reflectance",
            lambda _plan: "as the plan's canopy",
            "Of a board that fills the plane. White card returns most of the light to the walls "
            "and reads higher than a dark canopy would.",
        )
        self.warm_up = self._optional(
            "Warm-up", MINUTES, "warm_up_minutes", lambda _plan: "not noted",
            "Lamps fade by some per cent while they warm up; wait 20 minutes or more.",
        )  # fmt: skip

    def _add_meter(self) -> None:
        self.meter_line = TextLine("Meter's name")
        self.meter_row = self.add_row(
            "Name", self.meter_line,
            "Surveys whose meters bear one name share its error, which drops out of their ratio.",
        )  # fmt: skip
        self.meter_line.committed.connect(
            lambda text: self._change_meter(self.meter_row, "Name meter", name=text)
        )
        self.gain = self._meter_number(
            "Gain uncertainty", SHARE, "gain_uncertainty",
            "From its data sheet, for example ± 5 %: one factor common to all its readings.",
        )  # fmt: skip
        self.noise = self._meter_number(
            "Noise", NOISE, "noise",
            "By how much one reading differs from the next at the same hole, placement included.",
        )  # fmt: skip
        self.sensor = self._meter_number(
            "Sensor height", SENSOR, "sensor_height", "Of its receiving face above the board."
        )
        self.response_line = TextLine("Cosine response")
        self.response_line.setPlaceholderText("ideal")
        self.response_row = self.add_row(
            "Cosine response", self.response_line,
            "Reading over that of an ideal receiver by angle from upright, for example "
            "0: 1, 60: 0.97, 80: 0.85. Empty: ideal.",
        )  # fmt: skip
        self.shows = StillCombo()
        self.shows_row = self.add_row(
            "It shows",
            self.shows,
            "A meter that shows lux needs the lamp's spectrum: readings typed from now on are "
            "divided by its lux per µmol.",
        )

    def _optional(
        self,
        label: str,
        quantity: Quantity,
        field: str,
        without: Callable[[Plan], str],
        explanation: str = "",
    ) -> OptionalLine:
        line = OptionalLine(quantity, label)
        line.set_unit(self.workplace.display.unit)
        row = self.add_row(label, line, explanation)
        line.entered.connect(
            lambda value: self._change(row, f"Survey: {label.lower()}", **{field: value})
        )
        line.refused.connect(row.show_error)
        line.reverted.connect(row.clear_error)
        self.optional.append((row, line, field, without))
        return line

    def _meter_number(self, label: str, quantity: Quantity, field: str, explanation: str) -> object:
        def read(_plan: Plan) -> float:
            survey = self._survey()
            return float(getattr(Meter() if survey is None else survey.meter, field))

        def build(plan: Plan, value: float) -> Plan:
            return change_survey(plan, self.desk.index, meter=self._meter(**{field: value}))

        return self.add_quantity(
            label, quantity, read, build, f"Meter: {label.lower()}", explanation
        )

    # -- showing ------------------------------------------------------------------------

    def refresh(self, plan: Plan) -> None:
        super().refresh(plan)
        survey = self._survey()
        if survey is None:
            return
        self.date_line.set_value("" if survey.date is None else survey.date.isoformat())
        self.meter_line.set_value(survey.meter.name)
        self.response_line.set_value(_response_text(survey.meter))
        for _row, line, field, without in self.optional:
            line.show_number(getattr(survey, field), without(plan))
        self._fill_linings(survey)
        self._fill_shows(survey)

    def _on_unit(self) -> None:
        super()._on_unit()
        for _row, line, _field, _without in self.optional:
            line.set_unit(self.workplace.display.unit)
        self.refresh(self.plan)

    def _plan_output(self, plan: Plan) -> str:
        outputs = {lamp.output_percent for lamp in plan.lamps}
        return f"{AS_PLAN} ({outputs.pop():g} %)" if len(outputs) == 1 else AS_PLAN

    def _plan_height(self, plan: Plan) -> str:
        heights = {lamp.hanging_height for lamp in plan.lamps}
        if len(heights) != 1:
            return AS_PLAN
        return f"{AS_PLAN} ({HANGING_HEIGHT.text(heights.pop(), self.workplace.display.unit)})"

    def _choices(self, survey: Survey) -> list[tuple[str, Lining | None]]:
        found: list[tuple[str, Lining | None]] = [("As in the plan", None)]
        found.append(("Open air, no walls or ceiling", OPENING))
        known: dict[str, Lining] = {}
        own = [] if survey.lining is None or survey.open_air else [survey.lining]
        for lining in (*own, *self.plan.linings, *self.workplace.shelf.linings):
            known.setdefault(lining.key, lining)
        return found + [(lining.name, lining) for lining in known.values()]

    def _fill_linings(self, survey: Survey) -> None:
        choices = self._choices(survey)
        self.lining.clear()
        for text, lining in choices:
            self.lining.addItem(text, lining)
        self.lining.widen_list()
        key = None if survey.lining is None else survey.lining.key
        keys = [None if lining is None else lining.key for _, lining in choices]
        self.lining.setCurrentIndex(keys.index(key))

    def _fill_shows(self, survey: Survey) -> None:
        self.shows.clear()
        self.shows.addItem("µmol m⁻² s⁻¹", None)
        chosen = 0
        for number, spectrum in enumerate(self.workplace.spectra.spectra, start=1):
            factor = lux_per_umol(spectrum)
            self.shows.addItem(f"Lux, {spectrum.name}", factor)
            if survey.lux_per_umol is not None and abs(survey.lux_per_umol - factor) < 1e-6:
                chosen = number
        if survey.lux_per_umol is not None and not chosen:
            text = f"Lux, {format_number(survey.lux_per_umol, 1)} per µmol"
            self.shows.addItem(text, survey.lux_per_umol)
            chosen = self.shows.count() - 1
        self.shows.setCurrentIndex(chosen)
        self.shows.widen_list()

    # -- editing ------------------------------------------------------------------------

    def _change(self, row: Row, label: str, **parts: object) -> bool:
        return self.edit(row, lambda: change_survey(self.plan, self.desk.index, **parts), label)

    def _meter(self, **parts: object) -> Meter:
        survey = self._survey()
        old = Meter() if survey is None else survey.meter
        return Meter.model_validate({**dict(old), **parts})

    def _change_meter(self, row: Row, label: str, **parts: object) -> bool:
        return self.edit(
            row,
            lambda: change_survey(self.plan, self.desk.index, meter=self._meter(**parts)),
            label,
        )

    def _take_date(self, text: str) -> None:
        try:
            date = dt.date.fromisoformat(text) if text else None
        except ValueError:
            self.date_row.show_error("Write the date as year, month, day: 2026-03-21.")
            return
        self._change(self.date_row, "Date survey", date=date)

    def _take_lining(self, index: int) -> None:
        lining = self.lining.itemData(index)
        self._change(self.lining_row, f"Survey: {self.lining.itemText(index)}", lining=lining)

    def _take_shows(self, index: int) -> None:
        factor = self.shows.itemData(index)
        self._change(self.shows_row, "Survey: unit of the meter", lux_per_umol=factor)

    def _take_response(self, text: str) -> None:
        try:
            angles, relative = _parsed_response(text)
        except ValueError:
            self.response_row.show_error(
                "Write pairs of angle and relative reading, for example 0: 1, 60: 0.97, 80: 0.85."
            )
            return
        self._change_meter(
            self.response_row,
            "Meter: cosine response",
            response_angles_deg=angles,
            response_relative=relative,
        )


def _response_text(meter: Meter) -> str:
    pairs = zip(meter.response_angles_deg, meter.response_relative, strict=True)
    return ", ".join(f"{angle:g}: {value:g}" for angle, value in pairs)


def _parsed_response(text: str) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Angles and relative readings of '0: 1, 60: 0.97'; raises ValueError."""
    if not text.strip():
        return (), ()
    pairs = [part.split(":") for part in text.replace(";", ",").split(",") if part.strip()]
    angles = tuple(float(angle.strip().removesuffix("°")) for angle, _ in pairs)
    return angles, tuple(float(value) for _, value in pairs)


ROWS: Final = quantity_of(SurveyGrid, "rows")
MARGIN: Final = quantity_of(SurveyGrid, "margin")
DIAMETER: Final = quantity_of(SurveyGrid, "hole_diameter")
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
