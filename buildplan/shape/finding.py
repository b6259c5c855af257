"""Finding the shape: lay the plan, let it come to rest, set it on the floor, judge it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

import numpy as np

from buildplan.design.problems import Problem
from buildplan.framework.model import Framework
from buildplan.shape.bodies import (
    Bodies,
    bodies_of,
    contacts,
    crowding,
    neighbours,
    opening,
    struts,
    touching_m,
)
from buildplan.shape.constants import CONSTANTS, Constant
from buildplan.shape.model import FloatArray, Shape
from buildplan.shape.plan import EASE_RIGID, close_plan, plan_of, plan_positions
from buildplan.shape.relaxing import Relaxed, free_basis, mirrored_basis, relax_apart
from buildplan.shape.resting import (
    Pose,
    best_pose,
    pose_on,
    poses_in_plane,
    poses_in_space,
)
from buildplan.shape.rigidity import rigidity
from buildplan.shape.springs import together
from buildplan.shape.standing import lowest_m, masses, stand
from buildplan.shape.starts import spread_starts


@dataclass(frozen=True)
class Settings:
    """How hard to look.

    `starts` is the number of starts tried (two at most for a piece of more than MANY_JOINTS) and
    `seed` makes the shaken ones repeatable. `tolerance_n` is the force left at rest,
    `strain_allowed` the largest change of a link's length that still counts as closing,
    `overlap_allowed` how far bodies that share no joint may press into each other as a share of
    touching distance.
    """

    starts: int = 4
    seed: int = 1
    tolerance_n: float = 1e-6
    strain_allowed: float = 0.03
    overlap_allowed: float = 0.10
    constants: Mapping[str, Constant] = field(default_factory=lambda: CONSTANTS)


DEFAULT = Settings()
MANY_JOINTS = 2000


def _twins(framework: Framework) -> np.ndarray:
    number = {joint: i for i, joint in enumerate(framework.joints)}
    return np.array([number[framework.mirror[joint]] for joint in framework.joints], int)


def _starts(framework: Framework, bodies: Bodies, settings: Settings) -> list[FloatArray]:
    """Starts to relax from: the closed plan and shaken ones, or layouts of a bare graph."""
    chance = np.random.default_rng(settings.seed)
    count = settings.starts if bodies.joints <= MANY_JOINTS else min(settings.starts, 2)
    if not framework.cells:
        return spread_starts(bodies, count, chance)
    plan = plan_of(framework)
    level = np.zeros(len(plan.turn))
    found = []
    for attempt in range(count):
        shake = 0.0 if attempt == 0 else 0.25
        free = plan.turn_ease > EASE_RIGID
        turn = plan.turn + shake * free * chance.standard_normal(len(level))
        slant = level + 0.2 * shake * (plan.slant_ease > 0) * chance.standard_normal(len(level))
        found.append(plan_positions(framework, *close_plan(plan, turn, slant)))
    return found


def _at_rest(framework: Framework, bodies: Bodies, settings: Settings) -> list[Relaxed]:
    """The piece at rest from every start, lowest energy first."""
    springs = together(part(bodies, settings.constants) for part in (struts, crowding, opening))
    basis = mirrored_basis(_twins(framework)) if framework.mirror else free_basis(bodies.joints)
    results = [
        relax_apart(
            bodies,
            springs,
            basis,
            start,
            settings.tolerance_n,
            neighbours_of=lambda at, skin: neighbours(bodies, at, skin, settings.constants),
            contacts_of=lambda pairs: contacts(bodies, pairs, settings.constants),
        )
        for start in _starts(framework, bodies, settings)
    ]
    # an earlier start wins among equals: the plan as laid comes first
    return sorted(results, key=lambda result: round(result.energy_j, 6))


def end_feet(framework: Framework, positions_m: FloatArray) -> tuple[str, ...]:
    """The joints that an open tube stands on unless told otherwise; none for any other piece.

    One that turns back on itself, an arch, stands on both ends; one that does not, a column, on
    its first.
    """
    if framework.closed or not framework.braces:
        return ()
    first, last = framework.braces[0].section, framework.braces[-1].section
    number = {joint: i for i, joint in enumerate(framework.joints)}

    def middle(section: Sequence[str]) -> FloatArray:
        return np.asarray(positions_m[[number[joint] for joint in section]].mean(axis=0))

    away = middle(framework.braces[min(1, len(framework.braces) - 1)].section) - middle(first)
    back = middle(last) - middle(framework.braces[max(len(framework.braces) - 2, 0)].section)
    return (*first, *last) if float(away @ back) < 0 else first


def _pose(
    framework: Framework,
    bodies: Bodies,
    positions_m: FloatArray,
    stand_on: Sequence[str],
    constants: Mapping[str, Constant],
) -> FloatArray:
    """Rotation (3, 3) that sets the piece upright."""
    number = {joint: i for i, joint in enumerate(framework.joints)}
    flat = bool(framework.mirror)
    feet = [number[joint] for joint in stand_on or end_feet(framework, positions_m)]
    if feet:
        return pose_on(np.array(feet), positions_m, flat).rotation
    mass, where = masses(framework, bodies, positions_m, constants)
    centre = mass @ where / mass.sum()
    middle = bodies.midpoints_m(positions_m)
    first = framework.braces[0].section if framework.braces else framework.joints[:1]
    start = positions_m[[number[joint] for joint in first]].mean(axis=0)
    poses: list[Pose] = (
        poses_in_plane(middle, bodies.radius_m, centre)
        if flat
        else poses_in_space(middle, bodies.radius_m, centre)
    )
    best = best_pose(poses, start)
    return np.eye(3) if best is None else best.rotation


def _on_the_floor(bodies: Bodies, positions_m: FloatArray) -> FloatArray:
    """Lowest point of all bodies on y = 0, width and depth centred."""
    middle = bodies.midpoints_m(positions_m)
    spread = bodies.radius_m[:, None]
    low, high = (middle - spread).min(axis=0), (middle + spread).max(axis=0)
    shift = -0.5 * (low + high)
    shift[1] = -float(lowest_m(bodies, positions_m).min())
    return np.asarray(positions_m + shift)


def _size_m(bodies: Bodies, positions_m: FloatArray) -> FloatArray:
    """Width, height and depth over the bodies (spheroids along their axes)."""
    axis = bodies.axes(positions_m)
    radius, half = bodies.radius_m[:, None], bodies.length_m[:, None] / 2
    reach = np.sqrt(radius**2 + (half**2 - radius**2) * axis**2)
    middle = bodies.midpoints_m(positions_m)
    return np.asarray((middle + reach).max(axis=0) - (middle - reach).min(axis=0))


def _overlaps(bodies: Bodies, positions_m: FloatArray, settings: Settings) -> list[tuple[int, int]]:
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
    if not (framework.closed and framework.cells):
        return ""
    plan = plan_of(framework)
    if (plan.turn_ease > EASE_RIGID).any():
        return ""
    return f"; its cells turn it by {np.degrees(plan.turn.sum()):.0f} degrees of the 360 it needs"


def _problems(
    framework: Framework,
    bodies: Bodies,
    results: Sequence[Relaxed],
    positions_m: FloatArray,
    settings: Settings,
) -> list[Problem]:
    best = results[0]
    problems = []
    if best.residual_n > 10 * settings.tolerance_n:
        problems.append(
            Problem(
                f"the shape has not come to rest: {best.residual_n:.2g} N are left unbalanced",
                "make the piece simpler, or measure its links and give their tie_to_tie",
            )
        )
    strain = bodies.strain(positions_m)
    tight = np.flatnonzero(np.abs(strain) > settings.strain_allowed)
    if len(tight):
        worst = tight[np.argsort(-np.abs(strain[tight]))][:6]
        labels = dict.fromkeys(
            framework.joints[joint] for link in sorted(worst) for joint in bodies.ends[link]
        )
        problems.append(
            Problem(
                f"the piece does not close: {len(tight)} links would have to change their length"
                f" by up to {100 * np.abs(strain).max():.1f} %" + _turning(framework),
                "add or take away cells so that the course comes round by itself",
                joints=tuple(labels),
            )
        )
    deep = _overlaps(bodies, positions_m, settings)
    if deep:
        labels = dict.fromkeys(
            framework.joints[joint]
            for pair in deep[:4]
            for link in pair
            for joint in bodies.ends[link]
        )
        problems.append(
            Problem(
                f"the piece runs into itself: {len(deep)} pairs of balloons that share no joint"
                " would be in the same place",
                "open the course there, or put more cells between",
                joints=tuple(labels),
            )
        )
    size = float(np.ptp(positions_m, axis=0).max())
    rivals = [
        other
        for other in results[1:]
        if other.energy_j < 1.02 * best.energy_j + 1e-9
        and _same_shape(best.positions_m, other.positions_m) > 0.05 * size
    ]
    if rivals:
        apart = np.linalg.norm(rivals[0].positions_m - best.positions_m, axis=1)
        moved = [framework.joints[joint] for joint in np.argsort(-apart)[:4]]
        problems.append(
            Problem(
                "the piece can come to rest in more than one shape: the lengths alone do not say"
                " which",
                "the shape drawn is the one of least strain; brace where the shapes differ most",
                joints=tuple(moved),
            )
        )
    return problems


def find_shape(
    framework: Framework,
    *,
    stand_on: Sequence[str] = (),
    settings: Settings = DEFAULT,
) -> Shape:
    """The shape of a piece, set on the floor.

    `stand_on` names joints that are to be the foot; without it an open tube stands on its two ends
    and any other piece on its stablest side. What is wrong with the piece is in `problems`; nothing
    is raised. Raises KeyError for a joint in `stand_on` that the piece does not have.
    """
    bodies = bodies_of(framework)
    results = _at_rest(framework, bodies, settings)
    best = results[0]
    turned = (
        best.positions_m
        @ _pose(framework, bodies, best.positions_m, stand_on, settings.constants).T
    )
    positions = _on_the_floor(bodies, turned)
    standing, mass = stand(framework, bodies, positions, settings.constants)
    problems = _problems(framework, bodies, results, positions, settings)
    if not standing.stands:
        problems.append(
            Problem(
                "the piece does not stand: its weight is not above its foot",
                "name other joints in stand_on, or widen the foot",
                joints=standing.feet,
            )
        )
    width, height, depth = _size_m(bodies, positions)
    strain = float(np.abs(bodies.strain(positions)).max(initial=0.0))
    rigid = rigidity(bodies.ends, positions)
    return Shape(
        joints=framework.joints,
        positions_m=positions,
        converged=best.residual_n <= 10 * settings.tolerance_n,
        iterations=best.iterations,
        residual_n=best.residual_n,
        largest_strain=strain,
        closes=strain <= settings.strain_allowed,
        width_m=float(width),
        height_m=float(height),
        depth_m=float(depth),
        mass_kg=mass,
        mechanisms=rigid.mechanisms,
        self_stresses=rigid.self_stresses,
        standing=standing,
        problems=tuple(problems),
    )
