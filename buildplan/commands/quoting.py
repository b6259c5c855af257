"""The command that prices pieces."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from decimal import Decimal, InvalidOperation
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from buildplan.commands.app import app
from buildplan.commands.aside import answer, answer_data
from buildplan.commands.options import (
    IN_ENGLISH,
    CsvOption,
    HandsOption,
    JsonOption,
    LanguageOption,
    PaperName,
)
from buildplan.language.voice import Voice

if TYPE_CHECKING:
    from buildplan.business.quoting.offer import Offer, QuotedPiece
    from buildplan.design.event import Event

PiecesArgument = Annotated[
    list[Path],
    typer.Argument(
        metavar="DESIGN...", help="One or more design files, or an event file.", show_default=False
    ),
]
PdfOption = Annotated[
    Path | None,
    typer.Option(help="Write pages for the customer: prices alone.", show_default=False),
]
CustomerOption = Annotated[
    str, typer.Option("--for", metavar="NAME", help="Whom the pages are for.", show_default=False)
]
AddressOption = Annotated[
    str, typer.Option(help="Their address, its lines parted by semicolons.", show_default=False)
]
SenderOption = Annotated[
    str,
    typer.Option(
        "--from", help="Your own address, its lines parted by semicolons.", show_default=False
    ),
]
NumberOption = Annotated[
    str, typer.Option(help="The number of the quote, as you count them.", show_default=False)
]
DateOption = Annotated[
    str, typer.Option(help="Its date, as it is to be printed.", show_default=False)
]
DepositOption = Annotated[
    str, typer.Option(help="What is paid on accepting, such as 30%.", show_default=False)
]
ValidOption = Annotated[
    int | None,
    typer.Option(min=1, max=999, help="Days that the price holds.", show_default=False),
]
BrandOption = Annotated[
    Path | None,
    typer.Option(
        help="A brand file for the pages, in place of the design's own.", show_default=False
    ),
]
PaperOption = Annotated[PaperName, typer.Option(help="Paper size of the pages.")]


@app.command()
def quote(
    designs: PiecesArgument,
    csv: CsvOption = None,
    pdf: PdfOption = None,
    customer: CustomerOption = "",
    address: AddressOption = "",
    sender: SenderOption = "",
    number: NumberOption = "",
    date: DateOption = "",
    deposit: DepositOption = "",
    valid: ValidOption = None,
    brand: BrandOption = None,
    paper: PaperOption = PaperName.A4,
    as_json: JsonOption = False,
    hands: HandsOption = None,
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Price one design, several, or an event, all at the design files' own prices.

    Several pieces are priced as one job: packs are shared and the way is charged once. The pages
    for the customer show no cost and no margin; their total is the same.
    """
    from buildplan.business.quoting.offer import Offer, noted, party, priced_as_one
    from buildplan.business.quoting.quote_words import offer_as_data, offer_lines, quote_rows
    from buildplan.business.signs import signs_told_in_place
    from buildplan.commands.files import asked, refuse_ending, write_whole
    from buildplan.design.translating import translated_event
    from buildplan.source.csv_text import csv_bytes

    voice = Voice(language)
    refuse_ending(pdf, (".pdf",), voice)
    refuse_ending(csv, (".csv",), voice)
    of_pages = {"--for": customer, "--address": address, "--from": sender}
    if pdf is None:
        _refuse_without_pages({**of_pages, "--valid": valid, "--brand": brand}, voice)
    to = asked(partial(party, customer), address.split(";"), voice)
    by = asked(partial(party, ""), sender.split(";"), voice)
    noted_as = asked(noted, number, voice, "--number"), asked(noted, date, voice, "--date")
    share = _deposit(deposit, voice)
    event = _event(designs, voice)
    pieces = _pieces(_counted(designs, event), hands, voice)
    whole, lines = asked(priced_as_one, pieces, voice)
    job = "" if event is None else translated_event(event, voice.language).name
    offer = Offer(whole, lines, to, by, *noted_as, valid, share, job)
    if csv is not None:
        write_whole(csv, csv_bytes(quote_rows(whole, pieces[0].made.units, voice)))
    if as_json:
        answer_data(offer_as_data(offer))
    else:
        answer("\n".join(offer_lines(offer, voice)))
    _refuse_problems(pieces, voice)
    if pdf is not None:
        written = of_pages | {"--number": number, "--date": date}
        files = [file for file in (brand, *designs) if file is not None]
        with signs_told_in_place([*files, *(Path(one.file) for one in pieces)], written.items()):
            write_whole(pdf, _pages(offer, pieces, brand, paper, voice))
        answer(pdf, err=as_json)


def _pages(
    offer: Offer, pieces: Sequence[QuotedPiece], brand: Path | None, paper: PaperName, voice: Voice
) -> bytes:
    """The pages for the customer, in the brand that is named or else that of the first piece."""
    from buildplan.booklet.office.quote_page import print_quote
    from buildplan.commands.pieces import brand_of
    from buildplan.document.paper import PAPERS
    from buildplan.drawing.typeset.font_files import with_fonts

    first = pieces[0]
    seller = brand_of(first.made.design, Path(first.file), brand, voice)
    fonts = () if seller is None else seller.fonts
    with with_fonts(fonts):
        return print_quote(offer, PAPERS[paper.value], seller, voice)


def _refuse_without_pages(given: Mapping[str, object], voice: Voice) -> None:
    """A wrong call where something is given that is for the customer's page alone."""
    for option, value in given.items():
        if value:
            raise typer.BadParameter(
                voice.say("{option} is for the customer's page: add --pdf", option=option)
            )


def _refuse_problems(pieces: Sequence[QuotedPiece], voice: Voice) -> None:
    """List the problems of all pieces; they end the command."""
    from buildplan.commands.files import ProblemsFoundError, list_problems

    for one in pieces:
        list_problems(Path(one.file), one.made.facts.problems, voice)
    if any(one.made.facts.problems for one in pieces):
        raise ProblemsFoundError


def _deposit(text: str, voice: Voice) -> Decimal | None:
    """The share of the whole that is paid at once, from `30%` or `12,5 %`."""
    if not text:
        return None
    try:
        share = Decimal(text.strip().removesuffix("%").strip().replace(",", ".")) / 100
    except InvalidOperation:
        share = Decimal("NaN")
    if share.is_nan() or not text.strip().endswith("%"):
        raise typer.BadParameter(
            voice.say(
                "--deposit is a share of the whole, such as {example}", example=_share_meant(share)
            )
        )
    if not 0 < share <= 1:
        raise typer.BadParameter(
            voice.say(
                "--deposit is more than 0 % and at most 100 % of the whole, not {given}",
                given=text.strip(),
            )
        )
    return share


def _share_meant(number: Decimal) -> str:
    """What somebody meant who wrote 30 or 0.3 of a hundredth, where it is a share."""
    for share in (100 * number, 10000 * number):
        if not share.is_nan() and 1 <= share <= 100:
            return f"{share.normalize():f}%"
    return "30%"


def _event(paths: Sequence[Path], voice: Voice) -> Event | None:
    """The event that is priced; None where designs are."""
    from buildplan.design.event import EVENT_SUFFIX, read_event

    events = [path for path in paths if path.name.endswith(EVENT_SUFFIX)]
    if events and len(paths) > 1:
        raise typer.BadParameter(voice.say("name one event file, or design files"))
    return read_event(events[0]) if events else None


def _counted(paths: Sequence[Path], event: Event | None) -> Sequence[tuple[Path, int]]:
    """The design files that are priced, and how many are built of each."""
    if event is None:
        return [(path, 1) for path in paths]
    return [(paths[0].parent / one.design, one.count) for one in event.designs]


def _pieces(
    counted: Sequence[tuple[Path, int]], hands: Path | None, voice: Voice
) -> list[QuotedPiece]:
    """The pieces that are priced."""
    from buildplan.business.quoting.offer import QuotedPiece
    from buildplan.commands.pieces import evaluation_of
    from buildplan.design.measures import units_read

    pieces = []
    for path, count in counted:
        piece = evaluation_of(path, voice, hands=hands)
        told = replace(piece, units=units_read(voice, piece.units))
        pieces.append(QuotedPiece(str(path), told, count))
    return pieces
