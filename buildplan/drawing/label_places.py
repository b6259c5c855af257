"""Where joint labels go: so that none covers another, a joint or the picture's edge.

Every tag tries places round its joint, nearest first; tags with the fewest free places choose
first, then each moves on while that makes the whole better. No chance is involved.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

import numpy as np

from buildplan.drawing.arrays import BoolArray, FloatArray
from buildplan.drawing.labels import TIE_RADIUS, Tag, tag_size
from buildplan.drawing.marks import Box, Point

GAP = 1.0
_ANGLES = 20
# What it costs a tag, in points of distance, that its leader runs over another joint, and that it
# stands nearer to another joint than to its own: both would be tied at the wrong one.
OVER_A_JOINT, NEARER_ANOTHER = 80.0, 40.0
# Tags nearer than this to one another look like one of two lines.
STACKED_PT, STACKED = 5.0, 14.0
WRONG_SIDE = 60.0  # and that it stands on the other side than it should
_REACHES = (9.0, 13.0, 18.0, 25.0, 34.0, 46.0, 62.0, 84.0)


def _touch(boxes: FloatArray, other: FloatArray, gap: float = GAP) -> BoolArray:
    """Which of `boxes` (..., 4) come nearer to `other` (..., 4) than the gap."""
    return np.asarray(
        (boxes[..., 0] < other[..., 2] + gap)
        & (other[..., 0] < boxes[..., 2] + gap)
        & (boxes[..., 1] < other[..., 3] + gap)
        & (other[..., 1] < boxes[..., 3] + gap)
    )


def _clear(boxes: FloatArray, held: FloatArray) -> BoolArray:
    """Which of `boxes` (n, 4) touch none of `held` (m, 4)."""
    return np.asarray(~np.any(_touch(boxes[:, None], held[None]), axis=1))


def _candidates(box: tuple[float, float], spot: Point, width: float, height: float) -> FloatArray:
    """Boxes (n, 4) in which a tag of this size could go, nearest first, all inside the
    picture."""
    w, h = box
    angles = np.pi / 2 + 2 * np.pi * np.arange(_ANGLES) / _ANGLES
    rays = np.column_stack([np.cos(angles), np.sin(angles)])
    # the reach is counted from the tag's rim, so that wide tags keep clear of the joint too
    rim = 1 / np.maximum(np.abs(rays[:, 0]) / (w / 2), np.abs(rays[:, 1]) / (h / 2))
    reach = np.asarray(_REACHES)
    middles = (
        np.asarray(spot)
        + (reach[:, None, None] - 4.0) * rays[None]
        + rim[None, :, None] * rays[None]
    ).reshape(-1, 2)
    half = np.array([w / 2, h / 2])
    boxes = np.hstack([middles - half, middles + half])
    inside = (
        (boxes[:, 0] >= GAP)
        & (boxes[:, 1] >= GAP)
        & (boxes[:, 2] <= width - GAP)
        & (boxes[:, 3] <= height - GAP)
    )
    if np.any(inside):
        return boxes[inside]
    return _everywhere(w, h, spot, width, height)


def _everywhere(w: float, h: float, spot: Point, width: float, height: float) -> FloatArray:
    xs = np.arange(GAP, max(GAP, width - w - GAP) + 1e-9, max(w / 2, 1.0))
    ys = np.arange(GAP, max(GAP, height - h - GAP) + 1e-9, max(h / 2, 1.0))
    low = np.array([(x, y) for x in xs for y in ys])
    whole = np.array([w, h])
    away = np.linalg.norm(low + whole / 2 - np.asarray(spot), axis=1)
    low = low[np.argsort(away, kind="stable")]
    return np.hstack([low, low + whole])


def _cross(a: FloatArray, b: FloatArray, p: FloatArray, q: FloatArray) -> FloatArray:
    """1 where the segment a-b crosses the segment p-q, else 0; the arrays (..., 2) broadcast."""

    def side(one: FloatArray, other: FloatArray, point: FloatArray) -> FloatArray:
        run, away = other - one, point - one
        return np.asarray(run[..., 0] * away[..., 1] - run[..., 1] * away[..., 0])

    apart = (side(a, b, p) * side(a, b, q) < 0) & (side(p, q, a) * side(p, q, b) < 0)
    return apart.astype(float)


def _through(a: FloatArray, b: FloatArray, boxes: FloatArray) -> FloatArray:
    """1 where the segment a-b (..., 2) runs through a box (..., 4), by its two diagonals."""
    starts = np.stack([boxes[..., :2], boxes[..., [0, 3]]])
    ends = np.stack([boxes[..., 2:], boxes[..., [2, 1]]])
    return np.asarray(_cross(a, b, starts, ends).max(axis=0))


def place_tags(
    wanted: Sequence[tuple[str, Point]],
    width: float,
    height: float,
    *,
    size: float = 8.0,
    keep_clear: Iterable[Point] = (),
    blocked: Sequence[Box] = (),
    discs: FloatArray | None = None,
    wider: Mapping[str, float] | None = None,
    reaching: Mapping[str, float] | None = None,
    shun: float = 1.0,
    sides: Mapping[str, int] | None = None,
) -> tuple[Tag, ...]:
    """Places for the labels of joints (words, place), in the order given.

    Tags lie inside the picture and cover no joint of `wanted` or `keep_clear`, no box of
    `blocked` and no other tag. A label for which no such place is left is left out. Tags
    also shun `discs` (n, 3: x, y, radius), small ones most, where another place is about as
    near. `wider` is what a tag needs for signs beside its words, `reaching` how far from its
    joint a mark reaches that is larger than a dot; `shun` how much tags shun discs. `sides` says
    of which tags the middle should be above their joint (1) or below it (-1).
    """
    if not wanted:
        return ()
    dots = np.array([*(spot for _, spot in wanted), *keep_clear], dtype=float)
    radii = np.full(len(dots), TIE_RADIUS)
    for i, (text, _) in enumerate(wanted):
        radii[i] = (reaching or {}).get(text, TIE_RADIUS)
    dot_boxes = np.hstack([dots - radii[:, None], dots + radii[:, None]])
    dot_boxes = np.vstack([dot_boxes, np.array(blocked, dtype=float).reshape(-1, 4)])
    choices, costs = [], []
    sizes = [tag_size(text, size) for text, _ in wanted]
    if wider:
        sizes = [
            (w + wider.get(text, 0.0), h) for (w, h), (text, _) in zip(sizes, wanted, strict=True)
        ]
    for (text, spot), box in zip(wanted, sizes, strict=True):
        boxes = _candidates(box, spot, width, height)
        boxes = boxes[_clear(boxes, dot_boxes)]
        if not len(boxes):
            grid = _everywhere(*box, spot, width, height)
            boxes = grid[_clear(grid, dot_boxes)]
        choices.append(boxes)
        middles = (boxes[:, :2] + boxes[:, 2:]) / 2
        away = np.linalg.norm(middles - np.asarray(spot), axis=1)
        cost = away + OVER_A_JOINT * _covered(middles, spot, dots, radii)
        cost += NEARER_ANOTHER * _nearer_another(boxes, spot, dots)
        side = (sides or {}).get(text, 0)  # level with its joint it is on neither
        cost += WRONG_SIDE * ((middles[:, 1] - spot[1]) * side < abs(side))
        if discs is not None and len(discs):
            cost += shun * _shun(boxes, discs)
        costs.append(cost)
    return _settle(wanted, choices, costs, size, sizes, (width, height), dot_boxes)


def _shun(boxes: FloatArray, discs: FloatArray) -> FloatArray:
    """What it costs each box (n, 4) to cover discs (m, 3), by its corners and middle."""
    left, low, right, high = boxes.T
    xs = np.stack([left, left, right, right, (left + right) / 2], axis=1)
    ys = np.stack([low, high, low, high, (low + high) / 2], axis=1)
    x, y, radius = discs.T
    inside = (xs[:, :, None] - x) ** 2 + (ys[:, :, None] - y) ** 2 < radius**2
    # to cover a large body costs little; to cover most of a small one costs much
    price = np.clip(100.0 / np.maximum(radius, 1.0), 0.5, 12.0)
    return np.asarray(np.sum(np.max(inside * price, axis=2), axis=1))


def _covered(middles: FloatArray, spot: Point, dots: FloatArray, radii: FloatArray) -> FloatArray:
    """How many other joints the leader to each of `middles` runs over."""
    start = np.asarray(spot)
    run = middles - start
    length = np.maximum(np.sum(run**2, axis=1), 1e-9)
    apart = np.linalg.norm(dots - start, axis=1) > 0.5
    others = dots[apart]
    if not len(others):
        return np.zeros(len(middles))
    share = np.clip(((others[None] - start) @ run[:, :, None])[..., 0] / length[:, None], 0, 1)
    nearest = start + share[..., None] * run[:, None]
    return np.asarray(
        np.sum(np.linalg.norm(nearest - others[None], axis=2) < radii[apart], axis=1)
    ).astype(float)


def _nearer_another(boxes: FloatArray, spot: Point, dots: FloatArray) -> FloatArray:
    """1 where a tag in one of `boxes` (n, 4) is nearer to another joint than to its own, else 0."""
    start = np.asarray(spot)
    others = dots[np.linalg.norm(dots - start, axis=1) > 0.5]
    if not len(others):
        return np.zeros(len(boxes))

    def gap(points: FloatArray) -> FloatArray:
        low, high = boxes[:, None, :2] - points, points - boxes[:, None, 2:]
        return np.asarray(np.linalg.norm(np.maximum(np.maximum(low, high), 0.0), axis=2))

    nearer = gap(others[None]).min(axis=1) < gap(start[None, None])[:, 0]
    return np.asarray(nearer, float)


def _settle(
    wanted: Sequence[tuple[str, Point]],
    choices: list[FloatArray],
    costs: list[FloatArray],
    size: float,
    sizes: Sequence[tuple[float, float]],
    picture: tuple[float, float],
    dot_boxes: FloatArray,
) -> tuple[Tag, ...]:
    taken: dict[int, FloatArray] = {}

    spots = np.array([spot for _, spot in wanted], dtype=float)

    def best(i: int) -> FloatArray | None:
        boxes, cost = choices[i], costs[i].copy()
        if not len(boxes):
            return None
        others = [j for j in taken if j != i]
        if others:
            cost += _trouble(spots[i], boxes, spots[others], np.array([taken[j] for j in others]))
        at = int(np.argmin(cost))
        return boxes[at] if np.isfinite(cost[at]) else None

    def place(rows: Iterable[int]) -> bool:
        """Put each where it is best now; whether any moved."""
        moved = False
        for i in rows:
            found = best(i)
            if found is not None:
                moved |= i not in taken or not np.array_equal(taken[i], found)
                taken[i] = found
        return moved

    place(sorted(range(len(wanted)), key=lambda i: (len(choices[i]), i)))
    for _ in range(3):
        if not place(range(len(wanted))):
            break
    for i in range(len(wanted)):
        if i in taken:
            continue
        grid = _everywhere(*sizes[i], wanted[i][1], *picture)
        held = np.vstack([dot_boxes, *(box[None] for box in taken.values())])
        clear = grid[_clear(grid, held)]
        if len(clear):
            taken[i] = clear[0]
    return tuple(
        Tag(text, spot, _box(taken[i]), size) for i, (text, spot) in enumerate(wanted) if i in taken
    )


def _trouble(
    spot: FloatArray, boxes: FloatArray, other_spots: FloatArray, other_boxes: FloatArray
) -> FloatArray:
    """What it costs a tag to be in each of `boxes` (n, 4) beside tags that are placed (k, ...):
    leaders that cross one another or run through a tag cost, tags that touch cannot be."""
    mine, theirs = boxes[:, None], other_boxes[None]
    my_middle = (mine[..., :2] + mine[..., 2:]) / 2
    their_middle = (theirs[..., :2] + theirs[..., 2:]) / 2
    start, their_start = spot[None, None], other_spots[None]
    cost = (
        14.0 * _cross(start, my_middle, their_start, their_middle)
        + 10.0 * _through(start, my_middle, theirs)
        + 10.0 * _through(their_start, their_middle, mine)
    )
    cost += STACKED * _touch(mine, theirs, STACKED_PT)
    cost[_touch(mine, theirs)] = np.inf
    return np.asarray(np.sum(cost, axis=1))


def _box(box: FloatArray) -> Box:
    left, low, right, high = (round(float(value), 3) for value in box)
    return (left, low, right, high)
