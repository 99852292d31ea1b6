"""How right the light is in random rooms: estimates held against the judge.

    python -m tests.reference.random_rooms --rooms 84 --seed 1 --quality default
    python -m tests.reference.random_rooms --seed 1 --only 17

Root mean squares are over the canopy's area, with the judge's own chance taken off in
quadrature; all figures are in % of the judge's mean. The judge's maps are kept, and each room
gets so many that its chance is small beside what is to be found.
"""

from __future__ import annotations

import argparse
import json
import math
from collections.abc import Callable, Sequence
from dataclasses import asdict, dataclass
from pathlib import Path

import numpy as np

from planner.estimate.evaluate import evaluate
from planner.estimate.result import EstimateOptions, Quality
from tests.reference.judge import closely
from tests.reference.random_plans import RandomRoom, random_room

PHOTONS = 8_000_000
"""Of one map of the judge."""

CHANCE, MAPS = 0.003, 4
"""Maps are added until so much of the mean is left to the judge's chance, or there are so many."""

LEAST_OF_A_CELL = 0.05
"""Smaller parts of cells count in the rms by their area, and are not called the worst."""


@dataclass(frozen=True)
class Finding:
    """One room: differences in % of the judge's mean, the stated error and seconds.

    ``chance`` is the judge's; ``bias`` the difference of the means and ``bias_error`` its
    standard error; ``worst`` the largest difference of a cell less three standard errors;
    ``strange`` counts cells that one has and the other has not.
    """

    number: int
    kinds: tuple[str, ...]
    rms: float
    chance: float
    bias: float
    bias_error: float
    worst: float
    stated: float
    strange: int
    lost: int
    seconds: float

    @property
    def own(self) -> float:
        """The rms with the judge's chance taken off."""
        return math.sqrt(max(self.rms**2 - self.chance**2, 0.0))


def look(
    room: RandomRoom, quality: Quality, cells: tuple[int, int], maps: int = MAPS, seed: int = 1
) -> Finding:
    """Judge one room by at most so many maps of the judge."""
    judged = closely(room.plan, cells, PHOTONS, CHANCE, maps)
    found = evaluate(room.plan, EstimateOptions(cells=cells, quality=quality, seed=seed))
    part = judged.area / judged.area.max()
    lit = judged.area > 0
    missing = np.isnan(found.ppfd)
    strange = int((missing != ~lit)[(part > LEAST_OF_A_CELL) | ~missing & ~lit].sum())
    both = lit & ~missing
    weight = judged.area[both]
    difference = (found.ppfd - judged.ppfd)[both]
    scale = 100 / judged.mean
    beyond = np.maximum(np.abs(difference) - 3 * judged.error[both], 0.0)
    return Finding(
        room.number,
        room.kinds,
        scale * math.sqrt(np.average(difference**2, weights=weight)),
        scale * math.sqrt(np.average(judged.error[both] ** 2, weights=weight)),
        scale * (found.figures.mean - judged.mean),
        scale * judged.mean_error,
        scale * float(beyond[part[both] > LEAST_OF_A_CELL].max()),
        100 * (found.numeric_error or 0.0),
        strange,
        judged.lost,
        found.seconds,
    )


FIGURES: dict[str, Callable[[Finding], float]] = {
    "rms of cells": lambda each: each.own,
    "difference of means": lambda each: abs(each.bias),
    "worst cell": lambda each: each.worst,
    "stated numerical error": lambda each: each.stated,
    "seconds": lambda each: each.seconds,
    "chance of the judge": lambda each: each.chance,
}


def spread(findings: Sequence[Finding], figure: str) -> tuple[float, float, float]:
    """Median, ninth decile and worst of a figure."""
    values = [FIGURES[figure](each) for each in findings]
    middle, high = np.percentile(values, [50, 90])
    return float(middle), float(high), max(values)


def covered(findings: Sequence[Finding]) -> float:
    """In how many of the rooms (%) the stated error is no less than what is found."""
    return 100 * float(np.mean([each.stated >= each.own for each in findings]))


def stated_over_found(findings: Sequence[Finding]) -> float:
    """Median ratio; where nothing is left beside the judge's chance it is without end."""
    return float(np.median([each.stated / max(each.own, 1e-9) for each in findings]))


def told(findings: Sequence[Finding]) -> list[str]:
    """The distribution as a table."""
    lines = [f"{len(findings)} rooms; % of the mean       median    p90    worst"]
    for name in FIGURES:
        middle, high, worst = spread(findings, name)
        lines.append(f"  {name:<28}{middle:10.2f} {high:6.2f} {worst:8.2f}")
    lines.append(
        f"  stated covers found in {covered(findings):.0f} % of rooms; "
        f"median of stated / found {stated_over_found(findings):.2f}"
    )
    strange, lost = (sum(getattr(e, name) for e in findings) for name in ("strange", "lost"))
    lines.append(f"  cells that only one has: {strange}; lost photons {lost}")
    lines.append("  kind                    rooms   rms median  worst   mean worst   covered")
    for kind in sorted({kind for each in findings for kind in each.kinds}):
        of = [each for each in findings if kind in each.kinds]
        middle, _, worst = spread(of, "rms of cells")
        off = spread(of, "difference of means")[2]
        lines.append(
            f"  {kind:<24}{len(of):4d} {middle:11.2f} {worst:7.2f} {off:11.2f} {covered(of):8.0f} %"
        )
    return lines


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    parser.add_argument("--rooms", type=int, default=84)
    parser.add_argument("--seed", type=int, default=1, help="of the rooms")
    parser.add_argument("--quality", type=Quality, default=Quality.DEFAULT, choices=list(Quality))
    parser.add_argument("--kinds", nargs="*", default=[], help="only rooms of all these kinds")
    parser.add_argument("--only", type=int, nargs="*", help="only rooms of these numbers")
    parser.add_argument(
        "--low-obstacles", action="store_true", help="rooms with obstacles close to the canopy"
    )
    parser.add_argument("--tilted", action="store_true", help="rooms whose lamps are tilted")
    parser.add_argument(
        "--divided", action="store_true", help="rooms with a corner in the midst of a wall"
    )
    parser.add_argument("--cells", type=int, nargs=2, default=(24, 24))
    parser.add_argument("--maps", type=int, default=MAPS, help="most maps of the judge")
    parser.add_argument("--out", type=Path, help="write each room's figures to this JSON file")
    asked = parser.parse_args()
    findings = []
    for number in asked.only or range(asked.rooms):
        room = random_room(
            number,
            asked.seed,
            low=asked.low_obstacles,
            tilted=asked.tilted,
            divided=asked.divided,
        )
        if not set(asked.kinds) <= set(room.kinds):
            continue
        one = look(room, asked.quality, tuple(asked.cells), asked.maps)
        findings.append(one)
        print(
            f"{number:4d} rms {one.own:6.2f} mean {one.bias:+6.2f} ± {one.bias_error:.2f} "
            f"worst {one.worst:6.2f} stated {one.stated:5.2f} {one.seconds:5.1f} s  "
            f"{', '.join(one.kinds)}",
            flush=True,
        )
        if asked.out:
            asked.out.write_text(json.dumps([asdict(each) for each in findings]), encoding="utf-8")
    print("\n".join(told(findings)))
    low = " --low-obstacles" if asked.low_obstacles else ""
    low += " --tilted" if asked.tilted else ""
    low += " --divided" if asked.divided else ""
    for one in sorted(findings, key=lambda each: -each.own)[:3]:
        print(f"  again: --seed {asked.seed}{low} --quality {asked.quality} --only {one.number}")


if __name__ == "__main__":
    main()
