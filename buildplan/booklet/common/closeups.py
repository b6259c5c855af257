"""What the close-ups of the steps show, and from where."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import combinations, pairwise

import numpy as np

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.progress import Progress
from buildplan.drawing.bodies import Scene, link_length_m
from buildplan.drawing.camera import Camera
from buildplan.drawing.closeup import Work, closeup_cameras, fewest_cameras, shown_by_one
from buildplan.sequence.model import Kind, Step, Turn

# Steps whose work is on the piece, and those that concern the whole of it.
ON_THE_PIECE = frozenset({Kind.BRACE, Kind.SINGLE, Kind.JOIN})
ON_THE_WHOLE = frozenset({Kind.LAY, Kind.INSPECT})
# Close-ups that can stand beside one another and still be read.
MOST_ABREAST = 3
# Joints that one close-up can name and still be read.
MOST_JOINTS = 5
# Places further apart than this many link lengths have nothing of the close-up between them.
APART = 5.0


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
        for title, words, work in _works(book, progress, step)
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


def _works(book: Book, progress: Progress, step: Step) -> Iterator[tuple[str, str, Work]]:
    words, joints = _rows(step.turns), step_joints(step)
    whole = Work(_before_locking(progress.near(step, joints)), joints)
    together = len(joints) <= MOST_JOINTS and shown_by_one(whole)
    places = [] if together else places_of(book, step)
    if len(places) > 1 and len(step.turns) > MOST_ABREAST:
        for turns in places:
            joints = tuple(dict.fromkeys(joint for turn in turns for joint in turn.joints))
            words = _rows(turns)
            yield "", words, Work(_before_locking(progress.near(step, joints)), joints)
        return
    if not 1 < len(step.turns) <= MOST_ABREAST or together:
        yield "", words, whole
        return
    for number, turn in enumerate(step.turns):
        joints = tuple(dict.fromkeys(turn.joints))
        yield (
            turn.name,
            _rows([turn]),
            Work(_before_locking(progress.turn(step, number, joints)), joints),
        )


def _before_locking(scene: Scene) -> Scene:
    """The moment when everything is tied and the knots are still to be seen."""
    return replace(scene, new_locks=frozenset())


def _rows(turns: Sequence[Turn]) -> str:
    """The words of turns, row after row."""
    return "; ".join(row for turn in turns for row in turn.words.splitlines())


def places_of(book: Book, step: Step) -> list[tuple[Turn, ...]]:
    """The turns of a step by where they are: those less than `APART` links from one another are
    at one place, and places that lie nearest are one until they can stand abreast."""
    at = {
        turn: np.array([book.shape.at[joint] for joint in turn.joints], dtype=float)
        for turn in step.turns
    }

    def gap(some: Sequence[Turn], others: Sequence[Turn]) -> float:
        one, other = (np.vstack([at[turn] for turn in turns]) for turns in (some, others))
        return float(np.min(np.linalg.norm(one[:, None] - other[None], axis=2)))

    places: list[tuple[Turn, ...]] = [(turn,) for turn in step.turns]
    while len(places) > 1:
        near = min(combinations(range(len(places)), 2), key=lambda p: gap(*(places[i] for i in p)))
        first, second = (places[i] for i in near)
        clear = gap(first, second) >= APART * link_length_m(book.framework)
        if clear and len(places) <= MOST_ABREAST:
            break
        places[near[0]] = (*first, *second)
        del places[near[1]]
    return places


def view_changes(closeups: Sequence[CloseUp]) -> int:
    """How often the view turns from one close-up to the next."""
    return sum(first.camera != second.camera for first, second in pairwise(closeups))
