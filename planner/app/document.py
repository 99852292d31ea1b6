"""The open plan and its undo stack.

Views never change the plan: they build a new one and ask ``apply`` for it. The stack
holds whole plans (before, after, name of the step); a drag carries a merge key, so that
it ends as one step, and leaves no step at all when it returns to where it began.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Final, cast

from PySide6.QtCore import QElapsedTimer, QObject, QTimer, Signal
from PySide6.QtGui import QUndoCommand, QUndoStack

from planner.plan.plan import Plan

_MERGE_ID = 1


class _Step(QUndoCommand):
    """One undoable step between two valid plans; ``redo`` only assigns."""

    def __init__(
        self, document: Document, before: Plan, after: Plan, label: str, merge_key: str | None
    ) -> None:
        super().__init__(label)
        self._document = document
        self._before, self._after, self._merge_key = before, after, merge_key

    def id(self) -> int:
        return -1 if self._merge_key is None else _MERGE_ID

    def redo(self) -> None:
        self._document.show_plan(self._after)

    def undo(self) -> None:
        self._document.show_plan(self._before)

    def mergeWith(self, other: QUndoCommand) -> bool:
        if not isinstance(other, _Step) or other._merge_key != self._merge_key:
            return False
        self._after = other._after
        # A drag is named for where it ends: a lamp raised and then lowered was lowered.
        self.setText(other.text())
        if self._after == self._before:
            self.setObsolete(True)
        other.let_go()
        return True

    def let_go(self) -> None:
        """Hold no plan any more: Qt has done with this step, but its Python half is never freed.

        PySide 6.11 keeps the wrapper of a command that was merged, or undone and pushed over.
        """
        del self._before, self._after


class Document(QObject):
    """The plan shown, where it is stored, and how it came about.

    Signals: ``changed(old, new)`` after every change of the plan, ``path_changed`` when
    the file changes, ``settled`` after an edit that is done (a drag when it ends; not undo),
    ``told(str)`` what an edit took along, ``dirty_changed(bool)`` when saved and shown plan part
    or meet.
    """

    changed = Signal(object, object)
    path_changed = Signal()
    dirty_changed = Signal(bool)
    settled = Signal()
    told = Signal(str)

    def __init__(self, plan: Plan, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._plan = plan
        self._saved = plan
        self._dirty = False
        self._gesture = 0
        self._moving = False
        self.hand: object | None = None
        """The drawing whose drag is under way; None where a field or a key edits."""
        self._shown = QElapsedTimer()
        self.path: Path | None = None
        self.undo_stack = QUndoStack(self)
        self.undo_stack.setUndoLimit(500)

    @property
    def plan(self) -> Plan:
        """The plan as it stands."""
        return self._plan

    @property
    def dirty(self) -> bool:
        """Whether the plan differs from the one in its file."""
        return self._dirty

    @property
    def moving(self) -> bool:
        """Whether a gesture is under way: the last edit may be one of many."""
        return self._moving

    def take_turn(self, *, leads: bool = False) -> bool:
        """Whether it is the turn of who asks to be shown, and will be.

        In the course of a gesture one thing is shown in a frame's time, the drawing looked at
        (``leads``) whenever it asks: several in one turn of the event loop keep the hand waiting.
        """
        held = self._moving and self._shown.isValid() and self._shown.elapsed() < TURN_MS
        if held and not leads:
            return False
        self._shown.start()
        return True

    def apply(
        self, plan: Plan, label: str, merge_key: str | None = None, *, took: str = ""
    ) -> None:
        """Make a plan the current one, as an undo step of that name.

        Steps with the same ``merge_key`` merge until ``end_gesture`` is called. ``took`` is a
        sentence about what went with it, lengths in it by ``units.said_length``.
        """
        if took:
            self.told.emit(took)
        if plan == self._plan:
            return
        key = None if merge_key is None else f"{merge_key}#{self._gesture}"
        self._moving = key is not None
        stack = self.undo_stack
        over = [stack.command(k) for k in range(stack.index(), stack.count())]
        stack.push(_Step(self, self._plan, plan, label, key))
        for step in over:
            cast("_Step", step).let_go()
        if not self._moving:
            self.settled.emit()

    def end_gesture(self) -> None:
        """Close the running drag: the next step starts anew even under the same key."""
        self._gesture += 1
        if self._moving:
            self._moving = False
            self.settled.emit()

    def replace(self, plan: Plan, path: Path | None, *, saved: bool = True) -> None:
        """Open another plan: the undo history starts afresh.

        With ``saved`` false (work recovered after a crash) the plan counts as unsaved.
        """
        old, self._plan = self._plan, plan
        self._saved = plan if saved else old
        self._mark(dirty=not saved)
        self.undo_stack.clear()
        self._moving = False
        self.end_gesture()
        self.path = path
        self.path_changed.emit()
        self.changed.emit(old, plan)

    def mark_saved(self, plan: Plan, path: Path) -> None:
        """Note that this plan now stands in that file."""
        self._saved, self.path = plan, path
        self._mark(dirty=self._plan != plan)
        self.end_gesture()
        self.path_changed.emit()

    def show_plan(self, plan: Plan) -> None:
        """Assign a plan without a step; for the undo stack only."""
        old, self._plan = self._plan, plan
        self._mark(dirty=plan != self._saved)
        self.changed.emit(old, plan)

    def _mark(self, *, dirty: bool) -> None:
        if dirty != self._dirty:
            self._dirty = dirty
            self.dirty_changed.emit(dirty)


# -- what stands beside the drawing in hand --------------------------------------------

BESIDE_MS: Final = 66
"""Four frames of a screen that shows 60 a second: two of a light that takes 30 ms."""


REST_MS: Final = 200
"""Who has not asked for so long begins anew."""

TURN_MS: Final = 17
"""A frame lies between what follows in turn."""


class Paced(QObject):
    """Calls ``show`` when asked: at once, or in the course of a gesture with its next frame.

    When the gesture ends, what was put off is shown before anything else happens. ``turn``
    parts several of them, so that a hand never waits for more than one. Where the light takes
    longer than a frame, what is asked for with each light is shown with every second.
    """

    def __init__(
        self, document: Document, show: Callable[[], None], parent: QObject, turn: int = 0
    ) -> None:
        super().__init__(parent)
        self._document, self._show = document, show
        self._timer = QTimer(self, singleShot=True)
        self._timer.timeout.connect(self._on_due)
        self._turn_ms, self._asked = TURN_MS * turn, QElapsedTimer()
        document.settled.connect(self._catch_up)

    def ask(self) -> None:
        """Something has changed."""
        since = self._asked.elapsed() if self._asked.isValid() else 0
        self._asked.start()
        if not self._document.moving:
            self._timer.stop()
            self._show()
        elif not self._timer.isActive():
            slow = since if since < REST_MS else 0
            self._timer.start(max(BESIDE_MS, slow + slow // 2) + self._turn_ms)

    def _on_due(self) -> None:
        if self._document.take_turn():
            self._show()
        else:
            self._timer.start(TURN_MS)

    def _catch_up(self) -> None:
        if self._timer.isActive():
            self._timer.stop()
            self._show()
