"""Where the joints and balloons of a cell's diagram lie on paper.

The cell is seen from the builder's seat at the brace that is tied last (`seat.py`), as the
picture beside it: the same joint lies in the same place in both.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.camera import Camera
from buildplan.drawing.cell_plan import Corner, run_plan
from buildplan.drawing.line_art import between
from buildplan.drawing.map_layout import side_of
from buildplan.drawing.map_style import joint_radius
from buildplan.drawing.marks import Point
from buildplan.drawing.seat import held_joints, leaves_out, seat_across, seat_toward
from buildplan.framework.model import Brace, Cell, Framework, Link

# how far back each chain lies: 0 front, 1 back
DEPTHS = {2: (0.0, 0.0), 3: (0.0, 0.5, 1.0), 4: (0.0, 0.0, 1.0, 1.0)}
UP = np.array([0.0, 0.0, 1.0])  # to the front of a piece that lies front up
STUB = 0.38  # how much of a neighbouring balloon is shown
THICKEST = 24.0
DISC_GAP = 1.5
FURTHER_ROUND_DEG = 16.0
PUSHES, YIELD = 60, 0.3
EDGE = 3.0  # bare paper round the diagram

DeepPoint = tuple[Point, float]  # a place of the plan or of the paper, and how far back it lies


@dataclass(frozen=True)
class Stub:
    """Where a chain goes on beyond the cell: from a joint, so far, at a depth."""

    start: Point
    end: Point
    depth: float


@dataclass(frozen=True)
class CellLayout:
    """A cell on paper, in points: the middles of its joints' discs and how far back each joint
    lies, the stubs of its neighbours, how thick balloons are drawn, and its links."""

    spots: Mapping[str, Point]
    depths: Mapping[str, float]
    stubs: tuple[Stub, ...]
    thick: float
    links: tuple[Link, ...]

    def depth(self, link: Link) -> float:
        """How far back a link lies."""
        return (self.depths[link.start] + self.depths[link.finish]) / 2


def newest_brace(framework: Framework, cell: Cell) -> Brace:
    """The brace of a cell that is tied last: of a ring's last cell it is the first."""
    return framework.brace[max(cell.first, cell.second)]


def corner_at(framework: Framework, brace: Brace) -> Cell | None:
    """The corner that a brace finishes and at which it leaves joints out, if there is one."""
    finished = [
        cell
        for cell in framework.cells
        if leaves_out(cell) and newest_brace(framework, cell).number == brace.number
    ]
    return finished[-1] if finished else None


def lay_cell(
    framework: Framework, cell: Cell, size: tuple[float, float], *, mirrored: bool
) -> CellLayout:
    """Lay a cell out on paper of a size in points; `mirrored` in a part that is built left to
    right."""
    joints, stubs = _plan(framework, cell)
    seat = _seat(framework, cell, joints)
    across = -1.0 if mirrored else 1.0

    def flat(at: Point, depth: float) -> DeepPoint:
        """Where a place of the plan is seen, and how far back it lies."""
        ((right, up, toward),) = np.array([[*at, -depth]]) @ seat.axes.T
        return (across * float(right), float(up)), -float(toward)

    laid = {joint: flat(*spot) for joint, spot in joints.items()}
    stub_ends = [
        (flat(a, depth)[0], flat(between(a, b, STUB), depth)[0], flat(a, depth)[1])
        for a, b, depth in stubs
    ]
    radius = joint_radius(framework)
    seen = [*(at for at, _ in laid.values()), *(end for _, end, _ in stub_ends)]
    scale, shift = _fit(seen, size, max(radius, THICKEST / 2 + 2) + EDGE)

    def paper(point: Point) -> Point:
        return (point[0] * scale + shift[0], point[1] * scale + shift[1])

    # slimmer than balloons are, so that the plan shows
    thick = min(scale * 0.26, THICKEST)
    links = [link for link in framework.links if {link.start, link.finish} <= joints.keys()]
    newest = newest_brace(framework, cell).links  # it keeps its place
    placed = {joint: paper(at) for joint, (at, _) in laid.items()}
    return CellLayout(
        _pushed_apart(placed, [link for link in links if link.id in newest], radius, thick / 2),
        {joint: depth for joint, (_, depth) in laid.items()},
        tuple(Stub(paper(start), paper(end), depth) for start, end, depth in stub_ends),
        thick,
        tuple(links),
    )


def _seat(framework: Framework, cell: Cell, joints: Mapping[str, DeepPoint]) -> Camera:
    """The seat at the newest brace, as `brace_seat` has it of the real shape."""
    first, second = framework.brace[cell.first], framework.brace[cell.second]
    newest = newest_brace(framework, cell)
    (outer, _), (inner, _) = joints[newest.section[0]], joints[newest.section[1]]
    outside = np.array([outer[0] - inner[0], outer[1] - inner[1], 0.0])
    outside /= np.linalg.norm(outside)
    along = np.cross(outside, UP)
    run = np.zeros(3)
    for brace, sign in ((first, -1), (second, 1)):
        for joint in brace.section[:2]:
            run[:2] += sign * np.array(joints[joint][0])
    if along @ run < 0:
        along = -along
    if not leaves_out(cell):
        return seat_toward(outside, along, UP)
    held, skipped = (
        np.mean([joints[joint][0] for joint in some], axis=0)
        for some in (held_joints(framework, cell), cell.skipped)
    )
    # a little further round than the picture, so that the far brace is not behind the near one
    turn = np.radians(FURTHER_ROUND_DEG) * (1 if cell.outer > cell.inner else -1)
    if len(newest.section) == 3:  # the other way, for its inner chain lies half way back
        turn = -turn
    (x, y), c, s = skipped - held, np.cos(turn), np.sin(turn)
    return seat_across(outside, along, UP, np.array([x * c - y * s, x * s + y * c, 0.0]))


def _plan(
    framework: Framework, cell: Cell
) -> tuple[dict[str, DeepPoint], list[tuple[Point, Point, float]]]:
    """Plan and depth of each joint of the cell, and of each neighbouring link's stub."""
    count, at = len(framework.cells), framework.cells.index(cell)
    before = [framework.cells[at - 1]] if framework.closed or at > 0 else []
    after = [framework.cells[(at + 1) % count]] if framework.closed or at + 1 < count else []
    corners = run_plan([*before, cell, *after], len(before))
    start = (before[0].outer, before[0].inner) if before else (0, 0)
    section = framework.brace[cell.first].section
    joints: dict[str, DeepPoint] = {}
    stubs = []
    for place, long in enumerate(framework.chains):
        side, depth = side_of(long), DEPTHS[len(framework.chains)][place]
        first = long.chain.joints.index(section[place])
        advance = (cell.outer, cell.inner)[side]
        for step in range(advance + 1):
            joint = long.chain.joints[(first + step) % len(long.chain.joints)]
            joints[joint] = (corners[side, start[side] + step], depth)
        for end, way in ((start[side], -1), (start[side] + advance, 1)):
            beyond: Corner = (side, end + way)
            if beyond in corners:
                stubs.append((corners[side, end], corners[beyond], depth))
    return joints, stubs


def _pushed_apart(
    placed: Mapping[str, Point], links: Sequence[Link], radius: float, half: float
) -> dict[str, Point]:
    """Places of joints' discs, moved as little as it takes for none to touch another, or a
    balloon `half` as wide that does not end at it."""
    joints = list(placed)
    at = {joint: np.array(spot) for joint, spot in placed.items()}
    for _ in range(PUSHES):
        before = dict(at)
        for i, one in enumerate(joints):
            for other in joints[:i]:
                push = _push(at[one] - at[other], 2 * radius + DISC_GAP)
                at[one], at[other] = at[one] + push / 2, at[other] - push / 2
            for link in links:
                if one not in (link.start, link.finish):
                    start, finish = at[link.start], at[link.finish]
                    run = finish - start
                    share = float((at[one] - start) @ run / max(run @ run, 1e-9))
                    near = start + min(max(share, 0.0), 1.0) * run
                    at[one] = at[one] + YIELD * _push(at[one] - near, radius + half)
        if all(np.array_equal(before[joint], at[joint]) for joint in joints):
            break  # nothing touches any more
    return {joint: (float(x), float(y)) for joint, (x, y) in at.items()}


def _push(run: FloatArray, least: float) -> FloatArray:
    """What is missing of a distance, along the way apart."""
    apart = float(np.hypot(*run))
    way = run / apart if apart > 1e-6 else np.array([1.0, 0.0])
    return way * max(least - apart, 0.0)


def _fit(points: Sequence[Point], size: tuple[float, float], margin: float) -> tuple[float, Point]:
    xs, ys = [p[0] for p in points], [p[1] for p in points]
    wide, tall = max(max(xs) - min(xs), 1e-6), max(max(ys) - min(ys), 1e-6)
    scale = min((size[0] - 2 * margin) / wide, (size[1] - 2 * margin) / tall)
    shift = (
        size[0] / 2 - scale * (max(xs) + min(xs)) / 2,
        size[1] / 2 - scale * (max(ys) + min(ys)) / 2,
    )
    return scale, shift
