"""Words, lists, tables and pictures that run on from page to page.

A block knows its height at a given width and draws itself with its top at a given y. A page
that is full hands the rest of a list or table on to the next; a heading stays with what
follows it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Protocol

from reportlab.lib.styles import ParagraphStyle

from buildplan.document.paper import Paper
from buildplan.document.renderer import (
    BODY,
    HEADING,
    STRONG,
    TITLE,
    Leaf,
    Press,
    column_widths,
    least_widths,
    paragraph_height,
    plain,
)
from buildplan.drawing.marks import Picture
from buildplan.language.speaking import say

TICK_INDENT = 17.0
DASH_INDENT = 14.0
COLUMN_GAP = 20.0
TWO_COLUMNS_FROM = 420.0
LITTLE = 0.2  # share of a page that is too little for the last one
COMPANY = 3  # entries of a list that go to the last page with a paragraph


class Block(Protocol):
    """Something to be set; `after` is the space below it."""

    @property
    def after(self) -> float:
        """Space below it."""

    def height(self, width: float) -> float:
        """Its height, `width` points wide."""

    def draw(self, press: Press, x: float, top: float, width: float) -> None:
        """Draw it with its upper left corner at (x, top)."""

    def parted(self, width: float, room: float) -> tuple[Block, Block] | None:
        """What fits into `room`, and the rest; None when nothing does."""


@dataclass(frozen=True)
class Words:
    """A paragraph, as markup."""

    markup: str
    style: ParagraphStyle = BODY
    role: str = "P"
    after: float = 4.0

    def height(self, width: float) -> float:
        return paragraph_height(self.markup, self.style, width)

    def draw(self, press: Press, x: float, top: float, width: float) -> None:
        press.paragraph(self.markup, x, top, width, self.style, self.role)

    def parted(self, width: float, room: float) -> tuple[Block, Block] | None:
        return None


def heading(text: str) -> Words:
    """A heading within a page; it stays with what follows."""
    return Words(plain(text), HEADING, "H2", after=5.0)


@dataclass(frozen=True)
class Items:
    """A list of paragraphs (markup), each with a box to tick or a dash before it."""

    items: tuple[str, ...]
    ticked: bool = False
    gap: float = 4.0
    after: float = 10.0

    def _heights(self, width: float) -> list[float]:
        indent = TICK_INDENT if self.ticked else DASH_INDENT
        return [paragraph_height(item, BODY, width - indent) + self.gap for item in self.items]

    def height(self, width: float) -> float:
        return sum(self._heights(width))

    def draw(self, press: Press, x: float, top: float, width: float) -> None:
        setter = press.tick_list if self.ticked else press.bullets
        setter(self.items, x, top, width, self.gap)

    def parted(self, width: float, room: float) -> tuple[Block, Block] | None:
        fits = _how_many(self._heights(width), room)
        if not 0 < fits < len(self.items):
            return None
        return replace(self, items=self.items[:fits]), replace(self, items=self.items[fits:])


@dataclass(frozen=True)
class Grid:
    """A table, cells as markup. `shares` of the width go to the columns; a page that begins
    within it has its head again."""

    head: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    shares: tuple[float, ...]
    right_aligned: frozenset[int] = frozenset()
    pad: float = 4.0
    after: float = 12.0

    def _widths(self, width: float) -> list[float]:
        whole = sum(self.shares)
        wanted = [width * share / whole for share in self.shares]
        return column_widths(wanted, self._least_widths)

    @cached_property
    def _least_widths(self) -> list[float]:
        return least_widths([self.head, *self.rows], self.pad)

    def _row_height(self, row: Sequence[str], style: ParagraphStyle, width: float) -> float:
        cells = zip(row, self._widths(width), strict=True)
        tallest = max(paragraph_height(cell, style, wide - 2 * self.pad) for cell, wide in cells)
        return tallest + 2 * self.pad

    def _heights(self, width: float) -> list[float]:
        head = self._row_height(self.head, STRONG, width)
        return [head, *(self._row_height(row, BODY, width) for row in self.rows)]

    def height(self, width: float) -> float:
        return sum(self._heights(width))

    def draw(self, press: Press, x: float, top: float, width: float) -> None:
        widths = self._widths(width)
        press.table([self.head, *self.rows], x, top, widths, self.right_aligned, pad=self.pad)

    def parted(self, width: float, room: float) -> tuple[Block, Block] | None:
        fits = _how_many(self._heights(width), room) - 1
        if fits == len(self.rows) - 1 > 2:
            fits -= 1  # the last row does not stand alone
        if not 0 < fits < len(self.rows):
            return None
        return replace(self, rows=self.rows[:fits]), replace(self, rows=self.rows[fits:])


@dataclass(frozen=True)
class Shown:
    """A picture, at most `scale` of its own size and never wider than the column."""

    picture: Picture
    scale: float = 1.0
    after: float = 8.0

    def _scale(self, width: float) -> float:
        return min(self.scale, width / self.picture.width)

    def height(self, width: float) -> float:
        return self.picture.height * self._scale(width)

    def draw(self, press: Press, x: float, top: float, width: float) -> None:
        scale = self._scale(width)
        press.picture(self.picture, x, top - self.picture.height * scale, scale)

    def parted(self, width: float, room: float) -> tuple[Block, Block] | None:
        return None


@dataclass(frozen=True)
class Beside:
    """Two columns of blocks side by side, `share` of the width for the first."""

    first: tuple[Block, ...]
    second: tuple[Block, ...]
    share: float = 0.5
    after: float = 10.0

    def _widths(self, width: float) -> tuple[float, float]:
        first = (width - COLUMN_GAP) * self.share
        return first, width - COLUMN_GAP - first

    def height(self, width: float) -> float:
        first, second = self._widths(width)
        return max(height_of(self.first, first), height_of(self.second, second))

    def draw(self, press: Press, x: float, top: float, width: float) -> None:
        first, second = self._widths(width)
        draw_column(press, self.first, x, top, first)
        draw_column(press, self.second, x + first + COLUMN_GAP, top, second)

    def parted(self, width: float, room: float) -> tuple[Block, Block] | None:
        widths = zip((self.first, self.second), self._widths(width), strict=True)
        (first, third), (second, fourth) = (_parted(blocks, wide, room) for blocks, wide in widths)
        if not (first or second) or not (third or fourth):
            return None
        return replace(self, first=first, second=second), replace(self, first=third, second=fourth)


@dataclass(frozen=True)
class Boxed:
    """Blocks within a strong line, as the regulation's warning stands."""

    blocks: tuple[Block, ...]
    pad: float = 10.0
    after: float = 10.0

    def height(self, width: float) -> float:
        return height_of(self.blocks, width - 2 * self.pad) + 2 * self.pad

    def draw(self, press: Press, x: float, top: float, width: float) -> None:
        height = self.height(width)
        with press.decoration() as canvas:
            canvas.setStrokeColor("#1A1A1A")
            canvas.setLineWidth(1.6)
            canvas.rect(x, top - height, width, height, stroke=1, fill=0)
        draw_column(press, self.blocks, x + self.pad, top - self.pad, width - 2 * self.pad)

    def parted(self, width: float, room: float) -> tuple[Block, Block] | None:
        return None


def beside(
    paper: Paper, first: Sequence[Block], second: Sequence[Block], share: float = 0.5
) -> tuple[Block, ...]:
    """Two columns where the paper is wide enough for them, else one after the other."""
    if not is_wide(paper):
        return (*first, *second)
    return (Beside(tuple(first), tuple(second), share),)


def is_wide(paper: Paper) -> bool:
    """Whether two columns fit."""
    return paper.measure >= TWO_COLUMNS_FROM


def _how_many(heights: Sequence[float], room: float) -> int:
    """How many of the first fit."""
    used, count = 0.0, 0
    for height in heights:
        used += height
        if used > room + 0.01:
            break
        count += 1
    return count


def height_of(blocks: Sequence[Block], width: float) -> float:
    """Height of blocks one below the other."""
    gaps = sum(block.after for block in blocks[:-1])
    return sum(block.height(width) for block in blocks) + gaps


def draw_column(press: Press, blocks: Sequence[Block], x: float, top: float, width: float) -> None:
    """Draw blocks one below the other."""
    for block in blocks:
        block.draw(press, x, top, width)
        top -= block.height(width) + block.after


def _is_heading(block: Block) -> bool:
    return isinstance(block, Words) and block.role == "H2"


def pages_of(blocks: Sequence[Block], width: float, first: float, room: float) -> list[list[Block]]:
    """Blocks shared out to pages: `first` points high on the first, `room` on the others."""
    pages: list[list[Block]] = [[]]
    left = first
    todo = list(blocks)
    while todo:
        block = todo.pop(0)
        needed = block.height(width)
        follows = todo[0] if todo and _is_heading(block) else None
        # a heading wants the first lines of what it stands over
        want = needed + (block.after + _least(follows, width, room) if follows else 0.0)
        if want <= left + 0.01:
            pages[-1].append(block)
            left -= needed + block.after
            continue
        whole = _is_heading(block) or _stays_whole(block, needed, room)
        parts = None if whole else block.parted(width, left)
        if parts is not None:
            pages[-1].append(parts[0])
            todo.insert(0, parts[1])
        elif pages[-1]:
            todo.insert(0, block)
        else:  # taller than a page: it is drawn all the same
            pages[-1].append(block)
        pages.append([])
        left = room
    return _evened(_in_company([page for page in pages if page]), width, room)


def _in_company(pages: list[list[Block]]) -> list[list[Block]]:
    """No last lines have the last page nearly to themselves: the end of the list before them
    goes there too."""
    if len(pages) < 2:
        return pages
    before, (*lists, words) = pages[-2:]
    items = before[-1]
    short = COMPANY - sum(len(one.items) if isinstance(one, Items) else COMPANY for one in lists)
    if not isinstance(words, Words) or not isinstance(items, Items) or short <= 0:
        return pages
    kept = len(items.items) - short
    if kept < COMPANY:
        return pages
    before[-1] = replace(items, items=items.items[:kept])
    pages[-1].insert(0, replace(items, items=items.items[kept:], after=0.0))
    return pages


def _evened(pages: list[list[Block]], width: float, room: float) -> list[list[Block]]:
    """A last page that would hold little more than a heading gets the section before it too."""
    if len(pages) < 2:
        return pages
    *kept, before, last = pages
    starts = [number for number, block in enumerate(before) if number and _is_heading(block)]
    if not starts or not _is_heading(last[0]) or height_of(last, width) > LITTLE * room:
        return pages
    moved = [*before[starts[-1] :], *last]
    if height_of(moved, width) > room:
        return pages
    return [*kept, before[: starts[-1]], moved]


def _stays_whole(block: Block, height: float, room: float) -> bool:
    """Whether a block goes to the next page rather than be parted: columns that one page holds."""
    return isinstance(block, Beside) and height <= room + 0.01


def _parted(
    blocks: Sequence[Block], width: float, room: float
) -> tuple[tuple[Block, ...], tuple[Block, ...]]:
    """The blocks of a column that fit into `room`, and the rest; a heading goes with what
    follows it."""
    fits: list[Block] = []
    rest = list(blocks)
    left = room
    while rest and rest[0].height(width) <= left + 0.01:
        left -= rest[0].height(width) + rest[0].after
        fits.append(rest.pop(0))
    parts = rest[0].parted(width, left) if rest and not _is_heading(rest[0]) else None
    if parts is not None:
        fits.append(parts[0])
        rest[0] = parts[1]
    while rest and fits and _is_heading(fits[-1]):
        rest.insert(0, fits.pop())
    return tuple(fits), tuple(rest)


def _least(block: Block, width: float, room: float) -> float:
    """The least height of a block that may stand below a heading."""
    whole = block.height(width)
    if _stays_whole(block, whole, room):
        return whole
    parts = block.parted(width, whole - 0.1)
    return min(whole, 60.0) if parts is not None else whole


def leaves_of(paper: Paper, title: str, blocks: Sequence[Block]) -> list[Leaf]:
    """As many sheets as it takes, the title on the first."""
    title_height = paragraph_height(plain(title), TITLE, paper.measure) + 8
    room = paper.top - paper.bottom
    pages = pages_of(blocks, paper.measure, room - title_height, room)

    def leaf(number: int) -> Leaf:
        def draw(press: Press) -> None:
            top = press.title(title) if number == 0 else paper.top
            draw_column(press, pages[number], paper.left, top, paper.measure)

        name = title if number == 0 else say("{title}, page {page}", title=title, page=number + 1)
        return Leaf(name, draw, running=title, listed=number == 0)

    return [leaf(number) for number in range(len(pages))]
