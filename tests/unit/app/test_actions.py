from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

import pytest
from PySide6.QtGui import QKeySequence, QUndoStack
from PySide6.QtWidgets import QMainWindow, QMenu
from pytestqt.qtbot import QtBot

from planner.app.actions import ACTIONS, MENUS, Submenu, WindowActions


@pytest.fixture
def window(qtbot: QtBot) -> QMainWindow:
    made = QMainWindow()
    qtbot.addWidget(made)
    return made


@pytest.fixture
def called() -> list[str]:
    return []


@pytest.fixture
def made(window: QMainWindow, called: list[str]) -> WindowActions:
    handlers = {spec.key: lambda *_, key=spec.key: called.append(key) for spec in ACTIONS}
    actions = WindowActions(window, QUndoStack(window), handlers)
    actions.fill(window.menuBar())
    return actions


def in_menus(menus: tuple[Submenu | str | None, ...] = MENUS) -> Iterator[str]:
    for entry in menus:
        if isinstance(entry, Submenu):
            yield from in_menus(entry.entries)
        elif entry is not None:
            yield entry


def test_every_action_stands_in_exactly_one_menu() -> None:
    expected = {spec.key for spec in ACTIONS} | {"undo", "redo"}
    assert Counter(in_menus()) == Counter(expected)


def test_every_action_calls_its_own_handler(made: WindowActions, called: list[str]) -> None:
    keys = [spec.key for spec in ACTIONS]
    for key in keys:
        made[key].trigger()
    assert called == keys


def test_no_key_is_given_twice(made: WindowActions) -> None:
    bound = Counter(sequence.toString() for key in made for sequence in made[key].shortcuts())
    assert [keys for keys, count in bound.items() if count > 1] == []


@pytest.mark.parametrize(
    ("key", "sequence"),
    [
        ("new", "Ctrl+N"), ("open", "Ctrl+O"), ("save", "Ctrl+S"), ("save_as", "Ctrl+Shift+S"),
        ("quit", "Ctrl+Q"), ("undo", "Ctrl+Z"), ("redo", "Ctrl+Shift+Z"), ("help_start", "F1"),
        ("full_screen", "F11"), ("remove", "Del"),
    ],
)  # fmt: skip
def test_the_keys_everybody_knows_work_also_without_a_desktop(
    made: WindowActions, key: str, sequence: str
) -> None:
    assert QKeySequence(sequence) in made[key].shortcuts()


def test_every_entry_of_a_menu_has_a_letter_of_its_own(
    made: WindowActions, window: QMainWindow
) -> None:
    def letters(texts: list[str]) -> list[str]:
        marked = [text.replace("&&", "") for text in texts]
        return [text[text.index("&") + 1].lower() for text in marked if "&" in text]

    bars = [[action.text() for action in window.menuBar().actions()]]
    menus = [[action.text() for action in menu.actions()] for menu in made.menus.values()]
    for texts in bars + menus:
        twice = [letter for letter, n in Counter(letters(texts)).items() if n > 1]
        assert twice == [], texts


def test_choices_of_a_group_exclude_each_other(made: WindowActions) -> None:
    made["theme_dark"].trigger()
    made["theme_light"].trigger()
    assert made["theme_light"].isChecked()
    assert not made["theme_dark"].isChecked()


def test_every_action_says_what_it_does(made: WindowActions) -> None:
    assert [spec.key for spec in ACTIONS if not spec.tip] == []


def test_a_missing_handler_shows_at_once(window: QMainWindow) -> None:
    with pytest.raises(KeyError):
        WindowActions(window, QUndoStack(window), {})


def test_menus_are_named_for_screen_readers(made: WindowActions) -> None:
    names = {key: menu.accessibleName() for key, menu in made.menus.items()}
    assert names["recent"] == "Open recent"
    assert all(isinstance(menu, QMenu) for menu in made.menus.values())
