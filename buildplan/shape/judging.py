"""Judging a shape: what stands in the way of building it, as problems that name joints."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import numpy as np

from buildplan.framework.model import Framework
from buildplan.language.messages import Decimal, Message, message, message_count
from buildplan.shape.bodies import LinkBodies, neighbours, touching_m
from buildplan.shape.comparing import apart_m
from buildplan.shape.drawn import not_as_drawn
from buildplan.shape.kinds import ShapeKind
from buildplan.shape.model import FREE, FloatArray, Holding, Standing
from buildplan.shape.plan import EASE_RIGID, plan_of
from buildplan.shape.relaxing import Relaxed
from buildplan.shape.settings import Settings
from buildplan.source.problems import Problem
from buildplan.source.suggestions import to_try

RIVAL_ENERGY = 1.02  # energies within 2 % of the least are alike
RIVAL_SHAPE = 0.05  # of the size: shapes farther apart than this are different
FULL_TURN_DEG = 360.0
ENOUGH_DEG = 10.0  # a course that turns as nearly as this comes round
NAMED = 6  # links named in one problem


def overlaps(
    bodies: LinkBodies, positions_m: FloatArray, settings: Settings
) -> list[tuple[int, int]]:
    """Pairs of bodies that share no joint and press noticeably into each other."""
    pairs = neighbours(bodies, positions_m, 0.0, settings.constants)
    middle = bodies.midpoints_m(positions_m)
    apart = np.linalg.norm(middle[pairs[:, 0]] - middle[pairs[:, 1]], axis=1)
    deep = apart < (1 - settings.overlap_allowed) * touching_m(bodies, pairs, settings.constants)
    return [(int(i), int(j)) for i, j in pairs[deep]]


def _turn_deg(framework: Framework) -> float | None:
    """How far a closed course turns by itself; None for others, and where corners are free."""
    if framework.parts or not (framework.closed and framework.cells):
        return None
    plan = plan_of(framework)
    if (plan.turn_ease > EASE_RIGID).any():
        return None
    return float(np.degrees(plan.turn.sum()))


def _ends(framework: Framework, bodies: LinkBodies, links: Iterable[int]) -> tuple[str, ...]:
    """Labels of the joints of `links`, each once, in order."""
    return tuple(
        dict.fromkeys(framework.places[joint] for link in links for joint in bodies.ends[link])
    )


def _unrest(best: Relaxed, settings: Settings) -> Problem | None:
    if best.residual_n <= settings.at_rest_n:
        return None
    digits = f"{best.residual_n:.2g}"
    force = digits if "e" in digits else Decimal(float(digits), len(digits.partition(".")[2]))
    said = message("the shape has not come to rest: {force} N are left unbalanced", force=force)
    if best.cut:
        said = message(
            "{problem}; the search was cut short, since each step is much work in a piece so large:"
            " what else is said of it is of the shape where the search ended, and other shapes were"
            " not looked for",
            problem=said,
        )
    return Problem(
        ShapeKind.NOT_AT_REST,
        said,
        to_try(message("make the piece simpler, or measure its links and give their tie_to_tie")),
    )


def _strained(
    framework: Framework, bodies: LinkBodies, positions_m: FloatArray, settings: Settings
) -> Problem | None:
    strain = np.abs(bodies.strain(positions_m))
    tight = np.flatnonzero(strain > settings.strain_allowed)
    if not len(tight):
        return None
    worst = sorted(tight[np.argsort(-strain[tight], kind="stable")][:NAMED])
    joints = _ends(framework, bodies, worst)
    most = Decimal(100 * float(strain.max()), 1)
    if not framework.closed:
        return Problem(
            ShapeKind.DOES_NOT_FIT,
            message_count(
                "the piece does not fit together: {number} link would have to change its length by"
                " up to {most} %",
                "the piece does not fit together: {number} links would have to change their length"
                " by up to {most} %",
                len(tight),
                most=most,
            ),
            to_try(message("take away a balloon there, or use another size")),
            joints=joints,
        )
    said = message_count(
        "the piece does not close: {number} link would have to change its length by up to {most} %",
        "the piece does not close: {number} links would have to change their length by up to"
        " {most} %",
        len(tight),
        most=most,
    )
    turn = _turn_deg(framework)
    if turn is not None and abs(turn - FULL_TURN_DEG) > ENOUGH_DEG:
        said = message(
            "{problem}; its cells turn it by {turn} degrees of the 360 it needs",
            problem=said,
            turn=Decimal(turn, 0),
        )
        how = message("add or take away cells that bend, so that the course comes round by itself")
    elif framework.cells and not framework.extras:  # balloons more pull a good course together too
        said = message(
            "{problem}; its cells turn it all the way round, but what lies between its bends does "
            "not balance, so that its ends do not meet",
            problem=said,
        )
        how = message(
            "spread the cells that bend evenly along the course, or give runs that face each other "
            "as many cells"
        )
    else:
        how = message("take away a balloon there, or use another size")
    return Problem(ShapeKind.DOES_NOT_CLOSE, said, to_try(how), joints=joints)


def _overlapping(
    framework: Framework, bodies: LinkBodies, positions_m: FloatArray, settings: Settings
) -> Problem | None:
    deep = overlaps(bodies, positions_m, settings)
    if not deep:
        return None
    return Problem(
        ShapeKind.RUNS_INTO_ITSELF,
        message_count(
            "the piece runs into itself: {number} pair of balloons that share no joint would be in"
            " the same place",
            "the piece runs into itself: {number} pairs of balloons that share no joint would be in"
            " the same place",
            len(deep),
        ),
        to_try(_apart(framework)),
        joints=_ends(framework, bodies, [link for pair in deep[: NAMED // 2] for link in pair]),
    )


def _apart(framework: Framework) -> Message:
    """What may keep balloons from being in the same place."""
    if framework.parts:
        return message("set those parts farther apart, or tie a balloon between them")
    if framework.cells and framework.closed:
        return message("open the course there, or put more cells between")
    if framework.cells:
        return message("put more cells between, or let the course turn less there")
    return message("take away a balloon there, or use another size")


def _rms(distances_m: FloatArray) -> float:
    return float(np.sqrt((distances_m**2).mean()))


def _ambiguous(
    framework: Framework, results: Sequence[Relaxed], positions_m: FloatArray
) -> Problem | None:
    best, size = results[0], float(np.ptp(positions_m, axis=0).max())
    for rival in results[1:]:
        if best.cut or rival.cut:
            continue
        alike = rival.energy_j < RIVAL_ENERGY * best.energy_j + 1e-9
        if alike and _rms(apart_m(best.positions_m, rival.positions_m)) > RIVAL_SHAPE * size:
            apart = np.linalg.norm(rival.positions_m - best.positions_m, axis=1)
            most = np.argsort(-np.round(apart, 6), kind="stable")[:4]
            return Problem(
                ShapeKind.AMBIGUOUS,
                message(
                    "the piece can come to rest in more than one shape: the lengths alone do not"
                    " say which"
                ),
                to_try(
                    message(
                        "the shape drawn is the one of least strain; brace where the shapes differ"
                        " most"
                    )
                ),
                joints=tuple(framework.places[joint] for joint in most),
            )
    return None


def _falling(standing: Standing, holding: Holding) -> Problem | None:
    if standing.stands or holding.fixed:
        return None
    return Problem(
        ShapeKind.DOES_NOT_STAND,
        message("the piece does not stand: its weight is not above its foot"),
        to_try(message("name other joints in stand_on, or widen the foot")),
        joints=standing.feet,
    )


def _unlike(framework: Framework, mirrored: bool) -> Problem | None:
    if mirrored or not framework.mirror:
        return None
    return Problem(
        ShapeKind.UNLIKE_BACK,
        message(
            "the back does not mirror the front: its links have other lengths, so the piece will"
            " twist"
        ),
        to_try(message("use the same balloons for each front chain and the back chain behind it")),
        path="build.tube.long",
    )


def problems_of(
    framework: Framework,
    bodies: LinkBodies,
    results: Sequence[Relaxed],
    positions_m: FloatArray,
    standing: Standing,
    mirrored: bool,
    settings: Settings,
    holding: Holding = FREE,
) -> tuple[Problem, ...]:
    """What is wrong with a piece whose runs ended in `results`, the best of them first."""
    found = (
        _unrest(results[0], settings),
        _strained(framework, bodies, positions_m, settings),
        _overlapping(framework, bodies, positions_m, settings),
        _ambiguous(framework, results, positions_m),
        _falling(standing, holding),
        _unlike(framework, mirrored),
        not_as_drawn(framework, positions_m),
    )
    return tuple(problem for problem in found if problem is not None)
