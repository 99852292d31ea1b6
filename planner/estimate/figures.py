"""Figures of a map and where its photons went."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from planner.estimate.result import Estimate, Figures, FloatArray, Share
from planner.metrics.figures import (
    band_shares,
    daily_light_integral,
    efficacy,
    evenness,
    kilowatt_hours_per_day,
    utilisation,
)
from planner.plan.lit import counted
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan


def figures_of(plan: Plan, cells: FloatArray, areas: FloatArray) -> Figures:
    """Figures from PPFD of the cells (C,) and their areas (C,), which make up the canopy."""
    stats = evenness(cells, areas)
    hours = plan.photoperiod_hours
    band = plan.target.ppfd_band(hours) if plan.target is not None else None
    shares = band_shares(cells, areas, *band) if band is not None else (None, None, None)
    flux = float(sum(lamp.ppf for lamp in plan.lamps))
    watts = float(sum(lamp.watts for lamp in plan.lamps))
    area = float(areas.sum())
    return Figures(
        mean=stats.mean,
        minimum=stats.minimum,
        maximum=stats.maximum,
        min_over_mean=stats.min_over_mean,
        min_over_max=stats.min_over_max,
        cv=stats.cv,
        share_under=shares[0],
        share_inside=shares[1],
        share_over=shares[2],
        dli=daily_light_integral(stats.mean, hours),
        utilisation=utilisation(stats.mean, area, flux),
        efficacy=efficacy(flux, watts) if flux > 0 else None,
        photon_flux=flux,
        watts=watts,
        watts_per_m2=watts / area,
        kwh_per_day=kilowatt_hours_per_day(watts, hours),
        canopy_area=area,
    )


def of_plan(estimate: Estimate, plan: Plan) -> Estimate:
    """An estimate as that of a plan of the same light: its figures anew, its map as it is.

    Hours, target and watts change figures only (see ``plan.lit``).
    """
    if counted(plan) == counted(estimate.plan):
        return replace(estimate, plan=plan)
    inside = ~np.isnan(estimate.ppfd)
    figures = figures_of(plan, estimate.ppfd[inside], estimate.cell_area[inside])
    return replace(estimate, plan=plan, figures=figures)


def shares_of(places: tuple[Place, ...], absorbed: FloatArray, emitted: float) -> tuple[Share, ...]:
    """Where the photons ended: canopy or floor first, then in the order of the facets.

    Facets of one place (the faces of a box) are added up.
    """
    flux: dict[Place, float] = {}
    for place, part in zip(places, absorbed, strict=True):
        flux[place] = flux.get(place, 0.0) + float(part)
    rows = [
        Share(place, amount, amount / emitted if emitted > 0 else 0.0)
        for place, amount in flux.items()
    ]
    return tuple(sorted(rows, key=lambda row: row.place.kind not in _BOTTOM))


_BOTTOM = (PlaceKind.CANOPY, PlaceKind.FLOOR)
