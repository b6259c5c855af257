"""Which step of the piece does what a step of the practice piece does."""

from __future__ import annotations

from collections.abc import Hashable, Sequence

from buildplan.booklet.common.book import Book
from buildplan.framework.cells import STRAIGHT
from buildplan.framework.model import Framework
from buildplan.sequence.model import Operation, Step


def in_full(book: Book, small: Framework, step: Step) -> Step | None:
    """The first step of the piece that does what one of the practice piece does, for the same
    purpose and as long a chain if one is; None where none does."""
    alike = [one for one in book.steps if one.kind is step.kind]

    def differs(one: Step) -> tuple[bool, bool]:
        first, other = one.operations[0], step.operations[0]
        return (
            purpose(book.framework, first) != purpose(small, other),
            len(first.links) != len(other.links),
        )

    return min(alike, key=differs, default=None)


def purpose(framework: Framework, work: Operation) -> Hashable:
    """What balloons are made ready for: locks, or what they do in a piece with braces or without
    any."""
    if work.locks:
        return "lock"
    links = [framework.link[link] for link in work.links]
    return frozenset((link.role, bool(framework.built_with(link.start).braces)) for link in links)


def first_told_at(book: Book, learnt: Sequence[Step], step: Step) -> Step | None:
    """The first step of the piece that does what a step of the practice piece does, if that has
    not been `learnt`."""
    alike = [one for one in book.steps if _sort_of(one) == _sort_of(step)]
    if not alike or any(_sort_of(one) == _sort_of(step) for one in learnt):
        return None
    return alike[0]


def _sort_of(step: Step) -> Hashable:
    """What tells steps apart that are done otherwise: the kind of work and its corners."""
    return step.kind, frozenset(step.cells) - {STRAIGHT}
