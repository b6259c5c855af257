"""Where ballast lies about a standing piece: the plan from above, a bag for each joint that takes
one, on the side of its foot where it is out of the way."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.ballast_bags import SAND
from buildplan.drawing.bodies import finished
from buildplan.drawing.camera import CAMERAS, fit
from buildplan.drawing.label_places import place_tags
from buildplan.drawing.labels import joint_dot, joint_tags, leaders
from buildplan.drawing.line_art import SOFT, TYPE
from buildplan.drawing.marks import Circle, Ink, Label, Mark, Picture, Point, Polyline
from buildplan.drawing.scene import body_marks
from buildplan.framework.model import Framework
from buildplan.shape.model import Shape

PLAN = CAMERAS["top"]
BAG_M = 0.09  # its radius on the floor: a bag of some kilograms of sand (from memory, for looks)
TIE = Ink(stroke="#8A6D3B", width=1.4)
OUT_PT, DOWN_PT = 8.0, 16.0  # from a tag's knot to its name
FEWEST_M, MOST_PT, WORDS_PT, MARGIN_PT = 1.2, 190.0, 13.0, 10.0


def ballast_plan(
    framework: Framework,
    shape: Shape,
    bags: Mapping[str, FloatArray],
    width: float,
    words: str,
    alt: str,
    beside: Mapping[str, str] | None = None,
) -> Picture:
    """The piece from straight above, its front below, with the bag of each joint tied to it; `bags`
    are places on the floor, (2,) in x and z, by joint. `words` stand over it; `width` in points.
    Joints of `beside` have no tag: the one next to each is named beside it, pale."""
    low, high = shape.positions_m.min(axis=0), shape.positions_m.max(axis=0)
    floor = np.array([[x, 0.0, z] for x, z in bags.values()])
    corners = np.array([low, high])
    span = np.ptp(np.vstack([corners, floor - BAG_M, floor + BAG_M]), axis=0)
    tall = float(span[2]) / max(float(span[0]), FEWEST_M) * (width - 2 * MARGIN_PT)
    height = min(tall + 4 * MARGIN_PT + 2 * WORDS_PT, MOST_PT)
    view = fit(PLAN, np.vstack([corners, floor]), 0.2, width, height - WORDS_PT, MARGIN_PT)

    def at(place: FloatArray) -> Point:
        ((x, y),), _ = view.place(np.asarray(place, dtype=float)[None])
        return (float(x), float(y))

    marks: list[Mark] = [*body_marks(finished(framework, shape), view, width, height)]
    spots: list[tuple[str, Point]] = []
    for (joint, _), place in zip(bags.items(), floor, strict=True):
        knot, bag = at(shape.at[joint] * (1, 0, 1)), at(place)
        marks += [Polyline((knot, bag), TIE), Circle(bag, BAG_M * view.scale, SAND)]
        marks += joint_dot(knot)
        spots.append((joint, bag))
    sides = {joint: 1 if place[1] < shape.at[joint][2] else -1 for joint, place in bags.items()}
    tags = place_tags(spots, width, height - WORDS_PT, size=TYPE, sides=sides)
    marks += [*leaders(tags), *joint_tags(tags)]
    for joint, tag in (beside or {}).items():
        marks += _tag_beside(tag, at(shape.at[tag] * (1, 0, 1)), at(shape.at[joint] * (1, 0, 1)))
    marks.append(Label((2.0, height - WORDS_PT + 3), words, TYPE, SOFT, "start"))
    return Picture(width, height, tuple(marks), alt, (("picture", "ballast plan"),))


def _tag_beside(tag: str, knot: Point, other: Point) -> list[Mark]:
    """A tag's name at its knot, away from the bag of the joint next to it."""
    x, y = knot
    away = 1.0 if x > other[0] else -1.0
    end = (x + away * OUT_PT, y - DOWN_PT)
    anchor = "start" if away > 0 else "end"
    name = Label((end[0] + away, end[1] - 0.36 * TYPE), tag, TYPE, SOFT, anchor, halo="#FFFFFF")
    return [Polyline((knot, end), Ink(stroke=SOFT, width=0.7)), *joint_dot(knot, tied=False), name]
