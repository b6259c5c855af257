"""What leads from a step to the joint map."""

from __future__ import annotations

from collections.abc import Sequence

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.map_sheets import MapSheets, map_place
from buildplan.document.blocks import Words
from buildplan.document.layout import Columns
from buildplan.document.links import PageLink
from buildplan.document.text import HEADING, plain, underlined
from buildplan.sequence.model import Step

TITLE_SHARES = (0.74, 0.26)


def title_beside_map(book: Book, sheets: MapSheets, steps: Sequence[Step], words: str) -> Flowable:
    """A title, and at its right where the joints of the steps below it are on the map."""
    title, link = Words(plain(words), HEADING, "H2"), to_the_map(book, sheets, steps)
    columns = [[title], link] if link else [[title]]
    block = Columns(columns, TITLE_SHARES if link else (), after=4.0)
    block.keepWithNext = True
    return block


def to_the_map(book: Book, sheets: MapSheets, steps: Sequence[Step]) -> list[Flowable]:
    """Where the joints of steps are on the map: every sheet that shows some which no other
    does."""
    shown = {sheet for step in steps for sheet in sheets.sheets_of.get(step.number, ())}
    return [_map_link(book, sheet, steps[-1]) for sheet in sorted(shown)]


def _map_link(book: Book, sheet: int, step: Step) -> PageLink:
    voice = book.voice

    def markup(page: int) -> str:
        return underlined(voice.say("map: page {page}", page=page))

    def words(page: int) -> str:
        return voice.say(
            "From step {number} to the joint map, page {page}", number=step.number, page=page
        )

    return PageLink(map_place(sheet), markup, words)
