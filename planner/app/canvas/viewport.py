"""Viewport: where a point of the space falls on the screen, and back."""

from __future__ import annotations

from dataclasses import dataclass, replace

from PySide6.QtCore import QPointF, QRectF

Bounds = tuple[float, float, float, float]

MIN_SCALE = 20.0
MAX_SCALE = 20000.0


@dataclass(frozen=True)
class Viewport:
    """A uniform scale and a shift; the second world axis points up, pixels point down.

    ``scale`` in pixels per metre; ``left`` and ``bottom`` are the pixel of the world's
    origin. Pixels are device independent.
    """

    scale: float = 400.0
    left: float = 0.0
    bottom: float = 0.0

    def to_pixel(self, u: float, v: float) -> QPointF:
        """Pixel of a world point in metres."""
        return QPointF(self.left + u * self.scale, self.bottom - v * self.scale)

    def to_world(self, pixel: QPointF) -> tuple[float, float]:
        """World point in metres under a pixel."""
        return (pixel.x() - self.left) / self.scale, (self.bottom - pixel.y()) / self.scale

    def to_rect(self, bounds: Bounds) -> QRectF:
        """Pixel rectangle of world bounds (u0, v0, u1, v1)."""
        return QRectF(self.to_pixel(bounds[0], bounds[3]), self.to_pixel(bounds[2], bounds[1]))

    @classmethod
    def fitted(cls, bounds: Bounds, area: QRectF) -> Viewport:
        """The largest scale that shows the bounds inside a pixel area, centred."""
        width, height = bounds[2] - bounds[0], bounds[3] - bounds[1]
        scale = min(area.width() / max(width, 1e-6), area.height() / max(height, 1e-6))
        scale = min(max(scale, MIN_SCALE), MAX_SCALE)
        centre = area.center()
        return cls(
            scale=scale,
            left=centre.x() - scale * (bounds[0] + bounds[2]) / 2,
            bottom=centre.y() + scale * (bounds[1] + bounds[3]) / 2,
        )

    def zoomed(self, factor: float, about: QPointF) -> Viewport:
        """Scaled by a factor; the world point under ``about`` stays where it is."""
        u, v = self.to_world(about)
        scale = min(max(self.scale * factor, MIN_SCALE), MAX_SCALE)
        return Viewport(scale, about.x() - u * scale, about.y() + v * scale)

    def panned(self, by: QPointF) -> Viewport:
        """Shifted by so many pixels."""
        return replace(self, left=self.left + by.x(), bottom=self.bottom + by.y())
