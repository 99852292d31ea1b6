"""What a sweep can run over: one number of a plan, by name.

Any edit of ``planner.plan.edits`` that takes a plan and one number is an axis too, under
its own name (``set_height``).
"""

from __future__ import annotations

import inspect
import math
import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from planner.plan import edits
from planner.plan.lamp import Lamp
from planner.plan.lining import OPENING_KEY, Band, Lining, WallCover
from planner.plan.plan import Plan
from planner.units import LengthUnit, parse_length

MAX_POINTS: Final = 20_000


class SweepError(ValueError):
    """A sweep that cannot be run; the message is the sentence to show."""


@dataclass(frozen=True)
class Axis:
    """A number of a plan that can be swept.

    ``put`` gives the plan with another value; ``now`` reads the present one, or None where
    it has no single one. ``cost`` orders axes by how much an edit along them makes the core
    redo: what costs most is varied least often.
    """

    name: str
    label: str
    unit: str
    put: Callable[[Plan, float], Plan]
    now: Callable[[Plan], float | None]
    cost: int = 1
    is_length: bool = False


@dataclass(frozen=True)
class Over:
    """An axis by name and the values asked of it, in SI (output in percent)."""

    axis: str
    values: tuple[float, ...]


def axis(name: str) -> Axis:
    """The axis of a name.

    Raises
    ------
    SweepError
        If there is none; the message lists those there are.
    """
    known = AXES.get(name)
    if known is not None:
        return known
    edit = getattr(edits, name, None)
    if edit is not None and _takes_one_number(edit):
        return Axis(name, name.replace("_", " "), "", edit, lambda _: None, cost=3)
    raise SweepError(
        f"There is nothing called '{name}' to sweep over; there is {', '.join(AXES)}, and any edit "
        "of one number, such as set_height."
    )


def _takes_one_number(edit: Callable[..., object]) -> bool:
    if not inspect.isfunction(edit) or edit.__name__.startswith("_"):
        return False
    parameters = list(inspect.signature(edit).parameters.values())
    kinds = [str(p.annotation) for p in parameters]
    return kinds == ["Plan", "float"]


# -- reading what was asked -------------------------------------------------------------

_EXAMPLE: Final = "write for example height=0.2:0.6:9 or output=50,75,100"


def parse_over(text: str) -> Over:
    """Read ``height=0.2:0.6:9`` (from, to, how many) or ``output=50,75,100``.

    Lengths are in metres unless they carry a unit (``20cm:60cm:9``).

    Raises
    ------
    SweepError
        If the text says no such thing.
    """
    name, equals, rest = text.partition("=")
    found = axis(name.strip())
    if not equals or not rest.strip():
        raise SweepError(f"'{text}' names no values; {_EXAMPLE}.")
    parts = rest.split(":")
    if len(parts) == 1:
        return Over(found.name, tuple(_number(word, found, text) for word in rest.split(",")))
    if len(parts) != 3 or not re.fullmatch(r"\s*\d{1,5}\s*", parts[2]):
        raise SweepError(f"'{text}' is no range; {_EXAMPLE}.")
    return over_range(
        found.name,
        _number(parts[0], found, text),
        _number(parts[1], found, text),
        int(parts[2]),
    )


def over_range(name: str, low: float, high: float, count: int) -> Over:
    """``count`` values evenly from ``low`` to ``high``, both included."""
    if count < 1 or (count == 1 and low != high):
        raise SweepError(f"A range of '{name}' from {low:g} to {high:g} needs at least two values.")
    if count == 1:
        return Over(name, (low,))
    step = (high - low) / (count - 1)
    return Over(name, tuple(float(f"{low + k * step:.10g}") for k in range(count)))


def _number(word: str, found: Axis, text: str) -> float:
    word = word.strip()
    try:
        if found.is_length and re.match(r"[\d.,]+\s*[a-df-zA-Z\"'″′]", word):
            return parse_length(word, LengthUnit.CM)
        value = float(word)
    except ValueError as error:
        raise SweepError(f"'{word}' in '{text}' is not a number; {_EXAMPLE}.") from error
    if not math.isfinite(value):
        raise SweepError(f"'{word}' in '{text}' is not a finite number; {_EXAMPLE}.")
    return value


# -- the axes ---------------------------------------------------------------------------


def _need_lamps(plan: Plan) -> tuple[Lamp, ...]:
    if not plan.lamps:
        raise SweepError("No lamp hangs in the space, so there is nothing of a lamp to sweep.")
    return plan.lamps


def _shared(values: list[float]) -> float | None:
    """The value all have in common, or None."""
    return values[0] if values and max(values) - min(values) < 1e-9 else None


def _put_lamps(field: str) -> Callable[[Plan, float], Plan]:
    def put(plan: Plan, value: float) -> Plan:
        for index in range(len(_need_lamps(plan))):
            plan = edits.change_lamp(plan, index, **{field: value})
        return plan

    return put


def _wall_linings(plan: Plan) -> tuple[Lining, ...]:
    keys = dict.fromkeys(b.lining for cover in plan.walls for b in cover.bands)
    return tuple(plan.lining(key) for key in keys if key != OPENING_KEY)


def put_wall_reflectance(plan: Plan, value: float) -> Plan:
    """Give every lined wall this reflectance at the specular share its lining has."""
    if not 0 <= value <= 1:
        raise SweepError(f"A reflectance lies between 0 and 1; {value:g} does not.")
    taken = {lining.key for lining in plan.linings}
    made: dict[str, Lining] = {}
    for number, lining in enumerate(_wall_linings(plan)):
        key = f"swept-{number + 1}"
        while key in taken:
            key += "-"
        made[lining.key] = lining.model_copy(
            update={
                "key": key,
                # Said in the name, for a plan that adopts it; names hold 120 characters.
                "name": f"{lining.name[:90]}, taken as {100 * value:.0f} %",
                "reflectance": value,
                "low": value,
                "high": value,
                "source": f"A value tried in a sweep in place of {lining.reflectance:g}; "
                f"that one came from: {lining.source}"[:4000],
            }
        )
    if not made:
        raise SweepError("Every wall is open, so there is no reflectance to sweep.")
    walls = tuple(
        WallCover(
            bands=tuple(
                Band(lining=made[b.lining].key if b.lining in made else b.lining, top=b.top)
                for b in cover.bands
            )
        )
        for cover in plan.walls
    )
    return edits.changed(plan, walls=walls, linings=(*plan.linings, *made.values()))


def _put_width(plan: Plan, value: float) -> Plan:
    _, y0, _, y1 = plan.space.bounds
    return edits.set_size(plan, value, y1 - y0)


def _put_depth(plan: Plan, value: float) -> Plan:
    x0, _, x1, _ = plan.space.bounds
    return edits.set_size(plan, x1 - x0, value)


def _put_size(plan: Plan, value: float) -> Plan:
    x0, y0, x1, y1 = plan.space.bounds
    return edits.set_size(plan, (x1 - x0) * value, (y1 - y0) * value)


def _width(plan: Plan) -> float:
    return plan.space.bounds[2] - plan.space.bounds[0]


def _depth(plan: Plan) -> float:
    return plan.space.bounds[3] - plan.space.bounds[1]


def lamp_spacing(plan: Plan) -> float | None:
    """Smallest distance between the centres of two lamps in metres; None below two."""
    places = [(lamp.x, lamp.y) for lamp in plan.lamps]
    gaps = [math.dist(a, b) for k, a in enumerate(places) for b in places[k + 1 :]]
    return min(gaps, default=None)


def _put_spacing(plan: Plan, value: float) -> Plan:
    """Spread the lamps about their middle until the nearest two are this far apart."""
    present = lamp_spacing(plan)
    if present is None or present < 1e-6:
        raise SweepError("The spacing of lamps needs at least two that hang in different places.")
    x = sum(lamp.x for lamp in plan.lamps) / len(plan.lamps)
    y = sum(lamp.y for lamp in plan.lamps) / len(plan.lamps)
    spread = value / present

    def moved(lamp: Lamp) -> Lamp:
        place = {"x": x + (lamp.x - x) * spread, "y": y + (lamp.y - y) * spread}
        return lamp.model_copy(update=place)

    return edits.each_lamp(plan, moved)


def _put_photoperiod(plan: Plan, value: float) -> Plan:
    return edits.changed(plan, photoperiod_hours=value)


def _put_canopy_reflectance(plan: Plan, value: float) -> Plan:
    return edits.set_canopy(plan, reflectance=value)


AXES: Final[dict[str, Axis]] = {
    found.name: found
    for found in (
        Axis(
            "height",
            "hanging height",
            "m",
            _put_lamps("hanging_height"),
            lambda plan: _shared([lamp.hanging_height for lamp in plan.lamps]),
            is_length=True,
        ),
        Axis(
            "output",
            "output",
            "%",
            _put_lamps("output_percent"),
            lambda plan: _shared([lamp.output_percent for lamp in plan.lamps]),
            cost=0,
        ),
        Axis(
            "reflectance",
            "wall reflectance",
            "1",
            put_wall_reflectance,
            lambda plan: _shared([lining.reflectance for lining in _wall_linings(plan)]),
            cost=2,
        ),
        Axis("width", "footprint width", "m", _put_width, _width, 3, is_length=True),
        Axis("depth", "footprint depth", "m", _put_depth, _depth, 3, is_length=True),
        Axis("size", "footprint size, times as drawn", "1", _put_size, lambda _: 1.0, 3),
        Axis("spacing", "lamp spacing", "m", _put_spacing, lamp_spacing, is_length=True),
        Axis(
            "canopy",
            "canopy height",
            "m",
            edits.set_canopy_height,
            lambda plan: plan.canopy.height,
            3,
            is_length=True,
        ),
        Axis(
            "space-height",
            "inside height",
            "m",
            edits.set_height,
            lambda plan: plan.space.height,
            3,
            is_length=True,
        ),
        Axis(
            "canopy-reflectance",
            "canopy reflectance",
            "1",
            _put_canopy_reflectance,
            lambda plan: plan.canopy.reflectance,
            2,
        ),
        Axis(
            "photoperiod",
            "photoperiod",
            "h",
            _put_photoperiod,
            lambda plan: plan.photoperiod_hours,
            0,
        ),
    )
}
