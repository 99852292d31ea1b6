"""A sketch page for tests of user tasks, with estimates written by hand."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from planner.app.display import Display, SelectionModel
from planner.app.document import Document
from planner.app.fields.choosers import Shelf
from planner.app.fields.panel import OptionalLine
from planner.app.jobs import Lane, shut_down
from planner.app.pages.sketch.page import SketchPage
from planner.app.quantity_box import QuantityBox
from planner.catalogue.library import load_catalogue
from planner.estimate.result import Estimate, EstimateOptions, Figures, Quality, Share
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan


def make_page(
    qtbot: QtBot, plan: Plan, folder: Path, size: tuple[int, int] = (1280, 720)
) -> SketchPage:
    """A shown page with the keyboard; own entries go to a folder of the test."""
    catalogue = load_catalogue(folder)
    page = SketchPage(
        Document(plan),
        SelectionModel(),
        Display(),
        catalogue,
        shelf=Shelf(catalogue, folder=folder),
    )
    # The page shows these and does not own them.
    page.workplace.document.setParent(page)
    page.workplace.selection.setParent(page)
    page.workplace.display.setParent(page)
    qtbot.addWidget(page, before_close_func=lambda _page: shut_down(page.findChildren(Lane)))
    page.resize(*size)
    with qtbot.waitActive(page):
        page.show()
        page.activateWindow()
    return page


def written_estimate(plan: Plan, quality: Quality = Quality.DEFAULT, mean: float = 212) -> Estimate:
    """Round figures nobody computed: mean 212, darkest cell 61 % of it, 10.7 mol a day."""
    ppfd = np.full((4, 4), mean)
    ppfd[0, 0] = 0.61 * mean
    x0, y0, x1, y1 = plan.space.bounds
    steps = (np.arange(4) + 0.5) / 4
    figures = Figures(
        mean=mean, minimum=0.61 * mean, maximum=260.0, min_over_mean=0.61, min_over_max=0.5,
        cv=0.12, share_under=0.2, share_inside=0.7, share_over=0.1, dli=10.7, utilisation=0.55,
        efficacy=2.3, photon_flux=200.0, watts=100.0, watts_per_m2=208.0, kwh_per_day=1.6,
        canopy_area=0.48,
    )  # fmt: skip
    shares = (
        Share(Place(PlaceKind.CANOPY), 110.0, 0.55),
        Share(Place(PlaceKind.WALL, 0, 0), 60.0, 0.30),
        Share(Place(PlaceKind.WALL, 1, 0), 30.0, 0.15),
    )
    return Estimate(
        plan=plan, options=replace(EstimateOptions(), quality=quality, cells=(4, 4)), ppfd=ppfd,
        x=x0 + steps * (x1 - x0), y=y0 + steps * (y1 - y0),
        cell_area=np.full((4, 4), plan.space.area / 16), figures=figures, shares=shares,
        closure=0.00012, seconds=0.02,
    )  # fmt: skip


def enter(qtbot: QtBot, box: QuantityBox | OptionalLine, text: str) -> None:
    """Type over a field and press Enter."""
    box.setFocus()
    box.selectAll()
    qtbot.keyClick(box, Qt.Key.Key_Delete)
    qtbot.keyClicks(box, text)
    qtbot.keyClick(box, Qt.Key.Key_Return)
