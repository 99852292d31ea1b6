"""What a hand holds beside the plan: section line, rubber band, measuring line, numbers typed.

No Qt here. Their drags have no part in the plan, so there is nothing of them to undo.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Protocol

from planner.app.canvas.items import Part, Section
from planner.app.canvas.plan_drags import Edit, Hold, Number, snapped_point
from planner.plan.plan import Plan
from planner.plan.space import Point
from planner.units import LengthUnit, format_length

Span = tuple[Point, Point]


class Drag(Protocol):
    """A running drag: says which plan a place of the hand, or a number typed, means."""

    @property
    def numbers(self) -> tuple[Number, ...]:
        """What can be typed meanwhile."""
        ...

    def to(self, at: Point, hold: Hold) -> Edit:
        """The edit for a world point; raises ValueError where it cannot be built."""
        ...

    def typed(self, values: tuple[float | None, ...], at: Point) -> Edit:
        """The edit for numbers typed; None leaves one to the hand at a world point."""
        ...


@dataclass(frozen=True)
class BesideDrag:
    """A drag the plan has no part in: what it means is told to ``show``."""

    plan: Plan
    show: Callable[[Point, Hold], None]
    back: Callable[[], None]

    @property
    def numbers(self) -> tuple[Number, ...]:
        return ()

    def to(self, at: Point, hold: Hold) -> Edit:
        self.show(at, hold)
        return Edit(self.plan, "")

    def typed(self, _values: tuple[float | None, ...], at: Point) -> Edit:
        return self.to(at, Hold(None))


# -- numbers typed while dragging -------------------------------------------------------

_FIRST = frozenset("0123456789-.,−")


@dataclass
class Typing:
    """Numbers typed in the course of one drag, one text for each number it sets."""

    numbers: tuple[Number, ...]
    texts: list[str] = field(default_factory=list)
    at: int = 0

    def __post_init__(self) -> None:
        self.texts = [""] * len(self.numbers)

    @property
    def begun(self) -> bool:
        """Whether anything is typed."""
        return any(self.texts)

    @property
    def offer(self) -> str:
        """What the keyboard can do meanwhile, in words."""
        if not self.numbers:
            return ""
        return "type a number" if len(self.numbers) == 1 else "type a number, Tab for the next"

    def take(self, text: str) -> bool:
        """Take typed letters; False where there is no number to take them."""
        if not self.numbers or not text.isprintable() or not text:
            return False
        if not self.texts[self.at] and text[0] not in _FIRST:
            return False
        self.texts[self.at] += text
        return True

    def rub_out(self) -> None:
        """Take the last letter back."""
        self.texts[self.at : self.at + 1] = [self.texts[self.at][:-1]] if self.texts else []

    def step(self, by: int) -> None:
        """Go to another number."""
        self.at = (self.at + by) % max(len(self.numbers), 1)

    def values(self, unit: LengthUnit) -> tuple[float | None, ...]:
        """What is typed, in the plan's units; None where nothing is.

        Raises
        ------
        ValueError
            If one of the texts is no number.
        """
        return tuple(
            number.dial.quantity.read(text, unit) if text else None
            for number, text in zip(self.numbers, self.texts, strict=True)
        )

    def lines(self, plan: Plan, unit: LengthUnit) -> list[tuple[str, bool]]:
        """What each number is now, or what is typed of it; and whether it is the one typed."""
        found = []
        for k, (number, text) in enumerate(zip(self.numbers, self.texts, strict=True)):
            said = text or number.dial.quantity.text(number.now(plan), unit)
            typing = k == self.at and self.begun
            found.append((f"{_short(number)} {said}{'|' if typing else ''}", typing))
        return found


def _short(number: Number) -> str:
    """The name of a number beside the pointer: 'x', 'y', 'hanging height'."""
    words = number.dial.short
    return f"{words} {number.place.index + 1}" if number.dial.key == "wall-length" else words


# -- the measuring line -----------------------------------------------------------------


def measured(tape: Span, unit: LengthUnit) -> str:
    """How long a measuring line is, and how far it goes along both axes."""
    (x0, y0), (x1, y1) = tape
    whole = f"{format_length(math.dist(*tape), unit)}"
    if min(abs(x1 - x0), abs(y1 - y0)) < 0.0005:
        return whole
    across, deep = (format_length(abs(part), unit) for part in (x1 - x0, y1 - y0))
    return f"{whole} ({across} by {deep})"


# -- the section line -------------------------------------------------------------------


def dragged_section(
    section: Section,
    part: Part,
    by: Point,
    step: float | None,
    bounds: tuple[float, float, float, float],
) -> Section:
    """The section line with an end, or the whole, moved; it stays within the bounds.

    An end that would fall onto the other (closer than 1 cm) leaves the line as it was.
    """
    x0, y0, x1, y1 = bounds

    def kept(point: Point) -> Point:
        return min(max(point[0], x0), x1), min(max(point[1], y0), y1)

    start, end = section
    if part is Part.SECTION:
        dx = min(max(by[0], x0 - min(start[0], end[0])), x1 - max(start[0], end[0]))
        dy = min(max(by[1], y0 - min(start[1], end[1])), y1 - max(start[1], end[1]))
        new_start = snapped_point((start[0] + dx, start[1] + dy), step)
        new_start = kept(new_start)
        shift = (new_start[0] - start[0], new_start[1] - start[1])
        moved = (new_start, kept((end[0] + shift[0], end[1] + shift[1])))
    elif part is Part.SECTION_START:
        moved = (kept(snapped_point((start[0] + by[0], start[1] + by[1]), step)), end)
    else:
        moved = (start, kept(snapped_point((end[0] + by[0], end[1] + by[1]), step)))
    return moved if math.dist(*moved) >= 0.01 else section


def turned_section(section: Section, bounds: tuple[float, float, float, float]) -> Section:
    """The section through the middle of the space along the other axis."""
    x0, y0, x1, y1 = bounds
    (ax, ay), (bx, by) = section
    if abs(bx - ax) >= abs(by - ay):
        return ((x0 + x1) / 2, y0), ((x0 + x1) / 2, y1)
    return (x0, (y0 + y1) / 2), (x1, (y0 + y1) / 2)
