"""Wind: dynamic pressure on the drawn area, against the weight on the foot.

q = 1/2 rho v^2 (ASCE 7 writes 0.613 v^2 in N/m2 for rho = 1.225 kg/m3); force q Cd A at the middle
of the area; it tips the piece about an edge of its foot when its moment beats the weight's:
v = sqrt(W b / (1/2 rho Cd A h)). Speeds are those of the gust itself, not of a mean wind.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from buildplan.shape.bodies import LinkBodies
from buildplan.shape.model import FloatArray, IntArray
from buildplan.shape.standing import hull_corners

GRID = 400  # squares along the longer side of a drawn outline, at least
FINER = 2  # squares in the radius of the smallest body, at least
COMPASS = 24  # wind directions looked at

# Lowest speed of each force, m/s at 10 m over open flat land (WMO Beaufort scale).
BEAUFORT_FROM_M_PER_S = (0.0, 0.3, 1.6, 3.4, 5.5, 8.0, 10.8, 13.9, 17.2, 20.8, 24.5, 28.5, 32.7)


def beaufort(speed_m_per_s: float) -> int:
    """Beaufort force of a mean wind."""
    rounded = round(speed_m_per_s, 1)
    return sum(rounded >= start for start in BEAUFORT_FROM_M_PER_S) - 1


def dynamic_pressure_pa(speed_m_per_s: float, air_density: float) -> float:
    """Pressure of air that is brought to rest."""
    return 0.5 * air_density * speed_m_per_s**2


def tip_speed_m_per_s(
    weight_n: float,
    reach_m: float,
    air_density: float,
    drag: float,
    area_m2: float,
    height_m: float,
) -> float:
    """Gust at which drag's moment about an edge equals the weight's, `reach_m` inside the edge."""
    moment = dynamic_pressure_pa(1.0, air_density) * drag * area_m2 * height_m
    return float(np.sqrt(max(weight_n * reach_m, 0.0) / moment))


@dataclass(frozen=True)
class WindOutline:
    """The filled outline of a piece seen along the wind: its area and the height of its middle."""

    area_m2: float
    height_m: float


def outline_towards(bodies: LinkBodies, positions_m: FloatArray, azimuth: float) -> WindOutline:
    """The piece's outline for a wind blowing level along (cos azimuth, sin azimuth) in x and z.

    Each body is a spheroid whose outline is an ellipse; the union is counted on a grid.
    """
    across = np.array([-np.sin(azimuth), 0.0, np.cos(azimuth)])
    screen = np.stack([across, [0.0, 1.0, 0.0]])
    middle = bodies.midpoints_m(positions_m) @ screen.T
    axis = bodies.axes(positions_m) @ screen.T
    radius, half = bodies.radius_m, bodies.length_m / 2
    # the outline of {x' Q x <= 1} has the form matrix (S Q^-1 S')^-1, S the screen's two axes
    spread = radius[:, None, None] ** 2 * np.eye(2) + (half**2 - radius**2)[
        :, None, None
    ] * np.einsum("si,sj->sij", axis, axis)
    form = np.linalg.inv(spread)
    reach = np.sqrt(np.stack([spread[:, 0, 0], spread[:, 1, 1]], axis=1))
    low, high = (middle - reach).min(axis=0), (middle + reach).max(axis=0)
    # however long the piece is, no balloon falls between the middles of squares
    step = min(float((high - low).max()) / GRID, float(bodies.radius_m.min()) / FINER)
    columns, rows = (np.ceil((high - low) / step).astype(int)).tolist()
    filled = _filled((middle - low) / step, reach / step, form * step**2, columns, rows)
    area = int(filled.sum())
    heights = low[1] + (np.arange(rows) + 0.5) * step
    return WindOutline(area * step**2, float(filled @ heights) / area)


def _filled(
    middle: FloatArray, reach: FloatArray, form: FloatArray, columns: int, rows: int
) -> IntArray:
    """How many squares of each row of a grid ellipses fill, (rows,): those whose middle is in one.

    `middle` (k, 2) and `reach` (k, 2) of the ellipses are in squares, `form` (k, 2, 2) are their
    matrices. Along a row an ellipse fills those between two ends: each is a step up and a step
    down, and what is above zero once they are added up is filled.
    """
    first = np.maximum((middle[:, 1] - reach[:, 1]).astype(int), 0)
    last = np.minimum((middle[:, 1] + reach[:, 1]).astype(int) + 1, rows)
    count = last - first
    which = np.repeat(np.arange(len(middle)), count)
    row = np.arange(len(which)) - np.repeat(np.cumsum(count) - count, count) + first[which]
    up = row + 0.5 - middle[which, 1]
    (xx, xy), (_, yy) = form[which].transpose(1, 2, 0)
    inside = (xy * up) ** 2 - xx * (yy * up**2 - 1)
    half_run = np.sqrt(np.maximum(inside, 0.0)) / xx
    centre = middle[which, 0] - xy * up / xx
    start = np.maximum(np.ceil(centre - half_run - 0.5).astype(int), 0)
    end = np.minimum(np.floor(centre + half_run - 0.5).astype(int) + 1, columns)
    crossed = (inside >= 0) & (end > start)
    row, start, end = row[crossed], start[crossed], end[crossed]
    wide = columns + 1
    steps = np.bincount(row * wide + start, minlength=rows * wide).astype(int)
    steps -= np.bincount(row * wide + end, minlength=rows * wide)
    return np.asarray((np.cumsum(steps.reshape(rows, wide), axis=1) > 0).sum(axis=1))


@dataclass(frozen=True)
class WorstWind:
    """The direction and the edge of the foot for which the least gust tips the piece.

    `reach_m` is how far inside that edge the centre of mass is, `moment_m3` the outline's area
    times its height, as far as the wind is square to the edge.
    """

    edge_m: FloatArray
    reach_m: float
    moment_m3: float


def worst_wind(
    bodies: LinkBodies, positions_m: FloatArray, foot_m: FloatArray, centre_m: FloatArray
) -> WorstWind:
    """Look round the compass, and square to each edge of the foot."""
    corners = hull_corners(foot_m)
    sides = np.roll(corners, -1, axis=0) - corners
    lengths = np.linalg.norm(sides, axis=1)
    outward = np.column_stack([sides[:, 1], -sides[:, 0]]) / lengths[:, None]
    reach = np.einsum("ij,ij->i", outward, corners - centre_m[[0, 2]])
    # half the compass: from the other side the outline is the same
    half = np.arange(COMPASS // 2) * 2 * np.pi / COMPASS
    outlines = [outline_towards(bodies, positions_m, float(azimuth)) for azimuth in half]
    worst: WorstWind | None = None
    least = np.inf
    for point in range(COMPASS):
        outline = outlines[point % len(outlines)]
        azimuth = 2 * np.pi * point / COMPASS
        wind = np.array([np.cos(azimuth), np.sin(azimuth)])
        for k in range(len(corners)):
            square = float(outward[k] @ wind)
            if square < 0.05:
                continue
            moment = outline.area_m2 * outline.height_m * square
            resistance = float(max(reach[k], 0.0)) / moment
            if resistance < least * (1 - 1e-6):
                least = resistance
                edge = np.stack([corners[k], corners[(k + 1) % len(corners)]])
                worst = WorstWind(edge, float(reach[k]), moment)
    assert worst is not None, "some wind blows across some edge"
    return worst
