"""The framework of a flat piece of cells: rings round it, front and back, braced where two meet.

It is as deep as one balloon. Its outlines (one outside, one round each hole) are rings of the front
and of the back; every side that two cells share is a brace's front, so that a junction is held by
a brace on each of its strokes. A joint that no brace reaches, at a corner or a free end, takes a
single from front to back.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Protocol

from buildplan.framework.chain_roles import INNER, OUTER, Layer
from buildplan.framework.locks import Lock
from buildplan.framework.model import BalloonType, Brace, Framework, LongChain, Role
from buildplan.framework.naming import letters as chain_letters
from buildplan.framework.tube import LinksMade, tie_brace
from buildplan.patterns.cell_outlines import Glyph

LOW = 0.15  # of a link: joints up to this above the lowest are the foot


class Inks(Protocol):
    """The balloons that a flat piece is made of: of its outlines, its braces and its locks."""

    @property
    def long(self) -> str: ...

    @property
    def brace(self) -> str: ...

    @property
    def lock(self) -> str: ...


def front_chains(drawn: Glyph) -> list[list[str]]:
    """The labels of the joints of the outlines, front only, ring by ring."""
    return [
        [f"{chain_letters(ring)}{place + 1}" for place in range(len(loop))]
        for ring, loop in enumerate(drawn.loops)
    ]


def flat_joints(drawn: Glyph) -> list[str]:
    """The labels of all joints, those of the front first."""
    own = front_chains(drawn)
    return [
        *(joint for ring in own for joint in ring),
        *(
            f"{chain_letters(len(own) + i)}{place + 1}"
            for i, ring in enumerate(reversed(own))
            for place in range(len(ring))
        ),
    ]


@dataclass(frozen=True)
class Labels:
    """The labels of joints by their numbers, front and back."""

    front: Mapping[int, str]
    back: Mapping[int, str]


def labelled(drawn: Glyph) -> Labels:
    """The outlines by letters, those of the front first and those of the back in reverse."""
    front, back = {}, {}
    rings = front_chains(drawn)
    for number, (loop, ring) in enumerate(zip(drawn.loops, rings, strict=True)):
        behind = chain_letters(2 * len(rings) - 1 - number)
        for place, (joint, label) in enumerate(zip(loop, ring, strict=True)):
            front[joint], back[joint] = label, f"{behind}{place + 1}"
    return Labels(front, back)


def build_flat(
    name: str, balloons: Mapping[str, BalloonType], inks: Inks, drawn: Glyph, x: float, reads: bool
) -> Framework:
    """The framework of what is drawn, its left edge at `x` links; `reads` says it is writing."""
    labels, links = labelled(drawn), LinksMade()
    layers = [
        (Layer.FRONT, labels.front, drawn.loops),
        (Layer.BACK, labels.back, drawn.loops[::-1]),
    ]
    chains: list[LongChain] = []
    for layer, label, loops in layers:
        for loop in loops:
            joints = [label[joint] for joint in loop]
            chain = links.chain(joints, [inks.long] * len(joints), True, Role.CHAIN)
            role = OUTER if loop is drawn.loops[0] else INNER
            chains.append(LongChain(chain_letters(len(chains)), role, layer, chain))
    braces: list[Brace] = []
    for number, (a, b) in enumerate(drawn.rungs, 1):
        section = (labels.front[a], labels.front[b], labels.back[b], labels.back[a])
        braces.append(tie_brace(number, section, inks.brace, links))
    braced = {joint for rung in drawn.rungs for joint in rung}
    singles: list[str] = []
    for joint in (joint for loop in drawn.loops for joint in loop if joint not in braced):
        ends = labels.front[joint], labels.back[joint]
        singles += links.chain(ends, [inks.brace], False, Role.SINGLE).links
    every = tuple(joint for long in chains for joint in long.chain.joints)
    return Framework(
        name=name,
        balloons=dict(balloons),
        joints=every,
        links=tuple(links.made),
        chains=tuple(chains),
        braces=tuple(braces),
        cells=(),
        singles=tuple(singles),
        locks=tuple(Lock(joint, inks.lock) for joint in every),
        closed=True,
        mirror={
            one: other
            for joint in labels.front
            for one, other in (
                (labels.front[joint], labels.back[joint]),
                (labels.back[joint], labels.front[joint]),
            )
        },
        foot=tuple(
            label[joint]
            for label in (labels.front, labels.back)
            for joint in label
            if drawn.at[joint].imag < LOW
        ),
        laid=dict(_laid(balloons, inks, drawn, labels, x)),
        reads=reads,
    )


def _laid(
    balloons: Mapping[str, BalloonType], inks: Inks, drawn: Glyph, labels: Labels, x: float
) -> Iterator[tuple[str, tuple[float, float, float]]]:
    link_m = balloons[inks.long].tie_to_tie_m
    half_m = balloons[inks.brace].tie_to_tie_m / 2
    for label, z in ((labels.front, half_m), (labels.back, -half_m)):
        for joint, at in enumerate(drawn.at):
            yield label[joint], ((at.real + x) * link_m, at.imag * link_m, z)
