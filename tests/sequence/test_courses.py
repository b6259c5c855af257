"""The order in which hands build what has no braces."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import networkx as nx
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from sequence_pieces import BALLOONS, listed_pieces, told, tube

from buildplan.framework.assembly import build_assembly
from buildplan.framework.model import Framework, Part
from buildplan.instructions.model import Figures
from buildplan.instructions.telling import tell_steps
from buildplan.language.voice import Voice
from buildplan.patterns.column import Column, build_column
from buildplan.patterns.globe import Globe, build_globe
from buildplan.patterns.solid import Solid, build_solid
from buildplan.patterns.wall import Wall, build_wall
from buildplan.sequence.copies import equal_parts
from buildplan.sequence.courses import courses, order_of
from buildplan.sequence.exchange import steps_as_json
from buildplan.sequence.model import Kind
from buildplan.sequence.operations import operations
from buildplan.sequence.ordering import done_before, in_order
from buildplan.sequence.reach import find_reach
from buildplan.sequence.replay import replay
from buildplan.sequence.shared_work import activities_of, works_of
from buildplan.sequence.steps import plan_steps
from buildplan.sequence.timetable import crew_of, timetable
from buildplan.shape.finding import find_shape


def column(around: int, rings: int) -> Framework:
    return build_column(
        "Post",
        BALLOONS,
        Column(around=around, rings=rings, ring="long", between="cross", lock="lock"),
    )


def wall(across: int, up: int, layers: int) -> Framework:
    between = {"between": "cross"} if layers == 2 else {}
    return build_wall(
        "Wall",
        BALLOONS,
        Wall(
            across=across,
            up=up,
            layers=layers,  # type: ignore[arg-type]
            row="long",
            upright="cross",
            lock="lock",
            **between,  # type: ignore[arg-type]
        ),
    )


@pytest.mark.parametrize(("around", "rings"), [(3, 5), (4, 10), (6, 4)])
def test_a_column_grows_ring_on_ring_from_the_floor(around: int, rings: int) -> None:
    """Common practice, no source. With its shape and without."""
    piece = column(around, rings)
    for found in (courses(piece), courses(piece, find_shape(piece).at)):
        assert [
            [f"{'ABCDEFGHIJ'[ring]}{place + 1}" for place in range(around)] for ring in range(rings)
        ] == [list(course.joints) for course in found]
        # a ring comes with the zigzag above it
        assert [len(course.chains) for course in found] == [2] * (rings - 1) + [1]


@pytest.mark.parametrize(("across", "up", "layers"), [(6, 4, 1), (5, 5, 2), (3, 8, 2)])
def test_a_wall_grows_row_on_row(across: int, up: int, layers: int) -> None:
    piece = wall(across, up, layers)
    at = find_shape(piece).at
    found = courses(piece, at)
    assert len(found) == layers * (up + 1)
    for row in range(up + 1):
        in_row = found[layers * row : layers * (row + 1)]
        heights = [at[joint][1] for course in in_row for joint in course.joints]
        assert max(heights) - min(heights) < 0.1
        # it lies on its back: what is underneath comes before what lies on top of it
        depths = [np.mean([at[joint][2] for joint in course.joints]) for course in in_row]
        assert depths == sorted(depths)
    for course in found:
        along = [at[joint][0] for joint in course.joints]
        assert len(along) == across + 1
        assert along == sorted(along)
    # the first rows bring the uprights of their layer, each other one its row
    assert [len(course.chains) for course in found[layers:]] == [1] * layers * up


def test_a_two_layer_wall_has_no_lists_of_chains_of_one() -> None:
    """Each balloon between the layers is tied in when its joint is joined."""
    piece = wall(5, 5, 2)
    ops = operations(piece)
    assert not any(op.kind is Kind.CHAIN and len(op.links) == 1 for op in ops)
    between = {c.chain.links[0] for c in piece.chains if len(c.chain.links) == 1}
    assert {link for op in ops if op.kind is Kind.JOIN for link in op.links} == between


@pytest.mark.parametrize("shape", ["cube", "icosahedron", "octahedron", "dodecahedron"])
def test_a_solid_grows_from_the_face_it_stands_on(shape: str) -> None:
    piece = build_solid("Lamp", BALLOONS, Solid(shape=shape, edge="long", lock="lock"))  # type: ignore[arg-type]
    at = find_shape(piece).at
    joined = [course.joints for course in courses(piece, at)]
    heights = [np.mean([at[joint][1] for joint in joints]) for joints in joined]
    assert heights == sorted(heights)
    assert sorted(joint for joints in joined for joint in joints) == sorted(piece.joints)


def test_a_round_is_gone_round() -> None:
    """Each joint of a level is next to the one before it, seen from above; all the same way."""
    piece = build_globe("Globe", BALLOONS, Globe(long="long", short="cross", lock="lock"))
    at = find_shape(piece).at
    turns = []
    for course in courses(piece, at):
        around = np.array([at[joint][[0, 2]] for joint in course.joints])
        around -= around.mean(axis=0)
        if len(around) < 4:
            continue
        angle = np.unwrap(np.arctan2(around[:, 1], around[:, 0]))
        turns.append(np.sign(np.diff(angle)))
        assert abs(angle[-1] - angle[0]) < 2 * np.pi
    assert len(turns) > 2
    assert len(set(np.concatenate(turns))) == 1


def test_a_globe_grows_ring_on_ring() -> None:
    """No chain lies loose for later: of what has come in, all is tied to what stands but for the
    joints of the next ring."""
    piece = build_globe("Globe", BALLOONS, Globe(long="long", short="cross", lock="lock"))
    found = courses(piece, find_shape(piece).at)
    poles = {piece.joints[0], piece.joints[-1]}
    gone = [joint for course in found for joint in course.joints]
    assert [joint for joint in gone if joint not in poles] == list(piece.joints[1:-1])
    for i, course in enumerate(found):
        nearby = {joint for near in found[i : i + 2] for joint in near.joints}
        for long in piece.chains:
            if long.letter in course.chains:
                assert nearby.issuperset(long.chain.joints)


def test_what_comes_in_is_all_that_is_needed_and_nothing_before_its_time() -> None:
    piece = column(4, 6)
    shape = find_shape(piece)
    brought: set[str] = set()
    for step in plan_steps(piece, reach=find_reach(piece, shape)):
        brought |= {link for op in step.operations if op.adds for link in op.links}
        for joint in step.locks if step.kind is Kind.JOIN else ():
            assert brought.issuperset(piece.links_at[joint])
        if step.kind is Kind.JOIN:  # at most one ring ahead of what is joined
            top = max(shape.at[joint][1] for joint in step.locks)
            assert max(shape.at[piece.link[link].finish][1] for link in brought) < top + 0.35


def test_parts_keep_their_order_whatever_else_is_in_the_assembly() -> None:
    """Columns beside a wide arch go ring by ring as they do alone."""
    alone = column(4, 5)
    arch = tube(["straight"] * 12)
    whole = build_assembly(
        "Gate",
        BALLOONS,
        [Part("L", alone), Part("T", arch), Part("R", column(4, 5))],
        [("L.E1", "T.A1"), ("R.E1", "T.A13")],
        [],
        "lock",
    )
    ordered = in_order(operations(whole, order_of(whole)))
    joined = [op.joints[0] for op in ordered if op.kind is Kind.JOIN and len(op.joints) == 1]
    rounds = [joint for course in courses(alone) for joint in course.joints]
    assert joined == [f"{part}.{joint}" for part in "LR" for joint in rounds]
    steps = plan_steps(whole)
    replay(steps_as_json(steps))
    # what was told of L is not told again of R
    again = [step for step in steps if step.repeats is not None]
    assert len(again) == 5
    words = [said for _, said in told(whole)]
    for step in again:
        assert step.repeats is not None
        first, said = words[step.repeats - 1], words[step.number - 1]
        assert "read R for L" in said.text
        assert f"step {first.number}" in said.text
        joints = [[j.replace("R.", "L.") for j in turn.joints] for turn in step.turns]
        assert joints == [list(turn.joints) for turn in steps[step.repeats - 1].turns]


def test_equal_parts_are_built_side_by_side_and_what_comes_next_waits_for_all() -> None:
    alone, arch = column(4, 3), tube(["straight", "tip", "straight"])
    parts = [Part("L", alone), Part("R", alone), Part("T", arch), Part("S", alone)]
    ties = [("L.C1", "T.A1"), ("R.C1", "T.A5"), ("S.C1", "R.C3")]
    whole = build_assembly("Gate", BALLOONS, parts, ties, [], "lock")
    steps = plan_steps(whole)
    replay(steps_as_json(steps))
    work = [operation for step in steps for operation in step.operations]
    before = done_before(work)
    graph = nx.DiGraph((one, name) for name, ones in before.items() for one in ones)
    laid: dict[str, str] = {}
    for operation in work:
        if operation.kind is Kind.LAY:
            laid.setdefault(operation.joints[0].split(".")[0], operation.id)

    def locked_before(name: str) -> set[str]:
        """The parts where something is locked before an operation can be done."""
        needed = nx.ancestors(graph, name)
        return {one.removeprefix("lock ")[0] for one in needed if one.startswith("lock ")}

    assert {part: locked_before(name) for part, name in laid.items()} == {
        "L": set(),
        "R": set(),
        "T": {"L", "R"},
        "S": set(),
    }
    tied = next(op for op in work if op.kind is Kind.JOIN and len(op.joints) > 1)
    assert locked_before(tied.id) == set("LRTS")
    # so two people are sooner done
    plan = timetable(steps, crew_of(2), {}, in_workshop=False)
    single = timetable(steps, crew_of(1), {}, in_workshop=False)
    assert plan.parts[0].minutes < 0.65 * single.parts[0].minutes


def test_a_mirror_image_says_so_and_other_colours_are_no_copy() -> None:
    post = column(4, 3)
    other = replace(post, links=tuple(replace(link, balloon="other") for link in post.links))
    parts = [Part("L", post), Part("M", post, mirrored=True), Part("R", other), Part("S", post)]
    whole = build_assembly("Four", BALLOONS, parts, [], [], "lock")
    assert equal_parts(whole) == {"M": "L", "S": "L"}
    texts = [said.text for step, said in told(whole) if step.repeats is not None]
    assert sum("mirror image of part L" in text for text in texts) == 3
    assert len(texts) == 6


@settings(max_examples=40)
@given(listed_pieces(), st.integers(1, 24))
def test_every_order_of_a_listed_piece_can_be_built(framework: Framework, limit: int) -> None:
    steps = plan_steps(framework, limit)
    assert nx.is_isomorphic(
        nx.Graph(replay(steps_as_json(steps)).graph),
        nx.Graph((link.neck, link.tail) for link in framework.links),
    )
    for before, after in pairwise(s for s in steps if any(op.course for op in s.operations)):
        assert before.operations[-1].course <= after.operations[0].course


def test_two_share_the_joints_of_a_wall() -> None:
    """One joins, the other locks behind: every joint is joined after the one before it and locked
    after it is joined, and nothing is laid on a course before all of it is locked."""
    steps = plan_steps(wall(8, 6, 1))
    planned = timetable(steps, crew_of(2), {}, in_workshop=False)
    (part,) = planned.parts
    assert part.minutes < 0.75 * timetable(steps, crew_of(1), {}, in_workshop=False).minutes
    activities = {one.id: one for one in activities_of(works_of(steps, True, {}), crew_of(2), {})}
    course_of = {op.id: op.course for step in steps for op in step.operations}
    for course in range(1, max(course_of.values()) + 1):
        own = [op for step in steps for op in step.operations if op.course == course]
        numbers = {step.number for step in steps if set(own) & set(step.operations)}
        spans = [span for span in part.spans if numbers & set(span.steps)]
        assert {span.person for span in spans} == {0, 1}
        joins = [op for op in own if op.kind is Kind.JOIN]
        for before, join in pairwise(joins):
            assert before.id in activities[join.id].needs
        joined = {op.joints: op.id for op in joins}
        for lock in (op for op in own if op.kind is Kind.LOCK):
            assert joined[lock.joints] in activities[lock.id].needs
        above = [name for name, number in course_of.items() if number == course + 1]
        waited = {need for name in above if name in activities for need in activities[name].needs}
        if above:
            assert {op.id for op in own if op.kind is Kind.LOCK} <= waited


def test_a_column_after_a_wall_is_told_its_own_way() -> None:
    """What a wall taught (rows laid next to one another, free ends tied in) is not how rings are
    closed and set on: a column says that in full, and its later rings look it up there."""
    post, low = column(4, 3), wall(2, 3, 1)
    piece = build_assembly(
        "Post on a wall",
        BALLOONS,
        [Part("W", low), Part("C", post)],
        [("W.D1", "C.A1")],
        [],
        "lock",
    )
    flat = Figures(flat=frozenset({"W"}))
    steps = plan_steps(piece)
    words = tell_steps(steps, piece, "in", Voice(), flat)
    own = [one for one, step in zip(words, steps, strict=True) if step.kind is Kind.JOIN]
    texts = [one.text for one in own if " C.A" in one.title or " C.B" in one.title]
    assert "Close each into a ring" in texts[0]
    assert "stands up from chain C.A like a crown" in texts[0]
    assert "chain C.B comes on them" in texts[1]
    first = next(one.number for one in own if " C.B" in one.title)
    third = next(one for one in own if " C.C" in one.title)
    assert f"As in step {first}." in third.text
