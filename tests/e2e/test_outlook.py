"""How sure the figures are, and which wall to line first."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from planner.app.estimator import Weighed
from planner.app.pages.sketch.details import FigureDetails, shared_out
from planner.app.pages.sketch.page import SketchPage
from planner.estimate.outlook import Outlook, Part, Uncertainty
from planner.estimate.result import Quality, Share
from planner.estimate.sensitivity import SurfaceGain
from planner.plan import edits
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.reports.advice import lining_gains
from tests.e2e.shell import make_window, small_plan, trigger
from tests.e2e.sketching import make_page, written_estimate

KNOWN = Uncertainty(
    mean=15.3, minimum=9.0, maximum=18.0, min_over_mean=0.01, dli=0.88, relative_mean=0.07,
    parts=(Part("photon flux of Panel", 15.0, 8.0), Part("reflectance of Board", 3.0, 4.0)),
)  # fmt: skip
GAINS = (
    SurfaceGain(Place(PlaceKind.WALL, 1, 0), 0.5, 120.0, 8.0),
    SurfaceGain(Place(PlaceKind.CEILING), 0.95, 40.0, 1.0),
    SurfaceGain(Place(PlaceKind.WALL, 0, 0), 1.0, 500.0, 0.0),
)


def outlook_of(plan: Plan) -> Outlook:
    return Outlook(plan, KNOWN, GAINS)


@pytest.fixture
def page(qtbot: QtBot, tmp_path: Path) -> SketchPage:
    page = make_page(qtbot, small_plan(), tmp_path)
    page.show_estimate(written_estimate(page.workplace.document.plan))
    return page


def test_figures_get_their_band_when_the_outlook_is_there(page: SketchPage) -> None:
    mean = page.strip.figures[0]
    assert mean.accessibleName() == "Mean: 212 µmol m⁻² s⁻¹"
    page.show_outlook(outlook_of(page.workplace.document.plan))
    assert mean.accessibleName() == "Mean: 212 ± 30 µmol m⁻² s⁻¹"
    mean.click()
    told = page.strip.meaning.text()
    assert told.index("photon flux of Panel") < told.index("reflectance of Board")
    assert page.details.lines[0].accessibleName() == "Minimum: 129 ± 18 µmol m⁻² s⁻¹"


def test_the_band_of_another_plan_is_not_shown(page: SketchPage) -> None:
    plan = page.workplace.document.plan
    page.show_outlook(outlook_of(plan))
    moved = edits.change_lamp(plan, 0, x=0.3)
    page.show_estimate(written_estimate(moved, Quality.PREVIEW))
    assert page.strip.figures[0].accessibleName() == "Mean: 212 µmol m⁻² s⁻¹"


def test_the_sums_error_stands_beside_the_balance(page: SketchPage) -> None:
    estimate = written_estimate(page.workplace.document.plan)
    page.show_estimate(replace(estimate, numeric_error=0.004))
    assert "good to about 0.4 %" in page.details.closure.text()


def test_the_list_tells_what_ten_points_bring_and_leads_to_the_surface(
    page: SketchPage, qtbot: QtBot
) -> None:
    page.show_outlook(outlook_of(page.workplace.document.plan))
    lines = page.details.gains.lines
    # The ceiling at 95 % has five points left; wall 1 returns everything already.
    assert [line.accessibleName() for line in lines] == [
        "Wall 2: +10 points of reflectance bring +12 µmol m⁻² s⁻¹ to the mean, +8 to the minimum.",
        "Ceiling: +5 points of reflectance bring +2 µmol m⁻² s⁻¹ to the mean, +1 to the minimum.",
    ]
    page.details.gains_fold.setChecked(True)
    lines[0].click()
    assert page.workplace.selection.current == Place(PlaceKind.WALL, 1, 0)
    lines[1].setFocus()
    qtbot.keyClick(lines[1], Qt.Key.Key_Space)
    assert page.workplace.selection.current == Place(PlaceKind.CEILING)


def test_surfaces_with_the_same_figures_stand_in_the_order_of_places() -> None:
    alike = tuple(
        SurfaceGain(Place(PlaceKind.WALL, index, 0), 0.5, 74.0 + 0.01 * index, 4.9)
        for index in range(4)
    )
    told = lining_gains(small_plan(), alike)
    assert [gain.name for gain in told] == ["Wall 1", "Wall 2", "Wall 3", "Wall 4"]


def test_what_a_fold_holds_stays_within_it(qtbot: QtBot) -> None:
    """In a low column the balance scrolls; its figures are not hidden by the bar beside them."""
    share = Share(Place(PlaceKind.CANOPY), 1.0, 0.1)
    for column in range(680, 790, 12):
        details = FigureDetails()
        qtbot.addWidget(details)
        details.resize(280, column)
        details.show()
        details.fit_column(column)
        details.figures_fold.click()
        details.figures_fold.click()
        estimate = replace(written_estimate(small_plan()), shares=(share,) * 6)
        details.show_estimate(replace(estimate, numeric_error=0.008))
        details.photons_fold.click()
        qtbot.wait(20)
        area = details.folds[-1][1]
        assert details.bars.geometry().right() <= area.viewport().width(), column


def test_marks_on_the_sketch_follow_menu_and_list(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    page = window.page
    page.show_outlook(outlook_of(window.document.plan))
    bare = page.plan_view.grab().toImage()
    trigger(window, "gains")
    assert window.display.state.gains
    assert page.details.gains.switch.isChecked()
    assert page.plan_view.grab().toImage() != bare
    page.details.gains.switch.click()
    assert not window.actions_["gains"].isChecked()
    assert page.plan_view.grab().toImage() == bare


def test_an_outlook_that_came_too_late_is_dropped(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    window.estimator.outlook_ready.emit(outlook_of(small_plan("Another")))
    assert window.page.details.gains.shown is None
    window.estimator.outlook_ready.emit(outlook_of(window.document.plan))
    assert window.page.details.gains.shown is not None


def test_a_lining_under_the_hand_tells_what_it_would_bring(page: SketchPage, qtbot: QtBot) -> None:
    work, worth = page.workplace, page.worth
    work.selection.select(Place(PlaceKind.WALL, 1))
    chooser = page.column.panel.lines[0].chooser  # type: ignore[attr-defined]
    note = page.column.panel.considered  # type: ignore[attr-defined]
    lining = work.shelf.catalogue.linings[2]
    line = chooser.findData(lining.key)
    with qtbot.waitSignal(worth.wanted, timeout=1000) as asked:
        chooser.highlighted.emit(line)
    assert asked.args == [work.document.plan, lining]
    assert "is being computed" in note.text()
    rows = ((GAINS[0], 12.3, -8.1), (GAINS[2], 1.0, 1.0))
    worth.take(Weighed(work.document.plan, lining, rows))
    assert note.text() == f"{lining.name}: +12 µmol m⁻² s⁻¹ to the mean, −8.1 to the minimum."
    assert chooser.itemText(line).endswith("(+12 mean, −8.1 minimum)")
    chooser.hidePopup()
    assert note.isHidden()
    assert work.document.undo_stack.count() == 0, "looking is no edit"


def test_what_was_weighed_for_another_plan_is_forgotten(page: SketchPage) -> None:
    work, lining = page.workplace, page.workplace.shelf.catalogue.linings[2]
    place = Place(PlaceKind.WALL, 1, 0)
    page.worth.take(Weighed(work.document.plan, lining, ((GAINS[0], 12.3, 8.1),)))
    assert page.worth.brings(lining, place) == (12.3, 8.1)
    work.document.apply(edits.change_lamp(work.document.plan, 0, x=0.3), "Move lamp")
    assert page.worth.brings(lining, place) is None


@pytest.mark.parametrize(
    ("needs", "room", "given"),
    [
        ([100, 200], 400, [100, 200]),
        ([100, 500, 300], 600, [100, 250, 250]),
        ([100, 0, 900], 600, [100, 0, 500]),
        ([0, 0], 100, [0, 0]),
    ],
)
def test_folds_share_a_column(needs: list[int], room: int, given: list[int]) -> None:
    assert shared_out(needs, room) == given
