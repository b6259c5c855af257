"""Pictures of a piece: every balloon stamped in its place, from back to front."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np

from buildplan.drawing.arrays import FloatArray, IntArray
from buildplan.drawing.bodies import Bodies, Scene, finished, link_length_m
from buildplan.drawing.camera import Camera, PaperView, fit
from buildplan.drawing.far_lines import THREAD_BELOW_PT, thread_marks
from buildplan.drawing.framing import MARGIN_PT, floor_points, view_of
from buildplan.drawing.ground import ground_shadow
from buildplan.drawing.label_places import place_tags
from buildplan.drawing.labels import DARK, joint_dot, joint_tags, leaders
from buildplan.drawing.marks import Circle, Ink, Mark, Picture, Polyline
from buildplan.drawing.outlines import quantised_length
from buildplan.drawing.stamps import link_look, link_stamps, round_stamps
from buildplan.drawing.symbols import quantised_line
from buildplan.drawing.visibility import behind_what_is_new, joints_m, paint_order
from buildplan.framework.model import Framework
from buildplan.language.messages import mark
from buildplan.language.voice import Voice
from buildplan.shape.model import Shape

__all__ = ["Scene", "body_marks", "finished", "finished_picture", "finished_words", "step_picture"]


# Outline widths on paper, in points.
NEW_LINE_PT = 0.85
DONE_LINE_PT = 0.45
# Bodies at least this wide on paper show which end is neck and which is tail.
ENDS_FROM_PT = 44.0
# Round the whole piece, so that the ring round a place at its rim stays in the picture.
RING_MARGIN_PT, RING_ROOM = 14.0, 0.09  # no more than this share of a small picture
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
    return Picture(width, height, tuple(marks), alt, (("picture", "finished piece"),))


def finished_words(framework: Framework, camera: Camera, voice: Voice) -> str:
    """What a picture of the finished piece shows."""
    messages = {
        "front": mark("{piece}, finished, seen from the front."),
        "back": mark("{piece}, finished, seen from the back."),
        "side": mark("{piece}, finished, seen from the side."),
        "top": mark("{piece}, finished, seen from the top."),
        "corner": mark("{piece}, finished, seen from the corner."),
    }
    return voice.say(
        messages.get(camera.name, mark("{piece}, finished, seen.")), piece=framework.name
    )


def step_picture(
    scene: Scene,
    camera: Camera,
    width: float,
    height: float,
    *,
    labels: Sequence[str] = (),
    label_size: float = 8.0,
    place: Sequence[str] = (),
    also: FloatArray | None = None,
    alt: str = "",
) -> Picture:
    """The whole piece as far as it stands, with what is new in full colour.

    The piece keeps its place on the page from step to step. `labels` are joints that are named,
    and a circle goes round those of `place`, to show where a close-up is; the points `also` (n, 3)
    are within the picture.
    """
    view = whole_view(scene, camera, width, height, also)
    marks = body_marks(scene, view, width, height)
    marks += _named(scene, view, (width, height), labels, label_size)
    if place:
        marks.append(place_ring(scene, view, place, (width, height)))
    return Picture(width, height, tuple(marks), alt, (("picture", "whole piece"),))


def whole_view(
    scene: Scene, camera: Camera, width: float, height: float, also: FloatArray | None = None
) -> PaperView:
    """The view of a whole piece in a picture of this size, with room about it for a ring, and of
    the points `also` (n, 3)."""
    margin = min(RING_MARGIN_PT, RING_ROOM * min(width, height))
    return view_of(scene, camera, width, height, scene.shape.joints, margin, also)


def place_ring(
    scene: Scene, view: PaperView, joints: Sequence[str], size: tuple[float, float]
) -> Mark:
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


def _named(
    scene: Scene, view: PaperView, size: tuple[float, float], names: Sequence[str], type_pt: float
) -> list[Mark]:
    """Joints' dots, and tags with their labels."""
    joints = list(dict.fromkeys(names))
    places, _ = view.place(joints_m(scene, joints))
    spots = {joint: (float(x), float(y)) for joint, (x, y) in zip(joints, places, strict=True)}
    tags = place_tags(list(spots.items()), *size, size=type_pt)
    dots = [mark for spot in spots.values() for mark in joint_dot(spot)]
    return [*leaders(tags), *dots, *joint_tags(tags)]


def depth_tones(bodies: Bodies, depth: FloatArray, link_m: float) -> IntArray:
    """How far each body is dimmed, 0 (near) to 3, so that depth is told."""
    span = max(float(np.ptp(depth)), 2 * link_m) if len(depth) else 1.0
    nearest = np.max(depth, initial=-np.inf)
    return np.asarray(np.minimum(3, (4 * (nearest - depth) / span).astype(int)))


def body_marks(
    scene: Scene,
    view: PaperView,
    width: float,
    height: float,
) -> list[Mark]:
    """Stamps of all bodies that fall into the picture, back to front; what stands is never
    drawn over what is new. Existing bodies too small to be told apart are drawn as lines."""
    framework = scene.framework
    link_m = link_length_m(framework)
    bodies = scene.bodies
    flat, _ = view.place(bodies.centre)
    radius = bodies.radius[:, None] * view.scale
    shown = np.all((flat > -radius) & (flat < np.array([width, height]) + radius), axis=1)
    bodies = bodies.some(shown)
    marks: list[Mark] = []
    if 2 * np.max(bodies.radius, initial=0) * view.scale < THREAD_BELOW_PT:
        marks = thread_marks(framework.balloons, bodies.some(~bodies.is_new), view)
        bodies = bodies.some(bodies.is_new)
    _, depth = view.place(bodies.centre)
    painted = behind_what_is_new(bodies, view.camera)
    tones = np.zeros(len(depth), dtype=int)
    if np.all(bodies.is_new):
        tones = depth_tones(bodies, depth, link_m)
    stamper = Stamper(scene, view, bodies)
    for i in paint_order(bodies, painted):
        marks += stamper.of(int(i), "new" if bodies.is_new[i] else "done", int(tones[i]))
    return marks


class Stamper:
    """Stamps of the bodies of one picture, by row."""

    def __init__(self, scene: Scene, view: PaperView, bodies: Bodies) -> None:
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
        look = link_look(kind.colour, state, tone, line, finish)
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
