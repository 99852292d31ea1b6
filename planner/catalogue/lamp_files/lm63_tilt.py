"""The TILT part of LM-63: how a tilt-sensitive lamp dims or brightens as it is tilted.

A grow lamp hangs level, so the table changes nothing here; it is kept to be written back.
"""

from __future__ import annotations

import re
from pathlib import Path
from typing import Final

import numpy as np

from planner.catalogue.lamp_files.photometry import MAX_POLAR, LampFileError, Tilt
from planner.catalogue.lamp_files.tokens import NumberStream, decode, shown

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
