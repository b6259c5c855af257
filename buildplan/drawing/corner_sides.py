"""Which side of a piece is which on the diagram of a corner: words under it, with arrows."""

from __future__ import annotations

from dataclasses import replace
from math import fsum

from buildplan.drawing.cell_layout import lay_cell
from buildplan.drawing.line_art import SOFT, TYPE
from buildplan.drawing.map_layout import OUTER, side_of
from buildplan.drawing.marks import Inset, Label, Mark, Picture, Point
from buildplan.drawing.way_round import pointed
from buildplan.framework.model import Cell, Framework
from buildplan.language.voice import Voice

STRIP_PT = TYPE + 5.0  # under the diagram
ARROW_PT, GAP_PT = 9.0, 3.0
MIDDLE_PT = 5.0  # of the arrows, above the foot


def with_sides(diagram: Picture, framework: Framework, cell: Cell, voice: Voice) -> Picture:
    """A corner's diagram with the words front and outside under it, each with an arrow that way:
    front is drawn upwards wherever the builder sits."""
    front = voice.say_in("side of the tube", "front")
    outside = voice.say_in("side of the tube", "outside")
    right = _outer_is_right(framework, cell)
    foot = MIDDLE_PT - 0.36 * TYPE
    up = [(GAP_PT, 0.5), (GAP_PT, MIDDLE_PT), (GAP_PT, ARROW_PT)]
    marks: list[Mark] = [
        Inset(diagram, (0.0, STRIP_PT)),
        *_arrow(up),
        Label((3 * GAP_PT, foot), front, TYPE, SOFT, anchor="start"),
    ]
    end = diagram.width - GAP_PT
    across = [(end - ARROW_PT, MIDDLE_PT), (end - ARROW_PT / 2, MIDDLE_PT), (end, MIDDLE_PT)]
    marks += _arrow(across if right else across[::-1])
    at = (end - ARROW_PT - GAP_PT, foot)
    marks.append(Label(at, outside, TYPE, SOFT, anchor="end"))
    height = diagram.height + STRIP_PT
    return replace(diagram, height=height, marks=tuple(marks))


def _arrow(points: list[Point]) -> list[Mark]:
    return pointed(points, SOFT, 1.0, 3.6)


def _outer_is_right(framework: Framework, cell: Cell) -> bool:
    """Whether the outer chains lie at the right of the inner ones on the diagram."""
    joint = framework.brace[cell.first].section[0]
    part = framework.part_at(joint)
    built = framework.built_with(joint)
    mirrored = part is not None and part.mirrored
    spots = lay_cell(built, cell, (200.0, 200.0), mirrored=mirrored).spots
    outer = {j for long in built.chains if side_of(long) == OUTER for j in long.chain.joints}
    xs = ([x for j, (x, _) in spots.items() if (j in outer) is side] for side in (True, False))
    first, other = (fsum(some) / max(len(some), 1) for some in xs)
    return first > other
