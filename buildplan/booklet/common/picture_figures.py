"""How well the close-ups of a booklet show the work, in figures; the bench prints them and tests
hold them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations, pairwise

import numpy as np

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.closeups import CloseUp, Views
from buildplan.drawing.bodies import link_length_m
from buildplan.drawing.camera import project
from buildplan.drawing.closeup import Uncovered, uncovered
from buildplan.drawing.seat import ACROSS, LYING
from buildplan.framework.model import Brace


@dataclass(frozen=True)
class PictureFigures:
    """Of all close-ups of a booklet: how many there are, how many of them are seen from a seat of
    their own, across a corner, how often the turn of a brace's joints flips between clockwise and
    anticlockwise from one picture to the next, how many pictures of braces have a joint of some
    chain in another quarter than the others, how near to one another two joints of a brace's or a
    corner's picture come (in link lengths), the least share of a new balloon that nothing old
    covers, and the lines of old work that cross a new balloon."""

    closeups: int
    across: int
    flips: int
    moved: int
    least_apart: float
    least_seen: float
    crossing: int


def figures(book: Book, views: Views) -> PictureFigures:
    """The figures of a booklet's close-ups."""
    every = [closeup for each in views.closeups.values() for closeup in each]
    seen: list[Uncovered] = [uncovered(closeup.panel) for closeup in every]
    braces = [
        (brace, closeup)
        for closeup in every
        for brace in book.framework.braces
        if closeup.panel.camera.name in LYING and brace.links[:1]
        if set(brace.links) & closeup.panel.scene.new_links and len(brace.section) > 2
    ]
    turns = [(_part(book, brace), turn(closeup, brace.section)) for brace, closeup in braces]
    flips = sum(one[0] == other[0] and one[1] != other[1] for one, other in pairwise(turns))
    return PictureFigures(
        closeups=len(every),
        across=sum(closeup.panel.camera.name == ACROSS for closeup in every),
        flips=flips,
        moved=sum(
            quarters(closeup, brace.section) != USUAL[len(brace.section)]
            for brace, closeup in braces
        ),
        least_apart=min((_apart(closeup) for _, closeup in braces), default=1.0),
        least_seen=min((found.seen for found in seen), default=1.0),
        crossing=sum(found.crossing for found in seen),
    )


# The quarters of a section's joints, in its order: upper right, upper left, lower left, lower
# right; of three the second lies to the left, half way up.
USUAL = {3: ((1, 1), (-1, 0), (1, -1)), 4: ((1, 1), (-1, 1), (-1, -1), (1, -1))}


def _part(book: Book, brace: Brace) -> int:
    return id(book.framework.built_with(brace.section[0]))


def turn(closeup: CloseUp, joints: Sequence[str]) -> bool:
    """Whether joints follow one another anticlockwise on the page."""
    x, y = _spots(closeup, joints).T
    return bool(np.sum(x * np.roll(y, -1) - y * np.roll(x, -1)) > 0)


def quarters(closeup: CloseUp, joints: Sequence[str]) -> tuple[tuple[int, int], ...]:
    """For each joint, whether it lies right (1) or left (-1), and above or below the middle."""
    spots = _spots(closeup, joints)
    away = np.sign(spots - np.mean(spots, axis=0)).astype(int)
    if len(joints) == 3:
        away[1, 1] = 0
    return tuple((int(x), int(y)) for x, y in away)


def _apart(closeup: CloseUp) -> float:
    """How near to one another two joints of a picture lie on the page, in link lengths."""
    joints = tuple(dict.fromkeys((*closeup.panel.joints, *closeup.panel.skipped)))
    spots = _spots(closeup, joints) / link_length_m(closeup.panel.scene.framework)
    return min(float(np.linalg.norm(one - other)) for one, other in combinations(spots, 2))


def _spots(
    closeup: CloseUp, joints: Sequence[str]
) -> np.ndarray[tuple[int, int], np.dtype[np.float64]]:
    panel = closeup.panel
    spots, _ = project(panel.camera, np.array([panel.scene.shape.at[joint] for joint in joints]))
    return spots
