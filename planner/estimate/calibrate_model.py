"""What a calibration may change, and what the meter should then read at each hole.

The readings of a survey are predicted by the core itself, under the survey's conditions
(``plan.survey_edits.as_surveyed``). Light is proportional to flux, so lamps are computed
kind by kind at their nominal flux and scaled. All runs of a fit share seed, cache and the
chains of mirrors followed (``guide``), so that differences are free of chance.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from enum import StrEnum
from typing import Final

import numpy as np

from planner.estimate.evaluate import Cache, estimate_scene, untold
from planner.estimate.result import EstimateOptions, FloatArray, Quality
from planner.estimate.scene import LampOptics, Optics, Room, Scene, build_scene
from planner.light.boxes import FACES
from planner.light.prism import IntArray
from planner.plan.edits import changed
from planner.plan.lamp import CosineProfile, Lamp, TableProfile
from planner.plan.place import OWN, Place, PlaceKind, carries, judged
from planner.plan.plan import Plan
from planner.plan.survey import Meter, Reading, Survey
from planner.plan.survey_edits import as_surveyed
from planner.survey.statistics import hole_means, reading_moments, reading_noise

CURVE_STEP_DEG: Final = 15.0
LEAST_FLUX: Final = 1e-9


class Quantity(StrEnum):
    """What a parameter of a fit is."""

    FLUX = "flux"
    GAIN = "gain"
    EXPONENT = "exponent"
    FALL = "fall"
    SHIFT_X = "shift x"
    SHIFT_Y = "shift y"
    REFLECTANCE = "reflectance"
    SPECULAR = "specular share"
    HEIGHT = "hanging height"
    SENSOR = "sensor height"
    BOARD = "board reflectance"
    OUTPUT = "output"
    DRIFT = "drift"
    DOOR = "open part of the door"
    COSINE = "light from all sides"


OF_A_SURVEY: Final = {
    Quantity.HEIGHT,
    Quantity.BOARD,
    Quantity.OUTPUT,
    Quantity.DRIFT,
    Quantity.DOOR,
}
OF_A_METER: Final = {Quantity.GAIN, Quantity.SENSOR, Quantity.COSINE}
_NEAREST: Final = 0.005
"""Metres that a lamp stays over the map however low it is taken to hang."""

_IN_LOGARITHM: Final = {Quantity.FLUX, Quantity.GAIN, Quantity.OUTPUT, Quantity.DRIFT}
_OF_A_LAMP: Final = {
    Quantity.EXPONENT,
    Quantity.FALL,
    Quantity.SHIFT_X,
    Quantity.SHIFT_Y,
    Quantity.HEIGHT,
    Quantity.SENSOR,
}


@dataclass(frozen=True)
class Parameter:
    """One unknown: what of which lamp, lining, meter or survey, where it starts and may go.

    Flux, gain and output are logarithms of factors on the plan's value, drift that of the
    last reading over the first; shifts and heights are metres, heights counted from what is
    written down; falls are logarithms of the intensity's decrease from one polar angle to
    the next. ``prior`` is a standard uncertainty about the start, None for no knowledge.
    """

    quantity: Quantity
    of: str
    start: float
    low: float
    high: float
    step: float
    prior: float | None = None
    index: int = 0

    @property
    def in_logarithm(self) -> bool:
        """Whether the prediction's logarithm is linear in it, so that no run is needed."""
        return self.quantity in _IN_LOGARITHM

    @property
    def both_ways(self) -> bool:
        """Whether its derivative needs a wide step to either side.

        What a lamp sends where is found by photons; steps must be wide against their chance.
        Reflectances follow the very same paths of light: a small step to one side is enough.
        """
        return self.quantity in _OF_A_LAMP


Values = Mapping[Parameter, float]


@dataclass(frozen=True)
class Run:
    """How a prediction is computed: quality, chains of mirrors followed, and when to stop."""

    quality: Quality
    guide: tuple[float, ...] | None = None
    cancelled: Callable[[], bool] | None = None


@dataclass
class SurveyModel:
    """One survey's readings and the runs that predict them.

    ``measured`` are the means of lit holes (n,), ``sigma`` the standard deviations of their
    logarithms by noise and placement, ``points`` their places (n, 2), ``moments`` when they
    were read (n,): from -1/2 at the first reading to 1/2 at the last.
    """

    survey: Survey
    plan: Plan
    options: EstimateOptions
    cache: Cache
    curve_angles: tuple[float, ...] = ()
    scene: Scene = field(init=False)
    lamps: tuple[Lamp, ...] = field(init=False)

    def __post_init__(self) -> None:
        self.plan = as_surveyed(self.plan, self.survey)
        self.read = judged(self.plan)
        self.scene = build_scene(self.plan)
        top = self.plan.judged_top
        self.level = self.scene.room.z_map if top is None else self.plan.obstacles[top].top
        self.lamps = tuple(lamp for lamp in self.plan.lamps if lamp.ppf > 0)
        holes, means, counts, _ = hole_means(self.survey)
        lit = means > 0
        self.holes: IntArray = holes[lit]
        self.moments: FloatArray = reading_moments(self.survey)[lit]
        self.measured: FloatArray = means[lit]
        self.points: FloatArray = np.array(self.survey.points)[holes[lit] - 1].reshape(-1, 2)
        self.noise = max(reading_noise(self.survey), 1e-4)
        self.sigma: FloatArray = self.noise / np.sqrt(counts[lit])
        self.numeric_error: float | None = None

    @property
    def gain_key(self) -> str:
        """Surveys with one meter share its gain."""
        return self.survey.meter.name

    @property
    def has_board(self) -> bool:
        """Whether something opaque, a board or the canopy itself, lies where it was read."""
        return self.read != OWN or self.plan.canopy.closed

    @property
    def _door(self) -> Place | None:
        door = self.plan.space.door
        return None if door is None else Place(PlaceKind.WALL, door)

    @property
    def has_door(self) -> bool:
        """Whether a wall is a door that was shut."""
        return self._door is not None and not (self.plan.space.door_open or self.survey.open_air)

    def groups(self) -> tuple[str, ...]:
        """Keys of the lamp models that shine in this survey."""
        return tuple(dict.fromkeys(lamp.model.key for lamp in self.lamps))

    def carries(self, key: str) -> bool:
        """Whether a lining of this key is on any lit surface."""
        return any(carries(self.plan, place, key) for place in self.scene.places)

    # -- scenes of other values ---------------------------------------------------------

    def optics(self, values: Values) -> Optics:
        """Reflectances of the facets with fitted linings in them."""
        rho = {p.of: v for p, v in values.items() if p.quantity is Quantity.REFLECTANCE}
        share = {p.of: v for p, v in values.items() if p.quantity is Quantity.SPECULAR}
        diffuse, specular = list(self.scene.optics.diffuse), list(self.scene.optics.specular)
        for k, place in enumerate(self.scene.places):
            for key in {*rho, *share}:
                if carries(self.plan, place, key):
                    lining = self.plan.lining(key)
                    total = rho.get(key, lining.reflectance)
                    part = share.get(key, lining.specular_share)
                    diffuse[k], specular[k] = total * (1 - part), total * part
            for p, value in values.items():
                if p.quantity is Quantity.BOARD and place == self.read:
                    diffuse[k], specular[k] = value, 0.0
                elif p.quantity is Quantity.DOOR and place.whole == self._door:
                    # What goes out through a gap is lost all along that wall.
                    diffuse[k], specular[k] = diffuse[k] * (1 - value), specular[k] * (1 - value)
        return replace(self.scene.optics, diffuse=tuple(diffuse), specular=tuple(specular))

    def _lamp_optics(self, values: Values) -> tuple[LampOptics, ...]:
        shift = {p.quantity: v for p, v in values.items()}
        dx, dy = shift.get(Quantity.SHIFT_X, 0.0), shift.get(Quantity.SHIFT_Y, 0.0)
        dz = self._lift(values)
        found = []
        inside = [optics for optics in self.scene.lamps if not optics.outside]
        for lamp, optics in zip(self.lamps, inside, strict=True):
            profile = self._profile(lamp, values) or optics.profile
            x, y, z = optics.centre
            z = min(max(z + dz, self._under(z) + _NEAREST), self.scene.room.z1)
            found.append(replace(optics, centre=(x + dx, y + dy, z), profile=profile))
        return (*found, *self.scene.lamps[len(found) :])

    def _room(self, values: Values) -> Room:
        """The room with the housings where the lamps are."""
        dz, room = self._lift(values), self.scene.room
        boxed = self.scene.places[-FACES * len(room.boxes) :] if room.boxes else ()
        housings = [place.kind is PlaceKind.HOUSING for place in boxed]
        if not dz or not any(housings):
            return room
        boxes = [
            replace(box, z0=box.z0 + dz, z1=box.z1 + dz if box.tilt else min(box.z1 + dz, room.z1))
            if moved
            else box
            for box, moved in zip(room.boxes, housings[::FACES], strict=True)
        ]
        return replace(room, boxes=tuple(boxes))

    def _lift(self, values: Values) -> float:
        """As ``lift``, as far as tilted lamps and their housings stay over the map and inside."""
        dz, room = lift(values), self.scene.room
        for lamp in self.scene.lamps:
            if lamp.tilt and not lamp.outside:
                low, high = np.sort(lamp.source().outline[2])[[0, -1]]
                dz = min(max(dz, self._under(low) + _NEAREST - low), room.z1 - high)
        for box in room.boxes:
            dz = min(dz, room.z1 - box.lies[1]) if box.tilt else dz
        return float(dz)

    def _under(self, z: float) -> float:
        """What a lamp at a height stays over: the level read, unless it hangs beside that."""
        return self.level if z > self.level else self.scene.room.z_map

    def _profile(self, lamp: Lamp, values: Values) -> CosineProfile | TableProfile | None:
        key = lamp.model.key
        for p, value in values.items():
            if p.quantity is Quantity.EXPONENT and p.of == key:
                return CosineProfile(exponent=value)
        falls = [
            (p.index, v) for p, v in values.items() if p.quantity is Quantity.FALL and p.of == key
        ]
        if not falls:
            return None
        return curve_profile([v for _, v in sorted(falls)], self.curve_angles)

    def light(
        self,
        group: str,
        values: Values,
        run: Run,
    ) -> FloatArray:
        """What the meter should read at unit gain of the lamps of one kind, shape (n,).

        What comes in at the open door counts with the first kind: no reading tells it apart.
        """
        optics, lamps = self.optics(values), self._lamp_optics(values)
        mine = [k for k, lamp in enumerate(self.lamps) if lamp.model.key == group]
        if group == self.groups()[0]:
            mine += range(len(self.lamps), len(lamps))
        scene = replace(
            self.scene,
            room=self._room(values),
            optics=optics,
            lamps=lamps,
        ).of_lamps(mine)
        here = self._at_holes(scene, run)
        uneven = {p.quantity: v for p, v in values.items()}.get(Quantity.COSINE, 0.0)
        if is_ideal(self.survey.meter) and not uneven:
            return here
        black = replace(scene, optics=_black(optics))
        direct = self._at_holes(black, replace(run, guide=None))
        share = np.clip(direct / np.maximum(here, LEAST_FLUX), 0.0, 1.0)
        factor = reading_factor(self.survey.meter, share, self._direct_factor(scene), uneven)
        result: FloatArray = here * factor
        return result

    def _at_holes(self, scene: Scene, run: Run) -> FloatArray:
        options = replace(self.options, quality=run.quality)
        found = estimate_scene(
            self.plan, scene, options, self.cache, untold, run.cancelled, run.guide
        )
        if self.numeric_error is None and run.quality is self.options.quality:
            # Of the first run, and then held: weights must not change while a fit goes on.
            self.numeric_error = found.numeric_error or 0.0
        if found.place != self.read:
            raise ValueError(
                "the canopy that the survey was read on gets no light that can be reckoned: it "
                "lies under the closed canopy."
            )
        return np.maximum(found.map.at(self.points), LEAST_FLUX)

    def _direct_factor(self, scene: Scene) -> FloatArray:
        """Mean of the meter's response over the light straight from the lamps, (n,)."""
        truth, read = np.zeros(len(self.points)), np.zeros(len(self.points))
        for lamp, flux in zip(scene.lamps, scene.fluxes, strict=True):
            source = lamp.source()
            low = float(source.outline[2].min()) - self.level
            nodes, weights = source.nodes(max(low, 0.01), least=4)
            height = nodes[2] - self.level
            dx = nodes[0] - self.points[:, :1]
            dy = nodes[1] - self.points[:, 1:]
            square = dx**2 + dy**2 + height**2
            # What lies below the sensor, of a door beside an open canopy, does not fall on it.
            cosine = np.maximum(height, 0.0) / np.sqrt(square)
            away = np.stack([-dx, -dy, np.broadcast_to(-height, dx.shape)]) / np.sqrt(square)
            leaving = [one.reshape(dx.shape) for one in source.towards(away.reshape(3, -1))]
            part = flux * weights * source.profile.intensity(*leaving)
            part = part * cosine / square
            truth += part.sum(axis=1)
            read += (part * response(self.survey.meter, cosine)).sum(axis=1)
        result: FloatArray = np.where(truth > 0, read / np.maximum(truth, 1e-30), 1.0)
        return result


def lift(values: Values) -> float:
    """How much higher than written down the lamps hang above the sensor, in metres.

    A sensor that stands higher is taken for lamps that hang lower: the walls' share in it is
    of second order.
    """
    raised = {Quantity.HEIGHT: 1.0, Quantity.SENSOR: -1.0}
    return sum(raised.get(p.quantity, 0.0) * value for p, value in values.items())


def curve_profile(falls: list[float], angles: tuple[float, ...]) -> TableProfile:
    """The monotone polar curve of falls from each angle to the next; 0 at the horizon."""
    levels = np.exp(-np.concatenate([[0.0], np.cumsum(falls)]))
    degrees = list(angles)
    relative = [float(level) for level in levels]
    if degrees[-1] < 90:
        # Beyond what any hole sees the curve goes down as the cosine does.
        last = np.cos(np.radians(degrees[-1]))
        for angle in np.arange(degrees[-1] + 5.0, 90.0, 5.0):
            relative.append(float(relative[len(angles) - 1] * np.cos(np.radians(angle)) / last))
            degrees.append(float(angle))
        degrees.append(90.0)
        relative.append(0.0)
    return TableProfile(angles_deg=tuple(degrees), relative=tuple(relative))


def _black(optics: Optics) -> Optics:
    none = (0.0,) * len(optics.diffuse)
    return replace(optics, diffuse=none, specular=none)


# -- what the meter of a survey should read by the plan --------------------------------


def expected_readings(
    plan: Plan,
    survey: Survey,
    options: EstimateOptions | None = None,
    *,
    cache: Cache | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> FloatArray:
    """PPFD a meter of unit gain should read at every point of a survey, (points,).

    Under the survey's conditions, with the meter's directional response. For an ideal
    meter this is the estimate of ``as_surveyed(plan, survey)`` at the holes.

    Raises
    ------
    ValueError
        If the survey's conditions do not fit the plan.
    planner.estimate.evaluate.Cancelled
        If ``cancelled`` said so.
    """
    options = options or EstimateOptions()
    every = tuple(Reading(hole=k, value=1.0) for k in range(1, len(survey.points) + 1))
    model = SurveyModel(changed(survey, readings=every), plan, options, cache or Cache())
    run = Run(options.quality, None, cancelled)
    total = np.zeros(len(survey.points))
    for group in model.groups():
        total += model.light(group, {}, run)
    return total


# -- what a sensor that is no ideal cosine receiver makes of light by its direction ----
# A reading is ∫ L(ω) cosθ c(θ) dω with the response c(θ) relative to the ideal. Of the light
# of an estimate the directions of what comes straight from the lamps are known; the rest,
# from walls and mirrors, is taken as even over the hemisphere. That is an approximation:
# low walls send their light flatter than that, mirrors steeper. It is good as long as c(θ)
# differs little from 1 where most of the reflected light comes from.

_DEGREES = np.linspace(0.0, 90.0, 361)


def is_ideal(meter: Meter) -> bool:
    """Whether the meter needs no directional correction."""
    return all(value == 1.0 for value in meter.response_relative)


def response(meter: Meter, cosine: FloatArray) -> FloatArray:
    """c(θ) for cosines of the angle from upright; linear in angle, constant beyond the ends."""
    if is_ideal(meter):
        return np.ones_like(cosine)
    angle = np.degrees(np.arccos(np.clip(cosine, 0.0, 1.0)))
    result: FloatArray = np.interp(angle, meter.response_angles_deg, meter.response_relative)
    return result


def even_light_factor(meter: Meter) -> float:
    """Reading over truth in light even over the hemisphere: ∫ c(θ) 2 sinθ cosθ dθ."""
    if is_ideal(meter):
        return 1.0
    theta = np.radians(_DEGREES)
    weight = np.sin(2 * theta)
    values = response(meter, np.cos(theta)) * weight
    # Both vanish at the ends, so plain sums are the trapezoidal rule.
    return float(values.sum() / weight.sum())


def reading_factor(
    meter: Meter, direct_share: FloatArray, direct_factor: FloatArray, uneven: float = 0.0
) -> FloatArray:
    """Reading over truth at points (n,), gain and noise apart.

    ``direct_share`` is the part of the light straight from the lamps, ``direct_factor`` the
    mean of c(θ) over that part; ``uneven`` is what the meter reads too much, relatively, of
    all the rest.
    """
    even = even_light_factor(meter) * (1 + uneven)
    result: FloatArray = direct_share * direct_factor + (1 - direct_share) * even
    return result
