"""Doing with a lamp file, however broken, all that the program does: used by ``fuzz``.

The kept corpus holds inputs that once showed something new.
"""

from __future__ import annotations

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

CORPUS = Path(__file__).parent / "fuzz_corpus"
# Neither reading text tools nor the rule that text is UTF-8 applies to broken input.
SUFFIX = ".corpus"

WORDS = [
    *(b"0", b"-1", b"1", b"2", b"3", b"4", b"90", b"180", b"270", b"360", b"361", b"721", b"722"),
    *(b"-90", b"-180", b"45.5", b"nan", b"inf", b"-inf", b"1e308", b"1e999", b"1e-320", b"-0.0"),
    *(b"1,5", b"1.5,", b"1.2.3", b"0x10", b"1_0", b"+.5", b".", b"-", b"99999999999999999999"),
    *(b"TILT=NONE", b"TILT=INCLUDE", b"TILT=a.tlt", b"tilt = none", b"[MORE]", b"[TEST] x"),
    *(b"[BLOCK]", b"[", b"]", b"IESNA91", b"IESNA:LM-63-1995", b"IES:LM-63-2019", b"IES"),
    *(b"\r\n", b"\n", b"\r", b"\t", b",", b" ", b";", b"\x00", b"\x1a", b"\xff", b"\xb5\xb0"),
    *(b"\xe2\x88\x92", b"\xef\xbb\xbf", b"\xd9\xa3", "¹²".encode(), b"9" * 400, b"A" * 5000),
]


def exercise(data: bytes) -> bool:
    """Do with an input all that the program does; False where it was refused in a sentence.

    Raises whatever comes out that is not ``LampFileError``.
    """
    try:
        lamp = parse_lamp_file(data)
    except LampFileError as error:
        _check_sentence(str(error))
        return False
    _check_value(lamp)
    return True


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
