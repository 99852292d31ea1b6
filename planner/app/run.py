"""Starting the window, taking its picture without a screen, and errors nobody foresaw."""

from __future__ import annotations

import faulthandler
import logging
import os
import sys
import threading
import traceback
from collections.abc import Callable
from functools import partial
from logging.handlers import RotatingFileHandler
from pathlib import Path
from types import TracebackType
from typing import Final, TextIO

from PySide6.QtCore import (
    QEvent,
    QLibraryInfo,
    QLocale,
    QObject,
    QPoint,
    Qt,
    QTimer,
    QTranslator,
    Signal,
    Slot,
)
from PySide6.QtGui import QFileOpenEvent, QFontDatabase, QGuiApplication
from PySide6.QtWidgets import (
    QApplication,
    QDialog,
    QDialogButtonBox,
    QPlainTextEdit,
    QWidget,
)

from planner import __version__
from planner.app import theme
from planner.app.ahead import Ahead
from planner.app.estimator import Estimator, keep_one_heap
from planner.app.help import APP_TITLE, NEWS, NewsLine, app_icon, details
from planner.app.jobs import collect_here
from planner.app.main_window import MainWindow
from planner.app.plain import PlainLabel
from planner.app.questions import write_picture
from planner.app.settings import Settings
from planner.app.theme import Theme
from planner.catalogue.library import demo_plan
from planner.files.disk import is_file
from planner.folders import NAME, state_folder
from planner.language import RIGHT_TO_LEFT, spoken
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
    keep_one_heap()
    app = PlannerApplication(sys.argv[:1])
    _speak_qt(app)
    app.setApplicationName(NAME)
    app.setApplicationDisplayName(APP_TITLE)
    app.setApplicationVersion(__version__)
    # Inside a Flatpak the desktop knows the program by the name of that.
    app.setDesktopFileName(os.environ.get("FLATPAK_ID", NAME))
    app.setWindowIcon(app_icon())
    return app


def _speak_qt(app: QApplication) -> None:
    """Have Qt's own words (buttons, file dialogs) and its numbers in the language spoken."""
    if spoken() == "en":
        return
    if spoken() == RIGHT_TO_LEFT:
        app.setLayoutDirection(Qt.LayoutDirection.RightToLeft)
        return
    QLocale.setDefault(QLocale(spoken()))
    translator = QTranslator(app)
    folder = QLibraryInfo.path(QLibraryInfo.LibraryPath.TranslationsPath)
    if translator.load(QLocale(spoken()), "qtbase", "_", folder):
        app.installTranslator(translator)


def run_window(plan_path: Path | None = None, *, demo: bool = False) -> int:
    """Open the window and stay until it is closed; returns the exit code.

    Shows the plan or the demo asked for; else the demo at the very first start, the last
    plan at later ones, or an empty plan.
    """
    logging.basicConfig(level=logging.WARNING, format="%(levelname)s: %(message)s")
    app = make_application()
    collect_here()
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
    windows = Windows(reporter)
    windows.show(window)
    if isinstance(app, PlannerApplication):
        app.file_asked.connect(windows.take_file)
    # The session ends (log-out, shut-down): whatever becomes of us, the work is kept.
    app.commitDataRequest.connect(lambda _session: windows.keep_copies())
    QTimer.singleShot(0, window.desk.offer_leftovers)
    # The list holds the windows; a name here would keep the first one after it was closed.
    del window
    return app.exec()


class Windows(QObject):
    """The windows of this program, each with a plan, a lock, a recovery copy and lanes of its own.

    Nothing passes between them but the settings on the disk and the clipboard: a lock held by one
    refuses the same plan to another, as it does between two programs.
    """

    def __init__(self, reporter: FaultReporter) -> None:
        super().__init__()
        self._reporter = reporter
        self.open: list[MainWindow] = []

    @property
    def front(self) -> MainWindow:
        """The window in hand, else the newest; raises ``IndexError`` where none is open."""
        active = QApplication.activeWindow()
        return active if active in self.open else self.open[-1]

    def show(self, window: MainWindow) -> None:
        """Show a window and look after it until it is closed."""
        self.open.append(window)
        window.another_wanted.connect(self.another)
        window.ended.connect(partial(self._forget, window))
        self._reporter.watch(self._rescue, window)
        window.show()
        estimator, document, spectra = window.estimator, window.document, window.page.spectra
        first = (lambda: spectra.spectra,)
        Ahead(lambda: not (estimator.busy or document.moving), window, first)

    @Slot()
    def another(self) -> MainWindow:
        """Open one more window, with an empty plan, a little aside of the one in hand."""
        window = MainWindow(settings=Settings.of_user())
        window.page.welcome.setVisible(False)
        window.setWindowState(Qt.WindowState.WindowNoState)
        window.move(self.front.pos() + QPoint(4 * theme.RHYTHM, 4 * theme.RHYTHM))
        self.show(window)
        return window

    @Slot(object)
    def take_file(self, path: Path) -> None:
        """Open a file the desktop hands over, in the window in hand."""
        self.front.desk.open_aside(path)

    def keep_copies(self) -> None:
        """Copy the unsaved work of every window aside."""
        for window in self.open:
            window.desk.keep_copy()

    def _rescue(self) -> str:
        told = dict.fromkeys(window.desk.rescue() for window in self.open)
        return " ".join(told) or "No plan was open any more, so no work is lost."

    def _forget(self, window: MainWindow) -> None:
        self.open.remove(window)
        # A fault that comes later must not be shown over a window that is gone.
        self._reporter.watch(self._rescue, self.open[-1] if self.open else None)
        window.deleteLater()


def open_window(
    settings: Settings, plan_path: Path | None = None, *, demo: bool = False
) -> MainWindow:
    """The window with the plan it starts with; not yet shown."""
    first_start = not settings.values.started_before
    is_new = not first_start and settings.values.version_seen != __version__
    settings.keep(started_before=True, version_seen=__version__)
    last = settings.values.last_plan
    demo = demo or (first_start and plan_path is None)
    plan = demo_plan() if demo else None
    window = MainWindow(plan, settings=settings)
    window.page.welcome.setVisible(demo)
    window.page.welcome.tour_button.setVisible(not settings.values.tour_seen)
    if plan_path is not None:
        # After the window is there: a message about a bad file needs something to stand on.
        QTimer.singleShot(0, lambda: window.desk.open(plan_path))
    elif not demo and last is not None and is_file(last):
        window.desk.open(last, asked=False)
    if is_new:
        line = NewsLine(window)
        line.clicked.connect(partial(window.show_help, NEWS))
        window.statusBar().addWidget(line)
    for problem in filter(None, (*window.catalogue.problems, settings.problem)):
        window.tell(problem)
    return window


def picture_window(
    plan: Plan,
    path: Path,
    size: tuple[int, int] = (1280, 800),
    dark: bool = False,
    part: Callable[[MainWindow], QWidget] | None = None,
) -> None:
    """Write a PNG of the window with the finished estimate of a plan.

    ``part`` brings the window into another state than at its start, and returns what of it is
    wanted. Works without a screen. Nothing of the user's settings is read or changed. Raises
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
        shown = window if part is None else part(window)
        app.processEvents()
        write_picture(path, shown.grab())
    finally:
        window.close()
        window.deleteLater()


# -- errors nobody foresaw -------------------------------------------------------------
# What can be foreseen (a bad file, a folder without permission) never comes here: it is
# said in a sentence at its place.

Rescue = Callable[[], str]
LOG_NAME: Final = "planner.log"
LOG_BYTES: Final = 500_000
_log = logging.getLogger(__name__)


def report_text(
    kind: type[BaseException], error: BaseException, trace: TracebackType | None
) -> str:
    """Versions and traceback, ready to paste."""
    lines = "".join(traceback.format_exception(kind, error, trace))
    return f"{details()}\n\n{lines}"


class ErrorDialog(QDialog):
    """Says what happened and where the work went; the report can be copied."""

    def __init__(self, report: str, fate: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("Something went wrong")
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        message = PlainLabel(
            "The program met a fault of its own and could not do what you asked. "
            f"{fate} You can go on working; save your plan under a new name to be safe.",
            self,
            wrap=True,
        )
        self.report = QPlainTextEdit(report, self)
        self.report.setReadOnly(True)
        self.report.setAccessibleName("Report")
        self.report.setFont(QFontDatabase.systemFont(QFontDatabase.SystemFont.FixedFont))
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close, self)
        copy = buttons.addButton("Copy report", QDialogButtonBox.ButtonRole.ActionRole)
        copy.setAccessibleName("Copy report")
        copy.clicked.connect(self._copy)
        leave = buttons.addButton("Close the program", QDialogButtonBox.ButtonRole.DestructiveRole)
        leave.setAccessibleName("Close the program")
        leave.clicked.connect(QApplication.closeAllWindows)
        buttons.rejected.connect(self.reject)
        buttons.button(QDialogButtonBox.StandardButton.Close).setDefault(True)
        theme.column(message, (self.report, 1), buttons, on=self, gap=theme.WIDE, edges=theme.WIDE)
        self.resize(80 * theme.RHYTHM, 50 * theme.RHYTHM)

    @Slot()
    def _copy(self) -> None:
        QGuiApplication.clipboard().setText(self.report.toPlainText())


class FaultReporter(QObject):
    """Takes over ``sys.excepthook`` and ``threading.excepthook``.

    Parameters
    ----------
    rescue
        Writes unsaved work to a safe place and says in a sentence what became of it.
    """

    _caught = Signal(str)

    def __init__(self, rescue: Rescue | None = None, window: QWidget | None = None) -> None:
        super().__init__()
        self._rescue: Rescue = rescue or _nothing_yet
        self._window = window
        self._dialog: ErrorDialog | None = None
        self._old_hooks = (sys.excepthook, threading.excepthook)
        # Faults of other threads are shown by the GUI thread: signals cross over.
        self._caught.connect(self._show)

    def watch(self, rescue: Rescue, window: QWidget | None) -> None:
        """Guard the work of a window from now on."""
        self._rescue, self._window = rescue, window

    def install(self) -> None:
        """Take over both hooks."""
        sys.excepthook = self._on_exception
        threading.excepthook = self._on_thread_exception

    def remove(self) -> None:
        """Give the hooks back."""
        sys.excepthook, threading.excepthook = self._old_hooks

    @property
    def dialog(self) -> ErrorDialog | None:
        """The dialog now open, if any."""
        return self._dialog

    def report(self, error: BaseException) -> None:
        """Show and write down a fault that was caught."""
        self._on_exception(type(error), error, error.__traceback__)

    def _on_exception(
        self, kind: type[BaseException], error: BaseException, trace: TracebackType | None
    ) -> None:
        if issubclass(kind, KeyboardInterrupt):
            QApplication.closeAllWindows()
            return
        report = report_text(kind, error, trace)
        _log.critical("%s", report)
        self._caught.emit(report)

    def _on_thread_exception(self, args: threading.ExceptHookArgs) -> None:
        error = args.exc_value or args.exc_type()
        self._on_exception(args.exc_type, error, args.exc_traceback)

    @Slot(str)
    def _show(self, report: str) -> None:
        if self._dialog is not None:
            # One dialog, however often a repeated fault (in painting, say) strikes.
            return
        try:
            fate = self._rescue()
        except Exception as error:  # noqa: BLE001 - ends up in the dialog
            # The fault itself must be shown all the same.
            _log.exception("The work could not be rescued")
            fate = f"Your unsaved work could NOT be kept aside ({error!r}); save it now."
        self._dialog = ErrorDialog(report, fate, self._window)
        self._dialog.finished.connect(self._forget)
        self._dialog.open()

    @Slot()
    def _forget(self) -> None:
        self._dialog = None


def _nothing_yet() -> str:
    return "No plan was open yet, so no work is lost."


def keep_log(folder: Path) -> logging.Handler | None:
    """Write warnings and faults to a rotating log in a folder, at most a megabyte in all.

    Returns the handler, to be taken off at the end; None where the folder cannot be written.
    """
    try:
        folder.mkdir(parents=True, exist_ok=True)
        handler = RotatingFileHandler(
            folder / LOG_NAME, maxBytes=LOG_BYTES, backupCount=1, encoding="utf-8",
            errors="backslashreplace",
        )  # fmt: skip
    except OSError:
        _log.warning("No log can be kept in %s", folder)
        return None
    handler.setLevel(logging.WARNING)
    handler.setFormatter(logging.Formatter("%(asctime)s %(levelname)s %(name)s: %(message)s"))
    logging.getLogger().addHandler(handler)
    return handler


def trace_crashes(folder: Path) -> TextIO | None:
    """Let a crash of Qt itself leave its trace in a file of the folder.

    Returns the open file, to be kept as long as the program runs; None where the folder
    cannot be written.
    """
    try:
        folder.mkdir(parents=True, exist_ok=True)
        trace = (folder / "crash.txt").open("a", encoding="utf-8")
    except OSError:
        _log.warning("No crash trace can be kept in %s", folder)
        return None
    faulthandler.enable(trace)
    return trace
