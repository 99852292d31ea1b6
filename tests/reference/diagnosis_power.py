"""How often the usual mistakes of a survey are named: python -m tests.reference.diagnosis_power.

Readings come from maps the core had no part in; each mistake is planted in the lined survey
of a scene, with noise and gain drawn anew, and the first suspect is compared with it.
"""

from __future__ import annotations

import sys
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from planner.estimate.calibrate_parameters import Freed
from planner.estimate.diagnose import Diagnosis, diagnose
from planner.estimate.result import EstimateOptions
from planner.plan.survey import Reading, Survey
from planner.plan.survey_edits import with_parts
from tests.unit.estimate.calibration_scenes import (
    METER,
    Case,
    FloatArray,
    case,
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
    return with_parts(survey, readings=tuple(readings))


def serpentine_read_by_rows(what: Case, survey: Survey) -> Survey:
    """Holes numbered to and fro, values entered row by row from the left."""
    columns, rows = what.cells
    points = np.array(survey.points).reshape(rows, columns, 2)
    points[1::2] = points[1::2, ::-1]
    walked = tuple((float(x), float(y)) for x, y in points.reshape(-1, 2))
    return with_parts(survey, points=walked)


def spoilt_hole(what: Case, survey: Survey) -> Survey:
    table = values(what, survey)
    table[2, 3] *= 0.5
    return reread(survey, table)


LOPSIDED = "s06_two_lamps_heights"
"""Two lamps: no turn or mirror image of its light is like another."""


@dataclass(frozen=True)
class Mistake:
    """A mistake, the words that name it, and where it shows: scene, and open air or lined."""

    words: str
    plant: Callable[[Case, Survey], Survey]
    scene: str = "s08_all_walls_different"
    in_open_air: bool = False


PLANTED: dict[str, Mistake] = {
    "mirrored": Mistake(
        "mirrored left to right", lambda w, s: reread(s, values(w, s)[:, ::-1]), LOPSIDED
    ),
    "near and far": Mistake(
        "near and far",
        lambda w, s: reread(s, values(w, s)[::-1]),
        LOPSIDED,
        in_open_air=True,
    ),
    "half round": Mistake("half round", lambda w, s: reread(s, values(w, s)[::-1, ::-1]), LOPSIDED),
    "by rows": Mistake("row by row", serpentine_read_by_rows),
    "height": Mistake(
        "hung",
        lambda w, s: with_parts(s, hanging_height=w.plan.lamps[0].hanging_height + 0.06),
        in_open_air=True,
    ),
    "output": Mistake("the lamps gave", lambda w, s: reread(s, 0.85 * values(w, s))),
    "board": Mistake("the board", lambda w, s: with_parts(s, board_reflectance=0.75)),
    "hole": Mistake("hole 2", spoilt_hole),
}


def planted(name: str, seed: int) -> Diagnosis:
    """The diagnosis of an evening with one mistake in it; the lamp's profile is known."""
    mistake = PLANTED[name]
    what, rng = case(mistake.scene), np.random.default_rng(seed)
    gain = float(rng.uniform(0.95, 1.05))
    air = open_air(what, read(what.open_air, rng, gain, METER.noise))
    inside = lined(what, read(what.lined, rng, gain, METER.noise))
    if mistake.in_open_air:
        air = mistake.plant(what, air)
    else:
        inside = mistake.plant(what, inside)
    return diagnose(
        what.plan,
        [air, inside],
        Freed(exponent=False),
        options=EstimateOptions(cells=what.cells),
    )


def main() -> int:
    times = int(sys.argv[1]) if len(sys.argv) > 1 else 20
    for name, mistake in PLANTED.items():
        words = mistake.words
        first = [planted(name, seed) for seed in range(times)]
        right = sum(bool(d.suspects) and words in d.suspects[0].words for d in first)
        named = sum(words in d.sentence for d in first)
        print(f"{name:14s} first {right:3d}, in the sentence {named:3d} of {times}", flush=True)
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
