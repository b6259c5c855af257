"""Commands that draw pieces, steps and galleries."""

from __future__ import annotations

import math
from enum import StrEnum
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from buildplan.commands.app import app
from buildplan.commands.aside import answer, busy
from buildplan.commands.expecting import tell_expected
from buildplan.commands.options import (
    FLAG,
    IN_ENGLISH,
    OUTPUT,
    DesignArgument,
    LanguageOption,
    PaperName,
    PaperOption,
    ViewName,
)
from buildplan.language.voice import Voice

if TYPE_CHECKING:
    from buildplan.booklet.common.book import Book
    from buildplan.drawing.marks import Picture

LABELLED_PT = 900.0  # sides of a picture with labels


class FormName(StrEnum):
    """Form of a drawing's file."""

    SVG = "svg"
    PNG = "png"
    PDF = "pdf"


ViewOption = Annotated[
    ViewName | None, typer.Option(help="The finished piece, seen from here.", show_default="front")
]
StepOption = Annotated[
    int | None, typer.Option(help="The pictures of this step.", show_default=False)
]
AllOption = Annotated[
    bool, typer.Option("--all", metavar=FLAG, help="The pictures of every step, a file each.")
]
OutOption = Annotated[
    Path | None,
    typer.Option(
        help="File to write: .pdf, .svg or .png; with --all, a folder.", show_default=False
    ),
]
FormOption = Annotated[
    FormName | None,
    typer.Option("--format", help="Form of the files of --all.", show_default="svg"),
]
LabelsOption = Annotated[
    bool,
    typer.Option(
        "--labels",
        metavar=FLAG,
        help="The piece with the labels of its joints; of an assembly each part by itself, a file "
        "each.",
    ),
]


@app.command()
def draw(
    design: DesignArgument,
    view: ViewOption = None,
    step: StepOption = None,
    every: AllOption = False,
    labels: LabelsOption = False,
    out: OutOption = None,
    form: FormOption = None,
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Draw the finished piece as seen from one side, or the pictures of steps.

    Prints the path of each file it wrote.
    """
    from buildplan.commands.files import refuse_ending
    from buildplan.commands.pieces import book_of
    from buildplan.drawing.forms import FORMS
    from buildplan.evaluation.expected_time import seconds_to_tell

    voice = Voice(language)
    if labels and (step is not None or every):
        raise typer.BadParameter(voice.say("--labels goes without --step and --all"))
    if (view is not None) + (step is not None) + every > 1:
        raise typer.BadParameter(voice.say("choose one of --view, --step and --all"))
    if form is not None and not every:
        raise typer.BadParameter(
            voice.say("--format goes with --all; else the name given by --out tells it")
        )
    if every:
        _draw_all(design, out or OUTPUT, f".{(form or FormName.SVG).value}", voice)
        return
    if labels:
        target = out or Path(f"{design.stem}-labels.pdf")
        refuse_ending(target, tuple(FORMS), voice)
        _draw_labels(design, view or ViewName.CORNER, target, voice)
        return
    what = f"step-{step}" if step is not None else (view or ViewName.FRONT).value
    target = out or Path(f"{design.stem}-{what}.pdf")
    refuse_ending(target, tuple(FORMS), voice)
    book = book_of(design, voice, seconds=seconds_to_tell)
    seen = _finished(book, view or ViewName.FRONT) if step is None else _step(book, step, voice)
    _write_picture(seen, target)


def _finished(book: Book, view: ViewName) -> Picture:
    from buildplan.drawing.camera import CAMERAS
    from buildplan.drawing.scene import finished_picture, finished_words

    camera = CAMERAS[view.value]
    words = finished_words(book.framework, camera, book.voice)
    return finished_picture(book.framework, book.shape, camera, 720, 720, alt=words)


def _step(book: Book, step: int, voice: Voice) -> Picture:
    from buildplan.booklet.common.step_drawings import step_drawings

    if not 1 <= step <= len(book.steps):
        raise typer.BadParameter(
            voice.say(
                "{option}: {piece} has {count} steps, numbered from 1",
                option=f"--step {step}",
                piece=book.facts.name,
                count=len(book.steps),
            )
        )
    return step_drawings(book)[step]


def _draw_labels(design: Path, view: ViewName, target: Path, voice: Voice) -> None:
    """Each part with the labels of its joints, a file each."""
    from buildplan.commands.pieces import evaluation_of
    from buildplan.drawing.camera import CAMERAS
    from buildplan.drawing.labelled import labelled_picture
    from buildplan.evaluation.joint_places import joint_places

    parts = joint_places(evaluation_of(design, voice))
    for part in parts:
        edges = sorted({joint for side in part.sides.values() for joint in side})
        picture = labelled_picture(
            part.framework, part.shape, CAMERAS[view.value], LABELLED_PT, edges, voice, part.name
        )
        file = target if len(parts) == 1 else target.with_stem(f"{target.stem}-{part.name}")
        _write_picture(picture, file)


def _draw_all(design: Path, folder: Path, suffix: str, voice: Voice) -> None:
    from buildplan.booklet.common.step_drawings import step_drawings
    from buildplan.commands.pieces import book_of

    book = book_of(design, voice)
    digits = len(str(len(book.steps)))
    words = voice.say(
        "Drawing {count} steps of {piece} ...", count=len(book.steps), piece=book.facts.name
    )
    with busy(words):
        for number, picture in step_drawings(book).items():
            name = f"{design.stem}-step-{number:0{digits}}{suffix}"
            _write_picture(picture, folder / name)


def _write_picture(picture: Picture, target: Path) -> None:
    from buildplan.commands.files import write_whole
    from buildplan.drawing.forms import FORMS

    write_whole(target, FORMS[target.suffix.lower()](picture))
    answer(target)


@app.command()
def gallery(
    folder: Annotated[
        Path,
        typer.Argument(
            metavar="FOLDER", help="A folder of designs, with those below it.", show_default=False
        ),
    ],
    paper: PaperOption = PaperName.A4,
    out: Annotated[Path | None, typer.Option(help="PDF to write.", show_default=False)] = None,
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Print an index and contact sheets of every design in a folder."""
    from buildplan.booklet.office.gallery import Exhibit, is_design_file, print_gallery
    from buildplan.business.copies.brand import fonts_of_designs
    from buildplan.business.signs import signs_told_in_place
    from buildplan.commands.files import (
        ProblemsFoundError,
        in_language,
        list_problems,
        refuse_ending,
        write_whole,
    )
    from buildplan.commands.many_designs import MANY, each_design
    from buildplan.commands.pieces import book_of
    from buildplan.document.paper import PAPERS
    from buildplan.drawing.typeset.font_files import with_fonts
    from buildplan.evaluation.expected_time import seconds_to_tell

    voice = Voice(language)
    if not folder.is_dir():
        raise typer.BadParameter(voice.say("{folder} is no folder", folder=str(folder)))
    stem = in_language(f"{folder.resolve().name}-gallery-{paper.value}", voice)
    target = out or OUTPUT / f"{stem}.pdf"
    refuse_ending(target, (".pdf",), voice)
    files = sorted(f for f in folder.rglob("*.yaml") if is_design_file(f))
    if not files:
        raise typer.BadParameter(
            voice.say("{folder} holds no design files (.yaml)", folder=str(folder))
        )
    tell_expected(math.fsum(_seconds_of(file, voice) for file in files), voice)
    gathered = partial(book_of, voice=voice, paper=paper.value, seconds=seconds_to_tell)
    exhibits = [
        Exhibit(str(file.relative_to(folder)), book)
        for file, book in zip(files, each_design(gathered, files, MANY), strict=True)
    ]
    for exhibit in exhibits:
        list_problems(folder / exhibit.file, exhibit.book.facts.problems, voice)
    title = voice.say("Gallery of designs")
    named = [(exhibit.book.design, folder / exhibit.file) for exhibit in exhibits]
    with with_fonts(fonts_of_designs(named)), signs_told_in_place(file for _, file in named):
        page = print_gallery(exhibits, PAPERS[paper.value], title, voice)
    write_whole(target, page)
    answer(target)
    if any(exhibit.book.facts.problems for exhibit in exhibits):
        raise ProblemsFoundError


def _seconds_of(file: Path, voice: Voice) -> float:
    """How long the piece of a design file takes to work out; none of one that has none."""
    from buildplan.commands.pieces import size_of_design
    from buildplan.evaluation.expected_time import seconds_to_tell
    from buildplan.hands.reading import read_known
    from buildplan.source.problems import DesignProblemsError, UnreadableDesignError

    try:
        return seconds_to_tell(size_of_design(read_known(file, voice)))
    except (DesignProblemsError, UnreadableDesignError):
        return 0.0  # told when it is gathered
