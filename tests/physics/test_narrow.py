"""Gaps: a shelf close over the canopy, and the strip of light that its side throws.

Between long parallel surfaces the exchange is known by crossed strings (H. C. Hottel, 1954, in
McAdams, Heat Transmission, ch. 4): from a strip a to a strip b the flux per length is half of
what crossed strings are longer than uncrossed ones.
"""

from __future__ import annotations

import numpy as np
import pytest

from planner.estimate.assemble import respond
from planner.estimate.effort import effort_for
from planner.estimate.evaluate import _geometry, _paths, recount
from planner.estimate.lamp_light import LampLight
from planner.estimate.result import EstimateOptions, Quality
from planner.estimate.scene import Optics, Room, Scene
from planner.light.boxes import Box
from planner.light.division import Coarser
from planner.light.exchange import response
from planner.light.paths import Mirrors
from planner.light.prism import FloatArray, totals
from planner.plan import edits
from planner.plan.place import Place, PlaceKind
from planner.plan.space import Obstacle
from tests.physics.rooms import box, lamp, light, panel, plan, rms_and_mean

WIDE, LONG, HIGH = 0.9, 0.6, 0.7
SHELF = (0.3, 0.6)
CANOPY, UNDERSIDE = 0.6, 0.9
CELLS = (24, 6)


def room(gap: float) -> Room:
    """A shelf from wall to wall over a closed canopy; the walls at its ends will be mirrors."""
    low, high = SHELF
    shelf = Box((low + high) / 2, LONG / 2, gap, gap + 0.02, high - low, LONG)
    return Room(box(WIDE, LONG), 0.0, HIGH, 0.0, ((),) * 4, (shelf,))


def by_crossed_strings(gap: float, pieces: int = 1200) -> FloatArray:
    """Flux density on the canopy's columns of cells by light reflected between the two.

    Beside the shelf the canopy is lit by 1, under it by nothing; all else is black.
    """
    edge = np.linspace(0.0, WIDE, pieces + 1)
    over = (edge[:-1] >= SHELF[0] - 1e-9) & (edge[1:] <= SHELF[1] + 1e-9)
    left, right = edge[:-1, None], edge[1:, None]
    u, v = edge[:-1][over], edge[1:][over]
    crossed = np.hypot(left - v, gap) + np.hypot(right - u, gap)
    uncrossed = np.hypot(left - u, gap) + np.hypot(right - v, gap)
    factor = (crossed - uncrossed) / (2 * WIDE / pieces)
    lit = np.where(over, 0.0, 1.0)
    # E = factor · ρ_u factorᵀ ρ_c (lit + E)
    kernel = UNDERSIDE * CANOPY * factor @ factor.T
    reflected = np.linalg.solve(np.eye(pieces) - kernel, kernel @ lit)
    columns: FloatArray = reflected.reshape(CELLS[0], -1).mean(axis=1)
    return columns


@pytest.mark.parametrize("quality", [Quality.DEFAULT, Quality.PREVIEW])
@pytest.mark.parametrize("gap", [0.01, 0.02, 0.05])
def test_light_between_a_shelf_and_the_canopy(gap: float, quality: Quality) -> None:
    # Chance of one seed alone is up to 0.011 of a cell at preview; here it is what bias there is.
    found = np.mean([by_estimate(gap, quality, seed) for seed in (1, 2, 3)], axis=0)
    # In shares of the light beside the shelf. With whole patches under its edges up to 0.13.
    error = np.abs(found - by_crossed_strings(gap))
    assert error.max() < 0.009


def by_estimate(gap: float, quality: Quality, seed: int) -> FloatArray:
    """The same as ``by_crossed_strings`` by the program's own pieces."""
    options = EstimateOptions(cells=CELLS, quality=quality, seed=seed)
    effort = effort_for(quality, open_to_sight=False)
    its_room = room(gap)
    geometry = _geometry(its_room, options, effort, lambda: None)
    surfaces, grid = geometry.surfaces, geometry.grid
    # y0 and y1 are mirrors; canopy and underside reflect; x0, x1, ceiling, other faces do not.
    specular = (1.0, 0.0, 1.0) + (0.0,) * 9
    diffuse = (0.0,) * 5 + (CANOPY,) + (0.0,) * 5 + (UNDERSIDE,)
    place = Place(PlaceKind.CANOPY)
    optics = Optics(diffuse, specular, (0.0,) * 12)
    scene = Scene(its_room, optics, (place,) * 12, (), ())
    paths = _paths(geometry, Mirrors(np.array(specular), np.zeros(12)), options, effort, _none)
    of_patch = np.array(diffuse)[surfaces.patch_facet]
    balance = response(paths.exchange.factors, of_patch)
    coarser = Coarser.of(surfaces, paths.exchange.factors, of_patch)
    half = surfaces.texel_edges(np.arange(surfaces.texel_count))[0][0] / 2
    on_canopy = surfaces.facet_plane[surfaces.texel_facet] == surfaces.prism.bottom
    texels = on_canopy * beside_shelf(surfaces.texel_centre[0], half)
    cells = beside_shelf(grid.receivers(averaged=False)[0][0], WIDE / CELLS[0] / 2)
    flux = totals(surfaces.texel_patch, texels * surfaces.texel_area, surfaces.patch_count)
    lit = LampLight(texels, flux, flux, cells, 0.0, 0.0, np.empty(0, dtype=np.intp))
    found = grid.on_map(
        respond(scene, geometry, paths, balance, coarser, lit, 7, _none).cells - cells
    )
    columns: FloatArray = found.mean(axis=0)
    return columns


def beside_shelf(x: FloatArray, half: FloatArray | float) -> FloatArray:
    """Share of pieces x - half … x + half of the canopy that the shelf is not over."""
    covered = np.minimum(x + half, SHELF[1]) - np.maximum(x - half, SHELF[0])
    share: FloatArray = 1 - np.clip(covered / np.maximum(2 * half, 1e-9), 0.0, 1.0)
    return share


def _none() -> None:
    return None


# -- Small mirrors beside the canopy -------------------------------------------------------

TENT, OVER = 0.8, 0.5
AT = (0.62, 0.4)
MIRROR = 0.9
LEDGE = Obstacle(
    name="Shelf", x=0.25, y=0.4, length=0.3, width=0.15, underside=0.02, thickness=0.02, lining="x"
)


def by_brute_force(cells: int, each: int) -> FloatArray:
    """A Lambertian point straight and by the side of the shelf that faces it, cell means."""
    place = (np.arange(cells * each) + 0.5) * TENT / (cells * each)
    x, y = np.meshgrid(place, place)
    side, low, high = LEDGE.x + LEDGE.length / 2, LEDGE.underside, LEDGE.top

    def lit(px: float) -> FloatArray:
        squared = (x - px) ** 2 + (y - AT[1]) ** 2 + OVER**2
        return np.asarray(100 / np.pi * OVER**2 / squared**2)

    # The line to the image crosses the side's plane at this height and place along it.
    image = 2 * side - AT[0]
    part = (side - x) / (image - x)
    height, along = part * OVER, y + part * (AT[1] - y)
    seen = (x > side) & (height > low) & (height < high)
    seen &= np.abs(along - LEDGE.y) < LEDGE.width / 2
    # Straight lines are cut off where they pass through the box: slab by slab.
    first, last = np.zeros_like(x), np.ones_like(x)
    for start, way, at, half in (
        (x, AT[0] - x, LEDGE.x, LEDGE.length / 2),
        (y, AT[1] - y + 1e-12, LEDGE.y, LEDGE.width / 2),
        (0 * x, OVER + 0 * x, (low + high) / 2, (high - low) / 2),
    ):
        one, other = (at - half - start) / way, (at + half - start) / way
        first, last = (
            np.maximum(first, np.minimum(one, other)),
            np.minimum(last, np.maximum(one, other)),
        )
    total = lit(AT[0]) * (first >= last) + MIRROR * lit(image) * seen
    means: FloatArray = total.reshape(cells, each, cells, each).mean(axis=(1, 3))
    return means


def test_the_side_of_a_shelf_throws_a_strip_of_light() -> None:
    """A strip of 2 cm at the foot of a mirror of 2 cm, in cells of 5 cm."""
    bare = plan(box(TENT, TENT), 0.8, [lamp(AT, OVER)], floor=(0.0, MIRROR))
    what = edits.changed(bare, obstacles=(LEDGE.model_copy(update={"lining": bare.floor}),))
    found = light(what, (16, 16))
    expected = by_brute_force(16, 40)
    rms, mean = rms_and_mean(found.ppfd, expected)
    # With the image looked for from the middles of cells: 0.039 and 0.0045.
    assert rms < 0.004
    assert abs(mean) < 0.001


U_SHAPE = ((0.0, 0.0), (0.53, 0.0), (0.53, 0.5), (0.33, 0.5), (0.33, 0.3), (0.2, 0.3), (0.2, 0.5),
           (0.0, 0.5))  # fmt: skip


def test_a_wall_is_divided_where_a_tall_housing_hangs_beside_it_far_over_the_map() -> None:
    """What the lamp throws on the wall beside it does not go up behind its housing.

    Against photons counted one by one, which know no patches. Undivided, 4.4 % were missing; what
    is left is that of all patches of a leg 20 cm wide (0.1 % with four times as many).
    """
    white = (0.85, 0.0)
    hung = lamp((0.145, 0.46), 0.6, body=panel(0.09, 0.058))
    model = edits.changed(hung.model, housing_height=0.2, housing_reflectance=0.5)
    hung = edits.changed(hung, model=model)
    made = plan(U_SHAPE, 1.9, [hung], walls=white, ceiling=white, canopy_height=0.29)
    found, counted = light(made), recount(made, photons=1 << 19)
    assert counted is not None
    off = found.figures.mean * found.figures.canopy_area - counted.flux
    assert abs(off) < 0.012 * counted.flux + 3 * counted.standard_error
