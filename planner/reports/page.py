"""A report as one self-contained page of HTML: no scripts, nothing fetched, light and dark.

The words go through the one template, ``resources/report/report.html.j2``, which escapes all of
them; drawings stand in it as ``Sheet`` made them, every text in them escaped already.
"""

from __future__ import annotations

from functools import cache
from typing import Final

from jinja2 import Environment, StrictUndefined, Template

from planner.folders import resource_path
from planner.language import spoken
from planner.reports.drawings import printable
from planner.reports.report import Report

TEMPLATE: Final = "report/report.html.j2"


def report_html(report: Report) -> str:
    """The page's text; it ends with a line break and is to be written as UTF-8."""
    return _template().render(report=report, language=spoken(), sections="Sections") + "\n"


@cache
def _template() -> Template:
    environment = Environment(autoescape=True, undefined=StrictUndefined, finalize=_cleaned)
    environment.globals["kind_of"] = lambda block: type(block).__name__
    return environment.from_string(resource_path(TEMPLATE).read_text("utf-8"))


def _cleaned(value: object) -> object:
    """A text without the signs no page may hold; what is markup already is clean."""
    return value if hasattr(value, "__html__") or not isinstance(value, str) else printable(value)
