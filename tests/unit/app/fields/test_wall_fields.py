"""Fields of walls, ceiling and floor: linings, bands, and a lining of one's own."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from planner.app.fields.choosers import LiningChooser
from planner.app.fields.panel import Workplace
from planner.app.fields.surface_fields import SurfaceFields, WallFields
from planner.catalogue.library import load_catalogue
from planner.plan import edits
from planner.plan.lining import OPENING_KEY, WallCover
from planner.plan.place import Place, PlaceKind


@pytest.fixture
def panel(qtbot: QtBot, workplace: Workplace) -> WallFields:
    made = WallFields(workplace)
    qtbot.addWidget(made)
    workplace.selection.changed.connect(
        lambda one: made.show_selection(one) if one.kind is PlaceKind.WALL else None
    )
    workplace.document.changed.connect(lambda _old, new: made.refresh(new))
    workplace.selection.select(Place(PlaceKind.WALL, 1))
    made.show()
    return made


def choose(chooser: LiningChooser, key: str) -> None:
    line = chooser.findData(key)
    assert line >= 0
    chooser.setCurrentIndex(line)
    chooser.activated.emit(line)


def steps(workplace: Workplace) -> list[str]:
    stack = workplace.document.undo_stack
    return [stack.text(index) for index in range(stack.count())]


def test_a_lining_is_chosen_and_travels_into_the_plan(
    workplace: Workplace, panel: WallFields
) -> None:
    wanted = workplace.shelf.catalogue.lining("white-board")
    choose(panel.lines[0].chooser, wanted.key)
    plan = workplace.document.plan
    assert plan.walls[1] == WallCover.plain(wanted.key)
    assert plan.lining(wanted.key) == wanted
    assert plan.walls[0] == WallCover.plain("matt")
    assert steps(workplace) == [f"Line wall 2 with {wanted.name}"]


def test_a_wall_can_be_an_opening(workplace: Workplace, panel: WallFields) -> None:
    choose(panel.lines[0].chooser, OPENING_KEY)
    assert workplace.document.plan.walls[1] == WallCover.plain(OPENING_KEY)
    assert panel.details.copy_button.isHidden()


def test_bands_are_split_moved_lined_and_merged(
    qtbot: QtBot, workplace: Workplace, panel: WallFields
) -> None:
    panel.split_button.click()
    assert [band.top for band in workplace.document.plan.walls[1].bands] == [0.8, None]
    edge = panel.lines[0].edge
    edge.selectAll()
    qtbot.keyClicks(edge, "60")
    qtbot.keyClick(edge, Qt.Key.Key_Return)
    assert workplace.document.plan.walls[1].bands[0].top == pytest.approx(0.6)
    choose(panel.lines[1].chooser, "white-board")
    assert [b.lining for b in workplace.document.plan.walls[1].bands] == ["matt", "white-board"]
    assert workplace.selection.current == Place(PlaceKind.WALL, 1, 1)
    panel.lines[0].mark.click()
    panel.merge_button.click()
    assert workplace.document.plan.walls[1] == WallCover.plain("matt")
    names = steps(workplace)
    assert names[0] == "Split band"
    assert names[1] == "Move band edge"
    assert names[-1] == "Merge bands"
    for _ in names:
        workplace.document.undo_stack.undo()
    assert workplace.document.plan.walls[1] == WallCover.plain("matt")
    assert len(panel.lines) == 1


def test_a_band_edge_above_the_ceiling_is_refused(
    qtbot: QtBot, workplace: Workplace, panel: WallFields
) -> None:
    panel.split_button.click()
    panel.split_button.click()
    before = workplace.document.plan
    edge = panel.lines[1].edge
    edge.selectAll()
    qtbot.keyClicks(edge, "10")
    qtbot.keyClick(edge, Qt.Key.Key_Return)
    assert workplace.document.plan is before
    assert "the edge below is at 40 cm" in panel.lines[1].row.error


def test_the_uppermost_band_has_nothing_to_merge_with(
    workplace: Workplace, panel: WallFields
) -> None:
    assert not panel.merge_button.isEnabled()
    panel.split_button.click()
    assert panel.merge_button.isEnabled()


def test_too_many_bands_are_explained(workplace: Workplace, panel: WallFields) -> None:
    for _ in range(6):
        panel.split_button.click()
    assert len(workplace.document.plan.walls[1].bands) == 6
    assert "6" in panel.alert.text()


def test_one_wall_serves_all(workplace: Workplace, panel: WallFields) -> None:
    panel.split_button.click()
    choose(panel.lines[1].chooser, "white-board")
    panel.everywhere_button.click()
    plan = workplace.document.plan
    assert set(plan.walls) == {plan.walls[1]}
    assert len(plan.walls[0].bands) == 2


def test_the_length_is_typed(qtbot: QtBot, workplace: Workplace, panel: WallFields) -> None:
    box = panel.length_field.box
    assert box.lineEdit().text() == "60 cm"
    box.selectAll()
    qtbot.keyClicks(box, "75")
    qtbot.keyClick(box, Qt.Key.Key_Return)
    assert workplace.document.plan.space.bounds[3] == pytest.approx(0.75)


def test_numbers_and_cautions_are_told(workplace: Workplace, panel: WallFields) -> None:
    foil = next(
        lining
        for lining in workplace.shelf.catalogue.linings
        if "conducts" in map(str, lining.cautions)
    )
    choose(panel.lines[0].chooser, foil.key)
    assert "conducts" in panel.details.cautions.text().lower()
    assert "licensed electrician" in panel.details.cautions.text()
    assert f"{foil.reflectance * 100:.0f} %" in panel.details.facts.text()
    assert foil.source in panel.details.source.text()


def test_a_lining_of_ones_own_is_kept_and_used(
    qtbot: QtBot, workplace: Workplace, panel: WallFields, tmp_path: object
) -> None:
    details = panel.details
    details.copy_button.click()
    details.name_line.selectAll()
    qtbot.keyClicks(details.name_line, "Attic paint")
    details.reflectance_box.selectAll()
    qtbot.keyClicks(details.reflectance_box, "72,5")
    details.specular_box.selectAll()
    qtbot.keyClicks(details.specular_box, "10 %")
    details.save_button.click()
    plan = workplace.document.plan
    used = plan.lining(plan.walls[1].bands[0].lining)
    assert used.name == "Attic paint"
    assert used.reflectance == pytest.approx(0.725)
    assert used.specular_share == pytest.approx(0.1)
    assert used.low <= used.reflectance <= used.high
    assert used in load_catalogue(tmp_path / "own").linings  # type: ignore[operator]
    assert plan.lining("matt").reflectance == 0.8


def test_a_copy_with_an_impossible_number_is_not_kept(
    qtbot: QtBot, workplace: Workplace, panel: WallFields
) -> None:
    details = panel.details
    count = len(workplace.shelf.catalogue.linings)
    details.copy_button.click()
    details.reflectance_box.selectAll()
    qtbot.keyClicks(details.reflectance_box, "120")
    details.save_button.click()
    assert len(workplace.shelf.catalogue.linings) == count
    assert steps(workplace) == []


def test_the_open_door_is_mentioned(workplace: Workplace, panel: WallFields) -> None:
    assert panel.door_note.isHidden()
    opened = edits.with_space(workplace.document.plan, door=1, door_open=True)
    workplace.document.apply(opened, "Open door")
    assert not panel.door_note.isHidden()


@pytest.mark.parametrize("kind", [PlaceKind.CEILING, PlaceKind.FLOOR])
def test_ceiling_and_floor_are_lined(qtbot: QtBot, workplace: Workplace, kind: PlaceKind) -> None:
    made = SurfaceFields(workplace, kind)
    qtbot.addWidget(made)
    made.show_selection(Place(kind))
    choose(made.chooser, "white-board")
    plan = workplace.document.plan
    key = plan.ceiling if kind is PlaceKind.CEILING else plan.floor
    assert key == "white-board"
    assert steps(workplace)[0].startswith(f"Line {kind.value} with ")
