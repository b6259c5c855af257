"""Where the builder sits, and so from where each kind of work is drawn.

One seat for each kind of work, fixed to the piece's own direction at that place and never
searched for: what hides the work is cut away (`cutaway.py`), the seat does not move. From picture
to picture the same joint therefore lies in the same corner. The angles are our own choice, tried
on the shipped designs.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.camera import CAMERAS, Camera, Vector
from buildplan.framework.model import Brace, Cell, Framework
from buildplan.sequence.courses import in_courses
from buildplan.shape.lying import laid_in_figure, lies_built
from buildplan.shape.model import Shape

# At the open end of a tube: so far round from straight outside, and so far above the floor.
ROUND_DEG, ABOVE_DEG = 62.0, 25.0
# Straight across a corner that leaves joints out: so far above the floor, that each is seen apart.
ACROSS_ABOVE_DEG = 30.0
# Where a tube closes at inner joints, what is built runs on there: so far round into its course.
INTO_DEG = 35.0
# Before work that stands: how steeply eyes look down on it from an arm's length.
DOWN_DEG = 27.0
# Over the pole of a globe: into it while it is open, onto it once it closes.
OVER_POLE_DEG = 78.0
# What the cameras of the seats are called.
OPEN_END, STANDING, OVER_POLE = "open end", "standing", "over the pole"
OTHER_SIDE, ACROSS, BESIDE = "other side", "across the corner", "beside"
# Those before a piece that lies front up.
LYING = frozenset({OPEN_END, ACROSS, BESIDE})
# The whole of a piece that stands, seen from its front and a little from above.
STANDING_WHOLE = Camera((0.0, 0.42, 0.9), (0.0, 1.0, 0.0), "whole")
# Over a wall that lies on its back, from its head, where the next course comes; its foot is below.
LOOKING_DOWN = Camera((0.0, 0.45, 0.89), (0.0, 1.0, 0.0), STANDING)
_RIGHT = np.array([1.0, 0.0, 0.0])
# Laying out: straight from above, on a piece that lies front up.
FROM_ABOVE = CAMERAS["front"]


def open_end_seat(framework: Framework, shape: Shape, brace: Brace) -> Camera:
    """The seat at a brace of a piece that lies front up: at the open end, where nothing is
    braced yet, outside the curve. Front is drawn upwards, the first joint of the section at
    the upper right.

    In a part that is built left to right the open end is on the other hand, and so is the
    picture.
    """
    return seat_toward(*brace_axes(framework, shape, brace))


def seat_toward(outside: FloatArray, along: FloatArray, front: FloatArray) -> Camera:
    """The seat at an open end, by unit vectors (3,): straight outside, along the piece to that
    end, and to its front."""
    turn, rise = np.radians(ROUND_DEG), np.radians(ABOVE_DEG)
    level = outside * np.cos(turn) + along * np.sin(turn)
    return Camera(_vector(level * np.cos(rise) + front * np.sin(rise)), _vector(front), OPEN_END)


def brace_seat(framework: Framework, shape: Shape, brace: Brace, corner: Cell | None) -> Camera:
    """The seat at a brace: at the open end; straight across the `corner` that it finishes, if it
    is one at which it leaves joints out."""
    if corner is None or not leaves_out(corner):
        return open_end_seat(framework, shape, brace)
    held, skipped = (
        np.mean([shape.at[joint] for joint in joints], axis=0)
        for joints in (held_joints(framework, corner), corner.skipped)
    )
    seat = seat_across(*brace_axes(framework, shape, brace), skipped - held)
    own = framework.built_with(brace.section[0])
    closes = own.closed and own.braces[-1].section == brace.section
    return _turned(seat, skipped - held) if closes and corner.inner > corner.outer else seat


def _turned(seat: Camera, inward: FloatArray) -> Camera:
    """A seat across a corner turned towards the inside of the course (3,)."""
    front, turn = np.array(seat.up), np.radians(INTO_DEG)
    away = np.array(seat.direction)
    level = away - front * (away @ front)
    aside = np.linalg.norm(level) * _unit(inward - front * (inward @ front))
    turned = level * np.cos(turn) + aside * np.sin(turn)
    return replace(seat, direction=_vector(turned + away - level))


def leaves_out(cell: Cell) -> bool:
    """Whether a cell is a corner at which braces leave joints out."""
    return bool(cell.skipped) and not cell.kind.is_spur


def held_joints(framework: Framework, cell: Cell) -> list[str]:
    """The joints of the side of a corner on which its chains hardly go on."""
    sections = [framework.brace[number].section for number in (cell.first, cell.second)]
    count = len(sections[0])
    outer = {0, count - 1} if count > 2 else {0}
    held = set(range(count)) - outer if cell.outer > cell.inner else outer
    return [section[place] for section in sections for place in sorted(held)]


def seat_across(
    outside: FloatArray, along: FloatArray, front: FloatArray, out: FloatArray
) -> Camera:
    """The seat straight across a corner, from the side of the open end, by unit vectors (3,) as of
    `seat_toward`, and `out` (3,), from the joints that hold it to those that it leaves out.

    What stands out is then seen to one side of what holds it, and the near brace before the far
    one, so that no joint lies behind another; outer joints are to the right as everywhere."""
    level = np.cross(front, out)
    level = _unit(level if level @ along > 0 else -level)
    rise = np.radians(ACROSS_ABOVE_DEG)
    return Camera(_vector(level * np.cos(rise) + front * np.sin(rise)), _vector(front), ACROSS)


def other_side(framework: Framework, shape: Shape, brace: Brace) -> Camera:
    """Across from the seat at the open end: from inside the curve, as far round and as high."""
    outside, along, front = brace_axes(framework, shape, brace)
    return replace(seat_toward(-outside, along, front), name=OTHER_SIDE)


def brace_axes(
    framework: Framework, shape: Shape, brace: Brace
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Unit vectors (3,) at a brace: straight outside, along the piece to its open end, and to
    its front.

    Its section's joints say which is which: the first lies outside, the last behind it (of
    three, the second lies inside; of two, both lie at the front).
    """
    tube = framework.built_with(brace.section[0])
    section = np.array([shape.at[joint] for joint in brace.section])
    first, last = section[0], section[-1]
    if len(section) == 2:
        front = np.array([0.0, 0.0, 1.0])
        outside = first - last
    elif len(section) == 3:
        front = first - last
        outside = (first + last) / 2 - section[1]
    else:
        front = (first + section[1]) / 2 - (section[2] + last) / 2
        outside = (first + last) / 2 - (section[1] + section[2]) / 2
    front = _unit(front)
    outside = _unit(outside - front * (outside @ front))
    along = np.cross(outside, front)
    if tube.cells and along @ _onward(tube, shape, brace) < 0:
        along = -along
    return outside, along, front


def _onward(tube: Framework, shape: Shape, brace: Brace) -> FloatArray:
    """From the brace before to this one; from the first to the one after it."""
    numbers = [each.number for each in tube.braces]
    at = numbers.index(brace.number)
    first, second = (at - 1, at) if at else (at, min(at + 1, len(numbers) - 1))
    middles = [
        np.mean([shape.at[joint] for joint in tube.braces[i].section], axis=0)
        for i in (first, second)
    ]
    return np.asarray(middles[1] - middles[0])


def standing_seat(shape: Shape, joints: Sequence[str], body: Sequence[str]) -> Camera:
    """The seat before some joints of what is built as it stands: outside the piece, in front
    of them, eyes above that course of the work. Up is drawn upwards.

    `body` are the joints of the part that they are of; joints all round it are seen from its
    front, one at its lowest or highest point from above.
    """
    spots = np.array([shape.at[joint] for joint in joints])
    whole = np.array([shape.at[joint] for joint in body])
    low, high = np.min(whole, axis=0), np.max(whole, axis=0)
    away = np.mean(spots, axis=0) - (low + high) / 2
    away[1] = 0.0
    spread = (high - low)[[0, 2]]
    thin = int(np.argmin(spread))
    if spread[thin] < FLAT * np.max(spread):  # a wall: one stands before one of its faces
        level = np.zeros(3)
        level[0 if thin == 0 else 2] = -1.0 if away[0 if thin == 0 else 2] < -1e-6 else 1.0
    elif np.linalg.norm(away) > ASIDE * np.max(spread):
        level = _unit(away)
    else:
        level = np.array([0.0, 0.0, 1.0])
    off = np.linalg.norm(spots[:, [0, 2]] - ((low + high) / 2)[[0, 2]], axis=1)
    at_pole = spread[thin] >= FLAT * np.max(spread) and float(off.max()) <= ASIDE * np.max(spread)
    down = np.radians(OVER_POLE_DEG if at_pole else DOWN_DEG)
    direction = level * np.cos(down) + np.array([0.0, np.sin(down), 0.0])
    return Camera(_vector(direction), (0.0, 1.0, 0.0), OVER_POLE if at_pole else STANDING)


def seat_before(framework: Framework, shape: Shape, joints: Sequence[str]) -> Camera:
    """The seat before joints that no brace of their own reaches: in a tube that of the brace
    nearest to them, over what lies on its back, else before them as they stand."""
    parts = {id(part): part for part in map(framework.built_with, joints)}
    (part, *others) = parts.values()
    if not others and not part.braces and laid_in_figure(part):
        return _beside(shape, joints, part.joints)
    if (
        _lie(framework, list(parts.values()), shape)
        if others
        else not part.braces and lies_built(part, shape)
    ):
        return LOOKING_DOWN
    if others or not part.braces:
        # of parts that are tied, one stands before the one that takes least room
        body = min(parts.values(), key=lambda one: _room(shape, one.joints))
        return standing_seat(shape, joints, body.joints)
    middle = np.mean([shape.at[joint] for joint in joints], axis=0)

    def away(brace: Brace) -> float:
        section = np.mean([shape.at[joint] for joint in brace.section], axis=0)
        return float(np.linalg.norm(section - middle))

    return open_end_seat(framework, shape, min(part.braces, key=away))


def _beside(shape: Shape, joints: Sequence[str], body: Sequence[str]) -> Camera:
    """The seat at the nearer side, left or right, of a part that lies front up, by some of its
    joints; front is drawn upwards."""
    middles = [np.mean([shape.at[joint] for joint in some], axis=0) for some in (joints, body)]
    side = 1.0 if middles[0][0] > middles[1][0] else -1.0
    rise = np.radians(ABOVE_DEG)
    front = np.array([0.0, 0.0, 1.0])
    return Camera(
        _vector(front * np.sin(rise) + _RIGHT * side * np.cos(rise)), (0.0, 0.0, 1.0), BESIDE
    )


def _lie(framework: Framework, parts: Sequence[Framework], shape: Shape) -> bool:
    """Whether parts are tied as they lie on their backs: none of them is built standing."""
    standing = any(in_courses(own) and not lies_built(own, shape) for own in parts)
    return lies_built(framework, shape) and not standing


def _room(shape: Shape, joints: Sequence[str]) -> float:
    """How long the diagonal is of what joints take up on the floor; metres."""
    plan = np.array([shape.at[joint] for joint in joints])[:, [0, 2]]
    return float(np.linalg.norm(np.ptp(plan, axis=0)))


# A part thinner than this share of its width is a wall; joints further than the other share of
# it from its middle are on one side of it.
FLAT, ASIDE = 0.6, 0.1


def _unit(vector: FloatArray) -> FloatArray:
    return np.asarray(vector / max(float(np.linalg.norm(vector)), 1e-12))


def _vector(value: FloatArray) -> Vector:
    return (float(value[0]), float(value[1]), float(value[2]))
