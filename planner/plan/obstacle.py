"""Obstacles: shelves, pots and boxes that stand in the light."""

from __future__ import annotations

from pydantic import Field

from planner.plan.fields import AngleDeg, BodyLength, Coordinate, Height, Key, Name, Value
from planner.plan.lining import OPENING_KEY
from planner.plan.space import turned_rectangle


class Obstacle(Value):
    """An opaque upright box, turned about the vertical, with one material on all faces."""

    name: Name = "Shelf"
    x: Coordinate = Field(description="Centre.")
    y: Coordinate = Field(description="Centre.")
    underside: Height = Field(description="Height of its underside above the floor.")
    length: BodyLength = Field(description="Along its own x axis.")
    width: BodyLength = Field(description="Along its own y axis.")
    thickness: BodyLength = Field(description="From the underside up.")
    rotation_deg: AngleDeg = 0.0
    lining: Key = Field(
        default=OPENING_KEY, description="Its material; 'open' stands for black here."
    )

    @property
    def top(self) -> float:
        """Height of its upper side above the floor in metres."""
        return self.underside + self.thickness

    def outline(self) -> tuple[tuple[float, float], ...]:
        """Corners on the plan, in metres."""
        return turned_rectangle(self.x, self.y, self.length, self.width, self.rotation_deg)
