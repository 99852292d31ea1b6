"""``python -m planner``: the window, or a command that needs no screen."""

from __future__ import annotations

import os
import sys

# Before numpy is imported: one thread for each matrix product. The arrays are small, and
# on a machine of few cores threads that wait for each other cost far more than they give.
for _name in ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ.setdefault(_name, "1")

from planner.language import wanted  # noqa: E402

if (language := wanted()) != "en":
    from planner.exchange import speak

    # Before anything that has words is imported.
    speak(language)

from planner.command_line import main  # noqa: E402

if __name__ == "__main__":
    if getattr(sys, "frozen", False):
        # A worker of a sweep is this very program, started anew from the bundle.
        import multiprocessing

        multiprocessing.freeze_support()
    sys.exit(main())
