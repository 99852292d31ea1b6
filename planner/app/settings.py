"""Settings: how the user likes the program to be. Nothing of a plan is kept here.

Every key stands once in a table with its default and the check a stored value must
pass; what cannot be read falls back to the default.
"""

from __future__ import annotations

import os
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final, Generic, TypeVar

import platformdirs
from PySide6.QtCore import QSettings

from planner.app.display import COLOUR_MAPS, DisplayState
from planner.app.theme import Theme
from planner.units import LengthUnit

APP_FOLDER: Final = "grow-space-light-planner"
SETTINGS_DIR_VARIABLE: Final = "PLANNER_SETTINGS_DIR"

LARGEST_PX: Final = 100_000
"""Beyond any desktop; places and sizes above it are not believed."""

_T = TypeVar("_T")
Rect = tuple[int, int, int, int]


@dataclass(frozen=True)
class Key(Generic[_T]):
    """One setting: its name in the file, its default, and how its text is read."""

    name: str
    default: _T
    read: Callable[[str], _T]
    write: Callable[[_T], str] = str


def _flag(text: str) -> bool:
    if text not in {"true", "false"}:
        raise ValueError(text)
    return text == "true"


def _write_flag(value: bool) -> str:
    return "true" if value else "false"


def _colour_map(text: str) -> str:
    if text not in COLOUR_MAPS:
        raise ValueError(text)
    return text


def _cells(text: str) -> int:
    value = int(text)
    if not 4 <= value <= 96:
        raise ValueError(text)
    return value


def _rect(text: str) -> Rect | None:
    if not text:
        return None
    x, y, width, height = (int(part) for part in text.split(","))
    # What no screen has (a damaged file) would not fit into Qt's numbers either.
    if not (200 <= width <= LARGEST_PX and 150 <= height <= LARGEST_PX):
        raise ValueError(text)
    if max(abs(x), abs(y)) > LARGEST_PX:
        raise ValueError(text)
    return x, y, width, height


def _write_rect(value: Rect | None) -> str:
    return "" if value is None else ",".join(str(part) for part in value)


def _paths(text: str) -> tuple[Path, ...]:
    return tuple(Path(line) for line in text.split("\n") if line)


def _write_paths(value: tuple[Path, ...]) -> str:
    return "\n".join(str(path) for path in value)


def _path(text: str) -> Path | None:
    return Path(text) if text else None


def _write_path(value: Path | None) -> str:
    return "" if value is None else str(value)


Pairs = tuple[tuple[str, str], ...]


def _pairs(text: str) -> Pairs:
    found = []
    for line in text.split("\n"):
        lamp, _, spectrum = line.partition("=")
        if lamp and spectrum:
            found.append((lamp, spectrum))
    return tuple(found)


def _write_pairs(value: Pairs) -> str:
    return "\n".join(f"{lamp}={spectrum}" for lamp, spectrum in value)


UNIT = Key("view/unit", LengthUnit.CM, LengthUnit)
COLOUR_MAP = Key("view/colour_map", COLOUR_MAPS[0], _colour_map)
CONTOURS = Key("view/contours", True, _flag, _write_flag)
BAND_WASH = Key("view/band_wash", False, _flag, _write_flag)
GAINS = Key("view/gains", False, _flag, _write_flag)
CELLS = Key("view/cells", 24, _cells)
THEME = Key("view/theme", Theme.SYSTEM, Theme)
WINDOW_RECT: Final[Key[Rect | None]] = Key("window/rect", None, _rect, _write_rect)
MAXIMISED = Key("window/maximised", False, _flag, _write_flag)
RECENT: Final[Key[tuple[Path, ...]]] = Key("files/recent", (), _paths, _write_paths)
LAST_PLAN: Final[Key[Path | None]] = Key("files/last_plan", None, _path, _write_path)
LAST_FOLDER: Final[Key[Path | None]] = Key("files/last_folder", None, _path, _write_path)
LAMP_SPECTRA: Final[Key[Pairs]] = Key("lamps/spectra", (), _pairs, _write_pairs)
STARTED_BEFORE = Key("start/before", False, _flag, _write_flag)

KEYS: Final[tuple[Key[Any], ...]] = (
    UNIT,
    COLOUR_MAP,
    CONTOURS,
    BAND_WASH,
    GAINS,
    CELLS,
    THEME,
    WINDOW_RECT,
    MAXIMISED,
    RECENT,
    LAST_PLAN,
    LAST_FOLDER,
    LAMP_SPECTRA,
    STARTED_BEFORE,
)


def settings_folder() -> Path:
    """Where the settings file lies; ``PLANNER_SETTINGS_DIR`` overrides the system's place."""
    override = os.environ.get(SETTINGS_DIR_VARIABLE)
    if override:
        return Path(override)
    return Path(platformdirs.user_config_dir(APP_FOLDER, appauthor=False))


class Settings:
    """Reads and writes the keys of the table in an ini file (none: only in memory)."""

    def __init__(self, folder: Path | None) -> None:
        self._memory: dict[str, str] = {}
        self._file: QSettings | None = None
        if folder is not None:
            path = folder / "settings.ini"
            self._file = QSettings(str(path), QSettings.Format.IniFormat)

    @classmethod
    def of_user(cls) -> Settings:
        """The settings of whoever runs the program."""
        return cls(settings_folder())

    @classmethod
    def in_memory(cls) -> Settings:
        """All defaults, kept nowhere."""
        return cls(None)

    def get(self, key: Key[_T]) -> _T:
        """The stored value, or the default where nothing readable is stored."""
        if self._file is None:
            text: object = self._memory.get(key.name)
        else:
            text = self._file.value(key.name)
        if not isinstance(text, str):
            return key.default
        try:
            return key.read(text)
        except ValueError:
            return key.default

    def set(self, key: Key[_T], value: _T) -> None:
        """Store a value."""
        text = key.write(value)
        if self._file is None:
            self._memory[key.name] = text
        else:
            self._file.setValue(key.name, text)

    def flush(self) -> None:
        """Write to disk now."""
        if self._file is not None:
            self._file.sync()

    def display_state(self) -> DisplayState:
        """The display choices as stored."""
        return DisplayState(
            unit=self.get(UNIT),
            colour_map=self.get(COLOUR_MAP),
            contours=self.get(CONTOURS),
            band_wash=self.get(BAND_WASH),
            gains=self.get(GAINS),
            cells=self.get(CELLS),
        )

    def keep_display_state(self, state: DisplayState) -> None:
        """Store the display choices."""
        self.set(UNIT, state.unit)
        self.set(COLOUR_MAP, state.colour_map)
        self.set(CONTOURS, state.contours)
        self.set(BAND_WASH, state.band_wash)
        self.set(GAINS, state.gains)
        self.set(CELLS, state.cells)
