"""Plans to begin with: an empty space, and the invented demo."""

from __future__ import annotations

from planner.catalogue.library import Catalogue
from planner.catalogue.resources import resource_path
from planner.plan.canopy import Canopy
from planner.plan.lining import WallCover
from planner.plan.plan import Plan
from planner.plan.space import Space

DEMO_NAME = "demo/hallway-cabinet.plan.json"


def new_plan(catalogue: Catalogue) -> Plan:
    """An empty space of 60 x 60 x 160 cm, white all round, with no lamp and no target."""
    white = catalogue.lining("white-board")
    side = 0.60
    return Plan(
        name="Untitled plan",
        space=Space(
            footprint=((0.0, 0.0), (side, 0.0), (side, side), (0.0, side)), height=1.60, door=0
        ),
        linings=(white,),
        walls=tuple(WallCover.plain(white.key) for _ in range(4)),
        ceiling=white.key,
        floor=white.key,
        canopy=Canopy(height=0.20),
    )


def demo_plan() -> Plan:
    """The invented demo: herbs and lettuce seedlings in a hallway cabinet."""
    return Plan.model_validate_json(resource_path(DEMO_NAME).read_bytes())
