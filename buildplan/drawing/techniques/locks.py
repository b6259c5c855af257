"""Locks, and the joints of two parts that they hold."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.drawing.colours import mix
from buildplan.drawing.fonts import text_width
from buildplan.drawing.line_art import PAPER, TYPE
from buildplan.drawing.map_style import joint_marks, joint_radius
from buildplan.drawing.marks import Mark, Picture
from buildplan.drawing.techniques.mistakes import (
    SMALL,
    joint_from_front,
    lock_round_a_balloon,
    with_mistake,
)
from buildplan.drawing.techniques.props import (
    Palette,
    Strand,
    badge,
    knot,
    link,
    move,
    palette,
    picture,
    round_,
    tick,
    weave,
    words,
)
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice

OWN, EARLIER = 15.0, 0.45  # the locks that two joints have before they are tied: smaller, paler


def _twist_from_side(x: float, y: float, chain: str, lock: str) -> list[Mark]:
    """The joint seen along the brace, front up: the lock's knot lies on it, its two necks
    straddle it and twist behind it."""
    one = Strand(
        (
            (x, y + 10, 1),
            (x - 7, y + 6, 1),
            (x - 8, y - 3, 1),
            (x - 4, y - 9, 2),
            (x + 4, y - 14, 2),
            (x + 5, y - 18, -1),
            (x, y - 23, -1),
            (x - 7, y - 28, -1),
        ),
        lock,
        4.0,
    )
    two = Strand(
        (
            (x, y + 10, -1),
            (x + 7, y + 6, -1),
            (x + 8, y - 3, -1),
            (x + 4, y - 9, 0),
            (x - 4, y - 14, 0),
            (x - 5, y - 18, 0),
            (x, y - 23, 0),
            (x + 7, y - 28, 0),
        ),
        lock,
        4.0,
    )
    nozzle = Strand(((x - 8, y, 0), (x, y, 0), (x + 8, y, 0)), mix(chain, PAPER, 0.5), 5.0)
    return [
        *link((x - 35, y), (x - 6, y), 22, chain, "done"),
        *link((x + 6, y), (x + 35, y), 22, chain, "done"),
        *weave([nozzle, two, one]),
        *knot((x, y + 11), 0, lock, 2.8),
        *round_((x - 13, y - 35), (x - 5, y - 27), 18, lock),
        *round_((x + 13, y - 35), (x + 5, y - 27), 18, lock),
        *move([(x - 22, y - 48), (x, y - 53), (x + 22, y - 48)]),
    ]


def twist_lock(framework: Framework, voice: Voice) -> Picture:
    """A lock's knot laid on the joint, its rounds led round it and twisted past each other."""
    colours = palette(framework)
    marks: list[Mark] = []
    for number, (x, word) in enumerate(
        ((37.0, voice.say("knot on joint")), (110.0, voice.say("from the side"))), 1
    ):
        marks.append(words((x, 4), word))
        marks += badge((x, 129), str(number))
    marks += _knot_on_joint(37.0, 72.0, colours)
    marks += _twist_from_side(110.0, 82.0, colours.chain, colours.lock)
    marks += _held(185.0, 106.0, colours)
    marks += badge((157, 129), "3")
    tight = voice.say("tight")
    marks.append(words((182, 68), tight))
    marks += tick((190 + text_width(tight, TYPE) / 2, 71), 4)
    drawn = picture(
        marks,
        voice.say(
            "A lock. One: the pair's knot is laid on the joint, a round to either side, in opposite"
            " corners. Two, seen from the side: its necks straddle the joint and the two rounds are"
            " twisted past each other behind it. Three: a round sits tight on either side."
        ),
    )
    mistake = lock_round_a_balloon(colours, voice)
    return with_mistake(drawn, mistake, (155.0, 4.0), (161.0, 10.0))


def _knot_on_joint(x: float, y: float, colours: Palette) -> list[Mark]:
    out, lock = 21.0, colours.lock
    neck = ((x - out, y + out, 0), (x, y, 0), (x + out, y - out, 0))
    return [
        *joint_from_front((x, y), colours),
        *weave([Strand(neck, lock, 4.0)]),
        *knot((x, y), -45, lock, 2.8),
        *round_((x - out, y + out), (x, y), 18, lock),
        *round_((x + out, y - out), (x, y), 18, lock),
        *move([(x - 33, y + 12), (x - 36, y - 6), (x - 27, y - 18)]),
        *move([(x + 33, y - 12), (x + 36, y + 6), (x + 27, y + 18)]),
    ]


def _held(x: float, y: float, colours: Palette) -> list[Mark]:
    """The joint with its lock, small."""
    out, fat = 12.5 * SMALL, 18 * SMALL
    return [
        *joint_from_front((x, y), colours, SMALL),
        *round_((x - out, y + out), (x, y), fat, colours.lock),
        *round_((x + out, y - out), (x, y), fat, colours.lock),
    ]


def tie_parts(framework: Framework, joints: Sequence[str], voice: Voice) -> Picture:
    """Joints of two parts, each locked already, laid on one another and locked together."""
    colours = palette(framework)
    radius = joint_radius(framework)
    marks: list[Mark] = []
    y = 78.0
    for side, joint in zip((1, -1), joints, strict=False):
        at = (60.0, y + side * 24)
        for way in (1, -1):
            marks += link(
                (at[0] + way * 8, at[1]), (at[0] + way * 46, at[1] + side * 16), 25, colours.chain
            )
        for way in (1, -1):
            knot_at = (at[0] + way * 4, at[1] + side * 6)
            own_at = (at[0] + way * 13, at[1] + side * 17)
            marks += round_(own_at, knot_at, OWN, mix(colours.lock, PAPER, EARLIER))
        marks += joint_marks(at, radius, joint, skipped=False, locked=True, repeat=False)
    marks += move([(60, y + 12), (60, y + 3)])
    marks += move([(60, y - 12), (60, y - 3)])
    x = 168.0
    for dx, dy in ((0.82, 0.5), (0.82, -0.5)):
        for way in (1, -1):
            near, far = 10 * way, 52 * way
            start, finish = (x + near * dx, y + near * dy), (x + far * dx, y + far * dy)
            marks += link(start, finish, 25, colours.chain)
    marks += knot((x, y), 35, colours.chain, 3.6)
    for side in (1, -1):
        for way in (1, -1):
            own_at, knot_at = (x + way * 13, y + side * 24), (x + way * 3, y + side * 8)
            marks += round_(own_at, knot_at, OWN, mix(colours.lock, PAPER, EARLIER))
        marks += round_((x + side * 17.0, y), (x + side * 4.0, y), 24, colours.lock)
    marks += [
        words((60, 6), voice.say("each with its own lock")),
        words((x, 6), voice.say("one lock round both")),
    ]
    return picture(
        marks,
        voice.say(
            "Left, {joints}, joints of different parts, each with its own lock, brought together."
            " Right, laid knot on knot: one more lock is twisted round both.",
            joints=voice.listed(joints),
        ),
    )
