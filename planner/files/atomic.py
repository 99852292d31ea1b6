"""Writing a file so that it is at every moment either the old one or the new one, whole."""

from __future__ import annotations

import contextlib
import errno
import os
import re
import secrets
import stat
import time
from pathlib import Path
from typing import Final

STALE_S: Final = 600.0
"""Longer than any write takes."""

_UNFINISHED: Final = re.compile(r"\.unfinished-[0-9a-f]{12}\.tmp|\.[a-z0-9_]{8}\.part")
"""Temporary names, those of earlier versions included."""


def write_atomically(path: Path, data: bytes) -> None:
    """Put bytes into a file by way of a temporary one in the same folder.

    Permission bits of a file that is replaced are kept, and a link stays a link. Raises
    ``OSError`` as the system gives it; the old file is untouched then. A file without any
    write permission is refused with ``PermissionError``, even where the folder would let
    it be replaced; a device or pipe is refused with ``FileExistsError``, because putting a
    file in its place would take it away from everybody.
    """
    target = real_path(path)
    mode = _mode_of(target)
    if target.exists() and not (target.is_file() or target.is_dir()):
        raise FileExistsError(errno.EEXIST, "it is not a regular file", str(path))
    if mode is not None and not mode & 0o222:
        raise PermissionError(13, "the file is read-only", str(path))
    if target.is_dir():
        raise IsADirectoryError(21, "is a folder", str(path))
    sweep_unfinished(target.parent)
    temporary = target.with_name(f".unfinished-{secrets.token_hex(6)}.tmp")
    flags = os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0)
    descriptor = os.open(temporary, flags, 0o666)
    try:
        with os.fdopen(descriptor, "wb") as stream:
            stream.write(data)
            stream.flush()
            os.fsync(stream.fileno())
        if mode is not None:
            temporary.chmod(mode)
        temporary.replace(target)
    except BaseException:
        with contextlib.suppress(OSError):
            temporary.unlink()
        raise
    _sync_folder(target.parent)


def sweep_unfinished(folder: Path) -> None:
    """Take away what writers that were killed left unfinished in a folder.

    What is younger than ``STALE_S`` may still be written. Files under names this program
    never gives are left alone; so is everything where the system refuses.
    """
    oldest = time.time() - STALE_S
    with contextlib.suppress(OSError), os.scandir(folder) as entries:
        for entry in entries:
            if _UNFINISHED.fullmatch(entry.name):
                with contextlib.suppress(OSError):
                    if entry.stat(follow_symlinks=False).st_mtime < oldest:
                        Path(entry.path).unlink()


def real_path(path: Path) -> Path:
    """The file a path leads to by way of links; links that go in a circle stay as they are.

    (``Path.resolve`` raises ``RuntimeError`` for these, which no caller expects.) So do
    names no file can have.
    """
    try:
        return Path(os.path.realpath(path))
    except ValueError:
        return path


def _mode_of(path: Path) -> int | None:
    try:
        return stat.S_IMODE(path.stat().st_mode)
    except FileNotFoundError:
        return None


def _sync_folder(folder: Path) -> None:
    """Make the new name itself durable; systems without folder handles do so unasked."""
    if os.name != "posix":
        return
    with contextlib.suppress(OSError):
        descriptor = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(descriptor)
        finally:
            os.close(descriptor)
