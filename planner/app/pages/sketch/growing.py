"""Growing time: a slider that moves canopy, heights, output and day along the schedule."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtWidgets import QSizePolicy, QSlider, QWidget

from planner.app import theme
from planner.app.fields.form import NoteLabel, ProgressLine, link_button
from planner.app.fields.panel import BURST_MS, Workplace
from planner.app.pages.sketch.asked import Asked
from planner.app.plain import PlainLabel, explain
from planner.plan.edits import changed
from planner.plan.lit import Depends, depends, ungrown
from planner.plan.place import judged
from planner.plan.plan import Plan
from planner.plan.tiers import hangs, lamps_at, level_of, lighting
from planner.units import LengthUnit, format_length, format_number

if TYPE_CHECKING:
    from planner.estimate.stages import Schedule

_PER_WEEK = 7
QUICK = "Found quickly; Side by side, Schedule, finds it with care."
STEP_NAME = "Set to a week of the schedule"


def steady(plan: Plan) -> Depends:
    """What the answers of a schedule depend on: all but what the slider itself moves."""
    return depends(plan, ungrown, stages=True)


def week_words(plan: Plan, day: int, name: str, unit: LengthUnit) -> str:
    """Where the slider stands: 'Week 3, day 2: seedlings; canopy 12 cm, lamps 30 cm above ...'."""
    from planner.estimate.stages import when  # noqa: PLC0415 - heavy, and there by now

    text = f"{when(day / _PER_WEEK)}: {name}"
    lamps, level = lamps_at(plan, lighting(plan)), level_of(plan, judged(plan))
    above = format_length(hangs(plan, lamps[0]), unit)
    outputs = [format_number(lamp.output_percent, 0) for lamp in lamps]
    return (
        f"{text}. Canopy {format_length(level, unit)}, "
        f"{'lamp' if len(lamps) == 1 else 'lamps'} "
        f"{above} above it, {max(outputs, key=float)} %, "
        f"{format_number(plan.photoperiod_hours, 1)} h"
    )


class GrowingLine(QWidget):
    """Shown where the plan has a schedule: asks once for its answers, then the slider moves.

    ``dragging_changed`` is true while the slider moves; each stay of it is one undo step.
    """

    dragging_changed = Signal(bool)

    def __init__(self, asked: Asked, work: Workplace) -> None:
        super().__init__()
        self._asked, self._work = asked, work
        self._found: Schedule | None = None
        self._careful: tuple[Depends, Schedule] | None = None
        self._of: Depends | None = None
        self._moving = False
        self.button = link_button(
            "Grow along the schedule",
            "Finds height and output for each stage of the schedule; a slider then moves canopy, "
            "lamps and day through its weeks.",
            act=self.ask,
        )
        self.slider = QSlider(Qt.Orientation.Horizontal)
        self.slider.setAccessibleName("Week of the schedule")
        self.slider.setSingleStep(1)
        self.slider.setPageStep(_PER_WEEK)
        self.words = PlainLabel()
        self.note = NoteLabel()
        self.progress = ProgressLine("Finding the stages of the schedule")
        for text in (self.words, self.note):
            # On a small window it takes more lines rather than asking for a wider one.
            text.setWordWrap(True)
            policy = QSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
            policy.setHeightForWidth(True)
            text.setSizePolicy(policy)
        theme.row(
            self.button, (self.slider, 2), (self.progress, 1), (self.words, 3), (self.note, 3),
            on=self, gap=theme.RHYTHM, edges=(theme.RHYTHM, 0, theme.RHYTHM, 0),
        )  # fmt: skip
        self._rest = QTimer(self, singleShot=True, interval=BURST_MS)
        self._rest.timeout.connect(self._end)
        self.slider.valueChanged.connect(self._go)
        self.slider.sliderReleased.connect(self._end)
        asked.grown.connect(self._on_answer)
        asked.lane.progressed.connect(self._on_progress)
        work.document.changed.connect(lambda _old, new: self._on_plan(new))
        work.display.changed.connect(lambda _state: self._say())
        self._show()
        self._on_plan(work.document.plan)

    def ask(self) -> None:
        """Look for height and output of each stage."""
        plan = self._work.document.plan
        self._of = steady(plan)
        if self._careful is not None and self._careful[0] == self._of:
            self._on_answer(self._careful[1])
            return
        self._show(asking=True)
        self._asked.grow(plan, self._work.display.state)

    def take(self, found: Schedule, plan: Plan) -> None:
        """A schedule was found with care elsewhere: it is moved along instead of a quick one."""
        self._careful = steady(plan), found
        if self._found is not None and self._of == self._careful[0]:
            self._found = found
            self._say()

    def _on_progress(self, topic: object, fraction: float) -> None:
        if topic == "schedule":
            self.progress.reach(fraction)

    def _on_answer(self, found: Any) -> None:
        if self._of is None or self._of != steady(self._work.document.plan):
            return
        careful = self._careful
        self._found = careful[1] if careful is not None and careful[0] == self._of else found
        self.slider.blockSignals(True)
        self.slider.setRange(0, max(round(found.weeks * _PER_WEEK) - 1, 0))
        self.slider.setValue(0)
        self.slider.blockSignals(False)
        self._show()
        self._go(0)
        self._end()

    def _on_plan(self, plan: Plan) -> None:
        self.setVisible(bool(plan.schedule and plan.lamps))
        if self._moving or self._of is None:
            return
        if self._of != steady(plan):
            self._of = self._found = None
            self._asked.lane.drop("schedule")
            self._show()
        elif self._found is not None:
            self._say()  # an undo may have gone back to another week

    def _show(self, *, asking: bool = False) -> None:
        known = self._found is not None
        self.button.setVisible(not known and not asking)
        self.progress.setVisible(asking)
        if asking:
            self.progress.reset()
        self.slider.setVisible(known)
        self.words.setVisible(known)
        self.note.setVisible(asking)
        self.note.setText("Finding height and output of each stage …" if asking else "")

    def _go(self, day: int) -> None:
        found = self._found
        if found is None:
            return
        made = found.at((day + 0.5) / _PER_WEEK)
        if made is None:
            self._say()
            return
        if not self._moving:
            self._moving = True
            self._work.document.end_gesture()
            self.dragging_changed.emit(True)
        plan = self._work.document.plan
        grown = changed(plan.with_setup(made), target=made.target)
        self._work.document.apply(grown, STEP_NAME, "growing time")
        self._say()
        self._rest.start()

    def _end(self) -> None:
        """The slider has come to rest: what it did since is one step."""
        self._rest.stop()
        if self._moving and not self.slider.isSliderDown():
            self._moving = False
            self._work.document.end_gesture()
            self.dragging_changed.emit(False)

    def _say(self) -> None:
        found, day = self._found, self.slider.value()
        if found is None:
            return
        week = (day + 0.5) / _PER_WEEK
        stage = [one for one in found.stages if one.first_week <= week][-1]
        text = stage.words
        if stage.plan is not None:
            text = week_words(
                self._work.document.plan, day, stage.stage.name, self._work.display.unit
            )
        if self._careful is None or self._careful[1] is not found:
            text = f"{text}. {QUICK}" if stage.plan is not None else text
        self.words.setText(text)
        explain(self.words, text, *stage.warnings)
        self.slider.setAccessibleDescription(text)
