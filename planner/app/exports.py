"""Writing the shown estimate, or the window itself, to a file."""

from __future__ import annotations

from pathlib import Path
from typing import Final

from PySide6.QtCore import QBuffer, QByteArray, QIODevice
from PySide6.QtGui import QImageWriter, QPixmap

from planner.estimate.result import Estimate
from planner.files.disk import PlanFileError, system_problem, write_atomically

FILTERS: Final = {
    ".csv": "Tables (*.csv);;All files (*)",
    ".json": "JSON (*.json);;All files (*)",
    ".png": "PNG pictures (*.png);;All files (*)",
}


def write_export(path: Path, ending: str, estimate: Estimate) -> None:
    """Write the map as ``.csv`` or map and figures as ``.json``; raises ``PlanFileError``."""
    if ending == ".csv":
        from planner.reports.exports import estimate_to_csv  # noqa: PLC0415 - only when asked

        text = estimate_to_csv(estimate)
    else:
        from planner.reports.exports import estimate_to_json  # noqa: PLC0415 - only when asked

        text = estimate_to_json(estimate)
    _write(path, text.encode("utf-8"))


def write_picture(path: Path, picture: QPixmap) -> None:
    """Write a picture as PNG; raises ``PlanFileError``."""
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    QImageWriter(buffer, QByteArray(b"PNG")).write(picture.toImage())
    _write(path, bytes(buffer.data().data()))


def write_bytes(path: Path, data: bytes) -> None:
    """Write what is made already, whole or not at all; raises ``PlanFileError``."""
    _write(path, data)


def write_text(path: Path, text: str) -> None:
    """Write any text whole or not at all; raises ``PlanFileError``."""
    _write(path, text.encode("utf-8"))


def _write(path: Path, data: bytes) -> None:
    try:
        write_atomically(path, data)
    except OSError as error:
        raise system_problem(path, error, act="saved") from error
    except ValueError as error:
        # Such as a zero character in the name, which the system's calls do not take.
        raise PlanFileError(path, "no file can have such a name", act="saved") from error
