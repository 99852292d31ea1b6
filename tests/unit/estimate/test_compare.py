"""Side by side: figures, ratios, maps, and what can be told apart."""

from __future__ import annotations

import math

import numpy as np
import pytest

from planner.estimate.compare import (
    OPEN_AIR_NAME,
    against,
    compare,
    open_air,
    ranking,
    rows,
)
from planner.estimate.evaluate import Cancelled
from planner.estimate.result import EstimateOptions, Quality
from planner.estimate.telling import Sway, Telling, sway, tell, tell_means, verdict
from planner.estimate.uncertainty import Input
from planner.metrics.figures import FIGURES
from planner.plan import edits
from planner.plan.lining import Lining
from planner.plan.plan import Plan
from planner.plan.variant_edits import add_variants, change_variant, try_linings
from planner.reports.sweep_csv import comparison_to_csv
from tests.unit.reports.sample_estimate import sample_estimate, sample_plan

OPTIONS = EstimateOptions(cells=(8, 8), quality=Quality.PREVIEW)


def film(name: str, rho: float, half: float = 0.0) -> Lining:
    return Lining(
        key=name.lower(), name=name, reflectance=rho, low=rho - half, high=rho + half
    )  # fmt: skip


def half_output(plan: Plan) -> Plan:
    return add_variants(plan, ("Half", edits.change_lamp(plan, 0, output_percent=50)))


def column(name: str) -> int:
    return [one.key for one in FIGURES].index(name)


def test_half_the_output_is_half_the_light() -> None:
    plan = half_output(try_linings(sample_plan(), [film("Black", 0.05)]))
    found = compare(plan, OPTIONS, with_open_air=True)
    names = [side.name for side in found.sides]
    assert names == [plan.name, "Black", "Half", OPEN_AIR_NAME]
    table = rows(found)
    half = table[2]
    for figure, percent in (("mean", 50), ("minimum", 50), ("dli", 50), ("watts", 50), ("cv", 100)):
        assert half.ratios[column(figure)] == pytest.approx(percent), figure
    assert half.said == ("lamp 1: output 50 %",)
    # Black walls are nearly no walls; both are darker than white ones.
    assert table[1].ratios[column("mean")] < 90  # type: ignore[operator]
    against_black = rows(found, "Black")
    assert against_black[1].ratios[column("mean")] == pytest.approx(100)
    assert against_black[0].ratios[column("mean")] == pytest.approx(
        1e4 / table[1].ratios[column("mean")]  # type: ignore[operator]
    )
    ranks = ranking(found)
    assert ranks[0].name == plan.name
    assert [r.mean for r in ranks] == sorted((r.mean for r in ranks), reverse=True)
    low, high = found.colour_range
    assert low == min(r.lowest for r in ranks)
    assert high == max(r.highest for r in ranks)
    with pytest.raises(KeyError, match="nothing called"):
        rows(found, "Nobody")


def test_the_table_as_csv() -> None:
    found = compare(half_output(sample_plan()), OPTIONS)
    lines = comparison_to_csv(rows(found)).splitlines()
    assert lines[0].startswith("Name,Differs in,Mean (µmol m⁻² s⁻¹),Mean ratio (%)")
    assert lines[2].split(",")[3] == "50"
    assert "\t" in comparison_to_csv(rows(found), "\t")


def test_open_air_has_no_walls() -> None:
    plan = open_air(half_output(sample_plan()))
    assert {band.lining for cover in plan.walls for band in cover.bands} == {"open"}
    assert plan.ceiling == "open"


def test_one_that_cannot_be_estimated_says_so_and_the_others_go_on() -> None:
    mirror = film("Perfect", 1.0)
    plan = sample_plan(canopy=sample_plan().canopy.model_copy(update={"reflectance": 1.0}))
    plan = try_linings(plan, [mirror])
    both = edits.line_ceiling(plan.variants[0].setup, mirror)
    found = compare(change_variant(plan, "variant-1", setup=both), OPTIONS)
    assert found.sides[0].estimate is not None
    assert found.sides[1].estimate is None
    assert "cannot be estimated" in found.sides[1].problems[0]
    assert len(ranking(found)) == 1
    assert rows(found)[1].values[0] is None


def test_cancel_and_progress() -> None:
    plan = half_output(sample_plan())
    seen: list[float] = []
    compare(plan, OPTIONS, progress=seen.append)
    assert seen[-1] == 1.0
    with pytest.raises(Cancelled):
        compare(plan, OPTIONS, cancelled=lambda: True)


def test_maps_against_a_baseline() -> None:
    base = sample_estimate()
    twice = sample_estimate()
    object.__setattr__(twice, "ppfd", 2 * base.ppfd)
    found = against(twice, base)
    assert np.nanmax(np.abs(found.ratio - 2)) < 1e-12
    assert np.nanmax(np.abs(found.difference - base.ppfd)) < 1e-12
    assert found.reach == pytest.approx(float(np.nanmax(base.ppfd)))


def test_maps_on_different_grids_are_read_off_linearly() -> None:
    """A plane a + b x + c y is kept by linear reading, whatever the grids."""
    fine, coarse = sample_estimate(cells=(12, 10)), sample_estimate(cells=(6, 5))
    for estimate in (fine, coarse):
        x, y = np.meshgrid(estimate.x, estimate.y)
        object.__setattr__(estimate, "ppfd", 100 + 50 * x + 20 * y)
    inner = against(fine, coarse).difference[1:-1, 1:-1]
    assert np.abs(inner).max() < 1e-9


# -- telling apart ----------------------------------------------------------------------


def of(name: str) -> Input:
    return Input("reflectance", name, name)


def test_shared_inputs_drop_out() -> None:
    """Flux 8.66 % in both cancels; walls 3 % against 1 %, shared: u = 2 %. 1.12·e^(±0.0392)."""
    first = {of("flux"): 0.0866, of("walls"): 0.03}
    second = {of("flux"): 0.0866, of("walls"): 0.01}
    found = tell(112.0, 100.0, first, second)
    assert found.low == pytest.approx(1.12 * math.exp(-0.0392))
    assert found.high == pytest.approx(1.12 * math.exp(0.0392))
    assert found.clear


def test_inputs_of_one_alone_add_up() -> None:
    """Foil 3 % in the first, paint 4 % in the second: u = 5 %, band e^(±0.098): 1.05 is inside."""
    found = tell(105.0, 100.0, {of("foil"): 0.03}, {of("paint"): 0.04})
    assert found.high / found.ratio == pytest.approx(math.exp(0.098))
    assert not found.clear


def test_verdicts_in_words() -> None:
    more = verdict("White board", Telling(1.12, 1.05, 1.19))
    assert more == "White board gives 12 % more, between 5 and 19 %; clearly more."
    less = verdict("Paint", Telling(0.8, 0.7, 0.91), "foil")
    assert less == "Paint gives 20 % less than foil, between 9 and 30 %; clearly less."
    same = verdict("Paint", Telling(1.02, 0.95, 1.08), "film")
    assert same == "Paint and film cannot be told apart: the ratio lies between 95 and 108 %."


def test_a_lamps_flux_does_not_blur_a_comparison_of_linings() -> None:
    """Two linings known exactly under one lamp of ±10 %: only the arithmetic is left."""
    plan = sample_plan(floor="open")
    plan = edits.line_all_walls(plan, film("One", 0.8))
    other = edits.line_all_walls(plan, film("Two", 0.7))
    found = compare(try_linings(plan, [film("Two", 0.7)]), OPTIONS)
    first, second = found.sides[0].estimate, found.sides[1].estimate
    assert first is not None
    assert second is not None
    one, two = sway(plan, first), sway(other, second)
    assert one is not None
    assert two is not None
    # 0.1/√3 of the level itself, and the centimetre of height.
    assert one.mean[Input("photon flux", "panel", "")] == pytest.approx(0.1 / math.sqrt(3))
    assert one.relative_mean > 0.055
    telling = tell_means(first, second, one, two)
    assert telling is not None
    assert telling.clear
    assert telling.high / telling.low < 1.03


def test_paired_telling_agrees_with_drawing_the_shared_input() -> None:
    """One lining with a range on the walls of both, the second with a darker ceiling too."""
    wall = film("Wall", 0.7, half=0.1)
    plan = edits.line_all_walls(sample_plan(), wall)
    other = edits.line_ceiling(plan, film("White", 0.9))
    one, two = sway(plan), sway(other)
    assert one is not None
    assert two is not None
    key = Input("reflectance", wall.key, "")
    paired = abs(one.mean[key] - two.mean[key])

    def ratio(rho: float) -> float:
        moved = wall.model_copy(update={"reflectance": rho})
        sides = [compare(edits.change_lining(p, moved), OPTIONS).sides[0] for p in (plan, other)]
        means = [side.estimate.figures.mean for side in sides if side.estimate is not None]
        return means[0] / means[1]

    # One standard uncertainty is 0.1/√3 of reflectance; these are 0.09 either side.
    by_hand = abs(math.log(ratio(0.79) / ratio(0.61))) / 0.18 * 0.1 / math.sqrt(3)
    assert paired == pytest.approx(by_hand, rel=0.25)
    assert paired < 0.5 * one.mean[key]


def test_a_dark_plan_has_no_sway() -> None:
    assert sway(edits.change_lamp(sample_plan(), 0, output_percent=0)) is None
    estimate = sample_estimate(mean=0.0, minimum=0.0)
    empty = Sway({}, {})
    assert tell_means(estimate, sample_estimate(), empty, empty) is None


def test_photoperiod_changes_dli_only() -> None:
    plan = sample_plan()  # 14 h
    short_days = edits.changed(plan, photoperiod_hours=7)
    found = compare(add_variants(plan, ("Short", short_days)), OPTIONS)
    short = rows(found)[1]
    assert short.ratios[column("dli")] == pytest.approx(50)
    assert short.ratios[column("mean")] == pytest.approx(100)
