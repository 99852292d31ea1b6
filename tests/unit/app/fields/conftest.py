"""A document with what the field panels need, and ways to type into a field."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from planner.app.display import Display, SelectionModel
from planner.app.document import Document
from planner.app.fields.choosers import Shelf
from planner.app.fields.panel import Workplace
from planner.app.quantity_box import QuantityBox
from planner.catalogue.library import load_catalogue
from planner.plan.lamp import Lamp, LampModel, PanelBody
from planner.plan.lining import Caution, Lining, WallCover
from planner.plan.plan import Plan
from planner.plan.space import Canopy, Space

MATT = Lining(key="matt", name="Matt white", reflectance=0.8, low=0.75, high=0.85)
FOIL = Lining(
    key="foil",
    name="Foil",
    reflectance=0.86,
    specular_share=0.6,
    low=0.8,
    high=0.9,
    cautions=(Caution.CONDUCTS,),
)
PANEL = LampModel(
    key="panel", name="Panel", body=PanelBody(length=0.3, width=0.2), ppf=200.0, watts=100.0
)


def plan_with(lamps: int = 1) -> Plan:
    """A cabinet of 80 x 60 x 160 cm, matt white, with lamps over its middle."""
    return Plan(
        name="Cabinet",
        space=Space(footprint=((0, 0), (0.8, 0), (0.8, 0.6), (0, 0.6)), height=1.6),
        linings=(MATT,),
        walls=(WallCover.plain("matt"),) * 4,
        ceiling="matt",
        floor="matt",
        lamps=(Lamp(model=PANEL, x=0.4, y=0.3, hanging_height=0.5),) * lamps,
        canopy=Canopy(height=0.2),
    )


@pytest.fixture
def workplace(tmp_path: Path) -> Workplace:
    """An open plan with one lamp; own entries go to a folder of the test."""
    folder = tmp_path / "own"
    shelf = Shelf(load_catalogue(folder), folder=folder)
    return Workplace(Document(plan_with()), SelectionModel(), Display(), shelf)


@pytest.fixture
def type_into() -> Callable[[QuantityBox, str], None]:
    """Replace the text of a field and press Enter, as a hand does."""

    def type_text(box: QuantityBox, text: str) -> None:
        box.setFocus()
        box.selectAll()
        QTest.keyClicks(box, text)
        QTest.keyClick(box, Qt.Key.Key_Return)

    return type_text
