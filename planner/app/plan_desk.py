"""The desk: opening and saving the plan of one window, and keeping its work safe.

All file work of the window goes through here: what was opened is remembered (to notice
when somebody else changes the file), locked against a second window, and copied aside
while it is unsaved.
"""

from __future__ import annotations

import logging
from pathlib import Path
from typing import Final

from PySide6.QtCore import QObject, QTimer, Signal, Slot

from planner.app.document import Document
from planner.app.jobs import Lane
from planner.app.questions import ChangedOnDisk, Questions, Recovered, Unsaved, in_file_name
from planner.app.settings import RecentPlans, Settings
from planner.files.disk import PlanChangedError, PlanFileError, is_file
from planner.files.lock import FileLock, lock_file_of, lock_plan
from planner.files.recovery import Leftover, RecoverySlot, leftovers
from planner.files.store import (
    SUFFIX,
    OpenedPlan,
    Stamp,
    open_plan,
    other_kind,
    save_plan,
    with_suffix,
)
from planner.plan.plan import Plan
from planner.plan.refusal import in_print

KEEP_AFTER_MS: Final = 2000
"""Unsaved work is copied aside this long after a change."""

_log = logging.getLogger(__name__)


class PlanDesk(QObject):
    """Files of one window.

    Signals: ``told(str)`` with a short message for the status bar; ``meant_otherwise(Path,
    FileKind)`` when a file that is no plan shall be taken as what it is.
    """

    told = Signal(str)
    meant_otherwise = Signal(object, object)

    def __init__(
        self,
        document: Document,
        settings: Settings,
        questions: Questions,
        recent: RecentPlans,
        parent: QObject | None = None,
        *,
        synchronous: bool | None = None,
    ) -> None:
        super().__init__(parent)
        self.questions = questions
        self._document, self._settings, self._recent = document, settings, recent
        self._stamp: Stamp | None = None
        self._lock: FileLock | None = None
        self._slot = RecoverySlot()
        self._reading = Lane("reading", synchronous=synchronous, parent=self)
        self._reading.done.connect(self._take_opened)
        self._reading.failed.connect(self._on_reading_failed)
        self._keep = QTimer(self, singleShot=True, interval=KEEP_AFTER_MS)
        self._keep.timeout.connect(self.keep_copy)
        document.changed.connect(self._on_changed)
        document.dirty_changed.connect(self._on_dirty_changed)

    @property
    def name(self) -> str:
        """What the plan is called in title and questions: its file's name, else its own."""
        path = self._document.path
        if path is None:
            return self._document.plan.name
        return in_print(path.name.removesuffix(SUFFIX).removesuffix(".json") or path.name)

    # -- opening ------------------------------------------------------------------------

    def begin(self, plan: Plan, message: str = "") -> bool:
        """Show a plan that has no file yet, after asking about unsaved changes."""
        self._reading.drop()
        if not self.may_leave():
            return False
        self._take_lock(None)
        self._stamp = None
        self._settings.keep(last_plan=None)
        self._slot.discard()
        self._document.replace(plan, None)
        if message:
            self.told.emit(message)
        return True

    def choose_and_open(self) -> None:
        """Ask which plan to open, and open it."""
        path = self.questions.open_path(self._folder())
        if path is not None:
            self.open_aside(path)

    def open_aside(self, path: Path) -> None:
        """Read a plan beside the window's thread and then open it; the newest wish counts."""
        self.told.emit(f"Opening {in_print(path.name)}…")
        self._reading.ask(path, lambda _progress, _cancelled: _read(path), what="The plan")

    def open(self, path: Path, *, asked: bool = True) -> bool:
        """Open a plan within the call, as at the start, where there is no window to wait for.

        On any failure the open plan stays and one message says why. What nobody asked for (the
        plan of last time) fails in the status bar only.
        """
        return self._take_opened(path, _read(path), asked=asked)

    @Slot(object, str)
    def _on_reading_failed(self, _path: Path, sentence: str) -> None:
        self.told.emit("")
        self.questions.tell_failure("This plan cannot be opened", sentence)

    @Slot(object, object)
    def _take_opened(
        self, path: Path, opened: OpenedPlan | PlanFileError, *, asked: bool = True
    ) -> bool:
        self.told.emit("")  # it is no longer being opened, however this ends
        # Read first: nobody should be asked to save for the sake of a file that is bad.
        if isinstance(opened, PlanFileError):
            self._tell_not_opened(opened, asked)
            return False
        if not self.may_leave():
            return False
        try:
            self._take_lock(path)
        except PlanFileError as error:
            self._tell_not_opened(error, asked)
            return False
        self._stamp = opened.stamp
        self._slot.discard()
        self._document.replace(opened.plan, path.absolute())
        self._remember(path)
        self.told.emit(f"Opened {in_print(path.name)}")
        return True

    def _tell_not_opened(self, error: PlanFileError, asked: bool) -> None:
        kind = other_kind(error.path) if asked and is_file(error.path) else None
        if kind is not None:
            name = in_print(error.path.name)
            if self.questions.take_otherwise(f"'{name}' is a {kind}, not a plan.", kind):
                self.meant_otherwise.emit(error.path, kind)
        elif asked:
            self.questions.tell_failure("This plan cannot be opened", str(error))
        else:
            self.told.emit(str(error))

    # -- saving -------------------------------------------------------------------------

    def save(self) -> bool:
        """Save to the plan's file, or ask for one; whether it was saved."""
        path = self._document.path
        if path is None:
            return self.save_as()
        try:
            self._write(path, self._stamp)
        except PlanChangedError:
            answer = self.questions.changed_on_disk(path)
            if answer is ChangedOnDisk.SAVE_ELSEWHERE:
                return self.save_as()
            return answer is ChangedOnDisk.OVERWRITE and self._save_or_tell(path)
        except PlanFileError as error:
            self.questions.tell_failure("The plan was not saved", str(error))
            return False
        return True

    def save_as(self) -> bool:
        """Ask for a file and save there; whether it was saved."""
        proposal = (
            self._document.path or self._folder() / f"{in_file_name(self.name) or 'plan'}{SUFFIX}"
        )
        path = self.questions.save_path("Save plan as", proposal)
        if path is None:
            return False
        # The file dialog has asked before an existing file is written over.
        return self._save_or_tell(with_suffix(path))

    def _save_or_tell(self, path: Path) -> bool:
        try:
            self._write(path, None)
        except PlanFileError as error:
            self.questions.tell_failure("The plan was not saved", str(error))
            return False
        return True

    def _write(self, path: Path, expected: Stamp | None) -> None:
        plan = self._document.plan
        new_lock = None if self._holds(path) else lock_plan(path)
        try:
            self._stamp = save_plan(plan, path, expected=expected)
        except PlanFileError:
            if new_lock is not None:
                new_lock.release()
            raise
        if new_lock is not None:
            self._swap_lock(new_lock)
        if self._lock is not None:
            self._lock.leave_links()
        self._document.mark_saved(plan, path.absolute())
        self._slot.discard()
        self._remember(path)
        self.told.emit(f"Saved {in_print(path.name)}")

    def may_leave(self) -> bool:
        """Ask what becomes of unsaved changes; whether the plan may be left."""
        if not self._document.dirty:
            return True
        answer = self.questions.unsaved(self.name)
        if answer is Unsaved.SAVE:
            return self.save()
        return answer is Unsaved.DISCARD

    # -- keeping work safe --------------------------------------------------------------

    def keep_copy(self) -> Path | None:
        """Copy unsaved work aside now; where, or None when there is none."""
        self._keep.stop()
        if not self._document.dirty:
            return None
        try:
            self._slot.write(self._document.plan, self._document.path, self._stamp)
        except PlanFileError as error:
            _log.warning("No copy of unsaved work can be kept: %s", error)
            self.told.emit(f"Unsaved work cannot be kept aside: {error.problem}.")
            return None
        return self._slot.file

    def rescue(self) -> str:
        """Copy unsaved work aside after a fault, and say in a sentence what became of it."""
        if not self._document.dirty:
            return "There was no unsaved work to rescue."
        self._keep.stop()
        try:
            self._slot.write(self._document.plan, self._document.path, self._stamp)
        except PlanFileError as error:
            return (
                f"Your unsaved work could NOT be kept aside: {error.problem}. It is still in the "
                "window; save it now, on another disk if need be."
            )
        return f"Your work was kept in {self._slot.file} and will be offered at the next start."

    def offer_leftovers(self) -> bool:
        """Offer work that earlier runs left unsaved; whether some was restored."""
        found, spoilt = leftovers()
        for sentence in spoilt:
            self.questions.tell_failure("Unsaved work cannot be read", sentence)
        for leftover in found:
            name = leftover.path.name if leftover.path is not None else leftover.plan.name
            answer = self.questions.recovered(
                name,
                leftover.path,
                leftover.written.astimezone().replace(tzinfo=None),
                moved_on=leftover.file_moved_on,
            )
            if answer is Recovered.DISCARD:
                leftover.discard()
            elif answer is Recovered.RESTORE and self.may_leave():
                self._restore(leftover)
                return True
        return False

    def _restore(self, leftover: Leftover) -> None:
        path = leftover.path
        # The file as it was when the work began: saving asks where it has moved on since.
        self._stamp = leftover.stamp or Stamp("")
        try:
            self._take_lock(path)
        except PlanFileError:
            # The file is open elsewhere: the work goes on without it.
            self._take_lock(None)
            path = None
        self._document.replace(leftover.plan, path, saved=False)
        # Only once this run holds its own copy may the old one go.
        if self.keep_copy() is not None:
            leftover.discard()
        self.told.emit(f"Restored {leftover.plan.name}; it is not saved yet")

    def close(self) -> None:
        """The window closes in good order: no copy stays, the file is free."""
        self._reading.shutdown()
        self._keep.stop()
        self._slot.close()
        self._take_lock(None)

    def _on_changed(self) -> None:
        # Not put off by further changes: a long drag is kept every two seconds, too.
        if self._document.dirty and not self._keep.isActive():
            self._keep.start()

    def _on_dirty_changed(self, dirty: bool) -> None:
        if not dirty:
            self._keep.stop()
            self._slot.discard()

    # -- folders and locks ----------------------------------------------------------------

    def _take_lock(self, path: Path | None) -> None:
        """Lock another file in place of the present one; raises ``PlanInUseError``."""
        if path is not None and self._holds(path):
            return
        self._swap_lock(None if path is None else lock_plan(path))

    def _holds(self, path: Path) -> bool:
        """Whether this window has the file locked already.

        A lock whose file is gone (its folder was deleted or replaced) guards nothing.
        """
        lock = self._lock
        if lock is None or lock.lock_file != lock_file_of(path):
            return False
        return lock.lock_file.exists() or not lock.held

    def _swap_lock(self, lock: FileLock | None) -> None:
        if self._lock is not None:
            self._lock.release()
        self._lock = lock

    def _folder(self) -> Path:
        path = self._document.path
        if path is not None:
            return path.parent
        return self._settings.folder

    def _remember(self, path: Path) -> None:
        self._recent.add(path)
        self._settings.keep(last_folder=path.absolute().parent, last_plan=path.absolute())


def _read(path: Path) -> OpenedPlan | PlanFileError:
    """A plan as it was read, or what is wrong with its file."""
    try:
        return open_plan(path)
    except PlanFileError as error:
        return error
