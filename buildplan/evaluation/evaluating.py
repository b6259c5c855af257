"""A design evaluated: run through every stage once, for all that prints, draws or prices it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cached_property

from buildplan.design.building import METRES_PER_UNIT, build_framework
from buildplan.design.measures import Units
from buildplan.design.model import Design
from buildplan.evaluation.base_advice import with_base
from buildplan.evaluation.facts import Facts, gather_facts
from buildplan.evaluation.off_the_floor import off_the_floor
from buildplan.framework.model import Framework
from buildplan.sequence.hand_reach import hands_with
from buildplan.sequence.model import Step
from buildplan.sequence.reach import find_reach
from buildplan.sequence.steps import plan_steps
from buildplan.shape.advice import FALLEN_SHARE
from buildplan.shape.constants import Constant, constants_with
from buildplan.shape.examining import examine
from buildplan.shape.finding import Settings, find_shape
from buildplan.shape.kinds import ShapeKind
from buildplan.shape.model import Base, Examination, Holding, Shape
from buildplan.shape.placing import told_in
from buildplan.shape.unlocking import folds_unlocked_m, kept_by_locks
from buildplan.shape.whereabouts import with_places

# New link balloons in one step, at most: few enough for those who learn, and the same in every
# edition, so that a step has one number on all papers of a piece.
NEW_PARTS = 12


@dataclass(frozen=True)
class Evaluation:
    """One piece: its design, its graph, its shape, its steps and its figures.

    `units` are those of the reader.
    """

    design: Design
    framework: Framework
    shape: Shape
    examination: Examination
    steps: tuple[Step, ...]
    facts: Facts
    units: Units

    @property
    def falls(self) -> bool:
        """Whether it does not hold itself up."""
        found = self.examination.sag
        return found is not None and found.value > FALLEN_SHARE * self.shape.height_m

    @property
    def sag_m(self) -> float:
        """How far the top of the piece comes down under its own weight, as far as that is known;
        none of one that does not hold itself up: that stands only where something else holds it."""
        found = self.examination.sag
        return 0.0 if found is None or self.falls else found.value

    @property
    def standing_height_m(self) -> float:
        """Height of the piece as it stands, its sag taken off."""
        return self.shape.height_m - self.sag_m

    @cached_property
    def constants(self) -> Mapping[str, Constant]:
        """The numbers that it was worked out with, its design's own among them."""
        return constants_with(self.design.constants)


def resting_shape(design: Design, framework: Framework) -> Shape:
    """The shape of a design's piece, on the foot and with the constants that it names."""
    constants = constants_with(design.constants)
    return find_shape(
        framework,
        stand_on=_names(design.stand_on),
        top=_names(design.top),
        holding=holding_of(design),
        settings=Settings(constants=constants),
    )


def _names(given: str | list[str] | None) -> tuple[str, ...]:
    return (given,) if isinstance(given, str) else tuple(given or ())


def holding_of(design: Design) -> Holding:
    """What holds the piece of a design, in metres."""
    scale, given = METRES_PER_UNIT[design.units], design.base
    base = None
    if given is not None:
        base = Base(given.width * scale, given.depth * scale, given.weight)
    return Holding(base, design.pole, design.hung, design.tied_to_wall)


def evaluate(
    design: Design, units: Units, new_parts: int, gust_m_per_s: float | None = None
) -> Evaluation:
    """Run a design through every stage; a gust asks for the ballast that holds it.

    `new_parts` is the number of link balloons that one step may bring in, at most.
    """
    framework = build_framework(design)
    shape = resting_shape(design, framework)
    return evaluate_shape(design, framework, shape, units, new_parts, gust_m_per_s)


def evaluate_shape(
    design: Design,
    framework: Framework,
    shape: Shape,
    units: Units,
    new_parts: int,
    gust_m_per_s: float | None = None,
) -> Evaluation:
    """Run a design of which the shape is known through the other stages."""
    constants = constants_with(design.constants)
    found = examine(framework, shape, gust_m_per_s=gust_m_per_s, constants=constants, units=units)
    reach = find_reach(framework, shape, hands_with(constants))
    steps = plan_steps(framework, new_parts, reach)
    problems = told_in(units, shape.problems)
    shape = replace(shape, problems=with_base(problems, shape, design.units, constants))
    folds_m = folds_unlocked_m(framework, shape, found.stiffness, constants)
    kept = kept_by_locks(folds_m, units, constants["lock_stiffness"].remembered)
    based = with_base(found.cautions, shape, design.units, constants)
    hanging = off_the_floor(framework, shape, units)
    cautions = (*kept, *hanging, *based, *reach.cautions)
    found = replace(found, cautions=with_places(cautions, shape), folds_unlocked_m=folds_m)
    problems = shape.problems
    # of parts that cannot be tied so, nothing holds together
    if not any(one.kind is ShapeKind.TIES_CANNOT_MEET for one in shape.problems):
        problems += found.problems
    problems = with_places(problems, shape)
    facts = gather_facts(design, framework, shape, found, steps, problems)
    return Evaluation(design, framework, shape, found, steps, facts, units)
