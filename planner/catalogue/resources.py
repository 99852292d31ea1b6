"""Where the program's data files are: in a checkout, an installed package or a bundle."""

from __future__ import annotations

import sys
from pathlib import Path

_PACKAGE = Path(__file__).resolve().parents[1]


def _roots() -> tuple[Path, ...]:
    roots = [_PACKAGE / "_resources", _PACKAGE.parent / "resources"]
    bundle = getattr(sys, "_MEIPASS", None)
    if bundle is not None:
        roots.insert(0, Path(str(bundle)) / "resources")
    return tuple(roots)


def resource_path(name: str) -> Path:
    """Find a data file or folder by its name inside ``resources``, with forward slashes.

    Raises
    ------
    FileNotFoundError
        If no copy of the program's data holds it; the message says where was looked.
    """
    roots = _roots()
    for root in roots:
        candidate = root / name
        if candidate.exists():
            return candidate
    places = ", ".join(str(root) for root in roots)
    raise FileNotFoundError(
        f"the program's data file '{name}' is missing; it was looked for in {places}. "
        "Install the program again."
    )
