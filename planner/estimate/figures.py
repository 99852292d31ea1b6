"""Figures of a map and where its photons went."""

from __future__ import annotations

from planner.estimate.result import Figures, FloatArray, Share
from planner.estimate.scene import FacetRole
from planner.metrics.energy import efficacy, kilowatt_hours_per_day, utilisation
from planner.metrics.photons import daily_light_integral
from planner.metrics.uniformity import band_shares, evenness
from planner.plan.plan import Plan


def figures_of(plan: Plan, cells: FloatArray, areas: FloatArray) -> Figures:
    """Figures from PPFD of the cells (C,) and their areas (C,)."""
    stats = evenness(cells, areas)
    hours = plan.photoperiod_hours
    band = plan.target.ppfd_band(hours) if plan.target is not None else None
    shares = band_shares(cells, areas, *band) if band is not None else (None, None, None)
    flux = float(sum(lamp.ppf for lamp in plan.lamps))
    watts = float(sum(lamp.watts for lamp in plan.lamps))
    area = plan.space.area
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


def shares_of(
    roles: tuple[FacetRole, ...], absorbed: FloatArray, emitted: float
) -> tuple[Share, ...]:
    """Where the photons ended: canopy or floor first, then in the order of the facets.

    Facets of one role (the faces of a box) are added up.
    """
    flux: dict[FacetRole, float] = {}
    for role, part in zip(roles, absorbed, strict=True):
        flux[role] = flux.get(role, 0.0) + float(part)
    rows = [
        Share(
            label=role.label,
            kind=role.kind,
            photon_flux=amount,
            share=amount / emitted if emitted > 0 else 0.0,
            wall=role.wall,
            band=role.band,
        )
        for role, amount in flux.items()
    ]
    first = [row for row in rows if row.kind in _BOTTOM and row.wall is None]
    return (*first, *(row for row in rows if row not in first))


_BOTTOM = ("canopy", "floor")
