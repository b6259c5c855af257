"""The empty floor on which a replay builds, and what hands can and cannot do on it.

It shares no code with the sequencer: operations come as plain data.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from typing import Any

import networkx as nx

NECK, TAIL = "neck", "tail"
End = tuple[str, str]  # link, NECK or TAIL
Json = Mapping[str, Any]


class ImpossibleError(Exception):
    """What one operation asks for cannot be done."""


def _refuse_unless(condition: bool, message: str) -> None:
    if not condition:
        raise ImpossibleError(message)


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

    def do(self, operation: Json) -> None:
        """Do one operation."""
        for thing in operation["needs"]:
            _refuse_unless(thing in self.made, f"{operation['id']} needs {thing}, not made yet")
        kind = operation["kind"]
        _refuse_unless(kind in _ACTS, f"nobody knows how to {kind}")
        _refuse_unless(
            operation["up"] in (None, self.up), f"{operation['id']} is out of reach, below"
        )
        _ACTS[kind](self, operation)
        for thing in operation["makes"]:
            _refuse_unless(thing not in self.made, f"{thing} is made twice")
            self.made.add(thing)

    # what hands do

    def _size(self, operation: Json) -> None:
        key = operation["balloon"]
        _refuse_unless(bool(key), f"{operation['id']} does not say which balloon")
        for link in operation["links"]:
            _refuse_unless(link not in self.sized, f"balloon {link} is sized twice")
            self.sized[link] = key
        for joint in operation["locks"]:
            _refuse_unless(joint not in self.rounds, f"rounds for {joint} are sized twice")
            self.rounds[joint] = key

    def _pair(self, operation: Json) -> None:
        for joint in operation["locks"]:
            _refuse_unless(joint in self.rounds, f"the rounds for {joint} were never sized")
            _refuse_unless(joint not in self.lock_pairs, f"the lock for {joint} is tied twice")
            self.lock_pairs.add(joint)
        if not operation["links"]:
            return
        _refuse_unless(len(operation["knots"]) == 1, "a pair has one knot")
        joint, ends = _knot(operation["knots"][0])
        _refuse_unless(
            len(ends) == 2 and all(end == NECK for _, end in ends), "a pair is tied neck to neck"
        )
        _refuse_unless({link for link, _ in ends} == set(operation["links"]), "a pair is two")
        for link, _ in ends:
            _refuse_unless(link not in self.closed_necks, f"the neck of {link} is closed already")
            self.closed_necks.add(link)
        self._tie(joint, ends)

    def _tie_off(self, operation: Json) -> None:
        for link in operation["links"]:
            _refuse_unless(link in self.sized, f"balloon {link} was never sized")
            _refuse_unless(link not in self.closed_necks, f"the neck of {link} is closed already")
            self.closed_necks.add(link)

    def _chain(self, operation: Json) -> None:
        links, joints = operation["links"], operation["joints"]
        _refuse_unless(len(joints) == len(links) + 1, "a chain has one joint more than balloons")
        for knot in operation["knots"]:
            joint, ends = _knot(knot)
            _refuse_unless(len(ends) == 2, f"the knot at {joint} takes two ends")
            self._tie(joint, ends)
        for link in links:
            self._ready(link)
        self._walk(links, joints)
        if operation["adds"]:
            _refuse_unless(not self.standing, "a long chain comes after the laying")
            self._bring(links, "chain")

    def _walk(self, links: Sequence[str], joints: Sequence[str]) -> None:
        """Follow a chain along its knots, and note which joint its free ends will be at. A chain
        of one balloon starts with its tail, as every chain does."""
        for (before, after), joint in zip(pairwise(links), joints[1:-1], strict=True):
            shared = [
                (one, other)
                for one in _ends(before)
                for other in _ends(after)
                if one in self.knot_of and self.knot_of[one] == self.knot_of.get(other)
            ]
            _refuse_unless(bool(shared), f"{before} and {after} are not tied to each other")
            found = {self.joint_of[one] for one, _ in shared}
            _refuse_unless(joint in found, f"{before} and {after} meet at {found}, not at {joint}")
        free = [end for link in links for end in _ends(link) if end not in self.knot_of]
        _refuse_unless(len(free) == 2, f"the chain has {len(free)} free ends, not two")
        first, last = free if free[0][0] == links[0] else free[::-1]
        if len(links) == 1:
            first, last = (links[0], TAIL), (links[0], NECK)
        _refuse_unless(
            first[0] == links[0] and last[0] == links[-1], "its free ends are not at its two ends"
        )
        self._place(first, joints[0])
        self._place(last, joints[-1])

    def _close_ring(self, operation: Json) -> None:
        for knot in operation["knots"]:
            joint, ends = _knot(knot)
            for end in ends:
                _refuse_unless(
                    self.joint_of.get(end) == joint, f"{_words(end)} is no chain's end at {joint}"
                )
            _refuse_unless(
                len(ends) == 2 and self._connected(ends[0][0], ends[1][0]),
                f"the ends tied at {joint} are not of one chain",
            )
            self._tie(joint, ends)

    def _connected(self, one: str, other: str) -> bool:
        graph = nx.Graph()
        graph.add_node(one)
        graph.add_edges_from((link, ("knot", knot)) for (link, _), knot in self.knot_of.items())
        return other in nx.node_connected_component(graph, one)

    def _tag(self, operation: Json) -> None:
        for joint in operation["joints"]:
            _refuse_unless(bool(self.ends_at.get(joint)), f"there is no joint {joint} to tag")
        self.tagged.update(operation["joints"])

    def _lay(self, operation: Json) -> None:
        """Lay the chains that come to the joints named, with their front up."""
        if operation["links"]:
            links = set(operation["links"])
            for link in links:
                self._ready(link)
                _refuse_unless(
                    all(end in self.joint_of for end in _ends(link)), f"{link} is of no chain"
                )
            self._bring(operation["links"], "chain")
            laid = {self.joint_of[end] for link in links for end in _ends(link)}
            late = laid & self.joined
            _refuse_unless(not late, f"{_list(late)} were joined before all chains had come")
        else:
            ends = {end for joint in operation["joints"] for end in self.ends_at.get(joint, ())}
            links = self._chained_to({link for link, _ in ends if link in self.roles})
            laid = {self.joint_of[end] for link in links for end in _ends(link)} - self.standing
            _refuse_unless(bool(laid) or not self.standing, "the chains are laid already")
        self.standing |= laid
        self.up = "front"
        for joint in operation["joints"]:
            _refuse_unless(joint in self.standing, f"there is no joint {joint} to lay")
            _refuse_unless(joint in self.tagged, f"nobody can find {joint}: it has no tag")
        for joint in laid:
            if len(self._things_at(joint)) > 1:
                self.apart.add(joint)

    def _chained_to(self, links: set[str]) -> set[str]:
        """`links`, and all that hangs on them by knots."""
        members: dict[int, list[str]] = {}
        for (link, _), knot in self.knot_of.items():
            members.setdefault(knot, []).append(link)
        found, waiting = set(links), list(links)
        while waiting:
            for end in _ends(waiting.pop()):
                for other in members.get(self.knot_of.get(end, 0), ()):
                    if other not in found:
                        found.add(other)
                        waiting.append(other)
        return found

    def _brace(self, operation: Json) -> None:
        links, joints = operation["links"], operation["joints"]
        _refuse_unless(not self.loose, f"{_list(self.loose)} must be settled first")
        due = self.gathered - self.turned
        waiting = {joint for joint in due if self._all_braces_came(joint)}
        _refuse_unless(not waiting, f"{_list(waiting)} must be locked before the next brace")
        for link in links:
            self._ready(link)
        for knot in operation["knots"]:
            self._tie_to_piece(knot)
        self._bring(links, "brace")
        self._hold(links, joints)
        self.loose.update(joints)
        self.braced.add(operation["id"])

    def _all_braces_came(self, joint: str) -> bool:
        return self.awaited.get(joint) is None or self.awaited[joint] in self.braced

    def _settle(self, operation: Json) -> None:
        for joint in operation["joints"]:
            _refuse_unless(joint in self.standing, f"there is no joint {joint} to settle")
            _refuse_unless(len(self._things_at(joint)) > 1, f"no brace has come to {joint}")
        self.loose.difference_update(operation["joints"])

    def _single(self, operation: Json) -> None:
        _refuse_unless(len(operation["links"]) == 1, "a single is one balloon")
        self._ready(operation["links"][0])
        for knot in operation["knots"]:
            self._tie_to_piece(knot)
        self._bring(operation["links"], "single")
        self._hold(operation["links"], operation["joints"])

    def _hold(self, links: Sequence[str], joints: Sequence[str]) -> None:
        """Both ends of every link must have come to joints that stand, neighbours in the
        order that is given."""
        for link in links:
            ends = _ends(link)
            _refuse_unless(
                all(end in self.knot_of for end in ends), f"an end of {link} is left free"
            )
            places = [self.joint_of[end] for end in ends]
            for joint in places:
                _refuse_unless(joint in self.standing, f"there is no joint {joint} yet")
                _refuse_unless(joint in joints, f"{link} ends at {joint}, which is not named")
            apart = abs(joints.index(places[0]) - joints.index(places[1]))
            _refuse_unless(
                apart in (1, len(joints) - 1), f"{' and '.join(places)} are not next to each other"
            )
        self.gathered |= set(joints) - set(self.locks)

    def _join(self, operation: Json) -> None:
        _refuse_unless(not self.gathered, f"{_list(self.gathered)} must be held first")
        if len(operation["joints"]) > 1:
            self._tie_together(operation["joints"])
            return
        if operation["links"]:
            for link in operation["links"]:
                self._ready(link)
            self._bring(operation["links"], "chain")
            self.hanging.update(end for link in operation["links"] for end in _ends(link))
        for joint in operation["joints"]:
            tied = {end for knot in operation["knots"] for end in _knot(knot)[1]}
            waits = joint in self.apart or tied & self.hanging
            _refuse_unless(bool(waits), f"no knots wait to be joined at {joint}")
            free = {end for end in self.ends_at[joint] if end not in self.knot_of}
            _refuse_unless(tied - self.hanging == free, f"not every free end at {joint} is tied in")
            absent = {link for link, _ in self.ends_at[joint] if link not in self.roles}
            _refuse_unless(not absent, f"{_list(absent)} should have come to {joint} before")
            for knot in operation["knots"]:
                self._tie_to_piece(knot)
            self.hanging -= tied
            self.apart.discard(joint)
            self.joined.add(joint)

    def _tie_together(self, joints: Sequence[str]) -> None:
        """Make one joint of joints of different parts; it is called by all their names."""
        name = "+".join(joints)
        for joint in joints:
            _refuse_unless(joint in self.standing, f"there is no joint {joint} to tie")
            _refuse_unless(
                joint not in self.apart | self.loose, f"the knots at {joint} are still apart"
            )
        for joint in joints:
            self.standing.remove(joint)
            for end in self.ends_at.pop(joint):
                self.joint_of[end] = name
                self.ends_at.setdefault(name, set()).add(end)
        self.standing.add(name)
        self.gathered.add(name)

    def _turn_over(self, operation: Json) -> None:
        _refuse_unless(bool(self.standing), "nothing is laid that could be turned over")
        _refuse_unless(operation["people"] > 1, "nobody turns a piece over alone")
        self.up = "back" if self.up == "front" else "front"

    def _lock(self, operation: Json) -> None:
        for joint in operation["locks"]:
            _refuse_unless(joint in self.lock_pairs, f"no pair of rounds is ready for {joint}")
            _refuse_unless(joint not in self.locks, f"{joint} is locked twice")
            _refuse_unless(joint in self.standing, f"there is no joint {joint} to lock")
            _refuse_unless(joint not in self.apart, f"the knots at {joint} are still apart")
            _refuse_unless(len(self._things_at(joint)) > 1, f"{joint} has nothing to hold")
            _refuse_unless(joint not in self.loose, f"the brace at {joint} is not settled")
            _refuse_unless(self._all_braces_came(joint), f"a brace is still to come to {joint}")
            self.locks[joint] = self.rounds[joint]
            self.gathered.discard(joint)

    def _inspect(self, operation: Json) -> None:
        hanging = {link for link, _ in self.hanging}
        _refuse_unless(not hanging, f"an end of {_list(hanging)} hangs free")
        waiting = self.gathered | self.apart | self.loose
        _refuse_unless(not waiting, f"nothing holds the knots at {_list(waiting)}")
        left = set(self.sized) - set(self.roles)
        _refuse_unless(not left, f"balloons left over: {_list(left)}")
        unused = set(self.rounds) - set(self.locks)
        _refuse_unless(not unused, f"locks left over: {_list(unused)}")
        _refuse_unless(not self.looked_over, "it was looked over before")
        self.looked_over = True

    def _stand_up(self, operation: Json) -> None:
        _refuse_unless(self.looked_over, "it was not looked over")
        _refuse_unless(operation["people"] > 1, "nobody stands a piece up alone")
        _refuse_unless(not self.stood_up, "it stands already")
        self.stood_up = True

    # knots

    def _ready(self, link: str) -> None:
        _refuse_unless(link in self.sized, f"balloon {link} was never sized")
        _refuse_unless(link in self.closed_necks, f"the neck of {link} is open")

    def _tie(self, joint: str, ends: Sequence[End]) -> None:
        """Tie ends into one new knot called `joint`."""
        self.knots += 1
        for end in ends:
            self._ready(end[0])
            _refuse_unless(end not in self.knot_of, f"{_words(end)} is tied already")
            self._place(end, joint)
            self.knot_of[end] = self.knots

    def _tie_to_piece(self, knot: Json) -> None:
        joint, ends = _knot(knot)
        _refuse_unless(joint in self.standing, f"there is no joint {joint} to tie into")
        self._tie(joint, ends)

    def _place(self, end: End, joint: str) -> None:
        called = self.joint_of.setdefault(end, joint)
        _refuse_unless(called == joint, f"{_words(end)} belongs at {called}, not at {joint}")
        self.ends_at.setdefault(joint, set()).add(end)

    def _things_at(self, joint: str) -> set[object]:
        """Knots and free ends at a joint of the piece."""
        return {
            self.knot_of.get(end, end)
            for end in self.ends_at.get(joint, ())
            if end[0] in self.roles
        }

    def _bring(self, links: Sequence[str], role: str) -> None:
        for link in links:
            _refuse_unless(link not in self.roles, f"balloon {link} is in the piece already")
            self.roles[link] = role

    def graph(self) -> nx.MultiGraph:
        """The balloons of the piece between the joints that their ends are at."""
        graph = nx.MultiGraph()
        for link, role in self.roles.items():
            neck, tail = self.joint_of[link, NECK], self.joint_of[link, TAIL]
            graph.add_edge(
                neck, tail, key=link, balloon=self.sized[link], role=role, neck=neck, tail=tail
            )
        return graph


_ACTS: Mapping[str, Callable[[Floor, Json], None]] = {
    "size": Floor._size,
    "pair": Floor._pair,
    "tie off": Floor._tie_off,
    "chain": Floor._chain,
    "close ring": Floor._close_ring,
    "tag": Floor._tag,
    "lay": Floor._lay,
    "brace": Floor._brace,
    "settle": Floor._settle,
    "single": Floor._single,
    "join": Floor._join,
    "turn over": Floor._turn_over,
    "lock": Floor._lock,
    "inspect": Floor._inspect,
    "stand up": Floor._stand_up,
}


def _knot(knot: Json) -> tuple[str, list[End]]:
    return knot["joint"], [(link, end) for link, end in knot["ends"]]


def _ends(link: str) -> tuple[End, End]:
    return (link, NECK), (link, TAIL)


def _list(names: Iterable[str]) -> str:
    return ", ".join(sorted(names))


def _words(end: End) -> str:
    return f"the {end[1]} of {end[0]}"
