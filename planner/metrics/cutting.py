"""Cutting pieces of lining from rolls or sheets.

Pieces are rectangles. They are laid out in shelves: rows across the width of the roll, as
deep as their deepest piece, filled from the deepest piece down (first fit, decreasing
height; Coffman, Garey, Johnson, Tarjan 1980, SIAM J. Comput. 9, 808-826: never more than
1.7 times the best length plus one piece, usually within a tenth). Both ways of turning the
pieces are tried, long side along or across the roll, and the one that needs fewer rolls,
then less length, is kept. Every cut of a shelf runs right across the roll, as one cuts by
hand. A piece too large for a roll is divided into equal strips that overlap at the seams.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

_TINY = 1e-9


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

    ``used_length`` is the length cut from all rolls together, in metres; ``waste`` the
    share of the bought area that ends in no piece.
    """

    width: float
    length: float
    rolls: int
    placed: tuple[Placed, ...]
    used_length: float
    waste: float


@dataclass
class _Shelf:
    roll: int
    along: float
    depth: float
    filled: float = 0.0


def cutting_list(
    pieces: Sequence[Piece], width: float, length: float, seam: float = 0.02
) -> CuttingList:
    """Lay pieces out on rolls (or sheets) of ``width`` by ``length`` metres.

    ``seam`` is how far the strips of a divided piece overlap, in metres.

    Raises
    ------
    ValueError
        If a side is not above 0 or the seam leaves nothing of a roll's width.
    """
    if width <= 0 or length <= 0:
        raise ValueError("rolls and sheets need a width and a length above 0.")
    if seam >= min(width, length):
        raise ValueError("the overlap at a seam must be less than the width of the roll.")
    fitting = [part for piece in pieces for part in _divided(piece, width, length, seam)]

    def along(piece: Piece) -> tuple[float, float]:
        return min(piece.length, piece.width), max(piece.length, piece.width)

    def across(piece: Piece) -> tuple[float, float]:
        low, high = along(piece)
        return (high, low) if high <= width + _TINY else (low, high)

    layouts = [_laid_out(fitting, width, length, turn) for turn in (along, across)]
    return min(layouts, key=lambda layout: (layout.rolls, round(layout.used_length, 6)))


def _divided(piece: Piece, width: float, length: float, seam: float) -> list[Piece]:
    """The piece, or equal strips of it that fit on one roll, whichever way needs fewer."""
    long, short = max(piece.length, piece.width), min(piece.length, piece.width)
    choices = []
    for across, along in ((short, long), (long, short)):
        columns, rows = _strips(across, width, seam), _strips(along, length, seam)
        choices.append((columns * rows, across, along, columns, rows))
    count, across, along, columns, rows = min(choices, key=lambda choice: choice[0])
    if count == 1:
        return [Piece(piece.label, along, across)]
    part_across = (across + (columns - 1) * seam) / columns
    part_along = (along + (rows - 1) * seam) / rows
    return [
        Piece(f"{piece.label}, part {k + 1} of {count}", part_along, part_across)
        for k in range(count)
    ]


def _strips(side: float, available: float, seam: float) -> int:
    """Into how many strips a side is divided: n strips cover n·available − (n−1)·seam."""
    if side <= available + _TINY:
        return 1
    return math.ceil((side - seam) / (available - seam) - _TINY)


def _laid_out(
    pieces: Sequence[Piece],
    width: float,
    length: float,
    turn: Callable[[Piece], tuple[float, float]],
) -> CuttingList:
    sized = []
    for piece in pieces:
        size_across, size_along = turn(piece)
        if size_along > length + _TINY or size_across > width + _TINY:
            size_across, size_along = size_along, size_across
        sized.append((piece.label, size_across, size_along))
    sized.sort(key=lambda entry: (-entry[2], -entry[1]))
    shelves: list[_Shelf] = []
    ends: list[float] = []
    placed = []
    for label, size_across, size_along in sized:
        shelf = next((s for s in shelves if s.filled + size_across <= width + _TINY), None)
        if shelf is None:
            roll = next((k for k, e in enumerate(ends) if e + size_along <= length + _TINY), None)
            if roll is None:
                roll = len(ends)
                ends.append(0.0)
            shelf = _Shelf(roll, ends[roll], size_along)
            shelves.append(shelf)
            ends[roll] += size_along
        placed.append(Placed(label, shelf.roll, shelf.filled, shelf.along, size_across, size_along))
        shelf.filled += size_across
    area = sum(one.size_across * one.size_along for one in placed)
    bought = len(ends) * width * length
    return CuttingList(
        width, length, len(ends), tuple(placed), sum(ends), 1 - area / bought if bought else 0.0
    )
