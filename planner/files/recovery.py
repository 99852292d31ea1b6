"""Work that is not saved yet, kept aside in case the program or the machine stops.

Each running window owns one file in the user's state folder and rewrites it as the plan
changes; the plan file itself is never touched. A lock tells whose window still runs, so
that at the next start only work of windows that are gone is offered.
"""

from __future__ import annotations

import contextlib
import json
import os
import secrets
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import Final

from planner.files.disk import PlanFileError, sweep_unfinished, system_problem, write_atomically
from planner.files.json_text import JsonTextError, parse_json
from planner.files.lock import FileLock, try_lock
from planner.files.store import Stamp, changed_on_disk, plan_from_bytes
from planner.folders import state_folder
from planner.plan.plan import Plan
from planner.plan.refusal import in_print

_SUFFIX: Final = ".recovery.json"


@dataclass(frozen=True)
class Leftover:
    """Unsaved work of a window that is gone.

    ``path`` is the plan file it belonged to (None if it was never saved), ``written``
    the time of the last copy, ``stamp`` that of the file as it was opened or last saved
    (None where nobody noted it).
    """

    file: Path
    plan: Plan
    path: Path | None
    written: datetime
    stamp: Stamp | None = None

    @property
    def file_moved_on(self) -> bool:
        """Whether the plan file holds something else now than when the work began."""
        if self.path is None:
            return False
        try:
            return changed_on_disk(self.path, self.stamp or Stamp(""))
        except (OSError, ValueError):
            return True

    def discard(self) -> None:
        """Throw the copy away; harmless if it is gone already."""
        _remove(self.file)


class RecoverySlot:
    """The recovery file of one running window.

    Call ``write`` after changes, ``discard`` after a clean save, ``close`` when the window
    closes in good order.
    """

    def __init__(self, folder: Path | None = None) -> None:
        self._folder = folder if folder is not None else _recovery_folder()
        self._file = self._folder / f"{os.getpid()}-{secrets.token_hex(4)}{_SUFFIX}"
        self._lock: FileLock | None = None

    @property
    def file(self) -> Path:
        """Where the copy is kept; it exists only while there is something to keep."""
        return self._file

    def write(self, plan: Plan, path: Path | None, stamp: Stamp | None = None) -> None:
        """Keep a copy of the plan; ``path`` is the plan file it belongs to.

        ``stamp`` is that of the file as this window knows it.

        Raises ``PlanFileError`` where the state folder cannot be written.
        """
        content = {
            "recovery": 1,
            "written": datetime.now(UTC).isoformat(),
            "path": None if path is None else str(path.absolute()),
            "stamp": None if stamp is None else stamp.sha256,
            "plan": plan.model_dump(mode="json"),
        }
        try:
            self._folder.mkdir(parents=True, exist_ok=True)
            if self._lock is None:
                self._lock = try_lock(_lock_file(self._file))
            write_atomically(self._file, json.dumps(content).encode())
        except OSError as error:
            raise system_problem(self._file, error, act="saved") from error

    def discard(self) -> None:
        """Drop the copy: the work is saved, or not wanted."""
        with contextlib.suppress(OSError):
            self._file.unlink(missing_ok=True)

    def close(self) -> None:
        """Drop the copy and give the slot up."""
        self.discard()
        if self._lock is not None:
            self._lock.release()
            self._lock = None


def leftovers(folder: Path | None = None) -> tuple[list[Leftover], list[str]]:
    """Unsaved work of windows that no longer run, newest first, and what could not be read.

    Copies of running windows are left out. A copy that cannot be read is put aside under
    another name, for a person to look at, and told in a sentence.
    """
    place = folder if folder is not None else _recovery_folder()
    found: list[Leftover] = []
    told: list[str] = []
    for file in sorted(place.glob(f"*{_SUFFIX}")):
        lock = try_lock(_lock_file(file))
        if lock is None:
            continue
        with lock:
            try:
                found.append(_read_leftover(file))
            except PlanFileError as error:
                told.append(_put_aside(file, error))
    _sweep_locks(place)
    sweep_unfinished(place)
    return sorted(found, key=lambda leftover: leftover.written, reverse=True), told


def _read_leftover(file: Path) -> Leftover:
    """The work a copy holds; raises ``PlanFileError``."""
    try:
        content = parse_json(file.read_bytes())
        plan = plan_from_bytes(json.dumps(content["plan"]).encode(), file)
        written = datetime.fromisoformat(content["written"]).astimezone(UTC)
        path, stamp = content["path"], content.get("stamp")
        return Leftover(
            file,
            plan,
            None if path is None else Path(path),
            written,
            None if stamp is None else Stamp(str(stamp)),
        )
    except OSError as error:
        raise system_problem(file, error) from error
    except JsonTextError as error:
        raise PlanFileError(file, str(error)) from error
    except (LookupError, TypeError, ValueError, OverflowError, AttributeError) as error:
        raise PlanFileError(file, "it is not a copy this program made") from error


def _put_aside(file: Path, error: PlanFileError) -> str:
    aside = file.with_name(file.name.removesuffix(_SUFFIX) + ".unreadable.json")
    try:
        file.replace(aside)
    except OSError:
        aside = file
    return (
        f"A copy of unsaved work cannot be opened: {error.problem}. "
        f"It was not thrown away; it lies in '{in_print(str(aside))}'."
    )


def _recovery_folder() -> Path:
    return state_folder() / "recovery"


def _sweep_locks(folder: Path) -> None:
    """Take away lock files of windows that died with nothing to recover."""
    for lock_file in folder.glob("*.lock"):
        if not lock_file.with_suffix(_SUFFIX).exists():
            lock = try_lock(lock_file)
            if lock is not None:
                lock.release()


def _lock_file(file: Path) -> Path:
    return file.with_name(file.name.removesuffix(_SUFFIX) + ".lock")


def _remove(file: Path) -> None:
    for leftover in (file, _lock_file(file)):
        with contextlib.suppress(OSError):
            leftover.unlink(missing_ok=True)
