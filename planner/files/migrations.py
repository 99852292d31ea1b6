"""From the format a plan was written in to the present one, one function per step.

Format 1: the first. Space, lamps, linings, walls, ceiling, floor, canopy, photoperiod,
target; lengths in metres. Format 2: a variant is a whole setup with a key, and the plan names
its baseline by key.

To change the format: raise ``PLAN_FORMAT`` in ``planner.plan.plan``, add a function that
turns the raw values of format n into those of n + 1, enter it in ``STEPS`` under n, keep
an old file under tests as its example, and publish a new JSON Schema.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, Final

from planner.files.from_format_1 import to_format_2
from planner.plan.plan import PLAN_FORMAT

Step = Callable[[dict[str, Any]], dict[str, Any]]

STEPS: Final[Mapping[int, Step]] = {1: to_format_2}
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
        except (LookupError, TypeError, ValueError, AttributeError):
            raise FormatError(
                f"it says it is in format {current}, but its contents do not fit that format"
            ) from None
    return raw
