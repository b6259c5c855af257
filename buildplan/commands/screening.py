"""Commands that put a piece on a screen: its data, its 3D model, its companion page."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from buildplan.commands.app import (
    IN_ENGLISH,
    DesignArgument,
    Edition,
    HandsOption,
    LanguageOption,
    UnitsName,
    app,
    errors,
)
from buildplan.language.speaking import ENGLISH, speaking
from buildplan.language.voice import Voice

if TYPE_CHECKING:
    from buildplan.booklet.common.book import Book

UnitsOption = Annotated[
    UnitsName | None, typer.Option(help="Inches or centimetres; else as in the file.")
]


@app.command()
def export(
    design: DesignArgument,
    out: Annotated[
        Path | None,
        typer.Option(
            help="File to write: .json (all data) or .glb (a 3D model at true size).",
            show_default=False,
        ),
    ] = None,
    units: UnitsOption = None,
    hands: HandsOption = None,
    draft: Annotated[
        bool, typer.Option("--draft", help="Write even a piece that has problems.")
    ] = False,
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Write a piece as data for other programs, or as a 3D model (glTF) for a phone's viewer.

    Prints the path it wrote. The data are in the form of buildplan/screen/piece.schema.json, with
    the steps' words in every language.
    """
    from buildplan.commands.files import write_whole, wrong_ending
    from buildplan.language.voice import LOCALES
    from buildplan.screen.gather import gather_piece
    from buildplan.screen.gltf import piece_glb
    from buildplan.screen.model import piece_json

    target = out or Path(f"{design.stem}.json")
    if target.suffix.lower() not in (".json", ".glb"):
        raise typer.BadParameter(wrong_ending(target, [".json", ".glb"]))
    book = _untranslated(design, units, "training", hands)
    _refuse_problems(book, design, draft, Voice(language))
    piece = gather_piece(book, [Voice(each) for each in LOCALES])
    data = piece_glb(piece) if target.suffix.lower() == ".glb" else piece_json(piece).encode()
    write_whole(target, data)
    typer.echo(target)


def _untranslated(path: Path, units: UnitsName | None, edition: str, hands: Path | None) -> Book:
    """The design as its file says it: what is written holds every language."""
    from buildplan.commands.files import book_of

    with speaking(ENGLISH):
        return book_of(path, units=units, edition=edition, hands=hands)


def _refuse_problems(book: Book, path: Path, draft: bool, voice: Voice) -> None:
    """List the problems of a piece; they end the command unless a draft was asked for."""
    from buildplan.commands.files import ProblemsFoundError, list_problems

    if not book.facts.problems:
        return
    list_problems(path, book.facts.problems)
    if not draft:
        words = voice.say("{file}: nothing written; mend it, or add --draft", file=str(path))
        errors.print(words, markup=False)
        raise ProblemsFoundError


@app.command()
def companion(
    design: DesignArgument,
    edition: Annotated[Edition, typer.Option(help="Who it is for.")] = Edition.CREW,
    out: Annotated[
        Path | None, typer.Option(help="The .html file to write.", show_default=False)
    ] = None,
    units: UnitsOption = None,
    hands: HandsOption = None,
    draft: Annotated[
        bool, typer.Option("--draft", help="Write even a piece that has problems.")
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
        typer.Option("--for", metavar="NAME", help="Sale edition: the buyer.", show_default=False),
    ] = None,
    key: Annotated[
        Path | None,
        typer.Option(
            help="Sale edition: a file of your own, kept secret, that seals the copy.",
            show_default=False,
        ),
    ] = None,
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Write a page for phones that shows the build in 3D, step by step, without a network.

    One .html file that holds everything; it opens from a file and asks the network for nothing.
    All languages are in it, and it opens in the one that is asked for. Prints the path it wrote.
    """
    from buildplan.commands.files import brand_of, write_whole, wrong_ending
    from buildplan.commands.printing import (
        buyers_named,
        refuse_options_of_other_editions,
        secret_of,
    )
    from buildplan.language.voice import LOCALES
    from buildplan.screen.page import companion as companion_page
    from buildplan.screen.sold import sold_companion

    for_sale = {"--brand": brand, "--for": buyer, "--key": key}
    refuse_options_of_other_editions(edition, False, for_sale)
    sold_to, _ = buyers_named(buyer, None)
    secret = secret_of(key)
    slug = f"-{sold_to[0].slug}" if sold_to[0].slug else ""
    target = out or Path("output") / f"{design.stem}-{edition.value}{slug}.html"
    if target.suffix.lower() != ".html":
        raise typer.BadParameter(wrong_ending(target, [".html"]))
    book = _untranslated(design, units, edition.value, hands)
    _refuse_problems(book, design, draft, Voice(language))
    voices = [Voice(each) for each in LOCALES]
    if edition is Edition.SALE:
        with speaking(ENGLISH):
            seller = brand_of(book.design, design, brand)
        copy = replace(book, branding=seller, buyer=sold_to[0].name)
        page = sold_companion(copy, voices, language.value, secret)
    else:
        page = companion_page(book, voices, language.value)
    write_whole(target, page.encode())
    typer.echo(target)
