"""The pictures of parts as they come together, before they are tied."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence

from buildplan.booklet.common.book import Book
from buildplan.design.measures import length_words
from buildplan.drawing.closeup import close_up
from buildplan.drawing.marks import Picture
from buildplan.drawing.panel import Panel
from buildplan.drawing.parts_apart import parts_tied
from buildplan.drawing.putting_together import PartShown, put_together_picture
from buildplan.drawing.seat import seat_before
from buildplan.drawing.techniques import moves
from buildplan.drawing.techniques.tied_joints import pair_ready, tie_joints
from buildplan.framework.locks import Tie
from buildplan.instructions.model import LiesAt
from buildplan.instructions.setting_up import comes_up, is_tying, pairs_first
from buildplan.sequence.model import Kind, Step
from buildplan.shape.tied_parts import part_of

SIZE, LATER_SIZE = (252.0, 204.0), (252.0, 170.0)
MOST_NAMED = 4
TIED_SIZE = (190.0, 122.0)


def tying_pictures(book: Book, step: Step) -> Mapping[Kind, tuple[Picture, ...]]:
    """How parts come together (laying), if they do so standing, each time that some come up; in the
    first such step how its first joints are tied to one another, the upper above (joining), and how
    a lock is made if no step before shows it."""
    if any(map(is_tying, book.steps[: step.number - 1])):
        later = _put_together(book, step)
        return {Kind.LAY: later} if later else {}
    tied = _tied(book, step)
    known = any(Kind.LOCK in other.kinds for other in book.steps[: step.number - 1])
    locks = moves(book.framework, step, book.voice, () if known else (Kind.LOCK,), book.shape)
    together = _put_together(book, step)
    return {
        **({Kind.LAY: together} if together else {}),
        **({Kind.SETTLE: (_ready(book, step),)} if [*pairs_first(book.context, step)] else {}),
        Kind.JOIN: (tied,),
        **({Kind.LOCK: (*locks, _twisted(book, step))} if step.locks else {}),
    }


def _twisted(book: Book, step: Step) -> Picture:
    """How the lock of the first tie of a step goes round its joints."""
    up = book.figures.apart[_first_tie(book, step).name].axis is LiesAt.ON_TOP
    return tie_joints(book.framework, book.voice, _from_below(book, step), up=up)


def _ready(book: Book, step: Step) -> Picture:
    """The lock of the first tie of a step where it waits for the part above."""
    return pair_ready(book.framework, book.voice, _from_below(book, step)[0])


def _first_tie(book: Book, step: Step) -> Tie:
    return book.framework.tie_of[step.of_kind(Kind.JOIN)[0].joints[0]]


def _from_below(book: Book, step: Step) -> Sequence[str]:
    """The joints of the first tie of a step, from the one below or at the left."""
    tie = _first_tie(book, step)
    return tie.joints if book.figures.apart[tie.name].forward else tie.joints[::-1]


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
    """What stands when a step begins and what comes up in it; nothing where parts are tied as they
    lie, or a later step has nothing come up."""
    told = book.figures.set_up
    up = [name for block in comes_up(book.context, step) for name in block]
    earlier = [other for other in book.steps[: step.number - 1] if is_tying(other)]
    if told is None or (earlier and not up):
        return ()
    if told.in_depth and not up:
        return ()  # from the front each hides the one behind it
    before = [n for o in earlier for block in comes_up(book.context, o) for n in block]
    standing = [*told.standing, *before]
    below = {name: _named(book, name, up if earlier else ()) for name in standing}
    above = {name: _named(book, name, standing) for name in up}
    parts = [
        *_shown(book, below, lifted=False, few=bool(earlier)),
        *_shown(book, above, lifted=True, few=bool(earlier)),
    ]
    others = max(operation.people for operation in step.operations) - 1
    people = [*[book.voice.say("holds")] * others, book.voice.say("ties")]
    apart = [book.voice.tell(length_words(length_m, book.units)) for length_m in told.apart_m]
    picture = put_together_picture(
        book.framework,
        book.shape,
        parts,
        apart if not earlier else (),
        people,
        SIZE if not earlier else LATER_SIZE,
        _put_together_words(book, standing, up),
        book.patterns,
    )
    return (picture,)


def _shown(
    book: Book, named: Mapping[str, Sequence[str]], *, lifted: bool, few: bool
) -> Iterator[PartShown]:
    """Parts with their joints that are named: of those of all of them but a `few`, the outermost
    ones."""
    joints = sorted(
        (joint for some in named.values() for joint in some),
        key=lambda joint: float(book.shape.at[joint][0]),
    )
    kept = {joints[0], joints[-1]} if few and len(joints) > MOST_NAMED else set(joints)
    for name, own in named.items():
        yield PartShown(name, tuple(joint for joint in own if joint in kept), lifted)


def _named(book: Book, name: str, others: Collection[str]) -> tuple[str, ...]:
    """The joints at the front of a part that are tied to one of some others, or to any if none are
    given."""
    told = book.figures.set_up
    front = told.front.get(name, ()) if told else ()
    ties = book.framework.tie_of
    if not others:
        return front
    return tuple(
        joint
        for joint in front
        if any(part_of(book.framework, one) in others for one in ties[joint].joints)
    )


def _put_together_words(book: Book, standing: Sequence[str], up: Sequence[str]) -> str:
    if not up:
        return book.voice.say(
            "From the front: {standing} on the floor, people beside them. Named are the joints"
            " that face the front.",
            standing=book.voice.listed(list(standing)),
        )
    return book.voice.say(
        "From the front: {standing} on the floor, {lifted} above, people beside them."
        " Named are the joints that face the front.",
        standing=book.voice.listed(list(standing)),
        lifted=book.voice.listed(list(up)),
    )
