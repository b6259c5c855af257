"""Printing for the desk: what the commands print, by the functions that the commands call."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path

from buildplan.booklet.common.book import Book, gather_book
from buildplan.booklet.editions import print_copies, print_folded_copies
from buildplan.business.copies.brand import Branding, branding, fonts_of
from buildplan.business.copies.buyers import Buyer
from buildplan.business.copies.page_link import leads_to
from buildplan.business.copies.secret import secret_in
from buildplan.business.copies.signing import Signer
from buildplan.business.signs import signs_told_in_place
from buildplan.design.building import build_framework
from buildplan.design.measures import Units, units_read
from buildplan.desk.folder import Folder
from buildplan.desk.outcome import Files, Refused, Share
from buildplan.desk.print_office import event, gallery, quote, shopping
from buildplan.desk.print_options import EVENT
from buildplan.desk.print_parts import (
    GATHERED,
    PRINTED,
    READ_BACK,
    Named,
    Show,
    brand_in,
    files_read,
    path_of,
    stem_in,
)
from buildplan.desk.print_task import PrintWork, Report
from buildplan.desk.print_wishes import NOBODY, buyers_of, doors_of, link_of, written_in
from buildplan.desk.refusals import RefusedError
from buildplan.desk.saving import writing
from buildplan.document.paper import PAPERS, large_print
from buildplan.hands.reading import read_known
from buildplan.instructions.guarding import DoesNotRebuildError, assert_rebuilds
from buildplan.language.messages import message
from buildplan.language.told import ToldError
from buildplan.language.voice import ENGLISH, LOCALES, Voice
from buildplan.screen.page import companion
from buildplan.screen.sold import sold_companion
from buildplan.screen.words import told_in
from buildplan.source.bounded import why_not_read
from buildplan.source.problems import DesignProblemsError, UnreadableDesignError, in_words
from buildplan.source.whole_files import write_whole

SALE, CREW = "sale", "crew"


def print_asked(task: PrintWork, report: Report) -> None:
    """Print a design, and say which files came of it; what cannot be printed is told."""
    voice = Voice(task.language)

    def show(share: float) -> None:
        report(Share(share, voice.say("Printing {piece} ...", piece=task.name)))

    show(0.0)
    try:
        with signs_told_in_place(files_read(task), written_in(task.wishes)):
            files = list(_printed(task, voice, show))
        with writing():
            for name, data in files:
                write_whole(Folder(task.root).output / name, data)
        report(Files(tuple(name for name, _ in files)))
    except UnreadableDesignError as error:
        report(Refused(in_words(error.problem, voice)))
    except DesignProblemsError as error:
        other = "" if Path(error.file) == path_of(task) else Path(error.file).name
        report(Refused(in_words(error.problems[0], voice, other)))
    except (ToldError, RefusedError) as error:
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
        return event(task, voice, show)
    return _WHATS[task.what](task, voice, show)


def _book(task: PrintWork, language: str, read_in: Voice, show: Show) -> Book:
    """The contents of a booklet in a language, with the brand that was chosen or the design's own;
    in the units that were chosen, or those of the language that it is read in."""
    path = path_of(task)
    design = read_known(path, Voice(language))
    asked: Units | None = None if not task.units else "in" if task.units == "in" else "cm"
    units = asked or units_read(read_in, design.units)
    book = gather_book(design, PAPERS[task.paper], units, task.edition, language)
    show(GATHERED)
    if task.edition == SALE:
        book = replace(book, branding=_brand(task, book, language))
    seller = design.brand if book.branding is None else book.branding.brand
    fonts = fonts_of(design.brand, path) if book.branding is None else book.branding.fonts
    return replace(book, link=leads_to(link_of(task.wishes), seller, path), fonts=fonts)


def _brand(task: PrintWork, book: Book, language: str) -> Branding | None:
    if task.brand:
        return brand_in(task, language)
    return None if book.design.brand is None else branding(book.design.brand, path_of(task))


def _booklet(task: PrintWork, voice: Voice, show: Show) -> Iterator[Named]:
    """The booklet, one for each buyer of it; folded, with the gauges in a file of their own."""
    wishes, signer = task.wishes, _signer(task)
    book = _book(task, voice.language, voice, show)
    if task.edition == CREW:
        book = replace(book, doors=doors_of(wishes))
        book = replace(book, paper=large_print(book.paper)) if wishes.large else book
    assert_rebuilds(book.framework, book.steps, book.words, book.units, voice)
    show(READ_BACK)
    buyers = _buyers(task)
    copies = print_folded_copies if wishes.fold else print_copies
    endings = ("-fold.pdf", "-gauges.pdf") if wishes.fold else (".pdf",)
    size = f"{task.paper}-large" if wishes.large and task.edition == CREW else task.paper
    stem = f"{task.name}-{task.edition}-{stem_in(size, voice)}"
    printed = copies(book, [buyer.name for buyer in buyers], _key(task))
    for number, (buyer, files) in enumerate(zip(buyers, printed, strict=True), 1):
        for ending, data in zip(endings, files, strict=True):
            yield (
                f"{buyer.file_stem(stem)}{ending}",
                data if signer is None else signer.signed(data),
            )
        show(READ_BACK + (PRINTED - READ_BACK) * number / len(buyers))


def _buyers(task: PrintWork) -> tuple[Buyer, ...]:
    return buyers_of(task.wishes) if task.edition == SALE else (NOBODY,)


def _key(task: PrintWork) -> bytes:
    """What seals sold copies; empty where nothing does. Raises RefusedError for too short a key."""
    if task.edition != SALE or not task.wishes.key:
        return b""
    with _read_for(task.wishes.key):
        return secret_in(task.root / task.wishes.key, task.wishes.key)


def _signer(task: PrintWork) -> Signer | None:
    """Who signs sold copies, None where nobody does. Raises RefusedError where the file or its
    password is no good."""
    if task.edition != SALE or not task.wishes.sign:
        return None
    signer = Signer(task.root / task.wishes.sign, task.wishes.password, task.wishes.sign)
    with _read_for(task.wishes.sign):
        signer.check()
    return signer


@contextmanager
def _read_for(called: str) -> Iterator[None]:
    """What is wrong with a file of the folder is told with its name."""
    try:
        yield
    except OSError as error:
        told = message("{file}: {problem}", file=called, problem=why_not_read(error))
        raise RefusedError(422, told) from error


def _companion(task: PrintWork, voice: Voice, show: Show) -> Iterator[Named]:
    """The page for phones: it holds every language, and opens in the one that was asked for."""
    book = _book(task, ENGLISH, voice, show)
    voices = [Voice(language) for language in LOCALES]
    for language, told in told_in(book, voices).items():
        framework = build_framework(told.design)
        assert_rebuilds(framework, book.steps, told.steps, book.units, Voice(language))
    show(READ_BACK)
    stem = f"{task.name}-{task.edition}"
    if task.edition != SALE:
        yield f"{stem}.html", companion(book, voices, voice.language).encode()
        return
    key = _key(task)
    for buyer in _buyers(task):
        page = sold_companion(replace(book, buyer=buyer.name), voices, voice.language, key)
        yield f"{buyer.file_stem(stem)}.html", page.encode()


_WHATS: Mapping[str, Callable[[PrintWork, Voice, Show], Iterator[Named]]] = {
    "booklet": _booklet,
    "companion": _companion,
    "quote": quote,
    "shopping": shopping,
    "gallery": gallery,
}
