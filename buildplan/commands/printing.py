"""The command that prints booklets."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from buildplan.commands.app import app
from buildplan.commands.aside import answer, aside, busy
from buildplan.commands.options import (
    FLAG,
    IN_ENGLISH,
    OUTPUT,
    DesignsArgument,
    DoorOption,
    Edition,
    FolderOption,
    HandsOption,
    LanguageOption,
    PaperName,
    PaperOption,
    UnitsName,
    UnitsOption,
)
from buildplan.commands.sale import (
    BrandOption,
    BuyerOption,
    BuyersOption,
    KeyOption,
    SignOption,
)
from buildplan.language.voice import Voice

if TYPE_CHECKING:
    from buildplan.booklet.common.book import Book
    from buildplan.business.copies.brand import Branding
    from buildplan.business.copies.buyers import Buyer
    from buildplan.business.copies.signing import Signer
    from buildplan.evaluation.passing import Door

EditionOption = Annotated[Edition, typer.Option(help="Who it is for.", show_choices=True)]
DraftOption = Annotated[
    bool,
    typer.Option("--draft", metavar=FLAG, help="Print even a piece that has problems."),
]
LargeOption = Annotated[
    bool,
    typer.Option("--large-print", metavar=FLAG, help="Crew edition: text at 16 points or more."),
]
FoldOption = Annotated[
    bool,
    typer.Option(
        "--fold",
        metavar=FLAG,
        help="Lay the pages out for folding (A5 from A4), gauges in a file of their own.",
    ),
]
LinkOption = Annotated[
    str | None,
    typer.Option(
        metavar="URL",
        help="Address of its page for phones: a code on the cover and at each stage.",
        show_default=False,
    ),
]


@dataclass(frozen=True)
class _Printing:
    """How booklets are to be printed, and for whom."""

    edition: Edition
    paper: PaperName
    units: UnitsName | None
    out: Path
    draft: bool
    large_print: bool
    fold: bool
    brand: Branding | None
    brand_file: Path | None
    buyers: tuple[Buyer, ...]
    secret: bytes
    signer: Signer | None
    link: str | None
    doors: tuple[Door, ...]
    hands: Path | None
    voice: Voice


@app.command()
def booklet(
    designs: DesignsArgument,
    edition: EditionOption = Edition.TRAINING,
    paper: PaperOption = PaperName.A4,
    units: UnitsOption = None,
    out: FolderOption = OUTPUT,
    draft: DraftOption = False,
    large_print: LargeOption = False,
    fold: FoldOption = False,
    brand: BrandOption = None,
    buyer: BuyerOption = None,
    buyers: BuyersOption = None,
    key: KeyOption = None,
    sign: SignOption = None,
    link: LinkOption = None,
    door: DoorOption = None,
    hands: HandsOption = None,
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Print the numbered, illustrated booklet of a design as a PDF.

    Prints the path of each booklet it wrote. A piece that has problems (see check) is not
    printed, unless as a draft.
    """
    from buildplan.commands.files import (
        ProblemsFoundError,
        asked,
        refuse_file_for_folder,
        without_events,
    )
    from buildplan.commands.links import link_asked
    from buildplan.commands.pieces import brand_in
    from buildplan.commands.sale import (
        buyers_named,
        refuse_for_other_editions,
        secret_of,
        signer_of,
    )
    from buildplan.evaluation.passing import parse_door

    voice = Voice(language)
    refuse_file_for_folder(out, voice)
    for_sale = {"--brand": brand, "--for": buyer, "--buyers": buyers, "--key": key, "--sign": sign}
    refuse_for_other_editions(edition, Edition.SALE, for_sale, voice)
    for_crews = {"--large-print": large_print, "--door": door}
    refuse_for_other_editions(edition, Edition.CREW, for_crews, voice)
    sold_to, bad_rows = buyers_named(buyer, buyers, voice)
    address = link_asked(link, voice)
    seller = None if brand is None else brand_in(brand, voice)
    doors = tuple(asked(parse_door, one, voice, "--door") for one in door or ())
    sealed = (sold_to, secret_of(key, voice), signer_of(sign, voice))
    kind = (edition, paper, units, out, draft, large_print, fold, seller, brand)
    how = _Printing(*kind, *sealed, address, doors, hands, voice)
    good = _print_all(without_events(designs, voice), how)
    if bad_rows or not good:
        raise ProblemsFoundError


def _print_all(designs: Sequence[Path], how: _Printing) -> bool:
    """Print the booklets of all designs; whether nothing was wrong with any."""
    from buildplan.commands.many_designs import each_design

    good = True
    if len(how.buyers) == 1:
        for printed in each_design(partial(_print_alone, how), designs):
            good &= printed.good
            _write(printed.files, how)
    else:  # the copies of one design are many enough for all cores
        _tell_if_many(len(designs) * len(how.buyers), how.voice)
        for path in designs:
            book, is_good = _book_to_print(path, how)
            good &= is_good
            if book is None:
                continue
            buyers = _with_signs(book, how)
            good &= len(buyers) == len(how.buyers)
            for files in _copies(path, book, replace(how, buyers=buyers)) if buyers else ():
                _write(files, how)
    return good


def _with_signs(book: Book, how: _Printing) -> tuple[Buyer, ...]:
    """The buyers whose names can be printed; the others are told."""
    from buildplan.drawing.fonts import refuse_unprintable
    from buildplan.drawing.typeset.font_files import with_fonts
    from buildplan.language.told import NoSignError

    found = []
    with with_fonts(book.fonts):
        for buyer in how.buyers:
            try:
                refuse_unprintable(buyer.name)
                found.append(buyer)
            except NoSignError as error:
                words = how.voice.say(
                    "{place}: {problem}; no copy printed", place=buyer.name, problem=error.told
                )
                aside(words)
    return tuple(found)


def _tell_if_many(copies: int, voice: Voice) -> None:
    """How long many copies are likely to take, before they are begun."""
    from buildplan.evaluation.expected_time import WORTH_SAYING_S, seconds_to_copy

    expected = seconds_to_copy(copies)
    if expected >= WORTH_SAYING_S:
        words = voice.say_count(
            "{copies} copies: this takes about {number} minute of work for one processor.",
            "{copies} copies: this takes about {number} minutes of work for one processor.",
            max(1, round(expected / 60)),
            copies=copies,
        )
        aside(words)


@dataclass(frozen=True)
class _Printed:
    """The files of a booklet, by name, and whether nothing was wrong with the piece."""

    files: Sequence[tuple[str, bytes]]
    good: bool


def _print_alone(how: _Printing, path: Path) -> _Printed:
    """The booklet of a design for the one buyer, named or not."""
    from buildplan.business.signs import signs_told_in_place
    from buildplan.drawing.typeset.font_files import with_fonts

    book, good = _book_to_print(path, how)
    if book is None:
        return _Printed((), good)
    files = [file for file in (how.brand_file, path) if file is not None]
    given = [("--for", buyer.name) for buyer in how.buyers]
    given += [("--door", door.name) for door in how.doors]
    with with_fonts(book.fonts), signs_told_in_place(files, given):
        return _Printed(next(_copies(path, book, how)), good)


def _book_to_print(path: Path, how: _Printing) -> tuple[Book | None, bool]:
    """What is printed of a design, None where nothing is, and whether nothing is wrong with it;
    what is wrong is told."""
    from buildplan.commands.files import list_problems
    from buildplan.commands.rebuilding import rebuilds

    voice, book = how.voice, _book(path, how)
    problems = book.facts.problems
    list_problems(path, problems, voice)
    if problems and not how.draft:
        words = voice.say(
            "{file}: no booklet printed; mend it, or print it with --draft", file=str(path)
        )
        aside(words)
        return None, False
    return (book, not problems) if rebuilds(path, book, book.words, voice) else (None, False)


def _book(path: Path, how: _Printing) -> Book:
    """The contents of a design's booklets, but for their buyers."""
    from buildplan.business.copies.brand import branding, fonts_of
    from buildplan.business.copies.page_link import leads_to
    from buildplan.commands.pieces import book_of, draft_of
    from buildplan.document.paper import large_print

    gathered = draft_of if how.draft else book_of
    book = gathered(path, how.voice, how.paper.value, how.units, how.edition.value, how.hands)
    own = book.design.brand
    if how.brand is not None:
        book = replace(book, branding=how.brand)
    elif how.edition is Edition.SALE and own is not None:
        book = replace(book, branding=branding(own, path))
    seller = own if book.branding is None else book.branding.brand
    fonts = fonts_of(own, path) if book.branding is None else book.branding.fonts
    book = replace(book, link=leads_to(how.link, seller, path), doors=how.doors, fonts=fonts)
    return replace(book, paper=large_print(book.paper)) if how.large_print else book


def _copies(path: Path, book: Book, how: _Printing) -> Iterator[Sequence[tuple[str, bytes]]]:
    """The files of the copy of each buyer, by name."""
    from buildplan.booklet.editions import print_copies, print_folded_copies
    from buildplan.commands.files import in_language

    voice = how.voice
    names = [buyer.name for buyer in how.buyers]
    copies = (print_folded_copies if how.fold else print_copies)(book, names, how.secret)
    endings = ("-fold.pdf", "-gauges.pdf") if how.fold else (".pdf",)
    size = f"{how.paper.value}-large" if how.large_print else how.paper.value
    stem = f"{path.stem}-{how.edition.value}-{in_language(size, voice)}"
    for buyer in how.buyers:
        with busy(
            voice.say("Printing {piece} {buyer} ...", piece=book.facts.name, buyer=buyer.name)
        ):
            files = next(copies)
        own = buyer.file_stem(stem)
        yield [(f"{own}{ending}", data) for ending, data in zip(endings, files, strict=True)]


def _write(files: Sequence[tuple[str, bytes]], how: _Printing) -> None:
    """Write files, and say where they are."""
    from buildplan.commands.files import write_whole

    for name, data in files:
        write_whole(how.out / name, data if how.signer is None else how.signer.signed(data))
        answer(how.out / name)
