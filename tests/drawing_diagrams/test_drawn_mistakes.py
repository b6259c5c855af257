"""Mistakes drawn beside the right way: each is the mistake it claims to be, small, in a group of
its own, and a cross stands outside it."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from itertools import combinations

import pytest
from diagram_pieces import mark_points, star
from strand_crossings import crossings

from buildplan.drawing.marks import Inset, Mark, Picture, Point, Polyline, Stamp
from buildplan.drawing.svg import picture_svg
from buildplan.drawing.techniques.braces import settle_joint
from buildplan.drawing.techniques.locks import HELD_AT, twist_lock
from buildplan.drawing.techniques.mistakes import once_wrapped
from buildplan.drawing.techniques.pairs import pair_rounds, tie_pair
from buildplan.drawing.techniques.rings import close_ring
from buildplan.framework.model import Framework
from buildplan.language.voice import LOCALES, Voice

DRAWN: dict[str, tuple[Callable[[Framework, Voice], Picture], str]] = {
    "pair": (tie_pair, "only once"),
    "pair of rounds": (pair_rounds, "only once"),
    "ring": (close_ring, "crosses itself"),
    "brace": (settle_joint, "beside the chain's knot"),
    "lock": (twist_lock, "round a balloon, not between"),
}


def mistake_of(picture: Picture) -> Inset:
    (found,) = (mark for mark in picture.marks if isinstance(mark, Inset))
    return found


def cross_of(picture: Picture) -> list[Point]:
    """The ends of two equal lines that cross in their middles, one rising and one falling."""
    lines = [m.points for m in picture.marks if isinstance(m, Polyline) and len(m.points) == 2]
    for (a, b), (c, d) in combinations(lines, 2):
        if (a[0], b[0]) == (c[0], d[0]) and (a[1], b[1]) == (d[1], c[1]):
            return [a, b, c, d]
    raise AssertionError("no cross")


def box(mark: Mark) -> tuple[float, float, float, float]:
    points = mark_points(mark)
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return min(xs), min(ys), max(xs), max(ys)


@pytest.mark.parametrize("name", DRAWN)
def test_a_mistake_is_a_group_of_its_own_and_told(name: str) -> None:
    draw, told = DRAWN[name]
    picture = draw(star(), Voice())
    mistake = mistake_of(picture)
    kind = name.split()[0]
    assert mistake.picture.data == (("picture", "mistake"), ("mistake", kind))
    assert f'<g data-picture="mistake" data-mistake="{kind}"' in picture_svg(picture)
    assert told in mistake.picture.alt
    assert picture.alt.endswith(mistake.picture.alt)


@pytest.mark.parametrize("name", DRAWN)
def test_the_cross_is_beside_the_mistake_and_over_nothing(name: str) -> None:
    """It lies on no balloon, neck or word, so that it is read in grey as well; it is black."""
    picture = DRAWN[name][0](star(), Voice())
    ends = cross_of(picture)
    crossed = [m for m in picture.marks if isinstance(m, Polyline) and m.points[0] in ends[::2]]
    assert all(mark.ink.stroke == "#1F2A33" for mark in crossed)
    mistake = mistake_of(picture)
    within = [
        (x0 + mistake.at[0], y0 + mistake.at[1], x1 + mistake.at[0], y1 + mistake.at[1])
        for x0, y0, x1, y1 in map(box, mistake.picture.marks)
    ]
    beside = [box(m) for m in picture.marks if m not in crossed and m is not mistake]
    left, low, right, high = ends[0][0], ends[0][1], ends[1][0], ends[1][1]
    for x0, y0, x1, y1 in [*within, *beside]:
        assert min(right, x1) < max(left, x0) or min(high, y1) < max(low, y0)


@pytest.mark.parametrize("language", LOCALES)
@pytest.mark.parametrize("name", DRAWN)
def test_a_mistake_brings_no_words_but_those_that_stand(name: str, language: str) -> None:
    mistake = mistake_of(DRAWN[name][0](star(), Voice(language))).picture
    assert not [mark for mark in mistake.marks if hasattr(mark, "text")]
    assert len(mistake.alt) > 40


def test_the_mistaken_pair_has_one_turn_where_the_right_one_has_two() -> None:
    """Over, behind, and the end in front, under its own turn (common practice, no source)."""
    wrap, core = once_wrapped("#1F5F8B", "#F7F3E8")
    met = crossings(wrap, core)
    assert [over for _, over, _ in met] == [1, -1, 1]
    own = [(place, over) for place, over, _ in crossings(wrap, wrap)]
    assert [over for place, over in own if place > met[1][0]] == [-1]


def test_the_mistaken_lock_lies_on_a_balloon_and_leaves_the_joint_bare() -> None:
    """A lock's rounds lie on opposite sides of the joint's knot, the necks on the knot; wrong, both
    lie on one side of it, either side of a balloon (common practice, no source)."""
    picture = twist_lock(star(), Voice())
    mistake = mistake_of(picture).picture

    def rounds(marks: tuple[Mark, ...]) -> list[Point]:
        found = [m for m in marks if isinstance(m, Stamp) and m.look.form == "round"]
        return [mark.matrix[4:] for mark in found]

    middle = mistake.width / 2
    wrong = rounds(mistake.marks)
    assert len(wrong) == 2
    assert all(x > middle + 10 for x, _ in wrong)
    (_, low), (_, high) = sorted(wrong, key=lambda at: at[1])
    beside = [
        m.matrix[4:]
        for m in mistake.marks
        if isinstance(m, Stamp) and m.look.form == "link" and m.matrix[4] > middle + 10
    ]
    ((_, y),) = beside
    assert low < y < high
    right = rounds(picture.marks)[-2:]
    assert right[0][0] + right[1][0] == pytest.approx(2 * HELD_AT[0])
    assert right[0][0] < HELD_AT[0] < right[1][0]


def test_the_mistaken_ring_crosses_itself_once_and_the_right_one_never() -> None:
    """A chain laid in a plain round has no crossing; twisted once over it has one, as the curve of
    an eight (common practice, no source). Balloons that follow one another only meet."""

    def laid_over_another(marks: Sequence[Mark]) -> int:
        bodies = [m for m in marks if isinstance(m, Stamp) and m.look.form == "link"]
        found = 0
        for (i, one), (j, other) in combinations(enumerate(bodies), 2):
            far = math.dist(one.matrix[4:], other.matrix[4:])
            apart = min(j - i, len(bodies) - j + i)
            found += apart > 1 and far < 0.5 * math.hypot(*one.matrix[:2])
        return found

    picture = close_ring(star(), Voice())
    assert laid_over_another(mistake_of(picture).picture.marks) == 1
    assert laid_over_another(picture.marks) == 0


def test_the_mistaken_brace_lies_beside_the_chain_s_knot() -> None:
    """Knot on knot: the lines of the brace's balloons and of the chain's meet where the chain's
    balloons end; beside it they meet on a balloon (common practice, no source)."""

    def off_the_joint(marks: Sequence[Mark]) -> float:
        bodies = [m for m in marks if isinstance(m, Stamp) and m.look.form == "link"]
        left, right, above, below = (m.matrix[4:] for m in bodies)
        assert left[1] == right[1]
        assert above[0] == below[0]
        return abs(above[0] - (left[0] + right[0]) / 2)

    picture = settle_joint(star(), Voice())
    assert off_the_joint(picture.marks) == pytest.approx(0.0)
    assert off_the_joint(mistake_of(picture).picture.marks) > 10
