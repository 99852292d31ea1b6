"""``python -m planner``: the window, or a command that needs no screen."""

from __future__ import annotations

import sys

from planner.command_line import main

if __name__ == "__main__":
    sys.exit(main())
