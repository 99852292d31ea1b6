"""Drawings and charts: to scale, on one scale of colours, readable by Qt and by any XML reader."""

from __future__ import annotations

import base64
import dataclasses
import re
from xml.etree import ElementTree as ET

import numpy as np
import pytest
from PySide6.QtCore import QByteArray
from PySide6.QtGui import QImage
from PySide6.QtSvg import QSvgRenderer

from planner.catalogue.library import demo_plan
from planner.estimate.compare import PLAN_SIDE, Origin, Spot, TradeOff
from planner.files.store import load_plan
from planner.folders import resource_path
from planner.metrics.figures import FIGURE
from planner.plan import edits
from planner.plan.lining import OPENING, WallCover
from planner.plan.space import Obstacle
from planner.reports.charts import (
    budget_chart,
    colour_top,
    map_drawing,
    png_bytes,
    scale_drawing,
    trade_off_chart,
    whole_map,
)
from planner.reports.contrast import colour_table
from planner.reports.drawings import (
    Picture,
    Sheet,
    elevation_drawing,
    lined_with,
    plain,
    plan_drawing,
    scale_for,
    upright,
)
from planner.units import PPFD_UNIT, LengthUnit
from tests.unit.reports.sample_estimate import L_SHAPE, sample_estimate, sample_plan

CM, INCH = LengthUnit.CM, LengthUnit.INCH
SVG = "{http://www.w3.org/2000/svg}"


def texts(picture: Picture) -> list[str]:
    return [one.text or "" for one in ET.fromstring(picture.svg).iter(f"{SVG}text")]


def outline(picture: Picture) -> tuple[float, float]:
    """Width and height of the walls as drawn, in millimetres."""
    points = [
        tuple(map(float, pair.split(",")))
        for line in ET.fromstring(picture.svg).iter(f"{SVG}polyline")
        if line.get("stroke-width") == "1.70"
        for pair in line.get("points", "").split()
    ]
    xs, ys = zip(*points, strict=True)
    return max(xs) - min(xs), max(ys) - min(ys)


@pytest.mark.parametrize(
    ("size", "room", "scale"),
    [
        ((0.8, 0.5), (80.0, 80.0), 10),  # 800 mm on 80 mm
        ((0.81, 0.5), (80.0, 80.0), 15),
        ((0.5, 1.1), (80.0, 44.0), 25),  # 1100 mm on 44 mm
        ((60.0, 1.0), (60.0, 60.0), 1000),  # larger than any round scale
    ],
)
def test_the_scale_is_the_next_round_one(
    size: tuple[float, float], room: tuple[float, float], scale: int
) -> None:
    assert scale_for(size, room) == scale


def test_the_plan_is_to_scale() -> None:
    # 80 x 50 cm at 1 : 15 are 53.3 x 33.3 mm.
    picture = plan_drawing(demo_plan(), CM, (66.0, 66.0))
    assert "1 : 15" in picture.caption
    assert outline(picture) == pytest.approx((800 / 15, 500 / 15), abs=0.01)
    assert f'width="{picture.width:.2f}mm"' in picture.svg


def test_every_wall_has_its_number_and_length() -> None:
    # The cut corner: sqrt(0.14² + 0.14²) = 19.8 cm.
    assert {"1: 80 cm, door", "2: 36 cm", "3: 19.8 cm", "4: 66 cm", "5: 50 cm"} <= set(
        texts(plan_drawing(demo_plan(), CM))
    )
    assert "1: 31 1/2 in, door" in texts(plan_drawing(demo_plan(), INCH))


def test_the_elevation_has_its_heights() -> None:
    # Canopy at 25, lamps 30 above it, ceiling at 110.
    assert {"25 cm", "30 cm", "110 cm", "80 cm", "Lamps 1, 2"} <= set(
        texts(elevation_drawing(demo_plan(), CM))
    )


def test_in_inches_drawings_say_what_a_tape_shows() -> None:
    # 25 cm is 157.48 sixteenths, 110 cm 692.9, 80 cm 503.9, 66 cm 415.7, 36 cm 226.8.
    plan = demo_plan()
    assert {"9 13/16 in", "43 5/16 in", "31 1/2 in"} <= set(
        texts(elevation_drawing(plan, LengthUnit.INCH))
    )
    assert {"4: 26 in", "2: 14 3/16 in"} <= set(texts(plan_drawing(plan, LengthUnit.INCH)))


def test_the_elevation_shows_shelves_and_cords_end_there() -> None:
    """Words of lamps and heights stand beside the space, where no shelf or other word is."""
    plan = load_plan(resource_path("demo/rack.plan.json"))
    root = ET.fromstring(elevation_drawing(plan, CM).svg)
    boxes = [one for one in root.iter() if one.tag.endswith("rect")]
    shelves = [one for one in boxes if one.get("fill") == "#e3e5e8"]
    assert len(shelves) == len(plan.obstacles) == 2
    ceiling = min(float(one.get("y", "nan")) for one in shelves) - 1
    cords = [
        [float(part) for part in one.get("points", "").replace(",", " ").split()]
        for one in root.iter()
        if one.tag.endswith("polyline") and one.get("stroke-width") == "0.20"
    ]
    assert cords
    from_above = [cord for cord in cords if cord[1] < ceiling]
    assert len(cords) == 2 * len(plan.lamps)
    assert len(from_above) == 4  # the two bars of the upper tier only


def test_text_never_stands_on_its_head() -> None:
    assert [upright(angle) for angle in (0, 90, -90, 180, 135, -135)] == pytest.approx(
        [0, -90, -90, 0, -45, 45]
    )


@pytest.mark.parametrize("text", ["<b>&\"'", "a\x00b\x1f", "tall 𝄞 and µ"])
def test_any_text_makes_valid_xml(text: str) -> None:
    sheet = Sheet(10, 10)
    sheet.text(1, 1, text)
    (found,) = texts(sheet.picture(text))
    assert found == re.sub(r"[\x00-\x1f]", " ", text)
    assert "<b>" not in plain(text)


@pytest.mark.parametrize(
    "footprint", [L_SHAPE, ((0.0, 0.0), (0.2, 0.0), (0.2, 3.0), (0.0, 3.0)),
                  ((0.0, 0.0), (1.0, 0.0), (0.2, 0.9))]
)  # fmt: skip
def test_every_drawing_can_be_drawn_by_qt(
    qapp: object, footprint: tuple[tuple[float, float], ...]
) -> None:
    plan = sample_plan(footprint, lamps=())
    estimate = sample_estimate(plan)
    for picture in (
        plan_drawing(plan, CM), elevation_drawing(plan, CM), scale_drawing(250.0),
        map_drawing(estimate, 300.0, CM, room=(60.0, 60.0)),
    ):  # fmt: skip
        ET.fromstring(picture.svg)
        assert QSvgRenderer(QByteArray(picture.svg.encode())).isValid()


def test_an_open_space_can_be_drawn() -> None:
    plan = sample_plan(walls=(WallCover.plain(OPENING.key),) * 4)
    ET.fromstring(plan_drawing(plan, CM).svg)


def test_where_a_lining_is() -> None:
    plan = demo_plan()
    assert lined_with(plan, plan.lining("white-board")) == "walls 2, 3, 4 (band 2), 5; ceiling"
    assert lined_with(plan, plan.lining("foil-shiny")) == "wall 4 (band 1)"


# -- maps ---------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("highest", "top"), [(232.0, 250.0), (250.0, 250.0), (97.0, 100.0), (0.0, 1.0), (4.1, 5.0)]
)
def test_the_scale_ends_at_a_round_number(highest: float, top: float) -> None:
    assert colour_top(highest) == pytest.approx(top)


def test_a_picture_of_colours_is_a_png_that_qt_reads() -> None:
    pixels = np.array(
        [[[255, 0, 0, 255], [0, 255, 0, 255]], [[0, 0, 255, 255], [9, 8, 7, 0]]], dtype=np.uint8
    )
    image = QImage.fromData(png_bytes(pixels))
    assert (image.width(), image.height()) == (2, 2)
    names = [image.pixelColor(x, y).name() for y in (0, 1) for x in (0, 1)]
    assert names[:3] == ["#ff0000", "#00ff00", "#0000ff"]
    assert image.pixelColor(1, 1).alpha() == 0


def test_the_colours_are_those_of_the_windows_map() -> None:
    """Against the table pyqtgraph ships: within five of 256 steps, half a step on the mean."""
    import pyqtgraph

    table = pyqtgraph.colormap.get("cividis").getLookupTable(0.0, 1.0, 256, alpha=False)
    apart = np.abs(colour_table().astype(int) - np.asarray(table, dtype=int))
    assert apart.max() <= 6
    assert apart.mean() < 0.5


def test_lines_of_light_carry_round_numbers_and_stay_inside() -> None:
    picture = map_drawing(sample_estimate(sample_plan(L_SHAPE), (24, 18)), 300.0, CM,
                          room=(120.0, 90.0))  # fmt: skip
    assert {"100", "150", "200", "250"} & set(texts(picture))
    # The notch of the L is right of 0.6 m and above 0.5 m: 60 and 40 mm from the corner.
    for line in ET.fromstring(picture.svg).iter(f"{SVG}polyline"):
        if line.get("stroke-width") != "0.22":
            continue
        for pair in line.get("points", "").split():
            x, y = map(float, pair.split(","))
            assert not (x > 9.0 + 60.5 and y < 2.0 + 39.5)


def test_a_box_through_the_canopy_is_no_light_on_the_map(qapp: object) -> None:
    # The canopy is 20 cm up; a pot of 10 x 10 cm about (0.45, 0.40) reaches from 15 to 30 cm.
    pot = Obstacle(x=0.45, y=0.4, length=0.1, width=0.1, underside=0.15, thickness=0.15)
    low = pot.model_copy(update={"thickness": 0.05})
    for one, seen in ((pot, False), (low, True)):
        estimate = sample_estimate(sample_plan(obstacles=(one,)))
        picture = map_drawing(estimate, 300.0, CM, room=(60.0, 50.0))
        (image,) = ET.fromstring(picture.svg).iter(f"{SVG}image")
        data = next(v for k, v in image.items() if k.endswith("href")).split(",", 1)[1]
        dots = QImage.fromData(base64.b64decode(data))
        wide, tall = dots.width() / 0.6, dots.height() / 0.5
        assert (dots.pixelColor(int(0.45 * wide), int(0.1 * tall)).alpha() == 255) is seen
        assert dots.pixelColor(int(0.3 * wide), int(0.1 * tall)).alpha() == 255
        value = float(estimate.at(np.array([0.45]), np.array([0.4]))[0])
        assert np.isfinite(value) == seen


# -- charts -------------------------------------------------------------------------------


def test_the_line_joins_what_none_beats() -> None:
    own, cheap, beaten = PLAN_SIDE, (Origin.VARIANT, "a"), (Origin.VARIANT, "b")
    spots = (
        Spot("Plan", own, 200, 40),
        Spot("Cheap", cheap, 150, 30),
        Spot("Beaten", beaten, 190, 45),
    )
    picture = trade_off_chart(TradeOff(spots, "Light", "Cost", ""), own)
    assert picture.words.endswith("beaten by none: Cheap, Plan")
    assert {"Plan", "Cheap", "Beaten", "Light", "Cost"} <= set(texts(picture))


def test_bars_are_as_long_as_their_values() -> None:
    root = ET.fromstring(budget_chart((("one", 30.0), ("half", 15.0)), "µmol").svg)
    wide = [float(bar.get("width", "0")) for bar in root.iter(f"{SVG}rect")]
    assert wide[1] == pytest.approx(wide[0] / 2, abs=0.01)


def test_a_tilted_lamp_leans_in_the_elevation() -> None:
    """Seen from the near side a lamp that is turned by 90° stands slanted: no box but a shape."""
    plan = sample_plan()
    leaning = edits.change_lamp(plan, 0, rotation_deg=90.0, tilt_deg=20.0)
    level = edits.change_lamp(plan, 0, rotation_deg=90.0)
    picture, before = (elevation_drawing(one, LengthUnit.CM).svg for one in (leaning, level))
    assert picture != before
    ET.fromstring(picture)
    assert QSvgRenderer(QByteArray(picture.encode())).isValid()


def test_a_map_of_a_share_has_its_own_scale_and_no_lines_of_light(qapp: object) -> None:
    """Blue grows from a tenth at the left wall to three tenths at the right one, by hand."""
    plain = sample_estimate(eppfd=265.5, blue_share=0.2, red_share=0.4, far_red_share=0.2)
    blue = (0.1 + 0.2 * plain.x / 0.6) * plain.ppfd
    rest = (plain.ppfd - blue) / 2
    bands = {"blue": blue, "green": rest, "red": rest, "far_red": 0.25 * plain.ppfd}
    estimate = dataclasses.replace(plain, bands=bands)
    picture = whole_map(estimate, CM, FIGURE["blue_share"])
    assert "Blue from 11 to 29 % of PPFD" in picture.words
    assert {"Blue, % of PPFD", "10", "30", "ePPFD", "Far-red"} <= set(texts(picture))
    assert not any(
        line.get("stroke-width") == "0.22" and not line.get("stroke-dasharray")
        for line in ET.fromstring(picture.svg).iter(f"{SVG}polyline")
    )
    image = next(ET.fromstring(picture.svg).iter(f"{SVG}image"))
    data = next(v for k, v in image.items() if k.endswith("href")).split(",", 1)[1]
    dots = QImage.fromData(base64.b64decode(data))
    for share in (0.2, 0.5, 0.8):
        x = dots.pixelColor(int(share * dots.width()), dots.height() // 4)
        place = (10 + 20 * share - 10) / 20
        expected = colour_table()[round(255 * place)].astype(int)
        assert np.abs(np.array((x.red(), x.green(), x.blue())) - expected).max() <= 4
    assert "% of PPFD" not in whole_map(estimate, CM).svg
    assert f"ePPFD, {PPFD_UNIT}" in texts(whole_map(estimate, CM, FIGURE["eppfd"]))
