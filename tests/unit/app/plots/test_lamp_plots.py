"""Polar plot and spectrum plot."""

from __future__ import annotations

import numpy as np
import pytest
from pytestqt.qtbot import QtBot

from planner.app.plots.lamp_plots import PolarPlot, SpectrumPlot, curves_of_model, figures_text
from planner.catalogue.spectra import built_in_spectra
from planner.plan.lamp import (
    CosineProfile,
    LampModel,
    PanelBody,
    PlanesProfile,
    Profile,
    TableProfile,
)


def lamp(profile: Profile) -> LampModel:
    body = PanelBody(length=0.3, width=0.2)
    return LampModel(key="a", name="A", body=body, profile=profile, ppf=100, watts=50)


def test_a_cosine_lamp_is_one_curve_that_follows_the_law() -> None:
    curves = curves_of_model(lamp(CosineProfile(exponent=2.0)))
    assert curves.across is None
    assert not curves.upward
    at_60 = float(np.interp(60.0, curves.angles_deg, curves.along))
    assert at_60 == pytest.approx(0.25, abs=1e-6)  # cos² 60°


def test_planes_differ_along_and_across() -> None:
    planes = PlanesProfile(
        angles_deg=(0.0, 90.0), azimuths_deg=(0.0, 90.0, 180.0, 270.0),
        relative=((1.0, 0.0), (1.0, 0.5), (1.0, 0.0), (1.0, 0.5)),
    )  # fmt: skip
    curves = curves_of_model(lamp(planes))
    assert curves.across is not None
    assert float(np.interp(90, curves.angles_deg, curves.along)) == pytest.approx(0.0, abs=1e-9)
    assert float(np.interp(90, curves.angles_deg, curves.across)) == pytest.approx(0.5)


def test_light_that_goes_up_gets_the_upper_half(qtbot: QtBot) -> None:
    plot = PolarPlot()
    qtbot.addWidget(plot)
    plot.show_curves(curves_of_model(lamp(CosineProfile())))
    low = plot.sizeHint().height()
    both = TableProfile(angles_deg=(0.0, 90.0, 180.0), relative=(1.0, 0.3, 0.8))
    plot.show_curves(curves_of_model(lamp(both)))
    assert plot.sizeHint().height() > low
    assert "goes up" in plot.accessibleDescription()
    plot.resize(260, plot.sizeHint().height())
    assert not plot.grab().isNull()


def test_the_spectrum_is_told_with_its_figures(qtbot: QtBot) -> None:
    spectra = {spectrum.key: spectrum for spectrum in built_in_spectra()}
    plot = SpectrumPlot()
    qtbot.addWidget(plot)
    plot.show_spectrum(spectra["daylight-d65"])
    # Published for daylight: 54 lx per µmol m⁻² s⁻¹ (Thimijan and Heins 1983).
    assert plot.figures is not None
    assert plot.figures.lux_per_umol == pytest.approx(54, rel=0.03)
    assert figures_text(plot.figures) == plot.accessibleDescription()
    plot.resize(260, 128)
    shown = plot.grab().toImage()
    plot.show_spectrum(spectra["red-led"])
    assert plot.grab().toImage() != shown
