"""What is said about an estimate, as data: one sentence in words, then the figures."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

import numpy as np

from planner.estimate.canopies import called
from planner.estimate.result import Estimate, Figures, not_counted, of_canopy
from planner.language import inside, trimmed
from planner.metrics.figures import (
    COLOURS,
    FIGURES,
    LEADING,
    LOWEST,
    MINUS,
    NO_VALUE,
    WITHOUT_TARGET,
    Figure,
    banded,
    percent,
    ppfd,
)
from planner.plan.place import OWN, Place, PlaceKind, cleanness, surfaces
from planner.plan.plan import Plan
from planner.plan.target import Target
from planner.units import COVERAGE, DLI_UNIT, PPFD_UNIT, capital, format_number

if TYPE_CHECKING:
    from planner.estimate.outlook import Part, Uncertainty  # the whole core: not at the start


@dataclass(frozen=True)
class HeadlineFigure:
    """One figure ready to be shown.

    ``key`` is its name in ``Figures`` (and in exports), ``value`` its text or '–' where it
    has no meaning, ``unit`` may be empty, ``meaning`` is a plain sentence. ``spread`` is the
    half-width of its 95 % band, '± 17' in the same unit, or empty where that is not known.
    """

    key: str
    label: str
    value: str
    unit: str
    meaning: str
    spread: str = ""

    @property
    def text(self) -> str:
        """Value, band and unit together."""
        if self.value == NO_VALUE:
            return self.value
        return " ".join(part for part in (self.value, self.spread, self.unit) if part)


def sentence(estimate: Estimate, uncertainty: Uncertainty | None = None) -> str:
    """The sentence that stands over the figures: how much, how even, how long, how fitting.

    Its numbers are those of ``headline_figures`` to the digit. It begins with the canopy they are
    of, where there are several.
    """
    plan = estimate.plan
    if not plan.lamps and estimate.entered <= 0:
        return "No lamp hangs in this space yet, so it is dark."
    if plan_is_dark(estimate):
        return "All lamps are turned down to nothing, so the space is dark."
    leading = headline_figures(estimate, uncertainty, slice(LEADING))
    shown = {figure.key: figure.value for figure in leading}
    parts = [_how_much(estimate, shown)]
    if estimate.tops:
        place = estimate.place
        whose = capital(called(plan, place) if place == OWN else place.inside(plan))
        parts = [f"{whose}: {inside(parts[0])}"]
    hours, dli = plan.photoperiod_hours, shown["dli"]
    of_room = format_number(plan.space.room_hours, 2)
    if estimate.figures.photon_flux <= 0:
        parts.append(f"{of_room} h of room light give {dli} mol a day")
    elif estimate.entered > 0:
        lamps = format_number(hours, 2)
        parts.append(f"{lamps} h of lamps and {of_room} h of room light give {dli} mol a day")
    elif hours > 0:
        parts.append(f"{format_number(hours, 2)} h give {dli} mol a day")
    else:
        parts.append("with a photoperiod of 0 h no light reaches the canopy in a day")
    band = _how_fitting(estimate)
    if band:
        parts.append(band)
    return "; ".join(parts) + "."


def plan_is_dark(estimate: Estimate) -> bool:
    """Whether no photon reaches the canopy because none is emitted or comes in."""
    return estimate.figures.photon_flux <= 0 and estimate.entered <= 0


def _how_much(estimate: Estimate, shown: dict[str, str]) -> str:
    text = f"Mean {shown['mean']}"
    if estimate.figures.min_over_mean is not None:
        text += f", {_lowest_place(estimate)} {shown['min_over_mean']} % of it"
    return text


def _lowest_place(estimate: Estimate) -> str:
    """'lowest corner' where the darkest cell lies in a corner of the canopy."""
    ppfd_map = estimate.ppfd
    if ppfd_map.shape[0] < 3 or ppfd_map.shape[1] < 3:
        return LOWEST
    known = np.where(np.isfinite(ppfd_map), ppfd_map, np.inf)
    row, column = np.unravel_index(known.argmin(), known.shape)
    if not np.isfinite(known[row, column]):
        return LOWEST
    at = (float(estimate.x[column]), float(estimate.y[row]))
    reach = 1.5 * math.hypot(_step(estimate, 0), _step(estimate, 1))
    nearest = min(math.dist(at, corner) for corner in estimate.outline)
    return "lowest corner" if nearest <= reach else LOWEST


def _step(estimate: Estimate, axis: int) -> float:
    centres = estimate.x if axis == 0 else estimate.y
    return float(centres[1] - centres[0]) if len(centres) > 1 else 0.0


def _how_fitting(estimate: Estimate) -> str:
    target, figures = estimate.target, estimate.figures
    inside, under, over = figures.share_inside, figures.share_under, figures.share_over
    if target is None or inside is None:
        return ""
    crop = f" for {_crop_in_words(target.crop)}" if target.crop else " that is wanted"
    if inside >= 0.9995:
        return f"all of the canopy lies inside the band{crop}"
    if under is not None and under >= 0.9995:
        return f"all of the canopy lies under the band{crop}"
    if over is not None and over >= 0.9995:
        return f"all of the canopy lies over the band{crop}"
    rest = _rest(under, over)
    return f"{percent(inside)} of the canopy lies inside the band{crop}{rest}"


def _crop_in_words(name: str) -> str:
    """A catalogue name inside a sentence: 'Lettuce, seedlings' is 'lettuce (seedlings)'."""
    crop, _, stage = name.partition(", ")
    return f"{inside(crop)} ({stage})" if stage else inside(crop)


def _rest(under: float | None, over: float | None) -> str:
    if under is None or over is None:
        return ""
    if over < 0.0005:
        return ", the rest under it"
    if under < 0.0005:
        return ", the rest over it"
    return f", {percent(under)} under it and {percent(over)} over it"


def band_in_words(estimate: Estimate) -> str:
    """The target band with its unit, '' without a target: '180 to 260 µmol m⁻² s⁻¹'."""
    return "" if estimate.target is None else wanted_band(estimate.target)


def wanted_band(target: Target) -> str:
    """A target's band with its unit: '180 to 260 µmol m⁻² s⁻¹'."""
    unit = PPFD_UNIT if target.kind == "ppfd" else DLI_UNIT
    return f"{format_number(target.low, 2)} to {format_number(target.high, 2)} {unit}"


def wanted_sentence(estimate: Estimate) -> str:
    """What the target asks for, as PPFD too where it is a band of DLI; '' without one."""
    target, hours = estimate.target, estimate.plan.photoperiod_hours
    if target is None:
        return ""
    text = f"Wanted: {band_in_words(estimate)}"
    band = estimate.band
    if target.kind == "dli" and band is not None:
        text += f", which is {ppfd(band[0])} to {ppfd(band[1])} {PPFD_UNIT} over "
        text += f"{format_number(hours, 2)} h"
        if estimate.entered > 0:
            text += f" with {format_number(estimate.plan.space.room_hours, 2)} h of room light"
    return text + "."


def headline_figures(
    estimate: Estimate, uncertainty: Uncertainty | None = None, part: slice = slice(None)
) -> tuple[HeadlineFigure, ...]:
    """All figures in the order they are shown, or ``part`` of them; the first four lead.

    With the plan's ``uncertainty`` those it speaks of carry their 95 % band and its causes.
    """
    known = None if plan_is_dark(estimate) else uncertainty
    shown = [
        figure
        for figure in FIGURES
        if figure.key != "canopy_area"
        and not (figure.key in COLOURS and figure.of(estimate.figures) is None)
    ]
    return tuple(_headline(figure, estimate, known) for figure in shown[part])


def _headline(figure: Figure, estimate: Estimate, known: Uncertainty | None) -> HeadlineFigure:
    plan, value = estimate.plan, figure.of(estimate.figures)
    meaning = figure.sentence(plan.photoperiod_hours, band_in_words(estimate))
    if figure.key == "share_inside" and estimate.target is None:
        meaning = WITHOUT_TARGET
    plain = HeadlineFigure(figure.key, figure.name, figure.number(value), figure.unit, meaning)
    standard = getattr(known, figure.key, 0.0) if known is not None else 0.0
    if known is None or value is None or standard <= 0 or plain.value == NO_VALUE:
        return plain
    if figure.key in {"mean", "minimum"}:
        meaning += causes(known, figure.key)
    elif figure.key == "dli":
        share = value / estimate.figures.mean if estimate.figures.mean > 0 else 0.0
        meaning += causes(known, "mean", share)
    text, half = figure.banded(value, standard, COVERAGE)
    return replace(plain, value=text, meaning=meaning, spread=f"± {half}")


DIFFERENTLY: Final = (
    "The options are judged by different canopies: each one's figures are those of its own choice."
)


ALL_TOGETHER: Final = "All canopies together"


def judged_sentence(plan: Plan, place: Place) -> str:
    """Which canopy figures are of, where that is not the plan's own; '' where it is."""
    if place == OWN:
        return ""
    return f"Figures are those of {place.inside(plan)}, by which the plan is judged."


def canopy_sentences(estimate: Estimate) -> tuple[str, ...]:
    """What each canopy gets and what all of them get together; () where there is only one.

    Where the plan is judged by one that an obstacle carries it is said which.
    """
    return tuple(of_canopy(*one) for one in each_canopy(estimate)) if estimate.tops else ()


def each_canopy(estimate: Estimate) -> tuple[tuple[str, Figures], ...]:
    """Every canopy by name with its figures, and all together."""
    named = []
    for one in estimate.canopies:
        name = one.place.title(estimate.plan)
        if one.place == estimate.place != OWN:
            name = f"{name} (the plan is judged by it)"
        named.append((name, one.figures))
    return (*named, (ALL_TOGETHER, estimate.overall))


def worn(plan: Plan) -> list[str]:
    """What age, dust and dirt leave of lamps and walls, in a few words each."""
    lamps = enumerate(plan.lamps)
    found = [
        f"{inside(Place(PlaceKind.LAMP, k).words(plan))} gives {percent(lamp.kept)} of new"
        for k, lamp in lamps
        if lamp.kept < 1
    ]
    return found + [
        f"{inside(place.words(plan))} returns {percent(cleanness(plan, place))} of clean"
        for place in surfaces(plan)
        if cleanness(plan, place) < 1
    ]


def as_old(plan: Plan) -> str:
    """How old and clean everything is taken, to begin a sentence."""
    if worn(plan):
        return "Linings are as dirty and lamps as old and dusty as entered"
    return "Linings are clean and lamps shine as stated"


LEAST_CLOSURE: Final = 1e-5
"""A smaller remainder of the photon balance has no digits of its own."""


def closure_sentence(estimate: Estimate) -> str:
    """How well the photons add up, in words."""
    if plan_is_dark(estimate):
        return "No photons are emitted, so there is no balance to strike."
    if abs(estimate.closure) < LEAST_CLOSURE:
        return (
            f"Photon balance: absorbed and escaped light differ from what is emitted by less than "
            f"{LEAST_CLOSURE * 100:g} %."
        )
    return (
        f"Photon balance: absorbed and escaped light differ from what is emitted by "
        f"{estimate.closure * 100:+.3f} %."
    ).replace("by -", f"by {MINUS}")


def numeric_sentence(estimate: Estimate) -> str:
    """How well the sums themselves are done, in words; '' where that is not known."""
    error = estimate.numeric_error
    if error is None or plan_is_dark(estimate):
        return ""
    return f"The sums themselves are good to about {percent(error)} in each cell of the map."


def recount_sentence(estimate: Estimate) -> str:
    """Whether the photons counted beside the estimate tell the same; '' where none were."""
    count = estimate.recount
    if count is None or plan_is_dark(estimate):
        return ""
    difference = count.difference(estimate.figures)
    chance = count.standard_error / count.flux if count.flux > 0 else 0.0
    if count.beyond_chance(estimate.figures) > 0:
        side = "more" if difference > 0 else "less"
        return (
            f"Photons counted by independent means disagree: the map holds "
            f"{percent(abs(difference))} {side} light than they bring (their chance: "
            f"{percent(chance)}). Do not rely on it to better than that."
        )
    return (
        f"Photons counted by independent means agree with the mean of the map "
        f"(to {percent(max(abs(difference), chance))}, within their chance)."
    )


# -- Where the 95 % band of a figure comes from, in words ------------------------------

NAMED: Final = 4
"""How many causes are told by name; the rest are counted."""

LEFT_OUT: Final = not_counted()


def causes(uncertainty: Uncertainty, figure: str, scale: float = 1.0) -> str:
    """Where the band of ``mean`` or ``minimum`` comes from, the weightiest cause first.

    ``scale`` turns µmol m⁻² s⁻¹ into the unit of the figure. Empty without any cause.
    """
    weights = [
        (_weight(part, figure) * scale, part.label) for part in weighty(uncertainty.parts, figure)
    ]
    if not weights:
        return ""
    told = [f"{label} (± {_two_digits(COVERAGE * weight)})" for weight, label in weights[:NAMED]]
    more = len(weights) - NAMED
    if more > 0:
        told.append(f"{more} smaller one{'' if more == 1 else 's'}")
    return (
        f" The ± covers 95 % of what the inputs leave open: {', '.join(told)}; "
        f"their squares add up. {LEFT_OUT}"
    )


_WEIGHTY: Final = 0.01
"""What gives less than such a share of the weightiest is nothing beside it: squares add up."""


def weighty(parts: Sequence[Part], figure: str = "mean") -> tuple[Part, ...]:
    """The parts of a doubt of ``mean`` or ``minimum`` that count, the weightiest first."""
    ordered = sorted(parts, key=lambda part: -_weight(part, figure))
    least = _WEIGHTY * _weight(ordered[0], figure) if ordered else 0.0
    return tuple(part for part in ordered if _weight(part, figure) > least)


def _weight(part: Part, figure: str) -> float:
    return part.minimum if figure == "minimum" else part.mean


def _two_digits(value: float) -> str:
    text = banded(0.0, value)[1]
    return trimmed(text) if value < 1 else text
