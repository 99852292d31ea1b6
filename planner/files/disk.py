"""What a disk does: files written whole or not at all, and what can go wrong, each in a sentence.

A file is at every moment either the old one or the new one. The text of every error here is
meant for the screen as it stands.
"""

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

from pydantic import ValidationError

from planner.plan.refusal import in_print, refusals

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


# -- what can go wrong -------------------------------------------------------------------

SHOWN_PROBLEMS: Final = 3

_REASONS: Final = {
    errno.ENOENT: "No such file or directory",
    errno.EACCES: "Permission denied",
    errno.EPERM: "Operation not permitted",
    errno.EISDIR: "Is a directory",
    errno.ENOTDIR: "Not a directory",
    errno.EROFS: "Read-only file system",
    errno.ENOSPC: "No space left on device",
    errno.EFBIG: "File too large",
    errno.EIO: "Input/output error",
    errno.EEXIST: "File exists",
    errno.ENAMETOOLONG: "File name too long",
    errno.ELOOP: "Too many levels of symbolic links",
}
"""What systems say most often, here so that it is said in the language spoken."""

_WORDS: Final = {
    errno.ENOSPC: "the disk is full; free some space or save elsewhere",
    errno.ENAMETOOLONG: "its name is too long for this disk; choose a shorter one",
    errno.EEXIST: "it is a device or a pipe, not a regular file; choose another name",
    errno.ELOOP: "it is a link that leads back to itself; choose another name",
}


class PlanFileError(Exception):
    """A plan file that cannot be opened or saved; ``str()`` is the sentence to show.

    Attributes
    ----------
    path
        The file.
    problem
        Half a sentence: what is wrong and what would be right.
    problems
        Every single problem where the file is readable but not a valid plan.
    """

    def __init__(
        self, path: Path, problem: str, *, act: str = "opened", problems: tuple[str, ...] = ()
    ) -> None:
        self.path, self.problem, self.problems = path, problem.rstrip("."), problems
        name = in_print(path.name or str(path))
        super().__init__(
            f"'{name}' cannot be opened: {self.problem}."
            if act == "opened"
            else f"'{name}' cannot be saved: {self.problem}."
        )


class PlanChangedError(PlanFileError):
    """The file was changed by somebody else since it was opened; it was not overwritten."""

    def __init__(self, path: Path) -> None:
        super().__init__(
            path,
            "the file was changed by another program or window since it was opened here; "
            "save under another name, or overwrite it knowingly",
            act="saved",
        )


class PlanInUseError(PlanFileError):
    """Another window holds the file."""

    def __init__(self, path: Path, holder: str) -> None:
        by = f" ({holder})" if holder else ""
        super().__init__(
            path,
            f"it is already open in another window of this program{by}; close it there first, "
            "or work on a copy under another name",
        )


def invalid_plan(path: Path, error: ValidationError) -> PlanFileError:
    """The error for a file that is readable but holds no valid plan.

    The first three problems are told, and how many more there are.
    """
    problems = tuple(refusals(error))
    shown = [problem.rstrip(".") for problem in problems[:SHOWN_PROBLEMS]]
    if len(shown) == 1:
        told = shown[0]
    else:
        told = "; ".join(f"({number}) {text}" for number, text in enumerate(shown, start=1))
    more = len(problems) - len(shown)
    if more:
        told += f"; and {more} more problem{'s' if more > 1 else ''}"
    return PlanFileError(path, told, problems=problems)


def system_problem(path: Path, error: OSError, *, act: str = "opened") -> PlanFileError:
    """The error for what the operating system refused, with a remedy where there is one."""
    return PlanFileError(path, _system_words(path, error, act), act=act)


def is_folder(path: Path) -> bool:
    """Whether a path is a folder; false also where the system refuses to say."""
    try:
        return path.is_dir()
    except (OSError, ValueError):
        return False


def is_file(path: Path) -> bool:
    """Whether a path is an ordinary file; false also where the system refuses to say."""
    try:
        return path.is_file()
    except (OSError, ValueError):
        return False


def reason_of(error: Exception) -> str:
    """What the system gives as the reason, never nothing; in its own words where they are rare."""
    number = getattr(error, "errno", None)
    plain = os.strerror(number) if number else ""
    said = getattr(error, "strerror", None) or plain
    if said == plain:
        said = _REASONS.get(number or 0, said)
    return said or str(error).strip() or "no reason is given"


def _system_words(path: Path, error: OSError, act: str) -> str:
    folder = path.parent
    if isinstance(error, FileNotFoundError | NotADirectoryError):
        if not is_folder(folder):
            return f"the folder '{in_print(str(folder))}' does not exist"
        place = in_print(os.path.realpath(folder))
        return f"there is no such file in '{place}' (moved, renamed or deleted?)"
    if isinstance(error, IsADirectoryError) or is_folder(path):
        return "it is a folder, not a file"
    if isinstance(error, PermissionError):
        if act == "opened":
            return "you have no permission to read it"
        return (
            "the file or its folder is read-only for you; save under another name or in another "
            "folder"
        )
    known = _WORDS.get(error.errno or 0)
    if known is not None:
        return known
    return f"the system reports '{reason_of(error)}'"
