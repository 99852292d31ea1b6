"""The look of the whole program: one style, two equal palettes, one accent, one rhythm.

Views take their colours from palette roles only and follow ``QEvent.PaletteChange``;
nothing but this file names a colour of the window.
"""

from __future__ import annotations

from enum import StrEnum
from typing import Final

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QFont, QGuiApplication, QPainter, QPalette, QPen
from PySide6.QtWidgets import (
    QApplication,
    QProxyStyle,
    QStyle,
    QStyleOption,
    QStyleOptionComplex,
    QWidget,
)

RHYTHM: Final = 8
"""The step of all margins and gaps in device-independent pixels."""

HALF: Final = RHYTHM // 2
WIDE: Final = RHYTHM * 2

_Role = QPalette.ColorRole


class Theme(StrEnum):
    """What the user asked for."""

    SYSTEM = "system"
    LIGHT = "light"
    DARK = "dark"


_LIGHT: Final = {
    _Role.Window: "#f3f4f1",
    _Role.WindowText: "#1b1f1e",
    _Role.Base: "#ffffff",
    _Role.AlternateBase: "#eceeea",
    _Role.Text: "#1b1f1e",
    _Role.PlaceholderText: "#626966",
    _Role.Button: "#e6e8e4",
    _Role.ButtonText: "#1b1f1e",
    _Role.BrightText: "#a3231b",
    _Role.ToolTipBase: "#1b1f1e",
    _Role.ToolTipText: "#f3f4f1",
    _Role.Highlight: "#0d6a63",
    _Role.HighlightedText: "#ffffff",
    _Role.Accent: "#0d6a63",
    _Role.Link: "#0d6a63",
    _Role.LinkVisited: "#4d5c85",
    _Role.Light: "#ffffff",
    _Role.Midlight: "#dfe2dd",
    _Role.Mid: "#b9beb9",
    _Role.Dark: "#858b87",
    _Role.Shadow: "#565c59",
}

_DARK: Final = {
    _Role.Window: "#1d2120",
    _Role.WindowText: "#e9ece9",
    _Role.Base: "#141716",
    _Role.AlternateBase: "#242928",
    _Role.Text: "#e9ece9",
    _Role.PlaceholderText: "#9aa29e",
    _Role.Button: "#2c3231",
    _Role.ButtonText: "#e9ece9",
    _Role.BrightText: "#ff9d92",
    _Role.ToolTipBase: "#e9ece9",
    _Role.ToolTipText: "#1d2120",
    _Role.Highlight: "#5ec4b6",
    _Role.HighlightedText: "#0b1413",
    _Role.Accent: "#5ec4b6",
    _Role.Link: "#5ec4b6",
    _Role.LinkVisited: "#a9b6df",
    _Role.Light: "#434a48",
    _Role.Midlight: "#363d3b",
    _Role.Mid: "#4d5553",
    _Role.Dark: "#7a8380",
    _Role.Shadow: "#000000",
}

_DISABLED_ROLES: Final = (_Role.WindowText, _Role.Text, _Role.ButtonText)


def palette(*, dark: bool) -> QPalette:
    """The palette of one theme; text keeps a contrast of at least 4.5:1 on its ground."""
    colours = _DARK if dark else _LIGHT
    made = QPalette()
    for role, name in colours.items():
        made.setColor(role, QColor(name))
    # Disabled texts take their own, paler colour in every role that carries text.
    faint = QColor("#757d79" if dark else "#878e8a")
    for role in _DISABLED_ROLES:
        made.setColor(QPalette.ColorGroup.Disabled, role, faint)
    made.setColor(QPalette.ColorGroup.Disabled, _Role.Highlight, QColor(colours[_Role.Mid]))
    return made


def apply(theme: Theme) -> None:
    """Give the running application the theme; call once at start and at every change."""
    app = QApplication.instance()
    if not isinstance(app, QApplication):
        raise RuntimeError("a theme needs a running QApplication")
    scheme = {
        Theme.SYSTEM: Qt.ColorScheme.Unknown,
        Theme.LIGHT: Qt.ColorScheme.Light,
        Theme.DARK: Qt.ColorScheme.Dark,
    }[theme]
    if not isinstance(app.style(), OutlinedStyle):
        app.setStyle(OutlinedStyle())
    QGuiApplication.styleHints().setColorScheme(scheme)
    # Who has the desktop in high contrast needs its colours, whatever was chosen here.
    app.setPalette(QPalette() if wants_contrast() else palette(dark=wants_dark(theme)))


def is_dark() -> bool:
    """Whether the window is dark at present, whoever made it so."""
    ground = QGuiApplication.palette().color(QPalette.ColorRole.Base)
    return ground.lightnessF() < 0.5


def wants_dark(theme: Theme) -> bool:
    """Whether the theme comes out dark here and now."""
    if theme is Theme.SYSTEM:
        return QGuiApplication.styleHints().colorScheme() is Qt.ColorScheme.Dark
    return theme is Theme.DARK


def wants_contrast() -> bool:
    """Whether the desktop asks for high contrast."""
    hints = QGuiApplication.styleHints()  # held: the next line's answer belongs to it
    return hints.accessibility().contrastPreference() is Qt.ContrastPreference.HighContrast


def tabular(font: QFont) -> QFont:
    """The font with figures of equal width, so that changing numbers do not jump."""
    made = QFont(font)
    made.setFeature(QFont.Tag("tnum"), 1)
    return made


def sized(font: QFont, factor: float, *, bold: bool = False) -> QFont:
    """The font ``factor`` times as large."""
    made = QFont(font)
    if font.pointSizeF() > 0:
        made.setPointSizeF(font.pointSizeF() * factor)
    if bold:
        made.setWeight(QFont.Weight.DemiBold)
    return made


# -- the program's style ---------------------------------------------------------------
# Fusion derives its outlines from the window colour; on a dark window they vanish, and on a
# light one they are faint. Here they take the role ``Dark`` of the palette,
# which keeps 3:1 to its ground in both themes. Whatever has the keyboard is framed in the
# accent, whether it came by the Tab key or by a click: Fusion would leave half of them bare.

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
