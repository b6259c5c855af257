"""Locks: once a joint is locked, its links keep the angles that they were tied at.

A pair of rounds twisted round a joint resists every change of angle between two of its links with
a torque of `lock_stiffness` times the change. Both forms below are springs on positions whose
length is a function of the angle t alone while the links keep their lengths:

- below a right angle the distance of the far ends, d with d' = la lb sin(t) / d;
- above it the sum of the two unit vectors, 2 cos(t / 2), which stays smooth when the links lie in
  one line.

The stiffness of either is the torque's over the square of the length's derivative by t.

Where all links of a joint lie in one plane no angle changes at first when one leaves it. There the
weighted sums of unit vectors that are zero are held at zero.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

import numpy as np

from buildplan.shape.bodies import LinkBodies
from buildplan.shape.constants import Constant
from buildplan.shape.model import FloatArray
from buildplan.shape.springs import Springs, springs_between, together

FLAT = 0.05  # least singular value of a joint's unit vectors below which it counts as flat


def locks(
    bodies: LinkBodies,
    positions_m: FloatArray,
    locked: Sequence[int],
    constants: Mapping[str, Constant],
) -> Springs:
    """Springs that hold the angles at the joints numbered `locked` as they are at `positions_m`."""
    torque = constants["lock_stiffness"].value
    held = np.isin(bodies.sharing[:, 2], np.asarray(locked, int))
    held &= bodies.far_ends[:, 0] != bodies.far_ends[:, 1]
    joint = bodies.sharing[held, 2]
    one, other = bodies.far_ends[held].T
    arms = positions_m[one] - positions_m[joint], positions_m[other] - positions_m[joint]
    la, lb = (np.linalg.norm(arm, axis=1) for arm in arms)
    angle = np.arccos(np.clip(np.einsum("ij,ij->i", *arms) / (la * lb), -1, 1))
    sharp = angle < np.pi / 2
    apart = np.linalg.norm(positions_m[one] - positions_m[other], axis=1)
    slope = la * lb * np.sin(angle) / np.maximum(apart, 1e-12)
    by_distance = springs_between(
        np.column_stack([one, other])[sharp],
        np.array([1.0, -1.0]),
        bodies.joints,
        apart[sharp],
        torque / np.maximum(slope[sharp], 0.01 * la[sharp]) ** 2,
        push_only=False,
    )
    units = arms[0] / la[:, None] + arms[1] / lb[:, None]
    by_sum = springs_between(
        np.column_stack([one, other, joint])[~sharp],
        np.column_stack([1 / la, 1 / lb, -1 / la - 1 / lb])[~sharp],
        bodies.joints,
        np.linalg.norm(units, axis=1)[~sharp],
        torque / np.sin(angle[~sharp] / 2) ** 2,
        push_only=False,
    )
    return together([by_distance, by_sum, *_flat_joints(bodies, positions_m, locked, torque)])


def _flat_joints(
    bodies: LinkBodies, positions_m: FloatArray, locked: Sequence[int], torque: float
) -> Iterator[Springs]:
    """Springs that keep the links of each flat joint in one plane, for all joints of as many links
    together."""
    by_links: dict[int, list[int]] = {}
    for joint in locked:
        by_links.setdefault(len(bodies.links_at[joint]), []).append(joint)
    for count, alike in by_links.items():
        if count < 3:
            continue
        joints = np.array(alike)
        links = np.array([bodies.links_at[joint] for joint in alike])
        far = bodies.ends[links].sum(axis=2) - joints[:, None]
        arms = positions_m[far] - positions_m[joints][:, None]
        length = np.linalg.norm(arms, axis=2)
        _, values, sums = np.linalg.svd((arms / length[..., None]).transpose(0, 2, 1))
        flat = values[:, 2] <= FLAT
        if not flat.any():
            continue
        weights = sums[flat, 2:]
        weights = weights / np.abs(weights).max(axis=2, keepdims=True) / length[flat, None]
        ends = np.column_stack([far, joints])[flat]
        rows = np.concatenate([weights, -weights.sum(axis=2, keepdims=True)], axis=2)
        yield springs_between(
            np.repeat(ends, count - 2, axis=0),
            rows.reshape(-1, count + 1),
            bodies.joints,
            np.linalg.norm(weights @ arms[flat], axis=2).ravel(),
            torque,
            push_only=False,
        )
