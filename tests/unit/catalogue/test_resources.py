"""Finding the program's data files."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from planner import folders as resources
from planner.folders import resource_path


def test_a_data_file_is_found() -> None:
    assert resource_path("catalogue/linings.json").is_file()
    assert resource_path("catalogue").is_dir()


def test_a_missing_file_is_named_with_the_places_looked_at() -> None:
    with pytest.raises(FileNotFoundError, match=r"catalogue/nothing\.json.*resources"):
        resource_path("catalogue/nothing.json")


def test_a_wheel_keeps_its_data_inside_the_package(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    package = tmp_path / "site-packages" / "planner"
    (package / "_resources").mkdir(parents=True)
    (package / "_resources" / "marker.json").write_text("{}")
    monkeypatch.setattr(resources, "_PACKAGE", package)
    assert resource_path("marker.json") == package / "_resources" / "marker.json"


def test_a_bundle_is_looked_at_first(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    data = tmp_path / "resources" / "catalogue"
    data.mkdir(parents=True)
    (data / "linings.json").write_text("{}")
    monkeypatch.setattr(sys, "_MEIPASS", str(tmp_path), raising=False)
    assert resource_path("catalogue/linings.json") == data / "linings.json"


def test_importing_the_catalogue_brings_neither_qt_nor_numpy() -> None:
    code = (
        "import sys, planner.catalogue.library\n"
        "heavy = {'PySide6', 'numpy', 'scipy', 'pyqtgraph'} & set(sys.modules)\n"
        "sys.exit(', '.join(heavy) or 0)"
    )
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert run.returncode == 0, run.stderr
