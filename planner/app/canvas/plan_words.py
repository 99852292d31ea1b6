"""The plan drawing in words, for screen readers."""

from __future__ import annotations

import math

from planner.app.canvas.items import Item, Part
from planner.app.canvas.sampling import Section
from planner.estimate.result import Estimate
from planner.plan.plan import Plan
from planner.units import LengthUnit, format_length


def plan_in_words(
    plan: Plan,
    section: Section,
    unit: LengthUnit,
    focused: Item | None,
    estimate: Estimate | None,
) -> str:
    """What the plan view shows: size, walls, lamps, light, and the item in hand."""
    x0, y0, x1, y1 = plan.space.bounds

    def length(metres: float) -> str:
        return format_length(metres, unit)

    parts = [
        f"Plan of a space of {plan.space.wall_count} walls, {length(x1 - x0)} wide and "
        f"{length(y1 - y0)} deep."
    ]
    if not plan.lamps:
        parts.append("No lamp hangs in it.")
    for number, lamp in enumerate(plan.lamps, start=1):
        parts.append(
            f"Lamp {number}, {lamp.label or lamp.model.name}, hangs at x {length(lamp.x)}, "
            f"y {length(lamp.y)}."
        )
    parts += [
        f"{obstacle.name} stands at x {length(obstacle.x)}, y {length(obstacle.y)}, "
        f"{length(obstacle.underside)} to {length(obstacle.top)} above the floor."
        for obstacle in plan.obstacles
    ]
    if estimate is not None and math.isfinite(estimate.figures.mean):
        figures = estimate.figures
        parts.append(
            f"The light on the canopy runs from {figures.minimum:.0f} to {figures.maximum:.0f}, "
            f"on average {figures.mean:.0f} micromoles per square metre and second."
        )
    if focused is not None:
        parts.append(f"In hand: {item_in_words(plan, focused, section, unit)}.")
    return " ".join(parts)


def item_in_words(plan: Plan, item: Item, section: Section, unit: LengthUnit) -> str:
    """One item: what it is, and where or how long."""

    def spot(x: float, y: float) -> str:
        return f"x {format_length(x, unit)}, y {format_length(y, unit)}"

    if item.part in {Part.LAMP, Part.TURN}:
        lamp = plan.lamps[item.index]
        return f"lamp {item.index + 1} at {spot(lamp.x, lamp.y)}, turned by {lamp.rotation_deg:g}°"
    if item.part in {Part.OBSTACLE, Part.TURN_OBSTACLE}:
        obstacle = plan.obstacles[item.index]
        turned = f", turned by {obstacle.rotation_deg:g}°" if obstacle.rotation_deg else ""
        return f"{obstacle.name} at {spot(obstacle.x, obstacle.y)}{turned}"
    if item.part is Part.CORNER:
        return f"corner {item.index + 1} at {spot(*plan.space.footprint[item.index])}"
    if item.part is Part.WALL:
        cover = plan.walls[item.index]
        names = ", ".join(plan.lining(band.lining).name for band in cover.bands)
        door = ", the door" if plan.space.door == item.index else ""
        long = format_length(plan.space.wall_length(item.index), unit)
        return f"wall {item.index + 1}{door}, {long} long, lined with {names}"
    return f"section line from {spot(*section[0])} to {spot(*section[1])}"
