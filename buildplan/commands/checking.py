"""Commands that check a design and tell its steps and times."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from buildplan.commands.app import (
    FLAG,
    IN_ENGLISH,
    DesignArgument,
    HandsOption,
    JsonOption,
    LanguageOption,
    app,
    errors,
)
from buildplan.design.measures import parse_speed
from buildplan.language.speaking import say, spoken_voice
from buildplan.language.voice import Voice
from buildplan.source.problems import DesignProblemsError, problem_as_data

if TYPE_CHECKING:
    from buildplan.commands.watching import Glance
    from buildplan.evaluation.evaluating import Evaluation


@app.command()
def check(
    design: DesignArgument,
    as_json: JsonOption = False,
    gust: Annotated[
        str | None,
        typer.Option(
            help="A gust that ballast is to hold: 25km/h, 15mph or 7m/s.", show_default=False
        ),
    ] = None,
    watch: Annotated[
        bool,
        typer.Option(
            "--watch",
            metavar=FLAG,
            help="Look again at each save, and draw a preview; Ctrl-C ends it.",
        ),
    ] = False,
    chart: Annotated[
        Path | None,
        typer.Option(
            help="Draw height against gauge, and ballast against gust: .svg, .pdf or .png.",
            show_default=False,
        ),
    ] = None,
    hands: HandsOption = None,
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Count the balloons, find the shape, and say whether it closes and stands."""
    from buildplan.commands.check_report import check_report
    from buildplan.commands.files import (
        ProblemsFoundError,
        asked,
        evaluation_of,
        measured_by,
        tried,
        wrong_ending,
    )
    from buildplan.evaluation.facts import examination_as_json, facts_as_json
    from buildplan.hands.applying import learned_for
    from buildplan.hands.forecast import forecast, height_of
    from buildplan.hands.words import height_lines
    from buildplan.shape.constants import constants_with
    from buildplan.shape.stiffness import stiffening_brace

    if chart is not None and chart.suffix.lower() not in (".svg", ".pdf", ".png"):
        raise typer.BadParameter(wrong_ending(chart, [".svg", ".pdf", ".png"]))
    if watch:
        if as_json or gust is not None:
            raise typer.BadParameter(say("--watch goes without --json and --gust"))
        _watch(design)
        return
    gust_m_per_s = asked(parse_speed, gust) if gust is not None else None
    try:
        piece = evaluation_of(design, gust_m_per_s=gust_m_per_s, hands=hands)
    except DesignProblemsError as error:
        problems = tried(design, error.problems)
        if not as_json:
            raise DesignProblemsError(error.file, problems, error.name) from None
        listed = [problem_as_data(p, spoken_voice(), str(design)) for p in problems]
        typer.echo(json.dumps({"name": error.name, "problems": listed}, indent=2))
        raise ProblemsFoundError from error
    piece = replace(piece, facts=replace(piece.facts, problems=tried(design, piece.facts.problems)))
    known = learned_for(piece.design, measured_by(design, hands))
    if as_json:
        constants = constants_with(piece.design.constants)
        extra = stiffening_brace(piece.framework, piece.shape, constants)
        facts = facts_as_json(piece.facts, spoken_voice()) | examination_as_json(
            piece.examination, extra, spoken_voice()
        )
        tall = forecast(known.taken_for_granted, height_of(piece))
        facts["height_range_m"] = [round(tall.low_m, 4), round(tall.high_m, 4)]
        typer.echo(json.dumps(facts, indent=2, ensure_ascii=False))
    else:
        typer.echo(check_report(piece, list(height_lines(known, piece, spoken_voice()))))
    if chart is not None:
        _draw_chart(piece, chart, Voice(language))
    if piece.facts.problems:
        raise ProblemsFoundError


def _draw_chart(piece: Evaluation, target: Path, voice: Voice) -> None:
    from buildplan.commands.files import write_whole
    from buildplan.drawing.charts import FORMS, check_chart

    write_whole(target, check_chart(piece, FORMS[target.suffix.lower()], voice))
    typer.echo(target, err=True)


def _watch(design: Path) -> None:
    """Show the design at each save until Ctrl-C."""
    from buildplan.commands.files import write_whole
    from buildplan.commands.watching import preview_path, saves
    from buildplan.commands.watching import watch as watch_design
    from buildplan.drawing.png import picture_png
    from buildplan.shape.constants import CONSTANTS

    preview = preview_path(design)

    def show(seen: Glance) -> None:
        if seen.picture is not None:
            write_whole(preview, picture_png(seen.picture))
        typer.echo("\n".join([*seen.lines, f"  {preview}" if seen.picture else ""]).rstrip())

    try:
        watch_design(design, saves(design), show, CONSTANTS)
    except KeyboardInterrupt:
        typer.echo("")


@app.command()
def steps(
    design: DesignArgument,
    as_json: JsonOption = False,
    crew: Annotated[
        int | None,
        typer.Option(
            min=1, max=100, help="Share the work among so many people.", show_default=False
        ),
    ] = None,
    inflate_only: Annotated[
        int, typer.Option(min=0, help="How many of them cannot tie, only inflate.")
    ] = 0,
    on_site: Annotated[
        bool,
        typer.Option(
            "--on-site",
            metavar=FLAG,
            help="Nothing is made beforehand in the workshop.",
        ),
    ] = False,
    opening: Annotated[
        datetime | None,
        typer.Option(
            formats=["%Y-%m-%dT%H:%M", "%Y-%m-%d %H:%M"],
            help="When it must stand; says when to start at the latest.",
            show_default=False,
        ),
    ] = None,
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """List the steps of the work in order, each with what it adds and a count to check.

    With --crew, also who does what when, who waits for whom, and the longest way through.
    """
    from buildplan.commands.check_report import steps_report
    from buildplan.commands.files import asked, evaluation_of
    from buildplan.instructions.exchange import told_as_json
    from buildplan.instructions.telling import tell_steps
    from buildplan.instructions.timetables import start_lines, steps_with_times, timetable_lines
    from buildplan.sequence.timetable import crew_of, latest_starts, timetable

    piece, voice = evaluation_of(design), spoken_voice()
    words = tell_steps(piece.steps, piece.framework, piece.units, voice)
    planned = None
    if crew is not None:
        people = asked(lambda text: crew_of(int(text), inflate_only), str(crew))
        minutes = {str(kind): value for kind, value in piece.design.labour.items()}
        planned = timetable(piece.steps, people, minutes, in_workshop=not on_site)
    if as_json:
        listed = told_as_json(piece.steps, words)
        if planned is not None:
            listed = steps_with_times(listed, planned, voice)
        typer.echo(json.dumps(listed, indent=2, ensure_ascii=False))
        return
    typer.echo(steps_report(piece.steps, words, voice))
    if planned is not None:
        typer.echo("\n" + "\n".join(timetable_lines(voice, planned)))
        if opening is not None:
            typer.echo("\n" + "\n".join(start_lines(voice, latest_starts(planned, opening))))


@app.command()
def times(
    log: Annotated[
        Path, typer.Argument(metavar="LOG.csv", help="Your own times: kind, count, minutes.")
    ],
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Learn minutes for each kind of work from a log of your own times.

    Prints a `labour` block to paste into a design file.
    """
    from buildplan.commands.files import ProblemsFoundError
    from buildplan.instructions.timetables import labour_lines
    from buildplan.sequence.time_log import TimeLogError, learn_minutes

    try:
        learned = learn_minutes(log.read_text("utf-8"))
    except (OSError, UnicodeDecodeError) as error:
        raise typer.BadParameter(
            say("{file} cannot be read: {error}", file=str(log), error=str(error))
        ) from error
    except TimeLogError as error:
        for mistake in error.mistakes:
            errors.print(f"{log}: {spoken_voice().tell(mistake)}", markup=False)
        raise ProblemsFoundError from error
    typer.echo("\n".join(labour_lines(spoken_voice(), learned)))


@app.command()
def schema(
    event: Annotated[
        bool,
        typer.Option(
            "--event",
            metavar=FLAG,
            help="Of event files, not designs.",
        ),
    ] = False,
) -> None:
    """Print the JSON Schema of the design file, for editors that complete and check it."""
    from buildplan.design.schema import design_schema, event_schema

    chosen = event_schema() if event else design_schema()
    typer.echo(json.dumps(chosen, indent=2, ensure_ascii=False))
