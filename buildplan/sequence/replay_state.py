"""The floor on which a replay builds: what lies on it, and what is tied to what.

It shares no code with the sequencer: operations come as plain data.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from typing import Any

NECK, TAIL = "neck", "tail"
End = tuple[str, str]  # link, NECK or TAIL
Json = Mapping[str, Any]


class ImpossibleError(Exception):
    """What one operation asks for cannot be done."""


def refuse_unless(condition: bool, message: str) -> None:
    """Raises ImpossibleError with the message unless the condition holds."""
    if not condition:
        raise ImpossibleError(message)


@dataclass(frozen=True)
class BuiltIn:
    """A link balloon in the piece: the joints that its ends are at, its balloon and its role."""

    neck: str
    tail: str
    balloon: str
    role: str


@dataclass
class Floor:
    """Everything that has been done so far.

    `knot_of` and `joint_of` say for each balloon end which knot it is in and which joint
    that knot, or the free end of a chain, is called. `standing` are the joints of chains
    that have been laid; `gathered` those where knots were brought together and are not held
    yet, `loose` those of a brace that is not settled, `apart` those where chains still have
    to be joined. `awaited` is the brace that comes last to each joint, for which its lock waits;
    `braced` are the braces that have been tied; `joined` are joints whose knots were brought
    together, `hanging` the ends of single balloons that are not tied in yet. `turned` are the
    joints that are locked only once the piece has been turned over.
    """

    joined: set[str] = field(default_factory=set)
    hanging: set[End] = field(default_factory=set)
    awaited: Mapping[str, str] = field(default_factory=dict)
    turned: frozenset[str] = frozenset()
    braced: set[str] = field(default_factory=set)
    made: set[str] = field(default_factory=set)
    sized: dict[str, str] = field(default_factory=dict)
    rounds: dict[str, str] = field(default_factory=dict)
    closed_necks: set[str] = field(default_factory=set)
    lock_pairs: set[str] = field(default_factory=set)
    knot_of: dict[End, int] = field(default_factory=dict)
    joint_of: dict[End, str] = field(default_factory=dict)
    knots: int = 0
    roles: dict[str, str] = field(default_factory=dict)
    standing: set[str] = field(default_factory=set)
    gathered: set[str] = field(default_factory=set)
    apart: set[str] = field(default_factory=set)
    locks: dict[str, str] = field(default_factory=dict)
    ends_at: dict[str, set[End]] = field(default_factory=dict)
    loose: set[str] = field(default_factory=set)
    tagged: set[str] = field(default_factory=set)
    up: str = "front"
    looked_over: bool = False
    stood_up: bool = False

    # chains and braces

    def walk(self, links: Sequence[str], joints: Sequence[str]) -> None:
        """Follow a chain along its knots, and note which joint its free ends will be at. A chain
        of one balloon starts with its tail, as every chain does."""
        for (before, after), joint in zip(pairwise(links), joints[1:-1], strict=True):
            shared = [
                (one, other)
                for one in ends_of(before)
                for other in ends_of(after)
                if one in self.knot_of and self.knot_of[one] == self.knot_of.get(other)
            ]
            refuse_unless(bool(shared), f"{before} and {after} are not tied to each other")
            found = {self.joint_of[one] for one, _ in shared}
            refuse_unless(joint in found, f"{before} and {after} meet at {found}, not at {joint}")
        free = [end for link in links for end in ends_of(link) if end not in self.knot_of]
        refuse_unless(len(free) == 2, f"the chain has {len(free)} free ends, not two")
        first, last = free if free[0][0] == links[0] else free[::-1]
        if len(links) == 1:
            first, last = (links[0], TAIL), (links[0], NECK)
        refuse_unless(
            first[0] == links[0] and last[0] == links[-1], "its free ends are not at its two ends"
        )
        self.place(first, joints[0])
        self.place(last, joints[-1])

    def connected(self, one: str, other: str) -> bool:
        """Whether knots lead from one balloon to another."""
        return other in self.chained_to({one})

    def chained_to(self, links: set[str]) -> set[str]:
        """`links`, and all that hangs on them by knots."""
        members: dict[int, list[str]] = {}
        for (link, _), knot in self.knot_of.items():
            members.setdefault(knot, []).append(link)
        found, waiting = set(links), list(links)
        while waiting:
            for end in ends_of(waiting.pop()):
                for other in members.get(self.knot_of.get(end, 0), ()):
                    if other not in found:
                        found.add(other)
                        waiting.append(other)
        return found

    def all_braces_came(self, joint: str) -> bool:
        """Whether no brace is still to come to a joint."""
        return self.awaited.get(joint) is None or self.awaited[joint] in self.braced

    def hold(self, links: Sequence[str], joints: Sequence[str]) -> None:
        """Both ends of every link must have come to joints that stand, neighbours in the
        order that is given."""
        for link in links:
            ends = ends_of(link)
            refuse_unless(
                all(end in self.knot_of for end in ends), f"an end of {link} is left free"
            )
            places = [self.joint_of[end] for end in ends]
            for joint in places:
                refuse_unless(joint in self.standing, f"there is no joint {joint} yet")
                refuse_unless(joint in joints, f"{link} ends at {joint}, which is not named")
            apart = abs(joints.index(places[0]) - joints.index(places[1]))
            refuse_unless(
                apart in (1, len(joints) - 1), f"{' and '.join(places)} are not next to each other"
            )
        self.gathered |= set(joints) - set(self.locks)

    def tie_together(self, joints: Sequence[str]) -> None:
        """Make one joint of joints of different parts; it is called by all their names."""
        name = "+".join(joints)
        for joint in joints:
            refuse_unless(joint in self.standing, f"there is no joint {joint} to tie")
            refuse_unless(
                joint not in self.apart | self.loose, f"the knots at {joint} are still apart"
            )
        for joint in joints:
            self.standing.remove(joint)
            for end in self.ends_at.pop(joint):
                self.joint_of[end] = name
                self.ends_at.setdefault(name, set()).add(end)
        self.standing.add(name)
        self.gathered.add(name)

    # knots

    def ready(self, link: str) -> None:
        """A balloon must be sized and closed before it is tied to anything."""
        refuse_unless(link in self.sized, f"balloon {link} was never sized")
        refuse_unless(link in self.closed_necks, f"the neck of {link} is open")

    def tie(self, joint: str, ends: Sequence[End]) -> None:
        """Tie ends into one new knot called `joint`."""
        self.knots += 1
        for end in ends:
            self.ready(end[0])
            refuse_unless(end not in self.knot_of, f"{end_words(end)} is tied already")
            self.place(end, joint)
            self.knot_of[end] = self.knots

    def tie_to_piece(self, knot: Json) -> None:
        """Tie ends into a joint that stands."""
        joint, ends = joint_and_ends(knot)
        refuse_unless(joint in self.standing, f"there is no joint {joint} to tie into")
        self.tie(joint, ends)

    def place(self, end: End, joint: str) -> None:
        """Note the joint that an end is at, which never changes."""
        called = self.joint_of.setdefault(end, joint)
        refuse_unless(called == joint, f"{end_words(end)} belongs at {called}, not at {joint}")
        self.ends_at.setdefault(joint, set()).add(end)

    def things_at(self, joint: str) -> set[object]:
        """Knots and free ends at a joint of the piece."""
        return {
            self.knot_of.get(end, end)
            for end in self.ends_at.get(joint, ())
            if end[0] in self.roles
        }

    def bring(self, links: Sequence[str], role: str) -> None:
        """Balloons become part of the piece, each once."""
        for link in links:
            refuse_unless(link not in self.roles, f"balloon {link} is in the piece already")
            self.roles[link] = role

    def balloons(self) -> Iterator[tuple[str, BuiltIn]]:
        """The balloons of the piece, by name."""
        for link, role in self.roles.items():
            neck, tail = self.joint_of[link, NECK], self.joint_of[link, TAIL]
            yield link, BuiltIn(neck, tail, self.sized[link], role)


def joint_and_ends(knot: Json) -> tuple[str, list[End]]:
    """A knot of the plain data: where it is, and what it ties."""
    return knot["joint"], [(link, end) for link, end in knot["ends"]]


def ends_of(link: str) -> tuple[End, End]:
    """The two ends of a balloon."""
    return (link, NECK), (link, TAIL)


def names_of(names: Iterable[str]) -> str:
    """Names in a refusal, in an order that is always the same."""
    return ", ".join(sorted(names))


def end_words(end: End) -> str:
    """An end in a refusal."""
    return f"the {end[1]} of {end[0]}"
