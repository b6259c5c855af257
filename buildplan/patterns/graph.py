"""A piece listed joint by joint: its chains are worked out."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from pydantic import Field

from buildplan.framework.listed import build_listed
from buildplan.framework.model import Framework
from buildplan.language.messages import mark
from buildplan.patterns.graph_checks import check_graph
from buildplan.patterns.limits import MOST_BALLOONS
from buildplan.patterns.pattern import (
    LOCK,
    AllOf,
    Given,
    Joints,
    JointsOf,
    Making,
    Pattern,
    Uncoloured,
    Whole,
    link,
)
from buildplan.source.mistake import Mistake, key_in_words, listed
from buildplan.source.partial_validation import list_in
from buildplan.source.values import FileModel, JointLabel, Key


class GraphBalloon(FileModel):
    """One link balloon of a piece that is listed joint by joint."""

    from_: JointLabel = Field(alias="from", description=mark("the joint at one of its ends"))
    to: JointLabel = Field(description=mark("the joint at its other end"))
    balloon: Key = Field(description=mark("which balloon it is: a key of `balloons`"))


class Graph(FileModel):
    """A piece listed one by one: joints, and the link balloon between each two."""

    joints: Annotated[list[JointLabel], Field(min_length=2, max_length=MOST_BALLOONS)] = Field(
        description=mark("the labels of the joints, each once")
    )
    balloons: Annotated[list[GraphBalloon], Field(min_length=1, max_length=MOST_BALLOONS)] = Field(
        description=mark("the link balloons, each with the two joints that it ties together")
    )
    lock: Key | None = Field(
        None, description=mark("the round balloon of the locks; left out, the joints get none")
    )


def _joints(given: Given, of_part: JointsOf) -> Joints | None:
    joints = [joint for joint in list_in(given.get("joints")) if isinstance(joint, str)]
    return Joints(joints, listed(map(key_in_words, joints))) if joints else None


def _built(graph: Graph, making: Making) -> Framework:
    links = [(one.from_, one.to, one.balloon) for one in graph.balloons]
    return build_listed(making.name, making.balloons, graph.joints, links, graph.lock)


def _check(given: Given, whole: Whole) -> Iterator[Mistake]:
    yield from check_graph(given)


PATTERN = Pattern(
    name="graph",
    about=mark("joints and balloons listed one by one"),
    keys=Graph,
    uses=(link("balloons.*.balloon", mark("a framework")), LOCK),
    joints=_joints,
    build=_built,
    colours=Uncoloured(
        mark("a graph has no long chains to lay a colour pattern along"),
        mark("name the balloon of each colour in build.graph.balloons instead"),
    ),
    more_cells=AllOf(mark("a piece listed joint by joint has no cells to add")),
    check=_check,
    most_joints=0,
)
