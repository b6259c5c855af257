"""The one who ties and locks at a brace, seen from the side: where the knees are, at which joints
the hands, how the piece lies on the floor or on a knee.

The person kneels where maps and plans have the sign of one (`kneeling_place.py`); how is common
practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np
import shapely
from shapely.geometry import MultiPoint, Polygon

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.bodies import Bodies, Scene
from buildplan.drawing.camera import Camera, PaperView, fit
from buildplan.drawing.kneeling_figure import Posed, figure_marks, kneeling
from buildplan.drawing.kneeling_place import kneeling_at
from buildplan.drawing.label_places import place_tags
from buildplan.drawing.labels import joint_dot, joint_tags, leaders
from buildplan.drawing.line_art import SOFT, TYPE
from buildplan.drawing.marks import Ink, Label, Mark, Picture, Polyline
from buildplan.drawing.panel import Panel
from buildplan.drawing.scene import Stamper
from buildplan.drawing.visibility import behind_what_is_new, joints_m, paint_order

# Metres: how far the hips are from work that lies on a knee; how far that is raised, less the
# further off, as far as this along the piece; how far a helper's hips are.
NEAR_M, RAISED_M, ALONG_M, HELPER_AWAY_M = 0.46, 0.2, 0.75, 0.66
UNDER_M, INSIDE_M = 0.12, 0.07  # from a joint to the hand below it, and to the one inside
# What is within so much of the work is drawn, of what is before the person only what is at the
# work; so much beside the work is within the picture; metres.
SEEN_M, AT_WORK_M, ABOUT_M, BESIDE_M = 1.5, 0.3, 0.8, 0.42
DOWN_DEG = 24.0  # how steeply the picture looks down
MARGIN_PT, CAPTION_PT, CAPTION_UP = 4.0, 11.0, 2.5
SHADOW, SHADOW_M, SHADOW_AT_M = Ink(fill="#E6E9EC"), 0.06, 0.55


@dataclass(frozen=True, eq=False)
class Place:
    """Where work is: its middle (3,), the point (3,) as high above which the hips of the person
    are, unit vectors up from the floor and level from the work to the person, and how high the
    floor is along the first; metres."""

    middle: FloatArray
    hips: FloatArray
    up: FloatArray
    toward: FloatArray
    floor_m: float

    def on_floor(self, points: FloatArray) -> FloatArray:
        """The points (n, 3) of the floor below others."""
        return np.asarray(points + np.outer(self.floor_m - points @ self.up, self.up))

    def below(self, point: FloatArray) -> FloatArray:
        """The point (3,) of the floor below one."""
        return np.asarray(self.on_floor(point[None])[0])


@dataclass(frozen=True, eq=False)
class KneelingWork:
    """Bodies and people at a place, and where the joints are that are named; metres."""

    scene: Scene
    place: Place
    bodies: Bodies
    people: Sequence[Posed]
    named: Mapping[str, FloatArray]


def hands_at(panel: Panel, scene: Scene) -> tuple[str, str]:
    """At which joints of a close-up's first row the hands are, the left one first: at two of the
    front, as far as there are two. The bodies of `scene` are the piece as it is then."""
    return _hands(panel, _place_of(panel, scene))


def _hands(panel: Panel, place: Place) -> tuple[str, str]:
    (row, *_) = panel.rows
    front = [joint for joint in row.joints if joint not in panel.below]
    one, other = [*front, *(joint for joint in row.joints if joint in panel.below)][:2]
    rightward = np.cross(place.up, place.toward)
    left, right = joints_m(panel.scene, (one, other)) @ rightward
    return (one, other) if left < right else (other, one)


def person_tying(
    scene: Scene,
    panel: Panel,
    size: tuple[float, float],
    caption: str,
    alt: str,
    lifted: Sequence[str] = (),
) -> Picture:
    """The person at the work of a close-up, a hand at each of two joints (`hands_at`), and across
    from there a second one who lifts the chains at the joints `lifted`, if there are any. The
    bodies of `scene` are the piece as it is then."""
    place = _place_of(panel, scene)
    joints, hips = _hands(panel, place), place.below(place.hips)
    people = [kneeling(hips, -place.toward, place.up, joints_m(scene, joints))]
    if lifted:
        held = joints_m(scene, lifted)
        middle = np.mean(held, axis=0)
        away = middle - hips
        away = away - place.up * (away @ place.up)
        away = away / float(np.linalg.norm(away))
        opposite = place.below(middle + away * HELPER_AWAY_M)
        people.append(kneeling(opposite, -away, place.up, held[[0, -1]]))
    named = {joint: scene.shape.at[joint] for joint in (*joints, *lifted)}
    return _drawn(KneelingWork(scene, place, scene.bodies, people, named), size, caption, alt)


def person_under(
    scene: Scene,
    panel: Panel,
    joints: Sequence[str],
    size: tuple[float, float],
    caption: str,
    alt: str,
) -> Picture:
    """The person with the work raised on a knee, so that `joints` that lay on the floor can be
    locked: at the nearest of them one hand inside, the other underneath."""
    place = _place_of(panel, scene)
    named = {joint: _raised(scene.shape.at[joint][None], place)[0] for joint in joints}
    hips = place.below(place.middle + place.toward * NEAR_M)
    at = min(named.values(), key=lambda one: float(np.linalg.norm(one - hips)))
    inward = _raised(place.middle[None], place)[0] - at
    inside = at + inward * INSIDE_M / float(np.linalg.norm(inward))
    hands = np.array([inside, at - place.up * UNDER_M])
    people = [kneeling(hips, -place.toward, place.up, hands)]
    own = scene.bodies
    bodies = replace(
        own,
        first=_raised(own.first, place),
        second=_raised(own.second, place),
        centre=_raised(own.centre, place),
    )
    return _drawn(KneelingWork(scene, place, bodies, people, named), size, caption, alt)


def _place_of(panel: Panel, scene: Scene) -> Place:
    """Where the work of a close-up is, in a piece that lies front up."""
    up = np.array(panel.camera.up) / np.linalg.norm(panel.camera.up)
    bodies = scene.bodies
    middle = np.mean(joints_m(scene, panel.joints), axis=0)
    one = kneeling_at(bodies, middle, panel.camera, up)
    near = np.linalg.norm(bodies.centre - middle, axis=1) < SEEN_M
    floor = float(np.min((bodies.centre @ up - bodies.radius)[near]))
    return Place(middle, one.hips, up, one.toward, floor)


def _raised(points: FloatArray, place: Place) -> FloatArray:
    """Points (n, 3) as they are where the work is raised on a knee."""
    off = points - place.middle
    off = off - np.outer(off @ place.up, place.up)
    share = np.clip(1 - np.linalg.norm(off, axis=1) / ALONG_M, 0.0, 1.0)
    return np.asarray(points + np.outer(RAISED_M * share, place.up))


def _seen_from(place: Place, bodies: Bodies, hips: FloatArray) -> Camera:
    """From above and the side of the person on which less of the piece is in front."""
    side = np.cross(place.up, place.toward)
    near = np.linalg.norm(bodies.centre - hips, axis=1) < ABOUT_M
    off = (bodies.centre[near] - hips) @ side
    level = -side if np.sum(off > 0) > np.sum(off < 0) else side
    down = np.radians(DOWN_DEG)
    x, y, z = (level * np.cos(down) + place.up * np.sin(down)).tolist()
    ux, uy, uz = place.up.tolist()
    return Camera((x, y, z), (ux, uy, uz), "person")


def _drawn(work: KneelingWork, size: tuple[float, float], caption: str, alt: str) -> Picture:
    place, hips = work.place, work.people[0].floor
    off = np.linalg.norm(work.bodies.centre - place.middle, axis=1)
    camera = _seen_from(place, work.bodies.some(off < SEEN_M), hips)
    before = (work.bodies.centre - hips) @ camera.axes[2] > 0.0
    shown = (off < SEEN_M) & (~before | (off < AT_WORK_M) | work.bodies.is_new)
    bodies = work.bodies.some(shown)
    spots_m = np.array(list(work.named.values()))
    beside = [place.middle + way * BESIDE_M * camera.axes[0] for way in (-1, 1)]
    framed = np.vstack([*(one.points for one in work.people), spots_m, *beside])
    wide, high = size
    foot = CAPTION_PT if caption else 0.0
    view = fit(camera, framed, 0.1, wide, high - foot, MARGIN_PT)
    view = replace(view, origin=(view.origin[0], view.origin[1] + foot))
    marks = [*_shadow(work, bodies, view), *_painted(work, bodies, view)]
    spots, _ = view.place(spots_m)
    named = [(j, (float(x), float(y))) for j, (x, y) in zip(work.named, spots, strict=True)]
    tags = place_tags(named, wide, high)
    dots = [mark for _, spot in named for mark in joint_dot(spot)]
    marks += [*leaders(tags), *dots, *joint_tags(tags)]
    if caption:
        marks.append(Label((wide / 2, CAPTION_UP), caption, TYPE, SOFT, halo="#FFFFFF"))
    return Picture(wide, high, tuple(marks), alt, (("picture", "person"),))


def _shadow(work: KneelingWork, bodies: Bodies, view: PaperView) -> list[Mark]:
    """The floor under people and under what is near the work, so that it is seen what is raised."""
    place = work.place
    off = np.linalg.norm(bodies.centre - place.middle, axis=1)
    under = place.on_floor(bodies.centre[off < SHADOW_AT_M])
    flat, _ = view.place(under)
    grounds = [shapely.union_all([MultiPoint(flat).buffer(SHADOW_M * 1.6 * view.scale)])]
    for one in work.people:
        low = one.points[(one.points @ place.up) < place.floor_m + 0.15]
        flat, _ = view.place(place.on_floor(low))
        grounds.append(MultiPoint(flat).convex_hull.buffer(SHADOW_M * view.scale))
    whole = shapely.union_all(grounds)
    parts = list(getattr(whole, "geoms", [whole]))
    return [
        Polyline(tuple((round(x, 2), round(y, 2)) for x, y in part.exterior.coords), SHADOW, True)
        for part in parts
        if isinstance(part, Polygon)
    ]


def _painted(work: KneelingWork, bodies: Bodies, view: PaperView) -> list[Mark]:
    """Bodies and people from back to front."""
    stamper = Stamper(work.scene, view, bodies)
    depth = behind_what_is_new(bodies, view.camera)
    layers: list[tuple[float, list[Mark]]] = []
    for i in paint_order(bodies, depth).tolist():
        state = "new" if bodies.is_new[i] else "done"
        layers.append((float(depth[i]), stamper.of(i, state, 0)))
    for one in work.people:
        layers += figure_marks(one, view)
    layers.sort(key=lambda layer: layer[0])
    return [mark for _, marks in layers for mark in marks]
