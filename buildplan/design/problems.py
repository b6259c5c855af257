"""Problems as values: where, what is wrong, and what would be right. Put into words here only."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from buildplan.language.speaking import say


@dataclass(frozen=True)
class Problem:
    """One thing that a user can mend.

    `path` is the place in the design file (`build.tube.course[3]`) and `line` its line,
    from 1; `joints` are the labels concerned, when the piece rather than the file is at
    fault. `suggestion` says what would be right.
    """

    message: str
    suggestion: str = ""
    path: str = ""
    line: int | None = None
    joints: tuple[str, ...] = ()


class UnreadableDesignError(Exception):
    """The file could not be read as a design at all (missing, not text, not YAML, too big)."""

    def __init__(self, file: str, problem: Problem) -> None:
        super().__init__(f"{file}: {problem.message}")
        self.file = file
        self.problem = problem


class DesignProblemsError(Exception):
    """The file was read, and what it says has problems: all of them, in file order."""

    def __init__(self, file: str, problems: Sequence[Problem], name: str = "") -> None:
        super().__init__(f"{file}: {len(problems)} problem(s)")
        self.file = file
        self.problems = tuple(problems)
        self.name = name


def in_words(problem: Problem, file: str = "") -> str:
    """One line for people: `file:line: path: message; suggestion`."""
    place = file
    if problem.line is not None:
        place = f"{place}:{problem.line}" if place else say("line {line}", line=problem.line)
    parts = [part for part in (place, problem.path) if part]
    if problem.joints:
        parts.append(say("at {joints}", joints=", ".join(problem.joints)))
    words = ": ".join([*parts, problem.message])
    return f"{words}; {problem.suggestion}" if problem.suggestion else words
