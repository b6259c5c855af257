"""The steps, part of the work by part of the work."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence, Set
from itertools import groupby
from types import MappingProxyType

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.closeups import Views
from buildplan.booklet.common.equal_steps import equal_part_block, runs_alike
from buildplan.booklet.common.lifting import first_lift_notice
from buildplan.booklet.common.map_sheets import MapSheets
from buildplan.booklet.common.part_guide import head_of_work
from buildplan.booklet.common.phone_code import code_at_step
from buildplan.booklet.common.step_blocks import step_block
from buildplan.document.printing import Section
from buildplan.instructions.stages import work_names
from buildplan.sequence.model import Kind, Step

# What a learner is told before a step.
Lesson = Callable[[Step], Sequence[Flowable]]


def _title(book: Book, part: str, steps: Sequence[Step]) -> str:
    first, last = steps[0].number, steps[-1].number
    if first == last:
        return book.voice.say("{part}: step {number}", part=part, number=first)
    return book.voice.say("{part}: steps {first} to {last}", part=part, first=first, last=last)


def step_sections(
    book: Book,
    views: Views,
    sheets: MapSheets,
    lesson: Lesson = lambda step: (),
    taught: Set[Kind] = frozenset(),
    practised: Mapping[int, str] = MappingProxyType({}),
) -> list[Section]:
    """Every step, in order, each part of the work from a new page on. Its steps lead to the
    sheets of the joint map; `lesson` is what comes before a step; the hand moves of work of the
    `taught` kinds are shown elsewhere, at places that are given for the steps whose moves are
    `practised`."""
    known: set[str] = set()
    sections: list[Section] = []
    named = zip(work_names(book.voice, book.framework, book.steps), book.steps, strict=True)
    for work, run in groupby(named, key=lambda one: one[0]):
        steps = [step for _, step in run]
        notice = first_lift_notice(book, steps)
        blocks = [*head_of_work(book, steps), *code_at_step(book, steps[0], notice)]
        for alike in runs_alike(book, steps):
            if len(alike) > 1:
                blocks.append(equal_part_block(book, sheets, alike))
            else:
                (step,) = alike
                told = lesson(step)
                blocks.append(step_block(book, views, sheets, step, told, taught, practised))
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
