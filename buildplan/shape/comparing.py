"""Two shapes laid on one another, and how far apart they are wherever they lie.

By the turn that makes the squares of the distances least (Kabsch, Acta Crystallographica A32, 1976,
922-923).
"""

from __future__ import annotations

import numpy as np

from buildplan.shape.model import FloatArray


def apart_m(first_m: FloatArray, second_m: FloatArray) -> FloatArray:
    """How far each joint of the one is from that of the other, (joints,), once `second_m` is laid
    on `first_m`, both (joints, 3); a mirror image counts as the same shape."""
    a, b = first_m - first_m.mean(axis=0), second_m - second_m.mean(axis=0)
    u, _, v = np.linalg.svd(a.T @ b)
    return np.asarray(np.linalg.norm(a - b @ (u @ v).T, axis=1))


def laid_on(first_m: FloatArray, second_m: FloatArray) -> FloatArray:
    """`second_m`, moved and turned as a whole, and not mirrored, to lie nearest to `first_m`, both
    (joints, 3)."""
    middle, own = first_m.mean(axis=0), second_m.mean(axis=0)
    u, _, v = np.linalg.svd((second_m - own).T @ (first_m - middle))
    hand = np.array([1.0, 1.0, np.sign(np.linalg.det(u @ v))])
    return np.asarray((second_m - own) @ (u * hand) @ v + middle)
