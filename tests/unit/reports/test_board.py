"""The printed board, measured in the PDF itself."""

from __future__ import annotations

import itertools
import re
import zlib

import numpy as np
import pytest
from PySide6.QtCore import QPointF, QRectF

from planner.plan.survey import Survey, SurveyGrid
from planner.reports.board import (
    BoardError,
    Look,
    _around,
    _door_words,
    _inside,
    _label_place,
    board_pdf,
    sheets,
)
from planner.reports.sheet import Paper
from planner.survey.layout import holes

SQUARE = ((0.0, 0.0), (0.6, 0.0), (0.6, 0.6), (0.0, 0.6))
GRID = SurveyGrid(rows=4, columns=4, hole_diameter=0.03)
MM_PER_POINT = 25.4 / 72
FILLS = {"f", "f*", "B", "B*", "b", "b*"}
STROKES = {"S", "s", "B", "B*", "b", "b*"}
Box = tuple[float, float, float, float]


def survey() -> Survey:
    return Survey(key="one", name="Invented survey", grid=GRID, points=holes(GRID, SQUARE))


def streams(pdf: bytes) -> list[str]:
    """Drawing instructions of the pages, in order."""
    found = []
    for match in re.finditer(rb"stream\r?\n(.*?)\r?\nendstream", pdf, re.DOTALL):
        try:
            text = zlib.decompress(match[1]).decode("latin-1")
        except zlib.error:
            continue
        if re.search(r"(^|\s)cm\s", text):
            found.append(text)
    return found


def pages(pdf: bytes) -> list[Box]:
    boxes = re.findall(rb"/MediaBox\s*\[\s*([\d.]+) ([\d.]+) ([\d.]+) ([\d.]+)", pdf)
    return [tuple(float(v) for v in box) for box in boxes]  # type: ignore[misc]


def filled_and_stroked(stream: str) -> tuple[list[Box], list[Box]]:
    """Bounds in millimetres of every path that is filled, and of every one that is stroked.

    A small reader of the path operators of PDF (ISO 32000-1, 8.5): cm, q, Q, m, l, c, re, h.
    """
    matrix = np.eye(3)
    stack: list[np.ndarray] = []
    operands: list[float] = []
    path: list[np.ndarray] = []
    filled: list[Box] = []
    stroked: list[Box] = []
    for token in re.sub(r"\([^)]*\)|<[^>]*>|\[[^\]]*\]", " ", stream).split():
        if re.fullmatch(r"[-+]?[\d.]+", token):
            operands.append(float(token))
            continue
        if token == "cm":
            a, b, c, d, e, f = operands[-6:]
            matrix = np.array([[a, b, 0], [c, d, 0], [e, f, 1]]) @ matrix
        elif token == "q":
            stack.append(matrix)
        elif token == "Q":
            matrix = stack.pop()
        elif token in {"m", "l", "c"}:
            pairs = np.array(operands[-(6 if token == "c" else 2) :]).reshape(-1, 2)
            path += [np.append(pair, 1.0) @ matrix for pair in pairs]
        elif token == "re":
            x, y, w, h = operands[-4:]
            corners = ((x, y), (x + w, y), (x + w, y + h), (x, y + h))
            path += [np.append(pair, 1.0) @ matrix for pair in corners]
        elif token in FILLS | STROKES | {"n"}:
            if path:
                points = np.array(path)[:, :2] * MM_PER_POINT
                box: Box = (*points.min(axis=0).tolist(), *points.max(axis=0).tolist())
                filled += [box] * (token in FILLS)
                stroked += [box] * (token in STROKES)
            path = []
        operands = []
    return filled, stroked


def size(box: Box) -> tuple[float, float]:
    return box[2] - box[0], box[3] - box[1]


@pytest.mark.parametrize("paper", list(Paper))
def test_the_bar_is_100_millimetres_on_every_sheet(paper: Paper, qapp: object) -> None:
    pdf = board_pdf(SQUARE, survey(), paper=paper)
    drawn = streams(pdf)
    count = len(sheets((600, 600), paper))
    assert count > 4
    for stream in drawn[:count]:
        filled, _ = filled_and_stroked(stream)
        bars = [size(box) for box in filled if abs(size(box)[1] - 1.5) < 0.05]
        assert len(bars) == 1
        assert bars[0][0] == pytest.approx(100.0, abs=0.05)


@pytest.mark.parametrize("paper", list(Paper))
def test_pages_have_the_size_of_the_paper(paper: Paper, qapp: object) -> None:
    found = pages(board_pdf(SQUARE, survey(), paper=paper))
    assert len(found) == len(sheets((600, 600), paper)) + 2, "overview and recording sheet"
    for box in found:
        # Qt rounds pages to whole points
        assert box[2] * MM_PER_POINT == pytest.approx(paper.size_mm[0], abs=0.4)
        assert box[3] * MM_PER_POINT == pytest.approx(paper.size_mm[1], abs=0.4)


def test_holes_are_true_to_size_and_place_across_sheets(qapp: object) -> None:
    pdf = board_pdf(SQUARE, survey(), paper=Paper.A4)
    tiles = sheets((600, 600), Paper.A4)
    seen: set[int] = set()
    points = np.array(survey().points) * 1000
    page_height = pages(pdf)[0][3] * MM_PER_POINT
    for tile, stream in zip(tiles, streams(pdf), strict=False):
        _, stroked = filled_and_stroked(stream)
        rings = [b for b in stroked if np.allclose(size(b), 30.0, atol=0.3)]
        for box in rings:
            middle = np.array([(box[0] + box[2]) / 2, (box[1] + box[3]) / 2])
            # Sheets begin a margin of 10 mm in, above a foot of 16 mm; the page is counted
            # from its top, as it is drawn.
            from_top = page_height - middle[1]
            on_board = np.array(
                [middle[0] - 10 + tile.left, (297 - 10 - 16 - from_top) + tile.bottom]
            )
            away = np.hypot(*(points - on_board).T)
            assert away.min() < 0.3
            seen.add(int(away.argmin()))
    assert seen == set(range(16))


def test_sheets_cover_the_board_and_overlap_by_a_centimetre() -> None:
    tiles = sheets((600, 600), Paper.A4)
    columns = sorted({(tile.left, tile.width) for tile in tiles})
    assert columns[0][0] == 0
    assert columns[-1][0] + columns[-1][1] >= 600
    for (left, width), (following, _) in itertools.pairwise(columns):
        assert left + width - following == pytest.approx(10)
    assert {tile.name for tile in sheets((200, 300), Paper.A4)} == {"A1", "B1", "A2", "B2"}
    assert [tile.name for tile in sheets((150, 150), Paper.A4)] == ["A1"]


@pytest.mark.parametrize("paper", list(Paper))
def test_the_overview_shows_every_sheet_where_it_goes(paper: Paper, qapp: object) -> None:
    tiles = sheets((600, 600), paper)
    _, stroked = filled_and_stroked(streams(board_pdf(SQUARE, survey(), paper=paper))[len(tiles)])
    # The board of 600 mm is cut to 596; all lengths shrink alike, so its square tells the scale.
    (board,) = {b for b in stroked if size(b)[0] == pytest.approx(size(b)[1], abs=0.05)
                and size(b)[0] > 20}  # fmt: skip
    scale = size(board)[0] / 596
    for tile in tiles:
        left = board[0] + (tile.left - 2) * scale
        wanted = (tile.width * scale, tile.height * scale)
        same = [b for b in stroked if size(b) == pytest.approx(wanted, abs=0.1)]
        assert any(b[0] == pytest.approx(left, abs=0.1) for b in same), tile.name
    rings = [b for b in stroked if size(b) == pytest.approx((1.6, 1.6), abs=0.05)]
    assert len(rings) == 16


def test_one_sheet_needs_no_overview(qapp: object) -> None:
    footprint = ((0.0, 0.0), (0.15, 0.0), (0.15, 0.12), (0.0, 0.12))
    grid = SurveyGrid(rows=2, columns=2, hole_diameter=0.02)
    small = Survey(key="one", name="Invented", grid=grid, points=holes(grid, footprint))
    assert len(pages(board_pdf(footprint, small))) == 2


def test_a_board_as_large_as_a_room_is_refused() -> None:
    with pytest.raises(BoardError, match="sheets of paper"):
        sheets((9000, 9000), Paper.A4)


def test_the_board_is_cut_inside_the_walls_so_that_it_goes_in(qapp: object) -> None:
    # One sheet: 150 by 120 mm, two millimetres less on every side.
    footprint = ((0.0, 0.0), (0.15, 0.0), (0.15, 0.12), (0.0, 0.12))
    grid = SurveyGrid(rows=2, columns=2, hole_diameter=0.02)
    small = Survey(key="one", name="Invented", grid=grid, points=holes(grid, footprint))
    _, stroked = filled_and_stroked(streams(board_pdf(footprint, small))[0])
    assert any(np.allclose(size(box), (146.0, 116.0), atol=0.1) for box in stroked)
    filled, _ = filled_and_stroked(streams(board_pdf(footprint, small, look=Look(black=True)))[0])
    assert any(np.allclose(size(box), (146.0, 116.0), atol=0.1) for box in filled)
    assert sum(np.allclose(size(box), (20.0, 20.0), atol=0.1) for box in filled) == 4


def test_a_concave_board_is_moved_inwards_at_every_wall() -> None:
    # By hand: an L of 10 by 10 without its upper right quarter, every wall one to the inside.
    corner = ((0.0, 0.0), (10.0, 0.0), (10.0, 5.0), (5.0, 5.0), (5.0, 10.0), (0.0, 10.0))
    found = _inside(corner, 1.0)
    assert found == [(1, 1), (9, 1), (9, 4), (4, 4), (4, 9), (1, 9)]


@pytest.mark.parametrize(("wall", "side"), list(enumerate(["near", "right", "far", "left"])))
def test_every_sheet_says_on_which_side_the_door_is(wall: int, side: str) -> None:
    """Walls of a square, counter-clockwise from the near one (smallest y)."""
    assert (
        _door_words(SQUARE, Look(door=wall))
        == f"The door is on the {side} side, a thick grey edge."
    )
    assert not _door_words(SQUARE, Look())


def test_numbers_stand_whole_on_their_sheet_and_over_no_hole() -> None:
    frame = QRectF(0, 0, 100, 100)
    centres = [QPointF(95, 50), QPointF(60, 50), QPointF(72, 50), QPointF(99, 99), QPointF(30, 4)]
    taken = [_around(centre, 11.0) for centre in centres]
    for number, centre in enumerate(centres, start=100):
        place = _label_place(centre, 11.0, str(number), frame, taken)
        assert place is not None
        assert frame.contains(place)
        assert not any(place.intersects(other) for other in taken)
        taken.append(place)


def test_crosses_stand_over_no_hole_and_on_the_same_place_of_both_sheets(qapp: object) -> None:
    grid = SurveyGrid(rows=12, columns=12, hole_diameter=0.03)
    many = Survey(key="one", name="Invented", grid=grid, points=holes(grid, SQUARE))
    tiles = sheets((600, 600), Paper.A4)
    pdf = board_pdf(SQUARE, many, look=Look(door=0, expected=(212.0,) * 144))
    page_height = pages(pdf)[0][3] * MM_PER_POINT
    places: list[tuple[int, int]] = []
    for tile, stream in zip(tiles, streams(pdf), strict=False):
        _, stroked = filled_and_stroked(stream)
        for box in (b for b in stroked if np.allclose(size(b), 4.0, atol=0.05)):
            middle = ((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)
            on_board = (
                middle[0] - 10 + tile.left,
                297 - 26 - (page_height - middle[1]) + tile.bottom,
            )
            away = np.hypot(*(np.array(many.points) * 1000 - on_board).T)
            assert away.min() >= 15, "the hole's edge"
            places.append((round(on_board[0]), round(on_board[1])))
    assert places
    for x, y in places:
        twins = [p for p in places if abs(p[0] - x) <= 1 and abs(p[1] - y) <= 1]
        assert len(twins) == 2, "one on either sheet"
