"""Softness: how a piece gives, with crowding alone and with its locks, and what would help.

Modes are those of free vibration about the shape, with each joint carrying the mass of what hangs
on it: H v = w M v, the smallest w first, the rigid motions taken out. A negative w means that the
piece folds by itself.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
from scipy import sparse
from scipy.linalg import eigh
from scipy.sparse.linalg import ArpackNoConvergence, LinearOperator, eigsh
from scipy.spatial import cKDTree

from buildplan.shape.bodies import LinkBodies
from buildplan.shape.factors import factoring_of, symmetric_factors
from buildplan.shape.model import ExtraBrace, FloatArray, IntArray, SoftMode
from buildplan.shape.springs import springs_between, stiffness_matrix

SOUGHT = 12  # modes looked for, six of which are rigid motions
WITHIN = 36  # vectors that they are looked for among: fewest solves (measured, 24 to 48)
ROUNDS = 20  # of looking, about WITHIN / 2 solves each, before it is done from nearer by
HALVINGS = 10  # of what lies between a shift and the lowest w
ALIKE = 1e-6  # share by which two w may differ and count as equal
NOTHING = 1e-9  # share of the longest column below which one tells nothing that others do not
DENSE_LIMIT = 150  # coordinates up to which a dense solver is quicker and surer
TRIED = 3  # extra braces tried out in full
WEIGHED = 6  # softest modes that an extra brace is judged by
WORTH = 1.01  # the least gain worth a balloon
SHORTEST, LONGEST = 0.6, 1.6  # an extra brace's length over a link's


def rigid_modes(positions_m: FloatArray) -> FloatArray:
    """The six rigid motions as columns, (3 joints, 6), not made orthogonal."""
    spread = positions_m - positions_m.mean(axis=0)
    columns = [np.tile(axis, len(spread)) for axis in np.eye(3)]
    columns += [np.cross(axis, spread).ravel() for axis in np.eye(3)]
    return np.column_stack(columns)


class Softest(NamedTuple):
    """The lowest w in 1/s2 and their modes (3 joints, k), rigid motions taken out; no w at all lies
    below `floor`."""

    values: FloatArray
    modes: FloatArray
    floor: float


def softest_modes(
    stiffness: sparse.csr_array, joint_mass_kg: FloatArray, positions_m: FloatArray
) -> Softest:
    """The softest modes of a piece with this stiffness.

    Works for any size: inverse iteration about a shift below the lowest w.
    """
    mass = np.repeat(joint_mass_kg, 3)
    root = np.sqrt(mass)
    scaled = sparse.csr_array(
        sparse.diags_array(1 / root) @ stiffness @ sparse.diags_array(1 / root)
    )
    rigid = _basis(root[:, None] * rigid_modes(positions_m))
    size = len(mass)
    floor = -np.inf
    if size <= DENSE_LIMIT:
        _, vectors = eigh(scaled.toarray(), subset_by_index=[0, min(SOUGHT, size) - 1])
    else:
        vectors, floor = _lowest(scaled)
    # within what was found, take the rigid motions out and sort what is left (Rayleigh and Ritz)
    left = vectors - rigid @ (rigid.T @ vectors)
    basis, sizes, _ = np.linalg.svd(left, full_matrices=False)
    basis = basis[:, sizes > 1e-3]
    values, turned = np.linalg.eigh(basis.T @ (scaled @ basis))
    return Softest(values, (basis @ turned) / root[:, None], floor)


def _basis(columns: FloatArray) -> FloatArray:
    """Columns at right angles that tell as much as the given ones: what lies in a line does not
    turn about it."""
    found, triangle = np.linalg.qr(columns)
    size = np.abs(triangle.diagonal())
    return np.asarray(found[:, size > NOTHING * size.max()])


def _lowest(scaled: sparse.csr_array) -> tuple[FloatArray, float]:
    """The eigenvectors of the lowest w of a large symmetric matrix, (rows, SOUGHT), and a floor
    below which no w lies.

    The nearer the shift lies to the lowest, the sooner those are told apart that lie close
    together, as a long piece's do. Where they are not told from below zero, what lies between the
    shift and the lowest is halved, by factors that there are only below it.
    """
    size = scaled.shape[0]
    columns = sparse.csc_array(scaled)
    factoring, shift = factoring_of(columns), 1e-8 * float(scaled.diagonal().max())
    while (solve := factoring.factored(columns, shift)) is None:
        shift *= 10
    start = np.cos(np.arange(size) * 1.7)  # fixed, so that the result repeats

    def sought(rounds: int | None) -> FloatArray:
        inverse = LinearOperator((size, size), matvec=solve, dtype=float)
        _, vectors = eigsh(
            scaled, SOUGHT, sigma=-shift, OPinv=inverse, v0=start, ncv=WITHIN, maxiter=rounds
        )
        return np.asarray(vectors)

    try:
        return sought(ROUNDS), -shift
    except ArpackNoConvergence:
        under = 0.0
        for _ in range(HALVINGS):
            middle = (under + shift) / 2
            if (nearer := factoring.factored(columns, middle)) is None:
                under = middle
            else:
                shift, solve = middle, nearer
    try:
        return sought(None), -shift
    except ArpackNoConvergence as stopped:  # what has converged is kept
        return np.asarray(stopped.eigenvectors).reshape(size, -1), -shift


def folds(stiffness: sparse.csr_array, floor_n_per_m: float = -np.inf) -> int:
    """In how many independent ways a piece with this stiffness folds by itself: the negative
    eigenvalues, told by the signs of the factors' diagonal (Sylvester). Where it is known that none
    lies below a floor near zero, that is the answer."""
    sure = 1e-6 * float(stiffness.diagonal().max())
    if -floor_n_per_m <= sure:
        return 0
    columns = sparse.csc_array(stiffness)
    if factoring_of(columns).factored(columns, sure) is not None:
        return 0  # positive definite, which Cholesky's factors tell sooner
    unit = sparse.eye_array(stiffness.shape[0], format="csr")
    return int((symmetric_factors(stiffness + sure * unit).U.diagonal() < 0).sum())


def softest_of_all(
    values: FloatArray, modes: FloatArray, joint_mass_kg: FloatArray, labels: Sequence[str]
) -> SoftMode:
    """The softest mode in plain figures. Where a symmetric piece has several that are as soft, any
    sum of them is one too: that which moves one joint furthest along one axis."""
    alike = modes[:, values <= values[0] + ALIKE * abs(float(values[0]))]
    reach = np.round(np.linalg.norm(alike, axis=1) / np.linalg.norm(alike), 6)
    mode = alike @ alike[np.argmax(reach)]
    return _in_figures(float(values[0]), mode, joint_mass_kg, labels)


def _in_figures(
    value: float, mode: FloatArray, joint_mass_kg: FloatArray, labels: Sequence[str]
) -> SoftMode:
    """A mode in plain figures."""
    motion = mode.reshape(-1, 3)
    size = np.linalg.norm(motion, axis=1)
    largest = float(size.max())
    modal_mass = float((joint_mass_kg * size**2).sum()) / largest**2
    most = np.argsort(-np.round(size, 9), kind="stable")[:4]
    motion = motion / largest
    # one sign of two: the joint that moves most moves forward, or else up, or else right
    lead = motion[most[0]][[2, 1, 0]]
    motion = motion * np.sign(lead[np.argmax(np.abs(lead) > 1e-6)] or 1.0)
    return SoftMode(value * modal_mass, tuple(labels[joint] for joint in most), motion)


def compliance(values: FloatArray) -> float:
    """How much a piece gives on the whole: the sum of 1 / w over its softest modes."""
    return float((1 / values[:WEIGHED]).sum())


def brace_candidates(
    bodies: LinkBodies, positions_m: FloatArray, values: FloatArray, modes: FloatArray
) -> IntArray:
    """Pairs of joints (k, 2) that no link joins and a balloon could, the likeliest first; of those
    that are as likely (images of one another, in a symmetric piece) one.

    A brace on a pair whose distance changes at the rate s in a mode takes of its 1 / w about
    s^2 / w^2 each; a mode that folds by itself outweighs all others.
    """
    link = float(bodies.length_m.mean())
    pairs = cKDTree(positions_m).query_pairs(LONGEST * link, output_type="ndarray")
    pairs = np.sort(pairs, axis=1)
    joined = np.sort(bodies.ends, axis=1) @ [bodies.joints, 1]
    vector = positions_m[pairs[:, 0]] - positions_m[pairs[:, 1]]
    length = np.linalg.norm(vector, axis=1)
    free = ~np.isin(pairs @ [bodies.joints, 1], joined) & (length > SHORTEST * link)
    pairs, unit = pairs[free], vector[free] / length[free, None]
    worth = np.zeros(len(pairs))
    weighed = values[:WEIGHED]
    soft = 1e-3 * float(np.abs(weighed).max(initial=1e-12))
    # of modes alike with the last there may be more: they are left out, but where all are alike
    apart = weighed < weighed[-1] - ALIKE * abs(float(weighed[-1]))
    for value, mode in zip(weighed[apart] if apart.any() else weighed, modes.T, strict=False):
        motion = mode.reshape(-1, 3)
        rate = np.einsum("ij,ij->i", unit, motion[pairs[:, 0]] - motion[pairs[:, 1]])
        worth += rate**2 / max(float(value), soft) ** 2
    shares = np.round(worth / max(worth.max(initial=0), 1e-300), 6)
    order = np.lexsort((pairs[:, 1], pairs[:, 0], -shares))
    _, first = np.unique(-shares[order], return_index=True)
    return np.asarray(pairs[order[first]], int)


def extra_braces(
    matrix: sparse.csr_array,
    found: Softest,
    bodies: LinkBodies,
    positions_m: FloatArray,
    joint_mass_kg: FloatArray,
    labels: Sequence[str],
    strut_n_per_m: float,
) -> tuple[ExtraBrace, ...]:
    """The balloons of which one more stiffens the piece most, the best first: the likeliest few
    are tried.

    `found` are the softest modes of `matrix`. None where no balloon fits, or none is worth
    its while (a gain of WORTH).
    """
    values, modes, _ = found
    worth: list[ExtraBrace] = []
    for one, other in brace_candidates(bodies, positions_m, values, modes)[:TRIED]:
        length = float(np.linalg.norm(positions_m[one] - positions_m[other]))
        brace = springs_between(
            np.array([[one, other]]),
            np.array([1.0, -1.0]),
            bodies.joints,
            np.array([length]),
            strut_n_per_m,
            push_only=False,
        )
        tried, _, _ = softest_modes(
            matrix + stiffness_matrix(brace, positions_m), joint_mass_kg, positions_m
        )
        if tried[0] <= 0:
            continue
        ends = (labels[one], labels[other])
        if values[0] <= 0:  # the piece folded by itself and no longer does
            worth.append(ExtraBrace(ends, length, None))
            continue
        gain = compliance(values) / compliance(tried)
        if gain > WORTH:
            worth.append(ExtraBrace(ends, length, gain))
    return tuple(sorted(worth, key=lambda one: -round(one.gain or 0.0, 6)))
