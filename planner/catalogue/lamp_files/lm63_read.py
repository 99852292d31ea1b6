"""Reading ANSI/IES LM-63 in its forms of 1986, 1991, 1995, 2002 and 2019.

Layout: a line with the revision (none in 1986), keyword lines, ``TILT=``, then numbers
separated by blanks, commas or line ends: 10 of the lamp, 3 of its gear, the vertical and
the horizontal angles, and the candela of one horizontal angle after the other. Intensity is
the stored value times candela multiplier, ballast factor and, before 1995, the factor of
ballast and lamp photometry.

Type C azimuths run counter-clockwise from the 0° plane, which lies along the lamp's length
(the 'length' of the luminous opening); that is our frame already, so nothing is turned.
"""

from __future__ import annotations

import dataclasses
import re
from dataclasses import dataclass
from pathlib import Path
from typing import Final

import numpy as np

from planner.catalogue.lamp_files.convert import to_type_c
from planner.catalogue.lamp_files.lm63_write import opening_of
from planner.catalogue.lamp_files.photometry import (
    MAX_AZIMUTHS,
    MAX_KEYWORD_CHARACTERS,
    MAX_KEYWORDS,
    MAX_POLAR,
    SIDEWAYS,
    WORDS,
    FloatArray,
    LampFileError,
    PhotometricType,
    Photometry,
    Symmetry,
    Tilt,
    full_circle,
    total_lumens,
)
from planner.catalogue.lamp_files.tokens import (
    NumberStream,
    clean_intensities,
    decode,
    shown,
)

FEET: Final = 0.3048
_HEADER: Final = re.compile(r"\s*IES(?:NA)?\s*:?\s*(?:LM-?63-?)?\s*(\d{4}|\d{2})\b", re.IGNORECASE)
_TILT: Final = re.compile(r"\s*TILT\s*=\s*(.*)", re.IGNORECASE)
_KEYWORD: Final = re.compile(r"\s*\[([^\]]{1,60})\]\s*(.*)")
_REVISIONS: Final = (1986, 1991, 1995, 2002, 2019)
_TYPES: Final[dict[int, PhotometricType]] = {1: "C", 2: "B", 3: "A"}
_SEARCHED_LINES: Final = 2 * MAX_KEYWORDS


@dataclass(frozen=True)
class _Lamp:
    """The 13 numbers after TILT."""

    count: int
    lumens: float
    factor: float
    vertical: int
    horizontal: int
    kind: PhotometricType
    size: tuple[float, float, float]
    generation: float
    watts: float


def looks_like_lm63(lines: list[str]) -> bool:
    """Whether the first line names a revision of LM-63 or a TILT line is there."""
    first = next(line for line in lines if line.strip())
    return bool(_HEADER.match(first)) or any(_TILT.match(line) for line in lines[:_SEARCHED_LINES])


def read_lm63(lines: list[str], folder: Path | None = None) -> Photometry:
    """Read a file's lines; a TILT file of its own is looked for in ``folder``.

    Raises ``LampFileError`` with the line and what was expected there.
    """
    warnings: list[str] = []
    revision, source_format, first = _header(lines, warnings)
    keywords, at = _keywords(lines, first, revision, warnings)
    numbers = NumberStream(lines, at + 1)
    tilt = read_tilt(_tilt_word(lines[at]), numbers, folder, warnings)
    lamp = _lamp(numbers, revision, warnings)
    low, high = POLAR[lamp.kind]
    vertical = numbers.angles(lamp.vertical, "a vertical angle", low, high)
    vertical_line = numbers.line
    low, high = HORIZONTAL[lamp.kind]
    horizontal = numbers.angles(lamp.horizontal, "a horizontal angle", low, high)
    horizontal_line = numbers.line
    table = _candela(numbers, lamp, warnings)
    left = numbers.rest()
    if left is not None:
        warnings.append(
            f"From line {left} on the file goes on after the last candela value; the rest is "
            "not read."
        )
    check_vertical(vertical, lamp.kind, vertical_line, warnings)
    if lamp.kind == "C":
        symmetry, azimuths, table = spread_type_c(horizontal, table, horizontal_line, warnings)
    else:
        symmetry = _spread_ab(lamp.kind, horizontal, table, horizontal_line, warnings)
        if horizontal[0] == 0:
            horizontal = np.concatenate([-horizontal[:0:-1], horizontal])
            table = np.concatenate([table[:0:-1], table])
        vertical, azimuths, table = to_type_c(lamp.kind, vertical, horizontal, table)
        if table.max() <= 0:
            raise LampFileError(
                "the lamp gives no light in any direction; candela values above 0 are expected"
            )
    opening, told = opening_of(*lamp.size, revision)
    warnings.extend(told)
    photometry = Photometry(
        polar_deg=vertical,
        azimuths_deg=azimuths,
        candela=table,
        source_format=source_format,
        photometric_type=lamp.kind,
        symmetry=symmetry,
        lamp_count=lamp.count,
        lumens_per_lamp=lamp.lumens if lamp.lumens > 0 else None,
        watts=lamp.watts if lamp.watts > 0 else None,
        opening=opening,
        keywords=keywords,
        tilt=tilt,
        generation=lamp.generation,
    )
    _check_lumens(photometry, warnings)
    return dataclasses.replace(photometry, warnings=tuple(warnings))


def _header(lines: list[str], warnings: list[str]) -> tuple[int, str, int]:
    """Revision, the first line as written, and the index of the line after it."""
    at = next(index for index, line in enumerate(lines) if line.strip())
    text = lines[at].strip()
    if not text.upper().startswith("IES"):
        return 1986, "LM-63-1986", at
    match = _HEADER.match(text)
    year = int(match.group(1)) if match else 0
    year += 1900 if 80 <= year < 100 else 2000 if 0 < year < 80 else 0
    if year not in _REVISIONS:
        warnings.append(
            f"Line {at + 1} names a revision of LM-63 that is not known ({shown(text)}); the file "
            "is read as the 2002 form."
        )
        return 2002, text[:60], at + 1
    return year, text[:60], at + 1


def _keywords(
    lines: list[str], first: int, revision: int, warnings: list[str]
) -> tuple[tuple[tuple[str, str], ...], int]:
    """Keyword pairs, and the index of the TILT line."""
    pairs: list[tuple[str, str]] = []
    for index in range(first, min(len(lines), first + _SEARCHED_LINES)):
        line = lines[index]
        if _TILT.match(line):
            return tuple(pairs), index
        if not line.strip():
            continue
        match = _KEYWORD.match(line)
        key, text = ("LABEL", line.strip())
        if match:
            key, text = match.group(1).strip().upper(), match.group(2).strip()
        elif revision > 1986:
            warnings.append(
                f"Line {index + 1} is no keyword line such as '[TEST] …'; it is kept as a label."
            )
        if key in {"BLOCK", "ENDBLOCK"}:
            warnings.append(
                f"Line {index + 1} divides the keywords into blocks; they are read as one."
            )
            continue
        if key == "MORE" and pairs:
            key, before = pairs.pop()
            text = f"{before}\n{text}"
        pairs.append((key, text[:MAX_KEYWORD_CHARACTERS]))
        if len(pairs) > MAX_KEYWORDS:
            raise LampFileError(
                f"more than {MAX_KEYWORDS} keyword lines; a line 'TILT=NONE' is expected before",
                index + 1,
            )
    raise LampFileError(
        "there is no line that begins with 'TILT='; it is expected after the keyword lines",
        min(len(lines), first + _SEARCHED_LINES),
    )


def _tilt_word(line: str) -> str:
    match = _TILT.match(line)
    return match.group(1).strip() if match else ""


def _lamp(numbers: NumberStream, revision: int, warnings: list[str]) -> _Lamp:
    count = numbers.integer("the number of lamps", 0, 10_000)
    lumens = numbers.one("the lumens per lamp")
    if lumens < 0 and lumens != -1:
        warnings.append(
            f"Line {numbers.line} gives {lumens:g} lumens per lamp; it is taken as -1, which says "
            "that the candela are absolute."
        )
    elif lumens == 0 or count == 0:
        warnings.append(
            f"Line {numbers.line} gives 0 lamps or 0 lumens; the candela are taken as absolute."
        )
        lumens = -1.0
    factor = _positive(numbers, "the candela multiplier")
    vertical = numbers.integer("the number of vertical angles", 2, MAX_POLAR)
    horizontal = numbers.integer("the number of horizontal angles", 1, MAX_AZIMUTHS)
    kind = _TYPES[numbers.integer("the photometric type (1 = C, 2 = B, 3 = A)", 1, 3)]
    unit = numbers.integer("the units type (1 = feet, 2 = metres)", 1, 2)
    size = numbers.many(3, "width, length and height of the luminous opening")
    if (np.abs(size) > 1000).any():
        raise LampFileError(
            "the luminous opening is larger than 1000; a size in feet or metres is expected",
            numbers.line,
        )
    width, length, height = (float(s) * (FEET if unit == 1 else 1.0) for s in size)
    factor *= _positive(numbers, "the ballast factor")
    generation = numbers.one("the second factor of the ballast (1 if unused)")
    if revision < 1995:
        if generation <= 0:
            raise LampFileError(
                f"found {generation:g} for the factor of ballast and lamp photometry; a number "
                "above 0 is expected",
                numbers.line,
            )
        factor *= generation
    if revision < 2019 or not 1 <= generation < 2:
        if revision >= 2019:
            warnings.append(
                f"Line {numbers.line} gives {generation:g} for the file generation type; a number "
                "from 1 to below 2 is expected. It is taken as undefined."
            )
        generation = 1.00001
    watts = numbers.one("the input watts")
    if watts < 0:
        raise LampFileError(
            f"found {watts:g} for the input watts; 0 or more is expected", numbers.line
        )
    if watts == 0:
        warnings.append("The file gives no input watts.")
    return _Lamp(
        max(count, 1), lumens, factor, vertical, horizontal, kind,
        (width, length, height), generation, watts,
    )  # fmt: skip


def _positive(numbers: NumberStream, what: str) -> float:
    value = numbers.one(what)
    if value <= 0:
        raise LampFileError(
            f"found {value:g} for {what}; a number above 0 is expected", numbers.line
        )
    return value


def _candela(numbers: NumberStream, lamp: _Lamp, warnings: list[str]) -> FloatArray:
    stored = numbers.many(lamp.vertical * lamp.horizontal, "a candela value")
    table = (stored * lamp.factor).reshape(lamp.horizontal, lamp.vertical)
    return clean_intensities(table, numbers.line, warnings)


def _spread_ab(
    kind: PhotometricType, horizontal: FloatArray, table: FloatArray, line: int, warnings: list[str]
) -> str:
    """Say what a type A or B file means; its symmetry in words."""
    warnings.append(
        f"The file is of photometric type {kind}; it was converted to vertical planes by "
        "interpolation."
    )
    if kind == "A":
        warnings.append(SIDEWAYS)
    if horizontal[0] > 0:
        raise LampFileError(
            f"the horizontal angles begin at {horizontal[0]:g}°; type {kind} begins at 0° or -90°",
            line,
        )
    if horizontal[0] == 0:
        return "left and right alike"
    mirrored = -horizontal[::-1]
    even = len(mirrored) == len(horizontal) and np.allclose(mirrored, horizontal)
    if not (even and np.allclose(table, table[::-1], atol=0.02 * table.max())):
        warnings.append(
            "Left and right of the lamp differ, and files of types A and B do not all count the "
            "horizontal angle the same way round; compare the polar plot with the lamp."
        )
    return "no symmetry"


def _check_lumens(photometry: Photometry, warnings: list[str]) -> None:
    stated = photometry.lumens_stated
    total = total_lumens(photometry)
    if stated is not None and total > 1.05 * stated:
        warnings.append(
            f"The candela add up to {total:.0f} lm, more than the {stated:.0f} lm of the lamps the "
            "file states; one of them is wrong. Only the shape is used."
        )


# -- The TILT part of LM-63 ------------------------------------------------------------
# A grow lamp hangs level, so the table changes nothing here; it is kept to be written back.

_LARGEST_TILT_FILE: Final = 1_000_000


def read_tilt(
    word: str, numbers: NumberStream, folder: Path | None, warnings: list[str]
) -> Tilt | None:
    """The tilt table that the word after ``TILT=`` stands for.

    ``NONE`` is none, ``INCLUDE`` follows in ``numbers``, anything else is a file that is
    looked for beside the lamp file, in ``folder`` and nowhere else.
    """
    plain = word.upper().split()
    if plain in (["NONE"], []):
        if not plain:
            warnings.append("The TILT line says nothing; it is taken as TILT=NONE.")
        return None
    if plain == ["INCLUDE"]:
        tilt = _table(numbers)
    else:
        data, name = _file_beside(word, folder)
        if not data:
            warnings.append(
                f"The tilt file {shown(name)} is not beside the lamp file; a lamp that hangs level "
                "does not need it."
            )
            return None
        try:
            tilt = _table(NumberStream(decode(data), 0))
        except LampFileError as error:
            raise LampFileError(f"the tilt file {shown(name)} cannot be used: {error}") from error
    level = float(np.interp(0.0, tilt.angles_deg, tilt.factors))
    if abs(level - 1) > 0.005:
        warnings.append(
            f"The tilt table gives the factor {level:g} for a lamp that hangs level, where 1 is "
            "usual; it is not applied."
        )
    return tilt


def _file_beside(word: str, folder: Path | None) -> tuple[bytes, str]:
    # A name, never a path: a lamp file has no business making us read elsewhere.
    name = re.split(r"[\\/]", word)[-1].strip().strip('"')
    if folder is None or name in {"", ".", ".."}:
        return b"", name
    path = folder / name
    try:
        if not path.is_file():
            return b"", name
        with path.open("rb") as stream:
            return stream.read(_LARGEST_TILT_FILE), name
    except (OSError, ValueError):
        return b"", name


def _table(numbers: NumberStream) -> Tilt:
    geometry = numbers.integer("the lamp-to-luminaire geometry of the tilt table", 1, 3)
    count = numbers.integer("the number of tilt angles", 1, MAX_POLAR)
    angles = numbers.angles(count, "a tilt angle", -180.0, 360.0)
    factors = numbers.many(count, "a tilt factor")
    if (factors < 0).any():
        raise LampFileError(
            f"found {factors.min():g} for a tilt factor; 0 or more is expected", numbers.line
        )
    return Tilt(geometry, tuple(map(float, angles)), tuple(map(float, factors)))


# -- Ranges of angles in LM-63, and the symmetry that the horizontal range of type C stands for --

POLAR: Final[dict[PhotometricType, tuple[float, float]]] = {
    "C": (0.0, 180.0),
    "B": (-180.0, 180.0),
    "A": (-90.0, 90.0),
}
HORIZONTAL: Final[dict[PhotometricType, tuple[float, float]]] = {
    "C": (-180.0, 360.0),
    "B": (-90.0, 90.0),
    "A": (-180.0, 180.0),
}
_NEAR: Final = 1e-3


def check_vertical(
    vertical: FloatArray, kind: PhotometricType, line: int, warnings: list[str]
) -> None:
    """Warn where the vertical angles are none of the usual ranges."""
    first, last = float(vertical[0]), float(vertical[-1])
    usual = {(0, 90), (90, 180), (0, 180)} if kind == "C" else {(-90, 90), (-180, 180)}
    if not any(abs(first - a) < _NEAR and abs(last - b) < _NEAR for a, b in usual):
        warnings.append(
            f"The vertical angles up to line {line} run from {first:g}° to {last:g}°; outside of "
            "them the lamp is taken as dark."
        )
    if kind == "C" and first >= 90:
        warnings.append("All light of this lamp goes up.")


def spread_type_c(
    horizontal: FloatArray, table: FloatArray, line: int, warnings: list[str]
) -> tuple[str, FloatArray, FloatArray]:
    """Symmetry in words, azimuths and rows of the full circle."""
    quarter = np.round(horizontal / 90.0) * 90.0
    horizontal = np.where(np.abs(horizontal - quarter) < _NEAR, quarter, horizontal)
    symmetry = _symmetry(horizontal, line, warnings)
    if symmetry == "none":
        horizontal, table = _without_seam(horizontal, table, warnings)
    azimuths, rows = full_circle(horizontal, table, symmetry)
    return WORDS[symmetry], azimuths, rows


def _symmetry(horizontal: FloatArray, line: int, warnings: list[str]) -> Symmetry:
    first, last = float(horizontal[0]), float(horizontal[-1])
    if len(horizontal) == 1:
        if abs(first) > _NEAR:
            warnings.append(
                f"The only horizontal angle is {first:g}°, not 0°; the lamp is taken as the same "
                "all around."
            )
        return "axial"
    ranges: tuple[tuple[float, float, Symmetry], ...] = (
        (0, 90, "quadrant"),
        (0, 180, "about 0-180"),
        (90, 270, "about 90-270"),
    )
    for low, high, symmetry in ranges:
        if abs(first - low) < _NEAR and abs(last - high) < _NEAR:
            return symmetry
    if abs(first + 90) < _NEAR and abs(last - 90) < _NEAR:
        warnings.append(
            "The horizontal angles run from -90° to 90°; the lamp is taken as mirrored about the "
            "90-270 plane."
        )
        return "about 90-270"
    if abs(first + 180) < _NEAR and abs(last - 180) < _NEAR:
        warnings.append("The horizontal angles run from -180° to 180°; they are taken as 0 to 360.")
        return "none"
    if abs(first) < _NEAR and last > 180:
        return "none"
    raise LampFileError(
        f"the horizontal angles run from {first:g}° to {last:g}°; they must be 0° alone, or run "
        "from 0° to 90°, 180° or 360°, or from 90° to 270°",
        line,
    )


def _without_seam(
    horizontal: FloatArray, table: FloatArray, warnings: list[str]
) -> tuple[FloatArray, FloatArray]:
    """Drop the plane that repeats the first one; warn where the two differ or one is missing."""
    turn = float(horizontal[-1] - horizontal[0])
    if abs(turn - 360) < _NEAR:
        if not np.allclose(table[0], table[-1], atol=0.02 * table.max()):
            warnings.append(
                f"The planes at {horizontal[0]:g}° and {horizontal[-1]:g}° are the same direction "
                "but differ; the first is used."
            )
        return horizontal[:-1], table[:-1]
    if 360 - turn > 2 * float(np.diff(horizontal).max()) + _NEAR:
        warnings.append(
            f"The horizontal angles stop at {horizontal[-1]:g}°; the gap to 360° is bridged in a "
            "straight line."
        )
    return horizontal, table
