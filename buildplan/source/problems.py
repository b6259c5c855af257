"""Problems as values: what is wrong, where, and what would be right. Put into words here only."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum

from buildplan.language.messages import Decimal, Listing, Measure, Message, Value, message
from buildplan.language.shown import shown
from buildplan.language.voice import Voice
from buildplan.source.runs import runs_words
from buildplan.source.suggestions import (
    NOTHING,
    Suggestion,
    change_as_data,
    suggestion_words,
)


class ProblemKind(StrEnum):
    """A stable code of what can be wrong, for programs to act on: `does-not-close`.

    Each package lists its own in a class of this; a code is its name in small letters.
    """

    @staticmethod
    def _generate_next_value_(name: str, start: int, count: int, last_values: list[str]) -> str:
        return name.lower().replace("_", "-")


@dataclass(frozen=True)
class Problem:
    """One thing that a user can mend.

    `message` says it, in any language. `path` is the place in the design file
    (`build.tube.course[3]`) and `line` its line, from 1; `joints` are the labels concerned, when
    the piece rather than the file is at fault, `place` where these are when they are too many to be
    named. `suggestion` says what would be right.
    """

    kind: ProblemKind
    message: Message
    suggestion: Suggestion = NOTHING
    path: str = ""
    line: int | None = None
    joints: tuple[str, ...] = ()
    place: Listing | Message | None = None

    @property
    def data(self) -> Mapping[str, object]:
        """What the message names, as plain data by its names."""
        return dict(_data(self.message))


def _data(said: Message) -> Iterator[tuple[str, object]]:
    if said.many:
        yield "number", said.number
    for name, value in said.values:
        if isinstance(value, Message):
            yield from _data(value)
        else:
            yield name, _plain(value)


def _plain(value: Value) -> object:
    match value:
        case Decimal():
            return round(value.value, value.places + 3)
        case Measure():
            return round(value.number, 3)
        case Listing():
            return [_plain(item) for item in value.items]
        case Message():
            return dict(_data(value))
    return value


class UnreadableDesignError(Exception):
    """The file could not be read as a design at all (missing, not text, not YAML, too big)."""

    def __init__(self, file: str, problem: Problem) -> None:
        super().__init__(file, problem)
        self.file = file
        self.problem = problem

    def __str__(self) -> str:
        return f"{self.file}: {self.problem.kind}"


class DesignProblemsError(Exception):
    """The file was read, and what it says has problems: all of them, in file order."""

    def __init__(self, file: str, problems: Sequence[Problem], name: str = "") -> None:
        super().__init__(file, tuple(problems), name)
        self.file = file
        self.problems = tuple(problems)
        self.name = name

    def __str__(self) -> str:
        return f"{self.file}: {len(self.problems)} problem(s)"


def in_words(problem: Problem, voice: Voice, file: str = "") -> str:
    """One line for people: `file:line: path: message; suggestion`."""
    place = shown(file)
    if problem.line is not None:
        place = f"{place}:{problem.line}" if place else voice.say("line {line}", line=problem.line)
    parts = [part for part in (place, shown(problem.path)) if part]
    told = voice.tell(problem.message)
    if problem.joints:
        where = problem.place or runs_words(problem.joints)
        told = voice.say("at {joints}: {problem}", joints=where, problem=told)
    if problem.suggestion:
        helps = suggestion_words(problem.suggestion, voice)
        told = voice.say("{problem}; {suggestion}", problem=told, suggestion=helps)
    return ": ".join([*parts, told])


def as_message(problem: Problem, file: str) -> Message:
    """A problem of another file, to be told within one of this."""
    if problem.line is None:
        return message("{file}: {problem}", file=file, problem=problem.message)
    return message(
        "{file}, line {line}: {problem}", file=file, line=problem.line, problem=problem.message
    )


def problem_as_data(problem: Problem, voice: Voice, file: str = "") -> dict[str, object]:
    """A problem as plain data for scripts, with its sentence under `text`.

    `kind` is its stable code and `data` what its message names; `changes` are the ways to mend
    it that name a change of the file, each a list of changes.
    """
    return {
        "kind": problem.kind.value,
        "text": in_words(problem, voice, file),
        "message": voice.tell(problem.message),
        "suggestion": suggestion_words(problem.suggestion, voice),
        "path": problem.path,
        "line": problem.line,
        "joints": list(problem.joints),
        "data": problem.data,
        "by_hand": problem.suggestion.by_hand,
        "changes": [
            {
                "text": voice.tell(way.words),
                "changes": [change_as_data(one) for one in way.changes],
            }
            for way in problem.suggestion.ways
        ],
    }
