"""How close a solved piece comes to an outline.

What is compared with the outline is the region that the piece's outer silhouette encloses: the
outer edge of all its bodies as seen from the front, the hole within filled. Dents narrower than a
link between two neighbouring balloons are bridged, as the eye does. Overlap is the area of the
intersection over that of the union; the largest distance is Hausdorff's, between the two edges,
in lengths of a long link.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from scipy.spatial import cKDTree
from shapely import (
    Polygon,
    contains_xy,
    distance,
    get_coordinates,
    polygons,
    prepare,
    unary_union,
)
from shapely import points as shapely_points
from shapely.affinity import affine_transform

from buildplan.fitting.outline import ComplexArray, FloatArray, evenly, ring_points
from buildplan.framework.model import Framework, Link

# what counts as a good fit
OVERLAP_GOAL, FARTHEST_GOAL = 0.88, 0.6
HEIGHT_WITHIN = 0.03  # of the height asked for: a piece farther from it is another one
PER_LINK_FARTHER = 0.1  # what a link of largest distance weighs, in overlap
BODY_POINTS = 20
EDGE_SAMPLES = 360
BRIDGED = 0.5  # half the width of a dent that is bridged, in links
ROUNDS, EVERY = 5, 3  # of laying the silhouette on the outline, each nearer; by which samples
_CIRCLE = np.exp(2j * np.pi * np.arange(BODY_POINTS) / BODY_POINTS)


@dataclass(frozen=True)
class Closeness:
    """How close a piece comes.

    `overlap` is 1 for a perfect fit; `farthest` is in lengths of a long link, `link_m`.
    `silhouette` is the piece's, laid on the outline: turned by `turned` (a unit complex number),
    then shifted by `shifted`.
    """

    overlap: float
    farthest: float
    link_m: float
    silhouette: Polygon
    turned: complex
    shifted: complex

    @property
    def farthest_m(self) -> float:
        """The largest distance in metres."""
        return self.farthest * self.link_m

    @property
    def score(self) -> float:
        """Lower is better: what is not covered, a tenth of the largest distance, and a little more
        of either beyond the goals."""
        short = 0.3 * max(0.0, OVERLAP_GOAL - self.overlap)
        far = 0.05 * max(0.0, self.farthest - FARTHEST_GOAL)
        return 1 - self.overlap + PER_LINK_FARTHER * self.farthest + short + far


def farthest_at(shape: Polygon, target: Polygon) -> tuple[float, float]:
    """Where the edges of two regions are farthest from one another: the point of the one that is
    farthest from the other."""
    edges = [Polygon(region.exterior).exterior for region in (shape, target)]
    found: list[tuple[float, float, float]] = []
    for one, other in (edges, edges[::-1]):
        points = get_coordinates(one.segmentize(one.length / EDGE_SAMPLES))
        away = distance(other, shapely_points(points))
        x, y = points[int(away.argmax())]
        found.append((float(away.max()), float(x), float(y)))
    return max(found)[1:]


def silhouette(
    framework: Framework, front: ComplexArray, link_m: float, bridged: float = BRIDGED
) -> Polygon:
    """The filled, bridged outer silhouette of all bodies of a piece, seen along its depth.

    `front` (joints,) are the joints' places in the plane of the view; dents twice as wide as
    `bridged`, in links, are left open.
    """
    number = {joint: i for i, joint in enumerate(framework.joints)}
    outer = framework.chains[0].chain
    rows = [number[joint] for joint in outer.joints]
    within = Polygon(_pairs(front[rows])).buffer(0)
    prepare(within)
    reach = bridged * link_m
    bodies = bodies_seen(framework, front, framework.links)
    # front and back of a tube look alike from the front, and are taken once
    once = np.unique(bodies[:, ::5].round(5).reshape(len(bodies), -1), axis=0, return_index=True)[1]
    # what lies within the ring of joints altogether adds nothing
    seen = bodies[once]
    beyond = ~contains_xy(within, seen[..., 0], seen[..., 1]).all(axis=1)
    whole = unary_union([within, *polygons(seen[beyond])]).buffer(reach, 8).buffer(-reach, 8)
    if whole.geom_type != "Polygon":
        whole = max(whole.geoms, key=lambda part: part.area)
    return Polygon(whole.exterior)


def bodies_seen(framework: Framework, front: ComplexArray, links: Sequence[Link]) -> FloatArray:
    """The bodies of links as they are seen: ellipses as points, (links, points, 2).

    A spheroid of radius r and half length h whose axis is seen as long as s of itself is an ellipse
    of the half axes r and sqrt(r^2 (1 - s^2) + h^2 s^2): one seen end on is a circle.
    """
    number = {joint: i for i, joint in enumerate(framework.joints)}
    ends = np.array([(number[link.start], number[link.finish]) for link in links])
    radius = np.array([framework.balloons[link.balloon].gauge_m / 2 for link in links])
    a, b = front[ends[:, 0]], front[ends[:, 1]]
    half = np.array([framework.balloons[link.balloon].tie_to_tie_m / 2 for link in links])
    shown = np.abs(b - a) / 2
    axis = np.where(shown > 1e-9, (b - a) / 2 / np.maximum(shown, 1e-9), 1.0)
    turned_away = 1 - np.minimum(shown / half, 1.0) ** 2
    along = axis * np.sqrt(radius**2 * turned_away + shown**2)
    across = 1j * radius * axis
    body = ((a + b) / 2)[:, None] + along[:, None] * _CIRCLE.real + across[:, None] * _CIRCLE.imag
    return np.stack([body.real, body.imag], axis=-1)


def _normals(edge: ComplexArray) -> ComplexArray:
    """Unit normals of a closed curve at its points."""
    along = np.roll(edge, -1) - np.roll(edge, 1)
    return np.asarray(1j * along / np.maximum(np.abs(along), 1e-12))


def _step(
    moving: ComplexArray, fixed: ComplexArray, normal: ComplexArray, turning: bool
) -> tuple[complex, complex]:
    """Turn and shift that bring `moving` nearest to the lines through `fixed` across `normal`:
    one step of registration by point-to-line distances (Chen and Medioni 1992)."""
    middle = moving.mean()
    slopes = np.column_stack([normal.real, normal.imag])
    if turning:
        slopes = np.column_stack([slopes, (np.conj(normal) * 1j * (moving - middle)).real])
    gap = (np.conj(normal) * (fixed - moving)).real
    x, y, *angle = np.linalg.lstsq(slopes, gap, rcond=1e-6)[0]
    turn = np.exp(1j * float(np.clip(angle[0], -0.2, 0.2))) if turning else 1 + 0j
    return complex(turn), complex(middle - turn * middle + x + 1j * y)


def _pairs(points: ComplexArray) -> FloatArray:
    return np.column_stack([points.real, points.imag])


@dataclass(frozen=True)
class _Goal:
    """The edge that others are laid on: its samples, a tree of them, and the normals there."""

    points: ComplexArray
    tree: cKDTree
    normals: ComplexArray


@lru_cache(maxsize=8)
def _goal_of(target: Polygon, samples: int) -> _Goal:
    points = evenly(ring_points(target), samples)
    return _Goal(points, cKDTree(_pairs(points)), _normals(points))


def closeness(
    shape: Polygon,
    target: Polygon,
    link_m: float,
    turning: bool,
    rounds: int = ROUNDS,
    samples: int = EDGE_SAMPLES,
) -> Closeness:
    """Lay `shape` on `target` by shifting it, and with `turning` by turning it a little, in so many
    rounds, and measure, by so many samples of either edge."""
    goal, edge = _goal_of(target, samples), evenly(ring_points(shape), samples)
    aim, here = target.centroid, shape.centroid
    turned, shifted = 1 + 0j, complex(aim.x - here.x, aim.y - here.y)
    some, normals = goal.points[::EVERY], goal.normals[::EVERY]
    for _ in range(rounds):
        laid = turned * edge[::EVERY] + shifted
        there = goal.tree.query(_pairs(laid))[1]
        back = cKDTree(_pairs(laid)).query(_pairs(some))[1]
        turn, shift = _step(
            np.concatenate([laid, laid[back]]),
            np.concatenate([goal.points[there], some]),
            np.concatenate([goal.normals[there], normals]),
            turning,
        )
        turned, shifted = turned * turn, shifted * turn + shift
    edge = turned * edge + shifted
    shape = affine_transform(
        shape, [turned.real, -turned.imag, turned.imag, turned.real, shifted.real, shifted.imag]
    )
    farthest = max(
        float(goal.tree.query(_pairs(edge))[0].max()),
        float(cKDTree(_pairs(edge)).query(_pairs(goal.points))[0].max()),
    )
    common = float(shape.intersection(target).area)
    overlap = common / (shape.area + target.area - common)
    return Closeness(overlap, farthest / link_m, link_m, shape, turned, shifted)
