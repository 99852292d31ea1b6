"""Difference maps, ranking, sweep curves and the sheet's grid: small truths about pictures."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import numpy as np
import pyqtgraph as pg
import pytest
from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QPalette
from pytestqt.qtbot import QtBot

from planner.app.canvas.ink import Ink
from planner.app.display import Display
from planner.app.pages.side.linked import Linked
from planner.app.pages.side.map_card import MapCard
from planner.app.pages.side.map_sheet import best_columns
from planner.app.pages.side.worth_form import CuttingDrawing
from planner.app.plots.chart import Chart
from planner.app.plots.colour_bar import ColourBar
from planner.app.plots.difference import (
    DifferenceStyle,
    diverging,
    picture,
    rounded_reach,
    unresolved_colour,
)
from planner.app.plots.option_charts import RankingPlot, RankLine, TradeOffPlot
from planner.app.plots.sweep_map import MapAxis, SweepCells, SweepMap, WishLine
from planner.app.plots.sweep_plot import SweepCurves, SweepPlot
from planner.app.theme import palette
from planner.estimate.compare import Origin, Side, Spot, TradeOff, against
from planner.estimate.worth import Cover, Part, purchase
from planner.metrics.cutting import Piece
from planner.plan.costs import Goods
from planner.plan.place import Place, PlaceKind
from planner.plan.space import Obstacle
from tests.unit.reports.sample_estimate import sample_estimate, sample_plan

STYLE = DifferenceStyle(10.0, ("", ""))


def shown(palette_: QPalette) -> Ink:
    return Ink.of(palette_)


@pytest.mark.parametrize("dark", [False, True])
def test_nothing_is_the_ground_of_the_theme(qapp: object, dark: bool) -> None:
    ink = shown(palette(dark=dark))
    middle = diverging(ink)[128]
    paper = ink.paper
    assert tuple(middle[:3]) == (paper.red(), paper.green(), paper.blue())


def test_less_and_more_part_and_what_is_too_small_is_grey(qapp: object) -> None:
    ink = shown(palette(dark=False))
    difference = np.array([[-8.0, 0.5], [-8.0, 8.0]])
    ratio = 1 + difference / 100
    image = picture(difference, ratio, STYLE, math.log(1.02), ink)
    # The first row of the map is the lowest: it is drawn at the bottom.
    less, small, more = (image.pixelColor(*at) for at in ((0, 1), (1, 1), (1, 0)))
    assert less.blue() > less.red()
    assert more.red() > more.blue()
    assert small.rgb() == unresolved_colour(ink).rgb()
    free = picture(difference, ratio, STYLE, 0.0, ink)
    assert free.pixelColor(1, 1).rgb() != unresolved_colour(ink).rgb()


@pytest.mark.parametrize(("largest", "reach"), [(0.0, 1.0), (7.3, 8.0), (61.0, 75.0), (100, 100)])
def test_the_reach_is_round(largest: float, reach: float) -> None:
    # Steps are 2, 25 or the like: about four up to the largest difference.
    assert rounded_reach(largest) == pytest.approx(reach, rel=0.15)
    assert rounded_reach(largest) >= largest


def test_the_bar_says_what_its_colours_mean(qtbot: QtBot) -> None:
    bar = ColourBar()
    qtbot.addWidget(bar)
    bar.show_legend(DifferenceStyle(40.0, ("% more", "or less")).legend)
    assert "40 less to 40 more" in bar.accessibleDescription()
    assert "too small" in bar.accessibleDescription()
    bar.resize(90, 240)
    assert not bar.grab().isNull()


def click(chart: Chart, plot: Any, x: float, y: float, qtbot: QtBot) -> None:
    """Click at a place of a chart given in its own numbers."""
    spot = chart.mapFromScene(plot.getViewBox().mapViewToScene(QPointF(x, y)))
    qtbot.mouseClick(chart.viewport(), Qt.MouseButton.LeftButton, pos=spot)


def test_the_ranking_is_by_mean_and_tells_measured_sets_apart(qtbot: QtBot) -> None:
    plot = RankingPlot()
    qtbot.addWidget(plot)
    plot.show_lines(
        (
            RankLine("dim", 10, 50, 90, 0),
            RankLine("read", 40, 80, 120),
            RankLine("bright", 60, 100, 140, 1, equal=True),
        ),
        (60.0, 110.0),
        0,
    )
    plot.resize(plot.sizeHint())
    plot.show()
    assert [line.name for line in plot.lines] == ["bright", "read", "dim"]
    words = plot.accessibleDescription()
    assert "read: measured, mean 80" in words
    assert "bright: mean 100, from 60 to 140, equal to the baseline" in words
    assert "no uncertainty" in words
    picked: list[int] = []
    plot.picked.connect(picked.append)
    qtbot.keyClick(plot, Qt.Key.Key_Up)
    click(plot, plot.plots[0], 20.0, 2.8, qtbot)
    assert picked == [1, 1]


def curves() -> SweepCurves:
    return SweepCurves(
        label="output",
        unit="%",
        xs=(20.0, 60.0, 100.0),
        figures={
            "mean": (20.0, 60.0, 100.0),
            "minimum": (10.0, 30.0, 50.0),
            "maximum": (30.0, 90.0, None),
            "min_over_mean": (0.5, 0.5, 0.5),
            "share_inside": (None, None, None),
        },
        now=80.0,
        bands=((40.0, 70.0),) * 3,
    )


def test_a_point_of_a_sweep_is_chosen_by_hand_or_key_and_said(qtbot: QtBot) -> None:
    plot = SweepPlot()
    qtbot.addWidget(plot)
    plot.resize(500, 260)
    plot.show()
    plot.show_curves(None)
    assert "Nothing" in plot.accessibleDescription()
    plot.show_curves(curves())
    click(plot, plot.plots[0], 62.0, 40.0, qtbot)
    assert plot.point == 1
    assert plot.words_at(1) == "output 60 %, mean 60, minimum 30, min / mean 50 %"
    taken: list[int] = []
    plot.taken.connect(taken.append)
    qtbot.keyClick(plot, Qt.Key.Key_Right)
    qtbot.keyClick(plot, Qt.Key.Key_Right)
    qtbot.keyClick(plot, Qt.Key.Key_Return)
    assert taken == [2]
    assert not plot.grab().isNull()


def test_many_cards_stand_in_several_columns() -> None:
    assert best_columns(1, 800, 400, 1.0) == 1
    assert best_columns(2, 800, 400, 1.0) == 2
    assert best_columns(8, 830, 410, 1.6) == 4
    assert best_columns(3, 160, 400, 1.0) == 1
    # Four side by side would cut the figures under maps that are hardly larger.
    assert best_columns(4, 680, 370, 1.6) == 2


def test_a_box_through_the_canopy_is_no_difference_on_a_card(qtbot: QtBot) -> None:
    pot = Obstacle(x=0.45, y=0.4, length=0.1, width=0.1, underside=0.15, thickness=0.15)
    base = sample_estimate(sample_plan(obstacles=(pot,)))
    option = replace(base, ppfd=base.ppfd + 50)
    card = MapCard(Linked())
    qtbot.addWidget(card)
    card.resize(300, 300)
    card.show_side(Side("Two", Origin.VARIANT, option.plan, estimate=option), (0.0, 0.0, 0.6, 0.5))
    card.show_against(against(option, base), DifferenceStyle(60.0, ("", "")), 0.0)
    shown = card.grab().toImage()
    paper = shown.pixelColor(*card.viewport().to_pixel(-0.02, 0.25).toPoint().toTuple())
    at = {x: card.viewport().to_pixel(x, 0.4).toPoint().toTuple() for x in (0.45, 0.3)}
    assert shown.pixelColor(*at[0.45]) == paper
    assert shown.pixelColor(*at[0.3]) != paper


def test_a_card_is_painted_to_its_edges_at_every_scale(
    qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    """At 150 % the last column and row of its picture lie half outside the card."""
    shown = sample_estimate(sample_plan())
    card = MapCard(Linked())
    qtbot.addWidget(card)
    card.resize(301, 301)
    card.show_side(Side("Two", Origin.VARIANT, shown.plan, estimate=shown), (0.0, 0.0, 0.6, 0.5))
    monkeypatch.setattr(card, "devicePixelRatioF", lambda: 1.5)
    card.grab()
    assert card._still is not None
    picture = card._still.toImage()
    paper = Ink.of(card.palette()).paper
    for k in range(picture.height()):
        assert picture.pixelColor(picture.width() - 1, k) == paper
        assert picture.pixelColor(k, picture.height() - 1) == paper


def test_the_cutting_list_is_said_piece_by_piece(qtbot: QtBot) -> None:
    drawing = CuttingDrawing(Display())
    qtbot.addWidget(drawing)
    places = tuple(Place(PlaceKind.WALL, wall, 0) for wall in (0, 1))
    pieces = Piece("Wall 1", 1.0, 0.5), Piece("Wall 2", 0.8, 0.5)
    cover = Cover("white", tuple(map(Part, places, pieces, (0.5, 0.4))))
    bought = purchase(cover, Goods(lining="white", width=0.5, length=1.0, price=3.0))
    drawing.show_purchases((("White board", bought),))
    drawing.resize(400, 300)
    assert len(drawing.words()) == 2
    assert drawing.words()[0] == "White board, roll 1: Wall 1, 100 x 50 cm."
    # 0.9 m² on a roll of 50 cm: 180 cm by area, and so much is cut.
    assert drawing._strips()[0][3] == ": 180 cm cut, and no layout does with less"
    assert not drawing.grab().isNull()


def heights_and_shares() -> SweepCells:
    """Four columns, three rows; values are column times ten plus row, one point cannot be."""
    values = np.array([[10.0 * i + j for i in range(4)] for j in range(3)])
    values[2, 3] = np.nan
    return SweepCells(
        across=MapAxis("height (cm)", (20.0, 30.0, 40.0, 50.0), ("20", "30", "40", "50"), now=31.0),
        up=MapAxis("share (%)", (10.0, 20.0, 30.0), ("10", "20", "30")),
        values=values,
        numbers=tuple("" if np.isnan(v) else f"{v:.0f}" for v in values.ravel()),
        words=tuple(f"point {k}" for k in range(12)),
        contours=(WishLine(values, 15.0, "at least 15"),),
        kept=values >= 15,
        figure="Mean",
    )


def test_a_map_of_a_sweep_is_walked_and_picked_cell_by_cell(qtbot: QtBot) -> None:
    plot = SweepMap()
    qtbot.addWidget(plot)
    plot.resize(520, 300)
    plot.show()
    plot.show_cells(heights_and_shares())
    chosen: list[int] = []
    taken: list[int] = []
    plot.chosen.connect(chosen.append)
    plot.taken.connect(taken.append)
    # Anywhere in the cell around (40, 20): second row from below, third column.
    click(plot, plot.plots[0], 43.0, 17.0, qtbot)
    qtbot.keyClick(plot, Qt.Key.Key_Up)
    qtbot.keyClick(plot, Qt.Key.Key_Up)
    qtbot.keyClick(plot, Qt.Key.Key_Left)
    qtbot.keyClick(plot, Qt.Key.Key_Return)
    assert chosen == [6, 10, 9]
    assert taken == [9]
    assert "Mean over height (cm) and share (%). point 9" in plot.accessibleDescription()
    assert plot.csv().splitlines()[1:3] == ["10,20,0", "10,30,10"]


def test_a_contour_stands_where_the_wish_is_just_met(qtbot: QtBot) -> None:
    """10 i + j = 15 on heights 20 + 10 i and shares 10 + 10 j: height = 35 - (share - 10) / 10."""
    plot = SweepMap()
    qtbot.addWidget(plot)
    plot.resize(520, 300)
    plot.show_cells(heights_and_shares())
    curves = [item for item in plot.plots[0].items if type(item).__name__ == "PlotCurveItem"]
    x, y = curves[0].getData()
    assert len(x) > 3
    assert x == pytest.approx(35 - (y - 10) / 10, abs=0.05)
    # Names are not interpolated between: the cells that keep the wish are framed along their edges.
    cells = heights_and_shares()
    named = replace(cells.up, places=(0.0, 1.0, 2.0), texts=("a", "b", "c"), named=True)
    plot.show_cells(replace(cells, up=named))
    curves = [item for item in plot.plots[0].items if type(item).__name__ == "PlotCurveItem"]
    x, y = curves[0].getData()
    edges = x[np.isfinite(x)]
    # Cells of 40 and 50 keep it but for the one that cannot be: edges at 35, 45 and 55 only.
    assert set(np.round(edges, 6)) == {35.0, 45.0, 55.0}
    assert not plot.grab().isNull()


def test_light_and_cost_of_a_dark_plan_have_no_numbers_below_zero(qtbot: QtBot) -> None:
    plot = TradeOffPlot()
    qtbot.addWidget(plot)
    plot.resize(600, 400)
    own = (Origin.PLAN, None)
    plot.show_trade_off(TradeOff((Spot("Plan", own, 0.0, 0.0),), "Light", "Cost", ""), own)
    for low, high in plot._plot.viewRange():
        assert -0.1 < low < 0 < high


def test_options_on_one_dot_are_named_in_one_line(qtbot: QtBot) -> None:
    plot = TradeOffPlot()
    qtbot.addWidget(plot)
    plot.resize(600, 400)
    own = (Origin.PLAN, None)
    spots = (
        Spot("Plan", own, 10.8, 71.5),
        Spot("The same", (Origin.VARIANT, "a"), 10.8, 71.5),
        Spot("Film", (Origin.VARIANT, "b"), 14, 96),
    )
    plot.show_trade_off(TradeOff(spots, "Light", "Cost", ""), own)
    drawn = [
        item.textItem.toPlainText() for item in plot._plot.items if isinstance(item, pg.TextItem)
    ]
    assert sorted(drawn) == ["Film", "Plan = The same"]


def test_every_option_has_its_name_and_none_covers_another(qtbot: QtBot) -> None:
    """Four dots in one column, as options that differ in their walls alone: one is unbeaten."""
    plot = TradeOffPlot()
    qtbot.addWidget(plot)
    plot.resize(600, 400)
    plot.show()
    own = (Origin.PLAN, None)
    lights = {"Plan as it is": 9.94, "Film": 9.40, "Film, lower": 10.1, "Foil": 9.43}
    spots = tuple(
        Spot(name, own if k == 0 else (Origin.VARIANT, str(k)), light, 19.5)
        for k, (name, light) in enumerate(lights.items())
    )
    plot.show_trade_off(TradeOff(spots, "Light", "Cost", ""), own)
    qtbot.waitExposed(plot)
    plot.grab()  # texts take their places as they are painted
    items = [item for item in plot._plot.items if isinstance(item, pg.TextItem)]
    assert {item.textItem.toPlainText() for item in items} == set(lights)
    boxes = [item.mapRectToScene(item.boundingRect()).adjusted(1, 1, -1, -1) for item in items]
    assert not any(a.intersects(b) for k, a in enumerate(boxes) for b in boxes[:k])
