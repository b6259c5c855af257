"""Pictures of a scene: every balloon stamped in its place, from back to front."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import numpy as np
import numpy.typing as npt

from buildplan.drawing.camera import Camera, View, fit
from buildplan.drawing.labels import joint_dot, joint_tags, leaders, place_tags
from buildplan.drawing.looks import (
    body_length,
    quantised_aspect,
    quantised_length,
    quantised_line,
    shows_end,
)
from buildplan.drawing.marks import Look, Mark, Picture, Stamp
from buildplan.drawing.scene import Bodies, Scene, scene_bodies

FloatArray = npt.NDArray[np.float64]
BoolArray = npt.NDArray[np.bool_]

# Outline widths on paper, in points.
NEW_LINE_PT = 0.75
DONE_LINE_PT = 0.45
# Bodies at least this wide on paper show which end is neck and which is tail.
ENDS_FROM_PT = 44.0
# Reach of a close-up, in link lengths from the nearest joint in focus.
CLOSE_REACH = 1.35
FAINT_REACH = 2.5
MARGIN_PT = 6.0


def view_of(
    scene: Scene,
    camera: Camera,
    width: float,
    height: float,
    frame: Iterable[str] = (),
    margin: float = MARGIN_PT,
) -> View:
    """The view that fits the scene's bodies, and the bodies about the joints of `frame`,
    into a picture."""
    bodies = scene_bodies(scene)
    joints = list(frame)
    points = [bodies.centre, *(scene.shape.at[joint][None, :] for joint in joints)]
    size = max((b.gauge_m for b in scene.framework.balloons.values()), default=0.2) / 2
    radii = np.concatenate([bodies.radius, np.full(len(joints), size)])
    return fit(camera, np.vstack(points), radii, width, height, margin)


def close_view(
    scene: Scene, camera: Camera, width: float, height: float, focus: Iterable[str]
) -> View:
    """The view of some joints with about one link length of surroundings."""
    points = np.array([scene.shape.at[joint] for joint in focus])
    return fit(camera, points, 0.95 * link_length_m(scene), width, height, MARGIN_PT)


def link_length_m(scene: Scene) -> float:
    """The longest tie-to-tie length among the piece's link balloons."""
    kinds = scene.framework.balloons.values()
    return max((kind.tie_to_tie_m for kind in kinds if kind.kind == "link"), default=0.2)


def see_through(bodies: Bodies, view: View, ties_m: FloatArray) -> BoolArray:
    """Which bodies are to be drawn as thin outline.

    Those that stand already and lie in front of something new, or of a joint (k, 3) that is
    to be tied.
    """
    flat, depth = view.place(bodies.centre)
    radius = bodies.radius * view.scale
    result = np.zeros(len(depth), dtype=bool)
    done = np.flatnonzero(~bodies.is_new)
    new = np.flatnonzero(bodies.is_new)
    if done.size and new.size:
        apart = np.linalg.norm(flat[done][:, None] - flat[new][None], axis=2)
        touching = apart < 0.96 * (radius[done][:, None] + radius[new][None])
        result[done] |= np.any(touching & (depth[done][:, None] > depth[new][None]), axis=1)
    if done.size and len(ties_m):
        spots, tie_depth = view.place(ties_m)
        apart = np.linalg.norm(flat[done][:, None] - spots[None], axis=2)
        over = apart < 1.02 * radius[done][:, None]
        result[done] |= np.any(over & (depth[done][:, None] > tie_depth[None] + 1e-6), axis=1)
    return result


def depth_tones(bodies: Bodies, depth: FloatArray, link_m: float) -> npt.NDArray[np.int_]:
    """How far each body is dimmed, 0 (near) to 3, when the picture has depth to tell."""
    if not len(depth):
        return np.zeros(0, dtype=int)
    span = max(float(np.ptp(depth)), 2 * link_m)
    return np.asarray(np.minimum(3, (4 * (np.max(depth) - depth) / span).astype(int)))


def picture_of(
    scene: Scene,
    view: View,
    width: float,
    height: float,
    *,
    focus: Sequence[str] = (),
    ties: Sequence[str] = (),
    labels: Sequence[str] = (),
    label_size: float = 8.0,
    alt: str = "",
) -> Picture:
    """The picture of a scene.

    With `focus` (joints), bodies far from them are faint or left out. `ties` are joints
    that are tied in this picture, ringed; `labels` those that are named. The same input
    gives the same picture.
    """
    bodies = scene_bodies(scene)
    marks = body_marks(scene, bodies, view, width, height, focus, ties)
    spots = {joint: _spot(scene, view, joint) for joint in dict.fromkeys([*ties, *labels])}
    tags = place_tags(
        [(joint, spots[joint]) for joint in dict.fromkeys(labels)],
        width,
        height,
        size=label_size,
        keep_clear=list(spots.values()),
    )
    marks += leaders(tags)
    for joint, spot in spots.items():
        marks += joint_dot(spot, tied=joint in ties)
    marks += joint_tags(tags)
    return Picture(width, height, tuple(marks), alt)


def _spot(scene: Scene, view: View, joint: str) -> tuple[float, float]:
    flat, _ = view.place(scene.shape.at[joint][None, :])
    return (float(flat[0, 0]), float(flat[0, 1]))


def body_marks(
    scene: Scene,
    bodies: Bodies,
    view: View,
    width: float,
    height: float,
    focus: Sequence[str] = (),
    ties: Sequence[str] = (),
) -> list[Mark]:
    """Stamps of all bodies that fall into the picture, back to front."""
    centre, depth = view.place(bodies.centre)
    first, first_depth = view.place(bodies.first)
    second, second_depth = view.place(bodies.second)
    radius = bodies.radius * view.scale
    link_m = link_length_m(scene)
    tie_points = np.array([scene.shape.at[joint] for joint in ties]).reshape(-1, 3)
    outlined = see_through(bodies, view, tie_points)
    shown = np.all((centre > -radius[:, None]) & (centre < [width, height] + radius[:, None]), 1)
    if focus:
        near_to = np.array([scene.shape.at[joint] for joint in focus])
        away = np.min(np.linalg.norm(bodies.centre[:, None] - near_to[None], axis=2), axis=1)
        shown &= bodies.is_new | (away < FAINT_REACH * link_m)
        outlined |= ~bodies.is_new & (away > CLOSE_REACH * link_m)
    tones = np.zeros(len(depth), dtype=int)
    if not focus and np.all(bodies.is_new):
        tones = depth_tones(bodies, depth, link_m)
    with_ends = bool(len(radius)) and 2 * float(np.max(radius)) >= ENDS_FROM_PT

    marks: list[Mark] = []
    for i in np.argsort(depth, kind="stable"):
        if not shown[i]:
            continue
        kind = scene.framework.balloons[bodies.balloons[i]]
        state = "outline" if outlined[i] else "new" if bodies.is_new[i] else "done"
        diameter = 2 * radius[i]
        line = quantised_line((NEW_LINE_PT if state == "new" else DONE_LINE_PT) / diameter)
        look = Look("link", kind.colour, state, tone=int(tones[i]), line=line)
        sign = scene.patterns.get(kind.key, 0)
        if bodies.is_link[i]:
            turned = first_depth[i] > second_depth[i]
            far, near = (second[i], first[i]) if turned else (first[i], second[i])
            near_end = ""
            if with_ends:
                link = scene.framework.link[bodies.names[i]]
                near_end = str(link.end_at(link.start if turned else link.finish))
            true = float(np.linalg.norm(bodies.second[i] - bodies.first[i])) * view.scale
            length = quantised_length(kind.tie_to_tie_m / kind.gauge_m)
            marks += link_stamps(look, far, near, true, diameter, length, near_end, sign)
        else:
            marks += round_stamps(look, first[i], centre[i], diameter, sign)
    return marks


def link_stamps(
    look: Look,
    far: FloatArray,
    near: FloatArray,
    true_length: float,
    diameter: float,
    length: float,
    near_end: str = "",
    pattern: int = 0,
) -> list[Mark]:
    """The stamps of one link balloon, drawn from its far knot to its near knot (points).

    `true_length` is the distance between the knots in space, in points; `length` the
    balloon's tie-to-tie length over its diameter.
    """
    along = near - far
    drawn = float(np.hypot(along[0], along[1]))
    cosine, sine = (along / drawn) if drawn > 1e-6 else (1.0, 0.0)
    aspect = quantised_aspect(length, drawn / true_length if true_length > 0 else 0.0)
    # what the steps of foreshortening leave over, so that every end meets its joint
    stretch = float(np.clip(drawn / (aspect * diameter), 0.8, 1.25)) if aspect > 0.3 else 1.0
    x, y = (near + far) / 2
    d, s = diameter, diameter * stretch
    turned = (s * cosine, s * sine, -d * sine, d * cosine)
    link = _as(look, "link", aspect=aspect, length=length, near=near_end)
    marks: list[Mark] = [Stamp(link, _matrix(*turned, x, y))]
    if look.state != "outline":
        extra = d * (body_length(length, aspect) - 1)
        matrix = (d + extra * cosine**2, extra * cosine * sine, d + extra * sine**2)
        marks.append(
            Stamp(_as(look, "body"), _matrix(matrix[0], matrix[1], matrix[1], matrix[2], x, y))
        )
        if look.state == "new" and pattern:
            marks.append(Stamp(_as(look, "pattern", pattern=pattern), _matrix(d, 0, 0, d, x, y)))
        if shows_end(length, aspect):
            end = _as(look, "end", near=near_end)
            marks.append(
                Stamp(end, _matrix(d * cosine, d * sine, -d * sine, d * cosine, near[0], near[1]))
            )
    return marks


def round_stamps(
    look: Look, joint: FloatArray, centre: FloatArray, diameter: float, pattern: int = 0
) -> list[Mark]:
    """The stamps of one round, its knot towards the joint."""
    toward = joint - centre
    length = float(np.hypot(toward[0], toward[1]))
    c, s = (toward / length * diameter) if length > 1e-6 else (diameter, 0.0)
    x, y = centre
    marks: list[Mark] = [Stamp(_as(look, "round"), _matrix(c, s, -s, c, x, y))]
    if look.state != "outline":
        marks.append(Stamp(_as(look, "body"), _matrix(diameter, 0, 0, diameter, x, y)))
        if look.state == "new" and pattern:
            sign = _as(look, "pattern", pattern=pattern)
            marks.append(Stamp(sign, _matrix(diameter, 0, 0, diameter, x, y)))
    return marks


def _as(
    look: Look,
    form: str,
    aspect: float = 1.0,
    length: float = 1.0,
    near: str = "",
    pattern: int = 0,
) -> Look:
    """The look of another form of the same balloon; what the form does not use is left at
    its plain value, so that equal looks are one."""
    outlined = form in ("link", "end", "round")
    return Look(
        form,
        look.colour,
        look.state,
        aspect=aspect,
        pattern=pattern,
        length=length,
        near=near,
        tone=look.tone if form != "pattern" else 0,
        line=look.line if outlined else 0.0,
    )


def _matrix(*values: float) -> tuple[float, float, float, float, float, float]:
    a, b, c, d, e, f = (round(float(value), 3) for value in values)
    return (a, b, c, d, e, f)
