from __future__ import annotations

import pytest
from PySide6.QtCore import QRect

from planner.app.settings import clamped

LEFT = QRect(0, 0, 1920, 1050)
RIGHT = QRect(1920, 0, 1280, 700)


@pytest.mark.parametrize(
    ("rect", "expected"),
    [
        (QRect(100, 100, 800, 600), QRect(100, 100, 800, 600)),
        (QRect(-300, 100, 800, 600), QRect(0, 100, 800, 600)),
        (QRect(100, 900, 800, 600), QRect(100, 450, 800, 600)),
        (QRect(0, 0, 4000, 3000), QRect(0, 0, 1920, 1050)),
        (QRect(2000, 50, 900, 600), QRect(2000, 50, 900, 600)),
        (QRect(2800, 50, 900, 900), QRect(2300, 0, 900, 700)),
        (QRect(9000, 9000, 800, 600), QRect(1120, 450, 800, 600)),
    ],
)
def test_a_window_is_moved_into_the_screen_it_is_most_on(rect: QRect, expected: QRect) -> None:
    assert clamped(rect, [LEFT, RIGHT]) == expected


def test_without_any_screen_nothing_is_changed() -> None:
    assert clamped(QRect(1, 2, 300, 400), []) == QRect(1, 2, 300, 400)
