"""The spectrum plot: photons by wavelength, with the shares of the bands under it."""

from __future__ import annotations

from typing import Final

import numpy as np
from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPaintEvent, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from planner.app.canvas.ink import Ink, figure_font, pen
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


class SpectrumPlot(QWidget):
    """One curve from 380 to 800 nm; the bands' ends are marked and their shares written."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._spectrum: Spectrum | None = None
        self._figures: SpectrumFigures | None = None
        self.setAccessibleName("Spectrum")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_spectrum(self, spectrum: Spectrum | None) -> None:
        """Show a spectrum; None empties the plot."""
        self._spectrum = spectrum
        self._figures = None if spectrum is None else spectrum_figures(spectrum)
        words = "" if self._figures is None else figures_text(self._figures)
        self.setAccessibleDescription(words)
        self.update()

    @property
    def figures(self) -> SpectrumFigures | None:
        """The figures of what is shown."""
        return self._figures

    def sizeHint(self) -> QSize:
        return QSize(240, 128)

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() in {QEvent.Type.PaletteChange, QEvent.Type.FontChange}:
            self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        spectrum, figures = self._spectrum, self._figures
        if spectrum is None or figures is None:
            return
        ink = Ink.of(self.palette())
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setFont(figure_font(self.font(), 0.82))
        line = QFontMetricsF(painter.font()).height()
        area = QRectF(self.rect()).adjusted(6, 2 * line + 4, -8, -line - 5)
        self._paint_curve(painter, spectrum, area, ink)
        shares = figures.shares
        for (name, band), share in zip(
            _BANDS, (shares.blue, shares.green, shares.red, shares.far_red), strict=True
        ):
            left, right = (_place(nm, area) for nm in band)
            painter.setPen(pen(ink.faint, 1.0))
            painter.drawLine(QPointF(left, 2), QPointF(left, area.bottom()))
            painter.setPen(ink.quiet)
            box = QRectF(left, 0, right - left, line)
            painter.drawText(box, Qt.AlignmentFlag.AlignCenter, name)
            painter.setPen(ink.ink)
            text = f"{format_number(100 * share, 0)} %"
            painter.drawText(box.translated(0, line), Qt.AlignmentFlag.AlignCenter, text)
        painter.setPen(pen(ink.quiet, 1.0))
        painter.drawLine(area.bottomLeft(), area.bottomRight())
        for nm in (400, 500, 600, 700, 800):
            box = QRectF(_place(nm, area) - 24, area.bottom() + 2, 48, line)
            box.moveRight(min(box.right(), self.width()))
            text = f"{nm} nm" if nm == 800 else str(nm)
            painter.drawText(box, Qt.AlignmentFlag.AlignCenter, text)

    def _paint_curve(self, painter: QPainter, spectrum: Spectrum, area: QRectF, ink: Ink) -> None:
        nm = np.array(spectrum.wavelengths_nm)
        photons = photon_distribution(spectrum)
        at = np.linspace(LOW_NM, HIGH_NM, 421)
        values = np.interp(at, nm, photons, left=0.0, right=0.0)
        top = float(values.max()) or 1.0
        points = [
            QPointF(_place(float(x), area), area.bottom() - float(y) / top * area.height())
            for x, y in zip(at, values, strict=True)
        ]
        shade = QColor(ink.accent)
        shade.setAlphaF(0.14)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(shade)
        painter.drawPolygon(QPolygonF([area.bottomLeft(), *points, area.bottomRight()]))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(pen(ink.accent, 1.6))
        painter.drawPolyline(QPolygonF(points))


def _place(nm: float, area: QRectF) -> float:
    return area.left() + (nm - LOW_NM) / (HIGH_NM - LOW_NM) * area.width()


def figures_text(figures: SpectrumFigures) -> str:
    """Lux per µmol and µmol per joule in a line."""
    lux = format_number(figures.lux_per_umol, 1)
    joule = format_number(figures.umol_per_joule_of_par, 2)
    return f"1 µmol m⁻² s⁻¹ reads {lux} lx; 1 J of PAR holds {joule} µmol."
