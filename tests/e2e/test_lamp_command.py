"""A grower looks at a lamp maker's photometric file, and keeps it."""

from __future__ import annotations

from pathlib import Path

import pytest

from planner.catalogue.lamp_files.reading import read_lamp_file
from planner.catalogue.library import load_catalogue
from planner.command_line import main

SAMPLES = Path(__file__).parents[1] / "data" / "lamp_files"


def sample(suffix: str) -> Path:
    return sorted(SAMPLES.glob(f"*{suffix}"))[0]


@pytest.mark.parametrize("suffix", [".ies", ".ldt"])
def test_file_is_summed_up(suffix: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["lamp", str(sample(suffix))]) == 0
    text = capsys.readouterr().out
    assert "Light in all directions" in text
    assert " lm" in text


def test_file_becomes_an_own_lamp(capsys: pytest.CaptureFixture[str]) -> None:
    file = sample(".ldt")
    asked = ["lamp", str(file), "--save-as", "Lamp of the hallway", "--ppf", "40", "--watts", "20"]
    assert main(asked) == 0
    assert "40 µmol s⁻¹" in capsys.readouterr().out
    kept = next(x for x in load_catalogue().lamps if x.name == "Lamp of the hallway")
    assert kept.ppf == 40
    assert file.name in kept.source


def test_photons_are_asked_for(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["lamp", str(sample(".ies")), "--save-as", "No photons"]) == 2
    assert "--ppf" in capsys.readouterr().err


def test_file_is_written_back(tmp_path: Path) -> None:
    first = read_lamp_file(sample(".ies"))
    out = tmp_path / "back.ies"
    assert main(["lamp", str(sample(".ies")), "--lm63", str(out)]) == 0
    again = read_lamp_file(out)
    assert again.candela.max() == pytest.approx(first.candela.max(), rel=1e-6)


@pytest.mark.parametrize(
    ("content", "expected"), [("IES:LM-63-2019\nTILT=NO\n", "line"), ("hello", "")]
)
def test_broken_file_is_one_sentence(
    content: str, expected: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "broken.ies"
    file.write_text(content)
    assert main(["lamp", str(file)]) == 2
    error = capsys.readouterr().err
    assert expected in error.lower()
    assert "Traceback" not in error
    assert len(error.strip().splitlines()) == 1


def test_unknown_spectrum_names_the_known(capsys: pytest.CaptureFixture[str]) -> None:
    asked = ["lamp", str(sample(".ies")), "--save-as", "X", "--spectrum", "moonlight"]
    assert main(asked) == 2
    assert "known are" in capsys.readouterr().err
