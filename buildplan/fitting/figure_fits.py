"""Figures over an outline that no tube can follow: grown, solved, and judged as any design is."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial

import numpy as np

from buildplan.design.building import build_framework
from buildplan.design.model import Design
from buildplan.fitting.candidates import FiguresGrown, Progress
from buildplan.fitting.effort import Effort, Spent
from buildplan.fitting.figure_growing import Grown, Start, grow, starts_of
from buildplan.fitting.figure_strokes import figure_design
from buildplan.fitting.fit import UPRIGHT_DEG, Fit
from buildplan.fitting.following import with_a_foot
from buildplan.fitting.measuring import HEIGHT_WITHIN, Closeness, closeness, silhouette
from buildplan.fitting.outline import ComplexArray, Outline
from buildplan.fitting.solving import HEIGHT_NEAR, OFF_HEIGHT
from buildplan.fitting.standing_fit import as_checked
from buildplan.fitting.tube_design import Gauges, gauges_for_height
from buildplan.fitting.way_up import feet_to_try
from buildplan.fitting.workers import each
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice
from buildplan.shape.finding import come_to_rest, set_down
from buildplan.shape.model import Shape

# figures that are grown before their progress is told: in a few changes, and in more
AT_ONCE, LONGER_AT_ONCE = 16, 4
HURRIED = 2  # of each gauge that are judged at most, once the search has been ended
BRIDGED = 0.2  # half the width of a dent that is bridged, in links: between strokes it is open


@dataclass(frozen=True)
class _StoodFigure:
    """A figure on its feet, how close it comes laid on the outline, and the turn and shift that
    take the outline to it."""

    design: Design
    framework: Framework
    shape: Shape
    close: Closeness
    turn: complex
    shift: complex

    @property
    def turned_deg(self) -> float:
        return float(np.degrees(np.angle(self.turn)))

    @property
    def height_m(self) -> float:
        """Of the silhouette, as the outline is drawn."""
        low, high = self.close.silhouette.bounds[1::2]
        return float(high - low)

    def score(self, outline: Outline) -> tuple[bool, float]:
        """Lower is better; as high as asked for comes first."""
        off = abs(self.height_m / outline.height_m - 1)
        return off > HEIGHT_WITHIN, self.close.score + OFF_HEIGHT * max(0.0, off - HEIGHT_NEAR)

    @property
    def as_drawn(self) -> bool:
        return abs(self.turned_deg) <= UPRIGHT_DEG and self.shape.standing.stands


def figure_fits(
    outline: Outline,
    gauges: Sequence[Gauges],
    effort: Effort,
    voice: Voice,
    watch: Callable[[Progress], bool],
) -> tuple[list[Fit], bool]:
    """The best figure with each gauge, and whether all were grown: from every root one is grown in
    a few changes, from the likeliest one in more, and the best of those that stands as it is drawn
    and passes every check is taken.

    `watch` is told after every few of them; growing ends when that says no, or at Ctrl-C, with the
    best so far.
    """
    starts = [
        start
        for one in gauges
        for start in starts_of(with_a_foot(outline, one.sizes.long_m), one, effort.roots)
    ]
    planned = len(starts) + len(gauges) * min(effort.grown_on, effort.roots)
    grown: list[Grown] = []
    to_its_end = True
    try:
        for some in _in_batches(starts, gauges, effort):
            grown += some
            closest = max(one.overlap for one in grown)
            growing = FiguresGrown(len(grown), planned, closest)
            if not watch(Progress({}, 0, 0, Spent(), growing)) and len(grown) < planned:
                to_its_end = False
                break
    except KeyboardInterrupt:
        if not grown:
            raise
        to_its_end = False
    ranked = [_best_with(one, grown)[: effort.grown_on] for one in gauges]
    judge = partial(_first_that_will_do, outline=outline, voice=voice)
    try:
        fits = each(judge, ranked if to_its_end else [best[:HURRIED] for best in ranked])
    except KeyboardInterrupt:
        to_its_end, fits = False, each(judge, [best[:1] for best in ranked])
    return [fit for fit in fits if fit is not None], to_its_end


def _in_batches(
    starts: Sequence[Start], gauges: Sequence[Gauges], effort: Effort
) -> Iterator[list[Grown]]:
    """Figures as they are grown, some at a time: from every root, then from the likeliest again."""
    first: list[Grown] = []
    for begin in range(0, len(starts), AT_ONCE):
        some = each(partial(grow, changes=effort.changes), starts[begin : begin + AT_ONCE])
        first += some
        yield some
    likely = [found.start for one in gauges for found in _best_with(one, first)[: effort.grown_on]]
    longer = partial(grow, changes=effort.changes * effort.longer)
    for begin in range(0, len(likely), LONGER_AT_ONCE):
        yield each(longer, likely[begin : begin + LONGER_AT_ONCE])


def _first_that_will_do(grown: Sequence[Grown], outline: Outline, voice: Voice) -> Fit | None:
    """The best figure that can be built as high as asked for, else the best that can be built, else
    the best without a problem, else the best there is."""
    fits = []
    for one in grown:
        fit = judged_figure(one, outline, voice)
        if fit is not None:
            fits.append(fit)
            if fit.buildable and fit.as_high:
                return fit
    return min(fits, key=lambda fit: (not fit.buildable, bool(fit.problems)), default=None)


def _best_with(gauges: Gauges, grown: Sequence[Grown]) -> list[Grown]:
    """The figures of links that were asked to be of these gauges, the best from each start, best
    first."""
    best: dict[int, Grown] = {}
    for one in sorted(grown, key=lambda one: one.score):
        if one.start.asked == gauges:
            best.setdefault(one.start.seed, one)
    return list(best.values())


def judged_figure(grown: Grown, outline: Outline, voice: Voice) -> Fit | None:
    """A grown figure as high as asked for, standing as the outline is drawn if it can, with all
    that a check of its file finds wrong; None where it cannot be laid, or has no cell (the outline
    is smaller than one)."""
    if not grown.cells:
        return None
    gauges = grown.start.gauges
    stood = _upright(grown, gauges, outline, voice)
    if stood is None:
        return None
    share = stood.height_m / outline.height_m
    resized = gauges_for_height(gauges, 1 / share)
    if abs(share - 1) > HEIGHT_NEAR and resized != gauges:
        again = _upright(grown, resized, outline, voice)
        if again is not None and again.score(outline) < stood.score(outline):
            stood, gauges = again, resized
    sound = as_checked(stood.design, stood.framework, stood.shape, gauges.units)
    return Fit(
        outline=outline,
        target=outline.points * stood.turn + stood.shift,
        target_holes=(),
        design=sound.design,
        framework=stood.framework,
        shape=sound.shape,
        close=stood.close,
        inside=None,
        problems=sound.problems,
        gauges=gauges,
        turned_deg=stood.turned_deg,
        footed=not np.array_equal(grown.start.followed.points, outline.points),
    )


def _upright(grown: Grown, gauges: Gauges, outline: Outline, voice: Voice) -> _StoodFigure | None:
    """As the outline is drawn, on the first feet that it stands on so; else the way up that comes
    nearest to that."""
    design = figure_design(grown.at, grown.cells, gauges, outline.name, voice=voice)
    framework = build_framework(design)
    resting = come_to_rest(framework)
    drawn = np.array([complex(*framework.laid[joint][:2]) for joint in framework.joints])
    tried: list[_StoodFigure] = []
    for feet in feet_to_try(framework.joints, drawn, gauges.sizes.long_m):
        set_on = design.model_copy(update={"stand_on": feet or None})
        shape = set_down(resting, stand_on=feet)
        stood = _laid(set_on, framework, shape, drawn, outline, gauges.sizes.long_m)
        if stood is not None:
            tried.append(stood)
            if stood.as_drawn:
                return stood
    return min(tried, key=lambda one: abs(one.turned_deg), default=None)


def _laid(
    design: Design,
    framework: Framework,
    shape: Shape,
    drawn: ComplexArray,
    outline: Outline,
    link_m: float,
) -> _StoodFigure | None:
    """A figure as it was set down, laid on the outline; `drawn` (joints,) is as it was drawn."""
    front = shape.positions_m[:, 0] + 1j * shape.positions_m[:, 1]
    turn = complex((np.conj(drawn - drawn.mean()) * (front - front.mean())).sum())
    turn /= abs(turn) or 1.0
    upright = front * np.conj(turn)
    seen = silhouette(framework, upright, link_m, BRIDGED)
    if seen.is_empty:
        return None
    close = closeness(seen, outline.region, link_m, turning=False)
    shift = complex(front.mean() - turn * (upright.mean() + close.shifted))
    return _StoodFigure(design, framework, shape, close, turn, shift)
