"""The plans of courses from above, and the tables of what meets at their joints."""

from __future__ import annotations

import math
import re
from collections import Counter
from collections.abc import Callable

import numpy as np
import pytest
from shipped import book_of

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.closeups import plan_views
from buildplan.booklet.common.course_plans import plan_of, planned_course
from buildplan.booklet.common.joint_moves import with_lock
from buildplan.booklet.common.laid_courses import is_planned
from buildplan.booklet.common.picture_key import signs_used
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.course_places import places_from_above
from buildplan.drawing.labels import label_boxes
from buildplan.drawing.marks import Circle, Label, Picture
from buildplan.drawing.sign_key import PictureSign
from buildplan.drawing.techniques.large_locks import (
    INSIDE_AT,
    lock_from_outside,
    lock_of_joint,
)
from buildplan.instructions.joint_table import NOTHING, balloons_between, joint_table
from buildplan.sequence.model import Kind, Step

PIECES = ["gallery/reading_globe", "gallery/lamp_cuboctahedron"]
END = re.compile(r"([^()]+) \((tail|neck)s?\)(?:, )?")


def _planned(book: Book) -> list[Step]:
    found = [step for step in book.steps if is_planned(book, step)]
    assert found
    return found


def test_a_sphere_is_opened_out_by_lamberts_equal_area_projection() -> None:
    """Snyder, Map Projections (USGS Professional Paper 1395), polar azimuthal equal-area: the
    distance from the pole is 2 R sin(c / 2), c the angle from it (from memory)."""
    radius, angles = 0.5, [0.0, 0.3, 0.9, 1.4]
    at = {
        f"{i}.{k}": radius
        * np.array(
            [
                math.sin(c) * math.cos(k),
                -math.cos(c),
                -math.sin(c) * math.sin(k),
            ]
        )
        for i, c in enumerate(angles)
        for k in range(6)
    }
    whole = at | {name + "'": -place for name, place in at.items()}
    for sign, course in ((1, at), (-1, {f"{name}'": at[name] for name in at})):
        spots = places_from_above(whole, whole, course)
        for name, (x, y) in spots.items():
            ring, way = name.rstrip("'").split(".")
            far = 2 * radius * math.sin(angles[int(ring)] / 2)
            assert math.hypot(x, y) == pytest.approx(far, abs=1e-9)
            if int(ring):  # a joint keeps its direction as one sees it from above, front below
                turned = float(way) if sign > 0 else float(way) + math.pi
                assert (x, y) == pytest.approx((far * math.cos(turned), far * math.sin(turned)))


@pytest.mark.parametrize("name", PIECES)
def test_the_table_says_what_meets_at_each_joint(name: str) -> None:
    """Read back: knots and free ends at each joint, tail or neck, are those of the graph."""
    book = book_of(name)
    framework, alone = book.framework, book.context.piece.alone
    links = {long.letter: long.chain.links for long in framework.chains}
    tables = [(step, joint_table(book.context, step.turns)) for step in _planned(book)]
    assert any(table is not None for _, table in tables) == (name == PIECES[0])
    for step, table in tables:
        joints = [op.joints[0] for op in step.of_kind(Kind.JOIN)]
        if table is None:  # the same chains at each, and no end
            met = [book.context.piece.passing[joint] for joint in joints]
            assert all(one == met[0] for one in met)
            assert not met[0][1]
            continue
        assert [row[0] for row in table.rows] == [f"{n} {j}" for n, j in enumerate(joints, 1)]
        for joint, (_, knots, ends) in zip(joints, table.rows, strict=True):
            passing = book.context.piece.passing[joint][0]
            assert Counter(knots.split(", ") if knots != NOTHING else []) == passing
            told = Counter(
                (one, end) for names, end in END.findall(ends) for one in names.split(", ")
            )
            right = Counter(
                (alone.get(letter, letter), "neck" if framework.link[id_].neck == joint else "tail")
                for letter in book.context.piece.passing[joint][1]
                for id_ in {links[letter][0], links[letter][-1]}
                if joint in (framework.link[id_].neck, framework.link[id_].tail)
            )
            assert told == right


@pytest.mark.parametrize("name", PIECES)
def test_every_balloon_between_joints_is_told_once(name: str) -> None:
    book = book_of(name)
    told = {
        one: "first" in line
        for step in _planned(book)
        for line in balloons_between(book.context, step.turns)
        for one in re.findall(r"\w+-\w+", line)
    }
    right = [book.framework.link[id_] for id_ in book.context.piece.alone.values()]
    assert told == {link.id: link.id.split("-")[0] == link.tail for link in right}


def test_balloons_whose_joints_both_count_on_are_told_as_a_run() -> None:
    """The wall's balloons between its layers: as many as are named from the first to the last."""
    book = book_of("gallery/story_wall")
    lines = [line for step in book.steps for line in balloons_between(book.context, step.turns)]
    assert "Balloons A1-I1 to A8-I8 (cream): tail at the joint named first" in lines
    told: list[str] = []
    for line in lines:
        told += re.findall(r"(?<!to )\b(\w+-\w+)\b(?! to)", line)
        for row, first, other, _, last in re.findall(r"(\w)(\d)-(\w)(\d) to \w(\d)-", line):
            told += [f"{row}{n}-{other}{n}" for n in range(int(first), int(last) + 1)]
    assert sorted(told) == sorted(book.context.piece.alone.values())


@pytest.mark.parametrize("name", PIECES)
def test_a_plan_names_each_joint_once_in_its_turn_and_none_over_another(name: str) -> None:
    book = book_of(name)
    for step in _planned(book):
        picture, course = plan_of(book, step, 248.0), planned_course(book, step)
        labels = [mark for mark in picture.marks if isinstance(mark, Label)]
        turns = {dict(one.data)["joint"]: one.text for one in labels if one.data}
        assert turns == {joint: str(n) for n, joint in enumerate(course.tied, 1)}
        named = Counter(one.text for one in labels if one.text in book.framework.links_at)
        assert named == Counter({*course.tied, *course.before, *course.later})
        at = {one.text: one.at for one in labels if one.text in named}
        spots = [at[joint] for joint in sorted(at)]
        apart = min(math.dist(a, b) for i, a in enumerate(spots) for b in spots[:i])
        assert apart > 14.0  # points: discs do not cover one another's names
        for x, y in spots:
            assert 0 < x < picture.width
            assert 0 < y < picture.height
        for long in course.chains:  # its letter is on the balloons that come in
            assert long.letter in {one.text for one in labels}


@pytest.mark.parametrize(
    ("joint", "drawing"), [("P1", lock_of_joint), ("P2", lock_of_joint), ("P42", lock_from_outside)]
)
def test_locks_of_joints_that_lie_flat_on_a_plan_are_turned_as_there(
    joint: str, drawing: Callable[..., Picture]
) -> None:
    """Each name about the joint is where the plan has that joint, as seen from the joint."""
    book = book_of("gallery/reading_globe")
    framework, at = book.framework, book.shape.at
    picture = drawing(framework, book.voice, joint, book.shape, CAMERAS["top"])
    links = [framework.link[id_] for id_ in framework.links_at[joint]]
    others = [link.finish if link.start == joint else link.start for link in links]
    spots = places_from_above(at, framework.joints, [joint, *others])
    boxes = label_boxes(picture)
    for other in others:
        ((left, low, right, high),) = boxes[other]
        named = ((left + right) / 2 - INSIDE_AT[0], (low + high) / 2 - INSIDE_AT[1])
        planned = np.subtract(spots[other], spots[joint])
        off = math.atan2(named[1], named[0]) - math.atan2(planned[1], planned[0])
        assert math.cos(off) > math.cos(math.radians(35.0)), other


def test_where_an_odd_number_meet_the_two_gaps_of_the_lock_are_shown() -> None:
    """At the foot of the globe five meet at P1 and six round it; no gap of five is opposite
    another (plain geometry)."""
    book = book_of("gallery/reading_globe")
    step = next(one for one in book.steps if one.kind is Kind.JOIN)
    (lock,) = with_lock(book, step, {Kind.JOIN: ()}, frozenset())[Kind.LOCK]
    dashed = [mark for mark in lock.marks if isinstance(mark, Circle) and mark.ink.dash]
    assert len(dashed) == 4
    named = label_boxes(lock)
    assert {"joint P2: 6 balloons", "joint P1: 5 balloons"} <= named.keys()
    assert len(named["1"]) == len(named["2"]) == 2


def test_the_key_has_the_signs_of_plans() -> None:
    book = book_of("gallery/reading_globe")
    plans = {PictureSign.TURN, PictureSign.LATER, PictureSign.BEFORE, PictureSign.BETWEEN}
    more = {PictureSign.ROUND, PictureSign.GAP}
    assert signs_used(book, plan_views(book)) == plans | more


@pytest.mark.parametrize("name", PIECES)
def test_chains_are_named_when_they_are_made_and_no_colour_is_called_as_they_are(name: str) -> None:
    """Each chain that a course brings in is in the heading of the step that ties it."""
    book = book_of(name)
    called = {letter for step in _planned(book) for letter in _letters(book, step)}
    made = [step for step in book.steps if step.kind is Kind.CHAIN]
    tied = {op.chain: book.told(step).title for step in made for op in step.operations}
    assert called <= tied.keys()
    for letter in called:
        _, _, named = tied[letter].rpartition(": ")
        assert re.search(rf"\b{letter}\b", named) or " to " in named
    assert not called & set(book.colour_letters.values())


def _letters(book: Book, step: Step) -> list[str]:
    return [one.letter for one in planned_course(book, step).chains]
