"""Signs that no font has, told at their places in the files of designs."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from enum import auto
from pathlib import Path

from buildplan.business.copies.brand import fonts_of
from buildplan.design.model import Design
from buildplan.drawing.fonts import refuse_unprintable
from buildplan.drawing.typeset.font_files import named_fonts, with_fonts
from buildplan.language.told import NoSignError
from buildplan.source.problems import DesignProblemsError, Problem, ProblemKind


class SignKind(ProblemKind):
    """What is wrong with a text."""

    NO_FONT = auto()


@contextmanager
def signs_told_in_place(designs: Iterable[tuple[Design, Path]]) -> Iterator[None]:
    """Set type for designs, each with its file, in the fonts that are named now and their own.

    Raises DesignProblemsError for the first of them that has signs that no font has, NoSignError
    for those of other words.
    """
    named = named_fonts()
    try:
        yield
    except NoSignError:
        for design, file in designs:
            with with_fonts((*named, *fonts_of(design.brand, file))):
                problems = list(_without_font(design))
            if problems:
                raise DesignProblemsError(str(file), problems, design.name) from None
        raise


def _without_font(design: Design) -> Iterator[Problem]:
    for path, text in _words_of(design):
        try:
            refuse_unprintable(text)
        except NoSignError as error:
            yield Problem(SignKind.NO_FONT, error.told, path=path)


def _words_of(design: Design) -> Iterator[tuple[str, str]]:
    """The words that pages print as a design has them, each with its place."""
    yield "name", design.name
    for key, balloon in design.balloons.items():
        yield f"balloons.{key}.label", balloon.label
    for stage, note in design.text.items():
        yield f"text.{stage}", note
    if design.brand is not None:
        yield "brand.name", design.brand.name
        yield "brand.contact", design.brand.contact
        yield "brand.licence", design.brand.licence
