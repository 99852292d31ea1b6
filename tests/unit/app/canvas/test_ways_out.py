"""The drawings as files and pictures: what is in them, to what scale, and what is left out."""

from __future__ import annotations

import base64
import xml.etree.ElementTree as ET
from collections.abc import Callable

import numpy as np
import pytest
from PySide6.QtCore import QByteArray
from PySide6.QtGui import QGuiApplication, QImage, QPainter
from PySide6.QtSvg import QSvgRenderer

from planner.app.canvas.items import Item, Part
from planner.app.canvas.plan_view import EMPTY_HINT
from planner.app.plots import colours
from planner.estimate.upright import Slice
from planner.light.cellmap import CellMap
from tests.unit.app.canvas.conftest import Desk
from tests.unit.app.canvas.scenes import L_SHAPE, light_of, plan_of

SVG = "{http://www.w3.org/2000/svg}"
HREF = "{http://www.w3.org/1999/xlink}href"


def words_in(root: ET.Element) -> list[str]:
    return ["".join(text.itertext()).strip() for text in root.iter(f"{SVG}text")]


def numbers(image: QImage) -> np.ndarray:
    """Red, green and blue of a picture: (row, column, 3)."""
    made = image.convertToFormat(QImage.Format.Format_RGB888)
    rows = np.frombuffer(made.constBits(), np.uint8).reshape(made.height(), -1)
    return rows[:, : 3 * made.width()].reshape(made.height(), made.width(), 3).astype(int)


def test_the_plan_goes_out_as_lines_at_the_size_it_has_on_the_screen(
    plan_desk: Callable[..., Desk],
) -> None:
    desk = plan_desk(plan_of(L_SHAPE))
    desk.view.set_estimate(light_of(desk.plan))
    root = ET.fromstring(desk.view.svg())
    assert {"Wall 1: 120 cm", "Wall 6: 90 cm"} <= set(words_in(root))
    dots = QGuiApplication.primaryScreen().logicalDotsPerInch()
    wide = float(str(root.get("width")).removesuffix("mm"))
    assert wide == pytest.approx(25.4 * 700 / dots, abs=0.01)
    assert root.get("viewBox") == "0 0 700 640"
    # Letters are as large as those the lines were laid out for: 92 % of the window's.
    points = desk.view.font().pointSizeF()
    (size,) = {float(str(text.get("font-size"))) for text in root.iter(f"{SVG}text")}
    assert size == pytest.approx(0.92 * points * dots / 72, abs=0.01)
    # The light alone is a picture, and cut along the walls: six corners, then the first again.
    assert len(list(root.iter(f"{SVG}image"))) == 1
    (cut,) = root.iter(f"{SVG}clipPath")
    assert str(cut[0].get("d")).count(",") == 7


def test_the_light_in_the_file_has_the_colours_of_its_values(
    plan_desk: Callable[..., Desk],
) -> None:
    desk = plan_desk()
    desk.view.set_estimate(light_of(desk.plan))
    (light,) = ET.fromstring(desk.view.svg()).iter(f"{SVG}image")
    picture = QImage.fromData(base64.b64decode(str(light.get(HREF)).partition(",")[2]))
    # Finer than the screen, where a metre has some 400 pixels.
    assert picture.width() > 900
    low, high = desk.view.levels
    table = colours.table(desk.display.state.colour_map)
    for x, y in ((0.1, 0.9), (0.5, 0.5), (0.8, 0.2)):
        value = 100 + 100 * x + 50 * y  # the plane the light was made of
        wanted = table[round((value - low) / (high - low) * (len(table) - 1))][:3]
        seen = numbers(picture)[round((1 - y) * picture.height()), round(x * picture.width())]
        assert np.abs(seen - wanted).max() <= 3


def test_file_and_picture_show_the_same(plan_desk: Callable[..., Desk]) -> None:
    desk = plan_desk()
    desk.view.set_estimate(light_of(desk.plan))
    picture = desk.view.picture()
    assert (picture.width(), picture.height()) == (1400, 1280)
    read = QImage(picture.size(), picture.format())
    painter = QPainter(read)
    QSvgRenderer(QByteArray(desk.view.svg())).render(painter)
    painter.end()
    off = np.abs(numbers(read) - numbers(picture)).max(axis=2)
    # Edges of lines and letters fall on other pixels; without walls or light a fifth would differ.
    assert (off > 40).mean() < 0.03


def test_lines_of_equal_light_are_not_cut_as_the_hatching_is(
    plan_desk: Callable[..., Desk],
) -> None:
    desk = plan_desk()
    desk.display.update(band_wash=True, contours=True)
    desk.view.set_estimate(light_of(desk.plan))
    root = ET.fromstring(desk.view.svg())
    cuts = {str(cut.get("id")): str(cut[0].get("d")) for cut in root.iter(f"{SVG}clipPath")}
    used = [str(group.get("clip-path", "")) for group in root.iter(f"{SVG}g")]
    drawn = [cuts[one[5:-1]] for one in used if one]  # url(#clipPath1)
    # The light is cut along the walls, then come the hatchings under and over the band; lines of
    # equal light and their numbers are free of these again. Last stand samples of the hatching.
    walls, beyond = drawn[0], len(drawn) - 1 - drawn[::-1].index(drawn[0])
    assert len(set(drawn[:beyond])) == 3
    assert drawn[beyond - 9 : beyond + 1] == [walls] * 10


def test_what_is_told_the_hand_does_not_go_out(plan_desk: Callable[..., Desk]) -> None:
    desk = plan_desk(plan_of(lamps=()))
    before = desk.view.svg()
    assert EMPTY_HINT not in before.decode()
    desk.view.say("No room for that.")
    desk.hand.move(0.5, 0.5)
    assert desk.view.readout()
    assert desk.view.svg() == before


def test_the_side_view_goes_out_with_the_light_in_it(side_desk: Callable[..., Desk]) -> None:
    desk = side_desk()
    empty = ET.fromstring(desk.view.svg())
    plan = desk.plan
    edges = np.linspace(0, 1, 21), np.linspace(0.2, 2.0, 37)
    even = np.full((36, 20), 200.0)
    desk.view.set_levels((0.0, 200.0))
    found = Slice(plan, "y", desk.view.cut, CellMap(even, *edges, 0.0), ((0.0, 1.0),), 0.0)
    desk.view.set_slice(found)
    lit = ET.fromstring(desk.view.svg())
    assert len(list(lit.iter(f"{SVG}image"))) == len(list(empty.iter(f"{SVG}image"))) + 2
    assert any(words.startswith("Side view along y, light at y") for words in words_in(lit))
    # Beside the lamp, where no name of a lining stands, it is of the end of the colours.
    x, y = desk.view.viewport.to_pixel(0.93, 1.3).toTuple()
    end = colours.table(desk.display.state.colour_map)[-1][:3]
    seen = numbers(desk.view.picture())[round(2 * y), round(2 * x)]
    assert np.abs(seen - end).max() <= 6


def test_without_a_window_its_menu_offers_no_way_out(side_desk: Callable[..., Desk]) -> None:
    menu = side_desk().view.menu_for(Item(Part.OUTSIDE), (0.0, 0.0))
    assert [action.text() for action in menu.actions()][-1] == "Fit drawing"
    menu.close()
