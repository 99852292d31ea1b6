"""Any valid plan comes back from its file as it was; anything else is refused with words."""

from __future__ import annotations

import json
import math
from pathlib import Path
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from planner.files.disk import PlanFileError
from planner.files.store import plan_from_bytes, plan_to_bytes
from planner.plan.lamp import (
    BarsBody,
    CosineProfile,
    Lamp,
    LampModel,
    PanelBody,
    PointBody,
    TableProfile,
)
from planner.plan.lining import Band, Caution, Lining, WallCover
from planner.plan.plan import Plan
from planner.plan.space import CarriedCanopy, Obstacle, Space
from planner.plan.survey import Reading, Survey
from planner.plan.target import DliTarget, PpfdTarget
from tests.unit.files.valid_text import VALID, text

NOWHERE = Path("random.plan.json")
LABEL = st.text(st.characters(codec="utf-8"), min_size=1, max_size=20)


def between(low: float, high: float) -> st.SearchStrategy[float]:
    return st.floats(low, high, allow_nan=False)


@st.composite
def footprints(draw: st.DrawFn) -> tuple[tuple[float, float], ...]:
    """Corners on rays around a centre, in order of their angle: simple, counter-clockwise."""
    count = draw(st.integers(3, 9))
    turn = draw(between(0, 1))
    radii = [draw(between(0.3, 2.0)) for _ in range(count)]
    angles = [2 * math.pi * (k + turn) / count for k in range(count)]
    return tuple((r * math.cos(a), r * math.sin(a)) for r, a in zip(radii, angles, strict=True))


bodies = st.one_of(
    st.just(PointBody()),
    st.builds(PanelBody, length=between(0.01, 1), width=between(0.01, 1)),
    st.builds(
        BarsBody,
        count=st.integers(1, 4),
        length=between(0.1, 1),
        bar_width=between(0.01, 0.05),
        width=between(0.2, 1),
    ),
)
profiles = st.one_of(
    st.builds(CosineProfile, exponent=between(0, 60)),
    st.lists(between(0.1, 9), min_size=3, max_size=9).map(
        lambda values: TableProfile(
            angles_deg=tuple(180 * k / (len(values) - 1) for k in range(len(values))),
            relative=tuple(values),
        )
    ),
)
targets = st.one_of(
    st.none(),
    st.builds(PpfdTarget, low=between(0, 100), high=between(101, 5000), crop=st.just("herbs")),
    st.builds(DliTarget, low=between(0, 9), high=between(10, 100)),
)


@st.composite
def plans(draw: st.DrawFn) -> Plan:
    footprint = draw(footprints())
    height = draw(between(0.8, 4))
    canopy = draw(between(0, 0.3))
    keys = draw(st.lists(st.from_regex(r"[a-n][a-z0-9_-]{0,9}", fullmatch=True),
                         min_size=1, max_size=4, unique=True))  # fmt: skip
    linings = tuple(
        Lining(
            key=key, name=draw(LABEL), reflectance=draw(between(0.2, 0.8)), low=0.1, high=0.9,
            specular_share=draw(between(0, 1)),
            cautions=tuple(draw(st.sets(st.sampled_from(Caution)))),
        )
        for key in keys
    )  # fmt: skip
    covers = st.sampled_from([*keys, "open"])
    walls = []
    for _ in footprint:
        tops = [None] if draw(st.booleans()) else [draw(between(0.01, 0.5)), None]
        walls.append(WallCover(bands=tuple(Band(lining=draw(covers), top=top) for top in tops)))
    lamps = tuple(
        Lamp(
            model=LampModel(
                key="lamp", name=draw(LABEL), body=draw(bodies), profile=draw(profiles),
                ppf=draw(between(1, 100)), watts=draw(between(20, 200)),
            ),
            x=draw(between(-0.02, 0.02)), y=draw(between(-0.02, 0.02)),
            hanging_height=draw(between(0.01, 0.5)),
            rotation_deg=draw(between(-360, 360)), output_percent=draw(between(0, 100)),
        )
        for _ in range(draw(st.integers(0, 2)))
    )  # fmt: skip
    carried = st.builds(
        CarriedCanopy, reflectance=between(0, 1), target=targets, judged=st.booleans()
    )
    obstacles = tuple(
        Obstacle(
            name=draw(LABEL), x=draw(between(-0.02, 0.02)), y=draw(between(-0.02, 0.02)),
            underside=draw(between(0, 0.4)), thickness=draw(between(0.01, 0.4)),
            length=draw(between(0.01, 1)), width=draw(between(0.01, 1)),
            rotation_deg=draw(between(-360, 360)), lining=draw(covers),
            canopy=draw(st.none() | carried),
        )
        for _ in range(draw(st.integers(0, 2)))
    )  # fmt: skip
    surveys = tuple(
        Survey(
            key=f"survey-{k}", name=draw(LABEL), points=((0.0, 0.0), (0.01, 0.0)),
            on_top=draw(st.none() | st.sampled_from([o.top for o in obstacles] or [0.2])
                        | between(0, 4)),
            readings=(Reading(hole=2, value=draw(between(0, 3000)), aside=draw(st.booleans())),),
        )
        for k in range(draw(st.integers(0, 2)))
    )  # fmt: skip
    door = draw(st.none() | st.integers(0, len(footprint) - 1))
    return Plan.model_validate({
        "name": draw(LABEL),
        "note": draw(st.text(st.characters(codec="utf-8"), max_size=30)),
        "space": Space(footprint=footprint, height=height, door=door,
                       door_open=door is not None and draw(st.booleans())),
        "lamps": lamps, "obstacles": obstacles, "linings": linings, "walls": tuple(walls),
        "ceiling": draw(covers), "floor": draw(covers),
        "canopy": {"height": canopy, "closed": draw(st.booleans())},
        "photoperiod_hours": draw(between(0, 24)), "target": draw(targets),
        "surveys": surveys,
    })  # fmt: skip


@settings(max_examples=60)
@given(plans())
def test_save_then_load_is_the_same_plan(plan: Plan) -> None:
    data = plan_to_bytes(plan)
    again = plan_from_bytes(data, NOWHERE)
    assert again == plan
    assert plan_to_bytes(again) == data


def refused_or_read(data: bytes) -> None:
    refusal = "'random.plan.json' cannot be opened: not at all"
    try:
        plan_from_bytes(data, NOWHERE)
    except PlanFileError as error:
        refusal = str(error)
    assert refusal.startswith("'random.plan.json' cannot be opened: ")
    assert "\n" not in refusal


@given(st.binary(max_size=300))
def test_random_bytes_never_crash(data: bytes) -> None:
    refused_or_read(data)


VALUES = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=8),
    lambda inner: (
        st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=5), inner, max_size=3)
    ),
    max_leaves=6,
)  # fmt: skip


@given(st.dictionaries(st.sampled_from([*VALID, "other"]), VALUES, max_size=8))
def test_random_objects_with_a_plans_names_never_crash(raw: dict[str, Any]) -> None:
    refused_or_read(json.dumps({"format": 1, **raw}).encode())


def every_place(value: Any, way: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    """The way to every value inside a value."""
    steps = (
        value.items()
        if isinstance(value, dict)
        else enumerate(value)
        if isinstance(value, list)
        else ()
    )
    found = [way] if way else []
    for step, inner in steps:
        found += every_place(inner, (*way, step))
    return found


@settings(max_examples=150, deadline=None)
@given(st.sampled_from(every_place(VALID)), VALUES)
def test_a_random_value_at_any_place_never_crashes(way: tuple[Any, ...], value: Any) -> None:
    whole = json.loads(text())
    inner = whole
    for step in way[:-1]:
        inner = inner[step]
    inner[way[-1]] = value
    refused_or_read(json.dumps(whole).encode())


@given(st.integers(0, len(text()) - 1), st.binary(min_size=1, max_size=3))
def test_a_damaged_byte_never_crashes(at: int, damage: bytes) -> None:
    data = text()
    refused_or_read(data[:at] + damage + data[at + len(damage) :])
