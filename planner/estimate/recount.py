"""The light on the canopy once more, by counting photons, and whether the two agree.

The estimate's own checks share its paths: its balance closes by construction. This count
shares neither images nor exchange nor gather with it (see ``light.walk``), and its standard
error is known, so that a fault of method shows as a difference beyond chance.
"""

from __future__ import annotations

import math
from collections.abc import Callable

import numpy as np

from planner.estimate.evaluate import checking
from planner.estimate.result import Estimate, Quality, Recount
from planner.estimate.scene import build_scene
from planner.light.prism import Prism
from planner.light.walk import Linings, landings
from planner.plan.plan import Plan

PHOTONS = 1 << 18
"""Photons of a count: its standard error is then 0.1 to 0.3 % of the mean."""


def recount(
    plan: Plan,
    *,
    photons: int = PHOTONS,
    seed: int = 1,
    cancelled: Callable[[], bool] | None = None,
) -> Recount | None:
    """Count the photons that reach the canopy of a plan; None where no lamp gives light.

    Takes half a second to two seconds. The same plan, number and seed give the same count.

    Raises
    ------
    planner.estimate.evaluate.Cancelled
        If ``cancelled`` said so.
    """
    scene = build_scene(plan)
    emitted = sum(scene.fluxes)
    if emitted <= 0:
        return None

    step = checking(cancelled)
    room = scene.room
    prism = Prism(np.array(room.corners), room.z0, room.z1, room.boxes)
    optics = scene.optics
    linings = Linings(
        np.array(optics.diffuse), np.array(optics.specular), np.array(optics.width), room.band_tops
    )
    random = np.random.default_rng([seed, 3])
    flux = variance = 0.0
    for lamp, its_flux in zip(scene.lamps, scene.fluxes, strict=True):
        count = max(round(photons * its_flux / emitted), 2)
        times = landings(prism, linings, lamp.source(), room.z_map, count, random, step)
        flux += its_flux * float(times.mean())
        # Photons start evenly spread, so this is a little more than chance does.
        variance += its_flux**2 * float(times.var(ddof=1)) / count
    return Recount(flux, math.sqrt(variance), photons)


def recounted(estimate: Estimate) -> Estimate:
    """The estimate with a count of its plan beside it; a preview stays as it is."""
    options = estimate.options
    if options.quality is Quality.PREVIEW:
        return estimate
    return estimate.with_recount(recount(estimate.plan, seed=options.seed))
