"""Unsaved work survives the end of its window, and only that is offered."""

from __future__ import annotations

import subprocess
import sys
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from planner.files import recovery
from planner.files.disk import PlanFileError
from planner.files.recovery import RecoverySlot, leftovers
from planner.files.store import open_plan, save_plan
from planner.folders import state_folder
from planner.plan.edits import changed
from planner.plan.plan import Plan
from tests.unit.files.valid_text import VALID

CRASH = """
import os, sys
from pathlib import Path
from planner.files.recovery import RecoverySlot
from planner.files.store import load_plan
plan = load_plan(Path(sys.argv[1]))
slot = RecoverySlot()
slot.write(plan, Path(sys.argv[1]))
if sys.argv[2] == "discard":
    slot.discard()
print("kept", flush=True)
if sys.argv[2] == "wait":
    sys.stdin.readline()
os._exit(1)
"""


@pytest.fixture
def plan() -> Plan:
    return Plan.model_validate(VALID)


@pytest.fixture
def plan_file(tmp_path: Path, plan: Plan) -> Path:
    path = tmp_path / "cabinet.plan.json"
    path.write_text(plan.model_dump_json())
    return path


def window(plan_file: Path, what: str) -> subprocess.Popen[str]:
    process = subprocess.Popen(
        [sys.executable, "-c", CRASH, str(plan_file), what],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
        cwd=Path(__file__).parents[3],
    )
    assert process.stdout is not None
    assert process.stdout.readline() == "kept\n"
    return process


def crashed(plan_file: Path, what: str = "crash") -> None:
    window(plan_file, what).communicate(timeout=10)


def test_the_state_folder_can_be_set(own_folders: Path) -> None:
    assert state_folder() == own_folders / "state"


def test_without_a_setting_it_is_the_systems_own_place(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("PLANNER_STATE_DIR")
    assert state_folder().name == "grow-space-light-planner"
    assert state_folder().is_absolute()


def test_work_of_a_crashed_window_is_found(plan_file: Path, plan: Plan) -> None:
    crashed(plan_file)
    (found,) = leftovers()[0]
    assert found.plan == plan
    assert found.path == plan_file
    assert timedelta(0) <= datetime.now(UTC) - found.written < timedelta(minutes=1)


def test_work_of_a_running_window_is_left_alone(plan_file: Path) -> None:
    process = window(plan_file, "wait")
    try:
        assert leftovers()[0] == []
    finally:
        process.kill()
        process.communicate(timeout=10)
    assert len(leftovers()[0]) == 1


def test_work_of_this_window_is_left_alone(plan: Plan) -> None:
    slot = RecoverySlot()
    slot.write(plan, None)
    assert leftovers()[0] == []
    slot.close()


def test_after_a_clean_save_nothing_is_offered(plan_file: Path, own_folders: Path) -> None:
    crashed(plan_file, "discard")
    assert leftovers()[0] == []
    assert list((own_folders / "state" / "recovery").iterdir()) == []


def test_a_closed_window_leaves_nothing(plan: Plan, own_folders: Path) -> None:
    slot = RecoverySlot()
    slot.write(plan, None)
    slot.write(changed(plan, name="Later"), None)
    slot.close()
    assert list((own_folders / "state" / "recovery").iterdir()) == []


def test_after_closing_and_discarding_it_can_be_written_again(plan: Plan) -> None:
    slot = RecoverySlot()
    slot.write(plan, None)
    slot.discard()
    assert not slot.file.exists()
    slot.write(plan, None)
    assert slot.file.exists()
    slot.close()


def test_each_window_has_its_own_file(plan: Plan, plan_file: Path) -> None:
    crashed(plan_file)
    crashed(plan_file)
    assert len({found.file for found in leftovers()[0]}) == 2


def test_newest_first_and_never_saved_work_has_no_path(
    plan: Plan, monkeypatch: pytest.MonkeyPatch
) -> None:
    for name in ("older", "newer"):
        slot = RecoverySlot()
        slot.write(changed(plan, name=name), None)
        assert slot._lock is not None
        slot._lock.release()  # as the system does for a window that died
    found = leftovers()[0]
    assert [leftover.plan.name for leftover in found] == ["newer", "older"]
    assert found[0].path is None


def test_discarded_work_is_gone(plan_file: Path, own_folders: Path) -> None:
    crashed(plan_file)
    (found,) = leftovers()[0]
    found.discard()
    found.discard()
    assert leftovers()[0] == []
    assert list((own_folders / "state" / "recovery").iterdir()) == []


@pytest.mark.parametrize(
    "litter", [b"", b"{}", b'{"recovery": 1, "plan": 3, "written": "x", "path": null}', b"\x00"]
)
def test_a_damaged_copy_is_told_once_and_kept(
    plan_file: Path, own_folders: Path, litter: bytes
) -> None:
    crashed(plan_file)
    damaged = own_folders / "state" / "recovery" / "1-abc.recovery.json"
    damaged.write_bytes(litter)
    found, told = leftovers()
    assert len(found) == 1
    (sentence,) = told
    assert "A copy of unsaved work cannot be opened" in sentence
    assert "1-abc.unreadable.json" in sentence
    assert damaged.with_name("1-abc.unreadable.json").read_bytes() == litter
    again, told = leftovers()
    assert (len(again), told) == (1, [])


def test_the_copy_knows_the_file_as_it_was(plan: Plan, plan_file: Path) -> None:
    stamp = open_plan(plan_file).stamp
    slot = RecoverySlot()
    slot.write(changed(plan, name="Work"), plan_file, stamp)
    assert slot._lock is not None
    slot._lock.release()
    ((found,), _) = leftovers()
    assert found.stamp == stamp
    assert not found.file_moved_on
    save_plan(changed(plan, name="Newer"), plan_file)
    assert found.file_moved_on
    plan_file.unlink()
    assert not found.file_moved_on, "saving brings a lost file back"
    slot.close()


def test_a_copy_that_noted_no_stamp_does_not_trust_the_file(plan_file: Path) -> None:
    crashed(plan_file)
    ((found,), _) = leftovers()
    assert found.stamp is None
    assert found.file_moved_on


def test_no_folder_means_nothing_left() -> None:
    assert leftovers()[0] == []


def test_a_state_folder_that_cannot_be_written(tmp_path: Path, plan: Plan) -> None:
    (tmp_path / "file").write_text("")
    slot = RecoverySlot(tmp_path / "file" / "recovery")
    with pytest.raises(PlanFileError, match="cannot be saved"):
        slot.write(plan, None)
    slot.close()


def test_a_crash_while_writing_keeps_the_last_copy(
    plan: Plan, monkeypatch: pytest.MonkeyPatch
) -> None:
    slot = RecoverySlot()
    slot.write(plan, None)
    before = slot.file.read_bytes()

    def full(_path: Path, _data: bytes) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(recovery, "write_atomically", full)
    with pytest.raises(PlanFileError, match="the disk is full"):
        slot.write(changed(plan, name="Later"), None)
    assert slot.file.read_bytes() == before
    slot.close()
