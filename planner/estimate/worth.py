"""Area of lining to cover, what it costs, and when it has paid for itself.

Areas count what is seen of a surface; pieces of what bends add the overlap allowance on every
side, for corners and seams; a board has the size of its wall. The door is a piece by itself,
cut to its own size without overlap, so that it can still open; it is bought even while the door
stands open. Ceiling and floor are cut from the rectangle around the footprint. An obstacle is
taken as made of its material, and none is cut or bought for it, unless that material is sold by
the roll or sheet: then its faces are covered with it, all but a top that carries leaves and what
stands on the floor.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Final

from planner.estimate.result import Estimate
from planner.metrics.cutting import CuttingList, Piece, cutting_list
from planner.metrics.figures import FIGURE, energy, kilowatt_hours_per_day, money
from planner.plan.costs import Costs, Form, Goods
from planner.plan.lining import OPENING_KEY
from planner.plan.place import Place, PlaceKind, lining_at, reach, surfaces
from planner.plan.plan import Plan
from planner.units import SECONDS_PER_HOUR

DAYS_PER_MONTH: Final = 365.25 / 12


@dataclass(frozen=True)
class Part:
    """A place to cover: the piece to cut for it, and the area seen of it in m²."""

    place: Place
    piece: Piece
    area: float

    @property
    def size(self) -> tuple[Place, float, float]:
        """Its surface, and the sides of its piece to a tenth of a millimetre."""
        return self.place.whole, round(self.piece.length, 4), round(self.piece.width, 4)


@dataclass(frozen=True)
class Cover:
    """What one lining covers."""

    lining: str
    parts: tuple[Part, ...]

    @property
    def pieces(self) -> tuple[Piece, ...]:
        """The pieces to cut."""
        return tuple(part.piece for part in self.parts)

    @property
    def area(self) -> float:
        """Area seen, in m²."""
        return sum(part.area for part in self.parts)

    def without(self, there: Cover | None) -> Cover:
        """The cover without what hangs ``there`` already: as large, on the same surface.

        Bands of a wall count by their size only: one more below or above renames them all.
        """
        hung = Counter(part.size for part in (() if there is None else there.parts))
        left = []
        for part in self.parts:
            if hung[part.size]:
                hung[part.size] -= 1
            else:
                left.append(part)
        return Cover(self.lining, tuple(left))


@dataclass(frozen=True)
class Purchase:
    """What to buy of one lining; ``cost`` is None while its price is not known."""

    cover: Cover
    goods: Goods
    cutting: CuttingList
    cost: float | None


def covers(plan: Plan, overlap: float | None = None) -> tuple[Cover, ...]:
    """What each lining of a plan covers, in the order walls, ceiling, floor meet them.

    ``overlap`` in metres replaces the plan's own allowance.
    """
    allowance = plan.costs.overlap if overlap is None else overlap
    found: dict[str, list[Part]] = {}
    for place in surfaces(plan):
        lining, (low, high) = lining_at(plan, place), reach(plan, place)
        if lining is None or lining.key == OPENING_KEY:
            continue
        over = 0.0 if lining.is_stiff else allowance
        if place.kind is PlaceKind.OBSTACLE:
            if plan.costs.goods_of(lining.key) is not None:
                found.setdefault(lining.key, []).extend(_faces(plan, place, over))
            continue
        door = place.kind is PlaceKind.WALL and place.index == plan.space.door
        extra = 0.0 if door else 2 * over
        if place.kind is PlaceKind.WALL:
            across, up = plan.space.wall_length(place.index), high - low
            area = across * up
        else:
            x0, y0, x1, y1 = plan.space.bounds
            across, up, area = x1 - x0, y1 - y0, plan.space.area
        if area > 0:
            label = place.words(plan) + (" (door)" if door else "")
            piece = Piece(label, across + extra, up + extra)
            found.setdefault(lining.key, []).append(Part(place, piece, area))
    return tuple(Cover(key, tuple(parts)) for key, parts in found.items())


def _faces(plan: Plan, place: Place, allowance: float) -> list[Part]:
    """What covers the faces of an obstacle that are seen."""
    one = plan.obstacles[place.index]
    faces = [("long side", one.length, one.thickness), ("short side", one.width, one.thickness)] * 2
    if one.underside > 0:
        faces.append(("underside", one.length, one.width))
    if one.canopy is None and one.top < plan.space.height:
        faces.append(("top", one.length, one.width))
    name = place.words(plan)
    return [
        Part(
            place, Piece(f"{name}, {face}", across + 2 * allowance, up + 2 * allowance), across * up
        )
        for face, across, up in faces
    ]


def purchase(cover: Cover, goods: Goods, costs: Costs | None = None) -> Purchase:
    """Lay a cover out on rolls or sheets and price it, with the overlap and seams of ``costs``."""
    costs = costs or Costs()
    cutting = cutting_list(
        cover.pieces, goods.width, goods.length, costs.overlap, seams_welcome=costs.seams
    )
    cost = None if goods.price is None else cutting.rolls * goods.price
    return Purchase(cover, goods, cutting, cost)


def payback_months(cost: float, saved_per_month: float) -> float | None:
    """Months until savings have paid a cost; None when nothing is saved."""
    if cost <= 0:
        return 0.0
    return cost / saved_per_month if saved_per_month > 0 else None


# -- lamp heat and the air that carries it away ----------------------------------------

AIR_DENSITY_KG_M3: Final = 1.20
"""ρ of room air at 20 °C and 1013 hPa, half moist; 3 % less for each 10 K more."""

AIR_HEAT_J_KG_K: Final = 1005.0
"""c_p of dry air at constant pressure near 20 °C."""

ASSUMPTIONS: Final = (
    "All electrical power of the lamps ends as heat in the space, at once and evenly. The air "
    "that comes in has room temperature (1.2 kg/m³, 1005 J/(kg K)) and mixes fully. Heat through "
    "the walls and water that leaves the plants are not counted: both make it a little cooler. "
    "Fans give less than their label once ducts, filters and small openings are in the way."
)

CAUTION: Final = (
    "Air flow is no licence to crowd a lamp: keep the clearances its maker states, keep drivers "
    "and plugs out of warm corners, and measure the temperature at the canopy and at the lamp "
    "after the first hour of light."
)


def air_flow(watts: float, rise_k: float) -> float:
    """Air flow in m³/h that carries ``watts`` away at a temperature rise of ``rise_k`` kelvin.

    From P = ρ c_p V̇ ΔT.

    Raises
    ------
    ValueError
        If the rise is not above 0 K.
    """
    if rise_k <= 0:
        raise ValueError("the temperature rise must be above 0 K; without one no heat is carried.")
    return watts / (AIR_DENSITY_KG_M3 * AIR_HEAT_J_KG_K * rise_k) * SECONDS_PER_HOUR


# -- what an option costs against what it brings ---------------------------------------
# Every option is reckoned by what it draws itself (its lamps, their output, its hours a day) and
# by what has to be bought for it beyond what the baseline has already: linings by their cutting
# list, lamps by their number of each model. To set options of unlike light against each other
# they are brought to the same light: light and power are both taken as proportional to output, so
# an option that is brighter than the baseline may be dimmed, and one that is dimmer would need
# that much more of the same lamps. Light means the light of a day, as hours may differ.


@dataclass(frozen=True)
class LampsBought:
    """Lamps of one model to buy; ``price`` of one is None while not known."""

    model: str
    name: str
    count: int
    price: float | None


@dataclass(frozen=True)
class Bill:
    """What has to be bought: linings whose goods are known, covers whose are not, lamps."""

    purchases: tuple[Purchase, ...] = ()
    unknown: tuple[Cover, ...] = ()
    lamps: tuple[LampsBought, ...] = ()

    @property
    def empty(self) -> bool:
        """Whether nothing has to be bought."""
        return not (self.purchases or self.unknown or self.lamps)

    @property
    def cost(self) -> float | None:
        """What all of it costs; None while a price or the goods of a lining are not known."""
        parts = [one.cost for one in self.purchases]
        parts += [None if one.price is None else one.count * one.price for one in self.lamps]
        known = [part for part in parts if part is not None]
        return None if self.unknown or len(known) < len(parts) else sum(known)

    def unpriced(self, linings: Mapping[str, str]) -> tuple[str, ...]:
        """Names of what has no price yet; those of linings by their keys."""
        covers = [*self.unknown, *(one.cover for one in self.purchases if one.cost is None)]
        lamps = [one.name for one in self.lamps if one.price is None]
        return (*(linings[one.lining] for one in covers), *lamps)

    def words(self, lining_name: Callable[[str], str]) -> str:
        """What has to be bought, in a few words: '1 x Panel, 2 rolls of Foil'."""
        parts = [f"{one.count} x {one.name}" for one in self.lamps]
        for one in self.purchases:
            kind = "roll" if one.goods.form is Form.ROLL else "sheet"
            plural = "" if one.cutting.rolls == 1 else "s"
            parts.append(f"{one.cutting.rolls} {kind}{plural} of {lining_name(one.cover.lining)}")
        area = FIGURE["canopy_area"]
        parts += [f"{area.text(one.area)} of {lining_name(one.lining)}" for one in self.unknown]
        return ", ".join(parts) or "nothing"


def bill(option: Plan, there: Plan | None, costs: Costs) -> Bill:
    """What must be bought for an option beyond what ``there`` has; all of it with None.

    A piece is there already when the surface has one of the same lining and size; a lamp when
    there is one of the same model that has run no longer, wherever it hangs. Dirt and dust are
    wiped off. Cutting lists may take seconds.
    """
    cut = {} if there is None else {one.lining: one for one in covers(there, costs.overlap)}
    bought, unknown = [], []
    for cover in covers(option, costs.overlap):
        part = cover.without(cut.get(cover.lining))
        goods = costs.goods_of(cover.lining)
        if part.pieces and goods is None:
            unknown.append(part)
        elif part.pieces and goods is not None:
            bought.append(purchase(part, goods, costs))
    names = {lamp.model.key: lamp.model.name for lamp in option.lamps}
    missing = {key: _missing(option, there, key) for key in names}
    lamps = tuple(
        LampsBought(key, names[key], count, costs.lamp_price(key))
        for key, count in missing.items()
        if count
    )
    return Bill(tuple(bought), tuple(unknown), lamps)


def _missing(option: Plan, there: Plan | None, key: str) -> int:
    """How many lamps of a kind the option has for which there is none that is no older."""
    hours = [
        sorted((one.hours_run for one in plan.lamps if one.model.key == key), reverse=True)
        for plan in (option, *(() if there is None else (there,)))
    ]
    wanted, hung = hours[0], hours[1] if there is not None else []
    for age in wanted[:]:
        younger = next((one for one in hung if one <= age + 1e-6), None)
        if younger is not None:
            hung.remove(younger)
            wanted.remove(age)
    return len(wanted)


@dataclass(frozen=True)
class Running:
    """What an option draws: watts, and a month's kWh and money (None without a tariff)."""

    watts: float
    kwh: float
    money: float | None

    def total(self, cost: float | None, months: float) -> float | None:
        """What is bought and so many months of energy; None where one is not known."""
        return None if cost is None or self.money is None else cost + months * self.money


def running(plan: Plan, costs: Costs, share: float = 1.0) -> Running:
    """What a plan draws at a share of its present output."""
    return drawing(share * plan.watts, plan.photoperiod_hours, costs)


def drawing(watts: float, hours: float, costs: Costs) -> Running:
    """What a load in W draws in a month of 365.25/12 days, at so many hours a day."""
    kwh = kilowatt_hours_per_day(watts, hours) * DAYS_PER_MONTH
    tariff = costs.price_per_kwh
    return Running(watts, kwh, None if tariff is None else kwh * tariff)


@dataclass(frozen=True)
class Worth:
    """An option against a baseline.

    ``drawn`` and ``base`` are what the two draw as they are; ``level`` is what the option draws
    with its output turned to the baseline's light of a day; ``in_reach`` tells whether its lamps
    can give that, nothing is paid back where they cannot. ``more_light`` is the light of a day
    over the baseline's, ``per_watt`` the light for each unit of energy over the baseline's.
    ``total`` and ``base_total`` are for the span of the costs, as drawn; ``payback`` in months is
    by what is saved at the same light, None where nothing is saved or a price is not known.
    """

    more_light: float
    per_watt: float
    drawn: Running
    base: Running
    level: Running
    in_reach: bool
    bill: Bill
    total: float | None
    base_total: float | None
    payback: float | None

    @property
    def kwh_saved(self) -> float:
        """Of a month, at the same light."""
        return self.base.kwh - self.level.kwh

    @property
    def money_saved(self) -> float | None:
        """Of a month, at the same light; None without a tariff."""
        if self.base.money is None or self.level.money is None:
            return None
        return self.base.money - self.level.money


_NOTICED = 0.005
"""A change of light below this is none in words."""


class WorthError(ValueError):
    """Two plans that cannot be weighed against each other; the message says why."""


def worth(option: Estimate, baseline: Estimate, bought: Bill, costs: Costs) -> Worth:
    """Weigh an option, for which ``bought`` has to be bought, against a baseline.

    Raises
    ------
    WorthError
        If one of them is dark.
    """
    light, before = (one.figures.mean * one.plan.photoperiod_hours for one in (option, baseline))
    if light <= 0 or before <= 0:
        raise WorthError("A dark plan has no light to weigh; raise its output or hang a lamp.")
    more = light / before
    drawn, base = running(option.plan, costs), running(baseline.plan, costs)
    level = running(option.plan, costs, 1 / more)
    saved = None if base.money is None or level.money is None else base.money - level.money
    most = max(lamp.output_percent for lamp in option.plan.lamps) if option.plan.lamps else 100.0
    in_reach = most / more <= 100.0 * (1 + _NOTICED)
    cost = bought.cost
    return Worth(
        more_light=more,
        per_watt=base.kwh / level.kwh if level.kwh > 0 else 1.0,
        drawn=drawn,
        base=base,
        level=level,
        in_reach=in_reach,
        bill=bought,
        total=drawn.total(cost, costs.span_months),
        base_total=base.total(0.0, costs.span_months),
        payback=None
        if cost is None or saved is None or saved <= 0 or not in_reach
        else payback_months(cost, saved),
    )


def in_words(name: str, base: str, found: Worth, costs: Costs) -> str:
    """What an option draws, brings and costs against a baseline, in sentences."""
    parts = [_light_words(name, base, found)]
    share = 1 / found.more_light
    if found.more_light > 1 + _NOTICED:
        level = f"Dimmed to {100 * share:.0f} % for the same light it draws"
    elif found.more_light < 1 - _NOTICED:
        level = f"For the same light it needs {100 * share:.0f} % of its present output,"
    else:
        level = "It draws"
    kwh = abs(found.kwh_saved)
    saves = "less" if found.kwh_saved >= 0 else "more"
    saved = found.money_saved
    cash = "" if saved is None else f" ({money(abs(saved), costs.currency)})"
    if found.in_reach:
        drawn = f"{energy(kwh, unit=True)} a month {saves}{cash}"
        parts.append(f"{level} {_power(found.level)}: {drawn}.")
    else:
        parts.append("Its lamps do not give the same light, not even at full output.")
    parts.append(_bought_words(found, costs))
    if found.total is not None and found.base_total is not None:
        parts.append(
            f"As they stand it costs {money(found.total, costs.currency)} in "
            f"{costs.span_months:.0f} months, bought and run; running {base} costs "
            f"{money(found.base_total, costs.currency)}."
        )
    return " ".join(parts)


def _light_words(name: str, base: str, found: Worth) -> str:
    change = 100 * (found.more_light - 1)
    light = (
        f"as much light a day as {base}"
        if abs(change) < 100 * _NOTICED
        else f"{abs(change):.0f} % {'more' if change > 0 else 'less'} light a day than {base}"
    )
    if abs(found.drawn.watts - found.base.watts) < 0.5:
        return f"{name} gives {light} and draws {_power(found.drawn)} as well."
    efficient = 100 * (found.per_watt - 1)
    return (
        f"{name} gives {light} and draws {_power(found.drawn)} instead of "
        f"{_power(found.base)}: {abs(efficient):.0f} % {'more' if efficient >= 0 else 'less'} "
        "light for the same energy."
    )


def _bought_words(found: Worth, costs: Costs) -> str:
    cost = found.bill.cost
    if found.bill.empty:
        return "Nothing has to be bought for it."
    if cost is None:
        missing = [f"how {one.name} is priced" for one in found.bill.lamps if one.price is None]
        if found.bill.unknown:
            missing.append("how its linings are sold")
        elif any(one.cost is None for one in found.bill.purchases):
            missing.append("the price of a roll or sheet")
        return f"Say {' and '.join(missing)} to see what it costs."
    said = f"What has to be bought costs {money(cost, costs.currency)}"
    if not found.in_reach:
        return f"{said}; without the same light that is never paid back."
    if found.money_saved is None:
        return f"{said}; with a tariff it can be said when that is paid back."
    if found.payback is None:
        return f"{said}; it saves nothing at the same light, so that is never paid back."
    return f"{said}; at the same light it is paid back after {found.payback:.1f} months."


def _power(one: Running) -> str:
    return FIGURE["watts"].text(one.watts)
