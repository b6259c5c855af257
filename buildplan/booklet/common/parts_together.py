"""The picture of parts as they come together, before the first of them are tied."""

from __future__ import annotations

from collections.abc import Mapping

from buildplan.booklet.common.book import Book
from buildplan.design.measures import length_words
from buildplan.drawing.closeup import close_up
from buildplan.drawing.marks import Picture
from buildplan.drawing.panel import Panel
from buildplan.drawing.parts_apart import parts_tied
from buildplan.drawing.putting_together import PartShown, put_together_picture
from buildplan.drawing.seat import seat_before
from buildplan.drawing.techniques import moves
from buildplan.drawing.techniques.tied_joints import tie_joints
from buildplan.instructions.model import LiesAt
from buildplan.sequence.model import Kind, Step

SIZE = (252.0, 204.0)
TIED_SIZE = (190.0, 122.0)


def tying_pictures(book: Book, step: Step) -> Mapping[Kind, tuple[Picture, ...]]:
    """How parts come together (laying), if they do so standing, how the first joints of a step are
    tied to one another, the upper above (joining), and how a lock is made if no step before shows
    it."""
    tied = _tied(book, step)
    known = any(Kind.LOCK in other.kinds for other in book.steps[: step.number - 1])
    locks = moves(book.framework, step, book.voice, () if known else (Kind.LOCK,), book.shape)
    together = _put_together(book, step)
    return {
        **({Kind.LAY: together} if together else {}),
        Kind.JOIN: (tied,),
        **({Kind.LOCK: (*locks, _twisted(book, step))} if step.locks else {}),
    }


def _twisted(book: Book, step: Step) -> Picture:
    """How the lock of the first tie of a step goes round its joints."""
    tie = book.framework.tie_of[step.of_kind(Kind.JOIN)[0].joints[0]]
    from_first = book.figures.apart[tie.name]
    joints = tie.joints if from_first.forward else tie.joints[::-1]
    up = from_first.axis is LiesAt.ON_TOP
    return tie_joints(book.framework, book.voice, joints, up=up)


def _tied(book: Book, step: Step) -> Picture:
    """The first joints of a step as they are once they are tied, near by."""
    framework, joints = book.framework, step.of_kind(Kind.JOIN)[0].joints
    tie = framework.tie_of[joints[0]]
    panel = Panel(
        parts_tied(framework, book.shape, tie, book.patterns),
        seat_before(framework, book.shape, joints),
        joints,
    )
    return close_up(
        panel,
        *TIED_SIZE,
        title=book.voice.say("one lock round both"),
        alt=book.voice.say(
            "{joints}, joints of different parts, laid knot on knot: one more lock is twisted round"
            " both.",
            joints=book.voice.listed(list(joints)),
        ),
    )


def _put_together(book: Book, step: Step) -> tuple[Picture, ...]:
    told = book.figures.set_up
    if told is None:
        return ()
    parts = [
        PartShown(name, told.front.get(name, ()), name in told.lifted)
        for name in (*told.standing, *told.lifted)
    ]
    others = max(operation.people for operation in step.operations) - 1
    people = [*[book.voice.say("holds")] * others, book.voice.say("ties")]
    apart = [book.voice.tell(length_words(length_m, book.units)) for length_m in told.apart_m]
    return (
        put_together_picture(
            book.framework,
            book.shape,
            parts,
            apart,
            people,
            SIZE,
            book.voice.say(
                "From the front: {standing} on the floor, {lifted} above, people beside them."
                " Named are the joints that face the front.",
                standing=book.voice.listed(list(told.standing)),
                lifted=book.voice.listed(list(told.lifted)),
            )
            if told.lifted
            else book.voice.say(
                "From the front: {standing} on the floor, people beside them. Named are the joints"
                " that face the front.",
                standing=book.voice.listed(list(told.standing)),
            ),
            book.patterns,
        ),
    )
