"""The command line: what is asked, and the answers that need no screen.

Nothing heavy is imported before it is known to be needed: checking a plan loads neither
numpy nor Qt. Answers go to standard output; what is wrong goes to standard error as one
sentence, with exit code 2.
"""

# ruff: noqa: PLC0415 - importing late is what keeps the start quick

from __future__ import annotations

import argparse
import os
import re
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Final, Literal, NoReturn, TextIO

import planner
from planner.commands import (
    DEMO,
    STANDARD_OUTPUT,
    CommandError,
    add_board_options,
    add_estimate_options,
    add_lamp_command,
    add_report_command,
    add_sweep_command,
    board_file,
    drop_output,
    estimate_options,
    need_folder_of,
    need_outputs,
    need_report_name,
    program_name,
    run_lamp_command,
    run_report_command,
    run_sweep_command,
    write_output,
)
from planner.folders import resource_path
from planner.language import spoken, word
from planner.units import LengthUnit, capital

if TYPE_CHECKING:
    from planner.estimate.result import Estimate, EstimateOptions
    from planner.plan.plan import Plan

MAX_CELLS: Final = 200
WINDOW_SIZE: Final = (1280, 800)


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the program as asked and return its exit code: 0 done, 2 refused."""
    given = list(sys.argv[1:] if arguments is None else arguments)
    _tolerate_narrow_terminals()
    try:
        asked = _parser().parse_args(_with_command(given))
        run: Callable[[argparse.Namespace], int] = asked.run
        code = run(asked)
        if sys.stdout is not None:
            # Here, where it can still be said that the answer did not get through.
            sys.stdout.flush()
    except CommandError as error:
        print(error, file=sys.stderr)
        return 2
    except ImportError as error:
        lacks = re.search(r"\S+\.so\S*(?=: cannot open shared object file)", str(error))
        if lacks is None:
            raise
        from planner.app.screen import remedy

        print(f"This system lacks the library {lacks[0]}; {remedy()}.", file=sys.stderr)
        return 2
    except BrokenPipeError:
        # Whoever read the output has read enough.
        drop_output()
        return 0
    except OSError as error:
        from planner.files.disk import reason_of

        drop_output()
        what = "the answer" if error.filename is None else f"'{error.filename}'"
        print(f"The system refuses {what}: {reason_of(error)}.", file=sys.stderr)
        return 2
    except KeyboardInterrupt:
        print("Stopped.", file=sys.stderr)
        return 130
    return code


# -- what may be asked ------------------------------------------------------------------


_Said = Literal[
    "usage: ",
    "positional arguments",
    "options",
    "show this help message and exit",
    "show program's version number and exit",
    "argument %(argument_name)s: %(message)s",
    "the following arguments are required: %s",
    "unrecognized arguments: %s",
    "invalid choice: %(value)r (choose from %(choices)s)",
    "invalid %(type)s value: %(value)r",
    "not allowed with argument %s",
    "one of the arguments %s is required",
    "expected one argument",
    "expected at least one argument",
    "ambiguous option: %(option)s could match %(matches)s",
    "ignored explicit argument %r",
]
"""What the parser of Python says itself; it asks its ``_`` for the word in another language."""
setattr(argparse, "_", word)  # noqa: B010 - the name is argparse's own, and not told to checkers


class _Parser(argparse.ArgumentParser):
    """A parser whose complaints are one sentence."""

    def error(self, message: str) -> NoReturn:
        sentence = capital(message).rstrip(".")
        raise CommandError(f"{sentence}; '{self.prog} --help' shows what can be asked.")


def _parser() -> argparse.ArgumentParser:
    parser = _Parser(
        prog=program_name(),
        description="Grow space light planner: sketch a small grow space, see the light in it. "
        "Without a command the window opens.",
        epilog=f"PLAN is a plan file (.plan.json), or the word {DEMO} for the invented demo plan.",
    )
    parser.add_argument(
        "--version", action="version", version=f"Grow space light planner {planner.__version__}"
    )
    commands = parser.add_subparsers(metavar="COMMAND", required=True)

    window = commands.add_parser("open", help="open the window (also without any command)")
    window.add_argument("plan", nargs="?", metavar="PLAN")
    window.set_defaults(run=_open_window)

    estimate = commands.add_parser("estimate", help="compute the light of a plan")
    estimate.add_argument("plan", metavar="PLAN")
    estimate.add_argument(
        "--cells", type=_cells, default=(24, 24), metavar="24x24", help="columns x rows of the map"
    )
    add_estimate_options(estimate)
    estimate.add_argument("--json", metavar="OUT", help="write map and figures; - for here")
    estimate.add_argument("--csv", metavar="OUT", help="write the map's cells; - for here")
    estimate.add_argument("--picture", metavar="OUT.png", help="paint the map; OUT.svg: as lines")
    estimate.add_argument(
        "--unit", choices=("cm", "in"), default="cm", help="of the lengths in the picture"
    )
    estimate.set_defaults(run=_estimate)

    check = commands.add_parser("check", help="say whether a plan file is valid, and what is odd")
    check.add_argument("plan", metavar="PLAN")
    check.set_defaults(run=_check)

    demo = commands.add_parser("demo", help="estimate the demo plan and picture the window")
    demo.add_argument("--out", required=True, metavar="FOLDER", type=_folder)
    demo.set_defaults(run=_demo)

    sweep = commands.add_parser("sweep", help="estimate a plan over a range of its numbers")
    add_sweep_command(sweep)
    sweep.set_defaults(run=_sweep)

    lamp = commands.add_parser("lamp", help="look at a photometric file; keep it as own lamp")
    add_lamp_command(lamp)
    lamp.set_defaults(run=run_lamp_command)

    board = commands.add_parser("board", help="print the survey board at its true size (PDF)")
    add_board_options(board)
    board.set_defaults(run=_board)

    report = commands.add_parser(
        "report", help="write the decision, or a build sheet, as PDF or HTML"
    )
    add_report_command(report)
    report.set_defaults(run=_report)

    schema = commands.add_parser("schema", help="write the JSON Schema of plan files")
    schema.add_argument("--out", default=STANDARD_OUTPUT, metavar="FILE")
    schema.set_defaults(run=_schema)
    return parser


COMMANDS: Final = (
    "open", "estimate", "check", "demo", "sweep", "lamp", "board", "report", "schema",
)  # fmt: skip


def _with_command(given: list[str]) -> list[str]:
    """Put the word 'open' in front where only a plan, or nothing, is given."""
    if not given:
        return ["open"]
    first = given[0]
    if first.startswith("-") and first not in {"-h", "--help", "--version"}:
        raise CommandError(
            f"There is no option '{first}' before a command; "
            f"'{program_name()} --help' shows what can be asked."
        )
    return given if first in COMMANDS or first.startswith("-") else ["open", *given]


def _cells(text: str) -> tuple[int, int]:
    match = re.fullmatch(r"\s*(\d{1,4})\s*(?:[xX×]\s*(\d{1,4}))?\s*", text)
    if match:
        columns = int(match[1])
        rows = int(match[2] or match[1])
        if 2 <= columns <= MAX_CELLS and 2 <= rows <= MAX_CELLS:
            return columns, rows
    raise argparse.ArgumentTypeError(
        f"'{text}' is not a map size; write columns x rows from 2 to {MAX_CELLS}, like 24x24"
    )


def _folder(text: str) -> Path:
    if not text.strip():
        raise argparse.ArgumentTypeError("no folder is named; write for example planner-demo")
    return Path(text)


# -- commands ---------------------------------------------------------------------------


def _open_window(asked: argparse.Namespace) -> int:
    from planner.app.screen import library_problem, screen_problem

    problem = screen_problem()
    if problem is not None:
        raise CommandError(
            f"{problem}; start it from a desktop session, or compute without one: "
            f"{program_name()} demo --out FOLDER, or {program_name()} estimate PLAN."
        )
    # A folder of that name is no plan.
    demo = asked.plan == DEMO and not Path(DEMO).is_file()
    path = None if asked.plan is None or demo else Path(asked.plan)
    if path is not None and not _exists(path):
        raise CommandError(
            f"There is neither a plan file nor a command '{asked.plan}'; "
            f"commands are {', '.join(COMMANDS)}."
        )
    problem = library_problem()
    if problem is not None:
        raise CommandError(problem)
    from planner.app.run import run_window

    return run_window(None, demo=True) if demo else run_window(path)


def _check(asked: argparse.Namespace) -> int:
    plan = _plan(asked.plan)
    from planner.plan.checks import findings

    print(f"'{asked.plan}' is a valid plan: {_contents(plan)}.")
    for finding in findings(plan):
        print(f"{word(finding.severity).capitalize()}: {finding.sentence}")
    return 0


def _estimate(asked: argparse.Namespace) -> int:
    if asked.json == asked.csv == STANDARD_OUTPUT:
        raise CommandError("Only one of --json and --csv can be written here; name a file for one.")
    if asked.picture == STANDARD_OUTPUT:
        raise CommandError("A picture cannot be written here; name a file like map.png.")
    need_outputs(asked.plan, asked.json, asked.csv, asked.picture)
    plan = _plan(asked.plan)
    estimate = _evaluated(plan, estimate_options(asked, cells=asked.cells))
    if STANDARD_OUTPUT not in (asked.json, asked.csv):
        print(summary(estimate))
    _write_exports(estimate, asked.json, asked.csv, asked.picture, asked.unit)
    return 0


def _demo(asked: argparse.Namespace) -> int:
    folder: Path = asked.out
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        from planner.files.disk import reason_of

        raise CommandError(f"The folder '{folder}' cannot be made: {reason_of(error)}.") from error
    plan = _plan(DEMO)
    from planner.estimate.result import EstimateOptions

    window = folder / "window.png"
    # The window first: it needs the full kind of Qt application, the map is content with any.
    _picture_window(plan, window)
    estimate = _evaluated(plan, EstimateOptions())
    print(summary(estimate))
    _write_exports(
        estimate,
        str(folder / "estimate.json"),
        str(folder / "estimate.csv"),
        str(folder / "map.png"),
    )
    print(f"Wrote {window.resolve()} (the program's window with the demo plan)")
    return 0


def _sweep(asked: argparse.Namespace) -> int:
    plan = _plan(asked.plan)
    need_outputs(asked.plan, asked.csv)
    return run_sweep_command(plan, asked)


def _board(asked: argparse.Namespace) -> int:
    need_outputs(asked.plan, asked.out)
    plan = _plan(asked.plan)
    _paint_off_screen()
    try:
        print(board_file(plan, asked))
    except ValueError as error:
        raise CommandError(f"{capital(str(error))}") from error
    return 0


def _report(asked: argparse.Namespace) -> int:
    need_report_name(asked.out)
    need_outputs(asked.plan, asked.out)
    _paint_off_screen()
    return run_report_command(_plan(asked.plan), asked)


def _schema(asked: argparse.Namespace) -> int:
    need_folder_of(asked.out)
    write_output(asked.out, schema_text().encode())
    if asked.out != STANDARD_OUTPUT:
        print(f"Wrote {Path(asked.out).resolve()}")
    return 0


def schema_text() -> str:
    """The JSON Schema of plan files (draft 2020-12) as it is published."""
    import json

    from planner.plan.plan import PLAN_FORMAT, Plan

    if spoken() != "en":
        # Made of the models it would have names that go without saying in another language.
        return resource_path(f"schema/plan-{PLAN_FORMAT}.schema.json").read_text("utf-8")

    schema = {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        **Plan.model_json_schema(),
        "title": f"Grow space light planner: plan, format {PLAN_FORMAT}",
    }
    # A file must say its format, although a plan made in the program need not be told.
    schema["required"] = ["format", *(n for n in schema["required"] if n != "format")]
    return json.dumps(schema, ensure_ascii=False, indent=2) + "\n"


# -- what they share --------------------------------------------------------------------


def summary(estimate: Estimate) -> str:
    """The estimate for a reader at a terminal: sentence, figures, where the light went."""
    from planner.metrics.figures import percent
    from planner.reports import advice, content

    lines = [estimate.plan.name, content.sentence(estimate)]
    lines += [hint for hint in [advice.advice(estimate)] if hint]
    lines.append("")
    figures = content.headline_figures(estimate)
    width = max(len(figure.label) for figure in figures) + 2
    lines += [f"  {figure.label:<{width}}{figure.text}" for figure in figures]
    canopies = content.canopy_sentences(estimate)
    if canopies:
        lines += ["", *canopies]
    if estimate.shares:
        lines += ["", "Where the photons went:"]
        named = [(s.place.title(estimate.plan), s.share) for s in estimate.shares]
        wide = max(len(name) for name, _ in named) + 2
        lines += [f"  {name:<{wide}}{percent(share)}" for name, share in named]
    nx, ny = estimate.options.cells
    lines += [
        "",
        content.closure_sentence(estimate),
        *filter(None, [content.numeric_sentence(estimate), content.recount_sentence(estimate)]),
        f"Map of {nx} x {ny} cells, quality {word(estimate.options.quality)}, "
        f"seed {estimate.options.seed}, {estimate.seconds:.2f} s.",
    ]
    return "\n".join(lines)


def _plan(word: str) -> Plan:
    if word == DEMO:
        from planner.catalogue.library import demo_plan

        return demo_plan()
    from planner.files.disk import PlanFileError
    from planner.files.store import FileKind, load_plan, other_kind

    try:
        return load_plan(Path(word))
    except PlanFileError as error:
        kind = other_kind(error.path)
        if kind is FileKind.TABLE:
            door = "open a plan in the window and import its readings on the page Survey"
        elif kind is FileKind.LAMP:
            door = f"'{program_name()} lamp {word}' shows it and can keep it among your lamps"
        else:
            raise CommandError(str(error)) from error
        raise CommandError(f"'{word}' is a {kind}, not a plan; {door}.") from error


def _contents(plan: Plan) -> str:
    lamps, walls = len(plan.lamps), plan.space.wall_count
    return (
        f"{plan.name}, {lamps} lamp{'' if lamps == 1 else 's'}, {walls} walls, "
        f"{plan.space.area:.2f} m²"
    )


def _evaluated(plan: Plan, options: EstimateOptions) -> Estimate:
    from planner.estimate.evaluate import evaluate, recounted

    try:
        return recounted(evaluate(plan, options))
    except ValueError as error:
        raise CommandError(f"This plan cannot be estimated: {error}") from error


def _write_exports(
    estimate: Estimate,
    json_out: str | None,
    csv_out: str | None,
    picture_out: str | None,
    unit_of_picture: str = "cm",
) -> None:
    if json_out:
        from planner.reports.exports import estimate_to_json

        write_output(json_out, estimate_to_json(estimate).encode())
    if csv_out:
        from planner.reports.exports import estimate_to_csv

        write_output(csv_out, estimate_to_csv(estimate).encode())
    if picture_out:
        _paint_off_screen()
        from planner.reports.charts import whole_map
        from planner.reports.paper import map_picture_png

        unit = LengthUnit(unit_of_picture)
        drawn = Path(picture_out).suffix.lower() == ".svg"
        svg = whole_map(estimate, unit).svg if drawn else ""
        data = svg.encode() if drawn else map_picture_png(estimate, unit=unit)
        write_output(picture_out, data)
    for out in (json_out, csv_out, picture_out):
        if out and out != STANDARD_OUTPUT:
            print(f"Wrote {Path(out).resolve()}", file=_beside(json_out, csv_out))


def _beside(*outs: str | None) -> TextIO:
    """Where remarks go: not into an output that somebody reads as data."""
    return sys.stderr if STANDARD_OUTPUT in outs else sys.stdout


def _paint_off_screen() -> None:
    """Let Qt paint without a screen, even where there is one: a picture needs none."""
    if sys.platform.startswith("linux"):
        os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")


def _picture_window(plan: Plan, path: Path) -> None:
    _paint_off_screen()
    from planner.app.run import picture_window
    from planner.files.disk import PlanFileError

    try:
        picture_window(plan, path, size=WINDOW_SIZE)
    except PlanFileError as error:
        raise CommandError(str(error)) from error


def _exists(path: Path) -> bool:
    try:
        return path.exists()
    except OSError:
        return False


def _tolerate_narrow_terminals() -> None:
    """Let a terminal that lacks a sign (µ, ²) show a question mark rather than stop."""
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(errors="replace")
