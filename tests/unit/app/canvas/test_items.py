from __future__ import annotations

import pytest
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QColor, QFont, QImage, QPainter, QPalette, QPolygonF
from PySide6.QtWidgets import QApplication

from planner.app.canvas.ink import Ink, Viewport
from planner.app.canvas.items import Item, Part, item_at, items_in_order, turn_handle, wall_normal
from planner.app.canvas.marks import paint_numbers
from planner.app.canvas.plan_layers import name_spots, paint_on_plan
from planner.plan import edits
from planner.plan.place import OWN, Place, PlaceKind
from planner.plan.space import CarriedCanopy, Obstacle
from planner.plan.tiers import from_above
from tests.unit.app.canvas.scenes import L_SHAPE, SQUARE, plan_of

VIEW = Viewport(scale=400, left=50, bottom=450)
SECTION = ((0.0, 0.7), (1.0, 0.7))


def under(u: float, v: float, turning: int | None = None) -> Item:
    return item_at(plan_of(), SECTION, VIEW, VIEW.to_pixel(u, v), turning)


@pytest.mark.parametrize(
    ("place", "item"),
    [
        ((0.01, 0.01), Item(Part.CORNER, 0)),
        ((1.0, 1.0), Item(Part.CORNER, 2)),
        ((0.5, 0.0), Item(Part.WALL, 0)),
        ((1.015, 0.5), Item(Part.WALL, 1)),
        ((0.6, 0.35), Item(Part.LAMP, 0)),
        ((0.5, 0.7), Item(Part.SECTION)),
        ((0.0, 0.7), Item(Part.SECTION_START)),
        ((1.0, 0.705), Item(Part.SECTION_END)),
        ((0.5, 0.55), Item(Part.INSIDE)),
        ((1.3, 0.5), Item(Part.OUTSIDE)),
    ],
)
def test_what_lies_under_a_point(place: tuple[float, float], item: Item) -> None:
    assert under(*place) == item


def test_a_turned_lamp_is_hit_where_it_lies() -> None:
    plan = edits.change_lamp(plan_of(), 0, rotation_deg=90.0)

    def hit(u: float, v: float) -> Part:
        return item_at(plan, SECTION, VIEW, VIEW.to_pixel(u, v)).part

    assert hit(0.5, 0.43) is Part.LAMP  # half length 15 cm, now upright
    assert hit(0.63, 0.3) is Part.INSIDE


@pytest.mark.parametrize("order", [(0, 1), (1, 0)])
@pytest.mark.parametrize(
    ("looked", "lit"), [(None, ["Low"]), ("Low", ["Low"]), ("High", ["Low", "High"])]
)
def test_of_trays_one_over_the_other_the_one_looked_at_is_painted_last_and_taken(
    order: tuple[int, int], looked: str | None, lit: list[str], qapp: object
) -> None:
    """What hangs over the canopy looked at hides neither its light nor itself from the hand."""
    pair = [
        Obstacle(name=name, x=x, y=0.85, underside=under, length=0.3, width=0.15, thickness=0.05,
                 canopy=CarriedCanopy())
        for name, x, under in (("Low", 0.3, 0.2), ("High", 0.4, 0.5))
    ]  # fmt: skip
    plan = plan_of().model_copy(update={"obstacles": tuple(pair[k] for k in order)})
    names = [one.name for one in plan.obstacles]
    place = Place(PlaceKind.TOP, names.index(looked)) if looked else OWN
    item = item_at(plan, SECTION, VIEW, VIEW.to_pixel(0.35, 0.85), looked=place)
    assert (item.part, names[item.index]) == (Part.OBSTACLE, looked or "Low")
    painted: list[int] = []
    image = QImage(500, 500, QImage.Format.Format_RGB32)

    def light(number: int, _outline: QPolygonF) -> bool:
        painted.append(number)
        return True

    with QPainter(image) as painter:
        paint_on_plan(painter, plan, VIEW, Ink.of(QPalette()), (), place, light)
    assert [names[number] for number in painted] == lit


def test_the_turning_handle_is_there_only_for_the_lamp_in_hand() -> None:
    at = turn_handle(plan_of().lamps[0], VIEW)
    assert at.x() > VIEW.to_pixel(0.65, 0.3).x()
    assert item_at(plan_of(), SECTION, VIEW, at, 0) == Item(Part.TURN, 0)
    assert item_at(plan_of(), SECTION, VIEW, at).part is not Part.TURN


def test_a_small_target_wins_over_a_large_one() -> None:
    plan = edits.change_lamp(plan_of(), 0, x=0.05, y=0.05)
    assert item_at(plan, SECTION, VIEW, VIEW.to_pixel(0.0, 0.0)) == Item(Part.CORNER, 0)


def test_tab_order_is_lamps_walls_corners_section() -> None:
    parts = [item.part for item in items_in_order(plan_of(L_SHAPE))]
    assert parts == [Part.LAMP] + [Part.WALL] * 6 + [Part.CORNER] * 6 + [Part.SECTION]


def test_normals_point_out() -> None:
    plan = plan_of()
    assert [wall_normal(plan, k) for k in range(4)] == [(0, -1), (1, 0), (0, 1), (-1, 0)]


def test_items_fit_or_do_not() -> None:
    plan = plan_of()
    assert Item(Part.BAND_EDGE, 2, 0).fits(plan)
    assert not Item(Part.BAND_EDGE, 0, 0).fits(plan)
    assert not Item(Part.LAMP, 1).fits(plan)
    assert not Item(Part.CORNER, 4).fits(plan)
    assert Item(Part.SECTION).fits(plan)
    assert QPointF(VIEW.to_pixel(0, 0)) == QPointF(50, 450)


def test_a_name_reaches_no_further_than_its_obstacle_and_is_not_written_under_another(
    qapp: QApplication,
) -> None:
    """Two trays of 30 cm side by side at 400 px a metre, a box on the second, a shelf over all."""
    name = "Tray with a name that goes on and on"
    tray = Obstacle(name=name, x=0.2, y=0.5, underside=0.1, length=0.3, width=0.3, thickness=0.3)
    beside = tray.model_copy(update={"x": 0.55})
    top = Obstacle(name="Box", x=0.55, y=0.5, underside=0.4, length=0.2, width=0.2, thickness=0.1)
    shelf = Obstacle(
        name="Shelf", x=0.2, y=0.5, underside=0.6, length=0.3, width=0.3, thickness=0.02
    )
    what = plan_of(SQUARE, obstacles=(tray, beside, top, shelf))
    spots = name_spots(what, VIEW, QFont(), OWN)
    assert len(spots) == 2
    assert [spot.width() <= 120 for spot in spots] == [True, True]
    assert spots[0].center().toTuple() == VIEW.to_pixel(0.2, 0.5).toTuple()
    assert not spots[0].intersects(spots[1])
    lying, higher = from_above(what, OWN)
    assert (lying, higher) == ((0, 1, 2), (3,))


def test_the_numbers_of_a_drag_stay_in_the_drawing(qapp: QApplication) -> None:
    """Beside a pointer at the right edge of a drawing narrower than the words and their gap."""
    image = QImage(240, 60, QImage.Format.Format_RGB32)
    image.fill(QColor("white"))
    painter = QPainter(image)
    ink = Ink.of(QPalette())
    words = "hanging height 48 cm"
    while painter.fontMetrics().horizontalAdvance(words) < 210:
        words += " "
    paint_numbers(painter, QPointF(150, 20), [(words, False)], QRectF(image.rect()), ink)
    painter.end()
    white = QColor("white")
    inked = [x for x in range(240) if any(image.pixelColor(x, y) != white for y in range(60))]
    assert inked[0] >= 3
