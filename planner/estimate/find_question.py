"""What may be asked of find: an aim, what may be turned, wishes, and what cannot be asked."""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from enum import StrEnum

from planner.estimate.compare import Wishes
from planner.estimate.find_places import MOST_LAMPS
from planner.metrics.figures import daily_light_integral
from planner.plan.checks import UNLIT, findings
from planner.plan.dials import dial
from planner.plan.edits import changed
from planner.plan.lamp import Lamp
from planner.plan.lining import Lining
from planner.plan.place import Place, band_at, judged
from planner.plan.plan import Plan
from planner.plan.tiers import above, lamps_at, lighting, with_lamps
from planner.plan.turning import CEILING
from planner.units import said_length


class Aim(StrEnum):
    """What is wanted most."""

    EVEN = "most even"
    ENERGY = "least energy"
    CHEAP = "cheapest"


class Held(StrEnum):
    """Which light the wished DLI is asked of."""

    MEAN = "mean"
    LOWEST = "minimum"


class Turn(StrEnum):
    """What may be turned: numbers by their dials, and what is no number."""

    HEIGHT = "height"
    OUTPUT = "output"
    HOURS = "photoperiod"
    PLACES = "places"
    LAMPS = "lamps"
    LINING = "lining"


@dataclass(frozen=True)
class Question:
    """What is sought.

    Numbers of lamps in ``counts`` are tried where ``LAMPS`` may be turned, all of the kind of
    the plan's first lamp; ``linings`` at the place ``where`` (None: all walls) where
    ``LINING`` may, beside those there are. ``at`` says where in the wished band the light shall
    be, 0 at its lower end and 1 at its upper, as far as lamps and other wishes allow. Lengths are
    set to whole multiples of ``grain`` in metres.
    """

    aim: Aim = Aim.EVEN
    turn: frozenset[Turn] = frozenset({Turn.HEIGHT, Turn.OUTPUT})
    wishes: Wishes = field(default_factory=Wishes)
    held: Held = Held.MEAN
    counts: tuple[int, ...] = ()
    linings: tuple[Lining, ...] = ()
    where: Place | None = None
    at: float = 0.0
    grain: float = 0.01


class FindError(ValueError):
    """A question that cannot be asked of this plan; the message says what is missing."""


def wished_band(plan: Plan, entered: float = 0.0) -> tuple[float, float] | None:
    """The plan's target as a DLI at its hours; None without a target or without hours.

    ``entered`` is the light of the room on the canopy judged (µmol m⁻² s⁻¹), which has its own.
    """
    hours, room = plan.photoperiod_hours, plan.space.room_hours
    band = band_at(plan, judged(plan), entered)
    if band is None or hours <= 0:
        return None
    low, high = (daily_light_integral(end, hours, entered, room) for end in band)
    return low, high


def check(plan: Plan, question: Question) -> None:
    """Say what is missing for a question to be asked."""
    turn, wishes = question.turn, question.wishes
    low, high = wishes.dli_low, wishes.dli_high
    if not turn:
        raise FindError("Say what may be turned: height, output, hours, lamps or lining.")
    check_lamps(plan)
    if low is not None and high is not None and high <= low:
        raise FindError("The DLI wished must rise: from the lower end to the upper.")
    dims = bool(turn & {Turn.OUTPUT, Turn.HOURS})
    if low is None and dims and question.aim is not Aim.EVEN:
        raise FindError("Say how much light is wanted: without a least DLI no light is the best.")
    if low is not None and plan.photoperiod_hours <= 0 and Turn.HOURS not in turn:
        raise FindError("A DLI needs hours of light: set the photoperiod above 0 h.")
    if plan.costs.price_per_kwh is None and (question.aim is Aim.CHEAP or wishes.total is not None):
        raise FindError("Write the price of 1 kWh first: without it no total is known.")
    if Turn.LAMPS in turn and not question.counts:
        raise FindError("Say how many lamps may hang.")
    hang = len(lighting(plan))
    counts = question.counts if Turn.LAMPS in turn else (hang,)
    sought = turn & {Turn.LAMPS, Turn.PLACES}
    if Turn.PLACES not in turn:  # those that hang stay where they are: no place is sought
        counts = tuple(count for count in counts if count != hang)
    if sought and any(not 1 <= count <= MOST_LAMPS for count in counts):
        raise FindError(f"Places are sought for 1 to {MOST_LAMPS} lamps.")
    if Turn.LINING in turn and not question.linings:
        raise FindError("Tick the linings that may be put on.")
    if Turn.HEIGHT in turn:
        height_range(plan)


def check_lamps(plan: Plan) -> None:
    """Raise ``FindError`` where no lamp gives light, or none can on the canopy that is judged."""
    if not plan.lamps:
        raise FindError("Hang one lamp first.")
    if not any(lamp.output_percent > 0 for lamp in plan.lamps):
        raise FindError("No lamp is lit in the space; hang one first, or raise its output.")
    for one in findings(plan) if plan.judged_top is not None else ():
        if one.key == UNLIT:
            raise FindError(one.sentence)
    if not any(lamp.output_percent > 0 for lamp in lamps_at(plan, lighting(plan))):
        raise FindError(
            f"No lamp that is lit hangs over {judged(plan).inside(plan)}, by which the plan is "
            "judged: hang one there, or judge the plan by another canopy."
        )


def height_range(plan: Plan) -> tuple[float, float]:
    """Lowest and highest hanging height a search sets lamps to, in metres.

    Those over the canopy that the plan is judged by, and counted from it.

    Raises
    ------
    FindError
        If there is no room between them.
    """
    lamps = lighting(plan)
    room, over = dial("height").sound_in(plan, lamps), above(plan, lamps_at(plan, lamps))
    if room.maximum >= room.minimum:
        return room.minimum, room.maximum
    if room.why_most != CEILING:
        raise FindError(
            f"No one height suits all lamps: one must hang {said_length(round(room.minimum, 3))} "
            f"{over} or higher ({room.why_least}), one "
            f"{said_length(round(room.maximum, 3))} or lower ({room.why_most}). Leave their "
            "heights as they are, or hang the tier above higher."
        )
    raise FindError(
        f"Between canopy and ceiling there are {said_length(round(max(room.maximum, 0.0), 3))} "
        f"for the lamp to hang in; it needs {said_length(room.minimum)} {over}. "
        "Lower the canopy or raise the ceiling."
    )


def heights_to_set(plan: Plan, grain: float) -> list[float]:
    """All heights a search sets lamps to, rising, whole multiples of ``grain`` (metres).

    Raises
    ------
    FindError
        If there is no room to hang in.
    """
    low, high = height_range(plan)
    first, last = math.ceil(low / grain - 1e-6), math.floor(high / grain + 1e-6)
    return [round(k * grain, 6) for k in range(first, last + 1)] or [high]


def full_output(plan: Plan) -> Plan:
    """The plan with its brightest lamp at 100 % and the others in proportion."""
    return scaled_output(plan, 100.0 / output_of(plan))


def scaled_output(plan: Plan, share: float) -> Plan:
    """Every output over the canopy judged times a share, at most 100 %."""

    def dimmed(lamp: Lamp) -> Lamp:
        return lamp.model_copy(update={"output_percent": min(lamp.output_percent * share, 100.0)})

    turned = lighting(plan)
    lamps = tuple(dimmed(lamp) for lamp in lamps_at(plan, turned))
    return changed(plan, lamps=with_lamps(plan, turned, lamps))


def output_of(plan: Plan) -> float:
    """Output in per cent of the brightest lamp over the canopy that the plan is judged by."""
    return max(lamp.output_percent for lamp in lamps_at(plan, lighting(plan)))
