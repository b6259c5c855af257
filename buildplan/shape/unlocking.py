"""Before the locks are set: whether a piece that lies as it is built keeps its shape.

A piece is found lying flat, its back mirroring its front; so laid it may be at rest on a ridge of
its energy, and only its locks keep it there. Pushed off the ridge without them, along the way in
which it folds most readily, it comes to rest in another shape.
"""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from buildplan.design.measures import Units, side_words
from buildplan.framework.model import Framework
from buildplan.language.messages import message
from buildplan.shape.bodies import bodies_of, crowding, opening, struts
from buildplan.shape.comparing import apart_m
from buildplan.shape.constants import Constant
from buildplan.shape.freedoms import all_free
from buildplan.shape.kinds import ShapeKind
from buildplan.shape.lying import put_together_standing
from buildplan.shape.model import Shape, Stiffness
from buildplan.shape.relaxing_apart import relax_apart
from buildplan.shape.settings import MANY_JOINTS
from buildplan.shape.springs import together
from buildplan.source.problems import Problem
from buildplan.source.suggestions import by_hand

PUSH_SHARE, PUSH_LINKS = 0.05, 0.5  # of the size, of a link: as far as it is pushed, at most
FOLDS_SHARE = 0.02  # of the size: a piece that moves by less keeps its shape
REST_N = 0.01
STEPS, STEPS_OF_MANY = 60, 15  # of a piece, of one of more than MANY_JOINTS


def folds_unlocked_m(
    framework: Framework, shape: Shape, found: Stiffness, constants: Mapping[str, Constant]
) -> float:
    """How far the joint that moves most goes, at least, when a piece folds that only its locks
    keep in shape; 0 for one that keeps its shape without them, folds with them too, does not fit
    together, or is put together standing, each part with its locks. One shape that it folds to is
    looked for: it may fold further."""
    if not found.folds or found.folds_locked or not (shape.converged and shape.closes):
        return 0.0
    if put_together_standing(framework, shape):
        return 0.0
    bodies, positions = bodies_of(framework), shape.positions_m
    size = float(np.ptp(positions, axis=0).max())
    push = min(PUSH_SHARE * size, PUSH_LINKS * float(bodies.length_m.mean()))
    folded = relax_apart(
        bodies,
        together(part(bodies, constants) for part in (struts, crowding, opening)),
        all_free(bodies.joints),
        positions + push * found.crowded.motion,
        REST_N,
        constants,
        newton_steps=STEPS if bodies.joints <= MANY_JOINTS else STEPS_OF_MANY,
        rounds=1,
    )
    moved = float(apart_m(positions, folded.positions_m).max())
    return moved if moved > FOLDS_SHARE * size else 0.0


def kept_by_locks(folds_m: float, units: Units, remembered: bool) -> tuple[Problem, ...]:
    """The caution for a piece that folds by `folds_m` before its locks are set, told in `units`;
    none for 0. `remembered` says that how firmly locks hold was not measured."""
    if not folds_m:
        return ()
    said = (
        message(
            "laid flat and even it has this shape, and its locks alone keep it so: without them it"
            " can fold by {fold} or more, and how firmly locks hold is known from memory only",
            fold=side_words(folds_m, units),
        )
        if remembered
        else message(
            "laid flat and even it has this shape, and its locks alone keep it so: without them it"
            " can fold by {fold} or more",
            fold=side_words(folds_m, units),
        )
    )
    how = by_hand(message("lock every joint before anybody lifts it"))
    return (Problem(ShapeKind.KEPT_BY_ITS_LOCKS, said, how),)
