"""Commands about buying, pricing and events."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from buildplan.commands.app import (
    FLAG,
    IN_ENGLISH,
    DesignsArgument,
    LanguageOption,
    PaperName,
    app,
    errors,
)
from buildplan.language.speaking import say, spoken, spoken_voice

CsvOption = Annotated[
    Path | None,
    typer.Option("--csv", help="Write a table for spreadsheets too.", show_default=False),
]


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
    from buildplan.business.buying.csv_text import csv_bytes
    from buildplan.business.buying.shopping import (
        Asked,
        shopping_lines,
        shopping_list,
        shopping_rows,
    )
    from buildplan.commands.files import read_all, read_known, without_events, write_whole
    from buildplan.design.building import build_framework
    from buildplan.document.paper import PAPERS

    read = read_all(without_events(designs), read_known)
    found = shopping_list([Asked(str(p), d, build_framework(d)) for p, d in read.items()])
    if csv is not None:
        write_whole(csv, csv_bytes(shopping_rows(found, spoken_voice())))
    if pdf is not None:
        write_whole(pdf, print_shopping(found, PAPERS[paper.value]))
    typer.echo("\n".join(shopping_lines(found, spoken_voice())))


@app.command()
def event(
    file: Annotated[
        Path, typer.Argument(metavar="EVENT", help="The event file.", show_default=False)
    ],
    paper: Annotated[PaperName, typer.Option(help="Paper size.")] = PaperName.A4,
    out: Annotated[Path, typer.Option(help="Folder to write to; made if it is not there.")] = Path(
        "output"
    ),
    draft: Annotated[
        bool,
        typer.Option(
            "--draft",
            metavar=FLAG,
            help="Print even when a piece has problems.",
        ),
    ] = False,
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Plan several designs at one event: one shopping list, one timetable, one load list.

    Writes a PDF and a table of each list, and prints the path of each.
    """
    from buildplan.booklet.office.event_booklet import print_event
    from buildplan.booklet.office.event_load import load_rows
    from buildplan.booklet.office.event_times import timetable_rows
    from buildplan.business.buying.csv_text import csv_bytes
    from buildplan.business.buying.shopping import Asked, shopping_list, shopping_rows
    from buildplan.business.events.event_plan import plan_event
    from buildplan.commands.files import (
        ProblemsFoundError,
        book_of,
        in_language,
        list_problems,
        read_all,
        read_known,
        write_whole,
    )
    from buildplan.design.building import build_framework
    from buildplan.design.event import EVENT_SUFFIX, read_event
    from buildplan.design.translating import translated_event
    from buildplan.document.paper import PAPERS

    asked = translated_event(read_event(file), spoken())
    paths = [file.parent / piece.design for piece in asked.designs]
    read = read_all(paths, read_known)
    needed = [
        Asked(str(path), design, build_framework(design), piece.count)
        for (path, design), piece in zip(read.items(), asked.designs, strict=True)
    ]
    found = shopping_list(needed)
    books = [book_of(path, paper.value, edition="crew") for path in paths]
    if any(book.facts.problems for book in books):
        for path, book in zip(paths, books, strict=True):
            list_problems(path, book.facts.problems)
        if not draft:
            words = say(
                "{file}: nothing printed; mend the pieces, or print with --draft", file=str(file)
            )
            errors.print(words, markup=False)
            raise ProblemsFoundError
    plan = plan_event(asked, books, found)
    name = file.name.removesuffix(EVENT_SUFFIX).removesuffix(".yaml")
    for what, ending, data in (
        (f"event-{paper.value}", ".pdf", print_event(plan, PAPERS[paper.value])),
        ("shopping", ".csv", csv_bytes(shopping_rows(found, spoken_voice()))),
        ("timetable", ".csv", csv_bytes(timetable_rows(plan))),
        ("load", ".csv", csv_bytes(load_rows(plan))),
    ):
        written = out / f"{in_language(f'{name}-{what}')}{ending}"
        write_whole(written, data)
        typer.echo(written)
