"""The framework of a piece as frozen data: balloons, joints, chains, braces, singles, locks.

Everything later (shape, sequence, drawing, booklet) reads this and nothing of the file.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from functools import cached_property

from buildplan.framework.balloon_kinds import BalloonKind
from buildplan.framework.cells import CellKind
from buildplan.framework.chain_roles import ChainRole, Layer
from buildplan.framework.ends import End
from buildplan.framework.locks import Lock, Tie
from buildplan.language.messages import Message


class Role(StrEnum):
    """What a link balloon does in the piece."""

    CHAIN = "chain"
    BRACE = "brace"
    SINGLE = "single"


@dataclass(frozen=True)
class BalloonType:
    """One kind of balloon, lengths in metres.

    `gauge_m` is the diameter it is sized to. `tie_to_tie_m` is the length between the two
    knots of a built link (for a round: its gauge), `tie_within` the share of it that it may be off
    by: none where the file gave it. `finish` is how its rubber takes the light.
    """

    key: str
    kind: BalloonKind
    nominal_m: float
    gauge_m: float
    tie_to_tie_m: float
    tie_within: float
    colour: str
    label: str
    finish: str = "standard"

    @property
    def length_m(self) -> float:
        """How long its body is: from knot to knot, or as long as it is thick."""
        return self.tie_to_tie_m if self.kind.is_strut else self.gauge_m


@dataclass(frozen=True)
class Link:
    """One link balloon: the joint its neck is tied at and the joint its tail is tied at.

    `start` and `finish` are the same two joints in the order of the chain that it is part
    of; `id` names it by them, as `A1-A2`.
    """

    id: str
    balloon: str
    role: Role
    start: str
    finish: str
    start_end: End

    @property
    def neck(self) -> str:
        """Joint at which the neck is tied."""
        return self.start if self.start_end is End.NECK else self.finish

    @property
    def tail(self) -> str:
        """Joint at which the tail is tied."""
        return self.finish if self.start_end is End.NECK else self.start

    def end_at(self, joint: str) -> End:
        """Which end is tied at `joint`, one of the link's two joints."""
        return End.NECK if joint == self.neck else End.TAIL


@dataclass(frozen=True)
class Chain:
    """Link balloons tied end to end; closed, it is a ring.

    Link `i` joins `joints[i]` to `joints[i + 1]`, round to `joints[0]` when closed. Links
    0-1, 2-3, ... are pairs, tied neck to neck; pairs meet tail to tail; when the number is
    odd the last link is not part of a pair.
    """

    joints: tuple[str, ...]
    links: tuple[str, ...]
    closed: bool

    @property
    def pairs(self) -> tuple[tuple[str, str], ...]:
        """The links that are tied neck to neck before the chain is made."""
        return tuple(zip(self.links[0::2], self.links[1::2], strict=False))

    @property
    def odd(self) -> str | None:
        """The link that is left when the others have been paired."""
        return self.links[-1] if len(self.links) % 2 else None


@dataclass(frozen=True)
class LongChain:
    """A chain along the whole piece: its letter, what it is in the piece, and the layer that it
    lies in, where the piece has layers."""

    letter: str
    role: ChainRole
    layer: Layer | None
    chain: Chain

    @property
    def where(self) -> Message:
        """What it is and where it lies, as pages and drawings call it: `outer front`."""
        return self.role.words[self.layer]


@dataclass(frozen=True)
class Brace:
    """What is tied across the long chains at one section of a tube.

    `section` names the section's joints in order round the tube. `chains` are the links
    this brace brings, usually one short chain, closed when it comes all round; `shared`
    are the section's links that an earlier brace brought.
    """

    number: int
    section: tuple[str, ...]
    chains: tuple[Chain, ...]
    shared: tuple[str, ...]

    @property
    def links(self) -> tuple[str, ...]:
        """Every link that this brace brings."""
        return tuple(link for chain in self.chains for link in chain.links)

    @property
    def passes_joints(self) -> bool:
        """Whether some of its own knots come to lie on those of the long chains."""
        return any(len(chain.links) > 1 for chain in self.chains)


@dataclass(frozen=True)
class Cell:
    """What lies between two neighbouring braces.

    `first` and `second` are the numbers of its braces, `skipped` the joints that none reaches.
    """

    number: int
    kind: CellKind
    first: int
    second: int
    skipped: tuple[str, ...]

    @property
    def name(self) -> str:
        """The name of its kind."""
        return self.kind.name

    @property
    def outer(self) -> int:
        """How many balloons the outer chains advance by."""
        return self.kind.outer

    @property
    def inner(self) -> int:
        """How many balloons the inner chains advance by."""
        return self.kind.inner


@dataclass(frozen=True)
class Part:
    """A part of an assembly: a piece of its own, its joints, chains, braces and cells named and
    numbered as in the whole. `mirrored` says that it is built left to right; `stand_on` are the
    joints that it is to be upright on, none if its own pattern says. Parts of one `drawing` keep
    the places to one another at which they are laid. `on` are the parts that it is said to stand
    on, in their middle; none where ties alone say where it goes."""

    name: str
    framework: Framework
    mirrored: bool = False
    stand_on: tuple[str, ...] = ()
    drawing: str = ""
    on: tuple[str, ...] = ()


@dataclass(frozen=True)
class Framework:
    """A whole piece.

    `mirror` maps each joint to the one that faces it across the middle plane (to itself
    when it lies in the plane); it is empty when the pattern names no such plane. `foot` are the
    joints that the pattern is meant to stand on; empty, it names none. `laid` gives places of
    joints, in metres with z towards the viewer, where the pattern draws itself: shape finding
    starts there. `parts` are built one after another and then tied together at `ties`; a piece
    that is no assembly has none. `extras` are those of the singles that the design names one by
    one; they need not have a twin. `reads` says that it is writing, to be seen from its front.
    """

    name: str
    balloons: Mapping[str, BalloonType]
    joints: tuple[str, ...]
    links: tuple[Link, ...]
    chains: tuple[LongChain, ...]
    braces: tuple[Brace, ...]
    cells: tuple[Cell, ...]
    singles: tuple[str, ...]
    locks: tuple[Lock, ...]
    closed: bool
    mirror: Mapping[str, str]
    foot: tuple[str, ...] = ()
    laid: Mapping[str, tuple[float, float, float]] = field(default_factory=dict)
    parts: tuple[Part, ...] = ()
    ties: tuple[Tie, ...] = ()
    extras: frozenset[str] = frozenset()
    reads: bool = False

    @cached_property
    def tie_of(self) -> Mapping[str, Tie]:
        """The tie of each joint that is brought together with others."""
        return {joint: tie for tie in self.ties for joint in tie.joints}

    @cached_property
    def places(self) -> tuple[str, ...]:
        """Where joints are, each place once: joints that are tied together are at one, which is
        called by their tie."""
        return tuple(dict.fromkeys(map(self.place, self.joints)))

    def place(self, joint: str) -> str:
        """What the place of a joint is called."""
        tie = self.tie_of.get(joint)
        return joint if tie is None else tie.name

    @cached_property
    def place_number(self) -> Mapping[str, int]:
        """The number in `places` of every joint and every tie."""
        number = {place: i for i, place in enumerate(self.places)}
        return number | {joint: number[self.place(joint)] for joint in self.joints}

    @cached_property
    def brace(self) -> Mapping[int, Brace]:
        """Braces by number."""
        return {brace.number: brace for brace in self.braces}

    @cached_property
    def _part_of(self) -> Mapping[str, Part]:
        return {joint: part for part in self.parts for joint in part.framework.joints}

    def part_at(self, joint: str) -> Part | None:
        """The part that a joint is of; None in a piece that is no assembly."""
        return self._part_of.get(joint)

    def built_with(self, joint: str) -> Framework:
        """What a joint is built with before anything is tied together: its part, or the whole."""
        part = self.part_at(joint)
        return self if part is None else part.framework

    @cached_property
    def link(self) -> Mapping[str, Link]:
        """Links by id."""
        return {link.id: link for link in self.links}

    @cached_property
    def lock_at(self) -> Mapping[str, Lock]:
        """Locks by joint."""
        return {lock.joint: lock for lock in self.locks}

    @cached_property
    def links_at(self) -> Mapping[str, tuple[str, ...]]:
        """Ids of the links that end at each joint, in the order of `links`."""
        found: dict[str, list[str]] = {joint: [] for joint in self.joints}
        for link in self.links:
            found[link.start].append(link.id)
            found[link.finish].append(link.id)
        return {joint: tuple(ids) for joint, ids in found.items()}
