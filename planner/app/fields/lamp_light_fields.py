"""How a lamp spreads its light and of which colours it is: two plots and a choice."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from planner.app.fields.form import Form, NoteLabel
from planner.app.fields.still_combo import StillCombo
from planner.app.plots.polar import PolarPlot
from planner.app.plots.polar_curves import curves_of_model
from planner.app.plots.spectrum_plot import SpectrumPlot, figures_text
from planner.app.spectrum_choice import SpectrumChoice
from planner.plan.lamp import LampModel

SPECTRUM_HELP = (
    "Only for display, for lux and for lamp files: the plan counts photons and needs no "
    "spectrum. What is chosen is kept for this kind of lamp in your settings."
)
NONE = "none chosen"


class LampLightFields(Form):
    """The polar plot of a lamp and, where one is chosen, its spectrum with its figures."""

    def __init__(self, spectra: SpectrumChoice, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._spectra = spectra
        self._model: LampModel | None = None
        self.polar = PolarPlot()
        self.add_wide(self.polar)
        self.spectrum_combo = StillCombo()
        self.spectrum_row = self.add_row("Spectrum", self.spectrum_combo, SPECTRUM_HELP)
        self.spectrum_plot = SpectrumPlot()
        self.figures = NoteLabel()
        self.add_wide(self.spectrum_plot)
        self.add_wide(self.figures)
        self.spectrum_combo.activated.connect(self._choose)
        spectra.changed.connect(self._show_spectrum)

    def show_model(self, model: LampModel) -> None:
        """Show a kind of lamp."""
        if model == self._model:
            return
        if self._model is None or model.profile != self._model.profile:
            self.polar.show_curves(curves_of_model(model))
        self._model = model
        self._show_spectrum()

    def _show_spectrum(self) -> None:
        if self._model is None:
            return
        names = [NONE, *(spectrum.name for spectrum in self._spectra.spectra)]
        if names != [self.spectrum_combo.itemText(k) for k in range(self.spectrum_combo.count())]:
            self.spectrum_combo.clear()
            self.spectrum_combo.addItems(names)
            self.spectrum_combo.widen_list()
        spectrum = self._spectra.of_lamp(self._model.key)
        offered = self._spectra.spectra
        line = 0 if spectrum is None else 1 + offered.index(spectrum)
        self.spectrum_combo.setCurrentIndex(line)
        self.spectrum_plot.setVisible(spectrum is not None)
        self.figures.setVisible(spectrum is not None)
        self.spectrum_plot.show_spectrum(spectrum)
        figures = self.spectrum_plot.figures
        if spectrum is not None and figures is not None:
            model = " A shape made by a formula, measured on no lamp." if spectrum.is_model else ""
            self.figures.setText(f"{figures_text(figures)}{model}")

    def _choose(self, line: int) -> None:
        if self._model is not None:
            chosen = None if line == 0 else self._spectra.spectra[line - 1]
            self._spectra.choose(self._model.key, chosen)
