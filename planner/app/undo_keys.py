"""Undo and redo typed into a field: its own while it is edited, the plan's otherwise."""

from __future__ import annotations

from PySide6.QtCore import QEvent
from PySide6.QtGui import QKeyEvent, QKeySequence


def asks_undo_or_redo(event: QEvent) -> bool:
    """Whether a field is offered the keys of undo or redo before the menus are."""
    return (
        event.type() == QEvent.Type.ShortcutOverride
        and isinstance(event, QKeyEvent)
        and (
            event.matches(QKeySequence.StandardKey.Undo)
            or event.matches(QKeySequence.StandardKey.Redo)
        )
    )
