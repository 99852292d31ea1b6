"""What a user expects of the window itself: place, look, choices, help, start."""

from __future__ import annotations

import math
import threading
import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QEvent, QPoint, QRect, QRectF, Qt, QUrl
from PySide6.QtGui import (
    QDesktopServices,
    QFileOpenEvent,
    QFont,
    QFontMetrics,
    QGuiApplication,
    QImage,
    QPalette,
)
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractSpinBox,
    QApplication,
    QComboBox,
    QDialog,
    QLabel,
    QLineEdit,
    QWidget,
)
from pytestqt.qtbot import QtBot

from planner import __version__
from planner.app import theme
from planner.app.help import AboutDialog, HelpWindow, NewsLine
from planner.app.jobs import THREAD_PREFIX, Cancelled, Lane, Progress
from planner.app.main_window import MainWindow
from planner.app.run import PlannerApplication, open_window, picture_window
from planner.app.settings import Settings
from planner.app.theme import Theme
from planner.catalogue.library import demo_plan
from planner.estimate.result import Quality
from planner.files.store import save_plan
from planner.plan.place import Place, PlaceKind
from planner.units import LengthUnit
from tests.e2e.shell import make_window, small_plan, trigger
from tests.e2e.sketching import written_estimate

pytestmark = pytest.mark.gui


@pytest.fixture(autouse=True)
def same_look_afterwards(qapp: QApplication) -> Iterator[None]:
    before = qapp.palette()
    yield
    qapp.setPalette(before)
    qapp.setStyle("Fusion")


# -- place --------------------------------------------------------------------------------


def test_the_window_comes_back_where_it_was(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    window.setGeometry(QRect(40, 30, 700, 500))
    window.close()
    kept = Settings.of_user().values.window_rect
    assert kept is not None
    assert kept[2:] == (window.width(), window.height())
    again, _ = make_window(qtbot)
    assert again.size() == window.size()


def test_a_window_left_on_a_screen_that_is_gone_is_brought_back(qtbot: QtBot) -> None:
    Settings.of_user().keep(window_rect=(5000, -3000, 700, 500))
    window, _ = make_window(qtbot)
    screens = [screen.availableGeometry() for screen in QGuiApplication.screens()]
    assert any(area.contains(window.geometry().topLeft()) for area in screens)


def test_nothing_asks_for_more_room_than_a_small_screen_has(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    least = window.minimumSizeHint()
    assert least.width() <= 1280
    assert least.height() <= 800


# -- choices ------------------------------------------------------------------------------


def test_units_are_switched_without_touching_the_plan_and_remembered(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    before = window.document.plan
    trigger(window, "unit_in")
    assert window.display.unit is LengthUnit.INCH
    assert window.actions_["unit_in"].isChecked()
    assert not window.actions_["unit_cm"].isChecked()
    assert window.document.plan is before
    assert not window.document.dirty
    window.close()
    again, _ = make_window(qtbot)
    assert again.display.unit is LengthUnit.INCH
    assert again.actions_["unit_in"].isChecked()


def test_contours_band_and_colours_are_switched_and_remembered(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    assert window.actions_["contours"].isChecked()
    trigger(window, "contours")
    trigger(window, "band_wash")
    trigger(window, "map_viridis")
    window.close()
    again, _ = make_window(qtbot)
    state = again.display.state
    assert (state.contours, state.band_wash, state.colour_map) == (False, True, "viridis")


@pytest.mark.parametrize(("key", "dark"), [("theme_dark", True), ("theme_light", False)])
def test_a_theme_is_taken_at_once_and_remembered(qtbot: QtBot, key: str, dark: bool) -> None:
    window, _ = make_window(qtbot)
    trigger(window, key)
    qtbot.waitUntil(
        lambda: (window.palette().color(QPalette.ColorRole.Window).lightness() < 128) is dark,
        timeout=1000,
    )
    assert Settings.of_user().values.theme is (Theme.DARK if dark else Theme.LIGHT)
    again, _ = make_window(qtbot)
    assert again.actions_[key].isChecked()


def test_a_finer_map_is_computed_when_asked(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    window.display.update(cells=32)
    assert window.estimate is not None
    assert window.estimate.options.cells == (32, 32)


# -- state and help -----------------------------------------------------------------------


def test_the_status_bar_says_how_the_light_was_computed(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    assert window.state_line.text() == "Light as sketched"
    assert window.state_line.accessibleDescription() == "Computed in 0.01 s."
    window.state_line.show_failure("The lamp is gone.")
    assert "Not computed" in window.state_line.text()


def test_a_preview_is_marked_and_then_the_mark_goes(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    line = window.state_line
    line.show_estimate(written_estimate(window.document.plan, Quality.PREVIEW))
    assert "refining" in line.text()
    line.show_busy(True)
    assert "refining" in line.text()
    line.show_estimate(written_estimate(window.document.plan))
    line.show_busy(False)
    assert line.text() == "Light as sketched"


def test_long_work_is_mentioned_and_short_work_is_not(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    line = window.state_line
    line.show_busy(True)
    assert line.text() == "Light as sketched"
    qtbot.waitUntil(lambda: "working" in line.text(), timeout=2000)
    line.show_busy(False)
    assert line.text() == "Light as sketched"


@pytest.mark.parametrize("page", ["start", "cautions", "glossary"])
def test_help_opens_beside_the_work(qtbot: QtBot, page: str) -> None:
    window, _ = make_window(qtbot)
    trigger(window, f"help_{page}")
    assert window._help is not None
    assert window._help.isVisible()
    assert not window._help.isModal()
    assert window._help.shown_page == page


def test_f1_opens_the_help(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    with qtbot.waitActive(window):
        window.activateWindow()
    QTest.keyClick(window, Qt.Key.Key_F1)
    assert window._help is not None
    assert window._help.shown_page == "start"


def test_about_copies_the_versions(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    trigger(window, "about")
    dialog = window.findChild(AboutDialog)
    assert isinstance(dialog, QDialog)
    copy = next(
        b for b in dialog.findChildren(QAbstractButton) if b.accessibleName() == "Copy details"
    )
    copy.click()
    text = QGuiApplication.clipboard().text()
    assert "Grow space light planner" in text
    assert "PySide6 6." in text
    dialog.close()


def test_the_data_folder_is_made_and_opened(
    qtbot: QtBot, own_folders: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    opened: list[str] = []

    def note(url: QUrl) -> bool:
        opened.append(url.toLocalFile())
        return True

    monkeypatch.setattr(QDesktopServices, "openUrl", note)
    window, _ = make_window(qtbot)
    trigger(window, "data_folder")
    assert [Path(folder) for folder in opened] == [own_folders / "data"]


def test_full_screen_and_back(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    trigger(window, "full_screen")
    assert window.isFullScreen()
    trigger(window, "full_screen")
    assert not window.isFullScreen()


_CONTROLS = (QAbstractButton, QAbstractSpinBox, QComboBox, QLineEdit)


def _nameless(widget: QWidget) -> bool:
    text = widget.text() if isinstance(widget, QAbstractButton) else ""
    # Parts inside a control (its line edit, its arrow) are spoken for by the control.
    inside = isinstance(widget.parent(), QAbstractSpinBox | QComboBox | QLineEdit)
    internal = widget.objectName().startswith("qt_")
    return not (widget.accessibleName() or text or inside or internal)


@pytest.mark.parametrize("kind", PlaceKind)
def test_every_control_has_a_name_for_screen_readers(qtbot: QtBot, kind: PlaceKind) -> None:
    window, _ = make_window(qtbot, demo_plan())
    if kind is PlaceKind.OBSTACLE:
        trigger(window, "add_shelf")
    window.selection.select(Place(kind))
    controls = [
        widget
        for widget in window.findChildren(QWidget)
        if isinstance(widget, _CONTROLS) and widget.isVisible()
    ]
    assert controls
    nameless = [
        f"{type(w).__name__} in {type(w.parent()).__name__}" for w in controls if _nameless(w)
    ]
    assert nameless == []


# -- start --------------------------------------------------------------------------------


def test_the_very_first_start_shows_the_demo_and_later_ones_do_not(qtbot: QtBot) -> None:
    settings = Settings.of_user()
    first = open_window(settings)
    qtbot.addWidget(first)
    assert first.document.plan == demo_plan()
    assert first.document.path is None
    assert not first.document.dirty
    first.close()
    later = open_window(settings)
    qtbot.addWidget(later)
    assert later.document.plan != demo_plan()
    assert later.document.plan.lamps == ()
    later.close()


def test_a_later_start_opens_the_plan_of_last_time(qtbot: QtBot, tmp_path: Path) -> None:
    file = tmp_path / "attic.plan.json"
    save_plan(small_plan("Attic"), file)
    window, _ = make_window(qtbot)
    window.settings.keep(started_before=True)
    window.desk.open(file)
    window.close()
    later = open_window(Settings.of_user())
    qtbot.addWidget(later)
    assert later.document.path == file
    later.close()


def test_a_last_plan_that_cannot_be_opened_leaves_an_empty_one_and_no_dialog(
    qtbot: QtBot, tmp_path: Path
) -> None:
    file = tmp_path / "attic.plan.json"
    save_plan(small_plan("Attic"), file)
    first, _ = make_window(qtbot)
    first.settings.keep(started_before=True)
    first.desk.open(file)
    second = open_window(Settings.of_user())
    qtbot.addWidget(second)
    assert second.document.path is None
    assert "another window" in second.statusBar().currentMessage()
    second.close()


def test_a_plan_named_on_the_command_line_is_opened(qtbot: QtBot, tmp_path: Path) -> None:
    file = tmp_path / "attic.plan.json"
    save_plan(small_plan("Attic"), file)
    window = open_window(Settings.of_user(), file)
    qtbot.addWidget(window)
    qtbot.waitUntil(lambda: window.document.path == file, timeout=1000)
    window.close()


def test_the_desktop_may_ask_to_open_a_file(tmp_path: Path) -> None:
    asked: list[Path] = []

    class Ear:
        def emit(self, path: Path) -> None:
            asked.append(path)

    class Application:
        file_asked = Ear()

    event = QFileOpenEvent(str(tmp_path / "a.plan.json"))
    assert event.type() == QEvent.Type.FileOpen
    assert PlannerApplication.event(Application(), event)  # type: ignore[arg-type]
    assert asked == [tmp_path / "a.plan.json"]


@pytest.mark.parametrize("dark", [False, True])
def test_the_picture_shows_the_window_in_the_size_and_look_asked(
    qtbot: QtBot, tmp_path: Path, dark: bool
) -> None:
    target = tmp_path / "window.png"
    picture_window(demo_plan(), target, (1280, 800), dark)
    picture = QImage(str(target))
    assert (picture.width(), picture.height()) == (1280, 800)
    corner = picture.pixelColor(QPoint(1279, 799))
    assert (corner.lightness() < 128) is dark
    colours = {picture.pixel(x, y) for x in range(0, 1280, 16) for y in range(0, 800, 16)}
    assert len(colours) > 1


# -- the end --------------------------------------------------------------------------------


def test_closing_ends_what_all_pages_compute(qtbot: QtBot) -> None:
    begun = threading.Event()

    def slow(_progress: Progress, cancelled: Cancelled) -> object:
        begun.set()
        while not cancelled():
            time.sleep(0.2)
        return None

    window, _ = make_window(qtbot)
    trigger(window, "page_side")
    trigger(window, "page_survey")
    lanes = [window.estimator.lane, *window.findChildren(Lane)]
    assert len(lanes) >= 8
    told: list[object] = []
    for lane in lanes:
        lane.synchronous = False
        lane.done.connect(lambda about, _result: told.append(about))
        begun.clear()
        lane.ask("slow", slow, topic="slow")
        qtbot.waitUntil(begun.is_set, timeout=20_000)
    window.close()
    assert not [t.name for t in threading.enumerate() if t.name.startswith(THREAD_PREFIX)]
    qtbot.wait(20)
    assert "slow" not in told


@pytest.mark.parametrize(("width", "height"), [(910, 512), (960, 540)])
def test_the_window_fits_small_screens(qtbot: QtBot, width: int, height: int) -> None:
    """1366 x 768 at 150 % and 1920 x 1080 at 200 %, in device-independent pixels."""
    window, _ = make_window(qtbot)
    for key in ("side", "survey", "sketch"):
        window.pages.go(key)
    window.resize(width, height)
    QApplication.processEvents()
    assert (window.width(), window.height()) == (width, height)
    for drawing in (window.page.plan_view, window.page.elevation):
        space = drawing.viewport.to_rect(drawing.bounds())
        assert QRectF(drawing.rect()).contains(space)
        assert space.height() > 100
    window.resize(1280, 800)
    QApplication.processEvents()
    assert window.page.section.isVisible()


@pytest.mark.parametrize(
    ("width", "height", "larger"), [(910, 512, 1.0), (960, 540, 1.0), (1280, 800, 1.8)]
)
def test_a_first_start_fits_small_screens_and_large_fonts_too(
    qtbot: QtBot, qapp: QApplication, width: int, height: int, larger: float
) -> None:
    usual = qapp.font()
    font = QFont(usual)
    font.setPointSizeF(larger * usual.pointSizeF())
    qapp.setFont(font)
    try:
        window, _ = make_window(qtbot)
        welcome = window.page.welcome
        welcome.show()
        window.resize(1500, 900)
        QApplication.processEvents()
        wide = welcome.own_button.mapTo(welcome, QPoint()).y()
        assert abs(wide - welcome.boxes["Width"].mapTo(welcome, QPoint()).y()) < wide / 4
        window.resize(width, height)
        QApplication.processEvents()
        assert (window.width(), window.height()) == (width, height)
        for part in (welcome.own_button, welcome.stay_button, *welcome.boxes.values()):
            place = QRect(part.mapTo(welcome, QPoint()), part.size())
            assert welcome.rect().contains(place)
            assert part.width() >= part.minimumSizeHint().width()
    finally:
        qapp.setFont(usual)


def test_a_large_font_cuts_no_figures(qtbot: QtBot, qapp: QApplication) -> None:
    usual = qapp.font()
    larger = QFont(usual)
    larger.setPointSizeF(1.8 * usual.pointSizeF())
    qapp.setFont(larger)
    try:
        window, _ = make_window(qtbot)
        window.resize(1280, 800)
        QApplication.processEvents()
        strip = window.page.strip
        words = QFontMetrics(strip.figures[0].font())
        for shown in strip.figures:
            figure = shown.figure
            assert figure is not None
            number = f"{figure.value} {figure.spread}"
            # The number is at most twice as large as the words below it.
            assert 2 * words.horizontalAdvance(number) <= shown.width()
            unit = words.horizontalAdvance(figure.unit)
            beside = 2 * words.horizontalAdvance(number) + unit
            below = words.horizontalAdvance(f"{figure.label}, ") + unit
            assert min(beside, below) <= shown.width()
            assert 3 * words.height() <= shown.height() + words.height() / 2
        window.resize(1100, 700)
        QApplication.processEvents()
        for shown in strip.figures:
            assert shown.figure is not None
            label = words.horizontalAdvance(shown.figure.label)
            assert label + theme.RHYTHM <= shown.width()
        window.resize(1280, 800)
        QApplication.processEvents()
        assert strip.sentence.height() >= strip.sentence.heightForWidth(strip.sentence.width())
        marks = window.page.column.panel.findChildren(QWidget)
        asks = [mark for mark in marks if mark.toolTip() == "What is this?"]
        assert asks
        for mark in asks:
            assert mark.visibleRegion().boundingRect().width() in {0, mark.width()}
    finally:
        qapp.setFont(usual)


def test_a_first_start_says_that_it_is_a_demo_and_begins_a_space_of_ones_own(qtbot: QtBot) -> None:
    window = open_window(Settings.in_memory())
    qtbot.addWidget(window, before_close_func=lambda shown: shown.estimator.cancel())
    window.show()
    welcome = window.page.welcome
    assert welcome.isVisible()
    assert any("invented demo" in label.text() for label in welcome.findChildren(QLabel))
    for name, text in (("Width", "60"), ("Depth", "90"), ("Height", "200")):
        box = welcome.boxes[name]
        box.selectAll()
        qtbot.keyClicks(box, text)
    welcome.own_button.click()
    plan = window.document.plan
    assert plan.space.bounds == pytest.approx((0, 0, 0.6, 0.9))
    assert plan.space.height == pytest.approx(2.0)
    assert not plan.lamps
    assert not welcome.isVisible()


def test_a_first_space_may_have_another_shape_and_says_what_it_still_wants(qtbot: QtBot) -> None:
    window = open_window(Settings.in_memory())
    qtbot.addWidget(window, before_close_func=lambda shown: shown.estimator.cancel())
    window.show()
    welcome = window.page.welcome
    welcome.shape.setCurrentText("L-shape")
    welcome.own_button.click()
    assert window.document.plan.space.wall_count == 6
    advice = window.page.strip.advice
    wanted = (advice.walls_button, advice.lamp_button, advice.target_button)
    qtbot.waitUntil(lambda: all(button.isVisible() for button in wanted), timeout=20_000)
    advice.walls_button.click()
    assert window.selection.current == Place(PlaceKind.WALL, 0)


def test_later_starts_say_nothing_of_a_demo(qtbot: QtBot) -> None:
    settings = Settings.in_memory()
    settings.keep(started_before=True)
    window = open_window(settings)
    qtbot.addWidget(window)
    window.show()
    assert not window.page.welcome.isVisible()


def test_a_lamp_is_cut_from_one_plan_and_pasted_into_another(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    lamp = window.document.plan.lamps[0]
    assert not window.actions_["copy"].isEnabled()
    window.selection.select(Place(PlaceKind.LAMP))
    trigger(window, "cut")
    assert not window.document.plan.lamps
    low = small_plan(lamps=0)
    space = low.space.model_copy(update={"height": 0.5})
    window.document.replace(low.model_copy(update={"space": space}), None)
    trigger(window, "paste")
    pasted = window.document.plan.lamps[0]
    assert (pasted.model, pasted.x, pasted.y) == (lamp.model, lamp.x, lamp.y)
    assert pasted.hanging_height == pytest.approx(0.3)  # 0.5 m less the canopy at 0.2 m
    trigger(window, "paste")
    first, second = list(window.document.plan.lamps)
    assert math.dist((first.x, first.y), (second.x, second.y)) >= 0.2  # not one on the other
    assert window.selection.current == Place(PlaceKind.LAMP, 1)


def test_what_is_no_lamp_is_not_pasted(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    QGuiApplication.clipboard().setText("240 W")
    trigger(window, "paste")
    assert len(window.document.plan.lamps) == 1
    assert "nothing to paste" in window.statusBar().currentMessage()


def news_of(window: MainWindow) -> list[NewsLine]:
    return [line for line in window.findChildren(NewsLine) if not line.isHidden()]


def test_a_new_version_says_so_once_in_a_line(qtbot: QtBot) -> None:
    settings = Settings.of_user()
    settings.keep(started_before=True, version_seen="0.0.9")
    window = open_window(settings)
    qtbot.addWidget(window)
    (line,) = news_of(window)
    assert line.text() == f"This is version {__version__}: what is new"
    assert line.focusPolicy() & Qt.FocusPolicy.TabFocus
    line.click()
    assert news_of(window) == []
    (shown,) = window.findChildren(HelpWindow)
    assert shown.shown_page == "news"
    window.close()
    later = open_window(Settings.of_user())
    qtbot.addWidget(later)
    assert news_of(later) == []
    later.close()


def test_a_first_start_has_no_news(qtbot: QtBot) -> None:
    window = open_window(Settings.of_user())
    qtbot.addWidget(window)
    assert news_of(window) == []
    assert window.settings.values.version_seen == __version__
    window.close()


def test_who_had_the_program_before_it_counted_versions_has_news(qtbot: QtBot) -> None:
    settings = Settings.of_user()
    settings.keep(started_before=True)
    window = open_window(settings)
    qtbot.addWidget(window)
    assert len(news_of(window)) == 1
    window.close()
