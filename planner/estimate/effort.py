"""How much work each quality spends; measured in tests/bench and tests/reference."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from planner.estimate.result import Quality


@dataclass(frozen=True)
class Effort:
    """Numbers of patches (wanted), texels per patch edge, rays and photons.

    ``cutoff`` is the weight below which a chain of mirrors is no longer followed,
    ``quadrature`` the relative error allowed to the sum over a mirrored lamp, ``edges`` the
    points along a side of one that mirrors show in part, ``shade`` the fewest points along a
    side of a lamp before which something may stand, ``passed`` the most mirrors that its
    images pass in all where they must be followed line by line. Where mirrors are wrinkled,
    ``spread_photons`` tell what they send to the map, ``lobe_photons`` of them by their lobes.
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
    shade: int = 5
    passed: int = 8000

    def shared_among(self, lamps: int) -> Effort:
        """What each of so many lamps is given.

        Beyond a few, what is left to chance in the light of one matters less, and what is not
        even in it the others even out: the same accuracy of the whole needs less for each.
        """
        share = min(1.0, math.sqrt(_FEW_LAMPS / max(lamps, 1)))
        return replace(
            self,
            photons=round(self.photons * share),
            spread_photons=round(self.spread_photons * share),
            lobe_photons=round(self.lobe_photons * share),
            edges=max(1, round(self.edges * share)),
            shade=max(3, round(self.shade * share)),
            passed=round(self.passed * share),
        )


_FEW_LAMPS = 4


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
