"""Holes in an outline, and the opening that a closed tube has of its own.

A tube follows the outer edge, and its inner chains leave one opening. Where the outline is a band
(the letter O, a ring) links of the right gauge make the tube as wide as the band, so that its
opening is the hole; any other hole is left out.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy.spatial import cKDTree
from shapely import Polygon, polygons, unary_union

from buildplan.fitting.cells import EDGE_AT_KNOT
from buildplan.fitting.measuring import BRIDGED, Closeness, bodies_seen
from buildplan.fitting.outline import ComplexArray, FloatArray, Outline, evenly
from buildplan.framework.chain_roles import INNER
from buildplan.framework.model import Framework
from buildplan.source.lengths import TIE_TO_TIE_PER_GAUGE

SAMPLES = 360
# how much the width of a band may differ along it, as standard deviation over mean
UNEVEN = 0.25
# A tube's width as it is seen, over its gauge: a section, and half a body beyond its joints on
# either side.
WIDTH_PER_GAUGE = TIE_TO_TIE_PER_GAUGE + EDGE_AT_KNOT


@dataclass(frozen=True)
class Inside:
    """What lies within a piece: its opening, laid on the outline, and the overlap of piece and
    outline with the opening and the holes counted as empty."""

    opening: Polygon
    overlap: float


def band_width_m(outline: Outline) -> float | None:
    """The mean distance from the outer edge to the hole and back where an outline is a band: it
    has one hole, about as far from the edge everywhere. None for any other outline."""
    if len(outline.holes) != 1:
        return None
    outer, inner = (_pairs(evenly(line, SAMPLES)) for line in (outline.points, outline.holes[0]))
    apart = np.concatenate([cKDTree(inner).query(outer)[0], cKDTree(outer).query(inner)[0]])
    even = float(apart.std()) <= UNEVEN * float(apart.mean())
    return float(apart.mean()) if even else None


def band_gauge_m(width_m: float) -> float:
    """The gauge of links whose tube is as wide as a band."""
    return width_m / WIDTH_PER_GAUGE


def inside_of(
    framework: Framework, places: ComplexArray, close: Closeness, outline: Outline
) -> Inside:
    """What lies within the piece whose joints are at `places` (joints,), laid on the outline."""
    number = {joint: i for i, joint in enumerate(framework.joints)}
    inner = next(long.chain for long in framework.chains if long.role == INNER)
    rows = [number[joint] for joint in inner.joints]
    within = Polygon(np.column_stack([places[rows].real, places[rows].imag])).buffer(0)
    links = [framework.link[link] for link in inner.links]
    links += [framework.link[link] for brace in framework.braces for link in brace.links]
    solid = unary_union(polygons(bodies_seen(framework, places, links)))
    reach = BRIDGED / 2 * close.link_m
    opened = within.difference(solid).buffer(-reach).buffer(reach)
    parts = [part for part in getattr(opened, "geoms", [opened]) if not part.is_empty]
    opening = max(parts, key=lambda part: part.area, default=Polygon())
    piece = close.silhouette.difference(opening)
    target = outline.region_with_holes
    overlap = piece.intersection(target).area / piece.union(target).area
    return Inside(opening, float(overlap))


def _pairs(points: ComplexArray) -> FloatArray:
    return np.column_stack([points.real, points.imag])
