"""The numbered groups of a piece, and what each needs of the others."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from buildplan.sequence.grouping import Group
from buildplan.sequence.model import Kind


@dataclass(frozen=True)
class StepGroups:
    """All groups of a piece, in order; the group at place `i` is step `i + 1`."""

    groups: Sequence[Group]

    @cached_property
    def maker(self) -> Mapping[str, int]:
        """Number of the step that makes each thing."""
        return {
            thing: number
            for number, group in enumerate(self.groups, 1)
            for operation in group.operations
            for thing in operation.makes
        }

    def needs(self, number: int) -> tuple[int, ...]:
        """Earlier steps whose makings step `number` needs."""
        makers = {self.maker[t] for op in self.groups[number - 1].operations for t in op.needs}
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
