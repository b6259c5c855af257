"""The command that finds a design for an outline."""

from __future__ import annotations

import re
import time
from dataclasses import dataclass, replace
from enum import StrEnum
from pathlib import Path
from string import ascii_lowercase
from typing import TYPE_CHECKING, Annotated

import typer

from buildplan.commands.app import app, errors
from buildplan.commands.options import IN_ENGLISH, LanguageOption, UnitsName
from buildplan.language.voice import Voice

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from buildplan.design.measures import Units
    from buildplan.fitting.candidates import Progress
    from buildplan.fitting.effort import Effort
    from buildplan.fitting.fit import Fit
    from buildplan.fitting.outline import Outline


class EffortName(StrEnum):
    """How hard it is looked for: those of `fitting.effort.EFFORTS`."""

    QUICK = "quick"
    USUAL = "usual"
    LONG = "long"


class PreferenceName(StrEnum):
    """Which of the designs is written."""

    FEW = "few"
    CLOSE = "close"


OutlineArgument = Annotated[
    str,
    typer.Argument(
        metavar="OUTLINE",
        help="An .svg file with a closed path, or several side by side; a .png or .jpg picture of "
        "one drawing or cut-out; "
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


@dataclass(frozen=True)
class _FitWish:
    """What is asked of a fit, read and checked."""

    outline: Outline
    gauges: Sequence[float]
    units: Units
    prefer: PreferenceName
    effort: EffortName
    within: str | None
    out: Path | None
    picture: Path | None


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
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Find the tube whose solved shape comes closest to an outline.

    Several outlines of one drawing become a design each, and one that joins them side by side.
    Prints how close one design for each gauge comes; the one marked * is written. Ctrl-C ends the
    search with the best so far.
    """
    from buildplan.commands.files import asked
    from buildplan.fitting.sources import gauges_for, parse_gauges, parse_height, units_of
    from buildplan.fitting.workers import NoClusterError, working

    voice = Voice(language)
    _check_names(out, picture, taken, voice)
    height_m = asked(parse_height, height, voice)
    unit: Units = units_of(height) if units is None else "cm" if units == "cm" else "in"
    given = None if gauges is None else asked(lambda text: parse_gauges(text, unit), gauges, voice)
    if within is not None:
        asked(_seconds, within, voice)
    wishes = [
        _FitWish(one, given or gauges_for(one, unit), unit, prefer, effort, within, out, picture)
        for one in _outlines(outline, height_m, taken, voice)
    ]
    try:
        with working(workers, cluster):
            if len(wishes) == 1:
                _fit(wishes[0], voice)
            else:
                _fit_side_by_side(wishes, voice)
    except NoClusterError as error:
        raise typer.BadParameter(
            voice.say(
                "the cluster at {address} cannot be worked on ({why}); is its scheduler running, "
                "and is dask installed (pip install 'buildplan[cluster]')?",
                address=str(cluster),
                why=str(error),
            )
        ) from error


def _fit(wish: _FitWish, voice: Voice) -> None:
    """Search, print the choices, write the chosen one."""
    from buildplan.commands.files import ProblemsFoundError
    from buildplan.fitting.effort import EFFORTS
    from buildplan.fitting.fitting import recommended
    from buildplan.fitting.report import fit_report

    until = _until(wish)
    fits, clock = _searched(wish, until, voice)
    chosen = recommended(fits, wish.prefer.value)
    typer.echo(fit_report(fits, voice, wish.prefer.value))
    _write(chosen, wish, clock, voice)
    if not chosen.good:
        _tell_larger(chosen, min(wish.gauges), EFFORTS[wish.effort], until, voice)
        raise ProblemsFoundError


def _fit_side_by_side(wishes: Sequence[_FitWish], voice: Voice) -> None:
    """Search for each outline of a drawing; write a design for each, and one that joins them."""
    from buildplan.commands.files import ProblemsFoundError, write_whole
    from buildplan.fitting.fitting import recommended
    from buildplan.fitting.report import fit_report
    from buildplan.fitting.side_by_side import assembly_text, of_one_palette

    found = [_searched(wish, _until(wish), voice) for wish in wishes]
    fits = of_one_palette([recommended(choices, wishes[0].prefer.value) for choices, _ in found])
    names = []
    for letter, fit, wish, (_, clock) in zip(ascii_lowercase, fits, wishes, found, strict=False):
        own = replace(wish, out=_beside(wish.out, letter), picture=_beside(wish.picture, letter))
        typer.echo(fit_report([fit], voice))
        _write(fit, own, clock, voice)
        names.append(own.out.name if own.out is not None else "")
    whole = wishes[0].out
    if whole is not None:
        text = assembly_text(whole.stem.replace("_", " ").title(), names, fits, voice)
        if text is None:
            errors.print(voice.say("no joints of these pieces face one another: tie them by hand"))
            raise ProblemsFoundError
        write_whole(whole, text.encode())
        typer.echo(whole)
    if not all(fit.good for fit in fits):
        raise ProblemsFoundError


def _beside(file: Path | None, letter: str) -> Path | None:
    """The file of one of several pieces: `zoo.yaml` has `zoo_a.yaml` beside it."""
    return None if file is None else file.with_stem(f"{file.stem}_{letter}")


def _until(wish: _FitWish) -> float | None:
    """When a search that begins now has to end, where the clock ends it."""
    return None if wish.within is None else time.monotonic() + _seconds(wish.within)


def _searched(wish: _FitWish, until: float | None, voice: Voice) -> tuple[tuple[Fit, ...], str]:
    """The designs that were found, and the time that the search was given, where that ended it."""
    from buildplan.commands.files import ProblemsFoundError
    from buildplan.fitting.effort import EFFORTS
    from buildplan.fitting.fitting import fit_outline

    reached: list[Progress] = []
    with errors.status(voice.say("Fitting {name} ...", name=wish.outline.name)):
        watch = _watching(until, reached, voice)
        effort = EFFORTS[wish.effort]
        fits = fit_outline(wish.outline, wish.gauges, wish.units, effort, voice, watch)
    if not fits:
        errors.print(
            voice.say(
                "{outline}: no closed tube follows this outline at this height",
                outline=wish.outline.name,
            )
        )
        raise ProblemsFoundError
    cut_short = reached[-1].done < reached[-1].rounds
    return fits, wish.within if wish.within is not None and cut_short else ""


def _write(chosen: Fit, wish: _FitWish, clock: str, voice: Voice) -> None:
    """The design file and the picture of a fit, as far as they were asked for."""
    from buildplan.commands.files import write_whole
    from buildplan.drawing.forms import FORMS
    from buildplan.fitting.fit_file import fit_text
    from buildplan.fitting.picture import fit_picture

    if wish.out is not None:
        write_whole(wish.out, fit_text(chosen, voice, clock).encode())
        typer.echo(wish.out)
    if wish.picture is not None:
        form = FORMS[wish.picture.suffix.lower()]
        write_whole(wish.picture, form(fit_picture(chosen, voice)))
        typer.echo(wish.picture)


def _check_names(out: Path | None, picture: Path | None, taken: Path | None, voice: Voice) -> None:
    from buildplan.commands.files import refuse_ending
    from buildplan.drawing.forms import FORMS

    refuse_ending(out, (".yaml", ".yml"), voice)
    refuse_ending(picture, tuple(FORMS), voice)
    refuse_ending(taken, (".png",), voice)


def _outlines(
    source: str, height_m: float, taken: Path | None, voice: Voice
) -> tuple[Outline, ...]:
    """The outlines that are named; of a picture, what was taken of it is drawn too."""
    from buildplan.commands.files import asked, unreadable, write_whole
    from buildplan.fitting.photo_outline import PHOTOS, silhouette_in, taken_picture
    from buildplan.fitting.sources import read_outlines

    try:
        wanted = asked(lambda text: read_outlines(text, height_m, voice), source, voice)
        if taken is not None:
            if Path(source).suffix.lower() not in PHOTOS:
                raise typer.BadParameter(
                    voice.say("--taken goes with a picture: a .png or .jpg as the outline")
                )
            write_whole(taken, taken_picture(silhouette_in(Path(source))))
            typer.echo(taken)
    except OSError as error:
        raise typer.BadParameter(unreadable(source, error, voice)) from error
    return wanted


def _seconds(text: str) -> float:
    """Seconds of a time such as `30s` or `2min`. Raises ToldError."""
    from buildplan.language.messages import message
    from buildplan.language.told import ToldError

    found = re.fullmatch(r"\s*(\d+(?:\.\d+)?)\s*(s|min)\s*", text)
    if found is None or not float(found[1]):
        raise ToldError(message("{text} is not a time; write it like 30s or 2min", text=repr(text)))
    return float(found[1]) * (60 if found[2] == "min" else 1)


def _watching(
    until: float | None, reached: list[Progress], voice: Voice
) -> Callable[[Progress], bool]:
    """Prints how far the search is after every round, and ends it when its time is over."""
    from buildplan.fitting.report import progress_words

    def watch(progress: Progress) -> bool:
        reached.append(progress)
        errors.print(f"  {progress_words(progress, voice)}")
        return _time_left(until)

    return watch


def _tell_larger(
    chosen: Fit, gauge: float, effort: Effort, until: float | None, voice: Voice
) -> None:
    """At which larger size it can be had; what was asked for has been written before."""
    from buildplan.fitting.heights import smallest_height
    from buildplan.fitting.report import height_words, larger_words

    units = chosen.gauges.units

    def watch(tried_m: float) -> bool:
        height = height_words(tried_m, units, voice)
        errors.print("  " + voice.say("not up to {height} either", height=height))
        return _time_left(until)

    if not _time_left(until):
        return
    try:
        looking = voice.say("Looking for a size at which it can be had; Ctrl-C stops that ...")
        with errors.status(looking):
            larger = smallest_height(chosen.outline, gauge, units, effort, watch)
    except KeyboardInterrupt:
        return
    typer.echo(f"   {larger_words(larger, gauge, units, voice)}")


def _time_left(until: float | None) -> bool:
    return until is None or time.monotonic() < until
