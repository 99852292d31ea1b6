"""A sweep and a comparison as CSV: one line a point or a side, always with a decimal point."""

from __future__ import annotations

import csv
import io

from planner.estimate.compare import Row
from planner.estimate.sweep import Sweep
from planner.estimate.sweep_over import swept
from planner.metrics.figures import FIGURES
from planner.reports.csv_export import guarded

_AXIS_UNITS = {"m": "_m", "%": "_percent", "h": "_h", "°": "_deg", "W": "_w"}


def sweep_to_csv(sweep: Sweep) -> str:
    """One header line, then one line a point in the order of the grid.

    First the axes, then every figure as a fraction or in the unit its heading names (nine
    significant digits; empty where there is none), last the reason where a point has no
    figures.
    """
    stream = io.StringIO()
    writer = csv.writer(stream, lineterminator="\n")
    axes = [swept(one.axis) for one in sweep.over]
    writer.writerow(
        [
            *(one.key.replace("-", "_") + _AXIS_UNITS.get(one.unit, "") for one in axes),
            *("_".join(filter(None, (one.key, one.column))) for one in FIGURES),
            "problem",
        ]
    )
    for point in sweep.in_order():
        figures = point.figures
        values = [None if figures is None else one.of(figures) for one in FIGURES]
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
    head = [text for one in FIGURES for text in (one.heading(), f"{one.name} ratio (%)")]
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
