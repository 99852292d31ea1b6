"""Dials: every number of a plan that can be turned, one row each.

Fields, sweeps, variants, searches and messages read this table: what the number is called,
in which unit it stands, between which bounds it may lie in a plan as it is, how it is read,
how the plan with another value is made, and how much of the light that computes anew.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from enum import IntEnum
from typing import Any, Final

from planner.language import word
from planner.plan import edits
from planner.plan import quantity as q
from planner.plan import turning as t
from planner.plan.costs import Costs
from planner.plan.lamp import BarsBody, Lamp, LampModel
from planner.plan.place import Place, PlaceKind, every
from planner.plan.plan import Plan, Setup
from planner.plan.quantity import Quantity
from planner.plan.space import Canopy, Obstacle
from planner.plan.turning import Room, Turn
from planner.plan.wavebands import DAYLIGHT_LUX
from planner.units import PPFD_UNIT, capital

_ALIKE: Final = 1e-9
_OF_IT: Final = {
    PlaceKind.LAMP: " of the lamp",
    PlaceKind.OBSTACLE: " of the obstacle",
    PlaceKind.CORNER: " of the corner",
}
_TIMES: Final = Quantity("times", decimals=2, step=0.1).within(0.1, 5.0)


Where = Place | tuple[Place, ...] | None
"""At one place, at several, or wherever there is such a number."""


class Redo(IntEnum):
    """What an edit makes the core compute anew, from nothing at all to everything."""

    NOTHING = 0
    """The light stays, or is a product of what is kept: output, hours, prices."""
    LAMP = 1
    """The light of a lamp."""
    BALANCE = 2
    """The balance of all surfaces."""
    GEOMETRY = 3
    """The surfaces themselves."""


@dataclass(frozen=True)
class Dial:
    """One number of a plan.

    ``at`` is the kind of thing that has it; ``one`` reads it there, or gives None where a
    thing of that kind has no such number; ``turn`` makes the plan with another value at
    some of these places. ``room`` narrows the bounds of ``quantity``, those of the plan's
    own field, to what fits the plan as it is; ``sound`` narrows them further to what nothing
    would be cautioned against, which is where searches and proposals stay. ``together`` is the
    room where several are turned at once: a hand carries one lamp past a shelf, not all at once.
    """

    key: str
    words: str
    quantity: Quantity
    at: PlaceKind
    one: Callable[[Setup, Place], float | None]
    turn: Turn
    redo: Redo
    step_name: str
    about: str = ""
    room: Room | None = None
    sound: Room | None = None
    where: Callable[[Setup], tuple[Place, ...]] | None = None
    together: Room | None = None

    @property
    def unit(self) -> str:
        """Unit of the value in the plan; shares of 1 are shown in percent."""
        if self.quantity.is_length:
            return "m"
        return self.quantity.suffix if self.quantity.factor == 1 else "1"

    @property
    def label(self) -> str:
        """The words as they stand before a field."""
        return capital(self.words)

    @property
    def short(self) -> str:
        """The words without the thing that has the number: 'x' of 'x of the lamp'."""
        return self.words.removesuffix(_OF_IT.get(self.at, ""))

    def places(self, plan: Setup) -> tuple[Place, ...]:
        """The things of the plan that have this number."""
        found = every(plan, self.at) if self.where is None else self.where(plan)
        return tuple(place for place in found if self.one(plan, place) is not None)

    def get(self, plan: Setup, place: Place | None = None) -> float | None:
        """The value at a place, or of all places at once; None where they differ or are none."""
        if place is not None:
            return self.one(plan, place) if self._fits(plan, place) else None
        values = [self.one(plan, one) for one in self.places(plan)]
        known = [value for value in values if value is not None]
        return known[0] if known and max(known) - min(known) < _ALIKE else None

    def _those(self, plan: Setup, place: Where) -> tuple[Place, ...]:
        if place is None:
            return self.places(plan)
        return place if isinstance(place, tuple) else (place,)

    def bounded(self, plan: Setup, place: Where = None) -> Quantity:
        """The quantity with the bounds it has in this plan, at some places or at all of them."""
        found, those = self.quantity, self._those(plan, place)
        several = isinstance(place, tuple) and len(place) > 1
        room = self.together if several and self.together is not None else self.room
        if room is not None:
            for one in those:
                found = room(found, plan, one)
        return found

    def sound_in(self, plan: Setup, place: Where = None) -> Quantity:
        """The quantity with the bounds a search keeps to; they may leave nothing between them."""
        found = self.bounded(plan, place)
        if self.sound is not None:
            for one in self._those(plan, place):
                found = self.sound(found, plan, one)
        return found

    def bounds(self, plan: Setup, place: Place | None = None) -> tuple[float, float]:
        """Lowest and highest value in this plan."""
        found = self.bounded(plan, place)
        return found.minimum, found.maximum

    def put(self, plan: Plan, place: Where, value: float) -> Plan:
        """The plan with another value at a place, at several, or at all places at once.

        Raises
        ------
        ValueError
            If there is no such place, the value lies outside the bounds, or no plan can be
            built with it.
        """
        places = self._those(plan, place)
        alone = place if isinstance(place, Place) else None
        if not places or not all(self._fits(plan, one) for one in places):
            raise ValueError(self._nowhere(plan, alone))
        lead = self.label
        if alone is not None and alone.kind is not PlaceKind.SPACE:
            lead = f"{alone.words(plan)}, {self.words}"
        return self.turn(plan, places, self.bounded(plan, place).checked(value, lead))

    def _fits(self, plan: Setup, place: Place) -> bool:
        return place.kind is self.at and place.fits(plan) and self.one(plan, place) is not None

    def _nowhere(self, plan: Setup, place: Place | None) -> str:
        if place is not None and place.fits(plan):
            return f"{place.words(plan)} has no {self.words}."
        if self.at is PlaceKind.LAMP and not plan.lamps:
            return f"No lamp hangs in the space, so there is no {self.words} to set."
        return f"There is nothing in the plan that has a {self.words}."


def dial(key: str) -> Dial:
    """The dial of a key.

    Raises
    ------
    ValueError
        If there is none; the message lists those there are.
    """
    found = DIALS.get(key)
    if found is None:
        raise ValueError(f"There is no number called '{key}'; there is {', '.join(DIALS)}.")
    return found


# -- the table --------------------------------------------------------------------------

_LIGHT, _BALANCE, _ALL, _NOTHING = Redo.LAMP, Redo.BALANCE, Redo.GEOMETRY, Redo.NOTHING


def _lamp(
    key: str,
    words: str,
    part: str,
    redo: Redo,
    step: str,
    room: Room | None,
    about: str,
    sound: Room | None = None,
) -> Dial:
    kind, get, put = q.quantity_of(Lamp, part), t.of_lamp(part), t.put_lamp(part)
    return Dial(key, words, kind, PlaceKind.LAMP, get, put, redo, step, about, room, sound)


def _kind(
    key: str, words: str, part: str, redo: Redo, step: str, room: Room | None, about: str
) -> Dial:
    get, put = t.of_lamp(part, t.model), t.put_model(part)
    kind = q.quantity_of(LampModel, part)
    return Dial(key, words, kind, PlaceKind.LAMP, get, put, redo, step, about, room)


def _size(key: str, words: str, part: str, step: str, about: str) -> Dial:
    get, put, room = (
        t.of_lamp(part, t.body),
        t.put_body(part),
        t.bars_fit(part),
    )
    kind = q.quantity_of(BarsBody, part)
    return Dial(key, words, kind, PlaceKind.LAMP, get, put, _LIGHT, step, about, room)


def _obstacle(key: str, words: str, part: str, step: str, room: Room | None, about: str) -> Dial:
    kind, get, put = (
        q.quantity_of(Obstacle, part),
        t.of_obstacle(part),
        t.put_obstacle(part),
    )
    return Dial(key, words, kind, PlaceKind.OBSTACLE, get, put, _ALL, step, about, room)


def _corner(axis: int) -> Dial:
    words, get, put = (
        f"{'xy'[axis]} of the corner",
        t.of_corner(axis),
        t.put_corner(axis),
    )
    key = f"corner-{'xy'[axis]}"
    return Dial(key, words, q.POSITION, PlaceKind.CORNER, get, put, _ALL, "Move corner")


def _target(kind: str, part: str, shown: Quantity) -> Dial:
    words = f"{'lower' if part == 'low' else 'upper'} end of the target"
    get, put, room = t.band_end(part, kind), t.put_band_end(part), t.rising(part)
    step, at = "Set target band", PlaceKind.SPACE
    return Dial(f"{kind}-{part}", words, shown, at, get, put, _NOTHING, step, room=room)


def _cost(key: str, words: str, part: str, step: str, about: str, **shown: Any) -> Dial:
    kind, at = q.quantity_of(Costs, part, **shown), PlaceKind.SPACE
    return Dial(key, words, kind, at, t.of_costs(part), t.put_costs(part), _NOTHING, step, about)


def _space(
    key: str,
    words: str,
    kind: Quantity,
    redo: Redo,
    step: str,
    get: Callable[[Setup], float | None],
    put: Callable[[Plan, float], Plan],
    about: str = "",
    room: Room | None = None,
    sound: Room | None = None,
) -> Dial:
    def one(plan: Setup, _place: Place) -> float | None:
        return get(plan)

    def turn(plan: Plan, _places: Sequence[Place], value: float) -> Plan:
        return put(plan, value)

    return Dial(key, words, kind, PlaceKind.SPACE, one, turn, redo, step, about, room, sound)


def _wall(
    key: str,
    words: str,
    kind: Quantity,
    redo: Redo,
    step: str,
    get: Callable[[Setup, Place], float | None],
    put: Turn,
    about: str = "",
    **rest: Any,
) -> Dial:
    return Dial(key, words, kind, PlaceKind.WALL, get, put, redo, step, about, **rest)


# fmt: off
_ROWS: Final = (
    Dial("height", "hanging height", q.quantity_of(Lamp, "hanging_height"), PlaceKind.LAMP,
         t.height, t.put_height, _LIGHT, "Set lamp height",
         "From the lamp's lit face down to the canopy it hangs over, of a rack that of its tier: "
         "the plane the plants' tops stand at. Higher gives less light, more evenly.",
         t.under_ceiling, t.housing_under_ceiling, together=t.within_tier),
    _lamp("output", word("output"), "output_percent", _NOTHING, "Set lamp output", None,
          "The dimmer: light and watts both follow it in proportion. Real lamps often do a "
          "little better when dimmed.", t.by_dimmer),
    _wall("reflectance", "wall reflectance", q.SHARE, _BALANCE, "Set reflectance of walls",
          t.reflectance, t.put_reflectance, where=t.wall_bands),
    _space("width", "footprint width", q.EXTENT, _ALL, "Set width",
           lambda plan: t.extent(plan)[0],
           lambda plan, value: edits.set_size(plan, value, t.extent(plan)[1]),
           "Inside measure from left to right, between the linings. Lamps keep their place in "
           "proportion."),
    _space("depth", "footprint depth", q.EXTENT, _ALL, "Set depth",
           lambda plan: t.extent(plan)[1],
           lambda plan, value: edits.set_size(plan, t.extent(plan)[0], value),
           "Inside measure from front to back, between the linings."),
    _space("size", "footprint size, times as drawn", _TIMES, _ALL, "Set size",
           lambda _plan: 1.0,
           lambda plan, value: edits.set_size(plan, *(value * side for side in t.extent(plan)))),
    _space("spacing", "lamp spacing", q.EXTENT, _LIGHT, "Spread lamps",
           t.lamp_spacing, t.put_spacing),
    _space("canopy", "canopy height", q.quantity_of(Canopy, "height"), _ALL, "Set canopy height",
           lambda plan: plan.canopy.height, edits.set_canopy_height,
           "How high above the floor the tops of the plants, or the meter, stand. Lamps stay "
           "where they hang, so their hanging height changes with it.", t.under_lamps),
    _space("space-height", "inside height", q.SPACE_HEIGHT, _ALL, "Set height of the space",
           lambda plan: plan.space.height, edits.set_height,
           "Inside measure from floor to ceiling. Lamps that no longer fit come down with it.",
           t.above_canopy),
    _space("canopy-reflectance", "canopy reflectance", q.SHARE, _BALANCE,
           "Set canopy reflectance", lambda plan: plan.canopy.reflectance,
           lambda plan, value: edits.set_canopy(plan, reflectance=value),
           "The part of the light that the leaves send back. Green leaves return about 5 to 10 % "
           "between 400 and 700 nm."),
    _space("photoperiod", word("photoperiod"), q.HOURS, _NOTHING, "Set photoperiod",
           lambda plan: plan.photoperiod_hours,
           lambda plan, value: edits.changed(plan, photoperiod_hours=value),
           "Hours of light in a day. With the PPFD it makes the day's total, the daily light "
           "integral (DLI).", sound=t.leaving_a_night),
    _space("room-light", "room light", replace(q.PPFD, lux=DAYLIGHT_LUX), _NOTHING,
           "Set light of the room",
           lambda plan: plan.space.room_light if plan.space.door_open else None,
           lambda plan, value: edits.with_space(plan, room_light=value),
           "What a meter reads that stands upright in the open door and looks into the room. In lx "
           f"it is taken as daylight (CIE illuminant D65): {DAYLIGHT_LUX:g} lx are 1 {PPFD_UNIT}. "
           "Where the colours of all lamps are counted, it has those of daylight."),
    _space("room-hours", "hours of room light", q.HOURS, _NOTHING, "Set hours of room light",
           lambda plan: plan.space.room_hours if plan.room_light else None,
           lambda plan, value: edits.with_space(plan, room_hours=value),
           "How long in a day the room is so light; it counts in the DLI. Plants that flower in "
           "short days count it as day."),
    _lamp("lamp-x", "x of the lamp", "x", _LIGHT, "Move lamp", t.inside(0),
          "Right of the zero corner."),
    _lamp("lamp-y", "y of the lamp", "y", _LIGHT, "Move lamp", t.inside(1),
          "Back of the zero corner."),
    _lamp("lamp-rotation", "rotation of the lamp", "rotation_deg", _LIGHT, "Rotate lamp", None,
          "Counter-clockwise, seen from above."),
    _lamp("tilt", "tilt of the lamp", "tilt_deg", _LIGHT, "Tilt lamp", t.tilt_room,
          "About the lamp's own length, as on a hinge. Above 0 its back side (while its rotation "
          "is 0) rises and its light turns that way, below 0 to the front."),
    _lamp("dust", "dust of the lamp", "dust", _NOTHING, "Set dust", None,
          "Share of its light that dust on it takes away; wipe it, with the mains off, and "
          "measure before and after."),
    _lamp("hours-run", "hours run", "hours_run", _NOTHING, "Set hours run", None,
          "Hours of light it has given so far; with its L90 they say how far it has faded."),
    _kind("hours-to-90", "hours to 90 %", "hours_to_90", _NOTHING, "Set L90", None,
          "Hours after which 90 % of its light is left, printed as L90; 0 where nobody states "
          "it. Data sheets give L70 more often: L90 is about 0.3 times that."),
    _kind("ppf", "PPF", "ppf", _NOTHING, "Set lamp PPF", t.ppf_of_watts,
          "Photosynthetic photon flux: all the light between 400 and 700 nm the lamp sends out "
          "per second, at full output. Makers print it as PPF."),
    _kind("watts", word("watts"), "watts", _NOTHING, "Set lamp watts", t.watts_of_ppf,
          "Electrical power drawn at full output."),
    Dial("beam", "beam angle", q.BEAM_ANGLE, PlaceKind.LAMP, t.beam, t.each(t.put_beam), _LIGHT,
         "Set beam angle",
         "The full angle between the directions in which the lamp sends half as much as straight "
         "down. A bare LED board has about 120°, a spot 40° or less."),
    _size("lamp-length", "length of the lamp", "length", "Set lamp size",
          "Along the lamp's own long side."),
    _size("lamp-width", "width of the lamp", "width", "Set lamp size",
          "Over the lit faces, edge to edge."),
    _size("bars", "number of bars", "count", "Set lamp bars", "How many bars there are."),
    _size("bar-width", "bar width", "bar_width", "Set lamp bars",
          "Width of the lit strip of one bar."),
    _kind("housing", "housing height", "housing_height", _ALL, "Set lamp housing", None,
          "Height of the opaque body above the lit face. It casts shadows for light that comes "
          "back from above; 0 lets light pass through the lamp."),
    _wall("wall-length", "wall length", q.EXTENT, _ALL, "Set wall length",
          lambda plan, place: plan.space.wall_length(place.index), t.each(t.put_wall_length),
          "The far end of the wall moves along it, and the walls beyond it move with that end."),
    _wall("band-edge", "upper edge", q.HEIGHT, _ALL, "Move band edge", t.top, t.each(t.put_top),
          room=t.between_edges, where=t.wall_bands),
    _wall("dirt", word("dirt"), q.SHARE, _BALANCE, "Set dirt", t.dirt, t.each(t.put_dirt),
          "Share of what the clean lining returns that dirt, dust or algae take away: by a meter "
          "against the wall, 1 minus the reading where it is dirty over that where it is clean. "
          "Split the band where only its lower part is dirty.", where=t.wall_bands),
    _corner(0),
    _corner(1),
    _obstacle("obstacle-x", "x of the obstacle", "x", "Move obstacle", t.inside(0), "Its middle."),
    _obstacle("obstacle-y", "y of the obstacle", "y", "Move obstacle", t.inside(1), "Its middle."),
    Dial("underside", word("underside"), q.quantity_of(Obstacle, "underside"), PlaceKind.OBSTACLE,
         t.of_obstacle("underside"), t.put_underside, _ALL, "Raise obstacle",
         "Height of its lower side above the floor. Lamps that hang from it and what stands on it "
         "go with it. What lies wholly below a closed canopy gets no light and casts no shadow.",
         t.with_what_it_carries),
    _obstacle("obstacle-rotation", "rotation of the obstacle", "rotation_deg", "Rotate obstacle",
              None, "Counter-clockwise, seen from above."),
    _obstacle("obstacle-length", "length of the obstacle", "length", "Set size of obstacle", None,
              "Along its own long side."),
    _obstacle("obstacle-width", "width of the obstacle", "width", "Set size of obstacle", None,
              "Across its own long side."),
    _obstacle("thickness", word("thickness"), "thickness", "Set size of obstacle",
              t.room_with("underside"), "From its underside up."),
    Dial("leaves", "reflectance of a carried canopy", q.SHARE, PlaceKind.OBSTACLE, t.leaves,
         t.each(t.put_leaves), _BALANCE, "Set canopy reflectance",
         "The part of the light that the leaves on its top send back."),
    Dial("own-low", "lower end of an own target", q.PPFD, PlaceKind.OBSTACLE, t.own_end("low"),
         t.put_own_end("low"), _NOTHING, "Set target band", room=t.rising("low")),
    Dial("own-high", "upper end of an own target", q.PPFD, PlaceKind.OBSTACLE, t.own_end("high"),
         t.put_own_end("high"), _NOTHING, "Set target band", room=t.rising("high")),
    _target("ppfd", "low", q.PPFD),
    _target("ppfd", "high", q.PPFD),
    _target("dli", "low", q.DLI),
    _target("dli", "high", q.DLI),
    _cost("tariff", "price of 1 kWh", "price_per_kwh", "Set tariff",
          "Leave it at 0 while it is not known.", decimals=4),
    _cost("overlap", word("overlap"), "overlap", "Set overlap",
          "Added to every side of a cut piece, for corners and seams."),
    _cost("span", "span of a total", "span_months", "Set span",
          "What is bought and the energy of so many months make the total of an option."),
)
# fmt: on

DIALS: Final[dict[str, Dial]] = {row.key: row for row in _ROWS}
