"""What follows an estimate when there is time: how sure it is, and what would help most."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from planner.estimate.recount import recount
from planner.estimate.result import EstimateOptions, Quality, Recount
from planner.estimate.sensitivity import LINED, Reckoner, SurfaceGain, gains_from
from planner.estimate.uncertainty import Uncertainty, uncertainty_from
from planner.metrics.photons import daily_light_integral
from planner.plan.plan import Plan

_CELLS = 12
"""Cells along a side that suffice for derivatives."""


@dataclass(frozen=True)
class Outlook:
    """Uncertainty of the figures of a plan and the worth of each surface's reflectance.

    ``gains`` is sorted by what they bring to the mean; the canopy, which nobody lines, is
    left out. ``recount`` is the light on the canopy once more, by independent means. Both
    it and ``uncertainty`` are None for a dark plan.
    """

    plan: Plan
    uncertainty: Uncertainty | None
    gains: tuple[SurfaceGain, ...]
    recount: Recount | None = None


def outlook_of_plan(found: Outlook, plan: Plan) -> Outlook:
    """An outlook as that of a plan of the same light and doubts; only the DLI's may differ."""
    known = found.uncertainty
    if known is not None:
        dli = daily_light_integral(known.mean, plan.photoperiod_hours)
        known = replace(known, dli=dli)
    return replace(found, plan=plan, uncertainty=known)


def outlook(
    plan: Plan,
    *,
    progress: Callable[[float], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> Outlook:
    """Reckon the outlook of a plan at preview quality on a small map.

    Raises
    ------
    planner.estimate.evaluate.Cancelled
        If ``cancelled`` said so.
    """
    options = EstimateOptions(cells=(_CELLS, _CELLS), quality=Quality.PREVIEW)

    def first_half(fraction: float) -> None:
        if progress is not None:
            progress(fraction / 2)

    def second_half(fraction: float) -> None:
        if progress is not None:
            progress(0.5 + fraction / 2)

    # One reckoner, so that derivatives wanted by both are computed once.
    reckoner = Reckoner(plan, options, cancelled)
    band = uncertainty_from(reckoner, first_half)
    if band is None:
        return Outlook(plan, None, ())
    gains = gains_from(reckoner, second_half)
    lined = tuple(gain for gain in gains if gain.place.kind in LINED)
    return Outlook(plan, band, lined, recount(plan, cancelled=cancelled))
