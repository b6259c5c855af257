"""Commands about buying and events."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from buildplan.commands.app import app
from buildplan.commands.aside import answer, aside
from buildplan.commands.options import (
    FLAG,
    IN_ENGLISH,
    OUTPUT,
    CsvOption,
    DesignsArgument,
    FolderOption,
    HandsOption,
    LanguageOption,
    PaperName,
    PaperOption,
)
from buildplan.language.voice import Voice

if TYPE_CHECKING:
    from buildplan.booklet.common.book import Book
    from buildplan.business.events.event_plan import Copy, EventPlan
    from buildplan.design.event import Event


@app.command()
def shopping(
    designs: DesignsArgument,
    csv: CsvOption = None,
    pdf: Annotated[
        Path | None, typer.Option(help="Write a page to tick off too.", show_default=False)
    ] = None,
    paper: Annotated[PaperName, typer.Option(help="Paper size of the page.")] = PaperName.A4,
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """List the balloons to buy for one design or several, in whole packs with spares.

    Balloons of one colour, kind and size are one line, whichever design they are for.
    """
    from buildplan.booklet.office.shopping_page import print_shopping
    from buildplan.business.buying.shopping import (
        ShoppedFor,
        shopping_lines,
        shopping_list,
        shopping_rows,
    )
    from buildplan.business.copies.brand import fonts_of_designs
    from buildplan.business.signs import signs_told_in_place
    from buildplan.commands.files import refuse_ending, without_events, write_whole
    from buildplan.commands.pieces import read_all
    from buildplan.design.building import build_framework
    from buildplan.design.measures import units_read
    from buildplan.document.paper import PAPERS
    from buildplan.drawing.typeset.font_files import with_fonts
    from buildplan.hands.reading import read_known
    from buildplan.source.csv_text import csv_bytes

    voice = Voice(language)
    refuse_ending(pdf, (".pdf",), voice)
    refuse_ending(csv, (".csv",), voice)
    read = read_all(without_events(designs, voice), read_known, voice)
    needed = [ShoppedFor(str(p), d, build_framework(d)) for p, d in read.items()]
    found = shopping_list(needed, units_read(voice, needed[0].design.units))
    if csv is not None:
        write_whole(csv, csv_bytes(shopping_rows(found, voice)))
    if pdf is not None:
        named = [(design, path) for path, design in read.items()]
        with with_fonts(fonts_of_designs(named)), signs_told_in_place(read):
            page = print_shopping(found, PAPERS[paper.value], voice)
        write_whole(pdf, page)
    answer("\n".join(shopping_lines(found, voice)))


@app.command()
def event(
    file: Annotated[
        Path, typer.Argument(metavar="EVENT", help="The event file.", show_default=False)
    ],
    paper: PaperOption = PaperName.A4,
    out: FolderOption = OUTPUT,
    draft: Annotated[
        bool,
        typer.Option("--draft", metavar=FLAG, help="Print even when a piece has problems."),
    ] = False,
    hands: HandsOption = None,
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Plan several designs at one event: shopping, the day, the load, taking down.

    Writes a PDF and a table of each list, and prints the path of each.
    """
    from buildplan.business.copies.brand import fonts_of_designs
    from buildplan.business.signs import signs_told_in_place
    from buildplan.commands.files import in_language, refuse_file_for_folder, write_whole
    from buildplan.design.event import EVENT_SUFFIX, read_event
    from buildplan.design.translating import translated_event
    from buildplan.drawing.typeset.font_files import with_fonts

    voice = Voice(language)
    refuse_file_for_folder(out, voice)
    asked = translated_event(read_event(file), voice.language)
    name = file.name.removesuffix(EVENT_SUFFIX).removesuffix(".yaml")
    plan = _plan(asked, file, paper, draft, hands, voice)
    paths = [file.parent / piece.design for piece in asked.designs]
    named = [(copy.book.design, paths[copy.design]) for copy in _each_once(plan)]
    with with_fonts(fonts_of_designs(named)), signs_told_in_place([file, *paths]):
        printed = _printed(plan, paper, voice)
    for what, ending, data in printed:
        written = out / f"{in_language(f'{name}-{what}', voice)}{ending}"
        write_whole(written, data)
        answer(written)


def _plan(
    asked: Event, file: Path, paper: PaperName, draft: bool, hands: Path | None, voice: Voice
) -> EventPlan:
    """The plan of an event, unless its pieces have problems or cannot be built from their steps."""
    from buildplan.business.events.event_plan import event_shopping, plan_event
    from buildplan.commands.files import ProblemsFoundError
    from buildplan.commands.pieces import book_of, read_all
    from buildplan.commands.rebuilding import rebuilds
    from buildplan.evaluation.expected_time import seconds_to_tell
    from buildplan.hands.reading import read_known

    paths = [file.parent / piece.design for piece in asked.designs]
    read = read_all(paths, partial(read_known, hands=hands), voice)
    named = [(str(path), design) for path, design in read.items()]
    bought = event_shopping(asked, named, voice)
    books = [
        book_of(path, voice, paper.value, edition="crew", hands=hands, seconds=seconds_to_tell)
        for path in paths
    ]
    _refuse_problems(file, paths, books, draft, voice)
    plan = plan_event(asked, books, bought, voice)
    built = [rebuilds(paths[one.design], one.book, one.words, voice) for one in _each_once(plan)]
    if not all(built):
        raise ProblemsFoundError
    return plan


def _each_once(plan: EventPlan) -> Iterator[Copy]:
    """The first copy of each piece: the words of the others are its own."""
    return (copy for copy in plan.copies if copy.number == 1)


def _refuse_problems(
    file: Path, paths: Sequence[Path], books: Sequence[Book], draft: bool, voice: Voice
) -> None:
    """List the problems of all pieces; they end the command unless a draft was asked for."""
    from buildplan.commands.files import ProblemsFoundError, list_problems

    for path, book in zip(paths, books, strict=True):
        list_problems(path, book.facts.problems, voice)
    if any(book.facts.problems for book in books) and not draft:
        words = voice.say(
            "{file}: nothing printed; mend the pieces, or print with --draft", file=str(file)
        )
        aside(words)
        raise ProblemsFoundError


def _printed(plan: EventPlan, paper: PaperName, voice: Voice) -> tuple[tuple[str, str, bytes], ...]:
    """What is written of an event: what it is, the ending of its name, and its bytes."""
    from buildplan.booklet.office.event_booklet import event_tables, print_event
    from buildplan.document.paper import PAPERS

    page = print_event(plan, PAPERS[paper.value], voice)
    tables = event_tables(plan, voice).items()
    return (
        (f"event-{paper.value}", ".pdf", page),
        *((what, ".csv", table) for what, table in tables),
    )
