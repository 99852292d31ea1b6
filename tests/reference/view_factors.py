"""Exchange between whole facets of a space: the program's sums, and the package pyviewfactor.

pyviewfactor (MIT) integrates pairs of polygons by contour integrals (Bogdan, Walther,
Alecian and Chapon, 2022, IBPSA France). Convex spaces only: it is asked pair by pair.
"""

from __future__ import annotations

import importlib
import itertools
import math
import warnings

import numpy as np
import numpy.typing as npt

from planner.light.exchange import exchange_factors
from planner.light.paths import Mirrors
from planner.light.prism import Prism
from planner.light.surfaces import Surfaces

FloatArray = npt.NDArray[np.float64]

Corners = tuple[tuple[float, float], ...]
Bands = tuple[tuple[float, ...], ...]


def by_rays(
    corners: Corners, height: float, bands: Bands, *, rays: int = 8192, seed: int = 7
) -> FloatArray:
    """The program's factors summed over facets: walls with their bands, ceiling, bottom."""
    prism = Prism(np.array(corners, dtype=float), 0.0, height)
    perimeter = float(prism.lengths.sum())
    area = perimeter * height + 2 * float(_polygon_area(corners))
    surfaces = Surfaces(prism, bands, math.sqrt(area / 150), 1)
    count = len(surfaces.facets)
    mirrors = Mirrors(np.zeros(count), np.zeros(count))
    random = np.random.default_rng(seed)
    exchange = exchange_factors(surfaces, mirrors, rays, random, 1e-4, lambda: None)
    flux = exchange.factors * surfaces.patch_area[:, None]
    summed = np.zeros((count, count))
    facet = surfaces.patch_facet
    np.add.at(summed, (facet[:, None], facet[None, :]), flux)
    return np.asarray(summed / surfaces.facet_area[:, None])


def by_package(corners: Corners, height: float, bands: Bands) -> FloatArray:
    """The same from pyviewfactor, in the same order of facets."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        package = importlib.import_module("pyviewfactor")
        pyvista = importlib.import_module("pyvista")
    polygons = []
    for k, (a, b) in enumerate(zip(corners, corners[1:] + corners[:1], strict=True)):
        edges = [0.0, *bands[k], height]
        for low, high in itertools.pairwise(edges):
            polygons.append([(*a, low), (*a, high), (*b, high), (*b, low)])
    polygons.append([(*c, height) for c in corners[::-1]])
    polygons.append([(*c, 0.0) for c in corners])
    cells = [pyvista.PolyData(np.array(p), faces=[len(p), *range(len(p))]) for p in polygons]
    factors = np.zeros((len(cells), len(cells)))
    for i, leaving in enumerate(cells):
        for j, receiving in enumerate(cells):
            if i != j and package.get_visibility(receiving, leaving)[0]:
                factors[i, j] = package.compute_viewfactor(receiving, leaving)
    return factors


def _polygon_area(corners: Corners) -> float:
    x, y = np.array(corners).T
    return float(abs(x @ np.roll(y, -1) - y @ np.roll(x, -1)) / 2)
