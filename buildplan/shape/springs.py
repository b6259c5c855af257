"""Springs between weighted sums of joint positions: one form for every force in the piece.

A spring measures the length of `row @ positions`. A link balloon has the row (+1, -1) on its
two joints; two bodies that press on one another have the row of one midpoint less the other's.
Its energy is stiffness / 2 * (length - rest)^2; a spring that only pushes has none above its rest
length.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property

import numpy as np
import numpy.typing as npt
from scipy import sparse

from buildplan.shape.model import FloatArray, IntArray

SHORTEST_M = 1e-12  # keeps the direction of a spring of no length finite


@dataclass(frozen=True)
class Springs:
    """`rows` (springs, joints) sparse; the others (springs,)."""

    rows: sparse.csr_array
    rest_m: FloatArray
    stiffness_n_per_m: FloatArray
    push_only: npt.NDArray[np.bool_]

    @cached_property
    def columns(self) -> sparse.csr_array:
        """The rows turned over, (joints, springs)."""
        return sparse.csr_array(self.rows.T)

    @cached_property
    def pattern(self) -> tuple[sparse.csr_array, IntArray, IntArray]:
        """Where springs put their 3 by 3 blocks in the stiffness matrix.

        A matrix (blocks, springs) that sums the springs' blocks into those of the matrix, and the
        block indices and row pointers of a BSR matrix.
        """
        joints = self.rows.shape[1]
        count = np.diff(self.rows.indptr)
        first = np.repeat(np.arange(len(self.rows.data)), np.repeat(count, count))
        start = np.repeat(self.rows.indptr[:-1], count**2)
        within = np.arange(len(first)) - np.repeat(np.cumsum(count**2) - count**2, count**2)
        second = start + within % np.repeat(count, count**2)
        place = self.rows.indices[first].astype(np.int64) * joints + self.rows.indices[second]
        blocks, block = np.unique(place, return_inverse=True)
        weight = self.rows.data[first] * self.rows.data[second]
        spring = np.repeat(np.arange(len(self)), count**2)
        summing = sparse.csr_array((weight, (block, spring)), shape=(len(blocks), len(self)))
        pointers = np.searchsorted(blocks // joints, np.arange(joints + 1))
        return summing, blocks % joints, pointers

    def __len__(self) -> int:
        return int(self.rows.shape[0])


def springs_between(
    ends: npt.NDArray[np.int_],
    weights: FloatArray,
    joints: int,
    rest_m: FloatArray,
    stiffness_n_per_m: float | FloatArray,
    push_only: bool,
) -> Springs:
    """Springs whose row `s` puts `weights[s]` on the joints `ends[s]`, both (springs, k).

    Weights of shape (k,) and a single stiffness are meant for every spring.
    """
    count, width = ends.shape
    rows = sparse.csr_array(
        (
            np.broadcast_to(weights, ends.shape).ravel(),
            (np.repeat(np.arange(count), width), ends.ravel()),
        ),
        shape=(count, joints),
    )
    return Springs(
        rows,
        np.asarray(rest_m, float),
        np.broadcast_to(np.asarray(stiffness_n_per_m, float), count).copy(),
        np.full(count, push_only),
    )


def together(groups: Iterable[Springs]) -> Springs:
    """All springs of `groups` as one set, in order."""
    every = list(groups)
    return Springs(
        sparse.csr_array(sparse.vstack([group.rows for group in every], format="csr")),
        np.concatenate([group.rest_m for group in every]),
        np.concatenate([group.stiffness_n_per_m for group in every]),
        np.concatenate([group.push_only for group in every]),
    )


def lengths_m(springs: Springs, positions_m: FloatArray) -> FloatArray:
    """Length of each spring, (springs,)."""
    return np.asarray(np.linalg.norm(springs.rows @ positions_m, axis=1))


def answering(springs: Springs, positions_m: FloatArray, stiffness: float | FloatArray) -> Springs:
    """The springs at work at `positions_m`, answering to small movements with other stiffnesses.

    Each keeps the force that it has there, so that a shape at rest stays at rest. `stiffness` is
    one number or one for every spring of `springs`; push-only springs without force are left out.
    """
    length = lengths_m(springs, positions_m)
    at_work = ~springs.push_only | (length < springs.rest_m)
    stiffer = np.broadcast_to(np.asarray(stiffness, float), length.shape)[at_work]
    tension = (springs.stiffness_n_per_m * (length - springs.rest_m))[at_work]
    return Springs(
        springs.rows[at_work],
        length[at_work] - tension / stiffer,
        stiffer,
        springs.push_only[at_work],
    )


def energy_and_gradient(springs: Springs, positions_m: FloatArray) -> tuple[float, FloatArray]:
    """Energy in J and its gradient, (joints, 3) in N: minus the force on each joint."""
    vector, length = _vectors(springs, positions_m)
    stretch = length - springs.rest_m
    stretch[springs.push_only & (stretch > 0)] = 0.0
    tension = springs.stiffness_n_per_m * stretch
    vector *= np.divide(tension, length, out=length)[:, None]
    return 0.5 * float(tension @ stretch), np.asarray(springs.columns @ vector)


def _vectors(springs: Springs, positions_m: FloatArray) -> tuple[FloatArray, FloatArray]:
    """What each spring measures, (springs, 3), and its length, (springs,): the caller's own to
    work on in place, for of large pieces half the time would go into new memory."""
    vector = np.asarray(springs.rows @ positions_m)
    length = np.einsum("ij,ij->i", vector, vector)
    np.sqrt(length, out=length)
    return vector, np.maximum(length, SHORTEST_M, out=length)


def stiffness_blocks(springs: Springs, positions_m: FloatArray) -> FloatArray:
    """The 3 by 3 blocks of the second derivative of the energy, (blocks, 9) in N/m, in the order of
    `Springs.pattern`.

    For a spring of stiffness k, rest r, length l and direction n the block is
    k n n' + k (1 - r / l) (I - n n'): its own stiffness along, and the tension's across.
    That of a spring squeezed below half its rest length is kept at what it is there: it grows
    without bound as the ends meet, and would then tell a solver nothing.
    """
    direction, length = _vectors(springs, positions_m)
    direction /= length[:, None]
    idle = springs.push_only & (length >= springs.rest_m)
    stiffness = np.where(idle, 0.0, springs.stiffness_n_per_m)
    share = np.divide(springs.rest_m, length, out=length)
    across = np.maximum(np.subtract(1, share, out=share), -1.0, out=share)
    across *= stiffness
    stiffness -= across
    along = stiffness[:, None] * direction
    nine = np.empty((len(springs), 9))
    for i, j in np.ndindex(3, 3):
        np.multiply(along[:, i], direction[:, j], out=nine[:, 3 * i + j])
    nine[:, ::4] += across[:, None]  # the diagonals
    summing, _, _ = springs.pattern
    return np.asarray(summing @ nine)


def stiffness_matrix(springs: Springs, positions_m: FloatArray) -> sparse.csr_array:
    """Second derivative of the energy, (3 joints, 3 joints) in N/m, joint by joint."""
    _, indices, pointers = springs.pattern
    data = stiffness_blocks(springs, positions_m).reshape(-1, 3, 3)
    size = 3 * springs.rows.shape[1]
    return sparse.bsr_array((data, indices, pointers), shape=(size, size)).tocsr()
