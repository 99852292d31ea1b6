"""Lamps as light sources: where light leaves, and in which directions.

A source is a set of horizontal emitting strips (a panel is one, a bar set several) that
share one angular profile about the lamp's axis. All functions work for unit photon flux.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Protocol

import numpy as np
import numpy.typing as npt

from planner.light.prism import FloatArray
from planner.light.sequences import shifted_points


class Profile(Protocol):
    """Angular distribution, rotationally symmetric, normalised to unit flux."""

    @property
    def emits_up(self) -> bool:
        """Whether any light leaves above the plane of the lamp face."""

    def intensity(self, cosine: FloatArray) -> FloatArray:
        """Intensity per unit flux (sr⁻¹) by the cosine of the angle to the axis."""

    def sample_cosine(self, u: FloatArray) -> FloatArray:
        """Cosines of directions drawn by flux from uniform numbers."""


@dataclass(frozen=True)
class CosinePower:
    """I = (m + 1)/(2π) cos^m θ below the face: m = 1 is a Lambertian emitter.

    Check values: at half peak the full beam angle β obeys m = ln ½ / ln cos(β/2).
    """

    exponent: float

    @property
    def emits_up(self) -> bool:
        """A cosine lamp gives nothing above its face."""
        return False

    def intensity(self, cosine: FloatArray) -> FloatArray:
        """See ``Profile.intensity``."""
        below = np.maximum(cosine, 0.0)
        peak = (self.exponent + 1) / (2 * math.pi)
        if self.exponent == 1.0:
            return np.asarray(peak * below)
        if self.exponent == 0.0:
            return np.asarray(peak * (cosine > 0.0), dtype=np.float64)
        powered: FloatArray = peak * np.power(below, self.exponent)
        return powered

    def sample_cosine(self, u: FloatArray) -> FloatArray:
        """See ``Profile.sample_cosine``; inverse of the flux inside a cone, 1 - cos^(m+1)."""
        cosine: FloatArray = (1.0 - u) ** (1.0 / (self.exponent + 1.0))
        return cosine


class TabulatedProfile:
    """Intensity given at polar angles (degrees from the axis), linear in between.

    The flux of each segment is integrated analytically: for I = a + bθ,
    ∫ I sinθ dθ = [b sinθ - (a + bθ) cosθ]. Outside the table the lamp is dark.
    """

    def __init__(self, angles_deg: FloatArray, relative: FloatArray) -> None:
        theta = np.radians(np.asarray(angles_deg, dtype=np.float64))
        value = np.asarray(relative, dtype=np.float64)
        slope = np.diff(value) / np.diff(theta)
        base = value[:-1] - slope * theta[:-1]

        def antiderivative(a: FloatArray, b: FloatArray, t: FloatArray) -> FloatArray:
            return b * np.sin(t) - (a + b * t) * np.cos(t)

        upper = antiderivative(base, slope, theta[1:])
        flux = 2 * math.pi * (upper - antiderivative(base, slope, theta[:-1]))
        self._theta, self._value = theta, value / flux.sum()
        # A fine table of the cumulative flux serves the inversion.
        fine = np.unique(np.concatenate([np.linspace(theta[0], theta[-1], 2048), theta]))
        segment = np.clip(np.searchsorted(theta, fine, side="right") - 1, 0, len(slope) - 1)
        start = antiderivative(base[segment], slope[segment], theta[segment])
        within = antiderivative(base[segment], slope[segment], fine) - start
        before = np.concatenate([[0.0], np.cumsum(flux)])[segment]
        self._cumulative = (before + 2 * math.pi * within) / flux.sum()
        self._cosine = np.cos(fine)

    @property
    def emits_up(self) -> bool:
        """Whether the table holds light beyond 90°."""
        return bool((self._value[self._theta > math.pi / 2 + 1e-9] > 0).any())

    def intensity(self, cosine: FloatArray) -> FloatArray:
        """See ``Profile.intensity``."""
        theta = np.arccos(np.clip(cosine, -1.0, 1.0))
        result: FloatArray = np.interp(theta, self._theta, self._value, left=0.0, right=0.0)
        return result

    def sample_cosine(self, u: FloatArray) -> FloatArray:
        """See ``Profile.sample_cosine``."""
        result: FloatArray = np.interp(u, self._cumulative, self._cosine)
        return result


@dataclass(frozen=True)
class Source:
    """A lamp of unit flux.

    Attributes
    ----------
    centre
        Centre of the lamp's face (x, y, z) in metres.
    rotation
        Turn about the vertical in radians.
    strips
        Emitting rectangles in the lamp's own axes, shape (S, 4): centre x, centre y,
        length, width in metres; a point has no length and width. Flux is spread evenly
        over the whole emitting area.
    profile
        Angular distribution about the straight-down direction.
    """

    centre: tuple[float, float, float]
    rotation: float
    strips: FloatArray
    profile: Profile

    def shares(self) -> FloatArray:
        """Share of the flux each strip gives, shape (S,)."""
        area = self.strips[:, 2] * self.strips[:, 3]
        if area.sum() <= 0:
            return np.full(len(area), 1.0 / len(area))
        shares: FloatArray = area / area.sum()
        return shares

    def place(self, local: FloatArray) -> FloatArray:
        """Points in the lamp's axes (2, n) to the room (3, n)."""
        cos, sin = math.cos(self.rotation), math.sin(self.rotation)
        return np.stack(
            [
                self.centre[0] + cos * local[0] - sin * local[1],
                self.centre[1] + sin * local[0] + cos * local[1],
                np.full(local.shape[1], self.centre[2]),
            ]
        )

    def nodes(self, distance: float, tolerance: float = 2e-4) -> tuple[FloatArray, FloatArray]:
        """Quadrature points (3, n) and their flux shares (n,) for receivers this far away.

        Gauss-Legendre over each strip. For an integrand with its singularity at distance d
        from an interval of half length a the error falls as ρ^(-2n) with
        ρ = d/a + √(1 + (d/a)²) (Trefethen, 2013, 'Approximation Theory and Approximation
        Practice', ch. 19), which gives the number of points; the five-times rule of the
        trade (ANSI/IES LS-1) corresponds to one or two.
        """
        points, weights = [], []
        for (cx, cy, length, width), share in zip(self.strips, self.shares(), strict=True):
            u, wu = _gauss(length, distance, tolerance)
            v, wv = _gauss(width, distance, tolerance)
            uu, vv = np.meshgrid(u + cx, v + cy)
            points.append(np.stack([uu.ravel(), vv.ravel()]))
            weights.append(share * np.outer(wv, wu).ravel())
        return self.place(np.concatenate(points, axis=1)), np.concatenate(weights)

    def photons(self, count: int, random: np.random.Generator) -> tuple[FloatArray, FloatArray]:
        """Starts (3, count) and directions (3, count) of photons that carry equal flux."""
        u = shifted_points(1, count, 5, random)[:, 0]
        edges = np.cumsum(self.shares())
        strip = self.strips[np.minimum(np.searchsorted(edges, u[4]), len(edges) - 1)]
        local = np.stack(
            [strip[:, 0] + (u[0] - 0.5) * strip[:, 2], strip[:, 1] + (u[1] - 0.5) * strip[:, 3]]
        )
        cosine = self.profile.sample_cosine(u[2])
        sine = np.sqrt(np.maximum(0.0, 1.0 - cosine**2))
        angle = 2 * math.pi * u[3]
        direction = np.stack([sine * np.cos(angle), sine * np.sin(angle), -cosine])
        return self.place(local), direction


def _gauss(length: float, distance: float, tolerance: float) -> tuple[FloatArray, FloatArray]:
    if length <= 0:
        return np.zeros(1), np.ones(1)
    ratio = max(distance, 1e-3) / (length / 2)
    ellipse = ratio + math.sqrt(1 + ratio**2)
    count = math.ceil(math.log(1 / tolerance) / (2 * math.log(ellipse)))
    x, w = _legendre(min(max(count, 1), 48))
    return x * (length / 2), w / 2


_LEGENDRE: dict[int, tuple[FloatArray, FloatArray]] = {}


def _legendre(count: int) -> tuple[npt.NDArray[np.float64], npt.NDArray[np.float64]]:
    if count not in _LEGENDRE:
        _LEGENDRE[count] = np.polynomial.legendre.leggauss(count)
    return _LEGENDRE[count]
