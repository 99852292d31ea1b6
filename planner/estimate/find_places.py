"""Where 1 to 6 equal lamps may hang: regular layouts to try, and each lamp moved on its own.

Layouts are rows by columns, turned or not, spread a little or a lot; from the best of them the
simplex method of Nelder and Mead moves every lamp. What is sought is told by a function of the
lamps, so that the search is one on the light core with its walls and linings, not a table; it may
end in a layout that is best only among its neighbours.
"""

from __future__ import annotations

import contextlib
import itertools
from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import Final

import numpy as np
import numpy.typing as npt

from planner.plan.lamp import Lamp
from planner.plan.plan import Plan
from planner.plan.space import contains, outlines_overlap, sticks_out
from planner.plan.variant_edits import spread_lamps

MOST_LAMPS: Final = 6
SPREADS: Final = (0.7, 0.9, 1.1)
PUSHES: Final = (1.0, 0.5)
"""Powers of the distance from the middle: below 1 lamps crowd towards the walls."""

Places = npt.NDArray[np.float64]
"""Centres of the lamps, shape (n, 2), in metres."""


def arrangements(
    plan: Plan, counts: Sequence[int] = (), *, places: bool = False, grain: float = 0.01
) -> list[tuple[Lamp, ...]]:
    """Lamps as they may hang, all at the plan's outputs; none where so many do not fit.

    Places are whole multiples of ``grain`` (metres), as far as they fit then. Without ``counts``
    as many as hang; without ``places`` they hang as they do, or evenly spread
    where they are more or fewer. Others than those that hang are all like the first one.
    """
    found = [plan.lamps] if not counts or len(plan.lamps) in counts else []
    pattern = plan.lamps[0].model_copy(update={"output_percent": 100.0, "label": ""})
    for count in counts or (len(plan.lamps),):
        if count == len(plan.lamps) and not places:
            continue
        layouts: Iterable[tuple[Places, float]] = itertools.chain(
            _layouts(plan, pattern, count), _over_the_floor(plan, pattern, count)
        )
        if not places:
            layouts = itertools.chain(_evenly(plan, pattern, count), layouts)
        for at, turn in layouts:
            lamps = _hung(plan, pattern, _whole(at, grain), turn) or _hung(plan, pattern, at, turn)
            if lamps is not None:
                found.append(lamps)
                if not places:  # the first that fits will do
                    break
    return found


def _evenly(plan: Plan, pattern: Lamp, count: int) -> Iterator[tuple[Places, float]]:
    """So many lamps as options are tried with; none in a footprint that is far from a box."""
    with contextlib.suppress(ValueError):
        spread = spread_lamps(plan, pattern.model, count).lamps
        yield np.array([(one.x, one.y) for one in spread]), pattern.rotation_deg


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
        if count == 1 and (spread, push) != (SPREADS[0], PUSHES[0]):
            continue  # one lamp in the middle is the same however far it is spread
        away = 2 * unit - 1
        unit = 0.5 + 0.5 * np.sign(away) * np.abs(away) ** push * spread
        yield np.array([x0, y0]) + unit * np.array([x1 - x0, y1 - y0]), turn


_FLOOR: Final = 24
"""Places along either side of the footprint that a lamp is tried at."""


def _over_the_floor(plan: Plan, pattern: Lamp, count: int) -> Iterator[tuple[Places, float]]:
    """Lamps each in the middle of its share of the floor, for outlines that no grid fits.

    Shares are those of the nearest lamp, moved to their middles until they rest (Lloyd 1982,
    least squares quantization in PCM), over the places where one lamp fits.
    """
    x0, y0, x1, y1 = plan.space.bounds
    x, y = (low + (np.arange(_FLOOR) + 0.5) / _FLOOR * (high - low)
            for low, high in ((x0, x1), (y0, y1)))  # fmt: skip
    every = np.stack(np.meshgrid(x, y), axis=-1).reshape(-1, 2)
    turn = pattern.rotation_deg
    free = np.array([at for at in every if _hung(plan, pattern, at[None], turn) is not None])
    if len(free) < count:
        return
    # Begun as far from each other as can be, the first as far as can be from the middle.
    lamps = [free[np.linalg.norm(free - free.mean(axis=0), axis=1).argmax()]]
    while len(lamps) < count:
        near = np.linalg.norm(free[:, None] - np.array(lamps), axis=2).min(axis=1)
        lamps.append(free[near.argmax()])
    at = np.array(lamps)
    for _ in range(20):
        whose = np.linalg.norm(free[:, None] - at, axis=2).argmin(axis=1)
        if len(np.unique(whose)) < count:
            return  # two of them at one place
        middles = np.array([free[whose == k].mean(axis=0) for k in range(count)])
        at = free[np.linalg.norm(free[:, None] - middles, axis=2).argmin(axis=0)]
    yield at, turn


def _hung(plan: Plan, pattern: Lamp, places: Places, turn: float) -> tuple[Lamp, ...] | None:
    """Lamps at these places, or None where they do not fit."""
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
    return lamps


def _whole(places: Places, grain: float) -> Places:
    return np.asarray(np.round(places / grain) * grain, dtype=np.float64)


def refined(
    plan: Plan,
    lamps: tuple[Lamp, ...],
    loss: Callable[[tuple[Lamp, ...]], float],
    steps: int,
    grain: float,
) -> tuple[Lamp, ...]:
    """Move every lamp on its own; the best places met, which may be those they had.

    All are like the first one. Places are whole multiples of ``grain``, as far as they fit then.
    """
    pattern, turn = lamps[0], lamps[0].rotation_deg
    start = np.array([(lamp.x, lamp.y) for lamp in lamps])
    best, least, seen = lamps, loss(lamps), {}

    def rated(flat: Places) -> float:
        nonlocal best, least
        places = _whole(flat.reshape(-1, 2), grain)
        key = tuple(places.ravel().round(6))
        if key not in seen:
            hung = _hung(plan, pattern, places, turn)
            seen[key] = np.inf if hung is None else loss(hung)
            if hung is not None and seen[key] < least:
                best, least = hung, seen[key]
        # Finite, so that the simplex can compare; worse than anything that fits.
        return float(min(seen[key], 1e6))

    size = max(float(np.ptp(start, axis=0).max()), 0.1)
    middle = start.mean(axis=0)

    def as_one(shape: Places) -> float:
        """All together: shifted, and spread along each axis."""
        return rated((middle + shape[:2] + (start - middle) * shape[2:]).ravel())

    _simplex(as_one, np.array([0.0, 0.0, 1.0, 1.0]), [0.1 * size] * 2 + [0.15] * 2, steps // 3)
    flat = np.array([(lamp.x, lamp.y) for lamp in best]).ravel()
    _simplex(rated, flat, [0.1 * size] * len(flat), steps - steps // 3)
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
