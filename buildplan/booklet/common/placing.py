"""Which openings and spaces the finished piece goes through, pose by pose."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from buildplan.framework.model import Framework
from buildplan.language.voice import Voice
from buildplan.shape.bodies import bodies_of
from buildplan.shape.model import FloatArray, Shape


@dataclass(frozen=True)
class Pose:
    """A way to carry the piece through an opening: the least clear width and height that it
    needs, and how long it is in the way that it travels. Metres."""

    name: str
    how: str
    width_m: float
    height_m: float
    length_m: float


def extent_m(framework: Framework, shape: Shape, direction: FloatArray) -> float:
    """How far the bodies reach along a unit vector, between two planes that touch them.

    A spheroid of radius r and half length c reaches sqrt(r^2 + (c^2 - r^2)(a.u)^2) from its
    centre in direction u, its axis being a.
    """
    bodies = bodies_of(framework)
    along = bodies.axes(shape.positions_m) @ direction
    radius, half = bodies.radius_m, bodies.length_m / 2
    reach = np.sqrt(radius**2 + (half**2 - radius**2) * along**2)
    middle = bodies.midpoints_m(shape.positions_m) @ direction
    return float(np.max(middle + reach) - np.min(middle - reach))


def least_lean(framework: Framework, shape: Shape) -> tuple[float, float, float]:
    """Turned in its own plane so that it is as low as can be: the angle from upright in whole
    degrees, its height then, and its width then in metres."""
    angles = range(180)
    heights = [
        extent_m(framework, shape, np.array([np.sin(a), np.cos(a), 0.0]))
        for a in np.radians(np.array(angles))
    ]
    # the least turn serves where several are as low
    lowest = min(angles, key=lambda a: (round(heights[a], 3), min(a, 180 - a)))
    return float(lowest), heights[lowest], heights[(lowest + 90) % 180]


def poses(framework: Framework, shape: Shape, voice: Voice) -> tuple[Pose, ...]:
    """The poses worth measuring an opening for, always edge first: nobody carries it broadside
    through a door."""
    angle, low, long = least_lean(framework, shape)
    width, height, depth = shape.width_m, shape.height_m, shape.depth_m
    found = [
        Pose(voice.say("Upright"), voice.say("as it stands, edge first"), depth, height, width),
        Pose(
            voice.say("On its side"),
            voice.say("turned a quarter, edge first"),
            depth,
            width,
            height,
        ),
    ]
    if low < 0.97 * min(width, height):
        lean = min(angle, 180 - angle)
        how = voice.say("turned {angle} degrees in its own plane, edge first", angle=round(lean))
        found.append(Pose(voice.say("Tilted"), how, depth, low, long))
    narrow, wide = sorted((width, height))
    found.append(Pose(voice.say("Flat"), voice.say("lying, carried level"), narrow, depth, wide))
    return tuple(found)
