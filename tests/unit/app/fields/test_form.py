"""One form: a burst of steps is one undo step, whatever page the form is on."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from planner.app.display import Display
from planner.app.document import Document
from planner.app.fields.panel import FieldForm
from tests.unit.reports.sample_estimate import sample_plan


def test_five_arrow_steps_are_one_undo_step_in_any_form(qtbot: QtBot) -> None:
    document = Document(sample_plan())
    form = FieldForm(document, Display())
    qtbot.addWidget(form)
    field = form.add_dial("overlap")
    form.show_anew()
    document.changed.connect(lambda _old, new: form.refresh(new))
    for _ in range(5):
        QTest.keyClick(field.box, Qt.Key.Key_Up)
    assert document.plan.costs.overlap == pytest.approx(0.07)
    assert document.undo_stack.count() == 1
    form.end_burst()
    QTest.keyClick(field.box, Qt.Key.Key_Up)
    assert document.undo_stack.count() == 2
