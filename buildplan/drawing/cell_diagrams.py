"""One cell of a tube as a line diagram: which joints meet, and by which balloons.

Where they lie is `cell_layout.py`'s.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property

from shapely.geometry import Polygon

from buildplan.drawing.cell_layout import CellLayout, Stub, lay_cell, newest_brace
from buildplan.drawing.cell_words import Clutter, Stick, around, best_spot, gap, word_box
from buildplan.drawing.colours import mix
from buildplan.drawing.corner_marks import boxed_in, crossed_out, hatching
from buildplan.drawing.fonts import text_width
from buildplan.drawing.line_art import (
    INK,
    PALE,
    PAPER,
    SOFT,
    TYPE,
    between,
    link_outline,
    toward,
)
from buildplan.drawing.map_style import LOCK_HALF, joint_marks, joint_radius, lock_place
from buildplan.drawing.map_words import cell_label
from buildplan.drawing.marks import Box, Circle, Curve, Ink, Label, Mark, Picture, Point, Polyline
from buildplan.drawing.order_discs import order_discs, rows_of
from buildplan.framework.model import Brace, Cell, Framework, Link, Role
from buildplan.language.phrases import sentences
from buildplan.language.voice import Voice

IN_FRONT = -1e3  # the depth of joints' discs, over every balloon


@dataclass(frozen=True)
class _Bar:
    """A link on the diagram: its ends on paper, how far back it lies, and how it is shown."""

    link: Link
    start: Point
    finish: Point
    depth: float
    ink: Ink
    word: str = ""

    def body(self, half: float) -> Stick:
        """What of the paper it covers between its joints."""
        start, finish = toward(self.start, self.finish, 12), toward(self.finish, self.start, 12)
        return Stick(start, finish, half)


def cell_diagram(
    framework: Framework,
    cell_number: int,
    width: float,
    height: float,
    voice: Voice,
    locked: Collection[str] | None = None,
) -> Picture:
    """A cell with its two braces; the one tied last is bold. Joints that are `locked` by then carry
    their locks, all of the piece's where nothing is said.

    A balloon that both braces use is marked "shared", one across skipped joints "single";
    skipped joints are open. The ends of the neighbouring balloons are pale. Designed for
    220 x 170 points or more; type is 8 pt.
    """
    cell = next(cell for cell in framework.cells if cell.number == cell_number)
    joint = framework.brace[cell.first].section[0]
    part = framework.part_at(joint)
    mirrored = part is not None and part.mirrored
    built, size = framework.built_with(joint), (width, height)
    laid = lay_cell(built, cell, size, mirrored=mirrored)
    held = frozenset(framework.lock_at if locked is None else locked)
    return _CellDrawing(built, cell, laid, size, voice, held).picture()


@dataclass(frozen=True)
class _CellDrawing:
    framework: Framework
    cell: Cell
    laid: CellLayout
    size: tuple[float, float]
    voice: Voice
    locked: frozenset[str]

    @cached_property
    def _newest(self) -> Brace:
        return newest_brace(self.framework, self.cell)

    @cached_property
    def _radius(self) -> float:
        return joint_radius(self.framework)

    def picture(self) -> Picture:
        """The cell as laid out, its words where they cover least."""
        bars = [self._bar(link) for link in self.laid.links]
        half = self.laid.thick / 2
        marks: list[Mark] = [mark for layer in self._layers(bars) for mark in layer]
        marks += self._words(bars, self._clutter(bars), half)
        kind = (("picture", "corner diagram"), ("cell", str(self.cell.number)))
        return Picture(*self.size, tuple(marks), self._alt(), kind)

    def _layers(self, bars: Sequence[_Bar]) -> list[list[Mark]]:
        """What is drawn, from back to front."""
        laid, radius, cell = self.laid, self._radius, self.cell
        layers: list[tuple[float, list[Mark]]] = [
            (stub.depth + 0.002, _stub(stub, radius)) for stub in laid.stubs
        ]
        layers += [(bar.depth, self._body(bar)) for bar in bars]
        for joint, spot in laid.spots.items():
            marks = joint_marks(
                spot,
                radius,
                joint,
                skipped=joint in cell.skipped,
                locked=joint in self.locked,
                repeat=False,
            )
            layers.append((IN_FRONT, marks))
        singles = [link for link in laid.links if link.role is Role.SINGLE]
        tied = {joint for link in singles for joint in (link.start, link.finish)}
        for joint in cell.skipped:
            sign = boxed_in if joint in tied else crossed_out
            layers.append((IN_FRONT + 1, sign(laid.spots[joint], radius * 1.1)))
        layers.append((IN_FRONT - 1, order_discs(rows_of(self._newest), laid.spots, radius)))
        return [marks for _, marks in sorted(layers, key=lambda layer: -layer[0])]

    def _body(self, bar: _Bar) -> list[Mark]:
        """A balloon from disc to disc; hatched where two braces share it."""
        reach, thick = self._radius - 1, self.laid.thick
        ends = toward(bar.start, bar.finish, reach), toward(bar.finish, bar.start, reach)
        body = link_outline(*ends, thick, bar.ink)
        hatched = hatching(_area(body)) if bar.link.id in self._newest.shared else []
        return [link_outline(*ends, thick + 4, Ink(fill=PAPER)), body, *hatched]

    def _clutter(self, bars: Sequence[_Bar]) -> Clutter:
        """What words should keep off."""
        laid, radius = self.laid, self._radius
        return Clutter(
            (*(around(at, radius) for at in laid.spots.values()), *self._signs()),
            (
                *(bar.body(laid.thick / 2) for bar in bars),
                *(Stick(stub.start, stub.end, 1.0) for stub in laid.stubs),
            ),
            self.size,
        )

    def _signs(self) -> list[Box]:
        """The boxes of the numbers of the order and of the locks, beside joints' discs."""
        spots, radius = self.laid.spots, self._radius
        numbers = order_discs(rows_of(self._newest), spots, radius)
        discs = [mark for mark in numbers if isinstance(mark, Circle)]
        locks = [lock_place(at, radius) for joint, at in spots.items() if joint in self.locked]
        return [
            *(around(disc.centre, disc.radius) for disc in discs),
            *(around(at, LOCK_HALF) for at in locks),
        ]

    def _bar(self, link: Link) -> _Bar:
        colour, newest = self.framework.balloons[link.balloon].colour, self._newest
        pale = mix(colour, PAPER, 0.7)
        word = ""
        if link.role is Role.SINGLE:
            ink = Ink(pale, INK, 1.1, (3, 2))
            word = self.voice.say_in("balloon of a cell", "single")
        elif link.id in newest.links:
            ink = Ink(mix(colour, PAPER, 0.15), INK, 2.0)
        elif link.role is Role.BRACE:
            ink = Ink(pale, INK, 0.9)
        else:
            ink = Ink(pale, SOFT, 0.9)
        if link.id in newest.shared:
            word = self.voice.say_in("balloon of a brace", "shared")
        spots = self.laid.spots
        depth = self.laid.depth(link)
        return _Bar(link, spots[link.start], spots[link.finish], depth, ink, word)

    def _words(self, bars: Sequence[_Bar], clutter: Clutter, half: float) -> list[Mark]:
        """ "shared", "single" and the braces' numbers, each where it covers least."""
        marks: list[Mark] = []
        for bar in bars:
            if bar.word:
                wide = text_width(bar.word, TYPE) / 2 + 2
                spot = best_spot([bar.body(half)], wide, clutter, lambda at: 0.0)
                box = word_box(spot, wide)
                clutter = clutter.with_box(box)
                nearest = min(bars, key=lambda other: gap(spot, other.start, other.finish))
                if nearest is not bar:
                    marks += _leader(box, between(bar.start, bar.finish, 0.5))
                marks.append(Label(_baseline(spot), bar.word, TYPE, INK, halo=PAPER))
        for number, side in ((self.cell.first, -1), (self.cell.second, 1)):
            brace = self.framework.brace[number]
            of_it = {*brace.links, *brace.shared}
            all_of_it = [bar for bar in bars if bar.link.id in of_it]
            own = [bar for bar in all_of_it if not bar.word] or all_of_it
            if not own:
                continue
            text = self.voice.say_in("label", "brace {number}", number=number)
            wide = text_width(text, TYPE, bold=True) / 2 + 2
            bodies = [bar.body(half) for bar in sorted(own, key=lambda bar: bar.depth)]
            spot = best_spot(bodies, wide, clutter, self._on_side(side))
            box = word_box(spot, wide)
            clutter = clutter.with_box(box)
            corners = ((box[0], box[1]), (box[2], box[1]), (box[2], box[3]), (box[0], box[3]))
            marks.append(Polyline(corners, Ink(PAPER, INK, 0.7), closed=True))
            marks.append(Label(_baseline(spot), text, TYPE, INK, bold=True))
        return marks

    def _on_side(self, side: int) -> Callable[[Point], float]:
        """What it costs a brace's number to stand on the other brace's side of the cell."""
        middle = self.size[0] / 2
        return lambda at: 8.0 + 0.2 * abs(at[0] - middle) if side * (at[0] - middle) < 0 else 0.0

    def _alt(self) -> str:
        cell, newest, voice = self.cell, self._newest, self.voice
        parts = [
            voice.say(
                "Cell {number}, {kind}, between brace {first} and brace {second}.",
                number=cell.number,
                kind=cell_label(cell.kind, voice),
                first=cell.first,
                second=cell.second,
            )
        ]
        for number in (cell.first, cell.second):
            brace = self.framework.brace[number]
            joints = ", ".join(brace.section)
            parts.append(voice.say("Brace {brace} holds {joints}.", brace=number, joints=joints))
        parts.append(
            voice.say(
                "New in brace {brace}: {balloons}.",
                brace=newest.number,
                balloons=_list(newest.links, voice),
            )
        )
        if newest.shared:
            shared = _list(newest.shared, voice)
            parts.append(voice.say("Shared with another brace: {balloons}.", balloons=shared))
        if cell.skipped:
            parts.append(voice.say("Skipped: {joints}.", joints=_list(cell.skipped, voice)))
        singles = [link.id for link in self.laid.links if link.role is Role.SINGLE]
        if singles:
            parts.append(voice.say("Single: {singles}.", singles=_list(singles, voice)))
        return sentences(*parts)


def _leader(box: Box, end: Point) -> list[Mark]:
    """A line from a word to what it names, where something else is nearer to it."""
    start = (min(max(end[0], box[0]), box[2]), min(max(end[1], box[1]), box[3]))
    line = (start, end)
    return [
        Polyline(line, Ink(stroke=PAPER, width=2.6)),
        Polyline(line, Ink(stroke=INK, width=0.8)),
        Circle(end, 1.8, Ink(INK, PAPER, 0.6)),
    ]


def _baseline(middle: Point) -> Point:
    return (middle[0], middle[1] - TYPE * 0.36)


def _list(words: Iterable[str], voice: Voice) -> str:
    return ", ".join(words) or voice.say_in("balloons", "none")


def _area(body: Curve) -> Polygon:
    """The paper that a balloon's outline takes in."""
    return Polygon([body.start, *(end for _, _, end in body.pieces)]).buffer(0)


def _stub(stub: Stub, radius: float) -> list[Mark]:
    """Where the chain goes on beyond the cell."""
    line = (toward(stub.start, stub.end, radius), stub.end)
    return [Polyline(line, Ink(stroke=PALE, width=2.2))]
