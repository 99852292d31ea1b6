"""Find where 1 to 6 equal lamps should hang for the most even light at a mean asked.

The search begins with regular layouts (rows by columns, turned or not, spread a little or
a lot), takes the best, and moves every lamp on its own from there by the simplex method of
Nelder and Mead. It is a search on the core with its walls and linings, not a table, and it
may end in a layout that is best only among its neighbours.
"""

from __future__ import annotations

import itertools
from collections.abc import Callable, Iterator
from typing import Final

import numpy as np
import numpy.typing as npt

from planner.estimate.find import FindError, Found, Limit, Search, scaled_output
from planner.estimate.result import EstimateOptions
from planner.metrics.figures import percent, ppfd
from planner.plan.edits import changed
from planner.plan.lamp import Lamp
from planner.plan.plan import Plan
from planner.plan.space import contains, outlines_overlap, sticks_out
from planner.units import said_length

MOST_LAMPS: Final = 6
SPREADS: Final = (0.7, 0.9, 1.1)
PUSHES: Final = (1.0, 0.5)
"""Powers of the distance from the middle: below 1 lamps crowd towards the walls."""

_FIRST_STEPS: Final = 50
_STEPS_PER_LAMP: Final = 20

Places = npt.NDArray[np.float64]
"""Centres of the lamps, shape (n, 2), in metres."""


def find_places(
    plan: Plan,
    count: int,
    mean: float,
    options: EstimateOptions | None = None,
    *,
    progress: Callable[[float], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> Found:
    """Places of ``count`` lamps with the best min/mean at a mean PPFD asked.

    All are of the kind, hanging height and output of the plan's first lamp; the output is
    then set so that the mean is met.

    Raises
    ------
    FindError
        If the plan has no lamp to multiply, the count is not 1 to 6, the mean is not above
        0, or so many lamps do not fit side by side.
    planner.estimate.evaluate.Cancelled
        If ``cancelled`` said so.
    """
    if not plan.lamps:
        raise FindError("Hang one lamp first; its kind and height are taken for all of them.")
    if not 1 <= count <= MOST_LAMPS:
        raise FindError(f"Places are sought for 1 to {MOST_LAMPS} lamps, not for {count}.")
    if mean <= 0:
        raise FindError("The mean asked for must be above 0 µmol m⁻² s⁻¹.")
    pattern = plan.lamps[0].model_copy(update={"output_percent": 100.0, "label": ""})
    steps = _FIRST_STEPS + _STEPS_PER_LAMP * count
    search = Search(steps + 24, progress, cancelled)
    seen: dict[tuple[float, ...], float] = {}

    def evenness(places: Places, turn: float) -> float:
        key = (*np.round(places, 4).ravel().tolist(), turn)
        if key not in seen:
            made = _hung(plan, pattern, places, turn)
            seen[key] = -1.0 if made is None else search.quick(made).figures.min_over_mean or 0.0
        return seen[key]

    starts = [
        (places, turn)
        for places, turn in _layouts(plan, pattern, count)
        if _hung(plan, pattern, places, turn) is not None
    ]
    if not starts:
        raise FindError(
            f"{count} of '{pattern.model.name}' do not fit side by side in the footprint; ask for "
            "fewer, or take a smaller lamp."
        )
    start, turn = max(starts, key=lambda entry: evenness(*entry))
    places = _refined(start, lambda at: evenness(at, turn), steps)
    full = _hung(plan, pattern, places, turn) or plan
    return _answer(full, count, mean, search, options)


def _answer(
    full: Plan, count: int, mean: float, search: Search, options: EstimateOptions | None
) -> Found:
    reach = search.confirm(full, options).figures.mean
    met = reach >= mean
    made = scaled_output(full, mean / reach) if met else full
    estimate = search.confirm(made, options)
    where = "; ".join(
        f"{said_length(round(lamp.x, 3))}, {said_length(round(lamp.y, 3))}" for lamp in made.lamps
    )
    lamps = "One lamp" if count == 1 else f"{count} lamps"
    words = (
        f"{lamps} at (x, y) {where}, {made.lamps[0].output_percent:.0f} % output: mean "
        f"{ppfd(estimate.figures.mean, unit=True)}, min / mean "
        f"{percent(estimate.figures.min_over_mean)}."
    )
    if met:
        words += " More height or more lamps could make it more even; places alone do not."
        return Found(True, made, estimate, Limit.WALLS, words)
    flux = sum(lamp.ppf for lamp in full.lamps) * mean / reach
    words += (
        f" The mean of {mean:.0f} cannot be met with them: it would take {flux:.0f} µmol/s of "
        f"photon flux instead of {sum(lamp.ppf for lamp in full.lamps):.0f}, or more lamps."
    )
    return Found(False, made, estimate, Limit.LIGHT, words)


def _layouts(plan: Plan, pattern: Lamp, count: int) -> Iterator[tuple[Places, float]]:
    """Regular layouts: every rows-by-columns that makes the count, turned and spread."""
    x0, y0, x1, y1 = plan.space.bounds
    grids = [(count // rows, rows) for rows in range(1, count + 1) if count % rows == 0]
    if count == 5:
        grids = [(5, 1), (1, 5), (0, 0)]
    turns: tuple[float, ...] = (pattern.rotation_deg, (pattern.rotation_deg + 90.0) % 360.0)
    if pattern.model.size[0] == pattern.model.size[1]:
        turns = turns[:1]
    for (columns, rows), turn, spread, push in itertools.product(grids, turns, SPREADS, PUSHES):
        if (columns, rows) == (0, 0):  # five as on a die
            unit = np.array([[0.25, 0.25], [0.75, 0.25], [0.5, 0.5], [0.25, 0.75], [0.75, 0.75]])
        else:
            unit = np.array(
                [
                    [(i + 0.5) / columns, (j + 0.5) / rows]
                    for j in range(rows)
                    for i in range(columns)
                ]
            )
        away = 2 * unit - 1
        unit = 0.5 + 0.5 * np.sign(away) * np.abs(away) ** push * spread
        yield np.array([x0, y0]) + unit * np.array([x1 - x0, y1 - y0]), turn
        if count == 1:
            return


def _hung(plan: Plan, pattern: Lamp, places: Places, turn: float) -> Plan | None:
    """The plan with lamps at these places, or None where they do not fit."""
    lamps = tuple(
        pattern.model_copy(update={"x": float(x), "y": float(y), "rotation_deg": turn})
        for x, y in places
    )
    footprint = plan.space.footprint
    for k, lamp in enumerate(lamps):
        inside = contains(footprint, lamp.x, lamp.y)
        if not inside or sticks_out(lamp.outline(), footprint):
            return None
        if any(outlines_overlap(lamp.outline(), other.outline()) for other in lamps[:k]):
            return None
    return changed(plan, lamps=lamps)


def _refined(start: Places, evenness: Callable[[Places], float], steps: int) -> Places:
    """Move every lamp on its own; the best place met, which may be the start."""
    best, best_value = start, evenness(start)

    def loss(flat: Places) -> float:
        nonlocal best, best_value
        places = flat.reshape(-1, 2)
        value = evenness(places)
        if value > best_value:
            best, best_value = places.copy(), value
        return -value

    size = max(float(np.ptp(start, axis=0).max()), 0.1)
    middle = start.mean(axis=0)

    def as_one(shape: Places) -> float:
        """All together: shifted, and spread along each axis."""
        return loss((middle + shape[:2] + (start - middle) * shape[2:]).ravel())

    _simplex(as_one, np.array([0.0, 0.0, 1.0, 1.0]), [0.1 * size] * 2 + [0.15] * 2, steps // 3)
    flat = best.ravel()
    _simplex(loss, flat, [0.1 * size] * len(flat), steps - steps // 3)
    return best


def _simplex(
    loss: Callable[[Places], float], start: Places, reach: list[float], steps: int
) -> None:
    """Nelder and Mead's search from a start, with a first step of ``reach`` along each axis."""
    from scipy.optimize import minimize

    minimize(
        loss,
        start,
        method="Nelder-Mead",
        options={
            "maxfev": steps,
            "xatol": 0.002,
            "fatol": 5e-4,
            "initial_simplex": np.vstack([start, start + np.diag(reach)]),
            "adaptive": len(start) > 4,
        },
    )
