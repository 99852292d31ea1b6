"""Findings: each appears exactly when it should."""

from __future__ import annotations

import ast
import inspect
from typing import Any

import pytest

from planner.catalogue.library import demo_plan
from planner.plan import checks
from planner.plan.checks import Finding, Severity, findings
from planner.plan.edits import add_obstacle, changed
from planner.plan.lamp import BarsBody, Lamp, LampModel, PanelBody, PointBody
from planner.plan.lining import Band, Caution, Lining, WallCover
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.space import Canopy, CarriedCanopy, Obstacle, Space
from planner.plan.target import DliTarget, PpfdTarget

SQUARE = ((0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0))
L_SHAPE = ((0.0, 0.0), (1.0, 0.0), (1.0, 0.5), (0.5, 0.5), (0.5, 1.0), (0.0, 1.0))


def _lining(key: str, *cautions: Caution) -> Lining:
    return Lining(key=key, name=key.title(), reflectance=0.8, low=0.7, high=0.9, cautions=cautions)


TILE = _lining("tile")
CARD = _lining("card", Caution.BURNS)
FOIL = _lining("foil", Caution.CONDUCTS)


def _lamp(**parts: Any) -> Lamp:
    model = {
        "key": "board",
        "name": "Board",
        "body": PanelBody(length=0.3, width=0.3),
        "ppf": 100.0,
        "watts": 50.0,
    }
    model |= {name: parts.pop(name) for name in tuple(parts) if name in {"body", "ppf", "watts"}}
    place = {"x": 0.5, "y": 0.5, "hanging_height": 0.4} | parts
    return Lamp.model_validate({"model": LampModel.model_validate(model), **place})


def _plan(*lamps: Lamp, footprint: Any = SQUARE, **parts: Any) -> Plan:
    given: dict[str, Any] = {
        "space": Space(footprint=footprint, height=2.0),
        "lamps": lamps,
        "linings": (TILE,),
        "walls": tuple(WallCover.plain("tile") for _ in footprint),
        "ceiling": "tile",
        "floor": "tile",
        "photoperiod_hours": 14.0,
        "target": PpfdTarget(low=150, high=250),
    }
    return Plan.model_validate(given | parts)


def _found(plan: Plan, key: str) -> list[Finding]:
    return [finding for finding in findings(plan) if finding.key == key]


def test_a_sound_plan_has_no_findings() -> None:
    assert findings(_plan(_lamp())) == ()


def test_no_lamp_and_no_target_are_notes() -> None:
    found = findings(_plan(target=None))
    assert {finding.key for finding in found} == {"no-lamp", "no-target"}
    assert {finding.severity for finding in found} == {Severity.NOTE}


@pytest.mark.parametrize(
    ("x", "y", "rotation", "out"),
    [
        (0.5, 0.5, 0.0, False),
        (0.15, 0.5, 0.0, False),  # touches the wall
        (0.14, 0.5, 0.0, True),
        (0.2, 0.5, 45.0, True),  # half its diagonal is 21.2 cm
        (0.22, 0.5, 45.0, False),
    ],
)
def test_a_lamp_that_sticks_out_is_told(x: float, y: float, rotation: float, out: bool) -> None:
    found = _found(_plan(_lamp(x=x, y=y, rotation_deg=rotation)), "lamp-through-wall")
    assert bool(found) == out
    if out:
        assert found[0].where == Place(PlaceKind.LAMP, 0)
        assert found[0].severity is Severity.WARNING


def test_an_inner_corner_that_pokes_through_a_lamp_is_told() -> None:
    # all four corners of the lamp lie inside, but the corner of the L cuts its side
    def tilted(at: float) -> Lamp:
        body = PanelBody(length=0.5, width=0.05)
        return _lamp(x=at, y=at, rotation_deg=-45.0, body=body)

    assert _found(_plan(tilted(0.49), footprint=L_SHAPE), "lamp-through-wall")
    assert not _found(_plan(tilted(0.49)), "lamp-through-wall")
    # 2.5 cm of half width and 7.1 cm from the middle to the corner
    assert not _found(_plan(tilted(0.45), footprint=L_SHAPE), "lamp-through-wall")


def test_bars_are_taken_with_their_outer_size() -> None:
    bars = BarsBody(count=4, length=0.5, bar_width=0.03, width=1.2)
    assert _found(_plan(_lamp(body=bars)), "lamp-through-wall")


def test_a_point_lamp_never_sticks_out() -> None:
    assert not _found(_plan(_lamp(body=PointBody(), x=0.001, y=0.5)), "lamp-through-wall")


@pytest.mark.parametrize(("height", "close"), [(0.04, True), (0.05, False), (0.3, False)])
def test_a_lamp_close_to_the_canopy_is_told(height: float, close: bool) -> None:
    found = _found(_plan(_lamp(hanging_height=height)), "lamp-close-to-canopy")
    assert bool(found) == close
    if close:
        assert "4 cm above the canopy" in found[0].sentence


@pytest.mark.parametrize(
    ("y", "thick", "close"),
    [(0.5, 0.26, True), (0.5, 0.2, False), (0.5, 0.4, False), (0.05, 0.26, False)],
)
def test_a_lamp_close_to_what_grows_on_an_obstacle_is_told(
    y: float, thick: float, close: bool
) -> None:
    plan = _plan(_lamp(hanging_height=0.3, y=0.5))
    level = plan.canopy.height
    tray = Obstacle(
        x=plan.lamps[0].x, y=y, underside=level, length=0.1, width=0.05, thickness=thick,
        canopy=CarriedCanopy(),
    )  # fmt: skip
    found = _found(plan.model_copy(update={"obstacles": (tray,)}), "lamp-close-to-top")
    assert bool(found) == close
    if close:
        assert "4 cm above the canopy on obstacle 1" in found[0].sentence
    bare = tray.model_copy(update={"canopy": None})
    assert not _found(plan.model_copy(update={"obstacles": (bare,)}), "lamp-close-to-top")


def test_two_lamps_in_one_place_are_told() -> None:
    beside = _plan(_lamp(x=0.3), _lamp(x=0.6))
    inside = _plan(_lamp(x=0.5), _lamp(x=0.7))
    above = _plan(_lamp(x=0.5), _lamp(x=0.7, hanging_height=0.6))
    same = _plan(_lamp(), _lamp())
    assert not _found(beside, "lamps-overlap")
    assert not _found(above, "lamps-overlap")
    assert _found(inside, "lamps-overlap")[0].where == Place(PlaceKind.LAMP, 1)
    assert _found(same, "lamps-overlap")


def test_a_dark_lamp_is_noted() -> None:
    assert _found(_plan(_lamp(output_percent=0)), "lamp-off")


def test_an_efficacy_beyond_the_best_led_fixtures_is_told() -> None:
    # 4.1 µmol/J: Kusuma, Pattison, Bugbee (2020), Hortic. Res. 7:56, blue and red LEDs
    assert not _found(_plan(_lamp(ppf=200, watts=50)), "efficacy-too-good")
    assert _found(_plan(_lamp(ppf=215, watts=50)), "efficacy-too-good")


@pytest.mark.parametrize(("x", "near"), [(0.24, True), (0.26, False)])
def test_a_burning_lining_within_ten_centimetres_of_a_lamp(x: float, near: bool) -> None:
    walls = (*(WallCover.plain("tile") for _ in range(3)), WallCover.plain("card"))
    found = _found(_plan(_lamp(x=x), linings=(TILE, CARD), walls=walls), "burns-near-lamp")
    assert bool(found) == near
    if near:
        assert found[0].where == Place(PlaceKind.WALL, 3, 0)
        assert "9 cm from lamp 1" in found[0].sentence
        assert "can burn" in found[0].sentence


@pytest.mark.parametrize(
    ("key", "kind"), [("conducts-near-lamp", Caution.CONDUCTS), ("burns-near-lamp", Caution.BURNS)]
)
def test_what_covers_an_obstacle_is_near_a_lamp_too(key: str, kind: Caution) -> None:
    # The lamp's lit face is 60 cm above the floor (canopy 0.2, hung 0.4) and reaches to x = 0.65;
    # a shelf 12 cm thick from 0.44 m up ends at 0.56 m: 4 cm below it, straight under it.
    film = _lining("film", kind)
    shelf = Obstacle(
        name="Shelf", x=0.5, y=0.5, underside=0.44, length=0.2, width=0.2, thickness=0.12,
        lining="film",
    )  # fmt: skip
    near = _found(_plan(_lamp(), linings=(TILE, film), obstacles=(shelf,)), key)
    assert [one.where for one in near] == [Place(PlaceKind.OBSTACLE, 0)]
    assert "'Film' on obstacle 1 ('Shelf') is 4 cm from lamp 1" in near[0].sentence
    # Beside it at the same height: its left side at 0.73, 8 cm from the lamp; at 0.78 it is 13 cm.
    beside = shelf.model_copy(update={"x": 0.83, "underside": 0.55})
    assert (
        "8 cm" in _found(_plan(_lamp(), linings=(TILE, film), obstacles=(beside,)), key)[0].sentence
    )
    away = beside.model_copy(update={"x": 0.88})
    assert not _found(_plan(_lamp(), linings=(TILE, film), obstacles=(away,)), key)


def test_only_the_band_beside_the_lamp_counts() -> None:
    low = WallCover(bands=(Band(lining="card", top=0.3), Band(lining="tile")))
    high = WallCover(bands=(Band(lining="tile", top=0.5), Band(lining="card")))
    lamp = _lamp(x=0.16)  # 1 cm from the left wall, 60 cm above the floor
    others = tuple(WallCover.plain("tile") for _ in range(3))
    beside = _plan(lamp, linings=(TILE, CARD), walls=(*others, high))
    below = _plan(lamp, linings=(TILE, CARD), walls=(*others, low))
    assert _found(beside, "burns-near-lamp")[0].where == Place(PlaceKind.WALL, 3, 1)
    assert not _found(below, "burns-near-lamp")
    higher = WallCover(bands=(Band(lining="tile", top=0.8), Band(lining="card")))
    above = _plan(lamp, linings=(TILE, CARD), walls=(*others, higher))
    assert not _found(above, "burns-near-lamp")


def test_a_burning_ceiling_close_above_a_lamp() -> None:
    near = _plan(_lamp(hanging_height=1.75), linings=(TILE, CARD), ceiling="card")
    far = _plan(_lamp(hanging_height=1.65), linings=(TILE, CARD), ceiling="card")
    assert _found(near, "burns-near-lamp")[0].where == Place(PlaceKind.CEILING)
    assert not _found(far, "burns-near-lamp")


def test_foil_is_a_caution_anywhere_and_a_warning_near_a_lamp() -> None:
    walls = (WallCover.plain("foil"), *(WallCover.plain("tile") for _ in range(3)))
    far = _plan(_lamp(), linings=(TILE, FOIL), walls=walls)
    near = _plan(_lamp(y=0.2), linings=(TILE, FOIL), walls=walls)
    (caution,) = findings(far)
    assert (caution.key, caution.severity) == ("conducts", Severity.CAUTION)
    (warning,) = findings(near)
    assert (warning.key, warning.severity) == ("conducts-near-lamp", Severity.WARNING)
    for finding in (caution, warning):
        assert "conducts electricity" in finding.sentence
        assert "licensed electrician" in finding.sentence


@pytest.mark.parametrize(
    ("caution", "key"),
    [(Caution.HOT_SPOTS, "hot-spots"), (Caution.HOLDS_MOISTURE, "holds-moisture")],
)
def test_other_cautions_are_noted_where_the_lining_is_used(caution: Caution, key: str) -> None:
    odd = _lining("odd", caution)
    unused = _plan(_lamp(), linings=(TILE, odd))
    used = changed(unused, floor="odd")
    assert not _found(unused, key)
    assert _found(used, key)[0].where == Place(PlaceKind.FLOOR)


def test_more_than_800_watts_per_square_metre_is_told() -> None:
    assert not _found(_plan(_lamp(watts=800, ppf=1600)), "dense-power")
    dense = _found(_plan(_lamp(watts=810, ppf=1600)), "dense-power")
    assert "810 W per m²" in dense[0].sentence
    dimmed = _plan(_lamp(watts=810, ppf=1600, output_percent=90))
    assert not _found(dimmed, "dense-power")


@pytest.mark.parametrize(("hours", "told"), [(16, False), (20, False), (21, True), (24, True)])
def test_a_short_night_is_told(hours: float, told: bool) -> None:
    found = _found(_plan(_lamp(), photoperiod_hours=hours), "short-night")
    assert bool(found) == told
    if hours == 24:
        assert "no dark hours" in found[0].sentence


def test_no_hours_of_light_are_told() -> None:
    assert _found(_plan(_lamp(), photoperiod_hours=0), "no-hours")
    assert not _found(_plan(photoperiod_hours=0), "no-hours"), "without a lamp it says nothing new"


def test_a_target_near_full_sun_is_told() -> None:
    # 20 mol/m²/d within 3 h are 20e6 / 10800 = 1852 µmol/m²/s
    strong = _plan(_lamp(), target=DliTarget(low=20, high=25), photoperiod_hours=3)
    assert "1852" in _found(strong, "strong-target")[0].sentence
    longer = changed(strong, photoperiod_hours=16)
    assert not _found(longer, "strong-target")
    without = changed(strong, photoperiod_hours=0)
    assert not _found(without, "strong-target")


def test_the_gravest_come_first() -> None:
    plan = _plan(_lamp(x=0.1, hanging_height=0.02, output_percent=0), target=None)
    ranks = [list(Severity).index(finding.severity) for finding in findings(plan)]
    assert ranks == sorted(ranks, reverse=True)
    assert len(set(ranks)) == 3


def test_every_finding_is_a_sentence() -> None:
    odd = _lining("odd", *Caution)
    plan = _plan(
        _lamp(x=0.1, hanging_height=0.02, output_percent=0, ppf=280),
        _lamp(x=0.1, hanging_height=0.02, watts=1000),
        linings=(odd,),
        walls=tuple(WallCover.plain("odd") for _ in range(4)),
        ceiling="odd",
        floor="odd",
        photoperiod_hours=24,
        target=None,
    )
    found = findings(plan)
    assert len(found) >= 9
    for finding in found:
        assert finding.sentence[0] in "'" or finding.sentence[0].isupper()
        assert finding.sentence.endswith(".")
        assert "  " not in finding.sentence


def test_checks_know_no_qt() -> None:
    tree = ast.parse(inspect.getsource(checks))
    modules = {node.module for node in ast.walk(tree) if isinstance(node, ast.ImportFrom)}
    assert not any(module and module.startswith("PySide6") for module in modules)


@pytest.mark.parametrize(
    ("x", "underside", "turned", "hidden"),
    [
        (0.5, 1.0, 0.0, False),
        (0.5, 0.5, 0.0, True),
        (0.75, 0.5, 0.0, False),
        (0.75, 0.5, 90.0, False),
        (0.55, 0.5, 0.0, True),
    ],
)
def test_a_lamp_inside_an_obstacle(x: float, underside: float, turned: float, hidden: bool) -> None:
    """The face is 0.6 m above the floor, the box 0.2 m thick, 0.4 m long and 0.2 m wide."""
    box = Obstacle(
        x=x, y=0.5, underside=underside, length=0.4, width=0.2, thickness=0.2, rotation_deg=turned
    )
    found = _found(_plan(_lamp(), obstacles=(box,)), "lamp-inside-obstacle")
    assert len(found) == hidden
    if hidden:
        assert "Lamp 1 ('Board') hangs inside obstacle 1 ('Shelf')" in found[0].sentence


def test_obstacle_through_a_wall_and_below_the_canopy_are_told() -> None:
    plan = demo_plan()
    x0, y0, _, _ = plan.space.bounds
    shelf = Obstacle(
        name="Shelf", x=x0 + 0.05, y=y0 + 0.2, underside=0.02, length=0.3, width=0.2, thickness=0.02
    )
    found = {finding.key: finding for finding in findings(add_obstacle(plan, shelf))}
    assert found["obstacle-through-wall"].where.kind == "obstacle"
    assert found["obstacle-through-wall"].severity is Severity.WARNING
    assert "obstacle-below-canopy" in found
    inside = shelf.model_copy(update={"x": x0 + 0.3, "underside": 0.4})
    keys = {finding.key for finding in findings(add_obstacle(plan, inside))}
    assert not keys & {"obstacle-through-wall", "obstacle-below-canopy"}


def _judged(*others: Obstacle, top: float = 0.6, **parts: Any) -> list[Finding]:
    tray = Obstacle(
        name="Tray", x=0.5, y=0.5, underside=0.0, length=0.2, width=0.2, thickness=top,
        lining="tile", canopy=CarriedCanopy(judged=True),
    )  # fmt: skip
    found = findings(_plan(_lamp(), obstacles=(tray, *others), **parts))
    return [one for one in found if one.key == "judged-unlit"]


def test_a_canopy_that_is_judged_and_gets_no_light_is_warned_of() -> None:
    shelf = Obstacle(
        name="Shelf", x=0.5, y=0.5, underside=0.6, length=0.3, width=0.3, thickness=0.1,
        lining="tile",
    )  # fmt: skip
    assert not _judged()
    assert not _judged(changed(shelf, underside=0.7)), "over it, not on it"
    assert not _judged(changed(shelf, x=0.6)), "on a part of it"
    (sunk,) = _judged(canopy=Canopy(height=0.6))
    (high,) = _judged(top=2.0)
    (under,) = _judged(shelf)
    assert sunk.severity is Severity.WARNING
    assert "it lies below the closed canopy" in sunk.sentence
    assert "it touches the ceiling" in high.sentence
    assert "obstacle 2 ('Shelf') stands on all of it" in under.sentence
    assert {one.where for one in (sunk, high, under)} == {Place(PlaceKind.OBSTACLE, 0)}


def test_the_target_is_asked_of_the_canopy_that_is_judged() -> None:
    strong = CarriedCanopy(judged=True, target=PpfdTarget(low=1600, high=1800))
    tray = Obstacle(
        name="Tray", x=0.5, y=0.5, underside=0.0, length=0.2, width=0.2, thickness=0.6,
        lining="tile", canopy=strong,
    )  # fmt: skip
    found = findings(_plan(_lamp(), obstacles=(tray,), target=None))
    assert "no-target" not in {one.key for one in found}
    (one,) = [one for one in found if one.key == "strong-target"]
    assert one.where == Place(PlaceKind.OBSTACLE, 0)


@pytest.mark.parametrize(
    ("x", "underside", "told"),
    [
        (0.4, 0.3, True),
        (0.598, 0.3, True),
        (0.61, 0.3, False),  # 1 cm beside it
        (0.4, 0.35, False),  # lies on it
        (0.4, 0.3495, False),  # as a tape measures
        (0.4, 0.34, True),
    ],
)
def test_two_obstacles_in_one_place_are_told(x: float, underside: float, told: bool) -> None:
    """A box of 20 x 20 cm from 30 to 35 cm up, and another of that size."""
    one = Obstacle(name="One", x=0.4, y=0.4, underside=0.3, length=0.2, width=0.2, thickness=0.05)
    other = changed(one, name="Other", x=x, underside=underside)
    found = _found(_plan(_lamp(), obstacles=(one, other)), "obstacles-overlap")
    assert bool(found) is told
    if found:
        assert found[0].severity is Severity.CAUTION
        assert "Obstacle 2 ('Other') and obstacle 1 ('One')" in found[0].sentence
