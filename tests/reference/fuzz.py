"""Spoilt files by the hundred thousand, for every reader: read, or refused in one sentence, soon.

    python -m tests.reference.fuzz [READER ...] [--count 100000] [--first 0] [--seconds 600]

(``-m harness`` in pytest does the same.) Inputs are mutations of sound files, drawn from a seed
and a number, so that a finding can be repeated; parts of workbooks are spoilt inside their
packing, too. What a reader may refuse with is its own kind of error with a sentence; anything
else, and whatever takes longer than ``SLOWEST_S``, is a finding.
"""

from __future__ import annotations

import argparse
import faulthandler
import io
import json
import random
import re
import time
import warnings
import zipfile
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory

from planner.app.settings import Settings
from planner.catalogue.library import demo_plan
from planner.catalogue.spectrum_csv import SpectrumError, parse_spectrum
from planner.estimate.result import Figures
from planner.estimate.sweep import Over, SweepError, sweep
from planner.files.disk import PlanFileError
from planner.files.recovery import RecoverySlot, leftovers
from planner.files.store import plan_from_bytes, plan_to_bytes
from planner.folders import SETTINGS_FILE
from planner.metrics.spectra import spectrum_figures
from planner.survey.table_cells import TableError
from planner.survey.table_guess import guess_table
from planner.survey.table_reading import laid_out, onto_holes, read_table
from planner.survey.table_workbook import sheets_of_bytes
from tests.reference import fuzz_lamp_files as lamp_files
from tests.unit.files.valid_text import VALID, text

DATA = Path(__file__).parents[1] / "data"
SPECTRA = Path(__file__).parents[2] / "resources" / "catalogue" / "spectra"
SQUARE = ((0.0, 0.0), (0.6, 0.0), (0.6, 0.6), (0.0, 0.6))
SLOWEST_S = 2.0
HANGING_S = 60.0
LONGEST_SENTENCE = 1500

NUMBERS = [
    *(b"0", b"-1", b"1", b"2", b"3", b"4", b"90", b"180", b"360", b"361", b"721", b"-90", b"45.5"),
    *(b"nan", b"inf", b"-inf", b"NaN", b"1e308", b"1e999", b"1e-320", b"-0.0", b"1,5", b"1.2.3"),
    *(b"0x10", b"1_0", b"+.5", b".", b"-", b"9" * 20, b"9" * 400, "٣".encode(), "½".encode()),
]
SIGNS = [
    *(b",", b";", b"\t", b"|", b" ", b"\n", b"\r", b"\r\n", b'"', b"'", b"/", b"#", b"%", b"\\"),
    *(b"{", b"}", b"[", b"]", b":", b"null", b"true", b"\x00", b"\x1a", b"\xff", b"\xef\xbb\xbf"),
    *(b"\xff\xfe", b"\\ud800", "µ".encode(), "²".encode(), b"A" * 5000, b"[" * 2000, b"<", b"&"),
]
_TOKEN = re.compile(rb"[^\s,]+")
_NUMBER = re.compile(rb"-?\d+(\.\d+)?")


class RefusedError(Exception):
    """A reader refused; the message is its sentence."""


@dataclass(frozen=True)
class Reader:
    """One reader: sound files, words of its kind, and doing with a file all the program does."""

    sound: Sequence[bytes]
    words: Sequence[bytes]
    use: Callable[[bytes], None]
    packed: bool = False


@dataclass
class Report:
    """What a run saw."""

    count: int = 0
    read: int = 0
    slowest_s: float = 0.0
    slowest: int = 0
    seconds: float = 0.0


# -- spoiling ---------------------------------------------------------------------------


def spoilt(reader: Reader, seed: int, number: int) -> bytes:
    """The input of a number: a sound file with some things changed."""
    draw = random.Random(f"{seed} {number}")
    data = draw.choice(reader.sound)
    if reader.packed and draw.random() < 0.8:
        return _repacked(data, reader, draw)
    return _changed(data, reader, draw)


def _changed(data: bytes, reader: Reader, draw: random.Random) -> bytes:
    for _ in range(draw.choice([1, 1, 1, 1, 2, 2, 3, 5])):
        data = draw.choice(WAYS)(data, reader, draw)
    return data


def _repacked(data: bytes, reader: Reader, draw: random.Random) -> bytes:
    """A part of a packed file spoilt, and packed again."""
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as old:
            parts = {name: old.read(name) for name in old.namelist()}
    except zipfile.BadZipFile:
        return _changed(data, reader, draw)
    name = draw.choice([name for name in parts if parts[name]])
    parts[name] = _changed(parts[name], reader, draw)
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as new:
        for name, part in parts.items():
            new.writestr(name, part)
    return packed.getvalue()


def _some_word(reader: Reader, draw: random.Random) -> bytes:
    return draw.choice(draw.choice([NUMBERS, SIGNS, reader.words or SIGNS]))


def _replace_token(data: bytes, reader: Reader, draw: random.Random) -> bytes:
    tokens = list(_TOKEN.finditer(data))
    if not tokens:
        return data
    # The head decides most; it is hit as often as all the rest.
    few = tokens[: max(60, len(tokens) // 10)]
    token = draw.choice(few if draw.random() < 0.5 else tokens)
    return data[: token.start()] + _some_word(reader, draw) + data[token.end() :]


def _change_number(data: bytes, _reader: Reader, draw: random.Random) -> bytes:
    tokens = list(_NUMBER.finditer(data))
    if not tokens:
        return data
    token = draw.choice(tokens[:40] if draw.random() < 0.5 else tokens)
    value = float(token.group())
    new = draw.choice([value + 1, value - 1, -value, value * 10, value / 7, value * 1e6, 0.0])
    return data[: token.start()] + f"{new:g}".encode() + data[token.end() :]


def _delete_token(data: bytes, _reader: Reader, draw: random.Random) -> bytes:
    tokens = list(_TOKEN.finditer(data))
    if not tokens:
        return data
    token = draw.choice(tokens)
    return data[: token.start()] + data[token.end() :]


def _flip_bytes(data: bytes, _reader: Reader, draw: random.Random) -> bytes:
    changed = bytearray(data)
    for _ in range(draw.randint(1, 8)):
        if changed:
            changed[draw.randrange(len(changed))] = draw.randrange(256)
    return bytes(changed)


def _insert(data: bytes, reader: Reader, draw: random.Random) -> bytes:
    at = draw.randint(0, len(data))
    return data[:at] + _some_word(reader, draw) + data[at:]


def _cut(data: bytes, _reader: Reader, draw: random.Random) -> bytes:
    start, end = sorted((draw.randint(0, len(data)), draw.randint(0, len(data))))
    return draw.choice([data[:end], data[:start] + data[end:]])


def _repeat(data: bytes, _reader: Reader, draw: random.Random) -> bytes:
    at = draw.randint(0, len(data))
    return data[:at] + data[at : at + draw.randint(1, 60)] + data[at:]


def _change_lines(data: bytes, reader: Reader, draw: random.Random) -> bytes:
    lines = data.splitlines(keepends=True)
    if not lines:
        return data
    index, kind = draw.randrange(len(lines)), draw.randrange(4)
    if kind == 0:
        del lines[index]
    elif kind == 1:
        lines.insert(index, lines[index])
    elif kind == 2:
        other = draw.randrange(len(lines))
        lines[index], lines[other] = lines[other], lines[index]
    else:
        lines[index] = _some_word(reader, draw) + b"\n"
    return b"".join(lines)


def _splice(data: bytes, reader: Reader, draw: random.Random) -> bytes:
    other = draw.choice(reader.sound)
    return data[: draw.randint(0, len(data))] + other[draw.randint(0, len(other)) :]


WAYS: list[Callable[[bytes, Reader, random.Random], bytes]] = [
    *(_replace_token, _replace_token, _change_number, _change_number, _change_number),
    *(_delete_token, _flip_bytes, _insert, _cut, _repeat, _change_lines, _splice),
]


# -- readers ----------------------------------------------------------------------------


def _use_plan(data: bytes) -> None:
    try:
        plan = plan_from_bytes(data, Path("spoilt.plan.json"))
    except PlanFileError as error:
        raise RefusedError(str(error)) from error
    # What was read is saved and read again, the same.
    assert plan_from_bytes(plan_to_bytes(plan), Path("again.plan.json")) == plan


def _use_table(data: bytes) -> None:
    try:
        cells = sheets_of_bytes(data)[0]
        guess = guess_table(cells)
        guess.words()
        table = read_table(cells, guess, lux_per_umol=70.0)
        if table.numbered:
            onto_holes(table, [(0.1, 0.1)] * 40, grid=None, tolerance=0.1)
        else:
            laid_out(table, SQUARE)
    except TableError as error:
        raise RefusedError(str(error)) from error


def _use_spectrum(data: bytes) -> None:
    try:
        spectrum = parse_spectrum(data, key="k", name="n").spectrum
    except SpectrumError as error:
        raise RefusedError(str(error)) from error
    assert spectrum_figures(spectrum).lux_per_umol > 0


def _use_lamp_file(data: bytes) -> None:
    if not lamp_files.exercise(data):
        # The sentence was looked at there.
        raise RefusedError("Refused.")


def _use_settings(data: bytes) -> None:
    with TemporaryDirectory() as folder:
        (Path(folder) / SETTINGS_FILE).write_bytes(data)
        settings = Settings(Path(folder))
        settings.keep(cells=8)
        assert Settings(Path(folder)).values.cells == 8
        if settings.problem:
            raise RefusedError(settings.problem)


def _use_recovery(data: bytes) -> None:
    with TemporaryDirectory() as folder:
        (Path(folder) / "1-ab.recovery.json").write_bytes(data)
        found, told = leftovers(Path(folder))
        assert len(found) + len(told) == 1
        for leftover in found:
            # As the window does before it asks.
            _ = (leftover.file_moved_on, leftover.written.astimezone().replace(tzinfo=None))
        if told:
            raise RefusedError(told[0])


def _use_journal(data: bytes) -> None:
    # Stopped before the first point: only the reading of the journal is wanted.
    with TemporaryDirectory() as folder:
        book = Path(folder) / "out.points"
        book.write_bytes(data)
        try:
            sweep(demo_plan(), JOURNAL_OVER, workers=0, journal=book, cancelled=lambda: True)
        except SweepError as error:
            assert book.read_bytes() == data
            raise RefusedError(str(error).replace(folder, "")) from error


JOURNAL_OVER = (Over("height", (0.2, 0.3, 0.4)), Over("output", (50.0, 100.0)))


def _journals() -> list[bytes]:
    with TemporaryDirectory() as folder:
        book = Path(folder) / "out.points"
        sweep(demo_plan(), JOURNAL_OVER, workers=0, journal=book, cancelled=lambda: True)
        head = book.read_bytes()
    names = Figures.__dataclass_fields__
    figures = dict.fromkeys(names, 0.5)
    points = [{"number": n, "figures": figures, "problem": ""} for n in range(5)]
    points.append({"number": 5, "figures": None, "problem": "The lamp is above the ceiling."})
    return [head + "".join(json.dumps(point) + "\n" for point in points).encode(), head]


def _recoveries() -> list[bytes]:
    with TemporaryDirectory() as folder:
        slot = RecoverySlot(Path(folder))
        slot.write(demo_plan(), Path("somewhere") / "cabinet.plan.json")
        data = slot.file.read_bytes()
        slot.close()
    return [data]


def _settings() -> list[bytes]:
    with TemporaryDirectory() as folder:
        Settings(Path(folder)).keep(
            window_rect=(10, 10, 1280, 800), recent=("a.plan.json",), lamp_spectra={"bar": "white"}
        )
        return [(Path(folder) / SETTINGS_FILE).read_bytes()]


def _files(folder: Path, *patterns: str) -> list[bytes]:
    paths = sorted(path for pattern in patterns for path in folder.glob(pattern))
    return [data for path in paths if (data := path.read_bytes())]


TABLE_WORDS = [
    *(b"x", b"y", b"hole", b"ppfd", b"lux", b"cm", b"in", b"mean", b"1/0", b"3 5/8", b"sep=,\n"),
]
SHEET_WORDS = [
    *(b"<c>", b"</c>", b"<row r='9'>", b"t='s'", b'r="A1048577"', b"<v>", b"</sheetData>"),
    *(b"table:number-columns-repeated='16384'", b"office:value='x'", b"&#0;", b"<!DOCTYPE a>"),
]
LAMP_WORDS = lamp_files.WORDS
PLAN_WORDS = [json.dumps(name).encode() for name in (*VALID, "kind", "x", "model", "bands", "top")]


def readers() -> dict[str, Reader]:
    """Every reader by its name."""
    plans = [*_files(DATA / "plans", "*.plan.json"), text(), plan_to_bytes(demo_plan())]
    tables = _files(DATA / "tables", "*.csv", "*.tsv", "*.txt", "*.dat")
    kept = _files(lamp_files.CORPUS, f"*{lamp_files.SUFFIX}")
    lm63 = _files(DATA / "lamp_files", "*.ies") * 8
    eulumdat = _files(DATA / "lamp_files", "*.ldt") * 16
    return {
        "plan": Reader(plans, PLAN_WORDS, _use_plan),
        "lm63": Reader([*lm63, *kept], LAMP_WORDS, _use_lamp_file),
        "eulumdat": Reader([*eulumdat, *kept], LAMP_WORDS, _use_lamp_file),
        "table": Reader(tables, TABLE_WORDS, _use_table),
        "xlsx": Reader(_files(DATA / "tables", "*.xlsx"), SHEET_WORDS, _use_table, packed=True),
        "ods": Reader(_files(DATA / "tables", "*.ods"), SHEET_WORDS, _use_table, packed=True),
        "spectrum": Reader(_files(SPECTRA, "*.csv"), [b"nm", b"W", b"umol"], _use_spectrum),
        "settings": Reader(_settings(), [b"recent", b"cells"], _use_settings),
        "recovery": Reader(_recoveries(), PLAN_WORDS, _use_recovery),
        "journal": Reader(_journals(), [b'"number"', b'"figures"'], _use_journal),
    }


# -- running ----------------------------------------------------------------------------


def run(
    name: str, count: int, *, seed: int = 1, first: int = 0, seconds: float = float("inf")
) -> Report:
    """Try up to ``count`` inputs for at most so long; an ``AssertionError`` tells a finding."""
    reader, report, began = readers()[name], Report(), time.perf_counter()
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        for number in range(first, first + count):
            if time.perf_counter() - began > seconds:
                break
            data = spoilt(reader, seed, number)
            start = time.process_time()
            faulthandler.dump_traceback_later(HANGING_S, exit=True)
            try:
                report.read += _attempt(reader, data)
            except Exception as error:
                kind = type(error).__name__
                raise AssertionError(f"{name} {seed} {number}: {kind}: {error}") from error
            took = time.process_time() - start
            assert took < SLOWEST_S, f"{name} {seed} {number} took {took:.1f} s"
            report.count += 1
            if took > report.slowest_s:
                report.slowest_s, report.slowest = took, number
    faulthandler.cancel_dump_traceback_later()
    report.seconds = time.perf_counter() - began
    return report


def _attempt(reader: Reader, data: bytes) -> bool:
    try:
        reader.use(data)
    except RefusedError as refused:
        sentence = str(refused)
        assert sentence.endswith("."), sentence
        assert "\n" not in sentence, sentence
        assert len(sentence) < LONGEST_SENTENCE, sentence
        return False
    return True


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("readers", nargs="*", metavar="READER", help=", ".join(readers()))
    parser.add_argument("--count", type=int, default=100_000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--first", type=int, default=0, help="number of the first input")
    parser.add_argument("--seconds", type=float, default=float("inf"), help="for each reader")
    chosen = parser.parse_args()
    for name in chosen.readers or readers():
        found = run(
            name, chosen.count, seed=chosen.seed, first=chosen.first, seconds=chosen.seconds
        )
        print(
            f"{name}: {found.count} inputs in {found.seconds:.0f} s: {found.read} read, "
            f"{found.count - found.read} refused; slowest {1000 * found.slowest_s:.0f} ms "
            f"(number {found.slowest}); no other exception.",
            flush=True,
        )


if __name__ == "__main__":
    main()
