"""A framework with what the sequence looks up in it again and again."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property

from buildplan.framework.chain_roles import Layer
from buildplan.framework.model import Brace, Cell, Framework, LongChain
from buildplan.sequence.chains import counts_along
from buildplan.sequence.courses import built_pieces, loose_chains
from buildplan.sequence.spurs import singles_in_cells


@dataclass(frozen=True)
class PieceIndex:
    """Look-ups in a framework."""

    framework: Framework

    @cached_property
    def long_links(self) -> frozenset[str]:
        """Links of the long chains."""
        return frozenset(link for long in self.framework.chains for link in long.chain.links)

    @cached_property
    def singles(self) -> frozenset[str]:
        """Links that are singles."""
        return frozenset(self.framework.singles)

    @cached_property
    def letter(self) -> Mapping[str, str]:
        """The letter of the (first) long chain that runs through each joint."""
        letters: dict[str, str] = {}
        for long in self.framework.chains:
            for joint in long.chain.joints:
                letters.setdefault(joint, long.letter)
        return letters

    @cached_property
    def behind(self) -> frozenset[str]:
        """Joints of the chains that lie at the back."""
        back = (long.chain.joints for long in self.framework.chains if long.layer is Layer.BACK)
        return frozenset(joint for joints in back for joint in joints)

    @cached_property
    def passing(self) -> Mapping[str, tuple[Counter[str], Counter[str]]]:
        """For each joint, how often each chain (by letter) is knotted there, and how often it
        ends there free."""
        found: dict[str, tuple[Counter[str], Counter[str]]] = {
            joint: (Counter(), Counter()) for joint in self.framework.joints
        }
        for long in self.framework.chains:
            chain = long.chain
            ends = set() if chain.closed else {0, len(chain.joints) - 1}
            for place, joint in enumerate(chain.joints):
                found[joint][place in ends][long.letter] += 1
        return found

    @cached_property
    def alone(self) -> Mapping[str, str]:
        """By the letter of its chain, each balloon that is a chain by itself and is tied in when
        its joints are joined."""
        letters = {c for _, own in built_pieces(self.framework) for c in loose_chains(own)}
        return {c.letter: c.chain.links[0] for c in self.framework.chains if c.letter in letters}

    @cached_property
    def _counted(self) -> frozenset[str]:
        return frozenset(long.letter for long in self.framework.chains if counts_along(long))

    def counts_along(self, long: LongChain) -> bool:
        """Whether the joints of a long chain are counted along it: A1, A2, ..."""
        return long.letter in self._counted

    @cached_property
    def _completed(self) -> Mapping[int, tuple[Cell, ...]]:
        cells: dict[int, list[Cell]] = {}
        for cell in self.framework.cells:
            cells.setdefault(max(cell.first, cell.second), []).append(cell)
        return {number: tuple(found) for number, found in cells.items()}

    def cells_at(self, brace: Brace) -> tuple[Cell, ...]:
        """Cells that `brace` completes: the one before it, and at the last brace of a closed
        tube the one that closes the course."""
        return self._completed.get(brace.number, ())

    @cached_property
    def cell_of_skipped(self) -> Mapping[str, Cell]:
        """The cell in which each skipped joint lies."""
        return {joint: cell for cell in self.framework.cells for joint in cell.skipped}

    @cached_property
    def cell_of_single(self) -> Mapping[str, Cell]:
        """The cell of each single within one."""
        return singles_in_cells(self.framework)

    def keys(self, links: Iterable[str]) -> tuple[str, ...]:
        """Balloon keys of links."""
        return tuple(self.framework.link[link].balloon for link in links)
