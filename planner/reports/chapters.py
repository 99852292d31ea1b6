"""The sections of a report, each from what is known; pure functions without Qt or clock."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Collection, Sequence
from typing import Final

import planner
from planner.catalogue.library import load_cautions
from planner.estimate.compare import COLUMNS, Column, Comparison, Option, option, trade_off
from planner.estimate.odds import NOT_COUNTED, verdict
from planner.estimate.result import Estimate, Quality
from planner.estimate.stages import stage_columns
from planner.estimate.worth import ASSUMPTIONS as OF_AIR
from planner.metrics.figures import FIGURE, NO_VALUE, banded, percent, ppfd
from planner.plan.ageing import fading_words
from planner.plan.costs import Costs
from planner.plan.dials import dial
from planner.plan.lamp import CosineProfile, LampModel
from planner.plan.survey import Survey
from planner.plan.tiers import hangs
from planner.reports import content
from planner.reports.build_sheet import build_section
from planner.reports.cautions import cautions
from planner.reports.charts import (
    budget_chart,
    colour_maps,
    colour_top,
    map_drawing,
    residual_drawing,
    scale_drawing,
    schedule_chart,
    trade_off_chart,
)
from planner.reports.drawings import elevation_drawing, lined_with, plan_drawing
from planner.reports.report import (
    SECTIONS,
    Block,
    Known,
    Pictures,
    Points,
    Report,
    Section,
    Table,
    Words,
    baseline_of,
    decision,
)
from planner.reports.stands import base_of, canopies_of_stages, canopy_table, standing
from planner.survey.statistics import residuals, summarise, without
from planner.units import (
    COVERAGE,
    PPFD_UNIT,
    LengthUnit,
    by_tape,
    capital,
    format_number,
    in_unit,
    listed,
    on_tape,
)

Maker = Callable[[Known, LengthUnit], Sequence[Block]]

_MOST_MAPS: Final = 9
FROM_WHAT_GROWS: Final = (
    "Canopy and hanging heights of a stage are those of the canopy by which the plan is judged; "
    "elsewhere lamps are told from the plan's own."
)
_MOST_HOLES: Final = 40


def report(
    known: Known,
    unit: LengthUnit = LengthUnit.CM,
    *,
    sections: Collection[str] = tuple(SECTIONS),
    date: dt.date | None = None,
) -> Report:
    """The report of a plan: the sections asked for that have something to say, in their order.

    ``date`` is printed where it is given; nothing else depends on when it is made.
    """
    plan = known.plan
    made = []
    for key in SECTIONS:
        if key not in sections:
            continue
        if key == "build":
            made.append(build_section(plan, unit, known.schedule))
            continue
        blocks = tuple(_MAKERS[key](known, unit))
        if blocks:
            made.append(Section(key, SECTIONS[key], blocks))
    about = f"Grow space light planner {planner.__version__}"
    if date is not None:
        about += f", {date.isoformat()}"
    if judged := content.judged_sentence(plan, known.estimate.place):
        about += f". {judged}"
    return Report(plan.name, about, tuple(made))


# -- what was decided -----------------------------------------------------------------------


def _decision(known: Known, unit: LengthUnit) -> Sequence[Block]:
    blocks: list[Block] = [Words(line, large=True) for line in decision(known, unit)]
    blocks.append(Words(content.sentence(known.estimate, known.uncertainty)))
    wanted = content.wanted_sentence(known.estimate)
    if wanted:
        blocks.append(Words(wanted, quiet=True))
    if known.plan.note:
        blocks.append(Words(known.plan.note, quiet=True))
    return blocks


def _beam(model: LampModel) -> str:
    """The beam of a kind of lamp as far as it is in doubt: ', beam 120 ± 20°'."""
    if model.beam_range_deg is None or not isinstance(model.profile, CosineProfile):
        return ""
    return f", beam {model.profile.beam_angle_deg:.0f} ± {model.beam_uncertainty_deg:.0f}°"


# -- the plan -------------------------------------------------------------------------------


def _plan(known: Known, unit: LengthUnit) -> Sequence[Block]:
    plan = known.plan
    space, u = plan.space, unit.value
    x0, y0, x1, y1 = space.bounds
    closed = "closed leaves" if plan.canopy.closed else "an open level"
    canopy = f"canopy at {by_tape(plan.canopy.height, unit)} ({closed})"
    facts = (
        f"{by_tape(x1 - x0, unit)} wide, {by_tape(y1 - y0, unit)} deep, "
        f"{by_tape(space.height, unit)} high inside, "
        f"{FIGURE['canopy_area'].text(space.area)} of floor; {canopy}."
    )
    blocks: list[Block] = [
        Words(facts),
        Pictures((plan_drawing(plan, unit, (66.0, 66.0)), elevation_drawing(plan, unit, (38, 60)))),
    ]
    if plan.lamps:
        heads = ("Lamp", "Model", f"x, y ({u})", f"{dial('height').label} ({u})", "Output (%)",
                 FIGURE["photon_flux"].unit, "W")  # fmt: skip
        rows = tuple(
            (
                f"{number}{': ' + lamp.label if lamp.label else ''}"
                f"{', ' + lamp.leans if lamp.leans else ''}",
                f"{lamp.model.name}{_beam(lamp.model)}",
                f"{on_tape(lamp.x, unit)}, {on_tape(lamp.y, unit)}",
                on_tape(hangs(plan, lamp), unit),
                f"{lamp.output_percent:g}",
                f"{FIGURE['photon_flux'].number(lamp.ppf)} ± "
                f"{banded(0.0, lamp.ppf * lamp.model.ppf_uncertainty)[1]}",
                FIGURE["watts"].number(lamp.watts),
            )
            for number, lamp in enumerate(plan.lamps, start=1)
        )
        blocks.append(Table(heads, rows, (2, 3, 4, 5, 6), "Lamps"))
        models = {lamp.model.key: lamp.model for lamp in plan.lamps}
        blocks += [_source(model.name, model.source) for model in models.values()]
    blocks += standing(plan, unit, base_of(plan, [(one.x, one.y) for one in plan.obstacles]))
    if worn := content.worn(plan):
        blocks.append(Words(f"As old and dirty as it is: {listed(worn)}."))
    if faded := fading_words(plan):
        blocks.append(Words(faded))
    used = [(lining, lined_with(plan, lining)) for lining in plan.linings]
    lined = tuple(
        (
            lining.name,
            where,
            f"{percent(lining.reflectance)} ({percent(lining.low)} to {percent(lining.high)})",
            percent(lining.specular_share),
        )
        for lining, where in used
        if where
    )
    if lined:
        of_linings = ("Lining", "Where", "Reflects (from – to)", "Of it as a mirror")
        blocks.append(Table(of_linings, lined, (2, 3), "Linings"))
        blocks += [_source(lining.name, lining.source) for lining, where in used if where]
    return blocks


def _source(name: str, source: str) -> Words:
    return Words(f"{name}: {source or 'no source is given'}", quiet=True)


# -- the light ------------------------------------------------------------------------------


def _light(known: Known, unit: LengthUnit) -> Sequence[Block]:
    estimates = [(known.plan.name, known.estimate)]
    estimates += [(s.name, s.estimate) for s in known.others if s.estimate is not None]
    shown = estimates[:_MOST_MAPS]
    top = colour_top(max(float(one.every_ppfd.max()) for _, one in shown))
    blocks: list[Block] = [
        Pictures((map_drawing(known.estimate, top, unit, room=(128.0, 88.0)),)),
        Pictures((scale_drawing(top),)),
    ]
    above = [one.place for one in known.estimate.canopies if one not in known.estimate.layers]
    if above:
        tiers = [(place.title(known.plan), known.estimate.on(place)) for place in above]
        maps = tuple(map_drawing(one, top, unit, room=(76.0, 56.0), name=n) for n, one in tiers)
        blocks += [Words("The canopies that hang over it, on the same scale."), Pictures(maps)]
    if len(shown) > 1:
        room = (76.0, 56.0) if len(shown) in {2, 4} else (50.0, 44.0)
        maps = tuple(map_drawing(one, top, unit, room=room, name=name) for name, one in shown)
        blocks.append(Words("The plan and its options on the same scale."))
        blocks.append(Pictures(maps))
    if len(estimates) > len(shown):
        blocks.append(Words(f"{len(estimates) - len(shown)} more options are in the table only."))
    return blocks


def _figures(known: Known, unit: LengthUnit) -> Sequence[Block]:
    del unit
    estimate = known.estimate
    rows = tuple(
        (one.label, one.value + (f" {one.spread}" if one.spread else ""), one.unit, one.meaning)
        for one in _plain_figures(estimate, known)
    )
    blocks: list[Block] = [Table(("Figure", "Value", "Unit", "What it is"), rows, (1,))]
    blocks += canopy_table(estimate, known.uncertainty)
    if known.uncertainty is not None:
        blocks.append(Words("± holds 95 % of what the inputs leave open.", quiet=True))
    if estimate.shares:
        shares = tuple((s.place.title(estimate.plan), percent(s.share)) for s in estimate.shares)
        blocks.append(Table(("Surface", "Share"), shares, (1,), "Where the photons went"))
    return blocks


def _plain_figures(estimate: Estimate, known: Known) -> Sequence[content.HeadlineFigure]:
    """The figures with their bands, but without the causes, which have a section of their own."""
    plain = {one.key: one.meaning for one in content.headline_figures(estimate)}
    banded_ = content.headline_figures(estimate, known.uncertainty)
    return [
        content.HeadlineFigure(o.key, o.label, o.value, o.unit, plain[o.key], o.spread)
        for o in banded_
        if o.value != NO_VALUE
    ]


# -- options --------------------------------------------------------------------------------


def _options(known: Known, unit: LengthUnit) -> Sequence[Block]:
    del unit
    comparison = known.comparison
    if comparison is None:
        return ()
    costs, rows = known.plan.costs, option_rows(known, comparison)
    blocks: list[Block] = [Words(f"Measured against '{baseline_of(comparison).name}'.")]
    if len({s.estimate.place for s in comparison.sides if s.estimate is not None}) > 1:
        blocks.append(Words(content.DIFFERENTLY))
    light = ("mean", "of_base", "minimum", "min_over_mean", "share_inside", "inside_all", "dli")
    for title, of_light in (("The light they give", True), ("What they take", False)):
        shown = [
            column
            for column in COLUMNS
            if (column.key in light) == of_light
            and any(row.values[column.key] is not None for row in rows)
        ]
        heads = ("Option", *(column.heading(costs.currency) for column in shown))
        cells = tuple(
            (row.side.name, *(_digits(column, row.values[column.key], known) for column in shown))
            for row in rows
        )
        if shown:
            blocks.append(Table(heads, cells, tuple(range(1, len(heads))), title))
    blocks.append(_differences(rows))
    blocks += _trade_off(rows, costs)
    told = [
        verdict("This plan", known.tellings[side.identity], f"'{side.name}'")
        for side in comparison.sides[1:]
        if side.identity in known.tellings
    ]
    if told:
        blocks += [Points(tuple(told)), Words(NOT_COUNTED, quiet=True)]
    problems = tuple(problem for side in comparison.sides for problem in side.problems)
    return [*blocks, Points(problems)] if problems else blocks


def _digits(column: Column, value: float | None, known: Known) -> str:
    """A figure with the digits it has elsewhere in the report, where its doubt is known."""
    standard = float(getattr(known.uncertainty, column.key, 0.0))
    if value is None or standard <= 0 or column.key not in FIGURE:
        return column.text(value)
    return FIGURE[column.key].banded(value, standard, COVERAGE)[0]


def option_rows(known: Known, comparison: Comparison) -> tuple[Option, ...]:
    """The rows of the options table, the plan's first."""
    base, costs, bills = baseline_of(comparison), known.plan.costs, known.bills
    return tuple(option(side, base, bills.get(side.identity), costs) for side in comparison.sides)


def _differences(rows: Sequence[Option]) -> Block:
    lines = []
    for row in rows[1:]:
        buy = f" To buy: {row.buy}." if row.buy else ""
        beyond = f" {capital(row.beyond)}." if row.beyond else ""
        lines.append(f"{row.side.name}: {'; '.join(row.side.said) or 'as the plan'}.{beyond}{buy}")
    return Points(tuple(lines))


def _trade_off(rows: Sequence[Option], costs: Costs) -> Sequence[Block]:
    """Light against what it costs in all, or, while no price is known, against energy."""
    made = trade_off(rows, "mean", "total", costs)
    if len(made.spots) < 2:
        return ()
    chart = Pictures((trade_off_chart(made, rows[0].side.identity),))
    return (chart, Words(made.note, quiet=True)) if made.note else (chart,)


# -- surveys --------------------------------------------------------------------------------


def _survey(known: Known, unit: LengthUnit) -> Sequence[Block]:
    return [block for one in known.plan.surveys for block in _one_survey(known, one, unit)]


def _one_survey(known: Known, survey: Survey, unit: LengthUnit) -> Sequence[Block]:
    expected = known.expected.get(survey.key)
    found = None if expected is None else residuals(survey, expected)
    summary = summarise(survey if found is None else without(survey, found.odd))
    if summary is None:
        return ()
    half = COVERAGE * summary.mean_uncertainty
    value, band = FIGURE["mean"].banded(summary.mean, summary.mean_uncertainty, COVERAGE)
    mean = f"{value} ± {band}" if half > 0 else value
    date = "" if survey.date is None else f", {survey.date.isoformat()}"
    where = ""
    if survey.on_top is not None:
        where = f", on the canopy {by_tape(survey.on_top, unit)} above the floor"
    blocks: list[Block] = [
        Words(
            f"'{survey.name}'{date}, {survey.meter.name}{where}: mean {mean} {PPFD_UNIT} over "
            f"{len(summary.holes)} of {len(survey.points)} holes, from {ppfd(summary.minimum)} to "
            f"{ppfd(summary.maximum)}."
        )
    ]
    if found is None:
        blocks.append(Words("Its conditions fit the plan no more, so no estimate stands beside."))
        return blocks
    blocks.append(Points(found.words()))
    blocks.append(Pictures((residual_drawing(known.plan, found, unit),)))
    if len(found.holes) <= _MOST_HOLES:
        u = unit.value
        rows = tuple(
            (
                str(int(found.holes[k])),
                f"{on_tape(float(found.points[k, 0]), unit)}, "
                f"{on_tape(float(found.points[k, 1]), unit)}",
                ppfd(float(found.measured[k])),
                ppfd(float(found.estimated[k])),
                ppfd(float(found.dead_band[k])),
            )
            for k in range(len(found.holes))
        )
        heads = ("Hole", f"x, y ({u})", "Read", "Estimated", "Explained by the meter: ±")
        blocks.append(Table(heads, rows, (0, 1, 2, 3, 4), f"In {PPFD_UNIT}"))
    return blocks


# -- doubt ----------------------------------------------------------------------------------


def _budget(known: Known, unit: LengthUnit) -> Sequence[Block]:
    blocks: list[Block] = []
    if known.uncertainty is not None:
        parts = [(p.label, COVERAGE * p.mean) for p in content.weighty(known.uncertainty.parts)]
        if parts:
            value, half = FIGURE["mean"].banded(
                known.estimate.figures.mean, known.uncertainty.mean, COVERAGE
            )
            less = len(known.uncertainty.parts) - len(parts)
            rest = f"{less} more would give less than 1 % of the first each. " if less else ""
            blocks += [
                Words(
                    f"The mean is {value} ± {half} {PPFD_UNIT} (95 %). Each input by itself "
                    "would give this much of it; their squares add up."
                ),
                Pictures((budget_chart(parts, PPFD_UNIT),)),
                Words(f"{rest}{content.LEFT_OUT}", quiet=True),
            ]
    if known.calibration is not None:
        blocks.append(Words("Calibrated from the surveys:"))
        blocks.append(Points(tuple(in_unit(one, unit) for one in known.calibration.sentences)))
    return blocks


# -- schedule -------------------------------------------------------------------------------


def _schedule(known: Known, unit: LengthUnit) -> Sequence[Block]:
    found = known.schedule
    if found is None or not found.stages or found.weeks <= 0:
        return ()
    columns = stage_columns("stage", "span", "canopy", "height", "output", "mean", "kwh")
    rows = tuple(tuple(column.number(one, unit) for column in columns) for one in found.stages)
    said = tuple(warning for one in found.stages for warning in one.warnings)
    blocks: list[Block] = [
        Pictures((schedule_chart(found, known.plan.space.height, unit),)),
        Table(tuple(c.heading(unit) for c in columns), rows, tuple(range(1, len(columns)))),
        Words(f"In all {found.sums(known.plan.costs.currency)}."),
        *([] if known.plan.judged_top is None else [Words(FROM_WHAT_GROWS, quiet=True)]),
        *canopies_of_stages(found),
    ]
    return [*blocks, Points(said)] if said else blocks


# -- what it rests on -----------------------------------------------------------------------

_QUALITY: Final = {
    Quality.PREVIEW: "a quick preview",
    Quality.DEFAULT: "the usual quality",
    Quality.FINE: "the finest quality",
}


def _assumptions(known: Known, unit: LengthUnit) -> Sequence[Block]:
    del unit
    estimate, plan = known.estimate, known.plan
    leaves = (
        f"The canopy is a closed layer of leaves that reflects {percent(plan.canopy.reflectance)}."
        if plan.canopy.closed
        else "The canopy is only a level: light passes it and comes back from the floor."
    )
    lines = [
        leaves,
        f"{content.as_old(plan)}; power is proportional to output.",
        content.LEFT_OUT,
        OF_AIR,
    ]
    if plan.canopy.closed and plan.canopy.wavebands is not None:
        lines.insert(1, "Its leaves return each colour in a measure of its own.")
    if plan.room_light > 0:
        lines.append(
            f"The room sends {ppfd(plan.room_light)} {PPFD_UNIT} in at the open door, evenly from "
            f"every direction, {format_number(plan.space.room_hours, 2)} h a day: "
            f"{ppfd(estimate.entered)} of the mean."
        )
    if estimate.target is not None and estimate.target.source:
        lines.append(f"Target: {estimate.target.source}")
    nx, ny = estimate.options.cells
    lines += [
        f"Computed in {nx} by {ny} cells at {_QUALITY[estimate.options.quality]}, seed "
        f"{estimate.options.seed}.",
        content.closure_sentence(estimate),
        content.numeric_sentence(estimate),
        content.recount_sentence(estimate),
    ]
    return [Points(tuple(line for line in lines if line))]


def _cautions(known: Known, unit: LengthUnit) -> Sequence[Block]:
    book = load_cautions()
    return [*cautions(known.plan, unit, book), Words(book.about, quiet=True)]


_MAKERS: Final[dict[str, Maker]] = {
    "decision": _decision,
    "plan": _plan,
    "light": _light,
    "colours": lambda known, unit: (
        [Pictures(m)] if (m := colour_maps(known.estimate, unit)) else ()
    ),
    "figures": _figures,
    "options": _options,
    "survey": _survey,
    "budget": _budget,
    "schedule": _schedule,
    "assumptions": _assumptions,
    "cautions": _cautions,
}
