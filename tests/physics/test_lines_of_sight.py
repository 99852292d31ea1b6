"""Lines of sight are spent where they tell something: counted, as clocks differ."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from planner.estimate.scene import build_scene
from planner.light import close_up, direct, partly
from planner.light.close_up import _faces_lamp
from planner.light.emission import Source
from planner.light.prism import FloatArray, Prism
from planner.light.surfaces import Surfaces
from planner.plan.lamp import BarsBody
from tests.physics.rooms import box, lamp, light, panel, plan


def test_faces_of_its_own_housing_do_not_face_a_lamp() -> None:
    # 0.2 + 0.04 is a hair more than 0.24: faces that begin in the plane of the lamp's face
    # had light looked for on them, past all boxes beside it.
    body = BarsBody(length=0.7, width=0.6, count=6, bar_width=0.03)
    one = lamp((0.5, 0.4), 0.04, body=body)
    model = one.model.model_copy(update={"housing_height": 0.04})
    what = plan(box(1.0, 0.8), 1.0, [one.model_copy(update={"model": model})], canopy_height=0.2)
    scene = build_scene(what)
    room = scene.room
    assert room.boxes
    prism = Prism(np.array(room.corners), room.z0, room.z1, room.boxes)
    surfaces = Surfaces(prism, room.band_tops, 0.05, 4, room.z_map)
    faces = _faces_lamp(surfaces, scene.lamps[0].source())
    assert (surfaces.facet_plane[surfaces.texel_facet[faces]] < prism.wall_count + 2).all()


L_ROOM = ((0.0, 0.0), (1.2, 0.0), (1.2, 0.5), (0.5, 0.5), (0.5, 1.0), (0.0, 1.0))
MIRRORS = plan(
    L_ROOM, 0.8, [lamp((0.3, 0.3), 0.6, body=panel(0.2, 0.2))], walls=(0.0, 0.9), canopy=0.1
)  # fmt: skip


def test_lines_to_images_are_shared_out_by_what_they_tell(monkeypatch: pytest.MonkeyPatch) -> None:
    followed = 0
    really = partly._followed

    def counted(surfaces: Surfaces, origin: FloatArray, *rest: Any) -> FloatArray:
        nonlocal followed
        followed += origin.shape[1]
        return really(surfaces, origin, *rest)

    monkeypatch.setattr(partly, "_followed", counted)
    found = light(MIRRORS, (16, 16))
    spent = followed
    # The same with all the lines there may be of each.
    monkeypatch.setattr(partly, "_lines_for", lambda error, cell, most: np.full(cell.size, most))
    fully = light(MIRRORS, (16, 16))
    off = float(np.sqrt(np.nanmean((found.ppfd - fully.ppfd) ** 2)) / np.nanmean(fully.ppfd))
    assert off < 0.002
    assert spent < 0.4 * (followed - spent)


def test_what_hides_a_lamp_is_asked_along_fewer_lines_than_it_has_points(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    asked = summed = 0
    sight, on = direct.visible, direct.direct_on

    def looked(*args: Any) -> FloatArray:
        nonlocal asked
        result = sight(*args)
        asked += result.size
        return result

    def added(prism: Prism, source: Source, receivers: FloatArray, *rest: Any) -> FloatArray:
        nonlocal summed
        summed += receivers.shape[1] * source.nodes(rest[1], least=rest[2])[0].shape[1]
        return on(prism, source, receivers, *rest)

    monkeypatch.setattr(direct, "visible", looked)
    monkeypatch.setattr(close_up, "direct_on", added)
    angles = (0.0, 10.0, 20.0, 30.0, 45.0, 60.0, 90.0)
    table = (angles, (1.0, 0.5, 0.9, 0.4, 0.7, 0.2, 0.0))
    light(plan(L_ROOM, 0.8, [lamp((0.3, 0.3), 0.6, body=panel(0.4, 0.3), table=table)]), (8, 8))
    assert 0 < asked < 0.5 * summed
