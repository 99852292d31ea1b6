"""What a user does with files: save, open, recent, drop, and what may go wrong."""

from __future__ import annotations

import json
import os
import shutil
import threading
from pathlib import Path

import pytest
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QApplication, QGraphicsView, QMenu, QWidget
from pytestqt.qtbot import QtBot

from planner.app.pages.survey.page import SurveyPage
from planner.app.questions import ChangedOnDisk, Unsaved
from planner.app.settings import RecentPlans, Settings
from planner.files.store import FileKind, OpenedPlan, load_plan, open_plan, save_plan
from planner.plan import edits
from tests.e2e.shell import make_window, small_plan, trigger

pytestmark = pytest.mark.gui


@pytest.fixture
def file(tmp_path: Path) -> Path:
    path = tmp_path / "plans" / "attic.plan.json"
    path.parent.mkdir()
    save_plan(small_plan("Attic", lamps=2), path)
    return path


def test_a_new_plan_is_saved_under_a_name_and_reopened_the_same(
    qtbot: QtBot, tmp_path: Path
) -> None:
    window, answers = make_window(qtbot)
    answers.to_save = tmp_path / "mine"
    trigger(window, "add_lamp")
    trigger(window, "save")
    saved = tmp_path / "mine.plan.json"
    assert load_plan(saved) == window.document.plan
    assert window.document.path == saved
    assert not window.isWindowModified()
    assert window.windowTitle().startswith("mine[*]")
    plan = window.document.plan
    trigger(window, "new")
    answers.to_open = saved
    trigger(window, "open")
    assert window.document.plan == plan


def test_saving_again_asks_nothing(qtbot: QtBot, file: Path) -> None:
    window, answers = make_window(qtbot)
    assert window.desk.open(file)
    trigger(window, "add_lamp")
    trigger(window, "save")
    assert len(load_plan(file).lamps) == 3
    assert answers.proposed == []
    assert answers.asked == []


def test_undo_works_across_a_save(qtbot: QtBot, file: Path) -> None:
    window, _ = make_window(qtbot)
    window.desk.open(file)
    trigger(window, "add_lamp")
    trigger(window, "save")
    trigger(window, "undo")
    assert len(window.document.plan.lamps) == 2
    assert window.isWindowModified()


def test_save_as_proposes_the_folder_of_last_time(qtbot: QtBot, file: Path, tmp_path: Path) -> None:
    window, answers = make_window(qtbot)
    window.desk.open(file)
    trigger(window, "new")
    answers.to_save = None
    trigger(window, "save_as")
    assert answers.proposed == [file.parent / "New grow space.plan.json"]


def test_a_plan_with_a_name_no_file_can_have_is_proposed_a_tame_one(qtbot: QtBot) -> None:
    window, answers = make_window(qtbot, small_plan('Herbs: 2/3 "north"?'))
    trigger(window, "save_as")
    assert answers.proposed[0].name == "Herbs- 2-3 -north--.plan.json"


BAD_FILES = {
    "not JSON": ("this is a shopping list", "not valid JSON"),
    "another kind of JSON": ('{"tree": "apple"}', "not a plan"),
    "a list": ("[1, 2]", "a list"),
    "from a newer version": (None, "newer"),
    "NaN": (None, "NaN"),
    "self-crossing footprint": (None, "cross"),
    "lamp outside": (None, "outside"),
    "canopy above lamp": (None, "ceiling"),
    "empty": ("", "empty"),
}


def _bad_text(kind: str) -> str:
    plan = json.loads(small_plan().model_dump_json())
    if kind == "from a newer version":
        plan["format"] = 999
    elif kind == "NaN":
        plan["space"]["height"] = float("nan")
    elif kind == "self-crossing footprint":
        plan["space"]["footprint"] = [[0, 0], [1, 1], [1, 0], [0, 1]]
    elif kind == "lamp outside":
        plan["lamps"][0]["x"] = 1.5
    elif kind == "canopy above lamp":
        plan["canopy"]["height"] = 1.9
    return json.dumps(plan)


@pytest.mark.parametrize("kind", BAD_FILES)
def test_a_bad_file_is_explained_in_one_message_and_the_open_plan_stays(
    qtbot: QtBot, tmp_path: Path, kind: str
) -> None:
    text, word = BAD_FILES[kind]
    path = tmp_path / "bad.plan.json"
    path.write_text(_bad_text(kind) if text is None else text)
    window, answers = make_window(qtbot)
    trigger(window, "add_lamp")
    before, title = window.document.plan, window.windowTitle()
    answers.to_open = path
    trigger(window, "open")
    assert len(answers.told) == 1
    assert "bad.plan.json" in answers.told[0]
    assert word in answers.told[0]
    assert answers.asked == [], "nobody should be asked to save for a file that is bad"
    assert window.document.plan == before
    assert window.windowTitle() == title
    assert window.actions_["undo"].isEnabled()


def test_a_missing_file_is_explained(qtbot: QtBot, tmp_path: Path) -> None:
    window, answers = make_window(qtbot)
    assert not window.desk.open(tmp_path / "gone.plan.json")
    assert "no such file" in answers.told[0]


@pytest.mark.parametrize("answer", ChangedOnDisk)
def test_a_file_changed_by_somebody_else_is_not_lost_unasked(
    qtbot: QtBot, file: Path, tmp_path: Path, answer: ChangedOnDisk
) -> None:
    window, answers = make_window(qtbot)
    window.desk.open(file)
    trigger(window, "add_lamp")
    save_plan(small_plan("From elsewhere", lamps=0), file)
    answers.on_changed, answers.to_save = answer, tmp_path / "other.plan.json"
    trigger(window, "save")
    assert answers.asked == ["changed attic.plan.json"]
    overwritten = answer is ChangedOnDisk.OVERWRITE
    assert len(load_plan(file).lamps) == (3 if overwritten else 0)
    elsewhere = answer is ChangedOnDisk.SAVE_ELSEWHERE
    assert (tmp_path / "other.plan.json").exists() is elsewhere
    assert window.document.dirty is (answer is ChangedOnDisk.CANCEL)


def test_a_folder_that_cannot_take_the_file_is_explained_and_the_work_stays_unsaved(
    qtbot: QtBot, tmp_path: Path
) -> None:
    window, answers = make_window(qtbot)
    trigger(window, "add_lamp")
    answers.to_save = tmp_path / "no such folder" / "plan.json"
    trigger(window, "save")
    assert len(answers.told) == 1
    assert "does not exist" in answers.told[0]
    assert window.document.dirty
    assert window.document.path is None


def test_a_file_open_in_another_window_is_refused(qtbot: QtBot, file: Path) -> None:
    first, _ = make_window(qtbot)
    second, answers = make_window(qtbot)
    assert first.desk.open(file)
    assert not second.desk.open(file)
    assert "another window" in answers.told[0]
    first.close()
    assert second.desk.open(file)


def test_the_open_file_can_be_opened_again_to_start_over(qtbot: QtBot, file: Path) -> None:
    window, answers = make_window(qtbot)
    window.desk.open(file)
    trigger(window, "add_lamp")
    answers.on_unsaved = Unsaved.DISCARD
    assert window.desk.open(file)
    assert len(window.document.plan.lamps) == 2
    assert answers.told == []


def test_recent_plans_stand_newest_first_and_missing_ones_greyed(qtbot: QtBot, file: Path) -> None:
    other = file.with_name("bath.plan.json")
    save_plan(small_plan("Bath"), other)
    window, _ = make_window(qtbot)
    window.desk.open(file)
    window.desk.open(other)
    file.unlink()
    menu = window.actions_.menus["recent"]
    menu.aboutToShow.emit()
    entries = [(a.text(), a.isEnabled()) for a in menu.actions() if not a.isSeparator()]
    assert entries == [
        ("&1  bath.plan.json", True),
        ("&2  attic.plan.json  (not found)", False),
        ("Clear this list", True),
    ]


def test_a_recent_plan_opens_and_the_list_can_be_cleared(qtbot: QtBot, file: Path) -> None:
    window, _ = make_window(qtbot)
    window.desk.open(file)
    trigger(window, "new")
    menu = window.actions_.menus["recent"]
    menu.aboutToShow.emit()
    menu.actions()[0].trigger()
    assert window.document.path == file
    menu.actions()[-1].trigger()
    menu.aboutToShow.emit()
    assert menu.actions()[0].text() == "No plans opened yet"


def _drop(target: QWidget, *paths: Path) -> bool:
    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile(str(path)) for path in paths])
    buttons, keys = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
    enter = QDragEnterEvent(QPoint(9, 9), Qt.DropAction.CopyAction, mime, buttons, keys)
    enter.ignore()
    QApplication.sendEvent(target, enter)
    if not enter.isAccepted():
        return False
    drop = QDropEvent(QPointF(9, 9), Qt.DropAction.CopyAction, mime, buttons, keys)
    QApplication.sendEvent(target, drop)
    return True


def test_a_file_dragged_onto_the_window_is_opened(qtbot: QtBot, file: Path) -> None:
    window, _ = make_window(qtbot)
    assert _drop(window, file)
    assert window.document.path == file


def test_a_file_dragged_onto_the_drawing_is_opened_too(qtbot: QtBot, file: Path) -> None:
    window, _ = make_window(qtbot)
    views = window.page.findChildren(QGraphicsView)
    assert views
    for view in views:
        trigger(window, "new")
        assert _drop(view.viewport(), file)
        assert window.document.path == file


def test_two_files_at_once_are_not_taken(qtbot: QtBot, file: Path) -> None:
    window, _ = make_window(qtbot)
    assert not _drop(window, file, file.with_name("b.json"))


def test_a_dropped_file_that_is_no_plan_is_explained(qtbot: QtBot, tmp_path: Path) -> None:
    window, answers = make_window(qtbot)
    table = tmp_path / "readings.csv"
    table.write_text("x,y\n1,2\n")
    assert _drop(window, table)
    assert "readings.csv" in answers.asked[0]


@pytest.mark.parametrize("ending", ["csv", "json", "picture"])
def test_the_map_is_exported(qtbot: QtBot, tmp_path: Path, ending: str) -> None:
    window, answers = make_window(qtbot)
    answers.to_save = tmp_path / "out"
    trigger(window, f"export_{ending}")
    if ending == "csv":
        lines = (tmp_path / "out.csv").read_text().splitlines()
        assert len(lines) == 1 + 24 * 24
    elif ending == "json":
        values = json.loads((tmp_path / "out.json").read_text())
        assert values["cells"] == [24, 24]
    else:
        assert (tmp_path / "out.png").read_bytes().startswith(b"\x89PNG")
    assert answers.told == []


def test_an_export_that_cannot_be_written_is_explained(qtbot: QtBot, tmp_path: Path) -> None:
    window, answers = make_window(qtbot)
    answers.to_save = tmp_path / "nowhere" / "map.csv"
    trigger(window, "export_csv")
    assert "does not exist" in answers.told[0]


def test_an_edit_of_the_plan_is_what_is_saved(qtbot: QtBot, file: Path) -> None:
    window, _ = make_window(qtbot)
    window.desk.open(file)
    window.document.apply(edits.set_canopy_height(window.document.plan, 0.3), "Move canopy")
    trigger(window, "save")
    assert json.loads(file.read_text())["canopy"]["height"] == 0.3


def test_a_file_whose_folder_was_made_anew_is_guarded_again(qtbot: QtBot, file: Path) -> None:
    window, _ = make_window(qtbot)
    assert window.desk.open(file)
    shutil.rmtree(file.parent)  # and with it the lock
    file.parent.mkdir()
    window.document.apply(edits.set_height(window.document.plan, 1.8), "Lower ceiling")
    trigger(window, "save")
    assert load_plan(file).space.height == 1.8
    other, answers = make_window(qtbot)
    assert not other.desk.open(file)
    assert "already open in another window" in answers.told[0]
    window.close()
    assert other.desk.open(file)


@pytest.mark.parametrize("name", ["nul\0inside", "/"])
def test_a_name_no_file_can_have_is_said(qtbot: QtBot, name: str) -> None:
    window, answers = make_window(qtbot)
    window.document.apply(edits.set_height(window.document.plan, 1.8), "Lower ceiling")
    answers.to_save = Path(name)
    trigger(window, "save")
    assert len(answers.told) == 1
    assert "cannot be saved" in answers.told[0]
    assert window.document.dirty


@pytest.mark.parametrize(
    ("name", "data", "kind"),
    [
        ("readings.csv", b"hole,ppfd\n1,210\n2,220\n", FileKind.TABLE),
        ("readings.txt", b"hole ppfd\n1 210\n2 220\n", FileKind.TABLE),
        ("readings.plan.json", b"PK\x03\x04workbook", FileKind.TABLE),
        ("lamp.ies", b"", FileKind.LAMP),
        ("lamp", b"IESNA:LM-63-2002\r\n", FileKind.LAMP),
    ],
)
def test_a_table_or_a_lamp_opened_as_a_plan_is_offered_the_right_door(
    qtbot: QtBot, tmp_path: Path, name: str, data: bytes, kind: FileKind
) -> None:
    path = tmp_path / name
    path.write_bytes(data)
    window, answers = make_window(qtbot)
    meant: list[tuple[Path, FileKind]] = []
    window.desk.meant_otherwise.disconnect()
    window.desk.meant_otherwise.connect(lambda path, kind: meant.append((path, kind)))
    assert not window.desk.open(path)
    assert answers.asked == [f"'{name}' is a {kind}, not a plan."]
    assert (meant, answers.told) == ([], [])
    answers.on_otherwise = True
    window.desk.open(path)
    assert meant == [(path, kind)]


def test_a_table_goes_to_the_survey_page(qtbot: QtBot, tmp_path: Path) -> None:
    path = tmp_path / "readings.csv"
    path.write_text("hole,ppfd\n1,210\n2,220\n")
    window, answers = make_window(qtbot)
    answers.on_otherwise = True
    window.desk.open(path)
    assert window.pages.current == "survey"
    page = window.pages.made("survey")
    assert isinstance(page, SurveyPage)
    qtbot.waitUntil(lambda: page.importing.dialog is not None)
    assert page.importing.dialog is not None
    assert answers.told == [], "a message without words"
    page.importing.dialog.reject()


def test_a_damaged_plan_called_txt_is_still_a_plan(qtbot: QtBot, tmp_path: Path) -> None:
    path = tmp_path / "plan.txt"
    path.write_text('{"format": 1,')
    window, answers = make_window(qtbot)
    assert not window.desk.open(path)
    assert "not valid JSON" in answers.told[0]


def test_a_text_without_a_figure_is_no_table_of_readings(qtbot: QtBot, tmp_path: Path) -> None:
    path = tmp_path / "t.txt"
    path.write_text("hello")
    window, answers = make_window(qtbot)
    assert not window.desk.open(path)
    assert answers.asked == []
    assert "not valid JSON" in answers.told[0]


@pytest.mark.skipif(os.name != "posix", reason="the system has no such links")
def test_a_hard_link_is_the_same_plan(qtbot: QtBot, file: Path) -> None:
    link = file.with_name("link.plan.json")
    os.link(file, link)
    window, _ = make_window(qtbot)
    assert window.desk.open(file)
    other, answers = make_window(qtbot)
    assert not other.desk.open(link)
    assert "under another name of the same file" in answers.told[0]
    # Saving makes a file of its own of it; the other name keeps what it held.
    window.document.apply(edits.set_height(window.document.plan, 1.8), "Lower ceiling")
    trigger(window, "save")
    assert other.desk.open(link)
    assert load_plan(link).space.height != 1.8


def test_a_name_with_a_line_break_stays_on_one_line_of_the_recent_list(
    qtbot: QtBot, tmp_path: Path
) -> None:
    path = tmp_path / os.fsdecode(b"two\nlines \xff.plan.json")
    save_plan(small_plan(), path)
    window, _ = make_window(qtbot)
    assert window.desk.open(path)
    again = RecentPlans(Settings.of_user())
    assert again.paths == (path,)
    menu = QMenu()
    again.fill(menu)
    first = menu.actions()[0]
    assert first.isEnabled()
    assert "\n" not in first.text()
    assert "\N{REPLACEMENT CHARACTER}" in first.text()


# -- reading beside the window ------------------------------------------------------------


class SlowReader:
    """Reads plans only once it is let, and notes in which thread."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch) -> None:
        self.let, self.begun = threading.Event(), threading.Event()
        self.threads: set[int] = set()
        monkeypatch.setattr("planner.app.plan_desk.open_plan", self)

    def __call__(self, path: Path) -> OpenedPlan:
        self.threads.add(threading.get_ident())
        self.begun.set()
        assert self.let.wait(10)
        return open_plan(path)


def test_a_plan_is_read_beside_the_window_which_goes_on_meanwhile(
    qtbot: QtBot, file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    window, answers = make_window(qtbot)
    window.desk._reading.synchronous = False
    reader = SlowReader(monkeypatch)
    answers.to_open = file
    trigger(window, "open")
    assert reader.begun.wait(2)
    assert window.document.path is None
    assert window.statusBar().currentMessage() == "Opening attic.plan.json…"
    trigger(window, "add_lamp")
    assert len(window.document.plan.lamps) == 2
    reader.let.set()
    qtbot.waitUntil(lambda: window.document.path == file, timeout=5000)
    assert reader.threads.isdisjoint({threading.get_ident()})
    # What was done meanwhile is asked about, as always.
    assert answers.asked == ["unsaved Shelf"]


def test_a_newer_wish_takes_the_place_of_a_plan_that_is_still_read(
    qtbot: QtBot, file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    window, answers = make_window(qtbot)
    window.desk._reading.synchronous = False
    reader = SlowReader(monkeypatch)
    window.desk.open_aside(file)
    assert reader.begun.wait(2)
    other = file.with_name("cellar.plan.json")
    save_plan(small_plan("Cellar"), other)
    window.recent.chosen.emit(other)
    reader.let.set()
    qtbot.waitUntil(lambda: window.document.path == other, timeout=5000)
    reader.let.clear()
    reader.begun.clear()
    window.desk.open_aside(file)
    assert reader.begun.wait(2)
    trigger(window, "new")
    reader.let.set()
    qtbot.wait(60)
    assert window.document.path is None
    assert answers.told == []


def test_a_bad_file_read_beside_the_window_is_told_once(qtbot: QtBot, tmp_path: Path) -> None:
    window, answers = make_window(qtbot)
    window.desk._reading.synchronous = False
    before = window.document.plan
    window.desk.open_aside(tmp_path / "gone.plan.json")
    qtbot.waitUntil(lambda: len(answers.told) == 1, timeout=5000)
    assert "gone.plan.json" in answers.told[0]
    assert window.document.plan is before
