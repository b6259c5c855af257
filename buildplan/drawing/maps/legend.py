"""The key of a joint map: each sign and each style of line on it, with what it means."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from enum import Enum, auto
from math import fsum

from buildplan.drawing.fonts import text_width, wrapped
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
from buildplan.drawing.maps.blocks import MapNames
from buildplan.drawing.marks import Label, Mark, Point
from buildplan.drawing.way_round import pointed
from buildplan.framework.chain_roles import ChainRole
from buildplan.framework.model import Framework, LongChain
from buildplan.instructions.grammar import chain_letters
from buildplan.language.voice import Voice

SAMPLE, LINE, GAP = 26.0, 14.5, 16.0  # a sample's width, a row's height, between two items
WORDS_AT = 31.0
TOLD_LINE, TOLD_GAP = 11.0, 4.0  # of what is told in words, and between it and the signs
# Up to so many chains are named one by one.
MOST_CHAINS = 12
# In columns the signs may take so many more rows than one after another.
MORE_ROWS = 1
DISC_RADIUS, LINES_APART = 6.2, 3.6


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
_Row = list[tuple[float, Item]]  # signs with their left edges


def chain_items(framework: Framework, words: Sequence[str], voice: Voice) -> list[Item]:
    """The lines of long chains, each with its words; of very many, what tells them apart."""
    if len(framework.chains) > MOST_CHAINS:
        told = voice.say_in("legend", "a chain, named by its letter; dashes tell chains apart")
        return [(Sign.ANY_CHAIN, told)]
    return [(chain_style(i), each) for i, each in enumerate(words)]


def role_items(
    chains: Sequence[LongChain],
    styles: Mapping[ChainRole, LinkStyle],
    names: MapNames,
    voice: Voice,
) -> list[Item]:
    """The line of each kind of chain, with the letters of its chains."""
    found: list[Item] = []
    for role, style in styles.items():
        letters = [names.short(long.letter) for long in chains if long.role == role]
        if letters:
            ordered = sorted(letters, key=lambda letter: (len(letter), letter))
            told = voice.say_in(
                "legend",
                "{kind}: {letters}",
                kind=voice.tell(role.words[None]),
                letters=chain_letters(voice, ordered),
            )
            found.append((style, told))
    return found


def legend(
    items: Sequence[Item], width: float, told: Sequence[str] = ()
) -> tuple[float, list[Mark]]:
    """The key from the picture's foot: its height, and its marks. The signs stand in columns, on
    narrow sheets one after another; above them is what is `told` in words."""
    rows = _in_columns(items, width)
    one_by_one = _one_after_another(items, width)
    if len(rows) > len(one_by_one) + MORE_ROWS:
        rows = one_by_one
    marks: list[Mark] = []
    for number, row in enumerate(rows):
        y = LINE * (len(rows) - 1 - number) + LINE / 2
        for left, (sign, words) in row:
            marks += _sample(sign, (left, y))
            at = (left + WORDS_AT, y - TYPE * 0.35)
            marks.append(Label(at, words, TYPE, INK, anchor="start"))
    lines = [line for each in told for line in wrapped(each, width, TYPE)]
    height = LINE * len(rows) + (len(lines) * TOLD_LINE + TOLD_GAP if lines else 0.0)
    for number, line in enumerate(lines):
        y = height - TOLD_GAP - TOLD_LINE * (number + 1) + TYPE * 0.4
        marks.append(Label((0.0, y), line, TYPE, INK, anchor="start"))
    return height, marks


def _one_after_another(items: Sequence[Item], width: float) -> list[_Row]:
    """The signs in rows that each hold as many as there is room for."""
    rows: list[_Row] = [[]]
    right = 0.0
    for item in items:
        wide = _wide([item])
        if rows[-1] and right + wide > width:
            rows.append([])
            right = 0.0
        rows[-1].append((right, item))
        right += wide + GAP
    return rows


def _in_columns(items: Sequence[Item], width: float) -> list[_Row]:
    """The signs in columns, in as few rows as there is room for."""
    for rows in range(1, len(items) + 1):
        across = -(-len(items) // rows)
        down = [items[first : first + rows] for first in range(0, len(items), rows)]
        along = [items[column::across] for column in range(across)]
        for columns in (down, along):
            wide = list(map(_wide, columns))
            if len(columns) == 1 or fsum(wide) + GAP * (len(columns) - 1) <= width:
                lefts = [fsum(wide[:i]) + GAP * i for i in range(len(columns))]
                return [
                    [
                        (left, column[row])
                        for left, column in zip(lefts, columns, strict=True)
                        if row < len(column)
                    ]
                    for row in range(rows)
                ]
    return []


def _wide(column: Sequence[Item]) -> float:
    """How wide a column is."""
    return max(WORDS_AT + text_width(words, TYPE) for _, words in column)


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
