"""Which side of a piece is which on the diagram of a corner, and from where it is seen: words under
it, with arrows."""

from __future__ import annotations

from dataclasses import replace
from math import fsum

from buildplan.drawing.cell_layout import CellLayout, lay_cell
from buildplan.drawing.fonts import text_width
from buildplan.drawing.line_art import SOFT, TYPE
from buildplan.drawing.map_layout import OUTER, side_of
from buildplan.drawing.marks import Inset, Label, Mark, Picture, Point
from buildplan.drawing.way_round import pointed
from buildplan.framework.model import Cell, Framework
from buildplan.language.voice import Voice

STRIP_PT, LINE_PT = TYPE + 5.0, TYPE + 3.0  # under the diagram; a second line of it
ARROW_PT, GAP_PT = 9.0, 3.0
MIDDLE_PT = 5.0  # of the arrows, above the foot


def with_sides(diagram: Picture, framework: Framework, cell: Cell, voice: Voice) -> Picture:
    """A corner's diagram with the words front and outside under it, each with an arrow that way,
    for front is drawn upwards wherever the builder sits; and the brace that is nearest to the
    viewer, between them or under them."""
    front = voice.say_in("side of the tube", "front")
    outside = voice.say_in("side of the tube", "outside")
    right = _outer_is_right(framework, cell)
    near = voice.say("nearest: brace {number}", number=_nearest(framework, cell))
    words = (front, near, outside)
    taken = fsum(text_width(word, TYPE) for word in words) + 2 * (ARROW_PT + 4 * GAP_PT)
    rise = 0.0 if taken <= diagram.width else LINE_PT
    foot = MIDDLE_PT - 0.36 * TYPE + rise
    up = [(GAP_PT, at + rise) for at in (0.5, MIDDLE_PT, ARROW_PT)]
    marks: list[Mark] = [
        Inset(diagram, (0.0, STRIP_PT + rise)),
        *_arrow(up),
        Label((3 * GAP_PT, foot), front, TYPE, SOFT, anchor="start"),
    ]
    end = diagram.width - GAP_PT
    across = [(end - back, MIDDLE_PT + rise) for back in (ARROW_PT, ARROW_PT / 2, 0.0)]
    marks += _arrow(across if right else across[::-1])
    at = (end - ARROW_PT - GAP_PT, foot)
    marks.append(Label(at, outside, TYPE, SOFT, anchor="end"))
    marks.append(Label((diagram.width / 2, foot - rise), near, TYPE, SOFT, anchor="middle"))
    height = diagram.height + STRIP_PT + rise
    return replace(diagram, height=height, marks=tuple(marks))


def _arrow(points: list[Point]) -> list[Mark]:
    return pointed(points, SOFT, 1.0, 3.6)


def _nearest(framework: Framework, cell: Cell) -> int:
    """The number of the brace of a cell that is nearer to the viewer."""
    depths = _laid(framework, cell).depths
    braces = [framework.brace[number] for number in (cell.first, cell.second)]
    return min(braces, key=lambda one: fsum(depths[j] for j in one.section)).number


def _outer_is_right(framework: Framework, cell: Cell) -> bool:
    """Whether the outer chains lie at the right of the inner ones on the diagram."""
    built = framework.built_with(framework.brace[cell.first].section[0])
    spots = _laid(framework, cell).spots
    outer = {j for long in built.chains if side_of(long) == OUTER for j in long.chain.joints}
    xs = ([x for j, (x, _) in spots.items() if (j in outer) is side] for side in (True, False))
    first, other = (fsum(some) / max(len(some), 1) for some in xs)
    return first > other


def _laid(framework: Framework, cell: Cell) -> CellLayout:
    joint = framework.brace[cell.first].section[0]
    part = framework.part_at(joint)
    mirrored = part is not None and part.mirrored
    return lay_cell(framework.built_with(joint), cell, (200.0, 200.0), mirrored=mirrored)
