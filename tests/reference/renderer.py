"""The same scenes in the general-purpose renderer library Mitsuba 3.

The map is seen as a picture: a parallel camera a hair above the closed canopy looks down on
it, pixel for cell. A Lambertian canopy of reflectance ρ under E shows the radiance ρE/π, so
that the renderer's own path tracer (with light sampling) or, from a pinhole, its particle
tracer gives E. Boxes with panels that emit by the cosine law only: the library has no other
profile for areas, and its cameras see rectangles.

Lengths are given in centimetres: rays start about 9e-5 of the scene's coordinates off
their surface, which in metres would be wide. Lamps carry the 'null' material, so that light
passes them. Russian roulette starts late, since it takes the canopy's ρ for faintness.
"""

from __future__ import annotations

import importlib
import math
from typing import Any

import numpy as np
import numpy.typing as npt

from tests.reference.embree_walk import mesh_of
from tests.reference.spaces import Luminaire, Material, Scene

FloatArray = npt.NDArray[np.float64]

SCALE = 100.0
ABOVE = 0.005
"""Metres between canopy and the parallel camera: below every lamp and shelf."""

BELOW = 3e-4
"""Metres by which a lamp's face hangs below its housing: more than rays start off, or those
that pass the face would start inside the housing."""

INTEGRATORS = ("path", "ptracer")


def library(variant: str) -> Any:
    """The renderer, set to one of its variants."""
    mitsuba: Any = importlib.import_module("mitsuba")
    mitsuba.set_variant(variant)
    mitsuba.set_log_level(mitsuba.LogLevel.Error)
    return mitsuba


def can_show(scene: Scene) -> bool:
    """Whether the renderer can be given this scene with its own parts alone."""
    plain_lamps = all(
        lamp.planes is None and lamp.exponent == 1 and lamp.length > 0 and not lamp.tilted_deg
        for lamp in scene.lamps
    )
    return scene.closed and scene.canopy > 0 and len(scene.corners) == 4 and plain_lamps


class Rendered:
    """A scene loaded into one variant of the renderer."""

    def __init__(
        self,
        scene: Scene,
        variant: str = "llvm_ad_mono",
        integrator: str = "path",
        roulette: int = 40,
    ) -> None:
        self._mitsuba = library(variant)
        self._canopy = scene.canopy
        description = self._describe(scene, integrator, roulette)
        self._scene = self._mitsuba.load_dict(description)

    def density(self, samples: int, seed: int) -> FloatArray:
        """Flux density on the canopy (ny, nx) from ``samples`` paths or photons per cell."""
        picture = self._mitsuba.render(self._scene, spp=samples, seed=seed)
        values = np.asarray(picture, dtype=np.float64)
        values = values.reshape(values.shape[0], values.shape[1], -1)[:, :, 0]
        # Pictures run from the top.
        return values[::-1] * math.pi / self._canopy * SCALE**2

    def _describe(self, scene: Scene, integrator: str, roulette: int) -> dict[str, Any]:
        described: dict[str, Any] = {
            "type": "scene",
            "integrator": {"type": integrator, "max_depth": -1, "rr_depth": roulette},
            "sensor": self._sensor(scene, integrator),
        }
        mesh = mesh_of(scene)
        for k in range(0, len(mesh.triangles), 2):
            first, second = mesh.triangles[k], mesh.triangles[k + 1]
            corners = np.stack([first[0], first[1], first[2], second[2]])
            material = Material(mesh.diffuse[k], mesh.specular[k], mesh.width[k])
            described[f"quad{k}"] = self._quad(
                corners, {"type": "twosided", "bsdf": self._material(material)}
            )
        for number, lamp in enumerate(scene.lamps):
            described.update(self._lamp(lamp, number))
        return described

    def _transform(self, matrix: FloatArray) -> Any:
        return self._mitsuba.ScalarTransform4f(matrix)

    def _quad(self, corners: FloatArray, material: dict[str, Any]) -> dict[str, Any]:
        """A rectangle from corners (4, 3) in order; its normal by the right-hand rule."""
        c = corners * SCALE
        u, v = c[1] - c[0], c[3] - c[0]
        normal = np.cross(u, v)
        matrix = np.eye(4)
        matrix[:3, 0], matrix[:3, 1] = u / 2, v / 2
        matrix[:3, 2] = normal / np.linalg.norm(normal)
        matrix[:3, 3] = c[0] + u / 2 + v / 2
        return {"type": "rectangle", "to_world": self._transform(matrix), "bsdf": material}

    def _spectrum(self, value: float) -> dict[str, Any]:
        return {"type": "uniform", "value": float(value)}

    def _material(self, material: Material) -> dict[str, Any]:
        total = material.diffuse + material.specular
        diffuse = {"type": "diffuse", "reflectance": self._spectrum(total)}
        if material.specular == 0:
            return diffuse
        mirror: dict[str, Any] = {
            "type": "conductor",
            "material": "none",
            "specular_reflectance": self._spectrum(total),
        }
        if material.width > 0:
            width = float(material.width)
            mirror |= {"type": "roughconductor", "distribution": "ggx", "alpha": width}
        if material.diffuse == 0:
            return mirror
        share = float(material.specular / total)
        return {"type": "blendbsdf", "weight": share, "first": diffuse, "second": mirror}

    def _lamp(self, lamp: Luminaire, number: int) -> dict[str, Any]:
        """One-sided emitters: radiance L = Φ/(πA) gives the flux Φ by the cosine law."""
        area = lamp.bars * lamp.length * lamp.width * SCALE**2
        turned = math.radians(lamp.turned_deg)
        ex = np.array([math.cos(turned), math.sin(turned), 0.0])
        ey = np.array([-math.sin(turned), math.cos(turned), 0.0])
        parts = {}
        for k, offset in enumerate(lamp.offsets()):
            centre = np.array(lamp.at) + offset * ey - np.array([0.0, 0.0, BELOW])
            a, b = lamp.length / 2 * ex, lamp.width / 2 * ey
            face = np.stack([centre - a - b, centre - a + b, centre + a + b, centre + a - b])
            quad = self._quad(face, {"type": "null"})
            radiance = self._spectrum(lamp.ppf / (math.pi * area))
            quad["emitter"] = {"type": "area", "radiance": radiance}
            parts[f"lamp{number}-{k}"] = quad
        return parts

    def _sensor(self, scene: Scene, integrator: str) -> dict[str, Any]:
        corners = np.array(scene.corners)
        low, high = corners.min(axis=0), corners.max(axis=0)
        (x, y), (width, depth) = (low + high) / 2 * SCALE, (high - low) * SCALE
        transform = self._mitsuba.ScalarTransform4f
        canopy = scene.canopy_height * SCALE
        film = {
            "type": "hdrfilm",
            "width": scene.cells[0],
            "height": scene.cells[1],
            "pixel_format": "luminance",
            "component_format": "float32",
            "rfilter": {"type": "box"},
        }
        common = {"near_clip": 1e-3, "far_clip": 1e5, "film": film}
        sampler = {"type": "independent"}
        if integrator == "path":
            height = ABOVE * SCALE
            look = transform().look_at(
                origin=[x, y, canopy + height], target=[x, y, canopy], up=[0, 1, 0]
            )
            # The film's width decides the scale of both sides.
            if abs(width / scene.cells[0] - depth / scene.cells[1]) > 1e-6 * width:
                raise ValueError("the cells of the map must be square")
            half = transform().scale([width / 2, width / 2, 1])
            return {"type": "orthographic", "to_world": look @ half, "sampler": sampler} | common
        # The pinhole stands where nothing comes between it and the canopy.
        height = 0.4 * (min(lamp.at[2] for lamp in scene.lamps) * SCALE - canopy)
        look = transform().look_at(
            origin=[x, y, canopy + height], target=[x, y, canopy], up=[0, 1, 0]
        )
        angle = 2 * math.degrees(math.atan(width / 2 / height))
        return {
            "type": "perspective",
            "fov": angle,
            "fov_axis": "x",
            "to_world": look,
            "sampler": sampler,
        } | common
