"""A thousand kills of all that is written, and some of the whole window."""

from __future__ import annotations

import os
import subprocess
import sys

import pytest

from tests.reference.kills import KINDS, run

pytestmark = [
    pytest.mark.harness,
    pytest.mark.timeout(3600),
    pytest.mark.may_skip("signals and mounts of Linux"),
    pytest.mark.skipif(sys.platform != "linux", reason="signals and mounts of Linux"),
    pytest.mark.filterwarnings("ignore:.*fork.*:DeprecationWarning"),
]


@pytest.mark.parametrize("name", sorted(KINDS))
def test_what_is_killed_while_it_writes_leaves_all_or_the_state_before(name: str) -> None:
    assert run(name, 150).kills == 150


@pytest.mark.parametrize("name", ["save", "autosave", "survey entry", "import", "export"])
def test_the_same_on_a_disk_that_is_full(name: str) -> None:
    if os.geteuid() != 0:
        pytest.skip("only root may mount a small disk")
    found = run(name, 20, seed=2, full=True)
    assert found.refused > 20


def test_a_window_that_is_killed_loses_two_seconds_at_most() -> None:
    # In a process of its own: this one has an application already.
    done = subprocess.run(
        [sys.executable, "-c", "from tests.reference.kills import run_window; run_window(20)"],
        check=False,
    )
    assert done.returncode == 0
