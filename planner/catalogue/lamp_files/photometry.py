"""What a lamp file says, whatever its format: one value in one frame.

Frame: the polar angle is 0 straight down and 180 straight up; azimuths run counter-clockwise
seen from above, and azimuth 0 lies along the lamp's own length (its x axis).
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from typing import Final, Literal

import numpy as np
import numpy.typing as npt

FloatArray = npt.NDArray[np.float64]

MAX_FILE_BYTES: Final = 10_000_000
MAX_POLAR: Final = 721
MAX_AZIMUTHS: Final = 361
MAX_NUMBER: Final = 1.0e12
MAX_KEYWORDS: Final = 2000
MAX_KEYWORD_CHARACTERS: Final = 4000

Shape = Literal[
    "point",
    "rectangle",
    "box",
    "circle",
    "ellipse",
    "vertical cylinder",
    "vertical elliptical cylinder",
    "sphere",
    "ellipsoid",
    "horizontal cylinder along the 0° plane",
    "horizontal cylinder across the 0° plane",
    "vertical circle",
    "vertical ellipse",
]
PhotometricType = Literal["A", "B", "C"]


class LampFileError(Exception):
    """A lamp file that cannot be used; ``str()`` is one sentence for the screen.

    Attributes
    ----------
    line
        Number of the line at fault, counted from 1; None where no single line is.
    """

    def __init__(self, problem: str, line: int | None = None) -> None:
        self.problem, self.line = problem.rstrip("."), line
        where = "" if line is None else f"line {line}: "
        super().__init__(f"{where}{self.problem}.")


@dataclass(frozen=True)
class Opening:
    """The luminous opening: what of the lamp emits.

    ``length`` lies along azimuth 0, ``width`` across it, ``height`` is vertical; all in
    metres, never negative.
    """

    shape: Shape = "point"
    length: float = 0.0
    width: float = 0.0
    height: float = 0.0


SIDEWAYS: Final = (
    "In type A files the lamp looks sideways: H 0 V 0 lies along the lamp's length. If the lamp is "
    "to shine down, aim it down."
)
"""The warning of a file whose light can be aimed down."""


@dataclass(frozen=True)
class Tilt:
    """How the lumens of a tilt-sensitive lamp change as the lamp is tilted.

    ``geometry`` is 1 for a lamp mounted vertically, 2 and 3 for one mounted horizontally
    that stays level or tilts (LM-63). A lamp hung level needs none of it.
    """

    geometry: int
    angles_deg: tuple[float, ...]
    factors: tuple[float, ...]


@dataclass(frozen=True, eq=False)
class Photometry:
    """The light distribution of a lamp as its file gives it, expanded to the full circle.

    Attributes
    ----------
    polar_deg
        Polar angles, rising, within 0 and 180; shape (n,) [deg]. Outside their range
        the lamp is dark.
    azimuths_deg
        Azimuths of the vertical half-planes, rising from 0 to below 360; shape (m,) [deg].
        They close on themselves; m = 1 is symmetry about the vertical axis.
    candela
        Luminous intensity with all multipliers of the file applied; shape (m, n) [cd].
        Linear in both angles in between.
    source_format
        Such as ``IESNA:LM-63-2002`` or ``EULUMDAT``.
    photometric_type
        The coordinate system of the file; A and B were converted to C by resampling.
    symmetry
        The symmetry the file claims, in words.
    lamp_count, lumens_per_lamp
        What the file states; ``lumens_per_lamp`` is None for absolute photometry [lm].
    output_ratio
        Light output ratio the file states (0 to 1 or a little above), None if it does not.
    watts
        Input power [W], None where the file gives none.
    opening
        The luminous opening.
    keywords
        Pairs of keyword (upper case, no brackets) and text, in the order of the file.
        Free label lines of 1986 have the keyword ``LABEL``.
    tilt
        Tilt table of the file, if any.
    generation
        File generation type of LM-63-2019 (1.00001 = undefined).
    warnings
        Sentences about what was doubtful and how it was taken.
    """

    polar_deg: FloatArray
    azimuths_deg: FloatArray
    candela: FloatArray
    source_format: str
    photometric_type: PhotometricType = "C"
    symmetry: str = ""
    lamp_count: int = 1
    lumens_per_lamp: float | None = None
    output_ratio: float | None = None
    watts: float | None = None
    opening: Opening = field(default_factory=Opening)
    keywords: tuple[tuple[str, str], ...] = ()
    tilt: Tilt | None = None
    generation: float = 1.00001
    warnings: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        if self.candela.shape != (len(self.azimuths_deg), len(self.polar_deg)):
            raise ValueError("the candela table must have the shape (azimuths, polar angles)")
        for array in (self.polar_deg, self.azimuths_deg, self.candela):
            array.setflags(write=False)

    @property
    def absolute(self) -> bool:
        """Whether the file states no lamp lumens (absolute photometry, as for LED lamps)."""
        return self.lumens_per_lamp is None

    @property
    def lumens_stated(self) -> float | None:
        """Total lamp lumens the file states, None for absolute photometry [lm]."""
        if self.lumens_per_lamp is None:
            return None
        return self.lumens_per_lamp * self.lamp_count

    def keyword(self, *names: str) -> str:
        """Text of the first of these keywords that is there and not empty, else ''."""
        for name in names:
            for key, text in self.keywords:
                if key == name and text.strip():
                    return text.strip()
        return ""

    @property
    def name(self) -> str:
        """What the file calls the lamp, on one line, '' where it does not."""
        text = self.keyword("LUMINAIRE", "LUMCAT", "OTHER", "LABEL", "TEST")
        return " ".join(text.split())[:120].strip()


# -- From the part of the circle a file stores to the whole circle, and back -----------
# All tables here are (azimuths, polar angles); azimuths in degrees.

Symmetry = Literal["axial", "quadrant", "about 0-180", "about 90-270", "none"]

WORDS: Final[dict[Symmetry, str]] = {
    "axial": "the same all around the vertical axis",
    "quadrant": "the same in each quarter",
    "about 0-180": "mirrored about the 0-180 plane",
    "about 90-270": "mirrored about the 90-270 plane",
    "none": "no symmetry",
}

_DIGITS: Final = 6


def full_circle(
    azimuths: FloatArray, table: FloatArray, symmetry: Symmetry
) -> tuple[FloatArray, FloatArray]:
    """Expand a stored part by its symmetry; returns azimuths in [0, 360) from 0 and rows.

    A plane that several copies fall on is taken from the first; a plane at 0 that is not
    there is interpolated, which changes nothing as intensity is linear between planes.
    """
    if symmetry == "axial":
        return np.zeros(1), table[:1].copy()
    copies = [azimuths]
    if symmetry in {"quadrant", "about 0-180"}:
        copies.append(-azimuths)
    if symmetry in {"quadrant", "about 90-270"}:
        copies.append(180.0 - azimuths)
    if symmetry == "quadrant":
        copies.append(180.0 + azimuths)
    angles = np.concatenate(copies)
    rows = np.concatenate([table] * len(copies))
    return closed(angles, rows)


def closed(angles: FloatArray, rows: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Planes at any azimuths, sorted into [0, 360), once each, with a plane at 0."""
    wrapped = np.round(np.mod(angles, 360.0), _DIGITS) % 360.0
    unique, first = np.unique(wrapped, return_index=True)
    table = rows[first]
    if unique[0] != 0.0:
        gap = unique[0] + 360.0 - unique[-1]
        share = (360.0 - unique[-1]) / gap
        at_zero = table[-1] * (1.0 - share) + table[0] * share
        unique = np.concatenate([[0.0], unique])
        table = np.concatenate([at_zero[None, :], table])
    return unique, np.ascontiguousarray(table)


def rotated(
    azimuths: FloatArray, table: FloatArray, angle_deg: float
) -> tuple[FloatArray, FloatArray]:
    """The distribution turned counter-clockwise (seen from above) about the vertical."""
    if len(azimuths) == 1:
        return azimuths.copy(), table.copy()
    return closed(azimuths + angle_deg, table)


def at_azimuths(azimuths: FloatArray, table: FloatArray, wanted: FloatArray) -> FloatArray:
    """Rows at other azimuths, linear between the planes around the circle."""
    if len(azimuths) == 1:
        return np.repeat(table, len(wanted), axis=0)
    around = np.concatenate([azimuths, [360.0]])
    rows = np.concatenate([table, table[:1]])
    place = np.mod(wanted, 360.0)
    index = np.clip(np.searchsorted(around, place, side="right") - 1, 0, len(azimuths) - 1)
    share = ((place - around[index]) / (around[index + 1] - around[index]))[:, None]
    result: FloatArray = rows[index] * (1.0 - share) + rows[index + 1] * share
    return result


def found_symmetry(azimuths: FloatArray, table: FloatArray) -> Symmetry:
    """The greatest symmetry the table really has, to about nine digits."""
    tolerance = 1e-9 * float(table.max())

    def same(wanted: FloatArray) -> bool:
        # Every plane must have its mirror image among the planes, or lie on the line there.
        other = at_azimuths(azimuths, table, wanted)
        return bool(np.abs(other - table).max() <= tolerance)

    if len(azimuths) == 1 or np.ptp(table, axis=0).max() <= tolerance:
        return "axial"
    # Both ways, so that kinks of one side without a plane on the other are noticed.
    first, second = same(-azimuths), same(180.0 - azimuths)
    if first and second:
        return "quadrant"
    if first:
        return "about 0-180"
    return "about 90-270" if second else "none"


def smallest_part(azimuths: FloatArray, table: FloatArray) -> tuple[FloatArray, FloatArray]:
    """The smallest part of the circle that LM-63 can store without loss, and its rows."""
    symmetry = found_symmetry(azimuths, table)
    ends: dict[Symmetry, tuple[float, float]] = {
        "axial": (0.0, 0.0),
        "quadrant": (0.0, 90.0),
        "about 0-180": (0.0, 180.0),
        "about 90-270": (90.0, 270.0),
        "none": (0.0, 360.0),
    }
    low, high = ends[symmetry]
    inside = azimuths[(azimuths > low) & (azimuths < high)]
    wanted = np.unique(np.concatenate([[low], inside, [high]]))
    return wanted, at_azimuths(azimuths, table, wanted)


# -- Totals of a distribution ----------------------------------------------------------
# Φ = ∫∫ I sinθ dθ dφ, taken exactly for intensity that is linear in both angles between the
# values of the table: along θ by ∫ (a + bθ) sinθ dθ = b sinθ - (a + bθ) cosθ, around φ by the
# trapezoid rule, which is exact for lines. The published convention, the intensity in the
# middle of a zone times its zonal constant 2π(cosθ₁ - cosθ₂) (IESNA Lighting Handbook), gives
# 3153.59 lm for I = 1000 cosθ in zones of 10° where 1000 π is right.


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
