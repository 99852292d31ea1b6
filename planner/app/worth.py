"""What linings are worth, shared by page and fields: asked here, answered when it is known."""

from __future__ import annotations

from PySide6.QtCore import QObject, QTimer, Signal

from planner.app.document import Document
from planner.app.estimator import Weighed
from planner.plan.lining import Lining
from planner.plan.lit import same_light
from planner.plan.place import Place
from planner.plan.plan import Plan

PATIENCE_MS = 120
"""A hand that only passes over a list of linings asks nothing."""


class Worth(QObject):
    """Keeps what was found out about the plan as it stands.

    Signals: ``wanted(plan, lining)`` when something must be computed, ``told`` when an
    answer came.
    """

    wanted = Signal(object, object)
    told = Signal()

    def __init__(self, document: Document, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._document = document
        self._answers: dict[str, Weighed] = {}
        self._asked: Lining | None = None
        self._patience = QTimer(self, singleShot=True, interval=PATIENCE_MS)
        self._patience.timeout.connect(self._ask)
        document.changed.connect(self._on_plan_changed)

    def consider(self, lining: Lining) -> None:
        """Find out what a lining would bring, unless that is known already."""
        self._asked = lining
        if self._known(lining) is None:
            self._patience.start()

    def take(self, answer: Weighed) -> None:
        """Keep an answer, if it is about the plan as it stands."""
        if same_light(answer.plan, self._document.plan):
            self._answers[answer.lining.key] = answer
            self.told.emit()

    def brings(self, lining: Lining, place: Place) -> tuple[float, float] | None:
        """What a lining would bring on a surface to mean and lowest PPFD, None if unknown."""
        answer = self._known(lining)
        for gain, mean, minimum in answer.rows if answer is not None else ():
            if gain.place == place:
                return mean, minimum
        return None

    def _known(self, lining: Lining) -> Weighed | None:
        answer = self._answers.get(lining.key)
        return answer if answer is not None and answer.lining == lining else None

    def _ask(self) -> None:
        if self._asked is not None:
            self.wanted.emit(self._document.plan, self._asked)

    def _on_plan_changed(self, old: Plan, new: Plan) -> None:
        if not same_light(old, new):
            self._answers.clear()
            self._patience.stop()
