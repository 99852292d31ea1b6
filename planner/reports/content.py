"""What is said about an estimate, as data: one sentence in words, then the figures."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from planner.estimate.result import Estimate
from planner.reports import bands
from planner.units import format_number

if TYPE_CHECKING:
    from planner.estimate.uncertainty import Uncertainty

MINUS = "−"


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


NO_VALUE = "–"
PPFD_UNIT = "µmol m⁻² s⁻¹"
DLI_UNIT = "mol m⁻² d⁻¹"


def sentence(estimate: Estimate) -> str:
    """The sentence that stands over the figures: how much, how even, how long, how fitting."""
    plan, figures = estimate.plan, estimate.figures
    if not plan.lamps:
        return "No lamp hangs in this space yet, so it is dark; hang one to see its light."
    if plan_is_dark(estimate):
        return "All lamps are turned down to nothing, so the space is dark."
    parts = [_how_much(estimate)]
    hours = plan.photoperiod_hours
    if hours > 0:
        parts.append(f"{format_number(hours, 2)} h give {significant(figures.dli)} mol a day")
    else:
        parts.append("with a photoperiod of 0 h no light reaches the canopy in a day")
    band = _how_fitting(estimate)
    if band:
        parts.append(band)
    return "; ".join(parts) + "."


def plan_is_dark(estimate: Estimate) -> bool:
    """Whether no photon reaches the canopy because none is emitted."""
    return estimate.figures.photon_flux <= 0


def _how_much(estimate: Estimate) -> str:
    figures = estimate.figures
    text = f"Mean {ppfd(figures.mean)}"
    if figures.min_over_mean is not None:
        text += f", {_lowest_place(estimate)} {percent(figures.min_over_mean)} of it"
    return text


def _lowest_place(estimate: Estimate) -> str:
    """'lowest corner' where the darkest cell lies in a corner of the footprint."""
    ppfd_map = estimate.ppfd
    if ppfd_map.shape[0] < 3 or ppfd_map.shape[1] < 3:
        return "lowest spot"
    flat = [
        (float(value), row, column)
        for row, values in enumerate(ppfd_map)
        for column, value in enumerate(values)
        if math.isfinite(value)
    ]
    if not flat:
        return "lowest spot"
    _, row, column = min(flat)
    at = (float(estimate.x[column]), float(estimate.y[row]))
    reach = 1.5 * math.hypot(_step(estimate, 0), _step(estimate, 1))
    nearest = min(math.dist(at, corner) for corner in estimate.plan.space.footprint)
    return "lowest corner" if nearest <= reach else "lowest spot"


def _step(estimate: Estimate, axis: int) -> float:
    centres = estimate.x if axis == 0 else estimate.y
    return float(centres[1] - centres[0]) if len(centres) > 1 else 0.0


def _how_fitting(estimate: Estimate) -> str:
    target, figures = estimate.plan.target, estimate.figures
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
    if crop[1:2].islower():
        crop = crop[0].lower() + crop[1:]
    return f"{crop} ({stage})" if stage else crop


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
    target = estimate.plan.target
    if target is None:
        return ""
    unit = PPFD_UNIT if target.kind == "ppfd" else DLI_UNIT
    return f"{significant(target.low)} to {significant(target.high)} {unit}"


def wanted_sentence(estimate: Estimate) -> str:
    """What the target asks for, as PPFD too where it is a band of DLI; '' without one."""
    target, hours = estimate.plan.target, estimate.plan.photoperiod_hours
    if target is None:
        return ""
    text = f"Wanted: {band_in_words(estimate)}"
    band = target.ppfd_band(hours)
    if target.kind == "dli" and band is not None:
        text += f", which is {ppfd(band[0])} to {ppfd(band[1])} {PPFD_UNIT} over "
        text += f"{format_number(hours, 2)} h"
    return text + "."


def headline_figures(
    estimate: Estimate, uncertainty: Uncertainty | None = None
) -> tuple[HeadlineFigure, ...]:
    """All figures in the order they are shown; the first four are the leading ones.

    With the plan's ``uncertainty`` those it speaks of carry their 95 % band and its causes.
    """
    plain = _plain_figures(estimate)
    if uncertainty is None or plan_is_dark(estimate):
        return plain
    return tuple(_with_band(figure, estimate, uncertainty) for figure in plain)


def _with_band(
    figure: HeadlineFigure, estimate: Estimate, uncertainty: Uncertainty
) -> HeadlineFigure:
    """The figure with its band, if the uncertainty tells one."""
    figures = estimate.figures
    standard = {
        "mean": uncertainty.mean,
        "minimum": uncertainty.minimum,
        "maximum": uncertainty.maximum,
        "dli": uncertainty.dli,
        "min_over_mean": 100 * uncertainty.min_over_mean,
    }.get(figure.key, 0.0)
    value = getattr(figures, figure.key)
    if standard <= 0 or value is None or figure.value == NO_VALUE:
        return figure
    unit, meaning = figure.unit, figure.meaning
    if figure.key == "min_over_mean":
        value, unit, most = 100 * value, "%", 0
    elif figure.key == "dli":
        most = 1 if value >= 9.95 else 2
        share = figures.dli / figures.mean if figures.mean > 0 else 0.0
        meaning += bands.causes(uncertainty, "mean", share)
    else:
        most = 0 if value >= 9.95 else 1
        meaning += bands.causes(uncertainty, figure.key) if figure.key != "maximum" else ""
    text, half = bands.banded(value, bands.half_width(standard), most)
    return replace(figure, value=text, unit=unit, meaning=meaning, spread=f"± {half}")


def _plain_figures(estimate: Estimate) -> tuple[HeadlineFigure, ...]:
    """The figures without their bands."""
    figures, plan = estimate.figures, estimate.plan
    band = band_in_words(estimate)
    wanted = f"the target band ({band})" if band else "the target band"
    hours = format_number(plan.photoperiod_hours, 2)
    return (
        HeadlineFigure(
            "mean", "Mean", ppfd(figures.mean), PPFD_UNIT,
            "Photons of 400–700 nm that reach each square metre of the canopy every second, "
            "averaged over its area (PPFD).",
        ),
        HeadlineFigure(
            "min_over_mean", "Min / mean", percent(figures.min_over_mean), "",
            "How even the light is: the darkest cell as a share of the mean; 100 % is "
            "perfectly even.",
        ),
        HeadlineFigure(
            "dli", "DLI", significant(figures.dli), DLI_UNIT,
            f"Photons a square metre of the canopy gathers in a day of {hours} h of light "
            "(daily light integral).",
        ),
        HeadlineFigure(
            "share_inside", "Inside band", percent(figures.share_inside), "",
            f"Share of the canopy's area whose light lies inside {wanted}."
            if plan.target is not None
            else "Share of the canopy's area inside the target band; this plan has no target.",
        ),
        HeadlineFigure(
            "minimum", "Lowest", ppfd(figures.minimum), PPFD_UNIT,
            "PPFD of the darkest cell of the map.",
        ),
        HeadlineFigure(
            "maximum", "Highest", ppfd(figures.maximum), PPFD_UNIT,
            "PPFD of the brightest cell of the map.",
        ),
        HeadlineFigure(
            "min_over_max", "Min / max", percent(figures.min_over_max), "",
            "The darkest cell as a share of the brightest.",
        ),
        HeadlineFigure(
            "cv", "Variation", percent(figures.cv), "",
            "Standard deviation of the light over the canopy as a share of the mean "
            "(coefficient of variation); 0 % is perfectly even.",
        ),
        HeadlineFigure(
            "share_under", "Under band", percent(figures.share_under), "",
            f"Share of the canopy's area that gets less light than {wanted}.",
        ),
        HeadlineFigure(
            "share_over", "Over band", percent(figures.share_over), "",
            f"Share of the canopy's area that gets more light than {wanted}.",
        ),
        HeadlineFigure(
            "utilisation", "Utilisation", percent(figures.utilisation), "",
            "Photons arriving at the canopy plane as a share of those the lamps emit; light "
            "that returns to the plane after a reflection counts again.",
        ),
        HeadlineFigure(
            "photon_flux", "Photon flux", significant(figures.photon_flux), "µmol s⁻¹",
            "Photons of 400–700 nm all lamps emit together each second, at the output set.",
        ),
        HeadlineFigure(
            "efficacy", "Efficacy", significant(figures.efficacy), "µmol J⁻¹",
            "Photons the lamps emit for each joule of electricity.",
        ),
        HeadlineFigure(
            "watts", "Power", significant(figures.watts), "W",
            "Electrical power of all lamps at the output set.",
        ),
        HeadlineFigure(
            "watts_per_m2", "Power per area", significant(figures.watts_per_m2), "W m⁻²",
            "Electrical power for each square metre of canopy.",
        ),
        HeadlineFigure(
            "kwh_per_day", "Energy", significant(figures.kwh_per_day), "kWh per day",
            f"Electricity the lamps use in a day of {hours} h of light.",
        ),
    )  # fmt: skip


def ppfd(value: float) -> str:
    """PPFD to the unit, below 10 to a tenth."""
    if not math.isfinite(value):
        return NO_VALUE
    return f"{value:.0f}" if value >= 9.95 else format_number(value, 1)


def percent(fraction: float | None) -> str:
    """A share as '61 %'; near nothing and near all of it to a tenth of a per cent."""
    if fraction is None or not math.isfinite(fraction):
        return NO_VALUE
    value = 100 * fraction
    if 0 < value < 0.05:
        return "under 0.1 %"
    if 0 < value < 9.95 or 99.5 <= value < 99.95:
        return f"{format_number(value, 1)} %"
    return f"{value:.0f} %"


def significant(value: float | None, digits: int = 3) -> str:
    """A number to three figures in plain notation: 0.123, 10.7, 2.5, 212, 1520."""
    if value is None or not math.isfinite(value):
        return NO_VALUE
    if value == 0:
        return "0"
    decimals = max(0, digits - 1 - math.floor(math.log10(abs(value))))
    return format_number(value, min(decimals, 6)).replace("-", MINUS)


def closure_sentence(estimate: Estimate) -> str:
    """How well the photons add up, in words."""
    if plan_is_dark(estimate):
        return "No photons are emitted, so there is no balance to strike."
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
