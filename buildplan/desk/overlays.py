"""What can be laid over the piece on the desk: its sizes, its foot, wind, doors, a van."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from buildplan.design.measures import load_words, size_words
from buildplan.evaluation.ballast import ballast_kg
from buildplan.evaluation.evaluating import Evaluation
from buildplan.evaluation.figures import wind_words
from buildplan.evaluation.passing import Door, ways
from buildplan.evaluation.passing_words import door_words, way_words
from buildplan.language.voice import Voice
from buildplan.shape.standing import hull_corners

# Speeds that the wind can be put to, m/s: to the end of Beaufort's force 5 (WMO), from which on
# nobody leaves balloons outside (common practice, no source).
GUSTS_M_PER_S = (0.0, 1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0)
# A room door and a lift as they are built; clear sizes, from memory: measure your own.
DOORS = (Door("", 0.8, 2.0), Door("", 0.9, 2.05), Door("", 1.6, 2.1))
# The load space of a middling van, from memory: measure your own. Length, width, height.
VAN_M = (2.4, 1.6, 1.3)


def overlays_of(piece: Evaluation, voice: Voice) -> dict[str, object]:
    """All of them, in metres, and in words."""
    units = piece.units
    return {
        "dimensions": _dimensions(piece, voice),
        **_on_the_floor(piece),
        "gusts": [_gust(piece, speed, voice) for speed in GUSTS_M_PER_S],
        "doors": [
            {
                "door": door_words(way.piece.door, units, voice),
                "width_m": way.piece.door.width_m,
                "height_m": way.piece.door.height_m,
                "goes_through": str(way.piece.fit),
                "words": way_words(way, units, voice),
            }
            for way in ways(piece, DOORS)
        ],
        "van": _van(piece, voice),
    }


def _dimensions(piece: Evaluation, voice: Voice) -> list[dict[str, object]]:
    """The sizes of a piece, each with its ends in space: on the floor along its front and its right
    side, and upright at its left."""
    facts, positions = piece.facts, piece.shape.positions_m
    middle = (positions.min(axis=0) + positions.max(axis=0)) / 2
    half = np.array([facts.width_m, 0.0, facts.depth_m]) / 2
    left, right = middle[0] - half[0], middle[0] + half[0]
    front, back = middle[2] + half[2], middle[2] - half[2]
    ends = {
        "width": (facts.width_m, (left, 0.0, front), (right, 0.0, front)),
        "height": (facts.height_m, (left, 0.0, front), (left, facts.height_m, front)),
        "depth": (facts.depth_m, (right, 0.0, front), (right, 0.0, back)),
    }
    return [
        {
            "name": name,
            "m": round(length, 4),
            "words": voice.tell(size_words(length, piece.units)),
            "from": _rounded([start])[0],
            "to": _rounded([end])[0],
        }
        for name, (length, start, end) in ends.items()
    ]


def _on_the_floor(piece: Evaluation) -> dict[str, object]:
    """The foot as corners in x and z, the middle of the weight over it, and the direction in which
    the piece goes over first: that of the foot's nearest edge."""
    standing = piece.shape.standing
    corners = hull_corners(standing.foot_polygon_m)
    middle = standing.centre_of_mass_m[[0, 2]]
    sides = np.roll(corners, -1, axis=0) - corners
    lengths = np.maximum(np.linalg.norm(sides, axis=1), 1e-9)
    outward = np.column_stack([sides[:, 1], -sides[:, 0]]) / lengths[:, None]
    arms = np.einsum("ij,ij->i", outward, corners - middle)
    worst = int(np.argmin(arms))
    return {
        "foot": _rounded(corners),
        "middle": _rounded([middle])[0],
        "lean": _rounded([outward[worst]])[0],
        "lean_edge": _rounded([corners[worst], corners[(worst + 1) % len(corners)]]),
        "tip_angle_deg": round(piece.facts.tip_angle_deg, 1),
        "feet": list(standing.feet),
    }


def _rounded(points: Sequence[object] | np.ndarray) -> list[list[float]]:
    return [[round(float(value), 4) + 0.0 for value in point] for point in np.asarray(points)]


def _gust(piece: Evaluation, speed_m_per_s: float, voice: Voice) -> dict[str, object]:
    """Whether a gust tips the piece, and the ballast that holds it."""
    found = piece.examination
    ballast = ballast_kg(found, speed_m_per_s)
    tips = bool(found.wind.tips_at.value < speed_m_per_s) and not piece.shape.holding.fixed
    speed = wind_words(speed_m_per_s, piece.units, voice)
    load = voice.tell(load_words(ballast, max(1, len(found.wind.ballast_at))))
    if not ballast:
        words = voice.say("{speed}: it is held", speed=speed)
    elif tips:
        words = voice.say(
            "{speed}: it goes over, unless {ballast} hold it down (estimate)",
            speed=speed,
            ballast=load,
        )
    else:
        words = voice.say(
            "{speed}: it stands; {ballast} on its foot make it safe (estimate)",
            speed=speed,
            ballast=load,
        )
    return {
        "m_per_s": speed_m_per_s,
        "speed": speed,
        "tips": tips,
        "ballast_kg": round(ballast, 1),
        "words": words,
    }


def _van(piece: Evaluation, voice: Voice) -> dict[str, object]:
    """How the piece goes into a van whole, if it does."""
    length, width, height = VAN_M
    hold = replace(Door("", width, height), depth_m=length)
    (way,) = ways(piece, [hold])
    return {
        "length_m": length,
        "width_m": width,
        "height_m": height,
        "goes_in": str(way.piece.fit),
        "door": door_words(hold, piece.units, voice),
        "words": way_words(way, piece.units, voice),
    }
