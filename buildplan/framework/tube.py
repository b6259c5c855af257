"""The tube: long chains along a course of cells, braced at every section.

Section k lies before cell k. Its joints are those that the outer chains have reached by the
sum of the outer advances and the inner chains by the sum of the inner advances, so that two
neighbouring sections share the joints on a side that does not advance.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import NamedTuple

from buildplan.framework.cells import CellKind
from buildplan.framework.chain_roles import INNER, OUTER, ChainRole, Layer
from buildplan.framework.ends import start_end
from buildplan.framework.locks import Lock
from buildplan.framework.model import (
    BalloonType,
    Brace,
    Cell,
    Chain,
    Framework,
    Link,
    LongChain,
    Role,
)


class Lane(NamedTuple):
    """Where a long chain of a tube runs: its letter, its side, and its layer, if it has a twin
    in the other."""

    letter: str
    role: ChainRole
    layer: Layer | None

    @property
    def side(self) -> int:
        """0 outside, 1 inside: its place in pairs of outer and inner advances."""
        return 0 if self.role == OUTER else 1


FRONT, BACK = Layer.FRONT, Layer.BACK
# the order is the order round a section
LAYOUTS: Mapping[int, tuple[Lane, ...]] = {
    2: (Lane("A", OUTER, None), Lane("B", INNER, None)),
    3: (Lane("A", OUTER, FRONT), Lane("B", INNER, None), Lane("C", OUTER, BACK)),
    4: (
        Lane("A", OUTER, FRONT),
        Lane("B", INNER, FRONT),
        Lane("C", INNER, BACK),
        Lane("D", OUTER, BACK),
    ),
}


def _twins(lanes: Sequence[Lane]) -> Mapping[str, str]:
    """The letter of the chain in the other layer, for each; its own, where there is none."""
    return {
        one.letter: other.letter
        for one in lanes
        for other in lanes
        if one.role == other.role and (one.layer is None or one.layer != other.layer)
    }


TWINS: Mapping[int, Mapping[str, str]] = {
    chains: _twins(lanes) for chains, lanes in LAYOUTS.items()
}


@dataclass(frozen=True)
class TubePlan:
    """What a tube is made of. `long` gives, for each chain letter, the balloons laid along
    that chain in turn, over and over; `extra` are further balloons (joint, joint, key); the other
    fields are keys of balloons."""

    closed: bool
    long: Mapping[str, Sequence[str]]
    brace: str
    single: str | None
    lock: str
    course: Sequence[CellKind]
    extra: Sequence[tuple[str, str, str]] = ()


@dataclass
class LinksMade:
    """Links as they are brought in; a link that two braces would both have is built once."""

    made: list[Link] = field(default_factory=list)
    between: dict[frozenset[str], str] = field(default_factory=dict)

    def chain(self, joints: Sequence[str], keys: Iterable[str], closed: bool, role: Role) -> Chain:
        """Bring a chain along `joints`; the closing link of a ring returns to the first."""
        ends = [*joints[1:], joints[0]] if closed else list(joints[1:])
        ids = []
        for i, (start, finish, key) in enumerate(zip(joints, ends, keys, strict=False)):
            link = Link(
                id=f"{start}-{finish}",
                balloon=key,
                role=role,
                start=start,
                finish=finish,
                start_end=start_end(i),
            )
            self.made.append(link)
            self.between[frozenset((start, finish))] = link.id
            ids.append(link.id)
        return Chain(tuple(joints), tuple(ids), closed)


def _cycle(keys: Sequence[str], count: int) -> list[str]:
    return [keys[i % len(keys)] for i in range(count)]


def _missing_chains(section: Sequence[str], links: LinksMade) -> tuple[list[list[str]], list[str]]:
    """Runs of joints round a section that no earlier brace has linked, and the shared links.

    A run that comes all round repeats its first joint at its end.
    """
    count = len(section)
    sides = (
        [(section[i], section[(i + 1) % count]) for i in range(count)]
        if count > 2
        else [(section[0], section[1])]
    )
    shared = [links.between[frozenset(side)] for side in sides if frozenset(side) in links.between]
    open_sides = [frozenset(side) not in links.between for side in sides]
    if all(open_sides):
        return [[side[0] for side in sides] + [sides[-1][1]]], shared
    # start after a shared side, so that a run is never cut in two by the seam
    first = open_sides.index(False)
    runs: list[list[str]] = []
    for step in range(1, len(sides) + 1):
        i = (first + step) % len(sides)
        if not open_sides[i]:
            continue
        if runs and runs[-1][-1] == sides[i][0] and open_sides[i - 1]:
            runs[-1].append(sides[i][1])
        else:
            runs.append(list(sides[i]))
    return runs, shared


@dataclass(frozen=True)
class _Course:
    """Where the course has come to: for each section, the sum of the outer and of the inner
    advances before it."""

    plan: TubePlan
    reached: tuple[tuple[int, int], ...]
    totals: tuple[int, int]

    def label(self, letter: str, side: int, index: int) -> str:
        """Name of the joint at which a chain has advanced `index` balloons."""
        return f"{letter}{(index % self.totals[side] if self.plan.closed else index) + 1}"

    def section(self, number: int) -> tuple[str, ...]:
        """Joints of section `number`, from 0, round the tube."""
        layout = LAYOUTS[len(self.plan.long)]
        reached = self.reached[number]
        return tuple(self.label(lane.letter, lane.side, reached[lane.side]) for lane in layout)


def _walk_course(plan: TubePlan) -> _Course:
    reached = [(0, 0)]
    for cell in plan.course:
        outer, inner = reached[-1]
        reached.append((outer + cell.outer, inner + cell.inner))
    sections = reached[:-1] if plan.closed else reached
    return _Course(plan, tuple(sections), reached[-1])


def _lay_chains(course: _Course, links: LinksMade) -> tuple[LongChain, ...]:
    chains = []
    for letter, role, layer in LAYOUTS[len(course.plan.long)]:
        count = course.totals[0 if role == OUTER else 1]
        joints = [f"{letter}{i + 1}" for i in range(count + (not course.plan.closed))]
        keys = _cycle(course.plan.long[letter], count)
        chain = links.chain(joints, keys, course.plan.closed, Role.CHAIN)
        chains.append(LongChain(letter, role, layer, chain))
    return tuple(chains)


def tie_brace(number: int, section: tuple[str, ...], key: str, links: LinksMade) -> Brace:
    """The brace of a section: its links all round but for those that earlier braces brought."""
    runs, shared = _missing_chains(section, links)
    chains = []
    for run in runs:
        closed = len(run) > 2 and run[0] == run[-1]
        joints = run[:-1] if closed else run
        chains.append(links.chain(joints, [key] * (len(run) - 1), closed, Role.BRACE))
    return Brace(number, section, tuple(chains), tuple(shared))


def _cells(course: _Course) -> tuple[Cell, ...]:
    cells, count = [], len(course.reached)
    for k, cell in enumerate(course.plan.course):
        skipped = tuple(
            course.label(lane.letter, lane.side, course.reached[k][lane.side] + step)
            for lane in LAYOUTS[len(course.plan.long)]
            for step in range(1, (cell.outer, cell.inner)[lane.side])
        )
        second = (k + 1) % count + 1
        cells.append(Cell(k + 1, cell, k + 1, second, skipped))
    return tuple(cells)


def _tie_singles(
    plan: TubePlan, cells: Iterable[Cell], mirror: Mapping[str, str], links: LinksMade
) -> tuple[str, ...]:
    singles: list[str] = []
    for joint in (joint for cell in cells for joint in cell.skipped):
        twin = mirror[joint]
        if twin != joint and frozenset((joint, twin)) not in links.between:
            assert plan.single is not None, "a checked plan names its single"
            singles += links.chain((joint, twin), [plan.single], False, Role.SINGLE).links
    return tuple(singles)


def build_tube(name: str, balloons: Mapping[str, BalloonType], plan: TubePlan) -> Framework:
    """Build the framework of a tube.

    The plan must have been checked: known balloons, a single where joints are skipped and
    the chain has a twin, at least three balloons in each ring.
    """
    course, links = _walk_course(plan), LinksMade()
    chains = _lay_chains(course, links)
    braces = tuple(
        tie_brace(k + 1, course.section(k), plan.brace, links) for k in range(len(course.reached))
    )
    cells = _cells(course)
    twins = TWINS[len(chains)]
    mirror = {
        joint: twins[long.letter] + joint[1:] for long in chains for joint in long.chain.joints
    }
    singles = _tie_singles(plan, cells, mirror, links)
    extras = tuple(
        link
        for one, other, key in plan.extra
        for link in links.chain((one, other), (key,), False, Role.SINGLE).links
    )
    joints = tuple(joint for long in chains for joint in long.chain.joints)
    held = {
        joint
        for link in links.made
        if link.role is not Role.CHAIN
        for joint in (link.start, link.finish)
    }
    return Framework(
        name=name,
        balloons=dict(balloons),
        joints=joints,
        links=tuple(links.made),
        chains=chains,
        braces=braces,
        cells=cells,
        singles=(*singles, *extras),
        extras=frozenset(extras),
        locks=tuple(Lock(joint, plan.lock) for joint in joints if joint in held),
        closed=plan.closed,
        mirror=mirror,
    )
