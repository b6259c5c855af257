"""What holds pieces that do not stand by themselves: a weighted base, a pole, a wall, a ceiling."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import radians, tan

import numpy as np

from buildplan.language.messages import Decimal, Message, message
from buildplan.shape.model import Base, FloatArray, Holding, Standing
from buildplan.shape.standing import hull_corners, tip_lean

# A base that is advised: what people carry in one hand, and how far the piece may lean on it. From
# memory: shop floors and stands are often made for ten degrees; some more for hands and draughts.
ADVISED_KG = 8.0
ADVISED_LEAN_DEG = 15.0
STEP_M = 0.05
LEAST_M = 0.3
MOST_M = 1.2  # a foot that is longer is tied to the middle of the base


def on_base(standing: Standing, mass_kg: float, base: Base) -> Standing:
    """How a piece of that mass stands when its foot is tied to the middle of a base.

    The base lies under the middle of the foot, its own weight at the height of the floor: the foot
    is the hull of both, the centre of mass that of both.
    """
    middle = _middle(standing)
    half = 0.5 * np.array([base.width_m, base.depth_m])
    corners = middle + half * np.array([[1, 1], [1, -1], [-1, -1], [-1, 1]])
    polygon = hull_corners(np.vstack([standing.foot_polygon_m, corners]))
    own, share = standing.centre_of_mass_m, mass_kg / (mass_kg + base.weight_kg)
    centre = share * own + (1 - share) * np.array([middle[0], 0.0, middle[1]])
    angle = tip_lean(polygon, centre[[0, 2]], float(centre[1]))
    return replace(
        standing,
        stands=angle > 0,
        foot_polygon_m=polygon,
        centre_of_mass_m=centre,
        tip_angle_deg=max(angle, 0.0),
    )


def _middle(standing: Standing) -> FloatArray:
    foot = standing.foot_polygon_m
    return np.asarray(0.5 * (foot.min(axis=0) + foot.max(axis=0)))


def advised_base(standing: Standing, mass_kg: float) -> Base:
    """A base on which a piece of that mass may lean by ADVISED_LEAN_DEG: its weight a round figure
    that people carry, its sides as long as that asks for and in whole steps."""
    weight = max(ADVISED_KG, round(3 * mass_kg))
    share = mass_kg / (mass_kg + weight)
    centre, middle = standing.centre_of_mass_m, _middle(standing)
    off = share * np.abs(centre[[0, 2]] - middle)
    reach = off + share * float(centre[1]) * tan(radians(ADVISED_LEAN_DEG))
    under = np.ptp(standing.foot_polygon_m, axis=0)
    sides = [
        max(LEAST_M, float(np.ceil(max(2 * one, min(foot, MOST_M)) / STEP_M) * STEP_M))
        for one, foot in zip(reach, under, strict=True)
    ]
    return Base(round(sides[0], 2), round(sides[1], 2), weight)


def conditions(holding: Holding) -> Iterator[Message]:
    """On what the piece stands or hangs, as it must be set up."""
    base = holding.base
    if base is not None:
        yield message(
            "stands tied to a base {width} cm wide and {depth} cm deep that weighs {weight} kg",
            width=Decimal(100 * base.width_m, 0),
            depth=Decimal(100 * base.depth_m, 0),
            weight=Decimal(base.weight_kg, 1),
        )
    if holding.pole:
        yield message("is held up by a pole that stands by itself")
    if holding.hung:
        yield message("hangs from above")
    if holding.tied_to_wall:
        yield message("is tied to a wall behind it")
