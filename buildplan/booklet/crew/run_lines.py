"""The lines of a run of braces in a crew's table: equal braces that follow one another in one line,
a single with the brace that it is tied with."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from buildplan.booklet.common.book import Book
from buildplan.instructions.jobs import job_row
from buildplan.language.phrases import clauses, first_to_last
from buildplan.sequence.jobs import RunRow
from buildplan.sequence.model import Kind

FEWEST = 2  # so many equal braces are worth a line together


@dataclass(frozen=True)
class RunLine:
    """A line of the table: what is tied (braces by their numbers), the kind of cell that it
    finishes, the joints in order (of several braces those of the first and of the last), and
    those that are locked then; `step` is the number of the step in which it begins."""

    name: str
    cell: str
    joints: str
    locks: str
    step: int
    several: bool = False


def run_lines(book: Book, rows: Sequence[RunRow]) -> list[RunLine]:
    """The rows of a run as lines of its table."""
    found: list[RunLine] = []
    for braces, singles in _together(book, rows):
        if len(braces) >= FEWEST:
            found.append(_in_a_row(book, braces))
        else:
            found += [_line(book, row, singles if row is braces[-1] else []) for row in braces]
    return found


def _together(book: Book, rows: Sequence[RunRow]) -> list[tuple[list[RunRow], list[RunRow]]]:
    """Braces of which each is one balloon further on than the one before it, or a row that stands
    alone; with the singles that are tied with the last."""
    found: list[tuple[list[RunRow], list[RunRow]]] = []
    for row in rows:
        if row.kind is Kind.SINGLE and found and row.step is found[-1][0][-1].step:
            found[-1][1].append(row)
        elif found and not found[-1][1] and _goes_on(book, found[-1][0][-1], row):
            found[-1][0].append(row)
        else:
            found.append(([row], []))
    return found


def _goes_on(book: Book, before: RunRow, row: RunRow) -> bool:
    """Whether a brace is the one before it, one balloon further on."""
    if row.brace is None or before.brace is None or row.cells or before.cells:
        return False
    one, other = book.framework.brace[before.brace], book.framework.brace[row.brace]
    alike = [len(b.chains) == 1 and not b.shared and b.chains[0].closed for b in (one, other)]
    keys = [tuple(book.framework.link[link].balloon for link in b.links) for b in (one, other)]
    if not all(alike) or keys[0] != keys[1] or not _own_locks(before, row):
        return False
    place = book.context.place
    letter = book.context.piece.letter
    steps = zip(one.chains[0].joints, other.chains[0].joints, strict=True)
    return all(
        letter[a] == letter[b] and place[letter[b]][b] == place[letter[a]][a] + 1 for a, b in steps
    )


def _own_locks(*rows: RunRow) -> bool:
    """Whether each row locks none but its own joints."""
    return all(set(row.locks) <= set(row.joints) for row in rows)


def _in_a_row(book: Book, braces: Sequence[RunRow]) -> RunLine:
    voice = book.voice
    numbers = [row.brace for row in braces if row.brace is not None]
    ends = numbers[0], numbers[-1]
    first, last = (book.framework.brace[n].chains[0].joints for n in ends)
    waiting = [joint for row in braces for joint in row.joints if joint not in row.locks]
    locks = voice.say_in("which joints to lock", "each") if not waiting else ""
    if waiting and any(row.locks for row in braces):
        locks = voice.say("each but {joints}", joints=" ".join(waiting))
    return RunLine(
        first_to_last(voice, voice.whole(numbers[0]), voice.whole(numbers[-1])),
        "",
        first_to_last(voice, " ".join(first), " ".join(last)),
        locks,
        braces[0].step.number,
        several=True,
    )


def _line(book: Book, row: RunRow, singles: Sequence[RunRow]) -> RunLine:
    voice = book.voice
    said = job_row(voice, row, book.told)
    joints = [
        _tersely(book, row, said.words),
        *(voice.say("single {joints}", joints=" ".join(one.joints)) for one in singles),
    ]
    rows = (row, *singles)
    locked = [joint for one in rows for joint in one.locks]
    named = {joint for one in rows for joint in one.joints}
    locks = " ".join(locked)
    if len(locked) > 1 and set(locked) == named:
        locks = voice.say_in("which joints to lock", "each")
    name = said.name if row.brace is None else voice.whole(row.brace)
    return RunLine(name, said.cell, clauses(voice, joints), locks, row.step.number)


def _tersely(book: Book, row: RunRow, words: str) -> str:
    """A row without what goes without saying: a brace closes where it began."""
    voice = book.voice
    if row.kind is Kind.SINGLE:
        return " ".join(row.joints)
    if row.brace is None:
        return words
    brace = book.framework.brace[row.brace]
    ways = clauses(voice, (" ".join(chain.joints) for chain in brace.chains))
    if not brace.shared:
        return ways
    return voice.say("{joints}, shares {links}", joints=ways, links=voice.listed(brace.shared))
