"""The catalogue: what ships with the program and what the user added, in one value."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Collection
from dataclasses import dataclass
from pathlib import Path
from typing import Final, Literal, TypeVar

from planner.catalogue.cautions import CautionBook, load_cautions
from planner.catalogue.crops import Crop, load_crops
from planner.catalogue.own_entries import (
    CatalogueError,
    read_entries,
    remove_entry,
    user_folder,
    write_entry,
)
from planner.catalogue.resources import resource_path
from planner.plan.fields import Text, Value
from planner.plan.lamp import LampModel
from planner.plan.lining import OPENING, OPENING_KEY, Lining

__all__ = [
    "Catalogue",
    "CatalogueError",
    "delete_lamp",
    "delete_lining",
    "load_catalogue",
    "new_key",
    "save_lamp",
    "save_lining",
    "user_folder",
]

_LININGS: Final = "linings"
_LAMPS: Final = "lamps"
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
    crops_about: str
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
    own = folder if folder is not None else user_folder()
    lining_book = _LiningBook.model_validate_json(
        resource_path("catalogue/linings.json").read_bytes()
    )
    lamp_book = _LampBook.model_validate_json(resource_path("catalogue/lamps.json").read_bytes())
    crop_book = load_crops()
    own_linings, lining_problems = read_entries(own / _LININGS, Lining)
    own_lamps, lamp_problems = read_entries(own / _LAMPS, LampModel)
    return Catalogue(
        linings=_merged(lining_book.linings, own_linings),
        lamps=_merged(lamp_book.lamps, own_lamps),
        crops=crop_book.crops,
        crops_about=crop_book.about,
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


def save_lining(lining: Lining, folder: Path | None = None) -> Path:
    """Keep a lining among the user's own; ``CatalogueError`` says why it cannot be."""
    return write_entry((folder if folder is not None else user_folder()) / _LININGS, lining)


def save_lamp(lamp: LampModel, folder: Path | None = None) -> Path:
    """Keep a lamp among the user's own; ``CatalogueError`` says why it cannot be."""
    return write_entry((folder if folder is not None else user_folder()) / _LAMPS, lamp)


def delete_lining(key: str, folder: Path | None = None) -> bool:
    """Remove one of the user's own linings; a built-in one of that key shows again."""
    return remove_entry((folder if folder is not None else user_folder()) / _LININGS, key, Lining)


def delete_lamp(key: str, folder: Path | None = None) -> bool:
    """Remove one of the user's own lamps; a built-in one of that key shows again."""
    return remove_entry((folder if folder is not None else user_folder()) / _LAMPS, key, LampModel)


def new_key(name: str, taken: Collection[str], fallback: str = "entry") -> str:
    """A key made from a name (``Grey card`` -> ``grey-card``) that is not taken yet."""
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode("ascii")
    stem = re.sub(r"[^a-z0-9]+", "-", plain.lower()).strip("-") or fallback
    stem = stem[: _MAX_KEY - 4].strip("-")
    key, number = stem, 2
    while key in taken or key == OPENING_KEY:
        key, number = f"{stem}-{number}", number + 1
    return key
