"""Names the window uses in more than one place."""

from __future__ import annotations

from typing import Final

APP_TITLE: Final = "Grow space light planner"
PLAN_FILTER: Final = "Plans (*.plan.json *.json);;All files (*)"
