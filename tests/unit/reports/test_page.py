"""The report as a page: valid, self-contained, names escaped."""

from __future__ import annotations

import base64
import html
import re
from html.parser import HTMLParser
from xml.etree import ElementTree as ET

import pytest

from planner.plan.plan import Variant
from planner.reports.chapters import report
from planner.reports.page import report_html
from planner.reports.report import (
    SECTIONS,
    Known,
    Pictures,
    Points,
    Report,
    Section,
    Table,
    Warned,
    Words,
)
from tests.unit.reports.sample_estimate import sample_estimate, sample_plan
from tests.unit.reports.test_report import DOUBT, compared

NASTY = '<img src="https://example.org/x.png" onerror="alert(1)"> & "quoted" \x01\x0b'
VOID = {"meta", "img", "br", "hr", "link", "input", "image", "rect", "line", "circle", "polygon",
        "polyline"}  # fmt: skip


class Strict(HTMLParser):
    """Notes every tag and address, and fails on one that is not closed in its order."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.open: list[str] = []
        self.tags: list[str] = []
        self.addresses: list[str] = []
        self.ids: list[str] = []
        self.texts: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        if tag not in VOID:
            self.open.append(tag)
        self._note(attrs)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        self._note(attrs)

    def _note(self, attrs: list[tuple[str, str | None]]) -> None:
        for name, value in attrs:
            assert not name.startswith("on"), f"a script in {name}"
            if name in {"href", "src", "xlink:href", "action", "data", "srcset"}:
                self.addresses.append(value or "")
            if name == "id":
                self.ids.append(value or "")

    def handle_endtag(self, tag: str) -> None:
        assert self.open, f"</{tag}> closes nothing"
        assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        self.texts.append(data)


def parsed(text: str) -> Strict:
    reader = Strict()
    reader.feed(text)
    reader.close()
    assert reader.open == []
    return reader


@pytest.fixture(scope="module")
def page() -> str:
    plan = sample_plan(
        name=NASTY, note=NASTY, variants=(Variant(key="v", name=NASTY, setup=sample_plan().setup),)
    )
    return report_html(report(Known(sample_estimate(plan), DOUBT, compared(plan))))


def test_every_tag_is_closed_in_its_order(page: str) -> None:
    reader = parsed(page)
    assert reader.tags.count("main") == reader.tags.count("h1") == 1
    assert page.startswith("<!DOCTYPE html>")
    assert len(set(reader.ids)) == len(reader.ids)


def test_nothing_is_fetched_and_nothing_runs(page: str) -> None:
    reader = parsed(page)
    for address in reader.addresses:
        assert address.startswith(("#", "data:image/png;base64,")), address
    assert not {"script", "link", "iframe", "object", "embed", "img"} & set(reader.tags)
    style = page[page.index("<style>") : page.index("</style>")]
    assert "url(" not in style
    assert "@import" not in style


def test_links_lead_to_sections_that_are_there(page: str) -> None:
    reader = parsed(page)
    links = [address[1:] for address in reader.addresses if address.startswith("#")]
    assert links
    assert set(links) <= set(reader.ids)


def test_names_are_texts(page: str) -> None:
    texts = " ".join("".join(parsed(page).texts).split())
    assert '<img src="https://example.org/x.png" onerror="alert(1)"> & "quoted"' in texts
    assert "\x01" not in page
    assert "\x0b" not in page


def test_drawings_are_valid_xml_of_their_own(page: str) -> None:
    drawings = re.findall(r"<svg .*?</svg>", page, re.DOTALL)
    assert len(drawings) >= 5
    for drawing in drawings:
        root = ET.fromstring(drawing)
        assert root.get("role") == "img"
        assert root[0].tag.endswith("title")
    # Maps travel as pictures inside.
    data = re.findall(r"data:image/png;base64,([^\"]+)", page)
    assert data
    assert all(base64.b64decode(one).startswith(b"\x89PNG\r\n\x1a\n") for one in data)


def test_the_style_of_words_does_not_reach_into_drawings(page: str) -> None:
    """A class of both would set the letters of a drawing, which count in millimetres, in rem."""
    inside = set(re.findall(r'class="([^"]+)"', " ".join(re.findall(r"<svg .*?</svg>", page))))
    outside = set(re.findall(r'class="([^"]+)"', re.sub(r"<svg .*?</svg>", "", page)))
    assert inside
    assert not inside & outside
    style = page[page.index("<style>") : page.index("</style>")]
    for name in inside:
        assert f".{name} {{" in style


def test_it_reads_on_dark_ground_and_on_paper(page: str) -> None:
    assert "@media (prefers-color-scheme: dark)" in page
    assert "@media print" in page
    assert 'name="color-scheme" content="light dark"' in page


def test_every_kind_of_block_is_written() -> None:
    blocks = (
        Words("large", large=True), Words("quiet", quiet=True), Words("plain"),
        Points(("one", "two")), Table(("Name", "Number"), (("a", "1"),), (1,), "Title"),
        Pictures((), Table(("Beside",), (("b",),))), Warned("Fire", "Burns.", ("Keep away.",)),
        Warned("Eyes", "Look away."),
    )  # fmt: skip
    made = Report("Report", "Program", (Section("decision", SECTIONS["decision"], blocks),))
    reader = parsed(report_html(made))
    assert reader.tags.count("table") == 2
    assert reader.tags.count("details") == 1
    assert reader.tags.count("li") == 3
    assert '<td class="number">1</td>' in report_html(made)
    # One section alone needs no list of them.
    assert "nav" not in reader.tags


def test_figures_are_the_same_as_in_the_report(page: str) -> None:
    assert '<td class="number">212 ± 30</td>' in html.unescape(page)
