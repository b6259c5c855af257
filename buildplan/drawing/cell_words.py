"""Where the words of a cell's diagram stand: beside what they name, covering as little as
can be."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.line_art import between
from buildplan.drawing.marks import Box, Point

HALF_HEIGHT = 5.0  # of a word of 8 pt with its frame
EDGE = 1.0
OFFSETS = (0.0, 3.0, 9.0, 18.0)  # bare paper between a balloon and its word
SHARES = (0.5, 0.38, 0.62, 0.28, 0.72)


@dataclass(frozen=True)
class Stick:
    """Something long on the paper: its two ends, and half its thickness."""

    start: Point
    finish: Point
    half: float


@dataclass(frozen=True)
class Clutter:
    """What stands on the paper already: boxes not to be touched (joints, words), bodies
    better left uncovered, and the paper's own size."""

    boxes: tuple[Box, ...]
    bodies: tuple[Stick, ...]
    size: tuple[float, float]

    @cached_property
    def lines(self) -> tuple[FloatArray, FloatArray, FloatArray]:
        """The bodies' starts (n, 2), their runs from there (n, 2), their halves (n,)."""
        starts = np.array([body.start for body in self.bodies], dtype=float)
        finishes = np.array([body.finish for body in self.bodies], dtype=float)
        return starts, finishes - starts, np.array([body.half for body in self.bodies])

    def with_box(self, box: Box) -> Clutter:
        """The same with one more box."""
        return Clutter((*self.boxes, box), self.bodies, self.size)


def around(at: Point, half: float) -> Box:
    """The box of what reaches so far from its middle."""
    return (at[0] - half, at[1] - half, at[0] + half, at[1] + half)


def word_box(at: Point, half_width: float) -> Box:
    """The box of a word centred on `at`."""
    return (at[0] - half_width, at[1] - HALF_HEIGHT, at[0] + half_width, at[1] + HALF_HEIGHT)


def best_spot(
    bodies: Iterable[Stick], half_width: float, clutter: Clutter, cost: Callable[[Point], float]
) -> Point:
    """The spot beside one of `bodies` at which a word covers least, `cost` counted in; of
    spots that cover as little, one close to the middle of its body."""
    beside = [spot for body in bodies for spot in _beside(body, half_width)]
    spots = [(_on_paper(at, half_width, clutter.size), stray) for at, stray in beside]
    boxes = [word_box(at, half_width) for at, _ in spots]
    total = [
        over + covered + cost(at) + stray
        for over, covered, (at, stray) in zip(
            _over_boxes(boxes, clutter), _over_bodies(boxes, clutter), spots, strict=True
        )
    ]
    return spots[min(range(len(spots)), key=total.__getitem__)][0]


def _on_paper(at: Point, half_width: float, size: tuple[float, float]) -> Point:
    """The nearest spot to another at which a word is not cut off by the paper's edge."""
    (x, y), (width, height) = at, size
    left, low = half_width + EDGE, HALF_HEIGHT + EDGE
    return (max(left, min(x, width - left)), max(low, min(y, height - low)))


def gap(point: Point, a: Point, b: Point) -> float:
    """Distance of a point from the line between two others."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    along = ((point[0] - a[0]) * dx + (point[1] - a[1]) * dy) / ((dx * dx + dy * dy) or 1.0)
    return math.dist(point, between(a, b, min(max(along, 0.0), 1.0)))


def _beside(body: Stick, half_width: float) -> Iterable[tuple[Point, float]]:
    """Spots beside a body, and what it costs to stray so far from its middle."""
    (x0, y0), (x1, y1) = body.start, body.finish
    length = math.dist(body.start, body.finish) or 1.0
    nx, ny = (y0 - y1) / length, (x1 - x0) / length
    clear = body.half + abs(nx) * half_width + abs(ny) * HALF_HEIGHT
    for offset in OFFSETS:
        for share in SHARES:
            x, y = between(body.start, body.finish, share)
            for side in (1, -1):
                reach = side * (clear + offset)
                stray = 0.2 * offset + 20 * abs(share - 0.5)
                yield (x + nx * reach, y + ny * reach), stray


def _over_boxes(boxes: Sequence[Box], clutter: Clutter) -> list[float]:
    """What a word in each of `boxes` would cover of other boxes, which weighs most, or cross of the
    paper's edge."""
    mine, size = np.array(boxes, dtype=float).reshape(-1, 4), np.array(clutter.size)
    low, high = mine[:, :2], mine[:, 2:]
    others = np.array(clutter.boxes, dtype=float).reshape(-1, 4)
    shared = np.minimum(high[:, None], others[:, 2:]) - np.maximum(low[:, None], others[:, :2]) + 2
    wide, tall = shared[..., 0], shared[..., 1]
    cost = np.sum(np.where((wide > 0) & (tall > 0), 100 + wide * tall, 0.0), axis=1)
    beyond = np.maximum(np.max(1 - low, axis=1), np.max(high + 1 - size, axis=1))
    found: list[float] = (cost + 50 * np.maximum(beyond, 0.0)).tolist()
    return found


def _over_bodies(boxes: Sequence[Box], clutter: Clutter) -> list[float]:
    """How deep points of each box lie in bodies, together."""
    if not clutter.bodies or not boxes:
        return [0.0] * len(boxes)
    starts, runs, halves = clutter.lines
    points = np.array([_sampled(box) for box in boxes])
    from_start = points[:, :, None] - starts
    along = np.sum(from_start * runs, axis=3) / np.maximum(np.sum(runs**2, axis=1), 1e-12)
    away = from_start - np.clip(along, 0, 1)[..., None] * runs
    depth = halves + 1 - np.sqrt(np.sum(away**2, axis=3))
    found: list[float] = np.sum(np.maximum(depth, 0.0), axis=(1, 2)).tolist()
    return found


def _sampled(box: Box) -> Sequence[Point]:
    """Corners of a box and points along its middle."""
    left, foot, right, top = box
    middle = (foot + top) / 2
    return (
        (left, foot),
        (right, foot),
        (left, top),
        (right, top),
        *((left + (right - left) * i / 4, middle) for i in range(5)),
    )
