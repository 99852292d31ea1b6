"""Maps and charts of a report as SVG, made without Qt.

Maps of light on one scale, light against cost, the budget of doubt, residuals, the schedule.
"""

from __future__ import annotations

import math
import struct
import textwrap
import zlib
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

import numpy as np
import numpy.typing as npt

from planner.estimate.compare import Identity, TradeOff, unbeaten
from planner.estimate.result import CanopyLight, Estimate
from planner.light.cellmap import FloatArray, levels_of, round_values, rounded_up
from planner.metrics.figures import (
    COLOURS,
    FIGURE,
    LEADING,
    NO_VALUE,
    Digits,
    Figure,
    banded,
    ppfd,
)
from planner.plan.place import OWN
from planner.plan.plan import Plan
from planner.plan.space import Point
from planner.reports import content
from planner.reports.contrast import colour_table, ink_on
from planner.reports.drawings import (
    ACCENT,
    FAINT,
    INK,
    LEAF,
    QUIET,
    Frame,
    Picture,
    Sheet,
    shortened,
    upright,
    wide,
)
from planner.units import PPFD_UNIT, LengthUnit, by_tape

if TYPE_CHECKING:
    from planner.estimate.stages import Schedule
    from planner.survey.statistics import Residuals

WIDTH_MM: Final = 150.0
PAGE_MM: Final = 187.5
"""Width of the map by itself."""
_MARGIN_MM: Final = 8.75
_OVER: Final = "#b3501a"
_UNDER: Final = "#2f63b0"
_DOTS_PER_MM: Final = 8.0


def _room(values: Sequence[float]) -> tuple[float, float]:
    """A range with room around the values."""
    low, high = min(values), max(values)
    margin = 0.18 * (high - low) or 0.1 * abs(high) or 1.0
    return low - margin, high + margin


def trade_off_chart(shown: TradeOff, chosen: Identity) -> Picture:
    """Every option a dot, up is more light, left is cheaper; a line joins what none beats.

    That of the plan, ``chosen``, is drawn full.
    """
    spots = shown.spots
    sheet = Sheet(WIDTH_MM, 78.0)
    left, top, right, bottom = 16.0, 5.0, WIDTH_MM - 4.0, 64.0
    (x0, x1), (y0, y1) = _room([s.cost for s in spots]), _room([s.light for s in spots])

    def at(x: float, y: float) -> tuple[float, float]:
        return (
            left + (x - x0) / (x1 - x0) * (right - left),
            bottom - (y - y0) / (y1 - y0) * (bottom - top),
        )

    for level in round_values(y0, y1, 4):
        _, y = at(x0, level)
        sheet.line(((left, y), (right, y)), colour=FAINT, width=0.12)
        sheet.text(left - 1.5, y, f"{level:g}", size=2.4, anchor="end", colour=QUIET)
    for level in round_values(x0, x1, 5):
        x, _ = at(level, y0)
        sheet.line(((x, bottom), (x, bottom + 1)), colour=QUIET, width=0.2)
        sheet.text(x, bottom + 3.2, f"{level:g}", size=2.4, colour=QUIET)
    sheet.line(((left, bottom), (right, bottom)), colour=QUIET, width=0.2)
    sheet.text((left + right) / 2, bottom + 8.0, shown.cost, colour=QUIET)
    sheet.text(3.0, (top + bottom) / 2, shown.light, colour=QUIET, angle=-90)
    best = unbeaten([(s.light, s.cost) for s in spots])
    if len(best) > 1:
        sheet.line([at(spots[k].cost, spots[k].light) for k in best], colour=ACCENT, width=0.3)
    taken: list[tuple[float, float, float]] = []
    for k, spot in enumerate(spots):
        x, y = at(spot.cost, spot.light)
        colour = ACCENT if k in best else QUIET
        sheet.ring(x, y, 1.3, fill=colour if spot.who == chosen else "none", colour=colour)
        name = shortened(spot.name)
        long = wide(name, 2.4)
        ends = x + 2.2 + long < WIDTH_MM
        x, y = (x + 1.6 if ends else x - 1.6 - long), y - 2.2
        # Names keep off one another: down until there is room.
        while any(abs(y - b) < 3.0 and x < a + c and a < x + long for a, b, c in taken):
            y += 3.0
        taken.append((x, y, long))
        sheet.text(x, y, name, size=2.4, anchor="start", bold=spot.who == chosen)
    named = ", ".join(spots[k].name for k in best)
    return sheet.picture(
        f"Light against cost of {len(spots)} options; beaten by none: {named}",
        "Filled: the plan. The line joins the options that no other beats in both at once.",
    )


def budget_chart(parts: Sequence[tuple[str, float]], unit: str) -> Picture:
    """What each doubtful input does to a figure, as bars from the weightiest down."""
    row, left = 6.0, 78.0
    sheet = Sheet(WIDTH_MM, row * len(parts) + 3.0)
    longest = max(value for _, value in parts)
    for k, (name, value) in enumerate(parts):
        y = row * (k + 0.5)
        sheet.text(left - 2, y, shortened(name, 46), size=2.5, anchor="end")
        long = max((WIDTH_MM - left - 24) * value / longest, 0.3)
        sheet.box(left, y - 1.6, long, 3.2, fill=ACCENT)
        half = banded(0.0, value)[1]
        sheet.text(left + long + 1.5, y, f"± {half}", size=2.5, anchor="start", colour=QUIET)
    return sheet.picture(
        f"Half-widths (95 %) in {unit} that single inputs alone would give: "
        + "; ".join(f"{name} ± {banded(0.0, value)[1]}" for name, value in parts)
    )


def residual_drawing(
    plan: Plan, found: Residuals, unit: LengthUnit, room: tuple[float, float] = (86.0, 70.0)
) -> Picture:
    """Measured over estimated at every hole, in per cent; filled where the meter cannot explain."""
    x0, y0, x1, y1 = plan.space.bounds
    scale = min(room[0] / (x1 - x0), room[1] / (y1 - y0))
    frame = Frame(scale, 4.0, 4.0, x0, y1)
    sheet = Sheet((x1 - x0) * scale + 8.0, (y1 - y0) * scale + 12.0)
    sheet.line([frame.at(p) for p in plan.space.footprint], width=0.6, closed=True)
    crowded = len(found.holes) > 60
    for k, (point, ratio) in enumerate(zip(found.points.tolist(), found.ratio, strict=True)):
        if not math.isfinite(
            ratio
        ):  # no light is estimated there, and nothing can be divided by it
            continue
        x, y = frame.at((point[0], point[1]))
        colour = _OVER if ratio > 1 else _UNDER
        sheet.ring(x, y, 0.9, fill=colour if found.outside[k] else "none", colour=colour)
        if not crowded:
            words = f"{100 * (ratio - 1):+.0f}".replace("-", "−")
            sheet.text(x, y + 2.7, words, size=2.2, colour=INK)
    wide_ = by_tape(x1 - x0, unit)
    sheet.text(4 + (x1 - x0) * scale / 2, (y1 - y0) * scale + 9.0, wide_, colour=QUIET)
    return sheet.picture(
        f"Readings against the estimate at {len(found.holes)} holes",
        "Per cent by which a reading lies over or under the estimate; filled rings: more than "
        "the meter's own uncertainty explains.",
    )


def schedule_chart(found: Schedule, ceiling: float, unit: LengthUnit) -> Picture:
    """Canopy and lamp over the weeks under the ceiling."""
    sheet = Sheet(WIDTH_MM, 64.0)
    left, top, right, bottom = 16.0, 8.0, WIDTH_MM - 4.0, 54.0
    high = ceiling * 1.02

    def x_at(week: float) -> float:
        return left + week / found.weeks * (right - left)

    def y_at(height: float) -> float:
        return bottom - height / high * (bottom - top)

    for level in round_values(0.0, ceiling / unit.metres, 4):
        y = y_at(level * unit.metres)
        sheet.line(((left, y), (right, y)), colour=FAINT, width=0.12)
        sheet.text(left - 1.5, y, f"{level:g}", size=2.4, anchor="end", colour=QUIET)
    for stage in found.stages:
        x0, x1 = x_at(stage.first_week), x_at(stage.last_week)
        canopy = y_at(stage.stage.canopy_height)
        sheet.box(x0, canopy, x1 - x0, bottom - canopy, fill=LEAF, opacity=0.35)
        sheet.line(((x1, top), (x1, bottom)), colour=FAINT, width=0.2)
        most = max(int((x1 - x0) / wide("n", 2.3)), 1)
        sheet.text(x0 + 0.8, top - 2.5, shortened(stage.stage.name, most), size=2.3, anchor="start")
        if stage.hanging_height is not None and stage.estimate is not None:
            lamp = y_at(stage.stage.canopy_height + stage.hanging_height)
            sheet.line(((x0, lamp), (x1, lamp)), colour=ACCENT, width=0.8)
            words = f"{ppfd(stage.estimate.figures.mean)} µmol"
            if wide(words, 2.3) < x1 - x0:
                y = (lamp + canopy) / 2
                sheet.text(x0 + 0.8, y, words, size=2.3, anchor="start", colour=QUIET)
    sheet.line(((left, y_at(ceiling)), (right, y_at(ceiling))), width=0.5)
    sheet.line(((left, bottom), (right, bottom)), colour=QUIET, width=0.2)
    for week in round_values(0.0, found.weeks, 8):
        sheet.text(x_at(week), bottom + 3.0, f"{week:g}", size=2.4, colour=QUIET)
    sheet.text((left + right) / 2, bottom + 7.5, "Weeks", colour=QUIET)
    sheet.text(3.0, (top + bottom) / 2, f"Height ({unit.value})", colour=QUIET, angle=-90)
    return sheet.picture(
        f"Canopy and lamp over {found.weeks:g} weeks",
        "Green: the canopy. Blue: the lamps' face. Over it: the ceiling.",
    )


# -- maps of light ------------------------------------------------------------------------


@dataclass(frozen=True)
class _Scale:
    """The ends of a map's colours, and what the map shows in the unit of which they are."""

    high: float
    low: float = 0.0
    figure: Figure = FIGURE["mean"]

    def places(self, values: npt.ArrayLike) -> npt.NDArray[np.uint8]:
        """Which of the 256 colours values have."""
        share = (np.asarray(values, dtype=float) - self.low) / (self.high - self.low)
        return np.clip(255 * share, 0, 255).astype(np.uint8)


def colour_top(highest: float) -> float:
    """Upper end of a scale that starts at dark: the round number at or above a maximum."""
    return rounded_up(highest, 8)


def map_drawing(
    estimate: Estimate, top: float, unit: LengthUnit, *, room: tuple[float, float], name: str = ""
) -> Picture:
    """The light on all canopies from dark to ``top``, with lines at round numbers and lamps.

    ``room`` is what the space itself may take, in millimetres; with a ``name`` it stands
    over the map, without one the map carries its sizes.
    """
    return _map_sheet(estimate, _Scale(top), unit, room, name).picture(_in_words(estimate, name))


def _in_words(estimate: Estimate, name: str = "") -> str:
    shown = [one.figures for one in estimate.layers]
    if estimate.place != OWN:
        shown = [estimate.figures]
    least, most = min(f.minimum for f in shown), max(f.maximum for f in shown)
    said = f"light from {ppfd(least)} to {ppfd(most, unit=True)}"
    if len(shown) > 1:
        said += f" over {len(shown)} canopies"
    return f"{name or estimate.plan.name}: {said}"


def _map_sheet(
    estimate: Estimate, colours: _Scale, unit: LengthUnit, room: tuple[float, float], name: str = ""
) -> Sheet:
    plan = estimate.plan
    x0, y0, x1, y1 = plan.space.bounds
    scale = min(room[0] / (x1 - x0), room[1] / (y1 - y0))
    rim, head = (1.5, 6.0) if name else (9.0, 2.0)
    frame = Frame(scale, rim, head, x0, y1)
    across, down = (x1 - x0) * scale, (y1 - y0) * scale
    sheet = Sheet(across + rim + (1.5 if name else 2.0), down + head + (2.0 if name else 8.0))
    for canopy in estimate.layers:
        _light(sheet, canopy, frame, colours)
        if canopy.place != OWN:
            shape = [frame.at(point) for point in canopy.outline]
            leads = canopy.place == estimate.place
            sheet.line(shape, colour=INK, width=0.6 if leads else 0.25, closed=True)
    for lamp in plan.lamps:
        shape = [frame.at(point) for point in lamp.outline()]
        sheet.line(shape, colour="#000000", width=0.5, closed=True)
        sheet.line(shape, colour="#ffffff", width=0.22, closed=True, dash="1.2 0.8")
    for index in range(plan.space.wall_count):
        ends = [frame.at(point) for point in plan.space.wall(index)]
        if plan.wall_opens(index):
            sheet.line(ends, colour=QUIET, width=0.4, dash="0.6 1")
        else:
            sheet.line(ends, width=0.7, round_ends=True)
    if name:
        most = max(int((across + 2) / wide("n", 2.4)), 4)
        sheet.text(rim, 3.0, shortened(name, most), size=2.4, anchor="start", bold=True)
    else:
        sheet.text(rim + across / 2, head + down + 3.6, by_tape(x1 - x0, unit), colour=QUIET)
        y = head + down / 2
        sheet.text(4.0, y, by_tape(y1 - y0, unit), colour=QUIET, angle=-90)
    return sheet


def whole_map(estimate: Estimate, unit: LengthUnit, figure: Figure = FIGURE["mean"]) -> Picture:
    """The map by itself: title, sentence, light, scale and figures, as every export of it is.

    Of PPFD from dark, or of another ``figure`` there is a map of: shares over what is present.
    """
    plan, ends = estimate.plan, _ends(estimate, figure)
    across = PAGE_MM - 2 * _MARGIN_MM
    light, scale = _map_sheet(estimate, ends, unit, (158.0, 172.0)), _scale_sheet(ends)
    lines = textwrap.wrap(content.sentence(estimate), int(across / wide("n")))
    head = 14.0 + 3.7 * len(lines)
    below = head + light.height + 1.5 + scale.height
    sheet = Sheet(PAGE_MM, below + 29.0)
    title = shortened(plan.name, int(across / wide("n", 4.4)))
    sheet.text(_MARGIN_MM, 8.0, title, size=4.4, anchor="start", bold=True)
    for k, line in enumerate(lines):
        sheet.text(_MARGIN_MM, 14.0 + 3.7 * k, line, anchor="start")
    sheet.place(light, (PAGE_MM - light.width) / 2, head)
    sheet.place(scale, (PAGE_MM - scale.width) / 2, head + light.height + 1.5)
    shown = content.headline_figures(estimate)
    second = {"minimum", "maximum", "cv", "utilisation", "efficacy", "watts"}
    second = second if figure.key == "mean" else {*COLOURS}
    rows = shown[:LEADING], [one for one in shown if one.key in second]
    for row, y, size in zip(rows, (below + 6.0, below + 18.0), (4.1, 2.8), strict=True):
        for k, one in enumerate(row):
            x = _MARGIN_MM + across * k / len(row)
            sheet.text(x, y, one.label, size=2.2, anchor="start", colour=QUIET)
            sheet.text(x, y + 2.6 + size / 2, one.value, size=size, anchor="start", bold=size > 3)
            if one.unit and one.value != NO_VALUE:
                x += (1.15 if size > 3 else 1.0) * wide(one.value, size) + 1.0
                at = y + 2.6 + size / 2
                sheet.text(x, at, one.unit, size=2.2, anchor="start", colour=QUIET)
    return sheet.picture(_told(estimate, figure))


def _ends(estimate: Estimate, figure: Figure) -> _Scale:
    """The scale of one map of an estimate by itself."""
    if figure.key == "mean":
        return _Scale(colour_top(float(estimate.every_ppfd.max())))
    values = estimate.every(figure.key)
    low, high = levels_of(values, stretched=figure.digits is Digits.SHARE)
    return _Scale(high, low, figure)


def _told(estimate: Estimate, figure: Figure) -> str:
    values = estimate.every(figure.key)
    if figure.key == "mean" or not np.isfinite(values).any():
        return _in_words(estimate)
    least, most = (figure.written(float(of(values))) for of in (np.nanmin, np.nanmax))
    return f"{estimate.plan.name}: {figure.map_name} from {least} to {most} {figure.map_unit}"


def colour_maps(estimate: Estimate, unit: LengthUnit) -> tuple[Picture, ...]:
    """Small maps of ePPFD and the shares of colours, each over a scale of its own.

    None where the colours of a lamp are not known.
    """
    made = []
    for figure in (FIGURE[key] for key in estimate.maps if key != "mean"):
        ends = _ends(estimate, figure)
        light = _map_sheet(estimate, ends, unit, (76.0, 56.0), figure.map_name)
        scale = _scale_sheet(ends, 42.0)
        sheet = Sheet(max(light.width, scale.width), light.height + scale.height)
        sheet.place(light, (sheet.width - light.width) / 2, 0.0)
        sheet.place(scale, (sheet.width - scale.width) / 2, light.height)
        made.append(sheet.picture(_told(estimate, figure)))
    return tuple(made)


def scale_drawing(top: float, length: float = 120.0) -> Picture:
    """The scale of the maps' colours, lying."""
    return _scale_sheet(_Scale(top), length).picture(f"Colours from 0 to {top:g} {PPFD_UNIT}")


def _scale_sheet(scale: _Scale, length: float = 120.0) -> Sheet:
    sheet = Sheet(length + 40.0, 9.0)
    left = 3.0
    colours = colour_table()
    opaque = np.full((1, len(colours), 1), 255, np.uint8)
    sheet.image(left, 1.0, length, 3.0, png_bytes(np.concatenate([colours[None], opaque], axis=2)))
    ends = scale.low, scale.high
    for level in sorted({*round_values(*ends, 6), *(round(end, 9) for end in ends)}):
        x = left + length * (level - scale.low) / (scale.high - scale.low)
        sheet.line(((x, 4.0), (x, 5.0)), width=0.2)
        sheet.text(x, 6.8, f"{level:g}", size=2.4)
    figure = scale.figure
    said = figure.map_unit if figure.key == "mean" else f"{figure.map_name}, {figure.map_unit}"
    sheet.text(left + length + 4, 2.6, said, size=2.4, anchor="start", colour=QUIET)
    return sheet


def _light(sheet: Sheet, shown: CanopyLight, frame: Frame, scale: _Scale) -> None:
    read = shown.maps[scale.figure.key]
    a, b, c, d = read.bounds
    left, upper = frame.at((a, d))
    across, down = (c - a) * frame.scale, (d - b) * frame.scale
    columns, rows = (min(max(round(mm * _DOTS_PER_MM), 2), 900) for mm in (across, down))
    fine = read.raster(rows, columns)[::-1]
    x = a + (np.arange(columns) + 0.5) * (c - a) / columns
    y = d - (np.arange(rows) + 0.5) * (d - b) / rows
    inside = shown.shows(x[None, :], y[:, None])
    colours = colour_table()[scale.places(fine)]
    rgba = np.dstack([colours, np.where(inside, 255, 0).astype(np.uint8)])
    sheet.image(left, upper, across, down, png_bytes(rgba))
    taken: list[Point] = []
    # Lines of equal light are of PPFD alone, so that no other map is taken for one of it.
    for level in read.contour_levels() if scale.figure.key == "mean" else ():
        red, green, blue = ink_on(colour_table()[scale.places(level)].tolist())
        ink = f"#{red:02x}{green:02x}{blue:02x}"
        for run in _within(shown, level):
            _contour(sheet, [frame.at((x, y)) for x, y in run], f"{level:g}", ink, taken)


def _within(shown: CanopyLight, level: float) -> Iterable[FloatArray]:
    """The runs of a level's lines where there is light, finely enough to end at the walls."""
    read = shown.map
    fine = max(read.bounds[2] - read.bounds[0], read.bounds[3] - read.bounds[1]) / 400
    for coarse in read.lines(level):
        far = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(coarse, axis=0).T))])
        every = np.linspace(0.0, far[-1], max(round(far[-1] / fine), 2) + 1)
        line = np.stack([np.interp(every, far, coarse[:, k]) for k in (0, 1)], axis=1)
        inside = shown.shows(line[:, 0], line[:, 1]).tolist()
        start = None
        for k, there in enumerate([*inside, False]):
            if there and start is None:
                start = k
            elif not there and start is not None:
                if k - start > 2:
                    yield line[start:k]
                start = None


def _contour(sheet: Sheet, points: list[Point], words: str, ink: str, taken: list[Point]) -> None:
    """A line with its number in a gap, where there is room for one."""
    xy = np.array(points)
    steps = np.hypot(*np.diff(xy, axis=0).T)
    far = np.concatenate([[0.0], np.cumsum(steps)])
    size = 2.2
    half = wide(words, size) / 2 + 0.6
    if far[-1] > 6 * half:
        for share in (0.5, 0.38, 0.62, 0.25, 0.75):
            middle = far[-1] * share
            x, y = (float(np.interp(middle, far, xy[:, k])) for k in (0, 1))
            if all(math.dist((x, y), other) > 2.4 * half for other in taken):
                taken.append((x, y))
                fro, to = _at(far, xy, middle - half), _at(far, xy, middle + half)
                before = [*map(tuple, xy[far < middle - half].tolist()), fro]
                after = [to, *map(tuple, xy[far > middle + half].tolist())]
                for part in (before, after):
                    sheet.line(part, colour=ink, width=0.22)
                slope = math.degrees(math.atan2(to[1] - fro[1], to[0] - fro[0]))
                sheet.text(x, y, words, size=size, colour=ink, angle=upright(slope))
                return
    sheet.line(points, colour=ink, width=0.22)


def _at(far: FloatArray, xy: FloatArray, place: float) -> Point:
    return float(np.interp(place, far, xy[:, 0])), float(np.interp(place, far, xy[:, 1]))


def png_bytes(pixels: npt.NDArray[np.uint8]) -> bytes:
    """Pixels (rows, columns, 4: red, green, blue, opacity) as a PNG file.

    Source: W3C, Portable Network Graphics; colour type 6, rows without a filter.
    """
    rows, columns, _ = pixels.shape

    def chunk(kind: bytes, data: bytes) -> bytes:
        body = kind + data
        return struct.pack(">I", len(data)) + body + struct.pack(">I", zlib.crc32(body))

    lines = np.concatenate(
        [np.zeros((rows, 1), np.uint8), pixels.reshape(rows, 4 * columns)], axis=1
    )
    head = struct.pack(">IIBBBBB", columns, rows, 8, 6, 0, 0, 0)
    data = zlib.compress(lines.tobytes(), 9)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", data) + chunk(b"IEND", b"")
