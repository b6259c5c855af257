"""How a built piece gives: its springs with and without locks, its softest movements, and the one
balloon more that stiffens it most."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np
from scipy import sparse

from buildplan.framework.model import Framework
from buildplan.shape.bodies import (
    LinkBodies,
    bodies_of,
    contacts,
    crowding,
    neighbours,
    opening,
    struts,
)
from buildplan.shape.constants import CONSTANTS, Constant
from buildplan.shape.locking import locks
from buildplan.shape.lying import put_together_standing
from buildplan.shape.model import ExtraBrace, FloatArray, Shape, Stiffness
from buildplan.shape.softness import extra_braces, folds, softest_modes, softest_of_all
from buildplan.shape.springs import Springs, answering, stiffness_matrix, together
from buildplan.shape.standing import masses

Table = Mapping[str, Constant]


def unlocked(bodies: LinkBodies, positions_m: FloatArray, table: Table) -> Springs:
    """The piece before its joints are locked: what found its shape, bodies free to slide."""
    parts = [part(bodies, table) for part in (struts, crowding, opening)]
    pairs = neighbours(bodies, positions_m, 0.0, table)
    if len(pairs):
        parts.append(contacts(bodies, pairs, table))
    return together(parts)


def locked(
    framework: Framework, bodies: LinkBodies, positions_m: FloatArray, found: Table, table: Table
) -> Springs:
    """The piece as it stands built, with the forces that it has at `positions_m`.

    `found` are the constants that found the shape, `table` those that it answers to movement
    with. Two skins at over-pressure p that come nearer by d flatten over a patch of radius a,
    a^2 = r d, and push with p pi a^2 more: a stiffness of pi p r.
    """
    skin = np.pi * table["over_pressure"].value
    radius = bodies.radius_m[bodies.parted[:, :2]].mean(axis=1)
    parts = [
        answering(struts(bodies, found), positions_m, table["strut_stiffness"].value),
        answering(crowding(bodies, found), positions_m, skin * radius),
        opening(bodies, found),
    ]
    pairs = neighbours(bodies, positions_m, 0.0, found)
    if len(pairs):
        radius = bodies.radius_m[pairs].mean(axis=1)
        parts.append(answering(contacts(bodies, pairs, found), positions_m, skin * radius))
    if framework.locks:
        number = framework.place_number
        at = [number[lock.joint] for lock in framework.locks]
        parts.append(locks(bodies, positions_m, at, table))
    return together(parts)


def joint_masses_kg(
    framework: Framework, bodies: LinkBodies, positions_m: FloatArray, table: Table
) -> FloatArray:
    """What hangs on each joint: half of every link that ends there, and its lock."""
    mass, _ = masses(framework, bodies, positions_m, table)
    number = framework.place_number
    at = np.zeros(bodies.joints)
    links = mass[: len(bodies.ends)]
    np.add.at(at, bodies.ends.ravel(), np.repeat(links / 2, 2))
    np.add.at(
        at, np.array([number[lock.joint] for lock in framework.locks], int), mass[len(links) :]
    )
    return at


def stiffness_of(framework: Framework, bodies: LinkBodies, shape: Shape, table: Table) -> Stiffness:
    positions = shape.positions_m
    mass = joint_masses_kg(framework, bodies, positions, table)
    built = locked(framework, bodies, positions, table, table)
    matrices = [
        stiffness_matrix(springs, positions)
        for springs in (unlocked(bodies, positions, table), built)
    ]
    found = [softest_modes(matrix, mass, positions) for matrix in matrices]
    modes = [softest_of_all(one.values, one.modes, mass, framework.places) for one in found]
    # no w is below the floor: with that much on every joint for each kilogram nothing folds
    floors = [one.floor * float(mass.max()) for one in found]
    return Stiffness(
        mechanisms=shape.mechanisms,
        self_stresses=shape.self_stresses,
        folds=folds(matrices[0], floors[0]),
        folds_locked=_folds_built(framework, shape, matrices[1], floors[1], table),
        crowded=modes[0],
        locked=modes[1],
    )


def stiffening_braces(
    framework: Framework, shape: Shape, constants: Table = CONSTANTS
) -> tuple[ExtraBrace, ...]:
    """The balloons of which one more stiffens the piece, with its locks, most, the best first; see
    `extra_braces`. Asked by itself: on a large piece it takes as long as all the rest."""
    bodies, positions = bodies_of(framework), shape.positions_m
    mass = joint_masses_kg(framework, bodies, positions, constants)
    built = locked(framework, bodies, positions, constants, constants)
    matrix = stiffness_matrix(built, positions)
    return extra_braces(
        matrix,
        softest_modes(matrix, mass, positions),
        bodies,
        positions,
        mass,
        framework.places,
        constants["strut_stiffness"].value,
    )


def _folds_built(
    framework: Framework,
    shape: Shape,
    stiffness: sparse.csr_array,
    floor_n_per_m: float,
    table: Table,
) -> int:
    """In how many ways a piece with this stiffness folds once it is built; `floor` is that of
    `folds`. Parts that are put together standing are never lifted as one: of them the floor carries
    the feet, on which they press with their weight."""
    free = folds(stiffness, floor_n_per_m)
    if not free or not put_together_standing(framework, shape):
        return free
    carried = np.zeros(stiffness.shape[0])
    feet = [shape.row[joint] for joint in shape.standing.feet]
    carried[3 * np.array(feet, int) + 1] = table["strut_stiffness"].value
    return folds(sparse.csr_array(stiffness + sparse.diags_array(carried)))
