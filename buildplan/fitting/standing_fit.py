"""A solved course stood up as its outline is drawn, and judged as any file is."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import degrees

import numpy as np

from buildplan.design.measures import Units
from buildplan.design.model import Design
from buildplan.evaluation.evaluating import evaluate
from buildplan.evaluation.measured import first_mistake
from buildplan.fitting.design_file import design_text
from buildplan.fitting.fit import UPRIGHT_DEG, Fit
from buildplan.fitting.inside import Inside, inside_of
from buildplan.fitting.measuring import Closeness
from buildplan.fitting.outline import ComplexArray
from buildplan.fitting.solving import HEIGHT_NEAR, Solved, laid, solve
from buildplan.fitting.tube_design import gauges_for_height
from buildplan.language.messages import Message
from buildplan.shape.finding import find_shape
from buildplan.shape.model import FloatArray, Shape
from buildplan.source.trade_words import in_file_words
from buildplan.source.yaml_nodes import plain
from buildplan.source.yaml_source import load

# How far above the lowest outer joint others may be that are its feet too, in links
FEET_WITHIN = (0.25, 0.5, 0.1)
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


def judged(solved: Solved) -> Fit | None:
    """The solved course as high as asked for, standing as the outline is drawn if it can, with all
    that a check of its file finds wrong; None when it has lost its shape."""
    solved = _as_high(solved)
    stood = _upright(solved)
    if stood is None:
        return None
    outline, task = solved.task.outline, solved.task
    return Fit(
        outline=outline,
        target=outline.points * stood.turn + stood.shift,
        target_holes=tuple(hole * stood.turn + stood.shift for hole in outline.holes),
        design=stood.design,
        framework=solved.framework,
        shape=stood.shape,
        close=stood.close,
        inside=_inside(solved, stood),
        problems=problems_of(stood.design, task.gauges.units),
        gauges=task.gauges,
        turned_deg=stood.turned_deg,
        footed=task.footed,
    )


def problems_of(design: Design, units: Units) -> tuple[Message, ...]:
    """Every problem that `check` names in the file of a design: first those of the file, then
    those of the piece."""
    data = in_file_words(plain(load(design_text(design), design.name).root))
    mistake = first_mistake(data)
    if mistake is not None:
        return (mistake,)
    found = evaluate(Design.model_validate(data), units, NEW_PARTS)
    return tuple(problem.message for problem in found.facts.problems)


def _as_high(solved: Solved) -> Solved:
    """The same course with the gauge that brings it to the height asked for: every length of a
    piece goes with its gauges."""
    if abs(solved.height_share - 1) <= HEIGHT_NEAR:
        return solved
    task = solved.task
    gauges = gauges_for_height(task.gauges, 1 / solved.height_share)
    if gauges == task.gauges:
        return solved
    found = solve(replace(task, gauges=gauges), solved.course)
    return found if found is not None and found.score < solved.score else solved


def _upright(solved: Solved) -> _Stood | None:
    """As the outline is drawn, on the first feet that it stands on so; else on its lowest."""
    tried: list[_Stood] = []
    for feet in ([], *(_lowest_joints(solved, within) for within in FEET_WITHIN)):
        stood = _stood(solved, feet)
        if stood is not None:
            tried.append(stood)
            if stood.as_drawn:
                return stood
    return min(tried, key=lambda one: abs(one.turned_deg), default=None)


def _lowest_joints(solved: Solved, within: float) -> list[str]:
    """The outer joints that lie lowest as the outline is drawn."""
    outer = [joint for joint in solved.framework.joints if joint[0] in "AD"]
    number = {joint: i for i, joint in enumerate(solved.framework.joints)}
    height = {joint: float(solved.places[number[joint]].imag) for joint in outer}
    limit = min(height.values()) + within * solved.task.gauges.sizes.long_m
    return [joint for joint in outer if height[joint] <= limit]


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


def _front(positions_m: FloatArray) -> ComplexArray:
    return np.asarray(positions_m[:, 0] + 1j * positions_m[:, 1])


def _inside(solved: Solved, stood: _Stood) -> Inside | None:
    outline = solved.task.outline
    if not outline.holes:
        return None
    return inside_of(solved.framework, stood.places, stood.close, outline)
