"""Standing: mass, what touches the floor, and how far the piece may lean before it goes over."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from scipy.sparse.csgraph import connected_components
from scipy.spatial import ConvexHull
from scipy.spatial.distance import cdist

from buildplan.framework.counts import BALLOONS_PER_LOCK
from buildplan.framework.model import BalloonType, Framework
from buildplan.shape.bodies import LinkBodies
from buildplan.shape.constants import Constant
from buildplan.shape.model import FloatArray, IntArray, Standing
from buildplan.shape.roots import bisected

INCH_M = 0.0254
EDGE_POINTS = 24  # corners drawn round one body's contact patch
NEARLY_DOWN = 0.1  # of a body's radius
APART = 1.5  # lengths of the longest body: what touches the floor wider apart is another foot


def latex_kg(balloon: BalloonType, constants: Mapping[str, Constant]) -> float:
    """Latex in one balloon, by its printed size: interpolated on log scales (an estimate)."""
    known = sorted(
        (constant.latex_of[1], constant.value)
        for constant in constants.values()
        if constant.latex_of is not None and constant.latex_of[0] == balloon.kind.latex_like
    )
    sizes, grams = np.log(np.array(known)).T
    size = float(np.log(balloon.nominal_m / INCH_M))
    # outside the table, latex goes with the square of the size, as skin of one thickness does
    nearest = float(np.clip(size, sizes[0], sizes[-1]))
    return float(np.exp(np.interp(nearest, sizes, grams) + 2 * (size - nearest))) / 1000


def body_volume_m3(radius_m: float, length_m: float) -> float:
    """A prolate spheroid of that radius and length: 4/3 pi a b c."""
    return 4 / 3 * np.pi * radius_m**2 * length_m / 2


def weight_kg(balloon: BalloonType, constants: Mapping[str, Constant]) -> float:
    """What one filled balloon weighs in air, as a mass.

    The air inside floats in the air outside, but for what the over-pressure adds.
    """
    over = constants["over_pressure"].value / constants["air_pressure"].value
    air = (
        constants["air_density"].value
        * over
        * body_volume_m3(balloon.gauge_m / 2, balloon.length_m)
    )
    return latex_kg(balloon, constants) + air


def masses(
    framework: Framework,
    bodies: LinkBodies,
    positions_m: FloatArray,
    constants: Mapping[str, Constant],
) -> tuple[FloatArray, FloatArray]:
    """Masses in kg (n,) and where they are (n, 3): every link at its midpoint, then every lock."""
    each = {key: weight_kg(balloon, constants) for key, balloon in framework.balloons.items()}
    number = framework.place_number
    at_locks = np.array([number[lock.joint] for lock in framework.locks], int)
    mass = [each[link.balloon] for link in framework.links]
    mass += [BALLOONS_PER_LOCK * each[lock.balloon] for lock in framework.locks]
    return np.array(mass), np.vstack([bodies.midpoints_m(positions_m), positions_m[at_locks]])


@dataclass(frozen=True)
class Patches:
    """What of each body lies below a level: ellipses in the floor's plane (x, z)."""

    bodies: Sequence[int]
    centres_m: FloatArray  # (k, 2)
    spans_m: FloatArray  # (k, 2, 2), columns are the half axes

    @property
    def area_m2(self) -> float:
        """Area of all patches."""
        return float(np.pi * np.abs(np.linalg.det(self.spans_m)).sum())

    def outline_m(self) -> FloatArray:
        """Points round every patch, (k * EDGE_POINTS, 2)."""
        angle = np.linspace(0, 2 * np.pi, EDGE_POINTS, endpoint=False)
        circle = np.stack([np.cos(angle), np.sin(angle)])
        around = self.centres_m[:, :, None] + self.spans_m @ circle
        return np.asarray(around.transpose(0, 2, 1).reshape(-1, 2))


@dataclass(frozen=True)
class _Near:
    """The bodies that a level cuts that is not higher than asked about: `number` (k,), the height
    of their middles and how far they reach down from there (k,), and the matrices (k, 3, 3) of
    their forms: a spheroid is the set w' Q w <= 1 with Q = (I - a a') / r^2 + a a' / c^2."""

    number: IntArray
    middle_m: FloatArray
    reach_m: FloatArray
    form: FloatArray

    def height_m(self, level_m: float) -> FloatArray:
        """How high over its middle the level cuts each body, (k,)."""
        # pressed in beyond nine tenths of its half height, a body's patch does not grow any more
        return np.clip(level_m - self.middle_m[:, 1], -self.reach_m, -0.1 * self.reach_m)

    @cached_property
    def flat(self) -> FloatArray:
        """The part (k, 2, 2) of the forms that lies level."""
        return self.form[:, [0, 2]][:, :, [0, 2]]

    @cached_property
    def widest_m2(self) -> FloatArray:
        """The area of each body's level section through its middle, (k,)."""
        return np.asarray(np.pi / np.sqrt(np.linalg.det(self.flat)))

    def area_m2(self, level_m: float) -> float:
        """The area of all patches at a level."""
        share = 1 - (self.height_m(level_m) / self.reach_m) ** 2
        return float(self.widest_m2 @ np.maximum(share, 0.0))


def _near_floor(bodies: LinkBodies, positions_m: FloatArray, level_m: float) -> _Near:
    low = bodies.lowest_m(positions_m)[:, 1]
    touching = np.flatnonzero(low < level_m)
    middle = bodies.midpoints_m(positions_m)[touching]
    axis = bodies.axes(positions_m)[touching]
    radius, half = bodies.radius_m[touching], bodies.length_m[touching] / 2
    along = np.einsum("si,sj->sij", axis, axis)
    form = (np.eye(3) - along) / radius[:, None, None] ** 2 + along / half[:, None, None] ** 2
    return _Near(touching, middle, middle[:, 1] - low[touching], form)


def patches_below(bodies: LinkBodies, positions_m: FloatArray, level_m: float) -> Patches:
    """Sections of the bodies by the horizontal plane at `level_m`, where it cuts their lower
    half."""
    near = _near_floor(bodies, positions_m, level_m)
    height = near.height_m(level_m)
    shift = -np.linalg.solve(near.flat, near.form[:, [0, 2], 1][:, :, None])[:, :, 0]
    values, axes = np.linalg.eigh(near.flat)
    width = np.sqrt(np.maximum(1 - (height / near.reach_m) ** 2, 0))
    spans = axes / np.sqrt(values)[:, None, :] * width[:, None, None]
    centres = near.middle_m[:, [0, 2]] + shift * height[:, None]
    return Patches(list(near.number), centres, spans)


def floor_level_m(
    bodies: LinkBodies, positions_m: FloatArray, load_n: float, over_pressure_pa: float
) -> float:
    """How high the floor cuts the unsquashed bodies: over-pressure times patch carries the load."""
    bottom = float(bodies.lowest_m(positions_m)[:, 1].min())
    top = bottom + 0.5 * float(bodies.radius_m.max())
    near = _near_floor(bodies, positions_m, top)

    def spare(level: float) -> float:
        return near.area_m2(level) * over_pressure_pa - load_n

    return bisected(spare, bottom, top) if spare(top) > 0 else top


def hull_corners(points: FloatArray) -> FloatArray:
    """Corners (k, 2) of the convex hull of points (n, 2), counter-clockwise."""
    return np.asarray(points[ConvexHull(points).vertices])


def tip_lean(polygon_m: FloatArray, point_m: FloatArray, height_m: float) -> float:
    """Lean in degrees at which a centre of mass `height_m` above the foot goes over its edge.

    atan(b / h), b the least distance from the centre's projection to an edge of the foot; negative
    when the projection is outside.
    """
    edge = -float(ConvexHull(polygon_m).equations.dot(np.append(point_m, 1.0)).max())
    return float(np.degrees(np.arctan2(edge, height_m)))


def stand(
    framework: Framework,
    bodies: LinkBodies,
    positions_m: FloatArray,
    constants: Mapping[str, Constant],
) -> tuple[Standing, float]:
    """How a placed piece stands on the floor, and its mass in kg.

    The floor is where the bodies have sunk in far enough to carry the weight, y = 0 their lowest
    point before; the foot is the hull of all patches, and of what hangs just above the floor.
    """
    mass, where = masses(framework, bodies, positions_m, constants)
    total = float(mass.sum())
    centre = (mass @ where) / total
    level = floor_level_m(
        bodies,
        positions_m,
        total * constants["gravity"].value,
        constants["over_pressure"].value,
    )
    patches = patches_below(bodies, positions_m, level)
    # a piece gives as it settles: bodies that are nearly down come down and help to carry
    low = bodies.lowest_m(positions_m)[:, 1]
    down = np.flatnonzero(low < low.min() + NEARLY_DOWN * bodies.radius_m.mean())
    touches = bodies.lowest_m(positions_m)[down][:, [0, 2]]
    polygon = hull_corners(np.vstack([patches.outline_m(), touches]))
    angle = tip_lean(polygon, centre[[0, 2]], float(centre[1]) - level)
    carrying = sorted({*patches.bodies, *down.tolist()})
    feet = sorted({int(joint) for body in carrying for joint in bodies.ends[body]})
    standing = Standing(
        stands=angle > 0,
        feet=tuple(framework.places[joint] for joint in feet),
        foot_polygon_m=polygon,
        centre_of_mass_m=centre,
        tip_angle_deg=max(angle, 0.0),
        feet_m=_feet_apart(
            np.vstack([patches.centres_m, touches]), APART * float(bodies.length_m.max())
        ),
    )
    return standing, total


def _feet_apart(touching_m: FloatArray, apart_m: float) -> FloatArray:
    """The middle (k, 2) of each foot, of all points (n, 2) that touch the floor: points of one
    foot are less than `apart_m` from another of it. From left to right."""
    count, number = connected_components(cdist(touching_m, touching_m) < apart_m, directed=False)
    feet = [touching_m[number == foot] for foot in range(count)]
    middles = [0.5 * (foot.min(axis=0) + foot.max(axis=0)) for foot in feet]
    return np.array(sorted(middles, key=lambda at: (round(float(at[0]), 3), float(at[1]))))
