"""The commands that check a design, and tell what a file of one may hold."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from buildplan.commands.app import app
from buildplan.commands.aside import answer, answer_data, aside
from buildplan.commands.options import (
    FLAG,
    IN_ENGLISH,
    DesignArgument,
    DoorOption,
    HandsOption,
    JsonOption,
    LanguageOption,
)
from buildplan.language.voice import Voice
from buildplan.source.problems import DesignProblemsError, problem_as_data

if TYPE_CHECKING:
    from buildplan.commands.watching import Glance
    from buildplan.evaluation.evaluating import Evaluation

CHARTS = (".svg", ".pdf", ".png")

GustOption = Annotated[
    str | None,
    typer.Option(help="A gust that ballast is to hold: 25km/h, 15mph or 7m/s.", show_default=False),
]
WatchOption = Annotated[
    bool,
    typer.Option(
        "--watch",
        metavar=FLAG,
        help="Look again at each save, and draw a preview; Ctrl-C ends it.",
    ),
]
ChartOption = Annotated[
    Path | None,
    typer.Option(
        help="Draw height against gauge, and ballast against gust: .svg, .pdf or .png.",
        show_default=False,
    ),
]
JointsOption = Annotated[
    bool,
    typer.Option(
        "--joints",
        metavar=FLAG,
        help="List the joints of each part, by where they are: what ties are written with.",
    ),
]
WriteOption = Annotated[
    bool,
    typer.Option(
        "--write",
        metavar=FLAG,
        help="Write the ties that `on` and `between` stand for into the file in their place.",
    ),
]
WhyOption = Annotated[
    list[str] | None,
    typer.Option(
        help="Say which numbers of the craft a figure rests on most, with their shares: height, "
        "width, depth, weight, tip, sag, wind, reach, air, pump or minutes.",
        show_default=False,
    ),
]


@app.command()
def check(
    design: DesignArgument,
    as_json: JsonOption = False,
    gust: GustOption = None,
    watch: WatchOption = False,
    chart: ChartOption = None,
    joints: JointsOption = False,
    write: WriteOption = False,
    door: DoorOption = None,
    why: WhyOption = None,
    hands: HandsOption = None,
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Count the balloons, find the shape, and say whether it closes and stands.

    With --door, also whether the finished piece goes through, and how it is turned for it.
    """
    from buildplan.commands.files import ProblemsFoundError, asked, refuse_ending
    from buildplan.commands.pieces import checked_piece, reasons_of
    from buildplan.evaluation.passing import parse_door
    from buildplan.fitting.check_report import check_report
    from buildplan.fitting.checking import checked_as_json
    from buildplan.hands.why_words import parse_figure, why_as_data, why_lines
    from buildplan.hands.words import height_lines

    voice = Voice(language)
    refuse_ending(chart, CHARTS, voice)
    if watch:
        if as_json or gust is not None or door:
            raise typer.BadParameter(voice.say("--watch goes without --json, --gust and --door"))
        _watch(design, voice)
        return
    if as_json and joints:
        raise typer.BadParameter(voice.say("--joints goes without --json"))
    doors = [asked(parse_door, one, voice, "--door") for one in door or ()]
    figures = [asked(parse_figure, one, voice, "--why") for one in why or ()]
    found = checked_piece(design, _examined(design, gust, hands, as_json, voice), voice, hands)
    piece = found.piece
    reasons = reasons_of(piece, figures, voice)
    if as_json:
        data = checked_as_json(found, voice, doors)
        asked_for = {"why": [why_as_data(one) for one in reasons]} if figures else {}
        answer_data(data | asked_for)
    else:
        height = list(height_lines(found.known, piece, voice))
        answer(check_report(piece, voice, height, doors, found.stiffer))
        for one in reasons:
            answer("\n" + "\n".join(why_lines(one, piece.units, voice)))
    if joints:
        _list_joints(piece, voice)
    if write:
        _write_ties(design, voice)
    if chart is not None:
        _draw_chart(piece, design, chart, voice)
    if piece.facts.problems:
        raise ProblemsFoundError


def _examined(
    design: Path, gust: str | None, hands: Path | None, as_json: bool, voice: Voice
) -> Evaluation:
    """The piece; where its file has problems that nothing can be worked out for, they end the
    command, as plain data where that was asked for."""
    from buildplan.commands.files import ProblemsFoundError, asked
    from buildplan.commands.pieces import evaluation_of, tried
    from buildplan.design.measures import parse_speed

    gust_m_per_s = asked(parse_speed, gust, voice, "--gust") if gust is not None else None
    try:
        return evaluation_of(design, voice, gust_m_per_s, hands)
    except DesignProblemsError as error:
        problems = tried(design, error.problems, voice)
        if not as_json:
            raise DesignProblemsError(error.file, problems, error.name) from None
        listed = [problem_as_data(problem, voice, str(design)) for problem in problems]
        answer_data({"name": error.name, "problems": listed})
        raise ProblemsFoundError from error


def _list_joints(piece: Evaluation, voice: Voice) -> None:
    """The joints of each part, by where they are."""
    from buildplan.commands.joint_report import joint_lines
    from buildplan.evaluation.joint_places import joint_places

    answer("\n" + "\n".join(joint_lines(joint_places(piece), voice)))


def _write_ties(design: Path, voice: Voice) -> None:
    """The ties that are worked out, written into the design file."""
    from buildplan.commands.files import write_whole
    from buildplan.design.reading import read_design
    from buildplan.evaluation.seating import seated
    from buildplan.fitting.checking import file_data
    from buildplan.fitting.written_ties import written_ties
    from buildplan.shape.constants import CONSTANTS
    from buildplan.source.file_changes import changed_text
    from buildplan.source.file_text import text_of
    from buildplan.source.whole_files import alone_in

    text, data = file_data(design)
    changes = written_ties(data, seated(read_design(design, CONSTANTS)).ties)
    if not changes:
        words = voice.say("{file}: all its ties are written out", file=str(design))
        aside(words)
        return
    made, kept = changed_text(text, changes)
    lost = "" if kept else f"# {voice.say('Its comments could not be kept.')}\n"
    with alone_in(design.parent):
        if text_of(design) != text:  # by an editor or a desk, while the ties were worked out
            words = voice.say(
                "{file} was changed meanwhile: nothing was written; run this again",
                file=str(design),
            )
            aside(words)
            raise typer.Exit(2)
        write_whole(design, f"{lost}{made}".encode())
    answer(design)


def _draw_chart(piece: Evaluation, design: Path, target: Path, voice: Voice) -> None:
    from buildplan.business.copies.brand import fonts_of_designs
    from buildplan.business.signs import signs_told_in_place
    from buildplan.commands.files import write_whole
    from buildplan.drawing.charts import FORMS, check_chart
    from buildplan.drawing.typeset.font_files import with_fonts

    fonts = fonts_of_designs([(piece.design, design)])
    with with_fonts(fonts), signs_told_in_place([design]):
        chart = check_chart(piece, FORMS[target.suffix.lower()], voice)
    write_whole(target, chart)
    answer(target, err=True)


def _watch(design: Path, voice: Voice) -> None:
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
        answer("\n".join([*seen.lines, f"  {preview}" if seen.picture else ""]).rstrip())

    try:
        watch_design(design, saves(design), show, voice, CONSTANTS)
    except KeyboardInterrupt:
        answer("")


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
    answer_data(chosen)
