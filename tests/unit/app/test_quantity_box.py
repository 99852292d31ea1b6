"""The numeric field: what it reads, what it refuses, and when it asks for a change."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QApplication, QLineEdit, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from planner.app.quantity_box import QuantityBox
from planner.plan.quantity import (
    DLI,
    HANGING_HEIGHT,
    HOURS,
    PERCENT,
    PHOTON_FLUX,
    POSITION,
    PPFD,
    SHARE,
    WATTS,
    AngleDeg,
    Quantity,
    quantity,
)
from planner.units import LengthUnit


class Asked:
    """Notes what a field asks for, and keeps its window alive."""

    def __init__(self, box: QuantityBox, window: QWidget) -> None:
        self.window = window
        self.committed: list[float] = []
        self.stepped: list[float] = []
        self.refused: list[str] = []
        box.committed.connect(self.committed.append)
        box.stepped.connect(self.stepped.append)
        box.refused.connect(self.refused.append)


def make(qtbot: QtBot, quantity: Quantity, value: float) -> tuple[QuantityBox, Asked, QLineEdit]:
    """A shown field with the focus, and another field to go to."""
    window = QWidget()
    qtbot.addWidget(window)
    layout = QVBoxLayout(window)
    box, other = QuantityBox(quantity, "Height"), QLineEdit()
    layout.addWidget(box)
    layout.addWidget(other)
    box.reset(value)
    asked = Asked(box, window)
    with qtbot.waitActive(window):
        window.show()
        window.activateWindow()
    box.setFocus()
    return box, asked, other


def shown(box: QuantityBox) -> str:
    return box.lineEdit().text()


@pytest.mark.parametrize(
    ("text", "metres"),
    [
        ("1,5", 0.015),
        ("1.5 m", 1.5),
        ("150 cm", 1.5),
        ("59 in", 1.4986),
        ("4' 2\"", 1.27),
        ("23 5/8 in", 0.600075),
        ("450mm", 0.45),
    ],
)
def test_a_length_is_read_as_it_is_written(qtbot: QtBot, text: str, metres: float) -> None:
    box, asked, _ = make(qtbot, HANGING_HEIGHT, 0.3)
    box.selectAll()
    qtbot.keyClicks(box, text)
    qtbot.keyClick(box, Qt.Key.Key_Return)
    assert asked.committed == [pytest.approx(metres, abs=1e-9)]


@pytest.mark.parametrize(
    ("quantity", "text", "value"),
    [
        (PERCENT, "62,5", 62.5),
        (PPFD, "450 umol/m2/s", 450.0),
        (PHOTON_FLUX, "600umol/s", 600.0),
        (PERCENT, "62.5 %", 62.5),
        (SHARE, "84 %", 0.84),
        (quantity(AngleDeg), "-30", -30.0),
        (quantity(AngleDeg), "45 °", 45.0),
        (HOURS, "16,5 h", 16.5),
        (PHOTON_FLUX, "120 µmol/s", 120.0),
        (WATTS, "54 W", 54.0),
        (PPFD, "210", 210.0),
        (DLI, "12,5", 12.5),
    ],
)
def test_other_numbers_are_read_with_and_without_their_unit(
    qtbot: QtBot, quantity: Quantity, text: str, value: float
) -> None:
    box, asked, _ = make(qtbot, quantity, 0.5)
    box.selectAll()
    qtbot.keyClicks(box, text)
    qtbot.keyClick(box, Qt.Key.Key_Return)
    assert asked.committed == [pytest.approx(value)]


@pytest.mark.parametrize(
    ("quantity", "text", "part"),
    [
        (HANGING_HEIGHT, "tall", "is not a length"),
        (HANGING_HEIGHT, "0", "at least 1 cm, not 0 cm"),
        (HANGING_HEIGHT, "60 m", "at most 500 cm, not 6000 cm"),
        (PERCENT, "120", "at most 100 %, not 120 %"),
        (SHARE, "-1", "at least 0 %, not -1 %"),
        (HOURS, "25 h", "at most 24 h, not 25 h"),
        (WATTS, "1.000,5", "is not a number"),
        (WATTS, "1,000", "can be read as 1 or as 1000"),
        (WATTS, "1.000 W", "can be read as 1 or as 1000"),
        (HANGING_HEIGHT, "1,250 cm", "can be read as 1.25 or as 1250"),
        (HANGING_HEIGHT, "1.125", "can be read as 1.1250 or as 1125"),
        (WATTS, "", "is not a number"),
        (WATTS, "nan", "is not a number"),
        (WATTS, "inf", "is not a number"),
    ],
)
def test_what_is_no_value_is_refused_once_with_a_reason(
    qtbot: QtBot, quantity: Quantity, text: str, part: str
) -> None:
    box, asked, other = make(qtbot, quantity, 0.5)
    box.lineEdit().setText(text)
    qtbot.keyClick(box, Qt.Key.Key_Return)
    other.setFocus()
    assert asked.committed == []
    assert len(asked.refused) == 1
    assert part in asked.refused[0]
    assert shown(box) == text


def test_bounds_are_told_in_the_unit_shown(qtbot: QtBot) -> None:
    box, asked, _ = make(qtbot, HANGING_HEIGHT, 0.5)
    box.set_unit(LengthUnit.INCH)
    box.lineEdit().setText("0 in")
    box.commit()
    assert asked.refused == ["Must be at least 0.39 in, not 0 in."]


def test_looking_and_leaving_changes_nothing(qtbot: QtBot) -> None:
    box, asked, other = make(qtbot, HANGING_HEIGHT, 0.123456789)
    other.setFocus()
    box.setFocus()
    qtbot.keyClick(box, Qt.Key.Key_Return)
    other.setFocus()
    assert (asked.committed, asked.stepped, asked.refused) == ([], [], [])
    assert box.value == 0.123456789


def test_another_unit_changes_the_text_and_never_the_value(qtbot: QtBot) -> None:
    box, asked, other = make(qtbot, HANGING_HEIGHT, 0.4572)
    assert shown(box) == "45.7 cm"
    box.set_unit(LengthUnit.INCH)
    assert shown(box) == "18 in"
    other.setFocus()
    box.set_unit(LengthUnit.CM)
    assert box.value == 0.4572
    assert (asked.committed, asked.stepped) == ([], [])


def test_a_bare_number_is_in_the_unit_shown(qtbot: QtBot) -> None:
    box, asked, _ = make(qtbot, HANGING_HEIGHT, 0.3)
    box.set_unit(LengthUnit.INCH)
    box.selectAll()
    qtbot.keyClicks(box, "18")
    qtbot.keyClick(box, Qt.Key.Key_Return)
    assert asked.committed == [pytest.approx(0.4572)]


def test_leaving_the_field_takes_the_value_over(qtbot: QtBot) -> None:
    box, asked, other = make(qtbot, HANGING_HEIGHT, 0.3)
    box.selectAll()
    qtbot.keyClicks(box, "40")
    other.setFocus()
    assert asked.committed == [pytest.approx(0.4)]


def test_escape_goes_back_to_the_plans_value(qtbot: QtBot) -> None:
    box, asked, other = make(qtbot, HANGING_HEIGHT, 0.3)
    box.selectAll()
    qtbot.keyClicks(box, "rubbish")
    qtbot.keyClick(box, Qt.Key.Key_Escape)
    other.setFocus()
    assert shown(box) == "30 cm"
    assert (asked.committed, asked.refused) == ([], [])


@pytest.mark.parametrize(
    ("quantity", "value", "key", "wanted"),
    [
        (HANGING_HEIGHT, 0.30, Qt.Key.Key_Up, 0.31),
        (HANGING_HEIGHT, 0.30, Qt.Key.Key_Down, 0.29),
        (HANGING_HEIGHT, 0.304, Qt.Key.Key_Up, 0.31),
        (HANGING_HEIGHT, 0.304, Qt.Key.Key_Down, 0.30),
        (HANGING_HEIGHT, 0.30, Qt.Key.Key_PageUp, 0.40),
        (PERCENT, 98.0, Qt.Key.Key_Up, 100.0),
        (POSITION, -0.30, Qt.Key.Key_Down, -0.31),
    ],
)
def test_arrow_keys_step_to_round_values(
    qtbot: QtBot, quantity: Quantity, value: float, key: Qt.Key, wanted: float
) -> None:
    box, asked, _ = make(qtbot, quantity, value)
    qtbot.keyClick(box, key)
    assert asked.stepped == [pytest.approx(wanted)]
    assert asked.committed == []


def test_steps_stop_at_the_bounds(qtbot: QtBot) -> None:
    box, asked, _ = make(qtbot, PERCENT, 100.0)
    qtbot.keyClick(box, Qt.Key.Key_Up)
    assert asked.stepped == []


def test_steps_follow_the_unit(qtbot: QtBot) -> None:
    box, asked, _ = make(qtbot, HANGING_HEIGHT, 0.4572)
    box.set_unit(LengthUnit.INCH)
    qtbot.keyClick(box, Qt.Key.Key_Up)
    assert asked.stepped == [pytest.approx(18.5 * 0.0254)]


def _wheel(box: QuantityBox) -> QWheelEvent:
    middle = QPointF(box.rect().center())
    event = QWheelEvent(
        middle, box.mapToGlobal(middle), QPoint(), QPoint(0, 120), Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier, Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip
    QApplication.sendEvent(box, event)
    return event


def test_the_wheel_turns_only_what_has_the_focus(qtbot: QtBot) -> None:
    box, asked, other = make(qtbot, HANGING_HEIGHT, 0.3)
    other.setFocus()
    assert not _wheel(box).isAccepted()
    assert asked.stepped == []
    box.setFocus()
    _wheel(box)
    assert asked.stepped == [pytest.approx(0.31)]


def test_a_new_value_from_the_plan_replaces_a_refused_text(qtbot: QtBot) -> None:
    box, _asked, _ = make(qtbot, HANGING_HEIGHT, 0.3)
    box.lineEdit().setText("rubbish")
    box.commit()
    box.set_value(0.3)
    assert shown(box) == "rubbish"
    box.set_value(0.35)
    assert shown(box) == "35 cm"


def test_screen_readers_hear_the_name_and_the_range(qtbot: QtBot) -> None:
    box, _asked, _ = make(qtbot, PERCENT, 50.0)
    assert box.accessibleName() == "Height"
    assert box.accessibleDescription() == "Write a value from 0 % to 100 %."
    assert box.focusPolicy() == Qt.FocusPolicy.StrongFocus
