"""How a lamp's spread is told."""

from __future__ import annotations

from planner.app.fields.lamp_fields import profile_words
from planner.plan.lamp import CosineProfile, PlanesProfile, TableProfile


def test_a_law_tells_where_half_is_left() -> None:
    # cos θ is a half at 60 degrees, cos² θ at 45.
    assert "left at 60°" in profile_words(CosineProfile(exponent=1.0))
    assert "left at 45°" in profile_words(CosineProfile(exponent=2.0))


def test_a_table_tells_its_angles_and_where_half_is_left() -> None:
    words = profile_words(TableProfile(angles_deg=(0, 30, 60, 90), relative=(4, 3, 2, 0)))
    assert "4 angles from 0° to 90°" in words
    assert "left at 60°" in words


def test_planes_tell_both_directions_of_a_lamp() -> None:
    profile = PlanesProfile(
        angles_deg=(0, 20, 40, 90),
        azimuths_deg=(0, 90, 180, 270),
        relative=((8, 7, 1, 0), (8, 8, 6, 0), (8, 7, 1, 0), (8, 8, 6, 0)),
    )
    words = profile_words(profile)
    assert "4 planes with 4 angles each" in words
    assert "20° along the lamp and 40° across it" in words


def test_one_plane_is_the_same_all_around() -> None:
    profile = PlanesProfile(angles_deg=(0, 45, 90), azimuths_deg=(0,), relative=((2, 1, 0),))
    assert "1 plane with 3 angles" in profile_words(profile)
    assert "left at 45°." in profile_words(profile)
