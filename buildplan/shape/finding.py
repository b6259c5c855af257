"""Finding the shape: lay the plan, let it come to rest, and have it set on the floor."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from buildplan.framework.model import Framework
from buildplan.shape.bodies import (
    LinkBodies,
    bodies_of,
    crowding,
    opening,
    struts,
)
from buildplan.shape.freedoms import all_free, mirrored
from buildplan.shape.judging import overlaps
from buildplan.shape.locking import locks
from buildplan.shape.model import FREE, FloatArray, Holding, IntArray, Shape
from buildplan.shape.placing import PlacedJoints, place_parts
from buildplan.shape.plan import EASE_RIGID, close_plan, plan_of, plan_positions
from buildplan.shape.relaxing import Relaxed
from buildplan.shape.relaxing_apart import relax_apart
from buildplan.shape.setting_down import AtRest, feet_of, set_down
from buildplan.shape.settings import DEFAULT, MANY_JOINTS, Settings
from buildplan.shape.springs import together
from buildplan.shape.starts import can_lie_flat, flat_start, is_flat, spread_starts

SETTLINGS, SETTLED_M = 8, 1e-5  # how often parts are settled anew, and when they are settled
FLAT_STRAIN = 0.01  # up to which a bare graph counts as fitting together flat

__all__ = [
    "DEFAULT",
    "AtRest",
    "Settings",
    "at_rest",
    "come_to_rest",
    "find_shape",
    "set_down",
    "shapes_of_parts",
]


def _twins(framework: Framework) -> IntArray:
    number = framework.place_number
    return np.array([number[framework.mirror[place]] for place in framework.places], int)


def _starts(framework: Framework, bodies: LinkBodies, settings: Settings) -> list[FloatArray]:
    """Starts to relax from: the closed plan and shaken ones, or layouts of a bare graph."""
    chance = np.random.default_rng(settings.seed)
    count = settings.starts if bodies.joints <= MANY_JOINTS else min(settings.starts, 2)
    if framework.laid:
        return [_as_laid(framework)]
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


def _as_laid(framework: Framework) -> FloatArray:
    """The places (joints, 3) where the pattern draws itself."""
    return np.array([framework.laid[place] for place in framework.places])


def _laid_thick(framework: Framework) -> bool:
    """Whether the pattern draws itself with a depth: it does not fit together lying flat."""
    return bool(framework.laid) and not is_flat(_as_laid(framework))


def mirrors(framework: Framework, bodies: LinkBodies) -> bool:
    """Whether the back mirrors the front: the pattern names twins, and every link has a twin of its
    own length between the twins of its joints; but for those that the design adds one by one,
    which are tied in when the rest holds its shape."""
    if not framework.mirror:
        return False
    twin = _twins(framework)
    ends = np.sort(bodies.ends, axis=1)
    image = np.sort(twin[bodies.ends], axis=1)
    length = dict(zip(map(tuple, ends.tolist()), bodies.length_m, strict=True))
    return all(
        abs(length.get(tuple(pair), np.inf) - own) < 1e-9
        for pair, own, link in zip(image.tolist(), bodies.length_m, framework.links, strict=True)
        if link.id not in framework.extras
    )


def _relaxed(
    framework: Framework, bodies: LinkBodies, start_m: FloatArray, flat: bool, settings: Settings
) -> Relaxed:
    """The piece at rest from one start, held as it is built: lying on the floor.

    A tube's back mirrors its front; a `flat` piece stays in its plane.
    """
    constants = settings.constants
    if mirrors(framework, bodies):
        freedoms = mirrored(_twins(framework))
    elif flat:
        freedoms = mirrored(np.arange(bodies.joints))
    else:
        freedoms = all_free(bodies.joints)
    return relax_apart(
        bodies,
        together(part(bodies, constants) for part in (struts, crowding, opening)),
        freedoms,
        start_m,
        settings.tolerance_n,
        constants,
        settings.newton_steps,
        settings.rounds,
        work=settings.work,
        sharpenings=settings.sharpenings,
    )


def at_rest(
    framework: Framework, bodies: LinkBodies, settings: Settings = DEFAULT
) -> list[Relaxed]:
    """The piece at rest from every start, lowest energy first, neither posed nor judged.

    A bare graph that fits together lying flat is built lying flat, and has that shape. After a
    start whose work ran out no further one is tried.
    """
    bare = not framework.cells and not framework.mirror
    if bare and not _laid_thick(framework) and can_lie_flat(bodies):
        start = _as_laid(framework) if framework.laid else flat_start(bodies)
        lying = _relaxed(framework, bodies, start, True, settings)
        strain = float(np.abs(bodies.strain(lying.positions_m)).max(initial=0.0))
        if strain < FLAT_STRAIN and not overlaps(bodies, lying.positions_m, settings):
            return [lying]
    results = list[Relaxed]()
    for start in _starts(framework, bodies, settings):
        results.append(_relaxed(framework, bodies, start, False, settings))
        if results[-1].cut:
            break
    # an earlier start wins among equals: the plan as laid comes first
    return sorted(results, key=lambda result: round(result.energy_j, 6))


def shapes_of_parts(framework: Framework, settings: Settings) -> list[Shape]:
    """The shape of each part by itself; equal parts are looked at once."""
    found: dict[tuple[object, ...], Shape] = {}
    shapes = []
    for part in framework.parts:
        own, bodies = part.framework, bodies_of(part.framework)
        feet = tuple(own.place_number[joint] for joint in part.stand_on)
        key = (bodies.ends.tobytes(), bodies.length_m.tobytes(), bodies.radius_m.tobytes(), feet)
        if key not in found:
            found[key] = find_shape(own, stand_on=part.stand_on, settings=settings)
        alike = found[key]
        feet_of = tuple(own.joints[alike.joints.index(joint)] for joint in alike.standing.feet)
        standing = replace(alike.standing, feet=feet_of)
        shapes.append(replace(alike, joints=own.joints, standing=standing))
    return shapes


def _tied(
    framework: Framework, bodies: LinkBodies, placed: PlacedJoints, settings: Settings
) -> Relaxed:
    """The parts at rest once they are tied to one another. Each was locked when it was built, so
    that its locks keep its angles; they are set anew where the parts have come to rest, until
    nothing moves (a proximal point method: what it ends at is at rest without them). All runs share
    the work of one start."""
    constants, number = settings.constants, framework.place_number
    two_sided = mirrors(framework, bodies)
    freedoms = mirrored(_twins(framework)) if two_sided else all_free(bodies.joints)
    at = sorted({number[lock.joint] for lock in framework.locks})
    # the parts stand on the floor when they are tied: their feet stay on it
    feet, heights = feet_of(framework, placed)
    lift = float((placed.positions_m[feet, 1] - heights).mean())
    start = placed.positions_m - [0.0, lift, 0.0]
    start[feet, 1] = heights
    freedoms = freedoms.held_at(3 * feet + 1)
    held = np.zeros_like(start)
    held[feet, 1] = heights
    parts = [part(bodies, constants) for part in (struts, crowding, opening)]
    positions, iterations, worked = start, 0, 0.0
    for _ in range(SETTLINGS):
        springs = together([*parts, locks(bodies, positions, at, constants)])
        found = relax_apart(
            bodies,
            springs,
            freedoms,
            positions,
            settings.tolerance_n,
            constants,
            held_m=held,
            work=settings.work - worked,
            sharpenings=settings.sharpenings,
        )
        worked += found.work
        moved = float(np.abs(found.positions_m - positions).max(initial=0.0))
        positions, iterations = found.positions_m, iterations + found.iterations
        if moved < SETTLED_M or found.cut:
            break
    return replace(found, iterations=iterations, work=worked)


def come_to_rest(framework: Framework, settings: Settings = DEFAULT) -> AtRest:
    """The piece at rest, its parts tied where it is an assembly."""
    bodies = bodies_of(framework)
    if framework.parts:
        placed = place_parts(framework, shapes_of_parts(framework, settings))
        tied = _tied(framework, bodies, placed, settings)
        return AtRest(framework, bodies, settings, mirrors(framework, bodies), (tied,), placed)
    results = tuple(at_rest(framework, bodies, settings))
    return AtRest(framework, bodies, settings, mirrors(framework, bodies), results)


def find_shape(
    framework: Framework,
    *,
    stand_on: Sequence[str] = (),
    top: Sequence[str] = (),
    holding: Holding = FREE,
    settings: Settings = DEFAULT,
) -> Shape:
    """The shape of a piece, set on the floor as `set_down` does."""
    return set_down(come_to_rest(framework, settings), stand_on=stand_on, top=top, holding=holding)
