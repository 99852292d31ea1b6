"""The kinds of scenes an estimate must get right, the hard ones among them. All invented."""

from __future__ import annotations

from tests.reference.spaces import (
    BLACK,
    Block,
    Luminaire,
    Material,
    Planes,
    Scene,
    box,
)

WHITE = Material(0.8, 0.05)
FOIL = Material(0.2, 0.65)
MIXED = Material(0.45, 0.45)
DARK = Material(0.05)
MIRROR = Material(0.0, 0.95)
GLOSSY = Material(0.5, 0.3)
CREASED = Material(0.1, 0.75, 0.25)
RIPPLED = Material(0.3, 0.5, 0.1)
SPHERE_WHITE = Material(0.95)

L_SHAPE = ((0.0, 0.0), (1.0, 0.0), (1.0, 0.5), (0.5, 0.5), (0.5, 1.0), (0.0, 1.0))

# A lamp that throws most of its light along its own x axis, and more one way than the other.
LOPSIDED = Planes(
    azimuths=(0.0, 45.0, 90.0, 180.0, 270.0),
    angles=(0.0, 20.0, 45.0, 70.0, 90.0),
    value=(
        (1.0, 1.3, 1.6, 0.8, 0.0),
        (1.0, 1.1, 1.0, 0.4, 0.0),
        (1.0, 0.8, 0.4, 0.1, 0.0),
        (1.0, 1.0, 0.9, 0.5, 0.1),
        (1.0, 0.7, 0.3, 0.1, 0.0),
    ),
)


def _plain(name: str, rho: Material, *lamps: Luminaire, size: float = 0.6) -> Scene:
    return Scene(name, box(size, size), 0.9, (rho,) * 4, rho, lamps)


def _tall(name: str, rho: Material) -> Scene:
    lamp = Luminaire((0.5, 0.5, 1.8), 0.4, 0.4, ppf=500.0)
    return Scene(name, box(1.0, 1.0), 2.0, (rho,) * 4, rho, (lamp,), canopy_height=0.3, canopy=0.1)


def _shelf_and_housing(name: str, rho: Material, *, closed: bool, housing: float) -> Scene:
    lamp = Luminaire((0.35, 0.3, 0.85), 0.3, 0.2, turned_deg=20.0, housing=housing, housing_rho=0.6)
    return Scene(
        name,
        box(0.8, 0.6),
        1.3,
        (rho,) * 4,
        rho,
        (lamp,),
        canopy_height=0.25,
        canopy=0.1,
        closed=closed,
        floor=Material(0.3, 0.4),
        blocks=(Block((0.62, 0.3, 0.5), (0.3, 0.35, 0.02), Material(0.4, 0.2)),),
    )


def _near(height: float, rho: Material) -> Scene:
    return _plain(
        f"lamp {height * 100:.0f} cm above the canopy",
        rho,
        Luminaire((0.3, 0.27, 0.1 + height), 0.25, 0.2),
    )


SCENES = (
    _tall("1 m x 1 m x 2 m, 0.45 + 0.45", MIXED),
    _near(0.05, WHITE),
    _near(0.15, FOIL),
    _plain("lamp in a corner", WHITE, Luminaire((0.08, 0.08, 0.4), 0.15, 0.15)),
    _plain("lamp against a wall", GLOSSY, Luminaire((0.3, 0.05, 0.6), 0.3, 0.08)),
    Scene(
        "bars at two walls",
        box(1.0, 0.7),
        1.0,
        (WHITE, FOIL, WHITE, FOIL),
        WHITE,
        (
            Luminaire((0.5, 0.03, 0.7), 0.8, 0.03),
            Luminaire((0.5, 0.67, 0.7), 0.8, 0.03),
        ),
    ),
    Scene(
        "three turned bars beside a wall",
        box(1.0, 0.7),
        1.0,
        (GLOSSY,) * 4,
        GLOSSY,
        (Luminaire((0.13, 0.35, 0.5), 0.5, 0.03, bars=3, spread=0.2, turned_deg=83.0),),
    ),
    Scene(
        "mirrors of 0.95",
        box(0.8, 0.8),
        1.2,
        (MIRROR,) * 4,
        WHITE,
        (Luminaire((0.4, 0.4, 0.9), 0.3, 0.3),),
    ),
    Scene(
        "four different walls",
        box(0.9, 0.6),
        1.2,
        (WHITE, FOIL, DARK, Material(0.6, 0.1)),
        GLOSSY,
        (Luminaire((0.35, 0.35, 0.8), 0.3, 0.2, exponent=2.0),),
    ),
    _plain("black walls", BLACK, Luminaire((0.25, 0.3, 0.5), 0.2, 0.1)),
    Scene(
        "integrating enclosure of 0.95",
        box(0.7, 0.7),
        0.8,
        (SPHERE_WHITE,) * 4,
        SPHERE_WHITE,
        (Luminaire((0.3, 0.4, 0.5), 0.1, 0.1),),
        canopy=0.5,
    ),
    Scene(
        "two lamps at different heights",
        box(1.2, 0.6),
        1.4,
        (MIXED,) * 4,
        WHITE,
        (
            Luminaire((0.3, 0.3, 0.5), 0.25, 0.25, ppf=60.0),
            Luminaire((0.9, 0.3, 1.1), 0.25, 0.25, ppf=140.0, exponent=3.0),
        ),
        cells=(12, 6),
    ),
    Scene(
        "lining on the upper half",
        box(0.8, 0.8),
        1.4,
        (((0.75, DARK), (1.4, FOIL)),) * 4,
        WHITE,
        (Luminaire((0.4, 0.35, 1.1), 0.3, 0.3),),
    ),
    Scene(
        "open door",
        box(0.8, 0.6),
        1.2,
        (WHITE,) * 4,
        WHITE,
        (Luminaire((0.4, 0.3, 0.8), 0.3, 0.2),),
        door=0,
    ),
    Scene(
        "L-shape with bands",
        L_SHAPE,
        1.4,
        (WHITE, ((0.7, DARK), (1.4, FOIL)), FOIL, WHITE, FOIL, WHITE),
        WHITE,
        (Luminaire((0.3, 0.3, 1.1), 0.3, 0.2, exponent=1.5),),
        canopy_height=0.3,
    ),
    Scene(
        "open canopy over a mirror",
        box(0.6, 0.9),
        1.0,
        (WHITE,) * 4,
        WHITE,
        (Luminaire((0.2, 0.5, 0.75), 0.2, 0.3),),
        canopy_height=0.25,
        closed=False,
        floor=Material(0.0, 0.9),
    ),
    _shelf_and_housing("shelf that shades", WHITE, closed=True, housing=0.0),
    _shelf_and_housing("shelf and lamp housing, mirrors", MIXED, closed=True, housing=0.06),
    _shelf_and_housing("shelf, housing, open canopy", MIXED, closed=False, housing=0.06),
    Scene(
        "occluding lamp close to a mirror ceiling",
        box(0.8, 0.6),
        0.8,
        (WHITE,) * 4,
        Material(0.1, 0.8),
        (Luminaire((0.4, 0.3, 0.6), 0.5, 0.35, housing=0.05, housing_rho=0.3),),
    ),
    _tall("wrinkled film, lobe 0.25", CREASED),
    Scene(
        "rippled film, lobe 0.1, lamp off centre",
        box(0.8, 0.6),
        1.2,
        (RIPPLED,) * 4,
        WHITE,
        (Luminaire((0.25, 0.2, 0.8), 0.2, 0.2),),
    ),
    Scene(
        "lopsided lamp, turned",
        box(1.0, 0.8),
        1.0,
        (MIXED,) * 4,
        WHITE,
        (Luminaire((0.4, 0.35, 0.7), 0.2, 0.1, planes=LOPSIDED, turned_deg=30.0),),
    ),
)
