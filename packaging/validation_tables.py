"""The comparisons of the validation page, each a table of ours against a source."""

from __future__ import annotations

import importlib.util
import json
import math
import time
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from pathlib import Path

import numpy as np

from planner.estimate.evaluate import evaluate
from planner.estimate.result import Estimate, EstimateOptions, Quality
from planner.plan.lamp import PanelBody, PointBody
from planner.plan.plan import Plan
from tests.physics.rooms import box, lamp, light, panel, plan, under_rectangle
from tests.physics.test_reference_maps import FOLDER
from tests.physics.test_view_factors import (
    corner_edge_factor,
    face_factors,
    parallel_factor,
)
from tests.reference.comparison import MEAN, RMS, deviation
from tests.reference.scene_list import SCENES
from tests.reference.spaces import plan_of

Row = tuple[str, ...]
Say = Callable[[str], None]

ISOTROPIC = ((0.0, 180.0), (1.0, 1.0))


@dataclass(frozen=True)
class Section:
    """One heading of the page: what is compared with what, and the table."""

    title: str
    source: str
    head: Row
    rows: list[Row]
    remarks: list[str] = field(default_factory=list)


def installed(package: str) -> bool:
    """Whether a package of the 'reference' extra is there."""
    return importlib.util.find_spec(package) is not None


def percent(share: float, digits: int = 2) -> str:
    """A share as text."""
    return f"{100 * share:.{digits}f} %"


def timed(
    what: Plan, cells: tuple[int, int], quality: Quality = Quality.DEFAULT
) -> tuple[Estimate, float]:
    """An estimate and the seconds it took, nothing kept from before."""
    started = time.perf_counter()
    found = evaluate(what, EstimateOptions(cells=cells, quality=quality))
    return found, time.perf_counter() - started


def closed_forms() -> Section:
    """Lamps over a black-walled plane against the inverse square and configuration factors."""
    rows: list[Row] = []
    at = (0.33, 0.29)
    bodies: list[tuple[str, PointBody | PanelBody, float, float]] = [
        ("point, cos^0", PointBody(), 0.0, 0.4),
        ("point, cos^1", PointBody(), 1.0, 0.4),
        ("point, cos^4", PointBody(), 4.0, 0.4),
        ("point, cos^1, 5 cm above", PointBody(), 1.0, 0.05),
        ("panel 30 cm x 20 cm, 60 cm above", panel(0.3, 0.2), 1.0, 0.6),
        ("panel 30 cm x 20 cm, 15 cm above", panel(0.3, 0.2), 1.0, 0.15),
        ("panel 30 cm x 20 cm, 5 cm above", panel(0.3, 0.2), 1.0, 0.05),
    ]
    for name, body, exponent, height in bodies:
        what = plan(box(0.8, 0.6), 1.2, [lamp(at, height, body=body, exponent=exponent)])
        found, seconds = timed(what, (16, 12))

        def formula(
            x: float,
            y: float,
            body: PointBody | PanelBody = body,
            exponent: float = exponent,
            height: float = height,
        ) -> float:
            if isinstance(body, PanelBody):
                size = (body.length, body.width)
                return 100 / (size[0] * size[1]) * under_rectangle((x, y), at, size, height)
            squared = (x - at[0]) ** 2 + (y - at[1]) ** 2 + height**2
            peak = 100 * (exponent + 1) / (2 * math.pi)
            return peak * float((height**2 / squared) ** ((exponent + 1) / 2)) / squared

        expected = _cell_means(formula, found)
        bright = expected > 1e-2 * expected.max()
        error = np.abs(found.ppfd / expected - 1)[bright]
        rows.append((name, percent(float(error.max()), 4), f"{seconds:.2f}"))
    return Section(
        "Closed forms: lamps over a plane, black walls",
        "Photometric distance law E = I cosα/d²; element to rectangle, Siegel and Howell. "
        "Cell means by 12-point Gauss-Legendre over each cell. Asked: 0.2 %.",
        ("lamp", "largest error of any lit cell", "s"),
        rows,
    )


def _cell_means(formula: Callable[[float, float], float], found: Estimate) -> np.ndarray:
    nodes, weights = np.polynomial.legendre.leggauss(12)
    dx, dy = found.x[1] - found.x[0], found.y[1] - found.y[0]
    means = np.zeros((len(found.y), len(found.x)))
    for row, y in enumerate(found.y):
        for column, x in enumerate(found.x):
            for u, wu in zip(nodes, weights, strict=True):
                for v, wv in zip(nodes, weights, strict=True):
                    part = formula(x + u * dx / 2, y + v * dy / 2)
                    means[row, column] += wu * wv / 4 * part
    return means


def view_factors() -> Section:
    """Sums of the exchange over whole faces against the catalogue and a package."""
    rows: list[Row] = []
    packaged = installed("pyviewfactor")
    for size in ((1.0, 1.0, 1.0), (1.0, 1.5, 0.5), (0.4, 1.0, 2.0), (2.0, 2.0, 0.2)):
        width, depth, height = size
        faces, _, _ = face_factors(*size)
        theirs = _package_factors(width, depth, height) if packaged else None
        for name, i, j, expected in (
            ("C-11", 4, 5, parallel_factor(width, depth, height)),
            ("C-14", 5, 0, corner_edge_factor(depth, height, width)),
        ):
            found = float(faces[i, j])
            other = f"{theirs[i, j]:.5f}" if theirs is not None else "not installed"
            label = f"{width:g} x {depth:g} x {height:g}, {name}"
            rows.append(
                (label, f"{found:.5f}", f"{expected:.5f}", other, percent(found / expected - 1))
            )
    return Section(
        "View factors of a box, faces summed over patches",
        "J. R. Howell, A Catalog of Radiation Configuration Factors, C-11 and C-14; package "
        "pyviewfactor. 8192 rays a patch.",
        ("box, m", "ours", "catalogue", "pyviewfactor", "difference to the catalogue"),
        rows,
    )


def _package_factors(width: float, depth: float, height: float) -> np.ndarray:
    from tests.reference.view_factors import by_package  # noqa: PLC0415 - part of an extra

    return by_package(box(width, depth), height, ((),) * 4)


def enclosures() -> Section:
    """One reflectance on all faces of a cube, and mirrors."""
    rows: list[Row] = []
    for rho in (0.0, 0.5, 0.8, 0.9, 0.95):
        lamps = [lamp((2.0, 2.0), 2.0, table=ISOTROPIC, ppf=10000)]
        both = (rho, 0.0)
        what = plan(box(4.0, 4.0), 4.0, lamps, walls=both, ceiling=both, canopy=rho)
        expected = 10000 / (96 * (1 - rho))
        rows.append(_enclosure(f"cube, diffuse {rho:g} everywhere", what, expected))
    for height in (0.5, 2.0):
        hung = [lamp((0.2, 0.3), height, body=panel(0.1, 0.2))]
        what = plan(box(0.6, 0.4), 2.2, hung, walls=(0.0, 1.0))
        name = f"perfect mirror walls, lamp {height:g} m up"
        rows.append(_enclosure(name, what, 100 / 0.24))
    for ceiling, floor in ((0.9, 0.06), (0.9, 0.9)):
        hung = [lamp((0.5, 0.25), 1.0, body=panel(1.0, 0.5))]
        what = plan(
            box(1.0, 0.5), 1.0, hung, walls=(0.0, 1.0), ceiling=(ceiling, 0.0), canopy=floor
        )
        name = f"planes {ceiling:g} and {floor:g} between mirrors"
        rows.append(_enclosure(name, what, 200 / (1 - ceiling * floor)))
    return Section(
        "Enclosures: mean on the canopy, and the balance of photons",
        "Sumpner: Φ/(S(1 - ρ)) on every face of a cube with an isotropic lamp in its middle "
        "(CIE 171:2006, case 5.8); Φ/A between perfect mirrors; M/(1 - ρ₁ρ₂) between endless "
        "planes. Asked: 0.3 %.",
        ("enclosure", "ours", "exact", "error", "closure"),
        rows,
    )


def _enclosure(name: str, what: Plan, expected: float) -> Row:
    found = light(what)
    error = found.figures.mean / expected - 1
    closure = f"{found.closure:.0e}"
    return name, f"{found.figures.mean:.2f}", f"{expected:.2f}", percent(error), closure


def reference_maps() -> Section:
    """Stored maps that two Monte Carlo codes made."""
    from tests.physics import test_reference_maps as stored  # noqa: PLC0415 - its plans

    rows: list[Row] = []
    for path in sorted(Path(FOLDER).glob("*.json")):
        case = json.loads(path.read_text("utf-8"))
        columns, high = case["cells"]
        reference, error = np.array(case["map"]), np.array(case["map_standard_error"])
        for quality in (Quality.PREVIEW, Quality.DEFAULT):
            found, seconds = timed(stored.plan_of(case["scene"]), (columns, high), quality)
            seen = deviation(found, reference, error, case["map_mean"], _share(case, "map_mean"))
            rows.append(
                (
                    path.stem,
                    str(quality),
                    percent(seen.rms),
                    percent(seen.chance),
                    percent(seen.mean),
                    percent(seen.mean_error),
                    percent(found.numeric_error or 0.0),
                    f"{seconds:.2f}",
                )
            )
    return Section(
        "Stored reference maps",
        "tests/data/reference_maps: a path tracer and a photon tracer combined. Asked at "
        f"default quality: {percent(RMS, 0)} rms, {percent(MEAN, 1)} in the mean.",
        (
            *("map", "quality", "rms", "of it the reference's", "mean", "± (reference)"),
            *("rms the program states", "s"),
        ),
        rows,
    )


def _share(case: dict[str, float], name: str) -> float:
    return float(case[f"{name}_standard_error"])


def photon_walks(photons: int, say: Say) -> Section:
    """Every kind of scene against photons walked over Embree, at default quality."""
    from tests.reference.embree_walk import walk  # noqa: PLC0415 - part of an extra

    rows: list[Row] = []
    missed: list[str] = []
    for scene in SCENES:
        say(f"  {scene.name}")
        walked = walk(scene, photons)
        found, seconds = timed(plan_of(scene), scene.cells)
        seen = deviation(found, walked.density, walked.error, walked.mean, walked.mean_error)
        if not seen.within:
            missed.append(scene.name)
        rows.append(
            (
                scene.name,
                percent(seen.rms),
                percent(seen.chance),
                percent(seen.own),
                percent(seen.mean),
                percent(seen.mean_error),
                percent(found.numeric_error or 0.0),
                "yes" if seen.within else "**no**",
                f"{seconds:.2f}",
            )
        )
    return Section(
        "Photon walks over Intel Embree",
        f"tests/reference/embree_walk.py: {photons:,} photons a lamp, every reflection by "
        "chance, triangles traced by Intel Embree (package embreex). 'Left' is the rms when "
        "the walk's own chance is taken off in quadrature; within: left at most 1 % and mean "
        "at most 0.3 %, each with three joint standard errors more.",
        (
            *("scene", "rms", "of it the walk's", "left", "mean", "± (walk)"),
            *("rms the program states", "within", "s"),
        ),
        rows,
        [f"Outside the tolerance: {', '.join(missed)}."] if missed else [],
    )


def random_rooms(rooms: int, say: Say) -> Section:
    """Random rooms of every kind against the compiled judge, at all qualities."""
    from tests.reference import random_rooms as judged  # noqa: PLC0415 - part of an extra
    from tests.reference.random_plans import random_room  # noqa: PLC0415

    rows: list[Row] = []
    for quality in Quality:
        found = [judged.look(random_room(number, 1), quality, (24, 24)) for number in range(rooms)]
        say(f"  {quality}")
        for kind in (None, "without wrinkles", "with wrinkles", "obstacles", "uplight"):
            of = [each for each in found if kind is None or kind in each.kinds]
            if not of:
                continue
            rms, mean = (
                judged.spread(of, name) for name in ("rms of cells", "difference of means")
            )
            rows.append(
                (
                    str(quality),
                    kind or "all",
                    str(len(of)),
                    *(f"{value:.2f} %" for value in (*rms, mean[1], mean[2])),
                    f"{judged.covered(of):.0f} %",
                    f"{judged.stated_over_found(of):.2f}",
                    f"{judged.spread(of, 'seconds')[0]:.2f}",
                    f"{judged.spread(of, 'seconds')[2]:.1f}",
                )
            )
    return Section(
        "Random rooms",
        "tests/reference/random_rooms.py: boxes, turned boxes, chamfered corners, trapezoids, L, "
        "T, U and darts; bands, doors, obstacles, housings; matt, mixed, mirror and wrinkled "
        f"linings; 24 x 24 cells. The judge is a compiled walk of {judged.PHOTONS:,} photons a "
        f"map, up to {judged.MAPS} maps a room, that shares nothing with the light core; its own "
        "chance is taken off in quadrature. 'Covered' is the share of rooms whose stated "
        "numerical error is no less than the rms found.",
        (
            *("quality", "rooms of", "number", "rms median", "rms p90", "rms worst"),
            *("mean p90", "mean worst", "covered", "stated / found", "s median", "s worst"),
        ),
        rows,
    )


def renderer_maps(say: Say) -> Section:
    """Scenes rendered by Mitsuba 3."""
    from tests.reference import test_renderer as rendering  # noqa: PLC0415 - part of an extra

    rows: list[Row] = []
    for name, integrator in rendering.CASES:
        say(f"  {name}, {integrator}")
        seen, seconds = rendering.compared(name, integrator)
        rows.append(
            (
                name,
                integrator,
                percent(seen.rms),
                percent(seen.chance),
                percent(seen.own),
                percent(seen.mean),
                percent(seen.mean_error),
                "yes" if seen.within else "**no**",
                f"{seconds:.2f}",
            )
        )
    return Section(
        "Mitsuba 3",
        "tests/reference/renderer.py: the library's own integrators, variant llvm_ad_mono; "
        "standard errors from eight independent renderings.",
        (
            *("scene", "integrator", "rms", "of it the renderer's", "left", "mean"),
            *("± (renderer)", "within", "s"),
        ),
        rows,
    )


def cost(repeats: int) -> Section:
    """Time against cells, lamps and wall area, all else the same."""
    rows: list[Row] = []
    mixed = (0.45, 0.45)

    def room(lamps: int, wall: float) -> Plan:
        spread = [(0.2 + 0.6 * (k % 4) / 3, 0.2 + 0.6 * (k // 4) / 3) for k in range(lamps)]
        hung = [lamp(at, 0.5, body=panel(0.15, 0.15), ppf=100 / lamps) for at in spread]
        return plan(box(1.0, 1.0), wall, hung, walls=mixed, ceiling=mixed, canopy=0.06)

    def seconds(what: Plan, cells: int) -> float:
        return min(timed(what, (cells, cells))[1] for _ in range(repeats))

    def add(kind: str, amounts: Iterable[float], time_of: Callable[[float], float]) -> None:
        first: tuple[float, float] | None = None
        for amount in amounts:
            taken = time_of(amount)
            first = first or (amount, taken)
            more = "" if amount == first[0] else f"{amount / first[0]:.3g} x"
            longer = "" if amount == first[0] else f"{taken / first[1]:.2f} x"
            rows.append((f"{kind} {amount:g}", f"{taken:.3f}", more, longer))

    add("cells", (64, 256, 1024, 4096), lambda n: seconds(room(1, 1.0), round(math.sqrt(n))))
    add("lamps", (1, 2, 4, 8, 16), lambda n: seconds(room(int(n), 1.0), 24))
    add("wall area in m²", (2.4, 4, 8, 16), lambda area: seconds(room(1, area / 4), 24))
    return Section(
        "Cost: time against cells, lamps and wall area",
        "A space of 1 m x 1 m, walls 0.45 + 0.45, default quality, nothing kept from before; "
        "24 x 24 cells, one lamp and 4 m² of wall where not told otherwise.",
        ("amount", "s", "as much", "as long"),
        rows,
        [
            "The number of patches does not grow with the wall area, and beyond 32 x 32 cells "
            "diffuse light is gathered coarser: time grows less than linearly in both. Lamps "
            "add their own light each; the exchange is shared by all."
        ],
    )
