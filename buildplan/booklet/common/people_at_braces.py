"""The person at a brace, in the steps where it is new how one kneels there: at the first braces, at
the first corner of each kind that leaves joints out, and where a tube closes."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.closeups import Views, brace_of
from buildplan.booklet.common.step_moves import corner_of
from buildplan.document.undrawn import Undrawn
from buildplan.drawing.bodies import Scene
from buildplan.drawing.marks import Picture
from buildplan.drawing.panel import Panel
from buildplan.drawing.person_at_work import hands_at, person_tying, person_under
from buildplan.drawing.seat import leaves_out
from buildplan.drawing.techniques.large_locks import lock_from_outside
from buildplan.framework.model import Brace
from buildplan.instructions.company import chains_lifted
from buildplan.instructions.kneeling import closes
from buildplan.instructions.moves import Corner, Hand
from buildplan.sequence.model import Kind, Step

SIZE = (172.0, 110.0)


def people_at(book: Book, views: Views, step: Step) -> Sequence[Undrawn]:
    """The pictures of the one who ties the last brace of a step, where they show something new."""
    panels = [closeup.panel for closeup in views.of(step)]
    braces = [brace_of(book, operation) for operation in step.of_kind(Kind.BRACE)]
    if not panels or not braces:
        return ()
    first = book.context.teacher(Hand.SETTLE, step) is None
    if not first and not closes(book.context, braces) and not _is_new_corner(book, step):
        return ()

    @cache
    def scene() -> Scene:
        return views.progress.whole(step)

    found = [Undrawn(*SIZE, lambda: _tying(book, scene(), panels[-1], braces[-1], helped=first))]
    if first and panels[-1].below:
        found.append(Undrawn(*SIZE, lambda: _under(book, scene(), panels[-1])))
    return found


def is_locked_where_it_closes(book: Book, step: Step) -> bool:
    """Whether a step closes a tube and locks there."""
    braces = [brace_of(book, operation) for operation in step.of_kind(Kind.BRACE)]
    return bool(braces and step.locks) and closes(book.context, braces)


def locked_where_it_closes(book: Book, step: Step) -> tuple[Picture, ...]:
    """How a joint is locked from outside in the step that closes a tube, where it is told."""
    if not is_locked_where_it_closes(book, step):
        return ()
    joint = step.locks[0]
    own = book.framework.built_with(joint)
    return (lock_from_outside(own, book.voice, joint, book.shape),)


def _is_new_corner(book: Book, step: Step) -> bool:
    cell = corner_of(book, step)
    if cell is None or not leaves_out(cell):
        return False
    return book.context.teacher(Corner(cell.kind), step) is None


def _tying(book: Book, scene: Scene, panel: Panel, brace: Brace, *, helped: bool) -> Picture:
    voice = book.voice
    left, right = hands_at(panel, scene)
    lifted = _next_joints(book, brace) if helped else ()
    words = voice.say("one lifts, one ties") if lifted else ""
    alt = voice.say(
        "The one who ties kneels before the work, the left hand at {left}, the right at {right}.",
        left=left,
        right=right,
    )
    return person_tying(scene, panel, SIZE, words, alt, lifted)


def _under(book: Book, scene: Scene, panel: Panel) -> Picture:
    voice = book.voice
    joints = [joint for joint in panel.joints if joint in panel.below]
    words = voice.say("on one knee")
    alt = voice.say(
        "The work lies raised on a knee of the one who locks, a hand inside it, the other"
        " underneath."
    )
    return person_under(scene, panel, joints, SIZE, words, alt)


def _next_joints(book: Book, brace: Brace) -> Sequence[str]:
    """Where chains that lie on others are lifted: at their joints after a brace."""
    own = book.framework.built_with(brace.section[0])
    letters = chains_lifted(book.context, brace)
    found = []
    for long in own.chains:
        if long.letter in letters:
            joints = long.chain.joints
            tied = [n for n, joint in enumerate(joints) if joint in brace.section]
            found += [joints[min(tied[0] + 1, len(joints) - 1)]] if tied else []
    return found
