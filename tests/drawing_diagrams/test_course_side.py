"""What hangs while a piece grows, and its side views: before and after a course is set on it."""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest
from diagram_pieces import assert_inside, built

from buildplan.drawing.bodies import every_body
from buildplan.drawing.course_side import WorkMoment, course_side
from buildplan.drawing.hanging import hanging
from buildplan.drawing.labels import label_boxes
from buildplan.drawing.techniques.large_locks import lock_from_outside, lock_of_joint
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice
from buildplan.sequence.model import Kind
from buildplan.sequence.reach import find_reach
from buildplan.sequence.steps import plan_steps
from buildplan.shape.finding import find_shape
from buildplan.shape.model import Shape

SHAPES = ("octahedron", "icosahedron")


@cache
def solid(shape: str) -> tuple[Framework, Shape]:
    piece = built({"solid": {"shape": shape, "edge": "long", "lock": "lock"}})
    return piece, find_shape(piece)


@cache
def tied_joints(shape: str) -> tuple[tuple[str, ...], ...]:
    """The joints that each step ties."""
    framework, form = solid(shape)
    steps = plan_steps(framework, reach=find_reach(framework, form))
    joins = (tuple(op.joints[0] for op in step.of_kind(Kind.JOIN)) for step in steps)
    return tuple(one for one in joins if one)


@pytest.mark.parametrize("shape", SHAPES)
def test_what_hangs_turns_about_where_it_is_tied_and_stays_as_long(shape: str) -> None:
    """A turn about an axis keeps distances (Euclid)."""
    framework, form = solid(shape)
    tied = {joint for some in tied_joints(shape)[:-1] for joint in some}
    bodies = every_body(framework, form)
    found, free = hanging(framework, form, bodies, tied)
    floor = min(float(form.at[joint][1]) for joint in framework.joints)
    middle = np.mean([form.at[joint] for joint in framework.joints], axis=0)
    for row in np.flatnonzero(bodies.is_link):
        link = framework.link[bodies.names[row]]
        if not tied & {link.start, link.finish}:  # of a chain that has not come in
            continue
        for joint, end in ((link.start, found.first[row]), (link.finish, found.second[row])):
            at = form.at[joint]
            if joint in tied:
                assert end == pytest.approx(at)
                continue
            assert end == pytest.approx(free[link.id, joint])
            assert end[1] >= floor - 1e-6
            out, usual = (np.hypot(*(place - middle)[[0, 2]]) for place in (end, at))
            assert out >= usual - 1e-6 or end[1] < at[1] - 1e-6, "it opens outwards"
        long = np.linalg.norm(found.second[row] - found.first[row])
        assert long == pytest.approx(np.linalg.norm(bodies.second[row] - bodies.first[row]))


def test_nothing_hangs_of_what_is_all_tied() -> None:
    framework, form = solid("octahedron")
    bodies = every_body(framework, form)
    found, free = hanging(framework, form, bodies, framework.joints)
    assert not free
    assert np.array_equal(found.centre, bodies.centre)


@pytest.mark.parametrize("shape", SHAPES)
def test_the_side_view_names_what_is_brought_together_before_and_after(shape: str) -> None:
    """The last joint but those before is named where it hangs, and where it is held in the end."""
    framework, form = solid(shape)
    *earlier, last = tied_joints(shape)
    links, before = frozenset(framework.link), frozenset(j for some in earlier for j in some)
    moments = (WorkMoment(links, before), WorkMoment(links, before | {*last}))
    picture = course_side(framework, form, *moments, last[0], Voice(), "told")
    assert_inside(picture)
    boxes = label_boxes(picture)
    assert {"before", "after", "1", "2"} <= boxes.keys()
    sides = {box[0] > picture.width / 2 for box in boxes[last[0]]}
    assert sides == {False, True}


@pytest.mark.parametrize("drawn", [lock_of_joint, lock_from_outside])
def test_the_gaps_of_a_lock_are_told_by_where_the_balloons_lead(drawn: object) -> None:
    """Every balloon at a joint bears the name of its other end: those that the graph has there."""
    framework, form = solid("icosahedron")
    joint = tied_joints("icosahedron")[-1][-1]
    assert callable(drawn)
    boxes = label_boxes(drawn(framework, Voice(), joint, form))
    links = [framework.link[id_] for id_ in framework.links_at[joint]]
    others = {one.finish if one.start == joint else one.start for one in links}
    assert len(others) == 5  # of an icosahedron five edges meet at each corner (Coxeter)
    assert others == boxes.keys() & set(framework.joints)
