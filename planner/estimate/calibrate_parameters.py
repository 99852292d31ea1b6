"""The unknowns of a calibration, with their starts, bounds and what is known of them."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace
from typing import Final

import numpy as np

from planner.estimate.calibrate_model import (
    CURVE_STEP_DEG,
    Parameter,
    Quantity,
    SurveyModel,
)
from planner.estimate.evaluate import Cache
from planner.estimate.result import EstimateOptions
from planner.plan.lamp import CosineProfile, LampModel
from planner.plan.plan import Plan
from planner.plan.survey import Survey
from planner.survey.statistics import drift_of, gain_standard
from planner.units import OF_EVEN

LARGEST_EXPONENT: Final = 40.0
LARGEST_SHIFT_M: Final = 0.3
LARGEST_FALL: Final = 6.0
LARGEST_LIFT_M: Final = 0.1
BRIGHTEST_BOARD: Final = 0.98
CURVE_HOLES: Final = 25
CURVE_ANGLE_DEG: Final = 45.0
_CACHE_BYTES: Final = 150_000_000
_HELD: Final = 1e-3


class CalibrationError(ValueError):
    """A fit that cannot be made; the message says in a sentence what is missing."""


@dataclass(frozen=True)
class Freed:
    """What a calibration may change; what is not freed stays as the plan has it.

    ``flux`` and ``exponent`` hold for every kind of lamp in the plan; ``curve`` fits a
    monotone polar curve instead of an exponent. ``shift`` moves all lamps sideways
    together. ``reflectance`` and ``specular`` are keys of linings. The gain of each meter
    is always unknown within its stated uncertainty, and a photon flux that is not freed
    within the lamp's own. ``beam_held`` lays the exponents out though they are held, so that
    their derivatives are known to whoever asks what would happen if they were let go.
    """

    flux: bool = True
    exponent: bool = True
    curve: bool = False
    shift: bool = False
    reflectance: tuple[str, ...] = ()
    specular: tuple[str, ...] = ()
    beam_held: bool = False


@dataclass(frozen=True)
class Asked:
    """What is asked of a fit, and how it is made.

    ``freed`` of None: lamps where a survey was made in open air, and the linings of the lined
    surveys. ``progress`` is told fractions, ``cancelled`` asked whether to stop, which raises
    ``planner.estimate.evaluate.Cancelled``. ``cache`` keeps pieces of former fits of the same
    surveys, for speed only.
    """

    plan: Plan
    surveys: Sequence[Survey]
    freed: Freed | None = None
    options: EstimateOptions = field(default_factory=EstimateOptions)
    progress: Callable[[float], None] | None = None
    cancelled: Callable[[], bool] | None = None
    cache: Cache = field(default_factory=lambda: Cache(limit=_CACHE_BYTES), compare=False)

    def tell(self, fraction: float) -> None:
        """Say how far it is."""
        if self.progress is not None:
            self.progress(fraction)


@dataclass(frozen=True)
class Unknowns:
    """All parameters of a fit, and the polar angles of the curve if one is fitted."""

    parameters: tuple[Parameter, ...]
    curve_angles: tuple[float, ...] = ()
    remarks: tuple[str, ...] = field(default=())


def default_freed(plan: Plan, models: Sequence[SurveyModel]) -> Freed:
    """What the surveys can tell: the lamp from open air, the linings from lined spaces."""
    open_air = any(model.survey.open_air for model in models)
    keys = dict.fromkeys(
        model.survey.lining.key
        for model in models
        if model.survey.lining is not None and not model.survey.open_air
    )
    if not keys and not open_air:
        on_walls = [band.lining for cover in plan.walls for band in cover.bands]
        lined = [key for key in on_walls if any(model.carries(key) for model in models)]
        keys = dict.fromkeys(lined[:1])
    return Freed(flux=open_air, exponent=open_air, reflectance=tuple(keys))


def unknowns(plan: Plan, models: Sequence[SurveyModel], freed: Freed) -> Unknowns:
    """Lay out the parameters of a fit.

    Raises
    ------
    CalibrationError
        If something is freed that no survey could tell.
    """
    lamps = _lamp_models(models)
    if not lamps:
        raise CalibrationError("no lamp gives light in these surveys; hang one first.")
    found = [_flux(model, freed.flux) for model in lamps]
    found += _gains(models)
    found += [doubt for model in models for doubt in _conditions(model)]
    found += _of_meters(models)
    angles: tuple[float, ...] = ()
    remarks: list[str] = [
        f"Nobody said what the board of '{model.survey.name}' was made of, so the canopy it was "
        "read on was taken for it; say it in the record."
        for model in models
        if model.survey.board_unsaid and not model.survey.open_air
    ]
    if freed.curve:
        angles = _curve_angles(models)
        for model in lamps:
            found += _falls(model, angles)
        if angles[-1] < 90:
            remarks.append(
                f"No hole sees the lamp flatter than {angles[-1]:.0f}°; what it sends there was "
                "taken to go down as the cosine, and the photon flux depends on that."
            )
    elif freed.exponent:
        found += [_exponent(model) for model in lamps]
    elif freed.beam_held:
        cosines = [lamp for lamp in lamps if isinstance(lamp.profile, CosineProfile)]
        found += [replace(_exponent(lamp), prior=_HELD) for lamp in cosines]
    if freed.shift:
        found += _shifts(plan)
    for key in dict.fromkeys((*freed.reflectance, *freed.specular)):
        found += _lining(models, key, freed)
    return Unknowns(tuple(found), angles, tuple(remarks))


def _lamp_models(models: Sequence[SurveyModel]) -> list[LampModel]:
    kinds: dict[str, LampModel] = {}
    for model in models:
        for lamp in model.lamps:
            kinds.setdefault(lamp.model.key, lamp.model)
    return list(kinds.values())


def _flux(model: LampModel, free: bool) -> Parameter:
    known = max(model.ppf_uncertainty * OF_EVEN, 1e-4)
    return Parameter(Quantity.FLUX, model.key, 0.0, -4.0, 4.0, 0.01, prior=None if free else known)


def _gains(models: Sequence[SurveyModel]) -> list[Parameter]:
    known = {model.gain_key: gain_standard(model.survey.meter) for model in models}
    return [
        Parameter(Quantity.GAIN, name, 0.0, -1.0, 1.0, 0.01, prior=max(standard, 1e-5))
        for name, standard in known.items()
    ]


def _conditions(model: SurveyModel) -> list[Parameter]:
    """What is not quite known of the conditions of one survey."""
    doubts, key = model.survey.doubts, model.survey.key
    found = []

    def add(
        quantity: Quantity, half: float, start: float, low: float, high: float, step: float
    ) -> None:
        if half > 0:
            found.append(Parameter(quantity, key, start, low, high, step, prior=half * OF_EVEN))

    add(Quantity.OUTPUT, doubts.output, 0.0, -1.0, 1.0, 0.01)
    if len(model.survey.counted) > 1:
        add(Quantity.DRIFT, *_drift(model), -1.0, 1.0, 0.01)
    add(Quantity.HEIGHT, doubts.hanging_height, 0.0, -LARGEST_LIFT_M, LARGEST_LIFT_M, 0.01)
    if model.has_board and not model.survey.open_air:
        # As it is laid in the survey's own plan, which is judged by the canopy read.
        board = min(model.plan.leaves_on(model.plan.judged_top).reflectance, BRIGHTEST_BOARD)
        add(Quantity.BOARD, doubts.board_reflectance, board, 0.0, BRIGHTEST_BOARD, 0.01)
    if model.has_door:
        add(Quantity.DOOR, doubts.door, 0.0, 0.0, 1.0, 0.02)
    return found


def _drift(model: SurveyModel) -> tuple[float, float]:
    """Half-width and start of a drift: as stated, and as holes read again tell, weighed."""
    half = model.survey.doubts.drift
    told = drift_of(model.survey)
    if told is None or half <= 0:
        return half, 0.0
    stated = half * OF_EVEN
    weight = stated**2 / (stated**2 + told.standard**2)
    return stated * math.sqrt(1 - weight) / OF_EVEN, weight * told.change


def _of_meters(models: Sequence[SurveyModel]) -> list[Parameter]:
    """What is not quite known of a meter and common to all of its surveys."""
    found: dict[tuple[Quantity, str], Parameter] = {}
    for model in models:
        doubts = model.survey.doubts
        for quantity, half, most, step in (
            (Quantity.SENSOR, doubts.sensor_height, LARGEST_LIFT_M, 0.01),
            (Quantity.COSINE, doubts.cosine, 0.3, 0.01),
        ):
            known = found.get((quantity, model.gain_key))
            prior = half * OF_EVEN
            # The survey that knows most of it counts.
            if half > 0 and (known is None or prior < (known.prior or math.inf)):
                found[quantity, model.gain_key] = Parameter(
                    quantity, model.gain_key, 0.0, -most, most, step, prior=prior
                )
    return list(found.values())


def _exponent(model: LampModel) -> Parameter:
    profile = model.profile
    start = profile.exponent if isinstance(profile, CosineProfile) else 1.0
    return Parameter(
        Quantity.EXPONENT, model.key, min(start, LARGEST_EXPONENT), 0.0, LARGEST_EXPONENT, 0.2
    )


def _falls(model: LampModel, angles: tuple[float, ...]) -> list[Parameter]:
    profile = model.profile
    exponent = profile.exponent if isinstance(profile, CosineProfile) else 1.0
    cosines = np.maximum(np.cos(np.radians(angles)), 0.02)
    starts = np.clip(-np.diff(exponent * np.log(cosines)), 0.01, LARGEST_FALL - 0.01)
    return [
        Parameter(Quantity.FALL, model.key, float(start), 0.0, LARGEST_FALL, 0.1, index=k)
        for k, start in enumerate(starts)
    ]


def _curve_angles(models: Sequence[SurveyModel]) -> tuple[float, ...]:
    """Polar angles of the curve: in steps up to the flattest a hole of open air sees."""
    flattest, holes = 0.0, 0
    for model in models:
        if not model.survey.open_air:
            continue
        holes += len(model.measured)
        for lamp in model.lamps:
            x, y = model.points[:, 0] - lamp.x, model.points[:, 1] - lamp.y
            sideways = np.hypot(x, y)
            angles = np.degrees(np.arctan2(sideways, lamp.hanging_height))
            if lamp.tilt_deg:
                ahead, aside, down = lamp.place(0.0, 0.0, -1.0)
                along = (ahead - lamp.x) * x + (aside - lamp.y) * y - down * lamp.hanging_height
                cosine = along / np.hypot(sideways, lamp.hanging_height)
                angles = np.degrees(np.arccos(np.clip(cosine, 0.0, 1.0)))
            flattest = max(flattest, float(angles.max(initial=0.0)))
    if holes < CURVE_HOLES or flattest < CURVE_ANGLE_DEG:
        raise CalibrationError(
            f"a free polar curve needs at least {CURVE_HOLES} holes in open air that see the lamp "
            f"at up to {CURVE_ANGLE_DEG:.0f}°; here are {holes}, up to {flattest:.0f}°. Fit an "
            "exponent instead, or read farther out or with the lamp lower."
        )
    count = max(2, int(flattest // CURVE_STEP_DEG))
    return tuple(k * CURVE_STEP_DEG for k in range(count + 1))


def _shifts(plan: Plan) -> list[Parameter]:
    x0, y0, x1, y1 = plan.space.bounds
    found = []
    for quantity, low, high, at in (
        (Quantity.SHIFT_X, x0, x1, [lamp.x for lamp in plan.lamps]),
        (Quantity.SHIFT_Y, y0, y1, [lamp.y for lamp in plan.lamps]),
    ):
        least = min(max(low + 0.01 - min(at), -LARGEST_SHIFT_M), -1e-3)
        most = max(min(high - 0.01 - max(at), LARGEST_SHIFT_M), 1e-3)
        found.append(Parameter(quantity, "lamps", 0.0, least, most, 0.01))
    return found


def _lining(models: Sequence[SurveyModel], key: str, freed: Freed) -> list[Parameter]:
    model = next((model for model in models if model.carries(key)), None)
    if model is None:
        raise CalibrationError(
            f"no survey was read with the lining '{key}' on a lit surface, so nothing tells its "
            "reflectance."
        )
    lining = model.plan.lining(key)
    found = []
    if key in freed.reflectance:
        start = min(max(lining.reflectance, 0.02), 0.98)
        found.append(Parameter(Quantity.REFLECTANCE, key, start, 0.0, 1.0, 0.004))
    if key in freed.specular:
        start = min(max(lining.specular_share, 0.05), 0.95)
        found.append(Parameter(Quantity.SPECULAR, key, start, 0.0, 1.0, 0.02))
    return found
