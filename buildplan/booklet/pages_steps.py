"""The step pages: each step a block, its words above its pictures.

Steps that are done turn by turn together (a brace and its locks) are kept on one page.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from reportlab.lib.styles import ParagraphStyle

from buildplan.booklet.book import Book
from buildplan.booklet.closeups import CloseUp, plan_closeups
from buildplan.booklet.map_sheets import MapSheets, map_place, step_place
from buildplan.booklet.press import (
    BODY,
    HEADING,
    LINKED,
    SMALL,
    Leaf,
    Press,
    paragraph_height,
    plain,
    strong,
    underlined,
)
from buildplan.booklet.step_pictures import StepPictures, step_pictures
from buildplan.drawing.fonts import text_width
from buildplan.sequence.model import Stage, Step

TEXT_SHARE = 0.5
COLUMN_GAP = 14.0
LEAST_HEIGHT, MOST_HEIGHT = 132.0, 200.0
GAP = 8.0
BLOCK_GAP = 16.0
NUMBER_WIDTH = 34.0
LINK_WIDTH = 124.0
TICK_WIDTH = 17.0
ROW_GAP = 4.0

# Stages that share pages, and what their part of the work is called.
PART: Mapping[Stage, str] = {
    Stage.SIZE: "Size and pair",
    Stage.PAIR: "Size and pair",
    Stage.CHAIN: "Chain",
    Stage.CLOSE_RINGS: "Close rings and lay in place",
    Stage.BRACE: "Brace and lock joints",
    Stage.LOCK_JOINTS: "Brace and lock joints",
    Stage.FINISH: "Finish",
}


@dataclass(frozen=True)
class Block:
    """One step laid out; heights and widths in points.

    Wide pictures stand under the words, which then have what is to be ticked at their right.
    A single narrow picture stands at the right of both.
    """

    step: Step
    heading_height: float
    pictures: StepPictures
    narrow: bool
    words_width: float
    words_height: float
    ticks_width: float
    ticks_height: float

    @property
    def height(self) -> float:
        """Height of the whole block."""
        if self.narrow:
            body = max(self.words_height + self.ticks_height, self.pictures.height)
        else:
            body = max(self.words_height, self.ticks_height) + GAP + self.pictures.height
        return float(self.heading_height + GAP + body)


def adds_words(book: Book, step: Step) -> str:
    """What a step adds, by balloon: `12 ivory (Y)`."""
    letters = book.colour_letters
    parts = [
        f"{count} {book.framework.balloons[key].label} {book.framework.balloons[key].kind}s "
        f"({letters[key]})"
        for key, count in step.adds.items()
        if count
    ]
    return "Adds " + ", ".join(parts) if parts else ""


def _paragraphs(book: Book, step: Step) -> list[tuple[ParagraphStyle, str]]:
    """The step's words: style and markup of each paragraph."""
    texts = [(BODY, plain(step.text))]
    note = book.design.text.get(step.stage.value)
    if note and step.number == _first_of_stage(book.steps, step.stage):
        texts.append((BODY, plain(note)))
    adds = adds_words(book, step)
    if adds:
        texts.append((SMALL, plain(adds)))
    return texts


def _ticks(step: Step) -> list[str]:
    """What is to be ticked: the rows of the step, and the check."""
    return [*(plain(words) for words in step.rows), f"{strong('Check')} {plain(step.check)}"]


def _first_of_stage(steps: Sequence[Step], stage: Stage) -> int:
    return next(step.number for step in steps if step.stage is stage)


def _heights(book: Book, step: Step, words_width: float, ticks_width: float) -> tuple[float, float]:
    """Heights of the words and of what is to be ticked."""
    words = sum(
        paragraph_height(markup, style, words_width) + ROW_GAP
        for style, markup in _paragraphs(book, step)
    )
    ticks = sum(
        paragraph_height(row, BODY, ticks_width - TICK_WIDTH) + ROW_GAP for row in _ticks(step)
    )
    return words, ticks


def _heading_width(book: Book) -> float:
    return book.paper.measure - NUMBER_WIDTH - LINK_WIDTH


def _wide_columns(book: Book) -> tuple[float, float]:
    words_width = book.paper.measure * TEXT_SHARE
    return words_width, book.paper.measure - words_width - COLUMN_GAP


def _room(book: Book) -> float:
    return book.paper.top - book.paper.bottom


def _picture_height(book: Book, group: Sequence[Step]) -> float:
    """The height of pictures with which a group of steps fits one page."""
    words = sum(max(_heights(book, step, *_wide_columns(book))) for step in group)
    gaps = len(group) * (HEADING.leading + 2 * GAP + BLOCK_GAP)
    fits = (_room(book) - words - gaps) / len(group)
    return float(min(max(fits, LEAST_HEIGHT), MOST_HEIGHT))


def _block(book: Book, step: Step, closeups: Sequence[CloseUp], height: float) -> Block:
    measure = book.paper.measure
    pictures = step_pictures(book, step, closeups, measure, height)
    narrow = len(pictures.placed) == 1 and pictures.placed[0].picture.width < measure / 2
    if narrow:
        width = measure - pictures.placed[0].picture.width - COLUMN_GAP
        widths = (width, width)
    else:
        widths = _wide_columns(book)
    words_height, ticks_height = _heights(book, step, *widths)
    heading_height = paragraph_height(plain(step.title), HEADING, _heading_width(book))
    return Block(
        step, heading_height, pictures, narrow, widths[0], words_height, widths[1], ticks_height
    )


def _blocks(
    book: Book, closeups: Mapping[int, Sequence[CloseUp]], group: Sequence[Step]
) -> list[Block]:
    """A group laid out to fit one page, if its pictures can be made small enough."""
    height = _picture_height(book, group)
    blocks = [_block(book, step, closeups.get(step.number, ()), height) for step in group]
    over = sum(block.height + BLOCK_GAP for block in blocks) - BLOCK_GAP - _room(book)
    if over > 0 and height - over / len(group) >= LEAST_HEIGHT:
        lower = height - over / len(group)
        blocks = [_block(book, step, closeups.get(step.number, ()), lower) for step in group]
    return blocks


def _groups(steps: Sequence[Step]) -> list[list[Step]]:
    """Steps that must share a page: those taken together stand next to one another."""
    groups: list[list[Step]] = []
    for step in steps:
        if groups and groups[-1][-1].taken_with == step.number:
            groups[-1].append(step)
        else:
            groups.append([step])
    return groups


def _pages(groups: Sequence[Sequence[Block]], room: float) -> list[list[Block]]:
    """Fill pages with whole groups; another part of the work starts a page."""
    pages: list[list[Block]] = []
    used = room + 1
    for group in _that_fit(groups, room):
        height = sum(block.height + BLOCK_GAP for block in group)
        part = PART[group[0].step.stage]
        if used + height - BLOCK_GAP > room or PART[pages[-1][-1].step.stage] != part:
            pages.append([])
            used = 0.0
        pages[-1] += group
        used += height
    return pages


def _that_fit(groups: Sequence[Sequence[Block]], room: float) -> Iterator[Sequence[Block]]:
    """The groups, those too tall for one page taken apart."""
    for group in groups:
        if sum(block.height + BLOCK_GAP for block in group) - BLOCK_GAP <= room:
            yield group
        else:
            yield from ([block] for block in group)


def _map_link(press: Press, sheets: MapSheets, step: Step, top: float) -> None:
    """Where the step's joints are on the map, at the right of its heading."""
    sheet = sheets.sheet_of.get(step.number)
    if sheet is None:
        return
    page = press.page_of[map_place(sheet)]
    words = f"joint map, page {page}"
    x = press.paper.right - text_width(words, LINKED.fontSize)
    with press.canvas.element("P"):
        press.link(
            underlined(words),
            map_place(sheet),
            x,
            top - 2,
            press.paper.right - x + 1,
            LINKED,
            words=f"From step {step.number} to the joint map, page {page}",
        )


def _draw_block(press: Press, book: Book, sheets: MapSheets, block: Block, top: float) -> None:
    paper, step = book.paper, block.step
    press.canvas.place(step_place(step), top + HEADING.leading)
    y = press.numbered_heading(
        step.number, plain(step.title), paper.left, top, _heading_width(book), NUMBER_WIDTH
    )
    _map_link(press, sheets, step, top)
    top = y - GAP
    y = top
    for style, markup in _paragraphs(book, step):
        y = press.paragraph(markup, paper.left, y, block.words_width, style) - ROW_GAP
    if block.narrow:
        press.tick_list(_ticks(step), paper.left, y, block.ticks_width, ROW_GAP)
        left = paper.right - block.pictures.placed[0].picture.width
    else:
        x = paper.right - block.ticks_width
        press.tick_list(_ticks(step), x, top, block.ticks_width, ROW_GAP)
        top -= max(block.words_height, block.ticks_height) + GAP
        left = paper.left
    for placed in block.pictures.placed:
        press.picture(placed.picture, left + placed.x, top - placed.y - placed.picture.height)


def _steps_words(steps: Sequence[Step]) -> str:
    first, last = steps[0].number, steps[-1].number
    return f"step {first}" if first == last else f"steps {first} to {last}"


def _leaf(book: Book, sheets: MapSheets, blocks: Sequence[Block]) -> Leaf:
    """One page; the first of its part of the work stands in the contents for all of it."""
    steps = [block.step for block in blocks]
    part = PART[steps[0].stage]
    all_of_part = [step for step in book.steps if PART[step.stage] == part]
    begins = steps[0] is all_of_part[0]

    def draw(press: Press) -> None:
        top = book.paper.top
        for i, block in enumerate(blocks):
            if i:
                press.rule(book.paper.left, top + BLOCK_GAP / 2, book.paper.measure)
            _draw_block(press, book, sheets, block, top)
            top -= block.height + BLOCK_GAP

    return Leaf(
        f"{part}: {_steps_words(all_of_part if begins else steps)}",
        draw,
        running=part,
        progress=(steps[-1].number, len(book.steps)),
        listed=begins,
        headed=begins,
        holds=tuple(step_place(step) for step in steps),
    )


def step_leaves(book: Book, sheets: MapSheets) -> list[Leaf]:
    """Every step page, in order, its steps leading to the sheets of the joint map."""
    closeups = plan_closeups(book)
    groups = [_blocks(book, closeups, group) for group in _groups(book.steps)]
    return [_leaf(book, sheets, page) for page in _pages(groups, _room(book))]
