"""Commands about one's own hands: what to measure, and learning from it."""

from __future__ import annotations

from dataclasses import replace
from os.path import exists
from pathlib import Path
from typing import Annotated

import typer

from buildplan.commands.app import app
from buildplan.commands.aside import answer, aside
from buildplan.commands.files import write_whole
from buildplan.commands.logs import keep_what_is_measured, measured_in
from buildplan.commands.options import (
    IN_ENGLISH,
    DesignArgument,
    LanguageOption,
    PaperName,
    PaperOption,
)
from buildplan.commands.pieces import bare_evaluation
from buildplan.language.voice import Voice


@app.command()
def measure(
    design: DesignArgument,
    out: Annotated[
        Path | None,
        typer.Option(help="CSV file to write; else it is printed.", show_default=False),
    ] = None,
    pdf: Annotated[
        Path | None,
        typer.Option(help="Write a page with boxes to write in too.", show_default=False),
    ] = None,
    paper: PaperOption = PaperName.A4,
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Print the sheet of what to measure while a design is built, for `learn`.

    Fill in the last column of what you measured; the rest may stay empty. With --pdf it is a page
    for the workshop, whose numbers are then copied into the CSV file.
    """
    from buildplan.booklet.office.measure_page import print_sheet
    from buildplan.business.copies.brand import fonts_of_designs
    from buildplan.business.signs import signs_told_in_place
    from buildplan.commands.files import refuse_ending, write_whole
    from buildplan.design.measures import units_read
    from buildplan.document.paper import PAPERS
    from buildplan.drawing.typeset.font_files import with_fonts
    from buildplan.hands.sheet import sheet_rows
    from buildplan.source.csv_text import csv_bytes

    voice = Voice(language)
    refuse_ending(pdf, (".pdf",), voice)
    refuse_ending(out, (".csv",), voice)
    if out is not None:
        keep_what_is_measured(out, voice)
    piece = bare_evaluation(design, voice)
    piece = replace(piece, units=units_read(voice, piece.units))
    data = csv_bytes(sheet_rows(piece, design.name))
    if out is not None:
        write_whole(out, data)
        answer(out)
    elif pdf is None:
        typer.echo(data.decode("utf-8-sig"), nl=False)
    if pdf is not None:
        log = "log.csv" if out is None else out.name
        fonts = fonts_of_designs([(piece.design, design)])
        with with_fonts(fonts), signs_told_in_place([design]):
            page = print_sheet(piece, log, PAPERS[paper.value], voice)
        write_whole(pdf, page)
        answer(pdf)


@app.command()
def learn(
    log: Annotated[
        Path,
        typer.Argument(
            metavar="LOG.csv",
            help="A filled sheet of `measure`, or times: kind, count, minutes.",
            show_default=False,
        ),
    ],
    hands: Annotated[
        Path | None,
        typer.Option(
            help="The file that measurements gather in; else hands.yaml beside the log.",
            show_default=False,
        ),
    ] = None,
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Learn lengths, stiffness and minutes of your own hands from what you measured.

    Adds the measurements to hands.yaml; designs beside it are worked out with them from then on.
    """
    from buildplan.hands.file import gathered, hands_text, read_hands
    from buildplan.hands.learning import learn as learn_from
    from buildplan.hands.model import HANDS_FILE
    from buildplan.hands.words import learned_lines
    from buildplan.source.whole_files import alone_in

    voice = Voice(language)
    target = hands or log.parent / HANDS_FILE
    new = measured_in(log, voice)
    with alone_in(target.parent):
        before = read_hands(target) if exists(target) else ()
        known = gathered(before, new)
        write_whole(target, hands_text(known).encode())
    answer(target)
    repeated = len(before) + len(new) - len(known)
    if repeated:
        words = voice.say_count(
            "{number} measurement stood there already and is not counted twice",
            "{number} measurements stood there already and are not counted twice",
            repeated,
        )
        aside(words)
    answer("\n".join(learned_lines(learn_from(known), voice)))
