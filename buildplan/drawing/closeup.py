"""The close-up of one piece of work, as its builder sees it: a brace with its locks, a corner,
some joints that are brought together.

What is new is solid, what it is tied to pale, what stands further off paler and flat and cut away
where it would lie over new work. Chains that go on unbraced are stubs in outline.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
import shapely
from shapely.geometry import Polygon

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.bodies import Bodies, Scene, link_length_m
from buildplan.drawing.camera import PaperView
from buildplan.drawing.corner_marks import CROSS_PT, boxed_in, crossed_out, hatching
from buildplan.drawing.cutaway import CutBody, cut_away, silhouettes
from buildplan.drawing.framing import close_view, close_view_of_new
from buildplan.drawing.label_places import place_tags
from buildplan.drawing.labels import TIE_RADIUS, joint_dot, joint_tags, leaders
from buildplan.drawing.marks import Box, Inset, Mark, MarkData, Picture, Point
from buildplan.drawing.outlines import quantised_length
from buildplan.drawing.panel import Panel
from buildplan.drawing.plates import corner_plate, plate_box, title_plate
from buildplan.drawing.scene import Stamper, frame_line
from buildplan.drawing.shading import faint, paled
from buildplan.drawing.stubs import stub_marks
from buildplan.drawing.symbols import DONE_LINE, FAR_LINE
from buildplan.drawing.tied_sides import tied_sides
from buildplan.drawing.visibility import behind_new, joints_m, paint_order
from buildplan.drawing.way_round import (
    Order,
    boxes_between,
    brought_together,
    hand_below,
    meetings,
    order_of,
    ordered_tags,
    twist,
    way_marks,
)
from buildplan.framework.model import BalloonType

# Work further than this many link lengths from the joints is left out.
REACH = 2.4
DONE_LINE_PT = 0.45
# What is shown about the joints, in link lengths: of a brace, and of joints by themselves, from
# which whole balloons go out.
TIED_ROOM, JOINED_ROOM = 0.8, 1.3
# How much tags shun new work, against standing near their joints.
SHUN = 8.0
# A balloon tied in by itself has two joints; so much of its width is kept clear.
ENDS, BODY_SHARE = 2, 0.8


@dataclass(frozen=True, eq=False)
class Uncovered:
    """How far a close-up shows its new work: the share of the new balloons' discs with nothing
    over them but new work that is nearer (`seen`), and how many outlines of what stands cross
    a new balloon."""

    seen: float
    crossing: int


def close_up(
    panel: Panel,
    width: float,
    height: float,
    *,
    title: str = "",
    corner: Picture | None = None,
    alt: str = "",
    label_size: float = 9.0,
    data: MarkData = (),
) -> Picture:
    """The surroundings of a panel's joints in a frame, with the way of the work drawn in.

    The title stands in the upper left corner, and `corner`, a small picture, in whichever
    other corner is freest; labels keep clear of both.
    """
    size = (width, height)
    drawing = _CloseUpDrawing(panel, _view(panel, width, height))
    plates = [title_plate(title, size)] if title else []
    if corner is not None:
        plates.append(corner_plate(corner, size, drawing.discs, plates))
    marks = drawing.bodies_drawn()
    signs = drawing.signs()
    # what leads to a tag under a hand would lie on the hand; a tag with a sign has no other place
    short = [hand for hand in signs if dict(hand.picture.data)["at"] not in panel.later]
    under = [(left, 0.0, right, low) for left, low, right, _ in map(plate_box, short)]
    blocked = [*(plate_box(plate) for plate in (*plates, *signs)), *under]
    marks += drawing.way() + signs + drawing.named(size, label_size, blocked)
    kind: MarkData = (("picture", "close-up"),)
    return Picture(width, height, (*marks, *plates, frame_line(width, height)), alt, (*kind, *data))


@dataclass(frozen=True, eq=False)
class _CloseUpDrawing:
    panel: Panel
    view: PaperView

    @property
    def scene(self) -> Scene:
        return self.panel.scene

    @property
    def _near(self) -> Bodies:
        """The bodies about the joints."""
        bodies, link_m = self.scene.bodies, link_length_m(self.scene.framework)
        near_to = joints_m(self.scene, self.panel.joints)
        away = np.min(np.linalg.norm(bodies.centre[:, None] - near_to[None], axis=2), axis=1)
        # a lock goes with the links about it, none is left hanging by itself
        reach = np.where(bodies.is_link, REACH, REACH - 0.7) * link_m
        return bodies.some(bodies.is_new | (away < reach))

    @property
    def discs(self) -> FloatArray:
        """The new bodies and the joints as discs (n, 3: x, y, radius) on the page."""
        new = self.scene.bodies.some(self.scene.bodies.is_new)
        middles, _ = self.view.place(new.centre)
        spots, _ = self.view.place(joints_m(self.scene, self.panel.joints))
        return np.vstack(
            [
                np.column_stack([middles, new.radius * self.view.scale]),
                np.column_stack([spots, np.full(len(spots), TIE_RADIUS)]),
            ]
        )

    def measured(self) -> Uncovered:
        """What is drawn over the new link balloons, and which lines cross them."""
        bodies, outlines, cuts = self._laid_out()
        _, depth = self.view.place(bodies.centre)
        order = [int(i) for i in paint_order(bodies, depth)]
        left = {i: cuts[i].whole if i in cuts else outlines[i] for i in order}
        least, crossing = 1.0, 0
        for at, i in enumerate(order):
            if not (bodies.is_new[i] and bodies.is_link[i]):
                continue
            over = [left[j] for j in order[at + 1 :] if not bodies.is_new[j]]
            hidden = [shape for shape in over if shape.intersection(outlines[i]).area > 0.01]
            crossing += len(hidden)
            seen = outlines[i].difference(shapely.union_all(hidden)).area / outlines[i].area
            least = min(least, seen)
        return Uncovered(least, crossing)

    def spot(self, joint: str) -> Point:
        """Where a joint is on the page."""
        (place,), _ = self.view.place(self.scene.shape.at[joint][None])
        return (float(place[0]), float(place[1]))

    def _balloon(self, bodies: Bodies, row: int) -> BalloonType:
        return self.scene.framework.balloons[bodies.balloons[row]]

    def _laid_out(self) -> tuple[Bodies, list[Polygon], dict[int, CutBody]]:
        """The bodies about the joints, their outlines on the page, and what is left of those
        that are cut away."""
        bodies = self._near
        lengths = [
            quantised_length(kind.tie_to_tie_m / kind.gauge_m)
            for kind in (self._balloon(bodies, i) for i in range(len(bodies.names)))
        ]
        outlines = silhouettes(bodies, self.view, lengths)
        ties_m = joints_m(self.scene, self.panel.joints)
        return bodies, outlines, cut_away(bodies, self.view, outlines, ties_m)

    def bodies_drawn(self) -> list[Mark]:
        """Stubs, then every body from back to front, cut away where it would hide new work."""
        bodies, outlines, cuts = self._laid_out()
        _, depth = self.view.place(bodies.centre)
        stamper = Stamper(self.scene, self.view, bodies)
        spots = {joint: self.spot(joint) for joint in self.panel.joints}
        marks: list[Mark] = stub_marks(self.scene, spots, self.view.scale)
        order = [int(i) for i in paint_order(bodies, depth)]
        for at, i in enumerate(order):
            state = self._state(bodies, i)
            if i in cuts:
                marks += self._cut_marks(cuts[i], bodies, i, state)
            else:
                marks += stamper.of(i, state, 0)
            if bodies.is_link[i] and bodies.names[i] in self.panel.shared:
                over = [cuts[j].whole if j in cuts else outlines[j] for j in order[at + 1 :]]
                own = cuts[i].whole if i in cuts else outlines[i]
                marks += hatching(own.difference(shapely.union_all(over)))
        return marks

    def _state(self, bodies: Bodies, i: int) -> str:
        if bodies.is_new[i]:
            return "new"
        far = self.scene.far_links if bodies.is_link[i] else self.scene.far_locks
        return "far" if bodies.names[i] in far else "done"

    def _cut_marks(self, cut: CutBody, bodies: Bodies, i: int, state: str) -> list[Mark]:
        colour = self._balloon(bodies, i).colour
        if state == "far":
            return cut.marks(faint(colour), FAR_LINE, DONE_LINE_PT)
        return cut.marks(paled(colour), DONE_LINE, DONE_LINE_PT)

    @property
    def _order(self) -> Order:
        return order_of(self.panel.rows, self.panel.numbered, self.panel.later)

    def _twist_pt(self, joint: str) -> float:
        """How far from its joint the twist of a new lock is drawn."""
        lock = self.scene.framework.lock_at[joint]
        return 0.36 * self.scene.framework.balloons[lock.balloon].gauge_m * self.view.scale

    def way(self) -> list[Mark]:
        """The way round, and the twist of each new lock."""
        spots = {joint: self.spot(joint) for joint in self.panel.joints}
        marks = way_marks([row for row in self.panel.rows if len(row.joints) > 1], spots)
        marks += brought_together(self.scene.framework, spots)
        for joint in self.panel.joints:
            if joint in self.scene.new_locks:
                marks.append(twist(joint, spots[joint], self._twist_pt(joint)))
        return marks

    def signs(self) -> list[Inset]:
        """Hands that come from below, clear of the twist of a lock."""
        return [
            hand_below(
                joint,
                self.spot(joint),
                self._twist_pt(joint) + 2.0 if joint in self.scene.new_locks else 4.0,
            )
            for joint in self.panel.joints
            if joint in self.panel.below
        ]

    def named(self, size: tuple[float, float], type_pt: float, blocked: list[Box]) -> list[Mark]:
        """The joints' dots and tags, with their order; skipped joints are crossed out, or in
        a square where a single is tied."""
        panel, order = self.panel, self._order
        open_ = [joint for joint in panel.skipped if joint not in panel.joints]
        spots = {joint: self.spot(joint) for joint in (*panel.joints, *open_)}
        tags = place_tags(
            list(spots.items()),
            *size,
            size=type_pt,
            blocked=[*blocked, *boxes_between(self.scene.framework, spots), *self._alone(spots)],
            discs=self.discs,
            wider={joint: order.wider(joint, type_pt) for joint in panel.joints},
            reaching={joint: self._cross_pt(joint) for joint in panel.skipped},
            shun=SHUN,
            sides=tied_sides(self.scene.framework, self.scene.shape, self.view, panel.joints),
        )
        marks = leaders(tags)
        hidden = behind_new(self.scene.bodies, self.view.camera, joints_m(self.scene, panel.joints))
        for joint in panel.skipped:
            sign = boxed_in if joint in panel.of_singles else crossed_out
            marks += sign(spots[joint], self._cross_pt(joint))
        for joint, behind in zip(panel.joints, hidden, strict=True):
            marks += joint_dot(spots[joint], True, bool(behind))
        marks += ordered_tags([tag for tag in tags if tag.text not in open_], order)
        return [*marks, *joint_tags(tag for tag in tags if tag.text in open_)]

    def _alone(self, spots: Mapping[str, Point]) -> list[Box]:
        """The middle of a balloon that is tied in by itself, which no tag covers."""
        new = self.scene.bodies.some(self.scene.bodies.is_new & self.scene.bodies.is_link)
        if len(new.names) != 1 or len(spots) != ENDS:
            return []
        (x0, y0), (x1, y1) = spots.values()
        half = BODY_SHARE * float(new.radius[0]) * self.view.scale
        wide, high = max(abs(x1 - x0) / 2 - half, half), max(abs(y1 - y0) / 2 - half, half)
        x, y = (x0 + x1) / 2, (y0 + y1) / 2
        return [(x - wide, y - high, x + wide, y + high)]

    def _cross_pt(self, joint: str) -> float:
        """How far the sign of a skipped joint reaches: past the rounds of its lock, if any."""
        return 2 * CROSS_PT if joint in self.panel.joints else CROSS_PT


def uncovered(panel: Panel, width: float = 200.0, height: float = 200.0) -> Uncovered:
    """How far a panel shows its new work, measured on what is drawn."""
    return _CloseUpDrawing(panel, _view(panel, width, height)).measured()


def _view(panel: Panel, width: float, height: float) -> PaperView:
    tied = any(len(row.joints) > 1 for row in panel.rows)
    near = tied or meetings(panel.scene.framework, panel.joints)
    if near or not panel.scene.bodies.is_new.any():
        room = TIED_ROOM if near else JOINED_ROOM
        return close_view(panel.scene, panel.camera, width, height, panel.joints, room)
    return close_view_of_new(panel.scene, panel.camera, width, height, panel.joints, JOINED_ROOM)
