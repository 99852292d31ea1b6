"""Whether a window can be shown at all, found out before Qt is asked.

Qt ends the whole process when it reaches no screen, without a word that helps. So the
socket of the display named in the environment is tried first (Linux only).
"""

from __future__ import annotations

import os
import re
import socket
import sys
from collections.abc import Mapping
from pathlib import Path
from typing import Final

PATIENCE_S: Final = 2.0
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
