"""The sentence over the drawing: what a survey says by itself and beside its estimate."""

from __future__ import annotations

from planner.app.pages.survey.overlay_panel import suspect_words
from planner.plan.survey import Survey
from planner.survey.overlay import Residuals
from planner.survey.statistics import SurveySummary

UNIT = "µmol m⁻² s⁻¹"


def sentence(survey: Survey, summary: SurveySummary | None, found: Residuals | None) -> str:
    """How far the survey is, its mean with its uncertainty, and how it stands to the estimate."""
    total = len(survey.points)
    if summary is None:
        return (
            f"'{survey.name}' has {total} holes and no readings yet: print the board, put the "
            "sensor into each hole, and type what it shows."
        )
    percent = 196 * summary.mean_uncertainty / summary.mean if summary.mean > 0 else 0.0
    read = len(summary.holes)
    holes = f"all {total} holes" if read == total else f"{read} of {total} holes"
    said = (
        f"'{survey.name}': mean {summary.mean:.0f} {UNIT} ± {percent:.0f} % over {holes}, from "
        f"{summary.minimum:.0f} to {summary.maximum:.0f} (min/mean {summary.min_over_mean:.2f})."
    )
    if found is not None:
        said += f" {found.words()[0]}"
    return " ".join((said, *suspect_words(summary)))
