"""What is asked beside the drawing while it is worked on, and kept while it tells of the plan.

One lane answers all of it: what each height would give, what comes by way of a wall, how a
wanted level is reached. It shares nothing with the estimator, whose light is never kept waiting.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QObject, QTimer, Signal

from planner.app.display import DisplayState
from planner.app.jobs import Cancelled, Lane, Progress
from planner.estimate.result import QUICK, Estimate, EstimateOptions, Quality
from planner.plan.lining import Lining
from planner.plan.lit import Depends, depends, same_judged, same_light
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan

if TYPE_CHECKING:
    from planner.app.canvas.elevation_view import ElevationView
    from planner.app.canvas.plan_view import PlanView
    from planner.app.fields.panel import Workplace
    from planner.app.fields.surface_fields import WallFields
    from planner.estimate.ladder import Ladder
    from planner.estimate.sensitivity import Reckoner, WallLight
    from planner.estimate.upright import Axis, Slice

REST_MS = 450
"""So long the pointer rests on a wall before it asks about it."""


class Asked(QObject):
    """Asks on one lane and keeps what can be asked again.

    Signals when the answer is there: ``climbed(Ladder)``, ``walled(WallLight)``,
    ``wished(three ways)``, ``grown(Schedule)``; ``refused(str)`` with the sentence why a wish was
    not looked for.
    """

    climbed = Signal(object)
    walled = Signal(object)
    wished = Signal(object)
    grown = Signal(object)
    refused = Signal(str)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.lane = Lane("beside the drawing", parent=self)
        self.lane.done.connect(self._on_done)
        self.lane.failed.connect(self._on_failed)
        self._ladder: Ladder | None = None
        self._climbed: object = None
        self._reckoned: tuple[Depends, Reckoner] | None = None

    def _ask(self, topic: str, job: Callable[[Progress, Cancelled], Any]) -> None:
        self.lane.ask(topic, job, topic=topic, what=f"What was asked beside the drawing ({topic})")

    def _on_done(self, topic: object, answer: Any) -> None:
        if topic == "ladder":
            self._ladder = answer
        told = {"ladder": self.climbed, "wall": self.walled, "wish": self.wished}
        told.get(str(topic), self.grown).emit(answer)

    def _on_failed(self, topic: object, sentence: str) -> None:
        # What is shown by itself (a ladder, a wall) just does not come; it is in the log.
        if topic == "wish":
            self.refused.emit(sentence)

    # -- the ladder of heights ----------------------------------------------------------

    def climb(self, plan: Plan, lamps: Sequence[int], display: DisplayState) -> None:
        """Tell what each height of these lamps would give; ``climbed`` carries the answer.

        On the cells of the map shown, so that its figures are those of the strip.
        """
        known, raised, cells = self._ladder, tuple(lamps), (display.cells, display.cells)
        if self._climbed == (raised, display.unit, cells) and known and known.fits(plan):
            self.climbed.emit(known)
            return

        def job(progress: Progress, cancelled: Cancelled) -> Ladder:
            from planner.estimate.evaluate import shared_cache  # noqa: PLC0415 - heavy
            from planner.estimate.ladder import ladder, rungs_between  # noqa: PLC0415 - heavy

            return ladder(
                plan,
                raised,
                rungs_between(plan, raised, display.unit),
                EstimateOptions(cells=cells, quality=Quality.PREVIEW),
                cache=shared_cache(),
                progress=progress,
                cancelled=cancelled,
            )

        self._climbed = (raised, display.unit, cells)
        self._ask("ladder", job)

    # -- what one wall does -------------------------------------------------------------

    def wall(
        self, plan: Plan, wall: int, lining: Lining | None = None, band: int | None = None
    ) -> None:
        """Tell what came by way of a wall, and what a lining on it would bring."""

        def job(_progress: Progress, cancelled: Cancelled) -> WallLight:
            from planner.estimate.sensitivity import light_of_wall  # noqa: PLC0415 - heavy

            return light_of_wall(self._reckoner(plan, cancelled), wall, lining, band)

        self._ask("wall", job)

    def _reckoner(self, plan: Plan, cancelled: Cancelled) -> Reckoner:
        """Estimates of a plan's light with other linings, kept from wall to wall; on the lane."""
        from planner.estimate.sensitivity import Reckoner  # noqa: PLC0415 - heavy

        known = self._reckoned
        if known is not None and known[0] == depends(plan, figures=False):
            known[1].cancelled = cancelled
            return known[1]
        self._reckoned = None
        # What comes by way of a wall is smooth: few cells do.
        made = Reckoner(plan, EstimateOptions(QUICK.cells), cancelled)
        self._reckoned = (depends(plan, figures=False), made)
        return made

    # -- growing time -------------------------------------------------------------------

    def grow(self, plan: Plan, display: DisplayState) -> None:
        """Find height and output of each stage of the plan's schedule."""

        def job(progress: Progress, cancelled: Cancelled) -> object:
            from planner.estimate.schedule import schedule  # noqa: PLC0415 - heavy

            return schedule(
                plan, options=QUICK, unit=display.unit, progress=progress, cancelled=cancelled
            )

        self._ask("schedule", job)

    # -- a wish -------------------------------------------------------------------------

    def wish(
        self, plan: Plan, wanted: float, linings: Sequence[Lining], display: DisplayState
    ) -> None:
        """Look for three ways to a mean PPFD, with some linings to choose from."""
        options = EstimateOptions(cells=(display.cells, display.cells), quality=Quality.PREVIEW)

        def job(progress: Progress, cancelled: Cancelled) -> object:
            from planner.estimate.evaluate import shared_cache  # noqa: PLC0415 - heavy
            from planner.estimate.ways import ways  # noqa: PLC0415 - heavy

            return ways(
                plan,
                wanted,
                linings,
                options,
                # As the strip tells them once the one taken is at rest.
                told=Quality.DEFAULT,
                unit=display.unit,
                cache=shared_cache(),
                progress=progress,
                cancelled=cancelled,
            )

        self._ask("wish", job)


class WallOnMap(QObject):
    """Shows on the plan what a wall does: while the pointer rests on it, or as long as asked.

    While a lining is considered for it in an open list, what that one would bring.
    """

    def __init__(self, asked: Asked, work: Workplace, view: PlanView) -> None:
        super().__init__(view)
        self._asked, self._work, self._view = asked, work, view
        self._fields: WallFields | None = None
        self._hovered: int | None = None
        self._wanted: tuple[int, Lining | None, int | None] | None = None
        self._considered: tuple[Lining, Place] | None = None
        self._patience = QTimer(self, singleShot=True, interval=REST_MS)
        self._patience.timeout.connect(self._show)
        view.wall_hovered.connect(self._on_hovered)
        asked.walled.connect(self._on_answer)
        work.selection.changed.connect(lambda _place: self._show())
        work.document.changed.connect(self._on_plan)
        work.document.settled.connect(self._show)

    def take(self, fields: WallFields) -> None:
        """The fields of a wall are there: what they ask is shown too."""
        self._fields = fields
        fields.light_button.toggled.connect(lambda _on: self._show())
        fields.considered.considering.connect(self._on_considering)

    def _on_hovered(self, wall: int | None) -> None:
        self._hovered = wall
        if wall is None:
            self._patience.stop()
            self._show()
        else:
            # A pointer on its way across is not asking.
            self._patience.start()

    def _on_considering(self, lining: Lining | None, place: Place) -> None:
        self._considered = None if lining is None else (lining, place)
        self._show()

    def _on_plan(self, old: Plan, new: Plan) -> None:
        if self._wanted is not None and not same_judged(old, new):
            self._wanted = None
            self._seek("")
            self._view.set_wall_light(None)
            self._asked.lane.drop("wall")
            if not self._work.document.moving:
                self._show()

    def _now(self) -> tuple[int, Lining | None, int | None] | None:
        """The wall that is asked about, and the lining considered for a band of it."""
        selected = self._work.selection.current
        if self._considered is not None:
            lining, place = self._considered
            return place.index, lining, place.band
        if self._hovered is not None and not self._patience.isActive():
            return self._hovered, None, None
        asked = self._fields is not None and self._fields.light_button.isChecked()
        if selected.kind is PlaceKind.WALL and asked:
            return selected.index, None, None
        return None

    def _show(self) -> None:
        now = self._now()
        if now == self._wanted:
            return
        self._wanted = now
        self._seek("" if now is None else f"Finding the light that came by wall {now[0] + 1} …")
        if now is None:
            self._asked.lane.drop("wall")
            self._view.set_wall_light(None)
        else:
            self._asked.wall(self._work.document.plan, *now)

    def _seek(self, words: str) -> None:
        """Say what is looked for: the first wall of a plan takes some seconds."""
        self._view.sought = words
        self._view.update()

    def _on_answer(self, found: WallLight) -> None:
        self._seek("")
        if self._wanted is not None and same_judged(found.plan, self._work.document.plan):
            self._view.set_wall_light(found)


class LightInSide(QObject):
    """Shows the light itself in the side view, once the light on the map is there and at rest.

    On a lane of its own: nothing else waits for it. What was found along each axis is kept.
    """

    def __init__(self, work: Workplace, view: ElevationView, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._work, self._view = work, view
        self.lane = Lane("light from the side", parent=self)
        self.lane.done.connect(self._on_done)
        self._known: dict[Axis, Slice] = {}
        self._lit: Plan | None = None
        self._cells = 0
        self._patience = QTimer(self, singleShot=True, interval=REST_MS)
        self._patience.timeout.connect(self._ask)
        work.document.changed.connect(self._on_plan)
        view.cut_changed.connect(self._patience.start)

    def follow(self, estimate: Estimate) -> None:
        """Ask for the light of a plan whose map is there; a preview is not waited for."""
        if estimate.options.quality is not Quality.PREVIEW and estimate.figures.mean > 0:
            self._lit = estimate.plan
            self._patience.start()

    def _on_plan(self, old: Plan, new: Plan) -> None:
        if not same_light(old, new):
            self._patience.stop()
            self.lane.drop()

    def _ask(self) -> None:
        document, view, lit_plan = self._work.document, self._view, self._lit
        plan, axis, place = document.plan, view.axis, view.cut
        if document.moving or lit_plan is None or not same_light(plan, lit_plan):
            return  # the map of the plan as it is will ask again
        cells = self._work.display.state.cells
        known = self._known.get(axis)
        if known is not None and cells == self._cells and known.fits(plan, axis, place):
            view.set_slice(known)
            return
        self._cells = cells

        def job(progress: Progress, cancelled: Cancelled) -> Slice:
            from planner.estimate.evaluate import shared_cache  # noqa: PLC0415 - heavy
            from planner.estimate.upright import light_in_slice  # noqa: PLC0415 - heavy

            return light_in_slice(
                plan,
                axis,
                place,
                EstimateOptions(cells=(cells, cells)),
                cache=shared_cache(),
                progress=progress,
                cancelled=cancelled,
            )

        self.lane.ask(axis, job, what="The light from the side")

    def _on_done(self, axis: Axis, found: Slice) -> None:
        self._known[axis] = found
        self._view.set_slice(found)
