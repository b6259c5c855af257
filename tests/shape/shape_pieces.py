"""Designs that the tests of the shape stage use, made in code."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from buildplan.design.building import build_framework
from buildplan.design.model import Design
from buildplan.framework.model import Framework

S = "straight"
BALLOONS = {
    "long": {"kind": "link", "nominal": 12.0, "inflate_to": 8.0},
    "small": {"kind": "link", "nominal": 12.0, "inflate_to": 7.0},
    "cross": {"kind": "link", "nominal": 12.0, "inflate_to": 8.0},
    "lock": {"kind": "round", "nominal": 5.0, "inflate_to": 3.5},
}


def design(build: dict[str, Any]) -> Design:
    """A design in inches with four kinds of balloon."""
    balloons = {
        key: {**balloon, "colour": "#1F5F8B", "label": key} for key, balloon in BALLOONS.items()
    }
    return Design.model_validate(
        {"buildplan": 1, "name": "test", "units": "in", "balloons": balloons, "build": build}
    )


def tube(
    course: Sequence[Any],
    *,
    chains: int = 4,
    closed: bool = True,
    long: str | dict[str, str] = "long",
) -> Framework:
    """The framework of a tube."""
    return build_framework(
        design(
            {
                "tube": {
                    "closed": closed,
                    "chains": chains,
                    "long": long,
                    "brace": "cross",
                    "single": "cross",
                    "lock": "lock",
                    "course": list(course),
                }
            }
        )
    )


def graph(joints: int, pairs: Sequence[tuple[int, int]]) -> Framework:
    """The framework of a piece listed joint by joint, all of one balloon."""
    balloons = [{"from": f"J{i}", "to": f"J{j}", "balloon": "long"} for i, j in pairs]
    listed = {"joints": [f"J{i}" for i in range(joints)], "balloons": balloons, "lock": "lock"}
    return build_framework(design({"graph": listed}))


def star(points: int = 5, straights: int = 3, chains: int = 4) -> Framework:
    """A star: as many straights up as down each point."""
    cells = [S] * straights + ["tip"] + [S] * straights + ["dip"]
    return tube([{"repeat": points, "cells": cells}], chains=chains)


def frame() -> Framework:
    """A square."""
    return tube([{"repeat": 4, "cells": [S] * 6 + ["tip"]}])


def arch() -> Framework:
    """An open arch on two legs."""
    course = [S] * 7 + ["fan"] + [S] * 4 + ["fan"] + [S] * 4 + ["fan"] + [S] * 7
    return tube(course, closed=False)
