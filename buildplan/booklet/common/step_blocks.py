"""How steps are laid out: each a block, its words above its pictures, and blocks on pages."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from reportlab.lib.styles import ParagraphStyle

from buildplan.booklet.common.book import Book, adds_words
from buildplan.booklet.common.closeups import ON_THE_PIECE, ON_THE_WHOLE, Views
from buildplan.booklet.common.map_sheets import LOOKED_UP
from buildplan.booklet.common.step_pictures import (
    WHOLE_HEIGHT,
    StepPictures,
    first_moves,
    step_pictures,
)
from buildplan.document.renderer import (
    BODY,
    HEADING,
    SMALL,
    paragraph_height,
    plain,
    strong,
)
from buildplan.drawing.marks import Picture
from buildplan.language.speaking import mark, say
from buildplan.sequence.model import Kind, Stage, Step

TEXT_SHARES = (0.5, 0.53, 0.56, 0.6, 0.64, 0.46, 0.42)
COLUMN_GAP = 14.0
LEAST_HEIGHT, MOST_HEIGHT = 132.0, 200.0
LEAST_WHOLE = 150.0
GAP = 8.0
BLOCK_GAP = 16.0
NUMBER_WIDTH = 34.0
LINK_WIDTH = 132.0
TICK_WIDTH = 17.0
ROW_GAP = 4.0
COLUMNS_LEFT = 2  # of what found no room beside its step

# Stages that share pages, and what their part of the work is called: messages to be said.
PART: Mapping[Stage, str] = {
    Stage.SIZE: mark("Size and pair"),
    Stage.PAIR: mark("Size and pair"),
    Stage.CHAIN: mark("Chain"),
    Stage.CLOSE_RINGS: mark("Close rings and lay in place"),
    Stage.BRACE: mark("Brace and lock joints"),
    Stage.LOCK_JOINTS: mark("Brace and lock joints"),
    Stage.FINISH: mark("Finish"),
}


def part_name(book: Book, part: str) -> str:
    """What a part of the work (a value of PART) is called, of what there is to do in it."""
    kinds = {step.kind for step in book.steps}
    if part == PART[Stage.CLOSE_RINGS] and Kind.CLOSE_RING not in kinds:
        return say("Tag and lay in place")
    if part == PART[Stage.BRACE] and Kind.BRACE not in kinds:
        return say("Join and lock")
    return say(part)


@dataclass(frozen=True)
class Block:
    """One step laid out; heights and widths in points.

    Wide pictures stand under the words, which then have what is to be ticked at their right.
    A single narrow picture stands at the right of both. `left` is what is to be ticked that found
    no room and goes on to pages of its own.
    """

    step: Step
    heading_height: float
    pictures: StepPictures
    narrow: bool
    words_width: float
    words_height: float
    ticks_width: float
    ticks_height: float
    left: tuple[str, ...] = ()

    @property
    def height(self) -> float:
        """Height of the whole block."""
        if self.narrow:
            body = max(self.words_height + self.ticks_height, self.pictures.height)
        else:
            body = max(self.words_height, self.ticks_height) + GAP + self.pictures.height
        return float(self.heading_height + GAP + body)


@dataclass(frozen=True)
class Group:
    """Blocks on one page, and the hand moves of their steps that go on a page before it."""

    moves: tuple[tuple[Step, Picture], ...]
    blocks: tuple[Block, ...]


def paragraphs(book: Book, step: Step) -> list[tuple[ParagraphStyle, str]]:
    """A step's words: style and markup of each paragraph."""
    texts = [(BODY, plain(step.text))]
    for stage in dict.fromkeys(operation.stage for operation in step.operations):
        note = book.design.text.get(stage.value)
        if note and step.number == _first_of_stage(book.steps, stage):
            texts.append((BODY, plain(note)))
    adds = adds_words(book, step)
    if adds:
        texts.append((SMALL, plain(say("Adds {balloons}", balloons=adds))))
    return texts


def ticks(step: Step) -> list[str]:
    """What is to be ticked: the rows of the step, and the check."""
    return [*(plain(words) for words in step.rows), f"{strong(say('Check'))} {plain(step.check)}"]


def _ticks_height(items: Sequence[str], width: float) -> float:
    return float(sum(paragraph_height(item, BODY, width - TICK_WIDTH) + ROW_GAP for item in items))


def _cut(block: Block, room: float) -> Block:
    """The block with as much to tick as there is room for on a page of its own."""
    kept, left = ticks(block.step), []
    beside = block.words_height if block.narrow else 0.0
    under = 0.0 if block.narrow else GAP + block.pictures.height
    room -= block.heading_height + GAP + beside + under
    while len(kept) > 1 and _ticks_height(kept, block.ticks_width) > room:
        left.append(kept.pop())
    height = _ticks_height(kept, block.ticks_width)
    return replace(block, ticks_height=height, left=tuple(left[::-1]))


def in_columns(items: Sequence[str], width: float, room: float) -> list[list[list[str]]]:
    """Pages of columns of what is to be ticked, one below the other; `width` is a column's."""
    pages: list[list[list[str]]] = []
    left = list(items)
    while left:
        # columns as even as they come, and no higher than there is room
        even = _ticks_height(left, width) / COLUMNS_LEFT
        columns: list[list[str]] = []
        for _ in range(COLUMNS_LEFT):
            column: list[str] = []
            while left and (not column or _fits_column(column, left[0], width, even, room)):
                column.append(left.pop(0))
            columns.append(column)
        pages.append([column for column in columns if column])
    return pages


def _fits_column(column: Sequence[str], item: str, width: float, even: float, room: float) -> bool:
    height = _ticks_height([*column, item], width)
    return height <= room and _ticks_height(column, width) < even


def _first_of_stage(steps: Sequence[Step], stage: Stage) -> int:
    return next(step.number for step in steps if any(op.stage is stage for op in step.operations))


def _heights(book: Book, step: Step, words_width: float, ticks_width: float) -> tuple[float, float]:
    """Heights of the words and of what is to be ticked."""
    words = sum(
        paragraph_height(markup, style, words_width) + ROW_GAP
        for style, markup in paragraphs(book, step)
    )
    return words, _ticks_height(ticks(step), ticks_width)


def heading_width(book: Book, step: Step) -> float:
    """Width of a step's title; a link to the joint map stands at its right where there is one."""
    link = LINK_WIDTH if step.kind in LOOKED_UP else 0.0
    return book.paper.measure - NUMBER_WIDTH - link


def _wide_columns(book: Book, step: Step) -> tuple[float, float]:
    """Widths of the words and of what is to be ticked beside them, such that they take least
    height together, a row that goes on on a second line counted as a line; as even as that
    allows."""

    def widths(share: float) -> tuple[float, float]:
        words_width = book.paper.measure * share
        return words_width, book.paper.measure - words_width - COLUMN_GAP

    def cost(share: float) -> float:
        width = widths(share)[1] - TICK_WIDTH
        parted = sum(paragraph_height(plain(r), BODY, width) > BODY.leading for r in step.rows)
        return float(max(_heights(book, step, *widths(share))) + parted * BODY.leading)

    return widths(min(TEXT_SHARES, key=cost))


def _room(book: Book) -> float:
    return book.paper.top - book.paper.bottom


def _picture_height(book: Book, group: Sequence[Step]) -> float:
    """The height of pictures with which a group of steps fits one page."""
    words = sum(max(_heights(book, step, *_wide_columns(book, step))) for step in group)
    gaps = len(group) * (HEADING.leading + 2 * GAP + BLOCK_GAP)
    fits = (_room(book) - words - gaps) / len(group)
    return float(min(max(fits, LEAST_HEIGHT), MOST_HEIGHT))


def _block(
    book: Book,
    step: Step,
    views: Views,
    height: float,
    moves: bool,
    whole_height: float = WHOLE_HEIGHT,
) -> Block:
    measure = book.paper.measure
    shown = first_moves(book, step, height) if moves or step.kind not in ON_THE_PIECE else ()
    pictures = step_pictures(book, step, views, shown, measure, height, whole_height)
    narrow = len(pictures.placed) == 1 and pictures.placed[0].picture.width < measure / 2
    if narrow:
        width = measure - pictures.placed[0].picture.width - COLUMN_GAP
        widths = (width, width)
    else:
        widths = _wide_columns(book, step)
    words_height, ticks_height = _heights(book, step, *widths)
    heading_height = paragraph_height(plain(step.title), HEADING, heading_width(book, step))
    return Block(
        step, heading_height, pictures, narrow, widths[0], words_height, widths[1], ticks_height
    )


def _over(blocks: Sequence[Block], room: float) -> float:
    """By how much blocks are too tall for one page."""
    return sum(block.height + BLOCK_GAP for block in blocks) - BLOCK_GAP - room


def _group(book: Book, views: Views, steps: Sequence[Step]) -> Group:
    """Steps laid out to fit one page, their hand moves left to a page before if need be."""
    for moves in (True, False):
        height = _picture_height(book, steps)
        for _ in range(2):
            blocks = tuple(_block(book, step, views, height, moves) for step in steps)
            over = _over(blocks, _room(book))
            if over <= 0:
                return Group(() if moves else _moves_apart(book, steps), blocks)
            height -= over / len(steps)
            if height < LEAST_HEIGHT:
                break
    return Group(_moves_apart(book, steps), blocks)


def _lowered(book: Book, views: Views, group: Group, over: float) -> Group:
    """A step on the whole piece with its picture `over` points lower, if that leaves enough."""
    step, whole_height = group.blocks[0].step, WHOLE_HEIGHT - over
    if len(group.blocks) > 1 or step.kind not in ON_THE_WHOLE or whole_height < LEAST_WHOLE:
        return group
    return Group((), (_block(book, step, views, MOST_HEIGHT, True, whole_height),))


def _moves_apart(book: Book, steps: Sequence[Step]) -> tuple[tuple[Step, Picture], ...]:
    """Hand moves for a page of their own, the diagram among them as high as there is room."""

    def drawn(height: float) -> tuple[tuple[Step, Picture], ...]:
        # work beside the piece keeps its moves, which are its only pictures
        apart = [step for step in steps if step.kind in ON_THE_PIECE]
        return tuple((step, move) for step in apart for move in first_moves(book, step, height))

    moves = drawn(MOST_HEIGHT)
    heights = sum(picture.height + GAP for _, picture in moves)
    over = heights + len(steps) * (HEADING.leading + GAP) - _room(book)
    return drawn(MOST_HEIGHT - over) if over > 0 else moves


def laid_out(book: Book, views: Views) -> list[Group]:
    """Every step on a page: pages filled with whole groups of steps. Another part of the work
    starts a page, and so does what has its hand moves on a page before it."""
    pages: list[Group] = []
    room = _room(book)
    for step in book.steps:
        for group in _that_fit(_group(book, views, [step]), room):
            before = pages[-1].blocks if pages else ()
            over = _over((*before, *group.blocks), room)
            lower = _lowered(book, views, group, over) if over > 0 else group
            joined = (*before, *lower.blocks)
            same_part = len({PART[block.step.stage] for block in joined}) == 1
            full = bool(before and before[-1].left)
            if pages and not full and not group.moves and same_part and _over(joined, room) <= 0:
                pages[-1] = Group(pages[-1].moves, joined)
            else:
                pages.append(group)
    return _evened(pages, room)


def _evened(pages: Sequence[Group], room: float) -> list[Group]:
    """The same pages; a step that was left alone on the last page of its part has the one
    before it moved over to it from a full page."""
    evened = list(pages)
    for i in range(1, len(evened)):
        before, alone = evened[i - 1].blocks, evened[i].blocks
        if len(alone) > 1 or len(before) < 3 or evened[i].moves or alone[0].left:
            continue
        *kept, last = before
        parted = PART[last.step.stage] != PART[alone[0].step.stage]
        if not parted and _over((last, *alone), room) <= 0:
            evened[i - 1] = Group(evened[i - 1].moves, tuple(kept))
            evened[i] = Group((), (last, *alone))
    return evened


def _that_fit(group: Group, room: float) -> Iterator[Group]:
    """The group; when it is too tall for one page, its blocks one by one."""
    if _over(group.blocks, room) <= 0:
        yield group
    else:
        blocks = [block if block.height <= room else _cut(block, room) for block in group.blocks]
        yield Group(group.moves, tuple(blocks[:1]))
        yield from (Group((), (block,)) for block in blocks[1:])
