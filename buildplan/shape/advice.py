"""What is to be known of a shape that was examined: whether it holds itself up, and cautions."""

from __future__ import annotations

from collections.abc import Iterator

from buildplan.design.measures import Units, length_words, speed_words
from buildplan.language.messages import Decimal, Measure, message
from buildplan.shape.kinds import ShapeKind
from buildplan.shape.model import (
    Estimate,
    Shape,
    Stiffness,
    Wind,
)
from buildplan.source.problems import Problem
from buildplan.source.suggestions import by_hand, to_try

LEANS_LIGHTLY_DEG = 10.0


OUTDOORS_M_PER_S = 8.0  # a fresh breeze begins here (Beaufort 5)


SAGS_SHARE, FALLEN_SHARE = 0.05, 0.25  # of the height


def problems_of(shape: Shape, found: Stiffness, sag: Estimate | None) -> list[Problem]:
    """What keeps the piece from holding itself up; `sag` is None where it was not found. Of a shape
    that is not at rest nobody can tell, and it is told of by itself."""
    problems = list[Problem]()
    if found.folds_locked:
        problems.append(
            Problem(
                ShapeKind.FOLDS,
                message("the piece folds by itself even when every joint is locked"),
                to_try(message("brace it there")),
                joints=found.locked.joints,
            )
        )
    elif not shape.converged:
        return problems
    elif sag is None:
        problems.append(
            Problem(
                ShapeKind.NOT_FOUND_TO_HOLD,
                message(
                    "whether the piece holds itself up was not found: the search was cut short,"
                    " since each step is much work in a piece so large"
                ),
                to_try(message("hang it, give it a pole, or brace the joints that move most")),
                joints=found.locked.joints,
            )
        )
    elif sag.value > FALLEN_SHARE * shape.height_m and not shape.holding.fixed:
        problems.append(
            Problem(
                ShapeKind.DOES_NOT_HOLD_ITSELF,
                message("the piece does not hold itself up"),
                to_try(message("hang it, give it a pole, or brace the joints that move most")),
                joints=found.locked.joints,
            )
        )
    return problems


def _sagging(shape: Shape, sag: Estimate, units: Units) -> Iterator[Problem]:
    """What is to be known of a piece that sinks on its foot."""
    allowed_m, fallen_m = SAGS_SHARE * shape.height_m, FALLEN_SHARE * shape.height_m
    if allowed_m < sag.value <= fallen_m:
        yield Problem(
            ShapeKind.SAGS,
            message(
                "the top is likely to sag by {sag} under its own weight",
                sag=Measure(length_words(sag.value, units), 100 * sag.value),
            ),
            by_hand(message("try it before the day, and have a pole or a line ready")),
        )
    if sag.value <= fallen_m < sag.high:
        yield Problem(
            ShapeKind.MAY_NOT_HOLD_ITSELF,
            message("with soft balloons or loose locks the piece may not hold itself up"),
            by_hand(
                message("lock every joint tightly, size with care, and have a pole or a line ready")
            ),
        )


def cautions_of(
    shape: Shape, sag: Estimate | None, tip: Estimate, wind: Wind, units: Units
) -> list[Problem]:
    """What whoever stands it up is to know, in the reader's units."""
    cautions = list[Problem]()
    if shape.converged and shape.starts_cut:
        cautions.append(
            Problem(
                ShapeKind.OTHER_SHAPES_UNSOUGHT,
                message(
                    "whether the piece can come to rest in another shape too was not found: the"
                    " search was cut short, since each step is much work in a piece so large"
                ),
                by_hand(message("compare the piece with its picture before anybody lifts it")),
            )
        )
    if sag is not None and not shape.holding.hung:  # what hangs does not sink on a foot
        cautions.extend(_sagging(shape, sag, units))
    if shape.holding.fixed:
        return cautions
    if shape.standing.stands and tip.value < LEANS_LIGHTLY_DEG:
        cautions.append(
            Problem(
                ShapeKind.TIPS_LIGHTLY,
                message(
                    "the piece tips over when it leans by more than {tip} degrees",
                    tip=Decimal(tip.value, 1),
                ),
                by_hand(message("fix it to a wall or a pole, or tie its foot to a weighted base")),
                joints=shape.standing.feet,
            )
        )
    tips_at = wind.tips_at.value
    if shape.standing.stands and tips_at < OUTDOORS_M_PER_S:
        cautions.append(
            Problem(
                ShapeKind.TIPS_IN_A_DRAUGHT,
                message(
                    "a draught of {speed} tips the piece as it stands",
                    speed=Measure(speed_words(tips_at, units), tips_at),
                ),
                by_hand(
                    message("keep it indoors away from open doors, or tie it to something fixed")
                ),
            )
        )
    return cautions
