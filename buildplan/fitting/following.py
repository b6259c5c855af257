"""What courses are searched along for an outline: with which symmetry, and on which foot.

An outline whose weight is not above its own lowest part would roll over. It is also tried with a
foot: cut level a little above its lowest point, or set on a low plinth.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import numpy as np
from shapely import box

from buildplan.fitting.drafting import Task
from buildplan.fitting.outline import (
    ComplexArray,
    Outline,
    OutlineError,
    Symmetry,
    outline_of,
    ring_points,
    symmetry_of,
)
from buildplan.fitting.tube_design import Gauges
from buildplan.language.voice import Voice

LEAST_PART_LINKS = 1.5  # of outline in each repeated part of a course
# The foot reaches so far beyond the weight on either side, in links; what lies so little above the
# lowest point, in links, comes down in any piece.
FOOT_REACH, COMES_DOWN = 0.6, 0.35
CUTS = (0.02, 0.04, 0.06, 0.08)  # of the height, least first
PLINTH = 0.1  # its height, of the outline's


def tasks_for(outline: Outline, gauges: Gauges, voice: Voice) -> list[Task]:
    """The searches that an outline asks for with these gauges."""
    found = []
    for followed in (outline, *_footed(outline, gauges.sizes.long_m)):
        edge = np.append(followed.points, followed.points[0])
        perimeter = float(np.abs(np.diff(edge)).sum()) / gauges.sizes.long_m
        for symmetry in _symmetries(symmetry_of(followed), perimeter):
            found.append(Task(outline, followed, symmetry, gauges, voice))
    return found


def with_a_foot(outline: Outline, link_m: float) -> Outline:
    """The outline, on a foot below its weight where it has none of its own."""
    return next(_footed(outline, link_m), outline)


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


def _footed(outline: Outline, link_m: float) -> Iterator[Outline]:
    """The outline on a foot below its weight, where it has none of its own."""
    region = outline.region
    middle, low = region.centroid.x, region.bounds[1]
    left, right = middle - FOOT_REACH * link_m, middle + FOOT_REACH * link_m
    foot = _across(outline.points, low + COMES_DOWN * link_m)
    if foot[0] <= left and foot[1] >= right:
        return
    height = outline.height_m
    for cut in CUTS:
        level = low + cut * height
        begin, end = _across(outline.points, level)
        if begin <= left and end >= right:
            rest = region.intersection(box(*region.bounds[:1], level, *region.bounds[2:]))
            break
    else:
        begin, end = _across(outline.points, low + PLINTH * height)
        plinth = box(min(begin, left), low, max(end, right), low + PLINTH * height)
        rest = region.union(plinth)
    parts = getattr(rest, "geoms", [rest])
    try:
        made = outline_of(outline.name, ring_points(max(parts, key=lambda p: p.area)), height)
    except OutlineError:
        return
    yield replace(made, holes=outline.holes)


def _across(points: ComplexArray, level: float) -> tuple[float, float]:
    """How far to the left and right the outline reaches below a level."""
    below = points.real[points.imag <= level + 1e-9]
    return float(below.min()), float(below.max())
