"""Commands that print booklets and check printed ones."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from dataclasses import asdict, replace
from pathlib import Path
from typing import TYPE_CHECKING, Annotated
from urllib.parse import quote

import typer

from buildplan.commands.app import (
    FLAG,
    IN_ENGLISH,
    Edition,
    HandsOption,
    JsonOption,
    LanguageOption,
    PaperName,
    UnitsName,
    app,
    errors,
)
from buildplan.language.speaking import say, spoken, spoken_voice
from buildplan.language.voice import Voice

if TYPE_CHECKING:
    from buildplan.booklet.common.book import Book
    from buildplan.business.copies.buyers import Buyer
    from buildplan.design.model import Brand

# shorter keys could be guessed
LEAST_KEY = 16


@app.command()
def booklet(
    designs: Annotated[
        list[Path],
        typer.Argument(metavar="DESIGN...", help="One or more design files.", show_default=False),
    ],
    edition: Annotated[
        Edition, typer.Option(help="Who it is for.", show_choices=True)
    ] = Edition.TRAINING,
    paper: Annotated[PaperName, typer.Option(help="Paper size.")] = PaperName.A4,
    units: Annotated[
        UnitsName | None, typer.Option(help="Inches or centimetres; else as in the file.")
    ] = None,
    out: Annotated[Path, typer.Option(help="Folder to write to; made if it is not there.")] = Path(
        "output"
    ),
    draft: Annotated[
        bool,
        typer.Option(
            "--draft",
            metavar=FLAG,
            help="Print even a piece that has problems.",
        ),
    ] = False,
    large_print: Annotated[
        bool,
        typer.Option(
            "--large-print",
            metavar=FLAG,
            help="Crew edition: text at 16 points or more.",
        ),
    ] = False,
    fold: Annotated[
        bool,
        typer.Option(
            "--fold",
            metavar=FLAG,
            help="Lay the pages out for folding (A5 from A4), gauges in a file of their own.",
        ),
    ] = False,
    brand: Annotated[
        Path | None,
        typer.Option(
            help="Sale edition: a brand file, in place of the design's own brand.",
            show_default=False,
        ),
    ] = None,
    buyer: Annotated[
        str | None,
        typer.Option(
            "--for",
            metavar="NAME",
            help="Sale edition: the buyer, marked on every page.",
            show_default=False,
        ),
    ] = None,
    buyers: Annotated[
        Path | None,
        typer.Option(
            help="Sale edition: a CSV file with a column 'name', a copy for each row.",
            show_default=False,
        ),
    ] = None,
    key: Annotated[
        Path | None,
        typer.Option(
            help="Sale edition: a file of your own, kept secret, that seals the copies.",
            show_default=False,
        ),
    ] = None,
    link: Annotated[
        str | None,
        typer.Option(
            metavar="URL",
            help="Address of its page for phones: a code on the cover and at each stage.",
            show_default=False,
        ),
    ] = None,
    hands: HandsOption = None,
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Print the numbered, illustrated booklet of a design as a PDF.

    Prints the path of each booklet it wrote. A piece that has problems (see check) is not
    printed, unless as a draft.
    """
    from buildplan.booklet.editions import print_booklet, print_folded
    from buildplan.business.copies.brand import branding
    from buildplan.commands.files import (
        ProblemsFoundError,
        asked,
        book_of,
        in_language,
        list_problems,
        without_events,
        write_whole,
    )
    from buildplan.design.reading import read_brand
    from buildplan.design.translating import translated_brand
    from buildplan.document.paper import large_print as enlarged

    for_sale = {"--brand": brand, "--for": buyer, "--buyers": buyers, "--key": key}
    refuse_options_of_other_editions(edition, large_print, for_sale)
    sold_to, failed = buyers_named(buyer, buyers)
    secret = secret_of(key)
    address = None if link is None else asked(page_address, link)
    marked_as = (
        branding(translated_brand(read_brand(brand), spoken()), brand)
        if brand is not None
        else None
    )
    for path in without_events(designs):
        book = book_of(path, paper.value, units, edition.value, hands=hands)
        own = book.design.brand
        if marked_as is not None:
            book = replace(book, branding=marked_as)
        elif edition is Edition.SALE and own is not None:
            book = replace(book, branding=branding(own, path))
        seller = own if book.branding is None else book.branding.brand
        book = replace(book, link=leads_to(address, seller, path))
        if large_print:
            book = replace(book, paper=enlarged(book.paper))
        if book.facts.problems:
            failed = True
            list_problems(path, book.facts.problems)
            if not draft:
                words = say(
                    "{file}: no booklet printed; mend it, or print it with --draft", file=str(path)
                )
                errors.print(words, markup=False)
                continue
        if not rebuilds(path, book):
            failed = True
            continue
        size = in_language(f"{paper.value}-large" if large_print else paper.value)
        for one in sold_to:
            stem = f"{path.stem}-{edition.value}-{size}" + (f"-{one.slug}" if one.slug else "")
            with errors.status(
                say("Printing {piece} {buyer} ...", piece=book.facts.name, buyer=one.name)
            ):
                copy = replace(book, buyer=one.name)
                if fold:
                    sheets, alone = print_folded(copy, secret)
                    files = {f"{stem}-fold.pdf": sheets, f"{stem}-gauges.pdf": alone}
                else:
                    files = {f"{stem}.pdf": print_booklet(copy, secret)}
            for name, data in files.items():
                write_whole(out / name, data)
                typer.echo(out / name)
    if failed:
        raise ProblemsFoundError


def page_address(text: str) -> str:
    """The address of a page. Raises ToldError for what is none."""
    from buildplan.language.messages import message
    from buildplan.language.told import ToldError
    from buildplan.source.values import MOST_OF_ADDRESS, PAGE_ADDRESS

    if len(text) > MOST_OF_ADDRESS or not re.fullmatch(PAGE_ADDRESS, text):
        raise ToldError(
            message(
                "--link: {text} is no address of a page; write it whole, like "
                "https://lantern-street.example/star, in {most} characters at most",
                text=repr(text[: 2 * MOST_OF_ADDRESS]),
                most=MOST_OF_ADDRESS,
            )
        )
    return text


def leads_to(given: str | None, seller: Brand | None, design: Path) -> str:
    """The address of a design's page for phones: as given, else the seller's own; empty without
    one. {piece} in it stands for the name of the design's file."""
    own = None if seller is None else seller.link
    return (given or own or "").replace("{piece}", quote(design.stem))


def rebuilds(path: Path, book: Book) -> bool:
    """Whether the piece can be built again from the steps and words that are to be printed; says
    what to send us where it cannot, for that is a defect of ours."""
    from buildplan.instructions.guarding import DoesNotRebuildError, assert_rebuilds

    try:
        assert_rebuilds(book.framework, book.steps, book.words)
    except DoesNotRebuildError as error:
        words = say(
            "{file}: no booklet printed, for its steps do not build the piece again (step {step}:"
            " {reason}). This is a defect of buildplan, not of your design: please send us the"
            " design file and this message.",
            file=str(path),
            step=error.step,
            reason=error.reason,
        )
        errors.print(words, markup=False)
        return False
    return True


def refuse_options_of_other_editions(
    edition: Edition, large_print: bool, for_sale: Mapping[str, object]
) -> None:
    """A wrong call where an option is given that this edition does not have."""
    if edition is not Edition.SALE:
        for option, given in for_sale.items():
            if given is not None:
                raise typer.BadParameter(
                    say("{option} is for the sale edition: add --edition sale", option=option)
                )
    if large_print and edition is not Edition.CREW:
        raise typer.BadParameter(
            say("{option} is for the crew edition: add --edition crew", option="--large-print")
        )


def buyers_named(name: str | None, listed: Path | None) -> tuple[tuple[Buyer, ...], bool]:
    """Whom copies are for (nobody named when none is given), and whether rows of the list were
    no good; those are told."""
    from buildplan.business.copies.buyers import (
        Buyer,
        BuyersUnreadableError,
        name_problem,
        read_buyers,
        slug,
        tidy,
    )
    from buildplan.commands.files import unreadable

    if name is not None and listed is not None:
        raise typer.BadParameter(say("give --for or --buyers, not both"))
    if name is not None:
        problem = name_problem(tidy(name))
        if problem is not None:
            raise typer.BadParameter(f"--for: {spoken_voice().tell(problem)}")
        return (Buyer(tidy(name), slug(name)),), False
    if listed is None:
        return (Buyer("", ""),), False
    try:
        buyers, bad = read_buyers(listed)
    except OSError as error:
        raise typer.BadParameter(unreadable(listed, error)) from error
    except BuyersUnreadableError as error:
        raise typer.BadParameter(f"{listed}: {spoken_voice().tell(error.told)}") from error
    for row in bad:
        words = say(
            "{place}: {problem}; no copy printed",
            place=f"{listed}:{row.line}",
            problem=spoken_voice().tell(row.why),
        )
        errors.print(words, markup=False)
    if not buyers:
        words = say("{file}: no buyer in it, nothing printed", file=str(listed))
        errors.print(words, markup=False)
    return buyers, bool(bad) or not buyers


def secret_of(key: Path | None) -> bytes:
    """The seller's key of a file; empty without one."""
    from buildplan.commands.files import unreadable

    if key is None:
        return b""
    try:
        secret = key.read_bytes()
    except OSError as error:
        raise typer.BadParameter(unreadable(key, error)) from error
    if len(secret) < LEAST_KEY:
        raise typer.BadParameter(
            say(
                "{file} is too short for a key: {count} bytes or more",
                file=str(key),
                count=LEAST_KEY,
            )
        )
    return secret


@app.command(name="verify")
def verify_copy(
    file: Annotated[
        Path, typer.Argument(metavar="FILE", help="A sold copy: .pdf or .html.", show_default=False)
    ],
    key: Annotated[
        Path | None,
        typer.Option(help="The file that sealed it, if one did.", show_default=False),
    ] = None,
    as_json: JsonOption = False,
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Check the serial of a sold copy, and that no page of it was changed.

    A good check proves that no page was changed, added, removed or moved since the file was
    printed, and that serial, buyer and plan belong together; with the seller's key, that whoever
    has that key made it. It does not prove who has read, copied or passed on the file. A copy that
    was sealed with a key can only be judged with that key (exit status 2 without it).
    """
    from pikepdf import PdfError

    from buildplan.business.copies.serial import NoSerialError
    from buildplan.business.copies.verifying import Verdict, verified_lines, verify
    from buildplan.commands.files import ProblemsFoundError, unreadable
    from buildplan.screen.sold import verify_companion

    secret = secret_of(key)
    page = file.suffix.lower() in (".html", ".htm")
    try:
        found = verify_companion(file, secret) if page else verify(file, secret)
    except OSError as error:
        raise typer.BadParameter(unreadable(file, error)) from error
    except PdfError:
        raise typer.BadParameter(say("{file} is no PDF that can be read", file=str(file))) from None
    except NoSerialError:
        raise typer.BadParameter(
            say("{file} carries no serial: only the sale edition does", file=str(file))
        ) from None
    if as_json:
        typer.echo(
            json.dumps(
                asdict(found) | {"good": found.good, "verdict": found.verdict},
                indent=2,
                ensure_ascii=False,
            )
        )
    else:
        typer.echo("\n".join(verified_lines(found, Voice(language))))
    if found.verdict is Verdict.NEEDS_KEY:
        raise typer.Exit(2)
    if not found.good:
        raise ProblemsFoundError
