"""A lamp from a line of its data sheet, as people write and copy them: '240 W 600 µmol/s 30x30 cm'.

Each figure is known by its unit or by the word before it, in whatever order they stand. What
says nothing about the lamp itself (voltage, colour temperature, the area it is said to cover,
PPFD under it) is passed over. Nothing is guessed where two readings are possible: such a line
is refused with one sentence that says what to write.
"""

from __future__ import annotations

import itertools
import math
import re
from dataclasses import dataclass
from typing import Final

from planner.plan.lamp import (
    MOST_PER_JOULE,
    BarsBody,
    Body,
    CosineProfile,
    LampModel,
    PanelBody,
    PointBody,
    too_efficient,
)
from planner.plan.quantity import BEAM_ANGLE, BodyLength, quantity
from planner.units import (
    EFFICACY_UNIT,
    FLUX_UNIT,
    AmbiguousNumberError,
    LengthUnit,
    format_number,
    parse_length,
    parse_number,
)

LONGEST: Final = 4000
"""Characters beyond which a text is no line about one lamp."""

LEAST_PER_JOULE: Final = 0.3
"""µmol/J below which a number with two readings (1,700) is not read so: the weakest lamps hung
over plants give about three times as much (from memory)."""

_AGREE: Final = 0.1
"""How far flux, power and efficacy of one line may be apart; makers round each by itself."""

_BEAM_SAID_DEG: Final = 10.0
"""How far a beam angle as printed may be off, either way (common practice, no source)."""
_BEAM_UNSAID_DEG: Final = 30.0
"""The same where the sheet gives none: from a lensed 90° to nearly flat (no source either)."""

_USUAL_SIDE_M: Final = 0.3
_USUAL_STRIP_M: Final = 0.025
_SIZES: Final = quantity(BodyLength)

_PLAIN: Final = str.maketrans(
    {
        "µ": "u", "μ": "u", "²": "2", "⁻": "-", "−": "-", "¹": "1", "·": " ", "⋅": " ",
        "×": "x", "✕": "x", "″": '"', "”": '"', "“": '"', "′": "'", "’": "'", "–": "-",
        "⌀": " dia ", "ø": " dia ", "Ø": " dia ", "º": "°", "\u00a0": " ", "\u202f": " ",
    }
)  # fmt: skip

_N = r"\d+(?:[.,]\d+)*"
_UMOL = r"(?:(?:u|micro)\s?-?mol(?:e?s)?)"
_PER_S = r"(?:\s*(?:/|per)?\s*\(?s(?:ec(?:ond)?)?\b(?:\s*\^?-1)?\)?)"
_UNIT = r"(?:mm|cm|m|inch(?:es)?|in|feet|foot|ft|\"|')"
_LENGTH = rf"\d+(?:[ -]\d+/\d+|/\d+|[.,]\d+)?\s*{_UNIT}?"
_MEASURED = rf"\d+(?:[ -]\d+/\d+|/\d+|[.,]\d+)?\s*{_UNIT}(?!\w)"
_SIZE = rf"{_LENGTH}\s*(?:x|by)\s*{_LENGTH}(?:\s*(?:x|by)\s*{_LENGTH})?"

_PASSED_OVER: Final = tuple(
    re.compile(text)
    for text in (
        # PPFD: light on a place, whatever it is called.
        rf"(?:ppfd\W{{0,3}})?{_N}\s*{_UMOL}\s*(?:/|per)?\s*\(?m\s?\^?-?2\W{{0,4}}(?:per)?\W?s?"
        r"(?:ec)?(?:-1)?",
        rf"ppfd\W{{0,3}}{_N}(?:\s*{_UMOL}{_PER_S}?)?",
        # The lamp it is said to replace, the area it is said to light, where it is to hang.
        rf"{_N}\s*w(?:atts?)?\s*(?:hps|hid|mh)?\s*(?:equiv\w*|eq\b|replacement)",
        rf"(?:equiv\w*|replaces)\s*(?:to|of)?\s*(?:an?)?\s*{_N}\s*w(?:atts?)?\b",
        rf"{_SIZE}\s*(?:tents?|area|coverage|footprint)\b",
        rf"\b(?:cover(?:s|age|ing)?|footprint|for|area|veg\w*|flower\w*|bloom|tent)\b[^\d]{{0,14}}"
        rf"{_SIZE}(?:\s*(?:tent|area|space|coverage|footprint))?",
        rf"(?:\bat\b|@|hung|distance|height)[^\d]{{0,8}}{_LENGTH}(?=\s|,|;|$)(?!\s*(?:w|u))",
        # Other units of a data sheet, ranges included.
        rf"{_N}(?:\s*[-/~]\s*{_N})?\s*(?:v(?:ac|dc)?|hz|kg|lbs?|g|lm(?:/w)?|lumens?|lux|lx|ma|a"
        r"|nm|%|h|hrs?|hours|years?|yrs?|°\s*[cf]|k(?:elvin)?|btu(?:/h)?|cri|ra|db)(?![\w°])",
        r"\bip\s?\d\d\b",
        rf"\b(?:cri|ra|l70|l80|l90|pf|power factor|thd)\W{{0,3}}{_N}",
    )
)

_EFFICACY: Final = (
    rf"(?P<n>{_N})\s*{_UMOL}\s*(?:/|per)?\s*(?:j(?:oule)?|w\s?s)\b(?:\s*\^?-1)?",
    rf"\b(?:ppe|efficacy|efficiency)\W{{0,3}}(?P<n>{_N})(?:\s*{_UMOL}(?:\s*/?\s*(?:j|ws?)\b)?)?",
)
_FLUX: Final = (
    rf"\b(?:ppf|photon flux|flux)\s*\(?\s*{_UMOL}{_PER_S}\)?\W{{0,3}}(?P<n>{_N})",
    rf"(?P<n>{_N})\s*{_UMOL}{_PER_S}?",
    rf"\b(?:ppf|photon flux|flux)\W{{0,4}}(?P<n>{_N})",
)
_WATTS: Final = (
    rf"(?P<n>{_N})\s*(?P<k>k)?w(?:att(?:s|age)?)?\b",
    rf"\b(?:power|wattage|watts?|draw)\s*(?:\(w\)|draw)?\W{{0,3}}(?P<n>{_N})",
)
_BEAM: Final = (
    rf"(?P<n>{_N})\s*(?:°|deg(?:rees?)?\b)",
    rf"\bbeam(?:\s*angle)?\W{{0,3}}(?P<n>{_N})",
)
_BARS: Final = (r"(?P<n>\d+)\s*(?:-|x|led|\s)*\s*bars?\b", r"\bbars\W{0,3}(?P<n>\d+)\b")
_ROUND: Final = (
    rf"\bdia(?:m(?:eter)?)?\W{{0,3}}(?P<n>{_LENGTH})",
    rf"(?P<n>{_LENGTH})\s*dia(?:m(?:eter)?)?\b",
)
_LONG: Final = (
    rf"\b(?:length|long|bar|strip|tube|l)\W{{0,3}}(?P<n>{_MEASURED})",
    rf"(?P<n>{_MEASURED})",
)
_SEVERAL: Final = re.compile(rf"\b(\d+)\s*(?:x|pcs|pieces|pack|\*)\s*({_N})\s*(k?w)(?:atts?)?\b")
_RANGE: Final = re.compile(rf"({_N})\s*(?:-|~|to|\.\.+)\s*({_N})\s*(k?w(?:atts?)?\b|{_UMOL})")
_POINT: Final = re.compile(r"\b(?:bulb|spot|e27|e26|e40|e39|gu10|par\d\d)\b")
_ONE_BAR: Final = re.compile(r"\b(?:bar|strip|tube|t5|t8)\b")

_FIXED: Final = re.compile(r"\b(?:non|not|no|without)[ -]?(?:a )?dim(?:mable|ming|mer)?\b")

EXAMPLE: Final = "240 W 600 µmol/s 30x30 cm"


class DataSheetError(ValueError):
    """A line that cannot be read as one lamp; the message is a sentence that says why."""


@dataclass(frozen=True)
class SheetLamp:
    """A lamp read from a line, and in ``notes`` what was taken as usual or left out."""

    model: LampModel
    notes: tuple[str, ...]

    @property
    def words(self) -> str:
        """What was read, in one line: '240 W, 600 µmol/s, 30 x 30 cm, beam 120°'."""
        model = self.model
        parts = [f"{format_number(model.watts, 1)} W", f"{format_number(model.ppf, 1)} {FLUX_UNIT}"]
        if isinstance(model.body, BarsBody):
            parts.append(f"{model.body.count} bars")
        if not isinstance(model.body, PointBody):
            parts.append(" x ".join(format_number(side * 100, 1) for side in model.size) + " cm")
        told = "; ".join(self.notes)
        return ", ".join(parts) + (f" ({told})" if told else "")


def says_lamp(text: str) -> bool:
    """Whether a text speaks of a lamp: watts, photons or an efficacy, and one figure more.

    A single figure may be meant for a field of that kind.
    """
    if not text.strip() or len(text) > LONGEST:
        return False
    rest = _Rest(_plain(text))
    power, size = (_EFFICACY, _FLUX, _WATTS), (_BARS, (_SIZE,))
    found = [bool(rest.take(patterns)) for patterns in (*power, *size)]
    return any(found[: len(power)]) and sum(found) > 1


def read_data_sheet(text: str) -> SheetLamp:
    """Read one lamp from a line or a few lines of text.

    Known are watts (W, kW), photon flux (µmol/s, umol, PPF), efficacy (µmol/J, PPE) in the place
    of either, size (30x30 cm, 12 x 12 in, 60 cm bar, 20 cm dia), bars (6 bars) and beam angle
    (120°). Without a size it is a panel of 30 by 30 cm, without an angle one of 120°, and
    ``SheetLamp.notes`` say so; how far the angle may be off is stated by whether it was printed.

    Raises
    ------
    DataSheetError
        If the photon flux or the power is missing, numbers contradict each other, or a number or
        size can be read in two ways.
    """
    if len(text) > LONGEST:
        raise DataSheetError(
            f"This text is too long for a line about one lamp; copy one like '{EXAMPLE}'."
        )
    rest = _Rest(_plain(text))
    several = _SEVERAL.search(rest.text)
    if several is not None:
        count, each = several.group(1, 2)
        raise DataSheetError(
            f"'{count} x {each} W' can be {count} lamps of {each} W or one lamp with {count} "
            "parts; write the power of one lamp, and hang it as often as you have it."
        )
    between = _RANGE.search(rest.text)
    if between is not None and between[1] != between[2]:
        raise DataSheetError(
            f"The line says {between[1]} to {between[2]} without telling which goes with what; "
            "write the figure at full output."
        )
    efficacy = rest.one(_EFFICACY, "efficacies")
    rest.pass_over()
    flux = rest.one(_FLUX, "photon fluxes")
    watts = rest.one(_WATTS, "powers")
    beam = rest.one(_BEAM, "beam angles")
    ppf, power = _flux_and_power(flux, watts, efficacy, text)
    notes: list[str] = []
    body = _body(rest, notes)
    profile, doubt = CosineProfile(), _BEAM_SAID_DEG
    if beam is None:
        doubt = _BEAM_UNSAID_DEG
        notes.append(f"beam taken as 120°, {doubt:g}° more or less")
    else:
        angle = beam.readings[0]
        if not BEAM_ANGLE.minimum <= angle <= BEAM_ANGLE.maximum:
            raise DataSheetError(
                f"The beam angle must be from {BEAM_ANGLE.minimum:g}° to {BEAM_ANGLE.maximum:g}°, "
                f"not {angle:g}°."
            )
        profile = CosineProfile.from_beam_angle(angle)
    name = f"{_kind(body)}, {format_number(power, 1)} W"
    model = LampModel(
        key=f"pasted-{format_number(power, 0)}w-{format_number(ppf, 0)}",
        name=name,
        body=body,
        profile=profile,
        ppf=ppf,
        watts=power,
        beam_uncertainty_deg=doubt,
        dimmable=_FIXED.search(_plain(text)) is None,
        source=f"As pasted: {' '.join(text.split())}"[:2000],
    )
    return SheetLamp(model, tuple(notes))


def _plain(text: str) -> str:
    return " ".join(text.translate(_PLAIN).lower().replace("−", "-").split())


@dataclass(frozen=True)
class _Figure:
    """A number with all its readings: '1,700' has two."""

    text: str
    readings: tuple[float, ...]
    factor: float = 1.0


class _Rest:
    """What of a line is not understood yet."""

    def __init__(self, text: str) -> None:
        self.text = text

    def pass_over(self) -> None:
        """Take away what says nothing of the lamp."""
        for pattern in _PASSED_OVER:
            self.text = pattern.sub(" ; ", self.text)

    def take(self, patterns: tuple[str, ...]) -> list[re.Match[str]]:
        """All places of a figure, taken out of the line."""
        taken: list[re.Match[str]] = []
        for pattern in patterns:
            taken += re.finditer(pattern, self.text)
            self.text = re.sub(pattern, " ; ", self.text)
        return taken

    def one(self, patterns: tuple[str, ...], what: str) -> _Figure | None:
        """The one number of its kind, None without one; two that differ are refused."""
        found = [
            _Figure(match["n"], _readings(match["n"]), 1000.0 if match.groupdict().get("k") else 1)
            for match in self.take(patterns)
        ]
        values = {tuple(r * one.factor for r in one.readings) for one in found}
        if len(values) > 1:
            listed = " and ".join(dict.fromkeys(one.text for one in found))
            raise DataSheetError(
                f"The line names different {what} ({listed}); leave the one at full output."
            )
        return found[0] if found else None


def _readings(text: str) -> tuple[float, ...]:
    """What a number can mean: one value, or two where a separator may part thousands."""
    if sum(text.count(sign) for sign in ".,") > 1:
        *whole, last = re.split(r"[.,]", text)
        if len(last) == 3 and len(set(re.findall(r"[.,]", text))) == 1:
            return (float("".join([*whole, last])),)
        return (float("".join(whole) + "." + last),)
    try:
        return (parse_number(text),)
    except AmbiguousNumberError as error:
        return tuple(float(reading) for reading in error.readings)


def _flux_and_power(
    flux: _Figure | None, watts: _Figure | None, efficacy: _Figure | None, text: str
) -> tuple[float, float]:
    if flux is None and efficacy is None:
        more = ""
        if re.search(r"lm\b|lumen", text.lower()):
            more = ", and lumens are weighted for the eye"
        elif re.search(r"ppfd|m-?2", _plain(text)):
            more = ", and PPFD is the light on a place under it"
        if watts is None:
            raise DataSheetError(
                f"This text names no lamp; paste a line of its data sheet, such as '{EXAMPLE}'."
            )
        raise DataSheetError(
            f"The line says nothing of the lamp's photon flux{more}: add it in µmol/s (PPF), or "
            "its efficacy in µmol/J."
        )
    if watts is None and (flux is None or efficacy is None):
        raise DataSheetError(
            "The line says nothing of the power: add the watts drawn at full output."
        )
    kinds = [_values(one) for one in (flux, watts, efficacy)]
    found = []
    for f, w, e in itertools.product(*kinds):
        ppf = f if f is not None else (w or 0.0) * (e or 0.0)
        power = w if w is not None else ppf / (e or 1.0)
        if power <= 0 or ppf <= 0:
            raise DataSheetError("Power and photon flux of a lamp must be above 0.")
        found.append((ppf, power, e))
    likely = [
        one
        for one in found
        if LEAST_PER_JOULE <= one[0] / one[1] <= MOST_PER_JOULE and _agree(*one)
    ]
    kept = likely or found
    if len(kept) > 1:
        doubtful = next(
            one for one in (flux, watts, efficacy) if one is not None and len(one.readings) > 1
        )
        low, high = (format_number(reading, 3) for reading in doubtful.readings)
        raise DataSheetError(
            f"'{doubtful.text}' can be read as {low} or as {high}; write which of the two."
        )
    ppf, power, told = kept[0]
    if not _agree(ppf, power, told):
        raise DataSheetError(
            f"{format_number(power, 1)} W at {format_number(told or 0, 2)} {EFFICACY_UNIT} make "
            f"{format_number(power * (told or 0), 0)} {FLUX_UNIT}, but the line says "
            f"{format_number(ppf, 1)}; leave out what does not hold."
        )
    if why := too_efficient(ppf, power):
        raise DataSheetError(f"{why}.")
    return ppf, power


def _values(figure: _Figure | None) -> tuple[float | None, ...]:
    return (None,) if figure is None else tuple(r * figure.factor for r in figure.readings)


def _agree(ppf: float, power: float, efficacy: float | None) -> bool:
    return efficacy is None or abs(ppf / (power * efficacy) - 1) <= _AGREE


# -- its body ----------------------------------------------------------------------------


def _body(rest: _Rest, notes: list[str]) -> Body:
    bars = rest.take(_BARS)
    count = int(bars[0]["n"]) if bars else 1
    if count > 24:
        raise DataSheetError(f"A lamp has at most 24 bars, not {count}.")
    one_bar = count == 1 and (bars or _ONE_BAR.search(rest.text))
    face = _face(rest, count, notes, one_bar=bool(one_bar))
    if face is None:
        return PointBody()
    length, width = face
    for side in (length, width):
        if not _SIZES.minimum <= side <= _SIZES.maximum:
            raise DataSheetError(
                f"A lamp of {format_number(length * 100, 1)} x {format_number(width * 100, 1)} cm "
                f"cannot be: each side must be from {_SIZES.minimum * 100:g} to "
                f"{_SIZES.maximum * 100:g} cm. Check the unit."
            )
    if count == 1:
        return PanelBody(length=round(length, 4), width=round(width, 4))
    strip = min(_USUAL_STRIP_M, width / count)
    if strip < 0.01:
        raise DataSheetError(
            f"{count} bars do not fit side by side into {format_number(width * 100, 1)} cm; write "
            "the outer size over all bars, such as 110x105 cm."
        )
    notes.append(f"bars taken as {format_number(strip * 100, 1)} cm wide")
    return BarsBody(
        count=count, length=round(length, 4), width=round(width, 4), bar_width=round(strip, 4)
    )


def _face(
    rest: _Rest, count: int, notes: list[str], *, one_bar: bool
) -> tuple[float, float] | None:
    """Length and width over what shines, None of a bulb."""
    sizes = {_sides(match[0]) for match in re.finditer(_SIZE, rest.text)}
    rest.text = re.sub(_SIZE, " ; ", rest.text)
    if len(sizes) > 1:
        raise DataSheetError(
            "The line names more than one size; leave the one over the lamp's lit faces."
        )
    if sizes:
        return _two_largest(sizes.pop(), notes)
    if round_ := rest.take(_ROUND):
        # A square of the same area: π d² / 4.
        side = _length(round_[0]["n"]) * math.sqrt(math.pi) / 2
        notes.append("round, taken as a square of the same area")
        return side, side
    if count > 1:
        raise DataSheetError(
            f"The line has {count} bars and no size: add the outer size over all bars, such as "
            "110x105 cm."
        )
    if one_bar:
        long_ = rest.take(_LONG)
        if not long_:
            raise DataSheetError("The line has a bar and no length: add it, such as 60 cm.")
        notes.append("a strip 2.5 cm wide")
        return _length(long_[0]["n"]), _USUAL_STRIP_M
    if _POINT.search(rest.text):
        return None
    notes.append("size taken as 30 x 30 cm")
    return _USUAL_SIDE_M, _USUAL_SIDE_M


def _sides(text: str) -> tuple[float, ...]:
    parts = [part.strip() for part in re.split(r"\s*(?:x|by)\s*", text)]
    units = [_unit_of(part) for part in parts]
    last = units[-1]
    if last is None and any(units):
        last = next(unit for unit in reversed(units) if unit)
    if last is None:
        raise DataSheetError(
            f"'{text}' has no unit; write {text} cm or {text} in, whichever it is."
        )
    return tuple(
        _length(part if unit else f"{part} {last}") for part, unit in zip(parts, units, strict=True)
    )


def _unit_of(text: str) -> str | None:
    match = re.search(rf"{_UNIT}$", text)
    return match[0] if match else None


_SPELT: Final = (("inches", "in"), ("inch", "in"), ("feet", "ft"), ("foot", "ft"))


def _length(text: str) -> float:
    """Metres; raises ``DataSheetError`` without a unit."""
    if _unit_of(text.strip()) is None:
        raise DataSheetError(f"'{text.strip()}' has no unit; write {text.strip()} cm or in.")
    for long, short in _SPELT:
        text = text.replace(long, short)
    try:
        # A unit always stands there, so the unit of bare numbers plays no part.
        return parse_length(text, LengthUnit.CM)
    except ValueError as error:
        raise DataSheetError(str(error)) from None


def _two_largest(sides: tuple[float, ...], notes: list[str]) -> tuple[float, float]:
    """Length and width of the face; of three sides the least is how thick the lamp is."""
    if len(sides) == 3:
        thin = min(range(3), key=lambda k: sides[k])
        notes.append(f"its thickness, {format_number(sides[thin] * 100, 1)} cm, is left out")
        sides = tuple(side for k, side in enumerate(sides) if k != thin)
    return max(sides), min(sides)


def _kind(body: Body) -> str:
    if isinstance(body, PointBody):
        return "Bulb"
    if isinstance(body, BarsBody):
        return f"{body.count} bars"
    return "Bar" if body.width <= body.length / 6 else "Panel"
