"""First-order uncertainty against sampling the same ranges."""

from __future__ import annotations

import numpy as np
import pytest

from planner.catalogue.library import demo_plan
from planner.estimate.evaluate import evaluate
from planner.estimate.outlook import HEIGHT_HALF_WIDTH_M, uncertainty
from planner.estimate.result import EstimateOptions, Quality
from planner.plan.edits import add_obstacle, changed
from planner.plan.lining import Lining
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.space import Obstacle

OPTIONS = EstimateOptions(cells=(8, 8), quality=Quality.PREVIEW)
DRAWS = 120


def drawn(plan: Plan, random: np.random.Generator) -> Plan:
    """The plan with every uncertain input drawn evenly from its range."""
    linings = tuple(
        lining.model_copy(update={"reflectance": random.uniform(lining.low, lining.high)})
        for lining in plan.linings
    )
    of_kind = {lamp.model.key: random.uniform(-1, 1) for lamp in plan.lamps}
    lamps = []
    for lamp in plan.lamps:
        model = lamp.model
        ppf = model.ppf * (1 + model.ppf_uncertainty * of_kind[model.key])
        shift = random.uniform(-HEIGHT_HALF_WIDTH_M, HEIGHT_HALF_WIDTH_M)
        lamps.append(
            lamp.model_copy(
                update={
                    "hanging_height": lamp.hanging_height + shift,
                    "model": model.model_copy(update={"ppf": ppf}),
                }
            )
        )
    return changed(plan, linings=linings, lamps=tuple(lamps))


@pytest.mark.slow
def test_agrees_with_sampling() -> None:
    """Standard deviations of 120 draws have a standard error of 6.5 %; three are allowed."""
    plan = demo_plan()
    random = np.random.default_rng(20)
    figures = [evaluate(drawn(plan, random), OPTIONS).figures for _ in range(DRAWS)]
    found = uncertainty(plan, OPTIONS)
    assert found is not None
    for name, value in (
        ("mean", found.mean),
        ("minimum", found.minimum),
        ("maximum", found.maximum),
        ("dli", found.dli),
    ):
        sampled = np.std([getattr(f, name) for f in figures], ddof=1)
        assert value == pytest.approx(sampled, rel=0.2), name


def test_flux_alone_is_proportional() -> None:
    """With nothing else uncertain, ±u of flux (even) is u/√3 of every figure."""
    plan = demo_plan()
    linings = tuple(
        x.model_copy(update={"low": x.reflectance, "high": x.reflectance}) for x in plan.linings
    )
    found = uncertainty(changed(plan, linings=linings), OPTIONS)
    assert found is not None
    flux = next(part for part in found.parts if part.label.startswith("photon flux"))
    mean = evaluate(plan, OPTIONS).figures.mean
    relative = plan.lamps[0].model.ppf_uncertainty / np.sqrt(3)
    assert flux.mean == pytest.approx(relative * mean, rel=0.01)


def test_parts_add_up_in_squares_and_are_sorted() -> None:
    found = uncertainty(demo_plan(), OPTIONS)
    assert found is not None
    assert found.mean**2 == pytest.approx(sum(part.mean**2 for part in found.parts), rel=1e-9)
    means = [part.mean for part in found.parts]
    assert means == sorted(means, reverse=True)


def test_dark_plan_has_none() -> None:
    assert uncertainty(changed(demo_plan(), lamps=()), OPTIONS) is None


def potted(names: tuple[str, str]) -> Plan:
    """The demo plan with two pots of different materials, the one certain, the other not."""
    plan = demo_plan()
    sure = Lining(key="sure", name="Sure", reflectance=0.5, low=0.5, high=0.5)
    vague = Lining(key="vague", name="Vague", reflectance=0.5, low=0.0, high=1.0)
    x0, y0, x1, y1 = plan.space.bounds
    for share, name, lining in ((0.3, names[0], sure), (0.7, names[1], vague)):
        pot = Obstacle(
            name=name, x=x0 + share * (x1 - x0), y=(y0 + y1) / 2, underside=plan.canopy.height,
            length=0.15, width=0.15, thickness=0.15, lining=lining.key,
        )  # fmt: skip
        plan = add_obstacle(plan, pot, lining)
    return plan


@pytest.mark.parametrize("names", [("Pot", "Pot"), ("Big Pot", "Pot"), ("Pot", "Big Pot")])
def test_names_of_obstacles_decide_nothing(names: tuple[str, str]) -> None:
    """Whatever two obstacles are called, each has its own material, share and uncertainty."""
    plain = uncertainty(potted(("One", "Two")), OPTIONS)
    named = uncertainty(potted(names), OPTIONS)
    assert plain is not None
    assert named is not None
    assert named.mean == pytest.approx(plain.mean, rel=1e-9)
    assert [part.mean for part in named.parts] == pytest.approx([p.mean for p in plain.parts])


def test_two_obstacles_of_one_name_have_a_photon_row_each() -> None:
    plan = potted(("Pot", "Pot"))
    shares = {share.place: share for share in evaluate(plan, OPTIONS).shares}
    rows = [shares[Place(PlaceKind.OBSTACLE, k)].photon_flux for k in range(2)]
    assert all(row > 0 for row in rows)
    titles = [place.title(plan) for place in shares]
    assert titles.count("Obstacle 1: Pot") == titles.count("Obstacle 2: Pot") == 1
