"""Where the back of a flat piece is drawn behind its front: moved up and to the side.

Half a link each way keeps front and back apart along straight strokes; along slanting ones it would
put joints of the back on those of the front. So each joint of the back is moved by itself, as the
others are unless it would lie on something: coordinate descent (Wright 2015) from one move for
all, over a few moves for each.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from buildplan.drawing.marks import Point
from buildplan.shape.model import FloatArray, IntArray

USUAL: Point = (0.5, 0.5)
# Moves that are tried, in links, the usual one first.
MOVES: tuple[Point, ...] = (
    USUAL,
    *(
        (far * math.cos(math.radians(turn)), far * math.sin(math.radians(turn)))
        for far in (0.58, 0.7, 0.85, 1.0)
        for turn in range(-15, 150, 15)
    ),
)
STARTS: tuple[Point, ...] = (USUAL, (0.0, 0.7), (0.7, 0.0), (-0.5, 0.5))
ROUNDS = 6
ALIKE = 0.02  # what it costs to be moved otherwise than a neighbour, against lying on something


@dataclass(frozen=True)
class FlatGraph:
    """Joints at places in links, the numbers of those at the back, and lines between joints."""

    places: tuple[Point, ...]
    back: tuple[int, ...]
    lines: tuple[tuple[int, int], ...]


@lru_cache(maxsize=64)
def with_the_back_moved(graph: FlatGraph, disc: float, line: float) -> tuple[Point, ...]:
    """The places with those of the back moved, so that joints are `disc` apart and as far as
    `line` from lines that do not end at them, as nearly as that goes; all in links."""
    tried: list[tuple[float, FloatArray]] = []
    for start in STARTS:
        settled = _Settled(graph, disc, line, start)
        for _ in range(ROUNDS):
            changed = [settled.improve(joint) for joint in graph.back]
            if not any(changed):
                break
        least = round(larger_by(settled.at, graph.lines, disc, line), 2)
        tried.append((max(least, 1.0), settled.at))
        if least <= 1.0:
            break
    best = min(tried, key=lambda one: one[0])[1]
    return tuple((float(x), float(y)) for x, y in best)


def larger_by(at: FloatArray, lines: Sequence[tuple[int, int]], disc: float, line: float) -> float:
    """How many times as large places (n, 2) have to be drawn so that all joints are `disc` apart
    and as far as `line` from lines that do not end at them."""
    ends = np.array(lines)
    apart = np.hypot(*(at[:, None] - at[None, :]).transpose(2, 0, 1))
    np.fill_diagonal(apart, np.inf)
    under = from_lines(at, at[ends[:, 0]], at[ends[:, 1]])
    under[np.arange(len(ends))[:, None], ends] = np.inf
    return max(disc / max(float(apart.min()), 1e-6), line / max(float(under.min()), 1e-6))


class _Settled:
    """The moves found so far."""

    def __init__(self, graph: FlatGraph, disc: float, line: float, start: Point) -> None:
        self.graph, self.disc, self.line = graph, disc, line
        self.still = np.array(graph.places)
        self.ends = np.array(graph.lines)
        self.move = dict.fromkeys(graph.back, start)
        self.at = self.still.copy()
        self.at[list(graph.back)] += np.array(start)

    def improve(self, joint: int) -> bool:
        """Move a joint of the back by the best move; whether that is another than before."""
        own = self.ends[(self.ends == joint).any(axis=1)]
        beside = {int(end) for line in own for end in line} - {joint}
        alike = [self.move[other] for other in beside if other in self.move]
        costs = self._costs(joint, own, alike)
        best = MOVES[int(np.argmin(np.round(costs, 9)))]
        changed = best != self.move[joint]
        self.move[joint] = best
        self.at[joint] = self.still[joint] + np.array(best)
        return changed

    def _costs(self, joint: int, own: IntArray, alike: list[Point]) -> FloatArray:
        """What each of the moves costs (k,) for a joint with lines of its own (m, 2)."""
        at, moved = self.at, self.still[joint] + np.array(MOVES)
        apart = np.hypot(*(at[None] - moved[:, None]).transpose(2, 0, 1))
        apart[:, joint] = np.inf
        others = self.ends[(self.ends != joint).all(axis=1)]
        lies_on = from_lines(moved, at[others[:, 0]], at[others[:, 1]])
        fixed = at[own[own != joint]]  # the other end of each line of its own
        wide, many = len(MOVES), len(own)
        starts, finishes = np.repeat(moved, many, axis=0), np.tile(fixed, (wide, 1))
        under = from_lines(at, starts, finishes).reshape(wide, many, -1)
        under[:, np.arange(many)[:, None], own] = np.inf
        short = (
            np.maximum(self.disc - apart, 0) / self.disc,
            np.maximum(self.line - lies_on.T, 0) / self.line,
            np.maximum(self.line - under, 0).reshape(wide, -1) / self.line,
        )
        unlike = [math.fsum(math.dist(move, other) for other in (*alike, USUAL)) for move in MOVES]
        lying = np.sum([(each**2).sum(axis=1) for each in short], axis=0)
        return np.asarray(lying + ALIKE * np.array(unlike))


def from_lines(points: FloatArray, start: FloatArray, finish: FloatArray) -> FloatArray:
    """How far points (n, 2) are from lines with the ends (m, 2) each: (m, n)."""
    # x and y by themselves: sums over an axis of two are slow
    (along_x, along_y), (off_x, off_y) = (finish - start).T, points.T[:, None] - start.T[:, :, None]
    along_x, along_y = along_x[:, None], along_y[:, None]
    length = np.maximum(along_x**2 + along_y**2, 1e-12)
    share = np.clip((off_x * along_x + off_y * along_y) / length, 0, 1)
    return np.asarray(np.hypot(off_x - share * along_x, off_y - share * along_y))
