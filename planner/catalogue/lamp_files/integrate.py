"""Totals of a distribution: lumens by zone, in all, downward; efficacy.

Φ = ∫∫ I sinθ dθ dφ, taken exactly for intensity that is linear in both angles between the
values of the table: along θ by ∫ (a + bθ) sinθ dθ = b sinθ - (a + bθ) cosθ, around φ by the
trapezoid rule, which is exact for lines. The published convention, the intensity in the
middle of a zone times its zonal constant 2π(cosθ₁ - cosθ₂) (IESNA Lighting Handbook), is here
too for comparison: for I = 1000 cosθ in zones of 10° it gives 3153.59 lm where 1000 π is right.
"""

from __future__ import annotations

import math

import numpy as np

from planner.catalogue.lamp_files.photometry import FloatArray, Photometry
from planner.catalogue.lamp_files.symmetry import at_azimuths


def zonal_constant(lower_deg: float, upper_deg: float) -> float:
    """Solid angle of the zone between two polar angles, 2π(cosθ₁ - cosθ₂) [sr]."""
    return 2 * math.pi * (math.cos(math.radians(lower_deg)) - math.cos(math.radians(upper_deg)))


def mid_zone_lumens(edges_deg: FloatArray, mid_intensity: FloatArray) -> FloatArray:
    """Lumens of zones by the published convention: mid-zone intensity × zonal constant [lm].

    ``edges_deg`` has shape (k + 1,), ``mid_intensity`` (k,) [cd].
    """
    cosine = np.cos(np.radians(edges_deg))
    result: FloatArray = 2 * math.pi * (cosine[:-1] - cosine[1:]) * mid_intensity
    return result


def mean_intensity(photometry: Photometry) -> FloatArray:
    """Intensity averaged around the axis at each polar angle of the table; shape (n,) [cd]."""
    if len(photometry.azimuths_deg) == 1:
        return np.asarray(photometry.candela[0], dtype=np.float64)
    step = np.diff(np.concatenate([photometry.azimuths_deg, [360.0]]))
    weight = (step + np.roll(step, 1)) / 2
    result: FloatArray = np.asarray(weight @ photometry.candela / 360.0, dtype=np.float64)
    return result


def zonal_lumens(photometry: Photometry, edges_deg: FloatArray) -> FloatArray:
    """Exact lumens of the zones between polar angles ``edges_deg`` (k + 1,); shape (k,) [lm]."""
    theta, value = photometry.polar_deg, mean_intensity(photometry)
    knots = np.unique(np.concatenate([theta, np.asarray(edges_deg, dtype=np.float64)]))
    knots = knots[(knots >= theta[0]) & (knots <= theta[-1])]
    intensity = np.interp(knots, theta, value)
    angle = np.radians(knots)
    slope = np.diff(intensity) / np.diff(angle)
    base = intensity[:-1] - slope * angle[:-1]
    sine, cosine = np.sin(angle), np.cos(angle)
    part = slope * (sine[1:] - sine[:-1])
    part += (base + slope * angle[:-1]) * cosine[:-1] - (base + slope * angle[1:]) * cosine[1:]
    running = np.concatenate([[0.0], np.cumsum(2 * math.pi * part)])
    result: FloatArray = np.diff(np.interp(edges_deg, knots, running))
    return result


def total_lumens(photometry: Photometry) -> float:
    """All the light of the lamp, exact for the piecewise linear table [lm]."""
    return float(zonal_lumens(photometry, np.array([0.0, 180.0]))[0])


def downward_share(photometry: Photometry) -> float:
    """Share of the light that leaves below the horizontal, 0 to 1."""
    down, up = zonal_lumens(photometry, np.array([0.0, 90.0, 180.0]))
    return float(down / (down + up))


def efficacy(photometry: Photometry) -> float | None:
    """Lumens of the whole lamp per input watt [lm/W]; None where the file gives no watts."""
    if not photometry.watts:
        return None
    return total_lumens(photometry) / photometry.watts


def polar_curve(photometry: Photometry, azimuth_deg: float) -> tuple[FloatArray, FloatArray]:
    """One vertical plane for a polar plot: angles from -180 to 180 and intensity [deg, cd].

    Positive angles lie towards ``azimuth_deg``, negative ones towards the opposite side.
    Where the table holds the straight-down direction it stands once.
    """
    wanted = np.array([azimuth_deg, azimuth_deg + 180.0])
    ahead, behind = at_azimuths(photometry.azimuths_deg, photometry.candela, wanted)
    start = 1 if photometry.polar_deg[0] == 0 else 0
    angles = np.concatenate([-photometry.polar_deg[:0:-1], photometry.polar_deg])
    if start == 0:
        angles = np.concatenate([-photometry.polar_deg[::-1], photometry.polar_deg])
        return angles, np.concatenate([behind[::-1], ahead])
    return angles, np.concatenate([behind[:0:-1], ahead])


def beam_angle(photometry: Photometry, azimuth_deg: float) -> float | None:
    """Full angle between the directions of half the peak of one vertical plane [deg].

    The directions nearest to the peak on either side count, the table linear in between;
    None where the light does not fall to half on both sides.
    """
    angles, candela = polar_curve(photometry, azimuth_deg)
    peak = int(candela.argmax())
    half = candela[peak] / 2
    if half <= 0:
        return None
    ends = []
    for side in (range(peak, len(angles) - 1), range(peak, 0, -1)):
        step = side.step
        for i in side:
            if candela[i + step] < half:
                share = (candela[i] - half) / (candela[i] - candela[i + step])
                ends.append(float(angles[i] + share * (angles[i + step] - angles[i])))
                break
    return ends[0] - ends[1] if len(ends) == 2 else None
