"""What hands are told of layers: where the outside is while the first lies on the floor, that each
joint is locked before the next is brought together, and that a ball folds inwards where it narrows.

That the upper half of a ball is narrower from ring to ring is plain geometry.
"""

from __future__ import annotations

from itertools import pairwise

from sequence_pieces import BALLOONS

from buildplan.framework.ends import End
from buildplan.framework.model import Framework
from buildplan.instructions.coming import coming, is_first
from buildplan.instructions.company import people_of_steps
from buildplan.instructions.context import Context
from buildplan.instructions.model import NO_FIGURES, Figures
from buildplan.instructions.telling import tell_steps
from buildplan.language.voice import Voice
from buildplan.patterns.column import Column, build_column
from buildplan.patterns.globe import Globe, build_globe
from buildplan.patterns.solid import Solid, build_solid
from buildplan.patterns.wall import Wall, build_wall
from buildplan.sequence.laid import lets_a_hand_in
from buildplan.sequence.model import Access, Kind
from buildplan.sequence.piece import PieceIndex
from buildplan.sequence.reach import find_reach
from buildplan.sequence.steps import plan_steps
from buildplan.shape.constants import CONSTANTS
from buildplan.shape.finding import find_shape


def told(piece: Framework, figures: Figures = NO_FIGURES) -> list[str]:
    words = tell_steps(plan_steps(piece), piece, "in", Voice(), figures)
    return [one.text for one in words]


def test_a_ring_on_the_floor_is_locked_from_on_top_before_its_zigzag_comes_up() -> None:
    keys = Column(around=6, rings=3, ring="long", between="cross", lock="lock")
    texts = told(build_column("Post", BALLOONS, keys))
    (lying,) = (text for text in texts if "Lay its knot on top of the joint" in text)
    assert "goes down in the middle of ring A, the other between the two balloons of" in lying
    assert lying.index("underneath will be the outside") < lying.index("off the floor: chain")
    assert not any("lies on the floor will be the outside" in text for text in texts)
    (within,) = (text for text in texts if "From inside the piece lay its knot" in text)
    assert "One round goes out above the ring, the other below it" in within
    assert texts.index(within) > texts.index(lying), "told with the first ring that stands"
    (set_on,) = (text for text in texts if "Go joint by joint" in text)
    assert "lock it, go on round; the rest hangs." in set_on


def test_a_ball_begins_with_its_outside_down_folds_inwards_and_closes_from_outside() -> None:
    texts = told(build_globe("Ball", BALLOONS, Globe(long="long", short="cross", lock="lock")))
    down = [n for n, text in enumerate(texts) if "lies on the floor will be the outside" in text]
    rising = [n for n, text in enumerate(texts) if "rises all round" in text]
    folded = [n for n, text in enumerate(texts) if "fold the free knots of what stands" in text]
    closed = [n for n, text in enumerate(texts) if "Where no hand gets inside" in text]
    assert len(down) == len(rising) == len(closed) == 1
    assert down < rising < folded[:1] <= closed == folded[-1:]


def test_what_hangs_is_folded_up_by_two_and_closed_from_outside() -> None:
    """An octahedron is one chain: once its foot is locked nothing more comes in, the rest hangs."""
    piece = build_solid("Lamp", BALLOONS, Solid(shape="octahedron", edge="long", lock="lock"))
    steps = plan_steps(piece)
    words = tell_steps(steps, piece, "in", Voice(), NO_FIGURES)
    folded = [n for n, one in enumerate(words) if "Fold up what hangs" in one.text]
    closed = [n for n, one in enumerate(words) if "Where no hand gets inside" in one.text]
    assert folded
    assert closed == folded[-1:]
    context = Context(PieceIndex(piece), steps, "in", Voice(), NO_FIGURES)
    assert {people_of_steps(context)[n] for n in folded} == {2}


def test_which_gaps_a_lock_takes_is_told_where_none_are_opposite() -> None:
    """Three edges meet at a corner of a cube, four at one of an octahedron (Euclid, book XIII)."""
    odd = "no gap is opposite another"
    cube = Solid(shape="cube", edge="long", lock="lock")
    octahedron = Solid(shape="octahedron", edge="long", lock="lock")
    assert any(odd in text for text in told(build_solid("Lamp", BALLOONS, cube)))
    assert not any(odd in text for text in told(build_solid("Lamp", BALLOONS, octahedron)))


def test_what_is_built_lying_says_that_its_back_is_underneath() -> None:
    keys = Wall(across=2, up=2, layers=1, row="long", upright="cross", lock="lock")
    piece = build_wall("Screen", BALLOONS, keys)
    texts = told(piece, Figures(flat=frozenset(("",))))
    assert sum("The back is underneath" in text for text in texts) == 1


def test_a_lock_of_a_ring_that_no_hand_fits_into_is_led_from_outside() -> None:
    """Within a ring of n balloons, each a from knot to knot, there is a circle a / tan(pi / n)
    across (a regular polygon's), less a balloon's thickness: of four there is next to nothing."""
    for around, narrow in ((4, True), (6, False)):
        keys = Column(around=around, rings=3, ring="long", between="cross", lock="lock")
        piece = build_column("Post", BALLOONS, keys)
        assert lets_a_hand_in(piece.chains[0], piece, CONSTANTS["hand"].value) != narrow
        texts = told(piece)
        assert any("no hand fits into the ring" in text for text in texts) == narrow
        assert any("lead one round in through a gap" in text for text in texts) == narrow
        large = told(piece, Figures(hand_m=0.5))
        assert any("no hand fits into the ring" in text for text in large)
        assert any("From inside the piece lay its knot" in text for text in texts) != narrow


def test_three_are_needed_where_of_two_at_a_joint_one_stands_on_a_stool() -> None:
    """Who holds the knots cannot hold the stool as well (common practice, no source)."""
    keys = Column(around=6, rings=9, ring="long", between="cross", lock="lock")
    piece = build_column("Post", BALLOONS, keys)
    steps = plan_steps(piece, reach=find_reach(piece, find_shape(piece)))
    context = Context(PieceIndex(piece), steps, "in", Voice(), NO_FIGURES)
    high = [Access.STOOL in step.ways for step in steps]
    assert any(high)
    for step, people in zip(steps, people_of_steps(context), strict=True):
        if step.kind is Kind.JOIN and coming(context, step) and not is_first(context, step):
            assert people == (3 if Access.STOOL in step.ways else 2)


def test_which_way_round_mixed_pairs_lie_is_told_as_the_chain_has_them() -> None:
    """Of a chain one, two, one over and over each pair has both colours, and they lie to and fro;
    its balloons two by two, as pairs are (common practice, no source)."""
    ball = build_globe("Ball", BALLOONS, Globe(long="long", short="cross", lock="lock"))
    steps = plan_steps(ball)
    words = tell_steps(steps, ball, "in", Voice(), NO_FIGURES)
    found = 0
    for step, said in zip(steps, words, strict=True):
        for operation in step.of_kind(Kind.CHAIN):
            names = [ball.balloons[ball.link[id_].balloon].label for id_ in operation.links]
            pairs = list(zip(names[::2], names[1::2], strict=False))
            begun = [one for one, other in pairs if one != other]
            told = f"the first pair of two colours has {begun[0]} first" if begun else ""
            if len(begun) > 1:
                found += 1
                assert told in said.text
                turned = all(one != other for one, other in pairwise(begun))
                assert ("Every second of them is turned round." in said.text) == turned
    assert found


def test_a_chain_with_a_closed_neck_is_tagged_at_its_tail() -> None:
    """Pairs lie tail to tail, so that an odd balloon leaves a closed neck at the one end alone: the
    end that can be told apart is where the joints begin (common practice, no source)."""
    rule = "Of a chain with a closed neck tag the tail: its first joint."
    for across, said in ((3, 1), (2, 0)):
        keys = Wall(across=across, up=across, layers=1, row="long", upright="cross", lock="lock")
        wall = build_wall("Screen", BALLOONS, keys)
        for long in wall.chains:
            links = [wall.link[id_] for id_ in long.chain.links]
            assert links[0].end_at(long.chain.joints[0]) is End.TAIL
        texts = told(wall, Figures(flat=frozenset(("",))))
        assert sum(rule in text for text in texts) == said
