"""The window: brings document, page, estimator, files and actions together. Wiring only."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import Qt, QUrl, Signal, Slot
from PySide6.QtGui import (
    QCloseEvent,
    QDesktopServices,
    QDragEnterEvent,
    QDropEvent,
    QGuiApplication,
)
from PySide6.QtWidgets import QApplication, QGraphicsView, QMainWindow

from planner.app import theme
from planner.app.actions import EXAMPLES, WindowActions
from planner.app.canvas.ink import ZOOM_STEP
from planner.app.display import Display, DisplayState, SelectionModel
from planner.app.document import Document
from planner.app.edit_steps import EditSteps
from planner.app.estimator import Estimator
from planner.app.frame import HistoryDialog, PageBar, Pages, SettingsDialog, StateLine, ViewChoices
from planner.app.help import APP_TITLE, PAGES, AboutDialog, HelpWindow, app_icon
from planner.app.jobs import Lane, shut_down
from planner.app.lamp_files import LampFileCommands
from planner.app.notices import Notices
from planner.app.pages.side.variants import VariantSteps
from planner.app.pages.sketch.page import SketchPage
from planner.app.plan_desk import PlanDesk
from planner.app.plots.exported import DrawingOut
from planner.app.questions import FILTERS, Questions, in_file_name, write_export, write_picture
from planner.app.settings import RecentPlans, Settings, keep_place, restore_place
from planner.app.tour import Tour
from planner.catalogue.library import demo_plan, load_catalogue, new_plan
from planner.estimate.result import Estimate, EstimateOptions
from planner.files.disk import reason_of
from planner.files.store import LAMP_SUFFIXES, FileKind
from planner.folders import user_folder
from planner.plan.groups import Edge
from planner.plan.plan import Plan
from planner.units import in_unit

if TYPE_CHECKING:
    from planner.app.pages.side.page import SideBySidePage
    from planner.app.pages.survey.page import SurveyPage
    from planner.app.report_window import ReportWindow
    from planner.estimate.outlook import Outlook

MESSAGE_MS = 6000
STILL_COMPUTED = "The light is still being computed; export it in a moment."
EXPORTS = (("csv", ".csv"), ("json", ".json"), ("picture", ".png"))


class MainWindow(QMainWindow):
    """One open plan with its page, menus and status bar.

    Parameters left out are made as the program needs them; tests and the picture of the
    window give their own. Signals: ``another_wanted`` for one more window, ``ended`` when this
    one was closed and gave everything back.
    """

    another_wanted = Signal()
    ended = Signal()

    def __init__(
        self,
        plan: Plan | None = None,
        *,
        settings: Settings | None = None,
        estimator: Estimator | None = None,
        questions: Questions | None = None,
    ) -> None:
        super().__init__()
        self.settings = settings or Settings.of_user()
        self.catalogue = load_catalogue()
        self.document = Document(plan or new_plan(self.catalogue), self)
        self.selection = SelectionModel(self)
        self.display = Display(self.settings.display_state, self)
        self.estimator = estimator or Estimator(parent=self)
        self.recent = RecentPlans(self.settings, self)
        self.desk = PlanDesk(
            self.document,
            self.settings,
            questions or Questions(self),
            self.recent,
            self,
            synchronous=self.estimator.lane.synchronous,
        )
        self.notices = Notices(self, self.settings)
        self.choices = ViewChoices(self.display, self.settings, self)
        self.estimate: Estimate | None = None
        self._help: HelpWindow | None = None
        self._dragging = self._ended = False

        self.page: SketchPage = SketchPage(
            self.document, self.selection, self.display, self.catalogue, self
        )
        makers = {"side": self._make_side, "survey": self._make_survey}
        self.pages = Pages("sketch", self.page, makers, self)
        self.variants = VariantSteps(self.document, self)
        plan_view = self.page.plan_view
        self.steps = EditSteps(self.page.workplace, self, pointer=lambda: plan_view.pointer_inside)
        self.page.spectra.remember_in(self.settings)
        self.page.shelf.remember_in(self.settings)
        self.lamp_files = LampFileCommands(
            self.page.workplace,
            self.steps,
            self.page.spectra,
            self.desk.questions,
            self.settings,
            self,
        )
        self.actions_ = WindowActions(self, self.document.undo_stack, self._handlers())
        self._build()
        self._connect()
        self._show_name()
        self._follow_selection()
        cells = self.display.state.cells
        self.estimator.cells = (cells, cells)
        self.estimator.edit(self.document.plan)

    @property
    def questions(self) -> Questions:
        """Who asks the user."""
        return self.desk.questions

    def tell(self, message: str) -> None:
        """Show a message in the status bar for a while."""
        self.statusBar().showMessage(in_unit(message, self.display.unit), MESSAGE_MS)

    # -- building -----------------------------------------------------------------------

    def _handlers(self) -> dict[str, Callable[..., Any]]:
        return {
            "new": lambda: self.desk.begin(new_plan(self.catalogue), "An empty plan"),
            "open": self.desk.choose_and_open,
            **{
                f"example_{key}": lambda key=key: self.desk.begin(
                    demo_plan(key), "An example; all of it is invented"
                )
                for key, *_ in EXAMPLES
            },
            "save": self.desk.save,
            "save_as": self.desk.save_as,
            "lamp_from_file": self.lamp_files.choose,
            "export_lamp": self.lamp_files.export,
            **{f"export_{k}": lambda s=s: self.export(s) for k, s in EXPORTS},
            "export_drawing": lambda: self.map_out(DrawingOut.ask_and_save),
            **self.page.ways_out(self.questions),
            "copy_map": lambda: self.map_out(DrawingOut.copy_picture),
            "report": self.show_report,
            "new_window": self.another_wanted.emit,
            "close": self.close,
            "quit": QApplication.closeAllWindows,
            "keep_variant": lambda: self.variants.keep(self.display.unit),
            **self.variants.handlers(),
            **{
                f"page_{k}": lambda _on, k=k: self.pages.go(k) for k in ("sketch", "side", "survey")
            },
            "settings": self._open_settings,
            "fit": self.page.fit,
            "zoom_in": lambda: self.page.drawing_in_hand.zoom(ZOOM_STEP),
            "zoom_out": lambda: self.page.drawing_in_hand.zoom(1 / ZOOM_STEP),
            "measure": self.page.plan_view.measure,
            "large_side": self.page.enlarge_side,
            "history": lambda: HistoryDialog(self.document.undo_stack, self).show(),
            "full_screen": self._show_full_screen,
            **{f"help_{page}": partial(self.show_help, page) for page, _title in PAGES},
            "tour": lambda: self.tour.begin(),  # noqa: PLW0108 - made later
            "data_folder": self._open_data_folder,
            "about": lambda: AboutDialog(self).open(),
            **self.steps.handlers(),
            **self.choices.handlers(),
        }

    def _build(self) -> None:
        self.setWindowIcon(app_icon())
        self.setAcceptDrops(True)
        self.setCentralWidget(self.pages)
        for view in self.page.findChildren(QGraphicsView):
            # A scene takes every drag for itself; a file dropped on the drawing is ours.
            view.setAcceptDrops(False)
            view.viewport().setAcceptDrops(False)
        self.menuBar().setAccessibleName("Menus")
        self.actions_.fill(self.menuBar())
        self.recent.attach(self.actions_.menus["recent"])
        self.steps.attach(self.actions_.menus["add_lamp_kind"])
        self.page.choose_map_by(self.actions_)
        for drawing in (self.page.plan_view, self.page.elevation):
            drawing.share_actions(
                {key: self.actions_[key] for key in self.actions_}, self.actions_.menus["arrange"]
            )
            drawing.put_here.connect(self.steps.put_here)
            drawing.measuring_changed.connect(self._on_measuring)
        self.choices.attach(self.actions_)
        names = {"sketch": "Sketch", "side": "Side by side", "survey": "Survey"}
        self.page_bar: PageBar = PageBar(self.pages, names)
        self.menuBar().setCornerWidget(self.page_bar, Qt.Corner.TopRightCorner)
        self.actions_["page_sketch"].setChecked(True)
        self.state_line = StateLine(self)
        self.tour: Tour = Tour(self)
        self.statusBar().addPermanentWidget(self.state_line)
        self.statusBar().setSizeGripEnabled(False)
        self.statusBar().setContentsMargins(theme.RHYTHM, 0, theme.RHYTHM, 0)
        restore_place(self, self.settings)
        self.page.plan_view.setFocus()

    def _connect(self) -> None:
        self.document.changed.connect(self._on_plan_changed)
        self.document.path_changed.connect(self._show_name)
        self.document.dirty_changed.connect(self.setWindowModified)
        self.display.changed.connect(self._on_display_changed)
        self.selection.changed.connect(self._follow_selection)
        self.page.welcome.begun.connect(lambda plan: self.desk.begin(plan, "Your own space"))
        self.page.welcome.open_wanted.connect(self.desk.choose_and_open)
        self.page.welcome.tour_wanted.connect(self.tour.begin)
        self.page.dragging_changed.connect(self._on_dragging_changed)
        self.recent.chosen.connect(self.desk.open_aside)
        self.desk.meant_otherwise.connect(self._open_otherwise)
        self.pages.switched.connect(self._on_page)
        said = (self.desk.told, self.variants.told, self.variants.refused, self.steps.told)
        for one in (*said, self.steps.refused, self.lamp_files.told, self.document.told):
            one.connect(self.tell)
        self.estimator.estimated.connect(self.show_estimate)
        self.estimator.estimated.connect(self.choices.offer)
        self.estimator.outlook_ready.connect(self._on_outlook)
        self.estimator.weighed.connect(self.page.worth.take)
        self.page.worth.wanted.connect(self.estimator.weigh)
        self.page.details.cautions_asked.connect(lambda: self.show_help("cautions"))
        self.estimator.failed.connect(self._on_failed)
        self.estimator.busy_changed.connect(self.state_line.show_busy)
        self.estimator.progressed.connect(self.state_line.show_progress)
        hints = QGuiApplication.styleHints()
        hints.colorSchemeChanged.connect(self._on_scheme_changed)
        hints.accessibility().contrastPreferenceChanged.connect(self._on_scheme_changed)

    # -- plan and estimate --------------------------------------------------------------

    @Slot(object, object)
    def _on_plan_changed(self, old: Plan, new: Plan) -> None:
        self.selection.follow(new)
        self._follow_selection()
        if new.name != old.name:
            self._show_name()
        self.estimator.edit(new, self._dragging)

    @Slot(bool)
    def _on_dragging_changed(self, dragging: bool) -> None:
        self._dragging = dragging
        if not dragging:
            self.estimator.settle()

    @Slot(object)
    def show_estimate(self, estimate: Estimate) -> None:
        """Show a finished estimate."""
        self.estimate = estimate
        self.page.show_estimate(estimate)
        self.state_line.show_estimate(estimate)

    @Slot(object)
    def _on_outlook(self, outlook: Outlook) -> None:
        # The plan may have moved on in the moment the answer took to arrive.
        if outlook.plan == self.document.plan:
            self.page.show_outlook(outlook)

    @Slot(str)
    def _on_failed(self, message: str) -> None:
        self.page.show_failure(message)
        self.state_line.show_failure(message)

    @Slot(object)
    def _on_display_changed(self, state: DisplayState) -> None:
        cells = (state.cells, state.cells)
        if cells != self.estimator.cells:
            self.estimator.cells = cells
            self.estimator.edit(self.document.plan)

    @Slot()
    def _follow_selection(self) -> None:
        on_sketch = self.pages.current == "sketch"
        chosen = self.steps.chosen if on_sketch else ()
        lamp_leads = self.steps.lamp is not None and on_sketch
        # Off, they leave their keys to the drawing (Delete takes a corner away there).
        for key in ("duplicate", "copy", "cut", "remove"):
            self.actions_[key].setEnabled(bool(chosen))
        for key in (*(f"align_{edge}" for edge in Edge), "shares_across", "shares_deep"):
            self.actions_[key].setEnabled(len(chosen) > 1)
        for key in ("gaps_across", "gaps_deep"):
            self.actions_[key].setEnabled(len(chosen) > 2)
        for key in ("paste", "select_lamps"):
            self.actions_[key].setEnabled(on_sketch)
        self.actions_["export_lamp"].setEnabled(lamp_leads)
        self.actions_["level_lamps"].setEnabled(lamp_leads and len(self.document.plan.lamps) > 1)

    @Slot(bool)
    def _on_measuring(self, on: bool) -> None:
        self.actions_["measure"].setChecked(on)
        for drawing in (self.page.plan_view, self.page.elevation):
            drawing.measure(on)

    # -- pages --------------------------------------------------------------------------

    def _make_side(self) -> SideBySidePage:
        from planner.app.pages.side.page import SideBySidePage  # noqa: PLC0415 - when asked

        made = SideBySidePage(
            self.document, self.display, self.page.shelf, self.variants, self.questions
        )
        self.notices.watch(made)
        made.told.connect(self.tell)
        made.scheduled.connect(self.page.growing.take)
        made.sketch_asked.connect(lambda: self.pages.go("sketch"))
        made.survey_asked.connect(lambda: self.pages.go("survey"))
        made.show_section(self.page.plan_view.section)
        made.linked.section_moved.connect(self.page.plan_view.set_section)
        self.page.plan_view.section_changed.connect(made.show_section)
        return made

    def _make_survey(self) -> SurveyPage:
        from planner.app.pages.survey.page import SurveyPage  # noqa: PLC0415 - when asked

        made = SurveyPage(self.page.workplace, self.questions, self.settings)
        self.notices.watch(made)
        made.told.connect(self.tell)
        return made

    @Slot(object, object)
    def _open_otherwise(self, path: Path, kind: FileKind) -> None:
        """A file that is no plan goes through the door it was made for."""
        if kind is FileKind.LAMP:
            self.lamp_files.show_file(path)
            return
        self.pages.go("survey")
        page: Any = self.pages.made("survey")
        page.importing.read_file(path)

    @Slot(str)
    def _on_page(self, key: str) -> None:
        self.actions_[f"page_{key}"].setChecked(True)
        self._follow_selection()

    # -- window -------------------------------------------------------------------------

    @Slot()
    def _show_name(self) -> None:
        self.setWindowTitle(f"{self.desk.name}[*] - {APP_TITLE}")
        path = self.document.path
        self.setWindowFilePath("" if path is None else str(path))

    def export(self, ending: str) -> bool:
        """Ask where to, and write the map (``.csv``, ``.json``) or the window (``.png``)."""
        picture = self.grab() if ending == ".png" else None
        estimate = self.estimate
        if picture is None and (estimate is None or self.estimator.busy):
            self.tell(STILL_COMPUTED)
            return False
        folder = self.settings.folder
        proposal = folder / f"{in_file_name(self.desk.name) or 'plan'}{ending}"

        def write(path: Path) -> None:
            if picture is not None:
                write_picture(path, picture)
            elif estimate is not None:
                write_export(path, ending, estimate)

        out = "Export", proposal, FILTERS[ending], "export", write
        return self.questions.save_into(*out, self.tell) is not None

    def map_out(self, way: Callable[[DrawingOut], None]) -> None:
        """Let the map go out one way, drawn as in the report."""
        if self.estimate is None or self.estimator.busy:
            self.tell(STILL_COMPUTED)
            return
        from planner.reports.charts import whole_map  # noqa: PLC0415 - only when asked

        name = f"{self.desk.name} map"
        drawn = whole_map(self.estimate, self.display.unit, self.page.plan_view.figure)
        way(DrawingOut(drawn, name, self.questions))

    def show_report(self) -> ReportWindow:
        """Open the report of the plan as it stands."""
        from planner.app.report_window import Asked, ReportWindow  # noqa: PLC0415 - when asked

        options = EstimateOptions(cells=self.estimator.cells)
        survey: Any = self.pages.made("survey")
        answer = None if survey is None else survey.fitting.answer
        plan = self.document.plan
        calibration = answer.calibration if answer is not None and answer.fits(plan) else None
        asked = Asked(plan, self.estimate, options, self.display.unit, calibration)
        dialog = ReportWindow(
            asked, self.desk.name, self.settings, self.questions, self,
            synchronous=self.estimator.lane.synchronous,
        )  # fmt: skip
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.told.connect(self.tell)
        self.notices.watch(dialog)
        dialog.open()
        return dialog

    def show_help(self, page: str) -> None:
        """Open the help window at a page."""
        if self._help is None:
            self._help = HelpWindow(self)
        if page == "cautions":
            self._help.show_cautions(self.document.plan, self.display.unit)
        else:
            self._help.show_page(page)

    def _open_settings(self) -> None:
        dialog = SettingsDialog(self.choices, self)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.open()

    def _show_full_screen(self, on: bool) -> None:
        if on:
            self.showFullScreen()
        else:
            self.showNormal()

    def _open_data_folder(self) -> None:
        folder = user_folder()
        try:
            folder.mkdir(parents=True, exist_ok=True)
        except OSError as error:
            self.tell(f"The folder {folder} cannot be made: {reason_of(error)}.")
            return
        if not QDesktopServices.openUrl(QUrl.fromLocalFile(str(folder))):
            self.tell(f"Your own lamps and linings are kept in {folder}")

    @Slot()
    def _on_scheme_changed(self) -> None:
        theme.apply(self.settings.values.theme)

    # -- Qt events ----------------------------------------------------------------------

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        if _dropped_file(event) is not None or self._dropped_lamp(event):
            event.acceptProposedAction()

    def _dropped_lamp(self, event: QDropEvent) -> str:
        """The text that is being dropped, where it speaks of a lamp and can be hung."""
        from planner.catalogue.data_sheet import says_lamp  # noqa: PLC0415 - when dropped

        text = event.mimeData().text() if not event.mimeData().hasUrls() else ""
        return text if self.pages.current == "sketch" and says_lamp(text) else ""

    def dropEvent(self, event: QDropEvent) -> None:
        path = _dropped_file(event)
        if path is not None:
            event.acceptProposedAction()
            if path.suffix.lower() in LAMP_SUFFIXES:
                self.lamp_files.show_file(path)
            else:
                self.desk.open_aside(path)
        elif text := self._dropped_lamp(event):
            event.acceptProposedAction()
            view = self.page.plan_view
            self.steps.hang_data_sheet(
                text, view.place_inside(view.mapFrom(self, event.position()))
            )

    def closeEvent(self, event: QCloseEvent) -> None:
        if not self.desk.may_leave():
            event.ignore()
            return
        event.accept()
        if not self._ended:
            self._ended = True
            self._end()
            self.ended.emit()

    def _end(self) -> None:
        """Give everything back once: thread, place, file and recovery copy."""
        hints = QGuiApplication.styleHints()
        hints.colorSchemeChanged.disconnect(self._on_scheme_changed)
        hints.accessibility().contrastPreferenceChanged.disconnect(self._on_scheme_changed)
        # All lanes at once: one that is slow to stop must not keep the next one waiting.
        shut_down([self.estimator.lane, *self.findChildren(Lane)])
        self.estimator.shutdown()
        for key in ("side", "survey"):
            made = self.pages.made(key)
            if made is not None:
                made.shutdown()  # type: ignore[attr-defined]
        keep_place(self, self.settings)
        self.desk.close()


def _dropped_file(event: QDropEvent) -> Path | None:
    """The one local file that is being dropped, if it is one."""
    urls = event.mimeData().urls()
    if len(urls) != 1 or not urls[0].isLocalFile():
        return None
    return Path(urls[0].toLocalFile())
