"""Improving a course by small changes, each tried by solving the piece that it makes."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from buildplan.fitting.cells import KINDS, Sizes, laid_cells
from buildplan.fitting.courses import Course
from buildplan.fitting.drafting import drafted_score
from buildplan.fitting.effort import LAID_PER_TRY, Spent
from buildplan.fitting.solving import Solved, solve

# what a rhombus may turn beyond the turns that the search tries, and what closing may ask of a
# course of rigid cells, radians
GIVE_OF_RHOMBUS, GIVE_OF_COURSE = 0.5, 0.08
SEED = 7
DRAWN_PER_TRY = 60  # changes drawn at most for each that is laid
# how much farther off a course may be as laid than the best solved one and still be solved
LAID_WORSE = 0.04


class _Turns:
    """How far each kind of cell can turn."""

    def __init__(self, sizes: Sizes) -> None:
        self.least, self.most = np.full(len(KINDS), np.inf), np.full(len(KINDS), -np.inf)
        for cell in laid_cells(sizes):
            kind = KINDS[cell.kind]
            give = GIVE_OF_RHOMBUS if kind.free else 0.0
            self.least[cell.kind] = min(self.least[cell.kind], cell.turn - give)
            self.most[cell.kind] = max(self.most[cell.kind], cell.turn + give)

    def can_close(self, course: Course) -> bool:
        """Whether the course can turn once round."""
        part, whole = list(course.part), 2 * np.pi / course.fold
        give = GIVE_OF_COURSE / course.fold
        return bool(
            self.least[part].sum() <= whole + give and self.most[part].sum() >= whole - give
        )


def _changed(course: Course, chance: np.random.Generator) -> Course:
    """The course with one cell changed, put in, taken out or moved."""
    cells = list(course.cells)
    places = len(cells) + (2 if course.mirrored else 0)
    place, kind = int(chance.integers(places)), int(chance.integers(len(KINDS)))
    if place >= len(cells):
        # an end on a mirror axis: a cell there, or a section
        end = None if chance.random() < 0.3 else kind
        if place == len(cells):
            return replace(course, first=end)
        return replace(course, last=end)
    move = chance.random()
    if move < 0.45:
        cells[place] = kind
    elif move < 0.6:
        cells.insert(place, kind)
    elif move < 0.75:
        del cells[place]
    else:
        other = min(len(cells) - 1, place + int(chance.integers(1, 3)))
        cells[place], cells[other] = cells[other], cells[place]
    return replace(course, cells=tuple(cells))


def improve(solved: Solved, tries: int, seed: int = SEED) -> tuple[Solved, Spent]:
    """The best course found near `solved` in so many tries, and what was spent; the same every
    time for the same seed.

    A changed course is laid first, and solved only when that promises a better one.
    """
    chance = np.random.default_rng(seed)
    turns = _Turns(solved.task.gauges.sizes)
    best, seen = solved, {solved.course}
    laid, solves = 0, 0
    for _ in range(DRAWN_PER_TRY * tries):
        if solves == tries or laid == LAID_PER_TRY * tries:
            break
        course = _changed(best.course, chance)
        while chance.random() < 0.5:
            course = _changed(course, chance)
        if course in seen or not course.even or not turns.can_close(course):
            continue
        seen.add(course)
        laid += 1
        if drafted_score(best.task, course) > best.close.score + LAID_WORSE:
            continue
        solves += 1
        found = solve(best.task, course)
        if found is not None and found.score < best.score - 1e-4:
            best = found
    return best, Spent(laid, solves)
