"""Colours of what is printed: contrast of two, the ink for a ground, and the map of light.

Source: W3C, Web Content Accessibility Guidelines 2.2, relative luminance and contrast ratio;
1.4.3 asks 4.5:1 of text, 1.4.11 asks 3:1 of lines. The better of black and white has at least
√21 = 4.58:1 on any colour, because their two ratios multiply to 21.

Light is printed in cividis (J. R. Nuñez, C. R. Anderton, R. S. Renslow 2018, PLoS ONE 13,
e0199239): even steps of lightness for every kind of colour vision, and on a grey printer too.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from typing import Final

import numpy as np
import numpy.typing as npt

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


# -- the map of light --------------------------------------------------------------------

_STOPS: Final = (
    "00204d 00265a 002c69 00306f 06366e 1f3c6d 2d426c 38486b 414d6b 4a536b 52596c "
    "595f6d 61646f 686a71 6f7073 767676 7d7c78 848179 8b8779 938e78 9b9477 a39a76 "
    "aca174 b4a872 bcaf6f c5b56c cebc68 d7c463 e0cb5e e9d358 f2da50 fbe248 ffea46"
)


@cache
def colour_table() -> npt.NDArray[np.uint8]:
    """256 colours (red, green, blue) of the map of light, dark to bright."""
    stops = np.array([list(bytes.fromhex(stop)) for stop in _STOPS.split()], dtype=float)
    at, every = np.linspace(0, 255, len(stops)).round(), np.arange(256)
    channels = [np.interp(every, at, stops[:, channel]) for channel in range(3)]
    table = np.stack(channels, axis=1).round().astype(np.uint8)
    table.setflags(write=False)
    return table
