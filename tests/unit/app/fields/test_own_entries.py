"""One's own linings and lamps: made, changed where they stand, and taken away."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from planner.app.fields.lamp_fields import LampFields
from planner.app.fields.lining_details import facts_text
from planner.app.fields.panel import Workplace
from planner.app.fields.surface_fields import SurfaceFields
from planner.app.quantity_box import QuantityBox
from planner.catalogue.library import load_catalogue
from planner.plan import edits
from planner.plan.lining import Lining
from planner.plan.place import Place, PlaceKind

pytestmark = pytest.mark.gui

OWN = Lining(
    key="attic", name="Attic film", reflectance=0.8, specular_share=0.5, wrinkle=0.1,
    low=0.7, high=0.9,
)  # fmt: skip


@pytest.fixture
def ceiling(qtbot: QtBot, workplace: Workplace) -> SurfaceFields:
    workplace.shelf.save(OWN)
    document = workplace.document
    document.apply(edits.line_ceiling(document.plan, OWN), "Line ceiling")
    made = SurfaceFields(workplace, PlaceKind.CEILING)
    qtbot.addWidget(made)
    document.changed.connect(lambda _old, new: made.refresh(new))
    made.show_selection(Place(PlaceKind.CEILING))
    made.show()
    return made


@pytest.fixture
def lamp(qtbot: QtBot, workplace: Workplace) -> LampFields:
    model = workplace.document.plan.lamps[0].model
    workplace.shelf.save(model)
    workplace.selection.select(Place(PlaceKind.LAMP, 0))
    made = LampFields(workplace)
    qtbot.addWidget(made)
    workplace.document.changed.connect(lambda _old, new: made.refresh(new))
    made.show_selection(Place(PlaceKind.LAMP, 0))
    made.show()
    return made


def enter(qtbot: QtBot, box: QuantityBox, text: str) -> None:
    box.selectAll()
    qtbot.keyClicks(box, text)
    qtbot.keyClick(box, Qt.Key.Key_Return)


def kept_linings(folder: Path) -> dict[str, Lining]:
    catalogue = load_catalogue(folder / "own")
    return {key: catalogue.lining(key) for key in catalogue.own_linings}


def test_an_own_lining_is_changed_in_library_and_plan(
    qtbot: QtBot, workplace: Workplace, ceiling: SurfaceFields, tmp_path: Path
) -> None:
    details = ceiling.details
    details.edit_button.click()
    assert details.name_line.text() == "Attic film"
    enter(qtbot, details.reflectance_box, "75 %")
    enter(qtbot, details.wrinkle_box, "0.25")
    details.save_button.click()
    for lining in (workplace.document.plan.lining("attic"), kept_linings(tmp_path)["attic"]):
        assert lining.reflectance == pytest.approx(0.75)
        assert lining.wrinkle == pytest.approx(0.25)
        assert (lining.low, lining.high) == pytest.approx((0.65, 0.85))
    assert workplace.document.undo_stack.undoText() == "Change lining Attic film"
    workplace.document.undo_stack.undo()
    assert workplace.document.plan.lining("attic") == OWN


def test_an_own_lining_is_deleted_and_the_plan_keeps_its_copy(
    workplace: Workplace, ceiling: SurfaceFields, tmp_path: Path
) -> None:
    ceiling.details.delete_button.click()
    assert kept_linings(tmp_path) == {}
    assert workplace.document.plan.lining("attic") == OWN
    assert ceiling.details.own_bar.isHidden()


def test_what_ships_is_neither_changed_nor_deleted(
    workplace: Workplace, ceiling: SurfaceFields
) -> None:
    document = workplace.document
    board = workplace.shelf.catalogue.lining("white-board")
    document.apply(edits.line_ceiling(document.plan, board), "Line ceiling")
    assert ceiling.details.own_bar.isHidden()
    assert not ceiling.details.copy_button.isHidden()


def test_the_wrinkle_of_a_mirror_is_told_in_words() -> None:
    def words(share: float, wrinkle: float) -> str:
        parts = {"specular_share": share, "wrinkle": wrinkle}
        return facts_text(OWN.model_copy(update=parts))

    assert "flat and sharp" in words(0.5, 0.0)
    assert "creased (wrinkle 0.25)" in words(0.5, 0.25)
    assert "wrinkle" not in words(0.0, 0.25)


def test_an_own_lamp_is_updated_and_deleted(
    qtbot: QtBot, workplace: Workplace, lamp: LampFields, tmp_path: Path
) -> None:
    kind = lamp.kind_fields
    assert kind.own_bar.isVisibleTo(lamp)
    assert not kind.update_button.isEnabled()
    enter(qtbot, kind.ppf_field.box, "230")
    kind.update_button.click()
    assert load_catalogue(tmp_path / "own").lamp("panel").ppf == pytest.approx(230)
    kind.delete_button.click()
    assert "panel" not in load_catalogue(tmp_path / "own").own_lamps
    assert workplace.document.plan.lamps[0].model.ppf == pytest.approx(230)
    assert kind.own_bar.isHidden()


def test_a_lamp_is_given_a_name(qtbot: QtBot, workplace: Workplace, lamp: LampFields) -> None:
    lamp.label_line.setFocus()
    qtbot.keyClicks(lamp.label_line, "Front bar")
    qtbot.keyClick(lamp.label_line, Qt.Key.Key_Return)
    assert workplace.document.plan.lamps[0].label == "Front bar"
    assert workplace.document.undo_stack.undoText() == "Name lamp"


def test_a_lining_of_ones_own_can_have_a_colour(ceiling: SurfaceFields) -> None:
    details = ceiling.details
    details.edit_button.click()
    assert not any(line.isVisible() for _, line in details.band_rows.values())
    details.bands_button.click()
    for band, text in (("blue", "70"), ("green", "80"), ("red", "90")):
        line = details.band_rows[band][1]
        line.setText(text)
        line.commit()
    details.save_button.click()
    colour = ceiling.plan.lining("attic").wavebands
    assert colour is not None
    # Their mean is the whole, so each stands for itself; far-red was left out.
    shown = [
        round(colour.reflectance(band, 0.8), 6) for band in ("blue", "green", "red", "far_red")
    ]
    assert shown == [0.7, 0.8, 0.9, 0.8]
    assert "blue 70 %, green 80 %, red 90 %, far-red 80 %" in facts_text(
        ceiling.plan.lining("attic")
    )
    details.edit_button.click()
    assert details.band_rows["blue"][1].text() == "70 %"
    for _, line in details.band_rows.values():
        line.setText("")
        line.commit()
    details.save_button.click()
    assert ceiling.plan.lining("attic").wavebands is None
