"""Write the pictures that README.md and the guide show, from the invented plans.

.venv/bin/python packaging/pictures.py [FOLDER]
"""

from __future__ import annotations

import os
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parent.parent
WHOLE = (1280, 800)
SMALL = (1010, 700)

DEMO, MEASURED = "hallway-cabinet", "hallway-cabinet-measured"
Part = Callable[[Any], Any]


def side(question: str, part: str = "") -> Part:
    """A question of the page Side by side; all of the window, or a part of the page by name."""

    def of(window: Any) -> Any:
        window.pages.go("side")
        page = window.pages.made("side")
        page.open_question(question)
        settle()
        return getattr(page, part) if part else window

    return of


def survey(task: int, part: str = "") -> Part:
    """A task of the page Survey; all of the window, or a part of the page by name."""

    def of(window: Any) -> Any:
        window.pages.go("survey")
        page = window.pages.made("survey")
        page.show_task(task)
        settle()
        page.fit()
        settle()
        return getattr(page, part) if part else window

    return of


def drawing(window: Any) -> Any:
    """The plan to scale."""
    return window.page.plan_view


BOARD, READINGS, OVERLAY = 0, 2, 3
# Name, plan, size of the window, dark, part.
PICTURES: tuple[tuple[str, str, tuple[int, int], bool, Part | None], ...] = (
    ("window-light", DEMO, WHOLE, False, None),
    ("window-dark", DEMO, WHOLE, True, None),
    ("side-by-side", MEASURED, WHOLE, False, side("options")),
    ("survey", MEASURED, WHOLE, False, survey(OVERLAY)),
    ("guide-sketch", DEMO, SMALL, False, drawing),
    ("guide-options", MEASURED, SMALL, False, side("options", "sheet")),
    ("guide-board", MEASURED, SMALL, False, survey(BOARD, "stage")),
    ("guide-overlay", MEASURED, SMALL, False, survey(OVERLAY, "stage")),
)


def settle() -> None:
    """Let what was asked be shown."""
    from PySide6.QtWidgets import QApplication  # noqa: PLC0415 - after main has set it up

    for _ in range(6):
        QApplication.processEvents()


def main() -> int:
    # A window of fixed size and scale, whatever the screen, that answers inside each call; the
    # program of this folder.
    os.environ["QT_QPA_PLATFORM"] = "offscreen"
    os.environ["QT_SCALE_FACTOR"] = "1"
    os.environ["PLANNER_SYNCHRONOUS"] = "1"
    sys.path.insert(0, str(ROOT))
    from planner.exchange import speak  # noqa: PLC0415 - after the lines above
    from planner.language import wanted  # noqa: PLC0415

    speak(wanted())
    from planner.app.run import picture_window  # noqa: PLC0415
    from planner.catalogue.library import demo_plan  # noqa: PLC0415

    folder = Path(sys.argv[1]) if len(sys.argv) > 1 else ROOT / "resources" / "pictures"
    folder.mkdir(parents=True, exist_ok=True)
    for name, plan, size, dark, part in PICTURES:
        picture = folder / f"{name}.png"
        picture_window(demo_plan(plan), picture, size, dark, part)
        print(f"Wrote {picture}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
