"""Laws of light that hold whatever the plan: a few random plans each.

Where a law is exact for the method (linearity, superposition, energy) it is asked to
rounding; where it holds for light but the method has chance in it, to the accuracy asked.
"""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from planner.estimate.evaluate import Cache
from planner.estimate.result import Quality
from planner.plan import edits
from planner.plan.lamp import Lamp
from planner.plan.lining import OPENING_KEY, WallCover
from planner.plan.plan import Plan
from tests.physics.rooms import Rho, box, lamp, light, lining, panel, plan

ROUNDING = 1e-6
"""Parts of the work are done in single precision."""

FEW = settings(
    max_examples=8, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck)
)
L_SHAPE = ((0.0, 0.0), (0.9, 0.0), (0.9, 0.4), (0.5, 0.4), (0.5, 0.8), (0.0, 0.8))


@st.composite
def rhos(draw: st.DrawFn, most: float = 0.9) -> Rho:
    total = draw(st.floats(0.0, most))
    share = draw(st.sampled_from([0.0, 0.4, 0.9]))
    return total * (1 - share), total * share


@st.composite
def lamps(draw: st.DrawFn) -> Lamp:
    body = draw(st.sampled_from([None, panel(0.2, 0.1), panel(0.3, 0.02)]))
    return lamp(
        (draw(st.floats(0.1, 0.45)), draw(st.floats(0.1, 0.35))),
        draw(st.floats(0.2, 0.9)),
        body=body,
        exponent=draw(st.sampled_from([0.5, 1.0, 3.0])),
        ppf=draw(st.floats(10.0, 500.0)),
        turned=draw(st.floats(-180.0, 180.0)),
    )


@st.composite
def plans(draw: st.DrawFn, count: int = 1) -> Plan:
    outline = draw(st.sampled_from([box(0.8, 0.6), L_SHAPE]))
    return plan(
        outline,
        1.2,
        [draw(lamps()) for _ in range(count)],
        walls=[draw(rhos()) for _ in outline],
        ceiling=draw(rhos()),
        floor=draw(rhos()),
        canopy=draw(st.floats(0.0, 0.5)),
        canopy_height=0.2,
        closed=draw(st.booleans()),
    )


def preview(what: Plan, cache: Cache | None = None) -> np.ndarray:
    return light(what, (8, 6), Quality.PREVIEW, cache=cache).ppfd


@FEW
@given(plans())
def test_twice_the_same(what: Plan) -> None:
    np.testing.assert_array_equal(preview(what), preview(what))


@FEW
@given(plans(), st.floats(1.0, 100.0))
def test_output_is_a_factor(what: Plan, percent: float) -> None:
    dimmed = edits.change_lamp(what, 0, output_percent=percent)
    np.testing.assert_allclose(preview(dimmed), preview(what) * percent / 100, rtol=ROUNDING)


@FEW
@given(plans(2))
def test_lamps_add_up(what: Plan) -> None:
    each = [preview(edits.remove_lamp(what, k)) for k in (0, 1)]
    np.testing.assert_allclose(preview(what), each[0] + each[1], rtol=2e-2)
    total = np.nansum(preview(what))
    assert total == pytest.approx(np.nansum(each[0]) + np.nansum(each[1]), rel=3e-3)


@FEW
@given(plans(2))
def test_energy_closes_and_stays_in_bounds(what: Plan) -> None:
    found = light(what, (8, 6), Quality.PREVIEW)
    emitted = sum(one.ppf for one in what.lamps)
    assert abs(found.closure) < 3e-3
    assert sum(share.share for share in found.shares) == pytest.approx(1.0, abs=3e-3)
    assert all(share.photon_flux >= -1e-9 for share in found.shares)
    if what.canopy.closed:
        # A canopy cannot absorb more than is emitted: Ē ≤ Φ/(A (1 - ρ)).
        most = 1 / (1 - what.canopy.reflectance)
        assert found.figures.mean <= emitted / what.space.area * most * (1 + 1e-9)
        assert found.figures.utilisation is not None
        assert found.figures.utilisation <= most * (1 + 1e-9)


def blackened(what: Plan) -> Plan:
    black = lining((0.0, 0.0))
    what = edits.line_all_walls(what, black)
    what = edits.line_floor(edits.line_ceiling(what, black), black)
    return edits.set_canopy(what, reflectance=0.0)


@FEW
@given(plans())
def test_walls_only_add_to_direct_light(what: Plan) -> None:
    bare = preview(blackened(what))
    assert (preview(what) >= bare * (1 - 1e-9))[np.isfinite(bare)].all()


@FEW
@given(plans())
def test_black_walls_leave_direct_light_alone(what: Plan) -> None:
    # With nothing reflecting, quality and seed cannot matter.
    black = blackened(what)
    quick = light(black, (8, 6), Quality.PREVIEW, seed=5).ppfd
    np.testing.assert_allclose(light(black, (8, 6)).ppfd, quick, rtol=ROUNDING)


@FEW
@given(plans())
def test_an_open_wall_is_as_dark_as_a_black_one(what: Plan) -> None:
    # What leaves does not return, and neither does what black takes.
    black = edits.line_wall(what, 0, 0, lining((0.0, 0.0)))
    opened = edits.changed(what, walls=(WallCover.plain(OPENING_KEY), *what.walls[1:]))
    np.testing.assert_allclose(preview(opened), preview(black), rtol=ROUNDING)


@FEW
@given(plans(), st.integers(0, 3), st.floats(0.02, 0.09))
def test_brighter_walls_never_darken(what: Plan, wall: int, more: float) -> None:
    # Raising the diffuse part of any wall raises the light everywhere (positive operators).
    old = what.lining(what.walls[wall].bands[0].lining)
    brighter = lining((old.diffuse + more, old.specular))
    before = light(what, (8, 6), Quality.PREVIEW)
    after = light(edits.line_wall(what, wall, 0, brighter), (8, 6), Quality.PREVIEW)
    assert after.figures.mean >= before.figures.mean * (1 - 1e-9)
    # Cell by cell the map is brought to the balance's total by one factor: allow its change.
    inside = np.isfinite(before.ppfd)
    assert (after.ppfd >= before.ppfd * (1 - 2e-3))[inside].all()


@FEW
@given(plans(), st.floats(0.02, 0.09))
def test_brighter_mirrors_never_darken(what: Plan, more: float) -> None:
    old = what.lining(what.walls[0].bands[0].lining)
    brighter = lining((old.diffuse, old.specular + more))
    before = light(what, (8, 6), Quality.PREVIEW).figures.mean
    after = light(edits.line_wall(what, 0, 0, brighter), (8, 6), Quality.PREVIEW).figures.mean
    # Other paths are drawn for other mirrors, so only to the accuracy of a preview.
    assert after >= before * (1 - 1e-2)


# -- the same room seen otherwise -----------------------------------------------------------


def turned_quarter(what: Plan) -> Plan:
    """Turned by 90° about the origin: (x, y) becomes (-y, x)."""
    corners = tuple((-y, x) for x, y in what.space.footprint)
    moved = tuple(
        one.model_copy(update={"x": -one.y, "y": one.x, "rotation_deg": one.rotation_deg + 90})
        for one in what.lamps
    )
    space = what.space.model_copy(update={"footprint": corners})
    return edits.changed(what, space=space, lamps=moved)


def mirrored(what: Plan) -> Plan:
    """Mirrored in the y axis: x becomes -x; corners and walls run the other way round."""
    corners = tuple((-x, y) for x, y in reversed(what.space.footprint))
    walls = (*reversed(what.walls[:-1]), what.walls[-1])
    moved = tuple(
        one.model_copy(update={"x": -one.x, "rotation_deg": -one.rotation_deg})
        for one in what.lamps
    )
    space = what.space.model_copy(update={"footprint": corners})
    return edits.changed(what, space=space, walls=walls, lamps=moved)


def shifted(what: Plan) -> Plan:
    corners = tuple((x + 1.7, y - 2.3) for x, y in what.space.footprint)
    moved = tuple(one.model_copy(update={"x": one.x + 1.7, "y": one.y - 2.3}) for one in what.lamps)
    space = what.space.model_copy(update={"footprint": corners})
    return edits.changed(what, space=space, lamps=moved)


def assert_same_map(found: np.ndarray, expected: np.ndarray) -> None:
    inside = np.isfinite(expected)
    assert (np.isfinite(found) == inside).all()
    difference = (found - expected)[inside]
    mean = expected[inside].mean()
    # Each of the two is within 1 % rms and 0.3 % in the mean.
    assert np.sqrt((difference**2).mean()) <= 1.4e-2 * mean
    assert abs(difference.mean()) <= 6e-3 * mean


@settings(FEW, max_examples=5)
@given(plans(2))
def test_turned_mirrored_and_moved_rooms(what: Plan) -> None:
    plain = light(what, (8, 6)).ppfd
    assert_same_map(np.rot90(light(turned_quarter(what), (6, 8)).ppfd, 1), plain)
    assert_same_map(light(mirrored(what), (8, 6)).ppfd[:, ::-1], plain)
    assert_same_map(light(shifted(what), (8, 6)).ppfd, plain)


def test_symmetric_room_has_a_symmetric_map() -> None:
    what = plan(
        box(0.8, 0.8),
        1.2,
        [lamp((0.4, 0.4), 0.7, body=panel(0.3, 0.3))],
        walls=(0.4, 0.45),
        ceiling=(0.8, 0.0),
        canopy=0.06,
    )
    found = light(what, (10, 10)).ppfd
    for other in (found[::-1], found[:, ::-1], found.T):
        assert_same_map(other, found)


# -- the cache ------------------------------------------------------------------------------

EDITS = st.one_of(
    st.tuples(st.just("lamp"), st.floats(0.1, 0.45), st.floats(0.1, 0.35)),
    st.tuples(st.just("height"), st.floats(0.2, 0.9), st.just(0.0)),
    st.tuples(st.just("output"), st.floats(0.0, 100.0), st.just(0.0)),
    st.tuples(st.just("wall"), st.floats(0.0, 0.9), st.sampled_from([0.0, 0.5, 1.0])),
    st.tuples(st.just("corner"), st.floats(0.78, 0.85), st.floats(0.0, 0.05)),
    st.tuples(st.just("canopy"), st.floats(0.05, 0.25), st.booleans()),
    st.tuples(st.just("undo"), st.just(0.0), st.just(0.0)),
)


def edited(what: Plan, edit: tuple[str, float, float]) -> Plan:
    kind, a, b = edit
    if kind == "lamp":
        return edits.change_lamp(what, 0, x=a, y=b)
    if kind == "height":
        return edits.change_lamp(what, 0, hanging_height=a)
    if kind == "output":
        return edits.change_lamp(what, 0, output_percent=a)
    if kind == "wall":
        return edits.line_wall(what, 1, 0, lining((a * (1 - b), a * b)))
    if kind == "corner":
        return edits.move_corner(what, 1, (a, b))
    return edits.set_canopy(what, height=a, closed=bool(b))


@settings(FEW, max_examples=6)
@given(plans(), st.lists(EDITS, min_size=4, max_size=10), st.sampled_from([2, 48]))
def test_cache_never_changes_a_result(
    what: Plan, steps: list[tuple[str, float, float]], limit: int
) -> None:
    cache = Cache(limit=limit)
    history = [what]
    for step in steps:
        if step[0] == "undo":
            what = history[-2] if len(history) > 1 else what
        else:
            what = edited(what, step)
        history.append(what)
        kept, fresh = preview(what, cache), preview(what)
        np.testing.assert_array_equal(kept, fresh)
