"""Where joints are, for whoever stands before the piece: of many, how many are in which place."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace

import numpy as np

from buildplan.language.messages import Listing, Message, listing, message_count, message_in
from buildplan.shape.model import Shape
from buildplan.source.problems import Problem
from buildplan.source.runs import few_runs

Cell = tuple[int | None, int | None]
"""A third of the height, from the bottom, and one of the width, from the left as seen from the
front; None for all of them."""

MOST_PLACES = 4  # named one by one
WHERE: Mapping[Cell, Message] = {
    (2, 0): message_in("where joints are", "at the upper left"),
    (2, 1): message_in("where joints are", "in the middle of the top"),
    (2, 2): message_in("where joints are", "at the upper right"),
    (1, 0): message_in("where joints are", "on the left, half way up"),
    (1, 1): message_in("where joints are", "in the middle"),
    (1, 2): message_in("where joints are", "on the right, half way up"),
    (0, 0): message_in("where joints are", "at the lower left"),
    (0, 1): message_in("where joints are", "in the middle of the bottom"),
    (0, 2): message_in("where joints are", "at the lower right"),
    (2, None): message_in("where joints are", "at the top"),
    (1, None): message_in("where joints are", "half way up"),
    (0, None): message_in("where joints are", "at the bottom"),
    (None, 0): message_in("where joints are", "on the left"),
    (None, 1): message_in("where joints are", "in the middle, from top to bottom"),
    (None, 2): message_in("where joints are", "on the right"),
    (None, None): message_in("where joints are", "all over the piece"),
}


def group_words(shape: Shape, labels: Iterable[str]) -> Listing | Message:
    """Joints in few words: by their labels (`few_runs`), else by their place, as `36 joints at the
    bottom`; left and right as seen from the front."""
    given = list(dict.fromkeys(labels))
    told = few_runs(given)
    return listing(_by_place(shape, given)) if told is None else told


def with_places(problems: Iterable[Problem], shape: Shape) -> tuple[Problem, ...]:
    """The problems of a shape, with the place of joints that are too many to be named."""
    return tuple(
        one
        if few_runs(one.joints) is not None
        else replace(one, place=group_words(shape, one.joints))
        for one in problems
    )


def _by_place(shape: Shape, labels: Sequence[str]) -> Iterator[Message]:
    cells = Counter(_cells(shape, labels))
    rows, columns = (sorted({cell[axis] for cell in cells}) for axis in (0, 1))
    merged: Counter[Cell] = Counter()
    for (row, column), count in cells.items():
        if len(columns) == 3 > len(rows):
            merged[row, None] += count
        elif len(rows) == 3 > len(columns):
            merged[None, column] += count
        elif len(cells) <= MOST_PLACES:
            merged[row, column] += count
        else:
            merged[None, None] += count
    for cell, count in sorted(merged.items(), key=lambda one: -one[1]):
        yield message_count(
            "{number} joint {where}", "{number} joints {where}", count, where=WHERE[cell]
        )


def _cells(shape: Shape, labels: Sequence[str]) -> Iterator[tuple[int, int]]:
    """The third of the height and of the width that each joint is in."""
    low, size = shape.positions_m.min(axis=0), np.ptp(shape.positions_m, axis=0)
    for label in labels:
        share = (shape.at[label] - low) / np.maximum(size, 1e-9)
        yield cell_at(share[0], share[1])


def cell_at(across: float, up: float) -> tuple[int, int]:
    """The third of the height and of the width at these shares of them, from 0 to 1."""
    return min(2, int(3 * up)), min(2, int(3 * across))
