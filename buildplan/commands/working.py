"""Commands that tell the steps of the work and how long each kind of it takes."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from buildplan.commands.app import app
from buildplan.commands.aside import answer, answer_data, aside
from buildplan.commands.options import (
    FLAG,
    IN_ENGLISH,
    DesignArgument,
    HandsOption,
    JsonOption,
    LanguageOption,
)
from buildplan.language.voice import Voice

if TYPE_CHECKING:
    from buildplan.evaluation.evaluating import Evaluation
    from buildplan.sequence.timetable import Timetable

CrewOption = Annotated[
    int | None,
    typer.Option(min=1, max=100, help="Share the work among so many people.", show_default=False),
]
InflateOnlyOption = Annotated[
    int, typer.Option(min=0, help="How many of them cannot tie, only inflate.")
]
OnSiteOption = Annotated[
    bool,
    typer.Option("--on-site", metavar=FLAG, help="Nothing is made beforehand in the workshop."),
]
FIRST_YEAR, LAST_YEAR = 1900, 2199
OpeningOption = Annotated[
    str,
    typer.Option(
        metavar="DAY TIME",
        help="When it must stand, such as '2027-05-08 10:00'; says when to start at the latest.",
        show_default=False,
    ),
]


@app.command()
def steps(
    design: DesignArgument,
    as_json: JsonOption = False,
    crew: CrewOption = None,
    inflate_only: InflateOnlyOption = 0,
    on_site: OnSiteOption = False,
    opening: OpeningOption = "",
    hands: HandsOption = None,
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """List the steps of the work in order, each with what it adds and a count to check.

    With --crew, also who does what when, who waits for whom, and the longest way through.
    """
    from buildplan.commands.pieces import evaluation_of
    from buildplan.commands.steps_report import steps_report
    from buildplan.evaluation.told_figures import told_figures
    from buildplan.instructions.exchange import told_as_json
    from buildplan.instructions.telling import tell_steps
    from buildplan.instructions.timetables import start_lines, steps_with_times, timetable_lines
    from buildplan.sequence.timetable import latest_starts

    voice = Voice(language)
    stands_at = _moment(opening, voice)
    piece = evaluation_of(design, voice, hands=hands)
    figures = told_figures(piece.framework, piece.shape, piece.units, piece.constants)
    words = tell_steps(piece.steps, piece.framework, piece.units, voice, figures)
    planned = None
    if crew is not None:
        planned = _planned(piece, crew, inflate_only, on_site, voice)
    if as_json:
        listed = told_as_json(piece.steps, words)
        if planned is not None:
            listed = steps_with_times(listed, planned, voice)
        answer_data(listed)
        return
    answer(steps_report(piece.framework, piece.steps, words, voice))
    if planned is not None:
        answer("\n" + "\n".join(timetable_lines(voice, planned)))
        if stands_at is not None:
            answer("\n" + "\n".join(start_lines(voice, latest_starts(planned, stands_at))))


def _moment(text: str, voice: Voice) -> datetime | None:
    """The day and time that a user gave, if any; a wrong call where it is none."""
    if not text:
        return None
    try:
        moment = datetime.strptime(text.strip().replace("T", " "), "%Y-%m-%d %H:%M")
    except ValueError:
        moment = datetime.min
    if not FIRST_YEAR <= moment.year <= LAST_YEAR:
        raise typer.BadParameter(
            voice.say(
                "--opening is a day and a time, such as {example}, not {given}",
                example="2027-05-08 10:00",
                given=text,
            )
        )
    return moment


def _planned(
    piece: Evaluation, people: int, inflate_only: int, on_site: bool, voice: Voice
) -> Timetable:
    """Who does what when, by so many people."""
    from buildplan.commands.files import asked
    from buildplan.sequence.timetable import crew_of, timetable

    crew = asked(lambda count: crew_of(count, inflate_only), people, voice, "--crew")
    minutes = {str(kind): value for kind, value in piece.design.labour.items()}
    return timetable(piece.steps, crew, minutes, in_workshop=not on_site)


@app.command()
def times(
    log: Annotated[
        Path,
        typer.Argument(
            metavar="LOG.csv", help="Your own times: kind, count, minutes (hours, seconds)."
        ),
    ],
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Tell your own minutes for each kind of work, from a log of times or a filled sheet.

    Prints a `labour` block to paste into one design file; `buildplan learn LOG.csv` keeps them for
    every design beside the log. Commas or semicolons, decimal points or decimal commas will do.
    """
    from buildplan.commands.files import ProblemsFoundError
    from buildplan.commands.logs import measured_in
    from buildplan.hands.log import minutes_learned
    from buildplan.instructions.timetables import labour_lines

    voice = Voice(language)
    learned = minutes_learned(measured_in(log, voice))
    if not learned:
        aside(voice.say("{file}: no times are in it", file=str(log)))
        raise ProblemsFoundError
    answer("\n".join(labour_lines(voice, learned)))
    words = voice.say(
        "minutes; buildplan learn {file} keeps them for all designs beside it", file=str(log)
    )
    answer(f"# {words}")
