"""Commands that need no window: board, report, lamp, sweep; and where answers are written.

``command_line`` lists them. Nothing heavy is imported before it is known to be needed.
"""

# ruff: noqa: PLC0415 - importing late is what keeps the start quick

from __future__ import annotations

import argparse
import os
import re
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final, TextIO

from planner.folders import NAME
from planner.language import inside
from planner.units import FLUX_UNIT, LengthUnit, capital

if TYPE_CHECKING:
    from planner.catalogue.lamp_files.photometry import Photometry
    from planner.estimate.result import EstimateOptions
    from planner.plan.plan import Plan


STANDARD_OUTPUT: Final = "-"
DEMO: Final = "demo"


class CommandError(Exception):
    """What was asked cannot be done; the message is the sentence to print."""


def program_name() -> str:
    """The program as it was called: by its installed name, or as a module of Python."""
    called = Path(sys.argv[0]).stem if sys.argv else ""
    return called if called.startswith(NAME) else "python -m planner"


def seed(text: str) -> int:
    """The seed of the random part as an option gives it."""
    if re.fullmatch(r"\d{1,9}", text.strip()):
        return int(text)
    raise argparse.ArgumentTypeError(f"'{text}' is not a seed; write a whole number from 0 up")


def add_estimate_options(parser: argparse.ArgumentParser) -> None:
    """How carefully the light is computed."""
    parser.add_argument("--quality", choices=("preview", "default", "fine"), default="default")
    parser.add_argument("--seed", type=seed, default=1, metavar="N", help="of the random part")


def estimate_options(asked: argparse.Namespace, **more: Any) -> EstimateOptions:
    """What ``add_estimate_options`` asked for."""
    from planner.estimate.result import EstimateOptions, Quality

    return EstimateOptions(quality=Quality(asked.quality), seed=asked.seed, **more)


# -- board -----------------------------------------------------------------------------


def add_board_options(parser: argparse.ArgumentParser) -> None:
    """The options of ``board``."""
    parser.add_argument("plan", metavar="PLAN")
    parser.add_argument("--out", required=True, metavar="FILE.pdf", help="write the board here")
    parser.add_argument("--paper", choices=("a4", "letter"), default="a4")
    parser.add_argument(
        "--survey", type=int, metavar="N", help="number of the plan's survey, counted from 1"
    )
    parser.add_argument("--unit", choices=("cm", "in"), default="cm", help="of the lengths written")


def board_file(plan: Plan, asked: argparse.Namespace) -> str:
    """Write the PDF and say what was written.

    Takes the holes of the survey asked for, of the plan's first, or, where it has none, the
    grid EN 12464-1 asks for.

    Raises
    ------
    ValueError
        If there is no such survey or the board is too large; the message is a sentence.
    CommandError
        If the file cannot be written.
    """
    from planner.reports.board import board_of_survey
    from planner.reports.build_sheet import board_of
    from planner.reports.sheet import Paper

    survey, whose = board_of(plan, asked.survey)
    data = board_of_survey(plan, survey, Paper(asked.paper), LengthUnit(asked.unit))
    path = Path(asked.out).resolve()
    write_output(str(path), data)
    holes = f"{len(survey.points)} holes {whose}"
    return f"Wrote {path} ({holes}; print at 100 %, without fitting)"


# -- report ----------------------------------------------------------------------------

PAGE_ENDINGS: Final = (".html", ".htm")


def add_report_command(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    parser.add_argument("plan", metavar="PLAN")
    parser.add_argument(
        "--out", required=True, metavar="FILE.pdf|FILE.html", help="write the report here"
    )
    parser.add_argument(
        "--sections",
        metavar="A,B",
        help="only these, in the report's own order: decision, plan, light, colours, figures, "
        "options, survey, budget, schedule, build (the build sheet), assumptions, cautions",
    )
    parser.add_argument("--paper", choices=("a4", "letter"), default="a4", help="of a PDF")
    parser.add_argument("--unit", choices=("cm", "in"), default="cm", help="of the lengths written")
    add_estimate_options(parser)


def need_report_name(out: str) -> None:
    """Refuse a name that does not say whether a PDF or a page is wanted."""
    if Path(out).suffix.lower() not in {".pdf", *PAGE_ENDINGS}:
        raise CommandError(f"'{out}' does not say what to write; name a file .pdf or .html.")


def run_report_command(plan: Plan, asked: argparse.Namespace) -> int:
    """Reckon what the report tells and write it; returns 0.

    Raises
    ------
    CommandError
        With one sentence, for anything that cannot be done.
    """
    import datetime as dt

    from planner.reports.chapters import report
    from planner.reports.report import SectionError, chosen_sections, gather

    names = None if asked.sections is None else asked.sections.split(",")
    unit = LengthUnit(asked.unit)
    options = estimate_options(asked)
    bar = _Progress(sys.stderr)
    try:
        sections = chosen_sections(names)
        known = gather(plan, options, sections=sections, unit=unit, progress=bar.show)
    except SectionError as error:
        raise CommandError(str(error)) from error
    except ValueError as error:
        raise CommandError(f"This plan cannot be estimated: {error}") from error
    bar.end()
    made = report(known, unit, sections=sections, date=dt.datetime.now().astimezone().date())
    if Path(asked.out).suffix.lower() in PAGE_ENDINGS:
        from planner.reports.page import report_html

        write_output(asked.out, report_html(made).encode())
    else:
        from planner.reports.leaves import report_pdf
        from planner.reports.sheet import Paper

        write_output(asked.out, report_pdf(made, Paper(asked.paper)))
    titles = ", ".join(inside(section.title) for section in made.sections)
    print(f"Wrote {Path(asked.out).resolve()} ({titles})")
    return 0


# -- ``lamp FILE`` ---------------------------------------------------


def add_lamp_command(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    parser.add_argument("file", metavar="FILE", type=Path, help="IES LM-63 or EULUMDAT file")
    parser.add_argument("--lm63", metavar="OUT", type=Path, help="write it back as LM-63-2019")
    parser.add_argument("--save-as", metavar="NAME", help="keep it among your own lamps")
    flux = parser.add_mutually_exclusive_group()
    flux.add_argument("--ppf", type=float, metavar="UMOL", help=f"photon flux in {FLUX_UNIT}")
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
    CommandError
        With one sentence, for anything that cannot be done.
    """
    from planner.catalogue.lamp_files.convert import summary
    from planner.catalogue.lamp_files.photometry import LampFileError
    from planner.catalogue.lamp_files.reading import read_lamp_file

    try:
        photometry = read_lamp_file(asked.file)
    except LampFileError as error:
        raise CommandError(capital(str(error))) from error
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
        raise CommandError(f"'{path}' could not be written: {error}") from error
    print(f"Wrote {path}")


def _keep(photometry: Photometry, asked: argparse.Namespace) -> None:
    from pydantic import ValidationError

    from planner.catalogue.lamp_files.convert import to_lamp_model
    from planner.catalogue.lamp_files.photometry import LampFileError
    from planner.catalogue.library import CatalogueError, load_catalogue, new_key, save_entry
    from planner.plan.refusal import refusals

    if asked.ppf is None and asked.spectrum is None:
        raise CommandError(
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
        save_entry(model)
    except ValidationError as error:
        raise CommandError(" ".join(refusals(error))) from error
    except (LampFileError, CatalogueError, ValueError) as error:
        raise CommandError(capital(str(error))) from error
    from planner.metrics.figures import FIGURE

    flux, watts = FIGURE["photon_flux"].text(model.ppf), FIGURE["watts"].text(model.watts)
    print(f"Kept as own lamp '{model.name}': {flux}, {watts}")


def _lumens_per_umol(key: str) -> float:
    from planner.catalogue.spectra import built_in_spectra
    from planner.metrics.spectra import lux_per_umol

    spectra = {spectrum.key: spectrum for spectrum in built_in_spectra()}
    if key not in spectra:
        raise CommandError(f"There is no spectrum '{key}'; known are {', '.join(spectra)}.")
    return lux_per_umol(spectra[key])


# -- ``sweep PLAN --over height=0.2:0.6:9`` -------------------------------------


def add_sweep_command(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    parser.add_argument("plan", metavar="PLAN")
    parser.add_argument(
        "--over",
        action="append",
        required=True,
        metavar="NAME[@PLACE]=FROM:TO:COUNT",
        help="NAME is lining, lamp or any number of the plan (height, output, canopy, ...; a "
        "wrong one lists them), with a place behind it where only one is meant "
        "(output@lamp-2, lining@ceiling); NAME=A,B,C works too, for linings and lamps their keys "
        "or 'all'; lengths in m or with a unit, shares (output, dust, dirt) in per cent; more "
        "than one --over makes a grid",
    )
    parser.add_argument("--csv", required=True, metavar="OUT", help="one line a point; - for here")
    add_estimate_options(parser)
    parser.add_argument(
        "--workers", type=int, metavar="N", help="processes; without it one per core"
    )
    parser.add_argument(
        "--scheduler", metavar="ADDRESS", help="of a Dask scheduler (needs the extra 'cluster')"
    )


def run_sweep_command(plan: Plan, asked: argparse.Namespace) -> int:
    """Run the sweep and write its points; returns 0, 1 where points cannot be, 130 interrupted.

    Finished points are kept beside the CSV, in ``OUT.points``, until the sweep is whole: the
    same command goes on from there.

    Raises
    ------
    CommandError
        With one sentence, for anything that cannot be done.
    """
    if asked.workers is not None and not 0 <= asked.workers <= 64:
        raise CommandError(f"--workers {asked.workers} makes no sense; write 0 to 64.")
    from planner.catalogue.library import load_catalogue
    from planner.estimate.sweep import sweep
    from planner.estimate.sweep_points import SweepError, parse_over
    from planner.reports.exports import sweep_to_csv

    journal = None if asked.csv == STANDARD_OUTPUT else Path(f"{asked.csv}.points")
    bar = _Progress(sys.stderr)
    try:
        catalogue = load_catalogue()
        offered = catalogue.linings_for(plan), catalogue.lamps_for(plan)
        over = [parse_over(text, *offered) for text in asked.over]
        found = sweep(
            plan,
            over,
            estimate_options(asked),
            workers=asked.workers,
            scheduler=asked.scheduler,
            journal=journal,
            progress=bar.show,
        )
    except SweepError as error:
        raise CommandError(str(error)) from error
    except KeyboardInterrupt:
        bar.end()
        if journal is not None:
            print(
                f"Stopped; what was finished is in '{journal}', and the same command goes on "
                "from there.",
                file=sys.stderr,
            )
        return 130
    bar.end()
    write_output(asked.csv, sweep_to_csv(found).encode())
    if journal is not None:
        journal.unlink(missing_ok=True)
        print(f"Wrote {Path(asked.csv).resolve()} ({found.size} points)")
    bad = [point for point in found.in_order() if point.figures is None]
    if bad:
        print(
            f"{len(bad)} of {found.size} points cannot be, the first because: {bad[0].problem}",
            file=sys.stderr,
        )
    return 1 if bad else 0


class _Progress:
    """A line of percent at a terminal, and nothing in a pipe."""

    def __init__(self, stream: TextIO | None) -> None:
        self._stream = stream if stream is not None and stream.isatty() else None

    def show(self, fraction: float) -> None:
        if self._stream is not None:
            print(f"\r{100 * fraction:3.0f} %", end="", file=self._stream, flush=True)

    def end(self) -> None:
        if self._stream is not None:
            print("\r     \r", end="", file=self._stream, flush=True)


# -- where answers are written ---------------------------------------------------------


def write_output(out: str, data: bytes) -> None:
    """Write an answer to a file, whole or not at all, or to standard output.

    Raises
    ------
    CommandError
        If the file cannot be written or standard output is closed.
    """
    if out == STANDARD_OUTPUT:
        if sys.stdout is None:
            raise CommandError("Standard output is closed; name a file instead of '-'.")
        sys.stdout.flush()
        # As bytes: neither the terminal's signs nor its line ends may change the data.
        sys.stdout.buffer.write(data)
        sys.stdout.flush()
        return
    from planner.files.disk import reason_of, write_atomically

    try:
        write_atomically(Path(out), data)
    except OSError as error:
        raise CommandError(f"'{out}' cannot be written: {reason_of(error)}.") from error
    except ValueError as error:
        raise CommandError(f"{out!r} is not a name a file can have.") from error


def need_outputs(plan: str, *outs: str | None) -> None:
    """Refuse outputs that cannot be written before anything is computed."""
    for out in outs:
        need_folder_of(out)
    need_names_apart(None if plan == DEMO else plan, *outs)


def need_folder_of(out: str | None) -> None:
    """Refuse an output in a folder that is not there."""
    if out is None or out == STANDARD_OUTPUT:
        return
    from planner.files.disk import is_folder

    path = Path(out)
    if is_folder(path):
        raise CommandError(f"'{out}' is a folder; name a file in it.")
    if not is_folder(path.parent):
        raise CommandError(f"'{out}' cannot be written: there is no folder '{path.parent}'.")


def need_names_apart(plan: str | None, *outs: str | None) -> None:
    """Refuse to write two outputs into one file, or one over the plan it is made from."""
    named = [out for out in outs if out is not None and out != STANDARD_OUTPUT]
    taken = None if plan is None else _place(plan)
    places = [_place(out) for out in named]
    for number, (out, place) in enumerate(zip(named, places, strict=True)):
        if place == taken:
            raise CommandError(f"'{out}' is the plan itself; name another file to write to.")
        if place in places[:number]:
            raise CommandError(f"'{out}' is named for two outputs; give each its own file.")


def _place(name: str) -> str:
    try:
        return os.path.realpath(name)
    except ValueError as error:
        raise CommandError(f"{name!r} is not a name a file can have.") from error


def drop_output() -> None:
    """Let what is still held back for an output that takes no more go nowhere."""
    if sys.stdout is not None:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
