"""A plan file written by hand, not by the program, and a way to spoil single places of it."""

from __future__ import annotations

import copy
import json
from typing import Any

VALID: dict[str, Any] = {
    "format": 4,
    "name": "Invented cabinet",
    "space": {
        "footprint": [[0, 0], [1.0, 0], [1.0, 0.6], [0, 0.6]],
        "height": 1.4,
        "door": 0,
        "door_open": False,
    },
    "lamps": [
        {
            "model": {
                "key": "bar",
                "name": "Invented bar",
                "body": {"kind": "panel", "length": 0.5, "width": 0.03},
                "profile": {"kind": "cosine", "exponent": 1},
                "ppf": 60,
                "watts": 25,
            },
            "x": 0.5,
            "y": 0.2,
            "hanging_height": 0.4,
        },
        {
            "model": {
                "key": "spot",
                "name": "Invented spot",
                "body": {"kind": "point"},
                "profile": {"kind": "table", "angles_deg": [0, 45, 90], "relative": [1, 0.5, 0]},
                "ppf": 20,
                "watts": 10,
            },
            "x": 0.5,
            "y": 0.4,
            "hanging_height": 0.3,
            "rotation_deg": 30,
        },
    ],
    "linings": [
        {"key": "board", "name": "White board", "reflectance": 0.8, "low": 0.7, "high": 0.9}
    ],
    "walls": [
        {"bands": [{"lining": "board", "top": None}]},
        {"bands": [{"lining": "board", "top": 0.5}, {"lining": "open"}]},
        {"bands": [{"lining": "board"}]},
        {"bands": [{"lining": "board"}]},
    ],
    "ceiling": "board",
    "floor": "board",
    "canopy": {"height": 0.2},
    "photoperiod_hours": 14,
    "target": {"kind": "ppfd", "low": 150, "high": 250, "crop": "herbs"},
}

GONE = object()
"""Stands for a field that is taken out."""


def text(value: Any = VALID) -> bytes:
    """The file of a value."""
    return json.dumps(value, ensure_ascii=False).encode()


def spoilt(*changes: tuple[str, Any]) -> bytes:
    """The valid file with some places changed: ('lamps.1.x', 7) or ('name', GONE)."""
    whole = copy.deepcopy(VALID)
    for place, value in changes:
        *way, last = (int(step) if step.isdigit() else step for step in place.split("."))
        inner: Any = whole
        for step in way:
            inner = inner[step]
        if value is GONE:
            del inner[last]
        else:
            inner[last] = value
    return text(whole)


def replaced(old: str, new: str) -> bytes:
    """The valid file, one name per line, with a piece of its text replaced once."""
    whole = json.dumps(VALID, indent=1)
    assert whole.count(old) >= 1, old
    return whole.replace(old, new, 1).encode()
