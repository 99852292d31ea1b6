"""Writing LM-63, and its luminous openings: shapes told by the signs of width, length and height.

The signs changed with the revisions (a circle of diameter D is width -D, length 0 until
1995 and width = length = -D from 2002 on). A combination that belongs to another revision
than the file's header is taken as that other one, with a warning; so are the combinations of
the earlier revisions, of which only later accounts were at hand.
"""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path
from typing import Final

from planner.catalogue.lamp_files.photometry import (
    FloatArray,
    LampFileError,
    Opening,
    Photometry,
    Shape,
    smallest_part,
)
from planner.files.disk import reason_of, write_atomically

_Signs = tuple[int, int, int]

# (width, length, height) signs. 1986 and 1991 share one table, 2002 and 2019 another.
_SIGNS_ALL: Final[dict[_Signs, Shape]] = {
    (0, 0, 0): "point",
    (1, 1, 0): "rectangle",
    (1, 0, 0): "rectangle",
    (0, 1, 0): "rectangle",
    (1, 1, 1): "box",
    (0, 1, 1): "box",
    (1, 0, 1): "box",
    (0, 0, 1): "box",
}
_SIGNS_1986: Final[dict[_Signs, Shape]] = {
    (-1, 0, 0): "circle",
    (-1, 0, 1): "vertical cylinder",
    (-1, 1, 0): "ellipse",
    (-1, 1, 1): "ellipsoid",
}
_SIGNS_1995: Final[dict[_Signs, Shape]] = {
    (-1, 0, 0): "circle",
    (-1, 0, 1): "vertical cylinder",
    (-1, 0, -1): "sphere",
    (0, 1, -1): "horizontal cylinder along the 0° plane",
    (1, 0, -1): "horizontal cylinder across the 0° plane",
    (1, -1, 1): "vertical elliptical cylinder",
    (-1, 1, 1): "vertical elliptical cylinder",
    (1, -1, -1): "ellipsoid",
    (-1, 1, -1): "ellipsoid",
}
_SIGNS_2002: Final[dict[_Signs, Shape]] = {
    (-1, -1, 0): "ellipse",
    (-1, -1, 1): "vertical elliptical cylinder",
    (-1, -1, -1): "ellipsoid",
    (-1, 1, -1): "horizontal cylinder along the 0° plane",
    (1, -1, -1): "horizontal cylinder across the 0° plane",
    (-1, 0, -1): "vertical ellipse",
}
_ROUND: Final[dict[Shape, Shape]] = {
    "ellipse": "circle",
    "vertical elliptical cylinder": "vertical cylinder",
    "ellipsoid": "sphere",
    "vertical ellipse": "vertical circle",
}
_SIGNS_TO_WRITE: Final[dict[Shape, _Signs]] = {
    "point": (0, 0, 0),
    "rectangle": (1, 1, 0),
    "box": (1, 1, 1),
    "circle": (-1, -1, 0),
    "ellipse": (-1, -1, 0),
    "vertical cylinder": (-1, -1, 1),
    "vertical elliptical cylinder": (-1, -1, 1),
    "sphere": (-1, -1, -1),
    "ellipsoid": (-1, -1, -1),
    "horizontal cylinder along the 0° plane": (-1, 1, -1),
    "horizontal cylinder across the 0° plane": (1, -1, -1),
    "vertical circle": (-1, 0, -1),
    "vertical ellipse": (-1, 0, -1),
}


def opening_of(
    width: float, length: float, height: float, revision: int
) -> tuple[Opening, tuple[str, ...]]:
    """The opening that three signed sizes [m] mean in a revision, and warnings."""
    signs: _Signs = (_sign(width), _sign(length), _sign(height))
    own, others = _tables(revision)
    if signs in _SIGNS_ALL:
        return Opening(_SIGNS_ALL[signs], length, width, height), ()
    size = f"width {width:g}, length {length:g}, height {height:g} m"
    across, along, tall = abs(width), abs(length), abs(height)
    table = next((table for table in (own, *others) if signs in table), None)
    if table is None:
        flat: Shape = "rectangle" if signs[2] == 0 else "box"
        return Opening(flat, along, across, tall), (
            f"The signs of the luminous opening ({size}) stand for no shape of LM-63; it is taken "
            f"as a {flat} of that size.",
        )
    # A size of 0 beside a negative one repeats that one: a diameter is written once.
    if signs[1] == 0 and table is not _SIGNS_2002:
        along = tall if signs[0] > 0 else across
    if signs[0] == 0:
        across = tall
    shape = table[signs]
    if shape in _ROUND and _is_round(shape, across, along, tall):
        shape = _ROUND[shape]
    told: tuple[str, ...] = ()
    if table is not own:
        told = (
            f"The size of the luminous opening ({size}) follows another revision of LM-63 than "
            f"the file's first line; it is taken as a {shape}.",
        )
    elif revision < 2002 and shape != "circle":
        told = (
            f"The luminous opening ({size}) is taken as a {shape}; compare with the lamp itself.",
        )
    return Opening(shape, along, across, tall), told


def signed_size(opening: Opening) -> tuple[float, float, float]:
    """Width, length and height with the signs of LM-63-2019 [m]."""
    width, length, height = _SIGNS_TO_WRITE[opening.shape]
    return width * opening.width, length * opening.length, height * opening.height


def _tables(revision: int) -> tuple[dict[_Signs, Shape], tuple[dict[_Signs, Shape], ...]]:
    if revision >= 2002:
        return _SIGNS_2002, (_SIGNS_1995, _SIGNS_1986)
    if revision >= 1995:
        return _SIGNS_1995, (_SIGNS_2002, _SIGNS_1986)
    return _SIGNS_1986, (_SIGNS_1995, _SIGNS_2002)


def _is_round(shape: Shape, across: float, along: float, tall: float) -> bool:
    """Whether the sizes that make a shape round are equal."""
    if shape == "vertical ellipse":
        return _near(across, tall)
    return _near(across, along) and (shape != "ellipsoid" or _near(across, tall))


def _near(a: float, b: float) -> bool:
    return abs(a - b) <= 1e-6 * max(a, b)


def _sign(value: float) -> int:
    return (value > 0) - (value < 0)


# -- Writing LM-63-2019, with all multipliers worked in and the smallest part of the circle ---

_REQUIRED: Final = ("TEST", "TESTLAB", "ISSUEDATE", "MANUFAC")
_LINE_END: Final = "\r\n"
_LONGEST_TEXT: Final = 200
_NUMBERS_A_LINE: Final = 10


def lm63_text(photometry: Photometry) -> str:
    """The file as text. Keywords the standard requires and that are missing say 'not stated'."""
    azimuths, table = smallest_part(photometry.azimuths_deg, photometry.candela)
    lines = ["IES:LM-63-2019"]
    held = {key for key, text in photometry.keywords if text.strip()}
    lines.extend(f"[{key}] not stated" for key in _REQUIRED if key not in held)
    for key, text in photometry.keywords:
        if text.strip():
            # The 2019 form knows no free label lines; user keywords begin with an underscore.
            lines.extend(_keyword_lines("_LABEL" if key == "LABEL" else key, text))
    lines.extend(_tilt_lines(photometry))
    lumens = -1.0 if photometry.lumens_per_lamp is None else photometry.lumens_per_lamp
    width, length, height = signed_size(photometry.opening)
    lamp = [float(photometry.lamp_count), lumens, 1.0, float(len(photometry.polar_deg))]
    lamp += [float(len(azimuths)), 1.0, 2.0, width, length, height]
    lines.append(_joined(lamp))
    lines.append(f"1 {photometry.generation:.5f} {_plain(photometry.watts or 0.0)}")
    for row in (photometry.polar_deg, azimuths, *table):
        lines.extend(_number_lines(row))
    return _LINE_END.join(lines) + _LINE_END


def write_lm63(photometry: Photometry, path: Path) -> None:
    """Write the file; it is complete or not there at all.

    Raises ``LampFileError`` if the system refuses.
    """
    try:
        write_atomically(path, lm63_text(photometry).encode("utf-8"))
    except (OSError, ValueError) as error:
        # ValueError: a name the system cannot take (a NUL in it).
        raise LampFileError(f"'{path.name}' cannot be written: {reason_of(error)}") from error


def _keyword_lines(key: str, text: str) -> list[str]:
    lines = []
    for part in text.split("\n"):
        piece = part.strip()
        while len(piece) > _LONGEST_TEXT:
            cut = piece.rfind(" ", 1, _LONGEST_TEXT)
            cut = cut if cut > 0 else _LONGEST_TEXT
            lines.append(piece[:cut].strip())
            piece = piece[cut:].strip()
        lines.append(piece)
    return [f"[{key if index == 0 else 'MORE'}] {line}" for index, line in enumerate(lines)]


def _tilt_lines(photometry: Photometry) -> list[str]:
    tilt = photometry.tilt
    if tilt is None:
        return ["TILT=NONE"]
    lines = ["TILT=INCLUDE", str(tilt.geometry), str(len(tilt.angles_deg))]
    return [*lines, *_number_lines(tilt.angles_deg), *_number_lines(tilt.factors)]


def _number_lines(values: Iterable[float] | FloatArray) -> list[str]:
    numbers = [float(value) for value in values]
    return [
        _joined(numbers[start : start + _NUMBERS_A_LINE])
        for start in range(0, len(numbers), _NUMBERS_A_LINE)
    ]


def _joined(numbers: list[float]) -> str:
    return " ".join(_plain(value) for value in numbers)


def _plain(value: float) -> str:
    """A number with up to twelve digits and no more than it needs."""
    return f"{value:.12g}" if value else "0"
