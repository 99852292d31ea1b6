"""What a person does on the drawings: each drag one named step, the two views in step."""

from __future__ import annotations

from dataclasses import dataclass

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QHBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from planner.app.canvas.elevation_view import ElevationView
from planner.app.canvas.plan_view import PlanView
from planner.app.display import Display, SelectionModel
from planner.app.document import Document
from planner.app.plots.colour_bar import ColourBar
from planner.app.plots.section import SectionPlot
from planner.plan.plan import Plan
from planner.units import LengthUnit
from tests.unit.app.canvas.scenes import Hand, light_of, plan_of

pytestmark = pytest.mark.gui


@dataclass
class Sheet:
    """Plan and elevation beside each other on one document."""

    window: QWidget
    document: Document
    display: Display
    plan_view: PlanView
    elevation: ElevationView

    @property
    def plan(self) -> Plan:
        return self.document.plan

    @property
    def steps(self) -> list[str]:
        stack = self.document.undo_stack
        return [stack.text(k) for k in range(stack.count())]

    def undo(self) -> None:
        self.document.undo_stack.undo()


@pytest.fixture
def sheet(qtbot: QtBot) -> Sheet:
    document, selection, display = Document(plan_of()), SelectionModel(), Display()
    document.changed.connect(lambda _old, new: selection.follow(new))
    window = QWidget()
    qtbot.addWidget(window)
    layout = QHBoxLayout(window)
    plan_view = PlanView(document, selection, display)
    elevation = ElevationView(document, selection, display)
    layout.addWidget(plan_view, 5)
    layout.addWidget(elevation, 3)
    window.resize(1100, 640)
    window.show()
    plan_view.setFocus()
    return Sheet(window, document, display, plan_view, elevation)


def test_drag_a_corner_and_undo(sheet: Sheet) -> None:
    before = sheet.plan
    Hand(sheet.plan_view).drag((1.0, 1.0), (0.9, 0.8))
    assert sheet.plan.space.footprint[2] == (0.9, 0.8)
    assert sheet.steps == ["Move corner"]
    sheet.undo()
    assert sheet.plan == before


def test_drag_a_wall_and_undo(sheet: Sheet) -> None:
    before = sheet.plan
    Hand(sheet.plan_view).drag((1.0, 0.3), (0.8, 0.35))
    assert sheet.plan.space.footprint == ((0, 0), (0.8, 0), (0.8, 1), (0, 1))
    assert sheet.steps == ["Move wall"]
    sheet.undo()
    assert sheet.plan == before


def test_drag_a_lamp_and_undo(sheet: Sheet) -> None:
    Hand(sheet.plan_view).drag((0.55, 0.35), (0.75, 0.75))
    assert (sheet.plan.lamps[0].x, sheet.plan.lamps[0].y) == (0.7, 0.7)
    assert sheet.steps == ["Move lamp"]
    sheet.undo()
    assert (sheet.plan.lamps[0].x, sheet.plan.lamps[0].y) == (0.5, 0.3)


def test_change_ones_mind_with_escape(sheet: Sheet) -> None:
    before, hand = sheet.plan, Hand(sheet.plan_view)
    for start in ((1.0, 1.0), (1.0, 0.3), (0.5, 0.3)):
        hand.press(*start)
        hand.move(0.6, 0.6)
        assert sheet.plan != before
        QTest.keyClick(sheet.plan_view, Qt.Key.Key_Escape)
        hand.move(0.7, 0.7)
        hand.release(0.7, 0.7)
        assert sheet.plan == before
    assert sheet.steps == []
    assert not sheet.document.dirty


def test_two_drags_are_two_steps(sheet: Sheet) -> None:
    hand = Hand(sheet.plan_view)
    hand.drag((0.5, 0.3), (0.6, 0.3))
    hand.drag((0.6, 0.3), (0.7, 0.3))
    assert sheet.steps == ["Move lamp", "Move lamp"]
    sheet.undo()
    assert sheet.plan.lamps[0].x == 0.6


def test_make_an_l_by_double_click_and_drag(sheet: Sheet) -> None:
    hand = Hand(sheet.plan_view)
    at = hand.pixel(1.0, 0.6)
    QTest.mouseDClick(sheet.plan_view, Qt.MouseButton.LeftButton, pos=at)
    assert sheet.plan.space.footprint[2] == (1.0, 0.6)
    hand.drag((1.0, 1.0), (0.6, 1.0))
    at = hand.pixel(0.8, 0.8)  # the middle of the slanted wall
    QTest.mouseDClick(sheet.plan_view, Qt.MouseButton.LeftButton, pos=at)
    hand.drag((0.8, 0.8), (0.6, 0.6))
    assert len(sheet.plan.space.footprint) == 6
    assert sheet.plan.space.area == pytest.approx(0.6 + 0.6 * 0.4, abs=0.002)
    assert sheet.steps == ["Add corner", "Move corner", "Add corner", "Move corner"]


def test_inches_snap_to_half_an_inch_and_never_alter_the_plan(sheet: Sheet) -> None:
    before = sheet.plan
    sheet.display.update(unit=LengthUnit.INCH)
    assert sheet.plan is before
    Hand(sheet.plan_view).drag((0.5, 0.3), (0.62, 0.3))
    assert sheet.plan.lamps[0].x / 0.0127 == pytest.approx(round(0.62 / 0.0127), abs=1e-6)


def test_raise_the_lamp_in_the_one_and_see_it_in_the_other(sheet: Sheet) -> None:
    Hand(sheet.elevation).drag((0.5, 0.655), (0.5, 1.0))
    assert sheet.steps == ["Raise lamp"]
    height = sheet.plan.lamps[0].hanging_height
    assert height == pytest.approx(0.8, abs=0.011)
    Hand(sheet.plan_view).drag((0.5, 0.3), (0.3, 0.3))
    assert sheet.plan.lamps[0].hanging_height == height
    assert sheet.elevation.plan is sheet.plan_view.plan is sheet.document.plan


def test_both_drawings_stand_on_one_line(sheet: Sheet) -> None:
    for view in (sheet.plan_view, sheet.elevation):
        assert view.drawing_area().top() == 56
        assert view.drawing_area().bottom() == view.height() - 84


def test_the_section_plot_follows_the_line(sheet: Sheet, qtbot: QtBot) -> None:
    plot = SectionPlot(sheet.display)
    qtbot.addWidget(plot)
    estimate = light_of(sheet.plan)
    sheet.plan_view.section_changed.connect(lambda ends: plot.show_profile(estimate, ends))
    Hand(sheet.plan_view).drag((0.9, 0.5), (0.9, 0.8))
    distance, ppfd = plot.profile()
    assert distance[-1] == pytest.approx(100, abs=0.01)  # centimetres
    assert ppfd[80] == pytest.approx(100 + 50 + 40, abs=0.5)
    sheet.display.update(unit=LengthUnit.INCH)
    assert plot.profile()[0][-1] == pytest.approx(39.37, abs=0.01)
    assert "from 14" in plot.accessibleDescription()


def test_the_colour_bar_explains_the_drawing(sheet: Sheet, qtbot: QtBot) -> None:
    bar = ColourBar()
    qtbot.addWidget(bar)
    bar.resize(bar.sizeHint().width(), 300)
    sheet.plan_view.set_estimate(light_of(sheet.plan))
    bar.show_style(sheet.plan_view.light_style())
    assert bar.ticks() == (0, 50, 100, 150, 200, 250)
    assert bar.place(0) - bar.place(250) == pytest.approx(bar.height() * 0.82, rel=0.1)
    assert "from 0 to 250 µmol m⁻² s⁻¹" in bar.accessibleDescription()
    sheet.display.update(band_wash=True)
    bar.show_style(sheet.plan_view.light_style())
    assert "target band is 100 to 200" in bar.accessibleDescription()
    bar.grab()
