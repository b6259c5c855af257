"""Pieces to draw diagrams of, and a reader of pictures that knows nothing of how they are made."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import combinations
from pathlib import Path

import yaml

from buildplan.design.building import build_framework
from buildplan.design.model import Design
from buildplan.drawing.fonts import text_width
from buildplan.drawing.marks import Circle, Curve, Inset, Label, Mark, Picture, Point, Polyline
from buildplan.framework.model import Framework

Balloons = dict[str, tuple[object, ...]]
Box = tuple[float, float, float, float]
BALLOONS: Balloons = {
    "long": ("link", 12, 8, "#1F5F8B", "deep blue"),
    "cross": ("link", 12, 8, "#F7F3E8", "ivory"),
    "lock": ("round", 5, 3.5, "#F7F3E8", "ivory"),
}
S = "straight"


def _design(build: dict[str, object], balloons: Balloons, units: str) -> Framework:
    keys = ("kind", "nominal", "inflate_to", "colour", "label")
    return build_framework(
        Design.model_validate(
            {
                "buildplan": 1,
                "name": "Piece",
                "units": units,
                "balloons": {k: dict(zip(keys, v, strict=True)) for k, v in balloons.items()},
                "build": build,
            }
        )
    )


def built(build: Mapping[str, object]) -> Framework:
    """A piece of any pattern, of the balloons `long`, `cross` and `lock`."""
    return _design(dict(build), BALLOONS, "in")


def tube(course: Sequence[object], chains: int = 4, closed: bool = False) -> Framework:
    return _design(
        {
            "tube": {
                "closed": closed,
                "chains": chains,
                "long": "long",
                "brace": "cross",
                "single": "cross",
                "lock": "lock",
                "course": list(course),
            }
        },
        BALLOONS,
        "in",
    )


def listed(edges: list[tuple[str, str]]) -> Framework:
    joints = list(dict.fromkeys(joint for edge in edges for joint in edge))
    balloons = [{"from": a, "to": b, "balloon": "long"} for a, b in edges]
    return _design(
        {"graph": {"joints": joints, "balloons": balloons, "lock": "lock"}}, BALLOONS, "in"
    )


def sized(gauges: list[float], units: str) -> Framework:
    """A row of balloons, one of each gauge."""
    balloons: Balloons = {
        f"b{i}": ("link", gauge * 1.5, gauge, "#1F5F8B", f"blue {i}")
        for i, gauge in enumerate(gauges)
    }
    joints = [f"J{i}" for i in range(len(gauges) + 1)]
    links = [
        {"from": joints[i], "to": joints[i + 1], "balloon": f"b{i}"} for i in range(len(gauges))
    ]
    return _design({"graph": {"joints": joints, "balloons": links}}, balloons, units)


def star() -> Framework:
    path = Path(__file__).parents[2] / "designs" / "reading_star.yaml"
    return build_framework(Design.model_validate(yaml.safe_load(path.read_text())))


def pieces() -> dict[str, Framework]:
    """Every cell, every number of chains, open and closed, small and large."""
    mixed = [S, "fan", "fan_in", "tip", "dip", S, [3, 1], [1, 2], S]
    return {
        "star": star(),
        "frame": tube([{"repeat": 4, "cells": [S] * 8 + ["fan", S, "fan"]}], closed=True),
        "arch": tube([S] * 6 + ["fan", S] * 6 + [S] * 6),
        "fans in a row": tube([S, "fan", "fan", "fan", S], chains=3),
        "mixed 4": tube(mixed),
        "mixed 3": tube(mixed, chains=3),
        "mixed 2": tube(mixed, chains=2),
        "ladder ring": tube([{"repeat": 4, "cells": [S, S, "tip"]}], chains=2, closed=True),
        "triangle ring": tube([{"repeat": 5, "cells": [S, "fan"]}], chains=3, closed=True),
        "long": tube([{"repeat": 55, "cells": [S]}]),
    }


# --- reading a picture ---------------------------------------------------------------------


def label_box(label: Label) -> Box:
    wide = text_width(label.text, label.size, label.bold)
    x = label.at[0] - {"start": 0.0, "middle": wide / 2, "end": wide}[label.anchor]
    return (x, label.at[1], x + wide, label.at[1] + 0.73 * label.size)


def bezier(start: Point, piece: tuple[Point, Point, Point], t: float) -> Point:
    (x0, y0), (x1, y1), (x2, y2), (x3, y3) = start, *piece
    a, b, c, d = (1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t**2 * (1 - t), t**3
    return (a * x0 + b * x1 + c * x2 + d * x3, a * y0 + b * y1 + c * y2 + d * y3)


def mark_points(mark: Mark) -> list[Point]:
    """Points on the edge of what a mark covers."""
    if isinstance(mark, Label):
        x0, y0, x1, y1 = label_box(mark)
        return [(x0, y0), (x1, y1)]
    if isinstance(mark, Polyline):
        return list(mark.points)
    if isinstance(mark, Circle):
        (x, y), r = mark.centre, mark.radius
        return [(x - r, y - r), (x + r, y + r)]
    if isinstance(mark, Curve):
        found, start = [mark.start], mark.start
        for piece in mark.pieces:
            found += [bezier(start, piece, i / 8) for i in range(1, 9)]
            start = piece[2]
        return found
    if isinstance(mark, Inset):
        assert_inside(mark.picture)  # nothing of it is drawn outside its own box
        (x, y), within = mark.at, mark.picture
        return [(x, y), (x + within.width, y + within.height)]
    a, b, c, d, e, f = mark.matrix
    half = mark.look.aspect / 2 if mark.look.form == "link" else 0.5
    return [
        (a * x + c * y + e, b * x + d * y + f)
        for x, y in ((half, 0), (-half, 0), (0, 0.5), (0, -0.5))
    ]


def assert_inside(picture: Picture) -> None:
    for mark in picture.marks:
        for x, y in mark_points(mark):
            assert -0.5 <= x <= picture.width + 0.5, (mark, x)
            assert -0.5 <= y <= picture.height + 0.5, (mark, y)


def overlapping_labels(picture: Picture) -> list[tuple[str, str]]:
    labels = [mark for mark in picture.marks if isinstance(mark, Label) and mark.text]
    boxes = [label_box(label) for label in labels]
    return [
        (labels[i].text, labels[j].text)
        for i, j in combinations(range(len(labels)), 2)
        if min(boxes[i][2], boxes[j][2]) - max(boxes[i][0], boxes[j][0]) > 0
        and min(boxes[i][3], boxes[j][3]) - max(boxes[i][1], boxes[j][1]) > 0
    ]


def assert_readable(picture: Picture) -> None:
    """Type of at least 8 pt that nothing else written covers, lines of at least 0.5 pt."""
    assert overlapping_labels(picture) == []
    for mark in picture.marks:
        if isinstance(mark, Label):
            assert mark.size >= 8
        elif isinstance(mark, Inset):
            assert_readable(mark.picture)
        elif isinstance(mark, Polyline | Curve | Circle) and mark.ink.stroke:
            assert mark.ink.width >= 0.5
