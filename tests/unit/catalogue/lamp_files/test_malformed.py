"""Broken files end in one sentence with the line, what was found and what is expected."""

from __future__ import annotations

import time
import warnings
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planner.catalogue.lamp_files.photometry import LampFileError
from planner.catalogue.lamp_files.reading import parse_lamp_file, read_lamp_file
from tests.reference import fuzz_lamp_files as fuzz

SAMPLES = Path(__file__).parents[3] / "data" / "lamp_files"
# Its lines: 8 TILT, 9 lamp, 10 gear, 11-12 vertical angles, 13 horizontal, 14 ff candela.
LINES = (SAMPLES / "lm63-2019.ies").read_text("ascii").splitlines()
KEPT = sorted(fuzz.CORPUS.glob(f"*{fuzz.SUFFIX}"))


def test_the_sample_has_the_lines_this_file_speaks_of() -> None:
    assert LINES[7] == "TILT=NONE"
    assert LINES[8] == "1 -1 1 10 5 1 2 0.3 0.6 0"
    assert LINES[12] == "0 22.5 45 67.5 90"


@pytest.mark.parametrize(
    ("line", "text", "told"),
    [
        (8, "TILTED", "line 23: there is no line that begins with 'TILT='"),
        (8, "TILT=INCLUDE", r"line 9: found -1 for the number of tilt angles; .* from 1 to 721"),
        (9, "1.5 -1 1 10 5 1 2 0 0 0", "line 9: found 1.5 for the number of lamps; a whole number"),
        (9, "1 x 1 10 5 1 2 0 0 0", "line 9: found 'x' where the lumens per lamp is expected"),
        (9, "1 -1 0 10 5 1 2 0 0 0", "found 0 for the candela multiplier; a number above 0"),
        (9, "1 -1 1 1 5 1 2 0 0 0", "found 1 for the number of vertical angles; .* 2 to 721"),
        (9, "1 -1 1 722 5 1 2 0 0 0", "found 722 for the number of vertical angles"),
        (9, "1 -1 1 10 362 1 2 0 0 0", "found 362 for the number of horizontal angles"),
        (9, "1 -1 1 10 5 4 2 0 0 0", r"found 4 for the photometric type \(1 = C, 2 = B, 3 = A\)"),
        (9, "1 -1 1 10 5 1 3 0 0 0", r"found 3 for the units type \(1 = feet, 2 = metres\)"),
        (9, "1 -1 1 10 5 1 2 9999 0 0", "luminous opening is larger than 1000"),
        (10, "0 1 40", "line 10: found 0 for the ballast factor; a number above 0 is expected"),
        (10, "1 1 -40", "line 10: found -40 for the input watts; 0 or more is expected"),
        (10, "1 1 nan", "line 10: found 'nan' where the input watts is expected, a number"),
        (11, "0 10 20 20 40 50 60 70", "line 11: found 20 for a vertical angle after 20; each"),
        (11, "0 10 20 30 40 50 60 700", r"line 11: found 700 .* from 0° to 180° is expected"),
        (13, "0 22.5 45 67.5 80", "line 13: the horizontal angles run from 0° to 80°; they must"),
        (14, "inf 1 1 1 1 1 1 1", "line 14: found 'inf' where a candela value is expected"),
        (14, "1e13 1 1 1 1 1 1 1", "line 14: found '1e13' for a candela value, far beyond"),
        (14, "-50 1 1 1 1 1 1 1", r"candela value is far below 0 \(the least is -50\)"),
        (14, "1 1 1 1 1 1 1", "line 23: the file ends after 49 of 50 numbers where a candela"),
    ],
)
def test_lm63_says_the_line_what_was_found_and_what_is_expected(
    line: int, text: str, told: str
) -> None:
    lines = [*LINES]
    lines[line - 1] = text
    with pytest.raises(LampFileError, match=told) as caught:
        parse_lamp_file("\n".join(lines).encode())
    assert caught.value.line is not None
    assert "\n" not in str(caught.value)


def test_all_dark_is_refused() -> None:
    lines = [*LINES[:13], " ".join(["0"] * 50)]
    with pytest.raises(LampFileError, match="line 14: the lamp gives no light in any direction"):
        parse_lamp_file("\n".join(lines).encode())


def test_a_little_below_zero_is_taken_as_zero_and_told() -> None:
    lines = [*LINES]
    lines[13] = lines[13].replace("1000", "-0.5", 1)
    lamp = parse_lamp_file("\n".join(lines).encode())
    assert lamp.candela.min() == 0
    assert "a little below 0" in " ".join(lamp.warnings)


@pytest.mark.parametrize(
    ("data", "told"),
    [
        (b"", "the file is empty"),
        (b" \r\n\t\r\n", "the file is empty"),
        (b"IES:LM-63-2019\0\0", "not plain text"),
        (b"%PDF-1.4 something else", "neither LM-63 .* nor EULUMDAT"),
        ("a note\nabout lamps\n".encode("utf-16"), "not plain text"),
    ],
)
def test_what_is_no_lamp_file_is_refused(data: bytes, told: str) -> None:
    with pytest.raises(LampFileError, match=told):
        parse_lamp_file(data)


def test_the_name_decides_only_what_the_content_cannot() -> None:
    with pytest.raises(LampFileError, match="line 2: found 'b' where the type of the luminaire"):
        parse_lamp_file(b"a\nb\nc\n", suffix=".LDT")
    with pytest.raises(LampFileError, match="no line that begins with 'TILT='"):
        parse_lamp_file(b"a\nb\nc\n", suffix=".ies")


def test_files_that_cannot_be_read_are_named(tmp_path: Path) -> None:
    with pytest.raises(LampFileError, match=r"the file 'none.ies' cannot be read: No such file"):
        read_lamp_file(tmp_path / "none.ies")
    with pytest.raises(LampFileError, match="cannot be read: Is a directory"):
        read_lamp_file(tmp_path)


GREATEST = b"IES:LM-63-2019\nTILT=NONE\n1 -1 1 721 361 1 2 0 0 0\n1 1 40\n"


@pytest.mark.parametrize(
    "data",
    [
        b"A" * 10_000_001,
        b" " * 10_000_000,
        b"IES:LM-63-2019\n" + b"9" * 9_000_000,
        GREATEST,
        GREATEST + b"1 " * 4_900_000,
        GREATEST + b"\n" * 9_000_000,
        b"IES:LM-63-2019\n" + b"[A] b\n" * 1_600_000,
        b"IES:LM-63-2019\n[TEST] x\n" + b"[MORE] y\n" * 60_000,
        b"a\n1\n0\n361\n1\n721\n1\n" + b"1\n" * 500_000,
    ],
    ids=range(9),
)
def test_large_files_end_soon(data: bytes) -> None:
    start = time.perf_counter()
    with pytest.raises(LampFileError):
        parse_lamp_file(data)
    assert time.perf_counter() - start < 3


def test_the_greatest_table_allowed_is_read_soon() -> None:
    vertical = " ".join(f"{0.25 * k:g}" for k in range(721))
    horizontal = " ".join(str(k) for k in range(361))
    candela = "\n".join(["100 " * 721] * 361)
    start = time.perf_counter()
    lamp = parse_lamp_file(GREATEST + f"{vertical}\n{horizontal}\n{candela}".encode())
    assert time.perf_counter() - start < 5
    assert lamp.candela.shape == (360, 721)


@settings(max_examples=200, deadline=None)
@given(st.binary(max_size=400))
def test_any_bytes_end_in_a_sentence(data: bytes) -> None:
    fuzz.exercise(data)
    fuzz.exercise(b"IES:LM-63-2002\nTILT=NONE\n" + data)


@settings(max_examples=200, deadline=None)
@given(
    st.lists(
        st.sampled_from(["0", "1", "2", "3", "45", "90", "180", "270", "360", "-1", "0.5", "\n"]),
        max_size=80,
    )
)
def test_any_numbers_end_in_a_sentence_or_a_lamp(tokens: list[str]) -> None:
    fuzz.exercise(("IES:LM-63-2002\nTILT=NONE\n1 -1 1 " + " ".join(tokens)).encode())
    fuzz.exercise(("a\n2\n0\n1\n0\n2\n0\n\n\n\n\n\n" + "\n".join(tokens)).encode())


def test_there_is_a_kept_corpus() -> None:
    assert len(KEPT) > 50


@pytest.mark.parametrize("path", KEPT, ids=lambda path: path.stem)
def test_the_kept_corpus_ends_in_a_sentence_or_a_lamp(path: Path) -> None:
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        fuzz.exercise(path.read_bytes())
