"""A fit measured by other means than the fitter's: hulls of the bodies in space, shapely's areas
and Hausdorff distance, and scipy's search for the best place of the one on the other."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt
from scipy.optimize import minimize
from shapely import MultiPoint, Polygon, unary_union
from shapely.affinity import translate

from buildplan.fitting.fit import Fit

POINTS = 240  # on a body, spread evenly
FINE_M = 0.005  # between two points of an edge

_number = np.arange(POINTS)
_z = 1 - 2 * (_number + 0.5) / POINTS
_angle = np.pi * (1 + 5**0.5) * _number
SPHERE = np.column_stack(
    [_z, np.sqrt(1 - _z**2) * np.cos(_angle), np.sqrt(1 - _z**2) * np.sin(_angle)]
)


@dataclass(frozen=True)
class Measured:
    """Overlap of the filled silhouette of all bodies, nothing bridged, with the outline; largest
    distance between the two edges in long links; height over that asked for; whether it stands,
    the way up it is drawn, and passes every check."""

    overlap: float
    farthest: float
    balloons: int
    height_share: float
    stands: bool
    upright: bool
    built: bool

    @property
    def as_wished(self) -> bool:
        """Whether it is right in every way but how close it comes."""
        return self.stands and self.upright and self.built and abs(self.height_share - 1) <= 0.03


def measured(fit: Fit) -> Measured:
    """A fit, measured as it stands."""
    whole = unary_union(_bodies(fit))
    parts = getattr(whole, "geoms", [whole])
    seen = Polygon(max(parts, key=_area).exterior)
    target = Polygon(np.column_stack([fit.target.real, fit.target.imag]))

    def apart(shift: npt.NDArray[np.float64]) -> float:
        moved = translate(seen, *shift)
        return -float(moved.intersection(target).area / moved.union(target).area)

    best = minimize(apart, np.zeros(2), method="Nelder-Mead", options={
        "maxfev": 80, "initial_simplex": [[0, 0], [0.01, 0], [0, 0.01]],
    })  # fmt: skip
    edges = [region.exterior.segmentize(FINE_M) for region in (translate(seen, *best.x), target)]
    return Measured(
        overlap=-float(best.fun),
        farthest=edges[0].hausdorff_distance(edges[1]) / fit.close.link_m,
        balloons=fit.balloons,
        height_share=fit.height_m / fit.outline.height_m,
        stands=fit.shape.standing.stands,
        upright=fit.as_drawn,
        built=not fit.problems,
    )


def _area(part: Polygon) -> float:
    return float(part.area)


def _bodies(fit: Fit) -> list[Polygon]:
    """The shadow of each body on the plane of the front."""
    number = {joint: i for i, joint in enumerate(fit.framework.joints)}
    shadows = []
    for link in fit.framework.links:
        one, other = (fit.shape.positions_m[number[end]] for end in (link.start, link.finish))
        radius = fit.framework.balloons[link.balloon].gauge_m / 2
        half = float(np.linalg.norm(other - one)) / 2
        along = (other - one) / (2 * half)
        frame = np.linalg.qr(np.column_stack([along, [0.3, 0.5, 0.8], [0.9, -0.2, 0.1]]))[0]
        points = (one + other) / 2 + SPHERE @ (frame * [half, radius, radius]).T
        shadows.append(MultiPoint(points[:, :2]).convex_hull)
    return shadows
