"""How much work each quality spends; measured in tests/bench and tests/reference."""

from __future__ import annotations

from dataclasses import dataclass

from planner.estimate.result import Quality


@dataclass(frozen=True)
class Effort:
    """Numbers of patches (wanted), texels per patch edge, rays and photons.

    ``cutoff`` is the weight below which a chain of mirrors is no longer followed,
    ``quadrature`` the relative error allowed to the sum over a mirrored lamp, ``edges`` the
    points along a side of one that mirrors show in part. Where mirrors
    are wrinkled, ``spread_photons`` tell what they send to the map, ``lobe_photons``
    of them by their lobes.
    """

    patches: int
    fine: int
    exchange_rays: int
    gather_rays: int
    photons: int
    cutoff: float
    quadrature: float
    edges: int
    spread_photons: int
    lobe_photons: int


def rays_for(rays: int, mean_specular: float) -> int:
    """Rays to cast for about the same work.

    Without mirrors every ray ends at once; diffuse enclosures also need rays most, since
    light comes from all of the walls. Where mirrors are near perfect each ray meets many
    surfaces on its way and fewer rays see as much.
    """
    more = 1 + 2 * max(0.0, 1 - mean_specular / 0.3)
    fewer = min(1.0, max(0.25, (1 - mean_specular) / 0.3))
    return max(round(rays * more * fewer), 16)


EFFORTS = {
    Quality.PREVIEW: Effort(120, 2, 56, 32, 4096, 1e-2, 2e-2, 1, 65536, 2048),
    Quality.DEFAULT: Effort(400, 4, 160, 256, 16384, 2e-3, 1e-3, 4, 131072, 16384),
    Quality.FINE: Effort(900, 4, 512, 2048, 131072, 2e-4, 2e-4, 8, 524288, 65536),
}
