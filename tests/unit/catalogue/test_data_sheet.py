"""Lines of data sheets as people write them, and what a reader takes from each by hand."""

from __future__ import annotations

import math

import pytest

from planner.catalogue.data_sheet import DataSheetError, read_data_sheet, says_lamp
from planner.plan.lamp import BarsBody, CosineProfile, PointBody

PANEL_CM = [
    # line, watts, µmol/s, length and width in cm, beam in degrees
    ("240 W 600 umol 30x30 cm", 240, 600, 30, 30, 120),
    ("240W, 600 µmol/s, 30 x 30 cm", 240, 600, 30, 30, 120),
    ("240W 600μmol/s 30×30cm 120°", 240, 600, 30, 30, 120),
    ("600 umol/s @ 240 watts, 300x300 mm", 240, 600, 30, 30, 120),
    ("PPF 600 240 W 0.3x0.3 m", 240, 600, 30, 30, 120),
    ("PPF: 600 µmol s⁻¹; power: 240 W; size: 60x30 cm", 240, 600, 60, 30, 120),
    ("Power 240W\nPPF (µmol/s): 624\nPPE: 2.6\nBeam angle: 90 deg\n470 x 270 x 60 mm",
     240, 624, 47, 27, 90),
    ("100 W 2.5 µmol/J 24x24 cm", 100, 250, 24, 24, 120),
    ("100 W 2,5 umol/J 24x24cm", 100, 250, 24, 24, 120),
    ("PPE 2.7 100W 24 x 24 cm", 100, 270, 24, 24, 120),
    ("600 umol/s 2.5 umol/J 30x30 cm", 240, 600, 30, 30, 120),
    ("240 W 600 umol 2.5 umol/J 30x30 cm", 240, 600, 30, 30, 120),
    ("0.24 kW 600 micromol/s 30 by 30 cm", 240, 600, 30, 30, 120),
    ("240 W 600 umols/sec 12x12 in", 240, 600, 30.48, 30.48, 120),
    ('240 W 600 umol 12" x 12"', 240, 600, 30.48, 30.48, 120),
    ('600 umol/s @ 240W 23 5/8" x 11 3/4"', 240, 600, 60.01, 29.85, 120),
    ("240 W 600 umol 1x1 ft", 240, 600, 30.48, 30.48, 120),
    ("240 W 600 umol 2' x 1'", 240, 600, 60.96, 30.48, 120),
    # Thousands: 1.7 µmol/s from 650 W would be 0.003 µmol/J.
    ("650 W 1,700 µmol/s 110x105 cm", 650, 1700, 110, 105, 120),
    ("650 W PPF 1.700 µmol/s 110 x 105 cm", 650, 1700, 110, 105, 120),
    ("1000 W 2,600 umol/s 1x1 m", 1000, 2600, 100, 100, 120),
    # What is no figure of the lamp itself is passed over.
    ("AC 100-277V 50/60Hz 240W 3500K 2.5 µmol/J covers 4x4 ft 45x45cm IP65",
     240, 600, 45, 45, 120),
    ("1000 W equivalent, draws 240 W, 600 umol/s, 30x30 cm", 240, 600, 30, 30, 120),
    ("240 W 600 umol/s 30x30 cm PPFD 900 umol/m2/s at 30 cm", 240, 600, 30, 30, 120),
    ("240 W 600 µmol/s 30x30 cm, 850 µmol m⁻² s⁻¹ @ 45 cm", 240, 600, 30, 30, 120),
    ("240 W 600 umol 30x30 cm CRI 90 50000 h 12000 lm", 240, 600, 30, 30, 120),
    ("240 W 600 umol, 60x60 cm tent, 30x30 cm", 240, 600, 30, 30, 120),
    ("240 W 600 umol no size told", 240, 600, 30, 30, 120),
    ("20 W 42 umol/s LED bar 60 cm", 20, 42, 60, 2.5, 120),
    ("20W 42µmol·s⁻¹ bar 0.6 m 60 degrees", 20, 42, 60, 2.5, 60),
    ("T5 tube 45 W 100 umol/s 4 ft 120 degree", 45, 100, 121.92, 2.5, 120),
    # π 45² / 4 = 1590.4 cm², whose root is 39.88 cm.
    ("240 W 600 umol 45 cm dia", 240, 600, 39.88, 39.88, 120),
    ("240 W 600 umol Ø 45 cm", 240, 600, 39.88, 39.88, 120),
]  # fmt: skip


@pytest.mark.parametrize(("line", "watts", "ppf", "length", "width", "beam"), PANEL_CM)
def test_a_line_is_read_as_a_person_reads_it(
    line: str, watts: float, ppf: float, length: float, width: float, beam: float
) -> None:
    model = read_data_sheet(line).model
    assert model.watts == pytest.approx(watts)
    assert model.ppf == pytest.approx(ppf)
    assert [side * 100 for side in model.size] == pytest.approx([length, width], abs=0.02)
    assert isinstance(model.profile, CosineProfile)
    assert model.profile.beam_angle_deg == pytest.approx(beam)


@pytest.mark.parametrize(
    ("line", "count"),
    [
        ("PPF 1700 µmol/s 650W 6 bars 110x105 cm 120°", 6),
        ("650 W 1,700 µmol/s 8-bar 43 x 42 in", 8),
        ("650 W 1700 umol bars: 10, 110x105 cm", 10),
        ("650 W 2.6 umol/J 4 led bars 110x110cm", 4),
    ],
)
def test_bars_are_counted(line: str, count: int) -> None:
    body = read_data_sheet(line).model.body
    assert isinstance(body, BarsBody)
    assert body.count == count
    assert body.length > 1.0


def test_a_bulb_has_no_size() -> None:
    assert read_data_sheet("E27 bulb 15 W 30 µmol/s").model.body == PointBody()


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("240 W 30x30 cm", "nothing of the lamp's photon flux: add it in µmol/s (PPF)"),
        ("100 W 12000 lm 30x30cm", "photon flux, and lumens are weighted for the eye"),
        ("240 W PPFD 900 µmol/m²/s", "photon flux, and PPFD is the light on a place"),
        ("600 µmol/s 30x30 cm", "nothing of the power"),
        ("240 W 650 umol 30x30", "'30x30' has no unit; write 30x30 cm or 30x30 in"),
        ("2 x 100 W 250 umol", "can be 2 lamps of 100 W or one lamp with 2 parts"),
        ("240 W 2.5 umol/J 800 umol/s", "240 W at 2.5 µmol J⁻¹ make 600 µmol s⁻¹"),
        ("240 W 3000 umol 30x30cm", "even a perfect lamp cannot exceed 5.85"),
        ("100 W 240 W 600 umol 30x30 cm", "different powers (100 and 240)"),
        ("240 W 600 umol 30x30 cm 60x60 cm", "more than one size"),
        ("240 W 600 umol 30x30 m", "Check the unit"),
        ("4 bars 60x3 cm 80 W 200 umol", "4 bars do not fit side by side into 3 cm"),
        ("6 bars 650 W 1700 umol", "6 bars and no size"),
        ("400-450 W 1000 umol 1x1 m", "400 to 450"),
        ("0.5 umol/s 0,24 W 200° 5x5 cm", "must be from 10° to 179°, not 200°"),
        ("1,200 umol 0,500 kW 0.5x0.5 m 30x30 umol", "different photon fluxes"),
        ("hello, world", "names no lamp"),
        ("0 W 600 umol", "must be above 0"),
    ],
)
def test_what_cannot_be_read_says_so_in_one_sentence(line: str, said: str) -> None:
    with pytest.raises(DataSheetError) as caught:
        read_data_sheet(line)
    message = str(caught.value)
    assert said in message
    assert message.endswith(".")
    assert "\n" not in message


def test_a_number_of_two_readings_is_asked_where_both_could_be() -> None:
    # 1.5 W and 4 µmol/s are a small lamp, 1500 W and 4000 µmol/s a large one.
    with pytest.raises(DataSheetError, match=r"can be read as 1\.5 or as 1500|4 or as 4000"):
        read_data_sheet("1,500 W 4,000 umol 30x30 cm")


def test_what_is_taken_as_usual_is_told() -> None:
    read = read_data_sheet("240 W 600 umol")
    assert read.notes == ("size taken as 30 x 30 cm", "beam taken as 120°, 30° more or less")
    assert read.model.beam_uncertainty_deg == 30
    assert read_data_sheet("100 W 250 umol 30x30 cm 90°").model.beam_uncertainty_deg == 10
    assert read.words.startswith("240 W, 600 µmol s⁻¹, 30 x 30 cm (size taken")
    assert read.model.source == "As pasted: 240 W 600 umol"
    assert math.isclose(read.model.ppf / read.model.watts, 2.5)


@pytest.mark.parametrize(
    ("text", "is_one"),
    [
        ("240 W 600 umol", True),
        ("240 W 30x30 cm", True),
        ("PPE 2.7, 100 W", True),
        ("240 W", False),
        ("600 µmol/s", False),
        ("30x30 cm", False),
        ("59.5 cm", False),
        ("", False),
        ("back wall", False),
        ("12", False),
    ],
)
def test_a_lamp_is_told_from_other_text(text: str, is_one: bool) -> None:
    assert says_lamp(text) is is_one


@pytest.mark.parametrize(
    ("said", "dims"),
    [("", True), ("dimmable 0-10V", True), ("non-dimmable", False), ("not dimmable", False),
     ("without dimmer", False), ("nondimmable", False)],
)  # fmt: skip
def test_whether_it_can_be_dimmed_is_read(said: str, dims: bool) -> None:
    assert read_data_sheet(f"240 W 600 umol 30x30 cm {said}").model.dimmable is dims
