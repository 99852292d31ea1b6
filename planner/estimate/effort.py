"""How much work each quality spends; measured in tests/bench and tests/reference."""

from __future__ import annotations

from dataclasses import dataclass

from planner.estimate.result import Quality


@dataclass(frozen=True)
class Effort:
    """Numbers of patches (wanted), texels per patch edge, rays and photons.

    ``cutoff`` is the weight below which a chain of mirrors is no longer followed,
    ``quadrature`` the relative error allowed to the sum over a mirrored lamp. Where mirrors
    are wrinkled, photons alone tell what they send to the map: ``spread_photons`` of them,
    counted on a grid of ``spread_cells`` along a side.
    """

    patches: int
    fine: int
    exchange_rays: int
    gather_rays: int
    photons: int
    cutoff: float
    quadrature: float
    spread_photons: int
    spread_cells: int


def more_where_chains_are_short(rays: int, mean_specular: float) -> int:
    """Rays to cast for about the same work: without mirrors every ray ends at once.

    Diffuse enclosures also need them most, since light comes from all of the walls.
    """
    return round(rays * (1 + 2 * max(0.0, 1 - mean_specular / 0.3)))


EFFORTS = {
    Quality.PREVIEW: Effort(120, 2, 64, 48, 4096, 1e-2, 2e-2, 65536, 6),
    Quality.DEFAULT: Effort(400, 4, 160, 256, 16384, 2e-3, 1e-3, 327680, 8),
    Quality.FINE: Effort(900, 4, 512, 2048, 131072, 2e-4, 2e-4, 786432, 14),
}
