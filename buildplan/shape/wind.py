"""Wind: dynamic pressure on the drawn area, against the weight on the foot.

q = 1/2 rho v^2 (ASCE 7 writes 0.613 v^2 in N/m2 for rho = 1.225 kg/m3); force q Cd A at the middle
of the area; it tips the piece about an edge of its foot when its moment beats the weight's:
v = sqrt(W b / (1/2 rho Cd A h)). Speeds are those of the gust itself, not of a mean wind.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from buildplan.shape.bodies import LinkBodies
from buildplan.shape.model import FloatArray
from buildplan.shape.standing import hull_corners

GRID = 400  # squares along the longer side of a drawn outline
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
    step = float((high - low).max()) / GRID
    columns, rows = (np.ceil((high - low) / step).astype(int)).tolist()
    filled = np.zeros((rows, columns), bool)
    firsts = np.maximum(((middle - reach - low) / step).astype(int), 0)
    lasts = np.minimum(((middle + reach - low) / step).astype(int) + 1, [columns, rows])
    xs, ys = (low[k] + (np.arange(count) + 0.5) * step for k, count in ((0, columns), (1, rows)))
    spots = zip(middle.tolist(), firsts.tolist(), lasts.tolist(), form.tolist(), strict=True)
    for centre, (left, foot), (right, top), ((xx, xy), (_, yy)) in spots:
        x = xs[left:right] - centre[0]
        y = (ys[foot:top] - centre[1])[:, None]
        filled[foot:top, left:right] |= xx * x**2 + 2 * xy * x * y + yy * y**2 <= 1
    count = int(filled.sum())
    heights = low[1] + (np.arange(rows) + 0.5) * step
    return WindOutline(count * step**2, float(filled.sum(axis=1) @ heights) / count)


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
