"""Print what the window says on its pages, in the language of ``PLANNER_LANGUAGE``, as JSON.

A program of its own, because a language is chosen before anything is imported.
"""

from __future__ import annotations

import json
import os
import sys
from typing import Any

from planner.exchange import speak
from planner.language import wanted

os.environ["QT_QPA_PLATFORM"] = "offscreen"
os.environ["PLANNER_SYNCHRONOUS"] = "1"
speak(wanted())

from PySide6.QtGui import QAction  # noqa: E402 - after the language is known
from PySide6.QtWidgets import (  # noqa: E402
    QAbstractButton,
    QComboBox,
    QGroupBox,
    QLabel,
    QLineEdit,
    QScrollArea,
    QWidget,
)

from planner.app.main_window import MainWindow  # noqa: E402
from planner.app.pages.side.page import ASKED  # noqa: E402
from planner.app.run import make_application  # noqa: E402
from planner.app.settings import Settings  # noqa: E402
from planner.catalogue.library import demo_plan  # noqa: E402
from planner.plan.place import Place, PlaceKind  # noqa: E402


def said_by(widget: QWidget) -> set[str]:
    """All that a widget and what it holds says in words."""
    said = set()
    for one in (widget, *widget.findChildren(QWidget)):
        said |= {
            one.toolTip(),
            one.accessibleName(),
            one.accessibleDescription(),
            one.windowTitle(),
        }
        if isinstance(one, QLabel | QAbstractButton):
            said.add(one.text())
        if isinstance(one, QGroupBox):
            said.add(one.title())
        if isinstance(one, QLineEdit):
            said |= {one.text(), one.placeholderText()}
        if isinstance(one, QComboBox):
            said |= {one.itemText(row) for row in range(one.count())}
    for action in widget.findChildren(QAction):
        said |= {action.text(), action.toolTip(), action.statusTip()}
    return said


def main() -> None:
    app = make_application()
    window = MainWindow(demo_plan("hallway-cabinet-measured"), settings=Settings.in_memory())
    window.resize(1280, 800)
    window.show()
    said: dict[str, set[str]] = {key: set() for key in ("sketch", "side", "survey", "report")}
    cut: list[str] = []

    def look(key: str, shown: QWidget = window) -> None:
        for _ in range(6):
            app.processEvents()
        said[key] |= said_by(shown)
        if key == "sketch":
            column = window.page.column
            room: Any = column.findChild(QScrollArea)
            if column.panel.minimumSizeHint().width() > room.viewport().width():
                cut.append(column.chooser.currentText())

    window.pages.go("sketch")
    plan = window.document.plan
    kinds = (PlaceKind.CEILING, PlaceKind.FLOOR, PlaceKind.CANOPY)
    of_many = ((PlaceKind.WALL, plan.walls), (PlaceKind.LAMP, plan.lamps))
    every = [Place(kind, k) for kind, there in of_many for k in range(len(there))]
    for place in (*map(Place, kinds), *every, Place()):
        window.selection.select(place)
        look("sketch")
    window.pages.go("side")
    page: Any = window.pages.made("side")
    for key in ASKED:
        page.open_question(key)
        look("side")
    window.pages.go("survey")
    page = window.pages.made("survey")
    for task in range(page.header.tasks.count()):
        page.show_task(task)
        look("survey")
    report = window.show_report()
    look("report", report)
    report.close()
    window.pages.go("sketch")
    window.document.replace(demo_plan("trays"), None)
    for number in range(len(window.document.plan.obstacles)):
        window.selection.select(Place(PlaceKind.OBSTACLE, number))
        look("sketch")
    json.dump(
        {
            "said": {key: sorted(texts) for key, texts in said.items()},
            "direction": app.layoutDirection().name,
            "refused": window.state_line.problem,
            "cut": cut,
        },
        sys.stdout,
    )
    window.close()


if __name__ == "__main__":
    main()
