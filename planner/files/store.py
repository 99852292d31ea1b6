"""Opening and saving plan files."""

from __future__ import annotations

import hashlib
import json
import os
import stat
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from pathlib import Path
from typing import Any, Final

from pydantic import ValidationError

from planner.files.disk import (
    PlanChangedError,
    PlanFileError,
    invalid_plan,
    is_file,
    system_problem,
    write_atomically,
)
from planner.files.json_text import JsonTextError, parse_json
from planner.files.migrations import FormatError, migrated
from planner.plan.plan import PLAN_FORMAT, Plan

SUFFIX: Final = ".plan.json"
MAX_BYTES: Final = 10_000_000
LAMP_SUFFIXES: Final = frozenset({".ies", ".ldt"})
TABLE_SUFFIXES: Final = frozenset({".csv", ".tsv", ".txt", ".xlsx", ".ods"})

_BAD_NAME: Final = "its name holds characters no file can have"


@dataclass(frozen=True)
class Stamp:
    """What a file held when it was read or written, as a hash of its bytes."""

    sha256: str

    @classmethod
    def of(cls, data: bytes) -> Stamp:
        """The stamp of these bytes."""
        return cls(hashlib.sha256(data).hexdigest())


@dataclass(frozen=True)
class OpenedPlan:
    """A plan read from a file, with the stamp to hand back when saving it.

    ``written_in`` is the format the file was in; older than ``PLAN_FORMAT`` means that
    saving brings it up to date.
    """

    plan: Plan
    stamp: Stamp
    written_in: int = PLAN_FORMAT


class FileKind(StrEnum):
    """What a file that is no plan seems to be, in a word."""

    TABLE = "table of readings"
    LAMP = "lamp file"


def other_kind(path: Path) -> FileKind | None:
    """What a file is if it clearly is no plan, by its ending and its first bytes."""
    suffix = path.suffix.lower()
    if suffix in LAMP_SUFFIXES:
        return FileKind.LAMP
    try:
        if not is_file(path):
            return None
        with path.open("rb") as stream:
            head = stream.read(4096)
    except (OSError, ValueError):
        return None
    if head.startswith(b"IESNA"):
        return FileKind.LAMP
    table = suffix in TABLE_SUFFIXES and not head.lstrip().startswith(b"{")
    if suffix == ".txt" and not any(sign in b"0123456789" for sign in head):
        table = False  # any text at all may bear that ending; one without a figure is no table
    return FileKind.TABLE if table or head.startswith(b"PK\x03\x04") else None


def load_plan(path: Path) -> Plan:
    """Read a plan file; raises ``PlanFileError`` with a sentence for the screen."""
    return open_plan(path).plan


def open_plan(path: Path) -> OpenedPlan:
    """Read a plan file and note what it held; raises ``PlanFileError``."""
    data = _read(path)
    plan, written_in = _plan_from(data, path)
    return OpenedPlan(plan, Stamp.of(data), written_in)


def save_plan(plan: Plan, path: Path, *, expected: Stamp | None = None) -> Stamp:
    """Write a plan file atomically and return its new stamp.

    With ``expected`` (the stamp of the last opening or saving) a file that was changed by
    somebody else meanwhile is not overwritten: ``PlanChangedError``. Without it the file
    is overwritten whatever it holds. Raises ``PlanFileError`` where the system refuses;
    the old file is whole then.
    """
    data = plan_to_bytes(plan)
    if len(data) > MAX_BYTES:
        raise PlanFileError(
            path,
            f"it would be larger than the {MAX_BYTES // 1_000_000} MB a plan file may have; "
            "keep fewer options, or give its lamps coarser light distributions",
            act="saved",
        )
    try:
        if expected is not None and changed_on_disk(path, expected):
            raise PlanChangedError(path)
        write_atomically(path, data)
    except OSError as error:
        raise system_problem(path, error, act="saved") from error
    except ValueError:
        raise PlanFileError(path, _BAD_NAME, act="saved") from None
    return Stamp.of(data)


def changed_on_disk(path: Path, stamp: Stamp) -> bool:
    """Whether a file holds something else than when it was stamped.

    A file that has vanished is not counted as changed: saving brings it back. What is no
    longer a file at all (a pipe, say) counts as changed and is not read.
    """
    try:
        if not stat.S_ISREG(path.stat().st_mode):
            return True
        return Stamp.of(path.read_bytes()) != stamp
    except FileNotFoundError:
        return False


def with_suffix(path: Path) -> Path:
    """The path with ``.plan.json`` at its end, unless it already ends in ``.json``."""
    if not path.name or path.name.lower().endswith(".json"):
        return path
    return path.with_name(path.name + SUFFIX)


def plan_to_bytes(plan: Plan) -> bytes:
    """The plan as the text of a plan file: JSON, UTF-8, indented, one final line break.

    Lists of numbers stay on one line: a corner is one line, and so is a whole profile.
    """
    whole = plan.model_dump(mode="json")
    first = {name: whole.pop(name) for name in ("format", "name", "note")}
    in_order = {**first, **whole}
    return (_indented(in_order) + "\n").encode("utf-8")


def _indented(value: Any, margin: str = "") -> str:
    inner = margin + "  "
    if isinstance(value, dict) and value:
        lines = [f"{_on_one_line(k)}: {_indented(v, inner)}" for k, v in value.items()]
        brackets = "{}"
    elif isinstance(value, list) and not all(isinstance(v, int | float) for v in value):
        lines, brackets = [_indented(v, inner) for v in value], "[]"
    else:
        return _on_one_line(value)
    body = ",\n".join(inner + line for line in lines)
    return f"{brackets[0]}\n{body}\n{margin}{brackets[1]}"


def _on_one_line(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, allow_nan=False)


def plan_from_bytes(data: bytes, path: Path) -> Plan:
    """A plan from the bytes of a plan file; ``path`` is named in a ``PlanFileError``."""
    return _plan_from(data, path)[0]


@cache
def most_entries() -> int:
    """Entries of the longest list a plan may hold, as the model has it."""
    longest, waiting = 0, [Plan.model_json_schema()]
    while waiting:
        value: Any = waiting.pop()
        if isinstance(value, dict):
            longest = max(longest, value.get("maxItems", 0))
            waiting += value.values()
        elif isinstance(value, list):
            waiting += value
    return longest


def _plan_from(data: bytes, path: Path) -> tuple[Plan, int]:
    try:
        raw = parse_json(data)
        if not isinstance(raw, dict):
            raise FormatError(
                "it is not a plan of this program: a plan is a JSON object, "
                f"but this file holds {_kind_of(raw)}"
            )
        _refuse_endless(raw)
        current = migrated(raw)
    except (JsonTextError, FormatError) as error:
        raise PlanFileError(path, str(error)) from None
    try:
        content = json.dumps(current, ensure_ascii=False).encode("utf-8")
    except UnicodeEncodeError:
        raise PlanFileError(
            path,
            "one of its texts holds half a letter (an escape like \\ud800 without its second "
            "half); write that text anew",
        ) from None
    try:
        # By way of JSON text, because only there 'strict' means JSON's own types: a list for
        # a tuple is right, a text for a number is not.
        plan = Plan.model_validate_json(content, strict=True)
    except ValidationError as error:
        raise invalid_plan(path, error) from None
    return plan, int(raw["format"])


def _refuse_endless(raw: Any) -> None:
    """Refuse lists no plan can hold, before every entry of them is found wrong one by one."""
    most, waiting = most_entries(), [raw]
    while waiting:
        value = waiting.pop()
        if isinstance(value, dict | list):
            if len(value) > most:
                raise FormatError(
                    f"one of its lists or objects has {len(value)} entries, far more than any in a "
                    "plan; it is probably not a plan file"
                )
            waiting += value.values() if isinstance(value, dict) else value


def _kind_of(raw: Any) -> str:
    if raw is None:
        return "nothing (null)"
    if isinstance(raw, list):
        return "a list"
    return "a text" if isinstance(raw, str) else "a single value"


def _read(path: Path) -> bytes:
    try:
        # Looked at before opening: opening a pipe would wait for ever.
        status = path.stat()
        if stat.S_ISDIR(status.st_mode):
            raise IsADirectoryError(path)
        if not stat.S_ISREG(status.st_mode):
            raise PlanFileError(path, "it is not a regular file")
        if not status.st_mode & 0o444 and os.name == "posix":
            raise PermissionError(path)
        with path.open("rb") as stream:
            data = stream.read(MAX_BYTES + 1)
    except OSError as error:
        raise system_problem(path, error) from error
    except ValueError:
        raise PlanFileError(path, _BAD_NAME) from None
    if len(data) > MAX_BYTES:
        raise PlanFileError(
            path,
            f"it is larger than {MAX_BYTES // 1_000_000} MB, far more than a plan can be; "
            "it is probably not a plan file",
        )
    return data
