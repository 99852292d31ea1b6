"""Fetch the system's own libraries that Qt stands on, and a font; needed on Linux only.

Windows and macOS bring them. A desktop Linux has most of them; a bare Debian or Ubuntu
has none, and there this asks apt for those that are missing and for nothing else. What is
needed is listed in ``planner/app/screen.py``, which the program itself reads, too.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Callable, Sequence

Say = Callable[[str], None]


def provide(*, window: bool, say: Say, also: Sequence[str] = ()) -> list[str]:
    """Install what is missing, or say what to install where this may not or cannot.

    ``also`` are packages wanted for another reason; one line, once, names them all. Returns the
    packages that are still missing and without which the program cannot start at all.
    """
    if not sys.platform.startswith("linux"):
        return []
    # Late: an old Python does not read it, and is told first that it is too old.
    from planner.app.screen import TO_DRAW, missing_packages  # noqa: PLC0415

    missing = sorted({*missing_packages(window=window), *also})
    if not missing or install(missing, say=say):
        return []
    return [package for package in missing if package in {*TO_DRAW.values(), *also}]


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
