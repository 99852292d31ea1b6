"""Spectra from text tables: wavelength in one column, power or photons in another.

Reads what spectrometers and data sheets give: comma, semicolon or tab between columns, a
decimal point or comma, a byte-order mark, lines of remarks before the table, further
columns beside the two. What could be meant in two ways is refused with its line, or, for
the kind of quantity, said in ``SpectrumReading.notes``.
"""

from __future__ import annotations

import csv
import re
import unicodedata
from dataclasses import dataclass
from typing import Final

from pydantic import ValidationError

from planner.plan.spectrum import (
    LARGEST_VALUE,
    MAX_SAMPLES,
    MAX_WAVELENGTH_NM,
    MIN_SAMPLES,
    MIN_WAVELENGTH_NM,
    Spectrum,
    SpectrumQuantity,
    doubts,
)
from planner.units import capital

__all__ = ["SpectrumError", "SpectrumReading", "parse_spectrum"]

MAX_FILE_BYTES: Final = 4_000_000

_EXAMPLE: Final = "'450,0.82' or '450;0,82'"
_MINUS: Final = str.maketrans({"−": "-", "–": "-"})
_NUMBER: Final = re.compile(r"[+-]?(?:[0-9]+(?:[.,][0-9]*)?|[.,][0-9]+)(?:[eE][+-]?[0-9]{1,4})?")
_GROUPED: Final = re.compile(r"[1-9][0-9]{0,2}[.,][0-9]{3}")
_NO_NUMBER_WORDS: Final = {"nan", "inf", "infinity", "na", "n/a", "null", "none", "#n/a", "#num!"}
_DATA_LIKE: Final = re.compile(r"""\s*["']?[+−-]?[.,]?[0-9]""")


@dataclass(frozen=True)
class SpectrumReading:
    """A spectrum read from a file, and sentences on how it was understood."""

    spectrum: Spectrum
    notes: tuple[str, ...] = ()


@dataclass(frozen=True)
class _Row:
    line: int
    cells: tuple[str, ...]


def parse_spectrum(
    data: bytes,
    *,
    key: str,
    name: str,
    source: str = "",
    quantity: SpectrumQuantity | None = None,
) -> SpectrumReading:
    """Read a table of wavelengths in nm and values per nm.

    ``quantity`` says what the values count where the header does not, or where the table
    holds both; without it a column of unclear name is taken as power, and a note says so.

    Raises
    ------
    SpectrumError
        If the text is no such table; the message names the line and what would be right.
    """
    rows = _split_rows(_decode(data))
    start = next((i for i, row in enumerate(rows) if _begins_data(row)), None)
    if start is None:
        raise SpectrumError(
            "There is no line of numbers in the file. Each line should hold a wavelength in nm "
            f"and a value, such as {_EXAMPLE}, with a comma, semicolon or tab between them."
        )
    header = _header(rows[start - 1]) if start else None
    table = rows[start:]
    _check_widths(table, header)
    columns = find_columns(header, len(table[0].cells), quantity)
    mark = _decimal_mark(table, (columns.wavelength, columns.value))
    _refuse_thousands(table, columns.value)
    wavelengths = [_number(row, columns.wavelength, mark) for row in table]
    values = [_number(row, columns.value, mark) for row in table]
    _check_wavelengths(table, wavelengths)
    _check_values(table, values)
    if wavelengths[0] > wavelengths[-1]:
        wavelengths.reverse()
        values.reverse()
    try:
        spectrum = Spectrum(
            key=key,
            name=name,
            quantity=columns.quantity,
            wavelengths_nm=tuple(wavelengths),
            values=tuple(values),
            source=source,
        )
    except ValidationError as error:
        raise SpectrumError(_sentence(error)) from error
    return SpectrumReading(spectrum, columns.notes + doubts(spectrum))


def _sentence(error: ValidationError) -> str:
    """The first finding of the value's own check, as a sentence that begins with a capital."""
    first = error.errors(include_url=False)[0]
    text = str(first["msg"]).removeprefix("Value error, ")
    if first["type"] != "value_error":
        text = f"{'.'.join(str(part) for part in first['loc'])}: {text}."
    return capital(text)


def _decode(data: bytes) -> str:
    if len(data) > MAX_FILE_BYTES:
        raise SpectrumError(
            f"The file is larger than {MAX_FILE_BYTES // 1_000_000} MB, far too large for one "
            "spectrum."
        )
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        try:
            text = data.decode("utf-16")
        except UnicodeDecodeError as error:
            raise SpectrumError(
                "The file begins like UTF-16 text but is damaged; save it again as UTF-8."
            ) from error
    else:
        try:
            text = data.decode("utf-8-sig")
        except UnicodeDecodeError:
            # what older instruments and spreadsheets write; it reads any byte
            text = data.decode("latin-1")
    if "\0" in text:
        raise SpectrumError(
            "The file is not text. Export the spectrum as CSV: lines of wavelength and value."
        )
    return text


def _split_rows(text: str) -> list[_Row]:
    """Lines that say something, with their numbers, cut into cells."""
    lines = [
        (number, line)
        for number, line in enumerate(re.split(r"\r\n|\r|\n", text), start=1)
        if line.strip(" \t;,\ufeff") and not line.lstrip().startswith("#")
    ]
    data = [line for _, line in lines if _DATA_LIKE.match(line)]
    delimiter = ","
    for candidate in (";", "\t"):
        if 2 * sum(candidate in line for line in data) > len(data):
            delimiter = candidate
            break
    rows = []
    for number, line in lines:
        try:
            cells = next(csv.reader([line], delimiter=delimiter, skipinitialspace=True), [])
        except csv.Error as error:
            raise SpectrumError(f"Line {number} cannot be cut into columns: {error}.") from error
        while cells and not cells[-1].strip():
            cells.pop()
        rows.append(_Row(number, tuple(cell.strip() for cell in cells)))
    return [row for row in rows if row.cells]


def _is_number(cell: str) -> bool:
    return _NUMBER.fullmatch(cell.translate(_MINUS)) is not None


def _begins_data(row: _Row) -> bool:
    """Whether the table has begun: the line leads with a number, or with one that is missing."""
    first = row.cells[0]
    if _is_number(first) or first.lower() in _NO_NUMBER_WORDS:
        return True
    return not first and any(_is_number(cell) for cell in row.cells)


def _header(row: _Row) -> tuple[str, ...] | None:
    """The line above the table if it names columns; a title or a remark does not."""
    if len(row.cells) < 2 or any(_is_number(cell) for cell in row.cells):
        return None
    return row.cells


def _check_widths(table: list[_Row], header: tuple[str, ...] | None) -> None:
    first = table[0]
    if len(first.cells) < 2 and header is None:
        raise SpectrumError(
            f"Line {first.line} has one column. A wavelength in nm and a value are needed, such "
            f"as {_EXAMPLE}, with a comma, semicolon or tab between them."
        )
    width = len(header) if header is not None else len(first.cells)
    for row in table:
        if len(row.cells) > width:
            raise SpectrumError(
                f"Line {row.line} has {len(row.cells)} columns where {width} were expected. If "
                "its numbers have a decimal comma, put a semicolon or tab between the columns."
            )
    if len(table) < MIN_SAMPLES:
        raise SpectrumError(
            f"The file holds {len(table)} line{'s' if len(table) > 1 else ''} of numbers; a "
            f"spectrum needs at least {MIN_SAMPLES}."
        )
    if len(table) > MAX_SAMPLES:
        raise SpectrumError(
            f"The file holds {len(table)} lines of numbers; at most {MAX_SAMPLES} are read. "
            "Keep every tenth, or only 300 to 800 nm."
        )


def _cell(row: _Row, column: int) -> str:
    return row.cells[column].translate(_MINUS) if column < len(row.cells) else ""


def _decimal_mark(table: list[_Row], columns: tuple[int, ...]) -> str:
    """The decimal mark of the two columns; both marks in one file are refused."""
    seen: dict[str, int] = {}
    for row in table:
        for column in columns:
            for mark in ".,":
                if mark in _cell(row, column):
                    seen.setdefault(mark, row.line)
    if len(seen) == 2:
        raise SpectrumError(
            f"Line {seen['.']} has a decimal point and line {seen[',']} a comma. Use one of them "
            "throughout, and no mark between thousands."
        )
    return next(iter(seen), ".")


def _refuse_thousands(table: list[_Row], column: int) -> None:
    """Refuse a column like 980, 999, 1.002, 1.015: its mark may separate thousands."""
    cells = [(row.line, _cell(row, column)) for row in table]
    marked = [(line, cell) for line, cell in cells if "." in cell or "," in cell]
    if not marked or not all(_GROUPED.fullmatch(cell) for _, cell in marked):
        return
    whole = [cell for _, cell in cells if cell.isascii() and cell.isdigit()]
    if any(len(cell) >= 3 for cell in whole):
        line, cell = marked[0]
        raise SpectrumError(
            f"Line {line}: the mark in '{cell}' may be a decimal mark or one between thousands. "
            "Write the values without a mark between thousands."
        )


def _number(row: _Row, column: int, mark: str) -> float:
    cell = _cell(row, column)
    if not cell:
        raise SpectrumError(
            f"Line {row.line} has nothing in column {column + 1}; write a number, or remove the "
            "line."
        )
    if _NUMBER.fullmatch(cell) is None:
        raise SpectrumError(
            f"Line {row.line}: '{shortened(cell)}' is not a number such as 0.82, 0,82 or 8.2e-1."
        )
    return float(cell.replace(mark, ".") if mark == "," else cell)


def _check_wavelengths(table: list[_Row], wavelengths: list[float]) -> None:
    if 0 < max(wavelengths) <= 20:
        raise SpectrumError(
            f"The wavelengths end at {max(wavelengths):g}, as in micrometres. They must be in "
            "nanometres: multiply them by 1000."
        )
    if min(wavelengths) > 1500 and max(wavelengths) <= 15_000:
        raise SpectrumError(
            f"The wavelengths begin at {min(wavelengths):g}, as in ångström. They must be in "
            "nanometres: divide them by 10."
        )
    for row, nm in zip(table, wavelengths, strict=True):
        if not MIN_WAVELENGTH_NM <= nm <= MAX_WAVELENGTH_NM:
            raise SpectrumError(
                f"Line {row.line}: a wavelength of {nm:g} nm lies outside "
                f"{MIN_WAVELENGTH_NM:g} to {MAX_WAVELENGTH_NM:g} nm; visible light is 380 to "
                "780 nm."
            )
    lines: dict[float, int] = {}
    for row, nm in zip(table, wavelengths, strict=True):
        if nm in lines:
            raise SpectrumError(
                f"Lines {lines[nm]} and {row.line} both stand for {nm:g} nm; keep one of them."
            )
        lines[nm] = row.line
    rising = wavelengths[-1] > wavelengths[0]
    for index in range(1, len(wavelengths)):
        if (wavelengths[index] > wavelengths[index - 1]) is not rising:
            raise SpectrumError(
                f"Line {table[index].line}: {wavelengths[index]:g} nm stands after "
                f"{wavelengths[index - 1]:g} nm, out of order. Sort the lines by wavelength."
            )


def _check_values(table: list[_Row], values: list[float]) -> None:
    for row, value in zip(table, values, strict=True):
        if value < 0:
            raise SpectrumError(
                f"Line {row.line}: a value of {value:g} is below 0. Light cannot be negative; "
                "if it is the noise of a meter, write 0."
            )
        if value > LARGEST_VALUE:
            raise SpectrumError(
                f"Line {row.line}: {value:g} is larger than any spectrum ({LARGEST_VALUE:g})."
            )


# -- Which column of a table of light is the wavelength, and what the other one counts ---


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
