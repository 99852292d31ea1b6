"""A plan judged by the canopy on a top: figures, doubts and gains are those of that canopy."""

from __future__ import annotations

import numpy as np
import pytest

from planner.estimate.evaluate import evaluate, recounted
from planner.estimate.outlook import outlook, uncertainty
from planner.estimate.result import EstimateOptions, Quality, of_plan
from planner.plan.edits import change_lamp, judge_by
from planner.plan.place import OWN, Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.space import CarriedCanopy
from planner.plan.target import PpfdTarget
from tests.physics.rooms import box, lamp, panel, plan
from tests.physics.test_tops import MATT, on, tray

TOP = Place(PlaceKind.TOP, 0)
QUICK = EstimateOptions(cells=(12, 12), quality=Quality.PREVIEW)


def room() -> Plan:
    """A white cabinet with a raised tray in one corner and two lamps over the rest."""
    what = plan(
        box(0.8, 0.8),
        1.2,
        [lamp((0.25, 0.25), 0.5), lamp((0.6, 0.3), 0.5, body=panel(0.2, 0.2))],
        walls=MATT,
        canopy_height=0.2,
    )
    carried = CarriedCanopy(target=PpfdTarget(low=1.0, high=1000.0))
    what = what.model_copy(update={"target": PpfdTarget(low=2000.0, high=3000.0)})
    return on(what, tray((0.6, 0.6), (0.3, 0.3), (0.2, 0.5), canopy=carried))


def test_map_and_figures_are_those_of_the_canopy_it_is_judged_by() -> None:
    what = room()
    own, led = evaluate(what, QUICK), evaluate(judge_by(what, 0), QUICK)
    assert (own.place, led.place) == (OWN, TOP)
    assert led.figures == own.tops[0].figures
    assert led.ppfd.shape == own.tops[0].ppfd.shape
    assert led.figures.share_inside == 1.0, "by its own target"
    assert own.figures.share_inside == 0.0
    assert np.array_equal(led.own.ppfd, own.ppfd, equal_nan=True)
    assert led.own.figures == own.figures
    assert led.overall == own.overall
    assert led.numeric_error == own.tops[0].numeric_error


def test_judging_by_another_canopy_computes_nothing_and_loses_nothing() -> None:
    what = room()
    own = recounted(evaluate(what, EstimateOptions(cells=(12, 12))))
    assert own.recount is not None
    led = of_plan(own, judge_by(what, 0))
    assert led.place == TOP
    assert led.recount is None, "photons were counted on the plan's own canopy"
    back = of_plan(led, judge_by(led.plan, None))
    assert back.place == OWN
    assert back.recount == own.recount
    assert back.figures == own.figures


def test_one_canopy_leads_at_a_time() -> None:
    what = on(room(), *room().obstacles, tray((0.2, 0.6), (0.2, 0.2), (0.2, 0.4)))
    assert judge_by(judge_by(what, 0), 1).judged_top == 1
    assert judge_by(judge_by(what, 0), None).judged_top is None


def test_a_canopy_without_light_is_not_judged_by() -> None:
    # Under closed leaves nothing is seen: the plan's own canopy stays in force, and says so.
    what = on(room(), tray((0.6, 0.6), (0.3, 0.3), (0.0, 0.1)))
    assert evaluate(judge_by(what, 0), QUICK).place == OWN


def test_its_doubt_is_the_one_of_light_that_falls_there() -> None:
    # One lamp whose flux is known to ±20 % lights a black room; evenly likely inside, its
    # standard uncertainty is 20/√3 % (JCGM 100:2008, 4.3.7) of the mean on either canopy.
    # Heights are in doubt by 1 cm as well: the tray is nearer to the lamp, so that counts more.
    source = lamp((0.4, 0.4), 1.0)
    model = source.model.model_copy(update={"ppf_uncertainty": 0.2})
    what = plan(box(0.8, 0.8), 2.0, [source], canopy_height=0.2)
    what = change_lamp(what, 0, model=model, hanging_height=1.0)
    what = on(what, tray((0.4, 0.4), (0.2, 0.2), (0.2, 0.6)))
    own, led = uncertainty(what, QUICK), uncertainty(judge_by(what, 0), QUICK)
    assert own is not None
    assert led is not None
    mean = evaluate(what, QUICK).tops[0].figures.mean
    flux = next(part for part in led.parts if part.quantity == "photon flux")
    height = next(part for part in led.parts if part.quantity == "hanging height")
    assert flux.mean / mean == pytest.approx(0.2 / 3**0.5, rel=1e-6)
    # E goes as 1/d² near the axis: 1 cm of 60 cm is 2/60 of it, as a half-width.
    assert height.mean / mean == pytest.approx(2 * 0.01 / 0.6 / 3**0.5, rel=0.05)
    assert led.relative_mean > own.relative_mean


def test_a_wall_beside_the_tray_is_worth_more_to_the_tray() -> None:
    what = room()
    far, near = 0, 1  # the front wall, and the right one, at which the tray stands
    own = {gain.place.index: gain.mean_per_unit for gain in walls_of(what)}
    led = {gain.place.index: gain.mean_per_unit for gain in walls_of(judge_by(what, 0))}
    assert led[near] / led[far] > own[near] / own[far]


def walls_of(what: Plan) -> list:  # type: ignore[type-arg]
    return [gain for gain in outlook(what).gains if gain.place.kind is PlaceKind.WALL]


@pytest.mark.parametrize("looked", [OWN, Place(PlaceKind.TOP, 0), Place(PlaceKind.TOP, 1)])
def test_of_canopies_over_one_another_the_one_looked_at_is_drawn(looked: Place) -> None:
    """The map shows the light the figures tell of, not that on a shelf above it."""
    low, high = tray((0.4, 0.4), (0.4, 0.4), (0.4, 0.5)), tray((0.4, 0.4), (0.2, 0.2), (0.6, 0.7))
    found = evaluate(on(room(), low, high), QUICK).on(looked)
    seen = float(found.seen_at(np.array([0.4]), np.array([0.4]))[0])
    of = next(one for one in found.canopies if one.place == looked)
    assert seen == of.value(0.4, 0.4)
    assert found.top_at(0.4, 0.4).place == looked
    assert found.top_at(0.05, 0.05).place == OWN
