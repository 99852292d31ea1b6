"""The program's name, and the folders its files lie in."""

# ruff: noqa: PLC0415 - platformdirs only where no folder is given

from __future__ import annotations

import os
import sys
from pathlib import Path
from typing import Final

NAME: Final = "grow-space-light-planner"

SETTINGS_FILE: Final = "settings.json"


def settings_folder() -> Path:
    """Where the settings file lies; ``PLANNER_SETTINGS_DIR`` overrides the system's place."""
    return _folder("PLANNER_SETTINGS_DIR", "user_config_dir")


def user_folder() -> Path:
    """Folder of the user's own entries; ``PLANNER_DATA_DIR`` overrides the system's place."""
    return _folder("PLANNER_DATA_DIR", "user_data_dir")


def state_folder() -> Path:
    """The user's state folder of this program; ``PLANNER_STATE_DIR`` overrides it."""
    return _folder("PLANNER_STATE_DIR", "user_state_dir")


def _folder(variable: str, kind: str) -> Path:
    override = os.environ.get(variable, "").strip()
    if override:
        return Path(override).expanduser()
    import platformdirs

    return Path(getattr(platformdirs, kind)(NAME, appauthor=False))


# -- data files ------------------------------------------------------------------------

_PACKAGE = Path(__file__).resolve().parent


def _roots() -> tuple[Path, ...]:
    roots = [_PACKAGE / "_resources", _PACKAGE.parent / "resources"]
    bundle = getattr(sys, "_MEIPASS", None)
    if bundle is not None:
        roots.insert(0, Path(str(bundle)) / "resources")
    return tuple(roots)


def resource_path(name: str) -> Path:
    """Find a data file or folder by its name inside ``resources``, with forward slashes.

    Raises
    ------
    FileNotFoundError
        If no copy of the program's data holds it; the message says where was looked.
    """
    roots = _roots()
    for root in roots:
        candidate = root / name
        if candidate.exists():
            return candidate
    places = ", ".join(str(root) for root in roots)
    raise FileNotFoundError(
        f"the program's data file '{name}' is missing; it was looked for in {places}. "
        "Install the program again."
    )
