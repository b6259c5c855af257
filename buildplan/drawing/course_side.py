"""A course from the side, cut through the middle: how what stands hangs open before its chains
come on, and how it stands once they are tied, with the hands at its first joint."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.bodies import Bodies, Scene, every_body, link_length_m
from buildplan.drawing.camera import Camera, PaperView, fit, project
from buildplan.drawing.hanging import End, hanging
from buildplan.drawing.label_places import place_tags
from buildplan.drawing.labels import joint_dot, joint_tags, leaders
from buildplan.drawing.line_art import INK, TYPE
from buildplan.drawing.marks import Box, Ink, Inset, Mark, Picture, Point, Polyline
from buildplan.drawing.scene import body_marks
from buildplan.drawing.techniques.hands import pinching_hand
from buildplan.drawing.techniques.props import badge, move, signs, words
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice
from buildplan.shape.model import Shape

# Points: how wide and high each of the two views is, what is free about it and below it.
WIDE, HIGH, FOOT = 122.0, 120.0, 12.0
LEFT, RIGHT, ABOVE = 12.0, 32.0, 28.0
HAND, BOW, LEAST_MOVE = 0.55, 9.0, 8.0
BY_HANDS, ONE_KNOT = 30.0, 3.0
RAISED = 0.1  # of the way at which it is looked at
NEAR_CUT = 0.3  # of a link: what is further than this before the cut is cut away
MOST_NAMED, AT_LEAST_M = 4, 1e-6
GROUND = 4.0
FLOOR = Ink(stroke=INK, width=0.8)

Free = Mapping[End, FloatArray]


@dataclass(frozen=True)
class WorkMoment:
    """What is there at a moment: links, and the joints that are tied by then."""

    links: frozenset[str]
    tied: frozenset[str]


def course_side(
    framework: Framework,
    shape: Shape,
    before: WorkMoment,
    after: WorkMoment,
    first: str,
    voice: Voice,
    alt: str,
) -> Picture:
    """The side view of a course, before and after it comes on; `first` is the joint that is tied
    first, at the right."""
    camera, new = _beside(framework, shape, first), after.tied - before.tied
    ends = [_hangs(framework, shape, one) for one in (before, after)]
    moving = frozenset(
        id_ for joint in new for id_ in framework.links_at[joint] if id_ in after.links
    )
    own = framework.built_with(first)
    middle = np.array([shape.at[joint] for joint in own.joints]).mean(axis=0)
    scenes = [
        _cut(framework, shape, camera, one, bodies, moving, middle)
        for one, (bodies, _) in zip((before, after), ends, strict=True)
    ]
    view, high = _on_the_floor(camera, [one.bodies for one in scenes])
    ((x, y),), _ = view.place(shape.at[first])
    goal = (float(x), float(y))
    knots = [_seen(scene, view, free) for scene, (_, free) in zip(scenes, ends, strict=True)]
    knots[1] = [one for one in knots[1] if math.dist(one.at, goal) > BY_HANDS]
    pressed = max((one.at for one in knots[0] if one.joint == first), default=None)
    hands = (_pressing(pressed, goal), _holding(goal))
    held = (pressed, goal)
    said = (voice.say("before"), voice.say("after"))
    marks: list[Mark] = []
    for place, scene in enumerate(scenes):
        drawn = [
            Polyline(((0.0, GROUND), (WIDE, GROUND)), FLOOR),
            *body_marks(scene, view, WIDE, high),
            *hands[place],
            *_named(knots[place], first, held[place], high, _hand_boxes(place, held[place])),
        ]
        marks.append(Inset(Picture(WIDE, high, tuple(drawn), ""), (place * WIDE, FOOT)))
        marks.append(words(((place + 0.5) * WIDE, 2.0), said[place]))
    return Picture(2 * WIDE, high + FOOT, tuple(marks), alt, (("picture", "course from the side"),))


def _on_the_floor(camera: Camera, moments: Sequence[Bodies]) -> tuple[PaperView, float]:
    """The view of what is there at either moment, at the foot of a picture, with room for hands to
    its right and above it; and how high the picture is."""
    middles = np.vstack([one.centre for one in moments])
    radii = np.concatenate([one.radius for one in moments])
    view = fit(camera, middles, radii, WIDE - LEFT - RIGHT, HIGH - ABOVE, 0.0)
    flat, _ = view.place(middles)
    low = float(np.min(flat[:, 1] - radii * view.scale))
    high = float(np.max(flat[:, 1] + radii * view.scale)) - low + GROUND + ABOVE
    origin = (view.origin[0] + LEFT, view.origin[1] - low + GROUND)
    return replace(view, origin=origin), high


def _pressing(knot: Point | None, goal: Point) -> list[Mark]:
    """A hand that brings the first knot from where it hangs to where it is tied."""
    if knot is None:
        return []
    hand = pinching_hand(knot, 0.0, HAND)
    if math.dist(knot, goal) < LEAST_MOVE:
        return hand
    way = (goal[0] - knot[0], goal[1] - knot[1])
    bowed = (knot[0] + 0.4 * way[0] + BOW, knot[1] + 0.7 * way[1] + BOW)
    return [*hand, *move([knot, bowed, goal])]


def _holding(joint: Point) -> list[Mark]:
    """The hands of the one who holds the first joint from outside, and of the other with its lock
    from above."""
    x, y = joint
    return [
        *pinching_hand((x + 2.0, y - 1.0), 345.0, HAND),
        *badge((x + 34.0, y - 8.0), "1"),
        *pinching_hand((x - 1.0, y + 2.0), 95.0, HAND),
        *badge((x + 8.0, y + 22.0), "2"),
    ]


def _hand_boxes(place: int, joint: Point | None) -> list[Box]:
    """Where hands are at a joint: no name comes there."""
    if joint is None:
        return []
    x, y = joint
    from_outside = (x, y - 14.0, x + 42.0, y + 5.0)
    return [from_outside, (x - 7.0, y, x + 15.0, y + 30.0)] if place else [from_outside]


def _beside(framework: Framework, shape: Shape, joint: str) -> Camera:
    """Level, or nearly so, with a joint at the right of what it is built with."""
    own = np.array([shape.at[one] for one in framework.built_with(joint).joints])
    right = (shape.at[joint] - own.mean(axis=0)) * (1.0, 0.0, 1.0)
    far = float(np.linalg.norm(right))
    right = right / far if far > AT_LEAST_M else np.array([1.0, 0.0, 0.0])
    x, _, z = np.cross(right, np.array([0.0, 1.0, 0.0])).tolist()
    return Camera((x, RAISED, z), (0.0, 1.0, 0.0), "side")


def _hangs(framework: Framework, shape: Shape, moment: WorkMoment) -> tuple[Bodies, Free]:
    bodies, free = hanging(framework, shape, every_body(framework, shape), moment.tied)
    return bodies, {end: place for end, place in free.items() if end[0] in moment.links}


def _cut(
    framework: Framework,
    shape: Shape,
    camera: Camera,
    moment: WorkMoment,
    bodies: Bodies,
    moving: frozenset[str],
    through: FloatArray,
) -> Scene:
    """What is there at a moment, without what lies before the cut `through` a point (3,)."""
    _, middle = project(camera, through)
    _, depth = project(camera, bodies.centre)
    kept = depth <= float(middle[0]) + NEAR_CUT * link_length_m(framework)
    locks = moment.tied & framework.lock_at.keys()
    return Scene(
        framework,
        shape,
        new_links=moment.links & moving,
        done_links=moment.links - moving,
        done_locks=frozenset(locks),
        patterns=signs(framework),
        every_body=bodies.some(kept),
    )


@dataclass(frozen=True)
class _HangingKnot:
    """A knot that hangs, and where it is in the picture."""

    joint: str
    at: Point


def _seen(scene: Scene, view: PaperView, free: Free) -> list[_HangingKnot]:
    """The free knots of what is drawn, from left to right; those that cover one another once."""
    ends = np.vstack([scene.bodies.first, scene.bodies.second])
    found: list[_HangingKnot] = []
    if not len(ends):  # all of it lies before the cut
        return found
    for (_, joint), place in free.items():
        ((x, y),), _ = view.place(place)
        knot = _HangingKnot(joint, (float(x), float(y)))
        drawn = float(np.min(np.linalg.norm(ends - place, axis=1))) < AT_LEAST_M
        alike = (one for one in found if one.joint == joint)
        if drawn and all(math.dist(one.at, knot.at) > ONE_KNOT for one in alike):
            found.append(knot)
    return sorted(found, key=lambda one: one.at)


def _named(
    knots: Sequence[_HangingKnot], first: str, held: Point | None, high: float, hands: Sequence[Box]
) -> list[Mark]:
    """Dots and names of free knots: of many some, and of the one that hands hold."""
    named = [(one.joint, one.at) for one in knots if one.at != held]
    if len(named) > MOST_NAMED:
        named = [named[0], named[len(named) // 2]]
    named += [(first, held)] if held is not None else []
    tags = place_tags(named, WIDE, high, size=TYPE, blocked=hands)
    dots = [mark for _, spot in named for mark in joint_dot(spot)]
    return [*leaders(tags), *dots, *joint_tags(tags)]
