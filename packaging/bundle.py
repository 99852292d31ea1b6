"""Build the standalone folder: the program with its own Python, for machines that have none.

    python packaging/bundle.py [--deb] [--out FOLDER]

Wants the package ``pyinstaller`` beside what the program needs, in the Python that runs it, and
builds for the system it runs on: on Linux a folder (with ``--deb`` a Debian package as well),
on macOS an application, on Windows a folder that ``windows/installer.nsi`` makes an installer of.
On Linux it wants Debian's package ``binutils``; build on the oldest system that shall run it.
What it made is started once, without a screen, before it counts as made.
"""

from __future__ import annotations

import argparse
import os
import shutil
import subprocess
import sys
import tempfile
from itertools import chain
from pathlib import Path

from environment import ROOT, say

NAME = "grow-space-light-planner"
LARGEST_MB = 250
BUILD = ROOT / "build"


def main() -> int:
    parser = argparse.ArgumentParser(description="Build the standalone folder.")
    parser.add_argument("--deb", action="store_true", help="a Debian package of it as well")
    parser.add_argument("--out", type=Path, default=ROOT / "dist", metavar="FOLDER")
    asked = parser.parse_args()
    out: Path = asked.out.resolve()
    write_icons()
    compile_words()
    command = (sys.executable, "-m", "PyInstaller", "--noconfirm", "--log-level", "ERROR")
    places = ("--distpath", str(out), "--workpath", str(BUILD / "bundle"))
    subprocess.run([*command, *places, str(ROOT / "packaging" / "bundle.spec")], check=True)
    folder = out / NAME
    slim(folder)
    size = sum(path.lstat().st_size for path in folder.rglob("*") if not path.is_dir()) / 1e6
    say(f"{folder}: {size:.0f} MB")
    if size > LARGEST_MB:
        say(f"That is more than {LARGEST_MB} MB; see what bundle.spec let in.")
        return 1
    try_out(folder)
    if asked.deb:
        import debian  # noqa: PLC0415 - a script of this folder, needed here only

        say(f"Wrote {debian.build(folder, out)}")
    return 0


def write_icons() -> None:
    """The icon in the forms Windows and macOS want, from the one drawing."""
    if sys.platform == "linux":
        return
    os.environ["QT_QPA_PLATFORM"] = "offscreen"
    from PySide6.QtGui import QGuiApplication, QIcon  # noqa: PLC0415 - needed elsewhere only

    _application = QGuiApplication.instance() or QGuiApplication([])
    picture = QIcon(str(ROOT / "resources" / "icons" / "planner.svg")).pixmap(256, 256)
    BUILD.mkdir(exist_ok=True)
    name = "planner.ico" if sys.platform == "win32" else "planner.icns"
    if not picture.save(str(BUILD / name)):
        raise SystemExit(f"Qt cannot write {name} here.")


def compile_words() -> None:
    """The modules in the other languages: a bundle starts from a folder it cannot write to."""
    sys.path.insert(0, str(ROOT))
    from planner.exchange import ahead  # noqa: PLC0415 - the path is set first
    from planner.language import LANGUAGES  # noqa: PLC0415

    shutil.rmtree(BUILD / "ahead", ignore_errors=True)
    for place, data in chain.from_iterable(ahead(code) for code in LANGUAGES if code != "en"):
        made = BUILD / "ahead" / place
        made.parent.mkdir(parents=True, exist_ok=True)
        made.write_bytes(data)


def slim(folder: Path) -> None:
    """Take the names for debuggers out of Python's own libraries.

    Those under ``*.libs`` were moved about by their makers and do not survive it.
    """
    if sys.platform != "linux":
        return
    for path in folder.rglob("*.so*"):
        if not path.parent.name.endswith(".libs") and not path.is_symlink():
            subprocess.run(["strip", "--strip-unneeded", str(path)], check=True)


def try_out(folder: Path) -> None:
    """Let the bundle compute and paint the demo plan, with nothing of this Python about."""
    program = folder / (f"{NAME}.exe" if sys.platform == "win32" else NAME)
    kept = {"SYSTEMROOT", "TEMP", "TMP", "HOME", "USERPROFILE", "LANG"}
    with tempfile.TemporaryDirectory() as place:
        clean = {name: value for name, value in os.environ.items() if name.upper() in kept}
        clean["QT_QPA_PLATFORM"] = "offscreen"
        for name in ("SETTINGS", "DATA", "STATE"):
            clean[f"PLANNER_{name}_DIR"] = place
        demo = [str(program), "demo", "--out", place]
        subprocess.run(demo, check=True, env=clean, stdout=subprocess.DEVNULL)
        if not (Path(place) / "window.png").stat().st_size:
            raise SystemExit("The bundle painted no window.")
    say("Started: the demo plan is computed and painted.")


if __name__ == "__main__":
    sys.exit(main())
