"""Every question the window asks, every failure it tells and every file it writes.

The window asks through this object and never opens a dialog by itself, so a test can
put an object with ready answers in its place.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from datetime import datetime
from enum import Enum, auto
from pathlib import Path
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, Qt
from PySide6.QtGui import QImageWriter, QPixmap
from PySide6.QtWidgets import QFileDialog, QMessageBox, QWidget

from planner.app.help import PLAN_FILTER
from planner.estimate.result import Estimate
from planner.files.disk import PlanFileError, system_problem, write_atomically
from planner.files.store import FileKind
from planner.plan.refusal import in_print
from planner.units import capital

if TYPE_CHECKING:
    from PySide6.QtPrintSupport import QPrinter

    from planner.reports.sheet import Paper

_Button = QMessageBox.StandardButton
_ButtonRole = QMessageBox.ButtonRole


class Unsaved(Enum):
    """What becomes of unsaved changes."""

    SAVE = auto()
    DISCARD = auto()
    CANCEL = auto()


class ChangedOnDisk(Enum):
    """What becomes of a file that another program changed meanwhile."""

    OVERWRITE = auto()
    SAVE_ELSEWHERE = auto()
    CANCEL = auto()


class Recovered(Enum):
    """What becomes of work that a crash left behind."""

    RESTORE = auto()
    DISCARD = auto()
    LATER = auto()


class Questions:
    """Asks with message boxes and file dialogs over the window."""

    def __init__(self, parent: QWidget | None = None) -> None:
        self.parent = parent

    def unsaved(self, name: str) -> Unsaved:
        """Ask whether to save changes that would be lost."""
        box = self._box(
            QMessageBox.Icon.Question,
            "Unsaved changes",
            f"Save the changes to '{name}'?",
            "If you do not save, the changes since the last save are lost.",
        )
        box.setStandardButtons(_Button.Save | _Button.Discard | _Button.Cancel)
        box.setDefaultButton(_Button.Save)
        answers = {_Button.Save: Unsaved.SAVE, _Button.Discard: Unsaved.DISCARD}
        return answers.get(_Button(box.exec()), Unsaved.CANCEL)

    def changed_on_disk(self, path: Path) -> ChangedOnDisk:
        """The file is no longer the one that was opened."""
        box = self._box(
            QMessageBox.Icon.Warning,
            "The file has changed",
            f"'{in_print(path.name)}' was changed by another program since it was opened here.",
            "Saving over it would lose those other changes.",
        )
        over = box.addButton("Save over it", _ButtonRole.DestructiveRole)
        elsewhere = box.addButton("Save as…", _ButtonRole.AcceptRole)
        box.addButton(_Button.Cancel)
        box.setDefaultButton(elsewhere)
        box.exec()
        if box.clickedButton() is over:
            return ChangedOnDisk.OVERWRITE
        if box.clickedButton() is elsewhere:
            return ChangedOnDisk.SAVE_ELSEWHERE
        return ChangedOnDisk.CANCEL

    def recovered(
        self, name: str, path: Path | None, kept_at: datetime | None, *, moved_on: bool = False
    ) -> Recovered:
        """The last run ended without saving; its work was kept.

        ``moved_on``: the file was changed since by somebody else.
        """
        name = in_print(name)
        when = "" if kept_at is None else f" It was kept on {kept_at:%Y-%m-%d} at {kept_at:%H:%M}."
        where = "It was never saved to a file." if path is None else (
            f"It belongs to {in_print(str(path))}."
        )  # fmt: skip
        if moved_on:
            where += " That file was saved anew since; you will be asked before it is written over."
        box = self._box(
            QMessageBox.Icon.Question,
            "Unsaved work found",
            f"The program ended last time without saving '{name}'. Restore that work?",
            f"{where}{when} Restoring opens it as unsaved; your file stays as it is until "
            "you save.",
        )
        restore = box.addButton("Restore", _ButtonRole.AcceptRole)
        discard = box.addButton("Discard", _ButtonRole.DestructiveRole)
        later = box.addButton("Ask again next time", _ButtonRole.RejectRole)
        box.setDefaultButton(restore)
        box.setEscapeButton(later)
        box.exec()
        if box.clickedButton() is restore:
            return Recovered.RESTORE
        return Recovered.DISCARD if box.clickedButton() is discard else Recovered.LATER

    def take_otherwise(self, message: str, kind: str) -> bool:
        """Whether a file that is no plan shall be taken as what it is."""
        box = self._box(
            QMessageBox.Icon.Question, "Not a plan", message,
            "Its lamp can be hung in the open plan." if kind == FileKind.LAMP
            else "Its readings can be put into a survey of the open plan.",
        )  # fmt: skip
        words = "Show the lamp…" if kind == FileKind.LAMP else "Import readings…"
        door = box.addButton(words, _ButtonRole.AcceptRole)
        box.addButton(_Button.Cancel)
        box.setDefaultButton(door)
        box.exec()
        return box.clickedButton() is door

    def tell_failure(self, title: str, message: str) -> None:
        """Something the user asked for could not be done; the message says why."""
        box = self._box(QMessageBox.Icon.Warning, title, message, "")
        box.setStandardButtons(_Button.Ok)
        box.exec()

    def open_path(self, folder: Path) -> Path | None:
        """Which plan to open; None if the user thinks better of it."""
        return self.open_file("Open plan", folder, PLAN_FILTER)

    def open_file(self, title: str, folder: Path, file_filter: str) -> Path | None:
        """Which file of another kind to open; None if the user thinks better of it."""
        chosen, _ = QFileDialog.getOpenFileName(self.parent, title, str(folder), file_filter)
        return Path(chosen) if chosen else None

    def save_path(
        self,
        title: str,
        proposal: Path,
        file_filter: str = PLAN_FILTER,
    ) -> Path | None:
        """Where to save; None if the user thinks better of it.

        A name with none of the filter's endings gets that of the kind chosen.
        """
        chosen, kind = QFileDialog.getSaveFileName(self.parent, title, str(proposal), file_filter)
        if not chosen:
            return None
        return _with_ending(Path(chosen), file_filter, kind or file_filter)

    def save_into(
        self,
        title: str,
        proposal: Path,
        file_filter: str,
        what: str,
        write: Callable[[Path], None],
        told: Callable[[str], None] = lambda _said: None,
    ) -> Path | None:
        """Ask where to save, write it there and tell so; None where nothing was written.

        ``write`` raises ``PlanFileError`` or ``ValueError`` with the sentence to tell.
        """
        path = self.save_path(title, proposal, file_filter)
        if path is None:
            return None
        path = _with_ending(path, file_filter, f"*{proposal.suffix}")
        try:
            write(path)
        except (PlanFileError, ValueError) as error:
            text = str(error)
            self.tell_failure(f"The {what} was not written", capital(text))
            return None
        told(f"Wrote {path.name}")
        return path

    def printer(self, paper: Paper, name: str) -> QPrinter | None:
        """Which printer to print a document on; None if the user thinks better of it."""
        # Printing brings a library along that nobody else needs.
        from PySide6.QtPrintSupport import QPrintDialog, QPrinter  # noqa: PLC0415

        from planner.reports.sheet import page_layout  # noqa: PLC0415 - only when asked

        printer = QPrinter(QPrinter.PrinterMode.HighResolution)
        printer.setDocName(name)
        printer.setFullPage(True)
        printer.setPageLayout(page_layout(paper))
        dialog = QPrintDialog(printer, self.parent)
        if dialog.exec() != QPrintDialog.DialogCode.Accepted:
            return None
        return printer

    def _box(self, icon: QMessageBox.Icon, title: str, text: str, more: str) -> QMessageBox:
        box = QMessageBox(self.parent)
        # Names of plans and files stand in these texts; they are never markup.
        box.setTextFormat(Qt.TextFormat.PlainText)
        box.setIcon(icon)
        box.setWindowTitle(title)
        box.setText(text)
        box.setInformativeText(more)
        return box


# -- what is written to a file --------------------------------------------------------

FILTERS: Final = {
    ".csv": "Tables (*.csv);;All files (*)",
    ".json": "JSON (*.json);;All files (*)",
    ".pdf": "PDF (*.pdf);;All files (*)",
    ".png": "PNG pictures (*.png);;All files (*)",
}


def _with_ending(path: Path, allowed: str, chosen: str) -> Path:
    """A path with one of the endings of a filter, else with the first of the kind chosen."""
    endings = re.compile(r"\*(\.[\w.]+)")
    first = endings.search(chosen)
    if first is None or path.name.lower().endswith(tuple(endings.findall(allowed))):
        return path
    return path.with_name(path.name + first[1])


def in_file_name(name: str) -> str:
    """A name as part of a file's, without what no file can be called."""
    kept = "".join("-" if mark in '<>:"/\\|?*' or ord(mark) < 32 else mark for mark in name)
    return kept.strip(" .")[:80]


def write_export(path: Path, ending: str, estimate: Estimate) -> None:
    """Write the map as ``.csv`` or map and figures as ``.json``; raises ``PlanFileError``."""
    if ending == ".csv":
        from planner.reports.exports import estimate_to_csv  # noqa: PLC0415 - only when asked

        text = estimate_to_csv(estimate)
    else:
        from planner.reports.exports import estimate_to_json  # noqa: PLC0415 - only when asked

        text = estimate_to_json(estimate)
    write_bytes(path, text.encode("utf-8"))


def write_picture(path: Path, picture: QPixmap) -> None:
    """Write a picture as PNG; raises ``PlanFileError``."""
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    QImageWriter(buffer, QByteArray(b"PNG")).write(picture.toImage())
    write_bytes(path, bytes(buffer.data().data()))


def write_bytes(path: Path, data: bytes) -> None:
    """Write what is made already, whole or not at all; raises ``PlanFileError``."""
    try:
        write_atomically(path, data)
    except OSError as error:
        raise system_problem(path, error, act="saved") from error
    except ValueError as error:
        # Such as a zero character in the name, which the system's calls do not take.
        raise PlanFileError(path, "no file can have such a name", act="saved") from error


def write_text(path: Path, text: str) -> None:
    """Write any text whole or not at all; raises ``PlanFileError``."""
    write_bytes(path, text.encode("utf-8"))
