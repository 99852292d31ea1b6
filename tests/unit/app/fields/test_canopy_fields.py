"""Fields of the canopy, the day and the target."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from planner.app.fields.panel import QuantityField, Workplace
from planner.app.pages.sketch.column import CanopyFields
from planner.plan.place import Place, PlaceKind
from planner.plan.target import DliTarget, PpfdTarget


@pytest.fixture
def panel(qtbot: QtBot, workplace: Workplace) -> CanopyFields:
    made = CanopyFields(workplace)
    qtbot.addWidget(made)
    made.show_selection(Place(PlaceKind.CANOPY))
    workplace.document.changed.connect(lambda _old, new: made.refresh(new))
    made.show()
    return made


def enter(qtbot: QtBot, field: QuantityField, text: str) -> None:
    field.box.selectAll()
    qtbot.keyClicks(field.box, text)
    qtbot.keyClick(field.box, Qt.Key.Key_Return)


def choose(panel: CanopyFields, text: str) -> None:
    combo = panel.target_fields.combo
    line = combo.findText(text)
    assert line >= 0
    combo.setCurrentIndex(line)
    combo.activated.emit(line)


def steps(workplace: Workplace) -> list[str]:
    stack = workplace.document.undo_stack
    return [stack.text(index) for index in range(stack.count())]


def test_height_reflectance_and_hours_are_typed(
    qtbot: QtBot, workplace: Workplace, panel: CanopyFields
) -> None:
    enter(qtbot, panel.height_field, "30")
    enter(qtbot, panel.reflectance_field, "8")
    enter(qtbot, panel.hours_field, "14,5 h")
    plan = workplace.document.plan
    assert plan.canopy.height == pytest.approx(0.3)
    assert plan.canopy.reflectance == pytest.approx(0.08)
    assert plan.photoperiod_hours == 14.5
    # The lamp stays where it hung, 70 cm above the floor.
    assert plan.lamps[0].hanging_height == pytest.approx(0.4)
    assert steps(workplace) == [
        "Set canopy height",
        "Set canopy reflectance",
        "Set photoperiod",
    ]


def test_a_canopy_above_the_lamp_is_refused(
    qtbot: QtBot, workplace: Workplace, panel: CanopyFields
) -> None:
    before = workplace.document.plan
    enter(qtbot, panel.height_field, "80")
    assert workplace.document.plan is before
    assert "lamp 1 hangs at 70 cm" in panel.height_field.row.error


def test_the_canopy_opens_and_closes(
    qtbot: QtBot, workplace: Workplace, panel: CanopyFields
) -> None:
    assert panel.closed_switch.isChecked()
    panel.closed_switch.click()
    assert not workplace.document.plan.canopy.closed
    assert not panel.reflectance_field.box.isEnabled()
    panel.closed_switch.click()
    assert workplace.document.plan.canopy.closed
    assert steps(workplace) == ["Open canopy", "Close canopy"]


def test_a_crop_and_its_stage_are_chosen(
    qtbot: QtBot, workplace: Workplace, panel: CanopyFields
) -> None:
    crop = next(crop for crop in workplace.shelf.catalogue.crops if crop.name == "Lettuce")
    stage = crop.stages[0]
    choose(panel, f"Lettuce, {stage.name}")
    plan = workplace.document.plan
    assert plan.target == crop.target(stage.key)
    assert panel.target_fields.combo.currentText() == f"Lettuce, {stage.name}"
    offered = not panel.target_fields.hours_button.isHidden()
    assert offered == (stage.hours_usual != plan.photoperiod_hours)


def test_the_usual_hours_are_one_press_away(
    qtbot: QtBot, workplace: Workplace, panel: CanopyFields
) -> None:
    enter(qtbot, panel.hours_field, "7")
    choose(panel, "Lettuce, seedlings")
    panel.target_fields.hours_button.click()
    stage = next(c for c in workplace.shelf.catalogue.crops if c.name == "Lettuce").stages[0]
    assert workplace.document.plan.photoperiod_hours == stage.hours_usual
    assert panel.target_fields.hours_button.isHidden()


def test_a_band_of_ones_own(qtbot: QtBot, workplace: Workplace, panel: CanopyFields) -> None:
    choose(panel, "Own PPFD band")
    enter(qtbot, panel.target_fields.ends["ppfd-high"], "300")
    enter(qtbot, panel.target_fields.ends["ppfd-low"], "180")
    assert workplace.document.plan.target == PpfdTarget(low=180, high=300)
    choose(panel, "Own DLI band")
    target = workplace.document.plan.target
    assert isinstance(target, DliTarget)
    # 180 µmol/m²/s for 16 h: 180 · 57600 / 10⁶ = 10.4 mol/m²/d.
    assert (target.low, target.high) == (10.4, 17.3)
    assert panel.target_fields.ends["dli-low"].box.lineEdit().text() == "10.4 mol m⁻² d⁻¹"
    assert "181 to 300 µmol m⁻² s⁻¹" in panel.target_fields.equal_note.text()
    choose(panel, "No target")
    assert workplace.document.plan.target is None
    assert panel.target_fields.ends["ppfd-low"].row.label.isHidden()


def test_a_band_that_falls_is_refused(
    qtbot: QtBot, workplace: Workplace, panel: CanopyFields
) -> None:
    choose(panel, "Own PPFD band")
    before = workplace.document.plan
    enter(qtbot, panel.target_fields.ends["ppfd-low"], "900")
    assert workplace.document.plan is before
    assert "the band ends at" in panel.target_fields.ends["ppfd-low"].row.error


def test_moving_one_end_makes_the_band_ones_own(
    qtbot: QtBot, workplace: Workplace, panel: CanopyFields
) -> None:
    choose(panel, "Lettuce, seedlings")
    old = workplace.document.plan.target
    assert old is not None
    enter(qtbot, panel.target_fields.ends[f"{old.kind}-high"], str(old.high + 1))
    target = workplace.document.plan.target
    assert target is not None
    assert (target.high, target.crop, target.source) == (old.high + 1, "", "")


def test_every_field_says_what_it_is(panel: CanopyFields) -> None:
    for field in (panel.height_field, panel.reflectance_field, panel.hours_field):
        assert field.box.toolTip() != ""
        assert field.row.label.buddy() is field.box
