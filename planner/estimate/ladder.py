"""The ladder of heights: what the light would be with lamps hung at each of a row of heights.

For the hand that raises a lamp: one stops where the light lies in the band. Of one height to
the next only the light of the lamps raised changes; room, mirrors, balance and all other lamps
are pieces kept in the ``Cache``.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Final

import numpy as np

from planner.estimate.evaluate import Cache, evaluate
from planner.estimate.result import QUICK, EstimateOptions
from planner.light.cellmap import round_values
from planner.plan.dials import dial
from planner.plan.edits import change_lamp
from planner.plan.lit import Depends, depends
from planner.plan.place import Place, PlaceKind, band_at
from planner.plan.plan import Plan
from planner.plan.tiers import canopy_under, counted_from
from planner.units import LengthUnit

_RUNGS: Final = 12


@dataclass(frozen=True)
class Rung:
    """The light at one height over the canopy: metres, mean and lowest PPFD in µmol m⁻² s⁻¹."""

    height: float
    mean: float
    minimum: float

    @property
    def min_over_mean(self) -> float | None:
        """Lowest over mean PPFD; None in the dark."""
        return self.minimum / self.mean if self.mean > 0 else None

    def against(self, band: tuple[float, float] | None) -> int | None:
        """-1 where the mean is under a band, 0 inside and 1 over it; None without one."""
        if band is None:
            return None
        return -1 if self.mean < band[0] else 1 if self.mean > band[1] else 0


@dataclass(frozen=True)
class Ladder:
    """Rungs from the lowest height up, for lamps (by index) raised together in a plan.

    Heights count from the canopy that the first of them stands over, whose light is told;
    ``entered`` of it comes from the room.
    """

    plan: Plan
    lamps: tuple[int, ...]
    rungs: tuple[Rung, ...]
    entered: float = 0.0

    def at(self, height: float) -> Rung | None:
        """The light at a height between two rungs; None outside them."""
        if len(self.rungs) < 2:
            return None
        heights = [rung.height for rung in self.rungs]
        if not heights[0] - 1e-9 <= height <= heights[-1] + 1e-9:
            return None
        mean = np.interp(height, heights, [rung.mean for rung in self.rungs])
        minimum = np.interp(height, heights, [rung.minimum for rung in self.rungs])
        return Rung(height, float(mean), float(minimum))

    def fits(self, plan: Plan) -> bool:
        """Whether it tells of a plan too: the same but for the heights of these lamps."""
        return self._climbed == climbed(plan, self.lamps)

    @property
    def canopy(self) -> Place:
        """The canopy it tells of."""
        return canopy_under(self.plan, self.plan.lamps[self.lamps[0]])

    def wanted(self, plan: Plan) -> tuple[float, float] | None:
        """The band wanted there in µmol m⁻² s⁻¹; None where none can be told."""
        return band_at(plan, self.canopy, self.entered)

    @cached_property
    def _climbed(self) -> Depends | None:
        return climbed(self.plan, self.lamps)


def climbed(plan: Plan, lamps: Sequence[int]) -> Depends | None:
    """What a ladder depends on: the light of the plan with these lamps at one fixed height."""
    if not lamps or max(lamps) >= len(plan.lamps):
        return None
    level = min(0.01, plan.headroom)

    def held(one: Plan) -> Plan:
        # No plan to build: a tilted lamp has no room there.
        hung = {"hanging_height": level}
        fixed = tuple(
            lamp.model_copy(update=hung) if k in lamps else lamp for k, lamp in enumerate(one.lamps)
        )
        return one.model_copy(update={"lamps": fixed})

    return depends(plan, held, figures=False)


def rungs_between(plan: Plan, lamps: Sequence[int], unit: LengthUnit) -> tuple[float, ...]:
    """Round heights in metres, in the unit shown, between the lowest and the highest sound one."""
    # Together they hang at one height, whatever each stands over.
    from_own = [counted_from(plan, plan.lamps[k]) for k in lamps]
    ups = [up - from_own[0] for up in from_own]
    rooms = [dial("height").sound_in(plan, Place(PlaceKind.LAMP, k)) for k in lamps]
    low = max(room.minimum + up for room, up in zip(rooms, ups, strict=True))
    high = min(room.maximum + up for room, up in zip(rooms, ups, strict=True))
    if high <= low:
        return ()
    found = round_values(low / unit.metres, high / unit.metres, _RUNGS)
    inside = [height * unit.metres for height in found]
    return tuple(sorted({round(height, 6) for height in (low, *inside, high)}))


def ladder(
    plan: Plan,
    lamps: Sequence[int],
    heights: Sequence[float],
    options: EstimateOptions = QUICK,
    *,
    cache: Cache | None = None,
    progress: Callable[[float], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> Ladder:
    """The light with some lamps hung at each of these heights (metres), all else as it is.

    Raises
    ------
    ValueError
        If a lamp cannot hang at one of the heights.
    planner.estimate.evaluate.Cancelled
        If ``cancelled`` said so.
    """
    cache = cache or Cache()
    rungs, canopy, entered = [], canopy_under(plan, plan.lamps[lamps[0]]), 0.0
    for done, height in enumerate(heights, start=1):
        hung = _hung(plan, lamps, height)
        light = evaluate(hung, options, cache=cache, cancelled=cancelled).on(canopy)
        rungs.append(Rung(height, light.figures.mean, light.figures.minimum))
        entered = light.entered  # comes in at the door, wherever the lamps hang
        if progress is not None:
            progress(done / len(heights))
    return Ladder(plan, tuple(lamps), tuple(rungs), entered)


def _hung(plan: Plan, lamps: Sequence[int], height: float) -> Plan:
    """The plan with all of these lamps as high as the first of them so far over its canopy."""
    height = height + counted_from(plan, plan.lamps[lamps[0]])
    for k in lamps:
        plan = change_lamp(plan, k, hanging_height=round(height, 9))
    return plan
