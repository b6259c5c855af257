"""The shape of a piece as frozen data.

Axes, in metres: x to the right as seen from the front, y up, z towards the viewer. The piece
stands on the floor y = 0 with its width centred on x = 0 and its depth on z = 0. Front
chains have the larger z.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np
import numpy.typing as npt

from buildplan.design.problems import Problem

FloatArray = npt.NDArray[np.float64]


@dataclass(frozen=True)
class Standing:
    """How the piece stands on its foot.

    `feet` are the joints nearest the floor that carry it, `foot_polygon_m` the (k, 2)
    corners in x and z of what touches the floor, `tip_angle_deg` the angle of lean at which
    it goes over in its worst direction. `stands` is false when the centre of mass lies
    outside the foot.
    """

    stands: bool
    feet: tuple[str, ...]
    foot_polygon_m: FloatArray
    centre_of_mass_m: FloatArray
    tip_angle_deg: float


@dataclass(frozen=True)
class Shape:
    """The resting shape.

    `positions_m` has shape (joints, 3), in the order of `joints`. `residual_n` is the
    largest unbalanced force on any joint; `largest_strain` the largest relative change of a
    link's length; `closes` says that every ring is closed without more strain than allowed.
    """

    joints: tuple[str, ...]
    positions_m: FloatArray
    converged: bool
    iterations: int
    residual_n: float
    largest_strain: float
    closes: bool
    width_m: float
    height_m: float
    depth_m: float
    mass_kg: float
    mechanisms: int
    self_stresses: int
    standing: Standing
    problems: tuple[Problem, ...]

    @cached_property
    def at(self) -> dict[str, FloatArray]:
        """Position of each joint by its label."""
        return dict(zip(self.joints, self.positions_m, strict=True))
