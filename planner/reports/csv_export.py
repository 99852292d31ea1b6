"""An estimate's map as CSV: one line per cell, always with a decimal point."""

from __future__ import annotations

import csv
import io
import math

from planner.estimate.result import Estimate

COLUMNS = ("x_m", "y_m", "ppfd_umol_m2_s", "cell_area_m2", "at_centre")
_BEGINS_FORMULA = frozenset("=+-@\t\r\n＝＋－＠")
ERROR_COLUMN = "standard_error_umol_m2_s"


def guarded(text: str) -> str:
    """A text for a cell, with an apostrophe before what a spreadsheet would take for a formula.

    Source: OWASP, CSV Injection: cells that begin with =, +, -, @, a tab or a carriage
    return, and the full-width forms of these signs. Numbers are not given through here.
    """
    return f"'{text}" if text[:1] in _BEGINS_FORMULA else text


def estimate_to_csv(estimate: Estimate) -> str:
    """One header line, then one line per cell that lies in the footprint.

    Cells come row by row, y ascending, x ascending within a row; coordinates are the cell
    centres in metres, six decimals; PPFD carries four, first as the mean of the cell, then
    as what is read in its middle (on screen too). An estimate of fine quality has one
    more column: the standard error of each cell.
    """
    stream = io.StringIO()
    writer = csv.writer(stream, lineterminator="\n")
    errors, middles = estimate.cell_error, estimate.map.middles
    writer.writerow(COLUMNS if errors is None else (*COLUMNS, ERROR_COLUMN))
    for row, y in enumerate(estimate.y.tolist()):
        for column, x in enumerate(estimate.x.tolist()):
            value = float(estimate.ppfd[row, column])
            if math.isfinite(value):
                area = float(estimate.cell_area[row, column])
                line = [f"{x:.6f}", f"{y:.6f}", f"{value:.4f}", f"{area:.8f}"]
                line.append(f"{float(middles[row, column]):.4f}")
                if errors is not None:
                    line.append(f"{float(errors[row, column]):.4f}")
                writer.writerow(line)
    return stream.getvalue()
