"""What all charts share: colours of the theme, axes with units, hover, zoom, keys and export.

A chart is drawn anew from its own data by ``draw``; everything else is here. Ctrl and the wheel
zoom, a drag pans, Home shows the whole chart again; without Ctrl the wheel scrolls the column
the chart stands in. The context menu copies and saves it, as a picture or as its numbers.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Final

import numpy as np
import numpy.typing as npt
from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QContextMenuEvent,
    QFont,
    QFontMetricsF,
    QImage,
    QKeyEvent,
    QPainter,
    QPaintEvent,
    QPalette,
    QPen,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QGraphicsView, QSizePolicy

from planner.app.canvas.ink import faded

# PySide6 comes first: pyqtgraph takes the Qt binding it finds loaded.
import pyqtgraph as pg  # isort: skip

from planner.app.canvas.ink import Ink, figure_font, pen
from planner.app.plots.exported import Exported, WayOut, drawn, painted
from planner.app.theme import paint_focus

FloatArray = npt.NDArray[np.float64]
Range = tuple[float, float]
Words = Callable[[int], str]

_REACH_PX: Final = 24.0


class Chart(Exported, pg.GraphicsLayoutWidget):  # type: ignore[misc]
    """Base of every chart.

    A chart draws itself in ``draw``, says its numbers in ``table``, and answers a click and
    the arrow keys in ``pick`` and ``step`` where something in it can be chosen.
    """

    empty = ""
    """What is said in place of a chart that has nothing to show."""
    ground = QPalette.ColorRole.Base
    """What it stands on: a sheet of its own, or the window where it is one of a column."""

    usual: tuple[int, int] | None = None
    least: tuple[int, int] | None = None
    """Pixels across and down it asks for, and needs at least; None leaves them to the library."""

    grows = False
    """Whether it takes the height there is."""

    def __init__(self, name: str, *, scale: float = 0.88) -> None:
        super().__init__()
        self._scale = scale
        self._spots: list[tuple[Any, FloatArray, FloatArray, Words, bool]] = []
        self._ranges: list[tuple[Any, Range, Range]] = []
        self._hints: list[Any] = []
        self._framed: dict[int, tuple[Range, Range, bool]] = {}
        self._put_away: list[tuple[Any, str]] = []
        self._inked: tuple[int, str] | None = None
        self._resized = False
        self.setAccessibleName(name)
        self.setFrameShape(pg.GraphicsView.Shape.NoFrame)
        tall = QSizePolicy.Policy.Expanding if self.grows else QSizePolicy.Policy.Fixed
        self.setSizePolicy(QSizePolicy.Policy.Expanding, tall)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMinimumSize(0, 0)
        self.ci.layout.setContentsMargins(4, 4, 8, 2)
        self.ci.layout.setSpacing(2)
        self.plots: list[Any] = []
        self.scene().sigMouseMoved.connect(self._on_moved)
        self.scene().sigMouseClicked.connect(self._on_clicked)

    def sizeHint(self) -> QSize:
        return super().sizeHint() if self.usual is None else QSize(*self.usual)

    def minimumSizeHint(self) -> QSize:
        return super().minimumSizeHint() if self.least is None else QSize(*self.least)

    # -- what a chart gives ---------------------------------------------------------------

    def draw(self, ink: Ink) -> None:
        """Put the chart's items on its plots."""

    def pick(self, key: int, *, twice: bool) -> None:
        """The spot by its number was clicked."""

    def step(self, key: Qt.Key) -> bool:  # noqa: ARG002 - for those that have steps
        """An arrow key or Enter; False where it means nothing here."""
        return False

    # -- drawing --------------------------------------------------------------------------

    def add_chart(self, row: int = 0) -> Any:
        """One more plot below the others, without menu and buttons."""
        plot = self.addPlot(row=row, col=0, enableMenu=False)
        plot.hideButtons()
        self.plots.append(plot)
        return plot

    def redraw(self) -> None:
        """Draw the chart anew from its data."""
        ink = Ink.of(self.palette())
        self._resized = False
        self._spots, self._ranges, self._hints = [], [], []
        for plot, side in self._put_away:
            plot.showAxis(side)
        self._put_away = []
        # Fonts and colours of axes cost more than all that is drawn between them.
        inked = (self.palette().cacheKey(), self.font().key())
        for plot in self.plots:
            plot.clear()
            if inked != self._inked:
                self._ink_axes(plot, ink)
        if inked != self._inked:
            self._inked = inked
            self.setBackground(self.palette().color(self.ground))
        self.draw(ink)

    def _ink_axes(self, plot: Any, ink: Ink) -> None:
        font = self.small_font()
        for side in ("left", "bottom"):
            axis = plot.getAxis(side)
            axis.setPen(pg.mkPen(ink.faint, width=1))
            axis.setTextPen(ink.quiet)
            axis.setTickFont(font)
            axis.setStyle(tickLength=4, tickTextOffset=3, hideOverlappingLabels=False)
            axis.label.setFont(font)
            axis.enableAutoSIPrefix(False)

    def small_font(self) -> QFont:
        """The chart's font: figures of equal width, a little smaller than the window's."""
        return figure_font(self.font(), self._scale)

    def metrics(self) -> QFontMetricsF:
        """Measures of the chart's font."""
        return QFontMetricsF(self.small_font())

    def frame(self, plot: Any, x: Range, y: Range, *, zoom: bool = True) -> None:
        """Show a range, and let nobody get lost beyond it."""
        self._ranges.append((plot, x, y))
        if self._framed.get(id(plot)) == (x, y, zoom):
            return
        self._framed[id(plot)] = (x, y, zoom)
        box = plot.getViewBox()
        box.setMouseEnabled(x=zoom, y=zoom)
        box.setLimits(xMin=x[0], xMax=x[1], yMin=y[0], yMax=y[1])
        box.setRange(xRange=x, yRange=y, padding=0)

    def curve(self, plot: Any, x: Any, y: Any, line: QPen, **more: Any) -> Any:
        """A line through points; NaN breaks it."""
        item = pg.PlotCurveItem(
            np.asarray(x, float), np.asarray(y, float), pen=line, connect="finite",
            antialias=True, **more,
        )  # fmt: skip
        plot.addItem(item)
        return item

    def dots(
        self, plot: Any, x: Any, y: Any, colour: QColor, size: float, rim: QPen | None = None
    ) -> None:
        """Dots at points."""
        known = np.isfinite(np.asarray(y, float))
        plot.addItem(
            pg.ScatterPlotItem(
                np.asarray(x, float)[known],
                np.asarray(y, float)[known],
                size=size,
                brush=colour,
                pen=rim or pg.mkPen(None),
                antialias=True,
            )
        )

    def band(self, plot: Any, ends: Range, ink: Ink, *, upright: bool = False) -> None:
        """The target band, behind everything."""
        shade = faded(ink.accent, 0.13)
        edge = faded(ink.accent, 0.4)
        item = pg.LinearRegionItem(
            ends, orientation="vertical" if upright else "horizontal", movable=False,
            brush=shade, pen=pg.mkPen(edge, width=1),
        )  # fmt: skip
        item.setZValue(-10)
        plot.addItem(item, ignoreBounds=True)

    def label(
        self,
        plot: Any,
        at: tuple[float, float],
        text: str,
        colour: QColor,
        anchor: tuple[float, float] = (0.5, 0.5),
        plate: QColor | None = None,
    ) -> Any:
        """A text at a place of the plot; ``anchor`` is the point of it that stands there."""
        item = pg.TextItem(color=colour, anchor=anchor, fill=plate)
        item.setFont(self.small_font())
        item.setPlainText(text)
        item.textItem.document().setDocumentMargin(1.5)
        item.updateTextPos()
        plot.addItem(item, ignoreBounds=True)
        item.setPos(*at)
        return item

    def upright(self, plot: Any, x: float, line: QPen) -> None:
        """A vertical line through the whole plot."""
        plot.addItem(pg.InfiniteLine(x, angle=90, pen=line), ignoreBounds=True)

    def say_empty(self, plot: Any, ink: Ink) -> None:
        """What to do first, in place of a chart and of its axes, which come again with it."""
        for side in ("left", "bottom"):
            if plot.getAxis(side).isVisible():
                plot.hideAxis(side)
                self._put_away.append((plot, side))
        self.frame(plot, (0, 1), (0, 1), zoom=False)
        self.say(plot, (0.5, 0.5), self.empty, ink)

    def say(self, plot: Any, at: tuple[float, float], words: str, ink: Ink) -> None:
        """A sentence about a place of the plot, in lines as long as there is room for."""
        item = self.label(plot, at, words, ink.quiet)
        item.setTextWidth(max(self.width() - 60, 80))
        option = item.textItem.document().defaultTextOption()
        option.setAlignment(Qt.AlignmentFlag.AlignHCenter)
        item.textItem.document().setDefaultTextOption(option)
        item.updateTextPos()

    def titles(self, plot: Any, *, left: str | None = None, bottom: str | None = None) -> None:
        """Name the axes; what stands there already is left alone."""
        for side, text in (("left", left), ("bottom", bottom)):
            if text is not None and plot.getAxis(side).labelText != text:
                plot.setLabel(side, text)

    def spots(self, plot: Any, x: Any, y: Any, words: Words, *, by_x: bool = False) -> None:
        """Places that answer the pointer with words; numbered in the order they are given."""
        self._spots.append((plot, np.asarray(x, float), np.asarray(y, float), words, by_x))

    # -- pointer and keys -----------------------------------------------------------------

    def spot_at(self, scene: QPointF) -> tuple[Any, int] | None:
        """The plot and number of the spot nearest to a place of the scene, near enough."""
        found: tuple[float, Any, int] | None = None
        for plot, x, y, _, by_x in self._spots:
            box = plot.getViewBox()
            if not len(x) or not box.sceneBoundingRect().contains(scene):
                continue
            at = box.mapSceneToView(scene)
            px, py = box.viewPixelSize()
            across = (x - at.x()) / px
            far = np.abs(across) if by_x else np.hypot(across, (y - at.y()) / py)
            number = int(np.argmin(np.where(np.isfinite(far), far, np.inf)))
            if (by_x or far[number] <= _REACH_PX) and (found is None or far[number] < found[0]):
                found = (float(far[number]), plot, number)
        return None if found is None else found[1:]

    def _on_moved(self, scene: QPointF) -> None:
        for plot, item in self._hints:
            plot.removeItem(item)
        self._hints = []
        found = self.spot_at(scene)
        if found is None:
            return
        plot, number = found
        spot = next(one for one in self._spots if one[0] is plot)
        words = spot[3](number)
        if words:
            self._hint(plot, float(spot[1][number]), float(spot[2][number]), words)

    def _hint(self, plot: Any, x: float, y: float, words: str) -> None:
        ink = Ink.of(self.palette())
        (x0, x1), (y0, y1) = plot.getViewBox().viewRange()
        y = y if np.isfinite(y) else (y0 + y1) / 2
        wide = self.metrics().horizontalAdvance(words) / 2 + 6
        half = wide * plot.getViewBox().viewPixelSize()[0]
        middle = (x0 + x1) / 2 if 2 * half > x1 - x0 else min(max(x, x0 + half), x1 - half)
        below = y > (y0 + y1) / 2
        anchor = (0.5, -0.4 if below else 1.4)
        item = self.label(plot, (middle, y), words, ink.ink, anchor, ink.paper)
        item.setZValue(50)
        self._hints.append((plot, item))

    def _on_clicked(self, event: Any) -> None:
        if event.button() is not Qt.MouseButton.LeftButton:
            return
        found = self.spot_at(event.scenePos())
        if found is not None:
            self.pick(found[1], twice=bool(event.double()))

    def leaveEvent(self, event: QEvent) -> None:
        super().leaveEvent(event)
        self._on_moved(QPointF(-1e6, -1e6))

    def wheelEvent(self, event: QWheelEvent) -> None:
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            super().wheelEvent(event)
        else:
            event.ignore()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Home:
            self.show_whole()
        elif not self.step(Qt.Key(event.key())):
            event.ignore()

    def show_whole(self) -> None:
        """Back from any zoom."""
        for plot, x, y in self._ranges:
            plot.getViewBox().setRange(xRange=x, yRange=y, padding=0)

    def close(self) -> bool:
        # The library's own empties a scene that still draws, which ends the process.
        return bool(QGraphicsView.close(self))

    def paintEvent(self, event: QPaintEvent) -> None:
        self._fit()
        super().paintEvent(event)
        if self.hasFocus():
            painter = QPainter(self.viewport())
            paint_focus(self, painter)
            painter.end()

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() in {QEvent.Type.PaletteChange, QEvent.Type.FontChange} and hasattr(
            self, "plots"
        ):
            self.updateGeometry()
            self.redraw()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if hasattr(self, "plots") and event.size() != event.oldSize():
            self._resized = True

    def _fit(self) -> None:
        """Draw for the new size once it is looked at; layouts try several until they rest."""
        if self._resized:
            self.redraw()

    # -- export ---------------------------------------------------------------------------

    def called(self) -> str:
        return str(self.accessibleName())

    def ways_out(self) -> tuple[WayOut, ...]:
        return *super().ways_out(), ("Show the whole chart", self.show_whole)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        self.menu().popup(event.globalPos())
        event.accept()

    def picture(self) -> QImage:
        """The chart as a picture, without focus frame and hint."""
        ground = self.palette().color(self.ground)
        return painted(self.viewport().size(), ground, self._paint_on)

    def _paint_on(self, painter: QPainter, target: QRectF) -> None:
        self._fit()
        self.render(painter, target, self.viewport().rect())

    def svg(self) -> bytes:
        """The chart as a drawing in SVG."""
        ground = self.palette().color(self.ground)
        names = self.accessibleName(), self.accessibleDescription()
        return drawn(self.viewport().size(), ground, self._paint_on, *names)


class PointChart(Chart):
    """A chart of points by number, one of which is in hand.

    ``chosen(int)`` when a point is clicked or reached by the arrow keys, ``taken(int)`` on
    Enter or a double click.
    """

    chosen = Signal(int)
    taken = Signal(int)
    least = (240, 150)
    grows = True

    point: int | None = None

    def show_point(self, point: int | None) -> None:
        """Mark a point, and say what it is."""
        raise NotImplementedError

    def choose(self, point: int | None) -> None:
        """Take a point in hand."""
        if point != self.point:
            self.show_point(point)
            if point is not None:
                self.chosen.emit(point)

    def pick(self, key: int, *, twice: bool) -> None:
        self.choose(key)
        if twice:
            self.taken.emit(key)

    def step(self, key: Qt.Key) -> bool:
        if key in {Qt.Key.Key_Return, Qt.Key.Key_Enter} and self.point is not None:
            self.taken.emit(self.point)
            return True
        return False


def dashed(colour: QColor, width: float) -> QPen:
    """A dashed pen of constant width."""
    made = pen(colour, width, dashes=(4, 2.5))
    return line(made)


def line(made: QPen) -> QPen:
    """A pen whose width is in pixels, whatever the scale of the plot."""
    made.setCosmetic(True)
    return made
