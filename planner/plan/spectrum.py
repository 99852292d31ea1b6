"""Spectra: how a lamp's light is spread over wavelength."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from enum import StrEnum
from typing import Annotated, Final, Self

from pydantic import Field, model_validator

from planner.plan.quantity import Key, Name, Text, Value

MIN_WAVELENGTH_NM: Final = 100.0
MAX_WAVELENGTH_NM: Final = 10_000.0
MIN_SAMPLES: Final = 3
MAX_SAMPLES: Final = 10_000
LARGEST_VALUE: Final = 1.0e30
"""Far above any physical spectrum in any unit; keeps sums away from overflow."""

_LEAST_PAR: Final = 1.0e-6
_WIDE_STEP_NM: Final = 10.0
_FAINT: Final = 0.01

Wavelength = Annotated[
    float, Field(ge=MIN_WAVELENGTH_NM, le=MAX_WAVELENGTH_NM, json_schema_extra={"unit": "nm"})
]
Amount = Annotated[float, Field(ge=0.0, le=LARGEST_VALUE)]


class SpectrumQuantity(StrEnum):
    """What the values of a spectrum count."""

    POWER = "power"
    PHOTONS = "photons"


class Spectrum(Value):
    """A spectral distribution: values at rising wavelengths, linear between, zero outside.

    ``values`` are per nanometre, either power (W nm⁻¹) or photons (µmol s⁻¹ nm⁻¹), per
    lamp, per square metre or on any scale of their own: what the program uses of a
    spectrum are ratios. ``is_model`` marks a shape made by a formula to stand for a kind
    of lamp, measured on none.
    """

    key: Key
    name: Name
    quantity: SpectrumQuantity = SpectrumQuantity.POWER
    wavelengths_nm: Annotated[
        tuple[Wavelength, ...], Field(min_length=MIN_SAMPLES, max_length=MAX_SAMPLES)
    ]
    values: Annotated[tuple[Amount, ...], Field(min_length=MIN_SAMPLES, max_length=MAX_SAMPLES)]
    is_model: bool = False
    source: Text = Field(default="", description="Where the numbers come from.")
    note: Text = ""

    @model_validator(mode="after")
    def _check(self) -> Self:
        if len(self.values) != len(self.wavelengths_nm):
            raise ValueError(
                f"the spectrum has {len(self.wavelengths_nm)} wavelengths but "
                f"{len(self.values)} values."
            )
        if any(b <= a for a, b in itertools.pairwise(self.wavelengths_nm)):
            raise ValueError("the wavelengths of a spectrum must rise from each to the next.")
        if max(self.values) < 1 / LARGEST_VALUE:
            raise ValueError("the spectrum is empty: at least one value must be above 0.")
        total = _area(self.wavelengths_nm, self.values)
        par = _area(*_between(self.wavelengths_nm, self.values, 400.0, 700.0))
        if par < _LEAST_PAR * total:
            raise ValueError(
                "the spectrum has no light between 400 and 700 nm, so nothing can be converted "
                "to or from PPFD."
            )
        return self


def _area(wavelengths: Sequence[float], values: Sequence[float]) -> float:
    pairs = itertools.pairwise(zip(wavelengths, values, strict=True))
    return sum((b - a) * (u + v) / 2 for (a, u), (b, v) in pairs)


def _between(
    wavelengths: Sequence[float], values: Sequence[float], low: float, high: float
) -> tuple[list[float], list[float]]:
    """The part of a polyline inside an interval, cut exactly at its ends."""
    xs: list[float] = []
    ys: list[float] = []
    for (a, u), (b, v) in itertools.pairwise(zip(wavelengths, values, strict=True)):
        start, end = max(a, low), min(b, high)
        if start >= end:
            continue
        slope = (v - u) / (b - a)
        if not xs:
            xs.append(start)
            ys.append(u + slope * (start - a))
        xs.append(end)
        ys.append(u + slope * (end - a))
    return xs, ys


def doubts(spectrum: Spectrum) -> tuple[str, ...]:
    """Sentences on what a spectrum leaves open: cut ends and wide steps; empty when good."""
    found: list[str] = []
    peak = max(spectrum.values)
    first, last = spectrum.wavelengths_nm[0], spectrum.wavelengths_nm[-1]
    if first > 400 and spectrum.values[0] > _FAINT * peak:
        found.append(
            f"The spectrum begins at {first:g} nm, still at {spectrum.values[0] / peak:.0%} of "
            "its peak: the photons below are not counted."
        )
    if last < 700 and spectrum.values[-1] > _FAINT * peak:
        found.append(
            f"The spectrum ends at {last:g} nm, still at {spectrum.values[-1] / peak:.0%} of "
            "its peak: the photons above are not counted."
        )
    if 700 <= last < 800 and spectrum.values[-1] > _FAINT * peak:
        found.append(
            f"The spectrum ends at {last:g} nm: far-red photons between there and 800 nm are "
            "not counted."
        )
    steps = [
        (b - a, a, b)
        for (a, b), (u, v) in zip(
            itertools.pairwise(spectrum.wavelengths_nm),
            itertools.pairwise(spectrum.values),
            strict=True,
        )
        if b > 400 and a < 700 and (u != v)
    ]
    widest = max(steps, default=(0.0, 0.0, 0.0))
    if widest[0] > _WIDE_STEP_NM:
        found.append(
            f"Between {widest[1]:g} and {widest[2]:g} nm there is no sample: with steps above "
            f"{_WIDE_STEP_NM:g} nm narrow lines are missed."
        )
    return tuple(found)
