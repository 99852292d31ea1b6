"""``python -m planner lamp FILE``: look at a photometric file, and keep it as an own lamp."""

# ruff: noqa: PLC0415 - importing late is what keeps the start quick

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from planner.catalogue.lamp_files.photometry import Photometry


class LampCommandError(Exception):
    """What was asked of a lamp file cannot be done; the message is the sentence to print."""


def add_lamp_command(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    parser.add_argument("file", metavar="FILE", type=Path, help="IES LM-63 or EULUMDAT file")
    parser.add_argument("--lm63", metavar="OUT", type=Path, help="write it back as LM-63-2019")
    parser.add_argument("--save-as", metavar="NAME", help="keep it among your own lamps")
    flux = parser.add_mutually_exclusive_group()
    flux.add_argument("--ppf", type=float, metavar="UMOL", help="photon flux in µmol/s")
    flux.add_argument(
        "--spectrum", metavar="KEY", help="compute the photon flux from the lumens and a spectrum"
    )
    parser.add_argument("--watts", type=float, metavar="W", help="electrical power, if not in file")
    parser.add_argument(
        "--quarter-turns", type=int, default=0, choices=(0, 1, 2, 3), help="turn about the vertical"
    )


def run_lamp_command(asked: argparse.Namespace) -> int:
    """Print what the file says; write or keep it where asked. Returns 0.

    Raises
    ------
    LampCommandError
        With one sentence, for anything that cannot be done.
    """
    from planner.catalogue.lamp_files.convert import summary
    from planner.catalogue.lamp_files.photometry import LampFileError
    from planner.catalogue.lamp_files.reading import read_lamp_file

    try:
        photometry = read_lamp_file(asked.file)
    except LampFileError as error:
        raise LampCommandError(str(error)) from error
    lines = summary(photometry)
    width = max(len(what) for what, _ in lines)
    for what, value in lines:
        print(f"{what:<{width}}  {value}")
    for warning in photometry.warnings:
        print(f"Note: {warning}")
    if asked.lm63 is not None:
        _write_back(photometry, asked.lm63)
    if asked.save_as:
        _keep(photometry, asked)
    return 0


def _write_back(photometry: Photometry, path: Path) -> None:
    from planner.catalogue.lamp_files.lm63_write import write_lm63
    from planner.catalogue.lamp_files.photometry import LampFileError

    try:
        write_lm63(photometry, path)
    except (LampFileError, OSError) as error:
        raise LampCommandError(f"'{path}' could not be written: {error}") from error
    print(f"Wrote {path}")


def _keep(photometry: Photometry, asked: argparse.Namespace) -> None:
    from pydantic import ValidationError

    from planner.catalogue.lamp_files.convert import to_lamp_model
    from planner.catalogue.lamp_files.photometry import LampFileError
    from planner.catalogue.library import CatalogueError, load_catalogue, new_key, save_lamp
    from planner.plan.refusal import refusals

    if asked.ppf is None and asked.spectrum is None:
        raise LampCommandError(
            "The file tells how the light is spread, not how many photons there are; give "
            "--ppf, or --spectrum to compute them from the lumens."
        )
    catalogue = load_catalogue()
    try:
        model = to_lamp_model(
            photometry,
            key=new_key(asked.save_as, {lamp.key for lamp in catalogue.lamps}),
            name=asked.save_as,
            ppf=asked.ppf,
            lumens_per_umol=None if asked.spectrum is None else _lumens_per_umol(asked.spectrum),
            watts=asked.watts,
            quarter_turns=asked.quarter_turns,
            source=f"Lamp file {asked.file.name}",
        )
        save_lamp(model)
    except ValidationError as error:
        raise LampCommandError(" ".join(refusals(error))) from error
    except (LampFileError, CatalogueError, ValueError) as error:
        raise LampCommandError(str(error)) from error
    print(f"Kept as own lamp '{model.name}': {model.ppf:.0f} µmol/s, {model.watts:.0f} W")


def _lumens_per_umol(key: str) -> float:
    from planner.catalogue.spectra import built_in_spectra
    from planner.metrics.spectra import lux_per_umol

    spectra = {spectrum.key: spectrum for spectrum in built_in_spectra()}
    if key not in spectra:
        raise LampCommandError(f"There is no spectrum '{key}'; known are {', '.join(spectra)}.")
    return lux_per_umol(spectra[key])
