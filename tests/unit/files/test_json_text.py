"""Reading JSON strictly, with places."""

from __future__ import annotations

import json
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.files.json_text import JsonTextError, parse_json

PLAIN = st.recursive(
    st.none() | st.booleans() | st.integers(-(10**12), 10**12) | st.text()
    | st.floats(allow_nan=False, allow_infinity=False),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(), inner, max_size=4),
    max_leaves=12,
)  # fmt: skip


def read_or_refused(data: bytes) -> None:
    """Anything but ``JsonTextError`` with words is a crash."""
    refusal = "not refused"
    try:
        parse_json(data)
    except JsonTextError as error:
        refusal = str(error)
    assert refusal


@given(PLAIN)
def test_what_python_writes_is_read_back(value: Any) -> None:
    assert parse_json(json.dumps(value).encode()) == value


@given(PLAIN)
def test_a_byte_order_mark_changes_nothing(value: Any) -> None:
    assert parse_json(b"\xef\xbb\xbf" + json.dumps(value).encode()) == value


@given(st.binary(max_size=200))
def test_any_bytes_are_read_or_refused_with_words(data: bytes) -> None:
    read_or_refused(data)


@given(st.text(alphabet='{}[]:,"\\ eE.-+0123456789NaInfity\n', max_size=60))
def test_near_json_is_read_or_refused_with_words(text: str) -> None:
    read_or_refused(text.encode())


@pytest.mark.parametrize(
    ("text", "place"),
    [
        ('{\n"a": 1,\n\n"b": [1, NaN]}', "line 4"),
        ('{"note": "NaN and Infinity: {[", \n"b": NaN}', "line 2"),
        ('{"a": {"k": 1}, "b": {"k": 1},\n"c": {"k": 1, "k": 2}}', "line 2"),
        ('{"a": "\\"k\\": 1",\n"k": 1, \n "k": 2}', "line 3"),
        ('{"a":\n-1e400}', "line 2"),
    ],
)  # fmt: skip
def test_the_line_of_the_first_refused_thing_is_told(text: str, place: str) -> None:
    with pytest.raises(JsonTextError, match=place):
        parse_json(text.encode())


def test_the_word_nan_in_a_text_is_a_text() -> None:
    assert parse_json(b'{"name": "NaN", "note": "-Infinity"}') == {
        "name": "NaN",
        "note": "-Infinity",
    }


def test_names_may_repeat_in_different_objects() -> None:
    assert parse_json(b'[{"x": 1}, {"x": 2}]') == [{"x": 1}, {"x": 2}]
