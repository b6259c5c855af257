"""The shape of a piece as frozen data.

Axes, in metres: x to the right as seen from the front, y up, z towards the viewer. The piece
stands on the floor y = 0 with its width centred on x = 0 and its depth on z = 0. Front
chains have the larger z.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property

import numpy as np
import numpy.typing as npt

from buildplan.source.problems import Problem

FloatArray = npt.NDArray[np.float64]
IntArray = npt.NDArray[np.int_]


@dataclass(frozen=True)
class Standing:
    """How the piece stands on its foot.

    `feet` are the joints nearest the floor that carry it, `foot_polygon_m` the (k, 2)
    corners in x and z of what touches the floor, `tip_angle_deg` the angle of lean at which
    it goes over in its worst direction. `stands` is false when the centre of mass lies
    outside the foot. `feet_m` are the middles (k, 2) of feet that stand apart from one another, as
    those of an arch do; none where it is not known of more than one.
    """

    stands: bool
    feet: tuple[str, ...]
    foot_polygon_m: FloatArray
    centre_of_mass_m: FloatArray
    tip_angle_deg: float
    feet_m: FloatArray = field(default_factory=lambda: np.zeros((0, 2)))


@dataclass(frozen=True)
class Base:
    """A weighted base under the foot, to which the piece is tied; where `count` is more than one,
    as many, each under a foot of its own."""

    width_m: float
    depth_m: float
    weight_kg: float
    count: int = 1

    @property
    def all_kg(self) -> float:
        """What all of them weigh."""
        return self.count * self.weight_kg


@dataclass(frozen=True)
class Holding:
    """What holds a piece that does not stand by itself."""

    base: Base | None = None
    pole: bool = False
    hung: bool = False
    tied_to_wall: bool = False

    @property
    def fixed(self) -> bool:
        """Whether something that does not fall over holds it."""
        return self.pole or self.hung or self.tied_to_wall


FREE = Holding()


@dataclass(frozen=True)
class Shape:
    """The resting shape.

    `positions_m` has shape (joints, 3), in the order of `joints`. `residual_n` is the
    largest unbalanced force on any joint; `largest_strain` the largest relative change of a
    link's length; `closes` says that every ring is closed without more strain than allowed;
    `mirrored` that the back mirrors the front, balloon for balloon. Joints that are tied together
    are one among `joints`; `tied` gives the row of each by its own label. `standing` is that with
    the base of `holding`. `starts_cut` says that the search from one of the starts was cut short.
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
    mirrored: bool = False
    tied: Mapping[str, int] = field(default_factory=dict)
    holding: Holding = FREE
    starts_cut: bool = False

    @property
    def kept_up(self) -> bool:
        """Whether it stands, by itself or on its base, or is held."""
        return self.standing.stands or self.holding.fixed

    @cached_property
    def row(self) -> dict[str, int]:
        """The row of each joint in `positions_m`, by its label."""
        return {joint: i for i, joint in enumerate(self.joints)} | dict(self.tied)

    @cached_property
    def at(self) -> dict[str, FloatArray]:
        """Position of each joint by its label."""
        return {joint: self.positions_m[row] for joint, row in self.row.items()}


@dataclass(frozen=True)
class Estimate:
    """A figure that rests on remembered constants: the likely value and the range about it.

    `rests_on` names the constants; when it is empty the figure is as good as the measurements.
    """

    value: float
    low: float
    high: float
    unit: str
    rests_on: tuple[str, ...] = ()


@dataclass(frozen=True)
class SoftMode:
    """The way in which the piece gives most easily.

    `stiffness_n_per_m` is the push that moves the joint that moves most by a metre, were the piece
    to go on giving evenly; below zero the piece folds by itself. `joints` are those that move
    most, `motion` (joints, 3) the whole movement, the largest of length 1.
    """

    stiffness_n_per_m: float
    joints: tuple[str, ...]
    motion: FloatArray


@dataclass(frozen=True)
class ExtraBrace:
    """One more balloon, tried: between which joints, how long, and what it is worth.

    `gain` is how much less the piece gives with it, on the whole of its six softest modes, or None
    when the piece folds by itself without it and no longer does with it.
    """

    joints: tuple[str, str]
    length_m: float
    gain: float | None


@dataclass(frozen=True)
class Stiffness:
    """How the piece gives: as pin-jointed bars, with crowding, and with its locks too.

    `folds` counts the ways in which it would fold by itself without locks; `folds_locked` with
    them.
    """

    mechanisms: int
    self_stresses: int
    folds: int
    folds_locked: int
    crowded: SoftMode
    locked: SoftMode


@dataclass(frozen=True)
class Wind:
    """What wind does to the standing piece, by dynamic pressure on its drawn area.

    `front_area_m2` and `side_area_m2` are its outlines filled, `tips_at` the gust speed that
    tips it about `edge_m` (2, 2), the worst edge of its foot (x and z of the ends). For a gust
    that the user names: `ballast` on the foot that holds it, or `reach`, how far the foot would
    have to reach out from below the centre of mass instead; None where no gust is named. Ballast
    is tied the same at each of the joints `ballast_at`; that is `ballast_factor` times what would
    do below the centre of mass. `standing_kg` is what stands there at least, a base with it;
    where no gust is named, ballast of `least_ballast_kg` or more holds it in a draught indoors.
    """

    front_area_m2: float
    side_area_m2: float
    tips_at: Estimate
    edge_m: FloatArray
    ballast_at: tuple[str, ...]
    ballast_factor: float
    standing_kg: float
    least_ballast_kg: float
    draught_m_per_s: float
    gust_m_per_s: float | None
    ballast: Estimate | None
    reach: Estimate | None


@dataclass(frozen=True)
class Examination:
    """What is known of a standing piece beyond its shape. Estimates say so.

    `problems` must be mended; `cautions` are to be known when the piece is set up.
    `folds_unlocked_m` is how far a joint moves, at least, when the piece folds before its locks
    are set (`unlocking.py`); 0 where it keeps its shape, or was not asked.
    """

    mass: Estimate
    tip_angle: Estimate
    sag: Estimate | None
    sway: Estimate | None
    stiffness: Stiffness
    wind: Wind
    problems: tuple[Problem, ...]
    cautions: tuple[Problem, ...]
    folds_unlocked_m: float = 0.0
