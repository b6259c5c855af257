"""A figure: the pattern, and what can be wrong with it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from pydantic import ValidationError

from buildplan.framework.model import Framework
from buildplan.language.messages import mark, message
from buildplan.patterns.figure_cells import (
    Clash,
    NoSuchSideError,
    cell_count,
    cells_of,
    drawn_figure,
    in_the_way,
    lay_figure,
)
from buildplan.patterns.figure_keys import Figure
from buildplan.patterns.flat_frames import build_flat, flat_joints
from buildplan.patterns.pattern import (
    EXTRA,
    LOCK,
    AllOf,
    Given,
    Joints,
    JointsOf,
    Making,
    Pattern,
    Uncoloured,
    Whole,
    link,
)
from buildplan.patterns.pattern_joints import first_to_last
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import Mistake
from buildplan.source.suggestions import by_hand

MOST_IN_ALL = 1500  # cells


def _read(given: Given) -> Figure | None:
    try:
        return Figure.model_validate(given)
    except ValidationError:
        return None


def _joints(given: Given, of_part: JointsOf) -> Joints | None:
    figure = _read(given)
    if figure is None or any(_wrong(figure)):
        return None
    return first_to_last(flat_joints(drawn_figure(figure)))


def _built(figure: Figure, making: Making) -> Framework:
    drawn = drawn_figure(figure)
    return build_flat(making.name, making.balloons, figure, drawn, 0.0, reads=False)


# Why a cell cannot lie where it does, and what would be right.
CLASHES: Mapping[Clash, tuple[str, str]] = {
    Clash.ON_ANOTHER: (
        mark("cell {cell} of stroke {stroke} lies on another cell"),
        mark("lead the stroke another way"),
    ),
    Clash.AT_A_JOINT: (
        mark("cell {cell} of stroke {stroke} meets another at a joint alone"),
        mark("cells meet side to side: put a cell between them, or lead the stroke another way"),
    ),
    Clash.SHUTS_IN: (
        mark("cell {cell} of stroke {stroke} shuts in a joint, which has cells all round it"),
        mark("every joint lies on an outline: leave out one of the cells about it"),
    ),
}


def _check(given: Given, whole: Whole) -> Iterator[Mistake]:
    figure = _read(given)
    if figure is not None:
        yield from _wrong(figure)


def _wrong(figure: Figure) -> Iterator[Mistake]:
    """The first thing that is wrong with its strokes: what comes after rests on it."""
    at = ("build", "figure", "strokes")
    if cell_count(figure) > MOST_IN_ALL:
        yield Mistake(
            FileKind.TOO_MANY_JOINTS,
            at,
            message("these strokes have {count} cells", count=cell_count(figure)),
            by_hand(message("a figure may have {count}; make it smaller", count=MOST_IN_ALL)),
        )
        return
    try:
        sheet = lay_figure(figure)
    except NoSuchSideError as error:
        yield _no_side(figure, error.stroke)
        return
    found = in_the_way(sheet)
    if found is not None:
        cell, why = found
        said, right = CLASHES[why]
        yield Mistake(
            FileKind.CELL_IN_THE_WAY,
            (*at, cell.stroke, "cells"),
            message(said, cell=cell.number + 1, stroke=cell.stroke + 1),
            by_hand(message(right)),
        )


def _no_side(figure: Figure, number: int) -> Mistake:
    stroke = figure.strokes[number]
    at = ("build", "figure", "strokes", number)
    earlier = figure.strokes[: min(number, stroke.stroke or 0)][(stroke.stroke or 1) - 1 :]
    count = sum(1 for _ in cells_of(earlier[0].cells)) if earlier else 0
    right = (
        message("stroke {stroke} has {count} cells", stroke=stroke.stroke, count=count)
        if earlier and stroke.stroke is not None
        else message("give stroke (1 to {last}), cell and side", last=number)
    )
    return Mistake(
        FileKind.NO_SUCH_SIDE,
        at,
        message("stroke {stroke} sets out from a side that is not there", stroke=number + 1),
        by_hand(
            message(
                "{right}; a square has the sides left, ahead and right, a triangle left and right",
                right=right,
            )
        ),
    )


PATTERN = Pattern(
    name="figure",
    about=mark("a flat figure drawn in strokes of square and triangular cells"),
    keys=Figure,
    uses=(
        link("long", mark("an outline")),
        link("brace", mark("a brace")),
        LOCK,
        EXTRA,
    ),
    joints=_joints,
    build=_built,
    colours=Uncoloured(
        mark("a figure has no long chains to lay a colour pattern along"),
        mark("name other balloons in long and brace, or make it of parts in other colours"),
    ),
    more_cells=AllOf(mark("a figure drawn stroke by stroke has no cells to add")),
    check=_check,
    extra_as="brace",
)
