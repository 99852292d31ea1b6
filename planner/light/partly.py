"""Images that mirrors show in part: lines followed back through the mirrors to the lamp."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import numpy.typing as npt

from planner.light.chains import Images
from planner.light.emission import Source
from planner.light.field import CellGrid
from planner.light.prism import FloatArray, IntArray, totals
from planner.light.sequences import shifted_points
from planner.light.surfaces import Surfaces
from planner.light.windows import Windows

_FIRST_LOOK, _FEWEST = 16, 2
"""Most lines from each cell that tell where an image is seen in part, and fewest."""

_LINES = 1 << 15
"""Lines followed at a time."""


def share_kept(
    surfaces: Surfaces,
    grid: CellGrid,
    source: Source,
    images: Images,
    specular: FloatArray,
    whole: FloatArray,
    lines: int,
    chance: float,
    step: Callable[[], None],
) -> tuple[FloatArray, FloatArray]:
    """Share of each image's light on each cell (C, n) that mirrors and obstacles leave.

    And its standard error by two halves of the lines. Lines run from points of the cell to
    points of the lamp, both spread evenly; where windows tell that they differ, or, where these
    do not tell, where the share changes in the cell or beside it. Of each pair there are so many,
    ``lines`` at most, that of the light on a cell no more than ``chance`` would be in doubt, were
    they independent: as many more as the pair may err more (Neyman, 1934, J. R. Statist. Soc. 97,
    558). ``whole`` (C, n) is the light of the images unhidden.
    """
    count = len(grid.inside)
    windows = Windows(surfaces, images, specular)
    share = windows.known(grid, images.of(source.outline)).ravel()
    doubt, light = np.zeros(share.size), whole.T.ravel()
    met = images.meets(surfaces.prism.alike)
    random = np.random.default_rng(5)

    def wanted(pairs: IntArray, scatter: FloatArray, most: int) -> IntArray:
        return _lines_for(light[pairs] * scatter / max(chance, 1e-300), pairs % count, most)

    def look(pairs: IntArray, lines_of: IntArray, told: bool) -> None:
        for many in np.unique(lines_of):
            which = pairs[lines_of == many]
            size = max(1, _LINES // int(many))
            for start in range(0, which.size, size):
                follow(which[start : start + size], int(many), told)

    def follow(part: IntArray, many: int, told: bool) -> None:
        step()
        image, cell = np.divmod(part, count)
        u = shifted_points(part.size, many, 5, random)
        # Lines of one pair share its image: shapes are (..., pairs, lines).
        places = grid.samples(u[0], u[1], cell)
        base = source.points(*u[2:].reshape(3, -1)).reshape(places.shape)
        linear = images.linear.take(image, axis=0)
        ends = np.einsum("pij,jpk->ipk", linear, base)
        ends += images.shift.T.take(image, axis=1)[:, :, None]
        gap = ends - places
        length = np.sqrt((gap**2).sum(axis=0))
        # A mirror is its own inverse turned round: back through it to the lamp's axes.
        seen = np.einsum("pji,jpk->ipk", linear, gap / length)
        sent = source.profile.intensity(*source.towards(-seen.reshape(3, -1)))
        sent = sent.reshape(length.shape)
        sent *= np.maximum(gap[2], 0.0) / length**3
        if told:
            left = windows.left(places, ends, image)
        else:
            origin, way, target = (a.reshape(3, -1) for a in (places, gap, base))
            chain = np.repeat(image, many)
            left = _followed(surfaces, origin, way, target, met, chain, specular, step)
            left = left.reshape(sent.shape)
        # Neighbours in the sequence go to different halves.
        total, kept = (a.reshape(part.size, -1, 2).sum(axis=1) for a in (sent, sent * left))
        first, second = (kept / np.maximum(total, 1e-300)).T
        share[part] = (first + second) / 2
        doubt[part] = np.abs(first - second) / 2

    in_part = np.flatnonzero(np.isnan(share) & np.repeat(windows.told, count))
    look(in_part, wanted(in_part, np.full(in_part.size, 0.5), lines), True)
    untold = np.flatnonzero(~windows.told)
    if untold.size:
        every = (untold[:, None] * count + np.arange(count)).ravel()
        first = wanted(every, np.full(every.size, 0.5), min(_FIRST_LOOK, max(lines // 4, 2)))
        look(every, first, False)
        shares = share.reshape(-1, count)
        about = [grid.range_about(np.round(shares[index], 9)) for index in untold]
        scatter = np.concatenate(about) / 2
        mixed = np.flatnonzero(scatter > 0)
        scatter = np.maximum(scatter, doubt[every] * np.sqrt(first))[mixed]
        more = wanted(every[mixed], scatter, lines)
        further = more > first[mixed]
        look(every[mixed][further], more[further], False)
    return share.reshape(-1, count).T, doubt.reshape(-1, count).T


def _lines_for(error: FloatArray, cell: IntArray, most: int) -> IntArray:
    """Lines for each of some pairs (n,), whose single lines are off so much; ``most`` at most.

    ``error`` (n,) is in parts of what may be left in doubt of a ``cell`` (n,), of all its pairs
    together.
    """
    ideal = error * totals(cell, error, int(cell.max(initial=0)) + 1)[cell]
    doubled = 2 ** np.ceil(np.log2(np.clip(ideal, min(_FEWEST, most), most)))
    return np.minimum(doubled.astype(np.intp), most)


def connected(
    surfaces: Surfaces,
    places: FloatArray,
    nodes: FloatArray,
    bases: FloatArray,
    met: npt.NDArray[np.bool_],
    specular: FloatArray,
    step: Callable[[], None],
) -> FloatArray:
    """What mirrors leave of each image point at each receiver, 0 where unseen; (M, K).

    Follows the line from ``places`` (3, M, K or 1) of the receivers towards the image for its
    whole length through the mirrors; it must end on the lamp point itself. ``met`` (K, planes)
    tells which planes belong to the chain: a line that meets another is given up at once.
    """
    count, node_count = places.shape[1], nodes.shape[1]
    result = np.zeros((count, node_count))
    block = max(1, (1 << 15) // node_count)
    for start in range(0, count, block):
        part = places[:, start : start + block]
        gap = nodes[:, None, :] - part
        origin = np.broadcast_to(part, gap.shape).reshape(3, -1)
        target = np.broadcast_to(bases[:, None, :], gap.shape).reshape(3, -1)
        node = np.tile(np.arange(node_count), gap.shape[1])
        left = _followed(surfaces, origin, gap.reshape(3, -1), target, met, node, specular, step)
        result[start : start + block] = left.reshape(gap.shape[1:])
    return result


def _followed(
    surfaces: Surfaces,
    origin: FloatArray,
    gap: FloatArray,
    target: FloatArray,
    met: npt.NDArray[np.bool_],
    chain: IntArray,
    specular: FloatArray,
    step: Callable[[], None],
) -> FloatArray:
    """What mirrors leave on lines from ``origin`` along ``gap`` (3, N), 0 where cut off; (N,).

    ``target`` (3, N) is the point of the lamp where each line must end, ``chain`` (N,) the row
    of ``met`` that tells its planes.
    """
    left = np.sqrt((gap**2).sum(axis=0))
    direction = gap / left
    found = np.zeros(left.size)
    belongs = met.ravel()
    # Only what comes from above is received.
    pair = np.flatnonzero(direction[2] > 1e-9)
    if pair.size < left.size:
        origin, direction = origin.take(pair, axis=1), direction.take(pair, axis=1)
        left = left.take(pair)
    weight = np.ones(pair.size)
    while pair.size:
        step()
        distance, plane = surfaces.prism.first_hit(origin, direction)
        end = direction * np.minimum(distance, left)
        end += origin
        done = distance >= left - 1e-9
        last = np.flatnonzero(done)
        whose = pair.take(last)
        miss = np.abs(end.take(last, axis=1) - target.take(whose, axis=1)).max(axis=0, initial=0.0)
        found[whose] = np.where(miss < 1e-6, weight.take(last), 0.0)
        done |= ~belongs.take(chain.take(pair) * met.shape[1] + plane)
        go = np.flatnonzero(~done)
        origin, plane = end.take(go, axis=1), plane.take(go)
        onward = weight.take(go)
        onward *= specular.take(surfaces.texel_facet.take(surfaces.texel_of(origin, plane)))
        alive = np.flatnonzero(onward > 1e-5)
        if alive.size < go.size:
            go, origin, plane = go.take(alive), origin.take(alive, axis=1), plane.take(alive)
            onward = onward.take(alive)
        weight, pair = onward, pair.take(go)
        left = left.take(go) - distance.take(go)
        direction = surfaces.prism.reflect(direction.take(go, axis=1), plane)
    return found
