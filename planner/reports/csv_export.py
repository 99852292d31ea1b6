"""An estimate's map as CSV: one line per cell, always with a decimal point."""

from __future__ import annotations

import csv
import io
import math

from planner.estimate.result import Estimate

COLUMNS = ("x_m", "y_m", "ppfd_umol_m2_s", "cell_area_m2")


def estimate_to_csv(estimate: Estimate) -> str:
    """One header line, then one line per cell that lies in the footprint.

    Cells come row by row, y ascending, x ascending within a row; coordinates are the cell
    centres in metres, six decimals; PPFD carries four.
    """
    stream = io.StringIO()
    writer = csv.writer(stream, lineterminator="\n")
    writer.writerow(COLUMNS)
    for row, y in enumerate(estimate.y.tolist()):
        for column, x in enumerate(estimate.x.tolist()):
            value = float(estimate.ppfd[row, column])
            if math.isfinite(value):
                area = float(estimate.cell_area[row, column])
                writer.writerow((f"{x:.6f}", f"{y:.6f}", f"{value:.4f}", f"{area:.8f}"))
    return stream.getvalue()
