from __future__ import annotations

from dataclasses import replace
from typing import Any

import numpy as np
import pytest
from PySide6.QtCore import QPointF, QRect, QRectF
from PySide6.QtGui import (
    QColor,
    QFont,
    QImage,
    QPainter,
    QPainterPath,
    QPalette,
    QPixmap,
    QPolygonF,
)
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from planner.app.canvas import light_layer, marks
from planner.app.canvas.ink import Ink, Viewport
from planner.app.canvas.light_layer import (
    LightLayer,
    LightStyle,
    _along,
    _label_spots,
    closed_path,
    contour_lines,
)
from planner.app.canvas.plan_layers import WALL_PX, footprint_polygon, texture, tone
from planner.app.canvas.wall_light import paint_along_walls
from planner.app.display import COLOUR_MAPS
from planner.app.plots import colours
from planner.estimate.evaluate import evaluate
from planner.estimate.result import EstimateOptions, Quality
from planner.light.cellmap import CellMap, levels_of
from planner.plan import edits
from planner.plan.lining import OPENING
from planner.plan.space import CarriedCanopy, Obstacle
from tests.unit.app.canvas.scenes import L_SHAPE, SQUARE, light_of, plan_of

VIEW = Viewport(scale=200, left=20, bottom=240)


def painted(style: LightStyle, footprint: tuple[tuple[float, float], ...], **parts: Any) -> QImage:
    plan = plan_of(footprint, **parts)
    layer = LightLayer()
    layer.set_estimate(light_of(plan))
    picture = QPixmap(280, 260)
    picture.fill(QColor("magenta"))
    painter = QPainter(picture)
    layer.paint(painter, VIEW, footprint_polygon(plan, VIEW), style, QFont())
    painter.end()
    return picture.toImage()


def colour_at(image: QImage, u: float, v: float) -> tuple[int, int, int]:
    colour = image.pixelColor(VIEW.to_pixel(u, v).toPoint())
    return colour.red(), colour.green(), colour.blue()


@pytest.mark.parametrize("name", COLOUR_MAPS)
def test_every_map_rises_in_lightness(name: str) -> None:
    table = colours.table(name)[:, :3].astype(float) / 255
    linear = np.where(table <= 0.04045, table / 12.92, ((table + 0.055) / 1.055) ** 2.4)
    luminance = linear @ np.array([0.2126, 0.7152, 0.0722])
    assert (np.diff(luminance) > -1e-3).all()
    assert luminance[-1] > luminance[0] + 0.5


def test_an_unknown_map_is_refused() -> None:
    with pytest.raises(ValueError, match="choose one of cividis"):
        colours.table("jet")


def test_nan_is_transparent_and_ends_are_held() -> None:
    rgba = colours.to_rgba(
        np.array([np.nan, -5.0, 0.0, 10.0, 99.0]), (0, 10), colours.table("cividis")
    )
    assert rgba[0].tolist() == [0, 0, 0, 0]
    assert rgba[1].tolist() == rgba[2].tolist() == colours.table("cividis")[0].tolist()
    assert rgba[3].tolist() == rgba[4].tolist() == colours.table("cividis")[-1].tolist()


def test_levels_end_at_round_numbers() -> None:
    assert levels_of(np.array([[np.nan, 231.0]])) == (0, 250)
    assert levels_of(np.array([[np.nan]])) == (0, 100)
    assert levels_of(np.zeros((2, 2))) == (0, 100)


def test_the_wash_parts_under_inside_and_over() -> None:
    table = colours.washed_table("cividis", (0, 100), (30, 60), 101)
    under, inside, over = (table[k, :3].astype(int) for k in (20, 45, 80))
    assert under[2] == under.max()
    assert inside[1] == inside.max()
    assert over[0] == over.max()


def test_light_lies_where_the_map_says_and_nowhere_else(qtbot: QtBot) -> None:
    style = LightStyle((0.0, 300.0), "cividis", contours=False)
    image = painted(style, L_SHAPE)
    for u, v in ((0.1, 0.1), (1.1, 0.4), (0.3, 0.8)):
        expected = colours.to_rgba(
            np.array([100 + 100 * u + 50 * v]), (0, 300), colours.table("cividis")
        )[0]
        assert colour_at(image, u, v) == pytest.approx(tuple(expected[:3].tolist()), abs=4)
    magenta = (255, 0, 255)
    assert colour_at(image, 0.9, 0.8) == magenta
    assert colour_at(image, -0.05, 0.3) == magenta


def test_an_obstacle_in_the_canopy_has_no_light_on_it(qtbot: QtBot) -> None:
    pot = Obstacle(x=0.4, y=0.4, length=0.2, width=0.2, underside=0.0, thickness=1.0)
    style = LightStyle((0.0, 1000.0), "cividis", contours=False)
    shown = painted(style, SQUARE, obstacles=(pot,))
    magenta = (255, 0, 255)
    assert colour_at(shown, 0.4, 0.4) == magenta
    assert colour_at(shown, 0.4, 0.7) != magenta
    below = pot.model_copy(update={"thickness": 1e-3})
    assert colour_at(painted(style, SQUARE, obstacles=(below,)), 0.4, 0.4) != magenta


def test_contours_lie_on_their_level() -> None:
    estimate = light_of(plan_of())
    assert estimate.map.contour_levels() == (125, 150, 175, 200, 225)
    for contour in contour_lines(estimate.map):
        for line in contour.lines:
            values = 100 + 100 * line[:, 0] + 50 * line[:, 1]
            assert values == pytest.approx(np.full(len(line), contour.level), abs=0.05)


def test_flat_light_has_no_contours() -> None:
    estimate = light_of(plan_of())
    flat = replace(estimate, ppfd=np.full((4, 4), 80.0))
    assert contour_lines(flat.map) == []


def test_reflectance_is_lightness() -> None:
    assert tone(0.0).lightness() == 0
    assert tone(1.0).lightness() == 255
    assert tone(0.184).lightnessF() == pytest.approx(0.5, abs=0.01)  # L* = 50 at Y = 0.184


def test_texture_counts_dots_and_dashes_by_the_specular_share() -> None:
    start, end = QPointF(0, 0), QPointF(900, 0)
    dots, dashes = texture(start, end, 0.25)
    assert (len(dots), len(dashes)) == (75, 25)
    assert texture(start, end, 0.0)[1] == []
    assert texture(start, end, 1.0)[0] == []
    assert texture(start, QPointF(3, 0), 0.5) == ([], [])


def test_a_number_of_a_line_stands_whole_inside_the_footprint_or_not_at_all() -> None:
    """An L of 100 px; one line runs along its rim, one ends in its notch, one has room."""
    corners = [(0, 0), (100, 0), (100, 50), (50, 50), (50, 100), (0, 100)]
    inside = closed_path(QPolygonF([QPointF(*corner) for corner in corners]))

    def line(start: tuple[float, float], end: tuple[float, float]) -> Any:
        return np.linspace(start, end, 21)

    rim, notch, free = line((1, 5), (1, 95)), line((20, 60), (95, 60)), line((10, 25), (90, 25))
    spots = _label_spots([rim, notch, free], 24, 10, [], inside)
    assert len(spots) == 2
    assert all(inside.contains(spot) for spot in spots)
    # Not in the middle of the second line, which lies in the notch, but nearer to its start.
    assert spots[0].center().x() < 40
    # The third one's stands beside its middle.
    assert spots[1].center().x() == 42


def test_no_number_is_written_where_something_else_will_be_painted(qapp: QApplication) -> None:
    plan, style, light = plan_of(SQUARE), LightStyle((0, 400), "cividis"), LightLayer()
    light.set_estimate(light_of(plan))

    def drawn(*clear: QRectF) -> QImage:
        picture = QPixmap(280, 260)
        picture.fill(QColor("white"))
        painter = QPainter(picture)
        outline = footprint_polygon(plan, VIEW)
        light.paint(painter, VIEW, outline, style, QFont(), clear)
        painter.end()
        return picture.toImage()

    free = drawn()
    whole = QRectF(0, 0, 280, 260)
    without = drawn(whole)
    assert without != free
    # Half of the drawing is kept clear: what is drawn there is what is drawn without numbers.
    half = drawn(QRectF(0, 0, 140, 260))
    left = QRect(0, 0, 130, 260)
    assert half.copy(left) == without.copy(left)
    assert half != without


def test_no_number_is_struck_through_by_a_lamp_or_hidden_under_a_tray(
    qapp: QApplication, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Seen where it would be: a lamp's side, a slanted one, the section, a tray's rim and light."""

    def spot(*rims: list[tuple[float, float]], within: QPainterPath | None = None) -> list[float]:
        taken = [box for rim in rims for box in _along(QPolygonF([QPointF(*at) for at in rim]))]
        line = np.linspace((0, 50), (100, 50), 101)
        found = _label_spots([line], 24, 10, taken, within or QPainterPath())
        return [one.center().x() for one in found]

    assert spot() == [40]
    assert spot([(40, 0), (40, 100)]) == [60]
    # A slanted side of 100 px crosses at 40; the box round all of it would leave no room.
    assert spot([(-10, 0), (90, 100)]) == [70]
    assert spot([(0, 52), (100, 52)]) == []

    tray = Obstacle(
        x=0.5, y=0.5, underside=0.0, length=0.6, width=0.6, thickness=0.25, lining="board",
        canopy=CarriedCanopy(),
    )  # fmt: skip
    plan = plan_of(SQUARE, obstacles=(tray,))
    written: list[QRectF] = []
    style, light = LightStyle((0, 400), "cividis"), LightLayer()
    light.set_estimate(evaluate(plan, EstimateOptions((12, 12), Quality.PREVIEW)))
    monkeypatch.setattr(
        light_layer, "_paint_label", lambda _painter, spot, *_rest: written.append(spot)
    )
    picture = QPixmap(280, 260)
    painter = QPainter(picture)
    light.paint(painter, VIEW, footprint_polygon(plan, VIEW), style, QFont())
    painter.end()
    assert written
    outline = closed_path(QPolygonF([VIEW.to_pixel(*corner) for corner in tray.outline()]))
    assert not any(outline.intersects(spot) for spot in written)


def test_the_light_on_a_wall_has_its_colour_along_its_outside(qapp: QApplication) -> None:
    """Dark at the first corner of wall 2, bright at its second; the most over the height."""
    plan = plan_of(SQUARE)
    walls = np.zeros((4, 2, 10))
    walls[1] = np.linspace(0.0, 400.0, 10)
    walls[1, 0] /= 2
    picture = QPixmap(280, 260)
    picture.fill(QColor("magenta"))
    style = LightStyle((0.0, 400.0), "cividis")
    with QPainter(picture) as painter:
        paint_along_walls(painter, plan, VIEW, walls, style)
    image = picture.toImage()

    def beside(v: float) -> list[int]:
        spot = VIEW.to_pixel(1.0, v) + QPointF(WALL_PX + 4, 0)
        colour = image.pixelColor(spot.toPoint())
        return [colour.red(), colour.green(), colour.blue()]

    open_ = edits.line_wall(plan, 1, 0, OPENING)
    other = QPixmap(280, 260)
    other.fill(QColor("magenta"))
    with QPainter(other) as painter:
        paint_along_walls(painter, open_, VIEW, walls, style)
    spot = (VIEW.to_pixel(1.0, 0.9) + QPointF(WALL_PX + 4, 0)).toPoint()
    assert other.toImage().pixelColor(spot) == QColor("magenta"), "no surface, no light on it"
    table = colours.table("cividis", dimmed=style.dimmed)
    for v in (0.06, 0.5, 0.94):
        at = np.interp(v, (np.arange(10) + 0.5) / 10, walls[1, 1]) / 400 * (len(table) - 1)
        assert beside(v) == pytest.approx(table[round(at), :3].astype(float).tolist(), abs=12)


def test_the_chance_of_light_all_but_dark_draws_no_lines() -> None:
    """A shelf that no lamp lights, 1.2 to 1.5, beside a canopy of 340."""
    cells = np.linspace(1.2, 1.5, 64).reshape(8, 8)
    edges = np.linspace(0.0, 0.5, 9)
    dim = CellMap(cells, edges, edges)
    assert contour_lines(dim)
    assert contour_lines(dim, beside=340.0) == []
    assert contour_lines(CellMap(200 * cells, edges, edges), beside=340.0)


def corner(style: LightStyle, *, refining: bool) -> set[tuple[int, int, int]]:
    """The colours in the corner of a drawing."""
    picture = QPixmap(400, 40)
    picture.fill(QColor("white"))
    painter = QPainter(picture)
    ink = Ink.of(QPalette())
    marks.paint_corner(painter, QPointF(390, 20), ink, style, refining=refining)
    painter.end()
    image = picture.toImage()
    found = [image.pixelColor(x, 20) for x in range(400)]
    return {(one.red(), one.green(), one.blue()) for one in found}


def test_the_marks_of_the_band_have_a_legend(qapp: object) -> None:
    marked = LightStyle((0.0, 250.0), "cividis", wash=True, band=(100.0, 200.0))
    assert colours.INSIDE_RGB in corner(marked, refining=False)
    assert colours.INSIDE_RGB not in corner(marked, refining=True)
    assert colours.INSIDE_RGB not in corner(replace(marked, wash=False), refining=False)
