"""What would keep up a piece that does not stand, or hardly: a base of its own, or a wall."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from buildplan.design.building import METRES_PER_UNIT
from buildplan.design.measures import Units, load_words
from buildplan.language.messages import message, message_count
from buildplan.shape.advice import LEANS_LIGHTLY_DEG
from buildplan.shape.constants import Constant
from buildplan.shape.holding import advised_base, on_base, placed_base
from buildplan.shape.kinds import ShapeKind
from buildplan.shape.model import Shape
from buildplan.source.problems import Problem
from buildplan.source.suggestions import Put, Remedy, Suggestion

Table = Mapping[str, Constant]

KEPT_UP_BY_A_BASE = (
    ShapeKind.DOES_NOT_STAND,
    ShapeKind.TIPS_LIGHTLY,
)


def with_base(
    problems: Iterable[Problem], shape: Shape, units: Units, constants: Table
) -> tuple[Problem, ...]:
    """The problems of a shape; what a base or a wall mends names both, each tried."""
    return tuple(
        replace(one, suggestion=_advice(one, shape, units, constants))
        if one.kind in KEPT_UP_BY_A_BASE
        else one
        for one in problems
    )


def _advice(problem: Problem, shape: Shape, units: Units, constants: Table) -> Suggestion:
    based = base_way(shape, units, constants)
    ways = [] if based is None else [based]
    ways.append(Remedy(message("tie it to a wall"), (Put(("tied_to_wall",), True),)))
    kept = problem.suggestion.words if problem.kind is ShapeKind.DOES_NOT_STAND else ()
    return Suggestion(kept, tuple(ways))


def base_way(shape: Shape, units: Units, constants: Table) -> Remedy | None:
    """The base, or one for each foot, that keeps up a piece; None where none that is advised
    does. Its words are in `units`, which are those of the file that it is put into."""
    base, scale = advised_base(shape.standing, shape.mass_kg, constants), METRES_PER_UNIT[units]
    width, depth = (round(side / scale, 0) for side in (base.width_m, base.depth_m))
    told = placed_base(shape.standing, replace(base, width_m=width * scale, depth_m=depth * scale))
    if on_base(shape.standing, shape.mass_kg, told).tip_angle_deg < LEANS_LIGHTLY_DEG:
        return None
    words = message_count(
        "tie it to a base {width} {units} wide and {depth} {units} deep that weighs {weight}",
        "tie each of its {number} feet to a base of its own, {width} {units} wide and {depth} "
        "{units} deep, that weighs {weight}",
        told.count,
        width=f"{width:g}",
        depth=f"{depth:g}",
        weight=load_words(base.weight_kg),
        units=units,
    )
    given = {"width": width, "depth": depth, "weight": base.weight_kg}
    return Remedy(words, (Put(("base",), given),))
