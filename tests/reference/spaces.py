"""Scenes told once, so that independent programs can be given the same thing.

Metres, z up. Nothing of the program's own geometry is used here; ``plan_of`` alone speaks
to it, and ``embree_walk`` and ``renderer`` build triangles from the same description.
"""

from __future__ import annotations

from dataclasses import dataclass

from planner.plan.lamp import (
    BarsBody,
    CosineProfile,
    Lamp,
    LampModel,
    PanelBody,
    PlanesProfile,
    PointBody,
)
from planner.plan.lining import Band, Lining, WallCover
from planner.plan.plan import Plan
from planner.plan.space import Canopy, CarriedCanopy, Obstacle, Space

Corners = tuple[tuple[float, float], ...]


@dataclass(frozen=True)
class Material:
    """Diffuse and specular reflectance, and the width (GGX α) of the specular lobe."""

    diffuse: float
    specular: float = 0.0
    width: float = 0.0


BLACK = Material(0.0)

Stripes = tuple[tuple[float, Material], ...]
"""A wall from the floor up: upper edge (m) and material; the last edge is the ceiling's."""


@dataclass(frozen=True)
class Planes:
    """Relative intensity ``value[k][i]`` at azimuth k and polar angle i, degrees."""

    azimuths: tuple[float, ...]
    angles: tuple[float, ...]
    value: tuple[tuple[float, ...], ...]


@dataclass(frozen=True)
class Luminaire:
    """A lamp facing down, or tilted: bars (one bar is a panel) of ``length`` x ``width``.

    ``spread`` is the outer width over all bars. ``tilted_deg`` turns it about the line along its
    length through ``at``, the middle of its face, so that its y side rises. Without ``planes``
    intensity is cos^m.
    """

    at: tuple[float, float, float]
    length: float
    width: float
    ppf: float = 100.0
    exponent: float = 1.0
    planes: Planes | None = None
    bars: int = 1
    spread: float = 0.0
    turned_deg: float = 0.0
    tilted_deg: float = 0.0
    housing: float = 0.0
    housing_rho: float = 0.5

    def offsets(self) -> tuple[float, ...]:
        """Where the middle of each bar lies across the lamp."""
        if self.bars == 1:
            return (0.0,)
        step = (self.spread - self.width) / (self.bars - 1)
        return tuple((k - (self.bars - 1) / 2) * step for k in range(self.bars))


@dataclass(frozen=True)
class Block:
    """An opaque upright box: centre, underside, size, turn and material.

    ``leaves`` is the reflectance of the canopy on its top, None where it carries none.
    """

    at: tuple[float, float, float]
    size: tuple[float, float, float]
    material: Material
    turned_deg: float = 0.0
    leaves: float | None = None


@dataclass(frozen=True)
class Scene:
    """A space to be lit. ``floor`` matters under an open canopy only.

    ``map_height`` is the height of the plane whose cells are counted, None: that of the canopy.
    """

    name: str
    corners: Corners
    height: float
    walls: tuple[Material | Stripes, ...]
    ceiling: Material
    lamps: tuple[Luminaire, ...]
    canopy_height: float = 0.1
    canopy: float = 0.06
    closed: bool = True
    floor: Material = BLACK
    blocks: tuple[Block, ...] = ()
    door: int | None = None
    cells: tuple[int, int] = (8, 8)
    map_height: float | None = None

    def stripes(self, wall: int) -> Stripes:
        """Materials of a wall from the floor up; an open door is black."""
        cover = BLACK if wall == self.door else self.walls[wall]
        return ((self.height, cover),) if isinstance(cover, Material) else cover

    @property
    def bottom(self) -> tuple[float, Material]:
        """Height and material of the lowest surface light can reach."""
        if self.closed:
            return self.canopy_height, Material(self.canopy)
        return 0.0, self.floor


def box(width: float, depth: float) -> Corners:
    """A rectangle from the origin; its walls are y0, x1, y1, x0."""
    return ((0.0, 0.0), (width, 0.0), (width, depth), (0.0, depth))


def plan_of(scene: Scene) -> Plan:
    """The scene as a plan of the program."""
    linings: dict[Material, Lining] = {}

    def key(material: Material) -> str:
        if material not in linings:
            total = material.diffuse + material.specular
            name = f"lining-{len(linings) + 1}"
            linings[material] = Lining(
                key=name,
                name=name,
                reflectance=total,
                specular_share=material.specular / total if total else 0.0,
                wrinkle=material.width,
                low=total,
                high=total,
            )
        return linings[material].key

    def cover(what: Material | Stripes) -> WallCover:
        if isinstance(what, Material):
            return WallCover.plain(key(what))
        bands = [Band(lining=key(material), top=top) for top, material in what[:-1]]
        return WallCover(bands=(*bands, Band(lining=key(what[-1][1]))))

    walls = tuple(cover(what) for what in scene.walls)
    ceiling, floor = key(scene.ceiling), key(scene.floor)
    blocks = tuple(
        Obstacle(
            name="Block",
            x=block.at[0],
            y=block.at[1],
            underside=block.at[2],
            length=block.size[0],
            width=block.size[1],
            thickness=block.size[2],
            rotation_deg=block.turned_deg,
            lining=key(block.material),
            canopy=None if block.leaves is None else CarriedCanopy(reflectance=block.leaves),
        )
        for block in scene.blocks
    )
    return Plan(
        name=scene.name,
        space=Space(
            footprint=scene.corners,
            height=scene.height,
            door=scene.door,
            door_open=scene.door is not None,
        ),
        walls=walls,
        ceiling=ceiling,
        floor=floor,
        linings=tuple(linings.values()),
        obstacles=blocks,
        lamps=tuple(_lamp(scene, lamp) for lamp in scene.lamps),
        canopy=Canopy(height=scene.canopy_height, closed=scene.closed, reflectance=scene.canopy),
    )


def _lamp(scene: Scene, lamp: Luminaire) -> Lamp:
    body: PointBody | PanelBody | BarsBody
    if lamp.length == 0:
        body = PointBody()
    elif lamp.bars > 1:
        body = BarsBody(
            count=lamp.bars, length=lamp.length, bar_width=lamp.width, width=lamp.spread
        )
    else:
        body = PanelBody(length=lamp.length, width=lamp.width)
    profile: CosineProfile | PlanesProfile = CosineProfile(exponent=lamp.exponent)
    if lamp.planes is not None:
        profile = PlanesProfile(
            azimuths_deg=lamp.planes.azimuths,
            angles_deg=lamp.planes.angles,
            relative=lamp.planes.value,
        )
    model = LampModel(
        key="lamp",
        name="Lamp",
        body=body,
        profile=profile,
        ppf=lamp.ppf,
        watts=lamp.ppf,
        housing_height=lamp.housing,
        housing_reflectance=lamp.housing_rho,
    )
    return Lamp(
        model=model,
        x=lamp.at[0],
        y=lamp.at[1],
        hanging_height=lamp.at[2] - scene.canopy_height,
        rotation_deg=lamp.turned_deg,
        tilt_deg=lamp.tilted_deg,
    )
