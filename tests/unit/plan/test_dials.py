"""Dials: one row for every number of a plan, read, bounded and turned the same way."""

from __future__ import annotations

import math

import pytest

from planner.plan import edits
from planner.plan.dials import DIALS, Redo, dial
from planner.plan.lamp import BarsBody, PanelBody
from planner.plan.lining import Band, WallCover
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.space import CarriedCanopy, Obstacle, hull
from planner.plan.target import DliTarget, PpfdTarget
from planner.plan.turning import lamp_spacing
from planner.units import LengthUnit, in_unit
from tests.unit.reports.sample_estimate import sample_plan

COMMAND_LINE = (
    *("height", "output", "reflectance", "width", "depth", "size", "spacing", "canopy"),
    *("space-height", "canopy-reflectance", "photoperiod"),
)


def furnished() -> Plan:
    """Two lamps, the second of bars; a wall of two bands; an obstacle."""
    plan = sample_plan()
    bars = BarsBody(count=3, length=0.3, bar_width=0.03, width=0.2)
    model = edits.changed(plan.lamps[0].model, key="bars", body=bars)
    plan = edits.add_lamp(plan, edits.changed(plan.lamps[0], x=0.5, y=0.25, model=model))
    plan = edits.add_obstacle(
        plan,
        Obstacle(
            x=0.1,
            y=0.1,
            underside=0.1,
            length=0.1,
            width=0.1,
            thickness=0.05,
            canopy=CarriedCanopy(target=PpfdTarget(low=100, high=200)),
        ),
    )
    lining = plan.walls[0].bands[0].lining
    cover = WallCover(bands=(Band(lining=lining, top=0.5), Band(lining=lining)))
    return edits.set_wall_cover(plan, 0, cover)


def plans() -> tuple[Plan, ...]:
    """With each kind of target, shut and open, so that every dial has a place."""
    plan = furnished()
    opened = edits.with_space(plan, door=0, door_open=True, room_light=20.0)
    return plan, edits.changed(plan, target=DliTarget(low=8.0, high=14.0)), opened


def test_the_names_of_the_command_line_are_kept_and_lead() -> None:
    assert tuple(DIALS)[: len(COMMAND_LINE)] == COMMAND_LINE


@pytest.mark.parametrize("key", DIALS)
def test_every_dial_puts_what_it_reads_and_keeps_to_its_bounds(key: str) -> None:
    row = dial(key)
    plan = next(one for one in plans() if row.places(one))
    together = () if row.at is PlaceKind.CORNER else (None,)
    for place in (*together, *row.places(plan)):
        low, high = row.bounds(plan, place)
        present = row.get(plan, place)
        start = present if present is not None else (low + high) / 2
        value = round(start) if key == "bars" else start
        # A little off where the plan stands, towards the farther bound.
        step = 0.02 * min(high - low, 1.0) * (1 if high - value > value - low else -1)
        value = value if key == "bars" else value + step
        turned = row.put(plan, place, value)
        if key != "size":
            assert row.get(turned, place) == pytest.approx(value), (key, place)
        for beyond in (low - 1.0, high + 1.0):
            with pytest.raises(ValueError, match="must be"):
                row.put(plan, place, beyond)


def test_bounds_follow_the_plan_and_say_what_sets_them() -> None:
    plan = sample_plan()
    # By hand: ceiling 1.2 m less canopy 0.2 m; lamp face at 0.6 m less a centimetre.
    assert dial("height").bounds(plan) == pytest.approx((0.01, 1.0))
    assert dial("canopy").bounds(plan)[1] == pytest.approx(0.59)
    with pytest.raises(ValueError, match="must be at most") as caught:
        dial("canopy").put(plan, None, 0.7)
    said = str(caught.value)
    assert in_unit(said, LengthUnit.CM) == (
        "Canopy height: must be at most 59 cm, not 70 cm (lamp 1 hangs at 60 cm)."
    )
    assert in_unit(said, LengthUnit.INCH) == (
        "Canopy height: must be at most 23.23 in, not 27.56 in (lamp 1 hangs at 23.62 in)."
    )
    with pytest.raises(ValueError, match="the canopy is at"):
        dial("space-height").put(plan, None, 0.15)


def test_searches_keep_to_what_nothing_is_cautioned_against() -> None:
    """Canopy at 20 cm under a ceiling at 120 cm, a housing of 6 cm: faces at 5 to 94 cm."""
    plan = sample_plan()
    flat = edits.changed(plan.lamps[0].model, housing_height=0.0)
    tall = edits.changed(plan.lamps[0].model, key="tall", housing_height=0.06)
    plan = edits.change_lamp(plan, 0, model=flat)
    one = dial("height").sound_in(plan)
    assert (one.minimum, one.maximum) == pytest.approx((0.05, 1.0))
    plan = edits.add_lamp(plan, edits.changed(plan.lamps[0], x=0.5, y=0.25, model=tall))
    both = dial("height").sound_in(plan)
    assert (both.minimum, both.maximum) == pytest.approx((0.05, 0.94))
    assert dial("height").bounds(plan)[1] == pytest.approx(1.0)
    assert in_unit(both.limit_text(least=False), LengthUnit.CM) == (
        "at most 94 cm (the ceiling is there)"
    )
    hours = dial("photoperiod").sound_in(plan)
    assert (hours.minimum, hours.maximum) == (0, 20)
    assert "4 dark hours" in hours.limit_text(least=False)
    # A dial without anything to heed is searched over all its bounds.
    assert dial("output").sound_in(plan) == dial("output").bounded(plan)


def test_all_at_once_reads_one_value_only_where_all_have_it() -> None:
    plan = furnished()
    height, second = dial("height"), Place(PlaceKind.LAMP, 1)
    assert height.get(plan) == 0.4
    apart = height.put(plan, second, 0.5)
    assert height.get(apart) is None
    assert height.get(apart, second) == 0.5
    assert [lamp.hanging_height for lamp in height.put(apart, None, 0.3).lamps] == [0.3, 0.3]
    assert dial("bars").places(plan) == (second,)
    with pytest.raises(ValueError, match="Lamp 1 has no number of bars"):
        dial("bars").put(plan, Place(PlaceKind.LAMP, 0), 2)


def test_a_photon_flux_waits_for_its_watts() -> None:
    # The photon energy at 700 nm allows 5.85 µmol/J (h c N_A / λ): 40 W give at most 234.
    plan = sample_plan()
    ppf, watts = dial("ppf"), dial("watts")
    with pytest.raises(ValueError, match=r"at most 234 µmol s⁻¹, not 600 µmol s⁻¹ \(no lamp"):
        ppf.put(plan, None, 600.0)
    assert ppf.get(ppf.put(watts.put(plan, None, 240.0), None, 600.0)) == 600.0
    assert ppf.redo is Redo.NOTHING


def test_spacing_and_wall_reflectance_by_hand() -> None:
    lamp = sample_plan().lamps[0]
    lamps = tuple(lamp.model_copy(update={"x": x, "y": 0.25}) for x in (0.2, 0.4))
    plan = edits.changed(sample_plan(), lamps=lamps)
    assert lamp_spacing(plan) == pytest.approx(0.2)
    spread = dial("spacing").put(plan, None, 0.3)
    # About the middle at 0.3: 0.15 and 0.45.
    assert [one.x for one in spread.lamps] == pytest.approx([0.15, 0.45])
    darker = dial("reflectance").put(plan, None, 0.5)
    swept = darker.lining(darker.walls[0].bands[0].lining)
    assert swept.reflectance == 0.5
    # An adopted value is not passed off as the material's own.
    assert swept.name.endswith("taken as 50 %")
    assert swept.source.startswith("A value tried in place of")
    assert darker.lining(darker.floor).reflectance == 0.8
    one = dial("reflectance").put(plan, Place(PlaceKind.WALL, 1, 0), 0.5)
    assert [one.lining(c.bands[0].lining).reflectance == 0.5 for c in one.walls].count(True) == 1
    with pytest.raises(ValueError, match="nothing in the plan that has a lamp spacing"):
        dial("spacing").put(sample_plan(), None, 0.3)
    with pytest.raises(ValueError, match="at most 100 %, not 150 %"):
        dial("reflectance").put(plan, None, 1.5)


def test_an_unknown_dial_is_answered_with_those_there_are() -> None:
    with pytest.raises(ValueError, match="no number called 'heigth'; there is height, output"):
        dial("heigth")


def tilted_plan(width: float = 0.2, housing: float = 0.05, hangs: float = 0.4) -> Plan:
    """One panel in the middle, 60 cm from canopy to ceiling."""
    plan = edits.set_canopy_height(edits.set_height(sample_plan(), 1.0), 0.3)
    plan = edits.changed(plan, lamps=plan.lamps[:1])
    body = PanelBody(length=0.2, width=width)
    model = edits.changed(plan.lamps[0].model, body=body, housing_height=housing)
    x0, y0, x1, y1 = plan.space.bounds
    middle = {"x": (x0 + x1) / 2, "y": (y0 + y1) / 2}
    return edits.change_lamp(plan, 0, model=model, hanging_height=hangs, rotation_deg=0.0, **middle)


def test_tilt_stops_where_a_corner_meets_ceiling_or_canopy() -> None:
    row, lamp = dial("tilt"), Place(PlaceKind.LAMP, 0)
    # Half the width of 0.2 m is 0.1 m: 0.1 sin t = 0.05 under the face, 1 cm over the canopy.
    low, high = row.bounds(tilted_plan(hangs=0.06), lamp)
    assert high == pytest.approx(30.0)
    assert low == pytest.approx(-30.0)
    assert "canopy" in row.bounded(tilted_plan(hangs=0.06), lamp).why_most
    # Without a housing 0.1 sin t = 0.7 - 0.65 over it.
    bare = tilted_plan(housing=0.0, hangs=0.65)
    assert row.bounds(bare, lamp)[1] == pytest.approx(30.0)
    assert "ceiling" in row.bounded(bare, lamp).why_most
    # With one as high as half its width: 0.1 (sin t + cos t) = 0.13 at 21.8 or beyond.
    tall = tilted_plan(housing=0.1, hangs=0.57)
    assert row.bounds(tall, lamp)[1] == pytest.approx(
        math.degrees(math.asin(0.13 / math.hypot(0.1, 0.1))) - 45.0
    )
    for plan in (tilted_plan(hangs=0.06), bare, tall):
        for end in row.bounds(plan, lamp):
            assert row.get(row.put(plan, lamp, end), lamp) == pytest.approx(end)
    # As far as is wide of both it is what a hinge has.
    assert row.bounds(tilted_plan(), lamp) == (-45.0, 45.0)


def test_a_tilted_lamp_keeps_its_corners_inside() -> None:
    plan = dial("tilt").put(tilted_plan(), None, 30.0)
    # Its lower side is 0.1 sin 30° = 5 cm under the middle of its face.
    assert dial("height").bounds(plan)[0] == pytest.approx(0.06)
    assert dial("height").bounds(plan)[1] == pytest.approx(
        0.7 - 0.05 - 0.05 * math.cos(math.pi / 6)
    )
    with pytest.raises(ValueError, match="tilted by 30° towards the back, would reach down to"):
        edits.change_lamp(plan, 0, hanging_height=0.05)
    with pytest.raises(ValueError, match="would reach through the ceiling"):
        edits.change_lamp(plan, 0, hanging_height=0.64)
    with pytest.raises(ValueError, match="would reach through a wall"):
        edits.change_lamp(plan, 0, y=plan.space.bounds[1] + 0.05)
    lower = edits.set_height(plan, 0.5)
    assert lower.lamps[0].hanging_height == pytest.approx(0.2 - 0.05 - 0.05 * math.cos(math.pi / 6))


@pytest.mark.parametrize(
    ("turned", "tilt", "side"),
    [
        (0, 10, "the back"),
        (0, -10, "the front"),
        (90, 10, "the left"),
        (45, -10, "the front right"),
    ],
)
def test_the_side_light_is_turned_to(turned: float, tilt: float, side: str) -> None:
    plan = edits.change_lamp(tilted_plan(), 0, rotation_deg=turned, tilt_deg=tilt)
    assert plan.lamps[0].leans == f"tilted by 10° towards {side}"
    # The lit side of the face and what hangs below the middle lie on opposite sides.
    lamp = plan.lamps[0]
    below = lamp.place(0.0, 0.0, -1.0)
    assert (below[0] - lamp.x, below[1] - lamp.y) == pytest.approx(
        (
            -math.sin(math.radians(turned)) * math.sin(math.radians(tilt)),
            math.cos(math.radians(turned)) * math.sin(math.radians(tilt)),
        )
    )


def test_the_outline_of_a_tilted_lamp_holds_all_its_corners() -> None:
    lamp = edits.change_lamp(tilted_plan(), 0, rotation_deg=35.0, tilt_deg=25.0).lamps[0]
    seen = hull((x, y) for x, y, _ in lamp.corners(lamp.model.housing_height))
    area = (
        sum(ax * by - bx * ay for (ax, ay), (bx, by) in zip(seen, seen[1:] + seen[:1], strict=True))
        / 2
    )
    # 0.2 m long, 0.2 cos t + 0.05 sin t across.
    t = math.radians(25.0)
    assert area == pytest.approx(0.2 * (0.2 * math.cos(t) + 0.05 * math.sin(t)))
    for corner in lamp.outline():
        assert min(math.dist(corner, one) for one in seen) < 1e-9
