"""About: what this is, which versions run, and the details to paste into a report."""

from __future__ import annotations

import platform
import sys
from importlib import metadata
from typing import Final

import PySide6
from PySide6.QtCore import Qt, qVersion
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QDialog, QDialogButtonBox, QLabel, QVBoxLayout, QWidget

from planner import __version__
from planner.app import theme
from planner.app.words import APP_TITLE

_PACKAGES: Final = ("numpy", "pydantic", "pyqtgraph", "contourpy")


def version_lines() -> tuple[str, ...]:
    """One line per part the program runs on, with its version."""
    lines = [
        f"{APP_TITLE} {__version__}",
        f"Python {platform.python_version()} ({sys.platform}, {platform.machine()})",
        f"Qt {qVersion()}, PySide6 {PySide6.__version__}",
    ]
    for package in _PACKAGES:
        try:
            lines.append(f"{package} {metadata.version(package)}")
        except metadata.PackageNotFoundError:
            lines.append(f"{package} not installed")
    return tuple(lines)


def details() -> str:
    """The versions as plain text, ready to paste."""
    lines = [*version_lines(), platform.platform()]
    if isinstance(QGuiApplication.instance(), QGuiApplication):
        drawn_by = QGuiApplication.platformName()
        lines += [
            f"Screen {screen.size().width()} x {screen.size().height()} at "
            f"{screen.devicePixelRatio():g}, drawn by '{drawn_by}'"
            for screen in QGuiApplication.screens()
        ]
    return "\n".join(lines)


class AboutDialog(QDialog):
    """Purpose, versions, licence, and a button that copies the details."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(f"About {APP_TITLE}")
        title = QLabel(APP_TITLE, self)
        font = title.font()
        font.setPointSizeF(font.pointSizeF() * 1.5)
        title.setFont(font)
        purpose = QLabel(
            "Draws a small grow space to scale, lines its walls, hangs its lamps and "
            "estimates the light on the canopy.\n\n"
            "Free under the MIT licence; held by the contributors. Qt for Python is used "
            "under the LGPL, version 3.",
            self,
        )
        purpose.setWordWrap(True)
        versions = QLabel("\n".join(version_lines()), self)
        versions.setAccessibleName("Versions")
        versions.setTextInteractionFlags(
            Qt.TextInteractionFlag.TextSelectableByMouse
            | Qt.TextInteractionFlag.TextSelectableByKeyboard
        )
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close, self)
        copy = buttons.addButton("Copy details", QDialogButtonBox.ButtonRole.ActionRole)
        copy.setAccessibleName("Copy details")
        copy.clicked.connect(lambda: QGuiApplication.clipboard().setText(details()))
        buttons.rejected.connect(self.reject)
        buttons.button(QDialogButtonBox.StandardButton.Close).setDefault(True)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(*(3 * theme.RHYTHM,) * 4)
        layout.setSpacing(theme.WIDE)
        for widget in (title, purpose, versions, buttons):
            layout.addWidget(widget)
        self.setMinimumWidth(54 * theme.RHYTHM)
