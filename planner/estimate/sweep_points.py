"""The points of a sweep: what is gone over, with the values asked of it, and their computing.

One goes over a dial, the lining of a place or the kind of a lamp.

Points are computed in processes of their own, on this machine or on others (``cluster``).
"""

# ruff: noqa: PLC0415 - nothing heavy before a process was told to compute with one thread

from __future__ import annotations

import dataclasses
import math
import multiprocessing
import multiprocessing.connection
import os
import re
import signal
import threading
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Final

from planner.estimate.canopies import Standing, standings
from planner.language import inside, word
from planner.plan.changes import line, refit
from planner.plan.dials import DIALS, Dial, Redo, dial
from planner.plan.lamp import LampModel
from planner.plan.lining import Lining
from planner.plan.place import Place, PlaceKind, lining_at, place_named, surfaces
from planner.units import LengthUnit, parse_length

if TYPE_CHECKING:
    from planner.estimate.evaluate import Cache
    from planner.plan.plan import Plan


MAX_POINTS: Final = 20_000


class SweepError(ValueError):
    """A sweep that cannot be run; the message is the sentence to show."""


LINING: Final = "lining"
LAMP: Final = "lamp"
Step = float | Lining | LampModel
"""What one point of an axis is: a number in SI (output in percent), a lining, a kind of lamp."""


@dataclass(frozen=True)
class Over:
    """An axis: the key of a dial, 'lining' or 'lamp', and the values asked of it.

    Without a place a dial is turned at all of its places, a lining goes onto all walls, a kind
    of lamp takes the place of every lamp that hangs.

    Raises
    ------
    SweepError
        If there is no such dial; the message lists those there are.
    """

    axis: str
    values: tuple[Step, ...]
    place: Place | None = None

    def __post_init__(self) -> None:
        if self.axis not in {LINING, LAMP} and self.axis not in DIALS:
            raise SweepError(
                f"There is no number called '{self.axis}'; there is {LINING}, {LAMP}, "
                f"{', '.join(DIALS)}."
            )

    @property
    def dial(self) -> Dial | None:
        """The dial that is turned, where it is one."""
        return DIALS.get(self.axis)

    @property
    def redo(self) -> Redo:
        """What another value makes the core compute anew."""
        found = self.dial
        # A mirror-like lining changes the paths of light, a housing the surfaces.
        return Redo.GEOMETRY if found is None else found.redo

    def put(self, plan: Plan, value: Step) -> Plan:
        """The plan with one of the values; raises ``ValueError`` where it cannot be."""
        if isinstance(value, Lining):
            return line(plan, self.place, value)
        if isinstance(value, LampModel):
            return refit(plan, self.place, value)
        return dial(self.axis).put(plan, self.place, value)

    def now(self, plan: Plan) -> Step | None:
        """Where a plan stands on the axis; None where its places differ or there are none."""
        if (found := self.dial) is not None:
            return found.get(plan, self.place)
        if self.axis == LAMP:
            hung = plan.lamps if self.place is None else plan.lamps[self.place.index :][:1]
            models = [lamp.model for lamp in hung]
            return models[0] if models and all(one == models[0] for one in models) else None
        walls = [one for one in surfaces(plan) if one.kind is PlaceKind.WALL]
        linings = [lining_at(plan, one) for one in ([self.place] if self.place else walls)]
        return linings[0] if all(one == linings[0] for one in linings) else None

    def need(self, plan: Plan) -> None:
        """Raise ``SweepError`` where the plan has nothing that could be gone over."""
        place, found = self.place, self.dial
        if place is not None and not place.fits(plan):
            raise SweepError(f"There is no {inside(place.words(plan))} in '{plan.name}'.")
        if found is not None:
            if place is not None and found.get(plan, place) is None:
                raise SweepError(f"{place.words(plan)} has no {found.words}.")
        elif place is not None and (place.kind is PlaceKind.LAMP) != (self.axis == LAMP):
            raise SweepError(f"{place.words(plan)} has no {word(self.axis)} to go over.")

    def words(self, plan: Plan) -> str:
        """What is gone over: 'hanging height', 'output, lamp 2', 'lining, all walls'."""
        found = self.dial
        lead = word(self.axis) if found is None else found.words
        if self.place is not None and self.place.fits(plan):
            return f"{lead}, {inside(self.place.words(plan))}"
        return {LINING: "lining, all walls", LAMP: "kind of lamp"}.get(self.axis, lead)

    def text(self, value: Step, unit: LengthUnit) -> str:
        """A value for people: '30 cm', '75 %', 'White board'."""
        if isinstance(value, Lining | LampModel):
            return value.name
        return dial(self.axis).quantity.text(value, unit)


# -- reading what was asked -------------------------------------------------------------

_EXAMPLE: Final = (
    "write for example height=0.2:0.6:9, output@lamp-2=50,75,100 or lining=white-board,foil-matt"
)
_ALL: Final = "all"


def parse_over(
    text: str,
    linings: Mapping[str, Lining] | None = None,
    lamps: Mapping[str, LampModel] | None = None,
) -> Over:
    """Read ``height=0.2:0.6:9`` (from, to, how many), ``output@lamp-2=50,75,100``.

    Lengths are in metres unless they carry a unit (``20cm:60cm:9``), shares in per cent, with or
    without the sign. ``linings`` and ``lamps``
    are those of which ``lining@ceiling=white-board,foil-matt`` and ``lamp=all`` speak, by key.

    Raises
    ------
    SweepError
        If the text says no such thing.
    """
    named, equals, rest = text.partition("=")
    name, at, where = (part.strip() for part in named.partition("@"))
    try:
        axis = Over(name, (), place_named(where) if at else None)
    except SweepError:
        raise
    except ValueError as error:
        raise SweepError(str(error)) from error
    if not equals or not rest.strip():
        raise SweepError(f"'{text}' names no values; {_EXAMPLE}.")
    found = axis.dial
    if found is None:
        offered: Mapping[str, Step] = (linings if name == LINING else lamps) or {}
        return dataclasses.replace(axis, values=_chosen(rest, offered, name))
    parts = rest.split(":")
    if len(parts) == 1:
        values = tuple(_number(word, found, text) for word in rest.split(","))
        return dataclasses.replace(axis, values=values)
    if len(parts) != 3 or not re.fullmatch(r"\s*\d{1,5}\s*", parts[2]):
        raise SweepError(f"'{text}' is no range; {_EXAMPLE}.")
    low, high = (_number(part, found, text) for part in parts[:2])
    return over_range(name, low, high, int(parts[2]), axis.place)


def over_range(name: str, low: float, high: float, count: int, place: Place | None = None) -> Over:
    """``count`` values evenly from ``low`` to ``high``, both included.

    Of what is counted (bars) whole numbers in even steps, which may be fewer.
    """
    if count < 1 or (count == 1 and low != high):
        raise SweepError(f"A range of '{name}' from {low:g} to {high:g} needs at least two values.")
    if count == 1:
        return Over(name, (low,), place)
    step = (high - low) / (count - 1)
    if name in DIALS and DIALS[name].quantity.is_count:
        whole = range(round(low), round(high) + 1, max(round(step), 1))
        return Over(name, tuple(map(float, whole)), place)
    return Over(name, tuple(float(f"{low + k * step:.10g}") for k in range(count)), place)


def _chosen(rest: str, offered: Mapping[str, Step], noun: str) -> tuple[Step, ...]:
    keys = [key.strip() for key in rest.split(",")]
    if keys == [_ALL]:
        keys = list(offered)
    for key in keys:
        if key not in offered:
            known = ", ".join(offered)
            raise SweepError(f"There is no {word(noun)} '{key}'; there is {_ALL}, {known}.")
    return tuple(offered[key] for key in dict.fromkeys(keys))


def _number(word: str, found: Dial, text: str) -> float:
    word = word.strip()
    try:
        if found.quantity.is_length and re.match(r"[\d.,]+\s*[a-df-zA-Z\"'″′]", word):
            return parse_length(word, LengthUnit.CM, strict=False)
        # Whatever is read in per cent is typed in per cent: 20 of dust is 0.2 in the plan.
        typed = word.removesuffix("%") if found.quantity.suffix == "%" else word
        value = float(f"{float(typed) * found.quantity.factor:.12g}")
    except ValueError as error:
        raise SweepError(f"'{word}' in '{text}' is not a number; {_EXAMPLE}.") from error
    if not math.isfinite(value):
        raise SweepError(f"'{word}' in '{text}' is not a finite number; {_EXAMPLE}.")
    return value


# -- a worker's share -------------------------------------------------------
# Nothing heavy is imported before the process has been told to compute with one thread: two
# processes that each wanted both cores would only get in each other's way.

THREAD_VARIABLES: Final = (
    "OMP_NUM_THREADS",
    "OPENBLAS_NUM_THREADS",
    "MKL_NUM_THREADS",
    "VECLIB_MAXIMUM_THREADS",
)


@dataclass(frozen=True)
class Job:
    """What every worker is told: plan, axes (without values), map size, quality, seed."""

    plan: Plan
    axes: tuple[Over, ...]
    cells: tuple[int, int]
    quality: str
    seed: int


@dataclass(frozen=True)
class Done:
    """One finished point: its number and the figures by name, or the reason for none.

    ``band`` is that wanted on the canopy judged (µmol m⁻² s⁻¹). Where obstacles carry canopies
    ``overall`` has the figures of all together, ``beside`` where all but that one stand.
    """

    number: int
    figures: dict[str, float | None] | None
    problem: str = ""
    band: tuple[float, float] | None = None
    overall: dict[str, float | None] | None = None
    beside: tuple[Standing, ...] = ()


Numbered = tuple[int, tuple[Step, ...]]

_process: dict[str, Any] = {}
_of_thread = threading.local()
"""A scheduler's workers may compute in several threads; a cache belongs to one."""


def set_up(stop: Any) -> None:
    """Begin a worker process: one thread, and the event that tells it to stop.

    A parent that is killed cannot tell anything; its end is watched for. An interrupt goes to
    all processes of a terminal; the parent alone answers it, by the event.
    """
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    for variable in THREAD_VARIABLES:
        os.environ[variable] = "1"
    _process["stop"] = stop.is_set
    threading.Thread(target=_end_with_parent, name="parent", daemon=True).start()


def _end_with_parent() -> None:
    """End this process when the one that began it is gone, however it went."""
    parent = multiprocessing.parent_process()
    if parent is not None:
        multiprocessing.connection.wait([parent.sentinel])
        os._exit(1)


def run_here(job: Job, points: Sequence[Numbered]) -> list[Done]:
    """Compute points in a worker process; fewer come back when it was told to stop."""
    stop = _process.get("stop")
    if stop is not None and stop():
        return []  # before anything heavy is imported
    from planner.estimate.evaluate import Cache

    # One cache for as long as the worker lives: neighbouring points share most of it.
    if not hasattr(_of_thread, "cache"):
        _of_thread.cache = Cache()
    return run(job, points, _of_thread.cache, stop)


def run(
    job: Job,
    points: Sequence[Numbered],
    cache: Cache,
    cancelled: Callable[[], bool] | None = None,
) -> list[Done]:
    """Compute points one after another; fewer come back when ``cancelled`` said so."""
    from planner.estimate.evaluate import Cancelled, evaluate
    from planner.estimate.result import EstimateOptions, Quality
    from planner.plan.refusal import refusal

    options = EstimateOptions(job.cells, Quality(job.quality), job.seed)
    done = []
    for number, values in points:
        if cancelled is not None and cancelled():
            break
        try:
            plan = job.plan
            for one, value in zip(job.axes, values, strict=True):
                plan = one.put(plan, value)
            estimate = evaluate(plan, options, cache=cache, cancelled=cancelled)
        except Cancelled:
            break
        except ValueError as error:
            done.append(Done(number, None, refusal(error)))
        else:
            figures = dataclasses.asdict(estimate.figures)
            overall = dataclasses.asdict(estimate.overall) if estimate.tops else None
            others = standings(estimate)
            done.append(Done(number, figures, "", estimate.band, overall, others))
    return done
