"""Named outlines: curves of our own, drawn about one unit high."""

from __future__ import annotations

from collections.abc import Callable, Mapping

import numpy as np
from shapely import Point, Polygon, unary_union

from buildplan.fitting.outline import ComplexArray, Outline, OutlineError, outline_of
from buildplan.language.messages import mark, message
from buildplan.language.voice import Voice

ENGLISH = Voice()
MOST_POINTS_OF_STAR = 12
_ROUND = 32  # segments in a quarter circle


def _ring(region: Polygon) -> ComplexArray:
    x, y = region.exterior.coords.xy
    return np.asarray(x[:-1]) + 1j * np.asarray(y[:-1])


def _polygon(corners: ComplexArray) -> Polygon:
    return Polygon(np.column_stack([corners.real, corners.imag]))


def _rounded(region: Polygon, radius: float) -> Polygon:
    """The region with its outward corners rounded."""
    return region.buffer(-radius, _ROUND).buffer(radius, _ROUND)


def _circle(x: float, y: float, radius: float) -> Polygon:
    return Point(x, y).buffer(radius, _ROUND)


def star(points: int = 5) -> ComplexArray:
    """A broad star; the more points, the shallower."""
    reach = np.where(np.arange(2 * points) % 2 == 0, 0.5, 0.5 * _notch(points))
    return np.asarray(reach * 1j * np.exp(-1j * np.pi * np.arange(2 * points) / points))


def _notch(points: int) -> float:
    """How far out the inner corners of a star lie: deep for few points, shallow for many."""
    return min(0.55 + 0.05 * (points - 5), 0.75) if points >= 5 else 0.45


def crescent() -> ComplexArray:
    """A broad crescent with rounded horns, open to the right."""
    moon = _circle(0, 0, 0.5).difference(_circle(0.36, 0, 0.3))
    return _ring(_rounded(moon, 0.12))


def shield() -> ComplexArray:
    """Flat on top, down the sides, then in two arcs to a point below."""
    # an arc of radius 0.9 about (-0.5, 0.4) from (0.4, 0.4) down to the axis
    down = np.linspace(0, -np.arccos(0.5 / 0.9), 33)
    right = np.concatenate([[0.4 + 0.6j], -0.5 + 0.4j + 0.9 * np.exp(1j * down)])
    return np.concatenate([right, -np.conj(right[-2::-1])])


def arrow() -> ComplexArray:
    """A broad arrow that points up, its corners rounded."""
    right = np.array([0 + 1j, 0.55 + 0.45j, 0.27 + 0.45j, 0.27 + 0j])
    return _ring(_rounded(_polygon(np.concatenate([right, -np.conj(right[:0:-1])])), 0.06))


def drop() -> ComplexArray:
    """A round drop with its point on top."""
    # tangents from the point (0, 1) to the circle of radius 0.36 about (0, 0.36)
    radius, top = 0.36, 0.64
    half = np.arcsin(radius / top)
    angles = np.linspace(half, half - np.pi - 2 * half, 97)
    return np.concatenate([[1j], 1j * radius + radius * np.exp(1j * angles)])


def cloud() -> ComplexArray:
    """Three round heaps on a flat base."""
    parts = [
        _circle(-0.45, 0.27, 0.27),
        _circle(0.45, 0.27, 0.27),
        _circle(0, 0.58, 0.42),
        Polygon([(-0.45, 0), (0.45, 0), (0.45, 0.4), (-0.45, 0.4)]),
    ]
    return _ring(unary_union(parts))


def house() -> ComplexArray:
    """Walls and a gable roof."""
    return np.array([-0.42 + 0j, -0.42 + 0.6j, 1j, 0.42 + 0.6j, 0.42 + 0j])


def ring() -> ComplexArray:
    """A circle."""
    return np.asarray(0.5 * np.exp(-2j * np.pi * np.arange(180) / 180))


def rounded_square() -> ComplexArray:
    """A square with round corners."""
    return _ring(_rounded(Polygon([(0, 0), (1, 0), (1, 1), (0, 1)]), 0.25))


def leaf() -> ComplexArray:
    """Two arcs that meet in a point at the top and at the foot."""
    offset, radius = 0.28, float(np.hypot(0.28, 0.5))
    return _ring(_circle(-offset, 0, radius).intersection(_circle(offset, 0, radius)))


def fish() -> ComplexArray:
    """An oval body that swims to the left, with a broad tail."""
    round_ = np.linspace(0, 2 * np.pi, 129)[:-1]
    body = Polygon(np.column_stack([0.78 * np.cos(round_), 0.5 * np.sin(round_)]))
    tail = Polygon([(0.35, 0), (1.2, 0.5), (1.2, -0.5)])
    return _ring(_rounded(unary_union([body, tail]), 0.12))


def lightning() -> ComplexArray:
    """A broad bolt with blunt corners, the same when it is turned upside down."""
    half = np.array([-0.10 + 0.5j, 0.40 + 0.5j, 0.24 + 0.14j, 0.50 + 0.14j])
    return _ring(_rounded(_polygon(np.concatenate([half, -half])), 0.07))


NAMED: Mapping[str, Callable[[], ComplexArray]] = {
    mark("star"): star,
    mark("crescent"): crescent,
    mark("shield"): shield,
    mark("arrow"): arrow,
    mark("drop"): drop,
    mark("cloud"): cloud,
    mark("house"): house,
    mark("ring"): ring,
    mark("rounded-square"): rounded_square,
    mark("leaf"): leaf,
    mark("fish"): fish,
    mark("lightning"): lightning,
}


def named_outline(name: str, height_m: float, voice: Voice = ENGLISH) -> Outline:
    """The outline called `name`, a key of NAMED; `star-7` is a star of seven points.

    It has its name in the language of `voice`. Raises OutlineError.
    """
    if name in NAMED:
        return outline_of(voice.say(name), NAMED[name](), height_m)
    count = name.removeprefix("star-")
    if name.startswith("star-") and count.isdecimal() and 3 <= int(count) <= MOST_POINTS_OF_STAR:
        words = voice.say("star-{points}", points=int(count))
        return outline_of(words, star(int(count)), height_m)
    raise OutlineError(
        message("there is no outline {name}", name=repr(name)),
        message(
            "the outlines are {names}, {first} to {last}, letter:A and the like, or a file: .svg, "
            ".png or .jpg",
            names=", ".join(NAMED),
            first="star-3",
            last=f"star-{MOST_POINTS_OF_STAR}",
        ),
    )
