"""The lock of a joint where more balloons meet than at those before, large: from inside the piece
the gaps through which its rounds go out, from outside where they sit; and those gaps at joints of
few balloons and of many, side by side."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np

from buildplan.drawing.bodies import lock_centres
from buildplan.drawing.camera import Camera
from buildplan.drawing.fonts import text_width
from buildplan.drawing.line_art import INK, PAPER, TYPE
from buildplan.drawing.marks import Ink, Inset, Label, Mark, Picture, Point, Polyline
from buildplan.drawing.scene import body_marks
from buildplan.drawing.techniques.held_locks import from_outside, locked_joint
from buildplan.drawing.techniques.open_gaps import NECK, close_by, from_inside, joint_inside
from buildplan.drawing.techniques.props import (
    WIDTH,
    Strand,
    badge,
    knot,
    move,
    palette,
    picture,
    round_,
    weave,
    words,
)
from buildplan.framework.model import Framework
from buildplan.language.messages import mark
from buildplan.language.voice import Voice
from buildplan.sequence.reach import is_one_layer
from buildplan.shape.model import Shape

# Points: the middles of the two views, half their size.
INSIDE_AT, OUTSIDE_AT, HALF = (56.0, 72.0), (165.0, 72.0), 50.0
FROM_OUTSIDE_HIGH = 128.0
NAMED_AT = 0.85  # of the way to the other joint
CLEAR_OF_ROUNDS = 0.8  # of half a view: how far from the joint a name is at least
# Of two joints beside one another: the middles of the three views, half their size; how high.
PAIR_AT, PAIR_HALF, PAIR_HIGH = ((37.0, 54.0), (110.0, 54.0), (183.0, 54.0)), 37.0, 106.0
# Of joints side by side: the middles of the views, half their size; how high the picture is.
GAPS_AT, GAPS_HALF, GAPS_HIGH = ((37.0, 52.0), (110.0, 52.0), (183.0, 52.0)), 34.0, 108.0


def lock_of_joint(
    framework: Framework, voice: Voice, joint: str, shape: Shape, plan: Camera | None = None
) -> Picture:
    """The lock of `joint` as its balloons lie: from inside, its knot on the joint and a round going
    out through a gap to either side; from outside, both rounds where they sit tight. Of a joint
    that lies flat on a `plan` both are turned as there."""
    marks: list[Mark] = [
        *joint_inside(framework, shape, joint, INSIDE_AT, HALF, plan),
        *_leading_to(
            framework, shape, joint, from_inside(framework, shape, joint, plan), INSIDE_AT, HALF
        ),
        locked_joint(framework, shape, joint, OUTSIDE_AT, HALF, plan),
        *badge((10.0, 120.0), "1"),
        *badge((119.0, 120.0), "2"),
        words((INSIDE_AT[0], 6.0), voice.say("from inside")),
        words((OUTSIDE_AT[0], 6.0), voice.say("outside")),
    ]
    number = len(framework.links_at[joint])
    caption = voice.say_count(
        "joint {joint}: {number} balloon", "joint {joint}: {number} balloons", number, joint=joint
    )
    marks.append(words(((INSIDE_AT[0] + OUTSIDE_AT[0]) / 2, 130.0), caption))
    told = voice.say(
        "{caption}. One, from inside the piece: the knot of its lock lies on the joint, a round"
        " goes out through the gap on either side of the chain. Two, from outside: a round sits"
        " tight in each of these gaps.",
        caption=caption,
    )
    return picture(marks, told)


def locks_of_joints(
    framework: Framework,
    voice: Voice,
    joints: tuple[str, str],
    shape: Shape,
    plan: Camera | None = None,
) -> Picture:
    """The lock of the first of two joints as `lock_of_joint` has it, and beside it the second,
    where an odd number of balloons meet, from inside: which of its gaps are taken."""
    (first, second), (one, two, beside) = joints, PAIR_AT
    marks: list[Mark] = []
    for joint, at in ((first, one), (second, beside)):
        camera = from_inside(framework, shape, joint, plan)
        marks += joint_inside(framework, shape, joint, at, PAIR_HALF, plan)
        marks += _leading_to(framework, shape, joint, camera, at, PAIR_HALF)
        marks.append(words((at[0], 4.0), voice.say("from inside")))
    marks += [
        locked_joint(framework, shape, first, two, PAIR_HALF, plan),
        words((two[0], 4.0), voice.say("outside")),
    ]
    captions = []
    for joint, x, anchor in ((first, 1.0, "start"), (second, WIDTH - 1.0, "end")):
        number = len(framework.links_at[joint])
        captions.append(
            voice.say_count(
                "joint {joint}: {number} balloon",
                "joint {joint}: {number} balloons",
                number,
                joint=joint,
            )
        )
        marks.append(words((x, PAIR_HIGH - 11.0), captions[-1], anchor))
    told = voice.say(
        "{caption}: its lock from inside the piece, the knot on the joint, a round out through the"
        " gap on either side of the chain; then from outside. {other}, from inside: the two gaps"
        " that its lock takes.",
        caption=captions[0],
        other=captions[1],
    )
    return Picture(WIDTH, PAIR_HIGH, tuple(marks), told)


def lock_gaps(framework: Framework, voice: Voice, shape: Shape) -> Picture:
    """The gaps of the locks at the first joints of three numbers of balloons, from inside: at the
    free end of a chain, along it, and at a corner."""
    first: dict[int, str] = {}
    for lock in framework.locks:
        first.setdefault(len(framework.links_at[lock.joint]), lock.joint)
    joints = [first[number] for number in sorted(first)][: len(GAPS_AT)]
    flat = is_one_layer(framework, shape)
    seen = voice.say("dashed: behind") if flat else voice.say("from inside; dashed: outside")
    marks: list[Mark] = [words((GAPS_AT[1][0], 4.0), seen)]
    for at, joint in zip(GAPS_AT, joints, strict=False):
        marks += joint_inside(framework, shape, joint, at, GAPS_HALF)
        marks.append(words((at[0], GAPS_HIGH - 12.0), joint))
    said = (
        mark(
            "The gaps of locks at joints {joints}: at each the knot lies on the joint, and a round"
            " goes to its back on either side of the chain."
        )
        if flat
        else mark(
            "The gaps of locks at joints {joints}, from inside: at each the knot lies on the joint,"
            " and a round goes out through the gap on either side of the chain."
        )
    )
    told = voice.say(said, joints=voice.listed(joints))
    return Picture(WIDTH, GAPS_HIGH, tuple(marks), told)


def lock_from_outside(
    framework: Framework, voice: Voice, joint: str, shape: Shape, plan: Camera | None = None
) -> Picture:
    """The lock of a joint that no hand gets inside of, from outside: its knot at a gap, one round
    led in there, behind the joint and out at the gap opposite; then both, twisted past each
    other, where they sit tight. Of a joint that lies flat on a `plan` both are turned as there."""
    camera = from_outside(framework, shape, joint, plan)
    marks: list[Mark] = [
        *_led_through(framework, shape, joint, camera),
        *_leading_to(framework, shape, joint, camera, INSIDE_AT, HALF),
        locked_joint(framework, shape, joint, OUTSIDE_AT, HALF, plan),
        *badge((10.0, 120.0), "1"),
        *badge((119.0, 120.0), "2"),
        words((INSIDE_AT[0], 6.0), voice.say("from outside")),
        words((OUTSIDE_AT[0], 6.0), voice.say("tight")),
        words((OUTSIDE_AT[0] - HALF + 4.0, 6.0), voice.say("joint {joint}", joint=joint)),
    ]
    told = voice.say(
        "Joint {joint}, from outside. One: the knot of its lock lies at a gap; one round goes in"
        " there, behind the joint and out through the gap opposite, an arrow shows how the two are"
        " twisted past each other. Two: a round sits tight in each of these gaps.",
        joint=joint,
    )
    return replace(picture(marks, told), height=FROM_OUTSIDE_HIGH)


def _led_through(framework: Framework, shape: Shape, joint: str, camera: Camera) -> list[Mark]:
    """The joint from outside, the neck that goes behind it dashed, both rounds before it."""
    size = 2 * HALF
    scene, view = close_by(framework, shape, joint, camera, HALF)
    corner = (INSIDE_AT[0] - HALF, INSIDE_AT[1] - HALF)
    drawn = Picture(size, size, tuple(body_marks(scene, view, size, size)), "")
    place = next(i for i, lock in enumerate(framework.locks) if lock.joint == joint)
    (middle, one, other), _ = view.place(
        np.vstack([shape.at[joint], lock_centres(framework, shape)[place]])
    )
    balloon = framework.balloons[framework.locks[place].balloon]
    size_pt, colour = view.scale * balloon.gauge_m, palette(framework).lock

    def at(toward: np.ndarray, share: float) -> Point:
        x, y = middle + (toward - middle) * share
        return (corner[0] + float(x), corner[1] + float(y))

    hidden = Ink(stroke=INK, width=1.3, dash=(2.5, 2.0))
    neck = Strand(((*at(other, 0.8), 0), (*at(other, 1.4), 0), (*at(other, 1.9), 0)), colour, NECK)
    (x, y), end = sorted((at(one, 2.2), at(other, 2.2)), key=lambda spot: spot[1])
    across, up = end[0] - x, end[1] - y
    long = math.hypot(across, up)
    right = (up / long, -across / long)  # of the way from one round to the other

    def beside(share: float, far: float) -> Point:
        return (x + across * share + right[0] * far, y + up * share + right[1] * far)

    return [
        Inset(drawn, corner),
        Polyline((at(one, 0.8), at(other, 0.8)), hidden),
        *weave([neck]),
        *round_(at(other, 2.4), at(other, 1.9), size_pt, colour),
        *round_(at(one, 2.1), at(one, 1.0), size_pt, colour),
        *knot(at(one, 0.9), 0, palette(framework).lock, 3.4),
        *move([beside(0.0, size_pt), beside(0.5, size_pt + 6.0), beside(1.0, size_pt)]),
    ]


def _leading_to(
    framework: Framework, shape: Shape, joint: str, camera: Camera, about: Point, half: float
) -> list[Mark]:
    """Where each balloon of a joint leads to, in a view about a point: the name of its other joint,
    towards that end of it, clear of the rounds."""
    _, view = close_by(framework, shape, joint, camera, half)
    found: list[Mark] = []
    for id_ in framework.links_at[joint]:
        link = framework.link[id_]
        other = link.finish if link.start == joint else link.start
        ends, _ = view.place(np.array([shape.at[joint], shape.at[other]]))
        way = (ends[1] - ends[0]) * NAMED_AT
        off = max(float(np.hypot(*way)), 1e-9)
        x, y = (ends[0] + way * max(1.0, CLEAR_OF_ROUNDS * half / off)).tolist()
        name = other.rpartition(".")[2]
        edge = text_width(name, TYPE, bold=True) / 2
        at = (
            about[0] - half + min(max(x, edge), 2 * half - edge),
            about[1] - half + y - TYPE * 0.36,
        )
        found.append(Label(at, name, TYPE, INK, bold=True, halo=PAPER))
    return found
