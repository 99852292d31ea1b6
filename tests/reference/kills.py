"""Programs killed while they write, by the thousand: what was written is there, whole.

    python -m tests.reference.kills [KIND ...] [--count 1000] [--seed 1]

(``-m harness`` in pytest does the same.) A child, forked from this process, does one kind of work
over and over and tells the number of each round it finished; it is killed at a moment drawn from
a seed. Then the work of the last round told, or of the one under way, must be found, whole.
With ``--full`` the work is done on a disk too small for it (wants the right to mount one).
"""

from __future__ import annotations

import argparse
import os
import random
import signal
import subprocess
import time
import traceback
from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise
from pathlib import Path
from tempfile import TemporaryDirectory

from planner.catalogue.library import demo_plan, load_catalogue, save_entry
from planner.commands import CommandError, write_output
from planner.estimate.result import EstimateOptions, Quality
from planner.estimate.sweep import Over, sweep
from planner.files.disk import PlanFileError
from planner.files.recovery import RecoverySlot, leftovers
from planner.files.store import load_plan, save_plan
from planner.plan.plan import Plan
from planner.plan.survey import Reading, Survey
from planner.survey.table_guess import guess_table
from planner.survey.table_reading import read_table
from planner.survey.table_workbook import sheets_of_bytes

TABLE = Path(__file__).parents[1] / "data" / "tables" / "plain_holes.csv"
LONGEST_S = 0.05
"""After the first round, a child lives at most this long."""

Work = Callable[[Path, int], None]
"""One round of work in a folder, by its number."""
Found = Callable[[Path], int]
"""The number of the round whose work is found, whole."""


@dataclass(frozen=True)
class Kind:
    """One kind of work, and how what it left is looked at."""

    work: Work
    found: Found
    longest_s: float = LONGEST_S


@dataclass
class Report:
    """What a run saw: kills, how often a round was cut in two, and how often the disk was full."""

    kills: int = 0
    under_way: int = 0
    refused: int = 0
    seconds: float = 0.0


def numbered(number: int) -> Plan:
    """A plan that tells its number, longer and shorter by turns."""
    return demo_plan().model_copy(update={"name": f"{number}", "note": "n" * (number * 997 % 4000)})


def _number(plan: Plan) -> int:
    assert plan == numbered(int(plan.name)).model_copy(update={"surveys": plan.surveys})
    return int(plan.name)


def _save(folder: Path, number: int) -> None:
    save_plan(numbered(number), folder / "cabinet.plan.json")


def _saved(folder: Path) -> int:
    return _number(load_plan(folder / "cabinet.plan.json"))


def _enter(folder: Path, number: int) -> None:
    """A reading is entered, and the plan kept aside."""
    value = 100.0 + number
    points = tuple((0.1 + 0.01 * k, 0.1) for k in range(20))
    readings = tuple(Reading(hole=k + 1, value=value) for k in range(number % 20 + 1))
    survey = Survey(key="s", name="Survey", points=points, readings=readings)
    plan = numbered(number).model_copy(update={"surveys": (survey,)})
    _slot(folder).write(plan, folder / "cabinet.plan.json")


def _slot(folder: Path, _made: dict[Path, RecoverySlot] = {}) -> RecoverySlot:  # noqa: B006
    # One for the life of a child, as the window has.
    return _made.setdefault(folder, RecoverySlot(folder))


def _kept(folder: Path) -> int:
    found, told = leftovers(folder)
    assert told == []
    assert len(found) == 1
    number = _number(found[0].plan)
    for survey in found[0].plan.surveys:
        assert len(survey.readings) == number % 20 + 1
        assert survey.readings[0].value == 100.0 + number
    return number


def _autosave(folder: Path, number: int) -> None:
    _slot(folder).write(numbered(number), None)


def _import(folder: Path, number: int) -> None:
    cells = sheets_of_bytes(TABLE.read_bytes())[0]
    table = read_table(cells, guess_table(cells), lux_per_umol=70.0)
    assert table.numbered
    _save(folder, number)


def _library(folder: Path, number: int) -> None:
    lamp = demo_plan().lamps[0].model
    save_entry(lamp.model_copy(update={"key": "mine", "name": f"Lamp {number}"}), folder)


def _in_library(folder: Path) -> int:
    catalogue = load_catalogue(folder)
    assert catalogue.problems == ()
    return int(catalogue.lamp("mine").name.removeprefix("Lamp "))


def _export(folder: Path, number: int) -> None:
    try:
        write_output(str(folder / "map.csv"), f"{number}\n".encode() * 5000)
    except CommandError as error:
        raise PlanFileError(folder, str(error)) from error


def _exported(folder: Path) -> int:
    lines = (folder / "map.csv").read_text("ascii").splitlines()
    assert lines == [lines[0]] * 5000
    return int(lines[0])


OVER = (Over("height", tuple(0.2 + 0.001 * k for k in range(200))),)
QUICK = EstimateOptions(cells=(4, 4), quality=Quality.PREVIEW)


def _sweep(folder: Path, tell: Callable[[int], None]) -> None:
    sweep(
        _bare(),
        OVER,
        QUICK,
        workers=0,
        journal=folder / "out.points",
        so_far=lambda so_far: tell(len(so_far.points)),
    )


def _bare() -> Plan:
    return demo_plan().model_copy(update={"lamps": demo_plan().lamps[:1]})


def _swept(folder: Path) -> int:
    book = folder / "out.points"
    found = sweep(_bare(), OVER, QUICK, workers=0, journal=book, cancelled=lambda: True)
    assert all(point.figures is not None for point in found.points.values())
    assert sorted(found.points) == list(range(len(found.points)))
    return len(found.points)


KINDS: dict[str, Kind] = {
    "save": Kind(_save, _saved),
    "autosave": Kind(_autosave, _kept),
    "survey entry": Kind(_enter, _kept),
    "import": Kind(_import, _saved),
    "library": Kind(_library, _in_library),
    "export": Kind(_export, _exported),
    "sweep": Kind(lambda *_: None, _swept, longest_s=0.3),
}


def _child(kind: Kind, folder: Path, told: int) -> None:
    """Work until killed; a full disk is refused in a sentence and is no end."""

    def tell(number: int) -> None:
        os.write(told, f"{number}\n".encode())

    if kind is KINDS["sweep"]:
        _sweep(folder, tell)
        time.sleep(60)
    number = 0
    while True:
        number += 1
        try:
            kind.work(folder, number)
        except PlanFileError as error:
            if "the disk is full" not in str(error) and "No space" not in str(error):
                raise
            os.write(told, b"full\n")
            number -= 1
            time.sleep(0.001)
        else:
            tell(number)


def kill_once(kind: Kind, folder: Path, wait_s: float, report: Report) -> None:
    """Start a child, kill it ``wait_s`` after its first finished round, look at what is left."""
    reading, writing = os.pipe()
    process = os.fork()
    if process == 0:
        os.close(reading)
        try:
            _child(kind, folder, writing)
        except BaseException:  # noqa: BLE001 - a child must never run on as the parent
            os.write(writing, f"fault {traceback.format_exc()!r}\n".encode())
        os._exit(1)
    os.close(writing)
    told = b""
    while b"\n" not in told and (more := os.read(reading, 65_536)):
        told += more
    time.sleep(wait_s)
    os.kill(process, signal.SIGKILL)
    os.waitpid(process, 0)
    while more := os.read(reading, 65_536):
        told += more
    os.close(reading)
    words = told.decode().split("\n")
    assert not any(word.startswith("fault") for word in words), told.decode()[-2000:]
    numbers = [int(word) for word in words if word.isdigit()]
    report.kills += 1
    report.refused += words.count("full")
    if numbers:
        found = kind.found(folder)
        assert found in {numbers[-1], numbers[-1] + 1}, (found, numbers[-1])
        report.under_way += found > numbers[-1]


# -- the whole window ---------------------------------------------------------------------

CHANGES_EVERY_S = 0.05
WINDOW_LOSES_S = 2.5
"""Work is copied aside two seconds after a change, and copying takes its time; on a machine that
lets the window wait, what it waited is added."""


def _window_child(folder: Path, told: int) -> None:
    """A window without a screen in which a reading is changed twenty times a second."""
    os.environ["QT_QPA_PLATFORM"] = "offscreen"
    os.environ["PLANNER_STATE_DIR"] = str(folder)
    from PySide6.QtCore import QTimer

    from planner.app.main_window import MainWindow
    from planner.app.run import make_application
    from planner.app.settings import Settings

    app = make_application()
    window = MainWindow(numbered(0), settings=Settings.in_memory())
    window.show()
    number = 0

    def change() -> None:
        nonlocal number
        number += 1
        window.document.apply(numbered(number), "Change")
        os.write(told, f"{number} {time.monotonic()}\n".encode())

    timer = QTimer(interval=round(1000 * CHANGES_EVERY_S))
    timer.timeout.connect(change)
    timer.start()
    app.exec()


def kill_window(folder: Path, wait_s: float) -> float:
    """Kill a window at work; returns the seconds of work that are gone, less those it stood."""
    reading, writing = os.pipe()
    process = os.fork()
    if process == 0:
        _window_child(folder, writing)
        os._exit(1)
    os.close(writing)
    told = os.read(reading, 65_536)
    time.sleep(wait_s)
    os.kill(process, signal.SIGKILL)
    killed = time.monotonic()
    os.waitpid(process, 0)
    while more := os.read(reading, 65_536):
        told += more
    os.close(reading)
    rounds = dict(line.split() for line in told.decode().splitlines())
    times = [float(when) for when in rounds.values()] + [killed]
    stood = max(later - sooner for sooner, later in pairwise(times)) - CHANGES_EVERY_S
    found, spoilt = leftovers(folder / "recovery")
    assert spoilt == []
    if not found:
        first = float(rounds["1"])
        return killed - first - stood
    number = _number(found[0].plan)
    later = [float(when) for each, when in rounds.items() if int(each) > number]
    return killed - min(later, default=killed) - stood


def run_window(count: int, *, seed: int = 1) -> list[float]:
    """Kill ``count`` windows; the seconds of work each lost."""
    draw, lost = random.Random(f"window {seed}"), []
    for _ in range(count):
        with TemporaryDirectory() as place:
            lost.append(kill_window(Path(place), draw.uniform(1, 6)))
            assert lost[-1] < WINDOW_LOSES_S, f"{lost[-1]:.1f} s of work are gone"
    return lost


def run(name: str, count: int, *, seed: int = 1, full: bool = False) -> Report:
    """Kill ``count`` children at one kind of work; an ``AssertionError`` tells a finding."""
    kind, draw, report = KINDS[name], random.Random(f"{name} {seed}"), Report()
    began = time.perf_counter()
    for _ in range(count):
        with TemporaryDirectory() as place:
            folder = Path(place)
            if full:
                small = ("mount", "-t", "tmpfs", "-o", "size=16k", "tmpfs", place)
                subprocess.run(small, check=True)
            try:
                kill_once(kind, folder, draw.uniform(0, kind.longest_s), report)
            finally:
                if full:
                    subprocess.run(("umount", place), check=True)
    report.seconds = time.perf_counter() - began
    return report


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("kinds", nargs="*", metavar="KIND", help=", ".join(KINDS))
    parser.add_argument("--count", type=int, default=150)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--windows", type=int, default=0, help="kill so many whole windows, too")
    parser.add_argument("--full", action="store_true", help="on a disk too small for the work")
    chosen = parser.parse_args()
    for name in chosen.kinds or KINDS:
        found = run(name, chosen.count, seed=chosen.seed, full=chosen.full)
        print(
            f"{name}: {found.kills} kills in {found.seconds:.0f} s, {found.under_way} of them "
            f"with a round done and not told, {found.refused} times a full disk; nothing lost",
            flush=True,
        )
    if chosen.windows:
        lost = run_window(chosen.windows, seed=chosen.seed)
        print(f"window: {len(lost)} kills; at most {max(lost):.1f} s of work gone")


if __name__ == "__main__":
    main()
