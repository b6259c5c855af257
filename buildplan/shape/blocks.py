"""The blocks of an assembly: what is set down as one, upright as it was found by itself.

A block is a part, or the letters of a word, which keep the places at which they are drawn.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from buildplan.framework.chain_roles import Layer
from buildplan.framework.model import Framework, Part
from buildplan.shape.model import FloatArray, Shape

Spots = dict[str, FloatArray]
"""Where joints are, by their labels: x to the right, y up, z to the front, in metres."""

Partner = tuple[str, float, str]
"""A joint of another block, the length of what is between, and the own joint."""


@dataclass(frozen=True)
class Block:
    """`spots` are its joints, upright and facing the front; `flat` says that its back mirrors its
    front, `reads` that it is writing."""

    name: str
    parts: tuple[Part, ...]
    spots: Spots
    flat: bool

    @property
    def reads(self) -> bool:
        """Whether it is writing, to be seen from its front."""
        return any(part.framework.reads for part in self.parts)

    @property
    def part(self) -> str:
        """What the part is called that it is: of a word, what stands before its letters."""
        return self.name.rpartition(".")[0] or self.name if self.parts[0].drawing else self.name

    @property
    def mirrored(self) -> bool:
        """Whether it is built left to right."""
        return self.parts[0].mirrored

    @property
    def has_front(self) -> bool:
        """Whether one side of it is its front."""
        return self.flat or all(self.faces)

    @cached_property
    def faces(self) -> tuple[tuple[str, ...], tuple[str, ...]]:
        """The joints of its front layer, and of its back layer; none where it has no layers."""
        chains = [long for part in self.parts for long in part.framework.chains]
        front, back = (
            tuple(joint for long in chains if long.layer is layer for joint in long.chain.joints)
            for layer in (Layer.FRONT, Layer.BACK)
        )
        return front, back

    def faces_front(self, placed: Mapping[str, FloatArray]) -> bool:
        """Whether its front layer is nearer the viewer where its joints are placed so."""
        front, back = self.faces
        if not front or not back:
            return True
        ahead = [np.mean([placed[joint][2] for joint in layer]) for layer in (front, back)]
        return bool(ahead[0] > ahead[1])

    def is_of(self, part: str) -> bool:
        """Whether it is the part of that name, or one of those that it is made of."""
        return self.parts[0].name == part or self.parts[0].name.startswith(f"{part}.")


def blocks_of(framework: Framework, shapes: Sequence[Shape]) -> tuple[Block, ...]:
    """The blocks of an assembly; `shapes` are those of its parts by themselves, upright."""
    together: dict[str, list[tuple[Part, Shape]]] = {}
    for part, shape in zip(framework.parts, shapes, strict=True):
        together.setdefault(part.drawing or part.name, []).append((part, shape))
    return tuple(_block(name, found) for name, found in together.items())


def _block(name: str, found: Sequence[tuple[Part, Shape]]) -> Block:
    spots: Spots = {}
    for part, shape in found:
        own = {joint: shape.at[joint] for joint in part.framework.joints}
        if part.drawing:
            laid = part.framework.laid
            # it stands on the floor, sideways where it is drawn
            aside = float(np.mean([laid[joint][0] - at[0] for joint, at in own.items()]))
            own = {joint: at + np.array([aside, 0.0, 0.0]) for joint, at in own.items()}
        way = np.array([-1.0 if part.mirrored else 1.0, 1.0, 1.0])
        spots |= {joint: at * way for joint, at in own.items()}
    return Block(
        name,
        tuple(part for part, _ in found),
        spots,
        all(shape.mirrored for _, shape in found),
    )


def partners_of(framework: Framework) -> Mapping[str, list[Partner]]:
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


def connected(
    start: Iterable[Block], blocks: Sequence[Block], partners: Mapping[str, list[Partner]]
) -> tuple[Block, ...]:
    """The blocks that ties hold together with those of `start`, in the order of `blocks`."""
    block_at = {joint: block.name for block in blocks for joint in block.spots}
    beside: dict[str, set[str]] = {block.name: set() for block in blocks}
    for own, others in partners.items():
        beside[block_at[own]].update(block_at[other] for other, _, _ in others)
    reached = {block.name for block in start}
    waiting = sorted(reached)
    while waiting:
        for name in sorted(beside[waiting.pop()] - reached):
            reached.add(name)
            waiting.append(name)
    return tuple(block for block in blocks if block.name in reached)
