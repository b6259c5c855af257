"""One cell of a tube as a line diagram: which joints meet, and by which balloons.

The cell is seen from the builder's seat at the brace that is tied last (`seat.py`), as the
picture beside it: the same joint lies in the same place in both.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from shapely.geometry import Polygon

from buildplan.drawing.camera import Camera
from buildplan.drawing.cell_plan import Corner, run_plan
from buildplan.drawing.cell_words import Body, Box, Clutter, best_spot, gap, word_box
from buildplan.drawing.colours import mix
from buildplan.drawing.corner_marks import crossed_out, hatching
from buildplan.drawing.fonts import text_width
from buildplan.drawing.line_art import (
    INK,
    PALE,
    PAPER,
    SOFT,
    TYPE,
    between,
    link_outline,
    toward,
)
from buildplan.drawing.map_layout import side_of
from buildplan.drawing.map_style import joint_marks, joint_radius
from buildplan.drawing.map_words import cell_label
from buildplan.drawing.marks import Circle, Curve, Ink, Label, Mark, Picture, Point, Polyline
from buildplan.drawing.seat import FloatArray, seat_toward
from buildplan.drawing.way_round import WAY, Row, order_of
from buildplan.framework.model import Brace, Cell, Framework, Link, Role
from buildplan.language.phrases import sentences
from buildplan.language.voice import Voice

# how far back each chain lies: 0 front, 1 back
DEPTHS = {2: (0.0, 0.0), 3: (0.0, 0.5, 1.0), 4: (0.0, 0.0, 1.0, 1.0)}
STUB = 0.38  # how much of a neighbouring balloon is shown
THICKEST = 24.0
UP = np.array([0.0, 0.0, 1.0])  # to the front of a piece that lies front up
IN_FRONT = -1e3  # the depth of joints' discs, over every balloon
DISC_GAP = 1.5
NUMBER_RADIUS = 4.9
PUSHES, YIELD = 60, 0.3
EDGE = 3.0  # bare paper round the diagram


@dataclass(frozen=True)
class _Bar:
    """A link on the diagram: its ends on paper, how far back it lies, and how it is shown."""

    link: Link
    start: Point
    finish: Point
    depth: float
    ink: Ink
    word: str = ""

    def body(self, half: float) -> Body:
        """What of the paper it covers between its joints."""
        start, finish = toward(self.start, self.finish, 12), toward(self.finish, self.start, 12)
        return Body(start, finish, half)


def newest_brace(framework: Framework, cell: Cell) -> Brace:
    """The brace of a cell that is tied last: of a ring's last cell it is the first."""
    return framework.brace[max(cell.first, cell.second)]


def cell_diagram(
    framework: Framework, cell_number: int, width: float, height: float, voice: Voice
) -> Picture:
    """A cell with its two braces; the one tied last is bold.

    A balloon that both braces use is marked "shared", one across skipped joints "single";
    skipped joints are open. The ends of the neighbouring balloons are pale. Designed for
    220 x 170 points or more; type is 8 pt.
    """
    cell = next(cell for cell in framework.cells if cell.number == cell_number)
    joint = framework.brace[cell.first].section[0]
    part = framework.part_at(joint)
    mirrored = part is not None and part.mirrored
    return _CellDrawing(framework.built_with(joint), cell, width, height, mirrored, voice).picture()


@dataclass(frozen=True)
class _CellDrawing:
    framework: Framework
    cell: Cell
    width: float
    height: float
    mirrored: bool
    voice: Voice

    def _seat(self, joints: Mapping[str, tuple[Point, float]]) -> Camera:
        """The seat at the newest brace, as `open_end_seat` has it of the real shape."""
        framework, cell = self.framework, self.cell
        first, second = framework.brace[cell.first], framework.brace[cell.second]
        newest = newest_brace(framework, cell)
        (outer, _), (inner, _) = joints[newest.section[0]], joints[newest.section[1]]
        outside = np.array([outer[0] - inner[0], outer[1] - inner[1], 0.0])
        outside /= np.linalg.norm(outside)
        along = np.cross(outside, UP)
        run = np.zeros(3)
        for brace, sign in ((first, -1), (second, 1)):
            for joint in brace.section[:2]:
                run[:2] += sign * np.array(joints[joint][0])
        if along @ run < 0:
            along = -along
        return seat_toward(outside, along, UP)

    def _plan(self) -> tuple[dict[str, tuple[Point, float]], list[tuple[Point, Point, float]]]:
        """Plan and depth of each joint of the cell, and of each neighbouring link's stub."""
        framework, cell = self.framework, self.cell
        count, at = len(framework.cells), framework.cells.index(cell)
        before = [framework.cells[at - 1]] if framework.closed or at > 0 else []
        after = [framework.cells[(at + 1) % count]] if framework.closed or at + 1 < count else []
        run = [*before, cell, *after]
        corners = run_plan(run, len(before))
        start = (before[0].outer, before[0].inner) if before else (0, 0)
        section = framework.brace[cell.first].section
        joints: dict[str, tuple[Point, float]] = {}
        stubs = []
        for place, long in enumerate(framework.chains):
            side, depth = side_of(long), DEPTHS[len(framework.chains)][place]
            first = long.chain.joints.index(section[place])
            advance = (cell.outer, cell.inner)[side]
            for step in range(advance + 1):
                joint = long.chain.joints[(first + step) % len(long.chain.joints)]
                joints[joint] = (corners[side, start[side] + step], depth)
            for end, way in ((start[side], -1), (start[side] + advance, 1)):
                beyond: Corner = (side, end + way)
                if beyond in corners:
                    stubs.append((corners[side, end], corners[beyond], depth))
        return joints, stubs

    def picture(self) -> Picture:
        framework, cell = self.framework, self.cell
        joints, stubs = self._plan()
        links = [link for link in framework.links if {link.start, link.finish} <= joints.keys()]
        newest = newest_brace(framework, cell)
        radius = joint_radius(framework)
        seat = self._seat(joints)
        across = -1.0 if self.mirrored else 1.0

        def flat(spot: tuple[Point, float]) -> tuple[Point, float]:
            """Where a place of the plan is on paper, and how far back it lies."""
            (x, y), depth = spot
            ((right, up, toward),) = np.array([[x, y, -depth]]) @ seat.axes.T
            return (across * float(right), float(up)), -float(toward)

        laid = {joint: flat(spot) for joint, spot in joints.items()}
        stub_ends = [
            (flat((a, depth))[0], flat((between(a, b, STUB), depth))[0], flat((a, depth))[1])
            for a, b, depth in stubs
        ]
        scale, shift = _fit(
            [*(at for at, _ in laid.values()), *(b for _, b, _ in stub_ends)],
            (self.width, self.height),
            _margin(radius),
        )

        def paper(point: Point) -> Point:
            return (point[0] * scale + shift[0], point[1] * scale + shift[1])

        placed = {joint: paper(at) for joint, (at, _) in laid.items()}
        fat = _thickness(scale)
        spots = _pushed_apart(placed, [k for k in links if self._stays(k)], radius, fat / 2)
        bars = [self._bar(link, spots, laid, newest) for link in links]
        layers: list[tuple[float, list[Mark]]] = []
        for a, b, depth in stub_ends:
            layers.append((depth + 0.002, _stub(paper(a), paper(b), radius)))
        for bar in bars:
            start, finish = (
                toward(bar.start, bar.finish, radius - 1),
                toward(bar.finish, bar.start, radius - 1),
            )
            halo = link_outline(start, finish, fat + 4, Ink(fill=PAPER))
            body = link_outline(start, finish, fat, bar.ink)
            hatched = hatching(_area(body)) if bar.link.id in newest.shared else []
            layers.append((bar.depth, [halo, body, *hatched]))
        for joint, spot in spots.items():
            marks = joint_marks(
                spot,
                radius,
                joint,
                skipped=joint in cell.skipped,
                locked=joint in framework.lock_at,
                repeat=False,
            )
            layers.append((IN_FRONT, marks))
        for joint in cell.skipped:
            layers.append((IN_FRONT + 1, crossed_out(spots[joint], radius * 1.1)))
        layers.append((IN_FRONT - 1, _numbers(newest, spots, radius)))
        layers.sort(key=lambda layer: -layer[0])
        marks = [mark for _, layer in layers for mark in layer]
        clutter = Clutter(
            tuple((x - radius, y - radius, x + radius, y + radius) for x, y in spots.values()),
            (
                *(bar.body(fat / 2) for bar in bars),
                *(Body(paper(a), paper(b), 1.0) for a, b, _ in stub_ends),
            ),
            (self.width, self.height),
        )
        marks += self._words(bars, clutter, fat / 2)
        words = self._alt(links, newest)
        kind = (("picture", "corner diagram"), ("cell", str(cell.number)))
        return Picture(self.width, self.height, tuple(marks), words, kind)

    def _stays(self, link: Link) -> bool:
        """Whether a balloon is of the newest brace, which keeps its place."""
        return link.id in newest_brace(self.framework, self.cell).links

    def _bar(
        self,
        link: Link,
        spots: dict[str, Point],
        joints: dict[str, tuple[Point, float]],
        newest: Brace,
    ) -> _Bar:
        colour = self.framework.balloons[link.balloon].colour
        pale = mix(colour, PAPER, 0.7)
        word = ""
        if link.role is Role.SINGLE:
            ink, word = (
                Ink(pale, INK, 1.1, (3, 2)),
                self.voice.say_in("balloon of a cell", "single"),
            )
        elif link.id in newest.links:
            ink = Ink(mix(colour, PAPER, 0.15), INK, 2.0)
        elif link.role is Role.BRACE:
            ink = Ink(pale, INK, 0.9)
        else:
            ink = Ink(pale, SOFT, 0.9)
        if link.id in newest.shared:
            word = self.voice.say_in("balloon of a brace", "shared")
        depth = (joints[link.start][1] + joints[link.finish][1]) / 2
        return _Bar(link, spots[link.start], spots[link.finish], depth, ink, word)

    def _words(self, bars: Sequence[_Bar], clutter: Clutter, half: float) -> list[Mark]:
        """ "shared", "single" and the braces' numbers, each where it covers least."""
        marks: list[Mark] = []
        for bar in bars:
            if bar.word:
                wide = text_width(bar.word, TYPE) / 2 + 2
                spot = best_spot([bar.body(half)], wide, clutter, lambda at: 0.0)
                box = word_box(spot, wide)
                clutter = clutter.with_box(box)
                nearest = min(bars, key=lambda other: gap(spot, other.start, other.finish))
                if nearest is not bar:
                    marks += _leader(box, between(bar.start, bar.finish, 0.5))
                marks.append(Label(_baseline(spot), bar.word, TYPE, INK, halo=PAPER))
        for number, side in ((self.cell.first, -1), (self.cell.second, 1)):
            brace = self.framework.brace[number]
            of_it = {*brace.links, *brace.shared}
            all_of_it = [bar for bar in bars if bar.link.id in of_it]
            own = [bar for bar in all_of_it if not bar.word] or all_of_it
            if not own:
                continue
            text = self.voice.say_in("label", "brace {number}", number=number)
            wide = text_width(text, TYPE, bold=True) / 2 + 2
            bodies = [bar.body(half) for bar in sorted(own, key=lambda bar: bar.depth)]
            spot = best_spot(bodies, wide, clutter, self._on_side(side))
            box = word_box(spot, wide)
            clutter = clutter.with_box(box)
            corners = ((box[0], box[1]), (box[2], box[1]), (box[2], box[3]), (box[0], box[3]))
            marks.append(Polyline(corners, Ink(PAPER, INK, 0.7), closed=True))
            marks.append(Label(_baseline(spot), text, TYPE, INK, bold=True))
        return marks

    def _on_side(self, side: int) -> Callable[[Point], float]:
        """What it costs a brace's number to stand on the other brace's side of the cell."""
        middle = self.width / 2
        return lambda at: 8.0 + 0.2 * abs(at[0] - middle) if side * (at[0] - middle) < 0 else 0.0

    def _alt(self, links: Iterable[Link], newest: Brace) -> str:
        cell = self.cell
        parts = [
            self.voice.say(
                "Cell {number}, {kind}, between brace {first} and brace {second}.",
                number=cell.number,
                kind=cell_label(cell.name, self.voice),
                first=cell.first,
                second=cell.second,
            )
        ]
        for number in (cell.first, cell.second):
            brace = self.framework.brace[number]
            joints = ", ".join(brace.section)
            parts.append(
                self.voice.say("Brace {brace} holds {joints}.", brace=number, joints=joints)
            )
        parts.append(
            self.voice.say(
                "New in brace {brace}: {balloons}.",
                brace=newest.number,
                balloons=_list(newest.links, self.voice),
            )
        )
        if newest.shared:
            shared = _list(newest.shared, self.voice)
            parts.append(self.voice.say("Shared with another brace: {balloons}.", balloons=shared))
        if cell.skipped:
            parts.append(
                self.voice.say("Skipped: {joints}.", joints=_list(cell.skipped, self.voice))
            )
        singles = [link.id for link in links if link.role is Role.SINGLE]
        if singles:
            parts.append(self.voice.say("Single: {singles}.", singles=_list(singles, self.voice)))
        return sentences(*parts)


def _leader(box: Box, end: Point) -> list[Mark]:
    """A line from a word to what it names, where something else is nearer to it."""
    start = (min(max(end[0], box[0]), box[2]), min(max(end[1], box[1]), box[3]))
    line = (start, end)
    return [
        Polyline(line, Ink(stroke=PAPER, width=2.6)),
        Polyline(line, Ink(stroke=INK, width=0.8)),
        Circle(end, 1.8, Ink(INK, PAPER, 0.6)),
    ]


def _baseline(middle: Point) -> Point:
    return (middle[0], middle[1] - TYPE * 0.36)


def _list(words: Iterable[str], voice: Voice) -> str:
    return ", ".join(words) or voice.say_in("balloons", "none")


def _pushed_apart(
    placed: Mapping[str, Point], links: Sequence[Link], radius: float, half: float
) -> dict[str, Point]:
    """Places of joints' discs, moved as little as it takes for none to touch another, or a
    balloon `half` as wide that does not end at it."""
    joints = list(placed)
    at = {joint: np.array(spot) for joint, spot in placed.items()}
    for _ in range(PUSHES):
        before = dict(at)
        for i, one in enumerate(joints):
            for other in joints[:i]:
                push = _push(at[one] - at[other], 2 * radius + DISC_GAP)
                at[one], at[other] = at[one] + push / 2, at[other] - push / 2
            for link in links:
                if one not in (link.start, link.finish):
                    start, finish = at[link.start], at[link.finish]
                    run = finish - start
                    share = float((at[one] - start) @ run / max(run @ run, 1e-9))
                    near = start + min(max(share, 0.0), 1.0) * run
                    at[one] = at[one] + YIELD * _push(at[one] - near, radius + half)
        if all(np.array_equal(before[joint], at[joint]) for joint in joints):
            break  # nothing touches any more
    return {joint: (float(x), float(y)) for joint, (x, y) in at.items()}


def _area(body: Curve) -> Polygon:
    """The paper that a balloon's outline takes in."""
    return Polygon([body.start, *(end for _, _, end in body.pieces)]).buffer(0)


def _numbers(brace: Brace, spots: Mapping[str, Point], radius: float) -> list[Mark]:
    """The order in which a brace is tied, at the upper left of its joints' discs."""
    marks: list[Mark] = []
    for joint, place in order_of([Row(c.joints, c.closed) for c in brace.chains]).place.items():
        x, y = spots[joint]
        at = (x - radius * 0.95, y + radius * 0.95)
        marks.append(Circle(at, NUMBER_RADIUS, Ink(fill=WAY, stroke=PAPER, width=0.8)))
        data = (("joint", joint), ("order", str(place)))
        marks.append(Label(_baseline(at), str(place), TYPE, PAPER, bold=True, data=data))
    return marks


def _push(run: FloatArray, least: float) -> FloatArray:
    """What is missing of a distance, along the way apart."""
    apart = float(np.hypot(*run))
    way = run / apart if apart > 1e-6 else np.array([1.0, 0.0])
    return way * max(least - apart, 0.0)


def _margin(radius: float) -> float:
    """What has to stay free round the joints' centres: their discs, and balloons' bodies."""
    return max(radius, THICKEST / 2 + 2) + EDGE


def _thickness(scale: float) -> float:
    """How thick balloons are drawn: slimmer than they are, so that the plan shows."""
    return min(scale * 0.26, THICKEST)


def _fit(points: Sequence[Point], size: tuple[float, float], margin: float) -> tuple[float, Point]:
    xs, ys = [p[0] for p in points], [p[1] for p in points]
    wide, tall = max(max(xs) - min(xs), 1e-6), max(max(ys) - min(ys), 1e-6)
    scale = min((size[0] - 2 * margin) / wide, (size[1] - 2 * margin) / tall)
    shift = (
        size[0] / 2 - scale * (max(xs) + min(xs)) / 2,
        size[1] / 2 - scale * (max(ys) + min(ys)) / 2,
    )
    return scale, shift


def _stub(joint: Point, end: Point, radius: float) -> list[Mark]:
    """Where the chain goes on beyond the cell."""
    return [Polyline((toward(joint, end, radius), end), Ink(stroke=PALE, width=2.2))]
