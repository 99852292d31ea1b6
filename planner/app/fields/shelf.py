"""The catalogue as the fields use it: what can be chosen, and a place for one's own."""

from __future__ import annotations

from collections.abc import Collection
from pathlib import Path

from PySide6.QtCore import QObject, Signal

from planner.catalogue.library import (
    Catalogue,
    Crop,
    delete_lamp,
    delete_lining,
    load_catalogue,
    new_key,
    save_lamp,
    save_lining,
)
from planner.plan.lamp import LampModel
from planner.plan.lining import Lining


class Shelf(QObject):
    """Linings, lamps and crops to choose from; emits ``changed`` when one comes or goes.

    The catalogue itself is a frozen value; it is read anew after each save. Without a
    folder the user's own entries go to the user's data folder.
    """

    changed = Signal()

    def __init__(
        self, catalogue: Catalogue, parent: QObject | None = None, *, folder: Path | None = None
    ) -> None:
        super().__init__(parent)
        self._catalogue = catalogue
        self._folder = folder

    @property
    def catalogue(self) -> Catalogue:
        """The catalogue as it stands now."""
        return self._catalogue

    @property
    def linings(self) -> tuple[Lining, ...]:
        """Linings of the catalogue and the user's own."""
        return self._catalogue.linings

    @property
    def lamps(self) -> tuple[LampModel, ...]:
        """Lamps of the catalogue and the user's own."""
        return self._catalogue.lamps

    @property
    def crops(self) -> tuple[Crop, ...]:
        """Crops with their stages."""
        return self._catalogue.crops

    def cautions(self, lining: Lining) -> tuple[str, ...]:
        """The usual wording of what can go wrong with a lining."""
        book = self._catalogue.cautions
        return tuple(
            f"{book.text(caution).title}: {book.text(caution).text}" for caution in lining.cautions
        )

    def save_lining(self, lining: Lining) -> None:
        """Keep a lining among the user's own; raises ``CatalogueError`` saying why not."""
        save_lining(lining, self._folder)
        self._read_anew()

    def save_lamp(self, lamp: LampModel) -> None:
        """Keep a lamp among the user's own; raises ``CatalogueError`` saying why not."""
        save_lamp(lamp, self._folder)
        self._read_anew()

    def delete_lining(self, key: str) -> None:
        """Take one of the user's own linings away; raises ``CatalogueError`` saying why not."""
        delete_lining(key, self._folder)
        self._read_anew()

    def delete_lamp(self, key: str) -> None:
        """Take one of the user's own lamps away; raises ``CatalogueError`` saying why not."""
        delete_lamp(key, self._folder)
        self._read_anew()

    def own_lining_key(self, name: str, taken: set[str]) -> str:
        """A key for a new lining, unlike every key in the catalogue and in ``taken``."""
        return new_key(name, taken | {lining.key for lining in self.linings}, "lining")

    def own_lamp_key(self, name: str, taken: Collection[str] = ()) -> str:
        """A key for a new lamp, unlike every key in the catalogue and in ``taken``."""
        return new_key(name, {lamp.key for lamp in self.lamps} | set(taken), "lamp")

    def _read_anew(self) -> None:
        self._catalogue = load_catalogue(self._folder)
        self.changed.emit()
