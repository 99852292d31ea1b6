"""What is shown of surveys: summaries and estimates found aside, and the pictures of them.

The estimate below a survey is the light of the plan under the conditions it was read in.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, field, replace
from enum import StrEnum
from typing import TYPE_CHECKING, Final

import numpy as np
import numpy.typing as npt
from PySide6.QtCore import QObject, Signal, Slot

from planner.app.canvas.light_layer import LightStyle
from planner.app.display import DisplayState
from planner.app.jobs import Cancelled, Job, Lane, Progress
from planner.app.pages.survey.drawing import HolePicture, Mark
from planner.app.plots.colours import Levels, table, to_rgba
from planner.app.plots.survey_charts import ResidualMap
from planner.estimate.result import Estimate, EstimateOptions
from planner.light.cellmap import levels_of
from planner.plan.edits import changed
from planner.plan.lit import Lit, lit
from planner.plan.plan import Plan
from planner.plan.space import Point
from planner.plan.survey import Survey
from planner.plan.survey_edits import as_surveyed, outline_read
from planner.survey.comparison import Pairing, ratios_by_hole
from planner.survey.layout import grid_places, places_left_out
from planner.survey.statistics import (
    INTERPOLATED_LABEL,
    Residuals,
    SurveySummary,
    gain_standard,
    interpolated_map,
    reading_noise,
    residuals,
    summarise,
)
from planner.units import COVERAGE, PPFD_UNIT, capital

if TYPE_CHECKING:
    from planner.estimate.calibrate_result import SurveyFit

FloatArray = npt.NDArray[np.float64]
Expecting = Callable[..., FloatArray]
Evaluating = Callable[..., Estimate]


@dataclass(frozen=True)
class Question:
    """Whose light is asked for: equal where plans of the same light meet the same conditions."""

    light: Lit
    survey: Survey
    cells: int
    plan: Plan = field(compare=False)

    @classmethod
    def of(cls, plan: Plan, survey: Survey, cells: int) -> Question:
        """The question a survey puts to a plan."""
        bare = changed(
            survey, name="Survey", date=None, note="", warm_up_minutes=None, readings=(), grid=None
        )
        return cls(lit(plan), bare, cells, plan)


@dataclass(frozen=True, eq=False)
class Underlay:
    """The answer: the map under the survey's conditions, and what its meter should read.

    ``expected`` (points,) in µmol m⁻² s⁻¹, at every hole.
    """

    question: Question
    estimate: Estimate
    expected: FloatArray

    def of_board(self, survey: Survey) -> bool:
        """Whether it is of the holes of a survey, on the canopy that was read there."""
        mine = self.question.survey
        return (mine.points, mine.on_top) == (survey.points, survey.on_top)

    def residuals(self, survey: Survey) -> Residuals | None:
        """The survey's readings against this estimate; None without readings."""
        return residuals(survey, self.expected)


class UnderlayMaker:
    """Makes underlays, one after another, with one cache; to be run in one thread."""

    def __init__(
        self, evaluating: Evaluating | None = None, expecting: Expecting | None = None
    ) -> None:
        self._evaluating, self._expecting = evaluating, expecting

    def job(self, question: Question) -> Job:
        """The work that answers a question."""
        return lambda progress, cancelled: self._answer(question, progress, cancelled)

    def _answer(self, question: Question, progress: Progress, cancelled: Cancelled) -> Underlay:
        from planner.estimate.calibrate_model import expected_readings  # noqa: PLC0415 - heavy
        from planner.estimate.evaluate import evaluate, shared_cache  # noqa: PLC0415 - heavy

        cache = shared_cache()
        options = EstimateOptions(cells=(question.cells, question.cells))
        plan = as_surveyed(question.plan, question.survey)
        estimate = (self._evaluating or evaluate)(
            plan, options, cache=cache, progress=progress, cancelled=cancelled
        )
        expected = (self._expecting or expected_readings)(
            question.plan, question.survey, options, cache=cache, cancelled=cancelled
        )
        return Underlay(question, estimate, expected)


AT_ONCE: Final = 200
"""Up to so many holes a summary takes no time worth a thread."""
_KEPT: Final = 6


class Answers(QObject):
    """Signals: ``ready`` when something asked for has come, ``failed(str)`` with a sentence,
    ``busy_changed(bool)`` while an estimate is made.
    """  # noqa: D205

    ready = Signal()
    failed = Signal(str)
    busy_changed = Signal(bool)

    def __init__(self, maker: UnderlayMaker | None = None, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._maker = maker or UnderlayMaker()
        self._light = Lane("survey-light", parent=self)
        self._light.done.connect(self._on_light)
        self._light.failed.connect(self._on_failed)
        self._light.busy_changed.connect(self.busy_changed)
        self._sums = Lane("survey-summary", parent=self)
        self._sums.done.connect(self._on_summary)
        self._asked: Question | None = None
        self._failed: Question | None = None
        self._underlays: list[Underlay] = []
        self._summaries: list[tuple[Survey, SurveySummary | None]] = []
        self._summing: Survey | None = None

    @property
    def busy(self) -> bool:
        """Whether an estimate is being made."""
        return self._light.busy

    def summary(self, survey: Survey) -> SurveySummary | None:
        """What a survey says; of a large one the last that is known until the new one comes."""
        for known, summary in self._summaries:
            if known is survey or known == survey:
                return summary
        if len(survey.points) <= AT_ONCE:
            return self._keep(survey, summarise(survey))
        if self._summing is not survey:
            self._summing = survey

            self._sums.ask(survey, lambda _progress, _cancelled: summarise(survey))
        older = [s for known, s in reversed(self._summaries) if known.key == survey.key]
        return older[0] if older else None

    def underlay(self, plan: Plan, survey: Survey, cells: int) -> Underlay | None:
        """The estimate below a survey; asked for when it is not known, which takes a while."""
        question = Question.of(plan, survey, cells)
        for one in self._underlays:
            if one.question == question:
                if self._asked is not None:
                    self._asked = None
                    self._light.drop()
                return one
        if question != self._asked and question != self._failed:  # noqa: PLR1714 - not hashable
            self._asked, self._failed = question, None
            self._light.ask(question, self._maker.job(question), what="The light of this survey")
            # Without threads the answer is there already.
            return next((one for one in self._underlays if one.question == question), None)
        return None

    def last_underlay(self, survey: Survey) -> Underlay | None:
        """The newest estimate below a survey of this key, though the plan has moved on."""
        return next((u for u in self._underlays if u.question.survey.key == survey.key), None)

    def shutdown(self) -> None:
        """Stop all work; to be called before Qt objects go."""
        self._light.shutdown()
        self._sums.shutdown()

    def _keep(self, survey: Survey, summary: SurveySummary | None) -> SurveySummary | None:
        self._summaries = [*self._summaries, (survey, summary)][-_KEPT:]
        return summary

    @Slot(object, object)
    def _on_summary(self, survey: Survey, summary: SurveySummary | None) -> None:
        self._summing = None
        self._keep(survey, summary)
        self.ready.emit()

    @Slot(object, object)
    def _on_light(self, _question: Question, underlay: Underlay) -> None:
        self._asked = None
        self._underlays = [underlay, *self._underlays][:_KEPT]
        self.ready.emit()

    @Slot(object, str)
    def _on_failed(self, question: Question, sentence: str) -> None:
        self._failed, self._asked = question, None
        self.failed.emit(sentence)


# -- pictures of each view --------------------------------------------------------------


class View(StrEnum):
    """What the overlay shows."""

    READINGS = "Readings on the estimate"
    DIFFERENCE = "Measured minus estimated"
    RATIO = "Measured over estimated"
    ALONE = "Readings alone beside the estimate"


def shared_levels(estimate: FloatArray, summary: SurveySummary | None) -> Levels:
    """One colour scale for a map and readings, from dark to the round number above them.

    A reading far off its neighbours takes the end colour, and leaves the others theirs.
    """
    holes = () if summary is None else summary.holes
    usual = [one.mean for one in holes if not one.suspect]
    return levels_of(np.append(estimate.ravel(), usual))


def _laid(plan: Plan, survey: Survey | None) -> tuple[Point, ...]:
    """Outline of the top that a survey's holes lie on; empty on the plan's own canopy."""
    return () if survey is None or survey.on_top is None else outline_read(plan, survey)


def board_picture(plan: Plan, survey: Survey, hole: int) -> HolePicture:
    """The board as it is laid out: holes in visiting order, places left out crossed."""
    points = survey.points
    left_out = places_left_out(survey, outline_read(plan, survey))
    read = {reading.hole for reading in survey.readings}
    return HolePicture(
        plan=plan,
        marks=tuple(
            Mark(k, place, colour=_TAKEN if k in read else None)
            for k, place in enumerate(points, start=1)
        ),
        order=True,
        numbers=True,
        left_out=tuple(place for _, place in left_out),
        next_hole=hole,
        hole_diameter=_diameter(survey),
        laid=_laid(plan, survey),
        caption=f"{len(points)} holes, in the order they are visited",
        words=f"The board of '{survey.name}': {len(points)} holes, {len(left_out)} places left "
        f"out; hole {hole} is highlighted.",
    )


_TAKEN = (150, 154, 151)


def reading_picture(
    plan: Plan,
    survey: Survey,
    summary: SurveySummary | None,
    hole: int,
    display: DisplayState,
) -> HolePicture:
    """Holes coloured by what was read there; the next one highlighted."""
    levels = shared_levels(np.zeros(1), summary)
    read = set() if summary is None else {one.hole for one in summary.holes}
    said = f"hole {hole} comes next" if hole not in read else f"hole {hole} is at hand"
    return HolePicture(
        plan=plan,
        marks=_marks(survey, summary, levels, display.colour_map),
        order=not read,
        numbers=True,
        next_hole=hole,
        hole_diameter=_diameter(survey),
        laid=_laid(plan, survey),
        caption=f"{len(read)} of {len(survey.points)} holes read; {said}",
        words=f"'{survey.name}': {len(read)} of {len(survey.points)} holes read; {said}.",
    )


def overlay_pictures(
    survey: Survey,
    summary: SurveySummary | None,
    underlay: Underlay,
    view: View,
    hole: int,
    display: DisplayState,
) -> tuple[HolePicture, HolePicture | None]:
    """The estimate with the readings on it as a view wants it, and a second drawing or None."""
    estimate = underlay.estimate
    levels = shared_levels(estimate.ppfd, summary)
    style = LightStyle(levels, display.colour_map, contours=display.contours)
    whole = HolePicture(
        plan=estimate.plan,
        marks=_marks(survey, summary, levels, display.colour_map),
        estimate=estimate,
        style=style,
        next_hole=hole,
        hole_diameter=_diameter(survey),
        laid=() if survey.on_top is None else estimate.outline,
        caption="Estimate, readings in rings on the same scale",
        words=f"The estimate under the conditions of '{survey.name}', its readings on it.",
    )
    if view is View.ALONE:
        return replace(whole, caption="Estimate, on the same scale"), _alone(whole, survey, levels)
    found = underlay.residuals(survey)
    if view is View.READINGS or found is None:
        return whole, None
    shown = residual_map(found, view)
    caption = f"{shown.label}; grey is within the meter's uncertainty"
    return residual_picture(whole, shown, caption), None


def residual_map(found: Residuals, view: View) -> ResidualMap:
    """Differences or ratios of a survey, with the meter's dead band."""
    if view is View.RATIO:
        lit = np.maximum(found.estimated, 1e-12)
        return ResidualMap(
            found.points, found.ratio, found.dead_band / lit, 1.0, "", "measured over estimated"
        )
    return ResidualMap(
        found.points, found.difference, found.dead_band, 0.0, PPFD_UNIT, "measured minus estimated"
    )


def residual_picture(whole: HolePicture, shown: ResidualMap, caption: str) -> HolePicture:
    """A picture with residuals as its ground and their values at the holes."""
    texts = [shown.text(value) for value in shown.values.tolist()]
    places = [(float(x), float(y)) for x, y in shown.points]
    by_place = {(round(m.place[0], 4), round(m.place[1], 4)): m for m in whole.marks}
    marks = []
    for place, text in zip(places, texts, strict=True):
        old = by_place.get((round(place[0], 4), round(place[1], 4)))
        if old is not None:
            marks.append(replace(old, text=text, colour=None))
    caption = f"{capital(caption)}"
    return replace(
        whole,
        marks=tuple(marks),
        estimate=None,
        style=None,
        residuals=shown,
        caption=caption,
        words=f"{caption}. Values at {len(marks)} holes.",
    )


def _alone(whole: HolePicture, survey: Survey, levels: Levels) -> HolePicture:
    estimate = whole.estimate
    if estimate is None or whole.style is None:
        return whole
    inside = np.isfinite(estimate.ppfd)
    found = interpolated_map(estimate.x, estimate.y, inside, survey)
    if found is None:
        return replace(
            whole, estimate=None, style=None, caption="Three holes at least, not in one line"
        )
    return replace(
        whole,
        estimate=replace(estimate, ppfd=found),
        style=replace(whole.style, levels=levels),
        caption=INTERPOLATED_LABEL,
        words=INTERPOLATED_LABEL,
    )


def comparison_picture(plan: Plan, first: Survey, second: Survey, pair: Pairing) -> HolePicture:
    """First over second at each hole both have, grey where one hole cannot tell them apart."""
    rows = np.array(ratios_by_hole(first, second), dtype=np.float64).reshape(-1, 3)
    band = np.full(len(rows), pair.ratio * COVERAGE * _single_ratio(first, second, pair))
    shown = ResidualMap(rows[:, :2], rows[:, 2], band, 1.0, "", "ratio")
    whole = HolePicture(
        plan=plan,
        marks=tuple(Mark(k, place) for k, place in enumerate(first.points, start=1)),
        hole_diameter=_diameter(first),
        laid=_laid(plan, first),
    )
    caption = f"'{first.name}' over '{second.name}'; grey is within noise and placement"
    return residual_picture(whole, shown, caption)


def _single_ratio(first: Survey, second: Survey, pair: Pairing) -> float:
    """Relative standard uncertainty of the ratio at one hole: noise, and gains of two meters."""
    noise = math.hypot(reading_noise(first), reading_noise(second))
    if pair.one_meter:
        return noise
    return math.hypot(noise, gain_standard(first.meter), gain_standard(second.meter))


def fit_pictures(plan: Plan, fit: SurveyFit, dead_band: float) -> tuple[HolePicture, HolePicture]:
    """Measured over predicted before and after a calibration, on one scale."""
    points = np.asarray(fit.points)
    whole = HolePicture(
        plan=plan,
        laid=_laid(plan, next((one for one in plan.surveys if one.key == fit.key), None)),
        marks=tuple(Mark(k, (float(x), float(y))) for k, (x, y) in enumerate(points, start=1)),
    )
    band = np.full(len(points), dead_band)
    widest = np.concatenate([fit.before, fit.after])
    shared = ResidualMap(points, widest, band, 1.0).limit
    made = []
    for values, when, rms in (
        (fit.before, "before", fit.rms_before),
        (fit.after, "after", fit.rms_after),
    ):
        shown = ResidualMap(
            points, values, band, 1.0, "", "measured over predicted", fixed_limit=shared
        )
        caption = f"{when}, {rms * 100:.1f} % rms: measured over predicted, '{fit.name}'"
        made.append(residual_picture(whole, shown, caption))
    return made[0], made[1]


def refining(
    shown: tuple[HolePicture, HolePicture | None], busy: bool
) -> tuple[HolePicture, HolePicture | None]:
    """The same pictures, marked while a better estimate is on its way."""
    first, second = shown
    return (replace(first, refining=True), second) if busy else shown


def place_at(survey: Survey, place: int, footprint: tuple[Point, ...]) -> Point:
    """Where a place of a survey's grid, counted from 1, lies."""
    if survey.grid is None:
        return survey.points[0]
    return grid_places(survey.grid, footprint)[place - 1]


def _marks(
    survey: Survey, summary: SurveySummary | None, levels: Levels, colour_map: str
) -> tuple[Mark, ...]:
    by_hole = {} if summary is None else {one.hole: one for one in summary.holes}
    colours = table(colour_map)
    found = []
    for hole, place in enumerate(survey.points, start=1):
        one = by_hole.get(hole)
        if one is None:
            found.append(Mark(hole, place))
            continue
        red, green, blue, _ = to_rgba(np.array([one.mean]), levels, colours)[0].tolist()
        found.append(Mark(hole, place, _value_text(one.mean), (red, green, blue), one.suspect))
    return tuple(found)


def _value_text(value: float) -> str:
    return f"{value:.0f}" if value >= 20 else f"{value:.1f}"


def _diameter(survey: Survey) -> float:
    return survey.grid.hole_diameter if survey.grid is not None else 0.024
