"""What a hand will ask for next, brought in small pieces while the window rests.

The pages beside the sketch and their questions are imported when they are first opened, so that
the start need not wait for them. Brought ahead, they no longer keep the hand waiting that opens
them. A piece at a time, with room for the hand between two of them, and none while a hand drags
or the light is computed.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from functools import partial
from importlib import import_module
from typing import Final

from PySide6.QtCore import QObject, QTimer

PAUSE_MS: Final = 150
PIECES: Final = (
    "planner.estimate.worth",
    "planner.estimate.compare",
    "planner.estimate.odds",
    "planner.estimate.sweep_points",
    "planner.estimate.sweep",
    "planner.reports.exports",
    "planner.app.pages.side.map_sheet",
    "planner.app.pages.side.page",
    "planner.survey.comparison",
    "planner.app.pages.survey.pictures",
    "planner.app.pages.survey.page",
    "planner.app.pages.side.sweep_board",
    "planner.app.pages.side.sweep_form",
    "planner.app.pages.side.find_form",
    "planner.app.plots.schedule_chart",
    "planner.app.pages.side.schedule_board",
    "planner.app.pages.side.worth_form",
)
"""Modules in the order they are brought; each brings few that none before it has brought."""


class Ahead(QObject):
    """Brings one module after the other, while ``resting`` says that nobody waits.

    What is to be read from files before is ``first``, a call for each turn.
    """

    def __init__(
        self,
        resting: Callable[[], bool],
        parent: QObject | None = None,
        first: Iterable[Callable[[], object]] = (),
    ) -> None:
        super().__init__(parent)
        self._resting = resting
        pieces = (partial(import_module, name) for name in PIECES)
        self._left: list[Callable[[], object]] = [*first, *pieces]
        self._timer = QTimer(self, interval=PAUSE_MS)
        self._timer.timeout.connect(self._turn)
        self._timer.start()

    @property
    def done(self) -> bool:
        """Everything is there."""
        return not self._left

    def _turn(self) -> None:
        if self._resting():
            self._left.pop(0)()
        if self.done:
            self._timer.stop()
