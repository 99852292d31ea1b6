"""What every chart can do: answer the pointer, zoom and come back, be copied and saved."""

from __future__ import annotations

import csv
import io
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest
from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QGuiApplication, QImage, QPalette
from PySide6.QtWidgets import QFileDialog, QMessageBox
from pytestqt.qtbot import QtBot

from planner.app.canvas.ink import Ink
from planner.app.plots.chart import Chart
from planner.app.plots.option_charts import RankingPlot, RankLine, TradeOffPlot
from planner.app.plots.sweep_map import SweepMap
from planner.app.plots.sweep_plot import SweepPlot
from planner.app.theme import palette
from tests.unit.app.pages.side.test_plots import curves

pytestmark = pytest.mark.gui


@pytest.fixture
def plot(qtbot: QtBot) -> SweepPlot:
    made = SweepPlot()
    qtbot.addWidget(made)
    made.resize(500, 300)
    made.show()
    made.show_curves(curves())
    return made


def test_the_numbers_are_those_shown(plot: SweepPlot) -> None:
    rows = list(csv.reader(io.StringIO(plot.csv())))
    assert rows[0][:3] == ["output (%)", "Maximum (µmol m⁻² s⁻¹)", "Mean (µmol m⁻² s⁻¹)"]
    assert rows[1][:5] == ["20", "30", "20", "10", "50"]
    assert rows[3][1] == "", "no value is an empty cell"
    plot.copy_numbers()
    assert QGuiApplication.clipboard().text().count("\t") > 10


def test_it_is_saved_as_picture_drawing_and_table(plot: SweepPlot, tmp_path: Path) -> None:
    for ending in ("png", "svg", "csv"):
        plot.save(tmp_path / f"chart.{ending}")
    picture = QImage(str(tmp_path / "chart.png"))
    assert picture.width() == 2 * plot.viewport().width()
    root = ET.fromstring((tmp_path / "chart.svg").read_text("utf-8"))
    assert root.tag.endswith("svg")
    assert "Mean" in "".join(root.itertext())
    assert (tmp_path / "chart.csv").read_text("utf-8") == plot.csv()


@pytest.mark.parametrize(
    ("typed", "kind", "written"),
    [
        ("light", "Drawings (*.svg)", "light.svg"),
        ("light.2", "Tables (*.csv)", "light.2.csv"),
        ("light.csv", "Pictures (*.png)", "light.csv"),
        ("Tent 1.2", "Numbers (*.csv)", "Tent 1.2.csv"),
        ("", "", ""),
    ],
)
def test_a_name_without_ending_gets_that_of_the_kind_chosen(
    plot: SweepPlot,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    typed: str,
    kind: str,
    written: str,
) -> None:
    answer = (str(tmp_path / typed) if typed else "", kind)
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: answer)
    plot.ask_and_save()
    files = [path.name for path in tmp_path.iterdir() if path.is_file()]
    assert files == ([written] if written else [])


def test_a_place_that_cannot_be_written_is_told(
    plot: SweepPlot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    told: list[str] = []
    missing = str(tmp_path / "missing" / "light.csv")
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (missing, ""))
    monkeypatch.setattr(QMessageBox, "exec", lambda box: told.append(box.text()))
    plot.ask_and_save()
    assert len(told) == 1
    assert "missing" in told[0]


def test_home_shows_the_whole_again(plot: SweepPlot, qtbot: QtBot) -> None:
    box = plot.plots[0].getViewBox()
    whole = box.viewRange()
    box.scaleBy((0.4, 0.4))
    assert box.viewRange()[1] != pytest.approx(whole[1])
    qtbot.keyClick(plot, Qt.Key.Key_Home)
    assert box.viewRange()[1] == pytest.approx(whole[1])


def test_the_pointer_finds_the_nearest_point(plot: SweepPlot) -> None:
    box = plot.plots[0].getViewBox()
    found = plot.spot_at(box.mapViewToScene(QPointF(75.0, 10.0)))
    assert found is not None
    assert found[1] == 1
    assert plot.spot_at(QPointF(-50, -50)) is None


def test_a_name_that_begins_a_formula_is_guarded(qtbot: QtBot) -> None:
    made = RankingPlot()
    qtbot.addWidget(made)
    made.show_lines((RankLine("=1+1", 1, 2, 3, 0),), None, 0)
    assert "'=1+1" in made.csv()


@pytest.mark.parametrize("dark", [False, True])
def test_the_ground_is_that_of_the_theme(plot: SweepPlot, dark: bool) -> None:
    plot.setPalette(palette(dark=dark))
    corner = plot.picture().pixelColor(2, 2)
    assert corner.rgb() == plot.palette().color(QPalette.ColorRole.Base).rgb()


def test_sizes_tried_one_after_the_other_are_drawn_once(qtbot: QtBot) -> None:
    """A layout gives a chart several sizes until it rests; the last one is drawn."""
    drawn: list[int] = []

    class Counting(RankingPlot):
        def draw(self, ink: Ink) -> None:
            drawn.append(self.width())
            super().draw(ink)

    chart = Counting()
    qtbot.addWidget(chart)
    chart.show_lines((RankLine("Plan", 50.0, 80.0, 120.0, "plan"),), None, None)
    chart.resize(300, 200)
    chart.show()
    chart.grab()
    drawn.clear()
    for width in (320, 340, 360, 380):
        chart.resize(width, 200)
    chart.grab()
    assert drawn == [380]
    chart.resize(400, 200)
    chart.hide()
    chart.svg()
    assert drawn == [380, 400], "a picture of it shows the newest size, seen or not"


def axes(chart: Chart) -> list[bool]:
    return [plot.getAxis(side).isVisible() for plot in chart.plots for side in ("left", "bottom")]


@pytest.mark.parametrize("kind", [SweepPlot, SweepMap, RankingPlot, TradeOffPlot])
def test_without_points_there_is_a_sentence_and_no_axis(
    qtbot: QtBot, kind: type[SweepPlot | SweepMap | RankingPlot | TradeOffPlot]
) -> None:
    made = kind()
    qtbot.addWidget(made)
    made.resize(500, 300)
    made.redraw()
    assert made.empty
    assert not any(axes(made)[:2])


def test_the_axes_come_again_with_the_points(qtbot: QtBot) -> None:
    made = SweepPlot()
    qtbot.addWidget(made)
    made.resize(500, 300)
    made.show()
    made.show_curves(curves())
    filled = axes(made)
    made.show_curves(None)
    assert not any(axes(made)[:2])
    made.show_curves(curves())
    assert axes(made) == filled
    assert all(filled)
