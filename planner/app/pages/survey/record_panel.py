"""The record of a survey: under what conditions it was read, and how sure that is."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Callable
from dataclasses import replace
from typing import Final

from planner.app.fields.form import NoteLabel, Row, TextLine
from planner.app.fields.panel import FieldPanel, OptionalLine, QuantityField
from planner.app.pages.survey.board_panel import ABOUT_BOARD, ASK_BOARD, BoardChoice
from planner.app.pages.survey.desk import SurveyDesk, canopies_read
from planner.language import decimal, inside
from planner.metrics.spectra import lux_per_umol
from planner.plan.dials import dial
from planner.plan.edits import changed, judge_by
from planner.plan.lining import OPENING, Lining
from planner.plan.plan import Plan
from planner.plan.quantity import HANGING_HEIGHT, PERCENT, SHARE, Quantity, quantity_of
from planner.plan.refusal import known_as
from planner.plan.survey import Doubts, Meter, Survey
from planner.plan.survey_edits import change_survey, lay_board, own_board, top_read
from planner.plan.tiers import lamps_at, lighting
from planner.units import PPFD_UNIT, capital, format_number

MINUTES: Final = quantity_of(Survey, "warm_up_minutes", suffix="min", step=5.0)
NOISE: Final = quantity_of(Meter, "noise", step=0.005)
SENSOR: Final = quantity_of(Meter, "sensor_height")
AS_PLAN: Final = "as in the plan"
ABOUT_DOUBTS: Final = (
    "How far what is written down may be off, either way. A calibration carries all of it into "
    "its errors; 0 says that it is certain."
)
DOUBTS: Final = (
    ("Lamp height", "hanging_height", "As measured with a tape."),
    ("Sensor height", "sensor_height", "Of its face over the board, in all surveys of the meter."),
    ("Board", "board_reflectance", "Reflectance of the board."),
    ("Output", "output", "Lamps hung, switched on and warmed up anew."),
    ("Drift", "drift", "Change of the lamps from the first reading to the last."),
    ("Door", "door", "Part of the door's wall that may have stood open."),
    ("Cosine", "cosine", "The meter on light from all sides, against light from the lamps."),
)


class RecordPanel(FieldPanel):
    """Fields of a survey's record; an empty line means as in the plan, or not noted."""

    def __init__(self, desk: SurveyDesk) -> None:
        super().__init__(desk.workplace)
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
        self.add_heading("How sure is it?")
        self.add_wide(NoteLabel(ABOUT_DOUBTS))
        self.doubts = {
            field: self._doubt(label, field, explanation) for label, field, explanation in DOUBTS
        }
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
        self.lies_row, self.lies_on = self.add_choice(
            "Lies on",
            (),
            "Which canopy was read. Holes that hold no reading yet are laid out anew over it. "
            "Hanging heights stay those above the plan's own canopy.",
        )
        self.lies_on.activated.connect(self._take_canopy)
        self.lining_row, self.lining = self.add_choice(
            "Walls",
            (),
            "What was on the walls during this survey. In open air: no walls and no ceiling.",
        )
        self.output = self._left_out("Lamp output", PERCENT, "output_percent", self._plan_output)
        self.hanging_line = self._left_out(
            dial("height").label, HANGING_HEIGHT, "hanging_height", self._plan_height
        )
        self.made_of = BoardChoice()
        self.made_row = self.add_row("Board", self.made_of, ABOUT_BOARD)
        self.made_of.chosen.connect(
            lambda board: self.edit(
                self.made_row, lambda: lay_board(self.plan, self.desk.index, board), "Survey: board"
            )
        )
        self.board = self._left_out(
            "Its reflectance",
            SHARE,
            "board_reflectance",
            lambda _plan: "as the canopy it lies on",
            "Of a board that fills the plane. White card returns most of the light to the walls "
            "and reads higher than a dark canopy would.",
        )
        self.warm_up = self._left_out(
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
        self.shows_row, self.shows = self.add_choice(
            "It shows",
            (),
            "A meter that shows lux needs the lamp's spectrum: readings typed from now on are "
            "divided by its lux per µmol.",
        )

    def _left_out(
        self,
        label: str,
        quantity: Quantity,
        field: str,
        without: Callable[[Plan], str],
        explanation: str = "",
    ) -> OptionalLine:
        row, line = self.add_optional(label, quantity, explanation)
        step = f"Survey: {known_as(field)}"
        if field == "board_reflectance":
            line.entered.connect(
                lambda value: self.edit(
                    row, lambda: own_board(self.plan, self.desk.index, value), step
                )
            )
        else:
            line.entered.connect(lambda value: self._change(row, step, **{field: value}))
        self.optional.append((row, line, field, without))
        return line

    def _meter_number(self, label: str, quantity: Quantity, field: str, explanation: str) -> object:
        def read(_plan: Plan) -> float:
            survey = self._survey()
            return float(getattr(Meter() if survey is None else survey.meter, field))

        def build(plan: Plan, value: float) -> Plan:
            return change_survey(plan, self.desk.index, meter=self._meter(**{field: value}))

        return self.add_quantity(
            label, quantity, read, build, f"Meter: {inside(label)}", explanation
        )

    def _doubt(self, label: str, field: str, explanation: str) -> QuantityField:
        plain = getattr(Doubts(), field)
        quantity = quantity_of(Doubts, field)
        if not quantity.is_length:
            quantity = replace(quantity, step=0.005)

        def read(_plan: Plan) -> float:
            survey = self._survey()
            return float(getattr(Doubts() if survey is None else survey.doubts, field))

        def build(plan: Plan, value: float) -> Plan:
            survey = plan.surveys[self.desk.index]
            return change_survey(
                plan, self.desk.index, doubts=survey.doubts.model_copy(update={field: value})
            )

        told = f"{explanation} Usual: {quantity.text(plain, self.workplace.display.unit)}."
        step = f"Survey doubt: {inside(label)}"
        return self.add_quantity(f"{label} ±", quantity, read, build, step, told)

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
        self.made_of.show_survey(survey)
        self.made_row.show_error(ASK_BOARD if survey.board_unsaid else "")
        self._fill_canopies(survey)
        self._fill_linings(survey)
        self._fill_shows(survey)

    def _on_unit(self) -> None:
        super()._on_unit()
        self.refresh(self.plan)

    def _plan_output(self, plan: Plan) -> str:
        outputs = {lamp.output_percent for lamp in plan.lamps}
        return f"{AS_PLAN} ({outputs.pop():g} %)" if len(outputs) == 1 else AS_PLAN

    def _plan_height(self, plan: Plan) -> str:
        survey = self._survey()
        try:
            top = None if survey is None else top_read(plan, survey)
        except ValueError:  # it is gone, which is said beside its own row
            return AS_PLAN
        over = lighting(judge_by(plan, top))
        heights = {lamp.hanging_height for lamp in lamps_at(plan, over)}
        if len(heights) != 1:
            return AS_PLAN
        return f"{AS_PLAN} ({HANGING_HEIGHT.text(heights.pop(), self.workplace.display.unit)})"

    def _choices(self, survey: Survey) -> list[tuple[str, Lining | None]]:
        found: list[tuple[str, Lining | None]] = [("As in the plan", None)]
        found.append(("Open air, no walls or ceiling", OPENING))
        known = self.workplace.shelf.catalogue.linings_for(self.plan)
        if survey.lining is not None:
            known[survey.lining.key] = survey.lining  # as it was when it was read
        return found + [(one.name, one) for one in known.values() if not one.is_opening]

    def _fill_canopies(self, survey: Survey) -> None:
        """The plan's own canopy and every carried one; nothing to choose where there is none."""
        plan, combo, found = self.plan, self.lies_on, canopies_read(self.plan)
        self.lies_row.set_visible(len(found) > 1 or survey.on_top is not None)
        combo.offer(found)
        try:
            combo.setCurrentIndex(combo.findData(top_read(plan, survey)))
            self.lies_row.clear_error()
        except ValueError as error:
            combo.setCurrentIndex(-1)
            self.lies_row.show_error(capital(str(error)))

    def _fill_linings(self, survey: Survey) -> None:
        choices = self._choices(survey)
        self.lining.offer(choices)
        key = None if survey.lining is None else survey.lining.key
        keys = [None if lining is None else lining.key for _, lining in choices]
        self.lining.setCurrentIndex(keys.index(key))

    def _fill_shows(self, survey: Survey) -> None:
        entries: list[tuple[str, float | None]] = [(PPFD_UNIT, None)]
        entries += [(f"Lux, {s.name}", lux_per_umol(s)) for s in self.workplace.spectra.spectra]
        own = survey.lux_per_umol
        known = (k for k, (_, factor) in enumerate(entries) if _alike(factor, own))
        chosen = next(known, len(entries))
        if chosen == len(entries) and own is not None:
            entries.append((f"Lux, {format_number(own, 1)} per µmol", own))
        self.shows.offer(entries)
        self.shows.setCurrentIndex(chosen)

    # -- editing ------------------------------------------------------------------------

    def _change(self, row: Row, label: str, **parts: object) -> bool:
        return self.edit(row, lambda: change_survey(self.plan, self.desk.index, **parts), label)

    def _meter(self, **parts: object) -> Meter:
        survey = self._survey()
        return changed(Meter() if survey is None else survey.meter, **parts)

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

    def _take_canopy(self, index: int) -> None:
        obstacle = self.lies_on.itemData(index)
        step = f"Survey: {self.lies_on.itemText(index)}"
        self.edit(self.lies_row, lambda: self.desk.lying_on(obstacle), step)

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


def _alike(one: float | None, other: float | None) -> bool:
    return one is other if one is None or other is None else abs(one - other) < 1e-6


def _response_text(meter: Meter) -> str:
    pairs = zip(meter.response_angles_deg, meter.response_relative, strict=True)
    # Where numbers have a comma of their own, another sign parts the pairs.
    parted = "; " if decimal(".") == "," else ", "
    return parted.join(decimal(f"{angle:g}: {value:g}") for angle, value in pairs)


def _parsed_response(text: str) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Angles and relative readings of '0: 1, 60: 0.97' or '0: 1; 60: 0,97'; raises ValueError."""
    rest, pairs = text.strip(), []
    while rest:
        found = _PAIR.match(rest)
        if found is None:
            raise ValueError(text)
        pairs.append([float(number.replace(",", ".")) for number in found.groups()])
        rest = rest[found.end() :].strip(" ;,")
    return tuple(angle for angle, _ in pairs), tuple(value for _, value in pairs)


_ONE = r"(\d+(?:[.,]\d+)?|[.,]\d+)"
_PAIR: Final = re.compile(rf"{_ONE}\s*°?\s*:\s*{_ONE}\s*(?=[;,\s]|$)")
"""One pair; a comma is of the number where digits stand on both sides and no colon follows."""
