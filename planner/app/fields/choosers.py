"""The catalogue as the fields use it: a shelf with a place for one's own, choosers, spectra."""

from __future__ import annotations

from collections.abc import Callable, Collection
from pathlib import Path

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtWidgets import QWidget

from planner.app.estimator import Worth
from planner.app.fields.form import StillCombo
from planner.app.plain import explain, tooltip
from planner.app.settings import Settings
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
from planner.catalogue.spectra import built_in_spectra, read_spectrum_file
from planner.plan.lamp import LampModel
from planner.plan.lining import Lining
from planner.plan.place import Place, surfaces
from planner.plan.plan import Plan
from planner.plan.spectrum import Spectrum, doubts
from planner.reports.advice import signed
from planner.units import format_number


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


# -- choosers --------------------------------------------------------------------------


class LiningChooser(StillCombo):
    """A list of linings; ``chosen`` carries the lining asked for.

    With a ``worth`` and a place, a line of the open list tells what it would bring there
    as soon as that is known, and ``considered`` carries the lining the hand rests on (None
    when the list closes).
    """

    chosen = Signal(object)
    considered = Signal(object)

    def __init__(
        self,
        shelf: Shelf,
        name: str,
        parent: QWidget | None = None,
        *,
        worth: Worth | None = None,
        place: Callable[[], Place] | None = None,
    ) -> None:
        super().__init__(parent)
        self._shelf = shelf
        self._worth, self._place = worth, place
        self._present = ""
        self._offered: tuple[Lining, ...] = ()
        self.setAccessibleName(name)
        self.activated.connect(self._on_activated)
        if worth is not None:
            self.highlighted.connect(self._on_highlighted)
            worth.told.connect(self._show_worth)

    def show_key(self, plan: Plan, key: str) -> None:
        """Offer the plan's and the catalogue's linings, with this one chosen."""
        offered = tuple(self._shelf.catalogue.linings_for(plan).values())
        if offered != self._offered:
            self._offered = offered
            self.clear()
            for lining in offered:
                self.addItem(lining_title(lining), lining.key)
                tip = tooltip(lining.name)
                self.setItemData(self.count() - 1, tip, Qt.ItemDataRole.ToolTipRole)
            self.widen_list()
            if self._worth is not None:
                # Room for what each would bring, which comes while the list is open.
                more = self.fontMetrics().horizontalAdvance("   (+00.0 mean, +00.0 minimum)")
                self.view().setMinimumWidth(self.view().minimumWidth() + more)
        self._present = key
        self._show_worth()
        self.setCurrentIndex(self.findData(key))

    @property
    def place(self) -> Place | None:
        """The surface a lining is chosen for, None where it is for no surface of the plan."""
        return None if self._place is None else self._place()

    def hidePopup(self) -> None:
        super().hidePopup()
        self.considered.emit(None)

    def _on_highlighted(self, line: int) -> None:
        lining = self._offered[line]
        if self._worth is not None and lining.key != self._present:
            self._worth.consider(lining)
            self.considered.emit(lining)
        else:
            self.considered.emit(None)

    def _show_worth(self) -> None:
        """Write behind each lining what it would bring, where that is known."""
        for line, lining in enumerate(self._offered):
            text = lining_title(lining)
            known = self.brings(lining)
            if known is not None:
                text += f"   ({signed(known[0])} mean, {signed(known[1])} minimum)"
            if self.itemText(line) != text:
                self.setItemText(line, text)

    def brings(self, lining: Lining) -> tuple[float, float] | None:
        """What a lining would bring here to mean and lowest PPFD, None if unknown."""
        if self._worth is None or self._place is None or lining.key == self._present:
            return None
        return self._worth.brings(lining, self._place())

    def _on_activated(self, line: int) -> None:
        self.chosen.emit(self._offered[line])


def lining_places(plan: Plan) -> list[tuple[str, Place | None]]:
    """Where a lining may go, in words: all walls (None), each wall, its bands, ceiling, floor."""
    found: dict[str, Place | None] = {"All walls": None}
    for place in surfaces(plan):
        found.setdefault(place.whole.words(plan), place.whole)
        found.setdefault(place.words(plan), place)
    return list(found.items())


def lining_title(lining: Lining) -> str:
    """Reflectance and name, as listed; the number leads, so that it is never cut off."""
    if lining.is_opening:
        return lining.name
    return f"{lining.reflectance * 100:.0f} %  {lining.name}"


class LampChooser(StillCombo):
    """A list of lamps; ``chosen`` carries the kind asked for."""

    chosen = Signal(object)

    def __init__(self, shelf: Shelf, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._shelf = shelf
        self._offered: tuple[LampModel, ...] = ()
        self.setAccessibleName("Kind of lamp")
        self.activated.connect(lambda line: self.chosen.emit(self._offered[line]))

    def show_model(self, model: LampModel) -> None:
        """Offer the catalogue's lamps, with this one chosen; a changed one stands on top."""
        offered = self._shelf.lamps
        if model not in offered:
            offered = (model, *offered)
        if offered != self._offered:
            self._offered = offered
            self.clear()
            listed = set(self._shelf.lamps)
            for lamp in offered:
                name = lamp.name if lamp in listed else f"{lamp.name} (changed)"
                self.addItem(name)
            self.widen_list()
        self.setCurrentIndex(offered.index(model))
        explain(self, f"{model.name}: {lamp_facts(model)}")


def lamp_facts(model: LampModel) -> str:
    """Photon flux, watts and efficacy in one line."""
    return (
        f"{format_number(model.ppf, 1)} µmol/s from {format_number(model.watts, 1)} W, "
        f"{model.ppf / model.watts:.2f} µmol/J"
    )


# -- spectra as the window uses them ---------------------------------------------------
# A plan holds no spectrum: what is chosen here is for display and for lamp files. The choice
# for a kind of lamp is remembered in the settings, by keys; a spectrum from the user's own
# file lasts as long as the window.


class SpectrumChoice(QObject):
    """The spectra on offer; emits ``changed`` when one comes or a lamp gets another."""

    changed = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._settings: Settings | None = None
        self._spectra: tuple[Spectrum, ...] | None = None
        self._of_lamp: dict[str, str] = {}

    def remember_in(self, settings: Settings) -> None:
        """Keep the choices in these settings from now on."""
        self._settings = settings
        self._of_lamp = dict(settings.values.lamp_spectra)

    @property
    def spectra(self) -> tuple[Spectrum, ...]:
        """All spectra on offer, the built-in ones first (read when first asked for)."""
        if self._spectra is None:
            self._spectra = built_in_spectra()
        return self._spectra

    def of_lamp(self, lamp_key: str) -> Spectrum | None:
        """The spectrum chosen for a kind of lamp, None without one."""
        wanted = self._of_lamp.get(lamp_key)
        if wanted is None:
            return None
        return next((one for one in self.spectra if one.key == wanted), None)

    def choose(self, lamp_key: str, spectrum: Spectrum | None) -> None:
        """Give a kind of lamp a spectrum, or take it away."""
        if spectrum is None:
            self._of_lamp.pop(lamp_key, None)
        else:
            self._of_lamp[lamp_key] = spectrum.key
        if self._settings is not None:
            self._settings.keep(lamp_spectra=dict(sorted(self._of_lamp.items())))
        self.changed.emit()

    def read(self, path: Path) -> tuple[Spectrum, tuple[str, ...]]:
        """Read a spectrum of the user's own and offer it; returns it with what is doubtful.

        Raises
        ------
        planner.catalogue.spectra.SpectrumError
            If the file is no spectrum; the message is a sentence.
        """
        taken = {spectrum.key for spectrum in self.spectra}
        reading = read_spectrum_file(path, taken=taken)
        self._spectra = (*self.spectra, reading.spectrum)
        self.changed.emit()
        told = dict.fromkeys((*reading.notes, *doubts(reading.spectrum)))
        return reading.spectrum, tuple(told)
