"""The light in an upright slice against closed forms, the map, and photons counted level by level.

Sources beside each check. Where a tolerance is wider than that of the map it is said why.
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from planner.estimate.evaluate import Cache, Cancelled, evaluate
from planner.estimate.result import EstimateOptions, FloatArray
from planner.estimate.scene import build_scene
from planner.estimate.upright import Slice, light_in_slice
from planner.light.prism import Prism
from planner.light.walk import Linings, landings
from planner.plan.lining import WallCover
from planner.plan.plan import Plan
from planner.plan.space import Obstacle
from tests.physics.rooms import BLACK, box, lamp, lining, panel, plan

MATT = (0.8, 0.0)


def heights(found: Slice) -> FloatArray:
    edges = found.light.y
    return np.asarray((edges[1:] + edges[:-1]) / 2)


@pytest.mark.parametrize("exponent", [1.0, 4.8188])
def test_a_lone_lamp_between_black_walls(exponent: float) -> None:
    # Photometric distance law, CIE S 017 term 17-25-104, with I0 = (m + 1)Φ/2π (∫ I dΩ = Φ):
    # E = I0 cos^(m+1) θ / d². Points as thick as a hundredth of the space, 15 cm and more away.
    what = plan(box(1.0, 0.8), 2.0, [lamp((0.33, 0.4), 1.5, exponent=exponent)])
    found = light_in_slice(what, "y", 0.4, EstimateOptions(cells=(100, 80)))
    for x in (0.1, 0.33, 0.7):
        for z in (0.1, 0.5, 0.9, 1.3):
            squared = (1.5 - z) ** 2 + (x - 0.33) ** 2
            cosine = (1.5 - z) / math.sqrt(squared)
            peak = 100 * (exponent + 1) / (2 * math.pi)
            expected = peak * cosine ** (exponent + 1) / squared
            assert found.at(x, z) == pytest.approx(expected, rel=0.01), (x, z)
    # No light of such a lamp comes from below to a sensor that looks up.
    assert found.at(0.33, 1.7) == 0.0


@pytest.mark.parametrize("axis", ["x", "y"])
def test_at_canopy_height_it_is_the_row_of_the_map(axis: str) -> None:
    # A lining stops half way up, a pot stands in the light, the footprint is an L.
    footprint = ((0.0, 0.0), (0.9, 0.0), (0.9, 0.4), (0.5, 0.4), (0.5, 0.7), (0.0, 0.7))
    banded = ((0.6, (0.3, 0.6)), (None, (0.7, 0.05)))
    what = plan(
        footprint,
        1.4,
        [lamp((0.25, 0.3), 0.5, body=panel(0.3, 0.2)), lamp((0.7, 0.2), 0.4, body=panel(0.2, 0.1))],
        walls=[MATT, MATT, banded, MATT, MATT, (0.1, 0.75)],
        ceiling=MATT,
        canopy=0.05,
        canopy_height=0.3,
    )
    pot = Obstacle(name="Pot", x=0.4, y=0.2, underside=0.3, length=0.1, width=0.1, thickness=0.15)
    what = what.model_copy(update={"obstacles": (pot,)})
    cache = Cache()
    found = evaluate(what, cache=cache)
    for line in (5, 12, 20):
        if axis == "y":
            cells, place, along = found.map.middles[line], float(found.y[line]), found.x
            known = np.isfinite(found.ppfd[line])
        else:
            cells, place, along = found.map.middles[:, line], float(found.x[line]), found.y
            known = np.isfinite(found.ppfd[:, line])
        cut = light_in_slice(what, axis, place, cache=cache)  # type: ignore[arg-type]
        read = cut.light.at(np.column_stack([along, np.full(len(along), 0.3)]))
        off = (read - cells)[known] / found.figures.mean
        # Both have the map's stated error; the edge of the pot's shadow is steep over a cell.
        assert np.sqrt((off**2).mean()) < 0.012, line
        assert abs(off.mean()) < 0.006, line


def test_as_many_photons_cross_each_level_as_are_counted() -> None:
    # Photons walked one surface at a time share neither images nor balance nor gather with the
    # slice; five slices, each as thick as a fifth of the space, are the whole of a level.
    what = plan(
        box(0.8, 0.6),
        1.5,
        [lamp((0.3, 0.35), 0.6, body=panel(0.3, 0.2), exponent=2.0)],
        walls=[MATT, (0.2, 0.7), (0.5, 0.2), (0.0, 0.85)],
        ceiling=(0.6, 0.0),
        canopy=0.1,
        canopy_height=0.2,
    )
    cache, count = Cache(), 5
    places = (np.arange(count) + 0.5) / count * 0.6
    options = EstimateOptions(cells=(24, count))
    cuts = [light_in_slice(what, "y", float(place), options, cache=cache) for place in places]
    scene = build_scene(what)
    room, optics = scene.room, scene.optics
    prism = Prism(np.array(room.corners), room.z0, room.z1, room.boxes)
    linings = Linings(
        np.array(optics.diffuse), np.array(optics.specular), np.array(optics.width), room.band_tops
    )
    for level in (10, 30, 55):
        z = float(heights(cuts[0])[level])
        flux = float(np.mean([cut.light.middles[level].mean() for cut in cuts])) * 0.8 * 0.6
        random = np.random.default_rng(level)
        source = scene.lamps[0].source()
        times = landings(prism, linings, source, z, 200_000, random, lambda: None)
        chance = scene.fluxes[0] * float(times.std()) / math.sqrt(times.size)
        counted = scene.fluxes[0] * float(times.mean())
        # Twelve random rooms of every kind and these differ by up to 1 % where lamps shine.
        assert abs(flux - counted) < 4 * chance + 0.01 * counted, z


def test_a_white_room_is_as_bright_at_every_height() -> None:
    # Integrating enclosure (Goebel, 1967, Appl. Opt. 6, 125): all that reflects ρ is lit by
    # Φ / (A (1 - ρ)) on the mean, and for ρ near 1 from all sides alike, whatever the shape.
    rho, size = 0.998, (0.6, 0.5, 0.9)
    white = (rho, 0.0)
    what = plan(
        box(size[0], size[1]), size[2], [lamp((0.3, 0.25), 0.45)],
        walls=white, ceiling=white, canopy=rho,
    )  # fmt: skip
    area = 2 * (size[0] * size[1] + size[0] * size[2] + size[1] * size[2])
    even = 100 / (area * (1 - rho))
    found = light_in_slice(what, "y", 0.25)
    above = heights(found) > 0.5
    # The lamp itself adds its own light below it, 100 / π h² at most.
    assert found.light.middles[above] == pytest.approx(even, rel=0.01)
    direct = 100 / math.pi / 0.35**2
    assert found.at(0.3, 0.1) == pytest.approx(even + direct, rel=0.01)


def test_right_under_a_bar_there_is_no_more_light_than_it_gives() -> None:
    # A level of the slice lies 4 mm below the face of a bar that is far narrower than a cell; the
    # slice is thick enough for all of the bar, and no more than its 100 µmol/s can cross it.
    what = plan(box(1.0, 0.8), 2.0, [lamp((0.5, 0.4), 1.4935, body=panel(0.3, 0.02))])
    found = light_in_slice(what, "y", 0.4, EstimateOptions(cells=(16, 4)))
    below = heights(found) < 1.4935
    assert heights(found)[below][-1] == pytest.approx(1.4896, abs=1e-4)
    flux = float(found.light.values[below][-1].sum()) * (1.0 / 16) * 0.2
    assert 85 < flux < 102


def test_a_shelf_keeps_light_from_what_is_under_it() -> None:
    shelf = Obstacle(
        name="Shelf", x=0.3, y=0.5, underside=0.8, length=0.6, width=1.0, thickness=0.02
    )
    bare = plan(box(1.0, 1.0), 2.0, [lamp((0.3, 0.5), 1.5)])
    what = bare.model_copy(update={"obstacles": (shelf,)})
    found, without = light_in_slice(what, "y", 0.5), light_in_slice(bare, "y", 0.5)
    assert found.at(0.3, 0.4) == 0.0
    assert (without.at(0.3, 0.4) or 0.0) > 10
    assert found.at(0.3, 1.2) == pytest.approx(without.at(0.3, 1.2), rel=1e-3)
    # Shadow by the ray from the lamp over the shelf's edge at x = 0.6, z = 0.82: it meets z = 0.4
    # at 0.3 + 0.3 · 1.1 / 0.68 = 0.785.
    assert found.at(0.73, 0.4) == pytest.approx(0.0, abs=0.5)
    assert found.at(0.85, 0.4) == pytest.approx(without.at(0.85, 0.4), rel=0.02)
    assert found.at(0.3, 0.81) is None


def test_nothing_is_read_under_a_closed_canopy_and_through_an_open_one_to_the_floor() -> None:
    lamps = [lamp((0.5, 0.4), 0.5)]
    closed = plan(box(1.0, 0.8), 1.5, lamps, canopy_height=0.4)
    opened = plan(box(1.0, 0.8), 1.5, lamps, canopy_height=0.4, closed=False)
    assert light_in_slice(closed, "y", 0.4).at(0.5, 0.3) is None
    below = light_in_slice(opened, "y", 0.4).at(0.5, 0.05)
    # 100 / π h² under a Lambertian point, 85 cm away.
    assert below == pytest.approx(100 / math.pi / 0.85**2, rel=0.01)


def test_two_parts_of_a_footprint_are_told_apart() -> None:
    # A U: at y = 0.6 the slice lies in both arms and not between them.
    footprint = (
        (0.0, 0.0), (1.2, 0.0), (1.2, 0.8), (0.8, 0.8),
        (0.8, 0.3), (0.4, 0.3), (0.4, 0.8), (0.0, 0.8),
    )  # fmt: skip
    found = light_in_slice(plan(footprint, 1.0, [lamp((0.6, 0.15), 0.6)]), "y", 0.6)
    assert found.spans == ((0.0, 0.4), (0.8, 1.2))
    assert found.at(0.6, 0.3) is None


def test_it_is_of_a_plan_as_long_as_its_light_is() -> None:
    what = plan(box(1.0, 0.8), 1.5, [lamp((0.5, 0.4), 0.5)], walls=MATT)
    found = light_in_slice(what, "x", 0.5, EstimateOptions(cells=(6, 6)))
    assert found.fits(what.model_copy(update={"name": "Another name"}), "x", 0.5)
    assert not found.fits(what, "y", 0.5)
    assert not found.fits(what, "x", 0.4)
    assert not found.fits(_repainted(what), "x", 0.5)


def _repainted(what: Plan) -> Plan:
    black = lining(BLACK)
    walls = (WallCover.plain(black.key), *what.walls[1:])
    return what.model_copy(update={"walls": walls})


def test_it_stops_when_asked() -> None:
    what = plan(box(1.0, 0.8), 1.5, [lamp((0.5, 0.4), 0.5)], walls=MATT)
    with pytest.raises(Cancelled):
        light_in_slice(what, "y", 0.4, cancelled=lambda: True)
