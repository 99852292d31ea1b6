"""The weekly sheet: its texts by hand, its pages measured in the PDF itself."""

from __future__ import annotations

import pytest

from planner.estimate.stages import Schedule, StagePlan, when
from planner.plan.target import GrowthStage, PpfdTarget
from planner.reports.sheet import Paper, _cells_of, weekly_pdf
from planner.units import LengthUnit
from tests.unit.reports.test_board import MM_PER_POINT, filled_and_stroked, pages, size, streams


def answered(weeks: float, first: float = 0.0, hung: float | None = 0.35) -> StagePlan:
    stage = GrowthStage(
        name="Invented stage of a long name that does not fit", canopy_height=0.12,
        target=PpfdTarget(low=60, high=80), photoperiod_hours=14, weeks=weeks,
    )  # fmt: skip
    output = None if hung is None else 62.0
    return StagePlan(
        stage, first, first + weeks, None, None, hung, output, 10.0 * weeks, 3.0 * weeks, True,
        "", (),
    )  # fmt: skip


def test_a_line_says_what_to_raise_dim_and_time() -> None:
    """35 cm above a canopy at 12 cm is 47 cm above the floor; 10 kWh a week.

    Lengths are what a tape shows: 35 / 2.54 = 13.78, nearest sixteenth 13 12/16.
    """
    found = Schedule((answered(2.0), answered(1.5, 2.0, None)), "Invented cabinet")
    first, second, third, fourth = found.by_week()
    assert _cells_of(first, LengthUnit.CM) == (
        "Week 1", first.stage.name, "12 cm", "35 cm", "47 cm", "62 %", "14 h", "10", "",
    )  # fmt: skip
    assert _cells_of(second, LengthUnit.INCH)[3:5] == ("13 3/4 in", "18 1/2 in")
    assert _cells_of(third, LengthUnit.CM)[3:8] == ("–", "–", "–", "14 h", "–")
    assert (first.turned, second.turned, third.turned, fourth.turned) == (True, False, True, False)
    assert found.sums("€") == "3.5 weeks, 35 kWh, 10.50 €"


@pytest.mark.parametrize("paper", list(Paper))
def test_pages_rows_and_shades(paper: Paper, qapp: object) -> None:
    """Rows of 7 mm under a head of 27 mm and one row of headings, between margins of 10 mm."""
    stages = (answered(30.0), answered(20.0, 30.0))
    pdf = weekly_pdf(Schedule(stages, "Invented cabinet"), paper=paper)
    rows = int((paper.size_mm[1] - 10 - 37) / 7) - 1
    drawn = streams(pdf)
    assert len(pages(pdf)) == len(drawn) == -(-50 // rows)
    assert pages(pdf)[0][2] * MM_PER_POINT == pytest.approx(paper.size_mm[0], abs=0.4)
    boxes = [filled_and_stroked(page)[1] for page in drawn]
    cells = [[box for box in page if abs(size(box)[1] - 7) < 0.05] for page in boxes]
    # Nine cells a line, within the margins.
    assert [len(page) for page in cells] == [9 * rows, 9 * (50 - rows)]
    assert all(box[0] >= 9.5 and box[2] <= paper.size_mm[0] - 9.5 for page in cells for box in page)
    # Shaded are the two lines at which a stage begins: weeks 1 and 31.
    shaded = [
        [b for b in filled_and_stroked(page)[0] if abs(size(b)[1] - 7) < 0.05] for page in drawn
    ]
    assert [len(page) for page in shaded] == ([9, 9] if rows <= 30 else [18, 0])


def test_nothing_scheduled_is_a_page_with_headings(qapp: object) -> None:
    assert len(pages(weekly_pdf(Schedule((), "Invented cabinet")))) == 1


def test_every_day_of_two_weeks_is_called_by_its_number() -> None:
    days = [when(day / 7) for day in range(14)]
    assert days[0] == "Week 1"
    assert days[7] == "Week 2"
    assert days[1:7] == [f"Week 1, day {number}" for number in range(2, 8)]
    assert days[8:] == [f"Week 2, day {number}" for number in range(2, 8)]
