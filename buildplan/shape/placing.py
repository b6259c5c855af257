"""Placing the parts of an assembly: each found by itself, upright, then set where its ties say.

A block may be turned about the upright axis and moved, no more: it is built standing. The turn and
the move that bring its tied joints nearest to those of the blocks before it are found by least
squares (in the plane: Kabsch 1976); where that leaves a choice, writing faces the front, and a
block goes where it is clearest of the others. The first that has a front and a back is set first,
facing the viewer.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np
from scipy.spatial import cKDTree

from buildplan.design.measures import Units, side_words
from buildplan.framework.model import Framework
from buildplan.language.messages import Measure, Message, message
from buildplan.shape.blocks import Block, Partner, Spots, blocks_of, partners_of
from buildplan.shape.kinds import ShapeKind
from buildplan.shape.model import FloatArray, Shape
from buildplan.source.problems import Problem
from buildplan.source.suggestions import to_try

MISFIT_SHARE = 0.35  # of a link: joints farther apart than this cannot be tied together
TURNING_SHARE = 0.3  # of a link: tied joints spread less than this say nothing of the turn
ON_FLOOR_SHARE = 0.3  # of a link: a foot this near the lowest is on the floor too
MOST_NAMED = 8  # joints that a problem names: where the first of the ties are


@dataclass(frozen=True)
class PlacedJoints:
    """Where every joint is (places, 3) before the parts pull at one another, the joints of the
    feet that are on the floor with how high each lies above it, half a balloon, and the ties that
    cannot be made as they are."""

    positions_m: FloatArray
    feet_m: Mapping[str, float]
    problems: tuple[Problem, ...]


@dataclass(frozen=True)
class _Way:
    """A block turned and moved: its joints, how far they miss those that they are tied to, how
    far its balloons are from those of other blocks, and whether it is writing seen from behind."""

    spots: Spots
    misses_m: Mapping[str, float]
    clear_m: float
    from_behind: bool

    @property
    def rank(self) -> tuple[float, bool, float]:
        """Least is best: the miss first, in steps of a centimetre, then the clearance."""
        missed = float(np.sqrt(np.mean(np.square(list(self.misses_m.values()) or [0.0]))))
        return round(missed, 2), self.from_behind, -self.clear_m


@dataclass(frozen=True)
class SetDown:
    """Blocks set down together: where their joints are, and what is wrong with their ties."""

    spots: Spots
    problems: tuple[Problem, ...]


def place_parts(framework: Framework, shapes: Sequence[Shape]) -> PlacedJoints:
    """Place the parts of `framework`; `shapes` are those of its parts by themselves, upright."""
    blocks = blocks_of(framework, shapes)
    down = set_down(blocks, partners_of(framework), link_m(framework))
    positions = np.zeros((len(framework.places), 3))
    met = np.zeros(len(framework.places))
    for joint in framework.joints:
        positions[framework.place_number[joint]] += down.spots[joint]
        met[framework.place_number[joint]] += 1
    positions = positions / met[:, None]
    if any(one.kind is ShapeKind.TIES_CANNOT_MEET for one in down.problems):
        # half way between joints that lie crosswise all are at one place
        first = {framework.place(joint): joint for joint in reversed(framework.joints)}
        positions = np.array([down.spots[first[place]] for place in framework.places])
    feet_m = _feet_m(shapes, down.spots, link_m(framework))
    return PlacedJoints(positions, feet_m, down.problems)


def set_down(
    blocks: Sequence[Block], partners: Mapping[str, Sequence[Partner]], a_link_m: float
) -> SetDown:
    """Set blocks down where their ties say; `a_link_m` is the length of a usual link."""
    order = {block.name: block for block in blocks}
    first = next((block for block in blocks if block.has_front), blocks[0])
    placed: Spots = dict(order.pop(first.name).spots)
    in_plane = first.flat
    problems = [*_backwards(first, placed)]
    while order:
        waiting = list(order.values())
        block = max(waiting, key=lambda one: sum(p in placed for p, _, _ in _of(partners, one)))
        del order[block.name]
        ties = [one for one in _of(partners, block) if one[0] in placed]
        ways = _ways(block, ties, placed, in_plane and block.flat, a_link_m)
        best = min(ways, key=lambda way: way.rank)
        placed.update(best.spots)
        in_plane = in_plane and block.flat
        apart = [j for j, miss in best.misses_m.items() if miss > MISFIT_SHARE * a_link_m]
        if apart:
            problems.append(_misfit(apart, best, partners, placed))
        else:
            problems += _backwards(block, placed)
    return SetDown(placed, tuple(problems))


def _of(partners: Mapping[str, Sequence[Partner]], block: Block) -> Iterator[Partner]:
    for joint in block.spots:
        yield from partners.get(joint, ())


def _ways(
    block: Block, ties: Sequence[Partner], placed: Spots, in_plane: bool, a_link_m: float
) -> Iterator[_Way]:
    """Ways to set a block: turned as its ties say or by half a turn, and moved so that they meet;
    balloons between parts may go off in any of the six directions."""
    own = np.array([block.spots[joint] for _, _, joint in ties]).reshape(-1, 3)
    goal = np.array([placed[other] for other, _, _ in ties]).reshape(-1, 3)
    length = np.array([gap for _, gap, _ in ties])
    others = cKDTree(np.array(list(placed.values())))
    names = list(block.spots)
    points = np.array([block.spots[joint] for joint in names])
    heading = np.vstack([np.eye(3), -np.eye(3)]) if length.any() else np.zeros((1, 3))
    tied = {joint for _, _, joint in ties}
    free = np.array([joint not in tied for joint in names])
    for towards in heading:
        ends = goal + length[:, None] * towards
        for turn in _turns(own, ends, in_plane, a_link_m):
            move = (ends - own @ turn.T).mean(axis=0) if len(ties) else np.zeros(3)
            moved = dict(zip(names, points @ turn.T + move, strict=True))
            apart = np.linalg.norm(own @ turn.T + move - ends, axis=1)
            misses: dict[str, float] = {}
            for (_, _, joint), miss in zip(ties, apart, strict=True):
                misses[joint] = max(float(miss), misses.get(joint, 0.0))
            spots = np.array(list(moved.values()))
            clear = others.query(spots[free])[0].min() if free.any() else 0.0
            behind = block.reads and not block.faces_front(moved)
            yield _Way(moved, misses, float(clear), behind)


def _backwards(block: Block, placed: Spots) -> Iterator[Problem]:
    """Writing that is seen from behind, or is built left to right."""
    if not block.reads:
        return
    if not block.faces_front(placed):
        yield Problem(
            ShapeKind.READS_BACKWARDS,
            message("{part} reads from the back: its ties turn it round", part=block.part),
            to_try(
                message(
                    "tie its joints on the left to what is on the left, and those of its front to "
                    "the front, or say what it stands on (on: its part) in place of its ties"
                )
            ),
            path="build.assembly.ties",
        )
    elif block.mirrored:
        yield Problem(
            ShapeKind.READS_BACKWARDS,
            message("{part} is writing, and is built left to right", part=block.part),
            to_try(message("take {key} out", key="mirrored")),
            path="build.assembly.parts",
        )


def link_m(framework: Framework) -> float:
    """The mean length of the kinds of links that are in it, in metres."""
    used = {link.balloon for link in framework.links}
    kinds = [one.tie_to_tie_m for key, one in framework.balloons.items() if key in used]
    return float(np.mean(kinds))


def _turns(own: FloatArray, goal: FloatArray, flat: bool, a_link_m: float) -> Iterator[FloatArray]:
    """Rotations (3, 3) about y to try; a flat piece keeps its plane."""
    angles = [0.0, np.pi]
    if len(own) > 1:
        a, b = own[:, [0, 2]] - own[:, [0, 2]].mean(axis=0), goal[:, [0, 2]]
        b = b - b.mean(axis=0)
        if min(np.ptp(a, axis=0).max(), np.ptp(b, axis=0).max()) > TURNING_SHARE * a_link_m:
            # turning by t takes (x, z) to (x cos t + z sin t, z cos t - x sin t)
            best = np.arctan2((a[:, 1] * b[:, 0] - a[:, 0] * b[:, 1]).sum(), (a * b).sum())
            angles = [*angles, float(best)] if not flat else angles
    for angle in angles:
        cos, sin = np.cos(angle), np.sin(angle)
        yield np.array([[cos, 0.0, sin], [0.0, 1.0, 0.0], [-sin, 0.0, cos]])


def _misfit(
    apart: Sequence[str], way: _Way, partners: Mapping[str, Sequence[Partner]], placed: Spots
) -> Problem:
    worst = max(way.misses_m.values())
    named = [
        joint
        for own in apart
        for joint in (own, *(other for other, _, _ in partners[own] if other in placed))
    ]
    return Problem(
        ShapeKind.TIES_CANNOT_MEET,
        cannot_meet(worst, "cm"),
        to_try(
            message(
                "name the joints of one part the other way round, tie other joints, or give the"
                " parts sizes that meet there"
            )
        ),
        path="build.assembly.ties",
        joints=tuple(dict.fromkeys(named))[:MOST_NAMED],
    )


def cannot_meet(distance_m: float, units: Units) -> Message:
    """That joints stay so far apart, in the reader's units."""
    return message(
        "the joints that these ties bring together cannot meet: with the parts upright they stay "
        "{distance} apart",
        distance=Measure(side_words(distance_m, units), 100 * distance_m),
    )


def told_in(units: Units, problems: Sequence[Problem]) -> tuple[Problem, ...]:
    """The problems of a shape, their lengths in the reader's units."""
    return tuple(
        replace(one, message=cannot_meet(distance.number / 100, units))
        if isinstance(distance := dict(one.message.values).get("distance"), Measure)
        else one
        for one in problems
    )


def _feet_m(shapes: Sequence[Shape], placed: Spots, a_link_m: float) -> Mapping[str, float]:
    """The feet of those parts that come down to the floor, and how high they lie above it: feet of
    smaller balloons lie lower."""
    lifts, heights = {}, {}
    for shape in shapes:
        own = shape.standing.feet
        height = float(np.mean([shape.at[joint][1] for joint in own])) if own else 0.0
        for joint in own:
            heights[joint] = height
            lifts[joint] = float(placed[joint][1]) - height
    floor = min(lifts.values())
    near = ON_FLOOR_SHARE * a_link_m
    return {joint: heights[joint] for joint, lift in lifts.items() if lift < floor + near}
