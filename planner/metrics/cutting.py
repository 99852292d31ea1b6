"""Cutting pieces of lining from rolls or sheets, so that little has to be bought.

Pieces are rectangles, laid out in shelves: rows right across the roll, one beside the
other, as one cuts by hand. A piece may lie either way, and one too wide for the roll is
divided into strips that overlap at seams; where seams are welcome, any piece may be divided
so, into strips of unequal width. Which way each piece lies, into how many strips it goes,
how wide they are and on which shelf they lie is one mixed-integer linear program, the level
packing of Lodi, Martello and Monaci (2004, Discrete Appl. Math. 142, 223-242) with strips of
free width. HiGHS solves it (Huangfu and Hall 2018, Math. Prog. Comp. 10, 119-142; through
``scipy.optimize.milp``): first the least number of rolls, then the least length.

Where the program is too large to be solved in a moment, shelves are filled from the deepest
piece down (first fit, decreasing height; Coffman, Garey, Johnson, Tarjan 1980, SIAM J.
Comput. 9, 808-826: never more than 1.7 times the best length plus one piece).
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Final

import numpy as np

SEAM_WORTH_M: Final = 0.05
"""A seam more must save this much of a roll, or it is not worth the work."""
LEAST_STRIP_M: Final = 0.03
"""Narrower strips cannot be put up neatly."""

_TINY: Final = 1e-9
_MOST_UNKNOWNS: Final = 6_000
_MOST_NODES: Final = 3_000
_SECONDS: Final = 2.0
_MOST_TRIES: Final = 2
"""For how many more rolls than the fewest a layout is sought."""


@dataclass(frozen=True)
class Piece:
    """A rectangle to cut, with its overlap already added; sides in metres."""

    label: str
    length: float
    width: float


@dataclass(frozen=True)
class Placed:
    """A piece on a roll: ``across`` and ``along`` are its corner nearest to the roll's start.

    ``size_across`` and ``size_along`` are its sides as it lies; metres.
    """

    label: str
    roll: int
    across: float
    along: float
    size_across: float
    size_along: float


@dataclass(frozen=True)
class CuttingList:
    """How many rolls or sheets to buy and where each piece lies.

    ``used_length`` is the length cut from all rolls together, in metres, ``least_length`` what
    no layout can do with less; ``waste`` the share of the bought area that ends in no piece.
    """

    width: float
    length: float
    rolls: int
    placed: tuple[Placed, ...]
    used_length: float
    waste: float
    least_length: float = 0.0


@dataclass(frozen=True)
class _Strip:
    """Part of a piece as it lies on a shelf; metres."""

    piece: int
    across: float
    along: float


_Shelf = list[_Strip]


def cutting_list(
    pieces: Sequence[Piece],
    width: float,
    length: float,
    seam: float = 0.02,
    *,
    seams_welcome: bool = False,
) -> CuttingList:
    """Lay pieces out on rolls (or sheets) of ``width`` by ``length`` metres.

    ``seam`` is how far the strips of a divided piece overlap, in metres. Where seams are
    not welcome only what is too large for a roll is divided.

    Raises
    ------
    ValueError
        If a side is not above 0 or the seam leaves nothing of a roll's width.
    """
    if width <= 0 or length <= 0:
        raise ValueError("rolls and sheets need a width and a length above 0.")
    if seam >= min(width, length):
        raise ValueError("the overlap at a seam must be less than the width of the roll.")
    return _cut(tuple(pieces), width, length, seam, seams_welcome)


def fewest_rolls(pieces: Sequence[Piece], width: float, length: float) -> int:
    """A number of rolls that no layout can do with less: the area of the pieces tells."""
    area = sum(piece.length * piece.width for piece in pieces)
    return math.ceil(area / (width * length) - 1e-6)


def least_length(
    pieces: Sequence[Piece], width: float, length: float, *, seams_welcome: bool = False
) -> float:
    """Metres of roll that no layout can do with less: by the area, and by the longest strip.

    A piece that may not be divided lies with one of its sides along the roll, and so does every
    strip of one that may, unless it is longer than a roll.
    """

    def along(piece: Piece) -> float:
        sides = (piece.length, piece.width), (piece.width, piece.length)
        whole = [one for one, other in sides if one <= length + _TINY and other <= width + _TINY]
        divided = [piece.length, piece.width] if seams_welcome or not whole else []
        return min(*whole, *divided, length)

    area = sum(piece.length * piece.width for piece in pieces)
    return max([area / width, *map(along, pieces)])


@lru_cache(maxsize=64)
def _cut(
    pieces: tuple[Piece, ...], width: float, length: float, seam: float, seams_welcome: bool
) -> CuttingList:
    best = _on_rolls(_first_fit(pieces, width, length, seam), length)
    fewest = fewest_rolls(pieces, width, length)
    area = sum(piece.length * piece.width for piece in pieces)
    if _used(best) > area / width + SEAM_WORTH_M or len(best) > fewest:
        program = _Program(pieces, width, length, seam, seams_welcome)
        for rolls in range(max(fewest, 1), min(len(best), fewest + _MOST_TRIES) + 1):
            found = program.solved(rolls)
            if found is not None:
                best = min(best, found, key=lambda layout: (len(layout), _used(layout)))
                break
    least = least_length(pieces, width, length, seams_welcome=seams_welcome)
    return replace(_listed(best, pieces, width, length), least_length=least)


def _used(rolls: list[list[_Shelf]]) -> float:
    return round(sum(_depth(shelf) for shelves in rolls for shelf in shelves), 6)


def _depth(shelf: _Shelf) -> float:
    return max(strip.along for strip in shelf)


# -- the program --------------------------------------------------------------------------


@dataclass(frozen=True)
class _Way:
    """One way a piece, or one length of a piece too long for a roll, may lie."""

    piece: int
    turned: bool
    across: float
    along: float


def _ways(pieces: Sequence[Piece], length: float, seam: float) -> Iterator[_Way]:
    for k, piece in enumerate(pieces):
        for turned in (False, True):
            along, across = (piece.width, piece.length) if turned else (piece.length, piece.width)
            while along > length + _TINY:
                yield _Way(k, turned, across, length)
                along -= length - seam
            yield _Way(k, turned, across, along)


class _Program:
    """Strips on shelves on rolls.

    Unknowns: z (does piece p lie turned), s ≥ 0 (width of way w on shelf j), u (is it cut
    there), b (does shelf j stand on roll r). Shelves come in classes of one depth each.
    """

    def __init__(
        self,
        pieces: Sequence[Piece],
        width: float,
        length: float,
        seam: float,
        seams_welcome: bool,
    ) -> None:
        self.pieces = pieces
        self.width, self.length, self.seam = width, length, seam
        self.seams_welcome = seams_welcome
        self.ways = list(_ways(pieces, length, seam))
        self.depths: list[float] = []
        for depth in sorted({round(way.along, 6) for way in self.ways}, reverse=True):
            alike = [way for way in self.ways if abs(way.along - depth) < 1e-6]
            # Each class can at most be filled by the ways that are just as deep.
            self.depths += [depth] * sum(self._least_strips(way) for way in alike)
        self.lies = [
            (w, j)
            for w, way in enumerate(self.ways)
            for j, depth in enumerate(self.depths)
            if way.along <= depth + 1e-6
        ]

    def _least_strips(self, way: _Way) -> int:
        return _strips(way.across, self.width, self.seam)

    def _parts(self, piece: int, *, turned: bool) -> int:
        """Into how many parts a piece must go when it lies that way."""
        ways = [way for way in self.ways if (way.piece, way.turned) == (piece, turned)]
        return sum(self._least_strips(way) for way in ways)

    def solved(self, rolls: int) -> list[list[_Shelf]] | None:
        """Shelves by roll on so many rolls, or None where no such layout exists or is found."""
        from scipy.optimize import Bounds, LinearConstraint, milp
        from scipy.sparse import coo_array

        n_lies, n_shelves = len(self.lies), len(self.depths)
        first_u = len(self.pieces)
        first_s = first_u + n_lies
        first_b = first_s + n_lies
        count = first_b + n_shelves * rolls
        if count > _MOST_UNKNOWNS:
            return None
        rows: list[tuple[dict[int, float], float, float]] = []
        of_way: dict[int, list[int]] = {}
        on_shelf: dict[int, list[int]] = {}
        for k, (w, j) in enumerate(self.lies):
            of_way.setdefault(w, []).append(k)
            on_shelf.setdefault(j, []).append(k)
            wide = min(self.width, self.ways[w].across)
            thin = min(LEAST_STRIP_M, wide)
            rows.append(({first_s + k: 1.0, first_u + k: -wide}, -np.inf, 0.0))
            rows.append(({first_s + k: 1.0, first_u + k: -thin}, 0.0, np.inf))
        for w, way in enumerate(self.ways):
            # Σs = across + seam·(Σu − 1) where the piece lies this way, else 0.
            sign, there = (1.0, 0.0) if way.turned else (-1.0, 1.0)
            need = way.across - self.seam
            sums = {first_s + k: 1.0 for k in of_way[w]}
            sums |= {first_u + k: -self.seam for k in of_way[w]}
            rows.append((sums | {way.piece: -sign * need}, there * need, there * need))
            most = self._least_strips(way) + (2 if self.seams_welcome else 0)
            tally = {first_u + k: 1.0 for k in of_way[w]}
            rows.append((tally | {way.piece: -sign * most}, -np.inf, there * most))
        stands = [[first_b + j * rolls + r for r in range(rolls)] for j in range(n_shelves)]
        for j, at in enumerate(stands):
            filled = {first_s + k: 1.0 for k in on_shelf[j]}
            rows.append((filled | dict.fromkeys(at, -self.width), -np.inf, 0.0))
            rows.append((dict.fromkeys(at, 1.0), 0.0, 1.0))
            if j and self.depths[j] == self.depths[j - 1]:  # one of many alike orders
                rows.append(
                    (dict.fromkeys(at, 1.0) | dict.fromkeys(stands[j - 1], -1.0), -np.inf, 0.0)
                )
        for r in range(rolls):
            along = {stands[j][r]: depth for j, depth in enumerate(self.depths)}
            rows.append((along, 0.0, self.length + _TINY))
        cost = np.zeros(count)
        cost[first_u:first_s] = SEAM_WORTH_M
        cost[first_b:] = np.repeat(self.depths, rolls)
        whole = np.ones(count)
        whole[first_s:first_b] = 0
        upper = np.ones(count)
        upper[first_s:first_b] = self.width
        lower = np.zeros(count)
        if not self.seams_welcome:
            for k in range(len(self.pieces)):
                upright, turned = self._parts(k, turned=False), self._parts(k, turned=True)
                lower[k], upper[k] = float(turned < upright), float(turned <= upright)
        entries = [(i, column) for i, (row, _, _) in enumerate(rows) for column in row]
        values = [value for row, _, _ in rows for value in row.values()]
        matrix = coo_array((values, np.array(entries).T), shape=(len(rows), count)).tocsr()
        low, high = np.array([row[1] for row in rows]), np.array([row[2] for row in rows])
        found = milp(
            cost,
            integrality=whole,
            bounds=Bounds(lower, upper),
            constraints=LinearConstraint(matrix, low, high),
            options={"node_limit": _MOST_NODES, "time_limit": _SECONDS, "mip_rel_gap": 0.002},
        )
        if found.x is None:
            return None
        return self._read(found.x.tolist(), first_u, first_s, stands)

    def _read(
        self,
        x: Sequence[float],
        first_u: int,
        first_s: int,
        stands: list[list[int]],
    ) -> list[list[_Shelf]]:
        shelves: dict[int, _Shelf] = {}
        for k, (w, j) in enumerate(self.lies):
            if x[first_u + k] > 0.5:
                way = self.ways[w]
                strip = _Strip(way.piece, x[first_s + k], way.along)
                shelves.setdefault(j, []).append(strip)
        found: list[list[_Shelf]] = [[] for _ in stands[0]]
        for j, shelf in shelves.items():
            roll = max(range(len(found)), key=lambda r: x[stands[j][r]])
            found[roll].append(shelf)
        return [shelves for shelves in found if shelves]


# -- the simple way ------------------------------------------------------------------------


def _strips(side: float, available: float, seam: float) -> int:
    """Into how many strips a side is divided: n strips cover n·available − (n−1)·seam."""
    if side <= available + _TINY:
        return 1
    return math.ceil((side - seam) / (available - seam) - _TINY)


def _first_fit(pieces: Sequence[Piece], width: float, length: float, seam: float) -> list[_Shelf]:
    """Equal strips on shelves, the deepest first; pieces lie so that they need fewest strips."""
    strips: list[_Strip] = []
    for k, piece in enumerate(pieces):
        choices = []
        long, short = max(piece.length, piece.width), min(piece.length, piece.width)
        for across, along in ((short, long), (long, short)):
            columns, rows = _strips(across, width, seam), _strips(along, length, seam)
            choices.append((columns * rows, across, along, columns, rows))
        count, across, along, columns, rows = min(choices, key=lambda choice: choice[0])
        part = _Strip(
            k, (across + (columns - 1) * seam) / columns, (along + (rows - 1) * seam) / rows
        )
        strips += [part] * count
    strips.sort(key=lambda strip: (-strip.along, -strip.across))
    shelves: list[_Shelf] = []
    for strip in strips:
        for shelf in shelves:
            if sum(one.across for one in shelf) + strip.across <= width + _TINY:
                shelf.append(strip)
                break
        else:
            shelves.append([strip])
    return shelves


def _on_rolls(shelves: list[_Shelf], length: float) -> list[list[_Shelf]]:
    rolls: list[list[_Shelf]] = []
    for shelf in shelves:
        for roll in rolls:
            if sum(map(_depth, roll)) + _depth(shelf) <= length + _TINY:
                roll.append(shelf)
                break
        else:
            rolls.append([shelf])
    return rolls


def _listed(
    rolls: list[list[_Shelf]], pieces: Sequence[Piece], width: float, length: float
) -> CuttingList:
    """Where each strip comes to lie, and what it is called."""
    every = [strip.piece for shelves in rolls for shelf in shelves for strip in shelf]
    number = dict.fromkeys(every, 0)
    placed = []
    for roll, shelves in enumerate(rolls):
        along = 0.0
        for shelf in sorted(shelves, key=_depth, reverse=True):
            across = 0.0
            for strip in sorted(shelf, key=lambda one: (-one.along, -one.across)):
                label, parts = pieces[strip.piece].label, every.count(strip.piece)
                number[strip.piece] += 1
                if parts > 1:
                    label += f", part {number[strip.piece]} of {parts}"
                placed.append(Placed(label, roll, across, along, strip.across, strip.along))
                across += strip.across
            along += _depth(shelf)
    area = sum(one.size_across * one.size_along for one in placed)
    bought = len(rolls) * width * length
    waste = 1 - area / bought if bought else 0.0
    return CuttingList(width, length, len(rolls), tuple(placed), _used(rolls), waste)
