"""Reading EULUMDAT (.ldt), after A. Stockmar, 1990: one value on each line, in fixed order.

Intensities are stored in candela per 1000 lm of the lamps; times lamp lumens / 1000 and the
conversion factor they are candela. Plane C 0 lies across the length of the luminaire and
C 90 along it; everything is turned by a quarter here so that azimuth 0 lies along the length.
"""

from __future__ import annotations

import dataclasses
from dataclasses import dataclass
from typing import Final

import numpy as np

from planner.catalogue.lamp_files.photometry import (
    MAX_AZIMUTHS,
    MAX_KEYWORD_CHARACTERS,
    MAX_POLAR,
    WORDS,
    FloatArray,
    LampFileError,
    Opening,
    Photometry,
    Symmetry,
    downward_share,
    full_circle,
    rotated,
    total_lumens,
)
from planner.catalogue.lamp_files.tokens import (
    NumberStream,
    clean_intensities,
    number,
    whole,
)

_SYMMETRIES: Final[tuple[Symmetry, ...]] = (
    "none",
    "axial",
    "about 0-180",
    "about 90-270",
    "quadrant",
)
_MAX_SETS: Final = 20
_RATIOS: Final = 10
_ACROSS_TO_ALONG: Final = -90.0
_NEAR: Final = 1e-3
_TEXTS: Final = ((1, "MANUFAC"), (8, "TEST"), (9, "LUMINAIRE"), (10, "LUMCAT"), (11, "_FILENAME"))


@dataclass(frozen=True)
class _LampSet:
    count: int
    absolute: bool
    kind: str
    lumens: float
    colour: str
    rendering: str
    watts: float


class _Lines:
    """The lines of the head of the file, asked for by their number in the standard."""

    def __init__(self, lines: list[str]) -> None:
        self._lines = lines

    def text(self, line: int) -> str:
        if line > len(self._lines):
            raise LampFileError(
                f"the file ends before line {line}; an EULUMDAT file goes on there",
                len(self._lines),
            )
        return self._lines[line - 1].strip()

    def number(self, line: int, what: str, blank: float | None = None) -> float:
        text = self.text(line)
        if not text and blank is not None:
            return blank
        return number(text, line, what, decimal_comma=True)

    def integer(self, line: int, what: str, lowest: int, highest: int) -> int:
        return whole(self.number(line, what), line, what, lowest, highest)

    def at_least_zero(self, line: int, what: str) -> float:
        value = self.number(line, what, blank=0.0)
        if value < 0:
            raise LampFileError(f"found {value:g} for {what}; 0 or more is expected", line)
        return value


def looks_like_eulumdat(lines: list[str]) -> bool:
    """Whether lines 2 to 5 hold the type, symmetry and plane numbers of the format."""
    head = _Lines(lines)
    try:
        head.integer(2, "type", 0, 3)
        head.integer(3, "symmetry", 0, 4)
        head.integer(4, "planes", 0, 10_000)
        head.number(5, "step")
    except LampFileError:
        return False
    return True


def read_eulumdat(lines: list[str], lamp_set: int = 0) -> Photometry:
    """Read a file's lines, for one of its lamp sets (the first is 0).

    Raises ``LampFileError`` with the line and what was expected there.
    """
    head, warnings = _Lines(lines), list[str]()
    head.integer(2, "the type of the luminaire (1 to 3)", 0, 3)
    symmetry = _SYMMETRIES[head.integer(3, "the symmetry (0 to 4)", 0, 4)]
    planes = head.integer(4, "the number of C planes", 1, MAX_AZIMUTHS)
    _check_plane_count(planes, symmetry)
    angles = head.integer(6, "the number of angles in each plane", 2, MAX_POLAR)
    opening = _opening(head, warnings)
    output_ratio = head.number(23, "the light output ratio", blank=0.0) / 100
    factor = head.number(24, "the conversion factor", blank=1.0)
    if factor <= 0:
        warnings.append(f"Line 24 gives the conversion factor {factor:g}; it is taken as 1.")
        factor = 1.0
    if head.number(25, "the tilt during measurement", blank=0.0):
        warnings.append(
            f"The lamp was measured with a tilt of {head.text(25)}°; the planes are taken as if it "
            "hung level."
        )
    lamp, after = _lamp_sets(head, lamp_set, warnings)
    numbers = NumberStream(lines, after - 1, decimal_comma=True)
    numbers.many(_RATIOS, "a direct ratio")
    c_angles = numbers.angles(planes, "a C angle", 0.0, 360.0)
    c_line = numbers.line
    polar = numbers.angles(angles, "a γ angle", 0.0, 180.0)
    kept = _stored_planes(c_angles, symmetry, c_line)
    stored = numbers.many(len(kept) * angles, "an intensity in cd per 1000 lm")
    left = numbers.rest()
    if left is not None:
        warnings.append(
            f"From line {left} on the file goes on after the last intensity; the rest is not read."
        )
    scale = factor * lamp.lumens / 1000
    table = clean_intensities((stored * scale).reshape(len(kept), angles), numbers.line, warnings)
    azimuths, rows = full_circle(kept, table, symmetry)
    azimuths, rows = rotated(azimuths, rows, _ACROSS_TO_ALONG)
    photometry = Photometry(
        polar_deg=polar,
        azimuths_deg=azimuths,
        candela=rows,
        source_format="EULUMDAT",
        symmetry=WORDS[symmetry].replace("0-180", "C 0-180").replace("90-270", "C 90-270"),
        lamp_count=lamp.count,
        lumens_per_lamp=None if lamp.absolute else lamp.lumens / lamp.count,
        output_ratio=output_ratio if output_ratio > 0 else None,
        watts=lamp.watts if lamp.watts > 0 else None,
        opening=opening,
        keywords=_keywords(head, lamp),
    )
    _check_totals(photometry, head, lamp.lumens, warnings)
    return dataclasses.replace(photometry, warnings=tuple(warnings))


def _opening(head: _Lines, warnings: list[str]) -> Opening:
    """Luminous area (lines 16 to 21) in metres; of the whole luminaire where it is not given."""
    length, width = (head.at_least_zero(line, "a size of the luminous area") for line in (16, 17))
    heights = [head.at_least_zero(line, "a height of the luminous area") for line in range(18, 22)]
    if length == 0:
        length = head.at_least_zero(13, "the length of the luminaire")
        width = head.at_least_zero(14, "the width of the luminaire")
        if length > 0:
            warnings.append(
                "The file gives no luminous area; the size of the whole luminaire is used."
            )
    height = max(heights)
    if max(length, width, height) > 100_000:
        raise LampFileError("the luminous area is larger than 100 m; a size in mm is expected", 16)
    length, width, height = length / 1000, width / 1000, height / 1000
    if length == 0:
        return Opening("point")
    if width == 0:
        return Opening("vertical cylinder" if height > 0 else "circle", length, length, height)
    return Opening("box" if height > 0 else "rectangle", length, width, height)


def _lamp_sets(head: _Lines, wanted: int, warnings: list[str]) -> tuple[_LampSet, int]:
    """The wanted lamp set, and the number of the line after the last set."""
    count = head.integer(26, "the number of lamp sets", 1, _MAX_SETS)
    sets = [_lamp_set(head, 27 + 6 * index, warnings) for index in range(count)]
    if not 0 <= wanted < count:
        raise LampFileError(f"there is no lamp set {wanted + 1}; the file holds {count}", 26)
    if count > 1:
        told = "; ".join(f"{number}: {_told(lamp)}" for number, lamp in enumerate(sets, start=1))
        warnings.append(f"The file holds {count} lamp sets ({told}); set {wanted + 1} is used.")
    return sets[wanted], 27 + 6 * count


def _told(lamp: _LampSet) -> str:
    return f"{lamp.kind[:40]} {lamp.lumens:g} lm {lamp.watts:g} W".strip()


def _lamp_set(head: _Lines, line: int, warnings: list[str]) -> _LampSet:
    count = head.integer(line, "the number of lamps", -10_000, 10_000)
    lumens = head.number(line + 2, "the total flux of the lamps in lm", blank=0.0)
    if lumens <= 0 or count == 0:
        warnings.append(
            f"Lines {line} to {line + 2} give no lamps or no lumens; the intensities are taken for "
            "1000 lm, so that only the shape is right."
        )
        lumens, count = 1000.0, -1
    return _LampSet(
        count=abs(count),
        absolute=count < 0,
        kind=head.text(line + 1)[:MAX_KEYWORD_CHARACTERS],
        lumens=lumens,
        colour=head.text(line + 3)[:MAX_KEYWORD_CHARACTERS],
        rendering=head.text(line + 4)[:MAX_KEYWORD_CHARACTERS],
        watts=head.at_least_zero(line + 5, "the wattage including ballast"),
    )


def _check_plane_count(count: int, symmetry: Symmetry) -> None:
    """Where only a half or a quarter is stored, the planes must fall into it evenly."""
    parts = 4 if symmetry in {"quadrant", "about 90-270"} else 2
    if symmetry in {"about 0-180", "about 90-270", "quadrant"} and count % parts:
        raise LampFileError(
            f"there are {count} C planes, but with the symmetry of line 3 their number must be a "
            f"multiple of {parts}",
            4,
        )


def _stored_planes(c_angles: FloatArray, symmetry: Symmetry, line: int) -> FloatArray:
    """C angles of the planes whose intensities the file stores."""
    count = len(c_angles)
    if symmetry == "axial":
        return np.zeros(1)
    if symmetry == "none":
        return c_angles
    first, number_kept, low, high = {
        "about 0-180": (0, count // 2 + 1, 0.0, 180.0),
        "about 90-270": (3 * count // 4, count // 2 + 1, 270.0, 450.0),
        "quadrant": (0, count // 4 + 1, 0.0, 90.0),
    }[symmetry]
    index = first + np.arange(number_kept)
    kept: FloatArray = c_angles[index % count] + 360.0 * (index // count)
    if abs(kept[0] - low) > _NEAR or abs(kept[-1] - high) > _NEAR:
        raise LampFileError(
            f"with the symmetry of line 3 the stored planes must run from C {low % 360:g} to "
            f"C {high % 360:g}, but the C angles listed there run from {kept[0] % 360:g} to "
            f"{kept[-1] % 360:g}",
            line,
        )
    kept[0], kept[-1] = low, high
    return kept


def _keywords(head: _Lines, lamp: _LampSet) -> tuple[tuple[str, str], ...]:
    pairs = [(key, head.text(line)) for line, key in _TEXTS]
    pairs += [("ISSUEDATE", head.text(12)), ("LAMP", lamp.kind)]
    pairs += [("_COLOUR", lamp.colour), ("_CRI", lamp.rendering)]
    return tuple((key, text[:MAX_KEYWORD_CHARACTERS]) for key, text in pairs if text)


def _check_totals(
    photometry: Photometry, head: _Lines, lamp_lumens: float, warnings: list[str]
) -> None:
    """Compare with the output ratio and the downward share the file states."""
    ratio = total_lumens(photometry) / lamp_lumens
    stated = photometry.output_ratio
    if stated is not None and abs(ratio - stated) > 0.05:
        warnings.append(
            f"The intensities add up to {100 * ratio:.1f} % of the lamps' lumens, but line 23 "
            f"states a light output ratio of {100 * stated:.1f} %. Only the shape is used."
        )
    down = head.number(22, "the downward flux fraction", blank=0.0) / 100
    if down > 0 and abs(down - downward_share(photometry)) > 0.05:
        warnings.append(
            f"The intensities send {100 * downward_share(photometry):.1f} % of the light down, but "
            f"line 22 states {100 * down:.1f} %."
        )
