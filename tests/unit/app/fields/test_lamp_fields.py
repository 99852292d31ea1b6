"""Fields of a lamp, and the steps that hang, copy and remove one."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QScrollArea
from pytestqt.qtbot import QtBot

from planner.app.fields.lamp_fields import LampFields
from planner.app.fields.panel import QuantityField, Workplace
from planner.app.fields.two_readings import TwoReadingsFields
from planner.catalogue.library import load_catalogue
from planner.estimate.outlook import Part, Uncertainty
from planner.plan import edits
from planner.plan.additions import middle, new_lamp
from planner.plan.dials import dial
from planner.plan.lamp import BarsBody, CosineProfile, PanelBody, PointBody, TableProfile
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.refusal import refusal
from planner.plan.space import contains
from planner.plan.turning import with_model
from planner.units import LengthUnit


@pytest.fixture
def panel(qtbot: QtBot, workplace: Workplace) -> LampFields:
    made = LampFields(workplace)
    qtbot.addWidget(made)
    workplace.selection.select(Place(PlaceKind.LAMP, 0))
    made.show_selection(workplace.selection.current)
    workplace.document.changed.connect(lambda _old, new: made.refresh(new))
    made.show()
    return made


def enter(qtbot: QtBot, field: QuantityField, text: str) -> None:
    field.box.selectAll()
    qtbot.keyClicks(field.box, text)
    qtbot.keyClick(field.box, Qt.Key.Key_Return)


def steps(workplace: Workplace) -> list[str]:
    stack = workplace.document.undo_stack
    return [stack.text(index) for index in range(stack.count())]


def test_place_height_rotation_and_output_are_typed(
    qtbot: QtBot, workplace: Workplace, panel: LampFields
) -> None:
    enter(qtbot, panel.height_field, "18 in")
    enter(qtbot, panel.x_field, "25")
    enter(qtbot, panel.y_field, "0,2 m")
    enter(qtbot, panel.rotation_field, "90")
    enter(qtbot, panel.output_field, "60 %")
    lamp = workplace.document.plan.lamps[0]
    assert lamp.hanging_height == pytest.approx(0.4572)
    assert (lamp.x, lamp.y) == pytest.approx((0.25, 0.2))
    assert (lamp.rotation_deg, lamp.output_percent) == (90, 60)
    assert steps(workplace) == [
        "Set lamp height",
        "Move lamp",
        "Move lamp",
        "Rotate lamp",
        "Set lamp output",
    ]


def test_what_it_gives_follows_the_output(
    qtbot: QtBot, workplace: Workplace, panel: LampFields
) -> None:
    enter(qtbot, panel.output_field, "50")
    assert panel.facts.text().startswith("At 50 % it gives 100 µmol s⁻¹ from 50 W;")


def test_a_lamp_outside_is_refused_beside_x(
    qtbot: QtBot, workplace: Workplace, panel: LampFields
) -> None:
    before = workplace.document.plan
    enter(qtbot, panel.x_field, "95")
    assert workplace.document.plan is before
    assert "at most 80 cm, not 95 cm (the walls are there)" in panel.x_field.row.error
    assert panel.height_field.row.error == ""
    enter(qtbot, panel.x_field, "45")
    assert panel.x_field.row.error == ""
    assert workplace.document.plan.lamps[0].x == pytest.approx(0.45)


def test_a_lamp_through_the_ceiling_is_refused_beside_its_height(
    qtbot: QtBot, workplace: Workplace, panel: LampFields
) -> None:
    enter(qtbot, panel.height_field, "150")
    assert "at most 140 cm, not 150 cm" in panel.height_field.row.error
    assert workplace.document.plan.lamps[0].hanging_height == 0.5


def test_photon_flux_watts_and_beam_are_typed(
    qtbot: QtBot, workplace: Workplace, panel: LampFields
) -> None:
    kind = panel.kind_fields
    enter(qtbot, kind.ppf_field, "250,5")
    enter(qtbot, kind.watts_field, "110")
    enter(qtbot, kind.beam_field, "90")
    model = workplace.document.plan.lamps[0].model
    assert (model.ppf, model.watts) == (250.5, 110)
    assert isinstance(model.profile, CosineProfile)
    # Half the peak at 45 degrees: cos(45°)^m = 1/2, so m = 2.
    assert model.profile.exponent == pytest.approx(2.0)
    assert steps(workplace) == ["Set lamp PPF", "Set lamp watts", "Set beam angle"]


def test_an_impossible_efficacy_is_refused(
    qtbot: QtBot, workplace: Workplace, panel: LampFields
) -> None:
    enter(qtbot, panel.kind_fields.watts_field, "10")
    assert "per joule" in panel.kind_fields.watts_field.row.error
    assert workplace.document.plan.lamps[0].model.watts == 100


def test_the_body_changes_shape_and_size(
    qtbot: QtBot, workplace: Workplace, panel: LampFields
) -> None:
    kind = panel.kind_fields
    assert kind.count_field.row.label.isHidden()
    for line, body in ((2, BarsBody), (0, PointBody), (1, PanelBody)):
        kind.body_combo.setCurrentIndex(line)
        kind.body_combo.activated.emit(line)
        assert isinstance(workplace.document.plan.lamps[0].model.body, body)
        assert kind.count_field.row.label.isHidden() == (body is not BarsBody)
        assert kind.length_field.row.label.isHidden() == (body is PointBody)
    enter(qtbot, kind.length_field, "55")
    changed = workplace.document.plan.lamps[0].model.body
    assert isinstance(changed, PanelBody)
    assert changed.length == pytest.approx(0.55)


def test_too_many_bars_are_refused_beside_their_number(
    qtbot: QtBot, workplace: Workplace, panel: LampFields
) -> None:
    kind = panel.kind_fields
    kind.body_combo.setCurrentIndex(2)
    kind.body_combo.activated.emit(2)
    enter(qtbot, kind.count_field, "20")
    assert "Must be at most 10, not 20" in kind.count_field.row.error
    enter(qtbot, kind.count_field, "3")
    body = workplace.document.plan.lamps[0].model.body
    assert isinstance(body, BarsBody)
    assert body.count == 3


def test_a_measured_beam_is_named_and_not_offered_as_an_angle(
    workplace: Workplace, panel: LampFields
) -> None:
    plan = workplace.document.plan
    table = TableProfile(angles_deg=(0.0, 60.0, 90.0), relative=(1.0, 0.5, 0.0))
    model = plan.lamps[0].model.model_copy(update={"profile": table})
    workplace.document.apply(edits.change_lamp(plan, 0, model=model), "Choose lamp")
    assert panel.kind_fields.beam_field.row.label.isHidden()
    assert not panel.kind_fields.profile_note.isHidden()


def test_a_kind_is_chosen_from_the_catalogue(
    qtbot: QtBot, workplace: Workplace, panel: LampFields
) -> None:
    wanted = workplace.shelf.catalogue.lamps[1]
    line = panel.chooser.findText(wanted.name)
    panel.chooser.setCurrentIndex(line)
    panel.chooser.activated.emit(line)
    assert workplace.document.plan.lamps[0].model == wanted
    assert steps(workplace) == [f"Choose lamp {wanted.name}"]
    assert panel.chooser.currentText() == wanted.name


def test_a_changed_kind_says_so(qtbot: QtBot, workplace: Workplace, panel: LampFields) -> None:
    listed = workplace.shelf.catalogue.lamps[1]
    other = listed.model_copy(update={"watts": listed.watts + 1})
    plan = edits.change_lamp(workplace.document.plan, 0, model=other)
    workplace.document.apply(plan, "Draw more")
    assert panel.chooser.currentText() == f"{listed.name} (changed)"


def test_a_lamp_that_stands_in_no_catalogue_was_not_changed(panel: LampFields) -> None:
    """One that was pasted from a data sheet, say; a catalogue has no 'panel'."""
    assert panel.chooser.currentText() == "Panel"


def test_a_lamp_of_ones_own_is_kept(
    qtbot: QtBot, workplace: Workplace, panel: LampFields, tmp_path: object
) -> None:
    kind = panel.kind_fields
    kind.keep_button.click()
    kind.keep_line.selectAll()
    qtbot.keyClicks(kind.keep_line, "Attic lamp")
    kind.save_button.click()
    kept = next(lamp for lamp in workplace.shelf.catalogue.lamps if lamp.name == "Attic lamp")
    assert kept.ppf == 200.0
    assert workplace.document.plan.lamps[0].model == kept
    assert panel.chooser.currentText() == "Attic lamp"
    again = load_catalogue(tmp_path / "own")  # type: ignore[operator]
    assert kept in again.lamps


def test_a_lamp_without_a_name_is_not_kept(
    qtbot: QtBot, workplace: Workplace, panel: LampFields
) -> None:
    kind = panel.kind_fields
    count = len(workplace.shelf.catalogue.lamps)
    kind.keep_button.click()
    kind.keep_line.clear()
    kind.save_button.click()
    assert "empty" in kind.keep_row.error
    assert len(workplace.shelf.catalogue.lamps) == count


def test_lamps_are_added_doubled_and_removed(
    qtbot: QtBot, workplace: Workplace, panel: LampFields
) -> None:
    panel.duplicate_button.click()
    plan = workplace.document.plan
    assert len(plan.lamps) == 2
    assert math.dist((plan.lamps[0].x, plan.lamps[0].y), (plan.lamps[1].x, plan.lamps[1].y)) > 0.2
    assert workplace.selection.current == Place(PlaceKind.LAMP, 1)
    panel.add_button.click()
    assert len(workplace.document.plan.lamps) == 3
    panel.remove_button.click()
    assert len(workplace.document.plan.lamps) == 2
    assert workplace.selection.current == Place()
    assert steps(workplace) == ["Duplicate lamp", "Add lamp", "Remove lamp"]


def test_one_lamp_too_many_is_explained(
    qtbot: QtBot, workplace: Workplace, panel: LampFields
) -> None:
    plan = workplace.document.plan
    full = edits.changed(plan, lamps=plan.lamps * 24)
    workplace.document.apply(full, "Add lamps")
    panel.add_button.click()
    assert len(workplace.document.plan.lamps) == 24
    assert "24" in panel.alert.text()


@pytest.mark.parametrize(
    "corners",
    [
        ((0, 0), (2, 0), (2, 0.2), (0.2, 0.2), (0.2, 2), (0, 2)),
        ((0, 0), (2, 0), (2, 2), (1.8, 2), (1.8, 0.2), (0.2, 0.2), (0.2, 2), (0, 2)),
        ((0, 0), (1, 0), (1, 1), (0, 1)),
        ((0, 0), (1, 0), (0.1, 0.1), (0, 1)),
    ],
)
def test_the_middle_lies_inside_whatever_the_shape(
    workplace: Workplace, corners: tuple[tuple[float, float], ...]
) -> None:
    plan = edits.set_footprint(workplace.document.plan, corners)
    assert contains(corners, *middle(plan))


def test_a_new_lamp_fits_under_a_low_ceiling(workplace: Workplace) -> None:
    plan = edits.set_height(workplace.document.plan, 0.5)
    lamp = new_lamp(plan, plan.lamps[0].model)
    assert lamp.hanging_height <= 0.3
    assert len(edits.add_lamp(plan, lamp).lamps) == 2


def test_numbers_that_belong_together_wait_for_each_other(
    qtbot: QtBot, workplace: Workplace, panel: LampFields
) -> None:
    # 600 umol/s of the lamp's 100 W would be 6 umol/J, above the 5.85 of photons of 700 nm.
    kind = panel.kind_fields
    enter(qtbot, kind.ppf_field, "600")
    assert "this one draws 100 W" in kind.ppf_field.row.error
    assert kind.ppf_field.box.lineEdit().text() == "600"
    enter(qtbot, kind.watts_field, "240")
    model = workplace.document.plan.lamps[0].model
    assert (model.ppf, model.watts) == (600.0, 240.0)
    assert kind.ppf_field.row.error == ""
    assert steps(workplace) == ["Set lamp PPF"]
    assert not workplace.document.moving
    workplace.document.undo_stack.undo()
    model = workplace.document.plan.lamps[0].model
    assert (model.ppf, model.watts) == (200.0, 100.0)
    assert workplace.document.undo_stack.canRedo()


def test_a_refused_text_goes_when_something_else_is_selected(
    qtbot: QtBot, workplace: Workplace, panel: LampFields
) -> None:
    enter(qtbot, panel.kind_fields.ppf_field, "600")
    panel.leave()
    plan = workplace.document.plan
    workplace.document.apply(with_model(plan, 0, watts=240.0), "Set lamp watts")
    assert workplace.document.plan.lamps[0].model.ppf == 200.0
    assert panel.kind_fields.ppf_field.row.error == ""


def test_fractions_of_an_inch_are_read_in_any_view_and_shown_where_they_are_typed(
    qtbot: QtBot, workplace: Workplace, panel: LampFields
) -> None:
    enter(qtbot, panel.height_field, "23 5/8")
    assert workplace.document.plan.lamps[0].hanging_height == pytest.approx(23.625 * 0.0254)
    assert panel.height_field.box.lineEdit().text() == "60 cm"
    workplace.display.update(unit=LengthUnit.INCH)
    enter(qtbot, panel.height_field, "15-3/4")
    assert panel.height_field.box.lineEdit().text() == "15 3/4 in"
    assert "/" not in panel.x_field.box.lineEdit().text()


def test_one_refusal_for_one_height_in_the_unit_shown(
    qtbot: QtBot, workplace: Workplace, panel: LampFields
) -> None:
    plan = workplace.document.plan
    # By hand: ceiling 1.6 m less canopy 0.2 m.
    core = "must be at most 140 cm, not 150 cm (the ceiling is there)."
    enter(qtbot, panel.height_field, "150")
    assert panel.height_field.row.error == core.replace("must", "Must")
    lamp = Place(PlaceKind.LAMP, 0)
    builds: tuple[Callable[[], Plan], ...] = (
        lambda: dial("height").put(plan, lamp, 1.5),
        lambda: edits.change_lamp(plan, 0, hanging_height=1.5),
    )
    for build in builds:
        with pytest.raises(ValueError, match="must be") as caught:
            build()
        assert refusal(caught.value, LengthUnit.CM) == f"Lamp 1, hanging height: {core}"
        assert "cm" not in refusal(caught.value, LengthUnit.INCH)


def test_the_doubt_of_a_beam_is_typed_where_it_is_an_angle(
    qtbot: QtBot, workplace: Workplace, panel: LampFields
) -> None:
    field = panel.kind_fields.doubt_field
    enter(qtbot, field, "12,5")
    assert workplace.document.plan.lamps[0].model.beam_uncertainty_deg == 12.5
    assert steps(workplace) == ["Set doubt of the beam"]
    enter(qtbot, field, "70")
    assert "at most 60°" in field.row.error
    plan = workplace.document.plan
    table = TableProfile(angles_deg=(0.0, 60.0, 90.0), relative=(1.0, 0.5, 0.0))
    model = plan.lamps[0].model.model_copy(update={"profile": table})
    workplace.document.apply(edits.change_lamp(plan, 0, model=model), "Choose lamp")
    assert field.row.label.isHidden()


def test_hours_run_that_tell_nothing_say_so(
    qtbot: QtBot, workplace: Workplace, panel: LampFields
) -> None:
    plan = workplace.document.plan
    model = edits.changed(plan.lamps[0].model, hours_to_90=0.0)
    workplace.document.apply(edits.change_lamp(plan, 0, model=model), "Choose lamp")
    assert panel.age_note.isHidden()
    enter(qtbot, panel.hours_field, "20000")
    assert "not known" in panel.age_note.text()
    assert not panel.age_note.isHidden()
    enter(qtbot, panel.kind_fields.life_field, "36000")
    assert panel.age_note.isHidden()


def test_two_readings_set_beam_and_doubt_in_one_step(
    qtbot: QtBot, workplace: Workplace, panel: LampFields
) -> None:
    """A small lamp of cos: aside at 45° a level sensor reads cos⁴ 45° = ¼ of what it read under."""
    model = workplace.document.plan.lamps[0].model
    small = edits.changed(model, body=PointBody(), beam_uncertainty_deg=20.0)
    workplace.document.apply(
        edits.change_lamp(
            workplace.document.plan,
            0,
            model=edits.changed(small, profile=CosineProfile(exponent=3.0)),
        ),
        "Choose lamp",
    )
    test = panel.kind_fields.readings
    assert test.take_button.isHidden()
    test.open_button.click()
    assert not test.take_button.isHidden()
    test.take_button.click()
    assert "Type both readings" in test.beside_row.error
    for box, value in ((test.under_box, "200"), (test.beside_box, "50")):
        box.lineEdit().setText(value)
    # It is told as soon as both are typed; the plan has it when it is asked for.
    qtbot.waitUntil(lambda: test.told.text().startswith("The beam is 120 ± "), timeout=3000)
    assert steps(workplace) == ["Choose lamp"]
    test.take_button.click()
    found = workplace.document.plan.lamps[0].model
    assert isinstance(found.profile, CosineProfile)
    assert found.profile.exponent == pytest.approx(1.0, abs=1e-6)
    assert 1 <= found.beam_uncertainty_deg < 20
    assert steps(workplace) == ["Choose lamp", "Set beam by two readings"]
    assert test.told.text().startswith("The beam is 120 ± ")
    workplace.document.undo_stack.undo()
    assert workplace.document.plan.lamps[0].model.beam_uncertainty_deg == 20.0


def test_what_the_beam_made_of_the_doubt_is_that_of_its_own_kind_of_lamp(
    qtbot: QtBot, workplace: Workplace
) -> None:
    """By hand: 1.96 times 5 is 9.8 of the mean's ±; another kind of the same name makes 2."""
    plan = workplace.document.plan
    model = plan.lamps[0].model
    known = edits.changed(
        model, body=PointBody(), profile=CosineProfile(exponent=3.0), beam_uncertainty_deg=20.0
    )
    workplace.document.apply(edits.change_lamp(plan, 0, model=known), "Choose lamp")
    parts = (
        Part(f"beam of {model.name}", 1.0, 1.0, "beam", "another-key"),
        Part(f"beam of {model.name}", 5.0, 2.0, "beam", model.key),
    )
    doubt = Uncertainty(5.1, 2.2, 5.1, 0.01, 0.1, 0.03, parts)
    test = TwoReadingsFields(replace(workplace, doubt=lambda: doubt))
    qtbot.addWidget(test)
    test.show_selection(Place(PlaceKind.LAMP, 0))
    test.under_box.reset(200.0)
    test.beside_box.reset(50.0)
    test.take()
    found = workplace.document.plan.lamps[0].model.beam_uncertainty_deg
    assert "the beam alone made 9.8;" in test.told.text()
    assert test.told.text().endswith(f"about {9.8 * found / 20:.2g}.")


def test_the_test_of_two_readings_comes_into_view(
    qtbot: QtBot, workplace: Workplace, panel: LampFields
) -> None:
    plan = workplace.document.plan
    model = edits.changed(plan.lamps[0].model, profile=CosineProfile(exponent=1.0))
    workplace.document.apply(edits.change_lamp(plan, 0, model=model), "Choose lamp")
    area = QScrollArea()
    area.setWidgetResizable(True)
    area.setWidget(panel)
    qtbot.addWidget(area)
    area.resize(360, 420)
    area.show()
    test = panel.kind_fields.readings
    area.ensureWidgetVisible(test.open_button)
    test.open_button.click()
    qtbot.waitUntil(lambda: not test.take_button.visibleRegion().isEmpty(), timeout=2000)
    assert not test.open_button.visibleRegion().isEmpty()
    area.takeWidget()
