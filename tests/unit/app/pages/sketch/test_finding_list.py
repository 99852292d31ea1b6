"""The list of findings: counts, headlines, and the whole text on demand."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from planner.app.pages.sketch.details import FindingLine, counted, headline
from planner.plan.checks import Finding, Severity

pytestmark = pytest.mark.gui

CAUTION = Finding("x", Severity.CAUTION, "'Foil 1.5 mm' conducts: keep it off plugs. Ask first.")
PLAIN = Finding("y", Severity.NOTE, "Lamp 1 gives no light.")


def test_the_headline_ends_before_the_remedy() -> None:
    assert headline(CAUTION) == "'Foil 1.5 mm' conducts"
    assert headline(PLAIN) == "Lamp 1 gives no light"


@pytest.mark.parametrize(
    ("severities", "words"),
    [
        ([Severity.NOTE], "1 hint"),
        ([Severity.CAUTION, Severity.NOTE, Severity.NOTE], "1 caution, 2 hints"),
        ([Severity.WARNING, Severity.WARNING, Severity.CAUTION], "2 warnings, 1 caution"),
        ([], ""),
    ],
)
def test_the_title_counts_what_is_listed(severities: list[Severity], words: str) -> None:
    assert counted(tuple(Finding("k", one, "Text.") for one in severities)) == words


def test_a_click_or_a_key_unfolds_the_whole_text(qtbot: QtBot) -> None:
    line = FindingLine(CAUTION)
    qtbot.addWidget(line)
    line.resize(260, 80)
    line.show()
    assert "keep it off" not in line.text.text()
    with qtbot.waitSignal(line.asked_for, timeout=1000):
        qtbot.mouseClick(line.text, Qt.MouseButton.LeftButton)
    assert line.text.text() == CAUTION.sentence
    qtbot.keyClick(line.mark, Qt.Key.Key_Space)
    assert "keep it off" not in line.text.text()


def test_a_short_sentence_promises_no_more(qtbot: QtBot) -> None:
    line = FindingLine(PLAIN)
    qtbot.addWidget(line)
    assert "…" not in line.text.text()
