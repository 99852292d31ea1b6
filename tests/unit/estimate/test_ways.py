"""Three ways to one level: each against brute force, and its watts by hand."""

from __future__ import annotations

import pytest

from planner.estimate.evaluate import Cache, Cancelled, evaluate
from planner.estimate.find_question import FindError
from planner.estimate.result import EstimateOptions, Quality
from planner.estimate.ways import WayKind, ways
from planner.plan import edits
from planner.plan.lining import Lining
from planner.plan.plan import Plan
from planner.units import LengthUnit, in_unit
from tests.unit.reports.sample_estimate import sample_plan

OPTIONS = EstimateOptions(cells=(8, 8), quality=Quality.PREVIEW)


def film(key: str, rho: float) -> Lining:
    return Lining(key=key, name=f"Invented {key}", reflectance=rho, low=rho, high=rho)


LININGS = (film("grey", 0.5), film("bright", 0.96), film("brighter", 0.98))


def mean(plan: Plan, cache: Cache | None = None) -> float:
    return evaluate(plan, OPTIONS, cache=cache).figures.mean


def test_dimming_is_a_proportion() -> None:
    plan = sample_plan()
    now = mean(plan)
    dim, _, _ = ways(plan, 0.64 * now, LININGS, OPTIONS)
    assert dim.kind is WayKind.OUTPUT
    assert dim.reached
    assert dim.name == "Dim to 64 %"
    assert dim.plan is not None
    assert dim.plan.lamps[0].output_percent == pytest.approx(64)
    assert mean(dim.plan) == pytest.approx(0.64 * now)
    # 64 % of 40 W are 25.6 W.
    assert ", 25.6 W instead of 40." in dim.words
    assert edits.changed(dim.plan, lamps=plan.lamps) == plan


def test_figures_are_told_as_the_plan_at_rest_has_them() -> None:
    plan = sample_plan()
    careful = EstimateOptions(cells=OPTIONS.cells)
    for way in ways(plan, 0.8 * mean(plan), LININGS, OPTIONS, told=Quality.DEFAULT):
        assert way.plan is not None
        assert way.estimate is not None
        at_rest = evaluate(way.plan, careful).figures
        assert way.estimate.figures == at_rest
        assert f"mean {at_rest.mean:.0f} " in way.words


def test_no_height_is_nearer() -> None:
    plan, cache = sample_plan(), Cache()
    for share in (0.8, 1.1):
        wanted = share * mean(plan, cache)
        _, height, _ = ways(plan, wanted, LININGS, OPTIONS)
        assert height.plan is not None
        found = height.plan.lamps[0].hanging_height
        name = in_unit(height.name, LengthUnit.CM)
        assert name == f"{'Raise' if share < 1 else 'Lower'} to {100 * found:g} cm"
        assert height.reached
        assert "40 W as now" in height.words
        off = {
            k: abs(mean(edits.change_lamp(plan, 0, hanging_height=k / 100), cache) - wanted)
            for k in range(5, 101)
        }
        assert off[round(100 * found)] <= min(off.values()) + 0.005 * wanted


def undimmable(plan: Plan) -> Plan:
    model = edits.changed(plan.lamps[0].model, dimmable=False)
    return edits.change_lamp(plan, 0, model=model)


def test_the_lining_that_needs_the_fewest_watts() -> None:
    """The brightest of those offered, dimmed to the level: 40 W by the ratio of the means."""
    plan = sample_plan()
    wanted = mean(plan)
    _, _, lining = ways(plan, wanted, LININGS, OPTIONS)
    bright = mean(edits.line_all_walls(plan, LININGS[2]))
    output = round(100 * wanted / bright)
    assert lining.name == f"Line with Invented brighter, dim to {output} %"
    assert lining.plan is not None
    assert lining.plan.walls[0].bands[0].lining == "brighter"
    assert sum(one.watts for one in lining.plan.lamps) == pytest.approx(0.40 * output)
    assert lining.reached
    # A lamp that cannot be dimmed gives what the lining nearest to the level lets it.
    wished = mean(edits.line_all_walls(plan, LININGS[0]))
    dim, _, as_is = ways(undimmable(plan), wished, LININGS, OPTIONS)
    assert dim.plan is None
    assert dim.words == "The lamps cannot be dimmed."
    assert as_is.name == "Line with Invented grey"
    assert "40 W as now" in as_is.words


def test_what_a_way_cannot_is_said_and_shown_as_near_as_it_comes() -> None:
    plan = sample_plan()
    wanted = 3 * mean(plan)
    dim, height, lining = ways(plan, wanted, LININGS[:1], OPTIONS)
    assert not any(way.reached for way in (dim, height, lining))
    assert dim.plan is not None
    assert dim.plan.lamps[0].output_percent == 100
    # The lamp gives 100 µmol/s; three times that it would take.
    assert dim.name == "Full output"
    assert "it would take 300 µmol s⁻¹ of lamps, not 100." in dim.words
    assert "No height comes nearer: nearer it may scorch the leaves." in height.words
    assert lining.words == "No lining offered gives more light than what is on the walls."
    low = ways(plan, 0.05 * mean(plan), (), OPTIONS)
    assert "No height comes nearer: the ceiling is there." in low[1].words
    assert low[2].plan is None
    assert low[2].words == "No lining is offered."


def test_no_height_brings_lamps_into_each_other() -> None:
    one = sample_plan()
    above = one.lamps[0].model_copy(update={"hanging_height": 0.7})
    _, height, _ = ways(edits.add_lamp(one, above), 100.0, (), OPTIONS)
    assert height.plan is None
    assert height.words == "At one height the lamps are in the way of each other or of a shelf."


def test_inches_and_what_cannot_be_asked() -> None:
    plan = sample_plan()
    _, height, _ = ways(plan, 0.8 * mean(plan), (), OPTIONS, unit=LengthUnit.INCH)
    assert height.plan is not None
    inches = height.plan.lamps[0].hanging_height / 0.0254
    assert 2 * inches == pytest.approx(round(2 * inches), abs=1e-3)
    for said in (height.name, height.words):
        assert f"to {inches:g} in" in in_unit(said, LengthUnit.INCH)
    with pytest.raises(FindError, match="above 0"):
        ways(plan, 0.0)
    with pytest.raises(FindError, match="Hang one lamp"):
        ways(sample_plan(lamps=()), 100.0)
    with pytest.raises(Cancelled):
        ways(plan, 100.0, cancelled=lambda: True)
    seen: list[float] = []
    ways(plan, 100.0, LININGS, OPTIONS, progress=seen.append)
    assert seen[-1] == 1.0
    assert max(seen) <= 1.0
