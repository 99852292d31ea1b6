"""What the user decides: frozen values, checked when they are made.

One file per noun. ``plan.Plan`` is the whole document; ``edits`` turns one plan into
the next; ``checks`` looks at a valid plan and reports what deserves a second thought.
"""
