"""What a lamp file says, whatever its format: one value in one frame.

Frame: the polar angle is 0 straight down and 180 straight up; azimuths run counter-clockwise
seen from above, and azimuth 0 lies along the lamp's own length (its x axis).
"""

from __future__ import annotations

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
