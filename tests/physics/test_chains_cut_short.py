"""Of the rays that gather light all end somewhere, also those whose mirrors are left unfollowed."""

from __future__ import annotations

import numpy as np

from planner.estimate.evaluate import Cache, solved
from planner.estimate.result import EstimateOptions
from planner.estimate.scene import build_scene
from tests.physics.rooms import box, lamp, plan


def test_rays_between_mirrors_all_end() -> None:
    """Reciprocity: what is absorbed or spread of all light sent out from a cell is all of it."""
    mirror = (0.07, 0.88)
    what = plan(
        box(0.9, 0.7),
        1.1,
        [lamp((0.5, 0.3), 0.7)],
        walls=mirror,
        ceiling=mirror,
        floor=mirror,
        canopy_height=0.25,
        closed=False,
    )
    scene = build_scene(what)
    found = solved(scene, EstimateOptions(cells=(8, 6)), Cache(), lambda _: None, None)
    surfaces = found.geometry.surfaces
    ends = 1 - np.array(scene.optics.specular)[surfaces.texel_facet]
    ended = found.paths.gather.apply(ends).sum(axis=0)
    # Without what was cut off: 0.990.
    np.testing.assert_allclose(ended, 1.0, rtol=1e-5)
