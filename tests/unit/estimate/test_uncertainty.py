"""First-order uncertainty against sampling the same ranges."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.interpolate import RegularGridInterpolator

from planner.catalogue.library import demo_plan
from planner.estimate.evaluate import Cache, evaluate
from planner.estimate.odds import By, Odds, Sway, sway
from planner.estimate.outlook import (
    HEIGHT_HALF_WIDTH_M,
    through_ranges,
    uncertainty,
    uncertainty_from,
)
from planner.estimate.result import EstimateOptions, Quality
from planner.estimate.sensitivity import Reckoner
from planner.plan.edits import add_obstacle, change_lamp, change_lining, changed
from planner.plan.lamp import CosineProfile, Lamp, LampModel, PointBody, TableProfile
from planner.plan.lining import Lining, WallCover
from planner.plan.lit import depends, same_light
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.space import Canopy, Obstacle, Space
from tests.unit.estimate.test_odds import HEIGHT, cabinet

OPTIONS = EstimateOptions(cells=(8, 8), quality=Quality.PREVIEW)
DRAWS = 120


def beamed(model: LampModel, where: float) -> CosineProfile:
    """The cosine law of a lamp whose half-peak cone is wider or narrower than stated."""
    assert isinstance(model.profile, CosineProfile)
    # Half of the peak is left where cos^m is a half.
    edge = np.arccos(0.5 ** (1 / model.profile.exponent))
    edge += np.radians(where * model.beam_uncertainty_deg / 2)
    return CosineProfile(exponent=float(np.log(0.5) / np.log(np.cos(edge))))


def drawn(plan: Plan, random: np.random.Generator) -> Plan:
    """The plan with every uncertain input drawn evenly from its range."""
    linings = tuple(
        lining.model_copy(update={"reflectance": random.uniform(lining.low, lining.high)})
        for lining in plan.linings
    )
    of_kind = {lamp.model.key: random.uniform(-1, 1) for lamp in plan.lamps}
    beams = {lamp.model.key: random.uniform(-1, 1) for lamp in plan.lamps}
    lamps = []
    for lamp in plan.lamps:
        model = lamp.model
        ppf = model.ppf * (1 + model.ppf_uncertainty * of_kind[model.key])
        shift = random.uniform(-HEIGHT_HALF_WIDTH_M, HEIGHT_HALF_WIDTH_M)
        lamps.append(
            lamp.model_copy(
                update={
                    "hanging_height": lamp.hanging_height + shift,
                    "model": model.model_copy(
                        update={"ppf": ppf, "profile": beamed(model, beams[model.key])}
                    ),
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


@pytest.mark.slow
def test_intervals_cover_what_beam_flux_lining_and_height_leave_open() -> None:
    """2,000 draws: 95 % of them in an interval of 95 %, within 2 % of chance.

    Drawn through a surrogate of its own, as in the tests of odds: the core on a full grid of
    beam, reflectance and height, joined by cubic interpolation; light is proportional to flux. The
    band of ± 1.96 standard uncertainties takes a sum for normal: where one even input outweighs
    all others it holds more (alone it would hold everything).
    """
    plan = cabinet("matt-white-paint")
    model = plan.lamps[0].model
    plan = change_lamp(plan, 0, model=changed(model, beam_uncertainty_deg=30.0))
    model, lining = plan.lamps[0].model, plan.lining("matt-white-paint")
    # A range that is even about its value, so that the band lies about the middle of the draws.
    lining = lining.model_copy(update={"low": 0.72, "reflectance": 0.8, "high": 0.88})
    plan = change_lining(plan, lining)
    options, cache = EstimateOptions(cells=(12, 12), quality=Quality.PREVIEW), Cache()
    beams, rhos = np.linspace(-1, 1, 7), np.linspace(lining.low, lining.high, 5)
    heights = HEIGHT + HEIGHT_HALF_WIDTH_M * np.array([-1.0, -1 / 3, 1 / 3, 1.0])

    def at(rho: float, beam: float, height: float) -> tuple[float, float]:
        lined = change_lining(plan, lining.model_copy(update={"reflectance": rho}))
        bent = changed(model, profile=beamed(model, beam))
        hung = change_lamp(lined, 0, model=bent, hanging_height=height)
        figures = evaluate(hung, options, cache=cache).figures
        return figures.mean, figures.minimum

    table = np.log([[[at(r, b, h) for h in heights] for b in beams] for r in rhos])
    random, count = np.random.default_rng(3), 2_000
    drawn_at = np.column_stack(
        [
            random.uniform(lining.low, lining.high, count),
            random.uniform(-1, 1, count),
            random.uniform(heights[0], heights[-1], count),
        ]
    )
    nodes = RegularGridInterpolator((rhos, beams, heights), table, method="cubic")
    flux = 1 + model.ppf_uncertainty * random.uniform(-1, 1, count)
    mean, lowest = (np.exp(nodes(drawn_at)) * flux[:, None]).T

    estimate, found, swayed = evaluate(plan, options), uncertainty(plan, options), sway(plan)
    assert found is not None
    assert swayed is not None
    odds = Odds.of([(estimate, Sway(swayed.curves))])
    figures = estimate.figures
    assert figures.min_over_mean is not None
    for by, values, band in (
        (By.MEAN, mean, found.band(figures.mean, found.mean)),
        (By.LOWEST, lowest, found.band(figures.minimum, found.minimum)),
        (By.EVENNESS, lowest / mean, found.band(figures.min_over_mean, found.min_over_mean)),
    ):
        low, high = np.exp(np.percentile(odds.logs[by][0], [2.5, 97.5]))
        assert 0.93 <= np.mean((low <= values) & (values <= high)) <= 0.97, by
        low, high = band
        assert np.mean((low <= values) & (values <= high)) >= 0.93, by


def black(beam: float) -> Plan:
    """A small lamp over one level in black, so that all that counts is what it sends straight."""
    model = LampModel(
        key="small", name="Small", body=PointBody(), profile=CosineProfile.from_beam_angle(beam),
        ppf=100.0, watts=50.0, ppf_uncertainty=0.0, beam_uncertainty_deg=20.0,
    )  # fmt: skip
    nothing = Lining(key="black", name="Black", reflectance=0.0, low=0.0, high=0.0)
    return Plan(
        space=Space(footprint=((0, 0), (0.6, 0), (0.6, 0.6), (0, 0.6)), height=1.0),
        lamps=(Lamp(model=model, x=0.3, y=0.3, hanging_height=0.6),),
        linings=(nothing,), walls=(WallCover.plain("black"),) * 4, ceiling="black", floor="black",
        canopy=Canopy(height=0.2, closed=True, reflectance=0.0),
    )  # fmt: skip


def test_the_beam_alone_moves_the_light_as_the_law_of_distance_says() -> None:
    """In black, E = Φ (m + 1) / 2π · cos^(m + 3) θ / h² at both ends of the beam's range.

    The photometric distance law (CIE S 017, 17-25-104) on a level plane, for cos^m of flux Φ.
    """
    plan = black(110.0)
    reckoner = Reckoner(plan, OPTIONS)
    moved = {one.quantity: (one, ends) for one, ends in through_ranges(reckoner)}
    one, ends = moved["beam"]
    assert one.at == (90.0, 130.0)
    assert one.words == "beam of Small"
    # Corner cells of 7.5 cm lie well away from the middle, where a cell is hardly uneven.
    base, h = reckoner.base, 0.6
    theta = np.arctan(np.hypot(base.x[0] - 0.3, base.y[0] - 0.3) / h)
    for beam, ppfd in zip((90.0, 110.0, 130.0), ends, strict=True):
        m = np.log(0.5) / np.log(np.cos(np.radians(beam / 2)))
        law = 100.0 * (m + 1) / (2 * np.pi) * np.cos(theta) ** (m + 3) / h**2
        assert ppfd[0, 0] == pytest.approx(law, rel=0.01)
    # A half-width w taken as evenly likely counts as w/√3 of what the ends are apart.
    found = uncertainty_from(reckoner)
    assert found is not None
    part = next(p for p in found.parts if p.quantity == "beam")
    inside = base.cell_area > 0
    apart = np.average((ends[2] - ends[0])[inside], weights=base.cell_area[inside])
    assert part.mean == pytest.approx(abs(apart) / 2 / np.sqrt(3))


@pytest.mark.parametrize("known", [True, False])
def test_nothing_is_reckoned_where_no_beam_is_in_doubt(known: bool) -> None:
    plan = black(110.0)
    model = plan.lamps[0].model
    table = TableProfile(angles_deg=(0, 90), relative=(1, 0))
    parts = {"beam_uncertainty_deg": 0.0} if known else {"profile": table}
    sure = change_lamp(plan, 0, model=changed(model, **parts))
    quantities = [one.quantity for one, _ in through_ranges(Reckoner(sure, OPTIONS))]
    assert quantities == ["hanging height"]


def test_the_light_itself_knows_nothing_of_the_doubt() -> None:
    plan = demo_plan()
    sure = changed(
        plan,
        lamps=tuple(
            changed(lamp, model=changed(lamp.model, beam_uncertainty_deg=0.0))
            for lamp in plan.lamps
        ),
    )
    assert (evaluate(sure, OPTIONS).ppfd.tobytes()) == evaluate(plan, OPTIONS).ppfd.tobytes()
    assert same_light(sure, plan)
    assert depends(sure, doubts=True) != depends(plan, doubts=True)


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
