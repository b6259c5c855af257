"""How near its best the fitter comes: `python tests/bench/bench_fitting.py [outline ...]`.

Two rivals on six outlines that the search was not tuned to, each with links of one gauge, all
figures from one run:

- a long run: 20 times the budget of solved shapes, from 20 times as many courses and with other
  chances. Printed is the share of its overlap that the usual effort reaches; wanted is 97 %.
- scipy's differential_evolution (Storn and Price 1997) over the kinds of the cells, as many cells
  as in the best course that was found, given as many solved shapes as were spent on that.

Counted in solved shapes, so that the shares are the same on any machine; seconds are of the
processor, one process. An outline takes some minutes.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Sequence
from contextlib import suppress
from dataclasses import replace
from pathlib import Path

import numpy as np
from scipy.optimize import differential_evolution

from buildplan.fitting.candidates import Progress, rounds
from buildplan.fitting.cells import KINDS
from buildplan.fitting.courses import Course
from buildplan.fitting.effort import USUAL, Effort
from buildplan.fitting.following import tasks_for
from buildplan.fitting.improving import _Turns
from buildplan.fitting.solving import Solved, solve
from buildplan.fitting.sources import read_outline
from buildplan.fitting.tube_design import gauges_from
from buildplan.language.voice import Voice

UNSEEN = Path(__file__).parent.parent / "fitting" / "unseen"
OUTLINES = ("acorn", "bell", "kite", "mitten", "tooth", "vase")
HEIGHT_M, GAUGE_IN = 1.2, 8.0
TIMES, WANTED = 20, 0.97
LONG = Effort(
    courses=TIMES * USUAL.courses,
    first=TIMES * USUAL.first,
    rounds=5 * USUAL.rounds,
    kept=2 * USUAL.kept,
    tries=2 * USUAL.tries,
    judged=USUAL.judged,
    taller=USUAL.taller,
)
NO_PIECE = 10.0  # the score of a course that cannot be had


class _SpentError(Exception):
    """As many shapes have been solved as were allowed."""


def searched(name: str, effort: Effort) -> tuple[Progress, float]:
    """The best courses found, and the processor seconds that it took."""
    outline = read_outline(str(UNSEEN / f"{name}.svg"), HEIGHT_M)
    start = time.process_time()
    *_, last = rounds(tasks_for(outline, gauges_from(GAUGE_IN), Voice()), effort)
    return last, time.process_time() - start


def evolved(like: Solved, most: int) -> Solved:
    """The best of `most` solved shapes of courses with as many cells as `like`, found by
    differential evolution; `like` itself is not shown to it."""
    turns, task = _Turns(like.task.gauges.sizes), like.task
    best: list[Solved] = []
    known: dict[Course, float] = {}
    solved = 0

    def score(kinds: Sequence[float]) -> float:
        nonlocal solved
        course = replace(like.course, cells=tuple(int(kind) for kind in kinds))
        if course in known:
            return known[course]
        if not course.even or not turns.can_close(course):
            return NO_PIECE
        if solved == most:
            raise _SpentError
        solved += 1
        found = solve(task, course)
        known[course] = NO_PIECE if found is None else found.score
        if found is not None:
            best.append(found)
        return known[course]

    with suppress(_SpentError):
        differential_evolution(
            score,
            [(0, len(KINDS) - 1)] * len(like.course.cells),
            integrality=np.ones(len(like.course.cells), bool),
            seed=1,
            maxiter=10_000,
            popsize=6,
            tol=0.0,
            polish=False,
        )
    return min(best, key=lambda one: one.score)


def main() -> None:
    shares = []
    for name in sys.argv[1:] or OUTLINES:
        usual, seconds = searched(name, USUAL)
        assert usual.best is not None
        rival = evolved(usual.best, usual.spent.solved)
        long, long_seconds = searched(name, LONG)
        assert long.best is not None
        ours, far = usual.best.close.overlap, long.best.close.overlap
        shares.append(ours / far)
        print(
            f"{name:8} usual {ours:.3f} ({usual.spent.solved} solved, {seconds:.0f} s)   "
            f"long {far:.3f} ({long.spent.solved} solved, {long_seconds:.0f} s): "
            f"{ours / far:.1%} of it   "
            f"differential_evolution {rival.close.overlap:.3f}: ratio "
            f"{ours / rival.close.overlap:.2f}",
            flush=True,
        )
    print(f"least share {min(shares):.1%}, wanted {WANTED:.0%}")


if __name__ == "__main__":
    main()
