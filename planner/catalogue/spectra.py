"""Spectra to choose from: the generic ones that ship, and the user's own from a file."""

from __future__ import annotations

from collections.abc import Collection
from pathlib import Path
from typing import Final, Literal

from planner.catalogue.library import new_key
from planner.catalogue.spectrum_csv import (
    MAX_FILE_BYTES,
    SpectrumError,
    SpectrumReading,
    parse_spectrum,
)
from planner.files.disk import reason_of
from planner.folders import resource_path
from planner.language import data as shipped
from planner.plan.quantity import Key, Name, Text, Value
from planner.plan.spectrum import Spectrum, SpectrumQuantity

__all__ = ["SpectrumError", "SpectrumReading", "built_in_spectra", "read_spectrum_file"]

FOLDER: Final = "catalogue/spectra"


class _Entry(Value):
    key: Key
    name: Name
    file: Text
    is_model: bool
    source: Text
    note: Text = ""


class _SpectrumBook(Value):
    format: Literal[1]
    about: Text
    spectra: tuple[_Entry, ...]


def built_in_spectra() -> tuple[Spectrum, ...]:
    """Read the generic spectra that ship with the program, in the order they are offered."""
    book = _SpectrumBook.model_validate_json(shipped(f"{FOLDER}/index.json"))
    return tuple(_read_built_in(entry) for entry in book.spectra)


def _read_built_in(entry: _Entry) -> Spectrum:
    reading = parse_spectrum(
        resource_path(f"{FOLDER}/{entry.file}").read_bytes(),
        key=entry.key,
        name=entry.name,
        source=entry.source,
    )
    return reading.spectrum.model_copy(update={"is_model": entry.is_model, "note": entry.note})


def read_spectrum_file(
    path: Path, *, quantity: SpectrumQuantity | None = None, taken: Collection[str] = ()
) -> SpectrumReading:
    """Read a spectrum of the user's own; its name is the file's, its key none of ``taken``.

    ``quantity`` overrides what the header says the values count.

    Raises
    ------
    SpectrumError
        If the file cannot be read or is no spectrum; the message is a sentence.
    """
    try:
        with path.open("rb") as stream:
            # one byte more than allowed is enough to know
            data = stream.read(MAX_FILE_BYTES + 1)
    except OSError as error:
        raise SpectrumError(f"'{path.name}' could not be read: {reason_of(error)}.") from error
    name = path.stem.strip()[:120] or "Spectrum"
    return parse_spectrum(
        data,
        key=new_key(name, taken, fallback="spectrum"),
        name=name,
        source=f"Read from the file '{path.name}'.",
        quantity=quantity,
    )
