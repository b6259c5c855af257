"""Chains of several colours: the rows that say what is in them, each with its picture."""

from __future__ import annotations

from collections.abc import Sequence

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.document.blocks import Items, Shown, Stack
from buildplan.document.text import plain
from buildplan.drawing.marks import Picture
from buildplan.drawing.techniques.strips import colour_strip
from buildplan.instructions.model import TurnWords
from buildplan.sequence.grouping import is_for_courses
from buildplan.sequence.model import Kind, Step, Turn

ROW_GAP = 4.0


def strip_rows(book: Book, step: Step) -> list[Flowable]:
    """The rows of chains of which any has several colours, each with its balloons in their order
    under it; none of other work."""
    if step.kind is not Kind.CHAIN:
        return []
    strips = [_strip(book, step, turn) for turn in step.turns]
    if not any(strips):
        return []
    turns = zip(book.told(step).turns, strips, strict=True)
    return [block for told, strip in turns for block in _row(told, strip)]


def _row(told: TurnWords, strip: Picture | None) -> Sequence[Flowable]:
    """A chain's row, if it has a name, and its picture, kept on one page."""
    rows = [plain(line) for line in told.lines] if told.name else []
    blocks: list[Flowable] = [Items(rows, ticked=True, gap=ROW_GAP, after=ROW_GAP)] if rows else []
    if strip is not None:
        blocks.append(Shown(strip, after=ROW_GAP))
    return [Stack(blocks, whole=True)] if blocks else []


def _strip(book: Book, step: Step, turn: Turn) -> Picture | None:
    """The balloons of the chain that a turn makes, if they are of several colours and no chain
    before it in the step is alike; without names where many alike are made to be taken later."""
    operation, framework = turn.operations[0], book.framework
    balloons = _balloons(book, turn)
    before = [_balloons(book, other) for other in step.turns[: step.turns.index(turn)]]
    if len(set(balloons)) == 1 or balloons in before:
        return None
    stock = is_for_courses(book.context.piece, operation) and len(step.turns) == 1
    joints = () if stock else operation.joints
    return colour_strip(framework, book.voice, operation.links, joints, book.paper.measure)


def _balloons(book: Book, turn: Turn) -> list[str]:
    return [book.framework.link[link].balloon for link in turn.operations[0].links]
