"""Fitting: designs of closed tubes whose solved shape comes close to an outline.

For each gauge that links may be sized to: search courses, solve the likeliest in 3D, improve the
best by small changes; then judge them as any design is judged. The search and the changes are the
same every time.
"""

from __future__ import annotations

from collections.abc import Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from functools import partial
from math import degrees

import numpy as np

from buildplan.design.model import Design
from buildplan.fitting.drafting import Task, drafted_score
from buildplan.fitting.improving import improve
from buildplan.fitting.inside import Inside, band_gauge_m, band_width_m, inside_of
from buildplan.fitting.measuring import FARTHEST_GOAL, OVERLAP_GOAL, Closeness
from buildplan.fitting.outline import ComplexArray, Outline, Symmetry, symmetry_of
from buildplan.fitting.search import search_courses
from buildplan.fitting.solving import Solved, laid, solve
from buildplan.fitting.tube_design import METRES_PER_INCH, gauges_from
from buildplan.framework.counts import balloon_counts
from buildplan.framework.model import Framework
from buildplan.language.speaking import speaking, spoken
from buildplan.shape.examining import examine
from buildplan.shape.finding import find_shape
from buildplan.shape.model import FloatArray, Shape
from buildplan.source.problems import Problem

# Gauges that links are sized to, inches: 8 and 6 of a 12-inch link, 5 of a 6-inch one. Common
# practice, no source.
GAUGES_IN = (8.0, 6.0, 5.0)
LEAST_GAUGE_IN, MOST_GAUGE_IN = 3.0, 10.0
COURSES, SOLVED, IMPROVED = 40, 8, 3
# changes tried on each of the best courses, and balloons solved in trying more on the best two
# while they are not close enough
TRIES_EACH, LINKS_MORE = 8, 5_000
VERY_CLOSE, CLOSE_ENOUGH, HOPELESS = 0.10, 0.17, 0.6  # scores
LEAST_PART_LINKS = 1.5  # of outline in each repeated part of a course
UNSEEN = 0.25  # a distance between two edges that nobody sees, in links
UPRIGHT_DEG = 4.0
# how much larger is tried where none fits at the height asked for: each height so many times the
# one before, to whole steps
LARGEST, LADDER, STEP_M = 3.0, 1.07, 0.05


@dataclass(frozen=True)
class Fit:
    """A design, its solved shape, how close that comes to `outline`, and every problem that a
    check of the design would name.

    `target` is the outline as it lies on the standing piece, in x and y of the shape, and
    `target_holes` its holes; `inside` is what lies within the piece where the outline has any.
    `turned_deg` is how far the piece stands turned (counterclockwise, seen from the front) from
    the way the outline is drawn; 0 when it stands as drawn.
    """

    outline: Outline
    target: ComplexArray
    target_holes: tuple[ComplexArray, ...]
    design: Design
    framework: Framework
    shape: Shape
    close: Closeness
    inside: Inside | None
    problems: tuple[Problem, ...]
    gauge_in: float
    balloons: int
    turned_deg: float

    @property
    def good(self) -> bool:
        """Whether it is as close as it should be, and right in every other way."""
        near = self.close.overlap >= OVERLAP_GOAL and self.close.farthest <= FARTHEST_GOAL
        return near and not self.problems

    @property
    def likeness(self) -> float:
        """The overlap, with the holes of the outline counted where it has any."""
        return self.close.overlap if self.inside is None else self.inside.overlap


def _symmetries(symmetry: Symmetry, perimeter_links: float) -> list[Symmetry]:
    """The symmetry itself, or the most of it whose parts are long enough for cells, and the next
    that it contains."""
    found = []
    for fold in range(1, symmetry.fold + 1):
        long_enough = perimeter_links / (2 * fold) >= LEAST_PART_LINKS
        if symmetry.fold % fold or not (long_enough or fold == 1):
            continue
        mirrors: tuple[float, float] | tuple[()] = ()
        if symmetry.mirrors:
            mirrors = (symmetry.mirrors[0], symmetry.mirrors[0] - np.pi / fold)
        found.append(Symmetry(symmetry.centre, fold, mirrors))
    # a ring of twelve parts is also one of six, four or three; the lowest are left to others
    kept = [one for one in found if one.fold * 4 >= symmetry.fold]
    return kept[:-3:-1]


def fit_with(outline: Outline, gauge_in: float) -> tuple[Solved, ...]:
    """The best solved courses along `outline` with links of this gauge, best first."""
    gauges = gauges_from(gauge_in)
    edge = np.append(outline.points, outline.points[0])
    perimeter = float(np.abs(np.diff(edge)).sum()) / gauges.sizes.long_m
    solved: list[Solved] = []
    for symmetry in _symmetries(symmetry_of(outline), perimeter):
        task = Task(outline, symmetry, gauges)
        courses = search_courses(outline, symmetry, gauges.sizes, COURSES)
        courses.sort(key=partial(drafted_score, task))
        likely = (solve(task, course) for course in courses[:SOLVED])
        solved += [one for one in likely if one is not None]
        if solved and min(one.score for one in solved) <= CLOSE_ENOUGH:
            break  # a lower symmetry is only tried where the outline's own does not do
    solved.sort(key=lambda one: one.score)
    best = solved[:IMPROVED]
    if best and not VERY_CLOSE < best[0].score < HOPELESS:
        return tuple(best)
    improved = [improve(one, TRIES_EACH) for one in best]
    improved.sort(key=lambda one: one.score)
    if improved and improved[0].score > CLOSE_ENOUGH:
        improved = [improve(one, LINKS_MORE // len(one.framework.links)) for one in improved[:2]]
    return tuple(sorted(improved, key=lambda one: one.score))


def _lowest_joints(solved: Solved) -> list[str]:
    """The outer joints that lie lowest as the outline is drawn."""
    outer = [joint for joint in solved.framework.joints if joint[0] in "AD"]
    number = {joint: i for i, joint in enumerate(solved.framework.joints)}
    height = {joint: float(solved.places[number[joint]].imag) for joint in outer}
    limit = min(height.values()) + 0.25 * solved.task.gauges.sizes.long_m
    return [joint for joint in outer if height[joint] <= limit]


def _front(positions_m: FloatArray) -> ComplexArray:
    return np.asarray(positions_m[:, 0] + 1j * positions_m[:, 1])


@dataclass(frozen=True)
class _Stood:
    """A piece on its feet, its joints as the outline lies, and the turn and shift that take the
    outline to it."""

    design: Design
    shape: Shape
    places: ComplexArray
    close: Closeness
    turn: complex
    shift: complex

    @property
    def turned_deg(self) -> float:
        return degrees(float(np.angle(self.turn)))


def _stood(solved: Solved, feet: Sequence[str]) -> _Stood | None:
    design = solved.design.model_copy(update={"stand_on": list(feet) or None})
    shape = find_shape(solved.framework, stand_on=feet)
    front = _front(shape.positions_m)
    found = laid(solved.task, solved.course, solved.framework, front)
    if found is None:
        return None
    drawn, stands = found[0] - found[0].mean(), front - front.mean()
    turn = complex((np.conj(drawn) * stands).sum())
    turn /= abs(turn) or 1.0
    shift = complex(front.mean() - turn * found[0].mean())
    return _Stood(design, shape, *found, turn, shift)


def _inside(solved: Solved, stood: _Stood) -> Inside | None:
    outline = solved.task.outline
    if not outline.holes:
        return None
    return inside_of(solved.framework, stood.places, stood.close, outline)


def _problems(framework: Framework, shape: Shape) -> tuple[Problem, ...]:
    """What is wrong with the shape, and with how the piece gives."""
    return shape.problems or examine(framework, shape).problems


def judged(solved: Solved) -> Fit | None:
    """The solved course judged as any design is: its shape from several starts, standing as the
    outline is drawn if it can."""
    stood = _stood(solved, [])
    if stood is None:
        return None
    if abs(stood.turned_deg) > UPRIGHT_DEG:
        upright = _stood(solved, _lowest_joints(solved))
        if (
            upright is not None
            and abs(upright.turned_deg) <= UPRIGHT_DEG
            and upright.shape.standing.stands
        ):
            stood = upright
    outline = solved.task.outline
    return Fit(
        outline=outline,
        target=outline.points * stood.turn + stood.shift,
        target_holes=tuple(hole * stood.turn + stood.shift for hole in outline.holes),
        design=stood.design,
        framework=solved.framework,
        shape=stood.shape,
        close=stood.close,
        inside=_inside(solved, stood),
        problems=_problems(solved.framework, stood.shape),
        gauge_in=solved.task.gauges.long_in,
        balloons=sum(balloon_counts(solved.framework).values()),
        turned_deg=stood.turned_deg if abs(stood.turned_deg) > UPRIGHT_DEG else 0.0,
    )


def _fits_with(work: tuple[Outline, float]) -> Fit | None:
    """The best design along an outline with one gauge; one without problems if there is one."""
    best: Fit | None = None
    for solved in fit_with(*work):
        fit = judged(solved)
        if fit is not None and (best is None or not fit.problems):
            best = fit
        if best is not None and not best.problems:
            break
    return best


def _fits_in(language: str, work: tuple[Outline, float]) -> Fit | None:
    """As `_fits_with`, in another process, where the language has to be told."""
    with speaking(language):
        return _fits_with(work)


def gauges_for(outline: Outline) -> tuple[float, ...]:
    """The usual gauges; for a band, with the one that makes the tube as wide in place of the
    nearest, if links can be sized to it."""
    width_m = band_width_m(outline)
    if width_m is None:
        return GAUGES_IN
    wanted = round(2 * band_gauge_m(width_m) / METRES_PER_INCH) / 2
    if not LEAST_GAUGE_IN <= wanted <= MOST_GAUGE_IN:
        return GAUGES_IN
    nearest = min(GAUGES_IN, key=lambda gauge: abs(gauge - wanted))
    return tuple(wanted if gauge == nearest else gauge for gauge in GAUGES_IN)


def fit_outline(
    outline: Outline, gauges_in: Sequence[float] = GAUGES_IN, workers: int = 2
) -> tuple[Fit, ...]:
    """Designs whose shape comes close to `outline`, by number of balloons, fewest first.

    One for each gauge at most; of two, one that takes more balloons and fits no better is left
    out, so that along the answer more balloons always fit better.
    """
    work = [(outline, gauge) for gauge in sorted(gauges_in)]
    found = _each(work, workers)
    fits = sorted((fit for fit in found if fit is not None), key=lambda fit: fit.balloons)
    kept: list[Fit] = []
    for fit in fits:
        sound = not fit.problems
        if not kept or (sound and (kept[-1].problems or _closer(fit, kept[-1]))):
            kept.append(fit)
    sound_ones = [fit for fit in kept if not fit.problems]
    return tuple(sound_ones or kept)


def _closer(fit: Fit, other: Fit) -> bool:
    near_m = max(other.close.farthest_m, UNSEEN * fit.close.link_m)
    return fit.likeness > other.likeness and fit.close.farthest_m <= near_m


def recommended(fits: Sequence[Fit]) -> Fit:
    """The one of fewest balloons that is good, with holes the one most like the outline that is
    good, or else the closest."""
    good = [fit for fit in fits if fit.good]
    if good and good[0].outline.holes:
        return max(good, key=lambda fit: fit.likeness)
    return good[0] if good else min(fits, key=lambda fit: fit.close.score)


def smallest_height_m(outline: Outline, gauge_in: float, workers: int = 2) -> float | None:
    """The smallest of some larger heights at which `outline` can be had with this gauge: each a
    little more than the one before, to 5 cm. None when it is not at LARGEST times its height.
    """
    heights = [outline.height_m]
    while heights[-1] < LARGEST * outline.height_m:
        heights.append(max(heights[-1] + STEP_M, round(LADDER * heights[-1] / STEP_M) * STEP_M))
    work = [(outline.scaled(height / outline.height_m), gauge_in) for height in heights[1:]]
    for first in range(0, len(work), workers):
        at_once = work[first : first + workers]
        for (taller, _), fit in zip(at_once, _each(at_once, workers), strict=True):
            if fit is not None and fit.good:
                return taller.height_m
    return None


def _each(work: Sequence[tuple[Outline, float]], workers: int) -> list[Fit | None]:
    """The best design for each outline and gauge, in their order."""
    if workers > 1 and len(work) > 1:
        with ProcessPoolExecutor(min(workers, len(work))) as pool:
            return list(pool.map(partial(_fits_in, spoken()), work))
    return [_fits_with(one) for one in work]
