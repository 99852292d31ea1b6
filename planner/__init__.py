"""Grow space light planner: sketch a small grow space, see the light in it.

The way an edit takes is described in DEVELOPERS.md; ``python -m planner`` starts it.
"""

__version__ = "0.1.0"
