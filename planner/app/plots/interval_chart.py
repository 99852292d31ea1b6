"""Measured surveys from bright to dim: a dot with its interval each, equal ones bracketed."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QPalette
from PySide6.QtWidgets import QWidget

from planner.app.canvas.ink import Ink, pen
from planner.app.plots.chart import Chart, Table, line
from planner.survey.comparison import Ranking

_ROW: Final = 2.3
_DOT_PX: Final = 9
MEANING: Final = (
    "Two whose intervals do not overlap can be told apart, at 95 % for all of them together; a "
    "bracket joins those that cannot."
)


class IntervalChart(Chart):
    """Ratios to the base of a ranking."""

    ground = QPalette.ColorRole.Window
    empty = "Read two surveys, and they are ranked here."

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("Ranking of the surveys", parent, scale=0.92)
        self.ranking = Ranking()
        self._base = ""
        self.setToolTip(MEANING)
        self._plot = self.add_chart()
        self._plot.hideAxis("left")
        self._plot.setLabel("bottom", "Over the base")
        self.redraw()

    def show_ranking(self, found: Ranking, base: str) -> None:
        """Show a ranking; ``base`` is the key of the survey that counts as 1."""
        self.ranking, self._base = found, base
        said = [
            f"{row.name}: {row.ratio:.3f}, {row.low:.3f} to {row.high:.3f}" for row in found.rows
        ]
        self.setAccessibleDescription("; ".join([*said, MEANING]))
        self.setFixedHeight(self.sizeHint().height())
        self.redraw()

    def sizeHint(self) -> QSize:
        row = self.metrics().height()
        return QSize(260, round(max(len(self.ranking.rows), 2) * _ROW * row + 3.6 * row))

    def minimumSizeHint(self) -> QSize:
        return QSize(160, self.sizeHint().height())

    def table(self) -> Table:
        heads = ("Survey", "PPFD (µmol/m²/s)", "Ratio", "Low", "High")
        rows = self.ranking.rows
        return heads, [(r.name, r.value, r.ratio, r.low, r.high) for r in rows]

    def draw(self, ink: Ink) -> None:
        rows, plot = self.ranking.rows, self._plot
        plot.getAxis("bottom").setVisible(bool(rows))
        if not rows:
            self.say_empty(plot, ink)
            return
        low, high = min(row.low for row in rows), max(row.high for row in rows)
        reach = max(high - low, 0.02)
        # Room on the right for the brackets.
        step = 0.05 * reach
        ends = (low - step, high + step * (1 + 1.2 * len(self.ranking.alike)))
        self.frame(plot, ends, (0.0, float(len(rows))), zoom=False)
        self.upright(plot, 1.0, line(pen(ink.faint, 1.0)))
        room, ground = self.width() - 24, self.palette().color(self.ground)
        for k, row in enumerate(rows):
            y = len(rows) - k
            is_base = row.key == self._base
            colour = ink.accent if is_base else ink.ink
            value = f"{row.ratio:.3f}  "
            left = room - self.metrics().horizontalAdvance(value)
            name = self.metrics().elidedText(row.name, Qt.TextElideMode.ElideMiddle, left)
            self.label(plot, (ends[0], y), f"{value}{name}", colour, (0, 0), ground)
            self.curve(plot, (row.low, row.high), (y - 0.7, y - 0.7), line(pen(ink.quiet, 2.0)))
            self.dots(plot, (row.ratio,), (y - 0.7,), colour, _DOT_PX)
        for number, (first, last) in enumerate(self.ranking.alike):
            x = high + step * (1 + 1.2 * number)
            top, foot = len(rows) - first - 0.6, len(rows) - last - 0.8
            tip = x - 0.4 * step
            self.curve(plot, (tip, x, x, tip), (top, top, foot, foot), line(pen(ink.accent, 2.0)))
        self.spots(
            plot,
            [row.ratio for row in rows],
            [len(rows) - k - 0.7 for k in range(len(rows))],
            lambda k: (
                f"{rows[k].value:.1f} µmol m⁻² s⁻¹; {rows[k].low:.3f} to {rows[k].high:.3f} of base"
            ),
        )
