"""What all parts of the page share: choices in force, places pointed at, how one asks."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from enum import StrEnum
from typing import Any

from PySide6.QtCore import QObject, QTimer, Signal
from PySide6.QtWidgets import QProgressBar, QPushButton, QWidget

from planner.app.canvas.items import Section
from planner.app.fields.form import button
from planner.app.fields.panel import FieldForm
from planner.app.jobs import Job, Lane
from planner.app.plain import PlainLabel
from planner.estimate.compare import PLAN_SIDE, Identity, Wishes
from planner.plan.space import Point
from planner.units import in_unit


class Shows(StrEnum):
    """What the maps show."""

    LIGHT = "light"
    DIFFERENCE = "difference"
    RATIO = "ratio"


@dataclass(frozen=True)
class LinkedState:
    """``chosen`` and ``baseline`` are sides by identity.

    Inside ``margin`` (a fraction) two options are equal for the grower's purpose.
    """

    shows: Shows = Shows.LIGHT
    own_scale: bool = False
    open_air: bool = False
    baseline: Identity = PLAN_SIDE
    chosen: Identity = PLAN_SIDE
    margin: float = 0.05
    wishes: Wishes = field(default_factory=Wishes)


class Linked(QObject):
    """Emits ``changed(new, old)`` for the choices; pointer and section have their own."""

    changed = Signal(object, object)
    pointer_moved = Signal(object)
    section_moved = Signal(object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._state = LinkedState()
        self._pointer: Point | None = None
        self._section: Section | None = None

    @property
    def state(self) -> LinkedState:
        """The choices in force."""
        return self._state

    @property
    def pointer(self) -> Point | None:
        """Where the pointer is in the space, in metres; None where it is not."""
        return self._pointer

    @property
    def section(self) -> Section | None:
        """The two ends of the section line in metres."""
        return self._section

    def update(self, **choices: Any) -> None:
        """Change some choices."""
        old, self._state = self._state, replace(self._state, **choices)
        if old != self._state:
            self.changed.emit(self._state, old)

    def point_at(self, place: Point | None) -> None:
        """Show a place in all maps."""
        if place != self._pointer:
            self._pointer = place
            self.pointer_moved.emit(place)

    def cut_along(self, section: Section) -> None:
        """Move the section line in all maps."""
        if section != self._section:
            self._section = section
            self.section_moved.emit(section)


def once(show: Callable[[], None], parent: QObject) -> Callable[..., None]:
    """A slot for any signal: however many come in one turn of events, shown once after it."""
    soon = QTimer(parent, singleShot=True, interval=0)
    soon.timeout.connect(show)
    return lambda *_: soon.start()


class AskLine(QWidget):
    """A button that asks, one that stops, how far it is, and the answer in words."""

    def __init__(self, form: FieldForm, ask: str, tip: str = "") -> None:
        super().__init__(form)
        self._form = form
        self.ask: QPushButton = button(ask, tip)
        self.stop: QPushButton = button("Stop", "Stop computing")
        form.add_buttons(self.ask, self.stop)
        self.bar = QProgressBar()
        self.bar.setTextVisible(False)
        self.bar.setMaximumHeight(6)
        self.bar.setRange(0, 1000)
        self.bar.setAccessibleName(f"Progress: {ask}")
        form.add_wide(self.bar)
        self.words = form.add_wide(PlainLabel(name=f"Answer: {ask}", wrap=True))
        self.alert = form.add_alert()
        self.hide()
        self._busy = False
        self.show_busy(False)

    def show_busy(self, busy: bool) -> None:
        """A question runs or has ended."""
        self.ask.setEnabled(not busy)
        self.stop.setVisible(busy)
        self.bar.setVisible(busy)
        if busy and not self._busy:
            self.bar.setValue(0)
            self.say("")
        self._busy = busy

    def show_progress(self, fraction: float) -> None:
        """So much is done."""
        self.bar.setValue(round(1000 * min(max(fraction, 0.0), 1.0)))

    def say(self, words: str, problem: str = "") -> None:
        """Show the answer, or what is wrong."""
        self.words.setText(in_unit(words, self._form.unit))
        self.words.setVisible(bool(words))
        self.alert.say(in_unit(problem, self._form.unit))


class Asker(QObject):
    """Asks one kind of question on a lane and keeps its line up to date.

    ``answered(about, result)`` for the newest question of this kind, unless another kind took
    its place.
    """

    answered = Signal(object, object)

    def __init__(self, lane: Lane, line: AskLine, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._lane, self._line = lane, line
        self._about: object = None
        line.stop.clicked.connect(lane.stop)
        lane.done.connect(self._on_done)
        lane.failed.connect(self._on_failed)
        lane.progressed.connect(self._on_progress)
        lane.turned.connect(self._on_turned)

    @property
    def busy(self) -> bool:
        """Whether this question is the one that is awaited."""
        return self._about is not None and self._lane.awaits_about(self._about)

    def ask(self, about: object, job: Job) -> None:
        """Put the question; it takes the place of whatever runs on the lane."""
        self._about = about
        self._lane.ask(about, job, what=f"'{self._line.ask.text()}'")

    def _on_turned(self) -> None:
        if self._about is not None:
            self._line.show_busy(self.busy)

    def _on_progress(self, about: object, fraction: float) -> None:
        if about is self._about:
            self._line.show_progress(fraction)

    def _on_done(self, about: object, result: object) -> None:
        if about is self._about:
            self._about = None
            self.answered.emit(about, result)

    def _on_failed(self, about: object, sentence: str) -> None:
        if about is self._about:
            self._about = None
            self._line.say("", sentence)
