"""One window per file, and no obstacle after a crash."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from planner.files import lock as lock_module
from planner.files.disk import PlanInUseError
from planner.files.lock import holder_of, lock_file_of, lock_plan, try_lock

HOLD = """
import sys
from pathlib import Path
from planner.files.lock import lock_plan
lock = lock_plan(Path(sys.argv[1]))
print("held" if lock.held else "free", flush=True)
sys.stdin.readline()
"""


@pytest.fixture
def plan_file(tmp_path: Path) -> Path:
    path = tmp_path / "cabinet.plan.json"
    path.write_text("{}")
    return path


def holding_process(path: Path) -> subprocess.Popen[str]:
    process = subprocess.Popen(
        [sys.executable, "-c", HOLD, str(path)],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
        cwd=Path(__file__).parents[3],
    )
    assert process.stdout is not None
    assert process.stdout.readline() == "held\n"
    return process


def ended(process: subprocess.Popen[str]) -> None:
    process.kill()
    process.communicate(timeout=10)


def test_a_second_window_is_refused_in_words(plan_file: Path) -> None:
    with lock_plan(plan_file) as lock:
        assert lock.held
        with pytest.raises(PlanInUseError) as caught:
            lock_plan(plan_file)
    sentence = str(caught.value)
    assert "already open in another window of this program" in sentence
    assert f"process {os.getpid()}" in sentence
    assert "close it there first" in sentence


def test_released_it_can_be_had_again_and_leaves_nothing(plan_file: Path) -> None:
    for _ in range(3):
        lock_plan(plan_file).release()
    assert [p.name for p in plan_file.parent.iterdir() if p.is_file()] == ["cabinet.plan.json"]


def test_releasing_twice_does_not_release_somebody_else(plan_file: Path) -> None:
    first = lock_plan(plan_file)
    first.release()
    with lock_plan(plan_file):
        first.release()
        with pytest.raises(PlanInUseError):
            lock_plan(plan_file)


def test_two_files_do_not_disturb_each_other(plan_file: Path) -> None:
    with lock_plan(plan_file), lock_plan(plan_file.with_name("other.plan.json")) as other:
        assert other.held


def test_another_process_holds_it_until_it_dies(plan_file: Path) -> None:
    process = holding_process(plan_file)
    try:
        assert holder_of(lock_file_of(plan_file)).process == process.pid
        with pytest.raises(PlanInUseError, match=f"process {process.pid}"):
            lock_plan(plan_file)
    finally:
        ended(process)
    assert lock_file_of(plan_file).exists()  # killed, it could not tidy up
    with lock_plan(plan_file) as lock:
        assert lock.held
        assert holder_of(lock.lock_file).process == os.getpid()


@pytest.mark.parametrize("litter", [b"", b"rubbish", b'{"process": 1}', b"\x00\xff"])
def test_a_lock_file_left_behind_is_no_obstacle(plan_file: Path, litter: bytes) -> None:
    lock_file_of(plan_file).write_bytes(litter)
    with lock_plan(plan_file) as lock:
        assert lock.held


def test_a_lock_file_removed_between_opening_and_locking_is_made_anew(
    plan_file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    really_lock = lock_module._lock_descriptor
    taken: list[int] = []

    def lock_after_removal(descriptor: int) -> None:
        if not taken:
            lock_file_of(plan_file).unlink()  # as the former holder does on release
        taken.append(descriptor)
        really_lock(descriptor)

    monkeypatch.setattr(lock_module, "_lock_descriptor", lock_after_removal)
    with lock_plan(plan_file) as lock:
        assert len(taken) == 2
        assert lock.lock_file.exists()
        with pytest.raises(PlanInUseError):
            lock_plan(plan_file)


def test_a_link_and_its_file_share_one_lock(plan_file: Path) -> None:
    link = plan_file.with_name("link.plan.json")
    link.symlink_to(plan_file)
    with lock_plan(plan_file), pytest.raises(PlanInUseError):
        lock_plan(link)


def test_where_no_lock_file_can_be_made_nothing_is_refused(tmp_path: Path) -> None:
    lock = try_lock(tmp_path / "gone" / ".a.lock")
    assert lock is not None
    assert not lock.held
    lock.release()


@pytest.mark.skipif(os.name != "posix", reason="on Windows a locked file cannot be taken away")
def test_releasing_a_lock_whose_file_is_gone_leaves_its_successor(plan_file: Path) -> None:
    first = lock_plan(plan_file)
    first.lock_file.unlink()
    second = lock_plan(plan_file)
    first.release()
    with second, pytest.raises(PlanInUseError):
        lock_plan(plan_file)
