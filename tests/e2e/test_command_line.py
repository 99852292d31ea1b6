"""What a person does at a terminal: check, estimate, demo, schema; and what they mistype."""

from __future__ import annotations

import csv
import json
import math
import os
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtGui import QImage

import planner
from planner import command_line
from planner.app import run, screen
from planner.catalogue.library import demo_plan
from planner.estimate import evaluate as evaluate_module
from planner.files.store import save_plan
from planner.plan.edits import changed
from tests.unit.reports.sample_estimate import sample_estimate, sample_plan

ROOT = Path(__file__).parents[2]


def program(*arguments: str, **variables: str) -> subprocess.CompletedProcess[str]:
    """Run the program as from a terminal without a screen."""
    hidden = {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"}
    environment = {k: v for k, v in os.environ.items() if k not in hidden}
    return subprocess.run(
        [sys.executable, "-m", "planner", *arguments],
        capture_output=True,
        encoding="utf-8",
        cwd=ROOT,
        env={**environment, **variables},
        timeout=90,
        check=False,
    )


def refused(capsys: pytest.CaptureFixture[str], *arguments: str) -> str:
    """Ask in this process, expect exit code 2, and return the one sentence."""
    assert command_line.main(list(arguments)) == 2
    out, err = capsys.readouterr()
    assert out == ""
    assert err.endswith(".\n")
    assert err.count("\n") == 1
    assert "Traceback" not in err
    return err


@pytest.fixture
def plan_file(tmp_path: Path) -> Path:
    path = tmp_path / "cabinet.plan.json"
    save_plan(sample_plan(), path)
    return path


@pytest.fixture
def quick_light(monkeypatch: pytest.MonkeyPatch) -> list[Any]:
    """Put a made-up estimate in place of the light core; returns what was asked of it."""
    asked: list[Any] = []

    def evaluate(plan: Any, options: Any) -> Any:
        asked.append(options)
        return sample_estimate(plan, cells=options.cells)

    monkeypatch.setattr(evaluate_module, "evaluate", evaluate)
    return asked


@pytest.fixture
def opened(monkeypatch: pytest.MonkeyPatch) -> list[Path | None]:
    """Let no window open; returns what would have been opened."""
    paths: list[Path | None] = []

    def run_window(path: Path | None, *, demo: bool = False) -> int:
        paths.append(Path("the demo") if demo else path)
        return 0

    monkeypatch.setattr(run, "run_window", run_window)
    return paths


# -- the real thing, in a process of its own ----------------------------------------------


def test_estimating_the_demo_plan_without_a_screen(tmp_path: Path) -> None:
    out = {name: tmp_path / name for name in ("light.json", "light.csv", "light.png")}
    done = program(
        "estimate", "demo", "--cells", "16x10", "--quality", "preview", "--seed", "3",
        "--json", str(out["light.json"]), "--csv", str(out["light.csv"]),
        "--picture", str(out["light.png"]),
    )  # fmt: skip
    assert (done.returncode, done.stderr) == (0, "")
    assert demo_plan().name in done.stdout
    assert "Mean " in done.stdout
    assert "Photon balance" in done.stdout
    whole = json.loads(out["light.json"].read_text(encoding="utf-8"))
    room = whole["map"]
    assert (len(room["ppfd"]), len(room["ppfd"][0]), whole["seed"]) == (10, 16, 3)
    known = [
        (value, area)
        for values, areas in zip(room["ppfd"], room["cell_area_m2"], strict=True)
        for value, area in zip(values, areas, strict=True)
        if value is not None
    ]
    total = sum(area for _, area in known)
    assert total == pytest.approx(demo_plan().space.area, rel=1e-6)
    mean = sum(value * area for value, area in known) / total
    assert whole["figures"]["mean"] == pytest.approx(mean, rel=1e-9)
    assert sum(share["share"] for share in whole["shares"]) == pytest.approx(1, abs=0.02)
    assert abs(whole["closure"]) < 0.02
    lamps = sum(lamp.ppf for lamp in demo_plan().lamps)
    assert whole["figures"]["photon_flux"] == pytest.approx(lamps)
    with out["light.csv"].open(encoding="utf-8", newline="") as stream:
        rows = list(csv.DictReader(stream))
    assert len(rows) == len(known)
    assert QImage(str(out["light.png"])).width() == 1200


def test_the_demo_writes_its_estimate_and_pictures(tmp_path: Path) -> None:
    folder = tmp_path / "new" / "demo"
    done = program("demo", "--out", str(folder))
    assert (done.returncode, done.stderr) == (0, "")
    assert {p.name for p in folder.iterdir()} == {
        "estimate.csv",
        "estimate.json",
        "map.png",
        "window.png",
    }
    for file in folder.iterdir():
        assert str(file) in done.stdout
    window = QImage(str(folder / "window.png"))
    assert (window.width(), window.height()) == (1280, 800)
    painted = {window.pixel(x, y) for x in range(0, 1280, 7) for y in range(0, 800, 7)}
    assert len(painted) > 50


def test_same_seed_same_map() -> None:
    asked = ("estimate", "demo", "--quality", "preview", "--cells", "8", "--json", "-")
    one, two = (json.loads(program(*asked).stdout) for _ in range(2))
    assert one["map"] == two["map"]


def test_without_a_screen_the_window_says_what_to_do() -> None:
    if not sys.platform.startswith("linux"):
        pytest.skip("elsewhere there is always a screen")
    done = program()
    assert done.returncode == 2
    assert done.stdout == ""
    assert done.stderr.startswith("There is no screen here for the window; ")
    assert "demo --out FOLDER" in done.stderr
    assert done.stderr.count("\n") == 1


def test_a_missing_system_library_is_named_with_its_remedy(
    monkeypatch: pytest.MonkeyPatch, plan_file: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    def run_window(_path: Path | None) -> int:
        raise ImportError("libEGL.so.1: cannot open shared object file: No such file or directory")

    monkeypatch.setattr(run, "run_window", run_window)
    gone = {"libEGL.so.1", "libglib-2.0.so.0"}
    monkeypatch.setattr(screen, "loads", lambda library: library not in gone)
    sentence = refused(capsys, str(plan_file))
    assert "libEGL.so.1" in sentence
    assert {"libegl1", "libglib2.0-0"} <= set(sentence.rstrip(".\n").split())
    assert "libgl1" not in sentence


def test_the_program_is_called_by_the_name_it_was_called_by(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(sys, "argv", ["/usr/bin/grow-space-light-planner"])
    assert "'grow-space-light-planner --help'" in refused(capsys, "--cells")
    assert "'grow-space-light-planner estimate --help'" in refused(capsys, "estimate")
    monkeypatch.setattr(sys, "argv", ["somewhere/planner/__main__.py"])
    assert "'python -m planner --help'" in refused(capsys, "--cells")


@pytest.mark.parametrize(
    ("file", "kind", "door"),
    [
        ("tables/places_cm.csv", "table of readings", "page Survey"),
        ("tables/workbook.xlsx", "table of readings", "page Survey"),
        ("lamp_files/lm63-2019.ies", "lamp file", "planner lamp "),
        ("lamp_files/eulumdat-isym1.ldt", "lamp file", "planner lamp "),
    ],
)
@pytest.mark.parametrize("command", [("check",), ("estimate",), ("board", "--out", "board.pdf")])
def test_a_table_or_lamp_file_in_place_of_a_plan_is_shown_the_right_door(
    capsys: pytest.CaptureFixture[str], command: tuple[str, ...], file: str, kind: str, door: str
) -> None:
    path = str(ROOT / "tests" / "data" / file)
    sentence = refused(capsys, *command, path)
    assert sentence.startswith(f"'{path}' is a {kind}, not a plan; ")
    assert door in sentence
    assert "JSON" not in sentence


def test_a_missing_module_of_our_own_is_not_glossed_over(
    monkeypatch: pytest.MonkeyPatch, plan_file: Path
) -> None:
    def run_window(_path: Path | None) -> int:
        raise ImportError("cannot import name 'x' from 'planner'")

    monkeypatch.setattr(run, "run_window", run_window)
    with pytest.raises(ImportError):
        command_line.main([str(plan_file)])


def test_checking_loads_neither_qt_nor_numpy(plan_file: Path) -> None:
    code = (
        "import sys\n"
        "import planner.__main__\n"
        "assert not [m for m in sys.modules if m.startswith(('PySide6', 'numpy', 'pydantic'))]\n"
        f"assert planner.__main__.main(['check', {str(plan_file)!r}]) == 0\n"
        "print(sorted(m for m in sys.modules if m.split('.')[0] in "
        "('PySide6', 'shiboken6', 'numpy', 'scipy', 'pyqtgraph')))\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, cwd=ROOT, check=True
    )
    assert done.stdout.splitlines()[-1] == "[]"


def test_estimating_without_a_picture_loads_no_qt(plan_file: Path) -> None:
    code = (
        "import sys\n"
        "from planner.command_line import main\n"
        f"assert main(['estimate', {str(plan_file)!r}, '--quality', 'preview']) == 0\n"
        "print([m for m in sys.modules if m.split('.')[0] in ('PySide6', 'pyqtgraph')])\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, cwd=ROOT, check=True
    )
    assert done.stdout.splitlines()[-1] == "[]"


def test_a_reader_that_stops_early_is_no_error() -> None:
    done = subprocess.run(
        f"'{sys.executable}' -m planner schema | head -c 20",
        shell=True, capture_output=True, text=True, cwd=ROOT, check=False,
    )  # fmt: skip
    assert done.stdout.startswith("{")
    assert done.stderr == ""


def test_a_terminal_without_micro_signs_still_gets_its_figures() -> None:
    done = program("check", "demo", PYTHONIOENCODING="ascii", LC_ALL="C")
    assert (done.returncode, done.stderr) == (0, "")


# -- details, in this process -------------------------------------------------------------


def test_checking_a_good_plan(plan_file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert command_line.main(["check", str(plan_file)]) == 0
    out, err = capsys.readouterr()
    assert "is a valid plan: Invented seedling cabinet, 1 lamp, 4 walls, 0.30 m²." in out
    assert err == ""


def test_checking_prints_what_deserves_a_second_thought(
    capsys: pytest.CaptureFixture[str],
) -> None:
    from planner.plan.checks import findings

    assert command_line.main(["check", "demo"]) == 0
    out = capsys.readouterr().out
    found = findings(demo_plan())
    assert found
    for finding in found:
        assert finding.sentence in out


def test_checking_a_bad_plan(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "bad.plan.json"
    path.write_text('{"format": 1, "name": "x"}')
    assert "space: is missing" in refused(capsys, "check", str(path))


def test_json_on_standard_output_is_nothing_but_json(
    plan_file: Path, capsys: pytest.CaptureFixture[str], quick_light: list[Any]
) -> None:
    assert command_line.main(["estimate", str(plan_file), "--json", "-"]) == 0
    whole = json.loads(capsys.readouterr().out)
    assert whole["plan_name"] == "Invented seedling cabinet"
    assert quick_light[0].cells == (24, 24)
    assert not any(math.isnan(v) for row in whole["map"]["ppfd"] for v in row if v is not None)


def test_csv_on_standard_output_while_json_goes_to_a_file(
    plan_file: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], quick_light: list[Any]
) -> None:
    out_file = tmp_path / "light.json"
    given = ["estimate", str(plan_file), "--cells", "4x3", "--csv", "-", "--json", str(out_file)]
    assert command_line.main(given) == 0
    out, err = capsys.readouterr()
    assert len(out.splitlines()) == 1 + 4 * 3
    assert str(out_file) in err
    assert json.loads(out_file.read_text(encoding="utf-8"))["cells"] == [4, 3]


def test_the_summary_has_sentence_figures_and_balance(
    plan_file: Path, capsys: pytest.CaptureFixture[str], quick_light: list[Any]
) -> None:
    assert command_line.main(["estimate", str(plan_file), "--quality", "fine", "--seed", "9"]) == 0
    out = capsys.readouterr().out
    assert "Mean 212, lowest corner 61 % of it; 14 h give 10.7 mol a day" in out
    assert "Power per area  133 W m⁻²" in out
    assert "Wall 1: White board  40 %" in out
    assert "by −0.012 %" in out
    assert (str(quick_light[0].quality), quick_light[0].seed) == ("fine", 9)


@pytest.mark.parametrize(
    ("text", "cells"), [("24x24", (24, 24)), ("30X20", (30, 20)), ("12", (12, 12)), ("8×9", (8, 9))]
)
def test_map_sizes(
    plan_file: Path, text: str, cells: tuple[int, int], quick_light: list[Any]
) -> None:
    assert command_line.main(["estimate", str(plan_file), "--cells", text]) == 0
    assert quick_light[0].cells == cells


@pytest.mark.parametrize("text", ["", "x", "24x", "1x24", "24x201", "-3x4", "2.5x3", "24x24x24"])
def test_map_sizes_that_are_none(
    text: str, plan_file: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    sentence = refused(capsys, "estimate", str(plan_file), f"--cells={text}")
    assert "is not a map size; write columns x rows from 2 to 200, like 24x24" in sentence


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (("estimate",), "PLAN"),
        (("estimate", "demo", "--quality", "best"), "'preview', 'default', 'fine'"),
        (("estimate", "demo", "--seed", "-1"), "--seed"),
        (("estimate", "demo", "--seed", "many"), "'many' is not a seed"),
        (("estimate", "demo", "--json", "-", "--csv", "-"), "Only one of --json and --csv"),
        (("estimate", "demo", "--picture", "-"), "name a file like map.png"),
        (("estimate", "demo", "--bogus"), "--bogus"),
        (("estimate", "nowhere.plan.json"), "there is no such file"),
        (("check",), "PLAN"),
        (("check", "nowhere/a.plan.json"), "the folder 'nowhere' does not exist"),
        (("check", "x" * 300), "name is too long"),
        (("check", "a\0b"), "characters no file can have"),
        (("demo",), "--out"),
        (("--bogus",), "There is no option '--bogus'"),
        (("estmate",), "neither a plan file nor a command 'estmate'"),
        (("x" * 300,), "neither a plan file nor a command"),
    ],
)
def test_what_is_mistyped_gets_one_sentence(
    arguments: tuple[str, ...], words: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert words in refused(capsys, *arguments)


def test_outputs_are_checked_before_anything_is_computed(
    plan_file: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], quick_light: list[Any]
) -> None:
    missing = str(tmp_path / "gone" / "light.json")
    for option in ("--json", "--csv", "--picture"):
        assert "there is no folder" in refused(capsys, "estimate", str(plan_file), option, missing)
        sentence = refused(capsys, "estimate", str(plan_file), option, str(tmp_path))
        assert "is a folder; name a file in it" in sentence
    assert quick_light == []


def test_an_output_that_may_not_be_written(
    plan_file: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], quick_light: list[Any]
) -> None:
    locked = tmp_path / "locked.csv"
    locked.write_text("kept")
    locked.chmod(0o444)
    assert command_line.main(["estimate", str(plan_file), "--csv", str(locked)]) == 2
    err = capsys.readouterr().err
    assert "cannot be written: the file is read-only." in err
    assert locked.read_text() == "kept"


def test_a_demo_folder_that_is_a_file(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "file").write_text("")
    assert "cannot be made" in refused(capsys, "demo", "--out", str(tmp_path / "file"))


def test_the_schema_goes_where_it_is_asked(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = tmp_path / "plan.schema.json"
    assert command_line.main(["schema", "--out", str(out)]) == 0
    assert str(out) in capsys.readouterr().out
    assert out.read_text(encoding="utf-8") == command_line.schema_text()
    assert command_line.main(["schema"]) == 0
    assert capsys.readouterr().out == command_line.schema_text()


def test_the_version(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as left:
        command_line.main(["--version"])
    assert left.value.code == 0
    assert capsys.readouterr().out == f"Grow space light planner {planner.__version__}\n"


@pytest.mark.parametrize("words", [[], ["open"]])
def test_without_a_plan_the_window_opens_by_itself(
    words: list[str], opened: list[Path | None]
) -> None:
    assert command_line.main(words) == 0
    assert opened == [None]


@pytest.mark.parametrize("words", [[], ["open"]])
def test_a_plan_on_the_command_line_opens_in_the_window(
    words: list[str], plan_file: Path, opened: list[Path | None]
) -> None:
    assert command_line.main([*words, str(plan_file)]) == 0
    assert opened == [plan_file]


def test_a_plan_named_like_a_command_can_still_be_opened(
    tmp_path: Path, opened: list[Path | None], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    save_plan(changed(sample_plan(), name="Named like a command"), Path("check"))
    assert command_line.main(["open", "check"]) == 0
    assert opened == [Path("check")]


def test_the_demo_is_opened_by_its_name(opened: list[Path | None]) -> None:
    assert command_line.main(["open", "demo"]) == 0
    assert opened == [Path("the demo")]


def test_a_plan_file_called_demo_comes_before_the_demo(
    tmp_path: Path, opened: list[Path | None], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    Path("demo").mkdir()  # a folder of that name is no plan
    assert command_line.main(["open", "demo"]) == 0
    assert opened == [Path("the demo")]
    opened.clear()
    Path("demo").rmdir()
    Path("demo").write_text("{}")
    assert command_line.main(["open", "demo"]) == 0
    assert opened == [Path("demo")]


def test_an_output_may_not_take_the_place_of_the_plan(
    plan_file: Path, capsys: pytest.CaptureFixture[str], quick_light: list[Any]
) -> None:
    before = plan_file.read_bytes()
    for option in ("--json", "--csv", "--picture"):
        sentence = refused(capsys, "estimate", str(plan_file), option, str(plan_file))
        assert "is the plan itself" in sentence
    assert plan_file.read_bytes() == before
    assert quick_light == []


def test_two_outputs_need_two_files(
    plan_file: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], quick_light: list[Any]
) -> None:
    (tmp_path / "inner").mkdir()
    one, same = str(tmp_path / "out"), str(tmp_path / "inner" / ".." / "out")
    sentence = refused(capsys, "estimate", str(plan_file), "--json", one, "--csv", same)
    assert "is named for two outputs" in sentence
    assert quick_light == []


@pytest.mark.skipif(os.name != "posix", reason="pipes and links of POSIX")
def test_a_pipe_or_a_circle_of_links_is_not_replaced(
    plan_file: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], quick_light: list[Any]
) -> None:
    pipe, circle = tmp_path / "pipe", tmp_path / "circle"
    os.mkfifo(pipe)
    circle.symlink_to(circle)
    assert command_line.main(["estimate", str(plan_file), "--csv", str(pipe)]) == 2
    assert "cannot be written: it is not a regular file." in capsys.readouterr().err
    assert pipe.is_fifo()
    assert command_line.main(["estimate", str(plan_file), "--csv", str(circle)]) == 2
    assert "cannot be written" in capsys.readouterr().err
    assert circle.is_symlink()


def test_a_demo_folder_without_a_name(capsys: pytest.CaptureFixture[str]) -> None:
    assert "no folder is named" in refused(capsys, "demo", "--out", "")


def in_a_shell(line: str, **variables: str) -> subprocess.CompletedProcess[str]:
    """A line of sh in which $P stands for the program."""
    return subprocess.run(
        ["sh", "-c", line],
        capture_output=True,
        encoding="utf-8",
        cwd=ROOT,
        env={**os.environ, "P": f"{sys.executable} -m planner", **variables},
        timeout=60,
        check=False,
    )


@pytest.mark.skipif(not Path("/dev/full").is_char_device(), reason="needs /dev/full")
@pytest.mark.parametrize("words", ["schema", "check demo"])
def test_a_full_disk_behind_standard_output_is_said(words: str) -> None:
    done = in_a_shell(f"$P {words} > /dev/full")
    assert done.returncode == 2
    assert done.stderr == "The system refuses the answer: No space left on device.\n"


@pytest.mark.skipif(os.name != "posix", reason="needs sh")
def test_closed_standard_output_is_said() -> None:
    done = in_a_shell("$P schema >&-")
    assert done.returncode == 2
    assert done.stderr == "Standard output is closed; name a file instead of '-'.\n"


@pytest.mark.skipif(os.name != "posix", reason="needs sh")
def test_data_on_standard_output_is_utf8_whatever_the_terminal() -> None:
    variables = {"LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"}
    done = in_a_shell("$P schema", **variables)
    assert done.stdout == command_line.schema_text()
