"""The report on paper: its size, its text, and what stands together."""

from __future__ import annotations

import io
import re

import pypdf
import pytest
from PySide6.QtGui import QImage, QPainter

from planner.catalogue.library import demo_plan
from planner.plan.plan import Variant
from planner.reports.build_sheet import build_section
from planner.reports.chapters import report
from planner.reports.leaves import MARGIN, MM, Leaves, report_pdf
from planner.reports.report import Known, Points, Report, Section, Table, Words
from planner.reports.sheet import Paper, readable
from planner.units import LengthUnit
from tests.unit.reports.sample_estimate import sample_estimate, sample_plan
from tests.unit.reports.test_page import NASTY
from tests.unit.reports.test_report import DOUBT, compared

pytestmark = pytest.mark.gui


def read(data: bytes) -> pypdf.PdfReader:
    return pypdf.PdfReader(io.BytesIO(data), strict=True)


def texts(data: bytes) -> list[str]:
    """The text of each page, runs of blanks as one."""
    return [" ".join(page.extract_text().split()) for page in read(data).pages]


@pytest.fixture(scope="module")
def made() -> Report:
    plan = sample_plan(variants=(Variant(key="v", name="Twin", setup=sample_plan().setup),))
    return report(Known(sample_estimate(plan), DOUBT, compared(plan)))


@pytest.mark.parametrize(
    ("paper", "size"),
    [(Paper.A4, (210.0, 297.0)), (Paper.LETTER, (215.9, 279.4))],  # ISO 216; ANSI/ASME Y14.1
)
def test_the_pages_have_the_size_of_the_paper(
    qapp: object, made: Report, paper: Paper, size: tuple[float, float]
) -> None:
    for page in read(report_pdf(made, paper)).pages:
        width, height = (float(side) * 25.4 / 72 for side in page.mediabox[2:])
        # Qt writes whole points: a sixth of a millimetre.
        assert (width, height) == pytest.approx(size, abs=0.18)


def test_its_text_can_be_selected_and_found(qapp: object, made: Report) -> None:
    text = " ".join(texts(report_pdf(made)))
    assert "Invented seedling cabinet" in text
    assert "212 ± 30 µmol m⁻² s⁻¹" in text
    for section in made.sections:
        assert section.title in text


def test_spaces_and_joined_letters_are_put_right(qapp: object) -> None:
    words = "fitting office affine flat of 212 µmol"
    made = Report(words, "Program", (Section("decision", "Decision", (Words(words),)),))
    pages = [page.extract_text() for page in read(report_pdf(made)).pages]
    assert pages[0].count(words) >= 2
    assert "\t" not in pages[0]


def test_lines_stay_lines(qapp: object, made: Report) -> None:
    """Only the maps and their scale are pictures; everything else is drawn."""
    pictures = sum(len(page.images) for page in read(report_pdf(made)).pages)
    # The map, the scale, and two small maps.
    assert pictures == 4


def test_names_with_marks_are_printed_as_they_stand(qapp: object) -> None:
    plan = sample_plan(name=NASTY)
    text = " ".join(texts(report_pdf(report(Known(sample_estimate(plan))))))
    assert 'onerror="alert(1)"> & "quoted"' in text
    assert read(report_pdf(report(Known(sample_estimate(plan))))).metadata is not None


@pytest.mark.parametrize("paper", list(Paper))
@pytest.mark.parametrize("unit", list(LengthUnit))
def test_the_build_sheet_takes_one_page(qapp: object, paper: Paper, unit: LengthUnit) -> None:
    section = build_section(demo_plan(), unit)
    made = Report("Demo", "Program", (Section("decision", "Decision", (Words("Yes."),)), section))
    pages = texts(report_pdf(made, paper))
    assert len(pages) == 2
    assert pages[1].startswith("Build sheet")
    assert "Holds moisture" in pages[1]


def test_the_build_sheet_alone_takes_one_page_with_the_title(qapp: object) -> None:
    made = Report("Demo", "Program", (build_section(demo_plan(), LengthUnit.CM),))
    (page,) = texts(report_pdf(made, Paper.LETTER))
    assert page.startswith("Demo Program Build sheet")


def test_what_no_page_can_hold_is_set_large_enough_to_read(qapp: object) -> None:
    lines = Points(tuple(f"line {k}" for k in range(120)))
    section = Section("build", "Build sheet", (lines,), alone=True)
    pages = texts(report_pdf(Report("R", "P", (section,))))
    plain = texts(report_pdf(Report("R", "P", (Section("build", "Build sheet", (lines,)),))))
    assert pages == plain
    assert len(pages) > 1


def test_a_long_table_goes_on_under_its_heads(qapp: object) -> None:
    rows = tuple((f"row {k}", str(k)) for k in range(150))
    table = Table(("Row", "Number"), rows, (1,))
    made = Report("Long", "Program", (Section("figures", "Figures", (table,)),))
    pages = texts(report_pdf(made))
    assert len(pages) > 1
    for page in pages:
        assert "Row Number" in page
    found = re.findall(r"row (\d+)", " ".join(pages))
    assert [int(k) for k in found] == list(range(150))


def test_a_heading_never_stands_alone_at_the_foot(qapp: object) -> None:
    for count in range(30, 80, 3):
        filling = Points(tuple(f"line {k}" for k in range(count)))
        after = Section("budget", "Heading", (Words("What follows it."),))
        made = Report("R", "P", (Section("decision", "Decision", (filling,)), after))
        for page in texts(report_pdf(made)):
            assert ("Heading" in page) == ("What follows it." in page)


def test_words_without_a_gap_are_broken_inside_the_margins(qapp: object) -> None:
    long = "x" * 400
    made = Report(long, "Program", (Section("decision", "Decision", (Words(long),)),))
    leaves = Leaves(made, Paper.A4)
    image = QImage(840, 1188, QImage.Format.Format_RGB32)
    image.fill("white")
    painter = QPainter(image)
    painter.scale(4 / MM, 4 / MM)
    leaves.paint(painter, 0)
    painter.end()
    edge = round(MARGIN / MM * 4) - 4
    for y in range(0, 1188, 3):
        assert image.pixelColor(840 - edge, y).name() == "#ffffff"


def test_what_is_no_pdf_of_qt_is_left_alone() -> None:
    assert readable(b"nothing") == b"nothing"


def test_numbers_are_the_pages(qapp: object, made: Report) -> None:
    pages = texts(report_pdf(made))
    for number, page in enumerate(pages, start=1):
        assert f"{number} / {len(pages)}" in page
