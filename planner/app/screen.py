"""Whether a window can be shown at all, found out before Qt is asked.

Qt ends the whole process when it reaches no screen or lacks a library of the system, without
a word that helps. So the socket of the display named in the environment is tried first, and
then the libraries (Linux only). Nothing but the standard library is needed here: the scripts
that set the program up on a bare machine read the same lists.
"""

from __future__ import annotations

import ctypes
import os
import re
import socket
import sys
from collections.abc import Mapping
from pathlib import Path
from typing import Final

PATIENCE_S: Final = 2.0
# Library as Qt asks for it -> package of Debian and Ubuntu.
TO_DRAW: Final = {
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
FOR_A_WINDOW: Final = {
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
FONT_PACKAGE: Final = "fonts-dejavu-core"
FONT_FOLDERS: Final = (
    *("/usr/share/fonts", "/usr/local/share/fonts"),
    *("~/.local/share/fonts", "~/.fonts"),
)

_DISPLAY: Final = re.compile(r"(?P<host>.*):(?P<number>\d+)(\.\d+)?")
_WANT_SCREEN: Final = ("xcb", "wayland")


def screen_problem(environment: Mapping[str, str] | None = None) -> str | None:
    """Why no window can be shown (the words of a clause), None where one can be, it seems."""
    env = os.environ if environment is None else environment
    if not sys.platform.startswith("linux"):
        return None
    platform = env.get("QT_QPA_PLATFORM", "")
    if platform and not platform.startswith(_WANT_SCREEN):
        return None
    x11, wayland = env.get("DISPLAY", ""), env.get("WAYLAND_DISPLAY", "")
    if not x11 and not wayland:
        return "There is no screen here for the window"
    if wayland and not platform.startswith("xcb") and _wayland_answers(wayland, env):
        return None
    if x11 and not platform.startswith("wayland") and _x11_answers(x11):
        return None
    named = " and ".join(
        f"{name}={value}"
        for name, value in (("WAYLAND_DISPLAY", wayland), ("DISPLAY", x11))
        if value
    )
    return f"The screen named by {named} does not answer"


def library_problem(environment: Mapping[str, str] | None = None) -> str | None:
    """What a window under X11 lacks on this system, as a sentence; None where it has all.

    Under Wayland these libraries are not needed, and Qt does without.
    """
    env = os.environ if environment is None else environment
    platform = env.get("QT_QPA_PLATFORM", "")
    x11 = platform.startswith("xcb") or (not platform and not env.get("WAYLAND_DISPLAY"))
    if not x11 or not sys.platform.startswith("linux"):
        return None
    lacking = [name for name in FOR_A_WINDOW if "wayland" not in name and not loads(name)]
    if not lacking:
        return None
    return f"The window cannot be shown, because this system lacks {lacking[0]}; {remedy()}."


def remedy() -> str:
    """How to get the libraries that are missing here, as a clause."""
    packages = missing_packages(window=True) or [*TO_DRAW.values(), *FOR_A_WINDOW.values()]
    line = f"apt-get install --no-install-recommends {' '.join(sorted(packages))}"
    return f"on Debian or Ubuntu root installs what is missing with: {line}"


def missing_packages(*, window: bool) -> list[str]:
    """Packages of Debian and Ubuntu for what this machine lacks, by name."""
    wanted = {**TO_DRAW, **FOR_A_WINDOW} if window else TO_DRAW
    missing = [package for library, package in wanted.items() if not loads(library)]
    if not _has_a_font():
        missing.append(FONT_PACKAGE)
    return sorted(missing)


def loads(library: str) -> bool:
    """Whether the system has a library and all that it needs itself."""
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


def _x11_answers(display: str) -> bool:
    if display.startswith("/"):
        return _socket_answers(display.rsplit(":", 1)[0]) or _socket_answers(display)
    found = _DISPLAY.fullmatch(display)
    if found is None:
        return False
    host, number = found["host"], int(found["number"])
    if host in {"", "unix"}:
        path = f"/tmp/.X11-unix/X{number}"
        return _socket_answers(path) or _socket_answers(f"\0{path}")
    try:
        with socket.create_connection((host, 6000 + number), timeout=PATIENCE_S):
            return True
    except (OSError, OverflowError, UnicodeError):
        return False


def _wayland_answers(display: str, env: Mapping[str, str]) -> bool:
    path = Path(display)
    if not path.is_absolute():
        folder = env.get("XDG_RUNTIME_DIR", "")
        if not folder:
            return False
        path = Path(folder) / display
    return _socket_answers(str(path))


def _socket_answers(path: str) -> bool:
    try:
        with socket.socket(socket.AF_UNIX, socket.SOCK_STREAM) as probe:
            probe.settimeout(PATIENCE_S)
            probe.connect(path)
    except (OSError, ValueError):
        return False
    return True
