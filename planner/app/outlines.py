"""The program's style: Fusion, with outlines of fields and boxes that can be seen.

Fusion derives its outlines from the window colour; on a dark window they vanish, and on a
light one they are faint. Here they take the role ``Dark`` of the palette,
which keeps 3:1 to its ground in both themes. Whatever has the keyboard is framed in the
accent, whether it came by the Tab key or by a click: Fusion would leave half of them bare.
"""

from __future__ import annotations

from PySide6.QtCore import QRectF, Qt
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
_FRAMED = (
    QStyle.ComplexControl.CC_SpinBox,
    QStyle.ComplexControl.CC_ComboBox,
    QStyle.ComplexControl.CC_ToolButton,
    QStyle.ComplexControl.CC_Slider,
)
_RADIUS = 2.0
_FOCUS_PX = 1.6


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
        if element == QStyle.PrimitiveElement.PE_FrameFocusRect:
            _frame(QRectF(option.rect), option.palette, painter)
            return
        super().drawPrimitive(element, option, painter, widget)
        if element in _OUTLINED:
            _outline(option, painter)
        elif element == QStyle.PrimitiveElement.PE_IndicatorRadioButton:
            _outline(option, painter, round_=True)
        elif element == QStyle.PrimitiveElement.PE_Frame and _has_focus(option):
            _frame(QRectF(option.rect), option.palette, painter)

    def drawControl(
        self,
        element: QStyle.ControlElement,
        option: QStyleOption,
        painter: QPainter,
        widget: QWidget | None = None,
    ) -> None:
        super().drawControl(element, option, painter, widget)
        # Fusion frames a button only after the Tab key was used in this very window.
        if element == QStyle.ControlElement.CE_PushButton and _has_focus(option):
            _frame(QRectF(option.rect), option.palette, painter)

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
        if control in _FRAMED and _has_focus(option):
            _frame(QRectF(option.rect), option.palette, painter)


def paint_focus(widget: QWidget, painter: QPainter) -> None:
    """Frame a widget that paints itself, while it has the keyboard."""
    if widget.hasFocus():
        _frame(QRectF(widget.rect()), widget.palette(), painter)


def _has_focus(option: QStyleOption) -> bool:
    return bool(option.state & QStyle.StateFlag.State_HasFocus)


def _frame(rect: QRectF, shown: QPalette, painter: QPainter) -> None:
    inset = _FOCUS_PX / 2
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(QPen(shown.color(QPalette.ColorRole.Accent), _FOCUS_PX))
    painter.drawRoundedRect(rect.adjusted(inset, inset, -inset, -inset), _RADIUS, _RADIUS)
    painter.restore()


def _outline(option: QStyleOption, painter: QPainter, *, round_: bool = False) -> None:
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
    if round_:
        painter.drawEllipse(rect.adjusted(0.5, 0.5, -0.5, -0.5))
    else:
        painter.drawRoundedRect(rect, _RADIUS, _RADIUS)
    painter.restore()
