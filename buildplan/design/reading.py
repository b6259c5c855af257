"""Reading a design file: from a path to a checked design, or to all that is wrong with it."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Mapping
from itertools import islice
from pathlib import Path
from typing import TypeVar

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from buildplan.design.checks import check
from buildplan.design.joining import join_parts
from buildplan.design.kinds import FileKind
from buildplan.design.model import Brand, Design
from buildplan.design.problems import DesignProblemsError, Problem, UnreadableDesignError
from buildplan.design.source.mistake import Mistake, path_in_words
from buildplan.design.source.refusals import mistakes_in
from buildplan.design.source.yaml_nodes import Keys, Node, Scalar, mark_of, plain
from buildplan.design.source.yaml_source import load
from buildplan.design.suggestions import Suggestion, by_hand
from buildplan.design.values import FileModel
from buildplan.language.messages import Message, mark, message

MOST_BYTES = 1024 * 1024
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


def read_design(
    path: Path, known_constants: Collection[str] | None = None, within: tuple[Path, ...] = ()
) -> Design:
    """Read and check the design file at `path`; the parts of an assembly come inline.

    `known_constants` are the names that the file's `constants` may use; None lets any pass.
    `within` are the assemblies that this file is read for as a part, outermost first.

    Raises UnreadableDesignError when the file cannot be read as a design at all, and
    DesignProblemsError with every problem of the file, in its order, when it can.
    """
    files = (*within, path)

    def part(file: Path) -> Design:
        if any(_same_file(file, other) for other in files):
            raise _unreadable(
                file,
                FileKind.PART_OF_ITSELF,
                message("this assembly would have itself as a part"),
                by_hand(message("name another design, or none")),
            )
        return read_design(file, known_constants, files)

    return read_as(
        Design,
        path,
        lambda data: check(data, known_constants),
        lambda design: join_parts(design, path.parent, part, known_constants),
    )


def _same_file(one: Path, other: Path) -> bool:
    try:
        return one.resolve() == other.resolve()
    except (OSError, ValueError, RuntimeError):
        return False


def read_brand(path: Path) -> Brand:
    """Read and check a brand file: the keys of `brand`, in a file of their own. Raises as
    `read_design` does."""
    return read_as(Brand, path, lambda data: ())


def _as_it_is(read: Form) -> tuple[Form, list[Mistake]]:
    return read, []


def read_as(
    form: type[Form],
    path: Path,
    checked: Callable[[object], Iterable[Mistake]],
    completed: Callable[[Form], tuple[Form, list[Mistake]]] = _as_it_is,
) -> Form:
    """Read the file at `path` as one of `form`; `checked` finds what its parts disagree on in
    its content as plain data, `completed` brings in what a file that is right so far draws on.
    Raises as `read_design` does."""
    file = str(path)
    source = load(_text(path), file)
    if not isinstance(source.root, Keys):
        first, second, *_ = form.model_fields
        raise UnreadableDesignError(
            file,
            Problem(
                FileKind.NOT_A_MAPPING,
                message(
                    "{a_file} is made of keys with values, and this one is not",
                    a_file=message(KIND_OF_FILE[first]),
                ),
                by_hand(
                    message(
                        "begin with {first}, then {second} and the other keys, each on its own "
                        "line",
                        first="name:" if first == "name" else f"{first}: 1",
                        second=f"{second}:",
                    )
                ),
                line=source.root.mark[0],
            ),
        )
    first = next(iter(form.model_fields))
    for other in KIND_OF_FILE:
        if other in source.root.nodes and first not in source.root.nodes:
            raise UnreadableDesignError(
                file,
                Problem(
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
                    line=source.root.mark[0],
                ),
            )
    data = plain(source.root)
    read = None
    mistakes = list(source.mistakes)
    errors: list[ErrorDetails] = []
    try:
        read = form.model_validate(data)
    except ValidationError as error:
        errors = error.errors(include_url=False)
        mistakes += mistakes_in(errors[:MOST_PROBLEMS], data, form)
    mistakes += islice(checked(data), MOST_PROBLEMS)
    if read is not None and not mistakes:
        read, mistakes = completed(read)
    if read is None or mistakes:
        problems = _in_file_order(mistakes, source.root)
        if max(len(problems), len(errors)) >= MOST_PROBLEMS:
            more = Problem(
                FileKind.MORE_PROBLEMS,
                message("there may be more problems than these"),
                by_hand(message("mend these first")),
            )
            problems = [*problems[:MOST_PROBLEMS], more]
        raise DesignProblemsError(file, problems, _name(source.root))
    return read


def _text(path: Path) -> str:
    """The text of the file, which must be UTF-8 and of a sensible size."""
    try:
        with path.open("rb") as file:
            data = file.read(MOST_BYTES + 1)
    except FileNotFoundError:
        raise _unreadable(
            path,
            FileKind.NO_SUCH_FILE,
            message("there is no such file"),
            by_hand(message("check the name and the folder")),
        ) from None
    except IsADirectoryError:
        raise _unreadable(
            path,
            FileKind.A_FOLDER,
            message("this is a folder"),
            by_hand(message("name the design file in it")),
        ) from None
    except PermissionError:
        raise _unreadable(
            path,
            FileKind.NOT_ALLOWED,
            message("this file may not be read"),
            by_hand(message("ask its owner, or copy it to your own folder")),
        ) from None
    except (OSError, ValueError) as error:
        why = error.strerror if isinstance(error, OSError) and error.strerror else str(error)
        raise _unreadable(
            path,
            FileKind.UNREADABLE,
            message("cannot be read ({why})", why=why),
            by_hand(message("check the name")),
        ) from None
    if len(data) > MOST_BYTES:
        raise _unreadable(
            path,
            FileKind.TOO_LARGE,
            message("larger than {size} KiB, which no design is", size=str(MOST_BYTES // 1024)),
            by_hand(
                message(
                    "name the design file, a .yaml of a few dozen lines; use repeat for long "
                    "courses"
                )
            ),
        )
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        raise _unreadable(
            path,
            FileKind.NOT_UTF8,
            message("saved as UTF-16"),
            by_hand(message("save it as UTF-8 text")),
        )
    if b"\0" in data:
        raise _unreadable(
            path,
            FileKind.NOT_TEXT,
            message("not a text file"),
            by_hand(message("name the design file, a .yaml of plain text")),
        )
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        raise _unreadable(
            path,
            FileKind.NOT_UTF8,
            message("this line holds bytes that are not UTF-8 text"),
            by_hand(message("save it as UTF-8 text")),
            line,
        ) from None


def _unreadable(
    path: Path,
    kind: FileKind,
    said: Message,
    suggestion: Suggestion,
    line: int | None = None,
) -> UnreadableDesignError:
    return UnreadableDesignError(str(path), Problem(kind, said, suggestion, line=line))


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
