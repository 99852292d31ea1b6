"""A sweep at a terminal: curves into a file, and what is mistyped."""

from __future__ import annotations

import csv
import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from planner import command_line
from planner.estimate.evaluate import evaluate
from planner.estimate.result import EstimateOptions, Quality
from planner.files.store import save_plan
from planner.plan.edits import change_lamp
from tests.unit.reports.sample_estimate import sample_plan

ROOT = Path(__file__).parents[2]


@pytest.fixture
def plan_file(tmp_path: Path) -> Path:
    path = tmp_path / "cabinet.plan.json"
    save_plan(sample_plan(), path)
    return path


def read(path: Path) -> list[dict[str, str]]:
    return list(csv.DictReader(path.read_text("utf-8").splitlines()))


def test_curves_of_heights_and_outputs(
    plan_file: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = tmp_path / "heights.csv"
    code = command_line.main(
        ["sweep", str(plan_file), "--over", "height=20cm:0.6:3", "--over", "output=50,100",
         "--csv", str(out), "--quality", "preview", "--workers", "0"]
    )  # fmt: skip
    assert code == 0
    assert "(6 points)" in capsys.readouterr().out
    lines = read(out)
    assert [(line["height_m"], line["output_percent"]) for line in lines] == [
        (h, o) for h in ("0.2", "0.4", "0.6") for o in ("50", "100")
    ]
    expected = evaluate(
        change_lamp(sample_plan(), 0, hanging_height=0.6), EstimateOptions(quality=Quality.PREVIEW)
    )
    assert float(lines[5]["mean_umol_m2_s"]) == pytest.approx(expected.figures.mean, rel=1e-8)
    assert not (tmp_path / "heights.csv.points").exists()


def test_linings_and_lamps_are_gone_over_by_their_keys(
    plan_file: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """What is in the plan and what is in the catalogue, at one place or at all."""
    out = tmp_path / "linings.csv"
    code = command_line.main(
        ["sweep", str(plan_file), "--over", "lining@ceiling=white-board,plywood",
         "--over", "lamp=panel", "--csv", str(out), "--quality", "preview", "--workers", "0"]
    )  # fmt: skip
    assert code == 0
    lines = read(out)
    # The plan's own white board stands for the catalogue's; its lamp is in no catalogue.
    assert [(line["lining_ceiling"], line["lamp"]) for line in lines] == [
        ("White board", "Invented panel"),
        ("Bare plywood (birch or softwood)", "Invented panel"),
    ]
    # White sends back 0.8 of the light, wood 0.45.
    means = [float(line["mean_umol_m2_s"]) for line in lines]
    assert means[0] > means[1]


def test_points_that_cannot_be_end_with_a_word_and_a_code(
    plan_file: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The ceiling hangs at 1.2 m: a lamp 2 m above the canopy cannot be."""
    out = tmp_path / "heights.csv"
    code = command_line.main(
        ["sweep", str(plan_file), "--over", "height=0.4,2", "--csv", str(out),
         "--quality", "preview", "--workers", "0"]
    )  # fmt: skip
    assert code == 1
    err = capsys.readouterr().err
    assert err.startswith("1 of 2 points cannot be, the first because: ")
    assert len(read(out)) == 2


def test_onto_standard_output(plan_file: Path, capfdbinary: pytest.CaptureFixture[bytes]) -> None:
    code = command_line.main(
        ["sweep", str(plan_file), "--over", "output=100", "--csv", "-", "--quality", "preview"]
    )
    assert code == 0
    assert capfdbinary.readouterr().out.startswith(b"output_percent,mean_umol_m2_s,")


def test_a_share_is_typed_and_written_in_per_cent(plan_file: Path, tmp_path: Path) -> None:
    out = tmp_path / "dust.csv"
    words = ["sweep", str(plan_file), "--over", "dust=0,20", "--csv", str(out), "--quality",
             "preview", "--workers", "0"]  # fmt: skip
    assert command_line.main(words) == 0
    rows = read(out)
    assert [row["dust_percent"] for row in rows] == ["0", "20"]
    clean, dusty = (float(row["mean_umol_m2_s"]) for row in rows)
    assert dusty == pytest.approx(0.8 * clean, rel=1e-6)


@pytest.mark.parametrize(
    ("more", "said"),
    [
        (["--over", "heigth=1:2:3"], "no number called 'heigth'"),
        (["--over", "lining=chalk"], "no lining 'chalk'"),
        (["--over", "output@lamp-2=50"], "no lamp 2 in"),
        (["--over", "output@shelf=50"], "'shelf' is no place"),
        (["--over", "height=1:2:3", "--workers", "-1"], "--workers -1"),
        (["--over", "height=1:2:3", "--seed", "-1"], "not a seed"),
        (["--over", "height=1:2:3", "--over", "height=1"], "named twice"),
        ([], "--over"),
    ],
)
def test_what_is_mistyped_is_said_in_a_sentence(
    plan_file: Path,
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
    more: list[str],
    said: str,
) -> None:
    out = tmp_path / "out.csv"
    assert command_line.main(["sweep", str(plan_file), "--csv", str(out), *more]) == 2
    err = capsys.readouterr().err
    assert said in err
    assert err.count("\n") == 1
    assert not out.exists()


def test_without_the_extra_a_scheduler_is_refused(
    plan_file: Path,
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setitem(sys.modules, "distributed", None)
    code = command_line.main(
        ["sweep", str(plan_file), "--over", "height=0.2:0.4:3", "--csv", str(tmp_path / "o.csv"),
         "--scheduler", "tcp://192.0.2.7:8786"]
    )  # fmt: skip
    assert code == 2
    assert "grow-space-light-planner[cluster]" in capsys.readouterr().err


def test_the_plan_is_not_written_over(plan_file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    before = plan_file.read_bytes()
    code = command_line.main(
        ["sweep", str(plan_file), "--over", "height=0.2:0.4:3", "--csv", str(plan_file)]
    )
    assert code == 2
    assert "the plan itself" in capsys.readouterr().err
    assert plan_file.read_bytes() == before


@pytest.mark.slow
@pytest.mark.skipif(os.name != "posix", reason="a terminal's interrupt is a signal of POSIX")
@pytest.mark.may_skip("a terminal's interrupt is a signal of POSIX")
def test_interrupted_it_goes_on_where_it_was(plan_file: Path, tmp_path: Path) -> None:
    out, book = tmp_path / "out.csv", tmp_path / "out.csv.points"
    command = [
        sys.executable, "-m", "planner", "sweep", str(plan_file), "--over", "height=0.2:0.9:240",
        "--csv", str(out), "--workers", "2", "--quality", "default",
    ]  # fmt: skip
    environment = {**os.environ, "PYTHONPATH": str(ROOT)}
    # Who runs the tests in the background of a shell ignores it, and so would the program.
    before = signal.signal(signal.SIGINT, signal.default_int_handler)
    running = subprocess.Popen(
        command, cwd=ROOT, env=environment, stderr=subprocess.PIPE, stdout=subprocess.PIPE,
        start_new_session=True,
    )  # fmt: skip
    signal.signal(signal.SIGINT, before)
    try:
        deadline = time.monotonic() + 60
        while not (book.exists() and len(book.read_bytes().splitlines()) > 1):
            assert time.monotonic() < deadline
            assert running.poll() is None
            time.sleep(0.02)
        # As Ctrl+C does: to the program and its processes.
        os.killpg(running.pid, signal.SIGINT)
        _, err = running.communicate(timeout=60)
    finally:
        if running.poll() is None:
            running.kill()
            running.communicate()
    assert running.returncode == 130
    assert b"the same command goes on" in err
    assert b"Traceback" not in err
    kept = len(book.read_bytes().splitlines()) - 1
    assert 0 < kept < 240
    done = subprocess.run(
        command, cwd=ROOT, env=environment, capture_output=True, timeout=90, check=False
    )
    assert done.returncode == 0, done.stderr
    assert len(read(out)) == 240
    assert not book.exists()
