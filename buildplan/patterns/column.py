"""The column: stacked rings, each turned by half a step, with a zigzag ring between two.

The band between two rings is that of an antiprism, all triangles, so that a column is stiff. B1
lies between A1 and A2, and C1 straight above A1: joints of one number go up in two lines.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import Annotated

from pydantic import Field, ValidationError

from buildplan.framework.chain_roles import RING, ZIGZAG
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
from buildplan.source.suggestions import Put
from buildplan.source.values import FileModel, Key


class Column(FileModel):
    """Rings stacked on one another, each turned by half a step against the one below, with a
    zigzag of links between two of them: every face a triangle."""

    around: Annotated[int, Field(ge=3, le=24)] = Field(
        description=mark("how many balloons go round in each ring")
    )
    rings: Annotated[int, Field(ge=2, le=100)] = Field(
        description=mark("how many rings are stacked, the lowest on the floor")
    )
    ring: Key = Field(description=mark("the link balloon of the rings"))
    between: Key = Field(description=mark("the link balloon of the zigzags between two rings"))
    lock: Key = Field(description=mark("the round balloon of the locks"))
    extra: Extras = extras_field()


def build_column(name: str, balloons: Mapping[str, BalloonType], column: Column) -> Framework:
    """Build the framework of a column, from the foot up."""
    around = range(column.around)
    runs = []
    for ring in range(column.rings):
        joints = [column_joint(ring, place) for place in around]
        runs.append(ChainRun(RING, None, joints, column.ring, closed=True))
        if ring:
            on = 0 if ring % 2 else 1  # a second ring has turned back
            zigzag = [
                joint
                for place in around
                for joint in (
                    column_joint(ring - 1, place),
                    column_joint(ring, (place + on) % column.around),
                )
            ]
            runs.append(ChainRun(ZIGZAG, None, zigzag, column.between, closed=True))
    foot = [column_joint(0, place) for place in around]
    return build_chained(name, balloons, runs, column.lock, foot)


def column_joint(ring: int, place: int) -> str:
    """The joint at `place` round ring number `ring` of a column, both from 0, from the foot."""
    return f"{letters(ring)}{place + 1}"


def column_joints(column: Column) -> list[str]:
    """The joints of a column, from the foot up."""
    return [
        column_joint(ring, place) for ring in range(column.rings) for place in range(column.around)
    ]


def _joints(given: Given, of_part: JointsOf) -> Joints | None:
    try:
        return first_to_last(column_joints(Column.model_validate(given)))
    except ValidationError:
        return None


def _built(column: Column, making: Making) -> Framework:
    return build_column(making.name, making.balloons, column)


def _coloured(framework: Framework, column: Column, part: str) -> Iterator[colour_runs.ColourRun]:
    """All rings (or all zigzags) one after another from the foot, each balloon at its place
    round: every second one begins half a step on, and a zigzag goes up and down twice as often."""
    role, steps = (RING, 1) if part == "ring" else (ZIGZAG, 2)
    chains = [long.chain for long in framework.chains if long.role == role]
    places, links = [], []
    for along, chain in enumerate(chains):
        around = len(chain.links)
        for i, one in enumerate(chain.links):
            # joints are numbered clockwise seen from above, and turns count the other way
            places.append(RunPlace(along, Fraction(-(2 * i + steps * (along % 2)), 2 * around)))
            links.append([one])
    yield colour_runs.ColourRun(places, links, len(chains))


def _more_cells(data: Given, factor: float) -> Iterator[Put]:
    yield from growing.counts(data, ("build", "column"), {"rings": 2, "around": 3}, factor)


PATTERN = Pattern(
    name="column",
    about=mark("stacked rings with zigzags between them"),
    keys=Column,
    uses=(link("ring", mark("a ring")), link("between", mark("a zigzag")), LOCK, EXTRA),
    joints=_joints,
    build=_built,
    colours=Colouring(("ring", "between"), ("ring", "between"), _coloured),
    more_cells=_more_cells,
    extra_as="between",
)
