"""How a lamp spreads its light, in words a grower reads."""

from __future__ import annotations

from planner.plan.lamp import CosineProfile, LampModel, PlanesProfile, Profile, TableProfile
from planner.units import format_number


def profile_words(profile: Profile) -> str:
    """One or two sentences on a profile: its law or table, and the angle of half its peak."""
    if isinstance(profile, CosineProfile):
        return f"The law behind it: intensity falls as cos^m, m = {profile.exponent:.2f}."
    if isinstance(profile, TableProfile):
        half = _half_angle(profile.angles_deg, profile.relative)
        return (
            f"The beam is a table of {len(profile.angles_deg)} angles from "
            f"{_deg(profile.angles_deg[0])} to {_deg(profile.angles_deg[-1])}, the same all "
            f"around. Half of its peak is left at {_deg(half)}."
        )
    return _planes_words(profile)


def _planes_words(profile: PlanesProfile) -> str:
    along = _nearest(profile, (0.0, 180.0, 360.0))
    across = _nearest(profile, (90.0, 270.0))
    ends = f"{_deg(profile.angles_deg[0])} to {_deg(profile.angles_deg[-1])}"
    planes = len(profile.azimuths_deg)
    text = (
        f"The beam is a photometric table of {planes} plane{'' if planes == 1 else 's'} with "
        f"{len(profile.angles_deg)} angles each, from {ends}."
    )
    if along == across:
        return f"{text} Half of its peak is left at {_deg(_half(profile, along))}."
    return (
        f"{text} Half of its peak is left at {_deg(_half(profile, along))} along the lamp and "
        f"{_deg(_half(profile, across))} across it."
    )


def _nearest(profile: PlanesProfile, azimuths: tuple[float, ...]) -> int:
    """The plane nearest to one of the azimuths."""
    return min(
        range(len(profile.azimuths_deg)),
        key=lambda k: min(abs(profile.azimuths_deg[k] - azimuth) for azimuth in azimuths),
    )


def _half(profile: PlanesProfile, plane: int) -> float:
    return _half_angle(profile.angles_deg, profile.relative[plane])


def _half_angle(angles: tuple[float, ...], relative: tuple[float, ...]) -> float:
    """The widest angle at which at least half of the peak is left."""
    half = max(relative) / 2
    return max(a for a, value in zip(angles, relative, strict=True) if value >= half)


def _deg(angle: float) -> str:
    return f"{format_number(angle, 1)}°"


def spread_is_typed(model: LampModel) -> bool:
    """Whether one beam angle tells everything about a lamp's spread."""
    return isinstance(model.profile, CosineProfile)
