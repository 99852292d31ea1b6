"""The system's own libraries that Qt stands on, and a font; needed on Linux only.

Windows and macOS bring them. A desktop Linux has most of them; a bare Debian or Ubuntu
has none, and there this asks apt for those that are missing and for nothing else.
"""

from __future__ import annotations

import ctypes
import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

# Library as Qt asks for it -> package of Debian and Ubuntu.
TO_DRAW = {
    "libEGL.so.1": "libegl1",
    "libGL.so.1": "libgl1",
    "libX11.so.6": "libx11-6",
    "libdbus-1.so.3": "libdbus-1-3",
    "libfontconfig.so.1": "libfontconfig1",
    "libfreetype.so.6": "libfreetype6",
    "libglib-2.0.so.0": "libglib2.0-0",
    "libxkbcommon.so.0": "libxkbcommon0",
    "libz.so.1": "zlib1g",
    "libzstd.so.1": "libzstd1",
}
FOR_A_WINDOW = {
    "libX11-xcb.so.1": "libx11-xcb1",
    "libwayland-client.so.0": "libwayland-client0",
    "libwayland-cursor.so.0": "libwayland-cursor0",
    "libxcb-cursor.so.0": "libxcb-cursor0",
    "libxcb-icccm.so.4": "libxcb-icccm4",
    "libxcb-image.so.0": "libxcb-image0",
    "libxcb-keysyms.so.1": "libxcb-keysyms1",
    "libxcb-randr.so.0": "libxcb-randr0",
    "libxcb-render-util.so.0": "libxcb-render-util0",
    "libxcb-render.so.0": "libxcb-render0",
    "libxcb-shape.so.0": "libxcb-shape0",
    "libxcb-shm.so.0": "libxcb-shm0",
    "libxcb-sync.so.1": "libxcb-sync1",
    "libxcb-util.so.1": "libxcb-util1",
    "libxcb-xfixes.so.0": "libxcb-xfixes0",
    "libxcb-xkb.so.1": "libxcb-xkb1",
    "libxcb.so.1": "libxcb1",
    "libxkbcommon-x11.so.0": "libxkbcommon-x11-0",
}
FONT_PACKAGE = "fonts-dejavu-core"
FONT_FOLDERS = ("/usr/share/fonts", "/usr/local/share/fonts", "~/.local/share/fonts", "~/.fonts")

Say = Callable[[str], None]


def provide(*, window: bool, say: Say) -> None:
    """Install what is missing, or say what to install where this may not or cannot."""
    if not sys.platform.startswith("linux"):
        return
    missing = missing_packages(window=window)
    if missing:
        install(missing, say=say)


def missing_packages(*, window: bool) -> list[str]:
    """Packages of Debian and Ubuntu for what this machine lacks, by name."""
    wanted = {**TO_DRAW, **FOR_A_WINDOW} if window else TO_DRAW
    missing = [package for library, package in wanted.items() if not _loads(library)]
    if not _has_a_font():
        missing.append(FONT_PACKAGE)
    return sorted(missing)


def install(packages: list[str], *, say: Say) -> bool:
    """Install packages with apt; return whether that worked, and say what to do if not."""
    line = f"apt-get install --no-install-recommends {' '.join(packages)}"
    if shutil.which("apt-get") is None:
        say(
            "This system lacks what Debian and Ubuntu call "
            f"{', '.join(packages)}; install the like of it if the program does not start."
        )
        return False
    prefix = _as_root()
    if prefix is None:
        say(f"Missing on this system, and this user may not install it. Ask for:\n    {line}")
        return False
    say(f"Installing for the system: {' '.join(packages)}")
    apt = [*prefix, "env", "DEBIAN_FRONTEND=noninteractive", "apt-get", "-q", "-y"]
    command = [*apt, "install", "--no-install-recommends", *packages]
    # The lists of packages may be absent or older than the archive: refresh, try again.
    for attempt in (command, [*apt, "update"], command):
        done = subprocess.run(
            attempt, stdin=_input_for(prefix), capture_output=True, text=True, check=False
        )
        if done.returncode == 0 and attempt is command:
            return True
    say(f"{done.stderr.strip()}\nThis did not work; try it by hand, as root:\n    {line}")
    return False


def _as_root() -> list[str] | None:
    """Give the words before a command that make it run as root, or None without a way."""
    if sys.platform == "win32":
        return None
    if os.geteuid() == 0:
        return []
    if shutil.which("sudo") is None:
        return None
    if sys.stdin is not None and sys.stdin.isatty():
        return ["sudo"]
    asked = subprocess.run(["sudo", "-n", "true"], capture_output=True, check=False)
    return ["sudo", "-n"] if asked.returncode == 0 else None


def _input_for(prefix: list[str]) -> int | None:
    # sudo may ask for a password; nothing else may wait for an answer.
    return None if prefix == ["sudo"] else subprocess.DEVNULL


def _loads(library: str) -> bool:
    try:
        ctypes.CDLL(library)
    except OSError:
        return False
    return True


def _has_a_font() -> bool:
    for place in FONT_FOLDERS:
        folder = Path(place).expanduser()
        if any(folder.rglob("*.[to]tf")) or any(folder.rglob("*.ttc")):
            return True
    return False
