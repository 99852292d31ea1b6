"""The desk of the survey page: which survey, hole and task are shown, and every edit of surveys."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from time import monotonic

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QTabBar, QWidget

from planner.app import theme
from planner.app.fields.form import AlertLabel, NoteLabel, StillCombo, button, link_button
from planner.app.fields.panel import Workplace
from planner.app.plain import PlainLabel
from planner.plan import survey_edits
from planner.plan.edits import changed
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.refusal import refusal
from planner.plan.survey import Reading, Survey, SurveyGrid
from planner.plan.survey_edits import (
    add_readings,
    change_survey,
    laid_on,
    outline_read,
    remove_survey,
    replace_readings,
)
from planner.survey import layout


def canopies_read(plan: Plan) -> list[tuple[str, int | None]]:
    """The canopies that may be read, in words, each with the obstacle that carries it."""
    carried = (k for k, one in enumerate(plan.obstacles) if one.canopy is not None)
    tops = ((Place(PlaceKind.TOP, k).title(plan), k) for k in carried)
    return [("The plan's own canopy", None), *tops]


class SurveyDesk(QObject):
    """What all parts of the page share.

    Signals: ``changed`` after every change of surveys, of the one shown or of the plan;
    ``hole_changed`` when another hole is the next to be read; ``refused(str)`` with a
    sentence when an edit could not be made, and with an empty text when one was.
    """

    changed = Signal()
    hole_changed = Signal()
    refused = Signal(str)

    def __init__(self, workplace: Workplace, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.workplace = workplace
        self._key = ""
        self._other = ""
        self._hole = 1
        self._done = False
        self._editing = False
        self.clock: Callable[[], float] = monotonic
        self._begun: dict[str, float] = {}
        workplace.document.changed.connect(self._on_plan)
        self._follow()

    # -- what is shown ------------------------------------------------------------------

    @property
    def plan(self) -> Plan:
        """The plan as it stands."""
        return self.workplace.document.plan

    @property
    def surveys(self) -> tuple[Survey, ...]:
        """All surveys of the plan."""
        return self.plan.surveys

    @property
    def index(self) -> int:
        """Place of the survey shown, -1 when there is none."""
        keys = [survey.key for survey in self.surveys]
        return keys.index(self._key) if self._key in keys else -1

    @property
    def survey(self) -> Survey | None:
        """The survey shown."""
        return self.surveys[self.index] if self.index >= 0 else None

    @property
    def other(self) -> Survey | None:
        """The survey the one shown is set against, if there are two."""
        return next((s for s in self.surveys if s.key == self._other), None)

    @property
    def hole(self) -> int:
        """The hole that is read next, counted from 1."""
        return self._hole

    @property
    def done(self) -> bool:
        """Whether the last hole was read just now: none is at hand until one is chosen."""
        return self._done

    def choose(self, key: str) -> None:
        """Show another survey."""
        if key != self._key:
            self._done = False
            self._key = key
            self._follow()
            self.refused.emit("")
            self.changed.emit()

    def choose_other(self, key: str) -> None:
        """Set the survey shown against another."""
        if key != self._other:
            self._other = key
            self.changed.emit()

    def go_to(self, hole: int) -> None:
        """Make a hole the next to be read."""
        survey = self.survey
        if survey is None:
            return
        hole = min(max(hole, 1), len(survey.points))
        if hole != self._hole or self._done:
            self._hole, self._done = hole, False
            self.hole_changed.emit()

    def _on_plan(self, old: Plan, _new: Plan) -> None:
        self._follow()
        self.changed.emit()
        if not self._editing:
            self._go_where_it_changed(old)

    def _go_where_it_changed(self, old: Plan) -> None:
        """After undo or redo go to the one hole whose readings it changed, if there is one.

        Whoever takes a reading back means to read that hole again; one that is there again is
        read, as when it was typed.
        """
        survey = self.survey
        before = next((one for one in old.surveys if one.key == self._key), None)
        if survey is None or before is None or before.readings == survey.readings:
            return
        was, now = Counter(before.readings), Counter(survey.readings)
        lost, gained = was - now, now - was
        holes = {reading.hole for reading in (*lost, *gained)}
        if len(holes) == 1 and before.points == survey.points:
            (hole,) = holes
            if lost:
                self.go_to(hole)
            else:
                self._go_on(survey.next_hole(hole))

    def _follow(self) -> None:
        keys = [survey.key for survey in self.surveys]
        if self._key not in keys:
            self._key = keys[-1] if keys else ""
            self._hole = self._first_unread()
        if self._other not in keys or self._other == self._key:
            self._other = next((key for key in keys if key != self._key), "")
        if self.survey is not None:
            self._hole = min(self._hole, len(self.survey.points))
            self._done = self._done and self.survey.next_hole() is None

    def _first_unread(self) -> int:
        return (self.survey.next_hole() or 1) if self.survey is not None else 1

    # -- edits --------------------------------------------------------------------------

    def edit(self, label: str, build: Callable[[], Plan], merge_key: str | None = None) -> bool:
        """Ask the document for another plan; a sentence says why where that cannot be."""
        try:
            plan = build()
        except ValueError as error:
            self.refused.emit(refusal(error, self.workplace.display.unit))
            return False
        self.refused.emit("")
        self._editing = True
        try:
            self.workplace.document.apply(plan, label, merge_key)
        finally:
            self._editing = False
        return True

    def add(self, survey: Survey, label: str) -> bool:
        """Put a survey into the plan and show it."""
        if not self.edit(label, lambda: survey_edits.add_survey(self.plan, survey)):
            return False
        self.choose(survey.key)
        return True

    def lay_out(self) -> bool:
        """Begin a survey on the grid the lighting standard asks for."""
        try:
            survey = layout.new_survey(self.plan)
        except ValueError as error:
            self.refused.emit(refusal(error, self.workplace.display.unit))
            return False
        return self.add(survey, "Lay out a survey grid")

    def copy(self) -> bool:
        """Begin another survey on the same board."""
        survey = self.survey
        return survey is not None and self.add(
            layout.copied(self.plan, survey), f"Copy survey {survey.name}"
        )

    def remove(self) -> None:
        """Take the survey shown out of the plan."""
        survey, index = self.survey, self.index
        if survey is not None:
            self.edit(f"Remove survey {survey.name}", lambda: remove_survey(self.plan, index))

    def change(self, label: str, **parts: object) -> bool:
        """Replace parts of the survey shown."""
        index = self.index
        return index >= 0 and self.edit(label, lambda: change_survey(self.plan, index, **parts))

    def with_grid(self, **parts: object) -> Plan:
        """The plan with parts of the grid shown replaced; readings stay where they were taken.

        Raises
        ------
        ValueError
            If that cannot be, for example because a reading would lose its hole.
        """
        survey = self.survey
        if survey is None:
            return self.plan
        old, footprint = survey.grid or SurveyGrid(), outline_read(self.plan, survey)
        grid = changed(old, **parts)
        if "excluded" not in parts:
            excluded = layout.exclusions_moved(old, grid, footprint)
            grid = grid.model_copy(update={"excluded": excluded})
        return self._with(layout.regridded(survey, grid, footprint))

    def change_grid(self, label: str, **parts: object) -> bool:
        """Change the grid of the survey shown."""
        return self.edit(label, lambda: self.with_grid(**parts))

    def toggle_place(self, place: int) -> bool:
        """Leave a place of the grid out, or take it in again."""
        survey = self.survey
        if survey is None:
            return False
        out = survey.grid is not None and place in survey.grid.excluded
        label = f"{'Take in' if out else 'Leave out'} place {place}"
        footprint = outline_read(self.plan, survey)
        return self.edit(
            label, lambda: self._with(layout.excluded_toggled(survey, place, footprint))
        )

    def lying_on(self, obstacle: int | None) -> Plan:
        """The plan with the survey shown read on the canopy of an obstacle; None: on its own.

        Holes without any reading are laid out anew over it.

        Raises
        ------
        ValueError
            If no hole of the grid would be left.
        """
        plan, survey = self.plan, self.survey
        if survey is None:
            return plan
        on_top, outline = laid_on(plan, obstacle)
        survey = changed(survey, on_top=on_top)
        if not survey.readings:
            survey = layout.regridded(survey, layout.standard_grid(outline), outline)
        return self._with(survey)

    def _with(self, survey: Survey) -> Plan:
        """The plan with the survey shown laid out like another one."""
        return change_survey(
            self.plan,
            self.index,
            grid=survey.grid,
            points=survey.points,
            readings=survey.readings,
            on_top=survey.on_top,
        )

    def read(self, values: Sequence[float]) -> bool:
        """Keep readings at the present hole, beside those already there, and go on."""
        survey, hole = self.survey, self._hole
        if survey is None:
            return False
        at = self._seconds(survey)
        new = tuple(Reading(hole=hole, value=value, at=at) for value in values)
        done = self.edit(f"Read hole {hole}", lambda: add_readings(self.plan, self.index, new))
        if done and self.survey is not None:
            self._go_on(self.survey.next_hole(hole))
        return done

    def _seconds(self, survey: Survey) -> float | None:
        """Seconds since the first reading of a survey; None where that was another day."""
        if not survey.readings:
            self._begun[survey.key] = self.clock()
        begun = self._begun.get(survey.key)
        return None if begun is None else round(self.clock() - begun, 1)

    def _go_on(self, hole: int | None) -> None:
        if hole is not None:
            self.go_to(hole)
        else:
            self._done = True
            self.hole_changed.emit()

    def set_aside(self, hole: int, *, aside: bool) -> bool:
        """Let the readings of a hole count no longer, or again."""
        label = f"{'Set aside' if aside else 'Take back in'} hole {hole}"
        return self.edit(
            label, lambda: survey_edits.set_aside(self.plan, self.index, hole, aside=aside)
        )

    def set_readings(self, hole: int, values: Sequence[float]) -> bool:
        """Give a hole exactly these readings."""
        label = f"Readings of hole {hole}" if values else f"Clear hole {hole}"
        return self.edit(label, lambda: replace_readings(self.plan, self.index, hole, values))

    def take_back(self) -> bool:
        """Take the last reading of the present hole out."""
        survey = self.survey
        values = survey.values_at(self._hole) if survey is not None else ()
        return bool(values) and self.edit(
            f"Take back a reading of hole {self._hole}",
            lambda: replace_readings(self.plan, self.index, self._hole, values[:-1]),
        )


# -- the top of the page, and what is offered while there is no survey --------------------

TASKS = ("&Board", "&Record", "Readin&gs", "&Overlay", "&Compare", "C&alibrate")
BOARD, RECORD, READINGS, OVERLAY, COMPARE, CALIBRATE = range(6)


class Header(QWidget):
    """Signals ``paste_wanted``, ``file_wanted``, ``task_changed(int)``."""

    paste_wanted = Signal()
    file_wanted = Signal()
    task_changed = Signal(int)

    def __init__(self, desk: SurveyDesk) -> None:
        super().__init__()
        self.desk = desk
        self.surveys = StillCombo(name="Survey")
        self.surveys.setMinimumContentsLength(20)
        self.new_button = button("New grid", "Lay out the board of another survey.")
        self.copy_button = button(
            "Copy", "Another survey on the same board and under the same conditions, to be read."
        )
        self.remove_button = button(
            "Remove", "Take this survey out of the plan (undo brings it back).", act=desk.remove
        )
        self.paste_button = button("Paste", "Readings copied from a spreadsheet (Ctrl+V).")
        self.file_button = button("Import…", "Readings from a CSV, TSV, XLSX or ODS file.")
        self.tasks = QTabBar()
        self.tasks.setAccessibleName("Steps of a survey")
        self.tasks.setDrawBase(False)
        self.tasks.setExpanding(False)
        for text in TASKS:
            self.tasks.addTab(text)
        self.sentence = PlainLabel(name="What the survey says", wrap=True)
        self.sentence.setAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
        self.sentence.setFont(theme.sized(self.sentence.font(), 1.15))
        self.alert = AlertLabel()
        self._arrange()
        self.surveys.activated.connect(lambda _k: desk.choose(self.surveys.currentData()))
        self.new_button.clicked.connect(desk.lay_out)
        self.copy_button.clicked.connect(desk.copy)
        self.paste_button.clicked.connect(self.paste_wanted)
        self.file_button.clicked.connect(self.file_wanted)
        self.tasks.currentChanged.connect(self.task_changed)
        desk.refused.connect(self.alert.say)

    def _arrange(self) -> None:
        self._left = QWidget()
        theme.row(
            self.surveys, self.new_button, self.copy_button, self.remove_button, theme.WIDE,
            self.paste_button, self.file_button, theme.REST, on=self._left, gap=theme.RHYTHM,
        )  # fmt: skip
        tasks = self.tasks, 0, Qt.AlignmentFlag.AlignBottom
        self._line = theme.row((self._left, 1), tasks, gap=theme.RHYTHM)
        theme.column(self._line, self.sentence, self.alert, on=self, gap=theme.HALF)

    def resizeEvent(self, event: QResizeEvent) -> None:
        # Room for two lines from the start: the drawing must not jump when the words change.
        lines = 2 if self.width() < 1500 else 1
        self.sentence.setMinimumHeight(lines * self.sentence.fontMetrics().lineSpacing() + 2)
        # Where the font is large the steps get a line of their own.
        wanted = self._left.sizeHint().width() + self.tasks.sizeHint().width() + theme.RHYTHM
        fits = wanted <= self.width()
        theme.lay_beside(self._line, fits)
        super().resizeEvent(event)

    def refresh(self) -> None:
        """Follow the surveys of the plan."""
        self.surveys.offer([(survey.name, survey.key) for survey in self.desk.surveys])
        self.surveys.setCurrentIndex(self.desk.index)


TITLE = "Measure the light, and lay it over the estimate"
HOW = (
    "Put the sensor into every hole of the board, level and at the same height each time. Let the "
    "lamp warm up for 20 minutes first, and stand where you throw no shadow. Averages over many "
    "holes tell linings apart far better than a single spot."
)


class Invitation(QWidget):
    """Buttons ``lay_out``, ``paste`` and ``open_file``."""

    def __init__(self) -> None:
        super().__init__()
        self.lay_out = button("Lay out a grid", "A board of holes for this space, to be printed.")
        self.paste = button("Paste readings", "A table copied from a spreadsheet (Ctrl+V).")
        self.open_file = link_button("or import a CSV, TSV, XLSX or ODS file…")
        title = PlainLabel(TITLE, wrap=True)
        title.setFont(theme.sized(title.font(), 1.5, bold=True))
        how = NoteLabel(HOW)
        buttons = theme.row(gap=theme.RHYTHM)
        for one in (self.lay_out, self.paste):
            one.setMinimumHeight(36)
            buttons.addWidget(one)
        inside = QWidget()
        inside.setMaximumWidth(560)
        theme.column(
            title, how, buttons, (self.open_file, 0, Qt.AlignmentFlag.AlignHCenter), on=inside,
            gap=theme.WIDE, edges=None,
        )  # fmt: skip
        theme.row(
            theme.REST, (inside, 4, Qt.AlignmentFlag.AlignVCenter), theme.REST, on=self, edges=None
        )
