"""What is said and written of canopies that obstacles carry."""

from __future__ import annotations

import csv
import io
import json
import re

import numpy as np
import pytest
from pytestqt.qtbot import QtBot

from planner.app.pages.sketch.strip import AdviceLine
from planner.catalogue.library import demo_plan
from planner.command_line import summary
from planner.estimate.compare import Origin, Side, option
from planner.estimate.evaluate import evaluate
from planner.estimate.result import Estimate, EstimateOptions, Quality, of_plan
from planner.estimate.sweep import sweep
from planner.estimate.sweep_points import Over
from planner.metrics.figures import percent, ppfd
from planner.plan import changes
from planner.plan.edits import change_obstacle, changed, judge_by
from planner.plan.space import CarriedCanopy
from planner.plan.target import PpfdTarget
from planner.reports import content
from planner.reports.advice import best_dimming
from planner.reports.chapters import report
from planner.reports.charts import colour_top, map_drawing
from planner.reports.exports import (
    estimate_to_csv,
    estimate_to_json,
    options_to_csv,
    sweep_to_csv,
)
from planner.reports.report import Known, Pictures
from planner.units import LengthUnit
from tests.physics.rooms import box, lamp, plan
from tests.physics.test_tops import (
    LAMP_COLOURS,
    WALL_COLOURS,
    a_tray_in_a_cabinet,
    coloured,
    on,
    tray,
)

QUICK = EstimateOptions(cells=(6, 5), quality=Quality.PREVIEW)


@pytest.fixture(scope="module")
def found() -> Estimate:
    what = plan(box(0.6, 0.5), 1.2, [lamp((0.3, 0.3), 0.4)], canopy_height=0.2)
    what = what.model_copy(update={"target": PpfdTarget(low=50.0, high=500.0)})
    return evaluate(
        on(what, tray((0.2, 0.2), (0.2, 0.2), (0.2, 0.25))), EstimateOptions(cells=(12, 10))
    )


def test_each_canopy_and_all_of_them_are_told(found: Estimate) -> None:
    own, top, whole = content.canopy_sentences(found)
    assert own.startswith("Canopy: Mean ")
    assert top.startswith("Canopy on obstacle 1: Tray: Mean ")
    assert "Canopy area 0.04 m²" in top
    assert whole.startswith("All canopies together: Mean ")
    assert "Canopy area 0.3 m²" in whole
    assert whole in summary(found)


def test_one_canopy_alone_is_not_told_twice(found: Estimate) -> None:
    alone = evaluate(on(found.plan), found.options)
    assert content.canopy_sentences(alone) == ()
    assert "canopy" not in estimate_to_csv(alone)
    assert alone.overall is alone.figures


def test_the_table_adds_up_to_the_light_of_each(found: Estimate) -> None:
    rows = list(csv.DictReader(io.StringIO(estimate_to_csv(found))))
    for tag, figures in (("canopy", found.figures), ("top_of_obstacle_1", found.tops[0].figures)):
        mine = [row for row in rows if row["canopy"] == tag]
        light = [float(row["ppfd_umol_m2_s"]) for row in mine]
        area = [float(row["cell_area_m2"]) for row in mine]
        assert np.average(light, weights=area) == pytest.approx(figures.mean, rel=1e-5)
        assert sum(area) == pytest.approx(figures.canopy_area, rel=1e-5)


def test_json_holds_map_and_figures_of_each(found: Estimate) -> None:
    values = json.loads(estimate_to_json(found))
    (one,) = values["canopies"]
    assert (one["place"], one["name"], one["height_m"]) == ("top_of_obstacle_1", "Tray", 0.25)
    assert np.shape(one["ppfd"]) == (len(one["y_m"]), len(one["x_m"]))
    assert one["figures"]["mean"] == pytest.approx(found.tops[0].figures.mean)
    assert values["overall"]["canopy_area"] == pytest.approx(0.3, rel=1e-6)


@pytest.mark.gui
def test_the_output_advised_suits_all_canopies(found: Estimate, qtbot: QtBot) -> None:
    """Seen from any of them, each by its own band; reckoned anew with the lamp so dimmed."""
    line = AdviceLine()
    qtbot.addWidget(line)
    low = changed(found.plan, target=PpfdTarget(low=10.0, high=20.0))
    mixed = change_obstacle(low, 0, canopy=CarriedCanopy(target=PpfdTarget(low=15.0, high=30.0)))
    both = evaluate(mixed, found.options)
    said = set()
    for seen in (both, both.on(both.tops[0].place)):
        line.show_estimate(seen)
        assert not line.do_button.isHidden()
        said.add(line.words.text())
    assert len(said) == 1
    best = best_dimming(both)
    assert best is not None
    assert (
        f"{percent(best.share_inside)} of all canopies would lie inside their bands." in said.pop()
    )
    shares = {}
    for factor in (0.8 * best.factor, best.factor, 1.25 * best.factor):
        lamps = tuple(
            one.model_copy(update={"output_percent": one.output_percent * factor})
            for one in mixed.lamps
        )
        share = evaluate(changed(mixed, lamps=lamps), found.options).overall.share_inside
        shares[factor] = share or 0.0
    assert shares[best.factor] == max(shares.values()) == pytest.approx(best.share_inside)


def test_colours_of_each_canopy_are_told_and_written() -> None:
    what = coloured(a_tray_in_a_cabinet(), LAMP_COLOURS, WALL_COLOURS)
    known = evaluate(what, EstimateOptions(cells=(6, 6)))
    own, top, whole = content.canopy_sentences(known)
    for said in (own, top, whole):
        assert re.search(r"ePPFD \d+ µmol.*, Blue \d+ %, Red \d+ %, Far-red \d\.?\d* %", said), said
    rows = list(csv.DictReader(io.StringIO(estimate_to_csv(known))))
    for row in rows:
        bands = [float(row[f"{band}_umol_m2_s"]) for band in ("blue", "green", "red")]
        assert sum(bands) == pytest.approx(float(row["ppfd_umol_m2_s"]), abs=2e-4)
        assert float(row["far_red_umol_m2_s"]) > 0
    assert {row["canopy"] for row in rows} == {"canopy", "top_of_obstacle_1"}
    values = json.loads(estimate_to_json(known))
    assert set(values["canopies"][0]["wavebands"]) == {"blue", "green", "red", "far_red"}
    assert values["canopies"][0]["figures"]["blue_share"] < values["figures"]["red_share"]
    assert values["overall"]["eppfd"] > values["overall"]["mean"]


def test_without_colours_nothing_is_said_of_them(found: Estimate) -> None:
    assert not any("Blue" in said for said in content.canopy_sentences(found))
    assert "blue" not in estimate_to_csv(found)
    assert json.loads(estimate_to_json(found))["canopies"][0]["wavebands"] is None


def test_a_report_shows_maps_of_colours_where_they_are_known(found: Estimate) -> None:
    what = coloured(a_tray_in_a_cabinet(), LAMP_COLOURS, WALL_COLOURS)
    known = evaluate(what, EstimateOptions(cells=(6, 6)))
    (section,) = [one for one in report(Known(known)).sections if one.key == "colours"]
    (pictures,) = section.blocks
    assert isinstance(pictures, Pictures)
    told = {re.sub(r".*: (.*) from .*", r"\1", one.words): one.words for one in pictures.every}
    assert len(told) == 4
    # By hand, over the cells of both canopies: far-red is told of 400-750 nm.
    bands = {
        key: np.concatenate([one.bands[key][one.inside] for one in known.canopies if one.bands])
        for key in ("blue", "green", "red", "far_red")
    }
    seen = bands["blue"] + bands["green"] + bands["red"]
    for name, values in (
        ("Blue", 100 * bands["blue"] / seen),
        ("Red", 100 * bands["red"] / seen),
        ("Far-red", 100 * bands["far_red"] / (seen + bands["far_red"])),
        ("ePPFD", seen + bands["far_red"]),
    ):
        low, high = re.findall(r"[\d.]+", told[name].split(" from ")[1])[:2]
        ends = (float(values.min()), float(values.max()))
        assert (float(low), float(high)) == pytest.approx(ends, abs=0.51), name
    assert all(one.key != "colours" for one in report(Known(found)).sections)


@pytest.fixture(scope="module")
def led(found: Estimate) -> Estimate:
    """The same light, the plan judged by the tray."""
    return evaluate(judge_by(found.plan, 0), found.options)


def test_the_sentence_begins_with_the_canopy_that_is_judged(found: Estimate, led: Estimate) -> None:
    top = ppfd(found.tops[0].figures.mean)
    mean = ppfd(found.figures.mean)
    assert content.sentence(found).startswith(f"The plan's own canopy: mean {mean}, ")
    assert content.sentence(evaluate(on(found.plan), found.options)).startswith("Mean ")
    assert content.sentence(led).startswith(f"The canopy on obstacle 1 ('Tray'): mean {top}, ")
    own, tray_, _ = content.canopy_sentences(led)
    assert "judged" not in own
    assert tray_.startswith("Canopy on obstacle 1: Tray (the plan is judged by it): Mean ")
    assert not any("judged" in one for one in content.canopy_sentences(found))


def test_its_own_target_is_what_is_wanted(led: Estimate) -> None:
    carried = CarriedCanopy(judged=True, target=PpfdTarget(low=300.0, high=400.0))
    own = change_obstacle(led.plan, 0, canopy=carried)
    assert content.wanted_sentence(of_plan(led, own)).startswith("Wanted: 300 to 400 ")
    assert content.wanted_sentence(led).startswith("Wanted: 50 to 500 ")
    # The lowest spot of a tray lies in a corner of the tray, not of the space.
    assert "lowest corner" in content.sentence(led)


def test_exports_of_the_map_stay_those_of_the_plans_own_canopy(
    found: Estimate, led: Estimate
) -> None:
    assert estimate_to_csv(led) == estimate_to_csv(found)
    here, there = (json.loads(estimate_to_json(one)) for one in (found, led))
    assert "judged_by" not in here
    assert there.pop("judged_by") == "top_of_obstacle_1"
    here.pop("seconds"), there.pop("seconds")
    assert there == here


def test_tables_of_sweeps_and_options_say_whose_figures_stand(
    found: Estimate, led: Estimate
) -> None:
    for what, whose in ((found.plan, None), (led.plan, "top_of_obstacle_1")):
        points = sweep(what, [Over("height", values=(0.3, 0.4))], QUICK)
        rows = list(csv.DictReader(io.StringIO(sweep_to_csv(points))))
        assert [row.get("judged_by") for row in rows] == [whose] * 2
    options = [
        option(Side(name, Origin.PLAN, one.plan, estimate=one), None, None, one.plan.costs)
        for name, one in (("own", found), ("tray", led))
    ]
    rows = list(csv.DictReader(io.StringIO(options_to_csv(options, found.plan.costs))))
    assert [row["Judged by"] for row in rows] == ["Canopy", "Canopy on obstacle 1: Tray"]
    alone = options_to_csv(options[:1], found.plan.costs)
    assert "Judged by" not in alone


def test_what_differs_says_by_which_canopy_an_option_is_judged(
    found: Estimate, led: Estimate
) -> None:
    assert changes.said(found.plan, led.plan) == ("judged by the canopy on obstacle 1 ('Tray')",)
    assert changes.said(led.plan, found.plan) == ("judged by its own canopy",)


@pytest.mark.gui
def test_advice_is_given_for_the_canopy_that_is_judged(led: Estimate, qtbot: QtBot) -> None:
    line = AdviceLine()
    qtbot.addWidget(line)
    target = PpfdTarget(low=10.0, high=20.0)
    line.show_estimate(of_plan(led, led.plan.model_copy(update={"target": target})))
    assert not line.do_button.isHidden()
    assert line.words.text().startswith("With the lamp at ")


def test_the_map_of_a_report_shows_every_canopy(found: Estimate) -> None:
    top = colour_top(float(found.every_ppfd.max()))
    both, own = (
        map_drawing(one, top, LengthUnit.CM, room=(60.0, 50.0))
        for one in (found, evaluate(on(found.plan), found.options))
    )
    # The tray is nearer to the lamp: its brightest cell is the brightest of all.
    assert found.tops[0].figures.maximum > found.figures.maximum
    assert f"to {ppfd(found.tops[0].figures.maximum)}" in both.words
    assert both.svg.count("<image") == own.svg.count("<image") + 1


def test_no_canopy_is_given_up_for_the_others() -> None:
    """On the trays of the demo 37 % output would put 58 % of all inside, and the gaps under."""
    trays = evaluate(demo_plan("trays"), QUICK)
    best = best_dimming(trays)
    now = [one.figures.share_inside or 0.0 for one in trays.canopies]
    if best is not None:
        lamps = tuple(
            one.model_copy(update={"output_percent": one.output_percent * best.factor})
            for one in trays.plan.lamps
        )
        then = evaluate(changed(trays.plan, lamps=lamps), QUICK)
        after = [one.figures.share_inside or 0.0 for one in then.canopies]
        assert all(b >= a - 0.05 - 1e-6 for a, b in zip(now, after, strict=True))
    darker = tuple(
        one.model_copy(update={"output_percent": one.output_percent * 0.75})
        for one in trays.plan.lamps
    )
    dim = evaluate(changed(trays.plan, lamps=darker), QUICK)
    assert (dim.overall.share_inside or 0.0) > (trays.overall.share_inside or 0.0) + 0.05
    assert (dim.figures.share_inside or 0.0) < now[0] - 0.1, "so it is no advice"
