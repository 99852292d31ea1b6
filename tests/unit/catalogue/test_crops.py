"""Crops: bands, photoperiods and sources, against the published guidance."""

from __future__ import annotations

import pytest
from pydantic import ValidationError

from planner.catalogue.library import Basis, Crop, CropBook, Stage, load_crops
from planner.plan.target import DliTarget, PpfdTarget


@pytest.fixture(scope="module")
def book() -> CropBook:
    return load_crops()


def _crop(book: CropBook, key: str) -> Crop:
    return next(crop for crop in book.crops if crop.key == key)


def test_the_book_says_that_a_band_is_no_requirement(book: CropBook) -> None:
    # E. Runkle, GPN magazine: "there is no such thing as a DLI requirement"
    assert "no such thing as a DLI requirement" in book.about
    assert "never a pass or a fail" in book.about


@pytest.mark.parametrize(
    ("crop", "stage", "low", "high"),
    [
        # University of New Hampshire Extension (J. Ebba)
        ("house-plants", "foliage", 4, 6),
        ("shade-plants", "growing", 6, 8),
        ("part-shade-plants", "growing", 10, 12),
        ("full-sun-plants", "growing", 14, 20),
        ("seedlings", "before-transplant", 8, 14),
        # Ohio State University, Indoor Berry
        ("strawberry", "least", 10, 12),
        ("strawberry", "fruiting", 20, 25),
        # Craver et al. (2017), trial levels 6, 12, 18
        ("microgreens", "to-harvest", 6, 18),
    ],
)
def test_published_bands(book: CropBook, crop: str, stage: str, low: float, high: float) -> None:
    entry = _crop(book, crop).stage(stage)
    assert isinstance(entry.target, DliTarget)
    assert (entry.target.low, entry.target.high) == (low, high)
    assert entry.basis is Basis.PUBLISHED


def test_every_stage_says_how_well_it_is_founded(book: CropBook) -> None:
    assert len(book.crops) >= 15
    for crop in book.crops:
        for stage in crop.stages:
            words = stage.target.source
            if stage.basis is Basis.MEMORY:
                assert "from memory" in words
            elif stage.basis is Basis.PUBLISHED:
                assert words.startswith("Published: ")
            else:
                assert words.startswith("Published, quoted second-hand: ")


def test_bands_are_within_what_is_lit_indoors(book: CropBook) -> None:
    # DLI indoors 3-40 mol/m²/d, PPFD 50-1000 µmol/m²/s
    for crop in book.crops:
        for stage in crop.stages:
            band = stage.target.ppfd_band(stage.hours_usual)
            assert band is not None
            assert 50 <= band[0] < band[1] <= 1000, (crop.key, stage.key)
            assert stage.hours_high <= 20, "at least 4 h dark unless the crop is known to bear it"


def test_a_target_names_crop_and_stage_and_keeps_the_source(book: CropBook) -> None:
    target = _crop(book, "basil").target("seedling")
    assert isinstance(target, PpfdTarget)
    assert target.crop == "Basil, seedlings"
    assert "Lopez" in target.source


def test_a_published_setting_lies_in_the_lettuce_band(book: CropBook) -> None:
    # Pennisi et al. (2019): 215 µmol/m²/s for 16 h = 12.384 mol/m²/d
    target = _crop(book, "lettuce").stage("leaf").target
    assert target.low <= 215 * 16 * 3600 / 1e6 <= target.high


def test_a_missing_stage_is_named(book: CropBook) -> None:
    with pytest.raises(KeyError, match="has no stage 'harvest'"):
        _crop(book, "basil").stage("harvest")


def test_the_usual_hours_must_lie_in_the_range() -> None:
    with pytest.raises(ValidationError, match="must lie between 10 h and 12 h"):
        Stage(
            key="a",
            name="a",
            target=DliTarget(low=4, high=6),
            basis=Basis.MEMORY,
            hours_low=10,
            hours_high=12,
            hours_usual=13,
        )


def test_two_stages_of_a_crop_need_two_keys() -> None:
    stage = Stage(
        key="a",
        name="a",
        target=DliTarget(low=4, high=6),
        basis=Basis.MEMORY,
        hours_low=10,
        hours_high=12,
        hours_usual=11,
    )
    with pytest.raises(ValidationError, match="carry the same key"):
        Crop(key="c", name="c", stages=(stage, stage))
