"""The answer of a sweep: curves, a ranking or a map, with the point in hand and earlier sweeps."""

from __future__ import annotations

from collections.abc import Callable, Hashable
from dataclasses import replace
from typing import TYPE_CHECKING, Final

import numpy as np
import numpy.typing as npt
from PySide6.QtCore import QDateTime, QLocale
from PySide6.QtGui import QGuiApplication, QShowEvent
from PySide6.QtWidgets import QFrame, QScrollArea, QStackedWidget, QWidget

from planner.app import theme
from planner.app.display import Display
from planner.app.document import Document
from planner.app.fields.form import StillCombo, button, link_button
from planner.app.pages.side.linked import Linked, LinkedState
from planner.app.pages.side.variants import VariantSteps
from planner.app.plain import PlainLabel, explain
from planner.app.plots.chart import FloatArray
from planner.app.plots.option_charts import RankingPlot, RankLine
from planner.app.plots.sweep_map import MapAxis, SweepCells, SweepMap, WishLine
from planner.app.plots.sweep_plot import LOWER, SAID, UPPER, SweepCurves, SweepPlot, said
from planner.metrics.figures import FIGURE, NO_VALUE, percent
from planner.plan.lit import depends
from planner.plan.plan import Plan
from planner.plan.quantity import WATTS
from planner.plan.refusal import refusal
from planner.plan.variant_edits import name_of
from planner.units import capital, in_unit

if TYPE_CHECKING:
    from planner.estimate.sweep import Point, Sweep
    from planner.estimate.sweep_points import Over, Step

Values = Callable[[str], FloatArray]
_MOST_SWEEPS: Final = 24
_MAPPED: Final = ("mean", "minimum", "min_over_mean", "dli", "share_inside", "watts")


class SweepBoard(QWidget):
    """Shows a sweep; a point chosen in it can be kept as an option or adopted as the plan."""

    def __init__(
        self, document: Document, display: Display, linked: Linked, steps: VariantSteps
    ) -> None:
        super().__init__()
        self._document, self._display = document, display
        self._linked, self._steps = linked, steps
        self.sweeps: dict[int, tuple[str, Sweep]] = {}
        """By a number that rises: when each was asked, and its points."""
        self._at = 0
        self._judged: tuple[Plan, dict[Hashable, str]] = document.plan, {}
        self.point: int | None = None
        self._order: list[int] = []
        self.plot, self.ranking, self.map = SweepPlot(), RankingPlot(), SweepMap()
        self.shown = self._combo("Sweep shown", lambda _line: self._go_to_shown())
        self.beside = self._combo("Beside it", lambda _line: self._draw())
        self.figure = self._combo("The map is of", lambda _line: self._draw())
        self.figure.offer([(FIGURE[key].name, key) for key in _MAPPED])
        self.words = PlainLabel(name="The chosen point", wrap=True)
        self.keep_button = button("Keep as an option", "Beside the plan, to be compared (Enter)")
        self.adopt_button = button("Adopt", "Give the plan the values of this point")
        self.copy_button = link_button(
            "Copy the points", "Tab-separated, with every figure", act=self.copy
        )
        self.keep_button.clicked.connect(self.keep)
        self.adopt_button.clicked.connect(self.adopt)
        for chart in (self.plot, self.map):
            chart.chosen.connect(lambda place: self.choose(self._order[place]))
            chart.taken.connect(lambda _place: self.keep())
        self.ranking.picked.connect(self.choose)
        self.ranking.taken.connect(lambda _number: self.keep())
        self._arrange()
        display.changed.connect(lambda _state: self._on_display())
        # The mark of the plan moves, or the points are of another plan.
        document.changed.connect(lambda _old, _new: self._draw())
        linked.changed.connect(self._on_linked)
        self._draw()

    def _combo(self, name: str, act: Callable[[int], None]) -> StillCombo:
        combo = StillCombo(name=name)
        explain(combo, name)
        combo.activated.connect(act)
        return combo

    def _arrange(self) -> None:
        self._named = QScrollArea()
        self._named.setFrameShape(QFrame.Shape.NoFrame)
        self._named.setWidgetResizable(True)
        self._named.setWidget(self.ranking)
        self._stack = QStackedWidget()
        for one in (self.plot, self._named, self.map):
            self._stack.addWidget(one)
        head = theme.row((self.shown, 3), (self.beside, 2), (self.figure, 1))
        line = theme.row((self.words, 1), self.copy_button, self.adopt_button, self.keep_button)
        theme.column(head, (self._stack, 1), line, on=self, gap=theme.HALF)

    # -- which --------------------------------------------------------------------------

    def show_sweep(self, sweep: Sweep) -> None:
        """Show the points found so far; a sweep that is another one stands beside those before."""
        known = [k for k, (_, one) in self.sweeps.items() if _same_run(one, sweep)]
        at = known[0] if known else max(self.sweeps, default=0) + 1
        self._judged = self._document.plan, {}
        now = QLocale().toString(QDateTime.currentDateTime().time(), "HH:mm")
        self.sweeps[at] = (self.sweeps[at][0] if known else now, sweep)
        while len(self.sweeps) > _MOST_SWEEPS:
            del self.sweeps[min(self.sweeps)]
        self.point = self.point if at == self._at else None
        self._at = at
        self._draw()

    @property
    def sweep(self) -> Sweep | None:
        """The sweep that is shown."""
        return self.sweeps[self._at][1] if self._at in self.sweeps else None

    def _go_to_shown(self) -> None:
        self._at, self.point = int(self.shown.currentData()), None
        self._draw()

    def _on_display(self) -> None:
        self._judged = self._document.plan, {}  # its words hold lengths
        self._draw()

    def _on_linked(self, new: LinkedState, old: LinkedState) -> None:
        if new.wishes != old.wishes:
            self._draw()

    @property
    def current(self) -> bool:
        """Whether the points are of the plan as it stands, but for what is swept."""
        return self.sweep is not None and self._is_current(self.sweep)

    def _is_current(self, sweep: Sweep) -> bool:
        return not self._apart(sweep)

    def _apart(self, sweep: Sweep) -> str:
        """What the plan of a sweep was, where it differs from the plan as it stands, in words.

        Asked of every sweep with every point that comes: answered once for each plan.
        """
        plan, key = self._document.plan, (id(sweep.plan), sweep.over)
        if self._judged[0] is not plan:
            self._judged = plan, {}
        known = self._judged[1]
        if key not in known:
            there = sweep.plan
            lead = "" if there.name == plan.name else f"{there.name} "
            differs = name_of(plan, there, self._display.unit) or "other hours or target"
            known[key] = "" if self._would_be_the_same(sweep) else f"{lead}before: {differs}"
        return known[key]

    def _would_be_the_same(self, sweep: Sweep) -> bool:
        here, there = self._document.plan, sweep.plan
        try:
            for one in sweep.over:
                here, there = one.put(here, one.values[0]), one.put(there, one.values[0])
        except ValueError:
            here, there = self._document.plan, sweep.plan
        return depends(here) == depends(there)

    def _title(self, when: str, sweep: Sweep) -> str:
        """Which sweep it is, when it was asked and of which plan."""
        over = " and ".join(one.words(sweep.plan) for one in sweep.over)
        return f"{capital(over)} · {when} · {self._apart(sweep) or sweep.plan.name}"

    # -- drawing ------------------------------------------------------------------------

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self._draw()

    def _draw(self) -> None:
        if not self.isVisible():
            return  # a hand on the sketch does not wait for points nobody sees
        sweep = self.sweep
        self.shown.offer([(self._title(*one), k) for k, one in reversed(self.sweeps.items())])
        self.shown.setCurrentIndex(self.shown.findData(self._at))
        self.shown.setVisible(len(self.sweeps) > 1)
        named = sweep is not None and sweep.over[0].dial is None
        two = sweep is not None and len(sweep.over) > 1
        self._offer_others(sweep if not (named or two) else None)
        self.figure.setVisible(two)
        if sweep is None:
            self.plot.show_curves(None)
            self._stack.setCurrentWidget(self.plot)
        elif two:
            self._draw_map(sweep)
        elif named:
            self._draw_ranking(sweep)
        else:
            self._draw_curves(sweep)
        self._show_choice()

    def _offer_others(self, sweep: Sweep | None) -> None:
        """Sweeps over the same number, any of which can stand beside the one shown."""
        others = [] if sweep is None else [
            (f"Beside it: {self._title(when, one)}", k)
            for k, (when, one) in reversed(self.sweeps.items())
            if k != self._at and len(one.over) == 1 and one.over[0].axis == sweep.over[0].axis
        ]  # fmt: skip
        self.beside.offer([("Nothing beside it", 0), *others])
        self.beside.setVisible(bool(others))

    def _draw_curves(self, sweep: Sweep) -> None:
        over = sweep.over[0]
        self._order = sorted(sweep.points, key=lambda k: _number(sweep.points[k].values[0]))
        points = [sweep.points[k] for k in self._order]
        keys = (*UPPER, *LOWER)
        plan, shown = self._document.plan, self._shown_in(over)
        now = over.now(plan) if self._is_current(sweep) else None
        kind = over.dial.quantity if over.dial is not None else WATTS
        unit = self._display.unit
        curves = SweepCurves(
            label=over.words(sweep.plan),
            unit=kind.unit_in(unit),
            xs=tuple(shown(point.values[0]) for point in points),
            figures={key: tuple(_figure(point, key) for point in points) for key in keys},
            now=None if now is None else shown(now),
            bands=tuple(point.band for point in points),
            decimals=unit.decimals if kind.is_length else kind.decimals,
            beside=self._beside(shown),
        )
        self.plot.show_curves(curves, self._place())
        self._stack.setCurrentWidget(self.plot)

    def _place(self) -> int | None:
        """Where the point in hand stands in the chart."""
        return None if self.point is None else self._order.index(self.point)

    def _beside(
        self, shown: Callable[[Step], float]
    ) -> tuple[str, tuple[float, ...], tuple[float | None, ...]] | None:
        at = self.beside.currentData()
        if at not in self.sweeps:
            return None
        when, other = self.sweeps[at]
        points = sorted(other.points.values(), key=lambda point: _number(point.values[0]))
        xs = tuple(shown(point.values[0]) for point in points)
        name = self._apart(other) or f"{other.plan.name}, {when}"
        return name, xs, tuple(_figure(point, "mean") for point in points)

    def _draw_ranking(self, sweep: Sweep) -> None:
        """Linings or lamps by their light; those that cannot be are said below."""
        over, lines = sweep.over[0], []
        now = over.now(self._document.plan) if self._is_current(sweep) else None
        for number, point in sweep.points.items():
            name = over.text(point.values[0], self._display.unit)
            name += " · the plan now" if point.values[0] == now else ""
            found = point.figures
            if found is not None:
                line = RankLine(name, found.minimum, found.mean, found.maximum, number)
                lines.append(line)
        bands = [point.band for point in sweep.points.values() if point.band is not None]
        self.ranking.show_lines(tuple(lines), bands[0] if bands else None, self.point)
        self._stack.setCurrentWidget(self._named)

    def _draw_map(self, sweep: Sweep) -> None:
        """Numbers lie across, names stand one over the other."""
        first, second = sweep.over[:2]
        turned = first.dial is None and second.dial is not None
        across, up = (second, first) if turned else (first, second)
        columns, rows = len(across.values), len(up.values)
        # Numbers rise; of names the first stands on top, as in the list.
        lines = range(rows) if up.dial is not None else range(rows)[::-1]
        self._order = [
            row * columns + column if turned else column * rows + row
            for row in lines
            for column in range(columns)
        ]
        key = self.figure.currentData() or _MAPPED[0]
        figure = FIGURE[key]

        def values(name: str) -> FloatArray:
            found = [_figure(sweep.points.get(k), name) for k in self._order]
            shown = [FIGURE[name].shown(value) for value in found]
            flat = [np.nan if value is None else value for value in shown]
            return np.array(flat, dtype=float).reshape(rows, columns)

        table = values(key)
        numbers = tuple(
            (figure.written(value) if np.isfinite(value) else _nothing(sweep.points.get(k)))
            for value, k in zip(table.ravel().tolist(), self._order, strict=True)
        )
        current = self._is_current(sweep)
        cells = SweepCells(
            across=self._axis(across, sweep.plan, current=current),
            up=self._axis(
                replace(up, values=tuple(up.values[k] for k in lines)), sweep.plan, current=current
            ),
            values=table,
            numbers=numbers,
            words=tuple(self._words_at(sweep, k) for k in self._order),
            contours=self._contours(sweep, values),
            kept=self._kept(values),
            colours=self._display.state.colour_map,
            figure=figure.heading(),
        )
        self.map.show_cells(cells, self._place())
        self._stack.setCurrentWidget(self.map)

    def _axis(self, over: Over, plan: Plan, *, current: bool) -> MapAxis:
        unit = self._display.unit
        texts = tuple(over.text(value, unit) for value in over.values)
        now = over.now(self._document.plan) if current else None
        label = over.words(plan)
        if over.dial is None:
            at = next((k for k, one in enumerate(over.values) if one == now), None)
            return MapAxis(label, tuple(map(float, range(len(texts)))), texts, named=True, now=at)
        shown = self._shown_in(over)
        places = tuple(shown(value) for value in over.values)
        found = None if now is None else shown(now)
        axis = MapAxis(label, places, texts, now=found)
        inside = found is not None and axis.edges[0] <= found <= axis.edges[1]
        return axis if inside else replace(axis, now=None)

    def _shown_in(self, over: Over) -> Callable[[Step], float]:
        """What a value of the axis is on it, in the unit shown."""
        if over.dial is None:
            return _number
        kind, unit = over.dial.quantity, self._display.unit
        return lambda value: kind.shown(_number(value), unit)

    # -- what is wished -----------------------------------------------------------------

    def _wishes(self) -> list[tuple[str, float, bool]]:
        """What is wished of a point: figure, bound as shown, whether it is a least."""
        wishes = self._linked.state.wishes
        found = [
            (wish.column, shown, wish.least)
            for wish, bound in wishes.all()
            if wish.column in FIGURE
            for shown in [FIGURE[wish.column].shown(bound)]
            if shown is not None
        ]
        target = self._document.plan.wanted
        if not found and target is not None:
            # Whatever hours and light of the room a point has, of a day it is the same band.
            key = "mean" if target.kind == "ppfd" else "dli"
            return [(key, target.low, True), (key, target.high, False)]
        return found

    def _contours(self, sweep: Sweep, values: Values) -> tuple[WishLine, ...]:
        return tuple(
            WishLine(values(key), bound, _wish_in_words(key, bound, least=least))
            for key, bound, least in self._wishes()
            if sweep.points
        )

    def _kept(self, values: Values) -> npt.NDArray[np.bool_] | None:
        wishes = self._wishes()
        if not wishes:
            return None
        tests = []
        for key, bound, least in wishes:
            found = values(key)
            tests.append(found >= bound if least else found <= bound)
        kept: npt.NDArray[np.bool_] = np.logical_and.reduce(tests)
        return kept

    # -- the point in hand --------------------------------------------------------------

    def choose(self, number: int) -> None:
        """Take a point in hand."""
        if number != self.point:
            self.point = number
            self._draw()

    def _words_at(self, sweep: Sweep, number: int) -> str:
        """A point in words: where it is and what it gives, or why it cannot be."""
        unit = self._display.unit
        point = sweep.points.get(number)
        if point is None:
            return "Still to be computed"
        where = ", ".join(self._steps_in_words(sweep, number))
        if point.figures is None:
            return f"{where}: {in_unit(point.problem, unit)}"
        found = point.figures
        words = f"{where}, {said({key: FIGURE[key].of(found) for key in SAID})}"
        if point.overall is None:
            return words
        if point.overall.share_inside is not None:
            words += f", of all canopies {percent(point.overall.share_inside)}"
        beyond = sweep.beyond(number)
        return f"{words}. {capital(beyond)}" if beyond else words

    def _show_choice(self) -> None:
        sweep, point = self.sweep, self.point
        for one in (self.copy_button, self.adopt_button, self.keep_button):
            one.setVisible(sweep is not None)
        possible = sweep is not None and point is not None and point in sweep.points
        possible = possible and sweep is not None and sweep.points[point or 0].figures is not None
        current = self.current
        self.keep_button.setEnabled(possible)
        self.adopt_button.setEnabled(possible and current)
        parts = []
        if sweep is not None and point is not None:
            parts.append(self._words_at(sweep, point))
        elif sweep is not None and current:
            parts.append("Click a point to see it, to keep it as an option or to adopt it.")
        cells = self.map.cells
        if sweep is not None and len(sweep.over) > 1 and cells is not None and cells.framed:
            parts.append(f"Framed: {', '.join(one.words for one in cells.contours)}.")
        if sweep is not None and len(sweep.over) > 1:
            parts += [
                f"'{wish.label}' is not held against points: their prices are not reckoned."
                for wish, _ in self._linked.state.wishes.all()
                if wish.column not in FIGURE
            ]
        if sweep is not None and not current:
            parts.append(
                f"These points are of '{sweep.plan.name}' before it was changed; any can be kept "
                "as an option, sweep again to adopt one."
            )
        self.words.setText(" ".join(part if part.endswith(".") else f"{part}." for part in parts))

    def _made(self) -> Plan | None:
        """The plan of the point in hand; None, with the reason said, where it cannot be."""
        if self.sweep is None or self.point is None or self.point not in self.sweep.points:
            return None
        try:
            return self.sweep.plan_at(self.point)
        except ValueError as error:
            self.words.setText(refusal(error, self._display.unit))
            return None

    def _steps_in_words(self, sweep: Sweep, number: int) -> list[str]:
        """What the axes are at a point: 'hanging height 30 cm', 'White board'."""
        values, unit = sweep.points[number].values, self._display.unit
        return [
            one.text(value, unit)
            if one.dial is None and one.place is None
            else f"{one.words(sweep.plan)} {one.text(value, unit)}"
            for one, value in zip(sweep.over, values, strict=True)
        ]

    def keep(self) -> None:
        """Keep the point in hand as an option beside the plan."""
        made = self._made()
        if made is not None and self.sweep is not None and self.point is not None:
            name = ", ".join(self._steps_in_words(self.sweep, self.point))
            self._steps.keep_as(capital(name), made)

    def adopt(self) -> None:
        """Give the plan the values of the point in hand."""
        sweep, point = self.sweep, self.point
        if sweep is None or point is None or not self.current or self._made() is None:
            return
        plan = self._document.plan
        for one, value in zip(sweep.over, sweep.points[point].values, strict=True):
            plan = one.put(plan, value)
        words = self._words_at(sweep, point)
        over = " and ".join(one.words(sweep.plan) for one in sweep.over)
        self._steps.adopt_plan(plan, f"Adopt {over}", f"Adopted {words}.")

    def copy(self) -> None:
        """Put all points on the clipboard, tab-separated."""
        if self.sweep is None:
            return
        from planner.reports.exports import sweep_to_csv  # noqa: PLC0415 - only when asked

        QGuiApplication.clipboard().setText(sweep_to_csv(self.sweep, "\t"))


def _wish_in_words(key: str, bound: float, *, least: bool) -> str:
    """'DLI at least 12 mol m⁻² d⁻¹'."""
    figure = FIGURE[key]
    return f"{figure.name} at {'least' if least else 'most'} {figure.written(bound)} {figure.unit}"


def _nothing(point: Point | None) -> str:
    """What stands in a cell without a value: not there yet, cannot be, or has no such figure."""
    return "" if point is None else "✕" if point.problem else NO_VALUE


def _same_run(one: Sweep, other: Sweep) -> bool:
    return one.plan is other.plan and (one.over, one.options) == (other.over, other.options)


def _number(value: Step) -> float:
    return float(value) if isinstance(value, float | int) else 0.0


def _figure(point: Point | None, name: str) -> float | None:
    return None if point is None or point.figures is None else FIGURE[name].of(point.figures)
