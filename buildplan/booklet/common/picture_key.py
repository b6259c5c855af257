"""The key of the signs in a booklet's pictures: those that it uses, and what each means."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.closeups import Views
from buildplan.booklet.common.course_plans import planned_course
from buildplan.booklet.common.laid_courses import is_planned
from buildplan.booklet.common.step_blocks import built_alike
from buildplan.booklet.common.step_moves import shows_locks
from buildplan.booklet.common.step_pictures import eye_signs, shown_in
from buildplan.booklet.common.step_words import PLACE
from buildplan.document.blocks import Shown, Words, heading
from buildplan.document.layout import Columns, is_wide
from buildplan.document.sizing import Fitting
from buildplan.document.text import plain
from buildplan.drawing.sign_key import WIDE, PictureSign, plan_signs, sign_picture, signs_of
from buildplan.language.messages import mark
from buildplan.sequence.model import Step

GAP, ROW_GAP, CLOSE_GAP = 8.0, 3.0, 1.5
# Larger than in the pictures, as far as the page has room for them, and so many abreast.
SIZES = ((1.45, 2), (1.25, 2), (1.1, 2), (1.0, 2), (1.0, 3))

MEANINGS: Mapping[PictureSign, str] = {
    PictureSign.JOINT: mark("joint"),
    PictureSign.BEHIND: mark("joint behind new balloons"),
    PictureSign.START: mark("start here"),
    PictureSign.WAY: mark("way along the row"),
    PictureSign.ORDER: mark("joint, and its turn"),
    PictureSign.CLOSING_KNOT: mark("joint of the closing knot"),
    PictureSign.END_KNOT: mark("joint of the last knot"),
    PictureSign.TWIST: mark("twist a lock on"),
    PictureSign.LOCK_LATER: mark("lock it with brace 5"),
    PictureSign.LOCK: mark("lock"),
    PictureSign.HAND: mark("reach in from below"),
    PictureSign.SKIPPED: mark("no brace is tied here"),
    PictureSign.OF_SINGLE: mark("only a single is tied here"),
    PictureSign.SHARED: mark("shared balloon"),
    PictureSign.STUB: mark("chain that goes on"),
    PictureSign.END_ON: mark("balloon that stands towards you"),
    PictureSign.EYE: mark("you look from here"),
    PictureSign.NUMBERED_EYE: mark("you look from here at picture 2"),
    PictureSign.KNEELER: mark("you look from here"),
    PictureSign.NUMBERED_KNEELER: mark("you look from here at picture 2"),
    PictureSign.PLACE: mark("you work here"),
    PictureSign.TURN: mark("joint, and its turn"),
    PictureSign.LATER: mark("joint of a later step"),
    PictureSign.BEFORE: mark("joint that is done"),
    PictureSign.BETWEEN: mark("balloon by itself"),
    PictureSign.GAP: mark("a round of its lock, under a gap"),
    PictureSign.ROUND: mark("begin here, go round this way"),
}

NUMBERED = {
    PictureSign.EYE: PictureSign.NUMBERED_EYE,
    PictureSign.KNEELER: PictureSign.NUMBERED_KNEELER,
}

# A closed row and an open one end in the same sign; told once where a booklet has both.
EITHER_KNOT = mark("joint of the closing or last knot")


def picture_key(book: Book, views: Views) -> list[Flowable]:
    """A heading, and each sign beside what it means; nothing where no step works on the piece."""
    meanings = dict(_told(signs_used(book, views)))
    if not meanings:
        return []
    joint = next(step for step in book.steps if views.of(step)).turns[0].joints[0]

    def sized(size: tuple[float, int]) -> list[Flowable]:
        larger, across = size if is_wide(book.paper) else (size[0], 1)
        measure = book.paper.measure / across
        rows = [
            _row(book, sign, joint, book.voice.say(said), larger, measure)
            for sign, said in meanings.items()
        ]
        deep = -(-len(rows) // across)
        columns = [rows[at : at + deep] for at in range(0, len(rows), deep)]
        return [Columns(columns, after=4.0, whole=False)]

    return [heading(book.voice.say("Signs in pictures")), Fitting(sized, SIZES)]


def signs_used(book: Book, views: Views) -> frozenset[PictureSign]:
    """The signs that the pictures of a booklet's steps show."""
    found: set[PictureSign] = set()
    for step in _pictured(book, views):
        if is_planned(book, step):
            found |= plan_signs(planned_course(book, step))
            continue
        shown = shown_in(book, views.of(step))
        for closeup in shown:
            found |= signs_of(closeup.panel)
        eye, count = eye_signs(step, views, shown, PLACE)
        found |= {PictureSign.PLACE, NUMBERED[eye] if count > 1 else eye}
    if any(shows_locks(book, step) for step in book.steps):
        found.add(PictureSign.LOCK)
    return frozenset(found)


def _pictured(book: Book, views: Views) -> Iterator[Step]:
    """The steps whose work on the piece is shown near by."""
    return (step for step in book.steps if views.of(step) and not built_alike(book, step))


def _told(used: frozenset[PictureSign]) -> Iterator[tuple[PictureSign, str]]:
    """The signs used, in the order of the key, with their meanings; of two that are alike, one."""
    meanings = dict(MEANINGS)
    if {PictureSign.CLOSING_KNOT, PictureSign.END_KNOT} <= used:
        used -= {PictureSign.END_KNOT}
        meanings[PictureSign.CLOSING_KNOT] = EITHER_KNOT
    for one, numbered in NUMBERED.items():
        if numbered in used:
            used -= {one}
    for sign in PictureSign:
        if sign in used:
            yield sign, meanings[sign]


def _row(
    book: Book, sign: PictureSign, joint: str, meaning: str, larger: float, measure: float
) -> Columns:
    alt = book.voice.say("Sign: {meaning}.", meaning=meaning)
    picture = Shown(sign_picture(sign, joint, alt), larger, after=0.0)
    wide = larger * WIDE
    gap = ROW_GAP if larger > 1.0 else CLOSE_GAP
    shares: Sequence[float] = (wide, measure - wide)
    return Columns(([picture], [Words(plain(meaning), after=0.0)]), shares, gap=GAP, after=gap)
