from __future__ import annotations

import re
from pathlib import Path

import pytest
from PySide6.QtCore import Qt, QUrl
from PySide6.QtGui import QDesktopServices, QTextDocument
from PySide6.QtWidgets import QTextBrowser
from pytestqt.qtbot import QtBot

from planner import language
from planner.app import help as shipped
from planner.app.actions import ACTIONS
from planner.app.help import PAGES, HelpWindow, app_icon, details, help_text, version_lines
from planner.folders import resource_path


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
    monkeypatch.setattr(language, "resource_path", missing)
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


def test_a_link_that_is_clicked_leads_to_its_page(qtbot: QtBot) -> None:
    window = HelpWindow()
    qtbot.addWidget(window)
    window.show()
    browser = next(b for b in window.findChildren(QTextBrowser) if b.isVisible())
    found = browser.document().find("A worked example")
    middle = browser.document().find("worked", found.selectionStart())
    at = browser.cursorRect(middle).center()
    qtbot.mouseClick(browser.viewport(), Qt.MouseButton.LeftButton, pos=at)
    assert window.shown_page == "guide"


def test_every_picture_of_the_guide_is_there_and_fits_its_window(qtbot: QtBot) -> None:
    window = HelpWindow()
    qtbot.addWidget(window)
    window.resize(window.sizeHint())
    window.show_page("guide")
    browser = next(b for b in window.findChildren(QTextBrowser) if b.isVisible())
    named = re.findall(r"!\[[^]]+\]\(\.\./([^)]+)\)", help_text("guide"))
    assert len(named) >= 4
    assert [name for name in named if not resource_path(name).is_file()] == []
    kind = QTextDocument.ResourceType.ImageResource.value
    for name in named:
        picture = browser.document().resource(kind, QUrl(f"../{name}"))
        assert picture is not None, name
    assert browser.horizontalScrollBar().maximum() == 0


def test_the_glossary_explains_the_words_of_the_figures() -> None:
    text = help_text("glossary")
    figures = ("PPFD", "DLI", "CV", "Min / mean", "Utilisation", "Hanging height", "Lining")
    rooms = ("Tilt", "Dirt", "Dust", "Hours run", "Hours to 90 % (L90)", "Room light", "Tier")
    for word in (*figures, *rooms):
        assert word in text


def test_the_start_page_leads_to_what_makes_a_plan_richer() -> None:
    for word in ("*Tilt*", "*Room light*", "*Dirt*", "*tier*", "(L90)"):
        assert word in help_text("start")


def test_far_red_is_said_alike_everywhere() -> None:
    """Of a spectrum to 800 nm, on the canopy to 750: every page that says one says the other."""
    for name in ("spectra", "glossary"):
        text = help_text(name)
        assert "800 nm" in text
        assert "750 nm" in text
        assert "700-800" not in text


def test_the_icon_is_drawn(qtbot: QtBot) -> None:
    image = app_icon().pixmap(64, 64).toImage()
    colours = {image.pixel(x, y) for x in range(64) for y in range(64)}
    assert len(colours) > 4


def test_the_versions_name_what_the_program_runs_on(qtbot: QtBot) -> None:
    text = "\n".join(version_lines())
    for part in ("Python 3.", "Qt 6.", "numpy ", "pydantic "):
        assert part in text
    assert "offscreen" in details()
