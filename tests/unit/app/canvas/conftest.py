"""Drawings on a desk: document, selection and display with a view and a hand on it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import pytest
from pytestqt.qtbot import QtBot

from planner.app.canvas.elevation_view import ElevationView
from planner.app.canvas.plan_view import PlanView
from planner.app.display import Display, SelectionModel
from planner.app.document import Document
from planner.plan.plan import Plan
from tests.unit.app.canvas.scenes import Hand, plan_of


@dataclass
class Desk:
    """What a test of a drawing works with."""

    document: Document
    selection: SelectionModel
    display: Display
    view: Any
    hand: Hand

    @property
    def plan(self) -> Plan:
        return self.document.plan

    @property
    def steps(self) -> list[str]:
        stack = self.document.undo_stack
        return [stack.text(k) for k in range(stack.count())]


def _desk(qtbot: QtBot, kind: type, plan: Plan | None, size: tuple[int, int]) -> Desk:
    document, selection, display = Document(plan or plan_of()), SelectionModel(), Display()
    document.changed.connect(lambda _old, new: selection.follow(new))
    view = kind(document, selection, display)
    qtbot.addWidget(view)
    view.resize(*size)
    view.show()
    view.activateWindow()
    view.setFocus()
    qtbot.waitUntil(view.hasFocus, timeout=2000)
    return Desk(document, selection, display, view, Hand(view))


@pytest.fixture
def plan_desk(qtbot: QtBot) -> Callable[..., Desk]:
    """Makes a plan view; 1 px is about 2 mm."""
    return lambda plan=None, size=(700, 640): _desk(qtbot, PlanView, plan, size)


@pytest.fixture
def side_desk(qtbot: QtBot) -> Callable[..., Desk]:
    """Makes an elevation; 1 px is about 4 mm."""
    return lambda plan=None, size=(460, 640): _desk(qtbot, ElevationView, plan, size)
