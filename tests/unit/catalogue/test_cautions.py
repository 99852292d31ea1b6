"""The wording of cautions and safety."""

from __future__ import annotations

import pytest

from planner.catalogue.library import CautionBook, load_cautions
from planner.plan.lining import Caution


@pytest.fixture(scope="module")
def book() -> CautionBook:
    return load_cautions()


@pytest.mark.parametrize("caution", list(Caution))
def test_every_caution_has_words(book: CautionBook, caution: Caution) -> None:
    words = book.text(caution)
    assert words.title
    assert words.text.endswith(".")


def test_the_general_notes_cover_the_known_dangers(book: CautionBook) -> None:
    keys = {note.key for note in book.safety}
    assert {"mains", "heat", "fire", "eyes", "foil", "mould", "co2"} <= keys


def test_electricity_is_left_to_licensed_practice(book: CautionBook) -> None:
    notes = {note.key: note.text for note in book.safety}
    for text in (book.text(Caution.CONDUCTS).text, notes["mains"], notes["foil"]):
        assert "licensed electrician" in text
    assert "local code" in notes["mains"]
    assert "Local fire rules" in notes["fire"]


def test_published_limits_are_given_right(book: CautionBook) -> None:
    notes = {note.key: note.text for note in book.safety}
    assert "5000 ppm over 8 h" in notes["co2"]  # EH40 and OSHA PEL
    assert "below 60 %" in notes["mould"]  # EPA mould course, chapter 2
    assert "IEC 62471" in notes["eyes"]
