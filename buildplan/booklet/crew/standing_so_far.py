"""What can be counted on a piece so far, as a crew's pages say it; and the turns of a step in
lines."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from buildplan.booklet.common.book import Book
from buildplan.document.text import plain
from buildplan.language.messages import mark
from buildplan.language.phrases import clauses
from buildplan.sequence.model import Kind, Step

SHORT_LINE = 72  # letters: lines that are all as short as this follow one another
COUNTED: Mapping[Kind, str] = {
    Kind.BRACE: mark("Braces standing: {standing} of {total}"),
    Kind.SINGLE: mark("Singles in place: {standing} of {total}"),
    Kind.JOIN: mark("Joints brought together: {standing} of {total}"),
    Kind.LOCK: mark("Locks so far: {standing} of {total}"),
}


def standing(book: Book, steps: Sequence[Step]) -> list[str]:
    """What stands when steps are done, for each kind of work in them."""
    voice = book.voice
    last = steps[-1].number
    words = []
    kinds = dict.fromkeys(kind for step in steps for kind in step.kinds if kind in COUNTED)
    if Kind.BRACE in kinds:  # a corner's single is counted with its brace
        kinds.pop(Kind.SINGLE, None)
    for kind in kinds:
        if kind is Kind.JOIN and book.framework.parts:
            words += _of_parts(book, steps)
            continue
        done = [s.number for s in book.steps for op in s.operations if op.kind is kind]
        so_far = sum(number <= last for number in done)
        words.append(voice.say(COUNTED[kind], standing=so_far, total=len(done)))
    return words


def _of_parts(book: Book, steps: Sequence[Step]) -> list[str]:
    """How many joints of each part are done, and how many ties between parts."""
    voice, last = book.voice, {}
    for step in steps:
        if step.of_kind(Kind.JOIN):
            last[tuple(book.context.parts_at(step.of_kind(Kind.JOIN)))] = step
    words = []
    for parts, step in last.items():
        done, total = book.context.joined(step)
        if len(parts) > 1:
            words.append(
                voice.say("Ties between parts: {standing} of {total}", standing=done, total=total)
            )
        else:
            words.append(
                voice.say(
                    "Joints of part {part}: {standing} of {total}",
                    part=parts[0],
                    standing=done,
                    total=total,
                )
            )
    return words[-1:] if all(len(parts) > 1 for parts in last) else words


def turn_lines(book: Book, step: Step) -> list[str]:
    """What is particular to each turn, as markup: one line where all of it is short."""
    lines = [line for turn in book.told(step).turns for line in turn.lines]
    if all(len(line) <= SHORT_LINE for line in lines):
        return [plain(clauses(book.voice, lines))] if lines else []
    return [plain(line) for line in lines]
