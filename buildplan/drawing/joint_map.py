"""The joint map: the flat plan of a piece, from which a builder reads which joints meet.

A tube is slit along its A chain and laid out flat: one row for each long chain, and A once
more at the foot, because there the tube closes round. The plan is cut into strips that are
stacked on sheets; a strip begins with the section that the strip before it ends with.
"""

from __future__ import annotations

from dataclasses import dataclass

from buildplan.drawing.fonts import text_width
from buildplan.drawing.graph_map import graph_map
from buildplan.drawing.line_art import INK, PALE, PAPER, SOFT, TYPE
from buildplan.drawing.map_layout import PlanLine, Strip, TubePlan
from buildplan.drawing.map_style import (
    BRACE,
    SHARED,
    SINGLE,
    LinkStyle,
    chain_style,
    joint_marks,
    joint_radius,
    legend,
    link_marks,
)
from buildplan.drawing.marks import Ink, Label, Mark, Picture, Point, Polyline
from buildplan.framework.model import Framework, Role

LEFT, RIGHT = 60.0, 50.0  # margins for the rows' letters, places and the faces' names
HEAD = 44.0  # a strip's title, cell names and brace numbers
ROW_GAPS = (31.0, 42.0)
COLUMN_GAPS = (13.0, 44.0)  # bare line between two discs
STRIP_GAP = 16.0
FACES = {3: ("front", "back", "outside"), 4: ("front", "inside", "back", "outside")}


def joint_map(framework: Framework, width: float, height: float) -> tuple[Picture, ...]:
    """The joint map on as many sheets as it takes, each at most `width` by `height` points.

    Every joint, link, brace number and lock is drawn in full once; whatever is repeated (the
    first row at the foot, a strip's first section, the first section after the last of a
    closed tube) is pale. A piece that is listed joint by joint gets a diagram of joints and
    lines instead. Type is 8 pt or larger.
    """
    if not framework.cells:
        return graph_map(framework, width, height)
    return _TubeMap(framework, TubePlan(framework), width, height).sheets()


@dataclass(frozen=True)
class _TubeMap:
    framework: Framework
    plan: TubePlan
    width: float
    height: float

    def sheets(self) -> tuple[Picture, ...]:
        radius = joint_radius(self.framework)
        room = self.width - LEFT - RIGHT - 2 * radius
        strips = self.plan.strips(room / (2 * radius + COLUMN_GAPS[0]))
        column = min(
            2 * radius + COLUMN_GAPS[1],
            room / max(self.plan.columns[s.last] - self.plan.columns[s.first] for s in strips),
        )
        key_height, key = legend(self._legend_items(), self.width)
        gaps = len(self.plan.rows) - 1
        fixed = HEAD + 2 * radius + 4

        def fit(row_gap: float) -> int:
            room = self.height - key_height
            return int((room) // (fixed + gaps * row_gap + STRIP_GAP))

        per_sheet = max(1, fit(ROW_GAPS[0]))
        sheets = -(-len(strips) // per_sheet)
        per_sheet = -(-len(strips) // sheets)
        row_gap = (self.height - key_height) / per_sheet - STRIP_GAP - fixed
        row_gap = max(min(row_gap / gaps, ROW_GAPS[1]), min(ROW_GAPS))
        sheet_of = [i // per_sheet for i in range(len(strips))]
        seen: set[str] = set()
        pictures = []
        for sheet in range(sheets):
            here = [i for i in range(len(strips)) if sheet_of[i] == sheet]
            each = fixed + gaps * row_gap + STRIP_GAP
            tall = key_height + each * len(here)
            marks = [*key]
            for place, i in enumerate(here):
                top = tall - each * place
                marks += self._strip(strips, i, sheet_of, top, radius, column, row_gap, seen)
            words = self._alt([strips[i] for i in here], sheet, sheets)
            pictures.append(Picture(self.width, tall, tuple(marks), words))
        return tuple(pictures)

    def _legend_items(self) -> list[tuple[str, str]]:
        framework = self.framework
        items = [("joint", "joint")]
        if any(cell.skipped for cell in framework.cells):
            items.append(("skipped", "skipped joint: no brace"))
        items.append(("repeat", "drawn again"))
        if framework.locks:
            items.append(("lock", "lock"))
        items += [(str(i), f"chain {chain.letter}") for i, chain in enumerate(framework.chains)]
        items.append(("brace", "brace balloon"))
        if any(brace.shared for brace in framework.braces):
            items.append(("shared", "brace balloon that two braces share"))
        if framework.singles:
            items.append(("single", "single"))
        return items

    def _strip(
        self,
        strips: list[Strip],
        number: int,
        sheet_of: list[int],
        top: float,
        radius: float,
        column: float,
        row_gap: float,
        seen: set[str],
    ) -> list[Mark]:
        plan, strip = self.plan, strips[number]
        spots = plan.spots(strip)
        first_row = top - HEAD - radius
        left = LEFT + radius - plan.columns[strip.first] * column

        def at(place: tuple[int, int]) -> Point:
            return (left + spots[place] * column, first_row - place[0] * row_gap)

        right = left + plan.columns[strip.last] * column + radius
        marks = self._title(strips, number, sheet_of, top)
        marks += self._row_names(first_row, row_gap, right)
        lines, flags, discs = [], [], []
        for line in plan.lines(strip):
            again = line.link in seen or (
                plan.repeats_first_row(line.start[0]) and plan.repeats_first_row(line.finish[0])
            )
            lines += link_marks(at(line.start), at(line.finish), self._style(line), again)
            if not plan.repeats_first_row(line.start[0]):
                seen.add(line.link)
        flag_y = top - 34
        for section in range(strip.first, strip.last + 1):
            brace = plan.brace_number(section)
            again = f"brace {brace}" in seen
            seen.add(f"brace {brace}")
            x = left + plan.columns[section] * column
            flags += _flag((x, flag_y), brace, at((0, plan.reached[section][0])), radius, again)
            if section < strip.last:
                cell = self.framework.cells[section]
                if cell.name != "straight":
                    middle = x + column * (plan.columns[section + 1] - plan.columns[section]) / 2
                    name = cell.name.replace("_", " ")
                    flags.append(Label((middle, top - 22), name, TYPE, SOFT))
        touched = {
            place for k in range(strip.first, strip.last + 1) for place in plan.section_places(k)
        }
        for place in sorted(spots):
            joint = plan.joint(place)
            discs += joint_marks(
                at(place),
                radius,
                joint,
                skipped=place not in touched,
                locked=joint in self.framework.lock_at,
                repeat=joint in seen,
            )
            seen.add(joint)
        return [*marks, *lines, *flags, *discs]

    def _style(self, line: PlanLine) -> LinkStyle:
        role = self.framework.link[line.link].role
        if role is Role.CHAIN:
            return chain_style(line.start[0] % len(self.framework.chains))
        if role is Role.SINGLE:
            return SINGLE
        shared = any(line.link in brace.shared for brace in self.framework.braces)
        return SHARED if shared else BRACE

    def _title(
        self, strips: list[Strip], number: int, sheet_of: list[int], top: float
    ) -> list[Mark]:
        plan, strip = self.plan, strips[number]
        first, last = plan.brace_number(strip.first), plan.brace_number(strip.last)
        is_last = number == len(strips) - 1
        words = f"Strip {number + 1} of {len(strips)}: brace {first} to brace {last}"
        if is_last:
            goes_on = "closes round to brace 1" if self.framework.closed else "ends here"
            if self.framework.closed and len(strips) > 1:
                goes_on += f": strip 1, sheet {sheet_of[0] + 1}"
        else:
            goes_on = f"goes on at brace {last}: strip {number + 2}"
            if sheet_of[number + 1] != sheet_of[number]:
                goes_on += f", sheet {sheet_of[number + 1] + 1}"
        y = top - 9
        rule = Polyline(((0, top - 13), (self.width, top - 13)), Ink(stroke=PALE, width=0.5))
        return [
            rule,
            Label((0, y), words, 9, INK, anchor="start", bold=True),
            Label((self.width, y), goes_on, TYPE, INK, anchor="end"),
            Label((0, top - 34 - TYPE * 0.35), "brace", TYPE, INK, anchor="start"),
        ]

    def _row_names(self, first_row: float, row_gap: float, right: float) -> list[Mark]:
        marks: list[Mark] = []
        chains = self.framework.chains
        for row, chain in enumerate(self.plan.rows):
            again = self.plan.repeats_first_row(row)
            colour = SOFT if again else INK
            y = first_row - row * row_gap
            place = "again" if again else chain.place
            marks += [
                Label((0, y + 2), chain.letter, 11, colour, anchor="start", bold=True),
                Label((0, y - 9), place, TYPE, SOFT, anchor="start"),
                Label((right + 6, y - 4), chain.letter, 11, colour, anchor="start", bold=True),
            ]
        for row, face in enumerate(FACES.get(len(chains), ())):
            y = first_row - (row + 0.5) * row_gap - TYPE * 0.35
            marks.append(Label((right + 6, y), face, TYPE, SOFT, anchor="start"))
        return marks

    def _alt(self, strips: list[Strip], sheet: int, sheets: int) -> str:
        plan, framework = self.plan, self.framework
        chains = ", ".join(
            f"{chain.letter} ({chain.place}, {len(chain.chain.links)} balloons)"
            for chain in framework.chains
        )
        parts = [f"Joint map, sheet {sheet + 1} of {sheets}. Long chains: {chains}."]
        for strip in strips:
            for section in range(strip.first, strip.last):
                parts.append(self._brace_words(section))
        last = strips[-1].last
        if not framework.closed and last == len(framework.cells):
            parts.append(self._brace_words(last))
        elif framework.closed and last == len(framework.cells):
            parts.append("Then comes brace 1 again.")
        else:
            parts.append(f"Goes on at brace {plan.brace_number(last)}.")
        return " ".join(parts)

    def _brace_words(self, section: int) -> str:
        framework = self.framework
        brace = framework.braces[section]
        words = f"Brace {brace.number} ties {', '.join(brace.section)}"
        if brace.shared:
            words += f", sharing {', '.join(brace.shared)}"
        words += "."
        if section < len(framework.cells) and (skipped := framework.cells[section].skipped):
            words += f" Skipped: {', '.join(skipped)}."
            singles = [id_ for id_ in framework.singles if framework.link[id_].start in skipped]
            if singles:
                words += f" Singles: {', '.join(singles)}."
        return words


def _flag(at: Point, brace: int, joint: Point, radius: float, again: bool) -> list[Mark]:
    """A brace's number over the plan, and the line that leads to its joint in the top row."""
    x, y = at
    text = str(brace)
    half = text_width(text, TYPE, bold=True) / 2 + 3
    ink, colour = (PALE, SOFT) if again else (INK, INK)
    box = ((x - half, y - 6), (x + half, y - 6), (x + half, y + 6), (x - half, y + 6))
    return [
        Polyline(((x, y - 6), joint), Ink(stroke=PALE if again else SOFT, width=0.6)),
        Polyline(box, Ink(fill=PAPER, stroke=ink, width=0.8), closed=True),
        Label((x, y - TYPE * 0.36), text, TYPE, colour, bold=True),
    ]
