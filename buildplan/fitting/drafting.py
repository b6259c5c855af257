"""A course as laid: closed in the plane with its rigid cells kept, and how close its edge comes.

It takes a tenth of the time of the solved piece and says much the same, so that only likely
courses need be solved.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from shapely import Polygon

from buildplan.fitting.cells import EDGE_AT_BODY, EDGE_AT_KNOT, EDGE_AT_PEAK, KINDS, Sizes
from buildplan.fitting.measuring import BRIDGED, closeness
from buildplan.fitting.outline import ComplexArray, FloatArray, Outline, Symmetry
from buildplan.fitting.search import Course, start_direction
from buildplan.fitting.tube_design import Gauges
from buildplan.shape.plan import (
    EASE_RHOMBUS,
    EASE_RIGID,
    EASE_SLANT,
    RHOMBUS_TURN,
    Plan,
    close_plan,
    lay_sections,
)

ROUNDS = 2  # of laying the edge on the outline


@dataclass(frozen=True)
class Task:
    """What is to be fitted, with links of which sizes."""

    outline: Outline
    symmetry: Symmetry
    gauges: Gauges


def drafted_score(task: Task, course: Course) -> float:
    """The score of the course as laid, lower is better; infinite when it encloses nothing."""
    sizes = task.gauges.sizes
    edge, outward = _edge(course, sizes)
    direction = start_direction(task.outline, task.symmetry, sizes)
    edge = edge * np.exp(1j * (direction - np.angle(outward)))
    reach = BRIDGED * sizes.long_m
    seen = Polygon(np.column_stack([edge.real, edge.imag])).buffer(0)
    seen = seen.buffer(reach, 4).buffer(-reach, 4)
    if seen.geom_type != "Polygon" or seen.is_empty:
        return float("inf")
    turning = not course.mirrored
    region = task.outline.region
    return closeness(Polygon(seen.exterior), region, sizes.long_m, turning, ROUNDS).score


def _edge(course: Course, sizes: Sizes) -> tuple[ComplexArray, complex]:
    """The outer edge of the closed plan as points, and the direction of what it begins with."""
    kinds = [KINDS[kind] for kind in course.part * course.fold]
    outer, inner = (
        np.array([[*map(sizes.length_m, side), 0.0, 0.0][:2] for side in sides])
        for sides in ([kind.outer for kind in kinds], [kind.inner for kind in kinds])
    )
    plan = _plan(outer, inner, sizes.long_m)
    turn, slant = close_plan(plan, plan.turn, np.zeros(len(kinds)))
    middle, heading = lay_sections(plan, turn, slant)
    radius = sizes.long_gauge_m / 2
    up = 1j * np.exp(1j * heading)
    joint = middle + sizes.long_m / 2 * up
    start, finish = joint[:-1], joint[1:]
    between = (start + finish) / 2
    half = np.abs(finish - start) / 2
    across = 1j * (finish - start) / np.maximum(2 * half, 1e-9)
    two, one = outer[:, 1] > 0, (outer[:, 0] > 0) & (outer[:, 1] == 0)
    peak = between + np.sqrt(np.maximum(outer[:, 0] ** 2 - half**2, 0.0)) * across
    crown = np.where(
        two, peak + EDGE_AT_PEAK * radius * across, between + EDGE_AT_BODY * radius * across
    )
    sides = []
    for a, b in ((start, peak), (peak, finish)):
        out = 1j * (b - a) / np.maximum(np.abs(b - a), 1e-9)
        sides.append((a + b) / 2 + EDGE_AT_BODY * radius * out)
    points = np.column_stack([start + EDGE_AT_KNOT * radius * up[:-1], sides[0], crown, sides[1]])
    there = np.column_stack([np.ones(len(kinds), bool), two, one | two, two])
    outward = up[0]
    if course.mirrored and course.first is not None:
        outward = up[0] * np.exp(-0.5j * turn[0])
    return points[there], complex(outward)


def _plan(outer: FloatArray, inner: FloatArray, width_m: float) -> Plan:
    """The plan of cells with these links, (cells, 2), outside and inside."""
    outer_m, inner_m = outer.sum(axis=1), inner.sum(axis=1)
    turn = 2 * np.arcsin(np.clip((outer_m - inner_m) / (2 * width_m), -1, 1))
    free = (outer[:, 1] > 0) | (inner[:, 1] > 0)
    turn[free] = np.sign(turn[free]) * np.minimum(np.abs(turn[free]), RHOMBUS_TURN)
    return Plan(
        outer_m=outer_m,
        inner_m=inner_m,
        width_m=width_m,
        turn=turn,
        turn_ease=np.where(free, EASE_RHOMBUS, EASE_RIGID),
        slant_ease=np.where((outer_m > 0) & (inner_m > 0), EASE_SLANT, 0.0),
        closed=True,
    )
