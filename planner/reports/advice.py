"""The one change of output that would bring most of the canopy into its band."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from planner.estimate.result import Estimate
from planner.reports.content import percent

WORTH_TELLING = 0.05
"""Gain in the share of area below which a change is not worth the words."""


@dataclass(frozen=True)
class Dimming:
    """All lamps turned to ``factor`` times their present output, and the share inside then."""

    factor: float
    share_inside: float


def best_dimming(estimate: Estimate) -> Dimming | None:
    """The common factor on all outputs that brings most area into the band.

    Exact but for the size of the cells, because light adds up: the map is proportional to
    the output. No lamp goes above 100 %. None without a target or light, or where nothing
    worth telling is gained.
    """
    plan = estimate.plan
    outputs = [lamp.output_percent for lamp in plan.lamps]
    target = plan.target
    band = None if target is None else target.ppfd_band(plan.photoperiod_hours)
    if band is None or not outputs or max(outputs) <= 0:
        return None
    inside = np.isfinite(estimate.ppfd)
    ppfd, area = estimate.ppfd[inside], estimate.cell_area[inside]
    if not area.sum() > 0:
        return None
    # Steps of a per cent of the brightest lamp's output: finer than a dial can be set.
    factors = np.arange(1, 101) / max(outputs)
    scaled = factors[:, None] * ppfd[None, :]
    shares = ((scaled >= band[0]) & (scaled <= band[1])) @ area / area.sum()
    now = float(((ppfd >= band[0]) & (ppfd <= band[1])) @ area / area.sum())
    highest = float(shares.max())
    if highest < now + WORTH_TELLING:
        return None
    # Of equally good outputs the middle one: it leaves room on both sides.
    best = np.flatnonzero(shares >= highest - 1e-9)
    return Dimming(float(factors[best[len(best) // 2]]), min(highest, 1.0))


def advice(estimate: Estimate) -> str:
    """A sentence on the output that would help most, or '' where none would."""
    dimming = best_dimming(estimate)
    if dimming is None:
        return ""
    outputs = {lamp.output_percent for lamp in estimate.plan.lamps}
    share = percent(dimming.share_inside)
    if len(outputs) == 1:
        lamps = "the lamp" if len(estimate.plan.lamps) == 1 else "all lamps"
        setting = f"{lamps} at {outputs.pop() * dimming.factor:.0f} % output"
    else:
        setting = f"all lamps at {percent(dimming.factor)} of their present output"
    return f"With {setting}, {share} of the canopy would lie inside the band."
