"""Straight runs of a course, which are what grows and shrinks when a tube gets more cells.

Fans, tips, dips and cells of other advances stay: they make the turns, and a closed course has
to make a full one. Runs of equal length stay equal, so that what is symmetric stays so.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby
from math import floor
from typing import Any

from buildplan.framework import cells
from buildplan.framework.places import CELL_PLACE, ENDS, cell_place
from buildplan.patterns.course import OUTER_CHAINS, cell_of
from buildplan.patterns.growing import scaled
from buildplan.source.mistake import Path
from buildplan.source.suggestions import Put

STRAIGHT = cells.STRAIGHT.name


@dataclass(frozen=True)
class CourseStretch:
    """A straight run of `before` cells that becomes one of `after`, or any other cell, once."""

    outer: int
    inner: int
    before: int = 1
    after: int = 1


def run_changes(course: Sequence[Any], factor: float, at: Path) -> Iterator[Put]:
    """What makes every straight run of a course, as plain data, longer by a factor; `at` is
    where the course stands in the file."""
    place = 0
    for item, same in groupby(course, key=_name):
        count = len(list(same))
        if item == STRAIGHT:
            number = scaled(count, factor)
            if number != count:
                value = {"repeat": number, "cells": [STRAIGHT]} if number > 1 else STRAIGHT
                yield Put((*at, place), value, place + count - 1)
        else:
            for i in range(place, place + count):
                if isinstance(course[i], dict):
                    yield from _repeat_changes(course[i], factor, (*at, i))
        place += count


def _name(item: object) -> str:
    return item if isinstance(item, str) else ""


def _repeat_changes(group: Mapping[str, Any], factor: float, at: Path) -> Iterator[Put]:
    if group["cells"] == [STRAIGHT]:
        number = scaled(group.get("repeat", 1), factor)
        if number != group.get("repeat", 1):
            yield Put((*at, "repeat"), number)
    else:
        yield from run_changes(group["cells"], factor, (*at, "cells"))


def stretches(course: Sequence[Any], factor: float) -> Iterator[CourseStretch]:
    """The course laid out, before and after its runs are scaled."""
    for name, same in groupby(course, key=_name):
        items = list(same)
        if name == STRAIGHT:
            yield CourseStretch(1, 1, len(items), scaled(len(items), factor))
            continue
        for item in items:
            if not isinstance(item, dict):
                yield CourseStretch(*cell_of(item).advances)
            elif item["cells"] == [STRAIGHT]:
                times = item.get("repeat", 1)
                yield CourseStretch(1, 1, times, scaled(times, factor))
            else:
                for _ in range(item.get("repeat", 1)):
                    yield from stretches(item["cells"], factor)


def moved_joint(label: str, course: Sequence[CourseStretch], chains: int) -> str:
    """The joint of the scaled course where `label` was: as far along its straight run."""
    letter, number = label[0], int(label[1:]) - 1
    outer = letter in OUTER_CHAINS[chains]
    counts = [
        (advance * one.before, advance * one.after)
        for one in course
        for advance in [one.outer if outer else one.inner]
    ]
    return f"{letter}{_moved(number, counts) + 1}"


def moved_place(place: str, course: Sequence[CourseStretch], chains: int) -> str:
    """The place of the scaled course where one was: a joint, a cell; an end stays one."""
    if place in ENDS:
        return place
    cell = re.fullmatch(CELL_PLACE, place)
    if cell is None:
        return moved_joint(place, course, chains)
    counts = [(one.before, one.after) for one in course]
    return cell_place(_moved(int(cell[1]) - 1, counts) + 1)


def _moved(number: int, counts: Iterable[tuple[int, int]]) -> int:
    """Where one that is counted from 0 comes to be, as far along its stretch; `counts` are how many
    each stretch has, before and after."""
    before = after = 0
    for length, longer in counts:
        if number < before + length:
            return after + floor((number - before) / length * longer + 0.5)
        before, after = before + length, after + longer
    return after + number - before
