"""The program's names, icon and help texts, and the dialogs that show them."""

from __future__ import annotations

import platform
import re
import sys
from importlib import metadata
from typing import Final

import PySide6
from PySide6.QtCore import QSize, Qt, QUrl, qVersion
from PySide6.QtGui import (
    QDesktopServices,
    QGuiApplication,
    QIcon,
    QKeySequence,
    QPalette,
    QShortcut,
    QTextCursor,
)
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QLabel,
    QTabWidget,
    QTextBrowser,
    QWidget,
)

from planner import __version__
from planner.app import theme
from planner.app.fields.form import QuietButton
from planner.catalogue.library import caution_notes
from planner.folders import resource_path
from planner.language import page
from planner.plan.plan import Plan
from planner.units import LengthUnit

APP_TITLE: Final = "Grow space light planner"
PLAN_FILTER: Final = "Plans (*.plan.json *.json);;All files (*)"


NEWS: Final = "news"
"""The page of what is new: the list of changes, which lies beside the other documents."""


def help_text(name: str) -> str:
    """The Markdown of a help page; a sentence in its place where the file is missing."""
    try:
        file = resource_path("docs/changelog.md") if name == NEWS else page(f"{name}.md")
        text = file.read_text(encoding="utf-8")
    except OSError as error:
        return f"This page cannot be shown: {error}"
    # Documents that are no help page cannot be opened here: their links become plain words.
    return _ELSEWHERE.sub(r"\1", text) if name == NEWS else text


_ELSEWHERE: Final = re.compile(r"\[([^\]]+)\]\((?!https?:)[^)]*\)")


def app_icon() -> QIcon:
    """The program's icon; an empty one where its file is missing."""
    try:
        return QIcon(str(resource_path("icons/planner.svg")))
    except FileNotFoundError:
        return QIcon()


class NewsLine(QuietButton):
    """One quiet line at the foot of the window: this version is new, and where that is told.

    It goes when it is followed, and does not come again.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        words = f"This is version {__version__}: what is new"
        super().__init__(words, QPalette.ColorRole.Link, underlined=True, parent=parent)
        self.setAccessibleName(self.text())
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.clicked.connect(self.hide)


# -- help ------------------------------------------------------------------------------

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
        title.setFont(theme.sized(title.font(), 1.5))
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
        theme.column(
            title, purpose, versions, buttons, on=self, gap=theme.WIDE, edges=3 * theme.RHYTHM
        )
        self.setMinimumWidth(54 * theme.RHYTHM)


_MARKS: Final = re.compile(r"([\\`*_{}\[\]<>()#+\-.!|~&])")


def _escaped(text: str) -> str:
    """A name for Markdown: its signs stand for themselves."""
    return _MARKS.sub(r"\\\1", " ".join(text.split()))


PAGES: Final = (
    ("start", "How to start"),
    ("guide", "A worked example"),
    ("cautions", "Cautions"),
    ("glossary", "Glossary"),
    ("lamp-files", "Lamps from files"),
    ("spectra", "Spectra"),
    (NEWS, "What is new"),
)


def _address(folder: str) -> QUrl:
    """Where a folder of the program's data lies; nowhere, where it is missing."""
    try:
        return QUrl.fromLocalFile(f"{resource_path(folder)}/")
    except FileNotFoundError:
        return QUrl()


class HelpWindow(QDialog):
    """All help pages as tabs; links to the outside open in the browser."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("Help")
        self._tabs = QTabWidget(self)
        self._tabs.setDocumentMode(True)
        self._tabs.setAccessibleName("Help pages")
        self._browsers: dict[str, QTextBrowser] = {}
        for name, title in PAGES:
            browser = self._browsers[name] = QTextBrowser(self)
            browser.setAccessibleName(title)
            browser.setOpenLinks(False)
            browser.document().setDocumentMargin(2 * theme.WIDE)
            # Pictures lie beside the pages.
            browser.document().setBaseUrl(_address("help/"))
            browser.setMarkdown(help_text(name))
            browser.anchorClicked.connect(self._follow)
            self._tabs.addTab(browser, title)
        theme.column(self._tabs, on=self, edges=(0, theme.RHYTHM, 0, 0))
        QShortcut(QKeySequence(QKeySequence.StandardKey.Close), self, self.close)

    def sizeHint(self) -> QSize:
        return QSize(114 * theme.RHYTHM, 84 * theme.RHYTHM)

    def show_cautions(self, plan: Plan, unit: LengthUnit) -> None:
        """Bring the cautions to the front, those for just this plan first."""
        from planner.reports.cautions import cautions  # noqa: PLC0415 - brings the core along

        notes = caution_notes().values()
        lines = []
        for one in cautions(plan, unit):
            # What stands further down on this very page is not said here as well.
            rest = () if one.rest in notes else one.rest
            words = " ".join((one.sentence, *rest))
            lines.append(f"**{_escaped(one.title)}.** {_escaped(words)}")
        general, mark, rest_of_page = help_text("cautions").partition("\n## ")
        here = "\n\n".join(["\n\n## In this plan", *lines, ""]) if lines else ""
        whole = self._browsers["cautions"].document()
        whole.setMarkdown(f"{general.rstrip()}{here}{mark}{rest_of_page}")
        self._browsers["cautions"].moveCursor(QTextCursor.MoveOperation.Start)
        self.show_page("cautions")

    def show_page(self, name: str) -> None:
        """Bring one page to the front."""
        names = [page for page, _ in PAGES]
        self._tabs.setCurrentIndex(names.index(name))
        self.show()
        self.raise_()
        self.activateWindow()

    @property
    def shown_page(self) -> str:
        """Name of the page in front."""
        return PAGES[self._tabs.currentIndex()][0]

    def _follow(self, url: QUrl) -> None:
        name = url.fileName().removesuffix(".md")
        if not url.scheme() and name in dict(PAGES):
            self.show_page(name)
        elif url.scheme() in {"http", "https"}:
            QDesktopServices.openUrl(url)
