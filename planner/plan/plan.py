"""The plan: everything the user decided, in one immutable value.

The setup is what is built and decided by the light. A plan is a setup with a name, a target,
surveys and more; a variant is a setup kept whole.
"""

from __future__ import annotations

from typing import Annotated, Final, Literal, Self

from pydantic import Field, model_validator

from planner.plan.costs import Costs
from planner.plan.lamp import Lamp, ppf_of, watts_of
from planner.plan.lining import OPENING, OPENING_KEY, Lining, WallCover
from planner.plan.quantity import (
    HANGING_HEIGHT,
    MAX_CORNERS,
    MAX_LAMPS,
    MAX_LININGS,
    MAX_OBSTACLES,
    Hours,
    Key,
    Name,
    Text,
    Value,
)
from planner.plan.space import Canopy, CarriedCanopy, Obstacle, Space, contains, sticks_out
from planner.plan.survey import MAX_SURVEYS, Survey, survey_problem
from planner.plan.target import MAX_STAGES, GrowthStage, Target
from planner.units import said_length


class Setup(Value):
    """A grow space with its lamps, linings and canopy.

    The linings in use travel inside, so that it means the same on another machine; walls,
    ceiling and floor name them by key. The key ``open`` always stands for an opening.
    """

    space: Space
    lamps: Annotated[tuple[Lamp, ...], Field(max_length=MAX_LAMPS)] = ()
    obstacles: Annotated[tuple[Obstacle, ...], Field(max_length=MAX_OBSTACLES)] = ()
    linings: Annotated[tuple[Lining, ...], Field(max_length=MAX_LININGS)] = ()
    walls: Annotated[tuple[WallCover, ...], Field(max_length=MAX_CORNERS)] = Field(
        description="One cover per wall, in wall order."
    )
    ceiling: Key = OPENING_KEY
    floor: Key = OPENING_KEY
    canopy: Canopy = Canopy()
    photoperiod_hours: Hours = 16.0

    @model_validator(mode="after")
    def _check_setup(self) -> Self:
        if len(self.walls) != self.space.wall_count:
            raise ValueError(
                f"the footprint has {self.space.wall_count} walls, but {len(self.walls)} wall "
                "covers are given; give one for each wall."
            )
        self._check_linings()
        if self.canopy.height > self.space.height - 0.01:
            raise ValueError(
                f"the canopy at {said_length(self.canopy.height)} does not fit under the ceiling "
                f"at {said_length(self.space.height)}; lower the canopy or raise the ceiling."
            )
        for number, lamp in enumerate(self.lamps, start=1):
            self._check_lamp(number, lamp)
        for number, obstacle in enumerate(self.obstacles, start=1):
            self._check_obstacle(number, obstacle)
        return self

    def _check_linings(self) -> None:
        keys = [lining.key for lining in self.linings]
        for key in set(keys):
            if keys.count(key) > 1:
                raise ValueError(f"two linings carry the key '{key}'; each key must be used once.")
        if OPENING_KEY in keys:
            raise ValueError("the key 'open' stands for an opening; give the lining another key.")
        known = {*keys, OPENING_KEY}
        used = [(f"wall {k}", b.lining) for k, w in enumerate(self.walls, 1) for b in w.bands]
        used += [(f"obstacle {k}", o.lining) for k, o in enumerate(self.obstacles, 1)]
        for place, key in [*used, ("the ceiling", self.ceiling), ("the floor", self.floor)]:
            if key not in known:
                raise ValueError(
                    f"{place} is lined with '{key}', but the plan holds no lining of that key."
                )

    def _check_lamp(self, number: int, lamp: Lamp) -> None:
        if not contains(self.space.footprint, lamp.x, lamp.y):
            raise ValueError(
                f"lamp {number} ('{lamp.model.name}') hangs outside the space at "
                f"x = {said_length(lamp.x)}, y = {said_length(lamp.y)}; "
                "move it inside the footprint."
            )
        if self.lamp_height(lamp) > self.space.height + 1e-9:
            room = HANGING_HEIGHT.at_most(self.headroom, "the ceiling is there")
            room.checked(lamp.hanging_height, f"lamp {number}, hanging height")
        if where := self._reaches(lamp):
            raise ValueError(
                f"lamp {number} ('{lamp.model.name}'), {lamp.leans}, would reach {where}; "
                "tilt it less, or move it."
            )

    def _reaches(self, lamp: Lamp) -> str:
        """Where a corner of a tilted lamp or its housing may not be, in words; '' if nowhere.

        A level one through a wall is only warned of, and its housing ends at the ceiling.
        """
        if not lamp.tilt_deg:
            return ""
        least, most = self.hanging_room(lamp)
        if lamp.hanging_height > most + 1e-9:
            return "through the ceiling"
        if lamp.hanging_height < least - 1e-9:
            return "down to the canopy"
        return "through a wall" if sticks_out(lamp.outline(), self.space.footprint) else ""

    def _check_obstacle(self, number: int, obstacle: Obstacle) -> None:
        if not contains(self.space.footprint, obstacle.x, obstacle.y):
            raise ValueError(
                f"obstacle {number} ('{obstacle.name}') stands outside the space at "
                f"x = {said_length(obstacle.x)}, y = {said_length(obstacle.y)}; "
                "move it inside the footprint."
            )
        if obstacle.top > self.space.height + 1e-9:
            raise ValueError(
                f"obstacle {number} ('{obstacle.name}') reaches up to "
                f"{said_length(obstacle.top)}, but the ceiling is at "
                f"{said_length(self.space.height)}; lower it or make it thinner."
            )

    @property
    def dimmable(self) -> bool:
        """Whether the output of every lamp can be turned."""
        return all(lamp.model.dimmable for lamp in self.lamps)

    @property
    def watts(self) -> float:
        """What all lamps draw at the output set, in W."""
        return watts_of(self.lamps)

    @property
    def ppf(self) -> float:
        """What all lamps emit at the output set, in µmol/s."""
        return ppf_of(self.lamps)

    @property
    def in_canopy(self) -> tuple[Obstacle, ...]:
        """The obstacles that stand in the canopy: where they are there is no light to show."""
        level = self.canopy.height
        return tuple(o for o in self.obstacles if o.underside <= level < o.top)

    @property
    def judged_top(self) -> int | None:
        """Which obstacle carries the canopy that the plan is judged by; None: its own canopy."""
        lead = (k for k, one in enumerate(self.obstacles) if one.canopy and one.canopy.judged)
        return next(lead, None)

    def leaves_on(self, obstacle: int | None) -> Canopy | CarriedCanopy:
        """The canopy that an obstacle carries; the plan's own for None or where it has none."""
        carried = None if obstacle is None else self.obstacles[obstacle].canopy
        return carried or self.canopy

    @property
    def headroom(self) -> float:
        """From the canopy to the ceiling in metres: the most a lamp can hang above it."""
        return self.space.height - self.canopy.height

    def hanging_room(self, lamp: Lamp) -> tuple[float, float]:
        """Least and greatest hanging height in metres at which a lamp as tilted has room."""
        under, over = lamp.needs
        return under, self.headroom - over

    def lamp_height(self, lamp: Lamp) -> float:
        """Height of the middle of a lamp's face above the floor in metres."""
        return self.canopy.height + lamp.hanging_height

    def lining(self, key: str) -> Lining:
        """The lining of a key (``open`` included)."""
        if key == OPENING_KEY:
            return OPENING
        return next(lining for lining in self.linings if lining.key == key)

    def wall_opens(self, index: int) -> bool:
        """Whether a wall is the door and stands open."""
        return self.space.door_open and self.space.door == index

    @property
    def room_light(self) -> float:
        """PPFD that comes in at the door as it stands, in µmol m⁻² s⁻¹."""
        return self.space.room_light if self.space.door_open else 0.0

    @property
    def setup(self) -> Setup:
        """The setup alone, without what a plan adds to it."""
        if type(self) is Setup:
            return self
        # Its parts were checked when they were made.
        return Setup.model_construct(**{name: getattr(self, name) for name in Setup.model_fields})


# -- variants --------------------------------------------------------------------------
# What differs between two setups is not stored: ``changes`` derives it for names and texts.

MAX_VARIANTS: Final = 60


class Variant(Value):
    """A setup kept under a name; ``key`` tells it from the others whatever it is called."""

    key: Key
    name: Name
    note: Text = ""
    setup: Setup


def variants_problem(variants: tuple[Variant, ...]) -> str | None:
    """Say in words why these variants cannot stand together, or None when they can."""
    for what, texts in (
        ("are called", [variant.name for variant in variants]),
        ("carry the key", [variant.key for variant in variants]),
    ):
        for text in texts:
            if texts.count(text) > 1:
                return f"two options {what} '{text}'; give each its own."
    return None


# -- the plan --------------------------------------------------------------------------

PLAN_FORMAT: Final = 4


class Plan(Setup):
    """A setup with all that is said, wanted and measured around it: one file."""

    format: Literal[4] = Field(default=PLAN_FORMAT, description="Version of this file format.")
    name: Name = "Untitled plan"
    note: Text = ""
    target: Target | None = None
    surveys: Annotated[tuple[Survey, ...], Field(max_length=MAX_SURVEYS)] = ()
    variants: Annotated[tuple[Variant, ...], Field(max_length=MAX_VARIANTS)] = ()
    baseline: Key | None = Field(
        default=None,
        description="Key of the variant the others are measured against; null: the plan itself.",
    )
    schedule: Annotated[tuple[GrowthStage, ...], Field(max_length=MAX_STAGES)] = ()
    costs: Costs = Costs()

    def target_on(self, obstacle: int | None) -> Target | None:
        """What is wanted on the canopy that an obstacle carries; None: on the plan's own."""
        carried = None if obstacle is None else self.obstacles[obstacle].canopy
        return self.target if carried is None or carried.target is None else carried.target

    @property
    def wanted(self) -> Target | None:
        """The target of the canopy that the plan is judged by."""
        return self.target_on(self.judged_top)

    @property
    def ppfd_band(self) -> tuple[float, float] | None:
        """The band wanted in µmol m⁻² s⁻¹ at the hours of the plan; None where none can be told.

        Of the canopy that the plan is judged by.
        """
        return None if self.wanted is None else self.wanted.ppfd_band(self.photoperiod_hours)

    @model_validator(mode="after")
    def _check(self) -> Self:
        problem = survey_problem(self.surveys) or variants_problem(self.variants)
        if problem is None and self.baseline not in {None, *(v.key for v in self.variants)}:
            problem = f"the baseline is '{self.baseline}', but no option has that key."
        if problem:
            raise ValueError(problem)
        return self

    def variant(self, key: str) -> Variant:
        """The variant of a key; raises ``KeyError`` when there is none."""
        for variant in self.variants:
            if variant.key == key:
                return variant
        raise KeyError(f"the plan has no option of the key '{key}'.")

    def with_setup(self, setup: Setup) -> Plan:
        """The plan with all that is built and decided by the light as in a setup."""
        # Both were checked when they were made, and no check spans the two.
        return self.model_copy(update={name: getattr(setup, name) for name in Setup.model_fields})
