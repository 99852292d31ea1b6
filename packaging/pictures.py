"""Write the pictures that README.md shows: the window with the demo plan, light and dark.

.venv/bin/python packaging/pictures.py [FOLDER]
"""

from __future__ import annotations

import os
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
SIZE = (1280, 800)


def main() -> int:
    # A window of fixed size and scale, whatever the screen; the program of this folder.
    os.environ["QT_QPA_PLATFORM"] = "offscreen"
    os.environ["QT_SCALE_FACTOR"] = "1"
    sys.path.insert(0, str(ROOT))
    from planner.app.run import picture_window  # noqa: PLC0415 - after the two lines above
    from planner.catalogue.library import demo_plan  # noqa: PLC0415

    folder = Path(sys.argv[1]) if len(sys.argv) > 1 else ROOT / "resources" / "pictures"
    folder.mkdir(parents=True, exist_ok=True)
    for name, dark in (("light", False), ("dark", True)):
        picture = folder / f"window-{name}.png"
        picture_window(demo_plan(), picture, SIZE, dark)
        print(f"Wrote {picture}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
