"""Where everything lies on the flat plan of a tube: sections, spots, lines, strips.

Section k (from 0) lies before cell k. `reached[k]` are the numbers of balloons by which the
outer and the inner chains have advanced there; along a ring they go on counting past its
last joint, so that the plan of a closed tube ends with its first section again.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from math import fsum

from buildplan.framework import chain_roles
from buildplan.framework.model import Framework, LongChain

OUTER, INNER = 0, 1
PlanPlace = tuple[int, int]  # row, and index along the row's chain


def side_of(chain: LongChain) -> int:
    """Whether a long chain is one of the outer or of the inner ones."""
    return INNER if chain.role == chain_roles.INNER else OUTER


@dataclass(frozen=True)
class PlanLine:
    """A link balloon on the plan: its id and the two places that it joins."""

    link: str
    start: PlanPlace
    finish: PlanPlace


@dataclass(frozen=True)
class Strip:
    """A stretch of the plan, from section `first` to section `last`."""

    first: int
    last: int


@dataclass(frozen=True)
class UnrolledTube:
    """The flat plan of a tube. With three or four chains the first row comes again last."""

    framework: Framework

    @cached_property
    def rows(self) -> tuple[LongChain, ...]:
        """The chain of each row, from the top."""
        chains = self.framework.chains
        return (*chains, chains[0]) if len(chains) > 2 else chains

    @cached_property
    def reached(self) -> tuple[tuple[int, int], ...]:
        """Advances (outer, inner) at each section."""
        found = [(0, 0)]
        for cell in self.framework.cells:
            outer, inner = found[-1]
            found.append((outer + cell.outer, inner + cell.inner))
        return tuple(found)

    @cached_property
    def columns(self) -> tuple[float, ...]:
        """Column of each section: a cell is as wide as the side that advances more."""
        found = [0.0]
        for cell in self.framework.cells:
            found.append(found[-1] + max(cell.outer, cell.inner, 1))
        return tuple(found)

    def joint(self, place: PlanPlace) -> str:
        """The label of the joint at a place."""
        row, index = place
        joints = self.rows[row].chain.joints
        return joints[index % len(joints)]

    def repeats_first_row(self, row: int) -> bool:
        """Whether a row shows the first row's chain again."""
        return row == len(self.framework.chains)

    def brace_number(self, section: int) -> int:
        """The number of the brace at a section; after a closed tube's last comes 1 again."""
        return self.framework.braces[section % len(self.framework.braces)].number

    def section_places(self, section: int) -> tuple[PlanPlace, ...]:
        """The places that a brace ties together, one in each row."""
        reached = self.reached[section]
        return tuple((row, reached[side_of(chain)]) for row, chain in enumerate(self.rows))

    def spots(self, strip: Strip) -> dict[PlanPlace, float]:
        """The column of every joint in a strip.

        A joint that several sections share lies in the middle of them; one that no section
        reaches is spaced evenly between its neighbours along the chain.
        """
        found: dict[PlanPlace, float] = {}
        sections = range(strip.first, strip.last + 1)
        for row, chain in enumerate(self.rows):
            side = side_of(chain)
            at: dict[int, list[float]] = {}
            for section in sections:
                at.setdefault(self.reached[section][side], []).append(self.columns[section])
            known = {index: fsum(columns) / len(columns) for index, columns in at.items()}
            marks = sorted(known)
            for index in marks:
                found[row, index] = known[index]
            for low, high in pairwise(marks):
                for index in range(low + 1, high):
                    share = (index - low) / (high - low)
                    found[row, index] = known[low] + (known[high] - known[low]) * share
        return found

    @cached_property
    def shared(self) -> frozenset[str]:
        """Links that more than one brace uses."""
        return frozenset(link for brace in self.framework.braces for link in brace.shared)

    @cached_property
    def _between(self) -> dict[frozenset[str], str]:
        across = [link for brace in self.framework.braces for link in brace.links]
        links = [self.framework.link[id_] for id_ in (*across, *self.framework.singles)]
        return {frozenset((link.start, link.finish)): link.id for link in links}

    def lines(self, strip: Strip) -> Iterator[PlanLine]:
        """Every link of a strip, once (the first row's chain once more in the last row)."""
        first, last = self.reached[strip.first], self.reached[strip.last]
        for row, chain in enumerate(self.rows):
            side, links = side_of(chain), chain.chain.links
            for index in range(first[side], last[side]):
                yield PlanLine(links[index % len(links)], (row, index), (row, index + 1))
        drawn: set[tuple[PlanPlace, PlanPlace]] = set()
        for section in range(strip.first, strip.last + 1):
            places = self.section_places(section)
            for pair in pairwise(places):
                if pair not in drawn and (link := self._link_at(*pair)):
                    drawn.add(pair)
                    yield PlanLine(link, *pair)
        places_of_joints = self.spots(strip)
        for row, index in sorted(places_of_joints):
            other = (row + 1, index)
            if other in places_of_joints and ((row, index), other) not in drawn:
                link = self._link_at((row, index), other)
                if link in self.framework.singles:
                    yield PlanLine(str(link), (row, index), other)

    def _link_at(self, start: PlanPlace, finish: PlanPlace) -> str | None:
        return self._between.get(frozenset((self.joint(start), self.joint(finish))))

    def strips(self, most_columns: float) -> list[Strip]:
        """Cut the plan into strips at most so wide, of about equal width.

        A course that repeats itself is cut where it repeats. Otherwise a cut is made, where
        there is one near, at a section that shares no joint with its neighbours.
        """
        count = len(self.framework.cells)
        period = self._period()
        width = self.columns[period]
        if period < count and width <= most_columns:
            repeats, fit = count // period, int(most_columns // width)
            strips = -(-repeats // fit)
            cuts = [round(i * repeats / strips) * period for i in range(strips + 1)]
            return [Strip(a, b) for a, b in pairwise(cuts)]
        found, first = [], 0
        while first < count:
            left = self.columns[count] - self.columns[first]
            share = left / -(-left // most_columns)
            fits = [
                k
                for k in range(first + 1, count + 1)
                if self.columns[k] - self.columns[first] <= most_columns
            ] or [first + 1]
            if fits[-1] == count and share >= left:
                last = count
            else:
                last = min(fits, key=lambda k: self._cut_cost(first, k, share))
            found.append(Strip(first, last))
            first = last
        return found

    def _cut_cost(self, first: int, cut: int, share: float) -> float:
        off = abs(self.columns[cut] - self.columns[first] - share)
        cells = self.framework.cells
        around = (cells[cut - 1], cells[cut % len(cells)])
        shares_a_joint = any(min(cell.outer, cell.inner) == 0 for cell in around)
        return off + 2.5 * shares_a_joint

    def _period(self) -> int:
        advances = [(cell.outer, cell.inner) for cell in self.framework.cells]
        count = len(advances)
        for period in range(1, count + 1):
            if count % period == 0 and advances == advances[:period] * (count // period):
                return period
        return count
