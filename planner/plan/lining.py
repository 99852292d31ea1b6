"""Linings: what covers a wall, ceiling or floor, and how much light it returns."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated, Self

from pydantic import Field, model_validator

from planner.plan.quantity import MAX_BANDS, Fraction, Height, Key, Name, Text, Value
from planner.plan.wavebands import Wavebands
from planner.units import said_length

OPENING_KEY = "open"
_BRUSHED_ON = ("paint", "barium-sulphate")
_STIFF = ("board", "plywood", "wood", "mirror", "tile", "glass", "aluminium-sheet")


class Caution(StrEnum):
    """What can go wrong with a material; the wording shown lives in the catalogue."""

    CONDUCTS = "conducts"
    BURNS = "burns"
    MELTS = "melts"
    TEARS = "tears"
    NOT_CLEANABLE = "not-cleanable"
    HOLDS_MOISTURE = "holds-moisture"
    HOT_SPOTS = "hot-spots"


class Lining(Value):
    """A surface material with its reflectance over 400-700 nm.

    ``reflectance`` is the total hemispherical reflectance; ``specular_share`` is the part
    of the *reflected* light that leaves as from a mirror, the rest leaves diffusely
    (Lambert); both have the colour of ``wavebands``. ``wrinkle`` spreads the specular part as
    creases do. ``low`` and ``high`` bound what samples of the material may show.
    """

    key: Key
    name: Name
    reflectance: Fraction
    specular_share: Fraction = 0.0
    wrinkle: Fraction = Field(
        default=0.0,
        description="Width of the mirror lobe (GGX alpha): 0 flat mirror, 0.25 creased film.",
    )
    low: Fraction
    high: Fraction
    wavebands: Wavebands | None = Field(
        default=None,
        description="How its reflectance is spread over the wavebands, as their proportions: the "
        "level is ``reflectance``, their mean over 400-700 nm. null: the same in all.",
    )
    source: Text = Field(default="", description="Where the numbers come from.")
    cautions: Annotated[tuple[Caution, ...], Field(max_length=20)] = ()
    note: Text = ""

    @model_validator(mode="after")
    def _check(self) -> Self:
        if not self.low <= self.reflectance <= self.high:
            raise ValueError(
                f"the reflectance of '{self.name}' ({self.reflectance:g}) must lie between its "
                f"range ends {self.low:g} and {self.high:g}."
            )
        return self

    @property
    def diffuse(self) -> float:
        """Diffuse reflectance ρ_d."""
        return self.reflectance * (1 - self.specular_share)

    @property
    def specular(self) -> float:
        """Specular reflectance ρ_s."""
        return self.reflectance * self.specular_share

    @property
    def is_opening(self) -> bool:
        """True for the one entry that stands for no surface at all."""
        return self.key == OPENING_KEY

    @property
    def is_paint(self) -> bool:
        """Whether it is brushed on: nothing is cut for it. Its key tells, as no field does."""
        return any(word in self.key for word in _BRUSHED_ON)

    @property
    def is_stiff(self) -> bool:
        """Whether it goes round no corner, so that a piece has the size of its wall. As above."""
        return any(word in self.key for word in _STIFF)


OPENING = Lining(
    key=OPENING_KEY,
    name="Open (no surface)",
    reflectance=0.0,
    low=0.0,
    high=0.0,
    source="By definition: what leaves through an opening does not come back.",
)


class Band(Value):
    """A horizontal strip of a wall; ``top`` is None for the strip that ends at the ceiling."""

    lining: Key
    top: Height | None = Field(default=None, description="Upper edge above the floor.")
    dirt: Fraction = Field(
        default=0.0,
        description="Share of what the clean lining returns that dirt on it takes away.",
    )


class WallCover(Value):
    """What a wall carries, from the floor up."""

    bands: Annotated[tuple[Band, ...], Field(min_length=1, max_length=MAX_BANDS)]

    @model_validator(mode="after")
    def _check(self) -> Self:
        tops = [band.top for band in self.bands]
        if tops[-1] is not None:
            raise ValueError("the uppermost band of a wall must end at the ceiling (top: null).")
        previous = 0.0
        for top in tops[:-1]:
            if top is None:
                raise ValueError("only the uppermost band of a wall may end at the ceiling.")
            if top < previous + 0.005:
                raise ValueError(
                    "the bands of a wall must be listed from the floor up, each at least "
                    f"{said_length(0.005)} high."
                )
            previous = top
        return self

    @classmethod
    def plain(cls, lining: str) -> WallCover:
        """One lining over the whole wall."""
        return cls(bands=(Band(lining=lining),))
