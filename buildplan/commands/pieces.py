"""Design files that a user names, read and run through every stage."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

import typer

from buildplan.commands.aside import aside, busy
from buildplan.commands.files import ProblemsFoundError, list_problems
from buildplan.commands.options import UnitsName
from buildplan.design.measures import Units, units_read
from buildplan.language.voice import Voice
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
    from buildplan.evaluation.expected_time import PieceSize
    from buildplan.fitting.checking import Checked
    from buildplan.hands.craft import Moved
    from buildplan.hands.why import Why

Read = TypeVar("Read")

SHAPES_FOUND_ANEW = 1.5  # what asking for a figure costs, over working out the piece (measured)


def book_of(
    path: Path,
    voice: Voice,
    paper: str = "a4",
    units: UnitsName | None = None,
    edition: str = "training",
    hands: Path | None = None,
    seconds: Callable[[PieceSize], float] | None = None,
) -> Book:
    """A design run through every stage, as the hands that are known of will build it; `seconds`
    foretells what is to be done with it, where that is not printing it."""
    from buildplan.hands.reading import read_known

    return _gathered(read_known(path, voice, hands), voice, paper, units, edition, seconds)


def draft_of(
    path: Path,
    voice: Voice,
    paper: str = "a4",
    units: UnitsName | None = None,
    edition: str = "training",
    hands: Path | None = None,
) -> Book:
    """As `book_of`, of a design that may have problems with which it can be drawn all the same;
    they are among those of the piece."""
    from buildplan.hands.reading import read_draft

    design, problems = read_draft(path, voice, hands)
    book = _gathered(design, voice, paper, units, edition)
    return replace(book, facts=replace(book.facts, problems=(*problems, *book.facts.problems)))


def _gathered(
    design: Design,
    voice: Voice,
    paper: str,
    units: UnitsName | None,
    edition: str,
    seconds: Callable[[PieceSize], float] | None = None,
) -> Book:
    from buildplan.booklet.common.book import gather_book
    from buildplan.document.paper import PAPERS
    from buildplan.evaluation.expected_time import seconds_to_print

    tell_if_long(design, seconds or seconds_to_print, voice)
    with busy(_finding(design, voice)):
        asked: Units | None = None if units is None else "in" if units == "in" else "cm"
        chosen = asked or units_read(voice, design.units)
        return gather_book(design, PAPERS[paper], chosen, edition, voice.language)


def evaluation_of(
    path: Path, voice: Voice, gust_m_per_s: float | None = None, hands: Path | None = None
) -> Evaluation:
    """A design run through every stage, with nothing that a printed booklet needs beyond that."""
    from buildplan.evaluation.evaluating import NEW_PARTS, evaluate
    from buildplan.evaluation.expected_time import seconds_to_work_out
    from buildplan.hands.reading import read_known

    design = read_known(path, voice, hands)
    tell_if_long(design, seconds_to_work_out, voice)
    with busy(_finding(design, voice)):
        return evaluate(design, units_read(voice, design.units), NEW_PARTS, gust_m_per_s)


def size_of_design(design: Design) -> PieceSize:
    """How large the piece of a design is to work out."""
    from buildplan.design.building import build_framework
    from buildplan.evaluation.expected_time import size_of

    return size_of(build_framework(design))


def tell_if_long(design: Design, seconds: Callable[[PieceSize], float], voice: Voice) -> None:
    """How long a large piece is likely to take, before it is begun."""
    from buildplan.evaluation.expected_words import expected_words

    size = size_of_design(design)
    words = expected_words(design.name, size, seconds(size), voice)
    if words:
        aside(words)


def _finding(design: Design, voice: Voice) -> str:
    return voice.say("Finding the shape and the order of work of {piece} ...", piece=design.name)


def bare_evaluation(path: Path, voice: Voice | None = None) -> Evaluation:
    """A design as nobody in particular builds it: what measurements are compared with. Its names
    are those of its file, or what the file says for them in the language of `voice`."""
    from buildplan.evaluation.evaluating import NEW_PARTS, evaluate
    from buildplan.evaluation.seating import read_whole
    from buildplan.shape.constants import CONSTANTS

    design = read_whole(path, CONSTANTS)
    if voice is not None:
        from buildplan.design.translating import translated_design
        from buildplan.evaluation.expected_time import seconds_to_work_out

        design = translated_design(design, voice.language)
        tell_if_long(design, seconds_to_work_out, voice)
    return evaluate(design, design.units, NEW_PARTS)


def brand_of(design: Design, path: Path, file: Path | None, voice: Voice) -> Branding | None:
    """The brand of a brand file, else the design's own, with its logo; None if there is none."""
    from buildplan.business.copies.brand import branding

    if file is not None:
        return brand_in(file, voice)
    return None if design.brand is None else branding(design.brand, path)


def brand_in(file: Path, voice: Voice) -> Branding:
    """The brand of a brand file, with its logo."""
    from buildplan.business.copies.brand import branding
    from buildplan.design.reading import read_brand
    from buildplan.design.translating import translated_brand

    return branding(translated_brand(read_brand(file), voice.language), file)


def read_all(
    paths: Iterable[Path], read: Callable[[Path, Voice], Read], voice: Voice
) -> dict[Path, Read]:
    """Each file read; when some cannot be, the problems of all of them are listed first."""
    from buildplan.commands.many_designs import VERY_MANY, each_design

    found: dict[Path, Read] = {}
    worst: Exception | None = None
    asked = list(paths)
    answers = each_design(partial(_read_or_not, read, voice), asked, VERY_MANY)
    for path, answer in zip(asked, answers, strict=True):
        if isinstance(answer, DesignProblemsError):
            list_problems(path, answer.problems, voice)
            worst = worst or ProblemsFoundError()
        elif isinstance(answer, UnreadableDesignError):
            aside(in_words(answer.problem, voice, answer.file))
            worst = typer.Exit(2)
        else:
            found[path] = answer
    if worst is not None:
        raise worst
    return found


def _read_or_not(
    read: Callable[[Path, Voice], Read], voice: Voice, path: Path
) -> Read | DesignProblemsError | UnreadableDesignError:
    try:
        return read(path, voice)
    except (DesignProblemsError, UnreadableDesignError) as error:
        return error


def tried(path: Path, problems: Sequence[Problem], voice: Voice) -> tuple[Problem, ...]:
    """The problems of a design, each change that they suggest tried on the piece itself; says
    meanwhile that this goes on."""
    if not problems:
        return ()
    from buildplan.fitting.checking import to_try
    from buildplan.fitting.checking import tried as tried_on_it

    if not to_try(problems):
        return tuple(problems)
    with busy(voice.say("Trying what would mend it ...")):
        return tried_on_it(path, problems, voice)


def checked_piece(path: Path, piece: Evaluation, voice: Voice, hands: Path | None) -> Checked:
    """A piece checked; says meanwhile that this goes on."""
    from buildplan.fitting.checking import checked

    words = (
        voice.say("Trying what would mend it ...")
        if piece.facts.problems
        else voice.say("Trying what would stiffen it ...")
    )
    with busy(words):
        return checked(path, piece, voice, hands)


def reasons_of(piece: Evaluation, figures: Sequence[Moved], voice: Voice) -> list[Why]:
    """What figures of a piece rest on; says how long this takes where it is long."""
    if not figures:
        return []
    from buildplan.evaluation.expected_time import seconds_to_work_out
    from buildplan.hands.why import why

    def seconds(size: PieceSize) -> float:
        return SHAPES_FOUND_ANEW * len(figures) * seconds_to_work_out(size)

    tell_if_long(piece.design, seconds, voice)
    with busy(voice.say("Working the piece out with other numbers ...")):
        return [why(piece, figure) for figure in figures]
