"""Paper tags on the knots of a chain."""

from __future__ import annotations

import math
from collections.abc import Collection
from itertools import pairwise

from buildplan.drawing.fonts import text_width
from buildplan.drawing.line_art import INK, PAPER, smooth
from buildplan.drawing.marks import Circle, Ink, Label, Mark, Picture, Point, Polyline
from buildplan.drawing.techniques.props import (
    FINE,
    WIDTH,
    knot,
    link,
    picture,
    signs,
    words,
)
from buildplan.framework.model import Framework
from buildplan.language.phrases import sentences
from buildplan.language.voice import Voice

SHOWN, PITCH = 6, 38.0  # knots of a longer chain, and points from one to the next
LOWER = 25.0  # points: a tag is 22 high


def tag_joints(framework: Framework, voice: Voice, tags: Collection[str] | None = None) -> Picture:
    """Paper tags fastened to the knots along the first chain, or the first that has the joints of
    `tags` where they are given, to those."""
    wanted = set(tags or ())
    having = (one for one in framework.chains if wanted <= set(one.chain.joints))
    long = next(having, framework.chains[0])
    balloon = framework.link[long.chain.links[0]].balloon
    colour, sign = framework.balloons[balloon].colour, signs(framework)[balloon]
    back = long.chain.joints[:1] if long.chain.closed else ()
    joints = (*long.chain.joints, *back)[:SHOWN]
    counted = all(j == f"{long.letter}{i}" for i, j in enumerate(long.chain.joints, 1))
    # of chains that are brought together knot by knot each knot has its tag
    every = not (counted and framework.braces)
    tagged = [
        i
        for i, joint in enumerate(joints)
        if i < len(long.chain.joints)
        and (joint in tags if tags is not None else every or i in (0, 4))
    ]
    marks: list[Mark] = []
    crowded = every and max(map(_tag_width, joints)) > PITCH - 4  # every second one hangs lower
    knots = [(14 + PITCH * i, 92 + 6 * math.sin(i)) for i in range(len(joints))]
    for a, b in pairwise(knots):
        marks += link((a[0] + 1, a[1]), (b[0] - 1, b[1]), 31, colour, sign=sign)
    for i, (x, y) in enumerate(knots):
        marks += knot((x, y), 0, colour, 2.8)
        if i in tagged:
            marks += _tag_on((x, y), joints[i], LOWER if crowded and i % 2 else 0.0)
        elif i == len(long.chain.joints):  # of a ring, that it comes back to
            marks.append(words((x, y - 34), f"({joints[i]})"))
        else:
            marks.append(words((x, y - 34), str(i + 1)))
    if len(long.chain.joints) + len(back) > SHOWN:
        marks.append(words((knots[-1][0] + 6, knots[-1][1] - 3), "…", "start"))
    told = voice.say(
        "Part of chain {letter}: paper tags hang from its knots: {joints}.",
        letter=long.letter,
        joints=", ".join(joints[i] for i in tagged),
    )
    some = counted and len(tagged) < len(joints)
    rest = voice.say("The knots between are counted on from the tag before.") if some else ""
    return picture(marks, sentences(told, rest))


def _tag_width(joint: str) -> float:
    return text_width(joint, 10, bold=True) + 10


def _tag_on(at: Point, joint: str, lower: float) -> list[Mark]:
    """A paper tag on a string, which is longer where it hangs `lower`."""
    wide = _tag_width(joint) / 2
    x, y = min(max(at[0] + 2, wide + 1), WIDTH - wide - 1), at[1] - 36 - lower
    tag = (
        (x - wide, y - 18),
        (x + wide, y - 18),
        (x + wide, y - 4),
        (x + 5, y + 4),
        (x - 5, y + 4),
        (x - wide, y - 4),
    )
    return [
        smooth([(at[0], at[1] - 3), (at[0] + 3, at[1] - 18), (x, y - 1)], FINE),
        Polyline(tag, Ink(PAPER, INK, 0.9), closed=True),
        Circle((x, y - 1), 1.5, Ink(PAPER, INK, 0.6)),
        Label((x, y - 14), joint, 10, INK, bold=True),
    ]
