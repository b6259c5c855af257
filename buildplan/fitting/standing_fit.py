"""A solved course stood up as its outline is drawn, and judged as any file is."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import degrees

import numpy as np

from buildplan.design.building import build_framework
from buildplan.design.measures import Units
from buildplan.design.model import Design
from buildplan.evaluation.evaluating import evaluate, evaluate_shape, holding_of
from buildplan.evaluation.measured import first_mistake
from buildplan.fitting.design_file import design_text
from buildplan.fitting.effort import RESIZED
from buildplan.fitting.fit import UPRIGHT_DEG, Fit
from buildplan.fitting.inside import Inside, inside_of
from buildplan.fitting.measuring import HEIGHT_WITHIN, Closeness
from buildplan.fitting.outline import ComplexArray
from buildplan.fitting.solving import HEIGHT_NEAR, Solved, laid, solve
from buildplan.fitting.tube_design import gauges_for_height
from buildplan.fitting.way_up import feet_to_try
from buildplan.framework.model import Framework
from buildplan.language.messages import Message
from buildplan.shape.finding import AtRest, come_to_rest, set_down
from buildplan.shape.kinds import ShapeKind
from buildplan.shape.model import FloatArray, Shape
from buildplan.source.trade_words import in_file_words
from buildplan.source.yaml_nodes import plain
from buildplan.source.yaml_source import load

NEW_PARTS = 12  # in a step, as in a booklet for training


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

    @property
    def as_drawn(self) -> bool:
        return abs(self.turned_deg) <= UPRIGHT_DEG and self.shape.standing.stands

    def rank(self, wanted_m: float) -> tuple[bool, bool, float]:
        """Lower is better, of the same course with other gauges."""
        off = abs(self.shape.height_m / wanted_m - 1)
        return not self.as_drawn, off > HEIGHT_WITHIN, self.close.score


def judged(solved: Solved) -> Fit | None:
    """The solved course as high as asked for, standing as the outline is drawn if it can, with all
    that a check of its file finds wrong; None when it has lost its shape."""
    found = _as_high(solved)
    if found is None:
        return None
    solved, stood = found
    outline, task = solved.task.outline, solved.task
    sound = as_checked(stood.design, solved.framework, stood.shape, task.gauges.units)
    return Fit(
        outline=outline,
        target=outline.points * stood.turn + stood.shift,
        target_holes=tuple(hole * stood.turn + stood.shift for hole in outline.holes),
        design=sound.design,
        framework=solved.framework,
        shape=sound.shape,
        close=stood.close,
        inside=_inside(solved, stood),
        problems=sound.problems,
        gauges=task.gauges,
        turned_deg=stood.turned_deg,
        footed=task.footed,
    )


@dataclass(frozen=True)
class AsChecked:
    """A design, its shape, and every problem that a check of its file names."""

    design: Design
    shape: Shape
    problems: tuple[Message, ...]


def as_checked(design: Design, framework: Framework, shape: Shape, units: Units) -> AsChecked:
    """A design with its problems; with a pole that holds it, where it has some without and none
    with one."""
    problems = problems_of(design, framework, shape, units)
    if not problems:
        return AsChecked(design, shape, ())
    with_pole = design.model_copy(update={"pole": True})
    held = replace(shape, holding=holding_of(with_pole))
    if problems_of(with_pole, framework, held, units):
        return AsChecked(design, shape, problems)
    return AsChecked(with_pole, held, ())


def problems_of(
    design: Design, framework: Framework, shape: Shape, units: Units
) -> tuple[Message, ...]:
    """Every problem that `check` names in the file of a design, but for its not standing by itself:
    first those of the file, then those of the piece. `shape` is that of `framework`."""
    data = in_file_words(plain(load(design_text(design), design.name).root))
    mistake = first_mistake(data)
    if mistake is not None:
        return (mistake,)
    read = Design.model_validate(data)
    if build_framework(read) != framework:  # its file says something else: judged by its file
        found = evaluate(read, units, NEW_PARTS)
    else:
        found = evaluate_shape(read, framework, shape, units, NEW_PARTS)
    return tuple(
        problem.message
        for problem in found.facts.problems
        if problem.kind is not ShapeKind.DOES_NOT_STAND
    )


def _as_high(solved: Solved) -> tuple[Solved, _Stood] | None:
    """The course standing, with the gauges that bring it to the height asked for, for every length
    of a piece goes with its gauges: of those tried one that is as high, then the closest."""
    wanted_m = solved.task.outline.height_m
    tried: list[tuple[Solved, _Stood]] = []
    again: Solved | None = solved
    while again is not None and len(tried) <= RESIZED:
        stood = _upright(again)
        if stood is None:
            break
        tried.append((again, stood))
        # how high one is that turns over tells nothing
        share = stood.shape.height_m / wanted_m if stood.as_drawn else again.height_share
        enough = HEIGHT_NEAR if len(tried) == 1 else HEIGHT_WITHIN
        again = None if abs(share - 1) <= enough else _resized(again, share)
    return min(tried, key=lambda one: one[1].rank(wanted_m), default=None)


def _resized(solved: Solved, share: float) -> Solved | None:
    """The course, so many times as high as it should be, with the gauges that bring it to its
    height; None where they are those it has, or it has lost its shape."""
    task = solved.task
    gauges = gauges_for_height(task.gauges, 1 / share)
    return None if gauges == task.gauges else solve(replace(task, gauges=gauges), solved.course)


def _upright(solved: Solved) -> _Stood | None:
    """As the outline is drawn, on the first feet that it stands on so; else the way up that comes
    nearest to that."""
    resting = come_to_rest(solved.framework)
    outer = [n for n, joint in enumerate(solved.framework.joints) if joint[0] in "AD"]
    labels = [solved.framework.joints[n] for n in outer]
    tried: list[_Stood] = []
    for feet in feet_to_try(labels, solved.places[outer], solved.task.gauges.sizes.long_m):
        stood = _stood(solved, resting, feet)
        if stood is not None:
            tried.append(stood)
            if stood.as_drawn:
                return stood
    return min(tried, key=lambda one: abs(one.turned_deg), default=None)


def _stood(solved: Solved, resting: AtRest, feet: Sequence[str]) -> _Stood | None:
    design = solved.design.model_copy(update={"stand_on": list(feet) or None})
    shape = set_down(resting, stand_on=feet)
    front = _front(shape.positions_m)
    found = laid(solved.task, solved.course, solved.framework, front)
    if found is None:
        return None
    drawn, stands = found[0] - found[0].mean(), front - front.mean()
    turn = complex((np.conj(drawn) * stands).sum())
    turn /= abs(turn) or 1.0
    shift = complex(front.mean() - turn * found[0].mean())
    return _Stood(design, shape, *found, turn, shift)


def _front(positions_m: FloatArray) -> ComplexArray:
    return np.asarray(positions_m[:, 0] + 1j * positions_m[:, 1])


def _inside(solved: Solved, stood: _Stood) -> Inside | None:
    outline = solved.task.outline
    if not outline.holes:
        return None
    return inside_of(solved.framework, stood.places, stood.close, outline)
