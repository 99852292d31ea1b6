"""Why a fit is poor: the usual mistakes tried one by one.

Two kinds of mistake are tried. Readings may have come to the wrong holes (mirrored, turned,
read row by row instead of to and fro): each such order is set against the shape of the light
the plan leads to expect, its level left free. Or something was not as it is written down (a
lamp higher or lower, the board, the output, the door, one hole, one whole survey): what was
known of it beforehand is let go, and the fit at hand tells by its Jacobian how much better
the readings would then agree (one Gauss-Newton step). The best few are fitted in full, so
that what is said was computed and not extrapolated.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any, Final

import numpy as np
import numpy.typing as npt

from planner.estimate.calibrate import fit_surveys
from planner.estimate.calibrate_model import OF_A_SURVEY, Parameter, Quantity
from planner.estimate.calibrate_parameters import Asked, CalibrationError, Freed
from planner.estimate.calibrate_result import Fit
from planner.estimate.result import FloatArray, Quality
from planner.metrics.figures import percent
from planner.plan.edits import changed
from planner.plan.lamp import CosineProfile
from planner.plan.plan import Plan
from planner.plan.survey import Board, Doubts, Survey
from planner.plan.tiers import lamps_at, lighting
from planner.survey.layout import SAME_PLACE_M
from planner.units import said_length

IntArray = npt.NDArray[np.intp]

LEAST_GAIN: Final = 20.0
"""By how much the sum of squares must fall for a suspect to be named: chance alone, among
fifty suspects of one degree of freedom each, passes it once in 2500 evenings."""
CLEAR_LEAD: Final = 10.0
"""By how much one suspect must lead the next to be named alone: e⁵ to one in likelihood."""
AS_WELL: Final = 1.05
"""Below it readings agree no better: all the light is more or less, which every fit allows for."""

_TRIED_IN_FULL: Final = 3
_WIDER: Final = 12.0
_TRACE: Final = 1e-4
EVERY: Final = ""
"""Stands for the key of a survey where a suspect concerns all of them."""


@dataclass(frozen=True)
class Suspect:
    """One thing that may have gone wrong.

    ``squares`` is by how much the sum of squared weighted residuals falls when it is taken to
    be so, ``times`` how many times better the readings of the survey then agree (rms before
    over after). ``words`` says what it is, ``remedy`` what a button would say; ``mended`` is
    the survey put right. ``profile`` is the beam of the lamps whose kind has the key ``lamp``
    where it is the plan that is put right. Without either, reading again is the only way.
    """

    key: str
    survey: str
    words: str
    remedy: str
    squares: float
    times: float
    mended: Survey | None = None
    lamp: str = ""
    profile: CosineProfile | None = None

    @property
    def by_button(self) -> bool:
        """Whether anything can be put right without reading again."""
        return self.mended is not None or self.profile is not None


@dataclass(frozen=True)
class Diagnosis:
    """Suspects, the likeliest first, and what may be said of them in a sentence."""

    suspects: tuple[Suspect, ...]

    @property
    def sentence(self) -> str:
        """The winner, or that there is none, or that several explain it as well."""
        if not self.suspects:
            return "None of the usual mistakes explains these readings better than the plan does."
        first = self.suspects[0]
        said = f"The readings agree {first.times:.1f} times better if {first.words}."
        if first.times < AS_WELL:
            said = f"The readings fit the plan as it is if {first.words}."
        close = [s for s in self.suspects[1:] if first.squares - s.squares < CLEAR_LEAD]
        if close:
            others = " or ".join(s.words for s in close[:2])
            said += f" It would explain them nearly as well that {others}."
        return said


def diagnose(asked: Asked) -> Diagnosis:
    """Try the usual mistakes on surveys that a fit agrees with poorly.

    Of a question without ``freed`` nothing may change in lamps and linings.

    Raises
    ------
    CalibrationError
        If the surveys cannot be fitted at all.
    planner.estimate.evaluate.Cancelled
        If it was cancelled.
    """
    freed = asked.freed or Freed(flux=False, exponent=False)
    quick = replace(
        asked,
        surveys=tuple(_doubting(survey) for survey in asked.surveys),
        freed=replace(freed, beam_held=True),
        options=replace(asked.options, quality=Quality.PREVIEW),
        progress=None,
    )
    fit = fit_surveys(quick)
    asked.tell(0.3)
    written = {survey.key: survey for survey in asked.surveys}
    found = [*_wrong_orders(fit), *_not_as_written(fit, written), *_holes(fit)]
    found += _whole_surveys(fit)
    found = sorted((s for s in found if s.squares > LEAST_GAIN), key=lambda s: -s.squares)
    sure = []
    for number, suspect in enumerate(found[:_TRIED_IN_FULL]):
        sure.append(_tried(suspect, fit, quick))
        asked.tell(0.3 + 0.7 * (number + 1) / _TRIED_IN_FULL)
    kept = [s for s in [*sure, *found[_TRIED_IN_FULL:]] if s.squares > LEAST_GAIN]
    asked.tell(1.0)
    mended = [replace(s, mended=_as_doubted(s.mended, written.get(s.survey))) for s in kept]
    return Diagnosis(tuple(sorted(mended, key=lambda s: -s.squares)))


def _doubting(survey: Survey) -> Survey:
    """The survey with a trace of doubt in what is held for certain, so that it can be let go."""
    traces = {
        name: max(getattr(survey.doubts, name), _TRACE)
        for name in ("hanging_height", "board_reflectance", "output", "drift", "door")
    }
    return changed(survey, doubts=survey.doubts.model_copy(update=traces))


def _as_doubted(mended: Survey | None, written: Survey | None) -> Survey | None:
    """A survey put right, with the doubts as they were written where nothing changed them."""
    if mended is None or written is None:
        return mended
    traces, now = _doubting(written).doubts, mended.doubts
    doubts = {
        name: getattr(written.doubts if getattr(now, name) == getattr(traces, name) else now, name)
        for name in Doubts.model_fields
    }
    return changed(mended, doubts=doubts)


def _tried(suspect: Suspect, fit: Fit, quick: Asked) -> Suspect:
    """The suspect with what a full fit makes of it."""
    mended, freed = suspect.mended, quick.freed
    if suspect.key == Quantity.EXPONENT and freed is not None:
        quick = replace(quick, freed=replace(freed, exponent=True))
    elif mended is None:
        return suspect
    else:
        surveys = tuple(mended if one.key == mended.key else one for one in quick.surveys)
        quick = replace(quick, surveys=surveys)
    try:
        after = fit_surveys(quick)
    except CalibrationError:
        return replace(suspect, squares=0.0)
    if suspect.profile is not None:
        # What is put into the plan was fitted in full, and is what the words say.
        values = zip(after.parameters, after.values, strict=True)
        beam = next(
            (p, float(v))
            for p, v in values
            if p.quantity is Quantity.EXPONENT and p.of == suspect.lamp
        )
        suspect = replace(suspect, **_beam_told(fit, *beam))
    return replace(
        suspect,
        squares=2 * fit.cost - 2 * after.cost,
        times=_rms(fit, suspect.survey) / max(_rms(after, suspect.survey), 1e-9),
    )


def _rms(fit: Fit, key: str) -> float:
    """Relative rms of one survey's readings about the fit, of all where it names none."""
    left = [
        np.log(model.measured / after)
        for model, after in zip(fit.models, fit.after, strict=True)
        if key in {model.survey.key, EVERY}
    ]
    return float(np.sqrt(np.mean(np.concatenate(left) ** 2)))


# -- readings at the wrong holes -----------------------------------------------------------


def _wrong_orders(fit: Fit) -> list[Suspect]:
    found = []
    for k, model in enumerate(fit.models):
        if len(model.measured) != len(model.survey.points):
            continue  # holes without a reading: an order would be a guess
        z = np.log(model.measured / fit.before[k]) / fit.weights[k]
        as_it_is = _spread(z)
        for words, remedy, order in _orders(np.array(model.survey.points)):
            moved = np.log(model.measured[order] / fit.before[k]) / fit.weights[k]
            gain = as_it_is - _spread(moved)
            times = math.sqrt(as_it_is / max(_spread(moved), 1e-9))
            mended = _reordered(model.survey, order)
            found.append(
                Suspect(
                    f"order {words}",
                    model.survey.key,
                    f"those of '{model.survey.name}' are taken {words}",
                    remedy,
                    gain,
                    times,
                    mended,
                )
            )
    return found


def _spread(z: FloatArray) -> float:
    return float(((z - z.mean()) ** 2).sum())


def _orders(points: FloatArray) -> list[tuple[str, str, IntArray]]:
    """Orders in which readings may belong to the holes: (words, remedy, index of reading)."""
    low, high = points.min(axis=0), points.max(axis=0)
    flip = low + high - points
    middle = (low + high) / 2
    choices = [
        ("mirrored left to right", "Mirror", np.column_stack([flip[:, 0], points[:, 1]])),
        ("with near and far exchanged", "Mirror", np.column_stack([points[:, 0], flip[:, 1]])),
        ("turned half round", "Turn", flip),
        (
            "with rows and columns exchanged",
            "Exchange",
            middle + (points - middle)[:, ::-1],
        ),
        ("turned a quarter to the left", "Turn", middle + (points - middle)[:, ::-1] * (-1, 1)),
        ("turned a quarter to the right", "Turn", middle + (points - middle)[:, ::-1] * (1, -1)),
    ]
    found = []
    for words, remedy, places in choices:
        index = _matching(points, places)
        if index is not None:
            found.append((words, remedy, index))
    by_rows = np.lexsort((points[:, 0], points[:, 1].round(6)))
    if (np.diff(by_rows) != 1).any():
        # Reading k was taken at the k-th hole row by row: hole h has the reading of its rank.
        found.append(("row by row, all from the left", "Reorder", np.argsort(by_rows)))
    return found


def _matching(points: FloatArray, places: FloatArray) -> IntArray | None:
    """For each hole the one that lies at its new place, or None where some have none."""
    distance = np.hypot(*(places[:, None] - points[None]).transpose(2, 0, 1))
    index: IntArray = distance.argmin(axis=1)
    if distance[np.arange(len(points)), index].max() > SAME_PLACE_M:
        return None
    return index if len(set(index.tolist())) == len(points) else None


def _reordered(survey: Survey, order: IntArray) -> Survey:
    """The survey with each hole given the readings of another."""
    hole_of = {taken: hole for hole, taken in enumerate((order + 1).tolist(), start=1)}
    readings = (r.model_copy(update={"hole": hole_of[r.hole]}) for r in survey.readings)
    return changed(survey, readings=tuple(sorted(readings, key=lambda r: r.hole)))


# -- something not as it is written down ---------------------------------------------------


def _not_as_written(fit: Fit, written: Mapping[str, Survey]) -> list[Suspect]:
    found = []
    priors = [k for k, p in enumerate(fit.parameters) if p.prior is not None]
    readings = fit.jacobian.shape[0] - len(priors)
    residuals = _residuals(fit)
    for row, k in enumerate(priors):
        p = fit.parameters[k]
        if p.quantity not in {*OF_A_SURVEY, Quantity.EXPONENT}:
            continue
        keep = np.arange(len(residuals)) != readings + row
        step, left = _step(fit.jacobian[keep], residuals[keep])
        value = float(np.clip(fit.values[k] + step[k], p.low, p.high))
        gain = 2 * fit.cost - left
        times = math.sqrt(2 * fit.cost / max(left, 1e-9))
        survey = p.of if p.of in written else EVERY
        blank = Suspect(p.quantity.value, survey, "", "", gain, times)
        if p.quantity is Quantity.EXPONENT:
            found.append(replace(blank, **_beam_told(fit, p, value)))
            continue
        model = next(m for m in fit.models if m.survey.key == p.of)
        told = _told(p, value, model.survey, model.plan)
        if told is not None:
            words, remedy, mended = told
            found.append(replace(blank, words=words, remedy=remedy, mended=mended))
    return found


def _beam_told(fit: Fit, p: Parameter, value: float) -> dict[str, Any]:
    """What a beam that was let go comes to; it is the plan that is put right by that."""
    lamp = next(lamp for m in fit.models for lamp in m.lamps if lamp.model.key == p.of)
    profile = CosineProfile(exponent=max(value, 0.0))
    found, planned = profile.beam_angle_deg, CosineProfile(exponent=p.start).beam_angle_deg
    words = f"the beam of '{lamp.model.name}' is {found:.0f}° wide, not {planned:.0f}° as planned"
    return {"words": words, "remedy": "Use in the plan", "lamp": p.of, "profile": profile}


def _told(
    p: Parameter, value: float, survey: Survey, plan: Plan
) -> tuple[str, str, Survey | None] | None:
    """What a released condition comes to in words, and the survey that says so."""
    name = survey.name
    moved = value - p.start
    doubts = survey.doubts
    if p.quantity is Quantity.HEIGHT:
        way = "higher" if moved > 0 else "lower"
        words = f"the lamps hung {said_length(round(abs(moved), 3))} {way} in '{name}' than written"
        # A sensor over the plan's own canopy lifted that; written heights count from the canopy.
        raised = survey.meter.sensor_height if survey.on_top is None else 0.0
        over = lamps_at(plan, lighting(plan))
        heights = {round(lamp.hanging_height + raised, 9) for lamp in over}
        height = heights.pop() + moved
        if heights or height <= 0.01:
            return words, "Measure again", None
        return words, "Set height", changed(survey, hanging_height=height)
    if p.quantity is Quantity.BOARD:
        words = f"the board in '{name}' reflected {percent(value)}"
        return words, "Set board", changed(survey, board=Board.OWN, board_reflectance=value)
    if p.quantity is Quantity.OUTPUT:
        way = "more" if moved > 0 else "less"
        words = f"the lamps gave {abs(math.expm1(moved)) * 100:.0f} % {way} in '{name}'"
        now = survey.output_percent or plan.lamps[0].output_percent
        wanted = now * math.exp(moved)
        if wanted > 100:
            half = min(abs(moved) * 2, 1.0)
            wide = doubts.model_copy(update={"output": half})
            return words, "Doubt output", changed(survey, doubts=wide)
        return words, "Set output", changed(survey, output_percent=wanted)
    if p.quantity is Quantity.DRIFT:
        way = "rose" if moved > 0 else "fell"
        words = f"the lamps {way} by {abs(math.expm1(moved)) * 100:.0f} % during '{name}'"
        wide = doubts.model_copy(update={"drift": min(abs(moved) * 2, 1.0)})
        return words, "Allow for drift", changed(survey, doubts=wide)
    if p.quantity is Quantity.DOOR and value > 0.005:
        words = f"{percent(value)} of the door's wall stood open in '{name}'"
        wide = doubts.model_copy(update={"door": min(value * 2, 1.0)})
        return words, "Allow for the door", changed(survey, doubts=wide)
    return None


def _residuals(fit: Fit) -> FloatArray:
    rows = [
        np.log(after / model.measured) / weight
        for model, after, weight in zip(fit.models, fit.after, fit.weights, strict=True)
    ]
    known = [
        (float(v) - p.start) / p.prior
        for p, v in zip(fit.parameters, fit.values, strict=True)
        if p.prior is not None
    ]
    return np.concatenate([*rows, np.array(known)])


def _step(jacobian: FloatArray, residuals: FloatArray) -> tuple[FloatArray, float]:
    """One Gauss-Newton step, held a little, and the sum of squares it leads to."""
    table = np.vstack([jacobian, np.eye(jacobian.shape[1]) / _WIDER])
    step = np.linalg.lstsq(table, -np.concatenate([residuals, np.zeros(jacobian.shape[1])]))[0]
    left = residuals + jacobian @ step
    return np.asarray(step, dtype=np.float64), float(left @ left)


# -- one hole, one survey ------------------------------------------------------------------


def _holes(fit: Fit) -> list[Suspect]:
    """A single hole left out: z² / (1 - h) with its leverage h."""
    residuals = _residuals(fit)
    inverse = np.linalg.pinv(fit.jacobian)
    leverage = np.einsum("ij,ji->i", fit.jacobian, inverse)
    found, start = [], 0
    for model in fit.models:
        rows = slice(start, start + len(model.measured))
        start = rows.stop
        gains = residuals[rows] ** 2 / np.maximum(1 - leverage[rows], 0.05)
        k = int(gains.argmax())
        hole, name = int(model.holes[k]), model.survey.name
        rest = tuple(
            r.model_copy(update={"aside": True}) if r.hole == hole else r
            for r in model.survey.readings
        )
        if any(r.hole != hole for r in model.survey.counted):
            total = 2 * fit.cost
            found.append(
                Suspect(
                    "hole",
                    model.survey.key,
                    f"the reading of hole {hole} of '{name}' is left out",
                    f"Set hole {hole} aside",
                    float(gains[k]),
                    math.sqrt(total / max(total - float(gains[k]), 1e-9)),
                    changed(model.survey, readings=rest),
                )
            )
    return found


def _whole_surveys(fit: Fit) -> list[Suspect]:
    """One survey left out of several; what is then left of the others."""
    if len(fit.models) < 3:
        return []
    residuals = _residuals(fit)
    found, start = [], 0
    for model in fit.models:
        rows = np.arange(start, start + len(model.measured))
        start += len(model.measured)
        keep = np.setdiff1d(np.arange(len(residuals)), rows)
        _, left = _step(fit.jacobian[keep], residuals[keep])
        # Leaving a survey out takes its own scatter along, which is no merit, and says less than
        # what concerns one thing: twice its readings are taken off (H. Akaike 1974).
        gain = 2 * fit.cost - left - 2 * len(model.measured)
        times = math.sqrt(2 * fit.cost / max(left + len(model.measured), 1e-9))
        words = f"'{model.survey.name}' is left out altogether"
        found.append(Suspect("survey", model.survey.key, words, "Read again", gain, times))
    return found
