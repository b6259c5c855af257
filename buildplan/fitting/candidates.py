"""The search in rounds: courses along an outline with each gauge, solved, then changed.

Every round is a list of pieces of work that do not know of one another, so that any number of
processes may do them; what they find is put together in order.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from itertools import groupby

from buildplan.fitting.courses import Course
from buildplan.fitting.drafting import Task, drafted_score
from buildplan.fitting.effort import Effort, Spent
from buildplan.fitting.improving import improve
from buildplan.fitting.search import search_courses
from buildplan.fitting.solving import Solved, solve
from buildplan.fitting.tube_design import Gauges
from buildplan.fitting.workers import each

Found = dict[Gauges, tuple[Solved, ...]]
"""The best courses with each gauge, best first."""
USUAL_LINKS = 220  # of a piece; of a larger one fewer changes are solved, for each takes longer
LEAST_TRIES = 2
NOTHING_BETTER = 0.05  # a score that no eye could tell from a better one


@dataclass(frozen=True)
class FiguresGrown:
    """How many figures have been grown of all that are to be, and by how much the closest of them
    overlaps, about; 0 when there is none yet."""

    done: int
    of: int
    overlap: float = 0.0


@dataclass(frozen=True)
class Progress:
    """The best courses so far with each gauge, best first, after `done` of `rounds` rounds; or how
    far the figures are that are grown now, for none of the courses is good. `ended` is said of a
    search that was ended before its last round, when the best are looked at."""

    found: Found
    done: int
    rounds: int
    spent: Spent
    figures: FiguresGrown | None = None
    ended: bool = False

    @property
    def share(self) -> float:
        """How much has been done of the rounds, or of the figures."""
        if self.figures is not None:
            return self.figures.done / self.figures.of
        return self.done / max(1, self.rounds)

    @property
    def best(self) -> Solved | None:
        """The best of all, if there is any yet."""
        firsts = [solved[0] for solved in self.found.values() if solved]
        return min(firsts, key=lambda one: one.score, default=None)


def first_candidates(task: Task, effort: Effort) -> tuple[list[Solved], Spent]:
    """The likeliest courses of a search, solved."""
    courses = search_courses(task.followed, task.symmetry, task.gauges.sizes, effort.courses)
    courses.sort(key=partial(drafted_score, task))
    likely = courses[: effort.first]
    solved = [one for one in (solve(task, course) for course in likely) if one is not None]
    return solved, Spent(len(courses), len(likely))


def rounds(tasks: Sequence[Task], effort: Effort) -> Iterator[Progress]:
    """The search, round by round; it may be left after any of them."""
    total = effort.rounds + 1
    answers = each(partial(first_candidates, effort=effort), tasks)
    nothing: Found = {task.gauges: () for task in tasks}
    found = _merged(nothing, [one for solved, _ in answers for one in solved], effort)
    spent = sum((cost for _, cost in answers), Spent())
    yield Progress(found, 1, total, spent)
    for number in range(1, total):
        chosen = [one for best in found.values() for one in best if one.score > NOTHING_BETTER]
        seeded = [(one, number * 1000 + row) for row, one in _rows(chosen)]
        changed = each(partial(_improved, effort=effort), seeded)
        found = _merged(found, [one for one, _ in changed], effort)
        spent = sum((cost for _, cost in changed), spent)
        yield Progress(found, number + 1, total, spent)


def _rows(chosen: Sequence[Solved]) -> Iterator[tuple[int, Solved]]:
    """Each with its row among those of its own gauge, so that other gauges change nothing."""
    for _, same in groupby(chosen, key=lambda one: one.task.gauges):
        yield from enumerate(same)


def _improved(work: tuple[Solved, int], effort: Effort) -> tuple[Solved, Spent]:
    solved, seed = work
    share = min(1.0, USUAL_LINKS / len(solved.framework.links))
    return improve(solved, max(LEAST_TRIES, round(share * effort.tries)), seed)


def _merged(found: Found, new: Sequence[Solved], effort: Effort) -> Found:
    """The best of old and new with each gauge, no course twice."""
    merged: Found = {}
    for gauges, old in found.items():
        once: dict[tuple[Course, bool], Solved] = {}
        for one in (*old, *(one for one in new if one.task.gauges == gauges)):
            once.setdefault((one.course, one.task.footed), one)
        best = sorted(once.values(), key=lambda one: one.score)
        merged[gauges] = tuple(best[: effort.kept])
    return merged
