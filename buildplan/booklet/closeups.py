"""What the close-ups of the steps show, and from where."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from buildplan.booklet.book import Book
from buildplan.drawing.bodies import Scene
from buildplan.drawing.camera import Camera
from buildplan.drawing.closeup import Work, closeup_cameras, fewest_cameras, shown_by_one
from buildplan.sequence.model import Kind, Step, Turn

# Steps whose work is on the piece, and those that concern the whole of it.
ON_THE_PIECE = frozenset({Kind.BRACE, Kind.SINGLE, Kind.JOIN, Kind.LOCK})
ON_THE_WHOLE = frozenset({Kind.LAY, Kind.INSPECT})
# Close-ups that can stand beside one another and still be read.
MOST_ABREAST = 3


@dataclass(frozen=True, eq=False)
class CloseUp:
    """A picture of work near by: the turn it is of (empty, the whole step), in words what is
    done, what it shows, and from where."""

    title: str
    words: str
    work: Work
    camera: Camera


def step_scene(book: Book, step: Step) -> Scene:
    """A step on the piece: what it adds is new, what earlier steps added stands."""
    before = _brought(_turns(s for s in book.steps if s.number < step.number))
    now = _brought(step.turns)
    if step.kind in ON_THE_WHOLE:
        before, now = now, before
    return _scene(book, before, now)


def plan_closeups(book: Book) -> Mapping[int, tuple[CloseUp, ...]]:
    """The close-ups of every step on the piece, by step number.

    The turns of a step are shown together where one view shows enough of all of them, else
    one by one. The view changes from picture to picture as seldom as it can.
    """
    planned = [
        (step, title, words, work)
        for step in book.steps
        if step.kind in ON_THE_PIECE
        for title, words, work in _works(book, step)
    ]
    cameras = fewest_cameras([work for _, _, _, work in planned])
    found: dict[int, list[CloseUp]] = {}
    for (step, title, words, work), camera in zip(planned, cameras, strict=True):
        needed = (camera,) if camera else closeup_cameras(work.scene, work.joints)
        closeups = [CloseUp(title, words, work, each) for each in needed]
        found.setdefault(step.number, []).extend(closeups)
    return {number: tuple(closeups) for number, closeups in found.items()}


def step_joints(step: Step) -> tuple[str, ...]:
    """The joints where hands work in a step."""
    return tuple(dict.fromkeys(joint for turn in step.turns for joint in turn.joints))


def _works(book: Book, step: Step) -> Iterator[tuple[str, str, Work]]:
    words = "; ".join(turn.words for turn in step.turns)
    whole = Work(step_scene(book, step), step_joints(step))
    if not 1 < len(step.turns) <= MOST_ABREAST or shown_by_one(whole):
        yield "", words, whole
        return
    for number, turn in enumerate(step.turns):
        scene = _scene(book, _brought(_before(book, step, number)), _brought([turn]))
        yield turn.name, turn.words, Work(scene, tuple(dict.fromkeys(turn.joints)))


def _before(book: Book, step: Step, number: int) -> Iterator[Turn]:
    """The turns that are done when turn `number` (from 0) of a step begins; a step that is
    taken together with another is done turn by turn with it."""
    together = [s for s in book.steps if s.number in (step.number, step.taken_with)]
    yield from _turns(s for s in book.steps if s.number < together[0].number)
    for other in together:
        earlier = number + (other.number < step.number)
        yield from other.turns[:earlier]


def _turns(steps: Iterable[Step]) -> Iterator[Turn]:
    return (turn for step in steps for turn in step.turns)


Brought = tuple[frozenset[str], frozenset[str]]


def _brought(turns: Iterable[Turn]) -> Brought:
    """Links by id, and locks by joint, that turns bring into the piece."""
    adding = [op for turn in turns for op in turn.operations if op.adds]
    links = frozenset(link for op in adding for link in op.links)
    return links, frozenset(joint for op in adding for joint in op.locks)


def _scene(book: Book, before: Brought, now: Brought) -> Scene:
    return Scene(
        book.framework,
        book.shape,
        new_links=now[0],
        done_links=before[0] - now[0],
        new_locks=now[1],
        done_locks=before[1] - now[1],
        patterns=book.patterns,
    )


def view_changes(closeups: Sequence[CloseUp]) -> int:
    """How often the view turns from one close-up to the next."""
    return sum(first.camera != second.camera for first, second in pairwise(closeups))
