"""What a report says: its figures, its decision in words, its sections and their order."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace

import numpy as np
import pytest

from planner.catalogue.library import demo_plan
from planner.estimate.calibrate_result import Calibration
from planner.estimate.compare import Comparison, Side, sides_of
from planner.estimate.evaluate import Cancelled
from planner.estimate.odds import Telling
from planner.estimate.outlook import Part, Uncertainty
from planner.estimate.result import EstimateOptions, Quality
from planner.estimate.stages import Schedule, StagePlan, stage_columns
from planner.plan import edits
from planner.plan.lining import OPENING
from planner.plan.plan import Plan, Variant
from planner.plan.survey import Reading, Survey
from planner.plan.target import GrowthStage, PpfdTarget
from planner.reports.chapters import report
from planner.reports.report import (
    SECTIONS,
    Known,
    Pictures,
    Points,
    Report,
    SectionError,
    Table,
    Words,
    chosen_sections,
    decision,
    gather,
    rival,
)
from planner.units import LengthUnit
from tests.unit.reports.sample_estimate import sample_estimate, sample_plan

CM, INCH = LengthUnit.CM, LengthUnit.INCH
DOUBT = Uncertainty(
    mean=15.3, minimum=8.0, maximum=20.0, min_over_mean=0.01, dli=0.77, relative_mean=0.072,
    parts=(Part("photon flux of the panel", 15.0, 7.8), Part("reflectance of the board", 3.0, 1.0)),
)  # fmt: skip


def with_variants(*names: str) -> Plan:
    plan = sample_plan()
    kept = tuple(Variant(key=f"v{k}", name=name, setup=plan.setup) for k, name in enumerate(names))
    return sample_plan(variants=kept)


def compared(plan: Plan, **means: float) -> Comparison:
    """The sides of a plan with made-up light; ``means`` by the key of the variant."""
    sides = []
    for side in sides_of(plan):
        mean = means.get(side.key or "plan", 212.4)
        sides.append(replace(side, estimate=sample_estimate(side.plan, mean=mean)))
    return Comparison(tuple(sides))


def words_of(made: Report, key: str) -> list[str]:
    """All texts of a section."""
    section = next(one for one in made.sections if one.key == key)
    found: list[str] = []
    for block in section.blocks:
        match block:
            case Words():
                found.append(block.text)
            case Points():
                found += block.lines
            case Table():
                found += [cell for row in block.rows for cell in row]
            case Pictures():
                found += [picture.words for picture in block.every]
    return found


def table(made: Report, key: str, title: str = "") -> Table:
    section = next(one for one in made.sections if one.key == key)
    return next(b for b in section.blocks if isinstance(b, Table) and b.title == title)


# -- figures ------------------------------------------------------------------------------


def test_figures_are_the_estimates_to_their_rounding() -> None:
    # 212.4 with a standard uncertainty of 15.3: half of 95 % is 1.96 x 15.3 = 29.99, so 30.
    made = report(Known(sample_estimate(), DOUBT))
    rows = {row[0]: row[1] for row in table(made, "figures").rows}
    assert rows["Mean"] == "212 ± 30"
    # 10.704 ± 1.96 x 0.77 = 1.51: two digits of the half-width, the value to the same place.
    assert rows["DLI"] == "10.7 ± 1.5"
    assert rows["Inside band"] == "83"
    assert rows["Efficacy"] == "2.5"
    assert rows["Power"] == "40"


def test_without_doubt_figures_keep_three_digits() -> None:
    rows = {row[0]: row[1] for row in table(report(Known(sample_estimate())), "figures").rows}
    assert (rows["Mean"], rows["DLI"]) == ("212", "10.7")


def test_the_budget_lists_inputs_as_half_widths() -> None:
    # 1.96 x 15 = 29.4 and 1.96 x 3 = 5.88.
    (words,) = [w for w in words_of(report(Known(sample_estimate(), DOUBT)), "budget") if ";" in w
                and "Half-widths" in w]  # fmt: skip
    assert "photon flux of the panel ± 29" in words
    assert "reflectance of the board ± 5.9" in words


def test_a_calibration_is_told_in_its_own_words() -> None:
    fit = Calibration(
        fitted=(), correlation=np.zeros((0, 0)), surveys=(), reduced=1.0, plan=sample_plan(),
        lamps=(), linings=(), sentences=("Photon flux: 96.0 ± 2.0 µmol/s.",),
    )  # fmt: skip
    texts = words_of(report(Known(sample_estimate(), calibration=fit)), "budget")
    assert texts == ["Calibrated from the surveys:", "Photon flux: 96.0 ± 2.0 µmol/s."]


def test_every_lining_stands_with_its_range_and_source() -> None:
    made = report(Known(sample_estimate()))
    assert ("White board", "walls 1, 2, 3, 4; floor", "80 % (75 % to 85 %)", "0 %") in table(
        made, "plan", "Linings"
    ).rows
    assert "White board: no source is given" in words_of(made, "plan")


def test_lamps_stand_with_flux_and_its_doubt() -> None:
    # 100 µmol/s, 10 % either way; hung 40 cm over the canopy at (30, 25).
    (row,) = table(report(Known(sample_estimate())), "plan", "Lamps").rows
    assert row == ("1", "Invented panel", "30, 25", "40", "100", "100 ± 10", "40")


def test_what_is_worn_and_dirty_is_told() -> None:
    """0.9 to the half times 0.95 is 90 %; nothing is said of what is new."""
    new = sample_plan()
    assert not any("As old and dirty" in text for text in words_of(_told(new), "plan"))
    model = edits.changed(new.lamps[0].model, hours_to_90=20_000)
    worn = edits.change_lamp(new, 0, model=model, hours_run=10_000, dust=0.05)
    words = words_of(_told(edits.change_band(worn, 2, 0, dirt=0.3)), "plan")
    expected = "lamp 1 gives 90 % of new and wall 3 returns 70 % of clean."
    assert f"As old and dirty as it is: {expected}" in words


def test_hours_run_that_tell_nothing_are_said_to() -> None:
    worn = edits.change_lamp(sample_plan(), 0, hours_run=10_000)
    assert any(
        text.startswith("How far lamp 1 faded is not known")
        for text in words_of(_told(worn), "plan")
    )
    dusty = edits.change_lamp(sample_plan(), 0, dust=0.1)
    assert any(
        "as old and dusty as entered" in text for text in words_of(_told(dusty), "assumptions")
    )


def _told(plan: Plan) -> Report:
    return report(Known(replace(sample_estimate(), plan=plan)))


def test_in_inches_lengths_stand_on_the_tape() -> None:
    # 30 cm is 11.811 in, 188.98 sixteenths: 11 13/16. 25 cm is 9.843 in, 157.48 sixteenths:
    # 9 13/16. 40 cm is 15.748 in, 251.97 sixteenths: 15 3/4.
    (row,) = table(report(Known(sample_estimate()), INCH), "plan", "Lamps").rows
    assert row[2:4] == ("11 13/16, 9 13/16", "15 3/4")


# -- the decision -------------------------------------------------------------------------


def test_a_plan_alone_says_so() -> None:
    chosen, against, sure = decision(Known(sample_estimate(), DOUBT), CM)
    assert chosen == (
        "Chosen: 1 × Invented panel, hung 40 cm above the canopy; walls of White board; "
        "14 h of light a day."
    )
    assert against == "It stands alone: no other option was kept beside it."
    assert sure.startswith("Its mean is 212 ± 30 µmol m⁻² s⁻¹ with 95 % probability")


def test_many_heights_are_told_by_their_ends() -> None:
    lamp = sample_plan().lamps[0]
    hung = tuple(lamp.model_copy(update={"hanging_height": h}) for h in (0.5, 0.2, 0.3, 0.4))
    chosen, _, _ = decision(Known(sample_estimate(sample_plan(lamps=hung))), CM)
    assert "4 × Invented panel, hung 20 cm to 50 cm above the canopy" in chosen
    chosen, _, _ = decision(Known(sample_estimate(sample_plan(lamps=hung[:2]))), CM)
    assert "hung 20 cm and 50 cm above" in chosen


def test_the_rival_is_the_one_with_most_in_the_band() -> None:
    plan = with_variants("Dimmer", "Brighter")
    comparison = compared(plan, v0=150.0, v1=260.0)
    low, high = (replace(s.estimate.figures, share_inside=share)  # type: ignore[union-attr]
                 for s, share in zip(comparison.sides[1:], (0.9, 0.5), strict=True))  # fmt: skip
    sides = [comparison.sides[0]]
    for side, figures in zip(comparison.sides[1:], (low, high), strict=True):
        assert side.estimate is not None
        sides.append(replace(side, estimate=replace(side.estimate, figures=figures)))
    known = Known(sample_estimate(plan), comparison=Comparison(tuple(sides)))
    other = rival(known)
    assert other is not None
    assert other.name == "Dimmer"


def test_an_option_with_the_plans_own_light_is_no_rival() -> None:
    plan = with_variants("Same", "Lower")
    lower = edits.change_lamp(plan.variants[1].setup, 0, hanging_height=0.2)
    second = plan.variants[1].model_copy(update={"setup": lower})
    plan = plan.model_copy(update={"variants": (plan.variants[0], second)})
    known = Known(sample_estimate(plan), comparison=compared(plan, v0=250.0, v1=100.0))
    other = rival(known)
    assert other is not None
    assert other.name == "Lower"


def test_a_named_baseline_is_the_rival() -> None:
    plan = with_variants("Dimmer", "Brighter").model_copy(update={"baseline": "v1"})
    known = Known(sample_estimate(plan), comparison=compared(plan, v0=250.0, v1=100.0))
    other = rival(known)
    assert other is not None
    assert other.name == "Brighter"


def test_how_sure_is_told_by_the_draws() -> None:
    plan = with_variants("Other")
    comparison = compared(plan)
    telling = Telling(ratio=1.16, low=1.02, high=1.31, chance=0.98)
    known = Known(sample_estimate(plan), DOUBT, comparison, {comparison.sides[1].identity: telling})
    _, against, sure = decision(known, CM)
    assert against == "It was weighed against 1 other option: 'Other'."
    assert sure == "This plan beats 'Other' with 98 % probability: 16 % more light (2 to 31 %)."


def test_what_cannot_be_told_is_not_claimed() -> None:
    plan = with_variants("Other")
    comparison = compared(plan)
    telling = Telling(ratio=1.02, low=0.94, high=1.10, chance=0.7)
    known = Known(sample_estimate(plan), None, comparison, {comparison.sides[1].identity: telling})
    assert "Not clear which is" in decision(known, CM)[2]


def test_many_options_are_counted() -> None:
    plan = with_variants(*"ABCDE")
    known = Known(sample_estimate(plan), comparison=compared(plan))
    assert decision(known, CM)[1] == (
        "It was weighed against 5 other options: 'A', 'B', 'C' and 2 more."
    )


def test_options_that_were_not_weighed_are_not_denied() -> None:
    known = Known(sample_estimate(with_variants("A", "B")))
    assert (
        decision(known, CM)[1] == "2 other options kept beside it, not weighed here: 'A' and 'B'."
    )


def test_a_space_without_walls_and_lamps() -> None:
    plan = sample_plan(lamps=(), walls=({"bands": ({"lining": OPENING.key, "top": None},)},) * 4)
    known = Known(sample_estimate(plan, mean=0.0, photon_flux=0.0))
    chosen, _, sure = decision(known, CM)
    assert chosen == "Chosen: no lamp; no walls; 14 h of light a day."
    assert sure == "It is dark, so nothing can be said of its light."


def test_an_invented_plan_says_that_it_is() -> None:
    assert any("invented" in words for words in words_of(demo_report(), "decision"))


def demo_report() -> Report:
    plan = demo_plan()
    return report(Known(sample_estimate(plan)))


# -- sections -----------------------------------------------------------------------------


def test_sections_stand_in_one_order_whatever_was_asked() -> None:
    assert chosen_sections(None) == tuple(SECTIONS)
    assert chosen_sections(["cautions", " Decision", "build"]) == ("decision", "build", "cautions")
    made = report(Known(sample_estimate()), sections=("cautions", "decision"))
    assert [one.key for one in made.sections] == ["decision", "cautions"]


@pytest.mark.parametrize(("names", "word"), [(["nonsense"], "nonsense"), ([" "], "at least one")])
def test_a_section_that_is_not_there_is_refused(names: list[str], word: str) -> None:
    with pytest.raises(SectionError, match=word):
        chosen_sections(names)


def test_what_has_nothing_to_say_is_left_out() -> None:
    keys = [one.key for one in report(Known(sample_estimate())).sections]
    assert not {"options", "survey", "budget", "schedule"} & set(keys)


def test_the_date_is_only_what_it_is_told() -> None:
    known = Known(sample_estimate())
    assert report(known) == report(known)
    assert report(known, date=dt.date(2026, 5, 4)).about.endswith(", 2026-05-04")


def test_options_stand_with_figures_and_what_they_differ_in() -> None:
    plan = with_variants("Twin")
    known = Known(sample_estimate(plan), comparison=compared(plan, v0=106.2))
    made = report(known)
    rows = table(made, "options", "The light they give").rows
    # 106.2 over 212.4 is a half; both have the made-up minimum over their mean, 61 %.
    assert [row[0] for row in rows] == [plan.name, "Twin"]
    assert [row[1:3] for row in rows] == [("212", "100"), ("106", "50")]
    assert "Twin: as the plan." in words_of(made, "options")


def test_one_number_has_one_rounding_in_the_whole_report() -> None:
    plan = with_variants("Twin")
    made = report(Known(sample_estimate(plan), DOUBT, compared(plan)))
    figures = {row[0]: row[1].split(" ")[0] for row in table(made, "figures").rows}
    options = table(made, "options", "The light they give")
    for name in ("Mean", "DLI", "Min / mean", "Minimum"):
        column = next(k for k, head in enumerate(options.heads) if head.startswith(f"{name} ("))
        assert options.rows[0][column] == figures[name]


def test_a_schedule_has_one_table_wherever_it_is_read() -> None:
    """2 weeks of 26.5 W for 14 h are 5.194 kWh; a stage that cannot be set up draws nothing.

    0.4 m are 15.748 in, nearest sixteenth 15 3/4; a spreadsheet has the number in full.
    """
    leaf, none = (
        GrowthStage(name=name, canopy_height=0.4, target=PpfdTarget(low=60, high=80),
                    photoperiod_hours=14, weeks=2)
        for name in ("Leaf", "None")
    )  # fmt: skip
    plan, light = sample_plan(schedule=(leaf, none)), sample_estimate()
    found = Schedule((
        StagePlan(leaf, 0, 2, plan, light, 0.4, 66.3, 5.194, 1.5582, True, "", ("Leaf: dim it",)),
        StagePlan(none, 2, 4, None, None, None, None, 0.0, None, False, "None: no room", ()),
    ))  # fmt: skip
    rows = table(report(Known(light, schedule=found), INCH), "schedule").rows
    assert rows[0] == ("Leaf", "0 – 2", "15 3/4", "15 3/4", "66.3", "212", "5.19")
    assert rows[1] == ("None", "2 – 4", "15 3/4", "–", "–", "–", "–")
    columns = stage_columns("height", "output", "mean", "min_over_mean", "kwh", "cost", "heed")
    said = [[column.text(one, CM) for column in columns] for one in found.stages]
    assert said[0] == ["40 cm", "66.3 %", "212", "61 %", "5.19", "1.56", "dim it"]
    assert said[1] == [*("–",) * 6, "cannot be set up"]
    assert [one.heading(INCH) for one in columns[:2]] == ["Hanging height (in)", "Output (%)"]
    assert columns[0].shown(found.stages[0], INCH) == pytest.approx(0.4 / 0.0254)


def test_a_survey_stands_with_its_residuals() -> None:
    survey = Survey(
        key="s", name="Tuesday", points=((0.2, 0.2), (0.4, 0.2), (0.2, 0.4)),
        readings=(Reading(hole=1, value=110.0), Reading(hole=2, value=220.0),
                  Reading(hole=3, value=165.0)),
    )  # fmt: skip
    plan = sample_plan(surveys=(survey,))
    expected = {"s": np.array([100.0, 200.0, 150.0])}
    made = report(Known(sample_estimate(plan), expected=expected))
    # (110 + 220 + 165) / 3 = 165; every reading is 10 % above.
    texts = words_of(made, "survey")
    assert texts[0].startswith("'Tuesday', Quantum sensor: mean 165 ±")
    assert any("10.0 % above the estimate" in text for text in texts)
    rows = table(made, "survey", "In µmol m⁻² s⁻¹").rows
    assert rows[1][:4] == ("2", "40, 20", "220", "200")


def test_a_survey_whose_conditions_no_longer_fit_stands_alone() -> None:
    survey = Survey(
        key="s", name="Tuesday", points=((0.2, 0.2),), readings=(Reading(hole=1, value=110.0),)
    )
    made = report(Known(sample_estimate(sample_plan(surveys=(survey,)))))
    assert any("no estimate stands beside" in text for text in words_of(made, "survey"))


# -- gathering ------------------------------------------------------------------------------

QUICK = EstimateOptions(cells=(6, 6), quality=Quality.PREVIEW)


def test_only_what_is_asked_for_is_reckoned() -> None:
    told: list[float] = []
    known = gather(with_variants("Twin"), QUICK, sections=("figures",), progress=told.append)
    assert known.comparison is None
    assert known.uncertainty is not None
    assert told == sorted(told)
    assert told[-1] == 1.0


def test_twins_cannot_be_told_apart() -> None:
    known = gather(with_variants("Twin"), QUICK, sections=("decision",))
    assert decision(known, CM)[2] == "This plan and 'Twin' have the very same light."


def test_it_stops_when_asked() -> None:
    with pytest.raises(Cancelled):
        gather(sample_plan(), QUICK, cancelled=lambda: True)


def test_a_side_that_failed_says_why() -> None:
    plan = with_variants("Bad")
    sides: list[Side] = [compared(plan).sides[0]]
    sides.append(replace(sides_of(plan)[1], problems=("'Bad' cannot be estimated: too bright",)))
    made = report(Known(sample_estimate(plan), comparison=Comparison(tuple(sides))))
    assert "'Bad' cannot be estimated: too bright" in words_of(made, "options")
