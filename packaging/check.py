"""Set everything up and pass the tests: style, types, dead code, import contracts, then pytest.

    python3 packaging/check.py [arguments for pytest]

The last line is pytest's own. The exit code is pytest's; when the tests pass, it is 1 if
one of the checks before them failed.
"""

from __future__ import annotations

import sys
from pathlib import Path

import environment

# The scripts here import one another as neighbours, unlike the modules of the package.
SCRIPTS = sorted(f"packaging/{path.name}" for path in Path(__file__).parent.glob("*.py"))
CHECKS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("Style", ("-m", "ruff", "check", "--no-cache", ".")),
    ("Layout", ("-m", "ruff", "format", "--no-cache", "--check", ".")),
    ("Types", ("-m", "mypy", "planner", "tests")),
    (
        "Types of the scripts",
        ("-m", "mypy", "--no-explicit-package-bases", "--follow-imports=silent", *SCRIPTS),
    ),
    ("Dead code", ("-m", "vulture")),
    ("Import contracts", ("-c", "from importlinter.cli import lint_imports_command as c; c()")),
)
HOW_TO_TEST = (
    # One process a core; who has done its own takes from the others' rest.
    *("--numprocesses=auto", "--dist=worksteal"),
    # A test that hangs within Qt hears no signal: where each thread stands is printed, and it
    # has failed.
    *("-o", "faulthandler_timeout=400", "-o", "faulthandler_exit_on_timeout=true"),
)


def main() -> int:
    try:
        environment.use_a_new_enough_python()
        python = environment.prepare(("test", "lint"), window=False)
    except environment.SetupError as problem:
        print(problem, file=sys.stderr)
        return 3
    failed = []
    for title, command in CHECKS:
        environment.say(f"-- {title}")
        if environment.run(python, *command, NO_COLOR="1") != 0:
            failed.append(title)
    environment.say(f"-- Tests{' (failed before: ' + ', '.join(failed) + ')' if failed else ''}")
    tests = ("-X", "faulthandler", "-m", "pytest", "-p", "no:cacheprovider", *HOW_TO_TEST)
    code = environment.run(python, *tests, *sys.argv[1:], QT_QPA_PLATFORM="offscreen")
    return code or int(bool(failed))


if __name__ == "__main__":
    sys.exit(main())
