"""The map and figures as JSON and CSV."""

from __future__ import annotations

import csv
import dataclasses
import io
import json
import math
from typing import Any

import numpy as np
import pytest

import planner
from planner.estimate.result import Estimate, Figures
from planner.reports.exports import estimate_to_csv, estimate_to_json, guarded
from tests.unit.reports.sample_estimate import L_SHAPE, sample_estimate, sample_plan


def strict(token: str) -> Any:
    raise AssertionError(f"{token} is not JSON")


@pytest.fixture
def corner_room() -> Estimate:
    return sample_estimate(sample_plan(L_SHAPE), cells=(12, 9))


def exported(estimate: Estimate) -> dict[str, Any]:
    loaded: dict[str, Any] = json.loads(estimate_to_json(estimate), parse_constant=strict)
    return loaded


def test_the_map_is_row_major_with_y_ascending(corner_room: Estimate) -> None:
    room = exported(corner_room)["map"]
    assert (len(room["x_m"]), len(room["y_m"])) == (12, 9)
    assert (len(room["ppfd"]), len(room["ppfd"][0])) == (9, 12)
    # Cells of 1.2 m / 12 and 0.9 m / 9 have their centres at 5, 15, 25 ... cm.
    assert room["x_m"] == pytest.approx([0.05 + 0.1 * k for k in range(12)])
    assert room["y_m"] == pytest.approx([0.05 + 0.1 * k for k in range(9)])
    # The sample's hill of light stands at (0.3, 0.25): row 2, between columns 2 and 3.
    assert room["ppfd"][2][2] == pytest.approx(260 * math.exp(-(0.05**2) / 0.18))
    assert room["ppfd"][2][11] == pytest.approx(260 * math.exp(-(0.85**2) / 0.18))


def test_outside_the_footprint_is_null(corner_room: Estimate) -> None:
    rows = exported(corner_room)["map"]["ppfd"]
    # The notch of the L is x > 0.6 and y > 0.5.
    for row, y in enumerate(corner_room.y):
        for column, x in enumerate(corner_room.x):
            assert (rows[row][column] is None) == (x > 0.6 and y > 0.5)


def test_all_figures_and_how_they_were_made(corner_room: Estimate) -> None:
    whole = exported(corner_room)
    assert set(whole["figures"]) == {field.name for field in dataclasses.fields(Figures)}
    assert whole["figures"]["mean"] == 212.4
    assert (whole["seed"], whole["quality"], whole["cells"]) == (7, "default", [12, 9])
    assert whole["closure"] == -0.00012
    assert whole["program"]["version"] == planner.__version__
    assert whole["shares"][1] == {
        "label": "Wall 1: White board", "kind": "wall", "photon_flux": 40.0, "share": 0.4,
        "index": 0, "band": 0,
    }  # fmt: skip
    assert whole["target"]["ppfd_band"] == [150, 250]


def test_what_has_no_value_is_null() -> None:
    estimate = sample_estimate(
        sample_plan(lamps=(), target=None), efficacy=None, share_inside=None, cv=float("nan")
    )
    whole = exported(estimate)
    assert whole["target"] is None
    assert [whole["figures"][k] for k in ("efficacy", "share_inside", "cv")] == [None] * 3


def test_csv_holds_each_inner_cell_once_and_reads_back(corner_room: Estimate) -> None:
    rows = list(csv.DictReader(io.StringIO(estimate_to_csv(corner_room))))
    inside = np.isfinite(corner_room.ppfd)
    assert len(rows) == inside.sum() == 12 * 5 + 6 * 4
    back = [float(row["ppfd_umol_m2_s"]) for row in rows]
    assert back == pytest.approx(corner_room.ppfd[inside].tolist(), abs=5e-5)
    places = [(float(row["y_m"]), float(row["x_m"])) for row in rows]
    assert places == sorted(places)
    assert sum(float(row["cell_area_m2"]) for row in rows) == pytest.approx(0.84)


def test_csv_uses_the_decimal_point_only(corner_room: Estimate) -> None:
    lines = estimate_to_csv(corner_room).splitlines()
    assert {line.count(",") for line in lines} == {4}
    assert ";" not in "".join(lines)


@pytest.mark.parametrize("text", ["=1+1", "+1", "-1", "@SUM(A1)", "\tx", "\r=1", "＝1"])
def test_a_cell_that_begins_a_formula_is_guarded(text: str) -> None:
    # Source: OWASP, CSV Injection.
    assert guarded(text) == f"'{text}"


def test_an_ordinary_text_is_no_formula() -> None:
    assert [guarded(text) for text in ("", "Foil = film", "1-2")] == ["", "Foil = film", "1-2"]
