"""The labels of the joints of patterns that are not tubes: what `stand_on` may name."""

from __future__ import annotations

from collections.abc import Mapping

from buildplan.framework.naming import letters, numbered
from buildplan.patterns.keys import Column, Opening, Solid, Wall

# vertices; Euler's formula ties them to edges and faces
SOLID_JOINTS: Mapping[str, int] = {
    "tetrahedron": 4,
    "cube": 8,
    "octahedron": 6,
    "dodecahedron": 20,
    "icosahedron": 12,
    "cuboctahedron": 12,
    "truncated tetrahedron": 12,
}
GLOBE_JOINTS = 42  # 12 of the icosahedron and the middles of its 30 edges


def column_joint(ring: int, place: int) -> str:
    """The joint at `place` round ring number `ring` of a column, both from 0, from the foot."""
    return f"{letters(ring)}{place + 1}"


def column_joints(column: Column) -> list[str]:
    """The joints of a column, from the foot up."""
    return [
        column_joint(ring, place) for ring in range(column.rings) for place in range(column.around)
    ]


def wall_joint(wall: Wall, layer: int, row: int, place: int) -> str:
    """The joint of a wall in `row` from the floor and `place` from the left, both from 0."""
    return f"{letters(layer * (wall.up + 1) + row)}{place + 1}"


def row_of(joint: str, up: int) -> int:
    """The row from the floor, from 0, of a joint of a wall `up` cells high."""
    index = 0
    for letter in joint.rstrip("0123456789"):
        index = 26 * index + ord(letter) - ord("A") + 1
    return (index - 1) % (up + 1)


def _within(opening: Opening, wall: Wall, row: int, place: int) -> bool:
    """Whether a joint lies inside an opening, not on its edge; the floor is no edge."""
    above = row > opening.up or (opening.up == 0 and row == 0)
    below = row < opening.up + opening.high or (opening.up + opening.high == wall.up == row)
    return above and below and opening.along < place < opening.along + opening.wide


def wall_has(wall: Wall, row: int, place: int) -> bool:
    """Whether a wall has a joint there: none lies inside an opening."""
    return not any(_within(opening, wall, row, place) for opening in wall.openings)


def in_opening(wall: Wall, row: float, place: float) -> bool:
    """Whether the middle of a balloon, in cells, lies inside an opening (the floor is no edge)."""
    for one in wall.openings:
        bottom = -1 if one.up == 0 else one.up
        top = wall.up + 1 if one.up + one.high == wall.up else one.up + one.high
        if bottom < row < top and one.along < place < one.along + one.wide:
            return True
    return False


def wall_joints(wall: Wall) -> list[str]:
    """The joints of a wall, row by row from the floor, the front layer first."""
    return [
        wall_joint(wall, layer, row, place)
        for layer in range(wall.layers)
        for row in range(wall.up + 1)
        for place in range(wall.across + 1)
        if wall_has(wall, row, place)
    ]


def solid_joints(solid: Solid) -> list[str]:
    """The joints of a solid."""
    return numbered(SOLID_JOINTS[solid.shape])
