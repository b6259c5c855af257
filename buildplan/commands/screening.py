"""Commands that put a piece on a screen: its data, its 3D model, its companion page."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from buildplan.commands.app import app
from buildplan.commands.aside import answer, aside
from buildplan.commands.options import (
    FLAG,
    IN_ENGLISH,
    OUTPUT,
    DesignArgument,
    Edition,
    HandsOption,
    LanguageOption,
    UnitsName,
    UnitsOption,
)
from buildplan.commands.sale import BrandOption, BuyerOption, KeyOption
from buildplan.language.voice import ENGLISH, LOCALES, Voice

if TYPE_CHECKING:
    from buildplan.booklet.common.book import Book

DraftOption = Annotated[
    bool, typer.Option("--draft", metavar=FLAG, help="Write even a piece that has problems.")
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
    draft: DraftOption = False,
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Write a piece as data for other programs, or as a 3D model (glTF) for a phone's viewer.

    Prints the path it wrote. The data are in the form of buildplan/screen/piece.schema.json, with
    the steps' words in every language.
    """
    from buildplan.commands.files import refuse_ending, write_whole
    from buildplan.screen.gather import gather_piece
    from buildplan.screen.gltf import piece_glb
    from buildplan.screen.model import piece_json

    voice = Voice(language)
    target = out or Path(f"{design.stem}.json")
    refuse_ending(target, (".json", ".glb"), voice)
    book = _untranslated(design, units, "training", hands)
    voices = [Voice(each) for each in LOCALES]
    _refuse(book, design, draft, voices, voice)
    piece = gather_piece(book, voices)
    data = piece_glb(piece) if target.suffix.lower() == ".glb" else piece_json(piece).encode()
    write_whole(target, data)
    answer(target)


def _untranslated(path: Path, units: UnitsName | None, edition: str, hands: Path | None) -> Book:
    """The design as its file says it: what is written holds every language."""
    from buildplan.commands.pieces import book_of

    return book_of(path, Voice(ENGLISH), units=units, edition=edition, hands=hands)


def _refuse(book: Book, path: Path, draft: bool, voices: Sequence[Voice], voice: Voice) -> None:
    """List the problems of a piece; they end the command unless a draft was asked for. What cannot
    be built from ends it in any case."""
    from buildplan.commands.files import ProblemsFoundError, list_problems
    from buildplan.commands.rebuilding import rebuilds_in_every_language

    list_problems(path, book.facts.problems, voice)
    if book.facts.problems and not draft:
        words = voice.say("{file}: nothing written; mend it, or add --draft", file=str(path))
        aside(words)
        raise ProblemsFoundError
    if not rebuilds_in_every_language(path, book, voices, voice):
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
    draft: DraftOption = False,
    brand: BrandOption = None,
    buyer: BuyerOption = None,
    key: KeyOption = None,
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Write a page for phones that shows the build in 3D, step by step, without a network.

    One .html file that holds everything; it opens from a file and asks the network for nothing.
    All languages are in it, and it opens in the one that is asked for. Prints the path it wrote.
    """
    from buildplan.commands.files import refuse_ending, write_whole
    from buildplan.commands.pieces import brand_of
    from buildplan.commands.sale import buyers_named, refuse_for_other_editions, secret_of
    from buildplan.design.measures import units_read
    from buildplan.screen.page import companion as companion_page
    from buildplan.screen.sold import sold_companion

    voice = Voice(language)
    for_sale = {"--brand": brand, "--for": buyer, "--key": key}
    refuse_for_other_editions(edition, Edition.SALE, for_sale, voice)
    (sold_to,), _ = buyers_named(buyer, None, voice)
    secret = secret_of(key, voice)
    stem = sold_to.file_stem(f"{design.stem}-{edition.value}")
    target = out or OUTPUT / f"{stem}.html"
    refuse_ending(target, (".html",), voice)
    if units is None and units_read(voice, "in") == "cm":
        units = UnitsName.CENTIMETRES
    book = _untranslated(design, units, edition.value, hands)
    voices = [Voice(each) for each in LOCALES]
    _refuse(book, design, draft, voices, voice)
    if edition is Edition.SALE:
        seller = brand_of(book.design, design, brand, Voice(ENGLISH))
        copy = replace(book, branding=seller, buyer=sold_to.name)
        page = sold_companion(copy, voices, language.value, secret)
    else:
        page = companion_page(book, voices, language.value)
    write_whole(target, page.encode())
    answer(target)
