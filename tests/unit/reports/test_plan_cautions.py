"""Cautions tied to what a plan holds, in words that defer to codes and licensed practice."""

from __future__ import annotations

from typing import Any

import pytest

from planner.catalogue.library import caution_notes, demo_plan, load_cautions
from planner.plan.lining import OPENING, Caution, Lining, WallCover
from planner.plan.plan import Plan
from planner.plan.space import Obstacle
from planner.reports.cautions import at_work, cautions, nearest_fuel
from planner.reports.report import Warned
from planner.units import LengthUnit
from tests.unit.reports.sample_estimate import sample_plan

CM = LengthUnit.CM


def told(plan: Plan) -> dict[str, Warned]:
    return {one.title: one for one in cautions(plan, CM)}


def lined(*kinds: Caution, **parts: Any) -> Plan:
    board = Lining(
        key="white-board", name="Own board", reflectance=0.8, low=0.7, high=0.9, cautions=kinds
    )
    return sample_plan(linings=(board,), **parts)


def test_the_air_for_the_watts_by_hand() -> None:
    # 40 W at 5 K: 40 / (1.2 kg/m³ x 1005 J/(kg K) x 5 K) x 3600 s = 23.9 m³ an hour.
    sentence = told(sample_plan())["Heat"].sentence
    assert "draw 40 W" in sentence
    assert "5 K above the room, about 24 m³ of air an hour" in sentence


def test_the_nearest_of_what_burns_by_hand() -> None:
    # The demo's bars are 55 cm long about x = 38: their ends are at 10.5 and 65.5, so wall 5
    # (x = 0, board) is 10.5 cm away. The foil on wall 4, 14.75 cm away, does not burn.
    near = nearest_fuel(demo_plan())
    assert near is not None
    place, distance, lamp = near
    assert (place.index, lamp) == (4, 0)
    assert distance == pytest.approx(0.105)
    assert "White board (melamine or laminate) on wall 5 comes nearest to a lamp: 10.5 cm from " \
        "lamp 1" in told(demo_plan())["Fire"].sentence  # fmt: skip


def test_a_shelf_that_burns_is_nearer_than_the_walls() -> None:
    # The lamp is lit 60 cm above the floor; the shelf's top is 56 cm above it, under the lamp.
    shelf = Obstacle(name="Shelf", x=0.3, y=0.25, underside=0.5, length=0.1, width=0.1,
                     thickness=0.06, lining="white-board")  # fmt: skip
    sentence = told(lined(Caution.BURNS, obstacles=(shelf,)))["Fire"].sentence
    assert "Own board on obstacle 1 ('Shelf') comes nearest to a lamp: 4 cm from lamp 1" in sentence


@pytest.mark.parametrize("kind", [Caution.BURNS, Caution.MELTS])
def test_fire_is_told_only_of_what_burns_or_melts(kind: Caution) -> None:
    assert "Fire" in told(lined(kind))
    assert "Fire" not in told(lined(Caution.CONDUCTS))
    assert "Fire" not in told(lined(kind, lamps=()))


def test_an_open_door_does_not_burn() -> None:
    plan = lined(Caution.BURNS, space={"footprint": sample_plan().space.footprint, "height": 1.2,
                                       "door": 0, "door_open": True})  # fmt: skip
    near = nearest_fuel(plan)
    assert near is not None
    assert near[0].index != 0


@pytest.mark.parametrize("kind", list(Caution))
def test_each_lining_brings_its_own(kind: Caution) -> None:
    title = f"{load_cautions().text(kind).title}: Own board"
    assert title in told(lined(kind))
    assert not any("Own board" in one for one in told(lined()))


def test_a_lining_that_is_nowhere_up_is_not_spoken_of() -> None:
    spare = Lining(key="spare", name="Spare foil", reflectance=0.8, low=0.7, high=0.9,
                   cautions=(Caution.CONDUCTS,))  # fmt: skip
    plan = sample_plan()
    assert not any("Spare" in t for t in told(sample_plan(linings=(*plan.linings, spare))))


def test_without_a_lamp_nothing_hangs_or_heats() -> None:
    assert set(told(sample_plan(lamps=()))) == {"Moisture and mould", "Carbon dioxide"}


def test_in_open_air_nothing_gathers() -> None:
    plan = sample_plan(walls=(WallCover.plain(OPENING.key),) * 4)
    assert not {"Moisture and mould", "Carbon dioxide"} & set(told(plan))


def test_the_volume_by_hand() -> None:
    # 0.6 x 0.5 x 1.2 m = 0.36 m³.
    assert "in 0.36 m³ of" in told(sample_plan())["Moisture and mould"].sentence


def test_the_rest_is_the_help_pages_and_told_once() -> None:
    found = told(demo_plan())
    assert found["Mains and water"].rest == caution_notes()["Electricity and water"]
    assert found["Heat"].rest == caution_notes()["Heat and fire"]
    assert found["Fire"].rest == ()


def test_every_heading_is_on_the_help_page() -> None:
    for words in load_cautions().general.values():
        assert words.page in caution_notes()


def test_they_defer_and_never_say_that_anything_is_safe() -> None:
    every = [one.sentence for one in cautions(demo_plan(), CM)]
    every += [point for one in cautions(demo_plan(), CM) for point in one.rest]
    text = " ".join(every)
    for word in ("local code", "licensed electrician", "maker", "local fire rules"):
        assert word in text
    assert " is safe" not in text
    assert " are safe" not in text


def test_at_work_everything_is_in_one_sentence_or_two() -> None:
    assert all(not one.rest for one in at_work(demo_plan(), CM))
    foil = next(one for one in at_work(demo_plan(), CM) if one.title.startswith("Conducts"))
    assert "licensed electrician" in foil.sentence
