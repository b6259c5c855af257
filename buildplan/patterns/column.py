"""The column: stacked rings, each turned by half a step, with a zigzag ring between two.

The band between two rings is that of an antiprism, all triangles, so that a column is stiff.
"""

from __future__ import annotations

from collections.abc import Mapping

from buildplan.framework.chain_roles import RING, ZIGZAG
from buildplan.framework.chained import Run, build_chained
from buildplan.framework.model import BalloonType, Framework
from buildplan.patterns.keys import Column
from buildplan.patterns.pattern_joints import column_joint


def build_column(name: str, balloons: Mapping[str, BalloonType], column: Column) -> Framework:
    """Build the framework of a column, from the foot up."""
    around = range(column.around)
    runs = []
    for ring in range(column.rings):
        joints = [column_joint(ring, place) for place in around]
        runs.append(Run(RING, None, joints, column.ring, closed=True))
        if ring:
            zigzag = [
                joint
                for place in around
                for joint in (column_joint(ring - 1, place), column_joint(ring, place))
            ]
            runs.append(Run(ZIGZAG, None, zigzag, column.between, closed=True))
    foot = [column_joint(0, place) for place in around]
    return build_chained(name, balloons, runs, column.lock, foot)
