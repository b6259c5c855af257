"""Reading a design file, with the files of its parts, and a brand file."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator
from pathlib import Path

from buildplan.design.checks import check
from buildplan.design.form_reading import Checks, read_as
from buildplan.design.model import Brand, Design
from buildplan.design.wholes import mistakes_of_whole
from buildplan.language.messages import message
from buildplan.patterns.assembly_keys import assemblies_deep
from buildplan.patterns.build import built_as
from buildplan.patterns.pattern import Around, PartFile
from buildplan.patterns.registry import joints_of, pattern_of
from buildplan.source.file_text import unreadable
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import Mistake, path_in_words
from buildplan.source.problems import (
    DesignProblemsError,
    Problem,
    ProblemKind,
    UnreadableDesignError,
)
from buildplan.source.suggestions import by_hand

# assemblies that a part lies in
MOST_WITHIN = 10

Known = dict[Path, Design | UnreadableDesignError | DesignProblemsError]
"""What has been read for one design, by where the file is."""


def read_design(
    path: Path,
    known_constants: Collection[str] | None = None,
    passed_over: Collection[ProblemKind] = (),
) -> Design:
    """Read and check the design file at `path`; the parts of an assembly come inline.

    `known_constants` are the names that the file's `constants` may use; None lets any pass.
    Problems of the kinds that are `passed_over` do not keep it from being read.

    Raises UnreadableDesignError when the file cannot be read as a design at all, and
    DesignProblemsError with every problem of the file, in its order, when it can.
    """

    def checked(data: object) -> Iterator[Mistake]:
        found = check(data, known_constants)
        return (one for one in found if one.kind not in passed_over)

    return _read(path, checked, (), {})


def _read(path: Path, checked: Checks, within: tuple[Path, ...], known: Known) -> Design:
    """As `read_design`, of a part of the assemblies `within`, outermost first; `known` keeps what
    was read before, so that a file that many parts name is read once."""
    files = (*within, path)

    def part(name: str) -> PartFile:
        file = path.parent / name
        if any(_same_file(file, other) for other in files):
            raise unreadable(
                file,
                FileKind.PART_OF_ITSELF,
                message("this assembly would have itself as a part"),
                by_hand(message("name another design, or none")),
            )
        if len(files) > MOST_WITHIN:
            raise _too_deep(files[0])
        own = _read_once(file, checked, files, known)
        if len(files) + assemblies_deep(own.build) > MOST_WITHIN:
            raise _too_deep(files[0])
        return PartFile(own.build, own.units, own.balloons, own.colour_pattern, own.stand_on)

    return read_as(Design, path, checked, lambda design: _joined(design, part, checked))


def _read_once(file: Path, checked: Checks, within: tuple[Path, ...], known: Known) -> Design:
    """As `_read`, of a file that may be known by now, or that it cannot be read."""
    at = _resolved(file)
    if at not in known:
        try:
            known[at] = _read(file, checked, within, known)
        except (UnreadableDesignError, DesignProblemsError) as error:
            known[at] = error
    found = known[at]
    if isinstance(found, Exception):
        raise found
    return found


def _too_deep(outermost: Path) -> UnreadableDesignError:
    return unreadable(
        outermost,
        FileKind.PARTS_TOO_DEEP,
        message("this assembly has parts within parts more than {count} deep", count=MOST_WITHIN),
        by_hand(message("let fewer files lead from one to the next")),
    )


def joined_data(data: object, folder: Path, known_constants: Collection[str]) -> Design:
    """The design that plain data makes, which passes `check`; the files of its parts lie in
    `folder`. Raises DesignProblemsError where the parts are wrong."""

    known: Known = {}

    def checked(given: object) -> Iterator[Mistake]:
        return check(given, known_constants)

    def part(name: str) -> PartFile:
        own = _read_once(folder / name, checked, (), known)
        return PartFile(own.build, own.units, own.balloons, own.colour_pattern, own.stand_on)

    design = Design.model_validate(data)
    whole, mistakes = _joined(design, part, checked)
    if mistakes:
        problems = [
            Problem(one.kind, one.message, one.suggestion, path_in_words(one.at))
            for one in mistakes
        ]
        raise DesignProblemsError(str(folder), problems, design.name)
    return whole


def _joined(
    design: Design,
    read: Callable[[str], PartFile],
    checked: Checks,
) -> tuple[Design, list[Mistake]]:
    """A design with the parts of its pattern inline, and what is wrong with them; one whose
    pattern has none as it is."""
    pattern, keys = pattern_of(design.build)
    if pattern.join is None:
        return design, []
    around = Around(design.units, design.balloons, design.stand_on, read, checked, joints_of)
    joined = pattern.join(keys, around)
    build = built_as(pattern.name, joined.keys)
    update = {"build": build, "balloons": dict(joined.balloons)}
    whole = design.model_copy(update=update)
    return whole, list(joined.mistakes or mistakes_of_whole(whole))


def _same_file(one: Path, other: Path) -> bool:
    return _resolved(one) == _resolved(other)


def _resolved(file: Path) -> Path:
    """Where a file is, whichever way it is named; one that is nowhere as it is named."""
    try:
        return file.resolve()
    except (OSError, ValueError, RuntimeError):
        return file


def read_brand(path: Path) -> Brand:
    """Read and check a brand file: the keys of `brand`, in a file of their own. Raises as
    `read_design` does."""
    return read_as(Brand, path, lambda data: ())
