"""The plans of the floor by which chains are laid out: of the piece, and of one to practise on."""

from __future__ import annotations

from collections.abc import Collection

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.closeups import Views
from buildplan.booklet.common.needs import tags_of
from buildplan.booklet.common.progress import BuildProgress
from buildplan.drawing.bodies import Scene
from buildplan.drawing.floor_plan import KneelingPlace, floor_plan
from buildplan.drawing.laid_out import LaidChains
from buildplan.drawing.marks import Picture
from buildplan.drawing.seat import open_end_seat
from buildplan.instructions.stages import part_of_step
from buildplan.sequence.model import Step


def floor_plan_of(book: Book, views: Views, step: Step, width: float, height: float) -> Picture:
    """The plan of the floor of a step that lays chains out."""
    laid, scene = _laid(book, views.progress, step)
    told, seat = whole_words(book, step), _seat(book, laid)
    size = (width, height)
    return floor_plan(laid, scene, *size, book.units, book.voice, told, tags=_tags(book), seat=seat)


def plan_of_every_joint(
    book: Book, views: Views, step: Step, width: float, height: float
) -> Picture:
    """The same of a small piece to practise on: all joints named, nothing measured."""
    laid, scene = _laid(book, views.progress, step)
    told = f"{book.voice.say('Practice piece')}."  # no step of the piece itself
    return floor_plan(laid, scene, width, height, None, book.voice, told)


def plan_with_tags(book: Book, step: Step, width: float, height: float) -> Picture:
    """The plan of the floor with every tag of the uppermost chains, of a part with its corners
    alone, and with the one who kneels at the first brace: what a crew lays out by."""
    laid, scene = _laid(book, BuildProgress(book), step)
    seat = _seat(book, laid)
    told = f"{book.told(step).title}."
    size = (width, height)
    return floor_plan(laid, scene, *size, book.units, book.voice, told, tags=_tags(book), seat=seat)


def _seat(book: Book, laid: LaidChains) -> KneelingPlace | None:
    """Where one kneels to the first brace of what is laid, if it has one."""
    for brace in laid.framework.braces[:1]:
        return KneelingPlace(brace.section, open_end_seat(book.framework, book.shape, brace))
    return None


def _tags(book: Book) -> Collection[str]:
    """The joints with tags that a plan names; of parts, which are small on the page, none."""
    return set() if book.framework.parts else {*tags_of(book.steps)}


def _laid(book: Book, progress: BuildProgress, step: Step) -> tuple[LaidChains, Scene]:
    """The chains that a step lays out, and the scene in which they lie."""
    scene = progress.finished(step)
    own = book.framework.built_with(step.operations[0].joints[0])
    return LaidChains(own, {joint: scene.shape.at[joint][:2] for joint in own.joints}), scene


def whole_words(book: Book, step: Step) -> str:
    """What a step shows on the whole piece, or on a part, seen from above."""
    voice, check = book.voice, book.told(step).check
    part = part_of_step(book.framework, step)
    if part is None:
        return voice.say(
            "Step {number} on the whole piece, from the front. {check}",
            number=step.number,
            check=check,
        )
    return voice.say(
        "Step {number} on part {part}, from the front. {check}",
        number=step.number,
        part=part.name,
        check=check,
    )
