"""The spectrum plot: photons by wavelength, with the shares of the bands over it."""

from __future__ import annotations

from typing import Final

import numpy as np
from PySide6.QtCore import QSize
from PySide6.QtGui import QColor, QPalette
from PySide6.QtWidgets import QWidget

from planner.app.canvas.ink import Ink, pen
from planner.app.plots.chart import Chart, FloatArray, Table, line
from planner.metrics.spectra import (
    BLUE_NM,
    FAR_RED_NM,
    GREEN_NM,
    RED_NM,
    SpectrumFigures,
    photon_distribution,
    spectrum_figures,
)
from planner.plan.spectrum import Spectrum
from planner.units import format_number

LOW_NM, HIGH_NM = 380.0, 800.0
_BANDS: Final = (
    ("blue", BLUE_NM), ("green", GREEN_NM), ("red", RED_NM), ("far-red", FAR_RED_NM),
)  # fmt: skip


class SpectrumPlot(Chart):
    """One curve from 380 to 800 nm; the bands' ends are marked and their shares written."""

    ground = QPalette.ColorRole.Window

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("Spectrum", parent, scale=0.82)
        self._spectrum: Spectrum | None = None
        self._figures: SpectrumFigures | None = None
        self._plot = self.add_chart()
        self._plot.setLabel("bottom", "Wavelength (nm)")
        self._plot.getAxis("left").setStyle(showValues=False)
        self._plot.setLabel("left", "Photons")
        self.redraw()

    def show_spectrum(self, spectrum: Spectrum | None) -> None:
        """Show a spectrum; None empties the plot."""
        self._spectrum = spectrum
        self._figures = None if spectrum is None else spectrum_figures(spectrum)
        words = "" if self._figures is None else figures_text(self._figures)
        self.setAccessibleDescription(words)
        self.redraw()

    @property
    def figures(self) -> SpectrumFigures | None:
        """The figures of what is shown."""
        return self._figures

    def sizeHint(self) -> QSize:
        return QSize(240, 150)

    def _curve(self) -> tuple[FloatArray, FloatArray]:
        """Wavelengths and photons as shares of the peak."""
        at = np.arange(LOW_NM, HIGH_NM + 1)
        if self._spectrum is None:
            return at, np.zeros(len(at))
        nm, photons = np.array(self._spectrum.wavelengths_nm), photon_distribution(self._spectrum)
        values = np.interp(at, nm, photons, left=0.0, right=0.0)
        return at, values / (float(values.max()) or 1.0)

    def table(self) -> Table:
        at, values = self._curve()
        return ("Wavelength (nm)", "Photons (share of the peak)"), list(
            zip(at.tolist(), values.tolist(), strict=True)
        )

    def draw(self, ink: Ink) -> None:
        plot, figures = self._plot, self._figures
        for side in ("left", "bottom"):
            plot.showAxis(side, figures is not None)
        if figures is None:
            return
        self.frame(plot, (LOW_NM, HIGH_NM), (0.0, 1.42))
        shade = QColor(ink.accent)
        shade.setAlphaF(0.14)
        at, values = self._curve()
        self.curve(plot, at, values, line(pen(ink.accent, 1.6)), fillLevel=0.0, brush=shade)
        shares = figures.shares
        for (name, band), share in zip(
            _BANDS, (shares.blue, shares.green, shares.red, shares.far_red), strict=True
        ):
            self.upright(plot, band[0], line(pen(ink.faint, 1.0)))
            middle = (band[0] + band[1]) / 2
            self.label(plot, (middle, 1.42), name, ink.quiet, (0.5, 0))
            text = f"{format_number(100 * share, 0)} %"
            self.label(plot, (middle, 1.06), text, ink.ink, (0.5, 1))

        def words(number: int) -> str:
            share = format_number(100 * float(values[number]), 0)
            return f"{at[number]:.0f} nm: {share} % of the peak"

        self.spots(plot, at, values, words, by_x=True)


def figures_text(figures: SpectrumFigures) -> str:
    """Lux per µmol and µmol per joule in a line."""
    lux = format_number(figures.lux_per_umol, 1)
    joule = format_number(figures.umol_per_joule_of_par, 2)
    return f"1 µmol m⁻² s⁻¹ reads {lux} lx; 1 J of PAR holds {joule} µmol."
