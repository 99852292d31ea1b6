"""The settings dialog: everything at once, at once in force, and remembered."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from planner.app.frame import SettingsDialog
from planner.app.main_window import MainWindow
from planner.app.settings import Settings
from planner.app.theme import Theme
from planner.units import LengthUnit
from tests.e2e.shell import make_window, trigger

pytestmark = pytest.mark.gui


@pytest.fixture
def window(qtbot: QtBot) -> MainWindow:
    return make_window(qtbot)[0]


def opened(window: MainWindow) -> SettingsDialog:
    trigger(window, "settings")
    (dialog,) = window.findChildren(SettingsDialog)
    return dialog


def choose(dialog: SettingsDialog, name: str, text: str) -> None:
    combo = getattr(dialog, name)
    combo.setCurrentIndex(combo.findText(text))
    combo.activated.emit(combo.currentIndex())


def test_choices_act_at_once_and_are_remembered(window: MainWindow) -> None:
    dialog = opened(window)
    plan = window.document.plan
    choose(dialog, "unit", "Inches")
    choose(dialog, "colour_map", "Viridis")
    choose(dialog, "cells", "12 x 12")
    choose(dialog, "theme", "Dark")
    dialog.contours.click()
    state = window.display.state
    assert (state.unit, state.colour_map, state.cells, state.contours) == (
        LengthUnit.INCH, "viridis", 12, False,
    )  # fmt: skip
    assert isinstance(state.unit, LengthUnit)
    assert window.estimate is not None
    assert window.estimate.ppfd.shape == (12, 12)
    assert window.document.plan == plan
    assert not window.document.dirty
    again = Settings.of_user()
    assert again.values.cells == 12
    assert again.values.theme is Theme.DARK
    for key in ("unit_in", "map_viridis", "cells_12", "theme_dark"):
        assert window.actions_[key].isChecked()
    choose(dialog, "theme", "As the system")


def test_the_dialog_follows_the_menus_and_closes_by_escape(
    qtbot: QtBot, window: MainWindow
) -> None:
    dialog = opened(window)
    trigger(window, "cells_48")
    assert dialog.cells.currentText() == "48 x 48"
    qtbot.keyClick(dialog, Qt.Key.Key_Escape)
    assert not dialog.isVisible()


def test_every_choice_of_the_dialog_has_a_name(window: MainWindow) -> None:
    dialog = opened(window)
    for combo in (dialog.unit, dialog.colour_map, dialog.cells, dialog.theme):
        assert combo.accessibleName()


def test_the_key_of_the_settings(window: MainWindow) -> None:
    keys_of = [key.toString() for key in window.actions_["settings"].shortcuts()]
    assert "Ctrl+," in keys_of
