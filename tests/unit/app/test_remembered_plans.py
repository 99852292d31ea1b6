from __future__ import annotations

from pathlib import Path

from PySide6.QtWidgets import QMenu
from pytestqt.qtbot import QtBot

from planner.app.settings import MAX_RECENT, RecentPlans, Settings


def test_the_newest_stands_first_and_none_twice(tmp_path: Path, qtbot: QtBot) -> None:
    recent = RecentPlans(Settings.in_memory())
    a, b = tmp_path / "a.json", tmp_path / "b.json"
    for path in (a, b, a):
        recent.add(path)
    assert recent.paths == (a, b)


def test_the_same_file_by_another_way_is_the_same(tmp_path: Path, qtbot: QtBot) -> None:
    recent = RecentPlans(Settings.in_memory())
    (tmp_path / "sub").mkdir()
    recent.add(tmp_path / "a.json")
    recent.add(tmp_path / "sub" / ".." / "a.json")
    assert recent.paths == (tmp_path / "a.json",)


def test_the_list_stays_short(tmp_path: Path, qtbot: QtBot) -> None:
    recent = RecentPlans(Settings.in_memory())
    for number in range(MAX_RECENT + 5):
        recent.add(tmp_path / f"{number}.json")
    assert len(recent.paths) == MAX_RECENT
    assert recent.paths[0].name == f"{MAX_RECENT + 4}.json"


def test_an_ampersand_in_a_name_is_shown_and_is_no_shortcut(tmp_path: Path, qtbot: QtBot) -> None:
    recent = RecentPlans(Settings.in_memory())
    path = tmp_path / "herbs & co.json"
    path.write_text("")
    recent.add(path)
    menu = QMenu()
    qtbot.addWidget(menu)
    recent.fill(menu)
    assert menu.actions()[0].text() == "&1  herbs && co.json"


def test_choosing_an_entry_hands_out_its_path(tmp_path: Path, qtbot: QtBot) -> None:
    recent = RecentPlans(Settings.in_memory())
    path = tmp_path / "a.json"
    path.write_text("")
    recent.add(path)
    menu = QMenu()
    qtbot.addWidget(menu)
    recent.attach(menu)
    with qtbot.waitSignal(recent.chosen, timeout=500) as caught:
        menu.actions()[0].trigger()
    assert caught.args == [path]
