"""The signs of close-ups and of the small picture beside them, each by itself, for their key.

Each is drawn by what draws it in the pictures.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from enum import Enum, auto
from functools import partial

import numpy as np
from shapely.geometry import box

from buildplan.drawing.bodies import Scene
from buildplan.drawing.corner_marks import CROSS_PT, boxed_in, crossed_out, hatching
from buildplan.drawing.course_plan import SINGLE, PlannedCourse
from buildplan.drawing.eye import Eye, eye_marks
from buildplan.drawing.kneeling_place import LEAST_SCALE, Kneeler
from buildplan.drawing.labels import DARK, Tag, joint_dot, tag_size
from buildplan.drawing.later_locks import later_sign
from buildplan.drawing.line_art import lock_mark
from buildplan.drawing.map_style import LOCK_RADIUS, half_wide, named_joint
from buildplan.drawing.marks import Circle, Ink, Inset, Mark, Picture, Point, Polyline
from buildplan.drawing.order_discs import order_disc
from buildplan.drawing.panel import Panel
from buildplan.drawing.plan_locks import gap_round
from buildplan.drawing.scene import LEAST_RING_PT, RING_LINE
from buildplan.drawing.stamps import link_look, link_stamps
from buildplan.drawing.symbols import OUTLINE_LINE, quantised_line
from buildplan.drawing.visibility import behind_new, joints_m
from buildplan.drawing.way_round import (
    Order,
    TiedRow,
    hand_below,
    order_of,
    ordered_tags,
    pointed,
    stub,
    twist,
    way_marks,
)

WIDE, HIGH = 42.0, 20.0
MIDDLE: Point = (WIDE / 2, HIGH / 2)
TAG_PT = 9.0
LOCK_FILL = "#FFFFFF"
TWIST_PT = 5.5
BODY, ROUND_PT = "#C9D2DA", 15.0
ENDS_ON = 0.88  # of a balloon's length that is towards the viewer
WAITED_FOR = 5  # the brace that the sign in the key names


class PictureSign(Enum):
    """What a picture of work on the piece says without words, in the order of the key."""

    JOINT = auto()
    BEHIND = auto()  # a joint that lies behind something new
    START = auto()
    WAY = auto()
    ORDER = auto()
    CLOSING_KNOT = auto()
    END_KNOT = auto()
    TWIST = auto()
    LOCK_LATER = auto()  # a joint that waits for a brace
    LOCK = auto()  # beside a joint of a diagram
    HAND = auto()
    SKIPPED = auto()
    OF_SINGLE = auto()  # a skipped joint that a single is tied to
    SHARED = auto()
    STUB = auto()
    END_ON = auto()  # a balloon that points at the viewer
    EYE = auto()
    NUMBERED_EYE = auto()  # one of several on a small picture
    KNEELER = auto()  # before what lies
    NUMBERED_KNEELER = auto()
    PLACE = auto()
    TURN = auto()  # the rest is of the plan of a course
    LATER = auto()
    BEFORE = auto()
    BETWEEN = auto()
    GAP = auto()
    ROUND = auto()


def signs_of(panel: Panel) -> frozenset[PictureSign]:
    """The signs that a close-up of a panel shows."""
    scene, joints = panel.scene, panel.joints
    tied = [row for row in panel.rows if len(row.joints) > 1]
    order = order_of(panel.rows, panel.numbered, panel.later)
    hidden = behind_new(scene.bodies, panel.camera, joints_m(scene, joints))
    shown = {
        PictureSign.JOINT: not all(hidden),
        PictureSign.BEHIND: bool(any(hidden)),
        PictureSign.START: bool(tied),
        PictureSign.WAY: bool(tied),
        PictureSign.ORDER: bool(order.place),
        PictureSign.CLOSING_KNOT: True in order.knot.values(),
        PictureSign.END_KNOT: False in order.knot.values(),
        PictureSign.LOCK_LATER: bool(order.later),
        PictureSign.TWIST: not scene.new_locks.isdisjoint(joints),
        PictureSign.HAND: not panel.below.isdisjoint(joints),
        PictureSign.SKIPPED: not panel.of_singles.issuperset(panel.skipped),
        PictureSign.OF_SINGLE: bool(panel.of_singles),
        PictureSign.SHARED: bool(panel.shared),
        PictureSign.STUB: _has_stubs(scene, joints),
        PictureSign.END_ON: _has_ends_on(panel),
    }
    return frozenset(sign for sign, is_shown in shown.items() if is_shown)


def plan_signs(course: PlannedCourse) -> frozenset[PictureSign]:
    """The signs that the plan of a course shows."""
    shown = {
        PictureSign.TURN: True,
        PictureSign.LATER: bool(course.later),
        PictureSign.BEFORE: bool(course.before),
        PictureSign.BETWEEN: bool(course.between),
        PictureSign.GAP: course.locked,
        PictureSign.ROUND: len(course.tied) > 1,
    }
    return frozenset(sign for sign, is_shown in shown.items() if is_shown)


def _has_stubs(scene: Scene, joints: tuple[str, ...]) -> bool:
    """Whether a chain goes on from one of some joints without its body."""
    links_at = scene.framework.links_at
    return any(link in scene.loose for joint in joints for link in links_at[joint])


def _has_ends_on(panel: Panel) -> bool:
    """Whether new balloons point so much at the viewer that of their length little is seen."""
    bodies = panel.scene.bodies
    new = bodies.some(bodies.is_new & bodies.is_link)
    along = new.second - new.first
    toward = np.abs(along @ panel.camera.axes[2]) / np.linalg.norm(along, axis=1)
    return bool(np.any(toward > ENDS_ON))


def sign_picture(sign: PictureSign, joint: str, alt: str) -> Picture:
    """A sign by itself; where it stands beside a name, that of a `joint`."""
    high = 26.0 if sign is PictureSign.HAND else HIGH
    marks = tuple(_DRAWN[sign](joint))
    return Picture(WIDE, high, marks, alt, (("picture", "sign"),))


def _joint(joint: str) -> list[Mark]:
    return [*joint_dot(MIDDLE, tied=True)]


def _behind(joint: str) -> list[Mark]:
    return [*joint_dot(MIDDLE, tied=True, hidden=True)]


def _start(joint: str) -> list[Mark]:
    row, spots = TiedRow((joint,), closed=False), {joint: MIDDLE}
    return [*way_marks([row], spots), *joint_dot(MIDDLE, tied=True)]


def _way(joint: str) -> list[Mark]:
    return pointed([(5.0, HIGH / 2 - 3), (WIDE / 2, HIGH / 2 + 2), (WIDE - 5.0, HIGH / 2 - 3)])


def _tag(joint: str, order: Order) -> list[Mark]:
    """A joint's name as the order has it, in the middle."""
    wide, high = tag_size(joint, TAG_PT)
    wide += order.wider(joint, TAG_PT)
    (x, y) = MIDDLE
    edges = (x - wide / 2, y - high / 2, x + wide / 2, y + high / 2)
    return ordered_tags([Tag(joint, MIDDLE, edges, TAG_PT)], order)


def _order(joint: str) -> list[Mark]:
    return _tag(joint, Order({joint: 1}, {}, {}))


def _closing(joint: str) -> list[Mark]:
    return _tag(joint, Order({}, {joint: True}, {}))


def _end(joint: str) -> list[Mark]:
    return _tag(joint, Order({}, {joint: False}, {}))


def _later(joint: str) -> list[Mark]:
    sign = later_sign(joint, WAITED_FOR)
    return [Inset(sign, (MIDDLE[0] - sign.width / 2, MIDDLE[1] - sign.height / 2))]


def _twist(joint: str) -> list[Mark]:
    return [twist(joint, MIDDLE, TWIST_PT), *joint_dot(MIDDLE, tied=True)]


def _lock(joint: str) -> list[Mark]:
    return [*lock_mark(MIDDLE, LOCK_RADIUS, -45)]


def _hand(joint: str) -> list[Mark]:
    spot = (WIDE / 2, 22.0)
    return [hand_below(joint, spot), *joint_dot(spot, tied=True)]


def _skipped(joint: str) -> list[Mark]:
    return [*crossed_out(MIDDLE, 2 * CROSS_PT), *joint_dot(MIDDLE, tied=True)]


def _of_single(joint: str) -> list[Mark]:
    return [*boxed_in(MIDDLE, 1.6 * CROSS_PT), *joint_dot(MIDDLE, tied=True)]


def _shared(joint: str) -> list[Mark]:
    edges = ((6.0, 3.0), (WIDE - 6, 3.0), (WIDE - 6, HIGH - 3), (6.0, HIGH - 3))
    outline = Polyline(edges, Ink(stroke=DARK, width=0.6), closed=True)
    return [*hatching(box(6.0, 3.0, WIDE - 6, HIGH - 3)), outline]


def _stub(joint: str) -> list[Mark]:
    spot = (WIDE / 2 - 8, HIGH / 2)
    ink = Ink(fill="#FFFFFF", stroke=OUTLINE_LINE, width=0.7)
    return [stub(spot, (1.0, 0.0), 18.0, 14.0, ink), *joint_dot(spot, tied=True)]


def _end_on(joint: str) -> list[Mark]:
    look = link_look(BODY, "new", 0, quantised_line(0.85 / ROUND_PT), "standard")
    far, near = (np.array((MIDDLE[0], MIDDLE[1] + side * 3.0)) for side in (1, -1))
    return link_stamps(look, far, near, 1.2 * ROUND_PT, ROUND_PT, 1.2, "tail")


def _eye(joint: str, panels: tuple[int, ...] = ()) -> list[Mark]:
    spot = (WIDE / 2 + 3, HIGH / 2) if panels else MIDDLE
    return eye_marks([Eye(spot, 0.0, panels)], (WIDE, HIGH), numbered=bool(panels))


def _kneeler(joint: str, panels: tuple[int, ...] = ()) -> list[Mark]:
    x, y = WIDE / 2 - (2 if panels else 6), HIGH / 2
    one = Kneeler((x, y), (x + 18, y), LEAST_SCALE)
    eye = Eye(one.at, one.turn, panels, one)
    return eye_marks([eye], (WIDE, HIGH), numbered=bool(panels))


def _place(joint: str) -> list[Mark]:
    return [Circle(MIDDLE, LEAST_RING_PT, RING_LINE)]


def _turn(joint: str) -> list[Mark]:
    return [
        *_disc(joint),
        *order_disc(joint, 1, (MIDDLE[0] + half_wide(joint) + 3.0, MIDDLE[1] + 4.0)),
    ]


def _disc(joint: str, *, later: bool = False, before: bool = False) -> list[Mark]:
    return named_joint(MIDDLE, joint, later=later, before=before)


def _between(joint: str) -> list[Mark]:
    ends = ((6.0, HIGH / 2), (WIDE - 6.0, HIGH / 2))
    outline = Polyline(ends, Ink(stroke=DARK, width=8.0))
    return [outline, Polyline(ends, SINGLE)]


def _gap(joint: str) -> list[Mark]:
    spots = {joint: MIDDLE}
    return [*gap_round(joint, 0.0, spots, LOCK_FILL), *_disc(joint)]


def _round(joint: str) -> list[Mark]:
    line = [(15.0, HIGH / 2 - 2), (25.0, HIGH / 2 + 1), (WIDE - 4.0, HIGH / 2 - 2)]
    return [*pointed(line), *eye_marks([Eye((8.0, HIGH / 2), 0.0, ())], (WIDE, HIGH))]


_DRAWN: Mapping[PictureSign, Callable[[str], list[Mark]]] = {
    PictureSign.JOINT: _joint,
    PictureSign.BEHIND: _behind,
    PictureSign.START: _start,
    PictureSign.WAY: _way,
    PictureSign.ORDER: _order,
    PictureSign.CLOSING_KNOT: _closing,
    PictureSign.END_KNOT: _end,
    PictureSign.TWIST: _twist,
    PictureSign.LOCK_LATER: _later,
    PictureSign.LOCK: _lock,
    PictureSign.HAND: _hand,
    PictureSign.SKIPPED: _skipped,
    PictureSign.OF_SINGLE: _of_single,
    PictureSign.SHARED: _shared,
    PictureSign.STUB: _stub,
    PictureSign.END_ON: _end_on,
    PictureSign.EYE: _eye,
    PictureSign.NUMBERED_EYE: partial(_eye, panels=(2,)),
    PictureSign.KNEELER: _kneeler,
    PictureSign.NUMBERED_KNEELER: partial(_kneeler, panels=(2,)),
    PictureSign.PLACE: _place,
    PictureSign.TURN: _turn,
    PictureSign.LATER: partial(_disc, later=True),
    PictureSign.BEFORE: partial(_disc, before=True),
    PictureSign.BETWEEN: _between,
    PictureSign.GAP: _gap,
    PictureSign.ROUND: _round,
}
