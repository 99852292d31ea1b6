"""Rules of the house that no linter knows."""

from __future__ import annotations

import ast
import re
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
LONGEST_FILE = 500

AT_THE_TOP = {
    *("README.md", "DEVELOPERS.md", "LICENSE", "pyproject.toml"),
    *("planner", "tests", "resources", "packaging"),
}
MADE_BY_RUNNING = {"build", "dist", "htmlcov", "planner-demo", "__pycache__"}

TEXT_SUFFIXES = {".cfg", ".csv", ".desktop", ".html", ".ini", ".json", ".md", ".py", ".sh"}
TEXT_SUFFIXES |= {".svg", ".toml", ".ts", ".txt", ".xml", ".yml", ".yaml", ".ies", ".ldt", ""}

# Put together here so that this file does not hold what it looks for.
MACHINE_PATHS = [f"/{first}/" for first in ("wo" + "rk", "ho" + "me", "ro" + "ot", "Us" + "ers")]
MACHINE_PATHS += ["/tm" + "p/dev", "C:" + "\\Us" + "ers"]
FORBIDDEN = [
    "tran" + "script",
    "see" + "d document",
    r"sub-?ag" + "ents?",
    "language" + " model",
    "chat" + "bot",
    r"iss" + r"ue #?\d",
    "py" + r"pi\.org",
    "python" + "hosted",
]


def texts() -> Iterator[tuple[str, str]]:
    """Every text file of the source, by its path from the top."""
    for path in sorted(ROOT.rglob("*")):
        relative = path.relative_to(ROOT)
        first = relative.parts[0]
        hidden = any(part.startswith(".") and part != ".ci" for part in relative.parts[:-1])
        if hidden or first in MADE_BY_RUNNING or "__pycache__" in relative.parts:
            continue
        if path.is_file() and path.suffix in TEXT_SUFFIXES:
            yield str(relative), path.read_text("utf-8")


def modules(folder: str) -> Iterator[Path]:
    return (ROOT / folder).rglob("*.py")


def test_no_module_is_longer_than_one_sitting() -> None:
    lengths = {
        str(path.relative_to(ROOT)): len(path.read_text("utf-8").splitlines())
        for path in modules("planner")
    }
    assert lengths
    too_long = {name: length for name, length in lengths.items() if length > LONGEST_FILE}
    assert too_long == {}


def test_no_module_is_named_for_nothing() -> None:
    empty_words = {"utils", "util", "helpers", "helper", "manager", "managers", "base", "misc"}
    found = [
        str(path.relative_to(ROOT))
        for path in modules("planner")
        if {path.stem, path.parent.name} & empty_words
    ]
    assert found == []


def test_the_top_level_holds_what_it_should_and_nothing_else() -> None:
    there = {path.name for path in ROOT.iterdir() if not path.name.startswith(".")}
    there = {name for name in there if not name.endswith(".egg-info")}
    assert there - MADE_BY_RUNNING == AT_THE_TOP


@pytest.mark.parametrize("page", ["README.md", "DEVELOPERS.md"])
def test_what_the_pages_point_at_is_there(page: str) -> None:
    text = (ROOT / page).read_text("utf-8")
    linked = re.findall(r"\]\(([^):#]+)\)", text)
    named = re.findall(r"(?<![\w/.])((?:planner|packaging|resources)/[\w./-]*\w)", text)
    made_when_packed = {"planner/_resources"}
    examples = {name for name in named if "plan-N" in name}
    paths = {*linked, *named} - made_when_packed - examples
    assert paths
    assert sorted(name for name in paths if not (ROOT / name).exists()) == []


def test_no_lock_file_and_no_address_in_the_constraints() -> None:
    locks = [name for name, _ in texts() if name.endswith(".lock") or "-lock." in name]
    assert locks == []
    lines = (ROOT / "packaging" / "constraints.txt").read_text("utf-8").splitlines()
    pins = [line for line in lines if line and not line.startswith("#")]
    assert pins
    assert [line for line in pins if not re.fullmatch(r"[\w.-]+==[\w.+!]+", line)] == []


def test_no_path_of_somebodys_machine() -> None:
    found = [
        f"{name}: {path}"
        for name, text in texts()
        for path in MACHINE_PATHS
        # a word or an address before it makes it part of something longer
        if re.search(rf"(?<![\w.~:*/-]){re.escape(path)}", text)
    ]
    assert found == []


@pytest.mark.parametrize("word", FORBIDDEN)
def test_no_word_that_does_not_belong_here(word: str) -> None:
    pattern = re.compile(rf"\b{word}", re.IGNORECASE)
    found = [f"{name}: {hit[0]}" for name, text in texts() for hit in [pattern.search(text)] if hit]
    assert found == []


@pytest.mark.parametrize(
    ("statement", "absent"),
    [
        ("import planner.__main__", ("PySide6", "pyqtgraph", "numpy", "scipy", "pydantic")),
        ("import planner.plan.checks, planner.files.store", ("PySide6", "numpy", "scipy")),
        ("import planner.estimate.evaluate", ("PySide6", "pyqtgraph", "scipy", "contourpy")),
        # the window is shown before the light core is read
        ("import planner.app.run, planner.app.main_window", ("scipy", "planner.estimate.evaluate")),
    ],
)
def test_importing_loads_nothing_heavy(statement: str, absent: tuple[str, ...]) -> None:
    program = f"import sys\n{statement}\nprint(*(n for n in {absent!r} if n in sys.modules))"
    done = subprocess.run(
        [sys.executable, "-c", program],
        cwd=ROOT,
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    assert done.stdout.split() == []


def test_the_light_core_imports_numpy_and_itself_only() -> None:
    # contourpy draws the contours of a CellMap, imported late; it knows arrays only
    allowed = {"numpy", "contourpy", "planner", *sys.stdlib_module_names}
    strange = []
    for path in modules("planner/light"):
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            names = []
            if isinstance(node, ast.Import):
                names = [alias.name for alias in node.names]
            elif isinstance(node, ast.ImportFrom):
                names = [node.module or ""]
            for name in names:
                outside = name.split(".")[0] not in allowed
                other_layer = name.startswith("planner.") and not name.startswith(
                    ("planner.light", "planner.units")
                )
                if outside or other_layer:
                    strange.append(f"{path.name}: {name}")
    assert strange == []


def said(path: Path) -> Iterator[str]:
    """Sentences of a module that people may read: texts with a space that are no docstring."""
    tree = ast.parse(path.read_text("utf-8"))
    alone = {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
    for node in ast.walk(tree):
        if not isinstance(node, ast.Constant) or id(node) in alone:
            continue
        if isinstance(node.value, str) and " " in node.value:
            yield node.value


def test_people_read_option_where_the_file_says_variant() -> None:
    """The tab, the tables and the reports say 'option'; a second word looked like a second thing.

    But for one description of a field, which stands in the schema of the file beside its name.
    """
    found = {
        text
        for path in modules("planner")
        for text in said(path)
        if re.search(r"\bvariants?\b", text, re.IGNORECASE)
    }
    pages = [ROOT / "README.md", *(ROOT / "resources/help").glob("*.md")]
    found |= {page.name for page in pages if "variant" in page.read_text("utf-8").casefold()}
    assert {text for text in found if not text.startswith("Key of the variant")} == set()


def test_the_units_of_light_are_written_once() -> None:
    """What people read takes the units of ``units``; another spelling looked like another unit.

    Headings of tables and lines of data sheets are typed by people, in any letters: they are
    read, not said.
    """
    # A lamp file is written in plain letters: its 'umol/s' is no other spelling.
    wrong = re.compile(
        r"[µμu]mol ?(m⁻² s⁻¹|/ ?\(?m²|/ ?\(?m2)|[µμ]mol ?([sJ]⁻¹|/ ?[sJ]\b)|\bmol ?(m⁻²|/ ?m[²2])",
        re.IGNORECASE,
    )
    read = {"units.py", "table_headings.py", "data_sheet.py", "spectrum_csv.py"}
    found = {
        f"{path.name}: {text}"
        for path in modules("planner")
        if path.name not in read
        for text in said(path)
        if wrong.search(text)
    }
    assert found == set()
