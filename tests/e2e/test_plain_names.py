"""Names are never markup: nothing a plan or a file calls a thing is loaded as a picture."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import QAbstractItemModel, QAbstractListModel, QModelIndex, Qt
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import QAbstractItemView, QComboBox, QLabel, QWidget
from pytestqt.qtbot import QtBot

from planner.app.main_window import MainWindow
from planner.app.plain import PlainLabel, tooltip
from planner.app.questions import Questions
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.survey import Reading, Survey
from planner.plan.variant_edits import add_variants
from tests.e2e.shell import make_window, small_plan

pytestmark = pytest.mark.gui

EVIL = "<img src='/tmp/secret.png'>"
LINING = {
    "key": "evil", "name": EVIL, "reflectance": 0.9, "specular_share": 0.1, "low": 0.8,
    "high": 0.95, "source": EVIL,
}  # fmt: skip


def evil_plan() -> Plan:
    raw: dict[str, Any] = small_plan(EVIL, lamps=2).model_dump(mode="json")
    raw["note"] = EVIL
    raw["linings"] = [LINING]
    raw["walls"] = [{"bands": [{"lining": "evil"}]}] * 4
    raw["ceiling"] = "evil"
    for lamp in raw["lamps"]:
        lamp["label"] = EVIL
        lamp["model"]["name"] = EVIL
        lamp["hanging_height"] = 0.02  # so near that the plan is warned about
    raw["obstacles"] = [
        {"name": EVIL, "x": 0.5, "y": 0.3, "length": 0.1, "width": 0.1, "underside": 0.0,
         "thickness": 0.1, "lining": "evil"}
    ]  # fmt: skip
    survey = Survey(
        key="evil", name=EVIL, note=EVIL, points=((0.2, 0.2), (0.8, 0.8)),
        readings=(Reading(hole=1, value=100.0), Reading(hole=2, value=110.0)),
    )  # fmt: skip
    raw["surveys"] = [survey.model_dump(mode="json")]
    plan = Plan.model_validate(raw)
    return add_variants(plan, (EVIL, plan.setup))


def rich(text: str) -> bool:
    """Whether a text holds the name as it is, which where markup is looked for becomes one."""
    return "<img" in text


def tips_of(model: QAbstractItemModel | None) -> list[str]:
    if model is None:
        return []
    where = QModelIndex()
    columns = 1 if isinstance(model, QAbstractListModel) else model.columnCount(where)
    tips = [
        model.index(row, column, where).data(Qt.ItemDataRole.ToolTipRole)
        for row in range(model.rowCount(where))
        for column in range(columns)
    ]
    return [tip for tip in tips if isinstance(tip, str)]


def found_in(window: MainWindow) -> list[str]:
    """Where a name is taken for markup, in words for the failing test."""
    problems = []
    for widget in [window, *window.findChildren(QWidget)]:
        place = f"{type(widget).__name__} '{widget.accessibleName()}'"
        if rich(widget.toolTip()):
            problems.append(f"tip of {place}: {widget.toolTip()}")
        if isinstance(widget, QLabel) and widget.textFormat() is not Qt.TextFormat.PlainText:
            problems += [f"text of {place}: {widget.text()}"] * rich(widget.text())
        if isinstance(widget, QAbstractItemView | QComboBox):
            problems += [f"tip in {place}: {tip}" for tip in tips_of(widget.model()) if rich(tip)]
    return problems


@pytest.mark.parametrize("page", ["sketch", "side", "survey"])
def test_a_name_is_never_markup(page: str, qtbot: QtBot) -> None:
    window, _ = make_window(qtbot, evil_plan())
    window.pages.go(page)
    qtbot.wait(50)
    seen = [label.text() for label in window.findChildren(QLabel) if EVIL in label.text()]
    tips = [one.toolTip() for one in window.findChildren(QWidget) if "&lt;img" in one.toolTip()]
    assert found_in(window) == []
    assert seen or tips or page != "sketch", "nothing of the plan's names is shown here at all"
    assert window.estimate is not None


def test_every_label_of_the_program_is_plain(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot, evil_plan())
    for page in ("side", "survey"):
        window.pages.go(page)
    own = [label for label in window.findChildren(QLabel) if type(label).__module__ != "PySide6"]
    made_by_us = [label for label in own if isinstance(label, PlainLabel)]
    assert len(made_by_us) > 20
    assert [
        label for label in made_by_us if label.textFormat() is not Qt.TextFormat.PlainText
    ] == []


def test_message_boxes_are_plain(qtbot: QtBot) -> None:
    from PySide6.QtWidgets import QMessageBox

    box = Questions(None)._box(QMessageBox.Icon.Warning, "Title", EVIL, EVIL)
    qtbot.addWidget(box)
    assert box.textFormat() is Qt.TextFormat.PlainText


def test_a_tip_wraps_and_escapes() -> None:
    assert tooltip("a < b", "", EVIL) == ("<p>a &lt; b</p><p>&lt;img src='/tmp/secret.png'&gt;</p>")


def test_what_is_read_out_holds_no_markup(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    window.recent.add(Path("/somewhere/plan.json"))
    window.page.workplace.selection.select(Place(PlaceKind.LAMP, 0))
    told = []
    for widget in window.findChildren(QWidget):
        shown = QAccessible.queryAccessibleInterface(widget)
        if shown is not None:
            parts = [shown, *(shown.child(k) for k in range(min(shown.childCount(), 60)))]
            told += [part.text(QAccessible.Text.Description) for part in parts]
    assert sum(bool(text) for text in told) > 20
    assert [text for text in told if "<p>" in text] == []
