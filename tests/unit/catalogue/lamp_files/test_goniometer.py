"""Types A and B, turned and aimed lamps, against rotations done with matrices."""

from __future__ import annotations

import math
from pathlib import Path

import numpy as np
import numpy.typing as npt
import pytest

from planner.catalogue.lamp_files.convert import aimed_down, to_type_c, turned
from planner.catalogue.lamp_files.photometry import Photometry, total_lumens
from planner.catalogue.lamp_files.reading import parse_lamp_file, read_lamp_file

SAMPLES = Path(__file__).parents[3] / "data" / "lamp_files"
Vector = npt.NDArray[np.float64]
GRID = np.arange(-90.0, 91.0, 5.0)


def about(axis: str, degrees: float) -> Vector:
    """The matrix of a turn by the right-hand rule."""
    c, s = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    return np.array(
        {
            "x": [[1, 0, 0], [0, c, -s], [0, s, c]],
            "y": [[c, 0, s], [0, 1, 0], [-s, 0, c]],
            "z": [[c, -s, 0], [s, c, 0], [0, 0, 1]],
        }[axis],
        dtype=np.float64,
    )


def peak(polar: Vector, azimuth: Vector, table: Vector) -> Vector:
    """The brightest direction of a type C table as a unit vector."""
    j, i = np.unravel_index(int(table.argmax()), table.shape)
    t, c = math.radians(polar[i]), math.radians(azimuth[j])
    return np.array([math.sin(t) * math.cos(c), math.sin(t) * math.sin(c), -math.cos(t)])


def one_bright(horizontal: float, vertical: float) -> Vector:
    table = np.zeros((len(GRID), len(GRID)))
    table[list(GRID).index(horizontal), list(GRID).index(vertical)] = 1.0
    return table


@pytest.mark.parametrize(("h", "v"), [(0, 0), (30, 0), (0, 40), (-45, 40), (25, -60)])
def test_type_b_turns_about_the_common_horizontal_axis(h: float, v: float) -> None:
    # From nadir: first aside by H within the plane, clockwise (towards -y), then the plane
    # itself by V about the y axis, towards x.
    wanted = about("y", -v) @ about("x", -h) @ np.array([0.0, 0.0, -1.0])
    found = peak(*to_type_c("B", GRID, GRID, one_bright(h, v)))
    assert math.degrees(math.acos(min(1.0, float(found @ wanted)))) < 4


@pytest.mark.parametrize(("h", "v"), [(0, 0), (30, 0), (0, 40), (-45, 40), (25, -60)])
def test_type_a_turns_about_the_vertical(h: float, v: float) -> None:
    # From photometric horizontal (x): up by V, then clockwise seen from above by H.
    wanted = about("z", -h) @ about("y", -v) @ np.array([1.0, 0.0, 0.0])
    found = peak(*to_type_c("A", GRID, GRID, one_bright(h, v)))
    assert math.degrees(math.acos(min(1.0, float(found @ wanted)))) < 4


def test_a_lambertian_lamp_stays_lambertian() -> None:
    fine = np.arange(-90.0, 90.5, 1.0)
    table = 1000 * np.outer(np.cos(np.radians(fine)), np.cos(np.radians(fine)))
    polar, azimuths, candela = to_type_c("B", fine, fine, table)
    lamp = Photometry(polar, azimuths, candela, "made for a test", "B")
    wanted = np.clip(1000 * np.cos(np.radians(polar)), 0, None)
    np.testing.assert_allclose(candela, np.broadcast_to(wanted, candela.shape), atol=0.2)
    assert total_lumens(lamp) == pytest.approx(1000 * math.pi, rel=2e-4)


@pytest.mark.parametrize("name", ["lm63-type-b.ies", "lm63-type-b-half.ies"])
def test_type_b_files_shine_down(name: str) -> None:
    lamp = read_lamp_file(SAMPLES / name)
    assert lamp.photometric_type == "B"
    assert lamp.candela[:, 0] == pytest.approx(1000)
    # Chords of 15° in both angles cut off about 1.2 %.
    assert total_lumens(lamp) == pytest.approx(1000 * math.pi, rel=0.013)
    assert "type B" in lamp.warnings[0]


def test_type_a_files_look_along_the_length_until_aimed_down() -> None:
    lamp = read_lamp_file(SAMPLES / "lm63-type-a.ies")
    np.testing.assert_allclose(
        peak(lamp.polar_deg, lamp.azimuths_deg, lamp.candela), [1, 0, 0], atol=1e-9
    )
    assert "aim it down" in " ".join(lamp.warnings)
    down = aimed_down(lamp)
    assert down.candela[:, 0] == pytest.approx(1000)
    assert down.candela[:, down.polar_deg > 95].max() == 0
    assert total_lumens(down) == pytest.approx(total_lumens(lamp), rel=0.01)


def test_uneven_sides_of_type_b_are_told() -> None:
    text = (SAMPLES / "lm63-type-b.ies").read_text("ascii")
    lines = text.splitlines()
    lines[-3] = "0 0 0 0 0 900 900 900"
    assert "same way round" in " ".join(parse_lamp_file("\n".join(lines).encode()).warnings)


def test_a_quarter_turn_moves_the_light_and_not_the_body() -> None:
    lamp = read_lamp_file(SAMPLES / "lm63-1995-half.ies")
    once = turned(lamp)
    # Counter-clockwise from above: what went along x (azimuth 0) goes along y (90).
    at_90 = list(once.azimuths_deg).index(90)
    np.testing.assert_allclose(once.candela[at_90], lamp.candela[0])
    assert once.opening == lamp.opening
    np.testing.assert_allclose(turned(lamp, 4).candela, lamp.candela)
    np.testing.assert_allclose(turned(turned(lamp, 3)).candela, lamp.candela)
