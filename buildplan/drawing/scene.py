"""Pictures of a piece: every balloon stamped in its place, from back to front."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np
import numpy.typing as npt

from buildplan.drawing.bodies import Bodies, Scene, finished, link_length_m
from buildplan.drawing.camera import Camera, View, fit
from buildplan.drawing.far_lines import THREAD_BELOW_PT, thread_marks
from buildplan.drawing.framing import MARGIN_PT, close_view, floor_points, view_of
from buildplan.drawing.ground import ground_shadow
from buildplan.drawing.labels import (
    DARK,
    TIE_RADIUS,
    Box,
    joint_dot,
    joint_tags,
    leaders,
    place_tags,
)
from buildplan.drawing.marks import Circle, Ink, Inset, Look, Mark, Picture, Polyline
from buildplan.drawing.outlines import quantised_length
from buildplan.drawing.plates import corner_plate, plate_box, title_plate
from buildplan.drawing.stamps import link_stamps, round_stamps
from buildplan.drawing.symbols import quantised_line
from buildplan.drawing.visibility import LEVEL_M, behind_new, in_front_of_new, paint_order
from buildplan.framework.model import Framework
from buildplan.language.speaking import mark, say
from buildplan.shape.model import Shape

__all__ = ["Scene", "body_marks", "close_up", "finished", "finished_picture", "step_picture"]

FloatArray = npt.NDArray[np.float64]
IntArray = npt.NDArray[np.int_]

# Outline widths on paper, in points.
NEW_LINE_PT = 0.85
DONE_LINE_PT = 0.45
# Bodies at least this wide on paper show which end is neck and which is tail.
ENDS_FROM_PT = 44.0
# In a close-up, work further than this many link lengths from the joints is left out.
CLOSE_REACH = 2.5
# Round the whole piece, so that the ring round a place at its rim stays in the picture.
RING_MARGIN_PT = 14.0
LEAST_RING_PT = 7.0
RING_LINE = Ink(stroke=DARK, width=1.3)
FRAME_LINE = Ink(stroke="#8A9AA8", width=0.9)


def finished_picture(
    framework: Framework,
    shape: Shape,
    camera: Camera,
    width: float,
    height: float,
    *,
    patterns: Mapping[str, int] | None = None,
    alt: str = "",
) -> Picture:
    """The finished piece on the floor, every part in full colour."""
    scene = finished(framework, shape, patterns)
    bodies = scene.bodies
    points = np.vstack([bodies.centre, floor_points(shape)])
    radii = np.concatenate([bodies.radius, np.full(4, 0.03 * shape.width_m)])
    view = fit(camera, points, radii, width, height, MARGIN_PT)
    marks = [*ground_shadow(shape, view), *body_marks(scene, view, width, height)]
    return Picture(width, height, tuple(marks), alt or _view_words(framework, camera))


def _view_words(framework: Framework, camera: Camera) -> str:
    messages = {
        "front": mark("{piece}, finished, seen from the front."),
        "back": mark("{piece}, finished, seen from the back."),
        "side": mark("{piece}, finished, seen from the side."),
        "top": mark("{piece}, finished, seen from the top."),
        "corner": mark("{piece}, finished, seen from the corner."),
    }
    return say(messages.get(camera.name, mark("{piece}, finished, seen.")), piece=framework.name)


def step_picture(
    scene: Scene,
    camera: Camera,
    width: float,
    height: float,
    *,
    ties: Sequence[str] = (),
    labels: Sequence[str] = (),
    label_size: float = 8.0,
    place: Sequence[str] = (),
    alt: str = "",
) -> Picture:
    """The whole piece as far as it stands, with what is new in full colour.

    The piece keeps its place on the page from step to step. `ties` are joints that are tied
    in this step and ringed, `labels` those that are named, and a circle goes round those of
    `place`, to show where a close-up is.
    """
    view = view_of(scene, camera, width, height, scene.shape.joints, margin=RING_MARGIN_PT)
    marks = _picture_marks(scene, view, (width, height), (), ties, labels, label_size)
    if place:
        marks.append(place_ring(scene, view, place, (width, height)))
    return Picture(width, height, tuple(marks), alt)


def close_up(
    scene: Scene,
    camera: Camera,
    width: float,
    height: float,
    joints: Sequence[str],
    *,
    ties: Sequence[str] = (),
    labels: Sequence[str] = (),
    label_size: float = 9.0,
    title: str = "",
    corner: Picture | None = None,
    alt: str = "",
) -> Picture:
    """The surroundings of some joints in a frame; work far from them is left out.

    The title stands in the upper left corner, and `corner`, a small picture, in whichever
    other corner is freest; labels keep clear of both.
    """
    view = close_view(scene, camera, width, height, joints)
    size = (width, height)
    plates: list[Inset] = []
    if title:
        plates.append(title_plate(title, size))
    if corner is not None:
        new = scene.bodies.some(scene.bodies.is_new)
        middles, _ = view.place(new.centre)
        spots, _ = view.place(np.array([scene.shape.at[joint] for joint in joints]))
        discs = np.vstack(
            [
                np.column_stack([middles, new.radius * view.scale]),
                np.column_stack([spots, np.full(len(spots), TIE_RADIUS)]),
            ]
        )
        plates.append(corner_plate(corner, size, discs, plates))
    blocked = [plate_box(plate) for plate in plates]
    marks = _picture_marks(scene, view, size, joints, ties, labels, label_size, blocked)
    return Picture(width, height, (*marks, *plates, frame_line(width, height)), alt)


def place_ring(scene: Scene, view: View, joints: Sequence[str], size: tuple[float, float]) -> Mark:
    """A circle round some joints and the balloons that meet there, moved and made smaller as far
    as it takes to stay within a picture of this size."""
    places, _ = view.place(np.array([scene.shape.at[joint] for joint in joints]))
    middle = (np.min(places, axis=0) + np.max(places, axis=0)) / 2
    reach = np.max(np.linalg.norm(places - middle, axis=1))
    radius = max(float(reach) + 0.75 * link_length_m(scene.framework) * view.scale, LEAST_RING_PT)
    most = min(size) / 2 - RING_LINE.width
    radius = min(radius, most)
    least = radius + RING_LINE.width
    x, y = (min(max(float(m), least), s - least) for m, s in zip(middle, size, strict=True))
    return Circle((x, y), radius, RING_LINE)


def frame_line(width: float, height: float) -> Mark:
    """The line round a close-up."""
    half = FRAME_LINE.width / 2
    box = ((half, half), (width - half, half), (width - half, height - half), (half, height - half))
    return Polyline(box, FRAME_LINE, closed=True)


def _picture_marks(
    scene: Scene,
    view: View,
    size: tuple[float, float],
    focus: Sequence[str],
    ties: Sequence[str],
    labels: Sequence[str],
    label_size: float,
    blocked: Sequence[Box] = (),
) -> list[Mark]:
    marks = body_marks(scene, view, *size, focus, ties)
    named = list(dict.fromkeys(labels))
    joints = list(dict.fromkeys([*ties, *named]))
    joints_m = np.array([scene.shape.at[joint] for joint in joints]).reshape(-1, 3)
    places, _ = view.place(joints_m)
    spots = {joint: (float(x), float(y)) for joint, (x, y) in zip(joints, places, strict=True)}
    bodies = scene.bodies
    new = bodies.some(bodies.is_new)
    middles, _ = view.place(new.centre)
    tags = place_tags(
        [(joint, spots[joint]) for joint in named],
        *size,
        size=label_size,
        keep_clear=list(spots.values()),
        blocked=blocked,
        discs=np.column_stack([middles, new.radius * view.scale]),
    )
    marks += leaders(tags)
    hidden = behind_new(bodies, view.camera, joints_m)
    for (joint, spot), behind in zip(spots.items(), hidden, strict=True):
        marks += joint_dot(spot, joint in ties, bool(behind))
    marks += joint_tags(tags)
    return marks


def depth_tones(bodies: Bodies, depth: FloatArray, link_m: float) -> IntArray:
    """How far each body is dimmed, 0 (near) to 3, so that depth is told."""
    span = max(float(np.ptp(depth)), 2 * link_m) if len(depth) else 1.0
    nearest = np.max(depth, initial=-np.inf)
    return np.asarray(np.minimum(3, (4 * (nearest - depth) / span).astype(int)))


def body_marks(
    scene: Scene,
    view: View,
    width: float,
    height: float,
    focus: Sequence[str] = (),
    ties: Sequence[str] = (),
) -> list[Mark]:
    """Stamps of all bodies that fall into the picture, back to front.

    With `focus` (joints), existing bodies far from them are left out. Existing bodies that
    would be too small to be told apart are drawn as lines.
    """
    framework, shape = scene.framework, scene.shape
    link_m = link_length_m(framework)
    bodies = scene.bodies
    flat, _ = view.place(bodies.centre)
    radius = bodies.radius[:, None] * view.scale
    shown = np.all((flat > -radius) & (flat < np.array([width, height]) + radius), axis=1)
    if focus:
        near_to = np.array([shape.at[joint] for joint in focus])
        away = np.min(np.linalg.norm(bodies.centre[:, None] - near_to[None], axis=2), axis=1)
        # a lock goes with the links about it, none is left hanging by itself
        reach = np.where(bodies.is_link, CLOSE_REACH, CLOSE_REACH - 0.7) * link_m
        shown &= bodies.is_new | (away < reach)
    bodies = bodies.some(shown)
    marks: list[Mark] = []
    if 2 * np.max(bodies.radius, initial=0) * view.scale < THREAD_BELOW_PT:
        marks = thread_marks(framework.balloons, bodies.some(~bodies.is_new), view)
        bodies = bodies.some(bodies.is_new)
    _, depth = view.place(bodies.centre)
    tie_points = np.array([shape.at[joint] for joint in ties]).reshape(-1, 3)
    through, painted = in_front_of_new(bodies, view.camera, tie_points, 0.6 * link_m)
    tones = np.zeros(len(depth), dtype=int)
    if not focus and np.all(bodies.is_new):
        tones = depth_tones(bodies, depth, link_m)

    stamps = _Stamper(scene, view, bodies)
    # fillings at the depth where they hide nothing new, outlines at their own
    rows = [int(i) for i in paint_order(bodies, painted)]
    outlines = [int(i) for i in paint_order(bodies, depth) if through[i]]
    for i in rows:
        while outlines and depth[outlines[0]] < painted[i] - LEVEL_M:
            marks += stamps.of(outlines.pop(0), "outline", 0)
        marks += stamps.of(i, "new" if bodies.is_new[i] else "done", int(tones[i]))
    for i in outlines:
        marks += stamps.of(i, "outline", 0)
    return marks


class _Stamper:
    """Stamps of the bodies of one picture, by row."""

    def __init__(self, scene: Scene, view: View, bodies: Bodies) -> None:
        self._framework = scene.framework
        self._patterns = scene.patterns
        self._finishes = scene.finishes
        self._bodies = bodies
        first, self._first_depth = view.place(bodies.first)
        second, self._second_depth = view.place(bodies.second)
        centre, _ = view.place(bodies.centre)
        self._first, self._second, self._centre = first.tolist(), second.tolist(), centre.tolist()
        self._diameter = (2 * bodies.radius * view.scale).tolist()
        lengths = np.linalg.norm(bodies.second - bodies.first, axis=1) * view.scale
        self._length = lengths.tolist()
        self._with_ends = max(self._diameter, default=0.0) >= ENDS_FROM_PT

    def of(self, i: int, state: str, tone: int) -> list[Mark]:
        """The stamps of body `i`."""
        kind = self._framework.balloons[self._bodies.balloons[i]]
        diameter = self._diameter[i]
        line = quantised_line((NEW_LINE_PT if state == "new" else DONE_LINE_PT) / diameter)
        finish = self._finishes.get(kind.key, kind.finish)
        look = Look("link", kind.colour, state, tone=tone, line=line, finish=finish)
        pattern = self._patterns.get(kind.key, 0)
        if not self._bodies.is_link[i]:
            return round_stamps(look, self._first[i], self._centre[i], diameter, pattern)
        far, near = self._first[i], self._second[i]
        start_near = bool(self._first_depth[i] > self._second_depth[i])
        if start_near:
            far, near = near, far
        return link_stamps(
            look,
            far,
            near,
            true_length=self._length[i],
            diameter=diameter,
            length=quantised_length(kind.tie_to_tie_m / kind.gauge_m),
            near_end=self._near_end(i, start_near) if self._with_ends else "",
            pattern=pattern,
        )

    def _near_end(self, i: int, start_near: bool) -> str:
        link = self._framework.link[self._bodies.names[i]]
        return str(link.end_at(link.start if start_near else link.finish))
