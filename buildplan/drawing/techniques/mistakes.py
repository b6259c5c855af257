"""The usual mistakes that a picture tells: each small, beside the right way, a cross next to it.

Every mistake is a picture within the technique's own, in a group of its own ("mistake" and which
it is), so that a program cannot take it for the right way.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from buildplan.drawing.colours import mix
from buildplan.drawing.line_art import PAPER
from buildplan.drawing.marks import Inset, Mark, Picture, Point
from buildplan.drawing.techniques.props import (
    Palette,
    Strand,
    cross,
    knot,
    link,
    lip,
    round_,
    weave,
)
from buildplan.language.phrases import sentences
from buildplan.language.voice import Voice

PAIR_SIZE = (110.0, 44.0)
LOCK_SIZE = (60.0, 60.0)
SMALL = 0.88  # how large a joint is drawn where the right and the wrong one share a column
NECKS = 0.5  # how large the necks of a mistaken pair are drawn, to those of the right one


def with_mistake(drawn: Picture, mistake: Picture, at: Point, crossed_at: Point) -> Picture:
    """A technique picture with a mistake, under all else, whose lower left corner is `at`, and
    its cross."""
    marks = (Inset(mistake, at), *drawn.marks, *cross(crossed_at, 3))
    return replace(drawn, marks=marks, alt=sentences(drawn.alt, mistake.alt))


def mistaken(size: tuple[float, float], name: str, marks: Sequence[Mark], alt: str) -> Picture:
    """The picture of a mistake."""
    return Picture(*size, tuple(marks), alt, (("picture", "mistake"), ("mistake", name)))


def once_wrapped(colour: str, other: str) -> tuple[Strand, Strand]:
    """The two necks of a pair wrapped only once: (the one that wraps, the one wrapped). Over,
    behind, and the end comes back under its only turn."""
    left, y = 11.0, 18.0

    def small(points: tuple[tuple[float, float, int], ...], colour: str) -> Strand:
        placed = tuple((left + NECKS * u, y + NECKS * v, level) for u, v, level in points)
        return Strand(placed, colour, 3.6)

    core = ((132, 0, 0), (118, 0, 0), (98, 0, 0), (80, 1, 0), (67, 10, 0), (58, 30, 0))
    wrap = (
        (44, 0, 2),
        (58, -9, 2),
        (76, -17, 2),
        (89, -12, 2),  # the turn, in front
        (96, 0, 2),
        (104, 12, 2),
        (112, 11, -1),  # behind
        (117, 0, -1),
        (119, -11, -1),
        (114, -19, 1),
        (102, -15, 1),  # back in front of the core, under the turn
        (88, 2, 1),
        (85, 16, 1),
        (84, 34, 1),
    )
    return small(wrap, colour), small(core, other)


def links_wrapped_once(
    colours: tuple[str, str], neck: str, signs: tuple[int, int], voice: Voice
) -> Picture:
    """Two link balloons whose necks are wrapped only once; `neck` colours the second's."""
    bodies = (
        link((1, 18), (33, 18), 28, colours[0], sign=signs[0]),
        link((77, 18), (109, 18), 28, colours[1], sign=signs[1]),
    )
    return _wrapped_once(bodies, colours[0], neck, voice)


def rounds_wrapped_once(colour: str, neck: str, sign: int, voice: Voice) -> Picture:
    """Two rounds whose necks are wrapped only once; `neck` colours the second's."""
    bodies = (
        round_((20, 18), (33, 18), 24, colour, sign),
        round_((90, 18), (77, 18), 24, colour, sign),
    )
    return _wrapped_once(bodies, colour, neck, voice)


def _wrapped_once(
    bodies: tuple[list[Mark], list[Mark]], one: str, neck: str, voice: Voice
) -> Picture:
    wrap, core = once_wrapped(one, neck)
    marks = [*bodies[0], *bodies[1], *weave([core, wrap]), *lip(core), *lip(wrap)]
    alt = voice.say("Crossed out: one neck goes round the other only once; the pair slips.")
    return mistaken(PAIR_SIZE, "pair", marks, alt)


def joint_from_front(at: Point, colours: Palette, size: float = 1.0) -> list[Mark]:
    """A joint of a chain, level, and a brace, both pale; a balloon is 29 points x `size` long."""
    x, y = at
    reach, end, fat = 3.5 * size, 32.5 * size, 22.0 * size
    return [
        *link((x - end, y), (x - reach, y), fat, colours.chain, "done"),
        *link((x + reach, y), (x + end, y), fat, colours.chain, "done"),
        *link((x, y + end), (x, y + reach), fat, colours.brace, "done"),
        *link((x, y - reach), (x, y - end), fat, colours.brace, "done"),
        *knot(at, 20, mix(colours.chain, PAPER, 0.5), 3.2 * size),
    ]


def lock_round_a_balloon(colours: Palette, voice: Voice) -> Picture:
    """A lock's necks across a balloon beside the joint, whose knot stays bare."""
    x = y = LOCK_SIZE[0] / 2
    belly, bulge = x + 18 * SMALL, x + 20 * SMALL
    band = ((belly, y + 14, 0), (bulge, y + 6, 0), (bulge, y - 6, 0), (belly, y - 14, 0))
    marks = [
        *joint_from_front((x, y), colours, SMALL),
        *weave([Strand(band, colours.lock, 4.0)]),
        *knot((bulge, y), 90, colours.lock, 2.6),
        *round_((belly, y + 17), (belly, y + 9), 18 * SMALL, colours.lock),
        *round_((belly, y - 17), (belly, y - 9), 18 * SMALL, colours.lock),
    ]
    alt = voice.say("Crossed out: the lock's necks go round a balloon, not between the balloons.")
    return mistaken(LOCK_SIZE, "lock", marks, alt)
