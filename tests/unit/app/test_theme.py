from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtGui import QColor, QPalette
from PySide6.QtWidgets import (
    QApplication,
    QCheckBox,
    QComboBox,
    QDoubleSpinBox,
    QLineEdit,
    QPushButton,
    QTabBar,
    QWidget,
)
from pytestqt.qtbot import QtBot

from planner.app import theme
from planner.app.canvas.ink import Ink
from planner.app.theme import OutlinedStyle, Theme

Role = QPalette.ColorRole

TEXT_ON_GROUND = (
    (Role.WindowText, Role.Window),
    (Role.Text, Role.Base),
    (Role.Text, Role.AlternateBase),
    (Role.ButtonText, Role.Button),
    (Role.HighlightedText, Role.Highlight),
    (Role.ToolTipText, Role.ToolTipBase),
    (Role.Link, Role.Window),
    (Role.Link, Role.Base),
    (Role.LinkVisited, Role.Base),
    (Role.PlaceholderText, Role.Base),
    (Role.PlaceholderText, Role.Window),
    (Role.BrightText, Role.Window),
)


@pytest.fixture(autouse=True)
def same_look_afterwards(qapp: QApplication) -> Iterator[None]:
    before = qapp.palette()
    yield
    qapp.setPalette(before)
    qapp.setStyle("Fusion")


def contrast(first: QColor, second: QColor) -> float:
    """Contrast ratio of two colours, 1 to 21 (WCAG 2.2, relative luminance)."""
    lighter, darker = sorted((_luminance(first), _luminance(second)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def _luminance(colour: QColor) -> float:
    def linear(part: float) -> float:
        return part / 12.92 if part <= 0.04045 else float(((part + 0.055) / 1.055) ** 2.4)

    red, green, blue = (linear(c) for c in (colour.redF(), colour.greenF(), colour.blueF()))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


@pytest.mark.parametrize(
    ("first", "second", "ratio"),
    # The two ends by definition; grey #777777 on white is 4.48, a known near miss of WCAG.
    [("#000000", "#ffffff", 21.0), ("#ffffff", "#ffffff", 1.0), ("#777777", "#ffffff", 4.48)],
)
def test_contrast_agrees_with_known_ratios(first: str, second: str, ratio: float) -> None:
    assert contrast(QColor(first), QColor(second)) == pytest.approx(ratio, abs=0.005)


@pytest.mark.parametrize("dark", [False, True])
@pytest.mark.parametrize(("text", "ground"), TEXT_ON_GROUND)
def test_text_stands_out_from_its_ground(dark: bool, text: Role, ground: Role) -> None:
    shown = theme.palette(dark=dark)
    assert contrast(shown.color(text), shown.color(ground)) >= 4.5


@pytest.mark.parametrize("dark", [False, True])
def test_the_accent_stands_out_as_a_mark(dark: bool) -> None:
    shown = theme.palette(dark=dark)
    for ground in (Role.Window, Role.Base):
        assert contrast(shown.color(Role.Accent), shown.color(ground)) >= 3


@pytest.mark.parametrize("dark", [False, True])
@pytest.mark.parametrize("kind", [QLineEdit, QDoubleSpinBox, QCheckBox])
def test_the_outline_of_a_field_can_be_seen(qtbot: QtBot, kind: type[QWidget], dark: bool) -> None:
    theme.apply(Theme.DARK if dark else Theme.LIGHT)
    ground = QWidget()
    qtbot.addWidget(ground)
    field = kind(ground)
    field.setGeometry(8, 8, 100, 24)
    ground.resize(120, 40)
    ground.show()
    qtbot.waitExposed(ground)
    qtbot.waitUntil(
        lambda: (ground.palette().color(QPalette.ColorRole.Window).lightness() < 128) is dark,
        timeout=1000,
    )
    field.clearFocus()
    picture = ground.grab().toImage()
    window = ground.palette().color(Role.Window)
    # Down through the upper edge, clear of any text: a line there keeps 3:1 to the window.
    x = 14 if kind is QCheckBox else 70
    column = [picture.pixelColor(x, y) for y in range(6, 20)]
    assert max(contrast(colour, window) for colour in column) >= 3


@pytest.mark.parametrize("dark", [False, True])
def test_disabled_text_is_fainter_but_not_gone(dark: bool) -> None:
    shown = theme.palette(dark=dark)
    ground = shown.color(Role.Window)
    faint = contrast(shown.color(QPalette.ColorGroup.Disabled, Role.WindowText), ground)
    assert 2.5 <= faint < contrast(shown.color(Role.WindowText), ground)


@pytest.mark.parametrize(("choice", "dark"), [(Theme.LIGHT, False), (Theme.DARK, True)])
def test_a_theme_takes_hold_of_the_application(
    qapp: QApplication, choice: Theme, dark: bool
) -> None:
    theme.apply(choice)
    assert (qapp.palette().color(QPalette.ColorRole.Window).lightness() < 128) is dark
    assert isinstance(qapp.style(), OutlinedStyle)


def test_digits_of_the_tabular_font_are_equally_wide(qapp: QApplication) -> None:
    from PySide6.QtGui import QFontMetricsF

    metrics = QFontMetricsF(theme.tabular(qapp.font()))
    widths = {round(metrics.horizontalAdvance(digit * 10), 3) for digit in "0123456789"}
    assert len(widths) == 1


def test_a_desktop_in_high_contrast_keeps_its_colours(
    qapp: QApplication, monkeypatch: pytest.MonkeyPatch
) -> None:
    theme.apply(Theme.LIGHT)
    ours = theme.palette(dark=False).color(Role.Accent)
    assert qapp.palette().color(Role.Accent) == ours
    monkeypatch.setattr(theme, "wants_contrast", lambda: True)
    for chosen in Theme:
        theme.apply(chosen)
        assert qapp.palette().color(Role.Accent) != ours
    monkeypatch.undo()
    theme.apply(Theme.LIGHT)
    assert qapp.palette().color(Role.Accent) == ours


def desktop_in_contrast(*, dark: bool) -> QPalette:
    """A made-up palette of high contrast that leaves some roles faint, as desktops do."""
    text, ground, chosen = (
        ("#ffffff", "#000000", "#00ffff") if dark else ("#000000", "#ffffff", "#37006e")
    )
    made = QPalette()
    for role in Role:
        if role is not Role.NColorRoles:
            made.setColor(role, QColor(ground))
    for role in (Role.WindowText, Role.Text, Role.ButtonText, Role.ToolTipText):
        made.setColor(role, QColor(text))
    made.setColor(Role.Highlight, QColor(chosen))
    made.setColor(Role.HighlightedText, QColor(ground))
    half = QColor(text)
    half.setAlpha(128)
    made.setColor(Role.PlaceholderText, half)
    made.setColor(Role.BrightText, QColor("#ffffff"))  # not seen on a white ground
    made.setColor(Role.Accent, QColor("#808080"))
    return made


@pytest.mark.parametrize("dark", [False, True])
def test_high_contrast_takes_the_desktops_colours_and_leaves_none_faint(dark: bool) -> None:
    given = desktop_in_contrast(dark=dark)
    made = theme.in_contrast(given)
    theirs = {given.color(role).rgb() for role in Role if role is not Role.NColorRoles}
    ground = made.color(Role.Window)
    for role in (Role.PlaceholderText, Role.BrightText, Role.WindowText):
        assert made.color(role).rgb() in theirs
        assert made.color(role).alpha() == 255
        assert contrast(made.color(role), ground) >= 7
    for role in (Role.Dark, Role.Accent, Role.Link):
        assert made.color(role).rgb() in theirs
        assert contrast(made.color(role), ground) >= 3
    for role in (Role.Window, Role.Base, Role.Text, Role.Highlight, Role.Button):
        assert made.color(role) == given.color(role)


def test_drawings_mix_no_texts_in_high_contrast(monkeypatch: pytest.MonkeyPatch) -> None:
    shown = theme.in_contrast(desktop_in_contrast(dark=True))
    assert Ink.of(shown).quiet != Ink.of(shown).ink
    monkeypatch.setattr(theme, "wants_contrast", lambda: True)
    ink = Ink.of(shown)
    assert ink.ink == ink.quiet == ink.alarm == shown.color(Role.Text)
    assert ink.accent == shown.color(Role.Accent)
    assert contrast(ink.faint, ink.paper) >= 3


def test_buttons_are_outlined_in_high_contrast(
    qtbot: QtBot, qapp: QApplication, monkeypatch: pytest.MonkeyPatch
) -> None:
    theme.apply(Theme.LIGHT)
    monkeypatch.setattr(theme, "wants_contrast", lambda: True)
    shown = theme.in_contrast(desktop_in_contrast(dark=True))
    for control in (QPushButton("Go"), QComboBox()):
        qtbot.addWidget(control)
        control.setPalette(shown)
        control.resize(120, 30)
        image = control.grab().toImage()
        edge = [image.pixelColor(60, y) for y in range(3)]
        assert max(contrast(one, shown.color(Role.Window)) for one in edge) >= 3


def test_tabs_behind_do_not_cut_the_dots_of_an_umlaut(qtbot: QtBot) -> None:
    theme.apply(Theme.LIGHT)
    pictures = []
    for text in ("Übung", "Ubung"):
        tabs = QTabBar()
        qtbot.addWidget(tabs)
        tabs.addTab("first")
        tabs.addTab(text)
        tabs.show()
        pictures.append(tabs.grab(tabs.tabRect(1)).toImage())
    above = [image.copy(0, 0, image.width(), image.height() // 2) for image in pictures]
    assert above[0] != above[1]
