"""From the format a plan was written in to the present one, one function per step.

Format 1: the first. Space, lamps, linings, walls, ceiling, floor, canopy, photoperiod,
target; lengths in metres. Format 2: a variant is a whole setup with a key, and the plan names
its baseline by key. Format 3: a kind of lamp states how far its beam angle may be off, and
whether it can be dimmed. Format 4: what rooms have beside (each left out means
"none"), so nothing of a file of format 3 changes.

To change the format: raise ``PLAN_FORMAT`` in ``planner.plan.plan``, add a function that
turns the raw values of format n into those of n + 1, enter it in ``STEPS`` under n, keep
an old file under tests as its example, and publish a new JSON Schema.
"""

from __future__ import annotations

import copy
from collections.abc import Callable, Mapping
from typing import Any, Final

from planner.plan.plan import PLAN_FORMAT

Step = Callable[[dict[str, Any]], dict[str, Any]]


# -- from format 1 to 2 ----------------------------------------------------------------
# In format 1 a variant held changes that were applied, in order, to the plan it stood in; one
# that no longer fitted was left out. That is done here once more, on raw values, as the
# program of that format did it. Nothing here may follow later changes of the program: files
# of format 1 stay what they are.

Raw = dict[str, Any]

_DEFAULTS: Final[Raw] = {
    "lamps": [],
    "obstacles": [],
    "linings": [],
    "ceiling": "open",
    "floor": "open",
    "canopy": {},
    "photoperiod_hours": 16.0,
}
_CANOPY: Final[Raw] = {"height": 0.2, "closed": True, "reflectance": 0.06}


class _UnfitError(ValueError):
    """A change that could not be made."""


def to_format_2(raw: Raw) -> Raw:
    """Raw values of format 1 as raw values of format 2."""
    variants = raw.get("variants")
    if not variants:
        return raw
    made = []
    for number, variant in enumerate(variants, start=1):
        setup = _setup(raw)
        for change in variant.get("changes", ()):
            tried = copy.deepcopy(setup)
            try:
                _CHANGES[change["kind"]](tried, change)
                _check(tried)
            except _UnfitError:
                continue
            setup = tried
        rest = {name: value for name, value in variant.items() if name != "changes"}
        made.append({"key": f"variant-{number}", **rest, "setup": setup})
    return {**raw, "variants": made}


def _setup(raw: Raw) -> Raw:
    setup = {"space": raw["space"], "walls": raw["walls"]}
    setup |= {name: raw.get(name, value) for name, value in _DEFAULTS.items()}
    setup["canopy"] = {**_CANOPY, **setup["canopy"]}
    return copy.deepcopy(setup)


# -- the changes of format 1 ------------------------------------------------------------


def _line_all_walls(setup: Raw, change: Raw) -> None:
    setup["walls"] = [{"bands": [{"lining": change["lining"]["key"]}]} for _ in setup["walls"]]
    _bring(setup, change["lining"])


def _line_wall(setup: Raw, change: Raw) -> None:
    wall, band = change["wall"], change.get("band")
    if wall >= len(setup["walls"]):
        raise _UnfitError
    bands = setup["walls"][wall]["bands"]
    if band is not None and band >= len(bands):
        raise _UnfitError
    for one in bands if band is None else [bands[band]]:
        one["lining"] = change["lining"]["key"]
    _bring(setup, change["lining"])


def _line_flat(name: str) -> Callable[[Raw, Raw], None]:
    def line(setup: Raw, change: Raw) -> None:
        setup[name] = change["lining"]["key"]
        _bring(setup, change["lining"])

    return line


def _bring(setup: Raw, *added: Raw) -> None:
    """Bring linings along and drop the unused; the plan's own copy of a key counts."""
    linings = {lining["key"]: lining for lining in (*added, *setup["linings"])}
    used = {band["lining"] for cover in setup["walls"] for band in cover["bands"]}
    used |= {obstacle.get("lining", "open") for obstacle in setup["obstacles"]}
    used |= {setup["ceiling"], setup["floor"]}
    setup["linings"] = [lining for key, lining in linings.items() if key in used and key != "open"]


def _each_lamp(*names: str) -> Callable[[Raw, Raw], None]:
    def put(setup: Raw, change: Raw) -> None:
        lamp = change.get("lamp")
        if not setup["lamps"] or (lamp is not None and lamp >= len(setup["lamps"])):
            raise _UnfitError
        for one in setup["lamps"] if lamp is None else [setup["lamps"][lamp]]:
            one.update({name: change[name] for name in names})

    return put


def _size(setup: Raw, change: Raw) -> None:
    corners = setup["space"]["footprint"]
    x0, y0 = min(x for x, _ in corners), min(y for _, y in corners)
    x1, y1 = max(x for x, _ in corners), max(y for _, y in corners)
    sx, sy = change["width"] / (x1 - x0), change["depth"] / (y1 - y0)
    setup["space"]["footprint"] = [[x0 + (x - x0) * sx, y0 + (y - y0) * sy] for x, y in corners]
    for thing in (*setup["lamps"], *setup["obstacles"]):
        thing["x"], thing["y"] = x0 + (thing["x"] - x0) * sx, y0 + (thing["y"] - y0) * sy


def _space_height(setup: Raw, change: Raw) -> None:
    height = change["height"]
    for lamp in setup["lamps"]:
        room = height - setup["canopy"]["height"]
        lamp["hanging_height"] = min(lamp["hanging_height"], room)
    for obstacle in setup["obstacles"]:
        obstacle["thickness"] = min(obstacle["thickness"], height)
        obstacle["underside"] = min(obstacle["underside"], height - obstacle["thickness"])
    for cover in setup["walls"]:
        kept = []
        for band in cover["bands"]:
            top = band.get("top")
            if top is None or top >= height - 0.005:
                kept.append({"lining": band["lining"]})
                break
            kept.append(band)
        cover["bands"] = kept
    setup["space"]["height"] = height
    _bring(setup)


def _canopy_height(setup: Raw, change: Raw) -> None:
    height = change["height"]
    for lamp in setup["lamps"]:
        # The lamps stay where they hang.
        lamp["hanging_height"] = setup["canopy"]["height"] + lamp["hanging_height"] - height
    setup["canopy"]["height"] = height


def _canopy_reflectance(setup: Raw, change: Raw) -> None:
    setup["canopy"]["reflectance"] = change["reflectance"]


def _photoperiod(setup: Raw, change: Raw) -> None:
    setup["photoperiod_hours"] = change["photoperiod_hours"]


def _door(setup: Raw, change: Raw) -> None:
    setup["space"]["door_open"] = change["door_open"]


_CHANGES: Final[dict[str, Callable[[Raw, Raw], None]]] = {
    "line-all-walls": _line_all_walls,
    "line-wall": _line_wall,
    "line-ceiling": _line_flat("ceiling"),
    "line-floor": _line_flat("floor"),
    "lamp-model": _each_lamp("model"),
    "hanging-height": _each_lamp("hanging_height"),
    "output": _each_lamp("output_percent"),
    "lamp-place": _each_lamp("x", "y"),
    "size": _size,
    "space-height": _space_height,
    "canopy-height": _canopy_height,
    "canopy-reflectance": _canopy_reflectance,
    "photoperiod": _photoperiod,
    "door": _door,
}


# -- what format 1 refused --------------------------------------------------------------


def _check(setup: Raw) -> None:
    """Refuse what could not stand together in format 1 after a change."""
    space, canopy = setup["space"], setup["canopy"]["height"]
    corners, height = space["footprint"], space["height"]
    sound = _area(corners) >= 0.005 and all(
        ((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5 >= 0.01
        for (x0, y0), (x1, y1) in zip(corners, corners[1:] + corners[:1], strict=True)
    )
    sound = sound and all(-10 <= value <= 10 for corner in corners for value in corner)
    sound = sound and (not space.get("door_open") or space.get("door") is not None)
    sound = sound and canopy <= height - 0.01
    for lamp in setup["lamps"]:
        hangs = lamp["hanging_height"]
        sound = sound and 0.01 <= hangs <= 5 and canopy + hangs <= height + 1e-9
        sound = sound and _inside(corners, lamp["x"], lamp["y"])
    for obstacle in setup["obstacles"]:
        sound = sound and obstacle["thickness"] >= 0.005 and obstacle["underside"] >= 0
        sound = sound and obstacle["underside"] + obstacle["thickness"] <= height + 1e-9
        sound = sound and _inside(corners, obstacle["x"], obstacle["y"])
    if not sound:
        raise _UnfitError


def _area(corners: list[list[float]]) -> float:
    pairs = zip(corners, corners[1:] + corners[:1], strict=True)
    return sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairs) / 2


def _inside(corners: list[list[float]], x: float, y: float) -> bool:
    inside = False
    for (x0, y0), (x1, y1) in zip(corners, corners[1:] + corners[:1], strict=True):
        if (y0 > y) != (y1 > y) and x < x0 + (y - y0) * (x1 - x0) / (y1 - y0):
            inside = not inside
    return inside


# -- from format 2 to 3 ----------------------------------------------------------------
# The beams of catalogue lamps were taken from memory then as now, and those of pasted data
# sheets were printed or assumed: nobody said how far they may be off, and stating nothing
# would make old plans look surer than new ones. So they get the doubt of their kind, as it
# was when format 3 came. All other lamps (calibrated, from files, own entries) stay as entered:
# no doubt is made up for them. ``dimmable`` came during format 2; it went without saying.

_BEAM_DOUBT: Final[Mapping[str, tuple[float, float]]] = {
    "led-board-24-50w": (1.0, 20.0),
    "led-board-30-100w": (1.0, 20.0),
    "led-board-45-240w": (1.0, 20.0),
    "led-bar-60-20w": (1.0, 20.0),
    "led-bar-90-30w": (1.0, 20.0),
    "led-bars-4-200w": (1.0, 20.0),
    "led-bars-6-480w": (1.0, 20.0),
    "led-panel-60-36w": (1.1, 20.0),
    "led-strip-10w": (1.0, 20.0),
    "led-spot-6w": (12.4, 8.0),
    "t5-pair-54w": (1.0, 25.0),
    "t5-four-230w": (1.0, 25.0),
}
"""Exponent and doubt of the beam (degrees) of the catalogue's lamps."""
_BEAM_TYPED: Final = 10.0
_BEAM_UNSAID: Final = 30.0


def to_format_3(raw: Raw) -> Raw:
    """Raw values of format 2 as raw values of format 3."""
    made: Raw = _with_models(raw)
    return made


def _with_models(part: Any) -> Any:
    """A part of a plan with every kind of lamp in it, wherever it is, as format 3 has it."""
    if isinstance(part, list):
        return [_with_models(one) for one in part]
    if not isinstance(part, dict):
        return part
    if {"key", "body", "ppf", "watts"} <= part.keys():
        return {"dimmable": True, "beam_uncertainty_deg": _beam_doubt(part), **part}
    return {name: _with_models(one) for name, one in part.items()}


def _beam_doubt(model: Raw) -> float:
    profile = model.get("profile", {})
    if profile.get("kind", "cosine") != "cosine":
        return 0.0
    exponent, key = profile.get("exponent", 1.0), model["key"]
    if key in _BEAM_DOUBT:
        usual, doubt = _BEAM_DOUBT[key]
        return doubt if exponent == usual else _BEAM_TYPED
    if key.startswith("pasted-"):
        return _BEAM_UNSAID if exponent == 1.0 else _BEAM_TYPED
    return 0.0


# -- from format 3 to 4 ----------------------------------------------------------------


def to_format_4(raw: Raw) -> Raw:
    """Raw values of format 3 as raw values of format 4, which only adds what may be left out."""
    return raw


# -- the way through them ----------------------------------------------------------------

STEPS: Final[Mapping[int, Step]] = {1: to_format_2, 2: to_format_3, 3: to_format_4}
"""Step from format n to n + 1, by n."""


class FormatError(ValueError):
    """A format number that cannot be read; the message is half a sentence."""


def migrated(
    raw: dict[str, Any], *, steps: Mapping[int, Step] = STEPS, to: int = PLAN_FORMAT
) -> dict[str, Any]:
    """Raw values in the present format.

    ``raw`` is not changed. Raises ``FormatError`` if the values carry no format number, a
    newer one than this program knows, or do not fit the old format they claim to be in.
    """
    number = raw.get("format")
    if not isinstance(number, int) or isinstance(number, bool) or number < 1:
        raise FormatError(
            "it is not a plan of this program: a plan starts with its format number "
            f'("format": {to})'
        )
    if number > to:
        raise FormatError(
            f"it was written by a newer version of this program (format {number}; this version "
            f"reads up to format {to}); update the program to open it"
        )
    for current in range(number, to):
        if current not in steps:
            raise FormatError(f"format {current} is too old for this version of the program")
        try:
            raw = {**steps[current](dict(raw)), "format": current + 1}
        except (LookupError, TypeError, ValueError, AttributeError, ArithmeticError):
            raise FormatError(
                f"it says it is in format {current}, but its contents do not fit that format"
            ) from None
    return raw
