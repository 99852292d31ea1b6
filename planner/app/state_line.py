"""The state of the estimate in the status bar: computing, preview, or done and how."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QTimer, Slot
from PySide6.QtWidgets import QWidget

from planner.app import theme
from planner.app.plain import PlainLabel, tooltip
from planner.estimate.result import Estimate, Quality

PATIENCE_MS: Final = 300
"""Progress in per cent is told only when the work takes longer than this."""

_QUALITY: Final = {
    Quality.PREVIEW: "preview",
    Quality.DEFAULT: "default quality",
    Quality.FINE: "fine quality",
}


class StateLine(PlainLabel):
    """One short line; it always says whether what is shown is final."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("", parent)
        self.setAccessibleName("State of the estimate")
        self.setFont(theme.tabular(self.font()))
        self._estimate: Estimate | None = None
        self.problem = ""
        self._busy = self._failed = False
        self._fraction: float | None = None
        self._patience = QTimer(self, singleShot=True, interval=PATIENCE_MS)
        self._refresh()

    @Slot(bool)
    def show_busy(self, busy: bool) -> None:
        """Work began or ended."""
        self._busy = busy
        self._fraction = None
        if busy:
            self._failed = False
            self._patience.start()
        self._refresh()

    @Slot(float)
    def show_progress(self, fraction: float) -> None:
        """So much of the running work is done."""
        if self._busy and not self._patience.isActive():
            self._fraction = fraction
            self._refresh()

    def show_estimate(self, estimate: Estimate) -> None:
        """An estimate is shown."""
        self._estimate, self._failed, self.problem = estimate, False, ""
        self.setToolTip("")
        self._refresh()

    def show_failure(self, message: str) -> None:
        """The estimate failed; the old one stays. The message itself stands on the page."""
        self._failed = True
        self.problem = message
        self.setToolTip(tooltip(message))
        self._refresh()

    def _refresh(self) -> None:
        self.setText(self._words())

    def _words(self) -> str:
        done = "" if self._fraction is None else f" {self._fraction:.0%}"
        if self._failed:
            return "Not computed - see the message"
        if self._estimate is None:
            return f"Computing the light…{done}" if self._busy else ""
        if self._busy:
            shown = "Preview" if self._estimate.options.quality is Quality.PREVIEW else "Last light"
            return f"{shown} - refining…{done}"
        quality = _QUALITY[self._estimate.options.quality]
        return f"Computed in {self._estimate.seconds:.2f} s, {quality}"
