"""How far apart two shapes are, wherever they lie and however they are turned."""

from __future__ import annotations

import numpy as np

from buildplan.shape.model import FloatArray


def apart_m(first_m: FloatArray, second_m: FloatArray) -> FloatArray:
    """How far each joint of the one is from that of the other, (joints,), once `second_m` is laid
    on `first_m`, both (joints, 3), so that the squares of these are least (Kabsch 1976; a mirror
    image counts as the same shape)."""
    a, b = first_m - first_m.mean(axis=0), second_m - second_m.mean(axis=0)
    u, _, v = np.linalg.svd(a.T @ b)
    return np.asarray(np.linalg.norm(a - b @ (u @ v).T, axis=1))
