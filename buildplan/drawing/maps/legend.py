"""The key of a joint map: each sign and each style of line on it, with what it means."""

from __future__ import annotations

from collections.abc import Sequence
from enum import Enum, auto

from buildplan.drawing.fonts import text_width
from buildplan.drawing.line_art import INK, TYPE, lock_mark
from buildplan.drawing.map_style import (
    CHAIN_DASHES,
    LOCK_RADIUS,
    LinkStyle,
    chain_style,
    joint_marks,
    link_marks,
    number_box,
)
from buildplan.drawing.marks import Label, Mark, Point
from buildplan.drawing.way_round import pointed
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice

SAMPLE, LINE, GAP = 26.0, 17.0, 16.0  # a sample's width, a row's height, between two items
WORDS_AT = 31.0
# Up to so many chains are named one by one.
MOST_CHAINS = 12
DISC_RADIUS, LINES_APART = 7.0, 4.2


class Sign(Enum):
    """What a key explains beside lines of links: of a line, its `LinkStyle` is the sign."""

    JOINT = auto()
    SKIPPED = auto()
    AGAIN = auto()  # joints and lines drawn a second time
    SHOWN_BEFORE = auto()  # joints drawn a second time
    LOCK = auto()
    WAY = auto()
    NUMBER = auto()
    ANY_CHAIN = auto()


Item = tuple[Sign | LinkStyle, str]


def chain_items(framework: Framework, words: Sequence[str], voice: Voice) -> list[Item]:
    """The lines of long chains, each with its words; of very many, what tells them apart."""
    if len(framework.chains) > MOST_CHAINS:
        told = voice.say_in("legend", "a chain, named by its letter; dashes tell chains apart")
        return [(Sign.ANY_CHAIN, told)]
    return [(chain_style(i), each) for i, each in enumerate(words)]


def legend(items: Sequence[Item], width: float) -> tuple[float, list[Mark]]:
    """The key, laid out in rows from the picture's foot: its height, and its marks."""
    rows: list[list[tuple[Sign | LinkStyle, str, float]]] = [[]]
    x = 0.0
    for sign, words in items:
        wide = WORDS_AT + text_width(words, TYPE)
        if rows[-1] and x + wide > width:
            rows.append([])
            x = 0.0
        rows[-1].append((sign, words, x))
        x += wide + GAP
    marks: list[Mark] = []
    for i, row in enumerate(rows):
        y = LINE * (len(rows) - 1 - i) + LINE / 2
        for sign, words, left in row:
            marks += _sample(sign, (left, y))
            at = (left + WORDS_AT, y - TYPE * 0.35)
            marks.append(Label(at, words, TYPE, INK, anchor="start"))
    return LINE * len(rows), marks


def _sample(sign: Sign | LinkStyle, at: Point) -> list[Mark]:
    x, y = at
    ends, middle = ((x, y), (x + SAMPLE, y)), (x + SAMPLE / 2, y)
    if isinstance(sign, LinkStyle):
        return link_marks(*ends, sign)
    match sign:
        case Sign.JOINT | Sign.SKIPPED | Sign.SHOWN_BEFORE:
            return _disc(middle, sign)
        case Sign.AGAIN:
            return [*link_marks(*ends, chain_style(0), repeat=True), *_disc(middle, sign)]
        case Sign.LOCK:
            return [*lock_mark(middle, LOCK_RADIUS, -45)]
        case Sign.WAY:
            return pointed(ends)
        case Sign.NUMBER:
            return [number_box(middle, DISC_RADIUS)]
        case Sign.ANY_CHAIN:
            return _all_dashes(at)


def _disc(at: Point, sign: Sign) -> list[Mark]:
    again = sign in (Sign.AGAIN, Sign.SHOWN_BEFORE)
    skipped = sign is Sign.SKIPPED
    return joint_marks(at, DISC_RADIUS, "", skipped=skipped, locked=False, repeat=again)


def _all_dashes(at: Point) -> list[Mark]:
    """The lines of chains, one below the other."""
    x, y = at
    top = y + LINES_APART * (len(CHAIN_DASHES) - 1) / 2
    marks: list[Mark] = []
    for i in range(len(CHAIN_DASHES)):
        level = top - LINES_APART * i
        marks += link_marks((x, level), (x + SAMPLE, level), chain_style(i))
    return marks
