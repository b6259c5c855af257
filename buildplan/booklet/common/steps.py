"""The step pages: each step a block, its words above its pictures."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import chain, groupby

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.closeups import plan_views
from buildplan.booklet.common.map_sheets import MapSheets, map_place, step_place
from buildplan.booklet.common.step_blocks import (
    BLOCK_GAP,
    COLUMN_GAP,
    COLUMNS_LEFT,
    GAP,
    NUMBER_WIDTH,
    PART,
    ROW_GAP,
    Block,
    Group,
    heading_width,
    in_columns,
    laid_out,
    paragraphs,
    part_name,
    ticks,
)
from buildplan.booklet.common.step_pictures import how_to
from buildplan.document.renderer import (
    BODY,
    HEADING,
    LINKED,
    Leaf,
    Press,
    paragraph_height,
    plain,
    underlined,
)
from buildplan.drawing.fonts import text_width
from buildplan.drawing.marks import Picture
from buildplan.language.speaking import say
from buildplan.sequence.model import Kind, Step


def _map_link(press: Press, sheets: MapSheets, step: Step, top: float) -> None:
    """Where the step's joints are on the map, at the right of its heading."""
    sheet = sheets.sheet_of.get(step.number)
    if sheet is None:
        return
    page = press.page_of[map_place(sheet)]
    words = say("joint map, page {page}", page=page)
    x = press.paper.right - text_width(words, LINKED.fontSize)
    with press.canvas.element("P"):
        press.link(
            underlined(words),
            map_place(sheet),
            x,
            top - 2,
            press.paper.right - x + 1,
            LINKED,
            words=say(
                "From step {number} to the joint map, page {page}", number=step.number, page=page
            ),
        )


def _draw_block(press: Press, book: Book, sheets: MapSheets, block: Block, top: float) -> None:
    paper, step = book.paper, block.step
    every = ticks(step)
    shown = every[: len(every) - len(block.left)]
    press.canvas.place(step_place(step), top + HEADING.leading)
    y = press.numbered_heading(
        step.number, plain(step.title), paper.left, top, heading_width(book, step), NUMBER_WIDTH
    )
    _map_link(press, sheets, step, top)
    top = y - GAP
    y = top
    for style, markup in paragraphs(book, step):
        y = press.paragraph(markup, paper.left, y, block.words_width, style) - ROW_GAP
    if block.narrow:
        press.tick_list(shown, paper.left, y, block.ticks_width, ROW_GAP)
        left = paper.right - block.pictures.placed[0].picture.width
    else:
        x = paper.right - block.ticks_width
        press.tick_list(shown, x, top, block.ticks_width, ROW_GAP)
        top -= max(block.words_height, block.ticks_height) + GAP
        left = paper.left
    for placed in block.pictures.placed:
        press.picture(placed.picture, left + placed.x, top - placed.y - placed.picture.height)


def _title(part: str, steps: Sequence[Step]) -> str:
    first, last = steps[0].number, steps[-1].number
    if first == last:
        return say("{part}: step {number}", part=part, number=first)
    return say("{part}: steps {first} to {last}", part=part, first=first, last=last)


def _draw_moves(press: Press, moves: Sequence[tuple[Step, Picture]]) -> None:
    """Hand moves one below the other, each with its words beside it."""
    paper, top = press.paper, press.paper.top
    shown: Step | None = None
    for step, picture in moves:
        if step is not shown:
            shown = step
            words = say("How to do step {number}: {title}", number=step.number, title=step.title)
            top = press.paragraph(plain(words), paper.left, top, paper.measure, HEADING, "H2") - GAP
        left = paper.left + picture.width + BLOCK_GAP
        press.picture(how_to(step, picture), paper.left, top - picture.height)
        press.paragraph(plain(picture.alt), left, top - GAP, paper.right - left, BODY)
        top -= picture.height + GAP


def _left_leaves(book: Book, block: Block, part: str) -> Iterator[Leaf]:
    """Pages of what is to be ticked in a step that found no room beside it."""
    paper, step = book.paper, block.step
    width = (paper.measure - (COLUMNS_LEFT - 1) * COLUMN_GAP) / COLUMNS_LEFT
    words = say("Step {number}, continued: {title}", number=step.number, title=step.title)
    head = paragraph_height(plain(words), HEADING, paper.measure) + GAP
    for columns in in_columns(block.left, width, paper.top - paper.bottom - head):

        def draw(press: Press, columns: Sequence[Sequence[str]] = columns) -> None:
            top = press.paragraph(plain(words), paper.left, paper.top, paper.measure, HEADING, "H2")
            for i, column in enumerate(columns):
                x = paper.left + i * (width + COLUMN_GAP)
                press.tick_list(column, x, top - GAP, width, ROW_GAP)

        yield Leaf(words, draw, running=part, progress=(step.number, len(book.steps)), listed=False)


def _leaves(book: Book, sheets: MapSheets, page: Group, begun: str, listed: bool) -> Iterator[Leaf]:
    """A page of steps, after a page of their hand moves if they have one. The first page of a
    part of the work has the title of all of it, `begun`, and may be `listed` in the contents."""
    steps = [block.step for block in page.blocks]
    part = part_name(book, PART[steps[0].stage])

    def draw_moves(press: Press) -> None:
        _draw_moves(press, page.moves)

    def draw_steps(press: Press) -> None:
        top = book.paper.top
        for i, block in enumerate(page.blocks):
            if i:
                press.rule(book.paper.left, top + BLOCK_GAP / 2, book.paper.measure)
            _draw_block(press, book, sheets, block, top)
            top -= block.height + BLOCK_GAP

    if page.moves:
        title = begun or say("How to: {part}", part=part)
        yield Leaf(title, draw_moves, running=part, listed=listed, headed=bool(begun))
        begun, listed = "", False
    yield Leaf(
        begun or _title(part, steps),
        draw_steps,
        running=part,
        progress=(steps[-1].number, len(book.steps)),
        listed=listed,
        headed=bool(begun),
        holds=tuple(step_place(step) for step in steps),
    )
    for block in page.blocks:
        if block.left:
            yield from _left_leaves(book, block, part)


def step_parts(book: Book, sheets: MapSheets) -> list[tuple[str, list[Leaf]]]:
    """Every step page, in order, by the part of the work (a value of PART) that it belongs to.
    Its steps lead to the sheets of the joint map."""
    pages = laid_out(book, plan_views(book))
    visits = [
        (part, list(some))
        for part, some in groupby(pages, key=lambda page: PART[page.blocks[0].step.stage])
    ]
    steps = [[block.step for page in some for block in page.blocks] for _, some in visits]
    parts: list[tuple[str, list[Leaf]]] = []
    for i, (part, some) in enumerate(visits):
        again = part in [before for before, _ in parts]
        begun, listed = _title(part_name(book, part), steps[i]), not again
        if again and steps[i][0].kind is Kind.LAY:  # another part of the piece, laid and tied
            told = list(chain.from_iterable(steps[i : i + 2]))
            begun, listed = _title(_laid_part(book, steps[i][0]), told), True
        leaves = list(_leaves(book, sheets, some[0], begun, listed))
        for page in some[1:]:
            leaves += _leaves(book, sheets, page, "", False)
        parts.append((part, leaves))
    return parts


def _laid_part(book: Book, step: Step) -> str:
    """What is called the work on the part of an assembly that a step lays down."""
    part = book.framework.part_at(step.operations[0].joints[0])
    return say("Part {part}", part=part.name) if part else part_name(book, PART[step.stage])


def step_leaves(book: Book, sheets: MapSheets) -> list[Leaf]:
    """Every step page, in order."""
    return [leaf for _, leaves in step_parts(book, sheets) for leaf in leaves]
