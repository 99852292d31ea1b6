"""What would help most, in words: another output of the lamps, and which surface to line first."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

import numpy as np

from planner.estimate.result import Estimate, FloatArray, measured_by
from planner.language import inside, trimmed
from planner.metrics.figures import banded, percent
from planner.plan import edits
from planner.plan.place import OWN, Place, PlaceKind
from planner.plan.plan import Plan
from planner.units import COVERAGE, PPFD_UNIT, capital

if TYPE_CHECKING:
    from planner.estimate.outlook import Uncertainty
    from planner.estimate.sensitivity import SurfaceGain, WallLight


WORTH_TELLING = 0.05
"""Gain in the share of area below which a change is not worth the words."""


@dataclass(frozen=True)
class Dimming:
    """All lamps turned to ``factor`` times their present output, and the share inside then.

    That of all canopies which have a band, each inside its own.
    """

    factor: float
    share_inside: float


def best_dimming(estimate: Estimate) -> Dimming | None:
    """The common factor on all outputs that brings most area of all canopies into their bands.

    Exact but for the size of the cells, because light adds up: the map is proportional to
    the output, but for the light of the room, which counts as even. No lamp goes above 100 %, and
    no canopy loses for the gain of another. None without a target or light, where a lamp cannot
    be dimmed, or where nothing worth telling is gained.
    """
    plan = estimate.plan
    outputs = [lamp.output_percent for lamp in plan.lamps]
    banded = [one for one in estimate.canopies if one.band is not None]
    if not banded or not outputs or max(outputs) <= 0 or not plan.dimmable:
        return None
    ppfd = np.concatenate([one.ppfd[one.inside] for one in banded])
    area = np.concatenate([one.cell_area[one.inside] for one in banded])
    if not area.sum() > 0:
        return None
    counts = [int(one.inside.sum()) for one in banded]
    low, high = np.repeat([one.band for one in banded], counts, axis=0).T
    # Steps of a per cent of the brightest lamp's output: finer than a dial can be set.
    factors = np.arange(1, 101) / max(outputs)
    entered = np.minimum(np.repeat([one.entered for one in banded], counts), ppfd)
    scaled = factors[:, None] * (ppfd - entered) + entered
    starts = np.cumsum([0, *counts])[:-1]

    def within(light: FloatArray) -> FloatArray:
        """Area of each canopy inside its band, by cells in the last axis."""
        found: FloatArray = np.add.reduceat(
            ((light >= low) & (light <= high)) * area, starts, axis=-1
        )
        return found

    each, before = within(scaled), within(ppfd)
    loses = (each < before - WORTH_TELLING * np.add.reduceat(area, starts)).any(axis=1)
    shares = np.where(loses, 0.0, each.sum(axis=1) / area.sum())
    now, highest = float(before.sum() / area.sum()), float(shares.max())
    if highest < now + WORTH_TELLING:
        return None
    # Of equally good outputs the middle one: it leaves room on both sides.
    best = np.flatnonzero(shares >= highest - 1e-9)
    return Dimming(float(factors[best[len(best) // 2]]), min(highest, 1.0))


def turned(plan: Plan, factor: float) -> Plan:
    """The plan with every lamp at ``factor`` times its present output, in whole per cent."""

    def output(percent_now: float) -> float:
        return min(float(round(percent_now * factor)), 100.0)

    return edits.each_lamp(
        plan, lambda lamp: lamp.model_copy(update={"output_percent": output(lamp.output_percent)})
    )


def shortage(estimate: Estimate) -> float | None:
    """How many times the mean light at full output the middle of the band asks for.

    None without a target or light, and where some of the canopy can reach the band.
    """
    plan = estimate.plan
    band = estimate.band
    outputs = [lamp.output_percent for lamp in plan.lamps]
    if band is None or not outputs or max(outputs) <= 0:
        return None
    inside = np.isfinite(estimate.ppfd)
    entered = np.minimum(estimate.entered, estimate.ppfd[inside])
    full = (estimate.ppfd[inside] - entered) * 100 / max(outputs) + entered
    if not full.size or not 0 < float(full.max()) < band[0]:
        return None
    mean = float(np.average(full, weights=estimate.cell_area[inside]))
    return (band[0] + band[1]) / 2 / mean


def advice(estimate: Estimate) -> str:
    """A sentence on what would help most, or '' where nothing simple would."""
    dimming = best_dimming(estimate)
    if dimming is None:
        missing = shortage(estimate)
        if missing is None or not np.isfinite(missing):
            return _without_dimmer(estimate)
        times = f"{missing:.0f}" if missing >= 9.5 else f"{missing:.1f}"
        return (
            f"Even at full output no spot reaches the band; its middle needs about {times} times "
            "this light: hang more or stronger lamps, or hang them lower."
        )
    outputs = {lamp.output_percent for lamp in estimate.plan.lamps}
    share = percent(dimming.share_inside)
    if len(outputs) == 1:
        lamps = "the lamp" if len(estimate.plan.lamps) == 1 else "all lamps"
        setting = f"{lamps} at {outputs.pop() * dimming.factor:.0f} % output"
    else:
        setting = f"all lamps at {percent(dimming.factor)} of their present output"
    if estimate.tops:
        return f"With {setting}, {share} of all canopies would lie inside their bands."
    return f"With {setting}, {share} of the canopy would lie inside the band."


def _without_dimmer(estimate: Estimate) -> str:
    """Where the light is too much for lamps that cannot be dimmed, what is left to do."""
    plan, over = estimate.plan, estimate.figures.share_over
    if plan.dimmable or over is None or over < WORTH_TELLING:
        return ""
    lamps = "the lamp" if len(plan.lamps) == 1 else "the lamps"
    return (
        f"{percent(over)} of the canopy lies over the band, and {lamps} cannot be dimmed: hang "
        f"{lamps} higher, or light fewer hours a day where the band is one of DLI."
    )


# -- Which surface to line first, in words ---------------------------------------------

POINTS: Final = 0.1
"""The step of reflectance that is told: ten points."""

LEAST: Final = 0.05
"""Gains of the mean below this (µmol m⁻² s⁻¹) are not worth a line."""


@dataclass(frozen=True)
class LiningGain:
    """What more reflectance of one surface would bring.

    ``name`` says the place ('Wall 2', 'Wall 4, band 1'); ``points`` the reflectance it can gain, at
    most ten points (0.1); ``mean`` and ``minimum`` what that brings in µmol m⁻² s⁻¹.
    """

    name: str
    place: Place
    points: float
    mean: float
    minimum: float

    @property
    def sentence(self) -> str:
        """Such as 'Wall 2: +10 points of reflectance bring +12 µmol m⁻² s⁻¹ to the mean, ...'."""
        return (
            f"{self.name}: +{self.points * 100:.0f} points of reflectance bring "
            f"{signed(self.mean)} {PPFD_UNIT} to the mean, {signed(self.minimum)} to the minimum."
        )


def lining_gains(plan: Plan, gains: Sequence[SurfaceGain]) -> tuple[LiningGain, ...]:
    """The surfaces worth a line, the best for the mean first, equals in the order of places."""
    found = [_told(plan, gain) for gain in gains]
    kept = [gain for gain in found if gain.points >= 0.005 and gain.mean >= LEAST]
    # Where the same figures stand, the digits behind them are no reason for an order.
    return tuple(sorted(kept, key=lambda g: (-_shown(g.mean), -_shown(g.minimum), g.place)))


def _shown(gain: float) -> float:
    """A gain to the figures of ``signed``."""
    return float(np.format_float_positional(gain, 2, fractional=False))


def _told(plan: Plan, gain: SurfaceGain) -> LiningGain:
    points = min(POINTS, max(1 - gain.reflectance, 0.0))
    return LiningGain(
        name=gain.place.words(plan),
        place=gain.place,
        points=points,
        mean=gain.mean_per_unit * points,
        minimum=gain.minimum,
    )


def signed(value: float) -> str:
    """A change with its sign, to two figures and at most a tenth: '+12', '−0.4', '+0'."""
    text = trimmed(banded(0.0, abs(value), 1)[1]) if abs(value) >= LEAST else "0"
    return f"{'−' if value < 0 else '+'}{text}"


def brought_sentence(name: str, mean: float, minimum: float) -> str:
    """What a lining would bring: 'Foil: +12 µmol m⁻² s⁻¹ to the mean, +8 to the minimum'."""
    return f"{name}: {signed(mean)} {PPFD_UNIT} to the mean, {signed(minimum)} to the minimum"


# -- How sure it is at a place, and what would narrow that most --------------------------


def doubt_sentence(known: Uncertainty, light: float, band: tuple[float, float] | None) -> str:
    """How sure the light at a place is, on which side of the band, and what narrows it most.

    The relative uncertainty of the mean stands for that of every place.
    """
    spread = known.relative_mean * light
    shown, half = banded(light, COVERAGE * spread, 0)
    if not half:
        return f"Here {shown} {PPFD_UNIT}, and nothing about it is in doubt."
    text = f"Here {shown} ± {half}"
    if band is not None:
        text += f", {_odds(light, spread, band)}"
    first = known.parts[0] if known.parts else None
    measured = "" if first is None else measured_by(first.quantity, first.label)
    if first is None or not measured:
        return f"{text}."
    rest = math.sqrt(max(known.mean**2 - first.mean**2, 0.0)) / known.mean * spread
    measured = capital(measured)
    narrowed = banded(light, COVERAGE * rest, 0)[1] or "0"
    return f"{text}. {measured} narrows it most, at best to ± {narrowed}."


def _odds(light: float, spread: float, band: tuple[float, float]) -> str:
    """On which side of a band the light likely is: 'inside the band with 8 in 10'."""

    def below(level: float) -> float:
        return 0.5 * (1 + math.erf((level - light) / (spread * math.sqrt(2))))

    sides = {
        "under": below(band[0]),
        "inside": below(band[1]) - below(band[0]),
        "over": 1 - below(band[1]),
    }
    side, odds = max(sides.items(), key=lambda item: item[1])
    if odds >= 0.975:
        return f"surely {side} the band"
    return f"{side} the band with {max(round(odds * 10), 1)} in 10"


# -- What one wall does ------------------------------------------------------------------


def wall_sentence(found: WallLight) -> str:
    """What came by way of a wall, and what more reflectance or another lining would bring."""
    plan, place = found.plan, Place(PlaceKind.WALL, found.wall)
    name = place.words(plan)
    if found.lining is not None and found.brought is not None:
        brought = signed(found.mean(found.brought))
        return f"{found.lining.name} on {inside(name)}: {brought} {PPFD_UNIT} to the mean."
    came = percent(found.share)
    text = f"{name}: {came} of the canopy's light met it on the way"
    if found.canopy.place != OWN:
        text = f"{name}: {came} of the light on {found.canopy.place.inside(plan)} met it on the way"
    more = found.mean(found.points)
    if more < LEAST:
        return f"{text}."
    return f"{text}; ten points more of reflectance bring {signed(more)} {PPFD_UNIT} to the mean."
