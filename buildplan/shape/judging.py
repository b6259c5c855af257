"""Judging a shape: what stands in the way of building it, as problems that name joints."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import numpy as np

from buildplan.design.problems import Problem
from buildplan.framework.model import Framework
from buildplan.shape.bodies import Bodies, neighbours, touching_m
from buildplan.shape.model import FloatArray, Standing
from buildplan.shape.plan import EASE_RIGID, plan_of
from buildplan.shape.relaxing import Relaxed
from buildplan.shape.settings import Settings

RIVAL_ENERGY = 1.02  # energies within 2 % of the least are alike
RIVAL_SHAPE = 0.05  # of the size: shapes farther apart than this are different
NAMED = 6  # links named in one problem
UNLIKE = Problem(
    "the back does not mirror the front: its links have other lengths, so the piece will twist",
    "use the same balloons for each front chain and the back chain behind it",
    path="build.tube.long",
)


def overlaps(bodies: Bodies, positions_m: FloatArray, settings: Settings) -> list[tuple[int, int]]:
    """Pairs of bodies that share no joint and press noticeably into each other."""
    pairs = neighbours(bodies, positions_m, 0.0, settings.constants)
    middle = bodies.midpoints_m(positions_m)
    apart = np.linalg.norm(middle[pairs[:, 0]] - middle[pairs[:, 1]], axis=1)
    deep = apart < (1 - settings.overlap_allowed) * touching_m(bodies, pairs, settings.constants)
    return [(int(i), int(j)) for i, j in pairs[deep]]


def _same_shape(first: FloatArray, second: FloatArray) -> float:
    """Root mean square distance left when `second` is laid on `first` (Kabsch 1976)."""
    a, b = first - first.mean(axis=0), second - second.mean(axis=0)
    u, _, v = np.linalg.svd(a.T @ b)
    return float(np.sqrt(((a - b @ (u @ v).T) ** 2).sum(axis=1).mean()))


def _turning(framework: Framework) -> str:
    """How far a closed course without free corners turns by itself, in words."""
    if framework.parts or not (framework.closed and framework.cells):
        return ""
    plan = plan_of(framework)
    if (plan.turn_ease > EASE_RIGID).any():
        return ""
    return f"; its cells turn it by {np.degrees(plan.turn.sum()):.0f} degrees of the 360 it needs"


def _ends(framework: Framework, bodies: Bodies, links: Iterable[int]) -> tuple[str, ...]:
    """Labels of the joints of `links`, each once, in order."""
    return tuple(
        dict.fromkeys(framework.places[joint] for link in links for joint in bodies.ends[link])
    )


def _unrest(best: Relaxed, settings: Settings) -> Problem | None:
    if best.residual_n <= settings.at_rest_n:
        return None
    return Problem(
        f"the shape has not come to rest: {best.residual_n:.2g} N are left unbalanced",
        "make the piece simpler, or measure its links and give their tie_to_tie",
    )


def _strained(
    framework: Framework, bodies: Bodies, positions_m: FloatArray, settings: Settings
) -> Problem | None:
    strain = np.abs(bodies.strain(positions_m))
    tight = np.flatnonzero(strain > settings.strain_allowed)
    if not len(tight):
        return None
    worst = sorted(tight[np.argsort(-strain[tight], kind="stable")][:NAMED])
    what, how = (
        ("close", "add or take away cells so that the course comes round by itself")
        if framework.closed
        else ("fit together", "take away a balloon there, or use another size")
    )
    return Problem(
        f"the piece does not {what}: {len(tight)} links would have to change their length"
        f" by up to {100 * strain.max():.1f} %{_turning(framework)}",
        how,
        joints=_ends(framework, bodies, worst),
    )


def _overlapping(
    framework: Framework, bodies: Bodies, positions_m: FloatArray, settings: Settings
) -> Problem | None:
    deep = overlaps(bodies, positions_m, settings)
    if not deep:
        return None
    return Problem(
        f"the piece runs into itself: {len(deep)} pairs of balloons that share no joint"
        " would be in the same place",
        "open the course there, or put more cells between",
        joints=_ends(framework, bodies, [link for pair in deep[: NAMED // 2] for link in pair]),
    )


def _ambiguous(
    framework: Framework, results: Sequence[Relaxed], positions_m: FloatArray
) -> Problem | None:
    best, size = results[0], float(np.ptp(positions_m, axis=0).max())
    for rival in results[1:]:
        alike = rival.energy_j < RIVAL_ENERGY * best.energy_j + 1e-9
        if alike and _same_shape(best.positions_m, rival.positions_m) > RIVAL_SHAPE * size:
            apart = np.linalg.norm(rival.positions_m - best.positions_m, axis=1)
            most = np.argsort(-np.round(apart, 6), kind="stable")[:4]
            return Problem(
                "the piece can come to rest in more than one shape: the lengths alone do not say"
                " which",
                "the shape drawn is the one of least strain; brace where the shapes differ most",
                joints=tuple(framework.places[joint] for joint in most),
            )
    return None


def _falling(standing: Standing) -> Problem | None:
    if standing.stands:
        return None
    return Problem(
        "the piece does not stand: its weight is not above its foot",
        "name other joints in stand_on, or widen the foot",
        joints=standing.feet,
    )


def problems_of(
    framework: Framework,
    bodies: Bodies,
    results: Sequence[Relaxed],
    positions_m: FloatArray,
    standing: Standing,
    mirrored: bool,
    settings: Settings,
) -> tuple[Problem, ...]:
    """What is wrong with a piece whose runs ended in `results`, the best of them first."""
    found = (
        _unrest(results[0], settings),
        _strained(framework, bodies, positions_m, settings),
        _overlapping(framework, bodies, positions_m, settings),
        _ambiguous(framework, results, positions_m),
        _falling(standing),
        None if mirrored or not framework.mirror else UNLIKE,
    )
    return tuple(problem for problem in found if problem is not None)
