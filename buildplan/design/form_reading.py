"""Reading one file of a form (a design, an event, measurements, a brand), or all that is wrong."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from itertools import islice
from pathlib import Path
from typing import TypeVar

from pydantic import ValidationError

from buildplan.design.model import Brand
from buildplan.language.messages import mark, message
from buildplan.source.decimal_commas import without_commas
from buildplan.source.file_text import text_of
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import Mistake, path_in_words
from buildplan.source.problems import DesignProblemsError, Problem, UnreadableDesignError
from buildplan.source.refusals import mistakes_in
from buildplan.source.suggestions import by_hand
from buildplan.source.trying import tried
from buildplan.source.values import FileModel
from buildplan.source.yaml_nodes import Keys, Node, Scalar, mark_of, plain
from buildplan.source.yaml_source import load

# by the key that it begins with
KIND_OF_FILE: Mapping[str, str] = {
    "buildplan": mark("a design file"),
    "event": mark("an event file"),
    "buildplan_hands": mark("a file of measurements"),
    "name": mark("a brand file"),
}
# a file that is wrong throughout is not listed throughout
MOST_PROBLEMS = 1000

Form = TypeVar("Form", bound=FileModel)
Checks = Callable[[object], Iterable[Mistake]]
"""What finds the mistakes of a file in its content as plain data."""


def _as_it_is(read: Form) -> tuple[Form, list[Mistake]]:
    return read, []


def read_as(
    form: type[Form],
    path: Path,
    checked: Checks,
    completed: Callable[[Form], tuple[Form, list[Mistake]]] = _as_it_is,
) -> Form:
    """Read the file at `path` as one of `form`; `checked` finds what its parts disagree on in
    its content as plain data, `completed` brings in what a file that is right so far draws on.
    Each change that a problem suggests has been tried. Raises as `read_design` does."""
    file = str(path)
    source = load(text_of(path), file)
    root = _keys_of(source.root, form, file)

    def look(data: object) -> tuple[Form | None, list[Mistake]]:
        whole, commas = without_commas(data)
        read, mistakes = _look(form, whole, checked, completed)
        return read, [*commas, *mistakes]

    data = plain(root)
    read, mistakes = look(data)
    slips = {one.at for one in source.mistakes}
    mistakes = [*source.mistakes, *(one for one in mistakes if one.at not in slips)]
    if read is None or mistakes:
        mistakes = tried(mistakes, data, lambda changed: look(changed)[1], root.size)
        problems = _in_file_order(mistakes, root)
        if len(mistakes) >= MOST_PROBLEMS:
            more = Problem(
                FileKind.MORE_PROBLEMS,
                message("there may be more problems than these"),
                by_hand(message("mend these first")),
            )
            problems = [*problems[:MOST_PROBLEMS], more]
        raise DesignProblemsError(file, problems, _name(root))
    return read


def _look(
    form: type[Form],
    data: object,
    checked: Checks,
    completed: Callable[[Form], tuple[Form, list[Mistake]]],
) -> tuple[Form | None, list[Mistake]]:
    """What the content of a file is read as, if it can be, and what is wrong with it."""
    read, mistakes = None, []
    try:
        read = form.model_validate(data)
    except ValidationError as error:
        errors = error.errors(include_url=False)
        mistakes = list(mistakes_in(errors[:MOST_PROBLEMS], data, form))
    mistakes += islice(checked(data), MOST_PROBLEMS)
    mistakes = _without_those_of_others(mistakes)
    return completed(read) if read is not None and not mistakes else (read, mistakes)


def _without_those_of_others(mistakes: Sequence[Mistake]) -> list[Mistake]:
    """Where a build gives several patterns, nothing of what is in them: one of them alone stays."""
    several = [one for one in mistakes if one.kind is FileKind.SEVERAL_PATTERNS]
    builds = {one.at[:-1] for one in several}
    return [
        one
        for one in mistakes
        if one in several or not any(one.at[: len(build)] == build for build in builds)
    ]


def _keys_of(root: Node, form: type[FileModel], file: str) -> Keys:
    """The keys of a file that is to be of `form`. Raises UnreadableDesignError if it has none,
    or is a file of another form."""
    first, second, *_ = form.model_fields
    if not isinstance(root, Keys):
        problem = Problem(
            FileKind.NOT_A_MAPPING,
            message(
                "{a_file} is made of keys with values, and this one is not",
                a_file=message(KIND_OF_FILE[first]),
            ),
            by_hand(
                message(
                    "begin with {first}, then {second} and the other keys, each on its own line",
                    first="name:" if first == "name" else f"{first}: 1",
                    second=f"{second}:",
                )
            ),
            line=root.mark[0],
        )
        raise UnreadableDesignError(file, problem)
    # a name alone makes no brand file: beside keys of this form the first of these was forgotten
    forgotten = not ({*form.model_fields} - {*Brand.model_fields}).isdisjoint(root.nodes)
    for other in KIND_OF_FILE:
        named = other in root.nodes and not (other == "name" and forgotten)
        if named and first not in root.nodes:
            problem = Problem(
                FileKind.ANOTHER_KIND_OF_FILE,
                message(
                    "this is {a_file}, and {another} is wanted",
                    a_file=message(KIND_OF_FILE[other]),
                    another=message(KIND_OF_FILE[first]),
                ),
                by_hand(
                    message(
                        "{a_file} begins with {right}",
                        a_file=message(KIND_OF_FILE[first]),
                        right=f"{first}: 1",
                    )
                ),
                line=root.mark[0],
            )
            raise UnreadableDesignError(file, problem)
    return root


def _in_file_order(mistakes: Iterable[Mistake], root: Node) -> list[Problem]:
    """The mistakes as problems with their lines, from the top of the file down, once each."""
    placed = sorted(
        ((one.mark or mark_of(root, one.at), one) for one in mistakes), key=lambda pair: pair[0]
    )
    problems = [
        Problem(one.kind, one.message, one.suggestion, path_in_words(one.at), line)
        for (line, _), one in placed
    ]
    once = {(one.kind, one.message, one.path, one.line): one for one in reversed(problems)}
    return list(reversed(once.values()))


def _name(root: Keys) -> str:
    """The piece's name, if it is one."""
    node = root.nodes.get("name")
    return node.value if isinstance(node, Scalar) and isinstance(node.value, str) else ""
