"""What is written for other programs: map, sweep and options as CSV, an estimate as JSON.

Always with a decimal point, rows by rising y.
"""

from __future__ import annotations

import csv
import dataclasses
import io
import json
import math
import re
from collections.abc import Iterable, Sequence
from typing import Any

import numpy as np

import planner
from planner.estimate.compare import COLUMN, Option, columns_of
from planner.estimate.result import CanopyLight, Estimate, Figures, FloatArray
from planner.estimate.sweep import Sweep
from planner.estimate.sweep_points import Over, Step
from planner.metrics.figures import FIGURES, Digits
from planner.plan.costs import Costs
from planner.plan.place import OWN, Place, judged, opens
from planner.plan.plan import Plan
from planner.units import PPFD_UNIT

COLUMNS = ("x_m", "y_m", "ppfd_umol_m2_s", "cell_area_m2", "at_centre")
_BEGINS_FORMULA = frozenset("=+-@\t\r\n＝＋－＠")
ERROR_COLUMN = "standard_error_umol_m2_s"


def guarded(text: str) -> str:
    """A text for a cell, with an apostrophe before what a spreadsheet would take for a formula.

    Source: OWASP, CSV Injection: cells that begin with =, +, -, @, a tab or a carriage
    return, and the full-width forms of these signs. Numbers are not given through here.
    """
    return f"'{text}" if text[:1] in _BEGINS_FORMULA else text


def cell(value: str | float | None) -> str:
    """A value as a cell: texts guarded, numbers to nine digits, nothing where there is none."""
    if isinstance(value, str):
        return guarded(value)
    return "" if value is None or not math.isfinite(value) else f"{value:.9g}"


def table_text(heads: Sequence[str], rows: Iterable[Sequence[str]], delimiter: str = ",") -> str:
    """A table as CSV, or with a tab as ``delimiter`` as a spreadsheet pastes it."""
    stream = io.StringIO()
    writer = csv.writer(stream, lineterminator="\n", delimiter=delimiter)
    writer.writerow(heads)
    writer.writerows(rows)
    return stream.getvalue()


def estimate_to_csv(estimate: Estimate) -> str:
    """One header line, then one line per cell that lies in the footprint.

    Cells come row by row, y ascending, x ascending within a row; coordinates are the cell
    centres in metres, six decimals; PPFD carries four, first as the mean of the cell, then
    as what is read in its middle (on screen too). An estimate of fine quality has one
    more column: the standard error of each cell by independent runs, chance alone. Where the
    colours of all lamps are known, the PPFD of each waveband of the cell follows. Where obstacles
    carry canopies, a last column says which canopy a cell is part of, and theirs follow.
    """
    own, plan = estimate.own, estimate.plan
    errors = own.cell_error
    heads = [*COLUMNS, *([] if errors is None else [ERROR_COLUMN])]
    heads += [f"{band}_umol_m2_s" for band in own.bands or ()]
    heads += ["canopy"] if estimate.tops else []
    lines = []
    for one in estimate.canopies:
        middles, bands = one.map.middles, (one.bands or {}).values()
        for row, column in np.argwhere(one.inside):
            line = [f"{float(one.x[column]):.6f}", f"{float(one.y[row]):.6f}"]
            line += [f"{float(one.ppfd[row, column]):.4f}", f"{one.cell_area[row, column]:.8f}"]
            line.append(f"{float(middles[row, column]):.4f}")
            if errors is not None:
                line.append(f"{float(errors[row, column]):.4f}" if one is own else "")
            line += [f"{float(values[row, column]):.4f}" for values in bands]
            if estimate.tops:
                line.append(one.place.tag(plan))
            lines.append(line)
    return table_text(heads, lines)


# -- A sweep and a comparison as CSV ---------------------------------------------------

_TOGETHER = frozenset({"mean", "minimum", "min_over_mean", "share_under", "share_inside",
                       "share_over"})  # fmt: skip
"""Of all canopies together."""

_AXIS_UNITS = {"m": "_m", "%": "_percent", "h": "_h", "°": "_deg", "W": "_w"}


def sweep_to_csv(sweep: Sweep, delimiter: str = ",") -> str:
    """One header line, then one line a point in the order of the grid.

    First the axes (linings and lamps by name), then every figure as a fraction or in the unit
    its heading names (nine significant digits; empty where there is none), last the reason
    where a point has no figures. With a tab as ``delimiter`` it can be pasted. Where obstacles
    carry canopies, figures of all canopies together stand behind, and which of those that are not
    judged lie out of their bands; where the plan is judged by one of these, a column before the
    figures says which.
    """
    by = judged(sweep.plan)
    several = any(one.canopy for one in sweep.plan.obstacles)
    together = [one for one in FIGURES if several and one.key in _TOGETHER]
    whose = [] if by == OWN else [by.tag(sweep.plan)]
    heads = [
        *(_axis_heading(one, sweep.plan) for one in sweep.over),
        *("judged_by" for _ in whose),
        *("_".join(filter(None, (one.key, one.column))) for one in FIGURES),
        *("_".join(filter(None, ("all", one.key, one.column))) for one in together),
        *(("out_of_band",) if several else ()),
        "problem",
    ]
    lines = []
    for number in sorted(sweep.points):
        point = sweep.points[number]
        figures = point.figures
        values = [None if figures is None else one.of(figures) for one in FIGURES]
        steps = [_axis_value(*one) for one in zip(sweep.over, point.values, strict=True)]
        values += [None if point.overall is None else one.of(point.overall) for one in together]
        beyond = [sweep.beyond(number)] if several else []
        lines.append([cell(one) for one in (*steps, *whose, *values, *beyond, point.problem)])
    return table_text(heads, lines, delimiter)


def _axis_value(one: Over, value: Step) -> float | str:
    """A value of an axis as it is typed: shares in per cent, linings and lamps by name."""
    if not isinstance(value, float | int):
        return value.name
    return value if one.dial is None else value / one.dial.quantity.factor


def _axis_heading(one: Over, plan: Plan) -> str:
    """What an axis goes over and where, as a column may be called, with its unit."""
    where = "" if one.place is None else f"_{one.place.tag(plan)}"
    found = one.dial
    kind = "" if found is None else found.quantity.suffix if found.unit == "1" else found.unit
    unit = _AXIS_UNITS.get(kind, "")
    return re.sub(r"\W+", "_", f"{one.axis}{where}") + unit


def options_to_csv(options: Sequence[Option], costs: Costs, delimiter: str = ",") -> str:
    """The options table: its columns, then the figures it leaves out, then what to buy.

    Where one is judged by a canopy that an obstacle carries, a column says whose figures stand;
    where obstacles carry canopies, one says which of those not judged lie out of their bands.
    Shares stand in per cent. With a tab as ``delimiter`` it can be pasted into a spreadsheet.
    """
    rest = [one for one in FIGURES if one.key not in COLUMN]
    shown = columns_of(options)
    heads = [column.heading(costs.currency) for column in shown]
    carried = any(column.of for column in shown)
    judged_by = [_judged_by(one) for one in options]
    several = any(by != OWN for by in judged_by)
    heads = ["Name", "Differs in", *heads, *(one.heading() for one in rest)]
    if several:
        heads.insert(2, "Judged by")
    lines = []
    for one, by in zip(options, judged_by, strict=True):
        found = None if one.side.estimate is None else one.side.estimate.figures
        values = [column.shown(one.values[column.key]) for column in shown]
        values += [None if found is None else f.shown(f.of(found)) for f in rest]
        whose = [by.title(one.side.plan)] if several else []
        said = (one.side.name, "; ".join(one.side.said), *whose, *values, one.buy)
        beyond = [one.beyond] if carried else []
        lines.append([cell(value) for value in (*said, *beyond, " ".join(one.side.problems))])
    behind = ["Out of their bands"] if carried else []
    return table_text([*heads, "What to buy", *behind, "Problems"], lines, delimiter)


def _judged_by(one: Option) -> Place:
    found = one.side.estimate
    return judged(one.side.plan) if found is None else found.place


# -- An estimate as JSON ---------------------------------------------------------------

EXPORT_FORMAT = 1


def estimate_to_json(estimate: Estimate) -> str:
    """The text of the export: standard JSON (no NaN), ending in a line break."""
    return (
        json.dumps(estimate_to_values(estimate), ensure_ascii=False, indent=1, allow_nan=False)
        + "\n"
    )


def estimate_to_values(estimate: Estimate) -> dict[str, Any]:
    """The export as plain values.

    ``map.ppfd[row][column]`` belongs to the cell around ``(map.x_m[column],
    map.y_m[row])``, rows by rising y; null outside the footprint. Where the plan is judged by a
    canopy that an obstacle carries, ``judged_by`` is its place among ``canopies``; map, target and
    figures are those of the plan's own canopy all the same.
    """
    nx, ny = estimate.options.cells
    judged_by = {} if estimate.place == OWN else {"judged_by": estimate.place.tag(estimate.plan)}
    estimate = estimate.own
    return {
        "format": EXPORT_FORMAT,
        "program": {"name": "Grow space light planner", "version": planner.__version__},
        "plan_name": estimate.plan.name,
        "quality": str(estimate.options.quality),
        "seed": estimate.options.seed,
        "cells": [nx, ny],
        "seconds": round(estimate.seconds, 4),
        "units": {
            "x_m": "m",
            "y_m": "m",
            "ppfd": PPFD_UNIT,
            "standard_error": PPFD_UNIT,
            "cell_area_m2": "m²",
            **{one.key: one.unit for one in FIGURES if one.digits is not Digits.SHARE},
            "ratios and shares": "1",
        },
        "map": {
            "order": "row-major: ppfd[row][column], rows by rising y, columns by rising x",
            "x_m": _numbers(estimate.x),
            "y_m": _numbers(estimate.y),
            "ppfd": _rows(estimate.ppfd),
            "cell_area_m2": _rows(estimate.cell_area),
            # By independent runs (fine quality only): chance alone, while "numeric_error" below
            # also holds what the runs share.
            "standard_error": _rows(estimate.cell_error),
        },
        **judged_by,
        "target": _target(estimate),
        "photoperiod_hours": estimate.plan.photoperiod_hours,
        "figures": _figures(estimate.figures),
        # Of each canopy that an obstacle carries, the lowest first, and of all with the plan's own.
        "canopies": [_canopy(estimate, top) for top in estimate.tops],
        "overall": _figures(estimate.overall),
        "shares": [
            {
                "label": share.place.title(estimate.plan),
                "kind": "opening" if opens(estimate.plan, share.place) else share.place.kind,
                "photon_flux": _number(share.photon_flux),
                "share": _number(share.share),
                "index": share.place.index,
                "band": share.place.band,
            }
            for share in estimate.shares
        ],
        # Of each waveband, 400-500-600-700-750 nm; null where a lamp's colour is not known.
        "wavebands": _wavebands(estimate),
        # On equal parts of each wall in its order: rows from the bottom of the room, which a closed
        # canopy is, up to the ceiling, and columns from the wall's first corner to its second.
        "walls": None if estimate.walls is None else [_rows(wall) for wall in estimate.walls],
        "closure": _number(estimate.closure),
        "cross_check": _number(estimate.cross_check),
        "numeric_error": _number(estimate.numeric_error),
        # Photons counted by independent means, µmol/s on the canopy.
        "recount": None if estimate.recount is None else dataclasses.asdict(estimate.recount),
    }


def _canopy(estimate: Estimate, top: CanopyLight) -> dict[str, Any]:
    plan = estimate.plan
    return {
        "place": top.place.tag(plan),
        "name": plan.obstacles[top.place.index].name,
        "height_m": _number(plan.obstacles[top.place.index].top),
        "x_m": _numbers(top.x),
        "y_m": _numbers(top.y),
        "ppfd": _rows(top.ppfd),
        "cell_area_m2": _rows(top.cell_area),
        "wavebands": _wavebands(top),
        "figures": _figures(top.figures),
        "numeric_error": _number(top.numeric_error),
    }


def _wavebands(of: CanopyLight) -> dict[str, Any] | None:
    return None if of.bands is None else {band: _rows(rows) for band, rows in of.bands.items()}


def _target(estimate: Estimate) -> dict[str, Any] | None:
    target = estimate.plan.target
    if target is None:
        return None
    band = target.ppfd_band(estimate.plan.photoperiod_hours)
    return {**target.model_dump(mode="json"), "ppfd_band": None if band is None else list(band)}


def _figures(figures: Figures) -> dict[str, float | None]:
    return {one.key: _number(one.of(figures)) for one in FIGURES}


def _rows(values: FloatArray | None) -> list[list[float | None]] | None:
    return None if values is None else [_numbers(row) for row in values]


def _numbers(values: FloatArray) -> list[float | None]:
    return [_number(value) for value in np.asarray(values, dtype=float).tolist()]


def _number(value: float | None) -> float | None:
    return None if value is None or not math.isfinite(value) else float(value)
