"""Ways out of whatever is drawn: to the clipboard and to a file, as a picture, lines or numbers.

Charts and the drawings of a report share them; what a drawing cannot give it does not offer.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Final

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QPoint, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QAction, QColor, QGuiApplication, QImage, QPainter, QPixmap
from PySide6.QtWidgets import QMenu, QWidget

from planner.app.questions import Questions, write_bytes, write_picture
from planner.reports.drawings import Picture

Table = tuple[Sequence[str], Sequence[Sequence[str | float | None]]]
Paint = Callable[[QPainter, QRectF], None]
WayOut = tuple[str, Callable[[], None]]

_SHARPNESS: Final = 2
"""Pictures are saved with so many pixels for each on the screen."""
_DOTS_PER_MM: Final = 12
"""Of a drawing that counts in millimetres: 300 dpi."""
_LONGEST_NAME: Final = 60
_PICTURES: Final = "Pictures (*.png);;Drawings (*.svg)"
_TABLES: Final = ";;Tables (*.csv)"


class Exported:
    """What says how it is ``called``, and gives ``picture``, ``svg`` and, of numbers, ``table``."""

    def called(self) -> str:
        """What the file is called if nobody says otherwise."""
        raise NotImplementedError

    def picture(self) -> QImage:
        """It as a picture."""
        raise NotImplementedError

    def svg(self) -> bytes:
        """It as a drawing in SVG."""
        raise NotImplementedError

    def table(self) -> Table:
        """Headings and rows of its numbers; without headings there are none."""
        return (), ()

    def over(self) -> QWidget | None:
        """The widget that questions stand over."""
        return self if isinstance(self, QWidget) else None

    def ways_out(self) -> tuple[WayOut, ...]:
        """Each by the words of its entry in a menu."""
        found: list[WayOut] = [("Copy the picture", self.copy_picture)]
        if self.table()[0]:
            found.append(("Copy the numbers", self.copy_numbers))
        found.append(("Save as …", self.ask_and_save))
        return tuple(found)

    def menu(self) -> QMenu:
        """What can be done with it; the menu deletes itself when closed."""
        menu = QMenu(self.over())
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.fill(menu)
        return menu

    def fill(self, menu: QMenu) -> None:
        """Put the ways out into a menu."""
        for text, act in self.ways_out():
            action = QAction(text, menu)
            action.triggered.connect(lambda _checked=False, act=act: act())
            menu.addAction(action)

    def csv(self, delimiter: str = ",") -> str:
        """The numbers, always with a decimal point."""
        from planner.reports.exports import cell, table_text  # noqa: PLC0415 - brings the core

        headings, rows = self.table()
        lines = [[cell(value) for value in row] for row in rows]
        return table_text([cell(text) for text in headings], lines, delimiter)

    def copy_picture(self) -> None:
        """Put the picture on the clipboard."""
        QGuiApplication.clipboard().setImage(self.picture())

    def copy_numbers(self) -> None:
        """Put the numbers on the clipboard, tab-separated."""
        # As text: a QMimeData made here, left on the clipboard, ends the interpreter with a crash.
        QGuiApplication.clipboard().setText(self.csv("\t"))

    def save(self, path: Path) -> None:
        """Write it by the ending of the name; raises ``PlanFileError``."""
        ending = path.suffix.lower()
        if ending == ".svg":
            write_bytes(path, self.svg())
        elif ending == ".csv":
            write_bytes(path, self.csv().encode())
        else:
            write_picture(path, QPixmap.fromImage(self.picture()))

    def ask_and_save(self, questions: Questions | None = None) -> None:
        """Ask for a name and write it there."""
        questions = questions or Questions(self.over())
        name = re.sub(r"[^\w]+", "-", self.called().lower())[:_LONGEST_NAME].strip("-")
        filters = _PICTURES + _TABLES * bool(self.table()[0])
        questions.save_into("Save the drawing", Path(f"{name}.png"), filters, "drawing", self.save)


# -- painted widgets ------------------------------------------------------------------------


def _crisp(painter: QPainter) -> None:
    painter.setRenderHints(
        QPainter.RenderHint.Antialiasing
        | QPainter.RenderHint.TextAntialiasing
        | QPainter.RenderHint.SmoothPixmapTransform
    )


def painted(size: QSize, ground: QColor, paint: Paint) -> QImage:
    """What is painted on a ground, as a picture of twice its size on the screen."""
    image = QImage(size * _SHARPNESS, QImage.Format.Format_RGB32)
    image.setDevicePixelRatio(_SHARPNESS)
    image.fill(ground)
    painter = QPainter(image)
    _crisp(painter)
    paint(painter, QRectF(QRect(QPoint(), size)))
    painter.end()
    return image


def drawn(
    size: QSize, ground: QColor, paint: Paint, name: str, words: str, *, cut: bool = False
) -> bytes:
    """What is painted on a ground, as a drawing in SVG.

    With ``cut`` what ``paint`` clips is cut off in the file, too. Qt then goes on with a clip
    within another after it has been restored: ``paint`` has to set the outer one anew.
    """
    from PySide6.QtSvg import QSvgGenerator  # noqa: PLC0415 - only when asked

    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    version = QSvgGenerator.SvgVersion
    made = QSvgGenerator(version.Svg11 if cut else version.SvgTiny12)
    made.setOutputDevice(buffer)
    # Or letters would be laid out for another size than the lines about them.
    made.setResolution(round(QGuiApplication.primaryScreen().logicalDotsPerInch()))
    made.setSize(size)
    whole = QRect(0, 0, size.width(), size.height())
    made.setViewBox(whole)
    made.setTitle(name)
    made.setDescription(words)
    painter = QPainter(made)
    painter.fillRect(whole, ground)
    _crisp(painter)
    paint(painter, QRectF(whole))
    painter.end()
    return bytes(buffer.data().data())


# -- drawings of a report ---------------------------------------------------------------------


class DrawingOut(Exported):
    """A drawing of a report; ``name`` is what it is called."""

    def __init__(self, drawing: Picture, name: str, questions: Questions) -> None:
        self._drawing, self._name, self._questions = drawing, name, questions

    def called(self) -> str:
        return self._name

    def over(self) -> QWidget | None:
        return self._questions.parent

    def svg(self) -> bytes:
        return self._drawing.svg.encode()

    def picture(self) -> QImage:
        from PySide6.QtSvg import QSvgRenderer  # noqa: PLC0415 - only when asked

        wide, tall = (side * _DOTS_PER_MM for side in (self._drawing.width, self._drawing.height))
        image = QImage(QSize(round(wide), round(tall)), QImage.Format.Format_RGB32)
        image.fill(QColor("white"))
        painter = QPainter(image)
        _crisp(painter)
        QSvgRenderer(QByteArray(self.svg())).render(painter, QRectF(image.rect()))
        painter.end()
        return image

    def ask_and_save(self, questions: Questions | None = None) -> None:
        super().ask_and_save(questions or self._questions)
