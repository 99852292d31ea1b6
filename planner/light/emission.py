"""Lamps as light sources: where light leaves, and in which directions.

A source is a set of emitting strips in one plane (a panel is one, a bar set several) that
share one angular profile about the lamp's axis (straight down where it hangs level), of unit flux.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cache, cached_property, lru_cache
from typing import ClassVar, Protocol

import numpy as np

from planner.light.prism import FloatArray
from planner.light.sequences import shifted_points


class Profile(Protocol):
    """Angular distribution about the lamp's axis, normalised to unit flux."""

    @property
    def emits_up(self) -> bool:
        """Whether any light leaves above the plane of the lamp face."""

    @property
    def turns_with_azimuth(self) -> bool:
        """Whether intensity depends on the direction around the axis as well."""

    def intensity(
        self, cosine: FloatArray, across: FloatArray | None = None, along: FloatArray | None = None
    ) -> FloatArray:
        """Intensity per unit flux (sr⁻¹) in a direction.

        ``cosine`` is that of the angle to the lamp's axis. ``across`` and ``along`` are the
        direction's parts along the lamp's own x and y axes in any common scale; they are
        needed only where ``turns_with_azimuth``.
        """

    @property
    def steepness(self) -> float:
        """How many times nearer a Lambertian lamp would hang to light a plane as unevenly."""

    def kinks(self, span: float) -> float:
        """By how much the slope of the intensity jumps within an angle of ``span`` radians.

        Per radian, as a share of the brightest: the root of the mean sum of squares of the
        jumps in it. 0 where the intensity is smooth.
        """

    def sample(self, u: FloatArray, v: FloatArray) -> tuple[FloatArray, FloatArray]:
        """Cosines and azimuths (radians, in the lamp's axes) drawn by flux."""


@dataclass(frozen=True)
class CosinePower:
    """I = (m + 1)/(2π) cos^m θ below the face: m = 1 is a Lambertian emitter.

    Check values: at half peak the full beam angle β obeys m = ln ½ / ln cos(β/2).
    """

    exponent: float
    emits_up: ClassVar[bool] = False
    turns_with_azimuth: ClassVar[bool] = False

    @property
    def steepness(self) -> float:
        """See ``Profile.steepness``; by the second derivative of cos^(m+3), light on a plane."""
        return max(math.sqrt((self.exponent + 3) / 4), 1.0)

    def intensity(
        self, cosine: FloatArray, across: FloatArray | None = None, along: FloatArray | None = None
    ) -> FloatArray:
        """See ``Profile.intensity``."""
        del across, along
        below = np.maximum(cosine, 0.0)
        peak = (self.exponent + 1) / (2 * math.pi)
        if self.exponent == 1.0:
            return np.asarray(peak * below)
        if self.exponent == 0.0:
            return np.asarray(peak * (cosine > 0.0), dtype=np.float64)
        return np.asarray(peak * np.power(below, self.exponent))

    def kinks(self, span: float) -> float:
        """None: it is smooth below the face."""
        del span
        return 0.0

    def sample(self, u: FloatArray, v: FloatArray) -> tuple[FloatArray, FloatArray]:
        """See ``Profile.sample``; inverse of the flux inside a cone, 1 - cos^(m+1)."""
        return (1.0 - u) ** (1.0 / (self.exponent + 1.0)), 2 * math.pi * v


class TabulatedProfile:
    """Intensity given in vertical planes around the axis, linear in both angles.

    One plane stands for a lamp that is the same all around. The flux of each segment of a
    plane is integrated analytically: for I = a + bθ,
    ∫ I sinθ dθ = [b sinθ - (a + bθ) cosθ]; between planes, where intensity is linear in
    azimuth, the mean of the two is exact. Outside the polar angles given the lamp is dark.

    Parameters
    ----------
    angles_deg
        Polar angles from straight down, rising, shape (n,).
    relative
        Intensities, shape (planes, n) or (n,), in any unit.
    azimuths_deg
        Azimuths of the planes from 0 to below 360, rising; shape (planes,).
    """

    steepness: ClassVar[float] = 1.0  # between its kinks a table is straight

    def __init__(
        self,
        angles_deg: FloatArray,
        relative: FloatArray,
        azimuths_deg: FloatArray | None = None,
    ) -> None:
        theta = np.radians(np.asarray(angles_deg, dtype=np.float64))
        value = np.atleast_2d(np.asarray(relative, dtype=np.float64))
        azimuth = np.radians(np.zeros(1) if azimuths_deg is None else azimuths_deg)
        # The circle is closed by repeating the first plane at its end.
        self._azimuth = np.concatenate([azimuth, azimuth[:1] + 2 * math.pi])
        value = np.concatenate([value, value[:1]])
        of_plane = _segment_flux(theta, value).sum(axis=1)
        flux = float((np.diff(self._azimuth) * (of_plane[1:] + of_plane[:-1]) / 2).sum())
        with np.errstate(all="ignore"):
            self.theta, self._value = theta, value / flux
        if not (flux > 0 and np.isfinite(self._value).all()):
            raise ValueError(
                "the light distribution of a lamp is too narrow to compute with; give its "
                "angles and intensities in coarser steps."
            )
        self._prepare_sampling()

    def _prepare_sampling(self) -> None:
        """Cumulative flux by azimuth, and by polar angle in narrow sectors."""
        theta = self.theta
        self._fine = np.unique(np.concatenate([np.linspace(theta[0], theta[-1], 1024), theta]))
        sectors = 1 if not self.turns_with_azimuth else 180
        self._edges = np.linspace(0, 2 * math.pi, sectors + 1)
        middle = (self._edges[1:] + self._edges[:-1]) / 2
        grid_theta, grid_azimuth = np.meshgrid(self._fine, middle)
        value = self._at(grid_theta, grid_azimuth)
        flux = _segment_flux(self._fine, value)
        cumulative = np.concatenate([np.zeros((sectors, 1)), np.cumsum(flux, axis=1)], axis=1)
        of_sector = cumulative[:, -1]
        self._sector_cumulative = np.concatenate([[0.0], np.cumsum(of_sector / of_sector.sum())])
        # Sectors stand one after the other on one rising axis, so one look-up serves all.
        scaled = cumulative / np.maximum(of_sector, 1e-300)[:, None]
        self._ladder = (scaled + 2 * np.arange(sectors)[:, None]).ravel()
        self._ladder_theta = np.tile(self._fine, sectors)

    @property
    def emits_up(self) -> bool:
        """Whether the table holds light beyond 90°."""
        return bool((self._value[:, self.theta > math.pi / 2 + 1e-9] > 0).any())

    @property
    def turns_with_azimuth(self) -> bool:
        """Whether there is more than one plane."""
        return len(self._azimuth) > 2

    def kinks(self, span: float) -> float:
        """See ``Profile.kinks``; from second differences, each times its cosine of incidence."""
        down, around = self._jumps
        sine = np.maximum(np.sin(self.theta[1:]), 1e-3)
        seen = min(span / float(self.theta[-1] - self.theta[0]), 1.0)
        met = np.minimum(span / (2 * math.pi * sine), 1.0)
        return math.sqrt(seen * float(down.sum()) + float((met * around).mean()))

    @cached_property
    def _jumps(self) -> tuple[FloatArray, FloatArray]:
        """Squared jumps of slope at inner angles, mean of planes; at planes, summed, by angle."""
        value, cosine = self._value, np.maximum(np.cos(self.theta), 0.0)
        peak = float((value * cosine).max())
        if peak <= 0:
            return np.zeros(1), np.zeros(len(self.theta) - 1)
        slope = np.diff(value, axis=1) / np.diff(self.theta)
        down = ((np.diff(slope, axis=1) * cosine[1:-1]) ** 2)[:-1].mean(axis=0)
        slope = np.diff(value, axis=0) / np.diff(self._azimuth)[:, None]
        around = ((slope - np.roll(slope, 1, axis=0)) * cosine) ** 2
        around = around.sum(axis=0)[1:] / np.maximum(np.sin(self.theta[1:]), 1e-3) ** 2
        return down / peak**2, around / peak**2

    def _at(self, theta: FloatArray, azimuth: FloatArray) -> FloatArray:
        last = len(self.theta) - 2
        i = np.clip(np.searchsorted(self.theta, theta, side="right") - 1, 0, last)
        up = (theta - self.theta[i]) / (self.theta[i + 1] - self.theta[i])
        k = np.searchsorted(self._azimuth, azimuth, side="right") - 1
        k = np.clip(k, 0, len(self._azimuth) - 2)
        on = (azimuth - self._azimuth[k]) / (self._azimuth[k + 1] - self._azimuth[k])
        here = (1 - up) * self._value[k, i] + up * self._value[k, i + 1]
        there = (1 - up) * self._value[k + 1, i] + up * self._value[k + 1, i + 1]
        inside = (theta >= self.theta[0] - 1e-12) & (theta <= self.theta[-1] + 1e-12)
        blended: FloatArray = np.where(inside, (1 - on) * here + on * there, 0.0)
        return blended

    def intensity(
        self, cosine: FloatArray, across: FloatArray | None = None, along: FloatArray | None = None
    ) -> FloatArray:
        """See ``Profile.intensity``."""
        theta = np.arccos(np.clip(cosine, -1.0, 1.0))
        if not self.turns_with_azimuth:
            result: FloatArray = np.interp(theta, self.theta, self._value[0], left=0.0, right=0.0)
            return result
        if across is None or along is None:
            raise ValueError("this profile needs directions around the axis")
        return self._at(theta, np.arctan2(along, across) % (2 * math.pi))

    def sample(self, u: FloatArray, v: FloatArray) -> tuple[FloatArray, FloatArray]:
        """See ``Profile.sample``."""
        azimuth = np.interp(v, self._sector_cumulative, self._edges)
        sector = np.clip(np.searchsorted(self._edges, azimuth) - 1, 0, len(self._edges) - 2)
        theta = np.interp(2 * sector + u, self._ladder, self._ladder_theta)
        return np.cos(theta), azimuth


def _segment_flux(theta: FloatArray, value: FloatArray) -> FloatArray:
    """∫ I sinθ dθ over each segment of each plane, shape (planes, n - 1)."""
    slope = np.diff(value, axis=1) / np.diff(theta)
    base = value[:, :-1] - slope * theta[:-1]

    def antiderivative(t: FloatArray) -> FloatArray:
        result: FloatArray = slope * np.sin(t) - (base + slope * t) * np.cos(t)
        return result

    return antiderivative(theta[1:]) - antiderivative(theta[:-1])


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
        Angular distribution about the lamp's axis.
    tilt
        Turn t about the lamp's own x axis, through the centre, in radians (π/2: on edge): its
        local y goes to (y cos t, y sin t) in its upright plane, so its axis looks to
        (0, sin t, -cos t) there. 0 hangs level, its axis straight down.
    """

    centre: tuple[float, float, float]
    rotation: float
    strips: FloatArray
    profile: Profile
    tilt: float = 0.0

    def shares(self) -> FloatArray:
        """Share of the flux each strip gives, shape (S,)."""
        return _shares(self.strips)

    def place(self, local: FloatArray) -> FloatArray:
        """Points in the lamp's axes (2, n) to the room (3, n)."""
        cos, sin = math.cos(self.rotation), math.sin(self.rotation)
        x, y, z = local[0], local[1], np.full(local.shape[1], self.centre[2])
        if self.tilt:
            z += y * math.sin(self.tilt)
            y = y * math.cos(self.tilt)
        return np.stack([self.centre[0] + cos * x - sin * y, self.centre[1] + sin * x + cos * y, z])

    def axes(self) -> FloatArray:
        """Rows that turn directions of the room into the lamp's x and y axes.

        Shape (2, 2) for the horizontal parts where it hangs level, (2, 3) where it is tilted.
        """
        cos, sin = math.cos(self.rotation), math.sin(self.rotation)
        if not self.tilt:
            return np.array([[cos, sin], [-sin, cos]])
        lean, up = math.cos(self.tilt), math.sin(self.tilt)
        return np.array([[cos, sin, 0.0], [-sin * lean, cos * lean, up]])

    @property
    def axis(self) -> FloatArray:
        """The direction its axis looks to in the room, (3,)."""
        across = math.sin(self.tilt)
        sideways = (-across * math.sin(self.rotation), across * math.cos(self.rotation))
        return np.array([*sideways, -math.cos(self.tilt)])

    def looks(self) -> FloatArray | None:
        """Its axis where it is tilted, None where that is straight down."""
        return self.axis if self.tilt else None

    def towards(self, direction: FloatArray) -> tuple[FloatArray, FloatArray, FloatArray]:
        """Unit directions (3, n) away from the lamp as ``Profile.intensity`` takes them."""
        axes, looks = self.axes(), self.looks()
        across, along = axes @ direction[: axes.shape[1]]
        return -direction[2] if looks is None else looks @ direction, across, along

    def before(self, points: FloatArray) -> FloatArray:
        """How far points (3, n) lie on the lit side of the plane of the lamp's face, metres."""
        looks = self.looks()
        if looks is None:
            return np.asarray(self.centre[2] - points[2])
        return np.asarray(looks @ points - looks @ np.array(self.centre))

    def nodes(
        self, distance: float, tolerance: float = 2e-4, least: int = 1
    ) -> tuple[FloatArray, FloatArray]:
        """Quadrature points (3, n) and their flux shares (n,) for receivers this far away.

        Gauss-Legendre over each strip. For an integrand with its singularity at distance d
        from an interval of half length a the error falls as ρ^(-2n) with
        ρ = d/a + √(1 + (d/a)²) (Trefethen, 2013, 'Approximation Theory and Approximation
        Practice', ch. 19), which gives the number of points; the five-times rule of the
        trade (ANSI/IES LS-1) corresponds to one or two. ``least`` sets a lower bound to the
        points along each side. Where the profile kinks more points are taken, see
        ``_count``.
        """
        counts = tuple(
            (
                self._count(length, width, distance, tolerance, least),
                self._count(width, length, distance, tolerance, least),
            )
            for _, _, length, width in self._shape
        )
        across = self._across_row(counts, distance, tolerance, least)
        local, weights = _local_nodes(self._shape, counts, across)
        return self.place(local), weights

    @cached_property
    def _shape(self) -> _Strips:
        """The strips as a value that can stand in a key."""
        return tuple((x, y, length, width) for x, y, length, width in self.strips.tolist())

    def _across_row(
        self, counts: tuple[tuple[int, int], ...], distance: float, tolerance: float, least: int
    ) -> int | None:
        """Points across all bars of a lamp together, where fewer do than across each of them.

        A Gauss rule exists for any spread of flux, here for that over equal bars and the gaps
        between them, and its error falls in the same way with the breadth of the whole.
        """
        if len(counts) < _FEWEST_BARS:
            return None
        if not (np.ptp(self.strips[:, [0, 2, 3]], axis=0) < 1e-9).all():
            return None
        breadth = self._shape[-1][1] - self._shape[0][1] + self._shape[0][3]
        across = self._count(breadth, self._shape[0][2], distance, tolerance, least)
        fewer = across < sum(count for _, count in counts)
        return across if fewer and across <= _MOST_ACROSS else None

    def _count(
        self, length: float, other: float, distance: float, tolerance: float, least: int
    ) -> int:
        """Points along a side beside an ``other``: as for a smooth profile, or more at kinks.

        Across a step h of the quadrature a jump J of the slope is worth J h²/12 at most (the
        remainder of the trapezium rule, Davis and Rabinowitz, 1984, Methods of Numerical
        Integration, section 2.1). Rows h apart meet it each in its own place, which takes off
        the root of their number.
        """
        count = _gauss_count(length, distance / self.profile.steepness, tolerance, least)
        reach = length / max(distance, 1e-3)
        jump = self.profile.kinks(reach)
        doubt = jump * reach * max(reach / 2, 1.0) / 12 / (_AT_KINKS * tolerance)
        more = math.sqrt(doubt)
        if other * more > length > 0:
            more = (doubt * math.sqrt(length / other)) ** 0.4
        return max(count, min(math.ceil(more), _MOST_POINTS))

    @cached_property
    def outline(self) -> FloatArray:
        """Corners (3, 4) of the rectangle around all strips in the room."""
        low = (self.strips[:, :2] - self.strips[:, 2:] / 2).min(axis=0)
        high = (self.strips[:, :2] + self.strips[:, 2:] / 2).max(axis=0)
        return self.place(np.array([[low[0], high[0]] * 2, [low[1]] * 2 + [high[1]] * 2]))

    @property
    def is_lambert_panel(self) -> bool:
        """Whether it is one panel that sends as Lambert's law has it."""
        panel = len(self.strips) == 1 and bool(self.strips[0, 2:].all())
        return panel and isinstance(self.profile, CosinePower) and self.profile.exponent == 1

    def points(self, u: FloatArray, v: FloatArray, w: FloatArray) -> FloatArray:
        """Points (3, n) spread by flux over the emitting area, from uniform numbers (n,)."""
        edges = np.cumsum(self.shares())
        strip = self.strips[np.minimum(np.searchsorted(edges, w), len(edges) - 1)]
        local = [strip[:, 0] + (u - 0.5) * strip[:, 2], strip[:, 1] + (v - 0.5) * strip[:, 3]]
        return self.place(np.stack(local))

    def photons(self, count: int, random: np.random.Generator) -> tuple[FloatArray, FloatArray]:
        """Starts (3, count) and directions (3, count) of photons that carry equal flux."""
        u = shifted_points(1, count, 5, random)[:, 0]
        cosine, azimuth = self.profile.sample(u[2], u[3])
        sine = np.sqrt(np.maximum(0.0, 1.0 - cosine**2))
        looks = self.looks()
        if looks is None:
            angle = azimuth + self.rotation
            direction = np.stack([sine * np.cos(angle), sine * np.sin(angle), -cosine])
        else:
            sideways = np.stack([sine * np.cos(azimuth), sine * np.sin(azimuth)])
            direction = self.axes().T @ sideways + looks[:, None] * cosine
        return self.points(u[0], u[1], u[4]), direction


_Strips = tuple[tuple[float, float, float, float], ...]


def _shares(strips: FloatArray) -> FloatArray:
    area = strips[:, 2] * strips[:, 3]
    if area.sum() <= 0:
        return np.full(len(area), 1.0 / len(area))
    shares: FloatArray = area / area.sum()
    return shares


@lru_cache(maxsize=256)
def _local_nodes(
    strips: _Strips, counts: tuple[tuple[int, int], ...], across: int | None
) -> tuple[FloatArray, FloatArray]:
    """Quadrature points (2, n) in the lamp's axes and their flux shares (n,).

    ``counts`` are the points along both sides of each strip; ``across``, if given, those
    across all strips together, which are then equal and evenly spread.
    """
    if across is not None:
        (cx, first, length, width), last = strips[0], strips[-1][1]
        breadth = last - first + width
        v, wv = _row_rule(len(strips), round(width / breadth, 9), across)
        u, wu = _gauss(length, counts[0][0])
        uu, vv = np.meshgrid(u + cx, v * (breadth / 2) + (first + last) / 2)
        return np.stack([uu.ravel(), vv.ravel()]), np.outer(wv, wu).ravel()
    points, weights = [], []
    shares = _shares(np.array(strips))
    for (cx, cy, length, width), (along, aside), share in zip(strips, counts, shares, strict=True):
        u, wu = _gauss(length, along)
        v, wv = _gauss(width, aside)
        uu, vv = np.meshgrid(u + cx, v + cy)
        points.append(np.stack([uu.ravel(), vv.ravel()]))
        weights.append(share * np.outer(wv, wu).ravel())
    return np.concatenate(points, axis=1), np.concatenate(weights)


def _gauss(length: float, count: int) -> tuple[FloatArray, FloatArray]:
    x, w = _legendre(count)
    return x * (length / 2), w / 2


def _gauss_count(length: float, distance: float, tolerance: float, least: int) -> int:
    """Points along a strip, see ``Source.nodes``."""
    if length <= 0:
        return 1
    ratio = max(distance, 1e-3) / (length / 2)
    ellipse = ratio + math.sqrt(1 + ratio**2)
    count = math.ceil(math.log(1 / tolerance) / (2 * math.log(ellipse)))
    return min(max(count, least), _MOST_POINTS)


_MOST_POINTS = 48

_AT_KINKS = 5.0
"""Errors at kinks differ from receiver to receiver and may be so much larger: 0.1 % at most."""

_FEWEST_BARS = 3
_MOST_ACROSS = 24


@cache
def _legendre(count: int) -> tuple[FloatArray, FloatArray]:
    return np.polynomial.legendre.leggauss(count)


@cache
def _row_rule(count: int, width: float, points: int) -> tuple[FloatArray, FloatArray]:
    """Gauss points in -1…1 and weights (sum 1) for even light from ``count`` bars.

    ``width`` is that of a bar as a share of the breadth of all. The recurrence of the
    orthogonal polynomials is found on a fine discrete spread by the method of Stieltjes, and
    gives the rule by the eigenvalues of its Jacobi matrix (Golub and Welsch, 1969, Math.
    Comp. 23, 221; Gautschi, 2004, Orthogonal Polynomials, sections 2.2 and 3.1).
    """
    x, w = _legendre(points)
    centres = np.linspace(width - 1, 1 - width, count)
    place = (centres[:, None] + x * width).ravel()
    weight = np.tile(w, count) / (2 * count)
    middle, side = np.zeros(points), np.zeros(points)
    before, now = np.zeros_like(place), np.ones_like(place)
    for k in range(points):
        middle[k] = float(weight @ (place * now**2))
        following = (place - middle[k]) * now - side[k] * before
        norm = math.sqrt(float(weight @ following**2))
        before, now = now, following / norm
        if k + 1 < points:
            side[k + 1] = norm
    jacobi = np.diag(middle) + np.diag(side[1:], 1) + np.diag(side[1:], -1)
    values, vectors = np.linalg.eigh(jacobi)
    return values, vectors[0] ** 2
