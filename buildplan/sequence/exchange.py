"""Steps as plain lists and dictionaries, for `steps --json` and for replaying."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from buildplan.sequence.model import Knot, Operation, Step, Turn


def steps_as_json(steps: Iterable[Step]) -> list[dict[str, Any]]:
    """Steps in types that JSON knows, with all that a rebuilding needs."""
    return [
        {
            "number": step.number,
            "stage": str(step.stage),
            "kind": str(step.kind),
            "times": step.times,
            "needs": list(step.needs),
            "adds": dict(step.adds),
            "prepares": dict(step.prepares),
            "alike": step.alike,
            "side_work": step.side_work,
            "repeats": step.repeats,
            "cells": [kind.name for kind in step.cells],
            "behind": list(step.behind),
            "ways": {str(way): list(joints) for way, joints in step.ways.items()},
            "turns": [_turn(turn) for turn in step.turns],
        }
        for step in steps
    ]


def _turn(turn: Turn) -> dict[str, Any]:
    return {
        "joints": list(turn.joints),
        "operations": [_operation(operation) for operation in turn.operations],
    }


def _operation(operation: Operation) -> dict[str, Any]:
    return {
        "id": operation.id,
        "kind": str(operation.kind),
        "needs": list(operation.needs),
        "makes": list(operation.makes),
        "balloon": operation.balloon or None,
        "adds": operation.adds,
        "people": operation.people,
        "up": operation.up or None,
        "links": list(operation.links),
        "locks": list(operation.locks),
        "joints": list(operation.joints),
        "knots": [_knot(knot) for knot in operation.knots],
    }


def _knot(knot: Knot) -> dict[str, Any]:
    return {"joint": knot.joint, "ends": [[link, str(end)] for link, end in knot.ends]}
