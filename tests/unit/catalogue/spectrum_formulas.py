"""The formulas behind the spectra that ship, apart from the program.

    python3 tests/unit/catalogue/spectrum_formulas.py

writes the tables anew; ``test_spectra.py`` compares them with what ships. The illuminants
follow their published definitions. The lamps are models: Gaussians with rounded
parameters, chosen so that light and photons of a kind of lamp come out as is typical.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from pathlib import Path

FOLDER = Path(__file__).parents[3] / "resources" / "catalogue" / "spectra"

Formula = Callable[[float], float]
Line = tuple[float, float, float, float]
"""Peak height, peak wavelength, standard deviation below and above the peak in nm."""

# CIE daylight components S0, S1, S2 from 360 to 830 nm by 10 nm (CIE 015:2018, table 6;
# D. B. Judd, D. L. MacAdam, G. Wyszecki (1964), J. Opt. Soc. Am. 54, 1031-1040).
DAYLIGHT_S0 = (
    *(61.5, 68.8, 63.4, 65.8, 94.8, 104.8, 105.9, 96.8, 113.9, 125.6, 125.5, 121.3),
    *(121.3, 113.5, 113.1, 110.8, 106.5, 108.8, 105.3, 104.4, 100.0, 96.0, 95.1, 89.1),
    *(90.5, 90.3, 88.4, 84.0, 85.1, 81.9, 82.6, 84.9, 81.3, 71.9, 74.3, 76.4),
    *(63.3, 71.7, 77.0, 65.2, 47.7, 68.6, 65.0, 66.0, 61.0, 53.3, 58.9, 61.9),
)
DAYLIGHT_S1 = (
    *(38.0, 42.4, 38.5, 35.0, 43.4, 46.3, 43.9, 37.1, 36.7, 35.9, 32.6, 27.9),
    *(24.3, 20.1, 16.2, 13.2, 8.6, 6.1, 4.2, 1.9, 0.0, -1.6, -3.5, -3.5),
    *(-5.8, -7.2, -8.6, -9.5, -10.9, -10.7, -12.0, -14.0, -13.6, -12.0, -13.3, -12.9),
    *(-10.6, -11.6, -12.2, -10.2, -7.8, -11.2, -10.4, -10.6, -9.7, -8.3, -9.3, -9.8),
)
DAYLIGHT_S2 = (
    *(5.3, 6.1, 3.0, 1.2, -1.1, -0.5, -0.7, -1.2, -2.6, -2.9, -2.8, -2.6),
    *(-2.6, -1.8, -1.5, -1.3, -1.2, -1.0, -0.5, -0.3, 0.0, 0.2, 0.5, 2.1),
    *(3.2, 4.1, 4.7, 5.1, 6.7, 7.3, 8.6, 9.8, 10.2, 8.3, 9.6, 8.5),
    *(7.0, 7.6, 8.0, 6.7, 5.2, 7.4, 6.8, 7.0, 6.4, 5.5, 6.1, 6.5),
)


def illuminant_a(nm: float) -> float:
    """CIE standard illuminant A: Planck's law at 2848 K with c₂ = 1.435e-2 m K, 100 at 560."""
    bend = 1.435e7 / 2848
    return 100 * (560 / nm) ** 5 * math.expm1(bend / 560) / math.expm1(bend / nm)


def daylight(kelvin: float) -> Formula:
    """CIE daylight of a correlated colour temperature from 4000 to 7000 K (CIE 015:2018)."""
    x = -4.6070e9 / kelvin**3 + 2.9678e6 / kelvin**2 + 0.09911e3 / kelvin + 0.244063
    y = -3.0 * x**2 + 2.870 * x - 0.275
    m = 0.0241 + 0.2562 * x - 0.7341 * y
    m1 = round((-1.3515 - 1.7703 * x + 5.9114 * y) / m, 3)
    m2 = round((0.0300 - 31.4424 * x + 30.0717 * y) / m, 3)
    components = zip(DAYLIGHT_S0, DAYLIGHT_S1, DAYLIGHT_S2, strict=True)
    table = [s0 + m1 * s1 + m2 * s2 for s0, s1, s2 in components]

    def at(nm: float) -> float:
        left = min(int((nm - 360) // 10), len(table) - 2)
        share = (nm - 360) / 10 - left
        return (1 - share) * table[left] + share * table[left + 1]

    return at


def gaussians(*lines: Line) -> Formula:
    """A sum of Gaussians with their own width on each side, scaled to 100 at the top."""

    def raw(nm: float) -> float:
        total = 0.0
        for height, peak, below, above in lines:
            width = below if nm < peak else above
            total += height * math.exp(-0.5 * ((nm - peak) / width) ** 2)
        return total

    top = max(raw(nm) for nm in range(360, 831))
    return lambda nm: 100 * raw(nm) / top


NEUTRAL_PHOSPHOR: Line = (0.88, 590, 76, 60)

SPECTRA: dict[str, tuple[Formula, int, int, int]] = {
    # name: formula, first, last and step in nm
    "equal-energy": (lambda nm: 100.0, 360, 830, 5),
    "daylight-d65": (daylight(6500 * 1.4388 / 1.4380), 360, 830, 5),
    "incandescent-a": (illuminant_a, 360, 830, 5),
    "white-led-warm": (gaussians((0.44, 451, 9.5, 12), (0.97, 605, 67, 56)), 380, 800, 2),
    "white-led-neutral": (gaussians((0.81, 448, 9, 9), NEUTRAL_PHOSPHOR), 380, 800, 2),
    "white-led-cool": (gaussians((0.89, 452, 11, 11.5), (0.5, 553, 48, 71)), 380, 800, 2),
    "white-led-with-red": (
        gaussians((0.81, 448, 9, 9), NEUTRAL_PHOSPHOR, (2.0, 660, 8.5, 8.5)),
        *(380, 800, 2),
    ),
    "red-blue-led": (gaussians((0.35, 450, 8.5, 8.5), (1.0, 660, 8.5, 8.5)), 380, 800, 2),
    "blue-led": (gaussians((1.0, 450, 8.5, 8.5)), 380, 800, 2),
    "red-led": (gaussians((1.0, 660, 8.5, 8.5)), 380, 800, 2),
    "high-pressure-sodium": (
        gaussians(
            *((0.05, 449, 4, 4), (0.07, 467, 4, 4), (0.18, 498, 3, 3), (0.05, 515, 3, 3)),
            *((0.76, 569, 3, 3), (0.85, 583, 4, 3), (1.0, 597, 4, 6), (0.28, 616, 4, 4)),
            *((0.22, 595, 22, 40), (0.03, 560, 90, 160), (0.1, 768, 5, 5), (0.4, 819, 4, 4)),
        ),
        *(380, 830, 2),
    ),
}


def table(name: str) -> list[tuple[int, float]]:
    """Wavelength in nm and relative power, as written: four decimals."""
    formula, first, last, step = SPECTRA[name]
    return [(nm, round(formula(nm), 4)) for nm in range(first, last + 1, step)]


def main() -> None:
    FOLDER.mkdir(parents=True, exist_ok=True)
    for name in SPECTRA:
        lines = [f"{nm},{value:g}\n" for nm, value in table(name)]
        text = "wavelength (nm),relative power per nm\n" + "".join(lines)
        (FOLDER / f"{name}.csv").write_text(text, "utf-8", newline="\n")


if __name__ == "__main__":
    main()
