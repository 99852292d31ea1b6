"""Settings: how the user likes the program to be. Nothing of a plan is kept here.

One model, kept as JSON. A value that cannot be read falls back to its default and leaves
the others alone; a file that cannot be read at all is set aside and said.
"""

from __future__ import annotations

import json
import logging
from collections.abc import Collection
from dataclasses import asdict
from pathlib import Path
from typing import Annotated, Any, Final

from pydantic import AfterValidator, BaseModel, ConfigDict, Field, PlainValidator, ValidationError
from PySide6.QtCore import QObject, QRect, QSize, Qt, Signal
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QMainWindow, QMenu

from planner.app.display import COLOUR_MAPS, DisplayState
from planner.app.theme import Theme
from planner.files.disk import is_file, is_folder, real_path, write_atomically
from planner.folders import SETTINGS_FILE, settings_folder
from planner.language import LANGUAGES
from planner.metrics.figures import MAPPED
from planner.plan.refusal import in_print
from planner.units import LengthUnit

MAX_BYTES: Final = 1_000_000

LARGEST_PX: Final = 100_000
"""Beyond any desktop; places and sizes above it are not believed."""

_log = logging.getLogger(__name__)


def _one_of(known: Collection[str]) -> AfterValidator:
    def check(name: str) -> str:
        if name not in known:
            raise ValueError(name)
        return name

    return AfterValidator(check)


def _as_path(value: Any) -> Path:
    # By hand, because pydantic refuses the stand-ins for bytes of a name that is not UTF-8.
    if not isinstance(value, str | Path) or not str(value):
        raise ValueError(value)
    return Path(value)


FilePath = Annotated[Path, PlainValidator(_as_path)]
_Corner = Annotated[int, Field(ge=-LARGEST_PX, le=LARGEST_PX)]
# What no screen has (a damaged file) would not fit into Qt's numbers either.
_Width = Annotated[int, Field(ge=200, le=LARGEST_PX)]
_Height = Annotated[int, Field(ge=150, le=LARGEST_PX)]


class Values(BaseModel):
    """Everything that is remembered, with the defaults of a first start."""

    model_config = ConfigDict(frozen=True, extra="ignore")

    unit: LengthUnit = LengthUnit.CM
    colour_map: Annotated[str, _one_of(COLOUR_MAPS)] = COLOUR_MAPS[0]
    contours: bool = True
    band_wash: bool = False
    gains: bool = False
    ladder: bool = False
    stretched: bool = False
    shows: Annotated[str, _one_of(MAPPED)] = MAPPED[0]
    cells: Annotated[int, Field(ge=4, le=96)] = 24
    theme: Theme = Theme.SYSTEM
    language: Annotated[str, _one_of(("", *LANGUAGES))] = ""
    window_rect: tuple[_Corner, _Corner, _Width, _Height] | None = None
    maximised: bool = False
    recent: tuple[FilePath, ...] = ()
    last_plan: FilePath | None = None
    last_folder: FilePath | None = None
    lamp_spectra: dict[str, str] = {}
    used_last: Annotated[tuple[str, ...], Field(max_length=40)] = ()
    started_before: bool = False
    notices: bool = True
    version_seen: Annotated[str, Field(max_length=40)] = ""
    tour_seen: bool = False


class Settings:
    """The values of one user, read at the start and written when one changes.

    ``problem`` is a sentence where the file could not be read, else empty. Nothing here
    raises for what a disk holds or refuses.
    """

    def __init__(self, folder: Path | None) -> None:
        self._file = None if folder is None else folder / SETTINGS_FILE
        self.problem = ""
        self.values = Values() if self._file is None else self._first_read(self._file)

    @classmethod
    def of_user(cls) -> Settings:
        """The settings of whoever runs the program."""
        return cls(settings_folder())

    @classmethod
    def in_memory(cls) -> Settings:
        """All defaults, kept nowhere."""
        return cls(None)

    def keep(self, **changes: Any) -> None:
        """Change values by name and write them; raises ``ValueError`` for an unfit one.

        The file is read again before, so that two windows do not undo each other.
        """
        before = self.values if self._file is None else (_read(self._file) or self.values)
        self.values = Values.model_validate({**dict(before), **changes})
        if self._file is None or (self.values == before and is_file(self._file)):
            return
        text = json.dumps(self.values.model_dump(), default=str, indent=2)
        try:
            self._file.parent.mkdir(parents=True, exist_ok=True)
            write_atomically(self._file, (text + "\n").encode("ascii"))
        except OSError as error:
            _log.warning("The settings cannot be kept: %s", error)

    @property
    def display_state(self) -> DisplayState:
        """The display choices as kept."""
        kept = dict(self.values)
        return DisplayState(**{name: kept[name] for name in asdict(DisplayState())})

    @property
    def folder(self) -> Path:
        """Where files were last opened, if it is still there, else the user's home."""
        kept = self.values.last_folder
        return kept if kept is not None and is_folder(kept) else Path.home()

    def _first_read(self, file: Path) -> Values:
        if not is_file(file):
            old = file.with_suffix(".ini")
            return _from_ini(old) if is_file(old) else Values()
        found = _read(file)
        if found is not None:
            return found
        aside = file.with_name("settings-damaged.json")
        try:
            file.replace(aside)
            self.problem = f"The settings could not be read; they were set aside as '{aside}'."
        except OSError:
            self.problem = f"The settings in '{file}' could not be read and are not used."
        return Values()


def _read(file: Path) -> Values | None:
    """The values of a file; None where it holds none."""
    try:
        with file.open("rb") as stream:
            raw = json.loads(stream.read(MAX_BYTES))
    except (OSError, ValueError, RecursionError):
        return None
    return _values(raw) if isinstance(raw, dict) else None


def _values(raw: dict[str, Any]) -> Values:
    """The values that are fit, the others by default."""
    fit = {}
    for name, value in raw.items():
        try:
            Values.model_validate({name: value})
        except (ValidationError, UnicodeError):
            # Half a letter (an escape like \ud800 alone) is no ValidationError to pydantic.
            continue
        fit[name] = value
    return Values.model_validate(fit)


def _from_ini(file: Path) -> Values:
    """The values of the form in which earlier versions kept them."""
    from PySide6.QtCore import QSettings  # noqa: PLC0415 - once in the life of a user

    old = QSettings(str(file), QSettings.Format.IniFormat)
    found = {key.partition("/")[2]: old.value(key) for key in old.allKeys()}
    raw: dict[str, Any] = {key: text for key, text in found.items() if isinstance(text, str)}
    lines = {key: [line for line in text.split("\n") if line] for key, text in raw.items()}
    raw["rect"] = raw.get("rect", "").split(",")
    raw["recent"] = lines.get("recent", [])
    raw["spectra"] = dict(line.split("=", 1) for line in lines.get("spectra", []) if "=" in line)
    for new, key in (
        ("window_rect", "rect"), ("lamp_spectra", "spectra"), ("started_before", "before")
    ):  # fmt: skip
        raw[new] = raw.pop(key, None)
    return _values(raw)


# -- what the next start finds again ---------------------------------------------------

MAX_RECENT: Final = 10


class RecentPlans(QObject):
    """The list kept in the settings and a menu over it.

    Signal: ``chosen(Path)`` when an entry is picked.
    """

    chosen = Signal(object)

    def __init__(self, settings: Settings, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._settings = settings

    @property
    def paths(self) -> tuple[Path, ...]:
        """The files, newest first."""
        return self._settings.values.recent

    def add(self, path: Path) -> None:
        """Move a file to the top of the list."""
        path = real_path(path).absolute()
        others = tuple(known for known in self.paths if known != path)
        self._settings.keep(recent=(path, *others)[:MAX_RECENT])

    def clear(self) -> None:
        """Forget all."""
        self._settings.keep(recent=())

    def attach(self, menu: QMenu) -> None:
        """Fill the menu afresh whenever it opens."""
        menu.aboutToShow.connect(lambda: self.fill(menu))
        self.fill(menu)

    def fill(self, menu: QMenu) -> None:
        """Put the present list into a menu; files that are gone stand greyed."""
        menu.clear()
        paths = self.paths
        for number, path in enumerate(paths, start=1):
            found = is_file(path)
            mark = f"&{number}  " if number < 10 else f"{number}  "
            note = "" if found else "  (not found)"
            # A doubled ampersand is a plain one; a single one would be a shortcut mark.
            name = in_print(path.name).replace("&", "&&")
            action = menu.addAction(f"{mark}{name}{note}")
            action.setEnabled(found)
            action.setStatusTip(in_print(str(path)))
            action.triggered.connect(lambda _=False, path=path: self.chosen.emit(path))
        if not paths:
            menu.addAction("No plans opened yet").setEnabled(False)
        menu.addSeparator()
        clear = menu.addAction("Clear this list")
        clear.setEnabled(bool(paths))
        clear.triggered.connect(self.clear)


USUAL_SIZE: Final = QSize(1280, 800)


def restore_place(window: QMainWindow, settings: Settings) -> None:
    """Put the window where it was, or in a usual size where nothing is remembered."""
    areas = [screen.availableGeometry() for screen in QGuiApplication.screens()]
    kept = settings.values.window_rect
    if kept is None:
        window.resize(USUAL_SIZE.boundedTo(areas[0].size()) if areas else USUAL_SIZE)
    else:
        window.setGeometry(clamped(QRect(*kept), areas))
    if settings.values.maximised:
        window.setWindowState(window.windowState() | Qt.WindowState.WindowMaximized)


def keep_place(window: QMainWindow, settings: Settings) -> None:
    """Remember where the window stands (the ordinary place of a maximised one)."""
    large = window.isMaximized() or window.isFullScreen()
    rect = window.normalGeometry() if large else window.geometry()
    kept = settings.values.window_rect
    if rect.width() >= 200 and rect.height() >= 150:
        kept = (rect.x(), rect.y(), rect.width(), rect.height())
    settings.keep(window_rect=kept, maximised=window.isMaximized())


def clamped(rect: QRect, areas: list[QRect]) -> QRect:
    """The rectangle moved and, if need be, shrunk into the screen area it shares most with.

    A rectangle that touches no screen (one was unplugged) goes to the first.
    """
    if not areas:
        return rect

    def shared(area: QRect) -> int:
        common = area.intersected(rect)
        return max(common.width(), 0) * max(common.height(), 0)

    area = max(areas, key=shared)
    size = rect.size().boundedTo(area.size())
    x = min(max(rect.x(), area.x()), area.x() + area.width() - size.width())
    y = min(max(rect.y(), area.y()), area.y() + area.height() - size.height())
    return QRect(x, y, size.width(), size.height())
