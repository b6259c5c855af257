"""A course as laid: closed in the plane with its rigid cells kept, and how close its edge comes.

It takes a tenth of the time of the solved piece and says much the same, so that only likely
courses need be solved.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from shapely import Polygon

from buildplan.fitting.cells import EDGE_AT_KNOT, KINDS, CellShape, Sizes, bulged_edge
from buildplan.fitting.courses import Course
from buildplan.fitting.measuring import BRIDGED, closeness
from buildplan.fitting.outline import ComplexArray, Outline, Symmetry
from buildplan.fitting.track import start_direction
from buildplan.fitting.tube_design import ENGLISH, Gauges
from buildplan.language.voice import Voice
from buildplan.shape.plan import (
    EASE_RHOMBUS,
    EASE_RIGID,
    EASE_SLANT,
    RHOMBUS_TURN,
    CellPlan,
    close_plan,
    lay_sections,
)

ROUNDS, SAMPLES = 2, 180  # of laying the edge on the outline; of the edge
COMES_ROUND = 1e-3  # misses by so much: of a piece of 3 m by 3 mm


@dataclass(frozen=True)
class Task:
    """What is to be fitted, with links of which sizes.

    `followed` is the outline that courses are searched along: `outline` itself, or that with a
    foot that it stands on. How close a piece comes is measured on `outline`.
    """

    outline: Outline
    followed: Outline
    symmetry: Symmetry
    gauges: Gauges
    voice: Voice = ENGLISH

    @cached_property
    def direction(self) -> float:
        """Which way is out where courses begin, radians."""
        return start_direction(self.followed, self.symmetry, self.gauges.sizes)

    @property
    def footed(self) -> bool:
        """Whether what is followed has a foot that the outline does not have."""
        return not np.array_equal(self.followed.points, self.outline.points)


def drafted_score(task: Task, course: Course) -> float:
    """The score of the course as laid, lower is better; infinite when it encloses nothing."""
    sizes = task.gauges.sizes
    edge, outward = _edge(course, sizes)
    edge = edge * np.exp(1j * (task.direction - np.angle(outward)))
    reach = BRIDGED * sizes.long_m
    seen = Polygon(np.column_stack([edge.real, edge.imag])).buffer(0)
    seen = seen.buffer(reach, 4).buffer(-reach, 4)
    if seen.geom_type != "Polygon" or seen.is_empty:
        return float("inf")
    turning = not course.mirrored
    region = task.outline.region
    edge = Polygon(seen.exterior)
    return closeness(edge, region, sizes.long_m, turning, ROUNDS, SAMPLES).score


def _edge(course: Course, sizes: Sizes) -> tuple[ComplexArray, complex]:
    """The outer edge of the closed plan as points, and the direction of what it begins with."""
    kinds = [KINDS[kind] for kind in course.part * course.fold]
    plan = _plan(kinds, sizes)
    turn, slant = close_plan(plan, plan.turn, np.zeros(len(kinds)), COMES_ROUND)
    middle, heading = lay_sections(plan, turn, slant)
    radius = sizes.long_gauge_m / 2
    up = 1j * np.exp(1j * heading)
    joint = middle + sizes.long_m / 2 * up
    points: list[complex] = []
    for kind, start, finish, out in zip(kinds, joint[:-1], joint[1:], up[:-1], strict=True):
        points.append(complex(start + EDGE_AT_KNOT * radius * out))
        if kind.outer:
            lengths, rungs = (
                [sizes.length_m(key) for key in keys] for keys in (kind.outer, kind.rungs)
            )
            points += bulged_edge(complex(start), complex(finish), lengths, radius, rungs)
    outward = up[0]
    if course.mirrored and course.first is not None:
        outward = up[0] * np.exp(-0.5j * turn[0])
    return np.array(points), complex(outward)


def _plan(kinds: Sequence[CellShape], sizes: Sizes) -> CellPlan:
    """The plan of cells of these kinds, as `shape.plan` makes it of a framework."""
    outer_m, inner_m = (
        np.array([sum(map(sizes.length_m, side)) for side in sides])
        for sides in ([kind.outer for kind in kinds], [kind.inner for kind in kinds])
    )
    turn = 2 * np.arcsin(np.clip((outer_m - inner_m) / (2 * sizes.long_m), -1, 1))
    free = np.array([kind.free for kind in kinds])
    turn[free] = np.sign(turn[free]) * np.minimum(np.abs(turn[free]), RHOMBUS_TURN)
    return CellPlan(
        outer_m=outer_m,
        inner_m=inner_m,
        width_m=sizes.long_m,
        turn=turn,
        turn_ease=np.where(free, EASE_RHOMBUS, EASE_RIGID),
        slant_ease=np.where((outer_m > 0) & (inner_m > 0), EASE_SLANT, 0.0),
        closed=True,
    )
