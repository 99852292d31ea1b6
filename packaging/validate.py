"""Write the validation page: ours against closed forms, catalogues and independent programs.

    python packaging/validate.py [--quick] [--out FILE]

Needs the 'test' extra; comparisons whose packages (extra 'reference') are missing are named
on the page as not run. A whole run takes about ten minutes and wants a quiet machine.
"""

from __future__ import annotations

import argparse
import datetime as dt
import importlib.metadata
import os
import platform
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
PAGE = ROOT / "resources" / "docs" / "validation.md"
sys.path.insert(0, str(ROOT))

import validation_tables as tables  # noqa: E402 - after the path is set
from validation_tables import Section  # noqa: E402

from planner import __version__  # noqa: E402

PACKAGES = ("numpy", "numba", "embreex", "mitsuba", "pyviewfactor", "colour-science", "pvlib")
WALKED, WALKED_QUICKLY = 6_000_000, 200_000


def main() -> int:
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("--quick", action="store_true", help="few photons, no race")
    parser.add_argument("--out", type=Path, default=PAGE, help="the page to write")
    chosen = parser.parse_args()
    sections, missing = measured(quick=chosen.quick)
    chosen.out.parent.mkdir(parents=True, exist_ok=True)
    chosen.out.write_text(page(sections, missing, quick=chosen.quick), encoding="utf-8")
    say(f"Written: {chosen.out}")
    return 0


def say(text: str) -> None:
    print(text, flush=True)


def measured(*, quick: bool) -> tuple[list[Section], list[str]]:
    """All comparisons that can be made here, and the packages that others would need."""
    missing = [name for name in ("embreex", "mitsuba", "numba") if not tables.installed(name)]
    sections = []
    for make in (tables.closed_forms, tables.view_factors, tables.enclosures):
        sections.append(make())
        say(sections[-1].title)
    sections.append(tables.reference_maps())
    say(sections[-1].title)
    if "embreex" not in missing:
        say("Photon walks over Embree")
        sections.append(tables.photon_walks(WALKED_QUICKLY if quick else WALKED, say))
    if tables.installed("numba"):
        say("Random rooms")
        sections.append(tables.random_rooms(8 if quick else 84, say))
    # The renderer's scenes are made of the same triangles as the walk's.
    if not missing and not quick:
        say("Mitsuba 3")
        sections.append(tables.renderer_maps(say))
        sections.append(race_section())
    say("Cost")
    sections.append(tables.cost(1 if quick else 5))
    return sections, missing


def race_section() -> Section:
    from tests.reference import race  # noqa: PLC0415 - part of an extra

    finishes = race.race(say)
    head, _, *lines = race.table(finishes)
    cells = [tuple(part.strip() for part in line.strip("|").split("|")) for line in [head, *lines]]
    times = race.ratio(finishes)
    return Section(
        "Time to a map of 1 % rms, side by side",
        "1 m x 1 m x 2 m, walls 0.45 + 0.45, 24 x 24 cells, one run on this machine; Monte "
        "Carlo times scaled by (rms / 1 %)². Everyone is judged by one long photon walk. "
        "Asked: at least 20 times sooner than the renderer's fastest variant.",
        cells[0],
        cells[1:],
        [
            f"The program is **{times:.0f} times** as fast as the fastest variant here. The "
            "library is used as it comes: its own integrators and cameras; a loop written "
            "around its ray casting for this one task could be some times faster than them.",
            "What bounds it now: at default quality about two fifths of the time goes into "
            "casting rays and following mirror chains in numpy (memory traffic of short array "
            "operations, not arithmetic), a third into the dense inverse of the patch "
            "equations, which edits of lamps and output reuse, and the rest into sums over "
            "hit lists. Preview is bound by ray casting alone. Compiled ray casting would be "
            "the next step; it would not change the scaling.",
        ],
    )


def page(sections: list[Section], missing: list[str], *, quick: bool) -> str:
    """The page as Markdown."""
    lines = [
        "# Validation",
        "",
        "Light computed by this program against closed forms, published factors and programs",
        "that share nothing with it but the description of the scene. Generated; to make it",
        "anew: `python packaging/validate.py`.",
        "",
        f"- Made on {dt.datetime.now(dt.UTC):%Y-%m-%d} with version {__version__}, "
        f"Python {platform.python_version()}, {platform.system()} {platform.machine()}, "
        f"{os.cpu_count()} processors.",
        "- Packages: " + ", ".join(f"{name} {version(name)}" for name in PACKAGES) + ".",
        "- Errors are shares of the reference's mean; 's' is wall-clock time with nothing kept "
        "from before. Default quality and seed 1 unless told otherwise.",
    ]
    if quick:
        lines.append("- A quick run: few photons, so that the walks' own chance is large.")
    if missing:
        lines.append(f"- Not run, for want of packages: {', '.join(missing)}.")
    lines += [
        "- Spectra are held against colour-science and pvlib by `pytest -m reference`.",
        "",
    ]
    for section in sections:
        lines += [f"## {section.title}", "", section.source, ""]
        lines += [_line(section.head), "|" + "---|" * len(section.head)]
        lines += [*(_line(row) for row in section.rows), ""]
        for remark in section.remarks:
            lines += [remark, ""]
    return "\n".join(lines)


def _line(cells: tuple[str, ...]) -> str:
    return "| " + " | ".join(cells) + " |"


def version(package: str) -> str:
    try:
        return importlib.metadata.version(package)
    except importlib.metadata.PackageNotFoundError:
        return "not installed"


if __name__ == "__main__":
    sys.exit(main())
