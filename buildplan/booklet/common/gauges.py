"""The gauges at true size, among the pages or by themselves."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.booklet.common.book import Book
from buildplan.document.blocks import Items, Shown, Words
from buildplan.document.paper import Paper, mm, true_size
from buildplan.document.printing import Section
from buildplan.document.text import plain
from buildplan.drawing.gauge import GaugeSheet, gauge_sheets
from buildplan.drawing.gauge_forms import WORDS_PT, gauge_words
from buildplan.drawing.gauge_ruler import ruler_words
from buildplan.drawing.line_art import TYPE
from buildplan.language.voice import Voice


def true_gauges(book: Book) -> list[Section]:
    """The gauges at true size, whatever else is enlarged, with a ruler that shows whether the
    printer kept it."""
    voice, paper = book.voice, true_size(book.paper)
    sheets = gauge_sheets(
        book.framework,
        (paper.width, paper.height),
        book.units,
        voice,
        head=mm(8),
        foot=mm(6),
        words_pt=max(WORDS_PT, TYPE * book.paper.scale * book.paper.picture_scale),
    )
    words = [_in_words(book, sheets)] if paper.scale != book.paper.scale else []
    return [
        *words,
        *_sheets(voice, paper, sheets),
    ]


def _in_words(book: Book, sheets: Sequence[GaugeSheet]) -> Section:
    """What is printed on the gauges and beside their ruler, for readers of large print: small
    gauges, which stay at true size, have no room for much in large words."""
    voice = book.voice
    _, *done = ruler_words(book.units, voice)
    told = [
        plain(gauge_words(gauge, book.units, voice)) for sheet in sheets for gauge in sheet.gauges
    ]
    blocks = [
        Words(
            voice.say(
                "The gauges come next, at true size. Print them at 100 %: on the ruler at their"
                " foot 100 mm are 100 mm, and 4 in are 4 in."
            )
        ),
        Items(list(dict.fromkeys(told))),
        *map(Words, done),
    ]
    return Section(voice.say("The gauges in words"), blocks, titled=True, runs_on=True)


def _sheets(voice: Voice, paper: Paper, sheets: Sequence[GaugeSheet]) -> list[Section]:
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
