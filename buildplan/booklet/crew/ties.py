"""Crew pages of the ties between parts: each drawn from where one stands to tie it, over the lines
to tick."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from reportlab.platypus import Flowable

from buildplan.booklet.common.ballasting import ballast_act, is_ballasted
from buildplan.booklet.common.book import Book
from buildplan.booklet.common.closeups import CloseUp, closeups_of
from buildplan.booklet.common.progress import BuildProgress
from buildplan.document.blocks import Items, Shown, Words
from buildplan.document.layout import Columns, is_wide
from buildplan.document.text import SMALL, plain, strong
from buildplan.drawing.camera import Camera
from buildplan.drawing.closeup import close_up
from buildplan.drawing.marks import Picture
from buildplan.framework.model import Framework
from buildplan.instructions.setting_up import (
    high_up,
    is_tying,
    lie_together,
    lifted_on,
    pairs_first,
    put_on_floor,
    ties_what_stands,
)
from buildplan.language.phrases import sentences
from buildplan.language.voice import Voice
from buildplan.sequence.model import Step

MOST_ABREAST, GAP, HEIGHT, LEAST_HEIGHT = 3, 12.0, 124.0, 100.0
MOSTLY = 0.7  # of a length of 1, towards one side


@dataclass(frozen=True)
class TiedStage:
    """What comes together at once: how, in lines of markup, and the steps that tie it."""

    lines: tuple[str, ...]
    steps: tuple[Step, ...]


def stages_of_ties(book: Book, steps: Sequence[Step]) -> list[TiedStage]:
    """Steps that tie parts, each with those after it for which nothing more comes up; one at
    least."""
    found: list[TiedStage] = []
    told: set[str] = set()
    for step in steps:
        lines = [line for line in put_together(book, [step]) if line not in told]
        told |= {*lines}
        if lines or not found:
            found.append(TiedStage(tuple(lines), (step,)))
        else:
            found[-1] = TiedStage(found[-1].lines, (*found[-1].steps, step))
    return found


def put_together(book: Book, steps: Sequence[Step]) -> list[str]:
    """How parts are set up before they are tied, ballasted, lifted and held, each thing once, in
    lines of markup; nothing of other work."""
    context, told = book.context, list[str]()
    for step in steps:
        if not is_tying(step) and not ties_what_stands(context, step):
            continue
        told.append(sentences(*put_on_floor(context, step)))
        if is_ballasted(book, step):
            told.append(ballast_act(book).said)
        told.append(sentences(*pairs_first(context, step)))
        told.append(sentences(*lifted_on(context, step), *high_up(context, step)))
        told.append(sentences(*lie_together(context, step)))
    return [plain(line) for line in dict.fromkeys(told) if line]


def stage_of_ties(book: Book, stage: TiedStage) -> list[Flowable]:
    """What comes together, then its ties in their order: a picture of a few of them, from the side
    from which they are tied, and a line to tick for each under it."""
    progress = BuildProgress(book)
    drawn = [one for step in stage.steps for one in closeups_of(book, progress, step)]
    most = MOST_ABREAST if is_wide(book.paper) else 1
    rows = -(-len(drawn) // most)
    cuts = [place * len(drawn) // rows for place in range(rows + 1)]
    some = [drawn[first:last] for first, last in pairwise(cuts)]
    told = book.voice.say("Tie in this order, one lock round all the knots of each:")
    lines: list[Flowable] = [Items(stage.lines, ticked=True)] if stage.lines else []
    return [*lines, Words(plain(told), keep=True), *(_row(book, row) for row in some)]


def _row(book: Book, row: Sequence[CloseUp]) -> Columns:
    enlarged = book.paper.picture_scale
    wide = (book.paper.measure - GAP * (len(row) - 1)) / len(row) / enlarged
    high = LEAST_HEIGHT if len(row) == MOST_ABREAST else HEIGHT
    return Columns(
        [
            [
                Words(_seen_from(book.voice, one.panel.camera), SMALL, after=1.0),
                Shown(_picture(book, one, wide, high), enlarged, after=3.0),
                Items(_lines(book.framework, one), ticked=True, gap=2),
            ]
            for one in row
        ],
        gap=GAP,
        after=5.0,
    )


def _lines(framework: Framework, closeup: CloseUp) -> list[str]:
    ties = dict.fromkeys(framework.tie_of[joint] for joint in closeup.panel.joints)
    return [strong(" + ".join(tie.joints)) for tie in ties]


def _picture(book: Book, closeup: CloseUp, wide: float, high: float) -> Picture:
    seen = _seen_from(book.voice, closeup.panel.camera)
    return close_up(closeup.panel, wide, high, alt=f"{seen} {closeup.words}.")


def _seen_from(voice: Voice, camera: Camera) -> str:
    """From which side of the piece a picture is seen, in words."""
    _, up, toward = (float(part) for part in camera.axes[2])
    if up > MOSTLY:
        return voice.say("From the top.")
    if abs(toward) < 1 - MOSTLY:
        return voice.say("From the side.")
    return voice.say("From the front.") if toward > 0 else voice.say("From the back.")
