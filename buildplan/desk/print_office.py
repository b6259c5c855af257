"""Printing for the decorator's own desk: quote, shopping, gallery and event, with their tables."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from buildplan.booklet.common.book import Book, gather_book
from buildplan.booklet.office.event_booklet import event_tables, print_event
from buildplan.booklet.office.gallery import Exhibit, print_gallery
from buildplan.booklet.office.quote_page import print_quote
from buildplan.booklet.office.shopping_page import print_shopping
from buildplan.business.buying.shopping import ShoppedFor, shopping_list, shopping_rows
from buildplan.business.copies.brand import branding, fonts_of_designs
from buildplan.business.events.event_plan import event_shopping, plan_event
from buildplan.business.quoting.offer import (
    Offer,
    QuotedPiece,
    priced_as_one,
)
from buildplan.business.quoting.quote_words import quote_rows
from buildplan.design.building import build_framework
from buildplan.design.event import read_event
from buildplan.design.measures import units_read
from buildplan.design.model import Design
from buildplan.design.translating import translated_event
from buildplan.desk.folder import Folder
from buildplan.desk.print_options import EVENT
from buildplan.desk.print_parts import (
    PRINTED,
    Named,
    Show,
    brand_in,
    counted_paths,
    event_file,
    path_of,
    stem_in,
)
from buildplan.desk.print_task import PrintWork
from buildplan.desk.print_wishes import with_terms
from buildplan.desk.refusals import RefusedError
from buildplan.document.paper import PAPERS
from buildplan.drawing.typeset.font_files import with_fonts
from buildplan.evaluation.evaluating import NEW_PARTS, evaluate
from buildplan.hands.reading import read_known
from buildplan.instructions.guarding import assert_rebuilds
from buildplan.language.messages import message
from buildplan.language.voice import Voice
from buildplan.source.csv_text import csv_bytes
from buildplan.source.problems import DesignProblemsError, UnreadableDesignError

CREW = "crew"


def quote(task: PrintWork, voice: Voice, show: Show) -> Iterator[Named]:
    """Pages for the customer, and a table of what the price is made of."""
    path = path_of(task)
    pieces = list(_quoted(task, voice, show))
    priced, lines = priced_as_one(pieces)
    for one in pieces:
        if one.made.facts.problems:
            raise DesignProblemsError(one.file, one.made.facts.problems, one.made.design.name)
    made = pieces[0].made
    offer = with_terms(Offer(priced, lines), task.wishes)
    seller = brand_in(task, voice.language) if task.brand else None
    if seller is None and made.design.brand is not None:
        seller = branding(made.design.brand, path)
    page = print_quote(offer, PAPERS[task.paper], seller, voice)
    yield f"{stem_in(f'{_together(task)}-quote-{task.paper}', voice)}.pdf", page
    rows = csv_bytes(quote_rows(priced, made.units, voice))
    yield f"{stem_in(f'{_together(task)}-quote', voice)}.csv", rows


def _quoted(task: PrintWork, voice: Voice, show: Show) -> Iterator[QuotedPiece]:
    paths = counted_paths(task)
    for number, (path, count) in enumerate(paths, 1):
        design = read_known(path, voice)
        made = evaluate(design, units_read(voice, design.units), NEW_PARTS)
        show(PRINTED * number / len(paths))
        yield QuotedPiece(path.name, made, count)


def _together(task: PrintWork) -> str:
    """What files of the design, with others beside it, are called."""
    others = len(task.wishes.beside)
    return f"{task.name}-and-{others}" if others else task.name


def shopping(task: PrintWork, voice: Voice, show: Show) -> Iterator[Named]:
    """A page to tick off, and the same as a table."""
    needed, named = [], []
    for path, count in counted_paths(task):
        design = read_known(path, voice)
        named.append((design, path))
        needed.append(ShoppedFor(path.name, design, build_framework(design), count))
    found = shopping_list(needed, units_read(voice, needed[0].design.units))
    with with_fonts(fonts_of_designs(named)):
        page = print_shopping(found, PAPERS[task.paper], voice)
    yield f"{stem_in(f'{_together(task)}-shopping-{task.paper}', voice)}.pdf", page
    rows = csv_bytes(shopping_rows(found, voice))
    yield f"{stem_in(f'{_together(task)}-shopping', voice)}.csv", rows


def gallery(task: PrintWork, voice: Voice, show: Show) -> Iterator[Named]:
    """Every design of the folder that can be worked out; one at least."""
    folder, exhibits = Folder(task.root), list[Exhibit]()
    names = folder.names()
    for number, name in enumerate(names, 1):
        try:
            design = read_known(folder.file(name), voice)
        except (UnreadableDesignError, DesignProblemsError):
            continue
        units = units_read(voice, design.units)
        book = gather_book(design, PAPERS[task.paper], units, "training", voice.language)
        exhibits.append(Exhibit(f"{name}.yaml", book))
        show(PRINTED * number / len(names))
    if not exhibits:
        raise RefusedError(422, message("no design of this folder can be worked out as it is"))
    title = voice.say("Gallery of designs")
    named = ((exhibit.book.design, task.root / exhibit.file) for exhibit in exhibits)
    with with_fonts(fonts_of_designs(named)):
        page = print_gallery(exhibits, PAPERS[task.paper], title, voice)
    yield f"{stem_in(f'gallery-{task.paper}', voice)}.pdf", page


def event(task: PrintWork, voice: Voice, show: Show) -> Iterator[Named]:
    name = task.what.removeprefix(EVENT)
    asked = translated_event(read_event(file := event_file(task)), voice.language)
    paths = [file.parent / piece.design for piece in asked.designs]
    designs = [read_known(path, voice) for path in paths]
    books = _books_of(designs, task, voice, show)
    named = list(zip(map(str, paths), designs, strict=True))
    plan = plan_event(asked, books, event_shopping(asked, named, voice), voice)
    for copy in plan.copies:
        if copy.number == 1:
            book = copy.book
            assert_rebuilds(book.framework, book.steps, copy.words, book.units, voice)
    with with_fonts(fonts_of_designs(zip(designs, paths, strict=True))):
        page = print_event(plan, PAPERS[task.paper], voice)
    yield f"{stem_in(f'{name}-event-{task.paper}', voice)}.pdf", page
    for what, table in event_tables(plan, voice).items():
        yield f"{stem_in(f'{name}-{what}', voice)}.csv", table


def _books_of(designs: Sequence[Design], task: PrintWork, voice: Voice, show: Show) -> list[Book]:
    books = []
    for number, design in enumerate(designs, 1):
        units = units_read(voice, design.units)
        books.append(gather_book(design, PAPERS[task.paper], units, CREW, voice.language))
        show(PRINTED * number / len(designs))
    return books
