"""The shelf: what can be chosen, and what is kept of one's own."""

from __future__ import annotations

from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from planner.app.fields.choosers import Shelf
from planner.catalogue.library import CatalogueError, load_catalogue
from planner.plan.lining import Caution, Lining


def lining(key: str) -> Lining:
    return Lining(
        key=key, name="Attic paint", reflectance=0.7, low=0.6, high=0.8, cautions=(Caution.BURNS,)
    )


def test_a_kept_lining_is_offered_at_once(qtbot: QtBot, tmp_path: Path) -> None:
    shelf = Shelf(load_catalogue(tmp_path), folder=tmp_path)
    count = len(shelf.catalogue.linings)
    with qtbot.waitSignal(shelf.changed, timeout=500):
        shelf.save(lining("attic-paint"))
    assert len(shelf.catalogue.linings) == count + 1
    assert shelf.catalogue.linings[-1] == lining("attic-paint")


def test_new_keys_are_unlike_all_others(qtbot: QtBot, tmp_path: Path) -> None:
    shelf = Shelf(load_catalogue(tmp_path), folder=tmp_path)
    shelf.save(lining("attic-paint"))
    key = shelf.own_lining_key("Attic paint", {"attic-paint-2"})
    assert key == "attic-paint-3"


def test_a_folder_that_cannot_be_written_is_told(qtbot: QtBot, tmp_path: Path) -> None:
    blocked = tmp_path / "own"
    shelf = Shelf(load_catalogue(blocked), folder=blocked)
    blocked.write_text("a file where the folder should be", encoding="utf-8")
    with pytest.raises(CatalogueError):
        shelf.save(lining("attic-paint"))


def test_cautions_carry_the_usual_words(qtbot: QtBot, tmp_path: Path) -> None:
    shelf = Shelf(load_catalogue(tmp_path), folder=tmp_path)
    (text,) = shelf.cautions(lining("attic-paint"))
    assert text.startswith("Burns: ")
    assert "local fire rules" in text
