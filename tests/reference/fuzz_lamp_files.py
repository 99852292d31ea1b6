"""Broken lamp files by the hundred thousand: only ``LampFileError`` may come out, and soon.

Run ``python -m tests.reference.fuzz_lamp_files --count 100000`` from the top of the project
(``-m reference`` in pytest does the same). Inputs are mutations of the sample files and of the
kept corpus, drawn from a seed, so that a finding can be repeated. With ``--keep`` an input that
shows something new (another sentence, another shape of result) joins the corpus.
"""

from __future__ import annotations

import argparse
import faulthandler
import hashlib
import random
import re
import time
import warnings
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path

import numpy as np

from planner.catalogue.lamp_files.convert import summary, to_lamp_model
from planner.catalogue.lamp_files.lm63_write import lm63_text
from planner.catalogue.lamp_files.photometry import (
    LampFileError,
    Photometry,
    downward_share,
    total_lumens,
)
from planner.catalogue.lamp_files.reading import parse_lamp_file

SAMPLES = Path(__file__).parents[1] / "data" / "lamp_files"
CORPUS = Path(__file__).parent / "fuzz_corpus"
# Neither reading text tools nor the rule that text is UTF-8 applies to broken input.
SUFFIX = ".corpus"
LARGEST_KEPT = 3_000
SLOWEST_S = 2.0
HANGING_S = 60.0
REFUSED = "refused: "

WORDS = [
    *(b"0", b"-1", b"1", b"2", b"3", b"4", b"90", b"180", b"270", b"360", b"361", b"721", b"722"),
    *(b"-90", b"-180", b"45.5", b"nan", b"inf", b"-inf", b"1e308", b"1e999", b"1e-320", b"-0.0"),
    *(b"1,5", b"1.5,", b"1.2.3", b"0x10", b"1_0", b"+.5", b".", b"-", b"99999999999999999999"),
    *(b"TILT=NONE", b"TILT=INCLUDE", b"TILT=a.tlt", b"tilt = none", b"[MORE]", b"[TEST] x"),
    *(b"[BLOCK]", b"[", b"]", b"IESNA91", b"IESNA:LM-63-1995", b"IES:LM-63-2019", b"IES"),
    *(b"\r\n", b"\n", b"\r", b"\t", b",", b" ", b";", b"\x00", b"\x1a", b"\xff", b"\xb5\xb0"),
    *(b"\xe2\x88\x92", b"\xef\xbb\xbf", b"\xd9\xa3", "¹²".encode(), b"9" * 400, b"A" * 5000),
]
_TOKEN = re.compile(rb"[^\s,]+")


def starting_points() -> tuple[list[bytes], list[bytes]]:
    """Samples and kept corpus, each in a fixed order."""
    samples = sorted([*SAMPLES.glob("*.ies"), *SAMPLES.glob("*.ldt")])
    kept = sorted(CORPUS.glob(f"*{SUFFIX}"))
    return [path.read_bytes() for path in samples], [path.read_bytes() for path in kept]


def _replace_token(data: bytes, draw: random.Random, _other: bytes) -> bytes:
    tokens = list(_TOKEN.finditer(data))
    if not tokens:
        return data
    # The numbers at the head decide most; they are hit as often as all the rest.
    few = tokens[: max(60, len(tokens) // 10)]
    token = draw.choice(few if draw.random() < 0.5 else tokens)
    return data[: token.start()] + draw.choice(WORDS) + data[token.end() :]


def _change_number(data: bytes, draw: random.Random, _other: bytes) -> bytes:
    tokens = [t for t in _TOKEN.finditer(data) if t.group()[:1].isdigit()]
    if not tokens:
        return data
    token = draw.choice(tokens[:40] if draw.random() < 0.5 else tokens)
    try:
        value = float(token.group())
    except ValueError:
        return data
    new = draw.choice([value + 1, value - 1, -value, value * 10, value / 7, value * 1e6, 0.0])
    return data[: token.start()] + f"{new:g}".encode() + data[token.end() :]


def _delete_token(data: bytes, draw: random.Random, _other: bytes) -> bytes:
    tokens = list(_TOKEN.finditer(data))
    if not tokens:
        return data
    token = draw.choice(tokens)
    return data[: token.start()] + data[token.end() :]


def _flip_bytes(data: bytes, draw: random.Random, _other: bytes) -> bytes:
    changed = bytearray(data)
    for _ in range(draw.randint(1, 8)):
        if changed:
            changed[draw.randrange(len(changed))] = draw.randrange(256)
    return bytes(changed)


def _insert(data: bytes, draw: random.Random, _other: bytes) -> bytes:
    at = draw.randint(0, len(data))
    return data[:at] + draw.choice(WORDS) + data[at:]


def _cut(data: bytes, draw: random.Random, _other: bytes) -> bytes:
    start, end = sorted((draw.randint(0, len(data)), draw.randint(0, len(data))))
    return data[:end] if draw.random() < 0.5 else data[:start] + data[end:]


def _change_lines(data: bytes, draw: random.Random, _other: bytes) -> bytes:
    lines = data.splitlines(keepends=True)
    if not lines:
        return data
    index = draw.randrange(len(lines))
    kind = draw.randrange(4)
    if kind == 0:
        del lines[index]
    elif kind == 1:
        lines.insert(index, lines[index])
    elif kind == 2:
        other = draw.randrange(len(lines))
        lines[index], lines[other] = lines[other], lines[index]
    else:
        lines[index] = draw.choice(WORDS) + b"\n"
    return b"".join(lines)


def _splice(data: bytes, draw: random.Random, other: bytes) -> bytes:
    return data[: draw.randint(0, len(data))] + other[draw.randint(0, len(other)) :]


MUTATIONS: list[Callable[[bytes, random.Random, bytes], bytes]] = [
    *(_replace_token, _replace_token, _change_number, _change_number, _change_number),
    *(_delete_token, _flip_bytes, _insert, _cut, _change_lines, _splice),
]


def mutant(seed: int, samples: list[bytes], kept: list[bytes]) -> bytes:
    """The input of a seed: some mutations of some starting point.

    Mostly of a sound sample: what is broken already seldom gets past the first check.
    """
    draw = random.Random(seed)
    data = draw.choice(samples if draw.random() < 0.75 or not kept else kept)
    for _ in range(draw.choice([1, 1, 1, 1, 2, 2, 3, 5])):
        data = draw.choice(MUTATIONS)(data, draw, draw.choice(samples))
    return data


def exercise(data: bytes) -> str:
    """Do with an input all that the program does; what came out, without its numbers.

    Raises whatever comes out that is not ``LampFileError``.
    """
    try:
        lamp = parse_lamp_file(data)
    except LampFileError as error:
        _check_sentence(str(error))
        return _without_numbers(f"{REFUSED}{error}")
    _check_value(lamp)
    return _without_numbers(
        f"{lamp.photometric_type} {lamp.symmetry} {lamp.opening.shape} {' '.join(lamp.warnings)}"
    )


def _check_value(lamp: Photometry) -> None:
    assert np.isfinite(lamp.candela).all()
    assert lamp.candela.min() >= 0
    assert (np.diff(lamp.polar_deg) > 0).all()
    assert lamp.azimuths_deg[0] == 0
    assert (np.diff(lamp.azimuths_deg) > 0).all()
    assert lamp.azimuths_deg[-1] < 360
    for sentence in lamp.warnings:
        _check_sentence(sentence)
    total = total_lumens(lamp)
    assert total > 0
    assert -1e-9 <= downward_share(lamp) <= 1 + 1e-9
    summary(lamp)
    again = parse_lamp_file(lm63_text(lamp).encode())
    assert abs(total_lumens(again) / total - 1) < 1e-6
    try:
        to_lamp_model(lamp, key="fuzz", ppf=50, watts=40, quarter_turns=1)
        to_lamp_model(lamp, key="fuzz", lumens_per_umol=70, aim_down=lamp.photometric_type == "A")
    except LampFileError as error:
        _check_sentence(str(error))


def _check_sentence(text: str) -> None:
    assert text.endswith(".")
    assert text.isprintable()
    assert len(text) < 1500


def _without_numbers(text: str) -> str:
    return re.sub(r"[-+]?\d[\d.e+-]*", "#", re.sub(r"'[^']*'|\([^)]*\)", "?", text))[:300]


@dataclass
class Report:
    """What a run saw."""

    count: int = 0
    read: int = 0
    slowest_s: float = 0.0
    slowest_seed: int = 0
    seconds: float = 0.0
    outcomes: dict[str, int] = field(default_factory=dict)


def run(count: int, first_seed: int = 0, *, keep: int = 0) -> Report:
    """Try ``count`` inputs from ``first_seed`` on; an ``AssertionError`` tells a finding.

    With ``keep``, up to that many inputs with a new outcome are written to the corpus.
    """
    (samples, kept), report, begin = starting_points(), Report(), time.perf_counter()
    known = {exercise(data) for data in (*samples, *kept)}
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        for seed in range(first_seed, first_seed + count):
            data = mutant(seed, samples, kept)
            start = time.perf_counter()
            faulthandler.dump_traceback_later(HANGING_S, exit=True)
            try:
                outcome = exercise(data)
            except Exception as error:
                raise AssertionError(f"seed {seed}: {type(error).__name__}: {error}") from error
            took = time.perf_counter() - start
            assert took < SLOWEST_S, f"seed {seed} took {took:.1f} s"
            report.count += 1
            report.read += not outcome.startswith(REFUSED)
            report.outcomes[outcome] = report.outcomes.get(outcome, 0) + 1
            if took > report.slowest_s:
                report.slowest_s, report.slowest_seed = took, seed
            if outcome not in known and keep > 0 and len(data) <= LARGEST_KEPT:
                keep -= 1
                name = hashlib.sha256(data).hexdigest()[:12]
                (CORPUS / f"{name}{SUFFIX}").write_bytes(data)
            known.add(outcome)
    faulthandler.cancel_dump_traceback_later()
    report.seconds = time.perf_counter() - begin
    return report


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--count", type=int, default=100_000)
    parser.add_argument("--first-seed", type=int, default=0)
    parser.add_argument("--keep", type=int, default=0, metavar="N")
    chosen = parser.parse_args()
    report = run(chosen.count, chosen.first_seed, keep=chosen.keep)
    print(
        f"{report.count} inputs in {report.seconds:.0f} s: {report.read} read, "
        f"{report.count - report.read} refused in {len(report.outcomes)} ways; slowest "
        f"{1000 * report.slowest_s:.0f} ms (seed {report.slowest_seed}); no other exception."
    )


if __name__ == "__main__":
    main()
