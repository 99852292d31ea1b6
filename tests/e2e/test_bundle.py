"""The standalone folder: built, started without a screen, and its window looked at under X11.

Asked for by name: pytest -m bundle, with the package pyinstaller; the window wants Debian's xvfb.
"""

from __future__ import annotations

import csv
import os
import shutil
import subprocess
import sys
import time
from collections.abc import Iterator
from importlib.util import cache_from_source, find_spec
from pathlib import Path

import numpy as np
import pytest
from PySide6.QtGui import QImage

ROOT = Path(__file__).parents[2]
NAME = "grow-space-light-planner"
LARGEST_MB = 250

pytestmark = [
    pytest.mark.bundle,
    pytest.mark.timeout(1800),
    pytest.mark.may_skip("not every machine builds bundles"),
    pytest.mark.skipif(find_spec("PyInstaller") is None, reason="pyinstaller is not installed"),
]


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    out = tmp_path_factory.mktemp("bundle")
    script = ROOT / "packaging" / "bundle.py"
    subprocess.run([sys.executable, str(script), "--out", str(out)], check=True, cwd=ROOT)
    return out / NAME


def clean(home: Path, **more: str) -> dict[str, str]:
    """An environment in which nothing of the Python that runs the test is to be found."""
    return {"HOME": str(home), "PATH": "/usr/bin:/bin", "LANG": "C.UTF-8", **more}


def started(folder: Path, home: Path, *words: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [str(folder / NAME), *words],
        env=clean(home),
        capture_output=True,
        encoding="utf-8",
        cwd=home,
        check=False,
    )


def test_it_is_no_larger_than_promised(folder: Path) -> None:
    files = [path for path in folder.rglob("*") if not path.is_dir() or path.is_symlink()]
    assert sum(path.lstat().st_size for path in files) / 1e6 <= LARGEST_MB


def test_it_computes_and_paints_without_a_screen(folder: Path, tmp_path: Path) -> None:
    done = started(folder, tmp_path, "demo", "--out", "demo")
    assert (done.returncode, done.stderr) == (0, "")
    picture = QImage(str(tmp_path / "demo" / "window.png"))
    assert (picture.width(), picture.height()) == (1280, 800)


def test_german_is_compiled_ahead_for_it_cannot_be_kept(folder: Path, tmp_path: Path) -> None:
    package = next(folder.rglob("planner/exchange.py")).parent
    sources = [path.relative_to(package) for path in package.rglob("*.py")]
    kept = {path.relative_to(package) for path in package.rglob("*.opt-de.pyc")}
    wanted = {Path(cache_from_source(path, optimization="de")) for path in sources}
    assert len(wanted) > 200
    assert wanted <= kept
    for path in package.rglob("*.opt-de.pyc"):
        # As it was compiled for these sources: nothing of the machine that built it.
        assert str(ROOT).encode() not in path.read_bytes()
    done = subprocess.run(
        [str(folder / NAME), "estimate", "demo"],
        env=clean(tmp_path, PLANNER_LANGUAGE="de"),
        capture_output=True,
        encoding="utf-8",
        cwd=tmp_path,
        check=False,
    )
    assert (done.returncode, done.stderr) == (0, "")
    assert "Blätterdach" in done.stdout


@pytest.mark.parametrize(("name", "begins"), [("r.pdf", b"%PDF-"), ("r.html", b"<!DOCTYPE html>")])
def test_it_writes_its_report(folder: Path, tmp_path: Path, name: str, begins: bytes) -> None:
    done = started(folder, tmp_path, "report", "demo", "--out", name)
    assert (done.returncode, done.stderr) == (0, "")
    assert (tmp_path / name).read_bytes().startswith(begins)


def test_it_is_called_by_its_own_name(folder: Path, tmp_path: Path) -> None:
    done = started(folder, tmp_path, "estimate")
    assert done.returncode == 2
    assert f"'{NAME} estimate --help' shows what can be asked." in done.stderr


def test_the_workers_of_a_sweep_are_the_program_itself(folder: Path, tmp_path: Path) -> None:
    words = ("--over", "height=0.2,0.3,0.4", "--quality", "preview", "--workers", "2")
    done = started(folder, tmp_path, "sweep", "demo", *words, "--csv", "heights.csv")
    assert (done.returncode, done.stderr) == (0, "")
    with (tmp_path / "heights.csv").open(encoding="utf-8", newline="") as stream:
        rows = list(csv.DictReader(stream))
    means = [float(row["mean_umol_m2_s"]) for row in rows]
    # The farther the lamp, the less light.
    assert means == sorted(means, reverse=True)


@pytest.fixture
def display(tmp_path: Path) -> Iterator[tuple[str, Path]]:
    if shutil.which("Xvfb") is None:
        pytest.skip("Xvfb is not installed")
    reading, writing = os.pipe()
    where = ("-fbdir", str(tmp_path), "-screen", "0", "1400x900x24", "-displayfd", str(writing))
    server = subprocess.Popen(["Xvfb", *where], pass_fds=(writing,), stderr=subprocess.DEVNULL)
    os.close(writing)
    with os.fdopen(reading) as told:
        number = told.readline().strip()
    yield f":{number}", tmp_path / "Xvfb_screen0"
    server.terminate()
    server.wait()


def screen(file: Path) -> np.ndarray:
    """The picture a virtual screen shows: (row, column, blue-green-red), of the XWD format."""
    data = file.read_bytes()
    head = np.frombuffer(data, ">u4", 25)
    size, width, height, across, colours = (int(head[k]) for k in (0, 4, 5, 12, 19))
    start = size + 12 * colours
    pixels = np.frombuffer(data, np.uint8, height * across, start)
    return pixels.reshape(height, across // 4, 4)[:, :width, :3]


def test_its_window_shows_the_demo(folder: Path, tmp_path: Path, display: tuple[str, Path]) -> None:
    named, file = display
    home = tmp_path / "home"
    home.mkdir()
    program = subprocess.Popen(
        [str(folder / NAME), "open", "demo"],
        env=clean(home, DISPLAY=named),
        stderr=subprocess.PIPE,
        encoding="utf-8",
    )
    try:
        # Of a map much stands in the yellow that only much light has; before it, next to nothing.
        deadline = time.monotonic() + 60
        bright = 0
        while bright < 2_000 and time.monotonic() < deadline and program.poll() is None:
            time.sleep(0.5)
            blue, green, red = screen(file).astype(int).transpose(2, 0, 1)
            bright = int(((red > 180) & (green > 160) & (blue < 120)).sum())
        kept = os.environ.get("PLANNER_BUNDLE_PICTURE")
        if kept:
            seen = screen(file)
            shown = np.dstack([seen, np.full(seen.shape[:2], 255, np.uint8)])
            height, width = shown.shape[:2]
            QImage(shown.data, width, height, QImage.Format.Format_RGB32).save(kept)
        assert program.poll() is None, program.communicate()[1]
        assert bright >= 2_000
        program.terminate()
        told = program.communicate(timeout=10)[1]
    finally:
        program.kill()
    assert "Traceback" not in told
