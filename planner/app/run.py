"""Starting the window, and taking its picture without a screen."""

from __future__ import annotations

import logging
import os
import sys
from pathlib import Path

from PySide6.QtCore import QEvent, Qt, QTimer, Signal
from PySide6.QtGui import QFileOpenEvent
from PySide6.QtWidgets import QApplication

from planner import __version__
from planner.app import theme
from planner.app.errors import FaultReporter, keep_log, trace_crashes
from planner.app.estimator import Estimator
from planner.app.exports import write_picture
from planner.app.help import APP_TITLE, app_icon
from planner.app.main_window import MainWindow
from planner.app.settings import APP_FOLDER, Settings
from planner.app.theme import Theme
from planner.catalogue.library import demo_plan
from planner.files.disk import is_file
from planner.files.recovery import state_folder
from planner.plan.plan import Plan


class PlannerApplication(QApplication):
    """The application; ``file_asked(Path)`` when the desktop asks it to open a file."""

    file_asked = Signal(object)

    def event(self, event: QEvent) -> bool:
        if isinstance(event, QFileOpenEvent):
            self.file_asked.emit(Path(event.file()))
            return True
        return super().event(event)


def make_application() -> QApplication:
    """The running application, or a new one with the program's names and icon."""
    running = QApplication.instance()
    if isinstance(running, QApplication):
        return running
    app = PlannerApplication(sys.argv[:1])
    app.setApplicationName(APP_FOLDER)
    app.setApplicationDisplayName(APP_TITLE)
    app.setApplicationVersion(__version__)
    app.setDesktopFileName(APP_FOLDER)
    app.setWindowIcon(app_icon())
    return app


def run_window(plan_path: Path | None = None, *, demo: bool = False) -> int:
    """Open the window and stay until it is closed; returns the exit code.

    Shows the plan or the demo asked for; else the demo at the very first start, the last
    plan at later ones, or an empty plan.
    """
    logging.basicConfig(level=logging.WARNING, format="%(levelname)s: %(message)s")
    app = make_application()
    trace, log = trace_crashes(state_folder()), keep_log(state_folder())
    # Before the window: what goes wrong while it is built is shown and written down, too.
    reporter = FaultReporter()
    reporter.install()
    try:
        code = _run_window(app, reporter, plan_path, demo=demo)
    finally:
        reporter.remove()
        if trace is not None:
            trace.close()
        if log is not None:
            logging.getLogger().removeHandler(log)
            log.close()
    return code


def _run_window(
    app: QApplication, reporter: FaultReporter, plan_path: Path | None, *, demo: bool
) -> int:
    settings = Settings.of_user()
    theme.apply(settings.values.theme)
    try:
        window = open_window(settings, plan_path, demo=demo)
    except Exception as error:  # noqa: BLE001 - told in the dialog, which ends the program
        reporter.report(error)
        app.exec()
        return 1
    reporter.watch(window.desk.rescue, window)
    if isinstance(app, PlannerApplication):
        app.file_asked.connect(window.desk.open_aside)
    # The session ends (log-out, shut-down): whatever becomes of us, the work is kept.
    app.commitDataRequest.connect(lambda _session: window.desk.keep_copy())
    window.show()
    QTimer.singleShot(0, window.desk.offer_leftovers)
    return app.exec()


def open_window(
    settings: Settings, plan_path: Path | None = None, *, demo: bool = False
) -> MainWindow:
    """The window with the plan it starts with; not yet shown."""
    first_start = not settings.values.started_before
    settings.keep(started_before=True)
    last = settings.values.last_plan
    demo = demo or (first_start and plan_path is None)
    plan = demo_plan() if demo else None
    window = MainWindow(plan, settings=settings)
    if plan_path is not None:
        # After the window is there: a message about a bad file needs something to stand on.
        QTimer.singleShot(0, lambda: window.desk.open(plan_path))
    elif not demo and last is not None and is_file(last):
        window.desk.open(last, asked=False)
    for problem in filter(None, (*window.catalogue.problems, settings.problem)):
        window.tell(problem)
    return window


def picture_window(
    plan: Plan, path: Path, size: tuple[int, int] = (1280, 800), dark: bool = False
) -> None:
    """Write a PNG of the whole window with the finished estimate of a plan.

    Works without a screen. Nothing of the user's settings is read or changed. Raises
    ``ValueError`` where the light cannot be computed and ``PlanFileError`` where the file
    cannot be written.
    """
    if QApplication.instance() is None and sys.platform == "linux":
        os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    app = make_application()
    theme.apply(Theme.DARK if dark else Theme.LIGHT)
    settings = Settings.in_memory()
    settings.keep(theme=Theme.DARK if dark else Theme.LIGHT)
    window = MainWindow(plan, settings=settings, estimator=Estimator(synchronous=True))
    window.setAttribute(Qt.WidgetAttribute.WA_DontShowOnScreen)
    # Fixed, or a page that would like more room would stretch the picture.
    window.setFixedSize(*size)
    window.show()
    try:
        if window.estimate is None:
            raise ValueError(window.state_line.problem)
        # Twice: the first round lays out, the second fits the drawing into what it was given.
        app.processEvents()
        window.page.fit()
        app.processEvents()
        write_picture(path, window.grab())
    finally:
        window.close()
        window.deleteLater()
