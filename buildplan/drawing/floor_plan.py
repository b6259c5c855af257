"""The plan of the floor by which the long chains of a braced piece are laid out: from straight
above, its corners named, with the distances between them that a tape can check."""

from __future__ import annotations

import math
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from buildplan.design.measures import Units, side_words
from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.bodies import Scene
from buildplan.drawing.camera import Camera, PaperView, fit
from buildplan.drawing.dimensions import dimension_marks
from buildplan.drawing.eye import eye_marks, kneeling_eye
from buildplan.drawing.fonts import text_width
from buildplan.drawing.kneeling_place import Kneeling, kneeler_box, kneeler_on, kneeling_at
from buildplan.drawing.label_places import place_tags
from buildplan.drawing.labels import joint_dot, joint_tags, leaders
from buildplan.drawing.laid_out import LaidChains
from buildplan.drawing.line_art import INK
from buildplan.drawing.marks import Box, Ink, Label, Mark, Picture, Point, Polyline
from buildplan.drawing.scene import body_marks
from buildplan.drawing.seat import FROM_ABOVE
from buildplan.drawing.taped_lines import FIGURE_PT, boxes_meet, taped_lines
from buildplan.drawing.visibility import joints_m
from buildplan.drawing.way_round import pointed
from buildplan.framework.chain_roles import Layer
from buildplan.framework.corners import landmarks
from buildplan.framework.model import Framework, LongChain
from buildplan.language.voice import Voice

LABEL_PT = 9.0
# Room about the figure: for arrows and tags, and for its width below it and its height at its left.
MARGIN_PT, SIDE_PT, FOOT_PT = 22.0, 54.0, 18.0
LEGEND_PT = 12.0  # from one line of what lies on what to the next
SHORTEST_PT = 60.0  # of a line that has room for its figure
MOST_LINES = 16
ARROW_PT = 6.0  # across an arrow, with its point
# The lines from the outermost balloons to those that have the whole's lengths, so far past these.
PROJECTED, OVER_PT = Ink(stroke="#7C8B99", width=0.5), 3.0


@dataclass(frozen=True)
class KneelingPlace:
    """Where somebody kneels to the first work on what is laid: the joints there, and the seat that
    close-ups of it are seen from."""

    joints: tuple[str, ...]
    camera: Camera


def floor_plan(
    laid: LaidChains,
    scene: Scene,
    width: float,
    height: float,
    units: Units | None,
    voice: Voice,
    told: str,
    *,
    tags: Collection[str] = (),
    seat: KneelingPlace | None = None,
) -> Picture:
    """The chains as they lie in the end, joint 1 of the uppermost named and the corners of the
    figure, with those of `tags`, no higher than `height`; the sign of the one who kneels at `seat`.
    What lies on what stands in a corner; broken lines between corners, and lines below and at the
    left of the whole, have their lengths; without `units` all joints are named and nothing is
    measured. `told` begins its alternative text."""
    upper = upper_chains(laid.framework)
    room = (SIDE_PT, FOOT_PT) if units else (0.0, 0.0)
    one = _kneels(scene, seat) if seat else None
    view, height = _view(scene, one, width, height, *room)
    corners = landmarks(laid.framework, upper)
    spots = _spots(laid, view, upper, corners, tags, every=units is None)
    legend = [_lies_on(laid, long, voice) for long in upper]
    figures = _figures(laid, upper, corners, spots, units, voice) if units else {}
    marks = body_marks(scene, view, width, height)
    blocked: list[Box] = []
    if one:  # under the arrows
        marks += eye_marks([kneeling_eye(view, one)], (width, height))
        blocked.append(kneeler_box(kneeler_on(view, one)))
    for chain in upper:
        arrow = [_flat(view, point) for point in laid.aside(chain)]
        marks += pointed(arrow)
        blocked += _along(arrow)
    bodies = _body_boxes(scene, view)
    lines = taped_lines(figures, spots, blocked, (width / 2, height / 2))
    overall, sizes = _overall(scene, view, units, voice) if units else ([], ())
    height = _with_legend(legend, width, [*blocked, *bodies], height)
    corner = [
        Label((width - 2, height - LEGEND_PT * row), words, LABEL_PT, INK, "end", True, "#FFFFFF")
        for row, words in enumerate(legend, 1)
    ]
    blocked.append(_corner_box(legend, width, height))
    placed = place_tags(list(spots.items()), width, height, size=LABEL_PT, blocked=blocked)
    firsts = {long.chain.joints[0] for long in upper}
    dots = [mark for joint, at in spots.items() for mark in joint_dot(at, tied=joint in firsts)]
    drawn = (*marks, *lines, *overall, *corner, *leaders(placed), *dots, *joint_tags(placed))
    alt = _words(upper, figures, sizes, legend, voice)
    return Picture(width, height, drawn, f"{told} {alt}", (("picture", "floor plan"),))


def upper_chains(framework: Framework) -> list[LongChain]:
    """The chains that lie uppermost, all of a piece that has none at its back."""
    upper = [chain for chain in framework.chains if chain.layer is not Layer.BACK]
    return upper or list(framework.chains)


def _spots(
    laid: LaidChains,
    view: PaperView,
    upper: Sequence[LongChain],
    corners: Mapping[str, Sequence[str]],
    tags: Collection[str],
    *,
    every: bool,
) -> dict[str, Point]:
    """Where the joints lie on the page that are named."""
    named = [joint for one in corners.values() for joint in one]
    named += [joint for long in upper for joint in long.chain.joints if every or joint in tags]
    named += [long.chain.joints[0] for long in upper]
    return {joint: _on_page(view, laid, joint) for joint in named}


def _corner_box(legend: Sequence[str], width: float, height: float) -> Box:
    """Where the legend stands: at the upper right, for lengths are drawn at the left."""
    wide = max(text_width(words, LABEL_PT, bold=True) for words in legend)
    return (width - wide - 6, height - LEGEND_PT * len(legend) - 7, width, height)


def _with_legend(legend: Sequence[str], width: float, drawn: Sequence[Box], height: float) -> float:
    """The height of the picture, with room for the legend above what is drawn that it would
    meet."""
    box = _corner_box(legend, width, height)
    met = [other[3] for other in drawn if boxes_meet(box, other)]
    return height + max(0.0, max(met) - box[1]) if met else height


def _body_boxes(scene: Scene, view: PaperView) -> list[Box]:
    """The boxes of the balloons on the page."""
    flat, _ = view.place(scene.bodies.centre)
    radius = scene.bodies.radius * view.scale
    low, high = flat - radius[:, None], flat + radius[:, None]
    return [
        (float(a), float(b), float(c), float(d)) for (a, b), (c, d) in zip(low, high, strict=True)
    ]


def _kneels(scene: Scene, seat: KneelingPlace) -> Kneeling:
    middle = np.mean(joints_m(scene, seat.joints), axis=0)
    return kneeling_at(scene.bodies, middle, seat.camera, np.array(FROM_ABOVE.axes[2]))


def _view(
    scene: Scene,
    one: Kneeling | None,
    width: float,
    height: float,
    side: float,
    foot: float,
) -> tuple[PaperView, float]:
    """The view of the figure, and of `one` who kneels, in a picture so wide and no higher than
    `height`, with room at its left `side` and below it; and how high the picture comes out."""
    bodies, room = scene.bodies, (width - side, height - foot)
    about = np.zeros((0, 3)) if one is None else one.about(np.array(FROM_ABOVE.axes[2]))
    points = np.vstack([bodies.centre, about])
    radii = np.concatenate([bodies.radius, np.zeros(len(about))])
    view = fit(FROM_ABOVE, points, radii, *room, MARGIN_PT)
    flat, _ = view.place(points)
    radius = radii * view.scale
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


def _along(arrow: Sequence[Point]) -> list[Box]:
    """Boxes along an arrow, on which no tag is to lie."""
    found = []
    for start, finish in pairwise(arrow):
        parts = max(1, round(math.dist(start, finish) / ARROW_PT))
        for n in range(parts + 1):
            x, y = (a + (b - a) * n / parts for a, b in zip(start, finish, strict=True))
            found.append((x - ARROW_PT / 2, y - ARROW_PT / 2, x + ARROW_PT / 2, y + ARROW_PT / 2))
    return found


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
    edges = [int(np.argmin(flat[:, 0] - radius[:, 0])), int(np.argmax(flat[:, 0] + radius[:, 0]))]
    ends = [int(np.argmin(flat[:, 1] - radius[:, 0])), int(np.argmax(flat[:, 1] + radius[:, 0]))]
    marks: list[Mark] = [
        *(
            Polyline(((x, below - OVER_PT), (x, float(flat[row, 1]))), PROJECTED)
            for x, row in zip((x0, x1), edges, strict=True)
        ),
        *(
            Polyline(((left - OVER_PT, y), (float(flat[row, 0]), y)), PROJECTED)
            for y, row in zip((y0, y1), ends, strict=True)
        ),
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
