"""The gauges at true size, among the pages or by themselves."""

from __future__ import annotations

from buildplan.booklet.common.book import Book
from buildplan.document.blocks import Shown
from buildplan.document.paper import mm, true_size
from buildplan.document.printing import Section
from buildplan.drawing.gauge import gauge_sheets


def true_gauges(book: Book) -> list[Section]:
    """The gauges at true size, whatever else is enlarged, with a ruler that shows whether the
    printer kept it."""
    voice, paper = book.voice, true_size(book.paper)
    sheets = gauge_sheets(
        book.framework, (paper.width, paper.height), book.units, voice, head=mm(8), foot=mm(6)
    )
    return [
        Section(
            voice.say("Gauges at true size")
            if number == 1
            else voice.say("Gauges, sheet {number}", number=number),
            [Shown(sheet.picture)],
            running=voice.say("Gauges at true size: print at 100 %"),
            listed=number == 1,
            headed=number == 1,
            whole_sheet=True,
            paper=paper,
        )
        for number, sheet in enumerate(sheets, start=1)
    ]


def gauges_within(book: Book) -> list[Section]:
    """The gauges as pages of the booklet, unless they are printed by themselves."""
    return [] if book.gauges_apart else true_gauges(book)
