"""The user's own linings and lamps: one JSON file each in the user's data folder.

A file that cannot be read is left alone and reported in a sentence; it never stops the
program.
"""

from __future__ import annotations

import os
from pathlib import Path
from typing import Final, TypeVar

import platformdirs
from pydantic import ValidationError

from planner.files.atomic import write_atomically
from planner.plan.lamp import LampModel
from planner.plan.lining import OPENING_KEY, Lining

FOLDER_NAME: Final = "grow-space-light-planner"
FOLDER_VARIABLE: Final = "PLANNER_DATA_DIR"
MAX_FILE_BYTES: Final = 1_000_000

_Entry = TypeVar("_Entry", Lining, LampModel)


class CatalogueError(Exception):
    """An entry that cannot be kept or taken away; the message is a sentence for people."""


def user_folder() -> Path:
    """Folder of the user's own entries; the variable PLANNER_DATA_DIR overrides it."""
    override = os.environ.get(FOLDER_VARIABLE, "").strip()
    if override:
        return Path(override).expanduser()
    return Path(platformdirs.user_data_dir(FOLDER_NAME, appauthor=False))


def read_entries(folder: Path, kind: type[_Entry]) -> tuple[tuple[_Entry, ...], tuple[str, ...]]:
    """Read all entries of a folder, in the order of their file names.

    Returns the entries and a sentence for each file that had to be left out. A folder
    that does not exist holds no entries.
    """
    try:
        paths = sorted(path for path in folder.iterdir() if path.suffix.lower() == ".json")
    except FileNotFoundError:
        return (), ()
    except OSError as error:
        return (), (f"The folder '{folder}' could not be read: {_reason(error)}.",)
    entries: dict[str, _Entry] = {}
    problems: list[str] = []
    for path in paths:
        try:
            entry = _read_entry(path, kind)
        except CatalogueError as error:
            problems.append(f"'{path}' was left out: {error}")
            continue
        if entry.key in entries:
            problems.append(
                f"'{path}' was left out: another file already holds the key '{entry.key}'; "
                "give each entry its own key."
            )
            continue
        entries[entry.key] = entry
    return tuple(entries.values()), tuple(problems)


def _read_entry(path: Path, kind: type[_Entry]) -> _Entry:
    try:
        if path.exists() and not (path.is_file() or path.is_dir()):
            # Reading a pipe would wait for ever.
            raise CatalogueError("it is not a file.")
        if path.stat().st_size > MAX_FILE_BYTES:
            raise CatalogueError("it is larger than 1 MB, far too large for one entry.")
        entry = kind.model_validate_json(path.read_bytes())
    except OSError as error:
        raise CatalogueError(f"it could not be read: {_reason(error)}.") from error
    except ValidationError as error:
        raise CatalogueError(_first_problem(error)) from error
    _check_key(entry)
    return entry


def _check_key(entry: Lining | LampModel) -> None:
    if isinstance(entry, Lining) and entry.key == OPENING_KEY:
        raise CatalogueError("the key 'open' stands for an opening; give the lining another key.")


def _first_problem(error: ValidationError) -> str:
    first = error.errors(include_url=False)[0]
    message = str(first["msg"]).removeprefix("Value error, ").rstrip(".")
    if first["type"] == "json_invalid":
        return f"it is not JSON ({message})."
    place = ".".join(str(part) for part in first["loc"])
    return f"{message}." if not place else f"field '{place}': {message}."


def _reason(error: OSError) -> str:
    return error.strerror or str(error)


def write_entry(folder: Path, entry: Lining | LampModel) -> Path:
    """Keep an entry as ``<key>.json``, replacing an older one of that key; return its path.

    The file is complete or not there at all, also when the power fails meanwhile.

    Raises
    ------
    CatalogueError
        If the key is not allowed or the file cannot be written.
    """
    _check_key(entry)
    path = folder / f"{entry.key}.json"
    text = entry.model_dump_json(indent=2) + "\n"
    try:
        folder.mkdir(parents=True, exist_ok=True)
        write_atomically(path, text.encode("utf-8"))
    except OSError as error:
        raise CatalogueError(
            f"'{entry.name}' could not be kept in '{folder}': {_reason(error)}. "
            "Check that the folder may be written to and the disk is not full."
        ) from error
    return path


def remove_entry(folder: Path, key: str, kind: type[_Entry]) -> bool:
    """Take an entry away, whatever its file is called; False when there was none.

    Raises
    ------
    CatalogueError
        If the file cannot be removed.
    """
    removed = False
    try:
        for path in sorted(folder.glob("*.json")):
            try:
                found = _read_entry(path, kind).key == key
            except CatalogueError:
                continue
            if found:
                path.unlink()
                removed = True
    except OSError as error:
        raise CatalogueError(f"'{key}' could not be removed: {_reason(error)}.") from error
    return removed
