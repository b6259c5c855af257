"""Steps as plain data, to be changed before they are read again."""

from __future__ import annotations

import copy
import json
from collections.abc import Sequence
from typing import Any

import networkx as nx
from sequence_pieces import listed, tube

from buildplan.framework.model import Framework
from buildplan.sequence.exchange import steps_as_json
from buildplan.sequence.steps import plan_steps


def edges(graph: nx.MultiGraph) -> list[Any]:
    return sorted(
        (key, sorted((one, other)), sorted(data.items()))
        for one, other, key, data in graph.edges(keys=True, data=True)
    )


Steps = list[dict[str, Any]]

# every kind of cell, a closing share, an odd ring, two colours
EVERYTHING = tube(
    ["straight", "tip", "fan", "fan_in", "2,1", "straight", "straight", "dip"],
    closed=True,
    long=["long", "other"],
)
SOLID = listed([(f"v{a}", f"v{b}", "long") for a, b in nx.icosahedral_graph().edges()])


def plain(framework: Framework, limit: int = 16) -> Steps:
    read: Steps = json.loads(json.dumps(steps_as_json(plan_steps(framework, limit))))
    return read


def renumbered(steps: Sequence[dict[str, Any]]) -> Steps:
    """`steps` numbered afresh in their new order, references to other steps kept right, so
    that a refusal is about the work and not about numbers."""
    new = {step["number"]: place for place, step in enumerate(steps, 1)}
    result = copy.deepcopy(list(steps))
    for place, step in enumerate(result, 1):
        step["number"] = place
        step["needs"] = [new[n] for n in step["needs"] if new.get(n, place) < place]
    return result


def without_names(steps: Steps) -> Steps:
    """Steps whose operations do not say what they need and make: only what hands find on the
    floor can refuse them."""
    result = copy.deepcopy(steps)
    for step in result:
        for turn in step["turns"]:
            for operation in turn["operations"]:
                operation["needs"] = operation["makes"] = []
    return result
