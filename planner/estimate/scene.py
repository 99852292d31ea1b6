"""From a plan to surfaces and sources: the one place where words become geometry."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from planner.light.boxes import Box
from planner.light.emission import CosinePower, Profile, Source, TabulatedProfile
from planner.plan.lamp import CosineProfile, Lamp, PlanesProfile, TableProfile
from planner.plan.lining import Lining
from planner.plan.plan import Plan

AnyProfile = CosineProfile | TableProfile | PlanesProfile
Bands = tuple[tuple[float, ...], ...]


@dataclass(frozen=True)
class FacetRole:
    """What a facet is in the plan, for labels and shares."""

    label: str
    kind: str
    wall: int | None = None
    band: int | None = None


@dataclass(frozen=True)
class Room:
    """The lit part of the space: hashable, so that it can stand in a cache key.

    ``z0`` is the closed canopy or, under an open one, the floor; ``z_map`` the plane the
    map lies on. ``band_tops`` lists the divisions of each wall inside z0…z1.
    """

    corners: tuple[tuple[float, float], ...]
    z0: float
    z1: float
    z_map: float
    band_tops: Bands
    boxes: tuple[Box, ...] = ()


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
    """What of a lamp matters for its light at unit flux; hashable."""

    centre: tuple[float, float, float]
    rotation: float
    strips: tuple[tuple[float, float, float, float], ...]
    profile: AnyProfile

    def source(self) -> Source:
        """The source the light core works with."""
        return Source(self.centre, self.rotation, np.array(self.strips), _profile(self.profile))


@dataclass(frozen=True)
class Scene:
    """A plan as the light core sees it."""

    room: Room
    optics: Optics
    roles: tuple[FacetRole, ...]
    lamps: tuple[LampOptics, ...]
    fluxes: tuple[float, ...]


def build_scene(plan: Plan) -> Scene:
    """Resolve a plan into geometry, reflectances and lamps."""
    closed = plan.canopy.closed
    z_map = plan.canopy.height
    z0 = z_map if closed else 0.0
    band_tops: list[tuple[float, ...]] = []
    roles: list[FacetRole] = []
    linings: list[Lining | None] = []
    for index, cover in enumerate(plan.walls):
        tops = [band.top for band in cover.bands]
        # Bands wholly below the bottom of the lit part play no part.
        lit = [k for k, top in enumerate(tops) if top is None or top > z0 + 1e-6]
        band_tops.append(
            tuple(t for k in lit if (t := tops[k]) is not None and t < plan.space.height - 1e-6)
        )
        for k in lit[: len(band_tops[-1]) + 1]:
            lining = plan.lining(cover.bands[k].lining)
            opening = plan.wall_opens(index) or lining.is_opening
            roles.append(_wall_role(plan, index, k, lining, opening=opening))
            linings.append(None if opening else lining)
    ceiling = plan.lining(plan.ceiling)
    roles.append(_flat_role("Ceiling", "ceiling", ceiling))
    linings.append(ceiling)
    diffuse = [0.0 if lining is None else lining.diffuse for lining in linings]
    specular = [0.0 if lining is None else lining.specular for lining in linings]
    width = [0.0 if lining is None else lining.wrinkle for lining in linings]
    if closed:
        roles.append(FacetRole("Canopy", "canopy"))
        diffuse.append(plan.canopy.reflectance)
        specular.append(0.0)
        width.append(0.0)
    else:
        floor = plan.lining(plan.floor)
        roles.append(_flat_role("Floor", "floor", floor))
        diffuse.append(floor.diffuse)
        specular.append(floor.specular)
        width.append(floor.wrinkle)
    lit_lamps = [lamp for lamp in plan.lamps if lamp.ppf > 0]
    return Scene(
        Room(plan.space.footprint, z0, plan.space.height, z_map, tuple(band_tops)),
        Optics(tuple(diffuse), tuple(specular), tuple(width)),
        tuple(roles),
        tuple(_lamp_optics(plan, lamp) for lamp in lit_lamps),
        tuple(lamp.ppf for lamp in lit_lamps),
    )


def _wall_role(plan: Plan, index: int, band: int, lining: Lining, *, opening: bool) -> FacetRole:
    where = f"Wall {index + 1}"
    if len(plan.walls[index].bands) > 1:
        where += f", band {band + 1}"
    if plan.wall_opens(index):
        return FacetRole(f"{where} (open door)", "opening", index, band)
    return FacetRole(f"{where}: {lining.name}", "opening" if opening else "wall", index, band)


def _flat_role(place: str, kind: str, lining: Lining) -> FacetRole:
    return FacetRole(f"{place}: {lining.name}", "opening" if lining.is_opening else kind)


def _lamp_optics(plan: Plan, lamp: Lamp) -> LampOptics:
    return LampOptics(
        (lamp.x, lamp.y, plan.lamp_height(lamp)),
        math.radians(lamp.rotation_deg),
        lamp.strips(),
        lamp.model.profile,
    )


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
