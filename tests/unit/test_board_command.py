"""Printing the board from the command line."""

from __future__ import annotations

import errno
from pathlib import Path

import pytest

from planner.catalogue.library import demo_plan
from planner.command_line import main
from planner.files.store import save_plan
from planner.plan.survey import Survey
from planner.plan.survey_edits import add_survey


def test_a_plan_without_surveys_gets_the_standard_grid(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], qapp: object
) -> None:
    out = tmp_path / "board.pdf"
    assert main(["board", "demo", "--out", str(out)]) == 0
    assert out.read_bytes().startswith(b"%PDF")
    assert "EN 12464-1" in capsys.readouterr().out


def test_the_survey_asked_for_is_printed(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], qapp: object
) -> None:
    plan = add_survey(demo_plan(), Survey(key="a", name="Foil", points=((0.1, 0.1), (0.2, 0.1))))
    path = tmp_path / "cabinet.plan.json"
    save_plan(plan, path)
    asked = ["board", str(path), "--out", str(tmp_path / "b.pdf"), "--paper", "letter"]
    assert main([*asked, "--survey", "1"]) == 0
    assert "2 holes of 'Foil'" in capsys.readouterr().out
    assert main([*asked, "--survey", "2"]) == 2
    assert "There is no survey 2: this plan has 1 survey." in capsys.readouterr().err


def test_a_file_that_cannot_be_written_is_said(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], qapp: object
) -> None:
    assert main(["board", "demo", "--out", str(tmp_path / "none" / "b.pdf")]) == 2
    assert capsys.readouterr().err.strip().endswith(".")


def test_a_full_disk_is_said_of_the_file(
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
    qapp: object,
) -> None:
    def full(*_: object) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr("planner.files.disk.write_atomically", full)
    assert main(["board", "demo", "--out", str(tmp_path / "b.pdf")]) == 2
    assert "b.pdf' cannot be written: No space left on device." in capsys.readouterr().err
