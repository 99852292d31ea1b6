"""An estimate as JSON: map, figures, shares, balance, and how it was made."""

from __future__ import annotations

import dataclasses
import json
import math
from typing import Any

import numpy as np

import planner
from planner.estimate.result import Estimate, FloatArray
from planner.metrics.figures import FIGURES, PPFD_UNIT, Digits
from planner.plan.place import opens

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
    map.y_m[row])``, rows by rising y; null outside the footprint.
    """
    nx, ny = estimate.options.cells
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
            "ppfd": [_numbers(row) for row in estimate.ppfd],
            "cell_area_m2": [_numbers(row) for row in estimate.cell_area],
            # Standard error of each cell; only independent runs (fine quality) tell it.
            "standard_error": None
            if estimate.cell_error is None
            else [_numbers(row) for row in estimate.cell_error],
        },
        "target": _target(estimate),
        "photoperiod_hours": estimate.plan.photoperiod_hours,
        "figures": {one.key: _number(one.of(estimate.figures)) for one in FIGURES},
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
        "closure": _number(estimate.closure),
        "cross_check": _number(estimate.cross_check),
        "numeric_error": _number(estimate.numeric_error),
        # Photons counted by independent means, µmol/s on the canopy.
        "recount": None if estimate.recount is None else dataclasses.asdict(estimate.recount),
    }


def _target(estimate: Estimate) -> dict[str, Any] | None:
    target = estimate.plan.target
    if target is None:
        return None
    band = target.ppfd_band(estimate.plan.photoperiod_hours)
    return {**target.model_dump(mode="json"), "ppfd_band": None if band is None else list(band)}


def _numbers(values: FloatArray) -> list[float | None]:
    return [_number(value) for value in np.asarray(values, dtype=float).tolist()]


def _number(value: float | None) -> float | None:
    return None if value is None or not math.isfinite(value) else float(value)
