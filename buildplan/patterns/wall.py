"""The wall: level rows and uprights in a grid, in one layer or two, with openings left out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from operator import itemgetter
from typing import Annotated, Literal

from pydantic import Field, ValidationError

from buildplan.framework.chain_roles import BETWEEN, ROW, UPRIGHT, Layer
from buildplan.framework.chained import ChainRun, build_chained
from buildplan.framework.model import BalloonType, Framework
from buildplan.framework.naming import letters
from buildplan.language.messages import mark
from buildplan.patterns import colour_runs, growing
from buildplan.patterns.colour_patterns import RunPlace
from buildplan.patterns.extra_keys import Extras, extras_field
from buildplan.patterns.pattern import (
    EXTRA,
    LOCK,
    Colouring,
    Given,
    Joints,
    JointsOf,
    Making,
    Pattern,
    link,
)
from buildplan.patterns.pattern_joints import first_to_last
from buildplan.patterns.wall_checks import check_wall
from buildplan.source.suggestions import Put
from buildplan.source.values import FileModel, Key


class Opening(FileModel):
    """A rectangle of a wall that is left out, in cells."""

    along: Annotated[int, Field(ge=0, le=200)] = Field(
        description=mark("how many cells from the left it begins")
    )
    up: Annotated[int, Field(ge=0, le=200)] = Field(
        description=mark("how many cells from the floor it begins; 0 is a doorway")
    )
    wide: Annotated[int, Field(ge=1, le=200)] = Field(description=mark("how many cells wide it is"))
    high: Annotated[int, Field(ge=1, le=200)] = Field(description=mark("how many cells high it is"))


class Wall(FileModel):
    """A grid of square cells, in one layer or in two with balloons between them."""

    across: Annotated[int, Field(ge=1, le=100)] = Field(
        description=mark("how many cells wide it is")
    )
    up: Annotated[int, Field(ge=1, le=60)] = Field(description=mark("how many cells high it is"))
    layers: Literal[1, 2] = Field(description=mark("one sheet, or two with balloons between them"))
    row: Key = Field(description=mark("the link balloon of the level rows"))
    upright: Key = Field(description=mark("the link balloon of the uprights"))
    between: Key | None = Field(
        None, description=mark("the link balloon between two layers, from front to back")
    )
    lock: Key = Field(description=mark("the round balloon of the locks"))
    extra: Extras = extras_field()
    openings: Annotated[list[Opening], Field(max_length=40)] = Field(
        default_factory=list, description=mark("rectangles that are left out: windows and doorways")
    )


Spot = tuple[int, int]  # row from the floor, place from the left


def _unbroken(wall: Wall, line: Sequence[Spot]) -> Iterator[list[Spot]]:
    """The stretches of a line of joints that no opening breaks."""
    run: list[Spot] = []
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
    runs: list[ChainRun] = []
    for layer in range(wall.layers):
        side = None if wall.layers == 1 else tuple(Layer)[layer]
        for role, lines, balloon in (
            (ROW, rows, wall.row),
            (UPRIGHT, columns, wall.upright),
        ):
            for line in lines:
                for run in _unbroken(wall, line):
                    joints = [wall_joint(wall, layer, row, place) for row, place in run]
                    runs.append(ChainRun(role, side, joints, balloon, closed=False))
    if wall.layers == 2 and wall.between is not None:
        for row, place in (place for line in rows for place in line):
            if wall_has(wall, row, place):
                ends = [wall_joint(wall, layer, row, place) for layer in (0, 1)]
                runs.append(ChainRun(BETWEEN, None, ends, wall.between, closed=False))
    foot = [
        wall_joint(wall, layer, 0, place)
        for layer in range(wall.layers)
        for place in range(wall.across + 1)
        if wall_has(wall, 0, place)
    ]
    built = build_chained(name, balloons, runs, wall.lock, foot)
    return replace(built, laid=dict(_laid(balloons, wall)))


def _laid(
    balloons: Mapping[str, BalloonType], wall: Wall
) -> Iterator[tuple[str, tuple[float, float, float]]]:
    """Where each joint lies: a square grid, the front layer in front."""
    wide, tall = (balloons[key].tie_to_tie_m for key in (wall.row, wall.upright))
    deep = 0.0 if wall.between is None else balloons[wall.between].tie_to_tie_m
    for layer in range(wall.layers):
        for row in range(wall.up + 1):
            for place in range(wall.across + 1):
                if wall_has(wall, row, place):
                    joint = wall_joint(wall, layer, row, place)
                    yield joint, (place * wide, row * tall, -layer * deep)


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


def _joints(given: Given, of_part: JointsOf) -> Joints | None:
    try:
        return first_to_last(wall_joints(Wall.model_validate(given)))
    except ValidationError:
        return None


def _built(wall: Wall, making: Making) -> Framework:
    return build_wall(making.name, making.balloons, wall)


def _coloured(framework: Framework, wall: Wall, part: str) -> Iterator[colour_runs.ColourRun]:
    """From the floor up, each layer by itself: the balloons of the rows by their row, those of
    the uprights by the row that they stand on."""
    length = wall.up + 1 if part == "row" else wall.up
    role = ROW if part == "row" else UPRIGHT
    layers: dict[Layer | None, list[tuple[int, str]]] = {}
    for long in framework.chains:
        if long.role == role:
            layer = layers.setdefault(long.layer, [])
            joints = long.chain.joints[: len(long.chain.links)]
            layer += [
                (row_of(joint, wall.up), one)
                for joint, one in zip(joints, long.chain.links, strict=True)
            ]
    for layer in layers.values():
        layer.sort(key=itemgetter(0))
        yield colour_runs.ColourRun(
            [RunPlace(row) for row, _ in layer], [[one] for _, one in layer], length
        )


def _more_cells(data: Given, factor: float) -> Iterator[Put]:
    yield from growing.counts(data, ("build", "wall"), {"across": 1, "up": 1}, factor)
    for i, _ in enumerate(data["build"]["wall"].get("openings") or []):
        at = ("build", "wall", "openings", i)
        yield from growing.counts(data, at, {"along": 1, "up": 0, "wide": 1, "high": 1}, factor)


PATTERN = Pattern(
    name="wall",
    about=mark("a grid of square cells, one layer or two"),
    keys=Wall,
    uses=(
        link("row", mark("a row")),
        link("upright", mark("an upright")),
        link("between", mark("what is between two layers")),
        LOCK,
        EXTRA,
    ),
    joints=_joints,
    build=_built,
    colours=Colouring(("row", "upright"), (), _coloured),
    more_cells=_more_cells,
    check=check_wall,
    extra_as="upright",
)
