"""What a drawing of the survey page shows, as one value."""

from __future__ import annotations

from dataclasses import dataclass

from planner.app.canvas.light_layer import LightStyle
from planner.app.plots.residual_map import ResidualMap
from planner.estimate.result import Estimate
from planner.plan.plan import Plan
from planner.plan.space import Point


@dataclass(frozen=True)
class Mark:
    """A hole: its number, its place in metres, and what is said of it.

    ``colour`` fills it (red, green, blue); None leaves it open, as long as nothing was
    read there. ``suspect`` marks a reading far off its neighbours.
    """

    hole: int
    place: Point
    text: str = ""
    colour: tuple[int, int, int] | None = None
    suspect: bool = False


@dataclass(frozen=True, eq=False)
class Picture:
    """Everything a drawing paints, from the ground up.

    ``order`` draws the way from hole to hole, ``numbers`` their numbers where they have no
    text; ``left_out`` are places of the grid without a hole; ``next_hole`` is highlighted.
    ``hole_diameter`` in metres. ``caption`` stands above the drawing.
    """

    plan: Plan
    marks: tuple[Mark, ...] = ()
    estimate: Estimate | None = None
    style: LightStyle | None = None
    residuals: ResidualMap | None = None
    order: bool = False
    numbers: bool = False
    left_out: tuple[Point, ...] = ()
    next_hole: int | None = None
    hole_diameter: float = 0.024
    caption: str = ""
    words: str = ""
    refining: bool = False
