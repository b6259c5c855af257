"""Signs that no font has, told where they were written: in the files that were read, each at its
line, or in what else was given."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from enum import auto
from pathlib import Path

from buildplan.language.messages import Message, Value, message
from buildplan.language.told import NoSignError, no_sign
from buildplan.source.file_text import text_of
from buildplan.source.mistake import Path as Place
from buildplan.source.mistake import path_in_words
from buildplan.source.problems import DesignProblemsError, Problem, ProblemKind
from buildplan.source.yaml_nodes import Keys, Node, NodeItems, Scalar
from buildplan.source.yaml_source import load

LONGEST_TOLD = 80  # letters


class SignKind(ProblemKind):
    """What is wrong with a text."""

    NO_FONT = auto()


@contextmanager
def signs_told_in_place(
    files: Iterable[Path], given: Iterable[tuple[Value, str]] = ()
) -> Iterator[None]:
    """Set type for designs, brands and events, of these files; `given` is what was written
    elsewhere, each text with what it is called.

    Raises DesignProblemsError for the first file that has what cannot be set, NoSignError for what
    stands in none.
    """
    try:
        yield
    except NoSignError as error:
        for called, text in given:
            if any(sign in text for sign in error.signs):
                told = message("{place}: {problem}", place=called, problem=_told(error, text))
                raise NoSignError(told, error.signs, error.text) from None
        for file in dict.fromkeys(files):
            problems = list(_problems(file, error))
            if problems:
                raise DesignProblemsError(str(file), problems) from None
        raise


def _problems(file: Path, error: NoSignError) -> Iterator[Problem]:
    for at, scalar, text in _texts(load(text_of(file), str(file)).root, ()):
        if any(sign in text for sign in error.signs):
            told, where = _told(error, text), path_in_words(at)
            yield Problem(SignKind.NO_FONT, told, path=where, line=scalar.mark[0])


def _told(error: NoSignError, text: str) -> Message:
    """What cannot be set of a text; of a long one the line that it was on."""
    lost = tuple(sign for sign in error.signs if sign in text)
    return no_sign(lost, text if len(text) <= LONGEST_TOLD else error.text)


def _texts(node: Node, at: Place) -> Iterator[tuple[Place, Scalar, str]]:
    """The texts of a file in its order, each with where it stands."""
    match node:
        case Scalar(value=str(text)):
            yield at, node, text
        case NodeItems():
            for number, item in enumerate(node.nodes):
                yield from _texts(item, (*at, number))
        case Keys():
            for key, value in node.nodes.items():
                yield from _texts(value, (*at, key))
