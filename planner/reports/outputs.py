"""Where answers are written: files, or standard output where '-' is named."""

from __future__ import annotations

import os
import sys
from pathlib import Path
from typing import Final

STANDARD_OUTPUT: Final = "-"


class OutputError(Exception):
    """An output that cannot be written; the message is the sentence to print."""


def write_output(out: str, data: bytes) -> None:
    """Write an answer to a file, whole or not at all, or to standard output.

    Raises
    ------
    OutputError
        If the file cannot be written or standard output is closed.
    """
    if out == STANDARD_OUTPUT:
        if sys.stdout is None:
            raise OutputError("Standard output is closed; name a file instead of '-'.")
        sys.stdout.flush()
        # As bytes: neither the terminal's signs nor its line ends may change the data.
        sys.stdout.buffer.write(data)
        sys.stdout.flush()
        return
    from planner.files.atomic import write_atomically  # noqa: PLC0415 - only when asked
    from planner.files.errors import reason_of  # noqa: PLC0415 - only when asked

    try:
        write_atomically(Path(out), data)
    except OSError as error:
        raise OutputError(f"'{out}' cannot be written: {reason_of(error)}.") from error
    except ValueError as error:
        raise OutputError(f"{out!r} is not a name a file can have.") from error


def need_folder_of(out: str | None) -> None:
    """Refuse an output in a folder that is not there before anything is computed."""
    if out is None or out == STANDARD_OUTPUT:
        return
    from planner.files.errors import is_folder  # noqa: PLC0415 - only when asked

    path = Path(out)
    if is_folder(path):
        raise OutputError(f"'{out}' is a folder; name a file in it.")
    if not is_folder(path.parent):
        raise OutputError(f"'{out}' cannot be written: there is no folder '{path.parent}'.")


def need_names_apart(plan: str | None, *outs: str | None) -> None:
    """Refuse to write two outputs into one file, or one over the plan it is made from."""
    named = [out for out in outs if out is not None and out != STANDARD_OUTPUT]
    taken = None if plan is None else _place(plan)
    places = [_place(out) for out in named]
    for number, (out, place) in enumerate(zip(named, places, strict=True)):
        if place == taken:
            raise OutputError(f"'{out}' is the plan itself; name another file to write to.")
        if place in places[:number]:
            raise OutputError(f"'{out}' is named for two outputs; give each its own file.")


def _place(name: str) -> str:
    try:
        return os.path.realpath(name)
    except ValueError as error:
        raise OutputError(f"{name!r} is not a name a file can have.") from error


def drop_output() -> None:
    """Let what is still held back for an output that takes no more go nowhere."""
    if sys.stdout is not None:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
