"""The pictures of spurs: opened out where their rungs are tied, from above at the brace before."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.progress import BuildProgress
from buildplan.drawing.camera import Camera
from buildplan.drawing.eye import eyes_for, lying_place
from buildplan.drawing.marks import Picture
from buildplan.drawing.panel import Panel
from buildplan.drawing.seat import FROM_ABOVE
from buildplan.drawing.spur_diagrams import Spur, spur_ladder, spur_plan
from buildplan.framework.model import Cell
from buildplan.language.phrases import clauses
from buildplan.sequence.model import Kind, Step
from buildplan.sequence.rounds import spur_of

LADDER_WIDTH, LADDER_HEIGHT = 250.0, 140.0
PLAN_WIDTH = 118.0
BEFORE = (226.0, 152.0)  # the rail from above, beside the close-up of the brace


def spur_of_step(book: Book, step: Step) -> Cell | None:
    """The spur whose singles a step ties."""
    return spur_of(book.context.piece, step.operations[0]) if step.kind is Kind.SINGLE else None


def spur_pictures(book: Book, step: Step) -> list[Picture]:
    """The rails of the spur of a step opened out, and each rail that something goes across, from
    above."""
    cell = spur_of_step(book, step)
    if cell is None:
        return []
    spur = _spur(book, cell, step.number, tuple(op.links[0] for op in step.of_kind(Kind.SINGLE)))
    told = book.voice.say("Diagram of step {number}.", number=step.number)
    drawn = [spur_ladder(spur, LADDER_WIDTH, LADDER_HEIGHT)] if spur.is_ladder else []
    drawn += [spur_plan(spur, long.letter, PLAN_WIDTH, LADDER_HEIGHT) for long in spur.crossed]
    rows = clauses(book.voice, (row for turn in book.told(step).turns for row in turn.lines))
    return [
        replace(picture, alt=f"{told} {picture.alt} {'' if number else f'{rows}.'}".rstrip())
        for number, picture in enumerate(drawn)
    ]


def spur_before(book: Book, number: int, cell: Cell, size: tuple[float, float] = BEFORE) -> Picture:
    """A spur from above as it is when step `number` has tied the brace that finishes it."""
    spur = _spur(book, cell, number, ())
    return spur_plan(spur, spur.rails[0][0].letter, *size)


def spur_whole(book: Book, cell: Cell) -> list[Picture]:
    """A spur as it is in the end, its singles in the order in which they are tied."""
    steps = [one for one in book.steps if spur_of_step(book, one) is cell]
    return [picture for step in steps for picture in spur_pictures(book, step)]


def spur_place(
    book: Book, progress: BuildProgress, step: Step, size: tuple[float, float], alt: str
) -> Picture:
    """The whole piece as it lies, a ring round a spur and the eye of the one who sits before it."""
    scene, joints = progress.whole(step), _joints(step)
    panel = Panel(scene, _before_it(book, step), joints)
    eyes = eyes_for(scene, FROM_ABOVE, size, [panel])
    return lying_place(scene, FROM_ABOVE, size, joints, eyes, alt)


def _joints(step: Step) -> tuple[str, ...]:
    return tuple(dict.fromkeys(j for op in step.of_kind(Kind.SINGLE) for j in op.joints))


def _before_it(book: Book, step: Step) -> Camera:
    """Before the end of a spur, looking back along it to the piece."""
    cell = spur_of_step(book, step)
    assert cell is not None, "a spur's step"
    section: Sequence[str] = [
        joint
        for number in (cell.first, cell.second)
        for joint in book.framework.brace[number].section
    ]
    at = book.shape.at
    away = np.mean([at[j] for j in cell.skipped], axis=0) - np.mean(
        [at[j] for j in section], axis=0
    )
    return Camera((float(away[0]), float(away[1]), 0.3), (0.0, 0.0, 1.0), "before a spur")


def _spur(book: Book, cell: Cell, number: int, singles: tuple[str, ...]) -> Spur:
    locked = frozenset(joint for joint, step in book.locked_in.items() if step <= number)
    return Spur(book.framework, book.shape, cell, book.voice, locked, singles)
