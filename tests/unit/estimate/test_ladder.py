"""The ladder of heights tells what an estimate of each height tells."""

from __future__ import annotations

import math

import numpy as np
import pytest

from planner.catalogue.library import demo_plan
from planner.estimate import evaluate as door
from planner.estimate.evaluate import Cache, Cancelled, evaluate
from planner.estimate.ladder import Ladder, Rung, ladder, rungs_between
from planner.estimate.result import QUICK
from planner.plan.edits import change_lamp, changed
from planner.plan.lamp import Lamp, LampModel, PointBody
from planner.plan.lining import WallCover
from planner.plan.plan import Plan
from planner.plan.space import Canopy, Space
from planner.units import LengthUnit


def test_each_rung_is_the_estimate_of_its_height() -> None:
    plan = demo_plan()
    found = ladder(plan, (0,), (0.15, 0.3, 0.5), cache=Cache())
    for rung in found.rungs:
        alone = evaluate(change_lamp(plan, 0, hanging_height=rung.height), QUICK).figures
        assert rung.mean == alone.mean
        assert rung.minimum == alone.minimum
        assert rung.min_over_mean == pytest.approx(alone.min_over_mean)


def test_lamps_raised_together_are_all_raised() -> None:
    plan = demo_plan()
    found = ladder(plan, (0, 1), (0.2, 0.6))
    both = change_lamp(change_lamp(plan, 0, hanging_height=0.6), 1, hanging_height=0.6)
    assert found.rungs[1].mean == evaluate(both, QUICK).figures.mean


def test_a_point_over_a_black_room_falls_by_the_inverse_square() -> None:
    lamp = LampModel(key="point", name="Point", body=PointBody(), ppf=math.pi, watts=2.0)
    footprint = ((0.0, 0.0), (0.1, 0.0), (0.1, 0.1), (0.0, 0.1))
    plan = Plan(
        name="Shaft", space=Space(footprint=footprint, height=2.0),
        walls=(WallCover.plain("open"),) * 4,
        canopy=Canopy(height=0.0, reflectance=0.0),
        lamps=(Lamp(model=lamp, x=0.05, y=0.05, hanging_height=0.5),),
    )  # fmt: skip
    near, far = ladder(plan, (0,), (0.5, 1.0)).rungs
    # I = Φ / π · cos θ, so E = h² / d⁴ for Φ = π µmol/s: its mean over a fine grid of points.
    offset = (np.arange(200) + 0.5) / 2000 - 0.05
    across = offset[:, None] ** 2 + offset[None, :] ** 2
    for rung in (near, far):
        expected = float((rung.height**2 / (rung.height**2 + across) ** 2).mean())
        assert rung.mean == pytest.approx(expected, rel=0.001)
    assert near.mean / far.mean == pytest.approx(4.0, rel=0.02)


def test_from_rung_to_rung_only_the_lamp_is_computed_anew(monkeypatch: pytest.MonkeyPatch) -> None:
    calls: list[str] = []
    for name in ("_geometry", "_paths", "response", "lamp_light"):
        known = getattr(door, name)

        def counted(*given: object, name: str = name, known: object = known) -> object:
            calls.append(name)
            return known(*given)  # type: ignore[operator]

        monkeypatch.setattr(door, name, counted)
    ladder(demo_plan(), (0,), (0.2, 0.3, 0.4, 0.5), cache=Cache())
    made = {name: calls.count(name) for name in dict.fromkeys(calls)}
    # Two lamps hang there: four heights of the one, and the other once.
    assert made == {"_geometry": 1, "_paths": 1, "response": 1, "lamp_light": 5}


def test_a_ladder_fits_while_only_its_lamps_climb() -> None:
    plan = demo_plan()
    found = Ladder(plan, (0,), (Rung(0.2, 100, 50), Rung(0.4, 80, 60)))
    assert found.fits(change_lamp(plan, 0, hanging_height=0.4))
    assert not found.fits(change_lamp(plan, 1, hanging_height=0.4))
    assert not found.fits(change_lamp(plan, 0, x=0.3))
    assert not found.fits(changed(plan, lamps=()))


def test_between_two_rungs_it_is_read_off_and_beyond_them_not() -> None:
    found = Ladder(demo_plan(), (0,), (Rung(0.2, 100, 50), Rung(0.4, 80, 60)))
    between = found.at(0.25)
    assert between is not None
    assert (between.mean, between.minimum) == pytest.approx((95, 52.5))
    assert found.at(0.5) is None


def test_against_a_band() -> None:
    rung = Rung(0.3, 150.0, 75.0)
    assert [rung.against(band) for band in ((160, 200), (100, 150), (50, 140))] == [-1, 0, 1]
    assert rung.against(None) is None


def test_heights_are_round_in_the_unit_shown() -> None:
    plan = demo_plan()  # 110 cm high, canopy at 25 cm: 85 cm of room
    in_cm = rungs_between(plan, (0,), LengthUnit.CM)
    assert all(round(h * 100, 6) % 10 == 0 for h in in_cm[1:-1])
    assert 6 <= len(in_cm) <= 14
    inches = [h / 0.0254 for h in rungs_between(plan, (0,), LengthUnit.INCH)[1:-1]]
    assert inches == pytest.approx([round(value * 2) / 2 for value in inches])
    assert max(in_cm) <= plan.headroom


def test_it_stops_when_asked() -> None:
    with pytest.raises(Cancelled):
        ladder(demo_plan(), (0,), (0.2, 0.3), cancelled=lambda: True)
