"""Pages about the piece as a whole: finished views, the joint map."""

from __future__ import annotations

from collections.abc import Mapping
from functools import partial

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.course_rows import tied_place
from buildplan.booklet.common.map_sheets import (
    INDEX_GAP,
    MapSheets,
    brace_flags,
    how_to_read,
    index_columns,
    index_head,
    index_words,
    map_place,
)
from buildplan.booklet.common.walking_through import walked_through
from buildplan.design.measures import size_words
from buildplan.document.blocks import Shown, Stack, Words
from buildplan.document.layout import Columns, Filled
from buildplan.document.links import Anchor, PageLink, Spots
from buildplan.document.printing import Section
from buildplan.document.text import SMALL, plain, strong, underlined
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.dimensions import dimensioned_view
from buildplan.drawing.marks import Picture
from buildplan.drawing.scene import finished_picture, finished_words
from buildplan.language.messages import mark
from buildplan.sequence.model import Step

# The small views below the front, and what is said of each.
SMALL_VIEWS: Mapping[str, str] = {
    "back": mark("From the back."),
    "side": mark("From the side."),
    "top": mark("From the top."),
    "corner": mark("From a corner."),
}
PERSON_M = 1.70
VIEW_GAP = 12.0


def finished_piece(book: Book) -> Section:
    """The finished piece from several sides, with its size and a person for scale."""
    voice, facts = book.voice, book.facts
    sides = (facts.width_m, facts.height_m, facts.depth_m)
    size = " x ".join(voice.tell(size_words(length, book.units)) for length in sides)
    person = f"{voice.tell(size_words(PERSON_M, 'cm'))} ({voice.tell(size_words(PERSON_M, 'in'))})"
    words = voice.say(
        "{size} (width, height, depth; estimates). The person is {person} tall.",
        size=size,
        person=person,
    )
    across = (book.paper.measure - VIEW_GAP * (len(SMALL_VIEWS) - 1)) / len(SMALL_VIEWS)
    small = [
        [
            Shown(_seen_from(book, name, across)),
            Words(voice.say(told), SMALL),
        ]
        for name, told in SMALL_VIEWS.items()
    ]
    below = [Words(voice.say("From the front."), SMALL), Columns(small, gap=VIEW_GAP)]
    above = [Words(plain(words)), *(Words(told) for told in walked_through(book))]
    page = Filled(above, partial(_dimensioned, book, size), below)
    return Section(voice.say("The finished piece"), [page], titled=True)


def _seen_from(book: Book, side: str, across: float) -> Picture:
    words = finished_words(book.framework, CAMERAS[side], book.voice)
    return finished_picture(book.framework, book.shape, CAMERAS[side], across, across, alt=words)


def _dimensioned(book: Book, size: str, width: float, height: float) -> Picture:
    facts = book.facts
    return dimensioned_view(
        book.framework,
        book.shape,
        CAMERAS["front"],
        width,
        height,
        across=book.voice.tell(size_words(facts.width_m, book.units)),
        upright=book.voice.tell(size_words(facts.height_m, book.units)),
        person=book.voice.tell(size_words(PERSON_M, book.units)),
        patterns=book.patterns,
        alt=book.voice.say(
            "{piece} from the front, {size}, with a person beside it.", piece=facts.name, size=size
        ),
    )


def joint_maps(book: Book, sheets: MapSheets) -> list[Section]:
    """The joint map, each sheet with the steps that tie its braces."""
    return [_map_sheet(book, sheets, number) for number in range(len(sheets.pictures))]


def _map_sheet(book: Book, sheets: MapSheets, number: int) -> Section:
    voice, total = book.voice, len(sheets.pictures)
    title = (
        voice.say("Joint map, sheet {number} of {total}", number=number + 1, total=total)
        if total > 1
        else voice.say("Joint map")
    )
    sheet = sheets.pictures[number]
    shown = Shown(sheet)
    words = [] if number else [Words(how_to_read(book), after=6)]
    blocks: list[Flowable] = [Anchor(map_place(number)), *words, shown]
    steps = sheets.steps_on(book, number)
    if steps:
        columns = [
            [_found_at(book, step, Spots(shown, brace_flags(book, sheet, step))) for step in some]
            for some in index_columns(book, steps)
            if some
        ]
        index = Columns(
            [[Stack(some, "L")] for some in columns], (1,) * len(columns), gap=INDEX_GAP
        )
        head = index_head(book)
        blocks += [Words(strong(head))] if head else []
        blocks.append(index)
    return Section(title, blocks, running=voice.say("Joint map"), listed=not number, titled=True)


def _found_at(book: Book, step: Step, spots: Spots) -> PageLink:
    """Where a step of a sheet is found; the numbers of its braces on the map lead there too."""
    voice = book.voice

    def markup(page: int) -> str:
        title, found = index_words(book, step, page)
        return voice.say("{name}: {words}", name=plain(title), words=underlined(found))

    def words(page: int) -> str:
        return voice.say(
            "To step {number}, {title}, page {page}",
            number=step.number,
            title=book.told(step).title,
            page=page,
        )

    place = tied_place(book, step)
    return PageLink(place, markup, words, within=("LI", "LBody"), spots=spots)
