"""The validation page is there and in form; its numbers are the business of the command."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

PAGE = Path(__file__).parents[2] / "resources" / "docs" / "validation.md"

HEADINGS = (
    "Closed forms",
    "View factors",
    "Enclosures",
    "Stored reference maps",
    "Photon walks over Intel Embree",
    "Mitsuba 3",
    "Time to a map of 1 % rms",
    "Cost",
)


@pytest.fixture(scope="module")
def page() -> str:
    return PAGE.read_text("utf-8")


def test_it_says_how_it_was_made(page: str) -> None:
    assert "`python packaging/validate.py`" in page
    assert re.search(r"Made on \d{4}-\d\d-\d\d with version \S+, Python 3\.\d+\.\d+", page)
    assert re.search(r"numpy \d+\.\d+.*mitsuba \d+\.\d+", page)
    assert "A quick run" not in page
    assert "Not run, for want of packages" not in page


def test_every_comparison_is_there(page: str) -> None:
    found = re.findall(r"^## (.+)$", page, re.MULTILINE)
    for heading in HEADINGS:
        assert any(title.startswith(heading) for title in found), heading


def test_tables_are_whole(page: str) -> None:
    for section in re.split(r"^## ", page, flags=re.MULTILINE)[1:]:
        rows = [line for line in section.splitlines() if line.startswith("|")]
        assert len(rows) >= 4, section.splitlines()[0]
        assert len({row.count("|") for row in rows}) == 1, section.splitlines()[0]
        assert set(rows[1]) <= {"|", "-"}


def test_a_source_stands_above_each_table(page: str) -> None:
    for section in re.split(r"^## ", page, flags=re.MULTILINE)[1:]:
        above = section.partition("|")[0].splitlines()[1:]
        assert len(" ".join(above).strip()) > 20


def test_scenes_outside_the_tolerance_are_named(page: str) -> None:
    walks = page.partition("## Photon walks")[2].partition("## ")[0]
    outside = [line.split("|")[1].strip() for line in walks.splitlines() if "**no**" in line]
    for name in outside:
        assert name in walks.partition("Outside the tolerance:")[2]
