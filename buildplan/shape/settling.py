"""Settling: how far a piece that was built lying gives when it is stood up, or that it falls."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np
import numpy.typing as npt

from buildplan.framework.model import Framework
from buildplan.shape.advice import FALLEN_SHARE
from buildplan.shape.bodies import LinkBodies
from buildplan.shape.constants import Constant
from buildplan.shape.freedoms import Stiffening, pinned
from buildplan.shape.model import FloatArray, Shape
from buildplan.shape.near_rest import yielded
from buildplan.shape.relaxing import Relaxed, holds, relax
from buildplan.shape.stiffness import joint_masses_kg, locked

Table = Mapping[str, Constant]

REST_SHARE = 0.002  # of what the heaviest joint carries: pushed less, a piece counts as at rest
NUDGE_M = 0.001
LINE_M = 0.01  # feet that are off a line by less lie in one
STEP_SHARE = 0.05  # of the height, that a joint moves by at most between two looks at a fall
SETTLING_WORK = 1e11  # multiplications that the factors of one search may take: 2 s or so


def settled(
    framework: Framework,
    bodies: LinkBodies,
    shape: Shape,
    found: Table,
    table: Table,
    work: float = SETTLING_WORK,
) -> tuple[float, float] | None:
    """How far the top sinks and how far it moves sideways when the piece is stood up, in m; None
    where the search for it took so much `work` (of `relax`) and had not ended; with no work at all
    none is made from where it rests on a ridge.

    The piece stands with the joints of its feet held; it was built without weight, its locks keep
    the angles that it was built with. A piece that does not come to rest where a nudge
    leaves it, or that sinks by more than a quarter, has fallen: its height is returned.
    """
    positions = shape.positions_m
    held = _held(framework, bodies, shape)
    if held.all():
        return 0.0, 0.0
    load = _weight_n(framework, bodies, positions, table)
    stiffening = Stiffening(locked(framework, bodies, positions, found, table), pinned(held))
    kept = np.where(held, positions, 0.0)
    tolerance_n = REST_SHARE * float(np.abs(load).max())
    longest_m = STEP_SHARE * shape.height_m

    def fallen(now_m: FloatArray) -> bool:
        return _sunk_and_swayed(positions, now_m)[0] > FALLEN_SHARE * shape.height_m

    def rested(start_m: FloatArray, tolerance_n: float) -> Relaxed:
        return relax(
            stiffening,
            start_m,
            tolerance_n,
            longest_m,
            load,
            kept,
            rounds=1,
            lost=fallen,
            work=work,
        )

    def rests(result: Relaxed) -> bool:
        return result.residual_n <= 5 * tolerance_n and not fallen(result.positions_m)

    result = yielded(stiffening, positions, tolerance_n, longest_m, load, kept)
    if result.residual_n > tolerance_n:
        result = rested(result.positions_m, tolerance_n)
    stays = rests(result) and holds(stiffening, result.positions_m)
    if rests(result) and not stays:
        if not work:
            return None
        # as even as the piece, it rests on a ridge: nudged, it finds the hollow beside, or falls
        nudged = result.positions_m + _nudge(positions.shape)
        result = rested(np.where(held, positions, nudged), tolerance_n / 100)
        stays = rests(result) and holds(stiffening, result.positions_m)
    if stays:
        return _sunk_and_swayed(positions, result.positions_m)
    unknown = result.cut and not fallen(result.positions_m)
    return None if unknown else (shape.height_m, shape.height_m)


def _weight_n(
    framework: Framework, bodies: LinkBodies, positions_m: FloatArray, table: Table
) -> FloatArray:
    """What the joints are loaded with, (joints, 3)."""
    mass = joint_masses_kg(framework, bodies, positions_m, table)
    return np.outer(-mass * table["gravity"].value, [0.0, 1.0, 0.0])


def _sunk_and_swayed(built_m: FloatArray, now_m: FloatArray) -> tuple[float, float]:
    """How far the highest joint of a piece as it was built has sunk, and how far that which moved
    most has moved sideways."""
    top, move = int(np.argmax(built_m[:, 1])), now_m - built_m
    return float(-move[top, 1]), float(np.hypot(move[:, 0], move[:, 2]).max())


def _nudge(shape: tuple[int, ...]) -> FloatArray:
    return NUDGE_M * np.random.default_rng(1).standard_normal(shape)


def _held(framework: Framework, bodies: LinkBodies, shape: Shape) -> npt.NDArray[np.bool_]:
    """Which coordinates (joints, 3) are held while the rest settles: those of the feet.

    Feet that lie in one line would let the whole piece roll over that line, which is asked of by
    its tip angle and is no want of stiffness: there the balloons that meet the feet are held whole.
    """
    feet = [framework.place_number[joint] for joint in shape.standing.feet]
    held = np.zeros(shape.positions_m.shape, bool)
    held[feet] = True
    off = shape.positions_m[feet] - shape.positions_m[feet].mean(axis=0)
    if len(feet) <= 2 or np.linalg.matrix_rank(off, tol=LINE_M) <= 1:
        held[bodies.ends[np.isin(bodies.ends, feet).any(axis=1)].ravel()] = True
    return held
