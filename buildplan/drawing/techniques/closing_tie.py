"""How a brace that goes right round is begun and closed, with hands: from the first end held at its
first joint to the double knot there.

The joints lie as in the close-ups (`seat.py`), the joint near by is seen from above: its chain runs
up the page, the brace comes to it from either side. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise

from buildplan.drawing.colours import mix
from buildplan.drawing.fonts import text_width
from buildplan.drawing.line_art import INK, PAPER, TYPE, rope
from buildplan.drawing.map_style import joint_marks, joint_radius
from buildplan.drawing.marks import Circle, Ink, Mark, Picture, Point
from buildplan.drawing.order_discs import order_discs, rows_of
from buildplan.drawing.symbols import DONE_LINE
from buildplan.drawing.techniques.hands import pinching_hand
from buildplan.drawing.techniques.knots import chain_strands
from buildplan.drawing.techniques.props import (
    Palette,
    Strand,
    badge,
    knot,
    link,
    move,
    neck_colour,
    palette,
    picture,
    tail_end,
    tick,
    told_apart,
    weave,
    words,
)
from buildplan.framework.model import Brace, Framework
from buildplan.language.voice import Voice

# The joints of a section of three and of four as the close-ups have them, in the order of chains.
SECTIONS: Mapping[int, tuple[Point, ...]] = {
    3: ((76.0, 98.0), (24.0, 71.0), (76.0, 44.0)),
    4: ((76.0, 98.0), (26.0, 98.0), (26.0, 46.0), (76.0, 46.0)),
}
END_ON, BRACE_FAT = 17.0, 23.0  # a chain's balloon seen from its end, and one of the brace
SMALL_KNOT = 0.5  # of the double knot as it is taught
NEXT_BADGE_Y, CAPTION_Y = 129.0, 5.0


def goes_round(brace: Brace) -> bool:
    """Whether a brace is one short chain that comes back to where it began."""
    return len(brace.chains) == 1 and brace.chains[0].closed and len(brace.section) in SECTIONS


def begin_brace(framework: Framework, voice: Voice, number: int = 1) -> Picture:
    """Where a brace begins and how it comes round, and its two ends crossed on the first joint."""
    colours, brace = palette(framework), framework.brace[number]
    first, after, last = _ends(brace)
    marks = _led_round(framework, brace, colours)
    marks += [
        *badge((10, NEXT_BADGE_Y), "1"),
        words((62, CAPTION_Y), voice.say("hold one end")),
    ]
    middle = (171.0, 74.0)
    marks += [*badge((147, NEXT_BADGE_Y), "2"), *_two_ends(middle, colours, after, last)]
    left = Strand(
        _curve(middle, ((-25, 0, 1), (-10, -4, 1), (4, 4, 1), (15, 20, 1))), colours.brace, 5.0
    )
    other = told_apart(colours.brace, colours.brace)
    right = Strand(_curve(middle, ((25, 0, 0), (10, -4, 0), (-4, 4, 0), (-15, 20, 0))), other, 5.0)
    marks += [*weave([right, left]), *tail_end(left), *tail_end(right)]
    marks.append(words((171, CAPTION_Y), voice.say("cross both ends")))
    return picture(
        marks,
        voice.say(
            "A brace of {count}. One: a hand holds its first end at {first}; its knots lie on"
            " those of the joints in their order, and the other hand brings its last end from"
            " {last} back to {first}. Two, {first} from above: the two ends cross on the chain's"
            " knot; neither goes round a neck of the chain.",
            count=len(brace.links),
            first=first,
            last=last,
        ),
    )


def close_brace(framework: Framework, voice: Voice, number: int = 1) -> Picture:
    """The two ends of a brace tied with a double knot on the first joint, and the knot pulled."""
    colours, brace = palette(framework), framework.brace[number]
    first, after, last = _ends(brace)
    middle = (58.0, 66.0)
    marks = [*badge((10, NEXT_BADGE_Y), "3"), *_two_ends(middle, colours, after, last)]
    tails = [
        Strand(_small(strand, middle), strand.colour, 4.0)
        for strand in chain_strands(colours.brace, told_apart(colours.brace, colours.brace))
    ]
    marks += weave([tails[1], tails[0]])
    ends = [(tail.points[-1][0], tail.points[-1][1]) for tail in tails]
    marks += pinching_hand(min(ends), 140, 0.72, thumb_left=True)
    marks += pinching_hand(max(ends), 40, 0.72)
    marks.append(words((58, CAPTION_Y), voice.say("double knot")))
    middle = (170.0, 74.0)
    marks += [*badge((124, NEXT_BADGE_Y), "4"), *_two_ends(middle, colours, after, last, 12.0)]
    marks += rope(
        [
            (middle[0] + way * reach, middle[1])
            for way, reach in ((-1, 14), (-1, 5), (1, 5), (1, 14))
        ],
        5,
        neck_colour(colours.brace),
        INK,
    )
    marks += knot(middle, 0, colours.brace, 4.2)
    said = voice.say("knot on knot")
    marks += [words((166, CAPTION_Y), said), *tick((176 + text_width(said, TYPE) / 2, 8), 4)]
    return picture(
        marks,
        voice.say(
            "Three: at {first} hands tie the two ends with a double knot, on the chain's knot."
            " Four: pulled tight, the brace's knot lies on the chain's knot, nozzles crossed.",
            first=first,
        ),
    )


def _ends(brace: Brace) -> tuple[str, str, str]:
    """The joint where a brace begins and ends, the one after it, and the last before it."""
    (chain,) = brace.chains
    return chain.joints[0], chain.joints[1], chain.joints[-1]


def _led_round(framework: Framework, brace: Brace, colours: Palette) -> list[Mark]:
    """A brace on its joints, its last end still in a hand, its first held by the other."""
    (chain,) = brace.chains
    at = dict(zip(brace.section, SECTIONS[len(brace.section)], strict=True))
    pale = Ink(mix(colours.chain, PAPER, 0.72), DONE_LINE, 0.6)
    marks: list[Mark] = [Circle(spot, END_ON, pale) for spot in at.values()]
    for one, other in pairwise(chain.joints):
        marks += link(at[one], at[other], BRACE_FAT, colours.brace, sign=colours.brace_sign)
    (x, y), (fx, fy) = at[chain.joints[0]], at[chain.joints[-1]]
    end = (x + 27, y - 14)
    marks += link((fx, fy), end, BRACE_FAT, colours.brace, sign=colours.brace_sign)
    radius = joint_radius(framework)
    for joint, spot in at.items():
        marks += joint_marks(spot, radius, joint, skipped=False, locked=False, repeat=False)
    marks += order_discs(rows_of(brace), at, radius)
    held = Strand(((x + 6, y + 8, 0), (x + 8, y + 14, 0), (x + 10, y + 20, 0)), colours.brace, 4.0)
    loose = Strand(
        ((*end, 0), (end[0] + 4, end[1] + 5, 0), (end[0] + 6, end[1] + 10, 0)), colours.brace, 4.0
    )
    marks += [*weave([held, loose]), *tail_end(held), *tail_end(loose)]
    marks += pinching_hand((x + 10, y + 17), 75, 0.56, thumb_left=True)
    marks += pinching_hand((end[0] + 6, end[1] + 7), 32, 0.72)
    marks += move([(end[0] + 1, end[1] + 17), (x + 22, y + 8), (x + 15, y + 2)])
    return marks


def _two_ends(
    middle: Point, colours: Palette, after: str, last: str, reach: float = 25.0
) -> list[Mark]:
    """A joint from above: its chain, pale, up the page, its knot, and the brace's first and last
    balloon, which end `reach` from it, with the joints that they come from."""
    x, y = middle
    long, fat, gap = 23.0, 22.0, 13.0
    marks = [
        *link((x, y - gap - 34), (x, y - gap), fat + 6, colours.chain, "done"),
        *link((x, y + gap), (x, y + gap + 34), fat + 6, colours.chain, "done"),
        *rope(
            [(x, y - gap - 1), (x, y - 4), (x, y + 4), (x, y + gap + 1)],
            5,
            mix(colours.chain, PAPER, 0.5),
            INK,
        ),
        *knot(middle, 90, colours.chain, 3.6),
        *link((x - reach - long, y), (x - reach, y), fat, colours.brace, sign=colours.brace_sign),
        *link((x + reach, y), (x + reach + long, y), fat, colours.brace, sign=colours.brace_sign),
    ]
    for side, joint in ((-1, after), (1, last)):
        marks.append(words((x + side * (reach + long / 2 + 1), y - 22), joint))
    return marks


def _curve(
    middle: Point, points: tuple[tuple[float, float, int], ...]
) -> tuple[tuple[float, float, int], ...]:
    return tuple((middle[0] + x, middle[1] + y, level) for x, y, level in points)


def _small(strand: Strand, middle: Point) -> tuple[tuple[float, float, int], ...]:
    """A tail of the double knot as it is taught, its first half knot at `middle`."""
    return tuple(
        (middle[0] + (x - 110) * SMALL_KNOT, middle[1] + (y - 84) * SMALL_KNOT, level)
        for x, y, level in strand.points
    )
