"""Every figure of an estimate, once: its name, unit, words, digits and place in the order.

Whoever shows, writes or exports a figure reads it here, so that it has one name and one
rounding wherever it is met. Digits: with an uncertainty, two of its half-width and the value
to the same place (JCGM 100:2008, 7.2.6); without one, three significant digits, which is what
the usual uncertainty of ten to twenty per cent leaves (a rule of this program, no source).
Light of the whole (PPFD) never shows more than whole numbers from 10 on and tenths below.
What the plan itself says (watts, photon flux) keeps its whole part. Last, how figures are
worked out.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum
from typing import Final

import numpy as np
import numpy.typing as npt

from planner.language import decimal
from planner.units import (
    DLI_UNIT,
    EFFICACY_UNIT,
    FLUX_UNIT,
    MICROMOLES_PER_MOLE,
    PPFD_UNIT,
    SECONDS_PER_HOUR,
    format_number,
)

MINUS: Final = "−"
NO_VALUE: Final = "–"
LOWEST: Final = "lowest spot"
"""What the darkest cell of a map is called in sentences."""
LEADING: Final = 4
"""How many of ``FIGURES`` lead: they are shown large."""


class Digits(Enum):
    """By which rule a figure is rounded where no uncertainty is known."""

    LIGHT = "three significant, at most units from 10 on and tenths below"
    DOSE = "three significant, at most tenths from 10 on and hundredths below"
    SHARE = "whole per cent; tenths near nothing and near all"
    GIVEN = "three significant, never rounded to tens"


@dataclass(frozen=True)
class Figure:
    """One figure.

    ``key`` is its name in ``Figures`` and in exports, ``column`` the unit as a column's
    heading may hold it, ``words`` a sentence with ``{hours}`` and ``{band}`` to fill in.
    """

    key: str
    name: str
    unit: str
    column: str
    digits: Digits
    words: str

    @property
    def map_name(self) -> str:
        """What a map of it shows."""
        return "PPFD" if self.key == "mean" else self.name

    @property
    def map_unit(self) -> str:
        """The unit of such a map: of a share also what it is part of."""
        whole = _WHOLES.get(self.key)
        return self.unit if whole is None else f"% of {whole}"

    def on_map(self, value: float) -> str:
        """A value of such a map, which is in the unit shown, as it is read at a place."""
        said = f"{self.written(value)} {self.map_unit}"
        return said if self.key == "mean" else f"{self.map_name} {said}"

    def of(self, figures: object) -> float | None:
        """The figure among ``Figures``, in its canonical unit (shares as fractions of 1)."""
        value: float | None = getattr(figures, self.key)
        return value

    @property
    def scale(self) -> float:
        """How many of the unit shown a canonical one is: shares are shown in per cent."""
        return 100.0 if self.digits is Digits.SHARE else 1.0

    def shown(self, value: float | None) -> float | None:
        """A canonical value in the unit shown."""
        return None if value is None else self.scale * value

    def number(self, value: float | None) -> str:
        """The digits of a canonical value, without its unit; '–' where there is none."""
        return self.written(self.shown(value))

    def written(self, at: float | None) -> str:
        """The digits of a value that is in the unit shown."""
        if at is None or not math.isfinite(at):
            return NO_VALUE
        if self.digits is Digits.SHARE:
            return _per_cent(at)
        if self.digits is Digits.GIVEN or at <= 0:
            return significant(at)
        return _fixed(at, min(2 - _magnitude(at, 2), self.most_decimals(at)))

    def aligned(self, values: Sequence[float | None]) -> tuple[str, ...]:
        """Digits of canonical values under one another: light with the fewest decimals of any."""
        shown = [self.shown(value) for value in values]
        known = [one for one in shown if one is not None and math.isfinite(one) and one > 0]
        if not known or self.digits not in {Digits.LIGHT, Digits.DOSE}:
            return tuple(map(self.written, shown))
        most = min(min(2 - _magnitude(one, 2), self.most_decimals(one)) for one in known)
        return tuple(
            decimal(f"{one:.{most}f}") if most >= 0 and one in known else self.written(one)
            for one in shown
        )

    def text(self, value: float | None) -> str:
        """The value with its unit."""
        number = self.number(value)
        return number if number == NO_VALUE else f"{number} {self.unit}".strip()

    def banded(self, value: float, standard: float, coverage: float) -> tuple[str, str]:
        """Digits of a canonical value and of its half-width, ``coverage`` standard ones."""
        at = value * self.scale
        return banded(at, coverage * standard * self.scale, self.most_decimals(at))

    def most_decimals(self, shown: float) -> int:
        """Decimals that are never exceeded."""
        if self.digits is Digits.SHARE:
            return 0
        if self.digits is Digits.GIVEN:
            return 6
        return (1 if self.digits is Digits.DOSE else 0) + (shown < 9.95)

    def heading(self) -> str:
        """Name and unit as a table's heading has them."""
        return f"{self.name} ({self.unit})"

    def sentence(self, hours: float, band: str = "") -> str:
        """What it means, for a plan of so many lit hours and a target band in words."""
        wanted = f"the target band ({band})" if band else "the target band"
        return self.words.format(hours=format_number(hours, 2), band=wanted)


FIGURES: Final = (
    Figure(
        "mean", "Mean", PPFD_UNIT, "umol_m2_s", Digits.LIGHT,
        "Photons of 400–700 nm that reach each square metre of the canopy every second, "
        "averaged over its area (PPFD).",
    ),
    Figure(
        "min_over_mean", "Min / mean", "%", "", Digits.SHARE,
        "How even the light is: the darkest cell as a share of the mean; 100 % is "
        "perfectly even.",
    ),
    Figure(
        "dli", "DLI", DLI_UNIT, "mol_m2_d", Digits.DOSE,
        "Photons a square metre of the canopy gathers in a day of {hours} h of light "
        "(daily light integral).",
    ),
    Figure(
        "share_inside", "Inside band", "%", "", Digits.SHARE,
        "Share of the canopy's area whose light lies inside {band}.",
    ),
    Figure(
        "minimum", "Minimum", PPFD_UNIT, "umol_m2_s", Digits.LIGHT,
        "PPFD of the darkest cell of the map.",
    ),
    Figure(
        "maximum", "Maximum", PPFD_UNIT, "umol_m2_s", Digits.LIGHT,
        "PPFD of the brightest cell of the map.",
    ),
    Figure(
        "min_over_max", "Min / max", "%", "", Digits.SHARE,
        "The darkest cell as a share of the brightest.",
    ),
    Figure(
        "cv", "Variation (CV)", "%", "", Digits.SHARE,
        "Standard deviation of the light over the canopy as a share of the mean "
        "(coefficient of variation); 0 % is perfectly even.",
    ),
    Figure(
        "share_under", "Under band", "%", "", Digits.SHARE,
        "Share of the canopy's area that gets less light than {band}.",
    ),
    Figure(
        "share_over", "Over band", "%", "", Digits.SHARE,
        "Share of the canopy's area that gets more light than {band}.",
    ),
    Figure(
        "utilisation", "Utilisation", "%", "", Digits.SHARE,
        "Photons arriving at the canopy plane, of all canopies together, as a share of those the "
        "lamps emit; light that returns to the plane after a reflection counts again.",
    ),
    Figure(
        "photon_flux", "Photon flux", FLUX_UNIT, "umol_s", Digits.GIVEN,
        "Photons of 400–700 nm all lamps emit together each second, at the output set.",
    ),
    Figure(
        "efficacy", "Efficacy", EFFICACY_UNIT, "umol_j", Digits.GIVEN,
        "Photons the lamps emit for each joule of electricity.",
    ),
    Figure(
        "watts", "Power", "W", "", Digits.GIVEN,
        "Electrical power of all lamps at the output set.",
    ),
    Figure(
        "watts_per_m2", "Power per area", "W m⁻²", "w_m2", Digits.GIVEN,
        "Electrical power for each square metre of canopy, of all canopies together.",
    ),
    Figure(
        "kwh_per_day", "Energy a day", "kWh", "", Digits.GIVEN,
        "Electricity the lamps use in a day of {hours} h of light.",
    ),
    Figure(
        "canopy_area", "Canopy area", "m²", "m2", Digits.GIVEN,
        "Area of the level the light is wanted on.",
    ),
    Figure(
        "eppfd", "ePPFD", PPFD_UNIT, "umol_m2_s", Digits.LIGHT,
        "Photons of 400–750 nm, averaged over the canopy: PPFD and the far-red light that leaves "
        "use together with it.",
    ),
    Figure(
        "blue_share", "Blue", "%", "", Digits.SHARE,
        "Share of the canopy's PPFD that lies between 400 and 500 nm. What walls return best, "
        "there is more of than in the lamp's own light.",
    ),
    Figure(
        "red_share", "Red", "%", "", Digits.SHARE,
        "Share of the canopy's PPFD that lies between 600 and 700 nm; what is neither blue nor "
        "red is green.",
    ),
    Figure(
        "far_red_share", "Far-red", "%", "", Digits.SHARE,
        "Share of the canopy's ePPFD that lies between 700 and 750 nm.",
    ),
)  # fmt: skip
"""In the order of every list and table; the first ``LEADING`` are the large ones."""

COLOURS: Final = ("eppfd", "blue_share", "red_share", "far_red_share")
"""Figures that only a plan has whose lamps say how their light is spread."""

MAPPED: Final = ("mean", *COLOURS)
"""Figures of which there are maps too: that of PPFD always, the others where colours are known."""

_WHOLES: Final = {"blue_share": "PPFD", "red_share": "PPFD", "far_red_share": "ePPFD"}

FIGURE: Final = {figure.key: figure for figure in FIGURES}

WITHOUT_TARGET: Final = "Share of the canopy inside the target band; this plan has no target."


def ppfd(value: float | None, *, unit: bool = False) -> str:
    """Any PPFD with the digits of the mean."""
    return FIGURE["mean"].text(value) if unit else FIGURE["mean"].number(value)


def percent(fraction: float | None) -> str:
    """A share as '61 %'; near nothing and near all of it to a tenth of a per cent."""
    return FIGURE["share_inside"].text(fraction)


def energy(kwh: float | None, *, unit: bool = False) -> str:
    """Any energy in kWh with the digits of a day's."""
    return FIGURE["kwh_per_day"].text(kwh) if unit else FIGURE["kwh_per_day"].number(kwh)


def money(value: float | None, currency: str = "") -> str:
    """A sum of money to the hundredth, in the user's own currency."""
    return NO_VALUE if value is None else f"{value:.2f} {currency}".rstrip().replace("-", MINUS)


def _per_cent(value: float) -> str:
    if 0 < value < 0.05:
        return "under 0.1"
    if 0 < value < 9.95 or 99.5 <= value < 99.95:
        return format_number(value, 1)
    return f"{value:.0f}"


def significant(value: float | None, digits: int = 3) -> str:
    """A number to three figures, whole numbers in full: 0.123, 10.7, 2.5, 212, 1523."""
    if value is None or not math.isfinite(value):
        return NO_VALUE
    if value == 0:
        return "0"
    decimals = max(0, digits - 1 - math.floor(math.log10(abs(value))))
    return format_number(value, min(decimals, 6)).replace("-", MINUS)


def banded(value: float, half: float, most_decimals: int = 6) -> tuple[str, str]:
    """A value and its half-width as texts, both rounded to the same place.

    The half-width keeps two significant digits: 173 ± 30, 1520 ± 100, 10.0 ± 1.7.
    ``most_decimals`` is what the value would show without a band; the half-width is then
    at least one unit of the last place.
    """
    if not (half > 0 and math.isfinite(half) and math.isfinite(value)):
        return format_number(value, max(most_decimals, 0)), ""
    decimals = min(1 - _magnitude(half, 1), most_decimals)
    width = max(round(half, decimals), 10.0**-decimals)
    shown = max(decimals, 0)
    return decimal(f"{round(value, decimals):.{shown}f}"), decimal(f"{width:.{shown}f}")


def _magnitude(value: float, decimals: int) -> int:
    """Power of ten of the first digit once rounded: 9.96 is 10 with two digits, not 10.0."""
    first = math.floor(math.log10(value))
    return math.floor(math.log10(round(value, decimals - first)))


def _fixed(value: float, decimals: int) -> str:
    """Rounded to so many decimals (tens and hundreds below 0), without trailing zeros."""
    return format_number(round(value, decimals), max(decimals, 0))


# -- how even a map is; every measure is named in full, there is no 'uniformity' alone ---

FloatArray = npt.NDArray[np.float64]


@dataclass(frozen=True)
class Evenness:
    """Area-weighted statistics of a map; ratios are None where the mean is nothing.

    ``min_over_mean`` is U₀ and ``min_over_max`` U_d of EN 12464-1; ``cv`` is the
    population standard deviation over the mean.
    """

    mean: float
    minimum: float
    maximum: float
    min_over_mean: float | None
    min_over_max: float | None
    cv: float | None


def evenness(values: FloatArray, weights: FloatArray) -> Evenness:
    """Statistics of values (n,) with weights (n,), cells outside left out by the caller."""
    if values.size == 0 or weights.sum() <= 0:
        return Evenness(0.0, 0.0, 0.0, None, None, None)
    mean = float(np.average(values, weights=weights))
    low, high = float(values.min()), float(values.max())
    if mean <= 0:
        return Evenness(mean, low, high, None, None, None)
    variance = float(np.average((values - mean) ** 2, weights=weights))
    return Evenness(mean, low, high, low / mean, low / high, math.sqrt(variance) / mean)


def band_shares(
    values: FloatArray, weights: FloatArray, low: float, high: float
) -> tuple[float, float, float]:
    """Shares of the area under, inside and over a band (its ends count as inside)."""
    total = float(weights.sum())
    if total <= 0:
        return 0.0, 0.0, 0.0
    under = float(weights[values < low].sum()) / total
    over = float(weights[values > high].sum()) / total
    return under, 1.0 - under - over, over


# -- photosynthetic quantities (terms of ANSI/ASABE S640) ------------------------------


def daily_light_integral(
    ppfd: float, hours: float, entered: float = 0.0, room_hours: float = 0.0
) -> float:
    """DLI in mol m⁻² d⁻¹ of a constant PPFD (µmol m⁻² s⁻¹) over a photoperiod in hours.

    ``entered`` of it came in at the open door and lasts the hours of the room outside.
    """
    of_a_day = (ppfd - entered) * hours + entered * room_hours
    return of_a_day * SECONDS_PER_HOUR / MICROMOLES_PER_MOLE


# -- electrical power, energy and what it yields in photons ----------------------------


def kilowatt_hours_per_day(watts: float, hours: float) -> float:
    """Energy per day in kWh of a load that runs ``hours`` a day."""
    return watts * hours / 1000.0


def efficacy(photon_flux: float, watts: float) -> float | None:
    """Photosynthetic photon efficacy in µmol J⁻¹; None without power."""
    return photon_flux / watts if watts > 0 else None


def utilisation(mean_ppfd: float, area: float, photon_flux: float) -> float | None:
    """Canopy utilisation: photons that arrive on the canopy per photon emitted.

    Can exceed 1 where the canopy's own reflected light comes back to it.
    """
    return mean_ppfd * area / photon_flux if photon_flux > 0 else None
