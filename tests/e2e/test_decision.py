"""From an empty plan through five linings and four heights to a decision, without a window."""

from __future__ import annotations

from planner.catalogue.library import load_catalogue, new_plan
from planner.estimate.compare import Side, compare
from planner.estimate.odds import Odds, sway, verdict
from planner.estimate.result import EstimateOptions, Quality
from planner.estimate.worth import bill, worth
from planner.plan.costs import Costs, Goods
from planner.plan.edits import add_lamp, changed
from planner.plan.lamp import Lamp
from planner.plan.plan import Plan
from planner.plan.variant_edits import adopt_variant, heights_between, try_all

OPTIONS = EstimateOptions(cells=(10, 10), quality=Quality.PREVIEW)
LININGS = ("white-board", "matt-white-paint", "white-film-thin", "foil-shiny", "plywood")


def start() -> Plan:
    """A new plan, 60 x 60 x 160 cm and white, with one bar of the catalogue and bare wood walls."""
    catalogue = load_catalogue()
    plan = try_all(new_plan(catalogue), linings=[catalogue.lining("plywood")])
    plan = adopt_variant(plan, "variant-1")
    return add_lamp(plan, Lamp(model=catalogue.lamps[0], x=0.3, y=0.3, hanging_height=0.4))


def telling_words(side: Side, baseline: Side) -> str:
    assert side.estimate is not None
    assert baseline.estimate is not None
    one, two = sway(side.plan, side.estimate), sway(baseline.plan, baseline.estimate)
    assert one is not None
    assert two is not None
    telling = Odds.of([(side.estimate, one), (baseline.estimate, two)]).telling(0, 1)
    return verdict(side.name, telling, baseline.name)


def test_a_grower_decides_for_a_lining_and_a_height() -> None:
    catalogue = load_catalogue()
    plan = try_all(start(), linings=[catalogue.lining(key) for key in LININGS])
    found = compare(plan, OPTIONS, with_open_air=True)
    assert len(found.sides) == 7
    lit = [side for side in found.sides if side.estimate is not None]
    ranks = [s.name for s in sorted(lit, key=lambda s: -s.estimate.figures.mean)]  # type: ignore[union-attr]
    # Whatever shines back most gives most; nothing is darker than no walls at all.
    assert ranks[0] == catalogue.lining("foil-shiny").name
    assert ranks[-1].startswith("Open air")
    base, foil, wood = (
        found.sides[0],
        next(s for s in found.sides if s.name == ranks[0]),
        found.sides[5],
    )
    assert telling_words(foil, base).startswith(f"{foil.name} beats {base.name} with more than 99")
    # The plan is lined with it already.
    assert telling_words(wood, base).endswith("have the very same light.")
    # Is it worth it? One roll of an invented price, and a tariff.
    costs = Costs(
        price_per_kwh=0.3, goods=(Goods(lining="foil-shiny", width=0.45, length=20.0, price=4.0),)
    )
    assert foil.estimate is not None
    assert base.estimate is not None
    bought = bill(foil.plan, base.plan, costs)
    weighed = worth(foil.estimate, base.estimate, bought, costs)
    assert bought.cost == 4.0
    assert weighed.payback is not None
    assert weighed.payback > 0
    assert foil.key is not None
    plan = changed(adopt_variant(plan, foil.key), variants=(), costs=costs)
    # Then the height: lower is brighter, higher is more even.
    heights = compare(try_all(plan, heights=heights_between(0.2, 0.8, 4)), OPTIONS)
    figures = [side.estimate.figures for side in heights.sides[1:] if side.estimate is not None]
    means = [one.mean for one in figures]
    evenness = [one.min_over_mean or 0.0 for one in figures]
    assert means == sorted(means, reverse=True)
    assert evenness == sorted(evenness)
    decided = adopt_variant(try_all(plan, heights=heights_between(0.2, 0.8, 4)), "variant-3")
    assert decided.lamps[0].hanging_height == 0.6
    assert decided.walls[0].bands[0].lining == "foil-shiny"
    assert decided.costs == costs
