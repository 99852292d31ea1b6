"""Reading tables of light as instruments and spreadsheets write them."""

from __future__ import annotations

import pytest

from planner.catalogue.spectrum_csv import SpectrumError, SpectrumReading, parse_spectrum
from planner.plan.spectrum import SpectrumQuantity

POWER, PHOTONS = SpectrumQuantity.POWER, SpectrumQuantity.PHOTONS


def read(
    text: str | bytes, quantity: SpectrumQuantity | None = None, encoding: str = "utf-8"
) -> SpectrumReading:
    data = text if isinstance(text, bytes) else text.encode(encoding)
    return parse_spectrum(data, key="lamp", name="Lamp", quantity=quantity)


PLAIN = "wavelength (nm),power (W/nm)\n400,0.5\n407.5,1\n700,0.25\n"


@pytest.mark.parametrize(
    "text",
    [
        PLAIN,
        PLAIN.replace("\n", "\r\n"),
        PLAIN.replace("\n", "\r"),
        PLAIN.replace(",", "\t"),
        PLAIN.replace(",", ";"),
        PLAIN.replace(",", ";").replace(".", ","),
        PLAIN.replace(",", "\t").replace(".", ","),
        "\ufeff" + PLAIN,
        "\n\n" + PLAIN.replace("\n", "\n\n"),
        PLAIN.replace("\n", ",\n"),
        "# a remark\n" + PLAIN + "# another\n",
        'wavelength (nm),power (W/nm)\n"400","0,5"\n"407,5","1"\n"700","0,25"\n',
        "wavelength (nm),power (W/nm)\n700,0.25\n407.5,1\n400,0.5\n",
        "wavelength (nm),power (W/nm)\n4e2,5E-1\n4.075e+2,+1\n700.,.25\n",
        "power (W/nm),wavelength (nm)\n0.5,400\n1,407.5\n0.25,700\n",
        "Instrument;an invented one\nIntegration time;100\nDate;2026-01-31\n\n"
        + PLAIN.replace(",", ";"),
        "no;wavelength (nm);power (W/nm)\n1;400;0.5\n2;407.5;1\n3;700;0.25\n",
    ],
)
def test_one_table_in_many_dresses(text: str) -> None:
    reading = read(text)
    assert reading.spectrum.wavelengths_nm == (400.0, 407.5, 700.0)
    assert reading.spectrum.values == (0.5, 1.0, 0.25)
    assert reading.spectrum.quantity is POWER


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "latin-1"])
def test_the_micro_sign_survives_every_encoding(encoding: str) -> None:
    text = "Wellenlänge [nm];Photonen [µmol/s/nm]\n400;0,5\n500;1\n700;0,25\n"
    reading = read(text, encoding=encoding)
    assert reading.spectrum.quantity is PHOTONS
    assert not any("read as power" in note for note in reading.notes)


@pytest.mark.parametrize(
    ("header", "quantity"),
    [
        ("nm,W", POWER),
        ("Wavelength,W/m2/nm", POWER),
        ("lambda,mW nm^-1", POWER),
        ("λ (nm),µW/cm²/nm", POWER),
        ("Wavelength (nm),Wm-2nm-1", POWER),
        ("wavelength,Spectral Irradiance", POWER),
        ("wavelength,relative power", POWER),
        ("Wellenlänge,Strahlungsleistung", POWER),
        ("wavelength,radiant flux", POWER),
        ("nm,umol", PHOTONS),
        ("nm,µmol m-2 s-1 nm-1", PHOTONS),
        ("nm,μmol/(m²·s·nm)", PHOTONS),
        ("wavelength,Photon flux", PHOTONS),
        ("wavelength,PPFD", PHOTONS),
        ("wavelength,PFD", PHOTONS),
        ("wavelength,relative quanta", PHOTONS),
        ("wavelength,photon power", PHOTONS),
    ],
)
def test_the_header_says_what_is_counted(header: str, quantity: SpectrumQuantity) -> None:
    reading = read(f"{header}\n400,1\n500,2\n600,1\n")
    assert reading.spectrum.quantity is quantity
    assert not any("read as power" in note for note in reading.notes)


@pytest.mark.parametrize("header", ["", "wavelength,relative\n", "nm,intensity (a.u.)\n"])
def test_an_unclear_kind_is_power_and_said_so_unless_told(header: str) -> None:
    text = f"{header}400,1\n500,2\n600,1\n"
    reading = read(text)
    assert reading.spectrum.quantity is POWER
    assert "were read as power per nm" in reading.notes[0]
    told = read(text, PHOTONS)
    assert told.spectrum.quantity is PHOTONS
    assert not any("read as" in note for note in told.notes)


def test_a_table_with_both_kinds_gives_the_one_asked_for() -> None:
    text = "nm,W/nm,µmol/s/nm\n400,1,3\n500,2,8\n600,1,5\n"
    assert read(text).spectrum.values == (3.0, 8.0, 5.0)
    assert "'µmol/s/nm' was taken" in read(text).notes[0]
    assert read(text, POWER).spectrum.values == (1.0, 2.0, 1.0)
    assert read(text, PHOTONS).spectrum.values == (3.0, 8.0, 5.0)


def test_cut_spectra_are_read_with_a_remark() -> None:
    notes = read("nm,W\n450,1\n455,1\n460,1\n").notes
    assert len(notes) == 2
    assert "begins at 450 nm" in notes[0]
    assert "ends at 460 nm" in notes[1]


ROWS = "400,1\n500,2\n600,1\n"


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        # nothing there
        ("", r"no line of numbers.*'450,0\.82'"),
        ("wavelength,power\n", r"no line of numbers"),
        ("400 1\n500 2\n600 1\n", r"no line of numbers.*comma, semicolon or tab"),
        ("400\n500\n600\n", r"Line 1 has one column"),
        ("nm,W\n400,1\n500,2\n", r"2 lines of numbers; .*at least 3"),
        ("nm,W\n400,0\n500,0\n600,0\n", r"^The spectrum is empty"),
        ("nm,W\n720,1\n730,2\n740,1\n", r"^The spectrum has no light between 400 and 700 nm"),
        # numbers
        ("nm,W\n400,1\n500,-0.1\n600,1\n", r"Line 3: a value of -0\.1 is below 0"),
        ("nm,W\n400,1\n500,−0.1\n600,1\n", r"Line 3: a value of -0\.1 is below 0"),
        ("nm,W\n400,1\n500,NaN\n600,1\n", r"Line 3: 'NaN' is not a number"),
        ("nm,W\n400,NaN\n500,1\n600,1\n", r"Line 2: 'NaN' is not a number"),
        ("nm,W\nNaN,1\n500,1\n600,1\n", r"Line 2: 'NaN' is not a number"),
        ("nm,W\n,1\n500,1\n600,1\n", r"Line 2 has nothing in column 1"),
        ("nm,W\n400,1\n500,inf\n600,1\n", r"Line 3: 'inf' is not a number"),
        ("nm,W\n400,1\n500,1e999\n600,1\n", r"Line 3: inf is larger than any spectrum"),
        ("nm,W\n400,1\n\n500,\n600,1\n", r"Line 4 has nothing in column 2"),
        ("nm,W\n400,1\n500,2 W\n600,1\n", r"Line 3: '2 W' is not a number"),
        ("nm,W\n400,1\n500,2\ntotal,3\n", r"Line 4: 'total' is not a number"),
        ("nm;W\n400;1.204,5\n500;2\n600;1\n", r"decimal point and line 2 a comma"),
        ("nm;W\n400;1.5\n500;2,5\n600;1\n", r"Line 2 has a decimal point and line 3 a comma"),
        (
            "nm;W\n400;980\n500;1.002\n600;1.015\n",
            r"Line 3: the mark in '1\.002' may be a decimal mark",
        ),
        (
            "nm;W\n400;980\n500;1,002\n600;1,015\n",
            r"Line 3: the mark in '1,002' may .*between thousands",
        ),
        # columns
        ("nm,W\n400,0,5\n500,0,7\n600,0,1\n", r"Line 2 has 3 columns where 2 .*decimal comma"),
        ("400,0,5\n500,0,7\n600,0,1\n", r"3 columns and no line of names.*decimal comma"),
        ("nm,a,b\n400,1,2\n500,1,2\n600,1,2\n", r"not clear which column to read: 'a' and 'b'"),
        (f"nm,{'a' * 999},{'b' * 999}\n400,1,2\n500,1,2\n600,1,2\n", r"'a{39}…' and 'b{39}…'\."),
        ("nm,W 1,W 2\n400,1,2\n500,1,2\n600,1,2\n", r"'W 1' and 'W 2'"),
        # wavelengths
        (f"wavelength (um),W\n{ROWS}", r"'wavelength \(um\)' is in micrometres.*by 1000"),
        (f"wavelength [µm],W\n{ROWS}", r"is in micrometres"),
        (f"Wellenlänge (μm),W\n{ROWS}", r"is in micrometres"),
        ("λ,W\n0.4,1\n0.5,2\n0.6,1\n", r"end at 0\.6, as in micrometres.*by 1000"),
        (f"wavelength (Å),W\n{ROWS}", r"is not in nanometres"),
        ("λ,W\n4000,1\n5000,2\n6000,1\n", r"begin at 4000, as in ångström"),
        (f"photon energy (eV),W\n{ROWS}", r"is not in nanometres"),
        ("nm,W\n40,1\n500,2\n600,1\n", r"Line 2: a wavelength of 40 nm lies outside"),
        ("nm,W\n-400,1\n500,2\n600,1\n", r"Line 2: a wavelength of -400 nm lies outside"),
        ("nm,W\n400,1\n500,2\n500.0,1\n", r"Lines 3 and 4 both stand for 500 nm"),
        ("nm,W\n400,1\n500,2\n600,1\n500,2\n", r"Lines 3 and 5 both stand for 500 nm"),
        ("nm,W\n400,1\n600,2\n500,1\n700,1\n", r"Line 4: 500 nm stands after 600 nm"),
        ("nm,W\n700,1\n500,2\n600,1\n400,1\n", r"Line 4: 600 nm stands after 500 nm"),
        # not text
        (b"nm,W\x00\x00\n400,1\n", r"not text"),
        (b"\xff\xfe\x00", r"UTF-16 text but is damaged"),
        ("nm,W\n" + "400,1\n" * 800_000, r"larger than 4 MB"),
        ("nm,W\n" + "".join(f"{300 + i / 100},1\n" for i in range(10_001)), r"at most 10000"),
        (b"400," + b"9" * 200_000 + b"\n500,1\n600,1\n", r"Line 1 cannot be cut into columns"),
    ],
)
def test_what_is_no_spectrum_is_refused_with_its_place(text: str | bytes, sentence: str) -> None:
    with pytest.raises(SpectrumError, match=sentence) as refusal:
        read(text)
    assert str(refusal.value)[0].isupper()
    assert str(refusal.value).endswith((".", ")."))


def test_numbers_that_only_look_grouped_are_read() -> None:
    assert read("nm,W\n400,0.125\n500,1.250\n600,1\n").spectrum.values == (0.125, 1.25, 1.0)
    assert read("nm,W\n400,1.125\n500,1.250\n600,1.500\n").spectrum.values == (1.125, 1.25, 1.5)
    assert read("nm,W\n400,980\n500,1.02\n600,1.015\n").spectrum.values == (980.0, 1.02, 1.015)
