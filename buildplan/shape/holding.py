"""What holds pieces that do not stand by themselves: a weighted base, a pole, a wall, a ceiling."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from math import radians, tan

import numpy as np

from buildplan.design.measures import Units, load_words, side_words
from buildplan.language.messages import Measure, Message, message, message_count
from buildplan.shape.constants import CONSTANTS, Constant
from buildplan.shape.model import Base, FloatArray, Holding, Standing
from buildplan.shape.standing import hull_corners, tip_lean

# Of a base that is advised `least_ballast` is what people carry in one hand, and weighs down any
# piece that nothing fixed holds; `base_lean` is how far the piece may lean on it: shop floors and
# stands are often made for ten degrees, and hands and draughts ask for some more.
STEP_M = 0.05
LEAST_M = 0.3
MOST_M = 1.2  # a foot that is longer is tied to the middle of the base
ONE_BASE_M = 0.6  # feet wider apart have a base each: one that long is a thing to stumble over


def on_base(standing: Standing, mass_kg: float, base: Base) -> Standing:
    """How a piece of that mass stands when its foot is tied to the middle of a base, or each of
    its feet to one of its own.

    A base lies under the middle of the foot, its own weight at the height of the floor: the foot
    is the hull of both, the centre of mass that of both.
    """
    middles = base_middles(standing, base)
    half = 0.5 * np.array([base.width_m, base.depth_m])
    corners = [middle + half * np.array([[1, 1], [1, -1], [-1, -1], [-1, 1]]) for middle in middles]
    polygon = hull_corners(np.vstack([standing.foot_polygon_m, *corners]))
    own, share = standing.centre_of_mass_m, mass_kg / (mass_kg + base.all_kg)
    x, z = middles.mean(axis=0)
    centre = share * own + (1 - share) * np.array([x, 0.0, z])
    angle = tip_lean(polygon, centre[[0, 2]], float(centre[1]))
    return replace(
        standing,
        stands=angle > 0,
        foot_polygon_m=polygon,
        centre_of_mass_m=centre,
        tip_angle_deg=max(angle, 0.0),
    )


def held(standing: Standing, mass_kg: float, holding: Holding) -> tuple[Holding, Standing]:
    """What holds a piece of that mass, its base counted for its feet, and how it then stands."""
    if holding.base is None:
        return holding, standing
    base = placed_base(standing, holding.base)
    return replace(holding, base=base), on_base(standing, mass_kg, base)


def placed_base(standing: Standing, base: Base) -> Base:
    """A base that reaches under all feet as the one that it is; else one for each foot."""
    if len(standing.feet_m) < 2:
        return replace(base, count=1)
    off = np.abs(standing.feet_m - _middle(standing)).max(axis=0)
    reaches = bool((2 * off <= (base.width_m, base.depth_m)).all())
    return replace(base, count=1 if reaches else len(standing.feet_m))


def base_middles(standing: Standing, base: Base) -> FloatArray:
    """Where the middle of each base lies on the floor, (k, 2) in x and z."""
    return _middle(standing)[None, :] if base.count == 1 else standing.feet_m


def _middle(standing: Standing) -> FloatArray:
    foot = standing.foot_polygon_m
    return np.asarray(0.5 * (foot.min(axis=0) + foot.max(axis=0)))


def advised_base(
    standing: Standing, mass_kg: float, constants: Mapping[str, Constant] = CONSTANTS
) -> Base:
    """A base on which a piece of that mass may lean by `base_lean`: its weight a round figure
    that people carry, its sides as long as that asks for and in whole steps. Of feet that are
    wider apart than a base is long, each has one of its own, and its share of the weight."""
    weight = max(constants["least_ballast"].value, round(3 * mass_kg))
    share = mass_kg / (mass_kg + weight)
    centre, middle = standing.centre_of_mass_m, _middle(standing)
    off = share * np.abs(centre[[0, 2]] - middle)
    reach = off + share * float(centre[1]) * tan(radians(constants["base_lean"].value))
    under = np.ptp(standing.foot_polygon_m, axis=0)
    sides = [
        max(LEAST_M, float(np.ceil(max(2 * one, min(foot, MOST_M)) / STEP_M) * STEP_M))
        for one, foot in zip(reach, under, strict=True)
    ]
    count = len(standing.feet_m)
    apart = np.ptp(standing.feet_m, axis=0) if count > 1 else np.zeros(2)
    if apart.max() <= ONE_BASE_M:
        return Base(round(sides[0], 2), round(sides[1], 2), weight)
    side = round(sides[1 - int(np.argmax(apart))], 2)  # as wide as it is deep
    return placed_base(standing, Base(side, side, float(np.ceil(weight / count))))


def conditions(holding: Holding, units: Units) -> Iterator[Message]:
    """On what the piece stands or hangs, as it must be set up."""
    base = holding.base
    if base is not None:
        yield message_count(
            "stands tied to a base {width} wide and {depth} deep that weighs {weight}",
            "stands with each of its {number} feet tied to a base of its own, {width} wide and "
            "{depth} deep, that weighs {weight}",
            base.count,
            width=side_words(base.width_m, units),
            depth=side_words(base.depth_m, units),
            weight=Measure(load_words(base.weight_kg), base.weight_kg),
        )
    if holding.pole:
        yield message("is held up by a pole that stands by itself")
    if holding.hung:
        yield message("hangs from above")
    if holding.tied_to_wall:
        yield message("is tied to a wall behind it")
