"""What a user reads beside the drawing: the sentence, the figures, the balance, the state."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from pytestqt.qtbot import QtBot

from planner.app.pages.sketch.page import SketchPage
from planner.plan import edits
from planner.plan.lining import Caution, Lining
from planner.plan.place import Place, PlaceKind
from tests.e2e.shell import small_plan
from tests.e2e.sketching import make_page, written_estimate

pytestmark = pytest.mark.gui


@pytest.fixture
def page(qtbot: QtBot, tmp_path: Path) -> SketchPage:
    made = make_page(qtbot, small_plan(), tmp_path)
    made.show_estimate(written_estimate(made.workplace.document.plan))
    return made


def test_the_sentence_says_what_the_light_does(page: SketchPage) -> None:
    text = page.strip.sentence.text()
    assert "Mean 212" in text
    assert "61 % of it" in text
    assert "16 h give 10.7 mol" in text


def test_four_figures_stand_large_with_their_units(page: SketchPage) -> None:
    shown = [figure.accessibleName() for figure in page.strip.figures]
    assert shown == [
        "Mean: 212 µmol m⁻² s⁻¹",
        "Min / mean: 61 %",
        "DLI: 10.7 mol m⁻² d⁻¹",
        "Inside band: 70 %",
    ]


def test_a_figure_is_copied_by_its_menu(page: SketchPage) -> None:
    mean = page.strip.figures[0]
    assert mean.contextMenuPolicy() is Qt.ContextMenuPolicy.ActionsContextMenu
    (copy,) = mean.actions()
    copy.trigger()
    assert QGuiApplication.clipboard().text() == "Mean: 212 µmol m⁻² s⁻¹"


def test_a_click_or_space_tells_what_a_figure_means(qtbot: QtBot, page: SketchPage) -> None:
    mean, evenness = page.strip.figures[:2]
    assert not page.strip.meaning.isVisible()
    qtbot.mouseClick(mean, Qt.MouseButton.LeftButton)
    assert page.strip.meaning.isVisible()
    assert "square metre" in page.strip.meaning.text()
    evenness.setFocus()
    qtbot.keyClick(evenness, Qt.Key.Key_Space)
    assert "darkest" in page.strip.meaning.text()
    assert not mean.isChecked()
    qtbot.keyClick(evenness, Qt.Key.Key_Space)
    assert not page.strip.meaning.isVisible()


def test_the_rest_folds_out_with_the_balance(qtbot: QtBot, page: SketchPage) -> None:
    details = page.details
    assert not details.lines[0].isVisible()
    qtbot.mouseClick(details.figures_fold, Qt.MouseButton.LeftButton)
    assert details.lines[0].isVisible()
    names = " | ".join(line.accessibleName() for line in details.lines)
    for part in ("2.3", "µmol J", "208", "W m", "1.6", "kWh", "55 %", "12 %"):
        assert part in names
    qtbot.mouseClick(details.photons_fold, Qt.MouseButton.LeftButton)
    assert not details.lines[0].isVisible()
    assert details.bars.isVisible()
    assert details.bars.accessibleDescription() == (
        "Canopy: 55 %; Wall 1: Open (no surface): 30 %; Wall 2: Open (no surface): 15 %"
    )
    assert "+0.012 %" in details.closure.text()


def test_the_longest_bar_belongs_to_the_largest_share(qtbot: QtBot, page: SketchPage) -> None:
    page.details.photons_fold.setChecked(True)
    image = page.details.bars.grab().toImage()
    track = image.pixelColor(image.width() - 8, 36 - 9)
    filled = []
    for line in range(3):
        row = 36 * line + 36 - 9
        columns = range(6, image.width() - 6)
        filled.append(sum(image.pixelColor(x, row) != track for x in columns) / len(columns))
    assert filled == pytest.approx([0.55, 0.30, 0.15], abs=0.02)


def test_a_failure_stands_beside_the_old_figures(page: SketchPage) -> None:
    page.show_failure("The light could not be worked out: too little memory.")
    assert page.strip.failure.isVisible()
    assert "too little memory" in page.strip.failure.text()
    assert page.strip.figures[0].accessibleName() == "Mean: 212 µmol m⁻² s⁻¹"
    page.show_estimate(written_estimate(page.workplace.document.plan, mean=200))
    assert not page.strip.failure.isVisible()
    assert page.strip.figures[0].accessibleName() == "Mean: 200 µmol m⁻² s⁻¹"


def test_a_conducting_lining_brings_its_caution(qtbot: QtBot, page: SketchPage) -> None:
    document = page.workplace.document
    foil = Lining(
        key="foil", name="Foil", reflectance=0.9, low=0.8, high=0.95,
        cautions=(Caution.CONDUCTS,),
    )  # fmt: skip
    document.apply(edits.line_wall(document.plan, 2, 0, foil), "Line wall 3 with Foil")
    # That no target is set stands under the sentence already, with the button that chooses one.
    assert page.details.findings_fold.text() == "1 caution"
    assert len(page.details.findings.shown) == 1
    assert page.details.findings.isVisible()
    finding = page.details.findings.shown[0]
    assert "electric" in finding.sentence
    mark = next(
        button
        for button in page.details.findings.findChildren(type(page.details.findings_fold))
        if finding.sentence in button.accessibleName()
    )
    qtbot.mouseClick(mark, Qt.MouseButton.LeftButton)
    assert page.workplace.selection.current == Place(PlaceKind.WALL, 2, 0)


def test_a_dark_space_says_so(qtbot: QtBot, tmp_path: Path) -> None:
    page = make_page(qtbot, small_plan(lamps=0), tmp_path)
    page.show_estimate(written_estimate(page.workplace.document.plan))
    assert "dark" in page.strip.sentence.text()


def test_the_section_follows_the_line_and_the_estimate(page: SketchPage) -> None:
    _, ppfd = page.section.profile()
    # All but one corner of this light is 212.
    assert np.nanmedian(ppfd) == pytest.approx(212, rel=0.01)
    before = page.section.profile()[0][-1]
    page.plan_view.set_section(((0.2, 0.5), (0.6, 0.5)))
    after = page.section.profile()[0][-1]
    assert (before, after) == pytest.approx((100, 40), abs=0.5)


def test_the_colour_bar_speaks_for_the_drawing(page: SketchPage) -> None:
    low, high = page.plan_view.levels
    words = page.colour_bar.accessibleDescription()
    assert f"{high:g}" in words
    assert f"{low:g}" in words
