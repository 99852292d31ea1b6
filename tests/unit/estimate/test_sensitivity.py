"""What a surface's reflectance is worth, against independent finite differences."""

from __future__ import annotations

import dataclasses

import numpy as np
import pytest

from planner.catalogue.library import demo_plan
from planner.estimate.evaluate import Cancelled, evaluate
from planner.estimate.result import QUICK, EstimateOptions, Quality
from planner.estimate.sensitivity import LINED, Reckoner, SurfaceGain, brought_by, gains_from
from planner.plan.edits import change_lining, changed, set_wall_cover
from planner.plan.lamp import Lamp, LampModel, PanelBody
from planner.plan.lining import Lining, WallCover
from planner.plan.place import Place, PlaceKind, opens
from planner.plan.plan import Plan
from planner.plan.space import Canopy, Space

STRAIGHT = EstimateOptions(cells=(8, 8), quality=Quality.DEFAULT)


def lining(key: str, total: float, share: float = 0.0, wrinkle: float = 0.0) -> Lining:
    return Lining(
        key=key,
        name=key,
        reflectance=total,
        specular_share=share,
        wrinkle=wrinkle,
        low=0.0,
        high=1.0,
    )


def cabinet(*linings: Lining) -> Plan:
    """A box of 60 x 50 x 90 cm whose four walls carry the linings given, in order."""
    panel = LampModel(
        key="p", name="Panel", body=PanelBody(length=0.3, width=0.2), ppf=100, watts=50
    )
    return Plan(
        space=Space(footprint=((0, 0), (0.6, 0), (0.6, 0.5), (0, 0.5)), height=0.9),
        walls=tuple(WallCover.plain(wall.key) for wall in linings),
        linings=tuple({wall.key: wall for wall in linings}.values()),
        canopy=Canopy(height=0.2, reflectance=0.06),
        lamps=(Lamp(model=panel, x=0.2, y=0.25, hanging_height=0.5),),
    )


def surface_gains(plan: Plan, options: EstimateOptions | None = None) -> tuple[SurfaceGain, ...]:
    return gains_from(Reckoner(plan, options or EstimateOptions(quality=Quality.PREVIEW)))


@pytest.mark.slow
@pytest.mark.parametrize(
    ("share", "wrinkle"), [(0.0, 0.0), (0.6, 0.0), (0.8, 0.25)], ids=["diffuse", "mixed", "film"]
)
def test_gain_agrees_with_separate_estimates(share: float, wrinkle: float) -> None:
    """What ten points bring equals a difference of estimates of other seeds."""
    # Only wall 2 carries the tested lining.
    others = lining("other", 0.5)
    tested = lining("tested", 0.7, share, wrinkle)
    plan = cabinet(others, tested, others, others)
    gain = next(g for g in surface_gains(plan) if g.place == Place(PlaceKind.WALL, 1, 0))

    def mean(total: float, first_seed: int) -> float:
        part = change_lining(plan, lining("tested", total, share, wrinkle))
        runs = [
            evaluate(part, dataclasses.replace(STRAIGHT, seed=first_seed + k)).figures.mean
            for k in range(3)
        ]
        return sum(runs) / len(runs)

    expected = (mean(0.8, 11) - mean(0.7, 23)) / 0.1
    assert gain.mean_per_unit == pytest.approx(expected, rel=0.08)


def test_gains_add_up_to_the_derivative_of_a_uniform_box() -> None:
    """E = Φ/(S (1 - ρ)) for one ρ everywhere, so Σ ∂E/∂ρ_k = Φ/(S (1 - ρ)²).

    Sumpner's principle, for the mean over all surfaces; a closed canopy takes part with
    the same ρ. The canopy's own share of the mean is not the mean over all surfaces, so
    the check is on the sum of absorbed flux: (1 - ρ) E S = Φ at any ρ, which makes the
    relative change of the mean over all surfaces 1/(1 - ρ). In a cube with a lamp that
    fills the ceiling evenly the canopy follows to first order within a few per cent.
    """
    rho = 0.6
    same = lining("same", rho)
    plan = changed(cabinet(same, same, same, same), ceiling="same")
    plan = changed(plan, canopy=Canopy(height=0.2, reflectance=rho))
    options = EstimateOptions(cells=(8, 8))
    reckoner, step = Reckoner(plan, options), 0.005
    slopes = [
        float(np.nanmean(reckoner.lined_at([place], rho + step) - reckoner.base.ppfd)) / step
        for place in dict.fromkeys(reckoner.scene.places)
    ]
    total = sum(slopes)
    direct = changed(
        plan, canopy=Canopy(height=0.2, reflectance=0.0), linings=(lining("same", 0.0),)
    )
    diffuse = evaluate(plan, options).figures.mean - evaluate(direct, options).figures.mean
    # The diffuse part is close to uniform, hence close to Φρ/(S(1-ρ)), whose derivative is
    # (diffuse part)/(ρ (1-ρ)).
    assert total == pytest.approx(diffuse / (rho * (1 - rho)), rel=0.1)


def test_every_gain_is_positive_and_sorted() -> None:
    plan = cabinet(*(lining("mixed", 0.8, 0.4) for _ in range(4)))
    gains = surface_gains(plan)
    assert [g.place.kind for g in gains].count(PlaceKind.WALL) == 4
    assert all(g.mean_per_unit > 0 for g in gains)
    values = [g.mean_per_unit for g in gains]
    assert values == sorted(values, reverse=True)


def test_nearer_wall_is_worth_more_to_the_mean() -> None:
    """The lamp hangs near wall 4 (x = 0) of the cabinet, so that wall counts more."""
    plan = cabinet(*(lining("m", 0.7) for _ in range(4)))
    gains = {g.place: g.mean_per_unit for g in surface_gains(plan)}
    assert gains[Place(PlaceKind.WALL, 3, 0)] > gains[Place(PlaceKind.WALL, 1, 0)]


def test_brought_by_equals_lining_the_wall() -> None:
    plan = cabinet(*(lining("dull", 0.3) for _ in range(4)))
    bright = lining("bright", 0.9, 0.5)
    row = next(
        row for row in brought_by(plan, bright) if row[0].place == Place(PlaceKind.WALL, 2, 0)
    )
    options = EstimateOptions()
    lined = set_wall_cover(plan, 2, WallCover.plain("bright"), bright)
    expected = evaluate(lined, options).figures.mean - evaluate(plan, options).figures.mean
    assert row[1] == pytest.approx(expected, rel=0.05)


def test_of_four_dark_corners_no_wall_lifts_the_lowest_more_than_another() -> None:
    """By symmetry: each wall of a square under a lamp in the middle brings the same."""
    plan = cabinet(*(lining("m", 0.7) for _ in range(4)))
    lamp = plan.lamps[0]
    square = changed(
        plan,
        space=Space(footprint=((0, 0), (0.6, 0), (0.6, 0.6), (0, 0.6)), height=0.9),
        lamps=(
            Lamp(
                model=lamp.model.model_copy(update={"body": PanelBody(length=0.3, width=0.3)}),
                x=0.3,
                y=0.3,
                hanging_height=0.5,
            ),
        ),
    )
    told = gains_from(Reckoner(square, STRAIGHT), None, LINED)
    walls = [gain for gain in told if gain.place.kind is PlaceKind.WALL]
    brought = [gain.minimum for gain in walls]
    assert len(brought) == 4
    # And what chance alone tells apart is told as equal.
    assert len(set(brought)) == 1
    assert len({gain.mean_per_unit for gain in walls}) == 1
    # Two corners stay where they were but for the light that goes round: less than the mean gains.
    assert all(0 < gain.minimum < 0.1 * gain.mean_per_unit for gain in walls)


def test_opening_is_worth_lining() -> None:
    plan = cabinet(*(lining("m", 0.7) for _ in range(4)))
    opened = set_wall_cover(plan, 0, WallCover.plain("open"))
    gain = next(g for g in surface_gains(opened) if g.place == Place(PlaceKind.WALL, 0, 0))
    assert opens(opened, gain.place)
    assert gain.reflectance == 0
    assert gain.mean_per_unit > 0


def test_can_be_cancelled() -> None:
    plan = cabinet(*(lining("m", 0.7) for _ in range(4)))
    with pytest.raises(Cancelled):
        Reckoner(plan, EstimateOptions(quality=Quality.PREVIEW), lambda: True)


def test_no_surface_of_the_trays_takes_light_from_the_lowest_spot() -> None:
    # Reflectance only adds to the light of any place; 61 of 64 were told to go.
    assert all(gain.minimum >= 0 for gain in surface_gains(demo_plan("trays")))


def test_walls_of_a_square_tent_are_equal_and_the_ceiling_is_not() -> None:
    """By symmetry; wall 2 was ranked over walls 3, 4 and 1 by fractions of a per cent."""
    gains = gains_from(Reckoner(demo_plan("tent"), QUICK), None, LINED)
    walls = [gain for gain in gains if gain.place.kind is PlaceKind.WALL]
    ceiling = next(gain for gain in gains if gain.place.kind is PlaceKind.CEILING)
    assert len(walls) == 4
    assert len({(gain.mean_per_unit, gain.minimum) for gain in walls}) == 1
    assert ceiling.mean_per_unit < walls[0].mean_per_unit / 2


def test_walls_about_trays_bring_what_lining_them_brings() -> None:
    """Each wall at 0.98 in place of 0.88, a whole estimate each; steps of half a point told 12.2.

    The plan is symmetric about the line through walls 2 and 4, so walls 1 and 3 are equal.
    """
    plan = demo_plan("trays")
    gains = {
        gain.place.index: gain
        for gain in gains_from(Reckoner(plan, QUICK), None, (PlaceKind.WALL,))
    }
    options = EstimateOptions()
    before = evaluate(plan, options).figures.mean
    for wall in range(4):
        old = plan.lining(plan.walls[wall].bands[0].lining)
        assert old.reflectance == pytest.approx(0.88)
        bright = old.model_copy(update={"key": "bright", "reflectance": 0.98, "high": 0.98})
        lined = set_wall_cover(plan, wall, WallCover.plain("bright"), bright)
        brought = evaluate(lined, options).figures.mean - before
        assert 0.1 * gains[wall].mean_per_unit == pytest.approx(brought, rel=0.12)
    assert gains[0].mean_per_unit == gains[2].mean_per_unit
