"""The wording of cautions and safety."""

from __future__ import annotations

import pytest

from planner.catalogue.library import CautionBook, load_cautions
from planner.folders import resource_path
from planner.plan.lining import Caution


@pytest.fixture(scope="module")
def book() -> CautionBook:
    return load_cautions()


@pytest.mark.parametrize("caution", list(Caution))
def test_every_caution_has_words(book: CautionBook, caution: Caution) -> None:
    words = book.text(caution)
    assert words.title
    assert words.text.endswith(".")


@pytest.fixture(scope="module")
def notes() -> dict[str, str]:
    """The parts of the help page on cautions by their headings, in one line each."""
    parts = resource_path("help/cautions.md").read_text("utf-8").split("\n## ")[1:]
    return {part.partition("\n")[0]: " ".join(part.split()) for part in parts}


def test_the_general_notes_cover_the_known_dangers(notes: dict[str, str]) -> None:
    assert {
        *("Electricity and water", "Heat and fire", "Eyes and skin", "Linings"),
        *("Moisture and mould", "Carbon dioxide", "Hanging, children and pets"),
    } <= set(notes)


def test_electricity_is_left_to_licensed_practice(book: CautionBook, notes: dict[str, str]) -> None:
    mains, linings = notes["Electricity and water"], notes["Linings"]
    for text in (book.text(Caution.CONDUCTS).text, mains, linings):
        assert "licensed electrician" in text
    assert "local code" in mains
    assert "Local fire rules" in notes["Heat and fire"]


def test_published_limits_are_given_right(notes: dict[str, str]) -> None:
    assert "5000 ppm over 8 h" in notes["Carbon dioxide"]  # EH40 and OSHA PEL
    assert "below 60 %" in notes["Moisture and mould"]  # EPA mould course, chapter 2
    assert "IEC 62471" in notes["Eyes and skin"]
