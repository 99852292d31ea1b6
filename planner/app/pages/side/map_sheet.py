"""Cards of maps side by side on one scale, and the bar with what can be done to the chosen one."""

from __future__ import annotations

import math

import numpy as np
from PySide6.QtCore import QEvent, QObject, QRect, Qt, Signal
from PySide6.QtWidgets import (
    QFrame,
    QMenu,
    QScrollArea,
    QStackedWidget,
    QWidget,
)

from planner.app import theme
from planner.app.canvas.ink import Bounds
from planner.app.canvas.items import default_section
from planner.app.canvas.light_layer import LightStyle
from planner.app.display import Display
from planner.app.document import Document
from planner.app.fields.form import AlertLabel, link_button
from planner.app.pages.side.comparer import Comparer
from planner.app.pages.side.linked import Linked, LinkedState, Shows
from planner.app.pages.side.map_card import MapCard
from planner.app.pages.side.variants import VariantSteps
from planner.app.plots import colours
from planner.app.plots.colour_bar import ColourBar
from planner.app.plots.difference import DifferenceStyle, rounded_reach
from planner.app.spoken import SpokenList
from planner.estimate.compare import PLAN_SIDE, AgainstMap, Origin, Side
from planner.estimate.odds import By, signed_change, verdict
from planner.light.cellmap import levels_of
from planner.units import PPFD_UNIT


class CardBar(QWidget):
    """What can be done with the chosen side; of a variant: open, adopt, duplicate, rename, ...

    ``sketch_asked`` when the chosen one was put on the sketch, ``rename_asked`` when its name is
    to be written in its place.
    """

    sketch_asked = Signal()
    rename_asked = Signal()

    def __init__(
        self, document: Document, comparer: Comparer, linked: Linked, steps: VariantSteps
    ) -> None:
        super().__init__()
        self._document, self._comparer = document, comparer
        self._linked, self._steps = linked, steps
        self.alert = AlertLabel()
        self._verbs = {
            "sketch": ("Open on the sketch", "It stays in the list (double click)", self.do_open),
            "adopt": ("Adopt", "Make it the plan itself, out of the list (Enter)", self.do_adopt),
            "baseline": ("As baseline", "Measure the others against it (B)", self.do_baseline),
            "duplicate": ("Duplicate", "One more just like it (Ctrl+D)", self.do_duplicate),
            "rename": ("Rename", "", self.edit_name),
            "earlier": ("Earlier", "", self.do_earlier),
            "later": ("Later", "", self.do_later),
            "remove": ("Remove", "Take it out (Delete)", self.do_remove),
        }
        # In a narrow window the rest is a right click away.
        self.buttons = {
            key: link_button(text, tip, act=lambda _on=False, act=act: act())
            for key, (text, tip, act) in self._verbs.items()
            if key in _ON_THE_BAR
        }
        theme.row(*self.buttons.values(), (self.alert, 2), theme.REST, on=self, gap=theme.HALF)
        comparer.compared.connect(self.refresh)
        linked.changed.connect(lambda _new, _old: self.refresh())
        document.changed.connect(lambda _old, _new: self.refresh())
        steps.refused.connect(self.alert.say)
        self.refresh()

    # -- which --------------------------------------------------------------------------

    @property
    def key(self) -> str | None:
        """Which variant of the plan is chosen, None for anything else."""
        side = self._comparer.chosen
        return side.key if side is not None and side.key in self._keys else None

    @property
    def _keys(self) -> list[str]:
        return [variant.key for variant in self._document.plan.variants]

    def possible(self) -> tuple[str, ...]:
        """The verbs that can be done now."""
        key, keys = self.key, self._keys
        found = ["baseline"] if self._linked.state.chosen != self._linked.state.baseline else []
        if key is None:
            return tuple(found)
        found += ["sketch", "adopt", "duplicate", "rename", "remove"]
        found += ["earlier"] if keys.index(key) > 0 else []
        found += ["later"] if keys.index(key) < len(keys) - 1 else []
        return tuple(found)

    def refresh(self) -> None:
        """Show what can be done with the chosen side."""
        self.alert.say("")
        possible = self.possible()
        for key, button in self.buttons.items():
            button.setVisible(key in possible)

    def menu(self) -> QMenu:
        """The same verbs as a menu."""
        menu = QMenu(self)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        possible = self.possible()
        for key, (text, _tip, act) in self._verbs.items():
            if key in possible:
                action = menu.addAction(text)
                action.triggered.connect(lambda _on=False, act=act: act())
        return menu

    # -- doing --------------------------------------------------------------------------

    def rename(self, name: str) -> None:
        """Give the chosen variant this name."""
        if self.key is not None:
            self._steps.rename(self.key, name)

    def do_open(self) -> None:
        """Put the chosen variant on the sketch; the plan itself is there already."""
        side = self._comparer.chosen
        here = side is not None and side.origin is Origin.PLAN
        if here or (self.key is not None and self._steps.open(self.key)):
            self.sketch_asked.emit()

    def do_adopt(self) -> None:
        """Make the chosen variant the plan."""
        if self.key is not None and self._steps.adopt(self.key):
            self._linked.update(chosen=PLAN_SIDE)

    def do_duplicate(self) -> None:
        """One more variant like the chosen one."""
        if self.key is not None:
            self._steps.duplicate(self.key)

    def do_remove(self) -> None:
        """Take the chosen variant out."""
        if self.key is not None:
            self._steps.remove(self.key)

    def do_earlier(self) -> None:
        """Move the chosen variant towards the front; it stays chosen."""
        if self.key is not None:
            self._steps.move(self.key, -1)

    def do_later(self) -> None:
        """Move the chosen variant towards the end; it stays chosen."""
        if self.key is not None:
            self._steps.move(self.key, 1)

    def put_before(self, key: str, onto: str | None) -> None:
        """Move a variant to the place of another one; onto the plan: to the front."""
        keys = self._keys
        if key in keys and key != onto:
            self._steps.move_to(key, keys.index(onto) if onto in keys else 0)

    def do_baseline(self) -> None:
        """Measure the others against the chosen side."""
        self._linked.update(baseline=self._linked.state.chosen)

    def edit_name(self) -> None:
        """Ask for the name to be written."""
        if self.key is not None:
            self.rename_asked.emit()


_ON_THE_BAR = ("sketch", "adopt", "baseline", "duplicate", "remove")
LEAST_CARD = 168
WHOLE_CARD = 205
LEAST_HEIGHT = 180
_UNITS = {Shows.DIFFERENCE: tuple(PPFD_UNIT.split(" ", 1)), Shows.RATIO: ("% more", "or less")}


class MapSheet(QWidget):
    """Cards in a grid and the colour bar they share.

    Signals: ``opened`` when the chosen side is double-clicked, ``key_pressed(event)`` for keys
    the page may know, ``renamed(str)``, ``dropped(key, onto)`` and ``menu_asked(QPoint)``.
    """

    opened = Signal()
    key_pressed = Signal(object)
    renamed = Signal(str)
    dropped = Signal(str, object)
    menu_asked = Signal(object)

    def __init__(self, comparer: Comparer, linked: Linked, display: Display) -> None:
        super().__init__()
        self._comparer, self._linked, self._display = comparer, linked, display
        self.cards: list[MapCard] = []
        self._columns = 1
        self._holder = SpokenList()
        self._holder.setAccessibleName("Maps")
        self._area = QScrollArea()
        self._area.setFrameShape(QFrame.Shape.NoFrame)
        self._area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._area.setWidget(self._holder)
        self._area.viewport().installEventFilter(self)
        self.light_bar = ColourBar()
        self.difference_bar = ColourBar()
        self._bars = QStackedWidget()
        self._bars.addWidget(self.light_bar)
        self._bars.addWidget(self.difference_bar)
        self._bars.setFixedWidth(
            max(self.light_bar.sizeHint().width(), self.difference_bar.sizeHint().width()) + 16
        )
        theme.row((self._area, 1), self._bars, on=self, gap=theme.RHYTHM)
        for signal in (comparer.compared, comparer.told):
            signal.connect(self.refresh)
        linked.changed.connect(self._on_linked)
        linked.pointer_moved.connect(lambda _place: self._point())
        linked.section_moved.connect(lambda _section: self._redraw())
        display.changed.connect(lambda _state: self.refresh())

    # -- showing ------------------------------------------------------------------------

    def _on_linked(self, new: LinkedState, old: LinkedState) -> None:
        self.refresh()
        if new.chosen != old.chosen:  # in the table, say: its map comes into sight
            for card in self.cards:
                if card.chosen:
                    self._area.ensureWidgetVisible(card, 0, 0)

    def refresh(self) -> None:
        """Show the newest comparison with the choices in force."""
        sides = self._comparer.sides
        if not sides:
            return
        self._count(len(sides))
        bounds = shared_bounds(sides)
        if self._linked.section is None:
            self._linked.cut_along(default_section(bounds))
        state = self._linked.state
        for card, side in zip(self.cards, sides, strict=True):
            card.show_side(side, bounds)
            mark, words = self._told(side)
            card.show_place(
                chosen=side.identity == state.chosen,
                baseline=side.identity == state.baseline,
                mark=mark,
                verdict=words,
            )
        if state.shows is Shows.LIGHT:
            self._show_light(sides)
        else:
            self._show_against(sides)
        self._arrange()

    def _told(self, side: Side) -> tuple[str, str]:
        found = self._comparer.telling(side)
        base = self._comparer.baseline
        if found is None or base is None:
            return "", ""
        # The number of the table below; the words beside it tell the middle of the draws.
        ratio = found.ratio
        if side.estimate is not None and base.estimate is not None:
            ratio = side.estimate.figures.mean / max(base.estimate.figures.mean, 1e-9)
        mark = f"{signed_change(ratio)} %"
        margin = self._linked.state.margin
        if found.equal_within(margin):
            mark = "= equal"
        elif not found.clear:
            mark += " ?"  # which is the better one is not clear
        return mark, verdict(side.name, found, base.name, By.MEAN, margin)

    def _show_light(self, sides: tuple[Side, ...]) -> None:
        self._bars.setCurrentWidget(self.light_bar)
        comparison = self._comparer.comparison
        top = comparison.brightest if comparison is not None else 0.0
        shared = _levels(top)
        state = self._display.state
        for card, side in zip(self.cards, sides, strict=True):
            levels = shared
            if self._linked.state.own_scale and side.estimate is not None:
                most = max(canopy.figures.maximum for canopy in side.estimate.layers)
                levels = _levels(most)
            card.show_light(
                LightStyle(
                    levels,
                    state.colour_map,
                    state.contours,
                    state.band_wash,
                    side.estimate.band if side.estimate is not None else None,
                )
            )
        chosen = self._chosen(sides) if self._linked.state.own_scale else 0
        self.light_bar.show_style(self.cards[chosen].light_style)

    def _chosen(self, sides: tuple[Side, ...]) -> int:
        who = [side.identity for side in sides]
        chosen = self._linked.state.chosen
        return who.index(chosen) if chosen in who else 0

    def _show_against(self, sides: tuple[Side, ...]) -> None:
        self._bars.setCurrentWidget(self.difference_bar)
        state = self._linked.state
        maps = [self._comparer.against(side) for side in sides]
        reaches = [_reach(found, state.shows) for found in maps]
        shared = rounded_reach(max(reaches, default=0.0))
        unit = _UNITS[state.shows]
        styles = [
            DifferenceStyle(rounded_reach(reach) if state.own_scale else shared, unit)
            for reach in reaches
        ]
        for card, side, found, style in zip(self.cards, sides, maps, styles, strict=True):
            card.show_against(found, style, self._comparer.unresolved(side))
        self.difference_bar.show_legend(styles[self._chosen(sides)].legend)

    def _redraw(self) -> None:
        for card in self.cards:
            card.show_anew()

    def _point(self) -> None:
        for card in self.cards:
            card.show_pointer()

    def card(self, key: str | None) -> MapCard | None:
        """The card of a variant."""
        return next((card for card in self.cards if key is not None and card.key == key), None)

    # -- cards --------------------------------------------------------------------------

    def _count(self, wanted: int) -> None:
        while len(self.cards) > wanted:
            card = self.cards.pop()
            card.hide()
            card.deleteLater()
        while len(self.cards) < wanted:
            card = MapCard(self._linked, self._holder)
            index = len(self.cards)
            card.picked.connect(lambda card=card: self._choose(card))
            card.opened.connect(self.opened)
            card.renamed.connect(self.renamed)
            card.dropped.connect(lambda key, card=card: self.dropped.emit(key, card.key))
            card.menu_asked.connect(self.menu_asked)
            card.stepped.connect(lambda dx, dy, index=index: self._step(index, dx, dy))
            card.key_pressed.connect(self.key_pressed)
            self.cards.append(card)
            card.show()

    def _choose(self, card: MapCard) -> None:
        if card.side is not None:
            self._linked.update(chosen=card.side.identity)

    def _step(self, index: int, across: int, down: int) -> None:
        """Go to the card beside, above or below."""
        to = index + across + down * self._columns
        if 0 <= to < len(self.cards):
            self.cards[to].setFocus(Qt.FocusReason.OtherFocusReason)
            self._choose(self.cards[to])
            self._area.ensureWidgetVisible(self.cards[to])

    def _arrange(self) -> None:
        count = len(self.cards)
        if not count:
            return
        room = self._area.viewport().size()
        self._columns = best_columns(count, room.width(), room.height(), self._aspect())
        rows = math.ceil(count / self._columns)
        gap = theme.HALF
        width = (room.width() - (self._columns - 1) * gap) // self._columns
        height = max((room.height() - (rows - 1) * gap) // rows, LEAST_HEIGHT)
        self._holder.resize(room.width(), rows * height + (rows - 1) * gap)
        for k, card in enumerate(self.cards):
            row, column = divmod(k, self._columns)
            card.setGeometry(QRect(column * (width + gap), row * (height + gap), width, height))

    def _aspect(self) -> float:
        x0, y0, x1, y1 = shared_bounds(self._comparer.sides)
        return (x1 - x0) / max(y1 - y0, 1e-6)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        # The room is the viewport's: behind another page it gets its size after the sheet has.
        if event.type() is QEvent.Type.Resize:
            self._arrange()
        return super().eventFilter(watched, event)


def best_columns(count: int, width: int, height: int, aspect: float) -> int:
    """The number of columns that makes the maps largest, each at least readable."""
    most = max(1, min(count, width // LEAST_CARD))
    text = 96

    def size(columns: int) -> float:
        rows = math.ceil(count / columns)
        tall = max(height / rows, LEAST_HEIGHT) - text
        shown = min(1.0, height / (rows * LEAST_HEIGHT))
        # The figures under a map should not be cut for a map that is hardly larger.
        told = min(1.0, width / (columns * WHOLE_CARD))
        return min(width / columns - 16, tall * aspect) * (0.5 + 0.5 * shown) * told

    return max(range(1, most + 1), key=size)


def shared_bounds(sides: tuple[Side, ...]) -> Bounds:
    """The rectangle around all footprints."""
    found = [side.plan.space.bounds for side in sides] or [(0.0, 0.0, 1.0, 1.0)]
    return (
        min(one[0] for one in found),
        min(one[1] for one in found),
        max(one[2] for one in found),
        max(one[3] for one in found),
    )


def _levels(top: float) -> colours.Levels:
    return levels_of(np.array([top]))


def _reach(found: AgainstMap | None, shows: Shows) -> float:
    if found is None:
        return 0.0
    if shows is Shows.DIFFERENCE:
        return found.reach
    known = found.ratio[np.isfinite(found.ratio)]
    return 100 * float(np.abs(known - 1).max()) if known.size else 0.0
