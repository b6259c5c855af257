"""The joint map: the flat plan of a piece, from which a builder reads which joints meet.

A tube is slit along its A chain and laid out flat: one row for each long chain, and A once
more at the foot, because there the tube closes round. The plan is cut into strips that are
stacked on sheets; a strip begins with the section that the strip before it ends with.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import islice, pairwise

from buildplan.drawing.face_map import face_map
from buildplan.drawing.fonts import text_width, wrapped
from buildplan.drawing.graph_map import graph_map
from buildplan.drawing.line_art import INK, PALE, PAPER, SOFT, TYPE
from buildplan.drawing.map_layout import Place, PlanLine, Strip, TubePlan
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
from buildplan.drawing.map_words import cell_label, map_words
from buildplan.drawing.marks import Ink, Label, Mark, Picture, Point, Polyline
from buildplan.drawing.way_round import pointed
from buildplan.framework.model import Framework, LongChain, Role
from buildplan.language.voice import Voice

LEFT = 60.0  # least margin for the rows' letters and places
FACE_GAPS = 6.0, 8.0  # before and after the faces' names
HEAD = 43.0  # a strip's title, cell names and brace numbers
ROW_GAPS = (29.5, 42.0)  # least and most between two rows
DISC_GAPS = (13.0, 44.0)  # least and most bare line between two discs
NARROW, NARROW_DISC_GAP = 400.0, 8.0  # discs stand closer on narrow sheets
STRIP_GAP = 14.0


def joint_map(
    framework: Framework, width: float, height: float, voice: Voice
) -> tuple[Picture, ...]:
    """The joint map on as many sheets as it takes, each at most `width` by `height` points.

    Every joint, link, brace number and lock is drawn in full once; whatever is repeated (the
    first row at the foot, a strip's first section, the first section after the last of a
    closed tube) is pale. An assembly has the maps of its parts, one after another; a piece that
    its pattern draws flat, the front with the back behind it. One that is listed joint by joint
    gets a diagram of joints and lines instead. Type is 8 pt or larger; made for a width of 350
    points or more. The key is at the foot of every sheet; where that leaves no room for a strip,
    it is the last sheet.
    """
    if framework.parts:
        sheets = (
            (part, joint_map(part.framework, width, height, voice)) for part in framework.parts
        )
        return tuple(
            replace(sheet, alt=voice.say("Part {part}. {words}", part=part.name, words=sheet.alt))
            for part, pictures in sheets
            for sheet in pictures
        )
    if framework.laid and framework.mirror and not framework.cells:
        return (face_map(framework, width, height, voice),)
    if not framework.cells:
        return graph_map(framework, width, height, voice)
    key_height, key = legend(_legend_items(framework, voice), width)
    apart = _leaves_no_strip(framework, height, key_height)
    grid = _grid(framework, width, height if apart else height - key_height, voice)
    foot = 0.0 if apart else key_height
    seen: set[str] = set()
    pictures = []
    for sheet in range(grid.sheets):
        numbers = grid.on_sheet(sheet)
        tall = foot + grid.strip_height * len(numbers)
        marks = [] if apart else [*key]
        for i, number in enumerate(numbers):
            top = tall - grid.strip_height * i
            marks += _StripDrawing(grid, number, top).marks(seen)
        strips = [grid.strips[number] for number in numbers]
        words = map_words(grid.plan, strips, sheet + 1, grid.sheets, voice)
        pictures.append(Picture(width, tall, tuple(marks), words))
    if apart:
        words = voice.say(
            "Key of the joint map: {signs}.", signs=voice.listed(_key_words(framework, voice))
        )
        pictures.append(Picture(width, key_height, tuple(key), words))
    return tuple(pictures)


def _leaves_no_strip(framework: Framework, height: float, key_height: float) -> bool:
    """Whether a strip fits on a sheet by itself, but not with the key."""
    strip = _strip_height(TubePlan(framework), joint_radius(framework), ROW_GAPS[0])
    return strip <= height < strip + key_height


def _key_words(framework: Framework, voice: Voice) -> list[str]:
    return [words for _, words in _legend_items(framework, voice)]


def _legend_items(framework: Framework, voice: Voice) -> list[tuple[str, str]]:
    items = [("joint", voice.say_in("legend", "joint"))]
    if any(cell.skipped for cell in framework.cells):
        items.append(("skipped", voice.say_in("legend", "skipped joint: no brace")))
    items.append(("repeat", voice.say_in("legend", "drawn again")))
    if framework.locks:
        items.append(("lock", voice.say_in("legend", "lock")))
    for i, chain in enumerate(framework.chains):
        items.append((str(i), voice.say_in("legend", "chain {letter}", letter=chain.letter)))
    items.append(("way", voice.say_in("legend", "from joint 1 to joint 2")))
    items.append(("brace", voice.say_in("legend", "brace balloon")))
    if any(brace.shared for brace in framework.braces):
        items.append(("shared", voice.say_in("legend", "brace balloon that two braces share")))
    if framework.singles:
        items.append(("single", voice.say_in("legend", "single")))
    return items


def _faces(chains: int, voice: Voice) -> tuple[str, ...]:
    """What is between one row and the next: the sides of a tube of so many chains."""
    front, back = (
        voice.say_in("side of the tube", "front"),
        voice.say_in("side of the tube", "back"),
    )
    inside, outside = (
        voice.say_in("side of the tube", "inside"),
        voice.say_in("side of the tube", "outside"),
    )
    faces = {3: (front, back, outside), 4: (front, inside, back, outside)}
    return faces.get(chains, ())


@dataclass(frozen=True)
class _Grid:
    """The measures that all strips have in common, in points."""

    framework: Framework
    voice: Voice
    plan: TubePlan
    strips: tuple[Strip, ...]
    width: float
    per_sheet: int
    left: float
    radius: float
    column: float
    row_gap: float

    @property
    def sheets(self) -> int:
        """How many sheets the strips take."""
        return -(-len(self.strips) // self.per_sheet)

    @property
    def strip_height(self) -> float:
        """Height of one strip with the gap below it."""
        return _strip_height(self.plan, self.radius, self.row_gap)

    def sheet_of(self, strip: int) -> int:
        """The sheet, from 0, that a strip is on."""
        return strip // self.per_sheet

    def on_sheet(self, sheet: int) -> range:
        """Numbers, from 0, of the strips on a sheet."""
        first = sheet * self.per_sheet
        return range(first, min(first + self.per_sheet, len(self.strips)))


def _place_lines(chain: LongChain, voice: Voice) -> list[str]:
    """The place of a chain, in two lines where it is too long for the margin."""
    return list(wrapped(voice.tell(chain.where), LEFT - 6, TYPE))


def _strip_height(plan: TubePlan, radius: float, row_gap: float) -> float:
    return HEAD + 2 * radius + (len(plan.rows) - 1) * row_gap + STRIP_GAP


def _grid(framework: Framework, width: float, height: float, voice: Voice) -> _Grid:
    """Cut the plan into strips and choose measures that fill sheets `height` points high."""
    plan, radius = TubePlan(framework), joint_radius(framework)
    lines = [line for chain in framework.chains for line in _place_lines(chain, voice)]
    left = max(LEFT, *(text_width(line, TYPE) + 6 for line in lines))
    faces = (text_width(face, TYPE) for face in _faces(len(framework.chains), voice))
    right = max((TYPE, *faces)) + sum(FACE_GAPS)
    room = width - left - right - 2 * radius
    gap = DISC_GAPS[0] if width >= NARROW else NARROW_DISC_GAP
    strips = plan.strips(room / (2 * radius + gap))
    widest = max(plan.columns[strip.last] - plan.columns[strip.first] for strip in strips)
    fit = max(1, int(height // _strip_height(plan, radius, ROW_GAPS[0])))
    per_sheet = -(-len(strips) // -(-len(strips) // fit))
    spare = height / per_sheet - _strip_height(plan, radius, 0)
    return _Grid(
        framework,
        voice,
        plan,
        tuple(strips),
        width,
        per_sheet,
        left,
        radius,
        column=min(room / widest, 2 * radius + DISC_GAPS[1]),
        row_gap=min(max(spare / (len(plan.rows) - 1), ROW_GAPS[0]), ROW_GAPS[1]),
    )


@dataclass(frozen=True)
class _StripDrawing:
    """One strip on its sheet, its upper edge at `top`."""

    grid: _Grid
    number: int
    top: float

    def marks(self, seen: set[str]) -> list[Mark]:
        """The strip's marks. `seen` names what earlier strips drew in full (joints, links and
        `brace 5`), and takes in what this one draws."""
        return [
            *self._title(),
            *self._row_names(),
            *self._lines(seen),
            *self._flags(seen),
            *self._discs(seen),
            *self._way(),
        ]

    @property
    def _strip(self) -> Strip:
        return self.grid.strips[self.number]

    def _x(self, column: float) -> float:
        grid = self.grid
        first = grid.plan.columns[self._strip.first]
        return grid.left + grid.radius + (column - first) * grid.column

    def _y(self, row: int) -> float:
        return self.top - HEAD - self.grid.radius - row * self.grid.row_gap

    def _title(self) -> Iterator[Mark]:
        plan, width = self.grid.plan, self.grid.width
        first, last = (plan.brace_number(k) for k in (self._strip.first, self._strip.last))
        words = self.grid.voice.say(
            "Strip {number} of {strips}: brace {first} to brace {last}",
            number=self.number + 1,
            strips=len(self.grid.strips),
            first=first,
            last=last,
        )
        goes_on = self._goes_on(last)
        wide = text_width(words, 9, bold=True) + text_width(goes_on, TYPE)
        if wide + TYPE > width:  # the numbers of braces are in the plan below as well
            words = self.grid.voice.say(
                "Strip {number} of {strips}", number=self.number + 1, strips=len(self.grid.strips)
            )
        rule = ((0, self.top - 13), (width, self.top - 13))
        yield Polyline(rule, Ink(stroke=PALE, width=0.5))
        yield Label((0, self.top - 9), words, 9, INK, anchor="start", bold=True)
        yield Label((width, self.top - 9), goes_on, TYPE, INK, anchor="end")
        foot = self.top - 34 - TYPE * 0.35
        yield Label((0, foot), self.grid.voice.say_in("label", "brace"), TYPE, INK, anchor="start")

    def _goes_on(self, last: int) -> str:
        grid, after = self.grid, self.number + 1
        if after < len(grid.strips):
            sheet = grid.sheet_of(after)
            if sheet == grid.sheet_of(self.number):
                return self.grid.voice.say(
                    "goes on at brace {brace}: strip {strip}", brace=last, strip=after + 1
                )
            return self.grid.voice.say(
                "goes on at brace {brace}: strip {strip}, sheet {sheet}",
                brace=last,
                strip=after + 1,
                sheet=sheet + 1,
            )
        if not grid.framework.closed:
            return self.grid.voice.say("ends here")
        if after == 1:
            return self.grid.voice.say("closes round to brace {brace}", brace=last)
        if grid.sheets == 1:
            return self.grid.voice.say(
                "closes round to brace {brace}: strip {strip}", brace=last, strip=1
            )
        return self.grid.voice.say(
            "closes round to brace {brace}: strip {strip}, sheet {sheet}",
            brace=last,
            strip=1,
            sheet=1,
        )

    def _row_names(self) -> Iterator[Mark]:
        plan, chains = self.grid.plan, self.grid.framework.chains
        right = self._x(plan.columns[self._strip.last]) + self.grid.radius + FACE_GAPS[0]
        for row, chain in enumerate(plan.rows):
            again = plan.repeats_first_row(row)
            colour = SOFT if again else INK
            lines = (
                [self.grid.voice.say_in("row of a map", "again")]
                if again
                else _place_lines(chain, self.grid.voice)
            )
            y = self._y(row)
            foot = y - 9 + 3 * (len(lines) - 1)
            yield Label((0, foot + 11), chain.letter, 11, colour, anchor="start", bold=True)
            for number, line in enumerate(lines):
                yield Label((0, foot - 9 * number), line, TYPE, SOFT, anchor="start")
            yield Label((right, y - 4), chain.letter, 11, colour, anchor="start", bold=True)
        for row, face in enumerate(_faces(len(chains), self.grid.voice)):
            y = (self._y(row) + self._y(row + 1)) / 2 - TYPE * 0.35
            yield Label((right, y), face, TYPE, SOFT, anchor="start")

    def _lines(self, seen: set[str]) -> Iterator[Mark]:
        plan = self.grid.plan
        spots = plan.spots(self._strip)
        for line in plan.lines(self._strip):
            start, finish = (
                (self._x(spots[place]), self._y(place[0])) for place in (line.start, line.finish)
            )
            yield from link_marks(start, finish, self._style(line), line.link in seen)
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
            at = (self._x(plan.columns[section]), self.top - 34)
            yield from _flag(at, number, joint, name in seen)
            seen.add(name)
        for section in range(self._strip.first, self._strip.last):
            cell = self.grid.framework.cells[section]
            if cell.name != "straight":
                middle = (plan.columns[section] + plan.columns[section + 1]) / 2
                at = (self._x(middle), self.top - 22)
                yield Label(at, cell_label(cell.name, self.grid.voice), TYPE, SOFT)

    def _discs(self, seen: set[str]) -> Iterator[Mark]:
        plan = self.grid.plan
        reached = {
            place
            for section in range(self._strip.first, self._strip.last + 1)
            for place in plan.section_places(section)
        }
        spots: dict[Place, float] = plan.spots(self._strip)
        for place in sorted(spots):
            joint = plan.joint(place)
            yield from joint_marks(
                (self._x(spots[place]), self._y(place[0])),
                self.grid.radius,
                joint,
                skipped=place not in reached,
                locked=joint in self.grid.framework.lock_at,
                repeat=joint in seen,
            )
            seen.add(joint)


def _flag(at: Point, brace: int, joint: Point, again: bool) -> list[Mark]:
    """A brace's number over the plan, and the line that leads to its joint in the top row."""
    x, y = at
    text = str(brace)
    half = text_width(text, TYPE, bold=True) / 2 + 3
    box = ((x - half, y - 6), (x + half, y - 6), (x + half, y + 6), (x - half, y + 6))
    return [
        Polyline(((x, y - 6), joint), Ink(stroke=PALE if again else SOFT, width=0.6)),
        Polyline(box, Ink(fill=PAPER, stroke=PALE if again else INK, width=0.8), closed=True),
        Label((x, y - TYPE * 0.36), text, TYPE, SOFT if again else INK, bold=True),
    ]
