"""What every test gets: no screen, no dialogs that wait, no traces left behind."""

from __future__ import annotations

import gc
import itertools
import os
import threading
from collections.abc import Callable, Generator, Iterator
from pathlib import Path
from typing import Any

# Before Qt and numpy are imported: no screen, no scaling, and one thread per matrix
# product (the arrays are small; on two cores threads cost more than they give).
os.environ["QT_QPA_PLATFORM"] = "offscreen"
os.environ["PYQTGRAPH_QT_LIB"] = "PySide6"
os.environ["QT_SCALE_FACTOR"] = "1"
os.environ["LC_ALL"] = "C.UTF-8"
for _name in ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ.setdefault(_name, "1")

import pytest
from hypothesis import HealthCheck, settings
from PySide6 import QtCore, QtGui, QtWidgets

# After PySide6, which it would otherwise not choose.
import pyqtgraph  # isort: skip

from planner.app.jobs import THREAD_PREFIX  # isort: skip

# A drag made by a test comes faster than a hand; the limit would drop it silently.
pyqtgraph.setConfigOption("mouseRateLimit", -1)

# Within a call into Qt the collector may end a test for good (see ``planner.app.jobs``): garbage
# is collected between two tests alone, and by the program's own collector.
gc.disable()
_TESTS_A_SWEEP = 50
_ended = itertools.count(1)

# A loaded machine is no fault of what is tested.
settings.register_profile("calm", deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.load_profile("calm")

_BODY_PASSED = pytest.StashKey[bool]()

_MODAL: tuple[tuple[type, tuple[str, ...]], ...] = (
    (QtWidgets.QDialog, ("exec",)),
    (
        QtWidgets.QMessageBox,
        ("exec", "about", "aboutQt", "critical", "information", "question", "warning"),
    ),
    (
        QtWidgets.QFileDialog,
        (
            "exec",
            "getExistingDirectory",
            "getOpenFileName",
            "getOpenFileNames",
            "getSaveFileName",
        ),
    ),
    (
        QtWidgets.QInputDialog,
        ("exec", "getDouble", "getInt", "getItem", "getMultiLineText", "getText"),
    ),
    (QtWidgets.QColorDialog, ("exec", "getColor")),
    (QtWidgets.QFontDialog, ("exec", "getFont")),
    (QtWidgets.QMenu, ("exec",)),
)


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport(
    item: pytest.Item, call: pytest.CallInfo[None]
) -> Generator[None, pytest.TestReport, pytest.TestReport]:
    """Note whether the body passed; where CI runs, a skip is a failure unless announced."""
    report = yield
    if report.when == "call":
        item.stash[_BODY_PASSED] = report.passed
    skipped = report.skipped and not hasattr(report, "wasxfail")
    if skipped and _in_ci() and item.get_closest_marker("may_skip") is None:
        report.outcome = "failed"
        report.longrepr = (
            f"skipped where nothing may be skipped: {report.longrepr}\n"
            "Install what is missing, or mark the test may_skip('reason')."
        )
    return report


def _in_ci() -> bool:
    return os.environ.get("CI", "").lower() in {"1", "true", "yes"}


@pytest.fixture(scope="session")
def qapp(qapp: QtWidgets.QApplication) -> QtWidgets.QApplication:
    """The application in a fixed dress: Fusion, C locale, light, no blinking cursor."""
    QtCore.QLocale.setDefault(QtCore.QLocale.c())
    qapp.setStyle("Fusion")
    qapp.setCursorFlashTime(0)
    QtGui.QGuiApplication.styleHints().setColorScheme(QtCore.Qt.ColorScheme.Light)
    return qapp


@pytest.fixture(autouse=True)
def own_dress() -> Iterator[None]:
    """Give back the application's colours after a test that changed the theme."""
    yield
    app = QtWidgets.QApplication.instance()
    if not isinstance(app, QtWidgets.QApplication):
        return
    hints = QtGui.QGuiApplication.styleHints()
    if hints.colorScheme() != QtCore.Qt.ColorScheme.Light:
        hints.setColorScheme(QtCore.Qt.ColorScheme.Light)
    standard = app.style().standardPalette()
    if app.palette() != standard:
        app.setPalette(standard)


@pytest.fixture(autouse=True)
def own_folders(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Give each test its own settings, data and state; returns the folder they are in."""
    home = tmp_path / "planner-home"
    for name in ("SETTINGS", "DATA", "STATE"):
        folder = home / name.lower()
        folder.mkdir(parents=True)
        monkeypatch.setenv(f"PLANNER_{name}_DIR", str(folder))
    settings_format = QtCore.QSettings.Format.IniFormat
    QtCore.QSettings.setDefaultFormat(settings_format)
    for scope in (QtCore.QSettings.Scope.UserScope, QtCore.QSettings.Scope.SystemScope):
        QtCore.QSettings.setPath(settings_format, scope, str(home / "settings"))
    return home


@pytest.fixture(autouse=True)
def no_waiting_dialogs(monkeypatch: pytest.MonkeyPatch) -> None:
    """Make every dialog or menu that would wait for a hand raise instead.

    A test that expects one sets its own answer with ``monkeypatch.setattr``.
    """
    for owner, names in _MODAL:
        for name in names:
            monkeypatch.setattr(owner, name, _refusal(owner, name))


def _refusal(owner: type, name: str) -> Callable[..., Any]:
    def refuse(*arguments: Any, **_named: Any) -> Any:
        said = [a for a in arguments if isinstance(a, str)]
        if arguments and isinstance(arguments[0], QtWidgets.QMessageBox):
            said = [arguments[0].text(), arguments[0].informativeText()]
        raise AssertionError(f"{owner.__name__}.{name} opened unexpectedly, saying {said}")

    return refuse


@pytest.fixture(autouse=True)
def swept() -> Iterator[None]:
    """Collect what each test leaves, and now and then what was missed."""
    yield
    gc.collect(2 if next(_ended) % _TESTS_A_SWEEP == 0 else 0)


@pytest.fixture(autouse=True)
def nothing_left_behind(request: pytest.FixtureRequest) -> Iterator[None]:
    """Fail a test that leaves top-level widgets or running threads behind."""
    widgets_before = {id(widget) for widget in _top_level_widgets()}
    threads_before = set(threading.enumerate())
    yield
    if not request.node.stash.get(_BODY_PASSED, False):
        return
    widgets = _new_widgets(widgets_before)
    if widgets:
        gc.collect()
        widgets = _new_widgets(widgets_before)
    # Lanes run as daemons, so that a deaf job cannot hold the process; here they count.
    threads = [
        thread
        for thread in threading.enumerate()
        if thread not in threads_before
        and (not thread.daemon or thread.name.startswith(THREAD_PREFIX))
    ]
    for thread in threads:
        thread.join(timeout=2.0)
    running = [thread.name for thread in threads if thread.is_alive()]
    for widget in widgets:
        widget.deleteLater()  # so that the next test is not blamed
    assert not widgets, f"top-level widgets left behind (use qtbot.addWidget): {widgets}"
    assert not running, f"threads still running (shut the worker down): {running}"


def _top_level_widgets() -> list[QtWidgets.QWidget]:
    if QtWidgets.QApplication.instance() is None:
        return []
    return QtWidgets.QApplication.topLevelWidgets()


def _new_widgets(before: set[int]) -> list[QtWidgets.QWidget]:
    if QtWidgets.QApplication.instance() is None:
        return []
    QtCore.QCoreApplication.sendPostedEvents(None, QtCore.QEvent.Type.DeferredDelete)
    QtCore.QCoreApplication.processEvents()
    return [
        widget
        for widget in _top_level_widgets()
        if id(widget) not in before
        # pyqtgraph's menus have no parent by design and go with their plot
        and not isinstance(widget, QtWidgets.QMenu)
        and not type(widget).__module__.startswith("pyqtgraph")
        and not type(widget).__name__.startswith("QTipLabel")
    ]
