"""The plan of the floor by which the long chains of a braced piece are laid out: from straight
above, its corners named, with the distances between them that a tape can check."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from itertools import pairwise

import numpy as np

from buildplan.design.measures import Units, side_words
from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.bodies import Scene
from buildplan.drawing.camera import PaperView, fit
from buildplan.drawing.dimensions import dimension_marks
from buildplan.drawing.fonts import text_width
from buildplan.drawing.label_places import place_tags
from buildplan.drawing.labels import DARK, joint_dot, joint_tags, leaders, rounded_box
from buildplan.drawing.laid_out import LaidChains
from buildplan.drawing.line_art import INK
from buildplan.drawing.marks import Box, Ink, Label, Mark, Picture, Point, Polyline
from buildplan.drawing.scene import body_marks
from buildplan.drawing.seat import FROM_ABOVE
from buildplan.drawing.way_round import pointed
from buildplan.framework.chain_roles import Layer
from buildplan.framework.corners import landmarks
from buildplan.framework.model import LongChain
from buildplan.language.voice import Voice

LABEL_PT, FIGURE_PT = 9.0, 9.0
# Room about the figure: for arrows and tags, and for its width below it and its height at its left.
MARGIN_PT, SIDE_PT, FOOT_PT = 26.0, 54.0, 24.0
LEGEND_PT = 12.0  # from one line of what lies on what to the next
# A figure stands so far along its line, the first place at which it covers nothing.
ALONG = (0.5, 0.4, 0.6, 0.32, 0.68, 0.25, 0.75)
SHORTEST_PT = 60.0  # of a line that has room for its figure
MOST_LINES = 16
ARROW_PT = 6.0  # across an arrow, with its point
TAPED = Ink(stroke="#B3261E", width=0.9, dash=(5.0, 2.5))
UNDER = Ink(stroke="#FFFFFF", width=2.6)
FROM_JOINT = Ink(stroke="#B3261E", width=0.5)
PARTED_PT = 14.0  # between lines of lengths that would lie on one another


def floor_plan(
    laid: LaidChains,
    scene: Scene,
    width: float,
    height: float,
    units: Units | None,
    voice: Voice,
    told: str,
) -> Picture:
    """The chains as they lie in the end, joint 1 of the uppermost named and the corners of the
    figure, no higher than `height`. What lies on what stands in a corner; broken lines between
    corners, and lines below and at the left of the whole, have their lengths; without `units` all
    joints are named and nothing is measured. `told` begins its alternative text."""
    upper = [chain for chain in laid.framework.chains if chain.layer is not Layer.BACK]
    upper = upper or list(laid.framework.chains)
    every = [joint for long in upper for joint in long.chain.joints]
    view, height = _view(scene, width, height, *((SIDE_PT, FOOT_PT) if units else (0.0, 0.0)))
    named = landmarks(laid.framework, upper)
    told_joints = [joint for one in named.values() for joint in one]
    told_joints = told_joints if units else every
    spots = {joint: _on_page(view, laid, joint) for joint in told_joints}
    spots |= {long.chain.joints[0]: _on_page(view, laid, long.chain.joints[0]) for long in upper}
    legend = [_lies_on(laid, long, voice) for long in upper]
    figures = _figures(laid, upper, named, spots, units, voice) if units else {}
    marks = body_marks(scene, view, width, height)
    blocked: list[Box] = []
    for chain in upper:
        arrow = [_flat(view, point) for point in laid.aside(chain)]
        marks += pointed(arrow)
        blocked += _along(arrow)
    lines: list[Mark] = []
    lengths: list[Mark] = []
    drawn_so: list[tuple[Point, Point]] = []
    longest_first = sorted(figures, key=lambda ends: -math.dist(*(spots[one] for one in ends)))
    for start, finish in longest_first:
        words = figures[start, finish]
        ends = _parted((spots[start], spots[finish]), drawn_so, (width / 2, height / 2))
        drawn_so.append(ends)
        lines += [Polyline(ends, ink) for ink in (UNDER, TAPED)]
        for spot, end in zip((spots[start], spots[finish]), ends, strict=True):
            lines += [Polyline((spot, end), FROM_JOINT)] if spot != end else []
        box = _length_box(*ends, words, [*spots.values()], blocked)
        lengths += _length(box, words)
        blocked.append(box)
    overall, sizes = _overall(scene, view, units, voice) if units else ([], ())
    height = _with_legend(legend, blocked, height)
    corner = [
        Label(
            (2.0, height - LEGEND_PT * (row + 1)), words, LABEL_PT, INK, anchor="start", bold=True
        )
        for row, words in enumerate(legend)
    ]
    blocked.append(_corner_box(legend, height))
    tags = place_tags(list(spots.items()), width, height, size=LABEL_PT, blocked=blocked)
    firsts = {long.chain.joints[0] for long in upper}
    dots = [mark for joint, at in spots.items() for mark in joint_dot(at, tied=joint in firsts)]
    drawn = (*marks, *lines, *lengths, *overall, *corner, *leaders(tags), *dots, *joint_tags(tags))
    alt = _words(upper, figures, sizes, legend, voice)
    return Picture(width, height, drawn, f"{told} {alt}", (("picture", "floor plan"),))


def _corner_box(legend: Sequence[str], height: float) -> Box:
    """Where the legend stands, at the upper left."""
    wide = max(text_width(words, LABEL_PT, bold=True) for words in legend)
    return (0.0, height - LEGEND_PT * len(legend) - 7, wide + 6, height)


def _with_legend(legend: Sequence[str], arrows: Sequence[Box], height: float) -> float:
    """The height of the picture, with room for the legend above the arrows that it would meet."""
    box = _corner_box(legend, height)
    met = [arrow[3] for arrow in arrows if _meets(box, arrow)]
    return height + max(0.0, max(met) - box[1]) if met else height


def _view(
    scene: Scene, width: float, height: float, side: float, foot: float
) -> tuple[PaperView, float]:
    """The view of the figure in a picture so wide and no higher than `height`, with room at its
    left `side` and below it; and how high the picture comes out."""
    bodies, room = scene.bodies, (width - side, height - foot)
    view = fit(FROM_ABOVE, bodies.centre, bodies.radius, *room, MARGIN_PT)
    flat, _ = view.place(bodies.centre)
    radius = bodies.radius * view.scale
    low = float(np.min(flat[:, 1] - radius))
    tall = float(np.max(flat[:, 1] + radius)) - low + 2 * MARGIN_PT + foot
    x, y = view.origin
    origin = (x + side, y - low + MARGIN_PT + foot)
    return PaperView(FROM_ABOVE, view.scale, origin), tall


def _on_page(view: PaperView, laid: LaidChains, joint: str) -> Point:
    return _flat(view, laid.at[joint])


def _flat(view: PaperView, point_m: FloatArray) -> Point:
    (place,), _ = view.place(np.array([[point_m[0], point_m[1], 0.0]]))
    return float(place[0]), float(place[1])


def _lies_on(laid: LaidChains, long: LongChain, voice: Voice) -> str:
    """`A on D`, of a chain that has no other below it `A`."""
    below = laid.framework.mirror.get(long.chain.joints[0])
    letter = next((o.letter for o in laid.framework.chains if below in o.chain.joints), "")
    if not letter or letter == long.letter:
        return long.letter
    return voice.say("{front} on {back}", front=long.letter, back=letter)


def _distances(
    laid: LaidChains, upper: Sequence[LongChain], named: Mapping[str, Sequence[str]]
) -> dict[tuple[str, str], float]:
    """From each named joint of a chain to the next, straight across, in metres; none of a figure
    that would be all lines."""
    found = {}
    for long in upper:
        joints = named[long.letter]
        round_ = [*joints, joints[0]] if len(joints) > 2 else joints
        for start, finish in pairwise(round_):
            apart = laid.at[finish] - laid.at[start]
            found[start, finish] = float(np.linalg.norm(apart))
    return found if len(found) <= MOST_LINES else {}


def _figures(
    laid: LaidChains,
    upper: Sequence[LongChain],
    named: Mapping[str, Sequence[str]],
    spots: Mapping[str, Point],
    units: Units,
    voice: Voice,
) -> dict[tuple[str, str], str]:
    """The distances of `_distances` in words, where their line has room for them."""
    return {
        ends: voice.tell(side_words(metres, units))
        for ends, metres in _distances(laid, upper, named).items()
        if math.dist(*(spots[joint] for joint in ends)) >= SHORTEST_PT
    }


def _parted(
    ends: tuple[Point, Point], others: Sequence[tuple[Point, Point]], middle: Point
) -> tuple[Point, Point]:
    """A line moved towards the middle of the picture, as often as it takes, until it lies on none
    of the others."""
    (x0, y0), (x1, y1) = ends
    length = math.dist(*ends)
    across = (-(y1 - y0) / length, (x1 - x0) / length)
    inward = (middle[0] - (x0 + x1) / 2) * across[0] + (middle[1] - (y0 + y1) / 2) * across[1]
    by = math.copysign(PARTED_PT, inward)
    moved = ends
    while any(_lies_along(moved, other) for other in others):
        a, b = ((x + by * across[0], y + by * across[1]) for x, y in moved)
        moved = (a, b)
    return moved


def _lies_along(one: tuple[Point, Point], other: tuple[Point, Point]) -> bool:
    """Whether a line lies on a longer one, as far as can be seen."""
    (x0, y0), (x1, y1) = other
    length = math.dist(*other)
    along, across = ((x1 - x0) / length, (y1 - y0) / length), (-(y1 - y0), x1 - x0)
    off = [((x - x0) * across[0] + (y - y0) * across[1]) / length for x, y in one]
    run = [(x - x0) * along[0] + (y - y0) * along[1] for x, y in one]
    apart = max(run) <= PARTED_PT or min(run) >= length - PARTED_PT
    return max(map(abs, off)) < PARTED_PT / 2 and not apart


def _along(arrow: Sequence[Point]) -> list[Box]:
    """Boxes along an arrow, on which no tag is to lie."""
    found = []
    for start, finish in pairwise(arrow):
        parts = max(1, round(math.dist(start, finish) / ARROW_PT))
        for n in range(parts + 1):
            x, y = (a + (b - a) * n / parts for a, b in zip(start, finish, strict=True))
            found.append((x - ARROW_PT / 2, y - ARROW_PT / 2, x + ARROW_PT / 2, y + ARROW_PT / 2))
    return found


def _length_box(
    start: Point, finish: Point, words: str, spots: Sequence[Point], taken: Sequence[Box]
) -> Box:
    """The box of the length of a line, where it covers least."""
    half, tall = text_width(words, FIGURE_PT, bold=True) / 2 + 2, FIGURE_PT
    boxes = []
    for share in ALONG:
        x, y = (a + (b - a) * share for a, b in zip(start, finish, strict=True))
        boxes.append((x - half, y - tall / 2 - 1, x + half, y + tall / 2 + 1))
    held = [*taken, *((x - 6, y - 6, x + 6, y + 6) for x, y in spots)]
    return min(boxes, key=lambda one: sum(_meets(one, other) for other in held))


def _length(box: Box, words: str) -> list[Mark]:
    at = ((box[0] + box[2]) / 2, (box[1] + box[3]) / 2 - FIGURE_PT * 0.36)
    plate = rounded_box(box, 2.0, Ink(fill="#FFFFFF"))
    return [plate, Label(at, words, FIGURE_PT, DARK, bold=True)]


def _meets(one: Box, other: Box) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


def _overall(
    scene: Scene, view: PaperView, units: Units, voice: Voice
) -> tuple[list[Mark], tuple[str, str]]:
    """How wide and high the whole is, over its balloons: marks, and in words."""
    flat, _ = view.place(scene.bodies.centre)
    radius = scene.bodies.radius[:, None] * view.scale
    x0, y0 = (float(value) for value in np.min(flat - radius, axis=0))
    x1, y1 = (float(value) for value in np.max(flat + radius, axis=0))
    wide, high = (
        voice.tell(side_words(points / view.scale, units)) for points in (x1 - x0, y1 - y0)
    )
    below, left = FOOT_PT / 2, text_width(high, FIGURE_PT) / 2 + 3
    marks = [
        *dimension_marks((x0, below), (x1, below), wide, FIGURE_PT),
        *dimension_marks((left, y0), (left, y1), high, FIGURE_PT),
    ]
    return marks, (wide, high)


def _words(
    upper: Sequence[LongChain],
    figures: Mapping[tuple[str, str], str],
    sizes: Sequence[str],
    legend: Sequence[str],
    voice: Voice,
) -> str:
    said = [
        voice.say(
            "Joint 1 of {chains} has an arrow beside it, the way the numbers run.",
            chains=voice.listed([chain.letter for chain in upper]),
        ),
        f"{'; '.join(legend)}.",
        *([f"{' x '.join(sizes)}."] if sizes else []),
        *(f"{start} – {finish}: {words}." for (start, finish), words in figures.items()),
    ]
    return " ".join(said)
