"""A line that tells what the lining under the hand would bring, before it is chosen."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from planner.app.fields.form import NoteLabel
from planner.app.fields.lining_chooser import LiningChooser
from planner.app.worth import Worth
from planner.plan.lining import Lining
from planner.reports.lining_gains import brought_sentence


class ConsideredNote(NoteLabel):
    """Hidden while no list of linings is open."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("", parent)
        self._chooser: LiningChooser | None = None
        self._lining: Lining | None = None
        self.setAccessibleName("What this lining would bring")
        self.hide()

    def follow(self, chooser: LiningChooser, worth: Worth | None) -> None:
        """Tell what is considered in a list."""
        if worth is None:
            return
        chooser.considered.connect(lambda lining: self._consider(chooser, lining))
        worth.told.connect(self._show)

    def _consider(self, chooser: LiningChooser, lining: Lining | None) -> None:
        self._chooser, self._lining = chooser, lining
        self._show()

    def _show(self) -> None:
        lining, chooser = self._lining, self._chooser
        if lining is None or chooser is None:
            self.hide()
            return
        known = chooser.brings(lining)
        if known is None:
            self.setText(f"{lining.name}: what it would bring is being computed …")
        else:
            self.setText(f"{brought_sentence(lining.name, *known)}.")
        self.show()
