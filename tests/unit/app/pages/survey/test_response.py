"""A meter's cosine response as people write it, with a decimal point or a comma."""

from __future__ import annotations

import pytest

from planner import language
from planner.app.pages.survey.record_panel import _parsed_response, _response_text
from planner.plan.survey import Meter

ANGLES, RELATIVE = (0.0, 60.0, 80.5), (1.0, 0.97, 0.85)


@pytest.mark.parametrize(
    "text",
    [
        "0: 1, 60: 0.97, 80.5: 0.85",
        "0: 1; 60: 0,97; 80,5: 0,85",
        "0:1,60:0.97,80.5:0.85",
        "0°: 1, 60°: 0,97, 80,5°: ,85",
    ],
)
def test_points_and_commas_are_read(text: str) -> None:
    assert _parsed_response(text) == (ANGLES, RELATIVE)


@pytest.mark.parametrize("text", ["0", "0: 1 60", "0: one", "0; 1"])
def test_what_is_no_pair_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match="0"):
        _parsed_response(text)


@pytest.mark.parametrize("spoken", ["en", "de"])
def test_what_is_shown_can_be_read_back(spoken: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(language, "_spoken", spoken)
    shown = _response_text(Meter(response_angles_deg=ANGLES, response_relative=RELATIVE))
    assert ("0,97" if spoken == "de" else "0.97") in shown
    assert _parsed_response(shown) == (ANGLES, RELATIVE)
