"""How much work each quality of an estimate takes: patches, texels, rays and photons."""

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
    side of a lamp, or of a cell, before which something may stand, ``shadows`` how many times more
    lines of sight may tell of a cell where a shadow ends, ``passed`` the most mirrors
    that its images pass in all where they must be followed line by line, ``spots`` the most
    texels that a lamp lights up as spots. Where mirrors are wrinkled, ``spread_photons`` tell
    what they send to the map, ``lobe_photons`` of them by their lobes, and the exchange takes
    ``wrinkles`` times the rays.
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
    shade: int = 7
    shadows: int = 16
    passed: int = 8000
    spots: int = 160
    wrinkles: int = 2

    def shared_among(self, lamps: int) -> Effort:
        """What each of so many lamps is given.

        Beyond a few, what is left to chance in the light of one matters less, and what is not
        even in it the others even out: the same accuracy of the whole needs less for each.
        Wrinkled mirrors leave nothing but chance, and chances of lamps are unrelated: there the
        work of one lamp is divided among all. So are the images that are followed and the spots,
        each of which is a smaller part of the whole: 24 lamps over 24 pots differ by 0.05 %.
        """
        part = min(1.0, _FEW_LAMPS / max(lamps, 1))
        share = math.sqrt(part)
        return replace(
            self,
            photons=round(self.photons * share),
            spread_photons=max(self.spread_photons // max(lamps, 1), _FEWEST_SPREAD),
            lobe_photons=max(self.lobe_photons // max(lamps, 1), _FEWEST_LOBES),
            edges=max(1, round(self.edges * share)),
            shade=max(3, round(self.shade * share)),
            passed=round(self.passed * part),
            spots=round(self.spots * part),
        )


_FEW_LAMPS = 4
_FEWEST_SPREAD, _FEWEST_LOBES = 1 << 14, 1 << 10


def rays_for(rays: int, mean_specular: float) -> int:
    """Rays to cast for about the same work.

    Without mirrors every ray ends at once; diffuse enclosures also need rays most, since
    light comes from all of the walls. Where mirrors are near perfect each ray meets many
    surfaces on its way and fewer rays see as much.
    """
    more = 1 + 2 * max(0.0, 1 - mean_specular / 0.3)
    fewer = min(1.0, max(0.25, (1 - mean_specular) / 0.3))
    return max(round(rays * more * fewer), 16)


_EFFORTS = {
    Quality.PREVIEW: Effort(120, 2, 56, 32, 4096, 1e-2, 2e-2, 2, 65536, 4096, shadows=1),
    Quality.DEFAULT: Effort(400, 4, 160, 256, 16384, 2e-3, 1e-3, 6, 245760, 20480),
    Quality.FINE: Effort(900, 4, 512, 2048, 131072, 2e-4, 2e-4, 8, 524288, 65536),
}


_RAYS_BESIDE_TOPS = 640
"""From every patch: with 160 the upper tier of a rack before a white wall was 7 % too bright."""


def effort_for(quality: Quality, *, open_to_sight: bool, tops: int = 0) -> Effort:
    """The work for a room in which every two points see each other, or do not.

    Where something stands in sight or walls jut in, light changes within a patch and images of
    lamps show in part. Where canopies are carried on tops as well, what is kept for the next edit
    would be too much; the gaps beside their edges are narrow, and what passes there takes rays.
    """
    effort = _EFFORTS[quality]
    if tops:
        rays = max(effort.exchange_rays, _RAYS_BESIDE_TOPS)
        effort = replace(effort, exchange_rays=rays, wrinkles=1)
    if quality is Quality.DEFAULT and not (open_to_sight or tops):
        return replace(effort, patches=600, photons=65536, gather_rays=512, exchange_rays=320)
    return effort
