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
from planner.command_line import summary
from planner.estimate.evaluate import evaluate
from planner.estimate.result import Estimate, EstimateOptions
from planner.plan.target import PpfdTarget
from planner.reports import content
from planner.reports.exports import estimate_to_csv, estimate_to_json
from tests.physics.rooms import box, lamp, plan
from tests.physics.test_tops import (
    LAMP_COLOURS,
    WALL_COLOURS,
    a_tray_in_a_cabinet,
    coloured,
    on,
    tray,
)


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
def test_advice_that_knows_one_canopy_only_is_not_given(found: Estimate, qtbot: QtBot) -> None:
    """Far over its band alone the lamp is to be dimmed; with trays all canopies are told."""
    line = AdviceLine()
    qtbot.addWidget(line)
    target = PpfdTarget(low=10.0, high=20.0)
    both, alone = (
        evaluate(what.model_copy(update={"target": target}), found.options)
        for what in (found.plan, on(found.plan))
    )
    line.show_estimate(alone)
    assert not line.do_button.isHidden()
    line.show_estimate(both)
    assert line.do_button.isHidden()
    assert line.words.text().startswith(
        "That is the plan's own canopy. All canopies together: Mean"
    )


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
