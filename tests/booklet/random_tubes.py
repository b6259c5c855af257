"""Open tubes of four chains with bends both ways, by the number of a seed."""

from __future__ import annotations

import random
from functools import cache

from buildplan.booklet.common.book import Book, gather_book
from buildplan.design.model import Design
from buildplan.document.paper import PAPERS

BALLOONS = {
    "long": ("link", 12, 8, "#1F5F8B"),
    "cross": ("link", 12, 8, "#F7F3E8"),
    "lock": ("round", 5, 3.5, "#C9A227"),
}
RANDOM = (3, 7, 11)  # the seeds that are measured
BENDS = ("fan", "tip", "dip", "fan_in")


def random_design(seed: int) -> Design:
    """A course of straight runs with a bend between them."""
    chosen = random.Random(seed)
    course: list[object] = []
    for _ in range(4):
        course += ["straight"] * chosen.randint(2, 4)
        course.append(chosen.choice(BENDS))
    course += ["straight"] * 2
    balloons = {
        key: {"kind": kind, "nominal": size, "inflate_to": gauge, "colour": colour, "label": key}
        for key, (kind, size, gauge, colour) in BALLOONS.items()
    }
    tube = {
        "closed": False,
        "chains": 4,
        "long": "long",
        "brace": "cross",
        "single": "cross",
        "lock": "lock",
        "course": course,
    }
    data = {"buildplan": 1, "name": f"tube {seed}", "units": "in", "balloons": balloons}
    return Design.model_validate(data | {"build": {"tube": tube}})


@cache
def random_book(seed: int) -> Book:
    """The tube of a seed, gathered for the training edition."""
    return gather_book(random_design(seed), PAPERS["a4"], "in", "training")
