"""Calibrations as the page uses them: what to free, the work, and the way into the plan."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from planner.app.fields.shelf import Shelf
from planner.app.jobs import Cancelled, Job, Progress
from planner.app.pages.survey.board_edits import light_only, used_in_plan
from planner.plan.lining import Lining
from planner.plan.plan import Plan
from planner.plan.survey import Survey

if TYPE_CHECKING:
    from planner.estimate.calibrate import LeftOut
    from planner.estimate.calibrate_parameters import Freed
    from planner.estimate.calibrate_result import Calibration
    from planner.estimate.evaluate import Cache

_PIECES = 400


@dataclass(frozen=True)
class Wish:
    """What is asked of a fit: the surveys, and what may change."""

    surveys: tuple[Survey, ...]
    flux: bool = True
    profile: str = "exponent"
    shift: bool = False
    reflectance: tuple[str, ...] = ()
    specular: tuple[str, ...] = ()

    def freed(self) -> Freed:
        """The wish in the words of the fit."""
        from planner.estimate.calibrate_parameters import Freed  # noqa: PLC0415 - heavy

        return Freed(
            flux=self.flux,
            exponent=self.profile == "exponent",
            curve=self.profile == "curve",
            shift=self.shift,
            reflectance=self.reflectance,
            specular=self.specular,
        )


@dataclass(frozen=True, eq=False)
class Answer:
    """A calibration, and the plan it was made for."""

    plan: Plan
    wish: Wish
    calibration: Calibration

    def fits(self, plan: Plan) -> bool:
        """Whether the plan still is the one that was calibrated, surveys apart."""
        return light_only(self.plan) == light_only(plan)


def linings_told(plan: Plan, surveys: Sequence[Survey]) -> tuple[Lining, ...]:
    """Linings a fit of these surveys could tell of, each once: theirs, then the plan's."""
    found: dict[str, Lining] = {}
    for survey in surveys:
        if survey.lining is not None and not survey.open_air:
            found.setdefault(survey.lining.key, survey.lining)
    if any(survey.lining is None for survey in surveys):
        keys = [band.lining for cover in plan.walls for band in cover.bands]
        for key in dict.fromkeys([*keys, plan.ceiling]):
            lining = plan.lining(key)
            if not lining.is_opening:
                found.setdefault(key, lining)
    return tuple(found.values())


def proposed(plan: Plan, surveys: Sequence[Survey]) -> Wish:
    """What these surveys can tell: lamps from open air, linings from lined spaces."""
    open_air = any(survey.open_air for survey in surveys)
    keys = [lining.key for lining in linings_told(plan, surveys)]
    named = [s.lining.key for s in surveys if s.lining is not None and not s.open_air]
    reflectance = tuple(dict.fromkeys(named)) if named or open_air else tuple(keys[:1])
    return Wish(
        tuple(surveys),
        flux=open_air,
        profile="exponent" if open_air else "as it is",
        reflectance=reflectance,
    )


def fit_job(plan: Plan, wish: Wish, kept: dict[str, Cache]) -> Job:
    """The work of fitting; raises ``CalibrationError`` with a sentence.

    ``kept`` holds pieces of former fits, for speed; for one thread only.
    """

    def work(progress: Progress, cancelled: Cancelled) -> Answer:
        from planner.estimate.calibrate import calibrate  # noqa: PLC0415 - heavy
        from planner.estimate.evaluate import Cache  # noqa: PLC0415 - heavy

        found = calibrate(
            plan,
            wish.surveys,
            wish.freed(),
            progress=progress,
            cancelled=cancelled,
            cache=kept.setdefault("fit", Cache(limit=_PIECES)),
        )
        return Answer(plan, wish, found)

    return work


def leave_out_job(plan: Plan, wish: Wish) -> Job:
    """The work of predicting each survey from the others."""

    def work(progress: Progress, cancelled: Cancelled) -> tuple[LeftOut, ...]:
        from planner.estimate.calibrate import leave_one_out  # noqa: PLC0415 - heavy

        # What can be freed differs from one set of surveys to the next, so it is left open.
        return leave_one_out(plan, wish.surveys, progress=progress, cancelled=cancelled)

    return work


def taken_into(plan: Plan, answer: Answer) -> Plan:
    """The plan with what was calibrated; the surveys' own copies of the linings follow."""
    from planner.estimate.calibrate_model import Quantity  # noqa: PLC0415 - heavy

    found = answer.calibration
    of_lining = {Quantity.REFLECTANCE, Quantity.SPECULAR}
    keys = dict.fromkeys(f.of for f in found.fitted if f.quantity in of_lining)
    known: dict[str, Lining] = {
        survey.lining.key: survey.lining for survey in plan.surveys if survey.lining is not None
    }
    covers: list[tuple[str, object]] = []
    for key, entry in zip(keys, found.linings, strict=True):
        old = known.get(key)
        if old is not None:
            covers.append((key, entry.model_copy(update={"key": key, "name": old.name})))
    return used_in_plan(plan, found.plan, covers)


def keep(answer: Answer, shelf: Shelf) -> tuple[str, ...]:
    """Keep calibrated lamps and linings among the user's own; returns their names.

    Raises
    ------
    planner.catalogue.library.CatalogueError
        If one cannot be kept; the message says why.
    """
    for lamp in answer.calibration.lamps:
        shelf.save_lamp(lamp)
    for lining in answer.calibration.linings:
        shelf.save_lining(lining)
    lamps = tuple(lamp.name for lamp in answer.calibration.lamps)
    return lamps + tuple(lining.name for lining in answer.calibration.linings)
