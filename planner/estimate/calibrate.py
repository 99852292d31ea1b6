"""Learn lamps and linings from surveys: weighted least squares on the real core.

The logarithms of readings are compared with those of what the meter should read, weighted
by noise, placement and the core's own numerical error. Gains of meters are unknowns with
their stated uncertainty as prior, one for each meter, so that what is common to all
readings of a meter goes where it belongs: into the photon flux, not into the linings.
Gauss-Newton inside bounds (bounded-variable least squares at each step: P. B. Stark,
R. L. Parker (1995), Computational Statistics 10, 129). Standard errors and correlations
come from the Jacobian at the solution, (JᵀJ)⁻¹, enlarged where the readings scatter more
than was stated (R. T. Birge (1932), Phys. Rev. 40, 207).
"""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, field, replace
from typing import Any

import numpy as np

from planner.estimate.calibrate_model import (
    OF_A_METER,
    OF_A_SURVEY,
    Parameter,
    Quantity,
    Run,
    SurveyModel,
    lift,
)
from planner.estimate.calibrate_parameters import (
    Asked,
    CalibrationError,
    Unknowns,
    default_freed,
    unknowns,
)
from planner.estimate.calibrate_result import Calibration, Fit, described
from planner.estimate.result import FloatArray, Quality
from planner.metrics.figures import percent
from planner.plan.survey import Survey

MOST_STEPS = 15
_HALVINGS = 4
_SETTLED = 0.1
_NEAR = 5.0


def calibrate(asked: Asked, *, date: dt.date | None = None) -> Calibration:
    """Fit lamps and linings of a plan to surveys, all together.

    ``date`` goes into the names of calibrated entries; today by default.

    Raises
    ------
    CalibrationError
        If there are too few readings, or something is freed that no survey could tell.
    planner.estimate.evaluate.Cancelled
        If it was cancelled.
    """
    solution = fit_surveys(asked)
    asked.tell(1.0)
    return described(asked.plan, solution, date or dt.datetime.now().astimezone().date())


def fit_surveys(asked: Asked) -> Fit:
    """The bare solution behind ``calibrate``, which takes and raises the same."""
    return _Fitter.over(asked).solve()


def _as_run(values: dict[Parameter, float]) -> tuple[Any, ...]:
    """What a run depends on: all values, but of heights only what they come to."""
    rest = tuple(
        (p, v) for p, v in values.items() if p.quantity not in {Quantity.HEIGHT, Quantity.SENSOR}
    )
    return (round(lift(values), 9), rest)


@dataclass
class _Fitter:
    asked: Asked
    models: tuple[SurveyModel, ...]
    unknowns: Unknowns
    quality: Quality = Quality.DEFAULT
    _runs: int = 0
    _lights: dict[Any, FloatArray] = field(default_factory=dict)
    _guides: tuple[tuple[float, ...], ...] = ()

    @classmethod
    def over(cls, asked: Asked) -> _Fitter:
        plan = asked.plan
        try:
            models = tuple(
                SurveyModel(survey, plan, asked.options, asked.cache) for survey in asked.surveys
            )
        except ValueError as error:
            raise CalibrationError(f"a survey's conditions do not fit the plan: {error}") from error
        models = tuple(model for model in models if len(model.measured))
        if not models:
            raise CalibrationError("these surveys hold no readings with light; read some first.")
        laid_out = unknowns(plan, models, asked.freed or default_freed(plan, models))
        for model in models:
            model.curve_angles = laid_out.curve_angles
        readings = sum(len(model.measured) for model in models)
        free = sum(p.prior is None for p in laid_out.parameters)
        if readings < free + 1:
            raise CalibrationError(
                f"{readings} readings cannot tell {free} unknowns; read more holes or free fewer."
            )
        return cls(asked, models, laid_out)

    @property
    def wanted(self) -> Quality:
        """Quality asked for: that of the last runs."""
        return self.asked.options.quality

    @property
    def parameters(self) -> tuple[Parameter, ...]:
        return self.unknowns.parameters

    # -- predictions --------------------------------------------------------------------

    def _step(self) -> None:
        self._runs += 1
        # Nobody knows how many runs it takes; the bar slows down towards the end.
        self.asked.tell(0.95 * (1 - 1 / (1 + self._runs / 40)))

    def _light(self, number: int, x: FloatArray, quality: Quality) -> FloatArray:
        """Light of each kind of lamp at the lit holes of a survey, (G, n)."""
        model = self.models[number]
        rows = []
        for group in model.groups():
            values = {
                p: float(v)
                for p, v in zip(self.parameters, x, strict=True)
                if self._concerns(number, group, p)
            }
            key = (number, group, quality, self._guides[number], _as_run(values))
            if key not in self._lights:
                self._step()
                run = Run(quality, self._guides[number], self.asked.cancelled)
                self._lights[key] = model.light(group, values, run)
            rows.append(self._lights[key])
        return np.array(rows)

    def _concerns(self, number: int, group: str | None, parameter: Parameter) -> bool:
        """Whether a run for a survey's lamps of a kind (or of any) depends on a parameter."""
        if parameter.in_logarithm:
            return False
        if parameter.quantity in OF_A_SURVEY:
            return parameter.of == self.models[number].survey.key
        if parameter.quantity in OF_A_METER:
            return parameter.of == self.models[number].gain_key
        if parameter.quantity in {Quantity.REFLECTANCE, Quantity.SPECULAR}:
            return self.models[number].carries(parameter.of)
        return parameter.of in {"lamps", group} or (
            group is None and parameter.of in self.models[number].groups()
        )

    def _scales(self, number: int, x: FloatArray) -> FloatArray:
        """Factors on the light of each kind of lamp in a survey, (G,), its gain included."""
        model = self.models[number]
        at = {(p.quantity, p.of): float(v) for p, v in zip(self.parameters, x, strict=True)}
        common = at[Quantity.GAIN, model.gain_key] + at.get(
            (Quantity.OUTPUT, model.survey.key), 0.0
        )
        return np.exp([at[Quantity.FLUX, group] + common for group in model.groups()])

    def _drift(self, number: int, x: FloatArray) -> FloatArray:
        """Factors by which the lamps had changed when each hole was read, (n,)."""
        model = self.models[number]
        rates = [
            float(v)
            for p, v in zip(self.parameters, x, strict=True)
            if (p.quantity, p.of) == (Quantity.DRIFT, model.survey.key)
        ]
        return np.exp(sum(rates) * model.moments)

    def predicted(self, number: int, x: FloatArray) -> FloatArray:
        """Readings to expect at the lit holes of a survey, (n,)."""
        light = self._scales(number, x) @ self._light(number, x, self.quality)
        result: FloatArray = light * self._drift(number, x)
        return result

    def weights(self, number: int) -> FloatArray:
        """Standard deviations of the logarithms: readings and numerical error, (n,)."""
        model = self.models[number]
        return np.hypot(model.sigma, model.numeric_error or 0.0)

    def residuals(self, x: FloatArray) -> FloatArray:
        rows = [
            (np.log(self.predicted(k, x)) - np.log(model.measured)) / self.weights(k)
            for k, model in enumerate(self.models)
        ]
        known = [
            (value - p.start) / p.prior
            for p, value in zip(self.parameters, x, strict=True)
            if p.prior is not None
        ]
        return np.concatenate([*rows, np.array(known)])

    def jacobian(self, x: FloatArray) -> FloatArray:
        count = sum(len(model.measured) for model in self.models)
        priors = [k for k, p in enumerate(self.parameters) if p.prior is not None]
        result = np.zeros((count + len(priors), len(x)))
        start = 0
        for number, model in enumerate(self.models):
            part = slice(start, start + len(model.measured))
            start = part.stop
            for column, parameter in enumerate(self.parameters):
                slope = self._slope(number, x, column, parameter)
                if slope is not None:
                    result[part, column] = slope / self.weights(number)
        for row, column in enumerate(priors):
            result[count + row, column] = 1 / (self.parameters[column].prior or 1.0)
        return result

    def _slope(
        self, number: int, x: FloatArray, column: int, parameter: Parameter
    ) -> FloatArray | None:
        """∂ ln(reading) / ∂ parameter at the holes of a survey, None where it has no part."""
        model = self.models[number]
        if parameter.quantity is Quantity.GAIN:
            return np.ones(len(model.measured)) if parameter.of == model.gain_key else None
        if parameter.quantity is Quantity.OUTPUT:
            return np.ones(len(model.measured)) if parameter.of == model.survey.key else None
        if parameter.quantity is Quantity.DRIFT:
            return model.moments if parameter.of == model.survey.key else None
        if parameter.quantity is Quantity.FLUX:
            if parameter.of not in model.groups():
                return None
            group = model.groups().index(parameter.of)
            light = self._light(number, x, self.quality)
            scaled = self._scales(number, x)[:, None] * light
            share: FloatArray = scaled[group] / scaled.sum(axis=0)
            return share
        if not self._concerns(number, None, parameter):
            return None
        ends = []
        for way in (1, -1) if parameter.both_ways else (1, 0):
            moved = x.copy()
            moved[column] = x[column] + way * parameter.step
            if moved[column] > parameter.high:
                moved[column] = x[column] - 2 * parameter.step
            moved[column] = max(moved[column], parameter.low)
            ends.append((moved[column], np.log(self.predicted(number, moved))))
        (there, light), (here, before) = ends
        slope: FloatArray = (light - before) / (there - here)
        return slope

    # -- solution -----------------------------------------------------------------------

    def _guided_by(self, x: FloatArray) -> None:
        """Follow mirrors as far as the reflectances at ``x`` ask for, in all runs to come."""
        values = {p: float(v) for p, v in zip(self.parameters, x, strict=True)}
        self._guides = tuple(model.optics(values).specular for model in self.models)
        self._lights.clear()
        for number, model in enumerate(self.models):
            model.numeric_error = None
            self._light(number, x, self.wanted)

    def solve(self) -> Fit:
        x = np.array([p.start for p in self.parameters])
        self.quality = self.wanted
        self._guided_by(x)
        before = tuple(self.predicted(k, x) for k in range(len(self.models)))
        # Quick runs find the place and give the derivatives there; full runs settle it by them.
        self.quality = Quality.PREVIEW
        x, jacobian = self._descend(x, None)
        self._guided_by(x)
        slopes = self.jacobian(x)
        self.quality = self.wanted
        x, jacobian = self._descend(x, slopes)
        residuals = self.residuals(x)
        return Fit(
            parameters=self.parameters,
            values=x,
            jacobian=jacobian,
            models=self.models,
            before=before,
            after=tuple(self.predicted(k, x) for k in range(len(self.models))),
            weights=tuple(self.weights(k) for k in range(len(self.models))),
            cost=float(residuals @ residuals) / 2,
            remarks=self.unknowns.remarks,
            curve_angles=self.unknowns.curve_angles,
        )

    def _descend(self, x: FloatArray, jacobian: FloatArray | None) -> tuple[FloatArray, FloatArray]:
        """Gauss-Newton steps inside the bounds until the next would be a tenth of a sigma.

        With a Jacobian given it is kept, else it is taken anew until a step is short.
        """
        from scipy.optimize import lsq_linear

        low = np.array([p.low for p in self.parameters])
        high = np.array([p.high for p in self.parameters])
        kept = jacobian
        residuals = self.residuals(x)
        for _ in range(MOST_STEPS):
            jacobian = self.jacobian(x) if kept is None else kept
            # A trace of damping keeps what nothing tells of where it is.
            damping = 1e-3 * np.eye(len(x))
            found = lsq_linear(
                np.vstack([jacobian, damping]),
                -np.concatenate([residuals, np.zeros(len(x))]),
                bounds=(low - x - 1e-12, high - x + 1e-12),
                method="bvls",
            )
            step = np.asarray(found.x, dtype=np.float64)
            length_in_sigmas = float(np.linalg.norm(jacobian @ step))
            if length_in_sigmas < _SETTLED:
                break
            if length_in_sigmas < _NEAR:
                kept = jacobian  # so near, the derivatives hardly change any more
            length, before = 1.0, float(residuals @ residuals)
            for _ in range(_HALVINGS):
                there = np.clip(x + length * step, low, high)
                tried = self.residuals(there)
                if float(tried @ tried) < before:
                    break
                length /= 3
            else:
                return x, jacobian
            x, residuals = there, tried
        return x, jacobian if jacobian is not None else self.jacobian(x)


@dataclass(frozen=True)
class LeftOut:
    """How well one survey is predicted from the others.

    ``ratio`` is measured over predicted on the mean, ``scatter`` the relative rms left once
    that factor is taken out; both None when the others cannot predict it, as ``sentence``
    then says.
    """

    key: str
    name: str
    ratio: float | None
    scatter: float | None
    sentence: str


def leave_one_out(asked: Asked) -> tuple[LeftOut, ...]:
    """Predict each survey from a calibration by the others, and say how well it went.

    Raises
    ------
    CalibrationError
        If there are fewer than two surveys.
    planner.estimate.evaluate.Cancelled
        If it was cancelled.
    """
    surveys = asked.surveys
    if len(surveys) < 2:
        raise CalibrationError("leaving one out needs at least two surveys.")
    rows = []
    for number, survey in enumerate(surveys):
        others = [other for k, other in enumerate(surveys) if k != number]
        rows.append(_left_out(survey, replace(asked, surveys=others, progress=None)))
        asked.tell((number + 1) / len(surveys))
    return tuple(rows)


def _left_out(survey: Survey, others: Asked) -> LeftOut:
    def not_possible(why: str) -> LeftOut:
        return LeftOut(
            survey.key, survey.name, None, None, f"'{survey.name}' cannot be predicted: {why}"
        )

    lining = survey.lining
    known = {other.lining.key for other in others.surveys if other.lining is not None}
    alone = lining is not None and not lining.is_opening and lining.key not in known
    freed = others.freed
    if freed is not None and alone and lining is not None:
        # The others tell nothing of this lining: it stays as it is listed.
        freed = replace(
            freed,
            reflectance=tuple(key for key in freed.reflectance if key != lining.key),
            specular=tuple(key for key in freed.specular if key != lining.key),
        )
    try:
        solution = fit_surveys(replace(others, freed=freed))
        model = SurveyModel(
            survey, others.plan, others.options, others.cache, curve_angles=solution.curve_angles
        )
    except ValueError as error:
        return not_possible(str(error))
    if not len(model.measured):
        return not_possible("it holds no readings with light.")
    values = dict(zip(solution.parameters, solution.values.tolist(), strict=True))
    flux = {p.of: v for p, v in values.items() if p.quantity is Quantity.FLUX}
    gain = {p.of: v for p, v in values.items() if p.quantity is Quantity.GAIN}
    inner = {
        p: v
        for p, v in values.items()
        if not p.in_logarithm
        and p.quantity not in OF_A_SURVEY
        and (p.quantity not in OF_A_METER or p.of == model.gain_key)
    }
    run = Run(others.options.quality, None, others.cancelled)
    light = np.array([model.light(group, _of(inner, group), run) for group in model.groups()])
    scales = np.exp([flux.get(g, 0.0) + gain.get(model.gain_key, 0.0) for g in model.groups()])
    predicted = scales @ light
    ratio = float(model.measured.sum() / predicted.sum())
    rest = model.measured - ratio * predicted
    scatter = float(np.sqrt((rest**2).mean()) / model.measured.mean())
    way = "above" if ratio >= 1 else "below"
    listed = ""
    if alone and lining is not None:
        listed = (
            f" No other survey has its lining, so this tests lamp and meter of the others together "
            f"with the listed reflectance of '{lining.name}', {percent(lining.reflectance)}."
        )
    return LeftOut(
        survey.key,
        survey.name,
        ratio,
        scatter,
        f"'{survey.name}' reads {abs(ratio - 1) * 100:.1f} % {way} what the other surveys predict, "
        f"and scatters by {scatter * 100:.1f} % about that.{listed}",
    )


def _of(values: dict[Parameter, float], group: str) -> dict[Parameter, float]:
    """The values that concern the lamps of one kind, or all."""
    profiles = {Quantity.EXPONENT, Quantity.FALL}
    return {p: v for p, v in values.items() if p.quantity not in profiles or p.of == group}
