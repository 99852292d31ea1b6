"""One writer per file: a lock the operating system drops when its process ends.

The lock is held on a small file beside the one it guards. Because the system itself
gives up the lock of a process that died, a lock file that was left behind is no
obstacle: it can be locked again at once, whatever its contents say.
"""

from __future__ import annotations

import contextlib
import hashlib
import json
import os
import socket
import sys
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from types import TracebackType
from typing import Final, Self

from planner.files.disk import PlanInUseError, real_path

LONGEST_NAME_BYTES: Final = 255
"""Of a file name on the usual file systems."""


@dataclass(frozen=True)
class Holder:
    """Who holds a lock, as far as the lock file tells."""

    process: int | None = None
    machine: str = ""
    since: str = ""

    def in_words(self) -> str:
        """For example 'process 4711 on attic, since 2026-01-31 18:05'; empty if unknown."""
        if self.process is None:
            return ""
        since = f", since {self.since}" if self.since else ""
        return f"process {self.process} on {self.machine or 'this machine'}{since}"


class FileLock:
    """A held lock; release it with ``release`` or as a context manager.

    ``held`` is false where the folder takes no lock file (read-only, or a file system
    without locks): then nothing is guarded, and nothing is refused either.
    """

    def __init__(self, lock_file: Path, descriptor: int | None) -> None:
        self.lock_file = lock_file
        self._descriptor = descriptor
        self._linked: int | None = None

    @property
    def held(self) -> bool:
        """Whether the system holds the lock for this object."""
        return self._descriptor is not None

    def release(self) -> None:
        """Give the lock up and remove its file; harmless when repeated."""
        self.leave_links()
        if self._descriptor is None:
            return
        descriptor, self._descriptor = self._descriptor, None
        if sys.platform != "win32":
            # Removed while still locked, so that nobody locks a file that is about to go;
            # not removed where another has taken its name since (the folder was made anew).
            if _still_there(self.lock_file, descriptor):
                with contextlib.suppress(OSError):
                    self.lock_file.unlink()
            os.close(descriptor)
        else:
            os.close(descriptor)
            with contextlib.suppress(OSError):
                self.lock_file.unlink()

    def hold_links(self, path: Path) -> bool:
        """Hold the file itself, too, where it goes by several names (hard links).

        False if another window holds it under one of them.
        """
        if sys.platform == "win32":
            return True
        try:
            if path.stat().st_nlink < 2:
                return True
            descriptor = os.open(path, os.O_RDONLY)
        except OSError:
            return True
        try:
            _lock_descriptor(descriptor)
        except OSError as error:
            os.close(descriptor)
            return not isinstance(error, BlockingIOError)
        self._linked = descriptor
        return True

    def leave_links(self) -> None:
        """Let go of the file's other names: saving has made a file of its own of it."""
        if self._linked is not None:
            os.close(self._linked)
            self._linked = None

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.release()


def lock_file_of(path: Path) -> Path:
    """The lock file that belongs to a plan file.

    A name that would be too long for the disk with what is added to it is cut and told
    apart by a hash.
    """
    target = real_path(path)
    name = f".{target.name}.lock"
    if len(os.fsencode(name)) > LONGEST_NAME_BYTES:
        digest = hashlib.sha256(os.fsencode(target.name)).hexdigest()[:16]
        name = f".{target.name[:40]}-{digest}.lock"
    return target.parent / name


def lock_plan(path: Path) -> FileLock:
    """Lock a plan file for one window.

    Raises ``PlanInUseError`` if another window (or process) holds the lock.
    """
    try:
        lock = try_lock(lock_file_of(path))
    except ValueError:
        # A name no file can have; whoever reads or writes the file says so.
        return FileLock(path, None)
    if lock is None:
        who = holder_of(lock_file_of(path)).in_words()
        raise PlanInUseError(path, who)
    if not lock.hold_links(path):
        lock.release()
        raise PlanInUseError(path, "under another name of the same file")
    return lock


def try_lock(lock_file: Path) -> FileLock | None:
    """Lock a lock file, or return None if somebody else holds it."""
    for _ in range(20):
        try:
            descriptor = os.open(lock_file, os.O_RDWR | os.O_CREAT, 0o666)
        except OSError:
            return FileLock(lock_file, None)
        try:
            _lock_descriptor(descriptor)
        except BlockingIOError:
            os.close(descriptor)
            return None
        except OSError:
            os.close(descriptor)
            return FileLock(lock_file, None)
        if _still_there(lock_file, descriptor):
            _write_holder(descriptor)
            return FileLock(lock_file, descriptor)
        # The former holder removed the file between opening and locking: take a new one.
        os.close(descriptor)
    return None


def holder_of(lock_file: Path) -> Holder:
    """Who wrote a lock file; an empty holder if that cannot be read."""
    try:
        raw = json.loads(lock_file.read_text(encoding="utf-8"))
        return Holder(int(raw["process"]), str(raw["machine"]), str(raw["since"]))
    except (OSError, ValueError, LookupError, TypeError):
        return Holder()


def _still_there(lock_file: Path, descriptor: int) -> bool:
    if sys.platform == "win32":
        return True
    try:
        return os.path.samestat(lock_file.stat(), os.fstat(descriptor))
    except OSError:
        return False


def _write_holder(descriptor: int) -> None:
    holder = {
        "process": os.getpid(),
        "machine": socket.gethostname(),
        "since": datetime.now().astimezone().strftime("%Y-%m-%d %H:%M"),
    }
    with contextlib.suppress(OSError):
        os.ftruncate(descriptor, 0)
        os.lseek(descriptor, 0, os.SEEK_SET)
        os.write(descriptor, json.dumps(holder).encode())


if sys.platform == "win32":
    import msvcrt

    def _lock_descriptor(descriptor: int) -> None:
        # Far behind the text, because a locked byte cannot be read by others there.
        os.lseek(descriptor, 1 << 20, os.SEEK_SET)
        try:
            msvcrt.locking(descriptor, msvcrt.LK_NBLCK, 1)
        except PermissionError as error:
            raise BlockingIOError from error

else:
    import fcntl

    def _lock_descriptor(descriptor: int) -> None:
        fcntl.flock(descriptor, fcntl.LOCK_EX | fcntl.LOCK_NB)
