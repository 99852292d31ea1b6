"""The sweep under the maps: its curves, and the point that may be adopted."""

from __future__ import annotations

import csv
import io
from typing import TYPE_CHECKING, Any

from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from planner.app import theme
from planner.app.display import Display
from planner.app.document import Document
from planner.app.fields.form import button, link_button
from planner.app.pages.side.variant_steps import VariantSteps
from planner.app.plots.sweep_plot import LOWER, UPPER, SweepCurves, SweepPlot
from planner.estimate.sweep_over import swept
from planner.plan.lit import same_figures
from planner.plan.refusal import refusal
from planner.units import in_unit

if TYPE_CHECKING:
    from planner.estimate.sweep import Sweep


class SweepBoard(QWidget):
    """Shows a sweep; a point chosen in it can be adopted as one undo step."""

    def __init__(
        self,
        document: Document,
        display: Display,
        steps: VariantSteps,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._document, self._display, self._steps = document, display, steps
        self.sweep: Sweep | None = None
        self._points: list[Any] = []
        self.plot = SweepPlot()
        self.words = QLabel()
        self.words.setAccessibleName("The chosen point")
        self.adopt_button = button("Adopt this point", "Give the plan the value of this point")
        self.copy_button = link_button("Copy the points")
        self.copy_button.setToolTip("<p>Tab-separated, with every figure</p>")
        self.copy_button.clicked.connect(self.copy)
        self.adopt_button.clicked.connect(self.adopt)
        self.plot.chosen.connect(lambda _point: self._show_choice())
        self.plot.taken.connect(lambda _point: self.adopt())
        line = QHBoxLayout()
        line.setContentsMargins(0, 0, 0, 0)
        line.addWidget(self.words, 1)
        line.addWidget(self.copy_button)
        line.addWidget(self.adopt_button)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(theme.HALF)
        layout.addWidget(self.plot, 1)
        layout.addLayout(line)
        display.changed.connect(lambda _state: self._draw())
        self._show_choice()

    def show_sweep(self, sweep: Sweep) -> None:
        """Show the points found so far."""
        self.sweep = sweep
        self._draw()

    def follow_plan(self) -> None:
        """The plan has changed: the mark moves, or the curves are of another plan."""
        self._draw()

    @property
    def current(self) -> bool:
        """Whether the curves are of the plan as it stands, but for the number swept."""
        if self.sweep is None:
            return False
        over = self.sweep.over[0]
        one = swept(over.axis)
        try:
            here = one.put(self._document.plan, None, over.values[0])
            there = one.put(self.sweep.plan, None, over.values[0])
        except ValueError:
            return same_figures(self.sweep.plan, self._document.plan)
        return same_figures(here, there)

    def _draw(self) -> None:
        sweep = self.sweep
        if sweep is None:
            self.plot.show_curves(None)
            self._show_choice()
            return
        found, unit = swept(sweep.over[0].axis), self._display.unit
        kind = found.quantity
        factor = unit.metres if kind.is_length else kind.factor
        self._points = sorted(sweep.in_order(), key=lambda point: point.values)
        plan = self._document.plan
        band = None if plan.target is None else plan.target.ppfd_band(plan.photoperiod_hours)
        now = found.get(plan) if self.current else None
        names = [name for name, _ in (*UPPER, *LOWER)]
        figures = {
            name: tuple(
                None if p.figures is None else getattr(p.figures, name) for p in self._points
            )
            for name in names
        }
        curves = SweepCurves(
            label=found.words,
            unit=unit.value if kind.is_length else kind.suffix,
            xs=tuple(point.values[0] / factor for point in self._points),
            figures=figures,
            now=None if now is None else now / factor,
            band=band,
            decimals=unit.decimals if kind.is_length else kind.decimals,
        )
        self.plot.show_curves(curves)
        self._show_choice()

    def _show_choice(self) -> None:
        point = self.plot.point
        self.copy_button.setVisible(self.sweep is not None)
        self.adopt_button.setVisible(self.sweep is not None)
        current = self.current
        self.adopt_button.setEnabled(point is not None and current)
        text = ""
        if self.sweep is not None and not current:
            text = "These curves are of the plan before it was changed; sweep again."
        elif point is not None:
            text = in_unit(self._points[point].problem, self._display.unit)
            text = text or self.plot.words_at(point)
        elif self.sweep is not None:
            text = "Click a point to see and adopt it."
        self.words.setText(text)

    def adopt(self) -> None:
        """Give the plan the value of the chosen point."""
        point = self.plot.point
        if self.sweep is None or point is None or not self.current:
            return
        one = swept(self.sweep.over[0].axis)
        plan = self._document.plan
        try:
            made = one.put(plan, None, self._points[point].values[0])
        except ValueError as error:
            self.words.setText(refusal(error, self._display.unit))
            return
        words = self.plot.words_at(point)
        self._steps.adopt_plan(made, f"Adopt {one.words}", f"Adopted {words}.")

    def copy(self) -> None:
        """Put all points on the clipboard, tab-separated."""
        if self.sweep is None:
            return
        from PySide6.QtGui import QGuiApplication  # noqa: PLC0415 - only when asked

        from planner.reports.sweep_csv import sweep_to_csv  # noqa: PLC0415 - only when asked

        lines = csv.reader(io.StringIO(sweep_to_csv(self.sweep)))
        text = "\n".join("\t".join(line) for line in lines)
        QGuiApplication.clipboard().setText(text + "\n")
