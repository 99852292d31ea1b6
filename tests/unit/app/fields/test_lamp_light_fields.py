"""The spectrum of a kind of lamp is a choice of display, remembered in the settings."""

from __future__ import annotations

from pathlib import Path

from pytestqt.qtbot import QtBot

from planner.app.fields.choosers import SpectrumChoice
from planner.app.fields.lamp_fields import LampFields
from planner.app.fields.panel import Workplace
from planner.app.settings import Settings
from planner.plan.place import Place, PlaceKind


def test_choosing_a_spectrum_shows_it_and_leaves_the_plan_alone(
    workplace: Workplace, qtbot: QtBot
) -> None:
    panel = LampFields(workplace)
    qtbot.addWidget(panel)
    panel.show_selection(Place(PlaceKind.LAMP, 0))
    panel.show()
    light = panel.kind_fields.light_fields
    assert light.polar.curves is not None
    assert light.spectrum_plot.isHidden()
    plan = workplace.document.plan
    line = light.spectrum_combo.findText("Red LED (660 nm)")
    light.spectrum_combo.setCurrentIndex(line)
    light.spectrum_combo.activated.emit(line)
    assert light.spectrum_plot.isVisible()
    assert "µmol m⁻² s⁻¹ reads" in light.figures.text()
    assert workplace.document.plan is plan
    light.spectrum_combo.activated.emit(0)
    assert light.spectrum_plot.isHidden()


def test_choices_come_back_in_the_next_run(tmp_path: Path) -> None:
    settings = Settings(tmp_path)
    first = SpectrumChoice()
    first.remember_in(settings)
    first.choose("bar", first.spectra[2])
    again = SpectrumChoice()
    again.remember_in(Settings(tmp_path))
    assert again.of_lamp("bar") == again.spectra[2]
    assert again.of_lamp("other") is None


def test_colours_are_counted_for_all_lamps_of_a_kind_in_one_step(
    workplace: Workplace, qtbot: QtBot
) -> None:
    document = workplace.document
    lamp = document.plan.lamps[0]
    twin = lamp.model_copy(update={"x": lamp.x + 0.02})
    document.apply(document.plan.model_copy(update={"lamps": (lamp, twin)}), "Two lamps")
    panel = LampFields(workplace)
    qtbot.addWidget(panel)
    document.changed.connect(lambda _old, new: panel.refresh(new))
    panel.show_selection(Place(PlaceKind.LAMP, 0))
    panel.show()
    light = panel.kind_fields.light_fields
    assert not light.colour_switch.isVisible()
    line = light.spectrum_combo.findText("Red LED (660 nm)")
    light.spectrum_combo.setCurrentIndex(line)
    light.spectrum_combo.activated.emit(line)
    light.colour_switch.click()
    assert [one.model.wavebands is not None for one in document.plan.lamps] == [True, True]
    # A line at 660 nm, 20 nm wide at half its height, is red and nothing else.
    told = light.colour_note.text()
    assert told.startswith("Of the photons of PPFD, blue 0 %, green 0 %, red 100 %.")
    assert "No lining here has colours" in told
    document.undo_stack.undo()
    assert all(one.model.wavebands is None for one in document.plan.lamps)
    document.undo_stack.redo()
    light.colour_switch.click()
    assert all(one.model.wavebands is None for one in document.plan.lamps)
