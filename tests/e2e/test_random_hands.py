"""A hand that does anything: random edits, undo, redo, save and reopen, and light at each stop.

Whatever is asked, an edit gives a valid plan or refuses with a ``ValueError``; undo gives
back exactly what was there; a file gives back exactly what was saved; and the light of
every plan is finite, not negative, and balances.
"""

from __future__ import annotations

import tempfile
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest
from hypothesis import HealthCheck, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, precondition, rule

from planner.app.document import Document
from planner.catalogue.library import demo_plan, load_catalogue, new_plan
from planner.estimate.evaluate import evaluate
from planner.estimate.result import EstimateOptions, Quality
from planner.files.store import load_plan, plan_to_bytes, save_plan
from planner.light.exchange import NothingAbsorbsError
from planner.plan import edits
from planner.plan.checks import findings
from planner.plan.lamp import BarsBody, CosineProfile, Lamp, LampModel, PanelBody, PointBody
from planner.plan.lining import Lining, WallCover
from planner.plan.plan import Plan
from planner.plan.space import CarriedCanopy, Obstacle
from planner.plan.survey import Meter, Survey
from planner.plan.survey_edits import add_survey, free_key, laid_on
from planner.plan.target import DliTarget, PpfdTarget
from planner.survey.layout import holes, standard_grid

PREVIEW = EstimateOptions(cells=(12, 10), quality=Quality.PREVIEW)

lengths = st.one_of(
    st.sampled_from([0.0, 0.005, 0.01, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, -0.01]),
    st.floats(0.005, 2.5),
)
coordinates = st.one_of(st.floats(-0.3, 1.5), st.sampled_from([0.0, 0.6, 1.0, -10.0, 10.0, 1e-9]))
points = st.tuples(coordinates, coordinates)
places = st.integers(0, 50)
fractions = st.one_of(st.sampled_from([0.0, 0.5, 0.9, 0.97, 1.0]), st.floats(0, 1))
odd_numbers = st.sampled_from([float("nan"), float("inf"), float("-inf"), -1.0, 1e308, -0.0])


@st.composite
def linings(draw: st.DrawFn) -> Lining:
    reflectance = draw(st.one_of(st.sampled_from([0.0, 0.5, 0.93]), st.floats(0, 0.97)))
    # Perfect mirrors all round are a matter of minutes, not of a test for every day.
    mirrored = draw(st.sampled_from([0.0, 0.0, 0.3, 0.8]))
    key = draw(st.sampled_from(["white", "foil", "own-1"]))
    return Lining(
        key=key, name=key, reflectance=reflectance, specular_share=mirrored,
        wrinkle=draw(st.sampled_from([0.0, 0.0, 0.2])), low=0, high=1,
    )  # fmt: skip


bodies: st.SearchStrategy[PointBody | PanelBody | BarsBody] = st.sampled_from(
    [
        PointBody(),
        PanelBody(length=0.3, width=0.2),
        PanelBody(length=3, width=0.005),
        BarsBody(count=4, length=0.5, bar_width=0.02, width=0.4),
    ]
)


@st.composite
def lamps(draw: st.DrawFn) -> Lamp:
    ppf, watts = draw(st.sampled_from([(1e-6, 1.0), (100, 50), (2000, 5000)]))
    model = LampModel(
        key="any", name="Any", body=draw(bodies), ppf=ppf, watts=watts,
        profile=CosineProfile(exponent=draw(st.sampled_from([0, 1, 1.5, 40]))),
        housing_height=draw(st.sampled_from([0.0, 0.0, 0.05])),
    )  # fmt: skip
    return Lamp(
        model=model, x=draw(st.floats(0, 1)), y=draw(st.floats(0, 0.6)),
        hanging_height=draw(st.sampled_from([0.01, 0.05, 0.3])),
        rotation_deg=draw(st.floats(-360, 360)), output_percent=draw(st.sampled_from([0, 50, 100])),
    )  # fmt: skip


@st.composite
def obstacles(draw: st.DrawFn) -> Obstacle:
    size = st.sampled_from([0.005, 0.1, 0.4, 3.0])
    return Obstacle(
        x=draw(st.floats(0, 1)), y=draw(st.floats(0, 0.6)), underside=draw(st.floats(0, 1.5)),
        length=draw(size), width=draw(size), thickness=draw(st.sampled_from([0.005, 0.02, 0.3])),
        rotation_deg=draw(st.floats(-360, 360)),
        canopy=draw(st.sampled_from([None, CarriedCanopy(), CarriedCanopy(reflectance=0.9)])),
    )  # fmt: skip


targets = st.one_of(
    st.none(),
    st.builds(lambda low: PpfdTarget(low=low, high=low + 50), st.floats(0, 400)),
    st.builds(lambda low: DliTarget(low=low, high=low + 5), st.floats(0, 40)),
)


def surveyed(plan: Plan, obstacle: int, board: float | None, sensor: float) -> Plan:
    """The plan with a survey on the canopy of an obstacle, on its own where that has none."""
    carried = plan.obstacles[obstacle].canopy is not None
    on_top, outline = laid_on(plan, obstacle if carried else None)
    grid = standard_grid(outline)
    survey = Survey(
        key=free_key(plan), name="Any", grid=grid, points=holes(grid, outline), on_top=on_top,
        board_reflectance=board, meter=Meter(sensor_height=sensor),
    )  # fmt: skip
    return add_survey(plan, survey)


class RandomHands(RuleBasedStateMachine):
    """One window's document in the hands of chance."""

    def __init__(self) -> None:
        super().__init__()
        self.folder = tempfile.TemporaryDirectory()
        self.document = Document(demo_plan())
        self.gesture_open = False
        self.history: list[Plan] = [demo_plan()]
        self.now = 0

    def teardown(self) -> None:
        self.folder.cleanup()
        self.document.deleteLater()

    @property
    def plan(self) -> Plan:
        return self.document.plan

    def edit(self, change: Callable[[Plan], Plan], key: str | None = None) -> None:
        """Try an edit: it gives a whole new plan, or refuses and changes nothing."""
        before = self.plan
        copy = before.model_copy(deep=True)
        try:
            after = change(before)
        except ValueError:
            assert self.plan == copy
            return
        assert Plan.model_validate_json(after.model_dump_json()) == after
        self.document.apply(after, "Anything", key)
        if after != before:
            self.history[self.now + 1 :] = [after]
            self.now += 1

    # -- beginnings ---------------------------------------------------------------------

    @initialize(empty=st.booleans())
    def begin(self, empty: bool) -> None:
        plan = new_plan(load_catalogue()) if empty else demo_plan()
        self.document.replace(plan, None)
        self.history, self.now = [plan], 0

    # -- edits --------------------------------------------------------------------------

    @rule(corner=places, to=points)
    def moves_a_corner(self, corner: int, to: tuple[float, float]) -> None:
        self.edit(lambda p: edits.move_corner(p, corner % p.space.wall_count, to))

    @rule(wall=places, dx=coordinates, dy=coordinates)
    def moves_a_wall(self, wall: int, dx: float, dy: float) -> None:
        self.edit(lambda p: edits.move_wall(p, wall % p.space.wall_count, dx, dy))

    @rule(wall=places, at=points, along=st.booleans())
    def adds_a_corner(self, wall: int, at: tuple[float, float], along: bool) -> None:
        (ax, ay), (bx, by) = self.plan.space.wall(wall % self.plan.space.wall_count)
        middle = ((ax + bx) / 2, (ay + by) / 2)
        self.edit(lambda p: edits.add_corner(p, wall % p.space.wall_count, middle if along else at))

    @rule(corner=places)
    def removes_a_corner(self, corner: int) -> None:
        self.edit(lambda p: edits.remove_corner(p, corner % p.space.wall_count))

    @rule(corners=st.lists(points, min_size=0, max_size=7))
    def draws_an_outline(self, corners: list[tuple[float, float]]) -> None:
        self.edit(lambda p: edits.set_footprint(p, tuple(corners)))

    @rule(width=lengths, depth=lengths)
    def stretches(self, width: float, depth: float) -> None:
        self.edit(lambda p: edits.set_size(p, width, depth))

    @rule(wall=places, length=lengths)
    def gives_a_wall_a_length(self, wall: int, length: float) -> None:
        self.edit(lambda p: edits.set_wall_length(p, wall % p.space.wall_count, length))

    @rule(height=lengths)
    def sets_the_height(self, height: float) -> None:
        self.edit(lambda p: edits.set_height(p, height))

    @rule(height=lengths)
    def sets_the_canopy_height(self, height: float) -> None:
        self.edit(lambda p: edits.set_canopy_height(p, height))

    @rule(closed=st.booleans(), reflectance=fractions)
    def sets_the_canopy(self, closed: bool, reflectance: float) -> None:
        self.edit(lambda p: edits.set_canopy(p, closed=closed, reflectance=reflectance))

    @rule(door=st.one_of(st.none(), places), door_open=st.booleans())
    def sets_the_door(self, door: int | None, door_open: bool) -> None:
        self.edit(lambda p: edits.with_space(p, door=door, door_open=door_open))

    @rule(lamp=lamps())
    def adds_a_lamp(self, lamp: Lamp) -> None:
        self.edit(lambda p: edits.add_lamp(p, lamp))

    @precondition(lambda self: self.plan.lamps)
    @rule(index=places)
    def removes_a_lamp(self, index: int) -> None:
        self.edit(lambda p: edits.remove_lamp(p, index % len(p.lamps)))

    @precondition(lambda self: self.plan.lamps)
    @rule(index=places, at=points, height=lengths, key=st.sampled_from([None, "drag"]))
    def moves_a_lamp(
        self, index: int, at: tuple[float, float], height: float, key: str | None
    ) -> None:
        parts = {"x": at[0], "y": at[1], "hanging_height": height}
        if key is None:
            self.edit(lambda p: edits.change_lamp(p, index % len(p.lamps), **parts))
            return
        # A drag of three moves under one key is one step.
        try:
            end = edits.change_lamp(self.plan, index % len(self.plan.lamps), **parts)
            on_the_way = edits.change_lamp(
                self.plan, index % len(self.plan.lamps), rotation_deg=12.5
            )
        except ValueError:
            return
        before = self.plan
        for step in (on_the_way, before, end):
            self.document.apply(step, "Move lamp", key)
        self.document.end_gesture()
        if end != before:
            self.history[self.now + 1 :] = [end]
            self.now += 1
        else:
            del self.history[self.now + 1 :]

    @precondition(lambda self: self.plan.lamps)
    @rule(
        index=places,
        field=st.sampled_from(["x", "y", "hanging_height", "rotation_deg", "output_percent"]),
        value=odd_numbers,
    )
    def types_nonsense_for_a_lamp(self, index: int, field: str, value: float) -> None:
        self.edit(lambda p: edits.change_lamp(p, index % len(p.lamps), **{field: value}))

    @rule(value=odd_numbers, which=st.integers(0, 5), wall=places)
    def types_nonsense_for_a_length(self, value: float, which: int, wall: int) -> None:
        change: Callable[[Plan], Plan] = (
            lambda p: edits.set_height(p, value),
            lambda p: edits.set_canopy_height(p, value),
            lambda p: edits.set_size(p, value, 1.0),
            lambda p: edits.set_wall_length(p, wall % p.space.wall_count, value),
            lambda p: edits.move_corner(p, wall % p.space.wall_count, (value, 0.2)),
            lambda p: edits.move_wall(p, wall % p.space.wall_count, value, value),
        )[which]
        self.edit(change)

    @rule(obstacle=obstacles(), lining=linings())
    def adds_an_obstacle(self, obstacle: Obstacle, lining: Lining) -> None:
        self.edit(
            lambda p: edits.add_obstacle(
                p, obstacle.model_copy(update={"lining": lining.key}), lining
            )
        )

    @precondition(lambda self: self.plan.obstacles)
    @rule(index=places, at=points, height=lengths)
    def moves_an_obstacle(self, index: int, at: tuple[float, float], height: float) -> None:
        self.edit(
            lambda p: edits.change_obstacle(
                p, index % len(p.obstacles), x=at[0], y=at[1], thickness=height
            )
        )

    @precondition(lambda self: self.plan.obstacles)
    @rule(index=places)
    def removes_an_obstacle(self, index: int) -> None:
        self.edit(lambda p: edits.remove_obstacle(p, index % len(p.obstacles)))

    @rule(wall=places, band=places, lining=linings(), where=st.integers(0, 4))
    def lines(self, wall: int, band: int, lining: Lining, where: int) -> None:
        def change(p: Plan) -> Plan:
            k = wall % p.space.wall_count
            if where == 0:
                return edits.line_all_walls(p, lining)
            if where == 1:
                return edits.line_ceiling(p, lining)
            if where == 2:
                return edits.line_floor(p, lining)
            if where == 3:
                return edits.change_lining(p, lining)
            return edits.line_wall(p, k, band % len(p.walls[k].bands), lining)

        self.edit(change)

    @rule(wall=places, band=places, at=lengths)
    def splits_a_band(self, wall: int, band: int, at: float) -> None:
        k = wall % self.plan.space.wall_count
        self.edit(lambda p: edits.split_band(p, k, band % len(p.walls[k].bands), at))

    @rule(wall=places, band=places)
    def merges_a_band(self, wall: int, band: int) -> None:
        k = wall % self.plan.space.wall_count
        self.edit(lambda p: edits.merge_band(p, k, band % len(p.walls[k].bands)))

    @rule(wall=places, band=places, top=lengths)
    def moves_a_band_edge(self, wall: int, band: int, top: float) -> None:
        k = wall % self.plan.space.wall_count
        self.edit(lambda p: edits.change_band(p, k, band % len(p.walls[k].bands), top=top))

    @rule(wall=places)
    def opens_a_wall(self, wall: int) -> None:
        k = wall % self.plan.space.wall_count
        self.edit(lambda p: edits.set_wall_cover(p, k, WallCover.plain("open")))

    @rule(output=st.floats(-10, 110))
    def dims_every_lamp(self, output: float) -> None:
        def dimmed(lamp: Lamp) -> Lamp:
            return Lamp.model_validate({**dict(lamp), "output_percent": output})

        self.edit(lambda p: edits.each_lamp(p, dimmed))

    @rule(hours=st.sampled_from([0.0, 1e-300, 16.0, 24.0, 25.0]), wanted=targets)
    def sets_hours_and_target(self, hours: float, wanted: PpfdTarget | DliTarget | None) -> None:
        self.edit(lambda p: edits.changed(p, photoperiod_hours=hours, target=wanted))

    # -- the document -------------------------------------------------------------------

    @precondition(lambda self: self.plan.obstacles)
    @rule(index=places, board=st.sampled_from([None, 0.0, 0.8]), sensor=st.sampled_from([0, 0.03]))
    def surveys_a_canopy(self, index: int, board: float | None, sensor: float) -> None:
        self.edit(lambda p: surveyed(p, index % len(p.obstacles), board, sensor))

    @rule(times=st.integers(1, 4))
    def undoes(self, times: int) -> None:
        for _ in range(times):
            self.document.undo_stack.undo()
            self.now = max(self.now - 1, 0)
        assert self.plan == self.history[self.now]

    @rule(times=st.integers(1, 4))
    def redoes(self, times: int) -> None:
        for _ in range(times):
            self.document.undo_stack.redo()
            self.now = min(self.now + 1, len(self.history) - 1)
        assert self.plan == self.history[self.now]

    @rule()
    def saves_and_reads_back(self) -> None:
        path = Path(self.folder.name) / "any.plan.json"
        save_plan(self.plan, path)
        self.document.mark_saved(self.plan, path)
        assert not self.document.dirty
        read = load_plan(path)
        assert read == self.plan
        assert plan_to_bytes(read) == path.read_bytes()

    @rule()
    def reopens(self) -> None:
        path = Path(self.folder.name) / "again.plan.json"
        save_plan(self.plan, path)
        self.document.replace(load_plan(path), path)
        self.history, self.now = [self.plan], 0

    @rule()
    def looks_at_the_light(self) -> None:
        findings(self.plan)
        try:
            estimate = evaluate(self.plan, PREVIEW)
        except NothingAbsorbsError:
            # Only where everything seen reflects everything.
            assert self.plan.canopy.reflectance > 0.999 or not self.plan.canopy.closed
            return
        inside = estimate.ppfd[np.isfinite(estimate.ppfd)]
        assert inside.size > 0
        assert inside.min() >= 0
        figures = estimate.figures
        assert all(np.isfinite(v) for v in vars(figures).values() if v is not None)
        if self.light_is_plain():
            assert abs(estimate.closure) < 1e-3
        assert all(share.share >= -1e-9 for share in estimate.shares)

    def light_is_plain(self) -> bool:
        """Whether no lamp is inside something, through a wall or nearer than the map is fine."""
        plan = self.plan
        warned = {"lamp-inside-obstacle", "lamp-through-wall", "lamp-close-to-canopy"}
        if warned & {finding.key for finding in findings(plan)}:
            return False
        x0, y0, x1, y1 = plan.space.bounds
        coarsest = max((x1 - x0) / PREVIEW.cells[0], (y1 - y0) / PREVIEW.cells[1])
        return all(lamp.hanging_height > coarsest for lamp in plan.lamps)

    @invariant()
    def shows_what_it_should(self) -> None:
        assert self.plan == self.history[self.now]
        for lamp in self.plan.lamps:
            assert self.plan.lamp_height(lamp) <= self.plan.space.height + 1e-9


@pytest.mark.gui
@pytest.mark.usefixtures("qapp")
def test_whatever_a_hand_does_the_plan_stays_whole() -> None:
    RandomHands.TestCase.settings = settings(
        max_examples=30,
        stateful_step_count=30,
        deadline=None,
        derandomize=True,
        suppress_health_check=list(HealthCheck),
    )
    RandomHands.TestCase("runTest").runTest()
