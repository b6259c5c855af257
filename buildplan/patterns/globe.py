"""The globe: an icosahedron with each edge in two, pushed out to a sphere; two lengths."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import combinations

import numpy as np
from pydantic import Field

from buildplan.framework.listed import build_listed
from buildplan.framework.model import BalloonType, Framework
from buildplan.framework.naming import numbered
from buildplan.language.messages import mark
from buildplan.patterns.extra_keys import Extras, extras_field
from buildplan.patterns.pattern import (
    EXTRA,
    LOCK,
    AllOf,
    Given,
    Joints,
    JointsOf,
    Making,
    Pattern,
    Uncoloured,
    link,
)
from buildplan.patterns.pattern_joints import first_to_last
from buildplan.patterns.solid import corners_and_edges, level_by_level
from buildplan.source.values import FileModel, Key

GLOBE_JOINTS = 42  # 12 of the icosahedron and the middles of its 30 edges


class Globe(FileModel):
    """A globe of 80 triangles: an icosahedron with each edge in two, pushed out to a sphere.
    Two lengths, shorter about the twelve points where five balloons meet."""

    long: Key = Field(description=mark("the link balloon of the longer struts"))
    short: Key = Field(
        description=mark(
            "the link balloon of the shorter struts, 0.884 times as long "
            "(sized to 7 where the long is sized to 8)"
        )
    )
    lock: Key = Field(description=mark("the round balloon of the locks"))
    extra: Extras = extras_field()


def globe_edges() -> tuple[int, list[tuple[int, int, bool]]]:
    """How many joints a globe has, and its struts: two joints, and whether it is a long one.

    Joints are numbered level by level from a pole, where five balloons meet, to the other.

    The long struts join the middles of two edges of a face, the short ones a corner and the
    middle of an edge: 0.618 and 0.546 of the radius (two-frequency geodesic sphere).
    """
    corners, edges = corners_and_edges("icosahedron")
    middle = {edge: len(corners) + i for i, edge in enumerate(edges)}
    struts = [(end, middle[edge], False) for edge in edges for end in edge]
    for a, b, c in combinations(range(len(corners)), 3):
        sides = [(a, b), (b, c), (a, c)]
        if all(side in middle for side in sides):
            struts += [(middle[one], middle[two], True) for one, two in combinations(sides, 2)]
    places = [*corners, *((corners[i] + corners[j]) / 2 for i, j in edges)]
    ordered = level_by_level(np.array(places), [strut[:2] for strut in struts], [0])
    number = {joint: i for i, joint in enumerate(ordered)}
    renumbered = ((number[i], number[j], long) for i, j, long in struts)
    return len(ordered), sorted((min(i, j), max(i, j), long) for i, j, long in renumbered)


def build_globe(name: str, balloons: Mapping[str, BalloonType], globe: Globe) -> Framework:
    """Build the framework of a globe, which stands on the five balloons about its first joint."""
    count, struts = globe_edges()
    joints = numbered(count)
    listed = [(joints[i], joints[j], globe.long if long else globe.short) for i, j, long in struts]
    return build_listed(name, balloons, joints, listed, globe.lock, standing=joints[:1])


def _joints(given: Given, of_part: JointsOf) -> Joints | None:
    return first_to_last(numbered(GLOBE_JOINTS))


def _built(globe: Globe, making: Making) -> Framework:
    return build_globe(making.name, making.balloons, globe)


A_STRUT = mark("a strut")
PATTERN = Pattern(
    name="globe",
    about=mark("a globe of triangles"),
    keys=Globe,
    uses=(link("long", A_STRUT), link("short", A_STRUT), LOCK, EXTRA),
    joints=_joints,
    build=_built,
    colours=Uncoloured(
        mark("a globe has no long chains to lay a colour pattern along"),
        mark("name other balloons in long and short"),
    ),
    more_cells=AllOf(mark("a globe has 80 triangles, no more and no fewer")),
    extra_as="long",
)
