"""Work beside the window's thread is done at once in these tests."""

from __future__ import annotations

import pytest


@pytest.fixture(autouse=True)
def at_once(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PLANNER_SYNCHRONOUS", "1")
