"""Joints that are too many to be named are told by their place, none left out."""

from __future__ import annotations

from dataclasses import replace
from itertools import product

import numpy as np
import pytest
from shape_pieces import frame

from buildplan.language.messages import message
from buildplan.language.voice import Voice
from buildplan.shape.finding import find_shape
from buildplan.shape.kinds import ShapeKind
from buildplan.shape.model import Shape
from buildplan.shape.whereabouts import group_words, with_places
from buildplan.source.problems import Problem, in_words

SIDE = range(30)


@pytest.fixture(scope="module")
def sheet() -> Shape:
    """900 joints in a square that stands, 30 by 30, numbered without order: J of column and row."""
    numbers = 2 * np.random.default_rng(1).permutation(900)
    joints = tuple(f"J{number}" for number in numbers)
    at = np.array([(x, y, 0.0) for x, y in product(SIDE, SIDE)])
    return replace(find_shape(frame()), joints=joints, positions_m=at, tied={})


def labels(shape: Shape, columns: range, rows: range) -> list[str]:
    return [
        joint
        for joint, (x, y, _) in zip(shape.joints, shape.positions_m, strict=True)
        if int(x) in columns and int(y) in rows
    ]


@pytest.mark.parametrize(
    ("columns", "rows", "said"),
    [
        (range(10), range(20, 30), "100 joints at the upper left"),
        (range(20, 30), range(10), "100 joints at the lower right"),
        (SIDE, range(2), "60 joints at the bottom"),
        (SIDE, range(28, 30), "60 joints at the top"),
        (range(2), SIDE, "60 joints on the left"),
        (range(13, 16), range(13, 16), "9 joints in the middle"),
        (range(9, 11), range(5), "5 joints at the lower left"),
        (SIDE, SIDE, "900 joints all over the piece"),
    ],
)
def test_many_joints_are_told_by_their_place(
    sheet: Shape, columns: range, rows: range, said: str
) -> None:
    found = labels(sheet, columns, rows)
    told = Voice().tell(group_words(sheet, [*found, *found]))
    assert said in told or len(found) <= 12
    if len(found) > 12:
        # none left out
        numbers = [int(word) for word in told.replace(",", " ").split() if word.isdigit()]
        assert sum(numbers) == len(found)


def test_few_joints_are_named(sheet: Shape) -> None:
    assert Voice().tell(group_words(sheet, ["A1", "A2", "A3", "B7"])) == "A1 to A3 and B7"


def test_a_caution_about_316_joints_says_where_they_are(sheet: Shape) -> None:
    many = tuple(labels(sheet, SIDE, SIDE)[:316])
    (placed,) = with_places(
        [Problem(ShapeKind.SAGS, message("the shape drawn"), joints=many)], sheet
    )
    assert placed.joints == many  # for programs
    words = in_words(placed, Voice())
    assert "joints" in words
    assert len(words) < 200
    assert not any(joint in words.split() for joint in many)
