"""The one door for lamp files: the format is found from the content, not from the name."""

from __future__ import annotations

from pathlib import Path

from planner.catalogue.lamp_files.eulumdat import looks_like_eulumdat, read_eulumdat
from planner.catalogue.lamp_files.lm63_read import looks_like_lm63, read_lm63
from planner.catalogue.lamp_files.photometry import MAX_FILE_BYTES, LampFileError, Photometry
from planner.catalogue.lamp_files.tokens import decode
from planner.files.disk import reason_of


def read_lamp_file(path: Path, *, lamp_set: int = 0) -> Photometry:
    """Read an LM-63 or EULUMDAT file.

    ``lamp_set`` chooses among the lamp sets of an EULUMDAT file, from 0.

    Raises
    ------
    LampFileError
        If the file cannot be read or is malformed; the message is one sentence that
        names the line, what was found and what is expected.
    """
    try:
        with path.open("rb") as stream:
            data = stream.read(MAX_FILE_BYTES + 1)
    except OSError as error:
        raise LampFileError(f"the file '{path.name}' cannot be read: {reason_of(error)}") from error
    return parse_lamp_file(data, folder=path.parent, suffix=path.suffix, lamp_set=lamp_set)


def parse_lamp_file(
    data: bytes, *, folder: Path | None = None, suffix: str = "", lamp_set: int = 0
) -> Photometry:
    """Read the content of a lamp file; see ``read_lamp_file``.

    ``folder`` is where a TILT file may be. ``suffix`` decides only where the content is
    so broken that it shows no format; the error then speaks of the right one.
    """
    lines = decode(data)
    if looks_like_lm63(lines) or suffix.lower() == ".ies":
        return read_lm63(lines, folder)
    if looks_like_eulumdat(lines) or suffix.lower() == ".ldt":
        return read_eulumdat(lines, lamp_set)
    raise LampFileError(
        "the file is neither LM-63 (a line 'TILT=' is missing) nor EULUMDAT (lines 2 to 5 hold "
        "no type, symmetry and number of planes)"
    )
