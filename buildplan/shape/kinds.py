"""The codes of what can be wrong with a shape."""

from __future__ import annotations

from enum import auto

from buildplan.source.problems import ProblemKind


class ShapeKind(ProblemKind):
    """What stands in the way of building a piece, and what to take note of."""

    TIED_TOO_FAR_ACROSS = auto()
    TIED_TOO_MANY_AT_ONE = auto()
    NOT_AT_REST = auto()
    DOES_NOT_FIT = auto()
    DOES_NOT_CLOSE = auto()
    RUNS_INTO_ITSELF = auto()
    AMBIGUOUS = auto()
    DOES_NOT_STAND = auto()
    UNLIKE_BACK = auto()
    TIES_CANNOT_MEET = auto()
    READS_BACKWARDS = auto()
    NOTHING_MEETS = auto()
    NOT_SO_LOW = auto()
    SAME_PLACE = auto()
    NOT_AS_DRAWN = auto()
    FOLDS = auto()
    DOES_NOT_HOLD_ITSELF = auto()
    LEANS = auto()
    NOT_FOUND_TO_HOLD = auto()
    # cautions
    REACHES_PAST = auto()
    OFF_THE_MIDDLE = auto()
    KEPT_BY_ITS_LOCKS = auto()
    OTHER_SHAPES_UNSOUGHT = auto()
    SAGS = auto()
    MAY_NOT_HOLD_ITSELF = auto()
    TIPS_LIGHTLY = auto()
    TIPS_IN_A_DRAUGHT = auto()
