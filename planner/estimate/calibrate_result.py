"""What a calibration found: values with their errors, in words, and ready for the library."""

from __future__ import annotations

import datetime as dt
import math
import re
from dataclasses import dataclass
from typing import Final, TypeVar

import numpy as np
from pydantic import ValidationError

from planner.estimate.calibrate_checks import (
    Contribution,
    SurveyCheck,
    budget,
    check_surveys,
    next_measurement,
)
from planner.estimate.calibrate_model import Parameter, Quantity, SurveyModel, curve_profile
from planner.estimate.calibrate_parameters import LARGEST_EXPONENT
from planner.estimate.result import FloatArray
from planner.language import inside, word
from planner.metrics.figures import percent
from planner.plan.edits import changed
from planner.plan.lamp import CosineProfile, LampModel
from planner.plan.lining import Lining
from planner.plan.plan import Plan
from planner.plan.quantity import BEAM_DOUBT
from planner.units import COVERAGE, FLUX_UNIT, said_length

ONE_SIDED: Final = 1.645
"""Standard uncertainties to one side that leave 5 % beyond."""
_ROOT_3: Final = math.sqrt(3)
_CLOSELY: Final = 0.97
"""Correlation from which two parameters are said to stand for one another."""

_UNTOLD: Final = {
    Quantity.FLUX: 0.25,
    Quantity.EXPONENT: 1.0,
    Quantity.FALL: 1.0,
    Quantity.SHIFT_X: 0.1,
    Quantity.SHIFT_Y: 0.1,
    Quantity.REFLECTANCE: 0.12,
    Quantity.SPECULAR: 0.2,
    Quantity.GAIN: 1.0,
    Quantity.HEIGHT: 0.1,
    Quantity.SENSOR: 0.1,
    Quantity.BOARD: 0.3,
    Quantity.OUTPUT: 0.3,
    Quantity.DRIFT: 0.3,
    Quantity.DOOR: 0.3,
    Quantity.COSINE: 0.3,
}
"""Standard errors beyond which the readings are said to tell nothing of use."""


@dataclass(frozen=True)
class Fit:
    """The bare solution: values, Jacobian (of weighted residuals), predictions before and after."""

    parameters: tuple[Parameter, ...]
    values: FloatArray
    jacobian: FloatArray
    models: tuple[SurveyModel, ...]
    before: tuple[FloatArray, ...]
    after: tuple[FloatArray, ...]
    weights: tuple[FloatArray, ...]
    cost: float
    remarks: tuple[str, ...]
    curve_angles: tuple[float, ...]

    def covariance(self) -> FloatArray:
        """(JᵀJ)⁻¹, enlarged by the Birge ratio where it exceeds 1; (p, p)."""
        # A parameter nothing tells of has an infinite variance; a tiny ridge keeps it finite.
        normal = self.jacobian.T @ self.jacobian
        normal += 1e-6 * np.eye(len(normal))
        covariance: FloatArray = np.asarray(np.linalg.inv(normal) * max(self.reduced, 1.0))
        return covariance

    @property
    def reduced(self) -> float:
        """Sum of squared weighted residuals per degree of freedom."""
        readings = sum(len(model.measured) for model in self.models)
        free = sum(p.prior is None for p in self.parameters)
        return 2 * self.cost / max(readings - free, 1)


@dataclass(frozen=True)
class Fitted:
    """One fitted value in its own unit, with its standard error and what to think of it."""

    label: str
    quantity: Quantity
    of: str
    value: float
    standard_error: float
    start: float
    unit: str
    at_bound: bool
    identifiable: bool
    sentence: str
    budget: tuple[Contribution, ...] = ()
    advice: str = ""

    def interval(self) -> tuple[float, float]:
        """The 95 % interval; to one side of a value at its bound, and of what can be."""
        if self.at_bound:
            reach = ONE_SIDED * self.standard_error
            low = self.value - reach if self.value > self.start else self.value
            return low, low + reach
        half = COVERAGE * self.standard_error
        low, high = self.value - half, self.value + half
        is_share = self.quantity is Quantity.REFLECTANCE
        return (max(low, 0.0), min(high, 1.0)) if is_share else (low, high)


@dataclass(frozen=True)
class SurveyFit:
    """A survey before and after: measured over predicted at its lit holes, each (n,)."""

    key: str
    name: str
    points: FloatArray
    measured: FloatArray
    before: FloatArray
    after: FloatArray
    rms_before: float
    rms_after: float


@dataclass(frozen=True)
class Calibration:
    """The outcome of a fit.

    ``correlation`` is that of ``fitted``, in the same order. ``plan`` has the calibrated
    lamps and linings in place of its own, under the keys it knows; ``lamps`` and
    ``linings`` are the same as new entries for the library. ``sentences`` say what was
    found and what was not, ``warnings`` why it should not be used as it is; ``checks`` look
    at each survey by itself.
    """

    fitted: tuple[Fitted, ...]
    correlation: FloatArray
    surveys: tuple[SurveyFit, ...]
    reduced: float
    plan: Plan
    lamps: tuple[LampModel, ...]
    linings: tuple[Lining, ...]
    sentences: tuple[str, ...]
    checks: tuple[SurveyCheck, ...] = ()
    warnings: tuple[str, ...] = ()

    def value(self, quantity: Quantity, of: str | None = None) -> Fitted:
        """The fitted value of a quantity (of one lamp model or lining)."""
        return next(f for f in self.fitted if f.quantity is quantity and of in {None, f.of})


def described(plan: Plan, fit: Fit, date: dt.date) -> Calibration:
    """Turn a bare solution into values with errors, words and entries for the library."""
    covariance = fit.covariance()
    errors = np.sqrt(np.diag(covariance))
    shown = [k for k, p in enumerate(fit.parameters) if p.prior is None]
    correlation = (covariance / np.outer(errors, errors))[np.ix_(shown, shown)]
    fitted = tuple(_fitted(fit, k, float(errors[k])) for k in shown)
    surveys = tuple(_survey_fit(fit, k) for k in range(len(fit.models)))
    lamps, lamp_remarks = _lamps(fit, fitted, date)
    linings = _linings(fit, fitted, date)
    sentences = [f.sentence for f in fitted if f.quantity is not Quantity.FALL]
    sentences += _together(fitted, correlation)
    checks = check_surveys(fit)
    warnings = [sentence for check in checks for sentence in check.sentences]
    warnings += [
        f"{f.label} ends at its bound: the readings ask for what cannot be."
        for f in fitted
        if f.at_bound
    ]
    advice = [f"{f.label}: {f.advice}" for f in fitted if f.advice and f.quantity not in _FALLS]
    sentences += [*lamp_remarks, *fit.remarks, *(warnings or [_AS_STATED]), *advice]
    sentences += [
        f"'{s.name}': {s.rms_before * 100:.1f} % rms between readings and estimate before, "
        f"{s.rms_after * 100:.1f} % after."
        for s in surveys
    ]
    return Calibration(
        fitted=fitted,
        correlation=correlation,
        surveys=surveys,
        reduced=fit.reduced,
        checks=checks,
        warnings=tuple(warnings),
        plan=_with_entries(plan, fit, lamps, linings),
        lamps=tuple(_renamed(lamp, date) for lamp in lamps),
        linings=tuple(_renamed(lining, date) for lining in linings),
        sentences=tuple(sentences),
    )


def _fitted(fit: Fit, k: int, error: float) -> Fitted:
    p, raw = fit.parameters[k], float(fit.values[k])
    at_bound = p.quantity is not Quantity.FLUX and (
        raw - p.low < 2e-3 * (p.high - p.low) or p.high - raw < 2e-3 * (p.high - p.low)
    )
    identifiable = error <= _UNTOLD[p.quantity] * max(
        1.0, raw if p.quantity is Quantity.EXPONENT else 1.0
    )
    value, standard, start, unit = raw, error, p.start, ""
    name = _name_of(fit, p)
    label = f"{word(p.quantity).capitalize()} of {name}"
    if p.quantity is Quantity.FLUX:
        nominal = _lamp_model(fit, p.of).ppf
        value, standard, start = nominal * math.exp(raw), nominal * math.exp(raw) * error, nominal
        unit, label = FLUX_UNIT, f"Photon flux of {name}"
    elif p.quantity in {Quantity.SHIFT_X, Quantity.SHIFT_Y}:
        unit = "m"
        label = f"Lamps' shift along {p.quantity.value[-1]}"
    elif p.quantity is Quantity.EXPONENT:
        label = f"Beam of {name}"
    elif p.quantity is Quantity.FALL:
        low, high = fit.curve_angles[p.index : p.index + 2]
        label = f"Fall of intensity of {name} from {low:.0f}° to {high:.0f}°"
    told, doubt = said(p.quantity, value), said(p.quantity, standard, at=value)
    figures = f"{label}: {told} ± {doubt} (standard error)"
    if not identifiable:
        sentence = f"{figures}: not identifiable, these readings do not tell it."
    elif at_bound:
        below = raw - p.low < p.high - raw
        bound, sign = (p.low, 1) if below else (p.high, -1)
        reach = said(p.quantity, value + sign * ONE_SIDED * standard)
        # A greater exponent makes a beam narrower.
        way = "most" if below is not (p.quantity is Quantity.EXPONENT) else "least"
        sentence = (
            f"{label}: at {way} {reach} (95 %); the fit lies at its bound "
            f"{said(p.quantity, bound)}, where no standard error can be given."
        )
    else:
        sentence = f"{figures}."
    return Fitted(
        label, p.quantity, p.of, value, standard, start, unit, at_bound, identifiable,
        sentence, budget(fit, k), next_measurement(fit, k),
    )  # fmt: skip


def beam_deg(exponent: float) -> float:
    """A beam as a grower knows it, by its angle of half the peak, in degrees."""
    return CosineProfile(exponent=min(max(exponent, 0.0), LARGEST_EXPONENT)).beam_angle_deg


def said(quantity: Quantity, value: float, *, at: float | None = None) -> str:
    """A fitted value in the unit its dial has: lengths in cm or in, shares in per cent, beams in °.

    With ``at`` the value is a standard error at that one.
    """
    if quantity in {Quantity.SHIFT_X, Quantity.SHIFT_Y}:
        return said_length(round(value, 4))
    if quantity in {Quantity.REFLECTANCE, Quantity.SPECULAR}:
        return f"{100 * value:.1f} %"
    if quantity is Quantity.EXPONENT:
        if at is not None:
            value = (beam_deg(at - value) - beam_deg(at + value)) / 2
            return f"{value:.1f}°"
        return f"{beam_deg(value):.1f}°"
    return f"{value:.1f} {FLUX_UNIT}" if quantity is Quantity.FLUX else f"{value:.3f}"


def _lamp_model(fit: Fit, key: str) -> LampModel:
    return next(lamp.model for model in fit.models for lamp in model.lamps if lamp.model.key == key)


def _name_of(fit: Fit, p: Parameter) -> str:
    if p.quantity in {Quantity.REFLECTANCE, Quantity.SPECULAR}:
        return f"'{_lining(fit, p.of).name}'"
    if p.quantity is Quantity.GAIN:
        return f"'{p.of}'"
    if p.of == "lamps":
        return "the lamps"
    return f"'{_lamp_model(fit, p.of).name}'"


def _lining(fit: Fit, key: str) -> Lining:
    return next(model.plan.lining(key) for model in fit.models if model.carries(key))


def _survey_fit(fit: Fit, k: int) -> SurveyFit:
    model = fit.models[k]
    before, after = model.measured / fit.before[k], model.measured / fit.after[k]
    return SurveyFit(
        key=model.survey.key,
        name=model.survey.name,
        points=model.points,
        measured=model.measured,
        before=before,
        after=after,
        rms_before=float(np.sqrt(((before - 1) ** 2).mean())),
        rms_after=float(np.sqrt(((after - 1) ** 2).mean())),
    )


def _together(fitted: tuple[Fitted, ...], correlation: FloatArray) -> list[str]:
    pairs = [(i, j) for i in range(len(fitted)) for j in range(i)]
    return [
        f"{fitted[j].label} and {inside(fitted[i].label)} go together "
        f"(correlation {correlation[i, j]:+.2f}): the readings tell one in the light of the "
        "other, not each by itself."
        for i, j in pairs
        if abs(correlation[i, j]) > _CLOSELY
    ]


_AS_STATED: Final = (
    "The readings scatter about the fit as much as their stated noise lets expect, or less, "
    "in each survey."
)
_FALLS: Final = {Quantity.FALL}


# -- entries for the library ------------------------------------------------------------


def _lamps(
    fit: Fit, fitted: tuple[Fitted, ...], date: dt.date
) -> tuple[list[LampModel], list[str]]:
    made, remarks = [], []
    for key in dict.fromkeys(f.of for f in fitted if f.quantity in _OF_LAMPS):
        old = _lamp_model(fit, key)
        mine = {f.quantity: f for f in fitted if f.of == key and f.quantity is not Quantity.FALL}
        profile: object = old.profile
        parts: dict[str, object] = {}
        if Quantity.EXPONENT in mine:
            profile, parts["beam_uncertainty_deg"] = _beam(mine[Quantity.EXPONENT])
        falls = [f.value for f in fitted if f.of == key and f.quantity is Quantity.FALL]
        if falls:
            profile, parts["beam_uncertainty_deg"] = curve_profile(falls, fit.curve_angles), 0.0
        if Quantity.FLUX in mine:
            flux = mine[Quantity.FLUX]
            parts["ppf"] = flux.value
            # The plan takes an uncertainty as a half-width, evenly likely: √3 standard errors.
            parts["ppf_uncertainty"] = min(_ROOT_3 * flux.standard_error / flux.value, 1.0)
        said = "; ".join(f.sentence.rstrip(".") for f in mine.values())
        parts["source"] = f"Calibrated {date.isoformat()} from {_read(fit)}. {said}."[:4000]
        try:
            made.append(changed(old, profile=profile, **parts))
        except ValidationError as error:
            why = str(error.errors()[0]["msg"]).removeprefix("Value error, ")
            remarks.append(f"The calibrated lamp '{old.name}' cannot be kept: {why}")
    return made, remarks


def _beam(exponent: Fitted) -> tuple[CosineProfile, float]:
    """The beam of an exponent, and by how many degrees its angle may be off, evenly likely."""
    half = _ROOT_3 * exponent.standard_error
    wide, narrow = (beam_deg(exponent.value + side * half) for side in (-1, 1))
    found = CosineProfile(exponent=exponent.value)
    return found, min((wide - narrow) / 2, BEAM_DOUBT.maximum)


_OF_LAMPS: Final = {Quantity.FLUX, Quantity.EXPONENT, Quantity.FALL}


def _linings(fit: Fit, fitted: tuple[Fitted, ...], date: dt.date) -> list[Lining]:
    made = []
    linings = (f.of for f in fitted if f.quantity in {Quantity.REFLECTANCE, Quantity.SPECULAR})
    for key in dict.fromkeys(linings):
        old = _lining(fit, key)
        mine = {f.quantity: f for f in fitted if f.of == key}
        total = mine.get(Quantity.REFLECTANCE)
        share = mine.get(Quantity.SPECULAR)
        reflectance = old.reflectance if total is None else min(max(total.value, 0.0), 1.0)
        low, high = old.low, old.high
        if total is not None:
            half = _ROOT_3 * total.standard_error
            low, high = max(reflectance - half, 0.0), min(reflectance + half, 1.0)
        said = "; ".join(f.sentence.rstrip(".") for f in mine.values())
        fixed = (
            "" if share is not None else f" Specular share held at {percent(old.specular_share)}."
        )
        made.append(
            old.model_copy(
                update={
                    "reflectance": reflectance,
                    "specular_share": (
                        old.specular_share if share is None else min(max(share.value, 0.0), 1.0)
                    ),
                    "low": low,
                    "high": high,
                    "source": f"Effective reflectance, calibrated {date.isoformat()} from "
                    f"{_read(fit)}. {said}.{fixed}"[:4000],
                }
            )
        )
    return made


def _read(fit: Fit) -> str:
    readings = sum(len(model.survey.counted) for model in fit.models)
    names = ", ".join(f"'{model.survey.name}'" for model in fit.models)
    return f"{readings} readings of {names}"


_Entry = TypeVar("_Entry", LampModel, Lining)


def _dated(name: str, day: str) -> str:
    return f"{name} (calibrated {day})"


def _renamed(entry: _Entry, date: dt.date) -> _Entry:
    """A calibrated value as an entry of its own, named for its date."""
    before = re.escape(_dated("", "DAY")).replace("DAY", r"[\d-]+")
    name = _dated(re.sub(f"{before}$", "", entry.name)[:90], date.isoformat())
    return entry.model_copy(update={"key": entry_key(entry.key, date), "name": name})


def _with_entries(plan: Plan, fit: Fit, lamps: list[LampModel], linings: list[Lining]) -> Plan:
    models = {lamp.key: lamp for lamp in lamps}
    covers = {lining.key: lining for lining in linings}
    shift = {p.quantity: float(v) for p, v in zip(fit.parameters, fit.values, strict=True)}
    dx, dy = shift.get(Quantity.SHIFT_X, 0.0), shift.get(Quantity.SHIFT_Y, 0.0)
    hung = tuple(
        lamp.model_copy(
            update={
                "model": models.get(lamp.model.key, lamp.model),
                "x": lamp.x + dx,
                "y": lamp.y + dy,
            }
        )
        for lamp in plan.lamps
    )
    carried = tuple(covers.get(lining.key, lining) for lining in plan.linings)
    return changed(plan, lamps=hung, linings=carried)


def entry_key(key: str, date: dt.date) -> str:
    """Key of a calibrated entry: the old one with the date behind it."""
    stem = re.sub(r"-\d{8}$", "", key)[:55]
    return f"{stem}-{date:%Y%m%d}"
