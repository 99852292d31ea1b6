"""What can go wrong with a plan file, each as one clear sentence.

The text of every error here is meant for the screen as it stands.
"""

from __future__ import annotations

import errno
import os
from pathlib import Path
from typing import Final

from pydantic import ValidationError

from planner.plan.refusal import in_print, refusals

__all__ = [
    "PlanChangedError",
    "PlanFileError",
    "PlanInUseError",
    "invalid_plan",
    "is_file",
    "is_folder",
    "reason_of",
    "system_problem",
]

SHOWN_PROBLEMS: Final = 3

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
        super().__init__(f"'{in_print(path.name or str(path))}' cannot be {act}: {self.problem}.")


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
    """What the system gives as the reason, in its own words; never nothing."""
    number = getattr(error, "errno", None)
    said = getattr(error, "strerror", None) or (os.strerror(number) if number else "")
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
