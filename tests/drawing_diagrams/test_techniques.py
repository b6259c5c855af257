"""Technique pictures: the knots are the knots they claim to be; every picture is readable."""

from __future__ import annotations

from statistics import fmean

import numpy as np
import pytest
from diagram_pieces import assert_inside, assert_readable, built, listed, pieces, star, tube
from strand_crossings import crossings

from buildplan.drawing.bodies import lock_centres
from buildplan.drawing.camera import project
from buildplan.drawing.line_art import PAPER
from buildplan.drawing.marks import Circle, Label, Stamp
from buildplan.drawing.techniques import TECHNIQUES, moves, technique_pictures
from buildplan.drawing.techniques.ballast import tie_ballast
from buildplan.drawing.techniques.held_locks import from_outside
from buildplan.drawing.techniques.joints import join_chains
from buildplan.drawing.techniques.knots import chain_strands, closing_strand
from buildplan.drawing.techniques.large_locks import lock_gaps, lock_of_joint, locks_of_joints
from buildplan.drawing.techniques.locks import twist_lock, twisted_necks
from buildplan.drawing.techniques.pairs import pair_strands, wrapped_strands
from buildplan.drawing.techniques.props import HEIGHT, WIDTH, Strand
from buildplan.instructions.telling import tell_steps
from buildplan.language.voice import Voice
from buildplan.sequence.model import Kind
from buildplan.sequence.steps import plan_steps
from buildplan.shape.finding import find_shape

PIECES = {**pieces(), "listed": listed([("P", "Q"), ("Q", "R"), ("R", "P"), ("P", "S")])}


def test_the_pair_knot_wraps_twice_and_tucks_under_its_own_turn() -> None:
    """Necks wrapped round twice, end pulled through (common practice, no source)."""
    wrap, core = pair_strands("#1F5F8B", "#F7F3E8")
    # over, behind: the first turn; over, behind: the second; then the end in front
    assert [over for _, over, _ in crossings(wrap, core)] == [1, -1, 1, -1, 1]
    turns = [place for place, over, _ in crossings(wrap, core)]
    own = [(place, over) for place, over, _ in crossings(wrap, wrap)]
    end = [over for place, over in own if place > turns[3]]
    assert end  # the end does cross the turns
    second_turn = [over for place, over in own if turns[1] < place < turns[3] and over == 1]
    assert -1 in end
    assert second_turn


def test_the_neck_is_wrapped_twice_before_its_end_is_brought_back() -> None:
    """The stage before: the same two turns, the end hanging free behind (common practice, no
    source)."""
    wrap, core = wrapped_strands("#1F5F8B", "#F7F3E8", 0.0)
    assert [over for _, over, _ in crossings(wrap, core)] == [1, -1, 1, -1]
    assert crossings(wrap, wrap) == []


def test_the_double_knot_is_a_reef_knot() -> None:
    """A square (reef) knot is the sum of a trefoil and its mirror image: in its diagram of
    six crossings the signs add up to 0; a granny knot's add up to 6 (knot theory, from
    memory). The two strands are walked one way round, as if their ends were joined."""
    left, right = chain_strands("#1F5F8B", "#F7F3E8")
    back = Strand(tuple(reversed(right.points)), right.colour)
    met = crossings(left, back)
    assert len(met) == 6
    assert sum(sign for _, _, sign in met) == 0
    assert [over for _, over, _ in met] == [1, -1, 1, 1, -1, 1]
    assert abs(sum(sign for _, _, sign in met[:3])) == 3
    assert crossings(left, left) == []


def test_a_lock_is_twisted_by_two_half_turns() -> None:
    """Two strands wound about one another cross once each half turn, each time with the same sign
    (knot theory, from memory); two half turns (common practice, no source) bring each neck back to
    its own side."""
    one, two = twisted_necks((0.0, 0.0), "#C9A227")
    # they part at the knot of the lock itself
    met = [cross for cross in crossings(one, two) if cross[0] > 1]
    assert [over for _, over, _ in met] == [1, -1]
    assert abs(sum(sign for _, _, sign in met)) == 2
    for strand in (one, two):
        assert (strand.points[1][0] > 0) == (strand.points[-1][0] > 0)


def test_a_lock_is_shown_where_the_finished_piece_has_it() -> None:
    """Seen from outside, its two rounds lie over the joint's balloons, one to either side of the
    line of the chain, as the bodies of the model do."""
    framework = tube(["straight"] * 2)
    shape = find_shape(framework)
    camera = from_outside(framework, shape, "A2")
    seen, depth = project(camera, np.array([shape.at[j] for j in ("A1", "A2", "A3", "B2", "D2")]))
    before, joint, after = seen[:3]
    assert before[1] == pytest.approx(after[1], abs=1e-3)
    assert max(depth[3:]) < depth[1]
    rounds, near = project(camera, lock_centres(framework, shape)[framework.joints.index("A2")])
    assert near == pytest.approx(np.full(2, near[0]))
    assert near[0] > depth[1]
    assert sum(rounds[:, 1] - joint[1]) == pytest.approx(0.0, abs=1e-6)
    assert abs(rounds[0, 1] - joint[1]) > 0.03


def test_the_gaps_of_locks_are_drawn_where_each_number_of_balloons_first_meets() -> None:
    """Of an open tube with a tip: at a free end three balloons, along it four, at the joint of a
    shared balloon five; each with both rounds of its lock, behind the joint."""
    framework = tube(["straight", "tip", "straight"])
    picture = lock_gaps(framework, Voice(), find_shape(framework))
    named = [m.text for m in picture.marks if isinstance(m, Label) and m.text in framework.joints]
    assert named == ["A1", "A2", "B2"]
    assert [len(framework.links_at[joint]) for joint in named] == [3, 4, 5]
    assert len([m for m in picture.marks if isinstance(m, Circle) and m.ink.dash]) == 6
    numbers = [m.text for m in picture.marks if isinstance(m, Label) and m.text in "12"]
    assert numbers == ["1", "2"] * 3
    assert "A1, A2 and B2" in picture.alt
    assert_readable(picture)


def test_what_is_one_layer_has_no_inside() -> None:
    framework = tube(["straight"] * 2, chains=2)
    picture = twist_lock(framework, Voice(), "A2", find_shape(framework))
    assert "inside" not in picture.alt
    assert not [m for m in picture.marks if isinstance(m, Label) and "inside" in m.text]
    gaps = lock_gaps(framework, Voice(), find_shape(framework))
    assert "inside" not in gaps.alt
    assert_readable(gaps)  # two balloons meet, or three in one plane: numbers at either side


def test_the_neck_is_closed_with_an_overhand_knot() -> None:
    """An overhand knot is a trefoil with its ends free: three crossings that alternate, all
    of one hand (knot theory, from memory)."""
    strand = closing_strand("#F7F3E8")
    met = crossings(strand, strand)
    assert len(met) == 6  # each crossing is passed twice
    assert [over for _, over, _ in met] in ([1, -1] * 3, [-1, 1] * 3)
    assert len({sign for _, _, sign in met}) == 1


def test_every_kind_of_work_has_a_picture() -> None:
    assert set(TECHNIQUES) == set(Kind) - {Kind.INSPECT, Kind.SETTLE}
    framework = star()
    for kind in Kind:
        drawn = len(technique_pictures(framework, kind, Voice()))
        # braced chains lie in the figure of the piece: `test_laid_out.py`
        assert drawn == (0 if kind is Kind.LAY else len(TECHNIQUES.get(kind, ())))


@pytest.mark.parametrize("name", PIECES)
@pytest.mark.parametrize("kind", list(Kind))
def test_pictures_are_readable(name: str, kind: Kind) -> None:
    for picture in technique_pictures(PIECES[name], kind, Voice()):
        assert picture.width == WIDTH
        assert picture.height <= HEIGHT
        assert_inside(picture)
        assert_readable(picture)
        assert len(picture.alt) > 40
        assert picture.alt.endswith(".")


def test_the_ring_is_counted() -> None:
    (picture,) = technique_pictures(star(), Kind.CLOSE_RING, Voice())
    assert "40" in [mark.text for mark in picture.marks if isinstance(mark, Label)]
    assert "A 40, B 40, C 40, D 40" in picture.alt


def test_the_brace_picture_names_the_piece_s_own_joints() -> None:
    _, wrap, *_ = technique_pictures(star(), Kind.BRACE, Voice())
    labels = {mark.text for mark in wrap.marks if isinstance(mark, Label)}
    assert {"A1", "B1", "C1", "D1", "1", "2", "3", "4"} <= labels
    assert "A1 to B1 to C1 to D1 to A1" in wrap.alt


def test_a_brace_is_begun_and_closed_where_the_close_ups_have_its_joints() -> None:
    """A upper right, B upper left, C lower left, D lower right; the order of the row beside them;
    at the first joint one end comes from the second, the other from the last."""
    _, _, begun, closed, _ = technique_pictures(star(), Kind.BRACE, Voice())
    labels = [mark for mark in begun.marks if isinstance(mark, Label)]
    spots = {mark.text: mark.at for mark in labels if mark.colour == PAPER and mark.bold}
    middle = tuple(fmean(spots[joint][way] for joint in SECTION) for way in (0, 1))
    quarters = [(spots[j][0] > middle[0], spots[j][1] > middle[1]) for j in SECTION]
    assert quarters == [(True, True), (False, True), (False, False), (True, False)]
    assert {"1", "2", "3", "4"} <= {mark.text for mark in labels}
    for picture, said in ((begun, "hold one end"), (closed, "knot on knot")):
        texts = [mark.text for mark in picture.marks if isinstance(mark, Label)]
        assert said in texts
        named = [mark for mark in picture.marks if isinstance(mark, Label)]
        ends = sorted((one.at[0], one.text) for one in named if one.text in SECTION)
        beside = [text for at, text in ends if at != spots[text][0] or picture is closed]
        assert beside in (["B1", "D1"], ["B1", "D1", "B1", "D1"])


SECTION = ("A1", "B1", "C1", "D1")


@pytest.mark.parametrize("name", PIECES)
def test_moves_of_every_step_are_readable(name: str) -> None:
    framework = PIECES[name]
    for step in plan_steps(framework):
        pictures = moves(framework, step, Voice())
        assert pictures or step.kind in (Kind.INSPECT, Kind.LAY)
        for picture in pictures:
            assert_inside(picture)
            assert_readable(picture)


def test_moves_show_the_step_s_own_balloons() -> None:
    framework = star()
    steps = plan_steps(framework)
    drawn = {
        said.title: [
            mark.look.colour
            for picture in moves(framework, step, Voice(), (Kind.SIZE,))
            for mark in picture.marks
            if isinstance(mark, Stamp)
        ]
        for step, said in zip(steps, tell_steps(steps, framework, "in", Voice()), strict=True)
        if Kind.SIZE in step.kinds
    }
    for key, title in (("long", "for the long chains"), ("lock", "locks")):
        colours = next(colours for name, colours in drawn.items() if title in name)
        assert set(colours) == {framework.balloons[key].colour}


def test_a_shared_brace_is_shown_as_three_and_one_that_stands() -> None:
    """Where two braces share a balloon the second is a chain of three (common practice, no
    source)."""
    framework = star()
    step = next(s for s in plan_steps(framework) if "C4-D6" in s.links and s.kind is Kind.BRACE)
    wrap = moves(framework, step, Voice())[0]
    labels = [mark.text for mark in wrap.marks if isinstance(mark, Label)]
    assert [text for text in labels if text.isdigit()] == ["1", "2", "3"]
    assert "B4-C4" in wrap.alt


def test_chains_that_no_braces_hold_are_laid_one_below_the_other() -> None:
    """Each in the order of its letter, with the tags of both its ends."""
    framework = PIECES["listed"]
    (picture,) = technique_pictures(framework, Kind.LAY, Voice())
    labels = [mark for mark in picture.marks if isinstance(mark, Label)]
    rows = [next(m.at[1] for m in labels if m.text == c.letter) for c in framework.chains]
    assert rows == sorted(rows, reverse=True)
    for long, row in zip(framework.chains, rows, strict=True):
        tags = [mark.text for mark in labels if mark.at[1] == row and mark.text != long.letter]
        ends = long.chain.joints[0], long.chain.joints[0 if long.chain.closed else -1]
        assert tags == list(ends)
    drawn = [mark for mark in picture.marks if isinstance(mark, Stamp) and mark.look.form == "link"]
    assert len(drawn) == len(framework.links)


@pytest.mark.parametrize("middle", [1, 3, 5])
def test_a_join_shows_every_balloon_that_meets_there(middle: int) -> None:
    """At a joint as many balloons meet as the graph has edges there (its degree): so many are drawn
    apart, and so many brought together."""
    framework = listed([("M", f"P{i}") for i in range(middle + 2)] + [("P0", "P1")])
    picture = join_chains(framework, Voice(), "M")
    bodies = [
        mark for mark in picture.marks if isinstance(mark, Stamp) and mark.look.form == "link"
    ]
    assert len(bodies) == 2 * len(framework.links_at["M"])
    assert_inside(picture)
    assert_readable(picture)


def test_the_large_lock_goes_out_through_gaps_between_the_balloons_of_its_joint() -> None:
    """Between balloons that touch, a round comes out where there is least rubber: nearer to the
    middle between the ways of two neighbours than to either (plain geometry)."""
    rings = {"around": 6, "rings": 3, "ring": "long", "between": "cross", "lock": "lock"}
    piece = built({"column": rings})
    shape, joint = find_shape(piece), "B1"
    camera = from_outside(piece, shape, joint)
    links = [piece.link[id_] for id_ in piece.links_at[joint]]
    ends = [link.finish if link.start == joint else link.start for link in links]
    place = [lock.joint for lock in piece.locks].index(joint)
    rounds = lock_centres(piece, shape)[place]
    seen, _ = project(camera, np.vstack([[shape.at[end] for end in ends], rounds]))
    ways = np.arctan2(*(seen - project(camera, shape.at[joint][None])[0]).T[::-1])
    assert len(ends) == 6
    for way in ways[6:]:
        off = np.sort(np.abs(np.angle(np.exp(1j * (ways[:6] - way)))))
        assert off[0] > off[1] / 2
    drawn = lock_of_joint(piece, Voice(), joint, shape)
    dashed = [mark for mark in drawn.marks if isinstance(mark, Circle) and mark.ink.dash]
    assert len(dashed) == 2
    assert_inside(drawn)
    assert_readable(drawn)
    beside = locks_of_joints(piece, Voice(), (joint, "A1"), shape)
    assert_inside(beside)
    assert_readable(beside)


def test_ballast_is_tied_to_the_balloons_that_meet_at_its_joint() -> None:
    """A joint of a straight stretch of the star has two of its chain and two of its brace, at a
    tip's outer joint there is a single instead; each in its own colour."""
    framework = star()
    for joint in ("A2", "A5"):
        drawn = [
            mark.look.colour
            for mark in tie_ballast(framework, joint, Voice()).marks
            if isinstance(mark, Stamp) and mark.look.form == "link"
        ]
        balloons = [framework.link[link].balloon for link in framework.links_at[joint]]
        assert sorted(drawn) == sorted(framework.balloons[key].colour for key in balloons)
