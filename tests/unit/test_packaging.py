"""What is handed on beside the program agrees with the program."""

from __future__ import annotations

import importlib.util
import json
import re
import shutil
import subprocess
import sys
import tomllib
from pathlib import Path
from types import ModuleType
from typing import Any
from xml.etree import ElementTree as ET

import pytest

import planner
from planner.app import screen
from planner.catalogue.library import demo_plan
from planner.files.store import plan_to_bytes

ROOT = Path(__file__).parents[2]
LINUX = ROOT / "packaging" / "linux"
NAME = "grow-space-light-planner"
MIME = "{http://www.freedesktop.org/standards/shared-mime-info}"
NEVER_USED = ("scipy.signal", "PySide6.QtNetwork", "PySide6.QtQml")


def test_the_desktop_opens_the_kind_of_file_that_is_declared() -> None:
    kind = ET.parse(LINUX / f"{NAME}.xml").find(f"{MIME}mime-type")
    assert kind is not None
    entry = (LINUX / f"{NAME}.desktop").read_text("utf-8")
    assert f"MimeType={kind.get('type')};\n" in entry
    about = ET.parse(LINUX / f"{NAME}.metainfo.xml").getroot()
    assert about.findtext("provides/mediatype") == kind.get("type")
    assert about.findtext("launchable") == f"{NAME}.desktop"


def test_the_magic_knows_what_the_program_writes_and_no_other_file() -> None:
    """The rule of shared-mime-info, applied by hand: a text in a range of offsets."""

    def fits(data: bytes) -> bool:
        rules = list(ET.parse(LINUX / f"{NAME}.xml").iter(f"{MIME}match"))
        assert len(rules) == 2
        return all(_found(rule, data) for rule in rules)

    assert fits(plan_to_bytes(demo_plan()))
    others = [*ROOT.glob("resources/*/*.json"), *ROOT.glob("tests/data/*/*.json")]
    assert len(others) > 5
    # Samples of formats 2 and 3 are kept as the program of their time wrote them: they are, too.
    kept = {"format-2.plan.json", "format-3.plan.json"}
    ours = [one for one in others if one.parent.name == "demo" or one.name in kept]
    assert [path.name for path in others if fits(path.read_bytes())] == [path.name for path in ours]


def _found(rule: ET.Element, data: bytes) -> bool:
    first, _, last = str(rule.get("offset")).partition(":")
    value = str(rule.get("value")).replace("\\n", "\n").encode()
    starts = range(int(first), int(last or first) + 1)
    return any(data.startswith(value, at) for at in starts)


def test_the_newest_release_is_this_version() -> None:
    release = ET.parse(LINUX / f"{NAME}.metainfo.xml").find("releases/release")
    assert release is not None
    assert release.get("version") == planner.__version__
    heading = re.search(
        r"^## (\S+?),", (ROOT / "resources/docs/changelog.md").read_text("utf-8"), re.M
    )
    assert heading is not None
    assert heading[1] == planner.__version__


def test_what_the_wheel_installs_for_the_desktop_is_there() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))
    shared = project["tool"]["hatch"]["build"]["targets"]["wheel"]["shared-data"]
    assert [source for source in shared if not (ROOT / source).is_file()] == []
    places = set(shared.values())
    assert f"share/applications/{NAME}.desktop" in places
    assert f"share/icons/hicolor/scalable/apps/{NAME}.svg" in places
    assert f"share/mime/packages/{NAME}.xml" in places


def flatpak() -> dict[str, Any]:
    made: dict[str, Any] = json.loads((LINUX / "flatpak.json").read_text("utf-8"))
    return made


def test_the_flatpak_is_made_of_what_is_there() -> None:
    (module,) = flatpak()["modules"]
    paths = [source["path"] for source in module["sources"]]
    assert [p for p in paths if p != "../../dist" and not (LINUX / p).is_file()] == []
    given = {Path(path).name for path in paths} | {NAME}
    named = set(re.findall(r"(?:-Dm644|cp -a|sed \S+) (\S+)", " ".join(module["build-commands"])))
    assert named
    assert named <= given


def test_what_a_flatpak_shows_the_desktop_bears_its_name() -> None:
    """Only files called by the id are exported (Flatpak's documentation, 'Conventions')."""
    manifest = flatpak()
    whole = manifest["id"]
    metainfo = ET.parse(LINUX / f"{NAME}.metainfo.xml")
    assert metainfo.findtext("id") == whole
    made = " ".join(manifest["modules"][0]["build-commands"])
    assert f" > /app/share/mime/packages/{whole}.xml" in made
    assert f" /app/share/metainfo/{whole}.metainfo.xml" in made
    assert manifest["rename-desktop-file"] == f"{NAME}.desktop"
    assert manifest["rename-icon"] == NAME
    assert manifest["command"] == NAME


def test_the_kind_of_file_has_the_flatpaks_icon(tmp_path: Path) -> None:
    (command,) = [c for c in flatpak()["modules"][0]["build-commands"] if c.startswith("sed ")]
    line = command.partition(" > ")[0]
    done = subprocess.run(["sh", "-c", line], cwd=LINUX, capture_output=True, text=True, check=True)
    kind = ET.fromstring(done.stdout)[0]
    icon = next(part for part in kind if part.tag.endswith("}icon"))
    assert icon.get("name") == flatpak()["id"]
    written = ET.parse(LINUX / f"{NAME}.xml").getroot()[0]
    assert kind.get("type") == written.get("type")


def test_a_flatpak_may_speak_to_the_tray_and_to_nothing_else_of_the_session() -> None:
    asked = [one for one in flatpak()["finish-args"] if one.startswith(("--talk", "--own"))]
    assert asked == [
        "--talk-name=org.freedesktop.Notifications",
        "--talk-name=org.kde.StatusNotifierWatcher",
    ]
    assert not any("network" in one for one in flatpak()["finish-args"])


@pytest.mark.may_skip("the builder is not on every machine")
def test_the_builder_reads_the_flatpak() -> None:
    if shutil.which("flatpak-builder") is None:
        pytest.skip("flatpak-builder is not installed")
    command = ("flatpak-builder", "--show-manifest", "flatpak.json")
    done = subprocess.run(command, cwd=LINUX, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    read = json.loads(done.stdout)
    # What the builder does not know it leaves out without a word.
    assert set(read) == set(flatpak())


@pytest.mark.parametrize("system", ["linux", "windows", "macos"])
def test_every_script_a_build_calls_is_there(system: str) -> None:
    text = (ROOT / "packaging" / "ci" / f"{system}.yml").read_text("utf-8")
    named = {name.replace("\\", "/") for name in re.findall(r"packaging[/\\][\w./\\-]+\w", text)}
    assert len(named) >= 3
    made = {name for name in named if name.startswith("packaging/windows/") and "*" in name}
    assert sorted(name for name in named - made if not (ROOT / name).exists()) == []


@pytest.mark.may_skip("validators of the desktop are not on every machine")
@pytest.mark.parametrize(
    "command",
    [
        ("desktop-file-validate", f"{NAME}.desktop"),
        ("appstreamcli", "validate", "--no-net", f"{NAME}.metainfo.xml"),
    ],
)
def test_the_validators_of_the_desktop_have_nothing_to_say(command: tuple[str, ...]) -> None:
    if shutil.which(command[0]) is None:
        pytest.skip(f"{command[0]} is not installed")
    done = subprocess.run(command, cwd=LINUX, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr


def test_nothing_left_out_of_the_bundle_is_imported() -> None:
    """All modules of the program, and what they import when asked, in one process."""
    code = (
        "import importlib, pkgutil, sys, planner\n"
        "for found in pkgutil.walk_packages(planner.__path__, 'planner.'):\n"
        "    if not found.name.endswith('__main__'):\n"
        "        importlib.import_module(found.name)\n"
        "from scipy.optimize import brentq, lsq_linear, milp, minimize, minimize_scalar\n"
        "from scipy.interpolate import RBFInterpolator\n"
        "from scipy.stats import studentized_range\n"
        "from scipy.special import chdtrc, ndtri\n"
        f"print([name for name in {NEVER_USED} if name in sys.modules])\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == "[]"
    spec = (ROOT / "packaging" / "bundle.spec").read_text("utf-8")
    assert [name for name in NEVER_USED if f'"{name}"' not in spec] == []


def script(name: str) -> ModuleType:
    """A script of the folder packaging, which is no package."""
    spec = importlib.util.spec_from_file_location(name, ROOT / "packaging" / f"{name}.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


@pytest.mark.may_skip("apt is on Debian and Ubuntu")
@pytest.mark.skipif(shutil.which("apt-get") is None, reason="no apt-get here")
def test_who_may_not_install_is_told_one_line_once(monkeypatch: pytest.MonkeyPatch) -> None:
    libraries = script("system_libraries")
    gone = {"libEGL.so.1", "libxcb-cursor.so.0"}
    monkeypatch.setattr(screen, "loads", lambda library: library not in gone)
    monkeypatch.setattr(libraries, "_as_root", lambda: None)
    said: list[str] = []
    venv = ["python3.11-venv"]
    missing = libraries.provide(window=True, say=said.append, also=venv)
    assert len(said) == 1
    line = said[0].splitlines()[-1].strip()
    assert line.startswith("apt-get install --no-install-recommends ")
    assert {"libegl1", "libxcb-cursor0", *venv} <= set(line.split())
    # Without the library of the window alone the program still computes and paints.
    assert missing == ["libegl1", *venv]
    gone.clear()
    said.clear()
    monkeypatch.setattr(screen, "_has_a_font", lambda: True)
    assert libraries.provide(window=True, say=said.append) == []
    assert said == []
