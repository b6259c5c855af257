"""The turns of steps as data: when each is done, and what comes into the piece by it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import chain

from buildplan.booklet.common.book import Book
from buildplan.framework.model import Framework
from buildplan.instructions.model import TurnWords
from buildplan.screen.model import TurnData
from buildplan.screen.seats import seat_of
from buildplan.screen.words import Told
from buildplan.sequence.model import Kind, Step, Turn


def moments_of(steps: Sequence[Step]) -> Iterator[tuple[int, int]]:
    """Every turn in the order in which it is done: number of the step, and of the turn from 0."""
    for step in steps:
        yield from ((step.number, turn) for turn in range(len(step.turns)))


def coming(book: Book, moments: Sequence[tuple[int, int]]) -> Mapping[str, int]:
    """The moment at which each link and each lock ("lock A1") comes into the piece; chains of
    a part that is laid later lie somewhere else until then."""
    found: dict[str, int] = {}
    for moment, (number, at) in enumerate(moments):
        step = book.steps[number - 1]
        found.update(dict.fromkeys(brought(book.framework, step)[at], moment))
        for operation in step.turns[at].operations:
            if operation.adds:
                found.update({f"lock {joint}": moment for joint in operation.locks})
            if operation.kind is Kind.LAY and not operation.links and book.framework.parts:
                part = book.framework.built_with(operation.joints[0])
                for long in part.chains:
                    found.update(dict.fromkeys(long.chain.links, moment))
    return found


def brought(framework: Framework, step: Step) -> list[list[str]]:
    """The links that each turn of a step brings into the piece.

    Chains of a course are laid together once all of them are tagged; each is shown with the turn
    that is its own.
    """
    found: list[list[str]] = [[] for _ in step.turns]
    own = {
        operation.chain: at
        for at, turn in enumerate(step.turns)
        for operation in turn.operations
        if operation.chain
    }
    letters = {link: long.letter for long in framework.chains for link in long.chain.links}
    for at, turn in enumerate(step.turns):
        for operation in turn.operations:
            for link in operation.links if operation.adds else ():
                laid = operation.kind is Kind.LAY
                found[own.get(letters.get(link, ""), at) if laid else at].append(link)
    return found


def turn_data(
    book: Book, told: Mapping[str, Told], step: Step, number: int, moment: int
) -> TurnData:
    """One turn of a step, `number` from 0."""
    turn = step.turns[number]
    brings = [operation for operation in turn.operations if operation.adds]
    others = [operation for operation in turn.operations if not operation.adds]
    words = {language: each.steps[step.number - 1].turns[number] for language, each in told.items()}
    return TurnData(
        moment=moment,
        name={language: each.name for language, each in words.items()},
        row={language: rows(each) for language, each in words.items()},
        joints=list(turn.joints),
        ways=_ways(turn),
        links=brought(book.framework, step)[number],
        locks=[joint for operation in brings for joint in operation.locks],
        readies=_each_once(operation.links for operation in others),
        ready_locks=_each_once(operation.locks for operation in others),
        seat=seat_of(book, step.kind, [turn]),
    )


def rows(turn: TurnWords) -> str:
    """The rows of a turn, a line each."""
    return "\n".join(turn.lines)


def _each_once(names: Iterable[Sequence[str]]) -> list[str]:
    return list(dict.fromkeys(chain.from_iterable(names)))


def _ways(turn: Turn) -> list[list[str]]:
    """The way of each chain or balloon that a turn ties in, back to its start where it closes."""
    ways = []
    for operation in turn.operations:
        if operation.kind in (Kind.BRACE, Kind.SINGLE):
            closed = len(operation.links) == len(operation.joints) > 2
            ways.append([*operation.joints, *(operation.joints[:1] if closed else ())])
    return ways
