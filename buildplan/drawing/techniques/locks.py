"""Locks."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.drawing.colours import mix
from buildplan.drawing.fonts import text_width
from buildplan.drawing.line_art import PAPER, TYPE
from buildplan.drawing.lock_gaps import FEWEST
from buildplan.drawing.marks import Mark, Picture, Point
from buildplan.drawing.techniques.held_locks import locked_joint
from buildplan.drawing.techniques.mistakes import (
    SMALL,
    joint_from_front,
    lock_round_a_balloon,
    with_mistake,
)
from buildplan.drawing.techniques.open_gaps import joint_inside
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
from buildplan.sequence.reach import is_one_layer
from buildplan.shape.model import Shape

INSIDE_AT, INSIDE_HALF = (37.0, 70.0), 36.0  # the joint from inside
HELD_AT, HELD_HALF = (189.0, 107.0), 31.0  # the finished joint: its middle, half its size


def twisted_necks(at: Point, colour: str) -> tuple[Strand, Strand]:
    """The two necks of a lock, from its knot on a joint down past the joint, where they cross
    twice: two half turns, after which each is on its own side again."""
    x, y = at

    def neck(side: int, levels: Sequence[int]) -> Strand:
        ways = ((0, 10), (7, 6), (8, -3), (5, -8), (-5, -17), (-5, -21), (5, -30), (8, -35))
        placed = ((x + side * u, y + v, level) for (u, v), level in zip(ways, levels, strict=True))
        return Strand(tuple(placed), colour, 4.0)

    return neck(-1, (1, 1, 1, 2, 2, -1, -1, -1)), neck(1, (-1, -1, -1, 0, 0, 0, 0, 0))


def _twist_from_side(x: float, y: float, colours: Palette) -> list[Mark]:
    """The joint seen along one brace, the inside of the piece up: the lock's knot lies on it, its
    two necks straddle it and cross twice outside."""
    chain, lock = colours.chain, colours.lock
    one, two = twisted_necks((x, y), lock)
    nozzle = Strand(((x - 8, y, 0), (x, y, 0), (x + 8, y, 0)), mix(chain, PAPER, 0.5), 5.0)
    brace = link((x, y + 32), (x, y + 4), 22, colours.brace, "done")
    return [
        *brace,
        *link((x - 35, y), (x - 6, y), 22, chain, "done"),
        *link((x + 6, y), (x + 35, y), 22, chain, "done"),
        *weave([nozzle, two, one]),
        *knot((x, y + 11), 0, lock, 2.8),
        *round_((x - 15, y - 42), (x - 8, y - 35), 18, lock),
        *round_((x + 15, y - 42), (x + 8, y - 35), 18, lock),
        *move([(x - 22, y - 55), (x, y - 60), (x + 22, y - 55)]),
        words((x + 13, y - 16), "1"),
        words((x + 13, y - 29), "2"),
    ]


def twist_lock(
    framework: Framework, voice: Voice, joint: str = "", shape: Shape | None = None
) -> Picture:
    """A lock's knot laid on the joint from inside the piece, its rounds led round it and twisted
    past each other outside. With the shape the last of it is `joint` as it is built; what is one
    layer has no inside."""
    colours = palette(framework)
    flat = shape is not None and is_one_layer(framework.built_with(joint), shape)
    marks = _twist_from_side(110.0, 78.0, colours)
    if flat or shape is None or len(framework.links_at[joint]) < FEWEST:
        marks += _knot_on_joint(37.0, 76.0, colours)
    else:
        marks += joint_inside(framework, shape, joint, INSIDE_AT, INSIDE_HALF)
    if flat:
        marks += [
            words((37, 4), voice.say("knot on joint")),
            words((110, 4), voice.say("from the side")),
        ]
    else:
        marks += [
            words((37, 4), voice.say("from inside")),
            words((110, 4), voice.say("outside")),
            words((110, 112), voice.say("inside")),
        ]
    if shape is None:
        marks += _held(*HELD_AT, colours)
    else:
        marks.append(locked_joint(framework, shape, joint, HELD_AT, HELD_HALF))
    for number, x in enumerate((37.0, 110.0, 157.0), 1):
        marks += badge((x, 129), str(number))
    tight = voice.say("tight")
    marks.append(words((182, 67), tight))
    marks += tick((190 + text_width(tight, TYPE) / 2, 70), 4)
    drawn = picture(marks, _lock_words(voice, flat))
    mistake = lock_round_a_balloon(colours, voice)
    return with_mistake(drawn, mistake, (155.0, 4.0), (161.0, 10.0))


def _lock_words(voice: Voice, flat: bool) -> str:
    if flat:
        return voice.say(
            "A lock. One: the pair's knot is laid on the joint, a round to either side, in opposite"
            " corners. Two, seen from the side: its necks straddle the joint and the two rounds are"
            " twisted past each other by two half turns. Three: a round sits tight in front and one"
            " behind."
        )
    return voice.say(
        "A lock. One, from inside the piece: the pair's knot is laid on the joint, a round out on"
        " either side, in opposite corners. Two, from the side: its necks straddle the joint;"
        " outside, the two rounds are twisted past each other by two half turns. Three, from"
        " outside: a round sits tight on either side of the chain."
    )


def _knot_on_joint(x: float, y: float, colours: Palette) -> list[Mark]:
    out, lock = 21.0, colours.lock
    neck = ((x - out, y + out, 0), (x, y, 0), (x + out, y - out, 0))
    return [
        *joint_from_front((x, y), colours),
        *weave([Strand(neck, lock, 4.0)]),
        *knot((x, y), -45, lock, 2.8),
        *round_((x - out, y + out), (x, y), 18, lock),
        *round_((x + out, y - out), (x, y), 18, lock),
    ]


def _held(x: float, y: float, colours: Palette) -> list[Mark]:
    """The joint with its lock, small."""
    out, fat = 12.5 * SMALL, 18 * SMALL
    return [
        *joint_from_front((x, y), colours, SMALL),
        *round_((x - out, y + out), (x, y), fat, colours.lock),
        *round_((x + out, y - out), (x, y), fat, colours.lock),
    ]
