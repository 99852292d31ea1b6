"""The plots of one lamp: how it spreads its light, and its photons by wavelength."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from PySide6.QtCore import QSize
from PySide6.QtGui import QPalette

from planner.app.canvas.ink import Ink, faded, pen
from planner.app.plots.chart import Chart, FloatArray, dashed, line
from planner.app.plots.exported import Table
from planner.catalogue.lamp_files.convert import to_photometry
from planner.catalogue.lamp_files.photometry import Photometry, polar_curve
from planner.metrics.spectra import (
    BLUE_NM,
    FAR_RED_NM,
    GREEN_NM,
    RED_NM,
    SpectrumFigures,
    photon_distribution,
    spectrum_figures,
)
from planner.plan.lamp import LampModel
from planner.plan.spectrum import Spectrum
from planner.units import PPFD_UNIT, format_number

# -- How a lamp spreads its light, along and across it, 0° straight down ---------------

RINGS = (0.25, 0.5, 0.75, 1.0)
_RAY_STEP = 30


class PolarPlot(Chart):
    """Two curves over rings at quarters of the peak; the upper half only where light goes up."""

    ground = QPalette.ColorRole.Window

    def __init__(self, *, height: int = 142) -> None:
        super().__init__("Polar plot", scale=0.85)
        self._curves: PolarCurves | None = None
        self._height = height
        self._plot = self.add_chart()
        self._plot.getViewBox().setAspectLocked(True)
        for side in ("left", "bottom"):
            self._plot.hideAxis(side)
        self.redraw()

    @property
    def curves(self) -> PolarCurves | None:
        """What is shown."""
        return self._curves

    def show_curves(self, curves: PolarCurves | None) -> None:
        """Show the curves of a lamp; None empties the plot."""
        self._curves = curves
        self.setAccessibleDescription("" if curves is None else _in_words(curves))
        self.updateGeometry()
        self.redraw()

    def sizeHint(self) -> QSize:
        upward = self._curves is not None and self._curves.upward
        return QSize(240, round(self._height * 1.6) if upward else self._height)

    def table(self) -> Table:
        curves = self._curves
        if curves is None:
            return (), ()
        columns = [curves.along] if curves.across is None else [curves.along, curves.across]
        heads = ("Angle from straight down (°)", "Along (share of the peak)", "Across")
        rows = zip(curves.angles_deg.tolist(), *(c.tolist() for c in columns), strict=True)
        return heads[: len(columns) + 1], list(rows)

    def draw(self, ink: Ink) -> None:
        curves, plot = self._curves, self._plot
        if curves is None:
            return
        self._draw_grid(ink, upward=curves.upward)
        shade = faded(ink.accent, 0.14)
        x, y = _outline(curves.angles_deg, curves.along)
        self.curve(plot, x, y, line(pen(ink.accent, 2.0)), fillLevel="enclosed", brush=shade)
        if curves.across is not None:
            self.curve(plot, *_outline(curves.angles_deg, curves.across), dashed(ink.ink, 1.6))

        def words(number: int) -> str:
            angle, share = abs(curves.angles_deg[number]), 100 * float(curves.along[number])
            return f"{angle:.0f}°: {format_number(share, 0)} % of the peak"

        turn = np.radians(curves.angles_deg)
        self.spots(plot, curves.along * np.sin(turn), -curves.along * np.cos(turn), words)
        names = ["along the lamp", "across it"] if curves.across is not None else [
            "the same all around"
        ]  # fmt: skip
        foot, step = -1.22, 1.45
        for number, name in enumerate(names):
            left = (number - len(names) / 2) * step + 0.12
            stroke = dashed(ink.ink, 1.6) if number else line(pen(ink.accent, 2.0))
            self.curve(plot, (left, left + 0.2), (foot - 0.16, foot - 0.16), stroke)
            self.label(plot, (left + 0.24, foot - 0.16), name, ink.quiet, (0, 0.5))

    def _draw_grid(self, ink: Ink, *, upward: bool) -> None:
        plot, last = self._plot, 180 if upward else 90
        box = plot.getViewBox()
        box.setMouseEnabled(x=False, y=False)
        box.setRange(xRange=(-1.5, 1.5), yRange=(-1.5, 1.22 if upward else 0.08), padding=0)
        turn = np.radians(np.linspace(-last, last, 181))
        for ring in RINGS:
            self.curve(plot, ring * np.sin(turn), -ring * np.cos(turn), line(pen(ink.faint, 1.0)))
        for angle in range(-last, last + 1, _RAY_STEP):
            if upward and angle == -180:
                continue
            across, down = float(np.sin(np.radians(angle))), float(-np.cos(np.radians(angle)))
            self.curve(plot, (0, across), (0, down), line(pen(ink.faint, 1.0)))
            anchor = (0.5 - 0.5 * across, 0.5 + 0.5 * down)
            self.label(plot, (1.03 * across, 1.03 * down), f"{abs(angle)}°", ink.quiet, anchor)


def _outline(angles: FloatArray, shares: FloatArray) -> tuple[FloatArray, FloatArray]:
    fine = np.linspace(angles[0], angles[-1], 361)
    reach, turn = np.interp(fine, angles, shares), np.radians(fine)
    return reach * np.sin(turn), -reach * np.cos(turn)


def _in_words(curves: PolarCurves) -> str:
    planes = "the same all around" if curves.across is None else "one curve along, one across"
    peak = abs(float(curves.angles_deg[int(curves.along.argmax())]))
    up = " Some of the light goes up." if curves.upward else ""
    return (
        f"Intensity by angle from straight down, {planes}; the peak along lies at {peak:.0f}°.{up}"
    )


# -- The two vertical planes of a lamp that a polar plot shows -------------------------


@dataclass(frozen=True, eq=False)
class PolarCurves:
    """Intensity along and across the lamp, as shares of the peak of both planes.

    ``angles_deg`` runs from -180 to 180, 0 straight down; ``across`` is None where it is
    the same curve as ``along``. ``upward`` says whether any light goes up.
    """

    angles_deg: FloatArray
    along: FloatArray
    across: FloatArray | None

    @property
    def upward(self) -> bool:
        """Whether light leaves above the horizon (more than a per cent of the peak)."""
        above = np.abs(self.angles_deg) > 91
        curves = [self.along, *([] if self.across is None else [self.across])]
        return any(bool((curve[above] > 0.01).any()) for curve in curves)


def curves_of_model(model: LampModel) -> PolarCurves:
    """The curves of a lamp of the catalogue, whatever its profile."""
    return curves_of(to_photometry(model))


def curves_of(photometry: Photometry) -> PolarCurves:
    """The curves of a lamp file."""
    angles, along = polar_curve(photometry, 0.0)
    _, across = polar_curve(photometry, 90.0)
    peak = max(float(along.max()), float(across.max())) or 1.0
    same = np.allclose(along, across, atol=0.005 * peak)
    return PolarCurves(angles, along / peak, None if same else across / peak)


# -- Photons by wavelength, with the shares of the bands over them ---------------------

LOW_NM, HIGH_NM = 380.0, 800.0
_BANDS: Final = (
    ("blue", BLUE_NM), ("green", GREEN_NM), ("red", RED_NM), ("far-red", FAR_RED_NM),
)  # fmt: skip


class SpectrumPlot(Chart):
    """One curve from 380 to 800 nm; the bands' ends are marked and their shares written."""

    ground = QPalette.ColorRole.Window
    usual = (240, 150)

    def __init__(self) -> None:
        super().__init__("Spectrum", scale=0.82)
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
        shade = faded(ink.accent, 0.14)
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
    return f"1 {PPFD_UNIT} reads {lux} lx; 1 J of PAR holds {joule} µmol."
