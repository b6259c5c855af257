"""A step of work on the practice piece: what is learnt with it, its moves, and its joints."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from reportlab.platypus import Flowable

from buildplan.booklet.common.acts import told_in_order
from buildplan.booklet.common.book import Book
from buildplan.booklet.common.course_plans import plan_of
from buildplan.booklet.common.joint_moves import closed_from_outside
from buildplan.booklet.common.laid_courses import is_planned
from buildplan.booklet.common.locks_behind import locks_behind
from buildplan.booklet.common.on_the_piece import PICTURE_HEIGHT
from buildplan.booklet.common.panel_rows import in_rows
from buildplan.booklet.common.side_views import side_views
from buildplan.booklet.common.step_blocks import MOST_EMPTY
from buildplan.booklet.common.step_links import told_at_step
from buildplan.booklet.common.step_moves import act_moves, first_moves
from buildplan.booklet.training.practice import Practice
from buildplan.booklet.training.practice_corner import corner_cells, counted_at_end
from buildplan.booklet.training.practice_rows import rows_of
from buildplan.booklet.training.same_work import first_told_at
from buildplan.booklet.training.teaching import lessons_of
from buildplan.document.blocks import Items, Shown, Stack, Words
from buildplan.document.links import Anchor
from buildplan.document.text import plain, strong
from buildplan.drawing.marks import Picture
from buildplan.drawing.techniques.large_locks import lock_gaps, lock_of_joint
from buildplan.instructions.assembling import FREE_END, has_free_ends
from buildplan.instructions.folding import folds_up
from buildplan.instructions.joining import folded_up
from buildplan.instructions.kneeling import waiting
from buildplan.instructions.model import StepWords
from buildplan.sequence.model import Kind, Step

PLAN_OF_COURSE_PT = 156.0


def step_on_piece(book: Book, own: Book, made: Practice, step: Step, said: StepWords) -> Stack:
    """A step of work on the practice piece: what is learnt with it, its moves, and its joints."""
    shown = _with_plan(own, step, act_moves(own, step))
    locking = shown.get(Kind.LOCK, ())
    # their numbers begin anew: which of the moves they are of is said below them
    under = [Words(plain(book.voice.say("Lock")))]
    moves = [[Shown(move), *(under if move in locking else [])] for move in _moves(own, step)]
    moves += corner_cells(own, step)
    if locking and step.kind is Kind.BRACE:
        moves.append([Shown(lock_gaps(made.framework, book.voice, made.shape))])
    up = folded_up(own.context, step) if folds_up(own.context, step) else ""
    moves += [[Shown(one)] for one in locks_behind(own, step)]
    if up:
        moves += [[Shown(one)] for one in (*side_views(own, step), *closed_from_outside(own, step))]
    learnt = made.steps[: step.number - 1]
    rows = rows_of(own, step, said)
    lessons = lessons_of(own, learnt, step)
    known = {kind for other in made.steps[: step.number - 1] for kind in other.kinds}
    # a brace's moves stand in a row
    told = () if step.kind is Kind.BRACE else said.acts
    new = [act for act in told if act.kind in shown or act.kind not in known]
    acts = told_in_order(new, shown, book.paper.measure)
    how = _how(book, own, learnt, step)
    # the row of a single brace has its name
    rows_alone = step.kind is Kind.BRACE and step.times == 1 and not (how or moves)
    blocks = [
        Anchor(place_of(step)),
        *([] if rows_alone else [Words(strong(said.title), after=3.0, keep=True)]),
        *([*acts, *_listed([plain(row) for row in rows])] if told else ()),
        *(() if told else how),
        *(map(Words, map(plain, waiting(own.context, step))) if step.kind is Kind.BRACE else ()),
        *([Words(plain(up))] if up else ()),
        *(() if told else _moves_and_rows(step, moves, rows, book.paper.measure)),
        *counted_at_end(own, made, step),
    ]
    return Stack([*lessons, Stack(blocks, whole=not lessons, most_empty=MOST_EMPTY)])


def _moves_and_rows(
    step: Step, moves: Sequence[Sequence[Flowable]], rows: Sequence[str], measure: float
) -> list[Flowable]:
    """Hand moves in rows, and what is to be ticked beside the last of them, or below; of joints,
    which are many, close below."""
    alone, shown = in_rows(moves, measure), in_rows(moves, measure, rows)
    if step.kind is not Kind.JOIN or len(shown) == len(alone):
        return shown
    return [*alone, *_listed([plain(row) for row in rows])]


def _with_plan(
    own: Book, step: Step, shown: Mapping[Kind, tuple[Picture, ...]]
) -> Mapping[Kind, tuple[Picture, ...]]:
    """The moves of a step, and where its chains lie in a plan from above, if it has one."""
    if not is_planned(own, step):
        return shown
    lay = (*shown.get(Kind.LAY, ()), plan_of(own, step, PLAN_OF_COURSE_PT))
    return {**shown, Kind.LAY: lay, **_with_gaps(own, step, shown)}


def _with_gaps(
    own: Book, step: Step, shown: Mapping[Kind, tuple[Picture, ...]]
) -> Mapping[Kind, tuple[Picture, ...]]:
    """How a joint comes together, with the gaps of its lock: where an odd number of balloons meets,
    so that none is opposite another."""
    at = own.framework.links_at
    odd = [joint for joint in step.locks if len(at.get(joint, ())) % 2]
    if Kind.LOCK not in shown or not odd:
        return {}
    gaps = lock_of_joint(own.framework, own.voice, odd[0], own.shape)
    return {Kind.JOIN: (*shown.get(Kind.JOIN, ()), gaps)}


def _how(book: Book, own: Book, learnt: Sequence[Step], step: Step) -> list[Flowable]:
    """Where the words for a step are, if it is the first of its kind: at that of the piece."""
    told = first_told_at(book, learnt, step)
    if told is None:
        return []
    link = told_at_step(book.voice, told)
    link.keepWithNext = True
    if not _is_open(own, step) or _is_open(book, told):
        return [link]
    # the chains of a ring have no free ends, those of its practice piece have
    ends = Words(book.voice.say(FREE_END), keep=True)
    return [link, ends]


def _is_open(book: Book, step: Step) -> bool:
    """Whether a step ties a brace at which long chains begin or end."""
    braces = [book.framework.brace[op.brace] for op in step.of_kind(Kind.BRACE)]
    return any(has_free_ends(book.context, brace) for brace in braces)


def place_of(step: Step) -> str:
    """The name of the place on the pages where a step on the practice piece stands."""
    return f"practice {step.number}"


def _listed(lines: Sequence[str]) -> list[Flowable]:
    return [Items(lines, ticked=True, gap=1.0, after=4.0)]


def _moves(own: Book, step: Step) -> Iterator[Picture]:
    """The hand moves that a step on the practice piece is the first to show."""
    yield from first_moves(own, step, PICTURE_HEIGHT)
