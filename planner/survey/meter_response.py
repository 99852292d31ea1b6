"""What a sensor that is no ideal cosine receiver makes of light by its direction.

A reading is ∫ L(ω) cosθ c(θ) dω with the response c(θ) relative to the ideal. Of the light
of an estimate the directions of what comes straight from the lamps are known; the rest,
from walls and mirrors, is taken as even over the hemisphere. That is an approximation:
low walls send their light flatter than that, mirrors steeper. It is good as long as c(θ)
differs little from 1 where most of the reflected light comes from.
"""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

from planner.plan.survey import Meter

FloatArray = npt.NDArray[np.float64]
_DEGREES = np.linspace(0.0, 90.0, 361)


def is_ideal(meter: Meter) -> bool:
    """Whether the meter needs no directional correction."""
    return all(value == 1.0 for value in meter.response_relative)


def response(meter: Meter, cosine: FloatArray) -> FloatArray:
    """c(θ) for cosines of the angle from upright; linear in angle, constant beyond the ends."""
    if is_ideal(meter):
        return np.ones_like(cosine)
    angle = np.degrees(np.arccos(np.clip(cosine, 0.0, 1.0)))
    result: FloatArray = np.interp(angle, meter.response_angles_deg, meter.response_relative)
    return result


def even_light_factor(meter: Meter) -> float:
    """Reading over truth in light even over the hemisphere: ∫ c(θ) 2 sinθ cosθ dθ."""
    if is_ideal(meter):
        return 1.0
    theta = np.radians(_DEGREES)
    weight = np.sin(2 * theta)
    values = response(meter, np.cos(theta)) * weight
    # Both vanish at the ends, so plain sums are the trapezoidal rule.
    return float(values.sum() / weight.sum())


def reading_factor(
    meter: Meter, direct_share: FloatArray, direct_factor: FloatArray, uneven: float = 0.0
) -> FloatArray:
    """Reading over truth at points (n,), gain and noise apart.

    ``direct_share`` is the part of the light straight from the lamps, ``direct_factor`` the
    mean of c(θ) over that part; ``uneven`` is what the meter reads too much, relatively, of
    all the rest.
    """
    even = even_light_factor(meter) * (1 + uneven)
    result: FloatArray = direct_share * direct_factor + (1 - direct_share) * even
    return result
