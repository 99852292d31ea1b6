"""Lamps from files: shown before they are hung, by menu and by drop, and written back."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import QMimeData, QPointF, Qt, QUrl
from PySide6.QtGui import QDropEvent
from pytestqt.qtbot import QtBot

from planner.app.main_window import MainWindow
from planner.catalogue.lamp_files.photometry import total_lumens
from planner.catalogue.lamp_files.reading import read_lamp_file
from planner.folders import user_folder
from planner.plan.lamp import PanelBody
from planner.plan.place import Place, PlaceKind
from tests.e2e.shell import ReadyAnswers, make_window, trigger

FILES = Path(__file__).resolve().parents[1] / "data" / "lamp_files"
PLAIN = FILES / "lm63-2002-absolute.ies"


@pytest.fixture
def shell(qtbot: QtBot) -> tuple[MainWindow, ReadyAnswers]:
    return make_window(qtbot)


def drop(window: MainWindow, path: Path) -> None:
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(path))])
    window.dropEvent(
        QDropEvent(
            QPointF(10, 10), Qt.DropAction.CopyAction, data,
            Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier,
        )
    )  # fmt: skip


def test_a_file_is_hung_with_a_typed_flux_in_one_step(
    shell: tuple[MainWindow, ReadyAnswers], qtbot: QtBot
) -> None:
    window, answers = shell
    answers.to_open = PLAIN
    trigger(window, "lamp_from_file")
    dialog = window.lamp_files.dialog
    assert dialog is not None
    assert dialog.polar.curves is not None
    dialog.ppf_box.selectAll()
    qtbot.keyClicks(dialog.ppf_box, "150")
    dialog.watts_box.reset(80.0)
    dialog.hang_button.click()
    assert window.lamp_files.dialog is None
    lamp = window.document.plan.lamps[-1]
    assert lamp.model.ppf == 150.0
    assert lamp.model.watts == 80.0
    assert lamp.model.source.startswith("Lamp file lm63-2002-absolute.ies")
    assert window.document.undo_stack.count() == 1
    assert window.selection.current == Place(PlaceKind.LAMP, 1)


def test_a_file_without_a_flux_asks_for_it(shell: tuple[MainWindow, ReadyAnswers]) -> None:
    window, _ = shell
    window.lamp_files.show_file(PLAIN)
    dialog = window.lamp_files.dialog
    assert dialog is not None
    dialog.hang_button.click()
    assert "give the photon flux (PPF)" in dialog.alert.text()
    assert window.document.undo_stack.count() == 0
    dialog.reject()


def test_the_flux_can_be_computed_from_lumens_and_a_spectrum(
    shell: tuple[MainWindow, ReadyAnswers],
) -> None:
    window, _ = shell
    window.lamp_files.show_file(PLAIN)
    dialog = window.lamp_files.dialog
    assert dialog is not None
    dialog.computed_choice.setChecked(True)
    keys = [spectrum.key for spectrum in window.page.spectra.spectra]
    dialog.spectrum_combo.setCurrentIndex(keys.index("high-pressure-sodium"))
    dialog.spectrum_combo.activated.emit(dialog.spectrum_combo.currentIndex())
    dialog.watts_box.reset(100.0)
    dialog.hang_button.click()
    model = window.document.plan.lamps[-1].model
    # Published: about 82 lm per µmol/s (Thimijan and Heins 1983, table 3).
    lumens = total_lumens(read_lamp_file(PLAIN))
    assert lumens / model.ppf == pytest.approx(82, rel=0.06)
    chosen = window.page.spectra.of_lamp(model.key)
    assert chosen is not None
    assert chosen.key == "high-pressure-sodium"


def test_a_spectrum_from_a_table_can_be_chosen(
    shell: tuple[MainWindow, ReadyAnswers], tmp_path: Path
) -> None:
    window, answers = shell
    window.lamp_files.show_file(PLAIN)
    dialog = window.lamp_files.dialog
    assert dialog is not None
    table = tmp_path / "invented.csv"
    table.write_text(
        "wavelength (nm),power (W/nm)\n" + "".join(f"{n},1\n" for n in range(400, 701))
    )
    answers.to_open = table
    dialog.spectrum_button.setEnabled(True)
    dialog.spectrum_button.click()
    assert dialog.computed_choice.isChecked()
    assert dialog.spectrum_combo.currentText() == "invented"
    answers.to_open = tmp_path / "none.csv"
    dialog.spectrum_button.click()
    assert "none.csv" in dialog.alert.text()
    dialog.reject()


def test_a_bad_file_is_told_with_its_line_and_changes_nothing(
    shell: tuple[MainWindow, ReadyAnswers], tmp_path: Path
) -> None:
    window, answers = shell
    bad = tmp_path / "bad.ies"
    lines = PLAIN.read_text(encoding="latin-1").splitlines()
    start = next(k for k, line in enumerate(lines) if line.startswith("TILT="))
    lines[start + 1] = lines[start + 1].replace(lines[start + 1].split()[0], "x", 1)
    bad.write_text("\n".join(lines))
    drop(window, bad)
    assert window.lamp_files.dialog is None
    assert f"line {start + 2}" in answers.told[0]
    assert "bad.ies" in answers.told[0]
    assert window.document.undo_stack.count() == 0


@pytest.mark.parametrize("name", ["eulumdat-isym2.ldt", "lm63-1986.ies"])
def test_a_dropped_lamp_file_is_shown(shell: tuple[MainWindow, ReadyAnswers], name: str) -> None:
    window, _ = shell
    drop(window, FILES / name)
    dialog = window.lamp_files.dialog
    assert dialog is not None
    assert name in dialog.windowTitle()
    dialog.reject()


def test_quarter_turns_swap_the_planes_and_sets_can_be_chosen(
    shell: tuple[MainWindow, ReadyAnswers],
) -> None:
    window, _ = shell
    window.lamp_files.show_file(FILES / "eulumdat-isym4.ldt")
    dialog = window.lamp_files.dialog
    assert dialog is not None
    before = dialog.polar.curves
    dialog.turn_combo.setCurrentIndex(1)
    dialog.turn_combo.activated.emit(1)
    after = dialog.polar.curves
    assert before is not None
    assert after is not None
    assert before.across is not None
    assert after.along == pytest.approx(before.across, abs=0.02)
    dialog.reject()
    window.lamp_files.show_file(FILES / "eulumdat-two-sets-comma.ldt")
    dialog = window.lamp_files.dialog
    assert dialog is not None
    assert dialog.set_combo.isVisible()
    assert dialog.watts_box.value == 40.0
    dialog.set_combo.setCurrentIndex(1)
    dialog.set_combo.activated.emit(1)
    assert dialog.watts_box.value == 76.5
    dialog.reject()


def test_it_can_be_kept_among_the_own_lamps(shell: tuple[MainWindow, ReadyAnswers]) -> None:
    window, _ = shell
    window.lamp_files.show_file(PLAIN)
    dialog = window.lamp_files.dialog
    assert dialog is not None
    dialog.name_line.setText("Panel from a file")
    dialog.ppf_box.reset(150.0)
    dialog.watts_box.reset(80.0)
    dialog.keep_switch.setChecked(True)
    dialog.hang_button.click()
    model = window.document.plan.lamps[-1].model
    assert window.page.shelf.catalogue.lamp(model.key) == model
    assert any(user_folder().rglob("*.json"))


def test_two_lamps_from_files_by_one_name_stay_apart(
    shell: tuple[MainWindow, ReadyAnswers],
) -> None:
    window, _ = shell
    for flux in (150.0, 180.0):
        window.lamp_files.show_file(PLAIN)
        dialog = window.lamp_files.dialog
        assert dialog is not None
        dialog.ppf_box.reset(flux)
        dialog.watts_box.reset(80.0)
        dialog.hang_button.click()
    first, second = (lamp.model for lamp in window.document.plan.lamps[-2:])
    assert first.name == second.name
    assert first.key != second.key


def test_the_selected_lamp_is_written_and_reads_back(
    shell: tuple[MainWindow, ReadyAnswers], tmp_path: Path
) -> None:
    window, answers = shell
    assert not window.actions_["export_lamp"].isEnabled()
    window.selection.select(Place(PlaceKind.LAMP, 0))
    answers.to_save = tmp_path / "panel"
    trigger(window, "export_lamp")
    back = read_lamp_file(tmp_path / "panel.ies")
    body = window.document.plan.lamps[0].model.body
    assert isinstance(body, PanelBody)
    assert (back.opening.length, back.opening.width) == (body.length, body.width)
    assert back.watts == 100.0
    assert total_lumens(back) == pytest.approx(1000.0)


@pytest.mark.parametrize("key", ["export_lamp", "export_csv", "export_json", "export_picture"])
def test_a_name_no_file_can_have_is_told(
    shell: tuple[MainWindow, ReadyAnswers], tmp_path: Path, key: str
) -> None:
    window, answers = shell
    window.selection.select(Place(PlaceKind.LAMP, 0))
    folder = tmp_path / "out"
    folder.mkdir()
    answers.to_save = folder / "a\0b.ies"
    trigger(window, key)
    assert len(answers.told) == 1
    assert "name" in answers.told[0]
    assert list(folder.iterdir()) == []
