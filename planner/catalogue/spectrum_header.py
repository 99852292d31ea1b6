"""Which column of a table of light is the wavelength, and what the other one counts."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from typing import Final

from planner.plan.spectrum import SpectrumQuantity


class SpectrumError(ValueError):
    """A file that is not a spectrum; the message is a sentence for people."""


def shortened(text: str) -> str:
    """A cell as a message quotes it."""
    return text if len(text) <= 40 else text[:39] + "…"


@dataclass(frozen=True)
class Columns:
    """Where wavelength and value stand (from 0), what the value counts, and remarks on it."""

    wavelength: int
    value: int
    quantity: SpectrumQuantity
    notes: tuple[str, ...] = ()


# Headers are compared after NFKC and casefold, so that both micro signs are "μ".
_WAVELENGTH: Final = re.compile(
    r"wave\s*-?_?length|wellenl|longueur|longitud de onda|lunghezza|golflengte|våglängd"
    r"|bølgel|lambda|λ|\bwl\b"
)
_NANOMETRES: Final = re.compile(r"^\W*nm\W*$|[(\[]\s*nm\s*[)\]]|nanomet")
_HAS_NM: Final = re.compile(r"(?<![a-z])nm(?![a-z])|nanomet")
_MICROMETRES: Final = re.compile(r"(?<![a-zμ])[uμ]m(?![a-z])|micromet|mikromet|micron")
_OTHER_UNIT: Final = re.compile(
    r"[(\[/]\s*å|angstr|ångstr|(?<![a-z])ev(?![a-z])|cm\s*\^?[-−]\s*1|1/cm|wave\s*number"
    r"|frequency|(?<![a-z])[tp]?hz(?![a-z])"
)
_PHOTONS: Final = re.compile(
    r"photon|foton|quanta\b|quantum|quanten|[uμ]mol|(?<![a-z])mol(?![a-z])"
    r"|(?<![a-z])(?:ppfd?|s?pfd)(?![a-z])"
)
_POWER: Final = re.compile(
    r"power|watt|radian|leistung|strahlung|strahldichte|bestrahl|puissance|potencia|potenza"
    r"|energ|(?<![a-z])[munkμ]?w(?![a-z])|(?<![a-z])[munkμ]?wm"
)


def find_columns(
    header: tuple[str, ...] | None, width: int, quantity: SpectrumQuantity | None
) -> Columns:
    """Choose the columns by their names; ``quantity`` is what the user says it is.

    Raises
    ------
    SpectrumError
        If the names leave it open, or the unit of the wavelengths is not nm.
    """
    if header is None:
        if width != 2:
            raise SpectrumError(
                f"The table has {width} columns and no line of names above them. Put a line "
                "like 'wavelength (nm);power (W/nm)' first, or keep two columns. If the numbers "
                "have a decimal comma, put a semicolon or tab between the columns."
            )
        return _unclear(0, 1, quantity, "The table has no column names")
    names = [unicodedata.normalize("NFKC", name).casefold() for name in header]
    wavelength = _wavelength_column(names)
    _check_unit(header[wavelength], names[wavelength])
    others = [i for i in range(len(names)) if i != wavelength]
    kinds = {
        SpectrumQuantity.PHOTONS: [i for i in others if _PHOTONS.search(names[i])],
        SpectrumQuantity.POWER: [i for i in others if _counts_power(names[i])],
    }
    if quantity is not None and not kinds[quantity] and len(others) == 1:
        return Columns(wavelength, others[0], quantity)
    wanted = quantity or next((kind for kind in kinds if kinds[kind]), None)
    if wanted is None and len(others) == 1:
        return _unclear(
            wavelength,
            others[0],
            None,
            f"The column '{shortened(header[others[0]])}' does not say its kind",
        )
    found = kinds[wanted] if wanted is not None else []
    if len(found) != 1 or wanted is None:
        raise SpectrumError(_choice_sentence(header, found or others))
    notes: tuple[str, ...] = ()
    if quantity is None and all(kinds.values()):
        notes = (f"The table holds photons and power; '{shortened(header[found[0]])}' was taken.",)
    return Columns(wavelength, found[0], wanted, notes)


def _counts_power(name: str) -> bool:
    return _POWER.search(name) is not None and _PHOTONS.search(name) is None


def _unclear(
    wavelength: int, value: int, quantity: SpectrumQuantity | None, reason: str
) -> Columns:
    if quantity is not None:
        return Columns(wavelength, value, quantity)
    note = (
        f"{reason}: the values were read as power per nm, the usual kind. If they count photons, "
        "say so when you open the file."
    )
    return Columns(wavelength, value, SpectrumQuantity.POWER, (note,))


def _choice_sentence(header: tuple[str, ...], candidates: list[int]) -> str:
    if not candidates:
        return (
            f"Beside '{shortened(header[0])}' there is no column of values. Name one "
            "'power (W/nm)' or 'photons (µmol/s/nm)'."
        )
    names = " and ".join(f"'{shortened(header[i])}'" for i in candidates[:4])
    return (
        f"It is not clear which column to read: {names}. Keep one beside the wavelength, or name "
        "it 'power (W/nm)' or 'photons (µmol/s/nm)'."
    )


def _check_unit(written: str, name: str) -> None:
    if _HAS_NM.search(name):
        return
    if _MICROMETRES.search(name):
        raise SpectrumError(
            f"The column '{shortened(written)}' is in micrometres. The wavelengths must be in "
            "nanometres: multiply them by 1000 and name the column 'wavelength (nm)'."
        )
    if _OTHER_UNIT.search(name):
        raise SpectrumError(
            f"The column '{shortened(written)}' is not in nanometres. Convert it, and name "
            "the column 'wavelength (nm)'."
        )


def _wavelength_column(names: list[str]) -> int:
    for pattern in (_WAVELENGTH, _NANOMETRES):
        found = [i for i, name in enumerate(names) if pattern.search(name)]
        if found:
            return found[0]
    return 0
