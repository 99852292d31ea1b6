"""Make a folder of Python packages that runs the program, on a machine that has only Python.

Used by ``start.py`` and ``check.py``; needs nothing outside the standard library. Done
once; later runs see from a stamp that nothing changed and go on at once.
"""

from __future__ import annotations

import hashlib
import importlib.util
import os
import shutil
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path

import system_libraries

ROOT = Path(__file__).resolve().parent.parent
# What the program knows of the libraries it stands on is read from the program of this folder.
sys.path.insert(0, str(ROOT))
CONSTRAINTS = ROOT / "packaging" / "constraints.txt"
OLDEST_PYTHON = (3, 11)
NEWER_PYTHONS = ("python3.13", "python3.12", "python3.11", "python3.14")


class SetupError(Exception):
    """Setting up failed; the message says what is wrong and what would help."""


def say(text: str) -> None:
    """Tell the person waiting what happens."""
    print(text, flush=True)


def use_a_new_enough_python() -> None:
    """Go on in a newer Python of this machine when this one is too old.

    Raises
    ------
    SetupError
        If there is none.
    """
    if sys.version_info >= OLDEST_PYTHON:
        return
    for name in NEWER_PYTHONS:
        found = shutil.which(name)
        if found:
            os.execv(found, [found, *sys.argv])
    have = "{}.{}".format(*sys.version_info[:2])
    raise SetupError(f"Python 3.11 or newer is needed, this is {have}; install a newer Python.")


def prepare(extras: tuple[str, ...], *, window: bool) -> Path:
    """Set everything up and return the Python that runs the program.

    ``extras`` name groups of pyproject.toml (``test``, ``lint``); with ``window`` the
    libraries for a window on a screen are fetched as well, otherwise those for drawing.

    Raises
    ------
    SetupError
        If something cannot be had; the message says what to do.
    """
    folder = _environment_folder()
    python = _python_in(folder)
    also = () if _works(python) else _for_venv()
    missing = system_libraries.provide(window=window, say=say, also=also)
    if missing and shutil.which("apt-get") is not None:
        raise SetupError("Nothing can start without these; start again when they are there.")
    stamp = folder / "set-up.txt"
    wanted = _fingerprint()
    if python.exists() and stamp.exists() and _covers(stamp.read_text("utf-8"), wanted, extras):
        return python
    say(f"Setting up in {folder}; the first time this fetches about 150 MB.")
    if not _works(python):
        _make_environment(folder, python)
    _install(python, _requirements(extras))
    stamp.write_text("\n".join([wanted, *extras]) + "\n", encoding="utf-8")
    return python


def run(python: Path, *arguments: str, **extra: str) -> int:
    """Run the environment's Python in the program's folder and return the exit code."""
    environment = {**os.environ, "PYTHONUTF8": "1", **extra}
    for name in ("PYTHONHOME", "PYTHONPATH"):  # they would bring in another Python's packages
        environment.pop(name, None)
    command = [str(python), *arguments]
    return subprocess.run(command, cwd=ROOT, env=environment, check=False).returncode


def _environment_folder() -> Path:
    chosen = os.environ.get("PLANNER_ENVIRONMENT")
    if chosen:
        return Path(chosen).expanduser().resolve()
    if os.access(ROOT, os.W_OK):
        return ROOT / ".venv"
    cache = os.environ.get("XDG_CACHE_HOME") or os.environ.get("LOCALAPPDATA")
    place = Path(cache) if cache else Path.home() / ".cache"
    return place / "grow-space-light-planner" / "venv"


def _python_in(folder: Path) -> Path:
    return folder / ("Scripts/python.exe" if os.name == "nt" else "bin/python")


def _works(python: Path) -> bool:
    """Whether there is a Python of the right version with pip (a moved folder has none)."""
    if not python.exists():
        return False
    question = "import sys, pip; print(*sys.version_info[:2])"
    try:
        answer = subprocess.run(
            [str(python), "-c", question], capture_output=True, text=True, check=False
        )
    except OSError:
        return False
    return answer.stdout.split() == [str(part) for part in sys.version_info[:2]]


def _fingerprint() -> str:
    """Stand for everything the environment was made from."""
    digest = hashlib.sha256()
    for part in (ROOT / "pyproject.toml", CONSTRAINTS):
        digest.update(part.read_bytes())
    digest.update(f"{sys.version_info[:3]} {ROOT}".encode())
    return digest.hexdigest()


def _covers(stamp: str, wanted: str, extras: tuple[str, ...]) -> bool:
    made, *present = stamp.split()
    return made == wanted and set(extras) <= set(present)


def _for_venv() -> Sequence[str]:
    """What Debian and Ubuntu ship apart from Python and a virtual environment needs."""
    if all(importlib.util.find_spec(name) for name in ("ensurepip", "venv")):
        return []
    return ["python{}.{}-venv".format(*sys.version_info[:2])]


def _make_environment(folder: Path, python: Path) -> None:
    shutil.rmtree(folder, ignore_errors=True)
    folder.parent.mkdir(parents=True, exist_ok=True)
    bare = [sys.executable, "-m", "venv", "--without-pip", str(folder)]
    pip = [sys.executable, "-m", "pip", "--python", str(python), "install", "--quiet", "pip"]
    attempts = (
        [[sys.executable, "-m", "venv", str(folder)]],
        [[sys.executable, "-m", "virtualenv", "--quiet", str(folder)]],
        [bare, pip],  # venv without the pip that Debian ships apart, and the system's pip
    )
    for commands in attempts:
        if all(_succeeds(command) for command in commands) and _works(python):
            return
        shutil.rmtree(folder, ignore_errors=True)
    raise SetupError(
        f"No virtual environment can be made in {folder}. On Debian or Ubuntu run\n"
        "    sudo apt-get install python3-venv\nand start again."
    )


def _succeeds(command: list[str]) -> bool:
    return subprocess.run(command, capture_output=True, check=False).returncode == 0


def _requirements(extras: tuple[str, ...]) -> list[str]:
    import tomllib  # noqa: PLC0415 - absent from a Python too old, which is told so first

    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    optional = project["optional-dependencies"]
    return [*project["dependencies"], *(line for extra in extras for line in optional[extra])]


def _install(python: Path, requirements: list[str]) -> None:
    command = [
        *(str(python), "-m", "pip", "install", "--quiet", "--disable-pip-version-check"),
        *("--no-input", "--constraint", str(CONSTRAINTS), *requirements),
    ]
    if subprocess.run(command, check=False).returncode != 0:
        raise SetupError(
            "The packages could not be fetched (pip's own words stand above). The first run "
            "needs the network; behind a proxy set HTTPS_PROXY, and where packages come from "
            "a mirror, name it in pip's settings. Then start again."
        )
