"""Two people at a joint of what grows up from the floor: one holds its knots together, the other
locks them; the rest of the chains that come in hangs."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from buildplan.drawing.line_art import INK, PAPER, TYPE
from buildplan.drawing.marks import Ink, Label, Mark, Picture, Point, Polyline
from buildplan.drawing.techniques.hands import pinching_hand
from buildplan.drawing.techniques.props import (
    Strand,
    badge,
    knot,
    link,
    picture,
    round_,
    signs,
    weave,
    words,
)
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice

# Points: the joint, how long and stout its balloons are, where the lock is held above it.
AT, LONG, STOUT, NEAR = (110.0, 66.0), 48.0, 24.0, 5.0
LOCK_UP, ROUND, FLOOR = 33.0, 16.0, 14.0
# Degrees: what stands leads down within this span, what comes in up; the outermost of it droops.
STANDING_DEG, COMING_DEG = (222.0, 318.0), (128.0, 52.0)
LETTERED = 41.0  # points from the joint: hands are at it
SIDE_DEG, DROOP = 6.0, (17.0, -40.0)


def hold_joint(
    framework: Framework,
    voice: Voice,
    joint: str,
    standing: Sequence[str],
    coming: Sequence[str],
) -> Picture:
    """A joint with the balloons that stand there already, below it, and those that come in: the
    first two of these lead to either side and hang, with what follows them."""
    sides, rest = coming[:2], coming[2:]
    marks: list[Mark] = [Polyline(((14.0, FLOOR), (206.0, FLOOR)), Ink(stroke=INK, width=0.8))]
    ways = dict(zip(standing, _fan(len(standing), *STANDING_DEG), strict=True))
    for id_, way in ways.items():
        marks += _balloon(framework, id_, _off(AT, way, NEAR), _off(AT, way, LONG), "done")
    for id_, side in zip(sides, (-1, 1), strict=False):
        way = ways[id_] = math.radians(90 - side * (90 - SIDE_DEG))
        (x, y) = end = _off(AT, way, LONG)
        marks += _balloon(framework, id_, (x, y), (x + side * DROOP[0], y + DROOP[1]), "new")
        marks += _balloon(framework, id_, _off(AT, way, NEAR), end, "new")
    for id_, way in zip(rest, _fan(len(rest), *COMING_DEG), strict=True):
        ways[id_] = way
        marks += _balloon(framework, id_, _off(AT, way, NEAR), _off(AT, way, LONG), "new")
    marks += knot(AT, 0, framework.balloons[framework.link[coming[0]].balloon].colour)
    marks += [*_hands(framework), *_letters(framework, ways)]
    marks += [
        *badge((62.0, 32.0), "1"),
        *badge((158.0, 32.0), "1"),
        *badge((136.0, 129.0), "2"),
        words((40.0, 2.0), voice.say("1 holds")),
        words((180.0, 2.0), voice.say("2 locks")),
        words((AT[0], 2.0), voice.say("joint {joint}", joint=joint)),
    ]
    return picture(
        marks,
        voice.say(
            "Joint {joint}, from outside: the first person, before it, holds its knots together"
            " with both hands; the second reaches in over the top with the lock. The rest of the"
            " chains hangs at either side.",
            joint=joint,
        ),
    )


def _hands(framework: Framework) -> list[Mark]:
    """Those of the one who holds, from below to either side; that of the other, from above, with
    the lock."""
    x, y = AT
    lock = framework.balloons[framework.locks[0].balloon].colour
    high = (x, y + LOCK_UP)
    marks: list[Mark] = []
    for side in (-1, 1):
        marks += pinching_hand((x + side * 7, y - 2), 270.0 + side * 52.0, thumb_left=side > 0)
    neck = Strand(((x - 12, high[1] - 9, 0), (*high, 0), (x + 12, high[1] - 9, 0)), lock, 3.4)
    marks += [*pinching_hand((x, high[1] + 2), 90.0), *weave([neck]), *knot(high, 0, lock, 2.6)]
    for side in (-1, 1):
        marks += round_((x + side * 18, high[1] - 14), (x + side * 12, high[1] - 9), ROUND, lock)
    return marks


def _balloon(framework: Framework, id_: str, start: Point, end: Point, state: str) -> list[Mark]:
    kind = framework.link[id_].balloon
    colour, sign = framework.balloons[kind].colour, signs(framework)[kind]
    return link(start, end, STOUT, colour, state, sign if state == "new" else 0)


def _letters(framework: Framework, at: Mapping[str, float]) -> list[Mark]:
    """The letter of its chain towards the end of each balloon, by the ways that they lead; of those
    that are no chain none."""
    found: list[Mark] = []
    for id_, way in at.items():
        (long,) = (one for one in framework.chains if id_ in one.chain.links)
        if len(long.chain.links) > 1:
            x, y = _off(AT, way, LETTERED)
            foot = (x, y - TYPE * 0.36)
            found.append(Label(foot, long.letter, TYPE, INK, bold=True, halo=PAPER))
    return found


def _fan(count: int, first_deg: float, last_deg: float) -> list[float]:
    """So many ways within a span, radians; a single one in its middle."""
    if count == 1:
        return [math.radians((first_deg + last_deg) / 2)]
    step = (last_deg - first_deg) / max(count - 1, 1)
    return [math.radians(first_deg + step * number) for number in range(count)]


def _off(at: Point, way: float, far: float) -> Point:
    return at[0] + far * math.cos(way), at[1] + far * math.sin(way)
