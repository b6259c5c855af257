"""One strip of a joint map, drawn on its sheet."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import islice, pairwise

from buildplan.drawing.fonts import text_width
from buildplan.drawing.line_art import INK, PALE, SOFT, TYPE
from buildplan.drawing.map_layout import PlanLine, PlanPlace, Strip
from buildplan.drawing.map_style import (
    BRACE,
    SHARED,
    SINGLE,
    LinkStyle,
    brace_number,
    chain_style,
)
from buildplan.drawing.map_words import cell_label
from buildplan.drawing.maps.blocks import DrawnJoint, DrawnLink, MapBlock
from buildplan.drawing.maps.strip_grid import FACE_GAPS, HEAD, StripGrid, place_lines, side_names
from buildplan.drawing.marks import Ink, Label, Mark, Point, Polyline
from buildplan.drawing.way_round import pointed
from buildplan.framework.cells import STRAIGHT
from buildplan.framework.model import Role
from buildplan.language.voice import Voice


@dataclass(frozen=True)
class StripDrawing:
    """One strip, drawn from the lower left corner of its place on a sheet."""

    grid: StripGrid
    number: int

    def block(self, seen: set[str]) -> MapBlock:
        """The strip with the gap below it. `seen` names what earlier strips drew in full (joints,
        links and `brace 5`), and takes in what this one draws."""
        links = tuple(self._lines(seen))
        flags = tuple(self._flags(seen))
        return MapBlock(
            self.grid.width,
            self.grid.strip_height,
            tuple(self._discs(seen)),
            links,
            (*self._title(), *self._row_names(), *flags),
            tuple(self._way()),
        )

    @property
    def _top(self) -> float:
        return self.grid.strip_height

    @property
    def _voice(self) -> Voice:
        return self.grid.voice

    @property
    def _strip(self) -> Strip:
        return self.grid.strips[self.number]

    def _x(self, column: float) -> float:
        grid = self.grid
        first = grid.plan.columns[self._strip.first]
        return grid.left + grid.radius + (column - first) * grid.column

    def _y(self, row: int) -> float:
        return self._top - HEAD - self.grid.radius - row * self.grid.row_gap

    def _title(self) -> Iterator[Mark]:
        plan, width = self.grid.plan, self.grid.width
        first, last = (plan.brace_number(k) for k in (self._strip.first, self._strip.last))
        words = self._voice.say(
            "Strip {number} of {strips}: braces {first} to {last}",
            number=self.number + 1,
            strips=len(self.grid.strips),
            first=first,
            last=last,
        )
        goes_on = self._goes_on(last)
        wide = text_width(words, 9, bold=True) + text_width(goes_on, TYPE)
        if wide + TYPE > width:  # the numbers of braces are in the plan below as well
            words = self._voice.say(
                "Strip {number} of {strips}", number=self.number + 1, strips=len(self.grid.strips)
            )
        rule = ((0, self._top - 13), (width, self._top - 13))
        yield Polyline(rule, Ink(stroke=PALE, width=0.5))
        yield Label((0, self._top - 9), words, 9, INK, anchor="start", bold=True)
        if goes_on:
            yield Label((width, self._top - 9), goes_on, TYPE, INK, anchor="end")
        foot = self._top - 34 - TYPE * 0.35
        yield Label((0, foot), self._voice.say_in("label", "brace"), TYPE, INK, anchor="start")

    def _goes_on(self, last: int) -> str:
        grid, after = self.grid, self.number + 1
        if after < len(grid.strips):
            sheet = grid.sheet_of(after)
            if sheet == grid.sheet_of(self.number):
                return ""  # the next strip is the one below
            return self._voice.say(
                "goes on at brace {brace}: strip {strip}, sheet {sheet}",
                brace=last,
                strip=after + 1,
                sheet=sheet + 1,
            )
        if not grid.framework.closed:
            return self._voice.say("ends here")
        if after == 1:
            return self._voice.say("closes round to brace {brace}", brace=last)
        if grid.sheets == 1:
            return self._voice.say(
                "closes round to brace {brace}: strip {strip}", brace=last, strip=1
            )
        return self._voice.say(
            "closes round to brace {brace}: strip {strip}, sheet {sheet}",
            brace=last,
            strip=1,
            sheet=1,
        )

    @property
    def _is_first(self) -> bool:
        """Whether the strip is the first of all, which says where rows and sides are."""
        return self.number == 0

    def _row_names(self) -> Iterator[Mark]:
        plan, chains = self.grid.plan, self.grid.framework.chains
        right = self._x(plan.columns[self._strip.last]) + self.grid.radius + FACE_GAPS[0]
        for row, chain in enumerate(plan.rows):
            again = plan.repeats_first_row(row)
            colour = SOFT if again else INK
            lines = (
                [self._voice.say_in("row of a map", "again")]
                if again
                else place_lines(chain, self._voice)
            )
            y = self._y(row)
            foot = y - 9 + 3 * (len(lines) - 1)
            letter = self.grid.names.short(chain.letter)
            yield Label((0, foot + 11), letter, 11, colour, anchor="start", bold=True)
            for number, line in enumerate(lines if self._is_first else ()):
                yield Label((0, foot - 9 * number), line, TYPE, SOFT, anchor="start")
        faces = side_names(len(chains), self._voice) if self._is_first else ()
        for row, face in enumerate(faces):
            y = (self._y(row) + self._y(row + 1)) / 2 - TYPE * 0.35
            yield Label((right, y), face, TYPE, SOFT, anchor="start")

    def _lines(self, seen: set[str]) -> Iterator[DrawnLink]:
        plan = self.grid.plan
        spots = plan.spots(self._strip)
        for line in plan.lines(self._strip):
            link = self.grid.framework.link[line.link]
            places = [line.start, line.finish]
            if plan.joint(places[0]) != link.start:
                places.reverse()
            start, finish = ((self._x(spots[place]), self._y(place[0])) for place in places)
            yield DrawnLink(link, start, finish, self._style(line), line.link in seen)
            seen.add(line.link)

    def _way(self) -> Iterator[Mark]:
        """On the first strip, the way the numbers run: from joint 1 of each chain to joint 2."""
        if self.number:
            return
        plan = self.grid.plan
        spots, reach = plan.spots(self._strip), self.grid.radius + 1.5
        for row in range(len(plan.rows)):
            places = sorted(x for place, x in spots.items() if place[0] == row)
            y = self._y(row)
            for first, second in islice(pairwise(places), 1):
                yield from pointed([(self._x(first) + reach, y), (self._x(second) - reach, y)])

    def _style(self, line: PlanLine) -> LinkStyle:
        framework = self.grid.framework
        role = framework.link[line.link].role
        if role is Role.CHAIN:
            return chain_style(line.start[0] % len(framework.chains))
        if role is Role.SINGLE:
            return SINGLE
        return SHARED if line.link in self.grid.plan.shared else BRACE

    def _flags(self, seen: set[str]) -> Iterator[Mark]:
        """Brace numbers over the plan, and the names of cells that are not straight."""
        plan = self.grid.plan
        spots = plan.spots(self._strip)
        for section in range(self._strip.first, self._strip.last + 1):
            number = plan.brace_number(section)
            name = f"brace {number}"
            joint = self._x(spots[0, plan.section_places(section)[0][1]]), self._y(0)
            at = (self._x(plan.columns[section]), self._top - 34)
            yield from _flag(at, number, joint, name in seen)
            seen.add(name)
        for section in range(self._strip.first, self._strip.last):
            cell = self.grid.framework.cells[section]
            if cell.kind != STRAIGHT:
                middle = (plan.columns[section] + plan.columns[section + 1]) / 2
                at = (self._x(middle), self._top - 22)
                yield Label(at, cell_label(cell.kind, self._voice), TYPE, SOFT)

    def _discs(self, seen: set[str]) -> Iterator[DrawnJoint]:
        plan = self.grid.plan
        reached = {
            place
            for section in range(self._strip.first, self._strip.last + 1)
            for place in plan.section_places(section)
        }
        spots: dict[PlanPlace, float] = plan.spots(self._strip)
        for place in sorted(spots):
            joint, at = plan.joint(place), (self._x(spots[place]), self._y(place[0]))
            yield DrawnJoint(joint, at, joint in seen, skipped=place not in reached)
            seen.add(joint)


def _flag(at: Point, brace: int, joint: Point, again: bool) -> list[Mark]:
    """A brace's number over the plan, and the line that leads to its joint in the top row."""
    leader = ((at[0], at[1] - 6), joint)
    return [
        Polyline(leader, Ink(stroke=PALE if again else SOFT, width=0.6)),
        *brace_number(at, str(brace), again=again),
    ]
