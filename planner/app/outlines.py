"""The program's style: Fusion, with outlines of fields and boxes that can be seen.

Fusion derives its outlines from the window colour; on a dark window they vanish, and on a
light one they are faint. Here they take the role ``Dark`` of the palette,
which keeps 3:1 to its ground in both themes.
"""

from __future__ import annotations

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter, QPalette, QPen
from PySide6.QtWidgets import (
    QProxyStyle,
    QStyle,
    QStyleOption,
    QStyleOptionComplex,
    QWidget,
)

_OUTLINED = (
    QStyle.PrimitiveElement.PE_FrameLineEdit,
    QStyle.PrimitiveElement.PE_IndicatorCheckBox,
)
_RADIUS = 2.0


class OutlinedStyle(QProxyStyle):
    """Fusion, plus an outline around line edits, spin boxes and check boxes."""

    def __init__(self) -> None:
        super().__init__("Fusion")

    def drawPrimitive(
        self,
        element: QStyle.PrimitiveElement,
        option: QStyleOption,
        painter: QPainter,
        widget: QWidget | None = None,
    ) -> None:
        super().drawPrimitive(element, option, painter, widget)
        if element in _OUTLINED:
            _outline(option, painter)

    def drawComplexControl(
        self,
        control: QStyle.ComplexControl,
        option: QStyleOptionComplex,
        painter: QPainter,
        widget: QWidget | None = None,
    ) -> None:
        super().drawComplexControl(control, option, painter, widget)
        if control == QStyle.ComplexControl.CC_SpinBox:
            _outline(option, painter)


def _outline(option: QStyleOption, painter: QPainter) -> None:
    shown: QPalette = option.palette
    state: QStyle.StateFlag = option.state
    if not state & QStyle.StateFlag.State_Enabled:
        return
    focused = bool(state & QStyle.StateFlag.State_HasFocus)
    role = QPalette.ColorRole.Accent if focused else QPalette.ColorRole.Dark
    rect = QRectF(option.rect).adjusted(0.5, 0.5, -0.5, -0.5)
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(QPen(shown.color(role), 1))
    painter.drawRoundedRect(rect, _RADIUS, _RADIUS)
    painter.restore()
