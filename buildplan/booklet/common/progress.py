"""What stands at each moment of the work, as scenes for pictures."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np
from scipy.spatial import cKDTree

from buildplan.booklet.common.book import Book
from buildplan.drawing.arrays import BoolArray
from buildplan.drawing.bodies import Bodies, Scene, link_length_m
from buildplan.drawing.cell_layout import newest_brace
from buildplan.drawing.closeup import REACH
from buildplan.framework.model import Cell, Part, Role
from buildplan.instructions.stages import part_of_step, worked_part
from buildplan.sequence.model import Kind, Operation, Step, Turn
from buildplan.shape.lying import laid_in_figure

# Work that holds its joints where they stay.
HOLDING = frozenset({Kind.BRACE, Kind.SINGLE, Kind.JOIN})
_NEVER = 1_000_000_000


@dataclass(frozen=True)
class Arrival:
    """When a part comes into the piece: in which step, and at which turn of the whole work."""

    step: int
    turn: int


@dataclass(frozen=True)
class _ByStep:
    """Names in the order of the steps in which they come in, and those steps."""

    names: Sequence[str]
    steps: Sequence[int]

    @classmethod
    def of(cls, arrivals: Mapping[str, Arrival]) -> _ByStep:
        names = sorted(arrivals, key=lambda name: arrivals[name].step)
        return cls(names, [arrivals[name].step for name in names])

    def parted(self, step: int) -> tuple[Sequence[str], Sequence[str], Sequence[str]]:
        """What came before a step, with it and after it."""
        first, last = bisect_left(self.steps, step), bisect_right(self.steps, step)
        return self.names[:first], self.names[first:last], self.names[last:]


class BuildProgress:
    """When each link balloon and each lock comes into a piece."""

    def __init__(self, book: Book) -> None:
        self._whole = book.every_body
        self._tree = cKDTree(self._whole.centre)
        self._link_m = link_length_m(book.framework)
        self._ended: dict[str, list[Cell]] = {}
        for cell in book.framework.cells:
            self._ended.setdefault(f"brace {newest_brace(book.framework, cell).number}", []).append(
                cell
            )
        self._links: dict[str, Arrival] = {}
        self._locks: dict[str, Arrival] = {}
        self._held: dict[str, int] = {}
        self._turn_of: dict[tuple[int, int], int] = {}
        for count, (step, number, turn) in enumerate(_in_order(book.steps)):
            moment = Arrival(step.number, count)
            self._turn_of[step.number, number] = count
            for operation in turn.operations:
                if operation.kind in HOLDING:
                    self._hold(operation, count)
                if operation.adds:
                    self._links.update(dict.fromkeys(operation.links, moment))
                    self._locks.update(dict.fromkeys(operation.locks, moment))
                if operation.kind is Kind.LAY and not operation.links:
                    # the chains of a part lie somewhere else until then
                    part = book.framework.built_with(operation.joints[0])
                    for long in part.chains if book.framework.parts else ():
                        self._links.update(dict.fromkeys(long.chain.links, moment))
        self._empty = Scene(
            book.framework,
            book.shape,
            patterns=book.patterns,
            every_body=self._whole,
        )

    def _hold(self, operation: Operation, count: int) -> None:
        """Joints are held once they are tied; a skipped one with the brace that ends its cell."""
        for joint in operation.joints:
            self._held.setdefault(joint, count)
        for cell in self._ended.get(operation.id, ()):
            for joint in cell.skipped:
                self._held.setdefault(joint, count)

    @cached_property
    def _links_by_step(self) -> _ByStep:
        return _ByStep.of(self._links)

    @cached_property
    def _locks_by_step(self) -> _ByStep:
        return _ByStep.of(self._locks)

    def whole(self, step: Step) -> Scene:
        """The whole piece, or the part that is worked on: what a step adds is new, what earlier
        steps added stands."""
        done_links, new_links, _ = self._links_by_step.parted(step.number)
        done_locks, new_locks, _ = self._locks_by_step.parted(step.number)
        return replace(
            self._about(step),
            new_links=frozenset(new_links),
            done_links=frozenset(done_links),
            new_locks=frozenset(new_locks),
            done_locks=frozenset(done_locks),
        )

    def finished(self, step: Step) -> Scene:
        """The piece, or the part that is worked on, everything that stands after a step as if it
        were new."""
        return replace(
            self._about(step),
            new_links=frozenset(
                n for n, moment in self._links.items() if moment.step <= step.number
            ),
            new_locks=frozenset(
                n for n, moment in self._locks.items() if moment.step <= step.number
            ),
        )

    def at_turns(self, step: Step, numbers: Sequence[int], joints: Sequence[str]) -> Scene:
        """What stands about some joints while turns `numbers` (from 0) of a step are done: what
        they bring is new, with what is tied to it pale, and what stands further off fainter."""
        turns = [self._turn_of[step.number, number] for number in numbers]
        near = self._near(joints)
        links, locks = set(near.names[near.is_link]), set(near.names[~near.is_link])
        now, then = min(turns), max(turns)
        added = {n: self._links[n].turn for n in links if n in self._links}
        locked = {n: self._locks[n].turn for n in locks if n in self._locks}
        hold = {j: self._held.get(j, _NEVER) for n in added for j in self._ends(n)}
        chains = {n for n in added if self._is_chain(n) and added[n] <= then}
        loose = {n for n in chains if self._stands_at(n, hold) > then}
        new = {n for n in added if now <= added[n] <= then and n not in chains}
        brought = {n for n in chains - loose if self._brought_at(n, hold, now, then)}
        done = {n for n in added if added[n] <= then} - loose - new - brought
        done_locks = {n for n in locked if locked[n] < now}
        tied = set(joints) | {j for n in new for j in self._ends(n)}
        meets = {n for n in done if tied & set(self._ends(n))}
        before = {j for n in meets for j in self._ends(n)}
        return replace(
            self._empty,
            every_body=near,
            new_links=frozenset(new | brought),
            done_links=frozenset(done),
            new_locks=frozenset(n for n in locked if now <= locked[n] <= then),
            done_locks=frozenset(done_locks),
            far_links=frozenset(n for n in done if not before >= set(self._ends(n))),
            far_locks=frozenset(done_locks - before),
            loose=frozenset(loose),
        )

    def _ends(self, link: str) -> tuple[str, str]:
        found = self._empty.framework.link[link]
        return found.start, found.finish

    def _is_chain(self, link: str) -> bool:
        return self._empty.framework.link[link].role is Role.CHAIN

    def _stands_at(self, link: str, hold: Mapping[str, int]) -> int:
        """The turn from which a chain's balloon is where it stays: in a part that is laid in its
        figure once both its joints are held, else with the first of them."""
        first, second = (hold[joint] for joint in self._ends(link))
        return max(first, second) if self._is_laid(link) else min(first, second)

    def _is_laid(self, link: str) -> bool:
        return laid_in_figure(self._empty.framework.built_with(self._ends(link)[0]))

    def _brought_at(self, link: str, hold: Mapping[str, int], now: int, then: int) -> bool:
        """Whether a balloon of a part built course by course is brought to its place in these
        turns."""
        return not self._is_laid(link) and now <= self._stands_at(link, hold) <= then

    def _near(self, joints: Sequence[str]) -> Bodies:
        at = np.array([self._empty.shape.at[joint] for joint in joints]).reshape(-1, 3)
        kept = np.zeros(len(self._whole.names), dtype=bool)
        for rows in self._tree.query_ball_point(at, (REACH + 1) * self._link_m):
            kept[rows] = True
        part = worked_part(self._empty.framework, joints)
        return self._whole.some(kept if part is None else kept & self._of(part))

    def _about(self, step: Step) -> Scene:
        """The empty scene of the whole piece, or of the one part of an assembly that a step works
        on: the other parts are elsewhere until it is tied to them."""
        part = part_of_step(self._empty.framework, step)
        if part is None:
            return self._empty
        shape, joints = self._empty.shape, part.framework.joints
        own = replace(
            shape,
            joints=joints,
            positions_m=np.array([shape.at[joint] for joint in joints]),
            tied={},
        )
        return replace(self._empty, shape=own, every_body=self._whole.some(self._of(part)))

    def _of(self, part: Part) -> BoolArray:
        """For each body (n,), whether it is of a part."""
        names = {*part.framework.link, *part.framework.joints}
        return np.array([name in names for name in self._whole.names.tolist()], dtype=bool)


def _in_order(steps: Sequence[Step]) -> Iterator[tuple[Step, int, Turn]]:
    """Every turn of work in the order in which it is done, with its step and its number there."""
    for step in steps:
        for number, turn in enumerate(step.turns):
            yield step, number, turn
