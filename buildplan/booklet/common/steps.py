"""The steps, part of the work by part of the work."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from itertools import chain, groupby

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.closeups import plan_views
from buildplan.booklet.common.map_sheets import MapSheets
from buildplan.booklet.common.phone_code import code_at_step
from buildplan.booklet.common.step_blocks import step_block
from buildplan.document.printing import Section
from buildplan.language.messages import mark
from buildplan.sequence.model import Kind, Stage, Step

# Stages that share pages, and what their part of the work is called: messages to be said.
PART: Mapping[Stage, str] = {
    Stage.SIZE: mark("Size and pair"),
    Stage.PAIR: mark("Size and pair"),
    Stage.CHAIN: mark("Chain"),
    Stage.CLOSE_RINGS: mark("Close rings and lay in place"),
    Stage.BRACE: mark("Brace and lock joints"),
    Stage.LOCK_JOINTS: mark("Brace and lock joints"),
    Stage.FINISH: mark("Finish"),
}

# What a learner is told before a step.
Lesson = Callable[[Step], Sequence[Flowable]]


def part_name(book: Book, part: str) -> str:
    """What a part of the work (a value of PART) is called, of what there is to do in it."""
    kinds = {step.kind for step in book.steps}
    if part == PART[Stage.CLOSE_RINGS] and Kind.CLOSE_RING not in kinds:
        return book.voice.say("Tag and lay in place")
    if part == PART[Stage.BRACE] and Kind.BRACE not in kinds:
        return book.voice.say("Join and lock")
    return book.voice.say(part)


def _title(book: Book, part: str, steps: Sequence[Step]) -> str:
    first, last = steps[0].number, steps[-1].number
    if first == last:
        return book.voice.say("{part}: step {number}", part=part, number=first)
    return book.voice.say("{part}: steps {first} to {last}", part=part, first=first, last=last)


def step_sections(book: Book, sheets: MapSheets, lesson: Lesson = lambda step: ()) -> list[Section]:
    """Every step, in order, each part of the work from a new page on. Its steps lead to the
    sheets of the joint map; `lesson` is what comes before a step."""
    views = plan_views(book)
    visits = [
        (part, list(steps)) for part, steps in groupby(book.steps, key=lambda s: PART[s.stage])
    ]
    sections: list[Section] = []
    for number, (part, steps) in enumerate(visits):
        again = part in [before for before, _ in visits[:number]]
        title, listed = _title(book, part_name(book, part), steps), not again
        if again and steps[0].kind is Kind.LAY:  # another part of the piece, laid and tied
            told = list(chain.from_iterable(some for _, some in visits[number : number + 2]))
            title, listed = _title(book, _laid_part(book, steps[0]), told), True
        blocks = code_at_step(book, steps[0])
        for step in steps:
            blocks.append(step_block(book, views, sheets, step, lesson(step)))
        sections.append(
            Section(
                title,
                blocks,
                running=part_name(book, part),
                listed=listed,
                titled=True,
                runs_on=True,
            )
        )
    return sections


def _laid_part(book: Book, step: Step) -> str:
    """What is called the work on the part of an assembly that a step lays down."""
    part = book.framework.part_at(step.operations[0].joints[0])
    if part is None:
        return part_name(book, PART[step.stage])
    return book.voice.say("Part {part}", part=part.name)
