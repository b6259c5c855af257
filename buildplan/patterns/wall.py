"""The wall: level rows and uprights in a grid, in one layer or two, with openings left out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from buildplan.framework.chain_roles import BETWEEN, ROW, UPRIGHT, Layer
from buildplan.framework.chained import Run, build_chained
from buildplan.framework.model import BalloonType, Framework
from buildplan.patterns.keys import Wall
from buildplan.patterns.pattern_joints import in_opening, wall_has, wall_joint

Place = tuple[int, int]  # row from the floor, place from the left


def _unbroken(wall: Wall, line: Sequence[Place]) -> Iterator[list[Place]]:
    """The stretches of a line of joints that no opening breaks."""
    run: list[Place] = []
    for row, place in line:
        middle = run and in_opening(wall, (run[-1][0] + row) / 2, (run[-1][1] + place) / 2)
        if run and (middle or not wall_has(wall, row, place)):
            yield run
            run = []
        if wall_has(wall, row, place):
            run.append((row, place))
    yield run


def build_wall(name: str, balloons: Mapping[str, BalloonType], wall: Wall) -> Framework:
    """Build the framework of a wall: rows from the floor up, uprights from the left, the front
    layer first, and then what ties the layers."""
    rows = [[(row, place) for place in range(wall.across + 1)] for row in range(wall.up + 1)]
    columns = [[(row, place) for row in range(wall.up + 1)] for place in range(wall.across + 1)]
    runs: list[Run] = []
    for layer in range(wall.layers):
        side = None if wall.layers == 1 else tuple(Layer)[layer]
        for role, lines, balloon in (
            (ROW, rows, wall.row),
            (UPRIGHT, columns, wall.upright),
        ):
            for line in lines:
                for run in _unbroken(wall, line):
                    joints = [wall_joint(wall, layer, row, place) for row, place in run]
                    runs.append(Run(role, side, joints, balloon, closed=False))
    if wall.layers == 2 and wall.between is not None:
        for row, place in (place for line in rows for place in line):
            if wall_has(wall, row, place):
                ends = [wall_joint(wall, layer, row, place) for layer in (0, 1)]
                runs.append(Run(BETWEEN, None, ends, wall.between, closed=False))
    foot = [
        wall_joint(wall, layer, 0, place)
        for layer in range(wall.layers)
        for place in range(wall.across + 1)
        if wall_has(wall, 0, place)
    ]
    return build_chained(name, balloons, runs, wall.lock, foot)
