"""The catalogue: what ships with the program and what the user added, in one value."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Collection
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from pathlib import Path
from typing import Annotated, Final, Literal, Self, TypeVar

from pydantic import Field, ValidationError, model_validator

from planner.files.disk import reason_of, write_atomically
from planner.folders import user_folder
from planner.language import data, page
from planner.plan.lamp import LampModel
from planner.plan.lining import OPENING, OPENING_KEY, Caution, Lining, WallCover
from planner.plan.plan import Plan, Setup
from planner.plan.quantity import Hours, Key, Name, Text, Value
from planner.plan.space import Canopy, Space
from planner.plan.target import Target

_MAX_KEY: Final = 64

_Entry = TypeVar("_Entry", Lining, LampModel)


class _LiningBook(Value):
    format: Literal[1]
    about: Text
    linings: tuple[Lining, ...]


class _LampBook(Value):
    format: Literal[1]
    about: Text
    lamps: tuple[LampModel, ...]


@dataclass(frozen=True)
class Catalogue:
    """Linings, lamps and crops to choose from, read once.

    An entry of the user's own takes the place of a built-in one with the same key; the
    keys of the user's own are in ``own_linings`` and ``own_lamps``. ``problems`` holds a
    sentence for each file of the user's that had to be left out.
    """

    linings: tuple[Lining, ...]
    lamps: tuple[LampModel, ...]
    crops: tuple[Crop, ...]
    cautions: CautionBook
    own_linings: frozenset[str] = frozenset()
    own_lamps: frozenset[str] = frozenset()
    problems: tuple[str, ...] = ()

    def lining(self, key: str) -> Lining:
        """A lining by key (``open`` included); raises ``KeyError`` when there is none."""
        if key == OPENING_KEY:
            return OPENING
        return _by_key(self.linings, key, "lining")

    def lamp(self, key: str) -> LampModel:
        """A lamp by key; raises ``KeyError`` when there is none."""
        return _by_key(self.lamps, key, "lamp")

    def linings_for(self, plan: Setup) -> dict[str, Lining]:
        """All linings to choose from, by key: the plan's own stands for an entry of its key."""
        return {one.key: one for one in (OPENING, *self.linings, *plan.linings)}

    def lamps_for(self, plan: Setup) -> dict[str, LampModel]:
        """All kinds of lamp to choose from, by key: one that hangs stands for its entry."""
        return {one.key: one for one in (*self.lamps, *(lamp.model for lamp in plan.lamps))}

    def crop(self, key: str) -> Crop:
        """A crop by key; raises ``KeyError`` when there is none."""
        for crop in self.crops:
            if crop.key == key:
                return crop
        raise KeyError(f"the catalogue holds no crop '{key}'.")


def _by_key(entries: tuple[_Entry, ...], key: str, noun: str) -> _Entry:
    for entry in entries:
        if entry.key == key:
            return entry
    raise KeyError(f"the catalogue holds no {noun} '{key}'.")


def load_catalogue(folder: Path | None = None) -> Catalogue:
    """Read the built-in entries and the user's own from ``folder``.

    Without a folder the user's data folder is taken. Broken files of the user's are left
    out and named in ``problems``.
    """
    lining_book = _LiningBook.model_validate_json(data("catalogue/linings.json"))
    lamp_book = _LampBook.model_validate_json(data("catalogue/lamps.json"))
    crop_book = load_crops()
    own_linings, lining_problems = read_entries(_folder_of(Lining, folder), Lining)
    own_lamps, lamp_problems = read_entries(_folder_of(LampModel, folder), LampModel)
    return Catalogue(
        linings=_merged(lining_book.linings, own_linings),
        lamps=_merged(lamp_book.lamps, own_lamps),
        crops=crop_book.crops,
        cautions=load_cautions(),
        own_linings=frozenset(entry.key for entry in own_linings),
        own_lamps=frozenset(entry.key for entry in own_lamps),
        problems=lining_problems + lamp_problems,
    )


def _merged(built_in: tuple[_Entry, ...], own: tuple[_Entry, ...]) -> tuple[_Entry, ...]:
    """Put the user's own in: in place of a built-in one of the same key, else at the end."""
    entries = {entry.key: entry for entry in built_in}
    entries.update({entry.key: entry for entry in own})
    return tuple(entries.values())


def new_key(name: str, taken: Collection[str], fallback: str = "entry") -> str:
    """A key made from a name (``Grey card`` -> ``grey-card``) that is not taken yet."""
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode("ascii")
    stem = re.sub(r"[^a-z0-9]+", "-", plain.lower()).strip("-") or fallback
    stem = stem[: _MAX_KEY - 4].strip("-")
    key, number = stem, 2
    while key in taken or key == OPENING_KEY:
        key, number = f"{stem}-{number}", number + 1
    return key


# -- The user's own linings and lamps --------------------------------------------------
# A file that cannot be read is left alone and reported in a sentence; it never stops the
# program.

MAX_FILE_BYTES: Final = 1_000_000

_FOLDERS: Final = {Lining: "linings", LampModel: "lamps"}


def _folder_of(kind: type[Lining | LampModel], folder: Path | None) -> Path:
    return (folder if folder is not None else user_folder()) / _FOLDERS[kind]


class CatalogueError(Exception):
    """An entry that cannot be kept or taken away; the message is a sentence for people."""


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
        return (), (f"The folder '{folder}' could not be read: {reason_of(error)}.",)
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
        raise CatalogueError(f"it could not be read: {reason_of(error)}.") from error
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


def save_entry(entry: Lining | LampModel, folder: Path | None = None) -> Path:
    """Keep an entry among the user's own, replacing an older one of that key; return its path.

    The file is complete or not there at all, also when the power fails meanwhile.

    Raises
    ------
    CatalogueError
        If the key is not allowed or the file cannot be written.
    """
    _check_key(entry)
    folder = _folder_of(type(entry), folder)
    path = folder / f"{entry.key}.json"
    text = entry.model_dump_json(indent=2) + "\n"
    try:
        folder.mkdir(parents=True, exist_ok=True)
        write_atomically(path, text.encode("utf-8"))
    except OSError as error:
        raise CatalogueError(
            f"'{entry.name}' could not be kept in '{folder}': {reason_of(error)}. "
            "Check that the folder may be written to and the disk is not full."
        ) from error
    return path


def delete_entry(kind: type[_Entry], key: str, folder: Path | None = None) -> bool:
    """Take one of the user's own away, whatever its file is called; False when there was none.

    A built-in one of that key shows again.

    Raises
    ------
    CatalogueError
        If the file cannot be removed.
    """
    removed = False
    try:
        for path in sorted(_folder_of(kind, folder).glob("*.json")):
            try:
                found = _read_entry(path, kind).key == key
            except CatalogueError:
                continue
            if found:
                path.unlink()
                removed = True
    except OSError as error:
        raise CatalogueError(f"'{key}' could not be removed: {reason_of(error)}.") from error
    return removed


# -- Crops and their growth stages -----------------------------------------------------


class Basis(StrEnum):
    """How well a band is founded."""

    PUBLISHED = "published"
    QUOTED = "quoted"
    MEMORY = "memory"


class Stage(Value):
    """A growth stage: the wanted band and the hours of light it is usually given."""

    key: Key
    name: Name
    target: Target
    basis: Basis = Field(description="Published, quoted second-hand, or typical from memory.")
    hours_low: Hours
    hours_high: Hours
    hours_usual: Hours = Field(description="The photoperiod to begin with.")
    note: Text = ""

    @model_validator(mode="after")
    def _check(self) -> Self:
        if not self.hours_low <= self.hours_usual <= self.hours_high:
            raise ValueError(
                f"the usual photoperiod of '{self.name}' ({self.hours_usual:g} h) must lie between "
                f"{self.hours_low:g} h and {self.hours_high:g} h."
            )
        return self


class Crop(Value):
    """A crop, with its stages in the order they are lived through."""

    key: Key
    name: Name
    stages: Annotated[tuple[Stage, ...], Field(min_length=1)]
    note: Text = ""

    @model_validator(mode="after")
    def _check(self) -> Self:
        keys = [stage.key for stage in self.stages]
        if len(set(keys)) != len(keys):
            raise ValueError(f"two stages of '{self.name}' carry the same key.")
        return self

    def stage(self, key: str) -> Stage:
        """A stage by its key; raises ``KeyError`` when the crop has none of that key."""
        for stage in self.stages:
            if stage.key == key:
                return stage
        raise KeyError(f"'{self.name}' has no stage '{key}'.")

    def target(self, stage_key: str) -> Target:
        """The target a plan takes over: the stage's band, labelled with crop and stage."""
        stage = self.stage(stage_key)
        return stage.target.model_copy(update={"crop": f"{self.name}, {stage.name}"[:120]})


class CropBook(Value):
    """All crops, and what their bands are and are not."""

    format: Literal[1]
    about: Text
    crops: tuple[Crop, ...]


def load_crops() -> CropBook:
    """Read the crops that ship with the program."""
    return CropBook.model_validate_json(data("catalogue/crops.json"))


# -- The wording of cautions, read from the catalogue's data ---------------------------


class CautionText(Value):
    """What a caution is called and what it asks of the reader."""

    title: Name
    text: Text


class GeneralCaution(Value):
    """A caution for what a plan holds besides its linings.

    ``sentence`` has places in braces for the plan's own numbers; ``page`` is the heading of
    the help page on cautions under which the rest stands.
    """

    title: Name
    sentence: Text
    page: Name


class CautionBook(Value):
    """One text for each caution a lining may carry, and those for the rest of a plan by key."""

    format: Literal[1]
    about: Text
    cautions: dict[Caution, CautionText]
    general: dict[str, GeneralCaution]

    def text(self, caution: Caution) -> CautionText:
        """The wording of one caution."""
        return self.cautions[caution]


def load_cautions() -> CautionBook:
    """Read the wording that ships with the program."""
    return CautionBook.model_validate_json(data("catalogue/cautions.json"))


CAUTION_PAGE: Final = "cautions.md"


@cache
def caution_notes() -> dict[str, tuple[str, ...]]:
    """The points of the help page on cautions by their headings, each in one line."""
    text = page(CAUTION_PAGE).read_text("utf-8")
    found = {}
    for part in text.split("\n## ")[1:]:
        heading, _, rest = part.partition("\n")
        points = rest.strip().removeprefix("- ").split("\n- ")
        found[heading.strip()] = tuple(" ".join(point.split()) for point in points)
    return found


# -- Plans to begin with ---------------------------------------------------------------

DEMO: Final = "hallway-cabinet"


def new_plan(catalogue: Catalogue) -> Plan:
    """An empty space of 60 x 60 x 160 cm, white all round, with no lamp and no target."""
    white = catalogue.lining("white-board")
    side = 0.60
    return Plan(
        name="New grow space",
        space=Space(
            footprint=((0.0, 0.0), (side, 0.0), (side, side), (0.0, side)), height=1.60, door=0
        ),
        linings=(white,),
        walls=tuple(WallCover.plain(white.key) for _ in range(4)),
        ceiling=white.key,
        floor=white.key,
        canopy=Canopy(height=0.20),
    )


def demo_plan(key: str = DEMO) -> Plan:
    """An invented example of ``resources/demo``; herbs in a hallway cabinet, if not told."""
    return Plan.model_validate_json(data(f"demo/{key}.plan.json"))
