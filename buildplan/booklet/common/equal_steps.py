"""Steps that build a part like one before it: written once."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.map_links import title_beside_map
from buildplan.booklet.common.map_sheets import MapSheets, step_place
from buildplan.booklet.common.panel_rows import ROW_GAP
from buildplan.booklet.common.step_blocks import built_alike
from buildplan.booklet.common.step_words import check_words
from buildplan.document.blocks import Items, Rule, Stack, Words
from buildplan.document.links import Anchor
from buildplan.document.text import plain
from buildplan.instructions.stages import part_of_step
from buildplan.sequence.model import Step


def runs_alike(book: Book, steps: Sequence[Step]) -> Iterator[list[Step]]:
    """Steps as they are printed together: those that do again, one after another, what steps that
    follow one another did at an equal part; each of the others alone."""
    run: list[Step] = []
    for step in steps:
        before = run[-1].repeats if run else None
        if run and (step.repeats is None or before is None or step.repeats != before + 1):
            yield run
            run = []
        if built_alike(book, step):
            run.append(step)
        else:
            if run:
                yield run
            run = []
            yield [step]
    if run:
        yield run


def equal_part_block(book: Book, sheets: MapSheets, run: Sequence[Step]) -> Flowable:
    """Several steps that build an equal part: where they were told, a row to tick for each, and
    what is to be counted when the last is done."""
    voice, first, last = book.voice, run[0], run[-1]
    like = book.steps[(first.repeats or 1) - 1]
    part, other = part_of_step(book.framework, first), part_of_step(book.framework, like)
    names = {"part": part.name if part else "", "first": other.name if other else ""}
    title = voice.say("Part {part}, like part {first}", **names)
    told = voice.say(
        "Parts {first} and {part} are alike, colour for colour, and neither is the mirror of the"
        " other: do as steps {from_step} to {to_step} say, and read {part} for {first}.",
        from_step=like.number,
        to_step=last.repeats or like.number,
        **names,
    )
    rows = [_row(book, step) for step in run[:-1]]
    rows.append(plain(f"{last.number} {book.told(last).title}"))
    anchors = [
        Anchor(
            step_place(step),
            f"{step.number} {book.told(step).title}",
            (step.number, len(book.steps)),
        )
        for step in run
    ]
    return Stack(
        [
            Rule(),
            *anchors,
            title_beside_map(book, sheets, run, f"{first.number} – {last.number} {title}"),
            Words(plain(told)),
            Items([*rows, check_words(book, last)], ticked=True, gap=ROW_GAP),
        ],
        whole=True,
    )


def _row(book: Book, step: Step) -> str:
    """A step that is told elsewhere, and what is to be counted when it is done."""
    told = book.told(step)
    return f"{plain(f'{step.number} {told.title}')}<br/>{plain(told.check)}"
