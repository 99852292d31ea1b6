"""The beam angle of a lamp from two readings: straight under it, and as far aside as it hangs high.

In the dark, with nothing about that returns light, what a level sensor reads at an angle θ from
straight below a small lamp of intensity cos^m θ goes as cos^(m + 3) θ: I cos θ / d², with
d = h / cos θ (photometric distance law, CIE S 017, 17-25-104). Their ratio tells m, and neither the
lamp's flux nor the gain of the meter. A lamp of some size is integrated over its face by the
core's own direct light, since at such distances it is not small.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

import numpy as np

from planner.light.direct import irradiance
from planner.light.emission import CosinePower, Source
from planner.plan.lamp import CosineProfile, Lamp, LampModel
from planner.plan.quantity import BEAM_ANGLE, BEAM_DOUBT

NOISE: Final = 0.02
"""Relative standard uncertainty of a reading against another (common practice, no source)."""
PLACING_M: Final = 0.005
"""Standard uncertainty of the lamp's height and of the sensor's place aside, by tape."""
_LEAST_DOUBT_DEG: Final = 1.0
_HALVINGS: Final = 40


@dataclass(frozen=True)
class BeamFound:
    """A beam angle and by how much it may be off either way, evenly likely, in degrees."""

    angle_deg: float
    doubt_deg: float


def aside_over_under(model: LampModel, beam_deg: float, height: float, aside: float) -> float:
    """What a level sensor reads ``aside`` over what it reads straight under a lamp.

    ``height`` and ``aside`` in metres, the latter across the lamp's longer side; ``beam_deg`` is
    the full angle of half the peak of its cosine law.
    """
    strips = np.array(Lamp(model=model, x=0.0, y=0.0, hanging_height=height).strips())
    exponent = CosineProfile.from_beam_angle(beam_deg).exponent
    source = Source((0.0, 0.0, height), 0.0, strips, CosinePower(exponent))
    length, width = model.size
    across = (0.0, aside) if length >= width else (aside, 0.0)
    places = np.array([[0.0, across[0]], [0.0, across[1]], [0.0, 0.0]])
    nodes, weights = source.nodes(height, least=8)
    under, beside = irradiance(places, None, nodes, weights, source.profile)
    return float(beside / under)


def beam_of_readings(model: LampModel, under: float, beside: float, height: float) -> BeamFound:
    """The beam that two readings tell; ``beside`` was read as far aside as ``height`` (metres).

    The readings may be in any unit, both in the same. Their noise and what is not known of the
    two lengths are carried through, squares adding up (JCGM 100:2008, 5.1.2).

    Raises
    ------
    ValueError
        If a reading is missing, or no beam fits them.
    """
    if under <= 0 or beside <= 0:
        raise ValueError("Type both readings; each must be above 0.")

    def found(ratio: float, height_m: float, aside_m: float) -> float:
        return _bisected(lambda beam: aside_over_under(model, beam, height_m, aside_m), ratio)

    ratio, ends = beside / under, (BEAM_ANGLE.minimum, BEAM_ANGLE.maximum)
    least, most = (aside_over_under(model, end, height, height) for end in ends)
    if not least <= ratio <= most:
        raise ValueError(
            f"Aside it read {ratio:.3g} of what it read under the lamp; a beam from {ends[0]:g}° "
            f"to {ends[1]:g}° gives {least:.2g} to {most:.2g}. Keep the sensor level, the place "
            "dark and walls out of it, and read as far aside as the lamp hangs high."
        )
    angle = found(ratio, height, height)
    moved = (
        found(ratio * (1 + math.sqrt(2) * NOISE), height, height),
        found(ratio, height + PLACING_M, height),
        found(ratio, height, height + PLACING_M),
    )
    standard = math.sqrt(sum((one - angle) ** 2 for one in moved))
    # The plan takes a doubt as evenly likely inside: √3 standard uncertainties.
    doubt = max(math.sqrt(3) * standard, _LEAST_DOUBT_DEG)
    return BeamFound(angle, min(doubt, BEAM_DOUBT.maximum))


def _bisected(rises: Callable[[float], float], wanted: float) -> float:
    low, high = BEAM_ANGLE.minimum, BEAM_ANGLE.maximum
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if rises(middle) < wanted else (low, middle)
    return (low + high) / 2


def beam_words(found: BeamFound, before: LampModel, mean: float | None) -> str:
    """What was found, and what it does to the doubt of the mean.

    ``mean`` is what the beam alone gives to the ± of the mean now, None where that is not known;
    it goes down about as the half-width does.
    """
    text = f"The beam is {found.angle_deg:.0f} ± {found.doubt_deg:.0f}°"
    if before.beam_range_deg is None or mean is None:
        return f"{text}."
    rest = mean * found.doubt_deg / before.beam_uncertainty_deg
    return (
        f"{text}. Of the mean's ± the beam alone made {mean:.2g}; with this it makes about "
        f"{rest:.2g}."
    )
