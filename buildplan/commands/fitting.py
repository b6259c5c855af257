"""The command that finds a design for an outline."""

from __future__ import annotations

from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from buildplan.commands.app import app
from buildplan.commands.aside import answer, aside
from buildplan.commands.fit_search import (
    EffortName,
    FitWish,
    PreferenceName,
    fit_one,
    fit_side_by_side,
    seconds_of,
)
from buildplan.commands.options import IN_ENGLISH, LanguageOption, UnitsName
from buildplan.language.voice import Voice

if TYPE_CHECKING:
    from collections.abc import Sequence

    from buildplan.design.measures import Units
    from buildplan.fitting.outline import Outline


OutlineArgument = Annotated[
    str,
    typer.Argument(
        metavar="OUTLINE",
        help="An .svg file with a closed path, or several side by side; a .png or .jpg picture of "
        "drawings or cut-outs; "
        "letter:A and the like; or one of star (star-6), crescent, shield, arrow, drop, cloud, "
        "house, ring, rounded-square, leaf, fish, lightning.",
        show_default=False,
    ),
]
HeightOption = Annotated[
    str, typer.Option(help="How high the piece is to be: 150cm, 1.5m, 60in, 5ft.")
]
GaugesOption = Annotated[
    str | None,
    typer.Option(
        help="Gauges that links may be sized to: 8,6,5 in inches, or 20cm,15cm.",
        show_default="8,6,5, and for a ring or an O the one that makes the tube as wide",
    ),
]
UnitsOption = Annotated[
    UnitsName | None,
    typer.Option(help="Units of the file.", show_default="those of --height"),
]
PreferOption = Annotated[
    PreferenceName,
    typer.Option(help="Write the closest design, or the good one of fewest balloons."),
]
EffortOption = Annotated[
    EffortName, typer.Option(help="How many shapes are solved; the same on any machine.")
]
WithinOption = Annotated[
    str | None,
    typer.Option(
        help="End the search by the clock too, such as 30s: the best so far is written.",
        show_default=False,
    ),
]
WorkersOption = Annotated[
    int | None,
    typer.Option(min=1, help="Processes to work in.", show_default="one for each core"),
]
ClusterOption = Annotated[
    str | None,
    typer.Option(
        help="Address of a Dask scheduler to work on, such as tcp://127.0.0.1:8786.",
        show_default=False,
    ),
]
OutOption = Annotated[
    Path | None, typer.Option(help="Design file to write, a .yaml.", show_default=False)
]
PictureOption = Annotated[
    Path | None,
    typer.Option(
        help="Picture of the outline over the piece: .png, .pdf or .svg.", show_default=False
    ),
]
TakenOption = Annotated[
    Path | None,
    typer.Option(
        help="Where OUTLINE is a picture: a .png of what was taken of it.", show_default=False
    ),
]
PieceOption = Annotated[
    int | None,
    typer.Option(
        min=1,
        help="Of several outlines in OUTLINE this one alone, from the left.",
        show_default=False,
    ),
]


@app.command(name="fit")
def fit_design(
    outline: OutlineArgument,
    height: HeightOption = "150cm",
    gauges: GaugesOption = None,
    units: UnitsOption = None,
    prefer: PreferOption = PreferenceName.CLOSE,
    effort: EffortOption = EffortName.USUAL,
    within: WithinOption = None,
    workers: WorkersOption = None,
    cluster: ClusterOption = None,
    out: OutOption = None,
    picture: PictureOption = None,
    taken: TakenOption = None,
    piece: PieceOption = None,
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Find the piece whose solved shape comes closest to an outline: a tube, or a figure of cells.

    Several outlines of one drawing become a design each, and one that joins them side by side.
    Prints how close one design for each gauge comes; the one marked * is written. Ctrl-C ends the
    search with the best so far.
    """
    from buildplan.commands.files import asked
    from buildplan.fitting.sources import gauges_for, parse_gauges, parse_height, units_of
    from buildplan.fitting.workers import NoClusterError, working

    voice = Voice(language)
    _check_names(out, picture, taken, voice)
    height_m = asked(parse_height, height, voice, "--height")
    unit: Units = units_of(height) if units is None else "cm" if units == "cm" else "in"
    given = (
        None
        if gauges is None
        else asked(partial(parse_gauges, units=unit), gauges, voice, "--gauges")
    )
    if within is not None:
        asked(seconds_of, within, voice, "--within")
    asked_for = (unit, prefer, effort, within, out, picture)
    wishes = [
        FitWish(one, given or gauges_for(one, unit), _of_figures(given, unit), *asked_for)
        for one in _outlines(outline, height_m, piece, taken, voice)
    ]
    try:
        with working(workers, cluster):
            if len(wishes) == 1:
                fit_one(wishes[0], voice)
            else:
                fit_side_by_side(wishes, voice)
    except NoClusterError as error:
        raise _cannot_be_worked_on(str(cluster), voice) from error


def _of_figures(given: Sequence[float] | None, unit: Units) -> Sequence[float]:
    """Gauges of figures: the finest of those that were given, or the usual ones."""
    from buildplan.fitting.fitting import FINEST
    from buildplan.fitting.sources import FIGURE_GAUGES

    return sorted(given)[:FINEST] if given else FIGURE_GAUGES[unit]


def _cannot_be_worked_on(address: str, voice: Voice) -> typer.BadParameter:
    return typer.BadParameter(
        voice.say(
            "the cluster at {address} cannot be worked on; is its scheduler running, "
            "and is dask installed (pip install 'buildplan[cluster]')?",
            address=address,
        )
    )


def _check_names(out: Path | None, picture: Path | None, taken: Path | None, voice: Voice) -> None:
    from buildplan.commands.files import refuse_ending
    from buildplan.drawing.forms import FORMS

    refuse_ending(out, (".yaml", ".yml"), voice)
    refuse_ending(picture, tuple(FORMS), voice)
    refuse_ending(taken, (".png",), voice)


def _outlines(
    source: str, height_m: float, piece: int | None, taken: Path | None, voice: Voice
) -> tuple[Outline, ...]:
    """The outlines that are named, or the one of them that was asked for; of a picture, what was
    taken of it is drawn too."""
    from buildplan.commands.files import asked, unreadable, write_whole
    from buildplan.fitting.photo_outline import PHOTOS, silhouettes_in, taken_picture
    from buildplan.fitting.sources import piece_by_number, read_outlines

    def read(text: str) -> tuple[Outline, ...]:
        if piece is None:
            return read_outlines(text, height_m, voice)
        return (piece_by_number(text, piece, height_m),)

    if taken is not None and Path(source).suffix.lower() not in PHOTOS:
        raise typer.BadParameter(
            voice.say("--taken goes with a picture: a .png or .jpg as the outline")
        )
    try:
        wanted = asked(read, source, voice)
        drawn = b"" if taken is None else taken_picture(silhouettes_in(Path(source)))
    except OSError as error:
        raise typer.BadParameter(unreadable(source, error, voice)) from error
    if taken is not None:
        write_whole(taken, drawn)
        answer(taken)
    if len(wanted) > 1:
        words = voice.say(
            "{file} shows {count} outlines: a design each, and one that joins them; --piece 1 "
            "takes the first from the left alone",
            file=source,
            count=len(wanted),
        )
        aside(words)
    return wanted
