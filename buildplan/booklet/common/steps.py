"""The steps, part of the work by part of the work."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from itertools import groupby

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.closeups import plan_views
from buildplan.booklet.common.map_sheets import MapSheets
from buildplan.booklet.common.phone_code import code_at_step
from buildplan.booklet.common.progress import part_of_step
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

# Work on balloons and chains before they are laid, and on the whole piece in the end.
_BESIDE_THE_PARTS = frozenset(
    {
        Kind.SIZE,
        Kind.PAIR,
        Kind.TIE_OFF,
        Kind.CHAIN,
        Kind.CLOSE_RING,
        Kind.TAG,
        Kind.INSPECT,
        Kind.STAND_UP,
    }
)

# What a learner is told before a step.
Lesson = Callable[[Step], Sequence[Flowable]]


def part_name(book: Book, part: str) -> str:
    """What a part of the work (a value of PART) is called, of what there is to do in it."""
    kinds = {step.kind for step in book.steps}
    if part == PART[Stage.CLOSE_RINGS] and book.framework.parts:  # parts are laid one by one
        if Kind.CLOSE_RING not in kinds:
            return book.voice.say("Tag the joints")
        return book.voice.say("Close rings and tag the joints")
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
    known: set[str] = set()
    sections: list[Section] = []
    for work, run in groupby(_named_work(book), key=lambda named: named[0]):
        steps = [step for _, step in run]
        blocks = code_at_step(book, steps[0])
        for step in steps:
            blocks.append(step_block(book, views, sheets, step, lesson(step)))
        sections.append(
            Section(
                _title(book, work, steps),
                blocks,
                running=work,
                listed=work not in known,
                titled=True,
                runs_on=True,
            )
        )
        known.add(work)
    return sections


def _named_work(book: Book) -> list[tuple[str, Step]]:
    """Every step with what the part of the work is called that it is of. Of an assembly, what is
    done to each part once its chains are there is called by the part, and then the tying."""
    named: list[tuple[str, Step]] = []
    for step in book.steps:
        if not book.framework.parts or step.kind in _BESIDE_THE_PARTS:
            name = part_name(book, PART[step.stage])
        elif step.kind is Kind.TURN_OVER and named:  # of the part that was worked on
            name = named[-1][0]
        elif (part := part_of_step(book.framework, step)) is not None:
            name = book.voice.say("Part {part}", part=part.name)
        else:
            name = book.voice.say("Tie together")
        named.append((name, step))
    return named
