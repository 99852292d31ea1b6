"""Set everything up and run the main job on the demo plan.

Where there is a screen the program's window opens. Without one the estimate of the demo
plan and a picture of the window are written, and where they are is said.

    python3 packaging/start.py [--no-window] [--out FOLDER] [PLAN]
"""

from __future__ import annotations

import argparse
import os
import sys
import time
from pathlib import Path

import environment

# A window that lived longer than this was there: how it ended is not a matter of the screen.
OPENED_AFTER_S = 20.0


def main() -> int:
    options = _options()
    try:
        environment.use_a_new_enough_python()
        window = has_a_screen() and not options.no_window
        python = environment.prepare((), window=window)
    except environment.SetupError as problem:
        print(problem, file=sys.stderr)
        return 3
    from planner.app.screen import library_problem  # noqa: PLC0415 - not for an old Python

    # Where it lacks a library for the window alone, what to install was said already.
    if window and library_problem() is None:
        plan = [str(options.plan.resolve())] if options.plan else []
        began = time.monotonic()
        code = environment.run(python, "-m", "planner", *plan)
        if code == 0 or options.plan or time.monotonic() - began > OPENED_AFTER_S:
            return code
        environment.say(f"The window did not open here (code {code}).")
    out = options.out.expanduser().resolve()
    environment.say(f"No window: writing the estimate and a picture of the window to {out}")
    demo = ("-m", "planner", "demo", "--out", str(out))
    return environment.run(python, *demo, QT_QPA_PLATFORM="offscreen")


def has_a_screen() -> bool:
    """Whether a window can be expected to show; on Linux a display must be named."""
    if sys.platform.startswith("linux"):
        return bool(os.environ.get("WAYLAND_DISPLAY") or os.environ.get("DISPLAY"))
    return True


def _options() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description="Set everything up and start the planner.")
    parser.add_argument("plan", nargs="?", type=Path, help="a plan file to open")
    parser.add_argument("--no-window", action="store_true", help="write files, open no window")
    parser.add_argument(
        "--out",
        type=Path,
        default=Path("planner-demo"),
        metavar="FOLDER",
        help="where the files go when there is no window (default: planner-demo, here)",
    )
    return parser.parse_args()


if __name__ == "__main__":
    sys.exit(main())
