from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from planner.app import settings as keys
from planner.app.display import DisplayState
from planner.app.settings import KEYS, Key, Settings, settings_folder
from planner.app.theme import Theme
from planner.units import LengthUnit

SAMPLES: tuple[tuple[Key[Any], Any], ...] = (
    (keys.UNIT, LengthUnit.INCH),
    (keys.COLOUR_MAP, "viridis"),
    (keys.CONTOURS, False),
    (keys.BAND_WASH, True),
    (keys.GAINS, True),
    (keys.CELLS, 32),
    (keys.THEME, Theme.DARK),
    (keys.WINDOW_RECT, (-10, 20, 640, 480)),
    (keys.MAXIMISED, True),
    (keys.RECENT, (Path("/tmp/a b, c.json"), Path("/tmp/ä;=%.json"))),
    (keys.LAST_PLAN, Path("/tmp/x.json")),
    (keys.LAST_FOLDER, Path("/tmp")),
    (keys.LAMP_SPECTRA, (("bar-60", "white-led-warm"), ("own", "red-led"))),
    (keys.STARTED_BEFORE, True),
)


def test_every_key_has_a_sample_and_a_name_of_its_own() -> None:
    assert [key for key, _ in SAMPLES] == list(KEYS)
    assert len({key.name for key in KEYS}) == len(KEYS)


@pytest.mark.parametrize(("key", "value"), SAMPLES, ids=[key.name for key, _ in SAMPLES])
def test_a_value_comes_back_with_its_type_in_the_next_run(
    key: Key[Any], value: Any, tmp_path: Path
) -> None:
    assert value != key.default
    first = Settings(tmp_path)
    first.set(key, value)
    first.flush()
    again = Settings(tmp_path).get(key)
    assert again == value
    assert type(again) is type(value)


@pytest.mark.parametrize(
    ("name", "text", "key"),
    [
        ("view/unit", "furlong", keys.UNIT),
        ("view/cells", "many", keys.CELLS),
        ("view/cells", "100000", keys.CELLS),
        ("view/contours", "perhaps", keys.CONTOURS),
        ("view/colour_map", "rainbow", keys.COLOUR_MAP),
        ("view/theme", "", keys.THEME),
        ("window/rect", '"1,2,3"', keys.WINDOW_RECT),
        ("window/rect", '"0,0,3000000000,300"', keys.WINDOW_RECT),
        ("window/rect", '"-3000000000,0,800,600"', keys.WINDOW_RECT),
        ("window/rect", '"0,0,1,1"', keys.WINDOW_RECT),
        ("window/rect", "1, 2, 300, 300", keys.WINDOW_RECT),
    ],
)
def test_what_cannot_be_read_falls_back_to_the_default(
    tmp_path: Path, name: str, text: str, key: Key[Any]
) -> None:
    group, entry = name.split("/")
    (tmp_path / "settings.ini").write_text(f"[{group}]\n{entry}={text}\n")
    assert Settings(tmp_path).get(key) == key.default


def test_a_broken_file_gives_all_defaults(tmp_path: Path) -> None:
    (tmp_path / "settings.ini").write_bytes(b"\x00\xff\x00 not an ini [[[")
    settings = Settings(tmp_path)
    assert [settings.get(key) for key in KEYS] == [key.default for key in KEYS]
    assert settings.display_state() == DisplayState()


def test_the_variable_says_where_the_settings_lie(own_folders: Path) -> None:
    assert settings_folder() == own_folders / "settings"
    settings = Settings.of_user()
    settings.set(keys.CELLS, 12)
    settings.flush()
    assert (own_folders / "settings" / "settings.ini").exists()


def test_settings_in_memory_write_no_file(own_folders: Path) -> None:
    settings = Settings.in_memory()
    settings.set(keys.CELLS, 12)
    settings.flush()
    assert settings.get(keys.CELLS) == 12
    assert list((own_folders / "settings").iterdir()) == []


def test_the_display_state_is_kept_whole(tmp_path: Path) -> None:
    state = DisplayState(LengthUnit.INCH, "inferno", contours=False, band_wash=True, cells=16)
    settings = Settings(tmp_path)
    settings.keep_display_state(state)
    assert settings.display_state() == state
