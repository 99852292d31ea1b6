"""The canopies beside the one a plan is judged by: where the light on each stands to its own band.

Whoever turns lamps for one canopy turns them for all that stand in the same light, as trays of two
heights do. Tiers of a rack that have lamps of their own are told of only where they change.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from planner.plan.place import OWN, Place
from planner.plan.tiers import sharing

if TYPE_CHECKING:  # read by the workers of a sweep before anything heavy is
    from planner.estimate.result import Estimate, Figures
    from planner.plan.plan import Plan, Setup

NEAR: Final = 1e-3
"""A mean this near to an end of its band, relative, is inside it."""
MOVED: Final = 0.02
"""The light of another tier has changed where its mean differs by more than this, relative."""


@dataclass(frozen=True)
class Standing:
    """The mean light on a canopy and the band wanted there, both in µmol m⁻² s⁻¹.

    ``shared`` says that it stands in the light of the lamps over the canopy judged.
    """

    place: Place
    mean: float
    band: tuple[float, float]
    shared: bool = True

    @property
    def short(self) -> float:
        """By which fraction of the nearer end of its band the mean misses it; 0 inside."""
        return missed_by(self.mean, self.band)

    def words(self, plan: Setup) -> str:
        """Such as 'Tray at the back over its band'."""
        name = called(plan, self.place)
        return f"{name} over its band" if self.mean > self.band[1] else f"{name} under its band"


def missed_by(value: float, band: tuple[float, float]) -> float:
    """By which fraction of the nearer end of a band a value misses it; 0 inside or next to it."""
    low, high = band
    if low * (1 - NEAR) <= value <= high * (1 + NEAR):
        return 0.0
    return 1 - value / low if value < low else value / high - 1 if high > 0 else 1.0


def called(plan: Setup, place: Place) -> str:
    """A canopy by the name of what carries it, with its number where two are called the same."""
    if place == OWN:
        return "the plan's own canopy"
    names = [one.name for one in plan.obstacles]
    name = names[place.index]
    return name if names.count(name) == 1 else f"{name} (obstacle {place.index + 1})"


def standings(estimate: Estimate | None) -> tuple[Standing, ...]:
    """Where all canopies stand but the one judged, as far as a band is wanted on them."""
    if estimate is None or not estimate.tops:
        return ()
    near = sharing(estimate.plan)
    return tuple(
        Standing(one.place, one.figures.mean, band, one.place in near)
        for one in estimate.canopies
        if one.place != estimate.place and (band := one.band) is not None
    )


def lit_together(own: Estimate) -> Estimate:
    """An estimate by the plan's own canopy, power per area and utilisation told of all canopies.

    All lamps together light all of them; by the area of one a rack would take 500 W m⁻².
    """
    if not own.tops:
        return own
    power, used = own.overall.watts_per_m2, own.overall.utilisation

    def told(figures: Figures) -> Figures:
        return replace(figures, watts_per_m2=power, utilisation=used)

    tops = tuple(replace(top, figures=told(top.figures)) for top in own.tops)
    return replace(own, figures=told(own.figures), tops=tops)


def out_of_band(
    plan: Setup, found: Sequence[Standing], before: Sequence[Standing] | None = None
) -> str:
    """Which of some canopies lie out of their bands, in one clause; '' where none does.

    Of tiers with lamps of their own those are told only whose light is not what it was ``before``.
    """
    was = {one.place: one.mean for one in before or ()}
    told = [
        one.words(plan)
        for one in found
        if one.short and (one.shared or before is None or _moved(one, was.get(one.place)))
    ]
    return "; ".join(told)


def _moved(one: Standing, mean: float | None) -> bool:
    return mean is None or abs(one.mean - mean) > MOVED * max(mean, one.mean)


def beside(estimate: Estimate | None, base: Estimate | None, plan: Plan) -> str:
    """``out_of_band`` of a plan's estimate against that of another one."""
    before = None if base is None or base is estimate else standings(base)
    return out_of_band(plan, standings(estimate), before)
