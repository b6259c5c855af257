"""Crew pages for what is laid out on the floor: its words beside the plan that it is laid by."""

from __future__ import annotations

from collections.abc import Sequence

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.floor_plans import plan_with_tags
from buildplan.booklet.common.laying_out import plan_measured
from buildplan.booklet.common.needs import tags_of
from buildplan.booklet.common.step_moves import is_laid_to_brace
from buildplan.booklet.crew.standing_so_far import turn_lines
from buildplan.booklet.crew.tags import tags_told
from buildplan.document.blocks import Items, Shown, Words
from buildplan.document.layout import Columns, is_wide
from buildplan.document.text import SMALL, plain, strong
from buildplan.drawing.floor_plan import upper_chains
from buildplan.instructions.laying import laid_by_plan
from buildplan.language.messages import mark
from buildplan.language.phrases import sentences
from buildplan.sequence.model import Kind, Step

TAGS_ON_PLAN = mark(
    "The plan names the joints to tag; the joint under each of them gets a tag too."
)
TAGS_OF_FLAT = mark("The plan names the joints to tag.")
TOLD_IN_FULL = frozenset({Kind.CLOSE_RING, Kind.LAY})
PLAN_SHARE, PLAN_GAP = 0.6, 12.0  # of the width
PLAN_HEIGHT, LARGE_PLAN_HEIGHT = 212.0, 360.0  # at most; with the width to itself


def is_laid_by_plan(book: Book, steps: Sequence[Step]) -> bool:
    """Whether some steps lay chains out to be braced."""
    return any(is_laid_to_brace(book, step) for step in steps)


def laid_out(book: Book, steps: Sequence[Step], beside: Sequence[Flowable]) -> list[Flowable]:
    """What is to be ticked of some steps, and the plan of the floor where they lay chains out to be
    braced; `beside` the plan stands what is to be read before the work goes on, on narrow paper
    under it."""
    laid = next((step for step in steps if _is_planned(book, step)), None)
    ticked: list[Flowable] = [
        Items(lines, ticked=True, after=4.0)
        for lines in (_lines_of(book, [step], steps) for step in steps)
    ]
    return [*ticked, *(beside if laid is None else laid_plan(book, laid, beside))]


def _is_planned(book: Book, step: Step) -> bool:
    """Whether a step lays chains out to be braced; what has no brace, as a bar between letters, is
    laid without a plan."""
    if not is_laid_to_brace(book, step):
        return False
    return bool(book.framework.built_with(step.operations[0].joints[0]).braces)


def laid_plan(book: Book, step: Step, beside: Sequence[Flowable]) -> list[Flowable]:
    """The plan of the floor of a step, and what is drawn on it."""
    voice, enlarged, measure = book.voice, book.paper.picture_scale, book.paper.measure
    brace = book.framework.built_with(step.operations[0].joints[0]).braces[0]
    told = voice.say("The person kneels where brace {number} is tied first.", number=brace.number)
    words = Words(plain(sentences(plan_measured(book, step), told)), SMALL)
    if not is_wide(book.paper):
        size = (measure / enlarged, LARGE_PLAN_HEIGHT / enlarged)
        return [Shown(plan_with_tags(book, step, *size), enlarged, after=2.0), words, *beside]
    wide = (measure - PLAN_GAP) * PLAN_SHARE
    plan = Shown(plan_with_tags(book, step, wide / enlarged, PLAN_HEIGHT / enlarged), enlarged)
    return [
        Columns([[words, *beside], [plan]], (1 - PLAN_SHARE, PLAN_SHARE), gap=PLAN_GAP, after=6.0)
    ]


def floor_lines(book: Book, steps: Sequence[Step]) -> list[str]:
    """A line for each step, and those of its turns that say something of their own."""
    return _lines_of(book, steps, steps)


def _lines_of(book: Book, some: Sequence[Step], steps: Sequence[Step]) -> list[str]:
    """The lines of some of the `steps` of a job."""
    lines = []
    for step in some:
        told, on_plan = book.told(step), _tags_on_plan(book, steps, step)
        said = told.text if step.kind in TOLD_IN_FULL else ""
        if is_laid_to_brace(book, step):
            said = laid_by_plan(book.context, step)
        words = plain(sentences(said, told.check, on_plan))
        lines.append(f"{strong(told.title)}. {words}")
        if step.kind is Kind.TAG and not on_plan:
            lines.append(plain(tags_told(tags_of([step]), book.voice)))
        elif not on_plan and len(step.turns) > 1 and step.kind is not Kind.CLOSE_RING:
            lines += turn_lines(book, step)
    return lines


def _tags_on_plan(book: Book, steps: Sequence[Step], step: Step) -> str:
    """That the plan beside a step names the joints that it tags, where it names them all."""
    if step.kind is not Kind.TAG or not is_laid_by_plan(book, steps):
        return ""
    framework, tags = book.framework, set(tags_of([step]))
    upper = {joint for long in upper_chains(framework) for joint in long.chain.joints}
    named = tags & upper
    below = {framework.mirror.get(joint, joint) for joint in named}
    if named | below != tags:
        return ""
    return book.voice.say(TAGS_ON_PLAN if below - named else TAGS_OF_FLAT)
