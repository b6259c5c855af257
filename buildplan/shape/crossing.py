"""What joints are tied to: those that lie beside them, or any others, crosswise.

In a piece that can lie in space each link closes a ring with two or three others, and the factors
of its matrix are small: what parts it in two is a slice of it (Lipton, Rose and Tarjan, SIAM
Journal on Numerical Analysis 16, 1979, 346-358; from memory). Where links are tied at random no
slice parts it, and the work grows as the cube of its joints.
"""

from __future__ import annotations

import numpy as np
from scipy import sparse

from buildplan.framework.model import Framework
from buildplan.language.messages import message
from buildplan.shape.bodies import bodies_of
from buildplan.shape.factors import factoring_of
from buildplan.shape.fronts import fronts_of
from buildplan.shape.kinds import ShapeKind
from buildplan.source.problems import Problem
from buildplan.source.suggestions import by_hand

AXES = 3  # each joint moves along
# A lattice of 20,000 balloons whose joints have twelve links each has less (1e10); joints that are
# tied at random are 2,800 then, and take two minutes and 2.2 GB (measured with 2,700).
MOST_WORK = 1.2e10
SMALL_WORK = 5e8  # of a second's work at most, whatever way it is done
FEW_JOINTS = 1000  # whose matrix has less even where every joint is tied to every other


def _tied(framework: Framework) -> sparse.csr_array:
    """Which joints a link lies between, (joints, joints), as ones."""
    bodies = bodies_of(framework)
    one, other = bodies.ends.T
    rows, columns = np.concatenate([one, other]), np.concatenate([other, one])
    size = (bodies.joints, bodies.joints)
    found = sparse.csr_array((np.ones(len(rows)), (rows, columns)), shape=size)
    found.data[:] = 1.0
    return found


def factor_work(framework: Framework) -> float:
    """Multiplications of one factor of the piece's second derivatives, about: those of its links
    alone, `AXES` rows a joint."""
    tied = _tied(framework)
    unit = sparse.eye_array(tied.shape[0], format="csr")
    columns = sparse.csc_array(tied + unit)
    work = AXES**3 * factoring_of(columns).work
    # joint by joint a band may be narrow enough to be kept that is not for three rows a joint
    return float(work if work < SMALL_WORK else min(work, AXES**3 * fronts_of(columns).work))


def tied_too_far_across(framework: Framework) -> Problem | None:
    """The problem of a piece whose shape takes longer to find than anybody waits; None where it
    does not."""
    if len(framework.places) <= FEW_JOINTS or factor_work(framework) <= MOST_WORK:
        return None
    return Problem(
        ShapeKind.TIED_TOO_FAR_ACROSS,
        message(
            "so many of its joints are tied crosswise, to others far from them, that its shape"
            " takes too long to work out"
        ),
        by_hand(message("tie joints to those beside them, or make the piece smaller")),
        path="build",
    )


def share_tied_across(framework: Framework) -> float:
    """Which share of the pairs of linked joints closes no ring of three or four links."""
    tied = _tied(framework)
    count = np.diff(tied.indptr)
    two = sparse.csr_array(tied @ tied)
    three = sparse.csr_array(two @ tied)
    one, other = tied.nonzero()
    # of the walks of three links from one end to the other, those go there and back
    back = count[one] + count[other] - 1
    ringed = (two[one, other] > 0) | (three[one, other] > back)
    return float(1.0 - ringed.mean()) if len(one) else 0.0
