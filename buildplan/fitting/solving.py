"""A course solved: its framework at rest, and how close that comes to the outline."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from buildplan.design.building import build_framework
from buildplan.design.model import Design
from buildplan.fitting.drafting import Task
from buildplan.fitting.measuring import Closeness, closeness, silhouette
from buildplan.fitting.outline import ComplexArray, FloatArray
from buildplan.fitting.search import Course, start_direction
from buildplan.fitting.tube_design import design_of
from buildplan.framework.model import Framework
from buildplan.shape.bodies import bodies_of
from buildplan.shape.finding import Settings, at_rest

# A piece that comes near an outline is at rest within a few steps; one that has farther to go
# folds, and is no fit.
ONE_START = Settings(starts=1, tolerance_n=1e-4, newton_steps=40, rounds=1)
STRAIN_ALLOWED = 0.025  # a little less than find_shape allows


@dataclass(frozen=True)
class Solved:
    """A course, its design and framework, where its joints rest as the outline lies (complex,
    metres), its largest strain, and how close it comes."""

    task: Task
    course: Course
    design: Design
    framework: Framework
    places: ComplexArray
    strain: float
    close: Closeness

    @property
    def score(self) -> float:
        """Lower is better; strain that find_shape would not allow rules a course out."""
        return self.close.score + 10 * max(0.0, self.strain - STRAIN_ALLOWED)


def _outward(framework: Framework, course: Course, flat: ComplexArray) -> complex:
    """The direction, as it lies, of what the course begins with: out along the first section, or
    along the axis of the first cell where that lies on a mirror axis."""
    number = {joint: i for i, joint in enumerate(framework.joints)}

    def ends(brace: int) -> ComplexArray:
        outer, inner, *_ = framework.braces[brace].section
        return flat[[number[outer], number[inner]]]

    if not course.mirrored or course.first is None:
        out = ends(0)
        return complex(out[0] - out[1])
    return complex(1j * (ends(1).sum() - ends(0).sum()))


def laid(
    task: Task, course: Course, framework: Framework, front: ComplexArray
) -> tuple[ComplexArray, Closeness] | None:
    """Joints (joints,) as they rest in the plane of the front, laid on the outline, and how close
    they come; None when the piece has lost its shape altogether."""
    direction = start_direction(task.outline, task.symmetry, task.gauges.sizes)
    front = front * np.exp(1j * (direction - np.angle(_outward(framework, course, front))))
    link_m = task.gauges.sizes.long_m
    seen = silhouette(framework, front, link_m)
    if seen.is_empty:
        return None
    close = closeness(seen, task.outline.region, link_m, turning=not course.mirrored)
    return front * close.turned + close.shifted, close


def solve(task: Task, course: Course) -> Solved | None:
    """The course at rest, from its plan alone; None when it has lost its shape altogether."""
    design = design_of(course, task.gauges, task.outline.name)
    framework = build_framework(design)
    bodies = bodies_of(framework)
    best = at_rest(framework, bodies, ONE_START)[0]
    found = laid(task, course, framework, _front(best.positions_m))
    if found is None:
        return None
    strain = float(np.abs(bodies.strain(best.positions_m)).max())
    return Solved(task, course, design, framework, found[0], strain, found[1])


def _front(positions_m: FloatArray) -> ComplexArray:
    return np.asarray(positions_m[:, 0] + 1j * positions_m[:, 1])
