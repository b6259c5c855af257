"""The numbered groups of a piece, and what is looked up in them to tell a step."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from buildplan.design.measures import Units, length_words
from buildplan.framework.model import Framework, LongChain
from buildplan.language.speaking import say
from buildplan.sequence.assembly import lock_waits_for
from buildplan.sequence.grouping import Group
from buildplan.sequence.model import Kind, Operation
from buildplan.sequence.piece import Piece
from buildplan.sequence.reach import Reach, Way


@dataclass(frozen=True)
class Plan:
    """All groups of a piece, in order; the group at place `i` is step `i + 1`. `reach` says how
    joints are got at, where the piece's shape is known."""

    piece: Piece
    groups: Sequence[Group]
    units: Units
    reach: Reach | None = None

    @property
    def framework(self) -> Framework:
        """The piece's framework."""
        return self.piece.framework

    def group(self, number: int) -> Group:
        """What step `number` does."""
        return self.groups[number - 1]

    @cached_property
    def names(self) -> Mapping[str, str]:
        """What each balloon is called: its label, with its gauge where labels alone would
        leave a doubt."""
        balloons = self.framework.balloons
        seen = Counter((b.kind, b.label) for b in balloons.values())
        return {
            key: b.label
            if seen[b.kind, b.label] == 1
            else say("{colour} {gauge}", colour=b.label, gauge=length_words(b.gauge_m, self.units))
            for key, b in balloons.items()
        }

    def names_of(self, links: Iterable[str]) -> list[str]:
        """What the balloons of links are called."""
        return [self.names[key] for key in self.piece.keys(links)]

    @cached_property
    def maker(self) -> Mapping[str, int]:
        """Number of the step that makes each thing."""
        return {
            thing: number
            for number, group in enumerate(self.groups, 1)
            for operation in group.operations
            for thing in operation.makes
        }

    @property
    def ways(self) -> Mapping[str, Way]:
        """How each joint is got at, as far as that is known."""
        return self.reach.ways if self.reach is not None else {}

    @cached_property
    def _users(self) -> Mapping[str, frozenset[int]]:
        found: dict[str, set[int]] = {}
        for number, group in enumerate(self.groups, 1):
            for operation in group.operations:
                for thing in operation.needs:
                    found.setdefault(thing, set()).add(number)
        return {thing: frozenset(numbers) for thing, numbers in found.items()}

    def used_in(self, operations: Iterable[Operation]) -> list[int]:
        """Numbers of the steps that need what `operations` make."""
        made = (thing for operation in operations for thing in operation.makes)
        return sorted({number for thing in made for number in self._users.get(thing, ())})

    def needs(self, number: int) -> tuple[int, ...]:
        """Earlier steps whose makings step `number` needs."""
        makers = {self.maker[t] for op in self.group(number).operations for t in op.needs}
        return tuple(sorted(maker for maker in makers if maker < number))

    @cached_property
    def side_work(self) -> Mapping[int, int]:
        """Steps that the laying does not wait for, and that others can do meanwhile; with the
        first step of the main line that needs what they make."""
        laying = next(n for n, g in enumerate(self.groups, 1) if g.of_kind(Kind.LAY))
        main = {laying}
        for number in range(laying, 0, -1):
            if number in main:
                main.update(self.needs(number))
        first: dict[int, int] = {}
        for number in range(len(self.groups), 0, -1):
            for needed in self.needs(number):
                if needed < laying and needed not in main:
                    needs_it = first.get(number, number)
                    first[needed] = min(needs_it, first.get(needed, needs_it))
        return first

    @cached_property
    def _tally(self) -> Sequence[Counter[Kind]]:
        tally: list[Counter[Kind]] = [Counter()]
        for group in self.groups:
            tally.append(tally[-1] + Counter(operation.kind for operation in group.operations))
        return tally

    def progress(self, kind: Kind, number: int) -> tuple[int, int]:
        """How many operations of a kind are done after step `number`, and how many there are
        in all."""
        return self._tally[number][kind], self._tally[-1][kind]

    @cached_property
    def long(self) -> Mapping[str, LongChain]:
        """Long chains by letter."""
        return {long.letter: long for long in self.framework.chains}

    @cached_property
    def lock_waits_for(self) -> Mapping[str, int]:
        """Number of the brace after which each joint is locked."""
        return lock_waits_for(self.framework)

    @cached_property
    def locked_in(self) -> Mapping[str, int]:
        """Number of the step in which each joint is locked."""
        return {
            joint: number
            for number, group in enumerate(self.groups, 1)
            for operation in group.of_kind(Kind.LOCK)
            for joint in operation.locks
        }
