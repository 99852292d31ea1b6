"""Side by side: the plan and its variants, each with its map and figures.

``compare`` estimates them all; the rest reads the result: maps of difference and ratio. The
table of options is made by ``options``; how sure a difference is says ``odds``.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import Final

import numpy as np

from planner.estimate.evaluate import Cache, Cancelled, evaluate
from planner.estimate.result import Estimate, EstimateOptions, FloatArray, of_plan
from planner.estimate.scene import build_scene
from planner.plan.changes import said
from planner.plan.edits import line_all_walls, line_ceiling
from planner.plan.lining import OPENING
from planner.plan.lit import lit
from planner.plan.plan import Plan
from planner.plan.variant_edits import free_name
from planner.units import LengthUnit

OPEN_AIR_NAME: Final = "Open air (no walls)"


class Origin(StrEnum):
    """Where a side of a comparison comes from."""

    PLAN = "plan"
    VARIANT = "variant"
    OPEN_AIR = "open air"


Identity = tuple[Origin, str | None]
"""What tells a side from the others, whatever it is called and wherever it stands."""
PLAN_SIDE: Final[Identity] = (Origin.PLAN, None)
OPEN_AIR_SIDE: Final[Identity] = (Origin.OPEN_AIR, None)


@dataclass(frozen=True)
class Side:
    """One of the things compared.

    ``said`` says what differs from the plan, ``problems`` what could not be estimated;
    ``estimate`` is None where nothing could be. ``key`` is that of the variant.
    """

    name: str
    origin: Origin
    plan: Plan
    said: tuple[str, ...] = ()
    problems: tuple[str, ...] = ()
    estimate: Estimate | None = None
    key: str | None = None

    @property
    def identity(self) -> Identity:
        """What tells this side from the others."""
        return self.origin, self.key


@dataclass(frozen=True)
class Comparison:
    """The plan first, its variants in their order, and open air last where asked."""

    sides: tuple[Side, ...]

    def side(self, name: str) -> Side:
        """A side by its name; raises ``KeyError`` when there is none."""
        for side in self.sides:
            if side.name == name:
                return side
        raise KeyError(f"nothing called '{name}' is compared here.")

    @property
    def colour_range(self) -> tuple[float, float]:
        """Lowest and highest PPFD of all maps, for one shared colour scale."""
        found = [side.estimate.figures for side in self.sides if side.estimate is not None]
        if not found:
            return 0.0, 1.0
        return min(f.minimum for f in found), max(f.maximum for f in found)


def open_air(plan: Plan) -> Plan:
    """The same lamps over the same canopy without walls and ceiling."""
    return line_ceiling(line_all_walls(plan, OPENING), OPENING)


def sides_of(
    plan: Plan, *, with_open_air: bool = False, unit: LengthUnit = LengthUnit.CM
) -> tuple[Side, ...]:
    """What there is to compare in a plan, without any estimate yet."""
    sides = [Side(plan.name, Origin.PLAN, plan)]
    for variant in plan.variants:
        option = plan.with_setup(variant.setup).model_copy(update={"name": variant.name})
        texts = said(plan, option, unit)
        sides.append(Side(variant.name, Origin.VARIANT, option, texts, key=variant.key))
    if with_open_air:
        texts = ("no walls, no ceiling",)
        sides.append(Side(OPEN_AIR_NAME, Origin.OPEN_AIR, open_air(plan), texts))
    named: list[Side] = []
    for side in sides:  # a variant may be called as the plan is
        name = free_name([one.name for one in named], side.name)
        named.append(side if name == side.name else replace(side, name=name))
    return tuple(named)


def compare(
    plan: Plan,
    options: EstimateOptions | None = None,
    *,
    with_open_air: bool = False,
    unit: LengthUnit = LengthUnit.CM,
    cache: Cache | None = None,
    progress: Callable[[float], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
    so_far: Callable[[Comparison], None] | None = None,
) -> Comparison:
    """Estimate the plan and all its variants.

    ``so_far`` is given what is there after each of them. One that cannot be estimated (no
    surface takes up light) says so in its ``problems``; the others go on.

    Raises
    ------
    planner.estimate.evaluate.Cancelled
        If ``cancelled`` said so.
    """
    options = options or EstimateOptions()
    cache = cache or Cache()
    sides = list(sides_of(plan, with_open_air=with_open_air, unit=unit))
    # Those with the same mirrors one after another: they share the paths of light.
    order = sorted(range(len(sides)), key=lambda k: _paths_of(sides[k].plan))
    for done, index in enumerate(order):
        if cancelled is not None and cancelled():
            raise Cancelled
        sides[index] = estimated(sides[index], options, cache, cancelled)
        if so_far is not None:
            so_far(Comparison(tuple(sides)))
        if progress is not None:
            progress((done + 1) / len(sides))
    return Comparison(tuple(sides))


def served(
    known: Comparison, plan: Plan, *, with_open_air: bool, unit: LengthUnit
) -> Comparison | None:
    """The comparison of a plan from the light of an earlier one; None where some is missing.

    Names, words and figures are those of the plan; nothing is computed.
    """
    light = {lit(side.plan): side for side in known.sides}
    sides = []
    for side in sides_of(plan, with_open_air=with_open_air, unit=unit):
        there = light.get(lit(side.plan))
        if there is None:
            return None
        estimate = None if there.estimate is None else of_plan(there.estimate, side.plan)
        sides.append(replace(side, problems=there.problems, estimate=estimate))
    return Comparison(tuple(sides))


def _paths_of(plan: Plan) -> str:
    scene = build_scene(plan)
    return repr((scene.room, scene.optics.specular, scene.optics.width))


def estimated(
    side: Side,
    options: EstimateOptions,
    cache: Cache,
    cancelled: Callable[[], bool] | None = None,
) -> Side:
    """The side with its estimate, or with the reason why there is none."""
    try:
        estimate = evaluate(side.plan, options, cache=cache, cancelled=cancelled)
    except ValueError as error:
        problems = (*side.problems, f"'{side.name}' cannot be estimated: {error}")
        return replace(side, problems=problems)
    return replace(side, estimate=estimate)


# -- maps against a baseline ------------------------------------------------------------


@dataclass(frozen=True)
class AgainstMap:
    """A map against a baseline on the grid of the first: NaN where either has no light value.

    ``difference`` in µmol m⁻² s⁻¹ and ``ratio`` (1 = the same), shapes (ny, nx); the ratio
    is NaN also where the baseline is dark.
    """

    x: FloatArray
    y: FloatArray
    difference: FloatArray
    ratio: FloatArray

    @property
    def reach(self) -> float:
        """The largest difference either way, for a colour map that diverges from 0."""
        found = np.abs(self.difference[np.isfinite(self.difference)])
        return float(found.max()) if found.size else 0.0


def against(estimate: Estimate, baseline: Estimate) -> AgainstMap:
    """Difference and ratio of two maps, place by place.

    Where the grids differ (another footprint) both are read in the middles of the first's
    cells.
    """
    own, other = estimate.ppfd, baseline.ppfd
    same = own.shape == other.shape
    if not (same and np.allclose(estimate.x, baseline.x) and np.allclose(estimate.y, baseline.y)):
        points = np.stack(np.meshgrid(estimate.x, estimate.y), axis=-1).reshape(-1, 2)
        read = np.where(baseline.map.covers(points), baseline.map.at(points), np.nan)
        other = read.reshape(own.shape)
        own = np.where(estimate.map.valid, estimate.map.at(points).reshape(own.shape), np.nan)
    with np.errstate(divide="ignore", invalid="ignore"):
        ratio = np.where(other > 0, own / other, np.nan)
    return AgainstMap(estimate.x, estimate.y, own - other, ratio)
