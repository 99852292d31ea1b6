"""No screen is told in a sentence instead of by an abort of Qt."""

from __future__ import annotations

import os
import socket
import subprocess
import sys
import tempfile
from pathlib import Path

import pytest

from planner.app import screen
from planner.app.screen import library_problem, screen_problem

linux_only = pytest.mark.skipif(not sys.platform.startswith("linux"), reason="sockets of Linux")
ROOT = Path(__file__).resolve().parents[3]


@linux_only
@pytest.mark.parametrize(
    "env",
    [
        {"DISPLAY": ":4711"},
        {"DISPLAY": "localhost:4711.0"},
        {"DISPLAY": "nonsense"},
        {"DISPLAY": "localhost:99999999"},
        {"WAYLAND_DISPLAY": "wayland-77", "XDG_RUNTIME_DIR": "/nowhere"},
        {"WAYLAND_DISPLAY": "wayland-77", "DISPLAY": ":4711"},
        {"DISPLAY": ":4711", "QT_QPA_PLATFORM": "xcb"},
    ],
)
def test_a_screen_that_does_not_answer_is_named(env: dict[str, str]) -> None:
    problem = screen_problem(env)
    assert problem is not None
    name = "WAYLAND_DISPLAY" if "WAYLAND_DISPLAY" in env else "DISPLAY"
    assert f"{name}={env[name]}" in problem


@linux_only
def test_no_screen_at_all() -> None:
    assert screen_problem({}) == "There is no screen here for the window"


def test_other_platforms_of_qt_need_no_screen() -> None:
    assert screen_problem({"QT_QPA_PLATFORM": "offscreen", "DISPLAY": ":4711"}) is None


@linux_only
def test_a_socket_that_answers_is_a_screen() -> None:
    # A short path: those of sockets are limited to 107 bytes.
    with tempfile.TemporaryDirectory() as folder, socket.socket(socket.AF_UNIX) as server:
        server.bind(f"{folder}/wayland-0")
        server.listen()
        env = {"WAYLAND_DISPLAY": "wayland-0", "XDG_RUNTIME_DIR": folder}
        assert screen_problem(env) is None


@linux_only
@pytest.mark.parametrize(
    ("library", "package"),
    [
        ("libxcb-cursor.so.0", "libxcb-cursor0"),
        ("libxkbcommon-x11.so.0", "libxkbcommon-x11-0"),
    ],
)
def test_a_library_the_window_lacks_is_named_before_qt_gives_up(
    monkeypatch: pytest.MonkeyPatch, library: str, package: str
) -> None:
    monkeypatch.setattr(screen, "loads", lambda name: name != library)
    monkeypatch.setattr(screen, "_has_a_font", lambda: True)
    problem = library_problem({"DISPLAY": ":0"})
    assert problem is not None
    assert f"lacks {library}; " in problem
    assert problem.endswith(f" {package}.")
    # Qt shows the window by way of Wayland, or nowhere.
    assert library_problem({"DISPLAY": ":0", "WAYLAND_DISPLAY": "wayland-0"}) is None
    assert library_problem({"QT_QPA_PLATFORM": "offscreen"}) is None
    monkeypatch.setattr(screen, "loads", lambda library: True)
    assert library_problem({"DISPLAY": ":0"}) is None


def test_the_readme_names_what_a_bare_system_needs() -> None:
    """The lists of the program hold every package of README.md's line for a bare system."""
    text = (ROOT / "README.md").read_text("utf-8")
    line = text.partition("apt-get install --no-install-recommends ")[2].partition("```")[0]
    told = set(line.replace("\\", " ").split()) - {"python3-venv"}
    needed = {*screen.TO_DRAW.values(), *screen.FOR_A_WINDOW.values(), screen.FONT_PACKAGE}
    assert told <= needed
    # What is not told comes along with what is: it stands in their dependencies (apt-cache).
    come_along = {"libx11-6", "libfreetype6", "libxkbcommon0", "zlib1g", "libzstd1"}
    come_along |= {"libxcb-render0", "libxcb1"}
    assert needed - told == come_along


@linux_only
def test_the_program_says_so_and_ends_in_good_order() -> None:
    env = {k: v for k, v in os.environ.items() if k not in {"QT_QPA_PLATFORM", "WAYLAND_DISPLAY"}}
    ended = subprocess.run(
        [sys.executable, "-m", "planner"],
        cwd=ROOT, env={**env, "DISPLAY": ":4711"}, capture_output=True, text=True, timeout=30,
        check=False,
    )  # fmt: skip
    assert ended.returncode == 2
    assert "DISPLAY=:4711 does not answer" in ended.stderr
    assert "Traceback" not in ended.stderr
