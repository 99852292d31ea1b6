"""Writing LM-63-2019, with all multipliers worked in and the smallest part of the circle."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path
from typing import Final

from planner.catalogue.lamp_files.lm63_opening import signed_size
from planner.catalogue.lamp_files.photometry import FloatArray, LampFileError, Photometry
from planner.catalogue.lamp_files.symmetry import smallest_part
from planner.files.atomic import write_atomically

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
        reason = getattr(error, "strerror", None) or error
        raise LampFileError(f"'{path.name}' cannot be written: {reason}") from error


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
