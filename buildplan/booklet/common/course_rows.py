"""The rows of a step that brings in a course: the chains that come in, and what is tied at each of
its joints."""

from __future__ import annotations

from collections.abc import Sequence

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.laid_courses import is_planned
from buildplan.booklet.common.map_sheets import step_place
from buildplan.booklet.common.panel_rows import ROW_GAP, rows_high
from buildplan.booklet.common.step_words import check_words
from buildplan.document.blocks import Items
from buildplan.document.links import Anchor
from buildplan.document.tables import Grid
from buildplan.document.text import plain
from buildplan.instructions.joint_table import JointTable, balloons_between, joint_table
from buildplan.instructions.printed_rows import printed
from buildplan.sequence.model import Kind, Step

ROW_HIGH = 16.0  # of the table, about; points
COLUMNS, PAD = (0.22, 0.18, 0.6), 1.4


def tied_place(book: Book, step: Step) -> str:
    """The name of the place where what a step ties is listed, for links to lead to: of a course
    with a plan its table, which may be on a later page than its title."""
    listed = step.repeats is None and is_planned(book, step)
    return f"{step_place(step)} joints" if listed else step_place(step)


def rows_and_check(book: Book, step: Step, wide: float) -> tuple[list[Flowable], float]:
    """The chains that come in with a step, what is tied at each joint, the check; and about how
    high these are in a column so `wide`, in points."""
    told, tied, check = (
        coming_lines(book, step),
        tied_at_joints(book, step),
        check_words(book, step),
    )
    checked = Items([check], ticked=True, after=ROW_GAP)
    blocks = [*ticked_rows(told), *joint_rows(book, step), checked]
    return blocks, rows_high([*told, check], wide) + table_high(tied, wide)


def joint_rows(book: Book, step: Step) -> list[Flowable]:
    """What is tied at each joint of a step, at the place that links lead to."""
    return [Anchor(tied_place(book, step)), *shown_rows(tied_at_joints(book, step))]


def coming_lines(book: Book, step: Step) -> list[str]:
    """The rows of what comes in with a step: chains, and balloons between two joints."""
    told = [
        line
        for turn, words in zip(step.turns, book.told(step).turns, strict=True)
        if turn.operations[0].kind is not Kind.JOIN
        for line in words.lines
    ]
    return [*told, *balloons_between(book.context, step.turns)]


def ticked_rows(lines: Sequence[str]) -> list[Flowable]:
    """Lines to be ticked, one below another; nothing of none."""
    if not lines:
        return []
    return [Items([plain(line) for line in lines], ticked=True, gap=ROW_GAP, after=ROW_GAP)]


def table_high(tied: JointTable | list[str], wide: float) -> float:
    """About how high what is tied at each joint is, in points."""
    if isinstance(tied, JointTable):
        return ROW_HIGH * (len(tied.rows) + 2)
    return rows_high(tied, wide)


def tied_at_joints(book: Book, step: Step) -> JointTable | list[str]:
    """What meets at each joint: a table, or lines where it is the same at all of them."""
    table = joint_table(book.context, step.turns)
    if table is not None:
        return table
    both = [
        (turn, words)
        for turn, words in zip(step.turns, book.told(step).turns, strict=True)
        if turn.operations[0].kind is Kind.JOIN
    ]
    return list(printed(book.context, [turn for turn, _ in both], [words for _, words in both]))


def shown_rows(tied: JointTable | list[str]) -> list[Flowable]:
    """What is tied at each joint, as a table or as lines to be ticked."""
    if isinstance(tied, list):
        return ticked_rows(tied)
    rows = [tuple(map(plain, row)) for row in tied.rows]
    return [Grid(tied.head, rows, COLUMNS, pad=PAD, after=6.0, row_heads=True, ticked=True)]
