"""The map as a picture."""

from __future__ import annotations

import dataclasses
import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest
from PySide6.QtGui import QColor, QImage

from planner.estimate.result import Estimate
from planner.reports.contrast import colour_table
from planner.reports.paper import map_picture, map_picture_png
from tests.unit.reports.sample_estimate import L_SHAPE, SQUARE, sample_estimate, sample_plan

pytestmark = pytest.mark.gui


def colours(image: QImage) -> np.ndarray[tuple[int, ...], np.dtype[np.uint8]]:
    """Pixels (row, column, red green blue)."""
    plain = image.convertToFormat(QImage.Format.Format_RGB888)
    rows = np.frombuffer(plain.constBits(), np.uint8).reshape(plain.height(), -1)
    return rows[:, : 3 * plain.width()].reshape(plain.height(), plain.width(), 3)


def yellow_minus_blue(image: QImage) -> np.ndarray[tuple[int, ...], np.dtype[np.int64]]:
    pixels = colours(image).astype(np.int64)
    return pixels[..., 0] + pixels[..., 1] - 2 * pixels[..., 2]


@pytest.fixture
def picture(qapp: object) -> QImage:
    return map_picture(sample_estimate(cells=(24, 20)))


def test_it_is_as_wide_as_asked(qapp: object, picture: QImage) -> None:
    assert picture.width() == 1200
    assert 700 < picture.height() < 1400
    assert map_picture(sample_estimate(), width=600).width() == 600


def test_paper_is_white_at_its_edges(picture: QImage) -> None:
    for x in (2, picture.width() - 3):
        for y in (2, picture.height() - 3):
            assert picture.pixelColor(x, y) == QColor("white")


def test_the_brightest_place_is_where_the_light_is(qapp: object) -> None:
    # A hill at the lower left of a wide room: its colour must be left of and below the middle.
    room = ((0.0, 0.0), (1.2, 0.0), (1.2, 0.9), (0.0, 0.9))
    estimate = sample_estimate(sample_plan(room, lamps=()), cells=(24, 18))
    image = map_picture(estimate)
    drawing = yellow_minus_blue(image)[160:-250, 130:960]
    rows, columns = np.nonzero(drawing > np.quantile(drawing, 0.98))
    assert columns.mean() < drawing.shape[1] * 0.4
    assert rows.mean() > drawing.shape[0] * 0.6


def test_the_notch_of_an_l_stays_paper(qapp: object) -> None:
    image = map_picture(sample_estimate(sample_plan(L_SHAPE), cells=(24, 18)))
    full = map_picture(sample_estimate(sample_plan(), cells=(24, 18)))
    assert full.width() == image.width()
    # Right and above the inner corner: well inside the bounding box, outside the footprint.
    assert image.pixelColor(800, 260) == QColor("white")
    assert image.pixelColor(300, 600) != QColor("white")


@pytest.mark.parametrize(
    "footprint",
    [
        SQUARE,
        L_SHAPE,
        ((0, 0), (0.2, 0), (0.2, 3), (0, 3)),
        ((0, 0), (5, 0), (5, 0.3), (0, 0.3)),
        ((0, 0), (1, 0), (0.2, 0.9)),
    ],
)
def test_every_shape_of_space_can_be_painted(
    qapp: object, footprint: tuple[tuple[float, float], ...]
) -> None:
    plan = sample_plan(footprint, lamps=(), space={"footprint": footprint, "height": 1.2, "door": 0,
                                                   "door_open": True})  # fmt: skip
    image = map_picture(sample_estimate(plan, cells=(24, 24)))
    assert image.height() <= 1700


def dark() -> Estimate:
    estimate = sample_estimate(
        sample_plan(lamps=()), mean=0.0, minimum=0.0, maximum=0.0, min_over_mean=None,
        photon_flux=0.0,
    )  # fmt: skip
    return dataclasses.replace(estimate, ppfd=np.zeros_like(estimate.ppfd))


def test_a_dark_space_is_painted_dark(qapp: object) -> None:
    image = map_picture(dark())
    red, green, blue = (int(c) for c in colour_table()[0])
    middle = image.pixelColor(500, image.height() // 2)
    assert (middle.red(), middle.green(), middle.blue()) == (red, green, blue)


def test_the_colours_run_from_dark_to_light(qapp: object) -> None:
    luminance = colour_table().astype(float) @ [0.2126, 0.7152, 0.0722]
    assert colour_table().shape == (256, 3)
    assert luminance[0] < 60
    assert luminance[-1] > 200
    # 8-bit steps may fall by a rounding, never by more.
    assert np.diff(luminance).min() > -1.5


def test_the_file_is_a_png(qapp: object) -> None:
    data = map_picture_png(sample_estimate())
    assert data.startswith(b"\x89PNG\r\n\x1a\n")
    assert QImage.fromData(data).width() == 1200


def test_it_needs_no_screen_and_no_running_application(tmp_path: Path) -> None:
    code = (
        "import sys\n"
        "from tests.unit.reports.sample_estimate import sample_estimate\n"
        "from planner.reports.paper import map_picture_png\n"
        "open(sys.argv[1], 'wb').write(map_picture_png(sample_estimate()))\n"
    )
    environment = {"PATH": "/usr/bin:/bin", "HOME": str(tmp_path)}
    out = tmp_path / "map.png"
    subprocess.run(
        [sys.executable, "-c", code, str(out)],
        check=True, env=environment, cwd=Path(__file__).parents[3], timeout=60,
    )  # fmt: skip
    assert out.read_bytes().startswith(b"\x89PNG")
