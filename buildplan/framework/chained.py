"""A piece of chains that the pattern names itself, as rows, rings or zigzags."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from buildplan.framework.chain_roles import ChainRole, Layer
from buildplan.framework.ends import start_end
from buildplan.framework.model import BalloonType, Chain, Framework, Link, Lock, LongChain, Role
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
    chains: list[LongChain] = []
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
        chain = Chain(tuple(run.joints), tuple(ids), run.closed)
        chains.append(LongChain(letters(len(chains)), run.role, run.layer, chain))
    return Framework(
        name=name,
        balloons=dict(balloons),
        joints=tuple(ends),
        links=tuple(links),
        chains=tuple(chains),
        braces=(),
        cells=(),
        singles=(),
        locks=tuple(Lock(joint, lock) for joint, count in ends.items() if count > 2),
        closed=all(long.chain.closed for long in chains),
        mirror={},
        foot=tuple(foot),
    )
