"""Fitting: designs of closed tubes, or of figures, whose solved shape comes close to an outline.

For each gauge that links may be sized to: search courses, solve the likeliest in 3D, improve the
best by small changes; then judge them as any design is judged. Where no tube does well, figures of
cells are grown over the outline. What may be spent is counted (`effort.py`), and the search and
the changes are the same every time.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from contextlib import suppress
from dataclasses import replace
from typing import Literal

import numpy as np

from buildplan.design.measures import Units
from buildplan.evaluation.expected_time import seconds_to_fit
from buildplan.fitting.candidates import FiguresGrown, Progress, rounds
from buildplan.fitting.drafting import Task
from buildplan.fitting.effort import QUICK, USUAL, Effort, Spent
from buildplan.fitting.figure_fits import figure_fits
from buildplan.fitting.figure_state import few_enough
from buildplan.fitting.fit import Fit
from buildplan.fitting.following import tasks_for
from buildplan.fitting.measuring import OVERLAP_GOAL, PER_LINK_FARTHER
from buildplan.fitting.narrow import crowded, promising
from buildplan.fitting.outline import Outline
from buildplan.fitting.standing_fit import judged
from buildplan.fitting.tube_design import ENGLISH, Gauges, gauges_from
from buildplan.fitting.workers import each
from buildplan.language.voice import Voice

Preference = Literal["few", "close"]
FIGURES_NOW = Progress({}, 0, 0, Spent(), FiguresGrown(0, 1))
FINEST = 2  # of the gauges, that figures are grown with at once
LINKS_ALONG = 9  # of a tube of four chains for each outer one along its edge, braces and all
LEAST_LIKENESS = 0.3  # of a design that cannot be built as it is
# a figure of so many times the balloons of a tube is worth them if it overlaps by so much more
MANY_TIMES, MUCH_CLOSER = 2, 0.03
UNSEEN = 0.25  # a distance between two edges that nobody sees, in links


def go_on(progress: Progress) -> bool:
    """Watches nothing and lets the search run to its end."""
    return True


def fit_outline(
    outline: Outline,
    gauges: Sequence[float],
    units: Units = "in",
    effort: Effort = USUAL,
    voice: Voice = ENGLISH,
    watch: Callable[[Progress], bool] = go_on,
    of_figures: Sequence[float] = (),
) -> tuple[Fit, ...]:
    """Designs whose shape comes close to `outline`, by number of balloons, fewest first.

    `gauges` are of the long links, in `units`; `of_figures` those of figures, else the finest two
    of `gauges`: the first two at once, the others where those do not cover it as they should. After
    every round `watch` is told how far the search is; it ends when that says no, or at Ctrl-C, with
    the best so far.

    The answer holds one tube and one figure for each gauge at most, and no tube too wide for most
    of the outline where a figure will do; figures only where they are not too many cells. Of those
    that can be built, one that takes more balloons and fits no better is left out; one that cannot
    is there only where it is closer than all that can, and is a likeness at all.
    """
    likely = promising(outline, gauges, units)
    asked = [gauges_from(gauge, units) for gauge in of_figures or sorted(gauges)[:FINEST]]
    usual, finer = asked[:FINEST], [one for one in asked[FINEST:] if few_enough(outline, one)]
    enough = _for_figures(outline, usual, [gauges_from(gauge, units) for gauge in gauges])
    figures_first = bool(enough) and (not likely or crowded(outline, likely, units))
    fits: list[Fit] = []
    if figures_first:
        watch(FIGURES_NOW)
        fits, all_grown = _grown(outline, enough, finer, effort, voice, watch)
        will_do = any(_covers_well(fit) if likely else fit.buildable for fit in fits)
        if will_do or not all_grown:
            return _worth_showing(fits)
    hopeless = figures_first or not likely
    tubes = min(effort, QUICK, key=lambda one: one.courses) if hopeless else effort
    tasks = [
        task
        for gauge in sorted(likely or gauges)
        for task in tasks_for(outline, gauges_from(gauge, units), voice)
    ]
    try:
        last, to_its_end = _searched(tasks, tubes, watch)
    except KeyboardInterrupt:
        if not fits:
            raise
        return _worth_showing(fits)
    if not to_its_end:
        with suppress(KeyboardInterrupt):
            watch(replace(last, ended=True))
    fits += _judged_best(last, tubes)
    # a shape too large for figures of the finest links is one for tubes, if any can be built
    worth_it = enough == usual or not any(fit.buildable for fit in fits)
    untried = bool(likely and enough) and worth_it and not figures_first
    if to_its_end and untried and not any(map(_covers_well, fits)):
        with suppress(KeyboardInterrupt):
            watch(FIGURES_NOW)
            fits += _grown(outline, enough, finer, effort, voice, watch)[0]
    return _worth_showing(fits)


def _grown(
    outline: Outline,
    usual: Sequence[Gauges],
    finer: Sequence[Gauges],
    effort: Effort,
    voice: Voice,
    watch: Callable[[Progress], bool],
) -> tuple[list[Fit], bool]:
    """Figures with the usual gauges, and with finer ones where those do not cover as they should;
    and whether all were grown that there was reason to grow."""
    fits, all_grown = figure_fits(outline, usual, effort, voice, watch)
    if all_grown and finer and not any(map(_covers_well, fits)):
        with suppress(KeyboardInterrupt):
            found, all_grown = figure_fits(outline, finer, effort, voice, watch)
            return [*fits, *found], all_grown
        return fits, False
    return fits, all_grown


def _for_figures(
    outline: Outline, finest: Sequence[Gauges], others: Sequence[Gauges]
) -> list[Gauges]:
    """Those of the finest gauges of which a figure would not be too many cells; where there are
    none, the next of the others."""
    if outline.holes:
        return []
    larger = sorted(others, key=lambda one: one.long)
    enough = [one for one in finest if few_enough(outline, one)]
    return enough or [one for one in larger if few_enough(outline, one)][:1]


def expected_seconds(
    outline: Outline, gauges: Sequence[float], units: Units, effort: Effort, voice: Voice
) -> float:
    """How long one processor is likely to take over a fit: over its tubes, or over figures."""
    total = 0.0
    for gauge in promising(outline, gauges, units) or gauges:
        sizes = gauges_from(gauge, units)
        shapes = effort.most_solved(len(tasks_for(outline, sizes, voice)))
        total += seconds_to_fit(shapes, links_of_tube(outline, sizes))
    return total


def links_of_tube(outline: Outline, gauges: Gauges) -> float:
    """About how many links a tube along an outline has."""
    edge = np.append(outline.points, outline.points[0])
    return LINKS_ALONG * float(np.abs(np.diff(edge)).sum()) / gauges.sizes.long_m


def _searched(
    tasks: Sequence[Task], effort: Effort, watch: Callable[[Progress], bool]
) -> tuple[Progress, bool]:
    """The courses found, and whether the search came to its end."""
    last: Progress | None = None
    try:
        for last in rounds(tasks, effort):
            if not watch(last):
                return last, False
    except KeyboardInterrupt:
        if last is None:
            raise
        return last, False
    assert last is not None, "there is always a first round"
    return last, True


def _judged_best(progress: Progress, effort: Effort) -> list[Fit]:
    """For each gauge the best course that can be built as high as asked for, else the best there
    is: the first of every gauge is judged, then the second of those whose first will not do."""
    found: dict[Gauges, Fit] = {}
    for place in range(effort.judged):
        waiting = [
            (gauges, solved[place])
            for gauges, solved in progress.found.items()
            if len(solved) > place and not (gauges in found and _will_do(found[gauges]))
        ]
        if not waiting:
            break
        fits = each(judged, [solved for _, solved in waiting])
        for (gauges, _), fit in zip(waiting, fits, strict=True):
            if fit is not None and (gauges not in found or _rank(fit) > _rank(found[gauges])):
                found[gauges] = fit
    return list(found.values())


def _covers_well(fit: Fit) -> bool:
    """Whether it overlaps as it should and is right otherwise, so that a figure, whose edge is made
    of whole cells, would hardly come closer."""
    right = not fit.problems and fit.as_drawn and fit.as_high
    return right and fit.close.overlap >= OVERLAP_GOAL


def _will_do(fit: Fit) -> bool:
    return fit.buildable and fit.as_high


def _rank(fit: Fit) -> tuple[bool, bool, bool, bool, float]:
    """What makes one design better than another, most telling first: one without a problem can be
    made, if only hung or on a base; how high one is that turns over tells nothing."""
    as_high = fit.as_drawn and fit.as_high
    return fit.buildable, not fit.problems, fit.as_drawn, as_high, -fit.close.score


def _worth_showing(fits: Sequence[Fit]) -> tuple[Fit, ...]:
    """Those in which more balloons come closer, of all that can be built as high as asked for, or
    if there are none that can be built; and of the others those that are closer than all these."""
    as_high = any(map(_will_do, fits))
    kept: list[Fit] = []
    others: list[Fit] = []
    for fit in sorted(filter(_is_likeness, fits), key=lambda fit: fit.balloons):
        if not (_will_do(fit) if as_high else fit.buildable):
            others.append(fit)
        elif not kept or _closer(fit, kept[-1]):
            kept.append(fit)
    most = max((fit.likeness for fit in kept), default=0.0)
    closer = [fit for fit in others if not kept or fit.likeness > most]
    return tuple(sorted([*kept, *closer], key=lambda fit: fit.balloons))


def _is_likeness(fit: Fit) -> bool:
    """Whether anybody would have it: one that cannot be built and hardly overlaps is none."""
    return fit.buildable or fit.likeness >= LEAST_LIKENESS


def _closer(fit: Fit, other: Fit) -> bool:
    """Whether it wins more in overlap than it loses in distance, weighed as in a score."""
    near_m = max(other.close.farthest_m, UNSEEN * fit.close.link_m)
    farther = max(0.0, fit.close.farthest_m - near_m) / fit.close.link_m
    return fit.likeness - other.likeness > PER_LINK_FARTHER * farther


def recommended(fits: Sequence[Fit], prefer: Preference = "close") -> Fit:
    """The closest of those that can be built (a figure of many more balloons than a tube only where
    it is much closer), or with `few` the one of fewest balloons that is
    good. One that has to be held is next where it is close and none that stands is; then those that
    are not as high as asked for, or have a problem."""
    good = [fit for fit in fits if fit.good]
    if good and prefer == "few":
        return min(good, key=lambda fit: fit.balloons)
    held = [] if good else [fit for fit in fits if fit.well]
    will_do = held or [fit for fit in fits if _will_do(fit)]
    likely = will_do or [fit for fit in fits if fit.buildable]
    if not likely:
        return max(fits, key=_rank)
    closest = max(likely, key=lambda fit: fit.likeness)
    tubes = [fit for fit in likely if _nearly_as_close(fit, closest)]
    return max(tubes, key=lambda fit: fit.likeness, default=closest)


def _nearly_as_close(fit: Fit, figure: Fit) -> bool:
    """Whether a tube is nearly as close as a figure that takes many more balloons."""
    if fit.is_figure or not figure.is_figure or fit.near != figure.near:
        return False
    many = figure.balloons >= MANY_TIMES * fit.balloons
    return many and figure.likeness - fit.likeness < MUCH_CLOSER
