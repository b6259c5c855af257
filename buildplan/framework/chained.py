"""A piece of chains that the pattern names itself, as rows, rings or zigzags."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import count

from buildplan.framework.chain_roles import ChainRole, Layer
from buildplan.framework.ends import start_end
from buildplan.framework.locks import Lock
from buildplan.framework.model import BalloonType, Chain, Framework, Link, LongChain, Role
from buildplan.framework.naming import letters


@dataclass(frozen=True)
class ChainRun:
    """A chain of one kind of balloon along `joints`, closed round to the first or open."""

    role: ChainRole
    layer: Layer | None
    joints: Sequence[str]
    balloon: str
    closed: bool


def build_chained(
    name: str,
    balloons: Mapping[str, BalloonType],
    runs: Sequence[ChainRun],
    lock: str,
    foot: Sequence[str],
) -> Framework:
    """Build a framework of `runs` that stands on the joints `foot`; runs too short to be a chain
    are left out.

    A lock goes on every joint where more than one knot is brought together, that is where more
    than two balloon ends meet. No two runs may have a balloon between the same two joints.
    """
    links: list[Link] = []
    chains: list[tuple[ChainRun, Chain]] = []
    ends: Counter[str] = Counter()
    for run in runs:
        if len(run.joints) < 2:
            continue
        following = [*run.joints[1:], run.joints[0]] if run.closed else list(run.joints[1:])
        ids = []
        for i, (start, finish) in enumerate(zip(run.joints, following, strict=False)):
            end = start_end(i)
            link = Link(f"{start}-{finish}", run.balloon, Role.CHAIN, start, finish, end)
            links.append(link)
            ids.append(link.id)
            ends.update((start, finish))
        chains.append((run, Chain(tuple(run.joints), tuple(ids), run.closed)))
    return Framework(
        name=name,
        balloons=dict(balloons),
        joints=tuple(ends),
        links=tuple(links),
        chains=_lettered(chains),
        braces=(),
        cells=(),
        singles=(),
        locks=tuple(Lock(joint, lock) for joint, meeting in ends.items() if meeting > 2),
        closed=all(chain.closed for _, chain in chains),
        mirror={},
        foot=tuple(foot),
    )


def _lettered(chains: Sequence[tuple[ChainRun, Chain]]) -> tuple[LongChain, ...]:
    """The chains, each named by a letter: a chain along A1, A2, A3 ... is chain A; those along
    joints of several letters have the letters that no joint has."""
    own = [_letter_of(chain.joints) for _, chain in chains]
    taken = {_sort(joint) for _, chain in chains for joint in chain.joints}
    free = (name for name in map(letters, count()) if name not in taken)
    named: list[LongChain] = []
    used: set[str] = set()
    for (run, chain), letter in zip(chains, own, strict=True):
        name = letter if letter and letter not in used else next(free)
        used.add(name)
        named.append(LongChain(name, run.role, run.layer, chain))
    return tuple(named)


def _letter_of(joints: Sequence[str]) -> str:
    """The letter that all of some joints begin with; empty where there are several."""
    sorts = {_sort(joint) for joint in joints}
    return sorts.pop() if len(sorts) == 1 else ""


def _sort(joint: str) -> str:
    return joint.rstrip("0123456789")
