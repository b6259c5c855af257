"""A piece of two layers as it is built lying, from the side: its front chains folded down over the
foot while one works at the back, and laid over the back for the front."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from buildplan.drawing.camera import CAMERAS, PaperView
from buildplan.drawing.kneeling_figure import figure_marks, kneeling
from buildplan.drawing.label_places import place_tags
from buildplan.drawing.labels import joint_dot, joint_tags, leaders
from buildplan.drawing.line_art import INK, TYPE
from buildplan.drawing.marks import Ink, Inset, Mark, Picture, Point, Polyline
from buildplan.drawing.techniques.props import link, signs, words
from buildplan.framework.model import Framework, LongChain
from buildplan.language.voice import Voice

# Points: each of the two views and what is below it; how many points a metre is.
WIDE, HIGH, FOOT, SCALE, GROUND = 121.0, 92.0, 12.0, 73.0, 3.0
FLOOR = Ink(stroke=INK, width=0.8)
KNEES_M, APART_M = 0.66, 0.16  # from the joint that is tied to the hips; between two hands
# Where chains lie, in balloons from the foot towards the head and above the floor: folded over the
# foot, lying at the back, and over it.
FOLDED = ((0.0, 1.0), (-0.85, 0.47), (-1.7, 0.0))
AT_BACK = ((0.0, 0.0), (1.0, 0.0), (2.0, 0.0), (3.0, 0.0))
OVER_IT = ((0.0, 1.0), (1.0, 1.0), (1.85, 0.5), (2.7, 0.9))


@dataclass(frozen=True)
class Layers:
    """A chain of the back and the one of the front before it, which lead from foot to head, and
    the balloon that stands between their first joints."""

    back: LongChain
    front: LongChain
    between: str


def folded_layers(framework: Framework, voice: Voice, layers: Layers) -> Picture:
    """The two views side by side, the head of the piece at the right."""
    back, front = layers.back.chain, layers.front.chain
    before = (front.joints[0], back.joints[0])
    views = (
        (FOLDED, back.joints[1], (1.0, 0.0), voice.say("at the back")),
        (OVER_IT, front.joints[1], (1.0, 1.0), voice.say("at the front")),
    )
    marks: list[Mark] = []
    for place, (way, worked, at, said) in enumerate(views):
        drawn = _view(framework, layers, way, [*before, worked], at)
        marks.append(Inset(Picture(WIDE, HIGH, tuple(drawn), ""), (place * WIDE, FOOT)))
        marks.append(words(((place + 0.5) * WIDE, 2.0), said))
    told = voice.say(
        "From the side, the foot at the left: somebody kneels at the head. While the back is worked"
        " at, chain {front} is folded down over the foot; for the front it is laid over chain"
        " {back}.",
        front=layers.front.letter,
        back=layers.back.letter,
    )
    return Picture(2 * WIDE, HIGH + FOOT, tuple(marks), told, (("picture", "folded layers"),))


def _view(
    framework: Framework,
    layers: Layers,
    way: Sequence[Point],
    named: Sequence[str],
    at: Point,
) -> list[Mark]:
    """The layers with the front chain on its `way`, and somebody whose hands are `at` a place; both
    in balloons. `named` are the first joints of front and back, and the one there."""
    long = framework.balloons[framework.link[layers.back.chain.links[0]].balloon].tie_to_tie_m
    thick = framework.balloons[framework.link[layers.between].balloon].gauge_m

    def place(spot: Point) -> np.ndarray:
        return np.array([spot[0] * long, thick / 2 + spot[1] * long, 0.0])

    view = PaperView(CAMERAS["front"], SCALE, (2.0 * long * SCALE, GROUND))

    def on_page(spot: Point) -> Point:
        ((x, y),), _ = view.place(place(spot))
        return float(x), float(y)

    marks: list[Mark] = [Polyline(((0.0, GROUND), (WIDE, GROUND)), FLOOR)]
    ties = [
        *zip(layers.back.chain.links, pairwise(AT_BACK), strict=False),
        (layers.between, ((0.0, 0.0), (0.0, 1.0))),
        *zip(layers.front.chain.links, pairwise(way), strict=False),
    ]
    for id_, (start, end) in ties:
        kind = framework.balloons[framework.link[id_].balloon]
        state = "new" if id_ in layers.front.chain.links else "done"
        sign = signs(framework)[kind.key] if state == "new" else 0
        marks += link(on_page(start), on_page(end), kind.gauge_m * SCALE, kind.colour, state, sign)
    hands = place(at) + np.array([(0.0, 0.0, side * APART_M / 2) for side in (1, -1)])
    floor = np.array([at[0] * long + KNEES_M, 0.0, 0.0])
    figure = kneeling(floor, np.array([-1.0, 0.0, 0.0]), np.array([0.0, 1.0, 0.0]), hands)
    for _, limbs in figure_marks(figure, view):
        marks += limbs
    spots = [*((0.0, 1.0), (0.0, 0.0)), at]
    wanted = [(joint, on_page(spot)) for joint, spot in zip(named, spots, strict=True)]
    tags = place_tags(wanted, WIDE, HIGH, size=TYPE)
    dots = [mark for _, spot in wanted for mark in joint_dot(spot)]
    return [*marks, *leaders(tags), *dots, *joint_tags(tags)]
