"""Reading what a user names, writing whole files, and listing what is wrong."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Callable, Iterable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

import typer

from buildplan.commands.app import (
    UnitsName,
    errors,
)
from buildplan.design.measures import Units
from buildplan.language.grammar import listed
from buildplan.language.speaking import ENGLISH, say, spoken, spoken_voice
from buildplan.language.told import ToldError
from buildplan.source.problems import (
    DesignProblemsError,
    Problem,
    UnreadableDesignError,
    in_words,
)

if TYPE_CHECKING:
    from buildplan.booklet.common.book import Book
    from buildplan.business.copies.brand import Branding
    from buildplan.design.model import Design
    from buildplan.evaluation.evaluating import Evaluation
    from buildplan.hands.model import Measurement

Given = TypeVar("Given")


Parsed = TypeVar("Parsed")


class ProblemsFoundError(Exception):
    """The design was read and has problems that have been listed."""


def book_of(
    path: Path,
    paper: str = "a4",
    units: UnitsName | None = None,
    edition: str = "training",
    gust_m_per_s: float | None = None,
    hands: Path | None = None,
) -> Book:
    """A design run through every stage, as the hands that are known of will build it."""
    from buildplan.booklet.common.book import gather_book
    from buildplan.document.paper import PAPERS

    design = read_known(path, hands)
    with errors.status(
        say("Finding the shape and the order of work of {piece} ...", piece=design.name)
    ):
        chosen: Units = design.units if units is None else "in" if units == "in" else "cm"
        return gather_book(design, PAPERS[paper], chosen, edition, gust_m_per_s)


def evaluation_of(
    path: Path, gust_m_per_s: float | None = None, hands: Path | None = None
) -> Evaluation:
    """A design run through every stage, with nothing that a printed booklet needs beyond that."""
    from buildplan.evaluation.evaluating import NEW_PARTS, evaluate

    design = read_known(path, hands)
    with errors.status(
        say("Finding the shape and the order of work of {piece} ...", piece=design.name)
    ):
        return evaluate(design, design.units, NEW_PARTS["training"], gust_m_per_s)


def brand_of(design: Design, path: Path, file: Path | None) -> Branding | None:
    """The brand of a brand file, else the design's own, with its logo; None if there is none."""
    from buildplan.business.copies.brand import branding
    from buildplan.design.reading import read_brand
    from buildplan.design.translating import translated_brand

    if file is not None:
        return branding(translated_brand(read_brand(file), spoken()), file)
    return None if design.brand is None else branding(design.brand, path)


def asked(parse: Callable[[Given], Parsed], text: Given) -> Parsed:
    """What a user gave, read; a wrong call where it cannot be."""
    try:
        return parse(text)
    except ToldError as error:
        raise typer.BadParameter(spoken_voice().tell(error.told)) from error
    except ValueError as error:
        raise typer.BadParameter(str(error)) from error


def wrong_ending(file: Path, endings: Sequence[str]) -> str:
    """What is said of a file whose name does not end as it must."""
    return say(
        "{file}: the name must end in {endings}", file=str(file), endings=listed(endings, "or")
    )


def unreadable(file: Path | str, error: OSError) -> str:
    """What is said of a file that the system does not open."""
    return say("{file} cannot be read ({why})", file=str(file), why=str(error.strerror))


def list_problems(file: Path, problems: tuple[Problem, ...]) -> None:
    for problem in problems:
        errors.print(in_words(problem, spoken_voice(), str(file)), markup=False)


def measured_by(path: Path, hands: Path | None = None) -> tuple[Measurement, ...]:
    """The measurements of the hands that build a design: of the file named, else of the one
    beside the design; none where there is none."""
    from buildplan.hands.file import HANDS_FILE, read_hands

    file = hands or path.parent / HANDS_FILE
    return read_hands(file) if hands is not None or file.exists() else ()


def bare_evaluation(path: Path) -> Evaluation:
    """A design as nobody in particular builds it: what measurements are compared with."""
    from buildplan.design.reading import read_design
    from buildplan.evaluation.evaluating import NEW_PARTS, evaluate
    from buildplan.shape.constants import CONSTANTS

    design = read_design(path, CONSTANTS)
    return evaluate(design, design.units, NEW_PARTS["crew"])


def data_of(path: Path) -> tuple[str, dict[str, Any]]:
    """The text of a design file and its content as plain data, which is right but for its course.

    Raises UnreadableDesignError, or DesignProblemsError when other things are wrong with it.
    """
    from buildplan.fitting.mending import OF_THE_COURSE
    from buildplan.source.file_text import text_of
    from buildplan.source.trade_words import in_file_words
    from buildplan.source.yaml_nodes import plain
    from buildplan.source.yaml_source import load

    try:
        read_known(path)
    except DesignProblemsError as error:
        if not all(one.kind in OF_THE_COURSE for one in error.problems):
            raise
    text = text_of(path)
    data = in_file_words(plain(load(text, str(path)).root))
    assert isinstance(data, dict), "a design that has been read is made of keys"
    return text, data


def tried(path: Path, problems: Sequence[Problem]) -> tuple[Problem, ...]:
    """The problems of a design, each change that they suggest tried on the piece itself."""
    from buildplan.fitting.mending import ON_THE_PIECE, tried_on_the_piece

    if not any(one.kind in ON_THE_PIECE for one in problems):
        return tuple(problems)
    try:
        _, data = data_of(path)
    except DesignProblemsError:
        return tuple(problems)
    with errors.status(say("Trying what would mend it ...")):
        return tried_on_the_piece(data, problems)


def read_known(path: Path, hands: Path | None = None) -> Design:
    """Read a design, in the language that is spoken as far as it has its own words in it, and with
    the lengths and minutes of the hands that are known of."""
    from buildplan.design.reading import read_design
    from buildplan.design.translating import translated_design
    from buildplan.hands.applying import learned_for, with_hands
    from buildplan.shape.constants import CONSTANTS

    design = translated_design(read_design(path, CONSTANTS), spoken())
    measured = measured_by(path, hands)
    return with_hands(design, learned_for(design, measured)) if measured else design


def read_all(paths: Iterable[Path], read: Callable[[Path], Parsed]) -> dict[Path, Parsed]:
    """Each file read; when some cannot be, the problems of all of them are listed first."""
    found: dict[Path, Parsed] = {}
    worst: Exception | None = None
    for path in paths:
        try:
            found[path] = read(path)
        except DesignProblemsError as error:
            list_problems(path, error.problems)
            worst = worst or ProblemsFoundError()
        except UnreadableDesignError as error:
            errors.print(in_words(error.problem, spoken_voice(), error.file), markup=False)
            worst = typer.Exit(2)
    if worst is not None:
        raise worst
    return found


def without_events(paths: Sequence[Path]) -> list[Path]:
    """The design files of `designs/*.yaml`, which names event files too."""
    from buildplan.design.event import EVENT_SUFFIX

    events = [path for path in paths if path.name.endswith(EVENT_SUFFIX)]
    for path in events:
        words = say("{file} is an event file: see buildplan event", file=str(path))
        errors.print(words, markup=False)
    if len(events) == len(paths):
        raise typer.BadParameter(say("name at least one design file"))
    return [path for path in paths if path not in events]


def in_language(stem: str) -> str:
    """The stem of a printed file's name, with the language at its end where it is not English."""
    return stem if spoken() == ENGLISH else f"{stem}-{spoken()}"


def write_whole(path: Path, data: bytes) -> None:
    """Write a file whole or not at all; its folder is made if it is not there."""
    path.parent.mkdir(parents=True, exist_ok=True)
    handle, name = tempfile.mkstemp(prefix=f".{path.name}-", dir=path.parent)
    os.close(handle)
    part = Path(name)
    try:
        part.write_bytes(data)
        # a temporary file is private; a booklet is as open as any new file
        umask = os.umask(0)
        os.umask(umask)
        part.chmod(0o666 & ~umask)
        part.replace(path)
    finally:
        part.unlink(missing_ok=True)
