"""Posing: setting a found shape on the floor, the right way up and facing the viewer."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np

from buildplan.framework.chain_roles import ROW, Layer
from buildplan.framework.model import Framework
from buildplan.shape.bodies import LinkBodies
from buildplan.shape.constants import Constant
from buildplan.shape.model import FloatArray
from buildplan.shape.resting import (
    RestingPose,
    at_rest_on,
    best_pose,
    pose_on,
    poses_in_plane,
    poses_in_space,
)
from buildplan.shape.standing import masses, stand

NO_FRONT_M = 0.02  # layers nearer than this to one another tell no front
DIGITS_OF_A_METRE = 9


def end_feet(framework: Framework, positions_m: FloatArray) -> tuple[str, ...]:
    """The joints that an open tube stands on unless told otherwise; none for any other piece.

    One that turns back on itself, an arch, stands on both ends; one that does not, a column, on
    its first.
    """
    if framework.closed or not framework.braces:
        return ()
    first, last = framework.braces[0].section, framework.braces[-1].section
    number = framework.place_number

    def middle(section: Sequence[str]) -> FloatArray:
        return np.asarray(positions_m[[number[joint] for joint in section]].mean(axis=0))

    away = middle(framework.braces[min(1, len(framework.braces) - 1)].section) - middle(first)
    back = middle(last) - middle(framework.braces[max(len(framework.braces) - 2, 0)].section)
    return (*first, *last) if float(away @ back) < 0 else first


def upright(
    framework: Framework,
    bodies: LinkBodies,
    positions_m: FloatArray,
    stand_on: Sequence[str],
    flat: bool,
    constants: Mapping[str, Constant],
    top: Sequence[str] = (),
) -> FloatArray:
    """Rotation (3, 3) that sets the piece upright, with the joints of `top` as high as may be.

    A `flat` piece, or one that mirrors itself, has z across it and is turned in its plane only.
    """
    number = framework.place_number
    chosen = stand_on or framework.foot or end_feet(framework, positions_m)
    feet = [number[joint] for joint in chosen]
    mass, where = masses(framework, bodies, positions_m, constants)
    centre = mass @ where / mass.sum()
    if feet and not top:
        pose = pose_on(np.array(feet), positions_m, flat)
        if framework.parts:
            return as_placed(pose.rotation)
        placed = positions_m @ pose.rotation.T
        placed[:, 1] -= bodies.lowest_m(placed)[:, 1].min()
        if not stand(framework, bodies, placed, constants)[0].stands:
            stable = _stable_poses(bodies, positions_m, centre, flat)
            pose = at_rest_on(np.array(feet), pose, stable, bodies, positions_m)
        return pose.rotation
    first = framework.braces[0].section if framework.braces else framework.places[:1]
    start = positions_m[[number[joint] for joint in first]].mean(axis=0)
    poses = _stable_poses(bodies, positions_m, centre, flat)
    if top:
        highest = positions_m[[number[joint] for joint in top]].mean(axis=0) - centre

        def height(pose: RestingPose) -> float:
            return round(float((pose.rotation @ highest)[1]), 6)

        most = max(map(height, poses), default=0.0)
        poses = [pose for pose in poses if height(pose) == most]
    best = best_pose(poses, start)
    return np.eye(3) if best is None else best.rotation


def _stable_poses(
    bodies: LinkBodies, positions_m: FloatArray, centre_m: FloatArray, flat: bool
) -> list[RestingPose]:
    if flat:
        return poses_in_plane(bodies.midpoints_m(positions_m), bodies.radius_m, centre_m)
    return poses_in_space(bodies, positions_m, centre_m)


def as_placed(rotation: FloatArray) -> FloatArray:
    """The rotation (3, 3) that sets an assembly upright, without its turn about the upright axis:
    its parts are placed as they are seen from the front."""
    ahead = rotation @ [0.0, 0.0, 1.0]
    reach = float(np.hypot(ahead[0], ahead[2]))
    if reach < NO_FRONT_M:
        return rotation
    x, z = ahead[0] / reach, ahead[2] / reach
    return np.asarray(np.array([[z, 0.0, -x], [0.0, 1.0, 0.0], [x, 0.0, z]]) @ rotation)


def of_one_hand(framework: Framework, positions_m: FloatArray) -> FloatArray:
    """The piece as it stands upright, or its mirror image, which is at rest as well: the one whose
    lowest ring is numbered clockwise seen from above, or whose rows, seen from the
    front, run from left to right. Chance would have it otherwise, and a spiral, an opening or a tie
    between parts asks for one of the two."""
    if framework.chains and framework.chains[0].role == ROW:
        row = framework.chains[0].chain.joints
        ends = [positions_m[framework.place_number[joint]] for joint in (row[0], row[-1])]
        return positions_m if ends[1][0] > ends[0][0] else positions_m * [-1.0, 1.0, 1.0]
    rings = (long.chain.joints for long in framework.chains if long.chain.closed)
    lowest = next(rings, ())
    if framework.mirror or not framework.foot or not lowest:
        return positions_m
    ring = positions_m[[framework.place_number[joint] for joint in lowest]]
    ring = ring - ring.mean(axis=0)
    anticlockwise = float(np.cross(ring, np.roll(ring, -1, axis=0))[:, 1].sum()) > 0
    return positions_m * [-1.0, 1.0, 1.0] if anticlockwise else positions_m


def facing_the_viewer(framework: Framework, positions_m: FloatArray) -> FloatArray:
    """The piece turned about the upright axis until its front layer is nearest the viewer; an
    assembly, whose parts may face several ways, by half a turn at most, so that its writing, or
    else most of it, does. A piece without a front as it is."""
    pieces = [part.framework for part in framework.parts] or [framework]
    reading = [piece for piece in pieces if piece.reads] or pieces
    number = framework.place_number
    rows = {
        layer: [
            number[joint]
            for piece in reading
            for long in piece.chains
            if long.layer is layer
            for joint in long.chain.joints
        ]
        for layer in (Layer.FRONT, Layer.BACK)
    }
    if not all(rows.values()):
        return positions_m
    front, back = (positions_m[rows[layer]].mean(axis=0) for layer in rows)
    ahead = front - back
    if framework.parts:
        return positions_m if ahead[2] >= 0 else positions_m * [-1.0, 1.0, -1.0]
    reach = float(np.hypot(ahead[0], ahead[2]))
    if reach < NO_FRONT_M:
        return positions_m
    x, z = ahead[0] / reach, ahead[2] / reach
    return np.asarray(positions_m @ np.array([[z, 0.0, x], [0.0, 1.0, 0.0], [-x, 0.0, z]]))


def on_the_floor(bodies: LinkBodies, positions_m: FloatArray) -> FloatArray:
    """Lowest point of all bodies on y = 0, width and depth centred; to the nanometre, for the
    digits after that differ from processor to processor, and no choice may turn on them."""
    middle = bodies.midpoints_m(positions_m)
    spread = bodies.radius_m[:, None]
    low, high = (middle - spread).min(axis=0), (middle + spread).max(axis=0)
    shift = -0.5 * (low + high)
    shift[1] = -float(bodies.lowest_m(positions_m)[:, 1].min())
    return np.asarray(np.round(positions_m + shift, DIGITS_OF_A_METRE))


def size_m(bodies: LinkBodies, positions_m: FloatArray) -> FloatArray:
    """Width, height and depth over the bodies (spheroids along their axes)."""
    axis = bodies.axes(positions_m)
    radius, half = bodies.radius_m[:, None], bodies.length_m[:, None] / 2
    reach = np.sqrt(radius**2 + (half**2 - radius**2) * axis**2)
    middle = bodies.midpoints_m(positions_m)
    return np.asarray((middle + reach).max(axis=0) - (middle - reach).min(axis=0))
