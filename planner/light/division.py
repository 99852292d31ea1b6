"""What the division into patches, and the rays between them, leave in doubt: measured in each room.

With patches twice as wide the balance is solved once more, from the same rays. Where light is
smooth over a patch its error falls with the square of the width (as in Richardson, 1911, Phil.
Trans. R. Soc. A 210, 307), and so a third of the difference is left; where it is not, as beside
a bulb near a wall or an edge, with the width alone, and all of it is.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from planner.light.exchange import Exchange
from planner.light.prism import FloatArray, totals
from planner.light.surfaces import Surfaces

_LEFT = 0.5
"""Of that difference: between a third and all."""


@dataclass(frozen=True)
class Coarser:
    """The balance in patches twice as wide.

    ``response`` (G, G) turns flux on them from lamps into total flux, as that of
    ``light.exchange.response`` does.
    """

    response: FloatArray

    @classmethod
    def of(cls, surfaces: Surfaces, factors: FloatArray, diffuse: FloatArray) -> Coarser:
        """From the exchange (P, P) and the reflectance ρ_d of each patch (P,)."""
        group, area = surfaces.wider, np.maximum(surfaces.patch_area, 1e-12)
        order = np.argsort(group, kind="stable")
        start = np.searchsorted(group[order], np.arange(group.max() + 1))
        whole = np.add.reduceat(area[order], start)
        each = (factors * (area / whole[group])[:, None]).take(order, axis=0)
        rows = np.add.reduceat(each, start, axis=0)
        joined = np.add.reduceat(rows.take(order, axis=1), start, axis=1)
        system = np.eye(start.size) - joined.T * diffuse[order][start]
        return cls(np.asarray(np.linalg.inv(system)))


def in_doubt(
    surfaces: Surfaces,
    exchange: Exchange,
    balance: FloatArray,
    coarser: Coarser,
    diffuse: FloatArray,
    lamp_flux: FloatArray,
    direct_flux: FloatArray,
    total: FloatArray,
) -> FloatArray:
    """By how much the flux on patches (P,) may be off, place by place.

    Of a lamp that gives ``lamp_flux`` to them before any diffuse reflection, of it
    ``direct_flux`` straight, which is known in finer detail, and ``total`` in the end; (P,) each.
    """
    group, area = surfaces.wider, np.maximum(surfaces.patch_area, 1e-12)
    count = len(coarser.response)
    wide = coarser.response @ totals(group, lamp_flux, count) - totals(group, direct_flux, count)
    even = (wide / totals(group, area, count))[group] * area
    by_rays = balance @ (exchange.doubt.astype(np.float32).T @ (diffuse * total))
    doubt: FloatArray = _LEFT * (even - (total - direct_flux)) + by_rays
    return doubt
