"""Time to a map of 1 % rms error, the program's and that of other ways, side by side.

The scene is the 1 m x 1 m x 2 m space with walls of 0.45 diffuse + 0.45 specular, the map
24 x 24. Each contender's rms is taken against one long Embree walk, whose own chance is
subtracted in quadrature, so that no contender judges itself. Monte Carlo errors fall as
the square root of time, by which their times are scaled to 1 %; the program's times are as
measured, without any cache. The shortest of several runs counts.
"""

from __future__ import annotations

import math
import time
from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np

from planner.estimate.evaluate import evaluate
from planner.estimate.result import EstimateOptions, Quality
from tests.reference.embree_walk import FloatArray, Walked, walk
from tests.reference.renderer import Rendered
from tests.reference.scene_list import SCENES
from tests.reference.spaces import plan_of

CELLS = (24, 24)
SCENE = replace(SCENES[0], cells=CELLS)
JUDGE_PHOTONS = 16_000_000
GOAL = 0.01

RENDERERS = (
    ("llvm_ad_mono", "path", 20, 2048),
    ("llvm_ad_mono", "ptracer", 5, 8192),
    ("llvm_ad_rgb", "ptracer", 5, 8192),
    ("scalar_rgb", "path", 20, 64),
    ("scalar_rgb", "ptracer", 5, 512),
)
"""Variant, integrator, depth at which roulette begins (the quickest tried), samples a cell."""


@dataclass(frozen=True)
class Finish:
    """One contender: seconds as run, rms error reached, and seconds to 1 % (None: not)."""

    name: str
    seconds: float
    rms: float
    to_goal: float | None
    of_the_program: bool = False
    of_the_renderer: bool = False


def race(say: Callable[[str], None] = lambda text: None) -> list[Finish]:
    """Run all contenders; takes a few minutes."""
    say(f"walk of {JUDGE_PHOTONS} photons as the judge")
    judge = walk(SCENE, JUDGE_PHOTONS, seed=77)
    finishes = [_of_program(quality, judge) for quality in (Quality.PREVIEW, Quality.DEFAULT)]
    for variant, integrator, roulette, samples in RENDERERS:
        name = f"Mitsuba 3 {integrator}, {variant}"
        say(name)
        rendered = Rendered(SCENE, variant, integrator, roulette)
        rendered.density(2, 0)  # compiles what is to be compiled
        draw = lambda k, on=rendered, n=samples: on.density(n, k)
        finishes.append(_scaled(name, draw, judge, renderer=True))
    say("Embree walk")
    photons = 500_000
    finishes.append(
        _scaled("walk of numpy over Embree", lambda k: walk(SCENE, photons, k).density, judge)
    )
    return finishes


def ratio(finishes: list[Finish]) -> float:
    """Times by which the program is faster than the renderer's fastest way to 1 %."""
    ours = min(f.to_goal for f in finishes if f.of_the_program and f.to_goal is not None)
    theirs = min(f.to_goal for f in finishes if f.of_the_renderer and f.to_goal is not None)
    return theirs / ours


def table(finishes: list[Finish]) -> list[str]:
    """Lines of a table in Markdown."""
    lines = ["| way | time as run, s | rms reached | s to 1 % rms |", "|---|---|---|---|"]
    for f in finishes:
        goal = "not reached" if f.to_goal is None else f"{f.to_goal:.3g}"
        lines.append(f"| {f.name} | {f.seconds:.3g} | {100 * f.rms:.2f} % | {goal} |")
    return lines


def _of_program(quality: Quality, judge: Walked) -> Finish:
    plan = plan_of(SCENE)
    seconds, squares = [], []
    for seed in range(1, 8):
        started = time.perf_counter()
        found = evaluate(plan, EstimateOptions(cells=CELLS, quality=quality, seed=seed))
        seconds.append(time.perf_counter() - started)
        squares.append(_own(found.ppfd, judge) ** 2)
    rms, best = math.sqrt(float(np.mean(squares))), min(seconds)
    goal = best if rms <= GOAL else None
    return Finish(f"the program, {quality} quality", best, rms, goal, of_the_program=True)


def _scaled(
    name: str, draw: Callable[[int], FloatArray], judge: Walked, *, renderer: bool = False
) -> Finish:
    seconds, squares = [], []
    for k in range(3):
        started = time.perf_counter()
        density = draw(k + 1)
        seconds.append(time.perf_counter() - started)
        squares.append(_own(density, judge) ** 2)
    rms, best = math.sqrt(float(np.mean(squares))), min(seconds)
    return Finish(name, best, rms, best * (rms / GOAL) ** 2, of_the_renderer=renderer)


def _own(density: FloatArray, judge: Walked) -> float:
    difference = float(((density - judge.density) ** 2).mean())
    chance = float((judge.error**2).mean())
    return math.sqrt(max(difference - chance, 0.0)) / judge.mean
