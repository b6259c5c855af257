"""What the close-ups of the steps show, and from where."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from buildplan.booklet.book import Book
from buildplan.booklet.progress import Progress
from buildplan.drawing.camera import Camera
from buildplan.drawing.closeup import Work, closeup_cameras, fewest_cameras, shown_by_one
from buildplan.sequence.model import Kind, Step

# Steps whose work is on the piece, and those that concern the whole of it.
ON_THE_PIECE = frozenset({Kind.BRACE, Kind.SINGLE, Kind.JOIN, Kind.LOCK})
ON_THE_WHOLE = frozenset({Kind.LAY, Kind.INSPECT})
# Close-ups that can stand beside one another and still be read.
MOST_ABREAST = 3
# Joints that one close-up can name and still be read.
MOST_JOINTS = 5


@dataclass(frozen=True, eq=False)
class CloseUp:
    """A picture of work near by: the turn it is of (empty, the whole step), in words what is
    done, what it shows, and from where."""

    title: str
    words: str
    work: Work
    camera: Camera


@dataclass(frozen=True, eq=False)
class Views:
    """What the pictures of all steps show: the piece as it grows, and the close-ups of steps
    on the piece, by step number."""

    progress: Progress
    closeups: Mapping[int, tuple[CloseUp, ...]]

    def of(self, step: Step) -> tuple[CloseUp, ...]:
        """The close-ups of a step; none when its work is not on the piece."""
        return self.closeups.get(step.number, ())


def plan_views(book: Book) -> Views:
    """Close-ups for every step on the piece.

    The turns of a step are shown together where one view shows enough of all of them and they
    are not too many, else one by one. The view changes from picture to picture as seldom as it can.
    """
    progress = Progress(book)
    planned = [
        (step, title, words, work)
        for step in book.steps
        if step.kind in ON_THE_PIECE
        for title, words, work in _works(progress, step)
    ]
    cameras = fewest_cameras([work for _, _, _, work in planned])
    found: dict[int, list[CloseUp]] = {}
    for (step, title, words, work), camera in zip(planned, cameras, strict=True):
        needed = (camera,) if camera else closeup_cameras(work.scene, work.joints)
        closeups = [CloseUp(title, words, work, each) for each in needed]
        found.setdefault(step.number, []).extend(closeups)
    return Views(progress, {number: tuple(each) for number, each in found.items()})


def step_joints(step: Step) -> tuple[str, ...]:
    """The joints where hands work in a step."""
    return tuple(dict.fromkeys(joint for turn in step.turns for joint in turn.joints))


def _works(progress: Progress, step: Step) -> Iterator[tuple[str, str, Work]]:
    words, joints = "; ".join(turn.words for turn in step.turns), step_joints(step)
    whole = Work(progress.near(step, joints), joints)
    together = len(joints) <= MOST_JOINTS and shown_by_one(whole)
    if not 1 < len(step.turns) <= MOST_ABREAST or together:
        yield "", words, whole
        return
    for number, turn in enumerate(step.turns):
        joints = tuple(dict.fromkeys(turn.joints))
        yield turn.name, turn.words, Work(progress.turn(step, number, joints), joints)


def view_changes(closeups: Sequence[CloseUp]) -> int:
    """How often the view turns from one close-up to the next."""
    return sum(first.camera != second.camera for first, second in pairwise(closeups))
