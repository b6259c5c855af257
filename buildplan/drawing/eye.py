"""Where a close-up is seen from on a small picture of the whole piece: the builder's eye; before
what lies, the builder, who kneels there."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.bodies import Scene, link_length_m
from buildplan.drawing.camera import CAMERAS, Camera, PaperView
from buildplan.drawing.fonts import text_width
from buildplan.drawing.kneeling_place import (
    HIPS_AWAY_M,
    Kneeler,
    Kneeling,
    drawn_larger,
    kneeler_on,
    kneeler_sign,
    kneeling_at,
    sign_size,
    toward_m,
)
from buildplan.drawing.labels import DARK
from buildplan.drawing.line_art import smooth
from buildplan.drawing.marks import (
    Box,
    Circle,
    Ink,
    Inset,
    Label,
    Mark,
    MarkData,
    Picture,
    Point,
)
from buildplan.drawing.panel import Panel
from buildplan.drawing.scene import step_picture, whole_view
from buildplan.drawing.visibility import joints_m

EYE_PT = 15.0
# An eye stands so far from the joints, in link lengths, and no nearer than this on the page.
AWAY, LEAST_AWAY_PT = 1.6, 20.0
# An eye whose way is no more level than this looks down on a pole.
STEEP = 0.5
# Eyes nearer to one another than this are one; so are kneelers whose places are so near.
APART_PT, APART_M = 14.0, 0.9
BESIDE_M = 0.36  # from a kneeler's hips to a number
NUMBER_PT = 8.0


@dataclass(frozen=True, eq=False)
class Eye:
    """An eye on a page: its middle, the way it looks (radians), and the numbers, from 1, of the
    close-ups that are seen from there; before what lies, the one who kneels there, on the page and
    in space."""

    at: Point
    turn: float
    panels: tuple[int, ...]
    kneeler: Kneeler | None = None
    kneeling: Kneeling | None = None


def eyes_for(
    scene: Scene, camera: Camera, size: tuple[float, float], panels: Sequence[Panel]
) -> tuple[Eye, ...]:
    """An eye for each place that panels are seen from, on a whole piece's picture of this size
    (`step_picture`)."""
    if camera != CAMERAS["top"]:
        return _kneeling(scene, camera, size, panels)
    view = whole_view(scene, camera, *size)
    eyes: list[Eye] = []
    for number, panel in enumerate(panels, 1):
        at, turn = _place(scene, view, panel, size)
        near = [i for i, eye in enumerate(eyes) if math.dist(at, eye.at) <= APART_PT]
        if near:
            eyes[near[0]] = replace(eyes[near[0]], panels=(*eyes[near[0]].panels, number))
        else:
            eyes.append(Eye(at, turn, (number,)))
    return tuple(eyes)


def how_many_kneel(
    scene: Scene, camera: Camera, size: tuple[float, float], panels: Sequence[Panel]
) -> int:
    """How many eyes of one who kneels `eyes_for` gives on a piece that lies, without a place for
    each."""
    return len(_of_one_place(scene, camera, whole_view(scene, camera, *size), panels))


def _kneeling(
    scene: Scene, camera: Camera, size: tuple[float, float], panels: Sequence[Panel]
) -> tuple[Eye, ...]:
    """The same on a piece that lies, from straight above: those who kneel there, so large that
    they are seen, on a view with room for them."""
    view, up = whole_view(scene, camera, *size), np.array(camera.axes[2])
    groups = _of_one_place(scene, camera, view, panels)
    alone = [_who_works(scene, up, [panels[n - 1] for n in group]) for group in groups]
    people = alone
    for _ in range(2):  # with room for them the piece is smaller, and they larger beside it
        people = [drawn_larger(scene.bodies, one, up, sign_size(view)) for one in alone]
        view = whole_view(scene, camera, *size, _about(people, camera))
    return tuple(
        kneeling_eye(view, one, tuple(group)) for one, group in zip(people, groups, strict=True)
    )


def _of_one_place(
    scene: Scene, camera: Camera, view: PaperView, panels: Sequence[Panel]
) -> list[list[int]]:
    """The numbers of panels, from 1, in groups whose seats are so close together that they are of
    one who kneels."""
    up = np.array(camera.axes[2])
    seats = [
        _middle_of(scene, panel) + HIPS_AWAY_M * toward_m(panel.camera, up) for panel in panels
    ]
    apart = max(APART_PT / view.scale, APART_M)
    groups: list[list[int]] = []
    for number, seat in enumerate(seats, 1):
        near = [some for some in groups if np.linalg.norm(seat - seats[some[0] - 1]) <= apart]
        if near:
            near[0].append(number)
        else:
            groups.append([number])
    return groups


def _who_works(scene: Scene, up: FloatArray, panels: Sequence[Panel]) -> Kneeling:
    """The one who kneels to the work of panels close together, `up` (3,) from the floor."""
    middle = np.mean([_middle_of(scene, panel) for panel in panels], axis=0)
    return kneeling_at(scene.bodies, middle, panels[len(panels) // 2].camera, up)


def _middle_of(scene: Scene, panel: Panel) -> FloatArray:
    return np.asarray(np.mean(joints_m(scene, panel.joints), axis=0))


def kneeling_eye(view: PaperView, one: Kneeling, panels: tuple[int, ...] = ()) -> Eye:
    """The eye of one who kneels, on a view from straight above."""
    kneeler = kneeler_on(view, one)
    return Eye(kneeler.at, kneeler.turn, panels, kneeler, one)


def lying_place(
    scene: Scene,
    camera: Camera,
    size: tuple[float, float],
    joints: Sequence[str],
    eyes: Sequence[Eye],
    alt: str,
) -> Picture:
    """Where the work is on a piece that lies: the whole of it with a ring, and `eyes` of
    `eyes_for`."""
    people = [eye.kneeling for eye in eyes if eye.kneeling]
    picture = step_picture(scene, camera, *size, place=joints, also=_about(people, camera), alt=alt)
    return eyes_on(picture, eyes)


def _about(people: Sequence[Kneeling], camera: Camera) -> FloatArray:
    """Corners (n, 3) about people who kneel."""
    up = np.array(camera.axes[2])
    return np.array([one.about(up) for one in people]).reshape(-1, 3)


def eyes_on(picture: Picture, eyes: Sequence[Eye]) -> Picture:
    """A whole piece's picture with the builder's eyes, numbered where there are several."""
    size = (picture.width, picture.height)
    return replace(picture, marks=(*picture.marks, *eye_marks(eyes, size, numbered=len(eyes) > 1)))


def eye_marks(
    eyes: Sequence[Eye], size: tuple[float, float], *, numbered: bool = False
) -> list[Mark]:
    """Eyes on a picture of this size, each with the numbers of its close-ups if they are wanted."""
    marks: list[Mark] = [
        kneeler_sign(eye.kneeler) if eye.kneeler else _eye(eye.at, eye.turn) for eye in eyes
    ]
    taken = [_box_about(eye.at, (EYE_PT, EYE_PT)) for eye in eyes]
    for eye in eyes if numbered else ():
        words = _numbers(eye.panels)
        wide = (text_width(words, NUMBER_PT, bold=True), NUMBER_PT)
        middle = min(
            _beside(eye, wide), key=lambda at: _in_the_way(_box_about(at, wide), size, taken)
        )
        taken.append(_box_about(middle, wide))
        foot = (middle[0], middle[1] - 0.26 * NUMBER_PT)
        marks.append(Label(foot, words, NUMBER_PT, DARK, bold=True, halo="#FFFFFF"))
    return marks


def _numbers(panels: Sequence[int]) -> str:
    """Numbers, those that follow one another joined up: `1-3, 5`."""
    runs: list[list[int]] = []
    for number in panels:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    return ", ".join(f"{run[0]}–{run[-1]}" if len(run) > 1 else f"{run[0]}" for run in runs)


def _beside(eye: Eye, wide: tuple[float, float]) -> list[Point]:
    """Where an eye's number may stand: behind it first, then round it."""
    found = []
    for step in (0, 1, -1, 2, -2, 3, -3, 4):
        angle = eye.turn + math.pi + step * math.pi / 4
        c, s = math.cos(angle), math.sin(angle)
        reach = (BESIDE_M * eye.kneeler.scale if eye.kneeler else EYE_PT / 2) + 1.0
        found.append(
            (
                eye.at[0] + c * (reach + wide[0] / 2),
                eye.at[1] + s * (reach + wide[1] / 2),
            )
        )
    return found


def _box_about(at: Point, wide: tuple[float, float]) -> Box:
    """The box of this width and height about a point."""
    (x, y), (w, h) = at, wide
    return (x - w / 2, y - h / 2, x + w / 2, y + h / 2)


def _in_the_way(own: Box, size: tuple[float, float], taken: Sequence[Box]) -> float:
    """How much of a box lies beyond a picture or over what is taken, in square points."""
    left, low, right, high = own
    out = max(0.0, -left) + max(0.0, -low) + max(0.0, right - size[0]) + max(0.0, high - size[1])
    over = math.fsum(
        max(0.0, min(right, other[2]) - max(left, other[0]))
        * max(0.0, min(high, other[3]) - max(low, other[1]))
        for other in taken
    )
    return round(100.0 * out + over, 3)


def _place(
    scene: Scene, view: PaperView, panel: Panel, size: tuple[float, float]
) -> tuple[Point, float]:
    """Where a panel's eye stands on the plan of what stands, within the picture, and which way it
    looks. It is the way round that counts, not how steeply an eye looks down: one before the piece
    is below the joints on the page, one behind it above them."""
    middle = np.mean(joints_m(scene, panel.joints), axis=0)
    away = panel.camera.axes[2]
    flat = away * (1.0, 0.0, 1.0)
    if np.linalg.norm(flat) > STEEP:
        away = flat / np.linalg.norm(flat)
    toward = away * AWAY * link_length_m(scene.framework)
    places, _ = view.place(np.array([middle, middle + toward]))
    run = places[1] - places[0]
    length = max(float(np.hypot(*run)), 1e-9)
    if length < LEAST_AWAY_PT:
        run = run * LEAST_AWAY_PT / length
    half = EYE_PT / 2
    x, y = (
        min(max(float(a), half), side - half) for a, side in zip(places[0] + run, size, strict=True)
    )
    return (x, y), math.atan2(float(places[0][1]) - y, float(places[0][0]) - x)


def _eye(at: Point, turn: float) -> Inset:
    """An eye that looks along an angle, in radians."""
    c, s, half = math.cos(turn), math.sin(turn), EYE_PT / 2

    def point(x: float, y: float) -> Point:
        return (half + half * (x * c - y * s), half + half * (x * s + y * c))

    lids = [point(-0.7, 0.8), point(0.25, 0.5), point(0.75, 0.0), point(0.25, -0.5)]
    lids.append(point(-0.7, -0.8))
    marks: tuple[Mark, ...] = (
        Circle((half, half), half - 0.5, Ink(fill="#FFFFFF", stroke=DARK, width=0.7)),
        smooth(lids, Ink(stroke=DARK, width=1.1)),
        Circle(point(0.3, 0.0), 0.24 * half, Ink(fill=DARK)),
    )
    data: MarkData = (("eye", "builder"),)
    return Inset(Picture(EYE_PT, EYE_PT, marks, "", data), (at[0] - half, at[1] - half))
