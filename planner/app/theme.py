"""The look of the whole program: one style, two equal palettes, one accent, one rhythm.

Views take their colours from palette roles only and follow ``QEvent.PaletteChange``;
nothing but this file names a colour of the window.
"""

from __future__ import annotations

from collections.abc import Sequence
from enum import StrEnum
from typing import Any, Final

from PySide6.QtCore import QRect, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QGuiApplication, QPainter, QPalette, QPen
from PySide6.QtWidgets import (
    QApplication,
    QBoxLayout,
    QHBoxLayout,
    QLayout,
    QProxyStyle,
    QScrollArea,
    QStyle,
    QStyleOption,
    QStyleOptionComplex,
    QTableView,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

RHYTHM: Final = 8
"""The step of all margins and gaps in device-independent pixels."""

HALF: Final = RHYTHM // 2
WIDE: Final = RHYTHM * 2

WIDE_PAGE: Final = 1600
"""Pixels across from which a page has room for one more column."""

USUAL_LINE_PX: Final = 17
"""Height of a line of text at the usual size."""

_Role = QPalette.ColorRole


class Theme(StrEnum):
    """What the user asked for."""

    SYSTEM = "system"
    LIGHT = "light"
    DARK = "dark"


_COLOURS: Final = {
    _Role.Window: ("#f3f4f1", "#1d2120"),
    _Role.WindowText: ("#1b1f1e", "#e9ece9"),
    _Role.Base: ("#ffffff", "#141716"),
    _Role.AlternateBase: ("#eceeea", "#242928"),
    _Role.Text: ("#1b1f1e", "#e9ece9"),
    _Role.PlaceholderText: ("#626966", "#9aa29e"),
    _Role.Button: ("#e6e8e4", "#2c3231"),
    _Role.ButtonText: ("#1b1f1e", "#e9ece9"),
    _Role.BrightText: ("#a3231b", "#ff9d92"),
    _Role.ToolTipBase: ("#1b1f1e", "#e9ece9"),
    _Role.ToolTipText: ("#f3f4f1", "#1d2120"),
    _Role.Highlight: ("#0d6a63", "#5ec4b6"),
    _Role.HighlightedText: ("#ffffff", "#0b1413"),
    _Role.Accent: ("#0d6a63", "#5ec4b6"),
    _Role.Link: ("#0d6a63", "#5ec4b6"),
    _Role.LinkVisited: ("#4d5c85", "#a9b6df"),
    _Role.Light: ("#ffffff", "#434a48"),
    _Role.Midlight: ("#dfe2dd", "#363d3b"),
    _Role.Mid: ("#b9beb9", "#4d5553"),
    _Role.Dark: ("#858b87", "#7a8380"),
    _Role.Shadow: ("#565c59", "#000000"),
}
"""Of each role, on a light and on a dark ground."""

_DISABLED_ROLES: Final = (_Role.WindowText, _Role.Text, _Role.ButtonText)


def palette(*, dark: bool) -> QPalette:
    """The palette of one theme; text keeps a contrast of at least 4.5:1 on its ground."""
    made = QPalette()
    for role, names in _COLOURS.items():
        made.setColor(role, QColor(names[dark]))
    # Disabled texts take their own, paler colour in every role that carries text.
    faint = QColor("#757d79" if dark else "#878e8a")
    for role in _DISABLED_ROLES:
        made.setColor(QPalette.ColorGroup.Disabled, role, faint)
    made.setColor(QPalette.ColorGroup.Disabled, _Role.Highlight, made.color(_Role.Mid))
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
    if wants_contrast():
        app.setPalette(QPalette())
        app.setPalette(in_contrast(app.palette()))
    else:
        app.setPalette(palette(dark=wants_dark(theme)))


_STEAD: Final = (
    (_Role.Accent, _Role.Window, 4.5, (_Role.Highlight, _Role.Link)),
    (_Role.Dark, _Role.Window, 3.0, ()),
    (_Role.PlaceholderText, _Role.Window, 7.0, ()),
    (_Role.BrightText, _Role.Window, 7.0, ()),
    (_Role.Link, _Role.Window, 4.5, ()),
)
"""Roles a desktop's palette may leave faint: on which ground, how much they need (WCAG 2.2, 1.4.3,
1.4.6 and 1.4.11), and which of its other colours may stand in; the last is its text."""


def in_contrast(desktop: QPalette) -> QPalette:
    """A desktop's own palette of high contrast; nothing in it is a colour of ours.

    What the program writes or draws in a role that the desktop left faint takes another of the
    desktop's colours.
    """
    made = QPalette(desktop)
    for role, ground, least, others in _STEAD:
        for group in (QPalette.ColorGroup.Active, QPalette.ColorGroup.Inactive):
            choices = [made.color(group, one) for one in (role, *others, _Role.WindowText)]
            behind = made.color(group, ground)
            fit = [one for one in choices if _contrast(one, behind) >= least]
            made.setColor(group, role, (fit or choices[-1:])[0])
    return made


def _contrast(colour: QColor, ground: QColor) -> float:
    from planner.reports.contrast import contrast  # noqa: PLC0415 - only in high contrast

    share = colour.alphaF()
    over = [
        round(share * one + (1 - share) * other)
        for one, other in zip(colour.getRgb()[:3], ground.getRgb()[:3], strict=True)  # type: ignore[index]
    ]
    return float(contrast(over, ground.getRgb()[:3]))  # type: ignore[index]


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


def settle(table: QTableView, name: str) -> None:
    """The look of every table: rows told by their ground, one chosen, its Tab leads on."""
    table.setAccessibleName(name)
    table.setFont(tabular(table.font()))
    table.setFrameShape(QTableView.Shape.NoFrame)
    table.setShowGrid(False)
    table.setAlternatingRowColors(True)
    table.setTabKeyNavigation(False)
    table.setSelectionBehavior(QTableView.SelectionBehavior.SelectRows)
    table.setSelectionMode(QTableView.SelectionMode.SingleSelection)
    table.setHorizontalScrollMode(QTableView.ScrollMode.ScrollPerPixel)
    table.horizontalHeader().setHighlightSections(False)


def small_button(text: str, name: str) -> QToolButton:
    """A button as small as its sign; what it does is its name and its tip."""
    made = QToolButton()
    made.setText(text)
    made.setAutoRaise(True)
    made.setAccessibleName(name)
    made.setToolTip(name)
    made.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
    return made


def scrolled(widget: QWidget) -> QScrollArea:
    """A widget that scrolls up and down where it does not fit; the frame is seen nowhere."""
    area = QScrollArea()
    area.setFrameShape(QScrollArea.Shape.NoFrame)
    area.setWidgetResizable(True)
    area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    area.setWidget(widget)
    return area


Part = QWidget | QLayout | int | tuple[Any, ...]
"""What a row or a column is laid of: a widget or layout (with its stretch, and where it stands),
so many pixels, or ``REST``."""
REST: Final = -1
"""A part that takes the room the others leave."""


def lay_beside(line: QBoxLayout, fits: bool) -> None:
    """Its parts beside each other where they fit, else one below the other."""
    straight, turned = QBoxLayout.Direction.LeftToRight, QBoxLayout.Direction.TopToBottom
    line.setDirection(straight if fits else turned)


def row(*parts: Part, **room: Any) -> QHBoxLayout:
    """Parts beside each other; ``room`` as for ``column``."""
    made = QHBoxLayout()
    _lay(made, parts, **room)
    return made


def column(*parts: Part, **room: Any) -> QVBoxLayout:
    """Parts below each other.

    ``on`` is the widget they are laid out on, ``gap`` the pixels between two of them, ``edges``
    those around all (left, above, right, below, or one number); None leaves them to the style.
    """
    made = QVBoxLayout()
    _lay(made, parts, **room)
    return made


def _lay(
    made: QBoxLayout,
    parts: Sequence[Part],
    *,
    on: QWidget | None = None,
    gap: int | None = None,
    edges: int | tuple[int, int, int, int] | None = 0,
) -> None:
    if on is not None:
        on.setLayout(made)
    if edges is not None:
        made.setContentsMargins(*((edges,) * 4 if isinstance(edges, int) else edges))
    if gap is not None:
        made.setSpacing(gap)
    for part in parts:
        what, *how = part if isinstance(part, tuple) else (part,)
        if isinstance(what, QWidget):
            made.addWidget(what, *how)
        elif isinstance(what, QLayout):
            made.addLayout(what, *how)
        elif what == REST:
            made.addStretch(1)
        else:
            made.addSpacing(what)


def emptied(layout: QLayout, but: QWidget | None = None) -> None:
    """Take everything out of a layout; all widgets in it go for good, except ``but``."""
    while (item := layout.takeAt(0)) is not None:
        widget = item.widget()
        if widget is not None and widget is not but:
            # Hidden as well: a widget without a place would be painted until it is deleted.
            widget.hide()
            widget.deleteLater()


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
# In high contrast buttons and lists to choose from are outlined as well: they have the window's
# own ground, and Fusion's line about them is next to none.

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

    def subElementRect(
        self, element: QStyle.SubElement, option: QStyleOption, widget: QWidget | None = None
    ) -> QRect:
        room = super().subElementRect(element, option, widget)  # type: ignore[arg-type] # stubs
        if element == QStyle.SubElement.SE_TabBarTabText:
            # Else the dots of a capital umlaut are cut off the tabs that are not in front.
            room.adjust(0, -HALF, 0, HALF)
        return room

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
        if element == QStyle.ControlElement.CE_PushButton and wants_contrast():
            _outline(option, painter)
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
        listed = control == QStyle.ComplexControl.CC_ComboBox and wants_contrast()
        if listed or control == QStyle.ComplexControl.CC_SpinBox:
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
