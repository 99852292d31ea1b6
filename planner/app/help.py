"""Help pages: Markdown texts from the resources, in a window that does not block."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QSize, QUrl
from PySide6.QtGui import QDesktopServices, QKeySequence, QShortcut
from PySide6.QtWidgets import QDialog, QTabWidget, QTextBrowser, QVBoxLayout, QWidget

from planner.app import theme
from planner.app.shipped import help_text

PAGES: Final = (
    ("start", "How to start"),
    ("cautions", "Cautions"),
    ("glossary", "Glossary"),
    ("lamp-files", "Lamps from files"),
    ("spectra", "Spectra"),
)


class HelpWindow(QDialog):
    """All help pages as tabs; links to the outside open in the browser."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("Help")
        self._tabs = QTabWidget(self)
        self._tabs.setDocumentMode(True)
        self._tabs.setAccessibleName("Help pages")
        for name, title in PAGES:
            browser = QTextBrowser(self)
            browser.setAccessibleName(title)
            browser.setOpenLinks(False)
            browser.document().setDocumentMargin(2 * theme.WIDE)
            browser.setMarkdown(help_text(name))
            browser.anchorClicked.connect(self._follow)
            self._tabs.addTab(browser, title)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, theme.RHYTHM, 0, 0)
        layout.addWidget(self._tabs)
        QShortcut(QKeySequence(QKeySequence.StandardKey.Close), self, self.close)

    def sizeHint(self) -> QSize:
        return QSize(88 * theme.RHYTHM, 80 * theme.RHYTHM)

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
