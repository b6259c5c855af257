"""Chains that come in with a course, where they lie: a ring on the floor with the zigzag round it,
a ring set on the zigzag below, a row with the uprights that begin at it.

What is drawn comes from the joints of the chains alone, so it serves every piece that has such a
course.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace

from buildplan.drawing.line_art import INK, TYPE
from buildplan.drawing.map_style import HALF_HIGH, named_joint
from buildplan.drawing.marks import Label, Mark, Picture, Point
from buildplan.drawing.techniques.props import WIDTH, link, move, picture, signs, words
from buildplan.framework.model import Framework, LongChain
from buildplan.language.phrases import first_to_last
from buildplan.language.voice import Voice
from buildplan.sequence.laid import RoundCourse

FREE = 1.5  # points over the names of the highest joints
# Stoutness of a balloon to its length, as drawn; lean ones leave those beside them to be seen.
PLUMP, LEAN = 0.75, 0.56
# A ring set on: so many of its joints are shown, so far apart, at these heights.
SHOWN, APART, FIRST_X = 4, 46.0, 42.0
BELOW, TIP, LIFTED, HIGHEST = 16.0, 50.0, 86.0, 120.0
HEADROOM = 15.0  # over the highest joints
LYING, ON_FLOOR, CROWN = 20.0, 62.0, 116.0  # the first ring, its zigzag lying and standing
# A row on the floor: where it lies, how many joints and how many balloons up have room.
ROW_X, ROW_Y, ROW_WIDTH, LETTERS_Y = 16.0, 14.0, 188.0, 130.0
MOST_ALONG, MOST_UP = 9, 5


def stand_round(
    framework: Framework, voice: Voice, ring: LongChain, zigzag: LongChain, turn: int
) -> Picture:
    """How the zigzag of the first ring comes up from lying round it, a stretch as it is seen from
    outside; `turn` as for `lay_round`."""
    joints = ring.chain.joints[:SHOWN]
    along = joints if turn > 0 else joints[::-1]
    x = {joint: FIRST_X + APART * place for place, joint in enumerate(along)}
    on_floor = {joint: (x[joint], ON_FLOOR) for joint in joints}
    lying = _with_turns(zigzag, on_floor, LYING)
    standing = _with_turns(zigzag, on_floor, CROWN)
    tips = [joint for joint in zigzag.chain.joints if joint in standing and joint not in on_floor]
    marks: list[Mark] = []
    for one, y in ((zigzag, (ON_FLOOR + CROWN) / 2 - 3), (ring, ON_FLOOR - 3)):
        marks.append(Label((2, y), one.letter, TYPE + 1, INK, anchor="start", bold=True))
    marks += _links(framework, zigzag, lying, "done", LEAN)
    marks += _links(framework, ring, on_floor)
    marks += _links(framework, zigzag, standing, stoutness=LEAN)
    for tip in tips:
        marks += move([(standing[tip][0], y) for y in (LYING + 4, ON_FLOOR, CROWN - 16)])
    for joint in (*joints, *tips):
        marks += _disc(standing[joint], joint)
    marks.append(_part_of_ring(voice))
    return Picture(
        WIDTH,
        CROWN + HALF_HIGH + FREE,
        tuple(marks),
        voice.say(
            "From outside: the outer knots of zigzag {zigzag}, {tips}, are lifted from the floor"
            " until it stands up from ring {ring}.",
            zigzag=zigzag.letter,
            tips=voice.listed(tips),
            ring=ring.letter,
        ),
    )


def set_round(framework: Framework, voice: Voice, course: RoundCourse, turn: int) -> Picture:
    """A ring that comes down on the tips of the zigzag below, a stretch of it as it is seen from
    outside; `turn` as for `lay_round`."""
    joints = course.ring.chain.joints[:SHOWN]
    # clockwise from above runs to the left of one who stands outside
    along = joints if turn > 0 else joints[::-1]
    x = {joint: FIRST_X + APART * place for place, joint in enumerate(along)}
    tips = {joint: (x[joint], TIP) for joint in joints}
    lifted = {joint: (x[joint], LIFTED) for joint in joints}
    marks: list[Mark] = []
    named = [(course.down, TIP - 22), (course.ring, LIFTED - 3), (course.up, LIFTED + 20)]
    for one, y in named:
        if one is not None:
            marks.append(Label((2, y), one.letter, TYPE + 1, INK, anchor="start", bold=True))
    if course.down is not None:
        at = _with_turns(course.down, tips, BELOW)
        marks += _links(framework, course.down, at, "done", LEAN)
    if course.up is not None:
        at = _with_turns(course.up, lifted, HIGHEST)
        marks += _links(framework, course.up, at, stoutness=LEAN)
    marks += _links(framework, course.ring, lifted)
    for joint in joints:
        marks += move([(x[joint], LIFTED - 12), (x[joint], LIFTED - 16), (x[joint], TIP + 12)])
        marks += [*_disc(tips[joint], joint), *_disc(lifted[joint], joint)]
    marks.append(_part_of_ring(voice))
    return Picture(
        WIDTH,
        HIGHEST + HEADROOM if course.up is not None else LIFTED + PLUMP * APART / 2 + FREE,
        tuple(marks),
        voice.say(
            "From outside: ring {ring} comes down on the tips of zigzag {zigzag}, knots of one"
            " name on each other: {joints}.",
            ring=course.ring.letter,
            zigzag=course.down.letter if course.down else "",
            joints=voice.listed(joints),
        ),
    )


def _part_of_ring(voice: Voice) -> Label:
    """That a stretch of a ring is drawn, and from where."""
    return words(
        (FIRST_X + APART * (SHOWN - 1) / 2, 1.5), voice.say("part of the ring, from outside")
    )


def lay_rows(
    framework: Framework,
    voice: Voice,
    rows: Sequence[LongChain],
    coming: Sequence[LongChain],
    turn: int,
) -> Picture:
    """A row on the floor, or several with openings between them, and the chains that begin at its
    joints, straight from above, the head of the piece at the top; rows run to the right where
    `turn` is 1, to the left where -1."""
    spots = [
        (joint, place + number)  # an opening takes a place
        for place, (number, joint) in enumerate(
            (number, joint) for number, row in enumerate(rows) for joint in row.chain.joints
        )
    ]
    more = spots[-1][1] >= MOST_ALONG
    shown = [(joint, place) for joint, place in spots if place < MOST_ALONG - more]
    apart = min(ROW_WIDTH / max(shown[-1][1] + more, 1), 30.0)
    begin = ROW_X if turn > 0 else ROW_X + ROW_WIDTH
    at = {joint: (begin + turn * apart * place, ROW_Y) for joint, place in shown}
    marks = [mark for row in rows for mark in _links(framework, row, at)]
    if more:
        x = begin + turn * apart * (shown[-1][1] + 0.5)
        marks += [words((x + turn * 5 * i, ROW_Y), ".") for i in range(3)]
    pitch = min(apart, (LETTERS_Y - 20 - ROW_Y) / MOST_UP)
    tall = ROW_Y + HALF_HIGH
    for one in coming:
        foot = at.get(one.chain.joints[0])
        if one in rows or foot is None:
            continue
        high = min(len(one.chain.links), MOST_UP)
        up = {joint: (foot[0], foot[1] + pitch * i) for i, joint in enumerate(one.chain.joints)}
        kept = {joint: spot for joint, spot in up.items() if spot[1] <= ROW_Y + pitch * high + 1}
        marks += _links(framework, one, kept)
        top = ROW_Y + pitch * high
        if high < len(one.chain.links):
            marks += [words((foot[0], top + 3 + 3 * i), ".") for i in range(3)]
            top += 9
        marks.append(Label((foot[0], top + 6), one.letter, TYPE, INK, bold=True))
        tall = max(tall, top + 6 + TYPE)
    for joint in at:
        marks += _disc(at[joint], joint)
    ends = [first_to_last(voice, row.chain.joints[0], row.chain.joints[-1]) for row in rows]
    drawn = picture(
        marks,
        voice.say(
            "From above: row {row} lies on the floor at the foot, joints {joints} in order; chains"
            " {chains} each lie up from the joint where they begin.",
            row=voice.listed([row.letter for row in rows]),
            joints=voice.listed(ends),
            chains=voice.listed([one.letter for one in coming if one not in rows]),
        ),
    )
    return replace(drawn, height=min(drawn.height, tall + FREE))


def _walk(chain: LongChain) -> list[tuple[str, str, str]]:
    """Each balloon of a chain between its joints."""
    joints = chain.chain.joints
    after = (*joints[1:], joints[0])
    return list(zip(joints, chain.chain.links, after, strict=False))


def _with_turns(zigzag: LongChain, own: Mapping[str, Point], y: float) -> dict[str, Point]:
    """Some joints of a zigzag, and between each two of them its other one at a height."""
    found = dict(own)
    walk = _walk(zigzag)
    for (before, _, turn), (_, _, after) in zip(walk, [*walk[1:], walk[0]], strict=True):
        near = before in own and after in own and turn not in own
        if near and abs(own[before][0] - own[after][0]) < 1.5 * APART:
            found[turn] = ((own[before][0] + own[after][0]) / 2, y)
    return found


def _links(
    framework: Framework,
    chain: LongChain,
    at: Mapping[str, Point],
    state: str = "new",
    stoutness: float = PLUMP,
) -> list[Mark]:
    """The balloons of a chain both ends of which have a place; none that goes round the back."""
    marks: list[Mark] = []
    colour_sign = signs(framework)
    for one, id_, other in _walk(chain):
        if one in at and other in at and math.dist(at[one], at[other]) < 1.5 * APART:
            kind = framework.link[id_].balloon
            stout = stoutness * math.dist(at[one], at[other])
            colour = framework.balloons[kind].colour
            marks += link(at[one], at[other], stout, colour, state, colour_sign[kind])
    return marks


def _disc(at: Point, joint: str) -> list[Mark]:
    return named_joint(at, joint, later=False, before=False)
