"""The interpreter outlives many Qt calls.

PySide6 6.12.0 loses a reference to None with every void call and one to True with every
emit; on Python 3.11 the process aborts after about 5,000 of them, sometimes only at the
very end. So the exit code of a process of its own counts, not what it printed.
"""

from __future__ import annotations

import os
import subprocess
import sys

CALLS = 20_000

PROGRAM = f"""
from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QApplication, QWidget

class Bell(QObject):
    rung = Signal(bool)

application = QApplication([])
widget, bell, heard = QWidget(), Bell(), []
bell.rung.connect(heard.append)
for _ in range({CALLS}):
    widget.update()
    widget.setWindowTitle("light")
    bell.rung.emit(True)
print(len(heard))
"""


def test_twenty_thousand_void_calls_and_emits_end_with_exit_code_zero() -> None:
    done = subprocess.run(
        [sys.executable, "-X", "faulthandler", "-c", PROGRAM],
        env={**os.environ, "QT_QPA_PLATFORM": "offscreen"},
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    assert done.stdout.strip() == str(CALLS)
