"""A pair, neck to neck: the first balloon held shut while the second is sized, a neck pinched in
either hand, one led twice round the other, its end brought back under its own second turn, and the
knot pulled snug. That hands hold both necks shut until then is common practice, no source."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.drawing.fonts import text_width
from buildplan.drawing.line_art import INK, TYPE
from buildplan.drawing.marks import Ink, Mark, Picture, Point, Polyline
from buildplan.drawing.techniques.hands import pinching_hand
from buildplan.drawing.techniques.mistakes import (
    links_wrapped_once,
    rounds_wrapped_once,
    with_mistake,
)
from buildplan.drawing.techniques.props import (
    WIDTH,
    Strand,
    badge,
    knot,
    link,
    lip,
    move,
    palette,
    picture,
    round_,
    signs,
    tick,
    told_apart,
    weave,
    words,
)
from buildplan.drawing.techniques.work import in_gauge
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice

# Between which x the necks are, how high they lie in the two pictures of the knot; where the knot
# pulled snug is, and the pair wrapped only once with its cross.
NECKS, WRAPPED_Y, TUCKED_Y = (50.0, 170.0), 84.0, 92.0
HANDS = (57.0, 162.0)  # where these pinch the necks
SNUG, LOW = 164.0, 30.0
ONCE_AT = (2.0, 12.0), (57.0, 5.0)
LOCK_HEIGHT = 62.0
GAUGE_AT, GAUGE_RADIUS = (158.0, 101.0), 21.0

# From where the wrapping neck leaves its balloon: over the other, behind it, over, behind (two
# turns). Along, up from the other neck, level.
_TURNS: tuple[tuple[float, float, int], ...] = (
    (50, 0, 2),
    (67, -5, 2),
    (80, -14, 2),
    (89, -11, 2),  # first turn, in front
    (95, 0, 2),
    (101, 11, 2),
    (107, 10, -1),  # behind
    (112, 0, -1),
    (117, -11, -1),
    (124, -11, 2),  # second turn, in front
    (129, 0, 2),
    (134, 11, 2),
    (141, 10, -1),  # behind
    (145, 0, -1),
)
_HANGING: tuple[tuple[float, float, int], ...] = ((148, -12, -1), (150, -25, -1))
_TUCKED: tuple[tuple[float, float, int], ...] = (
    (147, -12, -1),
    (142, -20, 1),
    (132, -13, 1),  # back in front of the other, under the second turn
    (123, 2, 1),
    (118, 18, 1),
    (115, 34, 1),
)


def wrapped_strands(colour: str, other: str, y: float) -> tuple[Strand, Strand]:
    """The two necks of a pair, one led twice round the other: (the one that wraps, the other)."""
    return _placed((*_TURNS, *_HANGING), colour, y), _wrapped(other, y)


def pair_strands(colour: str, other: str, y: float = TUCKED_Y) -> tuple[Strand, Strand]:
    """The same, with the end of the neck that wraps brought back in front of the other but under
    its own second turn."""
    return _placed((*_TURNS, *_TUCKED), colour, y), _wrapped(other, y)


def _wrapped(colour: str, y: float) -> Strand:
    way = ((170, 0, 0), (147, 0, 0), (112, 0, 0), (87, 1, 0), (75, 12, 0), (67, 30, 0))
    return _placed(way, colour, y)


def _placed(points: Sequence[tuple[float, float, int]], colour: str, y: float) -> Strand:
    return Strand(tuple((along, y + up, level) for along, up, level in points), colour)


def hold_shut(framework: Framework, voice: Voice, links: Sequence[str] = ()) -> Picture:
    """How one person keeps the air in two balloons: the first one's neck twisted and held shut
    while the second is sized, then a neck pinched in either hand."""
    one, other, neck, (mine, yours) = _pair_of(framework, links)
    twisted = Strand(((52, 101, 0), (66, 101, 0), (82, 101, 0)), one)
    y = 36.0
    first = Strand(((50, y, 0), (72, y, 0), (92, y + 10, 1), (118, y + 13, 1)), one)
    second = Strand(((170, y, 0), (148, y, 0), (128, y - 4, 0), (102, y - 10, 0)), neck)
    marks: list[Mark] = [
        *link((6, 101), (52, 101), 42, one, sign=mine),
        *weave([twisted]),
        *_twist((55.0, 101.0)),
        *lip(twisted),
        *pinching_hand((70, 101), -62),
        *in_gauge(GAUGE_AT, GAUGE_RADIUS, other),
        *pinching_hand(GAUGE_AT, 12),
        *link((4, y), (50, y), 42, one, sign=mine),
        *link((170, y), (216, y), 42, other, sign=yours),
        *weave([second, first]),
        *_twist((51.0, y)),
        *_twist((160.0, y)),
        *lip(first),
        *lip(second),
        *_both_hands(y, (66.0, 153.0)),
        *badge((10, 131), "1"),
        *badge((118, 131), "2"),
        *badge((10, 66), "3"),
        words((22, 128), voice.say("twist, hold shut"), "start"),
        words((130, 128), voice.say("size the second"), "start"),
        words((22, 63), voice.say("pinch both"), "start"),
    ]
    return picture(
        marks,
        voice.say(
            "Tying a pair alone. One: the first balloon is sized, its neck twisted and held shut"
            " between two fingers. Two: the second is sized meanwhile. Three: its neck is twisted"
            " too, and each hand pinches one neck beside its balloon, the free ends between them."
        ),
    )


def _both_hands(y: float, at: tuple[float, float] = HANDS) -> list[Mark]:
    """A hand from below at either neck, thumb towards the knot."""
    left, right = at
    return [
        *pinching_hand((left, y + 2), -100),
        *pinching_hand((right, y + 2), -80, thumb_left=True),
    ]


def wrap_pair(framework: Framework, voice: Voice, links: Sequence[str] = ()) -> Picture:
    """One neck of a pair led twice round the other, both held shut the while."""
    one, other, neck, (mine, yours) = _pair_of(framework, links)
    wrap, core = wrapped_strands(one, neck, WRAPPED_Y)
    (left, right), y = NECKS, WRAPPED_Y
    marks: list[Mark] = [
        *link((4, y), (left, y), 42, one, sign=mine),
        *link((right, y), (216, y), 42, other, sign=yours),
        *weave([core, wrap]),
        *lip(core),
        *lip(wrap),
        *_both_hands(y),
        *badge((10, 131), "4"),
        words((22, 128), voice.say("twice round"), "start"),
        words((92, y - 25), "1"),
        words((124, y - 25), "2"),
    ]
    return picture(
        marks,
        voice.say(
            "Each hand still pinches one neck. The first neck goes twice round the other, over,"
            " behind, over, behind."
        ),
    )


def _twist(at: Point) -> list[Mark]:
    """The turns of a neck that is twisted shut."""
    x, y = at
    return [
        Polyline(((x + step, y - 3.2), (x + step + 3.5, y + 3.2)), Ink(stroke=INK, width=0.8))
        for step in (0.0, 3.5, 7.0)
    ]


def _pair_of(framework: Framework, links: Sequence[str]) -> tuple[str, str, str, tuple[int, int]]:
    """Of a pair: the colours of its balloons, that of the second's neck, and their signs."""
    first = links or framework.chains[0].chain.links[:2]
    keys = [framework.link[id_].balloon for id_ in first]
    one, other = (framework.balloons[key].colour for key in keys)
    mine, yours = (signs(framework).get(key, 0) for key in keys)
    return one, other, told_apart(one, other), (mine, yours)


def tie_pair(framework: Framework, voice: Voice, links: Sequence[str] = ()) -> Picture:
    """Two link balloons neck to neck; `links` are the two, or the first pair of a chain."""
    one, other, neck, (mine, yours) = _pair_of(framework, links)
    (left, right), y = NECKS, TUCKED_Y
    balloons = [
        *link((4, y), (left, y), 42, one, sign=mine),
        *link((right, y), (216, y), 42, other, sign=yours),
        *link((SNUG - 41, LOW), (SNUG - 1, LOW), 34, one, sign=mine),
        *link((SNUG + 1, LOW), (SNUG + 41, LOW), 34, other, sign=yours),
    ]
    mistake = links_wrapped_once((one, other), neck, (mine, yours), voice)
    drawn = picture(
        [*balloons, *_pair_knots(one, neck, voice), *_both_hands(y), *badge((10, 131), "5")],
        voice.say(
            "Two link balloons tied neck to neck. One neck goes round the other twice: over,"
            " behind, over, behind. Its end then comes back under its own second turn and is pulled"
            " through. Below, the knot pulled snug, the two balloons close together."
        ),
    )
    return with_mistake(drawn, mistake, *ONCE_AT)


def pair_rounds(framework: Framework, voice: Voice) -> Picture:
    """Two rounds neck to neck: a lock. Its knot is that of two link balloons, drawn with those."""
    one = palette(framework).lock
    sign = signs(framework).get(framework.locks[0].balloon, 0) if framework.locks else 0
    marks = [
        *round_((SNUG - 18, LOW), (SNUG, LOW), 31, one, sign),
        *round_((SNUG + 18, LOW), (SNUG, LOW), 31, one, sign),
        *_snug(one, voice),
    ]
    told = voice.say(
        "Two small rounds tied neck to neck to make a lock, by the knot of two link balloons. Here"
        " it is pulled snug."
    )
    neck = told_apart(one, one)
    drawn = Picture(WIDTH, LOCK_HEIGHT, tuple(marks), told)
    return with_mistake(drawn, rounds_wrapped_once(one, neck, sign, voice), *ONCE_AT)


def _pair_knots(one: str, other: str, voice: Voice) -> list[Mark]:
    """The knot between two necks, open above and snug below."""
    wrap, core = pair_strands(one, other)
    return [
        *weave([core, wrap]),
        *lip(core),
        *lip(wrap),
        *move([(128, 118), (130, 128), (126, 136)]),
        words((136, 127), voice.say("pull through"), "start"),
        *_snug(one, voice),
    ]


def _snug(colour: str, voice: Voice) -> list[Mark]:
    """The knot pulled snug, and its name."""
    snug = voice.say("snug")
    return [
        *knot((SNUG, LOW), 0, colour),
        words((SNUG - 5, 2), snug),
        *tick((SNUG + 3 + text_width(snug, TYPE) / 2, 5), 4),
    ]
