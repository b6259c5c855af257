"""How one lock goes round joints of two parts that have locks of their own already."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.drawing.colours import mix
from buildplan.drawing.line_art import PAPER, TYPE
from buildplan.drawing.marks import Mark, Picture, Point
from buildplan.drawing.techniques.props import (
    WIDTH,
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

OWN_PT, EARLIER = 13.0, 0.5  # the rounds of the locks that are there: smaller, paler
NEW_PT, OUT = 18.0, 38.0  # the rounds of the tie's, and how far out they hang
APART = 46.0  # from knot to knot before they come together
READY_AT, ABOVE_AT, READY_HIGH = (56.0, 52.0), (164.0, 46.0), 82.0
BEFORE_AT, TIED_AT = (56.0, 46.0), (164.0, 68.0)


def tie_joints(framework: Framework, voice: Voice, joints: Sequence[str], *, up: bool) -> Picture:
    """How the pair of a tie goes round two `joints`, those of their locks that are there pale: its
    knot lies inside the first before the other comes to it, its rounds are out where those have
    none; then they are twisted tight. The second part goes on upwards from the first (`up`), or to
    the right."""
    colours, first, second = palette(framework), joints[0], joints[-1]
    locked = [joint in framework.lock_at for joint in (first, second)]
    before, tied = _Laid(BEFORE_AT, up=up), _Laid(TIED_AT, up=up)
    marks = [
        *_before(before, colours, locked),
        *_tied(tied, colours, locked),
        *badge((10.0, 129), "1"),
        *badge((118.0, 129), "2"),
        *_names(before, first, second),
        words((BEFORE_AT[0] + 6, 2), voice.say("from outside")),
    ]
    tight = voice.say("tight")
    marks += [words((TIED_AT[0], 2), tight), *tick((TIED_AT[0] + 8 + 2.4 * len(tight), 5), 4)]
    return picture(marks, _words(voice, first, second, locked=any(locked)))


def pair_ready(framework: Framework, voice: Voice, joint: str) -> Picture:
    """The pair of a tie where it waits at the `joint` below, whose own lock is pale: its knot
    inside, a round out through the gap at either side; from outside, and from above."""
    colours, (x, y) = palette(framework), ABOVE_AT
    laid = _Laid(READY_AT, up=True)
    marks: list[Mark] = [
        *_pair(laid, colours),
        *_own(laid, colours, has=joint in framework.lock_at),
    ]
    marks += _hung(laid, colours)
    marks.append(words(laid.place(12, -24), joint, "start"))
    for side in (-1, 1):
        marks += link((x + side * 44, y + 14), (x + side * 5, y), 22, colours.chain, "done")
    neck = ((x - 12, y - 15), (x - 8, y - 3), (x, y + 9), (x + 8, y - 3), (x + 12, y - 15))
    marks += knot((x, y - 1), 0, colours.chain, 2.8)
    marks += weave([Strand(tuple((*spot, 0) for spot in neck), colours.lock, 4.0)])
    marks += knot((x, y + 9), 0, colours.lock, 2.8)
    for side in (-1, 1):
        marks += round_((x + side * 18, y - 24), (x + side * 12, y - 15), NEW_PT, colours.lock)
    marks += [
        words((READY_AT[0], 2), voice.say("from outside")),
        words((x, 2), voice.say("from above")),
        words((x, y + 26), voice.say("inside")),
    ]
    told = voice.say(
        "{joint} with the pair of its tie, before the part above comes: from outside and from"
        " above. The pair's knot lies inside the knots of the joint, a round hangs outside at"
        " either side.",
        joint=joint,
    )
    return Picture(WIDTH, READY_HIGH, tuple(marks), told)


class _Laid:
    """Where what is drawn lies: `out` to either side, `on` the way from the first joint to the
    second, which goes up the page or to its right."""

    def __init__(self, at: Point, *, up: bool) -> None:
        self.up = up
        x, y = at
        self.at = at if up else (x - APART / 2, y + APART / 2)

    def place(self, out: float, on: float) -> Point:
        x, y = self.at
        return (x + out, y + on) if self.up else (x + on, y - out)

    def link(self, start: Point, finish: Point, colour: str) -> list[Mark]:
        return link(self.place(*start), self.place(*finish), 20, colour, "done")

    def round(self, centre: Point, tied_at: Point, wide: float, colour: str) -> list[Mark]:
        return round_(self.place(*centre), self.place(*tied_at), wide, colour)


def _before(laid: _Laid, colours: Palette, locked: Sequence[bool]) -> list[Mark]:
    """Two joints with the locks that they have, the second a little way off, and the pair that is
    to tie them behind the first."""
    marks = [
        *_pair(laid, colours),
        *_own(laid, colours, has=locked[0]),
        *_own(laid, colours, on=APART, way=1, has=locked[1]),
        *_hung(laid, colours),
    ]
    return [*marks, *move([laid.place(17, APART - 13), laid.place(17, 22), laid.place(17, 13)])]


def _pair(laid: _Laid, colours: Palette) -> list[Mark]:
    """The pair of a tie behind its joint: the knot, and the neck to either side."""
    neck = [(*laid.place(-OUT + 6, 4), 0), (*laid.place(0, 1), -1), (*laid.place(OUT - 6, 4), 0)]
    return [
        *weave([Strand(tuple(neck), colours.lock, 4.0)]),
        *knot(laid.place(0, 1), 0, colours.lock, 2.8),
    ]


def _hung(laid: _Laid, colours: Palette) -> list[Mark]:
    """Its rounds, out at either side."""
    return [
        mark
        for side in (-1, 1)
        for mark in laid.round((side * OUT, 12), (side * (OUT - 6), 5), NEW_PT, colours.lock)
    ]


def _own(laid: _Laid, colours: Palette, *, has: bool, on: float = 0.0, way: int = -1) -> list[Mark]:
    """A joint that lies so far on, the balloons that go on from it one `way` and to both sides, and
    the rounds of its lock if it `has` one."""
    colour = colours.chain if way < 0 else colours.brace
    marks = laid.link((0, on + way * 36), (0, on + way * 4), colour)
    for side in (-1, 1):
        marks += laid.link((side * 40, on), (side * 5, on), colour)
    for side in (-1, 1) if has else ():
        marks += laid.round((0, on + side * 8.0), (0, on), OWN_PT, _pale(colours))
    return marks


def _tied(laid: _Laid, colours: Palette, locked: Sequence[bool]) -> list[Mark]:
    """The two knot on knot: the rounds of their own locks the way from part to part, the new ones
    across it."""
    marks: list[Mark] = []
    for way, colour in ((-1, colours.chain), (1, colours.brace)):
        marks += laid.link((0, way * 44), (0, way * 4), colour)
        for side in (-1, 1):
            marks += laid.link((side * 40, way * 14), (side * 3, way * 3), colour)
    for on, colour in ((-3, colours.chain), (3, colours.brace)):
        marks += knot(laid.place(0, on), 0, colour, 2.8)
    own = [(side * 6.5, way * 13.0) for way in (-1, 1) for side in (-1, 1)]
    for at, has in zip(own, (0, 1, 0, 1), strict=True):
        if locked[has]:
            marks += laid.round(at, (0, 0), OWN_PT, _pale(colours))
    for side in (-1, 1):
        marks += laid.round((side * 14, 0), (side * 3, 0), NEW_PT, colours.lock)
    return marks


def _pale(colours: Palette) -> str:
    return mix(colours.lock, PAPER, EARLIER)


def _names(laid: _Laid, first: str, second: str) -> list[Mark]:
    """The joints' names, clear of what is drawn of them."""
    if laid.up:
        spots = laid.place(12, -24), laid.place(12, APART + 16)
        return [words(at, name, "start") for at, name in zip(spots, (first, second), strict=True)]
    spots = laid.place(OUT + 22, -14), laid.place(-OUT - 6, APART)
    return [words((x, y - TYPE / 2), n) for (x, y), n in zip(spots, (first, second), strict=True)]


def _words(voice: Voice, first: str, second: str, *, locked: bool) -> str:
    told = voice.say(
        "{first} and {second} tied. One, from outside: the pair's knot lies inside {first}, a round"
        " out at either side; {second} comes to it. Two: the knots lie on one another, the pair's"
        " necks at either side of both, its rounds twisted past each other and tight.",
        first=first,
        second=second,
    )
    if not locked:
        return told
    own = voice.say("Pale: the rounds of the locks that the joints had; the new ones lie across.")
    return f"{told} {own}"
