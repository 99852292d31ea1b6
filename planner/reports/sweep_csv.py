"""A sweep and a comparison as CSV: one line a point or a side, always with a decimal point."""

from __future__ import annotations

import csv
import dataclasses
import io
from typing import Any

from planner.estimate.compare import COLUMNS, Row
from planner.estimate.result import Figures
from planner.estimate.sweep import Sweep
from planner.estimate.sweep_over import swept
from planner.reports.csv_export import guarded

UNITS = {
    "mean": "umol_m2_s",
    "minimum": "umol_m2_s",
    "maximum": "umol_m2_s",
    "dli": "mol_m2_d",
    "efficacy": "umol_j",
    "photon_flux": "umol_s",
    "watts_per_m2": "w_m2",
    "canopy_area": "m2",
}
_AXIS_UNITS = {"m": "_m", "%": "_percent", "h": "_h", "°": "_deg", "W": "_w"}


def sweep_to_csv(sweep: Sweep) -> str:
    """One header line, then one line a point in the order of the grid.

    First the axes, then every figure as a fraction or in the unit its heading names (nine
    significant digits; empty where there is none), last the reason where a point has no
    figures.
    """
    stream = io.StringIO()
    writer = csv.writer(stream, lineterminator="\n")
    names = [field.name for field in dataclasses.fields(Figures)]
    axes = [swept(one.axis) for one in sweep.over]
    writer.writerow(
        [
            *(one.key.replace("-", "_") + _AXIS_UNITS.get(one.unit, "") for one in axes),
            *(f"{name}_{UNITS[name]}" if name in UNITS else name for name in names),
            "problem",
        ]
    )
    for point in sweep.in_order():
        figures: Any = point.figures
        values = [None if figures is None else getattr(figures, name) for name in names]
        writer.writerow(
            [*map(_number, point.values), *map(_number, values), guarded(point.problem)]
        )
    return stream.getvalue()


def comparison_to_csv(rows: tuple[Row, ...], delimiter: str = ",") -> str:
    """The table of a comparison: each figure, and beside it its ratio to the baseline in %.

    With a tab as ``delimiter`` it can be pasted into a spreadsheet.
    """
    stream = io.StringIO()
    writer = csv.writer(stream, lineterminator="\n", delimiter=delimiter)
    head = [text for c in COLUMNS for text in (f"{c.heading} ({c.unit})", f"{c.heading} ratio (%)")]
    writer.writerow(["Name", "Differs in", *head, "Problems"])
    for row in rows:
        pairs = zip(row.values, row.ratios, strict=True)
        cells = [text for value, ratio in pairs for text in (_number(value), _number(ratio))]
        said = (row.name, "; ".join(row.said), " ".join(row.problems))
        name, differs, problems = map(guarded, said)
        writer.writerow([name, differs, *cells, problems])
    return stream.getvalue()


def _number(value: float | None) -> str:
    return "" if value is None else f"{value:.9g}"
