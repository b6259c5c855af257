"""Pictures of chains as they are laid, course by course, and of their colours, read back from their
marks against the graph."""

from __future__ import annotations

import math
from itertools import combinations

import pytest
from diagram_pieces import assert_inside, assert_readable, built

from buildplan.drawing.course_places import places_lying
from buildplan.drawing.fonts import text_width
from buildplan.drawing.lock_gaps import lock_gaps
from buildplan.drawing.marks import Inset, Label, Picture, Point, Polyline, Stamp
from buildplan.drawing.techniques.back_locks import locks_from_back
from buildplan.drawing.techniques.held_joints import hold_joint
from buildplan.drawing.techniques.joints import join_chains
from buildplan.drawing.techniques.large_locks import lock_from_outside
from buildplan.drawing.techniques.rounds import lay_rows, set_round
from buildplan.drawing.techniques.strips import colour_strip
from buildplan.drawing.techniques.tagged_rings import ring_with_tags
from buildplan.framework.chain_roles import RING, ROW, UPRIGHT, ZIGZAG
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice
from buildplan.sequence.laid import RoundCourse, lies_alone, round_course, rows_of
from buildplan.shape.finding import find_shape

COLUMN = {"rings": 3, "ring": "long", "between": "cross", "lock": "lock"}
WALL = {"row": "long", "upright": "cross", "lock": "lock"}


def column(around: int) -> Framework:
    return built({"column": {**COLUMN, "around": around}})


def balloons(picture: Picture) -> list[Stamp]:
    return [m for m in picture.marks if isinstance(m, Stamp) and m.look.form == "link"]


def places(picture: Picture) -> list[tuple[str, Point]]:
    return [(m.text, m.at) for m in picture.marks if isinstance(m, Label)]


@pytest.mark.parametrize("around", [3, 4, 6, 9])
def test_a_ring_lies_with_its_zigzag_round_it(around: int) -> None:
    """Every tip lies outside between the two joints that the zigzag leads to, as far from them as
    its balloons are long: the sides of an isosceles triangle (Euclid, Elements I, def. 20)."""
    framework = column(around)
    course = _first_course(framework)
    assert lies_alone(course, framework)
    assert course.up is not None
    spots = places_lying(find_shape(framework).at, framework, course)
    walk = course.up.chain.joints
    long = framework.balloons[framework.link[course.up.chain.links[0]].balloon].tie_to_tie_m
    for before, tip, after in zip(walk[::2], walk[1::2], (*walk[2::2], walk[0]), strict=True):
        assert math.hypot(*spots[tip]) > math.hypot(*spots[before])
        assert math.dist(spots[tip], spots[before]) == pytest.approx(long, rel=1e-3)
        assert math.dist(spots[tip], spots[after]) == pytest.approx(long, rel=1e-3)


@pytest.mark.parametrize("around", [3, 4, 6])
def test_the_rounds_of_a_lock_go_out_above_and_below_the_ring(around: int) -> None:
    """Each round of a lock between two balloons of one chain, so that either side of the chain that
    goes round has one (common practice, no source): of the first ring between the ring's own and
    the zigzag's, of the next between the two of each zigzag."""
    framework = column(around)
    chain_of = {id_: one for one in framework.chains for id_ in one.chain.links}
    rings = [one for one in framework.chains if one.role is RING]
    joints = [joint for ring in rings[:2] for joint in ring.chain.joints]
    found = lock_gaps(framework, find_shape(framework), joints)
    assert set(found) == set(joints)
    for joint, gaps in found.items():
        roles = [{chain_of[id_].role for id_ in gap} for gap in gaps]
        letters = [{chain_of[id_].letter for id_ in gap} for gap in gaps]
        assert all(len(some) == 1 for some in letters)
        assert letters[0] != letters[1]
        own = joint in rings[0].chain.joints
        assert sorted(role.name for some in roles for role in some) == sorted(
            role.name for role in ((RING, ZIGZAG) if own else (ZIGZAG, ZIGZAG))
        )


def test_tail_knots_of_a_zigzag_lie_on_its_ring() -> None:
    """Pairs are tied neck to neck and chained tail to tail (common practice, no source): a chain
    closed at its tails has a tail knot at every joint that it begins from."""
    framework = column(5)
    course = _first_course(framework)
    assert course.up is not None
    picture = ring_with_tags(framework, Voice(), course.ring, course.up, 1)
    assert_inside(picture)
    assert_readable(picture)
    named = [text for text, _ in places(picture)]
    assert set(course.up.chain.joints) <= set(named)
    assert f"tail knots: {', '.join(course.ring.chain.joints)}." in picture.alt


def test_knots_of_a_ring_are_tails_and_necks_in_turn() -> None:
    """Also where it comes to each joint twice, as one closed chain of an octahedron does (Demaine,
    Demaine and Hart, Balloon Polyhedra: an octahedron is one balloon)."""
    solid = built({"solid": {"shape": "octahedron", "edge": "long", "lock": "lock"}})
    (chain,) = (one for one in solid.chains if one.chain.closed)
    picture = ring_with_tags(solid, Voice(), chain, chain, 1)
    assert f"tail knots: {', '.join(chain.chain.joints[::2])}." in picture.alt


def test_one_holds_and_the_other_locks_with_all_balloons_of_the_joint() -> None:
    framework = column(4)
    joint = [one for one in framework.chains if one.role is RING][1].chain.joints[0]
    met = framework.links_at[joint]
    picture = hold_joint(framework, Voice(), joint, met[:2], met[2:])
    assert_inside(picture)
    assert len(balloons(picture)) == len(met) + 2  # the two that hang, with what follows them
    assert {"1", "2"} <= {text for text, _ in places(picture)}


def test_a_lock_from_outside_has_both_rounds_before_the_joint() -> None:
    """The neck that goes behind is dashed, from one gap to the other through the joint's middle."""
    solid = built({"solid": {"shape": "octahedron", "edge": "long", "lock": "lock"}})
    picture = lock_from_outside(solid, Voice(), solid.joints[-1], find_shape(solid))
    assert_inside(picture)
    assert_readable(picture)
    rounds = [m for m in picture.marks if isinstance(m, Stamp) and m.look.form == "round"]
    assert len(rounds) == 2
    (behind,) = (m for m in picture.marks if isinstance(m, Polyline) and m.ink.dash)
    middles = [(m.matrix[4], m.matrix[5]) for m in rounds]
    assert math.dist(*middles) > math.dist(*behind.points) > 0


def _first_course(framework: Framework) -> RoundCourse:
    ring = next(one for one in framework.chains if one.role is RING)
    zigzag = next(one for one in framework.chains if one.role is ZIGZAG)
    course = round_course([ring, zigzag], [])
    assert course is not None
    return course


def test_a_ring_comes_down_on_the_tips_of_its_own_names() -> None:
    framework = column(6)
    rings = [one for one in framework.chains if one.role is RING]
    zigzags = [one for one in framework.chains if one.role is ZIGZAG]
    course = round_course([rings[1], zigzags[1]], [rings[0], zigzags[0]])
    assert course is not None
    assert (course.down, course.up) == (zigzags[0], zigzags[1])
    picture = set_round(framework, Voice(), course, -1)
    assert_inside(picture)
    for joint in rings[1].chain.joints[:4]:
        (x, low), (other_x, high) = (at for text, at in places(picture) if text == joint)
        assert x == other_x
        assert high > low


def test_the_chains_of_a_wall_stand_on_the_joints_of_its_row() -> None:
    framework = built({"wall": {"across": 6, "up": 4, "layers": 1, **WALL}})
    rows = [one for one in framework.chains if one.role is ROW]
    uprights = [one for one in framework.chains if one.role is UPRIGHT]
    row, coming = rows[0], [rows[0], *uprights]
    assert rows_of(coming) == [row]
    picture = lay_rows(framework, Voice(), [row], coming, 1)
    at = dict(places(picture))
    xs = [at[joint][0] for joint in row.chain.joints if joint in at]
    assert xs == sorted(xs)
    for one in uprights:
        assert at[one.letter][0] == at[one.chain.joints[0]][0]


def test_the_rows_beside_a_doorway_lie_with_a_gap_between_them() -> None:
    opening = {"along": 2, "up": 0, "wide": 2, "high": 2}
    framework = built({"wall": {"across": 6, "up": 4, "layers": 1, "openings": [opening], **WALL}})
    rows = [one for one in framework.chains if one.role is ROW][:2]
    uprights = [one for one in framework.chains if one.role is UPRIGHT]
    feet = {joint for row in rows for joint in row.chain.joints}
    coming = [*rows, *(one for one in uprights if one.chain.joints[0] in feet)]
    assert list(rows_of(coming)) == rows
    at = dict(places(lay_rows(framework, Voice(), rows, coming, 1)))
    left, right = ([at[joint][0] for joint in row.chain.joints] for row in rows)
    assert right[0] - left[-1] > left[1] - left[0]
    # of a solid no chain lies along a foot while others lead up from it
    solid = built({"solid": {"shape": "tetrahedron", "edge": "long", "lock": "lock"}})
    assert not rows_of(solid.chains)


def test_locks_at_the_back_are_drawn_as_who_stands_behind_sees_them() -> None:
    """What is at the left from the front is at the right from behind (plain geometry), and the two
    rounds go out through two gaps, never through one."""
    box = {"across": 2, "up": 2, "layers": 2, "between": "cross", **WALL}
    framework = built({"wall": box})
    picture = locks_from_back(framework, Voice(), find_shape(framework), {"D1": "", "E2": ""})
    corner, middle = (mark.picture for mark in picture.marks if isinstance(mark, Inset))
    at = {one.text: one.at for one in middle.marks if isinstance(one, Label)}
    assert {*at} == {"E1", "E3", "D2", "F2"}, "A balloon to the front leads away from the eye"
    assert at["E3"][0] < at["D2"][0] < at["E1"][0]
    assert at["D2"][1] < at["E1"][1] < at["F2"][1]
    assert {one.text for one in corner.marks if isinstance(one, Label)} == {"D2", "E1"}
    for drawn in (corner, middle):
        rounds = [m for m in drawn.marks if isinstance(m, Stamp) and m.look.form == "round"]
        assert len(rounds) == 2
    gaps = lock_gaps(framework, find_shape(framework), {"E2"})["E2"]
    assert len({frozenset(gap) for gap in gaps}) == 2


def test_words_over_locks_at_the_back_stay_over_their_own() -> None:
    """Neighbours may have many joints each: their words have as many lines as they need."""
    framework = built({"wall": {"across": 2, "up": 2, "layers": 2, "between": "cross", **WALL}})
    named = {"D1": "D1, D3, E1, E3 and F1", "E2": "A2 to A8, C2 to C8 and E2"}
    picture = locks_from_back(framework, Voice(), find_shape(framework), named)
    assert_inside(picture)
    said = [one for one in picture.marks if isinstance(one, Label) and one.text != "From the back."]
    for one, other in combinations(said, 2):
        apart = abs(one.at[0] - other.at[0])
        widths = (text_width(one.text, one.size), text_width(other.text, other.size))
        assert apart > sum(widths) / 2 or abs(one.at[1] - other.at[1]) >= one.size


@pytest.mark.parametrize("width", [120.0, 480.0])
def test_a_strip_shows_a_chain_colour_by_colour(width: float) -> None:
    """Balloons read line by line, from the left, are those of the chain, and each name stands under
    its knot."""
    framework = built(
        {
            "graph": {
                "joints": [f"J{i}" for i in range(24)],
                "balloons": [
                    {
                        "from": f"J{i}",
                        "to": f"J{i + 1}",
                        "balloon": "long" if i % 3 else "cross",
                    }
                    for i in range(23)
                ],
            }
        }
    )
    links = tuple(link.id for link in framework.links)
    joints = [f"J{i}" for i in range(24)]
    picture = colour_strip(framework, Voice(), links, joints, width)
    assert picture.width <= width
    assert_inside(picture)
    assert_readable(picture)
    drawn = sorted(balloons(picture), key=lambda one: (-round(one.matrix[5]), one.matrix[4]))
    colours = [framework.balloons[framework.link[link].balloon].colour for link in links]
    assert [one.look.colour for one in drawn] == colours
    read = sorted(places(picture), key=lambda one: (-round(one[1][1]), one[1][0]))
    numbers = [int(text.removeprefix("J")) for text, _ in read]
    assert numbers == sorted(numbers)
    assert set(numbers) >= {0, 8, 16} if width > 400 else {0, 3, 6}


def test_at_a_joint_each_chain_leads_the_way_that_it_is_built() -> None:
    """Round a joint of the second ring: the ring to both sides, the zigzag that it comes down on
    below it, its own above it."""
    framework = column(6)
    second = [one for one in framework.chains if one.role is RING][1].chain
    picture = join_chains(framework, Voice(), second.joints[0], find_shape(framework))
    assert_readable(picture)
    ring, low, high = zip(*[iter(balloons(picture)[6:])] * 2, strict=True)
    level = sum(mark.matrix[5] for mark in ring) / 2
    assert ring[0].matrix[5] == pytest.approx(ring[1].matrix[5], abs=10)
    assert all(mark.matrix[5] < level - 10 for mark in low)
    assert all(mark.matrix[5] > level + 10 for mark in high)


def test_chains_are_drawn_apart_at_every_joint() -> None:
    """Two knots of a wall, or of a column, never lie on one another before they are brought
    together: the middles of the chains' balloons are apart."""
    wall = built({"wall": {**WALL, "between": "cross", "layers": 2, "across": 4, "up": 4}})
    for framework in (wall, column(6)):
        shape = find_shape(framework)
        for joint, links in framework.links_at.items():
            apart = balloons(join_chains(framework, Voice(), joint, shape))[: len(links)]
            at = [(mark.matrix[4], mark.matrix[5]) for mark in apart]
            assert min(math.dist(one, other) for one, other in combinations(at, 2)) > 20
