"""Contrast by WCAG 2.2, and the contours of every colour map against it."""

from __future__ import annotations

import pytest

from planner.app.canvas.light_layer import contour_colours
from planner.app.display import COLOUR_MAPS
from planner.app.plots import colours
from planner.reports.contrast import contrast, luminance


@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    # White on black is 21 and #767676 on white the last grey of 4.54:1 (W3C, understanding 1.4.3).
    [((255, 255, 255), (0, 0, 0), 21.0), ((0x76, 0x76, 0x76), (255, 255, 255), 4.54),
     ((0x77, 0x77, 0x77), (255, 255, 255), 4.48), ((255, 0, 0), (255, 255, 255), 4.0)],
)  # fmt: skip
def test_contrast_of_published_pairs(
    one: tuple[int, int, int], other: tuple[int, int, int], ratio: float
) -> None:
    assert contrast(one, other) == pytest.approx(ratio, abs=0.005)
    assert contrast(other, one) == contrast(one, other)


def test_green_is_the_brightest_of_the_primaries() -> None:
    assert luminance((0, 255, 0)) == pytest.approx(0.7152)


@pytest.mark.parametrize("wash", [False, True])
@pytest.mark.parametrize("name", COLOUR_MAPS)
def test_contours_and_their_labels_read_on_every_colour(name: str, wash: bool) -> None:
    """WCAG 2.2: 3:1 for lines (1.4.11) and 4.5:1 for text (1.4.3), on the halo behind them."""
    table = colours.table(name)
    if wash:
        table = colours.washed_table(name, (0.0, 600.0), (150.0, 400.0))
    for entry in table.tolist():
        line, ink, halo = contour_colours(entry)
        behind = (halo.red(), halo.green(), halo.blue())
        share = line.alphaF()
        drawn = [
            share * part + (1 - share) * ground
            for part, ground in zip((line.red(), line.green(), line.blue()), behind, strict=True)
        ]
        assert contrast(drawn, behind) >= 3.0
        assert contrast((ink.red(), ink.green(), ink.blue()), behind) >= 4.5
