"""Local cutaway: nothing that stands is drawn over new work.

What stands in front of new work, or of a joint where hands work, is cut back to a narrow gap
round it. Where it was cut its edge is a thin dashed line; what little is left of a body that was
mostly in front is left out.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import shapely
from shapely.geometry import MultiPolygon, Point, Polygon
from shapely.geometry.base import BaseGeometry

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.bodies import Bodies
from buildplan.drawing.camera import PaperView
from buildplan.drawing.marks import Ink, Mark, Polyline
from buildplan.drawing.outlines import outline, quantised_aspect
from buildplan.drawing.visibility import LEVEL_M

# Bare paper round new work, and round a joint, in points.
GAP_PT, JOINT_GAP_PT = 1.6, 4.5
# Of a body that is cut, less than this share is not worth drawing.
WORTH_LEFT = 0.34
# Steps of a quarter of a round body's outline.
ROUND_STEPS = 16
CUT_LINE = Ink(stroke="#7C8B99", width=0.5, dash=(1.6, 1.4))


@dataclass(frozen=True, eq=False)
class CutBody:
    """What is left of a body on the page: its pieces, each with the lines along its own outline
    and along its cuts."""

    pieces: tuple[Polygon, ...]
    own_edge: tuple[FloatArray, ...]
    cut_edge: tuple[FloatArray, ...]

    @property
    def whole(self) -> BaseGeometry:
        """All its pieces."""
        return shapely.union_all(self.pieces)

    def marks(self, fill: str, line: str, width: float) -> list[Mark]:
        """The pieces, filled; their outlines whole, their cuts dashed."""
        marks: list[Mark] = [
            Polyline(_points(np.asarray(piece.exterior.coords)), Ink(fill=fill), closed=True)
            for piece in self.pieces
        ]
        own = Ink(stroke=line, width=width)
        marks += [Polyline(_points(edge), own) for edge in self.own_edge]
        marks += [Polyline(_points(edge), CUT_LINE) for edge in self.cut_edge]
        return marks


def silhouettes(bodies: Bodies, view: PaperView, lengths: Sequence[float]) -> list[Polygon]:
    """The outline of each body on the page, of links with their true `lengths` over their
    diameters."""
    first, _ = view.place(bodies.first)
    second, _ = view.place(bodies.second)
    centre, _ = view.place(bodies.centre)
    true = np.linalg.norm(bodies.second - bodies.first, axis=1) * view.scale
    radii = bodies.radius * view.scale
    rounds = shapely.buffer(shapely.points(centre), radii, quad_segs=ROUND_STEPS)
    found: list[Polygon] = []
    for i, radius in enumerate(radii.tolist()):
        run = second[i] - first[i]
        drawn = float(np.hypot(*run))
        if not bodies.is_link[i] or drawn < 1e-6:
            found.append(rounds[i])
            continue
        aspect = quantised_aspect(lengths[i], drawn / float(true[i]))
        upper = outline(lengths[i], aspect) * 2 * radius
        whole = np.vstack([upper, upper[-2:0:-1] * np.array([1.0, -1.0])])
        along = run / drawn
        turned = whole @ np.array([along, [-along[1], along[0]]]) + (first[i] + second[i]) / 2
        found.append(shapely.polygons(turned).buffer(0))
    return found


def cut_away(
    bodies: Bodies, view: PaperView, outlines: Sequence[Polygon], ties_m: FloatArray
) -> dict[int, CutBody]:
    """What is left of each body, by row, that stands already and would lie over new work or a
    joint of `ties_m` (k, 3)."""
    _, depth = view.place(bodies.centre)
    spots, spot_depth = view.place(ties_m)
    new = np.flatnonzero(bodies.is_new)
    if not len(new) and not len(spots):
        return {}
    kept_clear: list[BaseGeometry] = [outlines[i].buffer(GAP_PT) for i in new.tolist()]
    kept_clear += [Point(spot).buffer(JOINT_GAP_PT) for spot in spots]
    at_depth = np.concatenate([depth[new], spot_depth])
    tree = shapely.STRtree(kept_clear)
    found = {}
    for i in np.flatnonzero(~bodies.is_new).tolist():
        touched = tree.query(outlines[i], predicate="intersects")
        behind = [kept_clear[j] for j in touched if at_depth[j] < depth[i] + LEVEL_M]
        if behind:
            found[i] = _cut(outlines[i], shapely.union_all(behind))
    return found


def _cut(body: Polygon, clear: BaseGeometry) -> CutBody:
    left = body.difference(clear)
    pieces = list(left.geoms) if isinstance(left, MultiPolygon) else [left]
    least = WORTH_LEFT * body.area
    pieces = [piece for piece in pieces if isinstance(piece, Polygon) and piece.area > least]
    own: list[FloatArray] = []
    cut: list[FloatArray] = []
    rim = body.exterior.buffer(0.05)
    for piece in pieces:
        own += _lines(piece.exterior.intersection(rim))
        cut += _lines(piece.exterior.difference(rim))
    return CutBody(tuple(pieces), tuple(own), tuple(cut))


def _lines(found: BaseGeometry) -> list[FloatArray]:
    """The lines in a geometry, each (n, 2), those that run on into one another in one."""
    merged = shapely.line_merge(found) if found.geom_type == "MultiLineString" else found
    parts = getattr(merged, "geoms", [merged])
    return [
        np.asarray(part.coords)
        for part in parts
        if part.geom_type == "LineString" and not part.is_empty
    ]


def _points(line: FloatArray) -> tuple[tuple[float, float], ...]:
    return tuple((round(float(x), 2), round(float(y), 2)) for x, y in line)
