"""A fine estimate tells the error of each cell, also in its files."""

from __future__ import annotations

import csv
import io
import json

import numpy as np
import pytest

from planner.catalogue.library import demo_plan
from planner.estimate.evaluate import evaluate
from planner.estimate.result import Estimate, EstimateOptions, Quality
from planner.reports.exports import ERROR_COLUMN, estimate_to_csv, estimate_to_json


@pytest.fixture(scope="module")
def fine() -> Estimate:
    return evaluate(demo_plan(), EstimateOptions(cells=(4, 4), quality=Quality.FINE))


@pytest.mark.slow
def test_error_of_each_cell_is_written(fine: Estimate) -> None:
    written = json.loads(estimate_to_json(fine))
    errors = np.array(written["map"]["standard_error"], dtype=float)
    assert errors.shape == (4, 4)
    inside = np.isfinite(errors)
    # Four runs cannot agree exactly, and at fine quality differ by far less than a per cent.
    assert (errors[inside] > 0).all()
    assert (errors[inside] < 0.01 * written["figures"]["mean"]).all()
    rows = list(csv.DictReader(io.StringIO(estimate_to_csv(fine))))
    assert float(rows[0][ERROR_COLUMN]) == pytest.approx(errors[0, 0], abs=1e-4)


def test_other_qualities_have_no_such_column() -> None:
    quick = evaluate(demo_plan(), EstimateOptions(cells=(4, 4), quality=Quality.PREVIEW))
    assert json.loads(estimate_to_json(quick))["map"]["standard_error"] is None
    assert ERROR_COLUMN not in estimate_to_csv(quick)
