"""How close the fitter comes, and how near its best: `python tests/bench/bench_fitting.py`.

`bench_fitting.py table [HEIGHT ...] [OUTLINE ...]` (metres, and names; all without) fits the
outlines of `fit` and those of `tests/fitting/unseen`, that the search was not tuned to, with the
usual gauges and effort. Overlap and distance are measured by other means than the fitter's own
(`fitted_measure.py`), on the piece as it stands; then what the whole should come to, and what it
does.

`bench_fitting.py rivals [OUTLINE ...]` has two rivals on six outlines, each with links of one
gauge, all figures from one run:

- a long run: 20 times the budget of solved shapes, from 20 times as many courses and with other
  chances. Printed is the share of its overlap that the usual effort reaches; wanted is 97 %.
- scipy's differential_evolution (Storn and Price 1997) over the kinds of the cells, as many cells
  as in the best course that was found, given as many solved shapes as were spent on that.

`bench_fitting.py nasty [OUTLINE ...]` fits outlines that nobody would draw for a tube
(`nasty_outlines.py`) with the quick effort, and prints what was spent of what may be, what came of
it, and whether the file that would be written says of itself what `check` says of it.

Counted in solved shapes, so that the shares are the same on any machine; seconds are of the
processor, one process. An outline takes some minutes. Without a word all are printed.
"""

from __future__ import annotations

import buildplan  # noqa: F401 - before numpy, so that its linear algebra is in one thread

# isort: split
import statistics
import sys
import time
from collections.abc import Sequence
from contextlib import suppress
from dataclasses import dataclass, replace
from pathlib import Path
from tempfile import TemporaryDirectory
from unittest.mock import patch

import numpy as np
from fitted_measure import Measured, measured
from nasty_outlines import NASTY
from scipy.optimize import differential_evolution

from buildplan.design.reading import read_design
from buildplan.evaluation.evaluating import evaluate
from buildplan.fitting import figure_fits
from buildplan.fitting.candidates import Progress, rounds
from buildplan.fitting.cells import KINDS
from buildplan.fitting.courses import Course
from buildplan.fitting.effort import QUICK, USUAL, Effort, Spent
from buildplan.fitting.figure_growing import Grown, Start, grow
from buildplan.fitting.fit import Fit
from buildplan.fitting.fit_file import fit_text
from buildplan.fitting.fitting import fit_outline, recommended
from buildplan.fitting.following import tasks_for
from buildplan.fitting.improving import _Turns
from buildplan.fitting.outline import OutlineError, outline_of
from buildplan.fitting.outlines import NAMED
from buildplan.fitting.solving import Solved, solve
from buildplan.fitting.sources import FIGURE_GAUGES, gauges_for, read_outline
from buildplan.fitting.tube_design import gauges_from
from buildplan.language.voice import Voice
from buildplan.shape.kinds import ShapeKind
from buildplan.source.problems import DesignProblemsError

UNSEEN = Path(__file__).parent.parent / "fitting" / "unseen"
OUTLINES = ("acorn", "bell", "kite", "mitten", "tooth", "vase")
HEIGHT_M, GAUGE_IN = 1.2, 8.0
TIMES, WANTED = 20, 0.97
HEIGHTS_M = (1.2, 1.5, 1.8)
NASTY_HEIGHTS_M = (0.3, 1.2)
LONG = replace(
    USUAL,
    courses=TIMES * USUAL.courses,
    first=TIMES * USUAL.first,
    rounds=5 * USUAL.rounds,
    kept=2 * USUAL.kept,
    tries=2 * USUAL.tries,
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


@dataclass(frozen=True)
class Row:
    """A line of the table: what was measured, and seconds of the processor and of the clock."""

    piece: Measured
    processor_s: float
    clock_s: float


def fitted(name: str, height_m: float) -> Row:
    """The design that `fit` would write for an outline at a height."""
    file = UNSEEN / f"{name}.svg"
    outline = read_outline(str(file) if file.exists() else name, height_m)
    start, begun = time.process_time(), time.monotonic()
    fit = recommended(fit_outline(outline, gauges_for(outline), of_figures=FIGURE_GAUGES["in"]))
    return Row(measured(fit), time.process_time() - start, time.monotonic() - begun)


def table(given: Sequence[str]) -> None:
    """A line for each outline at each height, and what all come to."""
    heights = [float(word) for word in given if word[0].isdigit()] or HEIGHTS_M
    seen = sorted(file.stem for file in UNSEEN.glob("*.svg"))
    names = [word for word in given if not word[0].isdigit()] or [*NAMED, *seen]
    print(
        "outline          height overlap farthest balloons   high  stands upright built "
        "processor  clock"
    )
    rows = []
    for height_m in heights:
        for name in names:
            row = fitted(name, height_m)
            rows.append(row)
            one = row.piece
            print(
                f"{name:16} {height_m * 100:4.0f} cm   {one.overlap:.3f}     {one.farthest:.2f}"
                f"     {one.balloons:5} {one.height_share:6.1%}  {_yes(one.stands)}    "
                f"{_yes(one.upright)}     {_yes(one.built)}   {row.processor_s:6.1f} s "
                f"{row.clock_s:4.0f} s",
                flush=True,
            )
    overlaps = [row.piece.overlap for row in rows]
    far = [row.piece.farthest for row in rows]
    print(
        f"overlap {statistics.median(overlaps):.3f} in median (goal 0.93), {min(overlaps):.3f} at "
        f"worst (goal 0.88); farthest {statistics.median(far):.2f} of a link in median (goal "
        f"0.45); "
        f"{sum(row.piece.as_wished for row in rows)} of {len(rows)} stand as drawn, as high as "
        f"asked, without a problem; processor {statistics.median(r.processor_s for r in rows):.1f} "
        f"s in median, {max(row.processor_s for row in rows):.1f} s at most (goal 30: 15 s on two "
        "cores)"
    )


def _yes(it_does: bool) -> str:
    return "yes" if it_does else "no "


def rivals(given: Sequence[str]) -> None:
    """A line for each outline: the usual search, a long one, and differential evolution."""
    shares = []
    for name in given or OUTLINES:
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


def nasty(given: Sequence[str]) -> None:
    """A line for each outline: spent and allowed, and the design or why there is none."""
    head = "outline           height  shapes solved  changes of figures  overlap   high  its file"
    print(head, flush=True)
    for name in given or NASTY:
        for height_m in NASTY_HEIGHTS_M:
            print(f"{name:17} {height_m * 100:4.0f} cm  {_tried(name, height_m)}", flush=True)


def _tried(name: str, height_m: float) -> str:
    voice = Voice()
    try:
        outline = outline_of(name, NASTY[name], height_m)
    except OutlineError as error:
        return f"refused: {voice.tell(error.told)}"
    gauges, figures, spent = gauges_for(outline), FIGURE_GAUGES["in"], Spent()

    def watch(progress: Progress) -> bool:
        nonlocal spent
        spent = progress.spent if not progress.figures else spent
        return True

    asked: list[int] = []

    def growing(start: Start, changes: int) -> Grown:
        asked.append(changes)
        return grow(start, changes)

    with patch.object(figure_fits, "grow", growing):
        fits = fit_outline(outline, gauges, effort=QUICK, watch=watch, of_figures=figures)
    most = sum(
        QUICK.most_solved(len(tasks_for(outline, gauges_from(one), voice))) for one in gauges
    )
    told = (
        f"{spent.solved:6} of {most:4}     {sum(asked):5} of {QUICK.most_changes(len(figures)):5}"
    )
    if not fits:
        return f"{told}       nothing follows it: told"
    fit = recommended(fits)
    return (
        f"{told}         {fit.close.overlap:.3f}  {fit.height_m / height_m:5.1%}  {_says_of(fit)}"
    )


def _says_of(fit: Fit) -> str:
    """Whether a check of the file of a fit finds what the fit says of itself."""
    with TemporaryDirectory() as folder:
        file = Path(folder) / "fit.yaml"
        file.write_text(fit_text(fit, Voice()), "utf-8")
        try:
            design = read_design(file)
        except DesignProblemsError as error:
            refused = {problem.message for problem in error.problems}
            return "refused, and told so" if refused & set(fit.problems) else "REFUSED, UNTOLD"
    found = evaluate(design, design.units, 12).facts.problems
    wrong = [one.message for one in found if one.kind is not ShapeKind.DOES_NOT_STAND]
    if tuple(wrong) != fit.problems:
        return "OTHERWISE THAN CHECKED"
    return f"{len(wrong)} problems, told" if wrong else "passes"


def main() -> None:
    parts = {"table": table, "rivals": rivals, "nasty": nasty}
    asked, *given = sys.argv[1:] or [""]
    for name, part in parts.items():
        if asked in (name, ""):
            part(given)


if __name__ == "__main__":
    main()
