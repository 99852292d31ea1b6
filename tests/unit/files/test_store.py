"""Opening and saving: nothing is lost, nothing is overwritten unasked."""

from __future__ import annotations

import errno
import json
import os
import stat
import sys
from pathlib import Path

import pytest

from planner.files import store
from planner.files.disk import PlanChangedError, PlanFileError, reason_of
from planner.files.store import (
    MAX_BYTES,
    changed_on_disk,
    load_plan,
    open_plan,
    save_plan,
    with_suffix,
)
from planner.plan.edits import changed
from planner.plan.lamp import PlanesProfile
from planner.plan.plan import Plan
from tests.unit.files.valid_text import VALID, text

posix = pytest.mark.skipif(os.name != "posix", reason="permission bits of POSIX")


@pytest.fixture
def plan() -> Plan:
    return Plan.model_validate(VALID)


@pytest.fixture
def file(tmp_path: Path, plan: Plan) -> Path:
    path = tmp_path / "cabinet.plan.json"
    save_plan(plan, path)
    return path


def test_a_saved_plan_opens_as_it_was(file: Path, plan: Plan) -> None:
    assert load_plan(file) == plan


def test_the_file_is_readable_text_in_metres(file: Path) -> None:
    lines = file.read_text(encoding="utf-8")
    assert lines.endswith("}\n")
    assert json.loads(lines)["lamps"][0]["hanging_height"] == 0.4
    assert json.loads(lines)["format"] == 4


def test_number_lists_stay_on_one_line_and_texts_as_they_are(file: Path, plan: Plan) -> None:
    odd = changed(plan, name='[1,   2]  {"a":  1}', note="[\n1,\n2]")
    save_plan(odd, file)
    lines = file.read_text(encoding="utf-8").splitlines()
    assert "      [1.0, 0.6]," in lines
    assert '  "lamps": [' in lines
    assert load_plan(file) == odd


def test_what_could_not_be_opened_again_is_not_saved(
    file: Path, plan: Plan, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = file.read_bytes()
    monkeypatch.setattr(store, "MAX_BYTES", 1000)
    with pytest.raises(PlanFileError, match="cannot be saved: it would be larger than"):
        save_plan(changed(plan, name="New"), file)
    assert file.read_bytes() == before


def test_a_plan_with_finely_measured_lamps_is_opened_again(tmp_path: Path, plan: Plan) -> None:
    angles = tuple(k / 2 for k in range(181))
    planes = PlanesProfile(
        angles_deg=angles,
        azimuths_deg=tuple(5.0 * k for k in range(72)),
        relative=tuple(tuple(1000 / (1 + a + k) for a in angles) for k in range(72)),
    )
    lamp = plan.lamps[0]
    fine = lamp.model_copy(update={"model": lamp.model.model_copy(update={"profile": planes})})
    path = tmp_path / "fine.plan.json"
    whole = changed(plan, lamps=(fine,) * 24)
    save_plan(whole, path)
    assert load_plan(path) == whole


def test_letters_stay_letters(tmp_path: Path, plan: Plan) -> None:
    path = tmp_path / "küche.plan.json"
    save_plan(changed(plan, name="Kräuter ☀"), path)
    assert "Kräuter ☀" in path.read_text(encoding="utf-8")
    assert load_plan(path).name == "Kräuter ☀"


def test_saving_twice_gives_the_same_bytes_and_stamp(file: Path, plan: Plan) -> None:
    first = file.read_bytes()
    stamp = open_plan(file).stamp
    assert save_plan(load_plan(file), file) == stamp
    assert file.read_bytes() == first


def test_a_byte_order_mark_is_accepted(tmp_path: Path, plan: Plan) -> None:
    path = tmp_path / "marked.plan.json"
    path.write_bytes(b"\xef\xbb\xbf" + text())
    assert load_plan(path) == plan


def test_saving_over_a_file_changed_meanwhile_is_refused(file: Path, plan: Plan) -> None:
    stamp = open_plan(file).stamp
    other = changed(plan, name="Changed by somebody else")
    save_plan(other, file)
    with pytest.raises(PlanChangedError, match="changed by another program or window") as caught:
        save_plan(changed(plan, name="Mine"), file, expected=stamp)
    assert str(caught.value).startswith("'cabinet.plan.json' cannot be saved: ")
    assert load_plan(file) == other


def test_it_is_overwritten_when_asked_knowingly(file: Path, plan: Plan) -> None:
    save_plan(changed(plan, name="Somebody else"), file)
    mine = changed(plan, name="Mine")
    save_plan(mine, file)
    assert load_plan(file) == mine


def test_saving_again_and_again_with_the_stamp_of_the_last_save(file: Path, plan: Plan) -> None:
    stamp = open_plan(file).stamp
    for number in range(3):
        stamp = save_plan(changed(plan, name=f"Step {number}"), file, expected=stamp)
        assert not changed_on_disk(file, stamp)
    assert load_plan(file).name == "Step 2"


def test_a_vanished_file_is_brought_back(file: Path, plan: Plan) -> None:
    stamp = open_plan(file).stamp
    file.unlink()
    save_plan(plan, file, expected=stamp)
    assert load_plan(file) == plan


def test_a_failing_write_leaves_the_old_file_and_no_litter(
    file: Path, plan: Plan, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = file.read_bytes()

    def full(_descriptor: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(PlanFileError, match="the disk is full"):
        save_plan(changed(plan, name="New"), file)
    assert file.read_bytes() == before
    assert [p.name for p in file.parent.glob(".*")] == []


def test_a_failing_replacement_leaves_the_old_file_and_no_litter(
    file: Path, plan: Plan, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = file.read_bytes()

    def refuse(_self: Path, _target: Path) -> Path:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "replace", refuse)
    with pytest.raises(PlanFileError, match="read-only for you"):
        save_plan(changed(plan, name="New"), file)
    assert file.read_bytes() == before
    assert [p.name for p in file.parent.glob(".*")] == []


@posix
def test_permission_bits_are_kept(file: Path, plan: Plan) -> None:
    file.chmod(0o640)
    save_plan(changed(plan, name="New"), file)
    assert stat.S_IMODE(file.stat().st_mode) == 0o640


@posix
def test_a_new_file_gets_the_usual_bits(tmp_path: Path, plan: Plan) -> None:
    plain = tmp_path / "plain.txt"
    plain.write_text("")
    path = tmp_path / "new.plan.json"
    save_plan(plan, path)
    assert stat.S_IMODE(path.stat().st_mode) == stat.S_IMODE(plain.stat().st_mode)


@posix
def test_a_link_stays_a_link(file: Path, plan: Plan) -> None:
    link = file.with_name("link.plan.json")
    link.symlink_to(file)
    save_plan(changed(plan, name="By way of the link"), link)
    assert link.is_symlink()
    assert load_plan(file).name == "By way of the link"


def test_a_read_only_file_is_not_replaced(file: Path, plan: Plan) -> None:
    before = file.read_bytes()
    file.chmod(0o444)
    with pytest.raises(PlanFileError, match="read-only for you; save under another name"):
        save_plan(changed(plan, name="New"), file)
    assert file.read_bytes() == before
    file.chmod(0o644)


@posix
def test_no_permission_to_read(file: Path) -> None:
    file.chmod(0)
    with pytest.raises(PlanFileError, match="you have no permission to read it"):
        load_plan(file)


def test_saving_into_a_missing_folder(tmp_path: Path, plan: Plan) -> None:
    with pytest.raises(PlanFileError, match=r"the folder '.*gone' does not exist"):
        save_plan(plan, tmp_path / "gone" / "a.plan.json")


def test_opening_from_a_missing_folder(tmp_path: Path) -> None:
    with pytest.raises(PlanFileError, match=r"the folder '.*gone' does not exist"):
        load_plan(tmp_path / "gone" / "a.plan.json")


def test_a_vanished_file(tmp_path: Path) -> None:
    with pytest.raises(PlanFileError, match="moved, renamed or deleted"):
        load_plan(tmp_path / "a.plan.json")


def test_a_folder_is_not_a_file(tmp_path: Path, plan: Plan) -> None:
    with pytest.raises(PlanFileError, match="it is a folder, not a file"):
        load_plan(tmp_path)
    with pytest.raises(PlanFileError, match="it is a folder, not a file"):
        save_plan(plan, tmp_path)


def test_a_name_no_file_can_have(plan: Plan) -> None:
    with pytest.raises(PlanFileError, match="its name holds characters no file can have"):
        save_plan(plan, Path("a\0b.plan.json"))
    with pytest.raises(PlanFileError, match="its name holds characters no file can have"):
        load_plan(Path("a\0b.plan.json"))


def test_a_name_too_long(tmp_path: Path, plan: Plan) -> None:
    with pytest.raises(PlanFileError, match="name is too long"):
        save_plan(plan, tmp_path / ("x" * 300))


@posix
def test_a_pipe_is_refused_and_not_waited_for(tmp_path: Path) -> None:
    if sys.platform != "win32":
        os.mkfifo(tmp_path / "pipe")
    with pytest.raises(PlanFileError, match="not a regular file"):
        load_plan(tmp_path / "pipe")


def test_a_huge_file_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "film.plan.json"
    path.write_bytes(b" " * (MAX_BYTES + 1))
    with pytest.raises(PlanFileError, match="larger than 10 MB"):
        load_plan(path)


@pytest.mark.parametrize(
    ("given", "expected"),
    [
        ("cabinet", "cabinet.plan.json"),
        ("cabinet.plan.json", "cabinet.plan.json"),
        ("cabinet.json", "cabinet.json"),
        ("v1.2", "v1.2.plan.json"),
    ],
)
def test_the_suffix(given: str, expected: str) -> None:
    assert with_suffix(Path("/x") / given) == Path("/x") / expected


@posix
def test_a_pipe_is_neither_replaced_nor_waited_for(tmp_path: Path, plan: Plan) -> None:
    pipe = tmp_path / "pipe.plan.json"
    os.mkfifo(pipe)
    stamp = store.Stamp.of(b"what once stood here")
    with pytest.raises(PlanChangedError):
        save_plan(plan, pipe, expected=stamp)
    with pytest.raises(PlanFileError, match="a device or a pipe, not a regular file"):
        save_plan(plan, pipe)
    assert stat.S_ISFIFO(pipe.stat().st_mode)
    assert not list(tmp_path.glob(".unfinished-*"))


@posix
def test_a_link_in_a_circle_is_refused(tmp_path: Path, plan: Plan) -> None:
    circle = tmp_path / "circle.plan.json"
    circle.symlink_to(circle.name)
    with pytest.raises(PlanFileError, match="leads back to itself"):
        save_plan(plan, circle)
    with pytest.raises(PlanFileError, match="leads back to itself"):
        load_plan(circle)


def test_a_list_without_end_is_refused_before_each_entry_is_judged(tmp_path: Path) -> None:
    path = tmp_path / "endless.plan.json"
    path.write_text('{"format": 1, "lamps": [' + "{}," * 200_000 + "{}]}")
    with pytest.raises(PlanFileError, match="has 200001 entries") as caught:
        load_plan(path)
    # Judged one by one there would be a million problems.
    assert caught.value.problems == ()


def test_what_killed_writers_left_is_swept_by_the_next(tmp_path: Path) -> None:
    stale = [tmp_path / ".unfinished-0123456789ab.tmp", tmp_path / ".abc_de12.part"]
    fresh = tmp_path / ".unfinished-ffffffffffff.tmp"
    foreign = [tmp_path / "notes.part", tmp_path / ".unfinished-thoughts.tmp"]
    for file in (*stale, fresh, *foreign):
        file.write_text("x")
    for file in (*stale, *foreign):
        os.utime(file, (0, 0))
    save_plan(Plan.model_validate(VALID), tmp_path / "a.plan.json")
    left = {file.name for file in tmp_path.iterdir() if file.is_file()}
    assert left == {fresh.name, *(file.name for file in foreign), "a.plan.json"}


@pytest.mark.parametrize(
    ("error", "said"),
    [
        (OSError(), "no reason is given"),
        (OSError(errno.EIO, ""), os.strerror(errno.EIO)),
        (OSError(errno.EIO, "bad sector"), "bad sector"),
        (OSError("odd"), "odd"),
        (ValueError(), "no reason is given"),
    ],
)
def test_a_reason_is_never_empty(error: Exception, said: str) -> None:
    assert reason_of(error) == said
