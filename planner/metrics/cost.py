"""Area of lining to cover, what it costs, and when it has paid for itself.

Areas count what is seen of a surface; pieces add the overlap allowance on every side, for
corners and seams. The door is a piece by itself, cut to its own size without overlap, so
that it can still open; it is bought even while the door stands open. Ceiling and floor
are cut from the rectangle around the footprint. Obstacles are taken as made of their
material and need none.
"""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from typing import Final

from planner.metrics.cutting import CuttingList, Piece, cutting_list
from planner.plan.costs import Costs, Goods
from planner.plan.lining import OPENING_KEY
from planner.plan.plan import Plan
from planner.units import SECONDS_PER_HOUR

DAYS_PER_MONTH: Final = 365.25 / 12


@dataclass(frozen=True)
class Cover:
    """What one lining covers: the pieces to cut, and the area seen of each in m²."""

    lining: str
    pieces: tuple[Piece, ...]
    areas: tuple[float, ...]

    @property
    def area(self) -> float:
        """Area seen, in m²."""
        return sum(self.areas)

    def without(self, there: Collection[Piece]) -> Cover:
        """The cover without pieces that are there already."""
        left = [k for k, piece in enumerate(self.pieces) if piece not in there]
        return Cover(
            self.lining, tuple(self.pieces[k] for k in left), tuple(self.areas[k] for k in left)
        )


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
    areas: dict[str, list[float]] = {}
    pieces: dict[str, list[Piece]] = {}

    def add(lining: str, area: float, piece: Piece) -> None:
        if lining != OPENING_KEY:
            areas.setdefault(lining, []).append(area)
            pieces.setdefault(lining, []).append(piece)

    for wall, cover in enumerate(plan.walls):
        length = plan.space.wall_length(wall)
        extra = 0.0 if wall == plan.space.door else 2 * allowance
        bottom = 0.0
        for number, band in enumerate(cover.bands):
            top = plan.space.height if band.top is None else min(band.top, plan.space.height)
            if top > bottom:
                label = f"Wall {wall + 1}" + (" (door)" if wall == plan.space.door else "")
                label += f", band {number + 1}" if len(cover.bands) > 1 else ""
                piece = Piece(label, length + extra, top - bottom + extra)
                add(band.lining, length * (top - bottom), piece)
            bottom = max(top, bottom)
    x0, y0, x1, y1 = plan.space.bounds
    for label, key in (("Ceiling", plan.ceiling), ("Floor", plan.floor)):
        piece = Piece(label, x1 - x0 + 2 * allowance, y1 - y0 + 2 * allowance)
        add(key, plan.space.area, piece)
    return tuple(Cover(key, tuple(pieces[key]), tuple(areas[key])) for key in pieces)


def purchase(cover: Cover, goods: Goods, costs: Costs | None = None) -> Purchase:
    """Lay a cover out on rolls or sheets and price it, with the overlap and seams of ``costs``."""
    costs = costs or Costs()
    cutting = cutting_list(
        cover.pieces, goods.width, goods.length, costs.overlap, seams_welcome=costs.seams
    )
    cost = None if goods.price is None else cutting.rolls * goods.price
    return Purchase(cover, goods, cutting, cost)


def kilowatt_hours_per_month(watts: float, hours: float) -> float:
    """Energy in kWh of a load over a month of 365.25/12 days at ``hours`` a day."""
    return watts * hours / 1000.0 * DAYS_PER_MONTH


def payback_months(cost: float, saved_per_month: float) -> float | None:
    """Months until savings have paid a cost; None when nothing is saved."""
    if cost <= 0:
        return 0.0
    return cost / saved_per_month if saved_per_month > 0 else None


# -- Lamp heat and the air that carries it away ----------------------------------------

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
