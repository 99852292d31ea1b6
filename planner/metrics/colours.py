"""What the wavebands of a map mean: the figures of its colours, and maps of them."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

import numpy as np
import numpy.typing as npt

from planner.plan.wavebands import FAR_RED

FloatArray = npt.NDArray[np.float64]
Bands = Mapping[str, FloatArray]
"""Flux density of each waveband of ``plan.wavebands``, in µmol m⁻² s⁻¹: cells (C,) or a map."""


def part_of(bands: Bands | None, inside: npt.NDArray[np.bool_]) -> Bands | None:
    """The cells (C,) of maps (ny, nx) that are inside; None where no colours are known."""
    return None if bands is None else {band: cells[inside] for band, cells in bands.items()}


def combined(
    each: Sequence[Bands | None], how: Callable[[list[FloatArray]], FloatArray]
) -> Bands | None:
    """One of several: of each waveband what ``how`` makes of them; None where one is not known."""
    known = [one for one in each if one is not None]
    if len(known) < len(each):
        return None
    return {band: how([one[band] for one in known]) for band in known[0]}


def coloured(ppfd: FloatArray, bands: Bands | None) -> dict[str, FloatArray]:
    """PPFD (any shape) and what is told of its colours, by the keys of their figures.

    ePPFD in µmol m⁻² s⁻¹, shares as fractions of 1: blue and red of PPFD, far-red of ePPFD; NaN
    where there is no light. Nothing but PPFD where no colours are known.
    """
    if bands is None:
        return {"mean": ppfd}
    extended = ppfd + bands[FAR_RED]
    with np.errstate(invalid="ignore", divide="ignore"):
        return {
            "mean": ppfd,
            "eppfd": extended,
            "blue_share": bands["blue"] / ppfd,
            "red_share": bands["red"] / ppfd,
            "far_red_share": bands[FAR_RED] / extended,
        }


def colour_figures(mean: float, areas: FloatArray, bands: Bands | None) -> dict[str, float]:
    """Figures of the colours of cells (C,) with their areas (C,); {} where none are known."""
    if bands is None or mean <= 0:
        return {}
    means = {band: np.array(np.average(cells, weights=areas)) for band, cells in bands.items()}
    found = coloured(np.array(mean), means)
    return {key: float(value) for key, value in found.items() if key != "mean"}
