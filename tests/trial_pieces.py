"""A small piece of every pattern, as the plain data of a design file. They are our own."""

from __future__ import annotations

import json
from itertools import combinations
from typing import Any

BALLOONS: dict[str, Any] = {
    "a": {"kind": "link", "nominal": 12, "inflate_to": 8, "colour": "navy", "label": "navy"},
    "b": {"kind": "link", "nominal": 12, "inflate_to": 7, "colour": "ivory", "label": "ivory"},
    "l": {"kind": "round", "nominal": 5, "inflate_to": 3.5, "colour": "gold", "label": "gold"},
}
LOCKED = {"lock": "l"}
COLUMN = {"column": {"around": 4, "rings": 3, "ring": "a", "between": "a", **LOCKED}}
BEAM = {"across": 7, "up": 1, "layers": 2, "row": "a", "upright": "a", "between": "a", **LOCKED}
WALL = {**BEAM, "across": 4, "up": 3, "openings": [{"along": 1, "up": 0, "wide": 2, "high": 1}]}
TUBE = {"closed": True, "chains": 4, "long": "a", "brace": "a", "single": "a", **LOCKED}
RING = {"tube": {**TUBE, "course": [{"repeat": 4, "cells": ["straight", "tip"]}]}}
GRAPH = {
    "joints": list("PQRS"),
    "balloons": [
        {"from": one, "to": other, "balloon": "a"} for one, other in combinations("PQRS", 2)
    ],
    **LOCKED,
}
PIECES: dict[str, dict[str, Any]] = {
    "tube": RING,
    "column": COLUMN,
    "wall": {"wall": WALL},
    "arch": {"arch": {"kind": "square", "leg": 2, "span": 2, "long": "a", "brace": "a", **LOCKED}},
    "solid": {"solid": {"shape": "octahedron", "edge": "a", **LOCKED}},
    "globe": {"globe": {"long": "a", "short": "b", **LOCKED}},
    "letters": {"letters": {"text": "L", "cells": 5, "long": "a", "brace": "a", **LOCKED}},
    "graph": {"graph": GRAPH},
    "assembly": {
        "assembly": {
            "parts": [
                {"name": "L", "build": COLUMN},
                {"name": "R", "build": COLUMN},
                {"name": "B", "on": ["L", "R"], "build": {"wall": BEAM}},
            ],
            **LOCKED,
        }
    },
}


def design(build: dict[str, Any], **keys: Any) -> dict[str, Any]:
    whole = {"buildplan": 1, "name": "Trial", "units": "in", "balloons": BALLOONS, "build": build}
    copied: dict[str, Any] = json.loads(json.dumps({**whole, **keys}))
    return copied
