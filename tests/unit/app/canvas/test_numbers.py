"""Walls and corners carry the numbers the fields call them by."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from PySide6.QtCore import QPointF

from planner.app.canvas import plan_layers as dimensions
from planner.app.canvas.ink import Ink
from planner.app.canvas.items import Item, Part
from tests.unit.app.canvas.scenes import L_SHAPE, plan_of

MakeDesk = Callable[..., Any]


@pytest.fixture
def written(monkeypatch: pytest.MonkeyPatch) -> list[tuple[str, QPointF]]:
    """What the dimensions write on their plates, and where."""
    plates: list[tuple[str, QPointF]] = []

    def note(_painter: object, at: QPointF, text: str, *_rest: object) -> None:
        plates.append((text, QPointF(at)))

    monkeypatch.setattr(dimensions, "draw_plate_text", note)
    return plates


def test_every_wall_is_numbered_beside_its_length(
    plan_desk: MakeDesk, written: list[tuple[str, QPointF]]
) -> None:
    desk = plan_desk(plan_of(L_SHAPE))
    desk.view.resize(640, 600)  # what is drawn already is kept and not written again
    written.clear()
    desk.view.grab()
    numbers = [text.removeprefix("Wall ").split(":")[0] for text, _ in written]
    assert numbers == [str(k + 1) for k in range(len(L_SHAPE))]


def test_corners_are_numbered_while_a_list_names_them(
    plan_desk: MakeDesk, written: list[tuple[str, QPointF]]
) -> None:
    desk = plan_desk(plan_of(L_SHAPE))
    desk.view.number_corners(True)
    written.clear()
    desk.view.grab()
    corners = [(text, at) for text, at in written if ":" not in text]
    assert [text for text, _ in corners] == [str(k + 1) for k in range(len(L_SHAPE))]
    for (_, at), (x, y) in zip(corners, L_SHAPE, strict=True):
        corner = desk.view.viewport.to_pixel(x, y)
        assert (at - corner).manhattanLength() < 40
    desk.view.number_corners(False)
    written.clear()
    desk.view.grab()
    assert all(":" in text for text, _ in written)


def test_a_corner_in_hand_shows_its_number(
    plan_desk: MakeDesk, written: list[tuple[str, QPointF]]
) -> None:
    desk = plan_desk()
    desk.view.choose(Item(Part.CORNER, 2))
    written.clear()
    desk.view.grab()
    assert "3" in [text for text, _ in written]


def test_ink_is_taken_from_the_palette(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    ink = Ink.of(desk.view.palette())
    desk.view.say("No.")
    assert desk.view.notice_ink(ink) == ink.alarm
