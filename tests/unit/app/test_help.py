from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import QUrl
from PySide6.QtGui import QDesktopServices
from pytestqt.qtbot import QtBot

from planner.app import help as shipped
from planner.app.actions import ACTIONS
from planner.app.help import PAGES, HelpWindow, app_icon, details, help_text, version_lines


@pytest.mark.parametrize("name", [name for name, _ in PAGES])
def test_every_page_is_there_and_begins_with_its_title(name: str) -> None:
    text = help_text(name)
    assert text.startswith("# ")
    assert len(text) > 500


def test_every_page_has_an_entry_in_the_menu() -> None:
    keys = {spec.key for spec in ACTIONS}
    assert {f"help_{name}" for name, _ in PAGES} <= keys


def test_a_missing_page_says_so(monkeypatch: pytest.MonkeyPatch) -> None:
    def missing(name: str) -> Path:
        raise FileNotFoundError(f"the program's data file '{name}' is missing")

    monkeypatch.setattr(shipped, "resource_path", missing)
    assert "help/start.md" in help_text("start")
    assert app_icon().isNull()


def test_links_to_pages_stay_inside_and_others_go_to_the_browser(
    qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    opened: list[str] = []

    def note(url: QUrl) -> bool:
        opened.append(url.toString())
        return True

    monkeypatch.setattr(QDesktopServices, "openUrl", note)
    window = HelpWindow()
    qtbot.addWidget(window)
    window._follow(QUrl("glossary.md"))
    assert window.shown_page == "glossary"
    window._follow(QUrl("https://example.org/light"))
    window._follow(QUrl("file:///etc/passwd"))
    assert opened == ["https://example.org/light"]


def test_the_glossary_explains_the_words_of_the_figures() -> None:
    text = help_text("glossary")
    for word in ("PPFD", "DLI", "CV", "Min / mean", "Utilisation", "Hanging height", "Lining"):
        assert word in text


def test_the_icon_is_drawn(qtbot: QtBot) -> None:
    image = app_icon().pixmap(64, 64).toImage()
    colours = {image.pixel(x, y) for x in range(64) for y in range(64)}
    assert len(colours) > 4


def test_the_versions_name_what_the_program_runs_on(qtbot: QtBot) -> None:
    text = "\n".join(version_lines())
    for part in ("Python 3.", "Qt 6.", "numpy ", "pydantic "):
        assert part in text
    assert "offscreen" in details()
