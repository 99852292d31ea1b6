"""Throw spoilt tables at the reader: every one is read or refused in a sentence.

Run by hand:  python -m tests.reference.fuzz_tables [count]
"""

from __future__ import annotations

import random
import sys
import time
from pathlib import Path

from planner.survey.table_cells import TableError
from planner.survey.table_guess import guess_table
from planner.survey.table_reading import laid_out, onto_holes, read_table
from planner.survey.table_workbook import sheets_of_bytes

FOLDER = Path(__file__).parents[1] / "data" / "tables"
SQUARE = ((0.0, 0.0), (0.6, 0.0), (0.6, 0.6), (0.0, 0.6))
PIECES = [
    *(b",", b";", b"\t", b"|", b" ", b"\n", b"\r", b'"', b"'", b"-", b".", b"/", b"#", b"%"),
    *(b"x", b"y", b"hole", b"ppfd", b"lux", b"cm", b"in", b"mean", b"nan", b"inf", b"1e99"),
    *(b"999999999999999999999", b"-1", b"0", b"1/0", b"3 5/8", "½".encode(), "µ".encode()),
    *(b"\xef\xbb\xbf", b"\xff\xfe", b"\0", b"\xff", "٣".encode(), "²".encode(), b"sep=,\n"),
]


def spoilt(random_numbers: random.Random, seeds: list[bytes]) -> bytes:
    """One table with a few bytes, pieces or rows changed."""
    data = bytearray(random_numbers.choice(seeds))
    for _ in range(random_numbers.randint(1, 6)):
        at = random_numbers.randrange(len(data) + 1)
        way = random_numbers.randrange(6)
        if way == 0 and data:
            data[at % len(data)] = random_numbers.randrange(256)
        elif way == 1:
            data[at:at] = random_numbers.choice(PIECES)
        elif way == 2:
            del data[at : at + random_numbers.randint(1, 20)]
        elif way == 3:
            data[at:at] = data[at : at + random_numbers.randint(1, 60)]
        elif way == 4:
            other = random_numbers.choice(seeds)
            data[at:] = other[random_numbers.randrange(len(other) + 1) :]
        else:
            data[at : at + 1] = random_numbers.choice(PIECES)
    return bytes(data)


def attempt(data: bytes) -> bool:
    """Read a table all the way; True if it was read, False if it was refused."""
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
        sentence = str(error)
        if not sentence.endswith(".") or "\n" in sentence or len(sentence) > 300:
            raise AssertionError(f"not one clear sentence: {sentence!r}") from error
        return False
    return True


def run(count: int, seed: int = 1) -> tuple[int, int]:
    """Try ``count`` spoilt tables; how many were read and how many refused."""
    random_numbers = random.Random(seed)
    files = sorted(p for p in FOLDER.iterdir() if p.suffix not in {".json", ".md"})
    seeds = [data for path in files if (data := path.read_bytes())]
    read = 0
    for number in range(count):
        data = spoilt(random_numbers, seeds)
        try:
            read += attempt(data)
        except Exception:
            print(f"table {number}: {data[:2000]!r}", file=sys.stderr)
            raise
    return read, count - read


if __name__ == "__main__":
    started = time.perf_counter()
    wanted = int(sys.argv[1]) if len(sys.argv) > 1 else 100_000
    was_read, was_refused = run(wanted)
    print(f"{was_read} read, {was_refused} refused, {time.perf_counter() - started:.0f} s")
