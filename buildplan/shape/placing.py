"""Placing the parts of an assembly: each found by itself, upright, then set where its ties say.

A part may be turned about the upright axis and moved, no more: it is built standing. The turn and
the move that bring its tied joints nearest to those of the parts before it are found by least
squares (in the plane: Kabsch 1976); where that leaves a choice, the part goes where it is clearest
of the others. Where a pattern draws the whole, parts stand beside one another as they are drawn.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from scipy.spatial import cKDTree

from buildplan.framework.model import Framework, Part
from buildplan.language.messages import Decimal, message
from buildplan.shape.bodies import bodies_of
from buildplan.shape.kinds import ShapeKind
from buildplan.shape.model import FloatArray, Shape
from buildplan.source.problems import Problem
from buildplan.source.suggestions import by_hand

MISFIT_SHARE = 0.35  # of a link: joints farther apart than this cannot be tied together
TURNING_SHARE = 0.3  # of a link: tied joints spread less than this say nothing of the turn
ON_FLOOR_SHARE = 0.3  # of a link: a foot this near the lowest is on the floor too

Spots = dict[str, FloatArray]


@dataclass(frozen=True)
class PlacedJoints:
    """Where every joint is (places, 3) before the parts pull at one another, the joints that are
    on the floor, and the ties that cannot be made."""

    positions_m: FloatArray
    feet: tuple[str, ...]
    problems: tuple[Problem, ...]


@dataclass(frozen=True)
class _Way:
    """A part turned and moved: its joints, how far they miss those that they are tied to, and how
    far its balloons are from those of other parts."""

    spots: Spots
    misses_m: Mapping[str, float]
    clear_m: float

    @property
    def rank(self) -> tuple[float, float]:
        """Least is best: the miss first, in steps of a centimetre, then the clearance."""
        missed = float(np.sqrt(np.mean(np.square(list(self.misses_m.values()) or [0.0]))))
        return round(missed, 2), -self.clear_m


def place_parts(framework: Framework, shapes: Sequence[Shape]) -> PlacedJoints:
    """Place the parts of `framework`; `shapes` are those of its parts by themselves, upright."""
    link_m = float(bodies_of(framework).length_m.mean())
    flat = all(shape.mirrored for shape in shapes)
    partners = _partners(framework)
    waiting = {
        part.name: (part, _spots(part, shape))
        for part, shape in zip(framework.parts, shapes, strict=True)
    }
    placed: Spots = {}
    problems: list[Problem] = []
    if framework.laid:
        for _, spots in waiting.values():
            placed.update(_as_drawn(spots, framework.laid))
        waiting = {}
    else:
        placed.update(waiting.pop(framework.parts[0].name)[1])
    while waiting:
        name = max(waiting, key=lambda n: sum(p in placed for p, _, _ in _of(partners, waiting[n])))
        part, spots = waiting.pop(name)
        ways = list(_ways(part, spots, placed, partners, framework, flat))
        best = min(ways, key=lambda way: way.rank)
        placed.update(best.spots)
        apart = [j for j, miss in best.misses_m.items() if miss > MISFIT_SHARE * link_m]
        if apart:
            problems.append(_misfit(apart, best, partners, placed))
    positions = np.zeros((len(framework.places), 3))
    met = np.zeros(len(framework.places))
    for joint in framework.joints:
        positions[framework.place_number[joint]] += placed[joint]
        met[framework.place_number[joint]] += 1
    return PlacedJoints(positions / met[:, None], _feet(shapes, placed, link_m), tuple(problems))


def _as_drawn(spots: Spots, laid: Mapping[str, tuple[float, float, float]]) -> Spots:
    """A part that stands on the floor, moved sideways to where the whole is drawn."""
    x = float(np.mean([laid[joint][0] - at[0] for joint, at in spots.items()]))
    return {joint: at + np.array([x, 0.0, 0.0]) for joint, at in spots.items()}


def _spots(part: Part, shape: Shape) -> Spots:
    way = np.array([-1.0 if part.mirrored else 1.0, 1.0, 1.0])
    return {joint: shape.at[joint] * way for joint in part.framework.joints}


Partner = tuple[str, float, str]  # joint of the other part, length between, own joint


def _partners(framework: Framework) -> Mapping[str, list[Partner]]:
    """What every joint is tied to in other parts, and how long what is between is."""
    found: dict[str, list[Partner]] = {}
    for tie in framework.ties:
        for one in tie.joints:
            found.setdefault(one, []).extend((o, 0.0, one) for o in tie.joints if o != one)
    within = {link for part in framework.parts for link in part.framework.link}
    for link in framework.links:
        if link.id not in within:
            length = framework.balloons[link.balloon].tie_to_tie_m
            found.setdefault(link.start, []).append((link.finish, length, link.start))
            found.setdefault(link.finish, []).append((link.start, length, link.finish))
    return found


def _of(partners: Mapping[str, list[Partner]], waiting: tuple[Part, Spots]) -> Iterator[Partner]:
    for joint in waiting[1]:
        yield from partners.get(joint, ())


def _ways(
    part: Part,
    spots: Spots,
    placed: Spots,
    partners: Mapping[str, list[Partner]],
    framework: Framework,
    flat: bool,
) -> Iterator[_Way]:
    """Ways to set a part: turned as its ties say or by half a turn, and moved so that they meet;
    balloons between parts may go off in any of the six directions."""
    ties = [one for one in _of(partners, (part, spots)) if one[0] in placed]
    own = np.array([spots[joint] for _, _, joint in ties]).reshape(-1, 3)
    goal = np.array([placed[other] for other, _, _ in ties]).reshape(-1, 3)
    length = np.array([gap for _, gap, _ in ties])
    others = cKDTree(np.array(list(placed.values())))
    names = list(spots)
    points = np.array([spots[joint] for joint in names])
    heading = np.vstack([np.eye(3), -np.eye(3)]) if length.any() else np.zeros((1, 3))
    tied = {joint for _, _, joint in ties}
    free = np.array([joint not in tied for joint in names])
    for towards in heading:
        ends = goal + length[:, None] * towards
        for turn in _turns(own, ends, flat, float(_link_m(framework))):
            move = (ends - own @ turn.T).mean(axis=0) if len(ties) else np.zeros(3)
            set_down = points @ turn.T + move
            apart = np.linalg.norm(own @ turn.T + move - ends, axis=1)
            misses: dict[str, float] = {}
            for (_, _, joint), miss in zip(ties, apart, strict=True):
                misses[joint] = max(float(miss), misses.get(joint, 0.0))
            clear = others.query(set_down[free])[0].min() if free.any() else 0.0
            yield _Way(dict(zip(names, set_down, strict=True)), misses, float(clear))


def _link_m(framework: Framework) -> float:
    kinds = [one.tie_to_tie_m for one in framework.balloons.values() if one.kind.is_strut]
    return float(np.mean(kinds))


def _turns(own: FloatArray, goal: FloatArray, flat: bool, link_m: float) -> Iterator[FloatArray]:
    """Rotations (3, 3) about y to try; a flat piece keeps its plane."""
    angles = [0.0, np.pi]
    if len(own) > 1:
        a, b = own[:, [0, 2]] - own[:, [0, 2]].mean(axis=0), goal[:, [0, 2]]
        b = b - b.mean(axis=0)
        if min(np.ptp(a, axis=0).max(), np.ptp(b, axis=0).max()) > TURNING_SHARE * link_m:
            # turning by t takes (x, z) to (x cos t + z sin t, z cos t - x sin t)
            best = np.arctan2((a[:, 1] * b[:, 0] - a[:, 0] * b[:, 1]).sum(), (a * b).sum())
            angles = [*angles, float(best)] if not flat else angles
    for angle in angles:
        cos, sin = np.cos(angle), np.sin(angle)
        yield np.array([[cos, 0.0, sin], [0.0, 1.0, 0.0], [-sin, 0.0, cos]])


def _misfit(
    apart: Sequence[str], way: _Way, partners: Mapping[str, list[Partner]], placed: Spots
) -> Problem:
    worst = max(way.misses_m.values())
    named = [
        joint
        for own in apart
        for joint in (own, *(other for other, _, _ in partners[own] if other in placed))
    ]
    return Problem(
        ShapeKind.TIES_CANNOT_MEET,
        message(
            "the joints that these ties bring together cannot meet: with the parts upright they"
            " stay {distance} cm apart",
            distance=Decimal(100 * worst, 0),
        ),
        by_hand(
            message(
                "name the joints of one part the other way round, tie other joints, or give the"
                " parts sizes that meet there"
            )
        ),
        path="build.assembly.ties",
        joints=tuple(dict.fromkeys(named)),
    )


def _feet(shapes: Sequence[Shape], placed: Spots, link_m: float) -> tuple[str, ...]:
    """The feet of those parts that come down to the floor."""
    feet = [joint for shape in shapes for joint in shape.standing.feet]
    floor = min(placed[joint][1] for joint in feet)
    return tuple(j for j in feet if placed[j][1] < floor + ON_FLOOR_SHARE * link_m)
