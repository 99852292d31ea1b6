"""Contrast of two colours, and which of black and white reads better on a third.

Source: W3C, Web Content Accessibility Guidelines 2.2, relative luminance and contrast ratio;
1.4.3 asks 4.5:1 of text, 1.4.11 asks 3:1 of lines. The better of black and white has at least
√21 = 4.58:1 on any colour, because their two ratios multiply to 21.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

Rgb = tuple[int, int, int]
BLACK: Final[Rgb] = (0, 0, 0)
WHITE: Final[Rgb] = (255, 255, 255)


def luminance(rgb: Sequence[float]) -> float:
    """Relative luminance, 0 to 1, of sRGB channels from 0 to 255; more than three are ignored."""
    parts = [float(channel) / 255 for channel in rgb[:3]]
    red, green, blue = (
        part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: Sequence[float], other: Sequence[float]) -> float:
    """Contrast ratio of two colours, 1 to 21."""
    first, second = sorted((luminance(one), luminance(other)))
    return (second + 0.05) / (first + 0.05)


def ink_on(ground: Sequence[float]) -> Rgb:
    """Black or white, whichever reads better on a colour."""
    return max((BLACK, WHITE), key=lambda ink: contrast(ink, ground))
