from __future__ import annotations

import threading
import time
from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import Any

import numpy as np
import pytest
from pytestqt.qtbot import QtBot

from planner.app.estimator import Estimator
from planner.estimate.outlook import Outlook
from planner.estimate.result import Estimate, EstimateOptions, Figures, Quality
from planner.plan import edits
from planner.plan.costs import Costs
from planner.plan.lamp import Lamp, LampModel, PanelBody
from planner.plan.lining import Lining, WallCover
from planner.plan.plan import Plan
from planner.plan.space import Space
from planner.plan.target import PpfdTarget

_FIGURES = Figures(
    mean=0.0, minimum=0.0, maximum=0.0, min_over_mean=None, min_over_max=None, cv=None,
    share_under=None, share_inside=None, share_over=None, dli=0.0, utilisation=None,
    efficacy=None, photon_flux=0.0, watts=0.0, watts_per_m2=0.0, kwh_per_day=0.0,
    canopy_area=1.0,
)  # fmt: skip


class StoppedError(Exception):
    pass


def plan_named(name: str) -> Plan:
    """A plan of that name, and of a height that goes with the name: its light is its own."""
    height = 2.0 + 1e-3 * (sum(map(ord, name)) % 1000)
    space = Space(footprint=((0, 0), (1, 0), (1, 1), (0, 1)), height=height)
    return Plan(name=name, space=space, walls=(WallCover.plain("open"),) * 4)


class FakeCore:
    """Counts what it is asked; takes a while and heeds the cancel check, as the core does."""

    def __init__(self, seconds: float = 0.0) -> None:
        self.seconds = seconds
        self.cell_ppfd = 0.0
        self.asked: list[tuple[str, Quality]] = []
        self.finished: list[str] = []
        self.threads: set[int] = set()
        self.hold: threading.Event | None = None
        self.started = threading.Event()

    def __call__(
        self,
        plan: Plan,
        options: EstimateOptions,
        *,
        cache: Any,
        progress: Callable[[float], None],
        cancelled: Callable[[], bool],
    ) -> Estimate:
        self.asked.append((plan.name, options.quality))
        self.threads.add(threading.get_ident())
        self.started.set()
        end = time.monotonic() + self.seconds
        while time.monotonic() < end or (self.hold is not None and not self.hold.is_set()):
            if cancelled():
                raise StoppedError
            time.sleep(0.001)
        progress(1.0)
        self.finished.append(plan.name)
        nothing = np.zeros((1, 1))
        return Estimate(
            plan=plan, options=options, ppfd=nothing + self.cell_ppfd, x=nothing[0], y=nothing[0],
            cell_area=nothing + 1.0, figures=_FIGURES, shares=(), closure=0.0, seconds=0.0,
        )  # fmt: skip


@pytest.fixture
def core() -> FakeCore:
    return FakeCore()


@pytest.fixture
def estimator(core: FakeCore, qtbot: QtBot) -> Iterator[Estimator]:
    made = Estimator(core, synchronous=False)
    yield made
    made.shutdown()


@pytest.fixture
def answers(estimator: Estimator) -> list[tuple[str, Quality]]:
    kept: list[tuple[str, Quality]] = []
    estimator.estimated.connect(lambda e: kept.append((e.plan.name, e.options.quality)))
    return kept


def idle(estimator: Estimator) -> Callable[[], None]:
    def check() -> None:
        assert not estimator.busy

    return check


def test_of_fifty_quick_requests_only_the_last_is_answered(
    estimator: Estimator, core: FakeCore, answers: list[tuple[str, Quality]], qtbot: QtBot
) -> None:
    core.seconds = 0.02
    for number in range(50):
        estimator.request(plan_named(f"plan {number}"), EstimateOptions())
        time.sleep(0.001)
    qtbot.waitUntil(idle(estimator), timeout=2000)
    assert answers == [("plan 49", Quality.DEFAULT)]
    assert core.finished == ["plan 49"]


def test_work_is_done_off_the_gui_thread_by_one_thread(
    estimator: Estimator, core: FakeCore, qtbot: QtBot
) -> None:
    for name in ("a", "b"):
        with qtbot.waitSignal(estimator.estimated, timeout=1000):
            estimator.request(plan_named(name), EstimateOptions())
    assert len(core.threads) == 1
    assert threading.get_ident() not in core.threads


def test_an_edit_is_answered_by_a_preview_and_then_by_the_default_quality(
    estimator: Estimator, answers: list[tuple[str, Quality]], qtbot: QtBot
) -> None:
    estimator.edit(plan_named("a"))
    assert estimator.busy
    qtbot.waitUntil(idle(estimator), timeout=2000)
    assert answers == [("a", Quality.PREVIEW), ("a", Quality.DEFAULT)]


def test_the_end_of_a_gesture_asks_for_the_default_quality_at_once(
    estimator: Estimator, core: FakeCore, qtbot: QtBot
) -> None:
    estimator._settle.setInterval(3_600_000)  # waiting for the hand to rest would never end
    estimator.edit(plan_named("a"), dragging=True)
    estimator.settle()
    qtbot.waitUntil(lambda: ("a", Quality.DEFAULT) in core.asked, timeout=5000)


def test_a_preview_that_runs_during_a_drag_may_end_so_that_something_is_seen(
    estimator: Estimator, core: FakeCore, answers: list[tuple[str, Quality]], qtbot: QtBot
) -> None:
    core.hold = threading.Event()
    estimator.edit(plan_named("start"), dragging=True)
    assert core.started.wait(1)
    for number in range(20):
        estimator.edit(plan_named(f"move {number}"), dragging=True)
    core.hold.set()
    qtbot.waitUntil(idle(estimator), timeout=2000)
    assert answers[0] == ("start", Quality.PREVIEW)
    assert answers[-1] == ("move 19", Quality.DEFAULT)
    assert not any(name == "move 5" for name, _ in core.asked), "stale moves were computed"


def test_a_new_edit_drops_the_default_quality_that_runs(
    estimator: Estimator, core: FakeCore, answers: list[tuple[str, Quality]], qtbot: QtBot
) -> None:
    core.hold = threading.Event()
    estimator.request(plan_named("old"), EstimateOptions())
    assert core.started.wait(1)
    estimator.edit(plan_named("new"), dragging=True)
    core.hold.set()
    qtbot.waitUntil(idle(estimator), timeout=2000)
    assert ("old", Quality.DEFAULT) not in answers
    assert answers[-1] == ("new", Quality.DEFAULT)


def test_a_refusal_of_the_core_arrives_as_its_sentence(qtbot: QtBot) -> None:
    def refusing(*_args: Any, **_named: Any) -> Estimate:
        raise ValueError("the lamp is inside the wall.")

    estimator = Estimator(refusing, synchronous=False)
    try:
        with qtbot.waitSignal(estimator.failed, timeout=1000) as caught:
            estimator.request(plan_named("a"), EstimateOptions())
        assert caught.args == ["The light cannot be computed: the lamp is inside the wall."]
        qtbot.waitUntil(idle(estimator), timeout=500)
    finally:
        estimator.shutdown()


def test_a_fault_of_the_core_arrives_as_a_signal_and_the_next_request_works(
    estimator: Estimator, core: FakeCore, answers: list[tuple[str, Quality]], qtbot: QtBot
) -> None:
    faults = iter([ZeroDivisionError("division by zero")])

    def faulty(*args: Any, **named: Any) -> Estimate:
        for fault in faults:
            raise fault
        return core(*args, **named)

    estimator._evaluate = faulty
    with qtbot.waitSignal(estimator.failed, timeout=1000) as caught:
        estimator.request(plan_named("a"), EstimateOptions())
    assert caught.args is not None
    assert "ZeroDivisionError" in caught.args[0]
    with qtbot.waitSignal(estimator.estimated, timeout=1000):
        estimator.request(plan_named("b"), EstimateOptions())


def test_shutdown_in_the_middle_of_work_stops_and_joins(qtbot: QtBot) -> None:
    core = FakeCore(seconds=30)
    estimator = Estimator(core, synchronous=False)
    seen: list[object] = []
    estimator.estimated.connect(seen.append)
    estimator.request(plan_named("a"), EstimateOptions())
    assert core.started.wait(1)
    began = time.monotonic()
    estimator.shutdown()
    assert time.monotonic() - began < 1
    assert not any(t.name.startswith("estimator") for t in threading.enumerate())
    estimator.request(plan_named("b"), EstimateOptions())
    qtbot.wait(20)
    assert seen == []
    assert core.finished == []


def test_cancel_leaves_no_answer_and_no_work(
    estimator: Estimator, core: FakeCore, answers: list[tuple[str, Quality]], qtbot: QtBot
) -> None:
    core.hold = threading.Event()
    estimator.edit(plan_named("a"))
    assert core.started.wait(1)
    estimator.cancel()
    assert not estimator.busy
    qtbot.wait(200)
    assert answers == []
    assert core.finished == []


def test_busy_is_told_once_for_each_change(estimator: Estimator, qtbot: QtBot) -> None:
    told: list[bool] = []
    estimator.busy_changed.connect(told.append)
    for _ in range(3):
        estimator.edit(plan_named("a"), dragging=True)
    qtbot.waitUntil(idle(estimator), timeout=2000)
    assert told == [True, False]


def test_the_synchronous_way_answers_within_the_call(core: FakeCore, qtbot: QtBot) -> None:
    estimator = Estimator(core, synchronous=True)
    seen: list[Quality] = []
    estimator.estimated.connect(lambda e: seen.append(e.options.quality))
    estimator.edit(plan_named("a"))
    assert seen == [Quality.DEFAULT]
    assert not estimator.busy
    estimator.shutdown()


def test_options_are_handed_on_untouched(estimator: Estimator, qtbot: QtBot) -> None:
    options = replace(EstimateOptions(), cells=(7, 5), seed=9)
    with qtbot.waitSignal(estimator.estimated, timeout=1000) as caught:
        estimator.request(plan_named("a"), options)
    assert caught.args is not None
    assert caught.args[0].options == options


# -- the same light ---------------------------------------------------------------------


def lit_plan(**parts: Any) -> Plan:
    panel = LampModel(
        key="panel", name="Panel", body=PanelBody(length=0.3, width=0.2), ppf=100, watts=40
    )
    lamp = Lamp(model=panel, x=0.5, y=0.5, hanging_height=0.5)
    return edits.changed(plan_named("lit"), lamps=(lamp,), **parts)


@pytest.fixture
def outlooks(core: FakeCore, qtbot: QtBot) -> Iterator[tuple[Estimator, list[Plan]]]:
    """An estimator that answers at once, and the plans whose outlook was reckoned."""
    reckoned: list[Plan] = []

    def outlook(plan: Plan, **_: Any) -> Outlook:
        reckoned.append(plan)
        return Outlook(plan, None, ())

    made = Estimator(core, outlook=outlook, synchronous=True)
    yield made, reckoned
    made.shutdown()


@pytest.mark.parametrize(
    "parts",
    [
        {"note": "Sown on Monday"},
        {"name": "Other"},
        {"costs": Costs(price_per_kwh=0.3)},
        {"photoperiod_hours": 12.0},
        {"target": PpfdTarget(low=100, high=200)},
        {"floor": "open"},
    ],
    ids=lambda parts: next(iter(parts)),
)
def test_what_leaves_the_light_alone_computes_nothing(
    outlooks: tuple[Estimator, list[Plan]], core: FakeCore, parts: dict[str, Any]
) -> None:
    estimator, reckoned = outlooks
    plan = lit_plan()
    estimator.edit(plan)
    asked, known = list(core.asked), list(reckoned)
    shown: list[Plan] = []
    told: list[Plan] = []
    estimator.estimated.connect(lambda estimate: shown.append(estimate.plan))
    estimator.outlook_ready.connect(lambda outlook: told.append(outlook.plan))
    other = edits.changed(plan, **parts)
    estimator.edit(other)
    assert (core.asked, reckoned) == (asked, known)
    assert not estimator.busy
    if other != plan:
        # What is known is handed out as that of the plan as it stands.
        assert (shown, told) == ([other], [other])


def test_hours_make_the_figures_anew_from_the_light_that_is_kept(
    outlooks: tuple[Estimator, list[Plan]], core: FakeCore
) -> None:
    """DLI is PPFD x hours x 3600 / 1e6 (by definition); energy is W x h / 1000."""
    estimator, _ = outlooks
    core.cell_ppfd = 200.0
    plan = lit_plan(photoperiod_hours=16.0)
    estimator.edit(plan)
    found: list[Estimate] = []
    estimator.estimated.connect(found.append)
    estimator.edit(edits.changed(plan, photoperiod_hours=10.0))
    assert found[0].figures.dli == pytest.approx(200.0 * 10 * 3600 / 1e6)
    assert found[0].figures.kwh_per_day == pytest.approx(0.4)
    assert found[0].figures.mean == pytest.approx(200.0)
    assert len(core.asked) == 1


def test_a_lining_less_certain_reckons_the_outlook_alone(
    outlooks: tuple[Estimator, list[Plan]], core: FakeCore
) -> None:
    estimator, reckoned = outlooks
    board = Lining(key="board", name="Board", reflectance=0.8, low=0.75, high=0.85)
    plan = edits.line_all_walls(lit_plan(), board)
    estimator.edit(plan)
    vague = edits.change_lining(plan, board.model_copy(update={"low": 0.5}))
    estimator.edit(vague)
    assert len(core.asked) == 1
    assert reckoned == [plan, vague]


def test_a_note_typed_while_the_light_is_computed_does_not_begin_it_anew(
    estimator: Estimator, core: FakeCore, qtbot: QtBot
) -> None:
    core.hold = threading.Event()
    plan = plan_named("a")
    estimator.edit(plan)
    estimator.settle()
    core.started.wait(2)
    noted = edits.changed(plan, note="Typed meanwhile")
    shown: list[Plan] = []
    estimator.estimated.connect(lambda estimate: shown.append(estimate.plan))
    estimator.edit(noted)
    core.hold.set()
    qtbot.waitUntil(idle(estimator), timeout=2000)
    assert core.finished.count("a") == len(core.asked) == 2, "one preview, one at default quality"
    assert shown
    assert all(one == noted for one in shown)
