"""The step pages: each step a block with its words at the left and its pictures beside them.

Steps that are done turn by turn together (a brace and its locks) are kept on one page.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from buildplan.booklet.book import Book
from buildplan.booklet.press import (
    BODY,
    HEADING,
    SMALL,
    STRONG,
    Leaf,
    Press,
    paragraph_height,
    plain,
    strong,
)
from buildplan.booklet.step_pictures import StepPictures, step_pictures
from buildplan.sequence.model import Stage, Step

TEXT_SHARE = 0.36
GAP = 10.0
BLOCK_GAP = 14.0
NUMBER_WIDTH = 34.0
TICK_WIDTH = 17.0
ROW_GAP = 5.0
PICTURE_HEIGHT = 204.0


@dataclass(frozen=True)
class Block:
    """One step laid out: its pictures and the height it takes on the page."""

    step: Step
    pictures: StepPictures
    height: float


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


def _texts(book: Book, step: Step) -> list[tuple[str, str]]:
    """The step's paragraphs as (style name, markup), in order."""
    texts = [("heading", plain(step.title)), ("body", plain(step.text))]
    note = book.design.text.get(step.stage.value)
    if note and step.number == _first_of_stage(book.steps, step.stage):
        texts.append(("body", plain(note)))
    adds = adds_words(book, step)
    if adds:
        texts.append(("small", plain(adds)))
    texts.append(("tick", f"{strong('Check')} {plain(step.check)}"))
    return texts


def _turn_rows(step: Step) -> list[str]:
    """A row to tick for each turn of a step that is done at more than one place."""
    if len(step.turns) == 1 and step.taken_with is None:
        return []
    return [plain(turn.words) for turn in step.turns]


def _rows_height(rows: Sequence[str], width: float) -> float:
    return sum(paragraph_height(row, BODY, width - TICK_WIDTH) + ROW_GAP for row in rows)


def _first_of_stage(steps: Sequence[Step], stage: Stage) -> int:
    return next(step.number for step in steps if step.stage is stage)


STYLES = {"heading": HEADING, "body": BODY, "small": SMALL, "tick": BODY, "strong": STRONG}


def _text_height(book: Book, step: Step, width: float) -> float:
    height = 0.0
    for kind, markup in _texts(book, step):
        indent = {"heading": NUMBER_WIDTH, "tick": TICK_WIDTH}.get(kind, 0.0)
        height += paragraph_height(markup, STYLES[kind], width - indent) + 5
    return height


def _block(book: Book, step: Step) -> Block:
    measure = book.paper.measure
    text_width = measure * TEXT_SHARE
    beside = measure - text_width - GAP
    pictures = step_pictures(book, step, beside, PICTURE_HEIGHT, measure)
    column = pictures.beside_height + ROW_GAP + _rows_height(_turn_rows(step), beside)
    if pictures.under is not None:
        column += pictures.under.height
    height = max(_text_height(book, step, text_width), column)
    if pictures.below:
        height += GAP + pictures.below_height
    return Block(step, pictures, height)


def _groups(blocks: Sequence[Block]) -> list[list[Block]]:
    """Blocks that must share a page: steps taken together stand next to one another."""
    groups: list[list[Block]] = []
    for block in blocks:
        previous = groups[-1][-1].step if groups else None
        if previous is not None and previous.taken_with == block.step.number:
            groups[-1].append(block)
        else:
            groups.append([block])
    return groups


def _pages(book: Book, groups: Sequence[Sequence[Block]]) -> list[list[Block]]:
    """Fill pages with whole groups; a new kind of stage before the braces starts a page."""
    room = book.paper.top - book.paper.bottom
    pages: list[list[Block]] = []
    used = room + 1
    for group in _that_fit(groups, room):
        height = sum(block.height + BLOCK_GAP for block in group)
        new_stage = bool(pages) and _starts_a_page(pages[-1][-1].step.stage, group[0].step.stage)
        if used + height > room or new_stage:
            pages.append([])
            used = 0.0
        pages[-1] += group
        used += height
    return pages


def _that_fit(groups: Sequence[Sequence[Block]], room: float) -> Iterator[Sequence[Block]]:
    """The groups, those too tall for one page taken apart."""
    for group in groups:
        if sum(block.height + BLOCK_GAP for block in group) <= room:
            yield group
        else:
            yield from ([block] for block in group)


def _starts_a_page(before: Stage, now: Stage) -> bool:
    together = {Stage.BRACE, Stage.LOCK_JOINTS}
    early = {Stage.SIZE, Stage.PAIR}
    return now is not before and not {before, now} <= together and not {before, now} <= early


def _draw_block(press: Press, book: Book, block: Block, top: float) -> None:
    paper, step = book.paper, block.step
    width = paper.measure * TEXT_SHARE
    y = top
    for kind, markup in _texts(book, step):
        if kind == "heading":
            press.paragraph(strong(f"{step.number}"), paper.left, y, NUMBER_WIDTH, HEADING)
            y = press.paragraph(
                markup, paper.left + NUMBER_WIDTH, y, width - NUMBER_WIDTH, HEADING, "H2"
            )
        elif kind == "tick":
            y = press.tick_list((markup,), paper.left, y, width, gap=0)
        else:
            y = press.paragraph(markup, paper.left, y, width, STYLES[kind])
        y -= 5
    left = paper.left + width + GAP
    for placed in block.pictures.beside:
        press.picture(placed.picture, left + placed.x, top - placed.y - placed.picture.height)
    under = top - block.pictures.beside_height - ROW_GAP
    under = press.tick_list(_turn_rows(step), left, under, paper.right - left, ROW_GAP)
    if block.pictures.under is not None:
        press.picture(block.pictures.under, left, under - block.pictures.under.height)
    top -= block.height - block.pictures.below_height
    for placed in block.pictures.below:
        press.picture(placed.picture, paper.left + placed.x, top - placed.y - placed.picture.height)


def _leaf(book: Book, blocks: Sequence[Block]) -> Leaf:
    first, last = blocks[0].step, blocks[-1].step
    stages = list(dict.fromkeys(block.step.stage for block in blocks))
    names = " and ".join(stage.value for stage in stages)
    numbers = f"step {first.number}" if first is last else f"steps {first.number} to {last.number}"

    def draw(press: Press) -> None:
        top = book.paper.top
        for i, block in enumerate(blocks):
            if i:
                press.rule(book.paper.left, top + BLOCK_GAP / 2, book.paper.measure)
            _draw_block(press, book, block, top)
            top -= block.height + BLOCK_GAP

    title = f"{names.capitalize()}: {numbers}"
    begins = any(
        block.step.number == _first_of_stage(book.steps, block.step.stage) for block in blocks
    )
    return Leaf(
        title,
        draw,
        running=names.capitalize(),
        progress=(last.number, len(book.steps)),
        listed=begins,
    )


def step_leaves(book: Book) -> list[Leaf]:
    """Every step page, in order."""
    blocks = [_block(book, step) for step in book.steps]
    return [_leaf(book, page) for page in _pages(book, _groups(blocks))]
