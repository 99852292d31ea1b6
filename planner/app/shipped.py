"""What only a window needs: the program's names, its help texts and its icon."""

from __future__ import annotations

from typing import Final

from PySide6.QtGui import QIcon

from planner.catalogue.library import resource_path

APP_TITLE: Final = "Grow space light planner"
PLAN_FILTER: Final = "Plans (*.plan.json *.json);;All files (*)"


def help_text(name: str) -> str:
    """The Markdown of a help page; a sentence in its place where the file is missing."""
    try:
        return resource_path(f"help/{name}.md").read_text(encoding="utf-8")
    except OSError as error:
        return f"This page cannot be shown: {error}"


def app_icon() -> QIcon:
    """The program's icon; an empty one where its file is missing."""
    try:
        return QIcon(str(resource_path("icons/planner.svg")))
    except FileNotFoundError:
        return QIcon()
