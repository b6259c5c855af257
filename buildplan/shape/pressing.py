"""Balloons that press on one another beyond what those of a piece that can be built do.

About a balloon lie a dozen others of its size, no more (the kissing number of spheres: Schuette and
van der Waerden, Mathematische Annalen 125, 1953, 325-334; from memory). Where a course runs into
itself, or very many are tied at one joint, each presses on hundreds, and the work grows as their
pairs do.
"""

from __future__ import annotations

from collections import Counter

import numpy as np
from scipy.spatial import cKDTree

from buildplan.framework.model import Framework
from buildplan.language.messages import message
from buildplan.shape.bodies import LinkBodies, bodies_of
from buildplan.shape.kinds import ShapeKind
from buildplan.shape.model import FloatArray
from buildplan.shape.plan import close_plan, plan_of, plan_positions
from buildplan.source.problems import Problem
from buildplan.source.suggestions import by_hand

MOST_AT_A_JOINT = 60  # ours: the points of a star have some 30, and hands can tie far fewer
ABOUT_A_JOINT, ABOUT_A_BALLOON = 12, 9  # in lattices and walls, the closest that are built


def tied_too_many_at_one(framework: Framework) -> Problem | None:
    """The problem of a joint at which more balloons are tied than is worked on; None where there is
    none."""
    place = framework.place_number
    tied = Counter(place[end] for link in framework.links for end in (link.start, link.finish))
    number, most = max(tied.items(), key=lambda one: one[1], default=(0, 0))
    if most <= MOST_AT_A_JOINT:
        return None
    joint = next(joint for joint in framework.joints if place[joint] == number)
    return Problem(
        ShapeKind.TIED_TOO_MANY_AT_ONE,
        message("{count} balloons are tied at joint {joint}", count=most, joint=joint),
        by_hand(message("tie at most {count} at one joint", count=MOST_AT_A_JOINT)),
        path="build",
        joints=(joint,),
    )


def pairs_pressed(framework: Framework) -> int:
    """How many pairs of balloons meet at a joint or lie in one another, where the piece is laid
    out, beyond what every piece has; those of an assembly's parts, and at its own joints."""
    bodies = bodies_of(framework)
    at_joints = np.bincount(bodies.sharing[:, 2], minlength=1)
    beyond = at_joints - ABOUT_A_JOINT * (ABOUT_A_JOINT - 1) // 2
    meeting = int(beyond[beyond > 0].sum())
    parts = [part.framework for part in framework.parts]
    if parts:
        return meeting + sum(_lying_in_one_another(one, bodies_of(one)) for one in parts)
    return meeting + _lying_in_one_another(framework, bodies)


def _lying_in_one_another(framework: Framework, bodies: LinkBodies) -> int:
    """Pairs whose midpoints are nearer than a gauge, less those that every balloon has."""
    laid = _laid(framework)
    if laid is None:
        return 0
    tree = cKDTree(bodies.midpoints_m(laid))
    counted = int(tree.count_neighbors(tree, 2 * float(bodies.radius_m.max())))
    return max(0, counted - ABOUT_A_BALLOON * len(bodies.ends)) // 2


def _laid(framework: Framework) -> FloatArray | None:
    """Where the joints (joints, 3) of a piece are before it is relaxed; None where chance says."""
    if framework.laid:
        return np.array([framework.laid[place] for place in framework.places])
    if not framework.cells:
        return None
    plan = plan_of(framework)
    return plan_positions(framework, *close_plan(plan, plan.turn, np.zeros(len(plan.turn))))
