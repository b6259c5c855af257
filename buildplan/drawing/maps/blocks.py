"""What a map is put together of: blocks of joints and balloons, each drawn in one piece.

Every way of laying a piece out flat says where its joints and balloons lie; what they look like,
and what a program may read of them, is the same on every map.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from buildplan.drawing.fonts import text_width
from buildplan.drawing.line_art import INK, PALE, PAPER, SOFT, TYPE, smooth
from buildplan.drawing.map_style import LinkStyle, joint_marks, link_marks
from buildplan.drawing.marks import (
    Circle,
    Curve,
    Ink,
    Inset,
    Label,
    Mark,
    MarkData,
    Picture,
    Point,
    Polyline,
    Stamp,
)
from buildplan.framework.assembly import part_joint
from buildplan.framework.model import Framework, Link

LEAST_RADIUS, DISC_PAD = 8.5, 1.8


@dataclass(frozen=True)
class MapNames:
    """How joints and chains are called on a map: as in the whole, or, on the map of a part, by its
    own labels. `parts` are the names of the equal parts that one map is drawn for."""

    parts: tuple[str, ...] = ()

    def short(self, label: str) -> str:
        """What is written on the map."""
        return label.removeprefix(part_joint(self.parts[0], "")) if self.parts else label

    def whole(self, label: str) -> tuple[str, ...]:
        """What it is called in the whole, in each of the parts."""
        short = self.short(label)
        return tuple(part_joint(part, short) for part in self.parts) or (label,)

    def data(self, label: str, *, again: bool) -> MarkData:
        """What a program may read of a joint's label."""
        joints = ("joint", " ".join(self.whole(label)))
        return (joints, ("again", "yes")) if again else (joints,)

    def link_data(self, link: Link, *, again: bool) -> MarkData:
        """What a program may read of a balloon's line."""
        ends = tuple(
            (name, " ".join(self.whole(joint)))
            for name, joint in (("from", link.start), ("to", link.finish))
        )
        return (*ends, ("again", "yes")) if again else ends

    def radius(self, joints: Iterable[str]) -> float:
        """Radius of a disc that holds the longest label."""
        widest = max(text_width(self.short(joint), TYPE, bold=True) for joint in joints)
        return max(LEAST_RADIUS, widest / 2 + DISC_PAD)


@dataclass(frozen=True)
class DrawnJoint:
    """A joint's place on a map; `again` where it is drawn a second time, `skipped` where no brace
    reaches it."""

    joint: str
    at: Point
    again: bool = False
    skipped: bool = False


@dataclass(frozen=True)
class DrawnLink:
    """The line of a link balloon from its first joint by way of `through` to its second; `again`
    where it is drawn a second time."""

    link: Link
    start: Point
    finish: Point
    style: LinkStyle
    again: bool = False
    through: tuple[Point, ...] = ()

    @property
    def points(self) -> tuple[Point, ...]:
        """The points that the line runs through."""
        return (self.start, *self.through, self.finish)

    def moved(self, by: Point) -> DrawnLink:
        """The line with its origin at `by`."""
        start, *through, finish = ((x + by[0], y + by[1]) for x, y in self.points)
        return replace(self, start=start, finish=finish, through=tuple(through))

    def marks(self, names: MapNames) -> list[Mark]:
        """The line; one mark of it says to a program which balloon it is."""
        if self.through:
            ink = Ink(
                stroke=PALE if self.again else INK, width=self.style.width, dash=self.style.dash
            )
            first: Mark = smooth(self.points, ink)
            others: list[Mark] = []
        else:
            first, *others = link_marks(self.start, self.finish, self.style, self.again)
        assert isinstance(first, Polyline | Curve)
        return [replace(first, data=names.link_data(self.link, again=self.again)), *others]


@dataclass(frozen=True)
class MapBlock:
    """A part of a map that is drawn in one piece: its measures, its joints and lines, and what is
    written or drawn between the two (`notes`) and over both (`over`), from its own lower left
    corner."""

    width: float
    height: float
    joints: tuple[DrawnJoint, ...]
    links: tuple[DrawnLink, ...]
    notes: tuple[Mark, ...] = ()
    over: tuple[Mark, ...] = ()

    def marks(
        self, framework: Framework, names: MapNames, radius: float, at: Point
    ) -> Iterator[Mark]:
        """The block with its lower left corner at a point, its joints' discs of one radius; pale
        lines are below the others."""
        for link in sorted(self.links, key=lambda link: not link.again):
            yield from moved(link.marks(names), at)
        yield from moved(self.notes, at)
        for joint in self.joints:
            yield from moved(_disc(joint, framework, names, radius), at)
        yield from moved(self.over, at)


def _disc(
    drawn: DrawnJoint, framework: Framework, names: MapNames, radius: float
) -> Iterator[Mark]:
    locked = drawn.joint in framework.lock_at and not drawn.again
    for mark in joint_marks(
        drawn.at,
        radius,
        names.short(drawn.joint),
        skipped=drawn.skipped,
        locked=locked,
        repeat=drawn.again,
    ):
        if isinstance(mark, Label):
            yield replace(mark, data=names.data(drawn.joint, again=drawn.again))
        else:
            yield mark


def moved(marks: Iterable[Mark], by: Point) -> Iterator[Mark]:
    """The marks with their origin at `by`."""

    def at(point: Point) -> Point:
        return point[0] + by[0], point[1] + by[1]

    for mark in marks:
        match mark:
            case Polyline():
                yield replace(mark, points=tuple(map(at, mark.points)))
            case Curve():
                pieces = tuple((at(a), at(b), at(c)) for a, b, c in mark.pieces)
                yield replace(mark, start=at(mark.start), pieces=pieces)
            case Circle():
                yield replace(mark, centre=at(mark.centre))
            case Label() | Inset():
                yield replace(mark, at=at(mark.at))
            case Stamp():
                a, b, c, d, e, f = mark.matrix
                yield replace(mark, matrix=(a, b, c, d, e + by[0], f + by[1]))


def chain_numbers(framework: Framework) -> Mapping[str, int]:
    """The number of the chain that each link is of, from 0."""
    return {id_: i for i, long in enumerate(framework.chains) for id_ in long.chain.links}


ON_LINE = 9.0  # type of a letter on a line


def letter_on_line(at: Point, letter: str) -> list[Mark]:
    """A chain's letter on one of its lines, paper left bare behind it."""
    half, high = text_width(letter, ON_LINE, bold=True) / 2 + 1, 0.55 * ON_LINE
    x, y = at
    box = ((x - half, y - high), (x + half, y - high), (x + half, y + high), (x - half, y + high))
    return [
        Polyline(box, Ink(fill=PAPER), closed=True),
        Label((x, y - ON_LINE * 0.36), letter, ON_LINE, INK, bold=True),
    ]


def end_letter(at: Point, letter: str, anchor: str, *, again: bool = False) -> Label:
    """A chain's letter beside the end of its line, `at` the middle of its height."""
    return Label((at[0], at[1] - 9 * 0.365), letter, 9, SOFT if again else INK, anchor, True)


def joints_shown(picture: Picture) -> frozenset[str]:
    """The joints that a sheet shows, drawn again or not, as they are called in the whole."""
    told = (dict(mark.data) for mark in picture.marks if isinstance(mark, Label))
    return frozenset(joint for data in told for joint in data.get("joint", "").split())


def joints_drawn(picture: Picture) -> frozenset[str]:
    """The joints that have their place on a sheet: those that are drawn again there have it
    elsewhere."""
    told = (dict(mark.data) for mark in picture.marks if isinstance(mark, Label))
    return frozenset(
        joint for data in told if "again" not in data for joint in data.get("joint", "").split()
    )


def ties_shown(picture: Picture) -> frozenset[str]:
    """The joints that a sheet shows beside those that they are tied to, by a lock or a balloon."""
    told = [dict(mark.data) for mark in picture.marks if isinstance(mark, Label)]
    pairs = (data.get(key, "") for data in told for key in ("tie", "ends"))
    return frozenset(joint for pair in pairs for joint in pair.split())
