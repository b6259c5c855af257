"""Commands that draw pieces, steps and galleries."""

from __future__ import annotations

from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from buildplan.commands.app import (
    FLAG,
    IN_ENGLISH,
    DesignArgument,
    LanguageOption,
    PaperName,
    View,
    app,
    errors,
)
from buildplan.language.speaking import say

if TYPE_CHECKING:
    from buildplan.drawing.marks import Picture


class FormName(StrEnum):
    """Form of a drawing's file."""

    SVG = "svg"
    PNG = "png"
    PDF = "pdf"


@app.command()
def draw(
    design: DesignArgument,
    view: Annotated[
        View | None, typer.Option(help="The finished piece, seen from here.", show_default="front")
    ] = None,
    step: Annotated[
        int | None, typer.Option(help="The pictures of this step.", show_default=False)
    ] = None,
    every: Annotated[
        bool,
        typer.Option(
            "--all",
            metavar=FLAG,
            help="The pictures of every step, a file each.",
        ),
    ] = False,
    out: Annotated[
        Path | None,
        typer.Option(
            help="File to write: .pdf, .svg or .png; with --all, a folder.", show_default=False
        ),
    ] = None,
    form: Annotated[
        FormName | None,
        typer.Option("--format", help="Form of the files of --all.", show_default="svg"),
    ] = None,
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Draw the finished piece as seen from one side, or the pictures of steps.

    Prints the path of each file it wrote.
    """
    from buildplan.booklet.common.step_drawings import step_drawings
    from buildplan.commands.files import book_of, wrong_ending
    from buildplan.drawing.camera import CAMERAS
    from buildplan.drawing.forms import FORMS
    from buildplan.drawing.scene import finished_picture, finished_words

    if (view is not None) + (step is not None) + every > 1:
        raise typer.BadParameter(say("choose one of --view, --step and --all"))
    if form is not None and not every:
        raise typer.BadParameter(
            say("--format goes with --all; else the name given by --out tells it")
        )
    if every:
        _draw_all(design, out or Path("output"), f".{(form or FormName.SVG).value}")
        return
    what = f"step-{step}" if step is not None else (view or View.FRONT).value
    target = out or Path(f"{design.stem}-{what}.pdf")
    if target.suffix.lower() not in FORMS:
        raise typer.BadParameter(wrong_ending(target, [".pdf", ".svg", ".png"]))
    book = book_of(design)
    if step is not None:
        if not 1 <= step <= len(book.steps):
            raise typer.BadParameter(
                say(
                    "{option}: {piece} has {count} steps, numbered from 1",
                    option=f"--step {step}",
                    piece=book.facts.name,
                    count=len(book.steps),
                )
            )
        picture = step_drawings(book)[step]
    else:
        camera = CAMERAS[(view or View.FRONT).value]
        words = finished_words(book.framework, camera, book.voice)
        picture = finished_picture(book.framework, book.shape, camera, 720, 720, alt=words)
    _write_picture(picture, target)


def _draw_all(design: Path, folder: Path, suffix: str) -> None:
    from buildplan.booklet.common.step_drawings import step_drawings
    from buildplan.commands.files import book_of

    book = book_of(design)
    digits = len(str(len(book.steps)))
    with errors.status(
        say("Drawing {count} steps of {piece} ...", count=len(book.steps), piece=book.facts.name)
    ):
        for number, picture in step_drawings(book).items():
            name = f"{design.stem}-step-{number:0{digits}}{suffix}"
            _write_picture(picture, folder / name)


def _write_picture(picture: Picture, target: Path) -> None:
    from buildplan.commands.files import write_whole
    from buildplan.drawing.forms import FORMS

    write_whole(target, FORMS[target.suffix.lower()](picture))
    typer.echo(target)


@app.command()
def gallery(
    folder: Annotated[
        Path,
        typer.Argument(
            metavar="FOLDER", help="A folder of designs, with those below it.", show_default=False
        ),
    ],
    paper: Annotated[PaperName, typer.Option(help="Paper size.")] = PaperName.A4,
    out: Annotated[Path | None, typer.Option(help="PDF to write.", show_default=False)] = None,
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Print an index and contact sheets of every design in a folder."""
    from buildplan.booklet.office.gallery import Exhibit, is_design_file, print_gallery
    from buildplan.commands.files import (
        ProblemsFoundError,
        book_of,
        in_language,
        list_problems,
        write_whole,
        wrong_ending,
    )
    from buildplan.document.paper import PAPERS

    stem = in_language(f"{folder.resolve().name}-gallery-{paper.value}")
    target = out or Path("output") / f"{stem}.pdf"
    if target.suffix.lower() != ".pdf":
        raise typer.BadParameter(wrong_ending(target, [".pdf"]))
    if not folder.is_dir():
        raise typer.BadParameter(say("{folder} is no folder", folder=str(folder)))
    files = sorted(f for f in folder.rglob("*.yaml") if is_design_file(f))
    if not files:
        raise typer.BadParameter(say("{folder} holds no design files (.yaml)", folder=str(folder)))
    exhibits = [Exhibit(str(f.relative_to(folder)), book_of(f, paper.value)) for f in files]
    for exhibit in exhibits:
        list_problems(folder / exhibit.file, exhibit.book.facts.problems)
    write_whole(target, print_gallery(exhibits, PAPERS[paper.value], say("Gallery of designs")))
    typer.echo(target)
    if any(exhibit.book.facts.problems for exhibit in exhibits):
        raise ProblemsFoundError
