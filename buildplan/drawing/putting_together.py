"""How the parts of an assembly come together standing: which stand where, which is lifted on top,
who is at it, and the joints that come to the front."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import starmap

import numpy as np

from buildplan.drawing.bodies import Bodies, Scene, every_body, finished, link_length_m
from buildplan.drawing.camera import CAMERAS, PaperView, fit
from buildplan.drawing.dimensions import PERSON_M, person_marks
from buildplan.drawing.floor_distances import LINE_PT, distance_marks, rows_of_figures
from buildplan.drawing.fonts import text_width
from buildplan.drawing.framing import MARGIN_PT
from buildplan.drawing.label_places import place_tags
from buildplan.drawing.labels import DARK, joint_dot, joint_tags, leaders
from buildplan.drawing.line_art import PAPER, TYPE
from buildplan.drawing.marks import Box, Ink, Label, Mark, Picture, Point, Polyline
from buildplan.drawing.scene import body_marks
from buildplan.drawing.taped_lines import boxes_meet
from buildplan.drawing.way_round import pointed
from buildplan.framework.model import Framework
from buildplan.shape.model import FloatArray, Shape

# A part that is lifted is drawn so far above its place, in link lengths; a person so far beside
# the piece, in metres: for looks only.
LIFTED, BESIDE_M = 2.0, 0.45
ROOM_M = 0.14  # about what is shown
BELOW_PT = 20.0  # under the floor, for how far parts are apart
NAME_PT = 13.0
FLOOR = Ink(stroke="#8A9AA8", width=0.8)


@dataclass(frozen=True)
class PartShown:
    """A part as it is put: its name, its joints that are named, and whether it is lifted."""

    name: str
    joints: tuple[str, ...]
    lifted: bool


def put_together_picture(
    framework: Framework,
    shape: Shape,
    parts: Sequence[PartShown],
    apart: Sequence[str],
    people: Sequence[str],
    size: tuple[float, float],
    alt: str,
    patterns: Mapping[str, int],
) -> Picture:
    """Parts that stand, seen from the front, and above them those that are lifted on; `people`
    stand beside them, what each does under their feet or over their heads. No other part is drawn.
    `apart` says how far each part on the floor is from the next, middle to middle. The picture is
    of a size at most, in points, and no higher than it need be."""
    width, _ = size
    rise = np.array([0.0, LIFTED * link_length_m(framework), 0.0])
    own = {part.name: part.framework for part in framework.parts}
    middles = {one.name: _middle(shape, own[one.name]) + rise * one.lifted for one in parts}
    bodies = _present(framework, every_body(framework, shape), [own[one.name] for one in parts])
    raised = _of(bodies, [own[one.name] for one in parts if one.lifted])
    moved = bodies.moved(raised[:, None] * rise)
    low, high = moved.centre.min(axis=0), moved.centre.max(axis=0)
    people_at = [_beside(low, high, number) for number in range(len(people))]
    ends = [(x, y, 0.0) for x in people_at for y in (0.0, PERSON_M)]
    points = np.vstack([moved.centre, np.array(ends).reshape(-1, 3)])
    below = BELOW_PT
    view, height = _fitted(points, size, below)

    def at(place: FloatArray) -> Point:
        ((x, y),), _ = view.place(np.asarray(place, dtype=float)[None])
        return (float(x), float(y))

    feet = [middles[one.name] for one in parts if not one.lifted]
    rows = max(rows_of_figures([at(foot)[0] for foot in feet], apart), default=0)
    if rows:
        below += rows * LINE_PT
        view, height = _fitted(points, size, below)
    floor = at(np.zeros(3))[1]
    marks: list[Mark] = [Polyline(((4.0, floor), (width - 4.0, floor)), FLOOR)]
    feet_at = [at(np.array([x, 0.0, 0.0])) for x in people_at]
    marks += _people(feet_at, people, view.scale)
    marks += body_marks(_scene(framework, shape, moved, patterns), view, width, height)
    lifted = {one.name for one in parts if one.lifted}
    for meeting in _meetings(framework, shape, lifted, {one.name for one in parts} - lifted):
        marks += pointed([at(meeting + rise * share) for share in (0.85, 0.5, 0.15)])
    spots = [
        (joint, at(shape.at[joint] + rise * one.lifted)) for one in parts for joint in one.joints
    ]
    sides = {joint: 1 if one.lifted else -1 for one in parts for joint in one.joints}
    named = _clear({name: at(middle) for name, middle in middles.items()})
    tags = place_tags(
        spots, width, height, size=TYPE, sides=sides, blocked=[*starmap(_name_box, named.items())]
    )
    marks += [*leaders(tags), *(mark for _, spot in spots for mark in joint_dot(spot))]
    marks += joint_tags(tags)
    for name, (x, y) in named.items():
        marks.append(Label((x, y - 4), name, NAME_PT, DARK, bold=True, halo=PAPER))
    marks += distance_marks([at(foot)[0] for foot in feet], below - BELOW_PT / 2, apart)
    return Picture(width, height, tuple(marks), alt, (("picture", "putting together"),))


def _fitted(points: FloatArray, size: tuple[float, float], below: float) -> tuple[PaperView, float]:
    """Points (n, 3) as they are seen in a picture of a size at most, with so much room under the
    floor, and how high the picture then is."""
    width, most = size
    wide_m, high_m = (np.ptp(points[:, :2], axis=0) + 2 * ROOM_M).tolist()
    high = min(most, below + high_m / wide_m * (width - 2 * MARGIN_PT) + 2 * MARGIN_PT)
    seen = fit(CAMERAS["front"], points, ROOM_M, width, high - below, MARGIN_PT)
    return replace(seen, origin=(seen.origin[0], seen.origin[1] + below)), high


def _people(feet: Sequence[Point], does: Sequence[str], scale: float) -> Iterator[Mark]:
    """People at their places on the page, so many points to the metre, with what each does under
    them, or over every second where the words of neighbours would meet."""
    close = any(text_width(words, TYPE) > BESIDE_M * scale for words in does)
    for number, ((x, y), words) in enumerate(zip(feet, does, strict=True)):
        yield from person_marks((x, y), PERSON_M * scale)
        over = close and number // 2 % 2 == 1
        words_y = y + PERSON_M * scale + 2 if over else y - TYPE - 2
        yield Label((x, words_y), words, TYPE, DARK, halo=PAPER)


def _clear(named: Mapping[str, Point]) -> dict[str, Point]:
    """The names of parts at their places, each lower where it would lie on one before."""
    found: dict[str, Point] = {}
    for name, (x, y) in named.items():
        boxes = [_name_box(*other) for other in found.items()]
        while any(boxes_meet(_name_box(name, (x, y)), box) for box in boxes):
            y -= NAME_PT + 2
        found[name] = (x, y)
    return found


def _name_box(name: str, at: Point) -> Box:
    """Where a part's name stands."""
    half = text_width(name, NAME_PT, bold=True) / 2
    return (at[0] - half, at[1] - NAME_PT / 2, at[0] + half, at[1] + NAME_PT / 2)


def _beside(low: FloatArray, high: FloatArray, number: int) -> float:
    """Where a person stands, by turns to the left and to the right of the piece; metres."""
    away = BESIDE_M * (1 + number // 2)
    return float(low[0]) - away if number % 2 else float(high[0]) + away


def _middle(shape: Shape, own: Framework) -> FloatArray:
    at = np.array([shape.at[joint] for joint in own.joints])
    middle: FloatArray = (at.min(axis=0) + at.max(axis=0)) / 2
    # a part that is open below, as an arch is, has its name where it is
    over = at[np.abs(at[:, 0] - middle[0]) < np.ptp(at[:, 0]) / 4]
    if len(over):
        middle[1] = float(np.mean(over[:, 1]))
    return middle


def _present(framework: Framework, bodies: Bodies, parts: Sequence[Framework]) -> Bodies:
    """The bodies of some parts, and of the balloons and locks between them."""
    joints = {joint for own in parts for joint in own.joints}
    ties = {tie.name for tie in framework.ties if joints.issuperset(tie.joints)}

    def is_there(name: str, is_link: bool) -> bool:
        if not is_link:
            return name in joints or name in ties
        return joints.issuperset((framework.link[name].start, framework.link[name].finish))

    there = map(is_there, bodies.names, bodies.is_link.tolist())
    return bodies.some(np.array([*there], dtype=bool))


def _of(bodies: Bodies, parts: Sequence[Framework]) -> FloatArray:
    """1 for each body that is of one of some parts, else 0."""
    links = {link.id for own in parts for link in own.links}
    locks = {lock.joint for own in parts for lock in own.locks}
    return np.array(
        [
            float(name in (links if is_link else locks))
            for name, is_link in zip(bodies.names, bodies.is_link, strict=True)
        ]
    )


def _scene(
    framework: Framework, shape: Shape, bodies: Bodies, patterns: Mapping[str, int]
) -> Scene:
    """Everything but the locks of what is not tied yet."""
    ties = {tie.name for tie in framework.ties}
    return replace(
        finished(framework, shape, patterns),
        every_body=bodies,
        new_locks=frozenset(framework.lock_at) - ties,
    )


def _meetings(
    framework: Framework, shape: Shape, lifted: set[str], standing: set[str]
) -> list[FloatArray]:
    """The middle (3,) of each place where a part that is lifted is tied to one that stands."""
    found: dict[tuple[str, ...], list[FloatArray]] = {}
    for tie in framework.ties:
        parts = [part.name for part in map(framework.part_at, tie.joints) if part is not None]
        if lifted & set(parts) and standing & set(parts):
            found.setdefault(tuple(sorted(parts)), []).append(shape.at[tie.joints[0]])
    return [np.asarray(np.mean(places, axis=0)) for places in found.values()]
