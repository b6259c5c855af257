"""Printing for the desk: what the commands print, by the functions that the commands call."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from pathlib import Path

from buildplan.booklet.common.book import Book, gather_book
from buildplan.booklet.editions import print_booklet
from buildplan.booklet.office.event_booklet import print_event
from buildplan.booklet.office.gallery import Exhibit, print_gallery
from buildplan.booklet.office.quote_page import print_quote
from buildplan.booklet.office.shopping_page import print_shopping
from buildplan.business.buying.money import missing_prices
from buildplan.business.buying.shopping import ShoppedFor, shopping_list
from buildplan.business.copies.brand import Branding, branding, fonts_of
from buildplan.business.copies.page_link import leads_to
from buildplan.business.events.event_plan import plan_event
from buildplan.business.quoting.offer import Offer, QuotedPiece, price_together, shared_list
from buildplan.design.building import build_framework
from buildplan.design.event import EVENT_SUFFIX, read_event
from buildplan.design.measures import Units, units_read
from buildplan.design.model import Design
from buildplan.design.reading import read_brand
from buildplan.design.translating import translated_brand, translated_event
from buildplan.desk.folder import Folder
from buildplan.desk.outcome import Files, Refused, Share
from buildplan.desk.print_options import EVENT
from buildplan.desk.print_task import PrintWork, Report
from buildplan.desk.refusals import RefusedError
from buildplan.desk.saving import writing
from buildplan.document.paper import PAPERS
from buildplan.evaluation.evaluating import NEW_PARTS, evaluate
from buildplan.hands.reading import read_known
from buildplan.instructions.guarding import DoesNotRebuildError, assert_rebuilds
from buildplan.language.messages import message
from buildplan.language.told import NoSignError
from buildplan.language.voice import ENGLISH, LOCALES, Voice
from buildplan.screen.page import companion
from buildplan.screen.sold import sold_companion
from buildplan.screen.words import told_in
from buildplan.source.problems import DesignProblemsError, UnreadableDesignError, in_words
from buildplan.source.whole_files import write_whole

SALE, CREW = "sale", "crew"
# how far the work is, by the time of it: the shape and the steps, reading them back, the pages
GATHERED, READ_BACK, PRINTED = 0.3, 0.4, 0.95

Named = tuple[str, bytes]
Show = Callable[[float], None]


def print_asked(task: PrintWork, report: Report) -> None:
    """Print a design, and say which files came of it; what cannot be printed is told."""
    voice = Voice(task.language)

    def show(share: float) -> None:
        report(Share(share, voice.say("Printing {piece} ...", piece=task.name)))

    show(0.0)
    try:
        files = list(_printed(task, voice, show))
        with writing():
            for name, data in files:
                write_whole(Folder(task.root).output / name, data)
        report(Files(tuple(name for name, _ in files)))
    except UnreadableDesignError as error:
        report(Refused(in_words(error.problem, voice)))
    except DesignProblemsError as error:
        report(Refused(in_words(error.problems[0], voice)))
    except (NoSignError, RefusedError) as error:
        report(Refused(voice.tell(error.told)))
    except DoesNotRebuildError as error:
        words = voice.say(
            "{file}: nothing printed, for its steps do not build the piece again (step {step}:"
            " {reason}). This is a defect of buildplan, not of your design: please send us the"
            " design file and this message.",
            file=f"{task.name}.yaml",
            step=error.step,
            reason=error.reason,
        )
        report(Refused(words))


def _printed(task: PrintWork, voice: Voice, show: Show) -> Iterator[Named]:
    if task.what.startswith(EVENT):
        return _event(task, voice, show)
    return _WHATS[task.what](task, voice, show)


def _path(task: PrintWork) -> Path:
    return Folder(task.root).file(task.name)


def _stem(stem: str, voice: Voice) -> str:
    """As the commands call it: with the language where that is not English."""
    return stem if voice.language == ENGLISH else f"{stem}-{voice.language}"


def _book(task: PrintWork, language: str, read_in: Voice, show: Show) -> Book:
    """The contents of a booklet in a language, with the brand that was chosen or the design's own;
    in the units that were chosen, or those of the language that it is read in."""
    path = _path(task)
    design = read_known(path, Voice(language))
    asked: Units | None = None if not task.units else "in" if task.units == "in" else "cm"
    units = asked or units_read(read_in, design.units)
    book = gather_book(design, PAPERS[task.paper], units, task.edition, language)
    show(GATHERED)
    if task.edition == SALE:
        book = replace(book, branding=_brand(task, book, language))
    seller = design.brand if book.branding is None else book.branding.brand
    fonts = fonts_of(design.brand, path) if book.branding is None else book.branding.fonts
    return replace(book, link=leads_to(None, seller, path), fonts=fonts)


def _brand(task: PrintWork, book: Book, language: str) -> Branding | None:
    if task.brand:
        return _brand_in(task, language)
    return None if book.design.brand is None else branding(book.design.brand, _path(task))


def _brand_in(task: PrintWork, language: str) -> Branding:
    file = task.root / task.brand
    return branding(translated_brand(read_brand(file), language), file)


def _booklet(task: PrintWork, voice: Voice, show: Show) -> Iterator[Named]:
    book = _book(task, voice.language, voice, show)
    assert_rebuilds(book.framework, book.steps, book.words, book.units, voice)
    show(READ_BACK)
    yield f"{_stem(f'{task.name}-{task.edition}-{task.paper}', voice)}.pdf", print_booklet(book)


def _companion(task: PrintWork, voice: Voice, show: Show) -> Iterator[Named]:
    """The page for phones: it holds every language, and opens in the one that was asked for."""
    book = _book(task, ENGLISH, voice, show)
    voices = [Voice(language) for language in LOCALES]
    for language, told in told_in(book, voices).items():
        framework = build_framework(told.design)
        assert_rebuilds(framework, book.steps, told.steps, book.units, Voice(language))
    show(READ_BACK)
    made = sold_companion if task.edition == SALE else companion
    page = made(book, voices, voice.language)
    yield f"{_stem(f'{task.name}-{task.edition}', voice)}.html", page.encode()


def _quote(task: PrintWork, voice: Voice, show: Show) -> Iterator[Named]:
    path = _path(task)
    design = read_known(path, voice)
    made = evaluate(design, units_read(voice, design.units), NEW_PARTS)
    show(GATHERED)
    problems = [*missing_prices(design, made.facts.purchases), *made.facts.problems]
    if problems:
        raise DesignProblemsError(str(path), problems, design.name)
    assert design.currency is not None, "missing_prices names it"
    assert design.rates is not None, "missing_prices names them"
    pieces = [QuotedPiece(f"{task.name}.yaml", made)]
    bought = shared_list(pieces)
    offer = Offer(*price_together(pieces, bought, design.currency, design.rates))
    seller = _brand_in(task, voice.language) if task.brand else None
    if seller is None and design.brand is not None:
        seller = branding(design.brand, path)
    page = print_quote(offer, PAPERS[task.paper], seller, voice)
    yield f"{_stem(f'{task.name}-quote-{task.paper}', voice)}.pdf", page


def _shopping(task: PrintWork, voice: Voice, show: Show) -> Iterator[Named]:
    design = read_known(_path(task), voice)
    needed = ShoppedFor(f"{task.name}.yaml", design, build_framework(design))
    found = shopping_list([needed], units_read(voice, design.units))
    page = print_shopping(found, PAPERS[task.paper], voice)
    yield f"{_stem(f'{task.name}-shopping-{task.paper}', voice)}.pdf", page


def _gallery(task: PrintWork, voice: Voice, show: Show) -> Iterator[Named]:
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
    page = print_gallery(exhibits, PAPERS[task.paper], title, voice)
    yield f"{_stem(f'gallery-{task.paper}', voice)}.pdf", page


def _event(task: PrintWork, voice: Voice, show: Show) -> Iterator[Named]:
    name = task.what.removeprefix(EVENT)
    file = task.root / f"{name}{EVENT_SUFFIX}"
    asked = translated_event(read_event(file), voice.language)
    paths = [file.parent / piece.design for piece in asked.designs]
    designs = [read_known(path, voice) for path in paths]
    books = _books_of(designs, task, voice, show)
    needed = [
        ShoppedFor(str(path), design, build_framework(design), piece.count)
        for path, design, piece in zip(paths, designs, asked.designs, strict=True)
    ]
    found = shopping_list(needed, units_read(voice, designs[0].units))
    plan = plan_event(asked, books, found, voice)
    for copy in plan.copies:
        if copy.number == 1:
            book = copy.book
            assert_rebuilds(book.framework, book.steps, copy.words, book.units, voice)
    page = print_event(plan, PAPERS[task.paper], voice)
    yield f"{_stem(f'{name}-event-{task.paper}', voice)}.pdf", page


def _books_of(designs: Sequence[Design], task: PrintWork, voice: Voice, show: Show) -> list[Book]:
    books = []
    for number, design in enumerate(designs, 1):
        units = units_read(voice, design.units)
        books.append(gather_book(design, PAPERS[task.paper], units, CREW, voice.language))
        show(PRINTED * number / len(designs))
    return books


_WHATS: Mapping[str, Callable[[PrintWork, Voice, Show], Iterator[Named]]] = {
    "booklet": _booklet,
    "companion": _companion,
    "quote": _quote,
    "shopping": _shopping,
    "gallery": _gallery,
}
