"""What stands beside the drawing in hand follows a gesture at every second frame."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from PySide6.QtCore import QObject, QTimer

from planner.app.document import Document

BESIDE_MS: Final = 33
"""Two frames of a screen that shows 60 a second."""


class Paced(QObject):
    """Calls ``show`` when asked: at once, or in the course of a gesture with its next frame.

    When the gesture ends, what was put off is shown before anything else happens.
    """

    def __init__(self, document: Document, show: Callable[[], None], parent: QObject) -> None:
        super().__init__(parent)
        self._document, self._show = document, show
        self._timer = QTimer(self, singleShot=True, interval=BESIDE_MS)
        self._timer.timeout.connect(show)
        document.settled.connect(self._catch_up)

    def ask(self) -> None:
        """Something has changed."""
        if not self._document.moving:
            self._timer.stop()
            self._show()
        elif not self._timer.isActive():
            self._timer.start()

    def _catch_up(self) -> None:
        if self._timer.isActive():
            self._timer.stop()
            self._show()
