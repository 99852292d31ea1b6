"""Light straight from lamps: closed form per quadrature point.

Photometric distance law (CIE S 017, term 17-25-104): a point of intensity I gives
E = I cosα / d² at distance d under incidence α.
"""

from __future__ import annotations

import math
from collections.abc import Callable

import numpy as np

from planner.light.boxes import Crowd
from planner.light.emission import Profile, Source
from planner.light.prism import FloatArray, IntArray, Prism

_LEVEL = 2
"""Columns of the axes of a lamp that hangs level: its own turn leaves heights alone."""

Step = Callable[[], None]

_HIDES = 0.05
"""Error that would be allowed to a sum over points of a lamp that are told apart by what hides them
alone: see ``Source.nodes``."""

_BLOCK = 1 << 17
"""Pairs of receiver and source point computed at a time; keeps the work in cache."""


def irradiance(
    receivers: FloatArray,
    normals: FloatArray | None,
    nodes: FloatArray,
    weights: FloatArray,
    profile: Profile,
    facing: FloatArray | None = None,
    *,
    axes: FloatArray | None = None,
    looks: FloatArray | None = None,
    closest: float = 1e-6,
    group: int | None = None,
    step: Step | None = None,
) -> FloatArray:
    """Flux density (m⁻² per unit flux) at receivers, shape (M,).

    Parameters
    ----------
    receivers
        Points, shape (3, M), in metres.
    normals
        Unit normals of the receiving sides, shape (3, M); None for facing up.
    nodes
        Source points, shape (3, K).
    weights
        Flux share of each node, shape (K,), or of each pair, shape (M, K).
    profile
        Angular distribution about the lamp's axis.
    facing
        +1 where a node points down, -1 where a mirror turned it up, shape (K,).
    axes
        Turns directions of the room into the lamp's own axes, shape (2, 2) (horizontal ones)
        or (2, 3), or one for each node, (2, 2 or 3, K); needed where the profile turns with
        azimuth.
    looks
        The axis of a tilted lamp, shape (3,) or, one for each node, (3, K), in place of
        ``facing``; None where it is upright.
    closest
        No distance is taken for less than this, in metres.
    group
        If given, the sum is taken over each ``group`` nodes in a row and the result has
        shape (M, K / group).
    step
        Called often; may raise to stop.
    """
    count = receivers.shape[1]
    columns = 1 if group is None else nodes.shape[1] // group
    result = np.empty((count, columns))
    block = max(1, _BLOCK // max(1, nodes.shape[1]))
    for start in range(0, count, block):
        if step is not None:
            step()
        part = slice(start, start + block)
        dx = nodes[0] - receivers[0, part, None]
        dy = nodes[1] - receivers[1, part, None]
        dz = nodes[2] - receivers[2, part, None]
        inverse = dx * dx
        inverse += dy * dy
        inverse += dz * dz
        np.maximum(inverse, closest**2, out=inverse)
        np.reciprocal(inverse, out=inverse)
        root = np.sqrt(inverse)
        below = dz * root
        if normals is None:
            incidence = np.maximum(below, 0.0)
        else:
            n = normals[:, part, None]
            incidence = np.maximum((dx * n[0] + dy * n[1] + dz * n[2]) * root, 0.0)
        if looks is not None:
            below = -(dx * looks[0] + dy * looks[1] + dz * looks[2]) * root
        elif facing is not None:
            below = below * facing
        if axes is not None and profile.turns_with_azimuth:
            # From node to receiver is the opposite of (dx, dy).
            across = -(axes[0, 0] * dx + axes[0, 1] * dy)
            along = -(axes[1, 0] * dx + axes[1, 1] * dy)
            if axes.shape[1] > _LEVEL:
                across -= axes[0, 2] * dz
                along -= axes[1, 2] * dz
            value = profile.intensity(below, across, along)
        else:
            value = profile.intensity(below)
        value *= incidence
        value *= inverse
        value *= weights if weights.ndim == 1 else weights[part]
        result[part] = value.reshape(len(value), columns, -1).sum(axis=2)
    return result[:, 0] if group is None else result


def visible(
    prism: Prism, crowd: Crowd, receivers: FloatArray, nodes: FloatArray, step: Step
) -> FloatArray:
    """1 where the straight line from receiver to node is free, else 0; shape (M, K).

    Needed only where ``crowd``, what stands between them, is not empty or the footprint is
    not convex. ``step`` is called often and may raise to stop.
    """
    count, nodes_count = receivers.shape[1], nodes.shape[1]
    result = np.empty((count, nodes_count))
    block = max(1, (1 << 15) // max(1, nodes_count))
    for start in range(0, count, block):
        step()
        part = receivers[:, start : start + block]
        delta = nodes[:, None, :] - part[:, :, None]
        length = np.sqrt((delta**2).sum(axis=0))
        direction = (delta / length).reshape(3, -1)
        origin = np.broadcast_to(part[:, :, None], delta.shape).reshape(3, -1)
        blocked = prism.blocked(crowd, origin, direction, length.ravel())
        result[start : start + block] = ~blocked.reshape(length.shape)
    return result


def between(prism: Prism, receivers: FloatArray, nodes: FloatArray) -> Crowd | None:
    """What may stand between receivers (3, M) and nodes (3, K); None if they see each other."""
    if prism.open_to_sight:
        return None
    low = np.minimum(receivers.min(axis=1), nodes.min(axis=1))
    high = np.maximum(receivers.max(axis=1), nodes.max(axis=1))
    crowd = prism.crowd.between(low, high)
    return crowd if crowd.boxes or not prism.convex else None


def direct_on(
    prism: Prism,
    source: Source,
    receivers: FloatArray,
    normals: FloatArray | None,
    near: float,
    shade: int,
    step: Step,
) -> FloatArray:
    """Direct flux density of a unit lamp at receivers no closer than ``near``, shape (M,).

    ``shade`` is the fewest points along each side of the lamp where something may stand
    between.
    """
    if receivers.shape[1] == 0:
        return np.zeros(0)
    crowd = between(prism, receivers, source.outline)
    if crowd is None:
        nodes, weights = source.nodes(near)
    else:
        # Half shadows need the lamp's whole breadth, however far it is.
        nodes, weights = source.nodes(near, least=shade)
        # What hides a part of a lamp hides its neighbours: fewer lines than points do.
        marks, _ = source.nodes(near, tolerance=_HIDES, least=shade)
        if 2 * marks.shape[1] > nodes.shape[1]:
            marks = nodes
        seen = visible(prism, crowd, receivers, marks, step)
        weights = seen.take(_nearest(nodes, marks), axis=1) * weights
    step()
    return irradiance(
        receivers, normals, nodes, weights, source.profile,
        axes=source.axes(), looks=source.looks(), step=step,
    )  # fmt: skip


def _nearest(points: FloatArray, among: FloatArray) -> IntArray:
    """Which of some points (3, k) lies nearest to each of others (3, n), (n,)."""
    if points is among:
        return np.arange(points.shape[1])
    gap = ((points[:, :, None] - among[:, None]) ** 2).sum(axis=0)
    return np.asarray(gap.argmin(axis=1))


def from_lambert_panel(receivers: FloatArray, source: Source) -> FloatArray:
    """Flux density (m⁻² per unit flux) on receivers (3, M) of one height that face up, shape (M,).

    From a panel that sends as Lambert's law has it, however near: the sum over its edges of the
    angle each is seen under times the cosine of the plane through it (Lambert 1760, 'Photometria';
    so in Howell's catalogue), over that part of the panel which lies above them.
    """
    corners = _above(source.outline[:, [0, 1, 3, 2]], float(receivers[2, 0]))
    if corners.shape[1] < 3:
        return np.zeros(receivers.shape[1])
    to = corners[:, :, None] - receivers[:, None]
    to /= np.maximum(np.sqrt((to**2).sum(axis=0)), 1e-12)
    after = np.roll(to, -1, axis=1)
    across = np.cross(to, after, axis=0)
    sine = np.sqrt((across**2).sum(axis=0))
    angle = np.arctan2(sine, (to * after).sum(axis=0))
    seen = np.abs((angle * across[2] / np.maximum(sine, 1e-12)).sum(axis=0)) / (2 * math.pi)
    area = float(source.strips[0, 2] * source.strips[0, 3])
    lit: FloatArray = np.where(source.before(receivers) > 0, seen, 0.0) / area
    return lit


def _above(corners: FloatArray, height: float) -> FloatArray:
    """The part of a plane polygon (3, n) that lies above a height (Sutherland and Hodgman 1974)."""
    kept = []
    for here, there in zip(corners.T, np.roll(corners, -1, axis=1).T, strict=True):
        if here[2] >= height:
            kept.append(here)
        if (here[2] - height) * (there[2] - height) < 0:
            kept.append(here + (height - here[2]) / (there[2] - here[2]) * (there - here))
    return np.array(kept).reshape(-1, 3).T
