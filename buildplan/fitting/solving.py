"""A course solved: its framework at rest, and how close that comes to the outline."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from buildplan.design.building import build_framework
from buildplan.design.model import Design
from buildplan.fitting.courses import Course
from buildplan.fitting.drafting import Task
from buildplan.fitting.measuring import Closeness, closeness, silhouette
from buildplan.fitting.outline import ComplexArray, FloatArray
from buildplan.fitting.tube_design import design_of
from buildplan.framework.model import Framework
from buildplan.shape.bodies import bodies_of
from buildplan.shape.finding import Settings, at_rest
from buildplan.shape.judging import overlaps

# A piece that comes near an outline is at rest within a few steps; one that has farther to go
# folds, and is no fit.
ONE_START = Settings(starts=1, tolerance_n=1e-4, newton_steps=25, rounds=1, sharpenings=0)
STRAINED = 10.0  # what each share of strain beyond the allowed marks a piece down by
STRAIN_ALLOWED = 0.025  # a little less than find_shape allows
IN_ONE_PLACE = 0.1  # what a piece is marked down by that runs into itself, which is no design
# What a piece is marked down by: so much of each share of its height beyond the near, and of each
# link that its weight is short of being surely within its foot. What is within NEARLY_DOWN of a
# radius of the floor carries; the symmetric piece on one point is right at its edge.
HEIGHT_NEAR, OFF_HEIGHT = 0.012, 0.6
SURE_FOOT, FALLING, NEARLY_DOWN = 0.0, 0.12, 0.2


@dataclass(frozen=True)
class Solved:
    """A course, its design and framework, where its joints rest as the outline lies (complex,
    metres), its largest strain, how close it comes, how high it is over what was asked for, how
    far its weight is within its foot, in links, and whether it runs into itself."""

    task: Task
    course: Course
    design: Design
    framework: Framework
    places: ComplexArray
    strain: float
    close: Closeness
    height_share: float
    within_foot: float
    runs_into_itself: bool = False

    @property
    def score(self) -> float:
        """Lower is better; strain that find_shape would not allow rules a course out, and one that
        would fall over, is not as high as asked for or runs into itself is marked down."""
        marked_down = self.strained + self.off_height + self.falling + self.in_one_place
        return self.close.score + marked_down

    @property
    def in_one_place(self) -> float:
        """What it is marked down by for running into itself."""
        return IN_ONE_PLACE * self.runs_into_itself

    @property
    def off_height(self) -> float:
        """What it is marked down by for its height."""
        return OFF_HEIGHT * max(0.0, abs(self.height_share - 1) - HEIGHT_NEAR)

    @property
    def falling(self) -> float:
        """What it is marked down by for a weight that is not within its foot."""
        return FALLING * float(np.clip(SURE_FOOT - self.within_foot, 0.0, 1.0))

    @property
    def strained(self) -> float:
        """What it is marked down by for strain that `find_shape` would not allow."""
        return STRAINED * max(0.0, self.strain - STRAIN_ALLOWED)


def _within_foot(framework: Framework, places: ComplexArray, link_m: float) -> float:
    """How far inside its foot the weight is, as the piece lies on the outline, in links; every
    link weighs alike here, and what is nearly down carries."""
    number = {joint: i for i, joint in enumerate(framework.joints)}
    ends = np.array([(number[link.start], number[link.finish]) for link in framework.links])
    radius = np.array([framework.balloons[link.balloon].gauge_m for link in framework.links]) / 2
    middle, half = places[ends].mean(axis=1), np.abs(np.diff(places[ends], axis=1))[:, 0] / 2
    steep = np.abs(np.diff(places[ends].imag, axis=1))[:, 0] / np.maximum(2 * half, 1e-9)
    low = middle.imag - np.sqrt(radius**2 + (half**2 - radius**2) * steep**2)
    foot = middle.real[low <= low.min() + NEARLY_DOWN * radius.mean()]
    weight = middle.real.mean()
    return float(min(weight - foot.min(), foot.max() - weight) / link_m)


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
    front = front * np.exp(1j * (task.direction - np.angle(_outward(framework, course, front))))
    link_m = task.gauges.sizes.long_m
    seen = silhouette(framework, front, link_m)
    if seen.is_empty:
        return None
    close = closeness(seen, task.outline.region, link_m, turning=not course.mirrored)
    return front * close.turned + close.shifted, close


def solve(task: Task, course: Course) -> Solved | None:
    """The course at rest, from its plan alone; None when it has lost its shape altogether."""
    design = design_of(course, task.gauges, task.outline.name, voice=task.voice)
    framework = build_framework(design)
    bodies = bodies_of(framework)
    best = at_rest(framework, bodies, ONE_START)[0]
    found = laid(task, course, framework, _front(best.positions_m))
    if found is None:
        return None
    places, close = found
    strain = float(np.abs(bodies.strain(best.positions_m)).max())
    low, high = close.silhouette.bounds[1::2]
    share = (high - low) / task.outline.height_m
    foot = _within_foot(framework, places, task.gauges.sizes.long_m)
    in_one_place = bool(overlaps(bodies, best.positions_m, ONE_START))
    return Solved(task, course, design, framework, places, strain, close, share, foot, in_one_place)


def _front(positions_m: FloatArray) -> ComplexArray:
    return np.asarray(positions_m[:, 0] + 1j * positions_m[:, 1])
