"""Exchange between facets against pyviewfactor; published values as a check on both.

Howell, A Catalog of Radiation Configuration Factors, C-11 and C-14, as in
``tests/physics/test_view_factors.py``.
"""

from __future__ import annotations

import numpy as np
import pytest

from tests.physics.test_view_factors import corner_edge_factor, parallel_factor
from tests.reference.view_factors import Bands, Corners, by_package, by_rays

pytestmark = pytest.mark.reference


@pytest.fixture(autouse=True, scope="module")
def _extra() -> None:
    pytest.importorskip("pyviewfactor", reason="the 'reference' extra is not installed")


BOX: Corners = ((0.0, 0.0), (0.8, 0.0), (0.8, 1.0), (0.0, 1.0))
SLANTED: Corners = ((0.0, 0.0), (1.2, 0.0), (0.9, 0.7), (0.2, 0.8))
FIVE: Corners = ((0.0, 0.0), (1.0, 0.0), (1.0, 0.6), (0.7, 1.0), (0.0, 1.0))

SPACES: dict[str, tuple[Corners, float, Bands]] = {
    "box with bands": (BOX, 1.5, ((), (0.6,), (), (0.6, 1.2))),
    "slanted": (SLANTED, 1.0, ((),) * 4),
    "cut corner with a band": (FIVE, 1.4, ((), (0.5,), (), (), ())),
}


def test_the_package_gives_the_published_numbers() -> None:
    factors = by_package(BOX, 1.5, ((),) * 4)
    assert factors[4, 5] == pytest.approx(parallel_factor(0.8, 1.0, 1.5), rel=1e-4)
    assert factors[0, 2] == pytest.approx(parallel_factor(0.8, 1.5, 1.0), rel=1e-4)
    assert factors[5, 0] == pytest.approx(corner_edge_factor(1.0, 1.5, 0.8), rel=1e-4)
    np.testing.assert_allclose(factors.sum(axis=1), 1.0, atol=1e-4)


@pytest.mark.parametrize("name", SPACES)
def test_facets_agree(name: str) -> None:
    expected = by_package(*SPACES[name])
    # The package's own error shows in the row sums.
    np.testing.assert_allclose(expected.sum(axis=1), 1.0, atol=2e-3)
    np.testing.assert_allclose(by_rays(*SPACES[name]), expected, rtol=5e-3, atol=5e-4)
