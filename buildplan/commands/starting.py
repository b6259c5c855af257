"""Commands that begin a design."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Annotated, Any, TypeVar

import typer

from buildplan.commands.app import (
    FLAG,
    IN_ENGLISH,
    LanguageOption,
    UnitsName,
    app,
    errors,
)
from buildplan.design.beginnings import PIECES
from buildplan.design.measures import Units, size_words
from buildplan.language.speaking import mark, say, say_count

Answer = TypeVar("Answer", str, int, float)


def _one_of(known: Sequence[str]) -> Callable[[str], str]:
    """Reads an answer that is one of a few; any other is asked for again."""

    def read(answer: str) -> str:
        if answer not in known:
            raise typer.BadParameter(say("answer one of {names}", names=", ".join(known)))
        return answer

    return read


@app.command()
def new(
    name: Annotated[str | None, typer.Argument(help="What the piece is called.")] = None,
    piece: Annotated[
        str | None, typer.Option(help=f"What it is: {', '.join(PIECES)}.", show_default=False)
    ] = None,
    points: Annotated[
        int | None, typer.Option(help="How many points a star has.", show_default=False)
    ] = None,
    units: Annotated[UnitsName | None, typer.Option(help="Inches or centimetres.")] = None,
    size: Annotated[
        float | None,
        typer.Option(
            help="About how wide it is (an arch, a column: how high).", show_default=False
        ),
    ] = None,
    gauge: Annotated[
        float | None, typer.Option(help="What its links are sized to.", show_default=False)
    ] = None,
    colours: Annotated[
        str | None,
        typer.Option(
            help='Long chains, braces, locks: "deep blue, ivory, gold"; # and six hex digits '
            "do as well.",
            show_default=False,
        ),
    ] = None,
    out: Annotated[
        Path | None, typer.Option(help="The file to write; else by its name.", show_default=False)
    ] = None,
    usual: Annotated[
        bool,
        typer.Option(
            "--usual",
            metavar=FLAG,
            help="Ask nothing: the usual for all that is not given.",
        ),
    ] = False,
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Begin a design: writes a commented file that passes check, to change as you like.

    Asks for what is not given.
    """
    from buildplan.commands.files import ProblemsFoundError, asked, book_of, list_problems
    from buildplan.design.beginnings import TALL, USUAL_COLOURS, USUAL_GAUGE, Wish
    from buildplan.design.starting import colour_names, design_text, file_stem

    def answered(given: Answer | None, question: str, default: Answer, **more: Any) -> Answer:
        if given is not None or usual:
            return default if given is None else given
        answer: Answer = typer.prompt(question, default=default, err=True, **more)
        return answer

    name = answered(name, say("What is it called"), say("New piece"))
    kinds = list(PIECES)
    piece = answered(
        piece,
        say("What is it ({names})", names=", ".join(kinds)),
        "ring",
        value_proc=_one_of(kinds),
    )
    points = answered(points, say("How many points"), 5) if piece == "star" else 5
    measure = answered(
        units, say("Inches or centimetres (in, cm)"), "in", value_proc=_one_of(["in", "cm"])
    )
    unit: Units = "cm" if measure == "cm" else "in"
    gauge = answered(gauge, say("Links sized to ({units})", units=unit), USUAL_GAUGE[unit])
    how_large = (
        mark("About how high ({units}; 0 for the usual)")
        if piece in TALL
        else mark("About how wide ({units}; 0 for the usual)")
    )
    wide = answered(size, say(how_large, units=unit), 0.0, type=float)
    named = answered(
        colours,
        say("Colours of long chains, braces, locks"),
        colour_names(USUAL_COLOURS),
    )
    wish = Wish(name, piece, unit, points, wide or None, gauge, tuple(named.split(",")))
    text = asked(design_text, wish)
    path = out or Path(f"{file_stem(name)}.yaml")
    try:
        with path.open("x", encoding="utf-8") as file:
            file.write(text)
    except FileExistsError:
        raise typer.BadParameter(
            say(
                "{file} is there already; choose another with --out, or another name",
                file=str(path),
            )
        ) from None
    typer.echo(path)
    facts = book_of(path).facts
    tall = size_words(facts.height_m, unit)
    summary = say_count(
        "{number} balloon, about {height} high; see buildplan check",
        "{number} balloons, about {height} high; see buildplan check",
        facts.total,
        height=tall,
    )
    typer.echo(summary, err=True)
    if facts.problems:
        list_problems(path, facts.problems)
        raise ProblemsFoundError


def _looking() -> str:
    return say("Looking for a size at which it can be had ...")


@app.command(name="fit")
def fit_design(
    outline: Annotated[
        str,
        typer.Argument(
            metavar="OUTLINE",
            help="An .svg file with a closed path; letter:A and the like; or one of star (star-6), "
            "crescent, shield, arrow, drop, cloud, house, ring, rounded-square, leaf, fish, "
            "lightning.",
            show_default=False,
        ),
    ],
    height: Annotated[
        str, typer.Option(help="How high the piece is to be: 150cm, 1.5m, 60in, 5ft.")
    ] = "150cm",
    gauges: Annotated[
        str | None,
        typer.Option(
            help="Gauges that links may be sized to, in inches, such as 8,6,5.",
            show_default="8,6,5, and for a ring or an O the one that makes the tube as wide",
        ),
    ] = None,
    out: Annotated[
        Path | None, typer.Option(help="Design file to write, a .yaml.", show_default=False)
    ] = None,
    picture: Annotated[
        Path | None,
        typer.Option(
            help="Picture of the outline over the piece: .png, .pdf or .svg.", show_default=False
        ),
    ] = None,
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Find the tube whose solved shape comes closest to an outline.

    Prints how close one design for each gauge comes; the one marked * is written.
    """
    from buildplan.commands.files import (
        ProblemsFoundError,
        asked,
        unreadable,
        write_whole,
        wrong_ending,
    )
    from buildplan.drawing.forms import FORMS
    from buildplan.fitting.design_file import fit_text
    from buildplan.fitting.fitting import fit_outline, gauges_for, recommended
    from buildplan.fitting.picture import fit_picture
    from buildplan.fitting.report import fit_report, larger_words
    from buildplan.fitting.sources import parse_gauges, parse_height, read_outline

    for target, forms in ((out, {".yaml", ".yml"}), (picture, FORMS)):
        if target is not None and target.suffix.lower() not in forms:
            raise typer.BadParameter(wrong_ending(target, sorted(forms)))
    height_m = asked(parse_height, height)
    given = None if gauges is None else asked(parse_gauges, gauges)
    try:
        wanted = asked(lambda source: read_outline(source, height_m), outline)
    except OSError as error:
        raise typer.BadParameter(unreadable(outline, error)) from error
    gauges_in = given or gauges_for(wanted)
    with errors.status(say("Fitting {name} ...", name=wanted.name)):
        fits = fit_outline(wanted, gauges_in)
    if not fits:
        words = say(
            "{outline}: no closed tube follows this outline at {height}",
            outline=outline,
            height=height,
        )
        errors.print(words, soft_wrap=True)
        with errors.status(_looking()):
            errors.print(larger_words(wanted, min(gauges_in)), soft_wrap=True)
        raise ProblemsFoundError
    chosen = recommended(fits)
    typer.echo(fit_report(fits))
    if not chosen.good:
        with errors.status(_looking()):
            typer.echo(f"   {larger_words(wanted, min(gauges_in))}")
    if out is not None:
        write_whole(out, fit_text(chosen).encode())
        typer.echo(out)
    if picture is not None:
        write_whole(picture, FORMS[picture.suffix.lower()](fit_picture(chosen)))
        typer.echo(picture)
    if not chosen.good:
        raise ProblemsFoundError
