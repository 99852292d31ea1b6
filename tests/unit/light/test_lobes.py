"""Wrinkled mirrors against the laws they must keep, and against a walk of other make."""

from __future__ import annotations

import math

import numpy as np
import pytest

from planner.light.lobes import bounces, scatter, sent
from tests.physics.random_walk import microsurface

WIDTHS = [0.02, 0.1, 0.25, 0.4, 0.6, 1.0]


def evenly_lit(count: int, seed: int) -> np.ndarray:
    """Directions (3, n) to where light comes from that is the same from everywhere."""
    u, v = np.random.default_rng(seed).random((2, count))
    radius, turn = np.sqrt(u), 2 * math.pi * v
    return np.stack([radius * np.cos(turn), radius * np.sin(turn), np.sqrt(1 - u)])


def after(view: np.ndarray, width: float, seed: int) -> np.ndarray:
    count = view.shape[1]
    up = np.tile([[0.0], [0.0], [1.0]], count)
    return scatter(-view, up, np.full(count, width), np.random.default_rng(seed)).after


@pytest.mark.parametrize("width", WIDTHS)
def test_white_furnace(width: float) -> None:
    # In even light a surface that reflects all looks like its surroundings at every angle,
    # grazing ones included: cos² of what leaves is spread evenly over 0…1.
    count = 1_000_000
    out = after(evenly_lit(count, 1), width, 2)
    np.testing.assert_allclose((out**2).sum(axis=0), 1.0, atol=1e-9)
    assert (out[2] > 0).all()
    for power, expected in ((1, 2 / 3), (2, 1 / 2), (4, 1 / 3)):
        assert (out[2] ** power).mean() == pytest.approx(expected, rel=0.002)
    rings, _ = np.histogram(out[2] ** 2, bins=10, range=(0, 1))
    assert np.abs(rings / (count / 10) - 1).max() < 4 / math.sqrt(count / 10)
    grazing = (out[2] < 0.1).sum() / (0.01 * count) - 1
    assert abs(grazing) < 4 / math.sqrt(0.01 * count)


@pytest.mark.parametrize("width", WIDTHS)
def test_as_much_goes_one_way_as_the_other(width: float) -> None:
    # Helmholtz reciprocity, in bins of polar angle and of the turn between the two.
    view = evenly_lit(600_000, 3)
    out = after(view, width, 4)
    turn = np.arctan2(out[1], out[0]) - np.arctan2(view[1], view[0])
    turn = np.abs((turn + math.pi) % (2 * math.pi) - math.pi)
    there = np.histogramdd(
        np.stack([view[2] ** 2, out[2] ** 2, turn], axis=1),
        bins=(6, 6, 4),
        range=((0, 1), (0, 1), (0, math.pi)),
    )[0]
    back = there.swapaxes(0, 1)
    pairs = (there + back) > 20
    chi = (there - back)[pairs] ** 2 / (there + back)[pairs]
    # Each pair is counted twice; squares of normal deviates have the mean 1.
    assert chi[chi > 0].mean() < 1.6


@pytest.mark.parametrize("width", [0.1, 0.6])
@pytest.mark.parametrize("angle", [10.0, 60.0, 85.0])
def test_directions_are_those_of_a_walk_among_facets(width: float, angle: float) -> None:
    count = 100_000
    view = np.tile([[math.sin(math.radians(angle))], [0.0], [math.cos(math.radians(angle))]], count)
    mine = after(view, width, 5)
    walked = microsurface(-view, np.array([0.0, 0.0, 1.0]), width, np.random.default_rng(6))
    for ours, theirs in zip(mine, walked, strict=True):
        ours_binned, edges = np.histogram(ours, bins=20)
        theirs_binned, _ = np.histogram(theirs, bins=edges)
        both = ours_binned + theirs_binned
        filled = both > 50
        chi = (ours_binned - theirs_binned)[filled] ** 2 / both[filled]
        assert chi.mean() < 3.0


@pytest.mark.parametrize("width", [0.05, 0.25, 1.0])
@pytest.mark.parametrize("angle", [20.0, 80.0])
def test_what_a_bounce_sends_away_is_what_leaves(width: float, angle: float) -> None:
    # The lobe summed over all directions against the share of a walk that leaves there, for
    # the first bounce (the same for all) and the second (where each is somewhere else).
    count = 20_000
    view = np.tile([[math.sin(math.radians(angle))], [0.0], [math.cos(math.radians(angle))]], count)
    walk = bounces(view, np.full(count, width), np.random.default_rng(7))
    z = (np.arange(1000) + 0.5) / 1000
    turn = (np.arange(360) + 0.5) / 360 * 2 * math.pi
    zz, tt = (axis.ravel() for axis in np.meshgrid(z, turn))
    out = np.stack([np.sqrt(1 - zz**2) * np.cos(tt), np.sqrt(1 - zz**2) * np.sin(tt), zz])
    for bounce, few in zip(walk, (1, 60), strict=False):
        some = bounce.take(np.arange(min(few, bounce.ray.size)))
        share, away = sent(some, np.tile(out[2], (some.ray.size, 1)), some.view.T @ out)
        shares = (share * away).mean(axis=1) * 2 * math.pi
        chance = math.hypot(0.5 / math.sqrt(bounce.ray.size), shares.std() / math.sqrt(few))
        assert shares.mean() == pytest.approx(bounce.leaves.mean(), abs=4 * chance + 2e-3)
