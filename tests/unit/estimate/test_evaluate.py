"""The one door: progress, stopping, caches, shares, and plans at the edge of what is allowed."""

from __future__ import annotations

import math
import time

import numpy as np
import pytest

from planner.catalogue.library import demo_plan
from planner.estimate.evaluate import HELD_BYTES, Cache, Cancelled, evaluate
from planner.estimate.result import EstimateOptions, Quality
from planner.light.exchange import NothingAbsorbsError
from planner.plan import edits
from planner.plan.place import Place, PlaceKind, opens
from planner.plan.plan import Plan
from planner.plan.target import PpfdTarget
from tests.physics.rooms import BLACK, box, lamp, light, panel, plan

MIXED = (0.45, 0.45)


def tent(**parts: object) -> Plan:
    return plan(
        box(1.0, 1.0),
        2.0,
        [lamp((0.5, 0.5), 1.5, body=panel(0.4, 0.4), ppf=500)],
        walls=MIXED,
        ceiling=MIXED,
        canopy=0.06,
        canopy_height=0.3,
        **parts,  # type: ignore[arg-type]
    )


def test_progress_rises_from_nothing_to_all() -> None:
    told: list[float] = []
    evaluate(tent(), EstimateOptions(quality=Quality.PREVIEW), progress=told.append)
    assert told == sorted(told)
    assert len(told) >= 3
    assert 0 <= told[0] <= told[-1] <= 1


def test_stops_before_it_starts() -> None:
    with pytest.raises(Cancelled):
        evaluate(tent(), cancelled=lambda: True)


@pytest.mark.parametrize("after", [1, 3, 10, 30])
def test_stops_soon_wherever_it_is(after: int) -> None:
    asked = 0

    def cancelled() -> bool:
        nonlocal asked
        asked += 1
        return asked > after

    with pytest.raises(Cancelled):
        evaluate(tent(), EstimateOptions(quality=Quality.FINE), cancelled=cancelled)
    # Once it has been told to stop it does not ask again: it stops.
    assert asked == after + 1


def test_asks_often_enough_to_follow_a_hand() -> None:
    times: list[float] = []

    def cancelled() -> bool:
        times.append(time.perf_counter())
        return False

    evaluate(tent(), cancelled=cancelled)
    # A generous bound for a busy machine; the whole takes some tenths of a second.
    assert max(np.diff(times)) < 1.0
    assert len(times) > 10


def test_a_stopped_estimate_leaves_the_cache_usable() -> None:
    cache = Cache()
    asked = 0

    def cancelled() -> bool:
        nonlocal asked
        asked += 1
        return asked > 12

    with pytest.raises(Cancelled):
        evaluate(tent(), cache=cache, cancelled=cancelled)
    np.testing.assert_array_equal(evaluate(tent(), cache=cache).ppfd, evaluate(tent()).ppfd)


def test_seed_and_options_are_reported() -> None:
    options = EstimateOptions(cells=(7, 5), quality=Quality.PREVIEW, seed=9)
    found = evaluate(tent(), options)
    assert found.options == options
    assert found.ppfd.shape == (5, 7)
    np.testing.assert_allclose(found.x, (np.arange(7) + 0.5) / 7)
    np.testing.assert_allclose(found.y, (np.arange(5) + 0.5) / 5)
    assert found.cell_area.sum() == pytest.approx(1.0)


def test_another_seed_differs_a_little() -> None:
    one, other = (light(tent(), seed=seed).ppfd for seed in (1, 2))
    assert (one != other).any()
    np.testing.assert_allclose(one, other, rtol=0.05)


def black() -> Plan:
    """The tent with linings and a canopy that take all light."""
    body = panel(0.4, 0.4)
    return plan(box(1.0, 1.0), 2.0, [lamp((0.5, 0.5), 1.5, body=body, ppf=500)], canopy_height=0.3)


def test_what_is_reflected_is_what_black_linings_leave_out() -> None:
    bright, dull = light(tent(), (8, 8)), light(black(), (8, 8))
    assert bright.reflected == pytest.approx(1 - dull.figures.mean / bright.figures.mean)
    assert dull.reflected == pytest.approx(0.0, abs=1e-12)


@pytest.mark.parametrize("quality", list(Quality))
def test_direct_light_alone_has_hardly_any_numerical_error(quality: Quality) -> None:
    # A closed form: neither chance nor patches have a part in it, only sums over points.
    found = evaluate(black(), EstimateOptions(cells=(4, 4), quality=quality))
    assert found.divided == pytest.approx(0.0, abs=1e-9)
    assert found.numeric_error == pytest.approx(0.002, abs=5e-4)


def test_map_outside_the_footprint_is_nothing() -> None:
    outline = ((0.0, 0.0), (1.0, 0.0), (1.0, 0.5), (0.5, 0.5), (0.5, 1.0), (0.0, 1.0))
    found = light(plan(outline, 1.0, [lamp((0.25, 0.25), 0.8)], walls=MIXED), (10, 10))
    assert np.isnan(found.ppfd[5:, 5:]).all()
    assert np.isfinite(found.ppfd[:5]).all()
    assert found.cell_area.sum() == pytest.approx(0.75)


def test_shares_name_every_surface() -> None:
    what = plan(
        box(1.0, 1.0),
        1.0,
        [lamp((0.5, 0.5), 0.7)],
        walls=[MIXED, [(0.5, BLACK), (None, MIXED)], MIXED, MIXED],
        ceiling=MIXED,
        canopy_height=0.1,
        open_door=3,
    )
    found = light(what)
    places = [share.place for share in found.shares]
    assert places == [
        Place(PlaceKind.CANOPY),
        Place(PlaceKind.WALL, 0, 0),
        Place(PlaceKind.WALL, 1, 0),
        Place(PlaceKind.WALL, 1, 1),
        Place(PlaceKind.WALL, 2, 0),
        Place(PlaceKind.WALL, 3, 0),
        Place(PlaceKind.CEILING),
    ]
    assert [place for place in places if opens(what, place)] == [Place(PlaceKind.WALL, 3, 0)]
    assert sum(share.share for share in found.shares) == pytest.approx(1.0, abs=1e-9)


def test_bands_below_the_canopy_play_no_part() -> None:
    banded = [[(0.1, BLACK), (None, MIXED)]] * 4
    lamps = [lamp((0.5, 0.5), 0.7)]
    with_bands = plan(box(1.0, 1.0), 1.0, lamps, walls=banded, canopy_height=0.2)
    plain = plan(box(1.0, 1.0), 1.0, lamps, walls=MIXED, canopy_height=0.2)
    np.testing.assert_array_equal(light(with_bands).ppfd, light(plain).ppfd)


def test_a_band_edge_at_the_canopy_or_above_the_ceiling() -> None:
    lamps = [lamp((0.5, 0.5), 0.7)]
    plain = light(plan(box(1.0, 1.0), 1.0, lamps, walls=MIXED, canopy_height=0.2)).ppfd
    for edge in (0.2, 1.0, 1.4):
        walls = [[(edge, MIXED), (None, MIXED)]] * 4
        other = plan(box(1.0, 1.0), 1.0, lamps, walls=walls, canopy_height=0.2)
        np.testing.assert_allclose(light(other).ppfd, plain, rtol=1e-9)


def test_figures_of_the_target_and_the_day() -> None:
    what = edits.changed(tent(), target=PpfdTarget(low=100, high=400), photoperiod_hours=14)
    found = light(what)
    figures = found.figures
    inside = ((found.ppfd >= 100) & (found.ppfd <= 400)).mean()
    assert figures.share_inside == pytest.approx(inside)
    assert figures.dli == pytest.approx(figures.mean * 14 * 0.0036)
    assert figures.utilisation == pytest.approx(figures.mean / 500)
    assert figures.kwh_per_day == pytest.approx(figures.watts * 14 / 1000)
    assert figures.mean == pytest.approx(float(found.ppfd.mean()))


# -- the edges of what a plan may be ---------------------------------------------------------


@pytest.mark.parametrize("quality", [Quality.PREVIEW, Quality.DEFAULT])
@pytest.mark.parametrize(
    "what",
    [
        plan(box(1.0, 1.0), 2.0, [], walls=MIXED, ceiling=MIXED),
        plan(box(1.0, 1.0), 2.0, [lamp((0.5, 0.5), 1.0, output=0.0)], walls=MIXED),
        plan(box(0.08, 0.07), 0.1, [lamp((0.04, 0.03), 0.08)], walls=MIXED, ceiling=MIXED),
        plan(box(10.0, 10.0), 5.0, [lamp((5.0, 5.0), 4.0, body=panel(3.0, 3.0))], walls=MIXED),
        plan(box(10.0, 0.02), 5.0, [lamp((5.0, 0.01), 4.0)], walls=MIXED, ceiling=MIXED),
        plan(box(1.0, 1.0), 2.0, [lamp((0.5, 0.5), 2.0, table=((0, 180), (1, 1)))], walls=MIXED),
        plan(box(1.0, 1.0), 2.0, [lamp((0.0, 0.0), 1.0)], walls=MIXED),
        plan(box(1.0, 1.0), 2.0, [lamp((0.05, 0.5), 1.0, body=panel(0.6, 0.6))], walls=MIXED),
        plan(box(1.0, 1.0), 2.0, [lamp((0.5, 0.5), 1.0)], walls=(0.0, 1.0), ceiling=(0.0, 1.0)),
        plan(box(1.0, 1.0), 2.0, [lamp((0.5, 0.5), 1.0)], walls=(1.0, 0.0), ceiling=(1.0, 0.0)),
        plan(
            box(1.0, 1.0),
            2.0,
            [lamp((0.5, 0.5), 1.0)],
            walls=(0.0, 0.95),
            ceiling=(0.0, 0.95),
            floor=(0.0, 0.9),
            canopy_height=0.2,
            closed=False,
        ),
        plan(box(1.0, 1.0), 2.0, [lamp((0.5, 0.5), 1.0)], walls=(0.5, 0.005), closed=False),
    ],
)
def test_edges_of_what_a_plan_may_be(what: Plan, quality: Quality) -> None:
    found = light(what, quality=quality)
    assert np.isfinite(found.ppfd).all()
    assert (found.ppfd >= 0).all()
    assert abs(found.closure) <= 3e-3


def star(points: int, deep: float) -> Plan:
    turns = [2 * math.pi * k / points for k in range(points)]
    outline = tuple(
        ((0.5 + deep * (k % 2)) * math.cos(t), (0.5 + deep * (k % 2)) * math.sin(t))
        for k, t in enumerate(turns)
    )
    return plan(outline, 2.0, [lamp((0.0, 0.0), 1.0, body=panel(0.4, 0.4))], walls=MIXED)


@pytest.mark.slow
@pytest.mark.parametrize("deep", [0.02, 0.45])
@pytest.mark.parametrize("closed", [True, False])
def test_forty_corners(deep: float, closed: bool) -> None:
    what = edits.set_canopy(star(40, deep), height=0.1, closed=closed)
    for quality in (Quality.PREVIEW, Quality.DEFAULT):
        found = light(what, (16, 16), quality)
        assert np.isfinite(found.ppfd[found.cell_area > 0.01 * found.cell_area.max()]).all()
        assert abs(found.closure) < 1e-6


def test_a_room_that_takes_nothing_up_is_refused_in_words() -> None:
    what = plan(
        box(1.0, 1.0),
        1.0,
        [lamp((0.5, 0.5), 0.5)],
        walls=(1.0, 0.0),
        ceiling=(1.0, 0.0),
        canopy=1.0,
    )
    with pytest.raises(NothingAbsorbsError, match="absorbs"):
        light(what)


def test_lamp_level_with_the_ceiling_is_not_lost() -> None:
    what = plan(box(1.0, 1.0), 1.0, [lamp((0.5, 0.5), 1.0, body=panel(0.2, 0.2))])
    just_below = plan(box(1.0, 1.0), 1.0, [lamp((0.5, 0.5), 0.999, body=panel(0.2, 0.2))])
    np.testing.assert_allclose(light(what).ppfd, light(just_below).ppfd, rtol=5e-3)


def test_a_cache_counts_what_lists_hold_too() -> None:
    # Rooms of many boxes hold small arrays in tuples: 8 kB each, and no more than 50 kB at once.
    cache = Cache(limit=50_000)
    for key in range(40):
        cache.get(key, lambda: (np.zeros(500), [np.zeros(500)]))
    made: list[int] = []
    for key in range(40):
        cache.get(key, lambda key=key: made.append(key))  # type: ignore[misc]
    assert 34 <= len(made) < 40


@pytest.mark.parametrize("example", ["rack", "trays", "closet"])
def test_what_a_window_keeps_has_room_for_an_example(example: str) -> None:
    # Else each move of a lamp finds all paths of light again: 20 times the work in a rack.
    cache = Cache(limit=HELD_BYTES)
    evaluate(demo_plan(example), cache=cache)
    kept = {key[0] for key in cache._pieces}  # type: ignore[index]
    assert {"geometry", "paths", "balance"} <= kept


def test_of_two_that_make_the_same_piece_one_is_counted() -> None:
    cache = Cache()
    cache.get("alone", lambda: np.zeros(900))
    alone = cache.held
    # As if another thread had made it in the meantime.
    cache.get("twice", lambda: cache.get("twice", lambda: np.zeros(900)))
    assert cache.held == 2 * alone
