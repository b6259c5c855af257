"""What the words of a piece must say, from its graph alone."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from buildplan.design.measures import Units, gauged_words
from buildplan.framework.model import Framework, LongChain
from buildplan.language.isolates import isolated
from buildplan.language.voice import Voice

Edge = tuple[str, str, str]
"""A balloon as it is tied in: the joint of its neck, that of its tail, and what it is called."""


@dataclass(frozen=True)
class Right:
    """A piece as its words must tell it: in `voice`, its gauges in `units`."""

    framework: Framework
    units: Units
    voice: Voice

    @cached_property
    def called(self) -> Mapping[str, str]:
        """What each balloon is called: its label, with its gauge where two of a kind share it."""
        balloons = self.framework.balloons
        alike = Counter((one.kind, one.label) for one in balloons.values())
        return {
            key: isolated(one.label)
            if alike[one.kind, one.label] == 1
            else self.voice.say(
                "{colour} {gauge}", colour=one.label, gauge=gauged_words(one.gauge_m, self.units)
            )
            for key, one in balloons.items()
        }

    @cached_property
    def long_links(self) -> frozenset[str]:
        """The balloons of the long chains."""
        return frozenset(link for long in self.framework.chains for link in long.chain.links)

    @cached_property
    def alone(self) -> Mapping[str, str]:
        """The letter of each long chain that is one balloon, by that balloon."""
        chains = self.framework.chains
        return {c.chain.links[0]: c.letter for c in chains if len(c.chain.links) == 1}

    @cached_property
    def long(self) -> Mapping[str, LongChain]:
        """The long chains, by letter."""
        return {long.letter: long for long in self.framework.chains}

    @cached_property
    def shared(self) -> Mapping[int, Sequence[str]]:
        """The balloons of other braces that each brace has too, by its number."""
        return {brace.number: brace.shared for brace in self.framework.braces}

    def names(self, links: Iterable[str]) -> list[str]:
        """What balloons are called."""
        return [self.called[self.framework.link[link].balloon] for link in links]

    def rounds(self, joints: Iterable[str]) -> list[str]:
        """What the rounds of the locks at joints are called."""
        return [self.called[self.framework.lock_at[joint].balloon] for joint in joints]

    def edge(self, link_id: str) -> Edge:
        """A balloon as it is tied in."""
        link = self.framework.link[link_id]
        return link.neck, link.tail, self.called[link.balloon]

    @cached_property
    def meeting(self) -> Mapping[str, tuple[Counter[str], Counter[str]]]:
        """For each joint, how often each long chain (by letter) is knotted there, and how often it
        ends there."""
        found = {joint: (Counter[str](), Counter[str]()) for joint in self.framework.joints}
        for long in self.framework.chains:
            joints = long.chain.joints
            for place, joint in enumerate(joints):
                is_end = not long.chain.closed and place in (0, len(joints) - 1)
                found[joint][is_end][long.letter] += 1
        return found


def alternating(joints: Sequence[str], names: Sequence[str]) -> Iterator[Edge]:
    """Balloons along joints: the first starts with its tail, and knots are neck to neck and tail to
    tail in turn."""
    for i, name in enumerate(names):
        tail, neck = (joints[i], joints[i + 1]) if i % 2 == 0 else (joints[i + 1], joints[i])
        yield neck, tail, name
