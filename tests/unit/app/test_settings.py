"""Settings come back as they were; what a disk did to them never stops the program."""

from __future__ import annotations

import json
import os
from pathlib import Path
from typing import Any

import pytest
from pydantic import ValidationError

from planner.app.display import DisplayState
from planner.app.settings import Settings, Values
from planner.app.theme import Theme
from planner.folders import settings_folder
from planner.units import LengthUnit

SAMPLES: dict[str, Any] = {
    "unit": LengthUnit.INCH,
    "colour_map": "viridis",
    "contours": False,
    "band_wash": True,
    "gains": True,
    "ladder": True,
    "stretched": True,
    "shows": "blue_share",
    "cells": 32,
    "theme": Theme.DARK,
    "language": "de",
    "window_rect": (-10, 20, 640, 480),
    "maximised": True,
    "recent": (
        Path("/tmp/a b, c.json"), Path("/tmp/ä;=%.json"), Path("/tmp/two\nlines.json"),
        Path(os.fsdecode(b"/tmp/not utf-8 \xff\xfe.json")),
    ),
    "last_plan": Path(os.fsdecode(b"/tmp/\xe4.json")),
    "last_folder": Path("/tmp"),
    "lamp_spectra": {"bar-60": "white-led-warm", "own": "red-led"},
    "used_last": ("white-board", "led-bar-60-20w"),
    "started_before": True,
    "notices": False,
    "version_seen": "0.0.9",
    "tour_seen": True,
}  # fmt: skip

INI = """[view]
unit=in
colour_map=inferno
contours=false
cells=12
theme=dark

[window]
rect="10,20,800,600"
maximised=true

[files]
recent=/tmp/a.plan.json\\n/tmp/b c.plan.json
last_plan=/tmp/a.plan.json

[lamps]
spectra=bar-60=white-led-warm\\nown=red-led

[start]
before=true
"""


def test_every_value_has_a_sample() -> None:
    assert set(SAMPLES) == set(Values.model_fields)


@pytest.mark.parametrize("name", SAMPLES)
def test_a_value_comes_back_with_its_type_in_the_next_run(name: str, tmp_path: Path) -> None:
    assert getattr(Values(), name) != SAMPLES[name]
    Settings(tmp_path).keep(**{name: SAMPLES[name]})
    again = getattr(Settings(tmp_path).values, name)
    assert again == SAMPLES[name]
    assert type(again) is type(SAMPLES[name])


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("unit", "furlong"),
        ("cells", "many"),
        ("cells", 100_000),
        ("contours", "perhaps"),
        ("colour_map", "rainbow"),
        ("shows", "cv"),
        ("theme", ""),
        ("window_rect", [1, 2, 3]),
        ("window_rect", [0, 0, 3_000_000_000, 300]),
        ("window_rect", [-3_000_000_000, 0, 800, 600]),
        ("window_rect", [0, 0, 1, 1]),
        ("recent", ["", 3]),
        ("last_plan", ""),
        ("lamp_spectra", [1]),
        # half a letter, as no file of this program holds it
        ("unit", "\ud800"),
        ("theme", "\udfff"),
    ],
)
def test_an_unfit_value_falls_back_alone(tmp_path: Path, name: str, value: Any) -> None:
    other = "maximised" if name != "maximised" else "gains"
    (tmp_path / "settings.json").write_text(json.dumps({name: value, other: True, "odd": 1}))
    settings = Settings(tmp_path)
    assert getattr(settings.values, name) == getattr(Values(), name)
    assert getattr(settings.values, other) is True
    assert settings.problem == ""


@pytest.mark.parametrize(
    "data",
    [b"", b"\x00\xff\x00 [[[", b"[1, 2]", b'{"unit": "in"', b"[" * 100_000, b"\xff" * 2_000_000],
    ids=["empty", "binary", "list", "torn", "deep", "large"],
)
def test_a_damaged_file_is_set_aside_and_said(data: bytes, tmp_path: Path) -> None:
    file = tmp_path / "settings.json"
    file.write_bytes(data)
    settings = Settings(tmp_path)
    assert settings.values == Values()
    assert "set aside" in settings.problem
    assert (tmp_path / "settings-damaged.json").read_bytes() == data
    settings.keep(cells=12)
    assert Settings(tmp_path).values.cells == 12
    assert Settings(tmp_path).problem == ""


def test_a_folder_in_its_place_and_a_folder_that_is_none_stop_nothing(tmp_path: Path) -> None:
    (tmp_path / "settings.json").mkdir()
    settings = Settings(tmp_path)
    settings.keep(cells=12)
    assert settings.values.cells == 12
    (tmp_path / "file").write_text("")
    Settings(tmp_path / "file" / "below").keep(cells=12)


def test_values_of_the_earlier_form_are_read_once(tmp_path: Path) -> None:
    (tmp_path / "settings.ini").write_text(INI)
    found = Settings(tmp_path)
    assert found.values == Values(
        unit=LengthUnit.INCH, colour_map="inferno", contours=False, cells=12, theme=Theme.DARK,
        window_rect=(10, 20, 800, 600), maximised=True,
        recent=(Path("/tmp/a.plan.json"), Path("/tmp/b c.plan.json")),
        last_plan=Path("/tmp/a.plan.json"),
        lamp_spectra={"bar-60": "white-led-warm", "own": "red-led"}, started_before=True,
    )  # fmt: skip
    found.keep(cells=16)
    (tmp_path / "settings.ini").write_text("[view]\ncells=20\n")
    assert Settings(tmp_path).values.cells == 16


def test_a_damaged_file_of_the_earlier_form_gives_defaults(tmp_path: Path) -> None:
    (tmp_path / "settings.ini").write_bytes(b"\x00\xff\x00 not an ini [[[")
    assert Settings(tmp_path).values == Values()


def test_two_windows_do_not_undo_each_other(tmp_path: Path) -> None:
    one, other = Settings(tmp_path), Settings(tmp_path)
    one.keep(cells=12)
    other.keep(gains=True)
    assert (Settings(tmp_path).values.cells, Settings(tmp_path).values.gains) == (12, True)


def test_an_unfit_value_cannot_be_kept(tmp_path: Path) -> None:
    with pytest.raises(ValidationError):
        Settings(tmp_path).keep(cells=1000)


def test_the_variable_says_where_the_settings_lie(own_folders: Path) -> None:
    assert settings_folder() == own_folders / "settings"
    Settings.of_user().keep(cells=12)
    assert (own_folders / "settings" / "settings.json").exists()


def test_settings_in_memory_write_no_file(own_folders: Path) -> None:
    settings = Settings.in_memory()
    settings.keep(cells=12)
    assert settings.values.cells == 12
    assert list((own_folders / "settings").iterdir()) == []


def test_the_display_state_is_kept_whole(tmp_path: Path) -> None:
    state = DisplayState(LengthUnit.INCH, "inferno", contours=False, band_wash=True, cells=16)
    settings = Settings(tmp_path)
    settings.keep(**state.__dict__)
    assert settings.display_state == state
    assert Settings(tmp_path).display_state == state


def test_a_folder_nobody_may_look_into_is_not_there(tmp_path: Path) -> None:
    shut = tmp_path / "shut"
    shut.mkdir()
    settings = Settings.in_memory()
    settings.keep(last_folder=tmp_path)
    assert settings.folder == tmp_path
    settings.keep(last_folder=Path("/tmp/\0"))
    assert settings.folder == Path.home()
