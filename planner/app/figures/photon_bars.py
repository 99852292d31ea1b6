"""Where the photons went: one bar for each surface that took some."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QSizePolicy, QWidget

from planner.app import theme
from planner.estimate.result import Estimate, Share
from planner.metrics.figures import percent
from planner.plan.place import PlaceKind

LINE = 36
_Flag = Qt.AlignmentFlag


class PhotonBars(QWidget):
    """Label and per cent over a thin bar, in the order of the estimate."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.shares: tuple[Share, ...] = ()
        self._titles: tuple[str, ...] = ()
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName("Where the photons went")

    def show_shares(self, estimate: Estimate) -> None:
        """Show the shares of an estimate."""
        count = len(self.shares)
        self.shares = estimate.shares
        self._titles = tuple(share.place.title(estimate.plan) for share in self.shares)
        lines = [
            f"{title}: {percent(share.share)}"
            for title, share in zip(self._titles, self.shares, strict=True)
        ]
        self.setAccessibleDescription("; ".join(lines))
        if len(self.shares) != count:
            self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(200, LINE * max(len(self.shares), 1))

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        palette = self.palette()
        left, width = float(theme.HALF), self.width() - 2.0 * theme.HALF
        number_font = theme.tabular(self.font())
        metrics = self.fontMetrics()
        for line, share in enumerate(self.shares):
            top = line * LINE
            number = percent(share.share)
            number_width = metrics.horizontalAdvance(number) + theme.RHYTHM
            text = QRectF(left, top, width, LINE - 14)
            label = metrics.elidedText(
                self._titles[line], Qt.TextElideMode.ElideRight, int(width - number_width)
            )
            painter.setPen(palette.color(QPalette.ColorRole.WindowText))
            painter.setFont(self.font())
            painter.drawText(text, _Flag.AlignLeft | _Flag.AlignBottom, label)
            painter.setFont(number_font)
            painter.drawText(text, _Flag.AlignRight | _Flag.AlignBottom, number)
            self._bar(painter, QRectF(left, top + LINE - 12, width, 6), share)

    def _bar(self, painter: QPainter, track: QRectF, share: Share) -> None:
        palette = self.palette()
        painter.fillRect(track, palette.color(QPalette.ColorRole.Midlight))
        filled = QRectF(track)
        filled.setWidth(track.width() * min(max(share.share, 0.0), 1.0))
        wanted = share.place.kind is PlaceKind.CANOPY
        role = QPalette.ColorRole.Accent if wanted else QPalette.ColorRole.Dark
        painter.fillRect(filled, palette.color(role))
