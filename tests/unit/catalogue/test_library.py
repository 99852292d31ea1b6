"""The user's own entries: kept, read back, and never in the way."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from planner.catalogue.library import (
    CatalogueError,
    delete_entry,
    load_catalogue,
    new_key,
    save_entry,
)
from planner.folders import user_folder
from planner.plan.lamp import LampModel, PointBody
from planner.plan.lining import Lining


def _lining(key: str = "grey-card", value: float = 0.18) -> Lining:
    return Lining(key=key, name="Grey card", reflectance=value, low=0.1, high=0.95, source="mine")


def _lamp(key: str = "desk-lamp") -> LampModel:
    return LampModel(key=key, name="Desk lamp", body=PointBody(), ppf=10, watts=8)


def test_an_absent_folder_means_only_built_in_entries(tmp_path: Path) -> None:
    catalogue = load_catalogue(tmp_path / "nowhere")
    assert catalogue.linings
    assert not catalogue.own_linings
    assert not catalogue.problems
    assert not (tmp_path / "nowhere").exists(), "reading makes no folder"


def test_own_entries_come_back_as_they_were_kept(tmp_path: Path) -> None:
    path = save_entry(_lining(), tmp_path)
    save_entry(_lamp(), tmp_path)
    catalogue = load_catalogue(tmp_path)
    assert path == tmp_path / "linings" / "grey-card.json"
    assert catalogue.lining("grey-card") == _lining()
    assert catalogue.lamp("desk-lamp") == _lamp()
    assert catalogue.own_linings == {"grey-card"}
    assert catalogue.own_lamps == {"desk-lamp"}


def test_keeping_again_replaces_and_leaves_no_scraps(tmp_path: Path) -> None:
    save_entry(_lining(value=0.18), tmp_path)
    save_entry(_lining(value=0.2), tmp_path)
    assert load_catalogue(tmp_path).lining("grey-card").reflectance == 0.2
    assert [path.name for path in (tmp_path / "linings").iterdir()] == ["grey-card.json"]


def test_an_own_entry_stands_in_for_a_built_in_one_until_deleted(tmp_path: Path) -> None:
    before = load_catalogue(tmp_path)
    save_entry(_lining("white-board", 0.9), tmp_path)
    during = load_catalogue(tmp_path)
    assert during.lining("white-board").reflectance == 0.9
    assert [entry.key for entry in during.linings] == [entry.key for entry in before.linings]
    assert delete_entry(Lining, "white-board", tmp_path)
    assert load_catalogue(tmp_path) == before


def test_deleting_says_whether_there_was_something(tmp_path: Path) -> None:
    save_entry(_lamp(), tmp_path)
    assert delete_entry(LampModel, "desk-lamp", tmp_path)
    assert not delete_entry(LampModel, "desk-lamp", tmp_path)
    assert not delete_entry(Lining, "white-board", tmp_path), "a built-in entry is not deleted"


def test_deleting_finds_an_entry_in_a_renamed_file(tmp_path: Path) -> None:
    save_entry(_lining(), tmp_path).rename(tmp_path / "linings" / "my copy.json")
    assert delete_entry(Lining, "grey-card", tmp_path)
    assert load_catalogue(tmp_path).own_linings == frozenset()


BROKEN = {
    "not-json": (b"{", "not JSON"),
    "empty": (b"", "not JSON"),
    "binary": (b"\xff\xfe\x00\x01", "not JSON"),
    "list": (b"[]", "left out"),
    "unknown-field": (
        b'{"key":"a","name":"a","reflectance":0.5,"low":0.1,"high":0.9,"colour":"red"}',
        "'colour'",
    ),
    "out-of-range": (b'{"key":"a","name":"a","reflectance":1.2,"low":0,"high":1}', "'reflectance'"),
    "not-a-number": (b'{"key":"a","name":"a","reflectance":NaN,"low":0,"high":1}', "left out"),
    "outside-its-range": (
        b'{"key":"a","name":"Card","reflectance":0.5,"low":0.6,"high":0.9}',
        "must lie between",
    ),
    "named-open": (
        b'{"key":"open","name":"a","reflectance":0.5,"low":0.1,"high":0.9}',
        "stands for an opening",
    ),
    "deep": (b"[" * 100_000, "left out"),
    "huge": (b" " * 1_000_001, "larger than 1 MB"),
}


@pytest.mark.parametrize("name", BROKEN)
def test_a_broken_file_is_reported_and_the_rest_loads(tmp_path: Path, name: str) -> None:
    content, expected = BROKEN[name]
    save_entry(_lining(), tmp_path)
    (tmp_path / "linings" / f"{name}.json").write_bytes(content)
    catalogue = load_catalogue(tmp_path)
    assert catalogue.own_linings == {"grey-card"}
    (problem,) = catalogue.problems
    assert f"{name}.json" in problem
    assert expected in problem
    assert problem.endswith(".")
    assert "http" not in problem
    assert (tmp_path / "linings" / f"{name}.json").exists(), "a broken file is left alone"


def test_a_folder_named_like_an_entry_is_reported(tmp_path: Path) -> None:
    (tmp_path / "lamps" / "lamp.json").mkdir(parents=True)
    (problem,) = load_catalogue(tmp_path).problems
    assert "lamp.json" in problem
    assert "could not be read" in problem


def test_a_file_where_the_folder_should_be_is_reported(tmp_path: Path) -> None:
    (tmp_path / "lamps").write_text("not a folder")
    (problem,) = load_catalogue(tmp_path).problems
    assert "lamps" in problem


def test_the_second_file_with_a_key_is_left_out(tmp_path: Path) -> None:
    path = save_entry(_lining(), tmp_path)
    (path.parent / "second.json").write_bytes(path.read_bytes())
    (problem,) = load_catalogue(tmp_path).problems
    assert "already holds the key 'grey-card'" in problem


def test_other_files_are_no_business_of_the_catalogue(tmp_path: Path) -> None:
    (tmp_path / "linings").mkdir()
    (tmp_path / "linings" / "readme.txt").write_text("notes")
    assert load_catalogue(tmp_path).problems == ()


def test_the_key_open_is_refused(tmp_path: Path) -> None:
    with pytest.raises(CatalogueError, match="stands for an opening"):
        save_entry(_lining("open"), tmp_path)


def test_a_folder_that_cannot_be_made_is_explained(tmp_path: Path) -> None:
    for kind in ("linings", "lamps"):
        (tmp_path / kind).write_text("in the way")
    words = r"could not be kept.*may be written to"
    with pytest.raises(CatalogueError, match=words):
        save_entry(_lining(), tmp_path)
    with pytest.raises(CatalogueError, match=words):
        save_entry(_lamp(), tmp_path)


def test_a_write_that_fails_leaves_the_old_entry(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    save_entry(_lining(value=0.18), tmp_path)

    def no_room(descriptor: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", no_room)
    with pytest.raises(CatalogueError, match="No space left"):
        save_entry(_lining(value=0.3), tmp_path)
    assert load_catalogue(tmp_path).lining("grey-card").reflectance == 0.18
    assert len(list((tmp_path / "linings").iterdir())) == 1


def test_an_unreadable_file_is_reported(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = save_entry(_lining(), tmp_path)
    read_bytes = Path.read_bytes

    def forbidden(asked: Path) -> bytes:
        if asked == path:
            raise PermissionError(13, "Permission denied")
        return read_bytes(asked)

    monkeypatch.setattr(Path, "read_bytes", forbidden)
    catalogue = load_catalogue(tmp_path)
    assert catalogue.problems == (
        f"'{path}' was left out: it could not be read: Permission denied.",
    )
    assert catalogue.linings


def test_the_folder_follows_the_variable(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PLANNER_DATA_DIR", str(tmp_path))
    assert user_folder() == tmp_path
    save_entry(_lining())
    assert load_catalogue().own_linings == {"grey-card"}


def test_without_the_variable_it_is_the_users_data_folder(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("PLANNER_DATA_DIR", raising=False)
    assert user_folder().name == "grow-space-light-planner"
    assert user_folder().is_absolute()


@pytest.mark.parametrize(
    ("name", "taken", "expected"),
    [
        ("Grey card", (), "grey-card"),
        ("Grey card", ("grey-card",), "grey-card-2"),
        ("Grey card", ("grey-card", "grey-card-2"), "grey-card-3"),
        ("  Karton (weiß), été  ", (), "karton-wei-ete"),
        ("Open", (), "open-2"),
        ("漆", (), "entry"),
        ("x" * 200, (), "x" * 60),
    ],
)
def test_keys_are_made_from_names(name: str, taken: tuple[str, ...], expected: str) -> None:
    key = new_key(name, taken)
    assert key == expected
    assert _lining(key).key == key, "the key must be one the model accepts"


@pytest.mark.skipif(os.name != "posix", reason="pipes of POSIX")
def test_a_pipe_among_the_own_entries_is_not_waited_for(tmp_path: Path) -> None:
    (tmp_path / "linings").mkdir()
    os.mkfifo(tmp_path / "linings" / "pipe.json")
    catalogue = load_catalogue(tmp_path)
    assert "it is not a file" in catalogue.problems[0]
