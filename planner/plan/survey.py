"""Surveys: readings of a meter at numbered holes, and the conditions they were taken under."""

from __future__ import annotations

import datetime as dt
import itertools
from collections.abc import Sequence
from enum import StrEnum
from typing import Annotated, Final, Self

from pydantic import Field, model_validator

from planner.plan.lining import Lining
from planner.plan.quantity import (
    Coordinate,
    Fraction,
    HangingHeight,
    Height,
    Key,
    Name,
    Percent,
    Ppfd,
    Text,
    Value,
)
from planner.units import PPFD_UNIT

MAX_SURVEYS: Final = 60
MAX_POINTS: Final = 2500
MAX_READINGS: Final = 20_000
MAX_GRID: Final = 50


class Spacing(StrEnum):
    """How the holes of a grid lie in the rectangle inside the margin."""

    CELLS = "cells"
    """At the centres of equal cells."""
    EDGES = "edges"
    """From edge to edge: the outer holes lie on the margin."""


class Board(StrEnum):
    """What the readings were taken on. A board throws light back to walls and ceiling."""

    PAPER = "paper"
    WHITE_CARD = "white card"
    GREY_CARD = "grey card"
    BLACK = "black"
    OWN = "own"
    """Of a reflectance that somebody measured or knows."""
    NONE = "none"
    """No board: the sensor stood on the plane of the canopy itself."""


BOARD_REFLECTANCE: Final[dict[Board, tuple[float, float]]] = {
    Board.PAPER: (0.80, 0.06),
    Board.WHITE_CARD: (0.85, 0.05),
    Board.GREY_CARD: (0.18, 0.05),
    Board.BLACK: (0.05, 0.04),
}
"""Reflectance and its half-width: typical of such boards, from memory; only the grey card has
a rule behind it, the photographers' 18 %."""


SHUT_DOOR: Final = 0.005
"""Part of its wall that a door leaves open however well it is shut (a rule of this program):
what a survey says of the door once somebody looked, where 0 says that nobody did."""


SAME_TOP: Final = 0.02
"""Metres within which a top is taken for the one whose height is written down."""


class Meter(Value):
    """The instrument: what its data sheet says, as far as it matters here.

    ``gain_uncertainty`` is the half-width of the calibration error, common to all readings
    of the meter, taken as evenly likely inside it. ``noise`` is the standard deviation of a
    single reading, repeatability and placement of the sensor together. The directional
    response is the reading relative to an ideal cosine receiver by angle from upright;
    empty lists mean ideal.
    """

    name: Name = "Quantum sensor"
    gain_uncertainty: Fraction = Field(
        default=0.05, description="Half-width of the relative calibration error, common to all."
    )
    noise: Fraction = Field(
        default=0.02, description="Relative standard deviation of one reading, with placement."
    )
    response_angles_deg: Annotated[
        tuple[Annotated[float, Field(ge=0.0, le=90.0, json_schema_extra={"unit": "deg"})], ...],
        Field(max_length=91),
    ] = Field(default=(), description="Angles from upright of the directional response.")
    response_relative: Annotated[
        tuple[Annotated[float, Field(ge=0.0, le=2.0)], ...], Field(max_length=91)
    ] = Field(default=(), description="Response relative to an ideal cosine receiver.")
    sensor_height: Annotated[float, Field(ge=0.0, le=0.3, json_schema_extra={"unit": "m"})] = Field(
        default=0.0, description="Height of the receiving face above the board or canopy."
    )

    @model_validator(mode="after")
    def _check(self) -> Self:
        angles, relative = self.response_angles_deg, self.response_relative
        if len(angles) != len(relative):
            raise ValueError(
                f"the directional response has {len(angles)} angles but {len(relative)} values."
            )
        if len(angles) == 1:
            raise ValueError("the directional response needs at least two angles, or none.")
        if any(b <= a for a, b in itertools.pairwise(angles)):
            raise ValueError("the angles of the directional response must rise.")
        return self


class Doubts(Value):
    """How far the conditions of a survey may be off what is written down of them.

    Half-widths, each taken as evenly likely inside (JCGM 100:2008, 4.3.7). They go into a
    calibration as unknowns of this survey, as the gain of its meter does.
    """

    hanging_height: Annotated[float, Field(ge=0.0, le=0.5, json_schema_extra={"unit": "m"})] = (
        Field(default=0.01, description="Of the lamps, as measured with a tape.")
    )
    sensor_height: Annotated[float, Field(ge=0.0, le=0.1, json_schema_extra={"unit": "m"})] = Field(
        default=0.003, description="Of the receiving face; common to all surveys of a meter."
    )
    board_reflectance: Fraction = Field(default=0.05, description="Of the board on the plane.")
    output: Fraction = Field(
        default=0.02, description="Relative: the lamps set up and warmed up anew."
    )
    drift: Fraction = Field(
        default=0.02, description="Relative change of the lamps from the first reading to the last."
    )
    door: Fraction = Field(
        default=0.0, description="Part of the door's wall that may have stood open; 0: none."
    )
    cosine: Fraction = Field(
        default=0.03,
        description="Relative: the meter on light from all sides against light from the lamps; "
        "common to all its surveys.",
    )


class SurveyGrid(Value):
    """How holes are laid out over the bounding rectangle of a footprint.

    ``excluded`` numbers places of the whole grid from 1, row by row from the lower left,
    before anything is left out.
    """

    rows: Annotated[int, Field(ge=1, le=MAX_GRID)] = 5
    columns: Annotated[int, Field(ge=1, le=MAX_GRID)] = 5
    margin: Annotated[float, Field(ge=0.0, le=2.0, json_schema_extra={"unit": "m"})] = Field(
        default=0.0, description="Strip along the walls without holes."
    )
    spacing: Spacing = Spacing.CELLS
    hole_diameter: Annotated[float, Field(ge=0.001, le=0.2, json_schema_extra={"unit": "m"})] = (
        Field(default=0.024, description="Hole the sensor stands in.")
    )
    excluded: Annotated[
        tuple[Annotated[int, Field(ge=1)], ...], Field(max_length=MAX_POINTS, fail_fast=True)
    ] = ()


class Reading(Value):
    """One value read at one hole."""

    hole: Annotated[int, Field(ge=1, le=MAX_POINTS)] = Field(description="Counts from 1.")
    value: Ppfd
    at: Annotated[float, Field(ge=0.0, le=1e6, json_schema_extra={"unit": "s"})] | None = Field(
        default=None, description="Seconds from the first reading of the survey; null: not noted."
    )
    aside: bool = Field(
        default=False, description="Kept, but counts in no figure and in no calibration."
    )


class Survey(Value):
    """A set of readings taken under one set of conditions.

    Holes are ``points``, numbered from 1 in their order, which is the order they are
    visited in; a hole may have any number of readings, or none yet. What is None was as in
    the plan. Readings are kept in µmol m⁻² s⁻¹; ``lux_per_umol`` tells by what they were
    divided when the meter showed lux.
    """

    key: Key
    name: Name = "Survey"
    date: dt.date | None = None
    meter: Meter = Meter()
    lux_per_umol: Annotated[float, Field(gt=0.0, le=1000.0)] | None = Field(
        default=None, description=f"Lux per {PPFD_UNIT} by which lux readings were divided."
    )
    output_percent: Percent | None = Field(default=None, description="Output of all lamps.")
    hanging_height: HangingHeight | None = Field(
        default=None,
        description="Of the lamps over the canopy read, in a rack those of its tier: from the "
        "face to the plan's own canopy.",
    )
    on_top: Height | None = Field(
        default=None,
        description="Height above the floor of the obstacle's top whose canopy was read; null: "
        "the plan's own canopy.",
    )
    lining: Lining | None = Field(
        default=None, description="On all walls; the opening: no walls and no ceiling."
    )
    board: Board | None = Field(
        default=None, description="What the readings were taken on; null: nobody said."
    )
    board_reflectance: Fraction | None = Field(
        default=None, description="Of a board that fills the plane; null: as the canopy it lies on."
    )
    doubts: Doubts = Doubts()
    warm_up_minutes: Annotated[float, Field(ge=0.0, le=10_000.0)] | None = None
    note: Text = ""
    grid: SurveyGrid | None = Field(default=None, description="How the holes were laid out.")
    points: Annotated[
        tuple[tuple[Coordinate, Coordinate], ...],
        Field(min_length=1, max_length=MAX_POINTS, fail_fast=True),
    ]
    readings: Annotated[tuple[Reading, ...], Field(max_length=MAX_READINGS, fail_fast=True)] = ()

    @model_validator(mode="after")
    def _check(self) -> Self:
        for reading in self.readings:
            if reading.hole > len(self.points):
                raise ValueError(
                    f"the survey '{self.name}' holds a reading of hole {reading.hole}, but has "
                    f"only {len(self.points)} holes."
                )
        return self

    @property
    def open_air(self) -> bool:
        """Whether there were neither walls nor a ceiling."""
        return self.lining is not None and self.lining.is_opening

    @property
    def board_unsaid(self) -> bool:
        """Whether nobody said what the readings were taken on."""
        return self.board is None and self.board_reflectance is None

    @property
    def counted(self) -> tuple[Reading, ...]:
        """The readings that were not set aside."""
        return tuple(reading for reading in self.readings if not reading.aside)

    def values_at(self, hole: int) -> tuple[float, ...]:
        """All readings of a hole (counted from 1) that count, in the order they were taken."""
        return tuple(r.value for r in self.readings if r.hole == hole and not r.aside)

    def next_hole(self, after: int = 0) -> int | None:
        """The first hole behind ``after`` without a reading that counts, else from the start."""
        read = {reading.hole for reading in self.counted}
        count = len(self.points)
        order = [*range(after + 1, count + 1), *range(1, after + 1)]
        return next((hole for hole in order if hole not in read), None)


def survey_problem(surveys: Sequence[Survey]) -> str | None:
    """Say what is wrong with a plan's surveys as a whole, or None."""
    keys = [survey.key for survey in surveys]
    for key in keys:
        if keys.count(key) > 1:
            return f"two surveys carry the key '{key}'; each key must be used once."
    return None
