"""Large pieces that give the most work: they do not fit together, fold, or fall."""

from __future__ import annotations

import random
from collections.abc import Iterator
from itertools import product
from typing import Any

from buildplan.design.model import Design

LINK = {"kind": "link", "nominal": 12, "inflate_to": 8, "colour": "#1F5F8B", "label": "deep blue"}
LARGER = {**LINK, "inflate_to": 10.5, "label": "larger blue"}
ROUND = {"kind": "round", "nominal": 5, "inflate_to": 3.5, "colour": "#F7F3E8", "label": "ivory"}


def piece(name: str, build: dict[str, Any], **held: Any) -> Design:
    """A design of 8 inch links, some of them larger; `held` are its other keys."""
    balloons = {"link": LINK, "larger": LARGER, "lock": ROUND}
    return Design.model_validate(
        {
            "buildplan": 1,
            "name": name,
            "units": "in",
            "balloons": balloons,
            "build": build,
            **held,
        }
    )


def wall(cells: int, layers: int = 2, **held: Any) -> Design:
    """A wall so many cells wide and, to 60, high."""
    keys: dict[str, Any] = {"row": "link", "upright": "link", "lock": "lock"}
    if layers == 2:
        keys["between"] = "link"
    wanted = {"across": cells, "up": min(cells, 60), "layers": layers, **keys}
    return piece("Wall", {"wall": wanted}, **held)


def tube(cells: int, chains: int = 4, closed: bool = False, **held: Any) -> Design:
    """A tube of so many cells, straight."""
    course = [{"repeat": 100, "cells": ["straight"]}] * (cells // 100)
    keys = {"long": "link", "brace": "link", "lock": "lock"}
    tubed = {"closed": closed, "chains": chains, **keys, "course": course}
    return piece("Tube", {"tube": tubed}, **held)


def wound_tube(cells: int, **held: Any) -> Design:
    """A tube that turns on the spot and runs into itself."""
    course = [{"repeat": cells // 4, "cells": ["straight", "straight", "fan", "straight"]}]
    keys = {"long": "link", "brace": "link", "lock": "lock"}
    return piece(
        "Winding", {"tube": {"closed": False, "chains": 4, **keys, "course": course}}, **held
    )


def nested(deep: int) -> Design:
    """Triangles in a row, joined two by two, and what is joined so again, so many times over."""
    _, triangle = graph([("link", 0, 1), ("link", 1, 2), ("link", 2, 0)]).build.given
    whole: dict[str, Any] = {"graph": triangle}
    for level in range(deep):
        ties = [["A." + "B." * level + "J2", "B." + "A." * level + "J1"]]
        parts = [{"name": name, "build": whole} for name in "AB"]
        whole = {"assembly": {"parts": parts, "ties": ties, "lock": "lock"}}
    return piece("Nested", whole)


def grid(across: int, up: int, deep: int, wrong: int = 0) -> Design:
    """Cubes side by side, joint by joint; every `wrong`-th balloon is larger than it should be."""
    links = list(_grid_links(across, up, deep))
    return graph(
        [("larger" if wrong and n % wrong == 0 else "link", *ends) for n, ends in enumerate(links)]
    )


def _grid_links(across: int, up: int, deep: int) -> Iterator[tuple[int, int]]:
    def joint(x: int, y: int, z: int) -> int:
        return (x * (up + 1) + y) * (deep + 1) + z

    for x in range(across + 1):
        for y in range(up + 1):
            for z in range(deep + 1):
                if x < across:
                    yield joint(x, y, z), joint(x + 1, y, z)
                if y < up:
                    yield joint(x, y, z), joint(x, y + 1, z)
                if z < deep:
                    yield joint(x, y, z), joint(x, y, z + 1)


def octet(side: int, wrong: int = 0) -> Design:
    """Links between the near points of the face-centred cubic lattice: all are of one length. Every
    `wrong`-th balloon is larger than it should be, and nothing can give way to it."""
    spots = [spot for spot in product(range(side), repeat=3) if sum(spot) % 2 == 0]
    number = {spot: n for n, spot in enumerate(spots)}
    near = [step for step in product((-1, 0, 1), repeat=3) if sum(map(abs, step)) == 2]
    beside = ((at, (at[0] + x, at[1] + y, at[2] + z)) for at in spots for x, y, z in near)
    ends = [(number[at], number[to]) for at, to in beside if to in number and at < to]
    kinds = ("larger" if wrong and n % wrong == 0 else "link" for n in range(len(ends)))
    return graph([(kind, *pair) for kind, pair in zip(kinds, ends, strict=True)])


def random_graph(joints: int, each: float = 2.0, seed: int = 1) -> Design:
    """Joints tied to one another at random, so many balloons for each."""
    chance = random.Random(seed)
    tied = {(chance.randrange(one), one) for one in range(1, joints)}
    while len(tied) < each * joints:
        a, b = sorted(chance.sample(range(joints), 2))
        tied.add((a, b))
    return graph([("link", *ends) for ends in sorted(tied)])


def graph(links: list[tuple[str, int, int]]) -> Design:
    """The piece of these balloons between numbered joints."""
    joints = sorted({end for _, *ends in links for end in ends})
    names = {joint: f"J{joint + 1}" for joint in joints}
    listed = {
        "joints": [names[one] for one in joints],
        "balloons": [{"from": names[a], "to": names[b], "balloon": kind} for kind, a, b in links],
        "lock": "lock",
    }
    return piece("Graph", {"graph": listed}, hung=True)
