"""From a plan to surfaces and sources: the one place where words become geometry."""

from __future__ import annotations

import math
from bisect import bisect
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from planner.light.boxes import FACES, TOP_FACE, Box
from planner.light.emission import CosinePower, Profile, Source, TabulatedProfile
from planner.plan.lamp import CosineProfile, Lamp, PlanesProfile, TableProfile
from planner.plan.place import Place, PlaceKind, cleanness, lining_at, opens
from planner.plan.plan import Setup
from planner.plan.space import Canopy, CarriedCanopy, contains
from planner.plan.wavebands import DAYLIGHT, PAR_BANDS, Wavebands

AnyProfile = CosineProfile | TableProfile | PlanesProfile
Bands = tuple[tuple[float, ...], ...]


_LEAST_ABOVE_FLOOR = 0.001
"""Metres; an open map nearer to the floor would be taken for the floor itself."""


LEAST_OVER_TOP = 0.001
"""Metres between a canopy on a top and the ceiling, below which no light comes in."""

_APART = 0.001
"""Metres between divisions of a wall."""


@dataclass(frozen=True)
class Room:
    """The lit part of the space: hashable, so that it can stand in a cache key.

    ``z0`` is the closed canopy or, under an open one, the floor; ``z_map`` the plane the
    map lies on. ``band_tops`` lists the divisions of each wall inside z0…z1, ``tops`` the boxes
    on which a canopy grows.
    """

    corners: tuple[tuple[float, float], ...]
    z0: float
    z1: float
    z_map: float
    band_tops: Bands
    boxes: tuple[Box, ...] = ()
    tops: tuple[int, ...] = ()


@dataclass(frozen=True)
class Optics:
    """Reflectances ρ_d and ρ_s of the facets of a room and the width of their mirror lobes.

    In facet order: walls, ceiling, bottom, faces of boxes.
    """

    diffuse: tuple[float, ...]
    specular: tuple[float, ...]
    width: tuple[float, ...]


@dataclass(frozen=True)
class LampOptics:
    """What of a lamp matters for its light at unit flux; hashable.

    ``outside`` is no lamp of the plan but the open door, by which the light of the room comes in.
    """

    centre: tuple[float, float, float]
    rotation: float
    strips: tuple[tuple[float, float, float, float], ...]
    profile: AnyProfile
    tilt: float = 0.0
    outside: bool = False

    def source(self) -> Source:
        """The source the light core works with."""
        return Source(
            self.centre, self.rotation, np.array(self.strips), _profile(self.profile), self.tilt
        )


@dataclass(frozen=True)
class Scene:
    """A plan as the light core sees it; ``places`` says of each facet what it is.

    ``optics`` are those of clean linings, and ``clean`` what dirt leaves of them (facets that are
    not named are clean). ``tints`` hold the colour of each facet, ``colours`` that of each lamp;
    None where there is none, or where it is not known. What light meets is made of all of them
    in ``parts``.
    """

    room: Room
    optics: Optics
    places: tuple[Place, ...]
    lamps: tuple[LampOptics, ...]
    fluxes: tuple[float, ...]
    clean: tuple[float, ...] = ()
    tints: tuple[Wavebands | None, ...] = ()
    colours: tuple[Wavebands | None, ...] = ()

    @property
    def emitted(self) -> float:
        """Photon flux of all lamps, and of what comes in at the door, in µmol s⁻¹."""
        return float(sum(self.fluxes))

    @property
    def tinted(self) -> bool:
        """Whether light of different wavelengths goes different ways."""
        return any(self.tints) and any(self.colours)

    def parts(self) -> tuple[tuple[str, Scene], ...]:
        """The scenes whose light adds up to that of this one, each with the waveband it is of.

        Where nothing is tinted it is one, of no waveband ('').

        Light of lamps whose colour is not known meets the reflectances over 400-700 nm.
        """
        if not self.tinted:
            return (("", self._as_met("")),)
        parts = [(band, self.in_band(band)) for band in PAR_BANDS]
        unknown = [k for k, colour in enumerate(self.colours) if colour is None]
        if unknown:
            parts.append(("", self.of_lamps(unknown)._as_met("")))
        return tuple((band, part) for band, part in parts if part.lamps)

    def of_lamps(self, numbers: Sequence[int]) -> Scene:
        """The scene with some of its lamps."""
        return replace(
            self,
            lamps=tuple(self.lamps[k] for k in numbers),
            fluxes=tuple(self.fluxes[k] for k in numbers),
            colours=tuple(self.colours[k] for k in numbers),
        )

    def in_band(self, band: str) -> Scene:
        """One waveband of the light of the lamps whose colour is known, and of what returns it."""
        shares = {k: c.share(band) for k, c in enumerate(self.colours) if c is not None}
        lit = self.of_lamps([k for k, share in shares.items() if share > 0])
        fluxes = [f * c.share(band) for f, c in zip(lit.fluxes, lit.colours, strict=True) if c]
        return replace(lit._as_met(band), fluxes=tuple(fluxes))

    def guide_in(self, band: str, guide: tuple[float, ...]) -> tuple[float, ...]:
        """ρ_s of each facet as ``guide`` has it, as light of a waveband ('': any) meets it."""
        black = (0.0,) * len(guide)
        return self._met(Optics(black, guide, black), band).specular

    def _as_met(self, band: str) -> Scene:
        """The scene with its reflectances as light meets them: dirty, and in a waveband."""
        optics = self._met(self.optics, band)
        return self if optics is self.optics else replace(self, optics=optics, clean=(), tints=())

    def _met(self, optics: Optics, band: str) -> Optics:
        tints = self.tints if band else ()
        if not any(tints) and all(part == 1 for part in self.clean):
            return optics
        count = len(optics.diffuse)
        factors = [
            # No tint makes a surface return more than falls on it.
            clean * (1.0 if tint is None else min(tint.tint(band), 1 / max(rho_d + rho_s, 1e-9)))
            for clean, tint, rho_d, rho_s in zip(
                self.clean or (1.0,) * count, tints or (None,) * count,
                optics.diffuse, optics.specular, strict=True,
            )
        ]  # fmt: skip
        return replace(
            optics,
            diffuse=tuple(f * part for f, part in zip(factors, optics.diffuse, strict=True)),
            specular=tuple(f * part for f, part in zip(factors, optics.specular, strict=True)),
        )


@dataclass(frozen=True)
class _Surface:
    """One facet: what it is, ρ_d, ρ_s and the width of its mirror lobe."""

    place: Place
    diffuse: float = 0.0
    specular: float = 0.0
    width: float = 0.0
    clean: float = 1.0
    tint: Wavebands | None = None


def build_scene(plan: Setup) -> Scene:
    """Resolve a plan into geometry, reflectances and lamps."""
    closed = plan.canopy.closed
    # An open canopy at floor level is still a level above a floor that reflects as it is lined.
    z_map = plan.canopy.height if closed else max(plan.canopy.height, _LEAST_ABOVE_FLOOR)
    z0 = z_map if closed else 0.0
    band_tops: list[tuple[float, ...]] = []
    surfaces: list[_Surface] = []
    for index in range(len(plan.walls)):
        tops, bands = _lit_bands(plan, index, z0)
        band_tops.append(tops)
        surfaces += [_lined(plan, Place(PlaceKind.WALL, index, band)) for band in bands]
    surfaces.append(_lined(plan, Place(PlaceKind.CEILING)))
    if closed:
        surfaces.append(_leaves(Place(PlaceKind.CANOPY), plan.canopy))
    else:
        surfaces.append(_lined(plan, Place(PlaceKind.FLOOR)))
    boxes: list[Box] = []
    carrying: list[int] = []
    for box, surface in _opaque(plan, z0):
        faces = [surface] * FACES
        leaves = _on_top(plan, surface.place)
        if leaves is not None:
            faces[TOP_FACE] = leaves
            carrying.append(len(boxes))
        boxes.append(box)
        surfaces += faces
    lit_lamps = [lamp for lamp in plan.lamps if lamp.ppf > 0]
    door = _open_door(plan, z0)
    # The light of the room has a colour where all that of the lamps has: that of daylight.
    colours = [lamp.model.wavebands for lamp in lit_lamps]
    return Scene(
        Room(
            plan.space.footprint,
            z0,
            plan.space.height,
            z_map,
            tuple(band_tops),
            tuple(boxes),
            tuple(carrying),
        ),
        Optics(
            tuple(surface.diffuse for surface in surfaces),
            tuple(surface.specular for surface in surfaces),
            tuple(surface.width for surface in surfaces),
        ),
        tuple(surface.place for surface in surfaces),
        (*(_lamp_optics(plan, lamp) for lamp in lit_lamps), *(optics for optics, _ in door)),
        (*(lamp.ppf for lamp in lit_lamps), *(flux for _, flux in door)),
        tuple(surface.clean for surface in surfaces),
        tuple(surface.tint for surface in surfaces),
        (*colours, *((DAYLIGHT if colours and all(colours) else None) for _ in door)),
    )


_BEFORE_DOOR = 0.0001
"""Metres by which the light of the room starts inside, clear of the wall's own plane."""


def _open_door(plan: Setup, z0: float) -> list[tuple[LampOptics, float]]:
    """The open door as a panel on edge that sends in what the room sends to it, and its flux.

    A room that is equally bright in every direction lights the door evenly, and behind it the
    light goes on as from a Lambert emitter (the radiance theorem): a panel turned by a right
    angle, with the door's irradiance times its area as flux. None where it is shut or all is dark.
    """
    door, ppfd = plan.space.door, plan.room_light
    height = plan.space.height - z0
    if door is None or ppfd <= 0:
        return []
    (ax, ay), (bx, by) = plan.space.wall(door)
    length = plan.space.wall_length(door)
    along = math.atan2(by - ay, bx - ax)
    x = (ax + bx) / 2 - _BEFORE_DOOR * math.sin(along)
    y = (ay + by) / 2 + _BEFORE_DOOR * math.cos(along)
    size = length - 2 * _BEFORE_DOOR, height - 2 * _BEFORE_DOOR
    if min(size) <= 0:
        return []
    panel = LampOptics(
        (x, y, z0 + height / 2), along, ((0.0, 0.0, *size),), CosineProfile(exponent=1.0),
        math.pi / 2, outside=True,
    )  # fmt: skip
    return [(panel, ppfd * length * height)]


def _lit_bands(plan: Setup, wall: int, z0: float) -> tuple[tuple[float, ...], list[int]]:
    """Divisions of a wall above the bottom of the lit part, and the bands they divide.

    Walls are divided at canopies on tops too: beside one the light on a wall jumps.
    """
    tops = [band.top for band in plan.walls[wall].bands]
    lit = [k for k, top in enumerate(tops) if top is None or top > z0 + 1e-6]
    inner = tuple(
        top for k in lit if (top := tops[k]) is not None and top < plan.space.height - 1e-6
    )
    bands = lit[: len(inner) + 1]
    for top in sorted(_carried(plan, z0)):
        if all(abs(top - other) > _APART for other in inner):
            at = bisect(inner, top)
            inner = (*inner[:at], top, *inner[at:])
            bands.insert(at, bands[at])
    return inner, bands


def _carried(plan: Setup, z0: float) -> set[float]:
    """Heights of the canopies that obstacles carry, in the lit part."""
    highest = plan.space.height - LEAST_OVER_TOP
    return {o.top for o in plan.obstacles if o.canopy is not None and z0 + _APART < o.top < highest}


def _lined(plan: Setup, place: Place) -> _Surface:
    """The facet of a lined place; light that meets an opening does not come back."""
    lining = lining_at(plan, place)
    if lining is None or opens(plan, place):
        return _Surface(place)
    clean = cleanness(plan, place)
    return _Surface(place, lining.diffuse, lining.specular, lining.wrinkle, clean, lining.wavebands)


def _on_top(plan: Setup, place: Place) -> _Surface | None:
    """The leaves on the top of an obstacle; None where none grow, or none have room to."""
    if place.kind is not PlaceKind.OBSTACLE:
        return None
    obstacle = plan.obstacles[place.index]
    if obstacle.canopy is None or obstacle.top > plan.space.height - LEAST_OVER_TOP:
        return None
    return _leaves(Place(PlaceKind.TOP, place.index), obstacle.canopy)


def _leaves(place: Place, canopy: Canopy | CarriedCanopy) -> _Surface:
    return _Surface(place, canopy.reflectance, tint=canopy.wavebands)


def _opaque(plan: Setup, z0: float) -> list[tuple[Box, _Surface]]:
    """Boxes that reach into the lit part: obstacles and lamp housings."""
    found: list[tuple[Box, _Surface]] = []
    for index, obstacle in enumerate(plan.obstacles):
        if obstacle.top > z0 + 1e-6:
            box = Box(
                obstacle.x,
                obstacle.y,
                max(obstacle.underside, z0),
                obstacle.top,
                obstacle.length,
                obstacle.width,
                math.radians(obstacle.rotation_deg),
            )
            found.append((box, _lined(plan, Place(PlaceKind.OBSTACLE, index))))
    for index, lamp in enumerate(plan.lamps):
        surface = _Surface(Place(PlaceKind.HOUSING, index), lamp.model.housing_reflectance)
        found += [(housing, surface) for housing in _housings(plan, lamp, z0)]
    return found


def _housings(plan: Setup, lamp: Lamp, z0: float) -> list[Box]:
    """Boxes over the emitting strips; what of them would reach above the ceiling is cut off.

    Those of several bars are one row, that shares its faces. Where it hangs low over the canopy
    for how far its bars are apart, light goes to and fro under each, and each is its own box.
    """
    face = plan.lamp_height(lamp)
    tilt, top = math.radians(lamp.tilt_deg), face + lamp.model.housing_height
    if not tilt:
        top = min(top, plan.space.height)
    strips = _strips_inside(plan, lamp)
    (_, first, length, width), last = strips[0], strips[-1][1]
    if length <= 0 or top <= face + 1e-6:
        return []
    breadth = last - first + width
    angle, count = math.radians(lamp.rotation_deg), len(strips)
    pitch = (last - first) / max(count - 1, 1)
    low = face - max(z0, plan.canopy.height) < _LOW * pitch
    if tilt or not low or not 1 < count <= _MOST_BOXES:
        return [Box(lamp.x, lamp.y, face, top, length, breadth, angle, count, width, tilt)]
    cos, sin = math.cos(angle), math.sin(angle)
    return [
        Box(lamp.x + cos * x - sin * y, lamp.y + sin * x + cos * y, face, top, a, b, angle)
        for x, y, a, b in strips
    ]


_LOW, _MOST_BOXES = 0.6, 12
"""Height over the canopy in distances of bars, up to which they are boxes of their own, and how
many of them may be."""


def _lamp_optics(plan: Setup, lamp: Lamp) -> LampOptics:
    return LampOptics(
        (lamp.x, lamp.y, plan.lamp_height(lamp)),
        math.radians(lamp.rotation_deg),
        _strips_inside(plan, lamp),
        lamp.model.profile,
        math.radians(lamp.tilt_deg),
    )


Strips = tuple[tuple[float, float, float, float], ...]


def _strips_inside(plan: Setup, lamp: Lamp) -> Strips:
    """The lamp's strips, drawn in about its centre where the body sticks through a wall.

    Such a lamp cannot be hung, and a finding says so; drawn in, it gives all of its light
    inside until it is moved.
    """
    footprint = plan.space.footprint
    for percent in range(100, 0, -3):
        # A hair less, for a body that just touches a wall lies inside.
        scale = percent / 100
        reach = scale * (1 - 1e-6)
        if all(
            contains(footprint, lamp.x + reach * (x - lamp.x), lamp.y + reach * (y - lamp.y))
            for x, y in lamp.outline()
        ):
            break
    if scale == 1.0:
        return lamp.strips()
    return tuple((cx * scale, cy * scale, a * scale, b * scale) for cx, cy, a, b in lamp.strips())


def _profile(profile: AnyProfile) -> Profile:
    if isinstance(profile, CosineProfile):
        return CosinePower(profile.exponent)
    if isinstance(profile, PlanesProfile):
        return TabulatedProfile(
            np.array(profile.angles_deg),
            np.array(profile.relative),
            np.array(profile.azimuths_deg),
        )
    return TabulatedProfile(np.array(profile.angles_deg), np.array(profile.relative))
