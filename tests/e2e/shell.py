"""A window for tests of user tasks: ready answers, a quick made-up light, nothing modal."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from typing import Any

import numpy as np
from PySide6.QtPrintSupport import QPrinter
from pytestqt.qtbot import QtBot

from planner.app.estimator import Estimator
from planner.app.main_window import MainWindow
from planner.app.questions import ChangedOnDisk, Questions, Recovered, Unsaved
from planner.app.settings import Settings
from planner.estimate.result import Estimate, EstimateOptions, Figures
from planner.plan.lamp import Lamp, LampModel, PanelBody
from planner.plan.lining import WallCover
from planner.plan.plan import Plan
from planner.plan.space import Canopy, Space
from planner.reports.sheet import Paper, page_layout


class ReadyAnswers(Questions):
    """Answers what the test has set and notes what was asked and told."""

    def __init__(self) -> None:
        super().__init__(None)
        self.asked: list[str] = []
        self.told: list[str] = []
        self.on_unsaved = Unsaved.DISCARD
        self.on_changed = ChangedOnDisk.CANCEL
        self.on_recovered = Recovered.LATER
        self.on_otherwise = False
        self.to_open: Path | None = None
        self.to_save: Path | None = None
        self.to_print: Path | None = None
        self.proposed: list[Path] = []

    def unsaved(self, name: str) -> Unsaved:
        self.asked.append(f"unsaved {name}")
        return self.on_unsaved

    def changed_on_disk(self, path: Path) -> ChangedOnDisk:
        self.asked.append(f"changed {path.name}")
        return self.on_changed

    def recovered(
        self, name: str, path: Path | None, kept_at: datetime | None, *, moved_on: bool = False
    ) -> Recovered:
        self.asked.append(f"recovered {name}" + " over a newer file" * moved_on)
        return self.on_recovered

    def take_otherwise(self, message: str, kind: str) -> bool:
        self.asked.append(message)
        return self.on_otherwise

    def tell_failure(self, title: str, message: str) -> None:
        self.told.append(message)

    def open_path(self, folder: Path) -> Path | None:
        self.proposed.append(folder)
        return self.to_open

    def open_file(self, title: str, folder: Path, file_filter: str) -> Path | None:
        self.proposed.append(folder)
        return self.to_open

    def save_path(self, title: str, proposal: Path, file_filter: str = "") -> Path | None:
        self.proposed.append(proposal)
        return self.to_save

    def printer(self, paper: Paper, name: str) -> QPrinter | None:
        """A printer that prints into a file."""
        self.asked.append(f"printer for {paper} of {name}")
        if self.to_print is None:
            return None
        made = QPrinter(QPrinter.PrinterMode.HighResolution)
        made.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
        made.setOutputFileName(str(self.to_print))
        made.setFullPage(True)
        made.setPageLayout(page_layout(paper))
        return made


def made_up_light(plan: Plan, options: EstimateOptions, **_: Any) -> Estimate:
    """A dome of light, at once; its mean is 100 for each lamp."""
    nx, ny = options.cells
    x0, y0, x1, y1 = plan.space.bounds
    x = x0 + (np.arange(nx) + 0.5) * (x1 - x0) / nx
    y = y0 + (np.arange(ny) + 0.5) * (y1 - y0) / ny
    dome = np.outer(np.sin(np.pi * (y - y0) / (y1 - y0)), np.sin(np.pi * (x - x0) / (x1 - x0)))
    ppfd = 100.0 * len(plan.lamps) * dome / dome.mean()
    figures = Figures(
        mean=float(ppfd.mean()), minimum=float(ppfd.min()), maximum=float(ppfd.max()),
        min_over_mean=None, min_over_max=None, cv=None, share_under=None, share_inside=None,
        share_over=None, dli=5.0, utilisation=0.5, efficacy=2.0, photon_flux=100.0, watts=50.0,
        watts_per_m2=50.0, kwh_per_day=0.8, canopy_area=plan.space.area,
    )  # fmt: skip
    area = np.full(ppfd.shape, plan.space.area / ppfd.size)
    return Estimate(
        plan=plan, options=options, ppfd=ppfd, x=x, y=y, cell_area=area, figures=figures,
        shares=(), closure=0.0, seconds=0.012,
    )  # fmt: skip


def small_plan(name: str = "Shelf", lamps: int = 1) -> Plan:
    """A square metre, two metres high, without linings."""
    model = LampModel(
        key="panel", name="Panel", body=PanelBody(length=0.3, width=0.2), ppf=200.0, watts=100.0
    )
    space = Space(footprint=((0, 0), (1, 0), (1, 1), (0, 1)), height=2.0)
    hung = tuple(Lamp(model=model, x=0.5, y=0.5, hanging_height=0.5) for _ in range(lamps))
    return Plan(
        name=name, space=space, walls=(WallCover.plain("open"),) * 4, lamps=hung,
        canopy=Canopy(height=0.2),
    )  # fmt: skip


def make_window(
    qtbot: QtBot,
    plan: Plan | None = None,
    *,
    settings: Settings | None = None,
    light: Callable[..., Estimate] = made_up_light,
) -> tuple[MainWindow, ReadyAnswers]:
    """A shown window and who answers its questions."""
    answers = ReadyAnswers()
    window = MainWindow(
        plan or small_plan(),
        settings=settings or Settings.of_user(),
        estimator=Estimator(light, synchronous=True),
        questions=answers,
    )
    qtbot.addWidget(window)
    window.show()
    qtbot.waitExposed(window)
    return window, answers


def trigger(window: MainWindow, key: str) -> None:
    """Choose an action of the menus."""
    action = window.actions_[key]
    assert action.isEnabled(), f"'{key}' is greyed"
    action.trigger()
