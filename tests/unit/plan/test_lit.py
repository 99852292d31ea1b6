"""What an answer depends on, field by field: each is flipped and must fall on its stated side.

``SIDES`` is written by hand from what the light, the figures and their uncertainty are made
of. A field of a new or changed model that is not stated here fails.
"""

from __future__ import annotations

import typing
from collections import defaultdict
from collections.abc import Callable, Iterator
from enum import Enum
from typing import Any

import pydantic
import pytest

from planner.catalogue.library import load_catalogue, new_plan
from planner.plan import edits
from planner.plan.costs import Costs
from planner.plan.lamp import (
    BarsBody,
    CosineProfile,
    Lamp,
    LampModel,
    PanelBody,
    PlanesProfile,
    PointBody,
    TableProfile,
)
from planner.plan.lining import Band, Caution, Lining, WallCover
from planner.plan.lit import (
    counted,
    depends,
    doubted,
    lit,
    same_light,
    ungrown,
)
from planner.plan.place import judged
from planner.plan.plan import Plan, Setup
from planner.plan.space import Canopy, CarriedCanopy, Obstacle, Space
from planner.plan.target import DliTarget, PpfdTarget
from planner.plan.variant_edits import add_variants
from planner.plan.wavebands import LEAVES, Wavebands

SIDES = {
    "Plan": {
        "format": "", "name": "", "note": "", "target": "figures", "surveys": "", "variants": "",
        "baseline": "", "schedule": "", "costs": "",
        "space": "light", "lamps": "light figures doubts", "obstacles": "light doubts",
        "linings": "light doubts", "walls": "light doubts", "ceiling": "light doubts",
        "floor": "light doubts", "canopy": "light", "photoperiod_hours": "figures",
    },
    "Space": {"footprint": "light", "height": "light", "door": "light doubts",
              "door_open": "light figures doubts",
              "room_light": "light", "room_hours": "figures"},
    "Lamp": {"model": "light figures doubts", "x": "light", "y": "light",
             "hanging_height": "light", "rotation_deg": "light",
             "output_percent": "light figures", "label": "", "hours_run": "light",
             "dust": "light", "tilt_deg": "light"},
    "LampModel": {"key": "doubts", "name": "", "body": "light", "profile": "light",
                  "ppf": "light", "watts": "figures", "housing_height": "light",
                  "housing_reflectance": "light", "ppf_uncertainty": "doubts",
                  "beam_uncertainty_deg": "doubts", "source": "",
                  "note": "", "dimmable": "searches", "wavebands": "light",
                  "hours_to_90": "light"},
    "Wavebands": {"blue": "light", "green": "light", "red": "light", "far_red": "light"},
    "PointBody": {"kind": "light"},
    "PanelBody": {"kind": "light", "length": "light", "width": "light"},
    "BarsBody": {"kind": "light", "count": "light", "length": "light", "bar_width": "light",
                 "width": "light"},
    "CosineProfile": {"kind": "light", "exponent": "light"},
    "TableProfile": {"kind": "light", "angles_deg": "light", "relative": "light"},
    "PlanesProfile": {"kind": "light", "angles_deg": "light", "azimuths_deg": "light",
                      "relative": "light"},
    "Obstacle": {"name": "", "x": "light", "y": "light", "underside": "light", "length": "light",
                 "width": "light", "thickness": "light", "rotation_deg": "light",
                 "lining": "light doubts", "canopy": "light figures"},
    "CarriedCanopy": {"reflectance": "light", "wavebands": "light", "target": "figures",
                      "judged": "judged"},
    "Lining": {"key": "doubts", "name": "", "reflectance": "light", "specular_share": "light",
               "wrinkle": "light", "low": "doubts", "high": "doubts", "source": "",
               "cautions": "", "note": "", "wavebands": "light"},
    "WallCover": {"bands": "light doubts"},
    "Band": {"lining": "light doubts", "top": "light", "dirt": "light"},
    "Canopy": {"height": "light", "closed": "light doubts", "reflectance": "light",
               "wavebands": "light"},
    "PpfdTarget": {"kind": "figures", "low": "figures", "high": "figures", "crop": "",
                   "source": ""},
    "DliTarget": {"kind": "figures", "low": "figures", "high": "figures", "crop": "",
                   "source": ""},
}  # fmt: skip
"""Which of light, figures, doubts and the canopy judged by a field changes; '' for none of them."""

APART = {"surveys", "variants", "schedule", "costs"}
"""Parts of a plan that hold other things than its own light: all their fields change nothing."""


def sample(*, closed: bool) -> Plan:
    """A plan in which every field counts, under a closed or over an open canopy."""

    def lining(key: str, rho: float) -> Lining:
        return Lining(key=key, name=key.title(), reflectance=rho, specular_share=0.5, wrinkle=0.2,
                      low=rho - 0.1, high=rho + 0.1,
                      wavebands=Wavebands(blue=0.6, green=0.7, red=0.8, far_red=0.9))  # fmt: skip

    def lamp(x: float, key: str, body: Any, profile: Any) -> Lamp:
        model = LampModel(key=key, name=key.title(), body=body, profile=profile, ppf=80, watts=40,
                          hours_to_90=30_000,
                          housing_height=0.04, housing_reflectance=0.4,
                          wavebands=Wavebands(blue=1, green=2, red=3, far_red=0.5))  # fmt: skip
        return Lamp(model=model, x=x, y=0.3, hanging_height=0.4, rotation_deg=10, hours_run=4000)

    planes = PlanesProfile(
        angles_deg=(0, 45, 90), azimuths_deg=(0, 90), relative=((1, 0.8, 0), (1, 0.5, 0))
    )
    bars = BarsBody(count=2, length=0.2, bar_width=0.02, width=0.1)
    pot = Obstacle(x=0.8, y=0.4, underside=0.3, length=0.1, width=0.12, thickness=0.2,
                   rotation_deg=15, lining="clay",
                   canopy=CarriedCanopy(target=PpfdTarget(low=80, high=90),
                                        wavebands=LEAVES))  # fmt: skip
    return Plan(
        space=Space(
            footprint=((0, 0), (1, 0), (1, 0.6), (0, 0.6)), height=1.4, door=0, door_open=True,
            room_light=20,
        ),
        lamps=(
            lamp(0.2, "spot", PointBody(), CosineProfile(exponent=2)),
            lamp(0.5, "panel", PanelBody(length=0.2, width=0.1),
                 TableProfile(angles_deg=(0, 40, 90), relative=(1, 0.7, 0))),
            lamp(0.8, "bars", bars, planes),
        ),
        obstacles=(pot,),
        linings=(lining("paint", 0.8), lining("foil", 0.7), lining("clay", 0.3)),
        walls=(
            WallCover.plain("paint"),
            WallCover(bands=(Band(lining="paint", top=0.6), Band(lining="foil"))),
            WallCover.plain("foil"),
            WallCover.plain("paint"),
        ),
        ceiling="paint",
        floor="clay",
        canopy=Canopy(height=0.2, closed=closed, reflectance=0.1, wavebands=LEAVES),
        target=PpfdTarget(low=100, high=200) if closed else DliTarget(low=8, high=12),
    )  # fmt: skip


def models_of(kind: object, seen: dict[str, type[pydantic.BaseModel]]) -> None:
    """All models reachable from an annotation, but for those in the parts apart."""
    for part in typing.get_args(kind):
        models_of(part, seen)
    is_model = isinstance(kind, type) and issubclass(kind, pydantic.BaseModel)
    model = typing.cast("type[pydantic.BaseModel]", kind)
    if is_model and model.__name__ not in seen:
        seen[model.__name__] = model
        for name, field in model.model_fields.items():
            if not (model is Plan and name in APART):
                models_of(field.annotation, seen)


def test_every_field_of_every_model_is_stated() -> None:
    seen: dict[str, type[pydantic.BaseModel]] = {}
    models_of(Plan, seen)
    assert {name: set(model.model_fields) for name, model in seen.items()} == {
        name: set(fields) for name, fields in SIDES.items()
    }
    assert set(Plan.model_fields) >= APART


# -- flipping ---------------------------------------------------------------------------

OTHER: dict[str, tuple[Any, ...]] = {
    "Plan.format": (), "Plan.baseline": (), "PointBody.kind": (), "PanelBody.kind": (),
    "BarsBody.kind": (), "CosineProfile.kind": (), "TableProfile.kind": (),
    "PlanesProfile.kind": (), "PpfdTarget.kind": (), "DliTarget.kind": (),
    "Space.footprint": (((0, 0), (1, 0), (1, 0.6), (0.05, 0.6)),),
    "Space.door": (1,),
    "Plan.ceiling": ("clay", "open"), "Plan.floor": ("foil", "open"),
    "Band.lining": ("clay", "open"), "Obstacle.lining": ("foil", "open"),
    "Band.top": (0.7,),
    "Obstacle.canopy": (None,), "CarriedCanopy.target": (None,),
    "Canopy.wavebands": (None,), "CarriedCanopy.wavebands": (None,),
    "Plan.target": (None,), "PpfdTarget.crop": ("herbs",), "DliTarget.crop": ("herbs",),
    "Lining.cautions": ((Caution.BURNS,),),
    "BarsBody.count": (3,),
    "Plan.photoperiod_hours": (12.0,),
    "Lamp.output_percent": (70.0,),
}  # fmt: skip
"""Other valid values, where the rule of ``others`` has none; () where a field cannot vary."""


def others(path: str, value: Any) -> tuple[Any, ...]:
    if path == "Band.top" and value is None:
        return ()  # the uppermost band always ends at the ceiling
    if path in OTHER:
        return OTHER[path]
    match value:
        case bool():
            return (not value,)
        case str() if not isinstance(value, Enum):
            return (value + "x",)
        case float() | int():
            return (value * 0.97 + 0.001,)
        case tuple() if value and isinstance(value[0], pydantic.BaseModel):
            return ()  # its entries are flipped
        case tuple() if value and isinstance(value[0], tuple):
            return ((*value[:-1], (*value[-1][:-1], value[-1][-1] + 0.05)),)
        case tuple() if value:
            return ((*value[:-1], value[-1] - 0.05 if value[-1] > 0 else 0.05),)
    return ()


def flips(value: pydantic.BaseModel) -> Iterator[tuple[str, pydantic.BaseModel]]:
    """Each field, here or deeper, with the model rebuilt around another value of it."""
    kind = type(value).__name__
    for name in type(value).model_fields:
        if kind == "Plan" and name in APART:
            continue
        inner = getattr(value, name)
        path = f"{kind}.{name}"
        for other in others(path, inner):
            yield path, value.model_copy(update={name: other})
        parts = inner if isinstance(inner, tuple) else (inner,)
        for k, part in enumerate(parts):
            if isinstance(part, pydantic.BaseModel):
                for deeper, made in flips(part):
                    whole = (*inner[:k], made, *inner[k + 1 :]) if part is not inner else made
                    yield deeper, value.model_copy(update={name: whole})


def rekeyed(plan: Plan) -> Plan:
    """A lining's key is flipped together with what names it."""
    known = {lining.key for lining in plan.linings} | {"open"}
    new = next((key for key in known if key.endswith("x")), "")

    def key(old: str) -> str:
        return old if old in known else new

    walls = tuple(
        WallCover(bands=tuple(b.model_copy(update={"lining": key(b.lining)}) for b in w.bands))
        for w in plan.walls
    )
    obstacles = tuple(o.model_copy(update={"lining": key(o.lining)}) for o in plan.obstacles)
    return plan.model_copy(
        update={"walls": walls, "obstacles": obstacles, "ceiling": key(plan.ceiling),
                "floor": key(plan.floor)}
    )  # fmt: skip


def sides(one: Plan, other: Plan) -> set[str]:
    compared: dict[str, Callable[[Plan], object]] = {
        "light": lit,
        "figures": counted,
        "doubts": doubted,
        "judged": judged,
    }
    found = {word for word, of in compared.items() if of(one) != of(other)}
    # What a search may turn is not light: it counts where only that differs.
    return found or ({"searches"} if depends(one) != depends(other) else set())


def test_each_field_falls_on_its_side() -> None:
    found: dict[str, set[str]] = defaultdict(set)
    tried: set[str] = set()
    for plan in (sample(closed=True), sample(closed=False)):
        for path, made in flips(plan):
            whole = rekeyed(typing.cast("Plan", made)) if path == "Lining.key" else made
            other = Plan.model_validate(whole.model_dump())
            assert other != plan, path
            tried.add(path)
            found[path] |= sides(plan, other)
    stated = {
        f"{model}.{name}": set(words.split())
        for model, fields in SIDES.items()
        for name, words in fields.items()
    }
    assert {path: found[path] for path in tried} == {path: stated[path] for path in tried}
    # What was not flipped itself is a single literal, or made of fields that were.
    rest = set(stated) - tried
    made_of_parts = {"Plan.lamps", "Plan.obstacles", "Plan.linings", "Plan.walls", "Plan.space",
                     "Plan.canopy", "Lamp.model", "LampModel.body", "LampModel.profile",
                     "LampModel.wavebands", "Lining.wavebands",
                     "WallCover.bands"}  # fmt: skip
    apart = {f"Plan.{name}" for name in APART}
    assert rest == made_of_parts | apart | {path for path, values in OTHER.items() if not values}


def test_what_stands_apart_changes_nothing() -> None:
    plan = sample(closed=True)
    made = add_variants(plan, ("Dim", edits.change_lamp(plan, 0, output_percent=10)))
    made = edits.changed(made, baseline="variant-1", costs=Costs(price_per_kwh=0.3))
    assert depends(plan) == depends(made)
    assert sides(plan, made) == set()


def test_what_nobody_sees_is_no_light() -> None:
    closed = sample(closed=True)
    assert same_light(closed, edits.changed(closed, floor="open")), "the floor below the leaves"
    opened = sample(closed=False)
    reflecting = edits.set_canopy(opened, reflectance=0.5)
    assert same_light(opened, reflecting), "an open canopy is only a level"
    # What the door carries does not count while it stands open; where it is shut it does.
    assert same_light(closed, edits.changed(closed, walls=(closed.walls[2], *closed.walls[1:])))
    shut = edits.with_space(closed, door_open=False)
    assert not same_light(shut, edits.changed(shut, walls=(shut.walls[2], *shut.walls[1:])))


@pytest.mark.parametrize("part", [0, 1, 2])
def test_half_the_flux_at_twice_the_output_is_the_same_light(part: int) -> None:
    plan = edits.change_lamp(sample(closed=True), part, output_percent=50.0)
    model = plan.lamps[part].model.model_copy(update={"ppf": 40.0})
    other = edits.change_lamp(plan, part, model=model, output_percent=100.0)
    assert same_light(plan, other)
    assert isinstance(plan.setup, Setup)
    assert lit(plan.setup) == lit(plan)


def test_answers_are_kept_for_the_very_same_value_only() -> None:
    plan = new_plan(load_catalogue())
    copy = plan.model_copy()
    assert lit(plan) is lit(plan)
    assert lit(copy) == lit(plan)
    assert lit(copy) is not lit(plan)
    before = lit(plan)
    for k in range(300):  # many others come and go
        lit(edits.set_canopy_height(plan, 0.1 + 0.001 * k))
    assert lit(plan) == before


# -- answers -------------------------------------------------------------------------------


def test_an_answer_with_totals_depends_on_prices_and_one_of_light_does_not() -> None:
    plan = sample(closed=True)
    dearer = edits.changed(plan, costs=Costs(price_per_kwh=0.3))
    assert depends(plan) == depends(dearer)
    assert depends(plan, costs=True) != depends(dearer, costs=True)
    longer = edits.changed(plan, photoperiod_hours=12.0)
    assert depends(plan) != depends(longer)
    assert depends(plan, figures=False) == depends(longer, figures=False)


def test_what_a_stage_sets_anew_does_not_take_the_answers_of_a_schedule_away() -> None:
    plan = sample(closed=True)
    asked = depends(plan, ungrown)
    for turned in (
        edits.change_lamp(plan, 0, hanging_height=0.3),
        edits.each_lamp(plan, lambda lamp: edits.changed(lamp, output_percent=40.0)),
        edits.set_canopy(plan, height=0.15),
        edits.changed(plan, photoperiod_hours=12.0, target=None),
    ):
        assert turned != plan
        assert depends(turned, ungrown) == asked
    # One of three dimmed is another light at every output; a fixed lamp keeps its own.
    assert depends(edits.change_lamp(plan, 0, output_percent=40.0), ungrown) != asked
    assert depends(edits.change_lamp(plan, 0, x=0.25), ungrown) != asked
    fixed = edits.each_lamp(
        plan, lambda lamp: edits.changed(lamp, model=edits.changed(lamp.model, dimmable=False))
    )
    dimmed = edits.each_lamp(fixed, lambda lamp: edits.changed(lamp, output_percent=40.0))
    assert depends(fixed, ungrown) != depends(dimmed, ungrown)
