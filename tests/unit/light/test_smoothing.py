"""The blocks give what one dense system of all cells gives, cells outside or not."""

from __future__ import annotations

import numpy as np
import pytest

from planner.light import smoothing


@pytest.mark.parametrize(("rows", "columns"), [(9, 6), (6, 9), (5, 1), (2, 3), (7, 7)])
@pytest.mark.parametrize("full", [True, False])
def test_each_fit_solves_the_penalised_least_squares(
    rows: int, columns: int, *, full: bool
) -> None:
    draw = np.random.default_rng(4)
    free = np.ones((rows, columns), dtype=bool) if full else draw.random((rows, columns)) < 0.8
    free[0, 0] = True
    inside = np.flatnonzero(free)
    # One row for each three free cells side by side: their second difference.
    bends = []
    for row, column in np.ndindex(rows, columns):
        for down, right in ((1, 0), (0, 1)):
            three = [(row + k * down, column + k * right) for k in range(3)]
            if all(a < rows and b < columns and free[a, b] for a, b in three):
                line = np.zeros((rows, columns))
                for cell, factor in zip(three, (1.0, -2.0, 1.0), strict=True):
                    line[cell] = factor
                bends.append(line.ravel()[inside])
    bend = np.array(bends).reshape(-1, inside.size)
    parts = draw.random((3, inside.size))
    found = smoothing._bent(rows, columns, inside.tobytes(), parts)
    for strength, fits in zip(smoothing._STRENGTHS, found, strict=True):
        system = np.eye(inside.size) + strength * bend.T @ bend
        # The strongest make systems whose condition is several millions.
        assert fits == pytest.approx(np.linalg.solve(system, parts.T).T, abs=1e-7)
