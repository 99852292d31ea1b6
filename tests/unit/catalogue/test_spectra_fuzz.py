"""Whatever a file holds, reading it gives a spectrum or a sentence, and soon."""

from __future__ import annotations

import math

from hypothesis import given, settings
from hypothesis import strategies as st

from planner.catalogue.spectrum_csv import SpectrumError, parse_spectrum
from planner.metrics.spectra import spectrum_figures
from planner.plan.spectrum import Spectrum, SpectrumQuantity

KINDS = st.sampled_from([None, *SpectrumQuantity])
ODD_CELLS = (
    *("", " ", "NaN", "inf", "-", "−5", "1e400", "1e-320", "1.234,5", '"', '"4,5"', "400 nm"),
    *("wavelength (nm)", "W/nm", "µmol", "um", "sep=;", "#", "\ufeff", "٣", "½", "0x10", "1_0"),
)
CELLS = st.one_of(
    st.integers(-10, 12_000).map(str),
    st.floats(allow_nan=True, allow_infinity=True).map(repr),
    st.floats(300, 900).map(lambda x: f"{x:.2f}".replace(".", ",")),
    st.sampled_from(ODD_CELLS),
    st.text(max_size=6),
)
DELIMITERS = st.sampled_from([",", ";", "\t", " ", ", ", "|"])
LINES = st.lists(st.lists(CELLS, min_size=1, max_size=4), max_size=12)


def judge(data: bytes, quantity: SpectrumQuantity | None) -> None:
    try:
        reading = parse_spectrum(data, key="k", name="n", quantity=quantity)
    except SpectrumError as error:
        sentence = str(error)
    else:
        sentence = ""
        check_figures(reading.spectrum)
    assert not sentence or 20 < len(sentence) < 600


def check_figures(spectrum: Spectrum) -> None:
    figures = spectrum_figures(spectrum)
    assert 0 < figures.lux_per_umol < math.inf
    assert 3.34 < figures.umol_per_joule_of_par < 5.86
    shares = figures.shares
    assert math.isclose(shares.blue + shares.green + shares.red, 1, rel_tol=1e-9)


@settings(max_examples=600, deadline=None)
@given(st.binary(max_size=400), KINDS)
def test_any_bytes(data: bytes, quantity: SpectrumQuantity | None) -> None:
    judge(data, quantity)


@settings(max_examples=800, deadline=None)
@given(LINES, DELIMITERS, st.sampled_from(["\n", "\r\n", "\r"]), KINDS)
def test_any_table(
    lines: list[list[str]], delimiter: str, ending: str, quantity: SpectrumQuantity | None
) -> None:
    text = ending.join(delimiter.join(cells) for cells in lines)
    judge(text.encode("utf-8", "surrogatepass"), quantity)


ROWS = st.lists(
    st.tuples(
        st.floats(100, 10_000),
        st.one_of(st.floats(0, 1e30), st.sampled_from([0.0, 5e-324, 1e-300, 1e-30, 1e30])),
    ),
    min_size=3,
    max_size=30,
    unique_by=lambda row: row[0],
)


@settings(max_examples=600, deadline=None)
@given(ROWS, st.sampled_from(["nm,W", "nm,µmol", "nm,x"]), st.booleans())
def test_any_numbers_that_are_allowed(
    rows: list[tuple[float, float]], header: str, falling: bool
) -> None:
    ordered = sorted(rows, reverse=falling)
    text = header + "\n" + "".join(f"{nm!r},{value!r}\n" for nm, value in ordered)
    judge(text.encode(), None)


VALUES = st.lists(st.floats(0, 1e6), min_size=5, max_size=40).filter(lambda v: max(v) > 1e-3)


@settings(max_examples=200, deadline=None)
@given(
    VALUES,
    st.sampled_from([",", ";", "\t"]),
    st.sampled_from([".", ","]),
    st.sampled_from(["\n", "\r\n"]),
    st.sampled_from(["utf-8", "utf-8-sig", "utf-16"]),
)
def test_what_was_written_comes_back(
    values: list[float], delimiter: str, mark: str, ending: str, encoding: str
) -> None:
    nm = [401.5 + 7.25 * i for i in range(len(values))]

    def cell(number: float) -> str:
        text = f"{number:.6e}".replace(".", mark)
        return f'"{text}"' if mark == delimiter else text

    rows = [f"{cell(x)}{delimiter}{cell(y)}" for x, y in zip(nm, values, strict=True)]
    text = ending.join([f"nm{delimiter}W", *rows])
    spectrum = parse_spectrum(text.encode(encoding), key="k", name="n").spectrum
    assert spectrum.wavelengths_nm == tuple(nm)
    assert spectrum.values == tuple(float(f"{y:.6e}") for y in values)
