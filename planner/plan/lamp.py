"""Lamps: a body that emits, an angular profile, and how the lamp hangs."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable
from typing import Annotated, Final, Literal, Self

from pydantic import Field, model_validator

from planner.language import word
from planner.plan.quantity import (
    BEAM_ANGLE,
    HANGING_HEIGHT,
    AngleDeg,
    BeamDoubt,
    BodyLength,
    Coordinate,
    Fraction,
    HangingHeight,
    Key,
    LampHours,
    Name,
    Percent,
    PhotonFlux,
    Text,
    TiltDeg,
    Value,
    Watts,
)
from planner.plan.space import turned_rectangle
from planner.plan.wavebands import Wavebands
from planner.units import EFFICACY_UNIT, FLUX_UNIT, said_length

MOST_PER_JOULE: Final = 5.85
"""µmol per joule, from the photon energy at 700 nm (h c N_A / λ): no lamp can give more."""


def too_efficient(ppf: float, watts: float) -> str:
    """What is impossible about a photon flux (µmol/s) from so many watts; '' where nothing is."""
    if ppf / watts <= MOST_PER_JOULE + 1e-9:
        return ""
    return (
        f"{ppf:.4g} {FLUX_UNIT} from {watts:.4g} W would be {ppf / watts:.4g} {EFFICACY_UNIT}, "
        f"and even a perfect lamp cannot exceed {MOST_PER_JOULE}"
    )


PolarDeg = Annotated[float, Field(ge=0.0, le=180.0, json_schema_extra={"unit": "deg"})]
AzimuthDeg = Annotated[float, Field(ge=0.0, lt=360.0, json_schema_extra={"unit": "deg"})]


class PointBody(Value):
    """A lamp small against every distance in the space."""

    kind: Literal["point"] = "point"


class PanelBody(Value):
    """A rectangle that emits evenly; a single bar is a long thin panel."""

    kind: Literal["panel"] = "panel"
    length: BodyLength = Field(description="Along the lamp's own x axis.")
    width: BodyLength = Field(description="Along the lamp's own y axis.")


class BarsBody(Value):
    """Several equal bars side by side, evenly spread over ``width`` (outer edges)."""

    kind: Literal["bars"] = "bars"
    count: Annotated[int, Field(ge=1, le=24)]
    length: BodyLength = Field(description="Length of each bar, along the lamp's own x axis.")
    bar_width: BodyLength = Field(description="Width of the emitting strip of one bar.")
    width: BodyLength = Field(description="Outer width over all bars, along y.")

    @model_validator(mode="after")
    def _check(self) -> Self:
        if self.count * self.bar_width > self.width + 1e-9:
            raise ValueError(
                f"{self.count} bars of {said_length(self.bar_width)} do not fit into a width of "
                f"{said_length(self.width)}."
            )
        return self


Body = Annotated[PointBody | PanelBody | BarsBody, Field(discriminator="kind")]


class CosineProfile(Value):
    """Intensity I(θ) ∝ cos^m θ below the lamp face, nothing above it."""

    kind: Literal["cosine"] = "cosine"
    exponent: Annotated[float, Field(ge=0.0, le=200.0)] = 1.0

    @property
    def beam_angle_deg(self) -> float:
        """Full angle between the directions of half the peak intensity."""
        if self.exponent == 0:
            return 180.0
        return 2 * math.degrees(math.acos(0.5 ** (1 / self.exponent)))

    @classmethod
    def from_beam_angle(cls, beam_angle_deg: float) -> CosineProfile:
        """The cos^m law whose half-peak cone has this full angle: m = ln ½ / ln cos(β/2)."""
        return cls(exponent=math.log(0.5) / math.log(math.cos(math.radians(beam_angle_deg) / 2)))


class TableProfile(Value):
    """Relative intensity by polar angle from straight down (0) to straight up (180)."""

    kind: Literal["table"] = "table"
    angles_deg: Annotated[
        tuple[PolarDeg, ...],
        Field(min_length=2, max_length=361),
    ]
    relative: Annotated[
        tuple[Annotated[float, Field(ge=0.0, le=1.0e9)], ...], Field(min_length=2, max_length=361)
    ]

    @model_validator(mode="after")
    def _check(self) -> Self:
        if len(self.angles_deg) != len(self.relative):
            raise ValueError(
                f"the profile has {len(self.angles_deg)} angles but {len(self.relative)} "
                "intensities."
            )
        if any(b <= a for a, b in zip(self.angles_deg, self.angles_deg[1:], strict=False)):
            raise ValueError("the angles of the profile must rise from each to the next.")
        if max(self.relative) <= 0:
            raise ValueError("the profile emits nothing: at least one intensity must be above 0.")
        return self


class PlanesProfile(Value):
    """Relative intensity in vertical planes around the lamp, as photometric files give it.

    ``relative[k][i]`` belongs to azimuth ``azimuths_deg[k]`` (counter-clockwise seen from
    above, 0 along the lamp's own x axis) and polar angle ``angles_deg[i]`` (0 straight
    down, 180 straight up). Azimuths run from 0 to below 360 and close on themselves;
    intensity is linear in both angles and nothing outside the polar angles given.
    """

    kind: Literal["planes"] = "planes"
    angles_deg: Annotated[
        tuple[PolarDeg, ...],
        Field(min_length=2, max_length=721),
    ]
    azimuths_deg: Annotated[
        tuple[AzimuthDeg, ...],
        Field(min_length=1, max_length=361),
    ]
    relative: Annotated[
        tuple[
            Annotated[
                tuple[Annotated[float, Field(ge=0.0, le=1.0e9)], ...],
                Field(max_length=721, fail_fast=True),
            ],
            ...,
        ],
        Field(min_length=1, max_length=361),
    ]

    @model_validator(mode="after")
    def _check(self) -> Self:
        for name, angles in (("polar", self.angles_deg), ("azimuth", self.azimuths_deg)):
            if any(b <= a for a, b in itertools.pairwise(angles)):
                raise ValueError(
                    f"the {name} angles of the profile must rise from each to the next."
                )
        if self.azimuths_deg[0] != 0:
            raise ValueError("the first azimuth of the profile must be 0.")
        if len(self.relative) != len(self.azimuths_deg):
            raise ValueError(
                f"the profile has {len(self.azimuths_deg)} azimuths but {len(self.relative)} "
                "planes."
            )
        if any(len(plane) != len(self.angles_deg) for plane in self.relative):
            raise ValueError(
                f"each plane of the profile must hold {len(self.angles_deg)} intensities, "
                "one for each polar angle."
            )
        if max(max(plane) for plane in self.relative) <= 0:
            raise ValueError("the profile emits nothing: at least one intensity must be above 0.")
        return self


Profile = Annotated[CosineProfile | TableProfile | PlanesProfile, Field(discriminator="kind")]


class LampModel(Value):
    """A kind of lamp, as it stands in the catalogue."""

    key: Key
    name: Name
    body: Body
    profile: Profile = CosineProfile()
    ppf: PhotonFlux = Field(description="Photon flux 400-700 nm at full output.")
    watts: Watts = Field(description="Electrical power at full output.")
    housing_height: Annotated[float, Field(ge=0.0, le=0.5, json_schema_extra={"unit": "m"})] = (
        Field(
            default=0.0,
            description="Height of the opaque housing above the face; 0 lets light pass the lamp.",
        )
    )
    housing_reflectance: Fraction = Field(
        default=0.5, description="Diffuse reflectance of the housing, 400-700 nm."
    )
    ppf_uncertainty: Fraction = Field(
        default=0.1, description="Relative uncertainty of the photon flux."
    )
    hours_to_90: LampHours = Field(
        default=0.0,
        description="Hours of light after which 90 % of its flux is left (L90); 0: not stated, "
        "and no ageing is counted.",
    )
    beam_uncertainty_deg: BeamDoubt = Field(
        default=0.0,
        description="How far the beam angle of a cosine profile may be off, either way; 0 where "
        "it is known. Tables and photometric files have none.",
    )
    wavebands: Wavebands | None = Field(
        default=None,
        description="How its photons are spread over the wavebands; null: not known.",
    )
    dimmable: bool = Field(default=True, description="Whether its output can be turned down.")
    source: Text = ""
    note: Text = ""

    @model_validator(mode="after")
    def _check(self) -> Self:
        if why := too_efficient(self.ppf, self.watts):
            raise ValueError(f"'{self.name}': {why}. Check photon flux and watts.")
        return self

    @property
    def beam_range_deg(self) -> tuple[float, float] | None:
        """Narrowest and widest beam angle it may have; None where its beam is in no doubt."""
        half = self.beam_uncertainty_deg
        if half <= 0 or not isinstance(self.profile, CosineProfile):
            return None
        angle = self.profile.beam_angle_deg
        low, high = BEAM_ANGLE.minimum, BEAM_ANGLE.maximum
        return max(angle - half, min(low, angle)), min(angle + half, max(high, angle))

    @property
    def size(self) -> tuple[float, float]:
        """Outer length and width of the emitting body in metres (a point has none)."""
        if isinstance(self.body, PointBody):
            return 0.0, 0.0
        return self.body.length, self.body.width


_SIDES: Final = (
    word("the right"),
    word("the back right"),
    word("the back"),
    word("the back left"),
    word("the left"),
    word("the front left"),
    word("the front"),
    word("the front right"),
)
"""Sides of the plan, counter-clockwise from the right."""


class Lamp(Value):
    """A lamp hung in the space: the model and where it hangs."""

    model: LampModel
    x: Coordinate
    y: Coordinate
    hanging_height: HangingHeight = Field(
        description="From the middle of the lamp's face to the canopy."
    )
    rotation_deg: AngleDeg = 0.0
    tilt_deg: TiltDeg = Field(
        default=0.0,
        description="About the lamp's own long (x) axis, through the middle of its face: above 0 "
        "its y side rises and its light turns to that side; 0 hangs level.",
    )
    output_percent: Percent = 100.0
    hours_run: LampHours = Field(default=0.0, description="Hours of light it has given so far.")
    dust: Fraction = Field(
        default=0.0, description="Share of its light that the dust on it takes away."
    )
    label: Annotated[str, Field(max_length=60)] = ""

    @property
    def kept(self) -> float:
        """What age and dust leave of its flux, as a share.

        Flux falls exponentially, the law by which ANSI/IES TM-21 carries measured LEDs on: 90 %
        after ``hours_to_90``, 81 % after twice that. Dust only takes away (``dust``).
        """
        hours = self.model.hours_to_90
        aged = 0.9 ** (self.hours_run / hours) if hours > 0 else 1.0
        return float(aged * (1 - self.dust))

    @property
    def full_ppf(self) -> float:
        """Photon flux at full output in µmol/s, as old and dusty as it is."""
        return self.model.ppf * self.kept

    @property
    def ppf(self) -> float:
        """Photon flux at the set output in µmol/s."""
        return self.full_ppf * self.output_percent / 100

    @property
    def watts(self) -> float:
        """Electrical power at the set output in W, taken as proportional to output."""
        return self.model.watts * self.output_percent / 100

    def outline(self) -> tuple[tuple[float, float], ...]:
        """Corners of the lamp's outer rectangle on the plan, in metres.

        Of a tilted lamp that of face and housing together, as they are seen from above.
        """
        if not self.tilt_deg:
            return turned_rectangle(self.x, self.y, *self.model.size, self.rotation_deg)
        aside = [y for y, _ in self.section]
        low, high = min(aside), max(aside)
        angle, middle = math.radians(self.rotation_deg), (low + high) / 2
        x, y = self.x - middle * math.sin(angle), self.y + middle * math.cos(angle)
        return turned_rectangle(x, y, self.model.size[0], high - low, self.rotation_deg)

    @property
    def section(self) -> tuple[tuple[float, float], ...]:
        """Corners of face and housing across the lamp: along its y axis, and up, in metres.

        From the middle of the face; first the two ends of the face. A local (y, z) goes to
        (y cos t - z sin t, y sin t + z cos t).
        """
        half = self.model.size[1] / 2
        high = self.model.housing_height if any(self.model.size) else 0.0
        tilt = math.radians(self.tilt_deg)
        cos, sin = math.cos(tilt), math.sin(tilt)
        corners = ((-half, 0.0), (half, 0.0), (half, high), (-half, high))
        return tuple((y * cos - z * sin, y * sin + z * cos) for y, z in corners)

    def corners(self, high: float) -> tuple[tuple[float, float, float], ...]:
        """Corners of the face and of a body so high over it: x, y, and height over its middle."""
        half, side = (part / 2 for part in self.model.size)
        return tuple(
            self.place(a, b, up)
            for up in (0.0, high)
            for a, b in ((-half, -side), (half, -side), (half, side), (-half, side))
        )

    def place(self, along: float, across: float, up: float) -> tuple[float, float, float]:
        """A place in the lamp's own axes: x, y in the room, and height over the face's middle."""
        if self.tilt_deg:
            tilt = math.radians(self.tilt_deg)
            cos, sin = math.cos(tilt), math.sin(tilt)
            across, up = across * cos - up * sin, across * sin + up * cos
        angle = math.radians(self.rotation_deg)
        cos, sin = math.cos(angle), math.sin(angle)
        return self.x + along * cos - across * sin, self.y + along * sin + across * cos, up

    @property
    def rise(self) -> tuple[float, float]:
        """Lowest and highest corner of face and housing, in metres over the middle of the face."""
        up = [z for _, z in self.section]
        return min(up), max(up)

    @property
    def needs(self) -> tuple[float, float]:
        """Least metres from the middle of its face down to the canopy, and up to the ceiling.

        The housing of a level lamp may end at the ceiling; a tilted one needs room for all of it.
        """
        low, high = self.rise if self.tilt_deg else (0.0, 0.0)
        return HANGING_HEIGHT.minimum - low, high

    @property
    def leans(self) -> str:
        """How it is tilted, in words; '' where it hangs level."""
        if not self.tilt_deg:
            return ""
        way = self.rotation_deg + (90.0 if self.tilt_deg > 0 else -90.0)
        side = _SIDES[round(way / 45.0) % len(_SIDES)]
        return f"tilted by {abs(self.tilt_deg):g}° towards {side}"

    def strips(self) -> tuple[tuple[float, float, float, float], ...]:
        """Emitting rectangles in the lamp's own axes: (centre x, centre y, length, width)."""
        body = self.model.body
        if isinstance(body, PointBody):
            return ((0.0, 0.0, 0.0, 0.0),)
        if isinstance(body, PanelBody):
            return ((0.0, 0.0, body.length, body.width),)
        if body.count == 1:
            return ((0.0, 0.0, body.length, body.bar_width),)
        pitch = (body.width - body.bar_width) / (body.count - 1)
        first = -(body.width - body.bar_width) / 2
        return tuple(
            (0.0, first + k * pitch, body.length, body.bar_width) for k in range(body.count)
        )


def watts_of(lamps: Iterable[Lamp]) -> float:
    """What lamps draw together at the output set, in W."""
    return float(sum(lamp.watts for lamp in lamps))


def ppf_of(lamps: Iterable[Lamp]) -> float:
    """What lamps emit together at the output set, in µmol/s."""
    return float(sum(lamp.ppf for lamp in lamps))
