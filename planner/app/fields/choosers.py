"""The catalogue as the fields use it: a shelf with a place for one's own, choosers, spectra."""

from __future__ import annotations

from collections.abc import Callable, Collection
from pathlib import Path
from typing import Any, TypeVar

from PySide6.QtCore import QObject, QPointF, QRectF, QSizeF, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QPalette, QPolygonF

from planner.app.canvas.ink import pen
from planner.app.canvas.plan_layers import paint_lining
from planner.app.estimator import Worth
from planner.app.fields.form import StillCombo
from planner.app.fields.search_list import Entry, SearchList, recent_first
from planner.app.plain import TIPS, explain
from planner.app.settings import Settings
from planner.catalogue.library import (
    Catalogue,
    delete_entry,
    load_catalogue,
    new_key,
    save_entry,
)
from planner.catalogue.spectra import built_in_spectra, read_spectrum_file
from planner.language import inside
from planner.metrics.figures import FIGURE, percent
from planner.plan.costs import Costs
from planner.plan.lamp import Lamp, LampModel
from planner.plan.lining import Lining
from planner.plan.place import Place, surfaces
from planner.plan.plan import Plan
from planner.plan.spectrum import Spectrum, doubts
from planner.reports.advice import signed
from planner.units import format_number

_Own = TypeVar("_Own", Lining, LampModel)

MOST_RECENT = 8
"""So many linings and lamps used last are offered first."""


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
        self._settings: Settings | None = None
        self.recent: tuple[str, ...] = ()

    def remember_in(self, settings: Settings) -> None:
        """Keep what was used last in these settings from now on."""
        self._settings = settings
        self.recent = settings.values.used_last

    def use(self, key: str) -> None:
        """Note that a lining or kind of lamp was chosen: it is offered first from now on."""
        self.recent = (key, *(one for one in self.recent if one != key))[:MOST_RECENT]
        if self._settings is not None:
            self._settings.keep(used_last=self.recent)

    @property
    def catalogue(self) -> Catalogue:
        """The catalogue as it stands now."""
        return self._catalogue

    def cautions(self, lining: Lining) -> tuple[str, ...]:
        """The usual wording of what can go wrong with a lining."""
        book = self._catalogue.cautions
        return tuple(
            f"{book.text(caution).title}: {book.text(caution).text}" for caution in lining.cautions
        )

    def save(self, entry: Lining | LampModel) -> None:
        """Keep it among the user's own; raises ``CatalogueError`` saying why not."""
        save_entry(entry, self._folder)
        self._read_anew()

    def delete(self, entry: _Own) -> None:
        """Take it away from the user's own; raises ``CatalogueError`` saying why not."""
        delete_entry(type(entry), entry.key, self._folder)
        self._read_anew()

    def own_lining_key(self, name: str, taken: Collection[str] = ()) -> str:
        """A key for a new lining, unlike every key in the catalogue and in ``taken``."""
        return new_key(name, {one.key for one in self._catalogue.linings}.union(taken), "lining")

    def own_lamp_key(self, name: str, taken: Collection[str] = ()) -> str:
        """A key for a new lamp, unlike every key in the catalogue and in ``taken``."""
        return new_key(name, {one.key for one in self._catalogue.lamps}.union(taken), "lamp")

    def _read_anew(self) -> None:
        self._catalogue = load_catalogue(self._folder)
        self.changed.emit()


# -- choosers --------------------------------------------------------------------------


class SearchCombo(StillCombo):
    """A combo box whose opened list can be searched, what was used last on top.

    Signal ``chosen`` carries the lining or kind of lamp asked for.
    """

    chosen = Signal(object)

    def __init__(self, shelf: Shelf, name: str, *, switch: str = "") -> None:
        super().__init__(name=name)
        self._shelf = shelf
        self._costs = Costs()
        self._offered: tuple[Any, ...] = ()
        self.activated.connect(self._on_activated)
        self.popup = SearchList(self, switch)
        self.popup.picked.connect(self._on_picked)
        self.popup.rested.connect(self.highlighted)
        self.popup.closed.connect(self.hidePopup)

    def entry(self, line: int) -> Entry:
        """What is offered in a line."""
        raise NotImplementedError

    def entries(self) -> tuple[Entry, ...]:
        """What is offered, line by line."""
        return tuple(map(self.entry, range(len(self._offered))))

    def showPopup(self) -> None:
        if self.count():
            order = recent_first([one.key for one in self._offered], self._shelf.recent)
            self.popup.show_entries(self.entries(), order, self.currentIndex())
            self.popup.open_under(self)

    def hidePopup(self) -> None:
        if self.popup.isVisible():
            self.popup.hide()
        super().hidePopup()

    def _on_picked(self, line: int) -> None:
        self.setCurrentIndex(line)
        self.activated.emit(line)

    def _on_activated(self, line: int) -> None:
        self._shelf.use(self._offered[line].key)
        self.chosen.emit(self._offered[line])


class LiningChooser(SearchCombo):
    """A list of linings one can search.

    With ``for_all`` a switch below the list says that it is meant for all walls (``on_all``).

    With a ``worth`` and a place, a line of the open list tells what it would bring there
    as soon as that is known, and ``considered`` carries the lining the hand rests on (None
    when the list closes).
    """

    considered = Signal(object)

    def __init__(
        self,
        shelf: Shelf,
        name: str,
        *,
        worth: Worth | None = None,
        place: Callable[[], Place] | None = None,
        for_all: bool = False,
    ) -> None:
        super().__init__(shelf, name, switch="On all walls" if for_all else "")
        self._worth, self._place = worth, place
        self._present = ""
        if worth is not None:
            self.highlighted.connect(self._on_highlighted)
            worth.told.connect(self._show_worth)

    def show_key(self, plan: Plan, key: str) -> None:
        """Offer the plan's and the catalogue's linings, with this one chosen."""
        offered = tuple(self._shelf.catalogue.linings_for(plan).values())
        self._costs = plan.costs
        if offered != self._offered:
            self._offered = offered
            self.clear()
            for lining in offered:
                self.addItem(lining_title(lining), lining.key)
                for role, made in TIPS.items():
                    self.setItemData(self.count() - 1, made(lining.name), role)
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
        if self.popup.isVisible():
            self.popup.renew(self.entries())

    @property
    def on_all(self) -> bool:
        """Whether what is chosen is meant for all walls."""
        return self.popup.switch.isChecked()

    def entry(self, line: int) -> Entry:
        lining = self._offered[line]
        book = self._shelf.catalogue.cautions
        titles = [book.text(caution).title for caution in lining.cautions]
        known = self.brings(lining)
        parts = [
            "" if known is None else f"{signed(known[0])} mean, {signed(known[1])} minimum",
            "" if lining.is_opening else finish_words(lining),
            ", ".join(map(inside, titles)),
            price_words(self._costs, lining),
        ]
        facts = "; ".join(filter(None, parts))

        def picture(painter: QPainter, place: QRectF, palette: QPalette) -> None:
            paint_finish(painter, place, lining, palette)

        return Entry(lining_title(lining), facts, lining.note, picture)

    def brings(self, lining: Lining) -> tuple[float, float] | None:
        """What a lining would bring here to mean and lowest PPFD, None if unknown."""
        if self._worth is None or self._place is None or lining.key == self._present:
            return None
        return self._worth.brings(lining, self._place())


def finish_words(lining: Lining) -> str:
    """How a lining returns light: 'diffuse', 'mirror', 'wrinkled mirror', 'half mirror'."""
    if lining.specular_share < 0.1:
        return "diffuse"
    mirror = "wrinkled mirror" if lining.wrinkle > 0.05 else "mirror"
    return mirror if lining.specular_share > 0.6 else f"partly {mirror}"


def price_words(costs: Costs, lining: Lining) -> str:
    """What a square metre costs as it is sold, empty while that is not known."""
    goods = costs.goods_of(lining.key)
    if goods is None or goods.price is None:
        return ""
    each = goods.price / (goods.width * goods.length)
    return f"{format_number(each, 2)} {costs.currency}".strip() + " per m²"


def paint_finish(painter: QPainter, place: QRectF, lining: Lining, palette: QPalette) -> None:
    """A small picture of a lining: its lightness, dots where diffuse and dashes where mirror."""
    frame = palette.color(QPalette.ColorRole.PlaceholderText)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    if lining.is_opening:
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(pen(frame, 1.0, Qt.PenStyle.DashLine))
        painter.drawRect(place)
        return
    third = place.height() / 3
    for row in range(3):
        strip = QRectF(place.left(), place.top() + row * third, place.width(), third + 0.5)
        corners = (strip.topLeft(), strip.topRight(), strip.bottomRight(), strip.bottomLeft())
        paint_lining(painter, QPolygonF(corners), lining)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(pen(frame, 1.0))
    painter.drawRect(place)


def paint_lamp_face(painter: QPainter, place: QRectF, model: LampModel, palette: QPalette) -> None:
    """The lit faces of a lamp, to the scale of a metre across the picture or its own size."""
    across = max(*model.size, 0.6)
    scale = min(place.width(), place.height() * 1.6) / across
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(pen(palette.color(QPalette.ColorRole.PlaceholderText), 1.0))
    painter.setBrush(QColor(255, 236, 150))
    lamp = Lamp(model=model, x=0.0, y=0.0, hanging_height=0.5)
    for x, y, length, width in lamp.strips():
        size = QSizeF(max(length * scale, 4.0), max(width * scale, 2.0))
        face = QRectF(QPointF(0, 0), size)
        face.moveCenter(place.center() + QPointF(x * scale, y * scale))
        painter.drawRect(face & place)


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
    return f"{percent(lining.reflectance)}  {lining.name}"


class LampChooser(SearchCombo):
    """A list of lamps one can search."""

    def __init__(self, shelf: Shelf) -> None:
        super().__init__(shelf, "Kind of lamp")
        self.popup.line.setPlaceholderText("Search by name, watts or body")

    def show_model(self, model: LampModel, costs: Costs) -> None:
        """Offer the catalogue's lamps, with this one chosen; a changed one stands on top."""
        self._costs = costs
        offered = self._shelf.catalogue.lamps
        if model not in offered:
            offered = (model, *offered)
        if offered != self._offered:
            self._offered = offered
            self.clear()
            listed = {lamp.key: lamp for lamp in self._shelf.catalogue.lamps}
            for lamp in offered:
                # A lamp that was pasted or read from a file stems from none that is listed.
                changed = listed.get(lamp.key, lamp) != lamp
                self.addItem(f"{lamp.name} (changed)" if changed else lamp.name)
        self.setCurrentIndex(offered.index(model))
        explain(self, f"{model.name}: {lamp_facts(model)}")

    def entry(self, line: int) -> Entry:
        model = self._offered[line]
        price = self._costs.lamp_price(model.key)
        parts = [
            lamp_facts(model),
            "" if model.dimmable else "cannot be dimmed",
            "" if price is None else f"{format_number(price, 2)} {self._costs.currency}".strip(),
        ]

        def picture(painter: QPainter, place: QRectF, palette: QPalette) -> None:
            paint_lamp_face(painter, place, model, palette)

        facts = "; ".join(filter(None, parts))
        return Entry(self.itemText(line), facts, f"{model.body.kind} {model.note}", picture)


def lamp_facts(model: LampModel) -> str:
    """Photon flux, watts and efficacy in one line."""
    flux, watts = FIGURE["photon_flux"].text(model.ppf), FIGURE["watts"].text(model.watts)
    return f"{flux} from {watts}, {FIGURE['efficacy'].text(model.ppf / model.watts)}"


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
