"""Buttons that look like words follow the theme at once."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QToolButton, QWidget
from pytestqt.qtbot import QtBot

from planner.app import theme
from planner.app.fields.form import fold_button, link_button
from planner.app.pages.sketch.details import FindingLine
from planner.app.theme import Theme
from planner.plan.checks import Finding, Severity


def mark() -> QToolButton:
    line = FindingLine(Finding("key", Severity.CAUTION, "Something: look at it."))
    line.mark.setParent(None)
    return line.mark


def strongest(button: QToolButton) -> int:
    """The lightness that stands out most from the ground."""
    image = button.grab().toImage()
    tones = [
        image.pixelColor(x, y).lightness()
        for x in range(image.width())
        for y in range(image.height())
    ]
    ground = button.palette().window().color().lightness()
    return max(tones, key=lambda tone: abs(tone - ground))


def change_to(wanted: Theme) -> None:
    theme.apply(wanted)
    QApplication.processEvents()  # palettes reach widgets by way of events


@pytest.mark.parametrize("make", [lambda: fold_button("Fold"), lambda: link_button("Link"), mark])
def test_words_are_read_in_either_theme_after_a_change(
    make: Callable[[], QToolButton], qtbot: QtBot
) -> None:
    theme.apply(Theme.LIGHT)
    holder = QWidget()
    qtbot.addWidget(holder)
    button = make()
    button.setParent(holder)
    button.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    holder.show()
    on_light = strongest(button)
    change_to(Theme.DARK)
    on_dark = strongest(button)
    change_to(Theme.LIGHT)
    assert on_light < 130
    assert on_dark > 120  # thin strokes are softened at their edges
    assert strongest(button) == on_light
