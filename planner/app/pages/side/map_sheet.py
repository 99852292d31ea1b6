"""Cards of maps side by side on one scale, and the bar with what can be done to the chosen one."""

from __future__ import annotations

import math

import numpy as np
from PySide6.QtCore import QRect, Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QScrollArea, QStackedWidget, QToolButton, QWidget

from planner.app import theme
from planner.app.canvas.ink import Bounds
from planner.app.canvas.light_layer import LightStyle
from planner.app.canvas.sampling import default_section
from planner.app.display import Display
from planner.app.document import Document
from planner.app.fields.controls import TextLine
from planner.app.fields.form import AlertLabel, link_button
from planner.app.pages.side.comparer import Comparer, Linked, Shows
from planner.app.pages.side.map_card import MapCard
from planner.app.pages.side.variant_steps import VariantSteps
from planner.app.plain import tooltip
from planner.app.plots import colours
from planner.app.plots.colour_bar import ColourBar
from planner.app.plots.difference import DifferenceBar, DifferenceStyle, rounded_reach
from planner.estimate.compare import AgainstMap, Side
from planner.estimate.odds import verdict
from planner.plan.plan import Plan


class CardBar(QWidget):
    """Rename, adopt, move, remove; nothing of it for the plan itself and open air."""

    def __init__(
        self,
        document: Document,
        comparer: Comparer,
        linked: Linked,
        steps: VariantSteps,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._document, self._comparer = document, comparer
        self._linked, self._steps = linked, steps
        self.name = TextLine("Name of the variant")
        self.name.setMinimumWidth(120)
        self.name.setMaximumWidth(260)
        self.name.committed.connect(self._rename)
        self.adopt = self._verb("Adopt", "Make this variant the plan itself (Enter)")
        self.earlier = self._verb("Earlier", "One place towards the front (Ctrl+Left)")
        self.later = self._verb("Later", "One place towards the end (Ctrl+Right)")
        self.remove = self._verb("Remove", "Take this variant out (Delete)")
        self.as_baseline = self._verb("As baseline", "Measure the others against this one (B)")
        self.alert = AlertLabel()
        layout = QHBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(theme.HALF)
        layout.addWidget(self.name, 1)
        for verb in self.verbs:
            layout.addWidget(verb)
        layout.addWidget(self.alert, 2)
        layout.addStretch(1)
        self.adopt.clicked.connect(self.do_adopt)
        self.earlier.clicked.connect(lambda: self.do_move(-1))
        self.later.clicked.connect(lambda: self.do_move(1))
        self.remove.clicked.connect(self.do_remove)
        self.as_baseline.clicked.connect(self.do_baseline)
        comparer.compared.connect(self.refresh)
        linked.changed.connect(lambda _new, _old: self.refresh())
        document.changed.connect(lambda _old, _new: self.refresh())
        steps.refused.connect(self.alert.say)
        self.refresh()

    @property
    def verbs(self) -> tuple[QToolButton, ...]:
        """The buttons, as they stand."""
        return self.adopt, self.as_baseline, self.earlier, self.later, self.remove

    def _verb(self, text: str, tip: str) -> QToolButton:
        made = link_button(text)
        made.setToolTip(tooltip(tip))
        return made

    # -- which --------------------------------------------------------------------------

    @property
    def side(self) -> Side | None:
        """The chosen side."""
        sides = self._comparer.sides
        return sides[min(self._linked.state.chosen, len(sides) - 1)] if sides else None

    @property
    def key(self) -> str | None:
        """Which variant of the plan is chosen, None for anything else."""
        side = self.side
        return side.key if side is not None and side.key in self._keys else None

    @property
    def _keys(self) -> list[str]:
        return [variant.key for variant in self._document.plan.variants]

    def refresh(self) -> None:
        """Show what can be done with the chosen side."""
        key = self.key
        self.alert.say("")
        self.name.setVisible(key is not None)
        index, last = None, len(self._keys) - 1
        if key is not None:
            self.name.set_value(self._document.plan.variant(key).name)
            index = self._keys.index(key)
        self.adopt.setEnabled(index is not None)
        self.remove.setEnabled(index is not None)
        self.earlier.setEnabled(index is not None and index > 0)
        self.later.setEnabled(index is not None and index < last)
        self.as_baseline.setEnabled(self._linked.state.chosen != self._linked.state.baseline)
        for verb in self.verbs:
            verb.setVisible(verb.isEnabled())

    # -- doing --------------------------------------------------------------------------

    def _rename(self, name: str) -> None:
        if self.key is not None:
            self._steps.rename(self.key, name)

    def do_adopt(self) -> None:
        """Make the chosen variant the plan."""
        if self.key is not None and self._steps.adopt(self.key):
            self._linked.update(chosen=0)

    def do_remove(self) -> None:
        """Take the chosen variant out."""
        if self.key is not None:
            self._steps.remove(self.key)

    def do_move(self, by: int) -> None:
        """Move the chosen variant; it stays chosen."""
        if self.key is not None:
            self._steps.move(self.key, by)

    def do_baseline(self) -> None:
        """Measure the others against the chosen side."""
        self._linked.update(baseline=self._linked.state.chosen)

    def edit_name(self) -> None:
        """Put the keyboard into the name."""
        if self.key is not None:
            self.name.setFocus()
            self.name.selectAll()


LEAST_CARD = 168
LEAST_HEIGHT = 190
_UNITS = {Shows.DIFFERENCE: ("µmol", "m⁻² s⁻¹"), Shows.RATIO: ("% more", "or less")}


class MapSheet(QWidget):
    """Cards in a grid and the colour bar they share.

    Signals: ``opened(int)`` when a side is asked for by Enter,
    ``key_pressed(event)`` for keys the page may know.
    """

    opened = Signal(int)
    key_pressed = Signal(object)

    def __init__(
        self, comparer: Comparer, linked: Linked, display: Display, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._comparer, self._linked, self._display = comparer, linked, display
        self.cards: list[MapCard] = []
        self._columns = 1
        self._holder = QWidget()
        self._holder.setAccessibleName("Maps")
        self._area = QScrollArea()
        self._area.setFrameShape(QFrame.Shape.NoFrame)
        self._area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._area.setWidget(self._holder)
        self.light_bar = ColourBar()
        self.difference_bar = DifferenceBar()
        self._bars = QStackedWidget()
        self._bars.addWidget(self.light_bar)
        self._bars.addWidget(self.difference_bar)
        self._bars.setFixedWidth(
            max(self.light_bar.sizeHint().width(), self.difference_bar.sizeHint().width()) + 16
        )
        layout = QHBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(theme.RHYTHM)
        layout.addWidget(self._area, 1)
        layout.addWidget(self._bars)
        for signal in (comparer.compared, comparer.told):
            signal.connect(self.refresh)
        linked.changed.connect(lambda _new, _old: self.refresh())
        linked.pointer_moved.connect(lambda _place: self._redraw())
        linked.section_moved.connect(lambda _section: self._redraw())
        display.changed.connect(lambda _state: self.refresh())

    # -- showing ------------------------------------------------------------------------

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
        for index, (card, side) in enumerate(zip(self.cards, sides, strict=True)):
            card.show_side(side, bounds)
            mark, words = self._told(side)
            card.show_place(
                chosen=index == state.chosen,
                baseline=index == state.baseline,
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
        change = 100 * (found.ratio - 1)
        mark = f"{'+' if change >= 0 else '−'}{abs(change):.0f} %" if found.clear else "≈ alike"
        return mark, verdict(side.name, found, base.name)

    def _show_light(self, sides: tuple[Side, ...]) -> None:
        self._bars.setCurrentWidget(self.light_bar)
        comparison = self._comparer.comparison
        top = comparison.colour_range[1] if comparison is not None else 0.0
        shared = _levels(top)
        state = self._display.state
        for card, side in zip(self.cards, sides, strict=True):
            levels = shared
            if self._linked.state.own_scale and side.estimate is not None:
                levels = _levels(side.estimate.figures.maximum)
            card.show_light(
                LightStyle(
                    levels, state.colour_map, state.contours, state.band_wash, _band(side.plan)
                )
            )
        chosen = self._linked.state.chosen if self._linked.state.own_scale else 0
        self.light_bar.show_style(self.cards[min(chosen, len(self.cards) - 1)].light_style)

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
        self.difference_bar.show_style(styles[min(state.chosen, len(styles) - 1)])

    def _redraw(self) -> None:
        for card in self.cards:
            card.update()

    # -- cards --------------------------------------------------------------------------

    def _count(self, wanted: int) -> None:
        while len(self.cards) > wanted:
            card = self.cards.pop()
            card.hide()
            card.deleteLater()
        while len(self.cards) < wanted:
            card = MapCard(self._linked, self._holder)
            index = len(self.cards)
            card.picked.connect(lambda index=index: self._linked.update(chosen=index))
            card.opened.connect(lambda index=index: self.opened.emit(index))
            card.stepped.connect(lambda dx, dy, index=index: self._step(index, dx, dy))
            card.key_pressed.connect(self.key_pressed)
            self.cards.append(card)
            card.show()

    def _step(self, index: int, across: int, down: int) -> None:
        """Go to the card beside, above or below."""
        to = index + across + down * self._columns
        if 0 <= to < len(self.cards):
            self.cards[to].setFocus(Qt.FocusReason.OtherFocusReason)
            self._linked.update(chosen=to)
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

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._arrange()


def best_columns(count: int, width: int, height: int, aspect: float) -> int:
    """The number of columns that makes the maps largest, each at least readable."""
    most = max(1, min(count, width // LEAST_CARD))
    text = 96

    def size(columns: int) -> float:
        rows = math.ceil(count / columns)
        tall = max(height / rows, LEAST_HEIGHT) - text
        shown = min(1.0, height / (rows * LEAST_HEIGHT))
        return min(width / columns - 16, tall * aspect) * (0.5 + 0.5 * shown)

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
    return colours.levels_of(np.array([top]))


def _band(plan: Plan) -> colours.Levels | None:
    return None if plan.target is None else plan.target.ppfd_band(plan.photoperiod_hours)


def _reach(found: AgainstMap | None, shows: Shows) -> float:
    if found is None:
        return 0.0
    if shows is Shows.DIFFERENCE:
        return found.reach
    known = found.ratio[np.isfinite(found.ratio)]
    return 100 * float(np.abs(known - 1).max()) if known.size else 0.0
