"""How a step is laid out: its title, its words beside what is to be ticked, its pictures."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

from reportlab.lib.styles import ParagraphStyle
from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book, adds_words
from buildplan.booklet.common.closeups import ON_THE_PIECE, Views
from buildplan.booklet.common.map_sheets import MapSheets, map_place, step_place
from buildplan.booklet.common.step_pictures import Placed, StepPictures, first_moves, step_pictures
from buildplan.document.blocks import Items, Row, Rule, Stack, Words
from buildplan.document.layout import Columns
from buildplan.document.links import Link, Place
from buildplan.document.text import BODY, HEADING, SMALL, plain, strong, underlined
from buildplan.sequence.model import Stage, Step

MOST_HEIGHT = 200.0
PICTURE_HEIGHT = 150.0
WORDS_SHARE = 0.52
TITLE_SHARES = (0.74, 0.26)
COLUMN_GAP = 14.0
ROW_GAP = 4.0


def step_block(book: Book, views: Views, sheets: MapSheets, step: Step) -> Stack:
    """A step, on one page if a page has room for it. A single narrow picture stands at the right
    of the words, others below them."""
    pictures = _pictures(book, views, step)
    words: list[Flowable] = [Words(markup, style) for style, markup in paragraphs(book, step)]
    checks = Items(ticks(book, step), ticked=True, gap=ROW_GAP)
    rows = [Row([at.picture for at in row]) for row in _rows(pictures)]
    measure = book.paper.measure
    placed = pictures.placed
    body: list[Flowable]
    if len(placed) == 1 and placed[0].picture.width < measure / 2:
        wide = placed[0].picture.width
        shares = (measure - wide - COLUMN_GAP, wide)
        body = [Columns(([*words, checks], rows), shares, gap=COLUMN_GAP)]
    else:
        shares = (WORDS_SHARE, 1 - WORDS_SHARE)
        body = [Columns((words, [checks]), shares, gap=COLUMN_GAP, after=6.0), *rows]
    progress = (step.number, len(book.steps))
    place = Place(step_place(step), f"{step.number} {step.title}", progress)
    return Stack([Rule(), place, _title(book, sheets, step), *body], whole=True)


def _pictures(book: Book, views: Views, step: Step) -> StepPictures:
    """The pictures of a step; the hand moves among them where its kind of work first comes up."""
    shown = first_moves(book, step, PICTURE_HEIGHT)
    height = PICTURE_HEIGHT if step.kind in ON_THE_PIECE else MOST_HEIGHT
    return step_pictures(book, step, views, shown, book.paper.measure, height)


def _rows(pictures: StepPictures) -> list[list[Placed]]:
    return [list(row) for _, row in groupby(pictures.placed, key=lambda at: at.y)]


def _title(book: Book, sheets: MapSheets, step: Step) -> Flowable:
    """The number and the title, and at their right where the step's joints are on the map."""
    title = Words(plain(f"{step.number} {step.title}"), HEADING, "H2")
    sheet = sheets.sheet_of.get(step.number)
    if sheet is None:
        block: Flowable = Columns([[title]], after=4.0)
    else:
        block = Columns([[title], [_map_link(book, sheet, step)]], TITLE_SHARES, after=4.0)
    block.keepWithNext = True
    return block


def _map_link(book: Book, sheet: int, step: Step) -> Link:
    voice = book.voice

    def markup(page: int) -> str:
        return underlined(voice.say("joint map, page {page}", page=page))

    def words(page: int) -> str:
        return voice.say(
            "From step {number} to the joint map, page {page}", number=step.number, page=page
        )

    return Link(map_place(sheet), markup, words)


def paragraphs(book: Book, step: Step) -> list[tuple[ParagraphStyle, str]]:
    """A step's words: style and markup of each paragraph."""
    texts = [(BODY, plain(step.text))]
    for stage in dict.fromkeys(operation.stage for operation in step.operations):
        note = book.design.text.get(stage.value)
        if note and step.number == _first_of_stage(book.steps, stage):
            texts.append((BODY, plain(note)))
    adds = adds_words(book, step)
    if adds:
        texts.append((SMALL, plain(book.voice.say("Adds {balloons}", balloons=adds))))
    return texts


def ticks(book: Book, step: Step) -> list[str]:
    """What is to be ticked: the rows of the step, and the check."""
    check = f"{strong(book.voice.say('Check'))} {plain(step.check)}"
    return [*(plain(words) for words in step.rows), check]


def _first_of_stage(steps: Sequence[Step], stage: Stage) -> int:
    return next(step.number for step in steps if any(op.stage is stage for op in step.operations))
