"""How often the usual mistakes of a survey are named.

``python -m tests.reference.diagnosis_power [times] [mistakes]`` prints it.

Readings come from maps the core had no part in; each mistake is planted in the lined survey
of a scene, with noise and gain drawn anew, and the first suspect is compared with it.
"""

from __future__ import annotations

import dataclasses
import sys
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from planner.estimate.calibrate_model import Parameter, Quantity, Run, SurveyModel
from planner.estimate.calibrate_parameters import Asked, Freed
from planner.estimate.diagnose import Diagnosis, diagnose
from planner.estimate.evaluate import Cache
from planner.estimate.result import EstimateOptions, Quality
from planner.plan.edits import changed
from planner.plan.lamp import CosineProfile
from planner.plan.plan import Plan
from planner.plan.survey import Reading, Survey
from tests.unit.estimate.calibration_scenes import (
    METER,
    TRAY,
    Case,
    FloatArray,
    case,
    direct,
    lined,
    open_air,
    read,
)


def values(what: Case, survey: Survey) -> FloatArray:
    """Readings of the lined survey as they lie on the board, rows from near to far."""
    columns, rows = what.cells
    return np.array([reading.value for reading in survey.readings]).reshape(rows, columns)


def reread(survey: Survey, table: FloatArray) -> Survey:
    readings = (Reading(hole=k, value=float(v)) for k, v in enumerate(table.ravel(), start=1))
    return changed(survey, readings=tuple(readings))


def serpentine_read_by_rows(what: Case, survey: Survey) -> Survey:
    """Holes numbered to and fro, values entered row by row from the left."""
    columns, rows = what.cells
    points = np.array(survey.points).reshape(rows, columns, 2)
    points[1::2] = points[1::2, ::-1]
    walked = tuple((float(x), float(y)) for x, y in points.reshape(-1, 2))
    return changed(survey, points=walked)


def spoilt_hole(what: Case, survey: Survey) -> Survey:
    table = values(what, survey)
    table[2, 3] *= 0.5
    return reread(survey, table)


def walked_down(what: Case, survey: Survey) -> Survey:
    """A square board entered column by column for row by row."""
    return reread(survey, values(what, survey).T)


def turned_left(what: Case, survey: Survey) -> Survey:
    return reread(survey, np.rot90(values(what, survey)))


def fading(what: Case, survey: Survey) -> Survey:
    """A lamp that loses 15 % from the first reading to the last."""
    table = values(what, survey)
    left = np.exp(np.log(0.85) * np.linspace(-0.5, 0.5, table.size))
    return reread(survey, table * left.reshape(table.shape))


def with_door(plan: Plan) -> Plan:
    return changed(plan, space=changed(plan.space, door=0))


def door_open(what: Case, survey: Survey) -> Survey:
    """The outside map, times what the core makes of the door standing wide open."""
    model = SurveyModel(
        lined(what, survey.readings), with_door(what.plan), EstimateOptions(what.cells), Cache()
    )
    gap = Parameter(Quantity.DOOR, survey.key, 0.0, 0.0, 1.0, 0.02)
    (group,) = model.groups()
    run = Run(Quality.DEFAULT)
    lost = model.light(group, {gap: 1.0}, run) / model.light(group, {gap: 0.0}, run)
    return reread(survey, values(what, survey) * lost.reshape(values(what, survey).shape))


def narrow(plan: Plan) -> Plan:
    """A plan that takes a beam of 1.2 for one of 2.4."""
    (lamp,) = plan.lamps
    model = changed(lamp.model, profile=CosineProfile(exponent=2.4))
    return changed(plan, lamps=(changed(lamp, model=model),))


def scattered(what: Case, survey: Survey) -> Survey:
    """A whole evening gone wrong: 15 % of scatter that nothing explains."""
    rng = np.random.default_rng(round(survey.readings[0].value * 1e6) % 2**32)
    table = values(what, survey)
    return reread(survey, table * np.exp(0.15 * rng.standard_normal(table.shape)))


def as_it_was(_what: Case, survey: Survey) -> Survey:
    return survey


def unchanged(plan: Plan) -> Plan:
    return plan


ASIDE = "aside"
"""A square board under a lamp that hangs aside: no turn or mirror image is like another."""


def aside() -> Case:
    """The open-air light of a lamp over one corner of a square; its lined map is not used."""
    what = case("s02_tent60_film")
    (lamp,) = what.plan.lamps
    plan = changed(what.plan, lamps=(changed(lamp, x=0.2, y=0.36),))
    scene = {
        "lamps": [{"cx": 0.2, "cy": 0.36, "z": 1.1, "lx": 0.3, "ly": 0.3, "ppf": 250}],
        "canopy": {"z": 0.3},
    }
    return dataclasses.replace(what, plan=plan, open_air=direct(scene, np.array(what.points)))


LOPSIDED = "s06_two_lamps_heights"
"""Two lamps: no turn or mirror image of its light is like another."""


@dataclass(frozen=True)
class Mistake:
    """A mistake, the words that name it, and where it shows.

    ``which`` survey of the evening has it: 0 in open air, 1 and 2 lined; ``surveys`` are those
    that are set against the ``plan``.
    """

    words: str
    plant: Callable[[Case, Survey], Survey]
    scene: str = "s08_all_walls_different"
    which: int = 1
    surveys: tuple[int, ...] = (0, 1)
    plan: Callable[[Plan], Plan] = unchanged


PLANTED: dict[str, Mistake] = {
    "mirrored": Mistake(
        "mirrored left to right", lambda w, s: reread(s, values(w, s)[:, ::-1]), LOPSIDED
    ),
    "near and far": Mistake(
        "near and far", lambda w, s: reread(s, values(w, s)[::-1]), LOPSIDED, which=0
    ),
    "half round": Mistake("half round", lambda w, s: reread(s, values(w, s)[::-1, ::-1]), LOPSIDED),
    "quarter": Mistake("a quarter to the", turned_left, ASIDE, which=0, surveys=(0,)),
    "transposed": Mistake("rows and columns exchanged", walked_down, ASIDE, which=0, surveys=(0,)),
    "by rows": Mistake("row by row", serpentine_read_by_rows),
    "height": Mistake(
        "hung",
        lambda w, s: changed(s, hanging_height=w.plan.lamps[0].hanging_height + 0.06),
        which=0,
    ),
    "lens": Mistake("the beam of", as_it_was, plan=narrow),
    "board": Mistake("the board", lambda w, s: changed(s, board_reflectance=0.75)),
    "door": Mistake("door's wall stood open", door_open, plan=with_door),
    "output": Mistake("the lamps gave", lambda w, s: reread(s, 0.85 * values(w, s))),
    "drift": Mistake("fell by", fading),
    "hole": Mistake("hole 2", spoilt_hole),
    "hole of three": Mistake("hole 2", spoilt_hole, surveys=(0, 1, 2)),
    "survey": Mistake("'Again' is left out", scattered, which=2, surveys=(0, 1, 2)),
    "by rows on a tray": Mistake("row by row", serpentine_read_by_rows, TRAY),
    "height on a tray": Mistake(
        "hung",
        lambda w, s: changed(s, hanging_height=w.plan.lamps[0].hanging_height - 0.06),
        TRAY,
        which=0,
    ),
    "board on a tray": Mistake(
        "the board in 'Lined'",
        lambda w, s: changed(s, board_reflectance=0.95),
        TRAY,
        surveys=(0, 1, 2),
    ),
    "output on a tray": Mistake("the lamps gave", lambda w, s: reread(s, 0.8 * values(w, s)), TRAY),
}


def planted(name: str, seed: int) -> Diagnosis:
    """The diagnosis of an evening with one mistake in it; the lamp's profile is known."""
    mistake = PLANTED[name]
    what = aside() if mistake.scene == ASIDE else case(mistake.scene)
    rng = np.random.default_rng(seed)
    gain = float(rng.uniform(0.95, 1.05))
    evening = [
        open_air(what, read(what.open_air, rng, gain, METER.noise)),
        lined(what, read(what.lined, rng, gain, METER.noise)),
        changed(lined(what, read(what.lined, rng, gain, METER.noise)), key="again", name="Again"),
    ]
    evening[mistake.which] = mistake.plant(what, evening[mistake.which])
    return diagnose(
        Asked(
            mistake.plan(what.plan),
            [evening[k] for k in mistake.surveys],
            Freed(exponent=False),
            options=EstimateOptions(cells=what.cells),
        )
    )


def main() -> int:
    times = int(sys.argv[1]) if len(sys.argv) > 1 else 20
    for name in sys.argv[2:] or PLANTED:
        words = PLANTED[name].words
        first = [planted(name, seed) for seed in range(times)]
        right = sum(bool(d.suspects) and words in d.suspects[0].words for d in first)
        named = sum(words in d.sentence for d in first)
        print(f"{name:14s} first {right:3d}, in the sentence {named:3d} of {times}", flush=True)
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
