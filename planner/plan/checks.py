"""Findings: what deserves a second thought in a plan that is valid as it stands.

Findings are data: how serious, one sentence, and what they are about. They advise and
never refuse. On safety they use general words and leave the last one to makers'
instructions, local codes and licensed practice.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from enum import StrEnum
from typing import Final

from planner.plan.lamp import Lamp
from planner.plan.lining import Caution, Lining
from planner.plan.place import Place, PlaceKind, above_own, lining_at, reach, surfaces
from planner.plan.plan import Plan
from planner.plan.space import (
    TOUCH_M,
    Obstacle,
    outlines_distance,
    outlines_overlap,
    segment_distance,
    sticks_out,
)
from planner.plan.target import DliTarget
from planner.units import PPFD_UNIT, LengthUnit, in_unit, said_length

CLOSE_TO_CANOPY_M: Final = 0.05
CLOSE_TO_LINING_M: Final = 0.10
DENSE_WATTS_PER_M2: Final = 800.0
"""Above this a plan is denser than even fruiting crops are lit (250-500 W/m² is usual)."""
STRONG_PPFD: Final = 1500.0
"""Above this a target nears full sun (about 2000 µmol m⁻² s⁻¹) and is hard to reach indoors."""
LEAST_DARK_HOURS: Final = 4.0
HIGHEST_EFFICACY: Final = 4.1
"""µmol/J, the limit for blue and red LEDs (Kusuma, Pattison, Bugbee 2020, Hortic. Res. 7:56)."""
SAME_LEVEL_M: Final = 0.02
CLOSE_TO_TOP: Final = "lamp-close-to-top"
UNLIT: Final = "judged-unlit"

DEFERS: Final = "The lamp maker's instructions and the local codes come first."
ELECTRICIAN: Final = "Leave mains wiring to a licensed electrician working to the local code."


class Severity(StrEnum):
    """How much a finding matters."""

    NOTE = "note"
    CAUTION = "caution"
    WARNING = "warning"


@dataclass(frozen=True)
class Finding:
    """One observation: a stable key, how serious it is, a sentence, and its place."""

    key: str
    severity: Severity
    sentence: str
    where: Place = field(default_factory=Place)


_RANK: Final = {Severity.WARNING: 0, Severity.CAUTION: 1, Severity.NOTE: 2}


def findings(plan: Plan, unit: LengthUnit = LengthUnit.CM) -> tuple[Finding, ...]:
    """Everything about a plan that deserves a second thought, the gravest first."""
    found = [
        *_about_lamps(plan),
        *_about_obstacles(plan),
        *_about_linings(plan),
        *_about_power(plan),
        *_about_hours(plan),
        *_about_target(plan),
    ]
    found = [replace(one, sentence=in_unit(one.sentence, unit)) for one in found]
    return tuple(sorted(found, key=lambda finding: _RANK[finding.severity]))


def _named(index: int, lamp: Lamp) -> str:
    return f"Lamp {index + 1} ('{lamp.label or lamp.model.name}')"


# -- lamps ------------------------------------------------------------------------------


def clashes(plan: Plan) -> frozenset[str]:
    """Keys of what stands in the way of the lamps: each other, walls, obstacles, leaves on them."""
    found = _about_lamps(plan)
    return frozenset(
        one.key for one in found if one.severity is Severity.WARNING or one.key == CLOSE_TO_TOP
    )


def _about_lamps(plan: Plan) -> Iterator[Finding]:
    if not plan.lamps:
        yield Finding("no-lamp", Severity.NOTE, "No lamp hangs in the space yet; add one.")
    for index, lamp in enumerate(plan.lamps):
        yield from _about_lamp(plan, index, lamp)
    for first, one in enumerate(plan.lamps):
        for second in range(first + 1, len(plan.lamps)):
            other = plan.lamps[second]
            if _one_level(one, other) and outlines_overlap(one.outline(), other.outline()):
                yield Finding(
                    "lamps-overlap",
                    Severity.WARNING,
                    f"Lamps {first + 1} and {second + 1} take up the same place; "
                    "move one of them aside.",
                    Place(PlaceKind.LAMP, second),
                )


def _one_level(one: Lamp, other: Lamp) -> bool:
    """Whether two lamps hang at one height; tilted ones with all that they reach up and down."""
    apart = other.hanging_height - one.hanging_height
    if not (one.tilt_deg or other.tilt_deg):
        return abs(apart) < SAME_LEVEL_M
    (low, high), (bottom, top) = one.rise, other.rise
    return low < apart + top and apart + bottom < high


def _about_lamp(plan: Plan, index: int, lamp: Lamp) -> Iterator[Finding]:
    where = Place(PlaceKind.LAMP, index)
    if sticks_out(lamp.outline(), plan.space.footprint):
        yield Finding(
            "lamp-through-wall",
            Severity.WARNING,
            f"{_named(index, lamp)} sticks out through a wall; move it, turn it, or choose a "
            "smaller one.",
            where,
        )
    over = lamp.hanging_height + lamp.rise[0]
    if over < CLOSE_TO_CANOPY_M:
        yield Finding(
            "lamp-close-to-canopy",
            Severity.CAUTION,
            f"{_named(index, lamp)} hangs {said_length(over)} {above_own(plan)}: "
            "leaves may scorch, and the light is very uneven. Keep at least "
            f"{said_length(CLOSE_TO_CANOPY_M)}. "
            f"{DEFERS}",
            where,
        )
    for number, obstacle in enumerate(plan.obstacles, start=1):
        if _hides(obstacle, lamp, plan.lamp_height(lamp)):
            yield Finding(
                "lamp-inside-obstacle",
                Severity.WARNING,
                f"{_named(index, lamp)} hangs inside obstacle {number} ('{obstacle.name}'): its "
                "light cannot come out. Move one of them.",
                where,
            )
        above = plan.lamp_height(lamp) + lamp.rise[0] - obstacle.top
        grows = obstacle.canopy is not None and outlines_overlap(lamp.outline(), obstacle.outline())
        if grows and 0 <= above < CLOSE_TO_CANOPY_M:
            yield Finding(
                CLOSE_TO_TOP,
                Severity.CAUTION,
                f"{_named(index, lamp)} hangs {said_length(above)} above the canopy on obstacle "
                f"{number} ('{obstacle.name}'): leaves may scorch, and the light is very uneven. "
                f"Keep at least {said_length(CLOSE_TO_CANOPY_M)}. {DEFERS}",
                where,
            )
    efficacy = lamp.model.ppf / lamp.model.watts
    if efficacy > HIGHEST_EFFICACY:
        yield Finding(
            "efficacy-too-good",
            Severity.CAUTION,
            f"{_named(index, lamp)} would give {efficacy:.1f} µmol per joule; the best LED "
            f"fixtures cannot pass {HIGHEST_EFFICACY:g}. Check its photon flux and watts.",
            where,
        )
    if lamp.output_percent == 0:
        yield Finding(
            "lamp-off",
            Severity.NOTE,
            f"{_named(index, lamp)} is dimmed to 0 % and gives no light.",
            where,
        )


def _hides(obstacle: Obstacle, lamp: Lamp, face: float) -> bool:
    """Whether the middle of a lamp's face lies within an obstacle."""
    if not obstacle.underside < face < obstacle.top:
        return False
    along, across = obstacle.off_middle(lamp.x, lamp.y)
    return along < obstacle.length / 2 and across < obstacle.width / 2


def _about_obstacles(plan: Plan) -> Iterator[Finding]:
    for index, obstacle in enumerate(plan.obstacles):
        where = Place(PlaceKind.OBSTACLE, index)
        named = f"Obstacle {index + 1} ('{obstacle.name}')"
        if sticks_out(obstacle.outline(), plan.space.footprint):
            yield Finding(
                "obstacle-through-wall",
                Severity.WARNING,
                f"{named} sticks out through a wall; move it, turn it, or make it smaller.",
                where,
            )
        if plan.canopy.closed and obstacle.top <= plan.canopy.height:
            yield Finding(
                "obstacle-below-canopy",
                Severity.NOTE,
                f"{named} lies below the closed canopy, where no light comes.",
                where,
            )
        if index == plan.judged_top:
            yield from _about_judged(plan, obstacle, where)
        for number, other in enumerate(plan.obstacles[:index], start=1):
            high = min(obstacle.top, other.top) - max(obstacle.underside, other.underside)
            if high > TOUCH_M and outlines_overlap(obstacle.outline(), other.outline()):
                yield Finding(
                    "obstacles-overlap",
                    Severity.CAUTION,
                    f"{named} and obstacle {number} ('{other.name}') take up the same place: "
                    "move one of them.",
                    where,
                )


def _about_judged(plan: Plan, obstacle: Obstacle, where: Place) -> Iterator[Finding]:
    """Where no light can fall on the canopy that a plan is judged by."""
    named = Place(PlaceKind.TOP, where.index).inside(plan)
    on_it = (
        k
        for k, other in enumerate(plan.obstacles)
        if other.underside <= obstacle.top < other.top
        and not sticks_out(obstacle.outline(), other.outline())
    )
    standing = next(on_it, None)
    if plan.canopy.closed and obstacle.top <= plan.canopy.height:
        why = "it lies below the closed canopy"
    elif obstacle.top >= plan.space.height - TOUCH_M:
        why = "it touches the ceiling"
    elif standing is not None:
        why = f"{Place(PlaceKind.OBSTACLE, standing).inside(plan)} stands on all of it"
    else:
        return
    yield Finding(
        UNLIT,
        Severity.WARNING,
        f"The plan is judged by {named}, but no light can fall there: {why}. Figures that "
        "name no canopy are those of the plan's own.",
        where,
    )


# -- linings ----------------------------------------------------------------------------


def distance(plan: Plan, place: Place, lamp: Lamp) -> float:
    """How far a place that carries a lining is from the lit face of a lamp, in metres.

    0 where they meet; a lamp over the floor or under the ceiling is only as far as it is high.
    """
    outline, beside = lamp.outline(), 0.0
    if place.kind is PlaceKind.WALL:
        beside = segment_distance(outline, *plan.space.wall(place.index))
    elif place.kind is PlaceKind.OBSTACLE:
        beside = outlines_distance(outline, plan.obstacles[place.index].outline())
    low, high = reach(plan, place)
    height = plan.lamp_height(lamp)
    bottom, top = lamp.rise if lamp.tilt_deg else (0.0, 0.0)
    return math.hypot(beside, max(low - height - top, height + bottom - high, 0.0))


def _about_linings(plan: Plan) -> Iterator[Finding]:
    """One finding for each lining and caution, at the surface nearest to a lamp."""
    for lining in plan.linings:
        covered = [one for one in surfaces(plan) if lining_at(plan, one) == lining]
        if covered:
            near = tuple(_near_lamps(plan, lining, covered))
            yield from near
            told = any(finding.key == "conducts-near-lamp" for finding in near)
            yield from _anywhere(lining, covered[0], conducts=not told)


def _near_lamps(plan: Plan, lining: Lining, covered: list[Place]) -> Iterator[Finding]:
    apart, index, where = min(
        (
            (distance(plan, place, lamp), index, place)
            for place in covered
            for index, lamp in enumerate(plan.lamps)
        ),
        default=(math.inf, 0, covered[0]),
    )
    if apart >= CLOSE_TO_LINING_M:
        return
    place = f"'{lining.name}' on {where.inside(plan)} is {said_length(apart)} from lamp {index + 1}"
    if Caution.BURNS in lining.cautions or Caution.MELTS in lining.cautions:
        verb = "burn" if Caution.BURNS in lining.cautions else "melt"
        yield Finding(
            "burns-near-lamp",
            Severity.CAUTION,
            f"{place} and can {verb}: leave more room or take another lining there. {DEFERS}",
            where,
        )
    if Caution.CONDUCTS in lining.cautions:
        yield Finding(
            "conducts-near-lamp",
            Severity.WARNING,
            f"{place} and conducts electricity: it can bridge live parts or a damaged cable. Keep "
            f"it off terminals, plugs and drivers. {ELECTRICIAN}",
            where,
        )


def _anywhere(lining: Lining, where: Place, *, conducts: bool) -> Iterator[Finding]:
    if conducts and Caution.CONDUCTS in lining.cautions:
        yield Finding(
            "conducts",
            Severity.CAUTION,
            f"'{lining.name}' conducts electricity: let none of it touch terminals, plugs, drivers "
            f"or cable entries. {ELECTRICIAN}",
            where,
        )
    if Caution.HOT_SPOTS in lining.cautions:
        yield Finding(
            "hot-spots",
            Severity.NOTE,
            f"'{lining.name}' may focus light where it is curved or creased: look at plants, "
            "cables and linings after the first hour.",
            where,
        )
    if Caution.HOLDS_MOISTURE in lining.cautions:
        yield Finding(
            "holds-moisture",
            Severity.NOTE,
            f"'{lining.name}' soaks up water and may grow mould: keep the air moving and dry what "
            "gets wet within a day or two.",
            where,
        )


# -- power, hours, target ---------------------------------------------------------------


def _about_power(plan: Plan) -> Iterator[Finding]:
    density = plan.watts / plan.space.area
    if density > DENSE_WATTS_PER_M2:
        yield Finding(
            "dense-power",
            Severity.WARNING,
            f"The lamps take {density:.0f} W per m² of floor, more than {DENSE_WATTS_PER_M2:.0f} "
            "W/m². Nearly all of it ends as heat in the space: check watts and size, and plan for "
            f"moving air. {DEFERS}",
        )


def _about_hours(plan: Plan) -> Iterator[Finding]:
    hours = plan.photoperiod_hours
    dark = 24.0 - hours
    if dark < LEAST_DARK_HOURS:
        night = "no dark hours" if dark <= 0 else f"only {dark:.3g} dark hours"
        yield Finding(
            "short-night",
            Severity.CAUTION,
            f"A photoperiod of {hours:.3g} h leaves {night} a day. Tomato leaves are harmed by "
            "light around the clock, and many fruiting crops want a night: keep 4-6 h dark unless "
            "the crop is known to bear it.",
        )
    if hours == 0 and plan.lamps:
        yield Finding(
            "no-hours",
            Severity.CAUTION,
            "The photoperiod is 0 h: the lamps never light, and the DLI is 0. "
            "Set the hours of light a day.",
        )


def _about_target(plan: Plan) -> Iterator[Finding]:
    target, by = plan.wanted, plan.judged_top
    where = Place(PlaceKind.CANOPY) if by is None else Place(PlaceKind.OBSTACLE, by)
    if target is None:
        yield Finding(
            "no-target",
            Severity.NOTE,
            "No target is set: choose a crop or a band of PPFD or DLI to see where the light "
            "falls short. Such bands are guidance, not a pass or a fail.",
            where,
        )
        return
    band = target.ppfd_band(plan.photoperiod_hours)
    if band is not None and band[0] > STRONG_PPFD:
        remedy = (
            "more hours a day need less at a time"
            if isinstance(target, DliTarget)
            else "check the band"
        )
        yield Finding(
            "strong-target",
            Severity.CAUTION,
            f"The target asks for at least {band[0]:.0f} {PPFD_UNIT}, near the full sun's 2000: "
            f"{remedy}.",
            where,
        )
