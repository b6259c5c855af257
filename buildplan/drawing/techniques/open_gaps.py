"""A joint from inside the piece, the same side up as from outside: the knot of its lock, and the
two gaps between balloons, numbered, through which the rounds go out."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from buildplan.drawing.bodies import Scene, lock_centres
from buildplan.drawing.camera import Camera, PaperView, fit
from buildplan.drawing.line_art import INK, PAPER, smooth
from buildplan.drawing.lock_gaps import gap_middle, lock_gaps
from buildplan.drawing.marks import Circle, Ink, Inset, Label, Mark, Picture, Point
from buildplan.drawing.scene import body_marks
from buildplan.drawing.techniques.held_locks import from_outside
from buildplan.drawing.techniques.props import Strand, knot, palette, signs, weave
from buildplan.framework.model import Framework
from buildplan.shape.model import Shape

NECK = 4.0
# Of half a view: how far out a neck goes behind the balloons, and where a gap's number stands.
OUT, NUMBER = 0.5, 0.8
NUMBER_PT, DISC_PT = 8.0, 5.4
SAME_WAY = 0.8  # cosine: gaps of which a view shows no two, where all balloons lie in one plane
HIDDEN = Ink(stroke=INK, width=0.9, dash=(2.5, 2.0))


def joint_inside(
    framework: Framework,
    shape: Shape,
    joint: str,
    about: Point,
    half: float,
    plan: Camera | None = None,
) -> list[Mark]:
    """The joint in a square about a point, `half` of its size each side; what is behind it, the
    rounds and the way to them, dashed. One that lies flat on a `plan` is turned as there."""
    size, colour = 2 * half, palette(framework).lock
    camera = from_inside(framework, shape, joint, plan)
    scene, view = close_by(framework, shape, joint, camera, half)
    corner = (about[0] - half, about[1] - half)
    drawn = Picture(size, size, tuple(body_marks(scene, view, size, size)), "")
    place = next(i for i, lock in enumerate(framework.locks) if lock.joint == joint)
    rounds = lock_centres(framework, shape)[place][::-1]
    spots, _ = view.place(np.vstack([shape.at[joint], rounds]))
    middle, *ends = (_shifted(spot, corner) for spot in spots)
    radius = view.scale * framework.balloons[framework.locks[place].balloon].gauge_m / 2
    found: list[Mark] = [Inset(drawn, corner)]
    necks, numbers = [], []
    ways = _ways_out(framework, shape, joint, view)
    if len(ways) < 2 or math.cos(ways[0] - ways[1]) > SAME_WAY:
        ways = [_way(middle, end) for end in ends]
    for number, (end, way) in enumerate(zip(ends, ways, strict=True), 1):
        out = _off(middle, way, OUT * half)
        found += [Circle(end, radius, HIDDEN), smooth([out, _between(out, end), end], HIDDEN)]
        necks.append(out)
        numbers += _number(_off(middle, way, NUMBER * half), number)
    strand = Strand(((*necks[0], 0), (*middle, 0), (*necks[1], 0)), colour, NECK)
    return [*found, *weave([strand]), *knot(middle, 0, colour, 3.4), *numbers]


def _ways_out(framework: Framework, shape: Shape, joint: str, view: PaperView) -> Sequence[float]:
    """The middles of the gaps of the two rounds on a view, radians; none where fewer balloons meet
    than have gaps between them."""
    gaps = lock_gaps(framework, shape, {joint}).get(joint, ())
    ways = {}
    for id_ in framework.links_at[joint]:
        link = framework.link[id_]
        other = link.finish if link.start == joint else link.start
        (start, end), _ = view.place(np.array([shape.at[joint], shape.at[other]]))
        ways[id_] = _way((float(start[0]), float(start[1])), (float(end[0]), float(end[1])))
    return [gap_middle(ways, gap) for gap in gaps]


def _number(at: Point, number: int) -> list[Mark]:
    disc = Circle(at, DISC_PT, Ink(INK, PAPER, 0.8))
    return [
        disc,
        Label((at[0], at[1] - 0.36 * NUMBER_PT), str(number), NUMBER_PT, PAPER, bold=True),
    ]


def _way(start: Point, end: Point) -> float:
    return math.atan2(end[1] - start[1], end[0] - start[0])


def _off(at: Point, way: float, far: float) -> Point:
    return at[0] + far * math.cos(way), at[1] + far * math.sin(way)


def _between(one: Point, other: Point) -> Point:
    return (one[0] + other[0]) / 2, (one[1] + other[1]) / 2


def _shifted(spot: np.ndarray, corner: Point) -> Point:
    return corner[0] + float(spot[0]), corner[1] + float(spot[1])


def from_inside(
    framework: Framework, shape: Shape, joint: str, plan: Camera | None = None
) -> Camera:
    """Straight at a joint from inside, the same side up as from outside (`from_outside`)."""
    outside = from_outside(framework, shape, joint, plan)
    x, y, z = outside.direction
    return replace(outside, direction=(-x, -y, -z), name="inside")


def close_by(
    framework: Framework, shape: Shape, joint: str, camera: Camera, half: float
) -> tuple[Scene, PaperView]:
    """The balloons of a joint, and how they are seen in a square `half` of its size each side."""
    scene = Scene(
        framework, shape, done_links=frozenset(framework.links_at[joint]), patterns=signs(framework)
    )
    bodies = scene.bodies
    return scene, fit(camera, bodies.centre, bodies.radius, 2 * half, 2 * half, margin=3.5)
