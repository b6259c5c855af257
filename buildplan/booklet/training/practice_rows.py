"""What is to be ticked of a step on the practice piece."""

from __future__ import annotations

from buildplan.booklet.common.book import Book
from buildplan.instructions.joint_table import balloons_between
from buildplan.instructions.model import StepWords
from buildplan.instructions.printed_rows import printed
from buildplan.sequence.model import Kind, Step


def rows_of(own: Book, step: Step, said: StepWords) -> list[str]:
    """The rows of a step; balloons between two joints come before the joints, of which they are
    free ends."""
    if _alike(own, step):
        return list(printed(own.context, step.turns, said.turns))
    between = list(balloons_between(own.context, step.turns)) if step.kind is Kind.JOIN else []
    if not between:
        return [row for turn in said.turns for row in turn.lines]
    turns = list(zip(step.turns, said.turns, strict=True))
    joined = [words.lines[0] for turn, words in turns if turn.operations[0].kind is Kind.JOIN]
    others = [w.lines for turn, w in turns if turn.operations[0].kind is not Kind.JOIN]
    return [*(row for lines in others for row in lines), *between, *joined]


def _alike(own: Book, step: Step) -> bool:
    """Whether the joints of a step are joined alike, so that one line tells them: knots alone."""
    joined = [op.joints[0] for op in step.of_kind(Kind.JOIN)]
    return bool(joined) and not any(own.context.piece.passing[joint][1] for joint in joined)
