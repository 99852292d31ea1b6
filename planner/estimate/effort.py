"""How much work each quality spends; measured in tests/bench and tests/reference."""

from __future__ import annotations

from dataclasses import dataclass

from planner.estimate.result import Quality


@dataclass(frozen=True)
class Effort:
    """Numbers of patches (wanted), texels per patch edge, rays and photons.

    ``cutoff`` is the weight below which a chain of mirrors is no longer followed.
    """

    patches: int
    fine: int
    exchange_rays: int
    gather_rays: int
    photons: int
    cutoff: float


EFFORTS = {
    Quality.PREVIEW: Effort(120, 2, 64, 48, 4096, 1e-2),
    Quality.DEFAULT: Effort(320, 4, 128, 192, 16384, 2e-3),
    Quality.FINE: Effort(900, 4, 512, 1024, 262144, 2e-4),
}
