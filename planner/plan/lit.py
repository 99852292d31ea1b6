"""What an answer depends on: frozen values made from positive lists of fields.

``Lit`` is all that the light (PPFD, µmol s⁻¹) of a setup depends on, and nothing else: no
names, notes, prices, watts, ranges, target or hours. ``Counted`` is what figures add to the
light (watts, hours, the band wanted), ``Doubted`` what says how far the inputs may be off. Equality
of these values decides who computes anew; a field that is named in none of them changes no
answer. ``depends`` puts them together: whether an answer is still of a plan is asked of nothing
else. Two setups of equal ``Lit`` give the same map to the last bit, unless their lamps
stand in another order.
"""

from __future__ import annotations

import weakref
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import wraps
from typing import TypeVar

from planner.plan.costs import Costs
from planner.plan.lamp import (
    BarsBody,
    CosineProfile,
    Lamp,
    PanelBody,
    PlanesProfile,
    PointBody,
    TableProfile,
)
from planner.plan.lining import Lining
from planner.plan.place import (
    OWN,
    Place,
    PlaceKind,
    band_at,
    cleanness,
    judged,
    lining_at,
    opens,
    surfaces,
)
from planner.plan.plan import Plan, Setup
from planner.plan.space import Canopy, CarriedCanopy
from planner.plan.target import GrowthStage
from planner.plan.tiers import lamps_at, lighting, with_lamps
from planner.plan.wavebands import Wavebands

_Setup = TypeVar("_Setup", bound=Setup)
_Answer = TypeVar("_Answer")


def _once(make: Callable[[_Setup], _Answer]) -> Callable[[_Setup], _Answer]:
    """Keep the answer of a setup for as long as somebody holds that very frozen value.

    It is asked for of every side with every word that is written about it. An answer must not
    hold the setup, or neither would ever go.
    """
    kept: dict[int, tuple[weakref.ref[_Setup], _Answer]] = {}

    @wraps(make)
    def asked(setup: _Setup) -> _Answer:
        key = id(setup)
        found = kept.get(key)
        if found is not None and found[0]() is setup:
            return found[1]

        def forget(gone: weakref.ref[_Setup]) -> None:
            # By then another setup may have the same number.
            if kept.get(key, (None,))[0] is gone:
                kept.pop(key, None)

        made = make(setup)
        kept[key] = (weakref.ref(setup, forget), made)
        return made

    return asked


Optics = tuple[float, float, float, Wavebands | None] | None
"""Diffuse and specular reflectance, wrinkle and colour of a surface; None where nothing returns.

Colour counts where some lamp's is known, and is None elsewhere.
"""


_Leaves = tuple[float, Wavebands | None] | None
"""Reflectance and colour of leaves, as of ``Optics``; None where there are none."""


@dataclass(frozen=True)
class LitLamp:
    """What of a lamp the light depends on; ``ppf`` at its output, lengths in metres."""

    x: float
    y: float
    height: float
    rotation_deg: float
    tilt_deg: float
    ppf: float
    body: PointBody | PanelBody | BarsBody
    profile: CosineProfile | TableProfile | PlanesProfile | None
    housing_height: float
    housing_reflectance: float
    wavebands: Wavebands | None


@dataclass(frozen=True)
class Lit:
    """All that the light of a setup depends on.

    ``bands`` holds the upper edges of the bands of each wall, ``optics`` what each surface
    returns; a box ends with what the leaves it carries return. ``canopy`` is what those of a closed
    canopy return, None of an open one; the floor counts under an open one only.
    ``entering`` says by which wall the light of the room outside comes in, and how much.
    """

    footprint: tuple[tuple[float, float], ...]
    height: float
    bands: tuple[tuple[float | None, ...], ...]
    optics: tuple[tuple[Place, Optics], ...]
    boxes: tuple[tuple[float | _Leaves, ...], ...]
    canopy_height: float
    canopy: _Leaves
    lamps: tuple[LitLamp, ...]
    entering: tuple[int | None, float] | None = None


@_once
def lit(setup: Setup) -> Lit:
    """What the light of a setup (or plan) depends on."""
    canopy = setup.canopy
    return Lit(
        footprint=setup.space.footprint,
        height=setup.space.height,
        bands=tuple(tuple(band.top for band in cover.bands) for cover in setup.walls),
        optics=tuple((place, _optics(setup, place)) for place in _lit_surfaces(setup)),
        boxes=tuple(
            (
                *(o.x, o.y, o.underside, o.length, o.width, o.thickness, o.rotation_deg),
                _leaves(setup, o.canopy),
            )
            for o in setup.obstacles
        ),
        canopy_height=canopy.height,
        canopy=_leaves(setup, canopy if canopy.closed else None),
        lamps=tuple(_lamp(setup, lamp) for lamp in setup.lamps if _matters(lamp)),
        entering=(setup.space.door, setup.room_light) if setup.room_light else None,
    )


def _lit_surfaces(setup: Setup) -> Iterator[Place]:
    for place in surfaces(setup):
        if place.kind is not PlaceKind.FLOOR or not setup.canopy.closed:
            yield place


def _optics(setup: Setup, place: Place) -> Optics:
    lining = lining_at(setup, place)
    if lining is None or opens(setup, place) or lining.reflectance == 0:
        return None
    wrinkle = lining.wrinkle if lining.specular else 0.0
    clean = cleanness(setup, place)
    colour = lining.wavebands if _coloured(setup) else None
    return clean * lining.diffuse, clean * lining.specular, wrinkle, colour


def _coloured(setup: Setup) -> bool:
    return any(lamp.ppf > 0 and lamp.model.wavebands is not None for lamp in setup.lamps)


def _leaves(setup: Setup, canopy: Canopy | CarriedCanopy | None) -> _Leaves:
    if canopy is None:
        return None
    return canopy.reflectance, canopy.wavebands if _coloured(setup) else None


def _matters(lamp: Lamp) -> bool:
    return lamp.ppf > 0 or lamp.model.housing_height > 0


def _lamp(setup: Setup, lamp: Lamp) -> LitLamp:
    housed = lamp.model.housing_height > 0
    return LitLamp(
        x=lamp.x,
        y=lamp.y,
        height=setup.lamp_height(lamp),
        rotation_deg=lamp.rotation_deg,
        tilt_deg=lamp.tilt_deg,
        ppf=lamp.ppf,
        body=lamp.model.body,
        profile=lamp.model.profile if lamp.ppf > 0 else None,
        housing_height=lamp.model.housing_height,
        housing_reflectance=lamp.model.housing_reflectance if housed else 0.0,
        wavebands=lamp.model.wavebands if lamp.ppf > 0 else None,
    )


def same_light(one: Setup, other: Setup) -> bool:
    """Whether two setups (or plans) give the same light."""
    return lit(one) == lit(other)


@dataclass(frozen=True)
class Counted:
    """What the figures of a plan add to its light: watts, hours a day, the bands of PPFD.

    ``tops`` has the band of each obstacle whose canopy has a target of its own, ``room_hours``
    how long light comes in at the door.
    """

    watts: float
    hours: float
    band: tuple[float, float] | None
    tops: tuple[tuple[float, float] | None, ...] = ()
    room_hours: float = 0.0


def counted(plan: Plan) -> Counted:
    """What the figures of a plan add to its light."""
    hours = plan.photoperiod_hours
    band = band_at(plan, OWN)
    own = [None if one.canopy is None else one.canopy.target for one in plan.obstacles]
    tops = tuple(None if one is None else one.ppfd_band(hours) for one in own)
    room_hours = plan.space.room_hours if plan.room_light else 0.0
    return Counted(plan.watts, hours, band, tops if any(tops) else (), room_hours)


@dataclass(frozen=True)
class Doubted:
    """How far the inputs of the light may be off, and which of them are one and the same.

    Of each surface the lining's key and range, of each lamp its model's key and how far flux
    and beam may be off.
    """

    linings: tuple[tuple[Place, str, float, float], ...]
    lamps: tuple[tuple[str, float, float], ...]


@_once
def doubted(setup: Setup) -> Doubted:
    """How far the inputs of a setup may be off."""

    def ranges() -> Iterator[tuple[Place, str, float, float]]:
        for place in _lit_surfaces(setup):
            lining: Lining | None = lining_at(setup, place)
            if lining is not None and not opens(setup, place):
                yield place, lining.key, lining.low, lining.high

    models = (lamp.model for lamp in setup.lamps)
    lamps = tuple((m.key, m.ppf_uncertainty, m.beam_uncertainty_deg) for m in models)
    return Doubted(tuple(ranges()), lamps)


# -- answers ----------------------------------------------------------------------------


@dataclass(frozen=True)
class Depends:
    """What an answer about a plan depends on; None and () stand for what it does not."""

    light: Lit
    judged: Place
    figures: Counted | None
    dimmable: bool | None
    costs: Costs | None
    doubts: Doubted | None
    stages: tuple[GrowthStage, ...]


def depends(
    plan: Plan,
    freed: Callable[[Plan], Plan] | None = None,
    *,
    figures: bool = True,
    costs: bool = False,
    doubts: bool = False,
    stages: bool = False,
) -> Depends:
    """What an answer about a plan depends on; it holds as long as this is equal.

    ``freed`` puts whatever the question itself turns at values that are always the same, so that
    turning it does not take the answer away. An answer may tell of light alone (``figures``
    False), of money too, of how far the inputs may be off, of the stages of the schedule.
    """
    held = plan if freed is None else freed(plan)
    return Depends(
        light=lit(held),
        judged=judged(held),
        figures=counted(held) if figures else None,
        dimmable=plan.dimmable if figures else None,
        costs=plan.costs if costs else None,
        doubts=doubted(plan) if doubts else None,
        stages=plan.schedule if stages else (),
    )


def same_judged(one: Plan, other: Plan) -> bool:
    """Whether two plans have the same light and are judged by the same canopy."""
    return same_light(one, other) and judged(one) == judged(other)


def ungrown(plan: Plan) -> Plan:
    """The plan without what each stage of a schedule sets anew, for ``depends``.

    Canopy, hours, target and hanging heights are; of the outputs only what they are to each other
    stays, which a search never changes. Lamps that cannot be dimmed stay as they are. Where the
    plan is judged by the canopy on an obstacle, that one grows instead.
    """
    level = min(0.01, plan.space.height / 2)
    turned = lighting(plan)
    ours = lamps_at(plan, turned)
    most = max((lamp.output_percent for lamp in ours), default=0.0)
    dims = all(lamp.model.dimmable for lamp in ours)
    to_full = 100.0 / most if dims and most > 0 else 1.0
    # Those of other tiers stay where they hang, however high the plan's own canopy stands.
    still = 0.0 if plan.judged_top is not None else plan.canopy.height - level
    kept = [
        lamp.model_copy(update={"hanging_height": round(lamp.hanging_height + still, 9)})
        for lamp in plan.lamps
    ]
    freed = [
        lamp.model_copy(
            update={
                "hanging_height": level,
                "output_percent": round(min(lamp.output_percent * to_full, 100.0), 4),
            }
        )
        for lamp in ours
    ]
    lamps = with_lamps(plan.model_copy(update={"lamps": tuple(kept)}), turned, freed)
    grown: dict[str, object] = {"lamps": lamps, "photoperiod_hours": 0.0}
    if plan.judged_top is None:
        grown |= {"canopy": plan.canopy.model_copy(update={"height": level}), "target": None}
    else:
        tops = list(plan.obstacles)
        there = tops[plan.judged_top]
        leaves = there.canopy and there.canopy.model_copy(update={"target": None})
        tops[plan.judged_top] = there.model_copy(update={"thickness": level, "canopy": leaves})
        grown["obstacles"] = tuple(tops)
    return plan.model_copy(update=grown)
