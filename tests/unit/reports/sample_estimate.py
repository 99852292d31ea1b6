"""An estimate made up by hand: numbers whose sums can be checked on paper, no light core."""

from __future__ import annotations

import dataclasses
from typing import Any

import numpy as np

from planner.estimate.result import Estimate, EstimateOptions, Figures, Quality, Share
from planner.plan.lamp import Lamp, LampModel, PanelBody
from planner.plan.lining import Lining, WallCover
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.space import Space, contains
from planner.plan.target import PpfdTarget

SQUARE = ((0.0, 0.0), (0.6, 0.0), (0.6, 0.5), (0.0, 0.5))
L_SHAPE = ((0.0, 0.0), (1.2, 0.0), (1.2, 0.5), (0.6, 0.5), (0.6, 0.9), (0.0, 0.9))


def sample_plan(footprint: tuple[tuple[float, float], ...] = SQUARE, **parts: Any) -> Plan:
    """A small valid plan with one panel lamp in the lower left part."""
    board = Lining(key="white-board", name="White board", reflectance=0.8, low=0.75, high=0.85)
    panel = LampModel(
        key="panel", name="Invented panel", body=PanelBody(length=0.3, width=0.2), ppf=100, watts=40
    )
    whole = {
        "name": "Invented seedling cabinet",
        "space": Space(footprint=footprint, height=1.2),
        "lamps": (Lamp(model=panel, x=0.3, y=0.25, hanging_height=0.4),),
        "linings": (board,),
        "walls": tuple(WallCover.plain("white-board") for _ in footprint),
        "floor": "white-board",
        "photoperiod_hours": 14.0,
        "target": PpfdTarget(low=150, high=250, crop="lettuce seedlings"),
    }
    return Plan.model_validate({**whole, **parts})


def sample_estimate(
    plan: Plan | None = None, cells: tuple[int, int] = (12, 10), **figures: Any
) -> Estimate:
    """A smooth hill of light over the plan, NaN outside; ``figures`` replace single ones."""
    plan = plan or sample_plan()
    x0, y0, x1, y1 = plan.space.bounds
    nx, ny = cells
    dx, dy = (x1 - x0) / nx, (y1 - y0) / ny
    x = np.linspace(x0 + dx / 2, x1 - dx / 2, nx, dtype=np.float64)
    y = np.linspace(y0 + dy / 2, y1 - dy / 2, ny, dtype=np.float64)
    grid_x, grid_y = np.meshgrid(x, y)
    hill = 260.0 * np.exp(-((grid_x - 0.3) ** 2 + (grid_y - 0.25) ** 2) / 0.18)
    inside = np.array([[contains(plan.space.footprint, float(a), float(b)) for a in x] for b in y])
    ppfd = np.where(inside, hill, np.nan)
    known = {
        "mean": 212.4,
        "minimum": float(np.nanmin(ppfd)),
        "maximum": float(np.nanmax(ppfd)),
        "min_over_mean": 0.61,
        "min_over_max": 0.5,
        "cv": 0.18,
        "share_under": 0.12,
        "share_inside": 0.83,
        "share_over": 0.05,
        "dli": 10.704,
        "utilisation": 0.64,
        "efficacy": 2.5,
        "photon_flux": 100.0,
        "watts": 40.0,
        "watts_per_m2": 133.333,
        "kwh_per_day": 0.56,
        "canopy_area": plan.space.area,
    }
    return Estimate(
        plan=plan,
        options=EstimateOptions(cells=cells, quality=Quality.DEFAULT, seed=7),
        ppfd=ppfd,
        x=x,
        y=y,
        cell_area=np.where(inside, dx * dy, 0.0),
        figures=dataclasses.replace(Figures(**known), **figures),
        shares=(
            Share(Place(PlaceKind.CANOPY), 60.0, 0.6),
            Share(Place(PlaceKind.WALL, 0, 0), 40.0, 0.4),
        ),
        closure=-0.00012,
        seconds=0.1234,
    )
