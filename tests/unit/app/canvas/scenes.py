"""Plans and a made-up light for the drawings: a smooth hill, no light core."""

from __future__ import annotations

from typing import Any

import numpy as np
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget

from planner.estimate.result import Estimate, EstimateOptions, Figures
from planner.plan.lamp import Lamp, LampModel, PanelBody
from planner.plan.lining import Band, Lining, WallCover
from planner.plan.plan import Plan
from planner.plan.space import Canopy, Space, contains
from planner.plan.target import PpfdTarget

SQUARE = ((0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0))
L_SHAPE = ((0.0, 0.0), (1.2, 0.0), (1.2, 0.5), (0.6, 0.5), (0.6, 0.9), (0.0, 0.9))
PANEL = LampModel(
    key="panel", name="Invented panel", body=PanelBody(length=0.3, width=0.2), ppf=100, watts=40
)
BOARD = Lining(key="board", name="White board", reflectance=0.8, low=0.75, high=0.85)
FOIL = Lining(key="foil", name="Foil", reflectance=0.9, specular_share=0.8, low=0.8, high=0.95)
LEFT = Qt.MouseButton.LeftButton
NONE = Qt.KeyboardModifier.NoModifier


def plan_of(footprint: tuple[tuple[float, float], ...] = SQUARE, **parts: Any) -> Plan:
    """A lamp in the middle of a metre; wall 2 (at the back) has two bands."""
    covers = [WallCover.plain("board") for _ in footprint]
    covers[2] = WallCover(bands=(Band(lining="board", top=0.6), Band(lining="foil")))
    whole: dict[str, Any] = {
        "space": Space(footprint=footprint, height=2.0),
        "lamps": (Lamp(model=PANEL, x=0.5, y=0.3, hanging_height=0.45),),
        "linings": (BOARD, FOIL),
        "walls": tuple(covers),
        "ceiling": "board",
        "floor": "board",
        "canopy": Canopy(height=0.2),
        "target": PpfdTarget(low=100, high=200),
    }
    return Plan.model_validate({**whole, **parts})


def light_of(plan: Plan, cells: int = 24) -> Estimate:
    """A plane of light: PPFD = 100 + 100 x + 50 y, NaN outside the footprint."""
    x0, y0, x1, y1 = plan.space.bounds
    x = x0 + (np.arange(cells) + 0.5) / cells * (x1 - x0)
    y = y0 + (np.arange(cells) + 0.5) / cells * (y1 - y0)
    field = 100 + 100 * x[None, :] + 50 * y[:, None]
    inside = np.array([[contains(plan.space.footprint, a, b) for a in x] for b in y])
    ppfd = np.where(inside, field, np.nan)
    figures = Figures(
        mean=float(np.nanmean(ppfd)),
        minimum=float(np.nanmin(ppfd)),
        maximum=float(np.nanmax(ppfd)),
        min_over_mean=None,
        min_over_max=None,
        cv=None,
        share_under=None,
        share_inside=None,
        share_over=None,
        dli=1.0,
        utilisation=None,
        efficacy=None,
        photon_flux=100.0,
        watts=40.0,
        watts_per_m2=40.0,
        kwh_per_day=0.6,
        canopy_area=plan.space.area,
    )
    area = (x1 - x0) * (y1 - y0) / cells**2
    return Estimate(
        plan=plan,
        options=EstimateOptions(cells=(cells, cells)),
        ppfd=ppfd,
        x=x,
        y=y,
        cell_area=np.where(inside, area, 0.0),
        figures=figures,
        shares=(),
        closure=0.0,
        seconds=0.0,
    )


class Hand:
    """A hand on a drawing: world coordinates in, mouse events out."""

    def __init__(self, view: Any) -> None:
        self.view = view

    def pixel(self, u: float, v: float) -> QPoint:
        return QPointF(self.view.viewport.to_pixel(u, v)).toPoint()

    def press(self, u: float, v: float, keys: Qt.KeyboardModifier = NONE) -> None:
        QTest.mousePress(self.view, LEFT, keys, self.pixel(u, v))

    def move(self, u: float, v: float, keys: Qt.KeyboardModifier = NONE) -> None:
        self.move_to(QPointF(self.view.viewport.to_pixel(u, v)), keys)

    def move_to(
        self,
        at: QPointF,
        keys: Qt.KeyboardModifier = NONE,
        buttons: Qt.MouseButton = LEFT,
    ) -> None:
        send_move(self.view, at, keys, buttons)

    def release(self, u: float, v: float, keys: Qt.KeyboardModifier = NONE) -> None:
        QTest.mouseRelease(self.view, LEFT, keys, self.pixel(u, v))

    def drag(
        self,
        start: tuple[float, float],
        end: tuple[float, float],
        keys: Qt.KeyboardModifier = NONE,
    ) -> None:
        self.press(*start)
        middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
        self.move(*middle, keys)
        self.move(*end, keys)
        self.release(*end, keys)

    def click(self, u: float, v: float) -> None:
        QTest.mouseClick(self.view, LEFT, NONE, self.pixel(u, v))


def send_move(
    widget: QWidget, at: QPointF, keys: Qt.KeyboardModifier, buttons: Qt.MouseButton
) -> None:
    """A move with the button held, which QTest cannot make."""
    event = QMouseEvent(
        QEvent.Type.MouseMove,
        at,
        QPointF(widget.mapToGlobal(at)),
        Qt.MouseButton.NoButton,
        buttons,
        keys,
    )
    QApplication.sendEvent(widget, event)
